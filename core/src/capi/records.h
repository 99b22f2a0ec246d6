// The plain structs of record.h, each into the schema's object form.
#pragma once

#include "capi/fields.h"
#include "capi/structs.h"
#include "firnbook/record.h"
#include "schemas/pit_generated.h"

namespace firn::capi {

Done translate(const firn_pit_head& from, firnbook::PitT& to, Room& room);
Done translate(const firn_observer& from, firnbook::ObserverT& to, Room& room);
Done translate(const firn_site& from, firnbook::SiteT& to, Room& room);
Done translate(const firn_choice& from, firnbook::ChoiceT& to, Room& room);
Done translate(const firn_weather& from, firnbook::WeatherT& to, Room& room);
Done translate(const firn_surface& from, firnbook::SurfaceT& to, Room& room);
Done translate(const firn_snowpack& from, firnbook::SnowpackT& to, Room& room);
Done translate(const firn_layer& from, firnbook::LayerT& to, Room& room);
Done translate(const firn_temperature& from, firnbook::TemperatureReadingT& to, Room& room);
Done translate(const firn_density& from, firnbook::DensityReadingT& to, Room& room);
Done translate(const firn_density_profile& from, firnbook::DensityProfileT& to, Room& room);
Done translate(const firn_fracture& from, firnbook::FractureT& to, Room& room);
Done translate(const firn_test& from, firnbook::StabilityTestT& to, Room& room);
Done translate(const firn_sign& from, firnbook::SignT& to, Room& room);
Done translate(const firn_slide& from, firnbook::SlideT& to, Room& room);
Done translate(const firn_step& from, firnbook::StepT& to, Room& room);
Done translate(const firn_assessment& from, firnbook::AssessmentT& to, Room& room);
Done translate(const firn_bulletin_seen& from, firnbook::BulletinSeenT& to, Room& room);
Done translate(const firn_remark& from, firnbook::RemarkT& to, Room& room);

// Name and frozen first size of each struct, by type. No field that was added later is ever the last here.
#define FIRN_RECORD(type, last)                      \
  constexpr std::size_t first_version(const type*) { \
    return FIRN_FIRST_VERSION(type, last);           \
  }                                                  \
  constexpr const char* struct_name(const type*) {   \
    return #type;                                    \
  }
// Where the last field is a pointer, its own size is what counts.
// NOLINTBEGIN(bugprone-sizeof-expression)
FIRN_RECORD(firn_pit_head, application_version)
FIRN_RECORD(firn_observer, reserved_pointer)
FIRN_RECORD(firn_site, reserved_pointer)
FIRN_RECORD(firn_choice, terrain_of_interest)
FIRN_RECORD(firn_weather, reserved_pointer)
FIRN_RECORD(firn_surface, reserved_pointer)
FIRN_RECORD(firn_snowpack, reserved)
FIRN_RECORD(firn_layer, candidate_count)
FIRN_RECORD(firn_temperature, reserved)
FIRN_RECORD(firn_density, bottom)
FIRN_RECORD(firn_density_profile, reading_count)
FIRN_RECORD(firn_fracture, on)
FIRN_RECORD(firn_test, reserved_pointer)
FIRN_RECORD(firn_sign, reserved_pointer)
FIRN_RECORD(firn_slide, reserved_pointer)
FIRN_RECORD(firn_step, reserved_pointer)
FIRN_RECORD(firn_assessment, plan)
FIRN_RECORD(firn_bulletin_seen, reserved_pointer)
FIRN_RECORD(firn_remark, about)
FIRN_RECORD(firn_author, reserved_pointer)
// NOLINTEND(bugprone-sizeof-expression)
#undef FIRN_RECORD

// A struct of the caller as this library knows it: what an older caller's struct does not reach is zero.
template <class T>
Result<T> read_record(const T* given) {
  if (given == nullptr) return null_argument(struct_name(given));
  return read_options(given, first_version(given), struct_name(given));
}

}  // namespace firn::capi
