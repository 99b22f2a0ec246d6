// Where layers touch, and which side is the weaker one: what every method of structure rests on.
//
// The weaker layer is the softer one where they touch. Ours, where hardness is equal or not known on either
// side: the layer with more yellow flags of its own, else the one below. A layer of persistent grains
// recorded without neighbours is read alone, with everything that needs a neighbour unknown.
#include "interpretation/evidence.h"
#include "vocabulary/codes.h"

namespace firn::interpretation {
namespace {

// Lists can be shared by many layers in hostile bytes: a look at more than this would be quadratic.
constexpr std::uint32_t kCandidatesRead = 16;

// Hardness of the side of a layer that touches the boundary, with the mark of the field it comes from.
Hardness side(const pit::Layer& layer, std::uint8_t sixths, bool own_field, std::uint16_t field) {
  if (!is_hardness(sixths)) return {};
  const std::uint16_t from = own_field ? field : field_id(firnbook::Layer::VT_HARDNESS);
  return {sixths, layer.is_unreliable(from)};
}
Hardness hardness_at_bottom(const pit::Layer& layer) {
  return side(layer, layer.hardness_bottom, layer.raw->hardness_bottom().has_value(),
              field_id(firnbook::Layer::VT_HARDNESS_BOTTOM));
}
Hardness hardness_at_top(const pit::Layer& layer) {
  return side(layer, layer.hardness_top, layer.raw->hardness_top().has_value(),
              field_id(firnbook::Layer::VT_HARDNESS_TOP));
}

Flag judge_size(const pit::Layer& layer, const Parameters& parameters) {
  if (size_of_grains(layer) == 0) return {};
  return {judge(layer.size > parameters.flag_size_10um, size_is_unreliable(layer)), layer.size};
}

Flag judge_hardness(const Hardness& hardness, const Parameters& parameters) {
  if (hardness.sixths == 0) return {};
  return {judge(hardness.sixths < parameters.flag_hardness_sixths, hardness.unreliable), hardness.sixths};
}

// Words that can only mean persistent grains ("sugary": FC or DH) meet the flag. Others leave it open.
Flag judge_candidates(const firnbook::Layer& layer) {
  const auto* candidates = layer.candidates();
  const std::uint32_t count = pit::size_of(candidates);
  if (count == 0 || count > kCandidatesRead) return {};
  for (std::uint32_t i = 0; i < count; ++i) {
    if (!is_persistent(static_cast<firnbook::GrainForm>(candidates->Get(i)))) return {};
  }
  return {Verdict::raises, static_cast<std::int32_t>(candidates->Get(0))};
}

Flag judge_form(const pit::Layer& layer) {
  if (layer.form == 0) return judge_candidates(*layer.raw);
  if (main_form(layer.form) == 0) return {Verdict::unknown, layer.form};
  const bool met = is_persistent(static_cast<firnbook::GrainForm>(layer.form));
  return {judge(met, layer.is_unreliable(field_id(firnbook::Layer::VT_GRAIN_FORM))), layer.form};
}

LayerFlags judge_layer(const pit::Layer& layer, const Hardness& hardness, const Parameters& parameters) {
  LayerFlags flags;
  flags.size = judge_size(layer, parameters);
  flags.hardness = judge_hardness(hardness, parameters);
  flags.form = judge_form(layer);
  for (const Flag* flag : {&flags.size, &flags.hardness, &flags.form}) {
    if (flag->verdict == Verdict::raises) ++flags.met;
  }
  return flags;
}

bool weaker_is_above(const Hardness& above, const Hardness& below, const LayerFlags& above_flags,
                     const LayerFlags& below_flags) {
  if (above.sixths != 0 && below.sixths != 0 && above.sixths != below.sixths)
    return above.sixths < below.sixths;
  return above_flags.met > below_flags.met;
}

Interface read_boundary(const pit::View& pit, const pit::Boundary& boundary, const Parameters& parameters) {
  const pit::Layer& above = pit.layers()[boundary.above];
  const pit::Layer& below = pit.layers()[boundary.below];
  Interface one{&above, &below, hardness_at_bottom(above), hardness_at_top(below), {}, boundary.depth,
                false,  false};
  const LayerFlags above_flags = judge_layer(above, one.upper, parameters);
  const LayerFlags below_flags = judge_layer(below, one.lower, parameters);
  one.weaker_above = weaker_is_above(one.upper, one.lower, above_flags, below_flags);
  one.flags = one.weaker_above ? above_flags : below_flags;
  one.depth_unreliable = above.is_unreliable(field_id(firnbook::Layer::VT_BOTTOM)) ||
                         below.is_unreliable(field_id(firnbook::Layer::VT_TOP));
  return one;
}

void read_layer_alone(const pit::Layer& layer, const Parameters& parameters, Interfaces& out) {
  const Hardness hardness = hardness_at_top(layer);
  const LayerFlags flags = judge_layer(layer, hardness, parameters);
  if (flags.form.verdict != Verdict::raises) return;
  out.push_back({nullptr,
                 &layer,
                 {},
                 hardness,
                 flags,
                 layer.top,
                 false,
                 layer.is_unreliable(field_id(firnbook::Layer::VT_TOP))});
}

}  // namespace

Flag size_difference(const Interface& one) {
  if (one.above == nullptr) return {Verdict::unknown, -1};
  const std::int32_t upper = size_of_grains(*one.above);
  const std::int32_t lower = size_of_grains(*one.below);
  if (upper == 0 || lower == 0) return {Verdict::unknown, -1};
  const bool unreliable = size_is_unreliable(*one.above) || size_is_unreliable(*one.below);
  return {unreliable ? Verdict::unknown : Verdict::fact, upper > lower ? upper - lower : lower - upper};
}

Flag hardness_difference(const Interface& one) {
  const std::int32_t upper = one.upper.sixths;
  const std::int32_t lower = one.lower.sixths;
  if (upper == 0 || lower == 0) return {Verdict::unknown, -1};
  const bool unreliable = one.upper.unreliable || one.lower.unreliable;
  return {unreliable ? Verdict::unknown : Verdict::fact, upper > lower ? upper - lower : lower - upper};
}

std::int32_t thickness_of(const pit::Layer& layer) {
  if (!layer.has_span()) return 0;
  const std::int64_t thickness = std::int64_t{layer.bottom} - layer.top;
  return thickness <= 0 ? 0 : static_cast<std::int32_t>(std::min<std::int64_t>(thickness, INT32_MAX));
}

firnbook::Place Interface::place() const {
  return above != nullptr ? place_of(Thing::boundary, static_cast<std::int32_t>(above->stored), kWholeThing)
                          : place_of(Thing::layer, static_cast<std::int32_t>(below->stored), kWholeThing);
}

// Boundaries in order of depth, then layers without neighbours: places.cpp counts on that order.
void look_at_structure(const pit::View& pit, const Parameters& parameters, Interfaces& out) {
  out.clear();
  for (const pit::Boundary& boundary : pit.boundaries())
    out.push_back(read_boundary(pit, boundary, parameters));
  std::size_t next = 0;
  for (std::uint32_t i = 0; i < pit.layers().size(); ++i) {
    while (next < pit.boundaries().size() && pit.boundaries()[next].below < i) ++next;
    const bool touches = next < pit.boundaries().size() &&
                         (pit.boundaries()[next].above == i || pit.boundaries()[next].below == i);
    if (!touches) read_layer_alone(pit.layers()[i], parameters, out);
  }
}

}  // namespace firn::interpretation
