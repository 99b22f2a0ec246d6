// Numbers of enumerations that this library does not know: kept, shown as not known, and said.
#include "checking/rules.h"

namespace firn::checking {
namespace {

using flatbuffers::Optional;

// The generated name tables know which numbers the schema names: "" for all others. A second list here
// would only go stale.
template <class E>
using NameOf = const char* (*)(E);

struct Codes {
  Reporter& out;
  Thing thing;
  std::int32_t index = -1;
  std::int32_t sub = -1;

  void unknown(int vtable_offset, std::int64_t number) const {
    out.add(CheckCode::unknown_code, place_of(thing, index, field_id(vtable_offset), sub), number);
  }
  template <class E>
  void operator()(const Optional<E>& value, NameOf<E> name, int vtable_offset) const {
    if (value && name(*value)[0] == '\0') unknown(vtable_offset, static_cast<std::uint8_t>(*value));
  }
};

std::int32_t signed_index(std::uint32_t index) {
  return static_cast<std::int32_t>(index);
}

void check_header(const firnbook::Pit& raw, Reporter& out) {
  const Codes pit{out, Thing::pit};
  pit(raw.purpose(), firnbook::EnumNamePurpose, firnbook::Pit::VT_PURPOSE);
  pit(raw.sharing(), firnbook::EnumNameSharing, firnbook::Pit::VT_SHARING);
  for (std::uint32_t i = 0; i < pit::size_of(raw.observers()); ++i) {
    const Codes observer{out, Thing::observer, signed_index(i)};
    observer(raw.observers()->Get(i)->training(), firnbook::EnumNameTraining,
             firnbook::Observer::VT_TRAINING);
  }
  for (std::uint32_t i = 0; i < pit::size_of(raw.absences()); ++i) {
    pit(raw.absences()->Get(i)->reason(), firnbook::EnumNameAbsentReason, firnbook::Pit::VT_ABSENCES);
  }
  if (const firnbook::Assessment* assessment = raw.assessment()) {
    Codes{out, Thing::assessment}(assessment->confidence(), firnbook::EnumNameConfidence,
                                  firnbook::Assessment::VT_CONFIDENCE);
  }
  if (const firnbook::BulletinSeen* bulletin = raw.bulletin()) {
    Codes{out, Thing::bulletin}(bulletin->state(), firnbook::EnumNameBulletinState,
                                firnbook::BulletinSeen::VT_STATE);
  }
}

void check_site_codes(const firnbook::Site& site, Reporter& out) {
  const Codes code{out, Thing::site};
  using T = firnbook::Site;
  code(site.elevation_source(), firnbook::EnumNamePositionSource, T::VT_ELEVATION_SOURCE);
  code(site.aspect_point(), firnbook::EnumNameCompassPoint, T::VT_ASPECT_POINT);
  code(site.position_source(), firnbook::EnumNamePositionSource, T::VT_POSITION_SOURCE);
}

void check_choice_codes(const firnbook::Choice& choice, Reporter& out) {
  const Codes code{out, Thing::choice};
  using T = firnbook::Choice;
  code(choice.aspect(), firnbook::EnumNameComparison, T::VT_ASPECT);
  code(choice.elevation(), firnbook::EnumNameComparison, T::VT_ELEVATION);
  code(choice.wind_loading(), firnbook::EnumNameComparison, T::VT_WIND_LOADING);
  code(choice.incline(), firnbook::EnumNameComparison, T::VT_INCLINE);
  code(choice.interest_aspect_point(), firnbook::EnumNameCompassPoint, T::VT_INTEREST_ASPECT_POINT);
}

void check_weather_codes(const firnbook::Weather& weather, Reporter& out) {
  const Codes code{out, Thing::weather};
  using T = firnbook::Weather;
  code(weather.sky(), firnbook::EnumNameSkyCondition, T::VT_SKY);
  code(weather.sky_family(), firnbook::EnumNameCodeFamily, T::VT_SKY_FAMILY);
  code(weather.precipitation(), firnbook::EnumNamePrecipitation, T::VT_PRECIPITATION);
  code(weather.precipitation_family(), firnbook::EnumNameCodeFamily, T::VT_PRECIPITATION_FAMILY);
  code(weather.precipitation_rate(), firnbook::EnumNamePrecipitationRate, T::VT_PRECIPITATION_RATE);
  code(weather.wind(), firnbook::EnumNameWindClass, T::VT_WIND);
  code(weather.wind_from_point(), firnbook::EnumNameCompassPoint, T::VT_WIND_FROM_POINT);
  code(weather.blowing_snow(), firnbook::EnumNameBlowingSnow, T::VT_BLOWING_SNOW);
  code(weather.blowing_snow_from_point(), firnbook::EnumNameCompassPoint, T::VT_BLOWING_SNOW_FROM_POINT);
}

void check_surroundings(const firnbook::Pit& raw, Reporter& out) {
  if (raw.site() != nullptr) check_site_codes(*raw.site(), out);
  if (raw.choice() != nullptr) check_choice_codes(*raw.choice(), out);
  if (raw.weather() != nullptr) check_weather_codes(*raw.weather(), out);
  if (const firnbook::Surface* surface = raw.surface()) {
    const Codes code{out, Thing::surface};
    code(surface->roughness(), firnbook::EnumNameSurfaceRoughness, firnbook::Surface::VT_ROUGHNESS);
    code(surface->feature_aspect_point(), firnbook::EnumNameCompassPoint,
         firnbook::Surface::VT_FEATURE_ASPECT_POINT);
  }
  if (const firnbook::Snowpack* snowpack = raw.snowpack()) {
    Codes{out, Thing::snowpack}(snowpack->direction(), firnbook::EnumNameDirection,
                                firnbook::Snowpack::VT_DIRECTION);
  }
}

void check_depth_codes(const firnbook::Depth* depth, int vtable_offset, const Codes& code) {
  if (depth == nullptr) return;
  if (depth->datum() > firnbook::Datum::ground) {
    code.unknown(vtable_offset, static_cast<std::uint8_t>(depth->datum()));
  }
  if (depth->direction() > firnbook::Direction::slope_normal) {
    code.unknown(vtable_offset, static_cast<std::uint8_t>(depth->direction()));
  }
}

void check_layer_codes(const firnbook::Layer& layer, const Codes& code) {
  using T = firnbook::Layer;
  check_depth_codes(layer.top(), T::VT_TOP, code);
  check_depth_codes(layer.bottom(), T::VT_BOTTOM, code);
  code(layer.hardness(), firnbook::EnumNameHandHardness, T::VT_HARDNESS);
  code(layer.hardness_top(), firnbook::EnumNameHandHardness, T::VT_HARDNESS_TOP);
  code(layer.hardness_bottom(), firnbook::EnumNameHandHardness, T::VT_HARDNESS_BOTTOM);
  code(layer.grain_form(), firnbook::EnumNameGrainForm, T::VT_GRAIN_FORM);
  code(layer.grain_form_second(), firnbook::EnumNameGrainForm, T::VT_GRAIN_FORM_SECOND);
  code(layer.grain_size_class(), firnbook::EnumNameGrainSizeClass, T::VT_GRAIN_SIZE_CLASS);
  code(layer.grain_size_max_class(), firnbook::EnumNameGrainSizeClass, T::VT_GRAIN_SIZE_MAX_CLASS);
  code(layer.wetness(), firnbook::EnumNameWetness, T::VT_WETNESS);
  code(layer.concern(), firnbook::EnumNamePartOfLayer, T::VT_CONCERN);
  if (layer.name() != nullptr) {
    code(layer.name()->kind(), firnbook::EnumNameLayerNameKind, T::VT_NAME);
  }
  const auto* candidates = layer.candidates();
  for (std::uint32_t i = 0; i < pit::size_of(candidates) && i < kMostListed; ++i) {
    const auto form = static_cast<firnbook::GrainForm>(candidates->Get(i));
    code(Optional<firnbook::GrainForm>(form), firnbook::EnumNameGrainForm, T::VT_CANDIDATES);
  }
}

void check_fracture_codes(const firnbook::Fracture& fracture, const Codes& code) {
  using T = firnbook::Fracture;
  check_depth_codes(fracture.depth(), T::VT_DEPTH, code);
  code(fracture.stage(), firnbook::EnumNameLoadStage, T::VT_STAGE);
  code(fracture.character(), firnbook::EnumNameFractureCharacter, T::VT_CHARACTER);
  code(fracture.quality(), firnbook::EnumNameShearQuality, T::VT_QUALITY);
  code(fracture.fracture_surface(), firnbook::EnumNameFractureSurface, T::VT_FRACTURE_SURFACE);
  code(fracture.crossing(), firnbook::EnumNameCrossing, T::VT_CROSSING);
  code(fracture.release(), firnbook::EnumNameReleaseType, T::VT_RELEASE);
  code(fracture.saw_end(), firnbook::EnumNameSawEnd, T::VT_SAW_END);
  code(fracture.ease(), firnbook::EnumNameShearEase, T::VT_EASE);
  code(fracture.part(), firnbook::EnumNamePartOfLayer, T::VT_PART);
  if (const firnbook::Layer* on = fracture.on()) {
    code(on->grain_form(), firnbook::EnumNameGrainForm, T::VT_ON);
    code(on->grain_form_second(), firnbook::EnumNameGrainForm, T::VT_ON);
    code(on->hardness(), firnbook::EnumNameHandHardness, T::VT_ON);
  }
}

void check_test_codes(const pit::View& pit, Reporter& out) {
  using T = firnbook::StabilityTest;
  for (const pit::Test& test : pit.tests()) {
    const Codes code{out, Thing::test, signed_index(test.stored)};
    code(test.raw->kind(), firnbook::EnumNameTestKind, T::VT_KIND);
    code(test.raw->outcome(), firnbook::EnumNameTestOutcome, T::VT_OUTCOME);
    code(test.raw->not_valid_reason(), firnbook::EnumNameNotValidReason, T::VT_NOT_VALID_REASON);
    code(test.raw->column_ends(), firnbook::EnumNameColumnEnds, T::VT_COLUMN_ENDS);
    code(test.raw->crossing_rule(), firnbook::EnumNameCrossingRule, T::VT_CROSSING_RULE);
  }
  for (const pit::Fracture& fracture : pit.fractures()) {
    check_fracture_codes(*fracture.raw, Codes{out, Thing::fracture, signed_index(fracture.test),
                                              signed_index(fracture.stored)});
  }
}

void check_sign_codes(const firnbook::Pit& raw, Reporter& out) {
  for (std::uint32_t i = 0; i < pit::size_of(raw.signs()); ++i) {
    const firnbook::Sign* sign = raw.signs()->Get(i);
    const Codes code{out, Thing::sign, signed_index(i)};
    code(sign->kind(), firnbook::EnumNameSignKind, firnbook::Sign::VT_KIND);
    code(sign->answer(), firnbook::EnumNameAnswer, firnbook::Sign::VT_ANSWER);
  }
  for (std::uint32_t i = 0; i < pit::size_of(raw.slides()); ++i) {
    const firnbook::Slide* slide = raw.slides()->Get(i);
    const Codes code{out, Thing::slide, signed_index(i)};
    code(slide->kind(), firnbook::EnumNameSlideKind, firnbook::Slide::VT_KIND);
    code(slide->trigger(), firnbook::EnumNameTrigger, firnbook::Slide::VT_TRIGGER);
    code(slide->aspect_point(), firnbook::EnumNameCompassPoint, firnbook::Slide::VT_ASPECT_POINT);
  }
  for (std::uint32_t i = 0; i < pit::size_of(raw.steps()); ++i) {
    const Codes code{out, Thing::step, signed_index(i)};
    code(raw.steps()->Get(i)->kind(), firnbook::EnumNameStepKind, firnbook::Step::VT_KIND);
  }
}

// The methods of measured profiles, what they measured, and the codes of their readings.
template <class Profile, class E>
void check_methods(const flatbuffers::Vector<flatbuffers::Offset<Profile>>* list, Thing thing, NameOf<E> name,
                   Reporter& out) {
  for (std::uint32_t i = 0; i < pit::size_of(list); ++i) {
    Codes{out, thing, signed_index(i)}(list->Get(i)->method(), name, Profile::VT_METHOD);
  }
}

void check_strength_codes(const firnbook::StrengthProfile& profile, std::uint32_t index, Reporter& out) {
  using T = firnbook::StrengthReading;
  Codes{out, Thing::strength_profile, signed_index(index)}(profile.kind(), firnbook::EnumNameStrengthKind,
                                                           firnbook::StrengthProfile::VT_KIND);
  for (std::uint32_t i = 0; i < pit::size_of(profile.readings()); ++i) {
    const T* reading = profile.readings()->Get(i);
    const Codes code{out, Thing::strength, signed_index(index), signed_index(i)};
    code(reading->character(), firnbook::EnumNameFractureCharacter, T::VT_CHARACTER);
    code(reading->quality(), firnbook::EnumNameShearQuality, T::VT_QUALITY);
    code(reading->fracture_surface(), firnbook::EnumNameFractureSurface, T::VT_FRACTURE_SURFACE);
  }
}

void check_impurity_codes(const firnbook::ImpurityProfile& profile, std::uint32_t index, Reporter& out) {
  using T = firnbook::ImpurityReading;
  const Codes whole{out, Thing::impurity_profile, signed_index(index)};
  whole(profile.impurity(), firnbook::EnumNameImpurity, firnbook::ImpurityProfile::VT_IMPURITY);
  whole(profile.uncertainty_unit(), firnbook::EnumNameFractionUnit,
        firnbook::ImpurityProfile::VT_UNCERTAINTY_UNIT);
  for (std::uint32_t i = 0; i < pit::size_of(profile.readings()); ++i) {
    const T* reading = profile.readings()->Get(i);
    const Codes code{out, Thing::impurity, signed_index(index), signed_index(i)};
    code(reading->mass_fraction_unit(), firnbook::EnumNameFractionUnit, T::VT_MASS_FRACTION_UNIT);
    code(reading->volume_fraction_unit(), firnbook::EnumNameFractionUnit, T::VT_VOLUME_FRACTION_UNIT);
  }
}

void check_profile_codes(const firnbook::Pit& raw, Reporter& out) {
  check_methods(raw.densities(), Thing::density_profile, firnbook::EnumNameDensityMethod, out);
  check_methods(raw.liquid_water(), Thing::liquid_water_profile, firnbook::EnumNameLiquidWaterMethod, out);
  check_methods(raw.surface_area(), Thing::surface_area_profile, firnbook::EnumNameSurfaceAreaMethod, out);
  check_methods(raw.hardness(), Thing::hardness_profile, firnbook::EnumNameHardnessMethod, out);
  check_methods(raw.strength(), Thing::strength_profile, firnbook::EnumNameStrengthMethod, out);
  check_methods(raw.impurities(), Thing::impurity_profile, firnbook::EnumNameImpurityMethod, out);
  for (std::uint32_t i = 0; i < pit::size_of(raw.strength()); ++i) {
    check_strength_codes(*raw.strength()->Get(i), i, out);
  }
  for (std::uint32_t i = 0; i < pit::size_of(raw.impurities()); ++i) {
    check_impurity_codes(*raw.impurities()->Get(i), i, out);
  }
}

}  // namespace

void check_vocabulary(const pit::View& pit, Reporter& out) {
  const firnbook::Pit& raw = pit.raw();
  check_header(raw, out);
  check_surroundings(raw, out);
  for (const pit::Layer& layer : pit.layers()) {
    check_layer_codes(*layer.raw, Codes{out, Thing::layer, signed_index(layer.stored)});
  }
  check_test_codes(pit, out);
  check_sign_codes(raw, out);
  check_profile_codes(raw, out);
}

}  // namespace firn::checking
