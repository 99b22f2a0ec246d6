// Rutschblock by the operational classes of the Swiss service (read), by loading step and by how much came
// away. The names of the classes stay out of findings; 1 is the most critical of 3:
//
//   1  step 1 or 2; step 3 with the whole block
//   2  step 3 in part; step 4; step 5 with the whole block
//   3  step 5 in part; step 6; no fracture
//
// "Most of the block" and "edge only" both count as in part (ours: the page says no more than that). Which
// jump of step 5 is counted differs between guidelines, so the class rests on the step alone.
//
// On less than 30 degrees (Foehn 1989, read), or less than 20 with a second person watching (Jamieson and
// Johnston 1993, read), and outside of what skis load (deeper than ski penetration and within about 1 m below
// it: avalanche.org, read), the result is no measure: what broke still broke, and what did not settles
// nothing.
#include "interpretation/evidence.h"

namespace firn::interpretation {
namespace {

using firnbook::ReleaseType;

constexpr std::int32_t kClasses = 3;

std::int32_t slope_of(const pit::View& pit, const pit::Test& test) {
  return test.raw->slope_deg() ? static_cast<std::int32_t>(*test.raw->slope_deg()) : pit.slope_deg();
}

bool is_unreliable(const pit::Fracture& fracture) {
  constexpr std::uint64_t kFields = std::uint64_t{1} << field_id(firnbook::Fracture::VT_STEP) |
                                    std::uint64_t{1} << field_id(firnbook::Fracture::VT_RELEASE);
  return (fracture.unreliable & kFields) != 0;
}

// Ski penetration is measured along the plumb line, and so must the depth be.
std::int32_t ski_penetration(const pit::View& pit) {
  const firnbook::Surface* surface = pit.raw().surface();
  if (surface == nullptr || pit.direction() == firnbook::Direction::slope_normal) return -1;
  const std::int32_t depth = surface->penetration_ski_10um().value_or(-1);
  const bool unreliable =
      (surface->unreliable() >> field_id(firnbook::Surface::VT_PENETRATION_SKI_10UM) & 1u) != 0;
  return unreliable ? -1 : depth;
}

// At step 3 both classes that it may be raise concern, at step 5 one of them does.
Verdict verdict_of(std::int32_t of_three, const pit::Fracture& fracture, bool gentle) {
  if (of_three == 1 || of_three == 2 || fracture.step == 3) return Verdict::raises;
  if (of_three == 0 || gentle || is_unreliable(fracture)) return Verdict::unknown;
  return Verdict::raised_nothing;
}

FindingKey key_of(std::int32_t of_three) {
  constexpr FindingKey kKeys[] = {FindingKey::rb_class_unknown, FindingKey::rb_class_one,
                                  FindingKey::rb_class_two, FindingKey::rb_class_three};
  return kKeys[of_three];
}

void state_depth(const pit::Test& test, const pit::Fracture& fracture, std::int32_t penetration,
                 const Parameters& parameters, Findings& out) {
  if (penetration < 0 || fracture.depth < 0) return;
  const std::int64_t deepest = std::int64_t{penetration} + parameters.rb_reach_below_skis_10um;
  if (fracture.depth > penetration && fracture.depth <= deepest) return;
  add(out, Method::rutschblock_swiss, FindingKey::rb_outside_depth, Verdict::fact,
      place_of_fracture(test, fracture), fracture.depth,
      {penetration, static_cast<std::int32_t>(std::min<std::int64_t>(deepest, INT32_MAX)), 0});
}

void read_test(const pit::View& pit, const pit::Test& test, const Parameters& parameters, Findings& out) {
  const std::int32_t slope = slope_of(pit, test);
  const bool gentle = slope >= 0 && slope < parameters.rb_least_slope_deg;
  if (gentle && (test.fracture_count > 0 || has_no_fracture(test))) {
    add(out, Method::rutschblock_swiss, FindingKey::rb_slope_gentle, Verdict::fact, place_of_test(test),
        kNoDepth, {slope, parameters.rb_least_slope_deg, parameters.rb_least_slope_observed_deg});
  }
  if (has_no_fracture(test)) {
    add(out, Method::rutschblock_swiss, FindingKey::rb_no_fracture,
        gentle ? Verdict::unknown : Verdict::raised_nothing, place_of_test(test), kNoDepth, {});
  }
  const std::int32_t penetration = ski_penetration(pit);
  for (std::uint32_t k = 0; k < test.fracture_count; ++k) {
    const pit::Fracture& fracture = pit.fractures()[test.first_fracture + k];
    const std::int32_t of_three = rutschblock_class(fracture);
    add(out, Method::rutschblock_swiss, key_of(of_three), verdict_of(of_three, fracture, gentle),
        place_of_fracture(test, fracture), fracture.depth, {fracture.step, fracture.release, fracture.jump});
    state_depth(test, fracture, penetration, parameters, out);
  }
}

}  // namespace

std::int32_t rutschblock_class(const pit::Fracture& fracture) {
  const bool whole = fracture.release == static_cast<std::uint8_t>(ReleaseType::WB);
  const bool in_part = fracture.release == static_cast<std::uint8_t>(ReleaseType::MB) ||
                       fracture.release == static_cast<std::uint8_t>(ReleaseType::EB);
  switch (fracture.step) {
    case 1:
    case 2:
      return 1;
    case 3:
      return whole ? 1 : in_part ? 2 : 0;
    case 4:
      return 2;
    case 5:
      return whole ? 2 : in_part ? kClasses : 0;
    case 6:
      return kClasses;
    default:
      return 0;
  }
}

void rutschblock(const pit::View& pit, const Parameters& parameters, Findings& out) {
  for (const pit::Test& test : pit.tests()) {
    if (test.kind == TestKind::RB && is_valid(test)) read_test(pit, test, parameters, out);
  }
}

}  // namespace firn::interpretation
