// Structs of the schema as their fields in turn, for what no other form can say:
//
//   moment=5/0/3/0       local_s, offset_min, precision, offset_known
//   depth=3300/2/1       value_10um, datum, direction
//   place=-1/2/65535/6   index, sub, field, thing
#pragma once

#include <string>

#include "notation/scanner.h"
#include "schemas/pit_generated.h"

namespace firn::notation {

inline constexpr std::string_view kRawMoment = "moment=";

// False, and nothing read, when none stands here.
Result<bool> read_raw(Scanner& scanner, firnbook::Moment& moment);
Result<bool> read_raw(Scanner& scanner, firnbook::Depth& depth);
Result<bool> read_raw(Scanner& scanner, firnbook::Place& place);

void append_raw(std::string& out, const firnbook::Moment& moment);
void append_raw(std::string& out, const firnbook::Depth& depth);
void append_raw(std::string& out, const firnbook::Place& place);

}  // namespace firn::notation
