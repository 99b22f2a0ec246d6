// Signs of instability: what was seen on the way weighs more than any test.
//
// Sources: avalanche.ca, signs of instability (read): slab avalanches, remote triggering, whumpfs, shooting
// cracks, hollow sounds, snow shedding from trees, pinwheels, and that their absence proves nothing;
// US Forest Service (read): recent avalanches, wind, intense precipitation, collapsing or cracking, rapid
// warming.
#include "interpretation/evidence.h"

namespace firn::interpretation {
namespace {

using firnbook::Answer;

struct Said {
  FindingKey key;
  Verdict verdict;
};

// A sign whose kind is not known to this version still raises concern when somebody saw it.
Said read(const firnbook::Sign& sign) {
  if (!sign.answer()) return {FindingKey::sign_answer_unknown, Verdict::unknown};
  switch (*sign.answer()) {
    case Answer::yes:
      return {FindingKey::sign_seen, Verdict::raises};
    case Answer::no:
      return {FindingKey::sign_not_seen, Verdict::fact};
    case Answer::not_looked_for:
      return {FindingKey::sign_not_looked_for, Verdict::unknown};
  }
  return {FindingKey::sign_answer_unknown, Verdict::unknown};
}

void add_signs(const pit::View& pit, Verdict wanted, Findings& out) {
  const auto* signs = pit.raw().signs();
  for (std::uint32_t i = 0; i < pit::size_of(signs); ++i) {
    const firnbook::Sign* sign = signs->Get(i);
    const Said said = read(*sign);
    if (said.verdict != wanted) continue;
    const firnbook::Place subject = place_of(Thing::sign, static_cast<std::int32_t>(i), kWholeThing);
    add(out, Method::field_signs, said.key, said.verdict, subject, kNoDepth,
        {pit::number(sign->kind()), sign->length_10um().value_or(0), 0});
  }
}

// Every recorded slide raises, whatever its age and cause: leaving one out would take caution away.
void add_slides(const pit::View& pit, Findings& out) {
  const auto* slides = pit.raw().slides();
  for (std::uint32_t i = 0; i < pit::size_of(slides); ++i) {
    const firnbook::Slide* slide = slides->Get(i);
    const firnbook::Place subject = place_of(Thing::slide, static_cast<std::int32_t>(i), kWholeThing);
    add(out, Method::field_signs, FindingKey::slide_seen, Verdict::raises, subject, kNoDepth,
        {slide->size_tenths().value_or(0), slide->age_min().value_or(-1), pit::number(slide->trigger())});
  }
}

}  // namespace

// What was seen first, then what nobody knows, then what was looked for and not seen.
void field_signs(const pit::View& pit, Findings& out) {
  add_signs(pit, Verdict::raises, out);
  add_slides(pit, out);
  add_signs(pit, Verdict::unknown, out);
  add_signs(pit, Verdict::fact, out);
}

}  // namespace firn::interpretation
