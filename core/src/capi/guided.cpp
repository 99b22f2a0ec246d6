// Guided tests: each call makes one edit, applies it, and answers where the test stands.
#include "firnbook/guided.h"

#include "capi/outputs.h"
#include "capi/recorder.h"
#include "capi/records.h"
#include "capi/structs.h"
#include "notation/test_line.h"
#include "recording/guided.h"

using namespace firn::capi;

namespace firn::capi {
namespace {

using firnbook::TestEventKind;
using firnbook::Thing;
using recording::GuidedState;

#define FIRN_SAME(c, core) static_assert(static_cast<int>(c) == static_cast<int>(core), #c)
FIRN_SAME(FIRN_TEST_EVENT_START, TestEventKind::start);
FIRN_SAME(FIRN_TEST_EVENT_TAP, TestEventKind::tap);
FIRN_SAME(FIRN_TEST_EVENT_SET_TAP, TestEventKind::set_tap);
FIRN_SAME(FIRN_TEST_EVENT_CRACK, TestEventKind::crack);
FIRN_SAME(FIRN_TEST_EVENT_ISOLATING, TestEventKind::isolating);
FIRN_SAME(FIRN_TEST_EVENT_CROSSED, TestEventKind::crossed);
FIRN_SAME(FIRN_TEST_EVENT_NOT_CROSSED, TestEventKind::not_crossed);
FIRN_SAME(FIRN_TEST_EVENT_SLID, TestEventKind::slid);
FIRN_SAME(FIRN_TEST_EVENT_LEVELLED, TestEventKind::levelled);
FIRN_SAME(FIRN_TEST_EVENT_CUT_TO, TestEventKind::cut_to);
FIRN_SAME(FIRN_TEST_EVENT_RAN, TestEventKind::ran);
FIRN_SAME(FIRN_TEST_EVENT_LOADED, TestEventKind::loaded);
FIRN_SAME(FIRN_TEST_EVENT_DESCRIBE, TestEventKind::describe);
FIRN_SAME(FIRN_TEST_EVENT_RETRACT, TestEventKind::retract);
FIRN_SAME(FIRN_TEST_EVENT_NOT_VALID, TestEventKind::not_valid);
FIRN_SAME(FIRN_TEST_EVENT_STOP, TestEventKind::stop);
FIRN_SAME(FIRN_TEST_EVENT_STOP, TestEventKind::MAX);
FIRN_SAME(FIRN_GUIDED_UNTOUCHED, GuidedState::untouched);
FIRN_SAME(FIRN_GUIDED_BROKE, GuidedState::broke);
FIRN_SAME(FIRN_GUIDED_LOADING, GuidedState::loading);
FIRN_SAME(FIRN_GUIDED_FULL, GuidedState::full);
FIRN_SAME(FIRN_GUIDED_SLID, GuidedState::slid);
FIRN_SAME(FIRN_GUIDED_DUE, GuidedState::due);
FIRN_SAME(FIRN_GUIDED_ENDED, GuidedState::ended);
FIRN_SAME(FIRN_GUIDED_NOT_VALID, GuidedState::not_valid);
#undef FIRN_SAME

constexpr std::size_t kGuidanceSize = FIRN_FIRST_VERSION(firn_guidance, reserved);
constexpr char kGuidanceName[] = "firn_guidance";

firn_target named(firn_recorder& recorder, const firnbook::Target& test, std::uint32_t sub) {
  if (sub == recording::kNoFracture) return {};
  const firnbook::Target fracture = recorder.edits.guided_fracture(test, sub);
  return fracture.thing() == Thing::fracture ? target_to(fracture) : firn_target{};
}

// Before anything is recorded, so that a struct of another size does not come to light after it.
Done check_guidance(const firn_guidance* guidance) {
  if (guidance == nullptr) return done();
  return check_struct_size(guidance->struct_size, kGuidanceSize, kGuidanceName);
}

Done answer(firn_recorder& recorder, const firnbook::Target& test, firn_guidance* guidance) {
  if (guidance == nullptr) return done();
  const Result<recording::Guidance> found = recorder.edits.guided(test);
  if (!found) return found.failure();
  const recording::Guidance& from = *found;
  firn_guidance out = {};
  out.allowed = from.allowed;
  out.missing = from.missing;
  out.missing_of_test = from.missing_of_test;
  out.of = named(recorder, test, from.of);
  out.last = named(recorder, test, from.last);
  out.cut_10um = from.cut_10um;
  out.fracture_count = from.fracture_count;
  out.next = static_cast<std::uint16_t>(from.next);
  out.watch = static_cast<std::uint16_t>(from.watch);
  out.record = static_cast<std::uint16_t>(from.record);
  out.reach = static_cast<std::uint16_t>(from.reach);
  out.state = static_cast<std::uint8_t>(from.state);
  out.kind = static_cast<std::uint8_t>(from.kind);
  out.taps = from.taps;
  out.stage = from.stage;
  out.tap_in_stage = from.tap_in_stage;
  out.step = from.step;
  out.jump = from.jump;
  return write_struct(guidance, out, kGuidanceSize, kGuidanceName);
}

firnbook::StabilityTestT& only_test(firnbook::PitT& fields) {
  if (fields.tests.empty()) fields.tests.push_back(std::make_unique<firnbook::StabilityTestT>());
  return *fields.tests[0];
}

Done start(firn_recorder& recorder, const firn_test* given, firn_target* target, firn_guidance* guidance,
           firn_buffer* edit) {
  Done sized = check_guidance(guidance);
  if (!sized) return sized;
  Result<recording::EditHead> head = next_head(recorder);
  if (!head) return head.failure();
  Result<firn_test> test = read_record(given);
  if (!test) return test.failure();
  Room room(recorder.context->limits.edit.max_bytes);
  firnbook::PitT fields;
  Done translated = translate(*test, only_test(fields), room);
  if (!translated) return translated;
  Done recorded =
      record(recorder, recording::make_event(*head, TestEventKind::start, nullptr, nullptr, &fields), edit);
  if (!recorded) return recorded;
  const firnbook::Target name = recording::target_of(head->key, Thing::test);
  if (target != nullptr) *target = target_to(name);
  return answer(recorder, name, guidance);
}

// What was said with an event, in the schema's terms; nothing when nothing was said.
Done fill(const firn_recorder& recorder, const firn_test_event& event, firnbook::PitT& fields) {
  Room room(recorder.context->limits.edit.max_bytes);
  if (event.seen != nullptr) {
    Result<firn_fracture> seen = read_record(event.seen);
    if (!seen) return seen.failure();
    auto fracture = std::make_unique<firnbook::FractureT>();
    Done translated = translate(*seen, *fracture, room);
    if (!translated) return translated;
    only_test(fields).fractures.push_back(std::move(fracture));
  }
  if (event.not_valid_reason != 0) {
    only_test(fields).not_valid_reason = static_cast<firnbook::NotValidReason>(event.not_valid_reason);
  }
  if (event.words == nullptr) return done();
  Fields texts("firn_test_event", 0, 0, room);
  texts.text(only_test(fields).words, event.words);
  return texts.finish();
}

Result<std::uint32_t> found(std::uint32_t fracture) {
  if (fracture != recording::kNoFracture) return fracture;
  return failure_of(FIRN_BAD_EDIT, "nothing has broken in this test yet", "say first that something broke");
}

// The fracture an event is about when the caller names none: the last one, or the crack that may still cross.
// Which of two cracks crossed is never guessed.
Result<std::uint32_t> fracture_meant(const recording::Guidance& now, TestEventKind kind) {
  switch (kind) {
    case TestEventKind::describe:
    case TestEventKind::retract:
      return found(now.last);
    case TestEventKind::not_crossed:
      return found(now.pending != recording::kNoFracture ? now.pending : now.last);
    case TestEventKind::crossed:
      if (now.pending != recording::kNoFracture || !now.older_crack) return now.pending;
      return failure_of(FIRN_BAD_ARGUMENT, "the crack that was seen earlier may have crossed, or a new one",
                        "name the fracture that crossed, or say first that another crack was seen");
    default:
      return recording::kNoFracture;
  }
}

Done find_fracture(firn_recorder& recorder, const firnbook::Target& test, const firn_test_event& event,
                   firnbook::Target& fracture) {
  if (event.fracture != nullptr) {
    fracture = target_from(*event.fracture);
    return done();
  }
  const Result<recording::Guidance> now = recorder.edits.guided(test);
  if (!now) return now.failure();
  const Result<std::uint32_t> meant = fracture_meant(*now, static_cast<TestEventKind>(event.kind));
  if (!meant) return meant.failure();
  if (*meant != recording::kNoFracture) fracture = recorder.edits.guided_fracture(test, *meant);
  return done();
}

Done tell(firn_recorder& recorder, const firn_target* name, const firn_test_event* given,
          firn_guidance* guidance, firn_buffer* edit) {
  if (name == nullptr) return null_argument("test");
  Done sized = check_guidance(guidance);
  if (!sized) return sized;
  Result<firn_test_event> event = read_record(given);
  if (!event) return event.failure();
  Result<recording::EditHead> head = next_head(recorder);
  if (!head) return head.failure();
  if (event->kind == FIRN_TEST_EVENT_START) {
    return failure_of(FIRN_BAD_ARGUMENT, "a test begins with a call of its own", "call firn_guided_start");
  }
  firnbook::PitT fields;
  Done filled = fill(recorder, *event, fields);
  if (!filled) return filled;
  const firnbook::Target test = target_from(*name);
  firnbook::Target fracture;
  Done found = find_fracture(recorder, test, *event, fracture);
  if (!found) return found;
  const bool is_about = event->fracture != nullptr || fracture.thing() == Thing::fracture;
  Done recorded =
      record(recorder,
             recording::make_event(*head, static_cast<TestEventKind>(event->kind), &test,
                                   is_about ? &fracture : nullptr, fields.tests.empty() ? nullptr : &fields),
             edit);
  return recorded ? answer(recorder, test, guidance) : std::move(recorded);
}

Done write_line(firn_recorder& recorder, const firn_target* name, firn_buffer* line) {
  if (name == nullptr) return null_argument("test");
  if (line == nullptr) return null_argument("line");
  const Result<const firnbook::StabilityTestT*> test = recorder.edits.guided_test(target_from(*name));
  if (!test) return test.failure();
  std::string text;
  notation::append_test(text, **test, firnbook::Direction::vertical);
  give(*recorder.context, line, text);
  return done();
}

}  // namespace
}  // namespace firn::capi

firn_status firn_guided_start(firn_recorder* recorder, const firn_test* test, firn_target* target,
                              firn_guidance* guidance, firn_buffer* edit, firn_error* error) {
  return guard({context_of(recorder), error, __func__, {edit}},
               [&]() -> firn::Done { return start(*recorder, test, target, guidance, edit); });
}

firn_status firn_guided_event(firn_recorder* recorder, const firn_target* test, const firn_test_event* event,
                              firn_guidance* guidance, firn_buffer* edit, firn_error* error) {
  return guard({context_of(recorder), error, __func__, {edit}},
               [&]() -> firn::Done { return tell(*recorder, test, event, guidance, edit); });
}

firn_status firn_guided_state(firn_recorder* recorder, const firn_target* test, firn_guidance* guidance,
                              firn_error* error) {
  return guard({context_of(recorder), error, __func__}, [&]() -> firn::Done {
    if (test == nullptr) return null_argument("test");
    if (guidance == nullptr) return null_argument("guidance");
    firn::Done sized = check_guidance(guidance);
    return sized ? answer(*recorder, target_from(*test), guidance) : std::move(sized);
  });
}

firn_status firn_guided_open(firn_recorder* recorder, firn_target* test, firn_error* error) {
  return guard({context_of(recorder), error, __func__}, [&]() -> firn::Done {
    if (test == nullptr) return null_argument("test");
    if (recorder->device == 0) {
      return failure_of(FIRN_WRONG_STATE, "nobody records yet", "call firn_recorder_author first");
    }
    const firnbook::Target open = recorder->edits.open_test(recorder->device);
    *test = open.thing() == firnbook::Thing::test ? target_to(open) : firn_target{};
    return firn::done();
  });
}

firn_status firn_guided_line(firn_recorder* recorder, const firn_target* test, firn_buffer* line,
                             firn_error* error) {
  return guard({context_of(recorder), error, __func__, {line}},
               [&]() -> firn::Done { return write_line(*recorder, test, line); });
}

firn_status firn_guided_text(uint16_t sentence, const char** text, const char** source, firn_error* error) {
  return run({nullptr, error, __func__}, [&]() -> firn::Done {
    if (text == nullptr) return null_argument("text");
    const firn::recording::Words words = firn::recording::words_of(sentence);
    *text = words.text;
    if (source != nullptr) *source = words.source;
    return firn::done();
  });
}
