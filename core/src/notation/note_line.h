// One line of field notes while it is read, and the values that every kind of line is made of: marks,
// quoted words, numbers, moments, places. Each read_… has an append_… that prints what it reads.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "notation/raw_values.h"
#include "notation/scanner.h"
#include "schemas/pit_generated.h"
#include "vocabulary/codes.h"

namespace firn::notation {

// Functions that read from a Line answer false when they failed; `failure` then says why.
struct Line {
  Line(std::string_view text, std::uint32_t line_number, std::vector<Failure>* said)
      : scan(text), number(line_number), remarks(said) {}

  Scanner scan;
  std::uint32_t number;
  std::vector<Failure>* remarks;
  Failure failure{};

  bool fail(Failure why) {
    failure = std::move(why);
    return false;
  }
  bool expected(std::string_view what, std::string_view remedy = {}) {
    return fail(scan.expected(what, remedy));
  }
  // Something was changed while it was read, such as a rounding: said, not refused.
  void remark(std::size_t position, std::string_view what);

 private:
  // Columns are counted on from the last remark: a line of many roundings stays linear.
  std::size_t counted_ = 0;
  std::uint32_t column_ = 1;
};

// Whether a word ends at this position: at a blank, a bracket, a comma and the like, or the end.
bool ends_word(std::string_view text, std::size_t at);
inline bool digit_at(std::string_view text, std::size_t at) {
  return at < text.size() && text[at] >= '0' && text[at] <= '9';
}
inline bool starts_with(std::string_view text, std::string_view start) {
  return text.substr(0, start.size()) == start;
}
// Takes a dash, as typed or as a phone makes it.
bool take_dash(Line& line);

// How a value stands on the line:  4F  seen;  4F?  seen, but not to be leaned on;  ~  not observed;
// U or ~?  tried, and nothing came of it that can be relied on.
struct Standing {
  bool present = true;
  bool unreliable = false;
};
// Takes ~, ~? or U. True when one of them stood in the place of the value.
bool take_missing(Line& line, Standing& standing);
// Takes the ? directly behind a value.
void take_doubt(Line& line, Standing& standing);

// Length of `words` at the start of `text`: any case, any blanks between them, ending where a word ends.
// 0 when they are not there.
std::size_t match_words(std::string_view text, std::string_view words);
bool take_words(Line& line, std::string_view words);

// The longest code of the table at the cursor; ?77 stands for a number this library has no code for.
bool at_code(Line& line, const CodeTable& table);
bool read_code(Line& line, const CodeTable& table, std::string_view what, std::uint8_t& value);
void append_code(std::string& out, const CodeTable& table, std::uint8_t value);

// A number in units of 10^-decimals within the bounds; roundings are remarked.
bool read_number(Line& line, std::string_view what, int decimals, std::int64_t lowest, std::int64_t highest,
                 std::int64_t& value);
bool read_length(Line& line, std::string_view what, LengthUnit assumed, std::int32_t& value_10um);
void append_length(std::string& out, std::int64_t value_10um, LengthUnit unit);
std::string_view unit_word(LengthUnit unit);

// Words in quotes with the escapes of append_quoted; curly quotes are read too.
bool read_quoted(Line& line, std::string_view what, std::string& out);

// Marks of doubt for fields that have no value of their own to stand behind: unreliable ?40 ?41.
bool at_marks(Line& line);
// What is behind the word. Only bits of `allowed`.
bool read_marks(Line& line, std::uint64_t allowed, std::uint64_t& mask);
// Reads or prints one of them.
bool at_mark(Line& line);
bool read_mark(Line& line, std::uint64_t allowed, std::uint64_t& mask);
void append_marks(std::string& out, std::uint64_t marks);

// 2026, 2026-11, 2026-11-28, 2026-11-28T10:05 and ...T10:05:30, each with or without Z or -07:00.
bool read_moment(Line& line, std::string_view what, firnbook::Moment& moment);
// A moment, or "BEGIN to END"; an END such as 12:40 is on the same day.
bool read_span(Line& line, std::string_view what, firnbook::TimeSpan& span);
// The date of a layer's name: 270102, or any moment.
bool read_name_date(Line& line, firnbook::Moment& moment);
// Whether a date or a moment in its raw form stands here.
bool at_moment(Line& line);
void append_moment(std::string& out, const firnbook::Moment& moment);
void append_span(std::string& out, const firnbook::TimeSpan& span);
void append_name_date(std::string& out, const firnbook::Moment& moment);

// A path such as layers[3].hardness, as checks and findings print it.
bool read_place(Line& line, firnbook::Place& place);
void append_place(std::string& out, const firnbook::Place& place);
bool same_place(const firnbook::Place& a, const firnbook::Place& b);

}  // namespace firn::notation
