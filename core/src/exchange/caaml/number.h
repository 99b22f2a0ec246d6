// Decimal text and the scaled integers that stand for it, exactly and without floating point.
#pragma once

#include <cstdint>
#include <string_view>

#include "support/decimal.h"

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

// Writing takes integers of fewer digits than reading keeps.
using firn::kMostExact;

// The stored integer that the text stands for in this unit, rounded half away from zero.
Reading parse_number(std::string_view text, Unit unit, std::int64_t& value);

}  // namespace firn::exchange::caaml
