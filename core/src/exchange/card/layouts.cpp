// The layouts are part of the card's version 1: what stands here may not change, only be added to as
// README.md says under "Growth". Orders and ranks were chosen for what people usually write down (ours).
#include "exchange/card/layouts.h"

#include <cstddef>
#include <initializer_list>
#include <iterator>

#include "support/place.h"

namespace firn::exchange::card {
namespace {

using namespace firnbook;

constexpr std::int32_t kMm = 100;
constexpr std::int32_t kCm = 1000;
constexpr std::int32_t kM = 100000;

// --- numbers, in the units of the schema
constexpr Units kElevation = {3, false, {{5 * kM, 8}, {kM, 10}, {1, 26}}};
constexpr Units kMetres = {3, false, {{kM, 3}, {kCm, 6}, {1, 16}}};
constexpr Units kHeight = {3, false, {{kCm, 6}, {kCm / 2, 7}, {kMm, 9}}};
constexpr Units kShort = {3, false, {{kCm, 4}, {kMm, 5}, {1, 10}}};
constexpr Units kCut = {3, false, {{kCm, 5}, {kCm / 2, 6}, {kMm, 8}}};
constexpr Units kColumn = {3, false, {{10 * kCm, 2}, {kCm, 5}, {kMm, 8}}};
constexpr Units kGrain = {3, false, {{kMm / 2, 2}, {kMm / 10, 2}, {1, 5}}};
constexpr Units kWater = {3, false, {{kMm, 4}, {kMm / 10, 7}, {1, 10}}};
constexpr Units kBearing = {2, false, {{5, 6}, {1, 8}}};
constexpr Units kSlope = {1, false, {{1, 5}}};
constexpr Units kCoordinate = {3, true, {{1000, 20}, {100, 24}, {1, 28}}};
constexpr Units kAir = {3, true, {{50, 4}, {10, 6}, {1, 9}}};
constexpr Units kTemperature = {2, true, {{10, 4}, {1, 7}}};
constexpr Units kWindSpeed = {3, false, {{100, 3}, {10, 6}, {1, 9}}};
constexpr Units kDensity = {2, false, {{10, 7}, {1, 10}}};
constexpr Units kPercent = {3, false, {{100, 2}, {10, 5}, {1, 8}}};
constexpr Units kForce = {3, false, {{1000, 4}, {10, 8}, {1, 12}}};
constexpr Units kThousands = {3, false, {{1000, 2}, {10, 6}, {1, 8}}};
constexpr Units kTap = {1, false, {{1, 4}}};
constexpr Units kSize = {2, false, {{5, 2}, {1, 4}}};
constexpr Units kAge = {3, false, {{1440, 1}, {60, 3}, {1, 6}}};
constexpr Units kCount = {1, false, {{1, 2}}};

// --- enumerations, by rank
template <std::size_t kSize>
constexpr Ranks ranks(const std::uint8_t (&values)[kSize], std::uint8_t order) {
  return {values, static_cast<std::uint8_t>(kSize), order};
}
constexpr std::uint8_t kGrainFormValues[] = {40, 50, 30, 10, 60, 70, 80, 84, 53, 43, 14, 42, 52, 61, 44, 51,
                                             16, 81, 71, 90, 12, 31, 32, 41, 82, 94, 91, 19, 63, 20, 11, 13,
                                             15, 17, 18, 21, 22, 62, 64, 65, 72, 73, 83, 92, 93, 95};
constexpr Ranks kGrainForm =
    ranks(kGrainFormValues, 2);  // RG FC DF PP DH SH MF MFcr FCxr RGwp PPsd RGlr FCsf DHcp RGxf FCso PPgp
                                 // MFcl SHsu IF PPnd DFdc DFbk RGsr MFpc IFrc IFil PPrm DHch MM PPco PPpl
                                 // PPir PPhl PPip MMrp MMci DHpr DHla DHxr SHcv SHxr MFsl IFic IFbi IFsc
constexpr std::uint8_t kHandHardnessValues[] = {6,  12, 18, 24, 8,  10, 14, 16, 20, 30, 22,
                                                26, 4,  28, 32, 36, 9,  15, 21, 27, 33};
constexpr Ranks kHandHardness =
    ranks(kHandHardnessValues,
          2);  // Fist FourFinger OneFinger Pencil FistPlus FourFingerMinus FourFingerPlus OneFingerMinus
               // OneFingerPlus Knife PencilMinus PencilPlus FistMinus KnifeMinus KnifePlus Ice
               // FistToFourFinger FourFingerToOneFinger OneFingerToPencil PencilToKnife KnifeToIce
constexpr std::uint8_t kWetnessValues[] = {2, 4, 6, 3, 5, 8, 7, 10, 9};
constexpr Ranks kWetness = ranks(kWetnessValues, 1);  // D M W D_M M_W V W_V S V_S
constexpr std::uint8_t kGrainSizeClassValues[] = {2, 3, 1, 4, 5, 6};
constexpr Ranks kGrainSizeClass =
    ranks(kGrainSizeClassValues, 1);  // fine medium very_fine coarse very_coarse extreme
constexpr std::uint8_t kSurfaceRoughnessValues[] = {1, 2, 5, 3, 4};
constexpr Ranks kSurfaceRoughness = ranks(kSurfaceRoughnessValues, 1);  // rsm rwa rrd rcv rcx
constexpr std::uint8_t kCodeFamilyValues[] = {2, 3, 1};
constexpr Ranks kCodeFamily = ranks(kCodeFamilyValues, 0);  // ogrs swag metar
constexpr std::uint8_t kSkyConditionValues[] = {1, 5, 2, 3, 4, 6};
constexpr Ranks kSkyCondition = ranks(kSkyConditionValues, 1);  // CLR OVC FEW SCT BKN X
constexpr std::uint8_t kPrecipitationValues[] = {26, 7,  101, 103, 8,  5,  102, 4,  9,  23, 104, 105,
                                                 22, 27, 1,   2,   3,  6,  10,  11, 12, 13, 14,  15,
                                                 16, 17, 18,  19,  20, 21, 24,  25, 28, 106};
constexpr Ranks kPrecipitation = ranks(
    kPrecipitationValues, 1);  // Nil light_SN guideline_none guideline_snow SN RA guideline_rain light_RA
                               // heavy_SN GS guideline_mixed guideline_graupel light_GS RASN light_DZ DZ
                               // heavy_DZ heavy_RA light_SG SG heavy_SG light_IC IC heavy_IC light_PE PE
                               // heavy_PE light_GR GR heavy_GR heavy_GS UP FZRA guideline_freezing_rain
constexpr std::uint8_t kPrecipitationRateValues[] = {2, 1, 3, 4, 5, 6, 22, 23, 21, 24, 7, 8, 9, 10, 11};
constexpr Ranks kPrecipitationRate =
    ranks(kPrecipitationRateValues, 2);  // S1 S_1 S2 S3 S4 S5 RL RM RV RH S6 S7 S8 S9 S10
constexpr std::uint8_t kWindClassValues[] = {2, 1, 3, 4, 5};
constexpr Ranks kWindClass = ranks(kWindClassValues, 1);  // L C M S X
constexpr std::uint8_t kBlowingSnowValues[] = {1, 3, 2, 4, 5, 6};
constexpr Ranks kBlowingSnow = ranks(kBlowingSnowValues, 1);  // none light previous moderate intense unknown
constexpr std::uint8_t kCompassPointValues[] = {1, 2, 3, 8, 4, 5, 6, 7, 9, 10};
constexpr Ranks kCompassPoint = ranks(kCompassPointValues, 2);  // N NE E NW SE S SW W none variable
constexpr std::uint8_t kFractureCharacterValues[] = {1, 2, 3, 5, 4, 11, 12};
constexpr Ranks kFractureCharacter = ranks(kFractureCharacterValues, 1);  // SP SC RP BRK PC SDN RES
constexpr std::uint8_t kShearQualityValues[] = {1, 2, 3};
constexpr Ranks kShearQuality = ranks(kShearQualityValues, 0);  // Q1 Q2 Q3
constexpr std::uint8_t kFractureSurfaceValues[] = {1, 2, 3};
constexpr Ranks kFractureSurface = ranks(kFractureSurfaceValues, 0);  // Clean Rough Irregular
constexpr std::uint8_t kReleaseTypeValues[] = {1, 2, 3};
constexpr Ranks kReleaseType = ranks(kReleaseTypeValues, 0);  // WB MB EB
constexpr std::uint8_t kTestKindValues[] = {1, 2, 3, 4, 5, 6, 7, 8, 9, 0};
constexpr Ranks kTestKind =
    ranks(kTestKindValues, 1);  // CT ECT PST RB DT ST hand_shear shear_frame other none
constexpr std::uint8_t kTestOutcomeValues[] = {1, 2, 3};
constexpr Ranks kTestOutcome = ranks(kTestOutcomeValues, 0);  // fractured no_fracture not_valid
constexpr std::uint8_t kNotValidReasonValues[] = {2, 3, 1, 4, 5, 99};
constexpr Ranks kNotValidReason = ranks(
    kNotValidReasonValues, 1);  // broke_while_cutting column_disturbed sank_in loading slope_too_gentle other
constexpr std::uint8_t kLoadStageValues[] = {1, 2, 3, 4};
constexpr Ranks kLoadStage = ranks(kLoadStageValues, 0);  // isolating wrist elbow shoulder
constexpr std::uint8_t kShearEaseValues[] = {3, 4, 5, 2, 1};
constexpr Ranks kShearEase = ranks(kShearEaseValues, 1);  // E M H V C
constexpr std::uint8_t kCrossingValues[] = {1, 2};
constexpr Ranks kCrossing = ranks(kCrossingValues, 0);  // crossed not_crossed
constexpr std::uint8_t kCrossingRuleValues[] = {1, 2};
constexpr Ranks kCrossingRule = ranks(kCrossingRuleValues, 0);  // same_tap one_more_tap
constexpr std::uint8_t kSawEndValues[] = {1, 2, 3};
constexpr Ranks kSawEnd = ranks(kSawEndValues, 0);  // End SF Arr
constexpr std::uint8_t kColumnEndsValues[] = {1, 2};
constexpr Ranks kColumnEnds = ranks(kColumnEndsValues, 0);  // vertical slope_normal
constexpr std::uint8_t kPartOfLayerValues[] = {1, 2, 3};
constexpr Ranks kPartOfLayer = ranks(kPartOfLayerValues, 0);  // all top bottom
constexpr std::uint8_t kLayerNameKindValues[] = {1, 2, 3};
constexpr Ranks kLayerNameKind = ranks(kLayerNameKindValues, 0);  // buried formed assumed
constexpr std::uint8_t kDirectionValues[] = {1, 2, 0};
constexpr Ranks kDirection = ranks(kDirectionValues, 0);  // vertical slope_normal unknown
constexpr std::uint8_t kAnswerValues[] = {2, 1, 3};
constexpr Ranks kAnswer = ranks(kAnswerValues, 0);  // no yes not_looked_for
constexpr std::uint8_t kPurposeValues[] = {1, 2, 3, 4, 5, 6};
constexpr Ranks kPurpose =
    ranks(kPurposeValues, 1);  // quick_pit test_profile full_profile service_report fracture_line teaching
constexpr std::uint8_t kComparisonValues[] = {1, 2, 4, 5, 3, 6};
constexpr Ranks kComparison = ranks(kComparisonValues, 1);  // same similar less more different unknown
constexpr std::uint8_t kSignKindValues[] = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10};
constexpr Ranks kSignKind =
    ranks(kSignKindValues, 1);  // whumpf cracking slides remote_trigger hollow_sound wind_loading
                                // heavy_precipitation rapid_warming pinwheels snow_shedding_from_trees
constexpr std::uint8_t kTriggerValues[] = {1, 2, 7, 3, 4, 5, 6};
constexpr Ranks kTrigger =
    ranks(kTriggerValues, 1);  // natural person unknown remote explosive machine cornice
constexpr std::uint8_t kSlideKindValues[] = {1, 2, 3, 4, 5};
constexpr Ranks kSlideKind = ranks(kSlideKindValues, 0);  // slab loose glide cornice unknown
constexpr std::uint8_t kConfidenceValues[] = {2, 3, 1};
constexpr Ranks kConfidence = ranks(kConfidenceValues, 0);  // fair high low
constexpr std::uint8_t kTrainingValues[] = {4, 3, 6, 2, 5, 1};
constexpr Ranks kTraining =
    ranks(kTrainingValues, 1);  // professional recreational student introductory forecaster none
constexpr std::uint8_t kBulletinStateValues[] = {1, 3, 2};
constexpr Ranks kBulletinState = ranks(kBulletinStateValues, 0);  // issued not_looked_at none_issued
constexpr std::uint8_t kSharingValues[] = {2, 3, 4, 1};
constexpr Ranks kSharing = ranks(kSharingValues, 1);  // partners service public_ private_only
constexpr std::uint8_t kPositionSourceValues[] = {1, 2, 4, 3};
constexpr Ranks kPositionSource = ranks(kPositionSourceValues, 0);  // gnss map estimate barometer
constexpr std::uint8_t kAbsentReasonValues[] = {4, 2, 5, 1, 3, 6};
constexpr Ranks kAbsentReason =
    ranks(kAbsentReasonValues, 1);  // unknown missing withheld inapplicable template other
constexpr std::uint8_t kDensityMethodValues[] = {3, 1, 2, 4, 99};
constexpr Ranks kDensityMethod =
    ranks(kDensityMethodValues, 1);  // snow_cutter snow_tube snow_cylinder denoth_probe other
constexpr std::uint8_t kLiquidWaterMethodValues[] = {1, 2, 99};
constexpr Ranks kLiquidWaterMethod = ranks(kLiquidWaterMethodValues, 0);  // denoth_probe snow_fork other
constexpr std::uint8_t kSurfaceAreaMethodValues[] = {1, 99};
constexpr Ranks kSurfaceAreaMethod = ranks(kSurfaceAreaMethodValues, 0);  // ice_cube other
constexpr std::uint8_t kHardnessMethodValues[] = {2, 1, 3, 99};
constexpr Ranks kHardnessMethod =
    ranks(kHardnessMethodValues, 0);  // ram_sonde snow_micro_pen push_pull_gauge other
constexpr std::uint8_t kStrengthMethodValues[] = {1, 99};
constexpr Ranks kStrengthMethod = ranks(kStrengthMethodValues, 0);  // shear_frame other
constexpr std::uint8_t kStrengthKindValues[] = {3, 1, 2};
constexpr Ranks kStrengthKind = ranks(kStrengthKindValues, 0);  // shear compressive tensile
constexpr std::uint8_t kImpurityValues[] = {2, 1, 3};
constexpr Ranks kImpurity = ranks(kImpurityValues, 0);  // dust black_carbon isotopes
constexpr std::uint8_t kImpurityMethodValues[] = {99};
constexpr Ranks kImpurityMethod = ranks(kImpurityMethodValues, 0);  // other
constexpr std::uint8_t kFractionUnitValues[] = {2, 1, 3};
constexpr Ranks kFractionUnit = ranks(kFractionUnitValues, 0);  // ppm percent ppb
constexpr std::uint8_t kStepKindValues[] = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17};
constexpr Ranks kStepKind = ranks(
    kStepKindValues, 3);  // kit_within_reach pack_closed phone_away_from_transceiver representative_spot
                          // spot_of_little_consequence nobody_and_nothing_above probed_for_even_depth
                          // slope_steep_enough dug_from_below wall_vertical_and_shaded
                          // compression_column_isolated extended_column_isolated deep_tap_column_isolated
                          // saw_column_isolated rutschblock_isolated shear_column_isolated pit_filled_in

// --- how a row is written below
constexpr Code row(int field, Way way) {
  Code code;
  code.field = static_cast<flatbuffers::voffset_t>(field);
  code.way = way;
  return code;
}
constexpr Code none(int field) {
  return row(field, Way::none);
}
constexpr Code flag(int field) {
  return row(field, Way::flag);
}
constexpr Code marks(int field) {
  return row(field, Way::marks);
}
constexpr Code plain(int field, Way way) {
  return row(field, way);
}
constexpr Code code(int field, const Ranks& ranks) {
  Code code = row(field, Way::code);
  code.ranks = &ranks;
  return code;
}
constexpr Code codes(int field, const Ranks& ranks) {
  Code code = row(field, Way::codes);
  code.ranks = &ranks;
  return code;
}
constexpr Code number(int field, const Units& units) {
  Code code = row(field, Way::number);
  code.units = &units;
  return code;
}
constexpr Code change(int field, const Units& units) {
  Code code = row(field, Way::change);
  code.units = &units;
  return code;
}
constexpr Code numbers(int field) {
  return row(field, Way::numbers);
}
constexpr Code depth(int field, Way way, std::uint8_t order) {
  Code code = row(field, way);
  code.order = order;
  return code;
}
constexpr Code table(int field, const Layout& layout) {
  Code code = row(field, Way::table);
  code.layout = &layout;
  return code;
}
constexpr Code tables(int field, const Layout& layout, std::uint8_t order) {
  Code code = row(field, Way::tables);
  code.layout = &layout;
  code.order = order;
  return code;
}
constexpr std::uint64_t fields(std::initializer_list<int> offsets) {
  std::uint64_t set = 0;
  for (const int offset : offsets) set |= std::uint64_t{1} << field_id(offset);
  return set;
}

// Null pointers are never followed, so a row out of order must not get as far as a card.
template <std::size_t kCodes, std::size_t kShapes>
constexpr Layout layout(const Code (&codes)[kCodes], const std::uint64_t (&shapes)[kShapes],
                        std::uint64_t usual, std::uint8_t order) {
  return {codes, shapes, usual, static_cast<std::uint8_t>(kCodes), static_cast<std::uint8_t>(kShapes), order};
}

// --- Observer
constexpr Code kObserverCodes[] = {
    plain(Observer::VT_NAME, Way::text),
    code(Observer::VT_TRAINING, kTraining),
    plain(Observer::VT_ID, Way::text),
    plain(Observer::VT_WORDS, Way::text),
};
constexpr std::uint64_t kObserverShapes[] = {
    fields({Observer::VT_NAME}),
    fields({Observer::VT_NAME, Observer::VT_TRAINING}),
    fields({Observer::VT_NAME, Observer::VT_WORDS}),
};
constexpr std::uint64_t kObserverUsual = fields({Observer::VT_NAME, Observer::VT_TRAINING});
constexpr Layout kObserverLayout = layout(kObserverCodes, kObserverShapes, kObserverUsual, 0);
// --- Operation
constexpr Code kOperationCodes[] = {
    plain(Operation::VT_NAME, Way::text),
    plain(Operation::VT_ID, Way::text),
    tables(Operation::VT_CONTACTS, kObserverLayout, 0),
};
constexpr std::uint64_t kOperationShapes[] = {
    fields({Operation::VT_NAME}),
    fields({Operation::VT_NAME, Operation::VT_CONTACTS}),
};
constexpr std::uint64_t kOperationUsual = fields({Operation::VT_NAME});
constexpr Layout kOperationLayout = layout(kOperationCodes, kOperationShapes, kOperationUsual, 0);
// --- Site
constexpr Code kSiteCodes[] = {
    plain(Site::VT_NAME, Way::text),
    plain(Site::VT_POINT_KIND, Way::text),
    number(Site::VT_ELEVATION_10UM, kElevation),
    code(Site::VT_ELEVATION_SOURCE, kPositionSource),
    code(Site::VT_ASPECT_POINT, kCompassPoint),
    number(Site::VT_ASPECT_DEG, kBearing),
    number(Site::VT_SLOPE_DEG, kSlope),
    number(Site::VT_LATITUDE_E7DEG, kCoordinate),
    number(Site::VT_LONGITUDE_E7DEG, kCoordinate),
    number(Site::VT_POSITION_ACCURACY_10UM, kMetres),
    code(Site::VT_POSITION_SOURCE, kPositionSource),
    plain(Site::VT_COUNTRY, Way::text),
    plain(Site::VT_REGION, Way::text),
    plain(Site::VT_ID, Way::text),
    plain(Site::VT_POINT_ID, Way::text),
    number(Site::VT_BLURRED_BY_10UM, kMetres),
    numbers(Site::VT_PROBES_10UM),
    plain(Site::VT_TERRAIN, Way::text),
    marks(Site::VT_UNRELIABLE),
};
constexpr std::uint64_t kSiteShapes[] = {
    fields({Site::VT_ELEVATION_10UM, Site::VT_ASPECT_POINT, Site::VT_SLOPE_DEG, Site::VT_PROBES_10UM}),
    fields({Site::VT_ELEVATION_10UM, Site::VT_ASPECT_POINT, Site::VT_SLOPE_DEG}),
    fields({Site::VT_ELEVATION_10UM, Site::VT_ASPECT_POINT, Site::VT_SLOPE_DEG, Site::VT_LATITUDE_E7DEG,
            Site::VT_LONGITUDE_E7DEG, Site::VT_PROBES_10UM}),
    fields({Site::VT_ELEVATION_10UM, Site::VT_ASPECT_POINT, Site::VT_SLOPE_DEG, Site::VT_LATITUDE_E7DEG,
            Site::VT_LONGITUDE_E7DEG}),
    fields({Site::VT_NAME, Site::VT_ELEVATION_10UM, Site::VT_ASPECT_POINT, Site::VT_SLOPE_DEG}),
    fields({Site::VT_ELEVATION_10UM, Site::VT_ASPECT_DEG, Site::VT_SLOPE_DEG, Site::VT_LATITUDE_E7DEG,
            Site::VT_LONGITUDE_E7DEG}),
};
constexpr std::uint64_t kSiteUsual =
    fields({Site::VT_NAME, Site::VT_ELEVATION_10UM, Site::VT_ASPECT_POINT, Site::VT_ASPECT_DEG,
            Site::VT_SLOPE_DEG, Site::VT_LATITUDE_E7DEG, Site::VT_LONGITUDE_E7DEG, Site::VT_PROBES_10UM});
constexpr Layout kSiteLayout = layout(kSiteCodes, kSiteShapes, kSiteUsual, 1);
// --- Choice
constexpr Code kChoiceCodes[] = {
    plain(Choice::VT_WORDS, Way::text),
    plain(Choice::VT_TERRAIN_OF_INTEREST, Way::text),
    code(Choice::VT_ASPECT, kComparison),
    code(Choice::VT_ELEVATION, kComparison),
    code(Choice::VT_WIND_LOADING, kComparison),
    code(Choice::VT_INCLINE, kComparison),
    code(Choice::VT_INTEREST_ASPECT_POINT, kCompassPoint),
    number(Choice::VT_INTEREST_ASPECT_DEG, kBearing),
    number(Choice::VT_INTEREST_ELEVATION_10UM, kElevation),
    number(Choice::VT_INTEREST_SLOPE_DEG, kSlope),
    marks(Choice::VT_UNRELIABLE),
};
constexpr std::uint64_t kChoiceShapes[] = {
    fields({Choice::VT_WORDS}),
    fields({Choice::VT_WORDS, Choice::VT_TERRAIN_OF_INTEREST, Choice::VT_ASPECT, Choice::VT_ELEVATION}),
    fields({Choice::VT_WORDS, Choice::VT_TERRAIN_OF_INTEREST, Choice::VT_ASPECT, Choice::VT_ELEVATION,
            Choice::VT_INCLINE}),
    fields({Choice::VT_WORDS, Choice::VT_TERRAIN_OF_INTEREST, Choice::VT_ASPECT, Choice::VT_ELEVATION,
            Choice::VT_WIND_LOADING}),
    fields({Choice::VT_WORDS, Choice::VT_TERRAIN_OF_INTEREST, Choice::VT_ASPECT, Choice::VT_ELEVATION,
            Choice::VT_WIND_LOADING, Choice::VT_INCLINE}),
    fields({Choice::VT_WORDS, Choice::VT_TERRAIN_OF_INTEREST}),
};
constexpr std::uint64_t kChoiceUsual =
    fields({Choice::VT_WORDS, Choice::VT_TERRAIN_OF_INTEREST, Choice::VT_ASPECT, Choice::VT_ELEVATION,
            Choice::VT_WIND_LOADING, Choice::VT_INCLINE});
constexpr Layout kChoiceLayout = layout(kChoiceCodes, kChoiceShapes, kChoiceUsual, 1);
// --- Weather
constexpr Code kWeatherCodes[] = {
    code(Weather::VT_SKY, kSkyCondition),
    flag(Weather::VT_SKY_THIN),
    code(Weather::VT_SKY_FAMILY, kCodeFamily),
    number(Weather::VT_VALLEY_FOG_BASE_10UM, kElevation),
    number(Weather::VT_VALLEY_FOG_TOP_10UM, kElevation),
    code(Weather::VT_PRECIPITATION, kPrecipitation),
    code(Weather::VT_PRECIPITATION_FAMILY, kCodeFamily),
    code(Weather::VT_PRECIPITATION_RATE, kPrecipitationRate),
    number(Weather::VT_AIR_TEMPERATURE_CDEGC, kAir),
    code(Weather::VT_WIND, kWindClass),
    number(Weather::VT_WIND_SPEED_CMS, kWindSpeed),
    code(Weather::VT_WIND_FROM_POINT, kCompassPoint),
    number(Weather::VT_WIND_FROM_DEG, kBearing),
    code(Weather::VT_BLOWING_SNOW, kBlowingSnow),
    code(Weather::VT_BLOWING_SNOW_FROM_POINT, kCompassPoint),
    plain(Weather::VT_WORDS, Way::text),
    marks(Weather::VT_UNRELIABLE),
};
constexpr std::uint64_t kWeatherShapes[] = {
    fields({Weather::VT_SKY, Weather::VT_PRECIPITATION, Weather::VT_AIR_TEMPERATURE_CDEGC, Weather::VT_WIND,
            Weather::VT_WIND_FROM_POINT}),
    fields({Weather::VT_SKY, Weather::VT_PRECIPITATION, Weather::VT_WIND, Weather::VT_WIND_FROM_POINT}),
    fields({Weather::VT_SKY, Weather::VT_PRECIPITATION, Weather::VT_AIR_TEMPERATURE_CDEGC, Weather::VT_WIND}),
    fields(
        {Weather::VT_SKY, Weather::VT_AIR_TEMPERATURE_CDEGC, Weather::VT_WIND, Weather::VT_WIND_FROM_POINT}),
    fields({Weather::VT_SKY, Weather::VT_PRECIPITATION, Weather::VT_AIR_TEMPERATURE_CDEGC, Weather::VT_WIND,
            Weather::VT_WIND_FROM_POINT, Weather::VT_BLOWING_SNOW}),
    fields({Weather::VT_SKY, Weather::VT_WIND}),
};
constexpr std::uint64_t kWeatherUsual =
    fields({Weather::VT_SKY, Weather::VT_PRECIPITATION, Weather::VT_AIR_TEMPERATURE_CDEGC, Weather::VT_WIND,
            Weather::VT_WIND_FROM_POINT, Weather::VT_BLOWING_SNOW, Weather::VT_WORDS});
constexpr Layout kWeatherLayout = layout(kWeatherCodes, kWeatherShapes, kWeatherUsual, 1);
// --- Surface
constexpr Code kSurfaceCodes[] = {
    code(Surface::VT_ROUGHNESS, kSurfaceRoughness),
    number(Surface::VT_AMPLITUDE_10UM, kShort),
    number(Surface::VT_AMPLITUDE_MAX_10UM, kShort),
    number(Surface::VT_WAVELENGTH_10UM, kShort),
    number(Surface::VT_WAVELENGTH_MAX_10UM, kShort),
    code(Surface::VT_FEATURE_ASPECT_POINT, kCompassPoint),
    number(Surface::VT_FEATURE_ASPECT_DEG, kBearing),
    number(Surface::VT_PENETRATION_RAM_10UM, kShort),
    number(Surface::VT_PENETRATION_FOOT_10UM, kShort),
    number(Surface::VT_PENETRATION_SKI_10UM, kShort),
    number(Surface::VT_TEMPERATURE_CDEGC, kAir),
    plain(Surface::VT_WORDS, Way::text),
    marks(Surface::VT_UNRELIABLE),
};
constexpr std::uint64_t kSurfaceShapes[] = {
    fields({Surface::VT_PENETRATION_FOOT_10UM, Surface::VT_PENETRATION_SKI_10UM}),
    fields({Surface::VT_PENETRATION_FOOT_10UM}),
    fields({Surface::VT_PENETRATION_SKI_10UM}),
    fields({Surface::VT_WORDS}),
    fields({Surface::VT_PENETRATION_FOOT_10UM, Surface::VT_PENETRATION_SKI_10UM, Surface::VT_WORDS}),
};
constexpr std::uint64_t kSurfaceUsual =
    fields({Surface::VT_ROUGHNESS, Surface::VT_PENETRATION_FOOT_10UM, Surface::VT_PENETRATION_SKI_10UM,
            Surface::VT_TEMPERATURE_CDEGC, Surface::VT_WORDS});
constexpr Layout kSurfaceLayout = layout(kSurfaceCodes, kSurfaceShapes, kSurfaceUsual, 1);
// --- Snowpack
constexpr Code kSnowpackCodes[] = {
    number(Snowpack::VT_HS_10UM, kHeight),
    number(Snowpack::VT_HS_WATER_10UM, kWater),
    number(Snowpack::VT_HN24_10UM, kShort),
    number(Snowpack::VT_HN24_WATER_10UM, kWater),
    number(Snowpack::VT_HIN_10UM, kShort),
    number(Snowpack::VT_HIN_WATER_10UM, kWater),
    plain(Snowpack::VT_HIN_CLEARED, Way::moment),
    number(Snowpack::VT_HST_10UM, kShort),
    number(Snowpack::VT_HST_WATER_10UM, kWater),
    code(Snowpack::VT_DIRECTION, kDirection),
    marks(Snowpack::VT_UNRELIABLE),
};
constexpr std::uint64_t kSnowpackShapes[] = {
    fields({Snowpack::VT_HS_10UM}),
    fields({Snowpack::VT_HS_10UM, Snowpack::VT_DIRECTION}),
    fields({Snowpack::VT_HS_10UM, Snowpack::VT_HN24_10UM}),
    fields({Snowpack::VT_HS_10UM, Snowpack::VT_HST_10UM}),
};
constexpr std::uint64_t kSnowpackUsual =
    fields({Snowpack::VT_HS_10UM, Snowpack::VT_HN24_10UM, Snowpack::VT_HST_10UM});
constexpr Layout kSnowpackLayout = layout(kSnowpackCodes, kSnowpackShapes, kSnowpackUsual, 0);
// --- LayerName
constexpr Code kLayerNameCodes[] = {
    plain(LayerName::VT_DATE, Way::moment),
    code(LayerName::VT_KIND, kLayerNameKind),
    plain(LayerName::VT_WORDS, Way::text),
};
constexpr std::uint64_t kLayerNameShapes[] = {
    fields({LayerName::VT_DATE, LayerName::VT_KIND}),
    fields({LayerName::VT_DATE}),
    fields({LayerName::VT_WORDS}),
};
constexpr std::uint64_t kLayerNameUsual =
    fields({LayerName::VT_DATE, LayerName::VT_KIND, LayerName::VT_WORDS});
constexpr Layout kLayerNameLayout = layout(kLayerNameCodes, kLayerNameShapes, kLayerNameUsual, 0);
// --- Layer
constexpr Code kLayerCodes[] = {
    depth(Layer::VT_TOP, Way::next_top, 3),
    depth(Layer::VT_BOTTOM, Way::below_top, 3),
    code(Layer::VT_HARDNESS, kHandHardness),
    code(Layer::VT_HARDNESS_TOP, kHandHardness),
    code(Layer::VT_HARDNESS_BOTTOM, kHandHardness),
    code(Layer::VT_GRAIN_FORM, kGrainForm),
    code(Layer::VT_GRAIN_FORM_SECOND, kGrainForm),
    number(Layer::VT_GRAIN_SIZE_10UM, kGrain),
    number(Layer::VT_GRAIN_SIZE_MAX_10UM, kGrain),
    code(Layer::VT_GRAIN_SIZE_CLASS, kGrainSizeClass),
    code(Layer::VT_GRAIN_SIZE_MAX_CLASS, kGrainSizeClass),
    code(Layer::VT_WETNESS, kWetness),
    plain(Layer::VT_WORDS, Way::text),
    codes(Layer::VT_CANDIDATES, kGrainForm),
    table(Layer::VT_NAME, kLayerNameLayout),
    plain(Layer::VT_FORMED, Way::time_span),
    code(Layer::VT_CONCERN, kPartOfLayer),
    marks(Layer::VT_UNRELIABLE),
};
constexpr std::uint64_t kLayerShapes[] = {
    fields({Layer::VT_TOP, Layer::VT_BOTTOM, Layer::VT_HARDNESS, Layer::VT_GRAIN_FORM,
            Layer::VT_GRAIN_SIZE_10UM}),
    fields({Layer::VT_TOP, Layer::VT_BOTTOM, Layer::VT_HARDNESS, Layer::VT_GRAIN_FORM}),
    fields({Layer::VT_TOP, Layer::VT_BOTTOM, Layer::VT_HARDNESS, Layer::VT_GRAIN_FORM, Layer::VT_WORDS}),
    fields({Layer::VT_TOP, Layer::VT_BOTTOM, Layer::VT_HARDNESS, Layer::VT_GRAIN_FORM,
            Layer::VT_GRAIN_SIZE_10UM, Layer::VT_GRAIN_SIZE_MAX_10UM}),
    fields({Layer::VT_TOP, Layer::VT_BOTTOM, Layer::VT_HARDNESS, Layer::VT_GRAIN_FORM,
            Layer::VT_GRAIN_FORM_SECOND, Layer::VT_GRAIN_SIZE_10UM}),
    fields({Layer::VT_TOP, Layer::VT_BOTTOM, Layer::VT_HARDNESS, Layer::VT_GRAIN_FORM,
            Layer::VT_GRAIN_SIZE_10UM, Layer::VT_WETNESS}),
    fields({Layer::VT_TOP, Layer::VT_BOTTOM, Layer::VT_HARDNESS, Layer::VT_GRAIN_FORM,
            Layer::VT_GRAIN_FORM_SECOND, Layer::VT_GRAIN_SIZE_10UM, Layer::VT_GRAIN_SIZE_MAX_10UM}),
    fields({Layer::VT_TOP, Layer::VT_BOTTOM, Layer::VT_HARDNESS}),
    fields({Layer::VT_TOP, Layer::VT_BOTTOM, Layer::VT_HARDNESS, Layer::VT_WORDS}),
    fields({Layer::VT_TOP, Layer::VT_BOTTOM, Layer::VT_HARDNESS, Layer::VT_GRAIN_FORM,
            Layer::VT_GRAIN_SIZE_10UM, Layer::VT_NAME}),
    fields({Layer::VT_TOP, Layer::VT_BOTTOM, Layer::VT_HARDNESS, Layer::VT_GRAIN_FORM, Layer::VT_WETNESS}),
    fields({Layer::VT_TOP, Layer::VT_BOTTOM, Layer::VT_HARDNESS, Layer::VT_GRAIN_FORM,
            Layer::VT_GRAIN_SIZE_10UM, Layer::VT_WORDS}),
    fields({Layer::VT_TOP, Layer::VT_BOTTOM, Layer::VT_HARDNESS, Layer::VT_GRAIN_FORM,
            Layer::VT_GRAIN_FORM_SECOND}),
    fields({Layer::VT_TOP, Layer::VT_BOTTOM, Layer::VT_HARDNESS_TOP, Layer::VT_HARDNESS_BOTTOM,
            Layer::VT_GRAIN_FORM, Layer::VT_GRAIN_SIZE_10UM}),
    fields({Layer::VT_TOP, Layer::VT_BOTTOM, Layer::VT_HARDNESS_TOP, Layer::VT_HARDNESS_BOTTOM,
            Layer::VT_GRAIN_FORM}),
    fields({Layer::VT_TOP, Layer::VT_BOTTOM, Layer::VT_HARDNESS, Layer::VT_GRAIN_FORM,
            Layer::VT_GRAIN_SIZE_10UM, Layer::VT_CONCERN}),
    fields({Layer::VT_TOP, Layer::VT_BOTTOM, Layer::VT_HARDNESS, Layer::VT_GRAIN_FORM,
            Layer::VT_GRAIN_SIZE_10UM, Layer::VT_GRAIN_SIZE_MAX_10UM, Layer::VT_WETNESS}),
    fields({Layer::VT_TOP, Layer::VT_BOTTOM, Layer::VT_HARDNESS, Layer::VT_GRAIN_FORM,
            Layer::VT_GRAIN_FORM_SECOND, Layer::VT_GRAIN_SIZE_10UM, Layer::VT_GRAIN_SIZE_MAX_10UM,
            Layer::VT_WETNESS}),
    fields({Layer::VT_TOP, Layer::VT_BOTTOM, Layer::VT_HARDNESS, Layer::VT_GRAIN_FORM,
            Layer::VT_GRAIN_FORM_SECOND, Layer::VT_GRAIN_SIZE_10UM, Layer::VT_WETNESS}),
    fields({Layer::VT_TOP, Layer::VT_BOTTOM, Layer::VT_HARDNESS, Layer::VT_GRAIN_FORM, Layer::VT_NAME}),
    fields({Layer::VT_TOP, Layer::VT_BOTTOM, Layer::VT_HARDNESS, Layer::VT_GRAIN_FORM,
            Layer::VT_GRAIN_SIZE_10UM, Layer::VT_GRAIN_SIZE_MAX_10UM, Layer::VT_NAME}),
    fields({Layer::VT_TOP, Layer::VT_BOTTOM, Layer::VT_HARDNESS, Layer::VT_GRAIN_FORM,
            Layer::VT_GRAIN_SIZE_10UM, Layer::VT_NAME, Layer::VT_CONCERN}),
    fields({Layer::VT_TOP, Layer::VT_BOTTOM, Layer::VT_HARDNESS, Layer::VT_WORDS, Layer::VT_CANDIDATES}),
    fields({Layer::VT_TOP, Layer::VT_BOTTOM, Layer::VT_HARDNESS, Layer::VT_GRAIN_FORM, Layer::VT_CONCERN}),
    fields({Layer::VT_GRAIN_FORM}),
    fields({Layer::VT_GRAIN_FORM, Layer::VT_GRAIN_SIZE_10UM}),
    fields({Layer::VT_GRAIN_FORM, Layer::VT_GRAIN_SIZE_10UM, Layer::VT_NAME}),
    fields({Layer::VT_GRAIN_FORM, Layer::VT_NAME}),
};
constexpr std::uint64_t kLayerUsual =
    fields({Layer::VT_TOP, Layer::VT_BOTTOM, Layer::VT_HARDNESS, Layer::VT_GRAIN_FORM,
            Layer::VT_GRAIN_FORM_SECOND, Layer::VT_GRAIN_SIZE_10UM, Layer::VT_GRAIN_SIZE_MAX_10UM,
            Layer::VT_WETNESS, Layer::VT_WORDS, Layer::VT_NAME, Layer::VT_CONCERN});
constexpr Layout kLayerLayout = layout(kLayerCodes, kLayerShapes, kLayerUsual, 2);
// --- TemperatureReading
constexpr Code kTemperatureReadingCodes[] = {
    depth(TemperatureReading::VT_DEPTH, Way::next_depth, 3),
    change(TemperatureReading::VT_TEMPERATURE_CDEGC, kTemperature),
    number(TemperatureReading::VT_UNCERTAINTY_CDEGC, kCount),
    marks(TemperatureReading::VT_UNRELIABLE),
};
constexpr std::uint64_t kTemperatureReadingShapes[] = {
    fields({TemperatureReading::VT_DEPTH, TemperatureReading::VT_TEMPERATURE_CDEGC}),
};
constexpr std::uint64_t kTemperatureReadingUsual =
    fields({TemperatureReading::VT_DEPTH, TemperatureReading::VT_TEMPERATURE_CDEGC});
constexpr Layout kTemperatureReadingLayout =
    layout(kTemperatureReadingCodes, kTemperatureReadingShapes, kTemperatureReadingUsual, 0);
// --- DensityReading
constexpr Code kDensityReadingCodes[] = {
    depth(DensityReading::VT_TOP, Way::at_boundary, 4),
    depth(DensityReading::VT_BOTTOM, Way::at_boundary, 4),
    number(DensityReading::VT_DENSITY_DKGM3, kDensity),
    marks(DensityReading::VT_UNRELIABLE),
};
constexpr std::uint64_t kDensityReadingShapes[] = {
    fields({DensityReading::VT_TOP, DensityReading::VT_BOTTOM, DensityReading::VT_DENSITY_DKGM3}),
    fields({DensityReading::VT_TOP, DensityReading::VT_DENSITY_DKGM3}),
};
constexpr std::uint64_t kDensityReadingUsual =
    fields({DensityReading::VT_TOP, DensityReading::VT_BOTTOM, DensityReading::VT_DENSITY_DKGM3});
constexpr Layout kDensityReadingLayout =
    layout(kDensityReadingCodes, kDensityReadingShapes, kDensityReadingUsual, 0);
// --- DensityProfile
constexpr Code kDensityProfileCodes[] = {
    number(DensityProfile::VT_NUMBER, kCount),
    code(DensityProfile::VT_METHOD, kDensityMethod),
    number(DensityProfile::VT_UNCERTAINTY_DKGM3, kCount),
    number(DensityProfile::VT_PROBE_VOLUME_MM3, kThousands),
    number(DensityProfile::VT_PROBE_DIAMETER_10UM, kShort),
    number(DensityProfile::VT_PROBE_LENGTH_10UM, kShort),
    number(DensityProfile::VT_PROBED_THICKNESS_10UM, kShort),
    tables(DensityProfile::VT_READINGS, kDensityReadingLayout, 2),
};
constexpr std::uint64_t kDensityProfileShapes[] = {
    fields({DensityProfile::VT_READINGS}),
    fields({DensityProfile::VT_METHOD, DensityProfile::VT_READINGS}),
    fields(
        {DensityProfile::VT_METHOD, DensityProfile::VT_PROBED_THICKNESS_10UM, DensityProfile::VT_READINGS}),
};
constexpr std::uint64_t kDensityProfileUsual =
    fields({DensityProfile::VT_METHOD, DensityProfile::VT_READINGS});
constexpr Layout kDensityProfileLayout =
    layout(kDensityProfileCodes, kDensityProfileShapes, kDensityProfileUsual, 0);
// --- LiquidWaterReading
constexpr Code kLiquidWaterReadingCodes[] = {
    depth(LiquidWaterReading::VT_TOP, Way::next_top, 3),
    depth(LiquidWaterReading::VT_BOTTOM, Way::below_top, 2),
    number(LiquidWaterReading::VT_LIQUID_WATER_E4, kPercent),
    marks(LiquidWaterReading::VT_UNRELIABLE),
};
constexpr std::uint64_t kLiquidWaterReadingShapes[] = {
    fields(
        {LiquidWaterReading::VT_TOP, LiquidWaterReading::VT_BOTTOM, LiquidWaterReading::VT_LIQUID_WATER_E4}),
    fields({LiquidWaterReading::VT_TOP, LiquidWaterReading::VT_LIQUID_WATER_E4}),
};
constexpr std::uint64_t kLiquidWaterReadingUsual = fields(
    {LiquidWaterReading::VT_TOP, LiquidWaterReading::VT_BOTTOM, LiquidWaterReading::VT_LIQUID_WATER_E4});
constexpr Layout kLiquidWaterReadingLayout =
    layout(kLiquidWaterReadingCodes, kLiquidWaterReadingShapes, kLiquidWaterReadingUsual, 0);
// --- LiquidWaterProfile
constexpr Code kLiquidWaterProfileCodes[] = {
    number(LiquidWaterProfile::VT_NUMBER, kCount),
    code(LiquidWaterProfile::VT_METHOD, kLiquidWaterMethod),
    number(LiquidWaterProfile::VT_UNCERTAINTY_E4, kPercent),
    number(LiquidWaterProfile::VT_PROBED_THICKNESS_10UM, kShort),
    tables(LiquidWaterProfile::VT_READINGS, kLiquidWaterReadingLayout, 2),
};
constexpr std::uint64_t kLiquidWaterProfileShapes[] = {
    fields({LiquidWaterProfile::VT_READINGS}),
    fields({LiquidWaterProfile::VT_METHOD, LiquidWaterProfile::VT_READINGS}),
    fields({LiquidWaterProfile::VT_METHOD, LiquidWaterProfile::VT_PROBED_THICKNESS_10UM,
            LiquidWaterProfile::VT_READINGS}),
};
constexpr std::uint64_t kLiquidWaterProfileUsual =
    fields({LiquidWaterProfile::VT_METHOD, LiquidWaterProfile::VT_READINGS});
constexpr Layout kLiquidWaterProfileLayout =
    layout(kLiquidWaterProfileCodes, kLiquidWaterProfileShapes, kLiquidWaterProfileUsual, 0);
// --- SurfaceAreaReading
constexpr Code kSurfaceAreaReadingCodes[] = {
    depth(SurfaceAreaReading::VT_TOP, Way::next_top, 3),
    depth(SurfaceAreaReading::VT_BOTTOM, Way::below_top, 2),
    number(SurfaceAreaReading::VT_SURFACE_AREA_E2M2KG, kPercent),
    marks(SurfaceAreaReading::VT_UNRELIABLE),
};
constexpr std::uint64_t kSurfaceAreaReadingShapes[] = {
    fields({SurfaceAreaReading::VT_TOP, SurfaceAreaReading::VT_BOTTOM,
            SurfaceAreaReading::VT_SURFACE_AREA_E2M2KG}),
    fields({SurfaceAreaReading::VT_TOP, SurfaceAreaReading::VT_SURFACE_AREA_E2M2KG}),
};
constexpr std::uint64_t kSurfaceAreaReadingUsual = fields(
    {SurfaceAreaReading::VT_TOP, SurfaceAreaReading::VT_BOTTOM, SurfaceAreaReading::VT_SURFACE_AREA_E2M2KG});
constexpr Layout kSurfaceAreaReadingLayout =
    layout(kSurfaceAreaReadingCodes, kSurfaceAreaReadingShapes, kSurfaceAreaReadingUsual, 0);
// --- SurfaceAreaProfile
constexpr Code kSurfaceAreaProfileCodes[] = {
    number(SurfaceAreaProfile::VT_NUMBER, kCount),
    code(SurfaceAreaProfile::VT_METHOD, kSurfaceAreaMethod),
    number(SurfaceAreaProfile::VT_UNCERTAINTY_E2M2KG, kPercent),
    number(SurfaceAreaProfile::VT_PROBED_THICKNESS_10UM, kShort),
    tables(SurfaceAreaProfile::VT_READINGS, kSurfaceAreaReadingLayout, 2),
    none(SurfaceAreaProfile::VT_DENSE_DEPTH_CM),
    none(SurfaceAreaProfile::VT_DENSE_M2KG),
};
constexpr std::uint64_t kSurfaceAreaProfileShapes[] = {
    fields({SurfaceAreaProfile::VT_READINGS}),
    fields({SurfaceAreaProfile::VT_METHOD, SurfaceAreaProfile::VT_READINGS}),
    fields({SurfaceAreaProfile::VT_METHOD, SurfaceAreaProfile::VT_PROBED_THICKNESS_10UM,
            SurfaceAreaProfile::VT_READINGS}),
};
constexpr std::uint64_t kSurfaceAreaProfileUsual =
    fields({SurfaceAreaProfile::VT_METHOD, SurfaceAreaProfile::VT_READINGS});
constexpr Layout kSurfaceAreaProfileLayout =
    layout(kSurfaceAreaProfileCodes, kSurfaceAreaProfileShapes, kSurfaceAreaProfileUsual, 0);
// --- HardnessReading
constexpr Code kHardnessReadingCodes[] = {
    depth(HardnessReading::VT_TOP, Way::next_top, 3),
    depth(HardnessReading::VT_BOTTOM, Way::below_top, 2),
    number(HardnessReading::VT_RESISTANCE_MN, kForce),
    number(HardnessReading::VT_HAMMER_G, kThousands),
    number(HardnessReading::VT_TUBE_G, kThousands),
    number(HardnessReading::VT_DROPS, kCount),
    number(HardnessReading::VT_DROP_HEIGHT_10UM, kShort),
    marks(HardnessReading::VT_UNRELIABLE),
};
constexpr std::uint64_t kHardnessReadingShapes[] = {
    fields({HardnessReading::VT_TOP, HardnessReading::VT_BOTTOM, HardnessReading::VT_RESISTANCE_MN}),
    fields({HardnessReading::VT_TOP, HardnessReading::VT_RESISTANCE_MN}),
};
constexpr std::uint64_t kHardnessReadingUsual =
    fields({HardnessReading::VT_TOP, HardnessReading::VT_BOTTOM, HardnessReading::VT_RESISTANCE_MN});
constexpr Layout kHardnessReadingLayout =
    layout(kHardnessReadingCodes, kHardnessReadingShapes, kHardnessReadingUsual, 0);
// --- HardnessProfile
constexpr Code kHardnessProfileCodes[] = {
    number(HardnessProfile::VT_NUMBER, kCount),
    code(HardnessProfile::VT_METHOD, kHardnessMethod),
    number(HardnessProfile::VT_UNCERTAINTY_MN, kForce),
    number(HardnessProfile::VT_INDENTATION_AREA_MM2, kThousands),
    tables(HardnessProfile::VT_READINGS, kHardnessReadingLayout, 2),
    none(HardnessProfile::VT_DENSE_DEPTH_CM),
    none(HardnessProfile::VT_DENSE_N),
};
constexpr std::uint64_t kHardnessProfileShapes[] = {
    fields({HardnessProfile::VT_READINGS}),
    fields({HardnessProfile::VT_METHOD, HardnessProfile::VT_READINGS}),
    fields({HardnessProfile::VT_NUMBER, HardnessProfile::VT_METHOD, HardnessProfile::VT_READINGS}),
};
constexpr std::uint64_t kHardnessProfileUsual =
    fields({HardnessProfile::VT_METHOD, HardnessProfile::VT_READINGS});
constexpr Layout kHardnessProfileLayout =
    layout(kHardnessProfileCodes, kHardnessProfileShapes, kHardnessProfileUsual, 0);
// --- StrengthReading
constexpr Code kStrengthReadingCodes[] = {
    depth(StrengthReading::VT_TOP, Way::at_boundary, 4),
    depth(StrengthReading::VT_BOTTOM, Way::at_boundary, 4),
    number(StrengthReading::VT_STRENGTH_PA, kThousands),
    code(StrengthReading::VT_CHARACTER, kFractureCharacter),
    code(StrengthReading::VT_QUALITY, kShearQuality),
    code(StrengthReading::VT_FRACTURE_SURFACE, kFractureSurface),
    marks(StrengthReading::VT_UNRELIABLE),
};
constexpr std::uint64_t kStrengthReadingShapes[] = {
    fields({StrengthReading::VT_TOP, StrengthReading::VT_BOTTOM, StrengthReading::VT_STRENGTH_PA}),
    fields({StrengthReading::VT_TOP, StrengthReading::VT_STRENGTH_PA}),
};
constexpr std::uint64_t kStrengthReadingUsual =
    fields({StrengthReading::VT_TOP, StrengthReading::VT_BOTTOM, StrengthReading::VT_STRENGTH_PA});
constexpr Layout kStrengthReadingLayout =
    layout(kStrengthReadingCodes, kStrengthReadingShapes, kStrengthReadingUsual, 0);
// --- StrengthProfile
constexpr Code kStrengthProfileCodes[] = {
    number(StrengthProfile::VT_NUMBER, kCount),
    code(StrengthProfile::VT_KIND, kStrengthKind),
    code(StrengthProfile::VT_METHOD, kStrengthMethod),
    number(StrengthProfile::VT_UNCERTAINTY_PA, kThousands),
    number(StrengthProfile::VT_PROBED_AREA_MM2, kThousands),
    tables(StrengthProfile::VT_READINGS, kStrengthReadingLayout, 2),
};
constexpr std::uint64_t kStrengthProfileShapes[] = {
    fields({StrengthProfile::VT_READINGS}),
    fields({StrengthProfile::VT_METHOD, StrengthProfile::VT_READINGS}),
    fields({StrengthProfile::VT_NUMBER, StrengthProfile::VT_METHOD, StrengthProfile::VT_READINGS}),
};
constexpr std::uint64_t kStrengthProfileUsual =
    fields({StrengthProfile::VT_METHOD, StrengthProfile::VT_READINGS});
constexpr Layout kStrengthProfileLayout =
    layout(kStrengthProfileCodes, kStrengthProfileShapes, kStrengthProfileUsual, 0);
// --- ImpurityReading
constexpr Code kImpurityReadingCodes[] = {
    depth(ImpurityReading::VT_TOP, Way::at_boundary, 4),
    depth(ImpurityReading::VT_BOTTOM, Way::at_boundary, 4),
    number(ImpurityReading::VT_MASS_FRACTION_E6, kForce),
    code(ImpurityReading::VT_MASS_FRACTION_UNIT, kFractionUnit),
    number(ImpurityReading::VT_VOLUME_FRACTION_E6, kForce),
    code(ImpurityReading::VT_VOLUME_FRACTION_UNIT, kFractionUnit),
    marks(ImpurityReading::VT_UNRELIABLE),
    plain(ImpurityReading::VT_UNIT_WORDS, Way::text),
};
constexpr std::uint64_t kImpurityReadingShapes[] = {
    fields({ImpurityReading::VT_TOP, ImpurityReading::VT_BOTTOM, ImpurityReading::VT_MASS_FRACTION_E6,
            ImpurityReading::VT_MASS_FRACTION_UNIT}),
};
constexpr std::uint64_t kImpurityReadingUsual =
    fields({ImpurityReading::VT_TOP, ImpurityReading::VT_BOTTOM, ImpurityReading::VT_MASS_FRACTION_E6,
            ImpurityReading::VT_MASS_FRACTION_UNIT});
constexpr Layout kImpurityReadingLayout =
    layout(kImpurityReadingCodes, kImpurityReadingShapes, kImpurityReadingUsual, 0);
// --- ImpurityProfile
constexpr Code kImpurityProfileCodes[] = {
    number(ImpurityProfile::VT_NUMBER, kCount),
    code(ImpurityProfile::VT_IMPURITY, kImpurity),
    code(ImpurityProfile::VT_METHOD, kImpurityMethod),
    number(ImpurityProfile::VT_UNCERTAINTY_E6, kForce),
    code(ImpurityProfile::VT_UNCERTAINTY_UNIT, kFractionUnit),
    number(ImpurityProfile::VT_PROBED_THICKNESS_10UM, kShort),
    tables(ImpurityProfile::VT_READINGS, kImpurityReadingLayout, 2),
    plain(ImpurityProfile::VT_UNCERTAINTY_UNIT_WORDS, Way::text),
};
constexpr std::uint64_t kImpurityProfileShapes[] = {
    fields({ImpurityProfile::VT_READINGS}),
    fields({ImpurityProfile::VT_METHOD, ImpurityProfile::VT_READINGS}),
    fields({ImpurityProfile::VT_METHOD, ImpurityProfile::VT_PROBED_THICKNESS_10UM,
            ImpurityProfile::VT_READINGS}),
};
constexpr std::uint64_t kImpurityProfileUsual =
    fields({ImpurityProfile::VT_METHOD, ImpurityProfile::VT_READINGS});
constexpr Layout kImpurityProfileLayout =
    layout(kImpurityProfileCodes, kImpurityProfileShapes, kImpurityProfileUsual, 0);
// --- Fracture
constexpr Code kFractureCodes[] = {
    depth(Fracture::VT_DEPTH, Way::at_boundary, 5),
    number(Fracture::VT_TAP, kTap),
    number(Fracture::VT_TAP_CROSSED, kTap),
    code(Fracture::VT_STAGE, kLoadStage),
    code(Fracture::VT_CHARACTER, kFractureCharacter),
    code(Fracture::VT_QUALITY, kShearQuality),
    code(Fracture::VT_FRACTURE_SURFACE, kFractureSurface),
    code(Fracture::VT_CROSSING, kCrossing),
    number(Fracture::VT_STEP, kCount),
    number(Fracture::VT_JUMP, kCount),
    code(Fracture::VT_RELEASE, kReleaseType),
    number(Fracture::VT_CUT_10UM, kCut),
    code(Fracture::VT_SAW_END, kSawEnd),
    code(Fracture::VT_EASE, kShearEase),
    number(Fracture::VT_FORCE_MN, kForce),
    table(Fracture::VT_ON, kLayerLayout),
    code(Fracture::VT_PART, kPartOfLayer),
    plain(Fracture::VT_WORDS, Way::text),
    marks(Fracture::VT_UNRELIABLE),
};
constexpr std::uint64_t kFractureShapes[] = {
    fields({Fracture::VT_DEPTH, Fracture::VT_TAP, Fracture::VT_CHARACTER}),
    fields({Fracture::VT_DEPTH, Fracture::VT_TAP}),
    fields({Fracture::VT_DEPTH, Fracture::VT_TAP, Fracture::VT_CROSSING}),
    fields({Fracture::VT_DEPTH, Fracture::VT_TAP, Fracture::VT_TAP_CROSSED}),
    fields({Fracture::VT_DEPTH, Fracture::VT_TAP, Fracture::VT_QUALITY}),
    fields({Fracture::VT_DEPTH, Fracture::VT_STEP, Fracture::VT_RELEASE}),
    fields({Fracture::VT_DEPTH, Fracture::VT_CUT_10UM, Fracture::VT_SAW_END}),
    fields({Fracture::VT_DEPTH, Fracture::VT_TAP, Fracture::VT_TAP_CROSSED, Fracture::VT_CROSSING}),
    fields({Fracture::VT_DEPTH, Fracture::VT_TAP, Fracture::VT_CHARACTER, Fracture::VT_ON}),
    fields({Fracture::VT_DEPTH, Fracture::VT_TAP, Fracture::VT_CROSSING, Fracture::VT_ON}),
    fields({Fracture::VT_DEPTH, Fracture::VT_STAGE, Fracture::VT_CHARACTER}),
    fields({Fracture::VT_DEPTH, Fracture::VT_STAGE}),
    fields({Fracture::VT_DEPTH, Fracture::VT_CUT_10UM, Fracture::VT_SAW_END, Fracture::VT_ON}),
    fields({Fracture::VT_DEPTH, Fracture::VT_EASE}),
    fields({Fracture::VT_DEPTH, Fracture::VT_TAP, Fracture::VT_CROSSING, Fracture::VT_QUALITY}),
    fields({Fracture::VT_DEPTH, Fracture::VT_STEP, Fracture::VT_RELEASE, Fracture::VT_QUALITY}),
    fields({Fracture::VT_DEPTH, Fracture::VT_TAP, Fracture::VT_ON}),
    fields({Fracture::VT_DEPTH, Fracture::VT_TAP, Fracture::VT_QUALITY, Fracture::VT_ON}),
    fields({Fracture::VT_DEPTH, Fracture::VT_TAP, Fracture::VT_TAP_CROSSED, Fracture::VT_ON}),
    fields({Fracture::VT_DEPTH, Fracture::VT_TAP, Fracture::VT_TAP_CROSSED, Fracture::VT_CROSSING,
            Fracture::VT_ON}),
    fields({Fracture::VT_DEPTH, Fracture::VT_STAGE, Fracture::VT_CROSSING}),
    fields({Fracture::VT_DEPTH, Fracture::VT_EASE, Fracture::VT_CHARACTER}),
};
constexpr std::uint64_t kFractureUsual =
    fields({Fracture::VT_DEPTH, Fracture::VT_TAP, Fracture::VT_TAP_CROSSED, Fracture::VT_STAGE,
            Fracture::VT_CHARACTER, Fracture::VT_QUALITY, Fracture::VT_CROSSING, Fracture::VT_ON,
            Fracture::VT_WORDS});
constexpr Layout kFractureLayout = layout(kFractureCodes, kFractureShapes, kFractureUsual, 2);
// --- StabilityTest
constexpr Code kStabilityTestCodes[] = {
    code(StabilityTest::VT_KIND, kTestKind),
    code(StabilityTest::VT_OUTCOME, kTestOutcome),
    tables(StabilityTest::VT_FRACTURES, kFractureLayout, 0),
    code(StabilityTest::VT_NOT_VALID_REASON, kNotValidReason),
    number(StabilityTest::VT_COLUMN_WIDTH_10UM, kColumn),
    number(StabilityTest::VT_COLUMN_LENGTH_10UM, kColumn),
    number(StabilityTest::VT_COLUMN_DEPTH_10UM, kHeight),
    number(StabilityTest::VT_SLAB_LEFT_10UM, kShort),
    code(StabilityTest::VT_COLUMN_ENDS, kColumnEnds),
    number(StabilityTest::VT_SLOPE_DEG, kSlope),
    code(StabilityTest::VT_CROSSING_RULE, kCrossingRule),
    number(StabilityTest::VT_TAPS_GIVEN, kTap),
    depth(StabilityTest::VT_UNBROKEN, Way::boundaries, 5),
    plain(StabilityTest::VT_WORDS, Way::text),
    marks(StabilityTest::VT_UNRELIABLE),
};
constexpr std::uint64_t kStabilityTestShapes[] = {
    fields({StabilityTest::VT_KIND, StabilityTest::VT_OUTCOME, StabilityTest::VT_FRACTURES}),
    fields({StabilityTest::VT_KIND, StabilityTest::VT_OUTCOME}),
    fields({StabilityTest::VT_KIND, StabilityTest::VT_FRACTURES}),
    fields({StabilityTest::VT_KIND, StabilityTest::VT_OUTCOME, StabilityTest::VT_FRACTURES,
            StabilityTest::VT_COLUMN_LENGTH_10UM}),
    fields({StabilityTest::VT_KIND, StabilityTest::VT_OUTCOME, StabilityTest::VT_NOT_VALID_REASON}),
    fields({StabilityTest::VT_KIND, StabilityTest::VT_OUTCOME, StabilityTest::VT_FRACTURES,
            StabilityTest::VT_WORDS}),
    fields({StabilityTest::VT_KIND, StabilityTest::VT_OUTCOME, StabilityTest::VT_NOT_VALID_REASON,
            StabilityTest::VT_WORDS}),
    fields({StabilityTest::VT_KIND, StabilityTest::VT_OUTCOME, StabilityTest::VT_FRACTURES,
            StabilityTest::VT_CROSSING_RULE}),
    fields({StabilityTest::VT_KIND, StabilityTest::VT_OUTCOME, StabilityTest::VT_FRACTURES,
            StabilityTest::VT_SLOPE_DEG}),
};
constexpr std::uint64_t kStabilityTestUsual =
    fields({StabilityTest::VT_KIND, StabilityTest::VT_OUTCOME, StabilityTest::VT_FRACTURES,
            StabilityTest::VT_NOT_VALID_REASON, StabilityTest::VT_COLUMN_LENGTH_10UM,
            StabilityTest::VT_SLOPE_DEG, StabilityTest::VT_WORDS});
constexpr Layout kStabilityTestLayout =
    layout(kStabilityTestCodes, kStabilityTestShapes, kStabilityTestUsual, 1);
// --- Sign
constexpr Code kSignCodes[] = {
    code(Sign::VT_KIND, kSignKind),        code(Sign::VT_ANSWER, kAnswer),
    number(Sign::VT_LENGTH_10UM, kColumn), plain(Sign::VT_SEEN, Way::moment),
    plain(Sign::VT_WORDS, Way::text),      marks(Sign::VT_UNRELIABLE),
};
constexpr std::uint64_t kSignShapes[] = {
    fields({Sign::VT_KIND, Sign::VT_ANSWER}),
    fields({Sign::VT_KIND, Sign::VT_ANSWER, Sign::VT_WORDS}),
    fields({Sign::VT_KIND, Sign::VT_ANSWER, Sign::VT_LENGTH_10UM}),
    fields({Sign::VT_KIND, Sign::VT_ANSWER, Sign::VT_SEEN}),
};
constexpr std::uint64_t kSignUsual =
    fields({Sign::VT_KIND, Sign::VT_ANSWER, Sign::VT_LENGTH_10UM, Sign::VT_WORDS});
constexpr Layout kSignLayout = layout(kSignCodes, kSignShapes, kSignUsual, 0);
// --- Slide
constexpr Code kSlideCodes[] = {
    code(Slide::VT_KIND, kSlideKind),       code(Slide::VT_TRIGGER, kTrigger),
    number(Slide::VT_SIZE_TENTHS, kSize),   code(Slide::VT_ASPECT_POINT, kCompassPoint),
    number(Slide::VT_ASPECT_DEG, kBearing), number(Slide::VT_ELEVATION_10UM, kElevation),
    number(Slide::VT_AGE_MIN, kAge),        number(Slide::VT_COUNT, kCount),
    plain(Slide::VT_WORDS, Way::text),      marks(Slide::VT_UNRELIABLE),
};
constexpr std::uint64_t kSlideShapes[] = {
    fields({Slide::VT_KIND, Slide::VT_SIZE_TENTHS}),
    fields({Slide::VT_KIND, Slide::VT_TRIGGER, Slide::VT_SIZE_TENTHS}),
    fields({Slide::VT_KIND, Slide::VT_SIZE_TENTHS, Slide::VT_ASPECT_POINT}),
    fields({Slide::VT_KIND, Slide::VT_TRIGGER, Slide::VT_SIZE_TENTHS, Slide::VT_ASPECT_POINT}),
    fields({Slide::VT_WORDS}),
    fields({Slide::VT_KIND, Slide::VT_TRIGGER, Slide::VT_SIZE_TENTHS, Slide::VT_ASPECT_POINT,
            Slide::VT_AGE_MIN}),
};
constexpr std::uint64_t kSlideUsual =
    fields({Slide::VT_KIND, Slide::VT_TRIGGER, Slide::VT_SIZE_TENTHS, Slide::VT_ASPECT_POINT,
            Slide::VT_ELEVATION_10UM, Slide::VT_AGE_MIN, Slide::VT_COUNT, Slide::VT_WORDS});
constexpr Layout kSlideLayout = layout(kSlideCodes, kSlideShapes, kSlideUsual, 1);
// --- Assessment
constexpr Code kAssessmentCodes[] = {
    plain(Assessment::VT_WORDS, Way::text),
    plain(Assessment::VT_PLAN, Way::text),
    code(Assessment::VT_CONFIDENCE, kConfidence),
};
constexpr std::uint64_t kAssessmentShapes[] = {
    fields({Assessment::VT_WORDS}),
    fields({Assessment::VT_WORDS, Assessment::VT_CONFIDENCE}),
    fields({Assessment::VT_WORDS, Assessment::VT_PLAN}),
    fields({Assessment::VT_WORDS, Assessment::VT_PLAN, Assessment::VT_CONFIDENCE}),
};
constexpr std::uint64_t kAssessmentUsual =
    fields({Assessment::VT_WORDS, Assessment::VT_PLAN, Assessment::VT_CONFIDENCE});
constexpr Layout kAssessmentLayout = layout(kAssessmentCodes, kAssessmentShapes, kAssessmentUsual, 0);
// --- BulletinSeen
constexpr Code kBulletinSeenCodes[] = {
    code(BulletinSeen::VT_STATE, kBulletinState),
    plain(BulletinSeen::VT_ID, Way::text),
    plain(BulletinSeen::VT_REGION, Way::text),
    plain(BulletinSeen::VT_WORDS, Way::text),
};
constexpr std::uint64_t kBulletinSeenShapes[] = {
    fields({BulletinSeen::VT_STATE}),
    fields({BulletinSeen::VT_STATE, BulletinSeen::VT_REGION}),
    fields({BulletinSeen::VT_STATE, BulletinSeen::VT_WORDS}),
};
constexpr std::uint64_t kBulletinSeenUsual =
    fields({BulletinSeen::VT_STATE, BulletinSeen::VT_REGION, BulletinSeen::VT_WORDS});
constexpr Layout kBulletinSeenLayout = layout(kBulletinSeenCodes, kBulletinSeenShapes, kBulletinSeenUsual, 0);
// --- Photo
constexpr Code kPhotoCodes[] = {
    plain(Photo::VT_REFERENCE, Way::text),
    plain(Photo::VT_TAKEN, Way::moment),
    plain(Photo::VT_ABOUT, Way::place),
    plain(Photo::VT_WORDS, Way::text),
    none(Photo::VT_SHA256),
};
constexpr std::uint64_t kPhotoShapes[] = {
    fields({Photo::VT_REFERENCE}),
    fields({Photo::VT_REFERENCE, Photo::VT_WORDS}),
    fields({Photo::VT_REFERENCE, Photo::VT_ABOUT}),
};
constexpr std::uint64_t kPhotoUsual = fields({Photo::VT_REFERENCE, Photo::VT_ABOUT, Photo::VT_WORDS});
constexpr Layout kPhotoLayout = layout(kPhotoCodes, kPhotoShapes, kPhotoUsual, 0);
// --- Remark
constexpr Code kRemarkCodes[] = {
    plain(Remark::VT_TEXT, Way::text),
    plain(Remark::VT_ABOUT, Way::place),
    flag(Remark::VT_CONFIDENTIAL),
};
constexpr std::uint64_t kRemarkShapes[] = {
    fields({Remark::VT_TEXT}),
    fields({Remark::VT_TEXT, Remark::VT_ABOUT}),
};
constexpr std::uint64_t kRemarkUsual = fields({Remark::VT_TEXT, Remark::VT_ABOUT});
constexpr Layout kRemarkLayout = layout(kRemarkCodes, kRemarkShapes, kRemarkUsual, 0);
// --- Absence
constexpr Code kAbsenceCodes[] = {
    plain(Absence::VT_ABOUT, Way::place),
    code(Absence::VT_REASON, kAbsentReason),
    plain(Absence::VT_WORDS, Way::text),
};
constexpr std::uint64_t kAbsenceShapes[] = {
    fields({Absence::VT_ABOUT, Absence::VT_REASON}),
    fields({Absence::VT_REASON}),
};
constexpr std::uint64_t kAbsenceUsual = fields({Absence::VT_ABOUT, Absence::VT_REASON});
constexpr Layout kAbsenceLayout = layout(kAbsenceCodes, kAbsenceShapes, kAbsenceUsual, 1);
// --- Unread
constexpr Code kUnreadCodes[] = {
    number(Unread::VT_LINE, kCount),
    plain(Unread::VT_TEXT, Way::text),
    plain(Unread::VT_EXPECTED, Way::text),
};
constexpr std::uint64_t kUnreadShapes[] = {
    fields({Unread::VT_LINE, Unread::VT_TEXT, Unread::VT_EXPECTED}),
    fields({Unread::VT_LINE, Unread::VT_TEXT}),
};
constexpr std::uint64_t kUnreadUsual = fields({});
constexpr Layout kUnreadLayout = layout(kUnreadCodes, kUnreadShapes, kUnreadUsual, 0);
// --- Step
constexpr Code kStepCodes[] = {
    code(Step::VT_KIND, kStepKind),
    flag(Step::VT_DONE),
    plain(Step::VT_MADE, Way::moment),
    plain(Step::VT_WORDS, Way::text),
};
constexpr std::uint64_t kStepShapes[] = {
    fields({Step::VT_KIND, Step::VT_DONE}),
    fields({Step::VT_KIND, Step::VT_DONE, Step::VT_WORDS}),
};
constexpr std::uint64_t kStepUsual = fields({Step::VT_KIND, Step::VT_DONE, Step::VT_WORDS});
constexpr Layout kStepLayout = layout(kStepCodes, kStepShapes, kStepUsual, 0);
// --- Pit
constexpr Code kPitCodes[] = {
    none(Pit::VT_SCHEMA_MINOR),
    plain(Pit::VT_ID, Way::text),
    plain(Pit::VT_TITLE, Way::text),
    code(Pit::VT_PURPOSE, kPurpose),
    plain(Pit::VT_TIME, Way::time_span),
    plain(Pit::VT_REPORTED, Way::moment),
    plain(Pit::VT_EDITED, Way::moment),
    tables(Pit::VT_OBSERVERS, kObserverLayout, 0),
    table(Pit::VT_OPERATION, kOperationLayout),
    table(Pit::VT_SITE, kSiteLayout),
    table(Pit::VT_CHOICE, kChoiceLayout),
    table(Pit::VT_WEATHER, kWeatherLayout),
    table(Pit::VT_SURFACE, kSurfaceLayout),
    table(Pit::VT_SNOWPACK, kSnowpackLayout),
    number(Pit::VT_PROFILE_DEPTH_10UM, kHeight),
    flag(Pit::VT_REACHED_GROUND),
    tables(Pit::VT_LAYERS, kLayerLayout, 2),
    tables(Pit::VT_TEMPERATURES, kTemperatureReadingLayout, 2),
    tables(Pit::VT_DENSITIES, kDensityProfileLayout, 0),
    tables(Pit::VT_LIQUID_WATER, kLiquidWaterProfileLayout, 0),
    tables(Pit::VT_SURFACE_AREA, kSurfaceAreaProfileLayout, 0),
    tables(Pit::VT_HARDNESS, kHardnessProfileLayout, 0),
    tables(Pit::VT_STRENGTH, kStrengthProfileLayout, 0),
    tables(Pit::VT_IMPURITIES, kImpurityProfileLayout, 0),
    tables(Pit::VT_TESTS, kStabilityTestLayout, 1),
    tables(Pit::VT_SIGNS, kSignLayout, 1),
    tables(Pit::VT_SLIDES, kSlideLayout, 0),
    table(Pit::VT_ASSESSMENT, kAssessmentLayout),
    table(Pit::VT_BULLETIN, kBulletinSeenLayout),
    flag(Pit::VT_BACKFILLED),
    tables(Pit::VT_PHOTOS, kPhotoLayout, 0),
    tables(Pit::VT_REMARKS, kRemarkLayout, 0),
    tables(Pit::VT_ABSENCES, kAbsenceLayout, 0),
    tables(Pit::VT_UNREAD, kUnreadLayout, 0),
    none(Pit::VT_EXTENSIONS),
    code(Pit::VT_SHARING, kSharing),
    flag(Pit::VT_PRACTICE),
    plain(Pit::VT_APPLICATION, Way::text),
    plain(Pit::VT_APPLICATION_VERSION, Way::text),
    tables(Pit::VT_STEPS, kStepLayout, 3),
    number(Pit::VT_UNREAD_EDITS, kCount),
};
constexpr std::uint64_t kPitShapes[] = {
    fields({Pit::VT_TITLE, Pit::VT_TIME, Pit::VT_OBSERVERS, Pit::VT_SITE, Pit::VT_CHOICE, Pit::VT_SNOWPACK,
            Pit::VT_LAYERS, Pit::VT_TESTS, Pit::VT_SIGNS}),
    fields({Pit::VT_TITLE, Pit::VT_TIME, Pit::VT_OBSERVERS, Pit::VT_SITE, Pit::VT_SNOWPACK, Pit::VT_LAYERS,
            Pit::VT_TESTS}),
};
constexpr std::uint64_t kPitUsual =
    fields({Pit::VT_TITLE, Pit::VT_PURPOSE, Pit::VT_TIME, Pit::VT_OBSERVERS, Pit::VT_SITE, Pit::VT_CHOICE,
            Pit::VT_WEATHER, Pit::VT_SURFACE, Pit::VT_SNOWPACK, Pit::VT_LAYERS, Pit::VT_TEMPERATURES,
            Pit::VT_DENSITIES, Pit::VT_TESTS, Pit::VT_SIGNS, Pit::VT_SLIDES, Pit::VT_ASSESSMENT,
            Pit::VT_BULLETIN, Pit::VT_BACKFILLED, Pit::VT_REMARKS});
}  // namespace

const Layout kPitLayout = layout(kPitCodes, kPitShapes, kPitUsual, 1);

}  // namespace firn::exchange::card
