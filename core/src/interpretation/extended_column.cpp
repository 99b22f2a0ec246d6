// Extended column test by the operational classes of the Swiss service (read): crossed before the 22nd tap or
// while isolating; crossed from the 22nd tap on; not crossed; no fracture. The names of the classes stay out
// of findings.
//
// That scheme counts a crossing on the tap of the first crack or one tap later (read). Where both taps were
// watched they decide; else the writer's letter, which may follow a narrower rule.
#include "interpretation/evidence.h"

namespace firn::interpretation {
namespace {

using firnbook::Crossing;
using firnbook::CrossingRule;
using firnbook::LoadStage;

constexpr std::int32_t kBothTaps = 0;
constexpr std::int32_t kRuleNotNamed = 3;

bool while_isolating(const pit::Fracture& fracture) {
  return load_stage(fracture) == static_cast<std::uint8_t>(LoadStage::isolating);
}

// A crossing whose tap was not counted: the letter of the load tells the class for all but the shoulder.
FindingKey class_of_crossing(const pit::Fracture& fracture, const Parameters& parameters) {
  switch (cracked_by(fracture, parameters.ect_last_tap_of_lower_class)) {
    case Known::yes:
      return FindingKey::ect_crossed_before_22;
    case Known::no:
      return FindingKey::ect_crossed_from_22;
    default:
      return FindingKey::ect_crossed_tap_unknown;
  }
}

void read_fracture(const pit::Test& test, const pit::Fracture& fracture, const Parameters& parameters,
                   Findings& out) {
  const firnbook::Place subject = place_of_fracture(test, fracture);
  const Crossed crossed = read_crossing(test, fracture, parameters.ect_taps_to_cross);
  const Numbers numbers = {fracture.tap, fracture.tap_crossed, crossed.rests_on};
  FindingKey key = FindingKey::ect_crossing_unknown;
  Verdict verdict = Verdict::unknown;
  if (is_ignored(fracture, parameters)) {
    key = FindingKey::ect_in_ignored_top;
    verdict = Verdict::fact;
  } else if (crossed.crossing == static_cast<std::uint8_t>(Crossing::crossed)) {
    key = class_of_crossing(fracture, parameters);
    verdict = Verdict::raises;
  } else if (crossed.crossing == static_cast<std::uint8_t>(Crossing::not_crossed)) {
    key = FindingKey::ect_not_crossed;
    verdict = judge(false, crossed.narrower_rule || crossing_is_unreliable(fracture));
  }
  add(out, Method::extended_column_swiss, key, verdict, subject, fracture.depth, numbers);
}

}  // namespace

std::int32_t first_crack(const pit::Fracture& fracture) {
  if (while_isolating(fracture)) return 0;
  return stage_of_tap(fracture.tap) == 0 ? -1 : fracture.tap;
}

Crossed read_crossing(const pit::Test& test, const pit::Fracture& fracture, std::int32_t taps_to_cross) {
  const std::int32_t crack = first_crack(fracture);
  const std::int32_t across = fracture.tap_crossed;
  if (crack >= 0 && across > 0 && across <= kMaxTap && across >= crack) {
    const bool crossed = std::int64_t{across} - crack <= taps_to_cross;
    return {static_cast<std::uint8_t>(crossed ? Crossing::crossed : Crossing::not_crossed), kBothTaps, false};
  }
  const bool named = test.crossing_rule == static_cast<std::uint8_t>(CrossingRule::same_tap) ||
                     test.crossing_rule == static_cast<std::uint8_t>(CrossingRule::one_more_tap);
  const bool narrower = test.crossing_rule == static_cast<std::uint8_t>(CrossingRule::same_tap) &&
                        fracture.crossing == static_cast<std::uint8_t>(Crossing::not_crossed);
  return {fracture.crossing, named ? test.crossing_rule : kRuleNotNamed, narrower};
}

bool crossing_is_unreliable(const pit::Fracture& fracture) {
  constexpr std::uint64_t kFields = std::uint64_t{1} << field_id(firnbook::Fracture::VT_TAP) |
                                    std::uint64_t{1} << field_id(firnbook::Fracture::VT_TAP_CROSSED) |
                                    std::uint64_t{1} << field_id(firnbook::Fracture::VT_CROSSING);
  return (fracture.unreliable & kFields) != 0;
}

// Ten taps a letter: its first and last tap tell where both lie on one side of the limit.
Known cracked_by(const pit::Fracture& fracture, std::int32_t last_tap) {
  const std::int32_t crack = first_crack(fracture);
  if (crack >= 0) return crack <= last_tap ? Known::yes : Known::no;
  const std::int32_t stage = load_stage(fracture);
  if (stage == 0) return Known::unknown;
  const std::int32_t last_of_stage = (stage - 1) * 10;
  if (last_of_stage <= last_tap) return Known::yes;
  return last_of_stage - 9 > last_tap ? Known::no : Known::unknown;
}

std::int32_t extended_column_class(const pit::Test& test, const pit::Fracture& fracture,
                                   const Parameters& parameters) {
  const Crossed crossed = read_crossing(test, fracture, parameters.ect_taps_to_cross);
  if (crossed.crossing == static_cast<std::uint8_t>(Crossing::crossed)) {
    const Known early = cracked_by(fracture, parameters.ect_last_tap_of_lower_class);
    return early == Known::yes ? 1 : early == Known::no ? 2 : 0;
  }
  const bool told = crossed.crossing == static_cast<std::uint8_t>(Crossing::not_crossed) &&
                    !crossed.narrower_rule && !crossing_is_unreliable(fracture);
  return told ? 3 : 0;
}

void extended_column(const pit::View& pit, const Parameters& parameters, Findings& out) {
  for (const pit::Test& test : pit.tests()) {
    if (test.kind != TestKind::ECT || !is_valid(test)) continue;
    if (has_no_fracture(test)) {
      add(out, Method::extended_column_swiss, FindingKey::ect_no_fracture, Verdict::raised_nothing,
          place_of_test(test), kNoDepth, {});
    }
    for (std::uint32_t k = 0; k < test.fracture_count; ++k) {
      read_fracture(test, pit.fractures()[test.first_fracture + k], parameters, out);
    }
  }
}

}  // namespace firn::interpretation
