// The column of labels beside the panel: layers, tests, densities, concerns, each joined by a leader to the
// depth it speaks of.
#pragma once

#include <cstdint>
#include <string>

#include "drawing/columns.h"
#include "drawing/concerns.h"
#include "drawing/frame.h"
#include "pit/view.h"

namespace firn::drawing {

struct LabelsMade {
  std::uint32_t layers_left_out = 0;
  std::uint32_t tests_left_out = 0;
  std::uint32_t densities_left_out = 0;
  bool any_unreliable = false;
};

// Fills `column`. Anchors need the panel's height, which needs the labels' height: call place_labels after
// the frame's top and bottom are known.
LabelsMade make_labels(Column& column, const Frame& frame, const pit::View& pit,
                       const ConcernMarks& concerns);
void place_labels(Column& column, const Frame& frame);
void append_labels(std::string& out, const Column& column, const Frame& frame);

// Room between two labels.
inline Tenths label_gap(const Page& page) {
  return page.font / 5;
}

}  // namespace firn::drawing
