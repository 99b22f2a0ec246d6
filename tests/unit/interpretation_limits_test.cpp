// What lies exactly at a limit, what nobody can tell, and what two things could mean: each row was held
// by hand against the record above it, README.md of the module and schemas/report.fbs.
#include <gtest/gtest.h>

#include <algorithm>

#include "interpretation_said.h"

namespace firn::tests {
namespace {

using firnbook::Answer;
using firnbook::BulletinState;
using firnbook::Comparison;
using firnbook::Crossing;
using firnbook::LoadStage;
using firnbook::ReleaseType;
using firnbook::ShearEase;
using firnbook::ShearQuality;
using firnbook::StepKind;
using firnbook::TestOutcome;
using interpretation::Parameters;

constexpr std::uint64_t kAll = ~std::uint64_t{0};

// "ct_sudden tests[0].fractures[0]", in order.
Lines evidence_of(const Read& read, std::size_t concern) {
  Lines out;
  for (const Finding* one : read.evidence(concern)) {
    out.push_back(std::string(firnbook::EnumNameFindingKey(one->key())) + " " + said_of(one->subject()));
  }
  return out;
}
// "60 to 61: sudden" of each concern.
Lines ranks_of(const Read& read) {
  Lines out;
  for (const interpretation::Concern& one : read.analysis.concerns) {
    out.push_back(std::to_string(one.top / 1000) + ": " + firnbook::EnumNameConcernKind(one.kind) +
                  numbers({one.weaker_layer}) + ", " + firnbook::EnumNameConcernRank(one.rank) +
                  numbers({one.ease}));
  }
  return out;
}
Lines only(const Lines& lines, const std::string& start) {
  Lines out;
  for (const std::string& line : lines) {
    if (line.rfind(start, 0) == 0) out.push_back(line);
  }
  return out;
}

firnbook::SiteT& site(PitT& pit) {
  if (!pit.site) pit.site = std::make_unique<firnbook::SiteT>();
  return *pit.site;
}
void add_step(PitT& pit, StepKind kind, bool done) {
  pit.steps.push_back(std::make_unique<firnbook::StepT>());
  pit.steps.back()->kind = kind;
  pit.steps.back()->done = done;
}
void look_at_bulletin(PitT& pit, BulletinState state) {
  pit.bulletin = std::make_unique<firnbook::BulletinSeenT>();
  pit.bulletin->state = state;
}

// Hoar at 60 cm between two firm layers and facets at 100 cm; stored from the ground up.
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

// --- cautions

TEST(Cautions, NameEveryDoubtfulValueThatRaisesOnce) {
  PitT pit = upside_down();
  for (auto& layer : pit.layers) layer->unreliable = kAll;
  add_compression_test(pit, 12, FractureCharacter::SP, cm(60)).unreliable = kAll;
  add_compression_test(pit, 12, FractureCharacter::RP, cm(60)).unreliable = kAll;
  add_saw_test(pit, cm(30), cm(100), SawEnd::End, cm(60));
  pit.tests[2]->unreliable = kAll;
  add_sign(pit, firnbook::SignKind::whumpf, Answer::no);
  add_sign(pit, firnbook::SignKind::cracking, Answer::yes);
  for (auto& sign : pit.signs) sign->unreliable = kAll;
  pit.slides.push_back(std::make_unique<firnbook::SlideT>());
  pit.slides.push_back(std::make_unique<firnbook::SlideT>());
  pit.slides[1]->unreliable = 1;
  add_temperature(pit, cm(50), -900);
  add_temperature(pit, cm(60), -600);
  add_temperature(pit, cm(70), -580);
  pit.temperatures[1]->unreliable = kAll;
  pit.temperatures[2]->unreliable = kAll;
  EXPECT_EQ(only(cautions_of(Read(pit)), "rests"),
            Lines({"rests_on_unreliable layers[0].hardness: 0 0",
                   "rests_on_unreliable layers[0].grain_size_mm: 0 0",
                   "rests_on_unreliable layers[1].top_cm: 0 0",
                   "rests_on_unreliable layers[1].hardness: 0 0",
                   "rests_on_unreliable layers[1].grain_form: 0 0",
                   "rests_on_unreliable layers[1].grain_size_mm: 0 0",
                   "rests_on_unreliable layers[2].top_cm: 0 0",
                   "rests_on_unreliable layers[2].bottom_cm: 0 0",
                   "rests_on_unreliable layers[2].hardness: 0 0",
                   "rests_on_unreliable layers[2].grain_form: 0 0",
                   "rests_on_unreliable layers[2].grain_size_mm: 0 0",
                   "rests_on_unreliable layers[3].top_cm: 0 0",
                   "rests_on_unreliable layers[3].bottom_cm: 0 0",
                   "rests_on_unreliable layers[3].hardness: 0 0",
                   "rests_on_unreliable layers[3].grain_size_mm: 0 0",
                   "rests_on_unreliable layers[4].bottom_cm: 0 0",
                   "rests_on_unreliable layers[4].hardness: 0 0",
                   "rests_on_unreliable temperatures[1].depth_cm: 0 0",
                   "rests_on_unreliable temperatures[1].temperature_degc: 0 0",
                   "rests_on_unreliable tests[2].column_length_cm: 0 0",
                   "rests_on_unreliable tests[0].fractures[0].depth_cm: 0 0",
                   "rests_on_unreliable tests[0].fractures[0].tap: 0 0",
                   "rests_on_unreliable tests[0].fractures[0].tap_crossed: 0 0",
                   "rests_on_unreliable tests[0].fractures[0].stage: 0 0",
                   "rests_on_unreliable tests[0].fractures[0].character: 0 0",
                   "rests_on_unreliable tests[0].fractures[0].quality: 0 0",
                   "rests_on_unreliable tests[0].fractures[0].crossing: 0 0",
                   "rests_on_unreliable tests[0].fractures[0].step: 0 0",
                   "rests_on_unreliable tests[0].fractures[0].release: 0 0",
                   "rests_on_unreliable tests[0].fractures[0].cut_cm: 0 0",
                   "rests_on_unreliable tests[0].fractures[0].saw_end: 0 0",
                   "rests_on_unreliable tests[0].fractures[0].ease: 0 0",
                   "rests_on_unreliable signs[0].kind: 0 0",
                   "rests_on_unreliable signs[0].answer: 0 0",
                   "rests_on_unreliable signs[1].kind: 0 0",
                   "rests_on_unreliable signs[1].answer: 0 0",
                   "rests_on_unreliable slides[1]: 0 0"}));
}

TEST(Cautions, NameTheFieldAHardnessWasWrittenIn) {
  PitT pit = upside_down();
  pit.layers[2]->hardness = flatbuffers::nullopt;
  pit.layers[2]->hardness_top = HandHardness::Fist;
  pit.layers[2]->hardness_bottom = HandHardness::Fist;
  pit.layers[3]->hardness_bottom = HandHardness::OneFinger;
  pit.layers[2]->unreliable = kAll;
  pit.layers[3]->unreliable = kAll;
  EXPECT_EQ(
      only(cautions_of(Read(pit)), "rests"),
      Lines({"rests_on_unreliable layers[2].top_cm: 0 0", "rests_on_unreliable layers[2].bottom_cm: 0 0",
             "rests_on_unreliable layers[2].hardness_top: 0 0",
             "rests_on_unreliable layers[2].hardness_bottom: 0 0",
             "rests_on_unreliable layers[2].grain_form: 0 0",
             "rests_on_unreliable layers[2].grain_size_mm: 0 0", "rests_on_unreliable layers[3].top_cm: 0 0",
             "rests_on_unreliable layers[3].bottom_cm: 0 0",
             "rests_on_unreliable layers[3].hardness_bottom: 0 0",
             "rests_on_unreliable layers[3].grain_size_mm: 0 0"}));
}

TEST(Cautions, FindLayersWithoutNeighboursToo) {
  PitT pit;
  add_layer(pit, cm(90), cm(94), HandHardness::Fist, GrainForm::SH, 300);
  add_layer(pit, cm(60), cm(64), HandHardness::Fist, GrainForm::DH, 300);
  add_layer(pit, cm(20), cm(30), HandHardness::Pencil, GrainForm::RG, 50);
  add_layer(pit, 0, cm(20), HandHardness::Fist, GrainForm::FC, 300);
  pit.layers[0]->unreliable = kAll;
  pit.layers[1]->unreliable = kAll;
  EXPECT_EQ(
      only(cautions_of(Read(pit)), "rests"),
      Lines({"rests_on_unreliable layers[0].hardness: 0 0", "rests_on_unreliable layers[0].grain_form: 0 0",
             "rests_on_unreliable layers[0].grain_size_mm: 0 0", "rests_on_unreliable layers[1].top_cm: 0 0",
             "rests_on_unreliable layers[1].hardness: 0 0", "rests_on_unreliable layers[1].grain_form: 0 0",
             "rests_on_unreliable layers[1].grain_size_mm: 0 0"}));
  EXPECT_EQ(concerns_of(Read(pit)), Lines({"boundary 3 2 weaker 3 at 0, 20000 to 20000: structure, tap 99, 6 "
                                           "flags, not_tested, one_rider, 10 pieces",
                                           "layer 1 -1 weaker 1 at 2, 60000 to 64000: structure, tap 99, 4 "
                                           "flags, not_tested, one_rider, 7 pieces",
                                           "layer 0 -1 weaker 0 at 3, 90000 to 94000: structure, tap 99, 3 "
                                           "flags, not_tested, one_rider, 7 pieces"}));
}

TEST(Cautions, OfStepsThatGuardPeople) {
  PitT pit;
  add_step(pit, StepKind::kit_within_reach, true);
  add_step(pit, StepKind::pack_closed, false);
  add_step(pit, StepKind::probed_for_even_depth, false);
  EXPECT_EQ(only(cautions_of(Read(pit)), "step"),
            Lines({"step_not_done steps[1]: 2 0", "step_not_ticked steps: 3 0", "step_not_ticked steps: 5 0",
                   "step_not_ticked steps: 6 0", "step_not_ticked steps: 17 0"}));
  pit.backfilled = true;
  EXPECT_EQ(only(cautions_of(Read(pit)), "step"),
            Lines({"step_not_done steps[1]: 2 0", "step_not_ticked steps: 3 0", "step_not_ticked steps: 5 0",
                   "step_not_ticked steps: 6 0"}));
  pit.steps.clear();
  EXPECT_EQ(only(cautions_of(Read(pit)), "step"), Lines{});
}

TEST(Cautions, OfThePlaceTheRecordAndTheBulletin) {
  PitT pit;
  pit.snowpack = std::make_unique<firnbook::SnowpackT>();
  pit.snowpack->hs_10um = 0;
  pit.choice = std::make_unique<firnbook::ChoiceT>();
  pit.choice->aspect = Comparison::same;
  pit.choice->elevation = Comparison::similar;
  pit.choice->wind_loading = Comparison::less;
  pit.choice->incline = Comparison::different;
  pit.backfilled = false;
  pit.practice = true;
  site(pit).probes_10um = {cm(120), 0, cm(60), cm(90)};
  site(pit).elevation_10um = metres(2000);
  site(pit).aspect_deg = std::uint16_t{0};
  add_compression_test(pit, 12, FractureCharacter::SP, cm(60));
  add_compression_test(pit, 12, FractureCharacter::SP, cm(60));
  add_compression_test(pit, 12, FractureCharacter::SP, cm(60));
  pit.tests[1]->outcome = TestOutcome::not_valid;
  pit.tests[2]->outcome = TestOutcome::not_valid;
  look_at_bulletin(pit, BulletinState::issued);
  EXPECT_EQ(cautions_of(Read(pit)),
            Lines({"practice_pit pit: 0 0", "record_has_errors tests[0].fractures[0].depth_cm: 3 0",
                   "probing_uneven site.probes_cm: 0 120000", "test_not_valid tests[1]: 2 0",
                   "signs_not_looked_for pit: 14 0", "site_differs choice.wind_loading: 4 0",
                   "site_differs choice.incline: 3 0", "shallow_snow snowpack.hs_cm: 0 0",
                   "no_layers pit: 0 0", "not_backfilled backfilled: 0 0"}));
  pit.snowpack->hs_10um = cm(100) - 1;
  look_at_bulletin(pit, BulletinState::not_looked_at);
  EXPECT_EQ(cautions_of(Read(pit)),
            Lines({"practice_pit pit: 0 0", "probing_uneven site.probes_cm: 0 120000",
                   "test_not_valid tests[1]: 2 0", "signs_not_looked_for pit: 14 0",
                   "site_differs choice.wind_loading: 4 0", "site_differs choice.incline: 3 0",
                   "shallow_snow snowpack.hs_cm: 99999 0", "bulletin_not_looked_at bulletin: 0 0",
                   "no_layers pit: 0 0", "not_backfilled backfilled: 0 0"}));
  pit.snowpack->hs_10um = -1;
  look_at_bulletin(pit, BulletinState::none_issued);
  pit.site->aspect_deg = flatbuffers::nullopt;
  EXPECT_EQ(cautions_of(Read(pit)),
            Lines({"practice_pit pit: 0 0", "record_has_errors snowpack.hs_cm: 1 0",
                   "probing_uneven site.probes_cm: 0 120000", "test_not_valid tests[1]: 2 0",
                   "signs_not_looked_for pit: 14 0", "site_differs choice.wind_loading: 4 0",
                   "site_differs choice.incline: 3 0", "no_bulletin bulletin: 0 0", "no_layers pit: 0 0",
                   "site_unknown site: 0 0", "not_backfilled backfilled: 0 0"}));
}

TEST(Cautions, SixStandForEveryPit) {
  std::vector<std::pair<std::int32_t, std::int32_t>> standing;
  for (const firnbook::Caution& one : Read(PitT()).analysis.cautions) {
    if (one.specific() == 1) continue;
    EXPECT_EQ(one.specific(), 0);
    EXPECT_EQ(said_of(one.place()), "pit");
    standing.emplace_back(one.a(), one.b());
  }
  EXPECT_EQ(standing, (std::vector<std::pair<std::int32_t, std::int32_t>>(6, {0, 0})));
}

// --- order of evidence, and where it belongs

PitT with_everything() {
  PitT pit = upside_down();
  pit.layers[2]->concern = firnbook::PartOfLayer::top;
  add_fracture(add_test(pit, TestKind::ST), cm(60)).ease = ShearEase::M;
  firnbook::FractureT& block = add_fracture(add_test(pit, TestKind::RB), cm(60));
  block.step = std::uint8_t{1};
  firnbook::FractureT& quality = add_compression_test(pit, 14, FractureCharacter::RP, cm(60));
  quality.quality = ShearQuality::Q1;
  quality.character = flatbuffers::nullopt;
  add_compression_test(pit, 25, FractureCharacter::RP, cm(61));
  add_fracture(*pit.tests[3], cm(60)).tap = std::uint8_t{11};
  pit.tests[3]->fractures[1]->character = FractureCharacter::SP;
  add_compression_test(pit, 11, FractureCharacter::SP, cm(60));
  add_saw_test(pit, cm(30), cm(100), SawEnd::End, cm(60));
  add_extended_column(pit, 8, Crossing::not_crossed, cm(60));
  add_extended_column(pit, 9, Crossing::crossed, cm(61)).tap_crossed = std::uint8_t{10};
  add_compression_test(pit, 12, FractureCharacter::SP, cm(60)).tap = flatbuffers::nullopt;
  pit.tests[8]->kind = TestKind::DT;
  pit.tests[8]->fractures[0]->stage = LoadStage::isolating;
  add_temperature(pit, cm(40), -900);
  add_temperature(pit, cm(60), -500);
  add_temperature(pit, cm(61), -480);
  add_temperature(pit, cm(80), -100);
  return pit;
}

TEST(Evidence, ComesInTheOrderOfItsQuestions) {
  const Read read(with_everything());
  EXPECT_EQ(evidence_of(read, 0), Lines({"ect_crossed_before_22 tests[7].fractures[0]",
                                         "ect_schemes tests[7].fractures[0]",
                                         "ect_rules_differ tests[7].fractures[0]",
                                         "pst_propagation_likely tests[5].fractures[0]",
                                         "ect_not_crossed tests[6].fractures[0]",
                                         "ect_schemes tests[6].fractures[0]",
                                         "ect_not_crossed_early tests[6].fractures[0]",
                                         "ct_sudden tests[8].fractures[0]",
                                         "ct_sudden tests[3].fractures[1]",
                                         "ct_sudden tests[4].fractures[0]",
                                         "ct_quality_one tests[2].fractures[0]",
                                         "ct_character_unknown tests[2].fractures[0]",
                                         "ct_resistant tests[3].fractures[0]",
                                         "rb_class_one tests[1].fractures[0]",
                                         "shear_located tests[0].fractures[0]",
                                         "marked_by_observer layers[2].concern",
                                         "flag_grain_size layers[2].grain_size_mm",
                                         "flag_hardness layers[2].hardness",
                                         "flag_grain_form layers[2].grain_form",
                                         "flag_size_difference boundary 3",
                                         "flag_hardness_difference boundary 3",
                                         "flag_depth boundary 3",
                                         "flag_count boundary 3",
                                         "flag_count boundary 2",
                                         "threshold_sum boundary 3",
                                         "lemons boundary 3",
                                         "weak_layer_build boundary 3",
                                         "gradient_strong temperatures[0]",
                                         "gradient_strong temperatures[1]",
                                         "gradient_strong temperatures[2]"}));
  EXPECT_EQ(ranks_of(read), Lines({"60: layer 2, propagated 0", "100: boundary 1, structure 99"}));
}

TEST(Evidence, OfOneKindComesByRankThenEaseThenTest) {
  PitT pit;
  add_compression_test(pit, 12, FractureCharacter::RP, cm(60));
  add_compression_test(pit, 25, FractureCharacter::SP, cm(60));
  add_compression_test(pit, 2, FractureCharacter::BRK, cm(60));
  add_compression_test(pit, 12, FractureCharacter::SC, cm(61));
  add_fracture(*pit.tests[3], cm(60)).tap = std::uint8_t{12};
  pit.tests[3]->fractures[1]->character = FractureCharacter::SP;
  add_compression_test(pit, 11, FractureCharacter::RP, cm(62));
  EXPECT_EQ(evidence_of(Read(pit), 0),
            Lines({"ct_sudden tests[3].fractures[0]", "ct_sudden tests[3].fractures[1]",
                   "ct_sudden tests[1].fractures[0]", "ct_resistant tests[4].fractures[0]",
                   "ct_resistant tests[0].fractures[0]", "ct_break tests[2].fractures[0]"}));
}

TEST(Evidence, OfGradientsEndsWithTheConcern) {
  for (const auto& [from, to, told] :
       std::vector<std::tuple<std::int32_t, std::int32_t, bool>>{{cm(50), cm(60), true},
                                                                 {cm(50), cm(60) - 1, false},
                                                                 {cm(61), cm(71), true},
                                                                 {cm(61) + 1, cm(71), false},
                                                                 {cm(60), cm(61), true}}) {
    PitT pit = upside_down();
    add_temperature(pit, from, -900);
    add_temperature(pit, to, -500);
    const Lines evidence = evidence_of(Read(pit), 0);
    EXPECT_EQ(only(evidence, "gradient_strong").size(), told ? 1u : 0u) << from << " " << to;
  }
}

TEST(Evidence, OfAThinLayerIsToldAtTheEdgeWithMoreFlags) {
  PitT pit = upside_down();
  pit.layers[1]->hardness = HandHardness::Pencil;
  pit.layers[1]->grain_size_10um = 50;
  pit.layers[3]->hardness = HandHardness::Fist;
  EXPECT_EQ(evidence_of(Read(pit), 0),
            Lines({"flag_grain_size layers[2].grain_size_mm", "flag_hardness layers[2].hardness",
                   "flag_grain_form layers[2].grain_form", "flag_size_difference boundary 2",
                   "flag_hardness_difference boundary 2", "flag_depth boundary 2", "flag_count boundary 3",
                   "flag_count boundary 2", "threshold_sum boundary 2", "lemons boundary 2"}));
  pit.layers[3]->hardness = HandHardness::Pencil;
  EXPECT_EQ(evidence_of(Read(pit), 0),
            Lines({"flag_grain_size layers[2].grain_size_mm", "flag_hardness layers[2].hardness",
                   "flag_grain_form layers[2].grain_form", "flag_size_difference boundary 3",
                   "flag_hardness_difference boundary 3", "flag_depth boundary 3", "flag_count boundary 3",
                   "flag_count boundary 2", "threshold_sum boundary 3", "lemons boundary 3",
                   "weak_layer_build boundary 3"}));
}

// --- names

struct Named {
  const char* what;
  void (*name)(PitT&, firnbook::LayerNameT&);
  std::int32_t depth;  // -1 = none
};

firnbook::LayerNameT& name_of(firnbook::LayerT& layer) {
  if (!layer.name) layer.name = std::make_unique<firnbook::LayerNameT>();
  return *layer.name;
}
void dated(firnbook::LayerNameT& name, std::int64_t seconds,
           firnbook::TimePrecision precision = firnbook::TimePrecision::day) {
  name.date = std::make_unique<firnbook::Moment>(seconds, std::int16_t{0}, precision, 1);
}

// Four firm layers of which nothing but their names tells one from another.
PitT four_layers() {
  PitT pit;
  for (int i = 0; i < 4; ++i)
    add_layer(pit, cm(20 * i), cm(20 * i + 20), HandHardness::Pencil, GrainForm::RG, 50);
  return pit;
}

TEST(Names, FindTheirLayer) {
  const Named rows[] = {
      {"by day, the topmost layer",
       [](PitT& p, firnbook::LayerNameT& n) { dated(name_of(*p.layers[0]), 86400), dated(n, 2 * 86400 - 1); },
       -1},
      {"by day, one day on",
       [](PitT& p, firnbook::LayerNameT& n) { dated(name_of(*p.layers[2]), 86400), dated(n, 2 * 86400); },
       -1},
      {"by day before 1970",
       [](PitT& p, firnbook::LayerNameT& n) { dated(name_of(*p.layers[2]), -1), dated(n, -86400); }, -1},
      {"by day, either side of 1970",
       [](PitT& p, firnbook::LayerNameT& n) { dated(name_of(*p.layers[2]), 0), dated(n, -1); }, -1},
      {"by the last day before 1970 and the day before",
       [](PitT& p, firnbook::LayerNameT& n) { dated(name_of(*p.layers[2]), -86400), dated(n, -86401); }, -1},
      {"not by a date without a day",
       [](PitT& p, firnbook::LayerNameT& n) {
         dated(name_of(*p.layers[2]), 0, firnbook::TimePrecision::none),
             dated(n, 0, firnbook::TimePrecision::none);
       },
       -1},
      {"by words",
       [](PitT& p, firnbook::LayerNameT& n) {
         name_of(*p.layers[2]).words = "hoar", name_of(*p.layers[0]).words = "crust", n.words = "hoar";
       },
       -1},
      {"by words, the topmost layer",
       [](PitT& p, firnbook::LayerNameT& n) { name_of(*p.layers[0]).words = "hoar", n.words = "hoar"; }, -1},
      {"by words of 64 letters",
       [](PitT& p, firnbook::LayerNameT& n) { name_of(*p.layers[2]).words = n.words = std::string(64, 'h'); },
       -1},
      {"not by longer words",
       [](PitT& p, firnbook::LayerNameT& n) { name_of(*p.layers[2]).words = n.words = std::string(65, 'h'); },
       -1},
      {"not by other words",
       [](PitT& p, firnbook::LayerNameT& n) { name_of(*p.layers[2]).words = "hoar", n.words = "crust"; }, -1},
      {"by day before words",
       [](PitT& p, firnbook::LayerNameT& n) {
         dated(name_of(*p.layers[1]), 0), name_of(*p.layers[2]).words = "hoar", dated(n, 0), n.words = "hoar";
       },
       -1},
      {"by words where no layer has the day",
       [](PitT& p, firnbook::LayerNameT& n) {
         name_of(*p.layers[2]).words = "hoar", dated(n, 0), n.words = "hoar";
       },
       -1},
      {"the first of one day",
       [](PitT& p, firnbook::LayerNameT& n) {
         dated(name_of(*p.layers[1]), 0), dated(name_of(*p.layers[2]), 0), dated(n, 0);
       },
       -1},
      {"of one day, the one with the grains named",
       [](PitT& p, firnbook::LayerNameT& n) {
         dated(name_of(*p.layers[0]), 0), dated(name_of(*p.layers[2]), 0),
             p.layers[2]->grain_form = GrainForm::MF, dated(n, 0);
       },
       -1},
      {"of one name, the one with the grains named",
       [](PitT& p, firnbook::LayerNameT& n) {
         name_of(*p.layers[0]).words = name_of(*p.layers[2]).words = n.words = "hoar",
         p.layers[2]->grain_form = GrainForm::MFcr;
       },
       -1},
      {"by the only layer of its grains",
       [](PitT& p, firnbook::LayerNameT&) { p.layers[2]->grain_form = GrainForm::MFcr; }, -1},
      {"by none where two have them",
       [](PitT& p, firnbook::LayerNameT&) {
         p.layers[2]->grain_form = GrainForm::MFcr, p.layers[0]->grain_form = GrainForm::MF;
       },
       -1},
      {"a depth as far from the layer named as it may be",
       [](PitT& p, firnbook::LayerNameT& n) { dated(name_of(*p.layers[2]), 0), dated(n, 0); }, cm(38)},
      {"a hair further: both places",
       [](PitT& p, firnbook::LayerNameT& n) { dated(name_of(*p.layers[3]), 0), dated(n, 0); }, cm(58) - 1},
      {"a depth within the layer named",
       [](PitT& p, firnbook::LayerNameT& n) { dated(name_of(*p.layers[2]), 0), dated(n, 0); }, cm(50)},
      {"two centimetres below the layer named",
       [](PitT& p, firnbook::LayerNameT& n) { dated(name_of(*p.layers[1]), 0), dated(n, 0); }, cm(42)},
      {"a hair more", [](PitT& p, firnbook::LayerNameT& n) { dated(name_of(*p.layers[1]), 0), dated(n, 0); },
       cm(42) + 1},
      {"a depth of 0", [](PitT& p, firnbook::LayerNameT& n) { dated(name_of(*p.layers[3]), 0), dated(n, 0); },
       0},
  };
  Lines got;
  for (const Named& row : rows) {
    PitT pit = four_layers();
    firnbook::FractureT& fracture = add_compression_test(pit, 12, FractureCharacter::SP, row.depth);
    if (row.depth < 0) fracture.depth.reset();
    firnbook::LayerT& on = name_layer(fracture, GrainForm::MF);
    row.name(pit, name_of(on));
    std::string where;
    for (const interpretation::Concern& one : Read(pit).analysis.concerns) {
      where += std::string(firnbook::EnumNameConcernKind(one.kind)) + numbers({one.layer, one.top}) + "; ";
    }
    got.push_back(std::string(row.what) + ": " + where);
  }
  EXPECT_EQ(got, Lines({"by day, the topmost layer: boundary 0 20000; ",
                        "by day, one day on: depth_only -1 -1; ",
                        "by day before 1970: boundary 1 40000; ",
                        "by day, either side of 1970: depth_only -1 -1; ",
                        "by the last day before 1970 and the day before: depth_only -1 -1; ",
                        "not by a date without a day: depth_only -1 -1; ",
                        "by words: boundary 1 40000; ",
                        "by words, the topmost layer: boundary 0 20000; ",
                        "by words of 64 letters: boundary 1 40000; ",
                        "not by longer words: depth_only -1 -1; ",
                        "not by other words: depth_only -1 -1; ",
                        "by day before words: boundary 0 20000; ",
                        "by words where no layer has the day: boundary 1 40000; ",
                        "the first of one day: boundary 0 20000; ",
                        "of one day, the one with the grains named: boundary 1 40000; ",
                        "of one name, the one with the grains named: boundary 1 40000; ",
                        "by the only layer of its grains: boundary 1 40000; ",
                        "by none where two have them: depth_only -1 -1; ",
                        "a depth as far from the layer named as it may be: boundary 1 40000; ",
                        "a hair further: both places: boundary 2 60000; layer 2 57999; ",
                        "a depth within the layer named: layer 2 50000; ",
                        "two centimetres below the layer named: boundary 1 40000; ",
                        "a hair more: boundary 0 20000; layer 2 42001; ",
                        "a depth of 0: boundary 2 60000; layer 0 0; "}));
}

// --- places

TEST(Places, OfTwoBoundariesTheOneWithTheGrainsThenTheNearerThenTheFlaggedThenTheUpper) {
  const auto where = [](std::int32_t depth, GrainForm upper, GrainForm lower, GrainForm named,
                        std::int32_t lower_size, std::int32_t second = cm(54)) {
    PitT pit;
    add_layer(pit, 0, cm(50), HandHardness::Pencil, GrainForm::RG, 30);
    add_layer(pit, cm(50), second, HandHardness::Pencil, upper, 30);
    add_layer(pit, second, cm(100), HandHardness::Pencil, lower, lower_size);
    name_layer(add_compression_test(pit, 12, FractureCharacter::SP, depth), named);
    return std::to_string(Read(pit).analysis.concerns.at(0).top / 1000);
  };
  EXPECT_EQ(where(cm(52), GrainForm::RG, GrainForm::RG, GrainForm::MF, 30), "50");
  EXPECT_EQ(where(cm(52), GrainForm::RG, GrainForm::RG, GrainForm::RG, 30), "50");
  EXPECT_EQ(where(cm(52), GrainForm::RG, GrainForm::RG, GrainForm::MF, 200), "54");
  EXPECT_EQ(where(cm(52) - 1, GrainForm::RG, GrainForm::RG, GrainForm::MF, 200), "50");
  EXPECT_EQ(where(cm(52), GrainForm::RG, GrainForm::DF, GrainForm::DF, 30), "54");
  // 1.4 cm from the upper one and 1.6 cm from the lower.
  EXPECT_EQ(where(cm(51) + 400, GrainForm::RG, GrainForm::DF, GrainForm::DFbk, 30, cm(53)), "53");
  EXPECT_EQ(where(cm(51) + 400, GrainForm::RG, GrainForm::DF, GrainForm::MF, 200, cm(53)), "50");
  EXPECT_EQ(where(cm(51) + 500, GrainForm::RG, GrainForm::DF, GrainForm::MF, 200, cm(53)), "53");
  EXPECT_EQ(where(cm(52), GrainForm::DF, GrainForm::RG, GrainForm::DF, 200), "50");
}

TEST(Places, AtTheVerySurface) {
  PitT pit;
  add_layer(pit, 0, cm(30), HandHardness::Pencil, GrainForm::RG, 30);
  add_compression_test(pit, 12, FractureCharacter::SP, 0);
  add_extended_column(pit, 13, Crossing::crossed, 0);
  add_extended_column(pit, 14, Crossing::not_crossed, cm(2));
  add_saw_test(pit, cm(30), cm(110), SawEnd::Arr, 0);
  add_fracture(add_test(pit, TestKind::RB), 0).step = std::uint8_t{4};
  pit.surface = std::make_unique<firnbook::SurfaceT>();
  pit.surface->penetration_ski_10um = 0;
  site(pit).slope_deg = std::uint8_t{0};
  const Read read(pit);
  EXPECT_EQ(concerns_of(read), Lines({"layer 0 -1 weaker 0 at 0, 0 to 30000: propagated, tap 12, 0 flags, "
                                      "ran_and_did_not, one_rider, 9 pieces"}));
  EXPECT_EQ(loads_of(read), Lines({"0 by 0 CT", "0 by 1 ECT", "0 by 2 ECT", "0 by 3 PST", "0 by 4 RB",
                                   "next for -1 at -1: look_for_signs", "next for -1 at -1: probe_more",
                                   "next for -1 at -1: read_bulletin"}));
  EXPECT_EQ(findings_of(read, {Method::rutschblock_swiss, Method::saw_test, Method::extended_column_several}),
            Lines({"ect_columns_differ fact pit @0: 1 1 0",
                   "pst_criterion_not_met not_met tests[3].fractures[0] @0: 30000 110000 3",
                   "pst_length_off_rule fact tests[3].fractures[0] @0: 110000 100000 0",
                   "rb_slope_gentle fact tests[4] @-1: 0 30 20",
                   "rb_class_two raises tests[4].fractures[0] @0: 4 0 0",
                   "rb_outside_depth fact tests[4].fractures[0] @0: 0 100000 0"}));
  EXPECT_EQ(only(cautions_of(read), "layer"), Lines{});
}

TEST(Places, WithoutAnyTolerance) {
  for (const std::int32_t tolerance : {0, -1, INT32_MIN}) {
    Parameters parameters;
    parameters.tolerance_10um = tolerance;
    PitT pit = upside_down();
    add_compression_test(pit, 12, FractureCharacter::SP, cm(60));
    add_compression_test(pit, 13, FractureCharacter::SP, cm(60) + 1);
    add_compression_test(pit, 14, FractureCharacter::SP, cm(70));
    add_compression_test(pit, 15, FractureCharacter::SP, cm(70) + 1);
    add_compression_test(pit, 16, FractureCharacter::SP, cm(70) + 1);
    EXPECT_EQ(
        ranks_of(Read(pit, parameters)),
        Lines({"60: boundary 2, sudden 12", "60: layer 2, sudden 13", "70: layer 1, sudden 14",
               "70: layer 1, sudden 15", "61: boundary 2, structure 99", "100: boundary 1, structure 99"}))
        << tolerance;
    EXPECT_EQ(only(loads_of(Read(pit, parameters)), "0 by"),
              Lines({"0 by 0 CT", "0 by 1 CT", "0 by 2 CT", "0 by 3 CT", "0 by 4 CT"}))
        << tolerance;
  }
}

TEST(Places, NearALayerAlone) {
  PitT pit;
  add_layer(pit, 0, cm(10), HandHardness::Pencil, GrainForm::RG, 30);
  add_layer(pit, cm(40), cm(60), HandHardness::Pencil, GrainForm::RG, 30);
  for (const std::int32_t depth :
       {cm(12), cm(12) + 1, cm(38) - 1, cm(38), cm(42), cm(42) + 1, cm(58) - 1, cm(58), cm(62), cm(62) + 1}) {
    add_compression_test(pit, 12, FractureCharacter::SP, depth);
  }
  EXPECT_EQ(concerns_of(Read(pit)), Lines({"layer 0 -1 weaker 0 at 0, 0 to 10000: sudden, tap 12, 0 flags, "
                                           "starts_run_not_tested, one_rider, 1 pieces",
                                           "depth_only -1 -1 weaker -1 at -1, 12001 to 12001: sudden, tap "
                                           "12, 0 flags, starts_run_not_tested, one_rider, 1 pieces",
                                           "depth_only -1 -1 weaker -1 at -1, 37999 to 37999: sudden, tap "
                                           "12, 0 flags, starts_run_not_tested, one_rider, 1 pieces",
                                           "layer 1 -1 weaker 1 at 1, 40000 to 60000: sudden, tap 12, 0 "
                                           "flags, starts_run_not_tested, one_rider, 4 pieces",
                                           "layer 1 -1 weaker 1 at 1, 42001 to 42001: sudden, tap 12, 0 "
                                           "flags, starts_run_not_tested, one_rider, 1 pieces",
                                           "layer 1 -1 weaker 1 at 1, 57999 to 57999: sudden, tap 12, 0 "
                                           "flags, starts_run_not_tested, one_rider, 1 pieces",
                                           "depth_only -1 -1 weaker -1 at -1, 62001 to 62001: sudden, tap "
                                           "12, 0 flags, starts_run_not_tested, one_rider, 1 pieces"}));
}

TEST(Places, UnknownZerosAreKeptApart) {
  PitT pit;
  *add_compression_test(pit, 12, FractureCharacter::SP, 0).depth = nowhere_from(cm(75));
  *add_compression_test(pit, 13, FractureCharacter::SP, 0).depth = up(cm(75));
  add_compression_test(pit, 14, FractureCharacter::SP, 0).depth.reset();
  add_compression_test(pit, 15, FractureCharacter::SP, 0).depth.reset();
  *add_compression_test(pit, 16, FractureCharacter::SP, 0).depth = slope_normal(cm(75));
  EXPECT_EQ(ranks_of(Read(pit)), Lines({"0: depth_only -1, sudden 12", "0: depth_only -1, sudden 13",
                                        "0: depth_only -1, sudden 14", "0: depth_only -1, sudden 16"}));
  EXPECT_EQ(loads_of(Read(pit)), Lines({"0 by 0 CT", "1 by 1 CT", "2 by 2 CT", "2 by 3 CT", "3 by 4 CT",
                                        "next for -1 at -1: look_for_signs", "next for -1 at -1: probe_more",
                                        "next for -1 at -1: read_bulletin"}));
}

// --- what loaded what

TEST(Loaded, AsDeepAsTheRecordTells) {
  const struct {
    const char* what;
    void (*add)(PitT&);
  } rows[] = {
      {"a column tapped to the end",
       [](PitT& p) { add_test(p, TestKind::ECT).outcome = TestOutcome::no_fracture; }},
      {"one cut to 60 cm",
       [](PitT& p) {
         add_test(p, TestKind::ECT).outcome = TestOutcome::no_fracture,
                     p.tests[0]->column_depth_10um = cm(60);
       }},
      {"one cut to 130 cm",
       [](PitT& p) {
         add_test(p, TestKind::CT).outcome = TestOutcome::no_fracture,
                     p.tests[0]->column_depth_10um = cm(130);
       }},
      {"one cut to nothing",
       [](PitT& p) {
         add_test(p, TestKind::CT).outcome = TestOutcome::no_fracture, p.tests[0]->column_depth_10um = 0;
       }},
      {"one cut by a hair",
       [](PitT& p) {
         add_test(p, TestKind::CT).outcome = TestOutcome::no_fracture, p.tests[0]->column_depth_10um = 1;
       }},
      {"broken above, 30 taps given",
       [](PitT& p) {
         add_compression_test(p, 12, FractureCharacter::RP, cm(20)),
             p.tests[0]->taps_given = std::uint8_t{30};
       }},
      {"broken above, 29 taps given",
       [](PitT& p) {
         add_compression_test(p, 12, FractureCharacter::RP, cm(20)),
             p.tests[0]->taps_given = std::uint8_t{29};
       }},
      {"an extended column broken above, 30 taps given",
       [](PitT& p) {
         add_extended_column(p, 12, Crossing::not_crossed, cm(20)), p.tests[0]->taps_given = std::uint8_t{30};
       }},
      {"crossed above", [](PitT& p) { add_extended_column(p, 12, Crossing::crossed, cm(20)); }},
      {"crossed above, and another that broke above",
       [](PitT& p) {
         add_extended_column(p, 12, Crossing::not_crossed, cm(20)),
             add_extended_column(p, 12, Crossing::crossed, cm(20));
       }},
      {"two that broke above: the first is named",
       [](PitT& p) {
         add_compression_test(p, 12, FractureCharacter::RP, cm(20)),
             add_compression_test(p, 12, FractureCharacter::RP, cm(30));
       }},
      {"one that was not valid after one that was",
       [](PitT& p) {
         add_compression_test(p, 12, FractureCharacter::RP, cm(20)),
             add_test(p, TestKind::CT).outcome = TestOutcome::not_valid;
       }},
      {"one that was valid after one that was not",
       [](PitT& p) {
         add_test(p, TestKind::CT).outcome = TestOutcome::not_valid,
                     add_compression_test(p, 12, FractureCharacter::RP, cm(20));
       }},
      {"a column to the end and one that broke above",
       [](PitT& p) {
         add_compression_test(p, 12, FractureCharacter::RP, cm(20)),
             add_test(p, TestKind::CT).outcome = TestOutcome::no_fracture,
                         p.tests[1]->column_depth_10um = cm(60);
       }},
      {"a saw elsewhere", [](PitT& p) { add_saw_test(p, cm(30), cm(100), SawEnd::Arr, cm(20)); }},
      {"a saw nobody knows where",
       [](PitT& p) { add_saw_test(p, cm(30), cm(100), SawEnd::Arr, 0).depth.reset(); }},
      {"a saw that was not valid",
       [](PitT& p) { add_test(p, TestKind::PST).outcome = TestOutcome::not_valid; }},
      {"named as unbroken in reach",
       [](PitT& p) {
         add_compression_test(p, 12, FractureCharacter::RP, cm(20)),
             p.tests[0]->unbroken.push_back(down(cm(88)));
       }},
      {"named as unbroken a hair above it",
       [](PitT& p) {
         add_compression_test(p, 12, FractureCharacter::RP, cm(20)),
             p.tests[0]->unbroken.push_back(down(cm(88) - 1));
       }},
  };
  Lines got;
  for (const auto& row : rows) {
    PitT pit = two_layers(cm(90), HandHardness::Pencil, GrainForm::RG, 50, HandHardness::FourFinger,
                          GrainForm::FC, 200);
    row.add(pit);
    const Read read(pit);
    const auto facets = std::find_if(read.analysis.concerns.begin(), read.analysis.concerns.end(),
                                     [](const auto& one) { return one.top == cm(90); });
    ASSERT_NE(facets, read.analysis.concerns.end());
    const std::string number = std::to_string(facets - read.analysis.concerns.begin());
    std::string line = row.what;
    for (const std::string& one : loads_of(read)) {
      if (one.rfind(number + " ", 0) == 0) line += "; " + one.substr(2);
      if (one.rfind("next for " + number, 0) == 0) line += "; " + one.substr(one.find(": ") + 2);
    }
    got.push_back(line);
  }
  EXPECT_EQ(got,
            Lines({"a column tapped to the end; by 0 ECT; not by CT -1, not_done, 90000; not by PST -1, "
                   "not_done, 90000; repeat_test",
                   "one cut to 60 cm; not by CT -1, not_done, 90000; not by ECT 0, beyond_useful_depth, "
                   "90000; not by PST -1, not_done, 90000; extended_column",
                   "one cut to 130 cm; by 0 CT; not by ECT -1, not_done, 90000; not by PST -1, not_done, "
                   "90000; extended_column",
                   "one cut to nothing; by 0 CT; not by ECT -1, not_done, 90000; not by PST -1, not_done, "
                   "90000; extended_column",
                   "one cut by a hair; not by CT 0, beyond_useful_depth, 90000; not by ECT -1, not_done, "
                   "90000; not by PST -1, not_done, 90000; extended_column",
                   "broken above, 30 taps given; by 0 CT; not by ECT -1, not_done, 90000; not by PST -1, "
                   "not_done, 90000; extended_column",
                   "broken above, 29 taps given; not by CT 0, unknown, 90000; not by ECT -1, not_done, "
                   "90000; not by PST -1, not_done, 90000; extended_column",
                   "an extended column broken above, 30 taps given; not by CT -1, not_done, 90000; not by "
                   "ECT 0, unknown, 90000; not by PST -1, not_done, 90000; extended_column",
                   "crossed above; not by CT -1, not_done, 90000; not by ECT 0, ended_above, 90000; not by "
                   "PST -1, not_done, 90000; extended_column",
                   "crossed above, and another that broke above; not by CT -1, not_done, 90000; not by ECT "
                   "1, ended_above, 90000; not by PST -1, not_done, 90000; extended_column",
                   "two that broke above: the first is named; not by CT 0, unknown, 90000; not by ECT -1, "
                   "not_done, 90000; not by PST -1, not_done, 90000; extended_column",
                   "one that was not valid after one that was; not by CT 0, unknown, 90000; not by ECT -1, "
                   "not_done, 90000; not by PST -1, not_done, 90000; extended_column",
                   "one that was valid after one that was not; not by CT 1, unknown, 90000; not by ECT -1, "
                   "not_done, 90000; not by PST -1, not_done, 90000; extended_column",
                   "a column to the end and one that broke above; not by CT 1, beyond_useful_depth, 90000; "
                   "not by ECT -1, not_done, 90000; not by PST -1, not_done, 90000; extended_column",
                   "a saw elsewhere; not by CT -1, not_done, 90000; not by ECT -1, not_done, 90000; not by "
                   "PST 0, other_layer, 90000; extended_column",
                   "a saw nobody knows where; not by CT -1, not_done, 90000; not by ECT -1, not_done, 90000; "
                   "not by PST 0, unknown, 90000; extended_column",
                   "a saw that was not valid; not by CT -1, not_done, 90000; not by ECT -1, not_done, 90000; "
                   "not by PST 0, not_valid, 90000; extended_column",
                   "named as unbroken in reach; by 0 CT; not by ECT -1, not_done, 90000; not by PST -1, "
                   "not_done, 90000; extended_column",
                   "named as unbroken a hair above it; not by CT 0, unknown, 90000; not by ECT -1, not_done, "
                   "90000; not by PST -1, not_done, 90000; extended_column"}));
}

TEST(Loaded, ReadsAsManyUnbrokenLayersAsAHandWrites) {
  for (const std::size_t count : {std::size_t{63}, std::size_t{64}}) {
    PitT pit = two_layers(cm(90), HandHardness::Pencil, GrainForm::RG, 50, HandHardness::FourFinger,
                          GrainForm::FC, 200);
    add_compression_test(pit, 12, FractureCharacter::BRK, cm(20));
    for (std::size_t i = 0; i < count; ++i) pit.tests[0]->unbroken.push_back(down(cm(30)));
    pit.tests[0]->unbroken.push_back(down(cm(90)));
    EXPECT_EQ(only(loads_of(Read(pit)), "0 by 0 CT").size(), count < 64 ? 1u : 0u);
  }
}

TEST(Methods, ThatSpokeAreNamed) {
  const auto named = [](const PitT& pit) {
    Lines out;
    for (const firnbook::MethodUsed& one : Read(pit).analysis.methods)
      out.push_back(std::string(firnbook::EnumNameMethod(one.method())) + " " +
                    firnbook::EnumNameVerified(one.verified()));
    return out;
  };
  EXPECT_EQ(named(PitT()), Lines({"field_signs read", "compression_test read_secondary",
                                  "extended_column_swiss read", "saw_test memory", "yellow_flags memory",
                                  "temperature_gradient read", "unclassed_tests practice"}));
  EXPECT_EQ(named(with_everything()), Lines({"field_signs read",
                                             "compression_test read_secondary",
                                             "extended_column_swiss read",
                                             "saw_test memory",
                                             "yellow_flags memory",
                                             "temperature_gradient read",
                                             "unclassed_tests practice",
                                             "shear_quality memory",
                                             "extended_column_schemes memory",
                                             "extended_column_early read",
                                             "extended_column_several read",
                                             "deep_tap_test read",
                                             "rutschblock_swiss read",
                                             "swiss_precedence read",
                                             "shear_tests practice",
                                             "threshold_sum memory",
                                             "lemons memory",
                                             "weak_layer_build read",
                                             "density_estimate memory",
                                             "water_equivalent practice",
                                             "slab_stress memory",
                                             "strength_estimate memory",
                                             "skier_stability memory"}));
}

// --- the very first of everything: position 0, depth 0, one test, one layer

struct Whole {
  const char* what;
  void (*record)(PitT&, Parameters&);
};

// Per record: each concern with its layer, top and rank, then loads, next steps and cautions of layers.
void expect(const std::vector<Whole>& rows, const Lines& wanted) {
  Lines got;
  for (const Whole& row : rows) {
    PitT pit;
    Parameters parameters;
    row.record(pit, parameters);
    const Read read(pit, parameters);
    ASSERT_TRUE(read.ok);
    std::string line = std::string(row.what) + ":";
    for (const interpretation::Concern& one : read.analysis.concerns) {
      line += std::string(" ") + firnbook::EnumNameConcernKind(one.kind) + numbers({one.layer, one.top}) +
              " " + firnbook::EnumNameConcernRank(one.rank) + numbers({one.ease}) + "," +
              numbers({static_cast<std::int32_t>(one.evidence_count)}) + " pieces;";
    }
    for (const std::string& one : loads_of(read)) {
      if (one.find("probe_more") == std::string::npos && one.find("read_bulletin") == std::string::npos &&
          one.find("look_for_signs") == std::string::npos) {
        line += " " + one + ";";
      }
    }
    for (const std::string& one : only(cautions_of(read), "layer")) line += " " + one + ";";
    got.push_back(line);
  }
  EXPECT_EQ(got, wanted);
}

TEST(First, OfWhatBreaks) {
  expect(
      {
          {"a block that broke while it was cut",
           [](PitT& p, Parameters&) {
             add_fracture(add_test(p, TestKind::RB), cm(40)).step = std::uint8_t{1};
           }},
          {"a deep tap that broke while isolating",
           [](PitT& p, Parameters&) {
             firnbook::FractureT& f = add_fracture(add_test(p, TestKind::DT), cm(40));
             f.stage = LoadStage::isolating;
           }},
          {"a column that broke while isolating",
           [](PitT& p, Parameters&) {
             firnbook::FractureT& f = add_fracture(add_test(p, TestKind::CT), cm(40));
             f.stage = LoadStage::isolating;
           }},
          {"at the surface, and another column deeper",
           [](PitT& p, Parameters&) {
             add_compression_test(p, 12, FractureCharacter::SP, 0),
                 add_compression_test(p, 13, FractureCharacter::SP, cm(50));
           }},
          {"a crossing at the surface ends the column",
           [](PitT& p, Parameters&) {
             add_extended_column(p, 12, Crossing::crossed, 0),
                 add_compression_test(p, 13, FractureCharacter::SP, cm(50));
           }},
          {"a crossing nobody knows where ends none that is known",
           [](PitT& p, Parameters&) {
             add_extended_column(p, 12, Crossing::crossed, 0).depth.reset(),
                 add_compression_test(p, 13, FractureCharacter::SP, cm(50));
           }},
          {"a saw at the surface is in another layer",
           [](PitT& p, Parameters&) {
             add_saw_test(p, cm(30), cm(100), SawEnd::Arr, 0),
                 add_compression_test(p, 13, FractureCharacter::SP, cm(50));
           }},
          {"what has a depth comes before what has none",
           [](PitT& p, Parameters&) {
             *add_compression_test(p, 12, FractureCharacter::SP, 0).depth = nowhere_from(cm(3)),
                                                                 add_compression_test(
                                                                     p, 12, FractureCharacter::SP, cm(40));
           }},
          {"no depth is not the depth 0 of an unknown zero",
           [](PitT& p, Parameters&) {
             add_compression_test(p, 12, FractureCharacter::SP, 0).depth.reset(),
                 *add_compression_test(p, 12, FractureCharacter::SP, 0).depth = nowhere_from(0);
           }},
          {"columns are useful to depths of their own",
           [](PitT& p, Parameters& q) {
             q.ct_useful_depth_10um = cm(40), add_test(p, TestKind::CT).outcome = TestOutcome::no_fracture,
             add_test(p, TestKind::ECT).outcome = TestOutcome::no_fracture,
             add_saw_test(p, cm(30), cm(100), SawEnd::Arr, cm(60));
           }},
          {"two columns need no third",
           [](PitT& p, Parameters&) {
             add_extended_column(p, 12, Crossing::not_crossed, cm(40)),
                 add_extended_column(p, 13, Crossing::not_crossed, cm(40));
           }},
          {"two places that one test reached each",
           [](PitT& p, Parameters&) {
             add_saw_test(p, cm(60), cm(100), SawEnd::Arr, cm(40)),
                 add_saw_test(p, cm(60), cm(100), SawEnd::Arr, cm(70));
           }},
      },
      Lines({"a block that broke while it was cut: depth_only -1 40000 broke 0, 1 pieces; 0 by 0 RB; 0 not "
             "by CT -1, not_done, 40000; 0 not by ECT -1, not_done, 40000; 0 not by PST -1, not_done, 40000; "
             "next for 0 at 40000: extended_column; layer_reached_by_one_test_only tests[0]: 40000 0;",
             "a deep tap that broke while isolating: depth_only -1 40000 broke 0, 1 pieces; 0 by 0 DT; 0 not "
             "by CT -1, not_done, 40000; 0 not by ECT -1, not_done, 40000; 0 not by PST -1, not_done, 40000; "
             "next for 0 at 40000: extended_column; layer_reached_by_one_test_only tests[0]: 40000 0;",
             "a column that broke while isolating: depth_only -1 40000 broke 0, 1 pieces; 0 by 0 CT; 0 not "
             "by ECT -1, not_done, 40000; 0 not by PST -1, not_done, 40000; next for 0 at 40000: "
             "extended_column; layer_reached_by_one_test_only tests[0]: 40000 0;",
             "at the surface, and another column deeper: depth_only -1 0 sudden 12, 1 pieces; depth_only -1 "
             "50000 sudden 13, 1 pieces; 0 by 0 CT; 0 by 1 CT; 1 by 1 CT; 0 not by ECT -1, not_done, 0; 0 "
             "not by PST -1, not_done, 0; 1 not by ECT -1, not_done, 50000; 1 not by PST -1, not_done, "
             "50000; next for 0 at 0: extended_column; next for 1 at 50000: extended_column; "
             "layer_reached_by_one_test_only tests[1]: 50000 1;",
             "a crossing at the surface ends the column: depth_only -1 0 propagated 12, 2 pieces; depth_only "
             "-1 50000 sudden 13, 1 pieces; 0 by 0 ECT; 0 by 1 CT; 1 by 1 CT; 0 not by PST -1, not_done, 0; "
             "1 not by ECT 0, ended_above, 50000; 1 not by PST -1, not_done, 50000; next for 1 at 50000: "
             "extended_column; layer_reached_by_one_test_only tests[1]: 50000 1;",
             "a crossing nobody knows where ends none that is known: depth_only -1 -1 propagated 12, 2 "
             "pieces; depth_only -1 50000 sudden 13, 1 pieces; 0 by 0 ECT; 1 by 1 CT; 1 not by ECT 0, "
             "unknown, 50000; 1 not by PST -1, not_done, 50000; next for 1 at 50000: extended_column; "
             "layer_reached_by_one_test_only tests[1]: 50000 1;",
             "a saw at the surface is in another layer: depth_only -1 50000 sudden 13, 1 pieces; depth_only "
             "-1 0 broke 99, 1 pieces; 0 by 1 CT; 1 by 0 PST; 1 by 1 CT; 0 not by ECT -1, not_done, 50000; 0 "
             "not by PST 0, other_layer, 50000; 1 not by ECT -1, not_done, 0; next for 0 at 50000: "
             "extended_column; layer_reached_by_one_test_only tests[1]: 50000 0;",
             "what has a depth comes before what has none: depth_only -1 40000 sudden 12, 1 pieces; "
             "depth_only -1 -1 sudden 12, 1 pieces; 0 by 1 CT; 1 by 0 CT; 0 not by ECT -1, not_done, 40000; "
             "0 not by PST -1, not_done, 40000; next for 0 at 40000: extended_column; "
             "layer_reached_by_one_test_only tests[1]: 40000 0;",
             "no depth is not the depth 0 of an unknown zero: depth_only -1 -1 sudden 12, 1 pieces; "
             "depth_only -1 -1 sudden 12, 1 pieces; 0 by 0 CT; 1 by 1 CT;",
             "columns are useful to depths of their own: depth_only -1 60000 broke 99, 1 pieces; 0 by 1 ECT; "
             "0 by 2 PST; 0 not by CT 0, beyond_useful_depth, 60000;",
             "two columns need no third: depth_only -1 40000 broke 12, 4 pieces; 0 by 0 ECT; 0 by 1 ECT; 0 "
             "not by CT -1, not_done, 40000; 0 not by PST -1, not_done, 40000;",
             "two places that one test reached each: depth_only -1 40000 broke 99, 1 pieces; depth_only -1 "
             "70000 broke 99, 1 pieces; 0 by 0 PST; 1 by 1 PST; 0 not by CT -1, not_done, 40000; 0 not by "
             "ECT -1, not_done, 40000; 1 not by CT -1, not_done, 70000; 1 not by ECT -1, not_done, 70000; "
             "next for 0 at 40000: repeat_test; next for 1 at 70000: repeat_test; "
             "layer_reached_by_one_test_only tests[0]: 40000 0;"}));
}

TEST(First, OfLayers) {
  expect(
      {
          {"a weak layer under a hair of snow",
           [](PitT& p, Parameters&) {
             add_layer(p, 0, 1, HandHardness::Fist, GrainForm::PP, 50),
                 add_layer(p, 1, cm(10), HandHardness::Fist, GrainForm::SH, 300);
           }},
          {"two weak layers and a test that reached none",
           [](PitT& p, Parameters&) {
             p = upside_down();
             add_compression_test(p, 12, FractureCharacter::BRK, cm(10));
           }},
          {"a thin weak layer below the first",
           [](PitT& p, Parameters&) {
             add_layer(p, 0, cm(40), HandHardness::Pencil, GrainForm::RG, 50),
                 add_layer(p, cm(40), cm(41), HandHardness::Fist, GrainForm::SH, 300),
                 add_layer(p, cm(41), cm(90), HandHardness::Pencil, GrainForm::RG, 50);
           }},
          {"the first layer marked at its bottom",
           [](PitT& p, Parameters&) {
             p = four_layers(), p.layers[0]->concern = firnbook::PartOfLayer::bottom;
           }},
          {"the first layer marked at its top",
           [](PitT& p, Parameters&) {
             p = four_layers(), p.layers[0]->concern = firnbook::PartOfLayer::top;
           }},
          {"the last layer marked at its bottom",
           [](PitT& p, Parameters&) {
             p = four_layers(), p.layers[3]->concern = firnbook::PartOfLayer::bottom;
           }},
          {"a break near the surface in a layer with a neighbour",
           [](PitT& p, Parameters&) {
             p = four_layers(), add_compression_test(p, 12, FractureCharacter::SP, cm(1));
           }},
          {"a break near the ground in a layer with a neighbour",
           [](PitT& p, Parameters&) {
             p = four_layers(), add_compression_test(p, 12, FractureCharacter::SP, cm(79));
           }},
          {"grains nobody looked at in the first layer",
           [](PitT& p, Parameters&) {
             add_layer(p, cm(20), cm(40)), add_extended_column(p, 12, Crossing::crossed, cm(30));
           }},
          {"grains nobody looked at at the first boundary",
           [](PitT& p, Parameters&) {
             add_layer(p, 0, cm(20)), add_layer(p, cm(20), cm(90), HandHardness::Pencil, GrainForm::RG),
                 p.layers[0]->hardness = HandHardness::Fist,
                 add_compression_test(p, 12, FractureCharacter::SP, cm(20));
           }},
          {"a gradient at the surface",
           [](PitT& p, Parameters&) {
             add_compression_test(p, 12, FractureCharacter::SP, 0), add_temperature(p, 0, -900),
                 add_temperature(p, cm(10), -100);
           }},
      },
      Lines({"a weak layer under a hair of snow: boundary 0 1 structure 99, 9 pieces; 0 not by CT -1, "
             "not_done, 1; 0 not by ECT -1, not_done, 1; 0 not by PST -1, not_done, 1; next for 0 at 1: "
             "extended_column;",
             "two weak layers and a test that reached none: layer 2 60000 structure 99, 11 pieces; boundary "
             "1 100000 structure 99, 10 pieces; layer 4 10000 little 12, 1 pieces; 2 by 0 CT; 0 not by CT 0, "
             "unknown, 60000; 0 not by ECT -1, not_done, 60000; 0 not by PST -1, not_done, 60000; 1 not by "
             "CT 0, unknown, 100000; 1 not by ECT -1, not_done, 100000; 1 not by PST -1, not_done, 100000; 2 "
             "not by ECT -1, not_done, 10000; 2 not by PST -1, not_done, 10000; next for 0 at 60000: "
             "extended_column; next for 1 at 100000: extended_column; layer_not_loaded pit: 60000 0;",
             "a thin weak layer below the first: layer 1 40000 structure 99, 11 pieces; 0 not by CT -1, "
             "not_done, 40000; 0 not by ECT -1, not_done, 40000; 0 not by PST -1, not_done, 40000; next for "
             "0 at 40000: extended_column;",
             "the first layer marked at its bottom: boundary 0 20000 structure 99, 8 pieces; 0 not by CT -1, "
             "not_done, 20000; 0 not by ECT -1, not_done, 20000; 0 not by PST -1, not_done, 20000; next for "
             "0 at 20000: extended_column;",
             "the first layer marked at its top: boundary 0 20000 structure 99, 8 pieces; 0 not by CT -1, "
             "not_done, 20000; 0 not by ECT -1, not_done, 20000; 0 not by PST -1, not_done, 20000; next for "
             "0 at 20000: extended_column;",
             "the last layer marked at its bottom: boundary 2 60000 structure 99, 8 pieces; 0 not by CT -1, "
             "not_done, 60000; 0 not by ECT -1, not_done, 60000; 0 not by PST -1, not_done, 60000; next for "
             "0 at 60000: extended_column;",
             "a break near the surface in a layer with a neighbour: layer 0 1000 sudden 12, 1 pieces; 0 by 0 "
             "CT; 0 not by ECT -1, not_done, 1000; 0 not by PST -1, not_done, 1000; next for 0 at 1000: "
             "extended_column; layer_reached_by_one_test_only tests[0]: 1000 0;",
             "a break near the ground in a layer with a neighbour: layer 3 79000 sudden 12, 1 pieces; 0 by 0 "
             "CT; 0 not by ECT -1, not_done, 79000; 0 not by PST -1, not_done, 79000; next for 0 at 79000: "
             "extended_column; layer_reached_by_one_test_only tests[0]: 79000 0;",
             "grains nobody looked at in the first layer: layer 0 30000 propagated 12, 2 pieces; 0 by 0 ECT; "
             "0 not by CT -1, not_done, 30000; 0 not by PST -1, not_done, 30000; next for 0 at 30000: "
             "look_at_crystals; layer_reached_by_one_test_only tests[0]: 30000 0;",
             "grains nobody looked at at the first boundary: boundary 0 20000 sudden 12, 10 pieces; 0 by 0 "
             "CT; 0 not by ECT -1, not_done, 20000; 0 not by PST -1, not_done, 20000; next for 0 at 20000: "
             "look_at_crystals; next for 0 at 20000: extended_column; layer_reached_by_one_test_only "
             "tests[0]: 20000 0;",
             "a gradient at the surface: depth_only -1 0 sudden 12, 2 pieces; 0 by 0 CT; 0 not by ECT -1, "
             "not_done, 0; 0 not by PST -1, not_done, 0; next for 0 at 0: extended_column; "
             "layer_reached_by_one_test_only tests[0]: 0 0;"}));
}

TEST(First, OfNames) {
  expect(
      {
          {"the first layer named, and a depth elsewhere",
           [](PitT& p, Parameters&) {
             p = four_layers();
             dated(name_of(*p.layers[0]), 0);
             dated(name_of(
                       name_layer(add_compression_test(p, 12, FractureCharacter::SP, cm(50)), GrainForm::MF)),
                   0);
           }},
          {"within reach of the place named, nearer to none",
           [](PitT& p, Parameters&) {
             add_layer(p, 0, cm(40), HandHardness::Pencil, GrainForm::RG, 50),
                 add_layer(p, cm(40), cm(44), HandHardness::Pencil, GrainForm::RG, 50),
                 add_layer(p, cm(44), cm(80), HandHardness::Pencil, GrainForm::RG, 50);
             dated(name_of(*p.layers[2]), 0);
             dated(name_of(
                       name_layer(add_compression_test(p, 12, FractureCharacter::SP, cm(42)), GrainForm::MF)),
                   0);
           }},
          {"a layer that is weaker than the one below, by its upper edge",
           [](PitT& p, Parameters&) {
             p = four_layers(), p.layers[1]->hardness = HandHardness::OneFinger,
             p.layers[3]->hardness = HandHardness::Knife;
             dated(name_of(*p.layers[2]), 0);
             dated(name_of(
                       name_layer(add_compression_test(p, 12, FractureCharacter::SP, cm(38)), GrainForm::MF)),
                   0);
           }},
          {"the same by name alone",
           [](PitT& p, Parameters&) {
             p = four_layers(), p.layers[1]->hardness = HandHardness::OneFinger,
             p.layers[3]->hardness = HandHardness::Knife;
             dated(name_of(*p.layers[2]), 0);
             firnbook::FractureT& f = add_compression_test(p, 12, FractureCharacter::SP, 0);
             f.depth.reset();
             dated(name_of(name_layer(f, GrainForm::MF)), 0);
           }},
          {"a layer softer than both its neighbours",
           [](PitT& p, Parameters&) {
             p = four_layers(), p.layers[1]->hardness = HandHardness::Fist;
             dated(name_of(*p.layers[1]), 0);
             firnbook::FractureT& f = add_compression_test(p, 12, FractureCharacter::SP, 0);
             f.depth.reset();
             dated(name_of(name_layer(f, GrainForm::MF)), 0);
           }},
          {"of one day, where no grains are named",
           [](PitT& p, Parameters&) {
             p = four_layers(), p.layers[2]->grain_form = flatbuffers::nullopt;
             dated(name_of(*p.layers[1]), 0), dated(name_of(*p.layers[2]), 0);
             firnbook::FractureT& f = add_compression_test(p, 12, FractureCharacter::SP, 0);
             f.depth.reset();
             firnbook::LayerT& on = name_layer(f, GrainForm::MF);
             on.grain_form = flatbuffers::nullopt;
             dated(name_of(on), 0);
           }},
          {"no grains named, and one layer without",
           [](PitT& p, Parameters&) {
             p = four_layers(), p.layers[2]->grain_form = flatbuffers::nullopt;
             firnbook::FractureT& f = add_compression_test(p, 12, FractureCharacter::SP, 0);
             f.depth.reset();
             name_layer(f, GrainForm::MF).grain_form = flatbuffers::nullopt;
           }},
          {"the sixteenth of one day",
           [](PitT& p, Parameters&) {
             for (int i = 0; i < 20; ++i) {
               dated(name_of(add_layer(p, cm(5 * i), cm(5 * i + 5), HandHardness::Pencil, GrainForm::RG, 50)),
                     0);
             }
             p.layers[15]->grain_form = GrainForm::MF;
             firnbook::FractureT& f = add_compression_test(p, 12, FractureCharacter::SP, 0);
             f.depth.reset();
             dated(name_of(name_layer(f, GrainForm::MF)), 0);
           }},
          {"the seventeenth is not looked at",
           [](PitT& p, Parameters&) {
             for (int i = 0; i < 20; ++i) {
               dated(name_of(add_layer(p, cm(5 * i), cm(5 * i + 5), HandHardness::Pencil, GrainForm::RG, 50)),
                     0);
             }
             p.layers[16]->grain_form = GrainForm::MF;
             firnbook::FractureT& f = add_compression_test(p, 12, FractureCharacter::SP, 0);
             f.depth.reset();
             dated(name_of(name_layer(f, GrainForm::MF)), 0);
           }},
          {"two boundaries, no grains named and none seen at the lower",
           [](PitT& p, Parameters&) {
             add_layer(p, 0, cm(40), HandHardness::Pencil, GrainForm::RG, 50),
                 add_layer(p, cm(40), cm(44), HandHardness::Pencil, GrainForm::RG, 50),
                 add_layer(p, cm(44), cm(80)), p.layers[2]->hardness = HandHardness::Pencil,
                                               add_compression_test(p, 12, FractureCharacter::SP, cm(42));
           }},
      },
      Lines({"the first layer named, and a depth elsewhere: boundary 0 20000 sudden 12, 8 pieces; layer 2 "
             "50000 sudden 12, 1 pieces; 0 by 0 CT; 1 by 0 CT; 0 not by ECT -1, not_done, 20000; 0 not by "
             "PST -1, not_done, 20000; 1 not by ECT -1, not_done, 50000; 1 not by PST -1, not_done, 50000; "
             "next for 0 at 20000: extended_column; next for 1 at 50000: extended_column; "
             "layer_reached_by_one_test_only tests[0]: 20000 0;",
             "within reach of the place named, nearer to none: boundary 1 44000 sudden 12, 8 pieces; 0 by 0 "
             "CT; 0 not by ECT -1, not_done, 44000; 0 not by PST -1, not_done, 44000; next for 0 at 44000: "
             "extended_column; layer_reached_by_one_test_only tests[0]: 44000 0;",
             "a layer that is weaker than the one below, by its upper edge: boundary 1 40000 sudden 12, 9 "
             "pieces; 0 by 0 CT; 0 not by ECT -1, not_done, 40000; 0 not by PST -1, not_done, 40000; next "
             "for 0 at 40000: extended_column; layer_reached_by_one_test_only tests[0]: 40000 0;",
             "the same by name alone: boundary 2 60000 sudden 12, 9 pieces; 0 by 0 CT; 0 not by ECT -1, "
             "not_done, 60000; 0 not by PST -1, not_done, 60000; next for 0 at 60000: extended_column; "
             "layer_reached_by_one_test_only tests[0]: 60000 0;",
             "a layer softer than both its neighbours: boundary 0 20000 sudden 12, 10 pieces; 0 by 0 CT; 0 "
             "not by ECT -1, not_done, 20000; 0 not by PST -1, not_done, 20000; next for 0 at 20000: "
             "extended_column; layer_reached_by_one_test_only tests[0]: 20000 0;",
             "of one day, where no grains are named: boundary 0 20000 sudden 12, 8 pieces; 0 by 0 CT; 0 not "
             "by ECT -1, not_done, 20000; 0 not by PST -1, not_done, 20000; next for 0 at 20000: "
             "extended_column; layer_reached_by_one_test_only tests[0]: 20000 0;",
             "no grains named, and one layer without: depth_only -1 -1 sudden 12, 1 pieces; 0 by 0 CT;",
             "the sixteenth of one day: boundary 14 75000 sudden 12, 8 pieces; 0 by 0 CT; 0 not by ECT -1, "
             "not_done, 75000; 0 not by PST -1, not_done, 75000; next for 0 at 75000: extended_column; "
             "layer_reached_by_one_test_only tests[0]: 75000 0;",
             "the seventeenth is not looked at: boundary 0 5000 sudden 12, 8 pieces; 0 by 0 CT; 0 not by ECT "
             "-1, not_done, 5000; 0 not by PST -1, not_done, 5000; next for 0 at 5000: extended_column; "
             "layer_reached_by_one_test_only tests[0]: 5000 0;",
             "two boundaries, no grains named and none seen at the lower: boundary 0 40000 sudden 12, 8 "
             "pieces; 0 by 0 CT; 0 not by ECT -1, not_done, 40000; 0 not by PST -1, not_done, 40000; next "
             "for 0 at 40000: extended_column; layer_reached_by_one_test_only tests[0]: 40000 0;"}));
}

TEST(Evidence, OfOneFractureStaysTogether) {
  PitT pit;
  add_extended_column(pit, 12, Crossing::crossed, cm(60));
  add_extended_column(pit, 12, Crossing::crossed, cm(60));
  EXPECT_EQ(evidence_of(Read(pit), 0),
            Lines({"ect_crossed_before_22 tests[0].fractures[0]", "ect_schemes tests[0].fractures[0]",
                   "ect_crossed_before_22 tests[1].fractures[0]", "ect_schemes tests[1].fractures[0]"}));
}

TEST(Suggestions, DoNotAskForSignsThatWereAnsweredFor) {
  PitT pit;
  for (const firnbook::SignKind kind :
       {firnbook::SignKind::whumpf, firnbook::SignKind::cracking, firnbook::SignKind::slides}) {
    EXPECT_EQ(only(loads_of(Read(pit)), "next for -1 at -1: look").size(), 1u);
    add_sign(pit, kind, Answer::no);
  }
  EXPECT_EQ(only(loads_of(Read(pit)), "next for -1 at -1: look").size(), 0u);
}

// Each value by itself: the caution names it and no other.
TEST(Cautions, NameTheDoubtfulValueAndNoOther) {
  using firnbook::Layer;
  Lines got;
  for (std::size_t i = 0; i < 5; ++i) {
    for (const int field : {Layer::VT_TOP, Layer::VT_BOTTOM, Layer::VT_HARDNESS, Layer::VT_GRAIN_FORM,
                            Layer::VT_GRAIN_SIZE_10UM}) {
      PitT pit = upside_down();
      doubt(*pit.layers[i], field);
      std::string line =
          path_of(place_of(firnbook::Thing::layer, static_cast<std::int32_t>(i), field_id(field))) + ":";
      for (const std::string& one : only(cautions_of(Read(pit)), "rests")) line += " " + one;
      got.push_back(line);
    }
  }
  EXPECT_EQ(got, Lines({"layers[0].top_cm:",
                        "layers[0].bottom_cm:",
                        "layers[0].hardness: rests_on_unreliable layers[0].hardness: 0 0",
                        "layers[0].grain_form:",
                        "layers[0].grain_size_mm: rests_on_unreliable layers[0].grain_size_mm: 0 0",
                        "layers[1].top_cm: rests_on_unreliable layers[1].top_cm: 0 0",
                        "layers[1].bottom_cm:",
                        "layers[1].hardness: rests_on_unreliable layers[1].hardness: 0 0",
                        "layers[1].grain_form: rests_on_unreliable layers[1].grain_form: 0 0",
                        "layers[1].grain_size_mm: rests_on_unreliable layers[1].grain_size_mm: 0 0",
                        "layers[2].top_cm: rests_on_unreliable layers[2].top_cm: 0 0",
                        "layers[2].bottom_cm: rests_on_unreliable layers[2].bottom_cm: 0 0",
                        "layers[2].hardness: rests_on_unreliable layers[2].hardness: 0 0",
                        "layers[2].grain_form: rests_on_unreliable layers[2].grain_form: 0 0",
                        "layers[2].grain_size_mm: rests_on_unreliable layers[2].grain_size_mm: 0 0",
                        "layers[3].top_cm: rests_on_unreliable layers[3].top_cm: 0 0",
                        "layers[3].bottom_cm: rests_on_unreliable layers[3].bottom_cm: 0 0",
                        "layers[3].hardness: rests_on_unreliable layers[3].hardness: 0 0",
                        "layers[3].grain_form:",
                        "layers[3].grain_size_mm: rests_on_unreliable layers[3].grain_size_mm: 0 0",
                        "layers[4].top_cm:",
                        "layers[4].bottom_cm: rests_on_unreliable layers[4].bottom_cm: 0 0",
                        "layers[4].hardness: rests_on_unreliable layers[4].hardness: 0 0",
                        "layers[4].grain_form:",
                        "layers[4].grain_size_mm:"}));
}

TEST(Cautions, CountFlagsFromTheFirst) {
  PitT pit;
  add_layer(pit, 0, cm(20), HandHardness::Fist, GrainForm::RG, 50);
  add_layer(pit, cm(20), cm(60), HandHardness::Pencil, GrainForm::RG, 150);
  add_layer(pit, cm(60), cm(100), HandHardness::FourFinger, GrainForm::FC, 150);
  doubt(*pit.layers[2], firnbook::Layer::VT_GRAIN_SIZE_10UM);
  EXPECT_EQ(only(cautions_of(Read(pit)), "rests"),
            (Lines{"rests_on_unreliable layers[2].grain_size_mm: 0 0"}));
}

TEST(First, AndLastOfTwoLayers) {
  PitT pit;
  add_layer(pit, 0, cm(40), HandHardness::Pencil, GrainForm::RG, 50);
  add_layer(pit, cm(40), cm(80), HandHardness::Pencil, GrainForm::RG, 50);
  add_compression_test(pit, 12, FractureCharacter::SP, cm(79));
  EXPECT_EQ(ranks_of(Read(pit)), (Lines{"79: layer 1, sudden 12"}));
  pit.layers[1]->grain_form = GrainForm::IFil;
  pit.tests[0]->fractures[0]->depth.reset();
  name_layer(*pit.tests[0]->fractures[0], GrainForm::IF);
  EXPECT_EQ(ranks_of(Read(pit)), (Lines{"40: boundary 1, sudden 12"}));
}

// What lies above the surface is a slip, and has no depth.
TEST(First, AboveTheSurface) {
  PitT pit = upside_down();
  add_saw_test(pit, cm(60), cm(100), SawEnd::Arr, -1);
  EXPECT_EQ(only(loads_of(Read(pit)), "1 not by PST"), (Lines{"1 not by PST 0, unknown, 60000"}));
}

// --- the report holds what the analysis says, also where that is 0

TEST(InReport, StandsWhatTheAnalysisSays) {
  PitT pit;
  add_layer(pit, 0, cm(30), HandHardness::Pencil, GrainForm::RG, 30);
  add_layer(pit, cm(30), cm(60), HandHardness::Fist, GrainForm::FC, 200);
  add_compression_test(pit, 12, FractureCharacter::SP, cm(30));
  add_compression_test(pit, 13, FractureCharacter::SP, 0);
  Parameters parameters;
  parameters.tolerance_10um = cm(1);
  parameters.shallow_snow_10um = cm(90);
  Read read(pit, parameters);
  flatbuffers::FlatBufferBuilder builder;
  interpretation::write_report(read.analysis, parameters, 7, builder);
  const auto* report = flatbuffers::GetRoot<firnbook::Report>(builder.GetBufferPointer());
  const auto* concerns = report->concerns();
  ASSERT_EQ(pit::size_of(concerns), read.analysis.concerns.size());
  for (std::uint32_t i = 0; i < concerns->size(); ++i) {
    const interpretation::Concern& one = read.analysis.concerns[i];
    const firnbook::Concern* written = concerns->Get(i);
    EXPECT_EQ(written->layer().value_or(-1), one.layer);
    EXPECT_EQ(written->layer_below().value_or(-1), one.layer_below);
    EXPECT_EQ(written->weaker_layer().value_or(-1), one.weaker_layer);
    EXPECT_EQ(written->top_10um().value_or(-1), one.top);
    EXPECT_EQ(written->bottom_10um().value_or(-1), one.bottom);
    ASSERT_EQ(pit::size_of(written->evidence()), one.evidence_count);
    for (std::uint32_t k = 0; k < one.evidence_count; ++k) {
      EXPECT_EQ(written->evidence()->Get(k), read.analysis.evidence[one.first_evidence + k]);
    }
  }
  EXPECT_EQ(concerns->Get(1)->layer(), 0);
  EXPECT_EQ(concerns->Get(1)->top_10um(), 0);
  ASSERT_EQ(pit::size_of(report->parameters_changed()), 2u);
  EXPECT_EQ(report->parameters_changed()->Get(0)->key(), firnbook::ParameterKey::tolerance_10um);
  EXPECT_EQ(report->parameters_changed()->Get(1)->key(), firnbook::ParameterKey::shallow_snow_10um);
}

}  // namespace
}  // namespace firn::tests
