// Every pit below is Tarn Shoulder with one thing changed (invented).
#include "checking_cases.h"

#include <memory>

#include "../pits.h"

namespace firn::tests {

using namespace firnbook;  // NOLINT: the tables below are nothing but the schema's names

namespace {

LayerT& only_layer(PitT& pit, std::int32_t bottom = cm(140)) {
  pit.layers.clear();
  pit.tests.clear();
  pit.densities.clear();
  pit.temperatures.clear();
  return add_layer(pit, 0, bottom);
}
StabilityTestT& only_test(PitT& pit, TestKind kind) {
  pit.tests.clear();
  return add_test(pit, kind);
}
FractureT& only_fracture(PitT& pit, TestKind kind, std::int32_t depth = cm(68)) {
  return add_fracture(only_test(pit, kind), depth);
}
void two_temperatures(PitT& pit, std::int32_t apart, std::int32_t change) {
  pit.temperatures.clear();
  add_temperature(pit, cm(20), -100);
  add_temperature(pit, cm(20) + apart, -100 - change);
}
void surface_reads(PitT& pit, std::int32_t cdegc) {
  pit.temperatures.clear();
  add_temperature(pit, 0, -1000);
  pit.surface->temperature_cdegc = cdegc;
}
void new_snow(PitT& pit, std::int32_t height, std::int32_t water) {
  pit.snowpack->hn24_10um = height;
  pit.snowpack->hn24_water_10um = water;
}
FractureT& rutschblock(PitT& pit, std::int32_t depth, std::uint8_t step = 4) {
  FractureT& fracture = only_fracture(pit, TestKind::RB, depth);
  fracture.step = step;
  fracture.release = ReleaseType::WB;
  return fracture;
}
void soft_above(PitT& pit, HandHardness hardness) {
  pit.tests.clear();
  pit.layers[0]->hardness = hardness;
  add_compression_test(pit, 6, FractureCharacter::BRK, cm(16));
}
SlideT& slide(PitT& pit) {
  pit.slides.push_back(std::make_unique<SlideT>());
  return *pit.slides.back();
}
SignT& cracking(PitT& pit) {
  for (const auto& sign : pit.signs) {
    if (sign->kind == SignKind::cracking) return *sign;
  }
  add_sign(pit, SignKind::cracking, Answer::yes);
  return *pit.signs.back();
}
ChoiceT& choice(PitT& pit) {
  pit.choice = std::make_unique<ChoiceT>();
  return *pit.choice;
}

// A pit that has everything a purpose can ask for.
void complete(PitT& pit, Purpose purpose) {
  pit.purpose = purpose;
  pit.sharing = Sharing::service;
  pit.site->region = "Larchwater North";
  for (const auto& layer : pit.layers) {
    layer->wetness = Wetness::D;
    if (!layer->grain_size_10um) layer->grain_size_10um = 50;
  }
  pit.temperatures.clear();
  for (int depth = 0; depth <= 140; depth += 20) add_temperature(pit, cm(depth), -500);
  for (const auto& test : pit.tests) {
    if (test->kind == TestKind::PST) test->column_ends = ColumnEnds::vertical;
  }
  slide(pit);
}

template <Purpose kPurpose>
void complete_for(PitT& pit) {
  complete(pit, kPurpose);
}

}  // namespace

std::vector<Case> form_cases() {
  return {
      {CheckCode::new_snow_hard,
       [](PitT& p) {
         LayerT& layer = only_layer(p);
         layer.grain_form = GrainForm::PPsd;
         layer.hardness = HandHardness::Pencil;
       },
       [](PitT& p) {
         LayerT& layer = only_layer(p);
         layer.grain_form = GrainForm::PPsd;
         layer.hardness = HandHardness::PencilMinus;
       }},
      {CheckCode::crust_soft,
       [](PitT& p) {
         LayerT& layer = only_layer(p);
         layer.grain_form = GrainForm::MFcr;
         layer.hardness = HandHardness::FistToFourFinger;
       },
       [](PitT& p) {
         LayerT& layer = only_layer(p);
         layer.grain_form = GrainForm::MFcr;
         layer.hardness = HandHardness::FourFingerMinus;
       }},
      {CheckCode::surface_facets_thick,
       [](PitT& p) { only_layer(p, cm(5) + 1).grain_form = GrainForm::FCsf; },
       [](PitT& p) { only_layer(p, cm(5)).grain_form = GrainForm::FCsf; }},
      {CheckCode::size_class_contradicts_size,
       [](PitT& p) {
         LayerT& layer = only_layer(p);
         layer.grain_size_10um = 101;
         layer.grain_size_class = GrainSizeClass::medium;
       },
       [](PitT& p) {
         LayerT& layer = only_layer(p);
         layer.grain_size_10um = 100;
         layer.grain_size_class = GrainSizeClass::medium;
       }},
      {CheckCode::second_form_repeats_first,
       [](PitT& p) {
         LayerT& layer = only_layer(p);
         layer.grain_form = GrainForm::FC;
         layer.grain_form_second = GrainForm::FC;
       },
       [](PitT& p) {
         LayerT& layer = only_layer(p);
         layer.grain_form = GrainForm::FC;
         layer.grain_form_second = GrainForm::FCxr;
       }},
      {CheckCode::second_form_without_first, [](PitT& p) { only_layer(p).grain_form_second = GrainForm::FC; },
       [](PitT& p) { only_layer(p).grain_form = GrainForm::FC; }},
      {CheckCode::slush_not_soaked,
       [](PitT& p) {
         LayerT& layer = only_layer(p);
         layer.grain_form = GrainForm::MFsl;
         layer.wetness = Wetness::W_V;
       },
       [](PitT& p) {
         LayerT& layer = only_layer(p);
         layer.grain_form = GrainForm::MFsl;
         layer.wetness = Wetness::V;
       }},
  };
}

std::vector<Case> measured_cases() {
  return {
      {CheckCode::gradient_unusual, [](PitT& p) { two_temperatures(p, cm(10), 1001); },
       [](PitT& p) { two_temperatures(p, cm(10), 1000); }},
      {CheckCode::surface_temperature_contradicts_reading, [](PitT& p) { surface_reads(p, -1201); },
       [](PitT& p) { surface_reads(p, -1200); }},
      {CheckCode::reading_across_layers, [](PitT& p) { add_density(p, cm(31), cm(68) + 1, 2000); },
       [](PitT& p) { add_density(p, cm(31), cm(68), 2000); }},
      {CheckCode::readings_overlap,
       [](PitT& p) {
         p.densities.clear();
         add_density(p, cm(31), cm(68), 2000);
         add_density(p, cm(67), cm(68), 2000);
       },
       [](PitT& p) {
         p.densities.clear();
         add_density(p, cm(31), cm(68), 2000);
         add_density(p, cm(31), cm(68), 2100);
       }},
      // 20 cm of new snow hold 60 mm of water at 300 kg/m3.
      {CheckCode::new_snow_density_unusual, [](PitT& p) { new_snow(p, cm(20), 6001); },
       [](PitT& p) { new_snow(p, cm(20), 6000); }},
      {CheckCode::new_snow_deeper_than_snow, [](PitT& p) { p.snowpack->hst_10um = cm(140) + 1; },
       [](PitT& p) { p.snowpack->hst_10um = cm(140); }},
      // 140 cm of ice hold 1283.8 mm.
      {CheckCode::water_exceeds_ice, [](PitT& p) { p.snowpack->hs_water_10um = 128381; },
       [](PitT& p) { p.snowpack->hs_water_10um = 128380; }},
      {CheckCode::new_snow_negative, [](PitT& p) { p.snowpack->hin_10um = -1; },
       [](PitT& p) { p.snowpack->hin_10um = 0; }},
      {CheckCode::changed_before_dug,
       [](PitT& p) { p.edited = std::make_unique<Moment>(local_time(2027, 1, 16, 11, 19, -420)); },
       [](PitT& p) { p.edited = std::make_unique<Moment>(local_time(2027, 1, 16, 11, 20, -420)); }},
      {CheckCode::layer_formed_after_the_pit,
       [](PitT& p) { p.layers[1]->formed = std::make_unique<TimeSpan>(instant(date(2027, 1, 17))); },
       [](PitT& p) { p.layers[1]->formed = std::make_unique<TimeSpan>(instant(date(2027, 1, 16))); }},
  };
}

std::vector<Case> limit_cases() {
  return {
      {CheckCode::column_size_unusual,
       [](PitT& p) { only_test(p, TestKind::ECT).column_width_10um = cm(72) - 1; },
       [](PitT& p) { only_test(p, TestKind::ECT).column_width_10um = cm(72); }},
      // Skis sink in 15 cm.
      {CheckCode::rutschblock_above_penetration, [](PitT& p) { rutschblock(p, cm(15) - 1); },
       [](PitT& p) { rutschblock(p, cm(15)); }},
      {CheckCode::rutschblock_beyond_useful, [](PitT& p) { rutschblock(p, cm(115) + 1); },
       [](PitT& p) { rutschblock(p, cm(115)); }},
      {CheckCode::deep_tap_shallow, [](PitT& p) { only_fracture(p, TestKind::DT, cm(100) - 1).tap = 12; },
       [](PitT& p) { only_fracture(p, TestKind::DT, cm(100)).tap = 12; }},
      {CheckCode::deep_tap_slab_unusual,
       [](PitT& p) { only_test(p, TestKind::DT).slab_left_10um = cm(20) + 1; },
       [](PitT& p) { only_test(p, TestKind::DT).slab_left_10um = cm(20); }},
      // Tarn Shoulder has one already: CT6 at 16 cm, under snow as soft as a fist.
      {CheckCode::slab_very_soft, [](PitT& p) { add_compression_test(p, 5, FractureCharacter::BRK, cm(12)); },
       [](PitT& p) { soft_above(p, HandHardness::FistToFourFinger); }},
      {CheckCode::release_missing, [](PitT& p) { rutschblock(p, cm(68), 3).release = flatbuffers::nullopt; },
       [](PitT& p) { rutschblock(p, cm(68), 4).release = flatbuffers::nullopt; }},
      {CheckCode::jump_out_of_range, [](PitT& p) { rutschblock(p, cm(68), 3).jump = std::uint8_t{1}; },
       [](PitT& p) { rutschblock(p, cm(68), 4).jump = std::uint8_t{3}; }},
      {CheckCode::result_of_another_test,
       [](PitT& p) {
         FractureT& fracture = only_fracture(p, TestKind::CT);
         fracture.tap = std::uint8_t{12};
         fracture.step = std::uint8_t{4};
       },
       [](PitT& p) {
         FractureT& fracture = only_fracture(p, TestKind::CT);
         fracture.tap = std::uint8_t{12};
         fracture.quality = ShearQuality::Q1;
       }},
      {CheckCode::rutschblock_slope_unknown,
       [](PitT& p) {
         rutschblock(p, cm(68));
         p.site->slope_deg = flatbuffers::nullopt;
       },
       [](PitT& p) {
         rutschblock(p, cm(68));
         p.site->slope_deg = flatbuffers::nullopt;
         p.tests[0]->slope_deg = std::uint8_t{32};
       }},
      {CheckCode::unbroken_contradicts_fracture,
       [](PitT& p) { p.tests[1]->unbroken.push_back(down(cm(68))); },
       [](PitT& p) { p.tests[1]->unbroken.push_back(down(cm(68) + 1)); }},
      {CheckCode::fracture_below_column, [](PitT& p) { p.tests[1]->column_depth_10um = cm(68) - 1; },
       [](PitT& p) { p.tests[1]->column_depth_10um = cm(68); }},
      {CheckCode::taps_given_contradict, [](PitT& p) { p.tests[1]->taps_given = std::uint8_t{11}; },
       [](PitT& p) { p.tests[1]->taps_given = std::uint8_t{12}; }},
      {CheckCode::stopped_early,
       [](PitT& p) {
         StabilityTestT& test = only_test(p, TestKind::CT);
         test.outcome = TestOutcome::no_fracture;
         test.taps_given = std::uint8_t{29};
       },
       [](PitT& p) {
         StabilityTestT& test = only_test(p, TestKind::CT);
         test.outcome = TestOutcome::no_fracture;
         test.taps_given = std::uint8_t{30};
       }},
      {CheckCode::saw_end_missing,
       [](PitT& p) {
         p.tests.clear();
         add_saw_test(p, cm(32), cm(100), SawEnd::End, cm(68)).saw_end = flatbuffers::nullopt;
       },
       [](PitT& p) {
         p.tests.clear();
         add_saw_test(p, cm(32), cm(100), SawEnd::SF, cm(68));
       }},
  };
}

std::vector<Case> seen_cases() {
  return {
      {CheckCode::precipitation_from_clear_sky, [](PitT& p) { p.weather->sky = SkyCondition::CLR; },
       [](PitT& p) { p.weather->sky = SkyCondition::FEW; }},
      {CheckCode::air_temperature_out_of_range, [](PitT& p) { p.weather->air_temperature_cdegc = 4001; },
       [](PitT& p) { p.weather->air_temperature_cdegc = 4000; }},
      {CheckCode::ski_sinks_deeper_than_foot, [](PitT& p) { p.surface->penetration_ski_10um = cm(35) + 1; },
       [](PitT& p) { p.surface->penetration_ski_10um = cm(35); }},
      {CheckCode::penetration_below_snow, [](PitT& p) { p.surface->penetration_foot_10um = cm(140) + 1; },
       [](PitT& p) { p.surface->penetration_foot_10um = cm(140); }},
      {CheckCode::penetration_negative, [](PitT& p) { p.surface->penetration_ram_10um = -1; },
       [](PitT& p) { p.surface->penetration_ram_10um = 0; }},
      {CheckCode::length_without_sign,
       [](PitT& p) {
         cracking(p).answer = Answer::no;
         cracking(p).length_10um = 1;
       },
       [](PitT& p) {
         cracking(p).answer = Answer::no;
         cracking(p).length_10um = 0;
       }},
      {CheckCode::sign_answered_twice, [](PitT& p) { add_sign(p, SignKind::cracking, Answer::no); },
       [](PitT& p) { add_sign(p, SignKind::cracking, Answer::yes); }},
      {CheckCode::slide_size_out_of_range, [](PitT& p) { slide(p).size_tenths = std::uint8_t{51}; },
       [](PitT& p) { slide(p).size_tenths = std::uint8_t{50}; }},
      {CheckCode::slide_age_negative, [](PitT& p) { slide(p).age_min = -1; },
       [](PitT& p) { slide(p).age_min = 0; }},
  };
}

// Tarn Shoulder lies at 2215 m, faces NE (45 degrees) and is 31 degrees steep.
std::vector<Case> representative_cases() {
  return {
      {CheckCode::aspect_said_same_but_apart,
       [](PitT& p) {
         choice(p).aspect = Comparison::same;
         p.choice->interest_aspect_deg = std::uint16_t{359};
       },
       [](PitT& p) {
         choice(p).aspect = Comparison::same;
         p.choice->interest_aspect_deg = std::uint16_t{360};
       }},
      {CheckCode::elevation_said_same_but_apart,
       [](PitT& p) {
         choice(p).elevation = Comparison::similar;
         p.choice->interest_elevation_10um = metres(2615) + 1;
       },
       [](PitT& p) {
         choice(p).elevation = Comparison::similar;
         p.choice->interest_elevation_10um = metres(2615);
       }},
      {CheckCode::incline_said_same_but_apart,
       [](PitT& p) {
         choice(p).incline = Comparison::same;
         p.choice->interest_slope_deg = std::uint8_t{20};
       },
       [](PitT& p) {
         choice(p).incline = Comparison::same;
         p.choice->interest_slope_deg = std::uint8_t{21};
       }},
      {CheckCode::interest_steeper, [](PitT& p) { choice(p).interest_slope_deg = std::uint8_t{41}; },
       [](PitT& p) { choice(p).interest_slope_deg = std::uint8_t{40}; }},
      {CheckCode::interest_without_comparison, [](PitT& p) { choice(p).terrain_of_interest = "Larch Bowl"; },
       [](PitT& p) {
         choice(p).terrain_of_interest = "Larch Bowl";
         p.choice->aspect = Comparison::unknown;
       }},
      {CheckCode::site_cannot_be_compared,
       [](PitT& p) {
         choice(p).interest_elevation_10um = metres(2300);
         p.site->elevation_10um = flatbuffers::nullopt;
       },
       [](PitT& p) { choice(p).interest_elevation_10um = metres(2300); }},
      {CheckCode::less_loaded_than_interest, [](PitT& p) { choice(p).wind_loading = Comparison::less; },
       [](PitT& p) { choice(p).wind_loading = Comparison::more; }},
  };
}

std::vector<Case> purpose_cases() {
  constexpr auto kQuick = Purpose::quick_pit;
  constexpr auto kTest = Purpose::test_profile;
  constexpr auto kFull = Purpose::full_profile;
  constexpr auto kService = Purpose::service_report;
  constexpr auto kLine = Purpose::fracture_line;
  return {
      {CheckCode::purpose_layers,
       [](PitT& p) {
         complete(p, kQuick);
         p.layers.clear();
       },
       complete_for<kQuick>},
      {CheckCode::purpose_hardness,
       [](PitT& p) {
         complete(p, kTest);
         p.layers[2]->hardness = flatbuffers::nullopt;
       },
       complete_for<kTest>},
      {CheckCode::purpose_forms,
       [](PitT& p) {
         complete(p, kTest);
         p.layers[2]->grain_form = flatbuffers::nullopt;
       },
       complete_for<kTest>},
      {CheckCode::purpose_sizes,
       [](PitT& p) {
         complete(p, kFull);
         p.layers[2]->grain_size_10um = flatbuffers::nullopt;
       },
       [](PitT& p) {
         complete(p, kFull);
         p.layers[5]->grain_size_10um = flatbuffers::nullopt;  // a crust
       }},
      {CheckCode::purpose_wetness,
       [](PitT& p) {
         complete(p, kFull);
         p.layers[2]->wetness = flatbuffers::nullopt;
       },
       complete_for<kFull>},
      {CheckCode::purpose_temperatures,
       [](PitT& p) {
         complete(p, kFull);
         p.temperatures.clear();
       },
       complete_for<kFull>},
      {CheckCode::purpose_tests,
       [](PitT& p) {
         complete(p, kQuick);
         for (const auto& test : p.tests) test->outcome = TestOutcome::not_valid;
       },
       [](PitT& p) {
         complete(p, kQuick);
         for (const auto& test : p.tests) test->outcome = TestOutcome::not_valid;
         p.tests[0]->outcome = TestOutcome::fractured;
       }},
      {CheckCode::purpose_hs,
       [](PitT& p) {
         complete(p, kQuick);
         p.snowpack->hs_10um = flatbuffers::nullopt;
       },
       complete_for<kQuick>},
      {CheckCode::purpose_elevation,
       [](PitT& p) {
         complete(p, kQuick);
         p.site->elevation_10um = flatbuffers::nullopt;
       },
       complete_for<kQuick>},
      {CheckCode::purpose_aspect,
       [](PitT& p) {
         complete(p, kQuick);
         p.site->aspect_point = flatbuffers::nullopt;
       },
       [](PitT& p) {
         complete(p, kQuick);
         p.site->aspect_point = flatbuffers::nullopt;
         p.site->slope_deg = std::uint8_t{0};  // flat ground has none
       }},
      {CheckCode::purpose_slope,
       [](PitT& p) {
         complete(p, kQuick);
         p.site->slope_deg = flatbuffers::nullopt;
       },
       complete_for<kQuick>},
      {CheckCode::purpose_observers,
       [](PitT& p) {
         complete(p, kService);
         p.observers.clear();
       },
       [](PitT& p) {
         complete(p, kQuick);
         p.observers.clear();
       }},
      {CheckCode::purpose_weather,
       [](PitT& p) {
         complete(p, kService);
         p.weather.reset();
       },
       complete_for<kService>},
      {CheckCode::purpose_place,
       [](PitT& p) {
         complete(p, kService);
         p.site->region.clear();
         p.site->latitude_e7deg = 1;
       },
       [](PitT& p) {
         complete(p, kService);
         p.site->region.clear();
         p.site->latitude_e7deg = 1;
         p.site->longitude_e7deg = 1;
       }},
      {CheckCode::purpose_sharing,
       [](PitT& p) {
         complete(p, kService);
         p.sharing = Sharing::partners;
       },
       complete_for<kService>},
      {CheckCode::purpose_slides,
       [](PitT& p) {
         complete(p, kLine);
         p.slides.clear();
       },
       complete_for<kLine>},
      {CheckCode::practice_for_service,
       [](PitT& p) {
         complete(p, kService);
         p.practice = true;
       },
       [](PitT& p) {
         complete(p, Purpose::teaching);
         p.practice = true;
       }},
      {CheckCode::temperatures_far_apart,
       [](PitT& p) {
         complete(p, kFull);
         *p.temperatures[3]->depth = down(cm(60) + 1);
       },
       complete_for<kFull>},
      {CheckCode::saw_ends_not_recorded,
       [](PitT& p) {
         complete(p, kService);
         for (const auto& test : p.tests) test->column_ends = flatbuffers::nullopt;
       },
       complete_for<kService>},
  };
}

}  // namespace firn::tests
