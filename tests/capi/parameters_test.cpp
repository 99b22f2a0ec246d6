// Thresholds that the caller changes: listed, refused out of range, and carried by the report and its note.
#include <cstring>
#include <set>
#include <string>
#include <vector>

#include "support.h"

namespace {

using capi::Buffer;
using capi::bytes_of;
using capi::Context;

std::vector<firn_parameter_entry> all_parameters() {
  std::uint32_t count = 0;
  EXPECT_EQ(firn_parameter_count(&count, nullptr), FIRN_OK);
  std::vector<firn_parameter_entry> all;
  for (std::uint32_t i = 0; i < count; ++i) {
    firn_parameter_entry entry = FIRN_INIT(firn_parameter_entry);
    EXPECT_EQ(firn_parameter_at(i, &entry, nullptr), FIRN_OK);
    all.push_back(entry);
  }
  return all;
}

class Parameters : public ::testing::Test {
 protected:
  // `parameters` changed; the status of firn_interpret, the report in `report`.
  firn_status interpret(const std::vector<firn_parameter>& parameters, firn_error* error = nullptr) {
    firn_interpret_options options = FIRN_INIT(firn_interpret_options);
    options.parameters = parameters.data();
    options.parameter_count = static_cast<std::uint32_t>(parameters.size());
    return firn_interpret(context, bytes_of(pit), pit.size(), &options, report.out(), error);
  }

  Context context;
  const std::string pit = capi::pit_of(context, capi::demo_notes("tarn-shoulder"));
  Buffer report{context};
};

TEST_F(Parameters, EachIsListedWithLimitsAndSource) {
  std::set<std::string> names;
  for (const firn_parameter_entry& one : all_parameters()) {
    SCOPED_TRACE(one.name);
    EXPECT_TRUE(names.insert(one.name).second);
    EXPECT_LE(one.least, one.default_value);
    EXPECT_LE(one.default_value, one.most);
    EXPECT_LT(one.least, one.most);
    EXPECT_GT(std::strlen(one.unit), 1u);
    EXPECT_GT(std::strlen(one.source), 12u);
    EXPECT_NE(one.verified, FIRN_VERIFIED_NONE);
  }
  EXPECT_GT(names.size(), 40u);
  firn_parameter_entry entry = FIRN_INIT(firn_parameter_entry);
  firn_error error = FIRN_INIT(firn_error);
  EXPECT_EQ(firn_parameter_at(static_cast<std::uint32_t>(names.size()), &entry, &error), FIRN_BAD_ARGUMENT);
  EXPECT_NE(std::string(error.remedy).find("firn_parameter_count"), std::string::npos);
  entry.struct_size = 4;
  EXPECT_EQ(firn_parameter_at(0, &entry, nullptr), FIRN_BAD_STRUCT_SIZE);
}

TEST_F(Parameters, BothLimitsAreTakenAndWhatLiesBeyondIsRefusedByName) {
  for (const firn_parameter_entry& one : all_parameters()) {
    SCOPED_TRACE(one.name);
    EXPECT_EQ(interpret({{one.key, 0, one.least}}), FIRN_OK);
    EXPECT_EQ(interpret({{one.key, 0, one.most}}), FIRN_OK);
    for (const std::int32_t beyond : {one.least - 1, one.most + 1, INT32_MIN, INT32_MAX}) {
      firn_error error = FIRN_INIT(firn_error);
      EXPECT_EQ(interpret({{one.key, 0, beyond}}, &error), FIRN_BAD_ARGUMENT);
      const std::string what = error.what;
      EXPECT_NE(what.find(one.name), std::string::npos) << what;
      EXPECT_NE(what.find(std::to_string(one.least) + " to " + std::to_string(one.most)), std::string::npos)
          << what;
      EXPECT_NE(what.find(one.unit), std::string::npos) << what;
    }
  }
}

TEST_F(Parameters, UnknownKeysAndListsThatAreNotThereAreRefused) {
  firn_error error = FIRN_INIT(firn_error);
  EXPECT_EQ(interpret({{0, 0, 1}}, &error), FIRN_BAD_ARGUMENT);
  EXPECT_NE(std::string(error.remedy).find("firn_parameter_at"), std::string::npos);
  EXPECT_EQ(interpret({{65535, 0, 1}}), FIRN_BAD_ARGUMENT);
  EXPECT_EQ(interpret(std::vector<firn_parameter>(1001, {FIRN_PARAMETER_KEY_PST_PERCENT, 0, 50})),
            FIRN_BAD_ARGUMENT);
  firn_interpret_options options = FIRN_INIT(firn_interpret_options);
  options.parameter_count = 1;
  EXPECT_EQ(firn_interpret(context, bytes_of(pit), pit.size(), &options, report.out(), nullptr),
            FIRN_NULL_ARGUMENT);
}

TEST_F(Parameters, TheReportAndItsNoteSayWhatWasChanged) {
  ASSERT_EQ(interpret({{FIRN_PARAMETER_KEY_PST_PERCENT, 0, 60},
                       {FIRN_PARAMETER_KEY_PST_PERCENT, 0, 30},
                       {FIRN_PARAMETER_KEY_FLAG_WARNING_COUNT, 0, 5}}),
            FIRN_OK);
  firn_report* opened = nullptr;
  ASSERT_EQ(firn_report_open(context, report.data(), report.size(), &opened, nullptr), FIRN_OK);
  firn_report_summary summary = FIRN_INIT(firn_report_summary);
  EXPECT_EQ(firn_report_summarise(opened, &summary, nullptr), FIRN_OK);
  ASSERT_EQ(summary.parameter_count, 1u) << "a default that was given is no change";
  firn_parameter changed = {};
  std::int32_t default_value = 0;
  EXPECT_EQ(firn_report_parameter(opened, 0, &changed, &default_value, nullptr), FIRN_OK);
  EXPECT_EQ(changed.key, FIRN_PARAMETER_KEY_PST_PERCENT);
  EXPECT_EQ(changed.value, 30) << "the last one counts";
  EXPECT_EQ(default_value, 50);
  EXPECT_EQ(firn_report_parameter(opened, 1, &changed, nullptr, nullptr), FIRN_BAD_ARGUMENT);
  firn_report_close(opened);
  Buffer note(context);
  ASSERT_EQ(
      firn_note_write(context, bytes_of(pit), pit.size(), report.data(), report.size(), note.out(), nullptr),
      FIRN_OK);
  EXPECT_NE(note.text().find("pst_percent is 30 instead of 50"), std::string::npos);
}

TEST_F(Parameters, TheFormerOptionIsOneOfThem) {
  firn_interpret_options options = FIRN_INIT(firn_interpret_options);
  options.tolerance_10um = 3000;
  ASSERT_EQ(firn_interpret(context, bytes_of(pit), pit.size(), &options, report.out(), nullptr), FIRN_OK);
  firn_report* opened = nullptr;
  ASSERT_EQ(firn_report_open(context, report.data(), report.size(), &opened, nullptr), FIRN_OK);
  firn_parameter changed = {};
  EXPECT_EQ(firn_report_parameter(opened, 0, &changed, nullptr, nullptr), FIRN_OK);
  EXPECT_EQ(changed.key, FIRN_PARAMETER_KEY_TOLERANCE_10UM);
  EXPECT_EQ(changed.value, 3000);
  firn_report_close(opened);
}

// Callers built against the first version hand in a smaller struct.
TEST_F(Parameters, AnOlderStructIsReadAsFarAsItGoes) {
  firn_interpret_options options = FIRN_INIT(firn_interpret_options);
  options.struct_size = 8;
  options.parameter_count = 7;
  EXPECT_EQ(firn_interpret(context, bytes_of(pit), pit.size(), &options, report.out(), nullptr), FIRN_OK);
}

}  // namespace
