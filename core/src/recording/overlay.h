// Laying one edit's fields over a pit under construction, and the other things that are done to fields one
// by one. Nothing here decides whether an edit is allowed (fold.h does).
//
// In a pit under construction, positions in lists are slots: they never change, and a removed thing leaves
// a null behind.
#pragma once

#include <cstddef>
#include <cstdint>
#include <memory>
#include <string_view>

#include "schemas/edit_generated.h"
#include "schemas/pit_generated.h"

namespace firn::recording {

// Where a thing stands in a pit under construction. `sub` counts in the thing's own list (a fracture of a
// test, a reading of a profile) and is 0 for things that are not inside another.
struct Spot {
  std::uint32_t index = 0;
  std::uint32_t sub = 0;
};

// A list of things in a pit, and the list inside each of them where there is one.
struct ListInfo {
  firnbook::Thing thing = firnbook::Thing::pit;        // Thing::pit: its elements have no name
  firnbook::Thing inner_thing = firnbook::Thing::pit;  // Thing::pit: nothing inside
  flatbuffers::voffset_t field = 0;
  flatbuffers::voffset_t inner_field = 0;
  bool has_about = false;  // its elements are about a place
  constexpr bool is_nested() const { return inner_thing != firnbook::Thing::pit; }
};
inline constexpr std::size_t kListCount = 18;
const ListInfo& list_info(std::size_t list);
// The list whose elements, or the elements inside them, are of this kind; kListCount when there is none.
std::size_t list_of(firnbook::Thing thing);
// The boundary below a layer stands in the list of layers; anything else as list_of.
std::size_t list_of_place(firnbook::Thing thing);
bool is_inner(firnbook::Thing thing);

// What the fields take as a pit under construction, every table counted as often as it is reached: in
// bytes, about, and the same number on every machine.
inline constexpr std::size_t kFieldContent = 32;
inline constexpr std::size_t kElementContent = 8;
std::size_t content_of(const firnbook::Pit& fields);
// UTF-8 without control characters other than tab and line ends.
bool is_plain_text(std::string_view text);
// Whether every text in the fields is; ask only when content_of() is no more than kMostContent.
bool holds_plain_text(const firnbook::Pit& fields);

// Elements of a list in stored fields, and in the list inside its element `nth`.
std::size_t list_size(const firnbook::Pit& fields, std::size_t list);
std::size_t inner_size(const firnbook::Pit& fields, std::size_t list, std::size_t nth);
// The element `nth` of a list as a table, for asking which of its fields are present.
const flatbuffers::Table* element(const firnbook::Pit& fields, std::size_t list, std::size_t nth);
// What a remark, photo, absence or extension in the fields is about; null for anything else.
const firnbook::Place* about_of(const firnbook::Pit& fields, std::size_t list, std::size_t nth);

// Slots in use, removed ones counted.
std::size_t slot_count(const firnbook::PitT& pit, std::size_t list);
std::size_t inner_slot_count(const firnbook::PitT& pit, std::size_t list, std::uint32_t slot);
bool is_there(const firnbook::PitT& pit, firnbook::Thing thing, Spot spot);
// The place a remark, photo, absence or extension is about, null when it is about nothing.
std::unique_ptr<firnbook::Place>* about_in(firnbook::PitT& pit, std::size_t list, std::size_t slot);

// Overlays everything but the lists of things.
void set_fields(const firnbook::Pit& fields, firnbook::PitT& pit);
void append_list(const firnbook::Pit& fields, std::size_t list, firnbook::PitT& pit);
// Appends the fractures or readings of the list's first element to the thing at `slot`.
void append_inner(const firnbook::Pit& fields, std::size_t list, firnbook::PitT& pit, std::uint32_t slot);
// Overlays the first element of the thing's list (for a fracture or reading the first one inside it).
void change_thing(const firnbook::Pit& fields, firnbook::Thing thing, Spot spot, firnbook::PitT& pit);
void remove_thing(firnbook::Thing thing, Spot spot, firnbook::PitT& pit);

// `field` as in Place::field; kWholeThing stands for one of the pit's own tables as a whole (no `spot`).
// Lists of things and the schema's version cannot be cleared.
bool can_clear(firnbook::Thing thing, std::uint16_t field);
void clear_field(firnbook::Thing thing, std::uint16_t field, Spot spot, firnbook::PitT& pit);

}  // namespace firn::recording
