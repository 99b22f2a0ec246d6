// What the files of guided tests share. Nothing outside core/src/recording includes this.
#pragma once

#include <cstddef>
#include <cstdint>

#include "recording/guided.h"
#include "support/place.h"

namespace firn::recording {

constexpr std::uint32_t bit(firnbook::TestEventKind kind) {
  return std::uint32_t{1} << static_cast<unsigned>(kind);
}
constexpr std::uint64_t field_bit(int vtable_offset) {
  return std::uint64_t{1} << field_id(vtable_offset);
}

constexpr std::size_t kStates = 8;
struct Machine {
  firnbook::TestKind kind;
  Sentence column, reach;
  std::uint32_t allowed[kStates];  // in order of GuidedState
};
// Null for a kind that is not guided.
const Machine* machine_of(firnbook::TestKind kind);
bool counts_taps(firnbook::TestKind kind);

GuidedState state_of(const Run& run, const firnbook::StabilityTestT& test);

// Null when there is none.
const firnbook::FractureT* last_fracture(const firnbook::StabilityTestT& test);
// A crack of the extended column of which nobody knows yet whether it crosses.
bool is_open_crack(const firnbook::FractureT& crack);
// Taps since the crack began: 0 on its own tap.
int taps_since(const firnbook::FractureT& crack, const Run& run);
// The highest tap that a recorded fracture has.
std::uint8_t highest_tap(const firnbook::StabilityTestT& test);

}  // namespace firn::recording
