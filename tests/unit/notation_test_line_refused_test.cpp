// What is refused, with what was expected, where, and how to mend it.
#include "notation_test_line_support.h"

namespace firn::notation {
namespace {

struct Refused {
  const char* line;
  std::uint32_t column;
  const char* what;    // part of it
  const char* remedy;  // part of it
  firn_status status = FIRN_NOTES_NOT_UNDERSTOOD;
};

void expect_refused(const Refused& row) {
  const auto tests = parse_test(row.line);
  ASSERT_FALSE(tests) << row.line;
  const Failure& failure = tests.failure();
  EXPECT_EQ(failure.status, row.status) << row.line;
  EXPECT_EQ(failure.column, row.column) << row.line << ": " << failure.what;
  EXPECT_NE(failure.what.find(row.what), std::string::npos) << row.line << ": " << failure.what;
  EXPECT_NE(failure.remedy.find(row.remedy), std::string::npos) << row.line << ": " << failure.remedy;
}

TEST(TestLineRefused, KindsAndScores) {
  const Refused rows[] = {
      {"", 1, "expected a test result", "other"},
      {"whatever", 1, "expected a test result", "in words"},
      {"ETCN16 at 75", 1, "found ETCN16", "did you mean ECTN16?"},
      {"ETC down 4", 1, "found ETC", "did you mean ECT?"},
      {"TCM17", 1, "found TCM17", "did you mean CTM17?"},
      {"KB 3", 1, "expected a test result", "other \"small block\""},
      {"CTA12", 1, "expected a test result", ""},
      {"CT0", 3, "taps from 1 to 30", ""},
      {"CT31", 3, "taps from 1 to 30", "N or X"},
      {"CT99999999999999999999", 3, "taps from 1 to 30", ""},
      {"CT12.5", 3, "whole number", ""},
      {"CT12SP", 3, "whole number", ""},
      {"CTV3", 4, "nothing behind V", ""},
      {"CTN3", 4, "nothing behind N", ""},
      {"ECT12", 4, "P, N or X", "crack 12"},
      {"ECTP31", 5, "taps from 1 to 30", ""},
      {"ECTPV3", 6, "nothing behind V", ""},
      {"ECTX5", 5, "nothing behind X", ""},
      {"PST 32/deep", 8, "length of the column", ""},
      {"PST 32,5/100", 7, "a comma inside a number", "17.5"},
      {"PST 12/40in", 5, "without the unit", "12in/40in"},
      {"RB8", 3, "a step from 1 to 7", "RB7"},
      {"RB0", 3, "a step from 1 to 7", ""},
      {"RB45", 3, "a step from 1 to 7", ""},
      {"SF 210", 7, "N behind a force", ""},
  };
  for (const Refused& row : rows) expect_refused(row);
}

TEST(TestLineRefused, LetterAndNumberMustAgree) {
  const Refused rows[] = {
      {"CTE11", 4, "E stands for taps 1 to 10", "M17", FIRN_NOTES_CONTRADICT},
      {"CTM10", 4, "M stands for taps 11 to 20", "", FIRN_NOTES_CONTRADICT},
      {"CTM21", 4, "M stands for taps 11 to 20", "", FIRN_NOTES_CONTRADICT},
      {"CTM 7", 5, "M stands for taps 11 to 20", "", FIRN_NOTES_CONTRADICT},
      {"CTH20", 4, "H stands for taps 21 to 30", "", FIRN_NOTES_CONTRADICT},
      {"DTE11", 4, "E stands for taps 1 to 10", "", FIRN_NOTES_CONTRADICT},
      {"CT5; M7", 7, "M stands for", "", FIRN_NOTES_CONTRADICT},
  };
  for (const Refused& row : rows) expect_refused(row);
}

TEST(TestLineRefused, ContradictionsInsideALine) {
  const Refused rows[] = {
      {"CT12 down 40 down 50", 14, "depth given twice", "one of them", FIRN_NOTES_CONTRADICT},
      {"CT12 SP RP", 9, "character given twice", "", FIRN_NOTES_CONTRADICT},
      {"CTN (SP)", 6, "nothing broke", "", FIRN_NOTES_CONTRADICT},
      {"ECTX on SH", 6, "nothing broke", "words", FIRN_NOTES_CONTRADICT},
      {"RB7 (WB)", 6, "nothing broke", "", FIRN_NOTES_CONTRADICT},
      {"CT12 no fracture", 6, "behind a fracture", "of its own", FIRN_NOTES_CONTRADICT},
      {"CT no fracture SP", 16, "nothing broke", "", FIRN_NOTES_CONTRADICT},
      {"CT12; N", 7, "behind a fracture", "", FIRN_NOTES_CONTRADICT},
      {"RB4; 7", 6, "behind a fracture", "", FIRN_NOTES_CONTRADICT},
      {"CTN not valid: sank in", 5, "outcome given twice", "", FIRN_NOTES_CONTRADICT},
      {"PST 32/100 column length 90", 12, "given twice", "", FIRN_NOTES_CONTRADICT},
      {"CTN x2 x3", 8, "given twice", "", FIRN_NOTES_CONTRADICT},
  };
  for (const Refused& row : rows) expect_refused(row);
}

TEST(TestLineRefused, WhatStandsBehindTheScore) {
  const Refused rows[] = {
      {"CT12 down", 10, "a depth in cm", ""},
      {"CT12 down deep", 11, "a depth in cm", ""},
      {"CT12 down 17,5", 13, "a comma inside a number", "17.5"},
      {"CT12 down 65-70", 13, "one depth", "\"65-70\""},
      {"CT12 down 9999999999", 11, "a depth in cm from", ""},
      {"CT12 75", 6, "a depth with its sign or unit", "@68"},
      {"CT12 (SP", 6, "never closed", ""},
      {"CT12 ()", 7, "a character", ""},
      {"CT12 (XX) down 4", 7, "a character (SP, SC, RP, PC, BRK)", "quotation marks"},
      {"CT12 pop", 6, "a character", "that is often SP"},
      {"CT12 on", 8, "a character", ""},
      {"CT12 on a rain crust", 11, "a grain form", "IFrc or MFcr"},
      {"CT12 on SH (271302)", 13, "a day that exists", ""},
      {"CT12 on SH (270230)", 13, "a day that exists", ""},
      {"CT12 \"open", 6, "never closed", ""},
      {"CT12 \"\"", 6, "empty quotation marks", ""},
      {"CT12 unreliable", 16, "what is unreliable", "unreliable(depth, tap)"},
      {"CT12 unreliable(everything)", 17, "the name of a value", ""},
      {"CT12 unreliable(?64)", 20, "a field number", ""},
      {"CT12 stage Z", 12, "stage (V, E, M, H)", ""},
      {"CT12 ends round", 11, "column ends (vertical, slope normal)", ""},
      {"CT12 column 30", 15, "the other side", "30x90"},
      {"CT not valid: rained", 15, "reason (sank in, broke while cutting", ""},
      {"CT12; ", 7, "a further fracture", "23 (RP) down 40"},
      {"CT12 stiff snow above", 6, "a character", "quotation marks"},
  };
  for (const Refused& row : rows) {
    SCOPED_TRACE(row.line);
    expect_refused(row);
  }
}

// Seen in public observations (reference, interpretation sources 10.1).
TEST(TestLineRefused, Variants_10_1) {
  const Refused rows[] = {
      {"CT19 and CT22", 6, "the end of this test", "a line of its own"},
      {"CT4 and CT5 (Q1, SP)", 5, "the end of this test", "; 23 (RP) down 40"},
      {"CT15, CT28 SP Q1", 7, "the end of this test", "a line of its own"},
      {"CT11 down 17; CT13 down 17", 15, "the end of this test", "without the kind"},
      {"ECTP21 Q2.5 at 40 in", 8, "Q1, Q2 or Q3", "\"Q2.5\""},
      {"ECTP16, ECTP18; PST 25/END", 9, "the end of this test", ""},
      {"PST 30/100 End at 75 cm; facets 1-2 mm at a rain crust", 26, "a character", "may be FC"},
  };
  for (const Refused& row : rows) {
    SCOPED_TRACE(row.line);
    expect_refused(row);
  }
}

TEST(TestLineRefused, HostileLines) {
  EXPECT_EQ(parse_test("CT12 \xFF").failure().status, FIRN_BAD_UTF8);
  EXPECT_EQ(parse_test(std::string_view("CT12 \0 SP", 9)).failure().column, 6u);
  EXPECT_FALSE(parse_test(std::string(1 << 20, 'C')));
  EXPECT_FALSE(parse_test("CT12 " + std::string(1 << 20, '(')));
  EXPECT_FALSE(parse_test("CT" + std::string(1 << 20, '9')));
  EXPECT_FALSE(parse_test("CT12 Q1\xE2\x82\xAC\xE2\x82\xAC\xE2\x82\xAC"));
  EXPECT_FALSE(parse_test("ETC\xE2\x82\xAC\xE2\x82\xAC"));
  std::string many = "CT1";
  for (int i = 0; i < 20000; ++i) many += "; 1 (SP)";
  EXPECT_EQ(parse_test(many)->front().fractures.size(), 20001u);
  many = "CTN";
  for (int i = 0; i < 60000; ++i) many += " no fracture @1in";
  std::vector<Failure> remarks;
  EXPECT_EQ(parse_test(many, remarks)->front().unbroken.size(), 60000u);
  EXPECT_EQ(remarks.size(), 60000u);
  const std::string words(1 << 20, 'w');
  EXPECT_EQ(parse_test("CT1 \"" + words + "\"")->front().fractures[0]->words, words);
}

// Every prefix of a good line is read or refused, never worse; a refusal says something.
TEST(TestLineRefused, EveryPrefixAndEveryFlippedBit) {
  const std::string line =
      "ECTP12 (SP, Q1) cross 13 down 68.5 vertical unreliable(depth) \"w\" on 4F FC(RG) 1.0-2.0 (270102 "
      "buried) "
      "column 90x30 no fracture down 40; N25 @80 test \"x\"";
  ASSERT_TRUE(parse_test(line)) << parse_test(line).failure().what;
  const auto consider = [](const std::string& text) {
    const auto tests = parse_test(text);
    if (tests) return;
    EXPECT_FALSE(tests.failure().what.empty()) << text;
    EXPECT_GE(tests.failure().column, 1u);
  };
  for (std::size_t i = 0; i < line.size(); ++i) consider(line.substr(0, i));
  for (std::size_t i = 0; i < line.size() * 8; ++i) {
    std::string flipped = line;
    flipped[i / 8] = static_cast<char>(flipped[i / 8] ^ (1 << i % 8));
    consider(flipped);
  }
}

}  // namespace
}  // namespace firn::notation
