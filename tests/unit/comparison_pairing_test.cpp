// Which layers and points belong together: at the limits, against a plain search, and at size.
#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>
#include <string>
#include <vector>

#include "comparison/pairing.h"
#include "comparison_help.h"

namespace firn::tests {
namespace {

using comparison::Point;
using comparison::PointPair;
using comparison::Span;

std::string pairing(std::string_view reference, std::string_view other, const Parameters& parameters = {}) {
  return Compared(Seen{reference}, Seen{other}, parameters).layers();
}

class Dice {
 public:
  explicit Dice(std::uint64_t seed) : state_(seed) {}
  std::uint32_t roll(std::uint32_t sides) {
    state_ = state_ * 6364136223846793005u + 1442695040888963407u;
    return static_cast<std::uint32_t>(state_ >> 33) % sides;
  }

 private:
  std::uint64_t state_;
};

// Layers on top of each other, some with gaps between them.
std::vector<Span> random_spans(Dice& dice, std::uint32_t most) {
  std::vector<Span> out;
  std::int64_t at = 0;
  for (std::uint32_t i = dice.roll(most + 1); i > 0; --i) {
    if (dice.roll(5) == 0) at += dice.roll(4);
    const std::int64_t thick = dice.roll(6);
    const auto form = static_cast<std::uint8_t>(dice.roll(4) * 10);
    out.push_back({at, at + thick, static_cast<std::uint32_t>(out.size()), form, -1});
    at += thick;
  }
  return out;
}

std::int64_t overlap(const Span& a, const Span& b) {
  return std::min(a.bottom, b.bottom) - std::max(a.top, b.top);
}
bool may_meet(const Span& a, const Span& b) {
  return a.form == 0 || b.form == 0 || a.form == b.form;
}

// The most that layers of no other grains can overlap without crossings, by trying everything.
std::int64_t most_overlap(const std::vector<Span>& a, const std::vector<Span>& b) {
  std::vector<std::vector<std::int64_t>> best(a.size() + 1, std::vector<std::int64_t>(b.size() + 1, 0));
  for (std::size_t i = 1; i <= a.size(); ++i) {
    for (std::size_t j = 1; j <= b.size(); ++j) {
      best[i][j] = std::max(best[i - 1][j], best[i][j - 1]);
      const std::int64_t both = overlap(a[i - 1], b[j - 1]);
      if (both > 0 && may_meet(a[i - 1], b[j - 1]))
        best[i][j] = std::max(best[i][j], best[i - 1][j - 1] + both);
    }
  }
  return best[a.size()][b.size()];
}

TEST(ComparisonPairing, LayersThatOverlapMeet) {
  EXPECT_EQ(pairing("0-16 F PP\n16-40 4F RG", "0-20 F PP\n20-40 4F RG"), "0=0 1=1");
  // Split in two by the other: the larger part is the one.
  EXPECT_EQ(pairing("0-40 4F RG", "0-15 4F RG\n15-40 1F RG"), "-=0 0=1");
  EXPECT_EQ(pairing("0-40 4F RG", "0-20 4F RG\n20-40 1F RG"), "0=0 -=1");
}

// Two thin layers, both seen a centimetre lower: grains decide before the overlap.
TEST(ComparisonPairing, ThinLayersKeepToTheirGrains) {
  EXPECT_EQ(pairing("31-68 1F RG\n68-69 F SH\n69-70 K IF\n70-104 4F FC",
                    "31-69 1F RG\n69-70 F SH\n70-71 K IF\n71-104 4F FC"),
            "0=0 1=1 2=2 3=3");
}

// Other grains at the same place are one layer that two people named differently.
TEST(ComparisonPairing, OtherGrainsAtOnePlaceMeetLast) {
  EXPECT_EQ(pairing("0-16 F PP\n16-17 F SH\n17-40 1F RG", "0-16 F PP\n16-17 F FC\n17-40 1F RG"),
            "0=0 1=1 2=2");
  EXPECT_EQ(pairing("0-16 F ~\n16-40 1F RG", "0-16 F PP\n16-40 1F RG"), "0=0 1=1");
}

TEST(ComparisonPairing, TheDistanceIsALimit) {
  const auto shifted = [](const char* other) {
    return pairing("0-60 1F RG\n60-61 F SH\n61-120 4F FC", other);
  };
  // 5 cm between the two edges that face each other, then a tenth more.
  EXPECT_EQ(shifted("0-66 1F RG\n66-67 F SH\n67-120 4F FC"), "0=0 1=1 2=2");
  EXPECT_EQ(shifted("0-66.1 1F RG\n66.1-67 F SH\n67-120 4F FC"), "0=0 1=- -=1 2=2");
  Parameters wide;
  wide.layer_apart_10um = cm(6);
  EXPECT_EQ(pairing("0-60 1F RG\n60-61 F SH\n61-120 4F FC", "0-66.1 1F RG\n66.1-67 F SH\n67-120 4F FC", wide),
            "0=0 1=1 2=2");
}

// Nearby thin layers of other grains are two layers, each seen by one person.
TEST(ComparisonPairing, NearIsNotEnoughForOtherGrains) {
  EXPECT_EQ(pairing("0-60 1F RG\n60-61 F SH\n61-120 4F FC", "0-62 1F RG\n62-63 K IF\n63-120 4F FC"),
            "0=0 1=- -=1 2=2");
}

TEST(ComparisonPairing, WhatContradictsItselfIsSetAside) {
  const Compared both(Seen{"0-16 F PP\n16-12 F RG\n16-40 1F RG\n20-30 F SH"}, Seen{"0-16 F PP\n16-40 1F RG"});
  // Stored in order of depth, so the layer that ends above its top stands second.
  EXPECT_EQ(both.layers(), "0=0 2=1 1!- 3!-");
  EXPECT_NE(both.note.find("not compared: it ends above its top"), std::string::npos) << both.note;
  EXPECT_NE(both.note.find("not compared: another layer of the same pit covers it"), std::string::npos)
      << both.note;
}

TEST(ComparisonPairing, ALayerWithoutThicknessMeetsItsLike) {
  EXPECT_EQ(pairing("0-60 1F RG\n60-60 F SH\n60-120 4F FC", "0-61 1F RG\n61-61 F SH\n61-120 4F FC"),
            "0=0 1=1 2=2");
}

TEST(ComparisonPairing, AgreesWithAPlainSearch) {
  Dice dice(5);
  std::size_t paired = 0;
  for (int round = 0; round < 20000; ++round) {
    std::vector<Span> a = random_spans(dice, 7), b = random_spans(dice, 7);
    const std::int64_t wanted = most_overlap(a, b);
    comparison::pair_spans(a, b, 2);
    std::int64_t alike = 0;
    std::int32_t last = -1;
    for (std::size_t i = 0; i < a.size(); ++i) {
      if (a[i].partner < 0) continue;
      ++paired;
      ASSERT_GT(a[i].partner, last) << "pairs cross";
      last = a[i].partner;
      const Span& partner = b[static_cast<std::size_t>(a[i].partner)];
      ASSERT_EQ(partner.partner, static_cast<std::int32_t>(i));
      const std::int64_t both = overlap(a[i], partner);
      if (both > 0 && may_meet(a[i], partner)) alike += both;
      if (both <= 0) {
        EXPECT_EQ(a[i].form, partner.form);
        EXPECT_NE(a[i].form, 0);
        EXPECT_GE(both, -2);
      }
    }
    EXPECT_EQ(alike, wanted);
  }
  EXPECT_GT(paired, 20000u);
}

TEST(ComparisonPairing, TheOtherWayRoundIsTheSame) {
  Dice dice(6);
  for (int round = 0; round < 20000; ++round) {
    const std::vector<Span> a = random_spans(dice, 7), b = random_spans(dice, 7);
    std::vector<Span> one = a, two = b, first = b, second = a;
    comparison::pair_spans(one, two, 2);
    comparison::pair_spans(first, second, 2);
    for (std::size_t i = 0; i < a.size(); ++i) EXPECT_EQ(one[i].partner, second[i].partner) << round;
  }
}

TEST(ComparisonPairing, PointsMeetTheNearest) {
  const auto pairs = [](const std::vector<std::int32_t>& a, const std::vector<std::int32_t>& b) {
    std::vector<Point> x, y;
    for (const std::int32_t depth : a) x.push_back({depth, 0});
    for (const std::int32_t depth : b) y.push_back({depth, 0});
    std::vector<PointPair> out;
    comparison::pair_points(x, y, 5, out);
    std::string text;
    for (const PointPair& pair : out) {
      text += (pair.reference < 0 ? "-" : std::to_string(pair.reference)) + "=" +
              (pair.other < 0 ? "-" : std::to_string(pair.other)) + " ";
    }
    return text;
  };
  EXPECT_EQ(pairs({40}, {45}), "0=0 ");
  EXPECT_EQ(pairs({40}, {46}), "0=- -=0 ");
  EXPECT_EQ(pairs({40}, {37, 40}), "-=0 0=1 ");
  EXPECT_EQ(pairs({37, 40}, {40}), "0=- 1=0 ");
  EXPECT_EQ(pairs({}, {1, 2}), "-=0 -=1 ");
  EXPECT_EQ(pairs({INT32_MIN + 1}, {INT32_MAX}), "0=- -=0 ");
  EXPECT_EQ(pairs({10, 20, 30}, {11, 31}), "0=0 1=- 2=1 ");
}

// Ten thousand layers in each pit, thin and all within reach of each other: far from n times m.
TEST(ComparisonPairing, ManyThinLayersTakeNoLongerThanTheyShould) {
  std::vector<Span> a, b;
  constexpr std::uint32_t kMany = 1000000;
  for (std::uint32_t i = 0; i < kMany; ++i) {
    const auto form = static_cast<std::uint8_t>(10 + i % 7 * 10);
    a.push_back({i, i + 1, i, form, -1});
    b.push_back({i + 3, i + 4, i, form, -1});
  }
  const auto start = std::chrono::steady_clock::now();
  comparison::pair_spans(a, b, 5000);
  const auto took = std::chrono::steady_clock::now() - start;
  // n times m would be 10^12 steps.
  EXPECT_LT(std::chrono::duration_cast<std::chrono::seconds>(took).count(), 20);
  EXPECT_GE(a[0].partner, 0);
}

}  // namespace
}  // namespace firn::tests
