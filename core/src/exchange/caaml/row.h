// The mapping as data: one row for each element of the standard, in the standard's order. The reader and the
// writer walk the same rows; only what a row's codec does with one value is code.
#pragma once

#include <cstddef>
#include <cstdint>
#include <limits>
#include <string_view>

#include "exchange/caaml/number.h"
#include "schemas/pit_generated.h"
#include "vocabulary/codes.h"

namespace pugi {
class xml_node;
}

namespace firn::exchange::caaml {

using firnbook::Thing;
using flatbuffers::voffset_t;

class Reader;
class Writer;
struct Row;

struct Codec {
  void (*read)(Reader& reader, const Row& row, const pugi::xml_node& node);
  // Appends the element, or nothing. Null for what only older versions have.
  void (*write)(Writer& writer, const Row& row);
};

enum class Shape : std::uint8_t {
  value,   // an element whose codec does all
  group,   // an element that holds more about the same thing
  table,   // an element for a table of the pit
  list,    // an element for each in a list of tables
  inside,  // no element: rows of a table that older versions do not wrap
  remark,  // caaml:comment
  custom,  // caaml:customData
  fixed    // nothing to keep
};

// What a unit measures.
enum class Quantity : std::uint8_t {
  none,
  length,
  area,
  volume,
  pressure,
  temperature,
  density,
  water,
  surface_area,
  force,
  weight,
  speed,
  percent
};

struct Type {
  const Row* rows = nullptr;
  std::size_t count = 0;
  const Row* begin() const { return rows; }
  const Row* end() const;
};
template <std::size_t kCount>
constexpr Type rows(const Row (&all)[kCount]) {
  return {all, kCount};
}

struct Row {
  std::string_view name;
  Shape shape = Shape::value;
  const Codec* codec = nullptr;
  voffset_t field = 0;
  voffset_t other = 0;     // a second field of the same value
  bool is_wanted = false;  // by the standard, wherever the element around stands
  bool takes_nil = false;  // a reason may stand in place of the value
  bool is_inner = false;   // list: inside a thing that is itself listed
  bool only_read = false;  // of older versions, or written by another row

  CodeTable (*codes)() = nullptr;
  Quantity quantity = Quantity::none;
  Unit unit;
  std::string_view uom;       // the standard's unit
  bool has_uom = false;       // ... written as the attribute `uom`, also when it is empty
  std::string_view uom_from;  // attribute of the profile that names the unit
  // What the standard allows, in stored units.
  std::int64_t least = std::numeric_limits<std::int64_t>::min();
  std::int64_t most = std::numeric_limits<std::int64_t>::max();
  std::int64_t step = 1;  // smallest stored difference that it can hold

  const Type* type = nullptr;
  Thing thing = Thing::pit;  // table, list: what an element of it is
  bool has_about = false;    // group, remark, custom: is about something else than the thing around
  Thing about = Thing::pit;
  voffset_t about_field = 0;
  voffset_t id = 0;             // field of gml:id
  std::string_view id_stem;     // of an id that the standard wants where the pit has none
  std::string_view attributes;  // constant ones

  constexpr Row wanted() const {
    Row row = *this;
    row.is_wanted = true;
    return row;
  }
  constexpr Row nil() const {
    Row row = *this;
    row.takes_nil = true;
    return row;
  }
  constexpr Row old() const {
    Row row = *this;
    row.only_read = true;
    return row;
  }
  constexpr Row made_by_another_row() const { return old(); }
  constexpr Row inner() const {
    Row row = *this;
    row.is_inner = true;
    return row;
  }
  constexpr Row within(std::int64_t lowest, std::int64_t highest) const {
    Row row = *this;
    row.least = lowest;
    row.most = highest;
    return row;
  }
  constexpr Row not_negative() const { return within(0, std::numeric_limits<std::int64_t>::max()); }
  constexpr Row whole(std::int64_t smallest) const {
    Row row = *this;
    row.step = smallest;
    return row;
  }
  constexpr Row with_other(voffset_t second) const {
    Row row = *this;
    row.other = second;
    return row;
  }
  constexpr Row with_uom(std::string_view name_of_unit) const {
    Row row = *this;
    row.uom = name_of_unit;
    row.has_uom = true;
    return row;
  }
  constexpr Row unit_from(std::string_view attribute) const {
    Row row = *this;
    row.has_uom = false;
    row.uom_from = attribute;
    return row;
  }
  constexpr Row on(Thing thing_it_is_about, voffset_t its_field = 0) const {
    Row row = *this;
    row.has_about = true;
    row.about = thing_it_is_about;
    row.about_field = its_field;
    return row;
  }
  constexpr Row with_id(voffset_t id_field, std::string_view stem) const {
    Row row = *this;
    row.id = id_field;
    row.id_stem = stem;
    return row;
  }
  constexpr Row with(std::string_view constant_attributes) const {
    Row row = *this;
    row.attributes = constant_attributes;
    return row;
  }
};

inline const Row* Type::end() const {
  return rows + count;
}

// --- codecs, in codecs.cpp ----------------------------------------------------

extern const Codec kText, kCountry, kCode, kNumber, kMoment, kSpan, kDepth, kTop, kThickness;
extern const Codec kGrainSize, kWind, kAspect, kPosition, kPrecipitation, kSky, kCharacter, kConcern,
    kHandHardness;
extern const Codec kUncertainty, kFraction, kFractionUncertainty, kTuples, kRange, kNewSnow;
extern const Codec kSource, kTests, kRootCustom;
// version_5.cpp
extern const Codec kInnerPerson;

// --- rows ------------------------------------------------------------------------------------------------

constexpr Row value(std::string_view name, const Codec& codec, voffset_t field, voffset_t other = 0) {
  Row row;
  row.name = name;
  row.codec = &codec;
  row.field = field;
  row.other = other;
  return row;
}
constexpr Row code(std::string_view name, voffset_t field, CodeTable (*codes)()) {
  Row row = value(name, kCode, field);
  row.codes = codes;
  return row;
}
constexpr Row number(std::string_view name, voffset_t field, Quantity quantity, std::string_view uom,
                     std::int8_t power) {
  Row row = value(name, kNumber, field);
  row.quantity = quantity;
  row.uom = uom;
  row.has_uom = !uom.empty();
  row.unit = Unit{1, power};
  return row;
}
constexpr Row measured_in(Row row, Quantity quantity, std::string_view uom, std::int8_t power) {
  row.quantity = quantity;
  row.uom = uom;
  row.unit = Unit{1, power};
  return row;
}
constexpr Row centimetres(std::string_view name, voffset_t field) {
  return number(name, field, Quantity::length, "cm", 3).nil().not_negative();
}
constexpr Row group(std::string_view name, const Type& type) {
  Row row;
  row.name = name;
  row.shape = Shape::group;
  row.type = &type;
  return row;
}
constexpr Row table(std::string_view name, voffset_t field, Thing thing, const Type& type) {
  Row row = group(name, type);
  row.shape = Shape::table;
  row.field = field;
  row.thing = thing;
  return row;
}
constexpr Row list(std::string_view name, voffset_t field, Thing thing, const Type& type) {
  Row row = table(name, field, thing, type);
  row.shape = Shape::list;
  return row;
}
constexpr Row inside(voffset_t field, Thing thing, const Type& type) {
  Row row = table({}, field, thing, type);
  row.shape = Shape::inside;
  return row;
}
constexpr Row fixed(std::string_view name) {
  Row row;
  row.name = name;
  row.shape = Shape::fixed;
  return row;
}
constexpr Row remark() {
  Row row = fixed("comment");
  row.shape = Shape::remark;
  return row;
}
constexpr Row custom() {
  Row row = fixed("customData");
  row.shape = Shape::custom;
  return row;
}

// The versions.
extern const Type kVersion6, kVersion5;
// Types that both have.
extern const Type kMeta, kSiteAspect, kWindDir, kFeatures, kGrainSizeOuter, kTemplate, kElevation, kSlope,
    kMetaOuter;
// For what tests.cpp walks itself.
extern const Type kOperation, kPerson, kFailedLayer;
struct TestType {
  std::string_view name;
  firnbook::TestKind kind;
  const Type* results;
};
extern const TestType kTestTypes[5];
extern const Type kTestHead;

}  // namespace firn::exchange::caaml
