// How wide text will be. The picture keeps text as text, so the font is the reader's: widths are those of
// a wide sans-serif family, and a narrower font only leaves more room.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

#include "drawing/svg.h"

namespace firn::drawing {

struct Fit {
  std::size_t bytes = 0;  // how much of the text fits, cut between characters
  Tenths width = 0;
  bool whole = true;
};

// As much of `text` as fits into `width`. Every character counts for something, so what is read is bounded
// by the width and not by the text.
Fit fit_text(std::string_view text, Tenths font, bool bold, Tenths width);
Tenths text_width(std::string_view text, Tenths font, bool bold);

// Copies text of a pit without line breaks, control characters and characters that turn the direction of
// what follows them (a name must not be able to reverse our own words).
void append_plain(std::string& out, std::string_view text);

// The text, or what fits of it with an ellipsis. Answers the width.
Tenths append_clipped(std::string& out, std::string_view text, Tenths font, bool bold, Tenths width);

}  // namespace firn::drawing
