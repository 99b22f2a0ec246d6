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

// Groups of fracture character in all tests of a kind, compression or deep tap.
void read_characters(const pit::View& pit, TestKind kind, Method method, Findings& out);

// Whether a crack crossed an extended column, and what that rests on (see FindingKey).
struct Crossed {
  std::uint8_t crossing;  // firnbook::Crossing, 0 = not known
  std::int32_t rests_on;
  bool narrower_rule;  // an N that the wider rule might have called P
};
Crossed read_crossing(const pit::Test& test, const pit::Fracture& fracture, std::int32_t taps_to_cross);
// The tap of the first crack, 0 while isolating, -1 where it was not counted.
std::int32_t first_crack(const pit::Fracture& fracture);
// Whether the crossing itself, or a tap it is read from, is marked unreliable.
bool crossing_is_unreliable(const pit::Fracture& fracture);
// Whether the first crack came at this tap or before it, as far as tap and letter tell.
enum class Known : std::uint8_t { no, yes, unknown };
Known cracked_by(const pit::Fracture& fracture, std::int32_t last_tap);
// In the top of the snow that a parameter leaves out of the Swiss service's classes.
inline bool is_ignored(const pit::Fracture& fracture, const Parameters& parameters) {
  return fracture.depth >= 0 && fracture.depth < parameters.ect_ignored_top_10um;
}

// Swiss class of a rutschblock fracture: 1 the most critical of 3, 0 where it cannot be told.
std::int32_t rutschblock_class(const pit::Fracture& fracture);
// Swiss class of an extended column that cracked, likewise.
std::int32_t extended_column_class(const pit::Test& test, const pit::Fracture& fracture,
                                   const Parameters& parameters);

constexpr bool is_hardness(std::uint8_t sixths) {
  return sixths >= static_cast<std::uint8_t>(firnbook::HandHardness::FistMinus) &&
         sixths <= static_cast<std::uint8_t>(firnbook::HandHardness::Ice);
}

// Grain size of a layer, 0 where it is not known or impossible.
inline std::int32_t size_of_grains(const pit::Layer& layer) {
  return layer.size > 0 ? layer.size : 0;
}
inline bool size_is_unreliable(const pit::Layer& layer) {
  return layer.is_unreliable(field_id(firnbook::Layer::VT_GRAIN_SIZE_10UM));
}
// What lies between the sizes on both sides, -1 where either is unknown; the verdict is `unknown` where one
// of them is unreliable, else `fact`.
Flag size_difference(const Interface& one);
// The same for the hardness where the layers touch, in sixths of a step.
Flag hardness_difference(const Interface& one);
// Thickness of the weaker layer, 0 where it is not known.
std::int32_t thickness_of(const pit::Layer& layer);

// Criteria of a boundary as masks: those that are met, and those that nobody can judge.
class Criteria {
 public:
  void take(std::int32_t bit, Verdict verdict) {
    if (verdict == Verdict::raises) met_ |= 1 << bit;
    if (verdict == Verdict::unknown) unknown_ |= 1 << bit;
  }
  std::int32_t met() const { return met_; }
  std::int32_t unknown() const { return unknown_; }

 private:
  std::int32_t met_ = 0, unknown_ = 0;
};
constexpr std::int32_t count_bits(std::int32_t mask) {
  std::int32_t count = 0;
  for (std::int32_t bit = 0; bit < 8; ++bit) count += mask >> bit & 1;
  return count;
}

firnbook::ConcernRank rank_of(const pit::View& pit, const Finding& finding);

// The results at one place read together. README.md has the rules.
class ReadTogether {
 public:
  // `rank` is that of the finding.
  void take(const pit::View& pit, const Finding& finding, firnbook::ConcernRank rank);
  firnbook::ConcernReading reading() const;

 private:
  bool ran_ = false, did_not_run_ = false, started_ = false, ordinary_ = false, hard_ = false;
};
firnbook::ConcernReach reach_of(std::int32_t depth, const Parameters& parameters);

}  // namespace firn::interpretation
