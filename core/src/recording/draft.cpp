// The only place that packs the object form. It is unpacked by the same walk that lays edits over it, which
// spares the library a second copy of that code. The generated Pack code makes every sub-object into
// a local of its own before the table that holds it (checked for FlatBuffers 2.0.8: nested offsets are never
// arguments of one call), so the bytes do not depend on a compiler's order of evaluation.
#include "recording/draft.h"

#include <algorithm>
#include <type_traits>
#include <utility>

#include "pit/verify.h"
#include "recording/fields.h"
#include "recording/order.h"
#include "recording/overlay.h"

namespace firn::recording {
namespace {

using firnbook::Depth;
using firnbook::Moment;
using firnbook::PitT;
using firnbook::Place;
using firnbook::TimeSpan;

// --- order -----------------------------------------------------------------------------------------------

struct SortKey {
  DepthKey first, second;
  bool operator<(const SortKey& other) const {
    return first == other.first ? second < other.second : first < other.first;
  }
};

using Hs = flatbuffers::Optional<std::int32_t>;

template <class Object, class = void>
inline constexpr bool kHasSpan = false;
template <class Object>
inline constexpr bool kHasSpan<Object, std::void_t<decltype(std::declval<Object>().top)>> = true;

// Everything that spans a depth, and temperatures. Fractures keep the order in which they came.
template <class Object>
SortKey sort_key(const Object& object, const Hs& hs) {
  if constexpr (kHasSpan<Object>)
    return {depth_key(object.top.get(), hs), depth_key(object.bottom.get(), hs)};
  return {};
}
SortKey sort_key(const firnbook::TemperatureReadingT& reading, const Hs& hs) {
  return {depth_key(reading.depth.get(), hs), {}};
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

// Sorts what is left of a list of `size` elements, and says where each went.
Moves arrange_items(std::vector<Item>& items, std::size_t size) {
  const bool is_sorted = std::is_sorted(items.begin(), items.end());
  if (is_sorted && items.size() == size) return {};
  if (!is_sorted) std::sort(items.begin(), items.end());
  Moves moves(size, -1);
  for (std::size_t to = 0; to < items.size(); ++to) {
    moves[items[to].from] = static_cast<std::int32_t>(to);
  }
  return moves;
}

template <class Object>
Moves arrange(std::vector<std::unique_ptr<Object>>& list, const Hs& hs) {
  std::vector<Item> items;
  items.reserve(list.size());
  for (std::size_t i = 0; i < list.size(); ++i) {
    if (list[i] != nullptr) items.push_back({sort_key(*list[i], hs), i});
  }
  Moves moves = arrange_items(items, list.size());
  if (moves.empty()) return moves;
  std::vector<std::unique_ptr<Object>> arranged(items.size());
  for (std::size_t to = 0; to < items.size(); ++to) arranged[to] = std::move(list[items[to].from]);
  list = std::move(arranged);
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
  std::size_t number = 0;
  each_list([&](const auto& list) {
    ListMoves& here = moves[number++];
    auto& objects = pit.*list.member;
    here.outer = arrange(objects, hs);
    if constexpr (kIsNested<std::decay_t<decltype(list)>>) {
      here.inner.reserve(objects.size());
      for (auto& object : objects) here.inner.push_back(arrange((*object).*list.inner_member, hs));
    }
  });
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

// --- empty tables and padding ------------------------------------------------------------------------------

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

// Puts a member in canonical form and answers whether it holds anything.
template <class T>
bool tidy(flatbuffers::Optional<T>& member) {
  return member.has_value();
}
template <class T>
std::enable_if_t<std::is_arithmetic_v<T>, bool> tidy(T& member) {
  return member != 0;
}
bool tidy(std::string& member) {
  return !member.empty();
}
template <class Object>
bool tidy_object(Object& object);
template <class Struct>
auto tidy(std::unique_ptr<Struct>& member) -> decltype(clean(*member), bool()) {
  if (member != nullptr) *member = clean(*member);
  return member != nullptr;
}
template <class Object>
std::conditional_t<false, typename Object::TableType, bool> tidy(std::unique_ptr<Object>& member) {
  if (member != nullptr && !tidy_object(*member)) member.reset();
  return member != nullptr;
}
template <class T>
std::enable_if_t<std::is_arithmetic_v<T> || std::is_enum_v<T>, bool> tidy(std::vector<T>& member) {
  return !member.empty();
}
bool tidy(std::vector<Depth>& member) {
  for (Depth& depth : member) depth = clean(depth);
  return !member.empty();
}
template <class Object>
bool tidy(std::vector<std::unique_ptr<Object>>& member) {
  member.erase(std::remove(member.begin(), member.end(), nullptr), member.end());
  // An element counts even when it is empty: there was a layer, though nothing is known of it.
  for (std::unique_ptr<Object>& object : member) tidy_object(*object);
  return !member.empty();
}
template <class Object>
bool tidy_object(Object& object) {
  bool holds = false;
  each_field(Of<typename Object::TableType>{}, [&](flatbuffers::voffset_t, auto, auto member) {
    const bool is_held = tidy(object.*member);
    holds = holds || is_held;
  });
  return holds;
}

Failure refuse(firn_status status, std::string what, std::string remedy) {
  Failure failure;
  failure.status = status;
  failure.what = std::move(what);
  failure.remedy = std::move(remedy);
  return failure;
}

}  // namespace

Bytes to_bytes(PitT& pit) {
  follow_all(pit, arrange_lists(pit));
  tidy_object(pit);
  pit.schema_minor = pit::kSchemaMinor;
  flatbuffers::FlatBufferBuilder builder(4096);
  firnbook::FinishPitBuffer(builder, pack(builder, pit));
  return Bytes(builder.GetBufferPointer(), builder.GetBufferPointer() + builder.GetSize());
}

Result<std::unique_ptr<PitT>> from_bytes(const firnbook::Pit& pit) {
  if (pit.schema_minor() > pit::kSchemaMinor) {
    return refuse(FIRN_NEWER_SCHEMA,
                  "the pit was written by a newer version: editing it would drop what is not known here",
                  "read it as it is, or edit it with a library of that version");
  }
  if (content_of(pit) > kMostContent) {
    return refuse(FIRN_TOO_LARGE, "the pit holds more than 256 MB once it is unpacked",
                  "no record is that large; its bytes may be made to harm");
  }
  auto object = std::make_unique<PitT>();
  set_fields(pit, *object);
  for (std::size_t list = 0; list < kListCount; ++list) append_list(pit, list, *object);
  return object;
}

flatbuffers::Offset<firnbook::Pit> pack(flatbuffers::FlatBufferBuilder& builder, const PitT& pit) {
  return firnbook::Pit::Pack(builder, &pit);
}

}  // namespace firn::recording
