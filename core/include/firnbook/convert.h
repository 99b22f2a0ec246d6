/* Formats in and out: the open standard for snow profiles, JSON, field notes, a card that fits a QR code, and
   tables. Since 0.1. */
#ifndef FIRNBOOK_CONVERT_H
#define FIRNBOOK_CONVERT_H

#include <stddef.h>
#include <stdint.h>

#include "firnbook/buffer.h"
#include "firnbook/context.h"
#include "firnbook/export.h"

#ifdef __cplusplus
extern "C" {
#endif

/* Formats. core/src/exchange holds a page about each. Since 0.1. */
typedef enum firn_format {
  FIRN_FORMAT_DETECT = 0,       /* to read: what the bytes look like */
  FIRN_FORMAT_FIRN = 1,         /* the schema's bytes: a pit, a report or bulletins */
  FIRN_FORMAT_JSON = 2,         /* the same as JSON, see schemas/json */
  FIRN_FORMAT_CAAML = 3,        /* a pit as a CAAML snow profile: written as 6.0.4, read from 6.0.x and 5.0 */
  FIRN_FORMAT_NOTES = 4,        /* a pit as field notes */
  FIRN_FORMAT_CARD = 5,         /* a pit in few bytes, with a checksum */
  FIRN_FORMAT_CARD_TEXT = 6,    /* a card as Base45 (RFC 9285) */
  FIRN_FORMAT_CARD_PICTURE = 7, /* a card as a QR code, in SVG; written only */
  FIRN_FORMAT_LAYERS_TABLE = 8, /* CSV (RFC 4180), one row a layer; written only */
  FIRN_FORMAT_TESTS_TABLE = 9,  /* CSV, one row a fracture or a test without one; written only */
  FIRN_FORMAT_PITS_TABLE = 10,  /* CSV, one row a pit; written only */
  FIRN_FORMAT_BULLETIN_JSON = 11 /* bulletins in the open JSON of CAAML v6; read only */
} firn_format;

/* How to convert. Start with FIRN_INIT(firn_convert_options). Since 0.1. */
typedef struct firn_convert_options {
  uint32_t struct_size; /* sizeof(firn_convert_options) */
  uint32_t from;        /* firn_format; 0 = what the bytes look like */
  uint32_t to;          /* firn_format; 0 = FIRN_FORMAT_FIRN */
  uint32_t leave_out;   /* 1: what a card cannot hold is left out with a notice; 0: such a pit is refused */
  uint32_t keep_unread; /* 1: a line of field notes that is not understood is kept in the pit */
  uint32_t indent;      /* blanks for each level of JSON, 0 to 16; 0 = all of it in one line */
  uint32_t max_depth;   /* most levels of elements or brackets, at most 1000; 0 = 64 */
  uint32_t rows_only;   /* 1: a table without its headings, to go below another's rows */
  uint32_t for_others;  /* 1: what is to be passed on; remarks that are marked confidential are left out */
  uint32_t reserved;    /* 0 */
  size_t max_bytes;     /* most bytes of the document; 0 = 64 MiB */
} firn_convert_options;

/* Reads a document and writes it in another format. `options` may be NULL: detected, to the schema's bytes.
   What was lost or changed on the way is always told in `notices`, which may be NULL: one line each,
   `KIND<TAB>LINE<TAB>COLUMN<TAB>PATH<TAB>WHAT`, with KIND one of "changed" (in another form: rounded,
   converted), "kept" (not understood, but still in the pit), "not understood" and "left out"; LINE and COLUMN
   (bytes, from 1) are empty where the format has no lines; PATH is one of the document when reading and of
   the pit when writing. Size 0: nothing was. Errors: FIRN_NOT_UNDERSTOOD, FIRN_NOTES_NOT_UNDERSTOOD,
   FIRN_NOTES_CONTRADICT, FIRN_BAD_UTF8, FIRN_NO_BULLETIN, FIRN_WRONG_KIND, FIRN_DAMAGED, FIRN_NEWER_SCHEMA (a
   card of a newer version) for what cannot be read; FIRN_NOT_HELD for a pit that does not fit the format;
   FIRN_TOO_LARGE; FIRN_BAD_ARGUMENT for a format that is not read or not written, a report or bulletins where
   the format holds pits only, or an option out of range. Since 0.1. */
FIRN_API firn_status firn_convert(firn_context* context, const uint8_t* bytes, size_t size,
                                  const firn_convert_options* options, firn_buffer* out, firn_buffer* notices,
                                  firn_error* error);

/* What a document looks like: a firn_format that is never FIRN_FORMAT_DETECT. Whether it can be read is for
   firn_convert to say; what looks like nothing else is taken for field notes. Since 0.1. */
FIRN_API firn_status firn_format_detect(firn_context* context, const uint8_t* bytes, size_t size,
                                        uint32_t* format, firn_error* error);

#ifdef __cplusplus
}
#endif
#endif /* FIRNBOOK_CONVERT_H */
