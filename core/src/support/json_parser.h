// RapidJSON as it is used here: with our memory, over bytes that need not end with a zero. For the two files
// that read JSON; nothing else includes it.
#pragma once

#include <cstddef>
#include <cstring>
#include <new>

// An assertion of the parser means a defect of ours. Debug builds stop there, so that the tests notice;
// others go on, since the parser's own checks stand beside its assertions.
#ifdef NDEBUG
#define RAPIDJSON_ASSERT(condition) static_cast<void>(0)
#else
#define RAPIDJSON_ASSERT(condition) ((condition) ? static_cast<void>(0) : __builtin_trap())
#endif
#include <rapidjson/reader.h>

namespace firn {

// Memory of the parser: running out of it is what it is everywhere else, std::bad_alloc.
class JsonMemory {
 public:
  void* Malloc(std::size_t size) { return size == 0 ? nullptr : ::operator new(size); }
  void* Realloc(void* old, std::size_t old_size, std::size_t size) {
    void* made = Malloc(size);
    if (old != nullptr && made != nullptr) std::memcpy(made, old, old_size < size ? old_size : size);
    Free(old);
    return made;
  }
  static void Free(void* memory) { ::operator delete(memory); }
};

// The text as the parser's stream. A zero byte is the parser's sign for the end.
struct JsonText {
  typedef char Ch;

  char Peek() const { return at == end ? '\0' : *at; }
  char Take() { return at == end ? '\0' : *at++; }
  std::size_t Tell() const { return static_cast<std::size_t>(at - begin); }
  char* PutBegin() { return nullptr; }
  void Put(char) {}
  void Flush() {}
  std::size_t PutEnd(char*) { return 0; }

  const char* begin;
  const char* at;
  const char* end;
};

// What is wrong, as a sentence without its place.
const char* words_of_json_error(rapidjson::ParseErrorCode code, bool at_end);

}  // namespace firn
