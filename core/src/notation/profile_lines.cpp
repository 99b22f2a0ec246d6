#include "notation/profile_lines.h"

#include <utility>

#include "notation/note_tables.h"
#include "support/text.h"

namespace firn::notation {
namespace {

using firnbook::PitT;
using firnbook::TemperatureReading;
using firnbook::TemperatureReadingT;
using firnbook::Thing;

constexpr std::string_view kPlusMinus = "\xC2\xB1";

// A number or a mark for it, as the main value of a reading.
bool read_reading_number(Line& line, std::string_view what, int decimals,
                         flatbuffers::Optional<std::int32_t>& value, std::uint64_t& mask,
                         std::uint16_t field) {
  Standing standing;
  if (!take_missing(line, standing)) {
    std::int64_t number = 0;
    if (!read_number(line, what, decimals, INT32_MIN, INT32_MAX, number)) return false;
    value = static_cast<std::int32_t>(number);
    take_doubt(line, standing);
  }
  if (standing.unreliable) mask |= std::uint64_t{1} << field;
  return true;
}

bool take_plus_minus(Line& line) {
  line.scan.skip_blanks();
  const std::string_view rest = line.scan.rest();
  const bool found = rest.substr(0, 2) == "+-" || rest.substr(0, kPlusMinus.size()) == kPlusMinus;
  if (found) line.scan.seek(line.scan.position() + 2);
  return found;
}

bool read_temperature(Line& line, const Frame& frame, TemperatureReadingT& reading) {
  if (!read_depth(line, frame, reading.depth, reading.unreliable, 0)) return false;
  take_words(line, "cm");
  const std::string_view rest = line.scan.rest();
  if (!rest.empty() && rest[0] != ' ' && rest[0] != '\t') {
    return line.expected("a blank between the depth and the temperature", "write 10 -8.6");
  }
  constexpr auto kTemperature = field_id(TemperatureReading::VT_TEMPERATURE_CDEGC);
  constexpr auto kUncertainty = field_id(TemperatureReading::VT_UNCERTAINTY_CDEGC);
  if (!read_reading_number(line, "a temperature in degrees C", 2, reading.temperature_cdegc,
                           reading.unreliable, kTemperature)) {
    return false;
  }
  take_words(line, "C");
  return !take_plus_minus(line) ||
         read_reading_number(line, "the uncertainty in degrees C", 2, reading.uncertainty_cdegc,
                             reading.unreliable, kUncertainty);
}

}  // namespace

bool read_temperatures(Line& line, const Frame& frame, PitT& pit) {
  const std::size_t before = pit.temperatures.size();
  do {
    auto reading = std::make_unique<TemperatureReadingT>();
    if (!read_temperature(line, frame, *reading)) {
      pit.temperatures.resize(before);
      return false;
    }
    pit.temperatures.push_back(std::move(reading));
  } while (line.scan.accept(','));
  if (line.scan.at_end()) return true;
  pit.temperatures.resize(before);
  return line.expected("a comma between two temperatures, or the end of the line");
}

namespace {

// What one kind of profile is made of.
template <Profile P>
struct Kind;

#define FIRN_PROFILE(name, word, ProfileType, ReadingType, member, whole, reading)                 \
  template <>                                                                                      \
  struct Kind<Profile::name> {                                                                     \
    using Whole = firnbook::ProfileType##T;                                                        \
    using Reading = firnbook::ReadingType##T;                                                      \
    static constexpr std::string_view kKeyword = word;                                             \
    static std::vector<std::unique_ptr<Whole>>& list(PitT& pit) { return pit.member; }             \
    static const std::vector<std::unique_ptr<Whole>>& list(const PitT& pit) { return pit.member; } \
    static const ItemTable& whole_items() { return items::whole; }                                 \
    static const ItemTable& reading_items() { return items::reading; }                             \
  };
FIRN_PROFILE(density, "density", DensityProfile, DensityReading, densities, kDensityProfile, kDensity)
FIRN_PROFILE(liquid_water, "lwc", LiquidWaterProfile, LiquidWaterReading, liquid_water, kLiquidWaterProfile,
             kLiquidWater)
FIRN_PROFILE(surface_area, "ssa", SurfaceAreaProfile, SurfaceAreaReading, surface_area, kSurfaceAreaProfile,
             kSurfaceArea)
FIRN_PROFILE(hardness, "resistance", HardnessProfile, HardnessReading, hardness, kHardnessProfile, kHardness)
FIRN_PROFILE(strength, "strength", StrengthProfile, StrengthReading, strength, kStrengthProfile, kStrength)
FIRN_PROFILE(impurity, "impurity", ImpurityProfile, ImpurityReading, impurities, kImpurityProfile, kImpurity)
#undef FIRN_PROFILE

template <class K>
bool read_readings(Line& line, const Frame& frame,
                   std::vector<std::unique_ptr<typename K::Reading>>& readings) {
  const ItemTable& table = K::reading_items();
  do {
    auto reading = std::make_unique<typename K::Reading>();
    if (!read_span_of_depth(line, frame, *reading)) return false;
    std::uint64_t seen = 0;
    if (!read_value(line, table, table.items[0], reading.get(), seen)) return false;
    while (!line.scan.at_end() && line.scan.next() != ',') {
      if (!read_item(line, table, reading.get(), seen)) return false;
    }
    readings.push_back(std::move(reading));
  } while (line.scan.accept(','));
  return true;
}

template <class K>
bool read_kind(Line& line, const Frame& frame, PitT& pit) {
  auto& list = K::list(pit);
  if (take_words(line, "profile")) {
    auto whole = std::make_unique<typename K::Whole>();
    if (!line.scan.at_end()) {
      if (!line.scan.accept(',')) return line.expected("a comma or the end of the line");
      if (!read_items(line, K::whole_items(), whole.get())) return false;
    }
    list.push_back(std::move(whole));
    return true;
  }
  std::vector<std::unique_ptr<typename K::Reading>> readings;
  if (!read_readings<K>(line, frame, readings)) return false;
  if (list.empty()) list.push_back(std::make_unique<typename K::Whole>());
  for (auto& reading : readings) list.back()->readings.push_back(std::move(reading));
  return true;
}

}  // namespace

std::string_view profile_keyword(Profile profile) {
  switch (profile) {
    case Profile::density:
      return Kind<Profile::density>::kKeyword;
    case Profile::liquid_water:
      return Kind<Profile::liquid_water>::kKeyword;
    case Profile::surface_area:
      return Kind<Profile::surface_area>::kKeyword;
    case Profile::hardness:
      return Kind<Profile::hardness>::kKeyword;
    case Profile::strength:
      return Kind<Profile::strength>::kKeyword;
    case Profile::impurity:
      return Kind<Profile::impurity>::kKeyword;
  }
  return {};
}

bool read_profile(Line& line, Profile profile, const Frame& frame, PitT& pit) {
  switch (profile) {
    case Profile::density:
      return read_kind<Kind<Profile::density>>(line, frame, pit);
    case Profile::liquid_water:
      return read_kind<Kind<Profile::liquid_water>>(line, frame, pit);
    case Profile::surface_area:
      return read_kind<Kind<Profile::surface_area>>(line, frame, pit);
    case Profile::hardness:
      return read_kind<Kind<Profile::hardness>>(line, frame, pit);
    case Profile::strength:
      return read_kind<Kind<Profile::strength>>(line, frame, pit);
    case Profile::impurity:
      return read_kind<Kind<Profile::impurity>>(line, frame, pit);
  }
  return line.expected("a profile");
}

// --- printing --------------------------------------------------------------------------------------------

void append_frame(std::string& out, Frame& frame, const Frame& needed) {
  if (needed.datum != frame.datum) {
    out += needed.datum == firnbook::Datum::ground ? "heights from " : "depths from ";
    append_code(out, code_table<firnbook::Datum>(), static_cast<std::uint8_t>(needed.datum));
    out += '\n';
  }
  if (needed.direction != frame.direction) {
    out += "measured ";
    append_code(out, direction_codes(), static_cast<std::uint8_t>(needed.direction));
    out += '\n';
  }
  frame = needed;
}

namespace {

void append_reading_number(std::string& out, const flatbuffers::Optional<std::int32_t>& value, int decimals,
                           std::uint64_t mask, std::uint16_t field) {
  if (value) {
    append_fixed(out, *value, decimals);
  } else {
    out += '~';
  }
  if ((mask >> field & 1) != 0) out += '?';
}

void append_temperature(const Printing& to, const TemperatureReadingT& reading) {
  constexpr auto kTemperature = field_id(TemperatureReading::VT_TEMPERATURE_CDEGC);
  constexpr auto kUncertainty = field_id(TemperatureReading::VT_UNCERTAINTY_CDEGC);
  append_depth(to.out, reading.depth.get(), reading.unreliable, 0);
  to.out += ' ';
  append_reading_number(to.out, reading.temperature_cdegc, 2, reading.unreliable, kTemperature);
  if (reading.uncertainty_cdegc || (reading.unreliable >> kUncertainty & 1) != 0) {
    to.out += " +-";
    append_reading_number(to.out, reading.uncertainty_cdegc, 2, reading.unreliable, kUncertainty);
  }
  lose_marks(to, Thing::temperature, reading.unreliable, 7);
}

}  // namespace

void append_temperatures(const Printing& to, Frame& frame, const PitT& pit) {
  bool open = false;
  std::int32_t index = 0;
  for (const auto& reading : pit.temperatures) {
    const Frame needed = reading->depth == nullptr ? frame : frame_of(*reading->depth);
    if (open && needed != frame) to.out += '\n';
    if (needed != frame) open = false;
    append_frame(to.out, frame, needed);
    to.out += open ? ", " : "temp ";
    open = true;
    append_temperature({to.out, to.lost, index++}, *reading);
  }
  if (open) to.out += '\n';
}

namespace {

template <class K>
void append_readings(const Printing& to, Frame& frame, const typename K::Whole& whole) {
  const ItemTable& table = K::reading_items();
  bool open = false;
  std::int32_t sub = 0;
  for (const auto& stored : whole.readings) {
    const Printing here{to.out, to.lost, to.index, sub++};
    typename K::Reading reading(*stored);
    const Frame needed = settle_span(here, table.thing, frame, reading);
    if (open && needed != frame) to.out += '\n';
    if (needed != frame) open = false;
    append_frame(to.out, frame, needed);
    if (!open) to.out += K::kKeyword;
    to.out += open ? ", " : " ";
    open = true;
    append_span_of_depth(to.out, reading);
    to.out += ' ';
    append_items(here, table, &reading, " ");
    lose_marks(here, table.thing, reading.unreliable, fields_of(table) | 3);
  }
  if (open) to.out += '\n';
}

template <class K>
void append_kind(const Printing& to, Frame& frame, const PitT& pit) {
  const ItemTable& table = K::whole_items();
  std::int32_t index = 0;
  for (const auto& whole : K::list(pit)) {
    const Printing here{to.out, to.lost, index};
    // Readings alone begin the first profile by themselves.
    if (index > 0 || whole->readings.empty() || has_any(table, whole.get())) {
      to.out += K::kKeyword;
      to.out += " profile";
      if (has_any(table, whole.get())) to.out += ", ";
      append_items(here, table, whole.get());
      to.out += '\n';
    }
    append_readings<K>(here, frame, *whole);
    ++index;
  }
}

// Dense instrument profiles are not for a line of notes.
template <class T>
void lose_dense(const Printing& to, Thing thing, const std::vector<std::unique_ptr<T>>& list, int depths,
                int values, std::vector<float> T::*dense) {
  std::int32_t index = 0;
  for (const auto& whole : list) {
    const Printing here{to.out, to.lost, index++};
    if (!whole->dense_depth_cm.empty()) here.lose(thing, field_id(depths));
    if (!((*whole).*dense).empty()) here.lose(thing, field_id(values));
  }
}

}  // namespace

void append_profiles(const Printing& to, Frame& frame, const PitT& pit) {
  append_kind<Kind<Profile::density>>(to, frame, pit);
  append_kind<Kind<Profile::liquid_water>>(to, frame, pit);
  append_kind<Kind<Profile::surface_area>>(to, frame, pit);
  append_kind<Kind<Profile::hardness>>(to, frame, pit);
  append_kind<Kind<Profile::strength>>(to, frame, pit);
  append_kind<Kind<Profile::impurity>>(to, frame, pit);
  lose_dense(to, Thing::surface_area_profile, pit.surface_area,
             firnbook::SurfaceAreaProfile::VT_DENSE_DEPTH_CM, firnbook::SurfaceAreaProfile::VT_DENSE_M2KG,
             &firnbook::SurfaceAreaProfileT::dense_m2kg);
  lose_dense(to, Thing::hardness_profile, pit.hardness, firnbook::HardnessProfile::VT_DENSE_DEPTH_CM,
             firnbook::HardnessProfile::VT_DENSE_N, &firnbook::HardnessProfileT::dense_n);
}

}  // namespace firn::notation
