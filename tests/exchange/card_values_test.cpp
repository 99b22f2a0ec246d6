// Single values: those of README.md, edges of every type, and what no type can hold.
#include "exchange/card/values.h"

#include <cstdint>
#include <limits>

#include "card_help.h"

namespace firn::tests {
namespace {

using exchange::card::Bits;
using exchange::card::Depths;
using exchange::card::Moments;
using exchange::card::Ranks;
using exchange::card::Texts;
using exchange::card::Units;

constexpr std::int64_t kLeast = std::numeric_limits<std::int64_t>::min();
constexpr std::int64_t kMost = std::numeric_limits<std::int64_t>::max();

// Writes with one function and answers the bits, filled up with zeros that a reader may run into.
template <class Write>
Bytes written(Write&& write) {
  Bits bits = Bits::writing(1000);
  write(bits);
  EXPECT_FALSE(bits.failed());
  bits.fixed(0, 64);
  bits.end();
  return bits.bytes();
}
template <class Read>
bool fails(const Bytes& bytes, Read&& read) {
  Bits bits = Bits::reading(bytes.data(), bytes.size());
  read(bits);
  return bits.failed();
}

std::string golomb_bits(std::uint64_t value, unsigned order) {
  Bits out = Bits::writing(100);
  out.golomb(value, order);
  std::string text;
  for (std::size_t i = 0; i < out.position(); ++i)
    text += (out.bytes()[i / 8] >> (7 - i % 8) & 1) != 0 ? '1' : '0';
  return text;
}

TEST(CardValues, GolombCodesOfTheReadme) {
  EXPECT_EQ(golomb_bits(0, 0), "1");
  EXPECT_EQ(golomb_bits(2, 0), "011");
  EXPECT_EQ(golomb_bits(9, 2), "01101");
}

TEST(CardValues, NumbersOfEverySizeComeBack) {
  for (unsigned order = 1; order <= 32; ++order) {
    for (unsigned shift = 0; shift < 64; ++shift) {
      for (const std::uint64_t value :
           {std::uint64_t{1} << shift, (std::uint64_t{1} << shift) - 1, ~std::uint64_t{0} >> shift}) {
        const Bytes bytes = written([&](Bits& bits) { bits.golomb(value, order); });
        Bits bits = Bits::reading(bytes.data(), bytes.size());
        ASSERT_EQ(bits.golomb(0, order), value);
        const auto number = static_cast<std::int64_t>(value);
        const Bytes with_sign = written([&](Bits& out) { out.signed_golomb(number, order); });
        Bits in = Bits::reading(with_sign.data(), with_sign.size());
        ASSERT_EQ(in.signed_golomb(0, order), number);
        ASSERT_FALSE(bits.failed() || in.failed());
      }
    }
  }
}

TEST(CardValues, CodesOfMoreThan64BitsAreRefused) {
  const Bytes zeros(40, 0);
  EXPECT_TRUE(fails(zeros, [](Bits& bits) { bits.golomb(0, 3); }));
  for (unsigned order = 1; order <= 32; ++order) {
    // 2^63 + 1, and the bits of the order: just beyond what 64 bits hold.
    const Bytes bytes = written([](Bits& bits) {
      bits.fixed(0, 63);
      bits.fixed((std::uint64_t{1} << 63) + 1, 64);
      bits.fixed(0, 64);
    });
    EXPECT_TRUE(fails(bytes, [&](Bits& bits) { bits.golomb(0, order); })) << order;
  }
}

TEST(CardValues, PlacesBeyondTheirTypesAreRefused) {
  for (const std::int64_t index : {kLeast, kMost, std::int64_t{1} << 32, -(std::int64_t{1} << 40)}) {
    const Bytes bytes = written([&](Bits& bits) {
      bits.golomb(6, 4);
      bits.signed_golomb(index, 2);
    });
    EXPECT_TRUE(fails(bytes, [](Bits& bits) { code_place(bits, firnbook::Place()); })) << index;
  }
  const Bytes thing = written([](Bits& bits) { bits.golomb(256, 4); });
  EXPECT_TRUE(fails(thing, [](Bits& bits) { code_place(bits, firnbook::Place()); }));
}

TEST(CardValues, NumbersBeyondTheirTypesAreRefused) {
  static constexpr Units kUnits = {1, false, {{1000, 2}}};
  for (const std::uint64_t quotient : {~std::uint64_t{0}, std::uint64_t{1} << 63, std::uint64_t{1} << 62}) {
    const Bytes bytes = written([&](Bits& bits) {
      bits.flag(false);
      bits.golomb(quotient, 2);
    });
    EXPECT_TRUE(fails(bytes, [](Bits& bits) { code_number(bits, 0, kUnits); }));
  }
  static constexpr std::uint8_t kValues[] = {1, 2};
  static constexpr Ranks kRanks = {kValues, 2, 1};
  const Bytes rank = written([](Bits& bits) { bits.golomb(258, 1); });
  EXPECT_TRUE(fails(rank, [](Bits& bits) { code_rank(bits, 0, kRanks); }));
  const Bytes last = written([](Bits& bits) { bits.golomb(257, 1); });
  EXPECT_FALSE(fails(last, [](Bits& bits) { EXPECT_EQ(code_rank(bits, 0, kRanks), 255); }));
}

TEST(CardValues, ListsOfNumbersBeyondTheirTypesAreRefused) {
  for (const std::int64_t value : {kLeast, kMost, std::int64_t{1} << 31}) {
    const Bytes bytes = written([&](Bits& bits) {
      bits.golomb(1, 2);
      bits.fixed(7, 3);
      bits.signed_golomb(5, 14);
      bits.fixed(7, 3);
      bits.signed_golomb(value, 14);
    });
    EXPECT_TRUE(fails(bytes, [](Bits& bits) {
      std::vector<std::int32_t> numbers;
      code_numbers(bits, numbers);
    }));
  }
}

TEST(CardValues, DepthsBeyondTheirTypesAreRefused) {
  const firnbook::Depth base(std::numeric_limits<std::int32_t>::max(), firnbook::Datum::surface,
                             firnbook::Direction::vertical);
  for (const std::int64_t value : {kLeast, kMost, std::int64_t{1}, std::int64_t{1} << 33}) {
    const Bytes bytes = written([&](Bits& bits) {
      bits.fixed(14, 4);
      bits.signed_golomb(value, 14);
    });
    EXPECT_TRUE(fails(bytes, [&](Bits& bits) { Depths().code(bits, firnbook::Depth(), &base, 3); })) << value;
  }
}

TEST(CardValues, MarksBeyondTheLastAreRefused) {
  const Bytes far = written([](Bits& bits) {
    bits.golomb(0, 0);
    bits.golomb(64, 3);
  });
  EXPECT_TRUE(fails(far, [](Bits& bits) { code_marks(bits, 0); }));
  const Bytes many = written([](Bits& bits) {
    bits.golomb(64, 0);
    bits.golomb(0, 3);
    for (int i = 0; i < 64; ++i) bits.golomb(0, 1);
  });
  EXPECT_TRUE(fails(many, [](Bits& bits) { code_marks(bits, 0); }));
  for (const std::uint64_t marks : {std::uint64_t{1}, std::uint64_t{1} << 63, ~std::uint64_t{0}}) {
    const Bytes bytes = written([&](Bits& bits) { code_marks(bits, marks); });
    EXPECT_FALSE(fails(bytes, [&](Bits& bits) { EXPECT_EQ(code_marks(bits, 0), marks); }));
  }
}

TEST(CardValues, MomentsOfAnyAgeComeBack) {
  using firnbook::Moment;
  using firnbook::TimePrecision;
  for (const std::int64_t local_s : {kLeast, kMost, std::int64_t{0}, std::int64_t{-1}, std::int64_t{1} << 40,
                                     (std::int64_t{1} << 40) + 1, std::int64_t{86400} * 20000}) {
    const Bytes bytes = written([&](Bits& bits) {
      Moments moments;
      for (int precision = 0; precision < 8; ++precision) {
        moments.code(bits, Moment(local_s, -32768, static_cast<TimePrecision>(precision), 2));
      }
    });
    Bits bits = Bits::reading(bytes.data(), bytes.size());
    Moments moments;
    for (int precision = 0; precision < 8; ++precision) {
      const Moment moment = moments.code(bits, Moment());
      EXPECT_EQ(moment.local_s(), local_s);
      EXPECT_EQ(moment.offset_min(), -32768);
      EXPECT_EQ(static_cast<int>(moment.precision()), precision);
      EXPECT_EQ(moment.offset_known(), 2);
    }
    EXPECT_FALSE(bits.failed());
  }
}

TEST(CardValues, ATextThatNobodyWroteIsRefused) {
  const Bytes bytes = written([](Bits& bits) {
    Texts texts;
    std::string text = "ridge";
    texts.code(bits, text);
    bits.flag(true);
    bits.golomb(1, 2);
  });
  EXPECT_TRUE(fails(bytes, [](Bits& bits) {
    Texts texts;
    std::string text;
    texts.code(bits, text);
    EXPECT_EQ(text, "ridge");
    EXPECT_FALSE(bits.failed());
    texts.code(bits, text);
  }));
}

}  // namespace
}  // namespace firn::tests
