#include "support/checksum.h"

#include <array>

namespace firn {
namespace {

constexpr std::uint32_t kPolynomial = 0xEDB88320u;
// One table of 1 KB. Eight of them would be faster and larger; a frame of a journal is some hundred bytes.
using Table = std::array<std::uint32_t, 256>;

constexpr Table make_table() {
  Table table{};
  for (std::uint32_t i = 0; i < 256; ++i) {
    std::uint32_t value = i;
    for (int bit = 0; bit < 8; ++bit) value = (value >> 1) ^ ((value & 1u) ? kPolynomial : 0u);
    table[i] = value;
  }
  return table;
}

constexpr Table kTable = make_table();

}  // namespace

std::uint32_t crc32(const std::uint8_t* bytes, std::size_t size) {
  std::uint32_t crc = 0xFFFFFFFFu;
  while (size-- > 0) crc = (crc >> 8) ^ kTable[(crc ^ *bytes++) & 0xFFu];
  return ~crc;
}

}  // namespace firn
