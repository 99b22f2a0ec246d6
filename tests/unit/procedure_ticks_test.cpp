// Ticks in a pit: recorded by two people, printed and read back, and what the report makes of those missing.
#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "interpretation_help.h"
#include "note/words.h"
#include "notes_help.h"
#include "procedure/procedure.h"
#include "recording_help.h"

namespace firn::tests {
namespace {

using firnbook::StepKind;
using procedure::Ticked;
using procedure::Ticks;

void tick(PitT& pit, StepKind kind, bool done) {
  auto step = std::make_unique<firnbook::StepT>();
  step->kind = kind;
  step->done = done;
  pit.steps.push_back(std::move(step));
}

// Every step that guards people, but for those left out.
void tick_guards(PitT& pit, const std::vector<StepKind>& but = {}) {
  std::size_t count = 0;
  const procedure::Step* all = procedure::all_steps(count);
  for (std::size_t i = 0; i < count; ++i) {
    const bool left_out = std::find(but.begin(), but.end(), all[i].kind) != but.end();
    if (all[i].guards_people && !left_out) tick(pit, all[i].kind, true);
  }
}

// "not_ticked pack_closed", in the order of the report.
std::vector<std::string> step_cautions(const PitT& pit) {
  std::vector<std::string> out;
  const Read read(pit);
  for (const firnbook::Caution& one : read.analysis.cautions) {
    const bool missing = one.key() == CautionKey::step_not_ticked;
    if (!missing && one.key() != CautionKey::step_not_done) continue;
    EXPECT_EQ(one.specific(), 1);
    out.push_back(std::string(missing ? "not_ticked " : "not_done ") +
                  firnbook::EnumNameStepKind(static_cast<StepKind>(one.a())));
  }
  return out;
}

std::string path_of_caution(const PitT& pit, CautionKey key) {
  const Read read(pit);
  const firnbook::Caution* one = read.caution(key);
  return one == nullptr ? "" : path_of(one->place());
}

TEST(Ticks, APitWithoutAnyStepSaysNothing) {
  EXPECT_TRUE(step_cautions(PitT()).empty());
  EXPECT_TRUE(step_cautions(*tarn_shoulder()).empty());
  EXPECT_TRUE(step_cautions(*larch_bowl_entry()).empty());
}

TEST(Ticks, EachStepThatGuardsPeopleIsNamedOnceAnyStepStands) {
  PitT pit;
  tick(pit, StepKind::dug_from_below, true);
  const std::vector<std::string> all = {"not_ticked kit_within_reach",
                                        "not_ticked pack_closed",
                                        "not_ticked phone_away_from_transceiver",
                                        "not_ticked spot_of_little_consequence",
                                        "not_ticked nobody_and_nothing_above",
                                        "not_ticked pit_filled_in"};
  EXPECT_EQ(step_cautions(pit), all);
  EXPECT_EQ(path_of_caution(pit, CautionKey::step_not_ticked), "steps");
}

TEST(Ticks, WhatWasDoneIsNotNamed) {
  PitT pit;
  tick_guards(pit);
  EXPECT_TRUE(step_cautions(pit).empty());
  PitT most;
  tick_guards(most, {StepKind::nobody_and_nothing_above});
  EXPECT_EQ(step_cautions(most), std::vector<std::string>{"not_ticked nobody_and_nothing_above"});
}

TEST(Ticks, NoIsNamedWithItsPlace) {
  PitT pit;
  tick_guards(pit, {StepKind::pack_closed});
  tick(pit, StepKind::pack_closed, false);
  EXPECT_EQ(step_cautions(pit), std::vector<std::string>{"not_done pack_closed"});
  EXPECT_EQ(path_of_caution(pit, CautionKey::step_not_done), "steps[5]");
}

// A quality step that was left out is no caution: it concerns the record, not people.
TEST(Ticks, OtherStepsAreNotNamed) {
  PitT pit;
  tick_guards(pit);
  tick(pit, StepKind::wall_vertical_and_shaded, false);
  tick(pit, StepKind::slope_steep_enough, false);
  EXPECT_TRUE(step_cautions(pit).empty());
}

TEST(Ticks, AmongSeveralAnswersNoWins) {
  for (const bool no_first : {true, false}) {
    PitT pit;
    tick_guards(pit);
    tick(pit, StepKind::pack_closed, !no_first);
    tick(pit, StepKind::pack_closed, no_first);
    EXPECT_EQ(step_cautions(pit), std::vector<std::string>{"not_done pack_closed"});
  }
}

TEST(Ticks, AnEntryThatSaysNothingTicksNothing) {
  PitT pit;
  tick_guards(pit, {StepKind::pack_closed});
  pit.steps.push_back(std::make_unique<firnbook::StepT>());
  pit.steps.back()->kind = StepKind::pack_closed;
  pit.steps.push_back(std::make_unique<firnbook::StepT>());
  pit.steps.back()->done = true;
  EXPECT_EQ(step_cautions(pit), std::vector<std::string>{"not_ticked pack_closed"});
}

// The record has a field of its own for that, and a caution.
TEST(Ticks, APitThatWasFilledInNeedsNoSecondTick) {
  PitT pit;
  tick_guards(pit, {StepKind::pit_filled_in});
  EXPECT_EQ(step_cautions(pit), std::vector<std::string>{"not_ticked pit_filled_in"});
  pit.backfilled = true;
  EXPECT_TRUE(step_cautions(pit).empty());
  pit.backfilled = false;
  EXPECT_TRUE(step_cautions(pit).empty());
  EXPECT_NE(Read(pit).caution(CautionKey::not_backfilled), nullptr);
  tick(pit, StepKind::pit_filled_in, false);
  EXPECT_EQ(step_cautions(pit), std::vector<std::string>{"not_done pit_filled_in"});
}

TEST(Ticks, NumbersOfANewerWriterAreKeptAndTickNothing) {
  PitT pit;
  for (int number = 0; number < 256; ++number) tick(pit, static_cast<StepKind>(number), true);
  EXPECT_TRUE(step_cautions(pit).empty());
  PitT newer;
  for (int number = 100; number < 256; ++number) tick(newer, static_cast<StepKind>(number), true);
  EXPECT_EQ(step_cautions(newer).size(), 6u);
  const auto bytes = bytes_of(newer);
  const Ticks ticks(*firnbook::GetPit(bytes.data()));
  EXPECT_TRUE(ticks.any());
  EXPECT_EQ(ticks.of(static_cast<StepKind>(200)).state, Ticked::not_said);
  std::size_t unknown = 0;
  const Read read(newer);
  for (const firnbook::Check& check : read.analysis.checks) {
    unknown += check.code() == firnbook::CheckCode::unknown_code ? 1u : 0u;
  }
  EXPECT_EQ(unknown, 156u);
}

TEST(Ticks, TheNoteNamesTheStep) {
  std::string text;
  note::append_template(text, note::caution_words(CautionKey::step_not_done),
                        {0, static_cast<std::int32_t>(StepKind::nobody_and_nothing_above), 0, 0});
  EXPECT_EQ(text, "A step that guards people was not done: nobody and nothing above.");
  text.clear();
  note::append_template(text, note::caution_words(CautionKey::step_not_ticked), {0, 250, 0, 0});
  EXPECT_EQ(text,
            "Nobody ticked a step that guards people: one that this version does not know. It may not have "
            "been done.");
}

TEST(Ticks, NotesPrintAndReadThem) {
  PitT pit;
  tick(pit, StepKind::pack_closed, true);
  tick(pit, StepKind::nobody_and_nothing_above, false);
  pit.steps.back()->words = "a party came down";
  pit.steps.push_back(std::make_unique<firnbook::StepT>());
  const recording::Bytes bytes = recording::to_bytes(pit);
  const Printed printed = print(bytes);
  EXPECT_EQ(printed.text,
            "step pack closed yes, nobody and nothing above no \"a party came down\", done ~\n");
  EXPECT_TRUE(printed.lost.empty());
  EXPECT_EQ(bytes_of(printed.text), bytes);
  EXPECT_EQ(refusal("step pack closed").what, "expected yes or no, found the end of the line");
}

// Two people tick at the same time; whoever holds both sets of edits holds the same pit.
TEST(Ticks, OfTwoPeopleMerge) {
  Hand tester(7), writer(8);
  const auto add = [](Hand& hand, StepKind kind, bool done) {
    PitT fields;
    tick(fields, kind, done);
    return hand.add(fields);
  };
  add(tester, StepKind::pack_closed, true);
  add(writer, StepKind::pack_closed, true);
  add(writer, StepKind::kit_within_reach, true);
  const auto wrong = add(tester, StepKind::nobody_and_nothing_above, false);
  PitT yes;
  yes.steps.push_back(std::make_unique<firnbook::StepT>());
  yes.steps.back()->done = true;
  tester.change(recording::target_of(wrong, firnbook::Thing::step), yes);
  std::vector<Bytes> one = tester.edits, other = writer.edits;
  one.insert(one.end(), writer.edits.begin(), writer.edits.end());
  other.insert(other.end(), tester.edits.begin(), tester.edits.end());
  const Bytes pit = replay(one);
  EXPECT_EQ(replay(other), pit);
  const Ticks ticks(read(pit));
  EXPECT_EQ(read(pit).steps()->size(), 4u);
  EXPECT_EQ(ticks.of(StepKind::pack_closed).state, Ticked::done);
  EXPECT_EQ(ticks.of(StepKind::kit_within_reach).state, Ticked::done);
  EXPECT_EQ(ticks.of(StepKind::nobody_and_nothing_above).state, Ticked::done);
  EXPECT_EQ(ticks.of(StepKind::pit_filled_in).state, Ticked::not_said);
}

}  // namespace
}  // namespace firn::tests
