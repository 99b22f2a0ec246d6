// Rules with several limits, rules that depend on each other, and what hostile bytes may hold.
#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>

#include "checking_help.h"

namespace firn::tests {
namespace {

using namespace firnbook;  // NOLINT: the schema's names

std::size_t count_in(const PitT& pit, CheckCode code) {
  return count_of(checks_of(pit), code);
}

TEST(Geometry, ALayerThatSwallowsSeveralOverlapsEachOfThem) {
  PitT pit;
  add_layer(pit, 0, cm(100));
  add_layer(pit, cm(10), cm(20));
  add_layer(pit, cm(30), cm(40));
  add_layer(pit, cm(100), cm(110));
  const checking::Checks checks = checks_of(pit);
  EXPECT_EQ(count_of(checks, CheckCode::layers_overlap), 2u);
  EXPECT_EQ(count_of(checks, CheckCode::gap_between_layers), 0u);
}

TEST(Geometry, ALayerWithoutBottomMayFillTheGap) {
  PitT pit;
  add_layer(pit, 0, cm(10));
  add_layer(pit, cm(10), cm(20)).bottom.reset();
  add_layer(pit, cm(20), cm(30));
  EXPECT_EQ(count_in(pit, CheckCode::gap_between_layers), 0u);
  EXPECT_EQ(count_in(pit, CheckCode::layer_without_bottom), 1u);
  pit.layers[1]->bottom = std::make_unique<Depth>(down(cm(15)));
  EXPECT_EQ(count_in(pit, CheckCode::gap_between_layers), 1u);
}

TEST(Geometry, HeightsWithoutHsStillHaveAnUpperEnd) {
  PitT pit;
  LayerT& layer = add_layer(pit, 0, 0);
  *layer.top = up(cm(20));
  *layer.bottom = up(cm(10));
  EXPECT_EQ(count_in(pit, CheckCode::layer_upside_down), 0u);
  std::swap(layer.top, layer.bottom);
  EXPECT_EQ(count_in(pit, CheckCode::layer_upside_down), 1u);
}

TEST(Geometry, OneCheckForManyDepthsOfTheSameTrouble) {
  PitT pit;
  for (std::int32_t i = 0; i < 8; ++i) *add_layer(pit, cm(i), cm(i + 1)).top = nowhere_from(cm(i));
  const checking::Checks checks = checks_of(pit);
  ASSERT_EQ(count_of(checks, CheckCode::depth_datum_unknown), 1u);
  for (const Check& check : checks) {
    if (check.code() == CheckCode::depth_datum_unknown) {
      EXPECT_EQ(check.a(), 8);
      EXPECT_EQ(path_of(check.place()), "layers[0].top_cm");
    }
  }
}

TEST(Geometry, AHeightAboveTheSnowIsOutside) {
  const auto pit = tarn_shoulder();
  *pit->layers[0]->top = up(cm(140));
  EXPECT_EQ(count_in(*pit, CheckCode::negative_depth), 0u);
  *pit->layers[0]->top = up(cm(140) + 1);
  EXPECT_EQ(count_in(*pit, CheckCode::negative_depth), 1u);
}

TEST(Geometry, NotDugToTheGroundNeedNotReachIt) {
  const auto pit = tarn_shoulder();
  pit->layers.pop_back();
  EXPECT_EQ(count_in(*pit, CheckCode::layers_do_not_reach_ground), 0u);
  pit->reached_ground = false;
  EXPECT_EQ(count_in(*pit, CheckCode::layers_do_not_reach_ground), 0u);
  pit->reached_ground = true;
  EXPECT_EQ(count_in(*pit, CheckCode::layers_do_not_reach_ground), 1u);
}

TEST(Codes, EveryTableKeepsAndNamesWhatItDoesNotKnow) {
  const auto pit = tarn_shoulder();
  const std::uint8_t strange = 251;
  pit->purpose = static_cast<Purpose>(strange);
  pit->observers[1]->training = static_cast<Training>(strange);
  pit->site->position_source = static_cast<PositionSource>(strange);
  pit->choice->incline = static_cast<Comparison>(strange);
  pit->weather->sky = static_cast<SkyCondition>(strange);
  pit->surface->roughness = static_cast<SurfaceRoughness>(strange);
  pit->snowpack->direction = static_cast<Direction>(strange);
  pit->layers[2]->wetness = static_cast<Wetness>(strange);
  pit->layers[3]->name->kind = static_cast<LayerNameKind>(strange);
  pit->layers[3]->candidates = {static_cast<GrainForm>(strange)};
  pit->densities[0]->method = static_cast<DensityMethod>(strange);
  pit->tests[0]->kind = static_cast<TestKind>(strange);
  pit->tests[1]->fractures[0]->character = static_cast<FractureCharacter>(strange);
  pit->tests[3]->fractures[0]->on->grain_form = static_cast<GrainForm>(strange);
  pit->signs[0]->answer = static_cast<Answer>(strange);
  std::vector<std::string> lines;
  for (const Check& check : checks_of(*pit)) {
    if (check.code() != CheckCode::unknown_code) continue;
    EXPECT_EQ(check.a(), strange);
    lines.push_back(path_of(check.place()));
  }
  EXPECT_EQ(lines,
            (std::vector<std::string>{
                "purpose", "site.position_source", "observers[1].training", "weather.sky",
                "surface.roughness", "snowpack.direction", "layers[2].wetness", "layers[3].candidates",
                "layers[3].name", "densities[0].method", "tests[0].kind", "tests[1].fractures[0].character",
                "tests[3].fractures[0].on", "signs[0].answer", "choice.incline"}));
}

TEST(Codes, GapsInAnEnumerationAreUnknownToo) {
  const auto pit = tarn_shoulder();
  for (const int number : {0, 1, 9, 24, 29, 49, 96, 255}) {
    pit->layers[0]->grain_form = static_cast<GrainForm>(number);
    EXPECT_EQ(count_in(*pit, CheckCode::unknown_code), 1u) << number;
  }
  for (const GrainForm form : EnumValuesGrainForm()) {
    pit->layers[0]->grain_form = form;
    EXPECT_EQ(count_in(*pit, CheckCode::unknown_code), 0u);
  }
}

TEST(Codes, DatumAndDirectionOfADepth) {
  const auto pit = tarn_shoulder();
  *pit->layers[0]->top = Depth(0, static_cast<Datum>(3), Direction::unknown);
  *pit->tests[0]->fractures[0]->depth = Depth(cm(16), Datum::surface, static_cast<Direction>(3));
  EXPECT_EQ(count_in(*pit, CheckCode::unknown_code), 2u);
}

TEST(Wetness, TakesTheNeighboursWhenTheLayerHasNoReading) {
  PitT pit;
  add_layer(pit, 0, cm(10));
  add_layer(pit, cm(10), cm(12)).wetness = Wetness::W;
  add_layer(pit, cm(12), cm(30));
  add_temperature(pit, cm(5), -300);
  EXPECT_EQ(count_in(pit, CheckCode::wet_but_cold), 0u);  // only one side is known
  add_temperature(pit, cm(20), -100);
  EXPECT_EQ(count_in(pit, CheckCode::wet_but_cold), 1u);
  pit.temperatures.back()->temperature_cdegc = -50;
  EXPECT_EQ(count_in(pit, CheckCode::wet_but_cold), 0u);
  add_temperature(pit, cm(11), -300);  // a reading in the layer itself decides
  EXPECT_EQ(count_in(pit, CheckCode::wet_but_cold), 1u);
  pit.temperatures.back()->unreliable = 1u << 1;
  EXPECT_EQ(count_in(pit, CheckCode::wet_but_cold), 0u);
}

TEST(Wetness, DrySnowMayBeAnyTemperatureAndMoistStartsAtM) {
  PitT pit;
  LayerT& layer = add_layer(pit, 0, cm(10));
  add_temperature(pit, cm(5), -900);
  for (const Wetness wetness : {Wetness::D, Wetness::D_M}) {
    layer.wetness = wetness;
    EXPECT_EQ(count_in(pit, CheckCode::wet_but_cold), 0u);
  }
  for (const Wetness wetness : {Wetness::M, Wetness::M_W, Wetness::W, Wetness::V, Wetness::S}) {
    layer.wetness = wetness;
    EXPECT_EQ(count_in(pit, CheckCode::wet_but_cold), 1u);
  }
  layer.unreliable = std::uint64_t{1} << 11;  // field id of the wetness
  EXPECT_EQ(count_in(pit, CheckCode::wet_but_cold), 0u);
}

TEST(Temperatures, SurfaceTemperatureAndUnreliableReadings) {
  const auto pit = tarn_shoulder();
  pit->surface->temperature_cdegc = 80;
  EXPECT_EQ(count_in(*pit, CheckCode::snow_above_freezing), 1u);
  pit->surface->unreliable = std::uint64_t{1} << 10;
  EXPECT_EQ(count_in(*pit, CheckCode::snow_above_freezing), 0u);
}

struct DensityCase {
  GrainForm form;
  std::int32_t dkgm3;
  std::size_t impossible, unusual;
};

TEST(Densities, EveryLimit) {
  const DensityCase cases[] = {
      {GrainForm::RG, 99, 1, 0},   {GrainForm::RG, 100, 0, 1},    {GrainForm::RG, 299, 0, 1},
      {GrainForm::RG, 300, 0, 0},  {GrainForm::RG, 6000, 0, 0},   {GrainForm::RG, 6001, 0, 1},
      {GrainForm::RG, 9170, 0, 1}, {GrainForm::RG, 9171, 1, 0},   {GrainForm::PPsd, 3000, 0, 0},
      {GrainForm::PP, 3001, 0, 1}, {GrainForm::IFil, 5999, 0, 1}, {GrainForm::IF, 6000, 0, 0},
      {GrainForm::IF, 9170, 0, 0}, {GrainForm::IF, 299, 0, 1},    {GrainForm::MM, INT32_MAX, 1, 0},
      {GrainForm::RG, -1, 1, 0},   {GrainForm::DF, 3001, 0, 0},
  };
  for (const DensityCase& one : cases) {
    PitT pit;
    add_layer(pit, 0, cm(10)).grain_form = one.form;
    add_density(pit, 0, cm(10), one.dkgm3);
    EXPECT_EQ(count_in(pit, CheckCode::density_impossible), one.impossible) << one.dkgm3;
    EXPECT_EQ(count_in(pit, CheckCode::density_unusual), one.unusual) << one.dkgm3;
  }
}

TEST(Densities, AReadingAcrossTwoLayersHasNoForm) {
  PitT pit;
  add_layer(pit, 0, cm(10)).grain_form = GrainForm::PP;
  add_layer(pit, cm(10), cm(20)).grain_form = GrainForm::PP;
  add_density(pit, 0, cm(11), 3500);
  EXPECT_EQ(count_in(pit, CheckCode::density_unusual), 0u);
}

TEST(Densities, WaterNeedsAColumnWithoutABreak) {
  PitT pit;
  pit.snowpack = std::make_unique<SnowpackT>();
  pit.snowpack->hs_10um = cm(100);
  pit.snowpack->hs_water_10um = 1;
  add_density(pit, 0, cm(40), 2000);
  add_density(pit, cm(41), cm(100), 2000);
  EXPECT_EQ(count_in(pit, CheckCode::water_differs_from_densities), 0u);
  *pit.densities[0]->readings[1]->top = down(cm(40));
  EXPECT_EQ(count_in(pit, CheckCode::water_differs_from_densities), 1u);
  pit.snowpack->hs_water_10um = 20000;  // 1 m of 200 kg/m3 is 200 mm
  EXPECT_EQ(count_in(pit, CheckCode::water_differs_from_densities), 0u);
  pit.snowpack->hs_water_10um = 18000;
  EXPECT_EQ(count_in(pit, CheckCode::water_differs_from_densities), 0u);
  pit.snowpack->hs_water_10um = 17999;
  EXPECT_EQ(count_in(pit, CheckCode::water_differs_from_densities), 1u);
}

TEST(Sizes, FormsWithALimitOfTheirOwn) {
  const struct {
    GrainForm form;
    std::int32_t within, beyond;
  } cases[] = {{GrainForm::RGsr, 24, 25},
               {GrainForm::RGlr, 25, 24},
               {GrainForm::PPgp, 500, 501},
               {GrainForm::PPip, 500, 501},
               {GrainForm::PPhl, 501, 500}};
  for (const auto& one : cases) {
    PitT pit;
    LayerT& layer = add_layer(pit, 0, cm(10));
    layer.grain_form = one.form;
    layer.grain_size_10um = one.within;
    EXPECT_EQ(count_in(pit, CheckCode::size_contradicts_form), 0u) << EnumNameGrainForm(one.form);
    layer.grain_size_10um = one.beyond;
    EXPECT_EQ(count_in(pit, CheckCode::size_contradicts_form), 1u) << EnumNameGrainForm(one.form);
  }
}

TEST(Taps, EveryTapHasOneLetter) {
  for (std::uint8_t tap = 1; tap <= 30; ++tap) {
    for (const LoadStage stage : EnumValuesLoadStage()) {
      PitT pit;
      add_compression_test(pit, tap, FractureCharacter::SP, cm(20)).stage = stage;
      const LoadStage right = tap <= 10   ? LoadStage::wrist
                              : tap <= 20 ? LoadStage::elbow
                                          : LoadStage::shoulder;
      EXPECT_EQ(count_in(pit, CheckCode::band_contradicts_tap), stage == right ? 0u : 1u) << int{tap};
    }
  }
}

TEST(Taps, ZeroIsNoTap) {
  PitT pit;
  FractureT& fracture = add_extended_column(pit, 0, Crossing::crossed, cm(20));
  fracture.tap_crossed = std::uint8_t{0};
  pit.tests[0]->taps_given = std::uint8_t{31};
  EXPECT_EQ(count_in(pit, CheckCode::tap_out_of_range), 3u);
}

struct CrossingCase {
  std::uint8_t tap, crossed;
  Crossing letter;
  std::uint8_t rule;  // 0 = not said
  CheckCode code;     // none = no word about it
};

TEST(Crossing, EveryCombinationOfTapsLetterAndRule) {
  constexpr auto P = Crossing::crossed;
  constexpr auto N = Crossing::not_crossed;
  constexpr auto kContradicts = CheckCode::crossing_contradicts_taps;
  constexpr auto kDepends = CheckCode::crossing_depends_on_rule;
  constexpr auto kNone = CheckCode::none;
  const CrossingCase cases[] = {
      {12, 12, P, 0, kNone},
      {12, 12, P, 1, kNone},
      {12, 12, P, 2, kNone},
      {12, 13, P, 0, kDepends},
      {12, 13, P, 1, kContradicts},
      {12, 13, P, 2, kNone},
      {12, 14, P, 0, kContradicts},
      {12, 14, P, 1, kContradicts},
      {12, 14, P, 2, kContradicts},
      {12, 12, N, 0, kContradicts},
      {12, 12, N, 1, kContradicts},
      {12, 12, N, 2, kContradicts},
      {12, 13, N, 0, kDepends},
      {12, 13, N, 1, kNone},
      {12, 13, N, 2, kContradicts},
      {12, 14, N, 0, kNone},
      {12, 14, N, 1, kNone},
      {12, 14, N, 2, kNone},
      {12, 11, P, 0, CheckCode::crossing_before_crack},
  };
  for (const CrossingCase& one : cases) {
    PitT pit;
    add_extended_column(pit, one.tap, one.letter, cm(20)).tap_crossed = one.crossed;
    if (one.rule != 0) pit.tests[0]->crossing_rule = static_cast<CrossingRule>(one.rule);
    const checking::Checks checks = checks_of(pit);
    for (const CheckCode code : {kContradicts, kDepends, CheckCode::crossing_before_crack}) {
      EXPECT_EQ(count_of(checks, code), code == one.code ? 1u : 0u)
          << int{one.crossed} << EnumNameCrossing(one.letter) << int{one.rule};
    }
  }
}

TEST(Rutschblock, ItsOwnSlopeComesFirst) {
  const auto pit = tarn_shoulder();
  StabilityTestT& test = add_test(*pit, TestKind::RB);
  add_fracture(test, cm(68)).step = std::uint8_t{4};
  EXPECT_EQ(count_in(*pit, CheckCode::rutschblock_slope_too_gentle), 0u);
  test.slope_deg = std::uint8_t{20};
  EXPECT_EQ(count_in(*pit, CheckCode::rutschblock_slope_too_gentle), 1u);
}

TEST(LayerNamed, SubclassesCountWithTheirClassAndSecondFormsCount) {
  const auto pit = tarn_shoulder();
  FractureT& fracture = *pit->tests[2]->fractures[0];  // CT27 down 107 on FC
  fracture.on->grain_form = GrainForm::FCso;
  EXPECT_EQ(count_in(*pit, CheckCode::fracture_far_from_layer_named), 0u);
  fracture.on->grain_form = GrainForm::DH;  // the second form of the layer
  EXPECT_EQ(count_in(*pit, CheckCode::fracture_far_from_layer_named), 0u);
  fracture.on->grain_form = GrainForm::SH;  // nearest hoar is at 69 cm
  EXPECT_EQ(count_in(*pit, CheckCode::fracture_far_from_layer_named), 1u);
}

TEST(LayerNamed, NothingIsSaidBeforeLayersAreRecorded) {
  PitT pit;
  name_layer(add_compression_test(pit, 12, FractureCharacter::SP, cm(68)), GrainForm::SH);
  EXPECT_EQ(count_in(pit, CheckCode::fracture_far_from_layer_named), 0u);
  EXPECT_EQ(count_in(pit, CheckCode::fracture_away_from_boundaries), 0u);
}

TEST(Boundaries, ANonPlanarBreakFollowsNone) {
  const auto pit = tarn_shoulder();
  *pit->tests[0]->fractures[0]->depth = down(cm(50));
  EXPECT_EQ(count_in(*pit, CheckCode::fracture_away_from_boundaries), 0u);
  pit->tests[0]->fractures[0]->character = FractureCharacter::RP;
  EXPECT_EQ(count_in(*pit, CheckCode::fracture_away_from_boundaries), 1u);
}

TEST(Probing, BothLimitsMustBeCrossed) {
  const auto pit = tarn_shoulder();
  const auto uneven = [&](std::vector<std::int32_t> strikes) {
    pit->site->probes_10um = std::move(strikes);
    return count_in(*pit, CheckCode::probing_uneven);
  };
  EXPECT_EQ(uneven({cm(38), cm(45), cm(61), cm(47)}), 1u);      // Larch Bowl entry
  EXPECT_EQ(uneven({cm(139), cm(142), cm(137), cm(141)}), 0u);  // Tarn Shoulder
  EXPECT_EQ(uneven({cm(20), cm(30)}), 0u);                      // 40 %, but 10 cm only
  EXPECT_EQ(uneven({cm(20), cm(30) + 1}), 1u);
  EXPECT_EQ(uneven({cm(90), cm(110)}), 0u);  // 20 cm, but 20 % only
  EXPECT_EQ(uneven({cm(90), cm(110) + 2}), 1u);
  EXPECT_EQ(uneven({cm(50)}), 0u);
  EXPECT_EQ(uneven({}), 0u);
  EXPECT_EQ(uneven({0, 0, 0}), 0u);
  EXPECT_EQ(uneven({INT32_MAX, 0, INT32_MIN}), 1u);
}

TEST(Direction, AroundNorthAndWithoutAPoint) {
  const auto pit = tarn_shoulder();
  pit->site->aspect_point = CompassPoint::N;
  const auto contradicts = [&](int degrees) {
    pit->site->aspect_deg = static_cast<std::uint16_t>(degrees);
    return count_in(*pit, CheckCode::point_contradicts_degrees);
  };
  for (const int degrees : {0, 22, 338, 359, 360}) EXPECT_EQ(contradicts(degrees), 0u) << degrees;
  for (const int degrees : {23, 180, 337}) EXPECT_EQ(contradicts(degrees), 1u) << degrees;
  pit->site->aspect_point = CompassPoint::none;
  EXPECT_EQ(contradicts(180), 0u);
}

TEST(Wind, EveryClassAndItsSpeeds) {
  const struct {
    WindClass wind;
    std::int32_t cms;
    std::size_t checks;
  } cases[] = {{WindClass::C, 0, 0},    {WindClass::C, 1, 1},    {WindClass::L, 0, 1},
               {WindClass::L, 800, 0},  {WindClass::L, 801, 1},  {WindClass::M, 699, 1},
               {WindClass::M, 700, 0},  {WindClass::S, 1099, 1}, {WindClass::S, 1800, 0},
               {WindClass::X, 1699, 1}, {WindClass::X, 1700, 0}, {WindClass::X, INT32_MAX, 0}};
  for (const auto& one : cases) {
    const auto pit = tarn_shoulder();
    pit->weather->wind = one.wind;
    pit->weather->wind_speed_cms = one.cms;
    EXPECT_EQ(count_in(*pit, CheckCode::wind_contradicts_itself), one.checks) << one.cms;
  }
}

TEST(Time, DatesNeedNoOffsetAndHostileSecondsDoNotOverflow) {
  PitT pit;
  pit.time = std::make_unique<TimeSpan>(instant(date(2027, 1, 16)));
  EXPECT_EQ(count_in(pit, CheckCode::time_without_offset), 0u);
  const Moment first(INT64_MIN, INT16_MIN, TimePrecision::second, 1);
  const Moment last(INT64_MAX, INT16_MAX, TimePrecision::second, 1);
  pit.time = std::make_unique<TimeSpan>(first, last);
  EXPECT_EQ(count_in(pit, CheckCode::time_ends_before_begin), 0u);
  EXPECT_EQ(count_in(pit, CheckCode::offset_out_of_range), 2u);
  pit.time = std::make_unique<TimeSpan>(last, first);
  EXPECT_EQ(count_in(pit, CheckCode::time_ends_before_begin), 1u);
}

TEST(Time, EndsAreComparedAcrossOffsets) {
  PitT pit;  // 11:20-07:00 is 18:20 UTC
  pit.time =
      std::make_unique<TimeSpan>(local_time(2027, 1, 16, 11, 20, -420), local_time(2027, 1, 16, 18, 19, 0));
  EXPECT_EQ(count_in(pit, CheckCode::time_ends_before_begin), 1u);
  pit.time =
      std::make_unique<TimeSpan>(local_time(2027, 1, 16, 11, 20, -420), local_time(2027, 1, 16, 18, 20, 0));
  EXPECT_EQ(count_in(pit, CheckCode::time_ends_before_begin), 0u);
}

TEST(Time, NamesInTestLinesAreHeldAgainstThePitToo) {
  const auto pit = tarn_shoulder();
  *pit->tests[1]->fractures[0]->on->name->date = date(2027, 1, 17);
  EXPECT_EQ(count_in(*pit, CheckCode::layer_named_after_the_pit), 1u);
}

TEST(Signs, ARemoteSlideContradictsNoRemoteTrigger) {
  const auto pit = tarn_shoulder();
  pit->signs.clear();
  add_sign(*pit, SignKind::remote_trigger, Answer::no);
  pit->slides.push_back(std::make_unique<SlideT>());
  pit->slides[0]->trigger = Trigger::natural;
  EXPECT_EQ(count_in(*pit, CheckCode::slides_contradict_sign), 0u);
  pit->slides[0]->trigger = Trigger::remote;
  EXPECT_EQ(count_in(*pit, CheckCode::slides_contradict_sign), 1u);
}

// A pit of many layers, readings and fractures; `spread` 0 lays everything on the same place.
std::vector<std::uint8_t> big_pit(std::int32_t count, std::int32_t spread) {
  PitT pit;
  StabilityTestT& test = add_test(pit, TestKind::CT);
  for (std::int32_t i = 0; i < count; ++i) {
    add_layer(pit, i * spread, i * spread + 100, HandHardness::Fist, GrainForm::RG, 50).wetness = Wetness::W;
    add_temperature(pit, i * spread, -500);
    add_density(pit, i * spread, i * spread + 100, 2000);
    name_layer(add_fracture(test, i * spread), GrainForm::SH);
  }
  return bytes_of(pit);
}

// The quickest of three, since other work on the machine only ever adds.
double seconds_for(const std::vector<std::uint8_t>& bytes, std::size_t at_least_checks) {
  pit::AlignedBytes aligned;
  const auto verified = pit::verify(bytes.data(), bytes.size(), {}, aligned);
  EXPECT_TRUE(verified);
  pit::View view;
  checking::Checks checks;
  double quickest = 1e9;
  for (int run = 0; run < 3; ++run) {
    const auto start = std::chrono::steady_clock::now();
    view.decode(**verified);
    checking::check(view, checks);
    const std::chrono::duration<double> took = std::chrono::steady_clock::now() - start;
    quickest = std::min(quickest, took.count());
  }
  EXPECT_GT(checks.size(), at_least_checks);
  return quickest;
}

// Eight times as much of everything, in a row (100) and all in one place (0), takes about eight times as
// long; anything quadratic would take sixty-four times.
TEST(Size, WorkGrowsWithThePitAndNotWithItsSquare) {
  for (const std::int32_t spread : {100, 0}) {
    const double small = seconds_for(big_pit(1250, spread), 1250);
    const double large = seconds_for(big_pit(10000, spread), 10000);
    EXPECT_LT(large, small * 25) << spread;
  }
}

TEST(Size, MemoryIsUsedAgain) {
  const std::vector<std::uint8_t> bytes = big_pit(10000, 100);
  pit::AlignedBytes aligned;
  const auto verified = pit::verify(bytes.data(), bytes.size(), {}, aligned);
  ASSERT_TRUE(verified);
  pit::View view;
  view.decode(**verified);
  checking::Checks checks;
  checking::check(view, checks);
  const Check* const memory = checks.data();
  const std::size_t capacity = checks.capacity();
  const std::size_t count = checks.size();
  view.decode(**verified);
  checking::check(view, checks);
  EXPECT_EQ(checks.data(), memory);
  EXPECT_EQ(checks.capacity(), capacity);
  EXPECT_EQ(checks.size(), count);
}

}  // namespace
}  // namespace firn::tests
