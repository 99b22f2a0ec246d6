// Density, load, stress, strength and what rests on them: limits, gaps, doubt and hostile numbers.
#include <gtest/gtest.h>

#include "interpretation/densities.h"
#include "interpretation/mechanics.h"
#include "interpretation_help.h"

namespace firn::tests {
namespace {

using firnbook::Wetness;
using interpretation::Parameters;
using interpretation::Slope;

// A slab of 200 kg/m3 over facets of 250 at 60 cm, both measured, on 38 degrees; ski penetration 20 cm.
PitT slab_on_facets() {
  PitT pit = two_layers(cm(60), HandHardness::Pencil, GrainForm::RG, 50, HandHardness::FourFinger,
                        GrainForm::FC, 150);
  add_density(pit, 0, cm(60), 2000);
  add_density(pit, cm(60), cm(200), 2500);
  pit.surface = std::make_unique<firnbook::SurfaceT>();
  pit.surface->penetration_ski_10um = cm(20);
  return pit;
}
void set_strength(PitT& pit, std::int32_t pascal, std::int32_t top, std::int32_t bottom) {
  auto profile = std::make_unique<firnbook::StrengthProfileT>();
  profile->kind = firnbook::StrengthKind::shear;
  auto reading = std::make_unique<firnbook::StrengthReadingT>();
  reading->top = std::make_unique<firnbook::Depth>(down(top));
  reading->bottom = std::make_unique<firnbook::Depth>(down(bottom));
  reading->strength_pa = pascal;
  profile->readings.push_back(std::move(reading));
  pit.strength.push_back(std::move(profile));
}

// --- density

TEST(DensityEstimate, OnlyForDrySnowWithARelationAndAHardness) {
  const auto estimates = [](const PitT& pit) { return Read(pit).count(FindingKey::density_estimated); };
  PitT pit;
  auto& layer = add_layer(pit, 0, cm(30), HandHardness::FourFinger, GrainForm::DF);
  EXPECT_EQ(estimates(pit), 1u);
  EXPECT_EQ(Read(pit).find(FindingKey::density_estimated)->a(), 1370);
  layer.wetness = Wetness::D;
  EXPECT_EQ(estimates(pit), 1u);
  layer.wetness = Wetness::D_M;
  EXPECT_EQ(estimates(pit), 0u);
  layer.wetness = flatbuffers::nullopt;
  for (const GrainForm none :
       {GrainForm::SH, GrainForm::MF, GrainForm::MFcr, GrainForm::IF, GrainForm::MM, GrainForm::PPhl,
        GrainForm::PPip, GrainForm::PPrm, static_cast<GrainForm>(255)}) {
    layer.grain_form = none;
    EXPECT_EQ(estimates(pit), 0u) << firnbook::EnumNameGrainForm(none);
  }
  layer.grain_form = GrainForm::DFbk;
  EXPECT_EQ(estimates(pit), 1u) << "a form of its class";
  layer.hardness = static_cast<HandHardness>(99);
  EXPECT_EQ(estimates(pit), 0u);
  layer.hardness = HandHardness::Fist;
  doubt(layer, firnbook::Layer::VT_HARDNESS);
  EXPECT_EQ(estimates(pit), 0u);
  layer.unreliable = 0;
  add_density(pit, 0, cm(30), 1500);
  EXPECT_EQ(estimates(pit), 0u) << "measured wins";
}

TEST(DensityEstimate, SubclassesWithARelationOfTheirOwn) {
  const auto of = [](GrainForm form) {
    return interpretation::estimated_density(static_cast<std::uint8_t>(form), 12);
  };
  EXPECT_EQ(of(GrainForm::PPgp), 1200);
  EXPECT_EQ(of(GrainForm::PPsd), 810);
  EXPECT_EQ(of(GrainForm::RGxf), 1330);
  EXPECT_EQ(of(GrainForm::RGwp), 1555);
  EXPECT_EQ(of(GrainForm::FCxr), 1200);
  EXPECT_EQ(of(GrainForm::FCso), 1580);
  EXPECT_EQ(of(GrainForm::DHla), 2100);
  EXPECT_EQ(interpretation::estimated_density(static_cast<std::uint8_t>(GrainForm::PP), 0), 0);
}

TEST(DensityEstimate, AHalfStepLiesBetween) {
  PitT pit;
  auto& layer = add_layer(pit, 0, cm(30));
  layer.grain_form = GrainForm::FC;
  layer.hardness_top = HandHardness::Fist;
  layer.hardness_bottom = HandHardness::OneFinger;
  EXPECT_EQ(Read(pit).find(FindingKey::density_estimated)->a(), 2040);
}

// --- water equivalent and load

TEST(WaterEquivalent, AddsWhatIsKnownAndFillsALittle) {
  PitT pit;
  add_layer(pit, 0, cm(90), HandHardness::Pencil, GrainForm::RG);
  add_layer(pit, cm(90), cm(100), HandHardness::Knife, GrainForm::MFcr);
  add_density(pit, 0, cm(90), 2000);
  const Read read(pit);
  const Finding* water = read.find(FindingKey::water_equivalent);
  ASSERT_NE(water, nullptr) << "a tenth without a density takes the mean";
  EXPECT_EQ(water->a(), 20000);
  EXPECT_EQ(water->b(), 2000);
  EXPECT_EQ(water->c(), 10);
  EXPECT_EQ(water->depth_10um(), cm(100));
  Parameters strict;
  strict.load_unknown_percent = 9;
  EXPECT_EQ(Read(pit, strict).find(FindingKey::water_equivalent), nullptr);
}

TEST(WaterEquivalent, StopsAtAGapAndCountsOverlapsOnce) {
  PitT pit;
  add_layer(pit, 0, cm(40), HandHardness::Pencil, GrainForm::RG);
  add_layer(pit, cm(30), cm(60), HandHardness::Pencil, GrainForm::RG);
  add_layer(pit, cm(70), cm(90), HandHardness::Pencil, GrainForm::RG);
  add_density(pit, 0, cm(100), 1000);
  const Read read(pit);
  EXPECT_EQ(read.find(FindingKey::water_equivalent)->depth_10um(), cm(60));
  EXPECT_EQ(read.find(FindingKey::water_equivalent)->a(), 6000);
  PitT buried;
  add_layer(buried, cm(10), cm(40), HandHardness::Pencil, GrainForm::RG);
  EXPECT_EQ(Read(buried).find(FindingKey::water_equivalent), nullptr) << "nobody knows what lies on top";
}

TEST(WaterEquivalent, DoubtfulOrImpossibleReadingsAreNotUsed) {
  for (const std::int32_t density : {0, 39, 9171, INT32_MAX, INT32_MIN}) {
    PitT pit;
    add_layer(pit, 0, cm(40));
    add_density(pit, 0, cm(40), density);
    EXPECT_EQ(Read(pit).find(FindingKey::water_equivalent), nullptr) << density;
  }
  for (const std::int32_t density : {40, 9170}) {
    PitT pit;
    add_layer(pit, 0, cm(40));
    add_density(pit, 0, cm(40), density);
    EXPECT_NE(Read(pit).find(FindingKey::water_equivalent), nullptr) << density;
    doubt(*pit.densities[0]->readings[0], firnbook::DensityReading::VT_DENSITY_DKGM3);
    EXPECT_EQ(Read(pit).find(FindingKey::water_equivalent), nullptr);
  }
}

TEST(WaterEquivalent, TheReadingNearestAboveTheMiddleOfALayerIsTaken) {
  PitT pit;
  add_layer(pit, 0, cm(40));
  add_density(pit, 0, cm(40), 1000);
  add_density(pit, cm(15), cm(25), 3000);
  add_density(pit, cm(21), cm(25), 4000);
  add_density(pit, cm(16), cm(19), 5000);
  EXPECT_EQ(Read(pit).find(FindingKey::water_equivalent)->b(), 3000);
}

TEST(WaterEquivalent, NotAtRightAnglesToTheSlopeAndNotDeeperThanSnow) {
  PitT tilted;
  add_layer(tilted, 0, cm(40));
  tilted.layers[0]->top = std::make_unique<firnbook::Depth>(slope_normal(0));
  tilted.layers[0]->bottom = std::make_unique<firnbook::Depth>(slope_normal(cm(40)));
  tilted.layers[0]->hardness = HandHardness::Pencil;
  tilted.layers[0]->grain_form = GrainForm::RG;
  EXPECT_EQ(Read(tilted).find(FindingKey::water_equivalent), nullptr);
  EXPECT_EQ(Read(tilted).count(FindingKey::density_estimated), 1u);
  PitT hostile;
  add_layer(hostile, 0, INT32_MAX, HandHardness::Ice, GrainForm::RG);
  EXPECT_EQ(Read(hostile).find(FindingKey::water_equivalent), nullptr);
}

// --- stress, strength, stability

TEST(SlabStress, IsToldForWeakBoundariesOnOneSlope) {
  const Read read(slab_on_facets());
  const Finding* load = read.find(FindingKey::slab_load);
  ASSERT_NE(load, nullptr);
  EXPECT_EQ(load->a(), 1200) << "120 kg/m2";
  EXPECT_EQ(load->c(), 0);
  const Finding* stress = read.find(FindingKey::slab_stress);
  EXPECT_EQ(stress->a(), 5711);
  EXPECT_EQ(stress->b(), 2589) << "155.3 / 0.6";
  EXPECT_EQ(stress->c(), 38);
  Parameters flat;
  flat.index_slope_deg = 30;
  EXPECT_EQ(Read(slab_on_facets(), flat).find(FindingKey::slab_stress)->a(), 5097);
  PitT strong = slab_on_facets();
  strong.layers[1]->grain_form = GrainForm::RG;
  strong.layers[1]->grain_size_10um = 50;
  EXPECT_EQ(Read(strong).find(FindingKey::slab_stress), nullptr);
}

TEST(SlabStress, SlopeNormalDepthsGiveTheSameStress) {
  PitT pit = slab_on_facets();
  // 60 cm vertical are 47.28 cm at right angles to a slope of 38 degrees.
  const std::int32_t normal = 47281;
  pit.layers[0]->top = std::make_unique<firnbook::Depth>(slope_normal(0));
  pit.layers[0]->bottom = std::make_unique<firnbook::Depth>(slope_normal(normal));
  pit.layers[1]->top = std::make_unique<firnbook::Depth>(slope_normal(normal));
  pit.layers[1]->bottom = std::make_unique<firnbook::Depth>(slope_normal(cm(150)));
  pit.densities.clear();
  for (const auto& [top, bottom, density] : std::vector<std::tuple<std::int32_t, std::int32_t, std::int32_t>>{
           {0, normal, 2000}, {normal, cm(150), 2500}}) {
    add_density(pit, top, bottom, density);
    auto& reading = *pit.densities.back()->readings.back();
    reading.top = std::make_unique<firnbook::Depth>(slope_normal(top));
    reading.bottom = std::make_unique<firnbook::Depth>(slope_normal(bottom));
  }
  const Read read(pit);
  ASSERT_NE(read.find(FindingKey::slab_stress), nullptr);
  EXPECT_NEAR(read.find(FindingKey::slab_stress)->a(), 5711, 2);
  EXPECT_NEAR(read.find(FindingKey::slab_stress)->b(), 2589, 2);
}

TEST(Strength, MeasuredWinsAndSurfaceHoarHasNoEstimate) {
  PitT pit = slab_on_facets();
  EXPECT_EQ(Read(pit).find(FindingKey::strength_estimated)->b(), 2500);
  EXPECT_NEAR(Read(pit).find(FindingKey::strength_estimated)->a(), 11920, 10);
  set_strength(pit, 1500, cm(60), cm(61));
  EXPECT_EQ(Read(pit).find(FindingKey::strength_estimated)->a(), 15000);
  EXPECT_EQ(Read(pit).find(FindingKey::strength_estimated)->b(), 0);
  pit.layers[1]->grain_form = GrainForm::SH;
  EXPECT_EQ(Read(pit).find(FindingKey::strength_estimated)->a(), 15000);
  pit.strength.clear();
  EXPECT_EQ(Read(pit).find(FindingKey::strength_estimated), nullptr);
}

TEST(Strength, AMeasurementElsewhereOrOfAnotherKindIsNotUsed) {
  for (int wrong = 0; wrong < 5; ++wrong) {
    PitT pit = slab_on_facets();
    set_strength(pit, 1500, cm(60), cm(61));
    auto& reading = *pit.strength[0]->readings[0];
    if (wrong == 1) pit.strength[0]->kind = firnbook::StrengthKind::tensile;
    if (wrong == 2)
      reading.top = std::make_unique<firnbook::Depth>(down(cm(62) + 1)), reading.bottom = nullptr;
    if (wrong == 3) reading.unreliable = 1;
    if (wrong == 4) reading.strength_pa = -5;
    EXPECT_EQ(Read(pit).find(FindingKey::strength_estimated)->b() == 0, wrong == 0) << wrong;
  }
}

TEST(SkierStability, BandsAndTheirLimits) {
  // tau 571.1, skier from 40 cm 388.3: the strength at Sk 1 is 959.4 Pa, at 1.5 it is 1439.2 Pa.
  const auto key = [](std::int32_t pascal) {
    PitT pit = slab_on_facets();
    set_strength(pit, pascal, cm(60), cm(61));
    const Read read(pit);
    for (const Finding& one : read.analysis.findings) {
      if (one.method() == Method::skier_stability) return std::make_pair(one.key(), one.verdict());
    }
    return std::make_pair(FindingKey::none, Verdict::none);
  };
  EXPECT_EQ(key(958), std::make_pair(FindingKey::skier_index_low, Verdict::raises));
  EXPECT_EQ(key(960), std::make_pair(FindingKey::skier_index_between, Verdict::raises));
  EXPECT_EQ(key(1439), std::make_pair(FindingKey::skier_index_between, Verdict::raises));
  EXPECT_EQ(key(1441), std::make_pair(FindingKey::skier_index_high, Verdict::not_met));
}

TEST(SkierStability, PenetrationMeasuredEstimatedOrUnknown) {
  PitT pit = slab_on_facets();
  const std::int32_t measured = Read(pit).find(FindingKey::skier_index_between) != nullptr
                                    ? Read(pit).find(FindingKey::skier_index_between)->c()
                                    : -1;
  EXPECT_GT(measured, 1000);
  pit.surface = nullptr;  // 34.6 / 200 = 17.3 cm
  const Read estimated(pit);
  ASSERT_NE(estimated.find(FindingKey::skier_index_between), nullptr);
  EXPECT_GT(estimated.find(FindingKey::skier_index_between)->c(), measured)
      << "less deep: less of a skier's load";
  PitT shallow = two_layers(cm(20), HandHardness::Pencil, GrainForm::RG, 50, HandHardness::FourFinger,
                            GrainForm::FC, 150);
  shallow.layers[1]->bottom = std::make_unique<firnbook::Depth>(down(cm(25)));
  add_density(shallow, 0, cm(20), 2000);
  add_density(shallow, cm(20), cm(25), 3500);
  EXPECT_NE(Read(shallow).find(FindingKey::skier_index_no_penetration), nullptr);
  pit = slab_on_facets();
  pit.surface->penetration_ski_10um = cm(60);
  ASSERT_NE(Read(pit).find(FindingKey::skier_index_in_track), nullptr) << "no number above the skis";
  EXPECT_EQ(Read(pit).find(FindingKey::skier_index_in_track)->c(), cm(60));
  doubt(*pit.surface, firnbook::Surface::VT_PENETRATION_SKI_10UM);
  EXPECT_EQ(Read(pit).find(FindingKey::skier_index_in_track), nullptr) << "doubtful: estimated instead";
}

TEST(SkierStability, AnEstimateOfAnEstimateRaisesNothing) {
  PitT pit = slab_on_facets();
  pit.densities[0]->readings.resize(1);
  if (pit.densities.size() > 1) pit.densities.resize(1);
  const Read read(pit);
  for (const Finding& one : read.analysis.findings) {
    if (one.method() != Method::skier_stability) continue;
    EXPECT_EQ(one.verdict(), Verdict::says_little);
  }
}

TEST(SkierStability, ASlabThatStandsShowsThatTheStrengthIsOff) {
  PitT pit = slab_on_facets();
  set_strength(pit, 500, cm(60), cm(61));
  EXPECT_NE(Read(pit).find(FindingKey::skier_index_low), nullptr) << "the pit's slope is not known";
  pit.site = std::make_unique<firnbook::SiteT>();
  pit.site->slope_deg = std::uint8_t{38};
  const Read read(pit);
  ASSERT_NE(read.find(FindingKey::skier_index_slab_alone), nullptr);
  EXPECT_EQ(read.find(FindingKey::skier_index_slab_alone)->verdict(), Verdict::says_little);
  EXPECT_EQ(read.find(FindingKey::skier_index_low), nullptr);
  pit.site->slope_deg = std::uint8_t{20};
  EXPECT_NE(Read(pit).find(FindingKey::skier_index_low), nullptr) << "on 20 degrees it may stand";
}

// One more measurement moves an index: it is evidence where there is a concern, and makes and unmakes none.
TEST(SkierStability, IsEvidenceAndMakesNoConcern) {
  PitT pit = slab_on_facets();
  set_strength(pit, 500, cm(60), cm(61));
  const Read weak(pit);
  ASSERT_EQ(weak.analysis.concerns.size(), 1u);
  bool told = false;
  for (const Finding* one : weak.evidence(0)) told = told || one->key() == FindingKey::skier_index_low;
  EXPECT_TRUE(told);
  pit.layers[1]->hardness = HandHardness::Pencil;
  pit.layers[1]->grain_size_10um = 50;
  const Read firm(pit);
  EXPECT_NE(firm.find(FindingKey::skier_index_low), nullptr);
  EXPECT_TRUE(firm.analysis.concerns.empty());
}

TEST(SkierStability, OtherGrainsGetNoSk) {
  PitT pit = slab_on_facets();
  pit.layers[1]->grain_form = GrainForm::PP;
  const Read read(pit);
  ASSERT_NE(read.find(FindingKey::skier_index_not_persistent), nullptr);
  EXPECT_EQ(read.find(FindingKey::skier_index_not_persistent)->c(), 0);
}

// --- critical crack length

TEST(CriticalCrack, IsOffUntilSomebodyGivesPoissonsRatio) {
  EXPECT_EQ(Read(slab_on_facets()).find(FindingKey::critical_crack_length), nullptr);
  Parameters given;
  given.slab_poisson_thousandths = 200;
  const Read read(slab_on_facets(), given);
  const Finding* crack = read.find(FindingKey::critical_crack_length);
  ASSERT_NE(crack, nullptr);
  EXPECT_EQ(crack->verdict(), Verdict::fact);
  const double expected = interpretation::critical_crack(
      {200, 0.6 * Slope(38).cosine, 250, 0.0015, interpretation::persistent_strength(250), 0.2}, Slope(38));
  EXPECT_NEAR(crack->a() * 1e-5, expected, 1e-4);
  EXPECT_GT(crack->a(), 0);
  PitT sizeless = slab_on_facets();
  sizeless.layers[1]->grain_size_10um = flatbuffers::nullopt;
  EXPECT_EQ(Read(sizeless, given).find(FindingKey::critical_crack_length), nullptr);
}

TEST(CriticalCrack, IsNothingWhereTheSlabAloneIsTooMuch) {
  EXPECT_EQ(interpretation::critical_crack({200, 0.5, 150, 0.0015, 100, 0.2}, Slope(38)), 0.0);
  EXPECT_EQ(interpretation::critical_crack({0, 0.5, 150, 0.0015, 100, 0.2}, Slope(38)), 0.0);
  EXPECT_EQ(interpretation::critical_crack({200, 0, 150, 0.0015, 100, 0.2}, Slope(38)), 0.0);
}

TEST(SlabStress, FormulasStayWithinTheirDomain) {
  EXPECT_EQ(interpretation::skier_stress(0, Slope(38)), 0.0);
  EXPECT_EQ(interpretation::skier_stress(-1, Slope(38)), 0.0);
  EXPECT_EQ(interpretation::estimated_penetration(0), 0.0);
  EXPECT_EQ(Slope(-5).sine, Slope(0).sine);
  EXPECT_EQ(Slope(90).sine, Slope(60).sine);
  EXPECT_GT(Slope(60).skier, Slope(45).skier);
}

}  // namespace
}  // namespace firn::tests
