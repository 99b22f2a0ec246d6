// Two people, one pit: where their edits contradict each other. schemas/README.md, "Two people, one pit"
// tells the rules to others.
#pragma once

#include <cstddef>
#include <cstdint>
#include <tuple>
#include <vector>

#include "recording/edits.h"
#include "recording/fold.h"

namespace firn::recording {

// The order in which edits are folded.
struct EditOrder {
  std::uint64_t clock = 0;
  EditKey key;
  bool operator<(const EditOrder& other) const {
    return std::tie(clock, key) < std::tie(other.clock, other.key);
  }
};

// An edit among all others, and what became of it.
struct Standing {
  const firnbook::Edit* edit = nullptr;
  const firnbook::Edit* by = nullptr;  // the last undo or redo that names it and counts
  std::size_t content = 0;
  EditOrder order;
  bool counts = true;
};

// Both edits are kept; the pit shows what `shown` says.
struct Conflict {
  EditKey other, shown;
  // As `other` names it. Without an edit (0, 0) for what a pit has once, and with Thing::pit for an edit that
  // one took back and the other put back.
  firnbook::Target target;
  // As in Place::field; kWholeThing where one of them removed, split or joined the thing.
  std::uint16_t field = 0;
};

// `standings` are all edits in order, `folded` is their fold. In order of the things.
std::vector<Conflict> find_conflicts(const std::vector<Standing>& standings, const Fold& folded);

}  // namespace firn::recording
