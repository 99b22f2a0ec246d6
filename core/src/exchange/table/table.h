// Pits as tables for a spreadsheet: CSV as in RFC 4180 (commas, quotes, CR LF), UTF-8, written only.
// README.md says what stands in which column, and what is done to text that a spreadsheet would take for a
// formula.
#pragma once

#include <cstdint>
#include <string>

#include "exchange/notices.h"
#include "schemas/pit_generated.h"

namespace firn::exchange::table {

enum class Table : std::uint8_t {
  layers,  // one row a layer
  tests,   // one row a fracture; a test without one has a row of its own
  pits     // one row a pit
};

// Rows of several pits go under one header, one after the other.
void append_header(std::string& out, Table table);
// Tells once what the table does not hold of the pit, and each text that was changed.
void append_rows(std::string& out, Table table, const firnbook::Pit& pit, Notices& notices);

}  // namespace firn::exchange::table
