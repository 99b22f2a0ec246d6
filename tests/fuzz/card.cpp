// Cards that anybody wrote. The input is a card without its checksum, so that a fuzzer gets beyond it, and
// then the same bytes as a card and as Base45 text as they are.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "exchange/card/card.h"
#include "exchange/card/checksum.h"

namespace {

namespace card = firn::exchange::card;
using firn::recording::Bytes;

// What is read can be written again, and is the same pit. A card of this version is the only one of its pit.
void read(const Bytes& bytes) {
  firn::exchange::Notices notices;
  auto pit = card::read_card(bytes.data(), bytes.size(), notices);
  if (!pit) return;
  const Bytes content = firn::recording::to_bytes(**pit);
  firn::exchange::Notices none;
  auto again = card::write_card(*firnbook::GetPit(content.data()), {}, none);
  if (!again || !none.empty()) std::abort();
  auto back = card::read_card(again->data(), again->size(), none);
  if (!back || firn::recording::to_bytes(**back) != content) std::abort();
  if (notices.empty() && *again != bytes) std::abort();
}

Bytes sealed(const std::uint8_t* data, std::size_t size) {
  Bytes bytes(data, data + size);
  const std::uint32_t crc = card::crc32c(data, size);
  for (int shift = 24; shift >= 0; shift -= 8) bytes.push_back(static_cast<std::uint8_t>(crc >> shift));
  return bytes;
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  read(sealed(data, size));
  read(Bytes(data, data + size));
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  auto bytes = card::from_base45(text);
  if (bytes && card::to_base45(*bytes) != text) std::abort();
  if (bytes) read(*bytes);
  return 0;
}
