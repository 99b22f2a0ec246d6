// Bytes of the common edits, for those who do not write them with generated code of their own. The same
// arguments give the same bytes. schemas/edit.fbs says what each edit means.
#pragma once

#include <cstdint>
#include <string_view>
#include <tuple>
#include <vector>

#include "recording/draft.h"
#include "schemas/edit_generated.h"

namespace firn::recording {

// Identity of an edit. Neither number may be 0.
struct EditKey {
  std::uint64_t device = 0;
  std::uint64_t sequence = 0;
  bool operator<(const EditKey& other) const {
    return std::tie(device, sequence) < std::tie(other.device, other.sequence);
  }
  bool operator==(const EditKey& other) const { return device == other.device && sequence == other.sequence; }
};

// Entries of an edit's `seen` that are written and read. Ours: far more devices than stand around one pit.
inline constexpr std::size_t kMostSeen = 256;

// Who made an edit and when, as the host gives it, and what of others' edits the author had seen.
struct EditHead {
  EditKey key;
  std::uint64_t clock = 0;
  const firnbook::Moment* made = nullptr;
  std::string_view observer = {};
  std::vector<firnbook::Seen> seen = {};
};

// The general form. `fields` holds only what the edit sets; fields that are empty strings, empty lists or a
// zero mask in it are not set (clear them instead). Without `fields` pass an empty PitT.
Bytes make_edit(EditKey key, std::uint64_t clock, const firnbook::Moment* made, std::string_view observer,
                firnbook::ChangeKind kind, const firnbook::PitT& fields, const firnbook::Target* target,
                const firnbook::Target* other = nullptr);

// Name of the `nth` thing of its list in the edit `key`; `sub` counts the fractures of a test and the
// readings of a profile.
firnbook::Target target_of(EditKey key, firnbook::Thing thing, std::uint32_t nth = 0, std::uint32_t sub = 0);

Bytes make_set(const EditHead& head, const firnbook::PitT& fields);
// `into` is the test or profile that gets fractures or readings, `about` the thing that remarks, photos,
// absences and extensions in `fields` are about.
Bytes make_add(const EditHead& head, const firnbook::PitT& fields, const firnbook::Target* into = nullptr,
               const firnbook::Target* about = nullptr);
Bytes make_change(const EditHead& head, const firnbook::Target& target, const firnbook::PitT& fields,
                  const firnbook::Target* about = nullptr);
Bytes make_remove(const EditHead& head, const firnbook::Target& target);
// Clears fields of `target`, or of the pit's own tables when it is null.
Bytes make_clear(const EditHead& head, const firnbook::Target* target,
                 const std::vector<firnbook::Place>& fields);
Bytes make_split(const EditHead& head, const firnbook::Target& layer, const firnbook::Depth& at);
Bytes make_merge(const EditHead& head, const firnbook::Target& layer, const firnbook::Target& neighbour);
Bytes make_shift(const EditHead& head, std::int32_t amount_10um);
Bytes make_rescale(const EditHead& head, std::int32_t amount_10um, std::int32_t base_10um);
Bytes make_undo(const EditHead& head, EditKey edit);
Bytes make_redo(const EditHead& head, EditKey edit);
// An event of a guided test: `test` is null for the start, `fracture` for what is about none, `fields` for
// what says nothing more.
Bytes make_event(const EditHead& head, firnbook::TestEventKind event, const firnbook::Target* test,
                 const firnbook::Target* fracture = nullptr, const firnbook::PitT* fields = nullptr);

}  // namespace firn::recording
