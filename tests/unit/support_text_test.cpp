#include "support/text.h"

#include <gtest/gtest.h>

#include <cstdint>
#include <string>

namespace firn {
namespace {

std::string integer(std::int64_t value) {
  std::string out;
  append_integer(out, value);
  return out;
}
std::string fixed(std::int64_t value, int decimals) {
  std::string out;
  append_fixed(out, value, decimals);
  return out;
}
std::string rounded(std::int64_t value, int decimals, int keep) {
  std::string out;
  append_rounded(out, value, decimals, keep);
  return out;
}
std::string xml(std::string_view text) {
  std::string out;
  append_xml(out, text);
  return out;
}

TEST(Integer, PrintsTheWholeRange) {
  EXPECT_EQ(integer(0), "0");
  EXPECT_EQ(integer(-1), "-1");
  EXPECT_EQ(integer(10), "10");
  EXPECT_EQ(integer(INT64_MAX), "9223372036854775807");
  EXPECT_EQ(integer(INT64_MIN), "-9223372036854775808");
}

TEST(Integer, AppendsAndKeepsWhatStood) {
  std::string out = "HS ";
  append_integer(out, 140);
  EXPECT_EQ(out, "HS 140");
}

TEST(Fixed, LeavesOutTrailingZerosAndPoint) {
  EXPECT_EQ(fixed(1250, 2), "12.5");
  EXPECT_EQ(fixed(1200, 2), "12");
  EXPECT_EQ(fixed(0, 3), "0");
  EXPECT_EQ(fixed(5, 0), "5");
  EXPECT_EQ(fixed(7, 3), "0.007");
  EXPECT_EQ(fixed(70, 3), "0.07");
  EXPECT_EQ(fixed(1007, 3), "1.007");
  EXPECT_EQ(fixed(100007, 5), "1.00007");
}

TEST(Fixed, KeepsTheSignBelowOne) {
  EXPECT_EQ(fixed(-50, 2), "-0.5");
  EXPECT_EQ(fixed(-1, 3), "-0.001");
  EXPECT_EQ(fixed(-900, 2), "-9");
}

TEST(Fixed, PrintsTheEndsOfTheRange) {
  EXPECT_EQ(fixed(INT64_MIN, 18), "-9.223372036854775808");
  EXPECT_EQ(fixed(INT64_MAX, 1), "922337203685477580.7");
  EXPECT_EQ(fixed(INT64_MIN, 0), "-9223372036854775808");
}

TEST(Rounded, RoundsHalfAwayFromZero) {
  EXPECT_EQ(rounded(125, 2, 1), "1.3");
  EXPECT_EQ(rounded(-125, 2, 1), "-1.3");
  EXPECT_EQ(rounded(124, 2, 1), "1.2");
  EXPECT_EQ(rounded(5, 1, 0), "1");
  EXPECT_EQ(rounded(4, 1, 0), "0");
  EXPECT_EQ(rounded(9999, 3, 1), "10.0");
}

TEST(Rounded, NeverPrintsMinusZero) {
  EXPECT_EQ(rounded(-4, 1, 0), "0");
  EXPECT_EQ(rounded(-4, 3, 1), "0.0");
  EXPECT_EQ(rounded(-5, 1, 0), "-1");
}

TEST(Rounded, PrintsAllDecimalsAskedFor) {
  EXPECT_EQ(rounded(12, 0, 2), "12.00");
  EXPECT_EQ(rounded(125, 1, 3), "12.500");
  EXPECT_EQ(rounded(125, 1, 1), "12.5");
  EXPECT_EQ(rounded(-7, 2, 4), "-0.0700");
}

TEST(Rounded, DoesNotOverflowWhenZerosAreAdded) {
  EXPECT_EQ(rounded(INT64_MAX, 0, 3), "9223372036854775807.000");
  EXPECT_EQ(rounded(INT64_MIN, 2, 6), "-92233720368547758.080000");
  EXPECT_EQ(rounded(INT64_MIN, 18, 0), "-9");
  EXPECT_EQ(rounded(INT64_MAX, 1, 0), "922337203685477581");
}

TEST(Lengths, PrintAsPeopleMeasure) {
  std::string out;
  append_cm(out, 68000);
  out += ' ';
  append_cm(out, 1);
  out += ' ';
  append_mm(out, 150);
  EXPECT_EQ(out, "68 0.001 1.5");
}

TEST(Utf8, MeasuresWellFormedCharacters) {
  EXPECT_EQ(utf8_length("a"), 1u);
  EXPECT_EQ(utf8_length("\xC2\xA0"), 2u);
  EXPECT_EQ(utf8_length("\xDF\xBF"), 2u);
  EXPECT_EQ(utf8_length("\xE0\xA0\x80"), 3u);
  EXPECT_EQ(utf8_length("\xED\x9F\xBF"), 3u);
  EXPECT_EQ(utf8_length("\xEF\xBF\xBF"), 3u);
  EXPECT_EQ(utf8_length("\xF0\x90\x80\x80"), 4u);
  EXPECT_EQ(utf8_length("\xF4\x8F\xBF\xBF"), 4u);
  EXPECT_EQ(utf8_length(std::string_view("\0", 1)), 1u);
}

TEST(Utf8, RefusesWhatIsNot) {
  const std::string_view bad[] = {
      "",
      "\x80",              // continuation alone
      "\xC0\xAF",          // overlong
      "\xC1\xBF",          // overlong
      "\xE0\x9F\xBF",      // overlong
      "\xF0\x8F\xBF\xBF",  // overlong
      "\xED\xA0\x80",      // surrogate
      "\xED\xBF\xBF",      // surrogate
      "\xF4\x90\x80\x80",  // beyond U+10FFFF
      "\xF5\x80\x80\x80",
      "\xFF",
      "\xC2",          // cut off
      "\xE2\x82",      // cut off
      "\xF0\x9F\x98",  // cut off
      "\xC2\x41",      // second byte is no continuation
      "\xE2\x82\x41",
      "\xF0\x9F\x98\xC0",
  };
  for (const std::string_view text : bad) {
    EXPECT_EQ(utf8_length(text), 0u);
    EXPECT_EQ(is_utf8(text), text.empty());
  }
  EXPECT_TRUE(is_utf8("Larchwater \xD7\xA9\xD7\x9C\xD7\x92 \xF0\x9F\x8F\x94"));
  EXPECT_FALSE(is_utf8("Larch\xFFwater"));
}

TEST(Xml, EscapesMarkup) {
  EXPECT_EQ(xml("<a b=\"c\" d='e'>&</a>"), "&lt;a b=&quot;c&quot; d=&#39;e&#39;&gt;&amp;&lt;/a&gt;");
}

TEST(Xml, LeavesOutEveryControlCharacter) {
  for (int character = 0; character < 0xA0; ++character) {
    const bool second = character >= 0x80;
    std::string text = "a";
    if (second) text += '\xC2';
    text += static_cast<char>(character);
    text += 'b';
    const bool is_control = character < 0x20 || character >= 0x7F;
    if (!is_control) continue;
    const bool is_space = character == '\t' || character == '\n';
    EXPECT_EQ(xml(text), is_space ? "a b" : "ab") << character;
  }
  EXPECT_EQ(xml("a\xC2\xA0z"), "a\xC2\xA0z");  // the first one after them stays
}

TEST(Xml, ReplacesWhatXmlMayNotHold) {
  EXPECT_EQ(xml("\xEF\xBF\xBE\xEF\xBF\xBF"), "\xEF\xBF\xBD\xEF\xBF\xBD");
  EXPECT_EQ(xml("a\xFF\xC2z"), "a\xEF\xBF\xBD\xEF\xBF\xBDz");
  EXPECT_EQ(xml("\xED\xA0\x80"), "\xEF\xBF\xBD\xEF\xBF\xBD\xEF\xBF\xBD");
}

TEST(Xml, KeepsOtherScripts) {
  const std::string text = "\xD7\xA9\xD7\x9C\xD7\x92 \xE9\x9B\xAA \xF0\x9F\x8F\x94";
  EXPECT_EQ(xml(text), text);
}

TEST(Calendar, EveryDayOfFourHundredYearsThereAndBack) {
  // One whole cycle of the calendar, counted by hand from 1970-01-01.
  std::int64_t day = 0;
  for (std::int64_t year = 1970; year < 2370; ++year) {
    for (int month = 1; month <= 12; ++month) {
      for (int d = 1; d <= days_in_month(year, month); ++d, ++day) {
        const std::int64_t seconds = day * 86400 + 86399;
        const CalendarTime time = calendar_time(seconds);
        ASSERT_EQ(time.year, year);
        ASSERT_EQ(time.month, month);
        ASSERT_EQ(time.day, d);
        ASSERT_EQ(time.hour, 23);
        ASSERT_EQ(time.minute, 59);
        ASSERT_EQ(time.second, 59);
        ASSERT_EQ(seconds_of(time), seconds);
      }
    }
  }
  EXPECT_EQ(day, 146097);
}

TEST(Calendar, KnownMoments) {
  EXPECT_EQ(seconds_of(CalendarTime{1970, 1, 1, 0, 0, 0}), 0);
  EXPECT_EQ(seconds_of(CalendarTime{2000, 3, 1, 0, 0, 0}), 951868800);
  EXPECT_EQ(seconds_of(CalendarTime{2026, 11, 28, 10, 5, 0}), 1795860300);
  EXPECT_EQ(seconds_of(CalendarTime{1969, 12, 31, 23, 59, 59}), -1);
}

TEST(Calendar, BeforeItsZeroAndAtTheEndsOfTheRange) {
  const std::int64_t seconds[] = {-1, -86400, -86401, -62135596800, -62167219200, -99999999999, 253402300799};
  for (const std::int64_t s : seconds) EXPECT_EQ(seconds_of(calendar_time(s)), s);
  const CalendarTime before = calendar_time(-1);
  EXPECT_EQ(before.year, 1969);
  EXPECT_EQ(before.month, 12);
  EXPECT_EQ(before.day, 31);
  EXPECT_EQ(before.second, 59);
  for (const std::int64_t s : {INT64_MIN, INT64_MAX}) {
    const CalendarTime time = calendar_time(s);
    EXPECT_TRUE(time.month >= 1 && time.month <= 12);
    EXPECT_TRUE(time.day >= 1 && time.day <= 31);
    EXPECT_TRUE(time.hour >= 0 && time.hour < 24 && time.second >= 0 && time.second < 60);
  }
}

TEST(Calendar, LeapYears) {
  EXPECT_EQ(days_in_month(2000, 2), 29);
  EXPECT_EQ(days_in_month(1900, 2), 28);
  EXPECT_EQ(days_in_month(2028, 2), 29);
  EXPECT_EQ(days_in_month(2027, 2), 28);
  EXPECT_EQ(days_in_month(-4, 2), 29);
  EXPECT_EQ(days_in_month(2027, 4), 30);
  EXPECT_EQ(days_in_month(2027, 12), 31);
}

}  // namespace
}  // namespace firn
