#include "note/note.h"

#include "capi/inputs.h"
#include "capi/languages.h"
#include "capi/outputs.h"
#include "capi/structs.h"
#include "firnbook/note.h"

using namespace firn::capi;

namespace firn::capi {
namespace {

struct NoteStyle {
  note::Language language;
  note::Length length;
};

Result<NoteStyle> style_of(const firn_note_options* given) {
  Result<firn_note_options> chosen =
      read_options(given, FIRN_FIRST_VERSION(firn_note_options, reserved), "firn_note_options");
  if (!chosen) return chosen.failure();
  Result<note::Language> language = language_of(chosen->language);
  if (!language) return language.failure();
  if (chosen->length > FIRN_NOTE_SHORT || chosen->reserved != 0) {
    return failure_of(FIRN_BAD_ARGUMENT, "length is no firn_note_length, or reserved is not 0",
                      "begin with FIRN_INIT(firn_note_options) and set language and length");
  }
  return NoteStyle{*language, static_cast<note::Length>(chosen->length)};
}

Done write(firn_context& context, const std::uint8_t* pit, std::size_t pit_size, const std::uint8_t* report,
           std::size_t report_size, const NoteStyle& style, firn_buffer* text) {
  if (text == nullptr) return null_argument("text");
  if (report == nullptr) return null_argument("report");
  Done seen = view_pit(context, pit, pit_size);
  if (!seen) return seen;
  Done fits = check_content(context.work.view.raw());
  if (!fits) return fits;
  Result<const firnbook::Report*> read = read_report(context, report, report_size);
  if (!read) return read.failure();
  Done same = check_same_pit(**read, pit, pit_size);
  if (!same) return same;
  if (pit::size_of((*read)->methods()) == 0) {
    return failure_of(FIRN_BAD_ARGUMENT, "the report holds checks only",
                      "make it with firn_interpret: a note without what the pit amounts to would mislead");
  }
  std::string& words = context.work.text;
  words.clear();
  note::append_text(words, context.work.view, **read, style.language, style.length);
  give(context, text, words);
  return done();
}

}  // namespace
}  // namespace firn::capi

firn_status firn_note_write(firn_context* context, const uint8_t* pit, size_t pit_size, const uint8_t* report,
                            size_t report_size, firn_buffer* text, firn_error* error) {
  return guard({context, error, __func__, {text}}, [&]() -> firn::Done {
    const NoteStyle whole = {firn::note::Language::english, firn::note::Length::everything};
    return write(*context, pit, pit_size, report, report_size, whole, text);
  });
}

firn_status firn_note_write_as(firn_context* context, const uint8_t* pit, size_t pit_size,
                               const uint8_t* report, size_t report_size, const firn_note_options* options,
                               firn_buffer* text, firn_error* error) {
  return guard({context, error, __func__, {text}}, [&]() -> firn::Done {
    firn::Result<NoteStyle> style = style_of(options);
    if (!style) return style.failure();
    return write(*context, pit, pit_size, report, report_size, *style, text);
  });
}
