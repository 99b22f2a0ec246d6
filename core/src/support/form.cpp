#include "support/form.h"

#include <cstring>
#include <memory>
#include <string>
#include <utility>
#include <vector>

#include "support/place.h"

namespace firn::form {
namespace {

using firnbook::Depth;
using firnbook::Moment;
using firnbook::Place;
using firnbook::TimeSpan;
using flatbuffers::FlatBufferBuilder;
using flatbuffers::Optional;
using flatbuffers::uoffset_t;
using flatbuffers::voffset_t;
using Stored = flatbuffers::Table;

template <class T>
struct Type {
  using type = T;
};

template <class Act>
auto with_number(Element element, Act&& act) {
  switch (element) {
    case Element::bits16:
      return act(Type<std::uint16_t>{});
    case Element::bits32:
      return act(Type<std::uint32_t>{});
    case Element::bits64:
      return act(Type<std::uint64_t>{});
    default:
      return act(Type<std::uint8_t>{});
  }
}

template <class Act>
auto with_struct(Element element, Act&& act) {
  switch (element) {
    case Element::moment:
      return act(Type<Moment>{});
    case Element::time_span:
      return act(Type<TimeSpan>{});
    case Element::place:
      return act(Type<Place>{});
    default:
      return act(Type<Depth>{});
  }
}

template <class Act>
auto with_list_element(Element element, Act&& act) {
  switch (element) {
    case Element::bits32:
      return act(Type<std::int32_t>{});
    case Element::real:
      return act(Type<float>{});
    case Element::grain_form:
      return act(Type<firnbook::GrainForm>{});
    default:
      return act(Type<std::uint8_t>{});
  }
}

// An Optional of an enumeration lies in memory as one of the number below it; both are trivially copyable.
// form_tables.cpp compares their sizes, and the test of every field would see another layout.
template <class T>
Optional<T> get_optional(const void* member) {
  static_assert(std::is_trivially_copyable_v<Optional<T>>);
  Optional<T> value;
  std::memcpy(static_cast<void*>(&value), member, sizeof value);
  return value;
}
template <class T>
void put_optional(void* member, const Optional<T>& value) {
  std::memcpy(member, static_cast<const void*>(&value), sizeof value);
}
template <class T>
T get_number(const void* member) {
  T value;
  std::memcpy(&value, member, sizeof value);
  return value;
}

std::string& text_in(void* member) {
  return *static_cast<std::string*>(member);
}
template <class Struct>
std::unique_ptr<Struct>& struct_in(void* member) {
  return *static_cast<std::unique_ptr<Struct>*>(member);
}
template <class T>
std::vector<T>& list_in(void* member) {
  return *static_cast<std::vector<T>*>(member);
}

// Copies of structs carry the padding of the bytes they came from; constructors write zeros.
Depth clean(const Depth& depth) {
  return Depth(depth.value_10um(), depth.datum(), depth.direction());
}
Moment clean(const Moment& moment) {
  return Moment(moment.local_s(), moment.offset_min(), moment.precision(), moment.offset_known());
}
TimeSpan clean(const TimeSpan& span) {
  return TimeSpan(clean(span.begin()), clean(span.end()));
}
Place clean(const Place& place) {
  return Place(place.index(), place.sub(), place.field(), place.thing());
}

template <class Stored, class T>
void copy_list(const Stored& from, std::vector<T>& to) {
  to.clear();
  to.reserve(from.size());
  for (uoffset_t i = 0; i < from.size(); ++i) to.push_back(static_cast<T>(from[i]));
}

void lay_numbers(const Stored& from, const Field& field, void* member) {
  with_list_element(field.element, [&](auto type) {
    using T = typename decltype(type)::type;
    copy_list(*from.GetPointer<const flatbuffers::Vector<T>*>(field.field), list_in<T>(member));
  });
}

void lay_depths(const Stored& from, const Field& field, void* member) {
  const auto* depths = from.GetPointer<const flatbuffers::Vector<const Depth*>*>(field.field);
  std::vector<Depth>& to = list_in<Depth>(member);
  to.clear();
  to.reserve(depths->size());
  for (const Depth* depth : *depths) to.push_back(*depth);
}

// --- tidying -------------------------------------------------------------------------------------------

// Elements keep their order; nulls go to the end and away.
void drop_nulls(const Table& table, void* list) {
  const std::size_t size = table.size(list);
  std::size_t kept = 0;
  for (std::size_t i = 0; i < size; ++i) {
    if (table.object_at(list, i) == nullptr) continue;
    if (kept != i) table.swap(table.at(list, kept), table.at(list, i));
    ++kept;
  }
  if (kept != size) table.shrink(list, kept);
}

bool tidy_member(const Field& field, void* object) {
  void* member = field.in(object);
  switch (field.kind) {
    case Kind::structure:
      with_struct(field.element, [&](auto type) {
        auto& pointer = struct_in<typename decltype(type)::type>(member);
        if (pointer != nullptr) *pointer = clean(*pointer);
      });
      break;
    case Kind::table:
      if (field.table->get(member) != nullptr && !tidy(*field.table, field.table->get(member))) {
        field.table->reset(member);
      }
      break;
    case Kind::depths:
      for (Depth& depth : list_in<Depth>(member)) depth = clean(depth);
      break;
    case Kind::tables:
      drop_nulls(*field.table, member);
      // An element counts even when it is empty: there was a layer, though nothing is known of it.
      for (std::size_t i = 0; i < field.table->size(member); ++i) {
        tidy(*field.table, field.table->object_at(member, i));
      }
      break;
    default:
      break;
  }
  return holds(field, object);
}

// --- packing -------------------------------------------------------------------------------------------

constexpr voffset_t kFirstField = firnbook::Pit::VT_SCHEMA_MINOR;
constexpr std::size_t kMostFields = 64;  // the width of a table's mask of unreliable values

uoffset_t pack_tables(FlatBufferBuilder& builder, const Table& table, const void* list) {
  const std::size_t size = table.size(list);
  std::vector<flatbuffers::Offset<Stored>> offsets;
  offsets.reserve(size);
  for (std::size_t i = 0; i < size; ++i) offsets.push_back(pack(builder, table, table.object_at(list, i)));
  return builder.CreateVector(offsets).o;
}

// What stands outside the table and is named in it by its offset; 0 when there is nothing.
uoffset_t pack_outside(FlatBufferBuilder& builder, const Field& field, const void* object) {
  if (!holds(field, object)) return 0;
  void* member = const_cast<void*>(field.in(object));
  switch (field.kind) {
    case Kind::text:
      return builder.CreateString(text_in(member)).o;
    case Kind::table:
      return pack(builder, *field.table, field.table->get(member)).o;
    case Kind::numbers:
      return with_list_element(field.element, [&](auto type) {
        using T = typename decltype(type)::type;
        using Number = std::conditional_t<std::is_enum_v<T>, std::uint8_t, T>;
        static_assert(sizeof(Number) == sizeof(T));
        const std::vector<T>& list = list_in<T>(member);
        return builder.CreateVector(reinterpret_cast<const Number*>(list.data()), list.size()).o;
      });
    case Kind::depths:
      return builder.CreateVectorOfStructs(list_in<Depth>(member)).o;
    case Kind::tables:
      return pack_tables(builder, *field.table, member);
    default:
      return 0;
  }
}

std::size_t inline_size(const Field& field) {
  if (field.kind != Kind::optional && field.kind != Kind::number) return sizeof(uoffset_t);
  return with_number(field.element, [](auto type) { return sizeof(typename decltype(type)::type); });
}

void add_inline(FlatBufferBuilder& builder, const Field& field, const void* object, uoffset_t outside) {
  const void* member = field.in(object);
  switch (field.kind) {
    case Kind::optional:
      return with_number(field.element, [&](auto type) {
        const auto value = get_optional<typename decltype(type)::type>(member);
        if (value.has_value()) builder.AddElement(field.field, *value);
      });
    case Kind::number:
      return with_number(field.element, [&](auto type) {
        using T = typename decltype(type)::type;
        builder.AddElement<T>(field.field, get_number<T>(member), 0);
      });
    case Kind::structure:
      return with_struct(field.element, [&](auto type) {
        builder.AddStruct(field.field,
                          struct_in<typename decltype(type)::type>(const_cast<void*>(member)).get());
      });
    default:
      return builder.AddOffset(field.field, flatbuffers::Offset<void>(outside));
  }
}

}  // namespace

const Field* Table::find(voffset_t field) const {
  const std::size_t id = field_id(field);
  return field >= kFirstField && id < count ? &first[id] : nullptr;
}

void Table::shrink(void* list, std::size_t to) const {
  for (std::size_t left = size(list); left > to; --left) drop_last(list);
}

std::string_view Table::name_of(std::size_t field) const {
  std::string_view name = names;
  for (; field > 0; --field) name = name.data() + name.size() + 1;
  return name;
}

namespace {

using firnbook::Pit;
using firnbook::Thing;

constexpr ThingField kThings[] = {
    {Thing::site, Pit::VT_SITE, 0},
    {Thing::observer, Pit::VT_OBSERVERS, 0},
    {Thing::weather, Pit::VT_WEATHER, 0},
    {Thing::surface, Pit::VT_SURFACE, 0},
    {Thing::snowpack, Pit::VT_SNOWPACK, 0},
    {Thing::layer, Pit::VT_LAYERS, 0},
    {Thing::temperature, Pit::VT_TEMPERATURES, 0},
    {Thing::density_profile, Pit::VT_DENSITIES, 0},
    {Thing::density, Pit::VT_DENSITIES, firnbook::DensityProfile::VT_READINGS},
    {Thing::liquid_water_profile, Pit::VT_LIQUID_WATER, 0},
    {Thing::liquid_water, Pit::VT_LIQUID_WATER, firnbook::LiquidWaterProfile::VT_READINGS},
    {Thing::surface_area_profile, Pit::VT_SURFACE_AREA, 0},
    {Thing::surface_area, Pit::VT_SURFACE_AREA, firnbook::SurfaceAreaProfile::VT_READINGS},
    {Thing::hardness_profile, Pit::VT_HARDNESS, 0},
    {Thing::hardness, Pit::VT_HARDNESS, firnbook::HardnessProfile::VT_READINGS},
    {Thing::strength_profile, Pit::VT_STRENGTH, 0},
    {Thing::strength, Pit::VT_STRENGTH, firnbook::StrengthProfile::VT_READINGS},
    {Thing::impurity_profile, Pit::VT_IMPURITIES, 0},
    {Thing::impurity, Pit::VT_IMPURITIES, firnbook::ImpurityProfile::VT_READINGS},
    {Thing::test, Pit::VT_TESTS, 0},
    {Thing::fracture, Pit::VT_TESTS, firnbook::StabilityTest::VT_FRACTURES},
    {Thing::sign, Pit::VT_SIGNS, 0},
    {Thing::slide, Pit::VT_SLIDES, 0},
    {Thing::choice, Pit::VT_CHOICE, 0},
    {Thing::assessment, Pit::VT_ASSESSMENT, 0},
    {Thing::photo, Pit::VT_PHOTOS, 0},
    {Thing::bulletin, Pit::VT_BULLETIN, 0},
    {Thing::operation, Pit::VT_OPERATION, 0},
    {Thing::unread, Pit::VT_UNREAD, 0},
    {Thing::remark, Pit::VT_REMARKS, 0},
    {Thing::step, Pit::VT_STEPS, 0},
};

}  // namespace

const ThingField* field_of(Thing thing) {
  for (const ThingField& known : kThings) {
    if (known.thing == thing) return &known;
  }
  return nullptr;
}

const Table* table_of(Thing thing) {
  const Table& pit = table_of<firnbook::PitT>();
  if (thing == Thing::pit) return &pit;
  const ThingField* known = field_of(thing);
  if (known == nullptr) return nullptr;
  const Table* outer = pit.find(known->field)->table;
  return known->inner == 0 ? outer : outer->find(known->inner)->table;
}

const StoredList* stored_list(const Stored& from, voffset_t field) {
  return from.GetPointer<const StoredList*>(field);
}

void append(const StoredList& from, const Table& table, void* list) {
  for (uoffset_t i = 0; i < from.size(); ++i) {
    table.append(list);
    overlay(*from.Get(i), table, table.renew(table.at(list, table.size(list) - 1)));
  }
}

void overlay(const Stored& from, const Field& field, void* to) {
  if (!from.CheckField(field.field)) return;
  void* member = field.in(to);
  switch (field.kind) {
    case Kind::optional:
      // A bool that holds anything but 0 or 1 is none.
      if (field.element == Element::yes_no) {
        return put_optional<std::uint8_t>(member, from.GetField<std::uint8_t>(field.field, 0) != 0);
      }
      return with_number(field.element, [&](auto type) {
        using T = typename decltype(type)::type;
        put_optional<T>(member, from.GetField<T>(field.field, 0));
      });
    case Kind::number:
      return with_number(field.element, [&](auto type) {
        using T = typename decltype(type)::type;
        const T value = from.GetField<T>(field.field, 0);
        std::memcpy(member, &value, sizeof value);
      });
    case Kind::text: {
      const auto* text = from.GetPointer<const flatbuffers::String*>(field.field);
      text_in(member).assign(text->c_str(), text->size());
      return;
    }
    case Kind::structure:
      return with_struct(field.element, [&](auto type) {
        using T = typename decltype(type)::type;
        struct_in<T>(member) = std::make_unique<T>(*from.GetStruct<const T*>(field.field));
      });
    case Kind::table: {
      void* object = field.table->get(member);
      if (object == nullptr) object = field.table->renew(member);
      return overlay(*from.GetPointer<const Stored*>(field.field), *field.table, object);
    }
    case Kind::numbers:
      return lay_numbers(from, field, member);
    case Kind::depths:
      return lay_depths(from, field, member);
    case Kind::tables:
      field.table->shrink(member, 0);
      return append(*stored_list(from, field.field), *field.table, member);
  }
}

void overlay(const Stored& from, const Table& table, void* to) {
  for (const Field& field : table) overlay(from, field, to);
}

bool holds(const Field& field, const void* object) {
  void* member = const_cast<void*>(field.in(object));
  switch (field.kind) {
    case Kind::optional:
      return with_number(field.element, [&](auto type) {
        return get_optional<typename decltype(type)::type>(member).has_value();
      });
    case Kind::number:
      return with_number(field.element,
                         [&](auto type) { return get_number<typename decltype(type)::type>(member) != 0; });
    case Kind::text:
      return !text_in(member).empty();
    case Kind::structure:
      return with_struct(field.element, [&](auto type) {
        return struct_in<typename decltype(type)::type>(member) != nullptr;
      });
    case Kind::table:
      return field.table->get(member) != nullptr;
    case Kind::numbers:
      return with_list_element(
          field.element, [&](auto type) { return !list_in<typename decltype(type)::type>(member).empty(); });
    case Kind::depths:
      return !list_in<Depth>(member).empty();
    case Kind::tables:
      return field.table->size(member) != 0;
  }
  return false;
}

bool get(const Field& field, const void* object, std::int64_t& value) {
  return with_number(field.element, [&](auto type) {
    using T = typename decltype(type)::type;
    const Optional<T> number = get_optional<T>(field.in(object));
    if (!number.has_value()) return false;
    value = field.is_signed ? std::int64_t{static_cast<std::make_signed_t<T>>(*number)}
                            : static_cast<std::int64_t>(*number);
    return true;
  });
}

void set(const Field& field, void* object, std::int64_t value) {
  with_number(field.element, [&](auto type) {
    using T = typename decltype(type)::type;
    put_optional<T>(field.in(object), static_cast<T>(value));
  });
}

Range range_of(const Field& field) {
  if (field.element == Element::yes_no) return {0, 1};
  const std::size_t bits = 8 * inline_size(field);
  const auto most = static_cast<std::int64_t>(~std::uint64_t{0} >> (64 - bits + (field.is_signed ? 1 : 0)));
  return {field.is_signed ? -most - 1 : 0, most};
}

std::uint64_t* mask_in(const Table& table, void* object) {
  return table.unreliable == nullptr ? nullptr : static_cast<std::uint64_t*>(table.unreliable->in(object));
}

void wipe(const Field& field, void* object) {
  void* member = field.in(object);
  switch (field.kind) {
    case Kind::optional:
      return with_number(field.element, [&](auto type) {
        put_optional<typename decltype(type)::type>(member, flatbuffers::nullopt);
      });
    case Kind::number:
      std::memset(member, 0, inline_size(field));
      return;
    case Kind::text:
      return text_in(member).clear();
    case Kind::structure:
      return with_struct(field.element,
                         [&](auto type) { struct_in<typename decltype(type)::type>(member).reset(); });
    case Kind::table:
      return field.table->reset(member);
    case Kind::numbers:
      return with_list_element(field.element,
                               [&](auto type) { list_in<typename decltype(type)::type>(member).clear(); });
    case Kind::depths:
      return list_in<Depth>(member).clear();
    case Kind::tables:
      return field.table->shrink(member, 0);
  }
}

void swap(const Field& field, void* object, void* other) {
  void* a = field.in(object);
  void* b = field.in(other);
  switch (field.kind) {
    case Kind::optional:
      return with_number(field.element, [&](auto type) {
        using T = typename decltype(type)::type;
        const Optional<T> kept = get_optional<T>(a);
        put_optional<T>(a, get_optional<T>(b));
        put_optional<T>(b, kept);
      });
    case Kind::number:
      return with_number(field.element, [&](auto type) {
        using T = typename decltype(type)::type;
        const T first = get_number<T>(a);
        const T second = get_number<T>(b);
        std::memcpy(a, &second, sizeof second);
        std::memcpy(b, &first, sizeof first);
      });
    case Kind::text:
      return text_in(a).swap(text_in(b));
    case Kind::structure:
      return with_struct(field.element, [&](auto type) {
        using T = typename decltype(type)::type;
        struct_in<T>(a).swap(struct_in<T>(b));
      });
    case Kind::table:
      return field.table->swap(a, b);
    case Kind::numbers:
      return with_list_element(field.element, [&](auto type) {
        using T = typename decltype(type)::type;
        list_in<T>(a).swap(list_in<T>(b));
      });
    case Kind::depths:
      return list_in<Depth>(a).swap(list_in<Depth>(b));
    case Kind::tables:
      return;
  }
}

void move_list(const Field& field, void* from, void* to) {
  const Table& table = *field.table;
  void* list = field.in(from);
  void* target = field.in(to);
  for (std::size_t i = 0; i < table.size(list); ++i) {
    table.append(target);
    table.swap(table.at(target, table.size(target) - 1), table.at(list, i));
  }
  table.shrink(list, 0);
}

bool tidy(const Table& table, void* object) {
  bool holds_any = false;
  for (const Field& field : table) holds_any = tidy_member(field, object) || holds_any;
  return holds_any;
}

// Children come before the table that names them, in order of their fields; then the fields by size, the
// largest first, and the last before the first: the bytes of the generated code, whatever the compiler.
flatbuffers::Offset<Stored> pack(FlatBufferBuilder& builder, const Table& table, const void* object) {
  uoffset_t outside[kMostFields] = {};
  for (std::size_t i = 0; i < table.count; ++i) outside[i] = pack_outside(builder, table.first[i], object);
  const uoffset_t start = builder.StartTable();
  for (std::size_t size = sizeof(std::uint64_t); size != 0; size /= 2) {
    for (std::size_t i = table.count; i-- > 0;) {
      if (inline_size(table.first[i]) == size) add_inline(builder, table.first[i], object, outside[i]);
    }
  }
  return builder.EndTable(start);
}

const Depth* depth_in(const Field* field, const void* object) {
  return field == nullptr ? nullptr : struct_in<Depth>(const_cast<void*>(field->in(object))).get();
}

std::unique_ptr<Place>& about_in(const Table& table, void* object) {
  return struct_in<Place>(table.about->in(object));
}

void unpack(const firnbook::Pit& pit, firnbook::PitT& to) {
  overlay(reinterpret_cast<const Stored&>(pit), table_of<firnbook::PitT>(), &to);
}

}  // namespace firn::form
