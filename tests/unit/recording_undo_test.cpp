#include <gtest/gtest.h>

#include "recording_help.h"

namespace firn::tests {
namespace {

using namespace firnbook;
using recording::FoldReport;
using recording::target_of;

PitT title(const std::string& text) {
  PitT fields;
  fields.title = text;
  return fields;
}

std::string title_of(const Hand& hand) {
  const Bytes bytes = hand.pit();
  const auto* text = read(bytes).title();
  return text == nullptr ? "" : text->str();
}

TEST(Undo, DoingAndUndoingLeavesTheBytesAsTheyWere) {
  Hand hand;
  hand.set(title("first"));
  const Bytes before = hand.pit();
  const EditKey edit = hand.set(title("second"));
  hand.undo(edit);
  EXPECT_EQ(hand.pit(), before);
}

TEST(Undo, AnEarlierEditIsTakenBackFromUnderLaterOnes) {
  Hand hand;
  const EditKey first = hand.set(title("first"));
  const EditKey second = hand.set(title("second"));
  hand.undo(first);
  EXPECT_EQ(title_of(hand), "second");
  hand.undo(second);
  EXPECT_EQ(title_of(hand), "");
  hand.redo(first);
  EXPECT_EQ(title_of(hand), "first");
}

TEST(Undo, WithoutLimitAndBackAgain) {
  Hand hand;
  std::vector<Bytes> pits = {hand.pit()};
  std::vector<EditKey> keys;
  for (int i = 0; i < 40; ++i) {
    keys.push_back(hand.set(title(std::string(static_cast<std::size_t>(i + 1), 'x'))));
    pits.push_back(hand.pit());
  }
  for (std::size_t i = keys.size(); i > 0; --i) {
    hand.undo(keys[i - 1]);
    EXPECT_EQ(hand.pit(), pits[i - 1]);
  }
  for (std::size_t i = 0; i < keys.size(); ++i) {
    hand.redo(keys[i]);
    EXPECT_EQ(hand.pit(), pits[i + 1]);
  }
}

TEST(Undo, AnUndoneUndoPutsBackWhatItTook) {
  Hand hand;
  const EditKey edit = hand.set(title("there"));
  const EditKey undo = hand.undo(edit);
  const EditKey undo_of_undo = hand.undo(undo);
  EXPECT_EQ(title_of(hand), "there");
  hand.undo(undo_of_undo);
  EXPECT_EQ(title_of(hand), "");
}

TEST(Undo, AnUndoneRedoLeavesTheUndoBeforeItInForce) {
  Hand hand;
  const EditKey edit = hand.set(title("there"));
  hand.undo(edit);
  const EditKey redo = hand.redo(edit);
  EXPECT_EQ(title_of(hand), "there");
  hand.undo(redo);
  EXPECT_EQ(title_of(hand), "");
}

TEST(Undo, TwiceIsTheSameAsOnceAndTheLastOneDecides) {
  Hand hand;
  const EditKey edit = hand.set(title("there"));
  hand.undo(edit);
  hand.undo(edit);
  EXPECT_EQ(title_of(hand), "");
  hand.redo(edit);
  EXPECT_EQ(title_of(hand), "there");
  hand.redo(edit);
  EXPECT_EQ(title_of(hand), "there");
}

TEST(Undo, EditsOfAThingHaveNoEffectWhileItsAddingIsTakenBack) {
  Hand hand;
  const Bytes empty = hand.pit();
  const Target layer = hand.layer(0, 40);
  const EditKey added = hand.last();
  hand.record(make_split(hand.next(), layer, down(cm(10))));
  const Target lower = target_of(hand.last(), Thing::layer, 1);
  PitT fields;
  fields.layers.push_back(std::make_unique<LayerT>());
  fields.layers[0]->words = "sugary";
  hand.change(lower, fields);
  const Bytes full = hand.pit();
  const EditKey undo = hand.undo(added);
  FoldReport report;
  EXPECT_EQ(pit_of(hand.recorder, &report), empty);
  EXPECT_EQ(report.taken_back, 1u);
  EXPECT_EQ(report.without_effect, 2u);
  EXPECT_EQ(hand.refused(make_change(hand.next(), lower, fields)), FIRN_NO_SUCH_TARGET);
  hand.undo(undo);
  EXPECT_EQ(pit_of(hand.recorder, &report), full);
  EXPECT_EQ(report.taken_back, 0u);
  EXPECT_EQ(report.without_effect, 0u);
}

// The upper half keeps its name, so what was said of it outlives a split that is taken back.
TEST(Undo, ASplitThatIsTakenBackLeavesTheLayerWithWhatWasSaidOfItsName) {
  Hand hand;
  const Target layer = hand.layer(0, 40);
  const EditKey split = hand.record(make_split(hand.next(), layer, down(cm(10))));
  PitT fields;
  fields.layers.push_back(std::make_unique<LayerT>());
  fields.layers[0]->hardness = HandHardness::Fist;
  hand.change(layer, fields);
  fields.layers[0]->hardness = HandHardness::Pencil;
  hand.change(target_of(split, Thing::layer, 1), fields);
  hand.undo(split);
  const Bytes bytes = hand.pit();
  ASSERT_EQ(read(bytes).layers()->size(), 1u);
  EXPECT_EQ(*read(bytes).layers()->Get(0)->hardness(), HandHardness::Fist);
  EXPECT_EQ(read(bytes).layers()->Get(0)->bottom()->value_10um(), cm(40));
}

TEST(Undo, CirclesCannotBeMade) {
  Hand hand;
  hand.set(title("there"));
  // An undo that names itself, and two that name each other.
  EditHead head = hand.next();
  EXPECT_EQ(hand.refused(make_undo(head, head.key)), FIRN_NO_SUCH_TARGET);
  const EditKey third = hand.set(title("other"));
  EditHead early = hand.next();
  early.clock = 1;
  early.key.device = 1;
  EXPECT_EQ(hand.refused(make_undo(early, third)), FIRN_BAD_EDIT);
  EXPECT_EQ(hand.refused(make_undo(hand.next(), {9, 9})), FIRN_NO_SUCH_TARGET);
}

TEST(Undo, AnUndoThatArrivesLateTakesItsPlaceInTheOrder) {
  Hand hand;
  const EditKey edit = hand.set(title("there"));
  EditHead undo = hand.next();
  hand.redo(edit);  // later in order, so it decides
  hand.record(make_undo(undo, edit));
  EXPECT_EQ(title_of(hand), "there");
}

}  // namespace
}  // namespace firn::tests
