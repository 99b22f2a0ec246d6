#include "recording/fold.h"

#include <algorithm>
#include <string>
#include <utility>

#include "recording/draft.h"
#include "recording/order.h"
#include "recording/reshape.h"
#include "support/place.h"

namespace firn::recording {
namespace {

using firnbook::Change;
using firnbook::ChangeKind;
using firnbook::Edit;
using firnbook::LayerT;
using firnbook::Pit;
using firnbook::Place;
using firnbook::Target;
using firnbook::Thing;

Failure bad(std::string_view what, std::string_view remedy) {
  return failure_of(FIRN_BAD_EDIT, what, remedy);
}

Failure no_target() {
  return failure_of(FIRN_NO_SUCH_TARGET, "the edit names something that is not in the pit at that point",
                    "it was never added, was removed, or its adding was undone; name a thing that is there");
}

// --- which fields each kind of change needs and allows ----------------------------------------------------

constexpr std::uint32_t bit(int vtable_offset) {
  return std::uint32_t{1} << field_id(vtable_offset);
}
constexpr std::uint32_t kTarget = bit(Change::VT_TARGET);
constexpr std::uint32_t kOther = bit(Change::VT_OTHER);
constexpr std::uint32_t kFields = bit(Change::VT_FIELDS);
constexpr std::uint32_t kClear = bit(Change::VT_CLEAR);
constexpr std::uint32_t kAt = bit(Change::VT_AT);
constexpr std::uint32_t kAmount = bit(Change::VT_AMOUNT_10UM);
constexpr std::uint32_t kBase = bit(Change::VT_BASE_10UM);
constexpr std::uint32_t kEdit = bit(Change::VT_EDIT);
constexpr std::uint32_t kEvent = bit(Change::VT_EVENT);

struct Form {
  std::uint32_t needed;
  std::uint32_t allowed;  // beyond what is needed
};

// In order of ChangeKind.
constexpr Form kForms[] = {
    {kFields, 0},                          // set
    {kFields, kTarget | kOther},           // add
    {kTarget | kFields, kOther},           // change
    {kTarget, 0},                          // remove
    {kClear, kTarget},                     // clear
    {kTarget | kAt, 0},                    // split_layer
    {kTarget | kOther, 0},                 // merge_layers
    {kAmount, 0},                          // shift_depths
    {kAmount | kBase, 0},                  // rescale_depths
    {kEdit, 0},                            // undo
    {kEdit, 0},                            // redo
    {kEvent, kTarget | kOther | kFields},  // test_event
};
constexpr std::size_t kKinds = sizeof kForms / sizeof kForms[0];

std::uint32_t present_fields(const Change& change) {
  const auto& table = reinterpret_cast<const flatbuffers::Table&>(change);
  std::uint32_t present = 0;
  for (int field = Change::VT_TARGET; field <= Change::VT_EVENT; field += 2) {
    if (table.CheckField(static_cast<flatbuffers::voffset_t>(field))) present |= bit(field);
  }
  return present;
}

// --- what fields hold -------------------------------------------------------------------------------------

// A table has at most 64 fields: the width of its mask of unreliable values.
constexpr int kLastField = Pit::VT_SCHEMA_MINOR + 2 * 63;

bool has_field(const flatbuffers::Table& table, int vtable_offset) {
  return table.CheckField(static_cast<flatbuffers::voffset_t>(vtable_offset));
}
const flatbuffers::Table& as_table(const Pit& fields) {
  return reinterpret_cast<const flatbuffers::Table&>(fields);
}

// How many fields of a table are present, one field not counted.
int count_fields(const flatbuffers::Table& table, int except) {
  int count = 0;
  for (int field = 4; field <= kLastField; field += 2) {
    if (field != except && has_field(table, field)) ++count;
  }
  return count;
}

// Fields of the pit itself that are lists of things, and those that are not. The writer's schema version
// says nothing about the pit.
struct Held {
  int lists = 0;
  int others = 0;
};
Held held_by(const Pit& fields) {
  Held held;
  for (std::size_t list = 0; list < kListCount; ++list) {
    if (has_field(as_table(fields), list_info(list).field)) ++held.lists;
  }
  held.others = count_fields(as_table(fields), Pit::VT_SCHEMA_MINOR) - held.lists;
  return held;
}

// Whether the fields hold one list of things with one element and nothing else.
bool holds_one(const Pit& fields, std::size_t list) {
  const Held held = held_by(fields);
  return held.lists == 1 && held.others == 0 && list_size(fields, list) == 1;
}

// Whether that element holds nothing but its own list (fractures, readings), with `most` elements at most.
bool holds_only_inner(const Pit& fields, std::size_t list, std::size_t most) {
  const flatbuffers::Table& outer = *element(fields, list, 0);
  if (count_fields(outer, list_info(list).inner_field) != 0) return false;
  const std::size_t size = inner_size(fields, list, 0);
  return size >= 1 && size <= most;
}

bool names_by_position(const Place* about) {
  return about != nullptr && about->index() >= 0 && list_of_place(about->thing()) < kListCount;
}

// Whether a place by position lies in the edit's own lists.
bool is_own_position(const Pit& fields, const Place& about) {
  const std::size_t list = list_of_place(about.thing());
  const auto index = static_cast<std::size_t>(about.index());
  if (index >= list_size(fields, list)) return false;
  if (!is_inner(about.thing())) return true;
  return about.sub() >= 0 && static_cast<std::size_t>(about.sub()) < inner_size(fields, list, index);
}

Thing thing_of_place(const Place& place) {
  return place.thing() == Thing::boundary ? Thing::layer : place.thing();
}

Done check_abouts_alone(const Pit& fields, const Target* other, bool is_adding) {
  bool has_any = false;
  for (std::size_t list = 0; list < kListCount; ++list) {
    if (!list_info(list).has_about) continue;
    const std::size_t size = list_size(fields, list);
    has_any = has_any || size > 0;
    for (std::size_t i = 0; i < size; ++i) {
      const Place* about = about_of(fields, list, i);
      if (other != nullptr && about != nullptr && thing_of_place(*about) != other->thing()) {
        return bad("`about` names one kind of thing and `other` another",
                   "leave `about` out, or give it the kind of thing that `other` names");
      }
      if (other != nullptr || !names_by_position(about)) continue;
      if (!is_adding || !is_own_position(fields, *about)) {
        return bad("`about` names a thing by its position, and positions change",
                   "name the thing with `other`, or add it in the same edit");
      }
    }
  }
  if (other != nullptr && !has_any) {
    return bad("`other` says what something is about, but nothing in `fields` is about anything",
               "leave `other` out, or add a remark, photo, absence or extension");
  }
  return done();
}

Done check_set_alone(const Pit& fields) {
  const Held held = held_by(fields);
  if (held.lists > 0) {
    return bad("a set holds a list of things (layers, tests, signs, ...)", "use add for things");
  }
  if (held.others == 0) return bad("the edit sets nothing", "give it at least one field");
  return done();
}

Done check_add_alone(const Change& change) {
  const Pit& fields = *change.fields();
  const Held held = held_by(fields);
  if (held.others > 0) {
    return bad("an add holds fields of the pit itself (site, weather, time, ...)", "use set for these");
  }
  std::size_t count = 0;
  for (std::size_t list = 0; list < kListCount; ++list) count += list_size(fields, list);
  if (count == 0) return bad("the edit adds nothing", "give it at least one thing");
  if (change.target() != nullptr) {
    const std::size_t list = list_of(change.target()->thing());
    if (list == kListCount || is_inner(change.target()->thing()) || !list_info(list).is_nested()) {
      return bad("things can be added to a test or a measured profile only",
                 "leave the target out; to say what a remark is about use `other`");
    }
    if (!holds_one(fields, list) || !holds_only_inner(fields, list, SIZE_MAX)) {
      return bad("an add to a test or profile holds more than fractures or readings",
                 "give it one element of the target's kind with nothing but the new fractures or readings");
    }
  }
  return check_abouts_alone(fields, change.other(), true);
}

Done check_change_alone(const Change& change) {
  const Pit& fields = *change.fields();
  const std::size_t list = list_of(change.target()->thing());
  if (list == kListCount) {
    return bad("the target is no element of a list", "use set for the pit's own tables");
  }
  if (!holds_one(fields, list)) {
    return bad("a change must hold exactly one element, of the target's kind",
               "make one edit for each thing");
  }
  if (is_inner(change.target()->thing())) {
    if (!holds_only_inner(fields, list, 1)) {
      return bad("a change of a fracture or reading holds something else",
                 "give it one test or profile with that one fracture or reading and nothing else");
    }
  } else if (list_info(list).is_nested() &&
             has_field(*element(fields, list, 0), list_info(list).inner_field)) {
    return bad("a change of a test or profile holds its fractures or readings",
               "name the fracture or reading that changes, or add one");
  }
  return check_abouts_alone(fields, change.other(), false);
}

Done check_clear_alone(const Change& change) {
  if (change.clear()->size() == 0) return bad("the edit clears nothing", "name at least one field");
  const Target* target = change.target();
  for (const Place* place : *change.clear()) {
    const bool is_listed = list_of(place->thing()) < kListCount;
    const bool fits = target != nullptr ? place->thing() == target->thing() && is_listed : !is_listed;
    if (!fits) {
      return bad("a field to clear belongs to another thing than the target",
                 target != nullptr ? "name fields of the target" : "name the thing as the target");
    }
    if (!can_clear(place->thing(), place->field())) {
      Failure failure = bad("there is no such field to clear", "things in lists are removed one by one");
      failure.place = *place;
      return failure;
    }
  }
  return done();
}

Done check_depths_alone(const Change& change) {
  const std::int32_t amount = *change.amount_10um();
  if (*change.kind() == ChangeKind::shift_depths) {
    if (amount == 0) return bad("the edit moves depths by nothing", "give an amount other than 0");
    return done();
  }
  if (amount <= 0 || *change.base_10um() <= 0) {
    return bad("depths are stretched by the ratio of two lengths above 0", "give the new and the old HS");
  }
  return done();
}

DepthMap depth_map(const Change& change) {
  if (*change.kind() == ChangeKind::shift_depths) return {1, 1, *change.amount_10um()};
  return {*change.amount_10um(), *change.base_10um(), 0};
}

bool is_layer(const Target& target) {
  return target.thing() == Thing::layer;
}

Failure only_layers() {
  return bad("only layers can be split and joined", "name layers");
}

}  // namespace

// --- checks -----------------------------------------------------------------------------------------------

Done Fold::check_alone(const Change& change) {
  if (!change.kind()) return bad("the edit says no kind of change", "give it a kind");
  const auto number = static_cast<std::size_t>(*change.kind());
  if (number < 1 || number > kKinds) return bad("the kind of change is not known", "see schemas/edit.fbs");
  const Form& form = kForms[number - 1];
  const std::uint32_t present = present_fields(change);
  if ((present & form.needed) != form.needed) {
    return bad("the edit lacks what its kind of change needs", "see schemas/edit.fbs, ChangeKind");
  }
  if ((present & ~(form.needed | form.allowed)) != 0) {
    return bad("the edit holds what its kind of change has no use for", "see schemas/edit.fbs, ChangeKind");
  }
  switch (*change.kind()) {
    case ChangeKind::set:
      return check_set_alone(*change.fields());
    case ChangeKind::add:
      return check_add_alone(change);
    case ChangeKind::change:
      return check_change_alone(change);
    case ChangeKind::clear:
      return check_clear_alone(change);
    case ChangeKind::split_layer:
      return is_layer(*change.target()) ? done() : Done(only_layers());
    case ChangeKind::merge_layers:
      return is_layer(*change.target()) && is_layer(*change.other()) ? done() : Done(only_layers());
    case ChangeKind::shift_depths:
    case ChangeKind::rescale_depths:
      return check_depths_alone(change);
    case ChangeKind::test_event:
      return check_event_alone(change);
    default:
      return done();
  }
}

Done Fold::check(const Edit& edit, std::size_t content) const {
  const Change& change = *edit.change();
  if (content > kMostContent - content_) {
    return failure_of(FIRN_TOO_LARGE, "all edits together write more than 256 MB",
                      "no pit is that large; start another one");
  }
  if (change.target() != nullptr && find(*change.target()) == nullptr) return no_target();
  if (change.other() != nullptr && find(*change.other()) == nullptr) return no_target();
  if (*change.kind() == ChangeKind::split_layer) return check_split(change);
  if (*change.kind() == ChangeKind::merge_layers) return check_merge(change);
  if (*change.kind() == ChangeKind::test_event) return check_test_event(change);
  const bool maps =
      *change.kind() == ChangeKind::shift_depths || *change.kind() == ChangeKind::rescale_depths;
  if (maps && !can_map_depths(pit_, depth_map(change))) {
    return bad("a depth would become too large to be written", "check the amount: it is in units of 10 um");
  }
  return done();
}

Done Fold::check_split(const Change& change) const {
  const LayerT& layer = *pit_.layers[spot_of(*change.target()).index];
  if (content_of(layer) > kMostContent - content_) {
    return failure_of(FIRN_TOO_LARGE, "all edits together write more than 256 MB",
                      "no pit is that large; start another one");
  }
  const auto hs = hs_of(pit_);
  const DepthKey top = depth_key(layer.top.get(), hs);
  const DepthKey at = depth_key(change.at(), hs);
  const DepthKey bottom = depth_key(layer.bottom.get(), hs);
  const bool comparable =
      at.scale != DepthKey::not_known && top.scale == at.scale && bottom.scale == at.scale;
  if (!comparable || !(top < at && at < bottom)) {
    return bad(
        "the layer cannot be cut there: it must lie between its top and its bottom, which must be known",
        "give a depth inside the layer, counted from the surface or from the ground");
  }
  return done();
}

bool Fold::lies_above(std::uint32_t slot, std::uint32_t other) const {
  const auto hs = hs_of(pit_);
  const LayerT& a = *pit_.layers[slot];
  const LayerT& b = *pit_.layers[other];
  const DepthKey top_a = depth_key(a.top.get(), hs);
  const DepthKey top_b = depth_key(b.top.get(), hs);
  if (!(top_a == top_b)) return top_a < top_b;
  const DepthKey bottom_a = depth_key(a.bottom.get(), hs);
  const DepthKey bottom_b = depth_key(b.bottom.get(), hs);
  if (!(bottom_a == bottom_b)) return bottom_a < bottom_b;
  return slot < other;
}

bool Fold::are_neighbours(std::uint32_t upper, std::uint32_t lower) const {
  for (std::uint32_t slot = 0; slot < pit_.layers.size(); ++slot) {
    if (slot == upper || slot == lower || pit_.layers[slot] == nullptr) continue;
    if (lies_above(upper, slot) && lies_above(slot, lower)) return false;
  }
  return true;
}

Done Fold::check_merge(const Change& change) const {
  const std::uint32_t target = spot_of(*change.target()).index;
  const std::uint32_t other = spot_of(*change.other()).index;
  if (target == other) return bad("a layer cannot be joined with itself", "name its neighbour");
  const auto hs = hs_of(pit_);
  const DepthKey top = depth_key(pit_.layers[target]->top.get(), hs);
  const DepthKey other_top = depth_key(pit_.layers[other]->top.get(), hs);
  const bool comparable = top.scale != DepthKey::not_known && top.scale == other_top.scale;
  const bool is_above = lies_above(target, other);
  if (!comparable || !are_neighbours(is_above ? target : other, is_above ? other : target)) {
    return bad("the two layers are not neighbours in order of depth", "join layers one after the other");
  }
  return done();
}

Done Fold::check_test_event(const Change& change) const {
  if (*change.event() == firnbook::TestEventKind::start) return done();
  const Run* run = run_of(*change.target());
  if (run == nullptr) {
    return bad("the test was entered as a whole, not begun as a guided one",
               "correct it with a change, or begin a guided test");
  }
  const TestEvent event = event_of(change);
  if (change.other() != nullptr && spot_of(*change.other()).index != run->slot) {
    return bad("the fracture belongs to another test", "name a fracture of the test that the event is about");
  }
  return check_event(*run, test_of(*run), hs_of(pit_), event);
}

Done Fold::check_now(const Edit& edit) const {
  const Change& change = *edit.change();
  if (*change.kind() != ChangeKind::test_event) return done();
  const firnbook::TestEventKind kind = *change.event();
  // A retracted fracture opens its test again.
  const Run* opening = kind == firnbook::TestEventKind::retract ? run_of(*change.target()) : nullptr;
  if (kind != firnbook::TestEventKind::start && (opening == nullptr || !opening->ended)) return done();
  const Run* open = open_run(opening != nullptr ? opening->start.device : edit.id()->device());
  if (open == nullptr || open == opening) return done();
  return bad("another guided test of this device is still open",
             "stop it first, or say why it was not valid");
}

// --- names ------------------------------------------------------------------------------------------------

Fold::Name Fold::name_of(const Target& target) {
  return {{target.edit().device(), target.edit().sequence()}, target.nth(), target.sub(), target.thing()};
}

std::uint32_t Fold::layer_after_joins(std::uint32_t slot) const {
  while (joined_into_[slot] != slot) slot = joined_into_[slot];
  return slot;
}

const Spot* Fold::find(const Target& target) const {
  const auto found = spots_.find(name_of(target));
  if (found == spots_.end()) return nullptr;
  const bool there = is_there(pit_, target.thing(), spot_of(target));
  return there ? &found->second : nullptr;
}

Spot Fold::spot_of(const Target& target) const {
  Spot spot = spots_.find(name_of(target))->second;
  if (target.thing() == Thing::layer) spot.index = layer_after_joins(spot.index);
  return spot;
}

bool Fold::find_spot(const Target& target, Spot& spot) const {
  if (spots_.find(name_of(target)) == spots_.end()) return false;
  spot = spot_of(target);
  return true;
}

const Run* Fold::run_of(const Target& test) const {
  const Spot* spot = test.thing() == Thing::test ? find(test) : nullptr;
  if (spot == nullptr) return nullptr;
  const auto run = std::lower_bound(runs_.begin(), runs_.end(), spot->index,
                                    [](const Run& one, std::uint32_t slot) { return one.slot < slot; });
  return run != runs_.end() && run->slot == spot->index ? &*run : nullptr;
}

const Run* Fold::open_run(std::uint64_t device) const {
  for (auto run = runs_.rbegin(); run != runs_.rend(); ++run) {
    if (!run->ended && run->start.device == device && pit_.tests[run->slot] != nullptr) return &*run;
  }
  return nullptr;
}

TestEvent Fold::event_of(const Change& change) const {
  TestEvent event{*change.event()};
  if (change.fields() != nullptr) {
    event.test = change.fields()->tests()->Get(0);
    if (event.test->fractures() != nullptr) event.fracture = event.test->fractures()->Get(0);
  }
  if (change.other() != nullptr) event.about = spot_of(*change.other()).sub;
  return event;
}

// --- laying over ------------------------------------------------------------------------------------------

void Fold::apply(const Edit& edit, std::size_t content) {
  const Change& change = *edit.change();
  const EditKey key{edit.id()->device(), edit.id()->sequence()};
  content_ += content;
  switch (*change.kind()) {
    case ChangeKind::set:
      return set_fields(*change.fields(), pit_);
    case ChangeKind::add:
      return change.target() != nullptr ? apply_add_into(change, key) : apply_add(change, key);
    case ChangeKind::change:
      return apply_change(change);
    case ChangeKind::remove:
      return remove_thing(change.target()->thing(), spot_of(*change.target()), pit_);
    case ChangeKind::clear:
      return apply_clear(change);
    case ChangeKind::split_layer:
      return apply_split(change, key);
    case ChangeKind::merge_layers:
      return apply_merge(change);
    case ChangeKind::shift_depths:
    case ChangeKind::rescale_depths:
      return map_depths(pit_, depth_map(change));
    case ChangeKind::test_event:
      return apply_test_event(change, key);
    default:
      return;
  }
}

void Fold::apply_add(const Change& change, EditKey key) {
  const Pit& fields = *change.fields();
  std::uint32_t first[kListCount] = {};
  for (std::size_t list = 0; list < kListCount; ++list) {
    if (!has_field(as_table(fields), list_info(list).field)) continue;
    first[list] = static_cast<std::uint32_t>(slot_count(pit_, list));
    append_list(fields, list, pit_);
    name_things(list, first[list], key);
  }
  for (std::size_t list = 0; list < kListCount; ++list) {
    if (!list_info(list).has_about || !has_field(as_table(fields), list_info(list).field)) continue;
    const std::size_t size = list_size(fields, list);
    for (std::size_t nth = 0; nth < size; ++nth) {
      const Place* about = about_of(fields, list, nth);
      std::unique_ptr<Place>& place = *about_in(pit_, list, first[list] + nth);
      if (change.other() != nullptr) {
        link(*change.other(), about, place);
      } else if (names_by_position(about)) {
        const std::uint32_t base = first[list_of_place(about->thing())];
        const auto index = static_cast<std::int32_t>(base) + about->index();
        *place = Place(index, about->sub(), about->field(), about->thing());
      }
    }
  }
}

// Gives their names to the things that `key` put at the end of a list.
void Fold::name_things(std::size_t list, std::uint32_t first, EditKey key) {
  const ListInfo& info = list_info(list);
  if (info.thing == Thing::pit) return;
  const auto size = static_cast<std::uint32_t>(slot_count(pit_, list)) - first;
  for (std::uint32_t nth = 0; nth < size; ++nth) {
    const std::uint32_t slot = first + nth;
    spots_[{key, nth, 0, info.thing}] = {slot, 0};
    if (info.thing == Thing::layer) joined_into_.push_back(slot);
    if (!info.is_nested()) continue;
    const auto inner = static_cast<std::uint32_t>(inner_slot_count(pit_, list, slot));
    for (std::uint32_t sub = 0; sub < inner; ++sub) {
      spots_[{key, nth, sub, info.inner_thing}] = {slot, sub};
    }
  }
}

void Fold::apply_add_into(const Change& change, EditKey key) {
  const std::size_t list = list_of(change.target()->thing());
  const std::uint32_t slot = spot_of(*change.target()).index;
  const auto first = static_cast<std::uint32_t>(inner_slot_count(pit_, list, slot));
  append_inner(*change.fields(), list, pit_, slot);
  const auto size = static_cast<std::uint32_t>(inner_slot_count(pit_, list, slot)) - first;
  for (std::uint32_t sub = 0; sub < size; ++sub) {
    spots_[{key, 0, sub, list_info(list).inner_thing}] = {slot, first + sub};
  }
}

void Fold::apply_start(const Change& change, EditKey key) {
  const std::size_t list = list_of(Thing::test);
  const auto slot = static_cast<std::uint32_t>(slot_count(pit_, list));
  append_list(*change.fields(), list, pit_);
  name_things(list, slot, key);
  Run run;
  run.start = key;
  run.slot = slot;
  run.kind = *pit_.tests[slot]->kind;
  runs_.push_back(std::move(run));
}

std::uint32_t Fold::record_fracture(const Change& change, EditKey key, Run& run) {
  const auto sub = static_cast<std::uint32_t>(pit_.tests[run.slot]->fractures.size());
  if (change.fields() != nullptr) {
    append_inner(*change.fields(), list_of(Thing::test), pit_, run.slot);
  } else {
    pit_.tests[run.slot]->fractures.push_back(std::make_unique<firnbook::FractureT>());
  }
  spots_[{key, 0, 0, Thing::fracture}] = {run.slot, sub};
  run.fractures.push_back({key, sub});
  return sub;
}

void Fold::apply_test_event(const Change& change, EditKey key) {
  if (*change.event() == firnbook::TestEventKind::start) return apply_start(change, key);
  Run& run = const_cast<Run&>(*run_of(*change.target()));
  const TestEvent event = event_of(change);
  std::uint32_t sub = event.about;
  if (adds_fracture(event)) {
    sub = record_fracture(change, key, run);
  } else if (event.about != kNoFracture && event.fracture != nullptr) {
    change_thing(*change.fields(), Thing::fracture, {run.slot, sub}, pit_);
  } else if (event.kind == firnbook::TestEventKind::not_valid) {
    change_thing(*change.fields(), Thing::test, {run.slot, 0}, pit_);
  } else if (event.kind == firnbook::TestEventKind::retract) {
    remove_thing(Thing::fracture, {run.slot, sub}, pit_);
  }
  take_event(run, *pit_.tests[run.slot], event, sub);
}

void Fold::apply_change(const Change& change) {
  const Thing thing = change.target()->thing();
  const Spot spot = spot_of(*change.target());
  change_thing(*change.fields(), thing, spot, pit_);
  if (change.other() == nullptr) return;
  const std::size_t list = list_of(thing);
  link(*change.other(), about_of(*change.fields(), list, 0), *about_in(pit_, list, spot.index));
}

void Fold::apply_clear(const Change& change) {
  const Spot spot = change.target() != nullptr ? spot_of(*change.target()) : Spot{};
  for (const Place* place : *change.clear()) clear_field(place->thing(), place->field(), spot, pit_);
}

void Fold::apply_split(const Change& change, EditKey key) {
  const std::uint32_t upper = spot_of(*change.target()).index;
  const auto lower = static_cast<std::uint32_t>(pit_.layers.size());
  content_ += content_of(*pit_.layers[upper]);
  pit_.layers.push_back(split(*pit_.layers[upper], *change.at()));
  joined_into_.push_back(lower);
  spots_[{key, 0, 0, Thing::layer}] = {upper, 0};
  spots_[{key, 1, 0, Thing::layer}] = {lower, 0};
}

void Fold::apply_merge(const Change& change) {
  const std::uint32_t target = spot_of(*change.target()).index;
  const std::uint32_t other = spot_of(*change.other()).index;
  const bool is_upper = lies_above(target, other);
  LayerT& upper = *pit_.layers[is_upper ? target : other];
  LayerT& lower = *pit_.layers[is_upper ? other : target];
  pit_.layers[target] = join(upper, lower, is_upper);
  pit_.layers[other].reset();
  joined_into_[other] = target;
}

// The field that the edit's own place speaks of, and a boundary for its layer, stay as they were written.
void Fold::link(const Target& target, const Place* about, std::unique_ptr<Place>& place) const {
  const Spot spot = spot_of(target);
  const auto index = static_cast<std::int32_t>(spot.index);
  const auto sub = is_inner(target.thing()) ? static_cast<std::int32_t>(spot.sub) : -1;
  const std::uint16_t field = about != nullptr ? about->field() : kWholeThing;
  const Thing thing = about != nullptr ? about->thing() : target.thing();
  place = std::make_unique<Place>(index, sub, field, thing);
}

firnbook::PitT& Fold::finish() {
  for (std::size_t list = 0; list < kListCount; ++list) {
    if (!list_info(list).has_about) continue;
    for (std::size_t slot = 0; slot < slot_count(pit_, list); ++slot) {
      std::unique_ptr<Place>* about = about_in(pit_, list, slot);
      if (about == nullptr || !names_by_position(about->get())) continue;
      Place& place = **about;
      if (list_of_place(place.thing()) != list_of(Thing::layer)) continue;
      const std::uint32_t layer = layer_after_joins(static_cast<std::uint32_t>(place.index()));
      place = Place(static_cast<std::int32_t>(layer), place.sub(), place.field(), place.thing());
    }
  }
  return pit_;
}

}  // namespace firn::recording
