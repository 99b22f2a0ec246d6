#include "notation/profile_lines.h"

#include <algorithm>
#include <cstring>
#include <type_traits>
#include <utility>

#include "notation/note_tables.h"
#include "support/decimal.h"
#include "support/text.h"

namespace firn::notation {
namespace {

using firnbook::PitT;
using firnbook::TemperatureReading;
using firnbook::TemperatureReadingT;

// Marks of a temperature that have a value to stand behind: its first three fields.
constexpr std::uint64_t kTemperatureFields = 7;

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
  if (take_plus_minus(line) &&
      !read_reading_number(line, "the uncertainty in degrees C", 2, reading.uncertainty_cdegc,
                           reading.unreliable, kUncertainty)) {
    return false;
  }
  return !at_marks(line) || read_marks(line, ~kTemperatureFields, reading.unreliable);
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

// --- points of an instrument ---

// Depths in cm below the surface, and what was measured there. Either list may be longer than the other.
struct Dense {
  std::vector<float>& depths;
  std::vector<float>& values;
};
Dense dense_of(firnbook::SurfaceAreaProfileT& profile) {
  return {profile.dense_depth_cm, profile.dense_m2kg};
}
Dense dense_of(firnbook::HardnessProfileT& profile) {
  return {profile.dense_depth_cm, profile.dense_n};
}
template <class Whole>
constexpr bool kHasDense =
    std::is_same_v<Whole, firnbook::SurfaceAreaProfileT> || std::is_same_v<Whole, firnbook::HardnessProfileT>;

// What no decimal can say: bits=2143289344.
constexpr std::string_view kRawFloat = "bits=";

// A number, or ~ for none.
bool read_real(Line& line, std::string_view what, std::vector<float>& to) {
  constexpr Scanner::Limits kLimits = {0, UINT32_MAX};
  std::int64_t raw = 0;
  const Result<bool> is_raw = line.scan.numbers(kRawFloat, &kLimits, 1, &raw);
  if (!is_raw) return line.fail(is_raw.failure());
  float value = 0;
  if (*is_raw) {
    const auto bits = static_cast<std::uint32_t>(raw);
    std::memcpy(&value, &bits, sizeof value);
    to.push_back(value);
    return true;
  }
  // Digits beyond these change no float.
  constexpr std::size_t kLongest = 160;
  const std::string_view word = line.scan.peek_word();
  if (word != "~") {
    if (word.empty() || word.size() > kLongest || !parse_float(word, value)) {
      return line.expected(what, "write a number that is not beyond 3.4e38, such as 0.5 or 1e-7");
    }
    to.push_back(value);
  }
  line.scan.seek(line.scan.position() + word.size());
  return true;
}

bool read_point(Line& line, const Dense& dense) {
  line.scan.skip_blanks();
  const std::size_t start = line.scan.position();
  const std::size_t depths = dense.depths.size();
  const std::size_t values = dense.values.size();
  if (!read_real(line, "a depth in cm", dense.depths)) return false;
  if (!read_real(line, "the value at this depth", dense.values)) return false;
  const bool has_depth = dense.depths.size() != depths;
  const bool has_value = dense.values.size() != values;
  if ((has_depth || has_value) && (!has_depth || depths >= values) && (!has_value || values >= depths)) {
    return true;
  }
  // A value would be taken for that of another depth.
  return line.fail(line.scan.failure_at(start, "expected a depth and its value",
                                        "~ stands for what is missing at the end of the longer list only"));
}

// A line that fails leaves the lists as they were.
bool read_dense(Line& line, const Dense& dense) {
  const std::size_t depths = dense.depths.size();
  const std::size_t values = dense.values.size();
  bool read = true;
  do {
    read = read_point(line, dense);
  } while (read && line.scan.accept(','));
  if (read && !line.scan.at_end()) {
    read = line.expected("a comma between two points, or the end of the line");
  }
  if (read) return true;
  dense.depths.resize(depths);
  dense.values.resize(values);
  return false;
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
  if constexpr (kHasDense<typename K::Whole>) {
    if (take_words(line, "dense")) {
      const bool is_first = list.empty();
      if (is_first) list.push_back(std::make_unique<typename K::Whole>());
      if (read_dense(line, dense_of(*list.back()))) return true;
      if (is_first) list.pop_back();
      return false;
    }
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

void append_temperature(std::string& out, const Frame& frame, const TemperatureReadingT& reading) {
  constexpr auto kTemperature = field_id(TemperatureReading::VT_TEMPERATURE_CDEGC);
  constexpr auto kUncertainty = field_id(TemperatureReading::VT_UNCERTAINTY_CDEGC);
  append_depth(out, frame, reading.depth.get(), reading.unreliable, 0);
  out += ' ';
  append_reading_number(out, reading.temperature_cdegc, 2, reading.unreliable, kTemperature);
  if (reading.uncertainty_cdegc || (reading.unreliable >> kUncertainty & 1) != 0) {
    out += " +-";
    append_reading_number(out, reading.uncertainty_cdegc, 2, reading.unreliable, kUncertainty);
  }
  const std::uint64_t marks = reading.unreliable & ~kTemperatureFields;
  if (marks == 0) return;
  out += ' ';
  append_marks(out, marks);
}

}  // namespace

void append_temperatures(std::string& out, Frame& frame, const PitT& pit) {
  bool open = false;
  for (const auto& reading : pit.temperatures) {
    const Frame needed = reading->depth == nullptr ? frame : frame_of(*reading->depth);
    if (open && needed != frame) out += '\n';
    if (needed != frame) open = false;
    append_frame(out, frame, needed);
    out += open ? ", " : "temp ";
    open = true;
    append_temperature(out, frame, *reading);
  }
  if (open) out += '\n';
}

namespace {

template <class K>
void append_readings(std::string& out, Frame& frame, const typename K::Whole& whole) {
  const ItemTable& table = K::reading_items();
  bool open = false;
  for (const auto& reading : whole.readings) {
    const Frame needed = frame_of_span(frame, *reading);
    if (open && needed != frame) out += '\n';
    if (needed != frame) open = false;
    append_frame(out, frame, needed);
    if (!open) out += K::kKeyword;
    out += open ? ", " : " ";
    open = true;
    append_span_of_depth(out, frame, *reading);
    out += ' ';
    append_items(out, table, reading.get(), " ");
  }
  if (open) out += '\n';
}

void append_real(std::string& out, const std::vector<float>& list, std::size_t index) {
  if (index >= list.size()) {
    out += '~';
  } else if (list[index] - list[index] == 0) {
    append_float(out, list[index]);
  } else {
    std::uint32_t bits = 0;
    std::memcpy(&bits, &list[index], sizeof bits);
    out += kRawFloat;
    append_unsigned(out, bits);
  }
}

void append_dense(std::string& out, std::string_view keyword, const Dense& dense) {
  // So that lines stay short enough to be read.
  constexpr std::size_t kPointsOnALine = 10;
  const std::size_t count = std::max(dense.depths.size(), dense.values.size());
  for (std::size_t i = 0; i < count; ++i) {
    if (i % kPointsOnALine == 0) {
      if (i > 0) out += '\n';
      out += keyword;
      out += " dense ";
    } else {
      out += ", ";
    }
    append_real(out, dense.depths, i);
    out += ' ';
    append_real(out, dense.values, i);
  }
  if (count > 0) out += '\n';
}

template <class K>
void append_kind(std::string& out, Frame& frame, const PitT& pit) {
  const ItemTable& table = K::whole_items();
  bool is_first = true;
  for (const auto& whole : K::list(pit)) {
    // Readings alone begin the first profile by themselves.
    if (!is_first || whole->readings.empty() || has_any(table, whole.get())) {
      out += K::kKeyword;
      out += " profile";
      if (has_any(table, whole.get())) out += ", ";
      append_items(out, table, whole.get());
      out += '\n';
    }
    append_readings<K>(out, frame, *whole);
    if constexpr (kHasDense<typename K::Whole>) append_dense(out, K::kKeyword, dense_of(*whole));
    is_first = false;
  }
}

}  // namespace

void append_profiles(std::string& out, Frame& frame, const PitT& pit) {
  append_kind<Kind<Profile::density>>(out, frame, pit);
  append_kind<Kind<Profile::liquid_water>>(out, frame, pit);
  append_kind<Kind<Profile::surface_area>>(out, frame, pit);
  append_kind<Kind<Profile::hardness>>(out, frame, pit);
  append_kind<Kind<Profile::strength>>(out, frame, pit);
  append_kind<Kind<Profile::impurity>>(out, frame, pit);
}

}  // namespace firn::notation
