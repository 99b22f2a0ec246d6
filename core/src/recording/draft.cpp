// The only place that packs the mutable form.
#include "recording/draft.h"

#include <algorithm>
#include <utility>

#include "pit/verify.h"
#include "recording/order.h"
#include "recording/overlay.h"
#include "support/form.h"

namespace firn::recording {
namespace {

using firnbook::PitT;
using firnbook::Place;

// --- order -----------------------------------------------------------------------------------------------

struct SortKey {
  DepthKey first, second;
  bool operator<(const SortKey& other) const {
    return first == other.first ? second < other.second : first < other.first;
  }
};

using Hs = flatbuffers::Optional<std::int32_t>;

// Everything that spans a depth, and temperatures.
SortKey sort_key(const form::Table& table, const void* object, const Hs& hs) {
  const form::Field* first = table.top != nullptr ? table.top : table.depth;
  return {depth_key(form::depth_in(first, object), hs), depth_key(form::depth_in(table.bottom, object), hs)};
}

// Where each element of a list went, -1 for those left out; empty when all stayed where they were.
using Moves = std::vector<std::int32_t>;

struct Item {
  SortKey key;
  std::size_t from = 0;
  // Equal depths stay in given order, so the order is total.
  bool operator<(const Item& other) const {
    if (key < other.key) return true;
    if (other.key < key) return false;
    return from < other.from;
  }
};

// Puts the elements that `items` names in their order, and the rest, which are null, behind them: each
// element that is not in its place is fetched from where it is by now.
void rearrange(const form::Table& table, void* list, const std::vector<Item>& items) {
  const std::size_t size = table.size(list);
  std::vector<std::size_t> slot_of(size), element_in(size);
  for (std::size_t i = 0; i < size; ++i) slot_of[i] = element_in[i] = i;
  for (std::size_t to = 0; to < items.size(); ++to) {
    const std::size_t at = slot_of[items[to].from];
    if (at == to) continue;
    table.swap(table.at(list, to), table.at(list, at));
    const std::size_t displaced = element_in[to];
    element_in[at] = displaced;
    slot_of[displaced] = at;
  }
  table.shrink(list, items.size());
}

enum class By { depth, given_order };

// Sorts what is left of a list, and says where each element went.
Moves arrange(const form::Table& table, void* list, const Hs& hs, By order) {
  const std::size_t size = table.size(list);
  std::vector<Item> items;
  items.reserve(size);
  for (std::size_t i = 0; i < size; ++i) {
    const void* object = table.object_at(list, i);
    if (object != nullptr) items.push_back({order == By::depth ? sort_key(table, object, hs) : SortKey{}, i});
  }
  const bool is_sorted = std::is_sorted(items.begin(), items.end());
  if (is_sorted && items.size() == size) return {};
  if (!is_sorted) std::sort(items.begin(), items.end());
  rearrange(table, list, items);
  Moves moves(size, -1);
  for (std::size_t to = 0; to < items.size(); ++to) moves[items[to].from] = static_cast<std::int32_t>(to);
  return moves;
}

// --- places follow what they name ------------------------------------------------------------------------

struct ListMoves {
  Moves outer;
  std::vector<Moves> inner;  // by the outer element's new position
};
using PitMoves = std::vector<ListMoves>;

// False when what stood there was left out. A position that nothing stood at is kept as it was written.
bool follow(const Moves& moves, std::int32_t& position) {
  if (position < 0 || static_cast<std::size_t>(position) >= moves.size()) return true;
  position = moves[static_cast<std::size_t>(position)];
  return position >= 0;
}

bool follow(const PitMoves& moves, Place& place) {
  const std::size_t list = list_of_place(place.thing());
  if (list >= moves.size()) return true;
  std::int32_t index = place.index();
  std::int32_t sub = place.sub();
  if (!follow(moves[list].outer, index)) return false;
  const std::vector<Moves>& inner = moves[list].inner;
  if (is_inner(place.thing()) && index >= 0 && static_cast<std::size_t>(index) < inner.size() &&
      !follow(inner[static_cast<std::size_t>(index)], sub)) {
    return false;
  }
  place = Place(index, sub, place.field(), place.thing());
  return true;
}

PitMoves arrange_lists(PitT& pit) {
  PitMoves moves(kListCount);
  const Hs hs = hs_of(pit);
  for (std::size_t number = 0; number < kListCount; ++number) {
    const ListInfo& info = list_info(number);
    const form::Field& field = *form::table_of<firnbook::PitT>().find(info.field);
    const form::Table& table = *field.table;
    void* list = field.in(&pit);
    moves[number].outer = arrange(table, list, hs, By::depth);
    if (!info.is_nested()) continue;
    const form::Field& inner = *table.find(info.inner_field);
    // Fractures keep the order in which they came.
    const By order = info.inner_thing == firnbook::Thing::fracture ? By::given_order : By::depth;
    moves[number].inner.reserve(table.size(list));
    for (std::size_t i = 0; i < table.size(list); ++i) {
      moves[number].inner.push_back(arrange(*inner.table, inner.in(table.object_at(list, i)), hs, order));
    }
  }
  return moves;
}

void follow_all(PitT& pit, const PitMoves& moves) {
  const auto follow_or_drop = [&](auto& list) {
    for (auto& object : list) {
      if (object->about != nullptr && !follow(moves, *object->about)) object->about.reset();
    }
  };
  follow_or_drop(pit.remarks);
  follow_or_drop(pit.photos);
  follow_or_drop(pit.extensions);
  // A reason for absent values of a thing that is gone would become one for the whole pit.
  auto& absences = pit.absences;
  absences.erase(std::remove_if(absences.begin(), absences.end(),
                                [&](const auto& absence) {
                                  return absence->about != nullptr && !follow(moves, *absence->about);
                                }),
                 absences.end());
}

}  // namespace

Bytes to_bytes(PitT& pit) {
  follow_all(pit, arrange_lists(pit));
  form::tidy(form::table_of<firnbook::PitT>(), &pit);
  pit.schema_minor = pit::kSchemaMinor;
  flatbuffers::FlatBufferBuilder builder(4096);
  firnbook::FinishPitBuffer(builder, pack(builder, pit));
  return Bytes(builder.GetBufferPointer(), builder.GetBufferPointer() + builder.GetSize());
}

Result<std::unique_ptr<PitT>> from_bytes(const firnbook::Pit& pit) {
  if (pit.schema_minor() > pit::kSchemaMinor) {
    return failure_of(FIRN_NEWER_SCHEMA,
                      "the pit was written by a newer version: editing it would drop what is not known here",
                      "read it as it is, or edit it with a library of that version");
  }
  if (content_of(pit) > kMostContent) {
    return failure_of(FIRN_TOO_LARGE, "the pit holds more than 256 MB once it is unpacked",
                      "no record is that large; its bytes may be made to harm");
  }
  auto object = std::make_unique<PitT>();
  form::unpack(pit, *object);
  return object;
}

flatbuffers::Offset<firnbook::Pit> pack(flatbuffers::FlatBufferBuilder& builder, const PitT& pit) {
  return flatbuffers::Offset<firnbook::Pit>(form::pack(builder, form::table_of<firnbook::PitT>(), &pit).o);
}

}  // namespace firn::recording
