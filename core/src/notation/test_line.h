// The shorthand of a test result, in and out: `CT12 (SP) down 68 on SH 6.0 (270102)`.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "schemas/pit_generated.h"
#include "support/result.h"

namespace firn::notation {

// Reads one line into one test, or several for "x2". Columns in a failure count from 1 within `line`.
// Variants written in the field are read: a missing letter (CT12), @75 (datum stays unknown), END, inches
// (22in), Q1 beside a character, capital or small letters. What is not understood is refused with what was
// expected and where; nothing is skipped.
//
// Shorthand is strict (CT45 and CTM7 are refused); a value outside it has a spelled-out form (`CT crack 45`,
// `character ?77`), so that whatever a pit holds can be printed and read back:
//
//   of the fracture  down 68, up 72, @68, 68 cm; (SP), SP, Q1, (End), (WB); crack 12, cross 13, stage M,
//                    step 4, jump 2, cut 32, ease E, crossing P, force 210 N, part top, "words",
//                    unreliable(depth, tap), and at its end the layer: on SH 6.0 (270102 buried)
//   of the test      column 30x90 (across x up), column depth 110, slab left 15, ends vertical, slope 31,
//                    rule same tap, taps given 20, no fracture down 40, not valid: sank in, test
//                    "words", test outcome fractured, test unreliable(slope)
//   further ones     ; 23 (RP) down 40     x2 for two such tests
Result<std::vector<firnbook::StabilityTestT>> parse_test(std::string_view line);
// The same; every rounding and every conversion from inches is appended to `remarks` (status FIRN_OK).
Result<std::vector<firnbook::StabilityTestT>> parse_test(std::string_view line,
                                                         std::vector<Failure>& remarks);

// True when the line starts like a test result, so that its failure is the one to report.
bool looks_like_test(std::string_view line);

// The canonical line; parse_test reads it back to the same test. Several fractures of one column follow each
// other: `CT11 (SC) down 17; 23 (RP) down 40`.
void append_test(std::string& out, const firnbook::StabilityTest& test);

// The same for a test in the mutable form, whose depths need not say `implied`, the direction in which this
// pit is measured as everybody knows.
void append_test(std::string& out, firnbook::StabilityTestT test, firnbook::Direction implied);

// The score alone, as people say it: "CT12 (SP)", "ECTP13", "PST 32/100 (End)", "RB4 (WB)".
// Without a fracture, what came of the test: "CTN", "ECTX", "CT not valid".
void append_score(std::string& out, const firnbook::StabilityTest& test, const firnbook::Fracture* fracture);

}  // namespace firn::notation
