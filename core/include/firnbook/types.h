/* Small values that records and reports share. Their layout is frozen: they hold no struct_size and never
   grow. Lengths are in units of 10 micrometres (1 mm = 100, 1 cm = 1000, 1 m = 100000). Since 0.1. */
#ifndef FIRNBOOK_TYPES_H
#define FIRNBOOK_TYPES_H

#include <stdint.h>

#include "firnbook/codes.h"

#ifdef __cplusplus
extern "C" {
#endif

/* A depth below the surface or a reading that is not known. Since 0.1. */
#define FIRN_UNKNOWN INT32_MIN

/* Lengths from whole centimetres and millimetres. Since 0.1. */
#define FIRN_CM(centimetres) ((centimetres)*INT32_C(1000))
#define FIRN_MM(millimetres) ((millimetres)*INT32_C(100))

/* A depth or height, with where it is counted from and along which line. Since 0.1. */
typedef struct firn_depth {
  int32_t value_10um;
  uint8_t datum;     /* firn_datum; FIRN_DATUM_SURFACE counts down, FIRN_DATUM_GROUND counts up */
  uint8_t direction; /* firn_direction */
  uint16_t reserved; /* 0 */
} firn_depth;

/* A moment on the wall clock at the pit. UTC = local_s - 60 * offset_min. All zero: no moment. Since 0.1. */
typedef struct firn_moment {
  int64_t local_s;      /* seconds from 1970-01-01T00:00:00 on the local clock */
  int16_t offset_min;   /* minutes ahead of UTC */
  uint8_t precision;    /* firn_time_precision */
  uint8_t offset_known; /* 1 when offset_min means something */
  uint32_t reserved;    /* 0 */
} firn_moment;

/* A stretch of time; one instant has end.precision = FIRN_TIME_PRECISION_NONE. Since 0.1. */
typedef struct firn_time_span {
  firn_moment begin;
  firn_moment end;
} firn_time_span;

/* A place in a pit: what a path such as "tests[2].fractures[0].depth_cm" stands for. Since 0.1. */
typedef struct firn_place {
  int32_t index;    /* stored position in the list that holds the thing; -1 for things that are not listed */
  int32_t sub;      /* position in that thing's own list, -1 for none */
  uint16_t field;   /* a FIRN_FIELD_ number of the thing's table; 65535 for the thing as a whole */
  uint8_t thing;    /* firn_thing */
  uint8_t reserved; /* 0 */
} firn_place;

/* Names one thing in a recorded pit: the edit that added it, and its place in that edit. A name never
   changes, whatever else is recorded. Since 0.1. */
typedef struct firn_target {
  uint64_t device;
  uint64_t sequence;
  uint32_t nth;        /* nth thing of its list in that edit; 0 for things that a firn_record_ call added */
  uint32_t sub;        /* nth fracture of the test, or reading of the profile; else 0 */
  uint8_t thing;       /* firn_thing */
  uint8_t reserved[7]; /* 0 */
} firn_target;

#ifdef __cplusplus
}
#endif
#endif /* FIRNBOOK_TYPES_H */
