// Which density each layer has, and what the snow above each of them weighs. Measured wins; else the estimate
// of density_estimate.cpp; else none.
#include "interpretation/densities.h"

#include <tuple>

#include "interpretation/evidence.h"

namespace firn::interpretation {
namespace {

// Lighter or denser than any snow or ice (reference limits, derived).
constexpr std::int32_t kLightest = 40;
constexpr std::int32_t kDensest = 9170;
// Deeper than this there is no snow, and sums of products stay within 64 bits.
constexpr std::int64_t kDeepest = 10000000;
// Readings that start above one place are looked through from the nearest: hostile lists overlap without end.
constexpr std::size_t kReadingsTried = 8;

class Reader {
 public:
  Reader(const pit::View& pit, Densities& out) : pit_(pit), out_(out) {}

  void run() {
    sort_readings();
    out_.layers.clear();
    out_.column.clear();
    // Filled where they stand: a copy of what was just written waits for the writing.
    out_.layers.resize(pit_.layers().size());
    for (std::size_t i = 0; i < out_.layers.size(); ++i) find_density(pit_.layers()[i], out_.layers[i]);
    stack();
  }

 private:
  const pit::Density& reading(std::uint32_t position) const { return pit_.densities()[position]; }

  void sort_readings() {
    out_.readings.clear();
    for (std::uint32_t i = 0; i < pit_.densities().size(); ++i) {
      const pit::Density& one = reading(i);
      const bool placed = one.top >= 0 && one.bottom > one.top;
      if (placed && !one.unreliable && one.dkgm3 >= kLightest && one.dkgm3 <= kDensest)
        out_.readings.push_back(i);
    }
    std::sort(out_.readings.begin(), out_.readings.end(), [this](std::uint32_t a, std::uint32_t b) {
      return std::make_tuple(reading(a).top, a) < std::make_tuple(reading(b).top, b);
    });
  }

  // Ours: the reading that covers the middle of the layer, the one that begins nearest above it.
  void find_density(const pit::Layer& layer, LayerDensity& density) const {
    density.measured = true;
    if (layer.has_span() && !out_.readings.empty()) {
      const std::int64_t middle = (std::int64_t{layer.top} + layer.bottom) / 2;
      auto after =
          std::upper_bound(out_.readings.begin(), out_.readings.end(), middle,
                           [this](std::int64_t at, std::uint32_t one) { return at < reading(one).top; });
      for (std::size_t tried = 0; tried < kReadingsTried && after != out_.readings.begin(); ++tried) {
        --after;
        if (reading(*after).bottom < middle) continue;
        density.dkgm3 = reading(*after).dkgm3;
        return;
      }
    }
    density.measured = false;
    density.dkgm3 = estimate(layer);
  }

  // Dry snow only: moist and wetter has no estimate. Nothing is built on a doubtful hardness or form.
  static std::int32_t estimate(const pit::Layer& layer) {
    constexpr std::uint64_t kFields = std::uint64_t{1} << field_id(firnbook::Layer::VT_HARDNESS) |
                                      std::uint64_t{1} << field_id(firnbook::Layer::VT_HARDNESS_TOP) |
                                      std::uint64_t{1} << field_id(firnbook::Layer::VT_HARDNESS_BOTTOM) |
                                      std::uint64_t{1} << field_id(firnbook::Layer::VT_GRAIN_FORM);
    const bool wet = layer.wetness > static_cast<std::uint8_t>(firnbook::Wetness::D);
    if (wet || (layer.unreliable & kFields) != 0) return 0;
    if (!is_hardness(layer.hardness_top) || !is_hardness(layer.hardness_bottom)) return 0;
    return estimated_density(layer.form, layer.hardness_top + layer.hardness_bottom);
  }

  // Down from the surface as far as layers follow each other; a gap ends it.
  void stack() {
    std::int64_t depth = 0, known = 0, measured = 0, mass = 0;
    for (std::size_t i = 0; i < pit_.layers().size(); ++i) {
      const pit::Layer& layer = pit_.layers()[i];
      if (!layer.has_span() || layer.top > depth || layer.bottom > kDeepest) return;
      const std::int64_t thickness = layer.bottom - depth;
      if (thickness <= 0) continue;
      const LayerDensity& density = out_.layers[i];
      depth += thickness;
      if (density.dkgm3 > 0) known += thickness;
      if (density.measured) measured += thickness;
      mass += thickness * density.dkgm3;
      ColumnAbove& above = out_.column.emplace_back();
      above.depth = depth;
      above.known = known;
      above.measured = measured;
      above.mass = mass;
    }
  }

  const pit::View& pit_;
  Densities& out_;
};

// The column at a depth within the layer that ends at `next`: between two entries everything grows evenly.
ColumnAbove at_depth(const Densities& densities, std::int64_t depth, std::size_t next) {
  const ColumnAbove& below = densities.column[next];
  if (below.depth == depth) return below;
  const ColumnAbove above = next == 0 ? ColumnAbove{0, 0, 0, 0} : densities.column[next - 1];
  const std::int64_t part = depth - above.depth;
  const std::int64_t whole = below.depth - above.depth;
  const auto between = [&](std::int64_t from, std::int64_t to) { return from + (to - from) / whole * part; };
  return {depth, between(above.known, below.known), between(above.measured, below.measured),
          between(above.mass, below.mass)};
}

}  // namespace

void look_at_densities(const pit::View& pit, Densities& out) {
  Reader(pit, out).run();
}

// What has no density (crusts, surface hoar) takes the mean of the rest: ours, and only up to a share.
Slab slab_above(const Densities& densities, std::int64_t depth, std::int32_t unknown_percent,
                std::size_t& next) {
  while (next < densities.column.size() && densities.column[next].depth < depth) ++next;
  if (depth <= 0 || next == densities.column.size()) return {};
  const ColumnAbove above = at_depth(densities, depth, next);
  if (above.known <= 0 || (depth - above.known) * 100 > depth * unknown_percent) return {};
  Slab slab;
  slab.depth = depth;
  slab.mean_e4 = above.mass * 1000 / above.known;
  slab.mean_dkgm3 = static_cast<std::int32_t>((slab.mean_e4 + 500) / 1000);
  slab.percent_not_measured = static_cast<std::int32_t>(((depth - above.measured) * 100 + depth / 2) / depth);
  return slab;
}

}  // namespace firn::interpretation
