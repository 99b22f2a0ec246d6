#include "exchange/caaml/read_values.h"

#include <memory>
#include <string>

#include "exchange/caaml/moment.h"

namespace firn::exchange::caaml::reading {

using firnbook::Datum;
using firnbook::Depth;
using firnbook::Moment;
using firnbook::TimePrecision;
using firnbook::TimeSpan;
using pugi::xml_attribute;

namespace {

// Equal but for case, blanks and hyphens: "Push Pull Gauge" for "Push-Pull Gauge".
bool same_loosely(std::string_view a, std::string_view b) {
  const auto is_filler = [](char c) { return c == ' ' || c == '-'; };
  std::size_t i = 0;
  std::size_t k = 0;
  while (true) {
    while (i < a.size() && is_filler(a[i])) ++i;
    while (k < b.size() && is_filler(b[k])) ++k;
    if (i == a.size() || k == b.size()) return i == a.size() && k == b.size();
    if (!same_code(a.substr(i++, 1), b.substr(k++, 1))) return false;
  }
}

std::optional<std::uint8_t> exact_value(const CodeTable& codes, std::string_view text) {
  if (text.empty()) return std::nullopt;
  for (const Code& code : codes) {
    if (code.code.size() == text.size() && code.code[0] == text[0] && code.code == text) return code.value;
  }
  return std::nullopt;
}

template <class E>
bool take_one(Reader& reader, voffset_t id, std::string_view text) {
  const auto value = exact_value(code_table<E>(), text);
  if (value) reader.set(id, *value);
  return value.has_value();
}

xml_node only_child(Reader& reader, const xml_node& node, std::string_view name) {
  xml_node found;
  for (xml_node child = node.first_child(); child; child = child.next_sibling()) {
    if (child.type() != pugi::node_element) continue;
    if (!found && reader.name_of(child).local == name) {
      found = child;
    } else {
      reader.unknown(child);
    }
  }
  return found;
}

void put_depth(Reader& reader, voffset_t id, std::int64_t value) {
  auto& depth = reader.member<std::unique_ptr<Depth>>(id);
  depth = std::make_unique<Depth>(static_cast<std::int32_t>(value),
                                  reader.is_bottom_up() ? Datum::ground : Datum::surface, reader.direction());
}

bool fits_depth(std::int64_t value) {
  return value >= INT32_MIN && value <= INT32_MAX;
}

bool take_moment(Reader& reader, const xml_node& node, voffset_t id, Moment& moment) {
  const std::string_view text = reader.trimmed(node);
  if (text.substr(0, kNoTime.size()) == kNoTime) return false;
  switch (parse_moment(text, moment)) {
    case MomentRead::exact:
      return true;
    case MomentRead::cut:
      reader.note(NoticeKind::changed, node, "fractions of a second were left out");
      return true;
    case MomentRead::no_moment:
      break;
  }
  if (!reader.take_nil(id, text)) reader.refuse(node, id, text, "this is no date and no date with a time");
  return false;
}

// Within what the field can hold; what the standard forbids beyond that is told.
bool take_fitting(Reader& reader, const Row& row, const xml_node& node, std::string_view text, voffset_t id) {
  std::int64_t value = 0;
  if (!reader.take_number(node, row, text, value)) return false;
  const form::Range range = form::range_of(reader.field(id));
  if (value < range.least || value > range.most) {
    reader.refuse(node, id, text, "the number is out of range");
    return false;
  }
  if (value < row.least || value > row.most) {
    reader.note(NoticeKind::kept, node, "outside what the standard allows; read as it is");
  }
  reader.set(id, value);
  return true;
}

}  // namespace

bool take_code(Reader& reader, const Row& row, const xml_node& node, std::string_view text,
               const CodeTable& codes) {
  if (const auto value = exact_value(codes, text)) {
    reader.set(row.field, *value);
    return true;
  }
  if (reader.take_nil(row.field, text)) return true;
  auto value = find_value(codes, text);
  for (std::size_t i = 0; !value && i < codes.count; ++i) {
    if (same_loosely(codes.codes[i].code, text)) value = codes.codes[i].value;
  }
  if (!value) {
    reader.refuse(node, row.field, text, "the standard has no such code");
    return false;
  }
  std::string what = "read as ";
  what += find_code(codes, *value);
  reader.note(NoticeKind::changed, node, what);
  reader.set(row.field, *value);
  return true;
}

void text(Reader& reader, const Row& row, const xml_node& node) {
  reader.member<std::string>(row.field) = reader.words(node);
}

void country(Reader& reader, const Row& row, const xml_node& node) {
  const std::string_view text = reader.trimmed(node);
  const auto is_capital = [](char c) { return c >= 'A' && c <= 'Z'; };
  if (text.size() != 2 || !is_capital(text[0]) || !is_capital(text[1])) {
    reader.note(NoticeKind::kept, node, "this is not two capital letters; kept as it is");
  }
  reader.member<std::string>(row.field) = reader.clean(text, node);
}

void code(Reader& reader, const Row& row, const xml_node& node) {
  take_code(reader, row, node, reader.trimmed(node), row.codes());
}

void number(Reader& reader, const Row& row, const xml_node& node) {
  take_fitting(reader, row, node, reader.trimmed(node), row.field);
}

void moment(Reader& reader, const Row& row, const xml_node& node) {
  Moment moment;
  if (take_moment(reader, node, row.field, moment)) {
    reader.member<std::unique_ptr<Moment>>(row.field) = std::make_unique<Moment>(moment);
  }
}

void span(Reader& reader, const Row& row, const xml_node& node) {
  Moment begin;
  Moment end;
  for (xml_node way = node.first_child(); way; way = way.next_sibling()) {
    const std::string_view name = reader.name_of(way).local;
    if (name != "TimeInstant" && name != "TimePeriod") {
      if (way.type() == pugi::node_element) reader.unknown(way);
      continue;
    }
    for (xml_node at = way.first_child(); at; at = at.next_sibling()) {
      const std::string_view position = reader.name_of(at).local;
      if (position == "timePosition" || position == "beginPosition") {
        take_moment(reader, at, row.field, begin);
      } else if (position == "endPosition") {
        take_moment(reader, at, row.field, end);
      } else if (at.type() == pugi::node_element) {
        reader.unknown(at);
      }
    }
  }
  if (begin.precision() == TimePrecision::none && end.precision() == TimePrecision::none) return;
  reader.member<std::unique_ptr<TimeSpan>>(row.field) = std::make_unique<TimeSpan>(begin, end);
}

// --- depths
// --------------------------------------------------------------------------------------------------

void depth(Reader& reader, const Row& row, const xml_node& node) {
  const std::string_view text = reader.trimmed(node);
  std::int64_t value = 0;
  if (!reader.take_number(node, row, text, value)) return;
  if (!fits_depth(value)) return reader.refuse(node, row.field, text, "the number is out of range");
  if (value < 0) reader.note(NoticeKind::kept, node, "a depth below zero; read as it is");
  put_depth(reader, row.field, value);
}

void thickness(Reader& reader, const Row& row, const xml_node& node) {
  const std::string_view text = reader.trimmed(node);
  std::int64_t value = 0;
  if (!reader.take_number(node, row, text, value)) return;
  if (value < 0) return reader.refuse(node, row.field, text, "a thickness may not be negative");
  const auto& top = reader.member<std::unique_ptr<Depth>>(row.other);
  if (top == nullptr)
    return reader.refuse(node, row.field, text, "the top is not known, so the bottom is not either");
  value = reader.is_bottom_up() ? top->value_10um() - value : top->value_10um() + value;
  if (!fits_depth(value)) return reader.refuse(node, row.field, text, "the number is out of range");
  put_depth(reader, row.field, value);
}

// --- snow and weather
// ----------------------------------------------------------------------------------------

void grain_size(Reader& reader, const Row& row, const xml_node& node) {
  const std::string_view text = reader.trimmed(node);
  if (!take_one<firnbook::GrainSizeClass>(reader, row.other, text)) {
    take_fitting(reader, row, node, text, row.field);
  }
}

void wind(Reader& reader, const Row& row, const xml_node& node) {
  const std::string_view text = reader.trimmed(node);
  if (!take_one<firnbook::WindClass>(reader, row.field, text))
    take_fitting(reader, row, node, text, row.other);
}

void aspect(Reader& reader, const Row& row, const xml_node& node) {
  const std::string_view text = reader.trimmed(node);
  if (!text.empty() && ((text[0] >= '0' && text[0] <= '9') || text[0] == '+' || text[0] == '-')) {
    Row degrees = row;
    degrees.least = 0;
    degrees.most = 360;
    take_fitting(reader, degrees, node, text, row.other);
    return;
  }
  take_code(reader, row, node, text, code_table<firnbook::CompassPoint>());
}

void sky(Reader& reader, const Row& row, const xml_node& node) {
  take_code(reader, row, node, reader.trimmed(node), code_table<firnbook::SkyCondition>());
  if (form::holds(reader.field(row.field), reader.here().object)) {
    reader.set(row.other, static_cast<std::int64_t>(firnbook::CodeFamily::metar));
  }
}

void precipitation(Reader& reader, const Row& row, const xml_node& node) {
  const std::string_view text = reader.trimmed(node);
  const auto value = parse_precipitation(text, firnbook::CodeFamily::metar);
  if (!value) {
    if (!reader.take_nil(row.field, text))
      reader.refuse(node, row.field, text, "the standard has no such code");
    return;
  }
  if (code_of(*value) != text)
    reader.note(NoticeKind::changed, node, "read without regard to its letters' case");
  reader.set(row.field, static_cast<std::int64_t>(*value));
  reader.set(row.other, static_cast<std::int64_t>(firnbook::CodeFamily::metar));
}

// The three ways of the trade to say how it broke have fields of their own, one after the other.
void character(Reader& reader, const Row& row, const xml_node& node) {
  const std::string_view text = reader.trimmed(node);
  const auto surface = static_cast<voffset_t>(row.other + 2);
  if (take_one<firnbook::FractureCharacter>(reader, row.field, text) ||
      take_one<firnbook::ShearQuality>(reader, row.other, text) ||
      take_one<firnbook::FractureSurface>(reader, surface, text)) {
    return;
  }
  take_code(reader, row, node, text, code_table<firnbook::FractureCharacter>());
}

void concern(Reader& reader, const Row& row, const xml_node& node) {
  const std::string_view text = reader.trimmed(node);
  const std::string_view part = trim(node.attribute("partOfLayer").value());
  if (text == "false" || text == "0") return;
  if (text != "true" && text != "1") {
    if (reader.take_nil(row.field, text)) return;
    return reader.refuse(node, row.field, text, "this is neither true nor false");
  }
  if (part.empty()) return reader.set(row.field, static_cast<std::int64_t>(firnbook::PartOfLayer::all));
  if (take_one<firnbook::PartOfLayer>(reader, row.field, part)) return;
  // That it is a concern may not get lost.
  reader.set(row.field, static_cast<std::int64_t>(firnbook::PartOfLayer::all));
  reader.note(NoticeKind::changed, node,
              "the part of the layer is not one that the standard has; read as all of it");
}

// The schema lets no uncertainty be above zero, since it borrows the type of snow temperatures.
void uncertainty(Reader& reader, const Row& row, const xml_node& node) {
  const std::string_view text = reader.trimmed(node);
  std::int64_t value = 0;
  if (!reader.take_number(node, row, text, value)) return;
  if (value < 0) value = -value;
  if (value > INT32_MAX) return reader.refuse(node, row.field, text, "the number is out of range");
  reader.set(row.field, value);
}

// --- impurities
// ----------------------------------------------------------------------------------------------

namespace {

void take_fraction(Reader& reader, const Row& row, const xml_node& node, voffset_t unit_words) {
  constexpr Unit kMillionths{1, 6};
  const std::string_view text = reader.trimmed(node);
  Row plain = row;
  plain.unit = kMillionths;
  plain.quantity = Quantity::none;
  std::int64_t value = 0;
  if (reader.take_number(node, plain, text, value)) {
    reader.set(row.field, value);
  } else if (text == kNotRecorded) {
    return;  // with a unit that only fills its place
  }
  const std::string_view uom = node.attribute("uom").value();
  const auto unit = exact_value(code_table<firnbook::FractionUnit>(), uom);
  if (unit) {
    reader.set(row.other, *unit);
  } else if (!uom.empty()) {
    reader.member<std::string>(unit_words) = reader.clean(uom, node);
  } else {
    reader.note(NoticeKind::not_understood, node, "the unit is missing");
  }
}

}  // namespace

void fraction(Reader& reader, const Row& row, const xml_node& node) {
  take_fraction(reader, row, node, firnbook::ImpurityReading::VT_UNIT_WORDS);
}

void fraction_uncertainty(Reader& reader, const Row& row, const xml_node& node) {
  take_fraction(reader, row, node, firnbook::ImpurityProfile::VT_UNCERTAINTY_UNIT_WORDS);
}

// --- several values in one
// -------------------------------------------------------------------------------------

namespace {

// What separates the numbers of a tuple list: gml:CoordinatesType.
struct Separators {
  char decimal = '.', component = ',', tuple = ' ';
};

bool separators_of(const xml_node& node, Separators& to) {
  const auto one = [&](const char* name, char& separator) {
    const xml_attribute attribute = node.attribute(name);
    if (!attribute) return true;
    const std::string_view text = attribute.value();
    if (text.size() != 1) return false;
    separator = text[0];
    return true;
  };
  return one("decimal", to.decimal) && one("cs", to.component) && one("ts", to.tuple) &&
         to.component != to.tuple && to.decimal != to.component;
}

std::string_view next_part(std::string_view& rest, char separator) {
  const bool takes_blanks = is_blank(separator);
  std::size_t end = 0;
  while (end < rest.size() && rest[end] != separator && !(takes_blanks && is_blank(rest[end]))) ++end;
  const std::string_view part = rest.substr(0, end);
  rest.remove_prefix(end < rest.size() ? end + 1 : end);
  return trim(part);
}

bool take_float(std::string_view text, char decimal, std::string& scratch, std::vector<float>& to) {
  if (decimal != '.') {
    scratch = text;
    for (char& c : scratch) c = c == decimal ? '.' : c;
    text = scratch;
  }
  float value = 0;
  if (!parse_float(text, value)) return false;
  to.push_back(value);
  return true;
}

}  // namespace

void tuples(Reader& reader, const Row& row, const xml_node& node) {
  const xml_node list = only_child(reader, node, "tupleList");
  if (!list) return;
  Separators separators;
  if (!separators_of(list, separators)) {
    return reader.note(NoticeKind::not_understood, list, "its separators cannot be told apart");
  }
  const xml_node profile = node.parent();
  for (xml_node sibling = profile.first_child(); sibling; sibling = sibling.next_sibling()) {
    if (reader.name_of(sibling).local != "MeasurementComponents") continue;
    const std::string_view unit = sibling.attribute("uomDepth").value();
    if (!unit.empty() && unit != "cm") {
      return reader.note(NoticeKind::not_understood, sibling,
                         "depths of a dense profile are read in cm only");
    }
  }
  auto& depths = reader.member<std::vector<float>>(row.field);
  auto& values = reader.member<std::vector<float>>(row.other);
  std::string_view rest = trim(reader.text(list));
  std::string scratch;
  std::size_t faults = 0;
  while (!rest.empty()) {
    std::string_view tuple = next_part(rest, separators.tuple);
    if (tuple.empty()) continue;
    const std::string_view first = next_part(tuple, separators.component);
    const std::string_view second = next_part(tuple, separators.component);
    if (!tuple.empty() || !take_float(first, separators.decimal, scratch, depths)) {
      ++faults;
    } else if (!take_float(second, separators.decimal, scratch, values)) {
      depths.pop_back();
      ++faults;
    }
  }
  if (faults != 0) {
    reader.note(NoticeKind::not_understood, list, "pairs that are not two numbers were left out");
  }
}

void range(Reader& reader, const Row& row, const xml_node& node) {
  const std::string_view stem = row.name.substr(5);
  for (xml_node way = node.first_child(); way; way = way.next_sibling()) {
    if (way.type() != pugi::node_element) continue;
    const std::string_view name = reader.name_of(way).local;
    if (name.substr(0, stem.size()) != stem ||
        (name.substr(stem.size()) != "Position" && name.substr(stem.size()) != "Range")) {
      reader.unknown(way);
      continue;
    }
    Row inner = row;
    const std::string_view uom = way.attribute("uom").value();
    if (!uom.empty() && uom != row.uom && !reader.unit_of(way, row, reader.trimmed(way), inner.unit))
      continue;
    inner.quantity = Quantity::none;
    for (xml_node at = way.first_child(); at; at = at.next_sibling()) {
      if (at.type() != pugi::node_element) continue;
      const std::string_view end = reader.name_of(at).local;
      if (end == "position" || end == "beginPosition") {
        take_fitting(reader, inner, at, reader.trimmed(at), row.field);
      } else if (end == "endPosition") {
        inner.field = row.other;
        take_fitting(reader, inner, at, reader.trimmed(at), row.other);
      } else {
        reader.unknown(at);
      }
    }
  }
}

void new_snow(Reader& reader, const Row& row, const xml_node& node) {
  const std::string_view text = trim(node.attribute("dateTimeCleared").value());
  Moment cleared;
  const MomentRead read = parse_moment(text, cleared);
  if (read == MomentRead::no_moment) {
    reader.refuse(node, row.field, text, "dateTimeCleared is no date and no date with a time");
  } else {
    reader.member<std::unique_ptr<Moment>>(row.field) = std::make_unique<Moment>(cleared);
    if (read == MomentRead::cut)
      reader.note(NoticeKind::changed, node, "fractions of a second were left out");
  }
  reader.read_children(node, *row.type);
}

void position(Reader& reader, const Row& row, const xml_node& node) {
  const xml_node point = only_child(reader, node, "Point");
  if (!point) return;
  reader.read_id(point, reader.member<std::string>(firnbook::Site::VT_POINT_ID));
  const xml_node pos = only_child(reader, point, "pos");
  std::string_view rest = reader.trimmed(pos);
  const std::string_view whole = rest;
  const std::string_view frame = trim(point.attribute("srsName").value());
  // Elsewhere the order of the two numbers is another.
  if (!frame.empty() && frame != "urn:ogc:def:crs:OGC:1.3:CRS84") {
    return reader.refuse(pos, row.field, whole, "only CRS84 is read: longitude, then latitude, in degrees");
  }
  const std::string_view first = next_part(rest, ' ');
  rest = trim(rest);
  constexpr Unit kE7{1, 7};
  constexpr std::int64_t kQuarter = 900000000;
  std::int64_t longitude = 0;
  std::int64_t latitude = 0;
  const Reading east = parse_number(first, kE7, longitude);
  const Reading north = parse_number(rest, kE7, latitude);
  if (east > Reading::rounded || north > Reading::rounded || latitude < -kQuarter || latitude > kQuarter ||
      longitude < -2 * kQuarter || longitude > 2 * kQuarter) {
    return reader.refuse(pos, row.field, whole, "this is no longitude and latitude in degrees");
  }
  if (east == Reading::rounded || north == Reading::rounded) {
    reader.note(NoticeKind::changed, pos, "rounded to ten-millionths of a degree");
  }
  reader.set(row.field, latitude);
  reader.set(row.other, longitude);
}

}  // namespace firn::exchange::caaml::reading
