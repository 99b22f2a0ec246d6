// A cursor over one line of notes. What it cannot read it answers with what was expected, what stood there
// instead, and in which column.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

#include "support/result.h"

namespace firn::notation {

// A number in units of 10^-decimals. `rounded` when the line had finer digits than that.
struct Number {
  std::int64_t value = 0;
  bool rounded = false;
};

enum class LengthUnit : std::uint8_t { mm, cm, m, inch, foot };

struct Length {
  std::int32_t value_10um = 0;
  LengthUnit unit = LengthUnit::cm;
  bool unit_written = false;
  bool rounded = false;
};

// FIRN_BAD_UTF8 with the column where the line holds bytes that are not UTF-8, or control characters other
// than a tab. Everything else here may assume a readable line.
Done check_readable(std::string_view line);

// Text in quotes, whatever it holds: \" \\ \n \r \t, \u{7F} for another control character, and \xFF for a
// byte that is not UTF-8.
void append_quoted(std::string& out, std::string_view text);
// The escape at the start of `text`. Answers its length, 0 when it is none.
std::size_t read_escape(std::string_view text, std::string& out);

class Scanner {
 public:
  explicit Scanner(std::string_view line) : line_(line) {}

  std::string_view line() const { return line_; }
  std::string_view rest() const { return line_.substr(position_); }
  std::size_t position() const { return position_; }
  void seek(std::size_t position) { position_ = position; }
  // In characters, from 1.
  std::uint32_t column_of(std::size_t position) const;

  void skip_blanks();
  bool at_end();  // after blanks
  // The character after blanks; 0 at the end.
  char next();
  bool at_digit() { return next() >= '0' && next() <= '9'; }
  // A number may start here: 68, -0.5, .5
  bool at_number();
  // A quoted text may start here, in straight or in curly quotes; quoted() refuses the curly ones.
  bool at_quote();

  bool accept(char character);
  // Whole words in any case, with any blanks between them: "not valid". A word ends before a blank, the end,
  // or one of , ; : / ( ) " @
  bool accept(std::string_view words);
  // The characters up to a blank, the end, or one of , ; ( ) " @ ; empty at one of those.
  std::string_view peek_word();
  std::string_view take_word();
  // The same, letters only: the CT of CT12.
  std::string_view peek_letters();

  // `what` names the thing in a failure: "the air temperature in degrees". The bounds are in units of
  // 10^-decimals, both included. A decimal comma is refused: 17,5 could be two numbers.
  Result<Number> number(std::string_view what, int decimals, std::int64_t lowest, std::int64_t highest);
  Result<std::int64_t> whole(std::string_view what, std::int64_t lowest, std::int64_t highest);
  // With or without a unit: 68, 68 cm, 22in, 22" (an inch is 2.54 cm exactly).
  Result<Length> length(std::string_view what, LengthUnit assumed);
  Result<std::string> quoted(std::string_view what);
  // Numbers with / between them behind a word such as "moment=", each within its limits. False, and nothing
  // taken, when the word does not stand here.
  struct Limits {
    std::int64_t lowest, highest;
  };
  Result<bool> numbers(std::string_view word, const Limits* limits, std::size_t count, std::int64_t* values);

  // `expected a depth, found "deep"` at the present place.
  Failure expected(std::string_view what, std::string_view remedy = {});
  Failure failure_at(std::size_t position, std::string_view what, std::string_view remedy = {},
                     firn_status status = FIRN_NOTES_NOT_UNDERSTOOD) const;

 private:
  bool accept_one(std::string_view word);
  Done read_unit(Length& length);
  Failure out_of_range(std::string_view what, int decimals, std::int64_t lowest, std::int64_t highest,
                       std::size_t start) const;

  std::string_view line_;
  std::size_t position_ = 0;
  mutable std::size_t counted_to_ = 0;
  mutable std::uint32_t counted_column_ = 1;
};

}  // namespace firn::notation
