// Decimal text and the single-precision numbers of dense profiles, without a locale and the same everywhere:
// only + - * / on doubles.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

namespace firn {

struct Decimal {
  bool is_negative = false;
  bool is_cut = false;  // digits other than zero beyond those kept
  std::uint64_t digits = 0;
  std::int32_t exponent = 0;
};

// Reading keeps integers of fewer digits than this.
inline constexpr std::int64_t kMostExact = 1'000'000'000'000'000;

enum class DecimalText : std::uint8_t {
  decimal,
  comma,  // the one comma was taken for a decimal point
  not_a_number,
  not_clear  // a comma that may part thousands
};
DecimalText read_decimal(std::string_view text, Decimal& to);

// The float that a decimal stands for: the nearest one where the text has at most 15 digits and a power of
// ten up to 22, at most the next but one elsewhere. False for what is no number (a comma is none), or too
// large.
bool parse_float(std::string_view text, float& value);
// The shortest digits that parse_float() turns into the same number. False, and nothing appended, when there
// are none: not finite.
bool append_float(std::string& out, float value);

}  // namespace firn
