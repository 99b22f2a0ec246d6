#include "support/text.h"

namespace firn {
namespace {

constexpr std::int64_t kSecondsPerDay = 86400;

std::uint64_t magnitude(std::int64_t value) {
  return value < 0 ? ~static_cast<std::uint64_t>(value) + 1 : static_cast<std::uint64_t>(value);
}

void append_digits(std::string& out, std::uint64_t value, int at_least) {
  char digits[20];
  int count = 0;
  do {
    digits[count++] = static_cast<char>('0' + value % 10);
    value /= 10;
  } while (value != 0);
  for (int i = count; i < at_least; ++i) out += '0';
  while (count > 0) out += digits[--count];
}

std::uint64_t power_of_ten(int exponent) {
  std::uint64_t power = 1;
  while (exponent-- > 0) power *= 10;
  return power;
}

// U+0080 to U+009F: controls as well, some of which terminals obey.
bool is_second_control(std::string_view text) {
  return text.size() >= 2 && text[0] == '\xC2' && static_cast<unsigned char>(text[1]) < 0xA0;
}

}  // namespace

void append_integer(std::string& out, std::int64_t value) {
  if (value < 0) out += '-';
  append_digits(out, magnitude(value), 1);
}

void append_unsigned(std::string& out, std::uint64_t value) {
  append_digits(out, value, 1);
}

void append_fixed(std::string& out, std::int64_t value, int decimals) {
  if (value < 0) out += '-';
  std::uint64_t rest = magnitude(value);
  const std::uint64_t scale = power_of_ten(decimals);
  append_digits(out, rest / scale, 1);
  rest %= scale;
  if (rest == 0) return;
  while (rest % 10 == 0) {
    rest /= 10;
    --decimals;
  }
  out += '.';
  append_digits(out, rest, decimals);
}

void append_rounded(std::string& out, std::int64_t value, int decimals, int keep) {
  std::uint64_t rest = magnitude(value);
  if (decimals > keep) {
    const std::uint64_t drop = power_of_ten(decimals - keep);
    rest = rest / drop + (rest % drop >= drop - drop / 2 ? 1 : 0);
    decimals = keep;
  }
  if (value < 0 && rest != 0) out += '-';
  const std::uint64_t scale = power_of_ten(decimals);
  append_digits(out, rest / scale, 1);
  if (keep == 0) return;
  out += '.';
  if (decimals > 0) append_digits(out, rest % scale, decimals);
  // Zeros are written, not multiplied in: a large value would overflow.
  out.append(static_cast<std::size_t>(keep - decimals), '0');
}

std::size_t utf8_length(std::string_view text) {
  if (text.empty()) return 0;
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  const unsigned char first = byte(0);
  if (first < 0x80) return 1;
  const std::size_t length = first >= 0xF0 ? 4 : first >= 0xE0 ? 3 : 2;
  if (first < 0xC2 || first > 0xF4 || text.size() < length) return 0;
  for (std::size_t i = 1; i < length; ++i) {
    if ((byte(i) & 0xC0) != 0x80) return 0;
  }
  // Overlong forms, surrogates and what lies beyond U+10FFFF.
  if (first == 0xE0 && byte(1) < 0xA0) return 0;
  if (first == 0xED && byte(1) > 0x9F) return 0;
  if (first == 0xF0 && byte(1) < 0x90) return 0;
  if (first == 0xF4 && byte(1) > 0x8F) return 0;
  return length;
}

bool is_utf8(std::string_view text) {
  while (!text.empty()) {
    const std::size_t length = utf8_length(text);
    if (length == 0) return false;
    text.remove_prefix(length);
  }
  return true;
}

void append_xml(std::string& out, std::string_view text) {
  while (!text.empty()) {
    const std::size_t length = utf8_length(text);
    if (length == 0) {
      out += "\xEF\xBF\xBD";
      text.remove_prefix(1);
      continue;
    }
    const auto character = static_cast<unsigned char>(text[0]);
    if (character == '&') {
      out += "&amp;";
    } else if (character == '<') {
      out += "&lt;";
    } else if (character == '>') {
      out += "&gt;";
    } else if (character == '"') {
      out += "&quot;";
    } else if (character == '\'') {
      out += "&#39;";
    } else if (character == '\t' || character == '\n') {
      out += ' ';
    } else if (character == 0xEF &&
               (text.substr(0, 3) == "\xEF\xBF\xBE" || text.substr(0, 3) == "\xEF\xBF\xBF")) {
      out += "\xEF\xBF\xBD";  // U+FFFE and U+FFFF may not stand in XML
    } else if (character >= 0x20 && character != 0x7F && !is_second_control(text)) {
      out.append(text.substr(0, length));
    }
    text.remove_prefix(length);
  }
}

// Days from civil date and back, over 400-year eras (common practice; proleptic Gregorian calendar).
CalendarTime calendar_time(std::int64_t local_s) {
  std::int64_t days = local_s / kSecondsPerDay;
  std::int64_t rest = local_s % kSecondsPerDay;
  if (rest < 0) {
    rest += kSecondsPerDay;
    --days;
  }
  days += 719468;
  const std::int64_t era = (days >= 0 ? days : days - 146096) / 146097;
  const std::int64_t day_of_era = days - era * 146097;
  const std::int64_t year_of_era =
      (day_of_era - day_of_era / 1460 + day_of_era / 36524 - day_of_era / 146096) / 365;
  const std::int64_t day_of_year = day_of_era - (365 * year_of_era + year_of_era / 4 - year_of_era / 100);
  const std::int64_t shifted_month = (5 * day_of_year + 2) / 153;
  CalendarTime time;
  time.day = static_cast<int>(day_of_year - (153 * shifted_month + 2) / 5 + 1);
  time.month = static_cast<int>(shifted_month < 10 ? shifted_month + 3 : shifted_month - 9);
  time.year = year_of_era + era * 400 + (time.month <= 2 ? 1 : 0);
  time.hour = static_cast<int>(rest / 3600);
  time.minute = static_cast<int>(rest / 60 % 60);
  time.second = static_cast<int>(rest % 60);
  return time;
}

std::int64_t seconds_of(const CalendarTime& time) {
  const std::int64_t year = time.year - (time.month <= 2 ? 1 : 0);
  const std::int64_t era = (year >= 0 ? year : year - 399) / 400;
  const std::int64_t year_of_era = year - era * 400;
  const std::int64_t shifted_month = time.month > 2 ? time.month - 3 : time.month + 9;
  const std::int64_t day_of_year = (153 * shifted_month + 2) / 5 + time.day - 1;
  const std::int64_t day_of_era = year_of_era * 365 + year_of_era / 4 - year_of_era / 100 + day_of_year;
  const std::int64_t days = era * 146097 + day_of_era - 719468;
  return days * kSecondsPerDay + std::int64_t{time.hour} * 3600 + std::int64_t{time.minute} * 60 +
         time.second;
}

int days_in_month(std::int64_t year, int month) {
  if (month == 2) return year % 4 == 0 && (year % 100 != 0 || year % 400 == 0) ? 29 : 28;
  return month == 4 || month == 6 || month == 9 || month == 11 ? 30 : 31;
}

}  // namespace firn
