// Every kind of finding with its place and its numbers, concerns with all that is said of them, what loaded
// them and what this pit is cautioned of. Each row was held by hand against the record above it, the limits
// that README.md and METHODS.md name, and what schemas/report.fbs says of the numbers.
#include <gtest/gtest.h>

#include <algorithm>

#include "interpretation_said.h"

namespace firn::tests {
namespace {

using firnbook::Answer;
using firnbook::Crossing;
using firnbook::LoadStage;
using firnbook::ReleaseType;
using firnbook::ShearEase;
using firnbook::ShearQuality;
using firnbook::TestOutcome;
using interpretation::Parameters;

firnbook::SlideT& add_slide(PitT& pit) {
  pit.slides.push_back(std::make_unique<firnbook::SlideT>());
  return *pit.slides.back();
}
firnbook::SiteT& site(PitT& pit) {
  if (!pit.site) pit.site = std::make_unique<firnbook::SiteT>();
  return *pit.site;
}

TEST(Said, OfSigns) {
  PitT pit;
  add_sign(pit, firnbook::SignKind::whumpf, Answer::no);
  add_sign(pit, firnbook::SignKind::cracking, Answer::yes);
  pit.signs[1]->length_10um = cm(300);
  add_sign(pit, firnbook::SignKind::slides, Answer::not_looked_for);
  add_sign(pit, firnbook::SignKind::remote_trigger, Answer::yes);
  pit.signs.push_back(std::make_unique<firnbook::SignT>());
  firnbook::SlideT& slide = add_slide(pit);
  slide.size_tenths = std::uint8_t{25};
  slide.age_min = 90;
  slide.trigger = firnbook::Trigger::remote;
  add_slide(pit);
  const Read read(pit);
  EXPECT_EQ(
      findings_of(read, {Method::field_signs}),
      Lines({"sign_seen raises signs[1] @-1: 2 300000 0", "sign_seen raises signs[3] @-1: 4 0 0",
             "slide_seen raises slides[0] @-1: 25 90 3", "slide_seen raises slides[1] @-1: 0 -1 0",
             "sign_not_looked_for unknown signs[2] @-1: 3 0 0",
             "sign_answer_unknown unknown signs[4] @-1: 0 0 0", "sign_not_seen fact signs[0] @-1: 1 0 0"}));
  EXPECT_EQ(cautions_of(read),
            Lines({"sign_of_instability_seen signs[1]: 2 4", "bulletin_not_looked_at bulletin: 0 1",
                   "no_tests pit: 0 0", "no_layers pit: 0 0", "site_unknown site: 0 0"}));
}

TEST(Said, OfCompressionAndDeepTapTests) {
  PitT pit;
  add_compression_test(pit, 12, FractureCharacter::SP, cm(68));
  add_fracture(*pit.tests[0], cm(90)).stage = LoadStage::shoulder;
  pit.tests[0]->fractures[1]->character = FractureCharacter::RP;
  add_compression_test(pit, 6, FractureCharacter::BRK, cm(16));
  add_compression_test(pit, 31, static_cast<FractureCharacter>(0), cm(20));
  pit.tests[2]->fractures[0]->character = flatbuffers::nullopt;
  pit.tests[2]->fractures[0]->quality = ShearQuality::Q1;
  add_compression_test(pit, 14, FractureCharacter::RP, cm(30)).quality = ShearQuality::Q2;
  firnbook::StabilityTestT& none = add_test(pit, TestKind::CT);
  none.outcome = TestOutcome::no_fracture;
  none.taps_given = std::uint8_t{30};
  add_compression_test(pit, 22, FractureCharacter::SC, cm(130));
  pit.tests[5]->kind = TestKind::DT;
  const Read read(pit);
  EXPECT_EQ(findings_of(read, {Method::compression_test, Method::deep_tap_test, Method::shear_quality}),
            Lines({"ct_sudden raises tests[0].fractures[0] @68000: 12 3 1",
                   "ct_resistant not_met tests[0].fractures[1] @90000: 0 4 3",
                   "ct_break says_little tests[1].fractures[0] @16000: 6 2 5",
                   "ct_character_unknown unknown tests[2].fractures[0] @20000: 31 0 0",
                   "ct_resistant not_met tests[3].fractures[0] @30000: 14 3 3",
                   "ct_no_fracture raised_nothing tests[4] @-1: 30 0 0",
                   "ct_sudden raises tests[5].fractures[0] @130000: 22 4 2",
                   "ct_quality_one raises tests[2].fractures[0] @20000: 31 0 1",
                   "shear_quality_other not_met tests[3].fractures[0] @30000: 14 3 2"}));
  EXPECT_EQ(concerns_of(read), Lines({"depth_only -1 -1 weaker -1 at -1, 68000 to 68000: sudden, tap 12, 0 "
                                      "flags, starts_run_not_tested, one_rider, 1 pieces",
                                      "depth_only -1 -1 weaker -1 at -1, 20000 to 20000: sudden, tap 99, 0 "
                                      "flags, starts_run_not_tested, one_rider, 2 pieces",
                                      "depth_only -1 -1 weaker -1 at -1, 130000 to 130000: sudden, tap 99, 0 "
                                      "flags, starts_run_not_tested, large_load_or_thin_slab, 1 pieces",
                                      "depth_only -1 -1 weaker -1 at -1, 30000 to 30000: broke, tap 14, 0 "
                                      "flags, starts_run_not_tested, one_rider, 2 pieces",
                                      "depth_only -1 -1 weaker -1 at -1, 90000 to 90000: broke, tap 21, 0 "
                                      "flags, starts_run_not_tested, one_rider, 1 pieces",
                                      "depth_only -1 -1 weaker -1 at -1, 16000 to 16000: little, tap 6, 0 "
                                      "flags, not_tested, one_rider, 1 pieces"}));
  EXPECT_EQ(loads_of(read), Lines({"0 by 0 CT",
                                   "0 by 4 CT",
                                   "1 by 0 CT",
                                   "1 by 2 CT",
                                   "1 by 3 CT",
                                   "1 by 4 CT",
                                   "2 by 5 DT",
                                   "3 by 0 CT",
                                   "3 by 3 CT",
                                   "3 by 4 CT",
                                   "4 by 0 CT",
                                   "4 by 4 CT",
                                   "5 by 0 CT",
                                   "5 by 1 CT",
                                   "5 by 2 CT",
                                   "5 by 3 CT",
                                   "5 by 4 CT",
                                   "0 not by ECT -1, not_done, 68000",
                                   "0 not by PST -1, not_done, 68000",
                                   "1 not by ECT -1, not_done, 20000",
                                   "1 not by PST -1, not_done, 20000",
                                   "2 not by CT 4, beyond_useful_depth, 130000",
                                   "2 not by ECT -1, not_done, 130000",
                                   "2 not by PST -1, not_done, 130000",
                                   "3 not by ECT -1, not_done, 30000",
                                   "3 not by PST -1, not_done, 30000",
                                   "4 not by ECT -1, not_done, 90000",
                                   "4 not by PST -1, not_done, 90000",
                                   "5 not by ECT -1, not_done, 16000",
                                   "5 not by PST -1, not_done, 16000",
                                   "next for -1 at -1: look_for_signs",
                                   "next for -1 at -1: probe_more",
                                   "next for -1 at -1: read_bulletin",
                                   "next for 0 at 68000: extended_column",
                                   "next for 1 at 20000: extended_column",
                                   "next for 2 at 130000: saw_test",
                                   "next for 3 at 30000: extended_column",
                                   "next for 4 at 90000: extended_column"}));
}

TEST(Said, OfExtendedColumns) {
  PitT pit;
  add_extended_column(pit, 12, Crossing::crossed, cm(60)).tap_crossed = std::uint8_t{13};
  add_extended_column(pit, 22, Crossing::crossed, cm(61));
  add_extended_column(pit, 8, Crossing::not_crossed, cm(40));
  add_extended_column(pit, 15, Crossing::not_crossed, cm(40));
  pit.tests[3]->crossing_rule = firnbook::CrossingRule::same_tap;
  add_extended_column(pit, 15, Crossing::not_crossed, cm(40));
  pit.tests[4]->crossing_rule = firnbook::CrossingRule::one_more_tap;
  add_extended_column(pit, 15, Crossing::crossed, cm(30)).crossing = flatbuffers::nullopt;
  firnbook::FractureT& unknown = add_extended_column(pit, 15, Crossing::crossed, cm(62));
  unknown.tap = flatbuffers::nullopt;
  add_test(pit, TestKind::ECT).outcome = TestOutcome::no_fracture;
  add_extended_column(pit, 14, Crossing::crossed, cm(60));
  pit.tests[8]->column_width_10um = cm(200);
  add_extended_column(pit, 5, Crossing::crossed, cm(5));
  Parameters parameters;
  parameters.ect_ignored_top_10um = cm(10);
  const Read read(pit, parameters);
  EXPECT_EQ(findings_of(read, {Method::extended_column_swiss, Method::extended_column_early,
                               Method::extended_column_several}),
            Lines({"ect_crossed_before_22 raises tests[0].fractures[0] @60000: 12 13 0",
                   "ect_crossed_from_22 raises tests[1].fractures[0] @61000: 22 0 3",
                   "ect_not_crossed not_met tests[2].fractures[0] @40000: 8 0 3",
                   "ect_not_crossed unknown tests[3].fractures[0] @40000: 15 0 1",
                   "ect_not_crossed not_met tests[4].fractures[0] @40000: 15 0 2",
                   "ect_crossing_unknown unknown tests[5].fractures[0] @30000: 15 0 3",
                   "ect_crossed_tap_unknown raises tests[6].fractures[0] @62000: 0 0 3",
                   "ect_no_fracture raised_nothing tests[7] @-1: 0 0 0",
                   "ect_crossed_before_22 raises tests[8].fractures[0] @60000: 14 0 3",
                   "ect_in_ignored_top fact tests[9].fractures[0] @5000: 5 0 3",
                   "ect_not_crossed_early raises tests[2].fractures[0] @40000: 8 10 0",
                   "ect_columns_differ fact pit @60000: 4 5 1",
                   "ect_long_column_crossed raises pit @60000: 200000 0 0"}));
  EXPECT_EQ(findings_of(read, {Method::extended_column_schemes}),
            Lines({"ect_schemes raises tests[0].fractures[0] @60000: 1 1 1",
                   "ect_rules_differ fact tests[0].fractures[0] @60000: 12 13 0",
                   "ect_schemes raises tests[1].fractures[0] @61000: 1 2 2",
                   "ect_schemes raises tests[2].fractures[0] @40000: 2 3 3",
                   "ect_schemes unknown tests[3].fractures[0] @40000: 0 0 0",
                   "ect_schemes raised_nothing tests[4].fractures[0] @40000: 2 3 4",
                   "ect_schemes unknown tests[5].fractures[0] @30000: 0 0 0",
                   "ect_schemes raises tests[6].fractures[0] @62000: 1 0 0",
                   "ect_schemes raised_nothing tests[7] @-1: 2 3 4",
                   "ect_schemes raises tests[8].fractures[0] @60000: 1 1 2",
                   "ect_schemes raises tests[9].fractures[0] @5000: 1 1 1"}));
  EXPECT_EQ(concerns_of(read), Lines({"depth_only -1 -1 weaker -1 at -1, 60000 to 62000: propagated, tap 12, "
                                      "0 flags, starts_and_runs, one_rider, 9 pieces",
                                      "depth_only -1 -1 weaker -1 at -1, 5000 to 5000: broke, tap 5, 0 "
                                      "flags, starts_run_not_tested, one_rider, 2 pieces",
                                      "depth_only -1 -1 weaker -1 at -1, 40000 to 40000: broke, tap 8, 0 "
                                      "flags, started_did_not_run, one_rider, 7 pieces",
                                      "depth_only -1 -1 weaker -1 at -1, 30000 to 30000: broke, tap 15, 0 "
                                      "flags, starts_run_not_tested, one_rider, 2 pieces"}));
}

TEST(Said, OfSawTests) {
  PitT pit;
  add_saw_test(pit, cm(49), cm(100), SawEnd::End, cm(60));
  add_saw_test(pit, cm(50), cm(100), SawEnd::End, cm(60));
  pit.tests[1]->column_ends = firnbook::ColumnEnds::slope_normal;
  add_saw_test(pit, cm(30), cm(103), SawEnd::Arr, cm(60));
  add_saw_test(pit, cm(100), cm(100), SawEnd::End, cm(60));
  add_saw_test(pit, cm(30), cm(100), SawEnd::End, cm(60)).saw_end = flatbuffers::nullopt;
  add_saw_test(pit, cm(30), cm(118), SawEnd::SF, cm(115));
  pit.tests[5]->column_length_10um = flatbuffers::nullopt;
  add_saw_test(pit, cm(30), cm(112), SawEnd::SF, cm(115));
  firnbook::StabilityTestT& none = add_test(pit, TestKind::PST);
  none.outcome = TestOutcome::no_fracture;
  none.column_length_10um = cm(90);
  const Read read(pit);
  EXPECT_EQ(findings_of(read, {Method::saw_test}),
            Lines({"pst_propagation_likely raises tests[0].fractures[0] @60000: 49000 100000 1",
                   "pst_criterion_not_met not_met tests[1].fractures[0] @60000: 50000 100000 1",
                   "pst_ends_slope_normal fact tests[1].fractures[0] @60000: 0 0 0",
                   "pst_criterion_not_met not_met tests[2].fractures[0] @60000: 30000 103000 3",
                   "pst_length_off_rule fact tests[2].fractures[0] @60000: 103000 100000 0",
                   "pst_no_fracture not_met tests[3].fractures[0] @60000: 100000 100000 1",
                   "pst_unknown unknown tests[4].fractures[0] @60000: 30000 100000 0",
                   "pst_criterion_not_met not_met tests[5].fractures[0] @115000: 30000 0 2",
                   "pst_criterion_not_met not_met tests[6].fractures[0] @115000: 30000 112000 2",
                   "pst_length_off_rule fact tests[6].fractures[0] @115000: 112000 115000 0",
                   "pst_no_fracture not_met tests[7] @-1: 0 90000 0"}));
  EXPECT_EQ(concerns_of(read), Lines({"depth_only -1 -1 weaker -1 at -1, 60000 to 60000: propagated, tap 99, "
                                      "0 flags, ran_and_did_not, one_rider, 7 pieces",
                                      "depth_only -1 -1 weaker -1 at -1, 115000 to 115000: broke, tap 99, 0 "
                                      "flags, not_tested, large_load_or_thin_slab, 3 pieces"}));
  EXPECT_EQ(loads_of(read),
            Lines({"0 by 0 PST", "0 by 1 PST", "0 by 2 PST", "0 by 3 PST", "0 by 4 PST", "1 by 5 PST",
                   "1 by 6 PST", "0 not by CT -1, not_done, 60000", "0 not by ECT -1, not_done, 60000",
                   "1 not by CT -1, not_done, 115000", "1 not by ECT -1, not_done, 115000",
                   "next for -1 at -1: look_for_signs", "next for -1 at -1: probe_more",
                   "next for -1 at -1: read_bulletin", "next for 1 at 115000: deep_tap_test"}));
}

TEST(Said, OfRutschblocksAndShears) {
  PitT pit;
  site(pit).slope_deg = std::uint8_t{30};
  pit.surface = std::make_unique<firnbook::SurfaceT>();
  pit.surface->penetration_ski_10um = cm(20);
  firnbook::FractureT& third = add_fracture(add_test(pit, TestKind::RB), cm(60));
  third.step = std::uint8_t{3};
  third.release = ReleaseType::WB;
  firnbook::FractureT& fifth = add_fracture(*pit.tests[0], cm(120) + 1);
  fifth.step = std::uint8_t{5};
  fifth.jump = std::uint8_t{2};
  fifth.release = ReleaseType::MB;
  firnbook::FractureT& shallow = add_fracture(add_test(pit, TestKind::RB), cm(20));
  shallow.step = std::uint8_t{4};
  pit.tests[1]->slope_deg = std::uint8_t{29};
  firnbook::StabilityTestT& none = add_test(pit, TestKind::RB);
  none.outcome = TestOutcome::no_fracture;
  add_fracture(add_test(pit, TestKind::RB), cm(60));
  add_fracture(add_test(pit, TestKind::ST), cm(60)).ease = ShearEase::E;
  add_fracture(add_test(pit, TestKind::hand_shear), cm(80)).ease = ShearEase::C;
  add_fracture(add_test(pit, TestKind::other), cm(90)).tap = std::uint8_t{7};
  add_fracture(*pit.tests[6], cm(95)).ease = ShearEase::M;
  firnbook::StabilityTestT& wrong = add_test(pit, TestKind::RB);
  firnbook::FractureT& broken = add_fracture(wrong, cm(90));
  wrong.outcome = TestOutcome::not_valid;
  wrong.not_valid_reason = firnbook::NotValidReason::sank_in;
  broken.step = std::uint8_t{2};
  broken.release = ReleaseType::WB;
  add_test(pit, TestKind::other).outcome = TestOutcome::fractured;
  add_test(pit, TestKind::CT);
  add_extended_column(pit, 12, Crossing::crossed, cm(60));
  const Read read(pit);
  EXPECT_EQ(
      findings_of(read, {Method::rutschblock_swiss, Method::swiss_precedence, Method::shear_tests,
                         Method::unclassed_tests}),
      Lines(
          {"rb_class_one raises tests[0].fractures[0] @60000: 3 1 0",
           "rb_class_three raised_nothing tests[0].fractures[1] @120001: 5 2 2",
           "rb_outside_depth fact tests[0].fractures[1] @120001: 20000 120000 0",
           "rb_slope_gentle fact tests[1] @-1: 29 30 20",
           "rb_class_two raises tests[1].fractures[0] @20000: 4 0 0",
           "rb_outside_depth fact tests[1].fractures[0] @20000: 20000 120000 0",
           "rb_no_fracture raised_nothing tests[2] @-1: 0 0 0",
           "rb_class_unknown unknown tests[3].fractures[0] @60000: 0 0 0",
           "swiss_class_of_pit fact pit @-1: 1 4 4", "shear_located fact tests[4].fractures[0] @60000: 3 0 6",
           "shear_located fact tests[5].fractures[0] @80000: 1 0 7", "test_recorded fact tests[6] @-1: 9 1 0",
           "test_fracture fact tests[6].fractures[0] @90000: 7 0 9",
           "test_fracture fact tests[6].fractures[1] @95000: 0 4 9",
           "test_not_valid unknown tests[7] @-1: 4 1 0",
           "test_fracture fact tests[7].fractures[0] @90000: 2 1 4",
           "test_recorded unknown tests[8] @-1: 9 1 0", "test_recorded unknown tests[9] @-1: 1 0 0"}));
  EXPECT_EQ(concerns_of(read), Lines({"depth_only -1 -1 weaker -1 at -1, 60000 to 60000: propagated, tap 12, "
                                      "0 flags, starts_and_runs, one_rider, 5 pieces",
                                      "depth_only -1 -1 weaker -1 at -1, 90000 to 90000: sudden, tap 99, 0 "
                                      "flags, starts_run_not_tested, one_rider, 2 pieces",
                                      "depth_only -1 -1 weaker -1 at -1, 80000 to 80000: broke, tap 0, 0 "
                                      "flags, starts_run_not_tested, one_rider, 1 pieces",
                                      "depth_only -1 -1 weaker -1 at -1, 20000 to 20000: broke, tap 99, 0 "
                                      "flags, starts_run_not_tested, one_rider, 2 pieces",
                                      "depth_only -1 -1 weaker -1 at -1, 95000 to 95000: broke, tap 99, 0 "
                                      "flags, starts_run_not_tested, one_rider, 1 pieces",
                                      "depth_only -1 -1 weaker -1 at -1, 120001 to 120001: broke, tap 99, 0 "
                                      "flags, starts_run_not_tested, large_load_or_thin_slab, 2 pieces"}));
  EXPECT_EQ(cautions_of(read),
            Lines({"layer_reached_by_one_test_only tests[5]: 80000 2", "test_not_valid tests[7]: 1 0",
                   "signs_not_looked_for pit: 14 0", "bulletin_not_looked_at bulletin: 0 1",
                   "no_layers pit: 0 0", "site_unknown site: 0 0"}));
}

// Stored from the ground up, so that stored positions and those of the view differ.
PitT upside_down() {
  PitT pit;
  pit.snowpack = std::make_unique<firnbook::SnowpackT>();
  pit.snowpack->hs_10um = cm(160);
  add_layer(pit, cm(100), cm(160), HandHardness::Pencil, GrainForm::RG, 50);
  add_layer(pit, cm(61), cm(100), HandHardness::FourFinger, GrainForm::FC, 150);
  add_layer(pit, cm(60), cm(61), HandHardness::Fist, GrainForm::SH, 300);
  add_layer(pit, cm(20), cm(60), HandHardness::OneFinger, GrainForm::RG, 50);
  add_layer(pit, 0, cm(20), HandHardness::FourFinger, GrainForm::DF, 50);
  return pit;
}

TEST(Said, OfStructure) {
  PitT pit = upside_down();
  pit.layers[0]->concern = firnbook::PartOfLayer::bottom;
  pit.layers[3]->concern = firnbook::PartOfLayer::top;
  const Read read(pit);
  EXPECT_EQ(findings_of(read, {Method::none}),
            Lines({"marked_by_observer fact layers[3].concern @20000: 2 0 0",
                   "marked_by_observer fact layers[0].concern @160000: 3 0 0"}));
  EXPECT_EQ(findings_of(read, {Method::yellow_flags}),
            Lines({"flag_grain_size not_met layers[4].grain_size_mm @20000: 50 100 1",
                   "flag_hardness raises layers[4].hardness @20000: 12 18 1",
                   "flag_grain_form not_met layers[4].grain_form @20000: 30 0 1",
                   "flag_size_difference not_met boundary 4 @20000: 0 50 1",
                   "flag_hardness_difference not_met boundary 4 @20000: 6 6 1",
                   "flag_depth raises boundary 4 @20000: 20000 20000 1",
                   "flag_count not_met boundary 4 @20000: 2 0 1",
                   "flag_grain_size raises layers[2].grain_size_mm @60000: 300 100 0",
                   "flag_hardness raises layers[2].hardness @60000: 6 18 0",
                   "flag_grain_form raises layers[2].grain_form @60000: 70 0 0",
                   "flag_size_difference raises boundary 3 @60000: 250 50 0",
                   "flag_hardness_difference raises boundary 3 @60000: 12 6 0",
                   "flag_depth raises boundary 3 @60000: 60000 20000 0",
                   "flag_count raises boundary 3 @60000: 6 0 0",
                   "flag_grain_size raises layers[2].grain_size_mm @61000: 300 100 1",
                   "flag_hardness raises layers[2].hardness @61000: 6 18 1",
                   "flag_grain_form raises layers[2].grain_form @61000: 70 0 1",
                   "flag_size_difference raises boundary 2 @61000: 150 50 1",
                   "flag_hardness_difference not_met boundary 2 @61000: 6 6 1",
                   "flag_depth raises boundary 2 @61000: 61000 20000 1",
                   "flag_count raises boundary 2 @61000: 5 0 1",
                   "flag_grain_size raises layers[1].grain_size_mm @100000: 150 100 1",
                   "flag_hardness raises layers[1].hardness @100000: 12 18 1",
                   "flag_grain_form raises layers[1].grain_form @100000: 50 0 1",
                   "flag_size_difference raises boundary 1 @100000: 100 50 1",
                   "flag_hardness_difference raises boundary 1 @100000: 12 6 1",
                   "flag_depth not_met boundary 1 @100000: 100000 20000 1",
                   "flag_count raises boundary 1 @100000: 5 0 1"}));
  EXPECT_EQ(
      findings_of(read, {Method::threshold_sum, Method::lemons, Method::weak_layer_build}),
      Lines(
          {"threshold_sum raises boundary 3 @60000: 63 0 0", "threshold_sum raises boundary 2 @61000: 59 0 1",
           "threshold_sum not_met boundary 1 @100000: 23 0 1", "lemons fact boundary 4 @20000: 5 0 1",
           "lemons fact boundary 3 @60000: 31 0 0", "lemons fact boundary 2 @61000: 31 0 1",
           "lemons fact boundary 1 @100000: 29 0 1", "weak_layer_build fact boundary 3 @60000: 1000 18 3"}));
  EXPECT_EQ(concerns_of(read), Lines({"layer 2 -1 weaker 2 at 2, 60000 to 61000: structure, tap 99, 6 flags, "
                                      "not_tested, one_rider, 11 pieces",
                                      "boundary 1 0 weaker 1 at 3, 100000 to 100000: structure, tap 99, 5 "
                                      "flags, not_tested, one_rider, 11 pieces",
                                      "boundary 4 3 weaker 4 at 0, 20000 to 20000: structure, tap 99, 2 "
                                      "flags, not_tested, one_rider, 9 pieces"}));
  EXPECT_EQ(loads_of(read),
            Lines({"0 not by CT -1, not_done, 60000", "0 not by ECT -1, not_done, 60000",
                   "0 not by PST -1, not_done, 60000", "1 not by CT -1, not_done, 100000",
                   "1 not by ECT -1, not_done, 100000", "1 not by PST -1, not_done, 100000",
                   "2 not by CT -1, not_done, 20000", "2 not by ECT -1, not_done, 20000",
                   "2 not by PST -1, not_done, 20000", "next for -1 at -1: look_for_signs",
                   "next for -1 at -1: probe_more", "next for -1 at -1: read_bulletin",
                   "next for 0 at 60000: extended_column", "next for 1 at 100000: extended_column",
                   "next for 2 at 20000: extended_column"}));
  EXPECT_EQ(cautions_of(read),
            Lines({"signs_not_looked_for pit: 14 0", "bulletin_not_looked_at bulletin: 0 1",
                   "no_tests pit: 0 0", "site_unknown site: 0 0"}));
}

TEST(Said, OfPlaces) {
  PitT pit = upside_down();
  add_compression_test(pit, 12, FractureCharacter::SP, cm(21));
  add_compression_test(pit, 13, FractureCharacter::SP, cm(60));
  add_extended_column(pit, 14, Crossing::crossed, cm(61));
  add_compression_test(pit, 23, FractureCharacter::RP, cm(101));
  add_compression_test(pit, 24, FractureCharacter::RP, cm(40));
  add_compression_test(pit, 25, FractureCharacter::RP, cm(42));
  add_compression_test(pit, 26, FractureCharacter::RP, cm(170));
  *add_compression_test(pit, 27, FractureCharacter::RP, 0).depth = nowhere_from(cm(75));
  const Read read(pit);
  EXPECT_EQ(concerns_of(read), Lines({"layer 2 -1 weaker 2 at 2, 60000 to 61000: propagated, tap 13, 6 "
                                      "flags, starts_and_runs, one_rider, 14 pieces",
                                      "boundary 4 3 weaker 4 at 0, 20000 to 20000: sudden, tap 12, 2 flags, "
                                      "starts_run_not_tested, one_rider, 9 pieces",
                                      "boundary 1 0 weaker 1 at 3, 100000 to 100000: broke, tap 23, 5 flags, "
                                      "starts_run_not_tested, one_rider, 11 pieces",
                                      "layer 3 -1 weaker 3 at 1, 40000 to 42000: broke, tap 24, 0 flags, "
                                      "starts_run_not_tested, one_rider, 2 pieces",
                                      "depth_only -1 -1 weaker -1 at -1, 170000 to 170000: broke, tap 26, 0 "
                                      "flags, starts_run_not_tested, large_load_or_thin_slab, 1 pieces",
                                      "depth_only -1 -1 weaker -1 at -1, -1 to -1: broke, tap 27, 0 flags, "
                                      "starts_run_not_tested, none, 1 pieces"}));
  EXPECT_EQ(loads_of(read), Lines({"0 by 1 CT",
                                   "0 by 2 ECT",
                                   "0 by 3 CT",
                                   "0 by 6 CT",
                                   "1 by 0 CT",
                                   "1 by 1 CT",
                                   "1 by 2 ECT",
                                   "1 by 3 CT",
                                   "1 by 4 CT",
                                   "1 by 5 CT",
                                   "1 by 6 CT",
                                   "2 by 3 CT",
                                   "2 by 6 CT",
                                   "3 by 1 CT",
                                   "3 by 2 ECT",
                                   "3 by 3 CT",
                                   "3 by 4 CT",
                                   "3 by 5 CT",
                                   "3 by 6 CT",
                                   "4 by 6 CT",
                                   "5 by 7 CT",
                                   "0 not by PST -1, not_done, 60000",
                                   "1 not by PST -1, not_done, 20000",
                                   "2 not by ECT 2, ended_above, 100000",
                                   "2 not by PST -1, not_done, 100000",
                                   "3 not by PST -1, not_done, 40000",
                                   "4 not by ECT 2, ended_above, 170000",
                                   "4 not by PST -1, not_done, 170000",
                                   "next for -1 at -1: look_for_signs",
                                   "next for -1 at -1: probe_more",
                                   "next for -1 at -1: read_bulletin",
                                   "next for 2 at 100000: extended_column",
                                   "next for 4 at 170000: deep_tap_test",
                                   "next for 4 at 170000: saw_test"}));
  EXPECT_EQ(cautions_of(read),
            Lines({"record_has_errors tests[6].fractures[0].depth_cm: 1 0",
                   "layer_reached_by_one_test_only tests[6]: 170000 4", "signs_not_looked_for pit: 14 0",
                   "bulletin_not_looked_at bulletin: 0 1", "site_unknown site: 0 0"}));
}

TEST(Said, OfALayerAlone) {
  PitT pit;
  add_layer(pit, cm(10), cm(30), HandHardness::Pencil, GrainForm::RG, 50);
  add_layer(pit, cm(60), cm(64), HandHardness::Fist, GrainForm::SH, 300);
  add_compression_test(pit, 13, FractureCharacter::SP, cm(62));
  const Read read(pit);
  EXPECT_EQ(
      findings_of(read,
                  {Method::yellow_flags, Method::threshold_sum, Method::lemons, Method::weak_layer_build}),
      Lines({"flag_grain_size raises layers[1].grain_size_mm @60000: 300 100 0",
             "flag_hardness raises layers[1].hardness @60000: 6 18 0",
             "flag_grain_form raises layers[1].grain_form @60000: 70 0 0",
             "flag_size_difference unknown layers[1] @60000: 0 50 0",
             "flag_hardness_difference unknown layers[1] @60000: 0 6 0",
             "flag_depth raises layers[1] @60000: 60000 20000 0",
             "flag_count unknown layers[1] @60000: 4 2 0", "threshold_sum unknown layers[1] @60000: 58 5 0",
             "lemons fact layers[1] @60000: 11 20 0"}));
  EXPECT_EQ(concerns_of(read), Lines({"layer 1 -1 weaker 1 at 1, 60000 to 64000: sudden, tap 13, 4 flags, "
                                      "starts_run_not_tested, one_rider, 8 pieces"}));
}

TEST(Said, OfTemperatures) {
  PitT pit;
  add_layer(pit, 0, cm(50), HandHardness::Pencil, GrainForm::RG, 50);
  add_layer(pit, cm(50), cm(51), HandHardness::Knife, GrainForm::MFcr);
  add_layer(pit, cm(51), cm(90), HandHardness::Pencil, GrainForm::FC, 150);
  add_temperature(pit, cm(60), -400);
  add_temperature(pit, 0, -1200);
  add_temperature(pit, cm(30), -700);
  add_temperature(pit, cm(40), -599);
  add_temperature(pit, cm(90), -100);
  const Read read(pit);
  EXPECT_EQ(findings_of(read, {Method::temperature_gradient}),
            Lines({"gradient_strong raises temperatures[1] @0: 1667 30000 2",
                   "gradient_strong raises temperatures[2] @30000: 1010 40000 3",
                   "gradient_weak not_met temperatures[3] @40000: 995 60000 0",
                   "gradient_near_crust says_little temperatures[3] @40000: 995 60000 1",
                   "gradient_weak not_met temperatures[0] @60000: 1000 90000 4"}));
}

PitT slab_on_facets() {
  PitT pit = two_layers(cm(60), HandHardness::Pencil, GrainForm::RG, 50, HandHardness::FourFinger,
                        GrainForm::FC, 150);
  add_density(pit, 0, cm(60), 2000);
  add_density(pit, cm(60), cm(200), 2500);
  pit.surface = std::make_unique<firnbook::SurfaceT>();
  pit.surface->penetration_ski_10um = cm(20);
  return pit;
}

TEST(Said, OfLoadAndStrength) {
  Parameters parameters;
  parameters.slab_poisson_thousandths = 200;
  const std::vector<Method> mechanics = {Method::density_estimate, Method::water_equivalent,
                                         Method::slab_stress,      Method::strength_estimate,
                                         Method::skier_stability,  Method::critical_crack_length};
  EXPECT_EQ(findings_of(Read(slab_on_facets(), parameters), mechanics),
            Lines({"water_equivalent fact pit @200000: 47000 2350 0",
                   "slab_load fact boundary 0 @60000: 1200 2000 0",
                   "slab_stress fact boundary 0 @60000: 5711 2589 38",
                   "strength_estimated fact boundary 0 @60000: 11919 2500 1",
                   "skier_index_between raises boundary 0 @60000: 2087 1436 1242",
                   "critical_crack_length fact boundary 0 @60000: 16447 11919 38"}));
  PitT estimated = slab_on_facets();
  estimated.densities.clear();
  EXPECT_EQ(findings_of(Read(estimated, parameters), mechanics),
            Lines({"density_estimated fact layers[0] @0: 2730 24 40",
                   "density_estimated fact layers[1] @60000: 2040 12 50",
                   "water_equivalent fact pit @200000: 44940 2247 100",
                   "slab_load fact boundary 0 @60000: 1638 2730 100",
                   "slab_stress fact boundary 0 @60000: 7796 2589 38",
                   "strength_estimated fact boundary 0 @60000: 7761 2040 1",
                   "skier_index_low says_little boundary 0 @60000: 995 747 664",
                   "critical_crack_length fact boundary 0 @60000: 0 7761 38"}));
}

TEST(Said, OfTarnShoulder) {
  const Read read(*tarn_shoulder());
  EXPECT_EQ(concerns_of(read), Lines({"layer 3 -1 weaker 3 at 3, 68000 to 69000: propagated, tap 12, 6 "
                                      "flags, starts_and_runs, one_rider, 15 pieces",
                                      "boundary 5 6 weaker 6 at 6, 107000 to 107000: broke, tap 27, 4 flags, "
                                      "starts_run_not_tested, large_load_or_thin_slab, 11 pieces",
                                      "boundary 0 1 weaker 0 at 0, 16000 to 16000: little, tap 6, 3 flags, "
                                      "not_tested, one_rider, 10 pieces"}));
  EXPECT_EQ(loads_of(read),
            Lines({"0 by 1 CT", "0 by 2 CT", "0 by 3 ECT", "0 by 4 PST", "1 by 2 CT", "2 by 0 CT",
                   "2 by 1 CT", "2 by 2 CT", "2 by 3 ECT", "1 not by ECT 3, ended_above, 107000",
                   "1 not by PST 4, other_layer, 107000", "2 not by PST 4, other_layer, 16000",
                   "next for -1 at -1: look_for_signs", "next for -1 at -1: read_bulletin",
                   "next for 1 at 107000: deep_tap_test", "next for 1 at 107000: saw_test"}));
  EXPECT_EQ(
      cautions_of(read),
      Lines({"sign_of_instability_seen signs[1]: 2 1", "layer_reached_by_one_test_only tests[2]: 107000 1",
             "signs_not_looked_for pit: 8 0", "bulletin_not_looked_at bulletin: 0 1"}));
}

TEST(Said, OfLarchBowl) {
  const Read read(*larch_bowl_entry());
  EXPECT_EQ(concerns_of(read), Lines({"boundary 1 2 weaker 2 at 2, 17000 to 17000: sudden, tap 11, 3 flags, "
                                      "starts_run_not_tested, one_rider, 11 pieces"}));
  EXPECT_EQ(loads_of(read), Lines({"0 by 0 CT", "0 by 1 CT", "0 not by ECT -1, not_done, 17000",
                                   "0 not by PST -1, not_done, 17000", "next for -1 at -1: look_for_signs",
                                   "next for -1 at -1: probe_more", "next for 0 at 17000: extended_column"}));
  EXPECT_EQ(cautions_of(read),
            Lines({"sign_of_instability_seen signs[0]: 1 1", "probing_uneven site.probes_cm: 38000 61000",
                   "signs_not_looked_for pit: 4 0", "shallow_snow snowpack.hs_cm: 46000 0",
                   "no_bulletin bulletin: 0 0"}));
}

}  // namespace
}  // namespace firn::tests
