// Heights of new snow and their water, beside HS. Limits of densities: reference list of derived checks.
#include "checking/rules.h"

namespace firn::checking {
namespace {

using firnbook::Snowpack;

constexpr std::int64_t kWater = 1000;  // kg/m3
constexpr std::int64_t kIce = 917;
constexpr std::int64_t kLightest = 10;
constexpr std::int64_t kHeaviestNewSnow = 300;

Place snowpack_place(int vtable_offset) {
  return place_of(Thing::snowpack, -1, field_id(vtable_offset));
}

struct NewSnow {
  flatbuffers::Optional<std::int32_t> height, water;
  int height_field, water_field;
};

void check_negative(const flatbuffers::Optional<std::int32_t>& value, int field, Reporter& out) {
  if (value && *value < 0) out.add(CheckCode::new_snow_negative, snowpack_place(field), *value);
}

void check_one(const NewSnow& snow, std::int32_t hs, Reporter& out) {
  check_negative(snow.height, snow.height_field, out);
  check_negative(snow.water, snow.water_field, out);
  if (!snow.height || *snow.height < 0) return;
  if (hs != pit::kUnknown && hs >= 0 && *snow.height > hs) {
    out.add(CheckCode::new_snow_deeper_than_snow, snowpack_place(snow.height_field), *snow.height, hs);
  }
  if (!snow.water || *snow.water < 0 || *snow.height == 0) return;
  const std::int64_t mass = *snow.water * kWater;
  const std::int64_t height = *snow.height;
  if (mass < kLightest * height || mass > kHeaviestNewSnow * height) {
    out.add(CheckCode::new_snow_density_unusual, snowpack_place(snow.water_field), *snow.water, *snow.height,
            mass * 10 / height);
  }
}

}  // namespace

void check_new_snow(const pit::View& pit, Reporter& out) {
  const Snowpack* snow = pit.raw().snowpack();
  if (snow == nullptr) return;
  const std::int32_t hs = pit.hs();
  check_one(
      {snow->hn24_10um(), snow->hn24_water_10um(), Snowpack::VT_HN24_10UM, Snowpack::VT_HN24_WATER_10UM}, hs,
      out);
  check_one({snow->hin_10um(), snow->hin_water_10um(), Snowpack::VT_HIN_10UM, Snowpack::VT_HIN_WATER_10UM},
            hs, out);
  check_one({snow->hst_10um(), snow->hst_water_10um(), Snowpack::VT_HST_10UM, Snowpack::VT_HST_WATER_10UM},
            hs, out);
  const flatbuffers::Optional<std::int32_t> water = snow->hs_water_10um();
  check_negative(water, Snowpack::VT_HS_WATER_10UM, out);
  if (water && hs != pit::kUnknown && hs >= 0 && *water * kWater > kIce * hs) {
    out.add(CheckCode::water_exceeds_ice, snowpack_place(Snowpack::VT_HS_WATER_10UM), *water, hs);
  }
}

}  // namespace firn::checking
