#include "firnbook/notes.h"

#include <memory>
#include <utility>

#include "capi/inputs.h"
#include "capi/notes.h"
#include "capi/outputs.h"
#include "capi/structs.h"
#include "notation/notes.h"
#include "recording/draft.h"
#include "support/place.h"
#include "support/text.h"

using namespace firn::capi;

namespace firn::capi {
namespace {

void append_remark(std::string& out, const Failure& remark) {
  if (remark.line != 0) {
    out += "line ";
    append_integer(out, remark.line);
    out += ": ";
  }
  out += remark.what;
  if (!remark.remedy.empty()) {
    out += "; ";
    out += remark.remedy;
  }
  out += '\n';
}

// The first failure is told; how many more there are, so that nobody mends one line a time in the dark.
Failure with_count(Failure first, std::size_t others) {
  if (others == 0) return first;
  first.what += " (and ";
  append_integer(first.what, static_cast<std::int64_t>(others));
  first.what += others == 1 ? " more line)" : " more lines)";
  return first;
}

}  // namespace

Result<std::unique_ptr<firnbook::PitT>> take_notes(firn_context& context, const char* caller,
                                                   std::string_view text, bool keep_unread) {
  if (text.size() > context.limits.max_notes_bytes) {
    return failure_of(FIRN_TOO_LARGE, "more bytes than the limit allows for field notes",
                      "raise max_notes_bytes in the context's options if these notes are trusted");
  }
  notation::NotesOptions reading;
  reading.keep_unread = keep_unread;
  reading.max_bytes = context.limits.max_notes_bytes;
  std::vector<Failure> others;
  Result<notation::NotesRead> read = notation::read_notes(text, reading, others);
  if (!read) {
    for (const Failure& other : others) context.log.write(FIRN_LOG_WARNING, caller, other.what);
    return with_count(read.failure(), others.size());
  }
  std::string& lines = context.work.text;
  lines.clear();
  for (const Failure& remark : read->remarks) {
    append_remark(lines, remark);
    context.log.write(FIRN_LOG_INFO, caller, remark.what);
  }
  return std::move(read->pit);
}

namespace {

Done read_notes(firn_context& context, std::string_view text, bool keep_unread, firn_buffer* pit,
                firn_buffer* remarks) {
  Result<std::unique_ptr<firnbook::PitT>> read = take_notes(context, "firn_notes_read", text, keep_unread);
  if (!read) return read.failure();
  Staged staged_pit(context, pit), staged_remarks(context, remarks);
  const recording::Bytes bytes = recording::to_bytes(**read);
  staged_pit.fill(bytes.data(), bytes.size());
  staged_remarks.fill(context.work.text);
  staged_pit.publish();
  staged_remarks.publish();
  return done();
}

}  // namespace
}  // namespace firn::capi

firn_status firn_notes_read(firn_context* context, const char* text, size_t size,
                            const firn_notes_options* options, firn_buffer* pit, firn_buffer* remarks,
                            firn_error* error) {
  return guard({context, error, __func__, {pit, remarks}}, [&]() -> firn::Done {
    if (text == nullptr) return null_argument("text");
    if (pit == nullptr) return null_argument("pit");
    firn::Result<firn_notes_options> chosen =
        read_options(options, FIRN_FIRST_VERSION(firn_notes_options, keep_unread), "firn_notes_options");
    if (!chosen) return chosen.failure();
    if (chosen->keep_unread > 1) {
      return failure_of(FIRN_BAD_ARGUMENT, "keep_unread is neither 0 nor 1", "give 0 or 1");
    }
    return read_notes(*context, {text, size}, chosen->keep_unread == 1, pit, remarks);
  });
}

firn_status firn_notes_write(firn_context* context, const uint8_t* pit, size_t pit_size, firn_buffer* text,
                             firn_buffer* lost, firn_error* error) {
  return guard({context, error, __func__, {text, lost}}, [&]() -> firn::Done {
    if (text == nullptr) return null_argument("text");
    firn::Result<const firnbook::Pit*> read = read_pit(*context, pit, pit_size);
    if (!read) return read.failure();
    firn::Done fits = check_content(**read);
    if (!fits) return fits;
    Workspace& work = context->work;
    work.text.clear();
    work.more_text.clear();
    work.lost.clear();
    firn::notation::write_notes(work.text, **read, work.lost);
    for (const firnbook::Place& place : work.lost) {
      work.more_text += firn::path_of(place);
      work.more_text += '\n';
    }
    Staged staged_text(*context, text), staged_lost(*context, lost);
    staged_text.fill(work.text);
    staged_lost.fill(work.more_text);
    staged_text.publish();
    staged_lost.publish();
    return firn::done();
  });
}
