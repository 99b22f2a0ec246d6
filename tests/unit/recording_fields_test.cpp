// Walks the schema itself: for every field of every table that a pit can hold, an edit that sets only that
// field is recorded, found in the pit, cleared again, and found gone. A field that the code forgot fails
// here.
#include <gtest/gtest.h>

#include <cstring>
#include <map>
#include <string>

#include "recording_help.h"

namespace firn::tests {
namespace {

using firnbook::ChangeKind;
using firnbook::Thing;
using flatbuffers::ElementaryType;
using flatbuffers::FlatBufferBuilder;
using flatbuffers::TypeCode;
using flatbuffers::TypeTable;
using flatbuffers::voffset_t;
using Raw = flatbuffers::Offset<void>;

// A way from the pit down to one field; a list on the way is entered at its only element.
using Way = std::vector<std::size_t>;

const std::map<std::string, Thing> kListThings = {
    {"observers", Thing::observer},
    {"layers", Thing::layer},
    {"temperatures", Thing::temperature},
    {"densities", Thing::density_profile},
    {"liquid_water", Thing::liquid_water_profile},
    {"surface_area", Thing::surface_area_profile},
    {"hardness", Thing::hardness_profile},
    {"strength", Thing::strength_profile},
    {"impurities", Thing::impurity_profile},
    {"tests", Thing::test},
    {"signs", Thing::sign},
    {"slides", Thing::slide},
    {"steps", Thing::step},
    {"photos", Thing::photo},
    {"remarks", Thing::remark},
    {"unread", Thing::unread},
    // no names of their own: they are taken back, not changed
    {"absences", Thing::pit},
    {"extensions", Thing::pit},
};
// The list inside a thing, whose elements are things too.
const std::map<Thing, Thing> kInnerThings = {
    {Thing::density_profile, Thing::density},
    {Thing::liquid_water_profile, Thing::liquid_water},
    {Thing::surface_area_profile, Thing::surface_area},
    {Thing::hardness_profile, Thing::hardness},
    {Thing::strength_profile, Thing::strength},
    {Thing::impurity_profile, Thing::impurity},
    {Thing::test, Thing::fracture},
};
const std::map<std::string, Thing> kOwnTables = {
    {"site", Thing::site},         {"choice", Thing::choice},       {"weather", Thing::weather},
    {"surface", Thing::surface},   {"snowpack", Thing::snowpack},   {"assessment", Thing::assessment},
    {"bulletin", Thing::bulletin}, {"operation", Thing::operation},
};

voffset_t vtable_place(std::size_t field) {
  return static_cast<voffset_t>(4 + 2 * field);
}

const TypeTable* type_of(const TypeTable& table, std::size_t field) {
  const TypeCode code = table.type_codes[field];
  if (code.base_type != flatbuffers::ET_SEQUENCE) return nullptr;
  return table.type_refs[code.sequence_ref]();
}

bool is_table(const TypeTable& table, std::size_t field) {
  const TypeTable* type = type_of(table, field);
  return type != nullptr && type->st == flatbuffers::ST_TABLE;
}
bool is_list(const TypeTable& table, std::size_t field) {
  return table.type_codes[field].is_repeating != 0;
}

std::size_t scalar_size(ElementaryType type) {
  switch (type) {
    case flatbuffers::ET_BOOL:
    case flatbuffers::ET_CHAR:
    case flatbuffers::ET_UCHAR:
      return 1;
    case flatbuffers::ET_SHORT:
    case flatbuffers::ET_USHORT:
      return 2;
    case flatbuffers::ET_LONG:
    case flatbuffers::ET_ULONG:
    case flatbuffers::ET_DOUBLE:
      return 8;
    default:
      return 4;
  }
}

ElementaryType base_type(const TypeTable& table, std::size_t field) {
  return static_cast<ElementaryType>(table.type_codes[field].base_type);
}

// Ones in every number of a struct, zeros between them. Position 1 of thing 1 (the site) is no element of a
// list, so a place filled like this names nothing that could move.
void fill_struct(const TypeTable& type, unsigned char* out) {
  for (std::size_t i = 0; i < type.num_elems; ++i) {
    unsigned char* member = out + type.values[i];
    if (const TypeTable* inner = type_of(type, i)) {
      if (inner->st == flatbuffers::ST_STRUCT) {
        fill_struct(*inner, member);
        continue;
      }
    }
    member[0] = 1;
  }
}

std::vector<unsigned char> struct_bytes(const TypeTable& type) {
  std::vector<unsigned char> bytes(static_cast<std::size_t>(type.values[type.num_elems]), 0);
  fill_struct(type, bytes.data());
  return bytes;
}

// --- writing a table that holds one way ------------------------------------------------------------------

void write_inline(FlatBufferBuilder& builder, const unsigned char* bytes, std::size_t size,
                  std::size_t alignment) {
  builder.Align(alignment);
  builder.PushBytes(bytes, size);
}

std::size_t alignment_of(const TypeTable& type) {
  std::size_t alignment = 1;
  for (std::size_t i = 0; i < type.num_elems; ++i) {
    const TypeTable* inner = type_of(type, i);
    const bool is_struct = inner != nullptr && inner->st == flatbuffers::ST_STRUCT;
    alignment = std::max(alignment, is_struct ? alignment_of(*inner) : scalar_size(base_type(type, i)));
  }
  return alignment;
}

template <class Number>
Raw one_number(FlatBufferBuilder& builder) {
  return Raw(builder.CreateVector(std::vector<Number>{1}).o);
}

Raw write_numbers(FlatBufferBuilder& builder, std::size_t size) {
  switch (size) {
    case 1:
      return one_number<std::uint8_t>(builder);
    case 2:
      return one_number<std::uint16_t>(builder);
    case 4:
      return one_number<std::uint32_t>(builder);
    default:
      return one_number<std::uint64_t>(builder);
  }
}

Raw write_structs(FlatBufferBuilder& builder, const TypeTable& type) {
  EXPECT_EQ(&type, firnbook::DepthTypeTable()) << "a list of structs that is not known here";
  firnbook::Depth depth;
  std::memcpy(static_cast<void*>(&depth), struct_bytes(type).data(), sizeof depth);
  return Raw(builder.CreateVectorOfStructs(&depth, 1).o);
}

Raw write_table(FlatBufferBuilder& builder, const TypeTable& type, const Way& way, std::size_t at);

// The part of a field that lies outside its table; nothing for what is stored inside it.
Raw write_outside(FlatBufferBuilder& builder, const TypeTable& table, const Way& way, std::size_t at) {
  const std::size_t field = way[at];
  const TypeTable* type = type_of(table, field);
  const bool is_struct = type != nullptr && type->st == flatbuffers::ST_STRUCT;
  if (is_table(table, field)) {
    const Raw inner = write_table(builder, *type, way, at + 1);
    if (!is_list(table, field)) return inner;
    return Raw(builder.CreateVector(std::vector<Raw>{inner}).o);
  }
  if (base_type(table, field) == flatbuffers::ET_STRING) return Raw(builder.CreateString("x").o);
  if (!is_list(table, field)) return 0;
  if (is_struct) return write_structs(builder, *type);
  return write_numbers(builder, scalar_size(base_type(table, field)));
}

Raw write_table(FlatBufferBuilder& builder, const TypeTable& type, const Way& way, std::size_t at) {
  const bool is_empty = at == way.size();
  const Raw outside = is_empty ? Raw(0) : write_outside(builder, type, way, at);
  const auto start = builder.StartTable();
  if (!is_empty) {
    const std::size_t field = way[at];
    const TypeTable* inner = type_of(type, field);
    if (outside.o != 0) {
      builder.AddOffset(vtable_place(field), outside);
    } else if (inner != nullptr && inner->st == flatbuffers::ST_STRUCT) {
      const auto bytes = struct_bytes(*inner);
      write_inline(builder, bytes.data(), bytes.size(), alignment_of(*inner));
      builder.AddStructOffset(vtable_place(field), builder.GetSize());
    } else {
      const unsigned char one[8] = {1};
      const std::size_t size = scalar_size(base_type(type, field));
      write_inline(builder, one, size, size);
      builder.AddStructOffset(vtable_place(field), builder.GetSize());
    }
  }
  return Raw(builder.EndTable(start));
}

Bytes edit_of(const EditHead& head, ChangeKind kind, const Way& way, const firnbook::Target* target) {
  FlatBufferBuilder builder;
  const Raw fields = write_table(builder, *firnbook::PitTypeTable(), way, 0);
  const auto change =
      firnbook::CreateChange(builder, kind, target, nullptr, flatbuffers::Offset<firnbook::Pit>(fields.o));
  const firnbook::EditId id(head.key.device, head.key.sequence);
  firnbook::FinishEditBuffer(builder,
                             firnbook::CreateEdit(builder, 0, &id, head.clock, nullptr, 0, 0, change));
  return Bytes(builder.GetBufferPointer(), builder.GetBufferPointer() + builder.GetSize());
}

// --- reading ---------------------------------------------------------------------------------------------

// Whether the way is there in a table, down to the number one in its last field.
bool holds(const flatbuffers::Table& table, const TypeTable& type, const Way& way, std::size_t at) {
  if (at == way.size()) return true;
  const std::size_t field = way[at];
  if (!table.CheckField(vtable_place(field))) return false;
  const TypeTable* inner = type_of(type, field);
  if (is_table(type, field)) {
    if (!is_list(type, field)) {
      return holds(*table.GetPointer<const flatbuffers::Table*>(vtable_place(field)), *inner, way, at + 1);
    }
    const auto* list = table.GetPointer<const flatbuffers::Vector<flatbuffers::Offset<flatbuffers::Table>>*>(
        vtable_place(field));
    return list->size() == 1 && holds(*list->Get(0), *inner, way, at + 1);
  }
  if (base_type(type, field) == flatbuffers::ET_STRING) {
    return table.GetPointer<const flatbuffers::String*>(vtable_place(field))->str() == "x";
  }
  const std::uint8_t* stored = table.GetStruct<const std::uint8_t*>(vtable_place(field));
  if (is_list(type, field)) {
    const auto* list = table.GetPointer<const flatbuffers::Vector<std::uint8_t>*>(vtable_place(field));
    if (list->size() != 1) return false;
    stored = list->Data();
  }
  if (inner != nullptr && inner->st == flatbuffers::ST_STRUCT) {
    const auto expected = struct_bytes(*inner);
    return std::memcmp(stored, expected.data(), expected.size()) == 0;
  }
  const std::uint8_t one[8] = {1};
  return std::memcmp(stored, one, scalar_size(base_type(type, field))) == 0;
}

bool holds(const Bytes& pit, const Way& way) {
  const auto& root = reinterpret_cast<const flatbuffers::Table&>(read(pit));
  return holds(root, *firnbook::PitTypeTable(), way, 0);
}

// --- the walk --------------------------------------------------------------------------------------------

template <class Act>
void each_way(const TypeTable& table, Way& way, const Act& act) {
  for (std::size_t field = 0; field < table.num_elems; ++field) {
    way.push_back(field);
    if (is_table(table, field)) {
      each_way(*type_of(table, field), way, act);
    } else {
      act(way);
    }
    way.pop_back();
  }
}

std::string name_of(const Way& way) {
  std::string name;
  const TypeTable* table = firnbook::PitTypeTable();
  for (const std::size_t field : way) {
    name += std::string(".") + table->names[field];
    if (is_table(*table, field)) table = type_of(*table, field);
  }
  return name;
}

Way first(const Way& way, std::size_t count) {
  return Way(way.begin(), way.begin() + static_cast<std::ptrdiff_t>(count));
}

firnbook::Place field_of(Thing thing, std::size_t field) {
  return {-1, -1, static_cast<std::uint16_t>(field), thing};
}

// Sets what the way leads to, finds it, clears it, and finds the pit as it was.
void set_and_clear(Hand& hand, const Way& way, ChangeKind kind, const firnbook::Target* target,
                   firnbook::Place clear) {
  const Bytes before = hand.pit();
  ASSERT_FALSE(holds(before, way));
  const EditKey set = hand.record(edit_of(hand.next(), kind, way, target));
  EXPECT_TRUE(holds(hand.pit(), way));
  hand.undo(set);
  EXPECT_EQ(hand.pit(), before);
  hand.redo(set);
  EXPECT_TRUE(holds(hand.pit(), way));
  hand.clear(target, {clear});
  EXPECT_EQ(hand.pit(), before);
}

// Fields of a thing in a list, or of a thing inside it: added empty, then changed.
void try_listed(const Way& way, Thing thing) {
  const TypeTable& element = *type_of(*firnbook::PitTypeTable(), way[0]);
  const auto inner = kInnerThings.find(thing);
  const bool enters_list = is_list(element, way[1]) && is_table(element, way[1]);
  ASSERT_TRUE(!enters_list || inner != kInnerThings.end()) << "a list of things that is not known here";
  const std::size_t depth = enters_list ? 2 : 1;
  const Thing changed = enters_list ? inner->second : thing;
  Hand hand;
  const EditKey added = hand.record(edit_of(hand.next(), ChangeKind::add, first(way, depth), nullptr));
  const firnbook::Target target = recording::target_of(added, changed);
  set_and_clear(hand, way, ChangeKind::change, &target, field_of(changed, way[depth]));
}

// Absences and extensions are added whole and taken back.
void try_nameless(const Way& way) {
  Hand hand;
  const Bytes before = hand.pit();
  const EditKey added = hand.record(edit_of(hand.next(), ChangeKind::add, way, nullptr));
  EXPECT_TRUE(holds(hand.pit(), way));
  hand.undo(added);
  EXPECT_EQ(hand.pit(), before);
}

void try_way(const Way& way) {
  const TypeTable& pit = *firnbook::PitTypeTable();
  const std::string root = pit.names[way[0]];
  if (root == "schema_minor") return;  // says nothing about the pit
  if (is_list(pit, way[0]) && is_table(pit, way[0])) {
    const auto thing = kListThings.find(root);
    ASSERT_NE(thing, kListThings.end()) << "a list of things that is not known here";
    return thing->second == Thing::pit ? try_nameless(way) : try_listed(way, thing->second);
  }
  Hand hand;
  if (!is_table(pit, way[0])) {
    return set_and_clear(hand, way, ChangeKind::set, nullptr, field_of(Thing::pit, way[0]));
  }
  const auto thing = kOwnTables.find(root);
  ASSERT_NE(thing, kOwnTables.end()) << "a table of the pit that is not known here";
  set_and_clear(hand, way, ChangeKind::set, nullptr, field_of(thing->second, way[1]));
}

TEST(Fields, EveryFieldOfEveryTableCanBeSetFoundAndCleared) {
  Way way;
  std::size_t count = 0;
  each_way(*firnbook::PitTypeTable(), way, [&](const Way& leaf) {
    SCOPED_TRACE(name_of(leaf));
    try_way(leaf);
    ++count;
  });
  // The schema had 281 such ways when this was written; it only grows.
  EXPECT_GE(count, 281u);
}

// The pit's own tables are cleared as a whole too.
TEST(Fields, EveryTableOfThePitCanBeClearedWhole) {
  const TypeTable& pit = *firnbook::PitTypeTable();
  for (std::size_t field = 0; field < pit.num_elems; ++field) {
    if (!is_table(pit, field) || is_list(pit, field)) continue;
    SCOPED_TRACE(pit.names[field]);
    const Thing thing = kOwnTables.at(pit.names[field]);
    Hand hand;
    set_and_clear(hand, {field, 0}, ChangeKind::set, nullptr, field_of(thing, kWholeThing));
    Hand other;
    set_and_clear(other, {field, 0}, ChangeKind::set, nullptr, field_of(Thing::pit, field));
  }
}

// What is set apart stays apart: an edit of one field leaves every other field of the thing alone.
TEST(Fields, SettingOneFieldLeavesTheOthers) {
  const TypeTable& pit = *firnbook::PitTypeTable();
  for (const auto& [name, thing] : kListThings) {
    if (thing == Thing::pit) continue;
    SCOPED_TRACE(name);
    std::size_t list = 0;
    while (name != pit.names[list]) ++list;
    const TypeTable& element = *type_of(pit, list);
    Hand hand;
    const EditKey added = hand.record(edit_of(hand.next(), ChangeKind::add, {list}, nullptr));
    const firnbook::Target target = recording::target_of(added, thing);
    std::vector<Way> set;
    for (std::size_t field = 0; field < element.num_elems; ++field) {
      if (is_table(element, field)) continue;
      set.push_back({list, field});
      hand.record(edit_of(hand.next(), ChangeKind::change, set.back(), &target));
      const Bytes now = hand.pit();
      for (const Way& way : set) EXPECT_TRUE(holds(now, way)) << name_of(way);
    }
  }
}

}  // namespace
}  // namespace firn::tests
