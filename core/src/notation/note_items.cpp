#include "notation/note_items.h"

#include <memory>

#include "support/base64.h"
#include "support/text.h"

namespace firn::notation {
namespace {

using firnbook::Moment;
using firnbook::TimeSpan;

template <class T>
T& member_as(const Item& item, void* table) {
  return *static_cast<T*>(item.schema_field().in(table));
}
template <class T>
const T& member_as(const Item& item, const void* table) {
  return *static_cast<const T*>(item.schema_field().in(table));
}

CodeTable codes_of(const Item& item, const void* table) {
  return item.codes(table);
}

std::uint64_t bit_of(const Item& item) {
  return std::uint64_t{1} << item.field;
}

bool is_marked(const ItemTable& items, const Item& item, const void* table) {
  return items.has_mask() && (*items.mask(table) & bit_of(item)) != 0;
}

// Fields that may be marked here although no item stands for them: those of a newer schema, and the mask.
std::uint64_t rest_of(const ItemTable& items) {
  return items.has_mask() ? ~(fields_of(items) | items.elsewhere) : 0;
}
std::uint64_t marks_of_rest(const ItemTable& items, const void* table) {
  const std::uint64_t rest = rest_of(items);
  return rest == 0 ? 0 : *items.mask(table) & rest;
}

bool has_value(const Item& item, const void* table) {
  return form::holds(item.schema_field(), table);
}

// --- reading ---------------------------------------------------------------------------------------------

struct AgeUnit {
  std::string_view word;
  std::int64_t minutes;
};
constexpr AgeUnit kAgeUnits[] = {{"d", 1440}, {"h", 60}, {"min", 1}};

bool read_age(Line& line, const Item& item, std::int64_t& value) {
  const form::Range range = form::range_of(item.schema_field());
  if (!read_number(line, item.what, 0, range.least, range.most, value)) return false;
  for (const AgeUnit& unit : kAgeUnits) {
    if (!take_words(line, unit.word)) continue;
    if (value > range.most / unit.minutes || value < range.least / unit.minutes) {
      return line.expected("a shorter age");
    }
    value *= unit.minutes;
    return true;
  }
  return line.expected("the unit of the age", "write 30 min, 6 h or 2 d");
}

bool take_unit(Line& line, std::string_view unit) {
  if (unit.empty() || take_words(line, unit)) return true;
  constexpr std::string_view kDegree = "\xC2\xB0";
  if (unit != "deg" && unit != "C") return false;
  const std::size_t before = line.scan.position();
  line.scan.skip_blanks();
  std::size_t length = line.scan.rest().substr(0, kDegree.size()) == kDegree ? kDegree.size() : 0;
  if (length != 0 && unit == "C") {
    const std::size_t letter = match_words(line.scan.rest().substr(length), "C");
    length = letter == 0 ? 0 : length + letter;
  }
  line.scan.seek(length == 0 ? before : line.scan.position() + length);
  return length != 0;
}

bool read_scalar(Line& line, const Item& item, void* table) {
  std::int64_t value = 0;
  std::int32_t length = 0;
  std::uint8_t code = 0;
  const form::Range range = form::range_of(item.schema_field());
  switch (item.form) {
    case Form::number:
      if (!read_number(line, item.what, item.decimals, range.least, range.most, value)) return false;
      take_unit(line, item.unit);
      break;
    case Form::length:
      if (!read_length(line, item.what, item.length_unit, length)) return false;
      value = length;
      // The scanner takes no unit that a mark of doubt touches: 12 mm?
      take_unit(line, item.unit);
      break;
    case Form::age:
      if (!read_age(line, item, value)) return false;
      break;
    default:
      if (!read_code(line, codes_of(item, table), item.what, code)) return false;
      if (code > range.most) return line.expected(item.what);
      value = code;
      break;
  }
  form::set(item.schema_field(), table, value);
  return true;
}

bool read_text(Line& line, const Item& item, std::string& text) {
  if (line.scan.at_quote() || !item.loose) return read_quoted(line, item.what, text);
  line.scan.skip_blanks();
  const std::string_view rest = line.scan.rest();
  const std::size_t stop = item.whole_line ? std::string_view::npos : rest.find_first_of(",;()\"");
  std::string_view words = rest.substr(0, stop);
  while (!words.empty() && (words.back() == ' ' || words.back() == '\t')) words.remove_suffix(1);
  const bool cut_short = stop != std::string_view::npos && rest[stop] != ',' && rest[stop] != ')';
  if (words.empty() || cut_short) {
    return line.expected(item.what, "put words in quotes: \"like this\"");
  }
  text.assign(words);
  for (char& c : text) {
    if (c == '\t') c = ' ';
  }
  line.scan.seek(line.scan.position() + words.size());
  return true;
}

int hex_value(char c) {
  if (c >= '0' && c <= '9') return c - '0';
  if (c >= 'a' && c <= 'f') return c - 'a' + 10;
  return c >= 'A' && c <= 'F' ? c - 'A' + 10 : -1;
}

bool read_hex(Line& line, const Item& item, std::vector<std::uint8_t>& bytes) {
  line.scan.skip_blanks();
  const std::string_view word = line.scan.peek_word();
  bytes.clear();
  for (std::size_t i = 0; i + 1 < word.size(); i += 2) {
    const int high = hex_value(word[i]);
    const int low = hex_value(word[i + 1]);
    if (high < 0 || low < 0) return line.expected(item.what);
    bytes.push_back(static_cast<std::uint8_t>(high * 16 + low));
  }
  if (word.empty() || word.size() % 2 != 0) return line.expected(item.what, "write two digits for each byte");
  line.scan.seek(line.scan.position() + word.size());
  return true;
}

bool read_base64(Line& line, const Item& item, std::vector<std::uint8_t>& bytes) {
  const std::string_view word = line.scan.peek_word();
  bytes.clear();
  if (word.empty() || !parse_base64(word, bytes)) {
    return line.expected(item.what, "write the bytes as base64 (RFC 4648), with padding and without blanks");
  }
  line.scan.seek(line.scan.position() + word.size());
  return true;
}

template <class T, class Read>
bool read_object(Line& line, const Item& item, void* table, Read read) {
  T value;
  if (!read(line, item.what, value)) return false;
  member_as<std::unique_ptr<T>>(item, table) = std::make_unique<T>(value);
  return true;
}

bool read_present(Line& line, const Item& item, void* table) {
  switch (item.form) {
    case Form::text:
      return read_text(line, item, member_as<std::string>(item, table));
    case Form::hex:
      return read_hex(line, item, member_as<std::vector<std::uint8_t>>(item, table));
    case Form::base64:
      return read_base64(line, item, member_as<std::vector<std::uint8_t>>(item, table));
    case Form::moment:
      return read_object<Moment>(line, item, table, read_moment);
    case Form::span:
      return read_object<TimeSpan>(line, item, table, read_span);
    case Form::place:
      return read_object<firnbook::Place>(
          line, item, table,
          [](Line& at, std::string_view, firnbook::Place& place) { return read_place(at, place); });
    default:
      return read_scalar(line, item, table);
  }
}

// A code may be spelled U itself (blowing snow: unknown), and base64 may begin so; ~? is then the mark.
bool missing_here(Line& line, const Item& item, const void* table, Standing& standing) {
  const bool spelled_u = item.form == Form::text || item.form == Form::base64 ||
                         (item.form == Form::code && at_code(line, codes_of(item, table)));
  if (line.scan.next() == 'U' && spelled_u) return false;
  return take_missing(line, standing);
}

bool said_twice(Line& line, const Item& item, std::size_t position) {
  std::string what = "this line says ";
  what += item.what;
  what += " twice";
  return line.fail(line.scan.failure_at(position, what, "leave one of the two out", FIRN_NOTES_CONTRADICT));
}

}  // namespace

bool read_value(Line& line, const ItemTable& items, const Item& item, void* table, std::uint64_t& seen) {
  line.scan.skip_blanks();
  const std::size_t start = line.scan.position();
  if ((seen & bit_of(item)) != 0) return said_twice(line, item, start);
  Standing standing;
  if (!missing_here(line, item, table, standing)) {
    if (!read_present(line, item, table)) return false;
    take_doubt(line, standing);
  }
  if (standing.unreliable) {
    if (!items.has_mask()) {
      return line.fail(line.scan.failure_at(start, "expected a value without a mark of doubt",
                                            "say the doubt in a remark"));
    }
    *items.mask(table) |= bit_of(item);
  }
  seen |= bit_of(item);
  return true;
}

namespace {

// The unit behind the number at the cursor, which tells what a bare number is about.
std::string_view unit_ahead(Line& line) {
  const std::string_view rest = line.scan.rest();
  std::size_t at = 0;
  while (at < rest.size() &&
         (rest[at] == '-' || rest[at] == '+' || rest[at] == '.' || (rest[at] >= '0' && rest[at] <= '9'))) {
    ++at;
  }
  while (at < rest.size() && (rest[at] == ' ' || rest[at] == '\t')) ++at;
  return rest.substr(at);
}

bool fits_unit(const Item& item, std::string_view ahead) {
  if (item.form == Form::length) {
    for (const std::string_view unit : {"mm", "cm", "m", "in", "ft"}) {
      if (match_words(ahead, unit) != 0) return true;
    }
    return false;
  }
  constexpr std::string_view kDegree = "\xC2\xB0";
  const std::string_view unit = item.printed_unit();
  if (unit == "deg" && ahead.substr(0, kDegree.size()) == kDegree) return true;
  return !unit.empty() && match_words(ahead, unit) != 0;
}

const Item* find_bare(Line& line, const ItemTable& items, std::string_view lead, const void* table,
                      std::uint64_t seen) {
  const bool quote = line.scan.at_quote();
  const char next = line.scan.next();
  const bool number = (next >= '0' && next <= '9') || next == '-' || next == '+';
  const std::string_view ahead = number ? unit_ahead(line) : std::string_view{};
  for (const Item& item : items) {
    // wind S S: strong, from the south. What was said is not meant again, unless nothing else fits.
    if (!item.bare || item.lead != lead || (!lead.empty() && (seen & bit_of(item)) != 0)) continue;
    if (item.form == Form::text && quote) return &item;
    if ((item.form == Form::number || item.form == Form::length) && number && fits_unit(item, ahead))
      return &item;
    if (item.form == Form::code && !quote && at_code(line, codes_of(item, table))) return &item;
  }
  return nullptr;
}

// The longest key (or lead) that stands at the cursor.
const Item* find_key(Line& line, const ItemTable& items, std::string_view lead, std::size_t& length) {
  const Item* found = nullptr;
  length = 0;
  const std::string_view rest = line.scan.rest();
  for (const Item& item : items) {
    const std::string_view word = lead.empty() && !item.lead.empty() ? item.lead : item.key;
    if (word.empty() || item.lead != (lead.empty() ? item.lead : lead)) continue;
    const std::size_t matched = match_words(rest, word);
    if (matched > length) {
      length = matched;
      found = &item;
    }
  }
  return found;
}

bool read_led(Line& line, const ItemTable& items, std::string_view lead, void* table, std::uint64_t& seen) {
  bool any = false;
  for (;;) {
    line.scan.skip_blanks();
    std::size_t length = 0;
    const Item* item = find_key(line, items, lead, length);
    if (item != nullptr) {
      line.scan.seek(line.scan.position() + length);
    } else {
      item = find_bare(line, items, lead, table, seen);
    }
    if (item == nullptr) break;
    if (!read_value(line, items, *item, table, seen)) return false;
    any = true;
  }
  if (any) return true;
  for (const Item& item : items) {
    if (item.lead == lead && item.main_of_lead) return read_value(line, items, item, table, seen);
  }
  return line.expected("a value");
}

bool unknown_item(Line& line, const ItemTable& items) {
  std::string remedy = "known here:";
  std::string_view last;
  for (const Item& item : items) {
    const std::string_view word = item.lead.empty() ? item.key : item.lead;
    if (word.empty() || word == last) continue;
    remedy += remedy.back() == ':' ? " " : ", ";
    remedy += word;
    last = word;
  }
  std::string bare;
  for (const Item& item : items) {
    if (!item.bare || !item.lead.empty()) continue;
    bare += bare.empty() ? "" : ", ";
    bare += item.what;
  }
  if (bare.empty()) bare = "one of the values of this line";
  return line.expected(bare, remedy.back() == ':' ? std::string_view{} : std::string_view(remedy));
}

const Item* find_loose(const ItemTable& items) {
  for (const Item& item : items) {
    if (item.bare && item.loose) return &item;
  }
  return nullptr;
}

}  // namespace

bool read_item(Line& line, const ItemTable& items, void* table, std::uint64_t& seen) {
  const std::uint64_t rest = rest_of(items);
  if (rest != 0 && at_marks(line)) return read_marks(line, rest, *items.mask(table));
  line.scan.skip_blanks();
  std::size_t length = 0;
  const Item* item = find_key(line, items, {}, length);
  if (item != nullptr) {
    line.scan.seek(line.scan.position() + length);
    if (!item->lead.empty()) return read_led(line, items, item->lead, table, seen);
    return read_value(line, items, *item, table, seen);
  }
  item = find_bare(line, items, {}, table, seen);
  if (item == nullptr) item = find_loose(items);
  if (item == nullptr) return unknown_item(line, items);
  return read_value(line, items, *item, table, seen);
}

bool read_items(Line& line, const ItemTable& items, void* table, char closing) {
  std::uint64_t seen = 0;
  bool first = items.first_is_main;
  for (;;) {
    const bool read =
        first ? read_value(line, items, items.items[0], table, seen) : read_item(line, items, table, seen);
    if (!read) return false;
    first = false;
    if (closing != '\0' ? line.scan.next() == closing : line.scan.at_end()) return true;
    if (!line.scan.accept(',')) {
      return line.expected(closing == '\0' ? "a comma or the end of the line"
                                           : "a comma or a closing bracket");
    }
  }
}

// --- printing --------------------------------------------------------------------------------------------

namespace {

void append_age(std::string& out, std::int64_t value) {
  for (const AgeUnit& unit : kAgeUnits) {
    if (value % unit.minutes != 0 || (value == 0 && unit.minutes != 1)) continue;
    append_integer(out, value / unit.minutes);
    out += ' ';
    out += unit.word;
    return;
  }
}

// Words that read back unquoted to the end of the line.
bool is_plain(std::string_view text) {
  if (text.empty() || text.front() == ' ' || text.back() == ' ' || text.front() == '"' ||
      text.front() == '~' || text.substr(0, 3) == "\xE2\x80\x9C") {
    return false;
  }
  while (!text.empty()) {
    const std::size_t length = utf8_length(text);
    const auto first = static_cast<unsigned char>(text[0]);
    const bool control =
        first < 0x20 || first == 0x7F || (first == 0xC2 && static_cast<unsigned char>(text[1]) < 0xA0);
    if (length == 0 || control) return false;
    text.remove_prefix(length);
  }
  return true;
}

void append_text(const Item& item, std::string& out, const std::string& text, bool marked) {
  if (item.whole_line && !marked && is_plain(text)) {
    out += text;
  } else {
    append_quoted(out, text);
  }
}

void append_hex(std::string& out, const std::vector<std::uint8_t>& bytes) {
  constexpr char kDigits[] = "0123456789abcdef";
  for (const std::uint8_t byte : bytes) {
    out += kDigits[byte >> 4];
    out += kDigits[byte & 15];
  }
}

void append_scalar(std::string& out, const Item& item, const void* table) {
  std::int64_t value = 0;
  form::get(item.schema_field(), table, value);
  switch (item.form) {
    case Form::number:
      append_fixed(out, value, item.decimals);
      break;
    case Form::length:
      append_length(out, value, item.length_unit);
      break;
    case Form::age:
      append_age(out, value);
      return;
    default:
      append_code(out, codes_of(item, table), static_cast<std::uint8_t>(value));
      return;
  }
  if (item.printed_unit().empty()) return;
  out += ' ';
  out += item.unit;
}

void append_present(std::string& out, const Item& item, const void* table, bool marked) {
  switch (item.form) {
    case Form::text:
      return append_text(item, out, member_as<std::string>(item, table), marked);
    case Form::moment:
      return append_moment(out, *member_as<std::unique_ptr<Moment>>(item, table));
    case Form::span:
      return append_span(out, *member_as<std::unique_ptr<TimeSpan>>(item, table));
    case Form::place:
      return append_place(out, *member_as<std::unique_ptr<firnbook::Place>>(item, table));
    case Form::hex:
      return append_hex(out, member_as<std::vector<std::uint8_t>>(item, table));
    case Form::base64: {
      const auto& bytes = member_as<std::vector<std::uint8_t>>(item, table);
      return append_base64(out, bytes.data(), bytes.size());
    }
    default:
      return append_scalar(out, item, table);
  }
}

}  // namespace

bool has_item(const ItemTable& items, const Item& item, const void* table) {
  return has_value(item, table) || is_marked(items, item, table);
}

bool has_any(const ItemTable& items, const void* table) {
  for (const Item& item : items) {
    if (has_item(items, item, table)) return true;
  }
  return marks_of_rest(items, table) != 0;
}

void append_value(std::string& out, const ItemTable& items, const Item& item, const void* table) {
  const bool marked = is_marked(items, item, table);
  if (has_value(item, table)) {
    append_present(out, item, table, marked);
  } else {
    out += '~';
  }
  if (marked) out += '?';
}

namespace {

// A bare value that is not there, or that is no known code, cannot be told by its looks.
bool told_by_looks(const Item& item, const void* table) {
  std::int64_t value = 0;
  if (!item.bare || item.key_printed || !has_value(item, table)) return false;
  if (item.form != Form::code || !form::get(item.schema_field(), table, value)) return true;
  return !find_code(codes_of(item, table), static_cast<std::uint8_t>(value)).empty();
}

}  // namespace

bool append_items(std::string& out, const ItemTable& items, const void* table, std::string_view separator) {
  bool any = false;
  std::string_view lead;
  for (const Item& item : items) {
    const bool main = items.first_is_main && &item == items.items;
    if (!main && !has_item(items, item, table)) continue;
    if (any) out += !item.lead.empty() && item.lead == lead ? std::string_view(" ") : separator;
    if (!item.lead.empty() && item.lead != lead) {
      out += item.lead;
      out += ' ';
    }
    lead = item.lead;
    if (!main && !told_by_looks(item, table) && !item.key.empty()) {
      out += item.key;
      out += ' ';
    }
    append_value(out, items, item, table);
    any = true;
  }
  const std::uint64_t marks = marks_of_rest(items, table);
  if (marks == 0) return any;
  if (any) out += separator;
  append_marks(out, marks);
  return true;
}

std::uint64_t fields_of(const ItemTable& items) {
  std::uint64_t fields = 0;
  for (const Item& item : items) fields |= bit_of(item);
  return fields;
}

// --- joining ---------------------------------------------------------------------------------------------

namespace {

// Compared as they print: what prints alike reads alike.
bool same_value(const ItemTable& items, const Item& item, const void* a, const void* b) {
  std::string first;
  std::string second;
  append_value(first, items, item, a);
  append_value(second, items, item, b);
  return first == second;
}

bool contradiction(Line& line, const Item& item, std::uint32_t earlier) {
  std::string what = "lines ";
  append_integer(what, earlier);
  what += " and ";
  append_integer(what, line.number);
  what += " contradict each other about ";
  what += item.what;
  return line.fail(line.scan.failure_at(0, what, "keep the line that is right", FIRN_NOTES_CONTRADICT));
}

}  // namespace

bool merge_items(Line& line, const ItemTable& items, void* from, void* to, std::uint32_t* lines) {
  bool agree = true;
  for (const Item& item : items) {
    if (!agree || lines[item.field] == 0 || !has_item(items, item, from)) continue;
    agree = same_value(items, item, from, to);
    if (!agree) {
      contradiction(line, item, lines[item.field]);
    } else {
      std::string what = "says the same as line ";
      append_integer(what, lines[item.field]);
      line.remark(0, what);
    }
  }
  for (const Item& item : items) {
    if (has_item(items, item, from) && agree) {
      if (is_marked(items, item, from)) *items.mask(to) |= bit_of(item);
      if (has_value(item, from)) form::swap(item.schema_field(), to, from);
      lines[item.field] = line.number;
    }
    form::wipe(item.schema_field(), from);
    if (items.has_mask()) *items.mask(from) &= ~bit_of(item);
  }
  if (const std::uint64_t marks = marks_of_rest(items, from)) {
    if (agree) *items.mask(to) |= marks;
    *items.mask(from) &= ~marks;
  }
  return agree;
}

}  // namespace firn::notation
