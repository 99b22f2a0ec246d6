// Runs the checks over a pit that a test built.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "../pits.h"
#include "checking/check.h"
#include "pit/verify.h"
#include "pit/view.h"
#include "support/place.h"
#include "support/text.h"

namespace firn::tests {

inline checking::Checks checks_of(const firnbook::PitT& pit) {
  const std::vector<std::uint8_t> bytes = bytes_of(pit);
  pit::AlignedBytes aligned;
  const auto verified = pit::verify(bytes.data(), bytes.size(), {}, aligned);
  checking::Checks checks;
  if (!verified) return checks;
  pit::View view;
  view.decode(**verified);
  checking::check(view, checks);
  return checks;
}

inline std::size_t count_of(const checking::Checks& checks, firnbook::CheckCode code) {
  std::size_t count = 0;
  for (const firnbook::Check& check : checks) count += check.code() == code ? 1u : 0u;
  return count;
}

// "probing_uneven at site.probes_cm": what a person would compare.
inline std::string line_of(const firnbook::Check& check) {
  return std::string(firnbook::EnumNameCheckCode(check.code())) + " at " + path_of(check.place());
}
inline std::vector<std::string> lines_of(const checking::Checks& checks) {
  std::vector<std::string> lines;
  for (const firnbook::Check& check : checks) lines.push_back(line_of(check));
  return lines;
}

inline std::string message_of(const firnbook::Check& check) {
  std::string out;
  checking::append_message(out, check);
  return out;
}
inline std::string remedy_of(const firnbook::Check& check) {
  std::string out;
  checking::append_remedy(out, check);
  return out;
}

}  // namespace firn::tests
