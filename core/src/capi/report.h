// A report that is open for reading.
#pragma once

#include <string>

#include "capi/guard.h"
#include "firnbook/interpret.h"
#include "note/words.h"
#include "pit/view.h"
#include "schemas/report_generated.h"

struct firn_report {
  firn_context* context = nullptr;
  std::uint8_t* bytes = nullptr;
  const firnbook::Report* root = nullptr;
  firn::note::Language language = firn::note::Language::english;

  explicit firn_report(firn_context& owner) : context(&owner) {}
  ~firn_report() { context->memory.release(bytes); }
  firn_report(const firn_report&) = delete;
  firn_report& operator=(const firn_report&) = delete;
};

namespace firn::capi {

inline firn_context* context_of(const firn_report* report) noexcept {
  return report == nullptr ? nullptr : report->context;
}

// Element of a list, or a failure that names the list.
template <class V>
auto at(const V* vector, std::uint32_t position, const char* name) -> Result<decltype(vector->Get(0))> {
  if (position < pit::size_of(vector)) return vector->Get(position);
  return failure_of(FIRN_BAD_ARGUMENT, std::string("the report has no ") + name + " at this position",
                    "positions count from 0; firn_report_summarise says how many there are");
}

}  // namespace firn::capi
