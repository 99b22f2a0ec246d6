// Field by field, in the order of the structs. Numbers go through as they are: checking says what is out of
// range, so that nothing is refused in the cold.
#include "capi/records.h"

namespace firn::capi {
namespace {

// A list of structs that may grow: struct_size of the first is the distance between them.
template <class From, class To>
void take_things(Fields& fields, int field, std::vector<std::unique_ptr<To>>& slot, const From* elements,
                 std::size_t count, Room& room) {
  if (!fields.list(field, elements, count, sizeof(flatbuffers::uoffset_t))) return;
  const std::size_t stride = elements->struct_size;
  Done fits = check_struct_size(elements->struct_size, first_version(elements), struct_name(elements));
  if (fits && stride % alignof(From) != 0) {
    fits = failure_of(FIRN_BAD_STRUCT_SIZE, "struct_size of a list's element is no size of a struct",
                      "set it to sizeof of the element");
  }
  fields.take(std::move(fits));
  if (fields.failed()) return;
  slot.reserve(count);
  const char* bytes = reinterpret_cast<const char*>(elements);
  for (std::size_t i = 0; i < count && !fields.failed(); ++i) {
    std::uint32_t size = 0;
    std::memcpy(&size, bytes + i * stride, sizeof size);
    if (size != stride) {
      fields.refuse(FIRN_BAD_STRUCT_SIZE, "the elements of a list have different struct_size",
                    "set struct_size of every element to sizeof of the element");
      return;
    }
    // Through void: the stride was found to keep the alignment, which a cast of characters cannot know.
    const void* at = bytes + i * stride;
    Result<From> element = read_record(static_cast<const From*>(at));
    auto made = std::make_unique<To>();
    fields.take(element ? translate(*element, *made, room) : Done(element.failure()));
    slot.push_back(std::move(made));
  }
}

void take_name(Fields& fields, const firn_layer& from, firnbook::LayerT& to, Room& room) {
  const bool has_date = from.name_date.precision != FIRN_TIME_PRECISION_NONE;
  const bool marked = fields.has(FIRN_FIELD_LAYER_NAME);
  if (!marked && !has_date && from.name_kind == 0 && from.name_words == nullptr) return;
  to.name = std::make_unique<firnbook::LayerNameT>();
  room.something_was_said();
  if (has_date) to.name->date = std::make_unique<firnbook::Moment>(moment_of(from.name_date));
  if (from.name_kind != 0) to.name->kind = static_cast<firnbook::LayerNameKind>(from.name_kind);
  fields.text(to.name->words, from.name_words);
}

void take_layer_of(Fields& fields, const firn_fracture& from, firnbook::FractureT& to, Room& room) {
  const bool marked = fields.has(FIRN_FIELD_FRACTURE_ON);
  if (from.on == nullptr) {
    if (marked) {
      fields.refuse(FIRN_NULL_ARGUMENT, "the layer a fracture is on is present and NULL",
                    "give the layer, or leave its bit out");
    }
    return;
  }
  Result<firn_layer> layer = read_record(from.on);
  to.on = std::make_unique<firnbook::LayerT>();
  fields.take(layer ? translate(*layer, *to.on, room) : Done(layer.failure()));
}

void take_depths(Fields& fields, const firn_test& from, firnbook::StabilityTestT& to) {
  if (!fields.list(FIRN_FIELD_STABILITY_TEST_UNBROKEN, from.unbroken, from.unbroken_count,
                   sizeof(firnbook::Depth))) {
    return;
  }
  to.unbroken.reserve(from.unbroken_count);
  for (std::size_t i = 0; i < from.unbroken_count; ++i) to.unbroken.push_back(depth_of(from.unbroken[i]));
}

}  // namespace

Done translate(const firn_pit_head& from, firnbook::PitT& to, Room& room) {
  Fields fields("firn_pit_head", from.present, 0, room);
  fields.number(FIRN_FIELD_PIT_PROFILE_DEPTH_10UM, to.profile_depth_10um, from.profile_depth_10um);
  fields.span(FIRN_FIELD_PIT_TIME, to.time, from.time);
  fields.moment(FIRN_FIELD_PIT_REPORTED, to.reported, from.reported);
  fields.moment(FIRN_FIELD_PIT_EDITED, to.edited, from.edited);
  fields.number(FIRN_FIELD_PIT_PURPOSE, to.purpose, from.purpose);
  fields.number(FIRN_FIELD_PIT_SHARING, to.sharing, from.sharing);
  fields.yes_or_no(FIRN_FIELD_PIT_REACHED_GROUND, to.reached_ground, from.reached_ground);
  fields.yes_or_no(FIRN_FIELD_PIT_BACKFILLED, to.backfilled, from.backfilled);
  fields.yes_or_no(FIRN_FIELD_PIT_PRACTICE, to.practice, from.practice);
  fields.text(FIRN_FIELD_PIT_ID, to.id, from.id);
  fields.text(FIRN_FIELD_PIT_TITLE, to.title, from.title);
  fields.text(FIRN_FIELD_PIT_APPLICATION, to.application, from.application);
  fields.text(FIRN_FIELD_PIT_APPLICATION_VERSION, to.application_version, from.application_version);
  return fields.finish();
}

Done translate(const firn_observer& from, firnbook::ObserverT& to, Room& room) {
  Fields fields("firn_observer", from.present, 0, room);
  fields.number(FIRN_FIELD_OBSERVER_TRAINING, to.training, from.training);
  fields.text(FIRN_FIELD_OBSERVER_NAME, to.name, from.name);
  fields.text(FIRN_FIELD_OBSERVER_ID, to.id, from.id);
  fields.text(FIRN_FIELD_OBSERVER_WORDS, to.words, from.words);
  return fields.finish();
}

Done translate(const firn_site& from, firnbook::SiteT& to, Room& room) {
  Fields fields("firn_site", from.present, from.unreliable, room);
  fields.number(FIRN_FIELD_SITE_ELEVATION_10UM, to.elevation_10um, from.elevation_10um);
  fields.number(FIRN_FIELD_SITE_LATITUDE_E7DEG, to.latitude_e7deg, from.latitude_e7deg);
  fields.number(FIRN_FIELD_SITE_LONGITUDE_E7DEG, to.longitude_e7deg, from.longitude_e7deg);
  fields.number(FIRN_FIELD_SITE_POSITION_ACCURACY_10UM, to.position_accuracy_10um,
                from.position_accuracy_10um);
  fields.number(FIRN_FIELD_SITE_BLURRED_BY_10UM, to.blurred_by_10um, from.blurred_by_10um);
  fields.number(FIRN_FIELD_SITE_ASPECT_DEG, to.aspect_deg, from.aspect_deg);
  fields.number(FIRN_FIELD_SITE_ASPECT_POINT, to.aspect_point, from.aspect_point);
  fields.number(FIRN_FIELD_SITE_SLOPE_DEG, to.slope_deg, from.slope_deg);
  fields.number(FIRN_FIELD_SITE_ELEVATION_SOURCE, to.elevation_source, from.elevation_source);
  fields.number(FIRN_FIELD_SITE_POSITION_SOURCE, to.position_source, from.position_source);
  fields.text(FIRN_FIELD_SITE_NAME, to.name, from.name);
  fields.text(FIRN_FIELD_SITE_POINT_KIND, to.point_kind, from.point_kind);
  fields.text(FIRN_FIELD_SITE_COUNTRY, to.country, from.country);
  fields.text(FIRN_FIELD_SITE_REGION, to.region, from.region);
  fields.text(FIRN_FIELD_SITE_ID, to.id, from.id);
  fields.text(FIRN_FIELD_SITE_POINT_ID, to.point_id, from.point_id);
  fields.text(FIRN_FIELD_SITE_TERRAIN, to.terrain, from.terrain);
  fields.numbers(FIRN_FIELD_SITE_PROBES_10UM, to.probes_10um, from.probes_10um, from.probe_count);
  to.unreliable = from.unreliable;
  return fields.finish();
}

Done translate(const firn_choice& from, firnbook::ChoiceT& to, Room& room) {
  Fields fields("firn_choice", from.present, from.unreliable, room);
  fields.number(FIRN_FIELD_CHOICE_INTEREST_ELEVATION_10UM, to.interest_elevation_10um,
                from.interest_elevation_10um);
  fields.number(FIRN_FIELD_CHOICE_INTEREST_ASPECT_DEG, to.interest_aspect_deg, from.interest_aspect_deg);
  fields.number(FIRN_FIELD_CHOICE_INTEREST_ASPECT_POINT, to.interest_aspect_point,
                from.interest_aspect_point);
  fields.number(FIRN_FIELD_CHOICE_INTEREST_SLOPE_DEG, to.interest_slope_deg, from.interest_slope_deg);
  fields.number(FIRN_FIELD_CHOICE_ASPECT, to.aspect, from.aspect);
  fields.number(FIRN_FIELD_CHOICE_ELEVATION, to.elevation, from.elevation);
  fields.number(FIRN_FIELD_CHOICE_WIND_LOADING, to.wind_loading, from.wind_loading);
  fields.number(FIRN_FIELD_CHOICE_INCLINE, to.incline, from.incline);
  fields.text(FIRN_FIELD_CHOICE_WORDS, to.words, from.words);
  fields.text(FIRN_FIELD_CHOICE_TERRAIN_OF_INTEREST, to.terrain_of_interest, from.terrain_of_interest);
  to.unreliable = from.unreliable;
  return fields.finish();
}

Done translate(const firn_weather& from, firnbook::WeatherT& to, Room& room) {
  Fields fields("firn_weather", from.present, from.unreliable, room);
  fields.number(FIRN_FIELD_WEATHER_AIR_TEMPERATURE_CDEGC, to.air_temperature_cdegc,
                from.air_temperature_cdegc);
  fields.number(FIRN_FIELD_WEATHER_VALLEY_FOG_BASE_10UM, to.valley_fog_base_10um, from.valley_fog_base_10um);
  fields.number(FIRN_FIELD_WEATHER_VALLEY_FOG_TOP_10UM, to.valley_fog_top_10um, from.valley_fog_top_10um);
  fields.number(FIRN_FIELD_WEATHER_WIND_SPEED_CMS, to.wind_speed_cms, from.wind_speed_cms);
  fields.number(FIRN_FIELD_WEATHER_WIND_FROM_DEG, to.wind_from_deg, from.wind_from_deg);
  fields.number(FIRN_FIELD_WEATHER_WIND_FROM_POINT, to.wind_from_point, from.wind_from_point);
  fields.number(FIRN_FIELD_WEATHER_WIND, to.wind, from.wind);
  fields.number(FIRN_FIELD_WEATHER_SKY, to.sky, from.sky);
  fields.yes_or_no(FIRN_FIELD_WEATHER_SKY_THIN, to.sky_thin, from.sky_thin);
  fields.number(FIRN_FIELD_WEATHER_SKY_FAMILY, to.sky_family, from.sky_family);
  fields.number(FIRN_FIELD_WEATHER_PRECIPITATION, to.precipitation, from.precipitation);
  fields.number(FIRN_FIELD_WEATHER_PRECIPITATION_FAMILY, to.precipitation_family, from.precipitation_family);
  fields.number(FIRN_FIELD_WEATHER_PRECIPITATION_RATE, to.precipitation_rate, from.precipitation_rate);
  fields.number(FIRN_FIELD_WEATHER_BLOWING_SNOW, to.blowing_snow, from.blowing_snow);
  fields.number(FIRN_FIELD_WEATHER_BLOWING_SNOW_FROM_POINT, to.blowing_snow_from_point,
                from.blowing_snow_from_point);
  fields.text(FIRN_FIELD_WEATHER_WORDS, to.words, from.words);
  to.unreliable = from.unreliable;
  return fields.finish();
}

Done translate(const firn_surface& from, firnbook::SurfaceT& to, Room& room) {
  Fields fields("firn_surface", from.present, from.unreliable, room);
  fields.number(FIRN_FIELD_SURFACE_TEMPERATURE_CDEGC, to.temperature_cdegc, from.temperature_cdegc);
  fields.number(FIRN_FIELD_SURFACE_AMPLITUDE_10UM, to.amplitude_10um, from.amplitude_10um);
  fields.number(FIRN_FIELD_SURFACE_AMPLITUDE_MAX_10UM, to.amplitude_max_10um, from.amplitude_max_10um);
  fields.number(FIRN_FIELD_SURFACE_WAVELENGTH_10UM, to.wavelength_10um, from.wavelength_10um);
  fields.number(FIRN_FIELD_SURFACE_WAVELENGTH_MAX_10UM, to.wavelength_max_10um, from.wavelength_max_10um);
  fields.number(FIRN_FIELD_SURFACE_PENETRATION_RAM_10UM, to.penetration_ram_10um, from.penetration_ram_10um);
  fields.number(FIRN_FIELD_SURFACE_PENETRATION_FOOT_10UM, to.penetration_foot_10um,
                from.penetration_foot_10um);
  fields.number(FIRN_FIELD_SURFACE_PENETRATION_SKI_10UM, to.penetration_ski_10um, from.penetration_ski_10um);
  fields.number(FIRN_FIELD_SURFACE_FEATURE_ASPECT_DEG, to.feature_aspect_deg, from.feature_aspect_deg);
  fields.number(FIRN_FIELD_SURFACE_FEATURE_ASPECT_POINT, to.feature_aspect_point, from.feature_aspect_point);
  fields.number(FIRN_FIELD_SURFACE_ROUGHNESS, to.roughness, from.roughness);
  fields.text(FIRN_FIELD_SURFACE_WORDS, to.words, from.words);
  to.unreliable = from.unreliable;
  return fields.finish();
}

Done translate(const firn_snowpack& from, firnbook::SnowpackT& to, Room& room) {
  Fields fields("firn_snowpack", from.present, from.unreliable, room);
  fields.number(FIRN_FIELD_SNOWPACK_HS_10UM, to.hs_10um, from.hs_10um);
  fields.moment(FIRN_FIELD_SNOWPACK_HIN_CLEARED, to.hin_cleared, from.hin_cleared);
  fields.number(FIRN_FIELD_SNOWPACK_HS_WATER_10UM, to.hs_water_10um, from.hs_water_10um);
  fields.number(FIRN_FIELD_SNOWPACK_HN24_10UM, to.hn24_10um, from.hn24_10um);
  fields.number(FIRN_FIELD_SNOWPACK_HN24_WATER_10UM, to.hn24_water_10um, from.hn24_water_10um);
  fields.number(FIRN_FIELD_SNOWPACK_HIN_10UM, to.hin_10um, from.hin_10um);
  fields.number(FIRN_FIELD_SNOWPACK_HIN_WATER_10UM, to.hin_water_10um, from.hin_water_10um);
  fields.number(FIRN_FIELD_SNOWPACK_HST_10UM, to.hst_10um, from.hst_10um);
  fields.number(FIRN_FIELD_SNOWPACK_HST_WATER_10UM, to.hst_water_10um, from.hst_water_10um);
  fields.number(FIRN_FIELD_SNOWPACK_DIRECTION, to.direction, from.direction);
  to.unreliable = from.unreliable;
  return fields.finish();
}

Done translate(const firn_layer& from, firnbook::LayerT& to, Room& room) {
  Fields fields("firn_layer", from.present, from.unreliable, room);
  fields.span(FIRN_FIELD_LAYER_FORMED, to.formed, from.formed);
  fields.depth(FIRN_FIELD_LAYER_TOP, to.top, from.top);
  fields.depth(FIRN_FIELD_LAYER_BOTTOM, to.bottom, from.bottom);
  fields.number(FIRN_FIELD_LAYER_GRAIN_SIZE_10UM, to.grain_size_10um, from.grain_size_10um);
  fields.number(FIRN_FIELD_LAYER_GRAIN_SIZE_MAX_10UM, to.grain_size_max_10um, from.grain_size_max_10um);
  fields.number(FIRN_FIELD_LAYER_HARDNESS, to.hardness, from.hardness);
  fields.number(FIRN_FIELD_LAYER_HARDNESS_TOP, to.hardness_top, from.hardness_top);
  fields.number(FIRN_FIELD_LAYER_HARDNESS_BOTTOM, to.hardness_bottom, from.hardness_bottom);
  fields.number(FIRN_FIELD_LAYER_GRAIN_FORM, to.grain_form, from.grain_form);
  fields.number(FIRN_FIELD_LAYER_GRAIN_FORM_SECOND, to.grain_form_second, from.grain_form_second);
  fields.number(FIRN_FIELD_LAYER_GRAIN_SIZE_CLASS, to.grain_size_class, from.grain_size_class);
  fields.number(FIRN_FIELD_LAYER_GRAIN_SIZE_MAX_CLASS, to.grain_size_max_class, from.grain_size_max_class);
  fields.number(FIRN_FIELD_LAYER_WETNESS, to.wetness, from.wetness);
  fields.number(FIRN_FIELD_LAYER_CONCERN, to.concern, from.concern);
  fields.text(FIRN_FIELD_LAYER_WORDS, to.words, from.words);
  take_name(fields, from, to, room);
  fields.numbers(FIRN_FIELD_LAYER_CANDIDATES, to.candidates, from.candidates, from.candidate_count);
  to.unreliable = from.unreliable;
  return fields.finish();
}

Done translate(const firn_temperature& from, firnbook::TemperatureReadingT& to, Room& room) {
  Fields fields("firn_temperature", from.present, from.unreliable, room);
  fields.number(FIRN_FIELD_TEMPERATURE_READING_TEMPERATURE_CDEGC, to.temperature_cdegc,
                from.temperature_cdegc);
  fields.depth(FIRN_FIELD_TEMPERATURE_READING_DEPTH, to.depth, from.depth);
  fields.number(FIRN_FIELD_TEMPERATURE_READING_UNCERTAINTY_CDEGC, to.uncertainty_cdegc,
                from.uncertainty_cdegc);
  to.unreliable = from.unreliable;
  return fields.finish();
}

Done translate(const firn_density& from, firnbook::DensityReadingT& to, Room& room) {
  Fields fields("firn_density", from.present, from.unreliable, room);
  fields.number(FIRN_FIELD_DENSITY_READING_DENSITY_DKGM3, to.density_dkgm3, from.density_dkgm3);
  fields.depth(FIRN_FIELD_DENSITY_READING_TOP, to.top, from.top);
  fields.depth(FIRN_FIELD_DENSITY_READING_BOTTOM, to.bottom, from.bottom);
  to.unreliable = from.unreliable;
  return fields.finish();
}

Done translate(const firn_density_profile& from, firnbook::DensityProfileT& to, Room& room) {
  Fields fields("firn_density_profile", from.present, 0, room);
  fields.number(FIRN_FIELD_DENSITY_PROFILE_UNCERTAINTY_DKGM3, to.uncertainty_dkgm3, from.uncertainty_dkgm3);
  fields.number(FIRN_FIELD_DENSITY_PROFILE_PROBE_VOLUME_MM3, to.probe_volume_mm3, from.probe_volume_mm3);
  fields.number(FIRN_FIELD_DENSITY_PROFILE_PROBE_DIAMETER_10UM, to.probe_diameter_10um,
                from.probe_diameter_10um);
  fields.number(FIRN_FIELD_DENSITY_PROFILE_PROBE_LENGTH_10UM, to.probe_length_10um, from.probe_length_10um);
  fields.number(FIRN_FIELD_DENSITY_PROFILE_PROBED_THICKNESS_10UM, to.probed_thickness_10um,
                from.probed_thickness_10um);
  fields.number(FIRN_FIELD_DENSITY_PROFILE_NUMBER, to.number, from.number);
  fields.number(FIRN_FIELD_DENSITY_PROFILE_METHOD, to.method, from.method);
  take_things(fields, FIRN_FIELD_DENSITY_PROFILE_READINGS, to.readings, from.readings, from.reading_count,
              room);
  return fields.finish();
}

Done translate(const firn_fracture& from, firnbook::FractureT& to, Room& room) {
  Fields fields("firn_fracture", from.present, from.unreliable, room);
  fields.number(FIRN_FIELD_FRACTURE_CUT_10UM, to.cut_10um, from.cut_10um);
  fields.number(FIRN_FIELD_FRACTURE_FORCE_MN, to.force_mn, from.force_mn);
  fields.depth(FIRN_FIELD_FRACTURE_DEPTH, to.depth, from.depth);
  fields.number(FIRN_FIELD_FRACTURE_TAP, to.tap, from.tap);
  fields.number(FIRN_FIELD_FRACTURE_TAP_CROSSED, to.tap_crossed, from.tap_crossed);
  fields.number(FIRN_FIELD_FRACTURE_STAGE, to.stage, from.stage);
  fields.number(FIRN_FIELD_FRACTURE_CHARACTER, to.character, from.character);
  fields.number(FIRN_FIELD_FRACTURE_QUALITY, to.quality, from.quality);
  fields.number(FIRN_FIELD_FRACTURE_FRACTURE_SURFACE, to.fracture_surface, from.fracture_surface);
  fields.number(FIRN_FIELD_FRACTURE_CROSSING, to.crossing, from.crossing);
  fields.number(FIRN_FIELD_FRACTURE_STEP, to.step, from.step);
  fields.number(FIRN_FIELD_FRACTURE_JUMP, to.jump, from.jump);
  fields.number(FIRN_FIELD_FRACTURE_RELEASE, to.release, from.release);
  fields.number(FIRN_FIELD_FRACTURE_SAW_END, to.saw_end, from.saw_end);
  fields.number(FIRN_FIELD_FRACTURE_EASE, to.ease, from.ease);
  fields.number(FIRN_FIELD_FRACTURE_PART, to.part, from.part);
  fields.text(FIRN_FIELD_FRACTURE_WORDS, to.words, from.words);
  take_layer_of(fields, from, to, room);
  to.unreliable = from.unreliable;
  return fields.finish();
}

Done translate(const firn_test& from, firnbook::StabilityTestT& to, Room& room) {
  Fields fields("firn_test", from.present, from.unreliable, room);
  fields.number(FIRN_FIELD_STABILITY_TEST_COLUMN_WIDTH_10UM, to.column_width_10um, from.column_width_10um);
  fields.number(FIRN_FIELD_STABILITY_TEST_COLUMN_LENGTH_10UM, to.column_length_10um, from.column_length_10um);
  fields.number(FIRN_FIELD_STABILITY_TEST_COLUMN_DEPTH_10UM, to.column_depth_10um, from.column_depth_10um);
  fields.number(FIRN_FIELD_STABILITY_TEST_SLAB_LEFT_10UM, to.slab_left_10um, from.slab_left_10um);
  fields.number(FIRN_FIELD_STABILITY_TEST_KIND, to.kind, from.kind);
  fields.number(FIRN_FIELD_STABILITY_TEST_OUTCOME, to.outcome, from.outcome);
  fields.number(FIRN_FIELD_STABILITY_TEST_NOT_VALID_REASON, to.not_valid_reason, from.not_valid_reason);
  fields.number(FIRN_FIELD_STABILITY_TEST_COLUMN_ENDS, to.column_ends, from.column_ends);
  fields.number(FIRN_FIELD_STABILITY_TEST_SLOPE_DEG, to.slope_deg, from.slope_deg);
  fields.number(FIRN_FIELD_STABILITY_TEST_CROSSING_RULE, to.crossing_rule, from.crossing_rule);
  fields.number(FIRN_FIELD_STABILITY_TEST_TAPS_GIVEN, to.taps_given, from.taps_given);
  take_things(fields, FIRN_FIELD_STABILITY_TEST_FRACTURES, to.fractures, from.fractures, from.fracture_count,
              room);
  take_depths(fields, from, to);
  fields.text(FIRN_FIELD_STABILITY_TEST_WORDS, to.words, from.words);
  to.unreliable = from.unreliable;
  return fields.finish();
}

Done translate(const firn_sign& from, firnbook::SignT& to, Room& room) {
  Fields fields("firn_sign", from.present, from.unreliable, room);
  fields.number(FIRN_FIELD_SIGN_LENGTH_10UM, to.length_10um, from.length_10um);
  fields.moment(FIRN_FIELD_SIGN_SEEN, to.seen, from.seen);
  fields.number(FIRN_FIELD_SIGN_KIND, to.kind, from.kind);
  fields.number(FIRN_FIELD_SIGN_ANSWER, to.answer, from.answer);
  fields.text(FIRN_FIELD_SIGN_WORDS, to.words, from.words);
  to.unreliable = from.unreliable;
  return fields.finish();
}

Done translate(const firn_slide& from, firnbook::SlideT& to, Room& room) {
  Fields fields("firn_slide", from.present, from.unreliable, room);
  fields.number(FIRN_FIELD_SLIDE_ELEVATION_10UM, to.elevation_10um, from.elevation_10um);
  fields.number(FIRN_FIELD_SLIDE_AGE_MIN, to.age_min, from.age_min);
  fields.number(FIRN_FIELD_SLIDE_COUNT, to.count, from.count);
  fields.number(FIRN_FIELD_SLIDE_ASPECT_DEG, to.aspect_deg, from.aspect_deg);
  fields.number(FIRN_FIELD_SLIDE_ASPECT_POINT, to.aspect_point, from.aspect_point);
  fields.number(FIRN_FIELD_SLIDE_KIND, to.kind, from.kind);
  fields.number(FIRN_FIELD_SLIDE_TRIGGER, to.trigger, from.trigger);
  fields.number(FIRN_FIELD_SLIDE_SIZE_TENTHS, to.size_tenths, from.size_tenths);
  fields.text(FIRN_FIELD_SLIDE_WORDS, to.words, from.words);
  to.unreliable = from.unreliable;
  return fields.finish();
}

Done translate(const firn_step& from, firnbook::StepT& to, Room& room) {
  Fields fields("firn_step", from.present, 0, room);
  fields.moment(FIRN_FIELD_STEP_MADE, to.made, from.made);
  fields.number(FIRN_FIELD_STEP_KIND, to.kind, from.kind);
  fields.yes_or_no(FIRN_FIELD_STEP_DONE, to.done, from.done);
  fields.text(FIRN_FIELD_STEP_WORDS, to.words, from.words);
  return fields.finish();
}

Done translate(const firn_assessment& from, firnbook::AssessmentT& to, Room& room) {
  Fields fields("firn_assessment", from.present, 0, room);
  fields.number(FIRN_FIELD_ASSESSMENT_CONFIDENCE, to.confidence, from.confidence);
  fields.text(FIRN_FIELD_ASSESSMENT_WORDS, to.words, from.words);
  fields.text(FIRN_FIELD_ASSESSMENT_PLAN, to.plan, from.plan);
  return fields.finish();
}

Done translate(const firn_bulletin_seen& from, firnbook::BulletinSeenT& to, Room& room) {
  Fields fields("firn_bulletin_seen", from.present, 0, room);
  fields.number(FIRN_FIELD_BULLETIN_SEEN_STATE, to.state, from.state);
  fields.text(FIRN_FIELD_BULLETIN_SEEN_ID, to.id, from.id);
  fields.text(FIRN_FIELD_BULLETIN_SEEN_REGION, to.region, from.region);
  fields.text(FIRN_FIELD_BULLETIN_SEEN_WORDS, to.words, from.words);
  return fields.finish();
}

Done translate(const firn_remark& from, firnbook::RemarkT& to, Room& room) {
  Fields fields("firn_remark", from.present, 0, room);
  fields.yes_or_no(FIRN_FIELD_REMARK_CONFIDENTIAL, to.confidential, from.confidential);
  fields.text(FIRN_FIELD_REMARK_TEXT, to.text, from.text);
  // What it is about goes into the edit as a name, not as a position.
  fields.has(FIRN_FIELD_REMARK_ABOUT);
  return fields.finish();
}

}  // namespace firn::capi
