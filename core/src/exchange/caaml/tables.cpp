// CAAML 6.0.4, type by type and in its order (CAAMLv6_SnowProfileIACS.xsd, read). 6.0.3 is read by the same
// rows: it has customData inside metaData and nowhere else, and lacks what came later.
#include "exchange/caaml/row.h"

namespace firn::exchange::caaml {
namespace {

using firnbook::DensityProfile;
using firnbook::DensityReading;
using firnbook::Fracture;
using firnbook::HardnessProfile;
using firnbook::HardnessReading;
using firnbook::ImpurityProfile;
using firnbook::ImpurityReading;
using firnbook::Layer;
using firnbook::LiquidWaterProfile;
using firnbook::LiquidWaterReading;
using firnbook::Observer;
using firnbook::Operation;
using firnbook::Pit;
using firnbook::Site;
using firnbook::Snowpack;
using firnbook::StabilityTest;
using firnbook::StrengthProfile;
using firnbook::StrengthReading;
using firnbook::Surface;
using firnbook::SurfaceAreaProfile;
using firnbook::SurfaceAreaReading;
using firnbook::TemperatureReading;
using firnbook::Weather;

// MetaDataBaseType. customData stands here in 6.0.3 only.
constexpr Row kMetaRows[] = {remark(), custom().old()};
}  // namespace
constexpr Type kMeta = rows(kMetaRows);
namespace {
constexpr Row meta() {
  return group("metaData", kMeta);
}

// --- conditions ------------------------------------------------------------------------------------------

constexpr Row kAspectRows[] = {value("position", kAspect, Site::VT_ASPECT_POINT, Site::VT_ASPECT_DEG).nil()};
constexpr Type kAspectPositionRows = rows(kAspectRows);
constexpr Row kSiteAspectRows[] = {group("AspectPosition", kAspectPositionRows)};
}  // namespace
constexpr Type kSiteAspect = rows(kSiteAspectRows);
namespace {

constexpr Row kWindPositionRows[] = {
    value("position", kAspect, Weather::VT_WIND_FROM_POINT, Weather::VT_WIND_FROM_DEG).nil()};
constexpr Type kWindPosition = rows(kWindPositionRows);
constexpr Row kWindDirRows[] = {group("AspectPosition", kWindPosition)};
}  // namespace
constexpr Type kWindDir = rows(kWindDirRows);
namespace {

constexpr Row kFeaturePositionRows[] = {
    value("position", kAspect, Surface::VT_FEATURE_ASPECT_POINT, Surface::VT_FEATURE_ASPECT_DEG).nil()};
constexpr Type kFeaturePosition = rows(kFeaturePositionRows);
constexpr Row kFeatureAspectRows[] = {group("AspectPosition", kFeaturePosition)};
constexpr Type kFeatureAspect = rows(kFeatureAspectRows);

constexpr Row kWeatherRows[] = {
    meta(),
    value("skyCond", kSky, Weather::VT_SKY, Weather::VT_SKY_FAMILY).nil(),
    value("precipTI", kPrecipitation, Weather::VT_PRECIPITATION, Weather::VT_PRECIPITATION_FAMILY).nil(),
    number("airTempPres", Weather::VT_AIR_TEMPERATURE_CDEGC, Quantity::temperature, "degC", 2)
        .nil()
        .within(-11000, 6000),
    measured_in(value("windSpd", kWind, Weather::VT_WIND, Weather::VT_WIND_SPEED_CMS), Quantity::speed,
                "ms-1", 2)
        .nil(),
    group("windDir", kWindDir),
    custom(),
};
constexpr Type kWeather = rows(kWeatherRows);

constexpr Row kFeatureComponentsRows[] = {
    code("surfRoughness", Surface::VT_ROUGHNESS, code_table<firnbook::SurfaceRoughness>).nil().wanted(),
    measured_in(value("validAmplitude", kRange, Surface::VT_AMPLITUDE_10UM, Surface::VT_AMPLITUDE_MAX_10UM),
                Quantity::length, "cm", 3)
        .nil()
        .not_negative(),
    measured_in(
        value("validWavelength", kRange, Surface::VT_WAVELENGTH_10UM, Surface::VT_WAVELENGTH_MAX_10UM),
        Quantity::length, "m", 5)
        .nil()
        .not_negative(),
    group("validAspect", kFeatureAspect),
};
constexpr Type kFeatureComponents = rows(kFeatureComponentsRows);
constexpr Row kFeaturesRows[] = {group("Components", kFeatureComponents)};
}  // namespace
constexpr Type kFeatures = rows(kFeaturesRows);
namespace {

constexpr Row kSurfaceRows[] = {
    meta(),
    group("surfFeatures", kFeatures),
    centimetres("penetrationRam", Surface::VT_PENETRATION_RAM_10UM),
    centimetres("penetrationFoot", Surface::VT_PENETRATION_FOOT_10UM),
    centimetres("penetrationSki", Surface::VT_PENETRATION_SKI_10UM),
    custom(),
};
constexpr Type kSurface = rows(kSurfaceRows);

// 1 kg/m2 is 1 mm of water.
constexpr Row height(voffset_t field) {
  return centimetres("height", field);
}
constexpr Row water(voffset_t field) {
  return number("waterEquivalent", field, Quantity::water, "kgm-2", 2).nil().not_negative();
}
constexpr Row kHsRows[] = {height(Snowpack::VT_HS_10UM), water(Snowpack::VT_HS_WATER_10UM)};
constexpr Type kHs = rows(kHsRows);
constexpr Row kHsOuterRows[] = {group("Components", kHs)};
constexpr Type kHsOuter = rows(kHsOuterRows);
constexpr Row kHn24Rows[] = {height(Snowpack::VT_HN24_10UM), water(Snowpack::VT_HN24_WATER_10UM)};
constexpr Type kHn24 = rows(kHn24Rows);
constexpr Row kHn24OuterRows[] = {group("Components", kHn24)};
constexpr Type kHn24Outer = rows(kHn24OuterRows);
constexpr Row kHinRows[] = {height(Snowpack::VT_HIN_10UM), water(Snowpack::VT_HIN_WATER_10UM)};
constexpr Type kHin = rows(kHinRows);
constexpr Row kHinOuterRows[] = {group("Components", kHin).wanted()};
constexpr Type kHinOuter = rows(kHinOuterRows);
constexpr Row new_snow() {
  Row row = value("hIN", kNewSnow, Snowpack::VT_HIN_CLEARED);
  row.type = &kHinOuter;
  return row;
}

constexpr Row kSnowpackRows[] = {
    meta().on(Thing::snowpack, Snowpack::VT_HS_10UM),
    group("hS", kHsOuter),
    group("hN24", kHn24Outer),
    new_snow(),
    custom().on(Thing::snowpack, Snowpack::VT_HS_10UM),
};
constexpr Type kSnowpack = rows(kSnowpackRows);

// --- layers and readings -----------------------------------------------------------------------------------

// StratigraphicLayerBaseType behind its depths.
constexpr Row grain(std::string_view name, voffset_t field) {
  return code(name, field, code_table<firnbook::GrainForm>).nil();
}
constexpr Row kGrainSizeRows[] = {
    measured_in(value("avg", kGrainSize, Layer::VT_GRAIN_SIZE_10UM, Layer::VT_GRAIN_SIZE_CLASS),
                Quantity::length, "mm", 2)
        .nil()
        .not_negative()
        .wanted(),
    measured_in(value("avgMax", kGrainSize, Layer::VT_GRAIN_SIZE_MAX_10UM, Layer::VT_GRAIN_SIZE_MAX_CLASS),
                Quantity::length, "mm", 2)
        .nil()
        .not_negative(),
};
constexpr Type kGrainSizes = rows(kGrainSizeRows);
constexpr Row kGrainSizeOuterRows[] = {group("Components", kGrainSizes)};
}  // namespace
constexpr Type kGrainSizeOuter = rows(kGrainSizeOuterRows);
namespace {

constexpr Row top(voffset_t field) {
  return measured_in(value("depthTop", kTop, field), Quantity::length, "cm", 3).nil().with_uom("cm").wanted();
}
constexpr Row thickness(voffset_t field, voffset_t of_top) {
  return measured_in(value("thickness", kThickness, field, of_top), Quantity::length, "cm", 3)
      .nil()
      .with_uom("cm");
}
constexpr Row grain_first() {
  return grain("grainFormPrimary", Layer::VT_GRAIN_FORM);
}
constexpr Row grain_second() {
  return grain("grainFormSecondary", Layer::VT_GRAIN_FORM_SECOND);
}
constexpr Row grain_size() {
  return group("grainSize", kGrainSizeOuter).with(" uom=\"mm\"");
}
constexpr Row formed() {
  return value("validFormationTime", kSpan, Layer::VT_FORMED);
}
constexpr Row hand(std::string_view name, voffset_t field) {
  Row row = code(name, field, code_table<firnbook::HandHardness>).nil().with_uom("");
  row.codec = &kHandHardness;
  return row;
}

constexpr Row kLayerRows[] = {
    meta(),
    custom(),
    top(Layer::VT_TOP),
    thickness(Layer::VT_BOTTOM, Layer::VT_TOP),
    grain_first(),
    grain_second(),
    grain_size(),
    formed(),
    hand("hardness", Layer::VT_HARDNESS),
    hand("hardnessTop", Layer::VT_HARDNESS_TOP),
    hand("hardnessBottom", Layer::VT_HARDNESS_BOTTOM),
    code("wetness", Layer::VT_WETNESS, code_table<firnbook::Wetness>).nil().with_uom(""),
    value("layerOfConcern", kConcern, Layer::VT_CONCERN),
};
constexpr Type kLayer = rows(kLayerRows);

constexpr Row kStratRows[] = {
    group("stratMetaData", kMeta).wanted(),
    list("Layer", Pit::VT_LAYERS, Thing::layer, kLayer).wanted(),
    custom(),
};
constexpr Type kStrat = rows(kStratRows);

constexpr Row kObsRows[] = {
    meta(),
    custom(),
    measured_in(value("depth", kDepth, TemperatureReading::VT_DEPTH), Quantity::length, "cm", 3)
        .nil()
        .with_uom("cm")
        .wanted(),
    number("snowTemp", TemperatureReading::VT_TEMPERATURE_CDEGC, Quantity::temperature, "degC", 2)
        .nil()
        .within(-11000, 0)
        .wanted(),
    measured_in(value("uncertaintyOfMeas", kUncertainty, TemperatureReading::VT_UNCERTAINTY_CDEGC),
                Quantity::temperature, "degC", 2)
        .nil()
        .with_uom("degC")
        .within(-11000, 0),
};
constexpr Type kObs = rows(kObsRows);
constexpr Row kTempRows[] = {
    group("tempMetaData", kMeta).wanted(),
    list("Obs", Pit::VT_TEMPERATURES, Thing::temperature, kObs).wanted(),
    custom(),
};
constexpr Type kTemp = rows(kTempRows);

constexpr Row profile_number(voffset_t field) {
  return number("profileNr", field, Quantity::none, "", 0).within(1, 9);
}

constexpr Row kDensityMetaRows[] = {
    remark(),
    custom().old(),
    code("methodOfMeas", DensityProfile::VT_METHOD, code_table<firnbook::DensityMethod>).nil().wanted(),
    number("uncertaintyOfMeas", DensityProfile::VT_UNCERTAINTY_DKGM3, Quantity::density, "kgm-3", 1)
        .nil()
        .not_negative(),
    number("probeVolume", DensityProfile::VT_PROBE_VOLUME_MM3, Quantity::volume, "cm3", 3)
        .nil()
        .not_negative(),
    centimetres("probeDiameter", DensityProfile::VT_PROBE_DIAMETER_10UM),
    centimetres("probeLength", DensityProfile::VT_PROBE_LENGTH_10UM),
    centimetres("probedThickness", DensityProfile::VT_PROBED_THICKNESS_10UM),
};
constexpr Type kDensityMeta = rows(kDensityMetaRows);
constexpr Row kDensityLayerRows[] = {
    meta(),
    custom(),
    top(DensityReading::VT_TOP),
    thickness(DensityReading::VT_BOTTOM, DensityReading::VT_TOP),
    number("density", DensityReading::VT_DENSITY_DKGM3, Quantity::density, "kgm-3", 1)
        .nil()
        .not_negative()
        .wanted(),
};
constexpr Type kDensityLayer = rows(kDensityLayerRows);
constexpr Row kDensityRows[] = {
    group("densityMetaData", kDensityMeta).wanted(),
    profile_number(DensityProfile::VT_NUMBER),
    list("Layer", DensityProfile::VT_READINGS, Thing::density, kDensityLayer).inner().wanted(),
    custom(),
};
constexpr Type kDensity = rows(kDensityRows);

constexpr Row kWaterMetaRows[] = {
    remark(),
    custom().old(),
    code("methodOfMeas", LiquidWaterProfile::VT_METHOD, code_table<firnbook::LiquidWaterMethod>)
        .nil()
        .wanted(),
    number("uncertaintyOfMeas", LiquidWaterProfile::VT_UNCERTAINTY_E4, Quantity::percent, "% by Vol", 2)
        .nil()
        .within(0, 10000),
    centimetres("probedThickness", LiquidWaterProfile::VT_PROBED_THICKNESS_10UM),
};
constexpr Type kWaterMeta = rows(kWaterMetaRows);
constexpr Row kWaterLayerRows[] = {
    meta(),
    custom(),
    top(LiquidWaterReading::VT_TOP),
    thickness(LiquidWaterReading::VT_BOTTOM, LiquidWaterReading::VT_TOP),
    number("lwc", LiquidWaterReading::VT_LIQUID_WATER_E4, Quantity::percent, "% by Vol", 2)
        .nil()
        .within(0, 10000)
        .wanted(),
};
constexpr Type kWaterLayer = rows(kWaterLayerRows);
constexpr Row kWaterRows[] = {
    group("lwcMetaData", kWaterMeta).wanted(),
    profile_number(LiquidWaterProfile::VT_NUMBER),
    list("Layer", LiquidWaterProfile::VT_READINGS, Thing::liquid_water, kWaterLayer).inner().wanted(),
    custom(),
};
constexpr Type kWaterProfile = rows(kWaterRows);

constexpr Row kTemplateRows[] = {fixed("depth"), fixed("specSurfArea"), fixed("penRes")};
}  // namespace
constexpr Type kTemplate = rows(kTemplateRows);
namespace {
constexpr Row dense(std::string_view columns, voffset_t depths, voffset_t values) {
  Row row = value("Measurements", kTuples, depths, values);
  row.attributes = columns;
  return row;
}

constexpr Row kSurfaceAreaMetaRows[] = {
    remark(),
    custom().old(),
    code("methodOfMeas", SurfaceAreaProfile::VT_METHOD, code_table<firnbook::SurfaceAreaMethod>)
        .nil()
        .wanted(),
    number("uncertaintyOfMeas", SurfaceAreaProfile::VT_UNCERTAINTY_E2M2KG, Quantity::surface_area, "m2kg-1",
           2)
        .nil()
        .not_negative(),
    centimetres("probedThickness", SurfaceAreaProfile::VT_PROBED_THICKNESS_10UM),
};
constexpr Type kSurfaceAreaMeta = rows(kSurfaceAreaMetaRows);
constexpr Row kSurfaceAreaLayerRows[] = {
    meta(),
    custom(),
    top(SurfaceAreaReading::VT_TOP),
    thickness(SurfaceAreaReading::VT_BOTTOM, SurfaceAreaReading::VT_TOP),
    number("specSurfArea", SurfaceAreaReading::VT_SURFACE_AREA_E2M2KG, Quantity::surface_area, "m2kg-1", 2)
        .nil()
        .not_negative()
        .wanted(),
};
constexpr Type kSurfaceAreaLayer = rows(kSurfaceAreaLayerRows);
constexpr Row kSurfaceAreaRows[] = {
    group("specSurfAreaMetaData", kSurfaceAreaMeta).wanted(),
    profile_number(SurfaceAreaProfile::VT_NUMBER),
    group("MeasurementComponents", kTemplate).made_by_another_row(),
    dense("<caaml:MeasurementComponents uomDepth=\"cm\" uomSpecSurfArea=\"m2kg-1\"><caaml:depth>template"
          "</caaml:depth><caaml:specSurfArea>template</caaml:specSurfArea></caaml:MeasurementComponents>",
          SurfaceAreaProfile::VT_DENSE_DEPTH_CM, SurfaceAreaProfile::VT_DENSE_M2KG),
    list("Layer", SurfaceAreaProfile::VT_READINGS, Thing::surface_area, kSurfaceAreaLayer).inner(),
    custom(),
};
constexpr Type kSurfaceAreaProfile = rows(kSurfaceAreaRows);

constexpr Row kHardnessMetaRows[] = {
    remark(),
    custom().old(),
    code("methodOfMeas", HardnessProfile::VT_METHOD, code_table<firnbook::HardnessMethod>).nil().wanted(),
    number("uncertaintyOfMeas", HardnessProfile::VT_UNCERTAINTY_MN, Quantity::force, "N", 3)
        .nil()
        .not_negative(),
    number("surfOfIndentation", HardnessProfile::VT_INDENTATION_AREA_MM2, Quantity::area, "cm2", 2)
        .nil()
        .not_negative(),
};
constexpr Type kHardnessMeta = rows(kHardnessMetaRows);
constexpr Row kHardnessLayerRows[] = {
    meta(),
    custom(),
    top(HardnessReading::VT_TOP),
    thickness(HardnessReading::VT_BOTTOM, HardnessReading::VT_TOP),
    number("hardness", HardnessReading::VT_RESISTANCE_MN, Quantity::force, "N", 3)
        .nil()
        .not_negative()
        .wanted(),
    number("weightHammer", HardnessReading::VT_HAMMER_G, Quantity::weight, "kg", 3)
        .nil()
        .not_negative()
        .unit_from("uomWeightHammer"),
    number("weightTube", HardnessReading::VT_TUBE_G, Quantity::weight, "kg", 3)
        .nil()
        .not_negative()
        .unit_from("uomWeightTube"),
    number("nDrops", HardnessReading::VT_DROPS, Quantity::none, "", 0).nil().not_negative(),
    number("dropHeight", HardnessReading::VT_DROP_HEIGHT_10UM, Quantity::length, "cm", 3)
        .nil()
        .not_negative()
        .unit_from("uomDropHeight"),
};
constexpr Type kHardnessLayer = rows(kHardnessLayerRows);
constexpr Row kHardnessRows[] = {
    group("hardnessMetaData", kHardnessMeta).wanted(),
    profile_number(HardnessProfile::VT_NUMBER),
    group("MeasurementComponents", kTemplate).made_by_another_row(),
    dense("<caaml:MeasurementComponents uomDepth=\"cm\" uomHardness=\"N\"><caaml:depth>template</caaml:depth>"
          "<caaml:penRes>template</caaml:penRes></caaml:MeasurementComponents>",
          HardnessProfile::VT_DENSE_DEPTH_CM, HardnessProfile::VT_DENSE_N),
    list("Layer", HardnessProfile::VT_READINGS, Thing::hardness, kHardnessLayer).inner(),
    custom(),
};
constexpr Type kHardnessProfile = rows(kHardnessRows);

constexpr Row kStrengthMetaRows[] = {
    remark(),
    custom().old(),
    code("strengthType", StrengthProfile::VT_KIND, code_table<firnbook::StrengthKind>),
    code("methodOfMeas", StrengthProfile::VT_METHOD, code_table<firnbook::StrengthMethod>).nil().wanted(),
    number("uncertaintyOfMeas", StrengthProfile::VT_UNCERTAINTY_PA, Quantity::pressure, "Nm-2", 0)
        .nil()
        .not_negative(),
    number("probedArea", StrengthProfile::VT_PROBED_AREA_MM2, Quantity::area, "cm2", 2).nil().not_negative(),
};
constexpr Type kStrengthMeta = rows(kStrengthMetaRows);
constexpr Row kStrengthLayerRows[] = {
    meta(),
    custom(),
    top(StrengthReading::VT_TOP),
    thickness(StrengthReading::VT_BOTTOM, StrengthReading::VT_TOP),
    number("strengthValue", StrengthReading::VT_STRENGTH_PA, Quantity::pressure, "Nm-2", 0)
        .nil()
        .not_negative()
        .wanted(),
    value("fractureCharacter", kCharacter, StrengthReading::VT_CHARACTER, StrengthReading::VT_QUALITY).nil(),
};
constexpr Type kStrengthLayer = rows(kStrengthLayerRows);
constexpr Row kStrengthRows[] = {
    group("strengthMetaData", kStrengthMeta).wanted(),
    profile_number(StrengthProfile::VT_NUMBER),
    list("Layer", StrengthProfile::VT_READINGS, Thing::strength, kStrengthLayer).inner().wanted(),
    custom(),
};
constexpr Type kStrengthProfile = rows(kStrengthRows);

constexpr Row kImpurityMetaRows[] = {
    remark(),
    custom().old(),
    code("impurity", ImpurityProfile::VT_IMPURITY, code_table<firnbook::Impurity>).nil().wanted(),
    code("methodOfMeas", ImpurityProfile::VT_METHOD, code_table<firnbook::ImpurityMethod>).nil().wanted(),
    value("uncertaintyOfMeas", kFractionUncertainty, ImpurityProfile::VT_UNCERTAINTY_E6,
          ImpurityProfile::VT_UNCERTAINTY_UNIT)
        .nil()
        .not_negative(),
    centimetres("probedThickness", ImpurityProfile::VT_PROBED_THICKNESS_10UM),
};
constexpr Type kImpurityMeta = rows(kImpurityMetaRows);
constexpr Row kImpurityLayerRows[] = {
    meta(),
    custom(),
    top(ImpurityReading::VT_TOP),
    thickness(ImpurityReading::VT_BOTTOM, ImpurityReading::VT_TOP),
    value("massFraction", kFraction, ImpurityReading::VT_MASS_FRACTION_E6,
          ImpurityReading::VT_MASS_FRACTION_UNIT)
        .nil()
        .not_negative(),
    value("volumeFraction", kFraction, ImpurityReading::VT_VOLUME_FRACTION_E6,
          ImpurityReading::VT_VOLUME_FRACTION_UNIT)
        .nil()
        .not_negative(),
};
constexpr Type kImpurityLayer = rows(kImpurityLayerRows);
constexpr Row kImpurityRows[] = {
    group("impurityMetaData", kImpurityMeta).wanted(),
    profile_number(ImpurityProfile::VT_NUMBER),
    list("Layer", ImpurityProfile::VT_READINGS, Thing::impurity, kImpurityLayer).inner().wanted(),
    custom(),
};
constexpr Type kImpurityProfile = rows(kImpurityRows);

// --- tests -------------------------------------------------------------------------------------------------

constexpr Row character() {
  return value("fractureCharacter", kCharacter, Fracture::VT_CHARACTER, Fracture::VT_QUALITY).nil();
}
// What 5.0 has in other places stands here too.
constexpr Row kTestHeadRows[] = {meta(), remark().old(), custom()};
constexpr Row kMetaOuterRows[] = {group("MetaData", kMeta)};
}  // namespace
constexpr Type kMetaOuter = rows(kMetaOuterRows);
namespace {
constexpr Row kFailedLayerRows[] = {
    group("metaDataProperty", kMetaOuter).old(),
    remark().old(),
    meta(),
    custom(),
    top(Layer::VT_TOP),
    thickness(Layer::VT_BOTTOM, Layer::VT_TOP),
    grain_first(),
    grain_second(),
    grain_size(),
    formed(),
};
constexpr Row kBlockRows[] = {
    character(), code("releaseType", Fracture::VT_RELEASE, code_table<firnbook::ReleaseType>).nil()};
constexpr Type kBlock = rows(kBlockRows);
constexpr Row kTapRows[] = {character()};
constexpr Type kTap = rows(kTapRows);
constexpr Type kExtended = {};
constexpr Row kFrameRows[] = {
    character(),
    number("failureForce", Fracture::VT_FORCE_MN, Quantity::force, "N", 3).nil().not_negative().wanted()};
constexpr Type kFrame = rows(kFrameRows);
constexpr Row kSawRows[] = {code("fracturePropagation", Fracture::VT_SAW_END, code_table<firnbook::SawEnd>),
                            centimetres("cutLength", Fracture::VT_CUT_10UM).wanted()};
constexpr Type kSaw = rows(kSawRows);

// --- place, time, people
// -------------------------------------------------------------------------------------

constexpr Row kPersonRows[] = {
    meta(),
    value("name", kText, Observer::VT_NAME).wanted(),
    custom(),
    value("Person", kInnerPerson, Observer::VT_ID).old(),
};
constexpr Row kOperationRows[] = {
    meta(),
    value("name", kText, Operation::VT_NAME).wanted(),
    custom(),
    list("contactPerson", Operation::VT_CONTACTS, Thing::operation, kPerson)
        .inner()
        .with_id(Observer::VT_ID, "contact"),
};

constexpr Row bare_number(voffset_t field, Quantity quantity, std::string_view uom, std::int8_t power) {
  Row row = number("position", field, quantity, uom, power);
  row.has_uom = false;  // it stands one element further out
  return row;
}
constexpr Row kElevationRows[] = {bare_number(Site::VT_ELEVATION_10UM, Quantity::length, "m", 5)
                                      .within(-50000000, 900000000)
                                      .whole(100000)};
constexpr Type kElevationPosition = rows(kElevationRows);
constexpr Row kElevationOuterRows[] = {group("ElevationPosition", kElevationPosition).with(" uom=\"m\"")};
}  // namespace
constexpr Type kElevation = rows(kElevationOuterRows);
namespace {
constexpr Row kSlopeRows[] = {number("position", Site::VT_SLOPE_DEG, Quantity::none, "", 0).within(0, 90)};
constexpr Type kSlopePosition = rows(kSlopeRows);
constexpr Row kSlopeOuterRows[] = {group("SlopeAnglePosition", kSlopePosition).with(" uom=\"deg\"")};
}  // namespace
constexpr Type kSlope = rows(kSlopeOuterRows);
namespace {

constexpr Row kSiteRows[] = {
    meta(),
    value("name", kText, Site::VT_NAME).wanted(),
    value("obsPointSubType", kText, Site::VT_POINT_KIND).wanted(),
    group("validElevation", kElevation),
    group("validAspect", kSiteAspect),
    group("validSlopeAngle", kSlope),
    value("pointLocation", kPosition, Site::VT_LATITUDE_E7DEG, Site::VT_LONGITUDE_E7DEG),
    value("country", kCountry, Site::VT_COUNTRY),
    value("region", kText, Site::VT_REGION),
    custom(),
};
constexpr Type kSite = rows(kSiteRows);

constexpr Row kTimeRows[] = {
    meta().on(Thing::pit, Pit::VT_TIME),
    value("recordTime", kSpan, Pit::VT_TIME).wanted(),
    value("dateTimeReport", kMoment, Pit::VT_REPORTED),
    value("dateTimeLastEdit", kMoment, Pit::VT_EDITED),
    custom().on(Thing::pit, Pit::VT_TIME),
};
constexpr Type kTime = rows(kTimeRows);

constexpr Row kMeasurementRows[] = {
    meta().on(Thing::snowpack),
    centimetres("profileDepth", Pit::VT_PROFILE_DEPTH_10UM),
    table("weatherCond", Pit::VT_WEATHER, Thing::weather, kWeather),
    table("snowPackCond", Pit::VT_SNOWPACK, Thing::snowpack, kSnowpack),
    table("surfCond", Pit::VT_SURFACE, Thing::surface, kSurface),
    group("stratProfile", kStrat).on(Thing::pit, Pit::VT_LAYERS),
    group("tempProfile", kTemp).on(Thing::pit, Pit::VT_TEMPERATURES),
    list("densityProfile", Pit::VT_DENSITIES, Thing::density_profile, kDensity),
    list("lwcProfile", Pit::VT_LIQUID_WATER, Thing::liquid_water_profile, kWaterProfile),
    list("specSurfAreaProfile", Pit::VT_SURFACE_AREA, Thing::surface_area_profile, kSurfaceAreaProfile),
    list("hardnessProfile", Pit::VT_HARDNESS, Thing::hardness_profile, kHardnessProfile)
        .with(" uomWeightHammer=\"kg\" uomWeightTube=\"kg\" uomDropHeight=\"cm\""),
    list("strengthProfile", Pit::VT_STRENGTH, Thing::strength_profile, kStrengthProfile),
    list("impurityProfile", Pit::VT_IMPURITIES, Thing::impurity_profile, kImpurityProfile),
    value("stbTests", kTests, Pit::VT_TESTS),
    custom().on(Thing::snowpack),
};
constexpr Type kMeasurements = rows(kMeasurementRows);
constexpr Row kResultsRows[] = {
    group("SnowProfileMeasurements", kMeasurements).wanted().with(" dir=\"top down\"")};
constexpr Type kResults = rows(kResultsRows);

constexpr Row kRootRows[] = {
    meta(),
    group("timeRef", kTime).wanted(),
    value("srcRef", kSource, Pit::VT_OPERATION, Pit::VT_OBSERVERS).wanted(),
    table("locRef", Pit::VT_SITE, Thing::site, kSite).wanted().with_id(Site::VT_ID, "location"),
    group("snowProfileResultsOf", kResults).wanted(),
    value("application", kText, Pit::VT_APPLICATION),
    value("applicationVersion", kText, Pit::VT_APPLICATION_VERSION),
    value("customData", kRootCustom, Pit::VT_EXTENSIONS),
};

}  // namespace

const Type kVersion6 = rows(kRootRows);
const Type kOperation = rows(kOperationRows);
const Type kPerson = rows(kPersonRows);
const Type kFailedLayer = rows(kFailedLayerRows);
const Type kTestHead = rows(kTestHeadRows);

constexpr TestType kTestTypes[5] = {
    {"RBlockTest", firnbook::TestKind::RB, &kBlock},
    {"ComprTest", firnbook::TestKind::CT, &kTap},
    {"ExtColumnTest", firnbook::TestKind::ECT, &kExtended},
    {"ShearFrameTest", firnbook::TestKind::shear_frame, &kFrame},
    {"PropSawTest", firnbook::TestKind::PST, &kSaw},
};

}  // namespace firn::exchange::caaml
