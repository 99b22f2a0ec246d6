#include "exchange/json/values.h"

#include "support/text.h"

namespace firn::exchange {
namespace {

using firnbook::Moment;
using firnbook::TimePrecision;

// Clocks are at most 14 hours off UTC; the field holds more, and so does this.
constexpr int kMostOffsetMin = 23 * 60 + 59;

void append_two(std::string& out, int value) {
  out += static_cast<char>('0' + value / 10);
  out += static_cast<char>('0' + value % 10);
}

struct Digits {
  std::string_view text;
  bool failed = false;

  int take(std::size_t count) {
    int value = 0;
    for (std::size_t i = 0; i < count; ++i) {
      if (text.empty() || text[0] < '0' || text[0] > '9') {
        failed = true;
        return 0;
      }
      value = value * 10 + (text[0] - '0');
      text.remove_prefix(1);
    }
    return value;
  }
  bool skip(char sign) {
    if (text.empty() || text[0] != sign) return false;
    text.remove_prefix(1);
    return true;
  }
};

// The clock reading as far as the precision goes; what lies below it must be zero.
bool says_more(const Moment& moment, const CalendarTime& time) {
  switch (moment.precision()) {
    case TimePrecision::year:
      if (time.month != 1) return true;
      [[fallthrough]];
    case TimePrecision::month:
      if (time.day != 1) return true;
      [[fallthrough]];
    case TimePrecision::day:
      if (time.hour != 0 || time.minute != 0) return true;
      [[fallthrough]];
    case TimePrecision::minute:
      return time.second != 0;
    default:
      return false;
  }
}

}  // namespace

bool append_moment(std::string& out, const Moment& moment) {
  const TimePrecision precision = moment.precision();
  if (precision < TimePrecision::year || precision > TimePrecision::second) return false;
  const int offset = moment.offset_min();
  if (moment.offset_known() > 1 || (moment.offset_known() == 0 && offset != 0)) return false;
  if (offset < -kMostOffsetMin || offset > kMostOffsetMin) return false;
  // The offset stands behind a time of day only, which is where ISO 8601 has it.
  const bool has_time = precision >= TimePrecision::minute;
  if (moment.offset_known() == 1 && !has_time) return false;
  constexpr std::int64_t kFirst = -62167219200, kLast = 253402300799;  // years 0000 to 9999
  if (moment.local_s() < kFirst || moment.local_s() > kLast) return false;
  const CalendarTime time = calendar_time(moment.local_s());
  if (says_more(moment, time)) return false;
  append_two(out, static_cast<int>(time.year / 100));
  append_two(out, static_cast<int>(time.year % 100));
  if (precision == TimePrecision::year) return true;
  out += '-';
  append_two(out, time.month);
  if (precision == TimePrecision::month) return true;
  out += '-';
  append_two(out, time.day);
  if (!has_time) return true;
  out += 'T';
  append_two(out, time.hour);
  out += ':';
  append_two(out, time.minute);
  if (precision == TimePrecision::second) {
    out += ':';
    append_two(out, time.second);
  }
  if (moment.offset_known() == 0) return true;
  const int size = offset < 0 ? -offset : offset;
  out += offset < 0 ? '-' : '+';
  append_two(out, size / 60);
  out += ':';
  append_two(out, size % 60);
  return true;
}

std::optional<Moment> parse_moment(std::string_view text) {
  Digits digits{text};
  CalendarTime time;
  TimePrecision precision = TimePrecision::year;
  time.year = digits.take(4);
  if (digits.skip('-')) {
    precision = TimePrecision::month;
    time.month = digits.take(2);
    if (time.month < 1 || time.month > 12) return std::nullopt;
    if (digits.skip('-')) {
      precision = TimePrecision::day;
      time.day = digits.take(2);
      if (time.day < 1 || time.day > days_in_month(time.year, time.month)) return std::nullopt;
    }
  }
  int offset = 0;
  bool offset_known = false;
  if (precision == TimePrecision::day && digits.skip('T')) {
    precision = TimePrecision::minute;
    time.hour = digits.take(2);
    if (!digits.skip(':')) return std::nullopt;
    time.minute = digits.take(2);
    if (digits.skip(':')) {
      precision = TimePrecision::second;
      time.second = digits.take(2);
    }
    if (time.hour > 23 || time.minute > 59 || time.second > 59) return std::nullopt;
    const bool is_behind = !digits.text.empty() && digits.text[0] == '-';
    if (digits.skip('Z')) {
      offset_known = true;
    } else if (digits.skip('-') || digits.skip('+')) {
      offset_known = true;
      const int hours = digits.take(2);
      if (!digits.skip(':')) return std::nullopt;
      const int minutes = digits.take(2);
      if (hours > 23 || minutes > 59) return std::nullopt;
      offset = (is_behind ? -1 : 1) * (hours * 60 + minutes);
    }
  }
  if (digits.failed || !digits.text.empty()) return std::nullopt;
  return Moment(seconds_of(time), static_cast<std::int16_t>(offset), precision,
                static_cast<std::uint8_t>(offset_known));
}

}  // namespace firn::exchange
