#include "support/maths.h"

#include <cmath>
#include <cstring>

namespace firn {
namespace {

// ln 2 in two parts: a whole number times the first is exact.
constexpr double kLn2High = 6.93147180369123816490e-01;
constexpr double kLn2Low = 1.90821492927058770002e-10;
constexpr double kSqrt2 = 1.41421356237309504880;
constexpr double kMostExponent = 700.0;
constexpr std::int32_t kBias = 1023;
constexpr std::uint64_t kFraction = 0x000fffffffffffff;
constexpr std::uint64_t kOne = 0x3ff0000000000000;
constexpr double kSmallestNormal = 2.2250738585072014e-308;
constexpr double kLargest = 1.7976931348623157e308;

std::uint64_t bits_of(double x) {
  std::uint64_t bits = 0;
  std::memcpy(&bits, &x, sizeof bits);
  return bits;
}
double from_bits(std::uint64_t bits) {
  double x = 0;
  std::memcpy(&x, &bits, sizeof x);
  return x;
}

}  // namespace

// x = m * 2^e with m around one; ln m = 2 artanh((m - 1) / (m + 1)), whose series ends quickly there.
double log_of(double x) {
  if (!(x >= kSmallestNormal && x <= kLargest)) return 0;
  const std::uint64_t bits = bits_of(x);
  std::int32_t exponent = static_cast<std::int32_t>(bits >> 52) - kBias;
  double mantissa = from_bits((bits & kFraction) | kOne);
  if (mantissa > kSqrt2) {
    mantissa *= 0.5;
    ++exponent;
  }
  const double s = (mantissa - 1.0) / (mantissa + 1.0);
  const double square = s * s;
  double sum = 0;
  for (std::int32_t n = 23; n >= 1; n -= 2) sum = sum * square + 1.0 / static_cast<double>(n);
  const double e = static_cast<double>(exponent);
  return e * kLn2High + (e * kLn2Low + 2.0 * s * sum);
}

// x = k ln 2 + r with r small; e^x = 2^k e^r.
double exp_of(double x) {
  if (!(x >= -kMostExponent)) return 0;
  if (x > kMostExponent) x = kMostExponent;
  const double turns = x / (kLn2High + kLn2Low);
  const std::int32_t k = static_cast<std::int32_t>(turns < 0 ? turns - 0.5 : turns + 0.5);
  const double r = (x - static_cast<double>(k) * kLn2High) - static_cast<double>(k) * kLn2Low;
  double sum = 1.0;
  for (std::int32_t n = 16; n >= 1; --n) sum = 1.0 + sum * r / static_cast<double>(n);
  return sum * from_bits(static_cast<std::uint64_t>(k + kBias) << 52);
}

double power(double x, double p) {
  return x > 0 ? exp_of(p * log_of(x)) : 0;
}

double square_root(double x) {
  return x > 0 ? std::sqrt(x) : 0;
}

std::int32_t rounded(double x) {
  if (!(x > -2147483647.0)) return x <= -2147483647.0 ? -INT32_MAX : 0;
  if (x >= 2147483647.0) return INT32_MAX;
  return static_cast<std::int32_t>(x < 0 ? x - 0.5 : x + 0.5);
}

}  // namespace firn
