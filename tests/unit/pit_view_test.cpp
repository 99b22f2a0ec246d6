#include "pit/view.h"

#include <gtest/gtest.h>

#include <memory>
#include <string>
#include <vector>

#include "../pits.h"
#include "pit/verify.h"

namespace firn::pit {
namespace {

using namespace firn::tests;  // NOLINT: builders
using firnbook::Datum;
using firnbook::Depth;
using firnbook::Direction;

// A view with the bytes it looks into.
struct Decoded {
  explicit Decoded(const firnbook::PitT& pit) : bytes(bytes_of(pit)) {
    const auto verified = verify(bytes.data(), bytes.size(), {}, aligned);
    EXPECT_TRUE(verified) << verified.failure().what;
    if (verified) view.decode(**verified);
  }
  std::vector<std::uint8_t> bytes;
  AlignedBytes aligned;
  View view;
};

firnbook::PitT with_hs(std::int32_t hs, Direction direction = Direction::unknown) {
  firnbook::PitT pit;
  pit.snowpack = std::make_unique<firnbook::SnowpackT>();
  pit.snowpack->hs_10um = hs;
  if (direction != Direction::unknown) pit.snowpack->direction = direction;
  return pit;
}

std::int32_t below(const firnbook::PitT& pit, std::int32_t value, Datum datum, Direction direction) {
  const Decoded decoded(pit);
  const Depth depth(value, datum, direction);
  return decoded.view.below_surface(&depth);
}

TEST(BelowSurface, EveryDatum) {
  const firnbook::PitT pit = with_hs(cm(140));
  EXPECT_EQ(below(pit, cm(68), Datum::surface, Direction::unknown), cm(68));
  EXPECT_EQ(below(pit, cm(68), Datum::ground, Direction::unknown), cm(72));
  EXPECT_EQ(below(pit, cm(68), Datum::unknown, Direction::unknown), kUnknown);
  EXPECT_EQ(below(pit, cm(68), static_cast<Datum>(3), Direction::unknown), kUnknown);
  EXPECT_EQ(Decoded(pit).view.below_surface(nullptr), kUnknown);
}

TEST(BelowSurface, HeightsNeedHs) {
  const firnbook::PitT pit;
  EXPECT_EQ(below(pit, cm(68), Datum::ground, Direction::unknown), kUnknown);
  EXPECT_EQ(below(pit, cm(68), Datum::surface, Direction::unknown), cm(68));
}

TEST(BelowSurface, DirectionsAreNeverMixed) {
  const firnbook::PitT vertical = with_hs(cm(140), Direction::vertical);
  EXPECT_EQ(below(vertical, cm(10), Datum::surface, Direction::vertical), cm(10));
  EXPECT_EQ(below(vertical, cm(10), Datum::surface, Direction::unknown), cm(10));
  EXPECT_EQ(below(vertical, cm(10), Datum::surface, Direction::slope_normal), kUnknown);
  EXPECT_EQ(below(vertical, cm(10), Datum::ground, Direction::slope_normal), kUnknown);
  const firnbook::PitT normal = with_hs(cm(140), Direction::slope_normal);
  EXPECT_EQ(below(normal, cm(10), Datum::surface, Direction::slope_normal), cm(10));
  EXPECT_EQ(below(normal, cm(10), Datum::surface, Direction::vertical), kUnknown);
}

TEST(BelowSurface, TheFirstLayerThatSaysGivesThePitItsDirection) {
  firnbook::PitT pit = with_hs(cm(140));
  EXPECT_EQ(Decoded(pit).view.direction(), Direction::vertical);
  add_layer(pit, 0, cm(10));
  *add_layer(pit, cm(10), cm(20)).top = Depth(cm(10), Datum::surface, Direction::slope_normal);
  EXPECT_EQ(Decoded(pit).view.direction(), Direction::slope_normal);
  pit.snowpack->direction = Direction::vertical;
  EXPECT_EQ(Decoded(pit).view.direction(), Direction::vertical);
}

TEST(BelowSurface, OverflowIsUnknown) {
  EXPECT_EQ(below(with_hs(INT32_MAX), -1, Datum::ground, Direction::unknown), kUnknown);
  EXPECT_EQ(below(with_hs(INT32_MAX), INT32_MIN, Datum::ground, Direction::unknown), kUnknown);
  EXPECT_EQ(below(with_hs(-2), INT32_MAX, Datum::ground, Direction::unknown), kUnknown);
  EXPECT_EQ(below(with_hs(-1), INT32_MAX, Datum::ground, Direction::unknown), kUnknown);  // INT32_MIN itself
  EXPECT_EQ(below(with_hs(0), INT32_MAX, Datum::ground, Direction::unknown), -INT32_MAX);
  EXPECT_EQ(below(with_hs(INT32_MAX), 0, Datum::ground, Direction::unknown), INT32_MAX);
  EXPECT_EQ(below(with_hs(cm(1)), INT32_MIN, Datum::surface, Direction::unknown), kUnknown);
}

TEST(Layers, AreSortedByDepthAndUnknownOnesComeLastInStoredOrder) {
  firnbook::PitT pit;
  add_layer(pit, cm(50), cm(60));
  *add_layer(pit, 0, cm(1)).top = nowhere_from(cm(5));
  add_layer(pit, cm(10), cm(50));
  add_layer(pit, 0, cm(10));
  add_layer(pit, cm(10), cm(20));
  add_layer(pit, 0, 0).top.reset();
  const Decoded decoded(pit);
  std::vector<std::uint32_t> stored;
  for (const Layer& layer : decoded.view.layers()) stored.push_back(layer.stored);
  EXPECT_EQ(stored, (std::vector<std::uint32_t>{3, 4, 2, 0, 1, 5}));
  EXPECT_EQ(decoded.view.layers()[4].top, kUnknown);
  EXPECT_FALSE(decoded.view.layers()[4].has_span());
}

TEST(Layers, EqualLayersKeepTheirStoredOrder) {
  firnbook::PitT pit;
  for (int i = 0; i < 40; ++i) add_layer(pit, cm(10), cm(20));
  const Decoded decoded(pit);
  for (std::uint32_t i = 0; i < 40; ++i) EXPECT_EQ(decoded.view.layers()[i].stored, i);
}

TEST(Layers, HardnessOfPartsWinsOverTheWhole) {
  using firnbook::HandHardness;
  firnbook::PitT pit;
  add_layer(pit, 0, cm(10)).hardness = HandHardness::Fist;
  firnbook::LayerT& graded = add_layer(pit, cm(10), cm(20));
  graded.hardness = HandHardness::Fist;
  graded.hardness_bottom = HandHardness::Pencil;
  add_layer(pit, cm(20), cm(30));
  const Decoded decoded(pit);
  const std::vector<Layer>& layers = decoded.view.layers();
  EXPECT_EQ(layers[0].hardness_top, 6);
  EXPECT_EQ(layers[0].hardness_bottom, 6);
  EXPECT_EQ(layers[1].hardness_top, 6);
  EXPECT_EQ(layers[1].hardness_bottom, 24);
  EXPECT_EQ(layers[2].hardness_top, 0);
  EXPECT_EQ(layers[2].size, kUnknown);
}

TEST(Boundaries, OnlyWhereLayersTouch) {
  firnbook::PitT pit;
  add_layer(pit, 0, cm(10));
  add_layer(pit, cm(10), cm(20));
  add_layer(pit, cm(21), cm(30));  // a gap above
  add_layer(pit, cm(29), cm(40));  // an overlap above
  add_layer(pit, cm(40), cm(50)).bottom.reset();
  add_layer(pit, cm(50), cm(60));
  const Decoded decoded(pit);
  const std::vector<Boundary>& boundaries = decoded.view.boundaries();
  ASSERT_EQ(boundaries.size(), 2u);
  EXPECT_EQ(boundaries[0].depth, cm(10));
  EXPECT_EQ(boundaries[0].above, 0u);
  EXPECT_EQ(boundaries[0].below, 1u);
  EXPECT_EQ(boundaries[1].depth, cm(40));
  EXPECT_EQ(boundaries[1].above, 3u);
}

TEST(LayerAt, TopInclusiveBottomExclusiveAndTheGroundBelongsToTheLast) {
  const Decoded decoded(*tarn_shoulder());
  const View& view = decoded.view;
  EXPECT_EQ(view.layer_at(0), 0);
  EXPECT_EQ(view.layer_at(cm(16) - 1), 0);
  EXPECT_EQ(view.layer_at(cm(16)), 1);
  EXPECT_EQ(view.layer_at(cm(68)), 3);
  EXPECT_EQ(view.layer_at(cm(69)), 4);
  EXPECT_EQ(view.layer_at(cm(140)), 6);
  EXPECT_EQ(view.layer_at(cm(140) + 1), -1);
  EXPECT_EQ(view.layer_at(-1), -1);
  EXPECT_EQ(view.layer_at(kUnknown), -1);
  EXPECT_EQ(view.layer_at(INT32_MAX), -1);
}

TEST(LayerAt, GapsAndUnknownLayers) {
  firnbook::PitT pit;
  add_layer(pit, cm(5), cm(10));
  add_layer(pit, cm(20), cm(30));
  *add_layer(pit, 0, cm(1)).top = nowhere_from(0);
  const Decoded decoded(pit);
  EXPECT_EQ(decoded.view.layer_at(0), -1);
  EXPECT_EQ(decoded.view.layer_at(cm(10)), -1);
  EXPECT_EQ(decoded.view.layer_at(cm(15)), -1);
  EXPECT_EQ(decoded.view.layer_at(cm(30)), 1);  // the last layer whose place is known
  EXPECT_EQ(Decoded(firnbook::PitT()).view.layer_at(0), -1);
}

TEST(Tests, FracturesLieFlatWithTheirTests) {
  const Decoded decoded(*tarn_shoulder());
  const View& view = decoded.view;
  ASSERT_EQ(view.tests().size(), 5u);
  ASSERT_EQ(view.fractures().size(), 5u);
  EXPECT_EQ(view.tests()[4].kind, firnbook::TestKind::PST);
  EXPECT_EQ(view.tests()[4].column_length, cm(100));
  EXPECT_EQ(view.tests()[4].first_fracture, 4u);
  EXPECT_EQ(view.fractures()[4].cut, cm(32));
  EXPECT_EQ(view.fractures()[1].tap, 12);
  EXPECT_EQ(view.fractures()[1].depth, cm(68));
  EXPECT_EQ(view.fractures()[3].crossing, static_cast<std::uint8_t>(firnbook::Crossing::crossed));
}

TEST(Readings, TemperaturesAreSortedAndKeepTheirPlace) {
  firnbook::PitT pit;
  add_temperature(pit, cm(30), -300);
  add_temperature(pit, cm(10), -100);
  *pit.temperatures.emplace_back(std::make_unique<firnbook::TemperatureReadingT>()) = {};
  add_temperature(pit, cm(20), -200);
  const Decoded decoded(pit);
  std::vector<std::uint32_t> stored;
  for (const Temperature& reading : decoded.view.temperatures()) stored.push_back(reading.stored);
  EXPECT_EQ(stored, (std::vector<std::uint32_t>{1, 3, 0, 2}));
  EXPECT_EQ(decoded.view.temperatures()[3].depth, kUnknown);
}

TEST(Decode, AViewUsedAgainHoldsNothingOfThePitBefore) {
  const Decoded first(*tarn_shoulder());
  View view = first.view;
  const Decoded empty{firnbook::PitT()};
  view.decode(empty.view.raw());
  EXPECT_TRUE(view.layers().empty());
  EXPECT_TRUE(view.boundaries().empty());
  EXPECT_TRUE(view.tests().empty());
  EXPECT_TRUE(view.fractures().empty());
  EXPECT_TRUE(view.temperatures().empty());
  EXPECT_TRUE(view.densities().empty());
  EXPECT_EQ(view.hs(), kUnknown);
  EXPECT_EQ(view.slope_deg(), kUnknown);
  EXPECT_EQ(view.aspect_deg(), kUnknown);
}

TEST(Decode, AspectFromDegreesOrPoint) {
  const auto pit = tarn_shoulder();
  EXPECT_EQ(Decoded(*pit).view.aspect_deg(), 45);
  pit->site->aspect_deg = std::uint16_t{50};
  EXPECT_EQ(Decoded(*pit).view.aspect_deg(), 50);
  pit->site->aspect_deg = flatbuffers::nullopt;
  pit->site->aspect_point = firnbook::CompassPoint::none;
  EXPECT_EQ(Decoded(*pit).view.aspect_deg(), kUnknown);
  pit->site->aspect_point = firnbook::CompassPoint::NW;
  EXPECT_EQ(Decoded(*pit).view.aspect_deg(), 315);
}

TEST(Decode, SaysWhenAPitComesFromANewerVersion) {
  firnbook::PitT pit;
  pit.schema_minor = kSchemaMinor;
  EXPECT_FALSE(Decoded(pit).view.newer());
  pit.schema_minor = kSchemaMinor + 1;
  EXPECT_TRUE(Decoded(pit).view.newer());
}

}  // namespace
}  // namespace firn::pit
