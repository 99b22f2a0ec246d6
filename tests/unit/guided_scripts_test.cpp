// Each kind of test told event by event gives what a practitioner would write.
#include <gtest/gtest.h>

#include <functional>
#include <optional>

#include "guided_help.h"

namespace firn::tests {
namespace {

using namespace firnbook;
using recording::target_of;
using recording::to_bytes;

// What is read back from the line is the test, so the line says it all.
void expect_reads_back(Tester& tester, Hand& hand) {
  const Result<const StabilityTestT*> recorded = hand.recorder.guided_test(tester.test);
  ASSERT_TRUE(recorded);
  PitT alone = of_test(**recorded);
  const Result<std::vector<StabilityTestT>> parsed = notation::parse_test(tester.line());
  ASSERT_TRUE(parsed) << tester.line() << ": " << parsed.failure().what;
  ASSERT_EQ(parsed->size(), 1u);
  PitT pit = of_test((*parsed)[0]);
  EXPECT_EQ(to_bytes(pit), to_bytes(alone)) << tester.line();
}

void expect_line(const StabilityTestT& column, const std::string& line,
                 const std::function<void(Tester&)>& script) {
  Hand hand;
  Tester tester(hand, column);
  script(tester);
  EXPECT_EQ(tester.line(), line);
  EXPECT_FALSE(tester.now().allowed & (1u << static_cast<unsigned>(TestEventKind::tap))) << line;
  expect_reads_back(tester, hand);
  EXPECT_EQ(replay(hand.edits), hand.pit());
}
void expect_line(TestKind kind, const std::string& line, const std::function<void(Tester&)>& script) {
  expect_line(Tester::test_of(kind), line, script);
}

TEST(GuidedScripts, CompressionTest) {
  expect_line(TestKind::CT, "CTV (SC) down 20", [](Tester& t) {
    t.tell(TestEventKind::isolating, seen_down(20, FractureCharacter::SC)).stop();
  });
  expect_line(TestKind::CT, "CT12 (SC) down 45 on SH 5.0", [](Tester& t) {
    FractureT seen = seen_down(45, FractureCharacter::SC);
    name_layer(seen, GrainForm::SH, 500);
    t.taps(12).crack(std::move(seen)).stop();
  });
  expect_line(TestKind::CT, "CTN", [](Tester& t) { t.taps(30).stop(); });
  expect_line(TestKind::CT, "CT30 (BRK) down 90",
              [](Tester& t) { t.taps(30).crack(seen_down(90, FractureCharacter::BRK)).stop(); });
  // Stopped before the end, nothing is claimed of what more taps would have done.
  expect_line(TestKind::CT, "CT taps given 20", [](Tester& t) { t.taps(20).stop(); });
  expect_line(TestKind::CT, "CT11 (SC) down 17 taps given 30",
              [](Tester& t) { t.taps(11).crack(seen_down(17, FractureCharacter::SC)).taps(19).stop(); });
  expect_line(TestKind::CT, "CT not valid: sank in", [](Tester& t) {
    StabilityTestT reason;
    reason.not_valid_reason = NotValidReason::sank_in;
    const PitT fields = of_test(reason);
    t.taps(3).tell(TestEventKind::not_valid, nullptr, &fields);
  });
}

// Four fractures in one column: one while it is cut, then the damaged top is taken off twice while the count
// goes on.
TEST(GuidedScripts, FourFracturesInOneColumn) {
  expect_line(TestKind::CT,
              "CTV (SC) down 8; 6 (BRK) down 16; 12 (SP) down 68; 27 (RP) down 107 taps given 30",
              [](Tester& t) {
                t.tell(TestEventKind::isolating, seen_down(8, FractureCharacter::SC));
                t.tell(TestEventKind::slid).tell(TestEventKind::levelled);
                t.taps(6).crack(seen_down(16, FractureCharacter::BRK));
                t.taps(6).crack(seen_down(68, FractureCharacter::SP));
                t.tell(TestEventKind::slid);
                EXPECT_EQ(t.now().state, GuidedState::slid);
                EXPECT_FALSE(allows(t.now(), TestEventKind::tap));
                t.tell(TestEventKind::levelled);
                EXPECT_EQ(t.now().taps, 12);
                t.taps(15).crack(seen_down(107, FractureCharacter::RP)).taps(3).stop();
              });
}

TEST(GuidedScripts, LostCountAndWhatWasNoFracture) {
  expect_line(TestKind::CT, "CT23 (RP) down 40", [](Tester& t) {
    t.taps(9).set_tap(12);
    EXPECT_EQ(t.now().stage, static_cast<std::uint8_t>(LoadStage::elbow));
    EXPECT_EQ(t.now().tap_in_stage, 2);
    t.crack(seen_down(17)).tell_last(TestEventKind::retract);
    EXPECT_EQ(t.line(), "CT");
    t.taps(10).set_tap(23).crack(seen_down(40)).describe([] {
      FractureT how;
      how.character = FractureCharacter::RP;
      return how;
    }());
    t.stop();
  });
}

TEST(GuidedScripts, DeepTapTest) {
  StabilityTestT column = Tester::test_of(TestKind::DT);
  column.slab_left_10um = cm(15);
  expect_line(column, "DT18 (SP) down 135 on DH 3.0 slab left 15", [](Tester& t) {
    FractureT seen = seen_down(135, FractureCharacter::SP);
    name_layer(seen, GrainForm::DH, 300);
    t.taps(18).crack(std::move(seen)).tell(TestEventKind::slid).stop();
  });
  expect_line(TestKind::DT, "DTN", [](Tester& t) { t.taps(30).stop(); });
  expect_line(TestKind::DT, "DTV", [](Tester& t) { t.tell(TestEventKind::isolating).stop(); });
}

TEST(GuidedScripts, ExtendedColumn) {
  expect_line(TestKind::ECT, "ECTPV down 20", [](Tester& t) {
    t.tell(TestEventKind::isolating, seen_down(20)).tell_last(TestEventKind::crossed);
    EXPECT_EQ(t.now().state, GuidedState::ended);
  });
  // In one touch, and in two.
  expect_line(TestKind::ECT, "ECTP13 down 68",
              [](Tester& t) { t.taps(13).tell(TestEventKind::crossed, seen_down(68)); });
  expect_line(TestKind::ECT, "ECTP13 down 68",
              [](Tester& t) { t.taps(13).crack(seen_down(68)).tell_last(TestEventKind::crossed); });
  expect_line(TestKind::ECT, "ECTN12 down 30 taps given 30",
              [](Tester& t) { t.taps(12).crack(seen_down(30)).taps(18).stop(); });
  expect_line(TestKind::ECT, "ECTN30 down 30", [](Tester& t) { t.taps(30).crack(seen_down(30)).stop(); });
  expect_line(TestKind::ECT, "ECTN12", [](Tester& t) {
    t.taps(12).tell(TestEventKind::crack).tell_last(TestEventKind::not_crossed).stop();
  });
  expect_line(TestKind::ECT, "ECTX", [](Tester& t) { t.taps(30).stop(); });
  expect_line(TestKind::ECT, "ECTN12 down 30; P23 down 68", [](Tester& t) {
    t.taps(12).crack(seen_down(30)).taps(11).tell(TestEventKind::crossed, seen_down(68));
    EXPECT_EQ(t.now().next, recording::Sentence::ended_crossed);
  });
}

// Both rules are kept: the taps are stored, and the letter follows the rule that the test names.
TEST(GuidedScripts, CrossingRules) {
  const auto expect = [](std::optional<CrossingRule> rule, int later, const std::string& line) {
    StabilityTestT column = Tester::test_of(TestKind::ECT);
    if (rule) column.crossing_rule = *rule;
    expect_line(column, line, [later](Tester& t) {
      t.taps(12).tell(TestEventKind::crack).taps(later).tell_last(TestEventKind::crossed);
    });
  };
  expect({}, 0, "ECTP12");
  expect(CrossingRule::same_tap, 0, "ECTP12 rule same tap");
  expect(CrossingRule::one_more_tap, 0, "ECTP12 rule one more tap");
  expect({}, 1, "ECT crack 12 cross 13");
  expect(CrossingRule::same_tap, 1, "ECTN12 cross 13 rule same tap");
  expect(CrossingRule::one_more_tap, 1, "ECTP12 cross 13 rule one more tap");
  expect({}, 2, "ECTN12 cross 14");
  expect(CrossingRule::same_tap, 2, "ECTN12 cross 14 rule same tap");
  expect(CrossingRule::one_more_tap, 2, "ECTN12 cross 14 rule one more tap");
}

TEST(GuidedScripts, ACrossingOneTapLaterAsksForTheRule) {
  Hand hand;
  Tester t(hand, TestKind::ECT);
  t.taps(12).tell(TestEventKind::crack).taps(1).tell_last(TestEventKind::crossed);
  EXPECT_EQ(t.now().missing_of_test, std::uint64_t{1} << 10);
  EXPECT_EQ(t.now().record, recording::Sentence::say_depth);
  t.describe(seen_down(40));
  EXPECT_EQ(t.now().record, recording::Sentence::say_rule);
}

TEST(GuidedScripts, SawTest) {
  StabilityTestT column = Tester::test_of(TestKind::PST);
  column.column_length_10um = cm(100);
  expect_line(column, "PST 34/100 (End) down 56", [](Tester& t) {
    t.tell(TestEventKind::cut_to, Tester::cut_at(20)).tell(TestEventKind::cut_to, Tester::cut_at(34));
    t.tell(TestEventKind::ran, Tester::ran_to(SawEnd::End, 56));
  });
  expect_line(column, "PST 34/100 (SF) down 56", [](Tester& t) {
    FractureT seen = Tester::ran_to(SawEnd::SF, 56);
    seen.cut_10um = cm(34);
    t.tell(TestEventKind::ran, std::move(seen));
  });
  expect_line(column, "PST 34/100 (Arr) down 56; 60 (End) down 56", [](Tester& t) {
    t.tell(TestEventKind::cut_to, Tester::cut_at(34))
        .tell(TestEventKind::ran, Tester::ran_to(SawEnd::Arr, 56));
    EXPECT_EQ(t.now().next, recording::Sentence::saw_after_arrest);
    t.tell(TestEventKind::cut_to, Tester::cut_at(60))
        .tell(TestEventKind::ran, Tester::ran_to(SawEnd::End, 56));
  });
  expect_line(column, "PST no fracture column length 100",
              [](Tester& t) { t.tell(TestEventKind::cut_to, Tester::cut_at(100)).stop(); });
}

TEST(GuidedScripts, Rutschblock) {
  const auto loaded = [](Tester& t, std::uint8_t upto) {
    for (std::uint8_t step = 2; step <= upto; ++step) t.tell(TestEventKind::loaded, Tester::step_at(step));
  };
  const auto seen = [](std::int32_t depth_cm, ReleaseType release) {
    FractureT fracture = seen_down(depth_cm);
    fracture.release = release;
    return fracture;
  };
  expect_line(TestKind::RB, "RB1 (WB) down 30", [&](Tester& t) {
    t.tell(TestEventKind::isolating, seen(30, ReleaseType::WB));
    EXPECT_EQ(t.now().state, GuidedState::ended);
  });
  expect_line(TestKind::RB, "RB4 (WB) down 52", [&](Tester& t) {
    loaded(t, 4);
    t.crack(seen_down(52));
    EXPECT_EQ(t.now().state, GuidedState::due);
    FractureT release;
    release.release = ReleaseType::WB;
    t.describe(std::move(release));
    EXPECT_EQ(t.now().state, GuidedState::ended);
  });
  expect_line(TestKind::RB, "RB3 (EB) down 20; 5 (WB) jump 2 down 52", [&](Tester& t) {
    loaded(t, 3);
    t.crack(seen(20, ReleaseType::EB));
    t.tell(TestEventKind::loaded, Tester::step_at(5, 1)).tell(TestEventKind::loaded, Tester::step_at(5, 2));
    t.crack(seen(52, ReleaseType::WB));
  });
  expect_line(TestKind::RB, "RB7", [&](Tester& t) {
    loaded(t, 6);
    EXPECT_EQ(t.now().state, GuidedState::full);
    t.stop();
  });
}

TEST(GuidedScripts, ShearTests) {
  const auto eased = [](std::int32_t depth_cm, ShearEase ease) {
    FractureT fracture = seen_down(depth_cm);
    fracture.ease = ease;
    return fracture;
  };
  expect_line(TestKind::ST, "STM down 22; H down 60",
              [&](Tester& t) { t.crack(eased(22, ShearEase::M)).crack(eased(60, ShearEase::H)).stop(); });
  expect_line(TestKind::ST, "STC down 22",
              [&](Tester& t) { t.tell(TestEventKind::isolating, seen_down(22)).stop(); });
  expect_line(TestKind::ST, "STN", [](Tester& t) { t.stop(); });
  expect_line(TestKind::hand_shear, "hand shear easy down 22",
              [&](Tester& t) { t.crack(eased(22, ShearEase::E)).stop(); });
}

TEST(GuidedScripts, TheAnswerCountsStagesAndSaysWhatIsMissing) {
  Hand hand;
  Tester t(hand, TestKind::CT);
  EXPECT_EQ(t.now().next, recording::Sentence::cut_column);
  EXPECT_EQ(t.now().watch, recording::Sentence::watch_cutting);
  EXPECT_EQ(t.now().stage, 0);
  const LoadStage stages[] = {LoadStage::wrist, LoadStage::elbow, LoadStage::shoulder};
  for (int tap = 1; tap <= 30; ++tap) {
    t.taps(1);
    EXPECT_EQ(t.now().taps, tap);
    EXPECT_EQ(t.now().stage, static_cast<std::uint8_t>(stages[(tap - 1) / 10]));
    EXPECT_EQ(t.now().tap_in_stage, (tap - 1) % 10 + 1);
  }
  EXPECT_EQ(t.now().state, GuidedState::full);
  t.tell(TestEventKind::crack);
  EXPECT_EQ(t.now().record, recording::Sentence::say_depth);
  t.describe(seen_down(40));
  EXPECT_EQ(t.now().record, recording::Sentence::say_how_it_broke);
  FractureT how;
  how.quality = ShearQuality::Q1;
  t.describe(std::move(how));
  EXPECT_EQ(t.now().record, recording::Sentence::none);
  EXPECT_EQ(t.now().missing, 0u);
}

// ---- pause, undo, corrections ----------------------------------------------------------------------------

TEST(GuidedScripts, GoesOnAfterTheAppWasKilledAtAnyPoint) {
  Hand hand;
  Tester t(hand, TestKind::CT);
  t.tell(TestEventKind::isolating, seen_down(8)).taps(4).crack(seen_down(16)).tell(TestEventKind::slid);
  t.tell(TestEventKind::levelled).taps(2).set_tap(21).crack(seen_down(40)).tell_last(TestEventKind::retract);
  t.taps(9).stop();
  Recorder whole{pit::Limits{}};
  for (std::size_t count = 0; count < hand.edits.size(); ++count) {
    const Bytes& next = hand.edits[count];
    ASSERT_TRUE(whole.apply(next.data(), next.size()));
    Recorder fresh{pit::Limits{}};
    for (std::size_t i = 0; i <= count; ++i) {
      ASSERT_TRUE(fresh.apply(hand.edits[i].data(), hand.edits[i].size()));
    }
    const Result<Guidance> a = whole.guided(t.test);
    const Result<Guidance> b = fresh.guided(t.test);
    ASSERT_TRUE(a && b);
    EXPECT_EQ(a->state, b->state);
    EXPECT_EQ(a->taps, b->taps);
    EXPECT_EQ(a->allowed, b->allowed);
    EXPECT_EQ(pit_of(whole), pit_of(fresh));
    const bool is_open = fresh.open_test(7).thing() == Thing::test;
    EXPECT_EQ(is_open, count + 1 < hand.edits.size());
  }
}

TEST(GuidedScripts, UndoTakesBackEventsLikeAnyEdit) {
  Hand hand;
  Tester t(hand, TestKind::CT);
  t.taps(11);
  const Bytes before = hand.pit();
  t.taps(1);
  const EditKey tap = hand.last();
  t.crack(seen_down(17));
  const EditKey crack = hand.last();
  t.describe(seen_down(18, FractureCharacter::SP)).stop();
  const Bytes done = hand.pit();
  const EditKey undo = hand.undo(tap);
  EXPECT_EQ(t.line(), "CT11 (SP) down 18");
  hand.redo(tap);
  EXPECT_EQ(hand.pit(), done);
  (void)undo;
  // What was said of a fracture goes with it, and not to another one.
  hand.undo(crack);
  EXPECT_EQ(t.line(), "CT taps given 12");
  hand.redo(crack);
  EXPECT_EQ(hand.pit(), done);
  EXPECT_NE(before, done);
}

TEST(GuidedScripts, PlainCorrectionsAreKept) {
  Hand hand;
  Tester t(hand, TestKind::CT);
  t.taps(12).crack(seen_down(17));
  const Target fracture = t.last();
  FractureT better = seen_down(19);
  name_layer(better, GrainForm::SH);
  hand.change(fracture, of_fracture(std::move(better)));
  StabilityTestT words;
  words.words = "windy";
  hand.change(t.test, of_test(words));
  t.taps(2);
  EXPECT_EQ(t.line(), "CT12 down 19 on SH test \"windy\"");
  // A fracture that was taken out by hand is gone for the events as well.
  hand.remove(fracture);
  EXPECT_FALSE(allows(t.now(), TestEventKind::describe));
  EXPECT_EQ(t.refused(TestEventKind::describe, &fracture), FIRN_BAD_EDIT);
}

TEST(GuidedScripts, AFractureThatWasNoneOpensTheTestAgain) {
  Hand hand;
  Tester t(hand, TestKind::ECT);
  t.taps(13).tell(TestEventKind::crossed);
  EXPECT_EQ(t.now().state, GuidedState::ended);
  t.tell_last(TestEventKind::retract);
  EXPECT_EQ(t.now().state, GuidedState::loading);
  t.taps(17).stop();
  EXPECT_EQ(t.line(), "ECTX");
}

// ---- the demo pit tap by tap -----------------------------------------------------------------------------

void tap_by_tap(Hand& hand, const StabilityTestT& wanted) {
  StabilityTestT column = Tester::test_of(*wanted.kind);
  column.column_length_10um = wanted.column_length_10um;
  Tester t(hand, column);
  const FractureT& broke = *wanted.fractures[0];
  FractureT seen;
  seen.depth = std::make_unique<Depth>(*broke.depth);
  if (wanted.kind == TestKind::PST) {
    for (const std::int32_t cut : {10, 20, 32}) t.tell(TestEventKind::cut_to, Tester::cut_at(cut));
    seen.saw_end = broke.saw_end;
    t.tell(TestEventKind::ran, std::move(seen));
  } else if (wanted.kind == TestKind::ECT) {
    t.taps(*broke.tap).tell(TestEventKind::crack).tell_last(TestEventKind::crossed).describe(std::move(seen));
  } else {
    t.taps(*broke.tap).tell(TestEventKind::crack).describe(std::move(seen));
    FractureT how;
    how.character = broke.character;
    t.describe(std::move(how)).stop();
  }
  if (broke.on == nullptr) return;
  FractureT layer;
  layer.on = std::make_unique<LayerT>(*broke.on);
  t.describe(std::move(layer));
}

TEST(GuidedScripts, TarnShoulderTapByTap) {
  const auto pit = tarn_shoulder();
  Hand hand;
  PitT rest = *pit;
  rest.tests.clear();
  PitT things;
  things.layers.swap(rest.layers);
  things.temperatures.swap(rest.temperatures);
  things.densities.swap(rest.densities);
  things.observers.swap(rest.observers);
  things.signs.swap(rest.signs);
  things.remarks.swap(rest.remarks);
  for (const auto& test : pit->tests) tap_by_tap(hand, *test);
  hand.add(things);
  hand.set(rest);
  EXPECT_EQ(hand.pit(), to_bytes(*pit));
  EXPECT_GT(hand.edits.size(), 70u);
}

}  // namespace
}  // namespace firn::tests
