// Structural and plausibility checks. One rule, one code, one place.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "pit/view.h"
#include "schemas/report_generated.h"

namespace firn::checking {

using Checks = std::vector<firnbook::Check>;

// All rules over one pit, in the order of their blocks of codes (a hundred each) and of their places in the
// pit. Memory of `out` is reused.
void check(const pit::View& pit, Checks& out);

// What the catalogue knows of a code. `message` and `remedy` hold {a:unit}, {b:unit}, {c:unit}, filled in by
// append_message and append_remedy. Units: n, cm, mm, m, degC, kgm3, e7deg, ms; form, kind and sign print the
// schema's name of the number.
struct Rule {
  firnbook::CheckCode code;
  firnbook::Severity severity;
  std::string_view message;
  std::string_view remedy;
  std::string_view source;
};
const Rule* find_rule(firnbook::CheckCode code);
// In order of code.
const Rule* all_rules(std::size_t& count);

void append_message(std::string& out, const firnbook::Check& check);
void append_remedy(std::string& out, const firnbook::Check& check);

}  // namespace firn::checking
