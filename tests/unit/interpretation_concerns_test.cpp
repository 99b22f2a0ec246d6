// How findings add up: the two demo pits, what joins which concern, their order, what no test loaded,
// cautions.
#include <gtest/gtest.h>

#include <algorithm>

#include "interpretation_help.h"

namespace firn::tests {
namespace {

using firnbook::Answer;
using firnbook::Crossing;
using firnbook::LayerNameKind;
using firnbook::SignKind;
using firnbook::TestOutcome;
using Keys = std::vector<FindingKey>;
using Lines = std::vector<std::string>;

constexpr FindingKey kSixFlags[] = {FindingKey::flag_grain_size,
                                    FindingKey::flag_hardness,
                                    FindingKey::flag_grain_form,
                                    FindingKey::flag_size_difference,
                                    FindingKey::flag_hardness_difference,
                                    FindingKey::flag_depth,
                                    FindingKey::flag_count};

Keys with_flags(Keys keys) {
  keys.insert(keys.end(), std::begin(kSixFlags), std::end(kSixFlags));
  return keys;
}

Lines first_cautions(const Read& read, std::size_t count) {
  Lines out;
  for (const firnbook::Caution& one : read.analysis.cautions) {
    if (out.size() < count) out.push_back(firnbook::EnumNameCautionKey(one.key()));
  }
  return out;
}

// --- Tarn Shoulder

TEST(TarnShoulder, CrackingComesFirst) {
  const Read read(*tarn_shoulder());
  ASSERT_TRUE(read.ok);
  const Finding& first = read.analysis.findings.at(0);
  EXPECT_EQ(first.key(), FindingKey::sign_seen);
  EXPECT_EQ(first.a(), static_cast<std::int32_t>(SignKind::cracking));
  EXPECT_EQ(read.analysis.cautions.at(0).key(), CautionKey::sign_of_instability_seen);
  EXPECT_EQ(read.analysis.cautions.at(0).a(), static_cast<std::int32_t>(SignKind::cracking));
}

TEST(TarnShoulder, TheSurfaceHoarLeadsWithAllItsEvidence) {
  const Read read(*tarn_shoulder());
  const interpretation::Concern& hoar = read.analysis.concerns.at(0);
  EXPECT_EQ(hoar.kind, ConcernKind::layer);
  EXPECT_EQ(hoar.layer, 3);
  EXPECT_EQ(hoar.weaker_layer, 3);
  EXPECT_EQ(hoar.top, cm(68));
  EXPECT_EQ(hoar.bottom, cm(69));
  EXPECT_EQ(hoar.rank, ConcernRank::propagated);
  Keys expected = with_flags({FindingKey::ect_crossed_before_22, FindingKey::ect_schemes,
                              FindingKey::pst_propagation_likely, FindingKey::ct_sudden});
  for (const FindingKey key : {FindingKey::flag_count, FindingKey::threshold_sum, FindingKey::lemons,
                               FindingKey::weak_layer_build}) {
    expected.push_back(key);
  }
  EXPECT_EQ(read.evidence_keys(0), expected);
  const auto evidence = read.evidence(0);
  EXPECT_EQ(evidence.at(0)->a(), 13);
  EXPECT_EQ(evidence.at(2)->a(), cm(32));
  EXPECT_EQ(evidence.at(2)->b(), cm(100));
  EXPECT_EQ(evidence.at(3)->a(), 12);
  EXPECT_EQ(evidence.at(10)->a(), 6) << "flags met at the upper edge";
  EXPECT_EQ(evidence.at(11)->a(), 6) << "and at the lower";
  EXPECT_EQ(evidence.at(12)->depth_10um(), cm(68)) << "other structure at the upper edge alone";
  EXPECT_EQ(hoar.reading, firnbook::ConcernReading::starts_and_runs);
  EXPECT_EQ(hoar.reach, firnbook::ConcernReach::one_rider);
}

// The column that broke at 107 cm loaded the hoar above it too; the one that crumbled at 16 cm did not.
TEST(TarnShoulder, WhatLoadedTheHoarAndWhatTheFacets) {
  const Read read(*tarn_shoulder());
  std::vector<std::pair<std::int32_t, std::int32_t>> loaded;
  for (const firnbook::LoadedBy& one : read.analysis.loaded) {
    loaded.emplace_back(one.concern(), one.test());
    EXPECT_EQ(one.kind(), read.view.tests()[static_cast<std::size_t>(one.test())].kind);
  }
  const std::vector<std::pair<std::int32_t, std::int32_t>> expected = {{0, 1}, {0, 2}, {0, 3}, {0, 4}, {1, 2},
                                                                       {2, 0}, {2, 1}, {2, 2}, {2, 3}};
  EXPECT_EQ(loaded, expected);
}

TEST(Loaded, NamesEightTestsAtMost) {
  PitT pit =
      two_layers(cm(60), HandHardness::Pencil, GrainForm::RG, 30, HandHardness::Fist, GrainForm::DH, 300);
  for (int i = 0; i < 12; ++i) add_compression_test(pit, 12, FractureCharacter::SP, cm(60));
  const Read read(pit);
  ASSERT_EQ(read.analysis.concerns.size(), 1u);
  EXPECT_EQ(read.analysis.loaded.size(), 8u);
}

TEST(TarnShoulder, TheFacetsWereReachedByOneColumnOnly) {
  const Read read(*tarn_shoulder());
  const interpretation::Concern& facets = read.analysis.concerns.at(1);
  EXPECT_EQ(facets.kind, ConcernKind::boundary);
  EXPECT_EQ(facets.layer, 5);
  EXPECT_EQ(facets.layer_below, 6);
  EXPECT_EQ(facets.weaker_layer, 6);
  EXPECT_EQ(facets.top, cm(107));
  EXPECT_EQ(facets.rank, ConcernRank::broke);
  Keys expected = with_flags({FindingKey::ct_resistant});
  for (const FindingKey key :
       {FindingKey::threshold_sum, FindingKey::lemons, FindingKey::gradient_near_crust}) {
    expected.push_back(key);
  }
  EXPECT_EQ(read.evidence_keys(1), expected);
  EXPECT_EQ(facets.reading, firnbook::ConcernReading::starts_run_not_tested);
  EXPECT_EQ(facets.reach, firnbook::ConcernReach::large_load_or_thin_slab);
  EXPECT_EQ(read.not_loaded(), (Lines{"107 ECT ended_above", "107 PST other_layer", "16 PST other_layer"}));
  EXPECT_EQ(read.analysis.not_loaded.at(0).test(), 3);
  EXPECT_EQ(read.analysis.not_loaded.at(1).test(), 4);
  const firnbook::Caution* once = read.caution(CautionKey::layer_reached_by_one_test_only);
  ASSERT_NE(once, nullptr);
  EXPECT_EQ(once->a(), cm(107));
  EXPECT_EQ(once->b(), 1);
  EXPECT_EQ(path_of(once->place()), "tests[2]");
  EXPECT_EQ(read.suggestions(),
            (Lines{"look_for_signs", "read_bulletin", "107 deep_tap_test", "107 saw_test"}));
}

TEST(TarnShoulder, TheUnevenBreakSaysLittleAndComesLast) {
  const Read read(*tarn_shoulder());
  ASSERT_EQ(read.analysis.concerns.size(), 3u);
  EXPECT_EQ(read.analysis.concerns[2].rank, ConcernRank::little);
  EXPECT_EQ(read.analysis.concerns[2].top, cm(16));
  EXPECT_EQ(read.evidence(2).at(0)->key(), FindingKey::ct_break);
  EXPECT_EQ(read.evidence(2).at(0)->verdict(), Verdict::says_little);
}

// --- Larch Bowl entry

TEST(LarchBowlEntry, WhumpfFirstThenTheInterfaceAt17) {
  const Read read(*larch_bowl_entry());
  ASSERT_TRUE(read.ok);
  EXPECT_EQ(read.analysis.findings.at(0).key(), FindingKey::sign_seen);
  EXPECT_EQ(read.analysis.findings.at(0).a(), static_cast<std::int32_t>(SignKind::whumpf));
  ASSERT_EQ(read.analysis.concerns.size(), 1u);
  const interpretation::Concern& interface = read.analysis.concerns[0];
  EXPECT_EQ(interface.kind, ConcernKind::boundary);
  EXPECT_EQ(interface.layer, 1);
  EXPECT_EQ(interface.layer_below, 2);
  EXPECT_EQ(interface.weaker_layer, 2);
  EXPECT_EQ(interface.top, cm(17));
  EXPECT_EQ(interface.rank, ConcernRank::sudden);
  EXPECT_EQ(interface.ease, 11);
  Keys expected = with_flags({FindingKey::ct_sudden, FindingKey::ct_sudden});
  expected.push_back(FindingKey::threshold_sum);
  expected.push_back(FindingKey::lemons);
  EXPECT_EQ(read.evidence_keys(0), expected);
  EXPECT_EQ(interface.reading, firnbook::ConcernReading::starts_run_not_tested);
}

TEST(LarchBowlEntry, TheDepthFlagIsNotMetAndTakesNothingAway) {
  const Read read(*larch_bowl_entry());
  const auto evidence = read.evidence(0);
  const Finding& depth = *evidence.at(7);
  EXPECT_EQ(depth.key(), FindingKey::flag_depth);
  EXPECT_EQ(depth.verdict(), Verdict::not_met);
  EXPECT_EQ(depth.a(), cm(17));
  EXPECT_EQ(depth.b(), cm(20));
  // With the same layers 3 cm deeper the flag is met: same concern, same rank.
  auto deeper = larch_bowl_entry();
  for (const std::size_t k : {std::size_t{0}, std::size_t{1}})
    *deeper->tests[k]->fractures[0]->depth = down(cm(20));
  *deeper->layers[1]->bottom = down(cm(20));
  *deeper->layers[2]->top = down(cm(20));
  const Read met(*deeper);
  EXPECT_EQ(met.find(FindingKey::flag_depth, cm(20))->verdict(), Verdict::raises);
  EXPECT_EQ(met.analysis.concerns.at(0).rank, read.analysis.concerns.at(0).rank);
}

TEST(LarchBowlEntry, CautionsOfThisPitComeFirst) {
  const Read read(*larch_bowl_entry());
  EXPECT_EQ(first_cautions(read, 3),
            (Lines{"sign_of_instability_seen", "probing_uneven", "signs_not_looked_for"}));
  const firnbook::Caution* uneven = read.caution(CautionKey::probing_uneven);
  ASSERT_NE(uneven, nullptr);
  EXPECT_EQ(uneven->a(), cm(38));
  EXPECT_EQ(uneven->b(), cm(61));
  EXPECT_EQ(read.caution(CautionKey::signs_not_looked_for)->a(), 1 << static_cast<int>(SignKind::cracking));
  EXPECT_NE(read.caution(CautionKey::no_bulletin), nullptr);
  EXPECT_NE(read.caution(CautionKey::shallow_snow), nullptr);
  EXPECT_EQ(read.not_loaded(), (Lines{"17 ECT not_done", "17 PST not_done"}));
  EXPECT_EQ(read.suggestions(), (Lines{"look_for_signs", "probe_more", "17 extended_column"}));
}

TEST(LarchBowlEntry, AlsoWithoutTestsTheDepthHoarIsAConcern) {
  auto pit = larch_bowl_entry();
  pit->tests.clear();
  const Read read(*pit);
  ASSERT_EQ(read.analysis.concerns.size(), 1u);
  EXPECT_EQ(read.analysis.concerns[0].rank, ConcernRank::structure);
  EXPECT_NE(read.caution(CautionKey::no_tests), nullptr);
}

// --- what joins what

TEST(Concerns, BothEdgesOfAThinWeakLayerAreOnePlace) {
  PitT pit;
  add_layer(pit, 0, cm(50), HandHardness::OneFinger, GrainForm::RG, 30);
  add_layer(pit, cm(50), cm(53), HandHardness::Fist, GrainForm::SH, 600);
  add_layer(pit, cm(53), cm(100), HandHardness::Pencil, GrainForm::RG, 50);
  add_compression_test(pit, 12, FractureCharacter::SP, cm(50));
  add_compression_test(pit, 14, FractureCharacter::SP, cm(53));
  EXPECT_EQ(Read(pit).analysis.concerns.size(), 1u);
  // Of 4 cm, twice the tolerance, the layer is no longer thin.
  *pit.layers[1]->bottom = down(cm(54));
  *pit.layers[2]->top = down(cm(54));
  *pit.tests[1]->fractures[0]->depth = down(cm(54));
  EXPECT_EQ(Read(pit).analysis.concerns.size(), 2u);
}

TEST(Concerns, AFractureBelongsToTheNearestBoundaryWithinTolerance) {
  PitT pit =
      two_layers(cm(50), HandHardness::Pencil, GrainForm::RG, 30, HandHardness::Pencil, GrainForm::RG, 30);
  for (const std::int32_t depth : {cm(48), cm(50), cm(52)}) {
    add_compression_test(pit, 12, FractureCharacter::SP, depth);
  }
  const Read read(pit);
  ASSERT_EQ(read.analysis.concerns.size(), 1u);
  EXPECT_EQ(read.analysis.concerns[0].kind, ConcernKind::boundary);
  *pit.tests[2]->fractures[0]->depth = down(cm(52) + 1);
  const Read beyond(pit);
  ASSERT_EQ(beyond.analysis.concerns.size(), 2u);
  EXPECT_EQ(beyond.analysis.concerns[1].kind, ConcernKind::layer);
  EXPECT_EQ(beyond.analysis.concerns[1].top, cm(52) + 1);
}

TEST(Concerns, WhatBreaksOnACrustBelongsToTheSnowBesideIt) {
  PitT pit;
  add_layer(pit, 0, cm(50), HandHardness::OneFinger, GrainForm::RG, 30);
  add_layer(pit, cm(50), cm(51), HandHardness::Knife, GrainForm::MFcr);
  add_layer(pit, cm(51), cm(90), HandHardness::FourFinger, GrainForm::FC, 150);
  add_compression_test(pit, 22, FractureCharacter::SP, cm(51));
  const Read read(pit);
  EXPECT_EQ(read.analysis.concerns.at(0).kind, ConcernKind::boundary);
  EXPECT_EQ(read.analysis.concerns.at(0).weaker_layer, 2);
}

firnbook::FractureT& on_named(PitT& pit, std::int32_t depth, std::int64_t year, int month, int day) {
  auto& on = name_layer(add_compression_test(pit, 12, FractureCharacter::SP, depth), GrainForm::SH);
  on.name = std::make_unique<firnbook::LayerNameT>();
  on.name->date = std::make_unique<firnbook::Moment>(date(year, month, day));
  return *pit.tests.back()->fractures.back();
}

TEST(Concerns, ATestThatNamesALayerAttachesToIt) {
  auto pit = tarn_shoulder();
  pit->tests.clear();
  on_named(*pit, 0, 2027, 1, 2).depth.reset();
  const Read read(*pit);
  EXPECT_EQ(read.analysis.concerns.at(0).layer, 3);
  EXPECT_EQ(read.analysis.concerns.at(0).rank, ConcernRank::sudden);
}

TEST(Concerns, WhenNameAndDepthDisagreeBothPlacesGetTheEvidence) {
  auto pit = tarn_shoulder();
  pit->tests.clear();
  on_named(*pit, cm(31), 2027, 1, 2);
  const Read read(*pit);
  ASSERT_GE(read.analysis.concerns.size(), 2u);
  EXPECT_EQ(read.analysis.concerns[0].top, cm(68));
  EXPECT_EQ(read.analysis.concerns[1].top, cm(31));
  EXPECT_EQ(read.analysis.concerns[0].rank, ConcernRank::sudden);
  EXPECT_EQ(read.analysis.concerns[1].rank, ConcernRank::sudden);
}

TEST(Concerns, GrainsNamedByATestFindTheOnlyLayerThatHasThem) {
  auto pit = tarn_shoulder();
  pit->tests.clear();
  name_layer(add_compression_test(*pit, 12, FractureCharacter::SP, 0), GrainForm::SH);
  pit->tests[0]->fractures[0]->depth.reset();
  EXPECT_EQ(Read(*pit).analysis.concerns.at(0).layer, 3);
  pit->layers[1]->grain_form = GrainForm::SH;
  EXPECT_EQ(Read(*pit).analysis.concerns.at(0).kind, ConcernKind::depth_only)
      << "two of them: nobody can tell";
}

TEST(Concerns, ADepthThatCannotBeToldIsStillAConcern) {
  auto pit = tarn_shoulder();
  pit->tests.clear();
  for (const std::int32_t at : {cm(75), cm(75), cm(30)}) {
    *add_compression_test(*pit, 12, FractureCharacter::SP, 0).depth = nowhere_from(at);
  }
  const Read read(*pit);
  std::size_t unplaced = 0;
  for (const interpretation::Concern& one : read.analysis.concerns) {
    if (one.kind != ConcernKind::depth_only) continue;
    ++unplaced;
    EXPECT_EQ(one.top, -1);
    EXPECT_EQ(one.rank, ConcernRank::sudden);
  }
  EXPECT_EQ(unplaced, 2u) << "@75 twice and @30";
}

TEST(Concerns, TestsWithoutAnyLayerMakeConcernsByDepth) {
  PitT pit;
  add_compression_test(pit, 12, FractureCharacter::SP, cm(40));
  add_extended_column(pit, 13, Crossing::crossed, cm(42));
  add_compression_test(pit, 14, FractureCharacter::SP, cm(60));
  const Read read(pit);
  ASSERT_EQ(read.analysis.concerns.size(), 2u);
  EXPECT_EQ(read.analysis.concerns[0].kind, ConcernKind::depth_only);
  EXPECT_EQ(read.analysis.concerns[0].top, cm(40));
  EXPECT_EQ(read.analysis.concerns[0].bottom, cm(42));
  EXPECT_NE(read.caution(CautionKey::no_layers), nullptr);
}

TEST(Concerns, ALayerTheObserverMarkedIsOneWhateverTheMethodsSay) {
  auto pit = larch_bowl_entry();
  pit->layers[1]->concern = firnbook::PartOfLayer::top;
  const Read read(*pit);
  ASSERT_EQ(read.analysis.concerns.size(), 2u);
  EXPECT_EQ(read.analysis.concerns[1].top, cm(5));
  EXPECT_EQ(read.evidence(1).at(0)->key(), FindingKey::marked_by_observer);
  EXPECT_EQ(read.evidence(1).at(0)->method(), Method::none) << "theirs, not computed";
}

TEST(Concerns, AWeakLayerOnTheSurfaceCarriesNothingYet) {
  PitT pit;
  add_layer(pit, 0, cm(1), HandHardness::Fist, GrainForm::SH, 600);
  add_layer(pit, cm(1), cm(80), HandHardness::FistPlus, GrainForm::RG, 30);
  EXPECT_EQ(Read(pit).find(FindingKey::flag_count)->a(), 4);
  EXPECT_TRUE(Read(pit).analysis.concerns.empty());
  // One centimetre of new snow buries it.
  for (auto& layer : pit.layers) {
    *layer->top = down(layer->top->value_10um() + cm(1));
    *layer->bottom = down(layer->bottom->value_10um() + cm(1));
  }
  add_layer(pit, 0, cm(1), HandHardness::Fist, GrainForm::PP, 100);
  EXPECT_EQ(Read(pit).analysis.concerns.size(), 1u);
}

TEST(Concerns, AStrongGradientAcrossItIsEvidence) {
  auto pit = tarn_shoulder();
  pit->temperatures.clear();
  add_temperature(*pit, cm(60), -900);
  add_temperature(*pit, cm(70), -600);
  add_temperature(*pit, cm(80), -580);
  const Read read(*pit);
  EXPECT_EQ(read.evidence_keys(0).back(), FindingKey::gradient_strong);
  EXPECT_EQ(read.count(FindingKey::gradient_strong), 1u);
}

// --- order

TEST(Order, RanksComeBeforeEaseAndEaseBeforeDepth) {
  PitT pit;
  add_compression_test(pit, 3, FractureCharacter::BRK, cm(10));
  add_compression_test(pit, 2, FractureCharacter::RP, cm(20));
  add_compression_test(pit, 12, FractureCharacter::SP, cm(30));
  add_compression_test(pit, 11, FractureCharacter::SC, cm(40));
  add_compression_test(pit, 11, FractureCharacter::SC, cm(50));
  add_extended_column(pit, 28, Crossing::crossed, cm(60));
  auto& cut = add_compression_test(pit, 0, FractureCharacter::SP, cm(70));
  cut.tap = flatbuffers::nullopt;
  cut.stage = firnbook::LoadStage::isolating;
  const Read read(pit);
  std::vector<std::int32_t> depths;
  for (const interpretation::Concern& one : read.analysis.concerns) depths.push_back(one.top / 1000);
  EXPECT_EQ(depths, (std::vector<std::int32_t>{60, 70, 40, 50, 30, 20, 10}));
}

TEST(Order, MoreFlagsComeFirstAtEqualEase) {
  PitT pit;
  add_layer(pit, 0, cm(30), HandHardness::OneFinger, GrainForm::RG, 30);
  add_layer(pit, cm(30), cm(60), HandHardness::OneFinger, GrainForm::RG, 30);
  add_layer(pit, cm(60), cm(100), HandHardness::Fist, GrainForm::FC, 200);
  add_compression_test(pit, 12, FractureCharacter::SP, cm(30));
  add_compression_test(pit, 12, FractureCharacter::SP, cm(60));
  EXPECT_EQ(Read(pit).analysis.concerns.at(0).top, cm(60));
}

TEST(Order, EaseComesBeforeFlags) {
  PitT pit;
  add_layer(pit, 0, cm(30), HandHardness::OneFinger, GrainForm::RG, 30);
  add_layer(pit, cm(30), cm(60), HandHardness::OneFinger, GrainForm::RG, 30);
  add_layer(pit, cm(60), cm(100), HandHardness::Fist, GrainForm::FC, 200);
  add_compression_test(pit, 11, FractureCharacter::SP, cm(30));
  add_compression_test(pit, 12, FractureCharacter::SP, cm(60));
  EXPECT_EQ(Read(pit).analysis.concerns.at(0).top, cm(30));
}

TEST(Order, ABreakThatSaysLittleDoesNotMakeAConcernLookEasier) {
  PitT pit;
  add_compression_test(pit, 2, FractureCharacter::BRK, cm(30));
  add_compression_test(pit, 15, FractureCharacter::SP, cm(30));
  EXPECT_EQ(Read(pit).analysis.concerns.at(0).ease, 15);
}

TEST(Order, ADeepTapScoreIsNotComparedWithOthers) {
  PitT pit;
  add_compression_test(pit, 3, FractureCharacter::SP, cm(130));
  pit.tests[0]->kind = TestKind::DT;
  add_compression_test(pit, 25, FractureCharacter::SP, cm(40));
  EXPECT_EQ(Read(pit).analysis.concerns.at(0).top, cm(40));
}

// --- what was not loaded

PitT facets_at(std::int32_t depth) {
  return two_layers(depth, HandHardness::Pencil, GrainForm::RG, 50, HandHardness::FourFinger, GrainForm::FC,
                    200);
}

TEST(NotLoaded, NothingDone) {
  EXPECT_EQ(Read(facets_at(cm(60))).not_loaded(),
            (Lines{"60 CT not_done", "60 ECT not_done", "60 PST not_done"}));
}

// A compression and an extended column test without a fracture over facets at this depth.
PitT unbroken_over(std::int32_t depth, std::int32_t column) {
  PitT pit = facets_at(depth);
  for (const TestKind kind : {TestKind::CT, TestKind::ECT}) {
    auto& test = add_test(pit, kind);
    test.outcome = TestOutcome::no_fracture;
    if (column != 0) test.column_depth_10um = column;
  }
  return pit;
}

TEST(NotLoaded, AColumnTappedToTheEndLoadsItsUsefulDepth) {
  // The limit, and the tolerance of 2 cm below it.
  for (const std::int32_t depth : {cm(99), cm(102)}) {
    EXPECT_EQ(Read(unbroken_over(depth, 0)).not_loaded().size(), 1u) << depth << ": only the saw is missing";
  }
  EXPECT_EQ(Read(unbroken_over(cm(122), cm(150))).not_loaded().size(), 1u)
      << "cut deep enough, and still useful";
  EXPECT_EQ(Read(unbroken_over(cm(122) + 1, cm(150))).not_loaded().size(), 3u);
  const Read read(unbroken_over(cm(102) + 1, 0));
  EXPECT_EQ(read.not_loaded(),
            (Lines{"102 CT beyond_useful_depth", "102 ECT beyond_useful_depth", "102 PST not_done"}));
  ASSERT_NE(read.caution(CautionKey::layer_not_loaded), nullptr);
  EXPECT_EQ(read.caution(CautionKey::layer_not_loaded)->a(), cm(102) + 1);
}

TEST(NotLoaded, AColumnLoadsNoDeeperThanItWasCut) {
  PitT pit = facets_at(cm(90));
  add_test(pit, TestKind::CT).outcome = TestOutcome::no_fracture;
  pit.tests[0]->column_depth_10um = cm(70);
  EXPECT_EQ(Read(pit).not_loaded().at(0), "90 CT beyond_useful_depth");
}

TEST(NotLoaded, AFractureDeeperDownLoadedWhatLiesAbove) {
  PitT pit = facets_at(cm(60));
  add_compression_test(pit, 24, FractureCharacter::RP, cm(140));
  add_extended_column(pit, 24, Crossing::not_crossed, cm(100));
  const Read read(pit);
  for (const std::string& line : read.not_loaded()) {
    EXPECT_TRUE(line.rfind("60 ", 0) != 0 || line == "60 PST not_done") << line;
  }
}

TEST(NotLoaded, AFractureHigherUp) {
  PitT pit = facets_at(cm(80));
  add_compression_test(pit, 12, FractureCharacter::SP, cm(40));
  add_extended_column(pit, 12, Crossing::not_crossed, cm(40));
  EXPECT_EQ(Read(pit).not_loaded().at(1), "80 CT unknown") << "nobody wrote whether tapping went on";
  EXPECT_EQ(Read(pit).not_loaded().at(2), "80 ECT unknown");
  pit.tests[0]->taps_given = std::uint8_t{30};
  pit.tests[1]->fractures[0]->crossing = Crossing::crossed;
  const Read read(pit);
  EXPECT_EQ(read.not_loaded().at(1), "80 ECT ended_above");
}

TEST(NotLoaded, ALayerThatWasNamedAsUnbrokenWasLoaded) {
  PitT pit = facets_at(cm(80));
  add_compression_test(pit, 12, FractureCharacter::SP, cm(40));
  pit.tests[0]->unbroken.push_back(down(cm(80)));
  const Read read(pit);
  for (const std::string& line : read.not_loaded()) EXPECT_NE(line.substr(0, 5), "80 CT");
}

TEST(NotLoaded, AColumnThatWasNotValid) {
  PitT pit = facets_at(cm(80));
  add_test(pit, TestKind::ECT).outcome = TestOutcome::not_valid;
  EXPECT_EQ(Read(pit).not_loaded().at(1), "80 ECT not_valid");
}

TEST(NotLoaded, ASawTestsOneLayer) {
  PitT pit = facets_at(cm(80));
  add_saw_test(pit, cm(30), cm(100), SawEnd::End, cm(40));
  const Read read(pit);
  EXPECT_EQ(read.analysis.concerns.at(0).top, cm(40));
  EXPECT_EQ(read.not_loaded().back(), "80 PST other_layer");
}

TEST(NotLoaded, TwoTestsAreNotOne) {
  PitT pit = facets_at(cm(80));
  add_compression_test(pit, 22, FractureCharacter::SP, cm(80));
  EXPECT_NE(Read(pit).caution(CautionKey::layer_reached_by_one_test_only), nullptr);
  add_compression_test(pit, 24, FractureCharacter::SP, cm(80));
  EXPECT_EQ(Read(pit).caution(CautionKey::layer_reached_by_one_test_only), nullptr);
}

// --- suggestions

TEST(Suggestions, WordsOnlyAskForALookAtTheCrystals) {
  PitT pit = facets_at(cm(60));
  pit.layers[1]->grain_form = flatbuffers::nullopt;
  pit.layers[1]->candidates = {GrainForm::FC, GrainForm::DH};
  const Lines lines = Read(pit).suggestions();
  EXPECT_NE(std::find(lines.begin(), lines.end(), "60 look_at_crystals"), lines.end());
}

TEST(Suggestions, ALoneColumnAsksForASecond) {
  PitT pit = facets_at(cm(60));
  add_extended_column(pit, 25, Crossing::not_crossed, cm(60));
  EXPECT_EQ(Read(pit).suggestions().back(), "60 repeat_test");
}

TEST(Suggestions, NothingIsAskedWhereACrackRan) {
  PitT pit = facets_at(cm(60));
  add_extended_column(pit, 12, Crossing::crossed, cm(60));
  for (const std::string& line : Read(pit).suggestions())
    EXPECT_EQ(line.find("60 "), std::string::npos) << line;
}

// --- cautions

TEST(Cautions, TheFullListAlwaysStands) {
  for (const auto& pit : {tarn_shoulder(), larch_bowl_entry(), std::make_unique<PitT>()}) {
    const Read read(*pit);
    Lines standing;
    bool any_specific_after = false;
    for (const firnbook::Caution& one : read.analysis.cautions) {
      if (one.specific() == 0) standing.push_back(firnbook::EnumNameCautionKey(one.key()));
      if (one.specific() == 1 && !standing.empty()) any_specific_after = true;
    }
    EXPECT_EQ(standing, (Lines{"one_pit_is_one_point", "snow_varies", "tests_miss", "pit_is_of_its_time",
                               "defer_to_bulletin_and_people", "absence_is_no_proof"}));
    EXPECT_FALSE(any_specific_after);
  }
}

TEST(Cautions, AnEmptyPitSaysWhatIsMissing) {
  const Read read(PitT{});
  for (const CautionKey key : {CautionKey::signs_not_looked_for, CautionKey::bulletin_not_looked_at,
                               CautionKey::no_tests, CautionKey::no_layers, CautionKey::site_unknown}) {
    EXPECT_NE(read.caution(key), nullptr) << firnbook::EnumNameCautionKey(key);
  }
  EXPECT_EQ(read.caution(CautionKey::bulletin_not_looked_at)->b(), 1);
  EXPECT_TRUE(read.analysis.concerns.empty());
  EXPECT_EQ(read.caution(CautionKey::sign_of_instability_seen), nullptr);
}

TEST(Cautions, SiteThatDiffersPracticeAndHole) {
  auto pit = larch_bowl_entry();
  pit->choice->incline = firnbook::Comparison::less;
  pit->choice->aspect = firnbook::Comparison::same;
  pit->practice = true;
  pit->backfilled = false;
  const Read read(*pit);
  ASSERT_NE(read.caution(CautionKey::site_differs), nullptr);
  EXPECT_EQ(path_of(read.caution(CautionKey::site_differs)->place()), "choice.incline");
  EXPECT_NE(read.caution(CautionKey::practice_pit), nullptr);
  EXPECT_NE(read.caution(CautionKey::not_backfilled), nullptr);
}

TEST(Cautions, ShallowSnowIsLessThanAMetre) {
  auto pit = tarn_shoulder();
  pit->snowpack->hs_10um = cm(100);
  EXPECT_EQ(Read(*pit).caution(CautionKey::shallow_snow), nullptr);
  pit->snowpack->hs_10um = cm(100) - 1;
  ASSERT_NE(Read(*pit).caution(CautionKey::shallow_snow), nullptr);
  EXPECT_EQ(Read(*pit).caution(CautionKey::shallow_snow)->a(), cm(100) - 1);
}

TEST(Cautions, SlidesThatWereRecordedWereLookedFor) {
  PitT pit;
  add_sign(pit, SignKind::whumpf, Answer::no);
  add_sign(pit, SignKind::cracking, Answer::no);
  EXPECT_EQ(Read(pit).caution(CautionKey::signs_not_looked_for)->a(),
            1 << static_cast<int>(SignKind::slides));
  pit.slides.push_back(std::make_unique<firnbook::SlideT>());
  const Read read(pit);
  EXPECT_EQ(read.caution(CautionKey::signs_not_looked_for), nullptr);
  EXPECT_EQ(read.caution(CautionKey::sign_of_instability_seen)->a(),
            static_cast<std::int32_t>(SignKind::slides));
}

}  // namespace
}  // namespace firn::tests
