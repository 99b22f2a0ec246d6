/* A report in words. Since 0.1. */
#ifndef FIRNBOOK_NOTE_H
#define FIRNBOOK_NOTE_H

#include <stddef.h>
#include <stdint.h>

#include "firnbook/buffer.h"
#include "firnbook/context.h"
#include "firnbook/export.h"
#include "firnbook/language.h"

#ifdef __cplusplus
extern "C" {
#endif

/* Writes the field note with its interpretation as plain text: age and place first, signs of instability
   before any test, layers of concern with their evidence, what the tests did not load, the observer's own
   words, checks, cautions. Lines of at most 100 characters, each closed by a newline.
   Errors: those of firn_pit_verify for both buffers; FIRN_OTHER_PIT when the report was not made from these
   very bytes; FIRN_BAD_ARGUMENT for a report of firn_check, which would leave out what the pit amounts to.
   Since 0.1. */
FIRN_API firn_status firn_note_write(firn_context* context, const uint8_t* pit, size_t pit_size,
                                     const uint8_t* report, size_t report_size, firn_buffer* text,
                                     firn_error* error);

/* How much a note says. Every length carries cautions and defers to the bulletin, local rules and trained
   people. All but the whole note print only what raises concern, what was not tested, what people typed and
   cautions: never a class that reassures. Since 0.1. */
typedef enum firn_note_length {
  FIRN_NOTE_EVERYTHING = 0, /* the note of firn_note_write */
  FIRN_NOTE_ONE_LINE = 1,   /* at most 160 characters: place, date, the first sign or concern,
                               what was not tested */
  FIRN_NOTE_BRIEFING =
      2,              /* for a group, in some 20 seconds, at most 90 words: found, not tested, what
                         would change our minds, the leader's own decision as somebody typed it (never made here) */
  FIRN_NOTE_SHORT = 3 /* for a phone: signs, three concerns with a line of evidence each, what was not
                         tested, what to look at next, three cautions */
} firn_note_length;

/* Which note. FIRN_INIT(firn_note_options) is the default: everything, in English. Since 0.1. */
typedef struct firn_note_options {
  uint32_t struct_size; /* sizeof(firn_note_options) */
  uint8_t language;     /* firn_language */
  uint8_t length;       /* firn_note_length */
  uint16_t reserved;    /* 0 */
} firn_note_options;

/* firn_note_write in another language or length. `options` may be NULL. Errors: those of firn_note_write;
   FIRN_BAD_ARGUMENT for a language or length that is none. Since 0.1. */
FIRN_API firn_status firn_note_write_as(firn_context* context, const uint8_t* pit, size_t pit_size,
                                        const uint8_t* report, size_t report_size,
                                        const firn_note_options* options, firn_buffer* text,
                                        firn_error* error);

#ifdef __cplusplus
}
#endif
#endif /* FIRNBOOK_NOTE_H */
