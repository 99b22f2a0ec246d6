// What an event is answered with: where the test stands, what comes next, what is still missing.
#include "recording/guided.h"

#include <algorithm>

#include "recording/guided_state.h"

namespace firn::recording {
namespace {

using firnbook::Crossing;
using firnbook::Fracture;
using firnbook::FractureT;
using firnbook::StabilityTest;
using firnbook::StabilityTestT;
using firnbook::TestKind;

Sentence next_tap(const Run& run) {
  if (run.kind == TestKind::CT && run.taps == kTapsPerStage) return Sentence::level_slope_first;
  if (run.taps < kTapsPerStage) return Sentence::tap_wrist;
  return run.taps < 2 * kTapsPerStage ? Sentence::tap_elbow : Sentence::tap_shoulder;
}

Sentence next_step(const Run& run) {
  constexpr Sentence kSteps[] = {Sentence::step_two,  Sentence::step_two,  Sentence::step_three,
                                 Sentence::step_four, Sentence::step_five, Sentence::step_six,
                                 Sentence::steps_done};
  return kSteps[std::min<std::uint8_t>(run.step, kLastStep)];
}

Sentence next_load(const Run& run, GuidedState state) {
  switch (run.kind) {
    case TestKind::PST:
      if (state == GuidedState::full) return Sentence::sawn_through;
      return state == GuidedState::broke ? Sentence::saw_after_arrest : Sentence::saw_on;
    case TestKind::RB:
      return next_step(run);
    case TestKind::ST:
      return Sentence::pull;
    case TestKind::hand_shear:
      return Sentence::pull_by_hand;
    default:
      return state == GuidedState::full ? Sentence::taps_done : next_tap(run);
  }
}

Sentence next_of(const Run& run, const StabilityTestT& test, GuidedState state) {
  switch (state) {
    case GuidedState::not_valid:
      return Sentence::dig_another;
    case GuidedState::ended:
      for (const auto& crack : test.fractures) {
        if (run.kind != TestKind::ECT || crack == nullptr) continue;
        if (crack->tap_crossed || crack->crossing == Crossing::crossed) return Sentence::ended_crossed;
      }
      return Sentence::ended;
    case GuidedState::slid:
      return run.kind == TestKind::CT ? Sentence::level_top : Sentence::no_tapping_on;
    case GuidedState::due:
      return run.kind == TestKind::RB ? Sentence::say_release : Sentence::one_more_tap;
    case GuidedState::untouched:
      return machine_of(run.kind)->column;
    default:
      return next_load(run, state);
  }
}

Sentence watch_of(const Run& run, GuidedState state) {
  if (state == GuidedState::ended || state == GuidedState::not_valid) return Sentence::none;
  const bool can_break_while_cutting = run.kind != TestKind::PST && run.kind != TestKind::hand_shear;
  if (state == GuidedState::untouched && can_break_while_cutting) return Sentence::watch_cutting;
  switch (run.kind) {
    case TestKind::ECT:
      return Sentence::watch_crossing;
    case TestKind::PST:
      return Sentence::watch_crack;
    case TestKind::RB:
      return Sentence::watch_block;
    case TestKind::ST:
    case TestKind::hand_shear:
      return Sentence::watch_shear;
    default:
      return Sentence::watch_column;
  }
}

// Character and quality are not recorded for the extended column and the saw test (read: SWAG's list of
// changes of 2016).
std::uint64_t missing_in(const Run& run, const FractureT& fracture) {
  std::uint64_t missing = fracture.depth == nullptr ? field_bit(Fracture::VT_DEPTH) : 0;
  const bool says_how = fracture.character || fracture.quality || fracture.fracture_surface;
  const bool wants_character = run.kind == TestKind::CT || run.kind == TestKind::DT;
  if (wants_character && !says_how) missing |= field_bit(Fracture::VT_CHARACTER);
  if (run.kind == TestKind::ECT && is_open_crack(fracture)) missing |= field_bit(Fracture::VT_CROSSING);
  if (run.kind == TestKind::RB && !fracture.release) missing |= field_bit(Fracture::VT_RELEASE);
  const bool is_shear = run.kind == TestKind::ST || run.kind == TestKind::hand_shear;
  if (is_shear && !fracture.ease) missing |= field_bit(Fracture::VT_EASE);
  return missing;
}

std::uint64_t missing_in_test(const Run& run, const StabilityTestT& test) {
  if (run.kind == TestKind::PST && !test.column_length_10um) {
    return field_bit(StabilityTest::VT_COLUMN_LENGTH_10UM);
  }
  if (run.kind != TestKind::ECT || test.crossing_rule) return 0;
  for (const auto& crack : test.fractures) {
    if (crack == nullptr || !crack->tap_crossed) continue;
    if (*crack->tap_crossed == crack->tap.value_or(0) + 1) return field_bit(StabilityTest::VT_CROSSING_RULE);
  }
  return 0;
}

struct Asking {
  std::uint64_t field;
  Sentence sentence;
};
constexpr Asking kAskFracture[] = {
    {field_bit(Fracture::VT_CROSSING), Sentence::say_crossing},
    {field_bit(Fracture::VT_RELEASE), Sentence::say_release},
    {field_bit(Fracture::VT_EASE), Sentence::say_ease},
    {field_bit(Fracture::VT_DEPTH), Sentence::say_depth},
    {field_bit(Fracture::VT_CHARACTER), Sentence::say_how_it_broke},
};
constexpr Asking kAskTest[] = {
    {field_bit(StabilityTest::VT_COLUMN_LENGTH_10UM), Sentence::say_column_length},
    {field_bit(StabilityTest::VT_CROSSING_RULE), Sentence::say_rule},
};

Sentence asking_for(const Guidance& guidance) {
  for (const Asking& asking : kAskFracture) {
    if ((guidance.missing & asking.field) != 0) return asking.sentence;
  }
  for (const Asking& asking : kAskTest) {
    if ((guidance.missing_of_test & asking.field) != 0) return asking.sentence;
  }
  return Sentence::none;
}

void look_at_fractures(const Run& run, const StabilityTestT& test, Guidance& out) {
  for (std::uint32_t sub = 0; sub < test.fractures.size(); ++sub) {
    if (test.fractures[sub] == nullptr) continue;
    const FractureT& fracture = *test.fractures[sub];
    out.last = sub;
    ++out.fracture_count;
    const std::uint64_t missing = missing_in(run, fracture);
    if (missing != 0 && out.missing == 0) {
      out.missing = missing;
      out.of = sub;
    }
    if (run.kind != TestKind::ECT || fracture.tap_crossed || fracture.crossing == Crossing::crossed) continue;
    if (is_open_crack(fracture) && taps_since(fracture, run) <= 1) {
      out.pending = sub;
    } else {
      out.older_crack = true;
    }
  }
  if (out.of == kNoFracture) out.of = out.last;
}

}  // namespace

Guidance guide(const Run& run, const StabilityTestT& test) {
  Guidance out;
  out.kind = run.kind;
  out.state = state_of(run, test);
  out.taps = run.taps;
  out.step = run.step;
  out.jump = run.jump;
  out.cut_10um = run.cut_10um;
  if (test.fractures.size() <= kMostFractures) look_at_fractures(run, test, out);
  out.allowed = allowed_events(run.kind, out.state, out.fracture_count > 0);
  if (counts_taps(run.kind) && run.taps > 0) {
    out.stage = static_cast<std::uint8_t>(2 + (run.taps - 1) / kTapsPerStage);
    out.tap_in_stage = static_cast<std::uint8_t>((run.taps - 1) % kTapsPerStage + 1);
  }
  out.missing_of_test = missing_in_test(run, test);
  out.next = next_of(run, test, out.state);
  out.watch = watch_of(run, out.state);
  out.reach = machine_of(run.kind)->reach;
  out.record = asking_for(out);
  return out;
}

}  // namespace firn::recording
