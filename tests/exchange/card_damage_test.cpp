// Damage is detected always, never misread.
#include <algorithm>
#include <cstdint>

#include "card_help.h"
#include "card_pits.h"
#include "recording/journal.h"

namespace firn::tests {
namespace {

using exchange::card::crc32c;

std::vector<Bytes> some_cards() {
  std::vector<Bytes> cards = {card_of(bytes_of(file_text("larch-bowl-entry.txt"))),
                              card_of(bytes_of(file_text("tarn-shoulder.txt"))),
                              card_of(bytes_of(kQuickPit))};
  firnbook::PitT empty;
  cards.push_back(card_of(recording::to_bytes(empty)));
  for (std::uint64_t seed = 1; seed <= 8; ++seed) {
    Notices notices;
    const Bytes pit = recording::to_bytes(*PitOfAnything(seed, Numbers::mixed).pit());
    Result<Bytes> card = exchange::card::write_card(*firnbook::GetPit(pit.data()), {true}, notices);
    if (card) cards.push_back(*card);
  }
  return cards;
}

TEST(CardDamage, EverySingleBitErrorIsDetected) {
  for (Bytes card : some_cards()) {
    for (std::size_t bit = 0; bit < card.size() * 8; ++bit) {
      card[bit / 8] = static_cast<std::uint8_t>(card[bit / 8] ^ 1u << bit % 8);
      ASSERT_EQ(refusal_of(card), FIRN_DAMAGED) << "bit " << bit;
      card[bit / 8] = static_cast<std::uint8_t>(card[bit / 8] ^ 1u << bit % 8);
    }
  }
}

TEST(CardDamage, EveryTruncationIsDetected) {
  for (const Bytes& card : some_cards()) {
    for (std::size_t size = 0; size < card.size(); ++size) {
      const Bytes cut(card.begin(), card.begin() + static_cast<std::ptrdiff_t>(size));
      ASSERT_NE(refusal_of(cut), FIRN_OK) << size << " of " << card.size();
    }
  }
}

// The checksum lets one of 2^32 truncations pass. The bits themselves let none: each card ends where its last
// value ends, so that a part of one is never whole. Here every part gets a checksum that fits.
TEST(CardDamage, ATruncationIsDetectedEvenWhereTheChecksumFits) {
  for (const Bytes& card : some_cards()) {
    for (std::size_t size = 1; size + 4 < card.size(); ++size) {
      Bytes cut(card.begin(), card.begin() + static_cast<std::ptrdiff_t>(size));
      seal(cut);
      ASSERT_NE(refusal_of(cut), FIRN_OK) << size << " of " << card.size();
    }
  }
}

TEST(CardDamage, BytesBehindACardAreDetected) {
  for (const Bytes& card : some_cards()) {
    for (unsigned byte = 0; byte < 256; ++byte) {
      Bytes longer = card;
      longer.push_back(static_cast<std::uint8_t>(byte));
      ASSERT_EQ(refusal_of(longer), FIRN_DAMAGED);
      Bytes sealed(card.begin(), card.end() - 4);
      sealed.push_back(static_cast<std::uint8_t>(byte));
      seal(sealed);
      ASSERT_EQ(refusal_of(sealed), FIRN_DAMAGED);
    }
  }
}

// The zeros that fill the last byte are part of what is read.
TEST(CardDamage, FillingThatIsNotZeroIsDetectedEvenWhereTheChecksumFits) {
  std::size_t with_filling = 0;
  for (const Bytes& card : some_cards()) {
    Bytes changed(card.begin(), card.end() - 4);
    if ((changed.back() & 1) != 0) continue;
    changed.back() = static_cast<std::uint8_t>(changed.back() | 1);
    seal(changed);
    ++with_filling;
    ASSERT_EQ(refusal_of(changed), FIRN_DAMAGED);
  }
  EXPECT_GT(with_filling, 4u);
}

TEST(CardDamage, StretchesOfUpTo32BitsAreDetected) {
  PitOfAnything dice(3, Numbers::any);
  for (const Bytes& card : some_cards()) {
    for (int i = 0; i < 2000; ++i) {
      Bytes changed = card;
      const std::size_t first = dice.roll(static_cast<std::uint32_t>(card.size() * 8 - 32));
      for (std::size_t bit = first; bit < first + 32; ++bit) {
        if (bit != first && dice.roll(2) == 0) continue;
        changed[bit / 8] = static_cast<std::uint8_t>(changed[bit / 8] ^ 0x80u >> bit % 8);
      }
      ASSERT_EQ(refusal_of(changed), FIRN_DAMAGED);
    }
  }
}

// --- how far the checksum reaches: proven here, not only quoted ------------------------------------------

constexpr std::size_t kProvenBytes = 600;

// What one flipped bit does to the checksum, and to the stored checksum where it stands in that.
std::vector<std::uint32_t> syndromes(std::size_t bytes) {
  std::vector<std::uint32_t> found;
  Bytes zeros(bytes - 4, 0);
  const std::uint32_t none = crc32c(zeros.data(), zeros.size());
  for (std::size_t bit = 0; bit < zeros.size() * 8; ++bit) {
    zeros[bit / 8] = static_cast<std::uint8_t>(1u << bit % 8);
    found.push_back(crc32c(zeros.data(), zeros.size()) ^ none);
    zeros[bit / 8] = 0;
  }
  for (unsigned bit = 0; bit < 32; ++bit) found.push_back(1u << bit);
  return found;
}

// Sorts some ten million numbers, twice by 16 bits, which in a debug build takes a tenth of std::sort's time.
void sort(std::vector<std::uint32_t>& numbers) {
  std::vector<std::uint32_t> sorted(numbers.size());
  for (const unsigned shift : {0u, 16u}) {
    std::vector<std::size_t> start(65537, 0);
    for (const std::uint32_t number : numbers) ++start[(number >> shift & 0xffff) + 1];
    for (std::size_t i = 1; i < start.size(); ++i) start[i] += start[i - 1];
    for (const std::uint32_t number : numbers) sorted[start[number >> shift & 0xffff]++] = number;
    numbers.swap(sorted);
  }
}

// Flips that go unnoticed are those whose syndromes cancel out. Two or four of them would mean two pairs with
// the same sum; an odd number cannot, because every syndrome's bits have one property that sums of an odd
// number keep: the polynomial has the factor x + 1.
TEST(CardDamage, AnyFiveBitErrorsAreDetectedInACardOf600Bytes) {
  const std::vector<std::uint32_t> flips = syndromes(kProvenBytes);
  std::vector<std::uint32_t> sums;
  sums.reserve(flips.size() * (flips.size() - 1) / 2);
  for (std::size_t i = 0; i < flips.size(); ++i) {
    for (std::size_t j = 0; j < i; ++j) sums.push_back(flips[i] ^ flips[j]);
  }
  sort(sums);
  ASSERT_TRUE(std::is_sorted(sums.begin(), sums.end()));
  EXPECT_NE(sums.front(), 0u);
  EXPECT_EQ(std::adjacent_find(sums.begin(), sums.end()), sums.end());
}

// A weighing of bits under which each single flip is odd: then so is every odd number of flips, and is seen.
TEST(CardDamage, AnyOddNumberOfBitErrorsIsDetected) {
  // The weights of the flips in the stored checksum must be 1 each, so a syndrome's weight is how many ones
  // it has.
  for (const std::uint32_t flip : syndromes(exchange::card::kMostBytes / 32)) {
    unsigned ones = 0;
    for (std::uint32_t left = flip; left != 0; left &= left - 1) ++ones;
    ASSERT_EQ(ones % 2, 1u);
  }
}

// RFC 3720, appendix B.4: the checksum of 32 zeros, of 32 ones (bytes 255) and of 0 to 31.
TEST(CardDamage, TheChecksumIsThatOfTheStandard) {
  Bytes bytes(32, 0);
  EXPECT_EQ(crc32c(bytes.data(), bytes.size()), 0x8a9136aau);
  std::fill(bytes.begin(), bytes.end(), std::uint8_t{255});
  EXPECT_EQ(crc32c(bytes.data(), bytes.size()), 0x62a8ab43u);
  for (std::size_t i = 0; i < 32; ++i) bytes[i] = static_cast<std::uint8_t>(i);
  EXPECT_EQ(crc32c(bytes.data(), bytes.size()), 0x46dd794eu);
}

// --- a pit in a journal's frame --------------------------------------------------------------------------

Bytes framed_pit() {
  const Bytes pit = bytes_of(file_text("tarn-shoulder.txt"));
  Bytes journal;
  recording::append_frame(journal, recording::FrameKind::pit, {7, 1}, recording::pit_tag("a"), pit.data(),
                          pit.size());
  return journal;
}

bool is_whole(const Bytes& journal) {
  const recording::JournalMap map = recording::scan_journal(journal.data(), journal.size());
  return map.frames.size() == 1 && map.gaps.empty() && map.frames[0].is(recording::FrameKind::pit);
}

TEST(CardDamage, EverySingleBitErrorOfAFramedPitIsDetected) {
  Bytes journal = framed_pit();
  ASSERT_TRUE(is_whole(journal));
  for (std::size_t bit = 0; bit < journal.size() * 8; ++bit) {
    journal[bit / 8] = static_cast<std::uint8_t>(journal[bit / 8] ^ 1u << bit % 8);
    ASSERT_FALSE(is_whole(journal)) << "bit " << bit;
    journal[bit / 8] = static_cast<std::uint8_t>(journal[bit / 8] ^ 1u << bit % 8);
  }
}

TEST(CardDamage, EveryTruncationOfAFramedPitIsDetected) {
  const Bytes journal = framed_pit();
  for (std::size_t size = 0; size < journal.size(); ++size) {
    ASSERT_FALSE(is_whole({journal.begin(), journal.begin() + static_cast<std::ptrdiff_t>(size)})) << size;
  }
}

}  // namespace
}  // namespace firn::tests
