// Tests that no method of this version reads into classes, and columns that were not valid: stated, with
// every fracture as evidence that something broke at that depth. A test without a result is stated too, since
// a missing result is no result of "nothing broke".
#include "interpretation/evidence.h"

namespace firn::interpretation {
namespace {

bool has_own_method(TestKind kind) {
  switch (kind) {
    case TestKind::CT:
    case TestKind::DT:
    case TestKind::ECT:
    case TestKind::PST:
    case TestKind::RB:
    case TestKind::ST:
    case TestKind::hand_shear:
      return true;
    default:
      return false;
  }
}

void state_test(const pit::Test& test, Findings& out) {
  const std::int32_t kind = static_cast<std::int32_t>(test.kind);
  if (!is_valid(test)) {
    add(out, Method::unclassed_tests, FindingKey::test_not_valid, Verdict::unknown, place_of_test(test),
        kNoDepth, {kind, pit::number(test.raw->not_valid_reason()), 0});
    return;
  }
  if (has_own_method(test.kind) && (has_no_fracture(test) || test.fracture_count > 0)) return;
  const bool without_result = test.fracture_count == 0 && !has_no_fracture(test);
  add(out, Method::unclassed_tests, FindingKey::test_recorded,
      without_result ? Verdict::unknown : Verdict::fact, place_of_test(test), kNoDepth,
      {kind, test.outcome, 0});
}

void state_fractures(const pit::View& pit, const pit::Test& test, Findings& out) {
  for (std::uint32_t k = 0; k < test.fracture_count; ++k) {
    const pit::Fracture& fracture = pit.fractures()[test.first_fracture + k];
    const std::int32_t load = fracture.step != 0 ? fracture.step : fracture.tap;
    const std::int32_t how = fracture.release != 0 ? fracture.release : fracture.ease;
    add(out, Method::unclassed_tests, FindingKey::test_fracture, Verdict::fact,
        place_of_fracture(test, fracture), fracture.depth, {load, how, static_cast<std::int32_t>(test.kind)});
  }
}

}  // namespace

void other_tests(const pit::View& pit, Findings& out) {
  for (const pit::Test& test : pit.tests()) {
    state_test(test, out);
    if (!has_own_method(test.kind) || !is_valid(test)) state_fractures(pit, test, out);
  }
}

}  // namespace firn::interpretation
