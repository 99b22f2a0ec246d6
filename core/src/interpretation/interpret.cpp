#include "interpretation/interpret.h"

namespace firn::interpretation {
void Analysis::clear() {
  checks.clear();
  findings.clear();
  concerns.clear();
  evidence.clear();
  loaded.clear();
  not_loaded.clear();
  suggestions.clear();
  cautions.clear();
  methods.clear();
}

// Signs of instability first, then the tests, then structure.
void interpret(const pit::View& pit, const Parameters& parameters, Analysis& analysis) {
  analysis.clear();
  checking::check(pit, analysis.checks);
  Findings& findings = analysis.findings;
  Workspace& work = analysis.workspace;
  field_signs(pit, findings);
  compression_test(pit, findings);
  deep_tap_test(pit, findings);
  shear_quality(pit, findings);
  extended_column(pit, parameters, findings);
  extended_column_schemes(pit, parameters, findings);
  extended_column_early(pit, parameters, findings);
  extended_column_several(pit, parameters, findings);
  saw_test(pit, parameters, findings);
  rutschblock(pit, parameters, findings);
  swiss_precedence(pit, parameters, findings);
  shear_tests(pit, findings);
  other_tests(pit, findings);
  observer_marks(pit, findings);
  look_at_structure(pit, parameters, work.interfaces);
  yellow_flags(work.interfaces, parameters, findings);
  threshold_sum(work.interfaces, parameters, findings);
  lemons(work.interfaces, parameters, findings);
  weak_layer_build(work.interfaces, parameters, findings);
  temperature_gradient(pit, parameters, findings);
  look_at_densities(pit, work.densities);
  density_estimate(pit, work.densities, findings);
  water_equivalent(pit, work.densities, parameters, findings);
  slab_mechanics(pit, work.interfaces, work.densities, parameters, findings);
  name_methods(findings, analysis.methods);
  gather_concerns(pit, parameters, analysis);
  name_what_was_not_loaded(pit, parameters, analysis);
  gather_cautions(pit, parameters, analysis);
}

}  // namespace firn::interpretation
