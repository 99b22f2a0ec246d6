// Bytes that come in: verified, and decoded where they are used.
#pragma once

#include "capi/guard.h"
#include "schemas/report_generated.h"

namespace firn::capi {

// Verifies; the pointer lives as long as the caller's bytes and the context's working space are untouched.
Result<const firnbook::Pit*> read_pit(firn_context& context, const std::uint8_t* bytes, std::size_t size);
Result<const firnbook::Report*> read_report(firn_context& context, const std::uint8_t* bytes,
                                            std::size_t size);

// Refuses a pit that shares one long text among so many tables that writing it all out would fill memory.
Done check_content(const firnbook::Pit& pit);

// Verifies and decodes into the context's view.
Done view_pit(firn_context& context, const std::uint8_t* bytes, std::size_t size);

// A report is about the very bytes it was made from.
Done check_same_pit(const firnbook::Report& report, const std::uint8_t* pit, std::size_t pit_size);

}  // namespace firn::capi
