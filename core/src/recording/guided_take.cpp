// What an event does to the test.
#include <algorithm>

#include "recording/guided_state.h"

namespace firn::recording {
namespace {

using firnbook::Crossing;
using firnbook::CrossingRule;
using firnbook::FractureT;
using firnbook::LoadStage;
using firnbook::SawEnd;
using firnbook::ShearEase;
using firnbook::StabilityTestT;
using firnbook::TestEventKind;
using firnbook::TestKind;
using firnbook::TestOutcome;

// Taps given beyond the last fracture loaded what lies below, so they are written down; a test that was
// loaded to the end without a fracture says so by its outcome.
void write_taps(const Run& run, StabilityTestT& test) {
  if (!counts_taps(run.kind)) return;
  test.taps_given.reset();
  if (test.outcome == TestOutcome::no_fracture || run.taps <= highest_tap(test)) return;
  test.taps_given = run.taps;
}

// What the taps since have shown of cracks that nobody said had crossed.
void settle_cracks(const Run& run, StabilityTestT& test) {
  if (run.kind != TestKind::ECT) return;
  for (const auto& crack : test.fractures) {
    if (crack == nullptr || !is_open_crack(*crack)) continue;
    const bool was_watched =
        taps_since(*crack, run) >= 1 || run.taps >= kMostTaps || test.crossing_rule == CrossingRule::same_tap;
    if (was_watched) crack->crossing = Crossing::not_crossed;
  }
}

void stop(Run& run, StabilityTestT& test) {
  run.ended = true;
  settle_cracks(run, test);
  // Thirty taps, all steps, a cut through, or a pull: to the end. Stopped before, nothing is claimed.
  const bool to_the_end = !counts_taps(run.kind) || run.taps >= kMostTaps;
  if (last_fracture(test) == nullptr && to_the_end) test.outcome = TestOutcome::no_fracture;
  write_taps(run, test);
}

void cross(Run& run, StabilityTestT& test, FractureT& crack) {
  const int later = taps_since(crack, run);
  crack.crossing.reset();
  if (later > 0) crack.tap_crossed = run.taps;
  // On the tap of the first crack it is P under any rule, and is written without a second tap as ECTP13 is;
  // one tap later the rule decides, if the test has one; later than that it is N under any.
  if (later <= 0) {
    crack.crossing = Crossing::crossed;
  } else if (later > 1 || test.crossing_rule == CrossingRule::same_tap) {
    crack.crossing = Crossing::not_crossed;
  } else if (test.crossing_rule == CrossingRule::one_more_tap) {
    crack.crossing = Crossing::crossed;
  }
  run.ended = true;
  settle_cracks(run, test);
}

void mark_isolating(const Run& run, FractureT& fracture) {
  if (run.kind == TestKind::RB) {
    fracture.step = std::uint8_t{1};
  } else if (run.kind == TestKind::ST) {
    fracture.ease = ShearEase::C;
  } else {
    fracture.stage = LoadStage::isolating;
  }
}

void mark_load(const Run& run, FractureT& fracture) {
  if (counts_taps(run.kind)) fracture.tap = run.taps;
  if (run.kind != TestKind::RB) return;
  fracture.step = run.step;
  if (run.jump > 0) fracture.jump = run.jump;
}

void mark_ran(Run& run, FractureT& fracture) {
  if (fracture.cut_10um) run.cut_10um = *fracture.cut_10um;
  fracture.cut_10um = run.cut_10um;
  if (fracture.saw_end != SawEnd::Arr) run.ended = true;
}

void end_when_block_is_gone(Run& run, const FractureT& fracture) {
  if (run.kind == TestKind::RB && fracture.release == firnbook::ReleaseType::WB) run.ended = true;
}

void retract(Run& run, StabilityTestT& test) {
  run.ended = false;
  if (counts_taps(run.kind)) test.taps_given.reset();
  if (last_fracture(test) != nullptr) return;
  test.outcome.reset();
  run.slid = false;
}

void take_load(Run& run, const TestEvent& event) {
  switch (event.kind) {
    case TestEventKind::tap:
      ++run.taps;
      return;
    case TestEventKind::set_tap:
      run.taps = *event.fracture->tap();
      return;
    case TestEventKind::cut_to:
      run.cut_10um = *event.fracture->cut_10um();
      return;
    case TestEventKind::loaded:
      run.step = *event.fracture->step();
      run.jump = event.fracture->jump().value_or(0);
      return;
    case TestEventKind::slid:
      run.slid = true;
      return;
    case TestEventKind::levelled:
      run.slid = false;
      return;
    default:
      return;
  }
}

void take_fracture(Run& run, StabilityTestT& test, const TestEvent& event, FractureT& fracture) {
  test.outcome = TestOutcome::fractured;
  switch (event.kind) {
    case TestEventKind::isolating:
      mark_isolating(run, fracture);
      break;
    case TestEventKind::crossed:
      mark_load(run, fracture);
      cross(run, test, fracture);
      break;
    case TestEventKind::ran:
      mark_ran(run, fracture);
      break;
    default:
      mark_load(run, fracture);
      break;
  }
  end_when_block_is_gone(run, fracture);
}

}  // namespace

void take_event(Run& run, StabilityTestT& test, const TestEvent& event, std::uint32_t sub) {
  if (adds_fracture(event)) return take_fracture(run, test, event, *test.fractures[sub]);
  switch (event.kind) {
    case TestEventKind::crossed:
      return cross(run, test, *test.fractures[sub]);
    case TestEventKind::not_crossed:
      test.fractures[sub]->crossing = Crossing::not_crossed;
      return;
    case TestEventKind::describe:
      return end_when_block_is_gone(run, *test.fractures[sub]);
    case TestEventKind::retract:
      return retract(run, test);
    case TestEventKind::not_valid:
      run.ended = true;
      test.outcome = TestOutcome::not_valid;
      return;
    case TestEventKind::stop:
      return stop(run, test);
    default:
      return take_load(run, event);
  }
}

}  // namespace firn::recording
