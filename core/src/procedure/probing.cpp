#include "procedure/probing.h"

namespace firn::procedure {
namespace {

// The two lowest and the two highest, the sum and the number: all that the limits ask for.
struct Extremes {
  std::int64_t lowest = INT64_MAX, second_lowest = INT64_MAX;
  std::int64_t highest = INT64_MIN, second_highest = INT64_MIN;
  std::int64_t sum = 0;
  std::int64_t count = 0;
  std::uint32_t lowest_at = 0, highest_at = 0, ignored = 0;

  void add(std::int64_t strike, std::uint32_t position) {
    if (strike < 0) {
      ++ignored;
      return;
    }
    sum += strike;
    ++count;
    if (strike < lowest) {
      second_lowest = lowest;
      lowest = strike;
      lowest_at = position;
    } else if (strike < second_lowest) {
      second_lowest = strike;
    }
    if (strike > highest) {
      second_highest = highest;
      highest = strike;
      highest_at = position;
    } else if (strike > second_highest) {
      second_highest = strike;
    }
  }
};

// range > a fifth of sum / count, without dividing; no list is long enough to overflow this.
bool is_uneven(std::int64_t range, std::int64_t sum, std::int64_t count) {
  return range > kUneven_10um && range * kUnevenShare * count > sum;
}

// The odd one leaves `rest` strikes that add up to `sum`, the outermost of them `range` apart; `gap` lies
// between it and the next.
bool is_odd(std::int64_t gap, std::int64_t range, std::int64_t sum, std::int64_t rest) {
  return is_uneven(gap, sum, rest) && !is_uneven(range, sum, rest);
}

ProbeSpread spread_of(const Extremes& seen) {
  ProbeSpread spread;
  spread.count = static_cast<std::uint32_t>(seen.count);
  spread.ignored = seen.ignored;
  if (seen.count == 0) return spread;
  spread.lowest_10um = static_cast<std::int32_t>(seen.lowest);
  spread.highest_10um = static_cast<std::int32_t>(seen.highest);
  spread.mean_10um = static_cast<std::int32_t>(seen.sum / seen.count);
  spread.uneven = is_uneven(seen.highest - seen.lowest, seen.sum, seen.count);
  if (!spread.uneven || spread.too_few()) return spread;
  const std::int64_t rest = seen.count - 1;
  if (is_odd(seen.second_lowest - seen.lowest, seen.highest - seen.second_lowest, seen.sum - seen.lowest,
             rest)) {
    spread.odd = OddStrike::shallower;
    spread.odd_at = seen.lowest_at;
  } else if (is_odd(seen.highest - seen.second_highest, seen.second_highest - seen.lowest,
                    seen.sum - seen.highest, rest)) {
    spread.odd = OddStrike::deeper;
    spread.odd_at = seen.highest_at;
  }
  return spread;
}

}  // namespace

ProbeSpread spread_of(const std::int32_t* strikes_10um, std::size_t count) {
  Extremes seen;
  for (std::size_t i = 0; i < count; ++i) seen.add(strikes_10um[i], static_cast<std::uint32_t>(i));
  return spread_of(seen);
}

ProbeSpread spread_of(const flatbuffers::Vector<std::int32_t>* strikes_10um) {
  Extremes seen;
  for (std::uint32_t i = 0; i < pit::size_of(strikes_10um); ++i) seen.add(strikes_10um->Get(i), i);
  return spread_of(seen);
}

const char* words_of(const ProbeSpread& spread) {
  if (spread.odd == OddStrike::shallower) {
    return "One strike is much shallower than the rest: rock, ground, bush, log or a hard layer likely "
           "stopped "
           "the probe. Dig away from it.";
  }
  if (spread.odd == OddStrike::deeper) {
    return "One strike is much deeper than the rest: a hollow is likely there, or something stopped the "
           "others. "
           "Probe more before digging.";
  }
  if (spread.uneven) {
    return "The depth is uneven here: layers and tests will differ from step to step. Probe a wider area and "
           "dig where it is even, or name what lies below.";
  }
  if (spread.too_few()) return "Too few strikes to tell an odd one: probe three times at least.";
  return "The strikes are alike. They say nothing about what lies between them.";
}

}  // namespace firn::procedure
