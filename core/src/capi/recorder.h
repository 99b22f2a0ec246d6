// The recorder's handle: the set of edits, and who records by structs.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "capi/guard.h"
#include "firnbook/record.h"
#include "recording/edits.h"
#include "recording/recorder.h"

struct firn_recorder {
  explicit firn_recorder(firn_context& owner) : context(&owner), edits(owner.limits.edit) {}

  firn_context* context;
  firn::recording::Recorder edits;

  // The author of edits made from structs; device 0 until there is one.
  std::uint64_t device = 0;
  std::uint64_t next_sequence = 0;  // 0: all numbers are used up
  firnbook::Moment made;
  bool has_made = false;
  std::string observer;

  std::vector<firn::recording::Gap> gaps;  // of the journal that was loaded last
  std::vector<firn::recording::Conflict> conflicts;
  std::size_t conflicts_of = 0;  // edits that they were looked for in
};

namespace firn::capi {

firn_context* context_of(const firn_recorder* recorder) noexcept;

// Names of things, in and out.
firnbook::Target target_from(const firn_target& target);
firn_target target_to(const firnbook::Target& target);

// One edit by its bytes, from whomever.
Done apply(firn_recorder& recorder, const std::uint8_t* bytes, std::size_t size);

// Edits of the author's device may come from elsewhere: their numbers are taken.
void skip_taken_numbers(firn_recorder& recorder);

// The head of the author's next edit.
Result<recording::EditHead> next_head(const firn_recorder& recorder);

// Applies an edit of the author and hands out its bytes.
Done record(firn_recorder& recorder, const recording::Bytes& edit, firn_buffer* out);

}  // namespace firn::capi
