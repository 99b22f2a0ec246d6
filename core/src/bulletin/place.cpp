// Where a pit lies to the limits of a rating or a problem. What cannot be told is `unknown`, never `outside`.
#include "support/place.h"
#include "bulletin/compare.h"

namespace firn::bulletin {
namespace {

using firnbook::CompassPoint;
using firnbook::ScopePart;
using firnbook::TimePrecision;
using firnbook::Within;

constexpr std::int64_t kMetre = 100000;  // in units of 10 um
// No list of the standard is longer than nine; a longer one is not read, since hostile bytes may share it.
constexpr std::uint32_t kMostAspects = 16;
constexpr std::uint8_t kSectors = 8;
// The offsets from UTC that are in use on land.
constexpr std::int64_t kFarthestAhead = 14 * 3600;
constexpr std::int64_t kFarthestBehind = 12 * 3600;

bool is_unclear(const firnbook::Scope& scope, ScopePart part) {
  return (scope.unclear().value_or(0) & static_cast<std::uint8_t>(part)) != 0;
}

// N is from 337.5 to 22.5 degrees, and so on round: the eight sectors of 45 degrees of the standard.
std::uint8_t sector_of(std::int32_t degrees) {
  return static_cast<std::uint8_t>((degrees * 2 + 45) / 90 % kSectors + 1);
}

struct Instants {
  bool known;
  std::int64_t earliest, latest;
};

bool is_known(const firnbook::Moment& moment) {
  constexpr std::int64_t kFarAway = std::int64_t{1} << 40;  // beyond any calendar; keeps the sums small
  return moment.precision() >= TimePrecision::day && moment.precision() <= TimePrecision::second &&
         moment.local_s() <= kFarAway && moment.local_s() >= -kFarAway;
}

// In UTC, as far as that is known; on the wall clock where nobody named an offset.
Instants instants_of(const firnbook::Moment& moment, bool on_the_wall) {
  if (!is_known(moment)) return {};
  const std::int64_t local = moment.local_s();
  const std::int64_t width = moment.precision() == TimePrecision::day ? 86399 : 0;
  if (on_the_wall) return {true, local, local + width};
  if (moment.offset_known() == 1) {
    const std::int64_t utc = local - std::int64_t{moment.offset_min()} * 60;
    return {true, utc, utc + width};
  }
  return {true, local - kFarthestAhead, local + kFarthestBehind + width};
}

void take_site(const pit::View& pit, PitPlace& place) {
  const firnbook::Site* site = pit.raw().site();
  if (site == nullptr) return;
  const auto leaned_on = [site](int field) { return (site->unreliable() >> field_id(field) & 1u) == 0; };
  if (site->elevation_10um() && leaned_on(firnbook::Site::VT_ELEVATION_10UM)) {
    place.elevation_known = true;
    place.elevation_10um = *site->elevation_10um();
  }
  const bool point = pit::number(site->aspect_point()) == static_cast<std::uint8_t>(CompassPoint::none);
  place.flat = (!site->aspect_deg() && point) || site->slope_deg().value_or(1) == 0;
  const std::int32_t degrees = pit.aspect_deg();
  const bool reliable =
      leaned_on(firnbook::Site::VT_ASPECT_DEG) && leaned_on(firnbook::Site::VT_ASPECT_POINT);
  if (!place.flat && reliable && degrees >= 0 && degrees <= 360) {
    place.aspect_known = true;
    place.sector = sector_of(degrees);
  }
}

}  // namespace

PitPlace place_of_pit(const pit::View& pit) {
  PitPlace place;
  take_site(pit, place);
  if (pit.raw().time() == nullptr) return place;
  place.dug = pit.raw().time()->begin();
  place.time_known = is_known(place.dug);
  return place;
}

Within both(Within one, Within other) {
  if (one == Within::outside || other == Within::outside) return Within::outside;
  return one == Within::inside && other == Within::inside ? Within::inside : Within::unknown;
}

// Both bounds belong to what they limit.
Within within_elevation(const firnbook::Scope* scope, const PitPlace& place, std::int32_t treeline_m) {
  if (scope == nullptr) return Within::inside;
  if (is_unclear(*scope, ScopePart::elevation)) return Within::unknown;
  Within all = Within::inside;
  for (const bool is_lower : {true, false}) {
    const firnbook::ElevationLimit* limit = is_lower ? scope->lower() : scope->upper();
    if (limit == nullptr) continue;
    const bool known = place.elevation_known && (!limit->treeline() || treeline_m > 0);
    const std::int64_t metres = limit->treeline() ? std::int64_t{treeline_m} : limit->metres();
    const std::int64_t above = place.elevation_10um - metres * kMetre;
    const bool inside = is_lower ? above >= 0 : above <= 0;
    all = both(all, !known ? Within::unknown : inside ? Within::inside : Within::outside);
  }
  return all;
}

// No aspects, all eight, or nothing but "n/a" limit nothing.
Within within_aspects(const firnbook::Scope* scope, const PitPlace& place) {
  if (scope == nullptr) return Within::inside;
  const std::uint32_t count = pit::size_of(scope->aspects());
  if (count > kMostAspects) return Within::unknown;
  std::uint32_t listed = 0;
  bool flat_listed = false, others = false;
  for (std::uint32_t i = 0; i < count; ++i) {
    const auto point = static_cast<std::uint8_t>(scope->aspects()->Get(i));
    if (point >= 1 && point <= kSectors) {
      listed |= 1u << point;
    } else if (point == static_cast<std::uint8_t>(CompassPoint::none)) {
      flat_listed = true;
    } else {
      others = true;
    }
  }
  constexpr std::uint32_t kAll = 0x1FE;
  if (listed == kAll) return Within::inside;
  if (place.aspect_known && (listed >> place.sector & 1u) != 0) return Within::inside;
  if (place.flat && flat_listed) return Within::inside;
  if (others || is_unclear(*scope, ScopePart::aspects)) return Within::unknown;
  if (listed == 0) return Within::inside;
  // A flat place faces nowhere: nobody can say that it lies outside.
  return place.aspect_known ? Within::outside : Within::unknown;
}

// The standard names an earlier and a later part of the period and no hour between them.
Within within_period(const firnbook::Scope* scope) {
  if (scope == nullptr) return Within::inside;
  if (is_unclear(*scope, ScopePart::period)) return Within::unknown;
  const std::uint8_t period = pit::number(scope->period());
  return period == 0 || period == static_cast<std::uint8_t>(firnbook::DayPeriod::all_day) ? Within::inside
                                                                                          : Within::unknown;
}

// A bulletin holds from its first to its last second. Where one side names its offset from UTC and the other
// does not, it holds only if it does in every time zone; where neither does, both clocks hang on one wall.
ValidityToPit validity_of(const firnbook::TimeSpan* valid, const PitPlace& place) {
  if (valid == nullptr || !place.time_known) return {Validity::unknown, 0};
  const bool on_the_wall =
      place.dug.offset_known() != 1 && valid->begin().offset_known() != 1 && valid->end().offset_known() != 1;
  const Instants dug = instants_of(place.dug, on_the_wall);
  const Instants begin = instants_of(valid->begin(), on_the_wall);
  const Instants end = instants_of(valid->end(), on_the_wall);
  if (end.known && dug.earliest > end.latest) return {Validity::expired, dug.earliest - end.latest};
  if (begin.known && dug.latest < begin.earliest) return {Validity::not_yet, begin.earliest - dug.latest};
  const bool holds = begin.known && end.known && dug.earliest >= begin.latest && dug.latest <= end.earliest;
  return {holds ? Validity::holds : Validity::unknown, 0};
}

}  // namespace firn::bulletin
