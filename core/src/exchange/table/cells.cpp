#include "exchange/table/cells.h"

#include "support/place.h"

namespace firn::exchange::table {
namespace {

constexpr std::string_view kReplacement = "\xEF\xBF\xBD";
// What makes a formula at the beginning of a cell: = + - @, and the wide forms that some spreadsheets take
// for them. The apostrophe is among them so that it can be told from ours. Source: OWASP, "CSV injection"
// (from memory); that a text can hold several beginnings is ours, for programs that part cells at semicolons
// or tabs.
constexpr std::string_view kStarts[] = {
    "=", "+", "-", "@", "'", "\xEF\xBC\x9D", "\xEF\xBC\x8B", "\xEF\xBC\x8D", "\xEF\xBC\xA0"};

bool begins_formula(std::string_view text) {
  for (const std::string_view start : kStarts) {
    if (text.substr(0, start.size()) == start) return true;
  }
  return false;
}

bool is_line_end_or_tab(char c) {
  return c == '\t' || c == '\r' || c == '\n';
}

bool is_control(char c) {
  return (static_cast<unsigned char>(c) < 0x20 && !is_line_end_or_tab(c)) || c == 0x7F;
}

bool must_be_quoted(std::string_view text) {
  if (text.empty()) return false;
  return text.find_first_of("\",;\t\r\n") != std::string_view::npos || text.front() == ' ' ||
         text.back() == ' ';
}

void append_two(std::string& out, std::int64_t value) {
  if (value < 10) out += '0';
  append_integer(out, value);
}

void append_offset(std::string& out, const firnbook::Moment& moment) {
  if (moment.offset_known() != 1) return;
  const int offset = moment.offset_min();
  const int size = offset < 0 ? -offset : offset;
  out += offset < 0 ? '-' : '+';
  append_two(out, size / 60);
  out += ':';
  append_two(out, size % 60);
}

// ISO 8601, as far as it is known.
std::string shown(const firnbook::Moment& moment) {
  using firnbook::TimePrecision;
  const TimePrecision precision = moment.precision();
  std::string out;
  if (precision == TimePrecision::none || precision > TimePrecision::second) return out;
  const CalendarTime time = calendar_time(moment.local_s());
  for (std::int64_t least = 1000; least > 1 && time.year >= 0 && time.year < least; least /= 10) out += '0';
  append_integer(out, time.year);
  const auto part = [&](TimePrecision finest, char before, int value) {
    if (precision < finest) return;
    out += before;
    append_two(out, value);
  };
  part(TimePrecision::month, '-', time.month);
  part(TimePrecision::day, '-', time.day);
  part(TimePrecision::minute, 'T', time.hour);
  part(TimePrecision::minute, ':', time.minute);
  part(TimePrecision::second, ':', time.second);
  if (precision >= TimePrecision::minute) append_offset(out, moment);
  return out;
}

}  // namespace

std::string harmless(std::string_view text, bool& changed) {
  std::string out;
  out.reserve(text.size() + 2);
  if (!text.empty() && is_line_end_or_tab(text[0])) out += '\'';
  bool may_begin = true;
  while (!text.empty()) {
    if (may_begin && begins_formula(text)) out += '\'';
    const char c = text[0];
    const std::size_t size = utf8_length(text);
    may_begin = c == ';' || is_line_end_or_tab(c) || (may_begin && c == ' ');
    if (size == 0 || is_control(c)) {
      changed = true;
      out += kReplacement;
    } else {
      out += text.substr(0, size);
    }
    text.remove_prefix(size == 0 ? 1 : size);
  }
  return out;
}

void Cells::begin() {
  if (!is_first_) out_ += ',';
  is_first_ = false;
}

void Cells::text(std::string_view text) {
  begin();
  const std::string cell = harmless(text, changed_);
  if (!must_be_quoted(cell)) {
    out_ += cell;
    return;
  }
  out_ += '"';
  for (const char c : cell) {
    if (c == '"') out_ += '"';
    out_ += c;
  }
  out_ += '"';
}

void Cells::code(std::string_view code, std::uint8_t number) {
  if (!code.empty()) return text(code);
  count(number);
}

void Cells::moment(const firnbook::Moment* moment) {
  text(moment == nullptr ? std::string() : shown(*moment));
}

void Cells::depth(const firnbook::Depth* depth) {
  if (depth == nullptr) {
    for (int i = 0; i < 3; ++i) empty();
    return;
  }
  number(depth->value_10um(), 3);
  code(depth->datum());
  code(depth->direction());
}

void Cells::marks(firnbook::Thing thing, std::uint64_t marks) {
  std::string names;
  for (std::uint16_t field = 0; field < 64; ++field) {
    if ((marks >> field & 1) == 0) continue;
    const std::string path = path_of(place_of(thing, 0, field, 0));
    const std::size_t name = path.rfind('.');
    if (!names.empty()) names += ' ';
    if (name != std::string::npos && path.back() != ']') {
      names += path.substr(name + 1);
    } else {
      append_unsigned(names, field);
    }
  }
  text(names);
}

void Cells::end_row() {
  out_ += "\r\n";
  is_first_ = true;
}

void fill_pit(Cells& cells, const firnbook::Pit& pit) {
  cells.text(pit.id() != nullptr && pit.id()->size() != 0 ? pit.id() : pit.title());
  cells.text(pit.title());
  cells.moment(pit.time() == nullptr ? nullptr : &pit.time()->begin());
}

}  // namespace firn::exchange::table
