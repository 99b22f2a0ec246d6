// One sentence for one thing of the record or the report.
#pragma once

#include <cstdint>
#include <string>

#include "note/words.h"
#include "pit/view.h"
#include "schemas/report_generated.h"

namespace firn::note {

// "2026-11-28 10:05 (UTC-07:00)", as far as it is known; nothing for a moment without a date.
void append_moment(std::string& out, const firnbook::Moment* moment, Language language = Language::english);

// "2080 m, NE, 24 deg steep"; what is not recorded is left out.
void append_site(std::string& out, const firnbook::Site* site, Language language);

// "RG rounded grains, 4F, "wind slab"" for a stored layer; nothing when the position is not there.
void append_layer(std::string& out, const firnbook::Pit& pit, std::int32_t stored, Language language);

// " at 17 cm", " 68 to 69 cm", or nothing where the depth cannot be told.
void append_span(std::string& out, const firnbook::Concern& concern, Language language);

// "Layer 68 to 69 cm: SH surface hoar, F. A crack ran here."
void append_concern(std::string& out, const firnbook::Pit& pit, const firnbook::Concern& concern,
                    Language language);

// "CT12 (SP) at 68 cm: broke suddenly" for any finding that is about one fracture, test, sign or reading.
void append_finding(std::string& out, const firnbook::Pit& pit, const firnbook::Finding& finding,
                    Language language = Language::english);

// "CT12 (SP) at 68 cm", what is written of the test alone; nothing when the finding is about no test.
void append_test(std::string& out, const firnbook::Pit& pit, const firnbook::Finding& finding,
                 Language language);

// A text of the observer's in quotation marks, cut after `most` bytes. The record at the end of the note has
// every word; elsewhere a text shared by a million hostile tables must not become a million copies.
void append_quoted(std::string& out, std::string_view text, std::size_t most = 240);

// With a capital letter and a full stop; the catalogues keep their sentences small for other uses.
void append_sentence(std::string& out, std::string_view words);

}  // namespace firn::note
