// What changes layers and depths as a whole: splitting, joining, and a height of snow that turned out
// different.
#pragma once

#include <cstddef>
#include <cstdint>
#include <memory>

#include "schemas/pit_generated.h"

namespace firn::recording {

// The layer cut in two at `at`: it becomes the upper half, the lower half is returned. Both keep what was
// known, save that what belongs to the top stays above and what belongs to the bottom below.
std::unique_ptr<firnbook::LayerT> split(firnbook::LayerT& layer, const firnbook::Depth& at);

// Two layers as one. What both know comes from the upper or the lower one as `upper_wins` says; the top and
// what belongs to it come from the upper one, likewise the bottom; a concern of either is never lost.
std::unique_ptr<firnbook::LayerT> join(firnbook::LayerT& upper, firnbook::LayerT& lower, bool upper_wins);

// What a layer takes in a pit under construction, measured as in overlay.h.
std::size_t content_of(const firnbook::LayerT& layer);

// What happens to each Depth counted from the surface: times `multiply` / `divide` (not 0), rounded half
// away from zero, plus `add`.
struct DepthMap {
  std::int32_t multiply = 1, divide = 1, add = 0;
};
// Whether every depth would stay in the range of its number.
bool can_map_depths(const firnbook::PitT& pit, const DepthMap& map);
void map_depths(firnbook::PitT& pit, const DepthMap& map);

}  // namespace firn::recording
