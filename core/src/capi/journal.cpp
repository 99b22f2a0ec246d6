// The journal: tickets, frames, loading, and the conflicts of two people's edits.
#include "firnbook/journal.h"

#include "capi/outputs.h"
#include "capi/recorder.h"
#include "capi/structs.h"

using namespace firn::capi;

namespace firn::capi {
namespace {

using recording::Bytes;

constexpr std::size_t kLoadedSize = FIRN_FIRST_VERSION(firn_loaded, whole_size);
constexpr std::size_t kGapSize = FIRN_FIRST_VERSION(firn_journal_gap, sequence);
constexpr std::size_t kConflictSize = FIRN_FIRST_VERSION(firn_conflict, target);

static_assert(static_cast<int>(recording::GapReason::no_frame) == FIRN_GAP_NO_FRAME);
static_assert(static_cast<int>(recording::GapReason::torn) == FIRN_GAP_TORN);
static_assert(static_cast<int>(recording::GapReason::damaged) == FIRN_GAP_DAMAGED);
static_assert(static_cast<int>(recording::GapReason::other_pit) == FIRN_GAP_OTHER_PIT);
static_assert(static_cast<int>(recording::GapReason::bad_edit) == FIRN_GAP_BAD_EDIT);

Failure out_of_range(const char* what) {
  return failure_of(FIRN_BAD_ARGUMENT, std::string("there is no such ") + what,
                    "count from 0 to below their number");
}

Done give_bytes(const firn_recorder& recorder, const Result<Bytes>& bytes, firn_buffer* out) {
  if (!bytes) return bytes.failure();
  give(*recorder.context, out, bytes->data(), bytes->size());
  return done();
}

Done load(firn_recorder& recorder, const std::uint8_t* journal, std::size_t size, firn_loaded* out) {
  if (out != nullptr) {
    Done fits = check_struct_size(out->struct_size, kLoadedSize, "firn_loaded");
    if (!fits) return fits;
  }
  Result<recording::Loaded> loaded = recorder.edits.load(journal, size);
  if (!loaded) return loaded.failure();
  skip_taken_numbers(recorder);
  recorder.gaps.swap(loaded->gaps);
  if (out == nullptr) return done();
  firn_loaded told = {};
  told.names_pit = loaded->names_pit ? 1 : 0;
  told.last_ticket = recorder.edits.last_ticket();
  told.frames = loaded->frames;
  told.added = loaded->added;
  told.known = loaded->known;
  told.kept = loaded->kept;
  told.gaps = recorder.gaps.size();
  told.lost_bytes = loaded->lost_bytes;
  told.whole_size = loaded->whole_size;
  return write_struct(out, told, kLoadedSize, "firn_loaded");
}

// A recorder's edits only ever grow in number, so the number tells whether the answer still holds.
void find_conflicts(firn_recorder& recorder) {
  if (recorder.conflicts_of == recorder.edits.edit_count()) return;
  recorder.conflicts = recorder.edits.conflicts();
  recorder.conflicts_of = recorder.edits.edit_count();
}

firn_target target_of(const firnbook::Target& target) {
  firn_target out = {};
  out.device = target.edit().device();
  out.sequence = target.edit().sequence();
  out.nth = target.nth();
  out.sub = target.sub();
  out.thing = static_cast<std::uint8_t>(target.thing());
  return out;
}

}  // namespace
}  // namespace firn::capi

firn_status firn_recorder_begin(firn_recorder* recorder, const char* pit_id, firn_error* error) {
  return guard({context_of(recorder), error, __func__}, [&]() -> firn::Done {
    if (pit_id == nullptr) return null_argument("pit_id");
    return recorder->edits.begin(pit_id);
  });
}

uint64_t firn_recorder_ticket(const firn_recorder* recorder) {
  return recorder == nullptr ? 0 : recorder->edits.last_ticket();
}

uint64_t firn_recorder_acknowledged(const firn_recorder* recorder) {
  return recorder == nullptr ? 0 : recorder->edits.acknowledged();
}

firn_status firn_recorder_frames(const firn_recorder* recorder, uint64_t after, firn_buffer* frames,
                                 uint64_t* last, firn_error* error) {
  return guard({context_of(recorder), error, __func__, {frames}}, [&]() -> firn::Done {
    if (frames == nullptr) return null_argument("frames");
    firn::Done given = give_bytes(*recorder, recorder->edits.frames_after(after), frames);
    if (given && last != nullptr) *last = recorder->edits.last_ticket();
    return given;
  });
}

firn_status firn_recorder_acknowledge(firn_recorder* recorder, uint64_t ticket, firn_error* error) {
  return guard({context_of(recorder), error, __func__},
               [&]() -> firn::Done { return recorder->edits.acknowledge(ticket); });
}

firn_status firn_recorder_load(firn_recorder* recorder, const uint8_t* journal, size_t size,
                               firn_loaded* loaded, firn_error* error) {
  return guard({context_of(recorder), error, __func__},
               [&]() -> firn::Done { return load(*recorder, journal, size, loaded); });
}

firn_status firn_recorder_gap(const firn_recorder* recorder, size_t index, firn_journal_gap* gap,
                              firn_error* error) {
  return guard({context_of(recorder), error, __func__}, [&]() -> firn::Done {
    if (index >= recorder->gaps.size()) return out_of_range("gap");
    const firn::recording::Gap& found = recorder->gaps[index];
    firn_journal_gap told = {};
    told.reason = static_cast<uint32_t>(found.reason);
    told.offset = found.offset;
    told.size = found.size;
    told.device = found.key.device;
    told.sequence = found.key.sequence;
    return write_struct(gap, told, kGapSize, "firn_journal_gap");
  });
}

firn_status firn_recorder_journal(const firn_recorder* recorder, firn_buffer* journal, firn_error* error) {
  return guard({context_of(recorder), error, __func__, {journal}}, [&]() -> firn::Done {
    if (journal == nullptr) return null_argument("journal");
    return give_bytes(*recorder, recorder->edits.journal(), journal);
  });
}

firn_status firn_recorder_conflict_count(firn_recorder* recorder, size_t* count, firn_error* error) {
  return guard({context_of(recorder), error, __func__}, [&]() -> firn::Done {
    if (count == nullptr) return null_argument("count");
    find_conflicts(*recorder);
    *count = recorder->conflicts.size();
    return firn::done();
  });
}

firn_status firn_recorder_conflict(firn_recorder* recorder, size_t index, firn_conflict* conflict,
                                   firn_error* error) {
  return guard({context_of(recorder), error, __func__}, [&]() -> firn::Done {
    find_conflicts(*recorder);
    if (index >= recorder->conflicts.size()) return out_of_range("conflict");
    const firn::recording::Conflict& found = recorder->conflicts[index];
    firn_conflict told = {};
    told.field = found.field;
    told.device = found.other.device;
    told.sequence = found.other.sequence;
    told.shown_device = found.shown.device;
    told.shown_sequence = found.shown.sequence;
    told.target = target_of(found.target);
    return write_struct(conflict, told, kConflictSize, "firn_conflict");
  });
}

firn_status firn_recorder_undoable(const firn_recorder* recorder, uint64_t device, uint64_t* undo,
                                   uint64_t* redo, firn_error* error) {
  return guard({context_of(recorder), error, __func__}, [&]() -> firn::Done {
    if (device == 0) return failure_of(FIRN_BAD_ARGUMENT, "the device is 0", "give the author's device");
    const firn::recording::UndoSteps steps = recorder->edits.undo_steps(device);
    if (undo != nullptr) *undo = steps.undo;
    if (redo != nullptr) *redo = steps.redo;
    return firn::done();
  });
}
