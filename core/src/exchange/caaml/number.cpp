#include "exchange/caaml/number.h"

#include "support/decimal.h"

namespace firn::exchange::caaml {
namespace {

// digits * 10^exponent, rounded half away from zero; false when it has more than 18 digits.
bool scale(std::uint64_t digits, std::int32_t exponent, bool& is_exact, std::int64_t& value) {
  constexpr std::uint64_t kMost = 999'999'999'999'999'999;
  for (; exponent > 0 && digits != 0; --exponent) {
    if (digits > kMost / 10) return false;
    digits *= 10;
  }
  std::uint64_t last = 0;
  for (; exponent < 0 && (digits != 0 || last != 0); ++exponent) {
    if (last != 0) is_exact = false;
    last = digits % 10;
    digits /= 10;
  }
  if (last != 0) is_exact = false;
  if (last >= 5) ++digits;
  if (digits > kMost) return false;
  value = static_cast<std::int64_t>(digits);
  return true;
}

}  // namespace

Reading parse_number(std::string_view text, Unit unit, std::int64_t& value) {
  Decimal decimal;
  const DecimalText read = read_decimal(text, decimal);
  if (read == DecimalText::not_a_number) return Reading::not_a_number;
  if (read == DecimalText::not_clear) return Reading::not_clear;
  // At most 15 digits by at most five of the factor: no overflow.
  bool is_exact = !decimal.is_cut;
  if (!scale(decimal.digits * unit.factor, decimal.exponent + unit.power, is_exact, value)) {
    return Reading::too_large;
  }
  if (decimal.is_negative) value = -value;
  if (read == DecimalText::comma) return is_exact ? Reading::comma : Reading::comma_rounded;
  return is_exact ? Reading::exact : Reading::rounded;
}

}  // namespace firn::exchange::caaml
