/* The snow profile as a picture. Since 0.1. */
#ifndef FIRNBOOK_DRAW_H
#define FIRNBOOK_DRAW_H

#include <stddef.h>
#include <stdint.h>

#include "firnbook/buffer.h"
#include "firnbook/context.h"
#include "firnbook/export.h"

#ifdef __cplusplus
extern "C" {
#endif

/* How to draw. FIRN_INIT(firn_draw_options) is the default. Since 0.1. */
typedef struct firn_draw_options {
  uint32_t struct_size; /* sizeof(firn_draw_options) */
  int32_t width_px;     /* 320 to 2000, 0 = 720. The picture scales; this decides how its text wraps */
} firn_draw_options;

/* Draws the profile as SVG: UTF-8, text as text, the same bytes for the same input. `report` may be NULL
   with a size of 0: then the picture holds no band of concern. `options` may be NULL.
   Errors: those of firn_pit_verify for both buffers; FIRN_OTHER_PIT when the report was not made from these
   very bytes; FIRN_BAD_ARGUMENT for a width out of range or a size without a report. Since 0.1. */
FIRN_API firn_status firn_draw_profile(firn_context* context, const uint8_t* pit, size_t pit_size,
                                       const uint8_t* report, size_t report_size,
                                       const firn_draw_options* options, firn_buffer* svg, firn_error* error);

#ifdef __cplusplus
}
#endif
#endif /* FIRNBOOK_DRAW_H */
