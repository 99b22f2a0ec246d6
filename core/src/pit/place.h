// Places, made quickly: the rules and methods make some dozens of them for every pit.
#pragma once

#include <cstdint>
#include <cstring>

#include "support/place.h"

namespace firn::pit {

// The same as firn::place_of, of two whole words. A processor that stores the four parts one by one and then
// reads them as two words, as every copy does, waits for the stores each time.
inline firnbook::Place place_of(firnbook::Thing thing, std::int32_t index, std::uint16_t field,
                                std::int32_t sub = -1) {
#if FLATBUFFERS_LITTLEENDIAN
  const std::uint64_t where =
      std::uint64_t{static_cast<std::uint32_t>(sub)} << 32 | static_cast<std::uint32_t>(index);
  const std::uint32_t what = static_cast<std::uint32_t>(thing) << 16 | field;
  firnbook::Place place;
  static_assert(sizeof place == sizeof where + sizeof what, "a place is two words");
  std::memcpy(static_cast<void*>(&place), &where, sizeof where);
  std::memcpy(reinterpret_cast<unsigned char*>(&place) + sizeof where, &what, sizeof what);
  return place;
#else
  return firn::place_of(thing, index, field, sub);
#endif
}

}  // namespace firn::pit
