#include "capi/recorder.h"

#include "capi/fields.h"
#include "capi/outputs.h"
#include "capi/records.h"
#include "capi/structs.h"

using namespace firn::capi;

namespace firn::capi {
namespace {

// The number after the last one known of this device, 0 when there is none left.
std::uint64_t sequence_after(const firn_recorder& recorder, std::uint64_t device) {
  const std::uint64_t last = recorder.edits.last_sequence(device);
  return last == UINT64_MAX ? 0 : last + 1;
}

Done set_author(firn_recorder& recorder, const firn_author& author) {
  if (author.device == 0) {
    return failure_of(FIRN_BAD_ARGUMENT, "the author's device is 0",
                      "give this device and journal a number of its own");
  }
  if (author.next_sequence != 0 && author.next_sequence <= recorder.edits.last_sequence(author.device)) {
    return failure_of(FIRN_BAD_ARGUMENT, "the author's next sequence was given out before",
                      "give a larger one, or 0 to go on after the last one known");
  }
  if (author.made.precision > FIRN_TIME_PRECISION_SECOND || author.made.offset_known > 1) {
    return failure_of(FIRN_BAD_ARGUMENT, "the author's moment is out of range",
                      "give a firn_time_precision, and 0 or 1 for offset_known");
  }
  Room room(recorder.context->limits.edit.max_bytes);
  Fields fields("firn_author", 0, 0, room);
  std::string observer;
  fields.text(observer, author.observer);
  Done read = fields.finish();
  if (!read) return read;
  recorder.device = author.device;
  recorder.next_sequence =
      author.next_sequence == 0 ? sequence_after(recorder, author.device) : author.next_sequence;
  recorder.made = moment_of(author.made);
  recorder.has_made = author.made.precision != FIRN_TIME_PRECISION_NONE;
  recorder.observer.swap(observer);
  return done();
}

}  // namespace

firn_context* context_of(const firn_recorder* recorder) noexcept {
  return recorder == nullptr ? nullptr : recorder->context;
}

firnbook::Target target_from(const firn_target& target) {
  return {firnbook::EditId(target.device, target.sequence), target.nth, target.sub,
          static_cast<firnbook::Thing>(target.thing)};
}

firn_target target_to(const firnbook::Target& target) {
  return {target.edit().device(),
          target.edit().sequence(),
          target.nth(),
          target.sub(),
          static_cast<std::uint8_t>(target.thing()),
          {}};
}

Done apply(firn_recorder& recorder, const std::uint8_t* bytes, std::size_t size) {
  Done applied = recorder.edits.apply(bytes, size);
  if (applied) skip_taken_numbers(recorder);
  return applied;
}

void skip_taken_numbers(firn_recorder& recorder) {
  if (recorder.device == 0 || recorder.next_sequence == 0) return;
  if (recorder.edits.last_sequence(recorder.device) >= recorder.next_sequence) {
    recorder.next_sequence = sequence_after(recorder, recorder.device);
  }
}

Result<recording::EditHead> next_head(const firn_recorder& recorder) {
  if (recorder.device == 0) {
    return failure_of(FIRN_WRONG_STATE, "nobody records yet", "call firn_recorder_author first");
  }
  if (recorder.next_sequence == 0) {
    return failure_of(FIRN_WRONG_STATE, "this device has used up its sequence numbers",
                      "record with another device number");
  }
  recording::EditHead head;
  head.key = {recorder.device, recorder.next_sequence};
  head.clock = recorder.edits.next_clock();
  head.made = recorder.has_made ? &recorder.made : nullptr;
  head.observer = recorder.observer;
  head.seen = recorder.edits.seen_by(recorder.device);
  return head;
}

Done record(firn_recorder& recorder, const recording::Bytes& edit, firn_buffer* out) {
  Staged staged(*recorder.context, out);
  staged.fill(edit.data(), edit.size());
  Done applied = apply(recorder, edit.data(), edit.size());
  if (!applied) return applied;
  staged.publish();
  return done();
}

}  // namespace firn::capi

firn_status firn_recorder_create(firn_context* context, firn_recorder** recorder, firn_error* error) {
  return guard(Call(context, error, __func__).emptying(recorder), [&]() -> firn::Done {
    if (recorder == nullptr) return null_argument("recorder");
    *recorder = context->memory.make<firn_recorder>(*context);
    return firn::done();
  });
}

void firn_recorder_destroy(firn_recorder* recorder) {
  give_back([&] {
    if (recorder != nullptr) recorder->context->memory.destroy(recorder);
  });
}

firn_status firn_recorder_apply(firn_recorder* recorder, const uint8_t* edit, size_t size,
                                firn_error* error) {
  return guard({context_of(recorder), error, __func__},
               [&]() -> firn::Done { return apply(*recorder, edit, size); });
}

firn_status firn_recorder_pit(firn_recorder* recorder, firn_buffer* pit, firn_error* error) {
  return guard({context_of(recorder), error, __func__, {pit}}, [&]() -> firn::Done {
    if (pit == nullptr) return null_argument("pit");
    firn::Result<firn::recording::Bytes> bytes = recorder->edits.pit();
    if (!bytes) return bytes.failure();
    give(*recorder->context, pit, bytes->data(), bytes->size());
    return firn::done();
  });
}

size_t firn_recorder_edit_count(const firn_recorder* recorder) {
  return recorder == nullptr ? 0 : recorder->edits.edit_count();
}

firn_status firn_recorder_author(firn_recorder* recorder, const firn_author* author, firn_error* error) {
  return guard({context_of(recorder), error, __func__}, [&]() -> firn::Done {
    firn::Result<firn_author> read = read_record(author);
    if (!read) return read.failure();
    return set_author(*recorder, *read);
  });
}

firn_status firn_recorder_next(const firn_recorder* recorder, uint64_t* clock, uint64_t* sequence,
                               firn_error* error) {
  return guard({context_of(recorder), error, __func__}, [&]() -> firn::Done {
    firn::Result<firn::recording::EditHead> head = next_head(*recorder);
    if (!head) return head.failure();
    if (clock != nullptr) *clock = head->clock;
    if (sequence != nullptr) *sequence = head->key.sequence;
    return firn::done();
  });
}
