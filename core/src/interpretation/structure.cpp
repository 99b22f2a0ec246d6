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

// Into where they are kept: a copy of what was just written waits for the writing.
void judge_layer(const pit::Layer& layer, const Hardness& hardness, const Parameters& parameters,
                 LayerFlags& flags) {
  flags.size = judge_size(layer, parameters);
  flags.hardness = judge_hardness(hardness, parameters);
  flags.form = judge_form(layer);
  flags.met = 0;
  for (const Flag* flag : {&flags.size, &flags.hardness, &flags.form}) {
    if (flag->verdict == Verdict::raises) ++flags.met;
  }
}

// Flags of a layer are asked for only where hardness does not tell the weaker one.
bool weaker_is_above(const Interface& one, const Parameters& parameters) {
  const std::int32_t upper = one.upper.sixths;
  const std::int32_t lower = one.lower.sixths;
  if (upper != 0 && lower != 0 && upper != lower) return upper < lower;
  LayerFlags above, below;
  judge_layer(*one.above, one.upper, parameters, above);
  judge_layer(*one.below, one.lower, parameters, below);
  return above.met > below.met;
}

void read_boundary(const pit::View& pit, const pit::Boundary& boundary, const Parameters& parameters,
                   Interface& one) {
  const pit::Layer& above = pit.layers()[boundary.above];
  const pit::Layer& below = pit.layers()[boundary.below];
  one.above = &above;
  one.below = &below;
  one.upper = hardness_at_bottom(above);
  one.lower = hardness_at_top(below);
  one.depth = boundary.depth;
  one.weaker_above = weaker_is_above(one, parameters);
  judge_layer(one.weaker(), one.weaker_hardness(), parameters, one.flags);
  one.depth_unreliable = above.is_unreliable(field_id(firnbook::Layer::VT_BOTTOM)) ||
                         below.is_unreliable(field_id(firnbook::Layer::VT_TOP));
}

void read_layer_alone(const pit::Layer& layer, const Parameters& parameters, Interfaces& out) {
  const Hardness hardness = hardness_at_top(layer);
  LayerFlags flags;
  judge_layer(layer, hardness, parameters, flags);
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

// Boundaries in order of depth, then layers without neighbours: places.cpp counts on that order.
void look_at_structure(const pit::View& pit, const Parameters& parameters, Interfaces& out) {
  out.clear();
  out.resize(pit.boundaries().size());
  for (std::size_t i = 0; i < out.size(); ++i) read_boundary(pit, pit.boundaries()[i], parameters, out[i]);
  std::size_t next = 0;
  for (std::uint32_t i = 0; i < pit.layers().size(); ++i) {
    while (next < pit.boundaries().size() && pit.boundaries()[next].below < i) ++next;
    const bool touches = next < pit.boundaries().size() &&
                         (pit.boundaries()[next].above == i || pit.boundaries()[next].below == i);
    if (!touches) read_layer_alone(pit.layers()[i], parameters, out);
  }
}

}  // namespace firn::interpretation
