#include "capi/guard.h"

#include "capi/structs.h"
#include "support/fixed_text.h"
#include "support/place.h"

namespace firn::capi {
namespace {

firn_log_level level_of(firn_status status) {
  return status >= FIRN_OUT_OF_MEMORY ? FIRN_LOG_ERROR : FIRN_LOG_WARNING;
}

void tell(const Call& call, firn_status status, std::string_view what, std::string_view remedy,
          std::string_view path, std::uint32_t line, std::uint32_t column) noexcept {
  if (call.context != nullptr) call.context->log.write(level_of(status), call.name, what);
  if (call.error == nullptr) return;
  call.error->status = static_cast<std::uint32_t>(status);
  call.error->line = line;
  call.error->column = column;
  copy_text(call.error->path, sizeof call.error->path, path);
  copy_text(call.error->what, sizeof call.error->what, what);
  copy_text(call.error->remedy, sizeof call.error->remedy, remedy);
}

}  // namespace

bool error_is_usable(const firn_error* error) noexcept {
  return error == nullptr || error->struct_size >= FIRN_FIRST_VERSION(firn_error, remedy);
}

void clear_error(firn_error* error) noexcept {
  if (error == nullptr) return;
  error->status = FIRN_OK;
  error->line = 0;
  error->column = 0;
  error->path[0] = '\0';
  error->what[0] = '\0';
  error->remedy[0] = '\0';
}

firn_status refuse(const Call& call, firn_status status, const char* what, const char* remedy) noexcept {
  tell(call, status, what, remedy, {}, 0, 0);
  return status;
}

firn_status refuse(const Call& call, const Failure& failure) {
  const bool somewhere =
      failure.place.thing() != firnbook::Thing::pit || failure.place.field() != kWholeThing;
  std::string path = failure.path;
  if (path.empty() && somewhere) path = path_of(failure.place);
  tell(call, failure.status, failure.what, failure.remedy, path, failure.line, failure.column);
  return failure.status;
}

firn_status run_body(const Call& call, Done (*body)(void*), void* data) noexcept {
  if (!error_is_usable(call.error)) return FIRN_BAD_STRUCT_SIZE;
  try {
    const Done answer = body(data);
    if (!answer) return refuse(call, answer.failure());
    clear_error(call.error);
    if (call.context != nullptr) call.context->log.write(FIRN_LOG_DEBUG, call.name, "done");
    return FIRN_OK;
  } catch (const std::bad_alloc&) {
    if (call.context != nullptr) call.context->recover();
    return refuse(call, FIRN_OUT_OF_MEMORY, "out of memory",
                  "free memory, or lower the limits of the context, and call again");
  } catch (...) {
    if (call.context != nullptr) call.context->recover();
    return refuse(call, FIRN_INTERNAL, "the library failed: this is a defect of it",
                  "report it with the input that led to it");
  }
}

firn_status guard_body(const Call& call, Done (*body)(void*), void* data) noexcept {
  if (call.context != nullptr) return run_body(call, body, data);
  if (!error_is_usable(call.error)) return FIRN_BAD_STRUCT_SIZE;
  return refuse(call, FIRN_NULL_ARGUMENT, "the context, report or recorder is NULL",
                "make one first and check its status");
}

Done check_struct_size(std::uint32_t given, std::size_t first_version, const char* name) {
  if (given >= first_version) return done();
  return failure_of(FIRN_BAD_STRUCT_SIZE, std::string("struct_size of ") + name + " is too small",
                    std::string("set it, for example with FIRN_INIT(") + name + ")");
}

Failure null_argument(const char* name) {
  return failure_of(FIRN_NULL_ARGUMENT, std::string(name) + " is NULL", "give a pointer to it");
}

}  // namespace firn::capi
