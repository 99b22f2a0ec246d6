// The steps around a pit and its tests, as data that an app can show and tick. No step takes anything away
// from what a test showed, and none marks a gentle spot down.
#pragma once

#include <cstddef>
#include <cstdint>

#include "pit/view.h"
#include "schemas/report_generated.h"

namespace firn::procedure {

// The only slope minimum of any test. Foehn 1989 (read).
inline constexpr std::uint8_t kRutschblockSlope_deg = 30;

// How a column is isolated. 0 where the step isolates none, or where the figure follows from the layer.
struct Column {
  std::int32_t across_10um;  // along the contour
  std::int32_t up_10um;      // up the slope
  std::int32_t down_10um;    // usual depth of the cuts; 0 = to below the layer in question
  std::int32_t left_10um;    // deep tap test: snow left above the layer
};

struct Step {
  firnbook::StepKind kind;
  bool guards_people;            // a safety step
  firnbook::Verified verified;   // how the source is known
  std::uint8_t least_slope_deg;  // 0 = any slope
  std::uint16_t tests;           // bit n = TestKind n; 0 = whatever test is made, and none
  const char* sentence;          // what to do
  const char* needs;             // "" for nothing
  const char* guards_against;
  const char* source;
  Column column;
};

// In the order in which they are done.
const Step* all_steps(std::size_t& count);
// Null for a kind this version does not know.
const Step* find_step(firnbook::StepKind kind);
// TestKind::none asks for every step; a kind of test for what holds always and for what is its own.
bool belongs_to(const Step& step, firnbook::TestKind test);

// What a pit says of one step.
enum class Ticked : std::uint8_t { not_said, done, not_done };
struct Tick {
  Ticked state = Ticked::not_said;
  std::int32_t stored = -1;  // position in Pit.steps of what decided it
};

// Every step's tick, read once. Done: somebody says so and nobody says no.
class Ticks {
 public:
  explicit Ticks(const firnbook::Pit& pit);
  // Whether the list of steps was used at all.
  bool any() const { return any_; }
  Tick of(firnbook::StepKind kind) const;

 private:
  static constexpr std::size_t kKinds = static_cast<std::size_t>(firnbook::StepKind::MAX) + 1;
  Tick ticks_[kKinds];
  bool any_ = false;
};

}  // namespace firn::procedure
