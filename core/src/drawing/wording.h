// The words of the picture: numbers with their units, codes, moments, names. Appended to a string that the
// caller reuses.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "schemas/pit_generated.h"
#include "vocabulary/codes.h"

namespace firn::drawing {

// The code, or the number where this library does not know it: nothing that was recorded is left blank.
void append_code_or_number(std::string& out, std::string_view code, std::uint8_t value);

template <class E>
void append_code(std::string& out, std::uint8_t value) {
  append_code_or_number(out, find_code(code_table<E>(), value), value);
}

// "31-68" in centimetres.
void append_span(std::string& out, std::int32_t top, std::int32_t bottom);
// "−7.5 °C"
void append_degrees(std::string& out, std::int32_t cdegc);
// "2027-01-16 11:20 (UTC−07:00)", as far as the moment is known.
void append_moment(std::string& out, const firnbook::Moment& moment);
// "270102 buried": the date as people write it into a field book, then what it says.
void append_layer_name(std::string& out, const firnbook::LayerName& name);

}  // namespace firn::drawing
