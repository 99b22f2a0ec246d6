// The schemas as rows: every table, field and enumeration that a pit, a report or bulletins are made of.
// rows.inc is made from schemas/*.fbs (tests/schema/rows_test.cpp compares, and says how to make it anew), so
// that one walk reads and writes all of them.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string_view>

#include "schemas/pit_generated.h"
#include "vocabulary/codes.h"

namespace firn::exchange {

enum class Type : std::uint8_t {
  gone,
  boolean,
  i8,
  u8,
  i16,
  u16,
  i32,
  u32,
  i64,
  u64,
  f32,
  text,
  table,
  structure
};

struct FieldRow {
  std::uint16_t name;    // in the names
  std::uint16_t offset;  // in the vtable, or of a struct's member in its bytes
  Type type;
  std::uint8_t refers;  // to the enumeration, table or struct; kNone for plain numbers and texts
  bool is_list;
  bool is_optional;  // a number that is absent when it is not there, and not when it is 0
};
inline constexpr std::uint8_t kNone = 255;

struct TableRow {
  std::uint16_t name;
  std::uint16_t first, count;    // of its fields, by id
  std::uint8_t size, alignment;  // of a struct; 0 for a table
};

struct EnumRow {
  std::uint16_t name;
  std::uint16_t first, count;  // of its values; none when the trade has codes for it
  CodeTable (*codes)();
};

struct ValueRow {
  std::uint16_t name;
  std::uint16_t number;
};

// Where they all are.
enum class Root : std::uint8_t { pit, report, bulletins };
const TableRow& root_table(Root root);
// As the document's one member: "pit".
std::string_view name_of(Root root);
const TableRow& table_row(std::uint8_t index);
const EnumRow& enum_row(std::uint8_t index);
// The first of a table's fields.
const FieldRow* fields_of(const TableRow& table);
const ValueRow* values_of(const EnumRow& row);
std::string_view name_at(std::uint16_t name);

inline std::string_view name_of(const FieldRow& field) {
  return name_at(field.name);
}
inline std::string_view name_of(const TableRow& table) {
  return name_at(table.name);
}
// A value as it is spelled: the trade's code, else its name in the schema. "" for a number that is not known.
std::string_view spelling_of(const EnumRow& row, std::uint64_t number);
// False when there is no such spelling.
bool parse_spelling(const EnumRow& row, std::string_view spelling, std::uint64_t& number);
// Bytes of one value in a buffer: 1, 2, 4 or 8.
std::size_t size_of(Type type);
// Null when there is none. The search begins behind `after`, a field of the same table, where one is given.
const FieldRow* find_field(const TableRow& table, std::string_view name, const FieldRow* after = nullptr);

// Names inside a place: of its thing, and of a thing's field. "" where there is none.
std::string_view thing_name(firnbook::Thing thing);
std::string_view field_name(firnbook::Thing thing, std::uint16_t field);
bool parse_thing(std::string_view name, firnbook::Thing& thing);
bool parse_field(firnbook::Thing thing, std::string_view name, std::uint16_t& field);

}  // namespace firn::exchange
