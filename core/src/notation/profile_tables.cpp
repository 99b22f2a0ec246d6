// The named values of measured profiles; see note_tables.h.
#include "notation/note_tables.h"

namespace firn::notation {
namespace {

using namespace firnbook;  // NOLINT: a table of nothing but the schema's names
using firnbook::Thing;

constexpr auto kCm = LengthUnit::cm;

constexpr Item kDensityProfileItems[] = {
    number_item<&DensityProfileT::number>("number", DensityProfile::VT_NUMBER, 0, "",
                                          "the number of the profile"),
    code_item<&DensityProfileT::method>("method", DensityProfile::VT_METHOD, "how density was measured"),
    number_item<&DensityProfileT::uncertainty_dkgm3>("uncertainty", DensityProfile::VT_UNCERTAINTY_DKGM3, 1,
                                                     "", "the uncertainty in kg/m3"),
    number_item<&DensityProfileT::probe_volume_mm3>("volume", DensityProfile::VT_PROBE_VOLUME_MM3, 3, "cm3",
                                                    "the volume of the cutter in cm3"),
    length_item<&DensityProfileT::probe_diameter_10um>("diameter", DensityProfile::VT_PROBE_DIAMETER_10UM,
                                                       kCm, "the diameter of the cutter in cm"),
    length_item<&DensityProfileT::probe_length_10um>("length", DensityProfile::VT_PROBE_LENGTH_10UM, kCm,
                                                     "the length of the cutter in cm"),
    length_item<&DensityProfileT::probed_thickness_10um>(
        "thickness", DensityProfile::VT_PROBED_THICKNESS_10UM, kCm, "the thickness of a sample in cm")};
constexpr Item kDensityItems[] = {number_item<&DensityReadingT::density_dkgm3>(
                                      "", DensityReading::VT_DENSITY_DKGM3, 1, "", "the density in kg/m3")
                                      .with_silent_unit("kg/m3")};

constexpr Item kLiquidWaterProfileItems[] = {
    number_item<&LiquidWaterProfileT::number>("number", LiquidWaterProfile::VT_NUMBER, 0, "",
                                              "the number of the profile"),
    code_item<&LiquidWaterProfileT::method>("method", LiquidWaterProfile::VT_METHOD,
                                            "how liquid water was measured"),
    number_item<&LiquidWaterProfileT::uncertainty_e4>("uncertainty", LiquidWaterProfile::VT_UNCERTAINTY_E4, 2,
                                                      "", "the uncertainty in percent by volume"),
    length_item<&LiquidWaterProfileT::probed_thickness_10um>(
        "thickness", LiquidWaterProfile::VT_PROBED_THICKNESS_10UM, kCm, "the thickness of a sample in cm")};
constexpr Item kLiquidWaterItems[] = {
    number_item<&LiquidWaterReadingT::liquid_water_e4>("", LiquidWaterReading::VT_LIQUID_WATER_E4, 2, "",
                                                       "the liquid water in percent by volume")
        .with_silent_unit("%")};

constexpr Item kSurfaceAreaProfileItems[] = {
    number_item<&SurfaceAreaProfileT::number>("number", SurfaceAreaProfile::VT_NUMBER, 0, "",
                                              "the number of the profile"),
    code_item<&SurfaceAreaProfileT::method>("method", SurfaceAreaProfile::VT_METHOD,
                                            "how surface area was measured"),
    number_item<&SurfaceAreaProfileT::uncertainty_e2m2kg>(
        "uncertainty", SurfaceAreaProfile::VT_UNCERTAINTY_E2M2KG, 2, "", "the uncertainty in m2/kg"),
    length_item<&SurfaceAreaProfileT::probed_thickness_10um>(
        "thickness", SurfaceAreaProfile::VT_PROBED_THICKNESS_10UM, kCm, "the thickness of a sample in cm")};
constexpr Item kSurfaceAreaItems[] = {
    number_item<&SurfaceAreaReadingT::surface_area_e2m2kg>("", SurfaceAreaReading::VT_SURFACE_AREA_E2M2KG, 2,
                                                           "", "the specific surface area in m2/kg")
        .with_silent_unit("m2/kg")};

constexpr Item kHardnessProfileItems[] = {
    number_item<&HardnessProfileT::number>("number", HardnessProfile::VT_NUMBER, 0, "",
                                           "the number of the profile"),
    code_item<&HardnessProfileT::method>("method", HardnessProfile::VT_METHOD, "how resistance was measured"),
    number_item<&HardnessProfileT::uncertainty_mn>("uncertainty", HardnessProfile::VT_UNCERTAINTY_MN, 3, "",
                                                   "the uncertainty in N"),
    number_item<&HardnessProfileT::indentation_area_mm2>("area", HardnessProfile::VT_INDENTATION_AREA_MM2, 0,
                                                         "mm2", "the indentation area in mm2")};
constexpr Item kHardnessItems[] = {
    number_item<&HardnessReadingT::resistance_mn>("", HardnessReading::VT_RESISTANCE_MN, 3, "",
                                                  "the resistance in N")
        .with_silent_unit("N"),
    number_item<&HardnessReadingT::hammer_g>("hammer", HardnessReading::VT_HAMMER_G, 0, "g",
                                             "the weight of the hammer in g"),
    number_item<&HardnessReadingT::tube_g>("tube", HardnessReading::VT_TUBE_G, 0, "g",
                                           "the weight of the tube in g"),
    number_item<&HardnessReadingT::drops>("drops", HardnessReading::VT_DROPS, 0, "", "how many drops"),
    length_item<&HardnessReadingT::drop_height_10um>("fall", HardnessReading::VT_DROP_HEIGHT_10UM, kCm,
                                                     "the height of the drops in cm")};

constexpr Item kStrengthProfileItems[] = {
    number_item<&StrengthProfileT::number>("number", StrengthProfile::VT_NUMBER, 0, "",
                                           "the number of the profile"),
    code_item<&StrengthProfileT::kind>("kind", StrengthProfile::VT_KIND, "compressive, tensile or shear"),
    code_item<&StrengthProfileT::method>("method", StrengthProfile::VT_METHOD, "how strength was measured"),
    number_item<&StrengthProfileT::uncertainty_pa>("uncertainty", StrengthProfile::VT_UNCERTAINTY_PA, 0, "",
                                                   "the uncertainty in Pa"),
    number_item<&StrengthProfileT::probed_area_mm2>("area", StrengthProfile::VT_PROBED_AREA_MM2, 0, "mm2",
                                                    "the probed area in mm2")};
constexpr Item kStrengthItems[] = {
    number_item<&StrengthReadingT::strength_pa>("", StrengthReading::VT_STRENGTH_PA, 0, "",
                                                "the strength in Pa")
        .with_silent_unit("Pa"),
    code_item<&StrengthReadingT::character>("character", StrengthReading::VT_CHARACTER,
                                            "the fracture character"),
    code_item<&StrengthReadingT::quality>("quality", StrengthReading::VT_QUALITY, "the shear quality"),
    code_item<&StrengthReadingT::fracture_surface>("surface", StrengthReading::VT_FRACTURE_SURFACE,
                                                   "the fracture surface")};

constexpr Item kImpurityProfileItems[] = {
    number_item<&ImpurityProfileT::number>("number", ImpurityProfile::VT_NUMBER, 0, "",
                                           "the number of the profile"),
    code_item<&ImpurityProfileT::impurity>("impurity", ImpurityProfile::VT_IMPURITY, "what the impurity is"),
    code_item<&ImpurityProfileT::method>("method", ImpurityProfile::VT_METHOD, "how it was measured"),
    number_item<&ImpurityProfileT::uncertainty_e6>("uncertainty", ImpurityProfile::VT_UNCERTAINTY_E6, 6, "",
                                                   "the uncertainty"),
    code_item<&ImpurityProfileT::uncertainty_unit>("uncertainty in", ImpurityProfile::VT_UNCERTAINTY_UNIT,
                                                   "%, ppm or ppb"),
    length_item<&ImpurityProfileT::probed_thickness_10um>(
        "thickness", ImpurityProfile::VT_PROBED_THICKNESS_10UM, kCm, "the thickness of a sample in cm"),
    text_item<&ImpurityProfileT::uncertainty_unit_words>("uncertainty unit",
                                                         ImpurityProfile::VT_UNCERTAINTY_UNIT_WORDS,
                                                         "the unit of the uncertainty in quotes")};
constexpr Item kImpurityItems[] = {
    number_item<&ImpurityReadingT::mass_fraction_e6>("", ImpurityReading::VT_MASS_FRACTION_E6, 6, "",
                                                     "the mass fraction"),
    code_item<&ImpurityReadingT::mass_fraction_unit>("in", ImpurityReading::VT_MASS_FRACTION_UNIT,
                                                     "%, ppm or ppb"),
    number_item<&ImpurityReadingT::volume_fraction_e6>("volume", ImpurityReading::VT_VOLUME_FRACTION_E6, 6,
                                                       "", "the volume fraction"),
    code_item<&ImpurityReadingT::volume_fraction_unit>("volume in", ImpurityReading::VT_VOLUME_FRACTION_UNIT,
                                                       "%, ppm or ppb"),
    text_item<&ImpurityReadingT::unit_words>("unit", ImpurityReading::VT_UNIT_WORDS, "the unit in quotes")};

template <std::size_t N>
constexpr ItemTable whole(const Item (&list)[N], Thing thing) {
  return {list, N, thing, false};
}
template <class T, std::size_t N>
constexpr ItemTable reading(const Item (&list)[N], Thing thing) {
  // The marks of the top and the bottom stand with the span.
  return {list, N, thing, true, 3};
}

}  // namespace

namespace items {
const ItemTable kDensityProfile = whole(kDensityProfileItems, Thing::density_profile);
const ItemTable kDensity = reading<DensityReadingT>(kDensityItems, Thing::density);
const ItemTable kLiquidWaterProfile = whole(kLiquidWaterProfileItems, Thing::liquid_water_profile);
const ItemTable kLiquidWater = reading<LiquidWaterReadingT>(kLiquidWaterItems, Thing::liquid_water);
const ItemTable kSurfaceAreaProfile = whole(kSurfaceAreaProfileItems, Thing::surface_area_profile);
const ItemTable kSurfaceArea = reading<SurfaceAreaReadingT>(kSurfaceAreaItems, Thing::surface_area);
const ItemTable kHardnessProfile = whole(kHardnessProfileItems, Thing::hardness_profile);
const ItemTable kHardness = reading<HardnessReadingT>(kHardnessItems, Thing::hardness);
const ItemTable kStrengthProfile = whole(kStrengthProfileItems, Thing::strength_profile);
const ItemTable kStrength = reading<StrengthReadingT>(kStrengthItems, Thing::strength);
const ItemTable kImpurityProfile = whole(kImpurityProfileItems, Thing::impurity_profile);
const ItemTable kImpurity = reading<ImpurityReadingT>(kImpurityItems, Thing::impurity);
}  // namespace items

}  // namespace firn::notation
