#include "drawing/profile.h"

#include <algorithm>

#include "drawing/columns.h"
#include "drawing/concerns.h"
#include "drawing/frame.h"
#include "drawing/labels.h"
#include "drawing/layers.h"
#include "drawing/words_around.h"

namespace firn::drawing {
namespace {

// The panel is as high as a page wants it, or as its labels need it.
Tenths panel_height(const Frame& frame, const Column& labels) {
  const Page& page = frame.page;
  const Tenths wanted = page.narrow ? 3600 : std::min<Tenths>(page.width * 7 / 10, 7200);
  return std::max(wanted, labels.total_height(label_gap(page)));
}

void append_panel(std::string& out, const Frame& frame, const pit::View& pit, const ConcernMarks& concerns,
                  Drawn& drawn) {
  append_axes(out, frame);
  append_concern_hatching(out, frame, concerns);
  drawn.bars = append_bars(out, frame, pit);
  append_panel_edges(out, frame);
  append_concern_bands(out, frame, concerns);
  drawn.temperatures = append_temperatures(out, frame, pit);
  append_concern_numbers(out, frame, concerns);
}

void open_svg(std::string& out, const Page& page, Tenths height, const std::string& summary) {
  out += "<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" width=\"";
  append_tenths(out, page.width);
  out += "\" height=\"";
  append_tenths(out, height);
  out += "\" viewBox=\"0 0 ";
  append_tenths(out, page.width);
  out += ' ';
  append_tenths(out, height);
  out += "\" font-family=\"sans-serif\" font-size=\"";
  append_tenths(out, page.font);
  out += "\" fill=\"";
  out += kInk;
  out += "\">\n";
  out += summary;
  append_rect(out, 0, 0, page.width, height, " fill=\"#fff\"");
}

}  // namespace

void append_profile(std::string& out, const pit::View& pit, const firnbook::Report* report,
                    const DrawOptions& options) {
  Frame frame = frame_of(pit, options);
  const Page& page = frame.page;
  const ConcernMarks concerns = concern_marks_of(pit, report);
  Drawn drawn;
  Column labels(frame.label_width(), page.font, page.row, Between::space);
  drawn.labels = make_labels(labels, frame, pit, concerns);

  // The height of the whole comes out last but is written first.
  std::string body;
  body.reserve(16384);
  frame.top = append_header(body, pit, page, page.margin) + page.row / 2 + room_above(frame);
  frame.bottom = frame.top + panel_height(frame, labels);
  append_panel(body, frame, pit, concerns, drawn);
  place_labels(labels, frame);
  append_labels(body, labels, frame);
  const Tenths footer = frame.bottom + room_below(frame) + page.row / 2;
  const Tenths height = append_footer(body, pit, frame, concerns, drawn, footer) + page.margin;

  std::string summary;
  append_summary(summary, pit, concerns);
  open_svg(out, page, height, summary);
  out += body;
  out += "</svg>\n";
}

}  // namespace firn::drawing
