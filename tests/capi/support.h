// What the tests of the C API share: a context that counts its memory, owned buffers, files.
#pragma once

#include <gtest/gtest.h>

#include <cstdlib>
#include <fstream>
#include <iterator>
#include <string>
#include <utility>
#include <vector>

#include "firnbook/firnbook.h"

namespace capi {

inline std::string read_file(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  EXPECT_TRUE(file) << "cannot read " << path;
  return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

inline std::string demo_notes(const std::string& name) {
  return read_file(std::string(FIRN_TEST_DATA) + "/" + name + ".txt");
}

inline const std::vector<std::string>& demos() {
  static const std::vector<std::string> names = {"larch-bowl-entry", "tarn-shoulder"};
  return names;
}

// Counts what the library takes and gives back, and can refuse the nth request.
struct Heap {
  long live = 0;
  long requests = 0;
  long refuse_at = 0;  // 0 = never

  static void* alloc(void* user, std::size_t size) {
    Heap& heap = *static_cast<Heap*>(user);
    if (++heap.requests == heap.refuse_at) return nullptr;
    void* memory = std::malloc(size);
    if (memory != nullptr) ++heap.live;
    return memory;
  }
  static void release(void* user, void* memory) {
    EXPECT_NE(memory, nullptr) << "the library gave back NULL";
    --static_cast<Heap*>(user)->live;
    std::free(memory);
  }
  firn_allocator hooks() { return {alloc, release, this}; }
};

// A context on a Heap of its own; all memory must be back when it goes.
class Context {
 public:
  Context() : Context(FIRN_INIT(firn_context_options)) {}
  explicit Context(firn_context_options options) {
    options.allocator = heap.hooks();
    EXPECT_EQ(firn_context_create(&options, &context_, nullptr), FIRN_OK);
  }
  ~Context() {
    firn_context_destroy(context_);
    EXPECT_EQ(heap.live, 0) << "memory of the host was not given back";
  }
  Context(const Context&) = delete;
  Context& operator=(const Context&) = delete;

  operator firn_context*() const { return context_; }

  Heap heap;

 private:
  firn_context* context_ = nullptr;
};

// A returned buffer and its owner.
class Buffer {
 public:
  explicit Buffer(firn_context* context) : context_(context) {}
  ~Buffer() { firn_buffer_free(context_, &raw_); }
  Buffer(const Buffer&) = delete;
  Buffer& operator=(const Buffer&) = delete;

  firn_buffer* out() {
    firn_buffer_free(context_, &raw_);
    return &raw_;
  }
  const std::uint8_t* data() const { return raw_.data; }
  std::size_t size() const { return raw_.size; }
  std::string text() const { return {reinterpret_cast<const char*>(raw_.data), raw_.size}; }

 private:
  firn_context* context_;
  firn_buffer raw_ = {nullptr, 0};
};

inline std::string pit_of(firn_context* context, const std::string& notes) {
  Buffer pit(context);
  firn_error error = FIRN_INIT(firn_error);
  EXPECT_EQ(firn_notes_read(context, notes.data(), notes.size(), nullptr, pit.out(), nullptr, &error),
            FIRN_OK)
      << error.line << ":" << error.column << " " << error.what << "; " << error.remedy;
  return pit.text();
}

inline const std::uint8_t* bytes_of(const std::string& text) {
  return reinterpret_cast<const std::uint8_t*>(text.data());
}

inline std::string report_of(firn_context* context, const std::string& pit) {
  Buffer report(context);
  EXPECT_EQ(firn_interpret(context, bytes_of(pit), pit.size(), nullptr, report.out(), nullptr), FIRN_OK);
  return report.text();
}

}  // namespace capi
