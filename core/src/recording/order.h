// The order of depths in one pit, for sorting and for telling what lies inside what.
#pragma once

#include <cstdint>
#include <tuple>

#include "schemas/pit_generated.h"

namespace firn::recording {

// Depths below the surface come first; then heights that cannot be turned into depths because HS is not
// known, the highest first; then what has no datum or was not given. Keys of different scales cannot be
// compared with each other, only put one after the other.
struct DepthKey {
  enum Scale : std::uint8_t { below_surface, above_ground, not_known };
  Scale scale = not_known;
  std::int64_t value = 0;

  bool operator<(const DepthKey& other) const {
    return std::tie(scale, value) < std::tie(other.scale, other.value);
  }
  bool operator==(const DepthKey& other) const { return scale == other.scale && value == other.value; }
};

// The direction does not count here: one pit is measured along one line, and an order must not depend on
// who measured otherwise.
inline DepthKey depth_key(const firnbook::Depth* depth, const flatbuffers::Optional<std::int32_t>& hs) {
  if (depth == nullptr) return {};
  const std::int64_t value = depth->value_10um();
  if (depth->datum() == firnbook::Datum::surface) return {DepthKey::below_surface, value};
  if (depth->datum() != firnbook::Datum::ground) return {};
  if (!hs) return {DepthKey::above_ground, -value};
  return {DepthKey::below_surface, std::int64_t{*hs} - value};
}

inline flatbuffers::Optional<std::int32_t> hs_of(const firnbook::PitT& pit) {
  if (pit.snowpack == nullptr) return flatbuffers::nullopt;
  return pit.snowpack->hs_10um;
}

}  // namespace firn::recording
