// When: the pit's time, and dates in layer names against it.
#include <algorithm>

#include "checking/rules.h"

namespace firn::checking {
namespace {

using firnbook::Moment;
using firnbook::TimePrecision;

constexpr std::int64_t kSecondsPerDay = 86400;
// RFC 3339 writes offsets as hh:mm below 24 hours (from memory).
constexpr std::int32_t kMinutesPerDay = 1440;

Place pit_place(int vtable_offset) {
  return place_of(Thing::pit, -1, field_id(vtable_offset));
}

std::int64_t day_of(const Moment& moment) {
  const std::int64_t seconds = moment.local_s();
  return seconds / kSecondsPerDay - (seconds % kSecondsPerDay < 0 ? 1 : 0);
}

// Sun and shade matter, so the offset is wanted wherever the hour is known.
void check_offset(const Moment& moment, const Place& place, Reporter& out) {
  if (moment.precision() < TimePrecision::minute) return;
  if (moment.offset_known() == 0) {
    out.add(CheckCode::time_without_offset, place);
  } else if (moment.offset_min() <= -kMinutesPerDay || moment.offset_min() >= kMinutesPerDay) {
    out.add(CheckCode::offset_out_of_range, place, moment.offset_min());
  }
}

// Seconds on a clock that both ends share; kept away from the ends of the range, where hostile bytes live.
std::int64_t comparable(const Moment& moment, bool use_offset) {
  const std::int64_t local = std::clamp<std::int64_t>(moment.local_s(), INT64_MIN / 2, INT64_MAX / 2);
  return use_offset ? local - std::int64_t{60} * moment.offset_min() : local;
}

void check_ends(const firnbook::TimeSpan& time, Reporter& out) {
  const Moment& begin = time.begin();
  const Moment& end = time.end();
  if (begin.precision() < TimePrecision::day || end.precision() < TimePrecision::day) return;
  const bool both_days = begin.precision() == TimePrecision::day || end.precision() == TimePrecision::day;
  const bool use_offset = begin.offset_known() != 0 && end.offset_known() != 0;
  const bool earlier =
      both_days ? day_of(end) < day_of(begin) : comparable(end, use_offset) < comparable(begin, use_offset);
  if (earlier) out.add(CheckCode::time_ends_before_begin, pit_place(firnbook::Pit::VT_TIME));
}

void check_name(const firnbook::Layer& layer, std::int64_t pit_day, const Place& place, Reporter& out) {
  const firnbook::LayerName* name = layer.name();
  const Moment* date = name != nullptr ? name->date() : nullptr;
  if (date == nullptr || date->precision() == TimePrecision::none) return;
  const std::int64_t day = day_of(*date);
  if (day > pit_day) out.add(CheckCode::layer_named_after_the_pit, place, day - pit_day);
}

// Nobody reports or corrects a pit before it is dug.
void check_later(const Moment* later, const Moment& dug, int field, Reporter& out) {
  if (later == nullptr || later->precision() < TimePrecision::day || dug.precision() < TimePrecision::day)
    return;
  const bool days = later->precision() == TimePrecision::day || dug.precision() == TimePrecision::day;
  const bool use_offset = later->offset_known() != 0 && dug.offset_known() != 0;
  const bool earlier =
      days ? day_of(*later) < day_of(dug) : comparable(*later, use_offset) < comparable(dug, use_offset);
  if (earlier) out.add(CheckCode::changed_before_dug, pit_place(field));
}

void check_formed(const pit::Layer& layer, std::int64_t pit_day, Reporter& out) {
  const firnbook::TimeSpan* formed = layer.raw->formed();
  if (formed == nullptr || formed->begin().precision() < TimePrecision::day) return;
  const std::int64_t day = day_of(formed->begin());
  if (day <= pit_day) return;
  out.add(CheckCode::layer_formed_after_the_pit, layer_place(layer, firnbook::Layer::VT_FORMED),
          day - pit_day);
}

void check_names(const pit::View& pit, const Moment& when, Reporter& out) {
  if (when.precision() < TimePrecision::day) return;
  const std::int64_t pit_day = day_of(when);
  for (const pit::Layer& layer : pit.layers()) {
    check_name(*layer.raw, pit_day, layer_place(layer, firnbook::Layer::VT_NAME), out);
    check_formed(layer, pit_day, out);
  }
  for (const pit::Fracture& fracture : pit.fractures()) {
    if (fracture.raw->on() == nullptr) continue;
    check_name(*fracture.raw->on(), pit_day,
               place_of(Thing::fracture, static_cast<std::int32_t>(fracture.test),
                        field_id(firnbook::Fracture::VT_ON), static_cast<std::int32_t>(fracture.stored)),
               out);
  }
}

}  // namespace

void check_time(const pit::View& pit, Reporter& out) {
  const firnbook::Pit& raw = pit.raw();
  const Place place = pit_place(firnbook::Pit::VT_TIME);
  if (raw.reported() != nullptr) check_offset(*raw.reported(), pit_place(firnbook::Pit::VT_REPORTED), out);
  if (raw.edited() != nullptr) check_offset(*raw.edited(), pit_place(firnbook::Pit::VT_EDITED), out);
  const firnbook::TimeSpan* time = raw.time();
  if (time == nullptr || time->begin().precision() == TimePrecision::none) {
    out.add(CheckCode::time_missing, place);
    return;
  }
  check_offset(time->begin(), place, out);
  check_offset(time->end(), place, out);
  check_ends(*time, out);
  check_later(raw.reported(), time->begin(), firnbook::Pit::VT_REPORTED, out);
  check_later(raw.edited(), time->begin(), firnbook::Pit::VT_EDITED, out);
  check_names(pit, time->begin(), out);
}

}  // namespace firn::checking
