#include "support/shortest.h"

#include <cstring>

#include "support/json_parser.h"
#include "support/text.h"

#include <rapidjson/internal/dtoa.h>

namespace firn {
namespace {

// Nine digits tell every float from its neighbours.
constexpr int kMostDigits = 9;

struct Digits {
  char text[32];
  int count = 0;
  int exponent = 0;  // of ten, of the last digit
};

// The digits rounded to `count`; carried over where they were nines.
Digits rounded(const Digits& from, int count) {
  Digits to = from;
  if (count >= from.count) return to;
  to.exponent += from.count - count;
  to.count = count;
  if (from.text[count] >= '5') {
    int at = count - 1;
    while (at >= 0 && to.text[at] == '9') to.text[at--] = '0';
    if (at >= 0) {
      ++to.text[at];
    } else {
      to.text[0] = '1';
      to.exponent += 1;
    }
  }
  while (to.count > 1 && to.text[to.count - 1] == '0') {
    --to.count;
    ++to.exponent;
  }
  return to;
}

void append_digits(std::string& out, const Digits& digits) {
  const int point = digits.count + digits.exponent;  // digits before it
  constexpr int kMostZeros = 6, kMostWhole = 15;
  if (digits.exponent >= 0 && point <= kMostWhole) {
    out.append(digits.text, static_cast<std::size_t>(digits.count));
    out.append(static_cast<std::size_t>(digits.exponent), '0');
  } else if (point > 0 && point <= kMostWhole) {
    out.append(digits.text, static_cast<std::size_t>(point));
    out += '.';
    out.append(digits.text + point, static_cast<std::size_t>(digits.count - point));
  } else if (point <= 0 && point > -kMostZeros) {
    out += "0.";
    out.append(static_cast<std::size_t>(-point), '0');
    out.append(digits.text, static_cast<std::size_t>(digits.count));
  } else {
    out += digits.text[0];
    if (digits.count > 1) {
      out += '.';
      out.append(digits.text + 1, static_cast<std::size_t>(digits.count - 1));
    }
    out += 'e';
    append_integer(out, point - 1);
  }
}

// Takes the one number of a text.
struct TakeNumber : rapidjson::BaseReaderHandler<rapidjson::UTF8<>, TakeNumber> {
  bool Default() { return false; }
  bool Int(int number) { return take(number); }
  bool Uint(unsigned number) { return take(number); }
  bool Int64(std::int64_t number) { return take(static_cast<double>(number)); }
  bool Uint64(std::uint64_t number) { return take(static_cast<double>(number)); }
  bool Double(double number) { return take(number); }
  bool take(double number) {
    value = number;
    return true;
  }
  double value = 0;
};

}  // namespace

bool parse_float(std::string_view text, float& value) {
  JsonText stream{text.data(), text.data(), text.data() + text.size()};
  TakeNumber taken;
  JsonMemory memory;
  rapidjson::GenericReader<rapidjson::UTF8<>, rapidjson::UTF8<>, JsonMemory> reader(&memory);
  if (reader.Parse<rapidjson::kParseFullPrecisionFlag>(stream, taken).IsError()) return false;
  if (!fits_float(taken.value)) return false;
  value = static_cast<float>(taken.value);
  return true;
}

void append_float(std::string& out, float value) {
  std::uint32_t bits;
  std::memcpy(&bits, &value, sizeof bits);
  if (bits >> 31 != 0) out += '-';
  if (value == 0) {
    out += "0.0";
    return;
  }
  const float size = bits >> 31 != 0 ? -value : value;
  Digits all;
  rapidjson::internal::Grisu2(static_cast<double>(size), all.text, &all.count, &all.exponent);
  for (int count = 1; count <= kMostDigits; ++count) {
    const Digits fewer = rounded(all, count);
    std::string text;
    append_digits(text, fewer);
    float back = 0;
    if (count < kMostDigits && (!parse_float(text, back) || back != size)) continue;
    out += text;
    return;
  }
}

}  // namespace firn
