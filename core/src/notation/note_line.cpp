#include "notation/note_line.h"

#include "support/text.h"

namespace firn::notation {
namespace {

constexpr std::string_view kOpenQuote = "\xE2\x80\x9C";
constexpr std::string_view kCloseQuote = "\xE2\x80\x9D";

char lower(char c) {
  return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

std::size_t blanks(std::string_view text, std::size_t at) {
  std::size_t count = 0;
  while (at + count < text.size() && (text[at + count] == ' ' || text[at + count] == '\t')) ++count;
  return count;
}

// More than these nobody reads, and what they hold must not grow without bound (ours).
constexpr std::size_t kMostRemarks = 10000;

}  // namespace

void Line::remark(std::size_t position, std::string_view what) {
  if (remarks == nullptr || remarks->size() >= kMostRemarks) return;
  if (position < counted_) {
    counted_ = 0;
    column_ = 1;
  }
  column_ += Scanner(scan.line().substr(counted_)).column_of(position - counted_) - 1;
  counted_ = position;
  Failure said = failure_of(FIRN_OK, what, {});
  said.line = number;
  said.column = column_;
  remarks->push_back(std::move(said));
}

bool ends_word(std::string_view text, std::size_t at) {
  if (at >= text.size()) return true;
  switch (text[at]) {
    case ' ':
    case '\t':
    case ',':
    case ';':
    case ':':
    case '(':
    case ')':
    case '"':
    case '?':
    case '/':
      return true;
    default:
      return false;
  }
}

bool take_dash(Line& line) {
  constexpr std::string_view kEnDash = "\xE2\x80\x93";
  const std::string_view rest = line.scan.rest();
  const std::size_t length = starts_with(rest, "-") ? 1 : starts_with(rest, kEnDash) ? kEnDash.size() : 0;
  line.scan.seek(line.scan.position() + length);
  return length != 0;
}

bool take_missing(Line& line, Standing& standing) {
  line.scan.skip_blanks();
  const std::string_view rest = line.scan.rest();
  if (rest.empty() || (rest[0] != '~' && rest[0] != 'U') || !ends_word(rest, 1)) return false;
  line.scan.seek(line.scan.position() + 1);
  standing.present = false;
  standing.unreliable = rest[0] == 'U';
  take_doubt(line, standing);
  return true;
}

void take_doubt(Line& line, Standing& standing) {
  const std::string_view rest = line.scan.rest();
  if (rest.empty() || rest[0] != '?') return;
  line.scan.seek(line.scan.position() + 1);
  standing.unreliable = true;
}

std::size_t match_words(std::string_view text, std::string_view words) {
  std::size_t at = 0;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (words[i] == ' ') {
      const std::size_t gap = blanks(text, at);
      if (gap == 0) return 0;
      at += gap;
    } else if (at < text.size() && lower(text[at]) == lower(words[i])) {
      ++at;
    } else {
      return 0;
    }
  }
  return ends_word(text, at) ? at : 0;
}

bool take_words(Line& line, std::string_view words) {
  const std::size_t before = line.scan.position();
  line.scan.skip_blanks();
  const std::size_t length = match_words(line.scan.rest(), words);
  if (length == 0) {
    line.scan.seek(before);
    return false;
  }
  line.scan.seek(line.scan.position() + length);
  return true;
}

namespace {

// Walks over the codes of one table in search of the longest that stands at the start of a text. Among codes
// of one length the exact spelling wins; two that differ in case only, and are both spelled otherwise, are
// ambiguous.
class CodeSearch {
 public:
  explicit CodeSearch(std::string_view rest) : rest_(rest), first_(rest.empty() ? '\0' : lower(rest[0])) {}

  void consider(std::string_view code, std::uint8_t value) {
    // Nearly all codes end here.
    if (code.empty() || lower(code[0]) != first_) return;
    const std::size_t length = match_words(rest_, code);
    if (length == 0 || length < length_) return;
    const bool exact = rest_.substr(0, length) == code;
    if (length == length_ && !exact) {
      ambiguous_ = ambiguous_ || (!exact_ && value != value_);
      return;
    }
    if (length == length_ && exact_) return;
    length_ = length;
    value_ = value;
    exact_ = exact;
    ambiguous_ = false;
  }

  std::size_t length() const { return ambiguous_ ? 0 : length_; }
  std::uint8_t value() const { return value_; }

 private:
  std::string_view rest_;
  char first_;
  std::size_t length_ = 0;
  std::uint8_t value_ = 0;
  bool exact_ = false;
  bool ambiguous_ = false;
};

std::size_t find_code_at(std::string_view rest, const CodeTable& table, std::uint8_t& value) {
  CodeSearch codes(rest);
  for (const Code& code : table) codes.consider(code.code, code.value);
  CodeSearch synonyms(rest);
  for (std::size_t i = 0; i < table.synonym_count; ++i) {
    const Synonym& synonym = table.synonyms[i];
    // The - of thin cloud needs no blank behind it.
    if (synonym.code == "-" && starts_with(rest, "-") && codes.length() == 0) {
      value = synonym.value;
      return 1;
    }
    synonyms.consider(synonym.code, synonym.value);
  }
  const CodeSearch& found = synonyms.length() > codes.length() ? synonyms : codes;
  value = found.value();
  return found.length();
}

}  // namespace

bool at_code(Line& line, const CodeTable& table) {
  line.scan.skip_blanks();
  std::uint8_t ignored = 0;
  return find_code_at(line.scan.rest(), table, ignored) != 0;
}

bool read_code(Line& line, const CodeTable& table, std::string_view what, std::uint8_t& value) {
  line.scan.skip_blanks();
  const std::string_view rest = line.scan.rest();
  if (rest.size() > 1 && rest[0] == '?' && digit_at(rest, 1)) {
    line.scan.seek(line.scan.position() + 1);
    std::int64_t number = 0;
    if (!read_number(line, what, 0, 0, 255, number)) return false;
    value = static_cast<std::uint8_t>(number);
    return true;
  }
  const std::size_t length = find_code_at(rest, table, value);
  if (length == 0) return line.expected(what);
  line.scan.seek(line.scan.position() + length);
  return true;
}

void append_code(std::string& out, const CodeTable& table, std::uint8_t value) {
  const std::string_view code = find_code(table, value);
  if (!code.empty()) {
    out += code;
    return;
  }
  out += '?';
  append_integer(out, value);
}

namespace {

// The scanner takes .5 for a number; here it could be 0.5 or 2.5 with a digit lost.
bool check_number_shape(Line& line, std::string_view what) {
  line.scan.skip_blanks();
  const std::string_view rest = line.scan.rest();
  const std::size_t at = !rest.empty() && (rest[0] == '-' || rest[0] == '+') ? 1 : 0;
  if (!digit_at(rest, at)) return line.expected(what, "begin a number with a digit: 0.5");
  return true;
}

}  // namespace

bool read_number(Line& line, std::string_view what, int decimals, std::int64_t lowest, std::int64_t highest,
                 std::int64_t& value) {
  if (!check_number_shape(line, what)) return false;
  const std::size_t start = line.scan.position();
  const Result<Number> number = line.scan.number(what, decimals, lowest, highest);
  if (!number) return line.fail(number.failure());
  value = number->value;
  if (number->rounded) {
    std::string said = "stored as ";
    append_fixed(said, value, decimals);
    said += ": the record holds no finer steps";
    line.remark(start, std::move(said));
  }
  return true;
}

bool read_length(Line& line, std::string_view what, LengthUnit assumed, std::int32_t& value_10um) {
  if (!check_number_shape(line, what)) return false;
  const std::size_t start = line.scan.position();
  const Result<Length> length = line.scan.length(what, assumed);
  if (!length) return line.fail(length.failure());
  value_10um = length->value_10um;
  const bool converted = length->unit == LengthUnit::inch || length->unit == LengthUnit::foot;
  if (length->rounded || converted) {
    std::string said = converted ? "converted and stored as " : "rounded and stored as ";
    append_length(said, value_10um, assumed);
    said += ' ';
    said += unit_word(assumed);
    line.remark(start, std::move(said));
  }
  return true;
}

void append_length(std::string& out, std::int64_t value_10um, LengthUnit unit) {
  append_fixed(out, value_10um, unit == LengthUnit::m ? 5 : unit == LengthUnit::mm ? 2 : 3);
}

std::string_view unit_word(LengthUnit unit) {
  switch (unit) {
    case LengthUnit::mm:
      return "mm";
    case LengthUnit::cm:
      return "cm";
    case LengthUnit::m:
      return "m";
    case LengthUnit::inch:
      return "in";
    case LengthUnit::foot:
      return "ft";
  }
  return "";
}

namespace {

int hex_digit(char c) {
  if (c >= '0' && c <= '9') return c - '0';
  const char small = lower(c);
  return small >= 'a' && small <= 'f' ? small - 'a' + 10 : -1;
}

// Only control characters are written this way, so two digits are enough: \u{7F}, \u{85}.
std::size_t read_code_point(std::string_view text, std::string& out) {
  if (text.size() < 6 || text[2] != '{' || text[5] != '}') return 0;
  const int high = hex_digit(text[3]);
  const int low = hex_digit(text[4]);
  if (high < 0 || low < 0) return 0;
  const int code = high * 16 + low;
  if (code >= 0x80) out += static_cast<char>(0xC0 | (code >> 6));
  out += static_cast<char>(code >= 0x80 ? 0x80 | (code & 0x3F) : code);
  return 6;
}

// Length of the escape at the start of `text`, 0 when it is none.
std::size_t read_escape(std::string_view text, std::string& out) {
  if (text.size() < 2) return 0;
  switch (text[1]) {
    case '"':
      out += '"';
      return 2;
    case '\\':
      out += '\\';
      return 2;
    case 'n':
      out += '\n';
      return 2;
    case 'r':
      out += '\r';
      return 2;
    case 't':
      out += '\t';
      return 2;
    case 'u':
      return read_code_point(text, out);
    default:
      return 0;
  }
}

void append_control(std::string& out, unsigned code) {
  constexpr char kDigits[] = "0123456789ABCDEF";
  if (code == '\n') {
    out += "\\n";
  } else if (code == '\r') {
    out += "\\r";
  } else if (code == '\t') {
    out += "\\t";
  } else {
    out += "\\u{";
    out += kDigits[code >> 4 & 15];
    out += kDigits[code & 15];
    out += '}';
  }
}

}  // namespace

bool read_quoted(Line& line, std::string_view what, std::string& out) {
  line.scan.skip_blanks();
  const std::string_view rest = line.scan.rest();
  const bool curly = starts_with(rest, kOpenQuote);
  if (!curly && !starts_with(rest, "\""))
    return line.expected(what, "put the words in quotes: \"like this\"");
  const std::size_t start = line.scan.position();
  std::size_t at = curly ? kOpenQuote.size() : 1;
  const std::string_view stops = curly ? "\\\xE2" : "\\\"";
  out.clear();
  for (;;) {
    const std::size_t stop = rest.find_first_of(stops, at);
    if (stop == std::string_view::npos) {
      return line.fail(line.scan.failure_at(start, "expected a closing quote for the quote that opens here",
                                            "end the words with a quote, on the same line"));
    }
    out.append(rest.substr(at, stop - at));
    at = stop;
    if (rest[at] == '\\') {
      const std::size_t length = read_escape(rest.substr(at), out);
      if (length == 0) {
        return line.fail(
            line.scan.failure_at(start + at, "expected an escape after the backslash",
                                 "write \\\\ for a backslash, \\\" for a quote, \\n for a new line"));
      }
      at += length;
    } else if (!curly || starts_with(rest.substr(at), kCloseQuote)) {
      line.scan.seek(start + at + (curly ? kCloseQuote.size() : 1));
      return true;
    } else {
      out += rest[at++];
    }
  }
}

bool append_quoted_text(std::string& out, std::string_view text) {
  bool exact = true;
  out += '"';
  while (!text.empty()) {
    const std::size_t length = utf8_length(text);
    const auto first = static_cast<unsigned char>(text[0]);
    if (length == 0) {
      out += "\xEF\xBF\xBD";
      exact = false;
    } else if (first == '"' || first == '\\') {
      out += '\\';
      out += text[0];
    } else if (first < 0x20 || first == 0x7F) {
      append_control(out, first);
    } else if (first == 0xC2 && static_cast<unsigned char>(text[1]) < 0xA0) {
      append_control(out, static_cast<unsigned char>(text[1]));
    } else {
      out.append(text.substr(0, length));
    }
    text.remove_prefix(length == 0 ? 1 : length);
  }
  out += '"';
  return exact;
}

}  // namespace firn::notation
