#include "drawing/wording.h"

#include "pit/view.h"
#include "support/text.h"

namespace firn::drawing {
namespace {

void append_two(std::string& out, std::int64_t value) {
  if (value < 10) out += '0';
  append_integer(out, value);
}

// 2026 as "2026"; years that no calendar of ours has are printed as they are.
void append_year(std::string& out, std::int64_t year) {
  for (std::int64_t least = 1000; year >= 0 && year < least && least > 1; least /= 10) out += '0';
  append_integer(out, year);
}

void append_offset(std::string& out, const firnbook::Moment& moment) {
  if (moment.offset_known() == 0) {
    out += " (offset from UTC not recorded)";
    return;
  }
  const std::int32_t offset = moment.offset_min();
  const std::int32_t minutes = offset < 0 ? -offset : offset;
  out += offset < 0 ? " (UTC\xE2\x88\x92" : " (UTC+";
  append_two(out, minutes / 60);
  out += ':';
  append_two(out, minutes % 60);
  out += ')';
}

}  // namespace

void append_code_or_number(std::string& out, std::string_view code, std::uint8_t value) {
  if (!code.empty()) {
    out += code;
    return;
  }
  out += "code ";
  append_integer(out, value);
}

void append_span(std::string& out, std::int32_t top, std::int32_t bottom) {
  append_cm(out, top);
  out += "\xE2\x80\x93";
  append_cm(out, bottom);
}

void append_degrees(std::string& out, std::int32_t cdegc) {
  std::int64_t magnitude = cdegc;
  if (magnitude < 0) {
    out += "\xE2\x88\x92";
    magnitude = -magnitude;
  }
  append_fixed(out, magnitude, 2);
  out +=
      " \xC2\xB0"
      "C";
}

void append_moment(std::string& out, const firnbook::Moment& moment) {
  using firnbook::TimePrecision;
  const TimePrecision precision = moment.precision();
  if (precision == TimePrecision::none) return;
  const CalendarTime time = calendar_time(moment.local_s());
  append_year(out, time.year);
  if (precision == TimePrecision::year) return;
  out += '-';
  append_two(out, time.month);
  if (precision == TimePrecision::month) return;
  out += '-';
  append_two(out, time.day);
  if (precision == TimePrecision::day) return;
  out += ' ';
  append_two(out, time.hour);
  out += ':';
  append_two(out, time.minute);
  append_offset(out, moment);
}

void append_layer_name(std::string& out, const firnbook::LayerName& name) {
  if (name.date() != nullptr && name.date()->precision() >= firnbook::TimePrecision::day) {
    const CalendarTime time = calendar_time(name.date()->local_s());
    if (time.year < 0 || time.year > 9999) {
      append_moment(out, *name.date());
    } else {
      append_two(out, time.year % 100);
      append_two(out, time.month);
      append_two(out, time.day);
    }
  } else if (name.date() != nullptr) {
    append_moment(out, *name.date());
  }
  if (!name.kind()) return;
  if (!out.empty() && out.back() != ' ') out += ' ';
  append_code<firnbook::LayerNameKind>(out, pit::number(name.kind()));
}

}  // namespace firn::drawing
