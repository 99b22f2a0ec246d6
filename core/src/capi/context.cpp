#include "capi/context.h"

#include <algorithm>
#include <cstdlib>

#include "capi/guard.h"
#include "capi/structs.h"

namespace firn::capi {
namespace {

constexpr std::size_t kMebibyte = std::size_t{1} << 20;
// Offsets of a buffer are 32 bits wide, and the buffer's own limit is 2 GiB. What is made from notes or from
// an edit is larger than they are, so these may not be as large by far.
constexpr std::size_t kMostBytes = 1024 * kMebibyte;
constexpr std::size_t kMostTextBytes = 32 * kMebibyte;

void* allocate_by_default(void*, std::size_t size) {
  return std::malloc(size);
}
void release_by_default(void*, void* memory) {
  std::free(memory);
}

std::size_t limit_of(std::size_t given, std::size_t by_default, std::size_t most) {
  return std::min(given == 0 ? by_default : given, most);
}

Limits limits_of(const firn_context_options& options) {
  Limits limits;
  limits.pit.max_bytes = limit_of(options.max_pit_bytes, 16 * kMebibyte, kMostBytes);
  limits.report.max_bytes = limit_of(options.max_report_bytes, 64 * kMebibyte, kMostBytes);
  limits.edit.max_bytes = limit_of(options.max_edit_bytes, 16 * kMebibyte, kMostTextBytes);
  limits.max_notes_bytes = limit_of(options.max_notes_bytes, 16 * kMebibyte, kMostTextBytes);
  return limits;
}

Done create(const firn_context_options* given, firn_context** context) {
  Result<firn_context_options> options =
      read_options(given, FIRN_FIRST_VERSION(firn_context_options, max_edit_bytes), "firn_context_options");
  if (!options) return options.failure();
  firn_allocator host = options->allocator;
  if ((host.alloc == nullptr) != (host.release == nullptr)) {
    return failure_of(FIRN_BAD_ARGUMENT, "the allocator has only one of alloc and release",
                      "give both, or neither");
  }
  if (options->log_level > FIRN_LOG_DEBUG) {
    return failure_of(FIRN_BAD_ARGUMENT, "log_level is none of firn_log_level", "give one of 0 to 4");
  }
  if (host.alloc == nullptr) host = {allocate_by_default, release_by_default, nullptr};
  const HostMemory memory(host);
  firn_context* made = memory.make<firn_context>(memory);
  try {
    const auto level =
        options->log_level == 0 ? FIRN_LOG_WARNING : static_cast<firn_log_level>(options->log_level);
    made->limits = limits_of(*options);
    made->log.open({options->log, options->log_user, level});
  } catch (...) {
    memory.destroy(made);
    throw;
  }
  *context = made;
  return done();
}

}  // namespace

void* HostMemory::allocate(std::size_t size) const noexcept {
  try {
    return host_.alloc(host_.user, size);
  } catch (...) {
    return nullptr;
  }
}

void HostMemory::release(void* memory) const noexcept {
  if (memory == nullptr) return;
  try {
    host_.release(host_.user, memory);
  } catch (...) {
  }
}

}  // namespace firn::capi

using namespace firn::capi;

firn_status firn_context_create(const firn_context_options* options, firn_context** context,
                                firn_error* error) {
  return run(Call(nullptr, error, __func__).emptying(context), [&]() -> firn::Done {
    if (context == nullptr) return null_argument("context");
    return create(options, context);
  });
}

void firn_context_destroy(firn_context* context) {
  give_back([&] {
    if (context == nullptr) return;
    // The context lies in this memory, which must outlive it.
    const HostMemory memory = context->memory;
    memory.destroy(context);
  });
}

void firn_buffer_free(firn_context* context, firn_buffer* buffer) {
  give_back([&] {
    if (context == nullptr || buffer == nullptr) return;
    context->memory.release(buffer->data);
    *buffer = {nullptr, 0};
  });
}
