// Where things are in the picture: the panel, its three scales, the column of labels. Tenths of a unit.
#pragma once

#include <cstdint>

#include "drawing/profile.h"
#include "drawing/svg.h"
#include "pit/view.h"

namespace firn::drawing {

// Depths beyond this cannot be drawn beside snow that people dig in (ours: 100 m).
inline constexpr std::int32_t kDeepest = 10'000'000;

inline bool drawable(std::int32_t depth) {
  return depth != pit::kUnknown && depth <= kDeepest && depth >= -kDeepest;
}
inline bool drawable(const pit::Layer& layer) {
  return drawable(layer.top) && drawable(layer.bottom);
}
inline bool drawable(const pit::Temperature& reading) {
  return drawable(reading.depth) && reading.cdegc != pit::kUnknown;
}

// Sizes that follow from the width of the picture alone.
struct Page {
  Tenths width, margin, font, title_font, row, gutter;
  Tenths axis_column;  // one column of heights or depths
  bool narrow;
  Tenths inner() const { return width - 2 * margin; }
};
Page page_of(const DrawOptions& options);

// What the vertical axis shows.
enum class Ends : std::uint8_t {
  at_ground,     // heights and depths
  above_ground,  // the pit was not dug to the ground: depths only
  hs_not_known,  // depths only
};

struct Frame {
  Page page;
  Ends ends;
  std::int32_t hs;                  // kUnknown unless at_ground
  std::int32_t depth;               // of the panel's lower edge
  std::int32_t coldest_cdegc;       // at the panel's left edge, a negative number; 0 without temperatures
  Tenths left, right, top, bottom;  // the panel
  Tenths label_left;

  Tenths y(std::int32_t below_surface) const;
  // Hand hardness in equal steps by index: 0 at the right edge, I (36 sixths) at the left.
  Tenths x_of_hardness(std::uint8_t sixths) const;
  // 0 degrees at the right edge. Readings above 0 and beyond the axis are drawn at its ends.
  Tenths x_of_temperature(std::int32_t cdegc) const;
  Tenths label_width() const { return page.width - page.margin - label_left; }
};

// Everything but `top` and `bottom`, which depend on what stands above and on how much there is to label.
Frame frame_of(const pit::View& pit, const DrawOptions& options);

// Axes and guides, under the bars; the panel's edges and the ground, over them.
void append_axes(std::string& out, const Frame& frame);
void append_panel_edges(std::string& out, const Frame& frame);
// Room the temperature axis takes above the panel, and the hardness axis and ground below it.
Tenths room_above(const Frame& frame);
Tenths room_below(const Frame& frame);

}  // namespace firn::drawing
