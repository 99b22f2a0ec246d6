// The demo pits recorded touch by touch, in the order of a cold day, equal the same pits built whole.
#include <gtest/gtest.h>

#include <functional>

#include "recording_help.h"

namespace firn::tests {
namespace {

using namespace firnbook;
using recording::target_of;
using recording::to_bytes;

// What the observer does in one go; goes are shuffled, what happens inside one is not.
using Go = std::function<void(Hand&)>;

// A layer is first two depths, then how hard it is, then the crystals.
void record_layer(Hand& hand, const LayerT& layer) {
  PitT depths;
  depths.layers.push_back(std::make_unique<LayerT>());
  if (layer.top) depths.layers[0]->top = std::make_unique<Depth>(*layer.top);
  if (layer.bottom) depths.layers[0]->bottom = std::make_unique<Depth>(*layer.bottom);
  const Target target = target_of(hand.add(depths), Thing::layer);
  PitT hardness;
  hardness.layers.push_back(std::make_unique<LayerT>());
  hardness.layers[0]->hardness = layer.hardness;
  hardness.layers[0]->hardness_top = layer.hardness_top;
  hardness.layers[0]->hardness_bottom = layer.hardness_bottom;
  if (layer.hardness || layer.hardness_top || layer.hardness_bottom) hand.change(target, hardness);
  PitT rest;
  rest.layers.push_back(std::make_unique<LayerT>(layer));
  rest.layers[0]->top.reset();
  rest.layers[0]->bottom.reset();
  hand.change(target, rest);
}

// A test is first its kind, then fracture after fracture.
void record_test(Hand& hand, const StabilityTestT& test) {
  PitT alone;
  alone.tests.push_back(std::make_unique<StabilityTestT>(test));
  alone.tests[0]->fractures.clear();
  const Target target = target_of(hand.add(alone), Thing::test);
  for (const auto& fracture : test.fractures) {
    PitT one;
    one.tests.push_back(std::make_unique<StabilityTestT>());
    one.tests[0]->fractures.push_back(std::make_unique<FractureT>(*fracture));
    hand.add(one, &target);
  }
}

void record_densities(Hand& hand, const DensityProfileT& profile, Dice& dice) {
  PitT alone;
  alone.densities.push_back(std::make_unique<DensityProfileT>(profile));
  alone.densities[0]->readings.clear();
  const Target target = target_of(hand.add(alone), Thing::density_profile);
  std::vector<std::size_t> order(profile.readings.size());
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
  dice.shuffle(order);
  for (const std::size_t i : order) {
    PitT one;
    one.densities.push_back(std::make_unique<DensityProfileT>());
    one.densities[0]->readings.push_back(std::make_unique<DensityReadingT>(*profile.readings[i]));
    hand.add(one, &target);
  }
}

template <class T>
void add_each(std::vector<Go>& goes, const std::vector<std::unique_ptr<T>>& list,
              std::vector<std::unique_ptr<T>> PitT::*member) {
  for (const auto& element : list) {
    goes.push_back([&element, member](Hand& hand) {
      PitT one;
      (one.*member).push_back(std::make_unique<T>(*element));
      hand.add(one);
    });
  }
}

// Lists that keep the order in which things came are recorded in that order.
void record_rest(Hand& hand, const PitT& pit, Dice& dice) {
  PitT head = pit;
  head.layers.clear();
  head.tests.clear();
  head.temperatures.clear();
  head.densities.clear();
  std::vector<Go> ordered;
  add_each(ordered, pit.observers, &PitT::observers);
  add_each(ordered, pit.signs, &PitT::signs);
  add_each(ordered, pit.remarks, &PitT::remarks);
  for (const Go& go : ordered) go(hand);
  for (const auto& profile : pit.densities) record_densities(hand, *profile, dice);
  head.observers.clear();
  head.signs.clear();
  head.remarks.clear();
  hand.set(head);
}

Bytes record(const PitT& pit, std::uint64_t seed) {
  Hand hand;
  Dice dice(seed);
  for (const auto& test : pit.tests) record_test(hand, *test);
  std::vector<Go> goes;
  for (const auto& layer : pit.layers) {
    goes.push_back([&layer](Hand& who) { record_layer(who, *layer); });
  }
  add_each(goes, pit.temperatures, &PitT::temperatures);
  dice.shuffle(goes);
  for (const Go& go : goes) go(hand);
  record_rest(hand, pit, dice);
  EXPECT_EQ(replay(hand.edits), hand.pit());
  return hand.pit();
}

TEST(DemoPits, TarnShoulderRecordedTouchByTouch) {
  const Bytes whole = to_bytes(*tarn_shoulder());
  for (std::uint64_t seed = 1; seed <= 10; ++seed) EXPECT_EQ(record(*tarn_shoulder(), seed), whole);
}

TEST(DemoPits, LarchBowlEntryRecordedTouchByTouch) {
  const Bytes whole = to_bytes(*larch_bowl_entry());
  for (std::uint64_t seed = 1; seed <= 10; ++seed) EXPECT_EQ(record(*larch_bowl_entry(), seed), whole);
}

}  // namespace
}  // namespace firn::tests
