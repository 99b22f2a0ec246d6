// Pits with anything in any field, printed and read again.
#include <gtest/gtest.h>

#include <cstdint>
#include <memory>
#include <string>
#include <vector>

#include "notes_help.h"
#include "random_pit.h"
#include "support/place.h"

namespace firn::tests {
namespace {

std::string first_difference(const std::string& a, const std::string& b) {
  std::size_t i = 0;
  while (i < a.size() && i < b.size() && a[i] == b[i]) ++i;
  const std::size_t from = i < 60 ? 0 : i - 60;
  return "..." + a.substr(from, 160) + "\n---\n..." + b.substr(from, 160);
}

void expect_round_trip(std::uint64_t seed, Wild wild) {
  const Bytes bytes = recording::to_bytes(*RandomPit(seed, wild).pit());
  const Printed printed = print(bytes);
  for (const Place& place : printed.lost) ADD_FAILURE() << "seed " << seed << " lost " << path_of(place);
  std::vector<Failure> others;
  auto notes = notation::read_notes(printed.text, {}, others);
  ASSERT_TRUE(notes) << "seed " << seed << ": " << shown(notes.failure()) << "\n" << printed.text;
  const Bytes again = recording::to_bytes(*(*notes).pit);
  if (again == bytes) return;
  FAIL() << "seed " << seed << "\n"
         << first_difference(printed.text, print(again).text) << "\n"
         << printed.text;
}

TEST(NotesRandom, PlausiblePitsComeBackToTheByte) {
  for (std::uint64_t seed = 1; seed <= 3000 && !HasFailure(); ++seed)
    expect_round_trip(seed, Wild::plausible);
}

TEST(NotesRandom, PitsWithAnyNumberComeBackToTheByte) {
  for (std::uint64_t seed = 1; seed <= 3000 && !HasFailure(); ++seed)
    expect_round_trip(seed, Wild::any_number);
}

// The generator would prove nothing if its pits were empty.
TEST(NotesRandom, PitsHoldEveryListAndTable) {
  std::size_t with_layers = 0;
  std::size_t with_everything = 0;
  for (std::uint64_t seed = 1; seed <= 1000; ++seed) {
    const auto pit = RandomPit(seed, Wild::plausible).pit();
    with_layers += pit->layers.empty() ? 0u : 1u;
    const bool everything = !pit->layers.empty() && !pit->tests.empty() && !pit->signs.empty() &&
                            !pit->strength.empty() && !pit->impurities.empty() && !pit->photos.empty() &&
                            !pit->absences.empty() && pit->site != nullptr && pit->weather != nullptr;
    with_everything += everything ? 1u : 0u;
  }
  EXPECT_GT(with_layers, 200u);
  EXPECT_GT(with_everything, 2u);
}

// Bytes that verify may still hold anything: what is printed of them reads again as the pit in its canonical
// form.
TEST(NotesRandom, DamagedPitsArePrintedWithoutHarm) {
  std::vector<Bytes> wholes = {bytes_of(file_text("tarn-shoulder.txt"))};
  for (std::uint64_t seed = 1; seed <= 60; ++seed) {
    const Wild wild = seed % 2 == 0 ? Wild::plausible : Wild::any_number;
    wholes.push_back(recording::to_bytes(*RandomPit(seed, wild).pit()));
  }
  std::uint64_t state = 7;
  const auto roll = [&](std::size_t sides) {
    state = state * 6364136223846793005u + 1442695040888963407u;
    return static_cast<std::size_t>(state >> 33) % sides;
  };
  std::size_t printed_pits = 0;
  for (int i = 0; i < 20000; ++i) {
    Bytes damaged = wholes[roll(wholes.size())];
    for (std::size_t change = 0; change <= roll(4); ++change) {
      damaged[roll(damaged.size())] = static_cast<std::uint8_t>(roll(256));
    }
    flatbuffers::Verifier verifier(damaged.data(), damaged.size());
    if (!firnbook::VerifyPitBuffer(verifier)) continue;
    auto accepted = recording::from_bytes(*firnbook::GetPit(damaged.data()));
    const Printed printed = print(damaged);
    EXPECT_EQ(printed.lost.empty(), bool(accepted));
    ++printed_pits;
    std::vector<Failure> others;
    auto notes = notation::read_notes(printed.text, {}, others);
    ASSERT_TRUE(notes) << shown(notes.failure()) << "\n" << printed.text;
    if (!accepted) continue;
    const Bytes again = recording::to_bytes(*(*notes).pit);
    ASSERT_EQ(again, recording::to_bytes(**accepted)) << printed.text;
  }
  EXPECT_GT(printed_pits, 1000u);
}

}  // namespace
}  // namespace firn::tests
