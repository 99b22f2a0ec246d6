// Field notes: one observation a line, in the trade's shorthand.
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
  // Every line that was kept unread, and every rounding that was made. Empty when there was none.
  std::vector<Failure> remarks;
};

// All lines are read before the first failure is answered; `others` receives the failures after it.
Result<NotesRead> read_notes(std::string_view text, const NotesOptions& options,
                             std::vector<Failure>& others);

// Prints a pit as notes that read back to the same bytes. What notes cannot hold yet is named in `lost`, one
// path each.
void write_notes(std::string& out, const firnbook::Pit& pit, std::vector<firnbook::Place>& lost);

}  // namespace firn::notation
