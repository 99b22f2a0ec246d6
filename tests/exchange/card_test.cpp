// What a card holds, how large it is, and what it refuses.
#include <cstdint>
#include <fstream>

#include "card_help.h"
#include "exchange/card/layouts.h"
#include "recording/journal.h"

namespace firn::tests {
namespace {

using exchange::card::kMostBytes;
using exchange::card::write_card;

TEST(Card, DemoPitsFitAndComeBackToTheByte) {
  const std::size_t most[] = {160, 320};
  for (std::size_t i = 0; i < 2; ++i) {
    const Bytes pit = bytes_of(file_text(kDemoNotes[i]));
    const Bytes card = card_of(pit);
    EXPECT_LE(card.size(), most[i]) << kDemoNotes[i];
    EXPECT_EQ(pit_on(card), pit) << kDemoNotes[i];
    RecordProperty(kDemoNotes[i], static_cast<int>(card.size()));
  }
}

TEST(Card, AQuickPitOfFiveLayersAndTwoTestsTakesAtMost160Bytes) {
  const Bytes pit = bytes_of(kQuickPit);
  const Bytes card = card_of(pit);
  EXPECT_LE(card.size(), 160u);
  EXPECT_EQ(pit_on(card), pit);
  std::printf("%zu\n", card.size());
}

}  // namespace
}  // namespace firn::tests
