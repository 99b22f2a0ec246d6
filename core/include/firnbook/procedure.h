/* The steps around a pit and its tests, to be shown and ticked, and what probe strikes say. Since 0.1.

   A step that was done or not is recorded with firn_record_step (record.h). Once a pit records any step, the
   report's cautions name each step that guards people and was not ticked. The device's manual, local rules
   and trained people stand above every step. core/src/procedure/CATALOGUE.md lists them all with their
   sources. */
#ifndef FIRNBOOK_PROCEDURE_H
#define FIRNBOOK_PROCEDURE_H

#include <stddef.h>
#include <stdint.h>

#include "firnbook/codes.h"
#include "firnbook/context.h"
#include "firnbook/export.h"

#ifdef __cplusplus
extern "C" {
#endif

/* One step. The texts are English, static, UTF-8 with a NUL, and never NULL: they live as long as the library
   is loaded. Set struct_size. Since 0.1. */
typedef struct firn_procedure_entry {
  uint32_t struct_size;
  uint16_t test_kinds;     /* bit n = firn_test_kind n; 0 = whatever test is made, and without one */
  uint8_t kind;            /* firn_step_kind */
  uint8_t guards_people;   /* 1 = a safety step: unticked, it becomes a caution */
  int32_t across_10um;     /* column along the contour; 0 = the step isolates none */
  int32_t up_10um;         /* column up the slope; 0 likewise */
  int32_t down_10um;       /* usual depth of the cuts; 0 = to below the layer in question */
  int32_t left_10um;       /* deep tap test: snow left above the layer; else 0 */
  uint8_t least_slope_deg; /* 0 = any incline: only the rutschblock has a minimum */
  uint8_t verified;        /* firn_verified: how the source is known */
  uint8_t reserved[6];
  const char* code;           /* in short, as field notes write it: "pack closed" */
  const char* sentence;       /* what to do */
  const char* needs;          /* what one needs in hand for it; "" for nothing */
  const char* guards_against; /* what it prevents */
  const char* source;         /* where it comes from, and how that is known */
} firn_procedure_entry;

/* How many steps there are: for one kind of test (what always holds, and what is its own), or all of them
   with FIRN_TEST_KIND_NONE. Any thread, no context. Errors: FIRN_NULL_ARGUMENT; FIRN_BAD_ARGUMENT for a kind
   of test that is not in firn_test_kind. Since 0.1. */
FIRN_API firn_status firn_procedure_count(uint8_t test_kind, uint32_t* count, firn_error* error);

/* The nth of these steps, from 0, in the order in which they are done. Any thread, no context. Errors: as
   above; FIRN_BAD_STRUCT_SIZE; FIRN_BAD_ARGUMENT for a position that is not there. Since 0.1. */
FIRN_API firn_status firn_procedure_step(uint8_t test_kind, uint32_t position, firn_procedure_entry* out,
                                         firn_error* error);

/* One strike that lies far from the rest. Since 0.1. */
typedef enum firn_odd_strike {
  FIRN_ODD_STRIKE_NONE = 0,
  FIRN_ODD_STRIKE_SHALLOWER = 1, /* rock, ground, bush, log or a hard layer likely stopped the probe */
  FIRN_ODD_STRIKE_DEEPER = 2     /* a hollow is likely, or the other strikes were stopped by something */
} firn_odd_strike;

/* What probe strikes say. Set struct_size. Lengths in units of 10 um. The limits are ours, since no published
   one is known (common practice wants even depth): uneven is more than a fifth of the mean and more than 10
   cm between the lowest and the highest; odd is one strike that is uneven with its nearest neighbour while
   the rest are even. Even strikes prove nothing about what lies between them. Since 0.1. */
typedef struct firn_probe_result {
  uint32_t struct_size;
  int32_t lowest_10um; /* FIRN_UNKNOWN without strikes, like the next three */
  int32_t highest_10um;
  int32_t spread_10um;
  int32_t mean_10um; /* rounded down */
  uint32_t count;    /* strikes of 0 and more */
  uint32_t ignored;  /* strikes below 0: no depths */
  uint32_t odd_at;   /* position of the odd strike; 0 when there is none */
  uint8_t uneven;    /* 1 = uneven */
  uint8_t too_few;   /* 1 = fewer than three: no odd one can be told */
  uint8_t odd;       /* firn_odd_strike */
  uint8_t reserved[5];
  const char* words; /* a sentence for whoever digs, static and never NULL */
} firn_probe_result;

/* Reads strikes as they are given, 1,000,000 at most; `strikes_10um` may be NULL when `count` is 0. Any
   thread, no context. Errors: FIRN_NULL_ARGUMENT, FIRN_BAD_STRUCT_SIZE, FIRN_BAD_ARGUMENT for too many. Since
   0.1. */
FIRN_API firn_status firn_probe_spread(const int32_t* strikes_10um, size_t count, firn_probe_result* out,
                                       firn_error* error);

#ifdef __cplusplus
}
#endif
#endif /* FIRNBOOK_PROCEDURE_H */
