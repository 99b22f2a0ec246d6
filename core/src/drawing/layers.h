// What is drawn inside the panel: hand-hardness bars and the temperature line.
#pragma once

#include <cstdint>
#include <string>

#include "drawing/frame.h"
#include "pit/view.h"

namespace firn::drawing {

struct BarsDrawn {
  std::uint32_t without_depth = 0;  // layers that have no place in the panel
  std::uint32_t merged = 0;         // layers too thin to be drawn one by one
  std::uint32_t left_out = 0;       // beyond what a picture can hold
  bool any = false;
  bool any_unknown_hardness = false;
};

// One bar a layer: hardness decides the length, the layer's span the height, a change of hardness within
// the layer slants the end. Equal steps by index; the other usage, lengths by ram resistance, is not drawn.
BarsDrawn append_bars(std::string& out, const Frame& frame, const pit::View& pit);

// 1 to 36 sixths of a step; other numbers stand for no hardness.
inline bool has_hardness(std::uint8_t sixths) {
  return sixths > 0 && sixths <= 36;
}

struct TemperaturesDrawn {
  std::uint32_t without_place = 0;  // readings without a depth or a value
  std::uint32_t beyond_axis = 0;    // drawn at the end of the axis
  bool any = false;
};
TemperaturesDrawn append_temperatures(std::string& out, const Frame& frame, const pit::View& pit);

}  // namespace firn::drawing
