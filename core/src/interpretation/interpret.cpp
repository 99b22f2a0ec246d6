#include "interpretation/interpret.h"

namespace firn::interpretation {
namespace {

using firnbook::Method;
using firnbook::Verified;

// How far the sources are known. README.md says which part of each was read.
constexpr struct {
  Method method;
  Verified verified;
} kMethods[] = {
    {Method::field_signs, Verified::read},           {Method::compression_test, Verified::read_secondary},
    {Method::extended_column_swiss, Verified::read}, {Method::saw_test, Verified::memory},
    {Method::yellow_flags, Verified::memory},        {Method::temperature_gradient, Verified::read},
    {Method::unclassed_tests, Verified::practice},
};

}  // namespace

void Analysis::clear() {
  checks.clear();
  findings.clear();
  concerns.clear();
  evidence.clear();
  not_loaded.clear();
  suggestions.clear();
  cautions.clear();
  methods.clear();
}

// Signs of instability first, then the tests, then structure.
void interpret(const pit::View& pit, const Parameters& parameters, Analysis& analysis) {
  analysis.clear();
  checking::check(pit, analysis.checks);
  field_signs(pit, analysis.findings);
  compression_test(pit, analysis.findings);
  extended_column(pit, parameters, analysis.findings);
  saw_test(pit, parameters, analysis.findings);
  other_tests(pit, analysis.findings);
  observer_marks(pit, analysis.findings);
  yellow_flags(pit, parameters, analysis.findings);
  temperature_gradient(pit, parameters, analysis.findings);
  for (const auto& used : kMethods) analysis.methods.emplace_back(used.method, used.verified);
  gather_concerns(pit, parameters, analysis);
  name_what_was_not_loaded(pit, parameters, analysis);
  gather_cautions(pit, parameters, analysis);
}

}  // namespace firn::interpretation
