// Words of the record around the snow. Few of these have a code in the trade: the words are ours, except the
// methods, units and reasons that the CAAML 6.0.4 schema spells (read).
#include "vocabulary/code_rows.h"

namespace firn {
namespace {

using firnbook::AbsentReason;
using firnbook::Answer;
using firnbook::BulletinState;
using firnbook::Comparison;
using firnbook::Confidence;
using firnbook::Datum;
using firnbook::DensityMethod;
using firnbook::Direction;
using firnbook::FractionUnit;
using firnbook::HardnessMethod;
using firnbook::Impurity;
using firnbook::ImpurityMethod;
using firnbook::LiquidWaterMethod;
using firnbook::PositionSource;
using firnbook::Purpose;
using firnbook::Sharing;
using firnbook::SignKind;
using firnbook::SlideKind;
using firnbook::StepKind;
using firnbook::StrengthKind;
using firnbook::StrengthMethod;
using firnbook::SurfaceAreaMethod;
using firnbook::Training;
using firnbook::Trigger;

// The steps of core/src/procedure: what each one asks for stands there.
constexpr Code kSteps[] = {
    {n(StepKind::kit_within_reach), "kit within reach", "the kit lies within reach"},
    {n(StepKind::pack_closed), "pack closed", "the pack is closed"},
    {n(StepKind::phone_away_from_transceiver), "phone away from transceiver",
     "the phone is kept away from the transceiver"},
    {n(StepKind::representative_spot), "representative spot", "the spot is like the terrain of interest"},
    {n(StepKind::spot_of_little_consequence), "spot of little consequence",
     "a slide here would have little consequence"},
    {n(StepKind::nobody_and_nothing_above), "nobody and nothing above",
     "nobody and nothing is on the snow above the wall"},
    {n(StepKind::probed_for_even_depth), "probed for even depth", "the depth was probed around the spot"},
    {n(StepKind::slope_steep_enough), "slope steep enough", "the slope is steep enough for a rutschblock"},
    {n(StepKind::dug_from_below), "dug from below", "the pit was dug from below"},
    {n(StepKind::wall_vertical_and_shaded), "wall vertical and shaded", "the wall is vertical and shaded"},
    {n(StepKind::compression_column_isolated), "compression column isolated",
     "the column of the compression test is isolated"},
    {n(StepKind::extended_column_isolated), "extended column isolated", "the extended column is isolated"},
    {n(StepKind::deep_tap_column_isolated), "deep tap column isolated",
     "the column of the deep tap test is isolated"},
    {n(StepKind::saw_column_isolated), "saw column isolated", "the column of the saw test is isolated"},
    {n(StepKind::rutschblock_isolated), "rutschblock isolated", "the rutschblock is isolated"},
    {n(StepKind::shear_column_isolated), "shear column isolated",
     "the column of the shovel shear test is isolated"},
    {n(StepKind::pit_filled_in), "pit filled in", "the pit was filled in"},
};

constexpr Code kDatums[] = {
    {n(Datum::unknown), "unknown", "not said from where it was measured"},
    {n(Datum::surface), "surface", "measured down from the snow surface"},
    {n(Datum::ground), "ground", "measured up from the ground"},
};
constexpr Code kDirections[] = {
    {n(Direction::unknown), "unknown", "not said along which line it was measured"},
    {n(Direction::vertical), "vertical", "measured vertically"},
    {n(Direction::slope_normal), "slope normal", "measured at right angles to the slope"},
};
constexpr Synonym kDirectionSynonyms[] = {{n(Direction::slope_normal), "slope-normal"}};

constexpr Code kAnswers[] = {
    {n(Answer::yes), "yes", "yes"},
    {n(Answer::no), "no", "looked for, and not there"},
    {n(Answer::not_looked_for), "not looked for", "nobody looked for it"},
};
constexpr Code kPurposes[] = {
    {n(Purpose::quick_pit), "quick pit", "a quick pit on a tour"},
    {n(Purpose::test_profile), "test profile", "a test profile: chosen observations"},
    {n(Purpose::full_profile), "full profile", "a full profile: everything, to the ground"},
    {n(Purpose::service_report), "service report", "a report to an avalanche service"},
    {n(Purpose::fracture_line), "fracture line", "a pit at the fracture line of a slide"},
    {n(Purpose::teaching), "teaching", "a pit dug to teach"},
};
constexpr Code kComparisons[] = {
    {n(Comparison::same), "same", "the same as the terrain of interest"},
    {n(Comparison::similar), "similar", "similar to the terrain of interest"},
    {n(Comparison::different), "different", "different from the terrain of interest"},
    {n(Comparison::less), "less", "gentler, lower or less loaded than the terrain of interest"},
    {n(Comparison::more), "more", "steeper, higher or more loaded than the terrain of interest"},
    {n(Comparison::unknown), "unknown", "not known how it compares"},
};
constexpr Code kSigns[] = {
    {n(SignKind::whumpf), "whumpf", "whumpf: the snow settled with a sound"},
    {n(SignKind::cracking), "cracking", "cracks shooting through the snow"},
    {n(SignKind::slides), "slides", "recent slides"},
    {n(SignKind::remote_trigger), "remote trigger", "a slide set off from a distance"},
    {n(SignKind::hollow_sound), "hollow sound", "hollow, drum-like sound"},
    {n(SignKind::wind_loading), "wind loading", "wind is loading slopes with snow"},
    {n(SignKind::heavy_precipitation), "heavy precipitation", "heavy snowfall or rain"},
    {n(SignKind::rapid_warming), "rapid warming", "rapid warming"},
    {n(SignKind::pinwheels), "pinwheels", "pinwheels: snowballs rolling down by themselves"},
    {n(SignKind::snow_shedding_from_trees), "snow shedding from trees", "snow falling off trees"},
};
constexpr Synonym kSignSynonyms[] = {
    {n(SignKind::whumpf), "whumpfs"},           {n(SignKind::whumpf), "whumpfing"},
    {n(SignKind::whumpf), "whoomph"},           {n(SignKind::cracking), "cracks"},
    {n(SignKind::cracking), "shooting cracks"}, {n(SignKind::slides), "avalanches"},
    {n(SignKind::slides), "recent avalanches"}, {n(SignKind::pinwheels), "pinwheeling"},
};
constexpr Code kTriggers[] = {
    {n(Trigger::natural), "natural", "came down by itself"},
    {n(Trigger::person), "person", "set off by a person"},
    {n(Trigger::remote), "remote", "set off from a distance"},
    {n(Trigger::explosive), "explosive", "set off by explosives"},
    {n(Trigger::machine), "machine", "set off by a vehicle"},
    {n(Trigger::cornice), "cornice", "set off by a falling cornice"},
    {n(Trigger::unknown), "unknown", "not known what set it off"},
};
constexpr Code kSlideKinds[] = {
    {n(SlideKind::slab), "slab", "slab avalanche"},
    {n(SlideKind::loose), "loose", "loose-snow avalanche"},
    {n(SlideKind::glide), "glide", "glide avalanche"},
    {n(SlideKind::cornice), "cornice", "cornice fall"},
    {n(SlideKind::unknown), "unknown", "kind not known"},
};
constexpr Code kConfidence[] = {
    {n(Confidence::low), "low", "low confidence"},
    {n(Confidence::fair), "fair", "fair confidence"},
    {n(Confidence::high), "high", "high confidence"},
};
constexpr Code kTraining[] = {
    {n(Training::none), "none", "no avalanche training"},
    {n(Training::introductory), "introductory", "an introductory course"},
    {n(Training::recreational), "recreational", "a recreational course"},
    {n(Training::professional), "professional", "professional training"},
    {n(Training::forecaster), "forecaster", "works as a forecaster"},
    {n(Training::student), "student", "in training now"},
};
constexpr Code kBulletinStates[] = {
    {n(BulletinState::issued), "issued", "a bulletin was issued"},
    {n(BulletinState::none_issued), "none issued", "no bulletin is issued for the region at this time"},
    {n(BulletinState::not_looked_at), "not looked at", "nobody looked at the bulletin"},
};
constexpr Code kSharing[] = {
    {n(Sharing::private_only), "private only", "for the observer alone"},
    {n(Sharing::partners), "partners", "for the party"},
    {n(Sharing::service), "service", "for an avalanche service"},
    {n(Sharing::public_), "public", "for everybody"},
};
constexpr Code kPositionSources[] = {
    {n(PositionSource::gnss), "gnss", "from a satellite receiver"},
    {n(PositionSource::map), "map", "from a map"},
    {n(PositionSource::barometer), "barometer", "from a barometer"},
    {n(PositionSource::estimate), "estimate", "estimated"},
};
constexpr Code kAbsentReasons[] = {
    {n(AbsentReason::inapplicable), "inapplicable", "there is no such value here"},
    {n(AbsentReason::missing), "missing", "not to be had"},
    {n(AbsentReason::template_), "template", "to be had later"},
    {n(AbsentReason::unknown), "unknown", "not known"},
    {n(AbsentReason::withheld), "withheld", "known, but not shared"},
    {n(AbsentReason::other), "other", "for another reason, in words"},
};

constexpr Code kDensityMethods[] = {
    {n(DensityMethod::snow_tube), "Snow Tube", "snow tube"},
    {n(DensityMethod::snow_cylinder), "Snow Cylinder", "snow cylinder"},
    {n(DensityMethod::snow_cutter), "Snow Cutter", "snow cutter"},
    {n(DensityMethod::denoth_probe), "Denoth Probe", "dielectric probe (Denoth)"},
    {n(DensityMethod::other), "other", "another method"},
};
constexpr Code kLiquidWaterMethods[] = {
    {n(LiquidWaterMethod::denoth_probe), "Denoth Probe", "dielectric probe (Denoth)"},
    {n(LiquidWaterMethod::snow_fork), "Snow Fork", "snow fork"},
    {n(LiquidWaterMethod::other), "other", "another method"},
};
constexpr Code kSurfaceAreaMethods[] = {
    {n(SurfaceAreaMethod::ice_cube), "Ice Cube", "infrared reflectance in a sphere"},
    {n(SurfaceAreaMethod::other), "other", "another method"},
};
constexpr Code kHardnessMethods[] = {
    {n(HardnessMethod::snow_micro_pen), "SnowMicroPen", "motor-driven penetrometer"},
    {n(HardnessMethod::ram_sonde), "Ram Sonde", "ram sonde"},
    {n(HardnessMethod::push_pull_gauge), "Push-Pull Gauge", "push-pull gauge"},
    {n(HardnessMethod::other), "other", "another method"},
};
constexpr Code kStrengthMethods[] = {
    {n(StrengthMethod::shear_frame), "Shear Frame", "shear frame"},
    {n(StrengthMethod::other), "other", "another method"},
};
constexpr Code kStrengthKinds[] = {
    {n(StrengthKind::compressive), "compressive", "against being squashed"},
    {n(StrengthKind::tensile), "tensile", "against being pulled apart"},
    {n(StrengthKind::shear), "shear", "against sliding"},
};
constexpr Code kImpurities[] = {
    {n(Impurity::black_carbon), "Black Carbon", "soot"},
    {n(Impurity::dust), "Dust", "dust"},
    {n(Impurity::isotopes), "Isotopes", "isotopes"},
};
constexpr Code kImpurityMethods[] = {
    {n(ImpurityMethod::other), "other", "another method"},
};
constexpr Code kFractionUnits[] = {
    {n(FractionUnit::percent), "%", "percent"},
    {n(FractionUnit::ppm), "ppm", "parts per million"},
    {n(FractionUnit::ppb), "ppb", "parts per thousand million"},
};

}  // namespace

template <>
CodeTable code_table<Datum>() {
  return rows(kDatums);
}
template <>
CodeTable code_table<Direction>() {
  return rows(kDirections, kDirectionSynonyms);
}
template <>
CodeTable code_table<Answer>() {
  return rows(kAnswers);
}
template <>
CodeTable code_table<Purpose>() {
  return rows(kPurposes);
}
template <>
CodeTable code_table<Comparison>() {
  return rows(kComparisons);
}
template <>
CodeTable code_table<SignKind>() {
  return rows(kSigns, kSignSynonyms);
}
template <>
CodeTable code_table<Trigger>() {
  return rows(kTriggers);
}
template <>
CodeTable code_table<SlideKind>() {
  return rows(kSlideKinds);
}
template <>
CodeTable code_table<Confidence>() {
  return rows(kConfidence);
}
template <>
CodeTable code_table<Training>() {
  return rows(kTraining);
}
template <>
CodeTable code_table<BulletinState>() {
  return rows(kBulletinStates);
}
template <>
CodeTable code_table<StepKind>() {
  return rows(kSteps);
}
template <>
CodeTable code_table<Sharing>() {
  return rows(kSharing);
}
template <>
CodeTable code_table<PositionSource>() {
  return rows(kPositionSources);
}
template <>
CodeTable code_table<AbsentReason>() {
  return rows(kAbsentReasons);
}
template <>
CodeTable code_table<DensityMethod>() {
  return rows(kDensityMethods);
}
template <>
CodeTable code_table<LiquidWaterMethod>() {
  return rows(kLiquidWaterMethods);
}
template <>
CodeTable code_table<SurfaceAreaMethod>() {
  return rows(kSurfaceAreaMethods);
}
template <>
CodeTable code_table<HardnessMethod>() {
  return rows(kHardnessMethods);
}
template <>
CodeTable code_table<StrengthMethod>() {
  return rows(kStrengthMethods);
}
template <>
CodeTable code_table<StrengthKind>() {
  return rows(kStrengthKinds);
}
template <>
CodeTable code_table<Impurity>() {
  return rows(kImpurities);
}
template <>
CodeTable code_table<ImpurityMethod>() {
  return rows(kImpurityMethods);
}
template <>
CodeTable code_table<FractionUnit>() {
  return rows(kFractionUnits);
}

}  // namespace firn
