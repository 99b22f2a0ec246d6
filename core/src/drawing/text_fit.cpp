#include "drawing/text_fit.h"

#include <cstdint>

#include "support/text.h"

namespace firn::drawing {
namespace {

constexpr std::string_view kEllipsis = "\xE2\x80\xA6";

// Widths in hundredths of the font size, rounded up, of a wide sans-serif family: space to tilde. Ours,
// measured on the font that Debian installs by default.
constexpr std::uint8_t kAscii[95] = {
    32, 41, 46, 84, 64, 95, 78, 28, 40,  40, 50, 84, 32, 37, 32, 34, 64, 64, 64, 64, 64, 64, 64, 64,
    64, 64, 34, 34, 84, 84, 84, 54, 100, 69, 69, 70, 78, 64, 58, 78, 76, 30, 30, 66, 56, 87, 75, 79,
    61, 79, 70, 64, 62, 74, 69, 99, 69,  62, 69, 40, 34, 40, 84, 50, 50, 62, 64, 55, 64, 62, 36, 64,
    64, 28, 28, 58, 28, 98, 64, 62, 64,  64, 42, 53, 40, 64, 60, 82, 60, 60, 53, 64, 34, 64, 84};

struct Character {
  std::uint32_t code;
  std::size_t bytes;
};

Character first_character(std::string_view text) {
  const std::size_t length = utf8_length(text);
  if (length == 0) return {0xFFFD, 1};
  auto code = static_cast<std::uint32_t>(static_cast<unsigned char>(text[0]));
  if (length > 1) code &= 0x7Fu >> length;
  for (std::size_t i = 1; i < length; ++i) {
    code = code << 6 | (static_cast<unsigned char>(text[i]) & 0x3Fu);
  }
  return {code, length};
}

// Coarse on purpose, and never too small by much: letters of other alphabets, wide East Asian signs, emoji.
Tenths width_in_hundredths(std::uint32_t code) {
  if (code >= 0x20 && code < 0x7F) return kAscii[code - 0x20];
  if (code < 0x20 || code == 0x7F) return 32;
  if (code == 0xB7 || code == 0x2013) return 50;
  if (code < 0x300) return 75;
  if (code < 0x370) return 5;  // marks that sit on the letter before them
  if (code < 0x1100) return 80;
  if (code >= 0x200B && code <= 0x200F) return 5;
  if (code == 0x2212) return 84;
  if (code >= 0x2010 && code < 0x2100) return 100;
  if (code < 0x1F000) return 105;
  return 140;
}

bool turns_direction(std::uint32_t code) {
  return (code >= 0x202A && code <= 0x202E) || (code >= 0x2066 && code <= 0x2069);
}

}  // namespace

Fit fit_text(std::string_view text, Tenths font, bool bold, Tenths width) {
  // Bold letters of that family are about an eighth wider.
  const Tenths limit = width * (bold ? 8 : 9);
  Tenths hundredths = 0;
  Fit fit;
  while (fit.bytes < text.size()) {
    const Character next = first_character(text.substr(fit.bytes));
    const Tenths more = turns_direction(next.code) ? 1 : width_in_hundredths(next.code);
    if ((hundredths + more) * font * 9 > limit * 100) {
      fit.whole = false;
      break;
    }
    hundredths += more;
    fit.bytes += next.bytes;
  }
  fit.width = (hundredths * font * 9 / (bold ? 8 : 9) + 99) / 100;
  return fit;
}

Tenths text_width(std::string_view text, Tenths font, bool bold) {
  return fit_text(text, font, bold, INT32_MAX).width;
}

void append_plain(std::string& out, std::string_view text) {
  while (!text.empty()) {
    const Character next = first_character(text);
    if (next.code == '\n' || next.code == '\t' || next.code == '\r') {
      out += ' ';
    } else if (next.code >= 0x20 && next.code != 0x7F && !turns_direction(next.code)) {
      out.append(text.substr(0, next.bytes));
    }
    text.remove_prefix(next.bytes);
  }
}

Tenths append_clipped(std::string& out, std::string_view text, Tenths font, bool bold, Tenths width) {
  const Fit all = fit_text(text, font, bold, width);
  if (all.whole) {
    append_plain(out, text);
    return all.width;
  }
  const Tenths dots = text_width(kEllipsis, font, bold);
  const Fit part = fit_text(text.substr(0, all.bytes), font, bold, width > dots ? width - dots : 0);
  append_plain(out, text.substr(0, part.bytes));
  out += kEllipsis;
  return part.width + dots;
}

}  // namespace firn::drawing
