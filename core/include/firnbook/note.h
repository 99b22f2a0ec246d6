/* A report in words. Since 0.1. */
#ifndef FIRNBOOK_NOTE_H
#define FIRNBOOK_NOTE_H

#include <stddef.h>
#include <stdint.h>

#include "firnbook/buffer.h"
#include "firnbook/context.h"
#include "firnbook/export.h"

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

#ifdef __cplusplus
}
#endif
#endif /* FIRNBOOK_NOTE_H */
