// RFC 9285: two bytes as three characters, a last one alone as two.
#include <algorithm>
#include <cstdint>
#include <string>
#include <string_view>

#include "exchange/card/card.h"

namespace firn::exchange::card {
namespace {

constexpr std::string_view kAlphabet = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:";
constexpr std::uint32_t kBase = 45;
static_assert(kAlphabet.size() == kBase);

void append_digits(std::string& out, std::uint32_t value, int count) {
  for (int i = 0; i < count; ++i, value /= kBase) out += kAlphabet[value % kBase];
}

Failure bad_text(firn_status status, std::string_view what, std::size_t at) {
  Failure failure = failure_of(status, what, "scan the code again, or copy the whole text");
  failure.line = 1;
  failure.column = static_cast<std::uint32_t>(at + 1);
  return failure;
}

}  // namespace

std::string to_base45(const Bytes& bytes) {
  std::string out;
  out.reserve((bytes.size() + 1) / 2 * 3);
  std::size_t i = 0;
  for (; i + 1 < bytes.size(); i += 2) append_digits(out, bytes[i] * 256u + bytes[i + 1], 3);
  if (i < bytes.size()) append_digits(out, bytes[i], 2);
  return out;
}

Result<Bytes> from_base45(std::string_view text) {
  // Twice what a card can take, so that a hostile text costs nothing.
  if (text.size() > 4 * kMostBytes) {
    return failure_of(FIRN_TOO_LARGE, "the text is longer than that of any card", "check what was read");
  }
  Bytes bytes;
  bytes.reserve(text.size() / 3 * 2 + 1);
  for (std::size_t i = 0; i < text.size(); i += 3) {
    const std::size_t count = std::min<std::size_t>(3, text.size() - i);
    std::uint32_t value = 0;
    for (std::size_t digit = count; digit-- > 0;) {
      const std::size_t found = kAlphabet.find(text[i + digit]);
      if (found == std::string_view::npos) {
        return bad_text(FIRN_WRONG_KIND, "this is no Base45 text: it has another character", i + digit);
      }
      value = value * kBase + static_cast<std::uint32_t>(found);
    }
    if (count == 1) return bad_text(FIRN_DAMAGED, "the Base45 text was cut off", i);
    if (value > (count == 3 ? 0xffffu : 0xffu)) {
      return bad_text(FIRN_DAMAGED, "the Base45 text was changed: these characters are no bytes", i);
    }
    if (count == 3) bytes.push_back(static_cast<std::uint8_t>(value >> 8));
    bytes.push_back(static_cast<std::uint8_t>(value & 0xff));
  }
  return bytes;
}

}  // namespace firn::exchange::card
