// Shovel shear and hand shear: where something breaks, never how strong it is. They ignore the slab and are
// poor alone (common practice, from memory), so the ease is handed on as written and read into no class.
#include "interpretation/evidence.h"

namespace firn::interpretation {

void shear_tests(const pit::View& pit, Findings& out) {
  for (const pit::Test& test : pit.tests()) {
    const bool shear = test.kind == TestKind::ST || test.kind == TestKind::hand_shear;
    if (!shear || !is_valid(test)) continue;
    const std::int32_t kind = static_cast<std::int32_t>(test.kind);
    if (has_no_fracture(test)) {
      add(out, Method::shear_tests, FindingKey::test_recorded, Verdict::fact, place_of_test(test), kNoDepth,
          {kind, test.outcome, 0});
    }
    for (std::uint32_t k = 0; k < test.fracture_count; ++k) {
      const pit::Fracture& fracture = pit.fractures()[test.first_fracture + k];
      add(out, Method::shear_tests, FindingKey::shear_located, Verdict::fact,
          place_of_fracture(test, fracture), fracture.depth, {fracture.ease, 0, kind});
    }
  }
}

}  // namespace firn::interpretation
