// The words of the bulletin beside a pit: all there, and none that reassures.
#include <memory>

#include "bulletin/compare.h"
#include "bulletin_help.h"
#include "interpretation_help.h"
#include "note/bulletin.h"
#include "note/note.h"

namespace firn::tests {
namespace {

using note::BulletinWords;

// The words that no text may contain; they are those of note_test.cpp.
constexpr std::string_view kForbidden[] = {"safe",    "good",      "stable", "unlikely",    "ok",
                                           "go",      "green",     "fine",   "favourable",  "harmless",
                                           "no risk", "no danger", "secure", "trustworthy", "well bonded"};

bool is_letter(char byte) {
  return (byte >= 'a' && byte <= 'z') || (byte >= 'A' && byte <= 'Z');
}

std::string_view forbidden_in(std::string_view text) {
  std::string low(text);
  for (char& byte : low) {
    if (byte >= 'A' && byte <= 'Z') byte = static_cast<char>(byte - 'A' + 'a');
  }
  for (const std::string_view word : kForbidden) {
    for (std::size_t at = low.find(word); at != std::string::npos; at = low.find(word, at + 1)) {
      const std::size_t end = at + word.size();
      if ((at == 0 || !is_letter(low[at - 1])) && (end == low.size() || !is_letter(low[end]))) return word;
    }
  }
  return {};
}

template <class E, std::size_t N>
void expect_all(BulletinWords of, const E (&values)[N]) {
  for (const E value : values) {
    const auto number = static_cast<std::size_t>(value);
    if (number == 0 && of != BulletinWords::ProblemKind) continue;
    const std::string_view words = note::bulletin_words(of, number);
    EXPECT_FALSE(words.empty()) << static_cast<int>(of) << ' ' << number;
    EXPECT_EQ(forbidden_in(words), "") << words;
  }
}

TEST(BulletinNote, EveryValueHasWordsAndNoneReassures) {
  expect_all(BulletinWords::BulletinMatch, firnbook::EnumValuesBulletinMatch());
  expect_all(BulletinWords::DangerLevel, firnbook::EnumValuesDangerLevel());
  expect_all(BulletinWords::ProblemType, firnbook::EnumValuesProblemType());
  expect_all(BulletinWords::ProblemAnswer, firnbook::EnumValuesProblemAnswer());
  expect_all(BulletinWords::SpeakLimit, firnbook::EnumValuesSpeakLimit());
  expect_all(BulletinWords::ProblemKind, firnbook::EnumValuesProblemKind());
  for (std::size_t i = 0; i <= static_cast<std::size_t>(note::BulletinPhrase::problem_rated); ++i) {
    EXPECT_FALSE(note::bulletin_words(BulletinWords::BulletinPhrase, i).empty()) << i;
    EXPECT_EQ(forbidden_in(note::bulletin_words(BulletinWords::BulletinPhrase, i)), "");
  }
  const std::string_view not_shown = note::bulletin_words(
      BulletinWords::ProblemAnswer, static_cast<std::size_t>(firnbook::ProblemAnswer::not_shown));
  EXPECT_NE(not_shown.find("does not take the problem away"), std::string_view::npos);
}

std::string section_of(const PitT& pit, const std::string& json, const bulletin::Question& question) {
  Read read(pit);
  const ReadBulletin file(json);
  EXPECT_TRUE(file.ok);
  const auto comparison = bulletin::compare(read.view, read.analysis, *file.root, question);
  bulletin::add_cautions(read.view, comparison, read.analysis);
  flatbuffers::FlatBufferBuilder builder;
  const auto part = bulletin::write_comparison(comparison, builder);
  interpretation::write_report(read.analysis, {}, 0, builder, part);
  std::string out;
  note::append_note(out, read.view, *firnbook::GetReport(builder.GetBufferPointer()));
  const std::size_t begin = out.find("THE REGION'S BULLETIN");
  EXPECT_NE(begin, std::string::npos);
  return out.substr(begin, out.find("\n\n", begin) - begin);
}

TEST(BulletinNote, NoSectionReassuresWhateverTheBulletinAndThePit) {
  for (const auto& pit : {larch_bowl_entry(), tarn_shoulder(), std::make_unique<PitT>()}) {
    for (const std::string& name : bulletin_files()) {
      for (const char* region : {"", "XX-LW-01", "XX-LW-02", "elsewhere"}) {
        for (const int treeline : {0, 2000}) {
          const std::string section = section_of(*pit, bulletin_file(name), {region, treeline, 0});
          EXPECT_EQ(forbidden_in(section), "") << section;
          EXPECT_EQ(section.find(" here"), std::string::npos) << section;
          EXPECT_EQ(section.find('{'), std::string::npos) << section;
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
