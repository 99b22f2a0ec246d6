#include "support/base64.h"

namespace firn {

namespace {
constexpr char kBase64[] = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
}  // namespace

void append_base64(std::string& out, const std::uint8_t* bytes, std::size_t size) {
  for (std::size_t at = 0; at < size; at += 3) {
    const std::size_t count = size - at < 3 ? size - at : 3;
    std::uint32_t bits = 0;
    for (std::size_t i = 0; i < 3; ++i) bits = bits << 8 | (i < count ? bytes[at + i] : std::uint8_t{0});
    for (std::size_t i = 0; i < 4; ++i) out += i <= count ? kBase64[bits >> (18 - 6 * i) & 63] : '=';
  }
}

bool parse_base64(std::string_view text, std::vector<std::uint8_t>& bytes) {
  if (text.size() % 4 != 0) return false;
  const std::string_view letters(kBase64, 64);
  for (std::size_t at = 0; at < text.size(); at += 4) {
    std::uint32_t bits = 0;
    std::size_t count = 3;
    for (std::size_t i = 0; i < 4; ++i) {
      const char sign = text[at + i];
      const std::size_t value = letters.find(sign);
      const bool is_padding =
          sign == '=' && at + 4 == text.size() && i >= 2 && (i == 3 || text[at + 3] == '=');
      if (value == std::string_view::npos && !is_padding) return false;
      if (is_padding && count > i - 1) count = i - 1;
      bits = bits << 6 | static_cast<std::uint32_t>(is_padding ? 0 : value);
    }
    for (std::size_t i = 0; i < count; ++i) bytes.push_back(static_cast<std::uint8_t>(bits >> (16 - 8 * i)));
    // One text for the same bytes: what the padding cuts off must be zero.
    if (count < 3 && (bits & ((1U << (8 * (3 - count))) - 1)) != 0) return false;
  }
  return true;
}

}  // namespace firn
