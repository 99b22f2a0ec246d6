// Every field of every table of schemas/pit.fbs with its types, for tests that fill pits at random: id,
// accessor of the stored form, member of the mutable form.
#pragma once

#include <memory>
#include <string>
#include <type_traits>
#include <vector>

#include "schemas/pit_generated.h"

namespace firn::tests {

template <class Table>
struct Of {};

template <class Visit>
void each_field(Of<firnbook::Remark>, Visit&& visit) {
  using T = firnbook::Remark;
  using O = firnbook::RemarkT;
  visit(T::VT_TEXT, &T::text, &O::text);
  visit(T::VT_ABOUT, &T::about, &O::about);
  visit(T::VT_CONFIDENTIAL, &T::confidential, &O::confidential);
}

template <class Visit>
void each_field(Of<firnbook::Absence>, Visit&& visit) {
  using T = firnbook::Absence;
  using O = firnbook::AbsenceT;
  visit(T::VT_ABOUT, &T::about, &O::about);
  visit(T::VT_REASON, &T::reason, &O::reason);
  visit(T::VT_WORDS, &T::words, &O::words);
}

template <class Visit>
void each_field(Of<firnbook::Extension>, Visit&& visit) {
  using T = firnbook::Extension;
  using O = firnbook::ExtensionT;
  visit(T::VT_KEY, &T::key, &O::key);
  visit(T::VT_BYTES, &T::bytes, &O::bytes);
  visit(T::VT_ABOUT, &T::about, &O::about);
}

template <class Visit>
void each_field(Of<firnbook::Unread>, Visit&& visit) {
  using T = firnbook::Unread;
  using O = firnbook::UnreadT;
  visit(T::VT_LINE, &T::line, &O::line);
  visit(T::VT_TEXT, &T::text, &O::text);
  visit(T::VT_EXPECTED, &T::expected, &O::expected);
}

template <class Visit>
void each_field(Of<firnbook::Observer>, Visit&& visit) {
  using T = firnbook::Observer;
  using O = firnbook::ObserverT;
  visit(T::VT_NAME, &T::name, &O::name);
  visit(T::VT_TRAINING, &T::training, &O::training);
  visit(T::VT_ID, &T::id, &O::id);
  visit(T::VT_WORDS, &T::words, &O::words);
}

template <class Visit>
void each_field(Of<firnbook::Operation>, Visit&& visit) {
  using T = firnbook::Operation;
  using O = firnbook::OperationT;
  visit(T::VT_NAME, &T::name, &O::name);
  visit(T::VT_ID, &T::id, &O::id);
  visit(T::VT_CONTACTS, &T::contacts, &O::contacts);
}

template <class Visit>
void each_field(Of<firnbook::Site>, Visit&& visit) {
  using T = firnbook::Site;
  using O = firnbook::SiteT;
  visit(T::VT_NAME, &T::name, &O::name);
  visit(T::VT_POINT_KIND, &T::point_kind, &O::point_kind);
  visit(T::VT_ELEVATION_10UM, &T::elevation_10um, &O::elevation_10um);
  visit(T::VT_ELEVATION_SOURCE, &T::elevation_source, &O::elevation_source);
  visit(T::VT_ASPECT_POINT, &T::aspect_point, &O::aspect_point);
  visit(T::VT_ASPECT_DEG, &T::aspect_deg, &O::aspect_deg);
  visit(T::VT_SLOPE_DEG, &T::slope_deg, &O::slope_deg);
  visit(T::VT_LATITUDE_E7DEG, &T::latitude_e7deg, &O::latitude_e7deg);
  visit(T::VT_LONGITUDE_E7DEG, &T::longitude_e7deg, &O::longitude_e7deg);
  visit(T::VT_POSITION_ACCURACY_10UM, &T::position_accuracy_10um, &O::position_accuracy_10um);
  visit(T::VT_POSITION_SOURCE, &T::position_source, &O::position_source);
  visit(T::VT_COUNTRY, &T::country, &O::country);
  visit(T::VT_REGION, &T::region, &O::region);
  visit(T::VT_ID, &T::id, &O::id);
  visit(T::VT_POINT_ID, &T::point_id, &O::point_id);
  visit(T::VT_BLURRED_BY_10UM, &T::blurred_by_10um, &O::blurred_by_10um);
  visit(T::VT_PROBES_10UM, &T::probes_10um, &O::probes_10um);
  visit(T::VT_TERRAIN, &T::terrain, &O::terrain);
  visit(T::VT_UNRELIABLE, &T::unreliable, &O::unreliable);
}

template <class Visit>
void each_field(Of<firnbook::Choice>, Visit&& visit) {
  using T = firnbook::Choice;
  using O = firnbook::ChoiceT;
  visit(T::VT_WORDS, &T::words, &O::words);
  visit(T::VT_TERRAIN_OF_INTEREST, &T::terrain_of_interest, &O::terrain_of_interest);
  visit(T::VT_ASPECT, &T::aspect, &O::aspect);
  visit(T::VT_ELEVATION, &T::elevation, &O::elevation);
  visit(T::VT_WIND_LOADING, &T::wind_loading, &O::wind_loading);
  visit(T::VT_INCLINE, &T::incline, &O::incline);
  visit(T::VT_INTEREST_ASPECT_POINT, &T::interest_aspect_point, &O::interest_aspect_point);
  visit(T::VT_INTEREST_ASPECT_DEG, &T::interest_aspect_deg, &O::interest_aspect_deg);
  visit(T::VT_INTEREST_ELEVATION_10UM, &T::interest_elevation_10um, &O::interest_elevation_10um);
  visit(T::VT_INTEREST_SLOPE_DEG, &T::interest_slope_deg, &O::interest_slope_deg);
  visit(T::VT_UNRELIABLE, &T::unreliable, &O::unreliable);
}

template <class Visit>
void each_field(Of<firnbook::Weather>, Visit&& visit) {
  using T = firnbook::Weather;
  using O = firnbook::WeatherT;
  visit(T::VT_SKY, &T::sky, &O::sky);
  visit(T::VT_SKY_THIN, &T::sky_thin, &O::sky_thin);
  visit(T::VT_SKY_FAMILY, &T::sky_family, &O::sky_family);
  visit(T::VT_VALLEY_FOG_BASE_10UM, &T::valley_fog_base_10um, &O::valley_fog_base_10um);
  visit(T::VT_VALLEY_FOG_TOP_10UM, &T::valley_fog_top_10um, &O::valley_fog_top_10um);
  visit(T::VT_PRECIPITATION, &T::precipitation, &O::precipitation);
  visit(T::VT_PRECIPITATION_FAMILY, &T::precipitation_family, &O::precipitation_family);
  visit(T::VT_PRECIPITATION_RATE, &T::precipitation_rate, &O::precipitation_rate);
  visit(T::VT_AIR_TEMPERATURE_CDEGC, &T::air_temperature_cdegc, &O::air_temperature_cdegc);
  visit(T::VT_WIND, &T::wind, &O::wind);
  visit(T::VT_WIND_SPEED_CMS, &T::wind_speed_cms, &O::wind_speed_cms);
  visit(T::VT_WIND_FROM_POINT, &T::wind_from_point, &O::wind_from_point);
  visit(T::VT_WIND_FROM_DEG, &T::wind_from_deg, &O::wind_from_deg);
  visit(T::VT_BLOWING_SNOW, &T::blowing_snow, &O::blowing_snow);
  visit(T::VT_BLOWING_SNOW_FROM_POINT, &T::blowing_snow_from_point, &O::blowing_snow_from_point);
  visit(T::VT_WORDS, &T::words, &O::words);
  visit(T::VT_UNRELIABLE, &T::unreliable, &O::unreliable);
}

template <class Visit>
void each_field(Of<firnbook::Surface>, Visit&& visit) {
  using T = firnbook::Surface;
  using O = firnbook::SurfaceT;
  visit(T::VT_ROUGHNESS, &T::roughness, &O::roughness);
  visit(T::VT_AMPLITUDE_10UM, &T::amplitude_10um, &O::amplitude_10um);
  visit(T::VT_AMPLITUDE_MAX_10UM, &T::amplitude_max_10um, &O::amplitude_max_10um);
  visit(T::VT_WAVELENGTH_10UM, &T::wavelength_10um, &O::wavelength_10um);
  visit(T::VT_WAVELENGTH_MAX_10UM, &T::wavelength_max_10um, &O::wavelength_max_10um);
  visit(T::VT_FEATURE_ASPECT_POINT, &T::feature_aspect_point, &O::feature_aspect_point);
  visit(T::VT_FEATURE_ASPECT_DEG, &T::feature_aspect_deg, &O::feature_aspect_deg);
  visit(T::VT_PENETRATION_RAM_10UM, &T::penetration_ram_10um, &O::penetration_ram_10um);
  visit(T::VT_PENETRATION_FOOT_10UM, &T::penetration_foot_10um, &O::penetration_foot_10um);
  visit(T::VT_PENETRATION_SKI_10UM, &T::penetration_ski_10um, &O::penetration_ski_10um);
  visit(T::VT_TEMPERATURE_CDEGC, &T::temperature_cdegc, &O::temperature_cdegc);
  visit(T::VT_WORDS, &T::words, &O::words);
  visit(T::VT_UNRELIABLE, &T::unreliable, &O::unreliable);
}

template <class Visit>
void each_field(Of<firnbook::Snowpack>, Visit&& visit) {
  using T = firnbook::Snowpack;
  using O = firnbook::SnowpackT;
  visit(T::VT_HS_10UM, &T::hs_10um, &O::hs_10um);
  visit(T::VT_HS_WATER_10UM, &T::hs_water_10um, &O::hs_water_10um);
  visit(T::VT_HN24_10UM, &T::hn24_10um, &O::hn24_10um);
  visit(T::VT_HN24_WATER_10UM, &T::hn24_water_10um, &O::hn24_water_10um);
  visit(T::VT_HIN_10UM, &T::hin_10um, &O::hin_10um);
  visit(T::VT_HIN_WATER_10UM, &T::hin_water_10um, &O::hin_water_10um);
  visit(T::VT_HIN_CLEARED, &T::hin_cleared, &O::hin_cleared);
  visit(T::VT_HST_10UM, &T::hst_10um, &O::hst_10um);
  visit(T::VT_HST_WATER_10UM, &T::hst_water_10um, &O::hst_water_10um);
  visit(T::VT_DIRECTION, &T::direction, &O::direction);
  visit(T::VT_UNRELIABLE, &T::unreliable, &O::unreliable);
}

template <class Visit>
void each_field(Of<firnbook::LayerName>, Visit&& visit) {
  using T = firnbook::LayerName;
  using O = firnbook::LayerNameT;
  visit(T::VT_DATE, &T::date, &O::date);
  visit(T::VT_KIND, &T::kind, &O::kind);
  visit(T::VT_WORDS, &T::words, &O::words);
}

template <class Visit>
void each_field(Of<firnbook::Layer>, Visit&& visit) {
  using T = firnbook::Layer;
  using O = firnbook::LayerT;
  visit(T::VT_TOP, &T::top, &O::top);
  visit(T::VT_BOTTOM, &T::bottom, &O::bottom);
  visit(T::VT_HARDNESS, &T::hardness, &O::hardness);
  visit(T::VT_HARDNESS_TOP, &T::hardness_top, &O::hardness_top);
  visit(T::VT_HARDNESS_BOTTOM, &T::hardness_bottom, &O::hardness_bottom);
  visit(T::VT_GRAIN_FORM, &T::grain_form, &O::grain_form);
  visit(T::VT_GRAIN_FORM_SECOND, &T::grain_form_second, &O::grain_form_second);
  visit(T::VT_GRAIN_SIZE_10UM, &T::grain_size_10um, &O::grain_size_10um);
  visit(T::VT_GRAIN_SIZE_MAX_10UM, &T::grain_size_max_10um, &O::grain_size_max_10um);
  visit(T::VT_GRAIN_SIZE_CLASS, &T::grain_size_class, &O::grain_size_class);
  visit(T::VT_GRAIN_SIZE_MAX_CLASS, &T::grain_size_max_class, &O::grain_size_max_class);
  visit(T::VT_WETNESS, &T::wetness, &O::wetness);
  visit(T::VT_WORDS, &T::words, &O::words);
  visit(T::VT_CANDIDATES, &T::candidates, &O::candidates);
  visit(T::VT_NAME, &T::name, &O::name);
  visit(T::VT_FORMED, &T::formed, &O::formed);
  visit(T::VT_CONCERN, &T::concern, &O::concern);
  visit(T::VT_UNRELIABLE, &T::unreliable, &O::unreliable);
}

template <class Visit>
void each_field(Of<firnbook::TemperatureReading>, Visit&& visit) {
  using T = firnbook::TemperatureReading;
  using O = firnbook::TemperatureReadingT;
  visit(T::VT_DEPTH, &T::depth, &O::depth);
  visit(T::VT_TEMPERATURE_CDEGC, &T::temperature_cdegc, &O::temperature_cdegc);
  visit(T::VT_UNCERTAINTY_CDEGC, &T::uncertainty_cdegc, &O::uncertainty_cdegc);
  visit(T::VT_UNRELIABLE, &T::unreliable, &O::unreliable);
}

template <class Visit>
void each_field(Of<firnbook::DensityReading>, Visit&& visit) {
  using T = firnbook::DensityReading;
  using O = firnbook::DensityReadingT;
  visit(T::VT_TOP, &T::top, &O::top);
  visit(T::VT_BOTTOM, &T::bottom, &O::bottom);
  visit(T::VT_DENSITY_DKGM3, &T::density_dkgm3, &O::density_dkgm3);
  visit(T::VT_UNRELIABLE, &T::unreliable, &O::unreliable);
}

template <class Visit>
void each_field(Of<firnbook::DensityProfile>, Visit&& visit) {
  using T = firnbook::DensityProfile;
  using O = firnbook::DensityProfileT;
  visit(T::VT_NUMBER, &T::number, &O::number);
  visit(T::VT_METHOD, &T::method, &O::method);
  visit(T::VT_UNCERTAINTY_DKGM3, &T::uncertainty_dkgm3, &O::uncertainty_dkgm3);
  visit(T::VT_PROBE_VOLUME_MM3, &T::probe_volume_mm3, &O::probe_volume_mm3);
  visit(T::VT_PROBE_DIAMETER_10UM, &T::probe_diameter_10um, &O::probe_diameter_10um);
  visit(T::VT_PROBE_LENGTH_10UM, &T::probe_length_10um, &O::probe_length_10um);
  visit(T::VT_PROBED_THICKNESS_10UM, &T::probed_thickness_10um, &O::probed_thickness_10um);
  visit(T::VT_READINGS, &T::readings, &O::readings);
}

template <class Visit>
void each_field(Of<firnbook::LiquidWaterReading>, Visit&& visit) {
  using T = firnbook::LiquidWaterReading;
  using O = firnbook::LiquidWaterReadingT;
  visit(T::VT_TOP, &T::top, &O::top);
  visit(T::VT_BOTTOM, &T::bottom, &O::bottom);
  visit(T::VT_LIQUID_WATER_E4, &T::liquid_water_e4, &O::liquid_water_e4);
  visit(T::VT_UNRELIABLE, &T::unreliable, &O::unreliable);
}

template <class Visit>
void each_field(Of<firnbook::LiquidWaterProfile>, Visit&& visit) {
  using T = firnbook::LiquidWaterProfile;
  using O = firnbook::LiquidWaterProfileT;
  visit(T::VT_NUMBER, &T::number, &O::number);
  visit(T::VT_METHOD, &T::method, &O::method);
  visit(T::VT_UNCERTAINTY_E4, &T::uncertainty_e4, &O::uncertainty_e4);
  visit(T::VT_PROBED_THICKNESS_10UM, &T::probed_thickness_10um, &O::probed_thickness_10um);
  visit(T::VT_READINGS, &T::readings, &O::readings);
}

template <class Visit>
void each_field(Of<firnbook::SurfaceAreaReading>, Visit&& visit) {
  using T = firnbook::SurfaceAreaReading;
  using O = firnbook::SurfaceAreaReadingT;
  visit(T::VT_TOP, &T::top, &O::top);
  visit(T::VT_BOTTOM, &T::bottom, &O::bottom);
  visit(T::VT_SURFACE_AREA_E2M2KG, &T::surface_area_e2m2kg, &O::surface_area_e2m2kg);
  visit(T::VT_UNRELIABLE, &T::unreliable, &O::unreliable);
}

template <class Visit>
void each_field(Of<firnbook::SurfaceAreaProfile>, Visit&& visit) {
  using T = firnbook::SurfaceAreaProfile;
  using O = firnbook::SurfaceAreaProfileT;
  visit(T::VT_NUMBER, &T::number, &O::number);
  visit(T::VT_METHOD, &T::method, &O::method);
  visit(T::VT_UNCERTAINTY_E2M2KG, &T::uncertainty_e2m2kg, &O::uncertainty_e2m2kg);
  visit(T::VT_PROBED_THICKNESS_10UM, &T::probed_thickness_10um, &O::probed_thickness_10um);
  visit(T::VT_READINGS, &T::readings, &O::readings);
  visit(T::VT_DENSE_DEPTH_CM, &T::dense_depth_cm, &O::dense_depth_cm);
  visit(T::VT_DENSE_M2KG, &T::dense_m2kg, &O::dense_m2kg);
}

template <class Visit>
void each_field(Of<firnbook::HardnessReading>, Visit&& visit) {
  using T = firnbook::HardnessReading;
  using O = firnbook::HardnessReadingT;
  visit(T::VT_TOP, &T::top, &O::top);
  visit(T::VT_BOTTOM, &T::bottom, &O::bottom);
  visit(T::VT_RESISTANCE_MN, &T::resistance_mn, &O::resistance_mn);
  visit(T::VT_HAMMER_G, &T::hammer_g, &O::hammer_g);
  visit(T::VT_TUBE_G, &T::tube_g, &O::tube_g);
  visit(T::VT_DROPS, &T::drops, &O::drops);
  visit(T::VT_DROP_HEIGHT_10UM, &T::drop_height_10um, &O::drop_height_10um);
  visit(T::VT_UNRELIABLE, &T::unreliable, &O::unreliable);
}

template <class Visit>
void each_field(Of<firnbook::HardnessProfile>, Visit&& visit) {
  using T = firnbook::HardnessProfile;
  using O = firnbook::HardnessProfileT;
  visit(T::VT_NUMBER, &T::number, &O::number);
  visit(T::VT_METHOD, &T::method, &O::method);
  visit(T::VT_UNCERTAINTY_MN, &T::uncertainty_mn, &O::uncertainty_mn);
  visit(T::VT_INDENTATION_AREA_MM2, &T::indentation_area_mm2, &O::indentation_area_mm2);
  visit(T::VT_READINGS, &T::readings, &O::readings);
  visit(T::VT_DENSE_DEPTH_CM, &T::dense_depth_cm, &O::dense_depth_cm);
  visit(T::VT_DENSE_N, &T::dense_n, &O::dense_n);
}

template <class Visit>
void each_field(Of<firnbook::StrengthReading>, Visit&& visit) {
  using T = firnbook::StrengthReading;
  using O = firnbook::StrengthReadingT;
  visit(T::VT_TOP, &T::top, &O::top);
  visit(T::VT_BOTTOM, &T::bottom, &O::bottom);
  visit(T::VT_STRENGTH_PA, &T::strength_pa, &O::strength_pa);
  visit(T::VT_CHARACTER, &T::character, &O::character);
  visit(T::VT_QUALITY, &T::quality, &O::quality);
  visit(T::VT_FRACTURE_SURFACE, &T::fracture_surface, &O::fracture_surface);
  visit(T::VT_UNRELIABLE, &T::unreliable, &O::unreliable);
}

template <class Visit>
void each_field(Of<firnbook::StrengthProfile>, Visit&& visit) {
  using T = firnbook::StrengthProfile;
  using O = firnbook::StrengthProfileT;
  visit(T::VT_NUMBER, &T::number, &O::number);
  visit(T::VT_KIND, &T::kind, &O::kind);
  visit(T::VT_METHOD, &T::method, &O::method);
  visit(T::VT_UNCERTAINTY_PA, &T::uncertainty_pa, &O::uncertainty_pa);
  visit(T::VT_PROBED_AREA_MM2, &T::probed_area_mm2, &O::probed_area_mm2);
  visit(T::VT_READINGS, &T::readings, &O::readings);
}

template <class Visit>
void each_field(Of<firnbook::ImpurityReading>, Visit&& visit) {
  using T = firnbook::ImpurityReading;
  using O = firnbook::ImpurityReadingT;
  visit(T::VT_TOP, &T::top, &O::top);
  visit(T::VT_BOTTOM, &T::bottom, &O::bottom);
  visit(T::VT_MASS_FRACTION_E6, &T::mass_fraction_e6, &O::mass_fraction_e6);
  visit(T::VT_MASS_FRACTION_UNIT, &T::mass_fraction_unit, &O::mass_fraction_unit);
  visit(T::VT_VOLUME_FRACTION_E6, &T::volume_fraction_e6, &O::volume_fraction_e6);
  visit(T::VT_VOLUME_FRACTION_UNIT, &T::volume_fraction_unit, &O::volume_fraction_unit);
  visit(T::VT_UNRELIABLE, &T::unreliable, &O::unreliable);
  visit(T::VT_UNIT_WORDS, &T::unit_words, &O::unit_words);
}

template <class Visit>
void each_field(Of<firnbook::ImpurityProfile>, Visit&& visit) {
  using T = firnbook::ImpurityProfile;
  using O = firnbook::ImpurityProfileT;
  visit(T::VT_NUMBER, &T::number, &O::number);
  visit(T::VT_IMPURITY, &T::impurity, &O::impurity);
  visit(T::VT_METHOD, &T::method, &O::method);
  visit(T::VT_UNCERTAINTY_E6, &T::uncertainty_e6, &O::uncertainty_e6);
  visit(T::VT_UNCERTAINTY_UNIT, &T::uncertainty_unit, &O::uncertainty_unit);
  visit(T::VT_PROBED_THICKNESS_10UM, &T::probed_thickness_10um, &O::probed_thickness_10um);
  visit(T::VT_READINGS, &T::readings, &O::readings);
  visit(T::VT_UNCERTAINTY_UNIT_WORDS, &T::uncertainty_unit_words, &O::uncertainty_unit_words);
}

template <class Visit>
void each_field(Of<firnbook::Fracture>, Visit&& visit) {
  using T = firnbook::Fracture;
  using O = firnbook::FractureT;
  visit(T::VT_DEPTH, &T::depth, &O::depth);
  visit(T::VT_TAP, &T::tap, &O::tap);
  visit(T::VT_TAP_CROSSED, &T::tap_crossed, &O::tap_crossed);
  visit(T::VT_STAGE, &T::stage, &O::stage);
  visit(T::VT_CHARACTER, &T::character, &O::character);
  visit(T::VT_QUALITY, &T::quality, &O::quality);
  visit(T::VT_FRACTURE_SURFACE, &T::fracture_surface, &O::fracture_surface);
  visit(T::VT_CROSSING, &T::crossing, &O::crossing);
  visit(T::VT_STEP, &T::step, &O::step);
  visit(T::VT_JUMP, &T::jump, &O::jump);
  visit(T::VT_RELEASE, &T::release, &O::release);
  visit(T::VT_CUT_10UM, &T::cut_10um, &O::cut_10um);
  visit(T::VT_SAW_END, &T::saw_end, &O::saw_end);
  visit(T::VT_EASE, &T::ease, &O::ease);
  visit(T::VT_FORCE_MN, &T::force_mn, &O::force_mn);
  visit(T::VT_ON, &T::on, &O::on);
  visit(T::VT_PART, &T::part, &O::part);
  visit(T::VT_WORDS, &T::words, &O::words);
  visit(T::VT_UNRELIABLE, &T::unreliable, &O::unreliable);
}

template <class Visit>
void each_field(Of<firnbook::StabilityTest>, Visit&& visit) {
  using T = firnbook::StabilityTest;
  using O = firnbook::StabilityTestT;
  visit(T::VT_KIND, &T::kind, &O::kind);
  visit(T::VT_OUTCOME, &T::outcome, &O::outcome);
  visit(T::VT_FRACTURES, &T::fractures, &O::fractures);
  visit(T::VT_NOT_VALID_REASON, &T::not_valid_reason, &O::not_valid_reason);
  visit(T::VT_COLUMN_WIDTH_10UM, &T::column_width_10um, &O::column_width_10um);
  visit(T::VT_COLUMN_LENGTH_10UM, &T::column_length_10um, &O::column_length_10um);
  visit(T::VT_COLUMN_DEPTH_10UM, &T::column_depth_10um, &O::column_depth_10um);
  visit(T::VT_SLAB_LEFT_10UM, &T::slab_left_10um, &O::slab_left_10um);
  visit(T::VT_COLUMN_ENDS, &T::column_ends, &O::column_ends);
  visit(T::VT_SLOPE_DEG, &T::slope_deg, &O::slope_deg);
  visit(T::VT_CROSSING_RULE, &T::crossing_rule, &O::crossing_rule);
  visit(T::VT_TAPS_GIVEN, &T::taps_given, &O::taps_given);
  visit(T::VT_UNBROKEN, &T::unbroken, &O::unbroken);
  visit(T::VT_WORDS, &T::words, &O::words);
  visit(T::VT_UNRELIABLE, &T::unreliable, &O::unreliable);
}

template <class Visit>
void each_field(Of<firnbook::Sign>, Visit&& visit) {
  using T = firnbook::Sign;
  using O = firnbook::SignT;
  visit(T::VT_KIND, &T::kind, &O::kind);
  visit(T::VT_ANSWER, &T::answer, &O::answer);
  visit(T::VT_LENGTH_10UM, &T::length_10um, &O::length_10um);
  visit(T::VT_SEEN, &T::seen, &O::seen);
  visit(T::VT_WORDS, &T::words, &O::words);
  visit(T::VT_UNRELIABLE, &T::unreliable, &O::unreliable);
}

template <class Visit>
void each_field(Of<firnbook::Slide>, Visit&& visit) {
  using T = firnbook::Slide;
  using O = firnbook::SlideT;
  visit(T::VT_KIND, &T::kind, &O::kind);
  visit(T::VT_TRIGGER, &T::trigger, &O::trigger);
  visit(T::VT_SIZE_TENTHS, &T::size_tenths, &O::size_tenths);
  visit(T::VT_ASPECT_POINT, &T::aspect_point, &O::aspect_point);
  visit(T::VT_ASPECT_DEG, &T::aspect_deg, &O::aspect_deg);
  visit(T::VT_ELEVATION_10UM, &T::elevation_10um, &O::elevation_10um);
  visit(T::VT_AGE_MIN, &T::age_min, &O::age_min);
  visit(T::VT_COUNT, &T::count, &O::count);
  visit(T::VT_WORDS, &T::words, &O::words);
  visit(T::VT_UNRELIABLE, &T::unreliable, &O::unreliable);
}

template <class Visit>
void each_field(Of<firnbook::Assessment>, Visit&& visit) {
  using T = firnbook::Assessment;
  using O = firnbook::AssessmentT;
  visit(T::VT_WORDS, &T::words, &O::words);
  visit(T::VT_PLAN, &T::plan, &O::plan);
  visit(T::VT_CONFIDENCE, &T::confidence, &O::confidence);
}

template <class Visit>
void each_field(Of<firnbook::BulletinSeen>, Visit&& visit) {
  using T = firnbook::BulletinSeen;
  using O = firnbook::BulletinSeenT;
  visit(T::VT_STATE, &T::state, &O::state);
  visit(T::VT_ID, &T::id, &O::id);
  visit(T::VT_REGION, &T::region, &O::region);
  visit(T::VT_WORDS, &T::words, &O::words);
}

template <class Visit>
void each_field(Of<firnbook::Photo>, Visit&& visit) {
  using T = firnbook::Photo;
  using O = firnbook::PhotoT;
  visit(T::VT_REFERENCE, &T::reference, &O::reference);
  visit(T::VT_TAKEN, &T::taken, &O::taken);
  visit(T::VT_ABOUT, &T::about, &O::about);
  visit(T::VT_WORDS, &T::words, &O::words);
  visit(T::VT_SHA256, &T::sha256, &O::sha256);
}

template <class Visit>
void each_field(Of<firnbook::Step>, Visit&& visit) {
  using T = firnbook::Step;
  using O = firnbook::StepT;
  visit(T::VT_KIND, &T::kind, &O::kind);
  visit(T::VT_DONE, &T::done, &O::done);
  visit(T::VT_MADE, &T::made, &O::made);
  visit(T::VT_WORDS, &T::words, &O::words);
}

template <class Visit>
void each_field(Of<firnbook::Pit>, Visit&& visit) {
  using T = firnbook::Pit;
  using O = firnbook::PitT;
  visit(T::VT_SCHEMA_MINOR, &T::schema_minor, &O::schema_minor);
  visit(T::VT_ID, &T::id, &O::id);
  visit(T::VT_TITLE, &T::title, &O::title);
  visit(T::VT_PURPOSE, &T::purpose, &O::purpose);
  visit(T::VT_TIME, &T::time, &O::time);
  visit(T::VT_REPORTED, &T::reported, &O::reported);
  visit(T::VT_EDITED, &T::edited, &O::edited);
  visit(T::VT_OBSERVERS, &T::observers, &O::observers);
  visit(T::VT_OPERATION, &T::operation, &O::operation);
  visit(T::VT_SITE, &T::site, &O::site);
  visit(T::VT_CHOICE, &T::choice, &O::choice);
  visit(T::VT_WEATHER, &T::weather, &O::weather);
  visit(T::VT_SURFACE, &T::surface, &O::surface);
  visit(T::VT_SNOWPACK, &T::snowpack, &O::snowpack);
  visit(T::VT_PROFILE_DEPTH_10UM, &T::profile_depth_10um, &O::profile_depth_10um);
  visit(T::VT_REACHED_GROUND, &T::reached_ground, &O::reached_ground);
  visit(T::VT_LAYERS, &T::layers, &O::layers);
  visit(T::VT_TEMPERATURES, &T::temperatures, &O::temperatures);
  visit(T::VT_DENSITIES, &T::densities, &O::densities);
  visit(T::VT_LIQUID_WATER, &T::liquid_water, &O::liquid_water);
  visit(T::VT_SURFACE_AREA, &T::surface_area, &O::surface_area);
  visit(T::VT_HARDNESS, &T::hardness, &O::hardness);
  visit(T::VT_STRENGTH, &T::strength, &O::strength);
  visit(T::VT_IMPURITIES, &T::impurities, &O::impurities);
  visit(T::VT_TESTS, &T::tests, &O::tests);
  visit(T::VT_SIGNS, &T::signs, &O::signs);
  visit(T::VT_SLIDES, &T::slides, &O::slides);
  visit(T::VT_ASSESSMENT, &T::assessment, &O::assessment);
  visit(T::VT_BULLETIN, &T::bulletin, &O::bulletin);
  visit(T::VT_BACKFILLED, &T::backfilled, &O::backfilled);
  visit(T::VT_PHOTOS, &T::photos, &O::photos);
  visit(T::VT_REMARKS, &T::remarks, &O::remarks);
  visit(T::VT_ABSENCES, &T::absences, &O::absences);
  visit(T::VT_UNREAD, &T::unread, &O::unread);
  visit(T::VT_EXTENSIONS, &T::extensions, &O::extensions);
  visit(T::VT_SHARING, &T::sharing, &O::sharing);
  visit(T::VT_PRACTICE, &T::practice, &O::practice);
  visit(T::VT_APPLICATION, &T::application, &O::application);
  visit(T::VT_APPLICATION_VERSION, &T::application_version, &O::application_version);
  visit(T::VT_STEPS, &T::steps, &O::steps);
  visit(T::VT_UNREAD_EDITS, &T::unread_edits, &O::unread_edits);
}

}  // namespace firn::tests
