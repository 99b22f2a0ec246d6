// A pit as the fold of its edits. No I/O, no clock: the host gives bytes, times and ids.
#pragma once

#include <cstddef>
#include <cstdint>
#include <map>
#include <memory>
#include <string>
#include <string_view>
#include <tuple>
#include <vector>

#include "pit/verify.h"
#include "recording/conflicts.h"
#include "recording/draft.h"
#include "recording/edits.h"
#include "recording/fold.h"
#include "recording/incoming.h"
#include "recording/journal.h"
#include "support/result.h"

namespace firn::recording {

// A pit's id is a name, not a text; ours.
inline constexpr std::size_t kMostPitId = 1024;

struct FoldReport {
  std::size_t taken_back = 0;      // edits that an undo took back
  std::size_t without_effect = 0;  // edits whose target is not there, or that do not fit what is there
};

// What a journal brought.
struct Loaded {
  std::size_t frames = 0;  // whole frames of this pit
  std::size_t added = 0;   // edits that were not there before
  std::size_t known = 0;   // frames that were there already
  std::size_t kept = 0;    // frames of a newer version that were not there before
  std::size_t whole_size = 0;
  std::size_t lost_bytes = 0;
  bool names_pit = false;  // the journal holds the frame with the pit's id
  std::vector<Gap> gaps;
};

// The edits that an undo and a redo of one device would name; sequence 0 when there is none.
struct UndoSteps {
  std::uint64_t undo = 0;
  std::uint64_t redo = 0;
};

class Recorder {
 public:
  explicit Recorder(pit::Limits limits) : limits_(limits) {}

  // Takes a copy of the edit's bytes. Nothing changes when the edit is refused: bytes that are no edit
  // (FIRN_TOO_SMALL to FIRN_DAMAGED), a newer schema's (FIRN_NEWER_SCHEMA), text that cannot be printed
  // (FIRN_BAD_UTF8), no change in it (FIRN_BAD_EDIT), a target or an edit to undo that is not there at that
  // point (FIRN_NO_SUCH_TARGET), the same key with other bytes (FIRN_DUPLICATE_EDIT), more than 256 MB of
  // edits (FIRN_TOO_LARGE). The same edit twice is fine.
  //
  // An edit may arrive after others that follow it in order; it is judged by what precedes it. Edits that
  // follow it and no longer fit have no effect.
  Done apply(const std::uint8_t* bytes, std::size_t size);

  // The pit, folded from all edits in order of (clock, device, sequence). Which edits count is said in
  // schemas/edit.fbs. FIRN_TOO_LARGE when its bytes would be more than the limits allow to read.
  Result<Bytes> pit(FoldReport* report = nullptr) const;

  std::size_t edit_count() const { return edit_count_; }
  // Frames that were kept although they cannot be read here.
  std::size_t kept_count() const { return held_.size() - edit_count_; }
  // One more than the largest clock seen: what the next edit of this device should carry.
  std::uint64_t next_clock() const { return next_clock_; }
  // Largest sequence of this device, 0 when nothing is known of it. Numbers that damage took count as well:
  // others may hold those edits.
  std::uint64_t last_sequence(std::uint64_t device) const;
  // What an author on this device has seen of other devices, for the edits that follow.
  std::vector<firnbook::Seen> seen_by(std::uint64_t device) const;
  UndoSteps undo_steps(std::uint64_t device) const;
  // Edits of different devices that set the same thing without having seen each other.
  std::vector<Conflict> conflicts() const;

  // --- Journal. Whatever arrives gets a ticket: 1, 2, 3 ... Only what the host acknowledged is promised.

  // Names the pit whose journal this is, which gets a ticket too. The same name again is fine; FIRN_OTHER_PIT
  // for another one, FIRN_BAD_ARGUMENT for one that is empty or too long, FIRN_BAD_UTF8.
  Done begin(std::string_view pit_id);
  std::uint64_t last_ticket() const { return arrivals_.size(); }
  std::uint64_t acknowledged() const { return acknowledged_; }
  // Everything up to and with this ticket is stored. FIRN_BAD_TICKET for a ticket that was not given out, or
  // that is not beyond the last one acknowledged.
  Done acknowledge(std::uint64_t ticket);
  // Frames of everything that arrived after `ticket`, the one that names the pit among them.
  // FIRN_WRONG_STATE before begin(), FIRN_BAD_TICKET.
  Result<Bytes> frames_after(std::uint64_t ticket) const;
  // Everything, in order of device and sequence: the same set gives the same bytes. FIRN_WRONG_STATE.
  Result<Bytes> journal() const;
  // Adds what a journal holds, all of it or nothing: this pit's own after a restart, or a partner's. An edit
  // whose target is not there has no effect, and has it once the target comes. Damage is no refusal. What is:
  // a journal of another pit (FIRN_OTHER_PIT), the same key with other bytes (FIRN_DUPLICATE_EDIT), more than
  // the limits allow (FIRN_TOO_LARGE), no name of the pit here nor there (FIRN_WRONG_STATE).
  Result<Loaded> load(const std::uint8_t* bytes, std::size_t size);

 private:
  // Edits, and frames of newer versions. Two frames of an unknown sort may share a key, so these are told
  // apart by their checksum; edits of newer versions are edits.
  struct HeldKey {
    EditKey key;
    std::uint16_t sort = kEditSort;  // version * 256 + kind
    std::uint32_t checksum = 0;      // of a frame that is no edit; never 0 there
    bool operator<(const HeldKey& other) const {
      return std::tie(key, sort, checksum) < std::tie(other.key, other.sort, other.checksum);
    }
  };
  static constexpr std::uint16_t kEditSort = kFrameVersion * 256 + static_cast<int>(FrameKind::edit);
  // What can be read was verified when it came in. `content` is content_of() the edit's fields.
  struct Held {
    Bytes bytes;  // of the edit; of the whole frame where it is no edit
    std::size_t content = 0;
    bool is_readable = false;
    const firnbook::Edit& edit() const { return *firnbook::GetEdit(bytes.data()); }
  };
  using HeldMap = std::map<HeldKey, Held>;
  using Arrivals = std::vector<const HeldMap::value_type*>;
  class Loading;

  const Held* find_edit(EditKey key) const;
  Done check_marker(const firnbook::Edit& edit) const;
  Done check_content(const firnbook::Edit& edit, std::size_t content);
  std::vector<Standing> standings() const;
  // Folds what counts and stands before `end`, or everything.
  std::unique_ptr<Fold> fold(const std::vector<Standing>& standings, const EditOrder* end,
                             FoldReport& report) const;
  void insert(const firnbook::Edit& edit, const std::uint8_t* bytes, std::size_t size, std::size_t content);
  void append_held(Bytes& out, const HeldMap::value_type& held) const;
  void append_pit_frame(Bytes& out) const;

  HeldMap held_;
  Arrivals arrivals_;  // by ticket - 1; null for the name of the pit
  std::size_t edit_count_ = 0;
  std::size_t held_bytes_ = 0;
  std::uint64_t acknowledged_ = 0;
  std::string pit_id_;
  std::uint32_t pit_tag_ = 0;
  std::vector<EditKey> lost_;  // what damage took, the last of each device
  pit::Limits limits_;
  std::uint64_t next_clock_ = 1;
  EditOrder last_;
  // Everything folded so far, for judging the next edit when it comes in order; null when it is out of date.
  std::unique_ptr<Fold> folded_;
};

}  // namespace firn::recording
