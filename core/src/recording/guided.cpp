#include "recording/guided.h"

#include <algorithm>

#include "support/place.h"

namespace firn::recording {
namespace {

using firnbook::Change;
using firnbook::Crossing;
using firnbook::CrossingRule;
using firnbook::Depth;
using firnbook::Fracture;
using firnbook::FractureT;
using firnbook::LoadStage;
using firnbook::Pit;
using firnbook::SawEnd;
using firnbook::ShearEase;
using firnbook::StabilityTest;
using firnbook::StabilityTestT;
using firnbook::TestEventKind;
using firnbook::TestKind;
using firnbook::TestOutcome;

Failure refuse(const char* what, const char* remedy) {
  Failure failure;
  failure.status = FIRN_BAD_EDIT;
  failure.what = what;
  failure.remedy = remedy;
  return failure;
}

// Which of the values that were said is wrong.
Failure refuse(const char* what, const char* remedy, int vtable_offset) {
  Failure failure = refuse(what, remedy);
  failure.place = {-1, -1, field_id(vtable_offset), firnbook::Thing::fracture};
  return failure;
}

// --- what may come in which state -------------------------------------------------------------------------

constexpr std::uint32_t bit(TestEventKind kind) {
  return std::uint32_t{1} << static_cast<unsigned>(kind);
}
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

constexpr std::size_t kStates = 8;
struct Machine {
  TestKind kind;
  std::uint32_t allowed[kStates];  // in order of GuidedState
};

// clang-format off
constexpr Machine kMachines[] = {
    {TestKind::CT, {
        kIsolating | kTap | kNotValid,
        kIsolating | kTap | kSlid | kLevelled | kStop | kAlways,
        kTap | kCrack | kSlid | kLevelled | kStop | kAlways,
        kSetTap | kCrack | kSlid | kStop | kAlways,
        kSetTap | kLevelled | kStop | kAlways,
        0,
        kAlways,
        kDescribe}},
    // The slab is gone already: there is no damaged top to take off.
    {TestKind::DT, {
        kIsolating | kTap | kNotValid,
        kIsolating | kTap | kSlid | kStop | kAlways,
        kTap | kCrack | kSlid | kStop | kAlways,
        kSetTap | kCrack | kSlid | kStop | kAlways,
        kSetTap | kStop | kAlways,
        0,
        kAlways,
        kDescribe}},
    {TestKind::ECT, {
        kIsolating | kTap | kNotValid,
        kIsolating | kTap | kCrossed | kNotCrossed | kStop | kAlways,
        kTap | kCrack | kCrossed | kNotCrossed | kStop | kAlways,
        kSetTap | kCrack | kCrossed | kNotCrossed | kStop | kAlways,
        0,
        kTap | kCrack | kCrossed | kNotCrossed | kAlways,
        kAlways,
        kDescribe}},
    {TestKind::PST, {
        kSaw | kNotValid,
        kSaw | kStop | kAlways,
        kSaw | kAlways,
        kRan | kStop | kAlways,
        0,
        0,
        kAlways,
        kDescribe}},
    {TestKind::RB, {
        kIsolating | kLoaded | kNotValid,
        kIsolating | kLoaded | kCrack | kStop | kAlways,
        kLoaded | kCrack | kAlways,
        kLoaded | kCrack | kStop | kAlways,
        0,
        kStop | kAlways,
        kAlways,
        kDescribe}},
    {TestKind::ST, {
        kIsolating | kCrack | kStop | kNotValid,
        kIsolating | kCrack | kStop | kAlways,
        0, 0, 0, 0,
        kAlways,
        kDescribe}},
    {TestKind::hand_shear, {
        kCrack | kStop | kNotValid,
        kCrack | kStop | kAlways,
        0, 0, 0, 0,
        kAlways,
        kDescribe}},
};
// clang-format on

const Machine* machine_of(TestKind kind) {
  for (const Machine& machine : kMachines) {
    if (machine.kind == kind) return &machine;
  }
  return nullptr;
}

bool counts_taps(TestKind kind) {
  return kind == TestKind::CT || kind == TestKind::DT || kind == TestKind::ECT;
}

// --- what stands in the test ------------------------------------------------------------------------------

std::uint32_t fracture_count(const StabilityTestT& test) {
  std::uint32_t count = 0;
  for (const auto& fracture : test.fractures) count += fracture != nullptr ? 1u : 0u;
  return count;
}

const FractureT* last_fracture(const StabilityTestT& test) {
  for (auto it = test.fractures.rbegin(); it != test.fractures.rend(); ++it) {
    if (*it != nullptr) return it->get();
  }
  return nullptr;
}

// A crack of the extended column of which nobody knows yet whether it crosses.
bool is_open_crack(const FractureT& crack) {
  return !crack.crossing && !crack.tap_crossed;
}
// Taps since the crack began: 0 on its own tap.
int taps_since(const FractureT& crack, const Run& run) {
  return int{run.taps} - int{crack.tap.value_or(0)};
}

// The highest tap that a recorded fracture has.
std::uint8_t highest_tap(const StabilityTestT& test) {
  std::uint8_t tap = 0;
  for (const auto& fracture : test.fractures) {
    if (fracture == nullptr) continue;
    tap = std::max({tap, fracture->tap.value_or(0), fracture->tap_crossed.value_or(0)});
  }
  return tap;
}

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

GuidedState state_of(const Run& run, const StabilityTestT& test) {
  if (test.outcome == TestOutcome::not_valid) return GuidedState::not_valid;
  if (run.ended) return GuidedState::ended;
  const bool has_fracture = last_fracture(test) != nullptr;
  if (counts_taps(run.kind)) return state_of_taps(run, test, has_fracture);
  if (run.kind == TestKind::PST) return state_of_saw(run, test, has_fracture);
  if (run.kind == TestKind::RB) return state_of_steps(run, test, has_fracture);
  return has_fracture ? GuidedState::broke : GuidedState::untouched;
}

// --- what an event may hold -------------------------------------------------------------------------------

constexpr std::uint64_t field(int vtable_offset) {
  return std::uint64_t{1} << field_id(vtable_offset);
}
constexpr std::uint64_t kSeen = field(Fracture::VT_DEPTH) | field(Fracture::VT_CHARACTER) |
                                field(Fracture::VT_QUALITY) | field(Fracture::VT_FRACTURE_SURFACE) |
                                field(Fracture::VT_RELEASE) | field(Fracture::VT_EASE) |
                                field(Fracture::VT_ON) | field(Fracture::VT_PART) |
                                field(Fracture::VT_WORDS) | field(Fracture::VT_UNRELIABLE);
constexpr std::uint64_t kCut = field(Fracture::VT_CUT_10UM);
constexpr std::uint64_t kSawEnd = field(Fracture::VT_SAW_END);
constexpr std::uint64_t kReason = field(StabilityTest::VT_NOT_VALID_REASON);

struct EventForm {
  std::uint64_t needed, allowed;  // fields of the fracture; none of either: no fracture may be held
  bool may_be_about, must_be_about;
};
// In order of TestEventKind, without the start.
constexpr EventForm kEventForms[] = {
    {0, 0, false, false},                                                // tap
    {field(Fracture::VT_TAP), 0, false, false},                          // set_tap
    {0, kSeen, false, false},                                            // crack
    {0, kSeen, false, false},                                            // isolating
    {0, kSeen, true, false},                                             // crossed
    {0, 0, true, true},                                                  // not_crossed
    {0, 0, false, false},                                                // slid
    {0, 0, false, false},                                                // levelled
    {kCut, 0, false, false},                                             // cut_to
    {kSawEnd, kCut | kSeen, false, false},                               // ran
    {field(Fracture::VT_STEP), field(Fracture::VT_JUMP), false, false},  // loaded
    {0, kSeen, true, true},                                              // describe
    {0, 0, true, true},                                                  // retract
    {0, 0, false, false},                                                // not_valid
    {0, 0, false, false},                                                // stop
};
constexpr std::size_t kEventKinds = 1 + sizeof kEventForms / sizeof kEventForms[0];

template <class Table>
std::uint64_t present_in(const Table& table, int last) {
  const auto& fields = reinterpret_cast<const flatbuffers::Table&>(table);
  std::uint64_t present = 0;
  for (int at = 4; at <= last; at += 2) {
    if (fields.CheckField(static_cast<flatbuffers::voffset_t>(at))) present |= field(at);
  }
  return present;
}
std::uint64_t present_in(const Fracture& fracture) {
  return present_in(fracture, Fracture::VT_UNRELIABLE);
}
std::uint64_t present_in(const StabilityTest& test) {
  return present_in(test, StabilityTest::VT_UNRELIABLE);
}

Failure wrong_fields() {
  return refuse("the event holds what it has no use for, or lacks what it needs",
                "see schemas/edit.fbs, TestEventKind");
}

// The only test that the fields hold; null when they hold anything else.
const StabilityTest* only_test(const Pit& fields) {
  if ((present_in(fields, Pit::VT_SCHEMA_MINOR + 2 * 63) & ~field(Pit::VT_SCHEMA_MINOR)) !=
      field(Pit::VT_TESTS)) {
    return nullptr;
  }
  return fields.tests()->size() == 1 ? fields.tests()->Get(0) : nullptr;
}

Done check_said_of_test(const StabilityTest& test, TestEventKind kind) {
  if (kind == TestEventKind::start) return check_start(test);
  if (kind == TestEventKind::not_valid) {
    const std::uint64_t present = present_in(test);
    const bool fits =
        (present & kReason) != 0 && (present & ~(kReason | field(StabilityTest::VT_WORDS))) == 0;
    if (!fits) {
      return refuse("a test that was not valid needs its reason, and nothing else but words",
                    "give not_valid_reason");
    }
    if (*firnbook::EnumNameNotValidReason(*test.not_valid_reason()) == '\0') {
      return refuse("the reason why the test was not valid is not known", "give a NotValidReason");
    }
    return done();
  }
  if (present_in(test) != field(StabilityTest::VT_FRACTURES) || test.fractures()->size() != 1) {
    return wrong_fields();
  }
  const EventForm& form = kEventForms[static_cast<std::size_t>(kind) - 2];
  const std::uint64_t present = present_in(*test.fractures()->Get(0));
  const bool says_something = kind != TestEventKind::describe || present != 0;
  const bool fits = (present & form.needed) == form.needed &&
                    (present & ~(form.needed | form.allowed)) == 0 && (form.needed | form.allowed) != 0;
  if (!fits || !says_something) return wrong_fields();
  return done();
}

template <class E>
bool is_known(const flatbuffers::Optional<E>& value, const char* (*name)(E)) {
  return !value || *name(*value) != '\0';
}

bool are_codes_known(const Fracture& seen) {
  return is_known(seen.character(), firnbook::EnumNameFractureCharacter) &&
         is_known(seen.quality(), firnbook::EnumNameShearQuality) &&
         is_known(seen.fracture_surface(), firnbook::EnumNameFractureSurface) &&
         is_known(seen.release(), firnbook::EnumNameReleaseType) &&
         is_known(seen.ease(), firnbook::EnumNameShearEase) &&
         is_known(seen.part(), firnbook::EnumNamePartOfLayer) &&
         is_known(seen.saw_end(), firnbook::EnumNameSawEnd);
}

Done check_depth(const Depth& depth, const flatbuffers::Optional<std::int32_t>& hs) {
  const bool is_known_datum = *firnbook::EnumNameDatum(depth.datum()) != '\0' &&
                              *firnbook::EnumNameDirection(depth.direction()) != '\0';
  if (depth.value_10um() < 0 || !is_known_datum) {
    return refuse("the depth is below 0, or does not say from where it was measured in a known way",
                  "give the distance from the surface or from the ground, 0 or more", Fracture::VT_DEPTH);
  }
  if (hs && depth.value_10um() > *hs) {
    return refuse("the fracture would lie outside the snow: its depth is more than HS",
                  "correct the depth, or HS where the pit was dug", Fracture::VT_DEPTH);
  }
  return done();
}

// What one kind of test alone has.
Done check_belongs(const Run& run, const Fracture& seen, bool is_isolating) {
  if (seen.release() && run.kind != TestKind::RB) {
    return refuse("how much of a block came away belongs to a rutschblock", "leave the release type out",
                  Fracture::VT_RELEASE);
  }
  if (!seen.ease()) return done();
  const bool is_shear = run.kind == TestKind::ST || run.kind == TestKind::hand_shear;
  if (!is_shear || is_isolating) {
    return refuse("the ease of a shear belongs to what was pulled in a shovel or hand shear",
                  "leave it out; a collapse while cutting is told by the event itself", Fracture::VT_EASE);
  }
  if (*seen.ease() == ShearEase::C) {
    return refuse("a collapse happens while the column is cut, before anything is pulled",
                  "say that it broke while isolating, or give V, E, M or H", Fracture::VT_EASE);
  }
  return done();
}

Done check_seen(const Run& run, const flatbuffers::Optional<std::int32_t>& hs, const TestEvent& event) {
  if (event.fracture == nullptr) return done();
  const Fracture& seen = *event.fracture;
  if (!are_codes_known(seen))
    return refuse("a code of the fracture is not known", "see schemas/vocabulary.fbs");
  if (seen.depth() != nullptr) {
    Done depth = check_depth(*seen.depth(), hs);
    if (!depth) return depth;
  }
  return check_belongs(run, seen, event.kind == TestEventKind::isolating);
}

// --- what an event needs where it stands ------------------------------------------------------------------

struct Refusal {
  const char* what;
  const char* remedy;
};

// Why an event is not allowed in a state: what has to happen first.
Refusal why_not(const Run& run, GuidedState state, TestEventKind kind) {
  if (state == GuidedState::not_valid) return {"the column was no valid test", "begin another test"};
  if (state == GuidedState::ended) {
    return {"the test has ended",
            "begin another test; if what ended it was no fracture, retract it, or undo the stop"};
  }
  const Machine& machine = *machine_of(run.kind);
  std::uint32_t ever = 0;
  for (const std::uint32_t allowed : machine.allowed) ever |= allowed;
  if ((ever & bit(kind)) == 0) {
    return {"this kind of test knows no such event", "see which events its answer allows"};
  }
  if (state == GuidedState::slid) {
    return {"the block has slid off, so there is nothing even to tap on",
            run.kind == TestKind::CT ? "level what is left and say so, or stop" : "stop"};
  }
  if (state == GuidedState::due) {
    return run.kind == TestKind::RB ? Refusal{"how much of the block came away is not said yet",
                                              "say the release type of the fracture, or stop"}
                                    : Refusal{"one more tap decides whether the crack counts as crossing",
                                              "give one more tap, or say that it crossed or did not cross"};
  }
  if (state == GuidedState::full && kind == TestEventKind::cut_to) {
    return {"the saw has cut the whole column", "say how the crack ran, or stop"};
  }
  if (state == GuidedState::full && counts_taps(run.kind)) {
    return {"30 taps were given, which is all there are", "say what broke on the last tap, or stop"};
  }
  if (kind == TestEventKind::crack && counts_taps(run.kind)) {
    return {"nothing was tapped yet", "count the taps first, or say that it broke while isolating"};
  }
  if (kind == TestEventKind::crossed && state == GuidedState::untouched) {
    return {"nothing was tapped yet", "say that it broke while isolating, then that it crossed"};
  }
  if (kind == TestEventKind::crack)
    return {"no step was given yet", "say the step, or that it broke while isolating"};
  if (kind == TestEventKind::isolating)
    return {"the column carries load already", "say on which load it broke"};
  if (kind == TestEventKind::stop && run.kind == TestKind::PST) {
    return {"the saw has not reached the end of the column and no crack ran",
            "saw on, or say why the test was not valid; a column without its length has no end"};
  }
  if (kind == TestEventKind::stop && run.kind == TestKind::RB) {
    return {"the steps are not all done and nothing broke", "go on to step 6, or say why it was not valid"};
  }
  if (kind == TestEventKind::stop)
    return {"nothing was loaded", "load it, or say why the test was not valid"};
  return {"no fracture is recorded that this could be about", "say first that something broke"};
}

Done check_set_tap(const StabilityTestT& test, std::uint8_t tap) {
  if (tap < 1 || tap > kMostTaps) {
    return refuse("taps are counted through from 1 to 30", "give the tap that was given last",
                  Fracture::VT_TAP);
  }
  if (tap < highest_tap(test)) {
    return refuse("a fracture is recorded on a later tap",
                  "give that tap or a later one, or retract the fracture", Fracture::VT_TAP);
  }
  return done();
}

Done check_cut(const Run& run, const StabilityTestT& test, std::int32_t cut) {
  if (cut <= 0) {
    return refuse("the cut has no length", "give how far the saw has cut", Fracture::VT_CUT_10UM);
  }
  if (cut < run.cut_10um) {
    return refuse("the saw had cut further before", "give how far it has cut by now; undo a wrong length",
                  Fracture::VT_CUT_10UM);
  }
  if (test.column_length_10um && cut > *test.column_length_10um) {
    return refuse("the cut would be longer than the column", "correct the cut, or the length of the column",
                  Fracture::VT_CUT_10UM);
  }
  return done();
}

Done check_ran(const Run& run, const StabilityTestT& test, const Fracture& seen) {
  const std::int32_t cut = seen.cut_10um().value_or(run.cut_10um);
  Done fits = check_cut(run, test, cut);
  if (!fits) return fits;
  const FractureT* before = last_fracture(test);
  if (before != nullptr && cut <= before->cut_10um.value_or(0)) {
    return refuse("a crack has run at this cut already", "saw on first, or retract the first one",
                  Fracture::VT_CUT_10UM);
  }
  if (test.column_length_10um && cut == *test.column_length_10um && *seen.saw_end() != SawEnd::End) {
    return refuse("the saw has cut the whole column, so no crack is left that could stop in it",
                  "say that it ran to the end, or correct the cut", Fracture::VT_SAW_END);
  }
  return done();
}

// Which jumps a step has: one on 4; 5 is the second or third in the same spot (sources differ), 6 up to three
// without skis or from further down (from memory).
std::uint8_t most_jumps(std::uint8_t step) {
  constexpr std::uint8_t kMost[] = {0, 0, 0, 0, 1, 2, 3};
  return kMost[step];
}

Done check_loaded(const Run& run, const Fracture& seen) {
  const std::uint8_t step = *seen.step();
  if (step < 2 || step > kLastStep) {
    return refuse("a block is loaded on steps 2 to 6: 1 is cutting it, 7 is that nothing broke",
                  "give the step, or say that it broke while isolating, or stop", Fracture::VT_STEP);
  }
  const std::uint8_t jump = seen.jump().value_or(0);
  if (seen.jump() && (jump < 1 || jump > most_jumps(step))) {
    return refuse("this step has no such jump",
                  "step 4 has one jump, step 5 two, step 6 three; 2 and 3 have none", Fracture::VT_JUMP);
  }
  const bool later = step > run.step || (step == run.step && jump > run.jump);
  if (!later) {
    return refuse("this load or a heavier one was given before", "give the next step or jump",
                  Fracture::VT_STEP);
  }
  return done();
}

Done check_crossed(const Run& run, const StabilityTestT& test, std::uint32_t about) {
  if (about == kNoFracture) {
    if (run.taps > 0) return done();
    return refuse("nothing was tapped yet", "name the crack that crossed, which broke while isolating");
  }
  const FractureT& crack = *test.fractures[about];
  if (!crack.tap_crossed && crack.crossing != Crossing::crossed) return done();
  return refuse("this crack has crossed already", "name another crack");
}

Done check_crack(const Run& run) {
  if (counts_taps(run.kind) && run.taps == 0) {
    return refuse("nothing was tapped yet", "count the taps first, or say that it broke while isolating");
  }
  if (run.kind == TestKind::RB && run.step == 0) {
    return refuse("no step was given yet", "say the step, or that it broke while isolating");
  }
  return done();
}

Done check_load(const Run& run, const StabilityTestT& test, const TestEvent& event) {
  switch (event.kind) {
    case TestEventKind::set_tap:
      return check_set_tap(test, *event.fracture->tap());
    case TestEventKind::cut_to:
      return check_cut(run, test, *event.fracture->cut_10um());
    case TestEventKind::ran:
      return check_ran(run, test, *event.fracture);
    case TestEventKind::loaded:
      return check_loaded(run, *event.fracture);
    case TestEventKind::crossed:
      return check_crossed(run, test, event.about);
    case TestEventKind::not_crossed:
      if (is_open_crack(*test.fractures[event.about])) return done();
      return refuse("whether this crack crossed is said already", "name another crack, or retract it");
    case TestEventKind::crack:
      return check_crack(run);
    case TestEventKind::isolating:
      if (run.kind != TestKind::RB || run.step == 0) return done();
      return refuse("the block carries load already", "say on which step it broke");
    default:
      return done();
  }
}

// --- what an event does -----------------------------------------------------------------------------------

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

// --- what comes next --------------------------------------------------------------------------------------

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
      return practice_of(run.kind)->column;
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
  std::uint64_t missing = fracture.depth == nullptr ? field(Fracture::VT_DEPTH) : 0;
  const bool says_how = fracture.character || fracture.quality || fracture.fracture_surface;
  const bool wants_character = run.kind == TestKind::CT || run.kind == TestKind::DT;
  if (wants_character && !says_how) missing |= field(Fracture::VT_CHARACTER);
  if (run.kind == TestKind::ECT && is_open_crack(fracture)) missing |= field(Fracture::VT_CROSSING);
  if (run.kind == TestKind::RB && !fracture.release) missing |= field(Fracture::VT_RELEASE);
  const bool is_shear = run.kind == TestKind::ST || run.kind == TestKind::hand_shear;
  if (is_shear && !fracture.ease) missing |= field(Fracture::VT_EASE);
  return missing;
}

std::uint64_t missing_in_test(const Run& run, const StabilityTestT& test) {
  if (run.kind == TestKind::PST && !test.column_length_10um) {
    return field(StabilityTest::VT_COLUMN_LENGTH_10UM);
  }
  if (run.kind != TestKind::ECT || test.crossing_rule) return 0;
  for (const auto& crack : test.fractures) {
    if (crack == nullptr || !crack->tap_crossed) continue;
    if (*crack->tap_crossed == crack->tap.value_or(0) + 1) return field(StabilityTest::VT_CROSSING_RULE);
  }
  return 0;
}

struct Asking {
  std::uint64_t field;
  Sentence sentence;
};
constexpr Asking kAskFracture[] = {
    {field(Fracture::VT_CROSSING), Sentence::say_crossing},
    {field(Fracture::VT_RELEASE), Sentence::say_release},
    {field(Fracture::VT_EASE), Sentence::say_ease},
    {field(Fracture::VT_DEPTH), Sentence::say_depth},
    {field(Fracture::VT_CHARACTER), Sentence::say_how_it_broke},
};
constexpr Asking kAskTest[] = {
    {field(StabilityTest::VT_COLUMN_LENGTH_10UM), Sentence::say_column_length},
    {field(StabilityTest::VT_CROSSING_RULE), Sentence::say_rule},
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

Done check_event_alone(const Change& change) {
  const auto number = static_cast<std::size_t>(*change.event());
  if (number < 1 || number > kEventKinds) {
    return refuse("the kind of event is not known", "see schemas/edit.fbs, TestEventKind");
  }
  const TestEventKind kind = *change.event();
  const StabilityTest* said = change.fields() != nullptr ? only_test(*change.fields()) : nullptr;
  if (change.fields() != nullptr && said == nullptr) return wrong_fields();
  if (kind == TestEventKind::start) {
    if (change.target() != nullptr || change.other() != nullptr || said == nullptr) return wrong_fields();
    return check_said_of_test(*said, kind);
  }
  if (change.target() == nullptr || change.target()->thing() != firnbook::Thing::test) {
    return refuse("the event names no test", "give the test as the target");
  }
  const EventForm& form = kEventForms[number - 2];
  const firnbook::Target* about = change.other();
  if (about == nullptr ? form.must_be_about
                       : !form.may_be_about || about->thing() != firnbook::Thing::fracture) {
    return refuse("the event is about a fracture and names none, or the other way round",
                  "give the fracture as `other` where the event needs it, and nowhere else");
  }
  // A crack that was described when it began is described again by an event of its own.
  const bool must_be_silent = kind == TestEventKind::crossed && about != nullptr;
  const bool must_speak =
      form.needed != 0 || kind == TestEventKind::describe || kind == TestEventKind::not_valid;
  if (said == nullptr ? must_speak : must_be_silent) return wrong_fields();
  return said != nullptr ? check_said_of_test(*said, kind) : done();
}

Done check_start(const StabilityTest& test) {
  constexpr std::uint64_t kResult = field(StabilityTest::VT_OUTCOME) | field(StabilityTest::VT_FRACTURES) |
                                    kReason | field(StabilityTest::VT_TAPS_GIVEN) |
                                    field(StabilityTest::VT_UNBROKEN);
  if ((present_in(test) & kResult) != 0) {
    return refuse("a test that begins has no result yet",
                  "give its kind and its column, and then what happens");
  }
  if (!test.kind() || !is_guided(*test.kind())) {
    return refuse("this kind of test cannot be guided", "enter its result afterwards, as a whole");
  }
  for (const auto& length : {test.column_width_10um(), test.column_length_10um(), test.column_depth_10um()}) {
    if (length && *length <= 0) {
      return refuse("a length of the column is not above 0", "give lengths as they were cut, or none");
    }
  }
  if (test.slab_left_10um() && *test.slab_left_10um() < 0) {
    return refuse("the snow left above the layer is below 0", "give its thickness, or leave it out");
  }
  if (test.slope_deg() && *test.slope_deg() > 90) {
    return refuse("a slope has 0 to 90 degrees", "give the slope where the test is, or leave it out");
  }
  if (!is_known(test.crossing_rule(), firnbook::EnumNameCrossingRule) ||
      !is_known(test.column_ends(), firnbook::EnumNameColumnEnds)) {
    return refuse("a code of the test is not known", "see schemas/vocabulary.fbs");
  }
  return done();
}

bool adds_fracture(const TestEvent& event) {
  switch (event.kind) {
    case TestEventKind::crack:
    case TestEventKind::isolating:
    case TestEventKind::ran:
      return true;
    case TestEventKind::crossed:
      return event.about == kNoFracture;
    default:
      return false;
  }
}

Done check_event(const Run& run, const StabilityTestT& test, const flatbuffers::Optional<std::int32_t>& hs,
                 const TestEvent& event) {
  if (test.kind != run.kind) {
    return refuse("the test was made another kind of test since it began",
                  "give it back its kind, or begin anew");
  }
  const std::size_t slots = test.fractures.size();
  if (slots > kMostFractures || (slots == kMostFractures && adds_fracture(event))) {
    return refuse("no column breaks that often", "begin another test");
  }
  const GuidedState state = state_of(run, test);
  const std::uint32_t allowed = allowed_events(run.kind, state, last_fracture(test) != nullptr);
  if ((allowed & bit(event.kind)) == 0) {
    const Refusal why = why_not(run, state, event.kind);
    return refuse(why.what, why.remedy);
  }
  Done seen = check_seen(run, hs, event);
  if (!seen) return seen;
  return check_load(run, test, event);
}

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
  out.record = asking_for(out);
  return out;
}

}  // namespace firn::recording
