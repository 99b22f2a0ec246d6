#include "exchange/table/table.h"

#include "exchange/table/cells.h"

namespace firn::exchange::table {
namespace {

struct Kind {
  void (*headings)(std::string& out);
  void (*rows)(Cells& cells, const firnbook::Pit& pit);
  std::string_view left_out;
};

// In the order of Table.
constexpr Kind kKinds[] = {
    {append_layer_headings, append_layers, "a table of layers holds the pit's layers and nothing else of it"},
    {append_test_headings, append_tests, "a table of tests holds the pit's tests and nothing else of it"},
    {append_pit_headings, append_pit,
     "a table of pits holds one line of a pit: not its layers, measurements, tests, remarks and photos"}};

const Kind& kind_of(Table table) {
  return kKinds[static_cast<std::size_t>(table) % 3];
}

}  // namespace

void append_header(std::string& out, Table table) {
  kind_of(table).headings(out);
}

void append_rows(std::string& out, Table table, const firnbook::Pit& pit, Notices& notices) {
  const Kind& kind = kind_of(table);
  Cells cells(out);
  kind.rows(cells, pit);
  notices.add({NoticeKind::left_out, 0, 0, "pit", std::string(kind.left_out)});
  if (cells.changed_text()) {
    notices.add(
        {NoticeKind::changed, 0, 0, "pit",
         "characters that a table cannot hold (control characters, bytes that are not UTF-8) became U+FFFD"});
  }
}

}  // namespace firn::exchange::table
