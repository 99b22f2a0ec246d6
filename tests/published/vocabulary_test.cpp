// Published values of the vocabulary and the notation. "read": seen in the source; "secondary": seen in a
// source that quotes it; "from memory": not checked against a text.
#include <gtest/gtest.h>

#include "notation/test_line.h"
#include "vocabulary/codes.h"

namespace firn {
namespace {

using namespace firnbook;

// Index 1 to 6 in the order fist, four fingers, one finger, pencil, knife, ice: powderguide.com, "Snowflurry
// 2 2019/20" (secondary); letters F, 4F, 1F: avalanche.org encyclopedia, snow hardness (secondary); P, K, I
// from memory.
TEST(Published, HandHardnessIndex) {
  const char* order[] = {"F", "4F", "1F", "P", "K", "I"};
  for (int index = 1; index <= 6; ++index) {
    EXPECT_EQ(static_cast<int>(*parse_code<HandHardness>(order[index - 1])), 6 * index);
  }
}

// + and - are a third of a step: common practice in papers, from memory; not in the ICSSG. "1F- = 2.67,
// 1F+ = 3.33".
TEST(Published, HandHardnessThirdsOfAStep) {
  EXPECT_EQ(static_cast<int>(HandHardness::OneFingerMinus) * 100 / 6, 266);
  EXPECT_EQ(static_cast<int>(HandHardness::OneFingerPlus) * 100 / 6, 333);
  for (const Code& row : code_table<HandHardness>()) {
    if (row.code.back() != '+' && row.code.back() != '-') continue;
    const auto plain = parse_code<HandHardness>(row.code.substr(0, row.code.size() - 1));
    ASSERT_TRUE(plain) << row.code;
    EXPECT_EQ(row.value, static_cast<int>(*plain) + (row.code.back() == '+' ? 2 : -2)) << row.code;
  }
}

// Five classes of liquid water, index 1 to 5: codes of ICSSG 2009 from memory; classes of 1990 read (NOHRSC,
// CLPX plan, table 19). A pair lies half way (CAAML 6.0.4 schema, read, has the pairs).
TEST(Published, WetnessClasses) {
  const char* order[] = {"D", "M", "W", "V", "S"};
  for (int index = 1; index <= 5; ++index) {
    EXPECT_EQ(static_cast<int>(*parse_code<Wetness>(order[index - 1])), 2 * index);
  }
  EXPECT_EQ(static_cast<int>(*parse_code<Wetness>("M-W")), 5);
}

// Limits 0.2, 0.5, 1, 2 and 5 mm: ICSSG 2009, from memory. That a value at the limit belongs to the coarser
// class is ours: the standard's ranges touch.
TEST(Published, GrainSizeClasses) {
  struct Row {
    std::int32_t limit_10um;
    const char* below;
    const char* at;
  };
  const Row rows[] = {{20, "very fine", "fine"},
                      {50, "fine", "medium"},
                      {100, "medium", "coarse"},
                      {200, "coarse", "very coarse"},
                      {500, "very coarse", "extreme"}};
  for (const Row& row : rows) {
    EXPECT_EQ(code_of(*size_class(row.limit_10um - 1)), row.below);
    EXPECT_EQ(code_of(*size_class(row.limit_10um)), row.at);
  }
}

// "CTM17 down 30" is the 7th tap from the elbow, with the layer 30 cm below the surface: Avalanche Canada
// glossary, CTE/CTM/CTH (read).
TEST(Published, TheSeventhTapFromTheElbow) {
  const auto tests = notation::parse_test("CTM17 down 30");
  ASSERT_TRUE(tests);
  const FractureT& broken = *tests->front().fractures.at(0);
  ASSERT_EQ(broken.tap, 17);
  EXPECT_EQ(stage_of_tap(*broken.tap), LoadStage::elbow);
  EXPECT_EQ(tap_within_stage(*broken.tap), 7);
  EXPECT_EQ(broken.depth->value_10um(), 30000);
  EXPECT_EQ(broken.depth->datum(), Datum::surface);
}

// Bands 1-10, 11-20, 21-30: a published field guide, page 17 (secondary), and ten taps of each kind, counted
// through: avalanche.org encyclopedia, extended column test (read).
TEST(Published, BandsOfTaps) {
  EXPECT_EQ(stage_of_tap(1), LoadStage::wrist);
  EXPECT_EQ(stage_of_tap(10), LoadStage::wrist);
  EXPECT_EQ(stage_of_tap(11), LoadStage::elbow);
  EXPECT_EQ(stage_of_tap(20), LoadStage::elbow);
  EXPECT_EQ(stage_of_tap(21), LoadStage::shoulder);
  EXPECT_EQ(stage_of_tap(30), LoadStage::shoulder);
  EXPECT_FALSE(stage_of_tap(31));
  const auto fits = [](const char* line) { return static_cast<bool>(notation::parse_test(line)); };
  EXPECT_TRUE(fits("CTE10") && fits("CTM11") && fits("CTM20") && fits("CTH21") && fits("CTH30"));
  EXPECT_FALSE(fits("CTM10") || fits("CTE11") || fits("CTH20") || fits("CTM21") || fits("CT31"));
}

std::string canonical(const char* line) {
  const auto tests = notation::parse_test(line);
  EXPECT_TRUE(tests) << line;
  if (!tests) return {};
  flatbuffers::FlatBufferBuilder builder;
  builder.Finish(StabilityTest::Pack(builder, &tests->front()));
  std::string out;
  notation::append_test(out, *flatbuffers::GetRoot<StabilityTest>(builder.GetBufferPointer()));
  return out;
}

// The pattern `TEST score (character) down DEPTH on FORM SIZE (DATE)`: guidelines, from memory; the examples
// are derived from it (reference B.5).
TEST(Published, NotationExamples) {
  for (const char* line :
       {"CT12 (SC) down 45 on SH 5.0 (240112)", "ECTP14 down 60 on FC 1.5 (240112)",
        "DT18 (SP) down 135 on DH 3.0", "RB4 (WB) down 52 on SH 4.0", "STM down 22 on DF 1.0"}) {
    EXPECT_EQ(canonical(line), line);
  }
}

// PST x/y (Arr, SF or End) down z on yymmdd: a published avalanche-course field book (secondary).
TEST(Published, SawTestNotation) {
  EXPECT_EQ(canonical("PST 34/100 (End) down 56 on 240112"), "PST 34/100 (End) down 56 on (240112)");
  EXPECT_EQ(canonical("PST 35/125 SF"), "PST 35/125 (SF)");
  EXPECT_EQ(canonical("PST 35/125 arr"), "PST 35/125 (Arr)");
}

// ECTPV, ECTP, ECTN and ECTX: a forecast centre's course page (secondary).
TEST(Published, ExtendedColumnCodes) {
  for (const char* line : {"ECTPV", "ECTP13", "ECTN16", "ECTX"}) EXPECT_EQ(canonical(line), line);
}

// Sudden (SP, SC), resistant (RP, PC) and break, in this spelling: CAAML 6.0.4 schema (read), which also has
// the two group codes SDN and RES.
TEST(Published, FractureCharacters) {
  for (const char* code : {"SP", "SC", "RP", "PC", "BRK", "SDN", "RES"}) {
    EXPECT_TRUE(parse_code<FractureCharacter>(code)) << code;
  }
}

// METAR's SKC is no cloud, VV a hidden sky: Navy aviation course, table 1-18 (read).
TEST(Published, MetarSky) {
  EXPECT_EQ(parse_code<SkyCondition>("SKC"), SkyCondition::CLR);
  EXPECT_EQ(parse_code<SkyCondition>("VV"), SkyCondition::X);
}

}  // namespace
}  // namespace firn
