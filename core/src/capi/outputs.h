// Buffers for the caller, made all or none: what is staged is freed again unless it is published.
#pragma once

#include <cstddef>
#include <cstring>
#include <string_view>

#include "capi/context.h"

namespace firn::capi {

class Staged {
 public:
  // `out` may be null: then nobody wants it and nothing is made.
  Staged(firn_context& context, firn_buffer* out) : context_(context), out_(out) {}
  ~Staged() { context_.memory.release(memory_); }
  Staged(const Staged&) = delete;
  Staged& operator=(const Staged&) = delete;

  void fill(const void* bytes, std::size_t size) {
    if (out_ == nullptr) return;
    memory_ = static_cast<std::uint8_t*>(context_.memory.allocate(size + 1));
    if (memory_ == nullptr) throw std::bad_alloc();
    if (size != 0) std::memcpy(memory_, bytes, size);
    memory_[size] = 0;
    size_ = size;
  }
  void fill(std::string_view text) { fill(text.data(), text.size()); }

  void publish() noexcept {
    if (out_ != nullptr) *out_ = {memory_, size_};
    memory_ = nullptr;
  }

 private:
  firn_context& context_;
  firn_buffer* out_;
  std::uint8_t* memory_ = nullptr;
  std::size_t size_ = 0;
};

// One output, staged and published at once.
inline void give(firn_context& context, firn_buffer* out, const void* bytes, std::size_t size) {
  Staged staged(context, out);
  staged.fill(bytes, size);
  staged.publish();
}
inline void give(firn_context& context, firn_buffer* out, std::string_view text) {
  give(context, out, text.data(), text.size());
}

}  // namespace firn::capi
