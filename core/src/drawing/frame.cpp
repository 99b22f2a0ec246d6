#include "drawing/frame.h"

#include <algorithm>

namespace firn::drawing {
namespace {

constexpr std::int32_t kStepsToIce = 36;

Ends ends_of(const pit::View& pit, std::int32_t deepest_layer) {
  if (pit.hs() == pit::kUnknown || pit.hs() <= 0 || !drawable(pit.hs())) return Ends::hs_not_known;
  const auto reached = pit.raw().reached_ground();
  if (reached && !*reached) return Ends::above_ground;
  const std::int32_t dug = pit::number_or_unknown(pit.raw().profile_depth_10um());
  if (dug != pit::kUnknown && dug < pit.hs()) return Ends::above_ground;
  const bool said_so = reached || dug != pit::kUnknown;
  if (!said_so && deepest_layer > 0 && deepest_layer < pit.hs()) return Ends::above_ground;
  return Ends::at_ground;
}

std::int32_t deepest_layer_of(const pit::View& pit) {
  std::int32_t deepest = 0;
  for (const pit::Layer& layer : pit.layers()) {
    if (drawable(layer)) deepest = std::max({deepest, layer.top, layer.bottom});
  }
  return deepest;
}

std::int32_t deepest_observation_of(const pit::View& pit) {
  std::int32_t deepest = 0;
  for (const pit::Fracture& fracture : pit.fractures()) {
    if (drawable(fracture.depth)) deepest = std::max(deepest, fracture.depth);
  }
  for (const pit::Temperature& reading : pit.temperatures()) {
    if (drawable(reading)) deepest = std::max(deepest, reading.depth);
  }
  for (const pit::Density& density : pit.densities()) {
    if (drawable(density.bottom)) deepest = std::max(deepest, density.bottom);
  }
  return deepest;
}

// The axis commonly runs from 0 to -20 (from memory); a shorter one where it holds every reading.
std::int32_t coldest_of(const pit::View& pit) {
  std::int32_t coldest = 1;
  for (const pit::Temperature& reading : pit.temperatures()) {
    if (drawable(reading)) coldest = std::min({coldest, reading.cdegc, 0});
  }
  if (coldest > 0) return 0;
  for (const std::int32_t end : {-1000, -2000, -3000, -4000}) {
    if (coldest >= end) return end;
  }
  return -6000;
}

}  // namespace

Page page_of(const DrawOptions& options) {
  const std::int32_t width = std::clamp(options.width_px, 320, 2000);
  Page page{};
  page.width = Tenths{width} * 10;
  page.narrow = width < 480;
  // 16 of 720 units are still 8 pixels when the picture is shown 360 pixels wide.
  page.font = page.narrow ? std::min<Tenths>(120, page.width / 30) : std::max<Tenths>(160, page.width / 70);
  page.title_font = page.font * 3 / 2;
  page.row = page.font * 11 / 8;
  page.margin = page.narrow ? 70 : page.font;
  page.gutter = page.narrow ? 200 : page.font * 5 / 2;
  page.axis_column = page.narrow ? page.font * 31 / 10 : page.font * 18 / 5;
  return page;
}

Frame frame_of(const pit::View& pit, const DrawOptions& options) {
  Frame frame{};
  frame.page = page_of(options);
  const std::int32_t deepest_layer = deepest_layer_of(pit);
  frame.ends = ends_of(pit, deepest_layer);
  const bool at_ground = frame.ends == Ends::at_ground;
  frame.hs = at_ground ? pit.hs() : pit::kUnknown;
  const std::int32_t dug = pit::number_or_unknown(pit.raw().profile_depth_10um());
  frame.depth = std::max(deepest_layer, deepest_observation_of(pit));
  if (at_ground) frame.depth = std::max(frame.depth, pit.hs());
  if (!at_ground && drawable(dug)) frame.depth = std::max(frame.depth, dug);
  if (frame.depth <= 0) frame.depth = pit::cm(100);
  // A test or reading at the panel's lower edge would look like the ground.
  if (!at_ground && frame.depth > deepest_layer && frame.depth != dug) frame.depth += frame.depth / 10;
  frame.coldest_cdegc = coldest_of(pit);
  const Page& page = frame.page;
  frame.left = page.margin + page.axis_column * (at_ground ? 2 : 1);
  frame.right = frame.left + page.width * (page.narrow ? 30 : page.width < 10000 ? 33 : 48) / 100;
  frame.label_left = frame.right + page.gutter;
  return frame;
}

Tenths Frame::y(std::int32_t below_surface) const {
  const std::int32_t inside = std::clamp(below_surface, 0, depth);
  return top + Tenths{inside} * (bottom - top) / depth;
}

Tenths Frame::x_of_hardness(std::uint8_t sixths) const {
  return right - (right - left) * std::min<std::int32_t>(sixths, kStepsToIce) / kStepsToIce;
}

Tenths Frame::x_of_temperature(std::int32_t cdegc) const {
  if (coldest_cdegc == 0) return right;
  const std::int32_t inside = std::clamp(cdegc, coldest_cdegc, 0);
  return right - (right - left) * inside / coldest_cdegc;
}

}  // namespace firn::drawing
