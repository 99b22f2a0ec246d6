// Guided tests through the C API: an app that shows what the answers say.
#include <cstring>

#include "support.h"

namespace {

using capi::Buffer;
using capi::bytes_of;
using capi::Context;

class Guided : public testing::Test {
 protected:
  Guided() { recorder = make(42); }
  ~Guided() override { firn_recorder_destroy(recorder); }

  firn_recorder* make(std::uint64_t device) {
    firn_recorder* made = nullptr;
    EXPECT_EQ(firn_recorder_create(context, &made, nullptr), FIRN_OK);
    firn_author author = FIRN_INIT(firn_author);
    author.device = device;
    EXPECT_EQ(firn_recorder_author(made, &author, nullptr), FIRN_OK);
    return made;
  }

  firn_test column(std::uint8_t kind) {
    firn_test made = FIRN_INIT(firn_test);
    made.present = FIRN_BIT(FIRN_FIELD_STABILITY_TEST_KIND);
    made.kind = kind;
    return made;
  }
  void start(const firn_test& made) {
    Buffer edit(context);
    ASSERT_EQ(firn_guided_start(recorder, &made, &test, &now, edit.out(), &error), FIRN_OK) << error.what;
    edits.push_back(edit.text());
  }
  firn_status tell(std::uint8_t kind, const firn_fracture* seen = nullptr,
                   const firn_target* about = nullptr) {
    firn_test_event event = FIRN_INIT(firn_test_event);
    event.kind = kind;
    event.seen = seen;
    event.fracture = about;
    return tell(event);
  }
  firn_status tell(const firn_test_event& event) {
    Buffer edit(context);
    const firn_status status = firn_guided_event(recorder, &test, &event, &now, edit.out(), &error);
    if (status == FIRN_OK) {
      edits.push_back(edit.text());
    } else {
      EXPECT_EQ(edit.size(), 0u);
    }
    return status;
  }
  void taps(int count) {
    for (int i = 0; i < count; ++i) ASSERT_EQ(tell(FIRN_TEST_EVENT_TAP), FIRN_OK) << error.what;
  }
  static firn_fracture seen_down(int centimetres) {
    firn_fracture seen = FIRN_INIT(firn_fracture);
    seen.present = FIRN_BIT(FIRN_FIELD_FRACTURE_DEPTH);
    seen.depth = {FIRN_CM(centimetres), FIRN_DATUM_SURFACE, FIRN_DIRECTION_UNKNOWN, 0};
    return seen;
  }
  std::string line() {
    Buffer out(context);
    EXPECT_EQ(firn_guided_line(recorder, &test, out.out(), &error), FIRN_OK) << error.what;
    return out.text();
  }
  std::string pit() {
    Buffer out(context);
    EXPECT_EQ(firn_recorder_pit(recorder, out.out(), &error), FIRN_OK) << error.what;
    return out.text();
  }
  static std::string words(std::uint16_t sentence) {
    const char* text = nullptr;
    const char* source = nullptr;
    EXPECT_EQ(firn_guided_text(sentence, &text, &source, nullptr), FIRN_OK);
    EXPECT_EQ(*text == '\0', *source == '\0');
    return text;
  }

  Context context;
  firn_recorder* recorder = nullptr;
  firn_target test = {};
  firn_guidance now = FIRN_INIT(firn_guidance);
  firn_error error = FIRN_INIT(firn_error);
  std::vector<std::string> edits;
};

TEST_F(Guided, AColumnFromTheFirstTapToItsLine) {
  start(column(FIRN_TEST_KIND_CT));
  EXPECT_EQ(now.state, FIRN_GUIDED_UNTOUCHED);
  EXPECT_NE(words(now.next).find("30 cm"), std::string::npos);
  EXPECT_NE(words(now.reach), "");
  taps(11);
  EXPECT_EQ(now.taps, 11);
  EXPECT_EQ(now.stage, FIRN_LOAD_STAGE_ELBOW);
  EXPECT_EQ(now.tap_in_stage, 1);
  ASSERT_EQ(tell(FIRN_TEST_EVENT_CRACK), FIRN_OK);
  EXPECT_EQ(now.missing, FIRN_BIT(FIRN_FIELD_FRACTURE_DEPTH) | FIRN_BIT(FIRN_FIELD_FRACTURE_CHARACTER));
  EXPECT_NE(words(now.record).find("how deep"), std::string::npos);
  const firn_target first = now.last;
  firn_fracture seen = seen_down(17);
  seen.present |= FIRN_BIT(FIRN_FIELD_FRACTURE_CHARACTER);
  seen.character = FIRN_FRACTURE_CHARACTER_SC;
  ASSERT_EQ(tell(FIRN_TEST_EVENT_DESCRIBE, &seen), FIRN_OK) << error.what;
  EXPECT_EQ(now.missing, 0u);
  EXPECT_EQ(now.record, 0);
  ASSERT_EQ(tell(FIRN_TEST_EVENT_SLID), FIRN_OK);
  EXPECT_EQ(tell(FIRN_TEST_EVENT_TAP), FIRN_BAD_EDIT);
  EXPECT_EQ(now.state, FIRN_GUIDED_SLID) << "a refused event leaves the answer as it was";
  ASSERT_EQ(tell(FIRN_TEST_EVENT_LEVELLED), FIRN_OK);
  taps(12);
  ASSERT_EQ(tell(FIRN_TEST_EVENT_CRACK), FIRN_OK);
  // The layer it broke in, by the plain call and the fracture's name.
  firn_layer layer = FIRN_INIT(firn_layer);
  layer.present = FIRN_BIT(FIRN_FIELD_LAYER_GRAIN_FORM);
  layer.grain_form = FIRN_GRAIN_FORM_SH;
  firn_fracture on = FIRN_INIT(firn_fracture);
  on.on = &layer;
  ASSERT_EQ(firn_record_fracture(recorder, &on, nullptr, &first, nullptr, nullptr, &error), FIRN_OK);
  ASSERT_EQ(tell(FIRN_TEST_EVENT_STOP), FIRN_OK);
  EXPECT_EQ(now.state, FIRN_GUIDED_ENDED);
  EXPECT_EQ(now.fracture_count, 2u);
  EXPECT_EQ(line(), "CT11 (SC) down 17 on SH; 23");
}

TEST_F(Guided, ResumesFromStoredEdits) {
  start(column(FIRN_TEST_KIND_ECT));
  taps(12);
  ASSERT_EQ(tell(FIRN_TEST_EVENT_CRACK), FIRN_OK);
  const std::string before = pit();
  firn_recorder_destroy(recorder);
  recorder = make(42);
  for (const std::string& edit : edits) {
    ASSERT_EQ(firn_recorder_apply(recorder, bytes_of(edit), edit.size(), &error), FIRN_OK) << error.what;
  }
  EXPECT_EQ(pit(), before);
  firn_target open = {};
  ASSERT_EQ(firn_guided_open(recorder, &open, &error), FIRN_OK);
  EXPECT_EQ(std::memcmp(&open, &test, sizeof open), 0);
  firn_guidance again = FIRN_INIT(firn_guidance);
  ASSERT_EQ(firn_guided_state(recorder, &open, &again, &error), FIRN_OK);
  EXPECT_EQ(std::memcmp(&again, &now, sizeof now), 0);
  // The author was set before the edits came back, and goes on after the last of them.
  ASSERT_EQ(tell(FIRN_TEST_EVENT_CROSSED), FIRN_OK) << error.what;
  EXPECT_EQ(line(), "ECTP12");
  ASSERT_EQ(firn_guided_open(recorder, &open, &error), FIRN_OK);
  EXPECT_EQ(open.device, 0u);
}

TEST_F(Guided, NeverGuessesWhichCrackCrossed) {
  start(column(FIRN_TEST_KIND_ECT));
  taps(12);
  ASSERT_EQ(tell(FIRN_TEST_EVENT_CRACK), FIRN_OK);
  const firn_target crack = now.last;
  taps(5);
  EXPECT_EQ(tell(FIRN_TEST_EVENT_CROSSED), FIRN_BAD_ARGUMENT);
  EXPECT_EQ(now.state, FIRN_GUIDED_LOADING);
  ASSERT_EQ(tell(FIRN_TEST_EVENT_CROSSED, nullptr, &crack), FIRN_OK) << error.what;
  EXPECT_EQ(line(), "ECTN12 cross 17");
  ASSERT_EQ(tell(FIRN_TEST_EVENT_RETRACT), FIRN_OK);
  taps(1);
  ASSERT_EQ(tell(FIRN_TEST_EVENT_CRACK), FIRN_OK);
  const firn_fracture seen = seen_down(68);
  ASSERT_EQ(tell(FIRN_TEST_EVENT_CROSSED, &seen), FIRN_OK) << error.what;
  EXPECT_EQ(line(), "ECTP18 down 68");
}

TEST_F(Guided, ARutschblockAndASawTest) {
  firn_test saw = column(FIRN_TEST_KIND_PST);
  saw.present |= FIRN_BIT(FIRN_FIELD_STABILITY_TEST_COLUMN_LENGTH_10UM);
  saw.column_length_10um = FIRN_CM(100);
  start(saw);
  firn_fracture cut = FIRN_INIT(firn_fracture);
  cut.present = FIRN_BIT(FIRN_FIELD_FRACTURE_CUT_10UM);
  cut.cut_10um = FIRN_CM(-3);
  EXPECT_EQ(tell(FIRN_TEST_EVENT_CUT_TO, &cut), FIRN_BAD_EDIT);
  cut.cut_10um = FIRN_CM(32);
  ASSERT_EQ(tell(FIRN_TEST_EVENT_CUT_TO, &cut), FIRN_OK);
  EXPECT_EQ(now.cut_10um, FIRN_CM(32));
  firn_fracture ran = seen_down(68);
  ran.present |= FIRN_BIT(FIRN_FIELD_FRACTURE_SAW_END);
  ran.saw_end = FIRN_SAW_END_END;
  ASSERT_EQ(tell(FIRN_TEST_EVENT_RAN, &ran), FIRN_OK) << error.what;
  EXPECT_EQ(line(), "PST 32/100 (End) down 68");

  start(column(FIRN_TEST_KIND_RB));
  firn_fracture step = FIRN_INIT(firn_fracture);
  step.present = FIRN_BIT(FIRN_FIELD_FRACTURE_STEP);
  for (step.step = 2; step.step <= 6; ++step.step) ASSERT_EQ(tell(FIRN_TEST_EVENT_LOADED, &step), FIRN_OK);
  EXPECT_EQ(now.step, 6);
  EXPECT_EQ(now.state, FIRN_GUIDED_FULL);
  ASSERT_EQ(tell(FIRN_TEST_EVENT_STOP), FIRN_OK);
  EXPECT_EQ(line(), "RB7");
}

TEST_F(Guided, WhatIsRefusedLeavesEverythingAsItWas) {
  firn_test again = column(FIRN_TEST_KIND_CT);
  start(again);
  taps(3);
  const std::string before = pit();
  const std::size_t count = firn_recorder_edit_count(recorder);
  firn_target other = {};
  EXPECT_EQ(firn_guided_start(recorder, &again, &other, nullptr, nullptr, &error), FIRN_BAD_EDIT);
  EXPECT_EQ(other.device, 0u);
  EXPECT_EQ(tell(FIRN_TEST_EVENT_START), FIRN_BAD_ARGUMENT);
  EXPECT_EQ(tell(99), FIRN_BAD_EDIT);
  EXPECT_EQ(tell(FIRN_TEST_EVENT_SLID), FIRN_BAD_EDIT);
  EXPECT_EQ(tell(FIRN_TEST_EVENT_RETRACT), FIRN_BAD_EDIT);
  firn_test_event reason = FIRN_INIT(firn_test_event);
  reason.kind = FIRN_TEST_EVENT_NOT_VALID;
  EXPECT_EQ(tell(reason), FIRN_BAD_EDIT);
  reason.not_valid_reason = 77;
  EXPECT_EQ(tell(reason), FIRN_BAD_EDIT);
  reason.not_valid_reason = FIRN_NOT_VALID_REASON_OTHER;
  reason.words = "\xff";
  EXPECT_EQ(tell(reason), FIRN_BAD_UTF8);
  // A struct of a wrong size comes to light before anything is recorded.
  firn_test_event tap = FIRN_INIT(firn_test_event);
  tap.kind = FIRN_TEST_EVENT_TAP;
  firn_guidance small = FIRN_INIT(firn_guidance);
  small.struct_size = 8;
  EXPECT_EQ(firn_guided_event(recorder, &test, &tap, &small, nullptr, &error), FIRN_BAD_STRUCT_SIZE);
  tap.struct_size = 8;
  EXPECT_EQ(firn_guided_event(recorder, &test, &tap, nullptr, nullptr, &error), FIRN_BAD_STRUCT_SIZE);
  tap.struct_size = sizeof tap;
  const firn_target nothing = {42, 999, 0, 0, FIRN_THING_TEST, {}};
  EXPECT_EQ(firn_guided_event(recorder, &nothing, &tap, nullptr, nullptr, &error), FIRN_NO_SUCH_TARGET);
  EXPECT_EQ(firn_guided_state(recorder, &nothing, &now, &error), FIRN_NO_SUCH_TARGET);
  EXPECT_EQ(pit(), before);
  EXPECT_EQ(firn_recorder_edit_count(recorder), count);

  EXPECT_EQ(firn_guided_event(recorder, nullptr, &tap, nullptr, nullptr, nullptr), FIRN_NULL_ARGUMENT);
  EXPECT_EQ(firn_guided_event(recorder, &test, nullptr, nullptr, nullptr, nullptr), FIRN_NULL_ARGUMENT);
  EXPECT_EQ(firn_guided_event(nullptr, &test, &tap, nullptr, nullptr, nullptr), FIRN_NULL_ARGUMENT);
  EXPECT_EQ(firn_guided_start(recorder, nullptr, nullptr, nullptr, nullptr, nullptr), FIRN_NULL_ARGUMENT);
  EXPECT_EQ(firn_guided_state(recorder, &test, nullptr, nullptr), FIRN_NULL_ARGUMENT);
  EXPECT_EQ(firn_guided_open(recorder, nullptr, nullptr), FIRN_NULL_ARGUMENT);
  EXPECT_EQ(firn_guided_line(recorder, &test, nullptr, nullptr), FIRN_NULL_ARGUMENT);
  EXPECT_EQ(firn_guided_text(1, nullptr, nullptr, nullptr), FIRN_NULL_ARGUMENT);

  reason.words = "ski tracks across it";
  ASSERT_EQ(tell(reason), FIRN_OK) << error.what;
  EXPECT_EQ(line(), "CT not valid: other \"ski tracks across it\"");
}

TEST_F(Guided, NobodyRecordsBeforeTheAuthorIsKnown) {
  firn_recorder* fresh = nullptr;
  ASSERT_EQ(firn_recorder_create(context, &fresh, nullptr), FIRN_OK);
  const firn_test made = column(FIRN_TEST_KIND_CT);
  EXPECT_EQ(firn_guided_start(fresh, &made, nullptr, nullptr, nullptr, nullptr), FIRN_WRONG_STATE);
  EXPECT_EQ(firn_guided_open(fresh, &test, nullptr), FIRN_WRONG_STATE);
  firn_recorder_destroy(fresh);
}

}  // namespace
