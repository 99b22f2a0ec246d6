// The mutable form of a pit (the schema's object form: PitT, LayerT, …) seen field by field at run time. One
// walk over these tables does for every type what would otherwise be written, and compiled, once a type:
// unpacking, packing, laying one edit over another, clearing, tidying. form_tables.cpp lists the fields.
#pragma once

#include <cstddef>
#include <cstdint>
#include <memory>
#include <string_view>

#include "schemas/pit_generated.h"

namespace firn::form {

enum class Kind : std::uint8_t {
  optional,   // flatbuffers::Optional of a number or an enumeration
  number,     // a number that is absent when it is 0
  text,       // std::string
  structure,  // unique_ptr to a struct
  table,      // unique_ptr to the form of another table
  numbers,    // vector of numbers
  depths,     // vector of Depth
  tables      // vector of unique_ptr to the form of another table; elements may be null
};

// What a field, or an element of its list, is made of.
enum class Element : std::uint8_t {
  none,  // text and tables
  yes_no,
  bits8,
  bits16,
  bits32,
  bits64,
  real,
  grain_form,
  depth,
  moment,
  time_span,
  place
};

struct Table;

struct Field {
  flatbuffers::voffset_t field = 0;  // offset in the vtable, as the generated VT_ constants
  std::uint16_t offset = 0;          // of the member in the object
  Kind kind = Kind::optional;
  Element element = Element::none;
  bool is_signed = false;
  const Table* table = nullptr;  // of the table, or of the elements of the list

  void* in(void* object) const { return static_cast<char*>(object) + offset; }
  const void* in(const void* object) const { return static_cast<const char*>(object) + offset; }
};

// Fields in order of their ids, none left out. The functions take a member: a unique_ptr to an object of this
// table, or a vector of such.
struct Table {
  const Field* first = nullptr;
  std::uint16_t count = 0;
  // Null where the table has no such field.
  const Field *top = nullptr, *bottom = nullptr, *depth = nullptr, *about = nullptr, *unreliable = nullptr;
  const char* names = nullptr;  // of all fields in turn, each ended by a NUL

  void* (*get)(const void* pointer) = nullptr;
  void* (*renew)(void* pointer) = nullptr;  // an empty object in place of what was there
  void (*reset)(void* pointer) = nullptr;
  void (*swap)(void* pointer, void* other) = nullptr;

  std::size_t (*size)(const void* list) = nullptr;
  void* (*at)(const void* list, std::size_t index) = nullptr;  // the unique_ptr, see get
  void (*append)(void* list) = nullptr;                        // a null
  void (*drop_last)(void* list) = nullptr;

  const Field* begin() const { return first; }
  const Field* end() const { return first + count; }
  // The field with this offset in the vtable; null when there is none.
  const Field* find(flatbuffers::voffset_t field) const;
  void shrink(void* list, std::size_t to) const;
  // As the schema spells it. The field must be there.
  std::string_view name_of(std::size_t field) const;
  void* object_at(const void* list, std::size_t index) const { return get(at(list, index)); }
};

// The table of an object's type: table_of<firnbook::LayerT>().
template <class Object>
const Table& table_of();
// The table of a thing of the pit; null for what has no fields of its own.
const Table* table_of(firnbook::Thing thing);

// Where the pit holds a thing: its field, and the list inside it for fractures and readings (0 for others).
struct ThingField {
  firnbook::Thing thing;
  flatbuffers::voffset_t field, inner;
};
// Null for the pit itself and for what is no field (a boundary).
const ThingField* field_of(firnbook::Thing thing);

// The stored list of tables; null when it is absent.
using StoredList = flatbuffers::Vector<flatbuffers::Offset<flatbuffers::Table>>;
const StoredList* stored_list(const flatbuffers::Table& from, flatbuffers::voffset_t field);

// Overlays every field that is present in `from` on the object: tables field by field, lists as a whole.
// Presence is asked of the vtable, so that an empty text or list that was written counts as written.
void overlay(const flatbuffers::Table& from, const Table& table, void* to);
void overlay(const flatbuffers::Table& from, const Field& field, void* to);
// Appends what the stored list holds to a list of tables.
void append(const StoredList& from, const Table& table, void* list);

bool holds(const Field& field, const void* object);
// The value of an optional; false when it has none.
bool get(const Field& field, const void* object, std::int64_t& value);
void set(const Field& field, void* object, std::int64_t value);
struct Range {
  std::int64_t least, most;
};
Range range_of(const Field& field);
// The mask of unreliable values; null when the table has none.
std::uint64_t* mask_in(const Table& table, void* object);
void wipe(const Field& field, void* object);
// Swaps the member of two objects; not for lists of tables.
void swap(const Field& field, void* object, void* other);

// Moves the elements of a list of tables to the end of another object's.
void move_list(const Field& field, void* from, void* to);

// Puts an object in canonical form (padding zero, empty tables and null elements left out) and answers
// whether it holds anything.
bool tidy(const Table& table, void* object);

// The object as a table of the builder's. Elements of lists must not be null.
flatbuffers::Offset<flatbuffers::Table> pack(flatbuffers::FlatBufferBuilder& builder, const Table& table,
                                             const void* object);

// The depth that a field holds; null when it is absent, or when there is no such field.
const firnbook::Depth* depth_in(const Field* field, const void* object);
// What an object of a table that has `about` is about.
std::unique_ptr<firnbook::Place>& about_in(const Table& table, void* object);

// The stored pit in its mutable form, as it stands: nothing is checked.
void unpack(const firnbook::Pit& pit, firnbook::PitT& to);

}  // namespace firn::form
