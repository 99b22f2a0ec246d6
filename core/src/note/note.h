// A report in words.
#pragma once

#include <string>

#include "pit/view.h"
#include "schemas/report_generated.h"

namespace firn::note {

// The field note with its interpretation, as plain UTF-8 text: age and place first, signs of instability
// before any test, layers of concern with their evidence, what was not loaded, the observer's own words,
// checks, cautions. Lines of at most 100 characters.
void append_note(std::string& out, const pit::View& pit, const firnbook::Report& report);

}  // namespace firn::note
