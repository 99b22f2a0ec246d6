// The few functions of mathematics that published formulas need, made of + - * / and the square root alone:
// the same bits on every machine, which no libm promises.
#pragma once

#include <cstdint>

namespace firn {

inline constexpr double kPi = 3.14159265358979323846;

// Natural logarithm of a finite number above zero; 0 for anything else.
double log_of(double x);
// e to the power of x: 0 below -700, the value at 700 above it.
double exp_of(double x);
// x to the power of p for x above zero; 0 for anything else.
double power(double x, double p);
double square_root(double x);

// Sine and cosine of angles up to an eighth of a turn, by their series.
constexpr double sum_of_series(double first, double square, std::int32_t from) {
  double sum = first;
  double term = first;
  for (std::int32_t n = from; n < from + 16; n += 2) {
    term *= -square / static_cast<double>(n * (n + 1));
    sum += term;
  }
  return sum;
}

// Of every whole degree of the quarter, worked out by the compiler.
struct Sines {
  double of[91];
};
constexpr Sines all_sines() {
  Sines sines = {};
  for (std::int32_t degrees = 0; degrees <= 45; ++degrees) {
    const double angle = static_cast<double>(degrees) * kPi / 180.0;
    sines.of[90 - degrees] = sum_of_series(1.0, angle * angle, 1);
    sines.of[degrees] = sum_of_series(angle, angle * angle, 2);
  }
  return sines;
}
inline constexpr Sines kSines = all_sines();

// Of whole degrees from 0 to 90; others are taken as the nearer end.
constexpr double sine_of_degrees(std::int32_t degrees) {
  return kSines.of[degrees < 0 ? 0 : degrees > 90 ? 90 : degrees];
}
constexpr double cosine_of_degrees(std::int32_t degrees) {
  return kSines.of[degrees < 0 ? 90 : degrees > 90 ? 0 : 90 - degrees];
}

// To the nearest whole number, half away from zero, kept within int32; 0 for what is no number.
std::int32_t rounded(double x);

}  // namespace firn
