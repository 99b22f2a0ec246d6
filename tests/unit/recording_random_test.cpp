// Random recordings: what must hold whatever people do.
#include <gtest/gtest.h>

#include <chrono>

#include "recording_help.h"

namespace firn::tests {
namespace {

using namespace firnbook;
using recording::target_of;

// Somebody who does anything, also what makes no sense: refused edits are part of the game.
class Anybody {
 public:
  Anybody(std::uint64_t seed, std::uint64_t device) : hand_(device), dice_(seed) {}

  // True when the edit was taken.
  bool act() {
    const Bytes edit = next_edit();
    const Done verdict = hand_.recorder.apply(edit.data(), edit.size());
    if (!verdict) return false;
    hand_.edits.push_back(edit);
    keys_.push_back(hand_.last());
    return true;
  }
  Hand& hand() { return hand_; }
  EditKey last() const { return keys_.back(); }
  std::uint32_t roll(std::uint32_t sides) { return dice_.roll(sides); }

 private:
  Depth depth() {
    const auto value = static_cast<std::int32_t>(dice_.roll(100)) * 1000;
    return dice_.roll(4) == 0 ? up(value) : down(value);
  }
  EditKey some_edit() {
    if (keys_.empty() || dice_.roll(20) == 0) return {5, dice_.roll(50) + 1u};
    return keys_[dice_.roll(static_cast<std::uint32_t>(keys_.size()))];
  }
  Target some(Thing thing) { return target_of(some_edit(), thing, dice_.roll(2), dice_.roll(2)); }
  Target some_layer() { return target_of(some_edit(), Thing::layer, dice_.roll(2)); }

  PitT things() {
    PitT fields;
    for (std::uint32_t i = dice_.roll(2); i < 2; ++i) {
      add_layer(fields, 0, 0, HandHardness::Fist, GrainForm::FC, 100);
      fields.layers.back()->top = std::make_unique<Depth>(depth());
      if (dice_.roll(3) != 0) fields.layers.back()->bottom = std::make_unique<Depth>(depth());
    }
    if (dice_.roll(2) == 0) {
      StabilityTestT& test = add_test(fields, TestKind::CT);
      for (std::uint32_t i = dice_.roll(3); i > 0; --i) add_fracture(test, cm(10)).tap = 12;
    }
    if (dice_.roll(3) == 0) add_temperature(fields, cm(static_cast<std::int32_t>(dice_.roll(90))), -300);
    if (dice_.roll(3) == 0) add_density(fields, cm(5), cm(9), 2100);
    if (dice_.roll(3) == 0) {
      fields.remarks.push_back(std::make_unique<RemarkT>());
      fields.remarks[0]->text = "x";
      const auto last = static_cast<std::int32_t>(fields.layers.size()) - 1;
      fields.remarks[0]->about = std::make_unique<Place>(last, -1, 65535, Thing::layer);
    }
    return fields;
  }
  PitT one_layer() {
    PitT fields;
    fields.layers.push_back(std::make_unique<LayerT>());
    LayerT& layer = *fields.layers[0];
    if (dice_.roll(2) == 0) layer.hardness = HandHardness::Pencil;
    if (dice_.roll(2) == 0) layer.concern = PartOfLayer::top;
    if (dice_.roll(3) == 0) layer.bottom = std::make_unique<Depth>(depth());
    layer.words = std::string(dice_.roll(5), 'y');
    return fields;
  }
  PitT own() {
    PitT fields;
    if (dice_.roll(2) == 0) fields.title = std::string(dice_.roll(9) + 1, 't');
    fields.snowpack = std::make_unique<SnowpackT>();
    if (dice_.roll(2) == 0) fields.snowpack->hs_10um = cm(static_cast<std::int32_t>(dice_.roll(200)));
    return fields;
  }
  PitT one_fracture() {
    PitT fields;
    fields.tests.push_back(std::make_unique<StabilityTestT>());
    add_fracture(*fields.tests[0], cm(7));
    return fields;
  }
  PitT one_remark() {
    PitT fields;
    fields.remarks.push_back(std::make_unique<RemarkT>());
    fields.remarks[0]->text = "about";
    return fields;
  }

  Bytes next_edit() {
    const EditHead head = hand_.next();
    const auto amount = static_cast<std::int32_t>(dice_.roll(5000)) - 2500;
    const Target layer = some_layer();
    const Target other = some_layer();
    const Target test = some(Thing::test);
    switch (dice_.roll(14)) {
      case 0:
        return make_set(head, own());
      case 1:
      case 2:
      case 3:
        return make_add(head, things());
      case 4:
        return make_add(head, one_fracture(), &test);
      case 5:
        return make_add(head, one_remark(), nullptr, &layer);
      case 6:
        return make_change(head, layer, one_layer());
      case 7:
        return make_change(head, some(Thing::fracture), one_fracture());
      case 8:
        return make_remove(head, some(static_cast<Thing>(dice_.roll(33))));
      case 9:
        return make_clear(head, &layer, {{-1, -1, static_cast<std::uint16_t>(dice_.roll(18)), Thing::layer}});
      case 10:
        return make_split(head, layer, depth());
      case 11:
        return make_merge(head, layer, other);
      case 12:
        return dice_.roll(2) == 0 ? make_shift(head, amount) : make_rescale(head, 2500 + amount, 2500);
      default:
        return dice_.roll(2) == 0 ? make_undo(head, some_edit()) : make_redo(head, some_edit());
    }
  }

  Hand hand_;
  Dice dice_;
  std::vector<EditKey> keys_;
};

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
