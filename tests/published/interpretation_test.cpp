// What published schemes say of published or plainly stated results. Each test names its source and how that
// is known: read (in the source itself), secondary (read in another page), memory (not checked against a
// text), derived (worked out from the rule, no published example was found).
#include <gtest/gtest.h>

#include "interpretation_help.h"

namespace firn::tests {
namespace {

using firnbook::Crossing;
using firnbook::LoadStage;
using firnbook::TestOutcome;

// --- Extended column, operational classes of the Swiss service (SLF).
// https://slf.ch/en/avalanche-bulletin-and-snow-situation/snow-maps/information-about-snow-profiles.html
// (read). Results per code: derived from that page.

FindingKey extended(std::uint8_t tap, Crossing crossing, std::int32_t depth = cm(50)) {
  PitT pit;
  auto& fracture = add_extended_column(pit, tap, crossing, depth);
  if (tap == 0) {
    fracture.tap = flatbuffers::nullopt;
    fracture.stage = LoadStage::isolating;
  }
  const Read read(pit);
  return read.analysis.findings.at(0).key();
}

TEST(SwissExtendedColumn, CrossedBeforeThe22ndTap) {
  EXPECT_EQ(extended(0, Crossing::crossed), FindingKey::ect_crossed_before_22) << "ECTPV";
  for (const std::uint8_t tap : {std::uint8_t{13}, std::uint8_t{14}, std::uint8_t{21}}) {
    EXPECT_EQ(extended(tap, Crossing::crossed), FindingKey::ect_crossed_before_22) << "ECTP" << int{tap};
  }
}

TEST(SwissExtendedColumn, CrossedFromThe22ndTapOn) {
  for (const std::uint8_t tap : {std::uint8_t{22}, std::uint8_t{23}, std::uint8_t{24}}) {
    EXPECT_EQ(extended(tap, Crossing::crossed), FindingKey::ect_crossed_from_22) << "ECTP" << int{tap};
  }
}

TEST(SwissExtendedColumn, NotCrossedOrNoFracture) {
  for (const std::uint8_t tap : {std::uint8_t{10}, std::uint8_t{11}, std::uint8_t{16}}) {
    EXPECT_EQ(extended(tap, Crossing::not_crossed), FindingKey::ect_not_crossed) << "ECTN" << int{tap};
  }
  PitT pit;
  add_test(pit, TestKind::ECT).outcome = TestOutcome::no_fracture;
  EXPECT_EQ(Read(pit).analysis.findings.at(0).key(), FindingKey::ect_no_fracture) << "ECTX";
}

// Same page (read): the crack reaches the other end on the same tap or at most one tap later.
TEST(SwissExtendedColumn, OneTapLaterStillCounts) {
  PitT pit;
  auto& fracture = add_extended_column(pit, 12, Crossing::not_crossed, cm(50));
  fracture.tap_crossed = std::uint8_t{13};
  EXPECT_EQ(Read(pit).analysis.findings.at(0).key(), FindingKey::ect_crossed_before_22);
  fracture.tap_crossed = std::uint8_t{14};
  EXPECT_EQ(Read(pit).analysis.findings.at(0).key(), FindingKey::ect_not_crossed);
}

// One of two versions of that page leaves out fractures in the top 10 cm (read); off unless asked for.
TEST(SwissExtendedColumn, TheTopTenCentimetres) {
  EXPECT_EQ(extended(5, Crossing::crossed, cm(8)), FindingKey::ect_crossed_before_22);
  PitT pit;
  add_extended_column(pit, 5, Crossing::crossed, cm(8));
  interpretation::Parameters parameters;
  parameters.ect_ignored_top_10um = cm(10);
  EXPECT_EQ(Read(pit, parameters).analysis.findings.at(0).key(), FindingKey::ect_in_ignored_top);
}

// Same page (read): several tests in one profile, the poorest decides that scheme's class. Our concerns are
// wider: a column without a fracture takes nothing away from one that was crossed.
TEST(SwissExtendedColumn, AColumnWithoutAFractureTakesNothingAway) {
  PitT pit;
  add_extended_column(pit, 18, Crossing::crossed, cm(50));
  add_test(pit, TestKind::ECT).outcome = TestOutcome::no_fracture;
  const Read read(pit);
  ASSERT_EQ(read.analysis.concerns.size(), 1u);
  EXPECT_EQ(read.analysis.concerns[0].rank, ConcernRank::propagated);
}

// Same page (read): "the rutschblock decides" holds for that scheme's class alone, never for the concerns.
TEST(SwissRutschblock, DecidesNothingForTheConcerns) {
  PitT pit;
  auto& block = add_fracture(add_test(pit, TestKind::RB), cm(50));
  block.step = std::uint8_t{4};
  add_extended_column(pit, 10, Crossing::crossed, cm(50));
  const Read read(pit);
  ASSERT_EQ(read.analysis.concerns.size(), 1u);
  EXPECT_EQ(read.analysis.concerns[0].rank, ConcernRank::propagated);
  EXPECT_EQ(read.evidence_keys(0),
            (std::vector<FindingKey>{FindingKey::ect_crossed_before_22, FindingKey::ect_schemes,
                                     FindingKey::rb_class_two}));
  EXPECT_EQ(read.find(FindingKey::swiss_class_of_pit)->a(), 2) << "that scheme's class alone";
}

// --- Compression test scores. "CTM17 down 30" is the seventh tap from the elbow, 30 cm below the surface:
// Avalanche Canada, glossary (read), https://avalanche.ca/fr/glossary/terms/cte-ctm-cth

TEST(CompressionTestScores, Ctm17IsTheSeventhElbowTap) {
  PitT pit;
  add_compression_test(pit, 17, FractureCharacter::SP, cm(30));
  const Finding sudden = *Read(pit).find(FindingKey::ct_sudden);
  EXPECT_EQ(sudden.b(), static_cast<std::int32_t>(LoadStage::elbow));
  EXPECT_EQ(sudden.a() - 10, 7);
  EXPECT_EQ(sudden.depth_10um(), cm(30));
}

// --- Saw test, below half of the column and to the end: Gauthier and Jamieson 2008 (memory). Recordings:
// public field notes (secondary); what the rule makes of them: derived.

FindingKey saw(std::int32_t cut_cm, std::int32_t column_cm, SawEnd end) {
  PitT pit;
  add_saw_test(pit, cm(cut_cm), cm(column_cm), end, cm(60));
  return Read(pit).analysis.findings.at(0).key();
}

TEST(SawTestExamples, PropagationLikely) {
  EXPECT_EQ(saw(22, 100, SawEnd::End), FindingKey::pst_propagation_likely);
  EXPECT_EQ(saw(30, 100, SawEnd::End), FindingKey::pst_propagation_likely);
  EXPECT_EQ(saw(35, 125, SawEnd::End), FindingKey::pst_propagation_likely);
  EXPECT_EQ(saw(25, 135, SawEnd::End), FindingKey::pst_propagation_likely);
}

TEST(SawTestExamples, CriterionNotMet) {
  EXPECT_EQ(saw(50, 100, SawEnd::End), FindingKey::pst_criterion_not_met) << "exactly half is not below half";
  EXPECT_EQ(saw(30, 100, SawEnd::Arr), FindingKey::pst_criterion_not_met);
  EXPECT_EQ(saw(30, 100, SawEnd::SF), FindingKey::pst_criterion_not_met);
  EXPECT_EQ(saw(70, 100, SawEnd::End), FindingKey::pst_criterion_not_met);
  EXPECT_EQ(saw(90, 100, SawEnd::End), FindingKey::pst_criterion_not_met);
  EXPECT_EQ(saw(100, 100, SawEnd::End), FindingKey::pst_no_fracture);
}

// A public pit (secondary) with PST 22/100 End at 60 cm, CT19 and CT22 in the same layer and ECTX: both are
// reported, and nothing is averaged.
TEST(SawTestExamples, DisagreeingTestsStandSideBySide) {
  PitT pit;
  add_saw_test(pit, cm(22), cm(100), SawEnd::End, cm(60));
  add_compression_test(pit, 19, FractureCharacter::SP, cm(60)).character = flatbuffers::nullopt;
  add_compression_test(pit, 22, FractureCharacter::SP, cm(60)).character = flatbuffers::nullopt;
  add_test(pit, TestKind::ECT).outcome = TestOutcome::no_fracture;
  const Read read(pit);
  EXPECT_EQ(read.count(FindingKey::ect_no_fracture), 1u);
  ASSERT_EQ(read.analysis.concerns.size(), 1u);
  EXPECT_EQ(read.analysis.concerns[0].rank, ConcernRank::propagated);
  EXPECT_EQ(read.evidence_keys(0),
            (std::vector<FindingKey>{FindingKey::pst_propagation_likely, FindingKey::ct_character_unknown,
                                     FindingKey::ct_character_unknown}));
}

// --- Temperature gradient above about 1 degC in 10 cm: avalanche.org (read),
// https://avalanche.org/avalanche-encyclopedia/temperature-gradient/ . Worked numbers: derived.

Finding gradient(std::int32_t upper, std::int32_t upper_cdegc, std::int32_t lower, std::int32_t lower_cdegc) {
  PitT pit;
  add_temperature(pit, upper, upper_cdegc);
  add_temperature(pit, lower, lower_cdegc);
  return Read(pit).analysis.findings.at(0);
}

TEST(GradientRule, WorkedExamples) {
  const Finding strong = gradient(0, -1200, cm(40), -400);
  EXPECT_EQ(strong.key(), FindingKey::gradient_strong);
  EXPECT_EQ(strong.a(), 2000) << "20 degC/m";
  const Finding weak = gradient(cm(60), -500, cm(70), -450);
  EXPECT_EQ(weak.key(), FindingKey::gradient_weak);
  EXPECT_EQ(weak.a(), 500) << "5 degC/m";
  EXPECT_EQ(gradient(0, -500, cm(10), -400).key(), FindingKey::gradient_weak)
      << "exactly 10 degC/m is not above";
}

// --- Yellow flags: Jamieson and Schweizer 2005, Avalanche News 72 (memory). Vectors: derived from those
// thresholds.

struct Flags {
  Verdict size, hardness, form, size_difference, hardness_difference, depth;
  std::int32_t met;
};

void expect_flags(const PitT& pit, const Flags& expected) {
  const Read read(pit);
  EXPECT_EQ(read.find(FindingKey::flag_grain_size)->verdict(), expected.size);
  EXPECT_EQ(read.find(FindingKey::flag_hardness)->verdict(), expected.hardness);
  EXPECT_EQ(read.find(FindingKey::flag_grain_form)->verdict(), expected.form);
  EXPECT_EQ(read.find(FindingKey::flag_size_difference)->verdict(), expected.size_difference);
  EXPECT_EQ(read.find(FindingKey::flag_hardness_difference)->verdict(), expected.hardness_difference);
  EXPECT_EQ(read.find(FindingKey::flag_depth)->verdict(), expected.depth);
  EXPECT_EQ(read.find(FindingKey::flag_count)->a(), expected.met);
  EXPECT_EQ(read.find(FindingKey::flag_count)->b(), 0);
}

// Weak layer FC 1.5 mm, 4F at 45 cm under RG 0.5 mm, 1F+: all six.
TEST(YellowFlagVectors, FacetsUnderAFirmSlab) {
  const PitT pit = two_layers(cm(45), HandHardness::OneFingerPlus, GrainForm::RG, 50,
                              HandHardness::FourFinger, GrainForm::FC, 150);
  constexpr Verdict kMet = Verdict::raises;
  expect_flags(pit, {kMet, kMet, kMet, kMet, kMet, kMet, 6});
  EXPECT_EQ(Read(pit).find(FindingKey::flag_count)->c(), 0) << "the weaker layer lies below";
}

// DF 1.0 mm, 4F over RG 0.8 mm, 4F+ at 12 cm: softness alone.
TEST(YellowFlagVectors, SettlingSnowOnRounds) {
  const PitT pit = two_layers(cm(12), HandHardness::FourFinger, GrainForm::DF, 100,
                              HandHardness::FourFingerPlus, GrainForm::RG, 80);
  constexpr Verdict kNot = Verdict::not_met;
  expect_flags(pit, {kNot, Verdict::raises, kNot, kNot, kNot, kNot, 1});
  EXPECT_TRUE(Read(pit).analysis.concerns.empty());
}

}  // namespace
}  // namespace firn::tests
