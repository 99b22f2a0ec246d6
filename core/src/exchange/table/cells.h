// Cells of one row after the other. A value that was not observed is an empty cell.
#pragma once

#include <string>
#include <string_view>
#include <type_traits>

#include "schemas/pit_generated.h"
#include "support/text.h"
#include "vocabulary/codes.h"

namespace firn::exchange::table {

// The text as a spreadsheet takes it for text: wherever a cell could begin (at the beginning, behind ; tab
// and the ends of lines, blanks aside) an apostrophe goes before = + - @ ' and their wide forms, and at the
// very beginning before tab and line ends too. Taking one apostrophe away at each such place gives back the
// text. Control characters and bytes that are not UTF-8 become U+FFFD; `changed` says so.
std::string harmless(std::string_view text, bool& changed);

class Cells {
 public:
  explicit Cells(std::string& out) : out_(out) {}

  void text(std::string_view text);
  void text(const flatbuffers::String* text) { this->text(text == nullptr ? "" : text->string_view()); }
  void empty() { begin(); }
  // A number that came about here: a count, a position.
  void count(std::size_t value) {
    begin();
    append_unsigned(out_, value);
  }
  // value / 10^decimals
  template <class T>
  void number(const flatbuffers::Optional<T>& value, int decimals = 0) {
    begin();
    if (value) append_fixed(out_, *value, decimals);
  }
  void number(std::int64_t value, int decimals) {
    begin();
    append_fixed(out_, value, decimals);
  }
  void yes_no(const flatbuffers::Optional<bool>& value) { text(!value ? "" : *value ? "yes" : "no"); }
  // The trade's code; the number of a value that has none here.
  template <class E>
  void code(const flatbuffers::Optional<E>& value) {
    if (!value) return empty();
    code(code_of(*value), static_cast<std::uint8_t>(*value));
  }
  template <class E>
  std::enable_if_t<std::is_enum_v<E>> code(E value) {
    code(code_of(value), static_cast<std::uint8_t>(value));
  }
  void code(std::string_view code, std::uint8_t number);
  void moment(const firnbook::Moment* moment);
  // Three cells: the value as it was counted, from where, along which line.
  void depth(const firnbook::Depth* depth);
  // Names of the marked fields of a thing, as they head their columns.
  void marks(firnbook::Thing thing, std::uint64_t marks);
  void end_row();

  bool changed_text() const { return changed_; }

 private:
  void begin();

  std::string& out_;
  bool is_first_ = true;
  bool changed_ = false;
};

// What a table is made of: headings, and how the cell below each is filled from an item. A column may fill
// several cells, whose headings stand with commas between them.
template <class Item>
struct Column {
  std::string_view heading;
  void (*fill)(Cells& cells, const Item& item);
};

template <class Item, std::size_t kCount>
void append_headings(std::string& out, const Column<Item> (&columns)[kCount]) {
  for (std::size_t i = 0; i < kCount; ++i) {
    if (i != 0) out += ',';
    out += columns[i].heading;
  }
  out += "\r\n";
}

template <class Item, std::size_t kCount>
void fill_row(Cells& cells, const Column<Item> (&columns)[kCount], const Item& item) {
  for (const Column<Item>& column : columns) column.fill(cells, item);
  cells.end_row();
}

// The first columns of every table: what rows are joined by.
inline constexpr std::string_view kPitHeadings = "pit,title,time";
void fill_pit(Cells& cells, const firnbook::Pit& pit);

template <class List>
std::size_t size_of(const List* list) {
  return list == nullptr ? 0 : list->size();
}

void append_layer_headings(std::string& out);
void append_layers(Cells& cells, const firnbook::Pit& pit);
void append_test_headings(std::string& out);
void append_tests(Cells& cells, const firnbook::Pit& pit);
void append_pit_headings(std::string& out);
void append_pit(Cells& cells, const firnbook::Pit& pit);

}  // namespace firn::exchange::table
