// Texts of any bytes come back, and usual ones are short.
#include <cstdint>

#include "card_help.h"
#include "exchange/card/letters.h"

namespace firn::tests {
namespace {

using exchange::card::Bits;
using exchange::card::code_letters;

std::size_t bits_of(const std::string& text) {
  Bits out = Bits::writing(1 << 20);
  std::string copy = text;
  code_letters(out, copy);
  const std::size_t size = out.position();
  EXPECT_FALSE(out.failed());
  Bits in = Bits::reading(out.bytes().data(), out.bytes().size());
  std::string back = "something else";
  code_letters(in, back);
  EXPECT_FALSE(in.failed());
  EXPECT_EQ(back, text);
  EXPECT_EQ(in.position(), size);
  return size;
}

TEST(CardLetters, EveryPairOfBytes) {
  bits_of("");
  for (unsigned pair = 0; pair < 65536 && !HasFailure(); ++pair) {
    bits_of({static_cast<char>(pair & 255), static_cast<char>(pair >> 8)});
  }
}

TEST(CardLetters, WordsOfTheTradeTakeAboutHalfOfTheirBytes) {
  for (const char* words :
       {"wind slab over facets", "same aspect and elevation, gentler", "sugary, to the ground",
        "Triebschnee auf kantigen Formen", "plaque sur des faces planes"}) {
    EXPECT_LT(bits_of(words), std::string(words).size() * 5) << words;
  }
}

// No text is much longer than itself: other scripts stand as they are.
TEST(CardLetters, OtherScriptsTakeHardlyMoreThanTheirBytes) {
  const std::string hebrew = "\xD7\xA9\xD7\x9C\xD7\x92 \xD7\xA9\xD7\x9C\xD7\x92";
  EXPECT_LT(bits_of(hebrew), hebrew.size() * 8 + 48);
  std::string bytes;
  for (int i = 0; i < 4096; ++i) bytes += static_cast<char>(0x80 + i % 64);
  EXPECT_LT(bits_of(bytes), bytes.size() * 8 + 64);
}

TEST(CardLetters, ATextThatCannotFitIsGivenUpEarly) {
  std::string text(16u << 20, '\x81');
  Bits out = Bits::writing(100);
  code_letters(out, text);
  EXPECT_TRUE(out.failed());
  EXPECT_LE(out.bytes().size(), 100u);
}

}  // namespace
}  // namespace firn::tests
