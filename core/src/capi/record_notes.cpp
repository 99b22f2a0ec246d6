// Field notes as edits: what a pit has once is set, what it has many of is added.
#include <utility>

#include "capi/notes.h"
#include "capi/outputs.h"
#include "capi/recorder.h"
#include "firnbook/record.h"
#include "support/form.h"

using namespace firn::capi;

namespace firn::capi {
namespace {

struct Parts {
  firnbook::PitT once, things;
  bool has_once = false, has_things = false;
};

// The notes' own version of the schema says nothing about the pit.
void split_notes(firnbook::PitT& notes, Parts& parts) {
  for (const form::Field& field : form::table_of<firnbook::PitT>()) {
    if (field.field == firnbook::Pit::VT_SCHEMA_MINOR || !form::holds(field, &notes)) continue;
    if (field.kind == form::Kind::tables) {
      form::move_list(field, &notes, &parts.things);
      parts.has_things = true;
    } else {
      form::swap(field, &notes, &parts.once);
      parts.has_once = true;
    }
  }
}

using Make = recording::Bytes (*)(const recording::EditHead& head, const firnbook::PitT& fields);

recording::Bytes set_all(const recording::EditHead& head, const firnbook::PitT& fields) {
  return recording::make_set(head, fields);
}
recording::Bytes add_all(const recording::EditHead& head, const firnbook::PitT& fields) {
  return recording::make_add(head, fields);
}

Result<recording::Bytes> edit_of(const firn_recorder& recorder, Make make, const firnbook::PitT& fields) {
  Result<recording::EditHead> head = next_head(recorder);
  if (!head) return head.failure();
  recording::Bytes edit = make(*head, fields);
  if (edit.size() <= recorder.context->limits.edit.max_bytes) return edit;
  return failure_of(FIRN_TOO_LARGE, "the notes make an edit that is larger than the limit allows",
                    "record them in parts, or raise max_edit_bytes in the context's options");
}

Done record_part(firn_recorder& recorder, Make make, const firnbook::PitT& fields) {
  Result<recording::Bytes> edit = edit_of(recorder, make, fields);
  return edit ? record(recorder, *edit, nullptr) : Done(edit.failure());
}

Done record_notes(firn_recorder& recorder, std::string_view text, firn_buffer* remarks) {
  Result<std::unique_ptr<firnbook::PitT>> read =
      take_notes(*recorder.context, "firn_record_notes", text, false);
  if (!read) return read.failure();
  Staged staged(*recorder.context, remarks);
  staged.fill(recorder.context->work.text);
  Parts parts;
  split_notes(**read, parts);
  if (!parts.has_once && !parts.has_things) {
    return failure_of(FIRN_BAD_EDIT, "the notes say nothing", "write a line that says something");
  }
  // What can be refused is refused before anything was recorded: things may name things that are not there,
  // and either edit may be too large.
  Result<recording::Bytes> once = edit_of(recorder, set_all, parts.once);
  if (!once) return once.failure();
  Done recorded = done();
  if (parts.has_things) recorded = record_part(recorder, add_all, parts.things);
  if (recorded && parts.has_once) recorded = record_part(recorder, set_all, parts.once);
  if (recorded) staged.publish();
  return recorded;
}

}  // namespace
}  // namespace firn::capi

firn_status firn_record_notes(firn_recorder* recorder, const char* text, size_t size, firn_buffer* remarks,
                              firn_error* error) {
  return guard({context_of(recorder), error, __func__, {remarks}}, [&]() -> firn::Done {
    if (text == nullptr) return null_argument("text");
    return record_notes(*recorder, {text, size}, remarks);
  });
}
