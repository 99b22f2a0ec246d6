// What was not looked for, not understood or left open. Signs of instability come before any test, so
// "not looked for" is said, and never read as "no".
#include "checking/rules.h"

namespace firn::checking {
namespace {

using firnbook::Answer;
using firnbook::SignKind;

Place sign_place(std::uint32_t index, int vtable_offset) {
  return place_of(Thing::sign, static_cast<std::int32_t>(index), field_id(vtable_offset));
}

// Slides that stand in the record, for comparison with a "no" among the signs.
struct SlidesListed {
  std::int64_t count = 0;
  std::int64_t remote = 0;
};

SlidesListed count_slides(const firnbook::Pit& raw) {
  SlidesListed listed;
  listed.count = pit::size_of(raw.slides());
  for (std::uint32_t i = 0; i < pit::size_of(raw.slides()); ++i) {
    const auto trigger = raw.slides()->Get(i)->trigger();
    if (trigger && *trigger == firnbook::Trigger::remote) ++listed.remote;
  }
  return listed;
}

void check_sign(const firnbook::Sign& sign, std::uint32_t index, const SlidesListed& slides, Reporter& out) {
  const std::int64_t kind = pit::number(sign.kind());
  if (!sign.kind() || !sign.answer()) {
    out.add(CheckCode::sign_without_answer,
            sign_place(index, sign.kind() ? firnbook::Sign::VT_ANSWER : firnbook::Sign::VT_KIND), kind);
    return;
  }
  const Place place = sign_place(index, firnbook::Sign::VT_ANSWER);
  if (sign.length_10um().value_or(0) > 0 && *sign.answer() != Answer::yes) {
    out.add(CheckCode::length_without_sign, sign_place(index, firnbook::Sign::VT_LENGTH_10UM), kind,
            *sign.length_10um());
  }
  if (*sign.answer() == Answer::not_looked_for) out.add(CheckCode::signs_not_looked_for, place, kind);
  if (*sign.answer() != Answer::no) return;
  const std::int64_t listed = *sign.kind() == SignKind::slides           ? slides.count
                              : *sign.kind() == SignKind::remote_trigger ? slides.remote
                                                                         : 0;
  if (listed > 0) out.add(CheckCode::slides_contradict_sign, place, kind, listed);
}

// Two answers to one question: the first that differs from the first given.
void check_twice(const firnbook::Pit& raw, Reporter& out) {
  constexpr std::size_t kKinds = 256;
  std::uint8_t answers[kKinds] = {};
  for (std::uint32_t i = 0; i < pit::size_of(raw.signs()); ++i) {
    const firnbook::Sign& sign = *raw.signs()->Get(i);
    if (!sign.kind() || !sign.answer()) continue;
    const auto answer = static_cast<std::uint8_t>(*sign.answer());
    std::uint8_t& first = answers[static_cast<std::uint8_t>(*sign.kind())];
    if (first == 0) first = answer;
    if (first == answer) continue;
    out.add(CheckCode::sign_answered_twice, sign_place(i, firnbook::Sign::VT_ANSWER),
            pit::number(sign.kind()));
  }
}

void check_signs(const firnbook::Pit& raw, Reporter& out) {
  const std::uint32_t count = pit::size_of(raw.signs());
  if (count == 0) {
    out.add(CheckCode::signs_not_recorded, place_of(Thing::pit, -1, field_id(firnbook::Pit::VT_SIGNS)));
    return;
  }
  const SlidesListed slides = count_slides(raw);
  for (std::uint32_t i = 0; i < count; ++i) check_sign(*raw.signs()->Get(i), i, slides, out);
  check_twice(raw, out);
}

// Sizes of avalanches go from 1 to 5 (from memory).
void check_slides(const firnbook::Pit& raw, Reporter& out) {
  constexpr std::uint8_t kSmallest = 10;
  constexpr std::uint8_t kLargest = 50;
  for (std::uint32_t i = 0; i < pit::size_of(raw.slides()); ++i) {
    const firnbook::Slide& slide = *raw.slides()->Get(i);
    const auto index = static_cast<std::int32_t>(i);
    const auto size = slide.size_tenths();
    if (size && (*size < kSmallest || *size > kLargest)) {
      out.add(CheckCode::slide_size_out_of_range,
              place_of(Thing::slide, index, field_id(firnbook::Slide::VT_SIZE_TENTHS)), *size);
    }
    if (slide.age_min().value_or(0) < 0) {
      out.add(CheckCode::slide_age_negative,
              place_of(Thing::slide, index, field_id(firnbook::Slide::VT_AGE_MIN)), *slide.age_min());
    }
  }
}

}  // namespace

void check_completeness(const pit::View& pit, Reporter& out) {
  const firnbook::Pit& raw = pit.raw();
  check_signs(raw, out);
  check_slides(raw, out);
  for (std::uint32_t i = 0; i < pit::size_of(raw.unread()); ++i) {
    out.add(CheckCode::line_not_understood,
            place_of(Thing::unread, static_cast<std::int32_t>(i), field_id(firnbook::Unread::VT_TEXT)),
            raw.unread()->Get(i)->line().value_or(0));
  }
  if (raw.backfilled() && !*raw.backfilled()) {
    out.add(CheckCode::not_backfilled, place_of(Thing::pit, -1, field_id(firnbook::Pit::VT_BACKFILLED)));
  }
  if (raw.unread_edits().value_or(0) > 0) {
    out.add(CheckCode::edits_not_read, place_of(Thing::pit, -1, field_id(firnbook::Pit::VT_UNREAD_EDITS)),
            *raw.unread_edits());
  }
}

}  // namespace firn::checking
