// Random recordings: what must hold whatever people do.
#include <gtest/gtest.h>

#include <chrono>

#include "recording_anybody.h"
#include "recording_help.h"

namespace firn::tests {
namespace {

using namespace firnbook;

constexpr std::uint64_t kRuns = 60;
constexpr int kEdits = 60;

TEST(Random, UndoAfterAnyEditIsAsIfItHadNotBeen) {
  std::size_t taken = 0;
  for (std::uint64_t seed = 1; seed <= kRuns; ++seed) {
    Anybody who(seed, 5);
    for (int i = 0; i < kEdits; ++i) {
      const Bytes before = who.hand().pit();
      if (!who.act()) {
        ASSERT_EQ(who.hand().pit(), before);
        continue;
      }
      ++taken;
      if (who.roll(3) != 0) continue;
      const Bytes after = who.hand().pit();
      const EditKey edit = who.last();
      const EditKey undo = who.hand().undo(edit);
      ASSERT_EQ(who.hand().pit(), before);
      if (who.roll(2) == 0) {
        who.hand().undo(undo);
        ASSERT_EQ(who.hand().pit(), after);
      }
    }
  }
  // Enough of what they did made sense for this to mean something.
  EXPECT_GT(taken, kRuns * kEdits / 3);
}

TEST(Random, TheFoldIsDeterministicAndCanonical) {
  for (std::uint64_t seed = 1; seed <= kRuns; ++seed) {
    Anybody who(seed, 5);
    for (int i = 0; i < kEdits; ++i) who.act();
    const Bytes pit = who.hand().pit();
    ASSERT_EQ(who.hand().pit(), pit);
    // Whoever takes the same edits in the same order refuses none of them.
    ASSERT_EQ(replay(who.hand().edits), pit);
    auto object = recording::from_bytes(read(pit));
    ASSERT_TRUE(object);
    ASSERT_EQ(recording::to_bytes(**object), pit);
  }
}

// Two people who record things of their own, in whatever order their edits arrive.
TEST(Random, EditsOfTwoPeopleGiveOnePitInWhateverOrderTheyArrive) {
  for (std::uint64_t seed = 1; seed <= 20; ++seed) {
    Hand first(1);
    Hand second(2);
    Dice dice(seed);
    for (int i = 0; i < 8; ++i) {
      Hand& who = dice.roll(2) == 0 ? first : second;
      const auto top = static_cast<std::int32_t>(dice.roll(50));
      const Target layer = who.layer(top, top + 10);
      PitT fields;
      fields.layers.push_back(std::make_unique<LayerT>());
      fields.layers[0]->words = std::string(1 + dice.roll(9), 'w');
      who.change(layer, fields);
    }
    std::vector<Bytes> one_way = first.edits;
    one_way.insert(one_way.end(), second.edits.begin(), second.edits.end());
    std::vector<Bytes> other_way = second.edits;
    other_way.insert(other_way.end(), first.edits.begin(), first.edits.end());
    EXPECT_EQ(replay(one_way), replay(other_way));
  }
}

// Far more than an hour's recording holds. The bound is for a debug build on a slow machine that does other
// things too: the best of several counts.
TEST(Random, FiveHundredEditsFoldWithinFiftyMilliseconds) {
  Hand hand;
  for (int i = 0; i < 250; ++i) {
    const Target layer = hand.layer(i, i + 1);
    PitT fields;
    fields.layers.push_back(std::make_unique<LayerT>());
    fields.layers[0]->hardness = HandHardness::Pencil;
    fields.layers[0]->words = "sugary";
    hand.change(layer, fields);
  }
  ASSERT_EQ(hand.recorder.edit_count(), 500u);
  auto best = std::chrono::steady_clock::duration::max();
  for (int i = 0; i < 10; ++i) {
    const auto start = std::chrono::steady_clock::now();
    const Bytes pit = hand.pit();
    best = std::min(best, std::chrono::steady_clock::now() - start);
    ASSERT_FALSE(pit.empty());
  }
#if !defined(__SANITIZE_ADDRESS__)
  EXPECT_LT(std::chrono::duration_cast<std::chrono::milliseconds>(best).count(), 50);
#endif
}

// Taking an edit in order does not cost a fold of all that came before.
TEST(Random, TenThousandLayersAreRecordedWithoutQuadraticCost) {
  Hand hand;
  for (int i = 0; i < 10000; ++i) hand.layer(i, i + 1);
  EXPECT_EQ(read(hand.pit()).layers()->size(), 10000u);
}

}  // namespace
}  // namespace firn::tests
