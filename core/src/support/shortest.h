// Floats as the shortest decimal that reads back to the same float.
#pragma once

#include <string>
#include <string_view>

namespace firn {

// `value` must be a number: neither NaN nor infinite.
void append_float(std::string& out, float value);

// Whether the float next to a number is finite: it lies below the middle between the largest float and the
// one that would come after it.
constexpr bool fits_float(double value) {
  return value > -0x1.ffffffp127 && value < 0x1.ffffffp127;
}

// The float next to a number as JSON writes it. False when it is no such number, or too large.
bool parse_float(std::string_view text, float& value);

}  // namespace firn
