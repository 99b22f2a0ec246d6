#include "recording/reshape.h"

#include <type_traits>
#include <utility>

#include "recording/fields.h"
#include "recording/overlay.h"
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

// Whether a member holds anything.
template <class T>
bool holds(const flatbuffers::Optional<T>& member) {
  return member.has_value();
}
template <class T>
bool holds(const std::unique_ptr<T>& member) {
  return member != nullptr;
}
template <class T>
bool holds(const std::vector<T>& member) {
  return !member.empty();
}
bool holds(const std::string& member) {
  return !member.empty();
}
bool holds(std::uint64_t member) {
  return member != 0;
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

// Calls `act` for every Depth in an object, however deep.
template <class Act>
struct EachDepth {
  Act& act;

  template <class Object>
  void in(Object& object) const {
    each_field(Of<typename std::remove_const_t<Object>::TableType>{},
               [&](flatbuffers::voffset_t, auto, auto member) { visit(object.*member); });
  }

 private:
  template <class T>
  void visit(const T&) const {}
  void visit(const std::unique_ptr<Depth>& depth) const {
    if (depth != nullptr) act(*depth);
  }
  template <class T>
  std::void_t<typename T::TableType> visit(const std::unique_ptr<T>& table) const {
    if (table != nullptr) in(*table);
  }
  template <class T>
  std::void_t<typename T::TableType> visit(const std::vector<std::unique_ptr<T>>& list) const {
    for (const std::unique_ptr<T>& element : list) visit(element);
  }
  void visit(std::vector<Depth>& depths) const {
    for (Depth& depth : depths) act(depth);
  }
  // For the walk that only looks: it hands out copies.
  void visit(const std::vector<Depth>& depths) const {
    for (Depth depth : depths) act(depth);
  }
};

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
  each_field(Of<Layer>{}, [&](flatbuffers::voffset_t field, auto, auto member) {
    LayerT& from = belongs_to_top(field)      ? upper
                   : belongs_to_bottom(field) ? lower
                   : holds(wins.*member)      ? wins
                                              : other;
    // A value takes its reliability along.
    unreliable |= from.unreliable & bit_of(field);
    if (field == Layer::VT_UNRELIABLE || field == Layer::VT_CONCERN) return;
    (*joined).*member = std::move(from.*member);
  });
  joined->concern = joined_concern(upper, lower);
  joined->unreliable = unreliable;
  return joined;
}

std::size_t content_of(const LayerT& layer) {
  std::size_t content = layer.words.size() + layer.candidates.size() * kElementContent;
  if (layer.name != nullptr) content += layer.name->words.size();
  const auto count = [&](auto, auto, auto) { content += kFieldContent; };
  each_field(Of<Layer>{}, count);
  each_field(Of<firnbook::LayerName>{}, count);
  return content;
}

bool can_map_depths(const firnbook::PitT& pit, const DepthMap& map) {
  bool fits = true;
  const auto look = [&](const Depth& depth) {
    if (depth.datum() != firnbook::Datum::surface) return;
    const std::int64_t value = mapped(depth.value_10um(), map);
    fits = fits && value >= INT32_MIN && value <= INT32_MAX;
  };
  EachDepth<decltype(look)>{look}.in(pit);
  return fits;
}

void map_depths(firnbook::PitT& pit, const DepthMap& map) {
  const auto move = [&](Depth& depth) {
    if (depth.datum() != firnbook::Datum::surface) return;
    const auto value = static_cast<std::int32_t>(mapped(depth.value_10um(), map));
    depth = Depth(value, depth.datum(), depth.direction());
  };
  EachDepth<decltype(move)>{move}.in(pit);
}

}  // namespace firn::recording
