#include "recording/overlay.h"

#include <array>
#include <string>
#include <type_traits>
#include <vector>

#include "recording/draft.h"
#include "recording/fields.h"
#include "support/place.h"
#include "support/result.h"
#include "support/text.h"

namespace firn::recording {
namespace {

using firnbook::Pit;
using firnbook::PitT;
using firnbook::Thing;
using flatbuffers::voffset_t;

// --- one field: from its stored form to its member ---------------------------------------------------

template <class T>
void lay(const flatbuffers::Optional<T>& from, flatbuffers::Optional<T>& to) {
  to = from;
}
template <class T>
std::enable_if_t<std::is_arithmetic_v<T>> lay(T from, T& to) {
  to = from;
}
void lay(const flatbuffers::String* from, std::string& to) {
  to.assign(from->c_str(), from->size());
}
template <class Struct>
void lay(const Struct* from, std::unique_ptr<Struct>& to) {
  to = std::make_unique<Struct>(*from);
}
template <class Object>
void overlay(const typename Object::TableType& from, Object& to);
template <class Object>
void lay(const typename Object::TableType* from, std::unique_ptr<Object>& to) {
  if (to == nullptr) to = std::make_unique<Object>();
  overlay(*from, *to);
}
template <class T>
void lay(const flatbuffers::Vector<T>* from, std::vector<T>& to) {
  to.clear();
  to.reserve(from->size());
  for (flatbuffers::uoffset_t i = 0; i < from->size(); ++i) to.push_back(from->Get(i));
}
template <class Struct>
void lay(const flatbuffers::Vector<const Struct*>* from, std::vector<Struct>& to) {
  to.clear();
  to.reserve(from->size());
  for (flatbuffers::uoffset_t i = 0; i < from->size(); ++i) to.push_back(*from->Get(i));
}
template <class Object>
void append(const flatbuffers::Vector<flatbuffers::Offset<typename Object::TableType>>& from,
            std::vector<std::unique_ptr<Object>>& to) {
  // Room for exactly one more, again and again, would move the whole list each time.
  if (to.empty()) to.reserve(from.size());
  for (flatbuffers::uoffset_t i = 0; i < from.size(); ++i) {
    to.push_back(std::make_unique<Object>());
    overlay(*from.Get(i), *to.back());
  }
}
template <class Object>
void lay(const flatbuffers::Vector<flatbuffers::Offset<typename Object::TableType>>* from,
         std::vector<std::unique_ptr<Object>>& to) {
  to.clear();
  append(*from, to);
}

// Presence is asked of the stored form, so that an empty text or list that was written counts as written.
template <class Object>
void overlay(const typename Object::TableType& from, Object& to) {
  each_field(Of<typename Object::TableType>{}, [&](voffset_t field, auto get, auto member) {
    if (is_present(from, field)) lay((from.*get)(), to.*member);
  });
}

// --- clearing ------------------------------------------------------------------------------------------

template <class T>
void wipe(flatbuffers::Optional<T>& member) {
  member = flatbuffers::nullopt;
}
template <class T>
std::enable_if_t<std::is_arithmetic_v<T>> wipe(T& member) {
  member = 0;
}
void wipe(std::string& member) {
  member.clear();
}
template <class T>
void wipe(std::unique_ptr<T>& member) {
  member.reset();
}
template <class T>
void wipe(std::vector<T>& member) {
  member.clear();
}

template <class Object>
void wipe_field(Object& object, std::uint16_t id) {
  each_field(Of<typename Object::TableType>{}, [&](voffset_t field, auto, auto member) {
    if (field_id(field) == id) wipe(object.*member);
  });
}

template <class T>
inline constexpr bool kIsListOfTables = false;
template <class T>
inline constexpr bool kIsListOfTables<std::vector<std::unique_ptr<T>>> = true;

// --- measuring -----------------------------------------------------------------------------------------

// Adds up what fields take, or reads their texts: two walks, because texts that many tables share are cheap
// to add up and dear to read.
struct Survey {
  bool reads_text;
  std::size_t content = 0;
  bool is_text = true;
};

template <class T>
void look(const flatbuffers::Optional<T>&, Survey&) {}
template <class T>
std::enable_if_t<std::is_arithmetic_v<T>> look(T, Survey&) {}
void look(const flatbuffers::String* text, Survey& found) {
  found.content += text->size();
  if (found.reads_text) found.is_text = found.is_text && is_plain_text({text->c_str(), text->size()});
}
template <class Table>
void survey_table(const Table& table, Survey& found);
// Structs are part of the cost of their field.
template <class Struct>
std::enable_if_t<!std::is_base_of_v<flatbuffers::Table, Struct>> look(const Struct*, Survey&) {}
template <class Table>
std::void_t<typename Table::NativeTableType> look(const Table* table, Survey& found) {
  survey_table(*table, found);
}
template <class T>
void look(const flatbuffers::Vector<T>* list, Survey& found) {
  found.content += std::size_t{list->size()} * kElementContent;
}
template <class Table>
void look(const flatbuffers::Vector<flatbuffers::Offset<Table>>* list, Survey& found) {
  for (flatbuffers::uoffset_t i = 0; i < list->size(); ++i) survey_table(*list->Get(i), found);
}

template <class Table>
void survey_table(const Table& table, Survey& found) {
  // Once it is too much, by how much does not matter.
  if (found.content > kMostContent) return;
  each_field(Of<Table>{}, [&](voffset_t field, auto get, auto) {
    found.content += kFieldContent;
    if (is_present(table, field)) look((table.*get)(), found);
  });
}

// --- lists ---------------------------------------------------------------------------------------------

// Calls `act` with the typed description of list number `list`.
template <class Act>
void with_list(std::size_t list, Act&& act) {
  std::size_t number = 0;
  each_list([&](const auto& description) {
    if (number++ == list) act(description);
  });
}

template <class Object, class = void>
inline constexpr bool kHasAbout = false;
template <class Object>
inline constexpr bool kHasAbout<Object, std::void_t<decltype(std::declval<Object>().about)>> = true;

// The member that holds the pit's own table of this kind; the tables that are no list.
template <class Act>
void with_own_table(Thing thing, Act&& act) {
  switch (thing) {
    case Thing::site:
      return act(&PitT::site);
    case Thing::choice:
      return act(&PitT::choice);
    case Thing::weather:
      return act(&PitT::weather);
    case Thing::surface:
      return act(&PitT::surface);
    case Thing::snowpack:
      return act(&PitT::snowpack);
    case Thing::assessment:
      return act(&PitT::assessment);
    case Thing::bulletin:
      return act(&PitT::bulletin);
    case Thing::operation:
      return act(&PitT::operation);
    default:
      return;
  }
}

enum class FieldKind { none, plain, list_of_tables };

template <class Table>
FieldKind field_kind(Of<Table>, std::uint16_t id) {
  FieldKind found = FieldKind::none;
  each_field(Of<Table>{}, [&](voffset_t field, auto, auto member) {
    using Member = std::decay_t<decltype(std::declval<typename Table::NativeTableType&>().*member)>;
    if (field_id(field) != id) return;
    found = kIsListOfTables<Member> ? FieldKind::list_of_tables : FieldKind::plain;
  });
  return found;
}

// Calls `act` with the type of the table that is this thing.
template <class Act>
void with_type(Thing thing, Act&& act) {
  if (thing == Thing::pit) return act(Of<Pit>{});
  with_own_table(thing, [&](auto member) {
    using Pointer = std::decay_t<decltype(std::declval<PitT&>().*member)>;
    act(Of<typename Pointer::element_type::TableType>{});
  });
  each_list([&](const auto& list) {
    using List = std::decay_t<decltype(list)>;
    if (list.thing == thing) act(Of<typename List::Element>{});
    if constexpr (kIsNested<List>) {
      if (list.inner_thing == thing) act(Of<typename List::InnerElement>{});
    }
  });
}

// Calls `act` with the object at `spot`, which must be there.
template <class Act>
void with_object(PitT& pit, Thing thing, Spot spot, Act&& act) {
  each_list([&](const auto& list) {
    using List = std::decay_t<decltype(list)>;
    if (list.thing == thing) act(*(pit.*list.member)[spot.index]);
    if constexpr (kIsNested<List>) {
      if (list.inner_thing == thing) act(*((*(pit.*list.member)[spot.index]).*list.inner_member)[spot.sub]);
    }
  });
}

constexpr std::array<ListInfo, kListCount> describe_lists() {
  std::array<ListInfo, kListCount> lists{};
  std::size_t count = 0;
  each_list([&](const auto& list) {
    lists[count].thing = list.thing;
    lists[count].field = list.field;
    lists[count].has_about = kHasAbout<typename std::decay_t<decltype(list)>::Object>;
    if constexpr (kIsNested<std::decay_t<decltype(list)>>) {
      lists[count].inner_thing = list.inner_thing;
      lists[count].inner_field = list.inner_field;
    }
    ++count;
  });
  return lists;
}
constexpr std::array<ListInfo, kListCount> kLists = describe_lists();
static_assert(kLists.back().field != 0, "kListCount is the number of lists in fields.h");

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
  Survey found{false};
  survey_table(fields, found);
  return found.content;
}

bool holds_plain_text(const Pit& fields) {
  Survey found{true};
  survey_table(fields, found);
  return found.is_text;
}

std::size_t list_size(const Pit& fields, std::size_t list) {
  std::size_t size = 0;
  with_list(list, [&](const auto& description) {
    const auto* elements = (fields.*description.get)();
    size = elements == nullptr ? 0 : elements->size();
  });
  return size;
}

std::size_t inner_size(const Pit& fields, std::size_t list, std::size_t nth) {
  std::size_t size = 0;
  with_list(list, [&](const auto& description) {
    if constexpr (kIsNested<std::decay_t<decltype(description)>>) {
      const auto* outer = (fields.*description.get)()->Get(static_cast<flatbuffers::uoffset_t>(nth));
      const auto* inner = (outer->*description.inner_get)();
      size = inner == nullptr ? 0 : inner->size();
    }
  });
  return size;
}

const flatbuffers::Table* element(const Pit& fields, std::size_t list, std::size_t nth) {
  const flatbuffers::Table* found = nullptr;
  with_list(list, [&](const auto& description) {
    const auto* outer = (fields.*description.get)()->Get(static_cast<flatbuffers::uoffset_t>(nth));
    found = reinterpret_cast<const flatbuffers::Table*>(outer);
  });
  return found;
}

const firnbook::Place* about_of(const Pit& fields, std::size_t list, std::size_t nth) {
  const firnbook::Place* about = nullptr;
  with_list(list, [&](const auto& description) {
    if constexpr (kHasAbout<typename std::decay_t<decltype(description)>::Object>) {
      about = (fields.*description.get)()->Get(static_cast<flatbuffers::uoffset_t>(nth))->about();
    }
  });
  return about;
}

std::size_t slot_count(const PitT& pit, std::size_t list) {
  std::size_t count = 0;
  with_list(list, [&](const auto& description) { count = (pit.*description.member).size(); });
  return count;
}

std::size_t inner_slot_count(const PitT& pit, std::size_t list, std::uint32_t slot) {
  std::size_t count = 0;
  with_list(list, [&](const auto& description) {
    if constexpr (kIsNested<std::decay_t<decltype(description)>>) {
      count = ((*(pit.*description.member)[slot]).*description.inner_member).size();
    }
  });
  return count;
}

bool is_there(const PitT& pit, Thing thing, Spot spot) {
  bool there = false;
  each_list([&](const auto& list) {
    using List = std::decay_t<decltype(list)>;
    const auto& objects = pit.*list.member;
    if (spot.index >= objects.size() || objects[spot.index] == nullptr) return;
    if (list.thing == thing) there = true;
    if constexpr (kIsNested<List>) {
      const auto& inner = (*objects[spot.index]).*list.inner_member;
      if (list.inner_thing == thing) there = spot.sub < inner.size() && inner[spot.sub] != nullptr;
    }
  });
  return there;
}

std::unique_ptr<firnbook::Place>* about_in(PitT& pit, std::size_t list, std::size_t slot) {
  std::unique_ptr<firnbook::Place>* about = nullptr;
  with_list(list, [&](const auto& description) {
    if constexpr (kHasAbout<typename std::decay_t<decltype(description)>::Object>) {
      const auto& object = (pit.*description.member)[slot];
      if (object != nullptr) about = &object->about;
    }
  });
  return about;
}

void set_fields(const Pit& fields, PitT& pit) {
  each_field(Of<Pit>{}, [&](voffset_t field, auto get, auto member) {
    using Member = std::decay_t<decltype(pit.*member)>;
    if constexpr (!kIsListOfTables<Member>) {
      if (is_present(fields, field)) lay((fields.*get)(), pit.*member);
    }
  });
}

void append_list(const Pit& fields, std::size_t list, PitT& pit) {
  with_list(list, [&](const auto& description) {
    const auto* elements = (fields.*description.get)();
    if (elements != nullptr) append(*elements, pit.*description.member);
  });
}

void append_inner(const Pit& fields, std::size_t list, PitT& pit, std::uint32_t slot) {
  with_list(list, [&](const auto& description) {
    if constexpr (kIsNested<std::decay_t<decltype(description)>>) {
      const auto* outer = (fields.*description.get)()->Get(0);
      append(*(outer->*description.inner_get)(),
             (*(pit.*description.member)[slot]).*description.inner_member);
    }
  });
}

void change_thing(const Pit& fields, Thing thing, Spot spot, PitT& pit) {
  each_list([&](const auto& list) {
    using List = std::decay_t<decltype(list)>;
    if (list.thing == thing) overlay(*(fields.*list.get)()->Get(0), *(pit.*list.member)[spot.index]);
    if constexpr (kIsNested<List>) {
      if (list.inner_thing != thing) return;
      const auto* inner = ((*(fields.*list.get)()->Get(0)).*list.inner_get)()->Get(0);
      overlay(*inner, *((*(pit.*list.member)[spot.index]).*list.inner_member)[spot.sub]);
    }
  });
}

void remove_thing(Thing thing, Spot spot, PitT& pit) {
  each_list([&](const auto& list) {
    using List = std::decay_t<decltype(list)>;
    if (list.thing == thing) (pit.*list.member)[spot.index].reset();
    if constexpr (kIsNested<List>) {
      if (list.inner_thing == thing) {
        ((*(pit.*list.member)[spot.index]).*list.inner_member)[spot.sub].reset();
      }
    }
  });
}

bool can_clear(Thing thing, std::uint16_t field) {
  if (field == kWholeThing) {
    bool is_own_table = false;
    with_own_table(thing, [&](auto) { is_own_table = true; });
    return is_own_table;
  }
  if (thing == Thing::pit && field == field_id(Pit::VT_SCHEMA_MINOR)) return false;
  FieldKind kind = FieldKind::none;
  with_type(thing, [&](auto type) { kind = field_kind(type, field); });
  if (kind == FieldKind::list_of_tables) return thing == Thing::operation;
  return kind == FieldKind::plain;
}

void clear_field(Thing thing, std::uint16_t field, Spot spot, PitT& pit) {
  if (thing == Thing::pit) return wipe_field(pit, field);
  with_own_table(thing, [&](auto member) {
    if (field == kWholeThing) {
      (pit.*member).reset();
    } else if (pit.*member != nullptr) {
      wipe_field(*(pit.*member), field);
    }
  });
  if (list_of(thing) == kListCount) return;
  with_object(pit, thing, spot, [&](auto& object) { wipe_field(object, field); });
}

}  // namespace firn::recording
