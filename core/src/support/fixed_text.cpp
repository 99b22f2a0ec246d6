#include "support/fixed_text.h"

#include <cstring>

#include "support/text.h"

namespace firn {
namespace {

bool is_control(std::string_view character) {
  const auto first = static_cast<unsigned char>(character[0]);
  if (first < 0x20 || first == 0x7F) return true;
  // U+0080 to U+009F.
  return first == 0xC2 && character.size() == 2 && static_cast<unsigned char>(character[1]) < 0xA0;
}

}  // namespace

void copy_text(char* to, std::size_t size, std::string_view text) noexcept {
  std::size_t used = 0;
  while (!text.empty()) {
    const std::size_t length = utf8_length(text);
    const std::size_t step = length == 0 ? 1 : length;
    const bool readable = length != 0 && !is_control(text.substr(0, length));
    const std::string_view character = readable ? text.substr(0, length) : std::string_view("?");
    if (used + character.size() >= size) break;
    std::memcpy(to + used, character.data(), character.size());
    used += character.size();
    text.remove_prefix(step);
  }
  to[used] = '\0';
}

bool has_control(std::string_view text) noexcept {
  while (!text.empty()) {
    const std::size_t length = utf8_length(text);
    if (length == 0) {
      text.remove_prefix(1);
      continue;
    }
    if (text[0] != '\t' && text[0] != '\n' && is_control(text.substr(0, length))) return true;
    text.remove_prefix(length);
  }
  return false;
}

}  // namespace firn
