// Guided tests: one state machine a kind of test, driven by what happens (schemas/edit.fbs, TestEventKind).
// The fold keeps a run for each guided test and lays each event over it; the state is the replay of the
// events, so that pausing, crashing, undoing and merging are those of all edits. GUIDED.md has the tables.
//
// What stands in the pit is read from the pit, not remembered: plain edits may correct a guided test at any
// time, and the next event is judged by what is there then.
#pragma once

#include <cstdint>
#include <vector>

#include "recording/edits.h"
#include "schemas/edit_generated.h"
#include "schemas/pit_generated.h"
#include "support/result.h"

namespace firn::recording {

// More fractures than this in one column are no test: ours. It bounds what one event has to look at.
inline constexpr std::size_t kMostFractures = 200;
inline constexpr std::uint32_t kNoFracture = UINT32_MAX;
// Ten taps each from wrist, elbow and shoulder, counted through (read: avalanche.org, extended column test;
// Campbell on the compression test; for the deep tap test from memory).
inline constexpr std::uint8_t kTapsPerStage = 10;
inline constexpr std::uint8_t kMostTaps = 30;
// Rutschblock: the last step on which something can break; 7 is "no fracture" (from memory).
inline constexpr std::uint8_t kLastStep = 6;

// What no field of the pit holds.
struct Run {
  struct Named {
    EditKey edit;  // that recorded the fracture, and names it
    std::uint32_t sub;
  };
  EditKey start;  // names the test; its device is who has it open
  std::uint32_t slot = 0;
  std::int32_t cut_10um = 0;
  firnbook::TestKind kind = firnbook::TestKind::none;
  std::uint8_t taps = 0;
  std::uint8_t step = 0;
  std::uint8_t jump = 0;
  bool slid = false;
  bool ended = false;
  std::vector<Named> fractures;
};

enum class GuidedState : std::uint8_t {
  untouched = 1,  // nothing loaded, nothing broke
  broke = 2,      // something broke and nothing more has to be said before it goes on; see GUIDED.md
  loading = 3,
  full = 4,  // no more load to give: tap 30, step 6, the saw at the end of the column
  slid = 5,  // the block slid off: level the rest, or stop
  due = 6,   // one more tap for a crack (extended column), or how much came away (rutschblock)
  ended = 7,
  not_valid = 8,
};

// One event as it was said; what was not said is null.
struct TestEvent {
  firnbook::TestEventKind kind;
  const firnbook::StabilityTest* test = nullptr;
  const firnbook::Fracture* fracture = nullptr;
  std::uint32_t about = kNoFracture;  // slot of the fracture it is about, in the test's list
};

// Numbers of the sentences in guided_words.cpp; the same numbers stand in guided.h of the C API. Appended
// only.
enum class Sentence : std::uint16_t {
  none = 0,
  cut_column = 1,
  cut_extended_column = 2,
  cut_saw_column = 3,
  cut_block = 4,
  cut_deep_column = 5,
  cut_shear_column = 6,
  tap_wrist = 10,
  tap_elbow = 11,
  tap_shoulder = 12,
  level_slope_first = 13,
  taps_done = 14,
  level_top = 15,
  no_tapping_on = 16,
  one_more_tap = 17,
  saw_on = 20,
  sawn_through = 21,
  saw_after_arrest = 22,
  step_two = 30,
  step_three = 31,
  step_four = 32,
  step_five = 33,
  step_six = 34,
  steps_done = 35,
  pull = 40,
  pull_by_hand = 41,
  ended_crossed = 50,
  ended = 51,
  dig_another = 52,
  watch_cutting = 60,
  watch_column = 61,
  watch_crossing = 62,
  watch_crack = 63,
  watch_block = 64,
  watch_shear = 65,
  say_depth = 70,
  say_how_it_broke = 71,
  say_crossing = 72,
  say_release = 73,
  say_ease = 74,
  say_column_length = 75,
  say_rule = 76,
  depth_compression = 80,
  depth_extended = 81,
  depth_saw = 82,
  depth_block = 83,
  depth_deep_tap = 84,
  depth_shear = 85,
};

// What an event is answered with: where the test stands and what comes next.
struct Guidance {
  GuidedState state = GuidedState::untouched;
  firnbook::TestKind kind = firnbook::TestKind::none;
  std::uint8_t stage = 0;         // firnbook::LoadStage of the last tap, 0 before the first
  std::uint8_t tap_in_stage = 0;  // 1 to 10
  std::uint8_t taps = 0;
  std::uint8_t step = 0;
  std::uint8_t jump = 0;
  std::uint32_t fracture_count = 0;
  std::int32_t cut_10um = 0;
  std::uint32_t allowed = 0;            // bit n: TestEventKind n
  std::uint64_t missing = 0;            // bit n: field n of the fracture `of`
  std::uint64_t missing_of_test = 0;    // bit n: field n of the test
  std::uint32_t of = kNoFracture;       // the first fracture that lacks something, else the last one
  std::uint32_t last = kNoFracture;     // the last one recorded
  std::uint32_t pending = kNoFracture;  // a crack that may still cross and count
  bool older_crack = false;             // a crack that did not cross in time, and might be meant as well
  Sentence next = Sentence::none;
  Sentence watch = Sentence::none;
  Sentence record = Sentence::none;
  Sentence reach = Sentence::none;  // how deep such a test reaches
};

// Which events are allowed in a state, as bits; `has_fracture` takes out those that speak of one.
std::uint32_t allowed_events(firnbook::TestKind kind, GuidedState state, bool has_fracture);
bool is_guided(firnbook::TestKind kind);

// What is asked of an event without the others: fields that its kind needs and allows.
Done check_event_alone(const firnbook::Change& change);
// What is asked of the test that begins.
Done check_start(const firnbook::StabilityTest& test);
// Whether it can happen where the test stands. `hs` is the height of the snow, where it is known.
Done check_event(const Run& run, const firnbook::StabilityTestT& test,
                 const flatbuffers::Optional<std::int32_t>& hs, const TestEvent& event);

// Whether an event records a fracture of its own.
bool adds_fracture(const TestEvent& event);
// After what was said has been laid over the test: works out what follows. `sub` is the slot of the fracture
// that the event recorded or is about.
void take_event(Run& run, firnbook::StabilityTestT& test, const TestEvent& event, std::uint32_t sub);

Guidance guide(const Run& run, const firnbook::StabilityTestT& test);

// The sentence in English, and where it comes from; empty for a number that is none.
struct Words {
  const char* text;
  const char* source;
};
Words words_of(std::uint16_t sentence);

}  // namespace firn::recording
