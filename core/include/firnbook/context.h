/* The context: memory, log and limits of one user of the library; and how failures are told. Since 0.1.

   Rules for the whole API
   - Nothing is global. A context and the handles made from it (firn_report, firn_recorder) are used by one
     thread at a time; different contexts are independent of each other.
   - No call opens a file, reads a clock, prints, or looks at the locale. The host gives bytes, times, ids.
   - Every call that can fail answers a firn_status and is answered by it alone: anything but FIRN_OK means
     that nothing changed and that the outputs are empty ({NULL, 0}, or NULL for handles).
   - Outputs are overwritten without being freed first.
   - Input bytes may lie at any address and are only read. They may be freed after the call.
   - Text is UTF-8. Text that goes in ends with a NUL or has a size beside it, as the call says.
   - Any call may answer FIRN_NULL_ARGUMENT, FIRN_BAD_STRUCT_SIZE, FIRN_OUT_OF_MEMORY and FIRN_INTERNAL; what
     else it may answer stands beside it.
   - Callbacks of the host must not call back into the same context. A callback written in C++ must not
     throw; what it throws is swallowed. */
#ifndef FIRNBOOK_CONTEXT_H
#define FIRNBOOK_CONTEXT_H

#include <stddef.h>
#include <stdint.h>

#include "firnbook/export.h"
#include "firnbook/status.h"

#ifdef __cplusplus
extern "C" {
#endif

/* Memory, log, limits and working space. Opaque. Since 0.1. */
typedef struct firn_context firn_context;

/* How loud a message is. Since 0.1. */
typedef enum firn_log_level {
  FIRN_LOG_ERROR = 1,   /* a call failed through the library or for want of memory */
  FIRN_LOG_WARNING = 2, /* a call refused what it was given */
  FIRN_LOG_INFO = 3,    /* something was left out or rounded, as the call's outputs say too */
  FIRN_LOG_DEBUG = 4    /* what each call did */
} firn_log_level;

/* Where handles and returned buffers come from. `alloc` answers memory aligned like that of malloc, or NULL
   when there is none; `release` takes such memory back and is never given NULL. Both NULL: malloc and free.
   One of them NULL: FIRN_BAD_ARGUMENT. Working space inside a call comes from the C++ runtime; when that
   runs out, the call answers FIRN_OUT_OF_MEMORY too. Frozen layout. Since 0.1. */
typedef struct firn_allocator {
  void* (*alloc)(void* user, size_t size);
  void (*release)(void* user, void* memory);
  void* user;
} firn_allocator;

/* Receives messages; NULL: silence. `component` and `message` end with a NUL and are valid during the call
   only; a message holds at most 511 bytes. Called on the thread that called the library. Since 0.1. */
typedef void (*firn_log_callback)(void* user, firn_log_level level, const char* component,
                                  const char* message);

/* What a context is made from; all of it is copied. Start with FIRN_INIT(firn_context_options): zero in
   any field is its default. Since 0.1. */
typedef struct firn_context_options {
  uint32_t struct_size; /* sizeof(firn_context_options) */
  uint32_t log_level;   /* firn_log_level: the quietest level that is passed on; 0 = FIRN_LOG_WARNING */
  firn_allocator allocator;
  firn_log_callback log;
  void* log_user;
  size_t max_pit_bytes;    /* most bytes of a pit; 0 = 16 MiB */
  size_t max_notes_bytes;  /* most bytes of field notes, or of a bulletin's JSON; 0 = 16 MiB */
  size_t max_report_bytes; /* most bytes of a report; 0 = 64 MiB */
  size_t max_edit_bytes;   /* most bytes of one edit; 0 = 16 MiB */
} firn_context_options;

/* Room in firn_error, in bytes with the closing NUL. Since 0.1. */
#define FIRN_ERROR_PATH_SIZE 160
#define FIRN_ERROR_TEXT_SIZE 256

/* Why a call failed: what, where, and how to mend it. The caller owns it, sets struct_size
   (FIRN_INIT(firn_error)) and may pass it to call after call; NULL where nobody wants to know. Filled by
   every call that takes one: after FIRN_OK, status is FIRN_OK and the texts are empty. Texts are in English,
   end with a NUL, hold no control characters and are cut between characters where they are too long. */
typedef struct firn_error {
  uint32_t struct_size;              /* sizeof(firn_error) */
  uint32_t status;                   /* firn_status */
  uint32_t line;                     /* line of a text, from 1; 0 = not about a line */
  uint32_t column;                   /* byte within that line, from 1; 0 = the line as a whole */
  char path[FIRN_ERROR_PATH_SIZE];   /* place in the pit, such as "tests[2].fractures[0].depth_cm", or "" */
  char what[FIRN_ERROR_TEXT_SIZE];   /* what is wrong */
  char remedy[FIRN_ERROR_TEXT_SIZE]; /* how to mend it */
} firn_error;

/* One line about a status, such as "out of memory"; for a number this library does not know, a text that
   says so. Never NULL; the library owns it. Any thread, never fails. Since 0.1. */
FIRN_API const char* firn_status_text(firn_status status);

/* Makes a context. `options` may be NULL for the defaults. Errors: FIRN_BAD_ARGUMENT for half an allocator
   or a log level out of range. The caller owns *context and gives it back to firn_context_destroy.
   Since 0.1. */
FIRN_API firn_status firn_context_create(const firn_context_options* options, firn_context** context,
                                         firn_error* error);

/* Gives a context back. Its reports and recorders are closed before; its buffers may be freed before only.
   NULL is fine. Never fails. Since 0.1. */
FIRN_API void firn_context_destroy(firn_context* context);

#ifdef __cplusplus
}
#endif
#endif /* FIRNBOOK_CONTEXT_H */
