#include "notation/raw_values.h"

#include <initializer_list>

#include "support/text.h"

namespace firn::notation {
namespace {

constexpr std::string_view kRawDepth = "depth=", kRawPlace = "place=";
constexpr Scanner::Limits kByte = {0, UINT8_MAX}, kInt = {INT32_MIN, INT32_MAX};

void append_numbers(std::string& out, std::string_view word, std::initializer_list<std::int64_t> values) {
  out += word;
  for (const std::int64_t& value : values) {
    if (&value != values.begin()) out += '/';
    append_integer(out, value);
  }
}

}  // namespace

Result<bool> read_raw(Scanner& scanner, firnbook::Moment& moment) {
  constexpr Scanner::Limits kLimits[] = {{INT64_MIN, INT64_MAX}, {INT16_MIN, INT16_MAX}, kByte, kByte};
  std::int64_t parts[4] = {};
  Result<bool> read = scanner.numbers(kRawMoment, kLimits, 4, parts);
  moment =
      firnbook::Moment(parts[0], static_cast<std::int16_t>(parts[1]),
                       static_cast<firnbook::TimePrecision>(parts[2]), static_cast<std::uint8_t>(parts[3]));
  return read;
}

Result<bool> read_raw(Scanner& scanner, firnbook::Depth& depth) {
  constexpr Scanner::Limits kLimits[] = {kInt, kByte, kByte};
  std::int64_t parts[3] = {};
  Result<bool> read = scanner.numbers(kRawDepth, kLimits, 3, parts);
  depth = firnbook::Depth(static_cast<std::int32_t>(parts[0]), static_cast<firnbook::Datum>(parts[1]),
                          static_cast<firnbook::Direction>(parts[2]));
  return read;
}

Result<bool> read_raw(Scanner& scanner, firnbook::Place& place) {
  constexpr Scanner::Limits kLimits[] = {kInt, kInt, {0, UINT16_MAX}, kByte};
  std::int64_t parts[4] = {};
  Result<bool> read = scanner.numbers(kRawPlace, kLimits, 4, parts);
  place = firnbook::Place(static_cast<std::int32_t>(parts[0]), static_cast<std::int32_t>(parts[1]),
                          static_cast<std::uint16_t>(parts[2]), static_cast<firnbook::Thing>(parts[3]));
  return read;
}

void append_raw(std::string& out, const firnbook::Moment& moment) {
  append_numbers(out, kRawMoment,
                 {moment.local_s(), moment.offset_min(), static_cast<std::uint8_t>(moment.precision()),
                  moment.offset_known()});
}

void append_raw(std::string& out, const firnbook::Depth& depth) {
  append_numbers(out, kRawDepth,
                 {depth.value_10um(), static_cast<std::uint8_t>(depth.datum()),
                  static_cast<std::uint8_t>(depth.direction())});
}

void append_raw(std::string& out, const firnbook::Place& place) {
  append_numbers(out, kRawPlace,
                 {place.index(), place.sub(), place.field(), static_cast<std::uint8_t>(place.thing())});
}

}  // namespace firn::notation
