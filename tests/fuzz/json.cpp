// JSON that anybody wrote. What is read can be written, and reads again as the same text.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>

#include "exchange/json/json.h"
#include "recording/draft.h"
#include "records.h"

namespace {

using firn::exchange::JsonRead;
using firn::exchange::Notices;

std::string written(const JsonRead& read) {
  std::string text;
  Notices notices;
  firn::exchange::write_json(text, read.root, *flatbuffers::GetRoot<flatbuffers::Table>(read.bytes.data()), 1,
                             notices);
  if (!notices.empty()) std::abort();
  return text;
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  Notices notices;
  auto read = firn::exchange::read_json({reinterpret_cast<const char*>(data), size}, {}, notices);
  if (!read) {
    if (read.failure().what.empty() || read.failure().remedy.empty()) std::abort();
    return 0;
  }
  if (!firn::fuzz::is_whole(read->root, read->bytes)) std::abort();
  const std::string text = written(*read);
  auto again = firn::exchange::read_json(text, {}, notices);
  if (!again || written(*again) != text) std::abort();
  return 0;
}
