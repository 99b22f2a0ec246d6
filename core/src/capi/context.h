// What a context holds: the host's allocator and log, the limits, and working space that is reused from call
// to call.
#pragma once

#include <cstddef>
#include <new>
#include <string>
#include <utility>
#include <vector>

#include "firnbook/buffer.h"
#include "firnbook/context.h"
#include "interpretation/interpret.h"
#include "pit/verify.h"
#include "pit/view.h"
#include "support/log.h"

namespace firn::capi {

// Limits of the context, with the defaults filled in.
struct Limits {
  pit::Limits pit, report, edit;
  std::size_t max_notes_bytes = 0;
};

struct Workspace {
  pit::AlignedBytes pit_bytes, report_bytes;
  pit::View view;
  interpretation::Analysis analysis;
  flatbuffers::FlatBufferBuilder builder{1024};
  std::string text, more_text;
  std::vector<firnbook::Place> lost;
};

// Memory of the host: for handles and returned buffers.
class HostMemory {
 public:
  explicit HostMemory(const firn_allocator& host) noexcept : host_(host) {}

  // Null when the host has no more. Never throws, even when the host's function does.
  void* allocate(std::size_t size) const noexcept;
  void release(void* memory) const noexcept;

  // A handle in the host's memory; throws std::bad_alloc.
  template <class T, class... Arguments>
  T* make(Arguments&&... arguments) const {
    void* memory = allocate(sizeof(T));
    if (memory == nullptr) throw std::bad_alloc();
    try {
      return new (memory) T(std::forward<Arguments>(arguments)...);
    } catch (...) {
      release(memory);
      throw;
    }
  }
  template <class T>
  void destroy(T* handle) const noexcept {
    if (handle == nullptr) return;
    handle->~T();
    release(handle);
  }

 private:
  firn_allocator host_;
};

}  // namespace firn::capi

struct firn_context {
  explicit firn_context(const firn::capi::HostMemory& host) noexcept : memory(host) {}

  // After an exception: the builder may have stopped half way and must not be used as it is.
  void recover() noexcept { work.builder.Reset(); }

  firn::capi::HostMemory memory;
  firn::Log log;
  firn::capi::Limits limits;
  firn::capi::Workspace work;
};
