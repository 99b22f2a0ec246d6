#include "pit/view.h"

#include <algorithm>
#include <tuple>

#include "pit/verify.h"

namespace firn::pit {
namespace {

// Unknown depths sort last; equal keys keep their stored order, so the order is total.
std::int64_t sort_key(std::int32_t depth) {
  return depth == kUnknown ? INT64_MAX : std::int64_t{depth};
}

std::int32_t compass_degrees(std::uint8_t point) {
  constexpr auto kNorth = static_cast<std::uint8_t>(firnbook::CompassPoint::N);
  constexpr auto kNorthWest = static_cast<std::uint8_t>(firnbook::CompassPoint::NW);
  return point >= kNorth && point <= kNorthWest ? (point - kNorth) * 45 : kUnknown;
}

firnbook::Direction direction_of(const firnbook::Pit& pit) {
  const firnbook::Snowpack* snowpack = pit.snowpack();
  if (snowpack != nullptr && snowpack->direction() &&
      *snowpack->direction() != firnbook::Direction::unknown) {
    return *snowpack->direction();
  }
  if (pit.layers() != nullptr) {
    for (const firnbook::Layer* layer : *pit.layers()) {
      if (layer->top() != nullptr && layer->top()->direction() != firnbook::Direction::unknown) {
        return layer->top()->direction();
      }
    }
  }
  return firnbook::Direction::vertical;
}

// As nearly every list comes: each layer begins below the one before it.
bool tops_grow(const std::vector<Layer>& layers) {
  std::int32_t above = kUnknown;
  for (const Layer& layer : layers) {
    if (layer.top <= above) return false;
    above = layer.top;
  }
  return true;
}

}  // namespace

std::int32_t View::below_surface(const firnbook::Depth* depth) const {
  if (depth == nullptr) return kUnknown;
  if (depth->direction() != firnbook::Direction::unknown && depth->direction() != direction_) return kUnknown;
  if (depth->datum() == firnbook::Datum::surface) return depth->value_10um();
  if (depth->datum() != firnbook::Datum::ground || hs_ == kUnknown) return kUnknown;
  const std::int64_t below = std::int64_t{hs_} - depth->value_10um();
  return below > INT32_MIN && below <= INT32_MAX ? static_cast<std::int32_t>(below) : kUnknown;
}

std::int32_t View::layer_at(std::int32_t depth) const {
  if (depth == kUnknown) return -1;
  auto after = std::upper_bound(
      layers_.begin(), layers_.end(), depth,
      [](std::int32_t value, const Layer& layer) { return std::int64_t{value} < sort_key(layer.top); });
  if (after == layers_.begin()) return -1;
  --after;
  const Layer& layer = *after;
  const bool last = after + 1 == layers_.end() || (after + 1)->top == kUnknown;
  if (!layer.has_span() || depth > layer.bottom || (depth == layer.bottom && !last)) return -1;
  return static_cast<std::int32_t>(after - layers_.begin());
}

void View::decode(const firnbook::Pit& pit) {
  raw_ = &pit;
  newer_ = pit.schema_minor() > kSchemaMinor;
  direction_ = direction_of(pit);
  hs_ = kUnknown;
  slope_deg_ = kUnknown;
  aspect_deg_ = kUnknown;
  if (pit.snowpack() != nullptr) hs_ = number_or_unknown(pit.snowpack()->hs_10um());
  if (const firnbook::Site* site = pit.site()) {
    slope_deg_ = number_or_unknown(site->slope_deg());
    aspect_deg_ = site->aspect_deg() ? static_cast<std::int32_t>(*site->aspect_deg())
                                     : compass_degrees(number(site->aspect_point()));
  }
  decode_layers(pit);
  decode_tests(pit);
  decode_readings(pit);
  look_for_marks(pit);
}

void View::look_for_marks(const firnbook::Pit& pit) {
  unreliable_ = 0;
  for (const Layer& layer : layers_) unreliable_ |= layer.unreliable;
  for (const Test& test : tests_) unreliable_ |= test.raw->unreliable();
  for (const Fracture& fracture : fractures_) unreliable_ |= fracture.unreliable;
  for (const Temperature& reading : temperatures_) unreliable_ |= reading.unreliable ? 1u : 0u;
  for (const Density& reading : densities_) unreliable_ |= reading.unreliable ? 1u : 0u;
  for (std::uint32_t i = 0; i < size_of(pit.signs()); ++i) unreliable_ |= pit.signs()->Get(i)->unreliable();
  for (std::uint32_t i = 0; i < size_of(pit.slides()); ++i) unreliable_ |= pit.slides()->Get(i)->unreliable();
}

void View::decode_layers(const firnbook::Pit& pit) {
  layers_.clear();
  boundaries_.clear();
  const std::uint32_t count = size_of(pit.layers());
  // Filled where they stand: a copy of what was just written waits for the writing.
  layers_.resize(count);
  for (std::uint32_t i = 0; i < count; ++i) {
    const firnbook::Layer* raw = pit.layers()->Get(i);
    Layer& layer = layers_[i];
    layer.raw = raw;
    layer.stored = i;
    layer.top = below_surface(raw->top());
    layer.bottom = below_surface(raw->bottom());
    layer.size = number_or_unknown(raw->grain_size_10um());
    layer.size_max = number_or_unknown(raw->grain_size_max_10um());
    layer.unreliable = raw->unreliable();
    const std::uint8_t whole = number(raw->hardness());
    layer.hardness_top = raw->hardness_top() ? number(raw->hardness_top()) : whole;
    layer.hardness_bottom = raw->hardness_bottom() ? number(raw->hardness_bottom()) : whole;
    layer.form = number(raw->grain_form());
    layer.form_second = number(raw->grain_form_second());
    layer.wetness = number(raw->wetness());
  }
  // Without a top a layer has no place, so its bottom does not order it either.
  const auto key = [](const Layer& layer) {
    const std::int32_t bottom = layer.top == kUnknown ? kUnknown : layer.bottom;
    return std::make_tuple(sort_key(layer.top), sort_key(bottom), layer.stored);
  };
  const auto before = [&key](const Layer& a, const Layer& b) { return key(a) < key(b); };
  if (!tops_grow(layers_) && !std::is_sorted(layers_.begin(), layers_.end(), before))
    std::sort(layers_.begin(), layers_.end(), before);
  boundaries_.reserve(count);
  for (std::uint32_t i = 0; i + 1 < count; ++i) {
    if (layers_[i].bottom == kUnknown || layers_[i].bottom != layers_[i + 1].top) continue;
    boundaries_.push_back({layers_[i].bottom, i, i + 1});
  }
}

void View::decode_tests(const firnbook::Pit& pit) {
  tests_.clear();
  fractures_.clear();
  const std::uint32_t count = size_of(pit.tests());
  tests_.resize(count);
  for (std::uint32_t i = 0; i < count; ++i) {
    const firnbook::StabilityTest* raw = pit.tests()->Get(i);
    Test& test = tests_[i];
    test.raw = raw;
    test.stored = i;
    test.kind = raw->kind() ? *raw->kind() : firnbook::TestKind::none;
    test.outcome = number(raw->outcome());
    test.crossing_rule = number(raw->crossing_rule());
    test.column_length = number_or_unknown(raw->column_length_10um());
    test.first_fracture = static_cast<std::uint32_t>(fractures_.size());
    test.fracture_count = size_of(raw->fractures());
    for (std::uint32_t k = 0; k < test.fracture_count; ++k) {
      const firnbook::Fracture* f = raw->fractures()->Get(k);
      Fracture& fracture = fractures_.emplace_back();
      fracture.raw = f;
      fracture.test = i;
      fracture.stored = k;
      fracture.depth = below_surface(f->depth());
      fracture.cut = number_or_unknown(f->cut_10um());
      fracture.unreliable = f->unreliable();
      fracture.tap = number(f->tap());
      fracture.tap_crossed = number(f->tap_crossed());
      fracture.stage = number(f->stage());
      fracture.character = number(f->character());
      fracture.quality = number(f->quality());
      fracture.surface = number(f->fracture_surface());
      fracture.crossing = number(f->crossing());
      fracture.step = number(f->step());
      fracture.jump = number(f->jump());
      fracture.release = number(f->release());
      fracture.saw_end = number(f->saw_end());
      fracture.ease = number(f->ease());
    }
  }
}

void View::decode_readings(const firnbook::Pit& pit) {
  temperatures_.clear();
  densities_.clear();
  const std::uint32_t temperatures = size_of(pit.temperatures());
  temperatures_.resize(temperatures);
  for (std::uint32_t i = 0; i < temperatures; ++i) {
    const firnbook::TemperatureReading* raw = pit.temperatures()->Get(i);
    Temperature& reading = temperatures_[i];
    reading.stored = i;
    reading.depth = below_surface(raw->depth());
    reading.cdegc = number_or_unknown(raw->temperature_cdegc());
    reading.unreliable = raw->unreliable() != 0;
  }
  const auto before = [](const Temperature& a, const Temperature& b) {
    return std::make_tuple(sort_key(a.depth), a.stored) < std::make_tuple(sort_key(b.depth), b.stored);
  };
  if (!std::is_sorted(temperatures_.begin(), temperatures_.end(), before)) {
    std::sort(temperatures_.begin(), temperatures_.end(), before);
  }
  const std::uint32_t profiles = size_of(pit.densities());
  for (std::uint32_t p = 0; p < profiles; ++p) {
    const auto* readings = pit.densities()->Get(p)->readings();
    for (std::uint32_t i = 0; i < size_of(readings); ++i) {
      const firnbook::DensityReading* raw = readings->Get(i);
      Density& reading = densities_.emplace_back();
      reading.profile = p;
      reading.stored = i;
      reading.top = below_surface(raw->top());
      reading.bottom = below_surface(raw->bottom());
      reading.dkgm3 = number_or_unknown(raw->density_dkgm3());
      reading.unreliable = raw->unreliable() != 0;
    }
  }
}

}  // namespace firn::pit
