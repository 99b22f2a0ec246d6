// Structural and plausibility checks. One rule, one code, one place.
#pragma once

#include <string_view>
#include <vector>

#include "pit/view.h"
#include "schemas/report_generated.h"

namespace firn::checking {

using Checks = std::vector<firnbook::Check>;

// All rules over one pit, in the order of their codes and places. Memory of `out` is reused.
void check(const pit::View& pit, Checks& out);

// What the catalogue knows of a code. `message` and `remedy` hold {a}, {b}, {c} with a unit after a colon
// ({a:cm}, {b:mm}, {c:degC}, {a:n}), filled in by append_message and append_remedy.
struct Rule {
  firnbook::CheckCode code;
  firnbook::Severity severity;
  std::string_view message;
  std::string_view remedy;
  std::string_view source;
};
const Rule* find_rule(firnbook::CheckCode code);
const Rule* all_rules(std::size_t& count);

void append_message(std::string& out, const firnbook::Check& check);
void append_remedy(std::string& out, const firnbook::Check& check);

}  // namespace firn::checking
