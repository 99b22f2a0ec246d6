// Bytes that verify may hold any number; comparing and telling them does no harm and always gives the same.
#include <gtest/gtest.h>

#include <random>
#include <string>
#include <vector>

#include "comparison_help.h"

namespace firn::tests {
namespace {

std::int32_t wild(std::mt19937& random) {
  constexpr std::int32_t kEdges[] = {INT32_MIN, INT32_MIN + 1, -1, 0, 1, INT32_MAX - 1, INT32_MAX};
  if (random() % 3 == 0) return kEdges[random() % 7];
  return static_cast<std::int32_t>(random() % 200) * 1000;
}

firnbook::Depth wild_depth(std::mt19937& random) {
  const auto datum = static_cast<firnbook::Datum>(random() % 8 == 0 ? random() % 256 : 1);
  const auto direction = static_cast<firnbook::Direction>(random() % 8 == 0 ? random() % 256 : 1);
  return {wild(random), datum, direction};
}

firnbook::PitT wild_pit(std::mt19937& random) {
  firnbook::PitT pit;
  if (random() % 2 == 0) {
    pit.snowpack = std::make_unique<firnbook::SnowpackT>();
    pit.snowpack->hs_10um = wild(random);
  }
  for (auto i = random() % 9; i > 0; --i) {
    firnbook::LayerT& layer = add_layer(pit, 0, 0);
    layer.top = random() % 9 == 0 ? nullptr : std::make_unique<firnbook::Depth>(wild_depth(random));
    layer.bottom = std::make_unique<firnbook::Depth>(wild_depth(random));
    layer.hardness = static_cast<firnbook::HandHardness>(random());
    layer.grain_form = static_cast<firnbook::GrainForm>(random() % 100);
    layer.grain_size_10um = wild(random);
    layer.grain_size_max_10um = wild(random);
    layer.wetness = static_cast<firnbook::Wetness>(random());
    layer.unreliable = random();
  }
  for (auto i = random() % 6; i > 0; --i) {
    firnbook::StabilityTestT& test = add_test(pit, static_cast<firnbook::TestKind>(random() % 12));
    test.outcome = static_cast<firnbook::TestOutcome>(random() % 5);
    for (auto k = random() % 4; k > 0; --k) {
      firnbook::FractureT& fracture = add_fracture(test, wild(random));
      if (random() % 4 == 0) fracture.depth = nullptr;
      fracture.tap = static_cast<std::uint8_t>(random());
      fracture.cut_10um = wild(random);
      fracture.character = static_cast<firnbook::FractureCharacter>(random());
      fracture.crossing = static_cast<firnbook::Crossing>(random());
      fracture.stage = static_cast<firnbook::LoadStage>(random());
      fracture.ease = static_cast<firnbook::ShearEase>(random());
      fracture.step = static_cast<std::uint8_t>(random());
    }
  }
  for (auto i = random() % 6; i > 0; --i) add_temperature(pit, wild(random), wild(random));
  pit.title = random() % 2 == 0 ? "" : std::string(5000, '\xFF') + "\x1B[2J";
  for (auto i = random() % 12; i > 0; --i) {
    pit.observers.push_back(std::make_unique<firnbook::ObserverT>());
    pit.observers.back()->name = std::string(3000, 'x');
  }
  return pit;
}

TEST(ComparisonHostile, AnyNumbers) {
  std::mt19937 random(7);
  for (int round = 0; round < 4000; ++round) {
    const Seen reference(wild_pit(random)), other(wild_pit(random));
    ASSERT_TRUE(reference.ok && other.ok);
    const Compared once(reference, other), again(reference, other);
    EXPECT_EQ(once.bytes(), again.bytes());
    EXPECT_EQ(once.note, again.note);
    EXPECT_EQ(once.note.find('\x1B'), std::string::npos);
    // Everything of both pits is there once.
    std::size_t in_reference = 0, in_other = 0;
    for (const LayerPair* one : *once.root->layers()) {
      in_reference += one->reference() >= 0 ? 1u : 0u;
      in_other += one->other() >= 0 ? 1u : 0u;
    }
    EXPECT_EQ(in_reference, reference.view.layers().size());
    EXPECT_EQ(in_other, other.view.layers().size());
    in_reference = in_other = 0;
    for (const TestPair* one : *once.root->tests()) {
      in_reference += one->reference() >= 0 ? 1u : 0u;
      in_other += one->other() >= 0 ? 1u : 0u;
    }
    EXPECT_EQ(in_reference, reference.view.tests().size());
    EXPECT_EQ(in_other, other.view.tests().size());
  }
}

// A comparison may come from elsewhere: its positions and codes are not to be trusted.
TEST(ComparisonHostile, FlippedBitsOfAComparison) {
  const Seen reference(*tarn_shoulder()), other(*larch_bowl_entry());
  const std::vector<std::uint8_t> whole = Compared(reference, other).bytes();
  std::size_t told = 0;
  for (std::size_t bit = 0; bit < whole.size() * 8; ++bit) {
    std::vector<std::uint8_t> bytes = whole;
    bytes[bit / 8] = static_cast<std::uint8_t>(bytes[bit / 8] ^ (1u << bit % 8));
    flatbuffers::Verifier verifier(bytes.data(), bytes.size());
    if (!firnbook::VerifyPitComparisonBuffer(verifier)) continue;
    std::string note;
    comparison::append_note(note, *firnbook::GetPitComparison(bytes.data()), reference.view, other.view);
    EXPECT_FALSE(note.empty());
    ++told;
  }
  EXPECT_GT(told, 1000u);
}

// Told with pits it does not belong to: every position is looked up before it is used.
TEST(ComparisonHostile, OfOtherPits) {
  std::mt19937 random(11);
  for (int round = 0; round < 500; ++round) {
    const Seen reference(wild_pit(random)), other(wild_pit(random));
    const Compared both(reference, other);
    const Seen nothing{firnbook::PitT()};
    std::string note;
    comparison::append_note(note, *both.root, nothing.view, nothing.view);
    comparison::append_note(note, *both.root, other.view, reference.view);
    EXPECT_FALSE(note.empty());
  }
}

TEST(ComparisonHostile, TooMuchIsTold) {
  firnbook::PitT pit;
  for (int i = 0; i < 10000; ++i) add_layer(pit, i * 10, i * 10 + 10);
  const Seen many(pit);
  EXPECT_FALSE(comparison::is_too_large(many.view));
  const Compared both(many, many);
  EXPECT_EQ(both.root->layers()->size(), 10000u);
  EXPECT_EQ(both.layer(9999).pairing(), Pairing::both);
}

}  // namespace
}  // namespace firn::tests
