// Lemons of a boundary (McCammon and Schweizer 2002; limits from memory, hence parameters): five criteria,
// one finding, and no warning level, since none is known to us. Depth and thickness alone describe most
// boundaries: a finding needs one of the other three.
#include "interpretation/evidence.h"

namespace firn::interpretation {
namespace {

Verdict judge_depth(const Interface& one, const Parameters& parameters) {
  if (one.depth < 0) return Verdict::unknown;
  return judge(one.depth <= parameters.lemon_depth_10um, one.depth_unreliable);
}

Verdict judge_thickness(const pit::Layer& weaker, const Parameters& parameters) {
  const std::int32_t thickness = thickness_of(weaker);
  if (thickness == 0) return Verdict::unknown;
  return judge(thickness <= parameters.lemon_thickness_10um,
               weaker.is_unreliable(field_id(firnbook::Layer::VT_TOP)) ||
                   weaker.is_unreliable(field_id(firnbook::Layer::VT_BOTTOM)));
}

Verdict judge_hardness_difference(const Interface& one, const Parameters& parameters) {
  const Flag difference = hardness_difference(one);
  if (difference.value < 0) return Verdict::unknown;
  return judge(difference.value >= parameters.lemon_hardness_difference_sixths,
               difference.verdict == Verdict::unknown);
}

Verdict judge_size_difference(const Interface& one, const Parameters& parameters) {
  const Flag difference = size_difference(one);
  if (difference.value < 0) return Verdict::unknown;
  return judge(difference.value >= parameters.lemon_size_difference_10um,
               difference.verdict == Verdict::unknown);
}

}  // namespace

void lemons(const Interfaces& interfaces, const Parameters& parameters, Findings& out) {
  constexpr std::int32_t kDepthAndThickness = 3;
  for (const Interface& one : interfaces) {
    Criteria criteria;
    criteria.take(0, judge_depth(one, parameters));
    criteria.take(1, judge_thickness(one.weaker(), parameters));
    criteria.take(2, judge_hardness_difference(one, parameters));
    criteria.take(3, one.flags.form.verdict);
    criteria.take(4, judge_size_difference(one, parameters));
    if ((criteria.met() & ~kDepthAndThickness) == 0) continue;
    add(out, Method::lemons, FindingKey::lemons, Verdict::fact, one.place(), one.depth,
        {criteria.met(), criteria.unknown(), one.weaker_above ? 1 : 0});
  }
}

}  // namespace firn::interpretation
