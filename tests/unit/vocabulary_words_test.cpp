#include <gtest/gtest.h>

#include <set>
#include <string>
#include <vector>

#include "vocabulary/codes.h"
#include "vocabulary/words.h"

namespace firn {
namespace {

using namespace firnbook;

std::vector<std::string> codes_of(const Word* word) {
  std::vector<std::string> codes;
  for (std::size_t i = 0; word != nullptr && i < word->count; ++i) {
    const std::uint8_t value = word->candidates[i];
    switch (word->about) {
      case WordOf::grain_form:
        codes.emplace_back(code_of(static_cast<GrainForm>(value)));
        break;
      case WordOf::hand_hardness:
        codes.emplace_back(code_of(static_cast<HandHardness>(value)));
        break;
      case WordOf::wetness:
        codes.emplace_back(code_of(static_cast<Wetness>(value)));
        break;
      case WordOf::fracture_character:
        codes.emplace_back(code_of(static_cast<FractureCharacter>(value)));
        break;
      case WordOf::sign:
        codes.emplace_back(code_of(static_cast<SignKind>(value)));
        break;
    }
  }
  return codes;
}

using Codes = std::vector<std::string>;

TEST(VocabularyWords, TheTradesWordsFindTheirCandidates) {
  EXPECT_EQ(codes_of(find_word("sugary")), (Codes{"FC", "DH"}));
  EXPECT_EQ(codes_of(find_word("crust")), (Codes{"MFcr", "IFrc", "IFsc"}));
  EXPECT_NE(find_word("crust")->note.find("wind crust"), std::string_view::npos);
  EXPECT_EQ(codes_of(find_word("pop")), (Codes{"SP"}));
  EXPECT_EQ(codes_of(find_word("drop")), (Codes{"SC"}));
  EXPECT_EQ(codes_of(find_word("pencil")), (Codes{"P"}));
  EXPECT_EQ(codes_of(find_word("fist")), (Codes{"F"}));
  EXPECT_EQ(codes_of(find_word("knife")), (Codes{"K"}));
  EXPECT_EQ(codes_of(find_word("graupel")), (Codes{"PPgp"}));
  EXPECT_EQ(codes_of(find_word("whumpf")), (Codes{"whumpf"}));
  EXPECT_EQ(codes_of(find_word("damp")), (Codes{"M"}));
}

TEST(VocabularyWords, EveryWordIsWholeAndNamedOnce) {
  std::size_t count = 0;
  const Word* words = all_words(count);
  EXPECT_GE(count, 40u);
  std::set<std::string_view> seen;
  for (std::size_t i = 0; i < count; ++i) {
    EXPECT_TRUE(seen.insert(words[i].word).second) << words[i].word;
    EXPECT_GT(words[i].count, 0u);
    for (const std::string& code : codes_of(&words[i])) EXPECT_FALSE(code.empty()) << words[i].word;
    for (char character : words[i].word) EXPECT_FALSE(character >= 'A' && character <= 'Z');
    EXPECT_EQ(find_word(words[i].word), &words[i]);
  }
}

TEST(VocabularyWords, CaseDoesNotMatterAndUnknownWordsAreNone) {
  EXPECT_EQ(find_word("SUGARY"), find_word("sugary"));
  EXPECT_EQ(find_word("sugar "), nullptr);
  EXPECT_EQ(find_word(""), nullptr);
}

TEST(VocabularyWords, AWordIsFoundInsideARemark) {
  EXPECT_EQ(find_word_in("sugary, to the ground", WordOf::grain_form), find_word("sugary"));
  EXPECT_EQ(find_word_in("below a Sun Crust", WordOf::grain_form), find_word("sun crust"));
  EXPECT_EQ(find_word_in("loud POP!", WordOf::fracture_character), find_word("pop"));
  EXPECT_EQ(find_word_in("(sugar snow)", WordOf::grain_form), find_word("sugar snow"));
}

TEST(VocabularyWords, OnlyWholeWordsOfTheRightKindCount) {
  EXPECT_EQ(find_word_in("popular", WordOf::fracture_character), nullptr);
  EXPECT_EQ(find_word_in("lollipop", WordOf::fracture_character), nullptr);
  EXPECT_EQ(find_word_in("sugary", WordOf::hand_hardness), nullptr);
  EXPECT_EQ(find_word_in("", WordOf::grain_form), nullptr);
  EXPECT_EQ(find_word_in("crust\xC3\xA9", WordOf::grain_form), nullptr);
}

TEST(VocabularyWords, AMegabyteOfRemarkIsNoTrouble) {
  std::string remark(1 << 20, 'a');
  EXPECT_EQ(find_word_in(remark, WordOf::grain_form), nullptr);
  for (std::size_t i = 1; i < remark.size(); i += 2) remark[i] = ' ';
  remark += " ice";
  EXPECT_EQ(find_word_in(remark, WordOf::grain_form), find_word("ice"));
}

}  // namespace
}  // namespace firn
