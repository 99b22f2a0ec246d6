#include "support/place.h"

#include <string_view>

#include "support/text.h"

namespace firn {
namespace {

using firnbook::Thing;

struct ThingPath {
  Thing thing;
  const char* list;   // as the pit names it, "" for the pit itself
  const char* child;  // list inside it that `sub` counts in, or null
  const flatbuffers::TypeTable* (*fields)();
};

// The order is that of the enumeration.
const ThingPath kThings[] = {
    {Thing::pit, "", nullptr, firnbook::PitTypeTable},
    {Thing::site, "site", nullptr, firnbook::SiteTypeTable},
    {Thing::observer, "observers", nullptr, firnbook::ObserverTypeTable},
    {Thing::weather, "weather", nullptr, firnbook::WeatherTypeTable},
    {Thing::surface, "surface", nullptr, firnbook::SurfaceTypeTable},
    {Thing::snowpack, "snowpack", nullptr, firnbook::SnowpackTypeTable},
    {Thing::layer, "layers", nullptr, firnbook::LayerTypeTable},
    {Thing::temperature, "temperatures", nullptr, firnbook::TemperatureReadingTypeTable},
    {Thing::density_profile, "densities", nullptr, firnbook::DensityProfileTypeTable},
    {Thing::density, "densities", "readings", firnbook::DensityReadingTypeTable},
    {Thing::liquid_water_profile, "liquid_water", nullptr, firnbook::LiquidWaterProfileTypeTable},
    {Thing::liquid_water, "liquid_water", "readings", firnbook::LiquidWaterReadingTypeTable},
    {Thing::surface_area_profile, "surface_area", nullptr, firnbook::SurfaceAreaProfileTypeTable},
    {Thing::surface_area, "surface_area", "readings", firnbook::SurfaceAreaReadingTypeTable},
    {Thing::hardness_profile, "hardness", nullptr, firnbook::HardnessProfileTypeTable},
    {Thing::hardness, "hardness", "readings", firnbook::HardnessReadingTypeTable},
    {Thing::strength_profile, "strength", nullptr, firnbook::StrengthProfileTypeTable},
    {Thing::strength, "strength", "readings", firnbook::StrengthReadingTypeTable},
    {Thing::impurity_profile, "impurities", nullptr, firnbook::ImpurityProfileTypeTable},
    {Thing::impurity, "impurities", "readings", firnbook::ImpurityReadingTypeTable},
    {Thing::test, "tests", nullptr, firnbook::StabilityTestTypeTable},
    {Thing::fracture, "tests", "fractures", firnbook::FractureTypeTable},
    {Thing::sign, "signs", nullptr, firnbook::SignTypeTable},
    {Thing::slide, "slides", nullptr, firnbook::SlideTypeTable},
    {Thing::probe, "site.probes_cm", nullptr, nullptr},
    {Thing::choice, "choice", nullptr, firnbook::ChoiceTypeTable},
    {Thing::assessment, "assessment", nullptr, firnbook::AssessmentTypeTable},
    {Thing::photo, "photos", nullptr, firnbook::PhotoTypeTable},
    {Thing::bulletin, "bulletin", nullptr, firnbook::BulletinSeenTypeTable},
    {Thing::operation, "operation", nullptr, firnbook::OperationTypeTable},
    {Thing::unread, "unread", nullptr, firnbook::UnreadTypeTable},
    {Thing::remark, "remarks", nullptr, firnbook::RemarkTypeTable},
    {Thing::boundary, "boundaries", nullptr, nullptr},
};

bool ends_with(std::string_view text, std::string_view end) {
  return text.size() >= end.size() && text.substr(text.size() - end.size()) == end;
}

// Stored units are exact but nobody thinks in them: paths speak as people measure.
void append_field_name(std::string& out, std::string_view name, bool is_depth) {
  constexpr std::string_view kLength = "_10um";
  if (!ends_with(name, kLength)) {
    out.append(name);
    if (is_depth) out += "_cm";
    return;
  }
  out.append(name.substr(0, name.size() - kLength.size()));
  const bool in_mm = name.find("grain_size") == 0 || name.find("_water") != std::string_view::npos;
  const bool in_m =
      name.find("elevation") != std::string_view::npos || name.find("fog") != std::string_view::npos;
  out += in_m ? "_m" : in_mm ? "_mm" : "_cm";
}

void append_index(std::string& out, std::int32_t index) {
  if (index < 0) return;
  out += '[';
  append_integer(out, index);
  out += ']';
}

}  // namespace

std::string path_of(const firnbook::Place& place) {
  const auto number = static_cast<std::size_t>(place.thing());
  if (number >= sizeof kThings / sizeof kThings[0]) return "pit";
  const ThingPath& thing = kThings[number];
  std::string out = thing.list;
  append_index(out, place.index());
  if (thing.child != nullptr && place.sub() >= 0) {
    out += '.';
    out += thing.child;
    append_index(out, place.sub());
  }
  const flatbuffers::TypeTable* fields = thing.fields == nullptr ? nullptr : thing.fields();
  if (fields != nullptr && place.field() < fields->num_elems) {
    if (!out.empty()) out += '.';
    const flatbuffers::TypeCode code = fields->type_codes[place.field()];
    const bool is_depth = code.base_type == flatbuffers::ET_SEQUENCE && code.is_repeating == 0 &&
                          fields->type_refs[code.sequence_ref] == firnbook::DepthTypeTable;
    append_field_name(out, fields->names[place.field()], is_depth);
  }
  return out.empty() ? "pit" : out;
}

}  // namespace firn
