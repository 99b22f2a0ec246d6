// Extended column test that cracked below ten taps without crossing: a caution sign in newer work
// (avalanche.org, read: "fewer than 10"; the four classes as remembered put the tenth tap with it). Only
// where it applies.
#include "interpretation/evidence.h"

namespace firn::interpretation {
namespace {

void read_fracture(const pit::Test& test, const pit::Fracture& fracture, const Parameters& parameters,
                   Findings& out) {
  const Crossed crossed = read_crossing(test, fracture, parameters.ect_taps_to_cross);
  if (crossed.crossing != static_cast<std::uint8_t>(firnbook::Crossing::not_crossed)) return;
  if (cracked_by(fracture, parameters.ect_early_below_tap - 1) != Known::yes) return;
  add(out, Method::extended_column_early, FindingKey::ect_not_crossed_early, Verdict::raises,
      place_of_fracture(test, fracture), fracture.depth, {fracture.tap, parameters.ect_early_below_tap, 0});
}

}  // namespace

void extended_column_early(const pit::View& pit, const Parameters& parameters, Findings& out) {
  for (const pit::Test& test : pit.tests()) {
    if (test.kind != TestKind::ECT || !is_valid(test)) continue;
    for (std::uint32_t k = 0; k < test.fracture_count; ++k) {
      read_fracture(test, pit.fractures()[test.first_fracture + k], parameters, out);
    }
  }
}

}  // namespace firn::interpretation
