#include "support/place.h"

#include <string_view>

#include "support/text.h"

namespace firn {
namespace {

using firnbook::Thing;

// In the order people read, which costs eight bytes a row.
struct ThingPath {  // NOLINT(clang-analyzer-optin.performance.Padding)
  Thing thing;
  const char* list;   // as the pit names it, "" for the pit itself
  bool is_listed;     // false where the pit has one at most: no index then
  const char* child;  // list inside it that `sub` counts in, or null
  const flatbuffers::TypeTable* (*fields)();
};

// The order is that of the enumeration.
const ThingPath kThings[] = {
    {Thing::pit, "", false, nullptr, firnbook::PitTypeTable},
    {Thing::site, "site", false, nullptr, firnbook::SiteTypeTable},
    {Thing::observer, "observers", true, nullptr, firnbook::ObserverTypeTable},
    {Thing::weather, "weather", false, nullptr, firnbook::WeatherTypeTable},
    {Thing::surface, "surface", false, nullptr, firnbook::SurfaceTypeTable},
    {Thing::snowpack, "snowpack", false, nullptr, firnbook::SnowpackTypeTable},
    {Thing::layer, "layers", true, nullptr, firnbook::LayerTypeTable},
    {Thing::temperature, "temperatures", true, nullptr, firnbook::TemperatureReadingTypeTable},
    {Thing::density_profile, "densities", true, nullptr, firnbook::DensityProfileTypeTable},
    {Thing::density, "densities", true, "readings", firnbook::DensityReadingTypeTable},
    {Thing::liquid_water_profile, "liquid_water", true, nullptr, firnbook::LiquidWaterProfileTypeTable},
    {Thing::liquid_water, "liquid_water", true, "readings", firnbook::LiquidWaterReadingTypeTable},
    {Thing::surface_area_profile, "surface_area", true, nullptr, firnbook::SurfaceAreaProfileTypeTable},
    {Thing::surface_area, "surface_area", true, "readings", firnbook::SurfaceAreaReadingTypeTable},
    {Thing::hardness_profile, "hardness", true, nullptr, firnbook::HardnessProfileTypeTable},
    {Thing::hardness, "hardness", true, "readings", firnbook::HardnessReadingTypeTable},
    {Thing::strength_profile, "strength", true, nullptr, firnbook::StrengthProfileTypeTable},
    {Thing::strength, "strength", true, "readings", firnbook::StrengthReadingTypeTable},
    {Thing::impurity_profile, "impurities", true, nullptr, firnbook::ImpurityProfileTypeTable},
    {Thing::impurity, "impurities", true, "readings", firnbook::ImpurityReadingTypeTable},
    {Thing::test, "tests", true, nullptr, firnbook::StabilityTestTypeTable},
    {Thing::fracture, "tests", true, "fractures", firnbook::FractureTypeTable},
    {Thing::sign, "signs", true, nullptr, firnbook::SignTypeTable},
    {Thing::slide, "slides", true, nullptr, firnbook::SlideTypeTable},
    {Thing::probe, "site.probes_cm", true, nullptr, nullptr},
    {Thing::choice, "choice", false, nullptr, firnbook::ChoiceTypeTable},
    {Thing::assessment, "assessment", false, nullptr, firnbook::AssessmentTypeTable},
    {Thing::photo, "photos", true, nullptr, firnbook::PhotoTypeTable},
    {Thing::bulletin, "bulletin", false, nullptr, firnbook::BulletinSeenTypeTable},
    {Thing::operation, "operation", false, nullptr, firnbook::OperationTypeTable},
    {Thing::unread, "unread", true, nullptr, firnbook::UnreadTypeTable},
    {Thing::remark, "remarks", true, nullptr, firnbook::RemarkTypeTable},
    {Thing::boundary, "boundaries", true, nullptr, nullptr},
    {Thing::step, "steps", true, nullptr, firnbook::StepTypeTable},
};

bool ends_with(std::string_view text, std::string_view end) {
  return text.size() >= end.size() && text.substr(text.size() - end.size()) == end;
}

bool contains(std::string_view text, std::string_view part) {
  return text.find(part) != std::string_view::npos;
}

std::string_view length_unit(std::string_view name) {
  if (name.find("grain_size") == 0 || contains(name, "_water")) return "_mm";
  const bool in_metres = contains(name, "elevation") || contains(name, "fog") ||
                         contains(name, "position_accuracy") || contains(name, "blurred_by");
  return in_metres ? "_m" : "_cm";
}

// Stored units are exact but nobody thinks in them: paths speak as people measure.
void append_field_name(std::string& out, std::string_view name, bool is_depth) {
  struct StoredUnit {
    std::string_view stored, measured;
  };
  constexpr StoredUnit kUnits[] = {{"_cdegc", "_degc"}, {"_dkgm3", "_kgm3"}, {"_e7deg", "_deg"}};
  constexpr std::string_view kLength = "_10um";
  if (ends_with(name, kLength)) {
    const std::string_view stem = name.substr(0, name.size() - kLength.size());
    out.append(stem);
    out.append(length_unit(name));
    return;
  }
  for (const StoredUnit& unit : kUnits) {
    if (!ends_with(name, unit.stored)) continue;
    out.append(name.substr(0, name.size() - unit.stored.size()));
    out.append(unit.measured);
    return;
  }
  out.append(name);
  if (is_depth) out += "_cm";
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
  if (thing.is_listed) append_index(out, place.index());
  if (thing.child != nullptr) {
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
