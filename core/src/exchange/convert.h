// One door for every format: bytes in, bytes out.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

#include "exchange/notices.h"
#include "support/result.h"

namespace firn::exchange {

// The numbers of firn_format.
enum class Format : std::uint8_t {
  detect = 0,
  firn = 1,           // the schema's bytes: a pit, a report or bulletins
  json = 2,           // the same as JSON
  caaml = 3,          // a snow profile in the open XML standard
  notes = 4,          // field notes
  card = 5,           // a pit in few bytes
  card_text = 6,      // a card as Base45
  card_picture = 7,   // a card as a QR code in SVG; written only
  layers_table = 8,   // CSV, a row a layer; written only, as are the other two
  tests_table = 9,    // a row a fracture
  pits_table = 10,    // a row a pit
  bulletin_json = 11  // the open JSON of bulletins; read only
};

struct Conversion {
  Format from = Format::detect;
  Format to = Format::firn;
  Limits limits;
  // What a card cannot hold is left out with a notice, instead of refusing the pit.
  bool leave_out = false;
  // A line of field notes that is not understood is kept in the pit.
  bool keep_unread = false;
  // Confidential remarks stay behind.
  bool for_others = false;
  // A table without its headings, to go below another's rows.
  bool rows_only = false;
  // Of JSON; 0 for one line.
  unsigned indent = 2;
};

// What the bytes look like: never `detect`; field notes when they look like nothing else.
Format detect(std::string_view bytes);

// Appends to `out`. What was lost or changed on the way is told in `notices`; a failure is told of the first
// thing that cannot be read or held.
Done convert(std::string_view bytes, const Conversion& conversion, std::string& out, Notices& notices);

}  // namespace firn::exchange
