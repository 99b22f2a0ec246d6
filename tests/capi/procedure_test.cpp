// Steps, probe strikes and ticks through the C API.
#include <cstring>

#include "support.h"

namespace {

using capi::Buffer;
using capi::bytes_of;
using capi::Context;

TEST(Procedure, EveryStepOfEveryTestIsGiven) {
  for (unsigned kind = 0; kind <= FIRN_TEST_KIND_OTHER; ++kind) {
    std::uint32_t count = 0;
    ASSERT_EQ(firn_procedure_count(static_cast<std::uint8_t>(kind), &count, nullptr), FIRN_OK);
    EXPECT_GE(count, 9u);
    for (std::uint32_t i = 0; i < count; ++i) {
      firn_procedure_entry step = FIRN_INIT(firn_procedure_entry);
      ASSERT_EQ(firn_procedure_step(static_cast<std::uint8_t>(kind), i, &step, nullptr), FIRN_OK);
      EXPECT_NE(step.kind, 0);
      EXPECT_GT(std::strlen(step.code), 5u);
      EXPECT_GT(std::strlen(step.sentence), 20u);
      EXPECT_NE(step.needs, nullptr);
      EXPECT_GT(std::strlen(step.guards_against), 20u);
      EXPECT_GT(std::strlen(step.source), 10u);
      if (kind != 0) {
        EXPECT_TRUE(step.test_kinds == 0 || step.test_kinds == 1u << kind);
      }
    }
    firn_error error = FIRN_INIT(firn_error);
    firn_procedure_entry behind = FIRN_INIT(firn_procedure_entry);
    EXPECT_EQ(firn_procedure_step(static_cast<std::uint8_t>(kind), count, &behind, &error),
              FIRN_BAD_ARGUMENT);
    EXPECT_NE(std::string(error.remedy).find("firn_procedure_count"), std::string::npos);
    EXPECT_EQ(firn_procedure_step(static_cast<std::uint8_t>(kind), UINT32_MAX, &behind, nullptr),
              FIRN_BAD_ARGUMENT);
  }
}

TEST(Procedure, TheExtendedColumnHasItsDimensions) {
  std::uint32_t count = 0;
  ASSERT_EQ(firn_procedure_count(FIRN_TEST_KIND_ECT, &count, nullptr), FIRN_OK);
  bool found = false;
  for (std::uint32_t i = 0; i < count; ++i) {
    firn_procedure_entry step = FIRN_INIT(firn_procedure_entry);
    ASSERT_EQ(firn_procedure_step(FIRN_TEST_KIND_ECT, i, &step, nullptr), FIRN_OK);
    EXPECT_EQ(step.least_slope_deg, 0);
    if (step.kind != FIRN_STEP_KIND_EXTENDED_COLUMN_ISOLATED) continue;
    found = true;
    EXPECT_EQ(step.across_10um, FIRN_CM(90));
    EXPECT_EQ(step.up_10um, FIRN_CM(30));
    EXPECT_STREQ(step.code, "extended column isolated");
    EXPECT_EQ(step.verified, FIRN_VERIFIED_READ_SECONDARY);
  }
  EXPECT_TRUE(found);
}

TEST(Procedure, BadCallsAreRefused) {
  std::uint32_t count = 77;
  firn_procedure_entry step = FIRN_INIT(firn_procedure_entry);
  EXPECT_EQ(firn_procedure_count(FIRN_TEST_KIND_OTHER + 1, &count, nullptr), FIRN_BAD_ARGUMENT);
  EXPECT_EQ(count, 77u);
  EXPECT_EQ(firn_procedure_count(255, &count, nullptr), FIRN_BAD_ARGUMENT);
  EXPECT_EQ(firn_procedure_step(255, 0, &step, nullptr), FIRN_BAD_ARGUMENT);
  EXPECT_EQ(firn_procedure_step(0, 0, nullptr, nullptr), FIRN_NULL_ARGUMENT);
  step.struct_size = 8;
  EXPECT_EQ(firn_procedure_step(0, 0, &step, nullptr), FIRN_BAD_STRUCT_SIZE);
  firn_error error = {};
  EXPECT_EQ(firn_procedure_count(0, &count, &error), FIRN_BAD_STRUCT_SIZE);
}

TEST(ProbeSpread, NamesTheOddStrike) {
  const std::int32_t strikes[] = {FIRN_CM(140), FIRN_CM(138), FIRN_CM(85), FIRN_CM(142), -1};
  firn_probe_result result = FIRN_INIT(firn_probe_result);
  ASSERT_EQ(firn_probe_spread(strikes, 5, &result, nullptr), FIRN_OK);
  EXPECT_EQ(result.lowest_10um, FIRN_CM(85));
  EXPECT_EQ(result.highest_10um, FIRN_CM(142));
  EXPECT_EQ(result.spread_10um, FIRN_CM(57));
  EXPECT_EQ(result.mean_10um, 126250);
  EXPECT_EQ(result.count, 4u);
  EXPECT_EQ(result.ignored, 1u);
  EXPECT_EQ(result.uneven, 1);
  EXPECT_EQ(result.too_few, 0);
  EXPECT_EQ(result.odd, FIRN_ODD_STRIKE_SHALLOWER);
  EXPECT_EQ(result.odd_at, 2u);
  EXPECT_NE(std::string(result.words).find("rock"), std::string::npos);
}

TEST(ProbeSpread, WithoutStrikesNothingIsKnown) {
  firn_probe_result result = FIRN_INIT(firn_probe_result);
  ASSERT_EQ(firn_probe_spread(nullptr, 0, &result, nullptr), FIRN_OK);
  EXPECT_EQ(result.lowest_10um, FIRN_UNKNOWN);
  EXPECT_EQ(result.highest_10um, FIRN_UNKNOWN);
  EXPECT_EQ(result.spread_10um, FIRN_UNKNOWN);
  EXPECT_EQ(result.mean_10um, FIRN_UNKNOWN);
  EXPECT_EQ(result.too_few, 1);
  EXPECT_EQ(result.odd, FIRN_ODD_STRIKE_NONE);
}

TEST(ProbeSpread, BadCallsAreRefused) {
  const std::int32_t strike = FIRN_CM(140);
  firn_probe_result result = FIRN_INIT(firn_probe_result);
  EXPECT_EQ(firn_probe_spread(&strike, 1000001, &result, nullptr), FIRN_BAD_ARGUMENT);
  EXPECT_EQ(firn_probe_spread(&strike, SIZE_MAX, &result, nullptr), FIRN_BAD_ARGUMENT);
  EXPECT_EQ(firn_probe_spread(nullptr, 1, &result, nullptr), FIRN_NULL_ARGUMENT);
  EXPECT_EQ(firn_probe_spread(&strike, 1, nullptr, nullptr), FIRN_NULL_ARGUMENT);
  result.struct_size = 8;
  EXPECT_EQ(firn_probe_spread(&strike, 1, &result, nullptr), FIRN_BAD_STRUCT_SIZE);
}

// A step ticked by hand reaches the cautions, in words.
TEST(Procedure, TicksReachTheReport) {
  Context context;
  firn_error error = FIRN_INIT(firn_error);
  firn_recorder* recorder = nullptr;
  ASSERT_EQ(firn_recorder_create(context, &recorder, &error), FIRN_OK);
  firn_author author = FIRN_INIT(firn_author);
  author.device = 7;
  ASSERT_EQ(firn_recorder_author(recorder, &author, &error), FIRN_OK);
  firn_step step = FIRN_INIT(firn_step);
  EXPECT_EQ(firn_record_step(recorder, &step, nullptr, nullptr, nullptr, &error), FIRN_BAD_EDIT);
  step.present = FIRN_BIT(FIRN_FIELD_STEP_KIND) | FIRN_BIT(FIRN_FIELD_STEP_DONE);
  step.kind = FIRN_STEP_KIND_PACK_CLOSED;
  step.done = 2;
  EXPECT_EQ(firn_record_step(recorder, &step, nullptr, nullptr, nullptr, &error), FIRN_BAD_ARGUMENT);
  step.done = 0;
  firn_target target = {};
  Buffer edit(context);
  ASSERT_EQ(firn_record_step(recorder, &step, nullptr, &target, edit.out(), &error), FIRN_OK);
  EXPECT_EQ(target.thing, FIRN_THING_STEP);
  EXPECT_GT(edit.size(), 0u);
  Buffer pit(context);
  ASSERT_EQ(firn_recorder_pit(recorder, pit.out(), &error), FIRN_OK);
  const std::string report = capi::report_of(context, pit.text());
  firn_report* opened = nullptr;
  ASSERT_EQ(firn_report_open(context, bytes_of(report), report.size(), &opened, &error), FIRN_OK);
  firn_report_summary summary = FIRN_INIT(firn_report_summary);
  ASSERT_EQ(firn_report_summarise(opened, &summary, &error), FIRN_OK);
  std::string words;
  std::uint32_t not_ticked = 0;
  for (std::uint32_t i = 0; i < summary.caution_count; ++i) {
    firn_caution caution = FIRN_INIT(firn_caution);
    ASSERT_EQ(firn_report_caution(opened, i, &caution, &error), FIRN_OK);
    not_ticked += caution.key == FIRN_CAUTION_KEY_STEP_NOT_TICKED ? 1u : 0u;
    if (caution.key != FIRN_CAUTION_KEY_STEP_NOT_DONE) continue;
    EXPECT_EQ(caution.a, FIRN_STEP_KIND_PACK_CLOSED);
    EXPECT_EQ(caution.place.thing, FIRN_THING_STEP);
    Buffer text(context);
    ASSERT_EQ(firn_report_caution_text(opened, i, text.out(), &error), FIRN_OK);
    words = text.text();
  }
  EXPECT_EQ(words, "A step that guards people was not done: pack closed.");
  EXPECT_EQ(not_ticked, 5u);
  firn_report_close(opened);
  // Ticked after all: the same thing is changed.
  step.done = 1;
  ASSERT_EQ(firn_record_step(recorder, &step, &target, nullptr, nullptr, &error), FIRN_OK);
  ASSERT_EQ(firn_recorder_pit(recorder, pit.out(), &error), FIRN_OK);
  Buffer notes(context);
  ASSERT_EQ(firn_notes_write(context, pit.data(), pit.size(), notes.out(), nullptr, &error), FIRN_OK);
  EXPECT_EQ(notes.text(), "step pack closed yes\n");
  firn_recorder_destroy(recorder);
}

}  // namespace
