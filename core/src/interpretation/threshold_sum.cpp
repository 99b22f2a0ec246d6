// Threshold sum of a boundary (Schweizer and Jamieson 2007; limits from memory, hence parameters): six
// criteria, unweighted, one finding. Its limits differ from those of the yellow flags, which are the form for
// the field.
//
// Hand hardness comes in thirds of a step and the paper's limits in tenths. Ours: both are compared after
// rounding to one decimal, so that 5/3 meets 1.7 and 4/3 meets 1.3.
#include "interpretation/evidence.h"

namespace firn::interpretation {
namespace {

// Half away from zero, though sixths of ten leave no halves.
constexpr std::int32_t tenths_of(std::int32_t sixths) {
  return (sixths * 10 + 3) / 6;
}

Verdict judge_size(const pit::Layer& weaker, const Parameters& parameters) {
  const std::int32_t size = size_of_grains(weaker);
  if (size == 0) return Verdict::unknown;
  return judge(size >= parameters.sum_size_10um, size_is_unreliable(weaker));
}

Verdict judge_size_difference(const Interface& one, const Parameters& parameters) {
  const Flag difference = size_difference(one);
  if (difference.value < 0) return Verdict::unknown;
  return judge(difference.value >= parameters.sum_size_difference_10um,
               difference.verdict == Verdict::unknown);
}

Verdict judge_hardness(const Hardness& weaker, const Parameters& parameters) {
  if (weaker.sixths == 0) return Verdict::unknown;
  return judge(tenths_of(weaker.sixths) <= parameters.sum_hardness_tenths, weaker.unreliable);
}

Verdict judge_hardness_difference(const Interface& one, const Parameters& parameters) {
  const Flag difference = hardness_difference(one);
  if (difference.value < 0) return Verdict::unknown;
  return judge(tenths_of(difference.value) >= parameters.sum_hardness_difference_tenths,
               difference.verdict == Verdict::unknown);
}

Verdict judge_depth(const Interface& one, const Parameters& parameters) {
  if (one.depth < 0) return Verdict::unknown;
  return judge(one.depth >= parameters.sum_depth_from_10um && one.depth <= parameters.sum_depth_to_10um,
               one.depth_unreliable);
}

}  // namespace

// Where nothing but the depth is met there is nothing to say.
void threshold_sum(const Interfaces& interfaces, const Parameters& parameters, Findings& out) {
  constexpr std::int32_t kDepth = 5;
  for (const Interface& one : interfaces) {
    Criteria criteria;
    criteria.take(0, judge_size_difference(one, parameters));
    criteria.take(1, judge_size(one.weaker(), parameters));
    criteria.take(2, judge_hardness_difference(one, parameters));
    criteria.take(3, judge_hardness(one.weaker_hardness(), parameters));
    criteria.take(4, one.flags.form.verdict);
    criteria.take(kDepth, judge_depth(one, parameters));
    if ((criteria.met() & ~(1 << kDepth)) == 0) continue;
    const std::int32_t met = count_bits(criteria.met());
    const Verdict verdict = met >= parameters.sum_warning_count ? Verdict::raises
                            : met + count_bits(criteria.unknown()) >= parameters.sum_warning_count
                                ? Verdict::unknown
                                : Verdict::not_met;
    add(out, Method::threshold_sum, FindingKey::threshold_sum, verdict, one.place(), one.depth,
        {criteria.met(), criteria.unknown(), one.weaker_above ? 1 : 0});
  }
}

}  // namespace firn::interpretation
