// Whether the place that was dug can speak for the terrain the question is about. What the observer said of
// it ("same aspect") is held against the numbers, where both are there. Limits are ours: half a compass to
// either side of a word is no longer what the word says.
#include <cstdlib>

#include "checking/rules.h"

namespace firn::checking {
namespace {

using firnbook::Choice;
using firnbook::Comparison;

constexpr std::int64_t kFullCircle = 360;

Place choice_place(int vtable_offset) {
  return place_of(Thing::choice, -1, field_id(vtable_offset));
}

// The most that may lie between two places of which somebody says "same" or "similar" (ours).
struct Limit {
  std::int64_t same, similar;
};
constexpr Limit kAspect_deg = {45, 90};
constexpr Limit kElevation_10um = {std::int64_t{200} * 100000, std::int64_t{400} * 100000};
// A rutschblock's score falls by about one for ten degrees (Jamieson and Johnston 1993, from memory).
constexpr Limit kIncline_deg = {10, 20};

struct Sides {
  flatbuffers::Optional<Comparison> said;
  std::int32_t here, there;
  CheckCode code;
  int field;
};

void compare(const Sides& sides, std::int64_t apart, const Limit& limit, Reporter& out) {
  if (!sides.said) return;
  const std::int64_t most = *sides.said == Comparison::same      ? limit.same
                            : *sides.said == Comparison::similar ? limit.similar
                                                                 : INT64_MAX;
  if (apart > most) out.add(sides.code, choice_place(sides.field), sides.here, sides.there);
}

std::int32_t interest_aspect(const Choice& choice) {
  if (choice.interest_aspect_deg()) return *choice.interest_aspect_deg();
  const std::uint8_t point = pit::number(choice.interest_aspect_point());
  constexpr auto kLast = static_cast<std::uint8_t>(firnbook::CompassPoint::NW);
  return point >= 1 && point <= kLast ? (point - 1) * 45 : pit::kUnknown;
}

void check_missing(bool wanted, std::int32_t here, std::int32_t there, const Place& place, Reporter& out) {
  if (wanted && here == pit::kUnknown && there != pit::kUnknown) {
    out.add(CheckCode::site_cannot_be_compared, place);
  }
}

void check_aspect(const pit::View& pit, const Choice& choice, Reporter& out) {
  const std::int32_t here = pit.aspect_deg();
  const std::int32_t there = interest_aspect(choice);
  const bool on_slope = pit.slope_deg() != 0;  // flat ground has none, and no record could give it
  check_missing(on_slope, here, there, place_of(Thing::site, -1, field_id(firnbook::Site::VT_ASPECT_DEG)),
                out);
  if (here < 0 || there < 0 || here > kFullCircle || there > kFullCircle) return;
  const std::int64_t turn = std::abs(here - there) % kFullCircle;
  compare({choice.aspect(), here, there, CheckCode::aspect_said_same_but_apart, Choice::VT_ASPECT},
          turn > kFullCircle / 2 ? kFullCircle - turn : turn, kAspect_deg, out);
}

void check_elevation(const pit::View& pit, const Choice& choice, Reporter& out) {
  const firnbook::Site* site = pit.raw().site();
  const std::int32_t here = site == nullptr ? pit::kUnknown : pit::number_or_unknown(site->elevation_10um());
  const std::int32_t there = pit::number_or_unknown(choice.interest_elevation_10um());
  check_missing(true, here, there, place_of(Thing::site, -1, field_id(firnbook::Site::VT_ELEVATION_10UM)),
                out);
  if (here == pit::kUnknown || there == pit::kUnknown) return;
  compare({choice.elevation(), here, there, CheckCode::elevation_said_same_but_apart, Choice::VT_ELEVATION},
          std::abs(std::int64_t{here} - there), kElevation_10um, out);
}

void check_incline(const pit::View& pit, const Choice& choice, Reporter& out) {
  const std::int32_t here = pit.slope_deg();
  const std::int32_t there = pit::number_or_unknown(choice.interest_slope_deg());
  check_missing(true, here, there, place_of(Thing::site, -1, field_id(firnbook::Site::VT_SLOPE_DEG)), out);
  if (here == pit::kUnknown || there == pit::kUnknown) return;
  compare({choice.incline(), here, there, CheckCode::incline_said_same_but_apart, Choice::VT_INCLINE},
          std::abs(here - there), kIncline_deg, out);
  if (there - here >= kIncline_deg.same) {
    out.add(CheckCode::interest_steeper, choice_place(Choice::VT_INTEREST_SLOPE_DEG), there, here);
  }
}

void check_said(const Choice& choice, Reporter& out) {
  const bool compared = choice.aspect() || choice.elevation() || choice.wind_loading() || choice.incline();
  if (!compared && !pit::text(choice.terrain_of_interest()).empty()) {
    out.add(CheckCode::interest_without_comparison, choice_place(Choice::VT_TERRAIN_OF_INTEREST));
  }
  if (choice.wind_loading() && *choice.wind_loading() == Comparison::less) {
    out.add(CheckCode::less_loaded_than_interest, choice_place(Choice::VT_WIND_LOADING));
  }
}

}  // namespace

void check_representative(const pit::View& pit, Reporter& out) {
  const Choice* choice = pit.raw().choice();
  if (choice == nullptr) return;
  check_said(*choice, out);
  check_aspect(pit, *choice, out);
  check_elevation(pit, *choice, out);
  check_incline(pit, *choice, out);
}

}  // namespace firn::checking
