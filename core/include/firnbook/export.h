/* Which symbols the library shows, and two small helpers every header uses. Since 0.1. */
#ifndef FIRNBOOK_EXPORT_H
#define FIRNBOOK_EXPORT_H

#include <stdint.h>

/* FIRN_BUILDING is set while the library itself is compiled, FIRN_STATIC by those who link its objects
   into their own program. Everybody else needs neither. */
#if defined(_WIN32)
#if defined(FIRN_BUILDING)
#define FIRN_API __declspec(dllexport)
#elif defined(FIRN_STATIC)
#define FIRN_API
#else
#define FIRN_API __declspec(dllimport)
#endif
#elif defined(FIRN_BUILDING)
#define FIRN_API __attribute__((visibility("default")))
#else
#define FIRN_API
#endif

/* An empty struct of this API with its struct_size filled in: firn_layer layer = FIRN_INIT(firn_layer);
   Every struct whose first field is struct_size starts like this. Since 0.1. */
#ifdef __cplusplus
#define FIRN_INIT(type)               \
  ([] {                               \
    type value = {};                  \
    value.struct_size = sizeof(type); \
    return value;                     \
  }())
#else
#define FIRN_INIT(type) ((type){.struct_size = sizeof(type)})
#endif

/* The mask bit of a field: layer.present = FIRN_BIT(FIRN_FIELD_LAYER_TOP) | ...; Since 0.1. */
#define FIRN_BIT(field) (UINT64_C(1) << (field))

#endif /* FIRNBOOK_EXPORT_H */
