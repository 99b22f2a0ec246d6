// Texts on a card: pieces of one to nine bytes, each with a code of its own, the usual ones short. The table
// is letters.def and is part of the card's version 1.
#pragma once

#include <string>

#include "exchange/card/bits.h"

namespace firn::exchange::card {

// Any bytes. At each place the longest piece that fits is taken; bytes that begin no piece stand as they are,
// as many as there are until one begins.
void code_letters(Bits& bits, std::string& text);

}  // namespace firn::exchange::card
