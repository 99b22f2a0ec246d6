// Weather that contradicts itself. Wind classes in m/s from memory (guidelines): C 0, L 1-7, M 8-11,
// S 12-17, X above 17; a speed agrees when it lies within the class or touches it, since hourly and gust
// readings and rounding differ.
#include "checking/rules.h"

namespace firn::checking {
namespace {

using firnbook::Weather;
using firnbook::WindClass;

// Ours: no thermometer in the shade of a mountain has shown more or less.
constexpr std::int32_t kColdestAir = -6000;
constexpr std::int32_t kWarmestAir = 4000;

struct Band {
  WindClass wind;
  std::int32_t from_cms, to_cms;
};
// One metre per second wider than the whole numbers of the guidelines wherever two classes meet.
constexpr Band kBands[] = {
    {WindClass::C, 0, 0},       {WindClass::L, 1, 800},          {WindClass::M, 700, 1200},
    {WindClass::S, 1100, 1800}, {WindClass::X, 1700, INT32_MAX},
};

Place weather_place(int vtable_offset) {
  return place_of(Thing::weather, -1, field_id(vtable_offset));
}

void check_speed(const Weather& weather, Reporter& out) {
  if (!weather.wind_speed_cms()) return;
  const std::int32_t speed = *weather.wind_speed_cms();
  const Place place = weather_place(Weather::VT_WIND_SPEED_CMS);
  if (speed < 0) {
    out.add(CheckCode::wind_speed_negative, place, speed);
    return;
  }
  if (!weather.wind()) return;
  for (const Band& band : kBands) {
    if (band.wind != *weather.wind() || (speed >= band.from_cms && speed <= band.to_cms)) continue;
    out.add(CheckCode::wind_contradicts_itself, place, static_cast<std::int64_t>(band.wind), speed);
  }
}

void check_calm(const Weather& weather, Reporter& out) {
  if (!weather.wind() || *weather.wind() != WindClass::C) return;
  const bool point = weather.wind_from_point() && *weather.wind_from_point() != firnbook::CompassPoint::none;
  if (point) {
    out.add(CheckCode::calm_with_direction, weather_place(Weather::VT_WIND_FROM_POINT));
  } else if (weather.wind_from_deg()) {
    out.add(CheckCode::calm_with_direction, weather_place(Weather::VT_WIND_FROM_DEG));
  }
}

// Ice crystals do fall from a clear sky.
bool falls_from_clouds(firnbook::Precipitation precipitation) {
  using firnbook::Precipitation;
  const bool crystals = precipitation >= Precipitation::light_IC && precipitation <= Precipitation::heavy_IC;
  return !crystals && precipitation != Precipitation::Nil && precipitation != Precipitation::UP &&
         precipitation != Precipitation::guideline_none;
}

void check_air(const Weather& weather, Reporter& out) {
  if (weather.sky() && *weather.sky() == firnbook::SkyCondition::CLR && weather.precipitation() &&
      falls_from_clouds(*weather.precipitation())) {
    out.add(CheckCode::precipitation_from_clear_sky, weather_place(Weather::VT_PRECIPITATION));
  }
  const auto air = weather.air_temperature_cdegc();
  if (air && (*air < kColdestAir || *air > kWarmestAir)) {
    out.add(CheckCode::air_temperature_out_of_range, weather_place(Weather::VT_AIR_TEMPERATURE_CDEGC), *air);
  }
}

// How far feet, skis and ram sink in.
void check_penetration(const pit::View& pit, Reporter& out) {
  using firnbook::Surface;
  const Surface* surface = pit.raw().surface();
  if (surface == nullptr) return;
  const struct {
    flatbuffers::Optional<std::int32_t> value;
    int field;
  } all[] = {{surface->penetration_ram_10um(), Surface::VT_PENETRATION_RAM_10UM},
             {surface->penetration_foot_10um(), Surface::VT_PENETRATION_FOOT_10UM},
             {surface->penetration_ski_10um(), Surface::VT_PENETRATION_SKI_10UM}};
  for (const auto& one : all) {
    if (!one.value) continue;
    const Place place = place_of(Thing::surface, -1, field_id(one.field));
    if (*one.value < 0) {
      out.add(CheckCode::penetration_negative, place, *one.value);
    } else if (pit.hs() >= 0 && *one.value > pit.hs()) {
      out.add(CheckCode::penetration_below_snow, place, *one.value, pit.hs());
    }
  }
  const auto foot = surface->penetration_foot_10um();
  const auto ski = surface->penetration_ski_10um();
  if (foot && ski && *ski > *foot) {
    out.add(CheckCode::ski_sinks_deeper_than_foot,
            place_of(Thing::surface, -1, field_id(Surface::VT_PENETRATION_SKI_10UM)), *ski, *foot);
  }
}

}  // namespace

void check_weather(const pit::View& pit, Reporter& out) {
  check_penetration(pit, out);
  const Weather* weather = pit.raw().weather();
  if (weather == nullptr) return;
  check_air(*weather, out);
  check_speed(*weather, out);
  check_calm(*weather, out);
  check_direction(
      {weather->wind_from_point(), weather->wind_from_deg(), weather_place(Weather::VT_WIND_FROM_DEG)}, out);
}

}  // namespace firn::checking
