#include "support/decimal.h"

#include <cstring>

#include "support/text.h"

namespace firn {
namespace {

constexpr bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

// Exponents are held at a million: larger ones are as far out of range as that.
constexpr std::int32_t kFarExponent = 1'000'000;

class DecimalReader {
 public:
  explicit DecimalReader(std::string_view text) : at_(text.data()), end_(text.data() + text.size()) {}

  DecimalText read(Decimal& to) {
    if (at_ != end_ && (*at_ == '-' || *at_ == '+')) to.is_negative = *at_++ == '-';
    const char* start = at_;
    take_digits(to, 0);
    std::size_t count = static_cast<std::size_t>(at_ - start);
    DecimalText text = DecimalText::decimal;
    if (at_ != end_ && (*at_ == '.' || *at_ == ',')) {
      const bool is_comma = *at_ == ',';
      const char* fraction = ++at_;
      take_digits(to, -1);
      const auto places = static_cast<std::size_t>(at_ - fraction);
      count += places;
      // 1,250 may be a thousand and a quarter of one; 0,250 is a fraction only.
      if (is_comma && places == 3 && *start != '0') return DecimalText::not_clear;
      if (is_comma && places == 0) return DecimalText::not_a_number;
      if (is_comma) text = DecimalText::comma;
    }
    if (count == 0 || !take_exponent(to) || at_ != end_) return DecimalText::not_a_number;
    return text;
  }

 private:
  // `step` is -1 behind the point, where a digit that is kept makes the exponent smaller.
  void take_digits(Decimal& to, std::int32_t step) {
    for (; at_ != end_ && is_digit(*at_); ++at_) {
      const auto digit = static_cast<std::uint64_t>(*at_ - '0');
      if (to.digits < kMostExact / 10) {
        to.digits = to.digits * 10 + digit;
        to.exponent += step;
      } else {
        to.is_cut = to.is_cut || digit != 0;
        if (to.exponent < kFarExponent) to.exponent += step + 1;
      }
      if (to.exponent < -kFarExponent) to.exponent = -kFarExponent;
    }
  }
  bool take_exponent(Decimal& to) {
    if (at_ == end_ || (*at_ != 'e' && *at_ != 'E')) return true;
    ++at_;
    bool is_negative = false;
    if (at_ != end_ && (*at_ == '-' || *at_ == '+')) is_negative = *at_++ == '-';
    const char* start = at_;
    std::int32_t exponent = 0;
    for (; at_ != end_ && is_digit(*at_); ++at_) {
      if (exponent < kFarExponent) exponent = exponent * 10 + (*at_ - '0');
    }
    to.exponent += is_negative ? -exponent : exponent;
    return at_ != start;
  }

  const char* at_;
  const char* end_;
};

// 10^0 to 10^22 are exact doubles.
constexpr double kPowers[] = {1e0,  1e1,  1e2,  1e3,  1e4,  1e5,  1e6,  1e7,  1e8,  1e9,  1e10, 1e11,
                              1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19, 1e20, 1e21, 1e22};
constexpr std::int32_t kMostPower = 22;

double times_power(double value, std::int32_t exponent) {
  for (; exponent > kMostPower; exponent -= kMostPower) value *= kPowers[kMostPower];
  for (; exponent < -kMostPower; exponent += kMostPower) value /= kPowers[kMostPower];
  return exponent < 0 ? value / kPowers[-exponent] : value * kPowers[exponent];
}

constexpr float kLargest = 3.4028234663852886e38F;
// Half way to the next one, where rounding would go to infinity.
constexpr double kBehindLargest = 3.4028235677973366e38;

// What a text of these digits reads as; false for what is too large.
bool value_of(std::uint64_t digits, std::int32_t exponent, float& value) {
  const double size = digits == 0 ? 0.0 : times_power(static_cast<double>(digits), exponent);
  if (!(size < kBehindLargest)) return false;
  value = size > static_cast<double>(kLargest) ? kLargest : static_cast<float>(size);
  return true;
}

// Plainly where that takes few zeros, else with a power of ten.
void append_digits(std::string& out, std::uint64_t digits, std::int32_t exponent) {
  for (; digits % 10 == 0; ++exponent) digits /= 10;
  std::string text;
  append_unsigned(text, digits);
  const auto count = static_cast<std::int32_t>(text.size());
  const std::int32_t point = count + exponent;  // digits before it
  constexpr std::int32_t kMostZeros = 6, kMostWhole = 15;
  if (exponent >= 0 && point <= kMostWhole) {
    out += text;
    out.append(static_cast<std::size_t>(exponent), '0');
  } else if (exponent < 0 && point > -kMostZeros) {
    append_fixed(out, static_cast<std::int64_t>(digits), -exponent);
  } else {
    out += text[0];
    if (count > 1) out.append(".").append(text, 1);
    out += 'e';
    append_integer(out, point - 1);
  }
}

}  // namespace

DecimalText read_decimal(std::string_view text, Decimal& to) {
  return DecimalReader(text).read(to);
}

bool parse_float(std::string_view text, float& value) {
  Decimal decimal;
  if (read_decimal(text, decimal) != DecimalText::decimal) return false;
  // Far beyond any float, and few steps to get there.
  if (decimal.exponent > 400 && decimal.digits != 0) return false;
  if (decimal.exponent < -400) decimal.digits = 0;
  float size = 0;
  if (!value_of(decimal.digits, decimal.exponent, size)) return false;
  value = decimal.is_negative ? -size : size;
  return true;
}

bool append_float(std::string& out, float value) {
  if (!(value >= -kLargest && value <= kLargest)) return false;
  std::uint32_t bits = 0;
  static_assert(sizeof bits == sizeof value);
  std::memcpy(&bits, &value, sizeof bits);
  const float size = bits >> 31 != 0 ? -value : value;
  if (bits >> 31 != 0) out += '-';
  if (size == 0.0F) {
    // With a fraction, so that no reader takes it for an integer and loses the sign.
    out += "0.0";
    return true;
  }
  // The power of ten of its first digit, then ever more digits until they stand for this number.
  std::int32_t top = 0;
  const auto exact = static_cast<double>(size);
  while (times_power(1.0, top + 1) <= exact) ++top;
  while (times_power(1.0, top) > exact) --top;
  for (std::int32_t count = 1; count <= 12; ++count) {
    const std::int32_t exponent = top - count + 1;
    const auto digits = static_cast<std::uint64_t>(times_power(exact, -exponent) + 0.5);
    float back = 0;
    if (!value_of(digits, exponent, back) || back != size) continue;
    append_digits(out, digits, exponent);
    return true;
  }
  if (bits >> 31 != 0) out.pop_back();
  return false;
}

}  // namespace firn
