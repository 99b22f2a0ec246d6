// A pit squeezed for a QR code or a satellite message. README.md describes every bit of it, for readers in
// other languages.
#pragma once

#include <cstddef>
#include <cstdint>
#include <memory>
#include <string>
#include <string_view>

#include "exchange/notices.h"
#include "recording/draft.h"
#include "support/result.h"

namespace firn::exchange::card {

using recording::Bytes;

// Four times what the largest QR code holds; ours.
inline constexpr std::size_t kMostBytes = 16384;

struct CardOptions {
  // What a card cannot hold (dense instrument profiles, data of others, hashes of photos) is left out with a
  // notice each. Otherwise the pit is refused, and the failure names the first of it.
  bool leave_out = false;
};

Result<Bytes> write_card(const firnbook::Pit& pit, const CardOptions& options, Notices& notices);

// Damage is always detected: any change of up to five bits in a card of up to 600 bytes (three in any card),
// any stretch of up to 32 bits, and bytes that are missing. A card of a newer major version is refused with
// FIRN_NEWER_SCHEMA; of a newer minor version, what is not known here is told in the notices.
Result<std::unique_ptr<firnbook::PitT>> read_card(const std::uint8_t* bytes, std::size_t size,
                                                  Notices& notices);

// Whether the bytes end with the checksum of a card of any version: no other file does, save by chance (one
// in four thousand million).
bool is_card(const std::uint8_t* bytes, std::size_t size);

// RFC 9285: the characters that a QR code holds most of. Strict: nothing but what to_base45 gives is read.
std::string to_base45(const Bytes& bytes);
Result<Bytes> from_base45(std::string_view text);

// The QR code of a text in digits, capital letters, blanks and $%*+-./: as a drawing of its own.
Done qr_svg(std::string& svg, std::string_view text);

}  // namespace firn::exchange::card
