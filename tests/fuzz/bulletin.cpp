// Bulletins that anybody wrote, in the open JSON: bytes that verify, or a failure that says what is wrong.
#include <cstddef>
#include <cstdint>
#include <cstdlib>

#include "bulletin/bulletin.h"
#include "records.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  flatbuffers::FlatBufferBuilder builder;
  firn::bulletin::Messages messages;
  auto read = firn::bulletin::read_json({reinterpret_cast<const char*>(data), size}, builder, messages);
  if (!read) {
    if (read.failure().what.empty() || read.failure().remedy.empty()) std::abort();
    return 0;
  }
  const std::uint8_t* bytes = builder.GetBufferPointer();
  if (!firn::fuzz::is_whole(firn::exchange::Root::bulletins, {bytes, bytes + builder.GetSize()}))
    std::abort();
  return 0;
}
