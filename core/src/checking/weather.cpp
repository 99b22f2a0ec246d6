// Weather that contradicts itself. Wind classes in m/s from memory (guidelines): C 0, L 1-7, M 8-11,
// S 12-17, X above 17; a speed agrees when it lies within the class or touches it, since hourly and gust
// readings and rounding differ.
#include "checking/rules.h"

namespace firn::checking {
namespace {

using firnbook::Weather;
using firnbook::WindClass;

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

}  // namespace

void check_weather(const pit::View& pit, Reporter& out) {
  const Weather* weather = pit.raw().weather();
  if (weather == nullptr) return;
  check_speed(*weather, out);
  check_calm(*weather, out);
  check_direction(
      {weather->wind_from_point(), weather->wind_from_deg(), weather_place(Weather::VT_WIND_FROM_DEG)}, out);
}

}  // namespace firn::checking
