#include "exchange/caaml/moment.h"

#include "support/text.h"

namespace firn::exchange::caaml {
namespace {

using firnbook::Moment;
using firnbook::TimePrecision;

constexpr int kMostOffset = 14 * 60;  // of xs:dateTime

class MomentReader {
 public:
  explicit MomentReader(std::string_view text) : text_(text) {}

  MomentRead read(Moment& moment) {
    CalendarTime time;
    int year = 0;
    if (!number(4, year) || !take('-') || !number(2, time.month) || !take('-') || !number(2, time.day)) {
      return MomentRead::no_moment;
    }
    time.year = year;
    if (year < 1 || time.month < 1 || time.month > 12 || time.day < 1 ||
        time.day > days_in_month(year, time.month)) {
      return MomentRead::no_moment;
    }
    TimePrecision precision = TimePrecision::day;
    if (take('T')) {
      if (!clock(time)) return MomentRead::no_moment;
      precision = TimePrecision::second;
    }
    int offset = 0;
    const bool has_offset = !text_.empty();
    if (has_offset && !zone(offset)) return MomentRead::no_moment;
    moment = Moment(seconds_of(time), static_cast<std::int16_t>(offset), precision, has_offset ? 1 : 0);
    return is_cut_ ? MomentRead::cut : MomentRead::exact;
  }

 private:
  bool take(char c) {
    if (text_.empty() || text_[0] != c) return false;
    text_.remove_prefix(1);
    return true;
  }
  bool number(std::size_t digits, int& value) {
    if (text_.size() < digits) return false;
    value = 0;
    for (std::size_t i = 0; i < digits; ++i) {
      if (text_[i] < '0' || text_[i] > '9') return false;
      value = value * 10 + (text_[i] - '0');
    }
    text_.remove_prefix(digits);
    return true;
  }
  bool clock(CalendarTime& time) {
    if (!number(2, time.hour) || !take(':') || !number(2, time.minute) || !take(':') ||
        !number(2, time.second)) {
      return false;
    }
    if (take('.')) {
      int digit = 0;
      if (!number(1, digit)) return false;
      do {
        is_cut_ = is_cut_ || digit != 0;
      } while (number(1, digit));
    }
    return time.hour <= 23 && time.minute <= 59 && time.second <= 59;
  }
  bool zone(int& offset) {
    if (take('Z')) return text_.empty();
    const bool is_behind = take('-');
    int hours = 0;
    int minutes = 0;
    if (!is_behind && !take('+')) return false;
    if (!number(2, hours) || !take(':') || !number(2, minutes)) return false;
    offset = hours * 60 + minutes;
    if (minutes > 59 || offset > kMostOffset) return false;
    if (is_behind) offset = -offset;
    return text_.empty();
  }

  std::string_view text_;
  bool is_cut_ = false;
};

void append_two(std::string& out, int value) {
  out += static_cast<char>('0' + value / 10 % 10);
  out += static_cast<char>('0' + value % 10);
}

void append_zone(std::string& out, int offset) {
  out += offset < 0 ? '-' : '+';
  if (offset < 0) offset = -offset;
  append_two(out, offset / 60);
  out += ':';
  append_two(out, offset % 60);
}

}  // namespace

MomentRead parse_moment(std::string_view text, Moment& moment) {
  return MomentReader(text).read(moment);
}

bool append_moment(std::string& out, const Moment& moment, Moment& read_back) {
  constexpr std::int64_t kFirst = -62135596800;   // 0001-01-01
  constexpr std::int64_t kBehind = 253402300800;  // 10000-01-01
  std::int64_t local_s = moment.local_s();
  if (local_s < kFirst || local_s >= kBehind || moment.precision() == TimePrecision::none) return false;
  const bool has_clock = moment.precision() >= TimePrecision::minute;
  const CalendarTime time = calendar_time(local_s);
  const auto year = static_cast<int>(time.year);
  append_two(out, year / 100);
  append_two(out, year % 100);
  out += '-';
  append_two(out, time.month);
  out += '-';
  append_two(out, time.day);
  if (has_clock) {
    out += 'T';
    append_two(out, time.hour);
    out += ':';
    append_two(out, time.minute);
    out += ':';
    append_two(out, time.second);
  } else {
    local_s -= time.hour * 3600 + time.minute * 60 + time.second;
  }
  const int offset = moment.offset_min();
  const bool has_offset = moment.offset_known() != 0 && offset >= -kMostOffset && offset <= kMostOffset;
  if (has_offset) append_zone(out, offset);
  read_back = Moment(local_s, has_offset ? moment.offset_min() : std::int16_t{0},
                     has_clock ? TimePrecision::second : TimePrecision::day, has_offset ? 1 : 0);
  return true;
}

}  // namespace firn::exchange::caaml
