// Rules at their limits, a row a case: the pit is one layer of 140 cm under which the ground lies, and each
// row says what is added and how often the check is then told.
#include <gtest/gtest.h>

#include <algorithm>
#include <memory>
#include <string>
#include <tuple>
#include <vector>

#include "checking_help.h"

namespace firn::tests {
namespace {

using namespace firnbook;  // NOLINT: the rows below are nothing but the schema's names

PitT one_layer_pit() {
  PitT pit;
  pit.snowpack = std::make_unique<SnowpackT>();
  pit.snowpack->hs_10um = cm(140);
  add_layer(pit, 0, cm(140));
  return pit;
}

struct Row {
  const char* what;
  CheckCode code;
  std::size_t times;
  void (*add)(PitT&);
};

void layers(PitT& pit, const std::vector<std::pair<std::int32_t, std::int32_t>>& spans) {
  pit.layers.clear();
  for (const auto& [top, bottom] : spans) add_layer(pit, top, bottom);
}
void densities(PitT& pit, const std::vector<std::pair<std::int32_t, std::int32_t>>& spans) {
  pit.densities.clear();
  for (const auto& [top, bottom] : spans) add_density(pit, top, bottom, 2000);
}
void signs(PitT& pit, const std::vector<std::pair<SignKind, Answer>>& answers) {
  for (const auto& [kind, answer] : answers) add_sign(pit, kind, answer);
}
LayerT& layer(PitT& pit) {
  return *pit.layers[0];
}
FractureT& test(PitT& pit, TestKind kind, std::int32_t depth = cm(50)) {
  return add_fracture(add_test(pit, kind), depth);
}
WeatherT& weather(PitT& pit) {
  pit.weather = std::make_unique<WeatherT>();
  return *pit.weather;
}
SiteT& site(PitT& pit) {
  pit.site = std::make_unique<SiteT>();
  return *pit.site;
}

const Row kGeometry[] = {
    {"a layer ends in the air where HS is below 0: HS is the slip", CheckCode::layer_below_ground, 0,
     [](PitT& p) { p.snowpack->hs_10um = -1; }},
    {"a layer without snow", CheckCode::layer_below_ground, 1, [](PitT& p) { p.snowpack->hs_10um = 0; }},
    {"a height of 0 is the ground", CheckCode::negative_depth, 0, [](PitT& p) { *layer(p).bottom = up(0); }},
    {"a height below 0", CheckCode::negative_depth, 1, [](PitT& p) { *layer(p).bottom = up(-1); }},
    {"a height below 0 is not told again as a depth", CheckCode::layer_below_ground, 0,
     [](PitT& p) { *layer(p).bottom = up(-1); }},
    {"a layer of no thickness fills what looks like a gap", CheckCode::gap_between_layers, 0,
     [](PitT& p) {
       layers(p, {{0, cm(10)}, {cm(20), cm(20)}, {cm(30), cm(40)}});
     }},
    {"a thin one fills only its own", CheckCode::gap_between_layers, 2,
     [](PitT& p) {
       layers(p, {{0, cm(10)}, {cm(20), cm(20) + 1}, {cm(30), cm(40)}});
     }},
    {"the ground lies below an overlapping layer", CheckCode::layers_do_not_reach_ground, 0,
     [](PitT& p) {
       layers(p, {{0, cm(140)}, {cm(100), cm(120)}});
       p.reached_ground = true;
     }},
    {"a first layer of no thickness hides where the snow begins", CheckCode::first_layer_not_at_surface, 0,
     [](PitT& p) {
       layers(p, {{0, 0}, {cm(10), cm(140)}});
     }},
    {"equal heights are no thickness", CheckCode::layer_upside_down, 1,
     [](PitT& p) { *layer(p).top = up(cm(20)), *layer(p).bottom = up(cm(20)); }},
    {"heights grow upwards", CheckCode::layer_upside_down, 0,
     [](PitT& p) { *layer(p).top = up(cm(20)), *layer(p).bottom = up(cm(20) - 1); }},
    {"equal values of an unknown zero are no thickness either", CheckCode::layer_upside_down, 1,
     [](PitT& p) { *layer(p).top = nowhere_from(cm(20)), *layer(p).bottom = nowhere_from(cm(20)); }},
    {"else nobody knows which end is up", CheckCode::layer_upside_down, 0,
     [](PitT& p) { *layer(p).top = nowhere_from(cm(20)), *layer(p).bottom = nowhere_from(cm(19)); }},
    {"a depth and a height meet through HS", CheckCode::layer_upside_down, 1,
     [](PitT& p) { *layer(p).top = down(cm(40)), *layer(p).bottom = up(cm(100)); }},
    {"a depth and a height a hair apart", CheckCode::layer_upside_down, 0,
     [](PitT& p) { *layer(p).top = down(cm(40)), *layer(p).bottom = up(cm(100) - 1); }},
    {"a depth and a height without HS", CheckCode::layer_upside_down, 0,
     [](PitT& p) {
       *layer(p).top = down(cm(40)), *layer(p).bottom = up(cm(100));
       p.snowpack->hs_10um = flatbuffers::nullopt;
     }},
};

const Row kProfiles[] = {
    {"a sample from the first layer into the second", CheckCode::reading_across_layers, 1,
     [](PitT& p) {
       layers(p, {{0, cm(10)}, {cm(10), cm(140)}}), densities(p, {{0, cm(11)}});
     }},
    {"a sample that ends with its layer", CheckCode::reading_across_layers, 0,
     [](PitT& p) {
       layers(p, {{0, cm(10)}, {cm(10), cm(140)}}), densities(p, {{0, cm(10)}});
     }},
    {"samples one below the other", CheckCode::readings_overlap, 0,
     [](PitT& p) {
       densities(p, {{0, cm(10)}, {cm(10), cm(20)}});
     }},
    {"samples that begin together and end apart", CheckCode::readings_overlap, 1,
     [](PitT& p) {
       densities(p, {{0, cm(10)}, {0, cm(12)}});
     }},
    {"samples of two profiles", CheckCode::readings_overlap, 0,
     [](PitT& p) {
       densities(p, {{0, cm(10)}});
       PitT other;
       add_density(other, cm(5), cm(15), 2000);
       p.densities.push_back(std::move(other.densities[0]));
     }},
    {"a sample of no thickness breaks the column of water", CheckCode::water_differs_from_densities, 0,
     [](PitT& p) {
       densities(p, {{0, 0}, {0, cm(140)}});
       p.snowpack->hs_water_10um = 1;
     }},
    {"a sample without a density breaks it too", CheckCode::water_differs_from_densities, 0,
     [](PitT& p) {
       densities(p, {{0, cm(70)}, {cm(70), cm(140)}});
       p.densities[0]->readings[1]->density_dkgm3 = flatbuffers::nullopt;
       p.snowpack->hs_water_10um = 1;
     }},
    {"so does an impossible one", CheckCode::water_differs_from_densities, 0,
     [](PitT& p) {
       densities(p, {{0, cm(140)}});
       p.densities[0]->readings[0]->density_dkgm3 = 9171;
       p.snowpack->hs_water_10um = 1;
     }},
    {"a column that ends above the ground", CheckCode::water_differs_from_densities, 0,
     [](PitT& p) {
       densities(p, {{0, cm(139)}});
       p.snowpack->hs_water_10um = 1;
     }},
    {"a doubtful density is not judged", CheckCode::density_impossible, 0,
     [](PitT& p) {
       densities(p, {{0, cm(140)}});
       p.densities[0]->readings[0]->density_dkgm3 = 9171;
       p.densities[0]->readings[0]->unreliable = ~std::uint64_t{0};
     }},
    {"two temperatures at one depth, the second as the first", CheckCode::two_temperatures_at_one_depth, 0,
     [](PitT& p) { add_temperature(p, cm(10), -500), add_temperature(p, cm(10), -500); }},
    {"one temperature at two depths", CheckCode::two_temperatures_at_one_depth, 0,
     [](PitT& p) { add_temperature(p, cm(10), -500), add_temperature(p, cm(11), -600); }},
    {"a gradient over a doubtful reading is taken from its neighbours", CheckCode::gradient_unusual, 0,
     [](PitT& p) {
       add_temperature(p, 0, -500);
       add_temperature(p, cm(10), -5000);
       p.temperatures[1]->unreliable = ~std::uint64_t{0};
       add_temperature(p, cm(20), -600);
     }},
    {"wet where the reading lies on the upper edge", CheckCode::wet_but_cold, 1,
     [](PitT& p) {
       layers(p, {{0, cm(10)}, {cm(10), cm(20)}});
       p.layers[1]->wetness = Wetness::W;
       add_temperature(p, cm(10), -600);
     }},
    {"wet where the reading lies on the lower edge", CheckCode::wet_but_cold, 1,
     [](PitT& p) {
       layers(p, {{0, cm(10)}, {cm(10), cm(20)}});
       p.layers[0]->wetness = Wetness::W;
       add_temperature(p, cm(10), -600);
     }},
    {"the warmest reading within counts", CheckCode::wet_but_cold, 0,
     [](PitT& p) {
       layer(p).wetness = Wetness::W;
       add_temperature(p, cm(10), -40);
       add_temperature(p, cm(20), -600);
     }},
    {"the warmer neighbour above counts", CheckCode::wet_but_cold, 0,
     [](PitT& p) {
       layers(p, {{0, cm(10)}, {cm(10), cm(12)}, {cm(12), cm(140)}});
       p.layers[1]->wetness = Wetness::W;
       add_temperature(p, cm(9), -50);
       add_temperature(p, cm(13), -900);
     }},
    {"the warmer neighbour below counts", CheckCode::wet_but_cold, 0,
     [](PitT& p) {
       layers(p, {{0, cm(10)}, {cm(10), cm(12)}, {cm(12), cm(140)}});
       p.layers[1]->wetness = Wetness::W;
       add_temperature(p, cm(9), -900);
       add_temperature(p, cm(13), -50);
     }},
    {"below the lowest reading nothing is known", CheckCode::wet_but_cold, 0,
     [](PitT& p) {
       layers(p, {{0, cm(10)}, {cm(10), cm(140)}});
       p.layers[1]->wetness = Wetness::W;
       add_temperature(p, cm(9), -900);
     }},
    {"layers that follow each other are each asked", CheckCode::wet_but_cold, 2,
     [](PitT& p) {
       layers(p, {{0, cm(10)}, {cm(10), cm(20)}});
       p.layers[0]->wetness = p.layers[1]->wetness = Wetness::W;
       add_temperature(p, cm(5), -600), add_temperature(p, cm(15), -600);
     }},
    {"one that overlaps the one above is not", CheckCode::wet_but_cold, 1,
     [](PitT& p) {
       layers(p, {{0, cm(10)}, {cm(10) - 1, cm(20)}});
       p.layers[0]->wetness = p.layers[1]->wetness = Wetness::W;
       add_temperature(p, cm(5), -600), add_temperature(p, cm(15), -600);
     }},
    {"a surface without any reading", CheckCode::surface_temperature_contradicts_reading, 0,
     [](PitT& p) {
       p.surface = std::make_unique<SurfaceT>();
       p.surface->temperature_cdegc = -1000;
     }},
};

const Row kTests[] = {
    {"a tap beyond the shoulder's", CheckCode::band_contradicts_tap, 0,
     [](PitT& p) {
       test(p, TestKind::CT).tap = std::uint8_t{31}, p.tests[0]->fractures[0]->stage = LoadStage::wrist;
     }},
    {"a saw test may carry neither quality nor character", CheckCode::quality_on_extended_column, 1,
     [](PitT& p) { test(p, TestKind::PST).quality = ShearQuality::Q1; }},
    {"a compression test carries both", CheckCode::character_on_extended_column, 0,
     [](PitT& p) { test(p, TestKind::CT).character = FractureCharacter::SP; }},
    {"a rutschblock has no tap to be missing", CheckCode::fracture_without_load, 0,
     [](PitT& p) { test(p, TestKind::RB).step = std::uint8_t{4}; }},
    {"a rutschblock without its step", CheckCode::fracture_without_load, 1,
     [](PitT& p) { test(p, TestKind::RB); }},
    {"a saw has no load", CheckCode::fracture_without_load, 0, [](PitT& p) { test(p, TestKind::PST); }},
    {"an extended column whose crossing tap was counted", CheckCode::crossing_unknown, 0,
     [](PitT& p) { test(p, TestKind::ECT).tap_crossed = std::uint8_t{12}; }},
    {"an extended column without letter and tap", CheckCode::crossing_unknown, 1,
     [](PitT& p) { test(p, TestKind::ECT).tap = std::uint8_t{12}; }},
    {"step 0 is none", CheckCode::rutschblock_step_out_of_range, 1,
     [](PitT& p) { test(p, TestKind::RB).step = std::uint8_t{0}; }},
    {"step 1 is one", CheckCode::rutschblock_step_out_of_range, 0,
     [](PitT& p) { test(p, TestKind::RB).step = std::uint8_t{1}; }},
    {"a saw column shorter than usual", CheckCode::saw_column_length_unusual, 1,
     [](PitT& p) { add_saw_test(p, cm(30), cm(90) - 1, SawEnd::End, cm(50)); }},
    {"a saw column just long enough", CheckCode::saw_column_length_unusual, 0,
     [](PitT& p) { add_saw_test(p, cm(30), cm(90), SawEnd::End, cm(50)); }},
    {"a saw column as long as the layer is deep", CheckCode::saw_column_length_unusual, 0,
     [](PitT& p) { add_saw_test(p, cm(30), cm(120), SawEnd::End, cm(120)); }},
    {"a column of a metre for a deep layer", CheckCode::saw_column_length_unusual, 1,
     [](PitT& p) { add_saw_test(p, cm(30), cm(100), SawEnd::End, cm(110) + 1); }},
    {"a column of a metre for one not much deeper", CheckCode::saw_column_length_unusual, 0,
     [](PitT& p) { add_saw_test(p, cm(30), cm(100), SawEnd::End, cm(110)); }},
    {"a saw that stopped at the end without a column", CheckCode::saw_stopped_at_full_cut, 0,
     [](PitT& p) {
       add_saw_test(p, cm(30), cm(30), SawEnd::SF, cm(50));
       p.tests[0]->column_length_10um = flatbuffers::nullopt;
     }},
    {"slab fracture at the full cut", CheckCode::saw_stopped_at_full_cut, 1,
     [](PitT& p) { add_saw_test(p, cm(100), cm(100), SawEnd::SF, cm(50)); }},
    {"run to the end at the full cut", CheckCode::saw_stopped_at_full_cut, 0,
     [](PitT& p) { add_saw_test(p, cm(100), cm(100), SawEnd::End, cm(50)); }},
    {"a saw test without a cut lacks it once", CheckCode::saw_length_missing, 1,
     [](PitT& p) { test(p, TestKind::PST), p.tests[0]->column_length_10um = cm(100); }},
    {"a saw test that broke nothing needs no length", CheckCode::saw_length_missing, 0,
     [](PitT& p) { add_test(p, TestKind::PST).outcome = TestOutcome::no_fracture; }},
    {"other tests need no saw's length", CheckCode::saw_length_missing, 0,
     [](PitT& p) { test(p, TestKind::CT); }},
    {"a column test at 120 cm", CheckCode::extended_column_deep, 1,
     [](PitT& p) { test(p, TestKind::ECT, cm(120)); }},
    {"below it the other check speaks", CheckCode::extended_column_deep, 0,
     [](PitT& p) { test(p, TestKind::ECT, cm(120) + 1); }},
    {"a compression test has no smaller limit", CheckCode::extended_column_deep, 0,
     [](PitT& p) { test(p, TestKind::CT, cm(120)); }},
    {"a rutschblock has no such limit", CheckCode::test_depth_beyond_useful, 0,
     [](PitT& p) { test(p, TestKind::RB, cm(130)); }},
    {"two centimetres from the upper edge", CheckCode::fracture_away_from_boundaries, 0,
     [](PitT& p) { test(p, TestKind::CT, cm(2)); }},
    {"a hair more", CheckCode::fracture_away_from_boundaries, 1,
     [](PitT& p) { test(p, TestKind::CT, cm(2) + 1); }},
    {"two centimetres from the lower edge", CheckCode::fracture_away_from_boundaries, 0,
     [](PitT& p) { test(p, TestKind::CT, cm(138)); }},
    {"a hair less", CheckCode::fracture_away_from_boundaries, 1,
     [](PitT& p) { test(p, TestKind::CT, cm(138) - 1); }},
    {"grains named two centimetres below their layer", CheckCode::fracture_far_from_layer_named, 0,
     [](PitT& p) {
       layers(p, {{0, cm(30)}, {cm(30), cm(140)}});
       layer(p).grain_form = GrainForm::SH;
       name_layer(test(p, TestKind::CT, cm(32)), GrainForm::SH);
     }},
    {"a hair more than that", CheckCode::fracture_far_from_layer_named, 1,
     [](PitT& p) {
       layers(p, {{0, cm(30)}, {cm(30), cm(140)}});
       layer(p).grain_form = GrainForm::SH;
       name_layer(test(p, TestKind::CT, cm(32) + 1), GrainForm::SH);
     }},
    {"a layer that is open below may hold them", CheckCode::fracture_far_from_layer_named, 0,
     [](PitT& p) {
       layer(p).bottom.reset();
       name_layer(test(p, TestKind::CT, cm(50)), GrainForm::SH);
     }},
    {"a layer without grains is no match for none", CheckCode::fracture_far_from_layer_named, 1,
     [](PitT& p) { name_layer(test(p, TestKind::CT, cm(50)), static_cast<GrainForm>(1)); }},
    {"a block on steep snow with its slope at the pit", CheckCode::rutschblock_slope_unknown, 0,
     [](PitT& p) { test(p, TestKind::RB), site(p).slope_deg = std::uint8_t{31}; }},
    {"no slope is not gentle", CheckCode::rutschblock_slope_too_gentle, 0,
     [](PitT& p) { test(p, TestKind::RB); }},
    {"level ground is", CheckCode::rutschblock_slope_too_gentle, 1,
     [](PitT& p) { test(p, TestKind::RB), site(p).slope_deg = std::uint8_t{0}; }},
    {"a column test on gentle ground", CheckCode::rutschblock_slope_too_gentle, 0,
     [](PitT& p) { test(p, TestKind::CT), site(p).slope_deg = std::uint8_t{10}; }},
    {"taps in all as many as the fracture's", CheckCode::taps_given_contradict, 0,
     [](PitT& p) {
       test(p, TestKind::CT).tap = std::uint8_t{12}, p.tests[0]->taps_given = std::uint8_t{12};
     }},
    {"without taps in all nothing contradicts", CheckCode::taps_given_contradict, 0,
     [](PitT& p) { test(p, TestKind::CT).tap = std::uint8_t{12}; }},
    {"a saw test without a cut needs no end", CheckCode::saw_end_missing, 0,
     [](PitT& p) { test(p, TestKind::PST); }},
    {"broken at the bottom of the column", CheckCode::fracture_below_column, 0,
     [](PitT& p) { test(p, TestKind::CT), p.tests[0]->column_depth_10um = cm(50); }},
    {"unbroken where nobody knows the depth", CheckCode::unbroken_contradicts_fracture, 0,
     [](PitT& p) {
       *test(p, TestKind::CT).depth = nowhere_from(cm(50));
       p.tests[0]->unbroken.push_back(nowhere_from(cm(50)));
     }},
    {"a test of another kind without result and words", CheckCode::test_without_result, 1,
     [](PitT& p) { add_test(p, TestKind::other); }},
    {"words are no result of a compression test", CheckCode::test_without_result, 1,
     [](PitT& p) { add_test(p, TestKind::CT).words = "nothing much"; }},
};

const Row kAround[] = {
    {"two answers that differ from the first", CheckCode::sign_answered_twice, 1,
     [](PitT& p) {
       signs(p, {{SignKind::whumpf, Answer::yes}, {SignKind::whumpf, Answer::no}});
     }},
    {"two answers alike", CheckCode::sign_answered_twice, 0,
     [](PitT& p) {
       signs(p, {{SignKind::whumpf, Answer::yes}, {SignKind::whumpf, Answer::yes}});
     }},
    {"each that differs from the first", CheckCode::sign_answered_twice, 2,
     [](PitT& p) {
       signs(p, {{SignKind::whumpf, Answer::yes},
                 {SignKind::whumpf, Answer::no},
                 {SignKind::whumpf, Answer::not_looked_for}});
     }},
    {"signs of the last number a record can hold", CheckCode::sign_answered_twice, 1,
     [](PitT& p) {
       signs(p, {{static_cast<SignKind>(255), Answer::yes}, {static_cast<SignKind>(255), Answer::no}});
     }},
    {"a length beside a sign that was seen", CheckCode::length_without_sign, 0,
     [](PitT& p) {
       signs(p, {{SignKind::cracking, Answer::yes}}), p.signs[0]->length_10um = cm(300);
     }},
    {"a slide without an age", CheckCode::slide_age_negative, 0,
     [](PitT& p) { p.slides.push_back(std::make_unique<SlideT>()); }},
    {"a slide without a size", CheckCode::slide_size_out_of_range, 0,
     [](PitT& p) { p.slides.push_back(std::make_unique<SlideT>()); }},
    {"HS as far below the lowest strike as it may lie", CheckCode::hs_differs_from_probes, 0,
     [](PitT& p) {
       site(p).probes_10um = {cm(150), cm(160), cm(155)};
     }},
    {"a hair further below", CheckCode::hs_differs_from_probes, 1,
     [](PitT& p) {
       site(p).probes_10um = {cm(150) + 1, cm(160), cm(155)};
     }},
    {"HS as far above the highest strike as it may lie", CheckCode::hs_differs_from_probes, 0,
     [](PitT& p) {
       site(p).probes_10um = {cm(120), cm(130), cm(125)};
     }},
    {"a hair further above", CheckCode::hs_differs_from_probes, 1,
     [](PitT& p) {
       site(p).probes_10um = {cm(120), cm(130) - 1, cm(125)};
     }},
    {"the lowest land", CheckCode::elevation_out_of_range, 0,
     [](PitT& p) { site(p).elevation_10um = metres(-500); }},
    {"below the lowest land", CheckCode::elevation_out_of_range, 1,
     [](PitT& p) { site(p).elevation_10um = metres(-500) - 1; }},
    {"the south pole", CheckCode::coordinates_out_of_range, 0,
     [](PitT& p) { site(p).latitude_e7deg = -900000000, p.site->longitude_e7deg = 1800000000; }},
    {"beyond it, and beyond the date line", CheckCode::coordinates_out_of_range, 2,
     [](PitT& p) { site(p).latitude_e7deg = -900000001, p.site->longitude_e7deg = 1800000001; }},
    {"beyond the date line the other way", CheckCode::coordinates_out_of_range, 1,
     [](PitT& p) { site(p).latitude_e7deg = 0, p.site->longitude_e7deg = -1800000001; }},
    {"degrees on flat ground", CheckCode::aspect_on_flat_ground, 1,
     [](PitT& p) { site(p).slope_deg = std::uint8_t{0}, p.site->aspect_deg = std::uint16_t{0}; }},
    {"north-west on flat ground", CheckCode::aspect_on_flat_ground, 1,
     [](PitT& p) { site(p).slope_deg = std::uint8_t{0}, p.site->aspect_point = CompassPoint::NW; }},
    {"north on flat ground", CheckCode::aspect_on_flat_ground, 1,
     [](PitT& p) { site(p).slope_deg = std::uint8_t{0}, p.site->aspect_point = CompassPoint::N; }},
    {"no aspect, said so", CheckCode::aspect_on_flat_ground, 0,
     [](PitT& p) { site(p).slope_deg = std::uint8_t{0}, p.site->aspect_point = CompassPoint::none; }},
    {"calm from nowhere", CheckCode::calm_with_direction, 0,
     [](PitT& p) { weather(p).wind = WindClass::C, p.weather->wind_from_point = CompassPoint::none; }},
    {"calm from 10 degrees", CheckCode::calm_with_direction, 1,
     [](PitT& p) { weather(p).wind = WindClass::C, p.weather->wind_from_deg = std::uint16_t{10}; }},
    {"still air has no speed below 0", CheckCode::wind_speed_negative, 0,
     [](PitT& p) { weather(p).wind_speed_cms = 0; }},
    {"precipitation under no sky at all", CheckCode::precipitation_from_clear_sky, 0,
     [](PitT& p) { weather(p).precipitation = Precipitation::light_SN; }},
    {"skis as deep as the snow", CheckCode::penetration_below_snow, 0,
     [](PitT& p) { p.surface = std::make_unique<SurfaceT>(), p.surface->penetration_ski_10um = cm(140); }},
    {"no snow to sink into", CheckCode::penetration_below_snow, 1,
     [](PitT& p) {
       p.surface = std::make_unique<SurfaceT>(), p.surface->penetration_ski_10um = 1;
       p.snowpack->hs_10um = 0;
     }},
    {"HS below 0 is the slip", CheckCode::penetration_below_snow, 0,
     [](PitT& p) {
       p.surface = std::make_unique<SurfaceT>(), p.surface->penetration_ski_10um = 1;
       p.snowpack->hs_10um = -1;
     }},
};

// Sizes, hardness and forms of the one layer; new snow and what a purpose asks for.
const Row kLayer[] = {
    {"a layer known at its top alone", CheckCode::slab_very_soft, 0,
     [](PitT& p) { layer(p).hardness_top = HandHardness::Fist, test(p, TestKind::CT); }},
    {"a layer known at its bottom alone", CheckCode::slab_very_soft, 0,
     [](PitT& p) { layer(p).hardness_bottom = HandHardness::Fist, test(p, TestKind::CT); }},
    {"a layer known at both", CheckCode::slab_very_soft, 1,
     [](PitT& p) {
       layer(p).hardness_top = layer(p).hardness_bottom = HandHardness::Fist;
       test(p, TestKind::CT);
     }},
    {"a point that is none cannot be compared", CheckCode::site_cannot_be_compared, 0,
     [](PitT& p) {
       p.choice = std::make_unique<ChoiceT>();
       p.choice->interest_aspect_point = CompassPoint::none;
     }},
    {"one strike far from HS", CheckCode::hs_differs_from_probes, 1,
     [](PitT& p) { site(p).probes_10um = {cm(100)}; }},
    {"no strike at all", CheckCode::hs_differs_from_probes, 0, [](PitT& p) { site(p); }},
    {"a column of a hair holds water too", CheckCode::water_differs_from_densities, 1,
     [](PitT& p) {
       densities(p, {{0, 1}});
       p.snowpack->hs_10um = 1;
       p.snowpack->hs_water_10um = 1;
     }},
    {"as many layers at one depth as are looked at", CheckCode::fracture_far_from_layer_named, 1,
     [](PitT& p) {
       layers(p, std::vector<std::pair<std::int32_t, std::int32_t>>(64, {0, cm(100)}));
       name_layer(test(p, TestKind::CT), GrainForm::SH);
     }},
    {"one more, and it cannot be told", CheckCode::fracture_far_from_layer_named, 0,
     [](PitT& p) {
       layers(p, std::vector<std::pair<std::int32_t, std::int32_t>>(65, {0, cm(100)}));
       name_layer(test(p, TestKind::CT), GrainForm::SH);
     }},
    {"no size is below that of large rounded grains", CheckCode::size_contradicts_form, 0,
     [](PitT& p) { layer(p).grain_form = GrainForm::RGlr, layer(p).grain_size_10um = 0; }},
    {"a hair is", CheckCode::size_contradicts_form, 1,
     [](PitT& p) { layer(p).grain_form = GrainForm::RGlr, layer(p).grain_size_10um = 1; }},
    {"a hair is not fine", CheckCode::size_class_contradicts_size, 1,
     [](PitT& p) { layer(p).grain_size_class = GrainSizeClass::fine, layer(p).grain_size_10um = 1; }},
    {"dry slush", CheckCode::slush_not_soaked, 1,
     [](PitT& p) { layer(p).grain_form = GrainForm::MFsl, layer(p).wetness = Wetness::D; }},
    {"slush without a wetness", CheckCode::slush_not_soaked, 0,
     [](PitT& p) { layer(p).grain_form = GrainForm::MFsl; }},
    {"new snow that is hard at its top", CheckCode::new_snow_hard, 1,
     [](PitT& p) {
       layer(p).grain_form = GrainForm::PPsd;
       layer(p).hardness_top = HandHardness::Pencil, layer(p).hardness_bottom = HandHardness::Fist;
     }},
    {"new snow that is hard at its bottom", CheckCode::new_snow_hard, 1,
     [](PitT& p) {
       layer(p).grain_form = GrainForm::PPsd;
       layer(p).hardness_top = HandHardness::Fist, layer(p).hardness_bottom = HandHardness::Pencil;
     }},
    {"ice without a hardness", CheckCode::ice_softer_than_knife, 0,
     [](PitT& p) { layer(p).grain_form = GrainForm::IF; }},
    {"a soft crust that is dry", CheckCode::crust_soft, 1,
     [](PitT& p) {
       layer(p).grain_form = GrainForm::MFcr, layer(p).hardness = HandHardness::Fist;
       layer(p).wetness = Wetness::D;
     }},
    {"a soft crust that is a little moist", CheckCode::crust_soft, 0,
     [](PitT& p) {
       layer(p).grain_form = GrainForm::MFcr, layer(p).hardness = HandHardness::Fist;
       layer(p).wetness = Wetness::D_M;
     }},
    {"new snow below nothing has no density", CheckCode::new_snow_density_unusual, 0,
     [](PitT& p) { p.snowpack->hn24_10um = -1, p.snowpack->hn24_water_10um = 100; }},
    {"nor has water below nothing", CheckCode::new_snow_density_unusual, 0,
     [](PitT& p) { p.snowpack->hn24_10um = cm(20), p.snowpack->hn24_water_10um = -1; }},
    {"a quick pit owes no hardness", CheckCode::purpose_hardness, 0,
     [](PitT& p) { p.purpose = Purpose::quick_pit; }},
    {"a test profile does", CheckCode::purpose_hardness, 1,
     [](PitT& p) { p.purpose = Purpose::test_profile; }},
    {"a test profile says how a saw's column ended", CheckCode::saw_ends_not_recorded, 1,
     [](PitT& p) { p.purpose = Purpose::test_profile, add_test(p, TestKind::PST); }},
    {"a quick pit need not", CheckCode::saw_ends_not_recorded, 0,
     [](PitT& p) { p.purpose = Purpose::quick_pit, add_test(p, TestKind::PST); }},
    {"a wet layer of no thickness", CheckCode::wet_but_cold, 0,
     [](PitT& p) {
       layers(p, {{cm(10), cm(10)}});
       layer(p).wetness = Wetness::W;
       add_temperature(p, cm(10), -600);
     }},
    {"a gradient over a metre and a hair", CheckCode::gradient_unusual, 1,
     [](PitT& p) { add_temperature(p, 0, -10001), add_temperature(p, 100009, 0); }},
    {"a hair more apart", CheckCode::gradient_unusual, 0,
     [](PitT& p) { add_temperature(p, 0, -10001), add_temperature(p, 100010, 0); }},
    {"exactly a hundred degrees a metre", CheckCode::gradient_unusual, 0,
     [](PitT& p) { add_temperature(p, 0, -10000), add_temperature(p, 100000, 0); }},
    {"a hundredth more", CheckCode::gradient_unusual, 1,
     [](PitT& p) { add_temperature(p, 0, -10001), add_temperature(p, 100000, 0); }},
    {"snow of no known hardness is not soft", CheckCode::slab_very_soft, 0,
     [](PitT& p) { test(p, TestKind::CT); }},
    {"a test without taps in all did not stop early", CheckCode::stopped_early, 0,
     [](PitT& p) { add_test(p, TestKind::CT).outcome = TestOutcome::no_fracture; }},
    {"the first sample of a profile", CheckCode::reading_upside_down, 1,
     [](PitT& p) {
       densities(p, {{cm(10), cm(10)}, {cm(10), cm(20)}});
     }},
    {"an unbroken layer below the snow", CheckCode::depth_below_snow, 1,
     [](PitT& p) { add_test(p, TestKind::CT).unbroken = {down(cm(140) + 1)}; }},
    {"an unbroken layer above it", CheckCode::negative_depth, 1,
     [](PitT& p) {
       add_test(p, TestKind::CT).unbroken = {down(-1), down(cm(10))};
     }},
    {"a height from the ground is known", CheckCode::unknown_code, 0,
     [](PitT& p) { *layer(p).bottom = up(cm(10)); }},
    {"a depth at right angles to the slope is known", CheckCode::unknown_code, 0,
     [](PitT& p) { *layer(p).bottom = slope_normal(cm(10)); }},
};

void expect(const Row& row) {
  PitT pit = one_layer_pit();
  row.add(pit);
  EXPECT_EQ(count_of(checks_of(pit), row.code), row.times) << EnumNameCheckCode(row.code) << ": " << row.what;
}

TEST(Limits, OfALayer) {
  for (const Row& row : kLayer) expect(row);
}
TEST(Limits, OfGeometry) {
  for (const Row& row : kGeometry) expect(row);
}
TEST(Limits, OfProfiles) {
  for (const Row& row : kProfiles) expect(row);
}
TEST(Limits, OfTests) {
  for (const Row& row : kTests) expect(row);
}
TEST(Limits, OfWhatLiesAround) {
  for (const Row& row : kAround) expect(row);
}

struct Compared {
  std::uint16_t here;
  CompassPoint point;  // none = by degrees
  std::uint16_t there;
  bool told;
};

TEST(Limits, OfAspectsSaidToBeTheSame) {
  const Compared rows[] = {{180, CompassPoint::N, 0, true},      {90, CompassPoint::NW, 0, true},
                           {0, CompassPoint::N, 0, false},       {180, CompassPoint::none, 0, true},
                           {180, CompassPoint::none, 360, true}, {360, CompassPoint::none, 180, true},
                           {0, CompassPoint::none, 180, true},   {361, CompassPoint::none, 180, false}};
  for (const Compared& row : rows) {
    PitT pit = one_layer_pit();
    site(pit).aspect_deg = row.here;
    pit.choice = std::make_unique<ChoiceT>();
    pit.choice->aspect = Comparison::same;
    if (row.point != CompassPoint::none) pit.choice->interest_aspect_point = row.point;
    if (row.point == CompassPoint::none) pit.choice->interest_aspect_deg = row.there;
    EXPECT_EQ(count_of(checks_of(pit), CheckCode::aspect_said_same_but_apart), row.told ? 1u : 0u)
        << row.here << " " << row.there;
  }
}

TEST(Limits, OfElevationsSaidToBeTheSame) {
  for (const auto& [said, apart, told] : std::vector<std::tuple<Comparison, std::int32_t, bool>>{
           {Comparison::same, metres(200), false},
           {Comparison::same, metres(200) + 1, true},
           {Comparison::similar, metres(400), false},
           {Comparison::similar, metres(400) + 1, true}}) {
    PitT pit = one_layer_pit();
    site(pit).elevation_10um = metres(1000);
    pit.choice = std::make_unique<ChoiceT>();
    pit.choice->elevation = said;
    pit.choice->interest_elevation_10um = metres(1000) + apart;
    EXPECT_EQ(count_of(checks_of(pit), CheckCode::elevation_said_same_but_apart), told ? 1u : 0u) << apart;
  }
}

TEST(Limits, OfWindClasses) {
  const struct {
    WindClass wind;
    std::int32_t from, to;
  } rows[] = {
      {WindClass::C, 0, 0}, {WindClass::L, 1, 800}, {WindClass::M, 700, 1200}, {WindClass::S, 1100, 1800}};
  for (const auto& row : rows) {
    for (const std::int32_t cms : {row.from - 1, row.from, row.to, row.to + 1}) {
      if (cms < 0) continue;
      PitT pit = one_layer_pit();
      weather(pit).wind = row.wind;
      pit.weather->wind_speed_cms = cms;
      EXPECT_EQ(count_of(checks_of(pit), CheckCode::wind_contradicts_itself),
                cms < row.from || cms > row.to ? 1u : 0u)
          << EnumNameWindClass(row.wind) << cms;
    }
  }
}

// The only layer has a form of each main class: what a test names is there by its class and nothing else.
TEST(Limits, OfMainClasses) {
  for (const GrainForm there : EnumValuesGrainForm()) {
    for (const GrainForm named : EnumValuesGrainForm()) {
      PitT pit = one_layer_pit();
      layer(pit).grain_form = there;
      name_layer(test(pit, TestKind::CT), named);
      const bool same = static_cast<int>(there) / 10 == static_cast<int>(named) / 10;
      EXPECT_EQ(count_of(checks_of(pit), CheckCode::fracture_far_from_layer_named), same ? 0u : 1u)
          << EnumNameGrainForm(there) << " " << EnumNameGrainForm(named);
    }
  }
}

// Where a check points when its thing is the only one of its kind, or the first of a list.
TEST(Places, OfTheOnlyAndOfTheFirst) {
  PitT pit = one_layer_pit();
  pit.choice = std::make_unique<ChoiceT>();
  pit.choice->interest_slope_deg = std::uint8_t{91};
  pit.choice->interest_aspect_deg = std::uint16_t{361};
  pit.choice->interest_elevation_10um = metres(9000) + 1;
  pit.surface = std::make_unique<SurfaceT>();
  pit.surface->feature_aspect_deg = std::uint16_t{361};
  pit.surface->temperature_cdegc = 51;
  for (int i = 0; i < 2; ++i) {
    pit.slides.push_back(std::make_unique<SlideT>());
    pit.slides.back()->aspect_deg = std::uint16_t{361};
  }
  weather(pit).wind_from_deg = std::uint16_t{361};
  std::vector<std::string> lines;
  for (const Check& check : checks_of(pit)) {
    const std::string path = path_of(check.place());
    if (path.find("aspect") == std::string::npos && path.find("slope") == std::string::npos &&
        path.find("elevation") == std::string::npos && path.find("temperature") == std::string::npos &&
        path.find("wind") == std::string::npos) {
      continue;
    }
    const bool listed = path.find('[') != std::string::npos;
    EXPECT_EQ(check.place().index() >= 0, listed) << path;
    EXPECT_EQ(check.place().sub(), -1) << path;
    if (!listed) {
      EXPECT_EQ(check.place().index(), -1) << path;
    }
    lines.push_back(line_of(check));
  }
  std::sort(lines.begin(), lines.end());
  EXPECT_EQ(
      lines,
      (std::vector<std::string>{
          "aspect_out_of_range at choice.interest_aspect_deg", "aspect_out_of_range at slides[0].aspect_deg",
          "aspect_out_of_range at slides[1].aspect_deg", "aspect_out_of_range at surface.feature_aspect_deg",
          "aspect_out_of_range at weather.wind_from_deg",
          "elevation_out_of_range at choice.interest_elevation_m",
          "site_cannot_be_compared at site.aspect_deg", "site_cannot_be_compared at site.elevation_m",
          "site_cannot_be_compared at site.slope_deg", "slope_out_of_range at choice.interest_slope_deg",
          "snow_above_freezing at surface.temperature_degc"}));
}

TEST(Codes, AreNamedInTheFirstOfEveryList) {
  const std::uint8_t strange = 251;
  PitT pit = one_layer_pit();
  weather(pit).sky = static_cast<SkyCondition>(strange);
  for (int i = 0; i < 2; ++i) {
    pit.observers.push_back(std::make_unique<ObserverT>());
    pit.observers.back()->training = static_cast<Training>(strange);
    pit.absences.push_back(std::make_unique<AbsenceT>());
    pit.absences.back()->reason = static_cast<AbsentReason>(strange);
    pit.slides.push_back(std::make_unique<SlideT>());
    pit.slides.back()->kind = static_cast<SlideKind>(strange);
    pit.steps.push_back(std::make_unique<StepT>());
    pit.steps.back()->kind = static_cast<StepKind>(strange);
    pit.strength.push_back(std::make_unique<StrengthProfileT>());
    pit.strength.back()->kind = static_cast<StrengthKind>(strange);
    pit.impurities.push_back(std::make_unique<ImpurityProfileT>());
    pit.impurities.back()->impurity = static_cast<Impurity>(strange);
    for (int k = 0; k < 2; ++k) {
      pit.strength.back()->readings.push_back(std::make_unique<StrengthReadingT>());
      pit.strength.back()->readings.back()->quality = static_cast<ShearQuality>(strange);
      pit.impurities.back()->readings.push_back(std::make_unique<ImpurityReadingT>());
      pit.impurities.back()->readings.back()->mass_fraction_unit = static_cast<FractionUnit>(strange);
    }
  }
  layer(pit).candidates.assign(70, static_cast<GrainForm>(strange));
  std::vector<std::string> lines;
  std::size_t candidates = 0;
  for (const Check& check : checks_of(pit)) {
    if (check.code() != CheckCode::unknown_code) continue;
    const std::string path = path_of(check.place());
    EXPECT_EQ(check.place().index() == -1, path.find('[') == std::string::npos) << path;
    candidates += path == "layers[0].candidates" ? 1u : 0u;
    if (path != "layers[0].candidates") lines.push_back(path);
  }
  EXPECT_EQ(candidates, 64u);  // no hand writes more
  EXPECT_EQ(lines, (std::vector<std::string>{"absences",
                                             "absences",
                                             "observers[0].training",
                                             "observers[1].training",
                                             "weather.sky",
                                             "strength[0].kind",
                                             "strength[1].kind",
                                             "strength[0].readings[0].quality",
                                             "strength[0].readings[1].quality",
                                             "strength[1].readings[0].quality",
                                             "strength[1].readings[1].quality",
                                             "impurities[0].impurity",
                                             "impurities[1].impurity",
                                             "impurities[0].readings[0].mass_fraction_unit",
                                             "impurities[0].readings[1].mass_fraction_unit",
                                             "impurities[1].readings[0].mass_fraction_unit",
                                             "impurities[1].readings[1].mass_fraction_unit",
                                             "slides[0].kind",
                                             "slides[1].kind",
                                             "steps[0].kind",
                                             "steps[1].kind"}));
}

struct When {
  Moment begin, other;
  bool told;
};

// A day is compared with a day, a time with a time; offsets count only where both are known.
TEST(Limits, OfTimes) {
  const auto at = [](int day, int hour, std::int16_t offset, bool known, TimePrecision precision) {
    const Moment moment = local_time(2027, 1, day, hour, 0, offset);
    return Moment(moment.local_s(), offset, precision, known ? 1 : 0);
  };
  constexpr auto kDay = TimePrecision::day;
  constexpr auto kMinute = TimePrecision::minute;
  const When rows[] = {
      {at(16, 11, 0, true, kMinute), at(16, 11, 0, true, kMinute), false},
      {at(16, 11, 0, true, kMinute), at(16, 10, 0, true, kMinute), true},
      {at(16, 11, -420, true, kMinute), at(16, 17, 0, true, kMinute), true},    // 18:00 and 17:00 UTC
      {at(16, 11, -420, true, kMinute), at(16, 17, 0, false, kMinute), false},  // clocks side by side
      {at(16, 11, -420, false, kMinute), at(16, 17, 0, true, kMinute), false},
      {at(16, 11, 0, true, kDay), at(16, 10, 0, true, kMinute), false},
      {at(16, 11, 0, true, kMinute), at(16, 10, 0, true, kDay), false},
      {at(16, 11, 0, true, kMinute), at(15, 10, 0, true, kDay), true},
      {at(16, 11, 0, true, kDay), at(15, 23, 0, true, kMinute), true},
      {at(16, 11, 0, true, TimePrecision::none), at(15, 23, 0, true, kMinute), false},
      {at(16, 11, 0, true, kMinute), at(15, 10, 0, true, TimePrecision::none), false},
  };
  for (const When& row : rows) {
    SCOPED_TRACE(&row - rows);
    PitT pit = one_layer_pit();
    pit.time = std::make_unique<TimeSpan>(row.begin, row.other);
    pit.edited = std::make_unique<Moment>(row.other);
    pit.reported = std::make_unique<Moment>(row.other);
    const checking::Checks checks = checks_of(pit);
    const bool without_time = row.begin.precision() == TimePrecision::none;
    EXPECT_EQ(count_of(checks, CheckCode::time_ends_before_begin), row.told ? 1u : 0u);
    EXPECT_EQ(count_of(checks, CheckCode::changed_before_dug), row.told ? 2u : 0u);
    EXPECT_EQ(count_of(checks, CheckCode::time_missing), without_time ? 1u : 0u);
  }
}

// Days before 1970 are whole days too.
TEST(Limits, OfDaysBefore1970) {
  const std::int64_t day = 86400;
  const struct {
    std::int64_t named_s, dug_s;
    std::int32_t days;  // 0 = nothing is told
  } rows[] = {{-1, -1, 0},      {0, -1, 1},  {-day, -1, 0}, {-1, -day, 0},     {-day, -day - 1, 1},
              {day - 1, 0, 0},  {day, 0, 1}, {day, -1, 2},  {-day - 1, -1, 0}, {3 * day, day - 1, 3},
              {-1, -day - 1, 1}};
  for (const auto& row : rows) {
    PitT pit = one_layer_pit();
    pit.time = std::make_unique<TimeSpan>(instant(Moment(row.dug_s, 0, TimePrecision::day, 1)));
    pit.layers[0]->name = std::make_unique<LayerNameT>();
    pit.layers[0]->name->date = std::make_unique<Moment>(row.named_s, std::int16_t{0}, TimePrecision::day, 1);
    std::int32_t days = 0;
    for (const Check& check : checks_of(pit)) {
      if (check.code() == CheckCode::layer_named_after_the_pit) days = check.a();
    }
    EXPECT_EQ(days, row.days) << row.named_s << " " << row.dug_s;
  }
}

TEST(Limits, OfOffsets) {
  for (const std::int16_t offset :
       {std::int16_t{-1440}, std::int16_t{-1439}, std::int16_t{1439}, std::int16_t{1440}}) {
    PitT pit = one_layer_pit();
    pit.time = std::make_unique<TimeSpan>(instant(date(2027, 1, 16)));
    pit.reported = std::make_unique<Moment>(local_time(2027, 1, 17, 11, 0, offset));
    pit.edited = std::make_unique<Moment>(local_time(2027, 1, 17, 11, 0, offset));
    EXPECT_EQ(count_of(checks_of(pit), CheckCode::offset_out_of_range),
              offset == -1440 || offset == 1440 ? 2u : 0u);
  }
}

// What is told of a reading that lies in no single layer names no form; one that lies in a layer names its
// main class.
TEST(Limits, AnUnusualDensityNamesTheFormItIsUnusualFor) {
  const struct {
    std::int32_t top, bottom;
    std::int32_t form;
  } rows[] = {{0, cm(10), static_cast<std::int32_t>(GrainForm::PP)},
              {0, cm(10) + 1, 0},
              {cm(20), cm(30), 0},
              {cm(5), cm(10), static_cast<std::int32_t>(GrainForm::PP)}};
  for (const auto& row : rows) {
    PitT pit;
    add_layer(pit, 0, cm(10)).grain_form = GrainForm::PPsd;
    add_density(pit, row.top, row.bottom, 299);
    for (const Check& check : checks_of(pit)) {
      if (check.code() != CheckCode::density_unusual) continue;
      EXPECT_EQ(check.c(), row.form) << row.bottom;
    }
    EXPECT_EQ(count_of(checks_of(pit), CheckCode::density_unusual), 1u);
  }
}

TEST(Limits, ALineWithoutItsNumberIsLineNone) {
  PitT pit;
  pit.unread.push_back(std::make_unique<UnreadT>());
  const checking::Checks checks = checks_of(pit);
  const auto told = std::find_if(checks.begin(), checks.end(), [](const Check& check) {
    return check.code() == CheckCode::line_not_understood;
  });
  ASSERT_NE(told, checks.end());
  EXPECT_EQ(told->a(), 0);
}

auto position(const Check& check) {
  const Place& place = check.place();
  return std::make_tuple(static_cast<int>(check.code()) / 100, place.thing(), place.index(), place.sub(),
                         place.field(), check.code(), check.a(), check.b(), check.c());
}

// Block, place, code, numbers: where two checks differ in anything, one of them comes first.
TEST(Order, EveryDifferenceDecides) {
  PitT pit = one_layer_pit();
  LayerT& hoar = layer(pit);
  hoar.grain_form = GrainForm::SH;
  hoar.grain_size_10um = 6000;  // told before the thickness, whose field comes first
  densities(pit, {{cm(20), cm(30)}, {0, cm(10)}});
  for (const auto& reading : pit.densities[0]->readings) reading->density_dkgm3 = 10;
  StabilityTestT& column = add_test(pit, TestKind::CT);
  column.column_depth_10um = cm(10);
  for (const std::int32_t depth : {cm(130), cm(20), cm(40)}) {
    add_fracture(column, depth);
    column.unbroken.push_back(down(depth));
  }
  const checking::Checks checks = checks_of(pit);
  EXPECT_EQ(count_of(checks, CheckCode::unbroken_contradicts_fracture), 3u);
  EXPECT_EQ(count_of(checks, CheckCode::density_impossible), 2u);
  EXPECT_EQ(count_of(checks, CheckCode::surface_hoar_thick), 1u);
  EXPECT_EQ(count_of(checks, CheckCode::fracture_below_column), 3u);
  for (std::size_t i = 1; i < checks.size(); ++i) {
    EXPECT_LT(position(checks[i - 1]), position(checks[i])) << line_of(checks[i]);
  }
}

// The same thing told many times is in order too.
TEST(Order, HoldsManyOfOneAndTheSame) {
  PitT pit = one_layer_pit();
  test(pit, TestKind::CT);
  for (int i = 0; i < 100; ++i) pit.tests[0]->unbroken.push_back(down(cm(50)));
  const checking::Checks checks = checks_of(pit);
  EXPECT_EQ(count_of(checks, CheckCode::unbroken_contradicts_fracture), 64u);  // no hand writes more
  EXPECT_TRUE(std::is_sorted(checks.begin(), checks.end(), [](const Check& one, const Check& other) {
    return position(one) < position(other);
  }));
}

}  // namespace
}  // namespace firn::tests
