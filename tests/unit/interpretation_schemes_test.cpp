// Tests read by other published schemes, at their thresholds, with what they need missing, doubtful or
// hostile.
#include <gtest/gtest.h>

#include "interpretation_help.h"

namespace firn::tests {
namespace {

using firnbook::ConcernReach;
using firnbook::ConcernReading;
using firnbook::Crossing;
using firnbook::CrossingRule;
using firnbook::LoadStage;
using firnbook::ReleaseType;
using firnbook::ShearEase;
using firnbook::TestOutcome;
using interpretation::Parameters;

// Classes of two, three and four as one number: 234. 0 where nothing was said.
int classes(const PitT& pit, const Parameters& parameters = {}) {
  const Read read(pit, parameters);
  const Finding* one = read.find(FindingKey::ect_schemes);
  return one == nullptr ? -1 : one->a() * 100 + one->b() * 10 + one->c();
}
PitT column(std::uint8_t tap, Crossing crossing, std::int32_t depth = cm(50)) {
  PitT pit;
  add_extended_column(pit, tap, crossing, depth);
  return pit;
}
PitT column_by_letter(LoadStage stage, Crossing crossing) {
  PitT pit = column(1, crossing);
  pit.tests[0]->fractures[0]->tap = flatbuffers::nullopt;
  pit.tests[0]->fractures[0]->stage = stage;
  return pit;
}

// --- extended column, other schemes

TEST(Schemes, EveryTap) {
  for (std::uint8_t tap = 1; tap <= 30; ++tap) {
    const int four = tap <= 13 ? 1 : tap <= 22 ? 2 : 3;
    EXPECT_EQ(classes(column(tap, Crossing::crossed)), 100 + (tap <= 21 ? 10 : 20) + four) << int{tap};
    EXPECT_EQ(classes(column(tap, Crossing::not_crossed)), 230 + (tap <= 10 ? 3 : 4)) << int{tap};
  }
}

TEST(Schemes, LimitsAreParameters) {
  Parameters parameters;
  parameters.ect_three_last_tap = 5;
  parameters.ect_four_last_tap_one = 6;
  parameters.ect_four_last_tap_two = 7;
  parameters.ect_four_last_tap_not_crossed = 8;
  EXPECT_EQ(classes(column(5, Crossing::crossed), parameters), 111);
  EXPECT_EQ(classes(column(6, Crossing::crossed), parameters), 121);
  EXPECT_EQ(classes(column(7, Crossing::crossed), parameters), 122);
  EXPECT_EQ(classes(column(8, Crossing::crossed), parameters), 123);
  EXPECT_EQ(classes(column(8, Crossing::not_crossed), parameters), 233);
  EXPECT_EQ(classes(column(9, Crossing::not_crossed), parameters), 234);
}

TEST(Schemes, ALetterTellsTheClassWhereAllItsTapsAgree) {
  EXPECT_EQ(classes(column_by_letter(LoadStage::isolating, Crossing::crossed)), 111);
  EXPECT_EQ(classes(column_by_letter(LoadStage::wrist, Crossing::crossed)), 111);
  EXPECT_EQ(classes(column_by_letter(LoadStage::elbow, Crossing::crossed)), 110) << "13 and 14 lie within";
  EXPECT_EQ(classes(column_by_letter(LoadStage::shoulder, Crossing::crossed)), 100);
  EXPECT_EQ(classes(column_by_letter(LoadStage::wrist, Crossing::not_crossed)), 233);
  EXPECT_EQ(classes(column_by_letter(LoadStage::elbow, Crossing::not_crossed)), 234);
  EXPECT_EQ(classes(column_by_letter(LoadStage::shoulder, Crossing::not_crossed)), 234);
}

TEST(Schemes, WithoutALoadTheCrossingAloneIsRead) {
  PitT pit = column(1, Crossing::crossed);
  pit.tests[0]->fractures[0]->tap = flatbuffers::nullopt;
  EXPECT_EQ(classes(pit), 100);
  pit.tests[0]->fractures[0]->crossing = Crossing::not_crossed;
  EXPECT_EQ(classes(pit), 230);
  EXPECT_EQ(Read(pit).find(FindingKey::ect_schemes)->verdict(), Verdict::unknown) << "of four: 3 or 4";
  pit.tests[0]->fractures[0]->crossing = flatbuffers::nullopt;
  EXPECT_EQ(classes(pit), 0);
  EXPECT_EQ(Read(pit).find(FindingKey::ect_schemes)->verdict(), Verdict::unknown);
}

TEST(Schemes, TapsThatCannotBeAreNoTaps) {
  EXPECT_EQ(classes(column(31, Crossing::crossed)), 100);
  EXPECT_EQ(classes(column(255, Crossing::not_crossed)), 230);
  EXPECT_EQ(classes(column(12, static_cast<Crossing>(77))), 0);
}

TEST(Schemes, AnNThatIsOpenGivesNoClass) {
  PitT narrow = column(12, Crossing::not_crossed);
  narrow.tests[0]->crossing_rule = CrossingRule::same_tap;
  EXPECT_EQ(classes(narrow), 0) << "the next tap might have crossed it";
  narrow.tests[0]->fractures[0]->tap_crossed = std::uint8_t{14};
  EXPECT_EQ(classes(narrow), 234) << "both taps were watched";
  PitT doubtful = column(12, Crossing::not_crossed);
  doubt(*doubtful.tests[0]->fractures[0], firnbook::Fracture::VT_CROSSING);
  EXPECT_EQ(classes(doubtful), 0);
  doubtful.tests[0]->fractures[0]->crossing = Crossing::crossed;
  EXPECT_EQ(classes(doubtful), 111) << "doubt takes no concern away";
}

TEST(Schemes, VerdictsRaiseWhereAnySchemeDoes) {
  const auto verdict = [](const PitT& pit) { return Read(pit).find(FindingKey::ect_schemes)->verdict(); };
  EXPECT_EQ(verdict(column(30, Crossing::crossed)), Verdict::raises);
  EXPECT_EQ(verdict(column(10, Crossing::not_crossed)), Verdict::raises) << "class 3 of 4";
  EXPECT_EQ(verdict(column(11, Crossing::not_crossed)), Verdict::raised_nothing);
  PitT unbroken;
  add_test(unbroken, TestKind::ECT).outcome = TestOutcome::no_fracture;
  EXPECT_EQ(verdict(unbroken), Verdict::raised_nothing);
  EXPECT_EQ(classes(unbroken), 234);
}

TEST(Schemes, OneTapLaterIsPOrNByTheRuleAndSaysSo) {
  for (std::uint8_t later = 0; later < 4; ++later) {
    PitT pit = column(12, Crossing::crossed);
    pit.tests[0]->fractures[0]->tap_crossed = static_cast<std::uint8_t>(12 + later);
    const Read read(pit);
    const Finding* differ = read.find(FindingKey::ect_rules_differ);
    EXPECT_EQ(differ != nullptr, later == 1) << int{later};
    EXPECT_EQ(read.find(FindingKey::ect_schemes)->a(), later <= 1 ? 1 : 2);
  }
}

TEST(Schemes, AColumnThatWasNotValidHasNone) {
  PitT pit = column(12, Crossing::crossed);
  pit.tests[0]->outcome = TestOutcome::not_valid;
  EXPECT_EQ(classes(pit), -1);
}

// --- cracked early without crossing

std::size_t early(const PitT& pit, const Parameters& parameters = {}) {
  return Read(pit, parameters).count(FindingKey::ect_not_crossed_early);
}

TEST(EarlyCrack, BelowTenTapsOnly) {
  EXPECT_EQ(early(column(1, Crossing::not_crossed)), 1u);
  EXPECT_EQ(early(column(9, Crossing::not_crossed)), 1u);
  EXPECT_EQ(early(column(10, Crossing::not_crossed)), 0u);
  EXPECT_EQ(early(column(9, Crossing::crossed)), 0u);
  EXPECT_EQ(early(column_by_letter(LoadStage::wrist, Crossing::not_crossed)), 0u) << "it may be the tenth";
  EXPECT_EQ(early(column_by_letter(LoadStage::isolating, Crossing::not_crossed)), 1u);
  Parameters eleven;
  eleven.ect_early_below_tap = 11;
  EXPECT_EQ(early(column(10, Crossing::not_crossed), eleven), 1u);
  EXPECT_EQ(early(column(11, Crossing::not_crossed), eleven), 0u);
}

TEST(EarlyCrack, RaisesAlsoWhereItIsDoubtful) {
  PitT pit = column(9, Crossing::not_crossed);
  doubt(*pit.tests[0]->fractures[0], firnbook::Fracture::VT_TAP);
  EXPECT_EQ(Read(pit).find(FindingKey::ect_not_crossed_early)->verdict(), Verdict::raises);
}

// --- several columns

TEST(SeveralColumns, OneIsNothingToCompare) {
  EXPECT_EQ(Read(column(12, Crossing::crossed)).find(FindingKey::ect_columns_agree), nullptr);
  PitT pit = column(12, Crossing::crossed);
  add_compression_test(pit, 12, FractureCharacter::SP, cm(50));
  add_test(pit, TestKind::ECT).outcome = TestOutcome::not_valid;
  add_test(pit, TestKind::ECT);
  EXPECT_EQ(Read(pit).count(FindingKey::ect_columns_agree) + Read(pit).count(FindingKey::ect_columns_differ),
            0u);
}

TEST(SeveralColumns, AgreeAndDiffer) {
  PitT pit = column(12, Crossing::crossed);
  add_extended_column(pit, 15, Crossing::crossed, cm(52));
  const Read both(pit);
  const Finding* agree = both.find(FindingKey::ect_columns_agree);
  ASSERT_NE(agree, nullptr);
  EXPECT_EQ(agree->a(), 2);
  EXPECT_EQ(agree->depth_10um(), cm(50));
  EXPECT_EQ(agree->verdict(), Verdict::fact);
  pit.tests[1]->fractures[0]->depth = std::make_unique<firnbook::Depth>(down(cm(52) + 1));
  EXPECT_NE(Read(pit).find(FindingKey::ect_columns_differ), nullptr) << "beyond the tolerance";
  pit.tests[1]->fractures[0]->depth = std::make_unique<firnbook::Depth>(down(cm(50)));
  pit.tests[1]->fractures[0]->crossing = Crossing::not_crossed;
  add_test(pit, TestKind::ECT).outcome = TestOutcome::no_fracture;
  const Read three(pit);
  const Finding* differ = three.find(FindingKey::ect_columns_differ);
  ASSERT_NE(differ, nullptr);
  EXPECT_EQ(differ->a(), 1);
  EXPECT_EQ(differ->b(), 1);
  EXPECT_EQ(differ->c(), 1);
  EXPECT_EQ(three.analysis.concerns.at(0).rank, ConcernRank::propagated) << "nothing is taken away";
}

TEST(SeveralColumns, NoneCrossedAgreesAndUnknownDepthsAreNotCompared) {
  PitT pit = column(12, Crossing::not_crossed);
  add_test(pit, TestKind::ECT).outcome = TestOutcome::no_fracture;
  EXPECT_EQ(Read(pit).find(FindingKey::ect_columns_agree)->c(), 1);
  PitT nowhere;
  for (int i = 0; i < 2; ++i) {
    auto& fracture = add_extended_column(nowhere, 12, Crossing::crossed, cm(50));
    fracture.depth = nullptr;
  }
  EXPECT_EQ(Read(nowhere).find(FindingKey::ect_columns_agree), nullptr);
  PitT unbroken;
  add_test(unbroken, TestKind::ECT).outcome = TestOutcome::no_fracture;
  add_test(unbroken, TestKind::ECT).outcome = TestOutcome::no_fracture;
  EXPECT_EQ(Read(unbroken).find(FindingKey::ect_columns_agree)->c(), 2);
}

TEST(SeveralColumns, ALongColumnThatCrossesTooIsARedFlag) {
  PitT pit = column(12, Crossing::crossed);
  add_extended_column(pit, 15, Crossing::crossed, cm(50));
  pit.tests[1]->column_width_10um = cm(200) - 1;
  EXPECT_EQ(Read(pit).find(FindingKey::ect_long_column_crossed), nullptr);
  pit.tests[1]->column_width_10um = cm(200);
  const Read read(pit);
  ASSERT_NE(read.find(FindingKey::ect_long_column_crossed), nullptr);
  EXPECT_EQ(read.find(FindingKey::ect_long_column_crossed)->verdict(), Verdict::raises);
  EXPECT_EQ(read.find(FindingKey::ect_long_column_crossed)->a(), cm(200));
  pit.tests[1]->fractures[0]->crossing = Crossing::not_crossed;
  EXPECT_EQ(Read(pit).find(FindingKey::ect_long_column_crossed), nullptr) << "no clear meaning";
  pit.tests[1]->fractures[0]->crossing = Crossing::crossed;
  pit.tests[0]->fractures[0]->crossing = Crossing::not_crossed;
  EXPECT_EQ(Read(pit).find(FindingKey::ect_long_column_crossed), nullptr) << "the usual one did not cross";
}

// --- deep tap test, shear quality, shear tests

TEST(DeepTap, IsAMethodOfItsOwnAndItsScoreNoEase) {
  PitT pit;
  add_compression_test(pit, 5, FractureCharacter::SC, cm(140));
  pit.tests[0]->kind = TestKind::DT;
  const Read read(pit);
  EXPECT_EQ(read.find(FindingKey::ct_sudden)->method(), Method::deep_tap_test);
  EXPECT_EQ(read.analysis.concerns.at(0).ease, interpretation::kNoEase);
  add_test(pit, TestKind::DT).outcome = TestOutcome::no_fracture;
  EXPECT_EQ(Read(pit).find(FindingKey::ct_no_fracture)->method(), Method::deep_tap_test);
}

TEST(ShearQuality, IsReadWhereItBelongs) {
  for (const TestKind kind : {TestKind::CT, TestKind::DT, TestKind::RB, TestKind::ST, TestKind::hand_shear}) {
    for (const std::uint8_t quality : {std::uint8_t{1}, std::uint8_t{2}, std::uint8_t{3}, std::uint8_t{9}}) {
      PitT pit;
      add_fracture(add_test(pit, kind), cm(40)).quality = static_cast<firnbook::ShearQuality>(quality);
      const Read read(pit);
      EXPECT_EQ(read.count(FindingKey::ct_quality_one), quality == 1 ? 1u : 0u);
      EXPECT_EQ(read.count(FindingKey::shear_quality_other), quality == 2 || quality == 3 ? 1u : 0u);
    }
  }
  for (const TestKind kind : {TestKind::ECT, TestKind::PST, TestKind::shear_frame}) {
    PitT pit;
    add_fracture(add_test(pit, kind), cm(40)).quality = firnbook::ShearQuality::Q1;
    EXPECT_EQ(Read(pit).find(FindingKey::ct_quality_one), nullptr);
  }
}

TEST(ShearQuality, DoubtSettlesNothing) {
  PitT pit;
  auto& fracture = add_compression_test(pit, 12, FractureCharacter::RP, cm(40));
  fracture.quality = firnbook::ShearQuality::Q2;
  EXPECT_EQ(Read(pit).find(FindingKey::shear_quality_other)->verdict(), Verdict::not_met);
  doubt(fracture, firnbook::Fracture::VT_QUALITY);
  EXPECT_EQ(Read(pit).find(FindingKey::shear_quality_other)->verdict(), Verdict::unknown);
  fracture.quality = firnbook::ShearQuality::Q1;
  EXPECT_EQ(Read(pit).find(FindingKey::ct_quality_one)->verdict(), Verdict::raises);
}

TEST(ShearTests, TellWhereAndNothingElse) {
  for (const TestKind kind : {TestKind::ST, TestKind::hand_shear}) {
    PitT pit;
    add_fracture(add_test(pit, kind), cm(22)).ease = ShearEase::V;
    add_test(pit, kind).outcome = TestOutcome::no_fracture;
    add_test(pit, kind);
    const Read read(pit);
    const Finding* located = read.find(FindingKey::shear_located);
    ASSERT_NE(located, nullptr);
    EXPECT_EQ(located->verdict(), Verdict::fact);
    EXPECT_EQ(located->a(), static_cast<std::int32_t>(ShearEase::V));
    EXPECT_EQ(located->c(), static_cast<std::int32_t>(kind));
    EXPECT_EQ(read.count(FindingKey::test_recorded), 2u) << "nothing broke, and no result";
    ASSERT_EQ(read.analysis.concerns.size(), 1u);
    EXPECT_EQ(read.analysis.concerns[0].rank, ConcernRank::broke);
  }
}

// --- rutschblock

PitT block(std::uint8_t step, std::uint8_t release, std::int32_t depth = cm(50)) {
  PitT pit;
  auto& fracture = add_fracture(add_test(pit, TestKind::RB), depth);
  fracture.step = step;
  if (release != 0) fracture.release = static_cast<ReleaseType>(release);
  return pit;
}
FindingKey block_key(const PitT& pit) {
  return Read(pit).analysis.findings.at(0).key();
}

TEST(Rutschblock, EveryStepAndRelease) {
  constexpr FindingKey kOne = FindingKey::rb_class_one;
  constexpr FindingKey kTwo = FindingKey::rb_class_two;
  constexpr FindingKey kThree = FindingKey::rb_class_three;
  constexpr FindingKey kUnknown = FindingKey::rb_class_unknown;
  const FindingKey expected[][5] = {{kUnknown, kUnknown, kUnknown, kUnknown, kUnknown},  // step 0
                                    {kOne, kOne, kOne, kOne, kOne},
                                    {kOne, kOne, kOne, kOne, kOne},
                                    {kUnknown, kOne, kTwo, kTwo, kUnknown},
                                    {kTwo, kTwo, kTwo, kTwo, kTwo},
                                    {kUnknown, kTwo, kThree, kThree, kUnknown},
                                    {kThree, kThree, kThree, kThree, kThree},
                                    {kUnknown, kUnknown, kUnknown, kUnknown, kUnknown}};
  for (std::uint8_t step = 0; step < 8; ++step) {
    for (std::uint8_t release = 0; release < 5; ++release) {
      EXPECT_EQ(block_key(block(step, release)), expected[step][release]) << int{step} << " " << int{release};
    }
  }
}

TEST(Rutschblock, VerdictsRaiseWhereEveryClassItMayBeDoes) {
  const auto verdict = [](const PitT& pit) { return Read(pit).analysis.findings.at(0).verdict(); };
  EXPECT_EQ(verdict(block(2, 3)), Verdict::raises);
  EXPECT_EQ(verdict(block(3, 0)), Verdict::raises) << "the first or the second class";
  EXPECT_EQ(verdict(block(4, 0)), Verdict::raises);
  EXPECT_EQ(verdict(block(5, 1)), Verdict::raises);
  EXPECT_EQ(verdict(block(5, 0)), Verdict::unknown);
  EXPECT_EQ(verdict(block(5, 2)), Verdict::raised_nothing);
  EXPECT_EQ(verdict(block(6, 0)), Verdict::raised_nothing);
  EXPECT_EQ(verdict(block(0, 0)), Verdict::unknown);
  PitT doubtful = block(6, 0);
  doubt(*doubtful.tests[0]->fractures[0], firnbook::Fracture::VT_STEP);
  EXPECT_EQ(verdict(doubtful), Verdict::unknown);
  doubtful = block(5, 2);
  doubt(*doubtful.tests[0]->fractures[0], firnbook::Fracture::VT_RELEASE);
  EXPECT_EQ(verdict(doubtful), Verdict::unknown);
  PitT unbroken;
  add_test(unbroken, TestKind::RB).outcome = TestOutcome::no_fracture;
  EXPECT_EQ(block_key(unbroken), FindingKey::rb_no_fracture);
  EXPECT_EQ(verdict(unbroken), Verdict::raised_nothing);
}

TEST(Rutschblock, AGentleSlopeSettlesNothing) {
  for (const int slope : {19, 20, 29, 30, 45}) {
    PitT pit = block(6, 0);
    pit.tests[0]->slope_deg = static_cast<std::uint8_t>(slope);
    add_test(pit, TestKind::RB).outcome = TestOutcome::no_fracture;
    pit.tests[1]->slope_deg = static_cast<std::uint8_t>(slope);
    const Read read(pit);
    EXPECT_EQ(read.count(FindingKey::rb_slope_gentle), slope < 30 ? 2u : 0u) << slope;
    const Verdict expected = slope < 30 ? Verdict::unknown : Verdict::raised_nothing;
    EXPECT_EQ(read.find(FindingKey::rb_class_three)->verdict(), expected) << slope;
    EXPECT_EQ(read.find(FindingKey::rb_no_fracture)->verdict(), expected) << slope;
  }
  PitT site = block(4, 1);
  site.site = std::make_unique<firnbook::SiteT>();
  site.site->slope_deg = std::uint8_t{25};
  const Read read(site);
  ASSERT_NE(read.find(FindingKey::rb_slope_gentle), nullptr) << "the pit's slope where the test has none";
  EXPECT_EQ(read.find(FindingKey::rb_slope_gentle)->a(), 25);
  EXPECT_EQ(read.find(FindingKey::rb_slope_gentle)->b(), 30);
  EXPECT_EQ(read.find(FindingKey::rb_slope_gentle)->c(), 20);
  EXPECT_EQ(read.find(FindingKey::rb_class_two)->verdict(), Verdict::raises) << "what broke still broke";
}

TEST(Rutschblock, LoadsFromBelowTheSkisToAMetreDeeper) {
  for (const auto& [depth, outside] : std::vector<std::pair<std::int32_t, bool>>{
           {cm(20), true}, {cm(20) + 1, false}, {cm(120), false}, {cm(120) + 1, true}}) {
    PitT pit = block(4, 1, depth);
    pit.surface = std::make_unique<firnbook::SurfaceT>();
    pit.surface->penetration_ski_10um = cm(20);
    EXPECT_EQ(Read(pit).count(FindingKey::rb_outside_depth), outside ? 1u : 0u) << depth;
    EXPECT_EQ(Read(pit).analysis.concerns.size(), 1u);
    doubt(*pit.surface, firnbook::Surface::VT_PENETRATION_SKI_10UM);
    EXPECT_EQ(Read(pit).count(FindingKey::rb_outside_depth), 0u) << "doubtful: nobody can tell";
  }
  PitT hostile = block(4, 1, INT32_MAX);
  hostile.surface = std::make_unique<firnbook::SurfaceT>();
  hostile.surface->penetration_ski_10um = INT32_MAX;
  EXPECT_EQ(Read(hostile).count(FindingKey::rb_outside_depth), 1u);
}

// --- which test decides

std::string decided(const PitT& pit, const Parameters& parameters = {}) {
  const Read read(pit, parameters);
  const Finding* one = read.find(FindingKey::swiss_class_of_pit);
  if (one == nullptr) return "";
  return std::to_string(one->a()) + firnbook::EnumNameTestKind(static_cast<TestKind>(one->b())) +
         std::to_string(one->c());
}

TEST(SwissPrecedence, TheRutschblockDecidesThenThePoorest) {
  PitT pit = block(6, 1);
  EXPECT_EQ(decided(pit), "") << "one test has nothing to decide against";
  add_extended_column(pit, 5, Crossing::crossed, cm(50));
  EXPECT_EQ(decided(pit), "3RB1");
  add_fracture(add_test(pit, TestKind::RB), cm(30)).step = std::uint8_t{4};
  EXPECT_EQ(decided(pit), "2RB2");
  EXPECT_EQ(Read(pit).analysis.concerns.at(0).rank, ConcernRank::propagated) << "that scheme's class alone";
}

TEST(SwissPrecedence, AClassThatIsOpenDecidesNothingUnlessThePoorestIsKnown) {
  PitT pit = block(5, 0);
  add_test(pit, TestKind::RB).outcome = TestOutcome::no_fracture;
  EXPECT_EQ(decided(pit), "") << "the first may be the second class";
  add_fracture(add_test(pit, TestKind::RB), cm(30)).step = std::uint8_t{2};
  EXPECT_EQ(decided(pit), "1RB3") << "nothing is poorer";
  PitT columns = column(12, Crossing::not_crossed);
  add_extended_column(columns, 24, Crossing::crossed, cm(50));
  EXPECT_EQ(decided(columns), "2ECT2");
  columns.tests[1]->fractures[0]->tap = flatbuffers::nullopt;
  EXPECT_EQ(decided(columns), "") << "crossed, and on which tap nobody knows";
}

TEST(SwissPrecedence, WhatLiesInTheIgnoredTopHasNoClass) {
  Parameters top;
  top.ect_ignored_top_10um = cm(10);
  PitT pit = column(5, Crossing::crossed, cm(8));
  add_extended_column(pit, 24, Crossing::crossed, cm(50));
  EXPECT_EQ(decided(pit), "1ECT2");
  EXPECT_EQ(decided(pit, top), "") << "one test is left";
  add_test(pit, TestKind::ECT).outcome = TestOutcome::no_fracture;
  EXPECT_EQ(decided(pit, top), "2ECT2");
  pit.tests[2]->outcome = TestOutcome::not_valid;
  EXPECT_EQ(decided(pit, top), "");
}

// --- saw test, how the column was cut

TEST(SawColumn, EndsAndLengthAreStatedWhereTheyMatter) {
  PitT pit;
  add_saw_test(pit, cm(30), cm(100), SawEnd::End, cm(60));
  EXPECT_EQ(
      Read(pit).count(FindingKey::pst_ends_slope_normal) + Read(pit).count(FindingKey::pst_length_off_rule),
      0u);
  pit.tests[0]->column_ends = firnbook::ColumnEnds::vertical;
  EXPECT_EQ(Read(pit).find(FindingKey::pst_ends_slope_normal), nullptr);
  pit.tests[0]->column_ends = firnbook::ColumnEnds::slope_normal;
  EXPECT_EQ(Read(pit).find(FindingKey::pst_ends_slope_normal)->verdict(), Verdict::fact);
  const auto off = [](std::int32_t length, std::int32_t depth) {
    PitT one;
    add_saw_test(one, cm(30), length, SawEnd::End, depth);
    const Read read(one);
    const Finding* finding = read.find(FindingKey::pst_length_off_rule);
    return finding == nullptr ? 0 : finding->b();
  };
  EXPECT_EQ(off(cm(98), cm(60)), 0) << "within the tolerance";
  EXPECT_EQ(off(cm(98) - 1, cm(60)), cm(100));
  EXPECT_EQ(off(cm(102) + 1, cm(100)), cm(100));
  EXPECT_EQ(off(cm(120), cm(120)), 0);
  EXPECT_EQ(off(cm(100), cm(120)), cm(120));
  EXPECT_EQ(off(INT32_MAX, INT32_MAX), 0);
  EXPECT_EQ(off(INT32_MIN, cm(60)), 0);
}

TEST(SawColumn, SaysNothingOfItsOwn) {
  PitT pit;
  add_saw_test(pit, cm(60), cm(60), SawEnd::Arr, cm(40));
  pit.tests[0]->column_ends = firnbook::ColumnEnds::slope_normal;
  EXPECT_TRUE(Read(pit).analysis.concerns.empty()) << "sawn through, and nothing ran";
}

// --- results read together

ConcernReading reading(const PitT& pit) {
  const Read read(pit);
  EXPECT_EQ(read.analysis.concerns.size(), 1u);
  return read.analysis.concerns.empty() ? ConcernReading::none : read.analysis.concerns[0].reading;
}

TEST(ReadTogether, DoesItStartAndDoesItRun) {
  EXPECT_EQ(reading(column(13, Crossing::crossed)), ConcernReading::starts_and_runs);
  EXPECT_EQ(reading(column(20, Crossing::crossed)), ConcernReading::starts_and_runs);
  EXPECT_EQ(reading(column(21, Crossing::crossed)), ConcernReading::runs_hard_to_start);
  EXPECT_EQ(reading(column(13, Crossing::not_crossed)), ConcernReading::started_did_not_run);
  EXPECT_EQ(reading(column(13, static_cast<Crossing>(9))), ConcernReading::starts_run_not_tested);
}

TEST(ReadTogether, ASawAsksAnotherQuestion) {
  PitT pit;
  add_saw_test(pit, cm(22), cm(100), SawEnd::End, cm(60));
  EXPECT_EQ(reading(pit), ConcernReading::runs_start_not_tested);
  add_compression_test(pit, 25, FractureCharacter::RP, cm(60));
  EXPECT_EQ(reading(pit), ConcernReading::runs_hard_to_start);
  add_compression_test(pit, 19, FractureCharacter::RP, cm(60));
  EXPECT_EQ(reading(pit), ConcernReading::starts_and_runs);
  add_extended_column(pit, 25, Crossing::not_crossed, cm(60));
  EXPECT_EQ(reading(pit), ConcernReading::ran_and_did_not);
}

TEST(ReadTogether, WhatSaysLittleOrHasNoSlabTellsNoEase) {
  PitT pit;
  add_compression_test(pit, 6, FractureCharacter::BRK, cm(60));
  EXPECT_EQ(reading(pit), ConcernReading::not_tested);
  PitT deep;
  add_saw_test(deep, cm(22), cm(140), SawEnd::End, cm(140));
  add_compression_test(deep, 5, FractureCharacter::SC, cm(140));
  deep.tests[1]->kind = TestKind::DT;
  EXPECT_EQ(reading(deep), ConcernReading::runs_start_not_tested);
  deep.tests.erase(deep.tests.begin());
  EXPECT_EQ(reading(deep), ConcernReading::starts_run_not_tested);
}

TEST(ReadTogether, HardIsToldForEachTest) {
  const auto with_run = [](PitT pit) {
    add_saw_test(pit, cm(22), cm(100), SawEnd::End, cm(50));
    return reading(pit);
  };
  EXPECT_EQ(with_run(block(5, 1)), ConcernReading::starts_and_runs);
  EXPECT_EQ(with_run(block(6, 1)), ConcernReading::runs_hard_to_start);
  EXPECT_EQ(with_run(block(0, 0)), ConcernReading::starts_and_runs) << "not recorded counts as ordinary";
  for (const auto& [ease, expected] : std::vector<std::pair<ShearEase, ConcernReading>>{
           {ShearEase::M, ConcernReading::starts_and_runs},
           {ShearEase::H, ConcernReading::runs_hard_to_start}}) {
    PitT pit;
    add_fracture(add_test(pit, TestKind::ST), cm(50)).ease = ease;
    EXPECT_EQ(with_run(std::move(pit)), expected);
  }
}

TEST(ReadTogether, ReachOfARider) {
  const auto reach = [](std::int32_t depth) {
    return Read(column(12, Crossing::crossed, depth)).analysis.concerns.at(0).reach;
  };
  EXPECT_EQ(reach(0), ConcernReach::one_rider);
  EXPECT_EQ(reach(cm(100)), ConcernReach::one_rider);
  EXPECT_EQ(reach(cm(100) + 1), ConcernReach::large_load_or_thin_slab);
  PitT nowhere = column(12, Crossing::crossed);
  nowhere.tests[0]->fractures[0]->depth = nullptr;
  EXPECT_EQ(Read(nowhere).analysis.concerns.at(0).reach, ConcernReach::none);
}

}  // namespace
}  // namespace firn::tests
