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

// Of whole degrees from 0 to 90; others are taken as the nearer end.
double sine_of_degrees(std::int32_t degrees);
double cosine_of_degrees(std::int32_t degrees);

// To the nearest whole number, half away from zero, kept within int32; 0 for what is no number.
std::int32_t rounded(double x);

}  // namespace firn
