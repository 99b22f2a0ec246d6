// GUIDED.md says what the machines do, and the sentences are there.
#include <gtest/gtest.h>

#include <cstdlib>
#include <fstream>
#include <iterator>

#include "guided_help.h"

namespace firn::tests {
namespace {

using namespace firnbook;
using recording::allowed_events;
using recording::words_of;

constexpr TestKind kKinds[] = {TestKind::CT, TestKind::DT, TestKind::ECT,       TestKind::PST,
                               TestKind::RB, TestKind::ST, TestKind::hand_shear};
constexpr const char* kStates[] = {"untouched", "broke", "loading", "full",
                                   "slid",      "due",   "ended",   "not valid"};

// One table a kind, an event a row, a state a column; (x) needs a fracture that is recorded.
std::string tables() {
  std::string out;
  for (const TestKind kind : kKinds) {
    out += std::string("\n### ") + EnumNameTestKind(kind) + "\n\n| event |";
    for (const char* state : kStates) out += std::string(" ") + state + " |";
    out += "\n| --- | --- | --- | --- | --- | --- | --- | --- | --- |\n";
    for (unsigned event = 2; event <= static_cast<unsigned>(TestEventKind::MAX); ++event) {
      std::string row = std::string("| ") + EnumNameTestEventKind(static_cast<TestEventKind>(event)) + " |";
      bool any = false;
      for (unsigned state = 1; state <= 8; ++state) {
        const bool bare = (allowed_events(kind, static_cast<GuidedState>(state), false) >> event & 1) != 0;
        const bool with = (allowed_events(kind, static_cast<GuidedState>(state), true) >> event & 1) != 0;
        any = any || with;
        row += bare ? " x |" : with ? " (x) |" : " |";
      }
      if (any) out += row + "\n";
    }
  }
  out += "\n## Sentences\n\n| number | in English | source |\n| --- | --- | --- |\n";
  for (std::uint16_t number = 1; number < 200; ++number) {
    const recording::Words words = words_of(number);
    if (*words.text == '\0') continue;
    out += "| " + std::to_string(number) + " | " + words.text + " | " + words.source + " |\n";
  }
  return out;
}

TEST(GuidedTables, AreWhatGuidedMdSays) {
  const std::string path = FIRN_SOURCE_DIR "/core/src/recording/GUIDED.md";
  std::ifstream file(path, std::ios::binary);
  std::string page{std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
  const std::string marker = "<!-- tables: made by guided_test with FIRN_REGENERATE=1 -->\n";
  const std::size_t at = page.find(marker);
  ASSERT_NE(at, std::string::npos);
  if (std::getenv("FIRN_REGENERATE") != nullptr) {
    page = page.substr(0, at + marker.size()) + tables();
    std::ofstream(path, std::ios::binary) << page;
  }
  EXPECT_EQ(page.substr(at + marker.size()), tables());
}

TEST(GuidedTables, NothingIsAllowedOfAKindOrStateThatIsNone) {
  EXPECT_EQ(allowed_events(TestKind::shear_frame, GuidedState::loading, true), 0u);
  EXPECT_EQ(allowed_events(static_cast<TestKind>(200), GuidedState::loading, true), 0u);
  EXPECT_EQ(allowed_events(TestKind::CT, static_cast<GuidedState>(0), true), 0u);
  EXPECT_EQ(allowed_events(TestKind::CT, static_cast<GuidedState>(9), true), 0u);
}

// Words that would reassure, or send somebody.
constexpr const char* kForbidden[] = {" safe", " good", " stable", " unlikely",
                                      " ok ",  " go ",  " green",  " fine"};

TEST(GuidedTables, EverySentenceHasASourceAndNoneReassures) {
  int count = 0;
  for (std::uint16_t number = 1; number < 200; ++number) {
    const recording::Words words = words_of(number);
    const std::string text = std::string(" ") + words.text;
    if (*words.text == '\0') {
      EXPECT_STREQ(words.source, "");
      continue;
    }
    ++count;
    EXPECT_STRNE(words.source, "") << words.text;
    EXPECT_TRUE(text.back() == '.' || text.back() == '?') << text;
    for (const char* word : kForbidden) EXPECT_EQ(text.find(word), std::string::npos) << text;
  }
  EXPECT_EQ(count, 47);
  for (const int none : {0, 9, 65535}) EXPECT_STREQ(words_of(static_cast<std::uint16_t>(none)).text, "");
}

// Every answer on the way through every kind of test has its sentences.
TEST(GuidedTables, EveryStateSaysWhatComesNext) {
  for (const TestKind kind : kKinds) {
    Hand hand;
    Tester t(hand, kind);
    Dice dice(3);
    for (int i = 0; i < 40; ++i) {
      const Guidance now = t.now();
      EXPECT_STRNE(words_of(static_cast<std::uint16_t>(now.next)).text, "") << static_cast<int>(now.state);
      EXPECT_STRNE(words_of(static_cast<std::uint16_t>(now.reach)).text, "");
      const bool over = now.state == GuidedState::ended || now.state == GuidedState::not_valid;
      EXPECT_EQ(now.watch == recording::Sentence::none, over);
      const bool says_what_is_missing = now.missing == 0 && now.missing_of_test == 0;
      EXPECT_EQ(now.record == recording::Sentence::none, says_what_is_missing);
      EXPECT_NE(now.allowed, 0u);
      const auto event = static_cast<TestEventKind>(2 + dice.roll(15));
      if (!allows(now, event)) continue;
      const Bytes edit = t.edit(event);
      (void)hand.recorder.apply(edit.data(), edit.size());
    }
  }
}

}  // namespace
}  // namespace firn::tests
