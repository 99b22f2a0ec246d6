#include "recording/edits.h"

#include "pit/verify.h"

namespace firn::recording {
namespace {

using firnbook::ChangeKind;

// What an edit may say; null or absent is left out.
struct Saying {
  ChangeKind kind;
  const firnbook::PitT* fields = nullptr;
  const firnbook::Target* target = nullptr;
  const firnbook::Target* other = nullptr;
  const std::vector<firnbook::Place>* clear = nullptr;
  const firnbook::Depth* at = nullptr;
  flatbuffers::Optional<std::int32_t> amount_10um = flatbuffers::nullopt;
  flatbuffers::Optional<std::int32_t> base_10um = flatbuffers::nullopt;
  const firnbook::EditId* edit = nullptr;
  flatbuffers::Optional<firnbook::TestEventKind> event = flatbuffers::nullopt;
};

Bytes write(const EditHead& head, const Saying& saying) {
  flatbuffers::FlatBufferBuilder builder(1024);
  // Each offset in a statement of its own: arguments of one call are made in no fixed order.
  flatbuffers::Offset<firnbook::Pit> fields;
  if (saying.fields != nullptr) fields = pack(builder, *saying.fields);
  flatbuffers::Offset<flatbuffers::Vector<const firnbook::Place*>> clear;
  if (saying.clear != nullptr) clear = builder.CreateVectorOfStructs(*saying.clear);
  flatbuffers::Offset<flatbuffers::String> observer;
  if (!head.observer.empty()) observer = builder.CreateString(head.observer.data(), head.observer.size());
  flatbuffers::Offset<flatbuffers::Vector<const firnbook::Seen*>> seen;
  if (!head.seen.empty()) seen = builder.CreateVectorOfStructs(head.seen);
  const flatbuffers::Offset<firnbook::Change> change =
      firnbook::CreateChange(builder, saying.kind, saying.target, saying.other, fields, clear, saying.at,
                             saying.amount_10um, saying.base_10um, saying.edit, saying.event);
  const firnbook::EditId id(head.key.device, head.key.sequence);
  firnbook::EditBuilder edit(builder);
  edit.add_clock(head.clock);
  edit.add_id(&id);
  if (head.made != nullptr) edit.add_made(head.made);
  edit.add_observer(observer);
  edit.add_seen(seen);
  edit.add_change(change);
  edit.add_schema_minor(pit::kSchemaMinor);
  firnbook::FinishEditBuffer(builder, edit.Finish());
  return Bytes(builder.GetBufferPointer(), builder.GetBufferPointer() + builder.GetSize());
}

}  // namespace

Bytes make_edit(EditKey key, std::uint64_t clock, const firnbook::Moment* made, std::string_view observer,
                ChangeKind kind, const firnbook::PitT& fields, const firnbook::Target* target,
                const firnbook::Target* other) {
  Saying saying{kind};
  const bool has_fields = kind == ChangeKind::set || kind == ChangeKind::add || kind == ChangeKind::change;
  if (has_fields) saying.fields = &fields;
  saying.target = target;
  saying.other = other;
  return write({key, clock, made, observer}, saying);
}

firnbook::Target target_of(EditKey key, firnbook::Thing thing, std::uint32_t nth, std::uint32_t sub) {
  return firnbook::Target(firnbook::EditId(key.device, key.sequence), nth, sub, thing);
}

Bytes make_set(const EditHead& head, const firnbook::PitT& fields) {
  Saying saying{ChangeKind::set};
  saying.fields = &fields;
  return write(head, saying);
}

Bytes make_add(const EditHead& head, const firnbook::PitT& fields, const firnbook::Target* into,
               const firnbook::Target* about) {
  Saying saying{ChangeKind::add};
  saying.fields = &fields;
  saying.target = into;
  saying.other = about;
  return write(head, saying);
}

Bytes make_change(const EditHead& head, const firnbook::Target& target, const firnbook::PitT& fields,
                  const firnbook::Target* about) {
  Saying saying{ChangeKind::change};
  saying.fields = &fields;
  saying.target = &target;
  saying.other = about;
  return write(head, saying);
}

Bytes make_remove(const EditHead& head, const firnbook::Target& target) {
  Saying saying{ChangeKind::remove};
  saying.target = &target;
  return write(head, saying);
}

Bytes make_clear(const EditHead& head, const firnbook::Target* target,
                 const std::vector<firnbook::Place>& fields) {
  Saying saying{ChangeKind::clear};
  saying.target = target;
  saying.clear = &fields;
  return write(head, saying);
}

Bytes make_split(const EditHead& head, const firnbook::Target& layer, const firnbook::Depth& at) {
  Saying saying{ChangeKind::split_layer};
  saying.target = &layer;
  saying.at = &at;
  return write(head, saying);
}

Bytes make_merge(const EditHead& head, const firnbook::Target& layer, const firnbook::Target& neighbour) {
  Saying saying{ChangeKind::merge_layers};
  saying.target = &layer;
  saying.other = &neighbour;
  return write(head, saying);
}

Bytes make_shift(const EditHead& head, std::int32_t amount_10um) {
  Saying saying{ChangeKind::shift_depths};
  saying.amount_10um = amount_10um;
  return write(head, saying);
}

Bytes make_rescale(const EditHead& head, std::int32_t amount_10um, std::int32_t base_10um) {
  Saying saying{ChangeKind::rescale_depths};
  saying.amount_10um = amount_10um;
  saying.base_10um = base_10um;
  return write(head, saying);
}

Bytes make_undo(const EditHead& head, EditKey edit) {
  const firnbook::EditId id(edit.device, edit.sequence);
  Saying saying{ChangeKind::undo};
  saying.edit = &id;
  return write(head, saying);
}

Bytes make_event(const EditHead& head, firnbook::TestEventKind event, const firnbook::Target* test,
                 const firnbook::Target* fracture, const firnbook::PitT* fields) {
  Saying saying{ChangeKind::test_event};
  saying.event = event;
  saying.target = test;
  saying.other = fracture;
  saying.fields = fields;
  return write(head, saying);
}

Bytes make_redo(const EditHead& head, EditKey edit) {
  const firnbook::EditId id(edit.device, edit.sequence);
  Saying saying{ChangeKind::redo};
  saying.edit = &id;
  return write(head, saying);
}

}  // namespace firn::recording
