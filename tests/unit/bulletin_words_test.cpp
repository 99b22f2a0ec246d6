// The words of the bulletin beside a pit: all there, and none that reassures.
#include <memory>

#include "bulletin/compare.h"
#include "bulletin_help.h"
#include "interpretation_help.h"
#include "note/bulletin.h"
#include "note/note.h"
#include "note_help.h"

namespace firn::tests {
namespace {

using note::Language;
using note::Table;

template <class E, std::size_t N>
void expect_all(Table of, Language language, const E (&values)[N]) {
  for (const E value : values) {
    const auto number = static_cast<std::size_t>(value);
    if (number == 0 && of != Table::ProblemKind) continue;
    const std::string_view words = note::row_words(of, number, language);
    EXPECT_FALSE(words.empty()) << static_cast<int>(of) << ' ' << number;
    EXPECT_EQ(forbidden_in(words, language), "") << words;
  }
}

TEST(BulletinNote, EveryValueHasWordsAndNoneReassures) {
  for (const Language language : note::kLanguages) {
    expect_all(Table::BulletinMatch, language, firnbook::EnumValuesBulletinMatch());
    expect_all(Table::DangerLevel, language, firnbook::EnumValuesDangerLevel());
    expect_all(Table::ProblemType, language, firnbook::EnumValuesProblemType());
    expect_all(Table::ProblemAnswer, language, firnbook::EnumValuesProblemAnswer());
    expect_all(Table::SpeakLimit, language, firnbook::EnumValuesSpeakLimit());
    expect_all(Table::ProblemKind, language, firnbook::EnumValuesProblemKind());
    for (std::size_t i = 0; i <= static_cast<std::size_t>(note::BulletinPhrase::problem_rated); ++i) {
      EXPECT_FALSE(note::row_words(Table::BulletinPhrase, i, language).empty()) << i;
      EXPECT_EQ(forbidden_in(note::row_words(Table::BulletinPhrase, i, language), language), "");
    }
  }
  const std::string_view not_shown = note::row_words(
      Table::ProblemAnswer, static_cast<std::size_t>(firnbook::ProblemAnswer::not_shown), Language::english);
  EXPECT_NE(not_shown.find("does not take the problem away"), std::string_view::npos);
}

std::string section_of(const PitT& pit, const std::string& json, const bulletin::Question& question,
                       Language language = Language::english) {
  Read read(pit);
  const ReadBulletin file(json);
  EXPECT_TRUE(file.ok);
  const auto comparison = bulletin::compare(read.view, read.analysis, *file.root, question);
  bulletin::add_cautions(read.view, comparison, read.analysis);
  flatbuffers::FlatBufferBuilder builder;
  const auto part = bulletin::write_comparison(comparison, builder);
  interpretation::write_report(read.analysis, {}, 0, builder, part);
  std::string out;
  note::append_note(out, read.view, *firnbook::GetReport(builder.GetBufferPointer()), language);
  const std::size_t begin = out.find(note::row_words(
      Table::BulletinPhrase, static_cast<std::size_t>(note::BulletinPhrase::heading), language));
  EXPECT_NE(begin, std::string::npos);
  return out.substr(begin, out.find("\n\n", begin) - begin);
}

TEST(BulletinNote, NoSectionReassuresWhateverTheBulletinAndThePit) {
  for (const auto& pit : {larch_bowl_entry(), tarn_shoulder(), std::make_unique<PitT>()}) {
    for (const std::string& name : bulletin_files()) {
      for (const char* region : {"", "XX-LW-01", "XX-LW-02", "elsewhere"}) {
        for (const int treeline : {0, 2000}) {
          for (const Language language : note::kLanguages) {
            const std::string section =
                section_of(*pit, bulletin_file(name), {region, treeline, 0}, language);
            EXPECT_EQ(forbidden_in(section, language), "") << section;
            // A bulletin speaks of a region.
            for (const char* word : {"here", "hier", "ici"})
              EXPECT_FALSE(stands_alone(section, word)) << section;
            EXPECT_EQ(section.find('{'), std::string::npos) << section;
          }
        }
      }
    }
  }
}

TEST(BulletinNote, TheRegionsRatingAndThatNothingLowersIt) {
  const auto pit = larch_bowl_entry();
  const std::string section = section_of(*pit, bulletin_file("no_problem"), {"XX-LW-01", 0, 0});
  EXPECT_NE(section.find("The region's rating for this elevation and aspect: low (1)"), std::string::npos)
      << section;
  EXPECT_NE(section.find("Nothing that was found in"), std::string::npos) << section;
  EXPECT_NE(section.find("worth telling the warning"), std::string::npos) << section;
  auto practice = larch_bowl_entry();
  practice->practice = true;
  const std::string invented = section_of(*practice, bulletin_file("no_problem"), {"XX-LW-01", 0, 0});
  EXPECT_EQ(invented.find("worth telling"), std::string::npos) << invented;
  EXPECT_NE(invented.find("a practice pit"), std::string::npos) << invented;
}

}  // namespace
}  // namespace firn::tests
