// Walks every depth and every span of a pit, each with its place.
#pragma once

#include "checking/rules.h"

namespace firn::checking {

// A thing that reaches from one depth to another. Either may be null.
struct Span {
  const firnbook::Depth* top;
  const firnbook::Depth* bottom;
  Place top_place, bottom_place;
};

namespace walk {

template <class Reading>
Span span_of(const Reading& reading, Thing thing, std::uint32_t index, std::int32_t sub) {
  const auto at = static_cast<std::int32_t>(index);
  return {reading.top(), reading.bottom(), place_of(thing, at, field_id(Reading::VT_TOP), sub),
          place_of(thing, at, field_id(Reading::VT_BOTTOM), sub)};
}

template <class Profiles, class Visit>
void profiles(const Profiles* list, Thing thing, Visit&& visit) {
  for (std::uint32_t p = 0; p < pit::size_of(list); ++p) {
    const auto* readings = list->Get(p)->readings();
    for (std::uint32_t i = 0; i < pit::size_of(readings); ++i) {
      visit(*readings->Get(i), thing, p, static_cast<std::int32_t>(i));
    }
  }
}

}  // namespace walk

// Layers, and the readings of every kind of profile: visit(it, thing, index, sub).
template <class Visit>
void visit_readings(const firnbook::Pit& raw, Visit&& visit) {
  for (std::uint32_t i = 0; i < pit::size_of(raw.layers()); ++i) {
    visit(*raw.layers()->Get(i), Thing::layer, i, -1);
  }
  walk::profiles(raw.densities(), Thing::density, visit);
  walk::profiles(raw.liquid_water(), Thing::liquid_water, visit);
  walk::profiles(raw.surface_area(), Thing::surface_area, visit);
  walk::profiles(raw.hardness(), Thing::hardness, visit);
  walk::profiles(raw.strength(), Thing::strength, visit);
  walk::profiles(raw.impurities(), Thing::impurity, visit);
}

template <class Visit>
void visit_spans(const firnbook::Pit& raw, Visit&& visit) {
  visit_readings(raw, [&](const auto& it, Thing thing, std::uint32_t index, std::int32_t sub) {
    visit(walk::span_of(it, thing, index, sub));
  });
}

// visit(depth, place), for depths that are there.
template <class Visit>
void visit_test_depths(const pit::View& view, Visit&& visit) {
  using firnbook::StabilityTest;
  for (const pit::Fracture& fracture : view.fractures()) {
    if (fracture.raw->depth() == nullptr) continue;
    visit(*fracture.raw->depth(),
          place_of(Thing::fracture, static_cast<std::int32_t>(fracture.test),
                   field_id(firnbook::Fracture::VT_DEPTH), static_cast<std::int32_t>(fracture.stored)));
  }
  for (const pit::Test& test : view.tests()) {
    const auto* unbroken = test.raw->unbroken();
    for (std::uint32_t i = 0; i < pit::size_of(unbroken) && i < kMostListed; ++i) {
      visit(*unbroken->Get(i), place_of(Thing::test, static_cast<std::int32_t>(test.stored),
                                        field_id(StabilityTest::VT_UNBROKEN)));
    }
  }
}

// Those that are no end of a span.
template <class Visit>
void visit_single_depths(const pit::View& view, Visit&& visit) {
  for (const pit::Temperature& reading : view.temperatures()) {
    const firnbook::Depth* depth = view.raw().temperatures()->Get(reading.stored)->depth();
    if (depth == nullptr) continue;
    visit(*depth, place_of(Thing::temperature, static_cast<std::int32_t>(reading.stored),
                           field_id(firnbook::TemperatureReading::VT_DEPTH)));
  }
  visit_test_depths(view, visit);
}

template <class Visit>
void visit_depths(const pit::View& view, Visit&& visit) {
  visit_spans(view.raw(), [&](const Span& span) {
    if (span.top != nullptr) visit(*span.top, span.top_place);
    if (span.bottom != nullptr) visit(*span.bottom, span.bottom_place);
  });
  visit_single_depths(view, visit);
}

}  // namespace firn::checking
