// Lines of notes beyond those of the demo, read and printed.
#include <gtest/gtest.h>

#include <algorithm>
#include <clocale>
#include <cstring>
#include <limits>
#include <string>
#include <utility>
#include <vector>

#include "notes_help.h"
#include "pit/verify.h"
#include "support/place.h"
#include "support/text.h"

namespace firn::tests {
namespace {

using namespace firnbook;  // NOLINT: a test of nothing but the schema's names

// What a line reads as and prints as is the same line.
void expect_unchanged(const std::string& line) {
  EXPECT_EQ(canonical(line + "\n"), line + "\n");
}
// Another spelling of `line`.
void expect_prints(const std::string& spelling, const std::string& line) {
  EXPECT_EQ(canonical(spelling + "\n"), line + "\n") << spelling;
}

TEST(NotesLines, CanonicalLinesStayAsTheyAre) {
  const char* const lines[] = {
      "pit Marten Ridge; north side",
      "id 3f0c",
      "purpose quick pit",
      "time 2027-01-16T11:20-07:00 to 2027-01-16T12:05-07:00",
      "time 2027-01",
      "reported 2027-01-16T18:00Z",
      "observers KL (professional, id \"k1\"), MT (student)",
      "site 2080 m, NE, facing 47 deg, 24 deg, lat 12.3456789, lon -7.5, accuracy 4 m, position from gnss",
      "interest \"Larch Bowl\", aspect same, wind loading more, 2150 m, NE, 36 deg",
      "probe 38 45 61.5?",
      "weather sky thin BKN, fog base 1200 m top 1500 m, precip OGRS S S2, air -7.5, wind S from S 12.5 m/s",
      "weather precip +SN, blowing M from SW, \"squally\"",
      "surface PF 35, PS 15, PR 20, rwa, amplitude 2, amplitude max 4, temp -9.2",
      "HS 140, water 412 mm, measured slope-normal",
      "HIN 22, water 19.5 mm, cleared 2027-01-15T16:00-07:00",
      "depth 120",
      "ground not reached",
      "0-16 F PPsd 2.0",
      "0-16 4F/1F FC 1.0-2.0 (DH) M",
      "0-16? top F FC? 2.0? class fine to coarse \"crusty\"? concern bottom",
      "0-16 hardness ~? form ~? size ~? wetness ~?",
      "68-69 F SH 6.0 name 270102 buried \"the January hoar\" formed 2026-12-28 to 2027-01-02",
      "~-30 P",
      "temp 0 -9 +-0.2, 10? -8.6, 20 ~?",
      "density 31-68 238.5?, 69-104 310",
      "lwc 0-10 3.5",
      "ssa 0-10 21.4",
      "resistance 0-10 15.2 hammer 1000 g tube 1000 g drops 3 fall 20",
      "strength 30-31 1200 character SP quality Q1 surface Clean",
      "impurity 0-5 12.5 in ppm unit \"ng/g\"",
      "sign whumpf yes, cracking yes 10 m, slides no \"good view\"",
      "sign remote trigger not looked for, pinwheels yes seen 2027-01-16T10:00-07:00",
      "step kit within reach yes, pack closed no \"strap torn\"",
      "step pit filled in yes made 2027-01-16T12:10-07:00",
      "step dug from below done ~, done ~",
      "slide slab, size 1.5, trigger natural, NE, 2300 m, age 2 d, count 3, \"below the cornice\"",
      "remark \"soft below the crust\", about layers[2].hardness, confidential yes",
      "photo \"pit-1.jpg\", taken 2027-01-16T11:40-07:00, about layers[0], words \"the wall\", sha256 00ff",
      "absent about weather.wind, withheld, \"no wind gauge\"",
      "bulletin issued, id \"LN-2027-01-16\", region \"Larchwater North\"",
      "assessment \"touchy\", plan \"stay low\", confidence low",
      "sharing partners",
      "practice yes",
      "application \"pocket notes\", version \"1.2\"",
      "unread \"0-16 what\", line 7, expected \"a form\"",
  };
  for (const char* line : lines) expect_unchanged(line);
}

TEST(NotesLines, OtherSpellings) {
  expect_prints("PIT:\tMarten Ridge", "pit Marten Ridge");
  expect_prints("HS 1.4 m", "HS 140");
  expect_prints("site 2080m, ne, 24\xC2\xB0", "site 2080 m, NE, 24 deg");
  expect_prints("site slope 24, aspect NE", "site NE, 24 deg");
  expect_prints("weather sky -BKN, wind SW M, air -7 C", "weather sky thin BKN, air -7, wind M from SW");
  expect_prints("weather wind 8 m/s 225 deg", "weather wind 8 m/s 225 deg");
  expect_prints("weather precip S", "weather precip snow");
  expect_prints(
      "0\xE2\x80\x93"
      "16 4f to 1f fc 1.0 to 2.0 mm",
      "0-16 4F/1F FC 1.0-2.0");
  expect_prints("0-16 ~ FC U", "0-16 FC size ~?");
  expect_prints("0-16 U FC", "0-16 hardness ~? FC");
  expect_prints("0-16 F fine-medium", "0-16 F class fine to medium");
  expect_prints("0-16 F concern", "0-16 F concern all");
  expect_prints(
      "temp 10 -8.6 C \xC2\xB1"
      "0.2",
      "temp 10 -8.6 +-0.2");
  expect_prints("time 2027-01-16 11:20-07:00 to 12:05",
                "time 2027-01-16T11:20-07:00 to 2027-01-16T12:05-07:00");
  expect_prints("slide slab, age 48 h", "slide slab, age 2 d");
  expect_prints("remark soft below the crust", "remark \"soft below the crust\"");
  expect_prints("remark \xE2\x80\x9Csoft\xE2\x80\x9D", "remark \"soft\"");
  expect_prints("bulletin issued, id LN-7, region Larchwater North",
                "bulletin issued, id \"LN-7\", region \"Larchwater North\"");
  expect_prints("0-16 F \"new snow\" maybe PP DF", "0-16 F \"new snow\"");
  expect_prints("chosen same aspect and elevation as Larch Bowl",
                "chosen same aspect and elevation as Larch Bowl");
}

TEST(NotesLines, HeightsAndSlopeNormalMeasuring) {
  const NotesRead notes = read_well(
      "HS 140\nheights from ground\n140-107 F PP\nmeasured slope-normal\n107-0 P\nCT12 down 30\ntemp 10 "
      "-1\n");
  const auto& layers = notes.pit->layers;
  ASSERT_EQ(layers.size(), 2u);
  EXPECT_EQ(layers[0]->top->datum(), Datum::ground);
  EXPECT_EQ(layers[0]->top->direction(), Direction::vertical);
  EXPECT_EQ(layers[1]->bottom->datum(), Datum::ground);
  EXPECT_EQ(layers[1]->bottom->direction(), Direction::slope_normal);
  EXPECT_EQ(notes.pit->tests[0]->fractures[0]->depth->datum(), Datum::surface);
  EXPECT_EQ(notes.pit->tests[0]->fractures[0]->depth->direction(), Direction::slope_normal);
  EXPECT_EQ(notes.pit->temperatures[0]->depth->datum(), Datum::ground);
  canonical("HS 140\nheights from ground\n140-107 F PP\nmeasured slope-normal\n107-0 P\nCT12 down 30\n");
}

TEST(NotesLines, WordsWithoutAFormGetCandidatesAndNeverAForm) {
  const NotesRead notes =
      read_well("17-46 F \"sugary, to the ground\"\n46-50 F \"odd\"\n50-60 F FC \"sugary\"\n");
  const auto& layers = notes.pit->layers;
  EXPECT_FALSE(layers[0]->grain_form);
  EXPECT_EQ(layers[0]->candidates, (std::vector<GrainForm>{GrainForm::FC, GrainForm::DH}));
  EXPECT_TRUE(layers[1]->candidates.empty());
  EXPECT_TRUE(layers[2]->candidates.empty());
}

TEST(NotesLines, ChosenWordsSayOnlyWhatTheySay) {
  const auto choice = [](const std::string& words) {
    NotesRead notes = read_well("chosen " + words + "\n");
    return std::move(notes.pit->choice);
  };
  EXPECT_EQ(choice("steeper, similar snow")->incline, Comparison::more);
  EXPECT_FALSE(choice("not steeper")->incline);
  EXPECT_FALSE(choice("\"gentler\"")->incline) << "words in quotes are only words";
  EXPECT_EQ(choice("the same aspect as Larch Bowl; less loaded")->wind_loading, Comparison::less);
  EXPECT_FALSE(choice("same aspect as Larch Bowl; different aspect from Tarn Shoulder")->aspect);
  EXPECT_FALSE(choice("out of the wind")->aspect);
}

TEST(NotesLines, SeveralProfilesStayApart) {
  const NotesRead notes =
      read_well("density 0-10 100\ndensity 10-20 120\ndensity profile, method Snow Tube\ndensity 0-10 90\n");
  ASSERT_EQ(notes.pit->densities.size(), 2u);
  EXPECT_EQ(notes.pit->densities[0]->readings.size(), 2u);
  EXPECT_EQ(notes.pit->densities[1]->method, DensityMethod::snow_tube);
  EXPECT_EQ(notes.pit->densities[1]->readings.size(), 1u);
}

TEST(NotesLines, RoundingsAndInchesAreSaid) {
  const NotesRead notes = read_well("HS 55.12345\nsurface PF 10 in\n0-16 F FC 0.125\n");
  ASSERT_EQ(notes.remarks.size(), 3u);
  EXPECT_EQ(notes.remarks[0].line, 1u);
  EXPECT_EQ(notes.remarks[0].column, 4u);
  EXPECT_EQ(notes.remarks[0].status, FIRN_OK);
  EXPECT_NE(notes.remarks[0].what.find("55.123"), std::string::npos);
  EXPECT_NE(notes.remarks[1].what.find("25.4"), std::string::npos);
  EXPECT_EQ(notes.remarks[2].line, 3u);
  EXPECT_EQ(notes.pit->surface->penetration_foot_10um, 25400);
}

TEST(NotesLines, ByteOrderMarkAndLineEndsOfOtherSystems) {
  std::string notes = file_text("tarn-shoulder.txt");
  const Bytes plain = bytes_of(notes);
  std::string other = "\xEF\xBB\xBF";
  for (const char c : notes) {
    if (c == '\n') other += '\r';
    other += c;
  }
  EXPECT_EQ(bytes_of(other), plain);
  notes.pop_back();
  EXPECT_EQ(bytes_of(notes), plain);
}

TEST(NotesLines, TextFromRightToLeftIsKept) {
  const std::string name =
      "\xD7\xA9\xD7\x9C\xD7\x92 \xE2\x80\x8F"
      "Larch";
  const NotesRead notes = read_well("pit " + name + "\nobservers " + name + "\n0-5 F \"" + name + "\"\n");
  EXPECT_EQ(notes.pit->title, name);
  EXPECT_EQ(notes.pit->observers[0]->name, name);
  EXPECT_EQ(notes.pit->layers[0]->words, name);
}

TEST(NotesLines, TheLocaleOfTheHostDoesNotMatter) {
  const Bytes plain = bytes_of(file_text("tarn-shoulder.txt"));
  // Where none of these is installed the test still reads in the C locale.
  for (const char* locale : {"de_DE.UTF-8", "tr_TR.UTF-8", "C"}) {
    std::setlocale(LC_ALL, locale);
    const Bytes here = bytes_of(file_text("tarn-shoulder.txt"));
    EXPECT_EQ(here, plain) << locale;
    EXPECT_EQ(print(here).text, print(plain).text) << locale;
  }
  std::setlocale(LC_ALL, "C");
}

TEST(NotesLines, TenThousandLayers) {
  std::string notes;
  for (int i = 0; i < 10000; ++i) {
    notes += std::to_string(i) + "-" + std::to_string(i + 1) + " 4F FC 1.0 \"layer\" name 270102 buried\n";
  }
  const Bytes bytes = bytes_of(notes);
  EXPECT_EQ(GetPit(bytes.data())->layers()->size(), 10000u);
  EXPECT_EQ(bytes_of(print(bytes).text), bytes);
}

TEST(NotesLines, AMegabyteOnOneLine) {
  const std::string words(1 << 20, 'x');
  const Bytes bytes = bytes_of("remark \"" + words + "\"\n0-5 F \"" + words + "\"\npit " + words + "\n");
  EXPECT_EQ(bytes_of(print(bytes).text), bytes);
  std::string many = "temp 0 -1.001";
  while (many.size() < (1 << 20)) many += ", 0 -1.001";
  EXPECT_EQ(read_well(many).remarks.size(), 10000u) << "roundings are said up to a limit";
  std::string quotes = "remark \"";
  while (quotes.size() < (1 << 20)) quotes += "\\\"";
  EXPECT_EQ(refusal(quotes).line, 1u);
}

// --- the rare things: whatever a pit holds has a line ------------------------------------------------------

TEST(NotesWhole, LinesOfRareThingsStayAsTheyAre) {
  const char* const lines[] = {"reported moment=5/0/3/0",
                               "edited moment=-9223372036854775808/-32768/255/255",
                               "time 2027-01-16 to moment=0/0/0/1",
                               "time moment=0/0/0/0 to 2027-01-16",
                               "0-depth=3300/2/1? F formed moment=1/2/3/4 to moment=5/6/7/8",
                               "0-5 F name moment=1/2/3/4 formed formed moment=1/0/1/0",
                               "0-5 F name 270102 formed moment=1/0/1/0",
                               "~-5 4F unreliable words name unreliable ?17 ?63",
                               "remark \"x\", about place=-1/2/65535/6",
                               "remark \"a\\xFFb\\u{00}\\xC3\\xC3\\n\"",
                               "pit \"\\xFF\"",
                               "observers \"K\\xFF\"",
                               "CT12 (SP) down 68 \"two\\nlines\" on \"\\xFF\" FC (\"a\\tb\")",
                               "extension \"urn:example\", about layers[0], base64 AAEC/w==",
                               "extension base64 U/8=",
                               "extension key ~",
                               "edits unread 4294967295",
                               "sign whumpf no unreliable ?40, cracking yes",
                               "sign unreliable ?40 answer ~",
                               "slide slab, unreliable ?10 ?63",
                               "slide unreliable ?63",
                               "step pack closed yes made moment=5/0/0/0",
                               "site NE, unreliable ?40",
                               "weather unreliable ?63",
                               "surface PF 35, unreliable ?12",
                               "HS ~, unreliable ?10 ?40",
                               "interest unreliable ?63",
                               "temp 10 -8.6 +-0.2 unreliable ?3 ?60, 20 -7",
                               "strength 68-69 900 character SP unreliable ?6 ?63, 70-80 5",
                               "density 0-depth=1000/1/0? 100",
                               "ssa profile\nssa dense 0.0 42.5, 0.5 -1e-9, 1 bits=2143289344, 1.5 ~"};
  for (const std::string line : lines) expect_unchanged(line);
  expect_prints("REPORTED: Moment=5/0/3/0", "reported moment=5/0/3/0");
  expect_prints("0-Depth=3300/2/1 F Name MOMENT=1/0/1/0", "0-depth=3300/2/1 F name moment=1/0/1/0");
  expect_prints("temp 10 -8.6 Unreliable ?60  ?3", "temp 10 -8.6 unreliable ?3 ?60");
  expect_prints("extension Key \"a\", Base64 AAEC", "extension \"a\", base64 AAEC");
  expect_prints("ssa profile\nSSA Dense 0 0.5e1", "ssa profile\nssa dense 0.0 5");
}

PitT& with_dense(PitT& pit, std::vector<float> depths, std::vector<float> values) {
  pit.surface_area.push_back(std::make_unique<SurfaceAreaProfileT>());
  pit.surface_area.back()->dense_depth_cm = std::move(depths);
  pit.surface_area.back()->dense_m2kg = std::move(values);
  return pit;
}

float float_of(std::uint32_t bits) {
  float value = 0;
  std::memcpy(&value, &bits, sizeof value);
  return value;
}

TEST(NotesWhole, PointsOfAnInstrument) {
  const auto notes = [](std::vector<float> depths, std::vector<float> values) {
    PitT pit;
    const Bytes bytes = recording::to_bytes(with_dense(pit, std::move(depths), std::move(values)));
    const Printed printed = print(bytes);
    EXPECT_TRUE(printed.lost.empty());
    EXPECT_EQ(bytes_of(printed.text), bytes) << printed.text;
    return printed.text;
  };
  EXPECT_EQ(notes({0, 0.5f}, {42.5f, 1e-9f}), "ssa profile\nssa dense 0.0 42.5, 0.5 1e-9\n");
  EXPECT_EQ(notes({1, 2}, {}), "ssa profile\nssa dense 1 ~, 2 ~\n");
  EXPECT_EQ(notes({1}, {2, 3.25f}), "ssa profile\nssa dense 1 2, ~ 3.25\n");
  // Infinite, no number with and without a payload, and the smallest and largest there are.
  EXPECT_EQ(notes({float_of(0x7F800000), float_of(0xFFC00001)}, {float_of(1), float_of(0x80000000)}),
            "ssa profile\nssa dense bits=2139095040 1e-45, bits=4290772993 -0.0\n");
  EXPECT_EQ(notes({float_of(0x7F7FFFFF)}, {}), "ssa profile\nssa dense 3.4028235e38 ~\n");
  std::vector<float> many(25, 1.5f);
  const std::string lines = notes(many, many);
  EXPECT_EQ(std::count(lines.begin(), lines.end(), '\n'), 4);
}

TEST(NotesWhole, PointsStayWithTheirProfile) {
  const NotesRead notes = read_well(
      "resistance dense 0 0.05\nresistance dense 0.5 0.061, 1 0.07\nresistance profile, method Ram Sonde\n"
      "resistance dense 3 4\nresistance 0-20 150\n");
  ASSERT_EQ(notes.pit->hardness.size(), 2u);
  EXPECT_EQ(notes.pit->hardness[0]->dense_n, (std::vector<float>{0.05f, 0.061f, 0.07f}));
  EXPECT_EQ(notes.pit->hardness[1]->dense_depth_cm, (std::vector<float>{3.0f}));
  EXPECT_EQ(notes.pit->hardness[1]->readings.size(), 1u);
}

TEST(NotesWhole, AHundredThousandPointsAndAMegabyteOfBytes) {
  PitT pit;
  pit.hardness.push_back(std::make_unique<HardnessProfileT>());
  for (int i = 0; i < 100000; ++i) {
    pit.hardness[0]->dense_depth_cm.push_back(static_cast<float>(i) / 250);
    pit.hardness[0]->dense_n.push_back(static_cast<float>(i % 977) / 1000);
  }
  pit.extensions.push_back(std::make_unique<ExtensionT>());
  for (int i = 0; i < (1 << 20); ++i) pit.extensions[0]->bytes.push_back(static_cast<std::uint8_t>(i * 7));
  const Bytes bytes = recording::to_bytes(pit);
  EXPECT_EQ(bytes_of(print(bytes).text), bytes);
}

TEST(NotesWhole, EachMarkOfEveryTableComesBack) {
  for (std::uint64_t field = 0; field < 64; ++field) {
    PitT pit;
    const std::uint64_t mark = std::uint64_t{1} << field;
    const auto marked = [&](auto& member) {
      using T = std::decay_t<decltype(*member)>;
      member = std::make_unique<T>();
      member->unreliable = mark;
    };
    const auto marked_in = [&](auto& list) {
      list.emplace_back();
      marked(list.back());
    };
    const auto marked_reading = [&](auto& list) {
      list.push_back(std::make_unique<typename std::decay_t<decltype(*list[0])>>());
      marked_in(list.back()->readings);
    };
    marked(pit.site);
    marked(pit.choice);
    marked(pit.weather);
    marked(pit.surface);
    marked(pit.snowpack);
    marked_in(pit.layers);
    marked_in(pit.temperatures);
    marked_reading(pit.densities);
    marked_reading(pit.liquid_water);
    marked_reading(pit.surface_area);
    marked_reading(pit.hardness);
    marked_reading(pit.strength);
    marked_reading(pit.impurities);
    marked_in(pit.tests);
    marked_in(pit.tests[0]->fractures);
    marked(pit.tests[0]->fractures[0]->on);
    marked_in(pit.signs);
    marked_in(pit.slides);
    const Bytes bytes = recording::to_bytes(pit);
    const Printed printed = print(bytes);
    EXPECT_EQ(bytes_of(printed.text), bytes) << field << '\n' << printed.text;
  }
}

TEST(NotesWhole, AnyMomentAndPlaceAndDepth) {
  for (const std::int64_t seconds : {INT64_MIN, INT64_MIN + 1, std::int64_t{-1}, std::int64_t{0},
                                     std::int64_t{5}, std::int64_t{1800000000}, INT64_MAX}) {
    for (const int precision : {0, 1, 2, 3, 4, 5, 6, 255}) {
      for (const int known : {0, 1, 2, 255}) {
        for (const int offset : {INT16_MIN, -1440, -1, 0, 1439, INT16_MAX}) {
          PitT pit;
          const Moment moment(seconds, static_cast<std::int16_t>(offset),
                              static_cast<TimePrecision>(precision), static_cast<std::uint8_t>(known));
          pit.reported = std::make_unique<Moment>(moment);
          pit.time = std::make_unique<TimeSpan>(Moment(), moment);
          pit.layers.push_back(std::make_unique<LayerT>());
          pit.layers[0]->top =
              std::make_unique<Depth>(offset, static_cast<Datum>(known), static_cast<Direction>(precision));
          pit.layers[0]->bottom = std::make_unique<Depth>(INT32_MIN, Datum::ground, Direction::vertical);
          pit.layers[0]->name = std::make_unique<LayerNameT>();
          pit.layers[0]->name->date = std::make_unique<Moment>(moment);
          pit.layers[0]->formed = std::make_unique<TimeSpan>(moment, Moment());
          pit.photos.push_back(std::make_unique<PhotoT>());
          pit.photos[0]->about = std::make_unique<Place>(offset, known, static_cast<std::uint16_t>(offset),
                                                         static_cast<Thing>(precision));
          const Bytes bytes = recording::to_bytes(pit);
          const Printed printed = print(bytes);
          ASSERT_EQ(bytes_of(printed.text), bytes) << printed.text;
        }
      }
    }
  }
}

TEST(NotesWhole, APitOfANewerVersionIsSaidToBeIncomplete) {
  PitT pit;
  pit.title = "later";
  for (const int newer : {0, 1}) {
    flatbuffers::FlatBufferBuilder builder;
    pit.schema_minor = static_cast<std::uint16_t>(pit::kSchemaMinor + newer);
    FinishPitBuffer(builder, Pit::Pack(builder, &pit));
    std::string out;
    std::vector<Place> lost;
    notation::write_notes(out, *GetPit(builder.GetBufferPointer()), lost);
    EXPECT_EQ(lost.size(), static_cast<std::size_t>(newer));
  }
}

}  // namespace
}  // namespace firn::tests
