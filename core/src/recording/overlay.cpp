#include "recording/overlay.h"

#include "recording/draft.h"
#include "support/form.h"
#include "support/place.h"
#include "support/text.h"

namespace firn::recording {
namespace {

using firnbook::Pit;
using firnbook::PitT;
using firnbook::Thing;
using flatbuffers::voffset_t;
using Stored = flatbuffers::Table;

constexpr ListInfo list(Thing thing, voffset_t field, bool has_about = false) {
  return {thing, Thing::pit, field, 0, has_about};
}
constexpr ListInfo nested(Thing thing, voffset_t field, Thing inner_thing, voffset_t inner_field) {
  return {thing, inner_thing, field, inner_field, false};
}

constexpr ListInfo kLists[] = {
    list(Thing::observer, Pit::VT_OBSERVERS),
    list(Thing::layer, Pit::VT_LAYERS),
    list(Thing::temperature, Pit::VT_TEMPERATURES),
    nested(Thing::density_profile, Pit::VT_DENSITIES, Thing::density, firnbook::DensityProfile::VT_READINGS),
    nested(Thing::liquid_water_profile, Pit::VT_LIQUID_WATER, Thing::liquid_water,
           firnbook::LiquidWaterProfile::VT_READINGS),
    nested(Thing::surface_area_profile, Pit::VT_SURFACE_AREA, Thing::surface_area,
           firnbook::SurfaceAreaProfile::VT_READINGS),
    nested(Thing::hardness_profile, Pit::VT_HARDNESS, Thing::hardness,
           firnbook::HardnessProfile::VT_READINGS),
    nested(Thing::strength_profile, Pit::VT_STRENGTH, Thing::strength,
           firnbook::StrengthProfile::VT_READINGS),
    nested(Thing::impurity_profile, Pit::VT_IMPURITIES, Thing::impurity,
           firnbook::ImpurityProfile::VT_READINGS),
    nested(Thing::test, Pit::VT_TESTS, Thing::fracture, firnbook::StabilityTest::VT_FRACTURES),
    list(Thing::sign, Pit::VT_SIGNS),
    list(Thing::slide, Pit::VT_SLIDES),
    list(Thing::photo, Pit::VT_PHOTOS, true),
    list(Thing::remark, Pit::VT_REMARKS, true),
    list(Thing::pit, Pit::VT_ABSENCES, true),
    list(Thing::unread, Pit::VT_UNREAD),
    list(Thing::step, Pit::VT_STEPS),
    list(Thing::pit, Pit::VT_EXTENSIONS, true),
};
static_assert(sizeof kLists / sizeof kLists[0] == kListCount);

const Stored& as_table(const Pit& fields) {
  return reinterpret_cast<const Stored&>(fields);
}

// --- measuring -----------------------------------------------------------------------------------------

// Adds up what fields take, or reads their texts: two walks, because texts that many tables share are cheap
// to add up and dear to read.
struct Survey {
  bool reads_text;
  std::size_t content = 0;
  bool is_text = true;
};

void survey(const Stored& from, const form::Table& table, Survey& found);

void survey(const Stored& from, const form::Field& field, Survey& found) {
  switch (field.kind) {
    case form::Kind::text: {
      const auto& text = *from.GetPointer<const flatbuffers::String*>(field.field);
      found.content += text.size();
      if (found.reads_text) found.is_text = found.is_text && is_plain_text({text.c_str(), text.size()});
      return;
    }
    case form::Kind::table:
      return survey(*from.GetPointer<const Stored*>(field.field), *field.table, found);
    case form::Kind::numbers:
    case form::Kind::depths:
      found.content +=
          from.GetPointer<const flatbuffers::VectorOfAny*>(field.field)->size() * kElementContent;
      return;
    case form::Kind::tables:
      for (const Stored* element : *form::stored_list(from, field.field)) {
        survey(*element, *field.table, found);
      }
      return;
    default:  // part of the cost of the field
      return;
  }
}

void survey(const Stored& from, const form::Table& table, Survey& found) {
  // Once it is too much, by how much does not matter.
  if (found.content > kMostContent) return;
  for (const form::Field& field : table) {
    found.content += kFieldContent;
    if (from.CheckField(field.field)) survey(from, field, found);
  }
}

Survey survey(const Pit& fields, bool reads_text) {
  Survey found{reads_text};
  survey(as_table(fields), form::table_of<firnbook::PitT>(), found);
  return found;
}

// --- where things are ----------------------------------------------------------------------------------

// The pit's list number `list`, stored; null when it is absent.
const form::StoredList* stored(const Pit& fields, std::size_t list) {
  return form::stored_list(as_table(fields), kLists[list].field);
}
const form::StoredList* stored_inner(const Pit& fields, std::size_t list, std::size_t nth) {
  return form::stored_list(*element(fields, list, nth), kLists[list].inner_field);
}

// A list in the pit, or in one of its things, with the type of its elements.
struct List {
  const form::Table* table;
  void* member;
  std::size_t size() const { return table->size(member); }
  void* object(std::size_t slot) const { return table->object_at(member, slot); }
};

List list_in(const PitT& pit, std::size_t list) {
  const form::Field& field = *form::table_of<firnbook::PitT>().find(kLists[list].field);
  return {field.table, const_cast<void*>(field.in(&pit))};
}
List inner_list(const List& outer, std::size_t list, std::size_t slot) {
  const form::Field& field = *outer.table->find(kLists[list].inner_field);
  return {field.table, field.in(outer.object(slot))};
}

// The list in which a thing stands, and its slot there.
struct Standing {
  List list;
  std::size_t slot;
  void* object() const { return list.object(slot); }
};
Standing standing(const PitT& pit, Thing thing, Spot spot) {
  const std::size_t number = list_of(thing);
  const List outer = list_in(pit, number);
  if (kLists[number].inner_thing != thing) return {outer, spot.index};
  return {inner_list(outer, number, spot.index), spot.sub};
}

// The pit's own table that is this thing; null for everything else.
const form::Field* own_table(Thing thing) {
  const form::ThingField* known = form::field_of(thing);
  if (known == nullptr) return nullptr;
  const form::Field* field = form::table_of<PitT>().find(known->field);
  return field->kind == form::Kind::table ? field : nullptr;
}

const form::Field* field_of(Thing thing, std::uint16_t id) {
  const form::Table* table = form::table_of(thing);
  return table != nullptr && id < table->count ? &table->first[id] : nullptr;
}

}  // namespace

const ListInfo& list_info(std::size_t list) {
  return kLists[list];
}

std::size_t list_of(Thing thing) {
  std::size_t list = 0;
  if (thing == Thing::pit) return kListCount;
  while (list < kListCount && kLists[list].thing != thing && kLists[list].inner_thing != thing) ++list;
  return list;
}

std::size_t list_of_place(Thing thing) {
  return list_of(thing == Thing::boundary ? Thing::layer : thing);
}

bool is_inner(Thing thing) {
  const std::size_t list = list_of(thing);
  return list < kListCount && kLists[list].inner_thing == thing;
}

bool is_plain_text(std::string_view text) {
  for (const char character : text) {
    const auto byte = static_cast<unsigned char>(character);
    const bool is_layout = byte == '\t' || byte == '\n' || byte == '\r';
    if ((byte < 0x20 && !is_layout) || byte == 0x7F) return false;
  }
  return is_utf8(text);
}

std::size_t content_of(const Pit& fields) {
  return survey(fields, false).content;
}

bool holds_plain_text(const Pit& fields) {
  return survey(fields, true).is_text;
}

std::size_t list_size(const Pit& fields, std::size_t list) {
  const form::StoredList* elements = stored(fields, list);
  return elements == nullptr ? 0 : elements->size();
}

std::size_t inner_size(const Pit& fields, std::size_t list, std::size_t nth) {
  if (!kLists[list].is_nested()) return 0;
  const form::StoredList* inner = stored_inner(fields, list, nth);
  return inner == nullptr ? 0 : inner->size();
}

const Stored* element(const Pit& fields, std::size_t list, std::size_t nth) {
  return stored(fields, list)->Get(static_cast<flatbuffers::uoffset_t>(nth));
}

const firnbook::Place* about_of(const Pit& fields, std::size_t list, std::size_t nth) {
  if (!kLists[list].has_about) return nullptr;
  const form::Table& table = *form::table_of<firnbook::PitT>().find(kLists[list].field)->table;
  return element(fields, list, nth)->GetStruct<const firnbook::Place*>(table.about->field);
}

std::size_t slot_count(const PitT& pit, std::size_t list) {
  return list_in(pit, list).size();
}

std::size_t inner_slot_count(const PitT& pit, std::size_t list, std::uint32_t slot) {
  return kLists[list].is_nested() ? inner_list(list_in(pit, list), list, slot).size() : 0;
}

bool is_there(const PitT& pit, Thing thing, Spot spot) {
  const std::size_t number = list_of(thing);
  if (number == kListCount) return false;
  const List outer = list_in(pit, number);
  if (spot.index >= outer.size() || outer.object(spot.index) == nullptr) return false;
  const Standing found = standing(pit, thing, spot);
  return found.slot < found.list.size() && found.object() != nullptr;
}

std::unique_ptr<firnbook::Place>* about_in(PitT& pit, std::size_t list, std::size_t slot) {
  const List elements = list_in(pit, list);
  void* object = elements.object(slot);
  return object == nullptr || !kLists[list].has_about ? nullptr : &form::about_in(*elements.table, object);
}

void set_fields(const Pit& fields, PitT& pit) {
  for (const form::Field& field : form::table_of<firnbook::PitT>()) {
    if (field.kind != form::Kind::tables) form::overlay(as_table(fields), field, &pit);
  }
}

void append_list(const Pit& fields, std::size_t list, PitT& pit) {
  const List to = list_in(pit, list);
  if (const form::StoredList* elements = stored(fields, list)) form::append(*elements, *to.table, to.member);
}

void append_inner(const Pit& fields, std::size_t list, PitT& pit, std::uint32_t slot) {
  const List to = inner_list(list_in(pit, list), list, slot);
  form::append(*stored_inner(fields, list, 0), *to.table, to.member);
}

void change_thing(const Pit& fields, Thing thing, Spot spot, PitT& pit) {
  const std::size_t list = list_of(thing);
  const Stored* from = is_inner(thing) ? stored_inner(fields, list, 0)->Get(0) : element(fields, list, 0);
  const Standing to = standing(pit, thing, spot);
  form::overlay(*from, *to.list.table, to.object());
}

void remove_thing(Thing thing, Spot spot, PitT& pit) {
  const Standing found = standing(pit, thing, spot);
  found.list.table->reset(found.list.table->at(found.list.member, found.slot));
}

bool can_clear(Thing thing, std::uint16_t id) {
  if (id == kWholeThing) return own_table(thing) != nullptr;
  if (thing == Thing::pit && id == field_id(Pit::VT_SCHEMA_MINOR)) return false;
  const form::Field* field = field_of(thing, id);
  return field != nullptr && (field->kind != form::Kind::tables || thing == Thing::operation);
}

void clear_field(Thing thing, std::uint16_t id, Spot spot, PitT& pit) {
  const form::Field* own = own_table(thing);
  if (id == kWholeThing) return form::wipe(*own, &pit);
  const form::Field& field = *field_of(thing, id);
  if (thing == Thing::pit) return form::wipe(field, &pit);
  void* object = own != nullptr ? own->table->get(own->in(&pit)) : standing(pit, thing, spot).object();
  if (object != nullptr) form::wipe(field, object);
}

}  // namespace firn::recording
