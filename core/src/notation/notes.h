// Field notes: one observation a line, in the trade's shorthand. examples/first-pit/NOTES.md shows every
// line.
//
// Nothing is dropped: a line is understood, refused with its place and remedy, or kept as unread. Comments
// (lines that begin with #) are no observations and the only thing that is not kept, nor are blanks.
// Depths count from the surface along the plumb line until a line says otherwise ("heights from ground",
// "measured slope-normal"); test lines take the direction from there, too. Words without a grain form get the
// candidates that the trade's words have; no form is ever chosen.
#pragma once

#include <cstdint>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "schemas/pit_generated.h"
#include "support/result.h"

namespace firn::notation {

struct NotesOptions {
  // Keep a line that is not understood as Pit.unread instead of refusing the notes.
  bool keep_unread = false;
  std::size_t max_bytes = std::size_t{16} << 20;
};

struct NotesRead {
  // The schema's object form; recording::to_bytes makes bytes of it.
  std::unique_ptr<firnbook::PitT> pit;
  // Every line that was kept unread, and every rounding and repetition (status FIRN_OK) up to 10,000 of them.
  // Empty when there was none.
  std::vector<Failure> remarks;
};

// All lines are read before the first failure is answered; `others` receives the failures after it, up to
// 1,000 in all. FIRN_NOTES_CONTRADICT names both lines.
Result<NotesRead> read_notes(std::string_view text, const NotesOptions& options,
                             std::vector<Failure>& others);

// Prints a pit as notes that read back to the same bytes (recording::to_bytes makes them), whatever it holds;
// where they are longer than max_bytes, with a higher limit. Only a pit of a newer version may hold fields
// that are not known here: then `lost` names the whole pit.
void write_notes(std::string& out, const firnbook::Pit& pit, std::vector<firnbook::Place>& lost);

}  // namespace firn::notation
