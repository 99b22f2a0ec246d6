// Structs of the caller, in and out. First versions are frozen: the size is that of the last field of
// version 0.1, and stays that when fields are appended.
#pragma once

#include <algorithm>
#include <cstddef>
#include <cstring>

#include "capi/guard.h"

namespace firn::capi {

// The size of a struct up to and with its last field of the first version.
#define FIRN_FIRST_VERSION(type, last) (offsetof(type, last) + sizeof(type::last))

// What the caller gave, over the defaults. `given` may be null: then these are the defaults.
template <class T>
Result<T> read_options(const T* given, std::size_t first_version, const char* name) {
  T options = {};
  options.struct_size = sizeof(T);
  if (given == nullptr) return options;
  Done size = check_struct_size(given->struct_size, first_version, name);
  if (!size) return size.failure();
  std::memcpy(&options, given, std::min<std::size_t>(given->struct_size, sizeof(T)));
  return options;
}

// A struct to be filled: as much of it as the caller has room for, struct_size kept.
template <class T>
Done write_struct(T* out, T value, std::size_t first_version, const char* name) {
  if (out == nullptr) return null_argument(name);
  Done size = check_struct_size(out->struct_size, first_version, name);
  if (!size) return size;
  value.struct_size = out->struct_size;
  std::memcpy(out, &value, std::min<std::size_t>(out->struct_size, sizeof(T)));
  return done();
}

}  // namespace firn::capi
