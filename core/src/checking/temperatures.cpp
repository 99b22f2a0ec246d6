// Snow temperatures. Limits: reference list of derived checks (snow is not warmer than 0 degC; half a
// degree is left to the instrument; "clearly below" 0 is below -0.5).
#include <cstdlib>

#include "checking/rules.h"

namespace firn::checking {
namespace {

constexpr std::int32_t kInstrumentError = 50;  // hundredths of a degree
constexpr std::int32_t kClearlyFrozen = -50;
// Ours: the coldest growth range that the crystal classes name (plates, from memory). Colder is a slip.
constexpr std::int32_t kColdest = -7000;
// Ours: readings at least this far apart, and more than this between them, are a slip of sign or decimal
// point sooner than a night. Closer to the surface and over less, such gradients do occur.
constexpr std::int32_t kApartForGradient = pit::cm(10);
constexpr std::int64_t kGradient_cdegc_per_m = 10000;
constexpr std::int64_t kMetre = 100000;
// Ours: two thermometers, or one read twice.
constexpr std::int32_t kSurfaceDifference = 200;
constexpr auto kMoist = static_cast<std::uint8_t>(firnbook::Wetness::M);

void check_value(std::int32_t cdegc, const Place& place, Reporter& out) {
  if (cdegc > kInstrumentError) {
    out.add(CheckCode::snow_above_freezing, place, cdegc);
  } else if (cdegc > 0) {
    out.add(CheckCode::snow_slightly_above_freezing, place, cdegc);
  } else if (cdegc < kColdest) {
    out.add(CheckCode::temperature_too_low, place, cdegc, kColdest);
  }
}

Place value_place(const pit::Temperature& reading) {
  return place_of(Thing::temperature, static_cast<std::int32_t>(reading.stored),
                  field_id(firnbook::TemperatureReading::VT_TEMPERATURE_CDEGC));
}

void check_values(const pit::View& pit, Reporter& out) {
  // What the observer marked unreliable needs no second finger pointing at it.
  for (const pit::Temperature& reading : pit.temperatures()) {
    if (reading.cdegc != pit::kUnknown && !reading.unreliable) {
      check_value(reading.cdegc, value_place(reading), out);
    }
  }
  const firnbook::Surface* surface = pit.raw().surface();
  if (surface == nullptr || !surface->temperature_cdegc()) return;
  constexpr std::uint16_t kField = field_id(firnbook::Surface::VT_TEMPERATURE_CDEGC);
  if ((surface->unreliable() >> kField & 1u) != 0) return;
  check_value(*surface->temperature_cdegc(), place_of(Thing::surface, -1, kField), out);
}

void check_twice(const pit::View& pit, Reporter& out) {
  const pit::Temperature* previous = nullptr;
  for (const pit::Temperature& reading : pit.temperatures()) {
    if (reading.depth == pit::kUnknown) return;
    if (reading.cdegc == pit::kUnknown) continue;
    if (previous != nullptr && previous->depth == reading.depth && previous->cdegc != reading.cdegc) {
      out.add(CheckCode::two_temperatures_at_one_depth, value_place(reading), reading.depth, previous->cdegc,
              reading.cdegc);
    }
    previous = &reading;
  }
}

void check_gradients(const pit::View& pit, Reporter& out) {
  const pit::Temperature* upper = nullptr;
  for (const pit::Temperature& reading : pit.temperatures()) {
    if (reading.depth == pit::kUnknown) return;
    if (reading.cdegc == pit::kUnknown || reading.unreliable) continue;
    if (upper != nullptr) {
      const std::int64_t apart = std::int64_t{reading.depth} - upper->depth;
      const std::int64_t change = std::abs(std::int64_t{reading.cdegc} - upper->cdegc);
      if (apart < kApartForGradient) continue;  // keeps the upper one, so that close readings add up
      if (change * kMetre > kGradient_cdegc_per_m * apart) {
        out.add(CheckCode::gradient_unusual, value_place(reading), upper->cdegc, reading.cdegc, apart);
      }
    }
    upper = &reading;
  }
}

// The surface's own temperature beside a reading at depth 0.
void check_surface(const pit::View& pit, Reporter& out) {
  const firnbook::Surface* surface = pit.raw().surface();
  if (surface == nullptr || !surface->temperature_cdegc() || pit.temperatures().empty()) return;
  const pit::Temperature& top = pit.temperatures().front();
  if (top.depth != 0 || top.cdegc == pit::kUnknown || top.unreliable) return;
  const std::int64_t apart = std::abs(std::int64_t{top.cdegc} - *surface->temperature_cdegc());
  if (apart <= kSurfaceDifference) return;
  out.add(CheckCode::surface_temperature_contradicts_reading,
          place_of(Thing::surface, -1, field_id(firnbook::Surface::VT_TEMPERATURE_CDEGC)),
          *surface->temperature_cdegc(), top.cdegc);
}

bool usable(const pit::Temperature& reading) {
  return reading.depth != pit::kUnknown && reading.cdegc != pit::kUnknown && !reading.unreliable;
}

// The warmest a layer can be said to be: its own readings, or its neighbours on both sides when it has
// none. Layers are asked from the top down, so that every reading is passed once.
class WarmestInLayer {
 public:
  explicit WarmestInLayer(const std::vector<pit::Temperature>& readings) : readings_(readings) {}

  std::int32_t operator()(std::int32_t top, std::int32_t bottom) {
    skip_above(top);
    std::int32_t warmest = pit::kUnknown;
    std::int32_t below = pit::kUnknown;
    for (std::size_t i = next_; i < readings_.size() && below == pit::kUnknown; ++i) {
      if (!usable(readings_[i])) continue;
      if (readings_[i].depth > bottom) {
        below = readings_[i].cdegc;
      } else if (readings_[i].cdegc > warmest) {
        warmest = readings_[i].cdegc;
      }
    }
    if (warmest != pit::kUnknown) return warmest;
    if (above_ == pit::kUnknown || below == pit::kUnknown) return pit::kUnknown;
    return above_ > below ? above_ : below;
  }

 private:
  void skip_above(std::int32_t top) {
    for (; next_ < readings_.size(); ++next_) {
      const pit::Temperature& reading = readings_[next_];
      if (!usable(reading)) continue;
      if (reading.depth >= top) return;
      above_ = reading.cdegc;
    }
  }

  const std::vector<pit::Temperature>& readings_;
  std::size_t next_ = 0;
  std::int32_t above_ = pit::kUnknown;
};

void check_wet_layers(const pit::View& pit, Reporter& out) {
  WarmestInLayer warmest_in(pit.temperatures());
  std::int32_t passed = pit::kUnknown;
  for (const pit::Layer& layer : pit.layers()) {
    // Overlapping layers are errors of their own, and would have the readings read over and over.
    if (!layer.has_span() || layer.bottom <= layer.top || layer.top < passed) continue;
    passed = layer.bottom;
    if (layer.wetness < kMoist || layer.is_unreliable(field_id(firnbook::Layer::VT_WETNESS))) continue;
    const std::int32_t warmest = warmest_in(layer.top, layer.bottom);
    if (warmest == pit::kUnknown || warmest >= kClearlyFrozen) continue;
    out.add(CheckCode::wet_but_cold, layer_place(layer, firnbook::Layer::VT_WETNESS), warmest,
            kClearlyFrozen);
  }
}

}  // namespace

void check_temperatures(const pit::View& pit, Reporter& out) {
  check_values(pit, out);
  check_twice(pit, out);
  check_gradients(pit, out);
  check_surface(pit, out);
  check_wet_layers(pit, out);
}

}  // namespace firn::checking
