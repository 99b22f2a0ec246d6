// Steps and probe strikes as plain structs: static tables out, nothing allocated unless a call is refused.
#include "firnbook/procedure.h"

#include "capi/structs.h"
#include "firnbook/types.h"
#include "procedure/probing.h"
#include "procedure/procedure.h"
#include "vocabulary/codes.h"

using namespace firn::capi;

namespace firn::capi {
namespace {

using firnbook::TestKind;

constexpr std::size_t kMostStrikes = 1000000;

Done check_test_kind(std::uint8_t kind) {
  if (kind <= static_cast<std::uint8_t>(TestKind::MAX)) return done();
  return failure_of(FIRN_BAD_ARGUMENT, "test_kind is no kind of test that this library knows",
                    "give a firn_test_kind, or FIRN_TEST_KIND_NONE for every step");
}

// The step at `position` among those of this kind of test; null behind the last. `count` is how many there
// are up to there.
const procedure::Step* step_at(TestKind test, std::uint32_t position, std::uint32_t& count) {
  std::size_t all = 0;
  const procedure::Step* steps = procedure::all_steps(all);
  count = 0;
  for (std::size_t i = 0; i < all; ++i) {
    if (!procedure::belongs_to(steps[i], test)) continue;
    if (count == position) return &steps[i];
    ++count;
  }
  return nullptr;
}

firn_procedure_entry entry_of(const procedure::Step& step) {
  firn_procedure_entry out = {};
  out.test_kinds = step.tests;
  out.kind = static_cast<std::uint8_t>(step.kind);
  out.guards_people = step.guards_people ? 1 : 0;
  out.across_10um = step.column.across_10um;
  out.up_10um = step.column.up_10um;
  out.down_10um = step.column.down_10um;
  out.left_10um = step.column.left_10um;
  out.least_slope_deg = step.least_slope_deg;
  out.verified = static_cast<std::uint8_t>(step.verified);
  // The codes are literals, so a NUL follows each.
  out.code = code_of(step.kind).data();
  out.sentence = step.sentence;
  out.needs = step.needs;
  out.guards_against = step.guards_against;
  out.source = step.source;
  return out;
}

firn_probe_result result_of(const procedure::ProbeSpread& spread) {
  const bool none = spread.count == 0;
  firn_probe_result out = {};
  out.lowest_10um = none ? FIRN_UNKNOWN : spread.lowest_10um;
  out.highest_10um = none ? FIRN_UNKNOWN : spread.highest_10um;
  out.spread_10um = none ? FIRN_UNKNOWN : spread.highest_10um - spread.lowest_10um;
  out.mean_10um = none ? FIRN_UNKNOWN : spread.mean_10um;
  out.count = spread.count;
  out.ignored = spread.ignored;
  out.odd_at = spread.odd_at;
  out.uneven = spread.uneven ? 1 : 0;
  out.too_few = spread.too_few() ? 1 : 0;
  out.odd = static_cast<std::uint8_t>(spread.odd);
  out.words = procedure::words_of(spread);
  return out;
}

}  // namespace
}  // namespace firn::capi

firn_status firn_procedure_count(uint8_t test_kind, uint32_t* count, firn_error* error) {
  return run({nullptr, error, __func__}, [&]() -> firn::Done {
    if (count == nullptr) return null_argument("count");
    firn::Done known = check_test_kind(test_kind);
    if (!known) return known;
    step_at(static_cast<TestKind>(test_kind), UINT32_MAX, *count);
    return firn::done();
  });
}

firn_status firn_procedure_step(uint8_t test_kind, uint32_t position, firn_procedure_entry* out,
                                firn_error* error) {
  return run({nullptr, error, __func__}, [&]() -> firn::Done {
    firn::Done known = check_test_kind(test_kind);
    if (!known) return known;
    std::uint32_t count = 0;
    const firn::procedure::Step* step = step_at(static_cast<TestKind>(test_kind), position, count);
    if (step == nullptr) {
      return failure_of(FIRN_BAD_ARGUMENT, "there is no step at this position",
                        "positions count from 0; firn_procedure_count says how many there are");
    }
    return write_struct(out, entry_of(*step), FIRN_FIRST_VERSION(firn_procedure_entry, source),
                        "firn_procedure_entry");
  });
}

firn_status firn_probe_spread(const int32_t* strikes_10um, size_t count, firn_probe_result* out,
                              firn_error* error) {
  return run({nullptr, error, __func__}, [&]() -> firn::Done {
    if (strikes_10um == nullptr && count != 0) return null_argument("strikes_10um");
    if (count > kMostStrikes) {
      return failure_of(FIRN_BAD_ARGUMENT, "more than 1000000 probe strikes",
                        "give the strikes around one pit");
    }
    return write_struct(out, result_of(firn::procedure::spread_of(strikes_10um, count)),
                        FIRN_FIRST_VERSION(firn_probe_result, words), "firn_probe_result");
  });
}
