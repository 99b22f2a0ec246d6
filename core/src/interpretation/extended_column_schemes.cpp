// Extended column test by other published schemes, side by side and never merged: one finding a fracture
// holds the class under each, 1 being the most critical, 0 where it cannot be told.
//
//   two-way reading (Simenhois and Birkeland; read in The Avalanche Review): crossed; not crossed or no
//   fracture three classes (Winkler and Schweizer 2009; limit read in an article that cites them, classes
//   from memory):
//     ECTP up to 21; above; ECTN and ECTX
//   four classes (Techel and others 2020; limits from memory): ECTPV and ECTP up to 13; ECTP 14 to 22; ECTP
//   above
//     22 or ECTN up to 10; ECTN above 10 or ECTX
//
// Where the taps of crack and crossing were both watched, a crossing one tap later counts as P in all of
// them; that the narrower rule would call it N is a finding of its own. An N that the writer's rule or an
// unreliable value leaves open gives no class.
#include "interpretation/evidence.h"

namespace firn::interpretation {
namespace {

using firnbook::Crossing;

struct Classes {
  std::int32_t of_two, of_three, of_four;
};

constexpr Classes kUnbroken = {2, 3, 4};

Classes crossed_classes(const pit::Fracture& fracture, const Parameters& parameters) {
  const Known three = cracked_by(fracture, parameters.ect_three_last_tap);
  const Known first = cracked_by(fracture, parameters.ect_four_last_tap_one);
  const Known second = cracked_by(fracture, parameters.ect_four_last_tap_two);
  const std::int32_t of_three = three == Known::yes ? 1 : three == Known::no ? 2 : 0;
  const std::int32_t of_four = first == Known::yes                          ? 1
                               : first == Known::no && second == Known::yes ? 2
                               : second == Known::no                        ? 3
                                                                            : 0;
  return {1, of_three, of_four};
}

Classes not_crossed_classes(const pit::Fracture& fracture, const Parameters& parameters) {
  const Known early = cracked_by(fracture, parameters.ect_four_last_tap_not_crossed);
  return {2, 3, early == Known::yes ? 3 : early == Known::no ? 4 : 0};
}

Classes classes_of(const pit::Test& test, const pit::Fracture& fracture, const Parameters& parameters) {
  const Crossed crossed = read_crossing(test, fracture, parameters.ect_taps_to_cross);
  if (crossed.crossing == static_cast<std::uint8_t>(Crossing::crossed))
    return crossed_classes(fracture, parameters);
  const bool told = crossed.crossing == static_cast<std::uint8_t>(Crossing::not_crossed) &&
                    !crossed.narrower_rule && !crossing_is_unreliable(fracture);
  return told ? not_crossed_classes(fracture, parameters) : Classes{0, 0, 0};
}

// Raises where any of them stands above its last class.
Verdict verdict_of(const Classes& classes) {
  if (classes.of_two == 0) return Verdict::unknown;
  const bool raises = classes.of_two == 1 || (classes.of_four > 0 && classes.of_four < 4);
  return raises ? Verdict::raises : classes.of_four == 0 ? Verdict::unknown : Verdict::raised_nothing;
}

void state(const Classes& classes, const firnbook::Place& subject, std::int32_t depth, Findings& out) {
  add(out, Method::extended_column_schemes, FindingKey::ect_schemes, verdict_of(classes), subject, depth,
      {classes.of_two, classes.of_three, classes.of_four});
}

// Both taps watched, and one tap apart: P or N depends on whose rule is read.
void state_rules(const pit::Test& test, const pit::Fracture& fracture, Findings& out) {
  const Crossed same = read_crossing(test, fracture, 0);
  const Crossed next = read_crossing(test, fracture, 1);
  if (same.crossing == next.crossing) return;
  add(out, Method::extended_column_schemes, FindingKey::ect_rules_differ, Verdict::fact,
      place_of_fracture(test, fracture), fracture.depth, {fracture.tap, fracture.tap_crossed, 0});
}

}  // namespace

void extended_column_schemes(const pit::View& pit, const Parameters& parameters, Findings& out) {
  for (const pit::Test& test : pit.tests()) {
    if (test.kind != TestKind::ECT || !is_valid(test)) continue;
    if (has_no_fracture(test)) state(kUnbroken, place_of_test(test), kNoDepth, out);
    for (std::uint32_t k = 0; k < test.fracture_count; ++k) {
      const pit::Fracture& fracture = pit.fractures()[test.first_fracture + k];
      state(classes_of(test, fracture, parameters), place_of_fracture(test, fracture), fracture.depth, out);
      state_rules(test, fracture, out);
    }
  }
}

}  // namespace firn::interpretation
