// Splitting and joining layers, and heights of snow that turn out different.
#include <gtest/gtest.h>

#include "recording_help.h"

namespace firn::tests {
namespace {

using namespace firnbook;
using recording::target_of;

// A layer of which everything is known.
PitT full_layer() {
  PitT fields;
  LayerT& layer = add_layer(fields, cm(10), cm(40), HandHardness::FourFinger, GrainForm::FC, 200);
  layer.hardness_top = HandHardness::Fist;
  layer.hardness_bottom = HandHardness::Pencil;
  layer.words = "sugary";
  layer.concern = PartOfLayer::top;
  layer.unreliable = 1u << 1 | 1u << 3 | 1u << 4 | 1u << 5;
  return fields;
}

PitT words(const std::string& text) {
  PitT fields;
  fields.layers.push_back(std::make_unique<LayerT>());
  fields.layers[0]->words = text;
  return fields;
}

TEST(Layers, BothHalvesKeepWhatWasKnown) {
  Hand hand;
  const Target layer = target_of(hand.add(full_layer()), Thing::layer);
  hand.record(make_split(hand.next(), layer, down(cm(25))));
  const Bytes bytes = hand.pit();
  ASSERT_EQ(read(bytes).layers()->size(), 2u);
  const Layer& upper = *read(bytes).layers()->Get(0);
  const Layer& lower = *read(bytes).layers()->Get(1);
  EXPECT_EQ(upper.top()->value_10um(), cm(10));
  EXPECT_EQ(upper.bottom()->value_10um(), cm(25));
  EXPECT_EQ(lower.top()->value_10um(), cm(25));
  EXPECT_EQ(lower.bottom()->value_10um(), cm(40));
  for (const Layer* half : {&upper, &lower}) {
    EXPECT_EQ(*half->hardness(), HandHardness::FourFinger);
    EXPECT_EQ(*half->grain_form(), GrainForm::FC);
    EXPECT_EQ(*half->grain_size_10um(), 200);
    EXPECT_EQ(half->words()->str(), "sugary");
  }
  // The hardness at the top says nothing of the lower half, and no more does its reliability.
  EXPECT_EQ(*upper.hardness_top(), HandHardness::Fist);
  EXPECT_FALSE(upper.hardness_bottom());
  EXPECT_EQ(*lower.hardness_bottom(), HandHardness::Pencil);
  EXPECT_FALSE(lower.hardness_top());
  EXPECT_EQ(*upper.concern(), PartOfLayer::top);
  EXPECT_FALSE(lower.concern());
  EXPECT_EQ(upper.unreliable(), 1u << 3 | 1u << 5);
  EXPECT_EQ(lower.unreliable(), 1u << 1 | 1u << 4 | 1u << 5);
}

TEST(Layers, HalvesAreNamedByTheSplitAndTheUpperOneAlsoByItsOwnName) {
  Hand hand;
  const Target layer = hand.layer(0, 40);
  const EditKey split = hand.record(make_split(hand.next(), layer, down(cm(10))));
  hand.change(target_of(split, Thing::layer, 0), words("upper"));
  hand.change(target_of(split, Thing::layer, 1), words("lower"));
  Bytes bytes = hand.pit();
  EXPECT_EQ(read(bytes).layers()->Get(0)->words()->str(), "upper");
  EXPECT_EQ(read(bytes).layers()->Get(1)->words()->str(), "lower");
  hand.change(layer, words("upper still"));
  bytes = hand.pit();
  EXPECT_EQ(read(bytes).layers()->Get(0)->words()->str(), "upper still");
}

TEST(Layers, ACutByHeightNeedsTheHeightOfSnow) {
  Hand hand;
  const Target layer = hand.layer(0, 40);
  EXPECT_EQ(hand.refused(make_split(hand.next(), layer, up(cm(90)))), FIRN_BAD_EDIT);
  PitT fields;
  fields.snowpack = std::make_unique<SnowpackT>();
  fields.snowpack->hs_10um = cm(100);
  hand.set(fields);
  hand.record(make_split(hand.next(), layer, up(cm(90))));
  const Bytes bytes = hand.pit();
  ASSERT_EQ(read(bytes).layers()->size(), 2u);
  EXPECT_EQ(read(bytes).layers()->Get(1)->top()->value_10um(), cm(90));
  EXPECT_EQ(read(bytes).layers()->Get(1)->top()->datum(), Datum::ground);
}

TEST(Layers, ACutMustLieInside) {
  Hand hand;
  const Target layer = hand.layer(10, 40);
  for (const Depth& at : {down(cm(10)), down(cm(40)), down(cm(5)), down(cm(50)), nowhere_from(cm(20)),
                          down(INT32_MAX), down(INT32_MIN)}) {
    EXPECT_EQ(hand.refused(make_split(hand.next(), layer, at)), FIRN_BAD_EDIT);
  }
}

TEST(Layers, WhatBothKnowComesFromTheTarget) {
  for (const bool target_is_upper : {true, false}) {
    Hand hand;
    PitT above;
    LayerT& upper = add_layer(above, cm(0), cm(10), HandHardness::Fist, GrainForm::DF, 100);
    upper.hardness_top = HandHardness::FistMinus;
    upper.hardness_bottom = HandHardness::FistPlus;
    upper.unreliable = 1u << 2;
    PitT below;
    LayerT& lower = add_layer(below, cm(10), cm(30), HandHardness::FourFinger, GrainForm::RG);
    lower.wetness = Wetness::M;
    lower.hardness_bottom = HandHardness::Pencil;
    lower.concern = PartOfLayer::bottom;
    const Target first = target_of(hand.add(above), Thing::layer);
    const Target second = target_of(hand.add(below), Thing::layer);
    const Target& target = target_is_upper ? first : second;
    const Target& other = target_is_upper ? second : first;
    hand.record(make_merge(hand.next(), target, other));
    const Bytes bytes = hand.pit();
    ASSERT_EQ(read(bytes).layers()->size(), 1u);
    const Layer& joined = *read(bytes).layers()->Get(0);
    EXPECT_EQ(joined.top()->value_10um(), 0);
    EXPECT_EQ(joined.bottom()->value_10um(), cm(30));
    EXPECT_EQ(*joined.hardness(), target_is_upper ? HandHardness::Fist : HandHardness::FourFinger);
    EXPECT_EQ(*joined.grain_form(), target_is_upper ? GrainForm::DF : GrainForm::RG);
    EXPECT_EQ(*joined.grain_size_10um(), 100);
    EXPECT_EQ(*joined.wetness(), Wetness::M);
    EXPECT_EQ(*joined.hardness_top(), HandHardness::FistMinus);
    EXPECT_EQ(*joined.hardness_bottom(), HandHardness::Pencil);
    EXPECT_EQ(*joined.concern(), PartOfLayer::bottom);
    EXPECT_EQ(joined.unreliable(), target_is_upper ? 1u << 2 : 0u);
    // Both names mean the joined layer from now on.
    hand.change(other, words("joined"));
    EXPECT_EQ(read(hand.pit()).layers()->Get(0)->words()->str(), "joined");
    hand.remove(other);
    EXPECT_EQ(read(hand.pit()).layers(), nullptr);
  }
}

// A concern at the seam has no name of its own in the joined layer; it becomes one of the whole layer.
TEST(Layers, JoiningNeverLosesAConcern) {
  for (const PartOfLayer part : {PartOfLayer::all, PartOfLayer::top, PartOfLayer::bottom}) {
    for (const bool in_upper : {true, false}) {
      Hand hand;
      PitT fields;
      LayerT& upper = add_layer(fields, cm(0), cm(10));
      LayerT& lower = add_layer(fields, cm(10), cm(30));
      (in_upper ? upper : lower).concern = part;
      const EditKey key = hand.add(fields);
      hand.record(make_merge(hand.next(), target_of(key, Thing::layer, 0), target_of(key, Thing::layer, 1)));
      const Bytes bytes = hand.pit();
      ASSERT_TRUE(read(bytes).layers()->Get(0)->concern());
      const bool is_outer = part == (in_upper ? PartOfLayer::top : PartOfLayer::bottom);
      EXPECT_EQ(*read(bytes).layers()->Get(0)->concern(), is_outer ? part : PartOfLayer::all);
    }
  }
}

TEST(Layers, OnlyNeighboursAreJoined) {
  Hand hand;
  const Target a = hand.layer(0, 10);
  const Target c = hand.layer(20, 30);
  const Target b = hand.layer(10, 20);
  EXPECT_EQ(hand.refused(make_merge(hand.next(), a, c)), FIRN_BAD_EDIT);
  EXPECT_EQ(hand.refused(make_merge(hand.next(), a, a)), FIRN_BAD_EDIT);
  hand.record(make_merge(hand.next(), c, b));
  EXPECT_EQ(hand.refused(make_merge(hand.next(), b, c)), FIRN_BAD_EDIT);
  hand.record(make_merge(hand.next(), a, b));
  EXPECT_EQ(read(hand.pit()).layers()->size(), 1u);
  EXPECT_EQ(read(hand.pit()).layers()->Get(0)->bottom()->value_10um(), cm(30));
}

TEST(Layers, RemarksFollowLayersThroughSplitsAndJoins) {
  Hand hand;
  const Target a = hand.layer(0, 10);
  const Target b = hand.layer(10, 40);
  PitT remark;
  remark.remarks.push_back(std::make_unique<RemarkT>());
  remark.remarks[0]->text = "gritty";
  hand.add(remark, nullptr, &b);
  const EditKey split = hand.record(make_split(hand.next(), b, down(cm(20))));
  EXPECT_EQ(read(hand.pit()).remarks()->Get(0)->about()->index(), 1);
  hand.record(make_merge(hand.next(), a, b));
  EXPECT_EQ(read(hand.pit()).remarks()->Get(0)->about()->index(), 0);
  hand.record(make_merge(hand.next(), target_of(split, Thing::layer, 1), b));
  const Bytes bytes = hand.pit();
  EXPECT_EQ(read(bytes).layers()->size(), 1u);
  EXPECT_EQ(read(bytes).remarks()->Get(0)->about()->index(), 0);
}

PitT depths_everywhere() {
  PitT fields;
  add_layer(fields, cm(10), cm(40));
  add_temperature(fields, cm(20), -300);
  add_density(fields, cm(12), cm(15), 2000);
  StabilityTestT& test = add_test(fields, TestKind::CT);
  add_fracture(test, cm(16)).on = std::make_unique<LayerT>();
  test.fractures[0]->on->top = std::make_unique<Depth>(down(cm(10)));
  test.unbroken.push_back(down(cm(33)));
  test.unbroken.push_back(up(cm(33)));
  test.column_depth_10um = cm(80);
  return fields;
}

std::vector<std::int32_t> all_depths(const Pit& pit) {
  const Layer& layer = *pit.layers()->Get(0);
  const StabilityTest& test = *pit.tests()->Get(0);
  return {layer.top()->value_10um(),
          layer.bottom()->value_10um(),
          pit.temperatures()->Get(0)->depth()->value_10um(),
          pit.densities()->Get(0)->readings()->Get(0)->top()->value_10um(),
          pit.densities()->Get(0)->readings()->Get(0)->bottom()->value_10um(),
          test.fractures()->Get(0)->depth()->value_10um(),
          test.fractures()->Get(0)->on()->top()->value_10um(),
          test.unbroken()->Get(0)->value_10um(),
          test.unbroken()->Get(1)->value_10um(),
          *test.column_depth_10um()};
}

TEST(Depths, ShiftMovesEveryDepthFromTheSurfaceAndNothingElse) {
  Hand hand;
  hand.add(depths_everywhere());
  const Bytes before = hand.pit();
  const EditKey shift = hand.record(make_shift(hand.next(), cm(2)));
  EXPECT_EQ(all_depths(read(hand.pit())),
            (std::vector<std::int32_t>{cm(12), cm(42), cm(22), cm(14), cm(17), cm(18), cm(12), cm(35), cm(33),
                                       cm(80)}));
  hand.undo(shift);
  EXPECT_EQ(hand.pit(), before);
}

TEST(Depths, RescaleStretchesAndRoundsHalfAwayFromZero) {
  Hand hand;
  hand.add(depths_everywhere());
  hand.record(make_rescale(hand.next(), cm(150), cm(100)));
  EXPECT_EQ(all_depths(read(hand.pit())), (std::vector<std::int32_t>{cm(15), cm(60), cm(30), cm(18), 22500,
                                                                     cm(24), cm(15), 49500, cm(33), cm(80)}));
  Hand rounding;
  PitT fields;
  for (const std::int32_t value : {1, 3, -1, -3, 5, 2}) add_temperature(fields, value, 0);
  rounding.add(fields);
  rounding.record(make_rescale(rounding.next(), 1, 2));
  std::vector<std::int32_t> values;
  const Bytes bytes = rounding.pit();
  for (const TemperatureReading* reading : *read(bytes).temperatures()) {
    values.push_back(reading->depth()->value_10um());
  }
  EXPECT_EQ(values, (std::vector<std::int32_t>{-2, -1, 1, 1, 2, 3}));
}

TEST(Depths, WhatWasRecordedAfterwardsIsNotMoved) {
  Hand hand;
  hand.layer(0, 10);
  hand.record(make_shift(hand.next(), cm(5)));
  hand.layer(15, 20);
  const Bytes bytes = hand.pit();
  EXPECT_EQ(read(bytes).layers()->Get(0)->top()->value_10um(), cm(5));
  EXPECT_EQ(read(bytes).layers()->Get(1)->top()->value_10um(), cm(15));
}

TEST(Depths, NumbersThatWouldNotFitAreRefused) {
  Hand hand;
  PitT fields;
  add_temperature(fields, INT32_MAX - 5, -100);
  add_temperature(fields, INT32_MIN + 5, -100);
  hand.add(fields);
  EXPECT_EQ(hand.refused(make_shift(hand.next(), 6)), FIRN_BAD_EDIT);
  EXPECT_EQ(hand.refused(make_shift(hand.next(), -6)), FIRN_BAD_EDIT);
  EXPECT_EQ(hand.refused(make_shift(hand.next(), 0)), FIRN_BAD_EDIT);
  EXPECT_EQ(hand.refused(make_rescale(hand.next(), 2, 1)), FIRN_BAD_EDIT);
  EXPECT_EQ(hand.refused(make_rescale(hand.next(), INT32_MAX, 1)), FIRN_BAD_EDIT);
  EXPECT_EQ(hand.refused(make_rescale(hand.next(), 1, 0)), FIRN_BAD_EDIT);
  EXPECT_EQ(hand.refused(make_rescale(hand.next(), 0, 1)), FIRN_BAD_EDIT);
  EXPECT_EQ(hand.refused(make_rescale(hand.next(), 1, -1)), FIRN_BAD_EDIT);
  hand.record(make_shift(hand.next(), 5));
}

}  // namespace
}  // namespace firn::tests
