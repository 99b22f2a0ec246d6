// Each method at each of its thresholds: just below, exactly at, just above, and with what it needs missing.
#include <gtest/gtest.h>

#include "interpretation_help.h"

namespace firn::tests {
namespace {

using firnbook::Answer;
using firnbook::Crossing;
using firnbook::CrossingRule;
using firnbook::LoadStage;
using firnbook::SignKind;
using firnbook::TestOutcome;

struct Said {
  FindingKey key;
  Verdict verdict;
  bool operator==(const Said& other) const { return key == other.key && verdict == other.verdict; }
};
std::ostream& operator<<(std::ostream& out, const Said& said) {
  return out << firnbook::EnumNameFindingKey(said.key) << ", " << firnbook::EnumNameVerdict(said.verdict);
}

// What the method said first.
Said first_of(const Read& read, Method method) {
  for (const Finding& one : read.analysis.findings) {
    if (one.method() == method) return {one.key(), one.verdict()};
  }
  return {FindingKey::none, Verdict::none};
}

// --- field signs

TEST(FieldSigns, KeepSeenNotSeenAndNotLookedForApart) {
  PitT pit;
  add_sign(pit, SignKind::whumpf, Answer::no);
  add_sign(pit, SignKind::slides, Answer::not_looked_for);
  add_sign(pit, SignKind::cracking, Answer::yes);
  pit.signs[2]->length_10um = metres(5);
  const Read read(pit);
  ASSERT_EQ(read.analysis.findings.size(), 3u);
  const Finding& seen = read.analysis.findings[0];
  EXPECT_EQ(seen.key(), FindingKey::sign_seen);
  EXPECT_EQ(seen.verdict(), Verdict::raises);
  EXPECT_EQ(seen.a(), static_cast<std::int32_t>(SignKind::cracking));
  EXPECT_EQ(seen.b(), metres(5));
  EXPECT_EQ(seen.subject().index(), 2);
  EXPECT_EQ(read.analysis.findings[1].key(), FindingKey::sign_not_looked_for);
  EXPECT_EQ(read.analysis.findings[1].verdict(), Verdict::unknown);
  EXPECT_EQ(read.analysis.findings[2].key(), FindingKey::sign_not_seen);
  EXPECT_EQ(read.analysis.findings[2].verdict(), Verdict::fact);
}

TEST(FieldSigns, EveryKindRaisesWhenSeenAlsoOnesOfANewerVersion) {
  for (int kind = 1; kind <= 255; ++kind) {
    PitT pit;
    add_sign(pit, static_cast<SignKind>(kind), Answer::yes);
    EXPECT_EQ(first_of(Read(pit), Method::field_signs), (Said{FindingKey::sign_seen, Verdict::raises}))
        << kind;
  }
}

TEST(FieldSigns, AnAnswerThatIsMissingOrNewIsNotANo) {
  PitT pit;
  pit.signs.push_back(std::make_unique<firnbook::SignT>());
  pit.signs.back()->kind = SignKind::whumpf;
  add_sign(pit, SignKind::cracking, static_cast<Answer>(200));
  const Read read(pit);
  EXPECT_EQ(read.count(FindingKey::sign_answer_unknown), 2u);
  EXPECT_EQ(first_of(read, Method::field_signs).verdict, Verdict::unknown);
}

TEST(FieldSigns, EverySlideRaisesWithItsNumbers) {
  PitT pit;
  pit.slides.push_back(std::make_unique<firnbook::SlideT>());
  pit.slides[0]->size_tenths = std::uint8_t{15};
  pit.slides[0]->trigger = firnbook::Trigger::remote;
  pit.slides.push_back(std::make_unique<firnbook::SlideT>());
  pit.slides[1]->age_min = 100000;
  const Read read(pit);
  ASSERT_EQ(read.count(FindingKey::slide_seen), 2u);
  const Finding& first = read.analysis.findings[0];
  EXPECT_EQ(first.verdict(), Verdict::raises);
  EXPECT_EQ(first.a(), 15);
  EXPECT_EQ(first.b(), -1);
  EXPECT_EQ(first.c(), static_cast<std::int32_t>(firnbook::Trigger::remote));
  EXPECT_EQ(read.analysis.findings[1].b(), 100000);
  EXPECT_EQ(read.analysis.findings[1].verdict(), Verdict::raises);
}

// --- compression test and deep tap test

Said compression(TestKind kind, std::uint8_t character, std::uint8_t quality = 0) {
  PitT pit;
  auto& fracture = add_compression_test(pit, 12, static_cast<FractureCharacter>(character), cm(40));
  if (character == 0) fracture.character = flatbuffers::nullopt;
  if (quality != 0) fracture.quality = static_cast<firnbook::ShearQuality>(quality);
  pit.tests[0]->kind = kind;
  return first_of(Read(pit), kind == TestKind::DT ? Method::deep_tap_test : Method::compression_test);
}

TEST(CompressionTest, GroupsTheCharacters) {
  for (const TestKind kind : {TestKind::CT, TestKind::DT}) {
    for (const FractureCharacter sudden :
         {FractureCharacter::SP, FractureCharacter::SC, FractureCharacter::SDN}) {
      EXPECT_EQ(compression(kind, static_cast<std::uint8_t>(sudden)),
                (Said{FindingKey::ct_sudden, Verdict::raises}));
    }
    for (const FractureCharacter slow :
         {FractureCharacter::RP, FractureCharacter::PC, FractureCharacter::RES}) {
      EXPECT_EQ(compression(kind, static_cast<std::uint8_t>(slow)),
                (Said{FindingKey::ct_resistant, Verdict::not_met}));
    }
    EXPECT_EQ(compression(kind, static_cast<std::uint8_t>(FractureCharacter::BRK)),
              (Said{FindingKey::ct_break, Verdict::says_little}));
  }
}

TEST(CompressionTest, ACharacterThatIsMissingOrNewIsUnknown) {
  EXPECT_EQ(compression(TestKind::CT, 0), (Said{FindingKey::ct_character_unknown, Verdict::unknown}));
  EXPECT_EQ(compression(TestKind::CT, 77), (Said{FindingKey::ct_character_unknown, Verdict::unknown}));
}

TEST(CompressionTest, ACleanShearIsAFactOfItsOwn) {
  for (const std::uint8_t character : {std::uint8_t{0}, static_cast<std::uint8_t>(FractureCharacter::RP)}) {
    PitT pit;
    auto& fracture = add_compression_test(pit, 12, static_cast<FractureCharacter>(character), cm(40));
    if (character == 0) fracture.character = flatbuffers::nullopt;
    fracture.quality = firnbook::ShearQuality::Q1;
    const Read read(pit);
    const Finding* clean = read.find(FindingKey::ct_quality_one);
    ASSERT_NE(clean, nullptr);
    EXPECT_EQ(clean->verdict(), Verdict::raises);
    EXPECT_EQ(read.find(FindingKey::ct_sudden), nullptr) << "the pairing is a habit, not a definition";
    EXPECT_EQ(read.analysis.concerns.at(0).rank, ConcernRank::sudden);
  }
  for (const std::uint8_t quality : {std::uint8_t{2}, std::uint8_t{3}}) {
    EXPECT_EQ(compression(TestKind::CT, 0, quality),
              (Said{FindingKey::ct_character_unknown, Verdict::unknown}));
  }
}

std::int32_t band(std::uint8_t tap, std::uint8_t stage) {
  PitT pit;
  auto& fracture = add_compression_test(pit, tap, FractureCharacter::SP, cm(40));
  if (tap == 0) fracture.tap = flatbuffers::nullopt;
  if (stage != 0) fracture.stage = static_cast<LoadStage>(stage);
  return Read(pit).find(FindingKey::ct_sudden)->b();
}

TEST(CompressionTest, BandsOfTenTaps) {
  const std::int32_t wrist = static_cast<std::int32_t>(LoadStage::wrist);
  EXPECT_EQ(band(1, 0), wrist);
  EXPECT_EQ(band(10, 0), wrist);
  EXPECT_EQ(band(11, 0), wrist + 1);
  EXPECT_EQ(band(20, 0), wrist + 1);
  EXPECT_EQ(band(21, 0), wrist + 2);
  EXPECT_EQ(band(30, 0), wrist + 2);
  EXPECT_EQ(band(31, 0), 0);
  EXPECT_EQ(band(255, 0), 0);
  EXPECT_EQ(band(0, 0), 0);
  EXPECT_EQ(band(0, 1), 1) << "while isolating";
  EXPECT_EQ(band(0, 4), 4);
  EXPECT_EQ(band(23, 2), wrist) << "letter and tap contradict each other: the easier one";
  EXPECT_EQ(band(5, 4), wrist);
  EXPECT_EQ(band(5, 99), wrist);
}

TEST(CompressionTest, NothingBrokeIsAResultAndRaisedNothing) {
  PitT pit;
  add_test(pit, TestKind::CT).outcome = TestOutcome::no_fracture;
  const Read read(pit);
  EXPECT_EQ(first_of(read, Method::compression_test),
            (Said{FindingKey::ct_no_fracture, Verdict::raised_nothing}));
  EXPECT_TRUE(read.analysis.concerns.empty());
}

TEST(CompressionTest, AFractureCountsAlsoWhenTheOutcomeDeniesIt) {
  PitT pit;
  add_compression_test(pit, 12, FractureCharacter::SP, cm(40));
  pit.tests[0]->outcome = TestOutcome::no_fracture;
  const Read read(pit);
  EXPECT_NE(read.find(FindingKey::ct_sudden), nullptr);
  EXPECT_EQ(read.find(FindingKey::ct_no_fracture), nullptr);
}

// --- extended column test

struct Column {
  std::uint8_t tap = 0, crossed = 0, stage = 0, letter = 0, rule = 0;
};

Said extended(const Column& column, const interpretation::Parameters& parameters = {}) {
  PitT pit;
  auto& fracture = add_fracture(add_test(pit, TestKind::ECT), cm(9));
  if (column.tap != 0) fracture.tap = column.tap;
  if (column.crossed != 0) fracture.tap_crossed = column.crossed;
  if (column.stage != 0) fracture.stage = static_cast<LoadStage>(column.stage);
  if (column.letter != 0) fracture.crossing = static_cast<Crossing>(column.letter);
  if (column.rule != 0) pit.tests[0]->crossing_rule = static_cast<CrossingRule>(column.rule);
  return first_of(Read(pit, parameters), Method::extended_column_swiss);
}

constexpr Said kBefore22 = {FindingKey::ect_crossed_before_22, Verdict::raises};
constexpr Said kFrom22 = {FindingKey::ect_crossed_from_22, Verdict::raises};
constexpr Said kNotCrossed = {FindingKey::ect_not_crossed, Verdict::not_met};

TEST(ExtendedColumn, TheTwentySecondTap) {
  EXPECT_EQ(extended({20, 0, 0, 1}), kBefore22);
  EXPECT_EQ(extended({21, 0, 0, 1}), kBefore22);
  EXPECT_EQ(extended({22, 0, 0, 1}), kFrom22);
  EXPECT_EQ(extended({30, 0, 0, 1}), kFrom22);
  EXPECT_EQ(extended({0, 0, 1, 1}), kBefore22) << "ECTPV";
}

TEST(ExtendedColumn, BothTapsDecideUnderTheRuleOfTheScheme) {
  EXPECT_EQ(extended({12, 12}), kBefore22);
  EXPECT_EQ(extended({12, 13}), kBefore22);
  EXPECT_EQ(extended({12, 14}), kNotCrossed);
  EXPECT_EQ(extended({12, 13, 0, 2, 1}), kBefore22) << "N by the writer's narrower rule, P by the scheme's";
  EXPECT_EQ(extended({21, 22}), kBefore22) << "the tap of the first crack names the result";
  EXPECT_EQ(extended({22, 22}), kFrom22);
  interpretation::Parameters same_tap;
  same_tap.ect_taps_to_cross = 0;
  EXPECT_EQ(extended({12, 12}, same_tap), kBefore22);
  EXPECT_EQ(extended({12, 13}, same_tap), kNotCrossed);
}

TEST(ExtendedColumn, TheLetterDecidesWhereTapsAreMissingOrImpossible) {
  EXPECT_EQ(extended({12, 0, 0, 2}), kNotCrossed);
  EXPECT_EQ(extended({12, 0, 0, 2, 2}), kNotCrossed);
  EXPECT_EQ(extended({12, 0, 0, 2, 1}), (Said{FindingKey::ect_not_crossed, Verdict::unknown}))
      << "the scheme's own rule might have called it P";
  EXPECT_EQ(extended({12, 11, 0, 1}), kBefore22) << "crossed before it cracked: a slip, the letter stays";
  EXPECT_EQ(extended({12, 31, 0, 1}), kBefore22);
  EXPECT_EQ(extended({12}), (Said{FindingKey::ect_crossing_unknown, Verdict::unknown}));
  EXPECT_EQ(extended({12, 0, 0, 9}), (Said{FindingKey::ect_crossing_unknown, Verdict::unknown}));
}

TEST(ExtendedColumn, ACrossingWithoutATapKeepsWhatItsLetterTells) {
  EXPECT_EQ(extended({0, 0, 0, 1}), (Said{FindingKey::ect_crossed_tap_unknown, Verdict::raises}));
  EXPECT_EQ(extended({0, 0, 2, 1}), kBefore22);
  EXPECT_EQ(extended({0, 0, 3, 1}), kBefore22);
  EXPECT_EQ(extended({0, 0, 4, 1}), (Said{FindingKey::ect_crossed_tap_unknown, Verdict::raises}));
  EXPECT_EQ(extended({200, 0, 0, 1}), (Said{FindingKey::ect_crossed_tap_unknown, Verdict::raises}));
}

TEST(ExtendedColumn, TheTopTenCentimetresAreLeftOutOnlyWhenAsked) {
  EXPECT_EQ(extended({5, 0, 0, 1}), kBefore22) << "9 cm down";
  interpretation::Parameters parameters;
  parameters.ect_ignored_top_10um = cm(10);
  EXPECT_EQ(extended({5, 0, 0, 1}, parameters), (Said{FindingKey::ect_in_ignored_top, Verdict::fact}));
  parameters.ect_ignored_top_10um = cm(9);
  EXPECT_EQ(extended({5, 0, 0, 1}, parameters), kBefore22) << "exactly at the limit";
  PitT pit;
  add_extended_column(pit, 5, Crossing::crossed, cm(8));
  EXPECT_EQ(Read(pit, parameters).analysis.concerns.size(), 1u) << "left out of a class, not of the concerns";
}

TEST(ExtendedColumn, NoFractureRaisedNothing) {
  PitT pit;
  add_test(pit, TestKind::ECT).outcome = TestOutcome::no_fracture;
  EXPECT_EQ(first_of(Read(pit), Method::extended_column_swiss),
            (Said{FindingKey::ect_no_fracture, Verdict::raised_nothing}));
}

// --- saw test

Said saw(std::int32_t cut, std::int32_t column, std::uint8_t end) {
  PitT pit;
  auto& fracture = add_saw_test(pit, cut, column, static_cast<SawEnd>(end), cm(60));
  if (end == 0) fracture.saw_end = flatbuffers::nullopt;
  if (cut == 0) fracture.cut_10um = flatbuffers::nullopt;
  if (column == 0) pit.tests[0]->column_length_10um = flatbuffers::nullopt;
  return first_of(Read(pit), Method::saw_test);
}

constexpr Said kLikely = {FindingKey::pst_propagation_likely, Verdict::raises};
constexpr Said kSawNotMet = {FindingKey::pst_criterion_not_met, Verdict::not_met};
constexpr Said kSawUnknown = {FindingKey::pst_unknown, Verdict::unknown};

TEST(SawTest, HalfOfTheColumnIsNotBelowHalf) {
  EXPECT_EQ(saw(cm(50) - 1, cm(100), 1), kLikely);
  EXPECT_EQ(saw(cm(50), cm(100), 1), kSawNotMet);
  EXPECT_EQ(saw(cm(50) + 1, cm(100), 1), kSawNotMet);
  EXPECT_EQ(saw(3, 7, 1), kLikely) << "no rounding";
  EXPECT_EQ(saw(4, 7, 1), kSawNotMet);
  EXPECT_EQ(saw(INT32_MAX / 2, INT32_MAX, 1), kLikely);
  EXPECT_EQ(saw(INT32_MAX / 2 + 1, INT32_MAX, 1), kSawNotMet);
}

TEST(SawTest, OtherEndingsAreACriterionNotMet) {
  EXPECT_EQ(saw(cm(30), cm(100), 2), kSawNotMet);
  EXPECT_EQ(saw(cm(30), cm(100), 3), kSawNotMet);
  EXPECT_EQ(saw(0, 0, 3), kSawNotMet) << "an arrest needs no cut to be one";
  EXPECT_EQ(saw(cm(60), cm(100), 0), kSawNotMet) << "whatever the ending, the cut was not short";
}

TEST(SawTest, UnknownPartsStayUnknown) {
  EXPECT_EQ(saw(cm(30), cm(100), 0), kSawUnknown);
  EXPECT_EQ(saw(cm(30), cm(100), 9), kSawUnknown);
  EXPECT_EQ(saw(0, cm(100), 1), kSawUnknown);
  EXPECT_EQ(saw(cm(25), 0, 1), kSawUnknown);
  EXPECT_EQ(saw(-5, cm(100), 1), kSawUnknown);
  EXPECT_EQ(saw(cm(30), INT32_MIN + 1, 1), kSawUnknown);
  EXPECT_EQ(saw(cm(120), cm(100), 1), kSawUnknown) << "longer than its column: a slip";
}

TEST(SawTest, SawnThroughWithoutARunMakesNoConcernByItself) {
  EXPECT_EQ(saw(cm(100), cm(100), 1), (Said{FindingKey::pst_no_fracture, Verdict::not_met}));
  PitT pit;
  add_saw_test(pit, cm(100), cm(100), SawEnd::End, cm(60));
  EXPECT_TRUE(Read(pit).analysis.concerns.empty());
  add_compression_test(pit, 12, FractureCharacter::SP, cm(60));
  const Read read(pit);
  ASSERT_EQ(read.analysis.concerns.size(), 1u);
  EXPECT_EQ(read.analysis.concerns[0].rank, ConcernRank::sudden);
  EXPECT_EQ(read.evidence_keys(0),
            (std::vector<FindingKey>{FindingKey::pst_no_fracture, FindingKey::ct_sudden}))
      << "hard to make run, easy to start: read together";
}

// --- temperature gradient

const Finding gradient(std::int32_t upper, std::int32_t upper_cdegc, std::int32_t lower,
                       std::int32_t lower_cdegc) {
  PitT pit;
  add_temperature(pit, upper, upper_cdegc);
  add_temperature(pit, lower, lower_cdegc);
  const Read read(pit);
  return read.analysis.findings.empty() ? Finding() : read.analysis.findings[0];
}

TEST(TemperatureGradient, TenDegreesPerMetreAreNotAbove) {
  EXPECT_EQ(gradient(0, -400, cm(10), -301).key(), FindingKey::gradient_weak);
  EXPECT_EQ(gradient(0, -400, cm(10), -300).key(), FindingKey::gradient_weak);
  EXPECT_EQ(gradient(0, -400, cm(10), -299).key(), FindingKey::gradient_strong);
  EXPECT_EQ(gradient(0, -300, cm(10), -401).key(), FindingKey::gradient_strong)
      << "colder below counts as well";
  EXPECT_EQ(gradient(0, -400, cm(10) + 1, -300).key(), FindingKey::gradient_weak);
  EXPECT_EQ(gradient(0, -400, cm(10) - 1, -300).key(), FindingKey::gradient_strong);
}

TEST(TemperatureGradient, NumbersAndUnknowns) {
  const Finding strong = gradient(cm(5), -1200, cm(45), -400);
  EXPECT_EQ(strong.a(), 2000);
  EXPECT_EQ(strong.depth_10um(), cm(5));
  EXPECT_EQ(strong.b(), cm(45));
  EXPECT_EQ(strong.verdict(), Verdict::raises);
  EXPECT_EQ(gradient(cm(5), -1200, cm(5), -400).key(), FindingKey::none) << "two readings at one depth";
  EXPECT_EQ(gradient(0, INT32_MIN + 1, 1, INT32_MAX).a(), INT32_MAX) << "clamped, not wrapped";
  PitT pit;
  add_temperature(pit, 0, -1000);
  add_temperature(pit, cm(10), -900);
  pit.temperatures[1]->temperature_cdegc = flatbuffers::nullopt;
  add_temperature(pit, cm(20), -500);
  const Read read(pit);
  ASSERT_EQ(read.count(FindingKey::gradient_strong), 1u) << "a reading without a value is stepped over";
  EXPECT_EQ(read.find(FindingKey::gradient_strong)->a(), 2500);
}

// --- tests without a method

TEST(OtherTests, AreStatedAndTheirFracturesAreEvidence) {
  PitT pit;
  auto& block = add_fracture(add_test(pit, TestKind::RB), cm(52));
  block.step = std::uint8_t{4};
  block.release = firnbook::ReleaseType::WB;
  pit.tests[0]->kind = TestKind::shear_frame;
  add_fracture(add_test(pit, TestKind::other), cm(22)).ease = firnbook::ShearEase::M;
  const Read read(pit);
  EXPECT_EQ(read.count(FindingKey::test_recorded), 2u);
  ASSERT_EQ(read.analysis.concerns.size(), 2u);
  EXPECT_EQ(read.analysis.concerns[0].top, cm(22)) << "equals: the shallower first";
  EXPECT_EQ(read.analysis.concerns[0].rank, ConcernRank::broke);
  EXPECT_EQ(read.analysis.concerns[1].rank, ConcernRank::broke) << "a whole block is a rutschblock's";
  EXPECT_EQ(read.find(FindingKey::test_fracture, cm(52))->a(), 4);
}

TEST(OtherTests, AColumnThatWasNotValidIsNotClassedAndStillBroke) {
  for (const TestKind kind : {TestKind::CT, TestKind::ECT, TestKind::PST, TestKind::RB}) {
    PitT pit;
    auto& fracture = add_extended_column(pit, 4, Crossing::crossed, cm(40));
    fracture.character = FractureCharacter::SP;
    pit.tests[0]->kind = kind;
    pit.tests[0]->outcome = TestOutcome::not_valid;
    pit.tests[0]->not_valid_reason = firnbook::NotValidReason::sank_in;
    const Read read(pit);
    ASSERT_EQ(read.count(FindingKey::test_not_valid), 1u);
    EXPECT_EQ(read.find(FindingKey::test_not_valid)->verdict(), Verdict::unknown);
    EXPECT_EQ(first_of(read, Method::extended_column_swiss).key, FindingKey::none);
    EXPECT_EQ(first_of(read, Method::compression_test).key, FindingKey::none);
    ASSERT_EQ(read.analysis.concerns.size(), 1u);
    EXPECT_EQ(read.analysis.concerns[0].rank, ConcernRank::broke);
    EXPECT_NE(read.caution(CautionKey::test_not_valid), nullptr);
  }
}

TEST(OtherTests, AMissingResultIsNotNothingBroke) {
  PitT pit;
  add_test(pit, TestKind::CT);
  add_test(pit, TestKind::ECT).outcome = TestOutcome::fractured;
  add_test(pit, TestKind::RB).outcome = static_cast<TestOutcome>(99);
  const Read read(pit);
  EXPECT_EQ(read.count(FindingKey::test_recorded), 3u);
  EXPECT_EQ(read.find(FindingKey::test_recorded)->verdict(), Verdict::unknown);
  EXPECT_EQ(read.count(FindingKey::ct_no_fracture) + read.count(FindingKey::ect_no_fracture), 0u);
}

// --- unreliable values

TEST(Unreliable, RaisesAndNeverSettlesThatACriterionIsNotMet) {
  PitT pit;
  doubt(add_compression_test(pit, 12, FractureCharacter::SP, cm(40)), firnbook::Fracture::VT_CHARACTER);
  doubt(add_compression_test(pit, 12, FractureCharacter::RP, cm(80)), firnbook::Fracture::VT_CHARACTER);
  doubt(add_saw_test(pit, cm(30), cm(100), SawEnd::Arr, cm(120)), firnbook::Fracture::VT_SAW_END);
  doubt(add_extended_column(pit, 12, Crossing::not_crossed, cm(140)), firnbook::Fracture::VT_CROSSING);
  const Read read(pit);
  EXPECT_EQ(read.find(FindingKey::ct_sudden)->verdict(), Verdict::raises);
  EXPECT_EQ(read.find(FindingKey::ct_resistant)->verdict(), Verdict::unknown);
  EXPECT_EQ(read.find(FindingKey::pst_criterion_not_met)->verdict(), Verdict::unknown);
  EXPECT_EQ(read.find(FindingKey::ect_not_crossed)->verdict(), Verdict::unknown);
  const firnbook::Caution* caution = read.caution(CautionKey::rests_on_unreliable);
  ASSERT_NE(caution, nullptr);
  EXPECT_EQ(path_of(caution->place()), "tests[0].fractures[0].character");
}

}  // namespace
}  // namespace firn::tests
