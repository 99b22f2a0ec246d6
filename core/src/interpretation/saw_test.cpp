// Propagation saw test: propagation is likely when the cut stayed below half of the column and the crack ran
// to its end (Gauthier and Jamieson 2008; the rule and its strict "below" from memory). Anything else is a
// criterion not met, never a sign that the layer would hold: one in five such results came from places that
// had propagated (same paper, abstract, read).
#include "interpretation/evidence.h"

namespace firn::interpretation {
namespace {

using firnbook::SawEnd;

// Cut and column in one comparison without division. A cut longer than its column is a slip: nothing follows.
Known cut_is_short(std::int64_t cut, std::int64_t column, std::int64_t percent) {
  if (cut <= 0 || column <= 0 || cut > column) return Known::unknown;
  return cut * 100 < percent * column ? Known::yes : Known::no;
}

Known ran_to_end(std::uint8_t end) {
  switch (static_cast<SawEnd>(end)) {
    case SawEnd::End:
      return Known::yes;
    case SawEnd::SF:
    case SawEnd::Arr:
      return Known::no;
  }
  return Known::unknown;
}

bool is_unreliable(const pit::Test& test, const pit::Fracture& fracture) {
  constexpr std::uint64_t kFields = std::uint64_t{1} << field_id(firnbook::Fracture::VT_CUT_10UM) |
                                    std::uint64_t{1} << field_id(firnbook::Fracture::VT_SAW_END);
  constexpr std::uint64_t kLength = std::uint64_t{1}
                                    << field_id(firnbook::StabilityTest::VT_COLUMN_LENGTH_10UM);
  return (fracture.unreliable & kFields) != 0 || (test.raw->unreliable() & kLength) != 0;
}

std::int32_t or_zero(std::int32_t value) {
  return value == pit::kUnknown ? 0 : value;
}

void read_fracture(const pit::Test& test, const pit::Fracture& fracture, const Parameters& parameters,
                   Findings& out) {
  const Known cut = cut_is_short(fracture.cut, test.column_length, parameters.pst_percent);
  const Known end = ran_to_end(fracture.saw_end);
  FindingKey key = FindingKey::pst_unknown;
  Verdict verdict = Verdict::unknown;
  if (fracture.cut > 0 && fracture.cut == test.column_length) {
    key = FindingKey::pst_no_fracture;
    verdict = judge(false, is_unreliable(test, fracture));
  } else if (cut == Known::yes && end == Known::yes) {
    key = FindingKey::pst_propagation_likely;
    verdict = Verdict::raises;
  } else if (cut == Known::no || end == Known::no) {
    key = FindingKey::pst_criterion_not_met;
    verdict = judge(false, is_unreliable(test, fracture));
  }
  add(out, Method::saw_test, key, verdict, place_of_fracture(test, fracture), fracture.depth,
      {or_zero(fracture.cut), or_zero(test.column_length), fracture.saw_end});
}

// How the column was cut, where that changes what its number means. Ends at right angles to the slope give
// cuts up to half shorter than vertical ones (NHESS 25:321, 2025, read). The usual length is 1 m up the
// slope, or the depth of the layer where that is more (from memory; field data agree, and a recorded column
// of 1 m at 120 cm does not, so it is stated and not refused).
void state_column(const pit::Test& test, std::int32_t depth, const firnbook::Place& subject,
                  const Parameters& parameters, Findings& out) {
  if (pit::number(test.raw->column_ends()) == static_cast<std::uint8_t>(firnbook::ColumnEnds::slope_normal)) {
    add(out, Method::saw_test, FindingKey::pst_ends_slope_normal, Verdict::fact, subject, depth, {});
  }
  if (test.column_length <= 0 || depth < 0) return;
  const std::int32_t usual = std::max(parameters.pst_usual_length_10um, depth);
  const std::int64_t apart = std::int64_t{test.column_length} - usual;
  if ((apart < 0 ? -apart : apart) <= parameters.tolerance_10um) return;
  add(out, Method::saw_test, FindingKey::pst_length_off_rule, Verdict::fact, subject, depth,
      {test.column_length, usual, 0});
}

}  // namespace

void saw_test(const pit::View& pit, const Parameters& parameters, Findings& out) {
  for (const pit::Test& test : pit.tests()) {
    if (test.kind != TestKind::PST || !is_valid(test)) continue;
    if (has_no_fracture(test)) {
      add(out, Method::saw_test, FindingKey::pst_no_fracture, Verdict::not_met, place_of_test(test), kNoDepth,
          {0, or_zero(test.column_length), 0});
    }
    for (std::uint32_t k = 0; k < test.fracture_count; ++k) {
      const pit::Fracture& fracture = pit.fractures()[test.first_fracture + k];
      read_fracture(test, fracture, parameters, out);
      state_column(test, fracture.depth, place_of_fracture(test, fracture), parameters, out);
    }
  }
}

}  // namespace firn::interpretation
