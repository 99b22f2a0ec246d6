// The note's page, its sentences, and what it must never say.

#include "note/note.h"

#include <gtest/gtest.h>

#include <random>
#include <string>
#include <string_view>
#include <vector>

#include "checking/check.h"
#include "note/page.h"
#include "note/sentences.h"
#include "note/words.h"
#include "pit/verify.h"
#include "schemas/pit_generated.h"
#include "schemas/report_generated.h"

namespace {

using firn::note::Page;

// Words that would reassure. They may appear in no sentence of the library, whatever a pit holds.
constexpr std::string_view kForbidden[] = {"safe",    "good",      "stable", "unlikely",    "ok",
                                           "go",      "green",     "fine",   "favourable",  "harmless",
                                           "no risk", "no danger", "secure", "trustworthy", "well bonded"};

bool is_letter(char byte) {
  return (byte >= 'a' && byte <= 'z') || (byte >= 'A' && byte <= 'Z');
}

std::string lower(std::string_view text) {
  std::string out(text);
  for (char& byte : out) {
    if (byte >= 'A' && byte <= 'Z') byte = static_cast<char>(byte - 'A' + 'a');
  }
  return out;
}

// The forbidden word that stands in the text as a word of its own, or "".
std::string_view forbidden_in(std::string_view text) {
  const std::string low = lower(text);
  for (const std::string_view word : kForbidden) {
    for (std::size_t at = low.find(word); at != std::string::npos; at = low.find(word, at + 1)) {
      const bool starts = at == 0 || !is_letter(low[at - 1]);
      const std::size_t end = at + word.size();
      if (starts && (end == low.size() || !is_letter(low[end]))) return word;
    }
  }
  return {};
}

TEST(NoteWords, TheForbiddenListItselfWorks) {
  EXPECT_EQ(forbidden_in("a safe slope"), "safe");
  EXPECT_EQ(forbidden_in("GO!"), "go");
  EXPECT_EQ(forbidden_in("unstable, ongoing, goes"), "");
}

TEST(NoteWords, EveryKeyHasASentenceAndNoneReassures) {
  const auto expect_words = [](std::string_view words, const char* key) {
    EXPECT_FALSE(words.empty()) << key;
    EXPECT_EQ(forbidden_in(words), "") << key << ": " << words;
  };
  for (const auto key : firnbook::EnumValuesFindingKey()) {
    if (key != firnbook::FindingKey::none) {
      expect_words(firn::note::finding_words(key), firnbook::EnumNameFindingKey(key));
    }
  }
  for (const auto key : firnbook::EnumValuesCautionKey()) {
    if (key != firnbook::CautionKey::none) {
      expect_words(firn::note::caution_words(key), firnbook::EnumNameCautionKey(key));
    }
  }
  for (const auto key : firnbook::EnumValuesNextStep()) {
    if (key != firnbook::NextStep::none) {
      expect_words(firn::note::suggestion_words(key), firnbook::EnumNameNextStep(key));
    }
  }
  for (const auto key : firnbook::EnumValuesNotLoadedReason()) {
    if (key != firnbook::NotLoadedReason::none) {
      expect_words(firn::note::not_loaded_words(key), firnbook::EnumNameNotLoadedReason(key));
    }
  }
  for (const auto key : firnbook::EnumValuesMethod()) {
    if (key != firnbook::Method::none) {
      expect_words(firn::note::method_words(key), firnbook::EnumNameMethod(key));
    }
  }
  for (const auto key : firnbook::EnumValuesVerified()) {
    if (key != firnbook::Verified::none) {
      expect_words(firn::note::verified_words(key), firnbook::EnumNameVerified(key));
    }
  }
  for (const auto key : firnbook::EnumValuesConcernRank()) {
    expect_words(firn::note::rank_words(key), firnbook::EnumNameConcernRank(key));
  }
}

TEST(NoteWords, ChecksDoNotReassureEither) {
  std::size_t count = 0;
  const firn::checking::Rule* rules = firn::checking::all_rules(count);
  ASSERT_GT(count, 0U);
  for (std::size_t i = 0; i < count; ++i) {
    EXPECT_EQ(forbidden_in(rules[i].message), "") << rules[i].message;
    EXPECT_EQ(forbidden_in(rules[i].remedy), "") << rules[i].remedy;
  }
}

TEST(NoteWords, TemplatesFillInUnits) {
  std::string out;
  firn::note::append_template(out, "{a:mm} {b:cm} {c:hardness} {depth:degC} {a} {b:steps} {c:form}",
                              {-1234, 605, 68000, 14});
  EXPECT_EQ(out, "6.05 68 4F+ -12.3 605 11333.33 PPsd");
}

TEST(NoteWords, AnUnclosedTemplateEndsInsteadOfRunningOn) {
  std::string out;
  firn::note::append_template(out, "a {depth", {});
  EXPECT_EQ(out, "a ");
}

TEST(NotePage, WrapsWithAHangingIndent) {
  std::string out;
  Page page(out);
  std::string words;
  for (int i = 0; i < 40; ++i) words += "seven77 ";
  page.item(2, "1. ", words);
  std::size_t start = 0;
  int lines = 0;
  while (start < out.size()) {
    const std::size_t end = out.find('\n', start);
    const std::string_view line = std::string_view(out).substr(start, end - start);
    EXPECT_LE(line.size(), firn::note::kPageWidth);
    EXPECT_EQ(line.substr(0, 5), lines == 0 ? "  1. " : "     ");
    ++lines;
    start = end + 1;
  }
  EXPECT_EQ(lines, 4);
}

TEST(NotePage, ControlCharactersAndBrokenUtf8CannotReachATerminal) {
  std::string out;
  Page(out).paragraph(
      "a\x1b[31mred\x07 \xff \xc2\x9b"
      "1m");
  EXPECT_EQ(out, "a [31mred  \xEF\xBF\xBD  1m\n");
}

std::vector<std::uint8_t> pack(const firnbook::PitT& pit) {
  flatbuffers::FlatBufferBuilder builder;
  firnbook::FinishPitBuffer(builder, firnbook::Pit::Pack(builder, &pit));
  return {builder.GetBufferPointer(), builder.GetBufferPointer() + builder.GetSize()};
}

// A report as hostile as a report can be that still verifies: every position and number at random.
std::vector<std::uint8_t> random_report(std::mt19937& random) {
  const auto number = [&random](std::int32_t low, std::int32_t high) {
    return std::uniform_int_distribution<std::int32_t>(low, high)(random);
  };
  const auto any = [&] {
    const std::int32_t choices[] = {INT32_MIN, -1, 0, 1, 2, 68000, INT32_MAX, number(-5, 5)};
    return choices[number(0, 7)];
  };
  const auto place = [&] {
    return firnbook::Place(any(), any(), static_cast<std::uint16_t>(number(0, 65535)),
                           static_cast<firnbook::Thing>(number(0, 255)));
  };
  flatbuffers::FlatBufferBuilder builder;
  std::vector<firnbook::Finding> findings;
  for (int i = 0; i < 12; ++i) {
    findings.emplace_back(
        place(), any(), any(), any(), any(), static_cast<firnbook::FindingKey>(number(0, 130)),
        static_cast<firnbook::Method>(number(0, 9)), static_cast<firnbook::Verdict>(number(0, 9)));
  }
  std::vector<firnbook::Check> checks;
  for (int i = 0; i < 4; ++i) {
    checks.emplace_back(place(), any(), any(), any(), static_cast<firnbook::CheckCode>(number(0, 900)),
                        static_cast<firnbook::Severity>(number(0, 9)));
  }
  std::vector<firnbook::Caution> cautions;
  for (int i = 0; i < 6; ++i) {
    cautions.emplace_back(place(), any(), any(), static_cast<firnbook::CautionKey>(number(0, 110)),
                          static_cast<std::uint8_t>(number(0, 2)));
  }
  std::vector<firnbook::NotLoaded> not_loaded;
  std::vector<firnbook::Suggestion> suggestions;
  for (int i = 0; i < 4; ++i) {
    not_loaded.emplace_back(any(), any(), any(), static_cast<firnbook::TestKind>(number(0, 255)),
                            static_cast<firnbook::NotLoadedReason>(number(0, 9)));
    suggestions.emplace_back(any(), any(), static_cast<firnbook::NextStep>(number(0, 12)));
  }
  std::vector<flatbuffers::Offset<firnbook::Concern>> concerns;
  for (int i = 0; i < 3; ++i) {
    std::vector<std::uint32_t> evidence;
    for (int k = 0; k < 6; ++k) evidence.push_back(static_cast<std::uint32_t>(number(0, 14)));
    const auto list = builder.CreateVector(evidence);
    firnbook::ConcernBuilder concern(builder);
    if (number(0, 3) != 0) concern.add_kind(static_cast<firnbook::ConcernKind>(number(0, 5)));
    if (number(0, 3) != 0) concern.add_layer(any());
    if (number(0, 3) != 0) concern.add_layer_below(any());
    if (number(0, 3) != 0) concern.add_top_10um(any());
    if (number(0, 3) != 0) concern.add_bottom_10um(any());
    if (number(0, 3) != 0) concern.add_rank(static_cast<firnbook::ConcernRank>(number(0, 9)));
    concern.add_evidence(list);
    concerns.push_back(concern.Finish());
  }
  const auto check_list = builder.CreateVectorOfStructs(checks);
  const auto finding_list = builder.CreateVectorOfStructs(findings);
  const auto concern_list = builder.CreateVector(concerns);
  const auto not_loaded_list = builder.CreateVectorOfStructs(not_loaded);
  const auto suggestion_list = builder.CreateVectorOfStructs(suggestions);
  const auto caution_list = builder.CreateVectorOfStructs(cautions);
  firnbook::ReportBuilder report(builder);
  report.add_checks(check_list);
  report.add_findings(finding_list);
  report.add_concerns(concern_list);
  report.add_not_loaded(not_loaded_list);
  report.add_suggestions(suggestion_list);
  report.add_cautions(caution_list);
  const auto root = report.Finish();
  firnbook::FinishReportBuffer(builder, root);
  return {builder.GetBufferPointer(), builder.GetBufferPointer() + builder.GetSize()};
}

firnbook::PitT small_pit() {
  firnbook::PitT pit;
  pit.title = "Tarn Shoulder";
  auto layer = std::make_unique<firnbook::LayerT>();
  layer->top = std::make_unique<firnbook::Depth>(0, firnbook::Datum::surface, firnbook::Direction::vertical);
  layer->bottom =
      std::make_unique<firnbook::Depth>(16000, firnbook::Datum::surface, firnbook::Direction::vertical);
  layer->grain_form = firnbook::GrainForm::SH;
  layer->hardness = static_cast<firnbook::HandHardness>(251);
  pit.layers.push_back(std::move(layer));
  auto test = std::make_unique<firnbook::StabilityTestT>();
  test->kind = static_cast<firnbook::TestKind>(77);
  test->fractures.push_back(std::make_unique<firnbook::FractureT>());
  pit.tests.push_back(std::move(test));
  auto sign = std::make_unique<firnbook::SignT>();
  sign->kind = static_cast<firnbook::SignKind>(200);
  sign->length_10um = INT32_MIN;
  pit.signs.push_back(std::move(sign));
  auto slide = std::make_unique<firnbook::SlideT>();
  slide->size_tenths = std::uint8_t{255};
  pit.slides.push_back(std::move(slide));
  return pit;
}

TEST(Note, HostileReportsGiveWordsAndNoneReassures) {
  const std::vector<std::uint8_t> bytes = pack(small_pit());
  firn::pit::View view;
  view.decode(*firnbook::GetPit(bytes.data()));
  std::mt19937 random(20270116);
  for (int round = 0; round < 2000; ++round) {
    const std::vector<std::uint8_t> report = random_report(random);
    std::string note;
    firn::note::append_note(note, view, *firnbook::GetReport(report.data()));
    ASSERT_NE(note.find("Tarn Shoulder"), std::string::npos);
    ASSERT_EQ(forbidden_in(note), "") << note;
  }
}

TEST(Note, AnEmptyPitSaysWhatIsMissing) {
  const std::vector<std::uint8_t> bytes = pack(firnbook::PitT());
  firn::pit::View view;
  view.decode(*firnbook::GetPit(bytes.data()));
  flatbuffers::FlatBufferBuilder builder;
  firnbook::FinishReportBuffer(builder, firnbook::ReportBuilder(builder).Finish());
  std::string note;
  firn::note::append_note(note, view, *firnbook::GetReport(builder.GetBufferPointer()));
  EXPECT_NE(note.find("Pit without a name"), std::string::npos);
  EXPECT_NE(note.find("at a time that was not recorded"), std::string::npos);
  EXPECT_NE(note.find("That says little"), std::string::npos);
}

TEST(NoteSentences, MomentsPrintAsFarAsTheyAreKnown) {
  const auto print = [](const firnbook::Moment& moment) {
    std::string out;
    firn::note::append_moment(out, &moment);
    return out;
  };
  using firnbook::TimePrecision;
  EXPECT_EQ(print({1795860300, -420, TimePrecision::minute, 1}), "2026-11-28 10:05 (UTC-07:00)");
  EXPECT_EQ(print({1795860300, 0, TimePrecision::minute, 0}), "2026-11-28 10:05");
  EXPECT_EQ(print({1795860300, 345, TimePrecision::day, 1}), "2026-11-28");
  EXPECT_EQ(print({1795860300, 0, TimePrecision::none, 0}), "");
  EXPECT_EQ(print({INT64_MAX, 0, TimePrecision::minute, 0}), "a date out of range");
}

}  // namespace
