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
Result<std::vector<firnbook::StabilityTestT>> parse_test(std::string_view line);

// True when the line starts like a test result, so that its failure is the one to report.
bool looks_like_test(std::string_view line);

// The canonical line; parse_test reads it back to the same test. One line a fracture for tests that allow
// several: `CT11 (SC) down 17; 23 (RP) down 40`.
void append_test(std::string& out, const firnbook::StabilityTest& test);

// The score alone, as people say it: "CT12 (SP)", "ECTP13", "PST 32/100 (End)", "RB4 (WB)".
void append_score(std::string& out, const firnbook::StabilityTest& test, const firnbook::Fracture* fracture);

}  // namespace firn::notation
