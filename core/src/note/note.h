// A report in words.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>

#include "note/words.h"
#include "pit/view.h"
#include "schemas/report_generated.h"

namespace firn::note {

// How much of it. Every length carries its cautions and defers to the bulletin, local rules and trained
// people; all but `everything` print only what raises concern, and never a class that reassures.
enum class Length : std::uint8_t {
  everything,
  one_line,    // at most kLineCharacters
  briefing,    // read aloud in some 20 seconds: at most kBriefingWords
  short_note,  // a phone's screen or two
};
inline constexpr std::size_t kLineCharacters = 160;
inline constexpr std::size_t kBriefingWords = 90;

// The field note with its interpretation, as plain UTF-8 text: age and place first, signs of instability
// before any test, layers of concern with their evidence, what was not loaded, the observer's own words,
// checks, cautions. Lines of at most 100 characters.
void append_note(std::string& out, const pit::View& pit, const firnbook::Report& report,
                 Language language = Language::english);
void append_text(std::string& out, const pit::View& pit, const firnbook::Report& report, Language language,
                 Length length);

}  // namespace firn::note
