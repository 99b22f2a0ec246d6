/* Bytes of a pit (schemas/pit.fbs, file extension .firn). Since 0.1. */
#ifndef FIRNBOOK_PIT_H
#define FIRNBOOK_PIT_H

#include <stddef.h>
#include <stdint.h>

#include "firnbook/context.h"
#include "firnbook/export.h"

#ifdef __cplusplus
extern "C" {
#endif

/* Are these the bytes of a pit, whole and within the context's limits? FIRN_OK says that they can be read,
   not that what they say makes sense: firn_check tells that. Every other call verifies by itself.
   Errors: FIRN_TOO_SMALL, FIRN_TOO_LARGE, FIRN_WRONG_KIND, FIRN_DAMAGED. Since 0.1. */
FIRN_API firn_status firn_pit_verify(firn_context* context, const uint8_t* pit, size_t size,
                                     firn_error* error);

/* *newer becomes 1 when the pit was written by a newer minor version of the schema: it can be read, checked
   and drawn as far as it is known, and is not to be edited; else 0. Errors as firn_pit_verify. Since 0.1. */
FIRN_API firn_status firn_pit_is_newer(firn_context* context, const uint8_t* pit, size_t size, int* newer,
                                       firn_error* error);

#ifdef __cplusplus
}
#endif
#endif /* FIRNBOOK_PIT_H */
