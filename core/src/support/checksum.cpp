#include "support/checksum.h"

#include <array>

#include "support/checksum_folded.h"

namespace firn {
namespace {

constexpr std::uint32_t kPolynomial = 0xEDB88320u;
// Eight tables take eight bytes at a time, which a report needs for every pit; one is 7 KB smaller.
#ifdef FIRNBOOK_SMALL
constexpr std::size_t kSlices = 1;
#else
constexpr std::size_t kSlices = 8;
#endif

using Tables = std::array<std::array<std::uint32_t, 256>, kSlices>;

constexpr Tables make_tables() {
  Tables tables{};
  for (std::uint32_t i = 0; i < 256; ++i) {
    std::uint32_t value = i;
    for (int bit = 0; bit < 8; ++bit) value = (value >> 1) ^ ((value & 1u) ? kPolynomial : 0u);
    tables[0][i] = value;
  }
  for (std::size_t slice = 1; slice < kSlices; ++slice) {
    for (std::size_t i = 0; i < 256; ++i) {
      const std::uint32_t previous = tables[slice - 1][i];
      tables[slice][i] = (previous >> 8) ^ tables[0][previous & 0xFFu];
    }
  }
  return tables;
}

constexpr Tables kTables = make_tables();

#ifndef FIRNBOOK_SMALL
// Byte by byte, so that the answer does not depend on the machine's byte order.
std::uint32_t load(const std::uint8_t* p) {
  return std::uint32_t{p[0]} | std::uint32_t{p[1]} << 8 | std::uint32_t{p[2]} << 16 |
         std::uint32_t{p[3]} << 24;
}
#endif

}  // namespace

std::uint32_t crc32(const std::uint8_t* bytes, std::size_t size) {
  std::uint32_t crc = 0xFFFFFFFFu;
#ifdef FIRN_CRC32_FOLDED
  if (size >= kFoldedAtLeast && can_fold()) {
    const std::size_t whole = size & ~std::size_t{15};
    crc = crc32_folded(crc, bytes, whole);
    bytes += whole;
    size -= whole;
  }
#endif
#ifndef FIRNBOOK_SMALL
  while (size >= kSlices) {
    const std::uint32_t low = crc ^ load(bytes);
    const std::uint32_t high = load(bytes + 4);
    crc = kTables[7][low & 0xFFu] ^ kTables[6][(low >> 8) & 0xFFu] ^ kTables[5][(low >> 16) & 0xFFu] ^
          kTables[4][low >> 24] ^ kTables[3][high & 0xFFu] ^ kTables[2][(high >> 8) & 0xFFu] ^
          kTables[1][(high >> 16) & 0xFFu] ^ kTables[0][high >> 24];
    bytes += kSlices;
    size -= kSlices;
  }
#endif
  while (size-- > 0) crc = (crc >> 8) ^ kTables[0][(crc ^ *bytes++) & 0xFFu];
  return ~crc;
}

}  // namespace firn
