// Snow profiles as CAAML, the trade's open XML standard: written as 6.0.4, read from 6.0.x and 5.0.
// README.md says what goes where.
#pragma once

#include <memory>
#include <string>
#include <string_view>

#include "exchange/notices.h"
#include "schemas/pit_generated.h"
#include "support/result.h"

namespace firn::exchange {

// The pit as the document has it, lists in the document's order (recording::to_bytes puts them in order).
// Faults of single values are told in `notices` and lose nothing else. Failures: FIRN_TOO_LARGE,
// FIRN_BAD_UTF8, FIRN_DAMAGED for what is no XML or carries a document type, FIRN_WRONG_KIND for another root
// or namespace.
Result<std::unique_ptr<firnbook::PitT>> read_caaml(std::string_view text, const Limits& limits,
                                                   Notices& notices);

// Appends a complete document, which validates against the standard's schema whatever the pit holds. What the
// standard has no place for is kept in customData and comes back; `notices` says what that was (kept), what
// was written in another form (changed), and what is lost (left_out).
Done write_caaml(std::string& out, const firnbook::Pit& pit, Notices& notices);

}  // namespace firn::exchange
