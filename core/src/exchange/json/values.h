// Values that JSON has no type for.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "schemas/pit_generated.h"

namespace firn::exchange {

// As ISO 8601 says it, as far as the moment is known: "2026-11", "2026-11-28T10:05-07:00". False when that
// would lose something: seconds below the precision, an offset that is not known but not 0, a year outside
// 0000 to 9999.
bool append_moment(std::string& out, const firnbook::Moment& moment);
std::optional<firnbook::Moment> parse_moment(std::string_view text);

}  // namespace firn::exchange
