// Merging journals: a union of sets, so order, grouping and repetition cannot matter. Shown on journals of
// several people who change each other's things at random, with edits missing at random.
#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <string>

#include "recording/journal.h"
#include "recording_anybody.h"
#include "recording_help.h"

namespace firn::tests {
namespace {

using recording::FrameKind;
using recording::Loaded;

constexpr char kPit[] = "p";

Bytes journal_of(const Recorder& recorder) {
  Result<Bytes> journal = recorder.journal();
  EXPECT_TRUE(journal) << journal.failure().what;
  return journal ? *journal : Bytes{};
}

// The pit named, then these edits.
Bytes journal_with(const std::vector<const Bytes*>& edits) {
  const std::uint32_t tag = recording::pit_tag(kPit);
  Bytes out;
  recording::append_frame(out, FrameKind::pit, {}, tag, reinterpret_cast<const std::uint8_t*>(kPit), 1);
  for (const Bytes* edit : edits) {
    const recording::EditKey key = recording::key_of(*firnbook::GetEdit(edit->data())->id());
    recording::append_frame(out, FrameKind::edit, key, tag, edit->data(), edit->size());
  }
  return out;
}

std::size_t load(Recorder& recorder, const Bytes& journal) {
  const Result<Loaded> loaded = recorder.load(journal.data(), journal.size());
  EXPECT_TRUE(loaded) << loaded.failure().what;
  return loaded ? loaded->added : 0;
}

// Some edits of one person, and those of three others who went on from there, apart.
std::vector<Bytes> record_apart(std::uint64_t seed) {
  Anybody first(seed, 4);
  for (int taken = 0; taken < 2;) taken += first.act() ? 1 : 0;
  std::vector<Bytes> all = first.hand().edits;
  const std::vector<Bytes> base = all;
  for (std::uint64_t device = 1; device <= 3; ++device) {
    Anybody other(seed * 7 + device, device);
    for (const Bytes& edit : base) other.take(edit);
    for (int taken = 0; taken < 2;) taken += other.act() ? 1 : 0;
    all.insert(all.end(), other.hand().edits.begin(), other.hand().edits.end());
  }
  return all;
}

Bytes some_of(const std::vector<Bytes>& edits, Dice& dice) {
  std::vector<const Bytes*> some;
  for (const Bytes& edit : edits) {
    if (dice.roll(3) == 0) some.push_back(&edit);
  }
  dice.shuffle(some);
  return journal_with(some);
}

// Parts run beside each other; together they make the number of pairs.
constexpr int kParts = 4;
constexpr int kPairs = 25000;
constexpr int kPairsOfAWorld = 50;

class Merge : public testing::TestWithParam<int> {};
INSTANTIATE_TEST_SUITE_P(Parts, Merge, testing::Range(0, kParts));

TEST_P(Merge, CommutesAssociatesAndRepeatsHarmlessly) {
  Dice dice(static_cast<std::uint64_t>(GetParam()) + 1);
  std::vector<Bytes> world;
  std::size_t differed = 0;
  for (int pair = 0; pair < kPairs; ++pair) {
    if (pair % kPairsOfAWorld == 0) {
      world = record_apart(static_cast<std::uint64_t>(GetParam() * kPairs + pair) + 1);
    }
    const Bytes a = some_of(world, dice);
    const Bytes b = some_of(world, dice);
    const Bytes c = journal_with({&world[dice.roll(static_cast<std::uint32_t>(world.size()))]});

    Recorder ab{pit::Limits{}}, ba{pit::Limits{}};
    load(ab, a);
    if (load(ab, b) > 0) ++differed;
    load(ba, b);
    load(ba, a);
    const Bytes merged = journal_of(ab);
    ASSERT_EQ(merged, journal_of(ba)) << pair;
    ASSERT_EQ(pit_of(ab), pit_of(ba)) << pair;

    const std::uint64_t tickets = ab.last_ticket();
    ASSERT_EQ(load(ab, b), 0u) << pair;
    ASSERT_EQ(ab.last_ticket(), tickets);
    ASSERT_EQ(journal_of(ab), merged) << pair;

    // (a + b) + c and a + (b + c)
    Recorder bc{pit::Limits{}}, a_bc{pit::Limits{}};
    load(ab, c);
    load(bc, c);
    load(bc, b);
    load(a_bc, a);
    load(a_bc, journal_of(bc));
    ASSERT_EQ(journal_of(ab), journal_of(a_bc)) << pair;
  }
  EXPECT_GT(differed, static_cast<std::size_t>(kPairs) / 2) << "most pairs must have something to merge";
}

// What was recorded live is what its journal folds to, in the order of arrival and in canonical order.
TEST(Merging, TheFoldOfAJournalIsThePit) {
  for (std::uint64_t seed = 1; seed <= 200; ++seed) {
    Anybody who(seed, 5);
    for (int i = 0; i < 40; ++i) who.act();
    Recorder& live = who.hand().recorder;
    ASSERT_TRUE(live.begin(kPit));
    const Result<Bytes> arrived = live.frames_after(0);
    ASSERT_TRUE(arrived);
    Recorder one{pit::Limits{}}, other{pit::Limits{}};
    load(one, *arrived);
    load(other, journal_of(live));
    ASSERT_EQ(pit_of(one), who.hand().pit()) << seed;
    ASSERT_EQ(pit_of(other), who.hand().pit()) << seed;
    ASSERT_EQ(journal_of(one), journal_of(other));
  }
}

// Undo and its undo leave the pit alone, also in what was merged, where edits may hang in the air.
TEST(Merging, UndoneAndRedoneIsAsItWas) {
  Dice dice(9);
  for (std::uint64_t seed = 1; seed <= 400; ++seed) {
    const std::vector<Bytes> world = record_apart(seed);
    Recorder recorder{pit::Limits{}};
    load(recorder, some_of(world, dice));
    load(recorder, some_of(world, dice));
    const Bytes before = pit_of(recorder);
    for (const Bytes& edit : world) {
      const recording::EditKey key = recording::key_of(*firnbook::GetEdit(edit.data())->id());
      EditHead head;
      head.key = {11, recorder.last_sequence(11) + 1};
      head.clock = recorder.next_clock();
      const Bytes undo = recording::make_undo(head, key);
      if (!recorder.apply(undo.data(), undo.size())) continue;
      const recording::EditKey undone = head.key;
      head.key.sequence += 1;
      head.clock = recorder.next_clock();
      const Bytes redo =
          dice.roll(2) == 0 ? recording::make_undo(head, undone) : recording::make_redo(head, key);
      ASSERT_TRUE(recorder.apply(redo.data(), redo.size()));
      // A redo of an edit that had been taken back before counts it anew, so only the undo's own undo is
      // exact.
      if (firnbook::GetEdit(redo.data())->change()->kind() == firnbook::ChangeKind::undo) {
        ASSERT_EQ(pit_of(recorder), before) << seed;
      } else {
        const Bytes back = [&] {
          head.key.sequence += 1;
          head.clock = recorder.next_clock();
          return recording::make_undo(head, {11, head.key.sequence - 1});
        }();
        ASSERT_TRUE(recorder.apply(back.data(), back.size()));
        head.key.sequence += 1;
        head.clock = recorder.next_clock();
        const Bytes last = recording::make_undo(head, undone);
        ASSERT_TRUE(recorder.apply(last.data(), last.size()));
        ASSERT_EQ(pit_of(recorder), before) << seed;
      }
    }
  }
}

}  // namespace
}  // namespace firn::tests
