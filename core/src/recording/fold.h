// A pit under construction: edits laid one over the other. Which edits count and in which order is the
// recorder's affair; schemas/edit.fbs says what each kind does.
#pragma once

#include <cstddef>
#include <cstdint>
#include <map>
#include <tuple>
#include <vector>

#include "recording/edits.h"
#include "recording/guided.h"
#include "recording/overlay.h"
#include "support/result.h"

namespace firn::recording {

class Fold {
 public:
  // What is asked of one edit without the others: a change that its kind allows, fields that can be read.
  static Done check_alone(const firnbook::Change& change);

  // Whether the edit can be laid over what is there now. `content` is content_of() the edit's fields. An
  // undo or redo is not for the fold. The edit was accepted by check_alone().
  Done check(const firnbook::Edit& edit, std::size_t content) const;
  // Lays the edit over what is there; check() must have accepted it. When memory runs out the fold is
  // broken and must be thrown away.
  void apply(const firnbook::Edit& edit, std::size_t content);

  // Where a thing stands or stood, through joins and also when it was removed: the same spot for the same
  // thing, whichever of its names is asked. False when it was never there.
  bool find_spot(const firnbook::Target& target, Spot& spot) const;

  // What is asked of an edit that is recorded now, and not of one that arrives or is folded again: a device
  // has one guided test open at a time.
  Done check_now(const firnbook::Edit& edit) const;

  // The guided test of that name, as far as it was folded; null when there is none.
  const Run* run_of(const firnbook::Target& test) const;
  const firnbook::StabilityTestT& test_of(const Run& run) const { return *pit_.tests[run.slot]; }
  // The guided test that this device has open, null for none.
  const Run* open_run(std::uint64_t device) const;

  // The pit as far as it was folded, ready for to_bytes(). Nothing can be folded after.
  firnbook::PitT& finish();

 private:
  struct Name {
    EditKey edit;
    std::uint32_t nth, sub;
    firnbook::Thing thing;
    bool operator<(const Name& other) const {
      return std::tie(edit, nth, sub, thing) < std::tie(other.edit, other.nth, other.sub, other.thing);
    }
  };

  static Name name_of(const firnbook::Target& target);
  // Null when the thing is not there.
  const Spot* find(const firnbook::Target& target) const;
  Spot spot_of(const firnbook::Target& target) const;
  std::uint32_t layer_after_joins(std::uint32_t slot) const;

  Done check_add(const firnbook::Change& change) const;
  Done check_change(const firnbook::Change& change) const;
  Done check_split(const firnbook::Change& change) const;
  Done check_merge(const firnbook::Change& change) const;
  Done check_test_event(const firnbook::Change& change) const;
  bool are_neighbours(std::uint32_t upper, std::uint32_t lower) const;
  bool lies_above(std::uint32_t slot, std::uint32_t other) const;

  void apply_add(const firnbook::Change& change, EditKey key);
  void apply_add_into(const firnbook::Change& change, EditKey key);
  void apply_change(const firnbook::Change& change);
  void apply_clear(const firnbook::Change& change);
  void apply_split(const firnbook::Change& change, EditKey key);
  void apply_merge(const firnbook::Change& change);
  void apply_test_event(const firnbook::Change& change, EditKey key);
  void apply_start(const firnbook::Change& change, EditKey key);
  TestEvent event_of(const firnbook::Change& change) const;
  std::uint32_t record_fracture(const firnbook::Change& change, EditKey key, Run& run);
  void name_things(std::size_t list, std::uint32_t first, EditKey key);
  void link(const firnbook::Target& target, const firnbook::Place* about,
            std::unique_ptr<firnbook::Place>& place) const;

  firnbook::PitT pit_;
  std::map<Name, Spot> spots_;
  // For each layer's slot the slot it was joined into, or its own.
  std::vector<std::uint32_t> joined_into_;
  std::size_t content_ = 0;
  // The guided tests, in order of their slots.
  std::vector<Run> runs_;
};

}  // namespace firn::recording
