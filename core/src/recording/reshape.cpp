#include "recording/reshape.h"

#include <utility>

#include "recording/overlay.h"
#include "support/form.h"
#include "support/place.h"

namespace firn::recording {
namespace {

using firnbook::Depth;
using firnbook::Layer;
using firnbook::LayerT;
using firnbook::PartOfLayer;

constexpr std::uint64_t bit_of(int vtable_offset) {
  return std::uint64_t{1} << field_id(vtable_offset);
}

// A part of one of two joined layers, as a part of the joined layer. What lies at the seam is called the
// whole layer, because a joined layer has no name for its middle and a concern must not be lost.
PartOfLayer part_of_joined(PartOfLayer part, bool is_upper) {
  const PartOfLayer outer = is_upper ? PartOfLayer::top : PartOfLayer::bottom;
  return part == outer ? outer : PartOfLayer::all;
}

flatbuffers::Optional<PartOfLayer> joined_concern(const LayerT& upper, const LayerT& lower) {
  if (upper.concern && lower.concern) return PartOfLayer::all;
  if (upper.concern) return part_of_joined(*upper.concern, true);
  if (lower.concern) return part_of_joined(*lower.concern, false);
  return flatbuffers::nullopt;
}

bool belongs_to_top(flatbuffers::voffset_t field) {
  return field == Layer::VT_TOP || field == Layer::VT_HARDNESS_TOP;
}
bool belongs_to_bottom(flatbuffers::voffset_t field) {
  return field == Layer::VT_BOTTOM || field == Layer::VT_HARDNESS_BOTTOM;
}

std::int64_t mapped(std::int64_t value, const DepthMap& map) {
  // |value * multiply| < 2^62 for 32-bit numbers.
  const std::int64_t product = value * map.multiply;
  const std::int64_t divide = map.divide;
  const std::int64_t whole = product / divide;
  const std::int64_t rest = product % divide;
  const std::int64_t twice = rest < 0 ? -2 * rest : 2 * rest;
  const std::int64_t size = divide < 0 ? -divide : divide;
  const std::int64_t away = (rest < 0) != (divide < 0) ? -1 : 1;
  return whole + (twice >= size ? away : 0) + map.add;
}

// Whether the depth stays in the range of its number; moves it when asked to.
bool map_depth(Depth& depth, const DepthMap& map, bool moves) {
  if (depth.datum() != firnbook::Datum::surface) return true;
  const std::int64_t value = mapped(depth.value_10um(), map);
  if (value < INT32_MIN || value > INT32_MAX) return false;
  if (moves) depth = Depth(static_cast<std::int32_t>(value), depth.datum(), depth.direction());
  return true;
}

// Every Depth in an object, however deep.
bool map_object(const form::Table& table, void* object, const DepthMap& map, bool moves) {
  bool fits = true;
  for (const form::Field& field : table) {
    void* member = field.in(object);
    switch (field.kind) {
      case form::Kind::structure:
        if (field.element != form::Element::depth || !form::holds(field, object)) break;
        fits = map_depth(**static_cast<std::unique_ptr<Depth>*>(member), map, moves) && fits;
        break;
      case form::Kind::depths:
        for (Depth& depth : *static_cast<std::vector<Depth>*>(member)) {
          fits = map_depth(depth, map, moves) && fits;
        }
        break;
      case form::Kind::table:
        if (form::holds(field, object)) {
          fits = map_object(*field.table, field.table->get(member), map, moves) && fits;
        }
        break;
      case form::Kind::tables:
        for (std::size_t i = 0; i < field.table->size(member); ++i) {
          void* element = field.table->object_at(member, i);
          if (element != nullptr) fits = map_object(*field.table, element, map, moves) && fits;
        }
        break;
      default:
        break;
    }
  }
  return fits;
}

}  // namespace

std::unique_ptr<LayerT> split(LayerT& layer, const Depth& at) {
  constexpr std::uint64_t kBottom = bit_of(Layer::VT_BOTTOM) | bit_of(Layer::VT_HARDNESS_BOTTOM);
  constexpr std::uint64_t kTop = bit_of(Layer::VT_TOP) | bit_of(Layer::VT_HARDNESS_TOP);
  auto lower = std::make_unique<LayerT>(layer);
  auto cut_above = std::make_unique<Depth>(at);
  auto cut_below = std::make_unique<Depth>(at);
  layer.bottom = std::move(cut_above);
  layer.hardness_bottom = flatbuffers::nullopt;
  layer.unreliable &= ~kBottom;
  lower->top = std::move(cut_below);
  lower->hardness_top = flatbuffers::nullopt;
  lower->unreliable &= ~kTop;
  if (layer.concern && *layer.concern == PartOfLayer::top) {
    lower->concern = flatbuffers::nullopt;
  } else if (layer.concern && *layer.concern == PartOfLayer::bottom) {
    layer.concern = flatbuffers::nullopt;
  }
  return lower;
}

std::unique_ptr<LayerT> join(LayerT& upper, LayerT& lower, bool upper_wins) {
  auto joined = std::make_unique<LayerT>();
  LayerT& wins = upper_wins ? upper : lower;
  LayerT& other = upper_wins ? lower : upper;
  std::uint64_t unreliable = 0;
  for (const form::Field& field : form::table_of<firnbook::LayerT>()) {
    LayerT& from = belongs_to_top(field.field)      ? upper
                   : belongs_to_bottom(field.field) ? lower
                   : form::holds(field, &wins)      ? wins
                                                    : other;
    // A value takes its reliability along.
    unreliable |= from.unreliable & bit_of(field.field);
    if (field.field == Layer::VT_UNRELIABLE || field.field == Layer::VT_CONCERN) continue;
    form::swap(field, joined.get(), &from);
  }
  joined->concern = joined_concern(upper, lower);
  joined->unreliable = unreliable;
  return joined;
}

std::size_t content_of(const LayerT& layer) {
  std::size_t content = layer.words.size() + layer.candidates.size() * kElementContent;
  if (layer.name != nullptr) content += layer.name->words.size();
  const form::Table& name = *form::table_of<firnbook::LayerT>().find(Layer::VT_NAME)->table;
  content += kFieldContent * (std::size_t{form::table_of<firnbook::LayerT>().count} + name.count);
  return content;
}

bool can_map_depths(const firnbook::PitT& pit, const DepthMap& map) {
  return map_object(form::table_of<firnbook::PitT>(), const_cast<firnbook::PitT*>(&pit), map, false);
}

void map_depths(firnbook::PitT& pit, const DepthMap& map) {
  map_object(form::table_of<firnbook::PitT>(), &pit, map, true);
}

}  // namespace firn::recording
