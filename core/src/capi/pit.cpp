#include "firnbook/pit.h"

#include "capi/inputs.h"

using namespace firn::capi;

firn_status firn_pit_verify(firn_context* context, const uint8_t* pit, size_t size, firn_error* error) {
  return guard({context, error, __func__}, [&]() -> firn::Done {
    const firn::Result<const firnbook::Pit*> read = read_pit(*context, pit, size);
    if (!read) return read.failure();
    return firn::done();
  });
}

firn_status firn_pit_is_newer(firn_context* context, const uint8_t* pit, size_t size, int* newer,
                              firn_error* error) {
  return guard({context, error, __func__}, [&]() -> firn::Done {
    if (newer == nullptr) return null_argument("newer");
    *newer = 0;
    const firn::Result<const firnbook::Pit*> read = read_pit(*context, pit, size);
    if (!read) return read.failure();
    *newer = (*read)->schema_minor() > firn::pit::kSchemaMinor ? 1 : 0;
    return firn::done();
  });
}
