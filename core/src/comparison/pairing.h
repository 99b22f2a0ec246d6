// What belongs together along one line of depth. Private to the comparison.
#pragma once

#include <cstdint>
#include <vector>

#include "comparison/comparison.h"

namespace firn::comparison {

// A layer as far as pairing is concerned. Spans of one pit never overlap: what another layer covers is cut
// off.
struct Span {
  std::int64_t top, bottom;
  std::uint32_t layer;   // position in View::layers()
  std::uint8_t form;     // main class, 0 = not known
  std::int32_t partner;  // position among the other pit's spans, -1
};

struct Rejected {
  std::uint32_t layer;  // position in View::layers()
  firnbook::NotComparable reason;
};

void gather_spans(const pit::View& pit, std::vector<Span>& spans, std::vector<Rejected>& rejected);

// Sets the partners. No pair crosses another: what lies deeper in one pit is never paired with something
// shallower in the other.
// 1. Layers that overlap and whose grains do not differ in main class: of all ways without crossings, the one
//    with the largest overlap in all; the upper pair between equals.
// 2. Between those pairs, layers of one main class that lie no further apart than `apart_10um`, from the top
//    down: a thin layer that two people saw a little higher and lower.
// 3. What is left between those pairs and overlaps, by the same rule as 1: other grains at the same place.
void pair_spans(std::vector<Span>& reference, std::vector<Span>& other, std::int64_t apart_10um);

// Points along depth, in order of depth.
struct Point {
  std::int32_t depth;
  std::uint32_t index;
};
struct PointPair {
  std::int32_t reference, other;  // positions in the two lists, -1 for none
};
// Pairs each point with the nearest one of the other list within `apart_10um`, without crossings, from the
// top down; points without a partner stand between the pairs.
void pair_points(const std::vector<Point>& reference, const std::vector<Point>& other,
                 std::int64_t apart_10um, std::vector<PointPair>& pairs);

}  // namespace firn::comparison
