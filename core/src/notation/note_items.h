// The lines of field notes that are lists of named values, such as `surface PF 35, PS 15`, described by one
// table each. Reading and printing follow the same table, so that neither can forget a field.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <type_traits>
#include <vector>

#include "notation/note_line.h"
#include "support/form.h"
#include "support/place.h"

namespace firn::notation {

// A word of a table, in one pointer: there are hundreds.
struct Literal {
  const char* text = "";
  constexpr Literal() = default;
  constexpr Literal(const char* from) : text(from) {}
  constexpr bool empty() const { return *text == '\0'; }
  constexpr operator std::string_view() const { return text; }
};

enum class Form : std::uint8_t { number, length, age, code, text, moment, span, place, hex, base64 };

// One field of a schema table as notes write it. Made by the functions below.
struct Item {
  Literal key;     // "" when the value stands alone
  Literal what;    // in failures: "the air temperature in degrees"
  Literal unit{};  // behind a number; "" for none
  Literal lead{};  // items with the same lead follow each other without commas: wind M SW
  CodeTable (*codes)(const void* table) = nullptr;
  const form::Table& (*table)() = nullptr;  // of the schema, that holds the field
  Form form = Form::text;
  std::uint8_t field = 0;
  // May stand without its key, and is printed so: told by its unit, its code or its quotes.
  bool bare = false;
  // Read without its key, but printed with it, since its looks are not always enough.
  bool key_printed = false;
  // Words without quotes: up to the next comma, or to the end of the line.
  bool loose = false;
  bool whole_line = false;
  bool unit_is_silent = false;  // read and not printed
  bool main_of_lead = false;    // what a mark right behind the lead is for: wind U
  std::uint8_t decimals = 0;
  LengthUnit length_unit = LengthUnit::cm;

  const form::Field& schema_field() const { return table().first[field]; }
  std::string_view printed_unit() const { return unit_is_silent ? std::string_view{} : unit; }

  constexpr Item standing_alone() const {
    Item item = *this;
    item.bare = true;
    return item;
  }
  constexpr Item better_with_key() const {
    Item item = *this;
    item.bare = item.key_printed = true;
    return item;
  }
  // The codes may depend on another field of the table.
  constexpr Item coded_by(CodeTable (*codes_of)(const void* table)) const {
    Item item = *this;
    item.codes = codes_of;
    return item;
  }
  constexpr Item with_silent_unit(Literal word) const {
    Item item = *this;
    item.unit = word;
    item.unit_is_silent = true;
    return item;
  }
  constexpr Item in_loose_words() const {
    Item item = *this;
    item.loose = true;
    return item;
  }
  constexpr Item to_end_of_line() const {
    Item item = *this;
    item.loose = item.whole_line = true;
    return item;
  }
  constexpr Item first_of_lead() const {
    Item item = *this;
    item.main_of_lead = true;
    return item;
  }
  constexpr Item led_by(Literal word) const {
    Item item = *this;
    item.lead = word;
    return item;
  }
};

// The items of one line. With `first_is_main`, the first stands right behind the keyword.
struct ItemTable {
  const Item* items;
  std::size_t count;
  firnbook::Thing thing;
  bool first_is_main = false;
  // Fields of the table that other lines print. By default all: this line takes no marks but those of its
  // items.
  std::uint64_t elsewhere = ~std::uint64_t{0};
  const Item* begin() const { return items; }
  const Item* end() const { return items + count; }
  // Null when the schema table has no `unreliable`.
  std::uint64_t* mask(const void* table) const {
    return form::mask_in(items[0].table(), const_cast<void*>(table));
  }
  bool has_mask() const { return items[0].table().unreliable != nullptr; }
};

namespace item_detail {

template <class M>
struct Member;
template <class T, class V>
struct Member<V T::*> {
  using Table = T;
  using Type = V;
};
template <class V>
struct Unwrapped;
template <class V>
struct Unwrapped<flatbuffers::Optional<V>> {
  using Type = V;
};
template <auto M>
using TableOf = typename Member<decltype(M)>::Table;
template <auto M>
using ValueOf = typename Unwrapped<typename Member<decltype(M)>::Type>::Type;
inline CodeTable yes_no(const void*) {
  static constexpr Code kCodes[] = {{0, "no", ""}, {1, "yes", ""}};
  return {kCodes, 2};
}

template <class E>
CodeTable codes_of(const void*) {
  return code_table<E>();
}

template <auto M>
constexpr Item item(Form form, Literal key, int vtable_offset, Literal what) {
  Item item;
  item.key = key;
  item.what = what;
  item.form = form;
  item.field = static_cast<std::uint8_t>(field_id(vtable_offset));
  item.table = form::table_of<TableOf<M>>;
  return item;
}

}  // namespace item_detail

template <auto M>
constexpr Item number_item(Literal key, int vtable_offset, int decimals, Literal unit, Literal what) {
  Item item = item_detail::item<M>(Form::number, key, vtable_offset, what);
  item.decimals = static_cast<std::uint8_t>(decimals);
  item.unit = unit;
  return item;
}
template <auto M>
constexpr Item length_item(Literal key, int vtable_offset, LengthUnit unit, Literal what) {
  Item item = item_detail::item<M>(Form::length, key, vtable_offset, what);
  item.length_unit = unit;
  // Snow is measured in centimetres unless somebody says otherwise.
  item.unit = unit == LengthUnit::m ? "m" : unit == LengthUnit::mm ? "mm" : "";
  return item;
}
template <auto M>
constexpr Item age_item(Literal key, int vtable_offset, Literal what) {
  return item_detail::item<M>(Form::age, key, vtable_offset, what);
}
template <auto M>
constexpr Item code_item(Literal key, int vtable_offset, Literal what) {
  Item item = item_detail::item<M>(Form::code, key, vtable_offset, what);
  if constexpr (std::is_same_v<item_detail::ValueOf<M>, bool>) {
    item.codes = item_detail::yes_no;
  } else {
    item.codes = item_detail::codes_of<item_detail::ValueOf<M>>;
  }
  return item;
}
template <auto M>
constexpr Item text_item(Literal key, int vtable_offset, Literal what) {
  return item_detail::item<M>(Form::text, key, vtable_offset, what);
}
template <auto M>
constexpr Item moment_item(Literal key, int vtable_offset, Literal what) {
  return item_detail::item<M>(Form::moment, key, vtable_offset, what);
}
template <auto M>
constexpr Item span_item(Literal key, int vtable_offset, Literal what) {
  return item_detail::item<M>(Form::span, key, vtable_offset, what);
}
template <auto M>
constexpr Item place_item(Literal key, int vtable_offset, Literal what) {
  return item_detail::item<M>(Form::place, key, vtable_offset, what);
}
template <auto M>
constexpr Item bytes_item(Form form, Literal key, int vtable_offset, Literal what) {
  return item_detail::item<M>(form, key, vtable_offset, what);
}

// Directions as notes write them: slope-normal, vertical.
CodeTable direction_codes();

// Reads one item, or the items behind one lead, into `table`. `seen` holds a bit for each field that this
// table has been given, so that nothing is said twice.
bool read_item(Line& line, const ItemTable& items, void* table, std::uint64_t& seen);
// The value of one item, its key being known.
bool read_value(Line& line, const ItemTable& items, const Item& item, void* table, std::uint64_t& seen);
// Items with commas between them up to the end of the line, or to `closing`, which is left standing.
bool read_items(Line& line, const ItemTable& items, void* table, char closing = '\0');

bool has_item(const ItemTable& items, const Item& item, const void* table);
// True when the table holds anything that this table of items prints.
bool has_any(const ItemTable& items, const void* table);
void append_value(std::string& out, const ItemTable& items, const Item& item, const void* table);
// The items that are there, `separator` between them. False when there was none.
bool append_items(std::string& out, const ItemTable& items, const void* table,
                  std::string_view separator = ", ");
std::uint64_t fields_of(const ItemTable& items);

// Moves what `from` was given into `to`. A field that `to` holds already must say the same; `lines[field]` is
// the line that said it. Nothing is moved when something contradicts.
bool merge_items(Line& line, const ItemTable& items, void* from, void* to, std::uint32_t* lines);

}  // namespace firn::notation
