/* A journal in a POSIX file: append, fsync, and only then acknowledge. For hosts that have files; the library
   itself opens none. Copy these two files into a program of your own, or write something like them for
   another kind of storage.

   What it promises: once journal_file_store answers JOURNAL_FILE_OK, everything recorded before it is on the
   disk, whatever happens next, and firn_recorder_acknowledged says so. When it answers anything else nothing
   was acknowledged, nothing that was on the disk is gone, and it may be called again: it writes what is
   missing. */
#ifndef JOURNAL_FILE_H
#define JOURNAL_FILE_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>
#include <sys/types.h>

#include "firnbook/firnbook.h"

#ifdef __cplusplus
extern "C" {
#endif

typedef enum journal_file_status {
  JOURNAL_FILE_OK = 0,
  JOURNAL_FILE_SYSTEM = 1, /* the system refused: see system_error */
  JOURNAL_FILE_LIBRARY = 2 /* the library refused: see the firn_error */
} journal_file_status;

/* What the file is written with. Tests put their own in; everybody else leaves NULL. */
typedef struct journal_file_calls {
  ssize_t (*write)(int file, const void* bytes, size_t size);
  int (*sync)(int file);
  int (*truncate)(int file, off_t size);
} journal_file_calls;

typedef struct journal_file {
  firn_context* context;
  firn_recorder* recorder;
  journal_file_calls calls;
  int file;           /* -1 when closed */
  off_t stored;       /* bytes that are on the disk for good, all of them whole frames */
  bool is_dirty;      /* there may be more bytes behind them than that */
  firn_loaded loaded; /* what the file held when it was opened */
  int system_error;   /* errno of the last call that the system refused, else 0 */
} journal_file;

/* Opens the file, makes it when there is none, and loads what it holds into `recorder`: every whole frame,
   each of them acknowledged. What is torn behind the last one is cut off; damage in the middle stays where it
   is and is told by `loaded` and firn_recorder_gap. `pit_id` names the pit; NULL takes the name from the
   file, which then must hold one. The recorder must be new. Another process that has the file open is an
   error (EAGAIN or EACCES). When this fails the file holds what it held, and needs no journal_file_close. */
journal_file_status journal_file_open(journal_file* journal, const char* path, const char* pit_id,
                                      firn_context* context, firn_recorder* recorder,
                                      const journal_file_calls* calls, firn_error* error);

/* Appends everything that the recorder took since the last time, and acknowledges it once it is on the disk.
 */
journal_file_status journal_file_store(journal_file* journal, firn_error* error);

/* Closes the file; stores nothing. */
void journal_file_close(journal_file* journal);

#ifdef __cplusplus
}
#endif
#endif /* JOURNAL_FILE_H */
