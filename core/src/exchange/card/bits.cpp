#include "exchange/card/bits.h"

namespace firn::exchange::card {
namespace {

constexpr unsigned kByte = 8;
constexpr unsigned kWidest = 64;

unsigned bits_in(std::uint64_t value) {
  unsigned width = 0;
  for (; value != 0; value >>= 1) ++width;
  return width;
}

std::uint64_t low_bits(std::uint64_t value, unsigned width) {
  return width >= kWidest ? value : value & ((std::uint64_t{1} << width) - 1);
}

}  // namespace

Bits Bits::writing(std::size_t most_bytes) {
  Bits bits;
  bits.size_ = most_bytes * kByte;
  return bits;
}

Bits Bits::reading(const std::uint8_t* bytes, std::size_t size) {
  Bits bits;
  bits.in_ = bytes;
  bits.size_ = size * kByte;
  bits.is_reading_ = true;
  return bits;
}

void Bits::write(std::uint64_t value, unsigned width) {
  if (failed_ || width > size_ - position_) return fail();
  for (unsigned i = width; i-- > 0; ++position_) {
    if (position_ % kByte == 0) bytes_.push_back(0);
    const std::uint64_t bit = value >> i & 1;
    bytes_.back() = static_cast<std::uint8_t>(bytes_.back() | bit << (kByte - 1 - position_ % kByte));
  }
}

std::uint64_t Bits::read(unsigned width) {
  if (failed_ || width > size_ - position_) {
    fail();
    return 0;
  }
  std::uint64_t value = 0;
  for (unsigned i = 0; i < width; ++i, ++position_) {
    const unsigned byte = in_[position_ / kByte];
    value = value << 1 | (byte >> (kByte - 1 - position_ % kByte) & 1);
  }
  return value;
}

std::uint64_t Bits::fixed(std::uint64_t value, unsigned width) {
  if (is_reading_) return read(width);
  write(low_bits(value, width), width);
  return value;
}

std::uint64_t Bits::read_golomb(unsigned order) {
  unsigned zeros = 0;
  while (!failed_ && read(1) == 0) {
    if (++zeros == kWidest) fail();
  }
  if (failed_) return 0;
  const std::uint64_t counted = std::uint64_t{1} << zeros | read(zeros);
  const std::uint64_t high = counted - 1;
  if (order != 0 && high >> (kWidest - order) != 0) fail();
  const std::uint64_t low = read(order);
  return failed_ ? 0 : high << order | low;
}

std::uint64_t Bits::golomb(std::uint64_t value, unsigned order) {
  if (is_reading_) return read_golomb(order);
  const std::uint64_t counted = (value >> order) + 1;
  const unsigned width = bits_in(counted);
  write(0, width - 1);
  write(counted, width);
  write(low_bits(value, order), order);
  return value;
}

std::int64_t Bits::signed_golomb(std::int64_t value, unsigned order) {
  const auto bits = static_cast<std::uint64_t>(value);
  const std::uint64_t folded = golomb(bits << 1 ^ (value < 0 ? ~std::uint64_t{0} : 0), order);
  if (!is_reading_) return value;
  return static_cast<std::int64_t>(folded >> 1 ^ ((folded & 1) != 0 ? ~std::uint64_t{0} : 0));
}

void Bits::end() {
  const auto used = static_cast<unsigned>(position_ % kByte);
  const unsigned left = used == 0 ? 0 : kByte - used;
  if (fixed(0, left) != 0 || (is_reading_ && position_ != size_)) fail();
}

void Bits::skip(std::uint64_t bits) {
  if (failed_ || bits > size_ - position_) return fail();
  position_ += static_cast<std::size_t>(bits);
}

}  // namespace firn::exchange::card
