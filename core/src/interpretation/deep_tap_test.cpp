// Deep tap test: a column with all but about 15 cm of the slab taken off, for layers deeper than about 1 m
// (avalanche.org, read). What counts is the kind of fracture, sudden ones being the worse (read there), in
// the groups of the compression test. The score says nothing about a compression score: its slab is gone
// (derived from the set-up), so it never counts as ease.
#include "interpretation/evidence.h"

namespace firn::interpretation {

void deep_tap_test(const pit::View& pit, Findings& out) {
  read_characters(pit, TestKind::DT, Method::deep_tap_test, out);
}

}  // namespace firn::interpretation
