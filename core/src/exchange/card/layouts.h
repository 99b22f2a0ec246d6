// How each field of the schema stands on a card, table by table: which sets of fields are usual, and how a
// value is written. README.md tells the same in words.
#pragma once

#include <cstdint>

#include "support/form.h"

namespace firn::exchange::card {

// How a value is written. README.md, "Values".
enum class Way : std::uint8_t {
  none,         // never on a card
  flag,         // one bit
  code,         // an enumeration: its rank
  number,       // in the coarsest of its units
  change,       // the same as the difference from the element before
  marks,        // ids of unreliable fields
  next_top,     // a depth where the element before ended
  next_depth,   // a depth counted on from the element before
  below_top,    // a depth counted on from this element's top
  at_boundary,  // a depth, most likely a boundary between layers
  boundaries,   // a list of such
  text,
  moment,
  time_span,
  place,
  table,
  tables,
  numbers,  // a list, each the difference from the one before
  codes     // a list of values of an enumeration
};

// A number is written in the first of these units that it is a whole multiple of.
struct Unit {
  std::int32_t size;
  std::uint8_t order;
};
struct Units {
  std::uint8_t count;
  bool is_signed;
  Unit units[3];
};

// The values of an enumeration in order of how usual they are.
struct Ranks {
  const std::uint8_t* values;
  std::uint8_t count;
  std::uint8_t order;
};

struct Layout;
struct Code {
  flatbuffers::voffset_t field = 0;  // as in form::Field
  Way way = Way::none;
  std::uint8_t order = 0;  // of a list's length, or of a depth
  const Units* units = nullptr;
  const Ranks* ranks = nullptr;
  const Layout* layout = nullptr;
};

struct Layout {
  const Code* codes;
  const std::uint64_t* shapes;  // sets of fields (bit n = field id n), the most usual first
  std::uint64_t usual;          // fields that are asked for one by one where no shape fits
  std::uint8_t count;
  std::uint8_t shape_count;
  std::uint8_t shape_order;
};

extern const Layout kPitLayout;

}  // namespace firn::exchange::card
