/* Two pits of one wall held against each other, for teaching: a student's blind pit and the instructor's,
   layer by layer and test by test. They are not merged, and there is no score: a difference is a difference.
   To compare a class, compare each pit with the same reference. Since 0.1. */
#ifndef FIRNBOOK_COMPARE_H
#define FIRNBOOK_COMPARE_H

#include <stddef.h>
#include <stdint.h>

#include "firnbook/buffer.h"
#include "firnbook/context.h"
#include "firnbook/export.h"

#ifdef __cplusplus
extern "C" {
#endif

/* What counts as the same place in both pits, in units of 10 um: 1 to 20000 (20 cm), 0 = the default. The
   defaults are ours: nobody has published how far two people's readings of one wall may lie apart.
   FIRN_INIT(firn_compare_options) is the default. Since 0.1. */
typedef struct firn_compare_options {
  uint32_t struct_size;           /* sizeof(firn_compare_options) */
  int32_t layer_apart_10um;       /* layers of one grain class that do not overlap; 0 = 5000 (5 cm) */
  int32_t fracture_apart_10um;    /* fractures of two tests of one kind; 0 = 5000 (5 cm) */
  int32_t temperature_apart_10um; /* temperatures; 0 = 1000 (1 cm) */
} firn_compare_options;

/* Compares `other` with `reference`; *comparison receives the bytes of a PitComparison
   (schemas/comparison.fbs, file extension .firncomparison), owned by the caller. Layers pair where they
   overlap in depth, or lie within layer_apart_10um with grains of one class, without crossings; those without
   a partner are listed, and those whose depth cannot be told are listed as not comparable. Depths that count
   from elsewhere or along another line are never mixed. `options` may be NULL. Thread rule of the context.
   Errors: those of firn_pit_verify for either pit; FIRN_BAD_ARGUMENT for an option out of range;
   FIRN_TOO_LARGE for more than 1,000,000 layers, tests, fractures or temperatures. Since 0.1. */
FIRN_API firn_status firn_compare(firn_context* context, const uint8_t* reference, size_t reference_size,
                                  const uint8_t* other, size_t other_size,
                                  const firn_compare_options* options, firn_buffer* comparison,
                                  firn_error* error);

/* The comparison as English text: both pits side by side, the differences under each line. Lines end with a
   newline; the text is the caller's. Errors: those of firn_pit_verify for all three buffers; FIRN_OTHER_PIT
   when the comparison was not made from these very bytes in this order. Since 0.1. */
FIRN_API firn_status firn_comparison_note(firn_context* context, const uint8_t* comparison,
                                          size_t comparison_size, const uint8_t* reference,
                                          size_t reference_size, const uint8_t* other, size_t other_size,
                                          firn_buffer* text, firn_error* error);

#ifdef __cplusplus
}
#endif
#endif /* FIRNBOOK_COMPARE_H */
