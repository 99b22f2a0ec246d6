#include "note/note.h"

#include "capi/inputs.h"
#include "capi/outputs.h"
#include "firnbook/note.h"

using namespace firn::capi;

firn_status firn_note_write(firn_context* context, const uint8_t* pit, size_t pit_size, const uint8_t* report,
                            size_t report_size, firn_buffer* text, firn_error* error) {
  return guard({context, error, __func__, {text}}, [&]() -> firn::Done {
    if (text == nullptr) return null_argument("text");
    if (report == nullptr) return null_argument("report");
    firn::Done seen = view_pit(*context, pit, pit_size);
    if (!seen) return seen;
    firn::Done fits = check_content(context->work.view.raw());
    if (!fits) return fits;
    firn::Result<const firnbook::Report*> read = read_report(*context, report, report_size);
    if (!read) return read.failure();
    firn::Done same = check_same_pit(**read, pit, pit_size);
    if (!same) return same;
    if (firn::pit::size_of((*read)->methods()) == 0) {
      return failure_of(FIRN_BAD_ARGUMENT, "the report holds checks only",
                        "make it with firn_interpret: a note without what the pit amounts to would mislead");
    }
    std::string& words = context->work.text;
    words.clear();
    firn::note::append_note(words, context->work.view, **read);
    give(*context, text, words);
    return firn::done();
  });
}
