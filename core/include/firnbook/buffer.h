/* Bytes and text that a call returns. Since 0.1. */
#ifndef FIRNBOOK_BUFFER_H
#define FIRNBOOK_BUFFER_H

#include <stddef.h>
#include <stdint.h>

#include "firnbook/context.h"
#include "firnbook/export.h"

#ifdef __cplusplus
extern "C" {
#endif

/* Memory from the context's allocator, owned by the caller, who gives it to firn_buffer_free of the same
   context. After a call that answered FIRN_OK, `data` is not NULL, also when `size` is 0, and one NUL that
   `size` does not count follows the bytes, so that text can be printed as it is. Frozen layout. Since 0.1. */
typedef struct firn_buffer {
  uint8_t* data;
  size_t size; /* bytes */
} firn_buffer;

/* Frees the memory and empties *buffer. NULL, or a buffer whose data is NULL, is fine. Thread rule of the
   context. Never fails. Since 0.1. */
FIRN_API void firn_buffer_free(firn_context* context, firn_buffer* buffer);

#ifdef __cplusplus
}
#endif
#endif /* FIRNBOOK_BUFFER_H */
