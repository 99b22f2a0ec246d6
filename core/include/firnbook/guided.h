/* Guided tests: somebody taps and counts aloud, a partner says what happens, and each answer tells where the
   test stands and what comes next. Since 0.1.

   - firn_guided_start begins a test, firn_guided_event tells what happens in it. Both make edits, as the
   calls of record.h do: whoever stores the edits can go on after the app was killed, undo any of them, and
   merge them with a partner's. firn_guided_open finds the test that is still open.
   - What cannot happen where the test stands is refused with FIRN_BAD_EDIT and leaves the recorder as it was:
     a tap after the end, a crossing before the crack, a cut longer than the column. Nothing is filled in that
     nobody said: no size of the column, no rule, no depth.
   - One test at a time is open on one device; a partner's device may have one of its own.
   - The result stands in the pit from the first event on. What was seen of a fracture may be said later
     (FIRN_TEST_EVENT_DESCRIBE, or firn_record_fracture with the fracture's name for the layer it broke in).
   - Entering a result afterwards, without being guided, is firn_record_test.
   core/src/recording/GUIDED.md has the tables and their sources. Thread rule of the recorder's context. */
#ifndef FIRNBOOK_GUIDED_H
#define FIRNBOOK_GUIDED_H

#include <stddef.h>
#include <stdint.h>

#include "firnbook/buffer.h"
#include "firnbook/codes.h"
#include "firnbook/context.h"
#include "firnbook/export.h"
#include "firnbook/record.h"
#include "firnbook/types.h"

#ifdef __cplusplus
extern "C" {
#endif

/* What happened: the numbers of TestEventKind in schemas/edit.fbs. What is said with it stands in `seen`.
   Since 0.1. */
typedef enum firn_test_event_kind {
  FIRN_TEST_EVENT_START = 1, /* made by firn_guided_start only */
  FIRN_TEST_EVENT_TAP = 2,
  FIRN_TEST_EVENT_SET_TAP = 3,     /* the count was lost; seen: tap, where it stands */
  FIRN_TEST_EVENT_CRACK = 4,       /* it broke under the present load; seen, or NULL: what was seen of it */
  FIRN_TEST_EVENT_ISOLATING = 5,   /* it broke while the column was cut; seen as for CRACK */
  FIRN_TEST_EVENT_CROSSED = 6,     /* extended column: the crack has crossed by now; without a crack that may
                                      still cross: one ran right across on this tap, seen as for CRACK */
  FIRN_TEST_EVENT_NOT_CROSSED = 7, /* extended column: the crack was watched and did not cross */
  FIRN_TEST_EVENT_SLID = 8,        /* the block slid off, or no longer carries taps evenly */
  FIRN_TEST_EVENT_LEVELLED = 9,    /* compression test: damaged top removed; the count goes on */
  FIRN_TEST_EVENT_CUT_TO = 10,     /* saw test; seen: cut_10um, how far by now */
  FIRN_TEST_EVENT_RAN = 11,        /* saw test: the crack ran; seen: saw_end, cut_10um unless said before */
  FIRN_TEST_EVENT_LOADED = 12,     /* rutschblock; seen: step 2 to 6, and which jump of it */
  FIRN_TEST_EVENT_DESCRIBE = 13,   /* seen: depth, character, quality, release, ease, layer, words */
  FIRN_TEST_EVENT_RETRACT = 14,    /* that was no fracture; opens a test again that it had ended */
  FIRN_TEST_EVENT_NOT_VALID = 15,  /* the column was no valid test: not_valid_reason, words */
  FIRN_TEST_EVENT_STOP = 16        /* no more load */
} firn_test_event_kind;

/* Where a guided test stands. Since 0.1. */
typedef enum firn_guided_state_kind {
  FIRN_GUIDED_UNTOUCHED = 1, /* nothing loaded, nothing broke */
  FIRN_GUIDED_BROKE = 2,     /* something broke; it may go on */
  FIRN_GUIDED_LOADING = 3,
  FIRN_GUIDED_FULL = 4, /* tap 30, step 6, or the saw at the end of the column: no more load to give */
  FIRN_GUIDED_SLID = 5, /* the block slid off: level the rest, or stop */
  FIRN_GUIDED_DUE = 6,  /* one more tap for a crack, or how much of the block came away */
  FIRN_GUIDED_ENDED = 7,
  FIRN_GUIDED_NOT_VALID = 8
} firn_guided_state_kind;

/* One event. Since 0.1. */
typedef struct firn_test_event {
  uint32_t struct_size;
  uint8_t kind;                 /* firn_test_event_kind */
  uint8_t not_valid_reason;     /* firn_not_valid_reason; 0 for any other event */
  uint8_t reserved[2];          /* 0 */
  const firn_fracture* seen;    /* what is said with it; NULL = nothing */
  const firn_target* fracture;  /* the fracture it is about; NULL = the last one, for CROSSED and NOT_CROSSED
                                   the crack that may still cross */
  const char* words;            /* NOT_VALID: the reason in words; NULL otherwise */
  const void* reserved_pointer; /* NULL */
} firn_test_event;

/* What every call answers. Set struct_size. Since 0.1. */
typedef struct firn_guidance {
  uint32_t struct_size;
  uint32_t allowed;         /* bit n: what may come next, n = firn_test_event_kind */
  uint64_t missing;         /* FIRN_FIELD_FRACTURE_ bits that `of` still lacks */
  uint64_t missing_of_test; /* FIRN_FIELD_STABILITY_TEST_ bits that the test still lacks */
  firn_target of;           /* the first fracture that lacks something, else the last one; all zero = none */
  firn_target last;         /* the last fracture recorded; all zero = none */
  int32_t cut_10um;         /* saw test: how far by now */
  uint32_t fracture_count;
  uint16_t next;        /* sentences, for firn_guided_text; 0 = none: what to do next */
  uint16_t watch;       /* what to look for */
  uint16_t record;      /* what to say or measure first of what is missing */
  uint16_t reach;       /* how deep such a test reaches */
  uint8_t state;        /* firn_guided_state_kind */
  uint8_t kind;         /* firn_test_kind */
  uint8_t taps;         /* counted through, 0 to 30 */
  uint8_t stage;        /* firn_load_stage of the last tap; 0 before the first */
  uint8_t tap_in_stage; /* 1 to 10; 0 before the first */
  uint8_t step;         /* rutschblock: last step given, 0 before the first */
  uint8_t jump;         /* rutschblock: which jump of it, 0 = none */
  uint8_t reserved;
} firn_guidance;

/* Begins a test: `test` holds its kind and what is known of its column and rule, and no result. *target (may
   be NULL) receives its name, *guidance (may be NULL) the answer, `edit` (may be NULL) the bytes of the edit.
   Errors: FIRN_WRONG_STATE before firn_recorder_author; FIRN_BAD_EDIT for a kind that is not guided
   (compression, deep tap, extended column, saw test, rutschblock, shovel shear and hand shear are), a result,
   a length that is not above 0, and while another guided test of this device is open; those of
   firn_record_test. Since 0.1. */
FIRN_API firn_status firn_guided_start(firn_recorder* recorder, const firn_test* test, firn_target* target,
                                       firn_guidance* guidance, firn_buffer* edit, firn_error* error);

/* Tells what happened in the test that *test names; outputs as above. Errors: FIRN_BAD_EDIT for what cannot
   happen where the test stands or holds a value out of range, FIRN_BAD_ARGUMENT for a crossing that may be
   meant for an older crack (name it, or say the crack first), FIRN_NO_SUCH_TARGET, FIRN_WRONG_STATE,
   FIRN_BAD_UTF8. Since 0.1. */
FIRN_API firn_status firn_guided_event(firn_recorder* recorder, const firn_target* test,
                                       const firn_test_event* event, firn_guidance* guidance,
                                       firn_buffer* edit, firn_error* error);

/* Where the test stands, also after its edits were read back from where they were stored. Errors:
   FIRN_NO_SUCH_TARGET. Since 0.1. */
FIRN_API firn_status firn_guided_state(firn_recorder* recorder, const firn_target* test,
                                       firn_guidance* guidance, firn_error* error);

/* The guided test that this author's device has open; all zero when there is none. Errors: FIRN_WRONG_STATE
   before firn_recorder_author. Since 0.1. */
FIRN_API firn_status firn_guided_open(firn_recorder* recorder, firn_target* test, firn_error* error);

/* The test as a practitioner writes it so far: "CT11 (SC) down 17; 23 (RP) down 40". Errors:
   FIRN_NO_SUCH_TARGET. Since 0.1. */
FIRN_API firn_status firn_guided_line(firn_recorder* recorder, const firn_target* test, firn_buffer* line,
                                      firn_error* error);

/* A sentence of firn_guidance in English and where its practice comes from, both static, UTF-8 with a NUL,
   and never NULL; empty for 0 and for a number that this library does not know. Numbers never change their
   meaning, so that a host may show them in another language. `source` may be NULL. Any thread, no context.
   Errors: FIRN_NULL_ARGUMENT. Since 0.1. */
FIRN_API firn_status firn_guided_text(uint16_t sentence, const char** text, const char** source,
                                      firn_error* error);

#ifdef __cplusplus
}
#endif
#endif /* FIRNBOOK_GUIDED_H */
