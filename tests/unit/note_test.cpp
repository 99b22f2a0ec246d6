// The note's page and the whole note.

#include "note/note.h"

#include <gtest/gtest.h>

#include <string>
#include <string_view>

#include "note/page.h"
#include "note/sentences.h"
#include "note_help.h"

namespace firn::tests {
namespace {

using note::Page;

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

TEST(Note, HostileReportsGiveWordsAndNoneReassures) {
  const std::vector<std::uint8_t> bytes = pack(small_pit());
  pit::View view;
  view.decode(*firnbook::GetPit(bytes.data()));
  std::mt19937 random(20270116);
  for (int round = 0; round < 700; ++round) {
    const std::vector<std::uint8_t> report = random_report(random);
    for (const note::Language language : note::kLanguages) {
      std::string note;
      note::append_note(note, view, *firnbook::GetReport(report.data()), language);
      ASSERT_NE(note.find("Tarn Shoulder"), std::string::npos);
      ASSERT_EQ(forbidden_in(note, language), "") << note;
      ASSERT_EQ(trouble_in(note, 100), "") << note;
    }
  }
}

TEST(Note, AnEmptyPitSaysWhatIsMissing) {
  const std::vector<std::uint8_t> bytes = pack(firnbook::PitT());
  pit::View view;
  view.decode(*firnbook::GetPit(bytes.data()));
  flatbuffers::FlatBufferBuilder builder;
  firnbook::FinishReportBuffer(builder, firnbook::ReportBuilder(builder).Finish());
  std::string note;
  note::append_note(note, view, *firnbook::GetReport(builder.GetBufferPointer()));
  EXPECT_NE(note.find("Pit without a name"), std::string::npos);
  EXPECT_NE(note.find("at a time that was not recorded"), std::string::npos);
  EXPECT_NE(note.find("That says little"), std::string::npos);
}

TEST(NoteSentences, MomentsPrintAsFarAsTheyAreKnown) {
  const auto print = [](const firnbook::Moment& moment) {
    std::string out;
    note::append_moment(out, &moment);
    return out;
  };
  using firnbook::TimePrecision;
  EXPECT_EQ(print({1795860300, -420, TimePrecision::minute, 1}), "2026-11-28 10:05 (UTC-07:00)");
  EXPECT_EQ(print({1795860300, 0, TimePrecision::minute, 0}), "2026-11-28 10:05");
  EXPECT_EQ(print({1795860300, 345, TimePrecision::day, 1}), "2026-11-28");
  EXPECT_EQ(print({1795860300, 0, TimePrecision::none, 0}), "");
  EXPECT_EQ(print({INT64_MAX, 0, TimePrecision::minute, 0}), "a date out of range");
}

TEST(NoteSentences, SentencesBeginWithACapitalOfAnyLanguage) {
  const auto sentence = [](std::string_view words) {
    std::string out;
    note::append_sentence(out, words);
    return out;
  };
  EXPECT_EQ(sentence("broke"), "Broke.");
  EXPECT_EQ(sentence("\u00E9boulement"), "\u00C9boulement.");
  EXPECT_EQ(sentence("\u00FCbung"), "\u00DCbung.");
  EXPECT_EQ(sentence("\u00F7"), "\u00F7.") << "a mark between the letters is no letter";
  EXPECT_EQ(sentence("\u00DF"), "\u00DF.");
  EXPECT_EQ(sentence("\u00C9tat"), "\u00C9tat.");
  EXPECT_EQ(sentence(""), "");
}

TEST(NotePage, WordsThatNoLineHoldsAreCut) {
  std::string out;
  Page(out, 20).item(2, "- ", std::string(50, 'x') + " y");
  EXPECT_EQ(out, "  - " + std::string(16, 'x') + "\n    " + std::string(16, 'x') + "\n    " +
                     std::string(16, 'x') + "\n    xx y\n");
  out.clear();
  std::string letters;
  for (int i = 0; i < 30; ++i) letters += "\u00E9";
  Page(out, 20).paragraph(letters);
  EXPECT_EQ(out, letters.substr(0, 40) + "\n" + letters.substr(40) + "\n") << "characters, not bytes";
}

TEST(NotePage, NoLineBeginsWithAMarkThatFrenchSetsApart) {
  for (std::size_t length = 1; length < 22; ++length) {
    std::string out;
    Page(out, 24).paragraph(std::string(length, 'a') + " : bbbb ; cccc ? dddd ! eeee");
    EXPECT_EQ(out.find("\n:"), std::string::npos) << out;
    EXPECT_EQ(out.find("\n;"), std::string::npos) << out;
    EXPECT_EQ(out.find("\n?"), std::string::npos) << out;
    EXPECT_EQ(out.find("\n!"), std::string::npos) << out;
  }
}

TEST(NotePage, SeparatorsAndTurnsOfOtherScriptsAreBlanks) {
  std::string out;
  Page(out).paragraph("a\u2028b\u2029c\u0085d\u202Ee\u2066f\u20ACg");
  EXPECT_EQ(out, "a b c d e f\u20ACg\n");
}

}  // namespace
}  // namespace firn::tests
