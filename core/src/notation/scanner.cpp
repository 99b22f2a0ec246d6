#include "notation/scanner.h"

#include <algorithm>
#include <utility>

#include "support/text.h"
#include "vocabulary/codes.h"

namespace firn::notation {
namespace {

constexpr std::size_t kShownAtMost = 24;

bool is_digit(char character) {
  return character >= '0' && character <= '9';
}

bool is_letter(char character) {
  return (character >= 'a' && character <= 'z') || (character >= 'A' && character <= 'Z');
}

bool is_blank(char character) {
  return character == ' ' || character == '\t';
}

bool ends_word(char character) {
  return is_blank(character) || character == ',' || character == ';' || character == '(' ||
         character == ')' || character == '"' || character == '@';
}

bool is_control(std::string_view character) {
  const auto first = static_cast<unsigned char>(character[0]);
  // The C1 controls are C2 80 to C2 9F.
  return first < 0x20 || first == 0x7F || (first == 0xC2 && static_cast<unsigned char>(character[1]) < 0xA0);
}

// “ ” „ « » as phones put them in by themselves.
bool is_curly_quote(std::string_view text) {
  const std::string_view character = text.substr(0, 3);
  return character == "\xE2\x80\x9C" || character == "\xE2\x80\x9D" || character == "\xE2\x80\x9E" ||
         text.substr(0, 2) == "\xC2\xAB" || text.substr(0, 2) == "\xC2\xBB";
}

void append_shown(std::string& out, std::string_view text) {
  std::size_t length = 0;
  while (length < text.size()) {
    const std::size_t step = utf8_length(text.substr(length));
    if (step == 0 || length + step > kShownAtMost) break;
    length += step;
  }
  out.append(text.substr(0, length));
  if (length < text.size()) out += "...";
}

struct Digits {
  std::uint64_t value = 0;
  bool overflow = false;
  void add(std::uint64_t digit) {
    overflow = overflow || value > (UINT64_MAX - digit) / 10;
    if (!overflow) value = value * 10 + digit;
  }
  void add_all(std::string_view digits) {
    for (char digit : digits) add(static_cast<std::uint64_t>(digit - '0'));
  }
};

std::size_t digits_from(std::string_view text, std::size_t start) {
  std::size_t end = start;
  while (end < text.size() && is_digit(text[end])) ++end;
  return end - start;
}

// Half away from zero: of the digits that do not fit, the first decides.
bool to_value(bool negative, Digits digits, bool up, std::int64_t& value) {
  if (digits.overflow || digits.value >= std::uint64_t{INT64_MAX}) {
    // The smallest 64-bit number is the one whose magnitude does not fit.
    if (digits.overflow || up || digits.value > std::uint64_t{INT64_MAX} + (negative ? 1u : 0u)) return false;
    value = !negative ? INT64_MAX : digits.value == std::uint64_t{INT64_MAX} ? -INT64_MAX : INT64_MIN;
    return true;
  }
  value = static_cast<std::int64_t>(digits.value) + (up ? 1 : 0);
  if (negative) value = -value;
  return true;
}

struct UnitName {
  std::string_view name;
  LengthUnit unit;
};
constexpr UnitName kUnits[] = {
    {"cm", LengthUnit::cm},   {"mm", LengthUnit::mm},     {"m", LengthUnit::m},
    {"in", LengthUnit::inch}, {"inch", LengthUnit::inch}, {"inches", LengthUnit::inch},
    {"ft", LengthUnit::foot}, {"feet", LengthUnit::foot},
};

// One unit is `numerator` / 10^4 of 10 um for a number read with `decimals` digits: all of them exact.
struct UnitScale {
  int decimals;
  std::int64_t numerator;
};
UnitScale scale_of(LengthUnit unit) {
  switch (unit) {
    case LengthUnit::mm:
      return {2, 10000};
    case LengthUnit::cm:
      return {3, 10000};
    case LengthUnit::m:
      return {5, 10000};
    case LengthUnit::inch:  // 2.54 cm exactly
      return {4, 2540};
    case LengthUnit::foot:  // 12 inches
      return {4, 30480};
  }
  return {3, 10000};
}

}  // namespace

Done check_readable(std::string_view line) {
  const Scanner scanner(line);
  for (std::size_t i = 0; i < line.size();) {
    const std::size_t length = utf8_length(line.substr(i));
    if (length == 0) {
      return scanner.failure_at(i, "bytes that are not UTF-8", "save the notes as UTF-8", FIRN_BAD_UTF8);
    }
    if (line[i] != '\t' && is_control(line.substr(i, length))) {
      return scanner.failure_at(i, "a control character", "delete it and type the line again", FIRN_BAD_UTF8);
    }
    i += length;
  }
  return done();
}

namespace {

// The letters behind the backslash, and what they stand for.
constexpr char kEscapes[][2] = {{'"', '"'}, {'\\', '\\'}, {'n', '\n'}, {'r', '\r'}, {'t', '\t'}};
constexpr char kHexDigits[] = "0123456789ABCDEF";

int hex_value(char c) {
  if (is_digit(c)) return c - '0';
  if (c >= 'a' && c <= 'f') return c - 'a' + 10;
  return c >= 'A' && c <= 'F' ? c - 'A' + 10 : -1;
}

void append_byte(std::string& out, unsigned byte) {
  out += kHexDigits[byte >> 4 & 15];
  out += kHexDigits[byte & 15];
}

void append_control(std::string& out, unsigned code) {
  for (const auto& escape : kEscapes) {
    if (static_cast<unsigned>(escape[1]) != code) continue;
    out += '\\';
    out += escape[0];
    return;
  }
  out += "\\u{";
  append_byte(out, code);
  out += '}';
}

}  // namespace

void append_quoted(std::string& out, std::string_view text) {
  out += '"';
  while (!text.empty()) {
    const std::size_t length = utf8_length(text);
    if (length == 0) {
      out += "\\x";
      append_byte(out, static_cast<unsigned char>(text[0]));
    } else if (is_control(text)) {
      append_control(out, static_cast<unsigned char>(text[length - 1]));
    } else {
      if (text[0] == '"' || text[0] == '\\') out += '\\';
      out.append(text.substr(0, length));
    }
    text.remove_prefix(length == 0 ? 1 : length);
  }
  out += '"';
}

std::size_t read_escape(std::string_view text, std::string& out) {
  if (text.size() < 2) return 0;
  for (const auto& escape : kEscapes) {
    if (text[1] != escape[0]) continue;
    out += escape[1];
    return 2;
  }
  // \xFF is a byte; \u{85} a character, and two digits are enough for control characters.
  const bool is_byte = text[1] == 'x';
  const std::size_t digits = is_byte ? 2 : 3;
  const std::size_t length = digits + (is_byte ? 2 : 3);
  if (text.size() < length || (!is_byte && (text[1] != 'u' || text[2] != '{' || text[5] != '}'))) return 0;
  const int high = hex_value(text[digits]);
  const int low = hex_value(text[digits + 1]);
  if (high < 0 || low < 0) return 0;
  int code = high * 16 + low;
  if (!is_byte && code >= 0x80) {
    out += static_cast<char>(0xC0 | (code >> 6));
    code = 0x80 | (code & 0x3F);
  }
  out += static_cast<char>(code);
  return length;
}

// Counted on from the last place asked for: a line of a megabyte may ask at every number it rounds.
std::uint32_t Scanner::column_of(std::size_t position) const {
  if (position < counted_to_) {
    counted_to_ = 0;
    counted_column_ = 1;
  }
  for (; counted_to_ < position && counted_to_ < line_.size(); ++counted_to_) {
    if ((static_cast<unsigned char>(line_[counted_to_]) & 0xC0) != 0x80) ++counted_column_;
  }
  return counted_column_;
}

void Scanner::skip_blanks() {
  while (position_ < line_.size() && is_blank(line_[position_])) ++position_;
}

bool Scanner::at_end() {
  skip_blanks();
  return position_ == line_.size();
}

char Scanner::next() {
  return at_end() ? '\0' : line_[position_];
}

bool Scanner::at_number() {
  std::size_t i = at_end() ? position_ : position_ + (next() == '-' || next() == '+' ? 1 : 0);
  if (i < line_.size() && line_[i] == '.') ++i;
  return i < line_.size() && is_digit(line_[i]);
}

bool Scanner::at_quote() {
  return next() == '"' || is_curly_quote(rest());
}

bool Scanner::accept(char character) {
  if (next() != character || character == '\0') return false;
  ++position_;
  return true;
}

bool Scanner::accept_one(std::string_view word) {
  skip_blanks();
  if (!same_code(rest().substr(0, word.size()), word)) return false;
  const std::size_t after = position_ + word.size();
  const char next = after < line_.size() ? line_[after] : ' ';
  if (next != ':' && next != '/' && !ends_word(next)) return false;
  position_ = after;
  return true;
}

bool Scanner::accept(std::string_view words) {
  const std::size_t start = position_;
  while (!words.empty()) {
    const std::size_t blank = words.find(' ');
    if (!accept_one(words.substr(0, blank))) {
      position_ = start;
      return false;
    }
    words.remove_prefix(blank == std::string_view::npos ? words.size() : blank + 1);
  }
  return true;
}

std::string_view Scanner::peek_word() {
  skip_blanks();
  std::size_t end = position_;
  while (end < line_.size() && !ends_word(line_[end])) ++end;
  return line_.substr(position_, end - position_);
}

std::string_view Scanner::take_word() {
  const std::string_view word = peek_word();
  position_ += word.size();
  return word;
}

std::string_view Scanner::peek_letters() {
  skip_blanks();
  std::size_t end = position_;
  while (end < line_.size() && is_letter(line_[end])) ++end;
  return line_.substr(position_, end - position_);
}

Failure Scanner::failure_at(std::size_t position, std::string_view what, std::string_view remedy,
                            firn_status status) const {
  Failure failure = failure_of(status, what, remedy);
  failure.column = column_of(position);
  return failure;
}

Failure Scanner::expected(std::string_view what, std::string_view remedy) {
  std::string text = "expected ";
  text += what;
  if (at_end()) {
    text += ", found the end of the line";
  } else {
    std::string_view found = peek_word();
    if (found.empty()) found = rest().substr(0, utf8_length(rest()));
    text += ", found ";
    if (found == "\"") found = "a quotation mark";
    append_shown(text, found);
  }
  return failure_at(position_, std::move(text), std::string(remedy));
}

Result<Number> Scanner::number(std::string_view what, int decimals, std::int64_t lowest,
                               std::int64_t highest) {
  if (!at_number()) return expected(what);
  const std::size_t start = position_;
  const bool negative = line_[position_] == '-';
  if (negative || line_[position_] == '+') ++position_;
  const std::string_view whole = line_.substr(position_, digits_from(line_, position_));
  position_ += whole.size();
  std::string_view fraction;
  if (position_ < line_.size() && line_[position_] == '.') {
    ++position_;
    fraction = line_.substr(position_, digits_from(line_, position_));
    if (fraction.empty()) return expected("a digit after the decimal point");
    position_ += fraction.size();
  }
  if (position_ < line_.size() && line_[position_] == ',' && digits_from(line_, position_ + 1) > 0) {
    return failure_at(position_, "a comma inside a number",
                      "write a decimal point (17.5), or a blank after a comma between two numbers");
  }

  const std::string_view dropped =
      fraction.substr(std::min(fraction.size(), static_cast<std::size_t>(decimals)));
  fraction.remove_suffix(dropped.size());
  Digits digits;
  digits.add_all(whole);
  digits.add_all(fraction);
  for (std::size_t i = fraction.size(); i < static_cast<std::size_t>(decimals); ++i) digits.add(0);
  Number number;
  number.rounded = dropped.find_first_not_of('0') != std::string_view::npos;
  const bool up = !dropped.empty() && dropped[0] >= '5';
  if (to_value(negative, digits, up, number.value) && number.value >= lowest && number.value <= highest) {
    return number;
  }
  return out_of_range(what, decimals, lowest, highest, start);
}

Failure Scanner::out_of_range(std::string_view what, int decimals, std::int64_t lowest, std::int64_t highest,
                              std::size_t start) const {
  std::string text = "expected ";
  text += what;
  text += " from ";
  append_fixed(text, lowest, decimals);
  text += " to ";
  append_fixed(text, highest, decimals);
  text += ", found ";
  append_shown(text, line_.substr(start, position_ - start));
  return failure_at(start, std::move(text));
}

Result<std::int64_t> Scanner::whole(std::string_view what, std::int64_t lowest, std::int64_t highest) {
  const std::size_t start = position_;
  const Result<Number> number = this->number(what, 0, lowest, highest);
  if (!number) return number.failure();
  if (!number->rounded) return number->value;
  seek(start);
  return expected(std::string(what) + " as a whole number");
}

Result<Length> Scanner::length(std::string_view what, LengthUnit assumed) {
  if (!at_number()) return expected(what);
  const std::size_t start = position_;
  Length length;
  length.unit = assumed;
  // The unit stands behind the number but says how finely to read it.
  if (line_[position_] == '-' || line_[position_] == '+') ++position_;
  position_ += digits_from(line_, position_);
  if (position_ < line_.size() && line_[position_] == '.') {
    ++position_;
    position_ += digits_from(line_, position_);
  }
  const std::size_t number_end = position_;
  if (Done unit = read_unit(length); !unit) return unit.failure();
  const std::size_t unit_end = length.unit_written ? position_ : number_end;

  const UnitScale scale = scale_of(length.unit);
  position_ = start;
  // INT32_MAX of 10 um in the units that are read; a conversion is compared again below.
  const std::int64_t most = std::int64_t{INT32_MAX} * 10000 / scale.numerator;
  const Result<Number> number = this->number(what, scale.decimals, -most - 1, most);
  if (!number) return number.failure();
  position_ = unit_end;
  const std::int64_t scaled = number->value * scale.numerator;
  const std::int64_t rest = scaled % 10000;
  std::int64_t value = scaled / 10000;
  if (rest >= 5000) ++value;
  if (rest <= -5000) --value;
  if (value > INT32_MAX || value < INT32_MIN) return out_of_range(what, scale.decimals, -most, most, start);
  length.value_10um = static_cast<std::int32_t>(value);
  length.rounded = number->rounded || rest != 0;
  return length;
}

// An inch mark only where it touches the number: otherwise it opens somebody's words.
Done Scanner::read_unit(Length& length) {
  if (position_ < line_.size() && line_[position_] == '"') {
    ++position_;
    length.unit = LengthUnit::inch;
    length.unit_written = true;
    return done();
  }
  const bool touches = position_ < line_.size() && is_letter(line_[position_]);
  for (const UnitName& known : kUnits) {
    // M alone is a class of wind or wetness, not a metre.
    if (known.unit == LengthUnit::m && peek_word() != known.name) continue;
    if (!accept(known.name)) continue;
    length.unit = known.unit;
    length.unit_written = true;
    return done();
  }
  if (touches) return expected("a unit (cm, mm, m, in or ft) or a blank after the number");
  return done();
}

Result<std::string> Scanner::quoted(std::string_view what) {
  if (next() != '"') {
    return expected(what, is_curly_quote(rest()) ? "use straight quotation marks: \"" : "");
  }
  const std::size_t start = position_;
  std::string text;
  for (++position_; position_ < line_.size(); ++position_) {
    const char character = line_[position_];
    if (character == '"') {
      ++position_;
      return text;
    }
    if (character != '\\') {
      text += character;
      continue;
    }
    const std::size_t length = read_escape(rest(), text);
    if (length == 0) {
      return failure_at(position_, "a backslash that escapes nothing",
                        "write \\\\ for a backslash and \\\" for a quotation mark");
    }
    position_ += length - 1;
  }
  return failure_at(start, "a quotation mark that is never closed", "close the words with \"");
}

Result<bool> Scanner::numbers(std::string_view word, const Limits* limits, std::size_t count,
                              std::int64_t* values) {
  skip_blanks();
  if (!same_code(rest().substr(0, word.size()), word)) return false;
  position_ += word.size();
  for (std::size_t i = 0; i < count; ++i) {
    if (i > 0 && !accept('/')) return expected("/ and the next number");
    const Result<std::int64_t> value = whole("a number", limits[i].lowest, limits[i].highest);
    if (!value) return value.failure();
    values[i] = *value;
  }
  return true;
}

}  // namespace firn::notation
