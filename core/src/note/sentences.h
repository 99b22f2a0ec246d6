// One sentence for one thing of the record or the report.
#pragma once

#include <cstdint>
#include <string>

#include "pit/view.h"
#include "schemas/report_generated.h"

namespace firn::note {

// "2026-11-28 10:05 (UTC-07:00)", as far as it is known; nothing for a moment without a date.
void append_moment(std::string& out, const firnbook::Moment* moment);

// "2080 m, NE, 24 deg"; what is not recorded is left out.
void append_site(std::string& out, const firnbook::Site* site);

// "5 to 17 cm: RG, 4F, "wind slab"" for a stored layer; nothing when the position is not there.
void append_layer(std::string& out, const firnbook::Pit& pit, std::int32_t stored);

// "CT12 (SP) at 68 cm: broke suddenly" for any finding that is about one fracture, test, sign or reading.
void append_finding(std::string& out, const firnbook::Pit& pit, const firnbook::Finding& finding);

}  // namespace firn::note
