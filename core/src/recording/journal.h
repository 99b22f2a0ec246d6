// Frames: how edits stand in a journal, so that a torn or damaged one gives back every whole edit. The layout
// is told to others in schemas/README.md, "Journal files". Bytes only: what an edit says is not looked at.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string_view>
#include <vector>

#include "recording/draft.h"
#include "recording/edits.h"

namespace firn::recording {

// A head holds in every version; what follows it, only in versions that are known.
inline constexpr std::size_t kFrameHead = 40;
inline constexpr std::uint8_t kFrameVersion = 1;
// Payloads are padded to this, so that a journal in aligned memory holds aligned edits.
inline constexpr std::size_t kFrameAlignment = 8;

enum class FrameKind : std::uint8_t { pit = 1, edit = 2 };

struct Frame {
  std::size_t offset = 0, size = 0;  // in the journal, with head and padding
  EditKey key;
  std::uint32_t pit_tag = 0;
  std::size_t payload_size = 0;
  std::uint8_t version = 0;
  std::uint8_t kind = 0;
  bool is_known = false;  // of this version, and of a kind of this version
  std::size_t payload() const { return offset + kFrameHead; }
  bool is(FrameKind wanted) const { return is_known && kind == static_cast<std::uint8_t>(wanted); }
};

// Why bytes were left out. The numbers are those of firn_gap_reason.
enum class GapReason : std::uint8_t {
  no_frame = 1,   // no head begins here: foreign bytes, or a damaged head and what followed it
  torn = 2,       // the journal ends before the frame does
  damaged = 3,    // a whole head, but the payload is not what was written
  other_pit = 4,  // a whole frame of another pit
  bad_edit = 5    // a whole frame whose edit is none that can be recorded
};

struct Gap {
  std::size_t offset = 0, size = 0;
  EditKey key;  // of the frame that was lost; 0 where its head was lost too
  GapReason reason = GapReason::no_frame;
};

struct JournalMap {
  std::vector<Frame> frames;  // the whole ones
  std::vector<Gap> gaps;      // everything else; both in order of offset
  // Where the last whole frame ends: what follows is to be cut off before anything is appended.
  std::size_t whole_size = 0;
};

// Reads any bytes, in time that grows with their number whoever made them.
JournalMap scan_journal(const std::uint8_t* bytes, std::size_t size);

// Says in each frame which pit it belongs to, so that a journal that lost its first frame still tells.
std::uint32_t pit_tag(std::string_view pit_id);

void append_frame(Bytes& out, FrameKind kind, EditKey key, std::uint32_t pit_tag, const std::uint8_t* payload,
                  std::size_t size);

}  // namespace firn::recording
