/* The journal of a pit: what a host stores while people record, what comes back after a battery died, and how
   two people's recordings become one. Since 0.1.

   The library stores nothing itself. Whatever arrives at a recorder (an edit by struct or by bytes, or those
   of a journal that was loaded) gets a ticket: 1, 2, 3 ... in order of arrival. The host

     1. asks for the frames of what arrived since the last ticket it stored (firn_recorder_frames),
     2. appends them to a file, a browser's storage, anything, at its own pace,
     3. and when they are safe there, and not before, acknowledges the ticket (firn_recorder_acknowledge).

   Only what was acknowledged is promised. After a restart the host gives the bytes back to a new recorder
   (firn_recorder_load), cuts off what firn_loaded.whole_size says, acknowledges what was loaded, and goes on.
   examples/journal/journal_file.c does all this with a POSIX file.

   Hand on to others only what was acknowledged: after a crash the numbers of edits that were not stored are
   given out again, and two different edits with one number cannot be merged.

   A journal is a set of edits. Loading a partner's journal adds its edits to one's own, in whatever order, as
   often as one likes: whoever holds the same edits holds the same pit. The layout of the frames is told in
   schemas/README.md, "Journal files". */
#ifndef FIRNBOOK_JOURNAL_H
#define FIRNBOOK_JOURNAL_H

#include <stddef.h>
#include <stdint.h>

#include "firnbook/buffer.h"
#include "firnbook/context.h"
#include "firnbook/export.h"
#include "firnbook/record.h"
#include "firnbook/types.h"

#ifdef __cplusplus
extern "C" {
#endif

/* Says which pit this is the journal of: a name of its own, such as the id in firn_pit_head; UTF-8, 1 to 1024
   bytes, no control characters. Each frame carries a trace of it, so that journals of two pits are never
   mixed. May be called at any time before frames are asked for; again with the same id does nothing. Errors:
   FIRN_BAD_ARGUMENT, FIRN_BAD_UTF8; FIRN_OTHER_PIT when another id was given, or came with a journal.
   Since 0.1. */
FIRN_API firn_status firn_recorder_begin(firn_recorder* recorder, const char* pit_id, firn_error* error);

/* The last ticket that was given out, 0 when nothing arrived or for NULL. Never fails. Since 0.1. */
FIRN_API uint64_t firn_recorder_ticket(const firn_recorder* recorder);

/* The last ticket that was acknowledged: everything up to it is promised. 0 for none or NULL. Never fails.
   Since 0.1. */
FIRN_API uint64_t firn_recorder_acknowledged(const firn_recorder* recorder);

/* The frames of everything that arrived after the ticket `after`, in order of arrival, the frame that names
   the pit among them: those after 0 make a whole journal. *last (may be NULL) becomes the last ticket among
   them, `after` when there are none: then the buffer is empty. May be asked again and again. Errors:
   FIRN_WRONG_STATE before firn_recorder_begin or a load that named the pit; FIRN_BAD_TICKET for a ticket that
   was not given out. Since 0.1. */
FIRN_API firn_status firn_recorder_frames(const firn_recorder* recorder, uint64_t after, firn_buffer* frames,
                                          uint64_t* last, firn_error* error);

/* The host has everything up to and with `ticket` stored for good. Errors: FIRN_BAD_TICKET for a ticket that
   was not given out, or that is not beyond the last one acknowledged (twice, out of order, 0). Since 0.1. */
FIRN_API firn_status firn_recorder_acknowledge(firn_recorder* recorder, uint64_t ticket, firn_error* error);

/* What a journal brought. Since 0.1. */
typedef struct firn_loaded {
  uint32_t struct_size;
  uint8_t names_pit; /* 1: the journal holds the frame with the pit's id */
  uint8_t reserved[3];
  uint64_t last_ticket; /* of the recorder, after loading */
  uint64_t frames;      /* whole frames of this pit */
  uint64_t added;       /* edits that the recorder did not hold before */
  uint64_t known;       /* frames that it did hold */
  uint64_t kept;        /* frames that a newer version wrote and that were not there before: they are kept as
                           bytes and passed on, and the pit says that it was recorded with them */
  uint64_t gaps;        /* stretches of bytes that were left out: see firn_recorder_gap */
  uint64_t lost_bytes;  /* their bytes in all */
  uint64_t whole_size;  /* where the last whole frame ends. Cut the file off here before appending to it */
} firn_loaded;

/* Adds what a journal holds: this pit's own after a restart, or a partner's. Takes every whole frame; what is
   torn or damaged is left out and reported (firn_recorder_gap), and is no error. No frames at all is fine
   too. A recorder that has not begun takes the pit's id from the journal. Edits are not held against what is
   there, as firn_recorder_apply does: one whose target is missing has no effect, and has it once the target
   comes. `loaded` may be NULL. Errors, each of which leaves the recorder as it was: FIRN_OTHER_PIT;
   FIRN_DUPLICATE_EDIT when both hold different edits with one device and sequence, which the message names;
   FIRN_TOO_LARGE for an edit beyond max_edit_bytes or more than 256 MB in all; FIRN_WRONG_STATE when the
   journal has lost the frame that names the pit and firn_recorder_begin was not called. Since 0.1. */
FIRN_API firn_status firn_recorder_load(firn_recorder* recorder, const uint8_t* journal, size_t size,
                                        firn_loaded* loaded, firn_error* error);

/* Why bytes of a journal were left out. Numbers are fixed; new ones are appended. Since 0.1. */
typedef enum firn_gap_reason {
  FIRN_GAP_NO_FRAME = 1,  /* no frame begins here: foreign bytes, or a damaged head and what followed it */
  FIRN_GAP_TORN = 2,      /* the journal ends before the frame does, or the frame was written over */
  FIRN_GAP_DAMAGED = 3,   /* the head is whole, but the edit's bytes are not those that were written */
  FIRN_GAP_OTHER_PIT = 4, /* a whole frame of another pit */
  FIRN_GAP_BAD_EDIT = 5   /* a whole frame, but its edit is none that can be recorded */
} firn_gap_reason;

/* A stretch of the journal that was left out. Since 0.1. */
typedef struct firn_journal_gap {
  uint32_t struct_size;
  uint32_t reason;   /* firn_gap_reason */
  uint64_t offset;   /* bytes from the journal's beginning */
  uint64_t size;     /* bytes */
  uint64_t device;   /* of the edit that was lost, */
  uint64_t sequence; /* 0 where that is not known */
} firn_journal_gap;

/* One gap of the journal that was loaded last, in order of their offsets; index counts from 0 to below
   firn_loaded.gaps. Errors: FIRN_BAD_ARGUMENT for an index out of range. Since 0.1. */
FIRN_API firn_status firn_recorder_gap(const firn_recorder* recorder, size_t index, firn_journal_gap* gap,
                                       firn_error* error);

/* The whole journal, in order of device and sequence: recorders that hold the same edits give the same bytes.
   For handing on, and for writing a file anew that holds damage. Errors: FIRN_WRONG_STATE as
   firn_recorder_frames. Since 0.1. */
FIRN_API firn_status firn_recorder_journal(const firn_recorder* recorder, firn_buffer* journal,
                                           firn_error* error);

/* Two edits of different devices that set the same field of the same thing to different values, neither
   author having seen the other's. Both are kept; the pit shows the later one in the order of clock, device
   and sequence. A removal, and the undo of an adding, are what is shown whatever the order: what the other
   one said of the thing has no effect. Since 0.1. */
typedef struct firn_conflict {
  uint32_t struct_size;
  uint16_t field; /* a FIRN_FIELD_ number of the thing's table; 65535 when one of the two removed, split or
                     joined the thing, or both moved all depths */
  uint16_t reserved;
  uint64_t device; /* the edit that is not shown */
  uint64_t sequence;
  uint64_t shown_device; /* the edit that is shown */
  uint64_t shown_sequence;
  firn_target
      target; /* the thing, as the edit that is not shown names it; device 0 for what a pit has once */
} firn_conflict;

/* How many conflicts there are. One is gone once somebody who holds both edits sets the field anew, or once
   one of the two is undone. Errors: FIRN_NULL_ARGUMENT. Since 0.1. */
FIRN_API firn_status firn_recorder_conflict_count(firn_recorder* recorder, size_t* count, firn_error* error);

/* One conflict, index from 0; the order is the same for whoever holds the same edits. Errors:
   FIRN_BAD_ARGUMENT for an index out of range. Since 0.1. */
FIRN_API firn_status firn_recorder_conflict(firn_recorder* recorder, size_t index, firn_conflict* conflict,
                                            firn_error* error);

#ifdef __cplusplus
}
#endif
#endif /* FIRNBOOK_JOURNAL_H */
