/* Field notes, in and out: one observation a line, in the trade's shorthand. Since 0.1. */
#ifndef FIRNBOOK_NOTES_H
#define FIRNBOOK_NOTES_H

#include <stddef.h>
#include <stdint.h>

#include "firnbook/buffer.h"
#include "firnbook/context.h"
#include "firnbook/export.h"

#ifdef __cplusplus
extern "C" {
#endif

/* How to read notes. FIRN_INIT(firn_notes_options) is the default. Since 0.1. */
typedef struct firn_notes_options {
  uint32_t struct_size; /* sizeof(firn_notes_options) */
  uint32_t keep_unread; /* 1: keep a line that is not understood in the pit, as it stands, and go on */
} firn_notes_options;

/* Reads field notes into the bytes of a pit. `text` needs no NUL; `options` may be NULL. `remarks` may be
   NULL; it receives one line of text for each rounding that was made and each line that was kept unread,
   and is of size 0 when there was none.
   Errors: FIRN_NOTES_NOT_UNDERSTOOD and FIRN_NOTES_CONTRADICT (the first such line is in error->line and
   error->column; what counts every further one), FIRN_BAD_UTF8, FIRN_TOO_LARGE, FIRN_BAD_ARGUMENT for
   keep_unread above 1. Since 0.1. */
FIRN_API firn_status firn_notes_read(firn_context* context, const char* text, size_t size,
                                     const firn_notes_options* options, firn_buffer* pit,
                                     firn_buffer* remarks, firn_error* error);

/* Prints a pit as field notes that read back to the same pit. `lost` may be NULL; it receives one path a
   line (such as "site.latitude_deg") for everything in the pit that notes cannot hold, and is of size 0 when
   the notes hold all of it. Errors as firn_pit_verify. Since 0.1. */
FIRN_API firn_status firn_notes_write(firn_context* context, const uint8_t* pit, size_t pit_size,
                                      firn_buffer* text, firn_buffer* lost, firn_error* error);

#ifdef __cplusplus
}
#endif
#endif /* FIRNBOOK_NOTES_H */
