// Schemes of structure at their thresholds, and temperature beside crusts.
#include <gtest/gtest.h>

#include "interpretation_help.h"

namespace firn::tests {
namespace {

using interpretation::Parameters;

// A weak layer of facets under a slab, every criterion of the threshold sum met at its very limit: sizes 0.75
// mm apart and 1.25 mm, hardness 5/3 of a step apart and 4/3, 18 cm down.
struct Pair {
  std::int32_t depth = cm(18);
  HandHardness upper = HandHardness::OneFinger, lower = HandHardness::FistPlus;
  GrainForm form = GrainForm::FC;
  std::int32_t upper_size = 50, lower_size = 125;

  PitT pit() const { return two_layers(depth, upper, GrainForm::RG, upper_size, lower, form, lower_size); }
};

struct Masks {
  std::int32_t met = -1, unknown = -1;
  Verdict verdict = Verdict::none;
};
Masks masks(const PitT& pit, FindingKey key, const Parameters& parameters = {}) {
  const Read read(pit, parameters);
  const Finding* one = read.find(key);
  return one == nullptr ? Masks{} : Masks{one->a(), one->b(), one->verdict()};
}
std::int32_t sum(const PitT& pit, const Parameters& parameters = {}) {
  return masks(pit, FindingKey::threshold_sum, parameters).met;
}

TEST(ThresholdSum, EveryCriterionAtItsLimit) {
  EXPECT_EQ(sum(Pair{}.pit()), 0b111111);
  Pair one;
  one.upper_size = 51;
  EXPECT_EQ(sum(one.pit()), 0b111110) << "0.74 mm apart";
  one = Pair{};
  one.lower_size = 124;
  one.upper_size = 20;
  EXPECT_EQ(sum(one.pit()), 0b111101);
  one = Pair{};
  one.upper = HandHardness::OneFingerMinus;
  EXPECT_EQ(sum(one.pit()), 0b111011) << "4/3 apart";
  one = Pair{};
  one.lower = HandHardness::FistToFourFinger;
  one.upper = HandHardness::Pencil;
  EXPECT_EQ(sum(one.pit()), 0b110111) << "1.5";
  one = Pair{};
  one.form = GrainForm::DF;
  EXPECT_EQ(sum(one.pit()), 0b101111);
  for (const auto& [depth, met] : std::vector<std::pair<std::int32_t, bool>>{
           {cm(18) - 1, false}, {cm(18), true}, {cm(94), true}, {cm(94) + 1, false}}) {
    one = Pair{};
    one.depth = depth;
    EXPECT_EQ(sum(one.pit()), met ? 0b111111 : 0b011111) << depth;
  }
}

// 1.7 is read as 5/3 and 1.3 as 4/3, by rounding to one decimal.
TEST(ThresholdSum, HardnessIsComparedInTenths) {
  Parameters parameters;
  parameters.sum_hardness_difference_tenths = 18;
  EXPECT_EQ(sum(Pair{}.pit(), parameters), 0b111011);
  parameters.sum_hardness_difference_tenths = 16;
  EXPECT_EQ(sum(Pair{}.pit(), parameters), 0b111111);
  parameters.sum_hardness_tenths = 12;
  EXPECT_EQ(sum(Pair{}.pit(), parameters), 0b110111);
}

TEST(ThresholdSum, WarnsFromFiveOn) {
  const auto verdict = [](const PitT& pit) { return masks(pit, FindingKey::threshold_sum).verdict; };
  EXPECT_EQ(verdict(Pair{}.pit()), Verdict::raises);
  Pair five;
  five.form = GrainForm::DF;
  EXPECT_EQ(verdict(five.pit()), Verdict::raises);
  Pair four = five;
  four.upper_size = 60;
  EXPECT_EQ(verdict(four.pit()), Verdict::not_met);
}

// The union of all methods: a warning of this one alone is a concern.
TEST(ThresholdSum, AWarningMakesAConcern) {
  Pair five;
  five.form = GrainForm::DF;
  five.depth = cm(90);
  Parameters flags_off;
  flags_off.flag_warning_count = 6;
  const Read read(five.pit(), flags_off);
  ASSERT_EQ(read.analysis.concerns.size(), 1u);
  EXPECT_EQ(read.analysis.concerns[0].rank, ConcernRank::structure);
  EXPECT_EQ(read.analysis.concerns[0].reading, firnbook::ConcernReading::not_tested);
}

TEST(ThresholdSum, WhatIsMissingOrDoubtfulIsUnknown) {
  PitT pit = Pair{}.pit();
  pit.layers[1]->grain_size_10um = flatbuffers::nullopt;
  Masks got = masks(pit, FindingKey::threshold_sum);
  EXPECT_EQ(got.met, 0b111100);
  EXPECT_EQ(got.unknown, 0b000011);
  EXPECT_EQ(got.verdict, Verdict::unknown) << "five may be met";
  pit = Pair{}.pit();
  pit.layers[1]->grain_size_10um = 60;
  doubt(*pit.layers[1], firnbook::Layer::VT_GRAIN_SIZE_10UM);
  got = masks(pit, FindingKey::threshold_sum);
  EXPECT_EQ(got.unknown, 0b000011) << "doubt does not settle that it is not met";
  pit = Pair{}.pit();
  pit.layers[0]->hardness = flatbuffers::nullopt;
  got = masks(pit, FindingKey::threshold_sum);
  EXPECT_EQ(got.unknown, 0b000100);
}

TEST(ThresholdSum, NothingButTheDepthIsNothing) {
  PitT pit =
      two_layers(cm(50), HandHardness::Pencil, GrainForm::RG, 50, HandHardness::Pencil, GrainForm::RG, 50);
  EXPECT_EQ(sum(pit), -1);
  PitT bare;
  add_layer(bare, 0, cm(50));
  add_layer(bare, cm(50), cm(90));
  EXPECT_EQ(Read(bare).find(FindingKey::threshold_sum), nullptr);
  EXPECT_EQ(Read(bare).find(FindingKey::lemons), nullptr);
}

// --- lemons

std::int32_t lemons(const PitT& pit) {
  return masks(pit, FindingKey::lemons).met;
}

TEST(Lemons, EveryCriterionAtItsLimit) {
  PitT pit = two_layers(cm(100), HandHardness::OneFinger, GrainForm::RG, 50, HandHardness::FourFinger,
                        GrainForm::FC, 150);
  pit.layers[1]->bottom = std::make_unique<firnbook::Depth>(down(cm(110)));
  EXPECT_EQ(lemons(pit), 0b11111);
  pit.layers[1]->bottom = std::make_unique<firnbook::Depth>(down(cm(110) + 1));
  EXPECT_EQ(lemons(pit), 0b11101) << "thicker than 10 cm";
  pit.layers[1]->grain_size_10um = 149;
  EXPECT_EQ(lemons(pit), 0b01101);
  pit.layers[0]->hardness = HandHardness::OneFingerMinus;
  EXPECT_EQ(lemons(pit), 0b01001);
  pit.layers[1]->grain_form = GrainForm::DF;
  EXPECT_EQ(lemons(pit), -1) << "depth alone says nothing";
  EXPECT_EQ(lemons(two_layers(cm(100) + 1, HandHardness::OneFinger, GrainForm::RG, 50,
                              HandHardness::FourFinger, GrainForm::FC, 150)),
            0b11100);
}

TEST(Lemons, AreAFactAndMakeNoConcern) {
  PitT pit =
      two_layers(cm(10), HandHardness::Pencil, GrainForm::RG, 50, HandHardness::OneFinger, GrainForm::DF, 60);
  EXPECT_EQ(masks(pit, FindingKey::lemons).verdict, Verdict::fact);
  EXPECT_TRUE(Read(pit).analysis.concerns.empty());
}

TEST(Lemons, WhatIsMissingIsUnknown) {
  PitT pit = two_layers(cm(50), HandHardness::OneFinger, GrainForm::RG, 50, HandHardness::FourFinger,
                        GrainForm::FC, 150);
  pit.layers[1]->bottom = nullptr;
  pit.layers[1]->grain_size_10um = flatbuffers::nullopt;
  pit.layers[0]->hardness = flatbuffers::nullopt;
  const Masks got = masks(pit, FindingKey::lemons);
  EXPECT_EQ(got.met, 0b01001);
  EXPECT_EQ(got.unknown, 0b10110);
}

// --- how a weak layer lies

TEST(WeakLayerBuild, ThinAndNotDeep) {
  const auto build = [](std::int32_t depth, std::int32_t thickness) {
    PitT pit =
        two_layers(depth, HandHardness::OneFinger, GrainForm::RG, 50, HandHardness::Fist, GrainForm::SH, 600);
    pit.layers[1]->bottom = std::make_unique<firnbook::Depth>(down(depth + thickness));
    const Read read(pit);
    return read.find(FindingKey::weak_layer_build)->c();
  };
  EXPECT_EQ(build(cm(100), cm(3) - 1), 3);
  EXPECT_EQ(build(cm(100), cm(3)), 2);
  EXPECT_EQ(build(cm(100) + 1, cm(3) - 1), 1);
  EXPECT_EQ(build(cm(100) + 1, cm(3)), 0);
}

TEST(WeakLayerBuild, StatesTheHardnessAboveAndSkipsWhatIsNotPersistent) {
  const PitT pit =
      two_layers(cm(50), HandHardness::OneFinger, GrainForm::RG, 50, HandHardness::Fist, GrainForm::SH, 600);
  const Read read(pit);
  EXPECT_EQ(read.find(FindingKey::weak_layer_build)->b(), static_cast<std::int32_t>(HandHardness::OneFinger));
  EXPECT_EQ(read.find(FindingKey::weak_layer_build)->verdict(), Verdict::fact);
  const PitT other =
      two_layers(cm(50), HandHardness::OneFinger, GrainForm::RG, 50, HandHardness::Fist, GrainForm::DF, 100);
  EXPECT_EQ(Read(other).find(FindingKey::weak_layer_build), nullptr);
  const PitT above =
      two_layers(cm(50), HandHardness::Fist, GrainForm::SH, 600, HandHardness::OneFinger, GrainForm::RG, 50);
  EXPECT_EQ(Read(above).find(FindingKey::weak_layer_build), nullptr) << "its lower edge";
}

// Of a thin layer both edges are one place, and a scheme that warns at the lower edge alone still counts.
TEST(ThinLayer, TellsStructureOnceUnlessTheOtherEdgeAloneRaises) {
  PitT pit;
  add_layer(pit, 0, cm(60), HandHardness::OneFinger, GrainForm::RG, 50);
  add_layer(pit, cm(60), cm(61), HandHardness::Fist, GrainForm::SH, 600);
  add_layer(pit, cm(61), cm(120), HandHardness::OneFinger, GrainForm::RG, 50);
  const Read read(pit);
  ASSERT_EQ(read.analysis.concerns.size(), 1u);
  EXPECT_EQ(read.count(FindingKey::threshold_sum), 2u);
  std::size_t told = 0;
  for (const Finding* one : read.evidence(0)) told += one->key() == FindingKey::threshold_sum ? 1u : 0u;
  EXPECT_EQ(told, 1u);
  pit.layers[0]->grain_size_10um = flatbuffers::nullopt;
  pit.layers[0]->hardness = flatbuffers::nullopt;
  pit.layers[0]->concern = firnbook::PartOfLayer::bottom;
  const Read lower(pit);
  bool raised = false;
  for (std::size_t c = 0; c < lower.analysis.concerns.size(); ++c) {
    for (const Finding* one : lower.evidence(c)) {
      raised = raised || (one->key() == FindingKey::threshold_sum && one->verdict() == Verdict::raises);
    }
  }
  EXPECT_TRUE(raised);
}

// --- temperature beside crusts

std::size_t near_crust(GrainForm form, std::int32_t top, std::int32_t bottom,
                       std::int32_t lower_cdegc = -450) {
  PitT pit;
  pit.snowpack = std::make_unique<firnbook::SnowpackT>();
  pit.snowpack->hs_10um = cm(200);
  add_layer(pit, top, bottom, HandHardness::Knife, form);
  add_temperature(pit, cm(60), -500);
  add_temperature(pit, cm(70), lower_cdegc);
  return Read(pit).count(FindingKey::gradient_near_crust);
}

TEST(NearCrusts, AGentlePairAcrossACrustSaysLittle) {
  for (const GrainForm crust : {GrainForm::MFcr, GrainForm::IF, GrainForm::IFrc, GrainForm::IFsc}) {
    EXPECT_EQ(near_crust(crust, cm(64), cm(66)), 1u);
  }
  EXPECT_EQ(near_crust(GrainForm::MF, cm(64), cm(66)), 0u);
  EXPECT_EQ(near_crust(GrainForm::MFcr, cm(64), cm(66), -300), 0u) << "steep: that is said already";
  EXPECT_EQ(near_crust(GrainForm::MFcr, cm(50), cm(58)), 1u) << "beside it, within the tolerance";
  EXPECT_EQ(near_crust(GrainForm::MFcr, cm(50), cm(58) - 1), 0u);
  EXPECT_EQ(near_crust(GrainForm::MFcr, cm(72), cm(80)), 1u);
  EXPECT_EQ(near_crust(GrainForm::MFcr, cm(72) + 1, cm(80)), 0u);
}

TEST(NearCrusts, EachPairFindsItsOwnCrust) {
  PitT pit;
  add_layer(pit, 0, cm(10), HandHardness::Fist, GrainForm::PP);
  add_layer(pit, cm(10), cm(12), HandHardness::Knife, GrainForm::MFcr);
  add_layer(pit, cm(12), cm(50), HandHardness::OneFinger, GrainForm::RG);
  add_layer(pit, cm(50), cm(52), HandHardness::Ice, GrainForm::IF);
  for (std::int32_t depth = 0; depth <= 80; depth += 20) add_temperature(pit, cm(depth), -500);
  const Read read(pit);
  EXPECT_EQ(read.count(FindingKey::gradient_near_crust), 2u);
  EXPECT_EQ(read.find(FindingKey::gradient_near_crust, 0)->c(), 1);
  EXPECT_EQ(read.find(FindingKey::gradient_near_crust, cm(40))->c(), 3);
  EXPECT_EQ(read.find(FindingKey::gradient_near_crust)->verdict(), Verdict::says_little);
}

}  // namespace
}  // namespace firn::tests
