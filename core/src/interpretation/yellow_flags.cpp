// The six yellow flags of a boundary (Jamieson and Schweizer 2005, Avalanche News 72; variables, limits and
// operators from memory, hence parameters): three of its weaker layer, three of the boundary.
#include "interpretation/evidence.h"

namespace firn::interpretation {
namespace {

Flag judge_size_difference(const Interface& one, const Parameters& parameters) {
  const Flag difference = size_difference(one);
  if (difference.value < 0) return {};
  return {
      judge(difference.value > parameters.flag_size_difference_10um, difference.verdict == Verdict::unknown),
      difference.value};
}

Flag judge_hardness_difference(const Interface& one, const Parameters& parameters) {
  const Flag difference = hardness_difference(one);
  if (difference.value < 0) return {};
  return {judge(difference.value > parameters.flag_hardness_difference_sixths,
                difference.verdict == Verdict::unknown),
          difference.value};
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

void flag_interface(const Interface& one, const Parameters& parameters, Writer& writer) {
  writer.begin(one.weaker(), one.weaker_above, one.place(), one.depth);
  writer.layer_flags(one.flags);
  writer.boundary(FindingKey::flag_size_difference, judge_size_difference(one, parameters),
                  parameters.flag_size_difference_10um);
  writer.boundary(FindingKey::flag_hardness_difference, judge_hardness_difference(one, parameters),
                  parameters.flag_hardness_difference_sixths);
  writer.boundary(FindingKey::flag_depth, judge_depth(one.depth, one.depth_unreliable, parameters),
                  parameters.flag_depth_from_10um);
  writer.count();
}

}  // namespace

void yellow_flags(const Interfaces& interfaces, const Parameters& parameters, Findings& out) {
  constexpr std::size_t kFindingsEach = 7;
  out.reserve(out.size() + kFindingsEach * (interfaces.size() + 1));
  Writer writer(parameters, out);
  for (const Interface& one : interfaces) flag_interface(one, parameters, writer);
}

}  // namespace firn::interpretation
