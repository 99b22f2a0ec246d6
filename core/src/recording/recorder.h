// A pit as the fold of its edits. No I/O, no clock: the host gives bytes, times and ids.
#pragma once

#include <cstddef>
#include <cstdint>
#include <map>
#include <memory>
#include <vector>

#include "pit/verify.h"
#include "recording/draft.h"
#include "recording/edits.h"
#include "support/result.h"

namespace firn::recording {

class Recorder {
 public:
  explicit Recorder(pit::Limits limits) : limits_(limits) {}

  // Takes a copy of the edit's bytes. Nothing changes when the edit is refused: bytes that are no edit, no
  // change in it, a target that is not there, the same key with other bytes. The same edit twice is fine.
  Done apply(const std::uint8_t* bytes, std::size_t size);

  // The pit, folded from all edits in order of (clock, device, sequence).
  Result<Bytes> pit() const;

  std::size_t edit_count() const { return edits_.size(); }
  // One more than the largest clock seen: what the next edit of this device should carry.
  std::uint64_t next_clock() const { return next_clock_; }

 private:
  std::map<EditKey, Bytes> edits_;
  pit::Limits limits_;
  std::uint64_t next_clock_ = 1;
};

}  // namespace firn::recording
