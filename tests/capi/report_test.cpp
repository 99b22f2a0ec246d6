// Reading a report through structs: the same as what the bytes say.
#include "schemas/report_generated.h"
#include "support.h"

namespace {

using capi::Buffer;
using capi::bytes_of;
using capi::Context;

class Report : public testing::TestWithParam<const char*> {
 protected:
  Report() : pit(capi::pit_of(context, capi::demo_notes(GetParam()))), bytes(capi::report_of(context, pit)) {
    EXPECT_EQ(firn_report_open(context, bytes_of(bytes), bytes.size(), &report, nullptr), FIRN_OK);
    summary = FIRN_INIT(firn_report_summary);
    EXPECT_EQ(firn_report_summarise(report, &summary, nullptr), FIRN_OK);
    // Aligned, since the tests read it in place.
    copy.assign(bytes.begin(), bytes.end());
    root = firnbook::GetReport(copy.data());
  }
  ~Report() override { firn_report_close(report); }

  Context context;
  std::string pit, bytes;
  std::vector<std::uint8_t> copy;
  const firnbook::Report* root = nullptr;
  firn_report* report = nullptr;
  firn_report_summary summary{};
};

INSTANTIATE_TEST_SUITE_P(Demos, Report, testing::Values("larch-bowl-entry", "tarn-shoulder"));

TEST_P(Report, SummaryCountsWhatIsThere) {
  EXPECT_EQ(summary.pit_crc32, root->pit_crc32());
  EXPECT_EQ(summary.finding_count, root->findings()->size());
  EXPECT_EQ(summary.concern_count, root->concerns()->size());
  EXPECT_EQ(summary.caution_count, root->cautions()->size());
  EXPECT_EQ(summary.method_count, root->methods()->size());
  EXPECT_GT(summary.finding_count, 10u);
  EXPECT_GT(summary.concern_count, 0u);
  EXPECT_GT(summary.caution_count, 3u);
  EXPECT_EQ(summary.tolerance_10um, 2000);
}

TEST_P(Report, FindingsAndConcernsAreThoseOfTheBytes) {
  for (std::uint32_t i = 0; i < summary.finding_count; ++i) {
    firn_finding finding = FIRN_INIT(firn_finding);
    ASSERT_EQ(firn_report_finding(report, i, &finding, nullptr), FIRN_OK);
    const firnbook::Finding* raw = root->findings()->Get(i);
    EXPECT_EQ(finding.key, static_cast<int>(raw->key()));
    EXPECT_EQ(finding.method, static_cast<int>(raw->method()));
    EXPECT_EQ(finding.verdict, static_cast<int>(raw->verdict()));
    EXPECT_EQ(finding.depth_10um, raw->depth_10um() == -1 ? FIRN_UNKNOWN : raw->depth_10um());
    EXPECT_EQ(finding.a, raw->a());
    EXPECT_EQ(finding.b, raw->b());
    EXPECT_EQ(finding.c, raw->c());
    EXPECT_EQ(finding.subject.index, raw->subject().index());
    EXPECT_EQ(finding.subject.sub, raw->subject().sub());
    EXPECT_EQ(finding.subject.thing, static_cast<int>(raw->subject().thing()));
  }
  for (std::uint32_t i = 0; i < summary.concern_count; ++i) {
    firn_concern concern = FIRN_INIT(firn_concern);
    ASSERT_EQ(firn_report_concern(report, i, &concern, nullptr), FIRN_OK);
    const firnbook::Concern* raw = root->concerns()->Get(i);
    EXPECT_EQ(concern.top_10um, raw->top_10um().value_or(FIRN_UNKNOWN));
    EXPECT_EQ(concern.layer, raw->layer().value_or(-1));
    ASSERT_EQ(concern.evidence_count, raw->evidence() == nullptr ? 0 : raw->evidence()->size());
    for (std::uint32_t nth = 0; nth < concern.evidence_count; ++nth) {
      std::uint32_t finding = UINT32_MAX;
      ASSERT_EQ(firn_report_evidence(report, i, nth, &finding, nullptr), FIRN_OK);
      EXPECT_EQ(finding, raw->evidence()->Get(nth));
      EXPECT_LT(finding, summary.finding_count);
    }
    std::uint32_t none = 0;
    EXPECT_EQ(firn_report_evidence(report, i, concern.evidence_count, &none, nullptr), FIRN_BAD_ARGUMENT);
  }
}

TEST_P(Report, EverythingHasWords) {
  Buffer text(context), remedy(context);
  for (std::uint32_t i = 0; i < summary.check_count; ++i) {
    firn_check_entry entry = FIRN_INIT(firn_check_entry);
    EXPECT_EQ(firn_report_check(report, i, &entry, nullptr), FIRN_OK);
    EXPECT_NE(entry.severity, FIRN_SEVERITY_NONE);
    EXPECT_EQ(firn_report_check_text(report, i, text.out(), remedy.out(), nullptr), FIRN_OK);
    EXPECT_GT(text.size(), 0u) << entry.code;
    EXPECT_EQ(firn_report_check_text(report, i, text.out(), nullptr, nullptr), FIRN_OK);
  }
  for (std::uint32_t i = 0; i < summary.finding_count; ++i) {
    EXPECT_EQ(firn_report_finding_text(report, i, bytes_of(pit), pit.size(), text.out(), nullptr), FIRN_OK);
  }
  for (std::uint32_t i = 0; i < summary.loaded_count; ++i) {
    firn_loaded_by entry = FIRN_INIT(firn_loaded_by);
    EXPECT_EQ(firn_report_loaded_by(report, i, &entry, nullptr), FIRN_OK);
    EXPECT_LT(entry.concern, static_cast<std::int32_t>(summary.concern_count));
    EXPECT_NE(entry.test_kind, 0);
  }
  for (std::uint32_t i = 0; i < summary.not_loaded_count; ++i) {
    firn_not_loaded entry = FIRN_INIT(firn_not_loaded);
    EXPECT_EQ(firn_report_not_loaded(report, i, &entry, nullptr), FIRN_OK);
    EXPECT_NE(entry.reason, FIRN_NOT_LOADED_REASON_NONE);
    EXPECT_EQ(firn_report_not_loaded_text(report, i, text.out(), nullptr), FIRN_OK);
    EXPECT_GT(text.size(), 0u);
  }
  for (std::uint32_t i = 0; i < summary.suggestion_count; ++i) {
    firn_suggestion suggestion = FIRN_INIT(firn_suggestion);
    EXPECT_EQ(firn_report_suggestion(report, i, &suggestion, nullptr), FIRN_OK);
    EXPECT_NE(suggestion.step, FIRN_NEXT_STEP_NONE);
    EXPECT_EQ(firn_report_suggestion_text(report, i, text.out(), nullptr), FIRN_OK);
    EXPECT_GT(text.size(), 0u);
  }
  for (std::uint32_t i = 0; i < summary.caution_count; ++i) {
    firn_caution caution = FIRN_INIT(firn_caution);
    EXPECT_EQ(firn_report_caution(report, i, &caution, nullptr), FIRN_OK);
    EXPECT_EQ(firn_report_caution_text(report, i, text.out(), nullptr), FIRN_OK);
    EXPECT_GT(text.size(), 0u) << caution.key;
    EXPECT_EQ(text.text().find('{'), std::string::npos) << text.text();
  }
  for (std::uint32_t i = 0; i < summary.method_count; ++i) {
    firn_method_used used = FIRN_INIT(firn_method_used);
    EXPECT_EQ(firn_report_method(report, i, &used, nullptr), FIRN_OK);
    EXPECT_NE(used.method, FIRN_METHOD_NONE);
    EXPECT_NE(used.verified, FIRN_VERIFIED_NONE);
  }
}

TEST_P(Report, PositionsThatAreNotThere) {
  Buffer text(context);
  firn_error error = FIRN_INIT(firn_error);
  firn_check_entry check = FIRN_INIT(firn_check_entry);
  firn_finding finding = FIRN_INIT(firn_finding);
  firn_concern concern = FIRN_INIT(firn_concern);
  firn_not_loaded not_loaded = FIRN_INIT(firn_not_loaded);
  firn_suggestion suggestion = FIRN_INIT(firn_suggestion);
  firn_caution caution = FIRN_INIT(firn_caution);
  firn_method_used method = FIRN_INIT(firn_method_used);
  std::uint32_t found = 0;
  EXPECT_EQ(firn_report_check(report, summary.check_count, &check, &error), FIRN_BAD_ARGUMENT);
  EXPECT_NE(error.what[0], '\0');
  EXPECT_EQ(firn_report_finding(report, summary.finding_count, &finding, nullptr), FIRN_BAD_ARGUMENT);
  EXPECT_EQ(firn_report_concern(report, UINT32_MAX, &concern, nullptr), FIRN_BAD_ARGUMENT);
  firn_loaded_by loaded = FIRN_INIT(firn_loaded_by);
  EXPECT_EQ(firn_report_loaded_by(report, UINT32_MAX, &loaded, nullptr), FIRN_BAD_ARGUMENT);
  EXPECT_EQ(firn_report_not_loaded(report, UINT32_MAX, &not_loaded, nullptr), FIRN_BAD_ARGUMENT);
  EXPECT_EQ(firn_report_suggestion(report, UINT32_MAX, &suggestion, nullptr), FIRN_BAD_ARGUMENT);
  EXPECT_EQ(firn_report_caution(report, UINT32_MAX, &caution, nullptr), FIRN_BAD_ARGUMENT);
  EXPECT_EQ(firn_report_method(report, UINT32_MAX, &method, nullptr), FIRN_BAD_ARGUMENT);
  firn_parameter parameter = {};
  EXPECT_EQ(firn_report_parameter(report, 0, &parameter, nullptr, nullptr), FIRN_BAD_ARGUMENT)
      << "nothing was changed";
  EXPECT_EQ(firn_report_evidence(report, UINT32_MAX, 0, &found, nullptr), FIRN_BAD_ARGUMENT);
  EXPECT_EQ(firn_report_check_text(report, UINT32_MAX, text.out(), nullptr, nullptr), FIRN_BAD_ARGUMENT);
  EXPECT_EQ(firn_report_finding_text(report, UINT32_MAX, bytes_of(pit), pit.size(), text.out(), nullptr),
            FIRN_BAD_ARGUMENT);
  EXPECT_EQ(firn_report_caution_text(report, UINT32_MAX, text.out(), nullptr), FIRN_BAD_ARGUMENT);
  EXPECT_EQ(firn_report_suggestion_text(report, UINT32_MAX, text.out(), nullptr), FIRN_BAD_ARGUMENT);
  EXPECT_EQ(firn_report_not_loaded_text(report, UINT32_MAX, text.out(), nullptr), FIRN_BAD_ARGUMENT);
}

TEST_P(Report, StructSizesOfOlderAndNewerCallers) {
  firn_finding finding = FIRN_INIT(firn_finding);
  finding.struct_size = sizeof finding - 1;
  EXPECT_EQ(firn_report_finding(report, 0, &finding, nullptr), FIRN_BAD_STRUCT_SIZE);
  EXPECT_EQ(finding.key, 0) << "nothing is written into a struct that is too small";
  struct {
    firn_finding known;
    std::uint32_t later;
  } newer = {};
  newer.known.struct_size = sizeof newer;
  newer.later = 77;
  EXPECT_EQ(firn_report_finding(report, 0, &newer.known, nullptr), FIRN_OK);
  EXPECT_EQ(newer.known.struct_size, sizeof newer);
  EXPECT_EQ(newer.later, 77u) << "what this version does not know stays as it was";
  EXPECT_EQ(firn_report_finding(report, 0, nullptr, nullptr), FIRN_NULL_ARGUMENT);
}

TEST_P(Report, FindingsOfAnotherPitAreNotPutInWords) {
  const bool larch = std::string(GetParam()) == "larch-bowl-entry";
  const std::string other =
      capi::pit_of(context, capi::demo_notes(larch ? "tarn-shoulder" : "larch-bowl-entry"));
  Buffer text(context);
  EXPECT_EQ(firn_report_finding_text(report, 0, bytes_of(other), other.size(), text.out(), nullptr),
            FIRN_OTHER_PIT);
}

// The bytes may go once the report is open.
TEST_P(Report, KeepsItsOwnCopy) {
  const std::string kept = bytes;
  firn_report* opened = nullptr;
  {
    std::vector<std::uint8_t> once(kept.begin(), kept.end());
    ASSERT_EQ(firn_report_open(context, once.data(), once.size(), &opened, nullptr), FIRN_OK);
    once.assign(once.size(), 0xFF);
  }
  firn_report_summary again = FIRN_INIT(firn_report_summary);
  EXPECT_EQ(firn_report_summarise(opened, &again, nullptr), FIRN_OK);
  EXPECT_EQ(again.finding_count, summary.finding_count);
  firn_report_close(opened);
}

}  // namespace
