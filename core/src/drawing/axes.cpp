// The panel's edges and scales. Conventions of the ICSSG's standard profile (Fierz and others 2009; height up
// from the ground: from memory, high confidence; hardness to the left, temperature on top with 0 degrees at
// the right: from memory, medium).
#include <string>
#include <string_view>

#include "drawing/frame.h"
#include "drawing/text_fit.h"
#include "support/text.h"

namespace firn::drawing {
namespace {

constexpr std::string_view kEdge = " fill=\"none\" stroke=\"#444\" stroke-width=\"1.2\"";
constexpr std::string_view kTick = " stroke=\"#444\" stroke-width=\"1\"";
constexpr std::string_view kGuide = " stroke=\"#ddd\" stroke-width=\"1\"";
constexpr std::string_view kMinus = "\xE2\x88\x92";

struct HardnessMark {
  std::uint8_t sixths;
  std::string_view code;
};
constexpr HardnessMark kHardnessMarks[] = {{36, "I"}, {30, "K"}, {24, "P"}, {18, "1F"}, {12, "4F"}, {6, "F"}};

// The smallest of 1, 2, 5, 10, 20, 50 ... centimetres whose labels have room for each other.
std::int32_t depth_step(const Frame& frame) {
  const Tenths room = frame.page.font * 9 / 4;
  std::int32_t unit = pit::cm(1);
  for (;;) {
    for (const std::int32_t times : {1, 2, 5}) {
      const Tenths height = Tenths{unit} * times * (frame.bottom - frame.top) / frame.depth;
      if (height >= room || unit >= kDeepest) return unit * times;
    }
    unit *= 10;
  }
}

void append_depth_label(std::string& out, const Frame& frame, Tenths x, std::int32_t depth,
                        std::int32_t value, std::string_view attributes) {
  open_text(out, x - frame.page.font * 2 / 5, frame.y(depth) + frame.page.font * 7 / 20, attributes);
  append_cm(out, value);
  out += "</text>\n";
}

// Depths from the surface beside the panel: every step, and the very end where that is the ground.
void append_depths(std::string& out, const Frame& frame, std::int32_t step) {
  const std::string_view style = " text-anchor=\"end\" fill=\"#555\"";
  const Tenths room = frame.page.font * 5 / 4;
  for (std::int64_t depth = 0; depth <= frame.depth; depth += step) {
    const auto d = static_cast<std::int32_t>(depth);
    const bool crowds_end = frame.hs != pit::kUnknown && d != frame.hs &&
                            frame.y(frame.hs) - frame.y(d) < room && frame.y(d) - frame.y(frame.hs) < room;
    if (crowds_end) continue;
    append_line(out, frame.left - 40, frame.y(d), frame.left, frame.y(d), kTick);
    append_depth_label(out, frame, frame.left, d, d, style);
  }
  if (frame.hs != pit::kUnknown && frame.hs % step != 0) {
    append_line(out, frame.left - 40, frame.y(frame.hs), frame.left, frame.y(frame.hs), kTick);
    append_depth_label(out, frame, frame.left, frame.hs, frame.hs, style);
  }
}

// Heights from the ground: every step, and HS at the top.
void append_heights(std::string& out, const Frame& frame, std::int32_t step) {
  const std::string_view style = " text-anchor=\"end\"";
  const Tenths x = frame.left - frame.page.axis_column;
  append_line(out, x, frame.y(0), x, frame.y(frame.hs), kTick);
  for (std::int64_t height = 0; height < frame.hs; height += step) {
    const auto h = static_cast<std::int32_t>(height);
    const std::int32_t depth = frame.hs - h;
    if (frame.y(depth) - frame.y(0) < frame.page.font * 5 / 4) continue;
    append_line(out, x - 40, frame.y(depth), x, frame.y(depth), kTick);
    append_depth_label(out, frame, x, depth, h, style);
  }
  append_line(out, x - 40, frame.y(0), x, frame.y(0), kTick);
  append_depth_label(out, frame, x, 0, frame.hs, style);
}

void append_headings(std::string& out, const Frame& frame) {
  const Tenths row = frame.page.row;
  const Tenths baseline = frame.top - frame.page.font * 13 / 20 - row;
  const auto heading = [&](Tenths x, std::string_view style, std::string_view word) {
    append_text(out, x, baseline - row, style, word);
    append_text(out, x, baseline, style, "cm");
  };
  const Tenths inset = frame.page.font * 2 / 5;
  heading(frame.left - inset, " text-anchor=\"end\" fill=\"#555\"", frame.page.narrow ? "down" : "depth");
  if (frame.hs != pit::kUnknown) {
    heading(frame.left - frame.page.axis_column - inset, " text-anchor=\"end\"",
            frame.page.narrow ? "up" : "height");
  }
}

void append_temperature_axis(std::string& out, const Frame& frame) {
  if (frame.coldest_cdegc == 0) return;
  const Tenths font = frame.page.font;
  const Tenths baseline = frame.top - font * 13 / 20;
  std::int32_t step = 200;
  for (const std::int32_t wider : {500, 1000, 2000}) {
    if ((frame.right - frame.left) * step / -frame.coldest_cdegc >= font * 5 / 2) break;
    step = wider;
  }
  for (std::int32_t t = 0; t >= frame.coldest_cdegc; t -= step) {
    const Tenths x = frame.x_of_temperature(t);
    append_line(out, x, frame.top - 50, x, frame.top, kTick);
    open_text(out, x, baseline, " text-anchor=\"middle\"");
    if (t < 0) out += kMinus;
    append_integer(out, -t / 100);
    out += "</text>\n";
  }
  constexpr std::string_view kTitle = "snow temperature \xC2\xB0\x43";
  constexpr std::string_view kShortTitle = "temperature \xC2\xB0\x43";
  const bool fits = fit_text(kTitle, font, false, frame.right - frame.left).whole;
  append_text(out, frame.right, baseline - frame.page.row, " text-anchor=\"end\"",
              fits ? kTitle : kShortTitle);
}

void append_hardness_axis(std::string& out, const Frame& frame) {
  const Tenths row = frame.page.row;
  const Tenths below = frame.bottom + (frame.ends == Ends::at_ground ? row / 2 : 100);
  for (const HardnessMark& mark : kHardnessMarks) {
    const Tenths x = frame.x_of_hardness(mark.sixths);
    append_line(out, x, frame.top, x, frame.bottom, kGuide);
    append_text(out, x, below + row * 4 / 5, " text-anchor=\"middle\"", mark.code);
  }
  append_text(out, frame.right, below + row * 9 / 5, " text-anchor=\"end\"", "hand hardness");
}

// Ground: a heavy line with strokes under it.
void append_ground(std::string& out, const Frame& frame) {
  const Tenths y = frame.y(frame.hs);
  append_line(out, frame.left, y, frame.right, y, " stroke=\"#1a1a1a\" stroke-width=\"2.5\"");
  Path strokes(out);
  for (Tenths x = frame.left + 80; x <= frame.right; x += 120) {
    strokes.move(x, y + 10);
    strokes.line(x - 60, y + 70);
  }
  strokes.end(" fill=\"none\" stroke=\"#1a1a1a\" stroke-width=\"1\"");
}

// Where the digging ended above the ground: a torn edge, so that nobody takes it for the ground.
void append_torn_edge(std::string& out, const Frame& frame) {
  Path edge(out);
  edge.move(frame.left, frame.bottom);
  bool down = true;
  for (Tenths x = frame.left + 60; x < frame.right; x += 60) {
    edge.line(x, frame.bottom + (down ? 50 : 0));
    down = !down;
  }
  edge.line(frame.right, frame.bottom);
  edge.end(kEdge);
}

}  // namespace

Tenths room_above(const Frame& frame) {
  return frame.page.row * 3 + frame.page.font / 4;
}

Tenths room_below(const Frame& frame) {
  return frame.page.row * 2 + (frame.ends == Ends::at_ground ? frame.page.row / 2 : 100);
}

void append_axes(std::string& out, const Frame& frame) {
  append_hardness_axis(out, frame);
  const std::int32_t step = depth_step(frame);
  append_depths(out, frame, step);
  if (frame.hs != pit::kUnknown) append_heights(out, frame, step);
  append_headings(out, frame);
  append_temperature_axis(out, frame);
}

void append_panel_edges(std::string& out, const Frame& frame) {
  Path edge(out);
  edge.move(frame.left, frame.bottom);
  edge.line(frame.left, frame.top);
  edge.line(frame.right, frame.top);
  edge.line(frame.right, frame.bottom);
  edge.end(kEdge);
  if (frame.ends == Ends::at_ground) {
    append_ground(out, frame);
  } else {
    append_torn_edge(out, frame);
  }
}

}  // namespace firn::drawing
