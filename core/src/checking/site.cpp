// Where the pit was dug: probing, slope, aspect, elevation, coordinates.
#include "checking/rules.h"
#include "procedure/probing.h"

namespace firn::checking {
namespace {

using firnbook::CompassPoint;
using firnbook::Site;

constexpr std::int32_t kSteepest = 90;
constexpr std::int32_t kFullCircle = 360;
constexpr std::int32_t kLatitudeLimit = 900000000;    // 90 deg (WGS 84)
constexpr std::int32_t kLongitudeLimit = 1800000000;  // 180 deg
// Ours: no land lies outside.
constexpr std::int32_t kLowestElevation = pit::cm(-50000);
constexpr std::int32_t kHighestElevation = pit::cm(900000);

Place site_place(int vtable_offset) {
  return place_of(Thing::site, -1, field_id(vtable_offset));
}

void check_hs(const pit::View& pit, const procedure::ProbeSpread& strikes, Reporter& out) {
  constexpr std::int64_t kApart = procedure::kUneven_10um;
  if (strikes.count == 0 || pit.hs() == pit::kUnknown) return;
  if (pit.hs() >= strikes.lowest_10um - kApart && pit.hs() <= strikes.highest_10um + kApart) return;
  out.add(CheckCode::hs_differs_from_probes,
          place_of(Thing::snowpack, -1, field_id(firnbook::Snowpack::VT_HS_10UM)), pit.hs(),
          strikes.lowest_10um, strikes.highest_10um);
}

void check_probes(const pit::View& pit, Reporter& out) {
  const Site* site = pit.raw().site();
  const auto* probes = site != nullptr ? site->probes_10um() : nullptr;
  const std::uint32_t count = pit::size_of(probes);
  if (count < procedure::kFewestStrikes) {
    out.add(CheckCode::probes_too_few, site_place(Site::VT_PROBES_10UM), count);
  }
  for (std::uint32_t i = 0; i < count; ++i) {
    if (probes->Get(i) >= 0) continue;
    out.add(CheckCode::probe_negative, place_of(Thing::probe, static_cast<std::int32_t>(i), kWholeThing),
            probes->Get(i));
  }
  const procedure::ProbeSpread strikes = procedure::spread_of(probes);
  if (strikes.uneven) {
    out.add(CheckCode::probing_uneven, site_place(Site::VT_PROBES_10UM), strikes.lowest_10um,
            strikes.highest_10um, strikes.mean_10um);
  }
  check_hs(pit, strikes, out);
}

void check_slope(const flatbuffers::Optional<std::uint8_t>& slope, const Place& place, Reporter& out) {
  if (slope && *slope > kSteepest) out.add(CheckCode::slope_out_of_range, place, *slope);
}

void check_slopes(const pit::View& pit, Reporter& out) {
  if (pit.raw().site() != nullptr) {
    check_slope(pit.raw().site()->slope_deg(), site_place(Site::VT_SLOPE_DEG), out);
  }
  if (const firnbook::Choice* choice = pit.raw().choice()) {
    check_slope(choice->interest_slope_deg(),
                place_of(Thing::choice, -1, field_id(firnbook::Choice::VT_INTEREST_SLOPE_DEG)), out);
  }
  for (const pit::Test& test : pit.tests()) {
    check_slope(test.raw->slope_deg(),
                place_of(Thing::test, static_cast<std::int32_t>(test.stored),
                         field_id(firnbook::StabilityTest::VT_SLOPE_DEG)),
                out);
  }
}

bool is_point(CompassPoint point) {
  return point >= CompassPoint::N && point <= CompassPoint::NW;
}

void check_flat(const Site& site, Reporter& out) {
  if (!site.slope_deg() || *site.slope_deg() != 0) return;
  if (site.aspect_deg()) {
    out.add(CheckCode::aspect_on_flat_ground, site_place(Site::VT_ASPECT_DEG));
  } else if (site.aspect_point() && is_point(*site.aspect_point())) {
    out.add(CheckCode::aspect_on_flat_ground, site_place(Site::VT_ASPECT_POINT));
  }
}

void check_elevation(const flatbuffers::Optional<std::int32_t>& elevation, const Place& place,
                     Reporter& out) {
  if (elevation && (*elevation < kLowestElevation || *elevation > kHighestElevation)) {
    out.add(CheckCode::elevation_out_of_range, place, *elevation);
  }
}

void check_coordinate(const flatbuffers::Optional<std::int32_t>& value, std::int32_t limit,
                      const Place& place, Reporter& out) {
  if (value && (*value < -std::int64_t{limit} || *value > limit)) {
    out.add(CheckCode::coordinates_out_of_range, place, *value, limit);
  }
}

void check_coordinates(const Site& site, Reporter& out) {
  const Place latitude = site_place(Site::VT_LATITUDE_E7DEG);
  const Place longitude = site_place(Site::VT_LONGITUDE_E7DEG);
  check_coordinate(site.latitude_e7deg(), kLatitudeLimit, latitude, out);
  check_coordinate(site.longitude_e7deg(), kLongitudeLimit, longitude, out);
  if (site.latitude_e7deg().has_value() != site.longitude_e7deg().has_value()) {
    out.add(CheckCode::coordinate_missing, site.latitude_e7deg() ? longitude : latitude);
  }
}

void check_directions(const firnbook::Pit& raw, Reporter& out) {
  if (const Site* site = raw.site()) {
    check_direction({site->aspect_point(), site->aspect_deg(), site_place(Site::VT_ASPECT_DEG)}, out);
  }
  if (const firnbook::Choice* choice = raw.choice()) {
    check_direction({choice->interest_aspect_point(), choice->interest_aspect_deg(),
                     place_of(Thing::choice, -1, field_id(firnbook::Choice::VT_INTEREST_ASPECT_DEG))},
                    out);
  }
  if (const firnbook::Surface* surface = raw.surface()) {
    check_direction({surface->feature_aspect_point(), surface->feature_aspect_deg(),
                     place_of(Thing::surface, -1, field_id(firnbook::Surface::VT_FEATURE_ASPECT_DEG))},
                    out);
  }
  for (std::uint32_t i = 0; i < pit::size_of(raw.slides()); ++i) {
    const firnbook::Slide* slide = raw.slides()->Get(i);
    check_direction(
        {slide->aspect_point(), slide->aspect_deg(),
         place_of(Thing::slide, static_cast<std::int32_t>(i), field_id(firnbook::Slide::VT_ASPECT_DEG))},
        out);
  }
}

}  // namespace

// A point stands for a sector of 45 deg (CAAML bulletin schema, read), so 22.5 deg to either side.
void check_direction(const DirectionGiven& given, Reporter& out) {
  if (!given.degrees) return;
  const std::int32_t degrees = *given.degrees;
  if (degrees > kFullCircle) {
    out.add(CheckCode::aspect_out_of_range, given.place, degrees);
    return;
  }
  if (!given.point || !is_point(*given.point)) return;
  const std::int32_t middle = (static_cast<std::int32_t>(*given.point) - 1) * 45;
  const std::int32_t clockwise = (degrees - middle + kFullCircle) % kFullCircle;
  const std::int32_t apart = clockwise > kFullCircle / 2 ? kFullCircle - clockwise : clockwise;
  if (2 * apart > 45) out.add(CheckCode::point_contradicts_degrees, given.place, degrees, middle);
}

void check_site(const pit::View& pit, Reporter& out) {
  check_probes(pit, out);
  check_slopes(pit, out);
  check_directions(pit.raw(), out);
  if (const firnbook::Choice* choice = pit.raw().choice()) {
    check_elevation(choice->interest_elevation_10um(),
                    place_of(Thing::choice, -1, field_id(firnbook::Choice::VT_INTEREST_ELEVATION_10UM)), out);
  }
  if (const Site* site = pit.raw().site()) {
    check_flat(*site, out);
    check_elevation(site->elevation_10um(), site_place(Site::VT_ELEVATION_10UM), out);
    check_coordinates(*site, out);
  }
}

}  // namespace firn::checking
