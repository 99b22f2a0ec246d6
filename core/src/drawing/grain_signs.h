// Signs of the grain forms, drawn as paths.
//
// The forms are those of the ICSSG (Fierz and others 2009), the paths our own. From memory: the nine main
// classes (confidence high; machine-made snow medium), PPpl and PPsd (high), MFcr (medium). The signs of
// the other subclasses could not be checked against the ICSSG's own plates, so they get the sign of their
// main class, and the four-letter code is always printed beside it.
#pragma once

#include <cstdint>
#include <string>

#include "drawing/svg.h"

namespace firn::drawing {

// A sign in a box of `size`, its top left corner at (x, y). False, with nothing drawn, for a number that is
// no grain form.
bool append_grain_sign(std::string& out, std::uint8_t form, Tenths x, Tenths y, Tenths size);

bool has_grain_sign(std::uint8_t form);

}  // namespace firn::drawing
