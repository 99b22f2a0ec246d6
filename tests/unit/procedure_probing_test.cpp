// What probe strikes say, at the limits and under hostile numbers, and that the check says the same.
#include <gtest/gtest.h>

#include <cstdint>
#include <string>
#include <vector>

#include "interpretation_help.h"
#include "procedure/probing.h"

namespace firn::tests {
namespace {

using procedure::OddStrike;
using procedure::ProbeSpread;

ProbeSpread spread(const std::vector<std::int32_t>& strikes) {
  return procedure::spread_of(strikes.data(), strikes.size());
}

TEST(Probing, NothingIsSaidOfNoStrikes) {
  const ProbeSpread none = procedure::spread_of(nullptr, 0);
  EXPECT_EQ(none.count, 0u);
  EXPECT_TRUE(none.too_few());
  EXPECT_FALSE(none.uneven);
  EXPECT_EQ(none.odd, OddStrike::none);
}

TEST(Probing, EvenStrikes) {
  const ProbeSpread even = spread({cm(139), cm(142), cm(137), cm(141)});
  EXPECT_EQ(even.lowest_10um, cm(137));
  EXPECT_EQ(even.highest_10um, cm(142));
  EXPECT_EQ(even.mean_10um, 139750);
  EXPECT_EQ(even.count, 4u);
  EXPECT_FALSE(even.too_few());
  EXPECT_FALSE(even.uneven);
  EXPECT_EQ(even.odd, OddStrike::none);
  EXPECT_NE(std::string(procedure::words_of(even)).find("nothing about what lies between"),
            std::string::npos);
}

TEST(Probing, OneShallowStrikeMeansSomethingBelow) {
  const ProbeSpread rock = spread({cm(140), cm(138), cm(85), cm(142)});
  EXPECT_TRUE(rock.uneven);
  EXPECT_EQ(rock.odd, OddStrike::shallower);
  EXPECT_EQ(rock.odd_at, 2u);
  EXPECT_NE(std::string(procedure::words_of(rock)).find("rock"), std::string::npos);
}

TEST(Probing, OneDeepStrikeMeansAHollow) {
  const ProbeSpread hollow = spread({cm(200), cm(140), cm(138), cm(142)});
  EXPECT_EQ(hollow.odd, OddStrike::deeper);
  EXPECT_EQ(hollow.odd_at, 0u);
  EXPECT_NE(std::string(procedure::words_of(hollow)).find("hollow"), std::string::npos);
}

TEST(Probing, ASlopingBedIsUnevenWithoutAnOddOne) {
  const ProbeSpread slope = spread({cm(80), cm(100), cm(120), cm(140)});
  EXPECT_TRUE(slope.uneven);
  EXPECT_EQ(slope.odd, OddStrike::none);
  // Two strikes far off on the same side are no odd one either.
  EXPECT_EQ(spread({cm(80), cm(82), cm(140), cm(141)}).odd, OddStrike::none);
  EXPECT_EQ(spread({cm(80), cm(140), cm(200)}).odd, OddStrike::none);
}

TEST(Probing, TwoStrikesHaveNoOddOne) {
  const ProbeSpread two = spread({cm(80), cm(140)});
  EXPECT_TRUE(two.uneven);
  EXPECT_TRUE(two.too_few());
  EXPECT_EQ(two.odd, OddStrike::none);
}

// Both limits are strict: a fifth of the mean, and 10 cm.
TEST(Probing, LimitsAreStrict) {
  // Mean 100: exactly 20 cm apart, and a hundredth of a millimetre more.
  EXPECT_FALSE(spread({cm(90), cm(100), cm(110)}).uneven);
  EXPECT_TRUE(spread({cm(90) - 1, cm(100), cm(110) + 1}).uneven);
  // Little snow: a fifth is exceeded, 10 cm are not.
  EXPECT_FALSE(spread({cm(20), cm(25), cm(30)}).uneven);
  EXPECT_TRUE(spread({cm(20), cm(25), cm(30) + 1}).uneven);
  // The gap to the nearest neighbour, by the mean of the rest (100 cm).
  EXPECT_EQ(spread({cm(80), cm(100), cm(100)}).odd, OddStrike::none);
  EXPECT_EQ(spread({cm(80) - 1, cm(100), cm(100)}).odd, OddStrike::shallower);
}

TEST(Probing, WhatIsNoDepthIsLeftOut) {
  const ProbeSpread odd = spread({-1, cm(140), INT32_MIN, cm(85), cm(139), cm(141)});
  EXPECT_EQ(odd.ignored, 2u);
  EXPECT_EQ(odd.count, 4u);
  EXPECT_EQ(odd.odd_at, 3u);
  EXPECT_EQ(odd.lowest_10um, cm(85));
  EXPECT_EQ(spread({-1, -2}).count, 0u);
}

TEST(Probing, HugeNumbersDoNotOverflow) {
  std::vector<std::int32_t> many(1000000, INT32_MAX);
  EXPECT_FALSE(spread(many).uneven);
  many[500000] = 0;
  const ProbeSpread bare = spread(many);
  EXPECT_TRUE(bare.uneven);
  EXPECT_EQ(bare.odd, OddStrike::shallower);
  EXPECT_EQ(bare.odd_at, 500000u);
}

// Sorting says what the single pass says.
TEST(Probing, AgreesWithThePlainDefinition) {
  const auto uneven = [](const std::vector<std::int32_t>& sorted) {
    std::int64_t sum = 0;
    for (const std::int32_t one : sorted) sum += one;
    const std::int64_t range = std::int64_t{sorted.back()} - sorted.front();
    return range > cm(10) && range * 100 * static_cast<std::int64_t>(sorted.size()) > sum * 20;
  };
  std::uint64_t state = 11;
  const auto roll = [&](std::uint32_t sides) {
    state = state * 6364136223846793005u + 1442695040888963407u;
    return static_cast<std::uint32_t>(state >> 33) % sides;
  };
  std::size_t odd_ones = 0;
  for (int round = 0; round < 20000; ++round) {
    std::vector<std::int32_t> strikes;
    for (std::uint32_t i = 3 + roll(4); i > 0; --i)
      strikes.push_back(cm(100 + static_cast<std::int32_t>(roll(15))));
    if (roll(2) == 0) strikes[roll(3)] = cm(static_cast<std::int32_t>(roll(250)));
    const ProbeSpread found = spread(strikes);
    std::vector<std::int32_t> sorted = strikes;
    std::sort(sorted.begin(), sorted.end());
    EXPECT_EQ(found.uneven, uneven(sorted));
    if (found.odd == OddStrike::none) continue;
    ++odd_ones;
    std::vector<std::int32_t> rest = strikes;
    rest.erase(rest.begin() + found.odd_at);
    std::sort(rest.begin(), rest.end());
    EXPECT_FALSE(uneven(rest));
    const bool below = strikes[found.odd_at] < rest.front();
    EXPECT_EQ(found.odd, below ? OddStrike::shallower : OddStrike::deeper);
    EXPECT_TRUE(found.uneven);
    EXPECT_GT(below ? rest.front() - strikes[found.odd_at] : strikes[found.odd_at] - rest.back(), cm(10));
  }
  EXPECT_GT(odd_ones, 1000u);
}

// One number in one place: the check and this function never disagree.
TEST(Probing, TheCheckSaysTheSame) {
  for (std::int32_t highest = cm(100); highest <= cm(140); highest += cm(1)) {
    PitT pit;
    pit.site = std::make_unique<firnbook::SiteT>();
    pit.site->probes_10um = {cm(100), cm(100), highest};
    const Read read(pit);
    bool checked = false;
    for (const firnbook::Check& check : read.analysis.checks) {
      checked = checked || check.code() == firnbook::CheckCode::probing_uneven;
    }
    EXPECT_EQ(checked, spread(pit.site->probes_10um).uneven) << highest;
  }
}

}  // namespace
}  // namespace firn::tests
