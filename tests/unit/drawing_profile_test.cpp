#include <gtest/gtest.h>

#include <chrono>
#include <clocale>
#include <locale>

#include "drawing_help.h"
#include "support/text.h"

namespace firn::tests {
namespace {

using firnbook::GrainForm;
using firnbook::HandHardness;

TEST(Profile, TarnShoulderShowsWhatAPractitionerLooksFor) {
  const std::string svg = draw(*tarn_shoulder(), 720, tarn_shoulder_report());
  for (const char* text : {"Tarn Shoulder, Larchwater Range",
                           "2027-01-16 11:20 (UTC\xE2\x88\x92"
                           "07:00)",
                           "observers KL, MT",
                           "2215 m",
                           "slope 31\xC2\xB0",
                           "HS 140 cm",
                           "PF 35 cm",
                           "PS 15 cm",
                           "sky BKN",
                           "precip -SN",
                           "wind M from SW",
                           "air \xE2\x88\x92"
                           "7.5 \xC2\xB0"
                           "C",
                           "CT6 (BRK)",
                           "CT12 (SP)",
                           "ECTP13",
                           "PST 32/100 (End)",
                           "CT27 (RP)",
                           "270102 buried",
                           "PPsd",
                           "RGwp",
                           "MFcr",
                           "6 mm",
                           "2\xE2\x80\x93"
                           "3 mm",
                           "238 kg/m\xC2\xB3",
                           "310 kg/m\xC2\xB3",
                           "concern 1",
                           "concern 2",
                           "says little either way",
                           "cracking: yes",
                           "whumpf: no",
                           "slides: not looked for",
                           "height",
                           "snow temperature",
                           "hand hardness",
                           "equal steps by index",
                           "One pit is one point.",
                           "The bulletin, local rules and trained people stand above it."}) {
    EXPECT_TRUE(has(svg, text)) << text;
  }
  EXPECT_LT(svg.find("cracking: yes"), svg.find("CT6 (BRK)")) << "signs of instability come before any test";
  EXPECT_LT(svg.find("cracking: yes"), svg.find("slides: not looked for"));
}

TEST(Profile, LarchBowlKeepsTheObserversWordsBesideTheLayer) {
  const std::string svg =
      draw(*larch_bowl_entry(), 720,
           report_of({{firnbook::ConcernKind::boundary, 1, cm(17), cm(17), firnbook::ConcernRank::sudden}}));
  EXPECT_TRUE(has(svg, "sugary, to the ground"));
  EXPECT_TRUE(has(svg, "wind slab"));
  EXPECT_TRUE(has(svg, "form ?"));
  EXPECT_TRUE(has(svg, "probed 38, 45, 61, 47 cm"));
  EXPECT_TRUE(has(svg, "CT11 (SC)"));
  EXPECT_TRUE(has(svg, "whumpf: yes"));
  EXPECT_FALSE(has(svg, "temperature")) << "no axis without readings";
}

TEST(Profile, NoWordOfReassurance) {
  for (const std::string& svg :
       {draw(*tarn_shoulder(), 720, tarn_shoulder_report()), draw(*larch_bowl_entry()), draw({})}) {
    for (const char* word : {"safe", "stable", "good", "unlikely", "OK", "green"}) {
      EXPECT_FALSE(has(svg, word)) << word;
    }
  }
}

// Greys and one accent: printed on a black-and-white printer nothing is lost.
TEST(Profile, NothingNeedsColour) {
  const std::string svg = draw(*tarn_shoulder(), 720, tarn_shoulder_report());
  for (std::size_t at = svg.find("=\"#"); at != std::string::npos; at = svg.find("=\"#", at + 1)) {
    const std::string colour = svg.substr(at + 3, svg.find('"', at + 3) - at - 3);
    const std::size_t part = colour.size() / 3;
    const bool grey = colour.substr(0, part) == colour.substr(part, part) &&
                      colour.substr(0, part) == colour.substr(2 * part, part);
    EXPECT_TRUE(grey || colour == "9c3d10") << colour;
  }
  EXPECT_FALSE(has(svg, "style="));
}

TEST(Profile, WithoutReportThereIsNoConcern) {
  const std::string svg = draw(*tarn_shoulder());
  EXPECT_FALSE(has(svg, "oncern"));
  EXPECT_FALSE(has(svg, "says little"));
}

TEST(Profile, TheSameBytesEveryTime) {
  for (const std::int32_t width : {320, 360, 720, 1400}) {
    EXPECT_EQ(draw(*tarn_shoulder(), width, tarn_shoulder_report()),
              draw(*tarn_shoulder(), width, tarn_shoulder_report()));
  }
}

TEST(Profile, WidthsOutOfRangeAreBrought) {
  EXPECT_EQ(draw(*larch_bowl_entry(), INT32_MIN), draw(*larch_bowl_entry(), 320));
  EXPECT_EQ(draw(*larch_bowl_entry(), INT32_MAX), draw(*larch_bowl_entry(), 2000));
}

// A locale that writes 1234.5 as 1'234,5.
struct Commas : std::numpunct<char> {
  char do_decimal_point() const override { return ','; }
  char do_thousands_sep() const override { return '\''; }
  std::string do_grouping() const override { return "\3"; }
};

TEST(Profile, NoLocaleChangesTheBytes) {
  const std::string before = draw(*tarn_shoulder(), 720, tarn_shoulder_report());
  const std::locale old = std::locale::global(std::locale(std::locale::classic(), new Commas));
  for (const char* name : {"de_DE.UTF-8", "fr_FR.UTF-8", "C.UTF-8"}) std::setlocale(LC_ALL, name);
  const std::string during = draw(*tarn_shoulder(), 720, tarn_shoulder_report());
  std::locale::global(old);
  std::setlocale(LC_ALL, "C");
  EXPECT_EQ(during, before);
}

TEST(Profile, DepthsOnlyWhenThePitDidNotReachTheGround) {
  auto pit = tarn_shoulder();
  pit->reached_ground = false;
  std::string svg = draw(*pit);
  EXPECT_FALSE(has(svg, ">height<"));
  EXPECT_TRUE(has(svg, ">depth<"));
  EXPECT_TRUE(has(svg, "the pit was not dug to the ground"));

  pit->reached_ground.reset();
  pit->layers.pop_back();  // the lowest layer ends at 107 of 140
  svg = draw(*pit);
  EXPECT_TRUE(has(svg, "the pit was not dug to the ground"));

  pit->snowpack.reset();
  svg = draw(*pit);
  EXPECT_FALSE(has(svg, ">height<"));
  EXPECT_TRUE(has(svg, "HS was not recorded"));
}

TEST(Profile, HardnessThatWasNotObservedIsNotMadeUp) {
  firnbook::PitT pit;
  add_layer(pit, 0, cm(30)).grain_form = GrainForm::FC;
  const std::string svg = draw(pit);
  EXPECT_TRUE(has(svg, "hardness ?"));
  EXPECT_TRUE(has(svg, "stroke-dasharray=\"3 3\""));
  EXPECT_TRUE(has(svg, ">?</text>"));
  EXPECT_TRUE(has(svg, "not observed"));
}

TEST(Profile, WetnessIsPrintedFromMoistUp) {
  firnbook::PitT pit;
  add_layer(pit, 0, cm(30), HandHardness::Fist, GrainForm::MF).wetness = firnbook::Wetness::D;
  EXPECT_FALSE(has(draw(pit), "wetness D"));
  EXPECT_TRUE(has(draw(pit), "left blank"));
  pit.layers[0]->wetness = firnbook::Wetness::M;
  EXPECT_TRUE(has(draw(pit), "wetness M"));
}

TEST(Profile, UnreliableValuesAreMarked) {
  firnbook::PitT pit;
  add_layer(pit, 0, cm(30), HandHardness::Fist, GrainForm::FC, 200).unreliable = 1u << 7;  // grain size
  EXPECT_TRUE(has(draw(pit), "2 mm\xC2\xA0(?)"));
  EXPECT_TRUE(has(draw(pit), "not to be leaned on"));
}

TEST(Profile, TestsWithoutADepthAreNotLost) {
  firnbook::PitT pit;
  add_test(pit, firnbook::TestKind::ECT).outcome = firnbook::TestOutcome::no_fracture;
  firnbook::FractureT& fracture = add_compression_test(pit, 14, firnbook::FractureCharacter::SP, cm(40));
  *fracture.depth = nowhere_from(cm(40));
  const std::string svg = draw(pit);
  EXPECT_TRUE(has(svg, "Tests without a depth"));
  EXPECT_TRUE(has(svg, "ECTX"));
  EXPECT_TRUE(has(svg, "CT14 (SP)"));
}

TEST(Profile, ATestThatWasNotValidSaysSo) {
  firnbook::PitT pit;
  add_compression_test(pit, 14, firnbook::FractureCharacter::SP, cm(40));
  pit.tests[0]->outcome = firnbook::TestOutcome::not_valid;
  EXPECT_TRUE(has(draw(pit), "CT14 (SP) not valid"));
}

TEST(Profile, ADensityAcrossLayersGetsALabelOfItsOwn) {
  auto pit = tarn_shoulder();
  add_density(*pit, cm(20), cm(60), 2000);
  EXPECT_TRUE(has(draw(*pit),
                  "200 kg/m\xC2\xB3 <tspan fill=\"#555\">20\xE2\x80\x93"
                  "60"));
}

TEST(Profile, PracticePitsSayThatTheyAreInvented) {
  auto pit = larch_bowl_entry();
  pit->practice = true;
  EXPECT_EQ(count(draw(*pit), "invented"), 3u) << "mark, caution line and summary";
}

TEST(Profile, SignsNotRecordedAreNotSignsNotSeen) {
  EXPECT_TRUE(has(draw({}), "not recorded"));
  EXPECT_FALSE(has(draw({}), "whumpf"));
}

TEST(Profile, LayersWithoutADepthAreCounted) {
  firnbook::PitT pit;
  add_layer(pit, 0, cm(10), HandHardness::Fist, GrainForm::PP);
  *add_layer(pit, cm(10), cm(20), HandHardness::Fist, GrainForm::PP).top = nowhere_from(cm(10));
  add_layer(pit, cm(20), INT32_MAX, HandHardness::Fist, GrainForm::PP);
  EXPECT_TRUE(has(draw(pit), "2 layers have no usable depth and are not drawn."));
}

TEST(Profile, AConcernWithoutADepthIsNamed) {
  const std::vector<std::uint8_t> report = report_of(
      {{firnbook::ConcernKind::depth_only, -1, INT32_MAX, INT32_MAX, firnbook::ConcernRank::sudden}});
  EXPECT_TRUE(has(draw(*tarn_shoulder(), 720, report), "concern 1: its depth is not known"));
}

TEST(Profile, ConcernsBeyondWhatAPageHoldsAreCounted) {
  std::vector<ConcernSpec> specs;
  for (std::int32_t i = 0; i < 1000; ++i) {
    specs.push_back(
        {firnbook::ConcernKind::depth_only, -1, cm(i % 140), cm(i % 140), firnbook::ConcernRank::broke});
  }
  const std::string svg = draw(*tarn_shoulder(), 720, report_of(specs));
  EXPECT_TRUE(has(svg, "991 more concerns are in the report."));
  EXPECT_FALSE(has(svg, "concern 10"));
}

firnbook::PitT pit_of_many(std::int32_t layers) {
  firnbook::PitT pit;
  for (std::int32_t i = 0; i < layers; ++i) {
    firnbook::LayerT& layer = add_layer(pit, i * 10, i * 10 + 10);
    layer.hardness = static_cast<HandHardness>(6 + i % 31);
    layer.grain_form = static_cast<GrainForm>(10 + i % 86);
    layer.words = "words of layer";
    add_temperature(pit, i * 10, -i % 2000);
    add_density(pit, i * 10, i * 10 + 10, 1000 + i);
    if (i % 10 == 0) add_compression_test(pit, 11, firnbook::FractureCharacter::SP, i * 10);
  }
  return pit;
}

TEST(Profile, TenThousandLayersStaySmallAndQuick) {
  const firnbook::PitT pit = pit_of_many(10000);
  const std::vector<std::uint8_t> bytes = bytes_of(pit);
  pit::View view;
  view.decode(*flatbuffers::GetRoot<firnbook::Pit>(bytes.data()));
  std::string svg;
  const auto start = std::chrono::steady_clock::now();
  drawing::append_profile(svg, view, nullptr, {});
  const std::chrono::duration<double> took = std::chrono::steady_clock::now() - start;
  EXPECT_LT(took.count(), 1.0);
  EXPECT_LT(svg.size(), 1000000u);
  EXPECT_TRUE(has(svg, "more layers"));
  EXPECT_TRUE(has(svg, "too thin to be drawn one by one"));
}

TEST(Profile, ManyLayersInOnePlaceStaySmall) {
  firnbook::PitT pit;
  for (std::int32_t i = 0; i < 10000; ++i) add_layer(pit, 0, cm(100), HandHardness::Pencil, GrainForm::RG);
  const std::string svg = draw(pit);
  EXPECT_LT(svg.size(), 1000000u);
  EXPECT_TRUE(has(svg, "8500 more layers are not drawn."));
}

TEST(Profile, ANamedLayerKeepsItsLabelAmongThousands) {
  firnbook::PitT pit = pit_of_many(5000);
  pit.layers[4000]->name = std::make_unique<firnbook::LayerNameT>();
  pit.layers[4000]->name->date = std::make_unique<firnbook::Moment>(date(2027, 1, 2));
  EXPECT_TRUE(has(draw(pit), "270102"));
}

TEST(Profile, MegabytesAreClippedBetweenCharacters) {
  auto pit = larch_bowl_entry();
  std::string snow;
  for (int i = 0; i < 400000; ++i) snow += "\xE9\x9B\xAA";
  pit->title = snow;
  pit->layers[0]->words = snow;
  pit->observers[0]->name = snow;
  pit->site->name = snow;
  const std::string svg = draw(*pit);
  EXPECT_LT(svg.size(), 40000u);
  EXPECT_TRUE(is_utf8(svg));
  EXPECT_TRUE(has(svg, "\xE2\x80\xA6"));
}

TEST(Profile, TextOfAPitIsNeverMarkup) {
  auto pit = larch_bowl_entry();
  pit->title = "<script>alert(1)</script> & \"quoted\" \xFF\x01\xE2\x80\xAE";
  pit->layers[0]->words = "]]></text><a href='x'>";
  const std::string svg = draw(*pit);
  EXPECT_FALSE(has(svg, "<script"));
  EXPECT_FALSE(has(svg, "<a "));
  EXPECT_FALSE(has(svg, "]]>"));
  EXPECT_FALSE(has(svg, "\x01"));
  EXPECT_FALSE(has(svg, "\xE2\x80\xAE")) << "a name must not turn the words after it";
  EXPECT_TRUE(has(svg, "&lt;script&gt;"));
  EXPECT_TRUE(is_utf8(svg));
}

TEST(Profile, NumbersOfNewerSchemasAreShownAsNumbers) {
  firnbook::PitT pit;
  firnbook::LayerT& layer = add_layer(pit, 0, cm(30));
  layer.hardness = static_cast<HandHardness>(99);
  layer.grain_form = static_cast<GrainForm>(85);
  layer.wetness = static_cast<firnbook::Wetness>(77);
  add_sign(pit, static_cast<firnbook::SignKind>(200), static_cast<firnbook::Answer>(9));
  const std::string svg = draw(pit);
  for (const char* text : {"code 99", "code 85", "wetness code 77", "code 200: code 9"}) {
    EXPECT_TRUE(has(svg, text)) << text;
  }
}

}  // namespace
}  // namespace firn::tests
