// What is asked of an edit before it is held against any other: that its bytes are an edit, that it says who
// made it and what, and that it can be read here.
#pragma once

#include <cstddef>
#include <cstdint>

#include "pit/verify.h"
#include "recording/edits.h"
#include "support/result.h"

namespace firn::recording {

// Clocks end here, so that one hostile edit cannot leave the next one without a clock. Edits with the same
// clock are ordered by their key.
inline constexpr std::uint64_t kLastClock = (std::uint64_t{1} << 62) - 1;

inline EditKey key_of(const firnbook::EditId& id) {
  return {id.device(), id.sequence()};
}
bool is_newer(const firnbook::Edit& edit);
// An undo or a redo: it speaks of other edits, not of the pit.
bool is_marker(const firnbook::Edit& edit);

// FIRN_TOO_SMALL to FIRN_DAMAGED. The pointer lives as long as `bytes` and `aligned`.
Result<const firnbook::Edit*> read_edit(const std::uint8_t* bytes, std::size_t size,
                                        const pit::Limits& limits, pit::AlignedBytes& aligned);
// FIRN_NEWER_SCHEMA, FIRN_BAD_EDIT.
Done check_head(const firnbook::Edit& edit);
// FIRN_BAD_EDIT, FIRN_TOO_LARGE, FIRN_BAD_UTF8; else content_of() the edit's fields.
Result<std::size_t> check_alone(const firnbook::Edit& edit);

}  // namespace firn::recording
