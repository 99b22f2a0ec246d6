#include "support/place.h"

#include <gtest/gtest.h>

#include "support/result.h"

namespace firn {
namespace {

using firnbook::Thing;

TEST(Path, SpeaksAsPeopleMeasure) {
  using firnbook::Layer;
  EXPECT_EQ(path_of(place_of(Thing::layer, 2, field_id(Layer::VT_TOP))), "layers[2].top_cm");
  EXPECT_EQ(path_of(place_of(Thing::layer, 0, field_id(Layer::VT_GRAIN_SIZE_10UM))),
            "layers[0].grain_size_mm");
  EXPECT_EQ(path_of(place_of(Thing::layer, 0, field_id(Layer::VT_GRAIN_SIZE_MAX_10UM))),
            "layers[0].grain_size_max_mm");
  EXPECT_EQ(path_of(place_of(Thing::layer, 0, field_id(Layer::VT_HARDNESS))), "layers[0].hardness");
  EXPECT_EQ(path_of(place_of(Thing::snowpack, -1, field_id(firnbook::Snowpack::VT_HS_10UM))),
            "snowpack.hs_cm");
  EXPECT_EQ(path_of(place_of(Thing::snowpack, -1, field_id(firnbook::Snowpack::VT_HS_WATER_10UM))),
            "snowpack.hs_water_mm");
}

TEST(Path, UnitsOfTheSite) {
  using firnbook::Site;
  const auto site = [](int vtable_offset) {
    return path_of(place_of(Thing::site, -1, field_id(vtable_offset)));
  };
  EXPECT_EQ(site(Site::VT_ELEVATION_10UM), "site.elevation_m");
  EXPECT_EQ(site(Site::VT_POSITION_ACCURACY_10UM), "site.position_accuracy_m");
  EXPECT_EQ(site(Site::VT_BLURRED_BY_10UM), "site.blurred_by_m");
  EXPECT_EQ(site(Site::VT_LATITUDE_E7DEG), "site.latitude_deg");
  EXPECT_EQ(site(Site::VT_SLOPE_DEG), "site.slope_deg");
  EXPECT_EQ(site(Site::VT_PROBES_10UM), "site.probes_cm");
  EXPECT_EQ(path_of(place_of(Thing::probe, 3, kWholeThing)), "site.probes_cm[3]");
}

TEST(Path, ThingsInsideThings) {
  EXPECT_EQ(path_of(place_of(Thing::fracture, 2, field_id(firnbook::Fracture::VT_DEPTH), 0)),
            "tests[2].fractures[0].depth_cm");
  EXPECT_EQ(path_of(place_of(Thing::density, 0, field_id(firnbook::DensityReading::VT_DENSITY_DKGM3), 4)),
            "densities[0].readings[4].density_kgm3");
  EXPECT_EQ(
      path_of(place_of(Thing::temperature, 7, field_id(firnbook::TemperatureReading::VT_TEMPERATURE_CDEGC))),
      "temperatures[7].temperature_degc");
  // Without the inner position the path still names the inner list: its fields are not the outer thing's.
  EXPECT_EQ(path_of(place_of(Thing::fracture, 2, field_id(firnbook::Fracture::VT_DEPTH))),
            "tests[2].fractures.depth_cm");
}

TEST(Path, WholeThings) {
  EXPECT_EQ(path_of(whole_pit()), "pit");
  EXPECT_EQ(path_of(place_of(Thing::test, 1, kWholeThing)), "tests[1]");
  EXPECT_EQ(path_of(place_of(Thing::weather, -1, kWholeThing)), "weather");
  EXPECT_EQ(path_of(place_of(Thing::boundary, 1, kWholeThing)), "boundaries[1]");
  EXPECT_EQ(path_of(place_of(Thing::pit, -1, field_id(firnbook::Pit::VT_BACKFILLED))), "backfilled");
}

// Places come from bytes as well: any number may stand in them.
TEST(Path, HostilePlaces) {
  EXPECT_EQ(path_of(place_of(static_cast<Thing>(200), 5, 3)), "pit");
  EXPECT_EQ(path_of(place_of(Thing::pit, 5, kWholeThing)), "pit");
  EXPECT_EQ(path_of(place_of(Thing::site, 5, field_id(firnbook::Site::VT_NAME))), "site.name");
  EXPECT_EQ(path_of(place_of(Thing::layer, 1, 999)), "layers[1]");
  EXPECT_EQ(path_of(place_of(Thing::layer, INT32_MIN, 0)), "layers.top_cm");
  EXPECT_EQ(path_of(place_of(Thing::boundary, INT32_MAX, 0, INT32_MIN)), "boundaries[2147483647]");
}

// Every thing of the schema has a row of its own, in the schema's order, and every field of it a name.
TEST(Path, EveryThingAndEveryField) {
  for (const Thing thing : firnbook::EnumValuesThing()) {
    const std::string whole = path_of(place_of(thing, 0, kWholeThing, 0));
    EXPECT_EQ(whole == "pit", thing == Thing::pit) << firnbook::EnumNameThing(thing);
    std::string previous = whole;
    for (std::uint16_t field = 0; field < 8; ++field) {
      const std::string path = path_of(place_of(thing, 0, field, 0));
      if (path == whole) break;
      EXPECT_NE(path, previous);
      EXPECT_EQ(path.find("_10um"), std::string::npos);
      previous = path;
    }
  }
}

}  // namespace
}  // namespace firn
