// Frames and tickets: what is whole comes back, what is not is told, and nothing is promised too early.
#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>
#include <string>

#include "recording/journal.h"
#include "recording_help.h"
#include "support/checksum.h"

namespace firn::tests {
namespace {

using namespace firnbook;
using recording::Frame;
using recording::FrameKind;
using recording::Gap;
using recording::GapReason;
using recording::JournalMap;
using recording::kFrameHead;
using recording::Loaded;

constexpr char kPit[] = "pit 7 of the Larchwater Range";

JournalMap scan(const Bytes& journal) {
  return recording::scan_journal(journal.data(), journal.size());
}

// A part in memory of its own, so that reading beyond it is seen by a sanitizer.
Bytes first_part(const Bytes& journal, std::size_t size) {
  return Bytes(journal.begin(), journal.begin() + static_cast<std::ptrdiff_t>(size));
}

Bytes frames_of(const Recorder& recorder, std::uint64_t after = 0) {
  Result<Bytes> frames = recorder.frames_after(after);
  EXPECT_TRUE(frames) << frames.failure().what;
  return frames ? *frames : Bytes{};
}
Bytes journal_of(const Recorder& recorder) {
  Result<Bytes> journal = recorder.journal();
  EXPECT_TRUE(journal) << journal.failure().what;
  return journal ? *journal : Bytes{};
}
Loaded load(Recorder& recorder, const Bytes& journal) {
  Result<Loaded> loaded = recorder.load(journal.data(), journal.size());
  EXPECT_TRUE(loaded) << loaded.failure().what;
  return loaded ? *loaded : Loaded{};
}

void seal(Bytes& frame) {
  const std::uint32_t checksum = crc32(frame.data(), 36);
  for (std::size_t b = 0; b < 4; ++b) frame[36 + b] = static_cast<std::uint8_t>(checksum >> (8 * b));
}

void change_hardness(Hand& hand, const Target& layer, HandHardness hardness) {
  PitT fields;
  fields.layers.push_back(std::make_unique<LayerT>());
  fields.layers[0]->hardness = hardness;
  hand.change(layer, fields);
}

// An hour: layers, what was felt in them, tests and their fractures, something taken back now and then.
void record_hour(Hand& hand, int rounds) {
  EXPECT_TRUE(hand.recorder.begin(kPit));
  for (int i = 0; i < rounds; ++i) {
    const Target layer = hand.layer(i, i + 1);
    change_hardness(hand, layer, i % 2 == 0 ? HandHardness::Fist : HandHardness::Pencil);
    PitT fields;
    add_compression_test(fields, static_cast<std::uint8_t>(i % 30 + 1), FractureCharacter::SP, cm(i));
    hand.add(fields);
    if (i % 5 == 4) hand.undo(hand.last());
  }
}

// --- frames ------------------------------------------------------------------------------------------------

TEST(Journal, FramesComeBackAsTheyWereWritten) {
  Hand hand;
  record_hour(hand, 10);
  const Bytes journal = frames_of(hand.recorder);
  const JournalMap map = scan(journal);
  EXPECT_TRUE(map.gaps.empty());
  EXPECT_EQ(map.whole_size, journal.size());
  ASSERT_EQ(map.frames.size(), hand.edits.size() + 1);
  EXPECT_TRUE(map.frames[0].is(FrameKind::pit));
  EXPECT_EQ(std::string(journal.begin() + static_cast<std::ptrdiff_t>(map.frames[0].payload()),
                        journal.begin() + static_cast<std::ptrdiff_t>(map.frames[0].payload() +
                                                                      map.frames[0].payload_size)),
            kPit);
  for (std::size_t i = 0; i < hand.edits.size(); ++i) {
    const Frame& frame = map.frames[i + 1];
    ASSERT_TRUE(frame.is(FrameKind::edit));
    EXPECT_EQ(frame.key.sequence, i + 1);
    EXPECT_EQ(frame.key.device, 7u);
    EXPECT_EQ(frame.offset % recording::kFrameAlignment, 0u);
    ASSERT_EQ(frame.payload_size, hand.edits[i].size());
    EXPECT_TRUE(std::equal(hand.edits[i].begin(), hand.edits[i].end(),
                           journal.begin() + static_cast<std::ptrdiff_t>(frame.payload())));
  }
}

// Wherever the power went: every frame that was whole is there, and nothing else.
TEST(Journal, CutOffAtEveryByteThePrefixIsWhole) {
  Hand hand;
  record_hour(hand, 35);
  const Bytes journal = frames_of(hand.recorder);
  const std::vector<Frame> frames = scan(journal).frames;
  ASSERT_GT(frames.size(), 100u);
  std::size_t whole = 0;  // frames that end within the cut
  for (std::size_t cut = 0; cut <= journal.size(); ++cut) {
    while (whole < frames.size() && frames[whole].offset + frames[whole].size <= cut) ++whole;
    const std::size_t end = whole == 0 ? 0 : frames[whole - 1].offset + frames[whole - 1].size;
    const Bytes part = first_part(journal, cut);
    const JournalMap map = scan(part);
    ASSERT_EQ(map.frames.size(), whole) << cut;
    ASSERT_EQ(map.whole_size, end) << cut;
    for (std::size_t i = 0; i < whole; ++i) ASSERT_EQ(map.frames[i].offset, frames[i].offset) << cut;
    ASSERT_EQ(map.gaps.size(), cut == end ? 0u : 1u) << cut;
    if (cut == end) continue;
    ASSERT_EQ(map.gaps[0].offset, end);
    ASSERT_EQ(map.gaps[0].size, cut - end);
    ASSERT_EQ(map.gaps[0].reason, GapReason::torn) << cut;
    const bool has_head = cut - end >= kFrameHead;
    ASSERT_EQ(map.gaps[0].key.sequence, has_head ? frames[whole].key.sequence : 0u) << cut;
  }
}

// Whatever byte went bad: all frames but the one it stood in are there, and the gap is that frame.
TEST(Journal, OneBadByteAnywhereCostsItsOwnFrameOnly) {
  Hand hand;
  record_hour(hand, 35);
  Bytes journal = frames_of(hand.recorder);
  const std::vector<Frame> frames = scan(journal).frames;
  std::size_t hit = 0;
  Dice dice(5);
  for (std::size_t at = 0; at < journal.size(); ++at) {
    if (at == frames[hit].offset + frames[hit].size) ++hit;
    const auto change = static_cast<std::uint8_t>(1 + dice.roll(255));
    journal[at] ^= change;
    const JournalMap map = scan(journal);
    journal[at] ^= change;
    ASSERT_EQ(map.frames.size(), frames.size() - 1) << at;
    for (std::size_t i = 0; i < map.frames.size(); ++i) {
      ASSERT_EQ(map.frames[i].offset, frames[i < hit ? i : i + 1].offset) << at;
    }
    ASSERT_EQ(map.gaps.size(), 1u) << at;
    ASSERT_EQ(map.gaps[0].offset, frames[hit].offset) << at;
    ASSERT_EQ(map.gaps[0].size, frames[hit].size) << at;
    const bool is_head = at < frames[hit].payload();
    ASSERT_EQ(map.gaps[0].reason, is_head ? GapReason::no_frame : GapReason::damaged) << at;
    if (!is_head) {
      ASSERT_EQ(map.gaps[0].key.sequence, frames[hit].key.sequence) << at;
    }
  }
  ASSERT_EQ(hit, frames.size() - 1);
}

// The same through the recorder: what is left folds to the pit of exactly those edits.
TEST(Journal, WhatIsLeftOfADamagedJournalIsThePitOfTheEditsThatAreLeft) {
  Hand hand;
  record_hour(hand, 12);
  Bytes journal = frames_of(hand.recorder);
  const std::vector<Frame> frames = scan(journal).frames;
  for (std::size_t hit = 1; hit < frames.size(); ++hit) {
    for (const std::size_t at : {frames[hit].offset + 9, frames[hit].payload() + 3}) {
      journal[at] ^= 0x40;
      Recorder damaged{pit::Limits{}};
      const Loaded loaded = load(damaged, journal);
      journal[at] ^= 0x40;
      EXPECT_EQ(loaded.added, hand.edits.size() - 1);
      EXPECT_EQ(loaded.lost_bytes, frames[hit].size);
      std::vector<Bytes> left = hand.edits;
      left.erase(left.begin() + static_cast<std::ptrdiff_t>(hit - 1));
      Bytes other;
      recording::append_frame(other, FrameKind::pit, {}, recording::pit_tag(kPit),
                              reinterpret_cast<const std::uint8_t*>(kPit), sizeof kPit - 1);
      for (const Bytes& edit : left) {
        const EditId& id = *GetEdit(edit.data())->id();
        recording::append_frame(other, FrameKind::edit, {id.device(), id.sequence()},
                                recording::pit_tag(kPit), edit.data(), edit.size());
      }
      Recorder expected{pit::Limits{}};
      load(expected, other);
      ASSERT_EQ(pit_of(damaged), pit_of(expected)) << hit;
    }
  }
}

TEST(Journal, GoesOnAfterATornTailThatNobodyCutOff) {
  Hand hand;
  record_hour(hand, 4);
  const Bytes journal = frames_of(hand.recorder);
  const std::vector<Frame> frames = scan(journal).frames;
  const Frame& torn = frames[3];
  // All ways to tear one frame, with all that came after it appended at once.
  for (std::size_t kept = 1; kept < torn.size; ++kept) {
    Bytes mended = first_part(journal, torn.offset + kept);
    mended.insert(mended.end(), journal.begin() + static_cast<std::ptrdiff_t>(torn.offset + torn.size),
                  journal.end());
    const JournalMap map = scan(mended);
    ASSERT_EQ(map.frames.size(), frames.size() - 1) << kept;
    ASSERT_EQ(map.gaps.size(), 1u) << kept;
    ASSERT_EQ(map.gaps[0].offset, torn.offset);
    ASSERT_EQ(map.gaps[0].size, kept);
  }
}

TEST(Journal, AnyBytesAreReadWithoutHarm) {
  Dice dice(3);
  Hand hand;
  record_hour(hand, 3);
  const Bytes journal = frames_of(hand.recorder);
  for (int i = 0; i < 3000; ++i) {
    Bytes bytes = i % 2 == 0 ? journal : Bytes(dice.roll(300));
    for (std::uint32_t n = i % 2 == 0 ? dice.roll(20) : static_cast<std::uint32_t>(bytes.size()); n > 0;
         --n) {
      bytes[dice.roll(static_cast<std::uint32_t>(bytes.size()))] = static_cast<std::uint8_t>(dice.roll(256));
    }
    const JournalMap map = scan(bytes);
    std::size_t covered = 0;
    for (const Frame& frame : map.frames) covered += frame.size;
    for (const Gap& gap : map.gaps) covered += gap.size;
    ASSERT_EQ(covered, bytes.size());
    Recorder recorder{pit::Limits{}};
    const Result<Loaded> loaded = recorder.load(bytes.data(), bytes.size());
    if (loaded) {
      ASSERT_FALSE(pit_of(recorder).empty());
    } else {
      ASSERT_EQ(recorder.edit_count(), 0u);
    }
  }
}

// Heads that hold but claim the same payload over and over, and do so again for each other.
TEST(Journal, HostileHeadsCostNoMoreThanTheirBytes) {
  const auto time_of = [](std::size_t heads) {
    Bytes journal;
    for (std::size_t i = 0; i < heads; ++i) {
      Bytes frame;
      recording::append_frame(frame, FrameKind::edit, {1, i + 1}, 2, nullptr, 0);
      // All claim half of the journal, and none has the right checksum.
      const std::size_t claimed = heads * kFrameHead / 2;
      for (std::size_t b = 0; b < 4; ++b) frame[24 + b] = static_cast<std::uint8_t>(claimed >> (8 * b));
      frame[32] ^= 1;
      seal(frame);
      journal.insert(journal.end(), frame.begin(), frame.end());
    }
    const auto start = std::chrono::steady_clock::now();
    const JournalMap map = scan(journal);
    const auto took = std::chrono::steady_clock::now() - start;
    EXPECT_EQ(map.frames.size(), 0u);
    EXPECT_EQ(map.gaps.size(), heads);
    return std::chrono::duration<double>(took).count();
  };
  time_of(500);
  const double small = std::min(time_of(500), time_of(500));
  const double large = std::min(time_of(4000), time_of(4000));
  EXPECT_LT(large, 30 * small) << "eight times the bytes took far more than eight times as long";
}

// --- tickets -----------------------------------------------------------------------------------------------

TEST(Tickets, CountWhatArrivesAndPromiseWhatWasAcknowledged) {
  Hand hand;
  EXPECT_EQ(hand.recorder.last_ticket(), 0u);
  ASSERT_TRUE(hand.recorder.begin(kPit));
  ASSERT_TRUE(hand.recorder.begin(kPit));
  EXPECT_EQ(hand.recorder.last_ticket(), 1u);
  hand.layer(0, 10);
  hand.layer(10, 20);
  EXPECT_EQ(hand.recorder.last_ticket(), 3u);
  EXPECT_EQ(hand.recorder.acknowledged(), 0u);
  // The same edit twice is no arrival.
  EXPECT_TRUE(hand.recorder.apply(hand.edits[0].data(), hand.edits[0].size()));
  EXPECT_EQ(hand.recorder.last_ticket(), 3u);
  EXPECT_TRUE(hand.recorder.acknowledge(1));
  EXPECT_EQ(hand.recorder.acknowledged(), 1u);
  EXPECT_TRUE(hand.recorder.acknowledge(3));
  EXPECT_EQ(hand.recorder.acknowledged(), 3u);
}

TEST(Tickets, RefuseWhatWasNotGivenOutOrWasAcknowledgedBefore) {
  Hand hand;
  ASSERT_TRUE(hand.recorder.begin(kPit));
  hand.layer(0, 10);
  hand.layer(10, 20);
  const Bytes before = journal_of(hand.recorder);
  const auto refused = [&](std::uint64_t ticket) {
    const std::uint64_t promised = hand.recorder.acknowledged();
    const Done verdict = hand.recorder.acknowledge(ticket);
    ASSERT_FALSE(verdict) << ticket;
    EXPECT_EQ(verdict.failure().status, FIRN_BAD_TICKET);
    EXPECT_FALSE(verdict.failure().remedy.empty());
    EXPECT_EQ(hand.recorder.acknowledged(), promised);
    EXPECT_TRUE(journal_of(hand.recorder) == before);
  };
  refused(4);
  refused(UINT64_MAX);
  refused(0);
  ASSERT_TRUE(hand.recorder.acknowledge(2));
  refused(2);
  refused(1);
  EXPECT_EQ(hand.recorder.frames_after(4).failure().status, FIRN_BAD_TICKET);
}

// A pit may get its name late, and a journal its first frame last.
TEST(Tickets, ThePitMayBeNamedLate) {
  Hand hand;
  hand.layer(0, 10);
  ASSERT_TRUE(hand.recorder.begin(kPit));
  hand.layer(10, 20);
  EXPECT_EQ(hand.recorder.last_ticket(), 3u);
  Recorder again{pit::Limits{}};
  EXPECT_EQ(load(again, frames_of(hand.recorder)).added, 2u);
  EXPECT_EQ(again.last_ticket(), 3u);
  EXPECT_TRUE(frames_of(again) == frames_of(hand.recorder));
}

TEST(Tickets, FramesSinceATicketAddUpToTheJournal) {
  Hand hand;
  ASSERT_TRUE(hand.recorder.begin(kPit));
  Bytes file;
  std::uint64_t stored = 0;
  for (int i = 0; i < 20; ++i) {
    const Bytes more = frames_of(hand.recorder, stored);
    file.insert(file.end(), more.begin(), more.end());
    stored = hand.recorder.last_ticket();
    for (int n = i % 3; n > 0; --n) hand.layer(i, i + 1);
  }
  const Bytes rest = frames_of(hand.recorder, stored);
  file.insert(file.end(), rest.begin(), rest.end());
  EXPECT_EQ(file, frames_of(hand.recorder));
  EXPECT_TRUE(frames_of(hand.recorder, hand.recorder.last_ticket()).empty());
}

// A host that stores nothing costs nothing but what it recorded.
TEST(Tickets, AHostThatNeverAcknowledgesLosesNothingInMemory) {
  Hand hand;
  record_hour(hand, 20);
  EXPECT_EQ(hand.recorder.acknowledged(), 0u);
  Recorder other{pit::Limits{}};
  load(other, frames_of(hand.recorder));
  EXPECT_EQ(pit_of(other), hand.pit());
}

TEST(Tickets, NoFramesBeforeThePitIsNamed) {
  Hand hand;
  hand.layer(0, 10);
  EXPECT_EQ(hand.recorder.frames_after(0).failure().status, FIRN_WRONG_STATE);
  EXPECT_EQ(hand.recorder.journal().failure().status, FIRN_WRONG_STATE);
  EXPECT_EQ(hand.recorder.begin("").failure().status, FIRN_BAD_ARGUMENT);
  EXPECT_EQ(hand.recorder.begin(std::string(1025, 'x')).failure().status, FIRN_BAD_ARGUMENT);
  EXPECT_EQ(hand.recorder.begin("a\x01").failure().status, FIRN_BAD_UTF8);
  EXPECT_EQ(hand.recorder.begin("\xFE").failure().status, FIRN_BAD_UTF8);
  EXPECT_TRUE(hand.recorder.begin(std::string(1024, 'x')));
  EXPECT_TRUE(hand.recorder.begin(std::string(1024, 'x')));
  EXPECT_EQ(hand.recorder.begin("y").failure().status, FIRN_OTHER_PIT);
  EXPECT_EQ(scan(frames_of(hand.recorder)).frames.size(), 2u);
}

// --- loading -----------------------------------------------------------------------------------------------

// Nothing may show of a journal that was refused.
firn_status refused(Recorder& recorder, const Bytes& journal) {
  const Bytes pit = pit_of(recorder);
  const std::uint64_t ticket = recorder.last_ticket();
  const std::uint64_t clock = recorder.next_clock();
  const Result<Loaded> loaded = recorder.load(journal.data(), journal.size());
  EXPECT_FALSE(loaded);
  if (loaded) return FIRN_OK;
  EXPECT_FALSE(loaded.failure().what.empty());
  EXPECT_FALSE(loaded.failure().remedy.empty());
  EXPECT_EQ(pit_of(recorder), pit);
  EXPECT_EQ(recorder.last_ticket(), ticket);
  EXPECT_EQ(recorder.next_clock(), clock);
  return loaded.failure().status;
}

TEST(Loading, GivesBackWhatWasRecordedAndGoesOn) {
  Hand hand;
  record_hour(hand, 10);
  Recorder again{pit::Limits{}};
  const Loaded loaded = load(again, frames_of(hand.recorder));
  EXPECT_TRUE(loaded.names_pit);
  EXPECT_EQ(loaded.added, hand.edits.size());
  EXPECT_EQ(loaded.frames, hand.edits.size() + 1);
  EXPECT_EQ(loaded.known, 0u);
  EXPECT_EQ(again.last_ticket(), hand.edits.size() + 1);
  EXPECT_EQ(again.next_clock(), hand.recorder.next_clock());
  EXPECT_EQ(again.last_sequence(7), hand.recorder.last_sequence(7));
  EXPECT_EQ(pit_of(again), hand.pit());
  EXPECT_EQ(journal_of(again), journal_of(hand.recorder));
  const Loaded twice = load(again, frames_of(hand.recorder));
  EXPECT_EQ(twice.added, 0u);
  EXPECT_EQ(twice.known, hand.edits.size());
  EXPECT_EQ(again.last_ticket(), hand.edits.size() + 1);
  hand.layer(90, 91);
  EXPECT_TRUE(again.apply(hand.edits.back().data(), hand.edits.back().size()));
  EXPECT_EQ(pit_of(again), hand.pit());
}

TEST(Loading, AnEmptyJournalIsAJournal) {
  Recorder recorder{pit::Limits{}};
  const Bytes nothing(1);
  const Result<Loaded> loaded = recorder.load(nothing.data(), 0);
  ASSERT_TRUE(loaded);
  EXPECT_EQ(loaded->frames, 0u);
  EXPECT_EQ(recorder.load(nullptr, 0).failure().status, FIRN_NULL_ARGUMENT);
}

TEST(Loading, RefusesAnotherPit) {
  Hand ours, theirs(8);
  ASSERT_TRUE(ours.recorder.begin(kPit));
  ASSERT_TRUE(theirs.recorder.begin("another pit"));
  ours.layer(0, 10);
  theirs.layer(0, 20);
  Bytes journal = journal_of(theirs.recorder);
  EXPECT_EQ(refused(ours.recorder, journal), FIRN_OTHER_PIT);
  // Each frame says so, also when the first one is lost.
  journal[0] = 0;
  EXPECT_EQ(refused(ours.recorder, journal), FIRN_OTHER_PIT);
}

TEST(Loading, AJournalThatLostItsNameNeedsOne) {
  Hand hand;
  record_hour(hand, 2);
  Bytes journal = frames_of(hand.recorder);
  journal[0] = 0;
  Recorder nameless{pit::Limits{}};
  EXPECT_EQ(refused(nameless, journal), FIRN_WRONG_STATE);
  ASSERT_TRUE(nameless.begin(kPit));
  const Loaded loaded = load(nameless, journal);
  EXPECT_FALSE(loaded.names_pit);
  EXPECT_EQ(pit_of(nameless), hand.pit());
}

TEST(Loading, FramesOfAnotherPitInTheMidstAreLeftOut) {
  Hand ours, theirs(8);
  ASSERT_TRUE(ours.recorder.begin(kPit));
  ASSERT_TRUE(theirs.recorder.begin("another pit"));
  ours.layer(0, 10);
  theirs.layer(0, 20);
  Bytes journal = journal_of(ours.recorder);
  const std::size_t own = journal.size();
  const Bytes foreign = frames_of(theirs.recorder);
  journal.insert(journal.end(), foreign.begin(), foreign.end());
  Recorder recorder{pit::Limits{}};
  const Loaded loaded = load(recorder, journal);
  EXPECT_EQ(loaded.added, 1u);
  ASSERT_EQ(loaded.gaps.size(), 2u);
  EXPECT_EQ(loaded.gaps[0].offset, own);
  EXPECT_EQ(loaded.gaps[1].reason, GapReason::other_pit);
  // They are whole: nobody is told to cut them off.
  EXPECT_EQ(loaded.whole_size, journal.size());
}

TEST(Loading, RefusesTwoEditsWithOneNumberAndNamesThem) {
  Hand ours(7), theirs(7);
  ASSERT_TRUE(ours.recorder.begin(kPit));
  ASSERT_TRUE(theirs.recorder.begin(kPit));
  ours.layer(0, 10);
  theirs.layer(0, 10);
  ours.layer(10, 20);
  theirs.layer(10, 30);
  EXPECT_EQ(refused(ours.recorder, journal_of(theirs.recorder)), FIRN_DUPLICATE_EDIT);
  const Bytes journal = journal_of(theirs.recorder);
  const std::string what = ours.recorder.load(journal.data(), journal.size()).failure().what;
  EXPECT_NE(what.find("number 2 of device 7"), std::string::npos) << what;
  // Within one journal too.
  Bytes both = journal_of(ours.recorder);
  const Bytes more = frames_of(theirs.recorder, 2);
  both.insert(both.end(), more.begin(), more.end());
  Recorder third{pit::Limits{}};
  EXPECT_EQ(refused(third, both), FIRN_DUPLICATE_EDIT);
}

TEST(Loading, RefusesAnEditBeyondTheLimits) {
  Hand hand;
  ASSERT_TRUE(hand.recorder.begin(kPit));
  hand.layer(0, 10);
  PitT fields;
  fields.title = std::string(3000, 't');
  hand.set(fields);
  pit::Limits limits;
  limits.max_bytes = 2000;
  Recorder small{limits};
  EXPECT_EQ(refused(small, journal_of(hand.recorder)), FIRN_TOO_LARGE);
}

// A frame of some edit, whole in itself.
Bytes frame_with(FrameKind kind, EditKey key, const Bytes& payload) {
  Bytes out;
  recording::append_frame(out, kind, key, recording::pit_tag(kPit), payload.data(), payload.size());
  return out;
}
TEST(Loading, LeavesOutWholeFramesWithEditsThatAreNone) {
  Hand hand;
  ASSERT_TRUE(hand.recorder.begin(kPit));
  hand.layer(0, 10);
  Bytes broken = hand.edits[0];
  broken[0] = 0xFF;
  Bytes journal = journal_of(hand.recorder);
  for (const Bytes& frame :
       {frame_with(FrameKind::edit, {7, 2}, broken), frame_with(FrameKind::edit, {7, 3}, hand.edits[0])}) {
    journal.insert(journal.end(), frame.begin(), frame.end());
  }
  Recorder recorder{pit::Limits{}};
  const Loaded loaded = load(recorder, journal);
  EXPECT_EQ(loaded.added, 1u);
  ASSERT_EQ(loaded.gaps.size(), 2u);
  EXPECT_EQ(loaded.gaps[0].reason, GapReason::bad_edit);
  EXPECT_EQ(loaded.gaps[1].reason, GapReason::bad_edit);
  EXPECT_EQ(loaded.whole_size, journal.size());
  // Their numbers are taken: others may hold what was meant.
  EXPECT_EQ(recorder.last_sequence(7), 3u);
}

TEST(Loading, NumbersOfEditsThatDamageTookAreNotGivenOutAgain) {
  Hand hand;
  ASSERT_TRUE(hand.recorder.begin(kPit));
  hand.layer(0, 10);
  hand.layer(10, 20);
  Bytes journal = frames_of(hand.recorder);
  journal[journal.size() - 20] ^= 1;
  Recorder again{pit::Limits{}};
  EXPECT_EQ(load(again, journal).added, 1u);
  EXPECT_EQ(again.last_sequence(7), 2u);
  EXPECT_EQ(again.last_sequence(8), 0u);
}

// An edit whose target is not there yet has no effect, and has it when the target comes.
TEST(Loading, TakesEditsBeforeTheirTargets) {
  Hand hand;
  ASSERT_TRUE(hand.recorder.begin(kPit));
  const Target layer = hand.layer(0, 10);
  change_hardness(hand, layer, HandHardness::Pencil);
  const Bytes all = frames_of(hand.recorder);
  const Bytes later = frames_of(hand.recorder, 2);
  Recorder recorder{pit::Limits{}};
  ASSERT_TRUE(recorder.begin(kPit));
  EXPECT_EQ(load(recorder, later).added, 1u);
  EXPECT_EQ(read(pit_of(recorder)).layers(), nullptr);
  EXPECT_EQ(load(recorder, all).added, 1u);
  EXPECT_EQ(pit_of(recorder), hand.pit());
}

// --- newer versions ----------------------------------------------------------------------------------------

Bytes newer_edit(EditKey key, std::uint64_t clock) {
  flatbuffers::FlatBufferBuilder builder;
  const EditId id(key.device, key.sequence);
  EditBuilder edit(builder);
  edit.add_clock(clock);
  edit.add_id(&id);
  edit.add_schema_minor(pit::kSchemaMinor + 1);
  FinishEditBuffer(builder, edit.Finish());
  return Bytes(builder.GetBufferPointer(), builder.GetBufferPointer() + builder.GetSize());
}

class Newer : public testing::Test {
 protected:
  Newer() {
    EXPECT_TRUE(hand.recorder.begin(kPit));
    hand.layer(0, 10);
    journal = journal_of(hand.recorder);
  }
  void append(const Bytes& frame) { journal.insert(journal.end(), frame.begin(), frame.end()); }
  Bytes frame_of_kind(std::uint8_t kind, std::uint8_t version, const Bytes& payload) {
    Bytes frame = frame_with(FrameKind::edit, {9, 4}, payload);
    frame[4] = version;
    frame[5] = kind;
    seal(frame);
    return frame;
  }

  Hand hand;
  Bytes journal;
};

TEST_F(Newer, FramesAreKeptAndPassedOn) {
  append(frame_with(FrameKind::edit, {9, 5}, newer_edit({9, 5}, 70)));
  append(frame_of_kind(77, 1, {1, 2, 3}));
  append(frame_of_kind(77, 1, {1, 2, 4}));
  append(frame_of_kind(2, 9, {5}));
  Recorder recorder{pit::Limits{}};
  const Loaded loaded = load(recorder, journal);
  EXPECT_EQ(loaded.added, 1u);
  EXPECT_EQ(loaded.kept, 4u);
  EXPECT_TRUE(loaded.gaps.empty());
  EXPECT_EQ(recorder.kept_count(), 4u);
  EXPECT_EQ(recorder.edit_count(), 1u);
  EXPECT_EQ(recorder.last_ticket(), 6u);
  EXPECT_EQ(frames_of(recorder), journal);
  EXPECT_EQ(read(pit_of(recorder)).unread_edits().value_or(0), 4u);
  EXPECT_FALSE(read(hand.pit()).unread_edits());
  // Merged, in whatever order, they are there once.
  Recorder one_way{pit::Limits{}};
  load(one_way, journal);
  load(one_way, journal_of(recorder));
  Recorder other_way{pit::Limits{}};
  load(other_way, journal_of(recorder));
  load(other_way, journal);
  EXPECT_EQ(journal_of(one_way), journal_of(other_way));
  EXPECT_EQ(one_way.kept_count(), 4u);
  EXPECT_EQ(pit_of(one_way), pit_of(other_way));
}

TEST_F(Newer, EditsTakeTheirNumbersAndTheirTime) {
  append(frame_with(FrameKind::edit, {7, 5}, newer_edit({7, 5}, 70)));
  Recorder recorder{pit::Limits{}};
  load(recorder, journal);
  EXPECT_EQ(recorder.last_sequence(7), 5u);
  EXPECT_EQ(recorder.next_clock(), 71u);
  PitT fields;
  fields.title = "x";
  EditHead head;
  head.key = {7, 5};
  head.clock = 71;
  const Bytes same_number = make_set(head, fields);
  EXPECT_EQ(recorder.apply(same_number.data(), same_number.size()).failure().status, FIRN_DUPLICATE_EDIT);
  // What could not be read was not seen.
  EXPECT_TRUE(recorder.seen_by(8).size() == 1 && recorder.seen_by(8)[0].up_to() == 1);
}

TEST_F(Newer, ClocksBeyondTheirRangeStopNobody) {
  append(frame_with(FrameKind::edit, {9, 5}, newer_edit({9, 5}, UINT64_MAX)));
  Recorder recorder{pit::Limits{}};
  load(recorder, journal);
  EXPECT_EQ(recorder.next_clock(), recording::kLastClock);
  PitT fields;
  fields.title = "x";
  EditHead head;
  head.key = {7, 9};
  head.clock = recorder.next_clock();
  const Bytes edit = make_set(head, fields);
  EXPECT_TRUE(recorder.apply(edit.data(), edit.size()));
}

// --- undo and redo without limit ---------------------------------------------------------------------------

TEST(UndoSteps, WalkBackAndForthAsOftenAsOneLikes) {
  Hand hand;
  ASSERT_TRUE(hand.recorder.begin(kPit));
  std::vector<Bytes> pits = {hand.pit()};
  for (int i = 0; i < 12; ++i) {
    hand.layer(i, i + 1);
    pits.push_back(hand.pit());
  }
  std::size_t at = 12;
  Dice dice(11);
  for (int i = 0; i < 300; ++i) {
    // The steps follow from the edits alone: a recorder that was loaded walks on.
    Recorder reborn{pit::Limits{}};
    if (i % 20 == 0) load(reborn, journal_of(hand.recorder));
    const recording::UndoSteps steps = hand.recorder.undo_steps(7);
    if (i % 20 == 0) {
      EXPECT_EQ(reborn.undo_steps(7).undo, steps.undo);
      EXPECT_EQ(reborn.undo_steps(7).redo, steps.redo);
    }
    ASSERT_EQ(steps.undo != 0, at > 0) << i;
    ASSERT_EQ(steps.redo != 0, at < 12) << i;
    if (dice.roll(2) == 0) {
      if (at == 0) continue;
      hand.undo({7, steps.undo});
      --at;
    } else {
      if (at == 12) continue;
      hand.redo({7, steps.redo});
      ++at;
    }
    ASSERT_EQ(hand.pit(), pits[at]) << i;
  }
}

TEST(UndoSteps, NothingToRedoOnceSomethingNewWasRecorded) {
  Hand hand;
  hand.layer(0, 10);
  const EditKey first = hand.last();
  hand.layer(10, 20);
  hand.undo(hand.last());
  EXPECT_EQ(hand.recorder.undo_steps(7).redo, 2u);
  EXPECT_EQ(hand.recorder.undo_steps(7).undo, first.sequence);
  hand.layer(20, 30);
  EXPECT_EQ(hand.recorder.undo_steps(7).redo, 0u);
  EXPECT_EQ(hand.recorder.undo_steps(7).undo, hand.last().sequence);
  // Others have steps of their own.
  EXPECT_EQ(hand.recorder.undo_steps(8).undo, 0u);
  EXPECT_EQ(hand.recorder.undo_steps(8).redo, 0u);
}

}  // namespace
}  // namespace firn::tests
