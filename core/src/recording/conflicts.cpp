#include "recording/conflicts.h"

#include <algorithm>
#include <cstring>
#include <tuple>
#include <utility>

#include "recording/incoming.h"
#include "recording/overlay.h"
#include "support/form.h"
#include "support/place.h"
#include "support/result.h"

namespace firn::recording {
namespace {

using firnbook::Change;
using firnbook::ChangeKind;
using firnbook::Edit;
using firnbook::Pit;
using firnbook::Target;
using firnbook::Thing;
using flatbuffers::Table;
using flatbuffers::uoffset_t;
using flatbuffers::voffset_t;
using form::Element;
using Tables = form::StoredList;

// --- whether two edits say the same ------------------------------------------------------------------------

std::size_t size_of(Element element) {
  switch (element) {
    case Element::bits16:
      return 2;
    case Element::bits32:
    case Element::real:
      return 4;
    case Element::bits64:
      return 8;
    case Element::depth:
      return sizeof(firnbook::Depth);
    case Element::moment:
      return sizeof(firnbook::Moment);
    case Element::time_span:
      return sizeof(firnbook::TimeSpan);
    case Element::place:
      return sizeof(firnbook::Place);
    default:
      return 1;
  }
}

bool same_table(const form::Table& form, const Table& a, const Table& b);

bool same_tables(const form::Table& form, const form::StoredList& a, const form::StoredList& b) {
  if (a.size() != b.size()) return false;
  for (uoffset_t i = 0; i < a.size(); ++i) {
    if (!same_table(form, *a.Get(i), *b.Get(i))) return false;
  }
  return true;
}

// Texts and lists of numbers or depths.
bool same_bytes(const Table& a, const Table& b, const form::Field& field, std::size_t element) {
  const auto* one = a.GetPointer<const flatbuffers::Vector<std::uint8_t>*>(field.field);
  const auto* two = b.GetPointer<const flatbuffers::Vector<std::uint8_t>*>(field.field);
  return one->size() == two->size() && std::memcmp(one->Data(), two->Data(), element * one->size()) == 0;
}

bool same_field(const form::Field& field, const Table& a, const Table& b) {
  const bool is_in_a = a.CheckField(field.field);
  if (is_in_a != b.CheckField(field.field)) return false;
  if (!is_in_a) return true;
  switch (field.kind) {
    case form::Kind::text:
      return same_bytes(a, b, field, 1);
    case form::Kind::numbers:
      return same_bytes(a, b, field, size_of(field.element));
    case form::Kind::depths:
      return same_bytes(a, b, field, sizeof(firnbook::Depth));
    case form::Kind::table:
      return same_table(*field.table, *a.GetPointer<const Table*>(field.field),
                        *b.GetPointer<const Table*>(field.field));
    case form::Kind::tables:
      return same_tables(*field.table, *form::stored_list(a, field.field),
                         *form::stored_list(b, field.field));
    default:
      return std::memcmp(a.GetAddressOf(field.field), b.GetAddressOf(field.field), size_of(field.element)) ==
             0;
  }
}

bool same_table(const form::Table& form, const Table& a, const Table& b) {
  for (const form::Field& field : form) {
    if (!same_field(field, a, b)) return false;
  }
  return true;
}

// --- what an edit touches
// ------------------------------------------------------------------------------------

// In order of what is looked at first.
enum class Act : std::uint8_t { sets, adds, moves, reshapes, removes, undoes, redoes };

// Lists of things come first, by their number; then what has no list.
enum Room : std::uint32_t { kOwnTables = kListCount, kAllDepths, kMarkers };

struct Touch {
  std::uint32_t list = 0, index = 0, sub = 0;  // the thing; sub 0 for the outer one
  std::uint16_t field = kWholeThing;
  Act act = Act::sets;
  std::uint64_t device = 0;
  std::uint32_t edit = 0;  // position among all edits
  const Target* target = nullptr;
  Thing thing = Thing::pit;
  // What a field is set to; null when it is cleared.
  const Table* from = nullptr;
};

class Finder {
 public:
  Finder(const std::vector<Standing>& all, const Fold& folded) : all_(all), folded_(folded) {}

  std::vector<Conflict> find() {
    keys_.reserve(all_.size());
    for (std::uint32_t i = 0; i < all_.size(); ++i) keys_.push_back({all_[i].order.key, i});
    std::sort(keys_.begin(), keys_.end());
    for (edit_ = 0; edit_ < all_.size(); ++edit_) {
      if (all_[edit_].counts) collect(*all_[edit_].edit->change());
    }
    std::sort(touches_.begin(), touches_.end(), comes_first);
    for (std::size_t begin = 0; begin < touches_.size();) {
      std::size_t end = begin;
      while (end < touches_.size() && same_thing(touches_[begin], touches_[end])) ++end;
      look_at_thing(begin, end);
      begin = end;
    }
    return std::move(found_);
  }

 private:
  struct Known {
    EditKey key;
    std::uint32_t edit;
    bool operator<(const Known& other) const { return key < other.key; }
  };

  // --- collecting

  // The position of an edit, or all_.size().
  std::uint32_t position(EditKey key) const {
    const auto at = std::lower_bound(keys_.begin(), keys_.end(), Known{key, 0});
    return at != keys_.end() && at->key == key ? at->edit : static_cast<std::uint32_t>(all_.size());
  }

  Touch& put(std::uint32_t list, std::uint32_t index, std::uint32_t sub, Act act) {
    touches_.emplace_back();
    Touch& touch = touches_.back();
    touch.list = list;
    touch.index = index;
    touch.sub = sub;
    touch.act = act;
    touch.edit = edit_;
    touch.device = all_[edit_].order.key.device;
    return touch;
  }

  void collect(const Change& change) {
    switch (*change.kind()) {
      case ChangeKind::set:
        return collect_set(*change.fields());
      case ChangeKind::change:
        return collect_change(*change.target(), *change.fields());
      case ChangeKind::clear:
        return collect_clear(change);
      case ChangeKind::remove:
        return on_thing(*change.target(), Act::removes);
      case ChangeKind::split_layer:
        return on_thing(*change.target(), Act::reshapes);
      case ChangeKind::merge_layers:
        on_thing(*change.target(), Act::reshapes);
        return on_thing(*change.other(), Act::reshapes);
      case ChangeKind::add:
        if (change.target() != nullptr) on_thing(*change.target(), Act::adds);
        if (change.other() != nullptr) on_thing(*change.other(), Act::adds);
        return;
      case ChangeKind::shift_depths:
      case ChangeKind::rescale_depths:
        put(kAllDepths, 0, 0, Act::moves);
        return;
      case ChangeKind::undo:
      case ChangeKind::redo:
        return collect_marker(change);
      case ChangeKind::test_event:
        // Two people who count one column apart from each other, or correct it meanwhile.
        if (change.target() != nullptr) on_thing(*change.target(), Act::reshapes);
        return;
    }
  }

  void collect_marker(const Change& change) {
    const std::uint32_t named = position(key_of(*change.edit()));
    if (named == all_.size()) return;
    put(kMarkers, named, 0, *change.kind() == ChangeKind::undo ? Act::undoes : Act::redoes);
  }

  // Fields of what a pit has once: of its tables one by one.
  void collect_set(const Pit& fields) {
    const auto& pit = reinterpret_cast<const Table&>(fields);
    for (std::size_t id = 0; id < kFieldCount; ++id) {
      const auto field = static_cast<voffset_t>(4 + 2 * id);
      if (field == Pit::VT_SCHEMA_MINOR || !pit.CheckField(field)) continue;
      const Thing thing = own_table(field);
      if (thing == Thing::pit) {
        set_field(put(kOwnTables, 0, 0, Act::sets), thing, id, pit);
      } else {
        const Table& own = *pit.GetPointer<const Table*>(field);
        each_field(own, [&](std::size_t inner) {
          set_field(put(kOwnTables, static_cast<std::uint32_t>(thing), 0, Act::sets), thing, inner, own);
        });
      }
    }
  }

  void collect_change(const Target& target, const Pit& fields) {
    const std::size_t list = list_of(target.thing());
    const ListInfo& info = list_info(list);
    const Table* from = element(fields, list, 0);
    Touch place;
    if (!find_thing(target, place)) return;
    if (is_inner(target.thing())) {
      from = from->GetPointer<const Tables*>(info.inner_field)->Get(0);
      on_outer(place, target);
    }
    each_field(*from, [&](std::size_t id) {
      Touch& touch = put(place.list, place.index, place.sub, Act::sets);
      touch.target = &target;
      set_field(touch, target.thing(), id, *from);
    });
  }

  void collect_clear(const Change& change) {
    Touch place;
    const Target* target = change.target();
    if (target != nullptr && !find_thing(*target, place)) return;
    if (target != nullptr && is_inner(target->thing())) on_outer(place, *target);
    for (const firnbook::Place* field : *change.clear()) {
      const auto own = static_cast<std::uint32_t>(field->thing());
      Touch& touch = target != nullptr ? put(place.list, place.index, place.sub, Act::sets)
                                       : put(kOwnTables, own, 0, Act::sets);
      touch.target = target;
      touch.thing = field->thing();
      touch.field = field->field();
    }
  }

  void on_thing(const Target& target, Act act) {
    Touch place;
    if (!find_thing(target, place)) return;
    Touch& touch = put(place.list, place.index, place.sub, act);
    touch.target = &target;
    touch.thing = target.thing();
    if (is_inner(target.thing())) on_outer(place, target);
  }

  // Whoever changes a fracture wants its test to be there.
  void on_outer(const Touch& place, const Target& target) {
    Touch& touch = put(place.list, place.index, 0, Act::adds);
    touch.target = &target;
    touch.thing = target.thing();
  }

  void set_field(Touch& touch, Thing thing, std::size_t id, const Table& from) {
    touch.thing = thing;
    touch.field = static_cast<std::uint16_t>(id);
    touch.from = &from;
  }

  // Where the thing stands or stood. Where its adding was taken back there is nothing to stand on, and that
  // is told at once.
  bool find_thing(const Target& target, Touch& place) {
    Spot spot;
    place.list = static_cast<std::uint32_t>(list_of(target.thing()));
    if (folded_.find_spot(target, spot)) {
      place.index = spot.index;
      place.sub = is_inner(target.thing()) ? spot.sub + 1 : 0;
      return true;
    }
    const std::uint32_t adding = position(key_of(target.edit()));
    if (adding == all_.size() || all_[adding].by == nullptr || all_[adding].counts) return false;
    const Edit& own = *all_[edit_].edit;
    if (are_apart(own, *all_[adding].by)) {
      found_.push_back({key_of(*own.id()), key_of(*all_[adding].by->id()), target, kWholeThing});
    }
    return false;
  }

  static Thing own_table(voffset_t field) {
    switch (field) {
      case Pit::VT_SITE:
        return Thing::site;
      case Pit::VT_CHOICE:
        return Thing::choice;
      case Pit::VT_WEATHER:
        return Thing::weather;
      case Pit::VT_SURFACE:
        return Thing::surface;
      case Pit::VT_SNOWPACK:
        return Thing::snowpack;
      case Pit::VT_ASSESSMENT:
        return Thing::assessment;
      case Pit::VT_BULLETIN:
        return Thing::bulletin;
      case Pit::VT_OPERATION:
        return Thing::operation;
      default:
        return Thing::pit;
    }
  }

  // A table has at most 64 fields: the width of its mask of unreliable values.
  static constexpr std::size_t kFieldCount = 64;
  template <class Visit>
  static void each_field(const Table& table, Visit&& visit) {
    for (std::size_t id = 0; id < kFieldCount; ++id) {
      if (table.CheckField(static_cast<voffset_t>(4 + 2 * id))) visit(id);
    }
  }

  // --- comparing

  static auto thing_key(const Touch& touch) { return std::tie(touch.list, touch.index, touch.sub); }
  static bool same_thing(const Touch& a, const Touch& b) { return thing_key(a) == thing_key(b); }
  static bool comes_first(const Touch& a, const Touch& b) {
    return std::tie(a.list, a.index, a.sub, a.field, a.act, a.device, a.edit) <
           std::tie(b.list, b.index, b.sub, b.field, b.act, b.device, b.edit);
  }

  // Whether neither knew of the other.
  static bool are_apart(const Edit& a, const Edit& b) {
    return a.id()->device() != b.id()->device() && !saw(a, *b.id()) && !saw(b, *a.id());
  }
  static bool saw(const Edit& who, const firnbook::EditId& what) {
    if (who.seen() == nullptr) return false;
    const std::size_t most = std::min<std::size_t>(who.seen()->size(), kMostSeen);
    for (uoffset_t i = 0; i < most; ++i) {
      const firnbook::Seen& seen = *who.seen()->Get(i);
      if (seen.device() == what.device() && seen.up_to() >= what.sequence()) return true;
    }
    return false;
  }

  const Edit& edit(const Touch& touch) const { return *all_[touch.edit].edit; }
  bool are_apart(const Touch& a, const Touch& b) const { return are_apart(edit(a), edit(b)); }

  static bool say_the_same(const Touch& a, const Touch& b) {
    if (a.from == nullptr || b.from == nullptr) return a.from == b.from;
    const form::Table* form = form::table_of(a.thing);
    const form::Field* field =
        form == nullptr ? nullptr : form->find(static_cast<voffset_t>(4 + 2 * a.field));
    return field != nullptr && same_field(*field, *a.from, *b.from);
  }

  void tell(const Touch& other, const Touch& shown, std::uint16_t field) {
    Conflict conflict;
    conflict.other = all_[other.edit].order.key;
    conflict.shown = all_[shown.edit].order.key;
    conflict.field = field;
    if (other.list == kMarkers) {
      conflict.target = Target(*edit(other).change()->edit(), 0, 0, Thing::pit);
    } else if (other.target != nullptr) {
      conflict.target = *other.target;
    } else {
      conflict.target = Target(firnbook::EditId(0, 0), 0, 0, other.thing);
    }
    found_.push_back(conflict);
  }

  // What touches the thing as a whole: the last, and the last of any other device than that one's.
  struct Whole {
    const Touch* last = nullptr;
    const Touch* others = nullptr;
  };

  void look_at_thing(std::size_t begin, std::size_t end) {
    const Whole whole = find_whole(begin, end);
    for (std::size_t from = begin; from < end;) {
      std::size_t to = from;
      while (to < end && touches_[to].field == touches_[from].field &&
             touches_[to].act == touches_[from].act) {
        ++to;
      }
      look_at_field(from, to, whole);
      from = to;
    }
  }

  Whole find_whole(std::size_t begin, std::size_t end) const {
    Whole whole;
    for (std::size_t i = begin; i < end; ++i) {
      const Touch& touch = touches_[i];
      if (touch.act == Act::sets || touch.act == Act::adds) continue;
      if (whole.last == nullptr || whole.last->edit < touch.edit) whole.last = &touch;
    }
    for (std::size_t i = begin; i < end && whole.last != nullptr; ++i) {
      const Touch& touch = touches_[i];
      if (touch.act == Act::sets || touch.act == Act::adds || touch.device == whole.last->device) continue;
      if (whole.others == nullptr || whole.others->edit < touch.edit) whole.others = &touch;
    }
    return whole;
  }

  // One field of one thing, one way of touching it. Of each device only the last counts: what it said before
  // it took back itself.
  void look_at_field(std::size_t from, std::size_t to, const Whole& whole) {
    std::size_t winner = from;
    for (std::size_t i = from; i < to; ++i) {
      if (touches_[winner].edit < touches_[i].edit) winner = i;
    }
    for (std::size_t i = from; i < to; ++i) {
      if (i + 1 < to && touches_[i].device == touches_[i + 1].device) continue;
      const Touch& touch = touches_[i];
      if (touch.act == Act::sets && i != winner && are_apart(touch, touches_[winner]) &&
          !say_the_same(touch, touches_[winner])) {
        tell(touch, touches_[winner], touch.field);
      }
      if (whole.last == nullptr) continue;
      const Touch* other = whole.last->device != touch.device ? whole.last : whole.others;
      if (other != nullptr && are_apart(touch, *other)) look_at_pair(touch, *other);
    }
  }

  // `whole` removes, splits, joins ... the thing that `touch` speaks of too.
  void look_at_pair(const Touch& touch, const Touch& whole) {
    const bool is_later = touch.edit < whole.edit;
    switch (touch.act) {
      case Act::removes:
        return;  // who removes too wants the same; all others tell it themselves
      case Act::adds:
        if (whole.act == Act::removes) tell(touch, whole, kWholeThing);
        return;
      case Act::sets:
        if (is_later || whole.act == Act::removes) return tell(touch, whole, touch.field);
        return tell(whole, touch, touch.field);
      case Act::undoes:
      case Act::redoes:
        if (is_later && touch.act != whole.act) tell(touch, whole, kWholeThing);
        return;
      case Act::moves:
      case Act::reshapes:
        if (is_later || whole.act == Act::removes) tell(touch, whole, kWholeThing);
        return;
    }
  }

  const std::vector<Standing>& all_;
  const Fold& folded_;
  std::vector<Known> keys_;
  std::vector<Touch> touches_;
  std::vector<Conflict> found_;
  std::uint32_t edit_ = 0;
};

}  // namespace

std::vector<Conflict> find_conflicts(const std::vector<Standing>& standings, const Fold& folded) {
  return Finder(standings, folded).find();
}

}  // namespace firn::recording
