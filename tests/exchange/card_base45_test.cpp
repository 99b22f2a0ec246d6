#include <cstdint>

#include "card_help.h"

namespace firn::tests {
namespace {

using exchange::card::from_base45;
using exchange::card::to_base45;

Bytes bytes_from(std::string_view text) {
  return {text.begin(), text.end()};
}

// The examples of RFC 9285, sections 4.3 and 4.4.
TEST(Base45, TheExamplesOfTheStandard) {
  const std::pair<const char*, const char*> kExamples[] = {
      {"AB", "BB8"}, {"Hello!!", "%69 VD92EX0"}, {"base-45", "UJCLQE7W581"}, {"ietf!", "QED8WEX0"}};
  for (const auto& [plain, coded] : kExamples) {
    EXPECT_EQ(to_base45(bytes_from(plain)), coded);
    Result<Bytes> back = from_base45(coded);
    ASSERT_TRUE(back);
    EXPECT_EQ(*back, bytes_from(plain));
  }
  EXPECT_EQ(to_base45({}), "");
  EXPECT_TRUE(from_base45(""));
}

TEST(Base45, EveryTextOfUpToThreeCharactersIsReadOrRefusedAsItMustBe) {
  const std::string alphabet = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:";
  for (std::uint32_t value = 0; value < 45 * 45 * 45; ++value) {
    const std::string text = {alphabet[value % 45], alphabet[value / 45 % 45], alphabet[value / 2025]};
    Result<Bytes> bytes = from_base45(text);
    ASSERT_EQ(static_cast<bool>(bytes), value <= 0xffff) << text;
    if (bytes) {
      ASSERT_EQ(to_base45(*bytes), text);
    }
    if (value < 2025) {
      ASSERT_EQ(static_cast<bool>(from_base45(text.substr(0, 2))), value <= 0xff) << text;
    }
  }
  for (const char c : alphabet) ASSERT_FALSE(from_base45(std::string(1, c)));
}

TEST(Base45, OtherCharactersAreRefusedWithTheirPlace) {
  for (unsigned c = 0; c < 256; ++c) {
    const auto character = static_cast<char>(c);
    if (std::string_view("0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:").find(character) !=
        std::string_view::npos) {
      continue;
    }
    Result<Bytes> bytes = from_base45(std::string("BB8B") + character + "8");
    ASSERT_FALSE(bytes);
    EXPECT_EQ(bytes.failure().status, FIRN_WRONG_KIND);
    EXPECT_EQ(bytes.failure().line, 1u);
    EXPECT_EQ(bytes.failure().column, 5u);
  }
}

TEST(Base45, ATextLongerThanAnyCardIsRefused) {
  Result<Bytes> bytes = from_base45(std::string(200000, '0'));
  ASSERT_FALSE(bytes);
  EXPECT_EQ(bytes.failure().status, FIRN_TOO_LARGE);
}

}  // namespace
}  // namespace firn::tests
