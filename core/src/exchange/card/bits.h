// Bits on their way to or from a card, the most significant of each byte first. One stream for both ways:
// each call writes what it is given, or answers what stands there, so that the writer and the reader of a
// card are the same code and cannot disagree.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

namespace firn::exchange::card {

class Bits {
 public:
  // More than `most_bytes` is a failure.
  static Bits writing(std::size_t most_bytes);
  static Bits reading(const std::uint8_t* bytes, std::size_t size);

  bool is_reading() const { return is_reading_; }
  // What is read after a failure is 0, and what is written is nothing.
  bool failed() const { return failed_; }
  void fail() { failed_ = true; }

  // The lowest `width` bits, 64 at most.
  std::uint64_t fixed(std::uint64_t value, unsigned width);
  bool flag(bool value) { return fixed(value ? 1 : 0, 1) != 0; }
  // Exponential Golomb code: small numbers take few bits, and every number has exactly one code. What is cut
  // off (value >> order) counts from 1, as many zeros as that has bits after its first, then itself, then the
  // `order` bits that were cut off. An order of 0 is for numbers below 2^63.
  std::uint64_t golomb(std::uint64_t value, unsigned order);
  // Signed numbers as 0, -1, 1, -2, 2 ...; the order is 1 or more.
  std::int64_t signed_golomb(std::int64_t value, unsigned order);

  // Writing: zeros up to the next whole byte. Reading: that nothing but these stands there.
  void end();
  std::vector<std::uint8_t>& bytes() { return bytes_; }
  std::size_t position() const { return position_; }
  std::size_t left() const { return size_ - position_; }
  void skip(std::uint64_t bits);

 private:
  void write(std::uint64_t value, unsigned width);
  std::uint64_t read(unsigned width);
  std::uint64_t read_golomb(unsigned order);

  const std::uint8_t* in_ = nullptr;
  std::size_t size_ = 0;      // in bits; when writing, the most
  std::size_t position_ = 0;  // in bits
  std::vector<std::uint8_t> bytes_;
  bool is_reading_ = false;
  bool failed_ = false;
};

}  // namespace firn::exchange::card
