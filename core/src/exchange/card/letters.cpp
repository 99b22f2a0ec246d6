#include "exchange/card/letters.h"

#include <cstdint>
#include <iterator>
#include <string_view>

namespace firn::exchange::card {
namespace {

enum class Kind : std::uint8_t { text, end, raw };
struct Piece {
  std::uint8_t width;
  Kind kind;
  std::string_view text;
};

// In the order of their codes. The end and the run of raw bytes have no text of their own.
constexpr Piece kPieces[] = {
#define LETTERS(width, piece) {width, Kind::text, {piece, sizeof(piece) - 1}},
#define LETTERS_END(width) {width, Kind::end, {}},
#define LETTERS_RAW(width) {width, Kind::raw, {}},
#include "exchange/card/letters.def"
#undef LETTERS
#undef LETTERS_END
#undef LETTERS_RAW
};
constexpr std::size_t kCount = std::size(kPieces);
constexpr unsigned kWidest = 16;
// Runs of raw bytes are short, or as long as a text in another script.
constexpr unsigned kRunOrder = 3;

// Codes of one width count up, and go on from the last of the width before with a zero behind it.
struct Codes {
  std::uint16_t code[kCount] = {};
  std::uint16_t first_of_width[kWidest + 2] = {};  // position in kPieces
  bool is_whole = false;                           // no code is left over
};
constexpr Codes make_codes() {
  Codes codes;
  std::size_t at = 0;
  std::uint32_t next = 0;
  for (unsigned width = 1; width <= kWidest; ++width) {
    next <<= 1;
    codes.first_of_width[width] = static_cast<std::uint16_t>(at);
    for (; at < kCount && kPieces[at].width == width; ++at) {
      codes.code[at] = static_cast<std::uint16_t>(next++);
    }
  }
  codes.first_of_width[kWidest + 1] = static_cast<std::uint16_t>(at);
  codes.is_whole = at == kCount && next == std::uint32_t{1} << kWidest;
  return codes;
}
constexpr Codes kCodes = make_codes();
static_assert(kCodes.is_whole, "a Huffman code leaves no code over");

constexpr std::size_t position_of(Kind kind) {
  for (std::size_t i = 0; i < kCount; ++i) {
    if (kPieces[i].kind == kind) return i;
  }
  return kCount;
}
constexpr std::size_t kEndAt = position_of(Kind::end);
constexpr std::size_t kRawAt = position_of(Kind::raw);

// Pieces by their first byte.
struct ByFirstByte {
  std::uint16_t piece[kCount] = {};
  std::uint16_t start[257] = {};
};
constexpr ByFirstByte sort_by_first_byte() {
  ByFirstByte sorted;
  std::size_t at = 0;
  for (unsigned byte = 0; byte < 256; ++byte) {
    sorted.start[byte] = static_cast<std::uint16_t>(at);
    for (std::size_t i = 0; i < kCount; ++i) {
      if (kPieces[i].kind == Kind::text && static_cast<unsigned char>(kPieces[i].text[0]) == byte) {
        sorted.piece[at++] = static_cast<std::uint16_t>(i);
      }
    }
  }
  sorted.start[256] = static_cast<std::uint16_t>(at);
  return sorted;
}
constexpr ByFirstByte kByFirstByte = sort_by_first_byte();

// The longest piece at the beginning; kCount when none fits.
std::size_t longest_piece(std::string_view text) {
  const auto byte = static_cast<unsigned char>(text[0]);
  std::size_t best = kCount;
  for (std::size_t i = kByFirstByte.start[byte]; i < kByFirstByte.start[byte + 1u]; ++i) {
    const std::size_t piece = kByFirstByte.piece[i];
    const std::string_view candidate = kPieces[piece].text;
    if (text.substr(0, candidate.size()) != candidate) continue;
    if (best == kCount || candidate.size() > kPieces[best].text.size()) best = piece;
  }
  return best;
}

void write_piece(Bits& bits, std::size_t piece) {
  bits.fixed(kCodes.code[piece], kPieces[piece].width);
}

std::size_t read_piece(Bits& bits) {
  std::uint32_t code = 0;
  for (unsigned width = 1; width <= kWidest && !bits.failed(); ++width) {
    code = code << 1 | (bits.flag(false) ? 1u : 0u);
    const std::size_t first = kCodes.first_of_width[width];
    const std::size_t count = kCodes.first_of_width[width + 1] - first;
    if (count != 0 && code >= kCodes.code[first] && code - kCodes.code[first] < count) {
      return first + (code - kCodes.code[first]);
    }
  }
  bits.fail();
  return kEndAt;
}

std::size_t raw_run(std::string_view text, std::size_t most) {
  std::size_t size = 1;
  while (size < text.size() && size <= most && longest_piece(text.substr(size)) == kCount) ++size;
  return size;
}

void write_raw(Bits& bits, std::string_view run) {
  write_piece(bits, kRawAt);
  bits.golomb(run.size() - 1, kRunOrder);
  for (const char byte : run) bits.fixed(static_cast<unsigned char>(byte), 8);
}

void write_letters(Bits& bits, std::string_view text) {
  while (!text.empty() && !bits.failed()) {
    const std::size_t piece = longest_piece(text);
    const std::size_t size = piece == kCount ? raw_run(text, bits.left() / 8) : kPieces[piece].text.size();
    if (piece == kCount) {
      write_raw(bits, text.substr(0, size));
    } else {
      write_piece(bits, piece);
    }
    text.remove_prefix(size);
  }
  write_piece(bits, kEndAt);
}

void read_letters(Bits& bits, std::string& text) {
  text.clear();
  for (std::size_t piece = read_piece(bits); piece != kEndAt && !bits.failed(); piece = read_piece(bits)) {
    if (piece != kRawAt) {
      text += kPieces[piece].text;
      continue;
    }
    for (std::uint64_t left = bits.golomb(0, kRunOrder) + 1; left > 0 && !bits.failed(); --left) {
      text += static_cast<char>(bits.fixed(0, 8));
    }
  }
}

}  // namespace

void code_letters(Bits& bits, std::string& text) {
  if (bits.is_reading()) {
    read_letters(bits, text);
  } else {
    write_letters(bits, text);
  }
}

}  // namespace firn::exchange::card
