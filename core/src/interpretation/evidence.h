// Small things that several methods share. Nothing outside core/src/interpretation includes this.
#pragma once

#include <algorithm>
#include <cstdint>

#include "interpretation/interpret.h"
#include "support/place.h"
#include "support/result.h"

namespace firn::interpretation {

using firnbook::Finding;
using firnbook::FindingKey;
using firnbook::Method;
using firnbook::TestKind;
using firnbook::Thing;
using firnbook::Verdict;

inline constexpr std::int32_t kNoDepth = -1;
inline constexpr std::uint8_t kMaxTap = 30;  // ten from the wrist, ten from the elbow, ten from the shoulder

// Depths above the surface are a slip of the record; a finding there has no depth.
constexpr std::int32_t known_depth(std::int32_t depth) {
  return depth < 0 ? kNoDepth : depth;
}

struct Numbers {
  std::int32_t a = 0, b = 0, c = 0;
};

inline void add(Findings& out, Method method, FindingKey key, Verdict verdict, const firnbook::Place& subject,
                std::int32_t depth, const Numbers& numbers) {
  out.emplace_back(subject, known_depth(depth), numbers.a, numbers.b, numbers.c, key, method, verdict);
}

inline firnbook::Place place_of_test(const pit::Test& test) {
  return place_of(Thing::test, static_cast<std::int32_t>(test.stored), kWholeThing);
}
inline firnbook::Place place_of_fracture(const pit::Test& test, const pit::Fracture& fracture) {
  return place_of(Thing::fracture, static_cast<std::int32_t>(test.stored), kWholeThing,
                  static_cast<std::int32_t>(fracture.stored));
}

// Whether a criterion that was observed is met. A value marked unreliable may raise concern; it may not
// settle that a criterion is not met.
constexpr Verdict judge(bool met, bool unreliable) {
  return met ? Verdict::raises : unreliable ? Verdict::unknown : Verdict::not_met;
}

inline bool is_valid(const pit::Test& test) {
  return test.outcome != static_cast<std::uint8_t>(firnbook::TestOutcome::not_valid);
}
inline bool has_no_fracture(const pit::Test& test) {
  return test.fracture_count == 0 &&
         test.outcome == static_cast<std::uint8_t>(firnbook::TestOutcome::no_fracture);
}

constexpr std::uint8_t stage_of_tap(std::uint8_t tap) {
  return tap < 1 || tap > kMaxTap ? std::uint8_t{0} : static_cast<std::uint8_t>(2 + (tap - 1) / 10);
}
constexpr bool is_stage(std::uint8_t stage) {
  return stage >= static_cast<std::uint8_t>(firnbook::LoadStage::isolating) &&
         stage <= static_cast<std::uint8_t>(firnbook::LoadStage::shoulder);
}

// The load under which it broke: the tap's band and the letter; where the two contradict each other, the
// easier one.
constexpr std::uint8_t load_stage(const pit::Fracture& fracture) {
  const std::uint8_t counted = stage_of_tap(fracture.tap);
  if (!is_stage(fracture.stage)) return counted;
  return counted == 0 || fracture.stage < counted ? fracture.stage : counted;
}

// Lowest tap that the record allows: 0 while isolating, kNoEase where no load was recorded.
constexpr std::int32_t easiest_tap(const pit::Fracture& fracture) {
  const std::uint8_t stage = load_stage(fracture);
  if (stage == 0) return kNoEase;
  if (stage == stage_of_tap(fracture.tap)) return fracture.tap;
  return stage == static_cast<std::uint8_t>(firnbook::LoadStage::isolating) ? 0 : (stage - 2) * 10 + 1;
}

// The fracture a finding is about, or null. Tests keep their stored order in a view.
inline const pit::Fracture* fracture_of(const pit::View& pit, const Finding& finding) {
  const firnbook::Place& subject = finding.subject();
  if (subject.thing() != Thing::fracture) return nullptr;
  const pit::Test& test = pit.tests()[static_cast<std::size_t>(subject.index())];
  return &pit.fractures()[test.first_fracture + static_cast<std::size_t>(subject.sub())];
}
inline const pit::Test* test_of(const pit::View& pit, const Finding& finding) {
  const Thing thing = finding.subject().thing();
  if (thing != Thing::fracture && thing != Thing::test) return nullptr;
  return &pit.tests()[static_cast<std::size_t>(finding.subject().index())];
}

// The tens digit of a grain form, 0 for a number outside the main classes.
constexpr std::uint8_t main_form(std::uint8_t form) {
  return form < 10 || form > 99 ? std::uint8_t{0} : static_cast<std::uint8_t>(form / 10);
}

// Whumpf, cracking and slides that nobody answered for: bit n = SignKind n.
std::int32_t unanswered_signs(const pit::View& pit);

firnbook::ConcernRank rank_of(const pit::View& pit, const Finding& finding);

}  // namespace firn::interpretation
