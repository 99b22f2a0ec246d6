// One row a pit: what the place, the weather and the day were like, and how much was recorded.
#include "exchange/table/cells.h"

namespace firn::exchange::table {
namespace {

using firnbook::Pit;

void fill_observers(Cells& cells, const Pit& pit) {
  std::string names;
  for (std::size_t i = 0; i < size_of(pit.observers()); ++i) {
    const auto* name = pit.observers()->Get(static_cast<flatbuffers::uoffset_t>(i))->name();
    if (name == nullptr) continue;
    if (!names.empty()) names += ", ";
    names.append(name->c_str(), name->size());
  }
  cells.text(names);
}

void fill_probes(Cells& cells, const Pit& pit) {
  std::string probes;
  const auto* list = pit.site() == nullptr ? nullptr : pit.site()->probes_10um();
  for (std::size_t i = 0; i < size_of(list); ++i) {
    if (i != 0) probes += ' ';
    append_fixed(probes, list->Get(static_cast<flatbuffers::uoffset_t>(i)), 3);
  }
  cells.text(probes);
}

// Answers to one kind of sign. Where several people answered, each answer.
template <firnbook::SignKind kKind>
void fill_sign(Cells& cells, const Pit& pit) {
  std::string answers;
  for (std::size_t i = 0; i < size_of(pit.signs()); ++i) {
    const firnbook::Sign& sign = *pit.signs()->Get(static_cast<flatbuffers::uoffset_t>(i));
    if (!sign.kind() || *sign.kind() != kKind || !sign.answer()) continue;
    if (!answers.empty()) answers += ", ";
    const std::string_view code = code_of(*sign.answer());
    answers += code;
    if (code.empty()) append_unsigned(answers, static_cast<std::uint8_t>(*sign.answer()));
  }
  cells.text(answers);
}

void fill_precipitation(Cells& cells, const Pit& pit) {
  if (pit.weather() == nullptr || !pit.weather()->precipitation()) return cells.empty();
  const firnbook::Precipitation value = *pit.weather()->precipitation();
  const auto family = pit.weather()->precipitation_family();
  std::string_view code = family ? precipitation_code(value, *family) : std::string_view();
  if (code.empty()) code = code_of(value);
  cells.code(code, static_cast<std::uint8_t>(value));
}

// How many; nothing where the list is absent.
template <class List>
void fill_count(Cells& cells, const List* list) {
  if (list == nullptr) return cells.empty();
  cells.count(list->size());
}

#define FIRN_OF(table, what, value) \
  [](Cells& c, const Pit& p) { p.table() == nullptr ? c.empty() : c.what(p.table()->value()); }
#define FIRN_FIXED(table, value, decimals) \
  [](Cells& c, const Pit& p) { p.table() == nullptr ? c.empty() : c.number(p.table()->value(), decimals); }
#define FIRN_COUNT(list) [](Cells& c, const Pit& p) { fill_count(c, p.list()); }

constexpr Column<Pit> kColumns[] = {
    {kPitHeadings, fill_pit},
    {"time_end", [](Cells& c, const Pit& p) { c.moment(p.time() == nullptr ? nullptr : &p.time()->end()); }},
    {"purpose", [](Cells& c, const Pit& p) { c.code(p.purpose()); }},
    {"observers", fill_observers},
    {"operation", FIRN_OF(operation, text, name)},
    {"site_name", FIRN_OF(site, text, name)},
    {"country", FIRN_OF(site, text, country)},
    {"region", FIRN_OF(site, text, region)},
    {"elevation_m", FIRN_FIXED(site, elevation_10um, 5)},
    {"aspect_point", FIRN_OF(site, code, aspect_point)},
    {"aspect_deg", FIRN_FIXED(site, aspect_deg, 0)},
    {"slope_deg", FIRN_FIXED(site, slope_deg, 0)},
    {"latitude_deg", FIRN_FIXED(site, latitude_e7deg, 7)},
    {"longitude_deg", FIRN_FIXED(site, longitude_e7deg, 7)},
    {"position_accuracy_m", FIRN_FIXED(site, position_accuracy_10um, 5)},
    {"blurred_by_m", FIRN_FIXED(site, blurred_by_10um, 5)},
    {"terrain", FIRN_OF(site, text, terrain)},
    {"probes_cm", fill_probes},
    {"chosen", FIRN_OF(choice, text, words)},
    {"sky", FIRN_OF(weather, code, sky)},
    {"precipitation", fill_precipitation},
    {"precipitation_rate", FIRN_OF(weather, code, precipitation_rate)},
    {"air_temperature_degc", FIRN_FIXED(weather, air_temperature_cdegc, 2)},
    {"wind", FIRN_OF(weather, code, wind)},
    {"wind_speed_ms", FIRN_FIXED(weather, wind_speed_cms, 2)},
    {"wind_from_point", FIRN_OF(weather, code, wind_from_point)},
    {"wind_from_deg", FIRN_FIXED(weather, wind_from_deg, 0)},
    {"blowing_snow", FIRN_OF(weather, code, blowing_snow)},
    {"surface_roughness", FIRN_OF(surface, code, roughness)},
    {"penetration_foot_cm", FIRN_FIXED(surface, penetration_foot_10um, 3)},
    {"penetration_ski_cm", FIRN_FIXED(surface, penetration_ski_10um, 3)},
    {"surface_temperature_degc", FIRN_FIXED(surface, temperature_cdegc, 2)},
    {"hs_cm", FIRN_FIXED(snowpack, hs_10um, 3)},
    {"hn24_cm", FIRN_FIXED(snowpack, hn24_10um, 3)},
    {"hst_cm", FIRN_FIXED(snowpack, hst_10um, 3)},
    {"hs_direction", FIRN_OF(snowpack, code, direction)},
    {"profile_depth_cm", [](Cells& c, const Pit& p) { c.number(p.profile_depth_10um(), 3); }},
    {"reached_ground", [](Cells& c, const Pit& p) { c.yes_no(p.reached_ground()); }},
    {"layers", FIRN_COUNT(layers)},
    {"temperatures", FIRN_COUNT(temperatures)},
    {"tests", FIRN_COUNT(tests)},
    {"sign_whumpf", fill_sign<firnbook::SignKind::whumpf>},
    {"sign_cracking", fill_sign<firnbook::SignKind::cracking>},
    {"sign_slides", fill_sign<firnbook::SignKind::slides>},
    {"sign_remote_trigger", fill_sign<firnbook::SignKind::remote_trigger>},
    {"sign_hollow_sound", fill_sign<firnbook::SignKind::hollow_sound>},
    {"sign_wind_loading", fill_sign<firnbook::SignKind::wind_loading>},
    {"sign_heavy_precipitation", fill_sign<firnbook::SignKind::heavy_precipitation>},
    {"sign_rapid_warming", fill_sign<firnbook::SignKind::rapid_warming>},
    {"sign_pinwheels", fill_sign<firnbook::SignKind::pinwheels>},
    {"sign_snow_shedding_from_trees", fill_sign<firnbook::SignKind::snow_shedding_from_trees>},
    {"slides", FIRN_COUNT(slides)},
    {"assessment", FIRN_OF(assessment, text, words)},
    {"plan", FIRN_OF(assessment, text, plan)},
    {"confidence", FIRN_OF(assessment, code, confidence)},
    {"bulletin", FIRN_OF(bulletin, code, state)},
    {"backfilled", [](Cells& c, const Pit& p) { c.yes_no(p.backfilled()); }},
    {"sharing", [](Cells& c, const Pit& p) { c.code(p.sharing()); }},
    {"practice", [](Cells& c, const Pit& p) { c.yes_no(p.practice()); }},
};

}  // namespace

void append_pit_headings(std::string& out) {
  append_headings(out, kColumns);
}

void append_pit(Cells& cells, const Pit& pit) {
  fill_row(cells, kColumns, pit);
}

}  // namespace firn::exchange::table
