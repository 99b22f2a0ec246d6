// Temperature gradient between neighbouring readings. Above 10 degC per metre facets may grow (avalanche.org,
// rule of thumb, read; in cold snow it can take more, read in a secondary source). Rates, never whole-pack
// averages, and never a word about what a gentle gradient would do for strength.
#include "interpretation/evidence.h"

namespace firn::interpretation {
namespace {

constexpr std::int64_t kMetre = 100000;  // in units of 10 um

std::int32_t clamped(std::int64_t value) {
  return static_cast<std::int32_t>(std::min<std::int64_t>(value, INT32_MAX));
}

bool is_reading(const pit::Temperature& reading) {
  return reading.depth >= 0 && reading.cdegc != pit::kUnknown;
}

void read_pair(const pit::Temperature& upper, const pit::Temperature& lower, const Parameters& parameters,
               Findings& out) {
  const std::int64_t apart = std::int64_t{lower.depth} - upper.depth;
  if (apart <= 0) return;
  const std::int64_t change = std::int64_t{lower.cdegc} - upper.cdegc;
  const std::int64_t size = change < 0 ? -change : change;
  const bool strong = size * kMetre > std::int64_t{parameters.gradient_cdegc_per_m} * apart;
  const std::int64_t per_metre = (size * kMetre + apart / 2) / apart;
  const firnbook::Place subject =
      place_of(Thing::temperature, static_cast<std::int32_t>(upper.stored), kWholeThing);
  add(out, Method::temperature_gradient, strong ? FindingKey::gradient_strong : FindingKey::gradient_weak,
      judge(strong, upper.unreliable || lower.unreliable), subject, upper.depth,
      {clamped(per_metre), lower.depth, static_cast<std::int32_t>(lower.stored)});
}

}  // namespace

void temperature_gradient(const pit::View& pit, const Parameters& parameters, Findings& out) {
  const pit::Temperature* upper = nullptr;
  for (const pit::Temperature& reading : pit.temperatures()) {
    if (!is_reading(reading)) continue;
    if (upper != nullptr) read_pair(*upper, reading, parameters, out);
    upper = &reading;
  }
}

}  // namespace firn::interpretation
