// The table of methods.
#pragma once

#include "interpretation/interpret.h"

namespace firn::interpretation {

struct MethodRow {
  firnbook::Method method;
  firnbook::Verified verified;
  const char* file;
  const char* source;
};

// In the order of their numbers.
const MethodRow* all_methods(std::size_t& count);

}  // namespace firn::interpretation
