// Every code twice: something that triggers it, and the nearest thing that does not.
#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <string>
#include <utility>

#include "checking_cases.h"
#include "checking_help.h"

namespace firn::tests {
namespace {

using namespace firnbook;  // NOLINT: the table below is nothing but the schema's names

void clear_layers(PitT& pit) {
  pit.layers.clear();
  pit.tests.clear();
  pit.densities.clear();
  pit.temperatures.clear();
}
void clear_tests(PitT& pit) {
  pit.tests.clear();
}
FractureT& only_ect(PitT& pit, std::uint8_t tap, Crossing crossing, std::uint8_t crossed) {
  clear_tests(pit);
  FractureT& fracture = add_extended_column(pit, tap, crossing, cm(68));
  fracture.tap_crossed = crossed;
  return fracture;
}
FractureT& only_ct(PitT& pit, std::uint8_t tap, std::int32_t depth = cm(68)) {
  clear_tests(pit);
  return add_compression_test(pit, tap, FractureCharacter::SP, depth);
}
void only_saw(PitT& pit, std::int32_t cut, std::int32_t column, SawEnd end = SawEnd::End) {
  clear_tests(pit);
  add_saw_test(pit, cut, column, end, cm(68));
}
StabilityTestT& only_test(PitT& pit, TestKind kind) {
  clear_tests(pit);
  return add_test(pit, kind);
}
FractureT& only_rutschblock(PitT& pit, std::uint8_t step) {
  FractureT& fracture = add_fracture(only_test(pit, TestKind::RB), cm(68));
  fracture.step = step;
  return fracture;
}
LayerT& one_layer(PitT& pit, std::int32_t bottom = cm(140)) {
  clear_layers(pit);
  return add_layer(pit, 0, bottom);
}
void two_layers(PitT& pit, std::int32_t first_bottom, std::int32_t second_top) {
  clear_layers(pit);
  add_layer(pit, 0, first_bottom);
  add_layer(pit, second_top, cm(140));
}
void one_temperature(PitT& pit, std::int32_t cdegc) {
  pit.temperatures.clear();
  add_temperature(pit, cm(10), cdegc);
}
void one_density(PitT& pit, std::int32_t dkgm3) {
  pit.densities.clear();
  add_density(pit, cm(31), cm(68), dkgm3);
}
void wet_layer(PitT& pit, Wetness wetness, std::int32_t cdegc) {
  one_layer(pit).wetness = wetness;
  add_temperature(pit, cm(50), cdegc);
}
void probe(PitT& pit, const std::vector<std::int32_t>& strikes) {
  pit.site->probes_10um = strikes;
}
void begin(PitT& pit, const Moment& moment) {
  pit.time = std::make_unique<TimeSpan>(instant(moment));
}
Moment with_offset(std::int16_t minutes, std::uint8_t known) {
  return {seconds_of(CalendarTime{2027, 1, 16, 11, 20, 0}), minutes, TimePrecision::minute, known};
}

std::vector<Case> geometry_cases() {
  return {
      {CheckCode::layer_without_top, [](PitT& p) { one_layer(p).top.reset(); },
       [](PitT& p) { one_layer(p).top = std::make_unique<Depth>(down(0)); }},
      {CheckCode::layer_without_bottom, [](PitT& p) { one_layer(p).bottom.reset(); },
       [](PitT& p) { one_layer(p, cm(140)); }},
      {CheckCode::layer_upside_down, [](PitT& p) { one_layer(p, 0); }, [](PitT& p) { one_layer(p, 1); }},
      {CheckCode::layers_overlap, [](PitT& p) { two_layers(p, cm(50), cm(50) - 1); },
       [](PitT& p) { two_layers(p, cm(50), cm(50)); }},
      {CheckCode::gap_between_layers, [](PitT& p) { two_layers(p, cm(50), cm(50) + 1); },
       [](PitT& p) { two_layers(p, cm(50), cm(50)); }},
      {CheckCode::layer_below_ground, [](PitT& p) { one_layer(p, cm(140) + 1); },
       [](PitT& p) { one_layer(p, cm(140)); }},
      {CheckCode::layers_do_not_reach_ground,
       [](PitT& p) {
         one_layer(p, cm(140) - 1);
         p.reached_ground = true;
       },
       [](PitT& p) {
         one_layer(p, cm(140));
         p.reached_ground = true;
       }},
      {CheckCode::depth_datum_unknown, [](PitT& p) { *one_layer(p).bottom = nowhere_from(cm(140)); },
       [](PitT& p) { *one_layer(p).bottom = down(cm(140)); }},
      {CheckCode::depth_without_hs,
       [](PitT& p) {
         *one_layer(p).bottom = up(0);
         p.snowpack->hs_10um = flatbuffers::nullopt;
       },
       [](PitT& p) { *one_layer(p).bottom = up(0); }},
      {CheckCode::depth_below_snow, [](PitT& p) { add_temperature(p, cm(140) + 1, -50); },
       [](PitT& p) { add_temperature(p, cm(140), -40); }},
      {CheckCode::negative_depth, [](PitT& p) { *one_layer(p).top = down(-1); },
       [](PitT& p) { *one_layer(p).top = down(0); }},
      {CheckCode::directions_mixed, [](PitT& p) { *p.tests[0]->fractures[0]->depth = slope_normal(cm(16)); },
       [](PitT& p) {
         *p.tests[0]->fractures[0]->depth = Depth(cm(16), Datum::surface, Direction::vertical);
       }},
      {CheckCode::layers_out_of_order, [](PitT& p) { std::swap(p.layers[2], p.layers[3]); }, [](PitT&) {}},
      {CheckCode::negative_hs, [](PitT& p) { p.snowpack->hs_10um = -1; },
       [](PitT& p) { p.snowpack->hs_10um = 0; }},
      {CheckCode::first_layer_not_at_surface, [](PitT& p) { *one_layer(p).top = down(1); },
       [](PitT& p) { *one_layer(p).top = down(0); }},
      {CheckCode::reading_upside_down, [](PitT& p) { add_density(p, cm(10), cm(10), 1000); },
       [](PitT& p) { add_density(p, cm(10), cm(10) + 1, 1000); }},
  };
}

std::vector<Case> layer_cases() {
  return {
      {CheckCode::size_not_positive, [](PitT& p) { one_layer(p).grain_size_10um = 0; },
       [](PitT& p) { one_layer(p).grain_size_10um = 1; }},
      {CheckCode::size_impossible, [](PitT& p) { one_layer(p).grain_size_10um = 5001; },
       [](PitT& p) { one_layer(p).grain_size_10um = 5000; }},
      {CheckCode::size_max_below_size,
       [](PitT& p) {
         LayerT& layer = one_layer(p);
         layer.grain_size_10um = 200;
         layer.grain_size_max_10um = 199;
       },
       [](PitT& p) {
         LayerT& layer = one_layer(p);
         layer.grain_size_10um = 200;
         layer.grain_size_max_10um = 200;
       }},
      {CheckCode::unknown_code, [](PitT& p) { one_layer(p).grain_form = static_cast<GrainForm>(96); },
       [](PitT& p) { one_layer(p).grain_form = GrainForm::IFsc; }},
      {CheckCode::hardness_twice,
       [](PitT& p) {
         LayerT& layer = one_layer(p);
         layer.hardness = HandHardness::Fist;
         layer.hardness_bottom = HandHardness::FourFinger;
       },
       [](PitT& p) {
         LayerT& layer = one_layer(p);
         layer.hardness_top = HandHardness::Fist;
         layer.hardness_bottom = HandHardness::FourFinger;
       }},
      {CheckCode::words_without_code, [](PitT& p) { one_layer(p).words = "sugary"; },
       [](PitT& p) {
         LayerT& layer = one_layer(p);
         layer.words = "sugary";
         layer.grain_form = GrainForm::DH;
       }},
      {CheckCode::ice_softer_than_knife,
       [](PitT& p) {
         LayerT& layer = one_layer(p);
         layer.grain_form = GrainForm::IFrc;
         layer.hardness = HandHardness::KnifeMinus;
       },
       [](PitT& p) {
         LayerT& layer = one_layer(p);
         layer.grain_form = GrainForm::IFrc;
         layer.hardness = HandHardness::Knife;
       }},
      {CheckCode::size_contradicts_form,
       [](PitT& p) {
         LayerT& layer = one_layer(p);
         layer.grain_form = GrainForm::RGsr;
         layer.grain_size_10um = 25;
       },
       [](PitT& p) {
         LayerT& layer = one_layer(p);
         layer.grain_form = GrainForm::RGsr;
         layer.grain_size_10um = 24;
       }},
      {CheckCode::surface_hoar_thick, [](PitT& p) { one_layer(p, cm(5) + 1).grain_form = GrainForm::SHsu; },
       [](PitT& p) { one_layer(p, cm(5)).grain_form = GrainForm::SHsu; }},
  };
}

std::vector<Case> profile_cases() {
  return {
      {CheckCode::snow_above_freezing, [](PitT& p) { one_temperature(p, 51); },
       [](PitT& p) { one_temperature(p, 50); }},
      {CheckCode::snow_slightly_above_freezing, [](PitT& p) { one_temperature(p, 1); },
       [](PitT& p) { one_temperature(p, 0); }},
      {CheckCode::wet_but_cold, [](PitT& p) { wet_layer(p, Wetness::M, -51); },
       [](PitT& p) { wet_layer(p, Wetness::M, -50); }},
      {CheckCode::temperature_too_low, [](PitT& p) { one_temperature(p, -7001); },
       [](PitT& p) { one_temperature(p, -7000); }},
      {CheckCode::two_temperatures_at_one_depth,
       [](PitT& p) {
         one_temperature(p, -500);
         add_temperature(p, cm(10), -501);
       },
       [](PitT& p) {
         one_temperature(p, -500);
         add_temperature(p, cm(10), -500);
       }},
      {CheckCode::density_impossible, [](PitT& p) { one_density(p, 9171); },
       [](PitT& p) { one_density(p, 9170); }},
      {CheckCode::density_unusual, [](PitT& p) { one_density(p, 299); },
       [](PitT& p) { one_density(p, 300); }},
      {CheckCode::water_differs_from_densities,
       [](PitT& p) {  // 140 cm of 200 kg/m3 hold 280 mm, a tenth more is 308 mm
         clear_layers(p);
         add_density(p, 0, cm(140), 2000);
         p.snowpack->hs_water_10um = 30801;
       },
       [](PitT& p) {
         clear_layers(p);
         add_density(p, 0, cm(140), 2000);
         p.snowpack->hs_water_10um = 30800;
       }},
  };
}

std::vector<Case> tap_cases() {
  return {
      {CheckCode::tap_out_of_range, [](PitT& p) { only_ct(p, 31); }, [](PitT& p) { only_ct(p, 30); }},
      {CheckCode::band_contradicts_tap, [](PitT& p) { only_ct(p, 11).stage = LoadStage::wrist; },
       [](PitT& p) { only_ct(p, 10).stage = LoadStage::wrist; }},
      {CheckCode::crossing_before_crack, [](PitT& p) { only_ect(p, 13, Crossing::not_crossed, 12); },
       [](PitT& p) { only_ect(p, 13, Crossing::crossed, 13); }},
      {CheckCode::crossing_contradicts_taps, [](PitT& p) { only_ect(p, 12, Crossing::crossed, 14); },
       [](PitT& p) { only_ect(p, 12, Crossing::crossed, 13); }},
      {CheckCode::crossing_depends_on_rule, [](PitT& p) { only_ect(p, 12, Crossing::crossed, 13); },
       [](PitT& p) { only_ect(p, 12, Crossing::crossed, 12); }},
      {CheckCode::crossing_unknown,
       [](PitT& p) { add_extended_column(p, 13, Crossing::crossed, cm(68)).crossing = flatbuffers::nullopt; },
       [](PitT& p) { only_ect(p, 13, Crossing::crossed, 13).crossing = flatbuffers::nullopt; }},
      {CheckCode::fracture_without_load, [](PitT& p) { only_ct(p, 12).tap = flatbuffers::nullopt; },
       [](PitT& p) {
         FractureT& fracture = only_ct(p, 12);
         fracture.tap = flatbuffers::nullopt;
         fracture.stage = LoadStage::elbow;
       }},
  };
}

std::vector<Case> test_cases() {
  return {
      {CheckCode::no_fracture_with_result,
       [](PitT& p) {
         only_ct(p, 12);
         p.tests[0]->outcome = TestOutcome::no_fracture;
       },
       [](PitT& p) { only_test(p, TestKind::CT).outcome = TestOutcome::no_fracture; }},
      {CheckCode::fractured_without_fracture,
       [](PitT& p) { only_test(p, TestKind::CT).outcome = TestOutcome::fractured; },
       [](PitT& p) { only_ct(p, 12); }},
      {CheckCode::fracture_without_depth, [](PitT& p) { only_ct(p, 12).depth.reset(); },
       [](PitT& p) { only_ct(p, 12); }},
      {CheckCode::fracture_depth_datum_unknown, [](PitT& p) { *only_ct(p, 12).depth = nowhere_from(cm(75)); },
       [](PitT& p) { *only_ct(p, 12).depth = up(cm(72)); }},
      {CheckCode::fracture_below_snow, [](PitT& p) { only_ct(p, 12, cm(140) + 1); },
       [](PitT& p) { only_ct(p, 12, cm(140)); }},
      // The hoar lies from 68 to 69 cm.
      {CheckCode::fracture_far_from_layer_named,
       [](PitT& p) { name_layer(only_ct(p, 12, cm(66) - 1), GrainForm::SH); },
       [](PitT& p) { name_layer(only_ct(p, 12, cm(66)), GrainForm::SH); }},
      {CheckCode::fracture_away_from_boundaries, [](PitT& p) { only_ct(p, 12, cm(33) + 1); },
       [](PitT& p) { only_ct(p, 12, cm(33)); }},
      {CheckCode::test_depth_beyond_useful, [](PitT& p) { only_ct(p, 12, cm(120) + 1); },
       [](PitT& p) { only_ct(p, 12, cm(120)); }},
      {CheckCode::extended_column_deep,
       [](PitT& p) {
         clear_tests(p);
         add_extended_column(p, 12, Crossing::crossed, cm(70) + 1);
       },
       [](PitT& p) {
         clear_tests(p);
         add_extended_column(p, 12, Crossing::crossed, cm(70));
       }},
      {CheckCode::quality_on_extended_column,
       [](PitT& p) { only_ect(p, 12, Crossing::crossed, 12).quality = ShearQuality::Q1; },
       [](PitT& p) { only_ct(p, 12).quality = ShearQuality::Q1; }},
      {CheckCode::character_on_extended_column,
       [](PitT& p) { only_ect(p, 12, Crossing::crossed, 12).character = FractureCharacter::SP; },
       [](PitT& p) { only_ct(p, 12); }},
      {CheckCode::not_valid_without_reason,
       [](PitT& p) { only_test(p, TestKind::CT).outcome = TestOutcome::not_valid; },
       [](PitT& p) {
         StabilityTestT& test = only_test(p, TestKind::CT);
         test.outcome = TestOutcome::not_valid;
         test.not_valid_reason = NotValidReason::sank_in;
       }},
      {CheckCode::test_without_result, [](PitT& p) { only_test(p, TestKind::CT); },
       [](PitT& p) { only_test(p, TestKind::other).words = "block pushed over by hand"; }},
      {CheckCode::test_without_kind, [](PitT& p) { only_ct(p, 12), p.tests[0]->kind = flatbuffers::nullopt; },
       [](PitT& p) { only_ct(p, 12), p.tests[0]->kind = TestKind::other; }},
      {CheckCode::rutschblock_step_out_of_range, [](PitT& p) { only_rutschblock(p, 7); },
       [](PitT& p) { only_rutschblock(p, 6); }},
      {CheckCode::rutschblock_slope_too_gentle,
       [](PitT& p) { only_rutschblock(p, 4), p.site->slope_deg = std::uint8_t{29}; },
       [](PitT& p) { only_rutschblock(p, 4), p.site->slope_deg = std::uint8_t{30}; }},
  };
}

std::vector<Case> saw_cases() {
  return {
      {CheckCode::saw_cut_longer_than_column, [](PitT& p) { only_saw(p, cm(100) + 1, cm(100)); },
       [](PitT& p) { only_saw(p, cm(100), cm(100)); }},
      {CheckCode::saw_cut_not_positive, [](PitT& p) { only_saw(p, 0, cm(100)); },
       [](PitT& p) { only_saw(p, 1, cm(100)); }},
      {CheckCode::saw_column_length_unusual, [](PitT& p) { only_saw(p, cm(30), cm(110) + 1); },
       [](PitT& p) { only_saw(p, cm(30), cm(110)); }},
      {CheckCode::saw_stopped_at_full_cut, [](PitT& p) { only_saw(p, cm(100), cm(100), SawEnd::Arr); },
       [](PitT& p) { only_saw(p, cm(100) - 1, cm(100), SawEnd::Arr); }},
      {CheckCode::saw_length_missing,
       [](PitT& p) {
         only_saw(p, cm(25), cm(100));
         p.tests[0]->column_length_10um = flatbuffers::nullopt;
       },
       [](PitT& p) { only_saw(p, cm(25), cm(100)); }},
  };
}

std::vector<Case> site_cases() {
  return {
      // Four strikes of 140 cm on average: a fifth is 28 cm.
      {CheckCode::probing_uneven,
       [](PitT& p) {
         probe(p, {cm(126) - 1, cm(140), cm(140), cm(154) + 1});
       },
       [](PitT& p) {
         probe(p, {cm(126), cm(140), cm(140), cm(154)});
       }},
      {CheckCode::probes_too_few,
       [](PitT& p) {
         probe(p, {cm(140), cm(140)});
       },
       [](PitT& p) {
         probe(p, {cm(140), cm(140), cm(140)});
       }},
      {CheckCode::hs_differs_from_probes,
       [](PitT& p) {
         probe(p, {cm(150) + 1, cm(151), cm(152)});
       },
       [](PitT& p) {
         probe(p, {cm(150), cm(151), cm(152)});
       }},
      {CheckCode::slope_out_of_range, [](PitT& p) { p.site->slope_deg = std::uint8_t{91}; },
       [](PitT& p) { p.site->slope_deg = std::uint8_t{90}; }},
      {CheckCode::aspect_out_of_range, [](PitT& p) { p.site->aspect_deg = std::uint16_t{361}; },
       [](PitT& p) { p.site->aspect_deg = std::uint16_t{360}; }},
      {CheckCode::aspect_on_flat_ground, [](PitT& p) { p.site->slope_deg = std::uint8_t{0}; },
       [](PitT& p) { p.site->slope_deg = std::uint8_t{1}; }},
      {CheckCode::coordinates_out_of_range,
       [](PitT& p) { p.site->latitude_e7deg = 900000001, p.site->longitude_e7deg = 0; },
       [](PitT& p) { p.site->latitude_e7deg = 900000000, p.site->longitude_e7deg = -1800000000; }},
      {CheckCode::elevation_out_of_range, [](PitT& p) { p.site->elevation_10um = metres(9000) + 1; },
       [](PitT& p) { p.site->elevation_10um = metres(9000); }},
      // NE is the sector around 45 deg.
      {CheckCode::point_contradicts_degrees, [](PitT& p) { p.site->aspect_deg = std::uint16_t{68}; },
       [](PitT& p) { p.site->aspect_deg = std::uint16_t{67}; }},
      {CheckCode::coordinate_missing, [](PitT& p) { p.site->latitude_e7deg = 0; },
       [](PitT& p) { p.site->latitude_e7deg = 0, p.site->longitude_e7deg = 0; }},
      {CheckCode::probe_negative,
       [](PitT& p) {
         probe(p, {-1, cm(140), cm(140)});
       },
       [](PitT& p) {
         probe(p, {0, cm(140), cm(140)});
       }},
  };
}

std::vector<Case> time_cases() {
  return {
      {CheckCode::time_missing, [](PitT& p) { p.time.reset(); },
       [](PitT& p) { begin(p, date(2027, 1, 16)); }},
      {CheckCode::time_without_offset, [](PitT& p) { begin(p, with_offset(0, 0)); },
       [](PitT& p) { begin(p, with_offset(0, 1)); }},
      {CheckCode::offset_out_of_range, [](PitT& p) { begin(p, with_offset(1440, 1)); },
       [](PitT& p) { begin(p, with_offset(1439, 1)); }},
      {CheckCode::time_ends_before_begin,
       [](PitT& p) {
         p.time = std::make_unique<TimeSpan>(local_time(2027, 1, 16, 11, 20, -420),
                                             local_time(2027, 1, 16, 11, 19, -420));
       },
       [](PitT& p) {
         p.time = std::make_unique<TimeSpan>(local_time(2027, 1, 16, 11, 20, -420),
                                             local_time(2027, 1, 16, 11, 20, -420));
       }},
      {CheckCode::layer_named_after_the_pit, [](PitT& p) { *p.layers[3]->name->date = date(2027, 1, 17); },
       [](PitT& p) { *p.layers[3]->name->date = date(2027, 1, 16); }},
  };
}

std::vector<Case> other_cases() {
  return {
      {CheckCode::wind_contradicts_itself, [](PitT& p) { p.weather->wind_speed_cms = 1201; },
       [](PitT& p) { p.weather->wind_speed_cms = 1200; }},
      {CheckCode::calm_with_direction, [](PitT& p) { p.weather->wind = WindClass::C; },
       [](PitT& p) { p.weather->wind = WindClass::L; }},
      {CheckCode::wind_speed_negative, [](PitT& p) { p.weather->wind_speed_cms = -1; },
       [](PitT& p) { p.weather->wind_speed_cms = 0; }},
      {CheckCode::signs_not_looked_for, [](PitT& p) { p.signs[0]->answer = Answer::not_looked_for; },
       [](PitT& p) { p.signs[2]->answer = Answer::no; }},
      {CheckCode::line_not_understood,
       [](PitT& p) {
         p.unread.push_back(std::make_unique<UnreadT>());
         p.unread[0]->line = 7u;
         p.unread[0]->text = "CT?? maybe";
       },
       [](PitT&) {}},
      {CheckCode::not_backfilled, [](PitT& p) { p.backfilled = false; },
       [](PitT& p) { p.backfilled = flatbuffers::nullopt; }},
      {CheckCode::signs_not_recorded, [](PitT& p) { p.signs.clear(); }, [](PitT& p) { p.signs.resize(1); }},
      {CheckCode::sign_without_answer, [](PitT& p) { p.signs[0]->answer = flatbuffers::nullopt; },
       [](PitT& p) { p.signs[0]->answer = Answer::no; }},
      {CheckCode::slides_contradict_sign,
       [](PitT& p) {
         p.signs[2]->answer = Answer::no;
         p.slides.push_back(std::make_unique<SlideT>());
       },
       [](PitT& p) {
         p.signs[2]->answer = Answer::yes;
         p.slides.push_back(std::make_unique<SlideT>());
       }},
      {CheckCode::edits_not_read, [](PitT& p) { p.unread_edits = 1u; }, [](PitT& p) { p.unread_edits = 0u; }},
  };
}

std::vector<Case> all_cases() {
  std::vector<Case> all;
  for (const std::vector<Case>& part :
       {geometry_cases(), layer_cases(), profile_cases(), tap_cases(), test_cases(), saw_cases(),
        site_cases(), time_cases(), other_cases(), form_cases(), measured_cases(), limit_cases(),
        seen_cases(), representative_cases(), purpose_cases()}) {
    all.insert(all.end(), part.begin(), part.end());
  }
  return all;
}

TEST(Rules, EveryCodeOfTheSchemaHasExactlyOneCase) {
  std::map<CheckCode, int> cases;
  for (const Case& one : all_cases()) ++cases[one.code];
  for (const CheckCode code : EnumValuesCheckCode()) {
    if (code == CheckCode::none) continue;
    EXPECT_EQ(cases[code], 1) << EnumNameCheckCode(code);
  }
}

std::string line_with_numbers(CheckCode code, const std::string& place, std::int32_t a, std::int32_t b,
                              std::int32_t c) {
  return std::string(EnumNameCheckCode(code)) + " at " + place + ": " + std::to_string(a) + ", " +
         std::to_string(b) + ", " + std::to_string(c);
}

class RuleTest : public testing::TestWithParam<Case> {};

TEST_P(RuleTest, TriggersAndLetsTheLimitPass) {
  const Case& one = GetParam();
  const auto triggering = tarn_shoulder();
  one.trigger(*triggering);
  const checking::Checks found = checks_of(*triggering);
  ASSERT_EQ(count_of(found, one.code), count_of(checks_of(*tarn_shoulder()), one.code) + 1);
  for (const Check& check : found) {
    const checking::Rule* rule = checking::find_rule(check.code());
    ASSERT_NE(rule, nullptr);
    EXPECT_EQ(check.severity(), rule->severity);
    EXPECT_EQ(message_of(check).find('{'), std::string::npos) << message_of(check);
    EXPECT_EQ(remedy_of(check).find('{'), std::string::npos) << remedy_of(check);
  }
  const auto passing = tarn_shoulder();
  one.limit(*passing);
  EXPECT_EQ(count_of(checks_of(*passing), one.code), 0u);
}

// What is not listed has position -1, and only what lies in the list of a listed thing has a second one.
void expect_positions(const Check& check) {
  const std::string path = path_of(check.place());
  const auto lists = std::count(path.begin(), path.end(), '[');
  EXPECT_EQ(check.place().index() == -1, lists == 0) << path << " " << check.place().index();
  EXPECT_EQ(check.place().sub() == -1, lists < 2) << path << " " << check.place().sub();
}

TEST_P(RuleTest, SaysWhereAndHowMuch) {
  const auto pit = tarn_shoulder();
  GetParam().trigger(*pit);
  const checking::Checks found = checks_of(*pit);
  for (const Check& check : found) expect_positions(check);
  const std::vector<Said> all = said();
  const auto row =
      std::find_if(all.begin(), all.end(), [](const Said& one) { return one.code == GetParam().code; });
  ASSERT_NE(row, all.end());
  const std::string wanted = line_with_numbers(row->code, row->place, row->a, row->b, row->c);
  std::vector<std::string> lines;
  for (const Check& check : found) {
    if (check.code() != row->code) continue;
    lines.push_back(line_with_numbers(check.code(), path_of(check.place()), check.a(), check.b(), check.c()));
  }
  EXPECT_EQ(std::count(lines.begin(), lines.end(), wanted), 1) << wanted << "\n"
                                                               << testing::PrintToString(lines);
}

std::string case_name(const testing::TestParamInfo<Case>& info) {
  return EnumNameCheckCode(info.param.code);
}

INSTANTIATE_TEST_SUITE_P(EveryCode, RuleTest, testing::ValuesIn(all_cases()), case_name);

}  // namespace
}  // namespace firn::tests
