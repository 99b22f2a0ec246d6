// xs:date and xs:dateTime, as CAAML's times are written.
#pragma once

#include <string>
#include <string_view>

#include "schemas/pit_generated.h"

namespace firn::exchange::caaml {

enum class MomentRead : std::uint8_t { exact, cut, no_moment };  // cut: fractions of a second left out

MomentRead parse_moment(std::string_view text, firnbook::Moment& moment);

// What reading the text gives is in `read_back`: it knows no year or month alone, no minute without seconds,
// no offset of more than 14 hours. False, and nothing appended, for a moment outside the years 1 to 9999.
bool append_moment(std::string& out, const firnbook::Moment& moment, firnbook::Moment& read_back);

inline bool same(const firnbook::Moment& a, const firnbook::Moment& b) {
  return a.local_s() == b.local_s() && a.offset_min() == b.offset_min() && a.precision() == b.precision() &&
         a.offset_known() == b.offset_known();
}

}  // namespace firn::exchange::caaml
