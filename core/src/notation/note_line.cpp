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

bool at_mark(Line& line) {
  return line.scan.next() == '?' && digit_at(line.scan.rest(), 1);
}

bool at_marks(Line& line) {
  const std::size_t start = line.scan.position();
  const bool found = take_words(line, "unreliable") && at_mark(line);
  line.scan.seek(start);
  return found;
}

bool read_mark(Line& line, std::uint64_t allowed, std::uint64_t& mask) {
  constexpr std::string_view kWhat = "the number of a field";
  line.scan.accept('?');
  const std::size_t start = line.scan.position();
  std::int64_t field = 0;
  if (!read_number(line, kWhat, 0, 0, 63, field)) return false;
  if ((allowed >> field & 1) == 0) {
    line.scan.seek(start);
    return line.expected("the number of a field that is not on this line",
                         "put the ? right behind the value, or behind ~ when there is none");
  }
  mask |= std::uint64_t{1} << field;
  return true;
}

bool read_marks(Line& line, std::uint64_t allowed, std::uint64_t& mask) {
  take_words(line, "unreliable");
  while (at_mark(line)) {
    if (!read_mark(line, allowed, mask)) return false;
  }
  return true;
}

void append_marks(std::string& out, std::uint64_t marks) {
  out += "unreliable";
  for (std::int64_t field = 0; field < 64; ++field) {
    if ((marks >> field & 1) == 0) continue;
    out += " ?";
    append_integer(out, field);
  }
}

}  // namespace firn::notation
