#include "drawing/layers.h"

#include <algorithm>
#include <string_view>
#include <vector>

#include "support/text.h"

namespace firn::drawing {
namespace {

// Ours: up to this many layers every one gets its own bar, however thin.
constexpr std::size_t kDrawEach = 400;
// Ours: a bound on the size of the picture for records that overlap without end.
constexpr std::size_t kMostBars = 1500;
constexpr Tenths kThinnest = 25;  // what the eye still sees as a bar
constexpr Tenths kMergeBelow = 20;
constexpr std::size_t kMostRoundPoints = 60;

struct Bar {
  Tenths top, bottom;
  std::uint8_t hard_top, hard_bottom;  // 0: not observed
  std::uint8_t hardest;                // of merged layers; 0 for a single layer
};

bool is_thin(const Bar& bar) {
  return bar.bottom - bar.top < kThinnest;
}

Bar bar_of(const Frame& frame, const pit::Layer& layer) {
  Bar bar{frame.y(std::min(layer.top, layer.bottom)), frame.y(std::max(layer.top, layer.bottom)),
          has_hardness(layer.hardness_top) ? layer.hardness_top : std::uint8_t{0},
          has_hardness(layer.hardness_bottom) ? layer.hardness_bottom : std::uint8_t{0}, 0};
  // One end known: no slant is made up.
  if (bar.hard_top == 0) bar.hard_top = bar.hard_bottom;
  if (bar.hard_bottom == 0) bar.hard_bottom = bar.hard_top;
  return bar;
}

// Thin layers that follow each other become one bar, as long as the softest of them and outlined to the
// hardest.
void merge_into(Bar& bar, const Bar& next) {
  const auto softer = [](std::uint8_t a, std::uint8_t b) {
    return a == 0 || b == 0 ? a | b : std::min(a, b);
  };
  const int softest =
      softer(bar.hard_top, static_cast<std::uint8_t>(softer(next.hard_top, next.hard_bottom)));
  bar.hardest = std::max({bar.hardest, bar.hard_top, bar.hard_bottom, next.hard_top, next.hard_bottom});
  bar.hard_top = bar.hard_bottom = static_cast<std::uint8_t>(softest);
  bar.bottom = std::max(bar.bottom, next.bottom);
}

std::vector<Bar> bars_of(const Frame& frame, const pit::View& pit, BarsDrawn& drawn) {
  const bool each = pit.layers().size() <= kDrawEach;
  std::vector<Bar> bars;
  bars.reserve(std::min(pit.layers().size(), kMostBars));
  bool open = false;  // the last bar may still take thin layers
  for (const pit::Layer& layer : pit.layers()) {
    if (!drawable(layer)) {
      ++drawn.without_depth;
      continue;
    }
    const Bar bar = bar_of(frame, layer);
    const bool thin = !each && bar.bottom - bar.top < kMergeBelow;
    if (thin && open && bar.bottom - bars.back().top < kMergeBelow * 2) {
      if (bars.back().hardest == 0) ++drawn.merged;
      merge_into(bars.back(), bar);
      ++drawn.merged;
      continue;
    }
    if (bars.size() >= kMostBars) {
      ++drawn.left_out;
      continue;
    }
    bars.push_back(bar);
    open = thin;
  }
  return bars;
}

void append_grey(std::string& out, std::uint8_t sixths) {
  constexpr std::string_view kHex = "0123456789abcdef";
  const int level = 244 - sixths * 104 / 36;
  out += " fill=\"#";
  for (int i = 0; i < 3; ++i) {
    out += kHex[static_cast<std::size_t>(level / 16)];
    out += kHex[static_cast<std::size_t>(level % 16)];
  }
  out += '"';
}

// No hardness: an open outline of no particular length, with a question mark where one fits.
void append_unknown_bar(std::string& out, const Frame& frame, const Bar& bar) {
  const Tenths x = frame.x_of_hardness(15);
  Path outline(out);
  outline.move(frame.right, bar.top);
  outline.line(x, bar.top);
  outline.line(x, bar.bottom);
  outline.line(frame.right, bar.bottom);
  outline.end(" fill=\"none\" stroke-dasharray=\"3 3\"");
  const Tenths font = frame.page.font;
  if (bar.bottom - bar.top < font * 6 / 5) return;
  append_text(out, (x + frame.right) / 2, (bar.top + bar.bottom) / 2 + font * 7 / 20,
              " text-anchor=\"middle\" stroke=\"none\" fill=\"#555\"", "?");
}

void append_bar(std::string& out, const Frame& frame, Bar bar) {
  if (is_thin(bar)) {
    const Tenths middle = (bar.top + bar.bottom) / 2;
    bar.top = middle - kThinnest / 2;
    bar.bottom = bar.top + kThinnest;
  }
  if (bar.hard_top == 0) {
    append_unknown_bar(out, frame, bar);
    return;
  }
  if (bar.hardest > bar.hard_top) {
    append_line(out, frame.x_of_hardness(bar.hardest), (bar.top + bar.bottom) / 2,
                frame.x_of_hardness(bar.hard_top), (bar.top + bar.bottom) / 2, {});
  }
  Path outline(out);
  outline.move(frame.right, bar.top);
  outline.line(frame.x_of_hardness(bar.hard_top), bar.top);
  outline.line(frame.x_of_hardness(bar.hard_bottom), bar.bottom);
  outline.line(frame.right, bar.bottom);
  outline.close();
  outline.end_data();
  append_grey(out, std::max(bar.hard_top, bar.hard_bottom));
  out += "/>\n";
}

}  // namespace

BarsDrawn append_bars(std::string& out, const Frame& frame, const pit::View& pit) {
  BarsDrawn drawn;
  const std::vector<Bar> bars = bars_of(frame, pit, drawn);
  drawn.any = !bars.empty();
  out += "<g stroke=\"#333\" stroke-width=\"1\">\n";
  // Thin layers after the thick ones, so that no neighbour covers them.
  for (const bool thin : {false, true}) {
    for (const Bar& bar : bars) {
      if (is_thin(bar) != thin) continue;
      if (bar.hard_top == 0) drawn.any_unknown_hardness = true;
      append_bar(out, frame, bar);
    }
  }
  out += "</g>\n";
  return drawn;
}

TemperaturesDrawn append_temperatures(std::string& out, const Frame& frame, const pit::View& pit) {
  TemperaturesDrawn drawn;
  // Of several readings in one row of the picture the first and the extremes are enough.
  struct Point {
    Tenths x, y;
    bool unreliable;
  };
  std::vector<Point> points;
  const std::size_t most = static_cast<std::size_t>((frame.bottom - frame.top) / 10 + 2) * 2;
  points.reserve(std::min(pit.temperatures().size(), most));
  std::size_t in_row = 0;
  for (const pit::Temperature& reading : pit.temperatures()) {
    if (!drawable(reading)) {
      ++drawn.without_place;
      continue;
    }
    if (reading.cdegc > 0 || reading.cdegc < frame.coldest_cdegc) ++drawn.beyond_axis;
    const Point point{frame.x_of_temperature(reading.cdegc), frame.y(reading.depth), reading.unreliable};
    const bool same_row = !points.empty() && points.back().y / 10 == point.y / 10;
    in_row = same_row ? in_row + 1 : 1;
    if (in_row <= 2) {
      points.push_back(point);
      continue;
    }
    Point& warm = points[points.size() - 2].x > points.back().x ? points[points.size() - 2] : points.back();
    Point& cold = &warm == &points.back() ? points[points.size() - 2] : points.back();
    if (point.x > warm.x) warm = point;
    if (point.x < cold.x) cold = point;
  }
  if (points.empty()) return drawn;
  drawn.any = true;
  for (const std::string_view style :
       {" fill=\"none\" stroke=\"#fff\" stroke-width=\"5\" stroke-linejoin=\"round\"",
        " fill=\"none\" stroke=\"#1a1a1a\" stroke-width=\"2.2\" stroke-linejoin=\"round\""}) {
    Path line(out);
    line.move(points.front().x, points.front().y);
    for (std::size_t i = 1; i < points.size(); ++i) line.line(points[i].x, points[i].y);
    line.end(style);
  }
  if (points.size() > kMostRoundPoints) return drawn;
  out += "<g stroke=\"#1a1a1a\" stroke-width=\"1.6\">\n";
  for (const Point& point : points) {
    append_circle(out, point.x, point.y, 34, point.unreliable ? " fill=\"#fff\"" : " fill=\"#1a1a1a\"");
  }
  out += "</g>\n";
  return drawn;
}

}  // namespace firn::drawing
