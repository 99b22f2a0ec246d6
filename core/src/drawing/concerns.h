// The report's layers of concern, resolved to where they are drawn. Nothing is judged here.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "drawing/frame.h"
#include "pit/view.h"
#include "schemas/report_generated.h"

namespace firn::drawing {

struct ConcernMark {
  std::int32_t number;        // as the report orders them, from 1; 0 for a break that says little either way
  std::int32_t top, bottom;   // below the surface, kUnknown where the report does not say
  std::int32_t layer;         // position in View::layers, -1 for a boundary or a depth
  bool by_structure = false;  // no test broke there
};

struct ConcernMarks {
  std::vector<ConcernMark> marks;
  std::uint32_t left_out = 0;
};

ConcernMarks concern_marks_of(const pit::View& pit, const firnbook::Report* report);

// "concern 1", "says little either way"
void append_concern_tag(std::string& out, const ConcernMark& mark);

// Hatching across the panel, under the bars so that a thin soft layer keeps its notch; the bands' outlines
// over the bars; their numbers over everything.
void append_concern_hatching(std::string& out, const Frame& frame, const ConcernMarks& concerns);
void append_concern_bands(std::string& out, const Frame& frame, const ConcernMarks& concerns);
void append_concern_numbers(std::string& out, const Frame& frame, const ConcernMarks& concerns);

}  // namespace firn::drawing
