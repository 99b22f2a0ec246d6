// Densities, in tenths of kg/m3. Limits: reference list of derived checks.
#include "checking/rules.h"

namespace firn::checking {
namespace {

using firnbook::GrainForm;

constexpr std::int32_t kLightest = 100;   // 10 kg/m3
constexpr std::int32_t kHeaviest = 9170;  // 917 kg/m3, ice
constexpr std::int32_t kLight = 300;      // 30 kg/m3
constexpr std::int32_t kHeavy = 6000;     // 600 kg/m3 in seasonal snow
constexpr std::int32_t kHeavyNewSnow = 3000;
constexpr std::int32_t kLightIce = 6000;
constexpr std::int32_t kWaterPercent = 10;  // water equivalent against the densities

// The form of the layer that the whole reading lies in, 0 when it is in none or in several.
std::uint8_t main_form(const pit::View& pit, const pit::Density& reading) {
  const std::int32_t index = pit.layer_at(reading.top);
  if (index < 0 || reading.bottom == pit::kUnknown) return 0;
  const pit::Layer& layer = pit.layers()[static_cast<std::size_t>(index)];
  return reading.bottom <= layer.bottom ? static_cast<std::uint8_t>(layer.form / 10 * 10) : std::uint8_t{0};
}

// The limit that makes a density unusual for its form, 0 when none does.
std::int32_t unusual_limit(std::int32_t dkgm3, std::uint8_t form) {
  if (dkgm3 < kLight) return kLight;
  if (form == static_cast<std::uint8_t>(GrainForm::IF)) return dkgm3 < kLightIce ? kLightIce : 0;
  if (form == static_cast<std::uint8_t>(GrainForm::PP) && dkgm3 > kHeavyNewSnow) return kHeavyNewSnow;
  return dkgm3 > kHeavy ? kHeavy : 0;
}

bool impossible(std::int32_t dkgm3) {
  return dkgm3 < kLightest || dkgm3 > kHeaviest;
}

void check_values(const pit::View& pit, Reporter& out) {
  for (const pit::Density& reading : pit.densities()) {
    if (reading.dkgm3 == pit::kUnknown || reading.unreliable) continue;
    const Place place = place_of(Thing::density, static_cast<std::int32_t>(reading.profile),
                                 field_id(firnbook::DensityReading::VT_DENSITY_DKGM3),
                                 static_cast<std::int32_t>(reading.stored));
    if (impossible(reading.dkgm3)) {
      out.add(CheckCode::density_impossible, place, reading.dkgm3);
      continue;
    }
    const std::uint8_t form = main_form(pit, reading);
    const std::int32_t limit = unusual_limit(reading.dkgm3, form);
    if (limit != 0) out.add(CheckCode::density_unusual, place, reading.dkgm3, limit, form);
  }
}

// One sample out of two layers is the density of neither.
void check_spans(const pit::View& pit, Reporter& out) {
  const pit::Density* previous = nullptr;
  for (const pit::Density& reading : pit.densities()) {
    if (reading.top == pit::kUnknown || reading.bottom == pit::kUnknown) continue;
    const Place place =
        place_of(Thing::density, static_cast<std::int32_t>(reading.profile),
                 field_id(firnbook::DensityReading::VT_BOTTOM), static_cast<std::int32_t>(reading.stored));
    const std::int32_t index = pit.layer_at(reading.top);
    if (index >= 0 && reading.bottom > pit.layers()[static_cast<std::size_t>(index)].bottom) {
      out.add(CheckCode::reading_across_layers, place, reading.top, reading.bottom,
              pit.layers()[static_cast<std::size_t>(index)].bottom);
    }
    // The same span once more is a second sample; a part of it is a slip.
    if (previous != nullptr && previous->profile == reading.profile && reading.top >= previous->top &&
        reading.top < previous->bottom &&
        (reading.top != previous->top || reading.bottom != previous->bottom)) {
      out.add(CheckCode::readings_overlap, place, reading.top, previous->bottom);
    }
    previous = &reading;
  }
}

// Water in one profile, when its readings run from the surface to the ground without a break.
class WaterColumn {
 public:
  void add(const pit::Density& reading) {
    if (reading.top != bottom_ || reading.bottom == pit::kUnknown || reading.bottom <= reading.top ||
        reading.dkgm3 == pit::kUnknown || impossible(reading.dkgm3)) {
      broken_ = true;
      return;
    }
    // 0.1 kg/m3 times 10 um is 1e-6 kg/m2; a unit of water equivalent (10 um) is 1e-2 kg/m2.
    micro_ += std::int64_t{reading.dkgm3} * (std::int64_t{reading.bottom} - reading.top);
    bottom_ = reading.bottom;
  }
  bool reaches(std::int32_t hs) const { return !broken_ && bottom_ == hs && hs > 0; }
  std::int64_t micro() const { return micro_; }

 private:
  std::int64_t micro_ = 0;
  std::int32_t bottom_ = 0;
  bool broken_ = false;
};

void compare_water(const pit::View& pit, const WaterColumn& column, std::int32_t stated, Reporter& out) {
  if (!column.reaches(pit.hs())) return;
  const std::int64_t difference = std::int64_t{stated} * 10000 - column.micro();
  const std::int64_t apart = difference < 0 ? -difference : difference;
  if (apart * 100 <= column.micro() * kWaterPercent) return;
  out.add(CheckCode::water_differs_from_densities,
          place_of(Thing::snowpack, -1, field_id(firnbook::Snowpack::VT_HS_WATER_10UM)), stated,
          column.micro() / 10000);
}

void check_water(const pit::View& pit, Reporter& out) {
  const firnbook::Snowpack* snowpack = pit.raw().snowpack();
  if (snowpack == nullptr || !snowpack->hs_water_10um()) return;
  const std::int32_t stated = *snowpack->hs_water_10um();
  const std::vector<pit::Density>& readings = pit.densities();
  for (std::size_t i = 0; i < readings.size();) {
    WaterColumn column;
    const std::uint32_t profile = readings[i].profile;
    for (; i < readings.size() && readings[i].profile == profile; ++i) column.add(readings[i]);
    compare_water(pit, column, stated, out);
  }
}

}  // namespace

void check_densities(const pit::View& pit, Reporter& out) {
  check_values(pit, out);
  check_spans(pit, out);
  check_water(pit, out);
}

}  // namespace firn::checking
