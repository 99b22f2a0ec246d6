// What the codecs write, and how they pair with read_values.h. Each says what it held: everything else comes
// back through customData of ours.
#include <memory>
#include <string>

#include "exchange/caaml/moment.h"
#include "exchange/caaml/read_values.h"
#include "exchange/caaml/writer.h"
#include "support/text.h"

namespace firn::exchange::caaml {
namespace writing {
namespace {

using firnbook::Datum;
using firnbook::Depth;
using firnbook::Moment;
using firnbook::TimePrecision;
using firnbook::TimeSpan;

// --- plain values
// --------------------------------------------------------------------------------------------

void text(Writer& writer, const Row& row) {
  const std::string_view text = writer.text(row.field);
  if (text.empty() && !row.is_wanted) return;
  append_text(writer.begin(row), text);
  writer.end(row.name);
  if (text.empty()) return;
  writer.hold_or_make(row.field, is_xml_text(text));
  writer.count();
}

void country(Writer& writer, const Row& row) {
  const std::string_view text = writer.text(row.field);
  const auto is_capital = [](char c) { return c >= 'A' && c <= 'Z'; };
  if (text.size() != 2 || !is_capital(text[0]) || !is_capital(text[1])) return;
  caaml::append_text(writer.begin(row), text);
  writer.end(row.name);
  writer.hold(row.field);
  writer.count();
}

void put(Writer& writer, const Row& row, std::string_view code) {
  writer.begin(row) += code;
  writer.end(row.name);
  writer.hold(row.field);
  writer.count();
}

std::string_view code_in(const Writer& writer, voffset_t id, const CodeTable& codes) {
  std::int64_t value = 0;
  return writer.get(id, value) ? find_code(codes, static_cast<std::uint8_t>(value)) : std::string_view();
}

void code(Writer& writer, const Row& row) {
  const std::string_view code = code_in(writer, row.field, row.codes());
  if (code.empty()) return writer.missing(row);
  put(writer, row, code);
}

// The standard takes one hardness, or one at the top and one at the bottom.
void hand_hardness(Writer& writer, const Row& row) {
  const bool is_whole = row.field == firnbook::Layer::VT_HARDNESS;
  if (!is_whole && writer.frame().has_choice) return;
  const std::size_t before = writer.out().size();
  code(writer, row);
  if (is_whole) writer.frame().has_choice = writer.out().size() != before;
}

// False when the standard cannot hold the number.
bool fits(const Row& row, std::int64_t value) {
  return value >= row.least && value <= row.most && value < kMostExact && value > -kMostExact;
}

std::int64_t rounded(std::int64_t value, std::int64_t step) {
  if (step == 1) return value;
  const std::int64_t half = value < 0 ? -step / 2 : step / 2;
  return (value + half) / step * step;
}

void put_number(Writer& writer, const Row& row, std::int64_t value) {
  append_fixed(writer.begin(row), value, row.unit.power);
  writer.end(row.name);
  writer.count();
}

void number(Writer& writer, const Row& row) {
  std::int64_t value = 0;
  if (!writer.get(row.field, value)) return writer.missing(row);
  const std::int64_t shown = rounded(value, row.step);
  if (!fits(row, shown)) {
    if (row.is_wanted) writer.nothing_recorded(row);
    return;
  }
  put_number(writer, row, shown);
  writer.hold_or_make(row.field, shown == value);
  if (shown != value) writer.note(NoticeKind::changed, row.field, "rounded to what the standard holds");
}

// The schema lets no uncertainty be above zero, since it borrows the type of snow temperatures.
void uncertainty(Writer& writer, const Row& row) {
  std::int64_t value = 0;
  if (!writer.get(row.field, value)) return writer.missing(row);
  if (value < 0 || !fits(row, -value)) return;
  put_number(writer, row, -value);
  writer.hold(row.field);
}

// --- time
// ----------------------------------------------------------------------------------------------------

void moment(Writer& writer, const Row& row) {
  const auto* stored = writer.structure<Moment>(row.field);
  std::string text;
  Moment back;
  if (stored == nullptr || !append_moment(text, *stored, back) ||
      text.compare(0, kNoTime.size(), kNoTime) == 0)
    return;
  writer.begin(row) += text;
  writer.end(row.name);
  writer.hold_or_make(row.field, same(back, *stored));
  writer.count();
}

void put_position(Writer& writer, std::string_view name, std::string_view text) {
  writer.begin(name) += text;
  writer.end(name);
}

void span(Writer& writer, const Row& row) {
  const auto* stored = writer.structure<TimeSpan>(row.field);
  std::string begin;
  std::string end;
  Moment begin_back;
  Moment end_back;
  bool can = stored != nullptr && append_moment(begin, stored->begin(), begin_back) &&
             begin.compare(0, kNoTime.size(), kNoTime) != 0;
  const bool has_end = can && stored->end().precision() != TimePrecision::none;
  if (has_end)
    can = append_moment(end, stored->end(), end_back) && end.compare(0, kNoTime.size(), kNoTime) != 0;
  if (!can) {
    if (!row.is_wanted) return;
    begin = kNoTime;
    writer.note(NoticeKind::changed, row.field,
                "the standard wants a time: 0001-01-01 stands for one that is not known");
  }
  const std::string_view name = can && has_end ? "TimePeriod" : "TimeInstant";
  writer.open(row.name);
  writer.open(name);
  put_position(writer, can && has_end ? "beginPosition" : "timePosition", begin);
  if (can && has_end) put_position(writer, "endPosition", end);
  writer.close(name);
  writer.close(row.name);
  if (!can) return;
  const bool has_same_end = has_end ? same(end_back, stored->end()) : same(Moment(), stored->end());
  writer.hold_or_make(row.field, same(begin_back, stored->begin()) && has_same_end);
  writer.count();
}

// --- depths
// --------------------------------------------------------------------------------------------------

bool is_plain(const Writer& writer, const Depth& depth, std::int64_t value) {
  return depth.value_10um() == value && depth.datum() == Datum::surface &&
         depth.direction() == writer.direction();
}

void depth(Writer& writer, const Row& row) {
  const auto* stored = writer.structure<Depth>(row.field);
  if (stored == nullptr) return writer.missing(row);
  std::int64_t value = 0;
  if (!writer.below_surface(stored, value)) {
    if (row.is_wanted) writer.nothing_recorded(row);
    return;
  }
  put_number(writer, row, value);
  writer.hold_or_make(row.field, is_plain(writer, *stored, value));
}

void thickness(Writer& writer, const Row& row) {
  const auto* bottom = writer.structure<Depth>(row.field);
  if (bottom == nullptr) return writer.missing(row);
  std::int64_t from = 0;
  std::int64_t to = 0;
  if (!writer.below_surface(writer.structure<Depth>(row.other), from) || !writer.below_surface(bottom, to) ||
      to < from) {
    return;
  }
  put_number(writer, row, to - from);
  writer.hold_or_make(row.field, is_plain(writer, *bottom, to));
}

// --- snow and weather
// ----------------------------------------------------------------------------------------

void grain_size(Writer& writer, const Row& row) {
  std::int64_t value = 0;
  if (writer.get(row.field, value) && fits(row, value)) {
    put_number(writer, row, value);
    return writer.hold(row.field);
  }
  Row of_class = row;
  of_class.field = row.other;
  const std::string_view code = code_in(writer, row.other, code_table<firnbook::GrainSizeClass>());
  if (!code.empty()) return put(writer, of_class, code);
  if (!writer.has(row.field)) return writer.missing(row);
  if (row.is_wanted) writer.nothing_recorded(row);
}

void wind(Writer& writer, const Row& row) {
  std::int64_t value = 0;
  if (writer.get(row.other, value) && value >= 0) {
    Row speed = row.with_uom(row.uom);
    put_number(writer, speed, value);
    return writer.hold(row.other);
  }
  const std::string_view code = code_in(writer, row.field, code_table<firnbook::WindClass>());
  if (code.empty()) return writer.missing(row.with_uom(""));
  put(writer, row.with_uom(""), code);
}

void aspect(Writer& writer, const Row& row) {
  std::int64_t value = 0;
  if (writer.get(row.other, value) && value <= 360) {
    put_number(writer, row, value);
    return writer.hold(row.other);
  }
  const std::string_view code = code_in(writer, row.field, code_table<firnbook::CompassPoint>());
  // A wind from varying directions has no code there.
  if (code.empty() || code == code_of(firnbook::CompassPoint::variable)) return writer.missing(row);
  put(writer, row, code);
}

void family(Writer& writer, voffset_t id) {
  std::int64_t value = 0;
  const bool is_metar =
      writer.get(id, value) && value == static_cast<std::int64_t>(firnbook::CodeFamily::metar);
  writer.hold_or_make(id, is_metar);
}

void sky(Writer& writer, const Row& row) {
  const std::string_view code = code_in(writer, row.field, code_table<firnbook::SkyCondition>());
  if (code.empty()) return writer.missing(row);
  put(writer, row, code);
  family(writer, row.other);
}

void precipitation(Writer& writer, const Row& row) {
  std::int64_t value = 0;
  if (!writer.get(row.field, value)) return writer.missing(row);
  const std::string_view code =
      precipitation_code(static_cast<firnbook::Precipitation>(value), firnbook::CodeFamily::metar);
  if (code.empty()) return;
  put(writer, row, code);
  family(writer, row.other);
}

// One of three ways to say how it broke; what was said in another one as well is kept beside.
void character(Writer& writer, const Row& row) {
  const CodeTable tables[] = {code_table<firnbook::FractureCharacter>(), code_table<firnbook::ShearQuality>(),
                              code_table<firnbook::FractureSurface>()};
  const voffset_t ids[] = {row.field, row.other, static_cast<voffset_t>(row.other + 2)};
  for (std::size_t i = 0; i < 3; ++i) {
    const std::string_view code = code_in(writer, ids[i], tables[i]);
    if (code.empty()) continue;
    Row one = row;
    one.field = ids[i];
    return put(writer, one, code);
  }
  writer.missing(row);
}

// Each layer that somebody marked: the schema means to allow one only, but its rule names no element, and a
// concern that is left out would be a caution less.
void concern(Writer& writer, const Row& row) {
  const std::string_view part = code_in(writer, row.field, code_table<firnbook::PartOfLayer>());
  if (part.empty()) return;
  writer.line();
  std::string& out = writer.out();
  out += "<caaml:layerOfConcern partOfLayer=\"";
  out += part;
  out += "\">true";
  writer.end(row.name);
  writer.hold(row.field);
  writer.count();
}

void range(Writer& writer, const Row& row) {
  std::int64_t least = 0;
  std::int64_t most = 0;
  const bool has_least = writer.get(row.field, least) && fits(row, least);
  const bool has_most = writer.get(row.other, most) && fits(row, most);
  if (!has_least && !has_most) return;
  const std::string name = std::string(row.name.substr(5)) + (has_most ? "Range" : "Position");
  const auto put_end = [&](std::string_view element, bool has, std::int64_t value, voffset_t id) {
    writer.begin(element);
    if (has) {
      append_fixed(writer.out(), value, row.unit.power);
      writer.hold(id);
    } else {
      writer.out() += kNotRecorded;
    }
    writer.end(element);
  };
  writer.open(row.name);
  writer.open(name, " uom=\"" + std::string(row.uom) + "\"");
  put_end(has_most ? "beginPosition" : "position", has_least, least, row.field);
  if (has_most) put_end("endPosition", true, most, row.other);
  writer.close(name);
  writer.close(row.name);
  writer.count();
}

// The standard has no height of new snow without the moment the board was cleared.
void new_snow(Writer& writer, const Row& row) {
  const auto* stored = writer.structure<Moment>(row.field);
  std::string text;
  Moment back;
  if (stored == nullptr || !append_moment(text, *stored, back)) return;
  writer.open(row.name, " dateTimeCleared=\"" + text + "\"");
  writer.rows(*row.type);
  writer.close(row.name);
  writer.hold_or_make(row.field, same(back, *stored));
  writer.count();
}

void position(Writer& writer, const Row& row) {
  constexpr std::int64_t kQuarter = 900000000;
  std::int64_t latitude = 0;
  std::int64_t longitude = 0;
  if (!writer.get(row.field, latitude) || !writer.get(row.other, longitude) || latitude < -kQuarter ||
      latitude > kQuarter || longitude < -2 * kQuarter || longitude > 2 * kQuarter) {
    return;
  }
  bool is_held = false;
  writer.open(row.name);
  writer.line();
  std::string& out = writer.out();
  out += "<gml:Point";
  writer.append_id(out, writer.text(firnbook::Site::VT_POINT_ID), "point", is_held);
  out += " srsName=\"urn:ogc:def:crs:OGC:1.3:CRS84\" srsDimension=\"2\"><gml:pos>";
  append_fixed(out, longitude, 7);
  out += ' ';
  append_fixed(out, latitude, 7);
  out += "</gml:pos></gml:Point>";
  writer.close(row.name);
  writer.hold(row.field);
  writer.hold(row.other);
  if (is_held) writer.hold(firnbook::Site::VT_POINT_ID);
  writer.count();
}

// --- impurities
// ----------------------------------------------------------------------------------------------

// The unit as the standard's open attribute takes it; empty when there is none that comes back the same.
std::string_view unit_in(const Writer& writer, voffset_t unit, voffset_t unit_words, bool& is_code) {
  const CodeTable codes = code_table<firnbook::FractionUnit>();
  const std::string_view code = code_in(writer, unit, codes);
  is_code = !code.empty();
  if (is_code || writer.has(unit)) return code;
  const std::string_view words = writer.text(unit_words);
  for (const Code& known : codes) {
    if (known.code == words) return {};
  }
  const bool is_symbol = words.find_first_of(": \n\r\t") == std::string_view::npos && is_xml_text(words);
  return is_symbol ? words : std::string_view();
}

bool put_fraction(Writer& writer, const Row& row, voffset_t unit_words) {
  std::int64_t value = 0;
  bool is_code = false;
  const std::string_view unit = unit_in(writer, row.other, unit_words, is_code);
  if (unit.empty() || !writer.get(row.field, value) || !fits(row, value)) return false;
  writer.line();
  std::string& out = writer.out();
  out += "<caaml:";
  out += row.name;
  out += " uom=\"";
  append_text(out, unit);
  out += "\">";
  append_fixed(out, value, 6);
  writer.end(row.name);
  writer.hold(row.field);
  writer.hold(is_code ? row.other : unit_words);
  writer.count();
  return true;
}

// One of the two, and one of them always.
void fraction(Writer& writer, const Row& row) {
  if (writer.frame().has_choice) return;
  writer.frame().has_choice = put_fraction(writer, row, firnbook::ImpurityReading::VT_UNIT_WORDS);
  if (writer.frame().has_choice || row.field != firnbook::ImpurityReading::VT_VOLUME_FRACTION_E6) return;
  Row mass = row.with_uom("%");
  mass.name = "massFraction";
  writer.nothing_recorded(mass);
}

void fraction_uncertainty(Writer& writer, const Row& row) {
  put_fraction(writer, row, firnbook::ImpurityProfile::VT_UNCERTAINTY_UNIT_WORDS);
}

// --- dense profiles
// ------------------------------------------------------------------------------------------

// Where there are layers too, these are written: the standard takes the one or the other.
void tuples(Writer& writer, const Row& row) {
  const Stored& stored = *writer.frame().stored;
  const form::StoredList* readings = form::stored_list(stored, (&row + 1)->field);
  const auto* depths = stored.GetPointer<const flatbuffers::Vector<float>*>(row.field);
  const auto* values = stored.GetPointer<const flatbuffers::Vector<float>*>(row.other);
  if (depths == nullptr || values == nullptr || (readings != nullptr && readings->size() != 0)) return;
  writer.line();
  std::string& out = writer.out();
  out += row.attributes;
  writer.open(row.name);
  writer.begin("tupleList");
  for (flatbuffers::uoffset_t i = 0; i < depths->size(); ++i) {
    if (i != 0) out += ' ';
    append_float(out, depths->Get(i));
    out += ',';
    append_float(out, values->Get(i));
  }
  writer.end("tupleList");
  writer.close(row.name);
  writer.hold(row.field);
  writer.hold(row.other);
  writer.count();
}

void root_custom(Writer& writer, const Row&) {
  writer.root_custom();
}

}  // namespace

void source(Writer& writer, const Row& row);
void tests(Writer& writer, const Row& row);

}  // namespace writing

const Codec kText = {reading::text, writing::text};
const Codec kCountry = {reading::country, writing::country};
const Codec kCode = {reading::code, writing::code};
const Codec kHandHardness = {reading::code, writing::hand_hardness};
const Codec kNumber = {reading::number, writing::number};
const Codec kMoment = {reading::moment, writing::moment};
const Codec kSpan = {reading::span, writing::span};
const Codec kDepth = {reading::depth, writing::depth};
const Codec kTop = {reading::depth, writing::depth};
const Codec kThickness = {reading::thickness, writing::thickness};
const Codec kGrainSize = {reading::grain_size, writing::grain_size};
const Codec kWind = {reading::wind, writing::wind};
const Codec kAspect = {reading::aspect, writing::aspect};
const Codec kPosition = {reading::position, writing::position};
const Codec kPrecipitation = {reading::precipitation, writing::precipitation};
const Codec kSky = {reading::sky, writing::sky};
const Codec kCharacter = {reading::character, writing::character};
const Codec kConcern = {reading::concern, writing::concern};
const Codec kUncertainty = {reading::uncertainty, writing::uncertainty};
const Codec kFraction = {reading::fraction, writing::fraction};
const Codec kFractionUncertainty = {reading::fraction_uncertainty, writing::fraction_uncertainty};
const Codec kTuples = {reading::tuples, writing::tuples};
const Codec kRange = {reading::range, writing::range};
const Codec kNewSnow = {reading::new_snow, writing::new_snow};
const Codec kSource = {reading::source, writing::source};
const Codec kTests = {reading::tests, writing::tests};
const Codec kRootCustom = {reading::root_custom, writing::root_custom};

}  // namespace firn::exchange::caaml
