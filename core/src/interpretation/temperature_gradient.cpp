// Temperature gradient between neighbouring readings. Above 10 degC per metre facets may grow (avalanche.org,
// rule of thumb, read; in cold snow it can take more, read in a secondary source). Rates, never whole-pack
// averages, and never a word about what a gentle gradient would do for strength.
//
// Beside a crust the gradient may concentrate in a few millimetres while the pair that spans it reads gentle
// (Adams and Brown, told by the US Forest Service, read), so such a pair says little.
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

// Crusts in order of depth, walked once beside the readings.
class Crusts {
 public:
  Crusts(const pit::View& pit, std::int64_t tolerance) : pit_(pit), tolerance_(tolerance) {}

  // The first crust that lies within these depths or beside them; null where none is known.
  const pit::Layer* between(std::int32_t from, std::int32_t to) {
    while (next_ < pit_.layers().size() && !(is_crust(next_) && bottom(next_) >= from - tolerance_)) ++next_;
    if (next_ == pit_.layers().size() || pit_.layers()[next_].top > to + tolerance_) return nullptr;
    return &pit_.layers()[next_];
  }

 private:
  bool is_crust(std::size_t i) const {
    const pit::Layer& layer = pit_.layers()[i];
    return layer.has_span() &&
           (layer.form == static_cast<std::uint8_t>(firnbook::GrainForm::MFcr) ||
            main_form(layer.form) == main_form(static_cast<std::uint8_t>(firnbook::GrainForm::IF)));
  }
  std::int64_t bottom(std::size_t i) const { return pit_.layers()[i].bottom; }

  const pit::View& pit_;
  const std::int64_t tolerance_;
  std::size_t next_ = 0;
};

void read_pair(const pit::Temperature& upper, const pit::Temperature& lower, const Parameters& parameters,
               Crusts& crusts, Findings& out) {
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
  if (strong) return;
  const pit::Layer* crust = crusts.between(upper.depth, lower.depth);
  if (crust == nullptr) return;
  add(out, Method::temperature_gradient, FindingKey::gradient_near_crust, Verdict::says_little, subject,
      upper.depth, {clamped(per_metre), lower.depth, static_cast<std::int32_t>(crust->stored)});
}

}  // namespace

void temperature_gradient(const pit::View& pit, const Parameters& parameters, Findings& out) {
  const pit::Temperature* upper = nullptr;
  Crusts crusts(pit, parameters.tolerance_10um);
  for (const pit::Temperature& reading : pit.temperatures()) {
    if (!is_reading(reading)) continue;
    if (upper != nullptr) read_pair(*upper, reading, parameters, crusts, out);
    upper = &reading;
  }
}

}  // namespace firn::interpretation
