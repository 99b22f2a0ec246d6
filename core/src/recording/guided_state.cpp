// The tables of the machines, and where a test stands in them.
#include "recording/guided_state.h"

#include <algorithm>

namespace firn::recording {
namespace {

using firnbook::CrossingRule;
using firnbook::FractureT;
using firnbook::StabilityTestT;
using firnbook::TestEventKind;
using firnbook::TestKind;
using firnbook::TestOutcome;

constexpr std::uint32_t kTap = bit(TestEventKind::tap) | bit(TestEventKind::set_tap);
constexpr std::uint32_t kSetTap = bit(TestEventKind::set_tap);
constexpr std::uint32_t kCrack = bit(TestEventKind::crack);
constexpr std::uint32_t kIsolating = bit(TestEventKind::isolating);
constexpr std::uint32_t kCrossed = bit(TestEventKind::crossed);
constexpr std::uint32_t kNotCrossed = bit(TestEventKind::not_crossed);
constexpr std::uint32_t kSlid = bit(TestEventKind::slid);
constexpr std::uint32_t kLevelled = bit(TestEventKind::levelled);
constexpr std::uint32_t kSaw = bit(TestEventKind::cut_to) | bit(TestEventKind::ran);
constexpr std::uint32_t kRan = bit(TestEventKind::ran);
constexpr std::uint32_t kLoaded = bit(TestEventKind::loaded);
constexpr std::uint32_t kNotValid = bit(TestEventKind::not_valid);
constexpr std::uint32_t kStop = bit(TestEventKind::stop);
// Of a fracture that was recorded; and giving the test up.
constexpr std::uint32_t kAlways = bit(TestEventKind::describe) | bit(TestEventKind::retract) | kNotValid;
constexpr std::uint32_t kDescribe = bit(TestEventKind::describe);
constexpr std::uint32_t kNeedsFracture =
    bit(TestEventKind::describe) | bit(TestEventKind::retract) | kNotCrossed | kSlid | kLevelled;

// clang-format off
constexpr Machine kMachines[] = {
    {TestKind::CT, Sentence::cut_column, Sentence::depth_compression, {
        kIsolating | kTap | kNotValid,
        kIsolating | kTap | kSlid | kLevelled | kStop | kAlways,
        kTap | kCrack | kSlid | kLevelled | kStop | kAlways,
        kSetTap | kCrack | kSlid | kStop | kAlways,
        kSetTap | kLevelled | kStop | kAlways,
        0,
        kAlways,
        kDescribe}},
    // The slab is gone already: there is no damaged top to take off.
    {TestKind::DT, Sentence::cut_deep_column, Sentence::depth_deep_tap, {
        kIsolating | kTap | kNotValid,
        kIsolating | kTap | kSlid | kStop | kAlways,
        kTap | kCrack | kSlid | kStop | kAlways,
        kSetTap | kCrack | kSlid | kStop | kAlways,
        kSetTap | kStop | kAlways,
        0,
        kAlways,
        kDescribe}},
    {TestKind::ECT, Sentence::cut_extended_column, Sentence::depth_extended, {
        kIsolating | kTap | kNotValid,
        kIsolating | kTap | kCrossed | kNotCrossed | kStop | kAlways,
        kTap | kCrack | kCrossed | kNotCrossed | kStop | kAlways,
        kSetTap | kCrack | kCrossed | kNotCrossed | kStop | kAlways,
        0,
        kTap | kCrack | kCrossed | kNotCrossed | kAlways,
        kAlways,
        kDescribe}},
    {TestKind::PST, Sentence::cut_saw_column, Sentence::depth_saw, {
        kSaw | kNotValid,
        kSaw | kStop | kAlways,
        kSaw | kAlways,
        kRan | kStop | kAlways,
        0,
        0,
        kAlways,
        kDescribe}},
    {TestKind::RB, Sentence::cut_block, Sentence::depth_block, {
        kIsolating | kLoaded | kNotValid,
        kIsolating | kLoaded | kCrack | kStop | kAlways,
        kLoaded | kCrack | kAlways,
        kLoaded | kCrack | kStop | kAlways,
        0,
        kStop | kAlways,
        kAlways,
        kDescribe}},
    {TestKind::ST, Sentence::cut_shear_column, Sentence::depth_shear, {
        kIsolating | kCrack | kStop | kNotValid,
        kIsolating | kCrack | kStop | kAlways,
        0, 0, 0, 0,
        kAlways,
        kDescribe}},
    {TestKind::hand_shear, Sentence::pull_by_hand, Sentence::depth_shear, {
        kCrack | kStop | kNotValid,
        kCrack | kStop | kAlways,
        0, 0, 0, 0,
        kAlways,
        kDescribe}},
};
// clang-format on

// Under the strict rule a crack is settled on its own tap; else one more tap decides (read: the Swiss service
// counts it, SWAG since 2016 does not).
bool is_tap_due(const Run& run, const StabilityTestT& test) {
  if (test.crossing_rule == CrossingRule::same_tap) return false;
  for (const auto& crack : test.fractures) {
    if (crack != nullptr && is_open_crack(*crack) && taps_since(*crack, run) <= 0) return true;
  }
  return false;
}

bool is_release_due(const StabilityTestT& test) {
  for (const auto& fracture : test.fractures) {
    if (fracture != nullptr && !fracture->release) return true;
  }
  return false;
}

GuidedState state_of_taps(const Run& run, const StabilityTestT& test, bool has_fracture) {
  if (run.slid) return GuidedState::slid;
  if (run.taps >= kMostTaps) return GuidedState::full;
  if (run.kind == TestKind::ECT && is_tap_due(run, test)) return GuidedState::due;
  if (run.taps > 0) return GuidedState::loading;
  return has_fracture ? GuidedState::broke : GuidedState::untouched;
}

GuidedState state_of_saw(const Run& run, const StabilityTestT& test, bool has_fracture) {
  if (test.column_length_10um && run.cut_10um >= *test.column_length_10um) return GuidedState::full;
  if (has_fracture) return GuidedState::broke;
  return run.cut_10um > 0 ? GuidedState::loading : GuidedState::untouched;
}

GuidedState state_of_steps(const Run& run, const StabilityTestT& test, bool has_fracture) {
  if (is_release_due(test)) return GuidedState::due;
  if (run.step >= kLastStep) return GuidedState::full;
  if (has_fracture) return GuidedState::broke;
  return run.step > 0 ? GuidedState::loading : GuidedState::untouched;
}

}  // namespace

const Machine* machine_of(TestKind kind) {
  for (const Machine& machine : kMachines) {
    if (machine.kind == kind) return &machine;
  }
  return nullptr;
}

bool counts_taps(TestKind kind) {
  return kind == TestKind::CT || kind == TestKind::DT || kind == TestKind::ECT;
}

const FractureT* last_fracture(const StabilityTestT& test) {
  for (auto it = test.fractures.rbegin(); it != test.fractures.rend(); ++it) {
    if (*it != nullptr) return it->get();
  }
  return nullptr;
}

bool is_open_crack(const FractureT& crack) {
  return !crack.crossing && !crack.tap_crossed;
}

int taps_since(const FractureT& crack, const Run& run) {
  return int{run.taps} - int{crack.tap.value_or(0)};
}

std::uint8_t highest_tap(const StabilityTestT& test) {
  std::uint8_t tap = 0;
  for (const auto& fracture : test.fractures) {
    if (fracture == nullptr) continue;
    tap = std::max({tap, fracture->tap.value_or(0), fracture->tap_crossed.value_or(0)});
  }
  return tap;
}

GuidedState state_of(const Run& run, const StabilityTestT& test) {
  if (test.outcome == TestOutcome::not_valid) return GuidedState::not_valid;
  if (run.ended) return GuidedState::ended;
  const bool has_fracture = last_fracture(test) != nullptr;
  if (counts_taps(run.kind)) return state_of_taps(run, test, has_fracture);
  if (run.kind == TestKind::PST) return state_of_saw(run, test, has_fracture);
  if (run.kind == TestKind::RB) return state_of_steps(run, test, has_fracture);
  return has_fracture ? GuidedState::broke : GuidedState::untouched;
}

bool is_guided(TestKind kind) {
  return machine_of(kind) != nullptr;
}

std::uint32_t allowed_events(TestKind kind, GuidedState state, bool has_fracture) {
  const Machine* machine = machine_of(kind);
  const auto number = static_cast<std::size_t>(state);
  if (machine == nullptr || number < 1 || number > kStates) return 0;
  const std::uint32_t allowed = machine->allowed[number - 1];
  return has_fracture ? allowed : allowed & ~kNeedsFracture;
}

}  // namespace firn::recording
