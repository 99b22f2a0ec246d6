#include "checking/check.h"

#include <algorithm>
#include <tuple>

#include "checking/rules.h"

namespace firn::checking {
namespace {

std::int32_t narrow(std::int64_t value) {
  return static_cast<std::int32_t>(std::clamp<std::int64_t>(value, INT32_MIN, INT32_MAX));
}

// Block of codes first, then place, then everything else that can differ: a total order.
auto tie_breaker(const firnbook::Check& check) {
  return std::make_tuple(static_cast<std::uint16_t>(check.code()), check.a(), check.b(), check.c());
}
bool before(const firnbook::Check& a, const firnbook::Check& b) {
  const int block_a = static_cast<std::uint16_t>(a.code()) / 100;
  const int block_b = static_cast<std::uint16_t>(b.code()) / 100;
  if (block_a != block_b) return block_a < block_b;
  const firnbook::Place& at_a = a.place();
  const firnbook::Place& at_b = b.place();
  if (at_a.thing() != at_b.thing()) return at_a.thing() < at_b.thing();
  if (at_a.index() != at_b.index()) return at_a.index() < at_b.index();
  if (at_a.sub() != at_b.sub()) return at_a.sub() < at_b.sub();
  if (at_a.field() != at_b.field()) return at_a.field() < at_b.field();
  return tie_breaker(a) < tie_breaker(b);
}

}  // namespace

void Reporter::add(CheckCode code, const Place& place, std::int64_t a, std::int64_t b, std::int64_t c) {
  const Rule* rule = find_rule(code);
  const firnbook::Severity severity = rule != nullptr ? rule->severity : firnbook::Severity::none;
  out_.emplace_back(place, narrow(a), narrow(b), narrow(c), code, severity);
}

void check(const pit::View& pit, Checks& out) {
  out.clear();
  Reporter reporter(out);
  check_geometry(pit, reporter);
  check_vocabulary(pit, reporter);
  check_layers(pit, reporter);
  check_temperatures(pit, reporter);
  check_densities(pit, reporter);
  check_new_snow(pit, reporter);
  check_tests(pit, reporter);
  check_test_limits(pit, reporter);
  check_site(pit, reporter);
  check_time(pit, reporter);
  check_weather(pit, reporter);
  check_completeness(pit, reporter);
  check_representative(pit, reporter);
  check_purpose(pit, reporter);
  std::sort(out.begin(), out.end(), before);
}

}  // namespace firn::checking
