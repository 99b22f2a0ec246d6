// A pit as the fold of its edits. No I/O, no clock: the host gives bytes, times and ids.
#pragma once

#include <cstddef>
#include <cstdint>
#include <map>
#include <memory>
#include <optional>
#include <tuple>
#include <vector>

#include "pit/verify.h"
#include "recording/draft.h"
#include "recording/edits.h"
#include "recording/fold.h"
#include "support/result.h"

namespace firn::recording {

// Clocks end here, so that one hostile edit cannot leave the next one without a clock. Edits with the same
// clock are ordered by their key.
inline constexpr std::uint64_t kLastClock = (std::uint64_t{1} << 62) - 1;

struct FoldReport {
  std::size_t taken_back = 0;      // edits that an undo took back
  std::size_t without_effect = 0;  // edits whose target is not there, or that do not fit what is there
};

class Recorder {
 public:
  explicit Recorder(pit::Limits limits) : limits_(limits) {}

  // Takes a copy of the edit's bytes. Nothing changes when the edit is refused: bytes that are no edit
  // (FIRN_TOO_SMALL to FIRN_DAMAGED), a newer schema's (FIRN_NEWER_SCHEMA), text that cannot be printed
  // (FIRN_BAD_UTF8), no change in it (FIRN_BAD_EDIT), a target or an edit to undo that is not there at that
  // point (FIRN_NO_SUCH_TARGET), the same key with other bytes (FIRN_DUPLICATE_EDIT). The same edit twice is
  // fine.
  //
  // An edit may arrive after others that follow it in order; it is judged by what precedes it. Edits that
  // follow it and no longer fit have no effect.
  Done apply(const std::uint8_t* bytes, std::size_t size);

  // The pit, folded from all edits in order of (clock, device, sequence). Which edits count is said in
  // schemas/edit.fbs. FIRN_TOO_LARGE when its bytes would be more than the limits allow to read.
  Result<Bytes> pit(FoldReport* report = nullptr) const;

  std::size_t edit_count() const { return edits_.size(); }
  // One more than the largest clock seen: what the next edit of this device should carry.
  std::uint64_t next_clock() const { return next_clock_; }
  // Where a guided test stands. FIRN_NO_SUCH_TARGET for a name of nothing, FIRN_BAD_EDIT for a test that was
  // not begun as a guided one.
  Result<Guidance> guided(const firnbook::Target& test);
  // The test alone, as a pit that holds nothing else.
  Result<Bytes> guided_test(const firnbook::Target& test);
  // Name of the fracture that an event recorded: `sub` as in Guidance.
  firnbook::Target guided_fracture(const firnbook::Target& test, std::uint32_t sub);
  // The guided test that this device has open; its `thing` is `pit` when there is none.
  firnbook::Target open_test(std::uint64_t device);

  // Largest sequence of this device, 0 when it has recorded nothing.
  std::uint64_t last_sequence(std::uint64_t device) const;

 private:
  // Bytes were verified when they came in. `content` is content_of() the edit's fields.
  struct Stored {
    Bytes bytes;
    std::uint64_t clock;
    std::size_t content;
    const firnbook::Edit& edit() const { return *firnbook::GetEdit(bytes.data()); }
  };
  using Edits = std::map<EditKey, Stored>;
  struct Order {
    std::uint64_t clock = 0;
    EditKey key;
    bool operator<(const Order& other) const {
      return std::tie(clock, key) < std::tie(other.clock, other.key);
    }
  };

  Done check_marker(const firnbook::Edit& edit) const;
  Done check_content(const firnbook::Edit& edit, std::size_t content);
  const Fold& folded();
  Result<const Run*> run_of(const firnbook::Target& test);
  // All edits in order, without those that are taken back and without undos and redos.
  std::vector<const Stored*> counting(FoldReport& report) const;
  // Folds what counts and stands before `end`, or everything.
  std::unique_ptr<Fold> fold(const Order* end, FoldReport& report) const;
  void insert(const firnbook::Edit& edit, const std::uint8_t* bytes, std::size_t size, std::size_t content);

  Edits edits_;
  pit::Limits limits_;
  std::uint64_t next_clock_ = 1;
  Order last_;
  // Everything folded so far, for judging the next edit when it comes in order; null when it is out of date.
  std::unique_ptr<Fold> folded_;
};

}  // namespace firn::recording
