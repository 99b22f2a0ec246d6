// Two people at one wall: what contradicts is told, what was seen or agrees is not.
#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>

#include "recording_help.h"

namespace firn::tests {
namespace {

using namespace firnbook;
using recording::Conflict;
using recording::target_of;

// Two hands with recorders of their own, who look at each other's when they say so.
class Apart : public testing::Test {
 protected:
  Apart() {
    layer = first.layer(0, 10);
    lower = first.layer(10, 20);
    PitT fields;
    add_compression_test(fields, 12, FractureCharacter::SP, cm(10));
    test = target_of(first.add(fields), Thing::test);
    meet();
  }

  // Each takes what the other has, and has seen it from then on.
  void meet() {
    exchange(first, second);
    exchange(second, first);
    seen_by_first = second.last().sequence;
    seen_by_second = first.last().sequence;
  }

  EditHead next(Hand& hand) {
    EditHead head = hand.next();
    const bool is_first = &hand == &first;
    const std::uint64_t seen = is_first ? seen_by_first : seen_by_second;
    if (seen != 0) head.seen.emplace_back(is_first ? 2u : 1u, seen);
    return head;
  }
  EditKey set(Hand& hand, std::int32_t hs_cm) {
    PitT fields;
    fields.snowpack = std::make_unique<SnowpackT>();
    fields.snowpack->hs_10um = cm(hs_cm);
    return hand.record(make_set(next(hand), fields));
  }
  EditKey harden(Hand& hand, const Target& what, HandHardness hardness) {
    return hand.record(make_change(next(hand), what, hard(hardness)));
  }
  static PitT hard(HandHardness hardness) {
    PitT fields;
    fields.layers.push_back(std::make_unique<LayerT>());
    fields.layers[0]->hardness = hardness;
    return fields;
  }

  // What both find once they hold each other's edits: the same, whoever asks.
  std::vector<Conflict> conflicts() {
    exchange(first, second);
    exchange(second, first);
    const std::vector<Conflict> one = first.recorder.conflicts();
    const std::vector<Conflict> two = second.recorder.conflicts();
    EXPECT_EQ(one.size(), two.size());
    for (std::size_t i = 0; i < std::min(one.size(), two.size()); ++i) {
      EXPECT_TRUE(one[i].other == two[i].other && one[i].shown == two[i].shown);
      EXPECT_EQ(one[i].field, two[i].field);
    }
    EXPECT_EQ(first.pit(), second.pit());
    return one;
  }

  static void exchange(Hand& from, Hand& to) {
    EXPECT_TRUE(from.recorder.begin("p"));
    const Result<Bytes> journal = from.recorder.journal();
    ASSERT_TRUE(journal);
    const Result<recording::Loaded> loaded = to.recorder.load(journal->data(), journal->size());
    ASSERT_TRUE(loaded) << loaded.failure().what;
    to.see(to.recorder.next_clock() - 1);
  }

  void expect_one(EditKey other, EditKey shown, Thing thing, std::uint16_t field) {
    const std::vector<Conflict> found = conflicts();
    ASSERT_EQ(found.size(), 1u);
    EXPECT_TRUE(found[0].other == other) << found[0].other.device << " " << found[0].other.sequence;
    EXPECT_TRUE(found[0].shown == shown) << found[0].shown.device << " " << found[0].shown.sequence;
    EXPECT_EQ(found[0].target.thing(), thing);
    EXPECT_EQ(found[0].field, field);
  }

  Hand first{1}, second{2};
  Target layer, lower, test;
  std::uint64_t seen_by_first = 0, seen_by_second = 0;
};

constexpr std::uint16_t kHardness = (Layer::VT_HARDNESS - 4) / 2;
constexpr std::uint16_t kHs = (Snowpack::VT_HS_10UM - 4) / 2;
constexpr std::uint16_t kWhole = 65535;

TEST_F(Apart, TheHardnessOfOneLayerSetTwiceIsAConflictAndTheLaterIsShown) {
  const EditKey one = harden(first, layer, HandHardness::Fist);
  const EditKey two = harden(second, layer, HandHardness::Pencil);
  // Same clock: the larger device comes later.
  expect_one(one, two, Thing::layer, kHardness);
  EXPECT_EQ(read(first.pit()).layers()->Get(0)->hardness(), HandHardness::Pencil);
}

TEST_F(Apart, TheClockDecidesBeforeTheDevice) {
  harden(first, lower, HandHardness::Fist);
  const EditKey one = harden(first, layer, HandHardness::Fist);
  const EditKey two = harden(second, layer, HandHardness::Pencil);
  expect_one(two, one, Thing::layer, kHardness);
  EXPECT_EQ(read(first.pit()).layers()->Get(0)->hardness(), HandHardness::Fist);
}

TEST_F(Apart, WhatTheOtherHadSeenIsNoConflict) {
  harden(first, layer, HandHardness::Fist);
  meet();
  harden(second, layer, HandHardness::Pencil);
  EXPECT_TRUE(conflicts().empty());
}

TEST_F(Apart, BothSayingTheSameIsNoConflict) {
  harden(first, layer, HandHardness::Fist);
  harden(second, layer, HandHardness::Fist);
  set(first, 140);
  set(second, 140);
  PitT fields;
  fields.title = "Tarn Shoulder";
  first.record(make_set(next(first), fields));
  second.record(make_set(next(second), fields));
  EXPECT_TRUE(conflicts().empty());
}

TEST_F(Apart, OtherFieldsAndOtherThingsAreNoConflict) {
  harden(first, layer, HandHardness::Fist);
  harden(second, lower, HandHardness::Pencil);
  PitT words;
  words.layers.push_back(std::make_unique<LayerT>());
  words.layers[0]->words = "sugary";
  second.record(make_change(next(second), layer, words));
  first.layer(30, 40);
  second.layer(30, 50);
  EXPECT_TRUE(conflicts().empty());
}

TEST_F(Apart, WhatAPitHasOnceConflictsFieldByField) {
  const EditKey one = set(first, 140);
  const EditKey two = set(second, 150);
  PitT other;
  other.snowpack = std::make_unique<SnowpackT>();
  other.snowpack->hn24_10um = cm(10);
  first.record(make_set(next(first), other));
  expect_one(one, two, Thing::snowpack, kHs);
}

TEST_F(Apart, TextsListsAndTablesAreComparedWhole) {
  PitT a, b;
  a.title = "one";
  b.title = "two";
  a.site = std::make_unique<SiteT>();
  b.site = std::make_unique<SiteT>();
  a.site->probes_10um = {cm(140), cm(141)};
  b.site->probes_10um = {cm(140), cm(142)};
  a.operation = std::make_unique<OperationT>();
  b.operation = std::make_unique<OperationT>();
  for (auto* pit : {&a, &b}) {
    pit->operation->contacts.push_back(std::make_unique<ObserverT>());
    pit->operation->contacts[0]->name = pit == &a ? "KL" : "MT";
  }
  first.record(make_set(next(first), a));
  second.record(make_set(next(second), b));
  EXPECT_EQ(conflicts().size(), 3u);
}

TEST_F(Apart, OnlyTheLastOfEachCounts) {
  harden(first, layer, HandHardness::Fist);
  const EditKey one = harden(first, layer, HandHardness::Knife);
  harden(second, layer, HandHardness::Pencil);
  harden(second, layer, HandHardness::OneFinger);
  const EditKey two = harden(second, layer, HandHardness::FourFinger);
  expect_one(one, two, Thing::layer, kHardness);
}

TEST_F(Apart, SettingItAnewWithBothInViewSettlesIt) {
  harden(first, layer, HandHardness::Fist);
  harden(second, layer, HandHardness::Pencil);
  EXPECT_EQ(conflicts().size(), 1u);
  meet();
  harden(first, layer, HandHardness::Knife);
  EXPECT_TRUE(conflicts().empty());
}

TEST_F(Apart, TakingOneBackSettlesIt) {
  const EditKey one = harden(first, layer, HandHardness::Fist);
  harden(second, layer, HandHardness::Pencil);
  EXPECT_EQ(conflicts().size(), 1u);
  meet();
  second.record(make_undo(next(second), one));
  EXPECT_TRUE(conflicts().empty());
}

TEST_F(Apart, ClearingAgainstSetting) {
  const EditKey one = harden(first, layer, HandHardness::Fist);
  const EditKey two = second.record(make_clear(next(second), &layer, {{-1, -1, kHardness, Thing::layer}}));
  expect_one(one, two, Thing::layer, kHardness);
}

TEST_F(Apart, ClearedByBothIsNoConflict) {
  for (Hand* hand : {&first, &second}) {
    hand->record(make_clear(next(*hand), &layer, {{-1, -1, kHardness, Thing::layer}}));
    hand->record(make_clear(next(*hand), nullptr, {{-1, -1, kHs, Thing::snowpack}}));
  }
  EXPECT_TRUE(conflicts().empty());
}

// The removal is what is shown, also where the other one came later: what was said of a thing that is gone
// has no effect, and nobody may lose an observation in silence.
TEST_F(Apart, RemovingAgainstChanging) {
  const EditKey one = first.record(make_remove(next(first), layer));
  set(second, 100);
  const EditKey two = harden(second, layer, HandHardness::Pencil);
  expect_one(two, one, Thing::layer, kHardness);
}

TEST_F(Apart, RemovedByBothIsNoConflict) {
  first.record(make_remove(next(first), layer));
  second.record(make_remove(next(second), layer));
  EXPECT_TRUE(conflicts().empty());
}

TEST_F(Apart, AFractureForATestThatTheOtherRemoved) {
  const EditKey one = first.record(make_remove(next(first), test));
  PitT fields;
  fields.tests.push_back(std::make_unique<StabilityTestT>());
  fields.tests[0]->fractures.push_back(std::make_unique<FractureT>());
  fields.tests[0]->fractures[0]->tap = 13;
  const EditKey two = second.record(make_add(next(second), fields, &test));
  expect_one(two, one, Thing::test, kWhole);
}

TEST_F(Apart, AFractureChangedInATestThatTheOtherRemoved) {
  const EditKey one = first.record(make_remove(next(first), test));
  PitT fields;
  fields.tests.push_back(std::make_unique<StabilityTestT>());
  fields.tests[0]->fractures.push_back(std::make_unique<FractureT>());
  fields.tests[0]->fractures[0]->tap = 13;
  const Target fracture = target_of({1, test.edit().sequence()}, Thing::fracture);
  const EditKey two = second.record(make_change(next(second), fracture, fields));
  expect_one(two, one, Thing::fracture, kWhole);
}

TEST_F(Apart, FracturesOfOneTestChangedByBoth) {
  const Target fracture = target_of({1, test.edit().sequence()}, Thing::fracture);
  EditKey keys[2];
  std::uint8_t tap = 13;
  for (Hand* hand : {&first, &second}) {
    PitT fields;
    fields.tests.push_back(std::make_unique<StabilityTestT>());
    fields.tests[0]->fractures.push_back(std::make_unique<FractureT>());
    fields.tests[0]->fractures[0]->tap = tap++;
    keys[hand == &second] = hand->record(make_change(next(*hand), fracture, fields));
  }
  expect_one(keys[0], keys[1], Thing::fracture, (Fracture::VT_TAP - 4) / 2);
}

TEST_F(Apart, ARemarkAboutALayerThatTheOtherRemoved) {
  const EditKey one = first.record(make_remove(next(first), layer));
  PitT fields;
  fields.remarks.push_back(std::make_unique<RemarkT>());
  fields.remarks[0]->text = "easy to miss";
  const EditKey two = second.record(make_add(next(second), fields, nullptr, &layer));
  expect_one(two, one, Thing::layer, kWhole);
}

TEST_F(Apart, UndoingAnAddingAgainstChangingWhatItAdded) {
  const EditKey adding{layer.edit().device(), layer.edit().sequence()};
  const EditKey one = first.record(make_undo(next(first), adding));
  const EditKey two = harden(second, layer, HandHardness::Pencil);
  expect_one(two, one, Thing::layer, kWhole);
}

TEST_F(Apart, UndoingAndRedoingOneEdit) {
  const EditKey one = harden(first, layer, HandHardness::Fist);
  meet();
  const EditKey undo = first.record(make_undo(next(first), one));
  const EditKey redo = second.record(make_redo(next(second), one));
  expect_one(undo, redo, Thing::pit, kWhole);
}

TEST_F(Apart, UndoneByBothIsNoConflict) {
  const EditKey one = harden(first, layer, HandHardness::Fist);
  meet();
  first.record(make_undo(next(first), one));
  second.record(make_undo(next(second), one));
  EXPECT_TRUE(conflicts().empty());
}

TEST_F(Apart, SplittingAgainstChanging) {
  const EditKey one = first.record(make_split(next(first), layer, down(cm(4))));
  const EditKey two = harden(second, layer, HandHardness::Pencil);
  // Both have their effect; the later one is what stands on the upper half.
  expect_one(one, two, Thing::layer, kHardness);
}

TEST_F(Apart, SplitByBoth) {
  const EditKey one = first.record(make_split(next(first), layer, down(cm(4))));
  const EditKey two = second.record(make_split(next(second), layer, down(cm(6))));
  expect_one(one, two, Thing::layer, kWhole);
}

// A layer that was joined has two names, and is one thing.
TEST_F(Apart, NamesOfAJoinedLayerAreOneThing) {
  first.record(make_merge(next(first), layer, lower));
  meet();
  const EditKey one = harden(first, layer, HandHardness::Fist);
  const EditKey two = harden(second, lower, HandHardness::Pencil);
  expect_one(one, two, Thing::layer, kHardness);
}

TEST_F(Apart, AllDepthsMovedByBoth) {
  const EditKey one = first.record(make_shift(next(first), cm(2)));
  const EditKey two = second.record(make_rescale(next(second), 12, 10));
  expect_one(one, two, Thing::pit, kWhole);
}

// Edits in bytes from elsewhere need not say what they had seen: then nothing was.
TEST_F(Apart, WhoSaysNothingHasSeenNothing) {
  const EditKey one = harden(first, layer, HandHardness::Fist);
  exchange(first, second);
  const EditKey two = second.record(make_change(second.next(), layer, hard(HandHardness::Pencil)));
  expect_one(one, two, Thing::layer, kHardness);
}

TEST_F(Apart, ThreePeople) {
  Hand third(3);
  exchange(first, third);
  const EditKey one = harden(first, layer, HandHardness::Fist);
  const EditKey two = harden(second, layer, HandHardness::Pencil);
  const EditKey three = third.record(make_change(third.next(), layer, hard(HandHardness::Knife)));
  exchange(third, first);
  const std::vector<Conflict> found = conflicts();
  ASSERT_EQ(found.size(), 2u);
  EXPECT_TRUE(found[0].other == one && found[0].shown == three);
  EXPECT_TRUE(found[1].other == two && found[1].shown == three);
}

// Two recorders fill one field over and over; what is told and what it costs stays small.
TEST(Conflicts, ManyEditsOfOneFieldAreFoundInLinearTime) {
  const auto time_of = [](int edits) {
    Recorder recorder{pit::Limits{}};
    for (std::uint64_t device = 1; device <= 50; ++device) {
      Hand hand(device);
      EXPECT_TRUE(hand.recorder.begin("p"));
      for (int i = 0; i < edits / 50; ++i) {
        PitT fields;
        fields.title = std::string(1, static_cast<char>('a' + (device + static_cast<std::uint64_t>(i)) % 26));
        hand.set(fields);
      }
      const Result<Bytes> journal = hand.recorder.journal();
      EXPECT_TRUE(recorder.load(journal->data(), journal->size()));
    }
    const auto start = std::chrono::steady_clock::now();
    EXPECT_LE(recorder.conflicts().size(), 49u);
    return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
  };
  time_of(500);
  const double small = std::min(time_of(500), time_of(500));
  const double large = std::min(time_of(4000), time_of(4000));
  EXPECT_LT(large, 30 * small);
}

}  // namespace
}  // namespace firn::tests
