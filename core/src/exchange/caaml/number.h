// Decimal text and the scaled integers that stand for it, exactly and without floating point; and the dense
// profiles, which the schema keeps as single-precision numbers.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

namespace firn::exchange::caaml {

// A unit as a multiple of the stored one: factor * 10^power.
struct Unit {
  std::uint16_t factor = 1;
  std::int8_t power = 0;
};

enum class Reading : std::uint8_t {
  exact,
  rounded,
  comma,          // the one comma was taken for a decimal point
  comma_rounded,  // both
  not_a_number,
  not_clear,  // a comma that may part thousands
  too_large
};
constexpr bool is_read(Reading reading) {
  return reading <= Reading::comma_rounded;
}

// Writing takes integers of fewer digits than this, reading keeps as many.
inline constexpr std::int64_t kMostExact = 1'000'000'000'000'000;

// The stored integer that the text stands for in this unit, rounded half away from zero.
Reading parse_number(std::string_view text, Unit unit, std::int64_t& value);

// One number of a dense profile. Deterministic: + - * / only. False for what is no finite number.
bool parse_float(std::string_view text, float& value);
// The shortest digits that parse_float() turns into the same number. False, and nothing appended, when there
// are none: not finite.
bool append_float(std::string& out, float value);

}  // namespace firn::exchange::caaml
