// The six yellow flags of a boundary (Jamieson and Schweizer 2005, Avalanche News 72; variables, limits and
// operators from memory, hence parameters): three of its weaker layer, three of the boundary.
//
// The weaker layer is the softer one where they touch. Ours, where hardness is equal or not known on either
// side: the layer with more flags of its own, else the one below. A layer of persistent grains recorded
// without neighbours is read alone, with everything that needs a neighbour unknown.
#include "interpretation/evidence.h"
#include "vocabulary/codes.h"

namespace firn::interpretation {
namespace {

// Lists can be shared by many layers in hostile bytes: a look at more than this would be quadratic.
constexpr std::uint32_t kCandidatesRead = 16;

struct Flag {
  Verdict verdict = Verdict::unknown;
  std::int32_t value = 0;
};

struct Hardness {
  std::int32_t sixths = 0;  // 0 = not known
  bool unreliable = false;
};

struct LayerFlags {
  Flag size, hardness, form;
  std::int32_t met = 0;
};

bool is_hardness(std::uint8_t sixths) {
  return sixths >= static_cast<std::uint8_t>(firnbook::HandHardness::FistMinus) &&
         sixths <= static_cast<std::uint8_t>(firnbook::HandHardness::Ice);
}

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

std::int64_t size_of_grains(const pit::Layer& layer) {
  return layer.size > 0 ? layer.size : 0;
}
bool size_is_unreliable(const pit::Layer& layer) {
  return layer.is_unreliable(field_id(firnbook::Layer::VT_GRAIN_SIZE_10UM));
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

Flag judge_size_difference(const pit::Layer& above, const pit::Layer& below, const Parameters& parameters) {
  const std::int64_t upper = size_of_grains(above);
  const std::int64_t lower = size_of_grains(below);
  if (upper == 0 || lower == 0) return {};
  const std::int64_t difference = upper > lower ? upper - lower : lower - upper;
  return {judge(difference > parameters.flag_size_difference_10um,
                size_is_unreliable(above) || size_is_unreliable(below)),
          static_cast<std::int32_t>(difference)};
}

Flag judge_hardness_difference(const Hardness& above, const Hardness& below, const Parameters& parameters) {
  if (above.sixths == 0 || below.sixths == 0) return {};
  const std::int32_t difference =
      above.sixths > below.sixths ? above.sixths - below.sixths : below.sixths - above.sixths;
  return {
      judge(difference > parameters.flag_hardness_difference_sixths, above.unreliable || below.unreliable),
      difference};
}

Flag judge_depth(std::int32_t depth, bool unreliable, const Parameters& parameters) {
  if (depth < 0) return {};
  return {
      judge(depth >= parameters.flag_depth_from_10um && depth <= parameters.flag_depth_to_10um, unreliable),
      depth};
}

// Writes the seven findings of one boundary, or of one layer without neighbours.
class Writer {
 public:
  Writer(const Parameters& parameters, Findings& out) : parameters_(parameters), out_(out) {}

  void begin(const pit::Layer& weaker, bool weaker_above, const firnbook::Place& boundary,
             std::int32_t depth) {
    weaker_ = static_cast<std::int32_t>(weaker.stored);
    above_ = weaker_above ? 1 : 0;
    boundary_ = boundary;
    depth_ = depth;
    met_ = 0;
    unknown_ = 0;
  }

  void layer(FindingKey key, const Flag& flag, int field, std::int32_t threshold) {
    write(key, flag, place_of(Thing::layer, weaker_, field_id(field)), threshold);
  }
  void boundary(FindingKey key, const Flag& flag, std::int32_t threshold) {
    write(key, flag, boundary_, threshold);
  }

  void layer_flags(const LayerFlags& flags) {
    layer(FindingKey::flag_grain_size, flags.size, firnbook::Layer::VT_GRAIN_SIZE_10UM,
          parameters_.flag_size_10um);
    layer(FindingKey::flag_hardness, flags.hardness, firnbook::Layer::VT_HARDNESS,
          parameters_.flag_hardness_sixths);
    layer(FindingKey::flag_grain_form, flags.form, firnbook::Layer::VT_GRAIN_FORM, 0);
  }

  // Too many unknown to tell is not the same as too few.
  void count() {
    const Verdict verdict = met_ >= parameters_.flag_warning_count              ? Verdict::raises
                            : met_ + unknown_ >= parameters_.flag_warning_count ? Verdict::unknown
                                                                                : Verdict::not_met;
    add(out_, Method::yellow_flags, FindingKey::flag_count, verdict, boundary_, depth_,
        {met_, unknown_, above_});
  }

 private:
  void write(FindingKey key, const Flag& flag, const firnbook::Place& subject, std::int32_t threshold) {
    if (flag.verdict == Verdict::raises) ++met_;
    if (flag.verdict == Verdict::unknown) ++unknown_;
    add(out_, Method::yellow_flags, key, flag.verdict, subject, depth_, {flag.value, threshold, above_});
  }

  const Parameters& parameters_;
  Findings& out_;
  firnbook::Place boundary_;
  std::int32_t weaker_ = -1, above_ = 0, depth_ = kNoDepth;
  std::int32_t met_ = 0, unknown_ = 0;
};

bool weaker_is_above(const Hardness& above, const Hardness& below, const LayerFlags& above_flags,
                     const LayerFlags& below_flags) {
  if (above.sixths != 0 && below.sixths != 0 && above.sixths != below.sixths)
    return above.sixths < below.sixths;
  return above_flags.met > below_flags.met;
}

void flag_boundary(const pit::View& pit, const pit::Boundary& boundary, const Parameters& parameters,
                   Writer& writer) {
  const pit::Layer& above = pit.layers()[boundary.above];
  const pit::Layer& below = pit.layers()[boundary.below];
  const Hardness upper = hardness_at_bottom(above);
  const Hardness lower = hardness_at_top(below);
  const LayerFlags above_flags = judge_layer(above, upper, parameters);
  const LayerFlags below_flags = judge_layer(below, lower, parameters);
  const bool is_above = weaker_is_above(upper, lower, above_flags, below_flags);
  const bool depth_unreliable = above.is_unreliable(field_id(firnbook::Layer::VT_BOTTOM)) ||
                                below.is_unreliable(field_id(firnbook::Layer::VT_TOP));
  const firnbook::Place place =
      place_of(Thing::boundary, static_cast<std::int32_t>(above.stored), kWholeThing);
  writer.begin(is_above ? above : below, is_above, place, boundary.depth);
  writer.layer_flags(is_above ? above_flags : below_flags);
  writer.boundary(FindingKey::flag_size_difference, judge_size_difference(above, below, parameters),
                  parameters.flag_size_difference_10um);
  writer.boundary(FindingKey::flag_hardness_difference, judge_hardness_difference(upper, lower, parameters),
                  parameters.flag_hardness_difference_sixths);
  writer.boundary(FindingKey::flag_depth, judge_depth(boundary.depth, depth_unreliable, parameters),
                  parameters.flag_depth_from_10um);
  writer.count();
}

void flag_layer_alone(const pit::Layer& layer, const Parameters& parameters, Writer& writer) {
  const LayerFlags flags = judge_layer(layer, hardness_at_top(layer), parameters);
  if (flags.form.verdict != Verdict::raises) return;
  const firnbook::Place place = place_of(Thing::layer, static_cast<std::int32_t>(layer.stored), kWholeThing);
  writer.begin(layer, false, place, layer.top);
  writer.layer_flags(flags);
  writer.boundary(FindingKey::flag_size_difference, {}, parameters.flag_size_difference_10um);
  writer.boundary(FindingKey::flag_hardness_difference, {}, parameters.flag_hardness_difference_sixths);
  writer.boundary(FindingKey::flag_depth,
                  judge_depth(layer.top, layer.is_unreliable(field_id(firnbook::Layer::VT_TOP)), parameters),
                  parameters.flag_depth_from_10um);
  writer.count();
}

}  // namespace

// Boundaries in order of depth, then layers without neighbours: places.cpp counts on that order.
void yellow_flags(const pit::View& pit, const Parameters& parameters, Findings& out) {
  constexpr std::size_t kFindingsEach = 7;
  out.reserve(out.size() + kFindingsEach * (pit.boundaries().size() + 1));
  Writer writer(parameters, out);
  for (const pit::Boundary& boundary : pit.boundaries()) flag_boundary(pit, boundary, parameters, writer);
  std::size_t next = 0;
  for (std::uint32_t i = 0; i < pit.layers().size(); ++i) {
    while (next < pit.boundaries().size() && pit.boundaries()[next].below < i) ++next;
    const bool touches = next < pit.boundaries().size() &&
                         (pit.boundaries()[next].above == i || pit.boundaries()[next].below == i);
    if (!touches) flag_layer_alone(pit.layers()[i], parameters, writer);
  }
}

}  // namespace firn::interpretation
