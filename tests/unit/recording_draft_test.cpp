#include "recording/draft.h"

#include <gtest/gtest.h>

#include <cstring>

#include "recording_help.h"

namespace firn::tests {
namespace {

using namespace firnbook;
using recording::from_bytes;
using recording::to_bytes;

std::vector<std::int32_t> layer_tops(const Pit& pit) {
  std::vector<std::int32_t> tops;
  for (const Layer* layer : *pit.layers()) tops.push_back(layer->top() ? layer->top()->value_10um() : -1);
  return tops;
}

TEST(Draft, LayersAndReadingsAreKeptFromTheSurfaceDown) {
  PitT pit;
  add_layer(pit, cm(30), cm(60));
  add_layer(pit, cm(0), cm(10));
  add_layer(pit, cm(10), cm(30));
  add_temperature(pit, cm(20), -400);
  add_temperature(pit, cm(0), -900);
  add_density(pit, cm(40), cm(50), 3000);
  add_density(pit, cm(5), cm(15), 2000);
  const Bytes bytes = to_bytes(pit);
  const Pit& read_back = read(bytes);
  EXPECT_EQ(layer_tops(read_back), (std::vector<std::int32_t>{0, cm(10), cm(30)}));
  EXPECT_EQ(read_back.temperatures()->Get(0)->depth()->value_10um(), 0);
  EXPECT_EQ(read_back.densities()->Get(0)->readings()->Get(0)->top()->value_10um(), cm(5));
  EXPECT_EQ(read_back.schema_minor(), pit::kSchemaMinor);
}

TEST(Draft, HeightsAreOrderedAmongDepthsOnlyWhenTheHeightOfSnowIsKnown) {
  const auto build = [](bool with_hs) {
    PitT pit;
    add_layer(pit, 0, 0).top = std::make_unique<Depth>(up(cm(20)));
    add_layer(pit, 0, 0).top = std::make_unique<Depth>(up(cm(90)));
    add_layer(pit, cm(50), cm(60));
    add_layer(pit, 0, 0).top = std::make_unique<Depth>(nowhere_from(cm(1)));
    pit.layers.push_back(std::make_unique<LayerT>());
    if (with_hs) {
      pit.snowpack = std::make_unique<SnowpackT>();
      pit.snowpack->hs_10um = cm(100);
    }
    return to_bytes(pit);
  };
  EXPECT_EQ(layer_tops(read(build(true))), (std::vector<std::int32_t>{cm(90), cm(50), cm(20), cm(1), -1}));
  EXPECT_EQ(layer_tops(read(build(false))), (std::vector<std::int32_t>{cm(50), cm(90), cm(20), cm(1), -1}));
}

TEST(Draft, TheSameContentGivesTheSameBytesInWhateverOrderItCame) {
  const Bytes expected = to_bytes(*tarn_shoulder());
  Dice dice(1);
  for (int i = 0; i < 20; ++i) {
    auto pit = tarn_shoulder();
    dice.shuffle(pit->layers);
    dice.shuffle(pit->temperatures);
    dice.shuffle(pit->densities[0]->readings);
    EXPECT_EQ(to_bytes(*pit), expected);
  }
}

TEST(Draft, BytesOfABuiltPitComeBackUnchanged) {
  const Bytes once = to_bytes(*tarn_shoulder());
  auto pit = from_bytes(read(once));
  ASSERT_TRUE(pit);
  EXPECT_EQ(to_bytes(**pit), once);
}

TEST(Draft, TestsSignsAndFracturesKeepTheOrderInWhichTheyCame) {
  PitT pit;
  StabilityTestT& test = add_test(pit, TestKind::CT);
  add_fracture(test, cm(80));
  add_fracture(test, cm(20));
  add_sign(pit, SignKind::cracking, Answer::no);
  add_sign(pit, SignKind::whumpf, Answer::yes);
  const Bytes bytes = to_bytes(pit);
  EXPECT_EQ(read(bytes).tests()->Get(0)->fractures()->Get(0)->depth()->value_10um(), cm(80));
  EXPECT_EQ(*read(bytes).signs()->Get(0)->kind(), SignKind::cracking);
}

TEST(Draft, EmptyTablesListsAndTextsAreLeftOut) {
  PitT pit;
  pit.weather = std::make_unique<WeatherT>();
  pit.operation = std::make_unique<OperationT>();
  add_layer(pit, 0, cm(5)).name = std::make_unique<LayerNameT>();
  StabilityTestT& test = add_test(pit, TestKind::CT);
  add_fracture(test, cm(3)).on = std::make_unique<LayerT>();
  test.fractures[0]->on->name = std::make_unique<LayerNameT>();
  const Bytes bytes = to_bytes(pit);
  const Pit& read_back = read(bytes);
  EXPECT_EQ(read_back.weather(), nullptr);
  EXPECT_EQ(read_back.operation(), nullptr);
  EXPECT_EQ(read_back.title(), nullptr);
  EXPECT_EQ(read_back.temperatures(), nullptr);
  EXPECT_EQ(read_back.layers()->Get(0)->name(), nullptr);
  EXPECT_EQ(read_back.layers()->Get(0)->words(), nullptr);
  EXPECT_EQ(read_back.layers()->Get(0)->candidates(), nullptr);
  EXPECT_EQ(read_back.tests()->Get(0)->fractures()->Get(0)->on(), nullptr);
}

// A writer may leave anything in the padding of a struct; it is no part of what was seen.
TEST(Draft, PaddingOfTheWriterDoesNotReachTheBytes) {
  const auto build = [](unsigned char filler) {
    Depth depth = down(cm(7));
    unsigned char raw[sizeof(Depth)];
    std::memcpy(raw, &depth, sizeof raw);
    raw[6] = raw[7] = filler;
    std::memcpy(static_cast<void*>(&depth), raw, sizeof raw);
    PitT pit;
    add_layer(pit, 0, 0).top = std::make_unique<Depth>(depth);
    add_test(pit, TestKind::CT).unbroken.push_back(depth);
    return to_bytes(pit);
  };
  EXPECT_EQ(build(0), build(0xAB));
}

TEST(Draft, PlacesFollowTheThingsTheyName) {
  PitT pit;
  add_layer(pit, cm(30), cm(60)).words = "deep";
  add_layer(pit, cm(0), cm(30)).words = "shallow";
  add_density(pit, cm(40), cm(50), 3000);
  add_density(pit, cm(5), cm(15), 2000);
  const auto about = [&](Place place) {
    pit.remarks.push_back(std::make_unique<RemarkT>());
    pit.remarks.back()->text = "x";
    pit.remarks.back()->about = std::make_unique<Place>(place);
  };
  about({0, -1, 5, Thing::layer});
  about({1, -1, 65535, Thing::boundary});
  about({0, 0, 2, Thing::density});
  about({99, -1, 65535, Thing::layer});  // nothing stood there: kept as it was written
  about({-1, -1, 6, Thing::site});
  const Bytes bytes = to_bytes(pit);
  const auto& remarks = *read(bytes).remarks();
  EXPECT_EQ(remarks.Get(0)->about()->index(), 1);
  EXPECT_EQ(remarks.Get(0)->about()->field(), 5);
  EXPECT_EQ(remarks.Get(1)->about()->index(), 0);
  EXPECT_EQ(remarks.Get(2)->about()->index(), 0);
  EXPECT_EQ(remarks.Get(2)->about()->sub(), 1);
  EXPECT_EQ(remarks.Get(3)->about()->index(), 99);
  EXPECT_EQ(remarks.Get(4)->about()->index(), -1);
}

TEST(Draft, ANewerMinorVersionIsNotUnpacked) {
  flatbuffers::FlatBufferBuilder builder;
  PitBuilder pit(builder);
  pit.add_schema_minor(pit::kSchemaMinor + 1);
  FinishPitBuffer(builder, pit.Finish());
  const auto result = from_bytes(*GetPit(builder.GetBufferPointer()));
  ASSERT_FALSE(result);
  EXPECT_EQ(result.failure().status, FIRN_NEWER_SCHEMA);
}

// Verified bytes may still share one long text among many tables; unpacked it would fill the memory.
TEST(Draft, BytesThatShareOneTextAmongManyTablesAreNotUnpacked) {
  flatbuffers::FlatBufferBuilder builder;
  const auto text = builder.CreateString(std::string(1 << 20, 'x'));
  std::vector<flatbuffers::Offset<Layer>> layers;
  for (int i = 0; i < 10000; ++i) {
    LayerBuilder layer(builder);
    layer.add_words(text);
    layers.push_back(layer.Finish());
  }
  const auto list = builder.CreateVector(layers);
  PitBuilder pit(builder);
  pit.add_layers(list);
  FinishPitBuffer(builder, pit.Finish());
  ASSERT_LT(builder.GetSize(), 2u << 20);
  pit::AlignedBytes aligned;
  const auto verified = pit::verify(builder.GetBufferPointer(), builder.GetSize(), {}, aligned);
  ASSERT_TRUE(verified);
  const auto result = from_bytes(**verified);
  ASSERT_FALSE(result);
  EXPECT_EQ(result.failure().status, FIRN_TOO_LARGE);
}

TEST(Draft, TenThousandLayersAreSortedInNoTime) {
  PitT pit;
  Dice dice(3);
  for (int i = 0; i < 10000; ++i) {
    const auto top = static_cast<std::int32_t>(dice.roll(1000000));
    add_layer(pit, top, top + 10);
  }
  const Bytes bytes = to_bytes(pit);
  const auto tops = layer_tops(read(bytes));
  EXPECT_TRUE(std::is_sorted(tops.begin(), tops.end()));
}

}  // namespace
}  // namespace firn::tests
