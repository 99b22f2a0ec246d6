// The lines of field notes that are lists of named values, such as `surface PF 35, PS 15`, described by one
// table each. Reading and printing follow the same table, so that neither can forget a field.
#pragma once

#include <cstdint>
#include <limits>
#include <string>
#include <string_view>
#include <type_traits>
#include <vector>

#include "notation/note_line.h"
#include "support/place.h"

namespace firn::notation {

enum class Form : std::uint8_t { number, length, age, code, text, moment, span, place, bytes };

// One field of a schema table as notes write it. Made by the functions below.
struct Item {
  std::string_view key;   // "" when the value stands alone
  std::string_view what;  // in failures: "the air temperature in degrees"
  Form form = Form::text;
  std::uint8_t field = 0;
  // May stand without its key, and is printed so: told by its unit, its code or its quotes.
  bool bare = false;
  // Read without its key, but printed with it, since its looks are not always enough.
  bool key_printed = false;
  // Words without quotes: up to the next comma, or to the end of the line.
  bool loose = false;
  bool whole_line = false;
  std::uint8_t decimals = 0;
  LengthUnit length_unit = LengthUnit::cm;
  std::string_view unit{};         // printed behind a number; "" for none
  std::string_view silent_unit{};  // read and not printed
  // Items with the same lead follow each other without commas: wind M SW
  std::string_view lead{};
  bool main_of_lead = false;  // what a mark right behind the lead is for: wind U
  CodeTable (*codes)() = nullptr;
  CodeTable (*codes_in)(const void* table) = nullptr;  // where the codes depend on another field
  std::int64_t lowest = 0;
  std::int64_t highest = 0;
  bool (*get)(const void* table, std::int64_t& value) = nullptr;
  void (*set)(void* table, const std::int64_t* value) = nullptr;  // null clears
  void* (*member)(void* table) = nullptr;

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
  constexpr Item coded_by(CodeTable (*table)()) const {
    Item item = *this;
    item.codes = table;
    return item;
  }
  constexpr Item coded_in(CodeTable (*table)(const void*)) const {
    Item item = *this;
    item.codes_in = table;
    return item;
  }
  constexpr Item with_silent_unit(std::string_view word) const {
    Item item = *this;
    item.silent_unit = word;
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
  constexpr Item led_by(std::string_view word) const {
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
  std::uint64_t* (*mask)(void* table);  // null when the schema table has no `unreliable`
  bool first_is_main = false;
  const Item* begin() const { return items; }
  const Item* end() const { return items + count; }
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
template <class V, bool = std::is_enum_v<V>>
struct Underlying {
  using Type = V;
};
template <class V>
struct Underlying<V, true> {
  using Type = std::underlying_type_t<V>;
};

template <auto M>
using TableOf = typename Member<decltype(M)>::Table;
template <auto M>
using ValueOf = typename Unwrapped<typename Member<decltype(M)>::Type>::Type;
template <auto M>
using NumberOf = typename Underlying<ValueOf<M>>::Type;

template <auto M>
bool get(const void* table, std::int64_t& value) {
  const auto& field = static_cast<const TableOf<M>*>(table)->*M;
  if (field) value = static_cast<std::int64_t>(*field);
  return field.has_value();
}

template <auto M>
void set(void* table, const std::int64_t* value) {
  auto& field = static_cast<TableOf<M>*>(table)->*M;
  if (value == nullptr) {
    field = flatbuffers::nullopt;
  } else {
    field = static_cast<ValueOf<M>>(static_cast<NumberOf<M>>(*value));
  }
}

template <auto M>
void* member(void* table) {
  return &(static_cast<TableOf<M>*>(table)->*M);
}

template <class T>
std::uint64_t* mask(void* table) {
  return &static_cast<T*>(table)->unreliable;
}

inline CodeTable yes_no() {
  static constexpr Code kCodes[] = {{0, "no", ""}, {1, "yes", ""}};
  return {kCodes, 2};
}

template <auto M>
constexpr Item scalar(Form form, std::string_view key, int vtable_offset, std::string_view what) {
  Item item;
  item.key = key;
  item.what = what;
  item.form = form;
  item.field = static_cast<std::uint8_t>(field_id(vtable_offset));
  item.lowest = static_cast<std::int64_t>(std::numeric_limits<NumberOf<M>>::min());
  item.highest = static_cast<std::int64_t>(std::numeric_limits<NumberOf<M>>::max());
  item.get = get<M>;
  item.set = set<M>;
  return item;
}

template <auto M>
constexpr Item object(Form form, std::string_view key, int vtable_offset, std::string_view what) {
  Item item;
  item.key = key;
  item.what = what;
  item.form = form;
  item.field = static_cast<std::uint8_t>(field_id(vtable_offset));
  item.member = member<M>;
  return item;
}

}  // namespace item_detail

template <auto M>
constexpr Item number_item(std::string_view key, int vtable_offset, int decimals, std::string_view unit,
                           std::string_view what) {
  Item item = item_detail::scalar<M>(Form::number, key, vtable_offset, what);
  item.decimals = static_cast<std::uint8_t>(decimals);
  item.unit = unit;
  return item;
}
template <auto M>
constexpr Item length_item(std::string_view key, int vtable_offset, LengthUnit unit, std::string_view what) {
  Item item = item_detail::scalar<M>(Form::length, key, vtable_offset, what);
  item.length_unit = unit;
  // Snow is measured in centimetres unless somebody says otherwise.
  item.unit = unit == LengthUnit::m ? "m" : unit == LengthUnit::mm ? "mm" : "";
  return item;
}
template <auto M>
constexpr Item age_item(std::string_view key, int vtable_offset, std::string_view what) {
  return item_detail::scalar<M>(Form::age, key, vtable_offset, what);
}
template <auto M>
constexpr Item code_item(std::string_view key, int vtable_offset, std::string_view what) {
  Item item = item_detail::scalar<M>(Form::code, key, vtable_offset, what);
  if constexpr (std::is_same_v<item_detail::ValueOf<M>, bool>) {
    item.codes = item_detail::yes_no;
  } else {
    item.codes = code_table<item_detail::ValueOf<M>>;
  }
  return item;
}
template <auto M>
constexpr Item text_item(std::string_view key, int vtable_offset, std::string_view what) {
  return item_detail::object<M>(Form::text, key, vtable_offset, what);
}
template <auto M>
constexpr Item moment_item(std::string_view key, int vtable_offset, std::string_view what) {
  return item_detail::object<M>(Form::moment, key, vtable_offset, what);
}
template <auto M>
constexpr Item span_item(std::string_view key, int vtable_offset, std::string_view what) {
  return item_detail::object<M>(Form::span, key, vtable_offset, what);
}
template <auto M>
constexpr Item place_item(std::string_view key, int vtable_offset, std::string_view what) {
  return item_detail::object<M>(Form::place, key, vtable_offset, what);
}
template <auto M>
constexpr Item bytes_item(std::string_view key, int vtable_offset, std::string_view what) {
  return item_detail::object<M>(Form::bytes, key, vtable_offset, what);
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

// Where a thing of the pit is, for what cannot be printed.
struct Printing {
  std::string& out;
  std::vector<firnbook::Place>& lost;
  std::int32_t index = -1;
  std::int32_t sub = -1;

  void lose(firnbook::Thing thing, std::uint16_t field) const {
    lost.push_back(place_of(thing, index, field, sub));
  }
};
bool has_item(const ItemTable& items, const Item& item, const void* table);
// True when the table holds anything that this table of items prints.
bool has_any(const ItemTable& items, const void* table);
void append_value(const Printing& to, const ItemTable& items, const Item& item, const void* table);
// The items that are there, `separator` between them. False when there was none.
bool append_items(const Printing& to, const ItemTable& items, const void* table,
                  std::string_view separator = ", ");
// Bits of `unreliable` that stand for none of `fields`.
void lose_marks(const Printing& to, firnbook::Thing thing, std::uint64_t marks, std::uint64_t fields);
std::uint64_t fields_of(const ItemTable& items);

// Moves what `from` was given into `to`. A field that `to` holds already must say the same; `lines[field]` is
// the line that said it. Nothing is moved when something contradicts.
bool merge_items(Line& line, const ItemTable& items, void* from, void* to, std::uint32_t* lines);

}  // namespace firn::notation
