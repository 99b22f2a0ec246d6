// CRC-32C (Castagnoli; as in RFC 3720 and RFC 9260), bit by bit: cards are short.
#pragma once

#include <cstddef>
#include <cstdint>

namespace firn::exchange::card {

inline constexpr std::size_t kChecksumSize = 4;

constexpr std::uint32_t crc32c(const std::uint8_t* bytes, std::size_t size) {
  constexpr std::uint32_t kPolynomial = 0x82f63b78;  // 0x1edc6f41 with its bits reversed
  std::uint32_t crc = 0xffffffff;
  for (std::size_t i = 0; i < size; ++i) {
    crc ^= bytes[i];
    for (int bit = 0; bit < 8; ++bit) crc = crc >> 1 ^ ((crc & 1) != 0 ? kPolynomial : 0);
  }
  return ~crc;
}

}  // namespace firn::exchange::card
