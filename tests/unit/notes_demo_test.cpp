// The two demo notes: every value that they hold, and what a slip of one letter does to them.
#include <gtest/gtest.h>

#include <set>
#include <string>
#include <vector>

#include "notes_help.h"
#include "support/text.h"

namespace firn::tests {
namespace {

using namespace firnbook;  // NOLINT: a test of nothing but the schema's names

void expect_depth(const std::unique_ptr<Depth>& depth, std::int32_t value_10um) {
  ASSERT_NE(depth, nullptr);
  EXPECT_EQ(depth->value_10um(), value_10um);
  EXPECT_EQ(depth->datum(), Datum::surface);
  EXPECT_EQ(depth->direction(), Direction::vertical);
}

void expect_span(const LayerT& layer, std::int32_t top_cm, std::int32_t bottom_cm) {
  expect_depth(layer.top, top_cm * 1000);
  expect_depth(layer.bottom, bottom_cm * 1000);
}

void expect_moment(const Moment& moment, CalendarTime time, int offset_min) {
  EXPECT_EQ(moment.local_s(), seconds_of(time));
  EXPECT_EQ(moment.offset_min(), offset_min);
  EXPECT_EQ(moment.offset_known(), 1);
  EXPECT_EQ(moment.precision(), TimePrecision::minute);
}

TEST(DemoNotes, LarchBowlEntryHeadAndSite) {
  const NotesRead notes = read_well(file_text("larch-bowl-entry.txt"));
  EXPECT_TRUE(notes.remarks.empty());
  const PitT& pit = *notes.pit;
  EXPECT_EQ(pit.title, "Larch Bowl entry, Larchwater Range");
  ASSERT_NE(pit.time, nullptr);
  expect_moment(pit.time->begin(), {2026, 11, 28, 10, 5, 0}, -420);
  EXPECT_EQ(pit.time->end().precision(), TimePrecision::none);
  ASSERT_EQ(pit.observers.size(), 1u);
  EXPECT_EQ(pit.observers[0]->name, "KL");
  EXPECT_FALSE(pit.observers[0]->training);
  ASSERT_NE(pit.site, nullptr);
  EXPECT_EQ(pit.site->elevation_10um, 208000000);
  EXPECT_EQ(pit.site->aspect_point, CompassPoint::NE);
  EXPECT_EQ(pit.site->slope_deg, 24);
  EXPECT_FALSE(pit.site->aspect_deg);
  EXPECT_EQ(pit.site->probes_10um, (std::vector<std::int32_t>{38000, 45000, 61000, 47000}));
  ASSERT_NE(pit.choice, nullptr);
  EXPECT_EQ(pit.choice->words, "same aspect and elevation as Larch Bowl; gentler and short");
  EXPECT_EQ(pit.choice->terrain_of_interest, "Larch Bowl");
  EXPECT_EQ(pit.choice->aspect, Comparison::same);
  EXPECT_EQ(pit.choice->elevation, Comparison::same);
  EXPECT_EQ(pit.choice->incline, Comparison::less);
  EXPECT_FALSE(pit.choice->wind_loading);
  ASSERT_NE(pit.snowpack, nullptr);
  EXPECT_EQ(pit.snowpack->hs_10um, 46000);
  EXPECT_FALSE(pit.snowpack->direction);
}

TEST(DemoNotes, LarchBowlEntrySnow) {
  const NotesRead notes = read_well(file_text("larch-bowl-entry.txt"));
  const PitT& pit = *notes.pit;
  ASSERT_EQ(pit.layers.size(), 3u);
  const LayerT& upper = *pit.layers[0];
  expect_span(upper, 0, 5);
  EXPECT_EQ(upper.hardness, HandHardness::Fist);
  EXPECT_EQ(upper.words, "new snow");
  EXPECT_FALSE(upper.grain_form);
  EXPECT_EQ(upper.candidates, (std::vector<GrainForm>{GrainForm::PP, GrainForm::DF}));
  const LayerT& slab = *pit.layers[1];
  expect_span(slab, 5, 17);
  EXPECT_EQ(slab.hardness, HandHardness::FourFinger);
  EXPECT_EQ(slab.grain_form, GrainForm::RG);
  EXPECT_EQ(slab.words, "wind slab");
  EXPECT_TRUE(slab.candidates.empty());
  const LayerT& base = *pit.layers[2];
  expect_span(base, 17, 46);
  EXPECT_EQ(base.hardness, HandHardness::Fist);
  EXPECT_EQ(base.grain_form, GrainForm::DH);
  EXPECT_EQ(base.grain_size_10um, 300);
  EXPECT_FALSE(base.grain_size_max_10um);
  EXPECT_EQ(base.words, "sugary, to the ground");
  ASSERT_EQ(pit.tests.size(), 2u);
  const int taps[] = {11, 13};
  for (std::size_t i = 0; i < 2; ++i) {
    EXPECT_EQ(pit.tests[i]->kind, TestKind::CT);
    ASSERT_EQ(pit.tests[i]->fractures.size(), 1u);
    const FractureT& fracture = *pit.tests[i]->fractures[0];
    EXPECT_EQ(fracture.tap, taps[i]);
    EXPECT_EQ(fracture.character, FractureCharacter::SC);
    expect_depth(fracture.depth, 17000);
  }
}

TEST(DemoNotes, LarchBowlEntrySignsAndEnd) {
  const NotesRead notes = read_well(file_text("larch-bowl-entry.txt"));
  const PitT& pit = *notes.pit;
  ASSERT_EQ(pit.signs.size(), 3u);
  EXPECT_EQ(pit.signs[0]->kind, SignKind::whumpf);
  EXPECT_EQ(pit.signs[0]->answer, Answer::yes);
  EXPECT_EQ(pit.signs[1]->kind, SignKind::cracking);
  EXPECT_EQ(pit.signs[1]->answer, Answer::not_looked_for);
  EXPECT_EQ(pit.signs[2]->kind, SignKind::slides);
  EXPECT_EQ(pit.signs[2]->answer, Answer::no);
  ASSERT_NE(pit.bulletin, nullptr);
  EXPECT_EQ(pit.bulletin->state, BulletinState::none_issued);
  ASSERT_NE(pit.assessment, nullptr);
  EXPECT_EQ(pit.assessment->words, "thin slab on basal facets, staying on low-angle ground");
  EXPECT_EQ(pit.assessment->confidence, Confidence::fair);
  EXPECT_EQ(pit.backfilled, true);
}

TEST(DemoNotes, TarnShoulderHeadAndWeather) {
  const NotesRead notes = read_well(file_text("tarn-shoulder.txt"));
  EXPECT_TRUE(notes.remarks.empty());
  const PitT& pit = *notes.pit;
  EXPECT_EQ(pit.title, "Tarn Shoulder, Larchwater Range");
  expect_moment(pit.time->begin(), {2027, 1, 16, 11, 20, 0}, -420);
  ASSERT_EQ(pit.observers.size(), 2u);
  EXPECT_EQ(pit.observers[0]->name, "KL");
  EXPECT_EQ(pit.observers[1]->name, "MT");
  EXPECT_EQ(pit.site->elevation_10um, 221500000);
  EXPECT_EQ(pit.site->slope_deg, 31);
  EXPECT_EQ(pit.site->probes_10um, (std::vector<std::int32_t>{139000, 142000, 137000, 141000}));
  EXPECT_EQ(pit.choice->aspect, Comparison::same);
  EXPECT_EQ(pit.choice->elevation, Comparison::same);
  EXPECT_EQ(pit.choice->wind_loading, Comparison::same);
  EXPECT_FALSE(pit.choice->incline);
  EXPECT_EQ(pit.choice->terrain_of_interest, "Larch Bowl");
  ASSERT_NE(pit.weather, nullptr);
  EXPECT_EQ(pit.weather->sky, SkyCondition::BKN);
  EXPECT_FALSE(pit.weather->sky_family);
  EXPECT_EQ(pit.weather->precipitation, Precipitation::light_SN);
  EXPECT_EQ(pit.weather->wind, WindClass::M);
  EXPECT_EQ(pit.weather->wind_from_point, CompassPoint::SW);
  EXPECT_EQ(pit.weather->air_temperature_cdegc, -750);
  ASSERT_NE(pit.surface, nullptr);
  EXPECT_EQ(pit.surface->penetration_foot_10um, 35000);
  EXPECT_EQ(pit.surface->penetration_ski_10um, 15000);
  EXPECT_EQ(pit.snowpack->hs_10um, 140000);
}

TEST(DemoNotes, TarnShoulderLayers) {
  const NotesRead notes = read_well(file_text("tarn-shoulder.txt"));
  struct Expected {
    int top, bottom;
    HandHardness hardness;
    GrainForm form;
    int second, size, size_max;
  };
  const Expected expected[] = {{0, 16, HandHardness::Fist, GrainForm::PPsd, 0, 200, 0},
                               {16, 31, HandHardness::FourFinger, GrainForm::DF, 40, 100, 0},
                               {31, 68, HandHardness::OneFingerMinus, GrainForm::RGwp, 0, 30, 0},
                               {68, 69, HandHardness::Fist, GrainForm::SH, 0, 600, 0},
                               {69, 104, HandHardness::Pencil, GrainForm::RGlr, 0, 80, 0},
                               {104, 107, HandHardness::Knife, GrainForm::MFcr, 0, 0, 0},
                               {107, 140, HandHardness::FourFingerMinus, GrainForm::FC, 60, 200, 300}};
  ASSERT_EQ(notes.pit->layers.size(), std::size(expected));
  for (std::size_t i = 0; i < std::size(expected); ++i) {
    const LayerT& layer = *notes.pit->layers[i];
    expect_span(layer, expected[i].top, expected[i].bottom);
    EXPECT_EQ(layer.hardness, expected[i].hardness) << i;
    EXPECT_EQ(layer.grain_form, expected[i].form) << i;
    EXPECT_EQ(layer.grain_form_second ? static_cast<int>(*layer.grain_form_second) : 0, expected[i].second)
        << i;
    EXPECT_EQ(layer.grain_size_10um ? *layer.grain_size_10um : 0, expected[i].size) << i;
    EXPECT_EQ(layer.grain_size_max_10um ? *layer.grain_size_max_10um : 0, expected[i].size_max) << i;
    EXPECT_TRUE(layer.candidates.empty());
    EXPECT_EQ(layer.name != nullptr, i == 3);
  }
  const LayerNameT& name = *notes.pit->layers[3]->name;
  EXPECT_EQ(name.kind, LayerNameKind::buried);
  EXPECT_EQ(name.date->local_s(), seconds_of({2027, 1, 2, 0, 0, 0}));
  EXPECT_EQ(name.date->precision(), TimePrecision::day);
}

TEST(DemoNotes, TarnShoulderMeasurements) {
  const NotesRead notes = read_well(file_text("tarn-shoulder.txt"));
  const PitT& pit = *notes.pit;
  const int temperatures[][2] = {{0, -900}, {10, -860}, {30, -700}, {68, -480}, {100, -290}, {140, -40}};
  ASSERT_EQ(pit.temperatures.size(), std::size(temperatures));
  for (std::size_t i = 0; i < std::size(temperatures); ++i) {
    expect_depth(pit.temperatures[i]->depth, temperatures[i][0] * 1000);
    EXPECT_EQ(pit.temperatures[i]->temperature_cdegc, temperatures[i][1]);
  }
  ASSERT_EQ(pit.densities.size(), 1u);
  ASSERT_EQ(pit.densities[0]->readings.size(), 2u);
  expect_depth(pit.densities[0]->readings[0]->top, 31000);
  expect_depth(pit.densities[0]->readings[0]->bottom, 68000);
  EXPECT_EQ(pit.densities[0]->readings[0]->density_dkgm3, 2380);
  expect_depth(pit.densities[0]->readings[1]->top, 69000);
  expect_depth(pit.densities[0]->readings[1]->bottom, 104000);
  EXPECT_EQ(pit.densities[0]->readings[1]->density_dkgm3, 3100);
}

TEST(DemoNotes, TarnShoulderTestsAndEnd) {
  const NotesRead notes = read_well(file_text("tarn-shoulder.txt"));
  const PitT& pit = *notes.pit;
  ASSERT_EQ(pit.tests.size(), 5u);
  const int depths_cm[] = {16, 68, 107, 68, 68};
  const TestKind kinds[] = {TestKind::CT, TestKind::CT, TestKind::CT, TestKind::ECT, TestKind::PST};
  for (std::size_t i = 0; i < 5; ++i) {
    EXPECT_EQ(pit.tests[i]->kind, kinds[i]);
    ASSERT_EQ(pit.tests[i]->fractures.size(), 1u);
    expect_depth(pit.tests[i]->fractures[0]->depth, depths_cm[i] * 1000);
  }
  EXPECT_EQ(pit.tests[0]->fractures[0]->character, FractureCharacter::BRK);
  EXPECT_EQ(pit.tests[1]->fractures[0]->tap, 12);
  EXPECT_EQ(pit.tests[1]->fractures[0]->on->grain_form, GrainForm::SH);
  EXPECT_EQ(pit.tests[2]->fractures[0]->tap, 27);
  EXPECT_EQ(pit.tests[3]->fractures[0]->crossing, Crossing::crossed);
  EXPECT_EQ(pit.tests[4]->fractures[0]->cut_10um, 32000);
  EXPECT_EQ(pit.tests[4]->column_length_10um, 100000);
  EXPECT_EQ(pit.tests[4]->fractures[0]->saw_end, SawEnd::End);
  ASSERT_EQ(pit.signs.size(), 3u);
  EXPECT_EQ(pit.signs[0]->answer, Answer::no);
  EXPECT_EQ(pit.signs[1]->answer, Answer::yes);
  EXPECT_EQ(pit.signs[2]->answer, Answer::not_looked_for);
  ASSERT_EQ(pit.remarks.size(), 1u);
  EXPECT_EQ(pit.remarks[0]->text, "wind slab thickens toward the ridge");
  EXPECT_EQ(pit.backfilled, true);
}

TEST(DemoNotes, PrintedNotesReadBackToTheSameBytes) {
  for (const char* name : kDemoNotes) {
    const std::string printed = canonical(file_text(name));
    EXPECT_EQ(canonical(printed), printed) << name;
  }
}

// --- one letter lost -------------------------------------------------------------------------------------

// Number of the line that holds a byte, and whether the line is a comment.
struct LineAt {
  std::uint32_t number = 1;
  bool comment = false;
};
LineAt line_at(const std::string& notes, std::size_t position) {
  LineAt at;
  std::size_t start = 0;
  for (std::size_t i = 0; i < position; ++i) {
    if (notes[i] != '\n') continue;
    ++at.number;
    start = i + 1;
  }
  at.comment = notes[start] == '#';
  return at;
}

// Every letter of both notes is left out once. What then stands there is refused with a place on that line,
// or means something else; no line ever disappears without a word. Blanks and comments carry no observation.
TEST(DemoNotes, EveryLostLetterIsRefusedOrMakesAnotherPit) {
  for (const char* name : kDemoNotes) {
    const std::string notes = file_text(name);
    const Bytes whole = bytes_of(notes);
    std::size_t refused = 0;
    for (std::size_t i = 0; i < notes.size(); ++i) {
      const LineAt at = line_at(notes, i);
      if (at.comment && notes[i] != '#') continue;
      std::string lost = notes;
      lost.erase(i, 1);
      std::vector<Failure> others;
      auto read = notation::read_notes(lost, {}, others);
      const std::string where = std::string(name) + " line " + std::to_string(at.number) + " without byte " +
                                std::to_string(i) + " '" + notes[i] + "'";
      if (!read) {
        ++refused;
        EXPECT_EQ(read.failure().line, at.number) << where << ": " << shown(read.failure());
        EXPECT_GT(read.failure().column, 0u) << where;
        EXPECT_FALSE(read.failure().what.empty()) << where;
        continue;
      }
      const Bytes other = recording::to_bytes(*(*read).pit);
      if (notes[i] == ' ' || (notes[i] == '\n' && i + 1 == notes.size())) continue;
      EXPECT_NE(other, whole) << where << " means the same";
    }
    EXPECT_GT(refused, notes.size() / 4) << name;
  }
}

TEST(DemoNotes, ATypoOnLineSevenNamesLineSevenAndTheRemedy) {
  std::string notes = file_text("larch-bowl-entry.txt");
  notes.replace(notes.find("probe "), 6, "prove ");
  const Failure failure = refusal(notes);
  EXPECT_EQ(failure.status, FIRN_NOTES_NOT_UNDERSTOOD);
  EXPECT_EQ(failure.line, 7u);
  EXPECT_EQ(failure.column, 1u);
  EXPECT_NE(failure.what.find("prove"), std::string::npos);
  EXPECT_NE(failure.remedy.find("\"probe\""), std::string::npos);
}

}  // namespace
}  // namespace firn::tests
