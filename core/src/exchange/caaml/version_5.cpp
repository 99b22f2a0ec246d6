// CAAML 5.0 where it differs (CAAMLv5_SnowProfileIACS.xsd, read). It is only read.
//   metaDataProperty/MetaData   dateTimeReport, srcRef, comment and customData of the profile
//   validTime                   now timeRef/recordTime
//   locRef/ObsPoint             now locRef; description now a comment
//   contactPerson/Person        now contactPerson
//   weather, surface, heights   stand in SnowProfileMeasurements itself
//   snowHeight, swe             now height, waterEquivalent; swe in mm
//   stratProfile/Layer          holds density, lwc, specific surface, strength and impurities of its own,
//   which
//                               are profiles now
//   uomDepthTop and the like    one unit for all readings of a profile
//   comment, customData         stand in the thing itself
#include <memory>
#include <string>
#include <utility>

#include "exchange/caaml/read_values.h"

namespace firn::exchange::caaml {
namespace {

using firnbook::DensityProfile;
using firnbook::DensityReading;
using firnbook::Depth;
using firnbook::HardnessProfile;
using firnbook::HardnessReading;
using firnbook::ImpurityReading;
using firnbook::Layer;
using firnbook::LayerT;
using firnbook::LiquidWaterProfile;
using firnbook::LiquidWaterReading;
using firnbook::Pit;
using firnbook::Site;
using firnbook::Snowpack;
using firnbook::StrengthProfile;
using firnbook::StrengthReading;
using firnbook::Surface;
using firnbook::SurfaceAreaProfile;
using firnbook::SurfaceAreaReading;
using firnbook::TemperatureReading;
using firnbook::Weather;
using pugi::xml_node;

// --- values that a layer holds itself
// ------------------------------------------------------------------------

constexpr Type kNoRows = {};

// Does `act` at a new reading, which spans what the layer spans, of the profile at `index` of a list.
template <class Reading, class Act>
void at_reading(Reader& reader, voffset_t list_id, std::int32_t index, voffset_t readings, Thing thing,
                Act&& act) {
  const LayerT& layer = *static_cast<const LayerT*>(reader.here().object);
  const form::Field& profiles = *form::table_of<firnbook::PitT>().find(list_id);
  Here profile;
  profile.table = profiles.table;
  profile.object = profiles.table->object_at(profiles.in(&reader.pit()), static_cast<std::size_t>(index));
  profile.index = index;
  reader.within(profile, [&] {
    const Row row = list({}, readings, thing, kNoRows).inner();
    const Here here = reader.list_element(reader.field(readings), row);
    auto& reading = *static_cast<Reading*>(here.object);
    if (layer.top != nullptr) reading.top = std::make_unique<Depth>(*layer.top);
    if (layer.bottom != nullptr) reading.bottom = std::make_unique<Depth>(*layer.bottom);
    reader.within(here, act);
  });
}

enum LayerProfile : std::size_t { densities, liquid_water, surface_area, hardness };

template <class Profile>
std::int32_t profile_of_layers(Reader& reader, LayerProfile kind,
                               std::vector<std::unique_ptr<Profile>>& list) {
  std::int32_t& index = reader.layer_profile(kind);
  if (index < 0) {
    index = static_cast<std::int32_t>(list.size());
    list.push_back(std::make_unique<Profile>());
  }
  return index;
}

void layer_density(Reader& reader, const Row&, const xml_node& node) {
  constexpr Row kRow =
      number("density", DensityReading::VT_DENSITY_DKGM3, Quantity::density, "kgm-3", 1).not_negative();
  const std::int32_t index = profile_of_layers(reader, densities, reader.pit().densities);
  at_reading<firnbook::DensityReadingT>(reader, Pit::VT_DENSITIES, index, DensityProfile::VT_READINGS,
                                        Thing::density, [&] { reading::number(reader, kRow, node); });
}

void layer_surface_area(Reader& reader, const Row&, const xml_node& node) {
  constexpr Row kRow =
      number("specSurfArea", SurfaceAreaReading::VT_SURFACE_AREA_E2M2KG, Quantity::surface_area, "m2kg-1", 2)
          .not_negative();
  const std::int32_t index = profile_of_layers(reader, surface_area, reader.pit().surface_area);
  at_reading<firnbook::SurfaceAreaReadingT>(reader, Pit::VT_SURFACE_AREA, index,
                                            SurfaceAreaProfile::VT_READINGS, Thing::surface_area,
                                            [&] { reading::number(reader, kRow, node); });
}

bool begins_as_number(std::string_view text) {
  return !text.empty() &&
         ((text[0] >= '0' && text[0] <= '9') || text[0] == '-' || text[0] == '+' || text[0] == '.');
}

// A class of wetness, or a percentage.
void layer_water(Reader& reader, const Row& row, const xml_node& node) {
  const std::string_view text = reader.trimmed(node);
  if (!begins_as_number(text)) {
    reading::take_code(reader, row, node, text, code_table<firnbook::Wetness>());
    return;
  }
  constexpr Row kRow =
      number("lwc", LiquidWaterReading::VT_LIQUID_WATER_E4, Quantity::percent, "% per Vol", 2).not_negative();
  const std::int32_t index = profile_of_layers(reader, liquid_water, reader.pit().liquid_water);
  at_reading<firnbook::LiquidWaterReadingT>(reader, Pit::VT_LIQUID_WATER, index,
                                            LiquidWaterProfile::VT_READINGS, Thing::liquid_water,
                                            [&] { reading::number(reader, kRow, node); });
}

// Hand hardness, or a resistance in newtons.
void layer_hardness(Reader& reader, const Row& row, const xml_node& node) {
  const std::string_view text = reader.trimmed(node);
  if (!begins_as_number(text) || text.find('F') != std::string_view::npos) {
    reading::take_code(reader, row, node, text, code_table<firnbook::HandHardness>());
    return;
  }
  constexpr Row kRow =
      number("hardness", HardnessReading::VT_RESISTANCE_MN, Quantity::force, "N", 3).not_negative();
  const std::int32_t index = profile_of_layers(reader, hardness, reader.pit().hardness);
  at_reading<firnbook::HardnessReadingT>(reader, Pit::VT_HARDNESS, index, HardnessProfile::VT_READINGS,
                                         Thing::hardness, [&] { reading::number(reader, kRow, node); });
}

// The child of that name; null where there is none.
xml_node child_of(const Reader& reader, const xml_node& node, std::string_view name) {
  for (xml_node child = node.first_child(); child; child = child.next_sibling()) {
    if (child.type() == pugi::node_element && reader.name_of(child).local == name) return child;
  }
  return {};
}

constexpr Row kStrengthMetaRows[] = {
    code("strengthType", StrengthProfile::VT_KIND, code_table<firnbook::StrengthKind>),
    code("methodOfMeas", StrengthProfile::VT_METHOD, code_table<firnbook::StrengthMethod>),
    number("uncertaintyOfMeas", StrengthProfile::VT_UNCERTAINTY_PA, Quantity::none, "", 0).not_negative(),
};
constexpr Type kStrengthMeta = rows(kStrengthMetaRows);
constexpr Row kStrengthRows[] = {
    value("fractureCharacter", kCharacter, StrengthReading::VT_CHARACTER, StrengthReading::VT_QUALITY),
    number("strengthValue", StrengthReading::VT_STRENGTH_PA, Quantity::pressure, "Nm-2", 0).not_negative(),
};
constexpr Type kStrengthComponents = rows(kStrengthRows);

// Each layer says its kind and method anew, so that each is a profile of one reading.
void layer_strength(Reader& reader, const Row&, const xml_node& node) {
  auto& profiles = reader.pit().strength;
  const auto index = static_cast<std::int32_t>(profiles.size());
  profiles.push_back(std::make_unique<firnbook::StrengthProfileT>());
  if (const xml_node meta = child_of(reader, node, "PropertyMetadata")) {
    Here here;
    here.object = profiles.back().get();
    here.table = &form::table_of<firnbook::StrengthProfileT>();
    here.thing = here.about = Thing::strength_profile;
    here.index = index;
    reader.read_object(meta, kStrengthMeta, here);
  }
  const xml_node components = child_of(reader, node, "Components");
  at_reading<firnbook::StrengthReadingT>(reader, Pit::VT_STRENGTH, index, StrengthProfile::VT_READINGS,
                                         Thing::strength,
                                         [&] { reader.read_children(components, kStrengthComponents); });
}

void layer_impurities(Reader& reader, const Row&, const xml_node& node) {
  for (xml_node each = node.first_child(); each; each = each.next_sibling()) {
    if (each.type() != pugi::node_element) continue;
    if (reader.name_of(each).local != "Impurity") {
      reader.unknown(each);
      continue;
    }
    auto& profiles = reader.pit().impurities;
    const auto index = static_cast<std::int32_t>(profiles.size());
    profiles.push_back(std::make_unique<firnbook::ImpurityProfileT>());
    if (const xml_node description = child_of(reader, each, "description")) {
      profiles.back()->impurity = parse_code<firnbook::Impurity>(reader.trimmed(description));
      if (!profiles.back()->impurity.has_value()) {
        reader.add_remark(reader.words(description), {index, -1, kWholeThing, Thing::impurity_profile});
      }
    }
    const xml_node mass = child_of(reader, each, "massFraction");
    if (!mass) continue;
    constexpr Row kRow = value("massFraction", kFraction, ImpurityReading::VT_MASS_FRACTION_E6,
                               ImpurityReading::VT_MASS_FRACTION_UNIT)
                             .not_negative();
    at_reading<firnbook::ImpurityReadingT>(reader, Pit::VT_IMPURITIES, index,
                                           firnbook::ImpurityProfile::VT_READINGS, Thing::impurity,
                                           [&] { reading::fraction(reader, kRow, mass); });
  }
}

void inner_person(Reader& reader, const Row& row, const xml_node& node) {
  reader.read_id(node, reader.member<std::string>(row.field));
  reader.read_children(node, kPerson);
}

constexpr Codec kLayerDensity = {layer_density, nullptr};
constexpr Codec kLayerWater = {layer_water, nullptr};
constexpr Codec kLayerSurfaceArea = {layer_surface_area, nullptr};
constexpr Codec kLayerStrength = {layer_strength, nullptr};
constexpr Codec kLayerImpurities = {layer_impurities, nullptr};
constexpr Codec kLayerHardness = {layer_hardness, nullptr};

// --- conditions
// ------------------------------------------------------------------------------------------------

constexpr Row kWeatherRows[] = {
    value("skyCond", kSky, Weather::VT_SKY, Weather::VT_SKY_FAMILY),
    value("precipTI", kPrecipitation, Weather::VT_PRECIPITATION, Weather::VT_PRECIPITATION_FAMILY),
    number("airTempPres", Weather::VT_AIR_TEMPERATURE_CDEGC, Quantity::temperature, "degC", 2),
    measured_in(value("windSpd", kWind, Weather::VT_WIND, Weather::VT_WIND_SPEED_CMS), Quantity::speed,
                "ms-1", 2),
    group("windDir", kWindDir),
};
constexpr Type kWeather = rows(kWeatherRows);

constexpr Row swe(voffset_t field) {
  return number("swe", field, Quantity::water, "mm", 2).not_negative();
}
constexpr Row kHsRows[] = {centimetres("snowHeight", Snowpack::VT_HS_10UM), swe(Snowpack::VT_HS_WATER_10UM)};
constexpr Type kHs = rows(kHsRows);
constexpr Row kHsOuterRows[] = {group("Components", kHs)};
constexpr Type kHsOuter = rows(kHsOuterRows);
constexpr Row kHn24Rows[] = {centimetres("snowHeight", Snowpack::VT_HN24_10UM),
                             swe(Snowpack::VT_HN24_WATER_10UM)};
constexpr Type kHn24 = rows(kHn24Rows);
constexpr Row kHn24OuterRows[] = {group("Components", kHn24)};
constexpr Type kHn24Outer = rows(kHn24OuterRows);
constexpr Row kHinRows[] = {centimetres("snowHeight", Snowpack::VT_HIN_10UM),
                            swe(Snowpack::VT_HIN_WATER_10UM)};
constexpr Type kHin = rows(kHinRows);
constexpr Row kHinOuterRows[] = {group("Components", kHin)};
constexpr Type kHinOuter = rows(kHinOuterRows);
constexpr Row new_snow() {
  Row row = value("hIN", kNewSnow, Snowpack::VT_HIN_CLEARED);
  row.type = &kHinOuter;
  return row;
}
constexpr Row kSnowpackRows[] = {group("hS", kHsOuter), group("hN24", kHn24Outer), new_snow()};
constexpr Type kSnowpack = rows(kSnowpackRows);

constexpr Row kSurfaceRows[] = {
    centimetres("penetrationRam", Surface::VT_PENETRATION_RAM_10UM),
    centimetres("penetrationFoot", Surface::VT_PENETRATION_FOOT_10UM),
    centimetres("penetrationSki", Surface::VT_PENETRATION_SKI_10UM),
    group("surfFeatures", kFeatures),
};
constexpr Type kSurface = rows(kSurfaceRows);

// --- layers and profiles
// -----------------------------------------------------------------------------------------

constexpr Row meta_outer() {
  return group("metaDataProperty", kMetaOuter);
}
constexpr Row top(voffset_t field) {
  return measured_in(value("depthTop", kTop, field), Quantity::length, "cm", 3).unit_from("uomDepthTop");
}
constexpr Row thickness(voffset_t field, voffset_t of_top) {
  return measured_in(value("thickness", kThickness, field, of_top), Quantity::length, "cm", 3)
      .unit_from("uomThickness");
}

constexpr Row kLayerRows[] = {
    meta_outer(),
    remark(),
    custom(),
    measured_in(value("depthTop", kTop, Layer::VT_TOP), Quantity::length, "cm", 3),
    measured_in(value("thickness", kThickness, Layer::VT_BOTTOM, Layer::VT_TOP), Quantity::length, "cm", 3),
    code("grainFormPrimary", Layer::VT_GRAIN_FORM, code_table<firnbook::GrainForm>),
    code("grainFormSecondary", Layer::VT_GRAIN_FORM_SECOND, code_table<firnbook::GrainForm>),
    group("grainSize", kGrainSizeOuter).with(" uom=\"mm\""),
    value("validFormationTime", kSpan, Layer::VT_FORMED),
    value("hardness", kLayerHardness, Layer::VT_HARDNESS).with_uom(""),
    value("lwc", kLayerWater, Layer::VT_WETNESS).with_uom(""),
    value("density", kLayerDensity, 0).with_uom(""),
    value("specSurfArea", kLayerSurfaceArea, 0).with_uom(""),
    value("layerStrength", kLayerStrength, 0),
    value("impurities", kLayerImpurities, 0),
};
constexpr Type kLayer = rows(kLayerRows);
constexpr Row kStratRows[] = {list("Layer", Pit::VT_LAYERS, Thing::layer, kLayer)};
constexpr Type kStrat = rows(kStratRows);

constexpr Row kObsRows[] = {
    meta_outer(),
    remark(),
    custom(),
    measured_in(value("depth", kDepth, TemperatureReading::VT_DEPTH), Quantity::length, "cm", 3)
        .unit_from("uomDepth"),
    number("snowTemp", TemperatureReading::VT_TEMPERATURE_CDEGC, Quantity::temperature, "degC", 2)
        .unit_from("uomTemp"),
};
constexpr Type kObs = rows(kObsRows);
constexpr Row kTempRows[] = {group("MetaData", kMeta),
                             list("Obs", Pit::VT_TEMPERATURES, Thing::temperature, kObs)};
constexpr Type kTemp = rows(kTempRows);

constexpr Row kDensityLayerRows[] = {
    meta_outer(),
    remark(),
    custom(),
    top(DensityReading::VT_TOP),
    thickness(DensityReading::VT_BOTTOM, DensityReading::VT_TOP),
    number("density", DensityReading::VT_DENSITY_DKGM3, Quantity::density, "kgm-3", 1)
        .not_negative()
        .unit_from("uomDensity"),
};
constexpr Type kDensityLayer = rows(kDensityLayerRows);
constexpr Row kDensityRows[] = {
    group("MetaData", kMeta),
    list("Layer", DensityProfile::VT_READINGS, Thing::density, kDensityLayer).inner()};
constexpr Type kDensity = rows(kDensityRows);

constexpr Row kWaterLayerRows[] = {
    meta_outer(),
    remark(),
    custom(),
    top(LiquidWaterReading::VT_TOP),
    thickness(LiquidWaterReading::VT_BOTTOM, LiquidWaterReading::VT_TOP),
    number("lwc", LiquidWaterReading::VT_LIQUID_WATER_E4, Quantity::percent, "% per Vol", 2)
        .not_negative()
        .unit_from("uomLwc"),
};
constexpr Type kWaterLayer = rows(kWaterLayerRows);
constexpr Row kWaterRows[] = {
    group("MetaData", kMeta),
    list("Layer", LiquidWaterProfile::VT_READINGS, Thing::liquid_water, kWaterLayer).inner()};
constexpr Type kWater = rows(kWaterRows);

constexpr Row kSurfaceAreaMetaRows[] = {
    remark(),
    custom(),
    code("methodOfMeas", SurfaceAreaProfile::VT_METHOD, code_table<firnbook::SurfaceAreaMethod>),
    number("uncertaintyOfMeas", SurfaceAreaProfile::VT_UNCERTAINTY_E2M2KG, Quantity::surface_area, "m2kg-1",
           2)
        .not_negative(),
};
constexpr Type kSurfaceAreaMeta = rows(kSurfaceAreaMetaRows);
constexpr Row kSurfaceAreaLayerRows[] = {
    meta_outer(),
    remark(),
    custom(),
    top(SurfaceAreaReading::VT_TOP),
    thickness(SurfaceAreaReading::VT_BOTTOM, SurfaceAreaReading::VT_TOP),
    number("specSurfArea", SurfaceAreaReading::VT_SURFACE_AREA_E2M2KG, Quantity::surface_area, "m2kg-1", 2)
        .not_negative()
        .unit_from("uomSpecSurfArea"),
};
constexpr Type kSurfaceAreaLayer = rows(kSurfaceAreaLayerRows);
constexpr Row kSurfaceAreaRows[] = {
    group("MetaData", kSurfaceAreaMeta),
    group("MeasurementComponents", kTemplate),
    value("Measurements", kTuples, SurfaceAreaProfile::VT_DENSE_DEPTH_CM, SurfaceAreaProfile::VT_DENSE_M2KG),
    list("Layer", SurfaceAreaProfile::VT_READINGS, Thing::surface_area, kSurfaceAreaLayer).inner(),
};
constexpr Type kSurfaceArea = rows(kSurfaceAreaRows);

constexpr Row kHardnessMetaRows[] = {
    remark(),
    custom(),
    code("methodOfMeas", HardnessProfile::VT_METHOD, code_table<firnbook::HardnessMethod>),
    number("surfOfIndentation", HardnessProfile::VT_INDENTATION_AREA_MM2, Quantity::area, "m2", 6)
        .not_negative(),
};
constexpr Type kHardnessMeta = rows(kHardnessMetaRows);
constexpr Row kHardnessLayerRows[] = {
    meta_outer(),
    remark(),
    custom(),
    top(HardnessReading::VT_TOP),
    thickness(HardnessReading::VT_BOTTOM, HardnessReading::VT_TOP),
    number("hardness", HardnessReading::VT_RESISTANCE_MN, Quantity::force, "N", 3)
        .not_negative()
        .unit_from("uomHardness"),
    number("weightHammer", HardnessReading::VT_HAMMER_G, Quantity::weight, "kg", 3)
        .not_negative()
        .unit_from("uomWeightHammer"),
    number("weightTube", HardnessReading::VT_TUBE_G, Quantity::weight, "kg", 3)
        .not_negative()
        .unit_from("uomWeightTube"),
    number("nDrops", HardnessReading::VT_DROPS, Quantity::none, "", 0).not_negative(),
    number("dropHeight", HardnessReading::VT_DROP_HEIGHT_10UM, Quantity::length, "cm", 3)
        .not_negative()
        .unit_from("uomDropHeight"),
};
constexpr Type kHardnessLayer = rows(kHardnessLayerRows);
constexpr Row kHardnessRows[] = {
    group("MetaData", kHardnessMeta),
    group("MeasurementComponents", kTemplate),
    value("Measurements", kTuples, HardnessProfile::VT_DENSE_DEPTH_CM, HardnessProfile::VT_DENSE_N),
    list("Layer", HardnessProfile::VT_READINGS, Thing::hardness, kHardnessLayer).inner(),
};
constexpr Type kHardness = rows(kHardnessRows);

// --- the profile
// ---------------------------------------------------------------------------------------------------

constexpr Row kMeasurementRows[] = {
    custom().on(Thing::snowpack),
    remark().on(Thing::snowpack),
    centimetres("profileDepth", Pit::VT_PROFILE_DEPTH_10UM),
    inside(Pit::VT_WEATHER, Thing::weather, kWeather),
    inside(Pit::VT_SNOWPACK, Thing::snowpack, kSnowpack),
    inside(Pit::VT_SURFACE, Thing::surface, kSurface),
    group("stratProfile", kStrat).on(Thing::pit, Pit::VT_LAYERS),
    group("tempProfile", kTemp).on(Thing::pit, Pit::VT_TEMPERATURES),
    list("densityProfile", Pit::VT_DENSITIES, Thing::density_profile, kDensity),
    list("lwcProfile", Pit::VT_LIQUID_WATER, Thing::liquid_water_profile, kWater),
    list("specSurfAreaProfile", Pit::VT_SURFACE_AREA, Thing::surface_area_profile, kSurfaceArea),
    list("hardnessProfile", Pit::VT_HARDNESS, Thing::hardness_profile, kHardness),
    value("stbTests", kTests, Pit::VT_TESTS),
};
constexpr Type kMeasurements = rows(kMeasurementRows);
constexpr Row kResultsRows[] = {group("SnowProfileMeasurements", kMeasurements)};
constexpr Type kResults = rows(kResultsRows);

constexpr Row description() {
  Row row = remark();
  row.name = "description";
  return row;
}
constexpr Row kSiteRows[] = {
    meta_outer(),
    description(),
    value("name", kText, Site::VT_NAME),
    value("obsPointSubType", kText, Site::VT_POINT_KIND),
    group("validElevation", kElevation),
    group("validAspect", kSiteAspect),
    group("validSlopeAngle", kSlope),
    value("pointLocation", kPosition, Site::VT_LATITUDE_E7DEG, Site::VT_LONGITUDE_E7DEG),
};
constexpr Type kSite = rows(kSiteRows);
constexpr Row kPlaceRows[] = {table("ObsPoint", Pit::VT_SITE, Thing::site, kSite).with_id(Site::VT_ID, {})};
constexpr Type kPlace = rows(kPlaceRows);

constexpr Row kRecordRows[] = {
    value("dateTimeReport", kMoment, Pit::VT_REPORTED),
    value("srcRef", kSource, Pit::VT_OPERATION, Pit::VT_OBSERVERS),
    remark(),
    custom(),
};
constexpr Type kRecord = rows(kRecordRows);
constexpr Row kRecordOuterRows[] = {group("MetaData", kRecord)};
constexpr Type kRecordOuter = rows(kRecordOuterRows);

constexpr Row kRootRows[] = {
    group("metaDataProperty", kRecordOuter),
    value("validTime", kSpan, Pit::VT_TIME),
    group("snowProfileResultsOf", kResults),
    group("locRef", kPlace),
};

}  // namespace

const Codec kInnerPerson = {inner_person, nullptr};
const Type kVersion5 = rows(kRootRows);

}  // namespace firn::exchange::caaml
