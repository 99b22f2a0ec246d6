#include <gtest/gtest.h>

#include <algorithm>

#include "recording_help.h"

namespace firn::tests {
namespace {

using namespace firnbook;
using recording::target_of;
using recording::to_bytes;

PitT site(std::uint8_t slope_deg, const std::string& name = {}) {
  PitT fields;
  fields.site = std::make_unique<SiteT>();
  fields.site->slope_deg = slope_deg;
  fields.site->name = name;
  return fields;
}

PitT one_layer(HandHardness hardness) {
  PitT fields;
  fields.layers.push_back(std::make_unique<LayerT>());
  fields.layers[0]->hardness = hardness;
  return fields;
}

PitT one_remark(const std::string& text) {
  PitT fields;
  fields.remarks.push_back(std::make_unique<RemarkT>());
  fields.remarks[0]->text = text;
  return fields;
}

TEST(Edits, AnEmptyRecorderGivesAnEmptyPit) {
  Hand hand;
  PitT nothing;
  EXPECT_EQ(hand.pit(), to_bytes(nothing));
  EXPECT_EQ(hand.recorder.next_clock(), 1u);
  EXPECT_EQ(hand.recorder.last_sequence(7), 0u);
}

TEST(Edits, SetOverlaysFieldByField) {
  Hand hand;
  hand.set(site(28, "Tarn Shoulder"));
  hand.set(site(31));
  const Bytes bytes = hand.pit();
  EXPECT_EQ(read(bytes).site()->slope_deg(), 31);
  EXPECT_EQ(read(bytes).site()->name()->str(), "Tarn Shoulder");
  EXPECT_EQ(hand.recorder.next_clock(), 3u);
  EXPECT_EQ(hand.recorder.last_sequence(7), 2u);
  EXPECT_EQ(hand.recorder.last_sequence(6), 0u);
}

TEST(Edits, ProbeStrikesAreReplacedNotAppended) {
  Hand hand;
  PitT fields = site(20);
  fields.site->probes_10um = {cm(38), cm(45)};
  hand.set(fields);
  fields.site->probes_10um = {cm(61)};
  hand.set(fields);
  const Bytes bytes = hand.pit();
  ASSERT_EQ(read(bytes).site()->probes_10um()->size(), 1u);
  EXPECT_EQ(read(bytes).site()->probes_10um()->Get(0), cm(61));
}

TEST(Edits, TheClockDecidesNotTheOrderOfArrival) {
  const EditHead early{{1, 1}, 1, nullptr, {}};
  const EditHead late{{2, 1}, 2, nullptr, {}};
  const Bytes first = make_set(early, site(20));
  const Bytes second = make_set(late, site(31));
  EXPECT_EQ(replay({first, second}), replay({second, first}));
  EXPECT_EQ(read(replay({second, first})).site()->slope_deg(), 31);
}

TEST(Edits, EqualClocksAreOrderedByDevice) {
  const Bytes first = make_set({{1, 9}, 5, nullptr, {}}, site(20));
  const Bytes second = make_set({{2, 3}, 5, nullptr, {}}, site(31));
  EXPECT_EQ(read(replay({first, second})).site()->slope_deg(), 31);
  EXPECT_EQ(replay({first, second}), replay({second, first}));
}

TEST(Edits, AThingIsChangedAndRemovedByItsName) {
  Hand hand;
  const Target upper = hand.layer(0, 10);
  const Target lower = hand.layer(10, 40);
  hand.change(lower, one_layer(HandHardness::Pencil));
  Bytes bytes = hand.pit();
  EXPECT_FALSE(read(bytes).layers()->Get(0)->hardness());
  EXPECT_EQ(*read(bytes).layers()->Get(1)->hardness(), HandHardness::Pencil);
  EXPECT_EQ(read(bytes).layers()->Get(1)->bottom()->value_10um(), cm(40));
  hand.remove(upper);
  bytes = hand.pit();
  ASSERT_EQ(read(bytes).layers()->size(), 1u);
  EXPECT_EQ(read(bytes).layers()->Get(0)->top()->value_10um(), cm(10));
  EXPECT_EQ(hand.refused(make_remove(hand.next(), upper)), FIRN_NO_SUCH_TARGET);
}

TEST(Edits, SeveralThingsOfOneEditHaveNamesOfTheirOwn) {
  Hand hand;
  PitT fields;
  add_layer(fields, cm(10), cm(20));
  add_layer(fields, cm(0), cm(10));
  add_sign(fields, SignKind::whumpf, Answer::no);
  const EditKey key = hand.add(fields);
  hand.change(target_of(key, Thing::layer, 0), one_layer(HandHardness::Knife));
  const Bytes bytes = hand.pit();
  EXPECT_FALSE(read(bytes).layers()->Get(0)->hardness());
  EXPECT_EQ(*read(bytes).layers()->Get(1)->hardness(), HandHardness::Knife);
  EXPECT_EQ(hand.refused(make_remove(hand.next(), target_of(key, Thing::layer, 2))), FIRN_NO_SUCH_TARGET);
  EXPECT_EQ(hand.refused(make_remove(hand.next(), target_of(key, Thing::sign, 0, 1))), FIRN_NO_SUCH_TARGET);
}

TEST(Edits, FracturesAreAddedChangedAndRemovedBeforeAnyLayerIsThere) {
  Hand hand;
  PitT fields;
  add_fracture(add_test(fields, TestKind::CT), cm(16));
  const EditKey test = hand.add(fields);
  const Target into = target_of(test, Thing::test);
  PitT more;
  StabilityTestT& holder = *more.tests.emplace_back(std::make_unique<StabilityTestT>());
  add_fracture(holder, cm(68));
  add_fracture(holder, cm(107));
  holder.outcome = flatbuffers::nullopt;
  const EditKey added = hand.add(more, &into);
  PitT fields_of_one;
  fields_of_one.tests.push_back(std::make_unique<StabilityTestT>());
  fields_of_one.tests[0]->fractures.push_back(std::make_unique<FractureT>());
  fields_of_one.tests[0]->fractures[0]->tap = 12;
  hand.change(target_of(added, Thing::fracture, 0, 0), fields_of_one);
  fields_of_one.tests[0]->fractures[0]->tap = 6;
  hand.change(target_of(test, Thing::fracture, 0, 0), fields_of_one);
  hand.remove(target_of(added, Thing::fracture, 0, 1));
  const Bytes bytes = hand.pit();
  const auto& fractures = *read(bytes).tests()->Get(0)->fractures();
  ASSERT_EQ(fractures.size(), 2u);
  EXPECT_EQ(fractures.Get(0)->tap(), 6);
  EXPECT_EQ(fractures.Get(1)->tap(), 12);
  EXPECT_EQ(fractures.Get(1)->depth()->value_10um(), cm(68));
  hand.remove(into);
  EXPECT_EQ(read(hand.pit()).tests(), nullptr);
  EXPECT_EQ(hand.refused(make_remove(hand.next(), target_of(test, Thing::fracture, 0, 0))),
            FIRN_NO_SUCH_TARGET);
}

TEST(Edits, ReadingsJoinTheirProfileInOrderOfDepth) {
  Hand hand;
  PitT fields;
  add_density(fields, cm(69), cm(104), 3100);
  const Target profile = target_of(hand.add(fields), Thing::density_profile);
  PitT more;
  add_density(more, cm(31), cm(68), 2380);
  const EditKey added = hand.add(more, &profile);
  Bytes bytes = hand.pit();
  EXPECT_EQ(*read(bytes).densities()->Get(0)->readings()->Get(0)->density_dkgm3(), 2380);
  hand.remove(target_of(added, Thing::density));
  bytes = hand.pit();
  ASSERT_EQ(read(bytes).densities()->Get(0)->readings()->size(), 1u);
  EXPECT_EQ(*read(bytes).densities()->Get(0)->readings()->Get(0)->density_dkgm3(), 3100);
}

TEST(Edits, ClearTakesFieldsBackToNotObserved) {
  Hand hand;
  hand.set(site(28, "Tarn Shoulder"));
  const Target layer = hand.layer(0, 10);
  hand.change(layer, one_layer(HandHardness::Pencil));
  hand.clear(nullptr, {{-1, -1, 6, Thing::site}});
  hand.clear(&layer, {{-1, -1, 2, Thing::layer}, {-1, -1, 1, Thing::layer}});
  const Bytes bytes = hand.pit();
  EXPECT_FALSE(read(bytes).site()->slope_deg());
  EXPECT_EQ(read(bytes).site()->name()->str(), "Tarn Shoulder");
  EXPECT_FALSE(read(bytes).layers()->Get(0)->hardness());
  EXPECT_EQ(read(bytes).layers()->Get(0)->bottom(), nullptr);
  EXPECT_NE(read(bytes).layers()->Get(0)->top(), nullptr);
}

// Presence is what the bytes say, not what the mutable form can tell: a text that was written empty, and a
// mask that was written as zero, are set.
TEST(Edits, AnEmptyTextThatIsWrittenIsSet) {
  Hand hand;
  PitT fields = site(28, "Tarn Shoulder");
  fields.site->unreliable = 64;
  hand.set(fields);
  flatbuffers::FlatBufferBuilder builder;
  builder.ForceDefaults(true);
  const auto empty = builder.CreateString("");
  SiteBuilder empty_site(builder);
  empty_site.add_name(empty);
  empty_site.add_unreliable(0);
  const auto site_offset = empty_site.Finish();
  PitBuilder pit(builder);
  pit.add_site(site_offset);
  const auto pit_offset = pit.Finish();
  const auto change = CreateChange(builder, ChangeKind::set, nullptr, nullptr, pit_offset);
  const EditId id(7, 99);
  FinishEditBuffer(builder, CreateEdit(builder, 0, &id, 99, nullptr, 0, 0, change));
  hand.record(Bytes(builder.GetBufferPointer(), builder.GetBufferPointer() + builder.GetSize()));
  const Bytes bytes = hand.pit();
  EXPECT_EQ(read(bytes).site()->name(), nullptr);
  EXPECT_EQ(read(bytes).site()->unreliable(), 0u);
  EXPECT_EQ(read(bytes).site()->slope_deg(), 28);
}

TEST(Edits, ARemarkFollowsTheThingItIsAbout) {
  Hand hand;
  const Target deep = hand.layer(40, 60);
  hand.add(one_remark("gritty"), nullptr, &deep);
  EXPECT_EQ(read(hand.pit()).remarks()->Get(0)->about()->index(), 0);
  hand.layer(0, 40);
  Bytes bytes = hand.pit();
  EXPECT_EQ(read(bytes).remarks()->Get(0)->about()->index(), 1);
  EXPECT_EQ(read(bytes).remarks()->Get(0)->about()->thing(), Thing::layer);
  EXPECT_EQ(read(bytes).remarks()->Get(0)->about()->field(), kWholeThing);
  hand.remove(deep);
  bytes = hand.pit();
  EXPECT_EQ(read(bytes).remarks()->Get(0)->text()->str(), "gritty");
  EXPECT_EQ(read(bytes).remarks()->Get(0)->about(), nullptr);
}

TEST(Edits, ARemarkIsTurnedToAnotherThing) {
  Hand hand;
  const Target layer = hand.layer(0, 40);
  PitT fields;
  add_fracture(add_test(fields, TestKind::CT), cm(16));
  add_fracture(*fields.tests[0], cm(30));
  const Target fracture = target_of(hand.add(fields), Thing::fracture, 0, 1);
  const Target remark = target_of(hand.add(one_remark("odd"), nullptr, &layer), Thing::remark);
  hand.change(remark, one_remark("odder"), &fracture);
  Bytes bytes = hand.pit();
  EXPECT_EQ(read(bytes).remarks()->Get(0)->text()->str(), "odder");
  EXPECT_EQ(read(bytes).remarks()->Get(0)->about()->thing(), Thing::fracture);
  EXPECT_EQ(read(bytes).remarks()->Get(0)->about()->index(), 0);
  EXPECT_EQ(read(bytes).remarks()->Get(0)->about()->sub(), 1);
  hand.change(remark, one_remark("oddest"));
  bytes = hand.pit();
  EXPECT_EQ(read(bytes).remarks()->Get(0)->about()->sub(), 1);
}

TEST(Edits, AReasonForAbsentValuesGoesWithItsThing) {
  Hand hand;
  const Target layer = hand.layer(0, 40);
  PitT fields;
  fields.absences.push_back(std::make_unique<AbsenceT>());
  fields.absences[0]->reason = AbsentReason::withheld;
  fields.absences[0]->about = std::make_unique<Place>(-1, -1, 2, Thing::layer);
  hand.add(fields, nullptr, &layer);
  EXPECT_EQ(read(hand.pit()).absences()->Get(0)->about()->field(), 2);
  EXPECT_EQ(read(hand.pit()).absences()->Get(0)->about()->index(), 0);
  hand.remove(layer);
  EXPECT_EQ(read(hand.pit()).absences(), nullptr);
}

// A whole pit in one edit: places by position mean the edit's own things.
TEST(Edits, PositionsInAnAddMeanItsOwnThings) {
  Hand hand;
  hand.layer(0, 5);
  PitT fields = one_remark("sugary");
  add_layer(fields, cm(20), cm(40));
  add_layer(fields, cm(5), cm(20));
  fields.remarks[0]->about = std::make_unique<Place>(0, -1, 5, Thing::layer);
  hand.add(fields);
  EXPECT_EQ(read(hand.pit()).remarks()->Get(0)->about()->index(), 2);
}

TEST(Edits, EditsOfTheirOwnThingsCommute) {
  Hand hand;
  for (int i = 0; i < 12; ++i) hand.layer(10 * i, 10 * i + 10);
  PitT fields;
  add_test(fields, TestKind::ECT);
  hand.add(fields);
  hand.set(site(31));
  std::vector<Bytes> shuffled = hand.edits;
  Dice dice(5);
  for (int i = 0; i < 10; ++i) {
    dice.shuffle(shuffled);
    EXPECT_EQ(replay(shuffled), hand.pit());
  }
}

TEST(Edits, TheSameArgumentsGiveTheSameBytes) {
  const Moment made = local_time(2027, 1, 16, 11, 20, -420);
  const EditHead head{{3, 4}, 9, &made, "MT"};
  const Target target = target_of({3, 2}, Thing::layer, 1);
  EXPECT_EQ(make_change(head, target, one_layer(HandHardness::Fist)),
            make_change(head, target, one_layer(HandHardness::Fist)));
  EXPECT_EQ(make_change(head, target, one_layer(HandHardness::Fist)),
            recording::make_edit(head.key, head.clock, &made, "MT", ChangeKind::change,
                                 one_layer(HandHardness::Fist), &target));
}

}  // namespace
}  // namespace firn::tests
