// Cards written and read for a test.
#pragma once

#include <gtest/gtest.h>

#include <memory>
#include <string>
#include <utility>
#include <vector>

#include "exchange/card/card.h"
#include "exchange/card/checksum.h"
#include "notes_help.h"

namespace firn::tests {

using exchange::Notice;
using exchange::NoticeKind;
using exchange::Notices;
using exchange::card::CardOptions;

// The card of a pit that fits on one.
inline Bytes card_of(const Bytes& pit, const CardOptions& options = {}) {
  Notices notices;
  Result<Bytes> card = exchange::card::write_card(*firnbook::GetPit(pit.data()), options, notices);
  EXPECT_TRUE(card) << card.failure().what << ": " << card.failure().remedy;
  return card ? *card : Bytes{};
}

inline Result<std::unique_ptr<firnbook::PitT>> read(const Bytes& card, Notices& notices) {
  // From memory of exactly that size, so that a sanitizer sees the first byte beyond it.
  const Bytes exact(card);
  return exchange::card::read_card(exact.data(), exact.size(), notices);
}

// The bytes of the pit that a card holds, which must be read without a word.
inline Bytes pit_on(const Bytes& card) {
  Notices notices;
  auto pit = read(card, notices);
  EXPECT_TRUE(pit) << pit.failure().what;
  EXPECT_TRUE(notices.empty());
  return pit ? recording::to_bytes(**pit) : Bytes{};
}

inline firn_status refusal_of(const Bytes& card) {
  Notices notices;
  auto pit = read(card, notices);
  EXPECT_TRUE(notices.empty());
  if (pit) return FIRN_OK;
  EXPECT_FALSE(pit.failure().what.empty());
  EXPECT_FALSE(pit.failure().remedy.empty());
  return pit.failure().status;
}

// Puts the right checksum behind bytes that need not be a card.
inline void seal(Bytes& card) {
  const std::uint32_t crc = exchange::card::crc32c(card.data(), card.size());
  for (int shift = 24; shift >= 0; shift -= 8) card.push_back(static_cast<std::uint8_t>(crc >> shift));
}

// A quick pit as people dig it: five layers and two tests. Invented.
inline const char* const kQuickPit = R"(pit        Upper Meadow, west side
time       2027-02-06T10:40-07:00
observers  MT
site       1960 m, NE, 27 deg
chosen     same aspect and elevation as Upper Meadow; gentler
probe      96 101 98
HS         98
weather    sky OVC, precip -SN, wind L W, air -6
0-12       F     PP 1.0
12-30      4F    RG 0.5
30-33      F     SH 5.0
33-71      1F    RG
71-98      4F-   FC 2.0 "sugary"
CT13 (SP) down 30
ECTP15 down 30
sign       whumpf no, cracking yes, slides none seen
backfilled yes
)";

}  // namespace firn::tests
