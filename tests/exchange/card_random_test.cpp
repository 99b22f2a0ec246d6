// Pits with anything in any field go through a card and come back to the byte, but for what is named.
#include <cstdint>

#include "card_help.h"
#include "card_pits.h"

namespace firn::tests {
namespace {

using exchange::card::read_card;
using exchange::card::write_card;

// Takes away what README.md says that a card leaves out, and counts it.
std::size_t take_away(firnbook::PitT& pit) {
  std::size_t count = pit.extensions.size();
  pit.extensions.clear();
  for (auto& profile : pit.surface_area) {
    if (!profile->dense_depth_cm.empty() || !profile->dense_m2kg.empty()) ++count;
    profile->dense_depth_cm.clear();
    profile->dense_m2kg.clear();
  }
  for (auto& profile : pit.hardness) {
    if (!profile->dense_depth_cm.empty() || !profile->dense_n.empty()) ++count;
    profile->dense_depth_cm.clear();
    profile->dense_n.clear();
  }
  for (auto& photo : pit.photos) {
    if (!photo->sha256.empty()) ++count;
    photo->sha256.clear();
  }
  return count;
}

struct Counted {
  std::size_t left_out = 0;
  std::size_t too_large = 0;
};

void go_through(std::uint64_t seed, Numbers numbers, Counted& counted) {
  auto pit = PitOfAnything(seed, numbers).pit();
  const Bytes whole = recording::to_bytes(*pit);
  const std::size_t taken = take_away(*pit);
  const Bytes wanted = recording::to_bytes(*pit);

  Notices notices;
  Result<Bytes> strict = write_card(*firnbook::GetPit(whole.data()), {}, notices);
  ASSERT_TRUE(notices.empty());
  Result<Bytes> card = write_card(*firnbook::GetPit(whole.data()), {true}, notices);
  if (!card) {
    ASSERT_EQ(card.failure().status, FIRN_TOO_LARGE);
    ++counted.too_large;
    return;
  }
  ASSERT_EQ(static_cast<bool>(strict), taken == 0) << "seed " << seed;
  if (taken != 0) {
    ASSERT_EQ(strict.failure().status, FIRN_NOT_HELD);
  }
  ASSERT_EQ(notices.kept().size(), taken) << "seed " << seed;
  for (const Notice& notice : notices.kept()) {
    ASSERT_EQ(notice.kind, NoticeKind::left_out);
    ASSERT_FALSE(notice.path.empty());
  }

  Notices read_notices;
  auto back = read(*card, read_notices);
  ASSERT_TRUE(back) << "seed " << seed << ": " << back.failure().what;
  ASSERT_EQ(recording::to_bytes(**back), wanted) << "seed " << seed;
  ASSERT_EQ(read_notices.kept().size(), taken == 0 ? 0u : 1u);
  counted.left_out += taken == 0 ? 0 : 1;
}

void go_through_many(Numbers numbers) {
  constexpr std::uint64_t kPits = 4000;
  Counted counted;
  for (std::uint64_t seed = 1; seed <= kPits && !testing::Test::HasFatalFailure(); ++seed) {
    go_through(seed, numbers, counted);
  }
  // Neither does everything lose something, nor does nothing.
  EXPECT_GT(counted.left_out, kPits / 10);
  EXPECT_LT(counted.left_out, kPits);
  EXPECT_LT(counted.too_large, kPits / 10);
}

TEST(CardRandom, WhatPeopleWriteDown) {
  go_through_many(Numbers::usual);
}
TEST(CardRandom, AnyNumber) {
  go_through_many(Numbers::any);
}
TEST(CardRandom, Both) {
  go_through_many(Numbers::mixed);
}

// Bits at random under a checksum that fits: what a card says on purpose to do harm.
TEST(CardRandom, WellSealedNonsenseIsRefusedOrIsThePitOfThatCard) {
  PitOfAnything dice(7, Numbers::any);
  std::size_t read_well = 0;
  const Bytes demo = card_of(bytes_of(file_text("tarn-shoulder.txt")));
  for (int i = 0; i < 20000; ++i) {
    Bytes card(demo.begin(), demo.end() - 4);
    for (std::uint32_t changes = 1 + dice.roll(3); changes > 0; --changes) {
      const std::size_t at = 1 + dice.roll(static_cast<std::uint32_t>(card.size() - 1));
      card[at] = static_cast<std::uint8_t>(dice.roll(256));
    }
    if (dice.roll(4) == 0) card.resize(2 + dice.roll(static_cast<std::uint32_t>(card.size() - 2)));
    seal(card);
    Notices notices;
    auto pit = read(card, notices);
    if (!pit) {
      ASSERT_EQ(pit.failure().status, FIRN_DAMAGED);
      continue;
    }
    ++read_well;
    const Bytes bytes = recording::to_bytes(**pit);
    ASSERT_EQ(card_of(bytes).size(), card.size());
  }
  EXPECT_GT(read_well, 50u);
}

}  // namespace
}  // namespace firn::tests
