#include "support/checksum.h"

#include <gtest/gtest.h>

#include <string_view>
#include <vector>

namespace firn {
namespace {

std::uint32_t crc32_of(std::string_view text) {
  return crc32(reinterpret_cast<const std::uint8_t*>(text.data()), text.size());
}

// The check value that every description of this CRC gives (from memory).
TEST(Crc32, PublishedCheckValue) {
  EXPECT_EQ(crc32_of("123456789"), 0xCBF43926u);
}

TEST(Crc32, NothingAtAll) {
  EXPECT_EQ(crc32(nullptr, 0), 0u);
}

std::uint32_t one_bit_at_a_time(const std::vector<std::uint8_t>& bytes) {
  std::uint32_t crc = 0xFFFFFFFFu;
  for (const std::uint8_t byte : bytes) {
    for (unsigned bit = 0; bit < 8; ++bit) {
      const bool carry = ((crc ^ (static_cast<unsigned>(byte) >> bit)) & 1u) != 0;
      crc = (crc >> 1) ^ (carry ? 0xEDB88320u : 0u);
    }
  }
  return ~crc;
}

// Sixty-four, sixteen and eight bytes at a step and the rest one by one must agree with the definition, at
// every length and start.
TEST(Crc32, AgreesWithTheDefinitionAtEveryLength) {
  std::vector<std::uint8_t> bytes;
  std::uint32_t value = 1;
  for (int i = 0; i < 700; ++i) {
    EXPECT_EQ(crc32(bytes.data(), bytes.size()), one_bit_at_a_time(bytes)) << bytes.size();
    value = value * 1664525u + 1013904223u;
    bytes.push_back(static_cast<std::uint8_t>(value >> 24));
  }
  for (std::size_t start = 1; start < 9; ++start) {
    const std::vector<std::uint8_t> tail(bytes.begin() + static_cast<std::ptrdiff_t>(start), bytes.end());
    EXPECT_EQ(crc32(bytes.data() + start, bytes.size() - start), one_bit_at_a_time(tail));
  }
}

TEST(Crc32, TellsEverySingleBitApart) {
  std::vector<std::uint8_t> bytes(40, 0x5A);
  const std::uint32_t whole = crc32(bytes.data(), bytes.size());
  for (std::size_t bit = 0; bit < bytes.size() * 8; ++bit) {
    bytes[bit / 8] = static_cast<std::uint8_t>(bytes[bit / 8] ^ (1u << bit % 8));
    EXPECT_NE(crc32(bytes.data(), bytes.size()), whole);
    bytes[bit / 8] = static_cast<std::uint8_t>(bytes[bit / 8] ^ (1u << bit % 8));
  }
}

}  // namespace
}  // namespace firn
