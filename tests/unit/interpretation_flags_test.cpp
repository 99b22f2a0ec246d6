// Yellow flags at each threshold, with the rule for the weaker side, unknown values and doubtful ones.
#include <gtest/gtest.h>

#include "interpretation_help.h"

namespace firn::tests {
namespace {

using firnbook::Layer;

constexpr std::int32_t kHalfMm = 50;

Verdict flag(const Read& read, FindingKey key) {
  const Finding* finding = read.find(key);
  return finding == nullptr ? Verdict::none : finding->verdict();
}

// A weak layer of FC below a firm slab; every flag can be moved alone.
PitT pair(std::int32_t depth, HandHardness hardness, GrainForm form, std::int32_t size,
          HandHardness slab = HandHardness::Pencil, std::int32_t slab_size = 30) {
  return two_layers(depth, slab, GrainForm::RG, slab_size, hardness, form, size);
}

TEST(YellowFlags, GrainSizeAboveOneMillimetre) {
  EXPECT_EQ(flag(Read(pair(cm(45), HandHardness::Fist, GrainForm::FC, 99)), FindingKey::flag_grain_size),
            Verdict::not_met);
  EXPECT_EQ(flag(Read(pair(cm(45), HandHardness::Fist, GrainForm::FC, 100)), FindingKey::flag_grain_size),
            Verdict::not_met);
  EXPECT_EQ(flag(Read(pair(cm(45), HandHardness::Fist, GrainForm::FC, 101)), FindingKey::flag_grain_size),
            Verdict::raises);
}

TEST(YellowFlags, SofterThanOneFinger) {
  EXPECT_EQ(
      flag(Read(pair(cm(45), HandHardness::OneFingerMinus, GrainForm::FC, 100)), FindingKey::flag_hardness),
      Verdict::raises);
  EXPECT_EQ(flag(Read(pair(cm(45), HandHardness::OneFinger, GrainForm::FC, 100)), FindingKey::flag_hardness),
            Verdict::not_met);
  EXPECT_EQ(
      flag(Read(pair(cm(45), HandHardness::OneFingerPlus, GrainForm::FC, 100)), FindingKey::flag_hardness),
      Verdict::not_met);
}

TEST(YellowFlags, PersistentGrains) {
  for (const GrainForm form :
       {GrainForm::SH, GrainForm::SHxr, GrainForm::FC, GrainForm::FCxr, GrainForm::DH, GrainForm::DHch}) {
    EXPECT_EQ(flag(Read(pair(cm(45), HandHardness::Fist, form, 100)), FindingKey::flag_grain_form),
              Verdict::raises);
  }
  for (const GrainForm form : {GrainForm::PP, GrainForm::DF, GrainForm::RG, GrainForm::RGxf, GrainForm::MFcr,
                               GrainForm::IF, GrainForm::MM}) {
    EXPECT_EQ(flag(Read(pair(cm(45), HandHardness::Fist, form, 100)), FindingKey::flag_grain_form),
              Verdict::not_met);
  }
  for (const int number : {1, 9, 100, 255}) {
    EXPECT_EQ(flag(Read(pair(cm(45), HandHardness::Fist, static_cast<GrainForm>(number), 100)),
                   FindingKey::flag_grain_form),
              Verdict::unknown)
        << number;
  }
}

TEST(YellowFlags, WordsThatCanOnlyMeanPersistentGrainsMeetTheFlag) {
  PitT pit = pair(cm(45), HandHardness::Fist, GrainForm::FC, 100);
  pit.layers[1]->grain_form = flatbuffers::nullopt;
  EXPECT_EQ(flag(Read(pit), FindingKey::flag_grain_form), Verdict::unknown);
  pit.layers[1]->candidates = {GrainForm::FC, GrainForm::DH};
  EXPECT_EQ(flag(Read(pit), FindingKey::flag_grain_form), Verdict::raises);
  pit.layers[1]->candidates = {GrainForm::FC, GrainForm::RG};
  EXPECT_EQ(flag(Read(pit), FindingKey::flag_grain_form), Verdict::unknown) << "words never clear a flag";
  pit.layers[1]->candidates = {GrainForm::PP, GrainForm::DF};
  EXPECT_EQ(flag(Read(pit), FindingKey::flag_grain_form), Verdict::unknown);
}

TEST(YellowFlags, SizeDifferenceAboveHalfAMillimetre) {
  const auto with = [](std::int32_t upper, std::int32_t lower) {
    return flag(Read(pair(cm(45), HandHardness::Fist, GrainForm::FC, lower, HandHardness::Pencil, upper)),
                FindingKey::flag_size_difference);
  };
  EXPECT_EQ(with(100, 100 + kHalfMm - 1), Verdict::not_met);
  EXPECT_EQ(with(100, 100 + kHalfMm), Verdict::not_met);
  EXPECT_EQ(with(100, 100 + kHalfMm + 1), Verdict::raises);
  EXPECT_EQ(with(100 + kHalfMm + 1, 100), Verdict::raises) << "either way round";
  EXPECT_EQ(with(0, 200), Verdict::unknown);
  EXPECT_EQ(with(-3, 200), Verdict::unknown);
  EXPECT_EQ(with(1, INT32_MAX), Verdict::raises);
}

TEST(YellowFlags, HardnessDifferenceAboveOneStep) {
  const auto with = [](HandHardness upper, HandHardness lower) {
    return flag(Read(pair(cm(45), lower, GrainForm::FC, 100, upper)), FindingKey::flag_hardness_difference);
  };
  EXPECT_EQ(with(HandHardness::OneFingerMinus, HandHardness::FourFinger), Verdict::not_met);
  EXPECT_EQ(with(HandHardness::OneFinger, HandHardness::FourFinger), Verdict::not_met) << "exactly one step";
  EXPECT_EQ(with(HandHardness::OneFingerPlus, HandHardness::FourFinger), Verdict::raises);
  EXPECT_EQ(with(static_cast<HandHardness>(37), HandHardness::FourFinger), Verdict::unknown);
}

TEST(YellowFlags, DepthFrom20To85Centimetres) {
  const auto at = [](std::int32_t depth) {
    return flag(Read(pair(depth, HandHardness::Fist, GrainForm::FC, 100)), FindingKey::flag_depth);
  };
  EXPECT_EQ(at(cm(20) - 1), Verdict::not_met);
  EXPECT_EQ(at(cm(20)), Verdict::raises);
  EXPECT_EQ(at(cm(85)), Verdict::raises);
  EXPECT_EQ(at(cm(85) + 1), Verdict::not_met);
}

TEST(YellowFlags, HardnessIsReadWhereTheLayersTouch) {
  PitT pit = pair(cm(45), HandHardness::Fist, GrainForm::FC, 150);
  pit.layers[0]->hardness_bottom = HandHardness::FourFinger;
  pit.layers[1]->hardness_top = HandHardness::OneFinger;
  const Read read(pit);
  EXPECT_EQ(read.find(FindingKey::flag_count)->c(), 1) << "the slab's lower edge is the softer side now";
  EXPECT_EQ(read.find(FindingKey::flag_hardness)->a(), 12);
  EXPECT_EQ(read.find(FindingKey::flag_hardness_difference)->a(), 6);
}

TEST(YellowFlags, AtEqualHardnessTheSideWithMoreFlagsIsTheWeaker) {
  PitT above = two_layers(cm(45), HandHardness::FourFinger, GrainForm::FC, 200, HandHardness::FourFinger,
                          GrainForm::RG, 30);
  EXPECT_EQ(Read(above).find(FindingKey::flag_count)->c(), 1);
  PitT below = two_layers(cm(45), HandHardness::FourFinger, GrainForm::RG, 30, HandHardness::FourFinger,
                          GrainForm::FC, 200);
  EXPECT_EQ(Read(below).find(FindingKey::flag_count)->c(), 0);
  PitT equal = two_layers(cm(45), HandHardness::FourFinger, GrainForm::RG, 30, HandHardness::FourFinger,
                          GrainForm::RG, 30);
  EXPECT_EQ(Read(equal).find(FindingKey::flag_count)->c(), 0) << "the one below";
  above.layers[1]->hardness = flatbuffers::nullopt;
  EXPECT_EQ(Read(above).find(FindingKey::flag_count)->c(), 1) << "one hardness not known";
  EXPECT_EQ(flag(Read(above), FindingKey::flag_hardness_difference), Verdict::unknown);
}

TEST(YellowFlags, CountsMetAndUnknownApart) {
  PitT pit = pair(cm(45), HandHardness::Fist, GrainForm::SH, 600);
  const Finding six = *Read(pit).find(FindingKey::flag_count);
  EXPECT_EQ(six.a(), 6);
  EXPECT_EQ(six.b(), 0);
  EXPECT_EQ(six.verdict(), Verdict::raises);
  pit.layers[0]->grain_size_10um = flatbuffers::nullopt;
  const Finding five = *Read(pit).find(FindingKey::flag_count);
  EXPECT_EQ(five.a(), 5);
  EXPECT_EQ(five.b(), 1);
  EXPECT_EQ(five.verdict(), Verdict::raises);
  pit.layers[1]->grain_form = GrainForm::DF;
  const Finding four = *Read(pit).find(FindingKey::flag_count);
  EXPECT_EQ(four.a(), 4);
  EXPECT_EQ(four.verdict(), Verdict::unknown) << "the unknown one could make five";
  pit.layers[0]->grain_size_10um = 580;
  EXPECT_EQ(Read(pit).find(FindingKey::flag_count)->verdict(), Verdict::not_met);
}

TEST(YellowFlags, NothingObservedIsUnknownNotUnmet) {
  PitT pit;
  add_layer(pit, 0, cm(45));
  add_layer(pit, cm(45), cm(90));
  const Read read(pit);
  const Finding count = *read.find(FindingKey::flag_count);
  EXPECT_EQ(count.a(), 1) << "depth";
  EXPECT_EQ(count.b(), 5);
  EXPECT_EQ(count.verdict(), Verdict::unknown);
}

TEST(YellowFlags, ADoubtfulValueRaisesButClearsNothing) {
  PitT pit = pair(cm(45), HandHardness::Fist, GrainForm::FC, 150);
  doubt(*pit.layers[1], Layer::VT_GRAIN_SIZE_10UM);
  const Read raising(pit);
  EXPECT_EQ(flag(raising, FindingKey::flag_grain_size), Verdict::raises);
  ASSERT_NE(raising.caution(CautionKey::rests_on_unreliable), nullptr);
  EXPECT_EQ(path_of(raising.caution(CautionKey::rests_on_unreliable)->place()), "layers[1].grain_size_mm");
  pit.layers[1]->grain_size_10um = 80;
  pit.layers[0]->grain_size_10um = 70;
  const Read doubted(pit);
  EXPECT_EQ(flag(doubted, FindingKey::flag_grain_size), Verdict::unknown);
  EXPECT_EQ(flag(doubted, FindingKey::flag_size_difference), Verdict::unknown);
  EXPECT_EQ(doubted.find(FindingKey::flag_grain_size)->a(), 80) << "what was observed is still said";
}

TEST(YellowFlags, ADoubtfulHardnessIsNamedInTheFieldThatHoldsIt) {
  PitT pit = pair(cm(45), HandHardness::Fist, GrainForm::FC, 150);
  pit.layers[1]->hardness_top = HandHardness::FourFinger;
  doubt(*pit.layers[1], Layer::VT_HARDNESS);
  EXPECT_EQ(Read(pit).caution(CautionKey::rests_on_unreliable), nullptr) << "another field was used";
  doubt(*pit.layers[1], Layer::VT_HARDNESS_TOP);
  const Read read(pit);
  ASSERT_NE(read.caution(CautionKey::rests_on_unreliable), nullptr);
  EXPECT_EQ(path_of(read.caution(CautionKey::rests_on_unreliable)->place()), "layers[1].hardness_top");
}

TEST(YellowFlags, APersistentLayerRecordedAloneIsReadAlone) {
  PitT pit;
  add_layer(pit, cm(45), cm(46), HandHardness::Fist, GrainForm::SH, 600);
  add_layer(pit, cm(80), cm(90), HandHardness::Fist, GrainForm::RG, 30);
  const Read read(pit);
  ASSERT_EQ(read.count(FindingKey::flag_count), 1u);
  const Finding count = *read.find(FindingKey::flag_count);
  EXPECT_EQ(count.a(), 4);
  EXPECT_EQ(count.b(), 2) << "both differences need a neighbour";
  ASSERT_EQ(read.analysis.concerns.size(), 1u);
  EXPECT_EQ(read.analysis.concerns[0].kind, ConcernKind::layer);
  EXPECT_EQ(read.analysis.concerns[0].top, cm(45));
}

}  // namespace
}  // namespace firn::tests
