// CRC-32 by carry-less multiplication, where the processor has it: sixty-four bytes at a time are folded into
// the next sixty-four, and what is left at the end is reduced once. After Gopal et al. 2009, "Fast CRC
// Computation for Generic Polynomials Using PCLMULQDQ Instruction" (Intel; the method from memory, its
// constants computed here, every length tested against the table).
#pragma once

#include <cstddef>
#include <cstdint>

#if defined(__x86_64__) && !defined(FIRNBOOK_SMALL) && (defined(__GNUC__) || defined(__clang__))
#define FIRN_CRC32_FOLDED 1
#endif

#ifdef FIRN_CRC32_FOLDED
namespace firn {

inline constexpr std::size_t kFoldedAtLeast = 64;

bool can_fold();
// `crc` as it runs, not inverted; `size` is a multiple of 16 and at least kFoldedAtLeast.
std::uint32_t crc32_folded(std::uint32_t crc, const std::uint8_t* bytes, std::size_t size);

}  // namespace firn
#endif
