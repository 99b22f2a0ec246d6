// The one wall between C++ and C. Every exported function that does anything begins with it: nothing thrown
// gets past, NULLs are answered before anything can throw, and telling a failure never fails.
#pragma once

#include <initializer_list>
#include <string>

#include "capi/context.h"
#include "firnbook/buffer.h"
#include "firnbook/context.h"
#include "support/result.h"

namespace firn::capi {

using firn::failure_of;

// What a call came with. Making one empties the outputs, so that a call that fails leaves nothing behind.
struct Call {
  Call(firn_context* the_context, firn_error* the_error, const char* the_name,
       std::initializer_list<firn_buffer*> outputs = {}) noexcept
      : context(the_context), error(the_error), name(the_name) {
    for (firn_buffer* output : outputs) {
      if (output != nullptr) *output = {nullptr, 0};
    }
  }

  template <class Handle>
  Call& emptying(Handle** output) noexcept {
    if (output != nullptr) *output = nullptr;
    return *this;
  }

  firn_context* context;
  firn_error* error;
  const char* name;  // of the function, for the log
};

// Tells the caller and the log. Neither allocates.
bool error_is_usable(const firn_error* error) noexcept;
void clear_error(firn_error* error) noexcept;
firn_status refuse(const Call& call, firn_status status, const char* what, const char* remedy) noexcept;
// Prints the path of the failure's place, so this one may throw.
firn_status refuse(const Call& call, const Failure& failure);

// One copy of the wall for all functions; the templates only carry the lambda to it.
firn_status run_body(const Call& call, Done (*body)(void*), void* data) noexcept;
firn_status guard_body(const Call& call, Done (*body)(void*), void* data) noexcept;

template <class Body>
Done call_body(void* data) {
  return (*static_cast<Body*>(data))();
}

template <class Body>
firn_status run(const Call& call, Body&& body) noexcept {
  return run_body(call, call_body<Body>, &body);
}

// For every function that works in a context.
template <class Body>
firn_status guard(const Call& call, Body&& body) noexcept {
  return guard_body(call, call_body<Body>, &body);
}

// For functions that answer nothing: they only give back.
template <class Body>
void give_back(Body&& body) noexcept {
  body();
}

Failure null_argument(const char* name);

// Options and other structs of the caller: the struct_size is compared with the frozen first version, never
// with today's size, so that programs built against older headers go on working.
Done check_struct_size(std::uint32_t given, std::size_t first_version, const char* name);

}  // namespace firn::capi
