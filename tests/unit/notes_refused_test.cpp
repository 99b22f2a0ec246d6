// Notes that are refused, or kept unread: what is said, where, and how to mend it.
#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "notes_help.h"

namespace firn::tests {
namespace {

struct Case {
  const char* notes;
  firn_status status;
  std::uint32_t line;
  std::uint32_t column;
  const char* what;  // part of it
};

TEST(NotesRefused, EachWithItsPlace) {
  const Case cases[] = {
      {"HS 46\nHS 47\n", FIRN_NOTES_CONTRADICT, 2, 1, "lines 1 and 2"},
      {"site NE\nHS 1\nsite SW\n", FIRN_NOTES_CONTRADICT, 3, 1, "lines 1 and 3"},
      {"pit a\npit b\n", FIRN_NOTES_CONTRADICT, 2, 1, "the title"},
      {"site NE, SW\n", FIRN_NOTES_CONTRADICT, 1, 10, "twice"},
      {"0-16 F P\n", FIRN_NOTES_CONTRADICT, 1, 8, "two of"},
      {"chosen same aspect as Larch Bowl\ninterest aspect less\n", FIRN_NOTES_CONTRADICT, 2, 1,
       "lines 1 and 2"},
      {"pit a\xFF\n", FIRN_BAD_UTF8, 1, 6, "UTF-8"},
      {"pit a\nid b\x01\n", FIRN_BAD_UTF8, 2, 5, "control"},
      {"pit \xC2\x85\n", FIRN_BAD_UTF8, 1, 5, "control"},
      {"weather air -7,5\n", FIRN_NOTES_NOT_UNDERSTOOD, 1, 15, "comma"},
      {"HS 46,5\n", FIRN_NOTES_NOT_UNDERSTOOD, 1, 6, "comma"},
      {"HS .5\n", FIRN_NOTES_NOT_UNDERSTOOD, 1, 4, "height"},
      {"HS 46 # probed\n", FIRN_NOTES_NOT_UNDERSTOOD, 1, 7, "comma or the end"},
      {"HS\n", FIRN_NOTES_NOT_UNDERSTOOD, 1, 3, "height of the snowpack"},
      {"HS deep\n", FIRN_NOTES_NOT_UNDERSTOOD, 1, 4, "deep"},
      {"HS 99999999\n", FIRN_NOTES_NOT_UNDERSTOOD, 1, 4, "height"},
      {"site 2080, NE\n", FIRN_NOTES_NOT_UNDERSTOOD, 1, 6, "elevation"},
      {"site 300 deg\n", FIRN_NOTES_NOT_UNDERSTOOD, 1, 6, "slope"},
      {"time 2026-13-01\n", FIRN_NOTES_NOT_UNDERSTOOD, 1, 10, "time"},
      {"time 2026-02-29\n", FIRN_NOTES_NOT_UNDERSTOOD, 1, 13, "time"},
      {"time 2026-11-28T10:5\n", FIRN_NOTES_NOT_UNDERSTOOD, 1, 19, "time"},
      {"0-16 F XX 2.0\n", FIRN_NOTES_NOT_UNDERSTOOD, 1, 8, "XX"},
      {"0 F\n", FIRN_NOTES_NOT_UNDERSTOOD, 1, 3, "span"},
      {"0-16 F name\n", FIRN_NOTES_NOT_UNDERSTOOD, 1, 12, "YYMMDD"},
      {"0-16 F name 270231\n", FIRN_NOTES_NOT_UNDERSTOOD, 1, 13, "YYMMDD"},
      {"0-16 F \"open\n", FIRN_NOTES_NOT_UNDERSTOOD, 1, 8, "closing quote"},
      {"0-16 F \"a\\qb\"\n", FIRN_NOTES_NOT_UNDERSTOOD, 1, 10, "escape"},
      {"temp 10-8.6\n", FIRN_NOTES_NOT_UNDERSTOOD, 1, 8, "blank"},
      {"sign whumpf\n", FIRN_NOTES_NOT_UNDERSTOOD, 1, 12, "yes, no"},
      {"sign whumpf maybe\n", FIRN_NOTES_NOT_UNDERSTOOD, 1, 13, "maybe"},
      {"depths from ground\n", FIRN_NOTES_NOT_UNDERSTOOD, 1, 1, "heights from ground"},
      {"remark \"x\", about layer 3\n", FIRN_NOTES_NOT_UNDERSTOOD, 1, 19, "place"},
      {"observers KL MT (professional\n", FIRN_NOTES_NOT_UNDERSTOOD, 1, 30, "bracket"},
      {"CT45 down 17\n", FIRN_NOTES_NOT_UNDERSTOOD, 1, 3, ""},
      {"  CT12 (SQ) down 17\n", FIRN_NOTES_NOT_UNDERSTOOD, 1, 9, "SQ"},
      {"reported moment=5/0/3\n", FIRN_NOTES_NOT_UNDERSTOOD, 1, 22, "next number"},
      {"reported moment=5/0/256/0\n", FIRN_NOTES_NOT_UNDERSTOOD, 1, 21, "from 0 to 255"},
      {"reported moment=9223372036854775808/0/0/0\n", FIRN_NOTES_NOT_UNDERSTOOD, 1, 17, "number"},
      {"reported moment=5/0.5/0/0\n", FIRN_NOTES_NOT_UNDERSTOOD, 1, 19, "whole"},
      {"reported moment=5/0/3/0x\n", FIRN_NOTES_NOT_UNDERSTOOD, 1, 24, "end of the line"},
      {"remark \"x\", about place=0/0/65536/0\n", FIRN_NOTES_NOT_UNDERSTOOD, 1, 29, "65535"},
      {"0-depth=2147483648/0/0 F\n", FIRN_NOTES_NOT_UNDERSTOOD, 1, 9, "2147483647"},
      {"0-depth=5/0/0F\n", FIRN_NOTES_NOT_UNDERSTOOD, 1, 14, "blank"},
      {"extension \"a\", base64 AAE\n", FIRN_NOTES_NOT_UNDERSTOOD, 1, 23, "base64"},
      {"extension \"a\", base64 AA E=\n", FIRN_NOTES_NOT_UNDERSTOOD, 1, 23, "base64"},
      {"extension \"a\", base64 AB==\n", FIRN_NOTES_NOT_UNDERSTOOD, 1, 23, "base64"},
      {"extension \"a\", base64\n", FIRN_NOTES_NOT_UNDERSTOOD, 1, 22, "base64"},
      {"extension urn, base64 AAEC\n", FIRN_NOTES_NOT_UNDERSTOOD, 1, 11, "whose data"},
      {"resistance dense 0 1e999\n", FIRN_NOTES_NOT_UNDERSTOOD, 1, 20, "value"},
      {"resistance dense 0 nan\n", FIRN_NOTES_NOT_UNDERSTOOD, 1, 20, "value"},
      {"resistance dense 0 bits=4294967296\n", FIRN_NOTES_NOT_UNDERSTOOD, 1, 25, "number"},
      {"resistance dense 0 1,5\n", FIRN_NOTES_NOT_UNDERSTOOD, 1, 23, "value"},
      {"resistance dense 0 1 2\n", FIRN_NOTES_NOT_UNDERSTOOD, 1, 22, "comma"},
      {"resistance dense 0 ~, 1 2\n", FIRN_NOTES_NOT_UNDERSTOOD, 1, 23, "depth and its value"},
      {"resistance dense ~ 3\nresistance dense 0 1\n", FIRN_NOTES_NOT_UNDERSTOOD, 2, 18,
       "depth and its value"},
      {"resistance dense ~ ~\n", FIRN_NOTES_NOT_UNDERSTOOD, 1, 18, "depth and its value"},
      {"density dense 0 1\n", FIRN_NOTES_NOT_UNDERSTOOD, 1, 9, "depth"},
      {"weather unreliable ?8\n", FIRN_NOTES_NOT_UNDERSTOOD, 1, 21, "not on this line"},
      {"weather unreliable ?64\n", FIRN_NOTES_NOT_UNDERSTOOD, 1, 21, "from 0 to 63"},
      {"0-5 F unreliable ?3\n", FIRN_NOTES_NOT_UNDERSTOOD, 1, 19, "not on this line"},
      {"HN24 5, unreliable ?40\n", FIRN_NOTES_NOT_UNDERSTOOD, 1, 9, "one of the values"},
      {"edits unread -1\n", FIRN_NOTES_NOT_UNDERSTOOD, 1, 14, "edits"},
      {"remark \"\\xG0\"\n", FIRN_NOTES_NOT_UNDERSTOOD, 1, 9, "escape"},
      {"remark \"\\x4\n", FIRN_NOTES_NOT_UNDERSTOOD, 1, 9, "escape"},
      {"remark \"\\u{7F\n", FIRN_NOTES_NOT_UNDERSTOOD, 1, 9, "escape"},
      // Read without an end before, since the day that is none was not passed over.
      {"ECTP13 down 68 on SH 243107 mm2\n", FIRN_NOTES_NOT_UNDERSTOOD, 1, 22, "a day that exists"},
      {"=\n", FIRN_NOTES_NOT_UNDERSTOOD, 1, 1, "keyword"},
  };
  for (const Case& one : cases) {
    const Failure failure = refusal(one.notes);
    EXPECT_EQ(failure.status, one.status) << one.notes << shown(failure);
    EXPECT_EQ(failure.line, one.line) << one.notes << shown(failure);
    EXPECT_EQ(failure.column, one.column) << one.notes << shown(failure);
    EXPECT_NE(failure.what.find(one.what), std::string::npos) << one.notes << shown(failure);
  }
}

TEST(NotesRefused, AnUnknownKeywordGetsTheNearestOne) {
  const std::vector<std::pair<std::string, std::string>> words = {
      {"observer KL", "observers"},    {"wether sky CLR", "weather"}, {"temps 0 -1", "temp"},
      {"denisty 0-10 100", "density"}, {"signs whumpf yes", "sign"},  {"backfiled yes", "backfilled"}};
  for (const auto& [line, keyword] : words) {
    EXPECT_NE(refusal(line).remedy.find("\"" + keyword + "\""), std::string::npos) << line;
  }
}

TEST(NotesRefused, AllLinesAreReadAndEachFailureIsAnswered) {
  std::vector<Failure> others;
  const Failure first = refusal("pit a\nHS x\nPF 3\ntime noon\nHS 40\n", &others);
  EXPECT_EQ(first.line, 2u);
  ASSERT_EQ(others.size(), 2u);
  EXPECT_EQ(others[0].line, 3u);
  EXPECT_EQ(others[1].line, 4u);
}

TEST(NotesRefused, FailuresDoNotGrowWithoutBound) {
  std::string notes;
  for (int i = 0; i < 50000; ++i) notes += "x\n";
  std::vector<Failure> others;
  EXPECT_EQ(refusal(notes, &others).line, 1u);
  EXPECT_EQ(others.size(), 999u);
}

TEST(NotesRefused, NotesLongerThanTheLimit) {
  NotesOptions options;
  options.max_bytes = 10;
  std::vector<Failure> others;
  EXPECT_EQ(notation::read_notes("HS 46", options, others)->pit->snowpack->hs_10um, 46000);
  auto notes = notation::read_notes("HS 46      ", options, others);
  ASSERT_FALSE(notes);
  EXPECT_EQ(notes.failure().status, FIRN_TOO_LARGE);
}

TEST(NotesRefused, AFailedLineChangesNothing) {
  NotesOptions options;
  options.keep_unread = true;
  const NotesRead notes = read_well(
      "site 2080 m, NE, QQ\nsite NW\nHS 46\nHS 47, water 3 mm\n0-16 F XX\n16-30 4F\nsign whumpf yes, "
      "cracking\n"
      "temp 0 -1, 10 x\ndensity 0-10 100, 10-20 x\nobservers KL, (\nprobe 40 x\n",
      options);
  const firnbook::PitT& pit = *notes.pit;
  EXPECT_FALSE(pit.site->elevation_10um);
  EXPECT_EQ(pit.site->aspect_point, firnbook::CompassPoint::NW);
  EXPECT_EQ(pit.snowpack->hs_10um, 46000);
  EXPECT_FALSE(pit.snowpack->hs_water_10um);
  ASSERT_EQ(pit.layers.size(), 1u);
  EXPECT_EQ(pit.layers[0]->hardness, firnbook::HandHardness::FourFinger);
  EXPECT_TRUE(pit.signs.empty());
  EXPECT_TRUE(pit.temperatures.empty());
  EXPECT_TRUE(pit.densities.empty());
  EXPECT_TRUE(pit.observers.empty());
  EXPECT_TRUE(pit.site->probes_10um.empty());
  const std::vector<std::uint32_t> lines = {1, 4, 5, 7, 8, 9, 10, 11};
  ASSERT_EQ(pit.unread.size(), lines.size());
  ASSERT_EQ(notes.remarks.size(), lines.size());
  for (std::size_t i = 0; i < lines.size(); ++i) {
    EXPECT_EQ(pit.unread[i]->line, lines[i]);
    EXPECT_EQ(notes.remarks[i].line, lines[i]);
    EXPECT_FALSE(pit.unread[i]->expected.empty());
  }
  EXPECT_EQ(pit.unread[2]->text, "0-16 F XX");
  // Kept lines survive printing and reading.
  const Bytes bytes = recording::to_bytes(*notes.pit);
  EXPECT_EQ(bytes_of(print(bytes).text), bytes);
}

TEST(NotesRefused, BytesThatAreNoTextAreNeverKept) {
  NotesOptions options;
  options.keep_unread = true;
  std::vector<Failure> others;
  auto notes = notation::read_notes("pit a\nwhat\xFF\n", options, others);
  ASSERT_FALSE(notes);
  EXPECT_EQ(notes.failure().status, FIRN_BAD_UTF8);
  EXPECT_EQ(notes.failure().line, 2u);
}

TEST(NotesRefused, TheSameThingSaidTwiceIsTakenOnceAndRemarked) {
  const NotesRead notes = read_well("HS 46\nHS 46\n");
  EXPECT_EQ(notes.pit->snowpack->hs_10um, 46000);
  ASSERT_EQ(notes.remarks.size(), 1u);
  EXPECT_EQ(notes.remarks[0].line, 2u);
  EXPECT_NE(notes.remarks[0].what.find("line 1"), std::string::npos);
}

TEST(NotesRefused, AMegabyteOfEachIsAnsweredAtOnce) {
  const std::size_t size = 1 << 20;
  const std::string zeros(size, '0');
  const std::string letters(size, 'A');
  EXPECT_EQ(refusal("extension \"a\", base64 " + letters + "!").column, 23u);
  EXPECT_EQ(refusal("resistance dense 0 1" + zeros).column, 20u);
  EXPECT_EQ(refusal("resistance dense 0 0." + zeros + "1").column, 20u);
  EXPECT_EQ(refusal("resistance dense 0 1e" + zeros + "1").column, 20u);
  EXPECT_EQ(refusal("reported moment=1" + zeros + "/0/0/0").column, 17u);
  std::string escapes = "remark \"";
  while (escapes.size() < size) escapes += "\\xFF";
  EXPECT_EQ(refusal(escapes).line, 1u);
  std::string points = "resistance dense 0 1";
  while (points.size() < size) points += ", 0 1";
  EXPECT_GT(refusal(points + ", x").column, size);
  std::string marks = "weather unreliable";
  while (marks.size() < size) marks += " ?40";
  EXPECT_GT(refusal(marks + " x").column, size);
}

TEST(NotesRefused, ARefusedLineOfPointsChangesNothing) {
  NotesOptions options;
  options.keep_unread = true;
  const NotesRead notes = read_well(
      "ssa dense 0 1, x\nresistance dense 0 1\nresistance dense 1 2, 2\nweather unreliable ?40 x\n", options);
  EXPECT_TRUE(notes.pit->surface_area.empty());
  EXPECT_EQ(notes.pit->hardness[0]->dense_n, (std::vector<float>{1}));
  EXPECT_TRUE(notes.pit->weather == nullptr || notes.pit->weather->unreliable == 0);
  EXPECT_EQ(notes.pit->unread.size(), 3u);
}

// Whatever bytes stand there, an answer comes back; and what was taken prints and reads again.
TEST(NotesRefused, DamagedNotesNeverCrash) {
  std::uint64_t state = 1;
  const auto roll = [&](std::size_t sides) {
    state = state * 6364136223846793005u + 1442695040888963407u;
    return static_cast<std::size_t>(state >> 33) % sides;
  };
  std::size_t taken = 0;
  for (int i = 0; i < 4000; ++i) {
    std::string notes = file_text(kDemoNotes[i % 2]);
    for (std::size_t change = 0; change <= roll(3); ++change) {
      const std::size_t at = roll(notes.size());
      switch (roll(4)) {
        case 0:
          notes[at] = static_cast<char>(roll(256));
          break;
        case 1:
          notes.insert(at, notes.substr(roll(notes.size()), roll(20)));
          break;
        case 2:
          notes.erase(at, roll(8));
          break;
        default:
          notes[at] = "~?U-,\"()0."[roll(10)];
          break;
      }
    }
    NotesOptions options;
    options.keep_unread = i % 3 == 0;
    std::vector<Failure> others;
    auto read = notation::read_notes(notes, options, others);
    if (!read) {
      EXPECT_GT(read.failure().line, 0u);
      EXPECT_GT(read.failure().column, 0u);
      continue;
    }
    ++taken;
    const Bytes bytes = recording::to_bytes(*(*read).pit);
    const Printed printed = print(bytes);
    ASSERT_EQ(bytes_of(printed.text), bytes) << notes << "\nprinted as\n" << printed.text;
  }
  EXPECT_GT(taken, 400u);
}

}  // namespace
}  // namespace firn::tests
