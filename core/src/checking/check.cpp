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
auto sort_key(const firnbook::Check& check) {
  const auto code = static_cast<std::uint16_t>(check.code());
  const firnbook::Place& place = check.place();
  return std::make_tuple(code / 100, place.thing(), place.index(), place.sub(), place.field(), code,
                         check.a(), check.b(), check.c());
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
  check_tests(pit, reporter);
  check_site(pit, reporter);
  check_time(pit, reporter);
  check_weather(pit, reporter);
  check_completeness(pit, reporter);
  std::sort(out.begin(), out.end(),
            [](const firnbook::Check& a, const firnbook::Check& b) { return sort_key(a) < sort_key(b); });
}

}  // namespace firn::checking
