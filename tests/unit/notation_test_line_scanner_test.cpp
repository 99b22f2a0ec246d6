#include <gtest/gtest.h>

#include "notation/scanner.h"

namespace firn::notation {
namespace {

TEST(Scanner, NumbersOfTheSchemasResolution) {
  const auto read = [](std::string_view text, int decimals) {
    return Scanner(text).number("a number", decimals, INT64_MIN, INT64_MAX);
  };
  EXPECT_EQ(read("17", 3)->value, 17000);
  EXPECT_EQ(read("17.5", 3)->value, 17500);
  EXPECT_EQ(read("-9.0", 2)->value, -900);
  EXPECT_EQ(read("+0.4", 2)->value, 40);
  EXPECT_EQ(read(".5", 2)->value, 50);
  EXPECT_EQ(read("-.5", 1)->value, -5);
  EXPECT_EQ(read("-0.0", 2)->value, 0);
  EXPECT_EQ(read("007", 0)->value, 7);
  EXPECT_FALSE(read("17.500000", 3)->rounded);
  EXPECT_EQ(read("9223372036854775807", 0)->value, INT64_MAX);
  EXPECT_EQ(read("-9223372036854775808", 0)->value, INT64_MIN);
  EXPECT_EQ(read("-9223372036854775.808", 3)->value, INT64_MIN);
}

TEST(Scanner, FinerDigitsAreRoundedHalfAwayFromZeroAndSaidSo) {
  const auto read = [](std::string_view text) { return Scanner(text).number("a number", 1, -100, 100); };
  EXPECT_EQ(read("1.25")->value, 13);
  EXPECT_EQ(read("-1.25")->value, -13);
  EXPECT_EQ(read("1.2499999")->value, 12);
  EXPECT_EQ(read("0.05")->value, 1);
  EXPECT_EQ(read("-0.04")->value, 0);
  EXPECT_TRUE(read("1.25")->rounded);
  EXPECT_TRUE(read("1.2000001")->rounded);
  EXPECT_FALSE(read("1.2000000")->rounded);
}

TEST(Scanner, WhatIsNoNumberIsRefusedWithItsColumn) {
  struct Row {
    const char* text;
    const char* what;
    std::uint32_t column;
  };
  const Row rows[] = {
      {"", "expected a depth, found the end of the line", 1},
      {"  deep", "expected a depth, found deep", 3},
      {"--5", "expected a depth, found --5", 1},
      {"5.", "expected a digit after the decimal point, found the end of the line", 3},
      {"17,5", "a comma inside a number", 3},
      {"101", "expected a depth from -100 to 100, found 101", 1},
      {"-101", "expected a depth from -100 to 100, found -101", 1},
      {"99999999999999999999999999999",
       "expected a depth from -100 to 100, found 999999999999999999999999...", 1},
      {"18446744073709551616", "expected a depth from -100 to 100, found 18446744073709551616", 1},
  };
  for (const Row& row : rows) {
    const auto result = Scanner(row.text).number("a depth", 0, -100, 100);
    ASSERT_FALSE(result) << row.text;
    EXPECT_EQ(result.failure().what, row.what);
    EXPECT_EQ(result.failure().column, row.column) << row.text;
    EXPECT_EQ(result.failure().status, FIRN_NOTES_NOT_UNDERSTOOD);
  }
  EXPECT_NE(Scanner("17,5").number("a depth", 3, 0, 99999).failure().remedy.find("17.5"), std::string::npos);
  EXPECT_FALSE(Scanner("9223372036854775808").number("a number", 0, INT64_MIN, INT64_MAX));
  EXPECT_FALSE(Scanner("9223372036854775807.5").number("a number", 0, INT64_MIN, INT64_MAX));
}

TEST(Scanner, ACommaWithABlankSeparatesNumbers) {
  Scanner scanner("38, 45");
  EXPECT_EQ(scanner.number("a depth", 0, 0, 100)->value, 38);
  EXPECT_TRUE(scanner.accept(','));
  EXPECT_EQ(scanner.number("a depth", 0, 0, 100)->value, 45);
  EXPECT_TRUE(scanner.at_end());
}

TEST(Scanner, WholeNumbersRefuseFractions) {
  EXPECT_EQ(*Scanner("12").whole("taps", 1, 30), 12);
  EXPECT_EQ(*Scanner("12.0").whole("taps", 1, 30), 12);
  const auto half = Scanner("12.5").whole("taps", 1, 30);
  ASSERT_FALSE(half);
  EXPECT_EQ(half.failure().what, "expected taps as a whole number, found 12.5");
}

TEST(Scanner, LengthsInTheUnitsOfTheField) {
  const auto read = [](std::string_view text) { return Scanner(text).length("a depth", LengthUnit::cm); };
  EXPECT_EQ(read("68")->value_10um, 68000);
  EXPECT_FALSE(read("68")->unit_written);
  EXPECT_EQ(read("68cm")->value_10um, 68000);
  EXPECT_EQ(read("68 cm")->value_10um, 68000);
  EXPECT_EQ(read("6.5 mm")->value_10um, 650);
  EXPECT_EQ(read("0.68 m")->value_10um, 68000);
  EXPECT_EQ(read("68 M")->value_10um, 68000);  // a class of wind, not a metre
  EXPECT_EQ(read("2080 m")->value_10um, 208000000);
  // 2.54 cm exactly.
  EXPECT_EQ(read("22in")->value_10um, 55880);
  EXPECT_EQ(read("22\"")->value_10um, 55880);
  EXPECT_EQ(read("22 inches")->value_10um, 55880);
  EXPECT_EQ(read("1 ft")->value_10um, 30480);
  EXPECT_FALSE(read("22in")->rounded);
  EXPECT_EQ(read("0.0001in")->value_10um, 0);
  EXPECT_TRUE(read("0.0001in")->rounded);
  EXPECT_EQ(read("0.0002in")->value_10um, 1);
  EXPECT_EQ(read("-0.0002in")->value_10um, -1);
  EXPECT_EQ(read("2147483.647")->value_10um, INT32_MAX);
  EXPECT_EQ(read("-2147483.648")->value_10um, INT32_MIN);
  EXPECT_FALSE(read("2147483.648"));
  EXPECT_FALSE(read("21474.9 m"));
  EXPECT_FALSE(read("999999999 ft"));
  EXPECT_FALSE(read("68cmx"));
  EXPECT_FALSE(read("68x"));
}

TEST(Scanner, AQuoteBehindABlankOpensWordsAndIsNoInchMark) {
  Scanner scanner("40 \"hard\"");
  EXPECT_FALSE(scanner.length("a depth", LengthUnit::cm)->unit_written);
  EXPECT_EQ(*scanner.quoted("words"), "hard");
}

TEST(Scanner, QuotedTextKnowsItsEscapes) {
  EXPECT_EQ(*Scanner(R"("he said \"pop\" \\o/")").quoted("words"), R"(he said "pop" \o/)");
  EXPECT_EQ(*Scanner("\"\"").quoted("words"), "");
  EXPECT_EQ(*Scanner(R"("\n\r\t\u{7f}\u{85}\xC3\x28")").quoted("words"), "\n\r\t\x7F\xC2\x85\xC3(");
  for (const char* wrong :
       {R"("a\q")", R"("a\xG0")", R"("a\x1)", R"("a\u{1}")", R"("a\u{123}")", R"("a\u7F")", R"("a\)"}) {
    const auto escape = Scanner(wrong).quoted("words");
    ASSERT_FALSE(escape) << wrong;
    EXPECT_EQ(escape.failure().column, 3u) << wrong;
  }
  const auto open = Scanner("  \"never closed").quoted("words");
  ASSERT_FALSE(open);
  EXPECT_EQ(open.failure().column, 3u);
  EXPECT_FALSE(Scanner("\"ends in \\").quoted("words"));
  const auto curly = Scanner("\xE2\x80\x9Cnew snow\xE2\x80\x9D").quoted("words");
  ASSERT_FALSE(curly);
  EXPECT_NE(curly.failure().remedy.find("straight"), std::string::npos);
}

TEST(Scanner, QuotedTextPrintsAndReadsBack) {
  std::string out;
  append_quoted(out, "a \"b\" \\ \xD8\xAB\xD9\x84\xD8\xAC");
  EXPECT_EQ(*Scanner(out).quoted("words"), "a \"b\" \\ \xD8\xAB\xD9\x84\xD8\xAC");
  out.clear();
  std::string any;
  for (int byte = 0; byte < 256; ++byte) any += static_cast<char>(byte);
  any += "\xC2\x85 \xC3";
  append_quoted(out, any);
  EXPECT_TRUE(check_readable(out));
  EXPECT_EQ(*Scanner(out).quoted("words"), any);
}

TEST(Scanner, NumbersBehindAWord) {
  constexpr Scanner::Limits kLimits[] = {{INT64_MIN, INT64_MAX}, {0, 255}};
  std::int64_t values[2] = {};
  Scanner scanner(" moment=-9223372036854775808/255?");
  EXPECT_TRUE(*scanner.numbers("moment=", kLimits, 2, values));
  EXPECT_EQ(values[0], INT64_MIN);
  EXPECT_EQ(values[1], 255);
  EXPECT_EQ(scanner.rest(), "?");
  Scanner other("moment 5/0");
  EXPECT_FALSE(*other.numbers("moment=", kLimits, 2, values));
  EXPECT_EQ(other.position(), 0u);
  const std::pair<const char*, std::uint32_t> wrong[] = {
      {"moment=", 8}, {"moment=5", 9}, {"moment=5/256", 10}, {"moment=5/-1", 10}, {"moment=x/1", 8}};
  for (const auto& [text, column] : wrong) {
    const auto read = Scanner(text).numbers("moment=", kLimits, 2, values);
    ASSERT_FALSE(read) << text;
    EXPECT_EQ(read.failure().column, column) << text;
  }
}

TEST(Scanner, WordsEndWhereTheLineSaysSo) {
  Scanner scanner("CT12(SP)@45, not  VALID: x");
  EXPECT_EQ(scanner.peek_letters(), "CT");
  EXPECT_EQ(scanner.take_word(), "CT12");
  EXPECT_TRUE(scanner.accept('('));
  EXPECT_EQ(scanner.take_word(), "SP");
  EXPECT_TRUE(scanner.accept(')'));
  EXPECT_TRUE(scanner.accept('@'));
  EXPECT_EQ(scanner.take_word(), "45");
  EXPECT_TRUE(scanner.accept(','));
  EXPECT_FALSE(scanner.accept("not val"));
  EXPECT_FALSE(scanner.accept("not valid x"));
  EXPECT_TRUE(scanner.accept("not valid"));
  EXPECT_TRUE(scanner.accept(':'));
  EXPECT_TRUE(scanner.accept("x"));
  EXPECT_TRUE(scanner.at_end());
  EXPECT_FALSE(scanner.accept('\0'));
  EXPECT_EQ(scanner.take_word(), "");
}

TEST(Scanner, ColumnsCountCharactersNotBytes) {
  Scanner scanner("\"\xC3\xA9\xC3\xA9\" x");
  ASSERT_TRUE(scanner.quoted("words"));
  EXPECT_EQ(scanner.expected("a depth").column, 6u);
}

TEST(Scanner, UnreadableLinesNameTheColumn) {
  EXPECT_TRUE(check_readable("CT12 \xE2\x86\x92 a\ttab"));
  const auto at = [](std::string_view line) {
    const Done result = check_readable(line);
    EXPECT_FALSE(result);
    EXPECT_EQ(result.failure().status, FIRN_BAD_UTF8);
    return result.failure().column;
  };
  EXPECT_EQ(at("\xC3\xA9 \xFF"), 3u);
  EXPECT_EQ(at(std::string_view("a\0b", 3)), 2u);
  EXPECT_EQ(at("ab\x1B[2J"), 3u);
  EXPECT_EQ(at("ab\x7F"), 3u);
  EXPECT_EQ(at("a\xC2\x85"), 2u);  // a C1 control
  EXPECT_EQ(at("a\xE2\x82"), 2u);  // cut in the middle
}

TEST(Scanner, LongFindingsAreCutShortAtACharacter) {
  std::string word;
  for (int i = 0; i < 20; ++i) word += "\xC3\xA9";
  const Failure failure = Scanner(word).expected("a depth");
  EXPECT_EQ(failure.what, "expected a depth, found " + word.substr(0, 24) + "...");
}

}  // namespace
}  // namespace firn::notation
