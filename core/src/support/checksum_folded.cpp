#include "support/checksum_folded.h"

#ifdef FIRN_CRC32_FOLDED

#include <immintrin.h>

namespace firn {
namespace {

// The polynomial without its leading bit, most significant bit first.
constexpr std::uint32_t kPolynomial = 0x04C11DB7u;

constexpr std::uint64_t reflected(std::uint64_t value, int bits) {
  std::uint64_t out = 0;
  for (int i = 0; i < bits; ++i) out |= (value >> i & 1u) << (bits - 1 - i);
  return out;
}

// x to the nth modulo the polynomial, as the reflected product wants it: one bit further up.
constexpr long long power(int n) {
  std::uint32_t remainder = 1;
  for (int i = 0; i < n; ++i) remainder = remainder << 1 ^ ((remainder >> 31) != 0 ? kPolynomial : 0u);
  return static_cast<long long>(reflected(remainder, 32) << 1);
}

// x to the 64th divided by the polynomial, for Barrett's reduction: 33 bits.
constexpr long long quotient() {
  std::uint64_t out = 0;
  std::uint64_t remainder = std::uint64_t{1} << 32;
  for (int i = 0; i <= 32; ++i) {
    out <<= 1;
    if ((remainder >> 32 & 1u) != 0) {
      out |= 1u;
      remainder ^= std::uint64_t{1} << 32 | kPolynomial;
    }
    remainder <<= 1;
  }
  return static_cast<long long>(reflected(out, 33));
}
constexpr long long kQuotient = quotient();
constexpr long long kOn64 = power(64);
constexpr long long kOn128[] = {power(160), power(96)};
constexpr long long kOn512[] = {power(544), power(480)};
constexpr long long kWholePolynomial =
    static_cast<long long>(reflected(std::uint64_t{1} << 32 | kPolynomial, 33));

#define FIRN_FOLDING __attribute__((target("pclmul,sse4.1")))

FIRN_FOLDING __m128i load(const std::uint8_t* bytes) {
  return _mm_loadu_si128(reinterpret_cast<const __m128i*>(bytes));
}

// Moves `sum` on by as many bits as `by` stands for, and adds what lies there.
FIRN_FOLDING __m128i fold(__m128i sum, __m128i by, __m128i there) {
  const __m128i low = _mm_clmulepi64_si128(sum, by, 0x00);
  const __m128i high = _mm_clmulepi64_si128(sum, by, 0x11);
  return _mm_xor_si128(_mm_xor_si128(low, high), there);
}

FIRN_FOLDING std::uint32_t reduce(__m128i sum) {
  const __m128i low_half = _mm_set_epi32(0, ~0, 0, ~0);
  const __m128i by_128 = _mm_set_epi64x(kOn128[1], kOn128[0]);
  sum = _mm_xor_si128(_mm_srli_si128(sum, 8), _mm_clmulepi64_si128(sum, by_128, 0x10));
  const __m128i by_64 = _mm_set_epi64x(0, kOn64);
  sum =
      _mm_xor_si128(_mm_srli_si128(sum, 4), _mm_clmulepi64_si128(_mm_and_si128(sum, low_half), by_64, 0x00));
  const __m128i barrett = _mm_set_epi64x(kQuotient, kWholePolynomial);
  __m128i excess = _mm_clmulepi64_si128(_mm_and_si128(sum, low_half), barrett, 0x10);
  excess = _mm_clmulepi64_si128(_mm_and_si128(excess, low_half), barrett, 0x00);
  return static_cast<std::uint32_t>(_mm_extract_epi32(_mm_xor_si128(sum, excess), 1));
}

}  // namespace

bool can_fold() {
  return __builtin_cpu_supports("pclmul") != 0 && __builtin_cpu_supports("sse4.1") != 0;
}

FIRN_FOLDING std::uint32_t crc32_folded(std::uint32_t crc, const std::uint8_t* bytes, std::size_t size) {
  const __m128i by_512 = _mm_set_epi64x(kOn512[1], kOn512[0]);
  const __m128i by_128 = _mm_set_epi64x(kOn128[1], kOn128[0]);
  __m128i sums[4] = {load(bytes), load(bytes + 16), load(bytes + 32), load(bytes + 48)};
  sums[0] = _mm_xor_si128(sums[0], _mm_cvtsi32_si128(static_cast<int>(crc)));
  std::size_t at = 64;
  for (; size - at >= 64; at += 64) {
    for (std::size_t i = 0; i < 4; ++i) sums[i] = fold(sums[i], by_512, load(bytes + at + 16 * i));
  }
  __m128i sum = sums[0];
  for (std::size_t i = 1; i < 4; ++i) sum = fold(sum, by_128, sums[i]);
  for (; at < size; at += 16) sum = fold(sum, by_128, load(bytes + at));
  return reduce(sum);
}

}  // namespace firn

#endif
