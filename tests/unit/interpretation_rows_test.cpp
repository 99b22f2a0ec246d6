// One finding of a method, beside each of its limits: each row was held by hand against the rule that
// README.md and METHODS.md name.
#include <gtest/gtest.h>

#include <algorithm>

#include "interpretation/mechanics.h"
#include "interpretation_said.h"

namespace firn::tests {
namespace {

using firnbook::Crossing;
using firnbook::Fracture;
using firnbook::Layer;
using firnbook::LoadStage;
using firnbook::ReleaseType;
using firnbook::TestOutcome;
using interpretation::Parameters;

struct Row {
  const char* what;
  const char* key;  // of the findings that are told, by its beginning
  void (*record)(PitT&, Parameters&);
};

firnbook::SiteT& site(PitT& pit) {
  if (!pit.site) pit.site = std::make_unique<firnbook::SiteT>();
  return *pit.site;
}
firnbook::SurfaceT& surface(PitT& pit) {
  if (!pit.surface) pit.surface = std::make_unique<firnbook::SurfaceT>();
  return *pit.surface;
}
firnbook::FractureT& block(PitT& pit, std::int32_t depth, std::uint8_t step, ReleaseType release) {
  firnbook::FractureT& fracture = add_fracture(add_test(pit, TestKind::RB), depth);
  fracture.step = step;
  fracture.release = release;
  return fracture;
}
firnbook::FractureT& column(PitT& pit, std::uint8_t tap, Crossing crossing, int across = 0) {
  firnbook::FractureT& fracture = add_extended_column(pit, tap, crossing, cm(40));
  if (across > 0) fracture.tap_crossed = static_cast<std::uint8_t>(across);
  return fracture;
}
void alone(PitT& pit, std::int32_t top, std::int32_t bottom) {
  add_layer(pit, top, bottom, HandHardness::Fist, GrainForm::SH, 300);
}
void pair(PitT& pit, HandHardness upper, std::int32_t upper_size, HandHardness lower, std::int32_t lower_size,
          std::int32_t depth = cm(50)) {
  add_layer(pit, 0, depth, upper, GrainForm::RG, upper_size);
  add_layer(pit, depth, cm(90), lower, GrainForm::FC, lower_size);
}
// Both measured: 200 kg/m3 over facets of 250 at 60 cm.
void slab(PitT& pit) {
  pair(pit, HandHardness::Pencil, 50, HandHardness::FourFinger, 150, cm(60));
  add_density(pit, 0, cm(60), 2000);
  add_density(pit, cm(60), cm(90), 2500);
}
firnbook::StrengthReadingT& strength(PitT& pit, std::int32_t pascal, std::int32_t top) {
  pit.strength.push_back(std::make_unique<firnbook::StrengthProfileT>());
  firnbook::StrengthProfileT& profile = *pit.strength.back();
  profile.kind = firnbook::StrengthKind::shear;
  profile.readings.push_back(std::make_unique<firnbook::StrengthReadingT>());
  profile.readings[0]->top = std::make_unique<firnbook::Depth>(down(top));
  profile.readings[0]->strength_pa = pascal;
  return *profile.readings[0];
}

void expect(const Row* rows, std::size_t count, const Lines& wanted) {
  Lines got;
  for (std::size_t i = 0; i < count; ++i) {
    PitT pit;
    Parameters parameters;
    rows[i].record(pit, parameters);
    const Read read(pit, parameters);
    ASSERT_TRUE(read.ok);
    std::string line = std::string(rows[i].what) + ":";
    for (const Finding& one : read.analysis.findings) {
      const std::string said = said_of(one);
      if (said.rfind(rows[i].key, 0) == 0) line += " " + said + ";";
    }
    got.push_back(line);
  }
  EXPECT_EQ(got, wanted);
}
template <std::size_t kCount>
void expect(const Row (&rows)[kCount], const Lines& wanted) {
  expect(rows, kCount, wanted);
}

TEST(AtLimits, OfTheSaw) {
  const Row rows[] = {
      {"no cut", "pst", [](PitT& p, Parameters&) { add_saw_test(p, 0, cm(100), SawEnd::End, cm(40)); }},
      {"a hair", "pst", [](PitT& p, Parameters&) { add_saw_test(p, 1, cm(100), SawEnd::End, cm(40)); }},
      {"no column", "pst", [](PitT& p, Parameters&) { add_saw_test(p, cm(30), 0, SawEnd::End, cm(40)); }},
      {"no cut in no column", "pst",
       [](PitT& p, Parameters&) { add_saw_test(p, 0, 0, SawEnd::Arr, cm(40)); }},
      {"a hair of a hair", "pst", [](PitT& p, Parameters&) { add_saw_test(p, 1, 1, SawEnd::End, cm(40)); }},
      {"longer than the column", "pst",
       [](PitT& p, Parameters&) { add_saw_test(p, cm(100) + 1, cm(100), SawEnd::End, cm(40)); }},
      {"a doubtful cut", "pst",
       [](PitT& p, Parameters&) {
         doubt(add_saw_test(p, cm(60), cm(100), SawEnd::End, cm(40)), Fracture::VT_CUT_10UM);
       }},
      {"a doubtful end", "pst",
       [](PitT& p, Parameters&) {
         doubt(add_saw_test(p, cm(60), cm(100), SawEnd::End, cm(40)), Fracture::VT_SAW_END);
       }},
      {"a doubtful depth", "pst",
       [](PitT& p, Parameters&) {
         doubt(add_saw_test(p, cm(60), cm(100), SawEnd::End, cm(40)), Fracture::VT_DEPTH);
       }},
      {"a doubtful column", "pst",
       [](PitT& p, Parameters&) {
         add_saw_test(p, cm(60), cm(100), SawEnd::End, cm(40)),
             doubt(*p.tests[0], firnbook::StabilityTest::VT_COLUMN_LENGTH_10UM);
       }},
      {"as short as by the rule", "pst_length",
       [](PitT& p, Parameters&) { add_saw_test(p, cm(60), cm(98), SawEnd::End, cm(40)); }},
      {"a hair shorter", "pst_length",
       [](PitT& p, Parameters&) { add_saw_test(p, cm(60), cm(98) - 1, SawEnd::End, cm(40)); }},
      {"as long as by the rule", "pst_length",
       [](PitT& p, Parameters&) { add_saw_test(p, cm(60), cm(102), SawEnd::End, cm(40)); }},
      {"a hair longer", "pst_length",
       [](PitT& p, Parameters&) { add_saw_test(p, cm(60), cm(102) + 1, SawEnd::End, cm(40)); }},
      {"where nobody knows the depth", "pst_length",
       [](PitT& p, Parameters&) { add_saw_test(p, cm(60), cm(50), SawEnd::End, 0).depth.reset(); }},
      {"exactly by the rule, which allows nothing else", "pst_length",
       [](PitT& p, Parameters& q) {
         q.tolerance_10um = 0, add_saw_test(p, cm(60), cm(100), SawEnd::End, cm(40));
       }},
  };
  expect(
      rows,
      Lines({"no cut: pst_unknown unknown tests[0].fractures[0] @40000: 0 100000 1;",
             "a hair: pst_propagation_likely raises tests[0].fractures[0] @40000: 1 100000 1;",
             "no column: pst_unknown unknown tests[0].fractures[0] @40000: 30000 0 1;",
             "no cut in no column: pst_criterion_not_met not_met tests[0].fractures[0] @40000: 0 0 3;",
             "a hair of a hair: pst_no_fracture not_met tests[0].fractures[0] @40000: 1 1 1; "
             "pst_length_off_rule fact tests[0].fractures[0] @40000: 1 100000 0;",
             "longer than the column: pst_unknown unknown tests[0].fractures[0] @40000: 100001 100000 1;",
             "a doubtful cut: pst_criterion_not_met unknown tests[0].fractures[0] @40000: 60000 100000 1;",
             "a doubtful end: pst_criterion_not_met unknown tests[0].fractures[0] @40000: 60000 100000 1;",
             "a doubtful depth: pst_criterion_not_met not_met tests[0].fractures[0] @40000: 60000 100000 1;",
             "a doubtful column: pst_criterion_not_met unknown tests[0].fractures[0] @40000: 60000 100000 1;",
             "as short as by the rule:",
             "a hair shorter: pst_length_off_rule fact tests[0].fractures[0] @40000: 97999 100000 0;",
             "as long as by the rule:",
             "a hair longer: pst_length_off_rule fact tests[0].fractures[0] @40000: 102001 100000 0;",
             "where nobody knows the depth:", "exactly by the rule, which allows nothing else:"}));
}

TEST(AtLimits, OfTheRutschblock) {
  const Row rows[] = {
      {"skis that do not sink", "rb_outside",
       [](PitT& p, Parameters&) { surface(p).penetration_ski_10um = 0, block(p, 1, 4, ReleaseType::WB); }},
      {"at their depth", "rb_outside",
       [](PitT& p, Parameters&) {
         surface(p).penetration_ski_10um = cm(20), block(p, cm(20), 4, ReleaseType::WB);
       }},
      {"a hair deeper", "rb_outside",
       [](PitT& p, Parameters&) {
         surface(p).penetration_ski_10um = cm(20), block(p, cm(20) + 1, 4, ReleaseType::WB);
       }},
      {"a metre below", "rb_outside",
       [](PitT& p, Parameters&) {
         surface(p).penetration_ski_10um = cm(20), block(p, cm(120), 4, ReleaseType::WB);
       }},
      {"penetration nobody measured", "rb_outside",
       [](PitT& p, Parameters&) { surface(p), block(p, 0, 4, ReleaseType::WB); }},
      {"a slip", "rb_outside",
       [](PitT& p, Parameters&) {
         surface(p).penetration_ski_10um = -1, block(p, cm(130), 4, ReleaseType::WB);
       }},
      {"doubtful", "rb_outside",
       [](PitT& p, Parameters&) {
         surface(p).penetration_ski_10um = cm(20),
         doubt(*p.surface, firnbook::Surface::VT_PENETRATION_SKI_10UM), block(p, cm(130), 4, ReleaseType::WB);
       }},
      {"at right angles to the slope", "rb_outside",
       [](PitT& p, Parameters&) {
         surface(p).penetration_ski_10um = cm(20),
         *block(p, 0, 4, ReleaseType::WB).depth = slope_normal(cm(130));
       }},
      {"no slope", "rb_slope", [](PitT& p, Parameters&) { block(p, cm(40), 4, ReleaseType::WB); }},
      {"level ground", "rb_slope",
       [](PitT& p, Parameters&) {
         site(p).slope_deg = std::uint8_t{0}, block(p, cm(40), 4, ReleaseType::WB);
       }},
      {"a test without a result", "rb_slope",
       [](PitT& p, Parameters&) { site(p).slope_deg = std::uint8_t{10}, add_test(p, TestKind::RB); }},
      {"no limit", "rb_slope",
       [](PitT& p, Parameters& q) {
         q.rb_least_slope_deg = 0, site(p).slope_deg = std::uint8_t{0}, block(p, cm(40), 4, ReleaseType::WB);
       }},
      {"a doubtful step", "rb_class",
       [](PitT& p, Parameters&) { doubt(block(p, cm(40), 6, ReleaseType::WB), Fracture::VT_STEP); }},
      {"a doubtful release", "rb_class",
       [](PitT& p, Parameters&) { doubt(block(p, cm(40), 5, ReleaseType::MB), Fracture::VT_RELEASE); }},
      {"a doubtful depth", "rb_class",
       [](PitT& p, Parameters&) { doubt(block(p, cm(40), 5, ReleaseType::EB), Fracture::VT_DEPTH); }},
  };
  expect(rows,
         Lines({"skis that do not sink:",
                "at their depth: rb_outside_depth fact tests[0].fractures[0] @20000: 20000 120000 0;",
                "a hair deeper:", "a metre below:", "penetration nobody measured:", "a slip:", "doubtful:",
                "at right angles to the slope:", "no slope:",
                "level ground: rb_slope_gentle fact tests[0] @-1: 0 30 20;", "a test without a result:",
                "no limit:", "a doubtful step: rb_class_three unknown tests[0].fractures[0] @40000: 6 1 0;",
                "a doubtful release: rb_class_three unknown tests[0].fractures[0] @40000: 5 2 0;",
                "a doubtful depth: rb_class_three raised_nothing tests[0].fractures[0] @40000: 5 3 0;"}));
}

TEST(AtLimits, OfTheExtendedColumn) {
  constexpr auto P = Crossing::crossed;
  constexpr auto N = Crossing::not_crossed;
  const Row rows[] = {
      {"across on the last tap", "ect_not_crossed ", [](PitT& p, Parameters&) { column(p, 28, N, 30); }},
      {"across on the tap after the last", "ect_crossed", [](PitT& p, Parameters&) { column(p, 30, P, 31); }},
      {"across before the crack", "ect_", [](PitT& p, Parameters&) { column(p, 13, N, 12); }},
      {"across on the first tap, cracked while isolating", "ect_",
       [](PitT& p, Parameters&) {
         firnbook::FractureT& f = column(p, 1, N, 1);
         f.tap = flatbuffers::nullopt, f.stage = LoadStage::isolating;
       }},
      {"across on the second tap, cracked while isolating", "ect_",
       [](PitT& p, Parameters&) {
         firnbook::FractureT& f = column(p, 1, P, 2);
         f.tap = flatbuffers::nullopt, f.stage = LoadStage::isolating;
       }},
      {"a doubtful tap", "ect_", [](PitT& p, Parameters&) { doubt(column(p, 14, N), Fracture::VT_TAP); }},
      {"a doubtful crossing tap", "ect_",
       [](PitT& p, Parameters&) { doubt(column(p, 14, N, 17), Fracture::VT_TAP_CROSSED); }},
      {"a doubtful letter", "ect_",
       [](PitT& p, Parameters&) { doubt(column(p, 14, N), Fracture::VT_CROSSING); }},
      {"a doubtful depth", "ect_", [](PitT& p, Parameters&) { doubt(column(p, 14, N), Fracture::VT_DEPTH); }},
      {"at the edge of a top that is left out", "ect_",
       [](PitT& p, Parameters& q) { q.ect_ignored_top_10um = cm(40), column(p, 14, P); }},
      {"a hair within it", "ect_in",
       [](PitT& p, Parameters& q) { q.ect_ignored_top_10um = cm(40) + 1, column(p, 14, P); }},
      {"at the surface", "ect_in",
       [](PitT& p, Parameters& q) { q.ect_ignored_top_10um = 1, *column(p, 14, P).depth = down(0); }},
      {"where nobody knows the depth", "ect_in",
       [](PitT& p, Parameters& q) { q.ect_ignored_top_10um = cm(10), column(p, 14, P).depth.reset(); }},
      {"by an elbow's letter", "ect_",
       [](PitT& p, Parameters&) {
         firnbook::FractureT& f = column(p, 14, P);
         f.tap = flatbuffers::nullopt, f.stage = LoadStage::elbow;
       }},
      {"by a shoulder's letter", "ect_",
       [](PitT& p, Parameters&) {
         firnbook::FractureT& f = column(p, 14, P);
         f.tap = flatbuffers::nullopt, f.stage = LoadStage::shoulder;
       }},
      {"by a wrist's letter, not across", "ect_",
       [](PitT& p, Parameters&) {
         firnbook::FractureT& f = column(p, 14, N);
         f.tap = flatbuffers::nullopt, f.stage = LoadStage::wrist;
       }},
      {"while isolating, across", "ect_",
       [](PitT& p, Parameters& q) {
         q.ect_last_tap_of_lower_class = 0;
         firnbook::FractureT& f = column(p, 14, P);
         f.tap = flatbuffers::nullopt, f.stage = LoadStage::isolating;
       }},
      {"tap 1 where the class ends before it", "ect_crossed",
       [](PitT& p, Parameters& q) { q.ect_last_tap_of_lower_class = 0, column(p, 1, P); }},
      {"two that broke where nobody knows", "ect_columns",
       [](PitT& p, Parameters&) { column(p, 14, N).depth.reset(), column(p, 15, N).depth.reset(); }},
      {"two across where nobody knows", "ect_columns",
       [](PitT& p, Parameters&) { column(p, 14, P).depth.reset(), column(p, 15, P).depth.reset(); }},
      {"two as far apart as one place", "ect_columns",
       [](PitT& p, Parameters&) { column(p, 14, P), *column(p, 15, P).depth = down(cm(42)); }},
      {"a hair further", "ect_columns",
       [](PitT& p, Parameters&) { column(p, 14, P), *column(p, 15, P).depth = down(cm(42) + 1); }},
      {"as far above", "ect_columns",
       [](PitT& p, Parameters&) { column(p, 14, P), *column(p, 15, P).depth = down(cm(38)); }},
      {"a hair further above", "ect_columns",
       [](PitT& p, Parameters&) { column(p, 14, P), *column(p, 15, P).depth = down(cm(38) - 1); }},
      {"the first crossing has the depth", "ect_columns",
       [](PitT& p, Parameters&) {
         *column(p, 14, N).depth = down(cm(10)), column(p, 15, P), *column(p, 15, P).depth = down(cm(60));
       }},
      {"a crossing at the surface has it too", "ect_columns",
       [](PitT& p, Parameters&) { *column(p, 14, P).depth = down(0), column(p, 15, P); }},
      {"the first crack, where none crossed", "ect_columns",
       [](PitT& p, Parameters&) { column(p, 14, N), *column(p, 15, N).depth = down(cm(60)); }},
      {"a crack at the surface, where none crossed", "ect_columns",
       [](PitT& p, Parameters&) { *column(p, 14, N).depth = down(0), column(p, 15, N); }},
      {"a crack nobody knows where, then one that is known", "ect_columns",
       [](PitT& p, Parameters&) { column(p, 14, N).depth.reset(), column(p, 15, N); }},
      {"exactly there, where one place is a point", "ect_columns",
       [](PitT& p, Parameters& q) { q.tolerance_10um = 0, column(p, 14, P), column(p, 15, P); }},
      {"a long column", "ect_long",
       [](PitT& p, Parameters&) {
         column(p, 14, P), column(p, 15, P), p.tests[1]->column_width_10um = cm(200);
       }},
      {"not quite long enough", "ect_long",
       [](PitT& p, Parameters&) {
         column(p, 14, P), column(p, 15, P), p.tests[1]->column_width_10um = cm(200) - 1;
       }},
      {"two long ones and none of usual width", "ect_long",
       [](PitT& p, Parameters&) {
         column(p, 14, P), column(p, 15, P),
             p.tests[0]->column_width_10um = p.tests[1]->column_width_10um = cm(200);
       }},
      {"beside a test of another kind", "ect_columns",
       [](PitT& p, Parameters&) { column(p, 14, P), add_test(p, TestKind::CT); }},
      {"a class nobody can tell beside one that is", "swiss",
       [](PitT& p, Parameters&) { doubt(column(p, 14, N), Fracture::VT_TAP), column(p, 24, P); }},
      {"both not across", "swiss", [](PitT& p, Parameters&) { column(p, 14, N), column(p, 24, N); }},
      {"one not across and one unbroken", "swiss",
       [](PitT& p, Parameters&) {
         column(p, 14, N), add_test(p, TestKind::ECT).outcome = TestOutcome::no_fracture;
       }},
      {"both unbroken", "swiss",
       [](PitT& p, Parameters&) {
         add_test(p, TestKind::ECT).outcome = TestOutcome::no_fracture,
                     add_test(p, TestKind::ECT).outcome = TestOutcome::no_fracture;
       }},
      {"one test with two fractures", "swiss",
       [](PitT& p, Parameters&) {
         column(p, 14, N), add_fracture(*p.tests[0], cm(60)).crossing = Crossing::crossed;
       }},
  };
  expect(
      rows,
      Lines({"across on the last tap: ect_not_crossed not_met tests[0].fractures[0] @40000: 28 30 0;",
             "across on the tap after the last: ect_crossed_from_22 raises tests[0].fractures[0] @40000: 30 "
             "31 3;",
             "across before the crack: ect_not_crossed not_met tests[0].fractures[0] @40000: 13 12 3; "
             "ect_schemes raised_nothing tests[0].fractures[0] @40000: 2 3 4;",
             "across on the first tap, cracked while isolating: ect_crossed_before_22 raises "
             "tests[0].fractures[0] @40000: 0 1 0; ect_schemes raises tests[0].fractures[0] @40000: 1 1 1; "
             "ect_rules_differ fact tests[0].fractures[0] @40000: 0 1 0;",
             "across on the second tap, cracked while isolating: ect_not_crossed not_met "
             "tests[0].fractures[0] @40000: 0 2 0; ect_schemes raises tests[0].fractures[0] @40000: 2 3 3; "
             "ect_not_crossed_early raises tests[0].fractures[0] @40000: 0 10 0;",
             "a doubtful tap: ect_not_crossed unknown tests[0].fractures[0] @40000: 14 0 3; ect_schemes "
             "unknown tests[0].fractures[0] @40000: 0 0 0;",
             "a doubtful crossing tap: ect_not_crossed unknown tests[0].fractures[0] @40000: 14 17 0; "
             "ect_schemes unknown tests[0].fractures[0] @40000: 0 0 0;",
             "a doubtful letter: ect_not_crossed unknown tests[0].fractures[0] @40000: 14 0 3; ect_schemes "
             "unknown tests[0].fractures[0] @40000: 0 0 0;",
             "a doubtful depth: ect_not_crossed not_met tests[0].fractures[0] @40000: 14 0 3; ect_schemes "
             "raised_nothing tests[0].fractures[0] @40000: 2 3 4;",
             "at the edge of a top that is left out: ect_crossed_before_22 raises tests[0].fractures[0] "
             "@40000: 14 0 3; ect_schemes raises tests[0].fractures[0] @40000: 1 1 2;",
             "a hair within it: ect_in_ignored_top fact tests[0].fractures[0] @40000: 14 0 3;",
             "at the surface: ect_in_ignored_top fact tests[0].fractures[0] @0: 14 0 3;",
             "where nobody knows the depth:",
             "by an elbow's letter: ect_crossed_before_22 raises tests[0].fractures[0] @40000: 0 0 3; "
             "ect_schemes raises tests[0].fractures[0] @40000: 1 1 0;",
             "by a shoulder's letter: ect_crossed_tap_unknown raises tests[0].fractures[0] @40000: 0 0 3; "
             "ect_schemes raises tests[0].fractures[0] @40000: 1 0 0;",
             "by a wrist's letter, not across: ect_not_crossed not_met tests[0].fractures[0] @40000: 0 0 3; "
             "ect_schemes raises tests[0].fractures[0] @40000: 2 3 3;",
             "while isolating, across: ect_crossed_before_22 raises tests[0].fractures[0] @40000: 0 0 3; "
             "ect_schemes raises tests[0].fractures[0] @40000: 1 1 1;",
             "tap 1 where the class ends before it: ect_crossed_from_22 raises tests[0].fractures[0] @40000: "
             "1 0 3;",
             "two that broke where nobody knows:",
             "two across where nobody knows:",
             "two as far apart as one place: ect_columns_agree fact pit @40000: 2 0 0;",
             "a hair further: ect_columns_differ fact pit @40000: 1 1 0;",
             "as far above: ect_columns_agree fact pit @40000: 2 0 0;",
             "a hair further above: ect_columns_differ fact pit @40000: 1 1 0;",
             "the first crossing has the depth: ect_columns_differ fact pit @40000: 1 2 0;",
             "a crossing at the surface has it too: ect_columns_differ fact pit @0: 1 1 0;",
             "the first crack, where none crossed: ect_columns_agree fact pit @40000: 0 2 0;",
             "a crack at the surface, where none crossed: ect_columns_agree fact pit @0: 0 2 0;",
             "a crack nobody knows where, then one that is known: ect_columns_agree fact pit @40000: 0 2 0;",
             "exactly there, where one place is a point: ect_columns_agree fact pit @40000: 2 0 0;",
             "a long column: ect_long_column_crossed raises pit @40000: 200000 0 0;",
             "not quite long enough:",
             "two long ones and none of usual width:",
             "beside a test of another kind:",
             "a class nobody can tell beside one that is:",
             "both not across: swiss_class_of_pit fact pit @-1: 3 2 2;",
             "one not across and one unbroken: swiss_class_of_pit fact pit @-1: 3 2 2;",
             "both unbroken: swiss_class_of_pit fact pit @-1: 3 2 2;",
             "one test with two fractures:"}));
}

TEST(AtLimits, OfStructure) {
  const Row rows[] = {
      {"a layer alone on the surface", "flag_depth", [](PitT& p, Parameters&) { alone(p, 0, cm(2)); }},
      {"its count", "flag_count", [](PitT& p, Parameters&) { alone(p, 0, cm(2)); }},
      {"its lemons", "lemons", [](PitT& p, Parameters&) { alone(p, 0, cm(2)); }},
      {"its sum", "threshold", [](PitT& p, Parameters&) { alone(p, 0, cm(2)); }},
      {"its depth where the flag begins there", "flag_depth",
       [](PitT& p, Parameters& q) { q.flag_depth_from_10um = 0, alone(p, 0, cm(2)); }},
      {"a layer alone above the surface", "flag_depth", [](PitT& p, Parameters&) { alone(p, -1, cm(2)); }},
      {"its lemons too", "lemons", [](PitT& p, Parameters&) { alone(p, -1, cm(2)); }},
      {"its sum too", "threshold", [](PitT& p, Parameters&) { alone(p, -1, cm(2)); }},
      {"a layer alone without a bottom", "lemons",
       [](PitT& p, Parameters&) { alone(p, cm(40), cm(42)), p.layers[0]->bottom.reset(); }},
      {"one of no thickness", "lemons", [](PitT& p, Parameters&) { alone(p, cm(40), cm(40)); }},
      {"one of a hair", "lemons", [](PitT& p, Parameters&) { alone(p, cm(40), cm(40) + 1); }},
      {"as thick as a lemon", "lemons", [](PitT& p, Parameters&) { alone(p, cm(40), cm(50)); }},
      {"a hair thicker", "lemons", [](PitT& p, Parameters&) { alone(p, cm(40), cm(50) + 1); }},
      {"equal sizes", "flag_size_difference",
       [](PitT& p, Parameters&) { pair(p, HandHardness::Pencil, 150, HandHardness::Fist, 150); }},
      {"equal sizes, lemons", "lemons",
       [](PitT& p, Parameters&) { pair(p, HandHardness::Pencil, 150, HandHardness::Fist, 150); }},
      {"equal sizes, sum", "threshold",
       [](PitT& p, Parameters&) { pair(p, HandHardness::Pencil, 150, HandHardness::Fist, 150); }},
      {"equal hardness", "flag_hardness_difference",
       [](PitT& p, Parameters&) { pair(p, HandHardness::Fist, 50, HandHardness::Fist, 150); }},
      {"equal hardness, lemons", "lemons",
       [](PitT& p, Parameters&) { pair(p, HandHardness::Fist, 50, HandHardness::Fist, 150); }},
      {"equal hardness, sum", "threshold",
       [](PitT& p, Parameters&) { pair(p, HandHardness::Fist, 50, HandHardness::Fist, 150); }},
      {"a doubtful hardness, lemons", "lemons",
       [](PitT& p, Parameters&) {
         pair(p, HandHardness::Fist, 50, HandHardness::FistPlus, 150),
             doubt(*p.layers[0], Layer::VT_HARDNESS);
       }},
      {"a doubtful size, lemons", "lemons",
       [](PitT& p, Parameters&) {
         pair(p, HandHardness::Fist, 100, HandHardness::FistPlus, 150),
             doubt(*p.layers[0], Layer::VT_GRAIN_SIZE_10UM);
       }},
      {"a doubtful depth, lemons", "lemons",
       [](PitT& p, Parameters& q) {
         q.lemon_depth_10um = cm(40), pair(p, HandHardness::Pencil, 50, HandHardness::Fist, 150),
         doubt(*p.layers[0], Layer::VT_BOTTOM);
       }},
      {"a doubtful thickness, lemons", "lemons",
       [](PitT& p, Parameters&) {
         pair(p, HandHardness::Pencil, 50, HandHardness::Fist, 150), doubt(*p.layers[1], Layer::VT_BOTTOM);
       }},
      {"a grain of a hair", "flag_grain_size",
       [](PitT& p, Parameters&) { pair(p, HandHardness::Pencil, 50, HandHardness::Fist, 1); }},
      {"a grain of nothing", "flag_grain_size",
       [](PitT& p, Parameters&) {
         pair(p, HandHardness::Pencil, 50, HandHardness::Fist, 0), p.layers[1]->grain_size_10um = 0;
       }},
      {"a grain below nothing", "flag_grain_size",
       [](PitT& p, Parameters&) {
         pair(p, HandHardness::Pencil, 50, HandHardness::Fist, 1), p.layers[1]->grain_size_10um = -1;
       }},
      {"the softest hardness", "flag_hardness ",
       [](PitT& p, Parameters&) { pair(p, HandHardness::Pencil, 50, HandHardness::FistMinus, 50); }},
      {"softer than any", "flag_hardness ",
       [](PitT& p, Parameters&) { pair(p, HandHardness::Pencil, 50, static_cast<HandHardness>(3), 50); }},
      {"the hardest", "flag_hardness_difference",
       [](PitT& p, Parameters&) { pair(p, HandHardness::Ice, 50, HandHardness::FistMinus, 50); }},
      {"harder than any", "flag_hardness_difference",
       [](PitT& p, Parameters&) { pair(p, static_cast<HandHardness>(37), 50, HandHardness::FistMinus, 50); }},
      {"the first form", "flag_grain_form",
       [](PitT& p, Parameters&) {
         pair(p, HandHardness::Pencil, 50, HandHardness::Fist, 50),
             p.layers[1]->grain_form = static_cast<GrainForm>(10);
       }},
      {"the number before", "flag_grain_form",
       [](PitT& p, Parameters&) {
         pair(p, HandHardness::Pencil, 50, HandHardness::Fist, 50),
             p.layers[1]->grain_form = static_cast<GrainForm>(9);
       }},
      {"the last number of a main class", "flag_grain_form",
       [](PitT& p, Parameters&) {
         pair(p, HandHardness::Pencil, 50, HandHardness::Fist, 50),
             p.layers[1]->grain_form = static_cast<GrainForm>(99);
       }},
      {"the number behind", "flag_grain_form",
       [](PitT& p, Parameters&) {
         pair(p, HandHardness::Pencil, 50, HandHardness::Fist, 50),
             p.layers[1]->grain_form = static_cast<GrainForm>(100);
       }},
      {"words for one persistent form", "flag_grain_form",
       [](PitT& p, Parameters&) {
         pair(p, HandHardness::Pencil, 50, HandHardness::Fist, 50),
             p.layers[1]->grain_form = flatbuffers::nullopt, p.layers[1]->candidates = {GrainForm::DH};
       }},
      {"words of which the first is another", "flag_grain_form",
       [](PitT& p, Parameters&) {
         pair(p, HandHardness::Pencil, 50, HandHardness::Fist, 50),
             p.layers[1]->grain_form = flatbuffers::nullopt,
             p.layers[1]->candidates = {GrainForm::RG, GrainForm::DH};
       }},
      {"words of which the last is another", "flag_grain_form",
       [](PitT& p, Parameters&) {
         pair(p, HandHardness::Pencil, 50, HandHardness::Fist, 50),
             p.layers[1]->grain_form = flatbuffers::nullopt,
             p.layers[1]->candidates = {GrainForm::DH, GrainForm::RG};
       }},
      {"as many words as are read", "flag_grain_form",
       [](PitT& p, Parameters&) {
         pair(p, HandHardness::Pencil, 50, HandHardness::Fist, 50),
             p.layers[1]->grain_form = flatbuffers::nullopt,
             p.layers[1]->candidates.assign(16, GrainForm::DH);
       }},
      {"one more", "flag_grain_form",
       [](PitT& p, Parameters&) {
         pair(p, HandHardness::Pencil, 50, HandHardness::Fist, 50),
             p.layers[1]->grain_form = flatbuffers::nullopt,
             p.layers[1]->candidates.assign(17, GrainForm::DH);
       }},
      {"four met and one unknown of five", "threshold",
       [](PitT& p, Parameters&) {
         pair(p, HandHardness::Pencil, 50, HandHardness::FourFinger, 150),
             p.layers[0]->grain_size_10um = flatbuffers::nullopt;
       }},
      {"three met and one unknown", "threshold",
       [](PitT& p, Parameters&) {
         pair(p, HandHardness::Pencil, 50, HandHardness::FourFinger, 100),
             p.layers[0]->grain_size_10um = flatbuffers::nullopt;
       }},
      {"a weak layer of nothing", "weak",
       [](PitT& p, Parameters& q) {
         q.weak_layer_thin_10um = 1, add_layer(p, 0, cm(50), HandHardness::Pencil, GrainForm::RG, 50),
         add_layer(p, cm(50), cm(50) + 1, HandHardness::Fist, GrainForm::SH, 300);
       }},
      {"a weak layer of a hair", "weak",
       [](PitT& p, Parameters& q) {
         q.weak_layer_thin_10um = 2, add_layer(p, 0, cm(50), HandHardness::Pencil, GrainForm::RG, 50),
         add_layer(p, cm(50), cm(50) + 1, HandHardness::Fist, GrainForm::SH, 300);
       }},
      {"a weak layer without a bottom", "weak",
       [](PitT& p, Parameters&) {
         pair(p, HandHardness::Pencil, 50, HandHardness::Fist, 150), p.layers[1]->bottom.reset();
       }},
      {"a weak layer at a metre", "weak",
       [](PitT& p, Parameters&) {
         add_layer(p, 0, cm(100), HandHardness::Pencil, GrainForm::RG, 50),
             add_layer(p, cm(100), cm(103), HandHardness::Fist, GrainForm::SH, 300);
       }},
      {"a gradient across an edge of nothing", "gradient",
       [](PitT& p, Parameters&) { add_temperature(p, cm(10), -500), add_temperature(p, cm(10), -600); }},
      {"no gradient", "gradient",
       [](PitT& p, Parameters&) { add_temperature(p, cm(10), -500), add_temperature(p, cm(20), -500); }},
      {"a gradient from above the surface", "gradient",
       [](PitT& p, Parameters&) {
         add_temperature(p, -1, -500), add_temperature(p, cm(20), -500), add_temperature(p, cm(30), -500);
       }},
      {"half a hundredth", "gradient",
       [](PitT& p, Parameters&) { add_temperature(p, 0, -500), add_temperature(p, metres(2), -501); }},
      {"less than half", "gradient",
       [](PitT& p, Parameters&) { add_temperature(p, 0, -500), add_temperature(p, metres(2) + 1, -501); }},
      {"two thirds of a hundredth", "gradient",
       [](PitT& p, Parameters&) { add_temperature(p, 0, -500), add_temperature(p, metres(3), -502); }},
  };
  expect(
      rows,
      Lines(
          {"a layer alone on the surface: flag_depth not_met layers[0] @0: 0 20000 0;",
           "its count: flag_count unknown layers[0] @0: 3 2 0;",
           "its lemons: lemons fact layers[0] @0: 11 20 0;",
           "its sum: threshold_sum unknown layers[0] @0: 26 5 0;",
           "its depth where the flag begins there: flag_depth raises layers[0] @0: 0 0 0;",
           "a layer alone above the surface: flag_depth unknown layers[0] @-1: 0 20000 0;",
           "its lemons too: lemons fact layers[0] @-1: 10 21 0;",
           "its sum too: threshold_sum unknown layers[0] @-1: 26 37 0;",
           "a layer alone without a bottom: lemons fact layers[0] @40000: 9 22 0;",
           "one of no thickness: lemons fact layers[0] @40000: 9 22 0;",
           "one of a hair: lemons fact layers[0] @40000: 11 20 0;",
           "as thick as a lemon: lemons fact layers[0] @40000: 11 20 0;",
           "a hair thicker: lemons fact layers[0] @40000: 9 20 0;",
           "equal sizes: flag_size_difference not_met boundary 0 @50000: 0 50 0;",
           "equal sizes, lemons: lemons fact boundary 0 @50000: 13 0 0;",
           "equal sizes, sum: threshold_sum raises boundary 0 @50000: 62 0 0;",
           "equal hardness: flag_hardness_difference not_met boundary 0 @50000: 0 6 0;",
           "equal hardness, lemons: lemons fact boundary 0 @50000: 25 0 0;",
           "equal hardness, sum: threshold_sum raises boundary 0 @50000: 59 0 0;",
           "a doubtful hardness, lemons: lemons fact boundary 0 @50000: 17 4 1;",
           "a doubtful size, lemons:",
           "a doubtful depth, lemons: lemons fact boundary 0 @50000: 28 1 0;",
           "a doubtful thickness, lemons: lemons fact boundary 0 @50000: 29 2 0;",
           "a grain of a hair: flag_grain_size not_met layers[1].grain_size_mm @50000: 1 100 0;",
           "a grain of nothing: flag_grain_size unknown layers[1].grain_size_mm @50000: 0 100 0;",
           "a grain below nothing: flag_grain_size unknown layers[1].grain_size_mm @50000: 0 100 0;",
           "the softest hardness: flag_hardness raises layers[1].hardness @50000: 4 18 0;",
           "softer than any: flag_hardness unknown layers[1].hardness @50000: 0 18 0;",
           "the hardest: flag_hardness_difference raises boundary 0 @50000: 32 6 0;",
           "harder than any: flag_hardness_difference unknown boundary 0 @50000: 0 6 0;",
           "the first form: flag_grain_form not_met layers[1].grain_form @50000: 10 0 0;",
           "the number before: flag_grain_form unknown layers[1].grain_form @50000: 9 0 0;",
           "the last number of a main class: flag_grain_form not_met layers[1].grain_form @50000: 99 0 0;",
           "the number behind: flag_grain_form unknown layers[1].grain_form @50000: 100 0 0;",
           "words for one persistent form: flag_grain_form raises layers[1].grain_form @50000: 60 0 0;",
           "words of which the first is another: flag_grain_form unknown layers[1].grain_form @50000: 0 0 0;",
           "words of which the last is another: flag_grain_form unknown layers[1].grain_form @50000: 0 0 0;",
           "as many words as are read: flag_grain_form raises layers[1].grain_form @50000: 60 0 0;",
           "one more: flag_grain_form unknown layers[1].grain_form @50000: 0 0 0;",
           "four met and one unknown of five: threshold_sum unknown boundary 0 @50000: 54 1 0;",
           "three met and one unknown: threshold_sum not_met boundary 0 @50000: 52 1 0;",
           "a weak layer of nothing: weak_layer_build fact boundary 0 @50000: 1 24 2;",
           "a weak layer of a hair: weak_layer_build fact boundary 0 @50000: 1 24 3;",
           "a weak layer without a bottom: weak_layer_build fact boundary 0 @50000: 0 24 2;",
           "a weak layer at a metre: weak_layer_build fact boundary 0 @100000: 3000 24 2;",
           "a gradient across an edge of nothing:",
           "no gradient: gradient_weak not_met temperatures[0] @10000: 0 20000 1;",
           "a gradient from above the surface: gradient_weak not_met temperatures[1] @20000: 0 30000 2;",
           "half a hundredth: gradient_weak not_met temperatures[0] @0: 1 200000 1;",
           "less than half: gradient_weak not_met temperatures[0] @0: 0 200001 1;",
           "two thirds of a hundredth: gradient_weak not_met temperatures[0] @0: 1 300000 1;"}));
}

TEST(AtLimits, OfDensities) {
  const Row rows[] = {
      {"a sample that ends in the middle of the layer", "water",
       [](PitT& p, Parameters&) { add_layer(p, 0, cm(40)), add_density(p, 0, cm(20), 1000); }},
      {"one that ends a hair above", "water",
       [](PitT& p, Parameters&) { add_layer(p, 0, cm(40)), add_density(p, 0, cm(20) - 1, 1000); }},
      {"one that begins in the middle", "water",
       [](PitT& p, Parameters&) { add_layer(p, 0, cm(40)), add_density(p, cm(20), cm(30), 1000); }},
      {"one that begins a hair below", "water",
       [](PitT& p, Parameters&) { add_layer(p, 0, cm(40)), add_density(p, cm(20) + 1, cm(30), 1000); }},
      {"a sample of no thickness", "water",
       [](PitT& p, Parameters&) { add_layer(p, 0, cm(40)), add_density(p, cm(20), cm(20), 1000); }},
      {"one from above the surface", "water",
       [](PitT& p, Parameters&) { add_layer(p, 0, cm(40)), add_density(p, -1, cm(30), 1000); }},
      {"of two from one place the later", "water",
       [](PitT& p, Parameters&) {
         add_layer(p, 0, cm(40)), add_density(p, 0, cm(40), 1000), add_density(p, 0, cm(40), 2000);
       }},
      {"the eighth sample above", "water",
       [](PitT& p, Parameters&) {
         add_layer(p, 0, cm(40)), add_density(p, 0, cm(40), 1000);
         for (int i = 1; i <= 7; ++i) add_density(p, i, i + 1, 3000);
       }},
      {"the ninth is not looked at", "water",
       [](PitT& p, Parameters&) {
         add_layer(p, 0, cm(40)), add_density(p, 0, cm(40), 1000);
         for (int i = 1; i <= 8; ++i) add_density(p, i, i + 1, 3000);
       }},
      {"a doubtful hardness", "density",
       [](PitT& p, Parameters&) {
         add_layer(p, 0, cm(40), HandHardness::Pencil, GrainForm::RG),
             doubt(*p.layers[0], Layer::VT_HARDNESS);
       }},
      {"a doubtful hardness at the top", "density",
       [](PitT& p, Parameters&) {
         add_layer(p, 0, cm(40), HandHardness::Pencil, GrainForm::RG),
             doubt(*p.layers[0], Layer::VT_HARDNESS_TOP);
       }},
      {"a doubtful hardness at the bottom", "density",
       [](PitT& p, Parameters&) {
         add_layer(p, 0, cm(40), HandHardness::Pencil, GrainForm::RG),
             doubt(*p.layers[0], Layer::VT_HARDNESS_BOTTOM);
       }},
      {"a doubtful form", "density",
       [](PitT& p, Parameters&) {
         add_layer(p, 0, cm(40), HandHardness::Pencil, GrainForm::RG),
             doubt(*p.layers[0], Layer::VT_GRAIN_FORM);
       }},
      {"a doubtful size matters not", "density",
       [](PitT& p, Parameters&) {
         add_layer(p, 0, cm(40), HandHardness::Pencil, GrainForm::RG),
             doubt(*p.layers[0], Layer::VT_GRAIN_SIZE_10UM);
       }},
      {"F of new snow: 45 + 36", "density",
       [](PitT& p, Parameters&) { add_layer(p, 0, cm(40), HandHardness::Fist, GrainForm::PP); }},
      {"F+ of new snow: 45 + 48", "density",
       [](PitT& p, Parameters&) { add_layer(p, 0, cm(40), HandHardness::FistPlus, GrainForm::PP); }},
      {"between F and F+ of facets: 112 + 46 * 7 / 6 = 165.67", "density",
       [](PitT& p, Parameters&) {
         add_layer(p, 0, cm(40), HandHardness::Fist, GrainForm::FC),
             p.layers[0]->hardness = flatbuffers::nullopt, p.layers[0]->hardness_top = HandHardness::Fist,
             p.layers[0]->hardness_bottom = HandHardness::FistPlus;
       }},
      {"a tenth without a density", "water",
       [](PitT& p, Parameters&) {
         add_layer(p, 0, cm(90)), add_layer(p, cm(90), cm(100)), add_density(p, 0, cm(90), 1000);
       }},
      {"a hair more than a tenth", "water",
       [](PitT& p, Parameters&) {
         add_layer(p, 0, cm(90) - 1), add_layer(p, cm(90) - 1, cm(100)), add_density(p, 0, cm(90) - 1, 1000);
       }},
      {"nothing has a density", "water",
       [](PitT& p, Parameters& q) { q.load_unknown_percent = 100, add_layer(p, 0, cm(90)); }},
      {"only the upper half has, and all may lack", "water",
       [](PitT& p, Parameters& q) {
         q.load_unknown_percent = 100, add_layer(p, 0, cm(50)), add_layer(p, cm(50), cm(100)),
         add_density(p, 0, cm(50), 1000);
       }},
      {"a gap of a hair ends it", "water",
       [](PitT& p, Parameters&) {
         add_layer(p, 0, cm(50)), add_layer(p, cm(50) + 1, cm(100)), add_density(p, 0, cm(50), 1000),
             add_density(p, cm(50) + 1, cm(100), 1000);
       }},
      {"a mean of 166.65", "water",
       [](PitT& p, Parameters&) {
         add_layer(p, 0, cm(50)), add_layer(p, cm(50), cm(100)), add_density(p, 0, cm(50), 1666),
             add_density(p, cm(50), cm(100), 1667);
       }},
      {"a third not measured", "water",
       [](PitT& p, Parameters&) {
         add_layer(p, 0, cm(60)), add_layer(p, cm(60), cm(90), HandHardness::Pencil, GrainForm::RG),
             add_density(p, 0, cm(60), 2730);
       }},
      {"as deep as snow can be", "water",
       [](PitT& p, Parameters&) { add_layer(p, 0, metres(100)), add_density(p, 0, metres(100), 1000); }},
      {"a hair deeper", "water",
       [](PitT& p, Parameters&) {
         add_layer(p, 0, metres(100) + 1), add_density(p, 0, metres(100) + 1, 1000);
       }},
      {"a layer within another adds nothing", "water",
       [](PitT& p, Parameters&) {
         add_layer(p, 0, cm(50)), add_layer(p, cm(10), cm(50)), add_density(p, 0, cm(50), 1000);
       }},
  };
  expect(
      rows,
      Lines({"a sample that ends in the middle of the layer: water_equivalent fact pit @40000: 4000 1000 0;",
             "one that ends a hair above:",
             "one that begins in the middle: water_equivalent fact pit @40000: 4000 1000 0;",
             "one that begins a hair below:",
             "a sample of no thickness:",
             "one from above the surface:",
             "of two from one place the later: water_equivalent fact pit @40000: 8000 2000 0;",
             "the eighth sample above: water_equivalent fact pit @40000: 4000 1000 0;",
             "the ninth is not looked at:",
             "a doubtful hardness:",
             "a doubtful hardness at the top:",
             "a doubtful hardness at the bottom:",
             "a doubtful form:",
             "a doubtful size matters not: density_estimated fact layers[0] @0: 2730 24 40;",
             "F of new snow: 45 + 36: density_estimated fact layers[0] @0: 810 6 10;",
             "F+ of new snow: 45 + 48: density_estimated fact layers[0] @0: 930 8 10;",
             "between F and F+ of facets: 112 + 46 * 7 / 6 = 165.67: density_estimated fact layers[0] @0: "
             "1657 7 50;",
             "a tenth without a density: water_equivalent fact pit @100000: 10000 1000 10;",
             "a hair more than a tenth:",
             "nothing has a density:",
             "only the upper half has, and all may lack: water_equivalent fact pit @100000: 10000 1000 50;",
             "a gap of a hair ends it: water_equivalent fact pit @50000: 5000 1000 0;",
             "a mean of 166.65: water_equivalent fact pit @100000: 16665 1667 0;",
             "a third not measured: water_equivalent fact pit @90000: 24570 2730 33;",
             "as deep as snow can be: water_equivalent fact pit @10000000: 1000000 1000 0;",
             "a hair deeper:",
             "a layer within another adds nothing: water_equivalent fact pit @50000: 5000 1000 0;"}));
}

TEST(AtLimits, OfStrengthAndStability) {
  const Row rows[] = {
      {"on level ground nothing is known of the slab", "skier",
       [](PitT& p, Parameters&) { slab(p), strength(p, 1, cm(60)), site(p).slope_deg = std::uint8_t{0}; }},
      {"on 1 degree it stands: 20.5 Pa", "skier",
       [](PitT& p, Parameters&) { slab(p), strength(p, 20, cm(60)), site(p).slope_deg = std::uint8_t{1}; }},
      {"and may with a little more", "skier",
       [](PitT& p, Parameters&) { slab(p), strength(p, 21, cm(60)), site(p).slope_deg = std::uint8_t{1}; }},
      {"on 60 degrees it stands: 509.7 Pa", "skier",
       [](PitT& p, Parameters&) { slab(p), strength(p, 509, cm(60)), site(p).slope_deg = std::uint8_t{60}; }},
      {"steeper than that is a slip", "skier",
       [](PitT& p, Parameters&) { slab(p), strength(p, 1, cm(60)), site(p).slope_deg = std::uint8_t{61}; }},
      {"skis that do not sink", "skier",
       [](PitT& p, Parameters&) { slab(p), surface(p).penetration_ski_10um = 0; }},
      {"that sink a hair", "skier",
       [](PitT& p, Parameters&) { slab(p), surface(p).penetration_ski_10um = 1; }},
      {"below nothing is a slip: estimated, 17.3 cm", "skier",
       [](PitT& p, Parameters&) { slab(p), surface(p).penetration_ski_10um = -1; }},
      {"not measured: estimated too", "skier", [](PitT& p, Parameters&) { slab(p), surface(p); }},
      {"estimated from the top 30 cm alone", "skier",
       [](PitT& p, Parameters&) {
         slab(p), *p.layers[0]->bottom = down(cm(30)),
                  add_layer(p, cm(30), cm(60), HandHardness::Pencil, GrainForm::RG, 50),
                  std::swap(p.layers[1], p.layers[2]), *p.densities[0]->readings[0]->bottom = down(cm(30)),
                  add_density(p, cm(30), cm(60), 4000);
       }},
      {"skis as deep as the layer", "skier",
       [](PitT& p, Parameters&) { slab(p), surface(p).penetration_ski_10um = cm(60); }},
      {"a hair less deep", "skier",
       [](PitT& p, Parameters&) { slab(p), surface(p).penetration_ski_10um = cm(60) - 1; }},
      {"a strength two centimetres above", "strength",
       [](PitT& p, Parameters&) { slab(p), strength(p, 1500, cm(58)); }},
      {"a hair further above", "strength",
       [](PitT& p, Parameters&) { slab(p), strength(p, 1500, cm(58) - 1); }},
      {"two centimetres below", "strength", [](PitT& p, Parameters&) { slab(p), strength(p, 1500, cm(62)); }},
      {"a hair further below", "strength",
       [](PitT& p, Parameters&) { slab(p), strength(p, 1500, cm(62) + 1); }},
      {"of nothing", "strength", [](PitT& p, Parameters&) { slab(p), strength(p, 0, cm(60)); }},
      {"of one pascal", "strength", [](PitT& p, Parameters&) { slab(p), strength(p, 1, cm(60)); }},
      {"without a number", "strength",
       [](PitT& p, Parameters&) { slab(p), strength(p, 1, cm(60)).strength_pa = flatbuffers::nullopt; }},
      {"doubtful in anything", "strength",
       [](PitT& p, Parameters&) { slab(p), strength(p, 1500, cm(60)).unreliable = 2; }},
      {"the second reading of a profile", "strength",
       [](PitT& p, Parameters&) {
         slab(p), strength(p, 1500, cm(10));
         auto more = std::make_unique<firnbook::StrengthReadingT>();
         more->top = std::make_unique<firnbook::Depth>(down(cm(60))), more->strength_pa = 1400;
         p.strength[0]->readings.push_back(std::move(more));
       }},
      {"as many profiles as are read", "strength",
       [](PitT& p, Parameters&) {
         slab(p);
         for (int i = 0; i < 31; ++i) strength(p, 1500, cm(10));
         strength(p, 1500, cm(60));
       }},
      {"one more", "strength",
       [](PitT& p, Parameters&) {
         slab(p);
         for (int i = 0; i < 32; ++i) strength(p, 1500, cm(10));
         strength(p, 1500, cm(60));
       }},
      {"without a density", "strength",
       [](PitT& p, Parameters& q) {
         q.load_unknown_percent = 100, slab(p), p.densities[0]->readings.resize(1),
         p.layers[1]->hardness = flatbuffers::nullopt;
       }},
      {"decomposed snow that is coarse and soft", "strength",
       [](PitT& p, Parameters&) { slab(p), p.layers[1]->grain_form = GrainForm::DF; }},
      {"rounded grains that are coarse and soft", "strength",
       [](PitT& p, Parameters&) { slab(p), p.layers[1]->grain_form = GrainForm::RGlr; }},
      {"rounded grains that are fine", "strength",
       [](PitT& p, Parameters&) {
         slab(p), p.layers[1]->grain_form = GrainForm::RG, p.layers[1]->grain_size_10um = 100;
       }},
      {"rounded grains that are firm", "strength",
       [](PitT& p, Parameters&) {
         slab(p), p.layers[1]->grain_form = GrainForm::RG, p.layers[1]->hardness = HandHardness::OneFinger;
       }},
      {"melt forms that are coarse and soft", "slab",
       [](PitT& p, Parameters&) { slab(p), p.layers[1]->grain_form = GrainForm::MF; }},
      {"a crack by a ratio of a thousandth", "critical",
       [](PitT& p, Parameters& q) { q.slab_poisson_thousandths = 1, slab(p); }},
      {"without a grain size", "critical",
       [](PitT& p, Parameters& q) {
         q.slab_poisson_thousandths = 200, slab(p), p.layers[1]->grain_size_10um = 0;
       }},
      {"without a density of the weak layer", "critical",
       [](PitT& p, Parameters& q) {
         q.slab_poisson_thousandths = 200, slab(p), p.densities[0]->readings.resize(1),
         p.layers[1]->hardness = flatbuffers::nullopt, strength(p, 1500, cm(60));
       }},
      {"in grains that are not persistent", "critical",
       [](PitT& p, Parameters& q) {
         q.slab_poisson_thousandths = 200, slab(p), p.layers[1]->grain_form = GrainForm::DF;
       }},
  };
  expect(
      rows,
      Lines({"on level ground nothing is known of the slab: skier_index_low raises boundary 0 @60000: 2 1 1;",
             "on 1 degree it stands: 20.5 Pa: skier_index_slab_alone says_little boundary 0 @60000: 35 24 0;",
             "and may with a little more: skier_index_low raises boundary 0 @60000: 37 25 22;",
             "on 60 degrees it stands: 509.7 Pa: skier_index_slab_alone says_little boundary 0 @60000: 891 "
             "613 0;",
             "steeper than that is a slip: skier_index_low raises boundary 0 @60000: 2 1 1;",
             "skis that do not sink: skier_index_between raises boundary 0 @60000: 2087 1436 1436;",
             "that sink a hair: skier_index_between raises boundary 0 @60000: 2087 1436 1436;",
             "below nothing is a slip: estimated, 17.3 cm: skier_index_between raises boundary 0 @60000: "
             "2087 1436 1275;",
             "not measured: estimated too: skier_index_between raises boundary 0 @60000: 2087 1436 1275;",
             "estimated from the top 30 cm alone: skier_index_low raises boundary 1 @60000: 1391 1068 977;",
             "skis as deep as the layer: skier_index_in_track fact boundary 0 @60000: 2087 1436 60000;",
             "a hair less deep: skier_index_low raises boundary 0 @60000: 2087 1436 0;",
             "a strength two centimetres above: strength_estimated fact boundary 0 @60000: 15000 0 1;",
             "a hair further above: strength_estimated fact boundary 0 @60000: 11919 2500 1;",
             "two centimetres below: strength_estimated fact boundary 0 @60000: 15000 0 1;",
             "a hair further below: strength_estimated fact boundary 0 @60000: 11919 2500 1;",
             "of nothing: strength_estimated fact boundary 0 @60000: 11919 2500 1;",
             "of one pascal: strength_estimated fact boundary 0 @60000: 10 0 1;",
             "without a number: strength_estimated fact boundary 0 @60000: 11919 2500 1;",
             "doubtful in anything: strength_estimated fact boundary 0 @60000: 11919 2500 1;",
             "the second reading of a profile: strength_estimated fact boundary 0 @60000: 14000 0 1;",
             "as many profiles as are read: strength_estimated fact boundary 0 @60000: 15000 0 1;",
             "one more: strength_estimated fact boundary 0 @60000: 11919 2500 1;",
             "without a density:",
             "decomposed snow that is coarse and soft: strength_estimated fact boundary 0 @60000: 15308 2500 "
             "1;",
             "rounded grains that are coarse and soft: strength_estimated fact boundary 0 @60000: 15308 2500 "
             "1;",
             "rounded grains that are fine:",
             "rounded grains that are firm:",
             "melt forms that are coarse and soft:",
             "a crack by a ratio of a thousandth: critical_crack_length fact boundary 0 @60000: 16115 11919 "
             "38;",
             "without a grain size:",
             "without a density of the weak layer:",
             "in grains that are not persistent:"}));
}

TEST(AtLimits, OfWhatNobodyRecorded) {
  const Row rows[] = {
      {"a column unbroken, taps not written down", "ct_no",
       [](PitT& p, Parameters&) { add_test(p, TestKind::CT).outcome = TestOutcome::no_fracture; }},
      {"a shovel shear without a fracture", "shear",
       [](PitT& p, Parameters&) { add_test(p, TestKind::ST).outcome = TestOutcome::no_fracture; }},
      {"a shovel shear without a fracture, as recorded", "test",
       [](PitT& p, Parameters&) { add_test(p, TestKind::ST).outcome = TestOutcome::no_fracture; }},
      {"a crossing at the surface below a crack", "ect_columns",
       [](PitT& p, Parameters&) {
         column(p, 14, Crossing::not_crossed), *column(p, 15, Crossing::crossed).depth = down(0);
       }},
      {"a deep block without any surface", "rb_outside",
       [](PitT& p, Parameters&) { block(p, cm(130), 4, ReleaseType::WB); }},
      {"a deep block measured at right angles", "rb_outside",
       [](PitT& p, Parameters&) {
         p.snowpack = std::make_unique<firnbook::SnowpackT>(),
         p.snowpack->direction = firnbook::Direction::slope_normal, surface(p).penetration_ski_10um = cm(20),
         *block(p, 0, 4, ReleaseType::WB).depth = slope_normal(cm(130));
       }},
      {"half a centimetre of denser snow in the top 30 cm", "skier",
       [](PitT& p, Parameters&) {
         add_layer(p, 0, 29500, HandHardness::Pencil, GrainForm::RG, 50),
             add_layer(p, 29500, cm(60), HandHardness::Pencil, GrainForm::RG, 50),
             add_layer(p, cm(60), cm(90), HandHardness::FourFinger, GrainForm::FC, 150),
             add_density(p, 0, 29500, 2000), add_density(p, 29500, cm(60), 4000),
             add_density(p, cm(60), cm(90), 2500);
       }},
      {"a strength from the surface down", "strength",
       [](PitT& p, Parameters&) {
         slab(p), strength(p, 1500, 0).bottom = std::make_unique<firnbook::Depth>(down(cm(60)));
       }},
      {"a strength that begins above the surface", "strength",
       [](PitT& p, Parameters&) {
         slab(p), strength(p, 1500, -1).bottom = std::make_unique<firnbook::Depth>(down(cm(60)));
       }},
      {"the sixty-third reading of a profile", "strength",
       [](PitT& p, Parameters&) {
         slab(p), strength(p, 1500, cm(10));
         for (int i = 0; i < 62; ++i) {
           auto more = std::make_unique<firnbook::StrengthReadingT>();
           more->top = std::make_unique<firnbook::Depth>(down(cm(i < 61 ? 10 : 60))),
           more->strength_pa = 1400;
           p.strength[0]->readings.push_back(std::move(more));
         }
       }},
      {"the sixty-fourth", "strength",
       [](PitT& p, Parameters&) {
         slab(p), strength(p, 1500, cm(10));
         for (int i = 0; i < 63; ++i) {
           auto more = std::make_unique<firnbook::StrengthReadingT>();
           more->top = std::make_unique<firnbook::Depth>(down(cm(i < 62 ? 10 : 60))),
           more->strength_pa = 1400;
           p.strength[0]->readings.push_back(std::move(more));
         }
       }},
      {"the sixty-fifth", "strength",
       [](PitT& p, Parameters&) {
         slab(p), strength(p, 1500, cm(10));
         for (int i = 0; i < 64; ++i) {
           auto more = std::make_unique<firnbook::StrengthReadingT>();
           more->top = std::make_unique<firnbook::Depth>(down(cm(i < 63 ? 10 : 60))),
           more->strength_pa = 1400;
           p.strength[0]->readings.push_back(std::move(more));
         }
       }},
      {"facets of one and a half at 1F-: 112 + 46 * 16 / 6 = 234.67", "density",
       [](PitT& p, Parameters&) { add_layer(p, 0, cm(40), HandHardness::OneFingerMinus, GrainForm::FC); }},
      {"facets between F- and F: 112 + 46 * 5 / 6 = 150.33", "density",
       [](PitT& p, Parameters&) {
         add_layer(p, 0, cm(40), HandHardness::Fist, GrainForm::FC),
             p.layers[0]->hardness = flatbuffers::nullopt,
             p.layers[0]->hardness_top = HandHardness::FistMinus,
             p.layers[0]->hardness_bottom = HandHardness::Fist;
       }},
      {"above the middle of the second layer", "slab_load",
       [](PitT& p, Parameters&) {
         pair(p, HandHardness::Pencil, 50, HandHardness::Fist, 150, cm(40)), add_density(p, 0, cm(40), 2000),
             add_density(p, cm(40), cm(90), 1000);
       }},
  };
  expect(
      rows,
      Lines({"a column unbroken, taps not written down: ct_no_fracture raised_nothing tests[0] @-1: 0 0 0;",
             "a shovel shear without a fracture:",
             "a shovel shear without a fracture, as recorded: test_recorded fact tests[0] @-1: 6 2 0;",
             "a crossing at the surface below a crack: ect_columns_differ fact pit @0: 1 1 0;",
             "a deep block without any surface:", "a deep block measured at right angles:",
             "half a centimetre of denser snow in the top 30 cm: skier_index_low raises boundary 1 @60000: "
             "1384 1064 975;",
             "a strength from the surface down: strength_estimated fact boundary 0 @60000: 15000 0 1;",
             "a strength that begins above the surface: strength_estimated fact boundary 0 @60000: 11919 "
             "2500 1;",
             "the sixty-third reading of a profile: strength_estimated fact boundary 0 @60000: 14000 0 1;",
             "the sixty-fourth: strength_estimated fact boundary 0 @60000: 14000 0 1;",
             "the sixty-fifth: strength_estimated fact boundary 0 @60000: 11919 2500 1;",
             "facets of one and a half at 1F-: 112 + 46 * 16 / 6 = 234.67: density_estimated fact layers[0] "
             "@0: 2347 16 50;",
             "facets between F- and F: 112 + 46 * 5 / 6 = 150.33: density_estimated fact layers[0] @0: 1503 "
             "5 50;",
             "above the middle of the second layer: slab_load fact boundary 0 @40000: 800 2000 0;"}));
}

TEST(AtLimits, OfWhatLiesAboveTheSurfaceAndOfHalves) {
  const Row rows[] = {
      {"a mean of 166.6499", "water",
       [](PitT& p, Parameters&) {
         add_layer(p, 0, 501), add_layer(p, 501, 1000), add_density(p, 0, 501, 1666),
             add_density(p, 501, 1000, 1667);
       }},
      {"10.5 percent not measured", "water",
       [](PitT& p, Parameters&) {
         add_layer(p, 0, 895), add_layer(p, 895, 1000, HandHardness::Pencil, GrainForm::RG),
             add_density(p, 0, 895, 2730);
       }},
      {"depth hoar between F and F-4F: 185 + 25 * 15 / 12 = 216.25", "density",
       [](PitT& p, Parameters&) {
         add_layer(p, 0, cm(40), HandHardness::Fist, GrainForm::DH),
             p.layers[0]->hardness = flatbuffers::nullopt, p.layers[0]->hardness_top = HandHardness::Fist,
             p.layers[0]->hardness_bottom = HandHardness::FistToFourFinger;
       }},
      {"a crossing tap without the first", "ect_not_crossed ",
       [](PitT& p, Parameters&) { column(p, 14, Crossing::not_crossed, 5).tap = flatbuffers::nullopt; }},
      {"a strength at the surface for a layer two centimetres down", "strength",
       [](PitT& p, Parameters&) {
         pair(p, HandHardness::Pencil, 50, HandHardness::FourFinger, 150, cm(2)),
             add_density(p, 0, cm(2), 2000), add_density(p, cm(2), cm(90), 2500), strength(p, 1500, 0);
       }},
      {"an index at the very limit is not below it", "skier",
       [](PitT& p, Parameters& q) {
         slab(p), surface(p).penetration_ski_10um = cm(20), q.index_low_thousandths = 1242;
       }},
      {"a hair more", "skier",
       [](PitT& p, Parameters& q) {
         slab(p), surface(p).penetration_ski_10um = cm(20), q.index_low_thousandths = 1243;
       }},
      {"a weak layer that touches at the surface", "weak",
       [](PitT& p, Parameters&) {
         add_layer(p, -cm(1), 0, HandHardness::Pencil, GrainForm::RG, 50), alone(p, 0, cm(2));
       }},
      {"a weak layer that touches above it", "weak",
       [](PitT& p, Parameters&) {
         add_layer(p, -cm(1), -1, HandHardness::Pencil, GrainForm::RG, 50), alone(p, -1, cm(2));
       }},
      {"a saw above the surface", "pst_length",
       [](PitT& p, Parameters&) { add_saw_test(p, cm(60), cm(50), SawEnd::End, -1); }},
      {"a crossing above the surface", "ect_in",
       [](PitT& p, Parameters& q) {
         q.ect_ignored_top_10um = cm(10), *column(p, 14, Crossing::crossed).depth = down(-1);
       }},
      {"a block above the surface", "rb_outside",
       [](PitT& p, Parameters&) {
         surface(p).penetration_ski_10um = cm(20), block(p, -1, 4, ReleaseType::WB);
       }},
      {"a column across at the surface, one above it", "ect_columns",
       [](PitT& p, Parameters&) {
         *column(p, 14, Crossing::crossed).depth = down(0),
                        *column(p, 15, Crossing::crossed).depth = down(-1);
       }},
  };
  expect(
      rows,
      Lines({"a mean of 166.6499: water_equivalent fact pit @1000: 167 1666 0;",
             "10.5 percent not measured: water_equivalent fact pit @1000: 273 2730 11;",
             "depth hoar between F and F-4F: 185 + 25 * 15 / 12 = 216.25: density_estimated fact layers[0] "
             "@0: 2163 7 60;",
             "a crossing tap without the first: ect_not_crossed not_met tests[0].fractures[0] @40000: 0 5 3;",
             "a strength at the surface for a layer two centimetres down: strength_estimated fact boundary 0 "
             "@2000: 15000 0 1;",
             "an index at the very limit is not below it: skier_index_between raises boundary 0 @60000: 2087 "
             "1436 1242;",
             "a hair more: skier_index_low raises boundary 0 @60000: 2087 1436 1242;",
             "a weak layer that touches at the surface: weak_layer_build fact boundary 0 @0: 2000 24 3;",
             "a weak layer that touches above it: weak_layer_build fact boundary 0 @-1: 2001 24 1;",
             "a saw above the surface:", "a crossing above the surface:", "a block above the surface:",
             "a column across at the surface, one above it: ect_columns_differ fact pit @0: 1 1 0;"}));
}

TEST(AtLimits, SlopesEndAtLevelGroundAndSixtyDegrees) {
  using interpretation::Slope;
  EXPECT_EQ(Slope(-1).sine, Slope(0).sine);
  EXPECT_EQ(Slope(0).sine, 0);
  EXPECT_GT(Slope(1).sine, 0);
  EXPECT_LT(Slope(59).sine, Slope(60).sine);
  EXPECT_EQ(Slope(61).sine, Slope(60).sine);
  EXPECT_EQ(interpretation::estimated_penetration(0), 0);
  EXPECT_NEAR(interpretation::estimated_penetration(0.5), 69.2, 1e-9);
}

}  // namespace
}  // namespace firn::tests
