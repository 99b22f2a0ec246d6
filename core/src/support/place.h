// Paths such as `tests[2].fractures[0].depth_cm`, printed from their structured form.
#pragma once

#include <cstdint>
#include <string>

#include "schemas/pit_generated.h"

namespace firn {

// Field id of a generated accessor: field_id(firnbook::Layer::VT_TOP).
constexpr std::uint16_t field_id(int vtable_offset) {
  return static_cast<std::uint16_t>((vtable_offset - 4) / 2);
}

// The path, with the field's name as people measure it: `_10um` fields print as `_cm`, grain sizes and water
// equivalents as `_mm`, elevations and position accuracy as `_m`; `_cdegc` as `_degc`, `_dkgm3` as `_kgm3`,
// `_e7deg` as `_deg`. A place that this version cannot name is "pit".
std::string path_of(const firnbook::Place& place);

inline firnbook::Place place_of(firnbook::Thing thing, std::int32_t index, std::uint16_t field,
                                std::int32_t sub = -1) {
  return {index, sub, field, thing};
}

}  // namespace firn
