// Languages as callers name them.
#pragma once

#include <cstdint>

#include "capi/guard.h"
#include "firnbook/language.h"
#include "note/words.h"

namespace firn::capi {

// FIRN_BAD_ARGUMENT for a number that is no firn_language.
Result<note::Language> language_of(std::uint8_t number);

}  // namespace firn::capi
