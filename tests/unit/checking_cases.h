// What triggers a check, and the nearest thing that does not.
#pragma once

#include <cstdint>
#include <vector>

#include "schemas/pit_generated.h"
#include "schemas/report_generated.h"

namespace firn::tests {

struct Case {
  firnbook::CheckCode code;
  void (*trigger)(firnbook::PitT&);
  void (*limit)(firnbook::PitT&);  // as near to the trigger as the rule lets pass
};

// The place and the numbers of the check that a trigger adds.
struct Said {
  firnbook::CheckCode code;
  const char* place;
  std::int32_t a, b, c;
};
std::vector<Said> said();

std::vector<Case> form_cases();
std::vector<Case> measured_cases();
std::vector<Case> limit_cases();
std::vector<Case> seen_cases();
std::vector<Case> representative_cases();
std::vector<Case> purpose_cases();

}  // namespace firn::tests
