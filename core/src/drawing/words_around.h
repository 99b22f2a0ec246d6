// The words around the panel: header, signs of instability, footer, and the summary for people who cannot
// see the picture.
#pragma once

#include <string>

#include "drawing/columns.h"
#include "drawing/concerns.h"
#include "drawing/frame.h"
#include "drawing/labels.h"
#include "drawing/layers.h"
#include "pit/view.h"

namespace firn::drawing {

// Title, time, people, place, snow, weather; then the signs of instability, before any test. Answers the y
// below.
Tenths append_header(std::string& out, const pit::View& pit, const Page& page, Tenths top);

struct Drawn {
  BarsDrawn bars;
  TemperaturesDrawn temperatures;
  LabelsMade labels;
};
// What could not be drawn, what the marks mean, and that one pit is one point. Answers the y below.
Tenths append_footer(std::string& out, const pit::View& pit, const Frame& frame, const ConcernMarks& concerns,
                     const Drawn& drawn, Tenths top);

// The <title> and <desc> elements.
void append_summary(std::string& out, const pit::View& pit, const ConcernMarks& concerns);

}  // namespace firn::drawing
