// The tables of the rules, row by row: every limit from both sides, every kind of test with every result.
#include <gtest/gtest.h>

#include <memory>
#include <string>
#include <vector>

#include "checking_help.h"

namespace firn::tests {
namespace {

using namespace firnbook;  // NOLINT: nothing here but the schema's names

std::size_t found(const PitT& pit, CheckCode code) {
  return count_of(checks_of(pit), code);
}

PitT one_layer_pit() {
  PitT pit;
  pit.snowpack = std::make_unique<SnowpackT>();
  pit.snowpack->hs_10um = cm(140);
  add_layer(pit, 0, cm(140));
  return pit;
}

TEST(SizeClasses, HoldTheirOwnLimitsAndNoMore) {
  const struct {
    GrainSizeClass name;
    std::int32_t from, to;
  } rows[] = {{GrainSizeClass::very_fine, 0, 20},      {GrainSizeClass::fine, 20, 50},
              {GrainSizeClass::medium, 50, 100},       {GrainSizeClass::coarse, 100, 200},
              {GrainSizeClass::very_coarse, 200, 500}, {GrainSizeClass::extreme, 500, 5000}};
  for (const auto& row : rows) {
    SCOPED_TRACE(EnumNameGrainSizeClass(row.name));
    const auto contradicts = [&row](std::int32_t size) {
      PitT pit = one_layer_pit();
      pit.layers[0]->grain_size_10um = size;
      pit.layers[0]->grain_size_class = row.name;
      PitT largest = one_layer_pit();
      largest.layers[0]->grain_size_max_10um = size;
      largest.layers[0]->grain_size_max_class = row.name;
      EXPECT_EQ(found(pit, CheckCode::size_class_contradicts_size),
                found(largest, CheckCode::size_class_contradicts_size));
      return found(pit, CheckCode::size_class_contradicts_size) == 1;
    };
    if (row.from > 0) {
      EXPECT_TRUE(contradicts(row.from - 1));
      EXPECT_FALSE(contradicts(row.from));
    }
    EXPECT_FALSE(contradicts(row.from + 1));
    EXPECT_FALSE(contradicts(row.to));
    EXPECT_EQ(contradicts(row.to + 1), row.name != GrainSizeClass::extreme);
    EXPECT_FALSE(contradicts(0));  // no size at all; another rule says so
  }
}

TEST(Columns, MayBeAFifthOff) {
  const struct {
    TestKind kind;
    std::int32_t width, length;
  } rows[] = {{TestKind::CT, cm(30), cm(30)},   {TestKind::DT, cm(30), cm(30)},
              {TestKind::ECT, cm(90), cm(30)},  {TestKind::ST, cm(30), cm(30)},
              {TestKind::RB, cm(200), cm(150)}, {TestKind::PST, cm(30), 0},
              {TestKind::other, 0, 0}};
  for (const auto& row : rows) {
    SCOPED_TRACE(EnumNameTestKind(row.kind));
    const auto unusual = [&row](std::int32_t width, std::int32_t length) {
      PitT pit = one_layer_pit();
      StabilityTestT& test = add_test(pit, row.kind);
      if (width > 0) test.column_width_10um = width;
      if (length > 0) test.column_length_10um = length;
      return found(pit, CheckCode::column_size_unusual);
    };
    if (row.width == 0) {
      EXPECT_EQ(unusual(1, 1), 0u);
      continue;
    }
    EXPECT_EQ(unusual(row.width - row.width / 5, 0), 0u);
    EXPECT_EQ(unusual(row.width + row.width / 5, 0), 0u);
    EXPECT_EQ(unusual(row.width - row.width / 5 - 1, 0), 1u);
    EXPECT_EQ(unusual(row.width + row.width / 5 + 1, 0), 1u);
    if (row.length == 0) {
      EXPECT_EQ(unusual(0, 1), 0u);
      continue;
    }
    EXPECT_EQ(unusual(0, row.length - row.length / 5), 0u);
    EXPECT_EQ(unusual(0, row.length + row.length / 5), 0u);
    EXPECT_EQ(unusual(0, row.length - row.length / 5 - 1), 1u);
    EXPECT_EQ(unusual(0, row.length + row.length / 5 + 1), 1u);
  }
}

struct Result {
  const char* name;
  void (*set)(FractureT&);
};
const Result kResults[] = {
    {"tap", [](FractureT& f) { f.tap = std::uint8_t{12}; }},
    {"tap_crossed", [](FractureT& f) { f.tap_crossed = std::uint8_t{12}; }},
    {"stage", [](FractureT& f) { f.stage = LoadStage::elbow; }},
    {"character", [](FractureT& f) { f.character = FractureCharacter::SP; }},
    {"quality", [](FractureT& f) { f.quality = ShearQuality::Q1; }},
    {"crossing", [](FractureT& f) { f.crossing = Crossing::crossed; }},
    {"step", [](FractureT& f) { f.step = std::uint8_t{4}; }},
    {"jump", [](FractureT& f) { f.jump = std::uint8_t{1}; }},
    {"release", [](FractureT& f) { f.release = ReleaseType::WB; }},
    {"cut_cm", [](FractureT& f) { f.cut_10um = cm(30); }},
    {"saw_end", [](FractureT& f) { f.saw_end = SawEnd::End; }},
    {"ease", [](FractureT& f) { f.ease = ShearEase::E; }},
};

TEST(Results, BelongToTheirTest) {
  const struct {
    TestKind kind;
    std::vector<std::string> own;
  } rows[] = {
      {TestKind::CT, {"tap", "stage", "character", "quality"}},
      {TestKind::DT, {"tap", "stage", "character", "quality"}},
      {TestKind::ECT, {"tap", "tap_crossed", "stage", "character", "quality", "crossing"}},
      {TestKind::PST, {"character", "quality", "cut_cm", "saw_end"}},
      {TestKind::RB, {"character", "quality", "step", "jump", "release"}},
      {TestKind::ST, {"character", "quality", "ease"}},
      {TestKind::hand_shear, {"character", "quality", "ease"}},
      {TestKind::other,
       {"tap", "tap_crossed", "stage", "character", "quality", "crossing", "step", "jump", "release",
        "cut_cm", "saw_end", "ease"}},
  };
  for (const auto& row : rows) {
    for (const Result& result : kResults) {
      SCOPED_TRACE(std::string(EnumNameTestKind(row.kind)) + " " + result.name);
      PitT pit = one_layer_pit();
      result.set(add_fracture(add_test(pit, row.kind), cm(68)));
      const bool own = std::find(row.own.begin(), row.own.end(), result.name) != row.own.end();
      const checking::Checks checks = checks_of(pit);
      EXPECT_EQ(count_of(checks, CheckCode::result_of_another_test), own ? 0u : 1u);
      for (const Check& check : checks) {
        if (check.code() != CheckCode::result_of_another_test) continue;
        EXPECT_EQ(path_of(check.place()), std::string("tests[0].fractures[0].") + result.name);
        EXPECT_EQ(check.a(), static_cast<std::int32_t>(row.kind));
      }
    }
  }
}

TEST(Rutschblock, JumpsBelongToStepsFourToSix) {
  for (std::uint8_t step = 1; step <= 6; ++step) {
    for (std::uint8_t jump = 0; jump <= 5; ++jump) {
      PitT pit = one_layer_pit();
      FractureT& fracture = add_fracture(add_test(pit, TestKind::RB), cm(68));
      fracture.step = step;
      if (jump > 0) fracture.jump = jump;
      const bool odd = jump > 3 || (jump > 0 && step < 4);
      EXPECT_EQ(found(pit, CheckCode::jump_out_of_range), odd ? 1u : 0u) << int{step} << " " << int{jump};
      EXPECT_EQ(found(pit, CheckCode::release_missing), step == 3 || step == 5 ? 1u : 0u) << int{step};
    }
  }
  PitT alone = one_layer_pit();
  add_fracture(add_test(alone, TestKind::RB), cm(68)).jump = std::uint8_t{2};
  EXPECT_EQ(found(alone, CheckCode::jump_out_of_range), 0u);  // the step is missing, which another rule says
}

TEST(SoftSlab, ReachesAsDeepAsTheSnowIsSoftWithoutABreak) {
  const auto warned = [](HandHardness first, HandHardness second, std::int32_t top, std::int32_t depth) {
    PitT pit;
    add_layer(pit, top, cm(20), first, GrainForm::PP);
    add_layer(pit, cm(20), cm(40), second, GrainForm::DF);
    add_layer(pit, cm(40), cm(90), HandHardness::Pencil, GrainForm::RG);
    add_compression_test(pit, 8, FractureCharacter::BRK, depth);
    return found(pit, CheckCode::slab_very_soft) == 1;
  };
  EXPECT_TRUE(warned(HandHardness::Fist, HandHardness::FistPlus, 0, cm(40)));
  EXPECT_FALSE(warned(HandHardness::Fist, HandHardness::FistPlus, 0, cm(40) + 1));
  EXPECT_FALSE(warned(HandHardness::Fist, HandHardness::FistToFourFinger, 0, cm(40)));
  EXPECT_TRUE(warned(HandHardness::Fist, HandHardness::FistToFourFinger, 0, cm(20)));
  EXPECT_FALSE(warned(HandHardness::Fist, HandHardness::Fist, 1, cm(40)));  // what lies on top is not known
  EXPECT_TRUE(warned(HandHardness::Fist, HandHardness::Fist, 0, 1));
  EXPECT_FALSE(warned(HandHardness::Fist, HandHardness::Fist, 0, 0));
}

TEST(SoftSlab, AsksForBothSidesOfALayer) {
  const auto warned = [](HandHardness top, HandHardness bottom) {
    PitT pit;
    LayerT& layer = add_layer(pit, 0, cm(20));
    layer.hardness_top = top;
    layer.hardness_bottom = bottom;
    add_extended_column(pit, 8, Crossing::not_crossed, cm(20));
    return found(pit, CheckCode::slab_very_soft) == 1;
  };
  EXPECT_TRUE(warned(HandHardness::Fist, HandHardness::FistPlus));
  EXPECT_FALSE(warned(HandHardness::Fist, HandHardness::FourFinger));
  EXPECT_FALSE(warned(HandHardness::FourFinger, HandHardness::Fist));
}

TEST(DeepTap, HasItsOwnDepthAndSlab) {
  const auto shallow = [](TestKind kind, std::int32_t depth) {
    PitT pit = one_layer_pit();
    add_fracture(add_test(pit, kind), depth).tap = std::uint8_t{12};
    return found(pit, CheckCode::deep_tap_shallow);
  };
  EXPECT_EQ(shallow(TestKind::DT, cm(100) - 1), 1u);
  EXPECT_EQ(shallow(TestKind::DT, cm(100)), 0u);
  EXPECT_EQ(shallow(TestKind::CT, cm(50)), 0u);
  for (const std::int32_t left : {cm(10) - 1, cm(10), cm(20), cm(20) + 1}) {
    PitT pit = one_layer_pit();
    add_test(pit, TestKind::DT).slab_left_10um = left;
    EXPECT_EQ(found(pit, CheckCode::deep_tap_slab_unusual), left < cm(10) || left > cm(20) ? 1u : 0u);
  }
}

TEST(Taps, GivenAndCounted) {
  const auto early = [](TestKind kind, TestOutcome outcome, std::uint8_t given) {
    PitT pit = one_layer_pit();
    StabilityTestT& test = add_test(pit, kind);
    test.outcome = outcome;
    test.taps_given = given;
    return found(pit, CheckCode::stopped_early);
  };
  for (const TestKind kind : {TestKind::CT, TestKind::ECT, TestKind::DT}) {
    EXPECT_EQ(early(kind, TestOutcome::no_fracture, 1), 1u);
    EXPECT_EQ(early(kind, TestOutcome::no_fracture, 29), 1u);
    EXPECT_EQ(early(kind, TestOutcome::no_fracture, 30), 0u);
    EXPECT_EQ(early(kind, TestOutcome::fractured, 20), 0u);
  }
  EXPECT_EQ(early(TestKind::RB, TestOutcome::no_fracture, 20), 0u);
}

TEST(NewSnow, HasADensityWithinItsLimits) {
  const auto odd = [](std::int32_t height, std::int32_t water) {
    std::size_t found_in_all = 0;
    for (const int which : {0, 1, 2}) {
      PitT pit = one_layer_pit();
      (which == 0   ? pit.snowpack->hn24_10um
       : which == 1 ? pit.snowpack->hin_10um
                    : pit.snowpack->hst_10um) = height;
      (which == 0   ? pit.snowpack->hn24_water_10um
       : which == 1 ? pit.snowpack->hin_water_10um
                    : pit.snowpack->hst_water_10um) = water;
      found_in_all += found(pit, CheckCode::new_snow_density_unusual);
    }
    return found_in_all;
  };
  EXPECT_EQ(odd(cm(20), 199), 3u);  // below 10 kg/m3
  EXPECT_EQ(odd(cm(20), 200), 0u);
  EXPECT_EQ(odd(cm(20), 6000), 0u);
  EXPECT_EQ(odd(cm(20), 6001), 3u);  // above 300 kg/m3
  EXPECT_EQ(odd(0, 100), 0u);
  EXPECT_EQ(odd(1, 0), 3u);
}

TEST(NewSnow, NeedsHsForWhatIsHeldAgainstIt) {
  PitT pit;
  pit.snowpack = std::make_unique<SnowpackT>();
  pit.snowpack->hn24_10um = cm(50);
  pit.snowpack->hs_water_10um = 1000000;
  EXPECT_EQ(found(pit, CheckCode::new_snow_deeper_than_snow), 0u);
  EXPECT_EQ(found(pit, CheckCode::water_exceeds_ice), 0u);
  pit.snowpack->hs_10um = 0;
  EXPECT_EQ(found(pit, CheckCode::new_snow_deeper_than_snow), 1u);
  EXPECT_EQ(found(pit, CheckCode::water_exceeds_ice), 1u);
  pit.snowpack->hs_10um = -1;  // wrong in itself
  EXPECT_EQ(found(pit, CheckCode::new_snow_deeper_than_snow), 0u);
  EXPECT_EQ(found(pit, CheckCode::water_exceeds_ice), 0u);
}

TEST(NewSnow, NegativeAmounts) {
  PitT pit = one_layer_pit();
  pit.snowpack->hn24_10um = -1;
  pit.snowpack->hn24_water_10um = -1;
  pit.snowpack->hs_water_10um = -1;
  EXPECT_EQ(found(pit, CheckCode::new_snow_negative), 3u);
  EXPECT_EQ(found(pit, CheckCode::new_snow_density_unusual), 0u);
}

TEST(Precipitation, OnlyIceCrystalsAndNothingFallFromAClearSky) {
  for (const Precipitation kind : EnumValuesPrecipitation()) {
    PitT pit;
    pit.weather = std::make_unique<WeatherT>();
    pit.weather->sky = SkyCondition::CLR;
    pit.weather->precipitation = kind;
    const bool passes = kind == Precipitation::light_IC || kind == Precipitation::IC ||
                        kind == Precipitation::heavy_IC || kind == Precipitation::Nil ||
                        kind == Precipitation::UP || kind == Precipitation::guideline_none;
    EXPECT_EQ(found(pit, CheckCode::precipitation_from_clear_sky), passes ? 0u : 1u)
        << EnumNamePrecipitation(kind);
  }
}

TEST(Air, HasTwoEnds) {
  for (const std::int32_t cdegc : {-6001, -6000, 4000, 4001}) {
    PitT pit;
    pit.weather = std::make_unique<WeatherT>();
    pit.weather->air_temperature_cdegc = cdegc;
    EXPECT_EQ(found(pit, CheckCode::air_temperature_out_of_range), cdegc < -6000 || cdegc > 4000 ? 1u : 0u);
  }
}

TEST(Penetration, OfRamFootAndSki) {
  PitT pit = one_layer_pit();
  pit.surface = std::make_unique<SurfaceT>();
  pit.surface->penetration_ram_10um = cm(140) + 1;
  pit.surface->penetration_foot_10um = cm(140) + 1;
  pit.surface->penetration_ski_10um = cm(140) + 1;
  EXPECT_EQ(found(pit, CheckCode::penetration_below_snow), 3u);
  pit.surface->penetration_ram_10um = -1;
  pit.surface->penetration_foot_10um = 0;
  pit.surface->penetration_ski_10um = 0;
  EXPECT_EQ(found(pit, CheckCode::penetration_negative), 1u);
  EXPECT_EQ(found(pit, CheckCode::ski_sinks_deeper_than_foot), 0u);
  pit.surface->penetration_ski_10um = 1;
  EXPECT_EQ(found(pit, CheckCode::ski_sinks_deeper_than_foot), 1u);
}

TEST(Gradients, CloseReadingsAddUp) {
  const auto odd = [](const std::vector<std::pair<std::int32_t, std::int32_t>>& readings) {
    PitT pit;
    for (const auto& [depth, cdegc] : readings) add_temperature(pit, depth, cdegc);
    return found(pit, CheckCode::gradient_unusual);
  };
  EXPECT_EQ(odd({{0, -2000}, {cm(10) - 1, -500}}), 0u);  // closer than the rule looks
  EXPECT_EQ(odd({{0, -2000}, {cm(10), -999}}), 1u);
  EXPECT_EQ(odd({{0, -2000}, {cm(10), -1000}}), 0u);
  EXPECT_EQ(odd({{0, -999}, {cm(10), -2000}}), 1u);  // whichever way it goes
  EXPECT_EQ(odd({{0, -2000}, {cm(5), -1500}, {cm(10), -999}}), 1u);
  EXPECT_EQ(odd({{0, -2000}, {cm(10), -1000}, {cm(20), 0}}), 0u);
}

TEST(SurfaceTemperature, BesideTheReadingAtZero) {
  const auto odd = [](std::int32_t surface, std::int32_t depth, std::int32_t reading) {
    PitT pit;
    pit.surface = std::make_unique<SurfaceT>();
    pit.surface->temperature_cdegc = surface;
    add_temperature(pit, depth, reading);
    return found(pit, CheckCode::surface_temperature_contradicts_reading);
  };
  EXPECT_EQ(odd(-1000, 0, -799), 1u);
  EXPECT_EQ(odd(-1000, 0, -800), 0u);
  EXPECT_EQ(odd(-1000, 0, -1201), 1u);
  EXPECT_EQ(odd(-1000, 1, -200), 0u);
}

TEST(Slides, HaveASizeFromOneToFive) {
  for (const std::uint8_t size : {std::uint8_t{9}, std::uint8_t{10}, std::uint8_t{50}, std::uint8_t{51}}) {
    PitT pit;
    pit.slides.push_back(std::make_unique<SlideT>());
    pit.slides[0]->size_tenths = size;
    EXPECT_EQ(found(pit, CheckCode::slide_size_out_of_range), size < 10 || size > 50 ? 1u : 0u);
  }
}

std::vector<std::string> wanted_by(Purpose purpose) {
  PitT pit;
  pit.purpose = purpose;
  std::vector<std::string> names;
  for (const Check& check : checks_of(pit)) {
    const std::string name = EnumNameCheckCode(check.code());
    if (name.rfind("purpose_", 0) != 0) continue;
    names.push_back(name.substr(8));
    EXPECT_EQ(check.a(), static_cast<std::int32_t>(purpose));
  }
  std::sort(names.begin(), names.end());
  return names;
}

TEST(Purposes, AskForWhatTheyAsk) {
  using Names = std::vector<std::string>;
  EXPECT_EQ(wanted_by(Purpose::quick_pit), (Names{"aspect", "elevation", "hs", "layers", "slope", "tests"}));
  EXPECT_EQ(wanted_by(Purpose::test_profile),
            (Names{"aspect", "elevation", "hs", "layers", "observers", "slope", "tests"}));
  EXPECT_EQ(wanted_by(Purpose::full_profile), (Names{"aspect", "elevation", "hs", "layers", "observers",
                                                     "place", "slope", "temperatures", "weather"}));
  EXPECT_EQ(wanted_by(Purpose::service_report), (Names{"aspect", "elevation", "hs", "layers", "observers",
                                                       "place", "sharing", "slope", "tests", "weather"}));
  EXPECT_EQ(wanted_by(Purpose::fracture_line),
            (Names{"aspect", "elevation", "hs", "layers", "observers", "place", "slides", "slope"}));
  EXPECT_EQ(wanted_by(Purpose::teaching), Names{});
}

TEST(Purposes, CountWhatLayersLack) {
  PitT pit = one_layer_pit();
  pit.purpose = Purpose::full_profile;
  add_layer(pit, cm(140), cm(150), HandHardness::Ice, GrainForm::IFil);
  const checking::Checks checks = checks_of(pit);
  for (const CheckCode code :
       {CheckCode::purpose_hardness, CheckCode::purpose_forms, CheckCode::purpose_sizes}) {
    ASSERT_EQ(count_of(checks, code), 1u) << EnumNameCheckCode(code);
  }
  for (const Check& check : checks) {
    if (check.code() == CheckCode::purpose_sizes || check.code() == CheckCode::purpose_forms) {
      EXPECT_EQ(check.b(), 1);
      EXPECT_EQ(check.place().index(), 0);
    }
    if (check.code() == CheckCode::purpose_wetness) {
      EXPECT_EQ(check.b(), 2);
    }
  }
}

TEST(Purposes, TemperaturesFromTheSurfaceDown) {
  const auto wide = [](const std::vector<std::int32_t>& depths) {
    PitT pit;
    pit.purpose = Purpose::full_profile;
    for (const std::int32_t depth : depths) add_temperature(pit, depth, -500);
    std::int32_t gaps = 0;
    for (const Check& check : checks_of(pit)) {
      if (check.code() == CheckCode::temperatures_far_apart) gaps = check.a();
    }
    return gaps;
  };
  EXPECT_EQ(wide({0, cm(20), cm(40)}), 0);
  EXPECT_EQ(wide({cm(20)}), 0);
  EXPECT_EQ(wide({cm(20) + 1}), 1);
  EXPECT_EQ(wide({0, cm(20) + 1, cm(40) + 1}), 1);
  EXPECT_EQ(wide({0, cm(21), cm(60)}), 2);
}

std::size_t said_same(Comparison said, int here, int there) {
  PitT pit;
  pit.site = std::make_unique<SiteT>();
  pit.site->aspect_deg = static_cast<std::uint16_t>(here);
  pit.choice = std::make_unique<ChoiceT>();
  pit.choice->aspect = said;
  pit.choice->interest_aspect_deg = static_cast<std::uint16_t>(there);
  return found(pit, CheckCode::aspect_said_same_but_apart);
}

TEST(Terrain, AspectsGoRound) {
  EXPECT_EQ(said_same(Comparison::same, 350, 35), 0u);
  EXPECT_EQ(said_same(Comparison::same, 350, 36), 1u);
  EXPECT_EQ(said_same(Comparison::same, 36, 350), 1u);
  EXPECT_EQ(said_same(Comparison::same, 0, 360), 0u);
  EXPECT_EQ(said_same(Comparison::same, 0, 180), 1u);
  EXPECT_EQ(said_same(Comparison::same, 0, 181), 1u);
  EXPECT_EQ(said_same(Comparison::similar, 0, 90), 0u);
  EXPECT_EQ(said_same(Comparison::similar, 0, 91), 1u);
  EXPECT_EQ(said_same(Comparison::similar, 0, 270), 0u);
  EXPECT_EQ(said_same(Comparison::similar, 0, 269), 1u);
  EXPECT_EQ(said_same(Comparison::different, 0, 180), 0u);
  EXPECT_EQ(said_same(Comparison::same, 0, 361), 0u);  // no direction at all
}

TEST(Terrain, PointsStandForTheirMiddle) {
  for (int point = 0; point <= 9; ++point) {
    PitT pit;
    pit.site = std::make_unique<SiteT>();
    pit.site->aspect_deg = std::uint16_t{0};
    pit.choice = std::make_unique<ChoiceT>();
    pit.choice->aspect = Comparison::same;
    pit.choice->interest_aspect_point = static_cast<CompassPoint>(point);
    const bool apart = point >= 3 && point <= 7;  // E to W; NE and NW lie 45 degrees off
    EXPECT_EQ(found(pit, CheckCode::aspect_said_same_but_apart), apart ? 1u : 0u) << point;
  }
}

TEST(Terrain, ElevationAndInclineByWord) {
  const auto odd = [](Comparison said, std::int32_t metres_there, int slope_there) {
    PitT pit;
    pit.site = std::make_unique<SiteT>();
    pit.site->elevation_10um = metres(2000);
    pit.site->slope_deg = std::uint8_t{30};
    pit.choice = std::make_unique<ChoiceT>();
    pit.choice->elevation = said;
    pit.choice->incline = said;
    pit.choice->interest_elevation_10um = metres(metres_there);
    pit.choice->interest_slope_deg = static_cast<std::uint8_t>(slope_there);
    return std::make_pair(found(pit, CheckCode::elevation_said_same_but_apart),
                          found(pit, CheckCode::incline_said_same_but_apart));
  };
  using Odd = std::pair<std::size_t, std::size_t>;
  EXPECT_EQ(odd(Comparison::same, 2200, 40), Odd(0, 0));
  EXPECT_EQ(odd(Comparison::same, 2201, 41), Odd(1, 1));
  EXPECT_EQ(odd(Comparison::same, 1799, 19), Odd(1, 1));
  EXPECT_EQ(odd(Comparison::similar, 2400, 50), Odd(0, 0));
  EXPECT_EQ(odd(Comparison::similar, 2401, 51), Odd(1, 1));
  EXPECT_EQ(odd(Comparison::more, 3000, 60), Odd(0, 0));
}

TEST(Terrain, WhatThePitLacksCannotBeCompared) {
  PitT pit;
  pit.choice = std::make_unique<ChoiceT>();
  pit.choice->interest_aspect_point = CompassPoint::NE;
  pit.choice->interest_elevation_10um = metres(2000);
  pit.choice->interest_slope_deg = std::uint8_t{35};
  EXPECT_EQ(found(pit, CheckCode::site_cannot_be_compared), 3u);
  pit.site = std::make_unique<SiteT>();
  pit.site->slope_deg = std::uint8_t{0};  // flat ground has no aspect to give
  EXPECT_EQ(found(pit, CheckCode::site_cannot_be_compared), 1u);
}

}  // namespace
}  // namespace firn::tests
