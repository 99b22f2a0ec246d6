#include "notation_test_line_support.h"

namespace firn::notation {
namespace {

using namespace firnbook;

TEST(TestLinePrint, CanonicalLinesStayAsTheyAre) {
  for (const char* line : {
           "CT12 (SP) down 68 on SH 6.0 (270102)",
           "CT11 (SC) down 17; 23 (RP) down 40",
           "CTV (SC)",
           "CTM down 30",
           "CTN",
           "CT not valid: sank in",
           "CT not valid: other \"dog ran through it\"",
           "ECTPV down 20",
           "ECTP13 down 68 on SH",
           "ECTN16 @75",
           "ECTX column 90x30",
           "ECT crack 12 cross 13 rule same tap",
           "ECTP12 cross 13",
           "PST 32/100 (End) down 68 on SH",
           "PST 25 (End)",
           "PST no fracture",
           "RB4 (WB) jump 2 down 52 on SH 4.0",
           "RB7",
           "DT18 (SP) down 135 on DH 3.0 slab left 15",
           "STM down 22 on DF 1.0",
           "hand shear very easy down 12",
           "SF 210.5 N down 35",
           "other \"small block\" (SP) down 40",
           "CT12 down 68 unreliable(depth, tap) \"w\" on FC (RG) 1.0-2.0 no fracture down 80",
           "CT12 down 17 test \"first of two\"",
           "CTM17 (SP)",
       }) {
    const std::string expected = std::string(line) == "CTM17 (SP)" ? "CT17 (SP)" : line;
    EXPECT_EQ(canonical(line), expected);
  }
}

std::string spoken(const char* line) {
  const auto bytes = packed(one(line));
  const StabilityTest& test = unpacked(bytes);
  std::string out;
  const bool broken = test.fractures() != nullptr && test.fractures()->size() > 0;
  append_score(out, test, broken ? test.fractures()->Get(0) : nullptr);
  return out;
}

TEST(TestLinePrint, ScoresAsPeopleSayThem) {
  EXPECT_EQ(spoken("CTM17 down 30"), "CT17");
  EXPECT_EQ(spoken("CT12 (SP) down 68 on SH"), "CT12 (SP)");
  EXPECT_EQ(spoken("CTE (SC)"), "CTE (SC)");
  EXPECT_EQ(spoken("CTN"), "CTN");
  EXPECT_EQ(spoken("CT not valid: sank in"), "CT not valid");
  EXPECT_EQ(spoken("ECTP13 down 68"), "ECTP13");
  EXPECT_EQ(spoken("ECTPV"), "ECTPV");
  EXPECT_EQ(spoken("ECTX"), "ECTX");
  EXPECT_EQ(spoken("ECT crack 12 cross 13"), "ECT crack 12");
  EXPECT_EQ(spoken("PST 32/100 (End) down 68"), "PST 32/100 (End)");
  EXPECT_EQ(spoken("PST 25/END"), "PST 25 (End)");
  EXPECT_EQ(spoken("PST no fracture"), "PST no fracture");
  EXPECT_EQ(spoken("RB4 WB"), "RB4 (WB)");
  EXPECT_EQ(spoken("RB7"), "RB7");
  EXPECT_EQ(spoken("STE"), "STE");
  EXPECT_EQ(spoken("hand shear hard"), "hand shear hard");
  EXPECT_EQ(spoken("SF 210 N"), "SF 210 N");
  EXPECT_EQ(spoken("other \"x\" (SP)"), "other (SP)");
  EXPECT_EQ(spoken("? (SP)"), "test (SP)");
  // What a pit holds is said as it is, also where no column takes so many taps.
  EXPECT_EQ(spoken("CT crack 45"), "CT45");
}

TEST(TestLinePrint, EveryFractureOfASawTestNamesItsColumnWhenSpoken) {
  const auto bytes = packed(one("PST 40/100 (Arr); 62 (End)"));
  std::string out;
  append_score(out, unpacked(bytes), unpacked(bytes).fractures()->Get(1));
  EXPECT_EQ(out, "PST 62/100 (End)");
}

TEST(TestLinePrint, WordsOfSeveralLinesAreEscaped) {
  StabilityTestT test;
  test.kind = TestKind::CT;
  test.words = "two\nlines \xFF";
  const auto bytes = packed(test);
  std::string out;
  append_test(out, unpacked(bytes));
  EXPECT_EQ(out, R"(CT "two\nlines \xFF")");
  EXPECT_EQ(one(out).words, test.words);
}

}  // namespace
}  // namespace firn::notation
