// Text made from integers. No locale, no printf, no floating point: the same characters everywhere.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

namespace firn {

void append_integer(std::string& out, std::int64_t value);
void append_unsigned(std::string& out, std::uint64_t value);

// `value` / 10^decimals, without trailing zeros and without a trailing point: (1250, 2) is "12.5".
void append_fixed(std::string& out, std::int64_t value, int decimals);

// `value` / 10^decimals rounded half away from zero to `keep` decimals, which are all printed. Like
// append_fixed for at most 18 decimals.
void append_rounded(std::string& out, std::int64_t value, int decimals, int keep);

// The text with &, <, >, " and ' escaped for XML, control characters left out, bytes that are not UTF-8
// replaced by U+FFFD.
void append_xml(std::string& out, std::string_view text);

// Length in bytes of the UTF-8 character at the start of `text`, 0 when it is not well-formed.
std::size_t utf8_length(std::string_view text);

bool is_utf8(std::string_view text);

// Lengths in units of 10 um as people write them: centimetres and millimetres.
inline void append_cm(std::string& out, std::int64_t value_10um) {
  append_fixed(out, value_10um, 3);
}
inline void append_mm(std::string& out, std::int64_t value_10um) {
  append_fixed(out, value_10um, 2);
}

// 2026-11-28T10:05-07:00, as far as the moment is known. See schemas/pit.fbs, Moment.
struct CalendarTime {
  std::int64_t year = 1970;
  int month = 1, day = 1, hour = 0, minute = 0, second = 0;
};
CalendarTime calendar_time(std::int64_t local_s);
// Seconds since 1970-01-01T00:00:00 of the same clock; the parts must be in range.
std::int64_t seconds_of(const CalendarTime& time);
int days_in_month(std::int64_t year, int month);

}  // namespace firn
