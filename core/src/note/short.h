// The shorter texts: one line, a briefing to be read aloud, a note for a phone's screen. They print only what
// raises concern, what was not tested, the observer's own words and cautions.
#pragma once

#include <string>

#include "note/words.h"
#include "pit/view.h"
#include "schemas/report_generated.h"

namespace firn::note {

// Closed by a newline, like the others.
void append_line(std::string& out, const pit::View& pit, const firnbook::Report& report, Language language);
void append_briefing(std::string& out, const pit::View& pit, const firnbook::Report& report,
                     Language language);
void append_short_note(std::string& out, const pit::View& pit, const firnbook::Report& report,
                       Language language);

}  // namespace firn::note
