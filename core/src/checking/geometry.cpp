// Depths, and how layers lie on each other. Rules and severities: reference list of derived checks
// (none is quoted from a standard); the schema for what "depth", "height" and "direction" mean.
#include "checking/depths.h"

namespace firn::checking {
namespace {

using firnbook::Datum;
using firnbook::Direction;

CheckCode below_snow_code(Thing thing) {
  if (thing == Thing::layer) return CheckCode::layer_below_ground;
  return thing == Thing::fracture ? CheckCode::fracture_below_snow : CheckCode::depth_below_snow;
}

void check_depths(const pit::View& pit, Reporter& out) {
  Gathered no_datum, no_hs, other_direction;
  visit_depths(pit, [&](const firnbook::Depth& depth, const Place& place) {
    const std::int32_t value = depth.value_10um();
    const std::int32_t below = pit.below_surface(&depth);
    if (value < 0) {
      out.add(CheckCode::negative_depth, place, value);
    } else if (below != pit::kUnknown && below < 0) {
      out.add(CheckCode::negative_depth, place, below);  // a height above the top of the snow
    }
    if (depth.datum() == Datum::unknown) {
      if (place.thing() == Thing::fracture) {
        out.add(CheckCode::fracture_depth_datum_unknown, place, value);
      } else {
        no_datum.add(place, value);
      }
    }
    if (depth.direction() != Direction::unknown && depth.direction() != pit.direction()) {
      other_direction.add(place, value);
    }
    if (depth.datum() == Datum::ground && pit.hs() == pit::kUnknown) no_hs.add(place, value);
    // A height below zero is already reported; as a depth it would be below the ground once more.
    if (depth.datum() != Datum::surface || pit.hs() == pit::kUnknown) return;
    if (below != pit::kUnknown && pit.hs() >= 0 && below > pit.hs()) {
      out.add(below_snow_code(place.thing()), place, value, pit.hs());
    }
  });
  no_datum.report(out, CheckCode::depth_datum_unknown);
  no_hs.report(out, CheckCode::depth_without_hs);
  other_direction.report(out, CheckCode::directions_mixed);
}

// As nearly every depth is: none of the rules of check_depths has anything to say about it.
bool is_plain(const pit::View& pit, const firnbook::Depth& depth) {
  const bool same_direction = depth.direction() == pit.direction() || depth.direction() == Direction::unknown;
  const std::int32_t lowest = pit.hs() < 0 ? INT32_MAX : pit.hs();  // unknown is below 0
  return depth.datum() == Datum::surface && same_direction && depth.value_10um() >= 0 &&
         depth.value_10um() <= lowest;
}

// And nearly every span, which is then not upside down either.
bool is_plain(const pit::View& pit, const firnbook::Depth* top, const firnbook::Depth* bottom) {
  if (top != nullptr && !is_plain(pit, *top)) return false;
  if (bottom != nullptr && !is_plain(pit, *bottom)) return false;
  return top == nullptr || bottom == nullptr || top->value_10um() < bottom->value_10um();
}

// One quick look at all depths of a pit, to leave out the two long ones where they would find nothing.
bool all_plain(const pit::View& pit) {
  bool plain = true;
  visit_readings(pit.raw(), [&](const auto& it, Thing, std::uint32_t, std::int32_t) {
    plain = plain && is_plain(pit, it.top(), it.bottom());
  });
  visit_single_depths(
      pit, [&](const firnbook::Depth& depth, const Place&) { plain = plain && is_plain(pit, depth); });
  return plain;
}

// Heights without HS have no depth yet, but which end is up can be told all the same.
bool upside_down(const pit::View& pit, const Span& span) {
  if (span.top == nullptr || span.bottom == nullptr) return false;
  if (span.top->datum() == span.bottom->datum() && span.top->direction() == span.bottom->direction()) {
    const std::int32_t top = span.top->value_10um();
    const std::int32_t bottom = span.bottom->value_10um();
    if (span.top->datum() == Datum::surface) return bottom <= top;
    if (span.top->datum() == Datum::ground) return bottom >= top;
    return bottom == top;
  }
  const std::int32_t top = pit.below_surface(span.top);
  const std::int32_t bottom = pit.below_surface(span.bottom);
  return top != pit::kUnknown && bottom != pit::kUnknown && bottom <= top;
}

void check_spans(const pit::View& pit, Reporter& out) {
  visit_spans(pit.raw(), [&](const Span& span) {
    if (!upside_down(pit, span)) return;
    const bool is_layer = span.top_place.thing() == Thing::layer;
    out.add(is_layer ? CheckCode::layer_upside_down : CheckCode::reading_upside_down, span.bottom_place,
            span.top->value_10um(), span.bottom->value_10um());
  });
}

void check_layer_ends(const pit::View& pit, Reporter& out) {
  for (const pit::Layer& layer : pit.layers()) {
    if (layer.raw->top() == nullptr) {
      out.add(CheckCode::layer_without_top, layer_place(layer, firnbook::Layer::VT_TOP));
    }
    if (layer.raw->bottom() == nullptr) {
      out.add(CheckCode::layer_without_bottom, layer_place(layer, firnbook::Layer::VT_BOTTOM));
    }
  }
}

void check_stored_order(const pit::View& pit, Reporter& out) {
  std::uint32_t previous = 0;
  for (const pit::Layer& layer : pit.layers()) {
    if (layer.top == pit::kUnknown) return;
    if (layer.stored < previous) {
      out.add(CheckCode::layers_out_of_order, layer_place(layer, firnbook::Layer::VT_TOP), layer.top);
      return;
    }
    previous = layer.stored;
  }
}

void check_against_ground(const pit::View& pit, const pit::Layer& deepest, Reporter& out) {
  if (!pit.raw().reached_ground().value_or(false) || pit.hs() == pit::kUnknown) return;
  if (deepest.bottom < pit.hs()) {
    out.add(CheckCode::layers_do_not_reach_ground, layer_place(deepest, firnbook::Layer::VT_BOTTOM),
            deepest.bottom, pit.hs());
  }
}

// Each layer against the deepest one above it: a layer that swallows several others is found as well.
void check_sequence(const pit::View& pit, Reporter& out) {
  const pit::Layer* deepest = nullptr;
  bool open = false;  // a layer whose bottom is not known may fill what looks like a gap
  for (const pit::Layer& layer : pit.layers()) {
    if (layer.top == pit::kUnknown) break;
    if (layer.bottom != pit::kUnknown && layer.bottom <= layer.top) {
      open = true;  // reported as upside down; what it fills is anybody's guess
      continue;
    }
    const Place top = layer_place(layer, firnbook::Layer::VT_TOP);
    if (deepest == nullptr) {
      if (layer.top > 0 && !open) out.add(CheckCode::first_layer_not_at_surface, top, layer.top);
    } else if (layer.top < deepest->bottom) {
      out.add(CheckCode::layers_overlap, top, layer.top, deepest->bottom, deepest->stored);
    } else if (layer.top > deepest->bottom && !open) {
      out.add(CheckCode::gap_between_layers, top, deepest->bottom, layer.top, deepest->stored);
    }
    if (layer.bottom == pit::kUnknown) {
      open = true;
    } else if (deepest == nullptr || layer.bottom > deepest->bottom) {
      deepest = &layer;
      open = false;
    }
  }
  if (deepest != nullptr && !open) check_against_ground(pit, *deepest, out);
}

}  // namespace

void check_geometry(const pit::View& pit, Reporter& out) {
  if (pit.hs() != pit::kUnknown && pit.hs() < 0) {
    out.add(CheckCode::negative_hs, place_of(Thing::snowpack, -1, field_id(firnbook::Snowpack::VT_HS_10UM)),
            pit.hs());
  }
  if (!all_plain(pit)) {
    check_depths(pit, out);
    check_spans(pit, out);
  }
  check_layer_ends(pit, out);
  check_stored_order(pit, out);
  check_sequence(pit, out);
}

}  // namespace firn::checking
