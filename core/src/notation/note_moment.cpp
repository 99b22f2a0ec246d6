// Moments, spans of time and the dates of layer names, in and out.
#include "notation/note_line.h"

#include "support/text.h"

namespace firn::notation {
namespace {

using firnbook::Moment;
using firnbook::TimePrecision;

constexpr std::string_view kMomentRemedy = "write 2026-11-28T10:05-07:00, or 2026-11-28 without a time";
constexpr int kMostOffset = 23 * 60 + 59;

// Two digits with a limit, or -1.
int two_digits(std::string_view text, std::size_t at, int lowest, int highest) {
  if (!digit_at(text, at) || !digit_at(text, at + 1) || digit_at(text, at + 2)) return -1;
  const int value = (text[at] - '0') * 10 + (text[at + 1] - '0');
  return value >= lowest && value <= highest ? value : -1;
}

// Walks over one moment; `at` stands where reading stopped.
struct MomentText {
  std::string_view text;
  std::size_t at = 0;
  CalendarTime time{};
  TimePrecision precision = TimePrecision::none;
  int offset_min = 0;
  bool offset_known = false;

  bool take(char separator, int lowest, int highest, int& part, TimePrecision reached) {
    if (at >= text.size() || text[at] != separator) return false;
    const int value = two_digits(text, at + 1, lowest, highest);
    if (value < 0) return false;
    part = value;
    precision = reached;
    at += 3;
    return true;
  }

  bool year() {
    for (std::size_t i = 0; i < 4; ++i) {
      if (!digit_at(text, i)) return false;
    }
    if (digit_at(text, 4)) return false;
    time.year = (text[0] - '0') * 1000 + (text[1] - '0') * 100 + (text[2] - '0') * 10 + (text[3] - '0');
    precision = TimePrecision::year;
    at = 4;
    return true;
  }

  // -07 of 2026-07:00 is an offset, not a month.
  bool offset_ahead() const { return at + 3 < text.size() && text[at + 3] == ':'; }

  bool clock() {
    const bool blank = at < text.size() && text[at] == ' ' && digit_at(text, at + 1) &&
                       at + 3 < text.size() && text[at + 3] == ':';
    if (!blank && (at >= text.size() || (text[at] != 'T' && text[at] != 't'))) return true;
    if (!take(text[at], 0, 23, time.hour, TimePrecision::none)) return false;
    if (!take(':', 0, 59, time.minute, TimePrecision::minute)) return false;
    return at >= text.size() || text[at] != ':' || take(':', 0, 59, time.second, TimePrecision::second);
  }

  bool offset() {
    if (at >= text.size()) return true;
    const char sign = text[at];
    if (sign == 'Z' || sign == 'z') {
      offset_known = true;
      ++at;
      return true;
    }
    if ((sign != '+' && sign != '-') || !offset_ahead()) return true;
    int hours = 0;
    int minutes = 0;
    const TimePrecision kept = precision;
    if (!take(sign, 0, 23, hours, kept) || !take(':', 0, 59, minutes, kept)) return false;
    offset_known = true;
    offset_min = (hours * 60 + minutes) * (sign == '-' ? -1 : 1);
    return true;
  }

  bool date() {
    if (!year()) return false;
    if (offset_ahead() || !take('-', 1, 12, time.month, TimePrecision::month)) return true;
    if (offset_ahead()) return true;
    if (!take('-', 1, days_in_month(time.year, time.month), time.day, TimePrecision::day)) return true;
    return clock();
  }

  Moment moment() const {
    return Moment(seconds_of(time), static_cast<std::int16_t>(offset_min), precision,
                  static_cast<std::uint8_t>(offset_known ? 1 : 0));
  }
};

bool read_moment_text(Line& line, std::string_view what, MomentText& text) {
  line.scan.skip_blanks();
  text.text = line.scan.rest();
  const bool read = text.date() && text.offset() && ends_word(text.text, text.at);
  if (!read) {
    line.scan.seek(line.scan.position() + text.at);
    return line.expected(what, kMomentRemedy);
  }
  line.scan.seek(line.scan.position() + text.at);
  return true;
}

void append_two(std::string& out, int value) {
  if (value < 10) out += '0';
  append_integer(out, value);
}

}  // namespace

bool at_moment(Line& line) {
  return line.scan.at_digit() || same_code(line.scan.rest().substr(0, kRawMoment.size()), kRawMoment);
}

bool read_moment(Line& line, std::string_view what, Moment& moment) {
  const Result<bool> raw = read_raw(line.scan, moment);
  if (!raw) return line.fail(raw.failure());
  if (*raw) return true;
  MomentText text;
  if (!read_moment_text(line, what, text)) return false;
  moment = text.moment();
  return true;
}

namespace {

// "12:40" after "to": the same day and offset as the beginning.
bool read_later_that_day(Line& line, const MomentText& begin, Moment& end) {
  line.scan.skip_blanks();
  const std::string_view rest = line.scan.rest();
  if (begin.precision < TimePrecision::minute || rest.size() < 5 || rest[2] != ':') return false;
  MomentText text = begin;
  text.time.hour = two_digits(rest, 0, 0, 23);
  text.time.minute = two_digits(rest, 3, 0, 59);
  text.time.second = 0;
  if (text.time.hour < 0 || text.time.minute < 0 || !ends_word(rest, 5)) return false;
  text.precision = TimePrecision::minute;
  end = text.moment();
  line.scan.seek(line.scan.position() + 5);
  return true;
}

}  // namespace

bool read_span(Line& line, std::string_view what, firnbook::TimeSpan& span) {
  MomentText begin;
  Moment first;
  Moment end;
  const Result<bool> raw = read_raw(line.scan, first);
  if (!raw) return line.fail(raw.failure());
  if (!*raw) {
    if (!read_moment_text(line, what, begin)) return false;
    first = begin.moment();
  }
  const bool slash = starts_with(line.scan.rest(), "/");
  if (slash) line.scan.seek(line.scan.position() + 1);
  if ((slash || take_words(line, "to")) && !read_later_that_day(line, begin, end) &&
      !read_moment(line, "the end of the time", end)) {
    return false;
  }
  span = firnbook::TimeSpan(first, end);
  return true;
}

bool read_name_date(Line& line, Moment& moment) {
  line.scan.skip_blanks();
  const std::string_view rest = line.scan.rest();
  std::size_t digits = 0;
  while (digit_at(rest, digits)) ++digits;
  if (digits != 6 || !ends_word(rest, digits))
    return read_moment(line, "the date of the layer's name", moment);
  const auto part = [&](std::size_t at) { return (rest[at] - '0') * 10 + (rest[at + 1] - '0'); };
  CalendarTime time;
  // Two digits of a year: 1970 to 2069 (ours).
  time.year = part(0) + (part(0) < 70 ? 2000 : 1900);
  time.month = part(2);
  time.day = part(4);
  if (time.month < 1 || time.month > 12 || time.day < 1 || time.day > days_in_month(time.year, time.month)) {
    return line.expected("a date as YYMMDD", "270102 is the 2nd of January 2027");
  }
  moment = Moment(seconds_of(time), 0, TimePrecision::day, 0);
  line.scan.seek(line.scan.position() + digits);
  return true;
}

namespace {

// False when the text does not say everything that the moment holds.
bool append_plain(std::string& out, const Moment& moment) {
  const CalendarTime time = calendar_time(moment.local_s());
  const TimePrecision precision = moment.precision();
  const bool in_range = precision >= TimePrecision::year && precision <= TimePrecision::second &&
                        time.year >= 0 && time.year <= 9999;
  const int offset = moment.offset_min();
  const bool known = moment.offset_known() == 1;
  const bool offset_fits =
      known ? offset >= -kMostOffset && offset <= kMostOffset : moment.offset_known() == 0 && offset == 0;
  if (!in_range || !offset_fits) return false;
  CalendarTime printed;
  printed.year = time.year;
  for (std::int64_t size = 1000; size > time.year && size > 1; size /= 10) out += '0';
  append_integer(out, time.year);
  const auto part = [&](TimePrecision least, char separator, int value, int& kept) {
    if (precision < least) return;
    out += separator;
    append_two(out, value);
    kept = value;
  };
  part(TimePrecision::month, '-', time.month, printed.month);
  part(TimePrecision::day, '-', time.day, printed.day);
  part(TimePrecision::minute, 'T', time.hour, printed.hour);
  part(TimePrecision::minute, ':', time.minute, printed.minute);
  part(TimePrecision::second, ':', time.second, printed.second);
  if (known && offset == 0) out += 'Z';
  if (known && offset != 0) {
    const int size = offset < 0 ? -offset : offset;
    out += offset < 0 ? '-' : '+';
    append_two(out, size / 60);
    out += ':';
    append_two(out, size % 60);
  }
  return seconds_of(printed) == moment.local_s();
}

}  // namespace

void append_moment(std::string& out, const Moment& moment) {
  const std::size_t start = out.size();
  if (append_plain(out, moment)) return;
  out.resize(start);
  append_raw(out, moment);
}

void append_span(std::string& out, const firnbook::TimeSpan& span) {
  append_moment(out, span.begin());
  const Moment& end = span.end();
  const bool is_absent = end.precision() == TimePrecision::none && end.local_s() == 0 &&
                         end.offset_min() == 0 && end.offset_known() == 0;
  if (is_absent) return;
  out += " to ";
  append_moment(out, end);
}

void append_name_date(std::string& out, const Moment& moment) {
  const CalendarTime time = calendar_time(moment.local_s());
  const bool short_form = moment.precision() == TimePrecision::day && moment.offset_known() == 0 &&
                          moment.offset_min() == 0 && time.year >= 1970 && time.year <= 2069 &&
                          time.hour == 0 && time.minute == 0 && time.second == 0;
  if (!short_form) return append_moment(out, moment);
  append_two(out, static_cast<int>(time.year % 100));
  append_two(out, time.month);
  append_two(out, time.day);
}

}  // namespace firn::notation
