// Decimal text to scaled integers and to single-precision numbers.
#include <gtest/gtest.h>

#include <cstring>
#include <limits>
#include <string>

#include "exchange/caaml/number.h"

namespace firn::exchange::caaml {
namespace {

struct Case {
  const char* text;
  Reading reading;
  std::int64_t value;
};

TEST(CaamlNumber, HundredthsAreReadExactlyOrRounded) {
  const Case cases[] = {{"1.25", Reading::exact, 125},
                        {"-7.5", Reading::exact, -750},
                        {"+3", Reading::exact, 300},
                        {".5", Reading::exact, 50},
                        {"5.", Reading::exact, 500},
                        {"0.004999", Reading::rounded, 0},
                        {"0.005", Reading::rounded, 1},
                        {"-0.005", Reading::rounded, -1},
                        {"1.2500000000000000000000", Reading::exact, 125},
                        {"1.2500000000000000000001", Reading::rounded, 125},
                        {"2e-1", Reading::exact, 20},
                        {"12E+1", Reading::exact, 12000},
                        {"000000000000000000000000000007", Reading::exact, 700},
                        {"1e999", Reading::too_large, 0},
                        {"1e99999999999999999999", Reading::too_large, 0},
                        {"1e-99999999999999999999", Reading::rounded, 0},
                        {"0e999", Reading::exact, 0},
                        {"12,5", Reading::comma, 1250},
                        {"1,250", Reading::not_clear, 0},
                        {"0,250", Reading::comma, 25},
                        {"1,255", Reading::not_clear, 0},
                        {"1,2555", Reading::comma_rounded, 126},
                        {"1,250.5", Reading::not_clear, 0},
                        {"", Reading::not_a_number, 0},
                        {"-", Reading::not_a_number, 0},
                        {".", Reading::not_a_number, 0},
                        {"1e", Reading::not_a_number, 0},
                        {"1 2", Reading::not_a_number, 0},
                        {"NaN", Reading::not_a_number, 0},
                        {"INF", Reading::not_a_number, 0},
                        {"0x10", Reading::not_a_number, 0}};
  for (const Case& each : cases) {
    std::int64_t value = 0;
    EXPECT_EQ(parse_number(each.text, {1, 2}, value), each.reading) << each.text;
    if (is_read(each.reading)) {
      EXPECT_EQ(value, each.value) << each.text;
    }
  }
}

TEST(CaamlNumber, FeetAndInchesAreExact) {
  std::int64_t value = 0;
  EXPECT_EQ(parse_number("10", {254, 1}, value), Reading::exact);
  EXPECT_EQ(value, 25400);
  EXPECT_EQ(parse_number("6.5", {3048, 1}, value), Reading::exact);
  EXPECT_EQ(value, 198120);
}

TEST(CaamlNumber, TenThousandDigitsAreRead) {
  std::int64_t value = 0;
  EXPECT_EQ(parse_number(std::string(10000, '9'), {1, 0}, value), Reading::too_large);
  EXPECT_EQ(parse_number("0." + std::string(10000, '3'), {1, 3}, value), Reading::rounded);
  EXPECT_EQ(value, 333);
}

TEST(CaamlNumber, FloatsComeBackTheSame) {
  const float edges[] = {0.0F,
                         -0.0F,
                         1.0F,
                         0.1F,
                         -123.456F,
                         16777216.0F,
                         std::numeric_limits<float>::max(),
                         std::numeric_limits<float>::min(),
                         std::numeric_limits<float>::denorm_min()};
  std::uint64_t state = 9;
  std::size_t printed = 0;
  constexpr std::size_t kCount = 100000;
  for (std::size_t i = 0; i < kCount; ++i) {
    state = state * 6364136223846793005u + 1442695040888963407u;
    float value = 0;
    const auto bits = static_cast<std::uint32_t>(state >> 32);
    std::memcpy(&value, &bits, sizeof value);
    if (i < sizeof edges / sizeof edges[0]) value = edges[i];
    std::string text;
    if (!append_float(text, value)) {
      EXPECT_TRUE(text.empty());
      continue;
    }
    ++printed;
    float back = 0;
    ASSERT_TRUE(parse_float(text, back)) << text;
    ASSERT_EQ(std::memcmp(&back, &value, sizeof value), 0) << text;
    EXPECT_LE(text.size(), 20u) << text;
  }
  EXPECT_GT(printed, kCount * 98 / 100);
}

TEST(CaamlNumber, FloatsAreShort) {
  const auto print = [](float value) {
    std::string text;
    append_float(text, value);
    return text;
  };
  EXPECT_EQ(print(0.1F), "0.1");
  EXPECT_EQ(print(20.25F), "20.25");
  EXPECT_EQ(print(100.0F), "100");
  EXPECT_EQ(print(1e20F), "1e20");
  EXPECT_EQ(print(std::numeric_limits<float>::infinity()), "");
  EXPECT_EQ(print(std::numeric_limits<float>::quiet_NaN()), "");
}

}  // namespace
}  // namespace firn::exchange::caaml
