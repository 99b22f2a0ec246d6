// Events that cannot happen: refused with a reason, and everything exactly as it was.
#include <gtest/gtest.h>

#include "guided_help.h"

namespace firn::tests {
namespace {

using namespace firnbook;
using recording::make_event;
using recording::target_of;

TEST(GuidedRefused, EventsOutOfOrder) {
  Hand hand;
  Tester ct(hand, TestKind::CT);
  for (const TestEventKind event : {TestEventKind::crack, TestEventKind::slid, TestEventKind::levelled,
                                    TestEventKind::stop, TestEventKind::crossed}) {
    EXPECT_EQ(ct.refused(event), FIRN_BAD_EDIT) << EnumNameTestEventKind(event);
  }
  ct.taps(1);
  EXPECT_EQ(ct.refused(TestEventKind::isolating), FIRN_BAD_EDIT);
  EXPECT_EQ(ct.refused(TestEventKind::slid), FIRN_BAD_EDIT);
  ct.crack(seen_down(10)).tell(TestEventKind::slid);
  EXPECT_EQ(ct.refused(TestEventKind::tap), FIRN_BAD_EDIT);
  EXPECT_EQ(ct.refused(TestEventKind::crack), FIRN_BAD_EDIT);
  ct.stop();

  Tester ect(hand, TestKind::ECT);
  EXPECT_EQ(ect.refused(TestEventKind::crossed), FIRN_BAD_EDIT);
  ect.taps(12).tell(TestEventKind::crack);
  // One more tap decides, so nobody can stop here without saying what the crack did.
  EXPECT_EQ(ect.now().state, GuidedState::due);
  EXPECT_EQ(ect.refused(TestEventKind::stop), FIRN_BAD_EDIT);
  EXPECT_EQ(ect.refused(TestEventKind::levelled), FIRN_BAD_EDIT);
  ect.tell_last(TestEventKind::not_crossed);
  const Target crack = ect.last();
  EXPECT_EQ(ect.refused(TestEventKind::not_crossed, &crack), FIRN_BAD_EDIT);
  ect.stop();

  Tester rb(hand, TestKind::RB);
  EXPECT_EQ(rb.refused(TestEventKind::crack), FIRN_BAD_EDIT);
  rb.tell(TestEventKind::loaded, Tester::step_at(4, 1));
  EXPECT_EQ(rb.refused(TestEventKind::loaded, Tester::step_at(3)), FIRN_BAD_EDIT);
  EXPECT_EQ(rb.refused(TestEventKind::loaded, Tester::step_at(4, 1)), FIRN_BAD_EDIT);
  EXPECT_EQ(rb.refused(TestEventKind::isolating), FIRN_BAD_EDIT);
  EXPECT_EQ(rb.refused(TestEventKind::stop), FIRN_BAD_EDIT);
}

TEST(GuidedRefused, AfterTheEnd) {
  Hand hand;
  Tester t(hand, TestKind::ECT);
  t.taps(13).tell(TestEventKind::crossed);
  for (const TestEventKind event : {TestEventKind::tap, TestEventKind::crack, TestEventKind::crossed,
                                    TestEventKind::stop, TestEventKind::slid}) {
    EXPECT_EQ(t.refused(event), FIRN_BAD_EDIT) << EnumNameTestEventKind(event);
  }
  EXPECT_EQ(t.refused(TestEventKind::set_tap, Tester::tap_at(20)), FIRN_BAD_EDIT);
  Tester full(hand, TestKind::CT);
  full.taps(30);
  EXPECT_EQ(full.refused(TestEventKind::tap), FIRN_BAD_EDIT);
  StabilityTestT reason;
  reason.not_valid_reason = NotValidReason::loading;
  const PitT fields = of_test(reason);
  full.tell(TestEventKind::not_valid, nullptr, &fields);
  EXPECT_EQ(full.refused(TestEventKind::not_valid, nullptr, &fields), FIRN_BAD_EDIT);
  EXPECT_EQ(full.refused(TestEventKind::tap), FIRN_BAD_EDIT);
}

TEST(GuidedRefused, ValuesOutOfRange) {
  Hand hand;
  PitT snow;
  snow.snowpack = std::make_unique<SnowpackT>();
  snow.snowpack->hs_10um = cm(100);
  hand.set(snow);
  Tester ct(hand, TestKind::CT);
  ct.taps(12).crack(seen_down(100));
  for (const int tap : {0, 11, 31, 255}) {
    EXPECT_EQ(ct.refused(TestEventKind::set_tap, Tester::tap_at(static_cast<std::uint8_t>(tap))),
              FIRN_BAD_EDIT)
        << tap;
  }
  EXPECT_EQ(ct.refused(TestEventKind::crack, seen_down(-1)), FIRN_BAD_EDIT);
  EXPECT_EQ(ct.refused(TestEventKind::crack, seen_down(101)), FIRN_BAD_EDIT);
  FractureT height;
  height.depth = std::make_unique<Depth>(up(cm(101)));
  EXPECT_EQ(ct.refused(TestEventKind::crack, std::move(height)), FIRN_BAD_EDIT);
  FractureT odd;
  odd.depth = std::make_unique<Depth>(cm(1), static_cast<Datum>(9), Direction::unknown);
  EXPECT_EQ(ct.refused(TestEventKind::crack, std::move(odd)), FIRN_BAD_EDIT);
  FractureT code;
  code.character = static_cast<FractureCharacter>(77);
  EXPECT_EQ(ct.refused(TestEventKind::crack, std::move(code)), FIRN_BAD_EDIT);
  FractureT release;
  release.release = ReleaseType::WB;
  EXPECT_EQ(ct.refused(TestEventKind::crack, std::move(release)), FIRN_BAD_EDIT);
  ct.stop();

  StabilityTestT column = Tester::test_of(TestKind::PST);
  column.column_length_10um = cm(100);
  Tester pst(hand, column);
  for (const std::int32_t cut : {0, -5, 101}) {
    EXPECT_EQ(pst.refused(TestEventKind::cut_to, Tester::cut_at(cut)), FIRN_BAD_EDIT) << cut;
  }
  EXPECT_EQ(pst.refused(TestEventKind::ran, Tester::ran_to(SawEnd::End, 50)), FIRN_BAD_EDIT);
  pst.tell(TestEventKind::cut_to, Tester::cut_at(40));
  EXPECT_EQ(pst.refused(TestEventKind::cut_to, Tester::cut_at(39)), FIRN_BAD_EDIT);
  EXPECT_EQ(pst.refused(TestEventKind::stop), FIRN_BAD_EDIT);
  pst.tell(TestEventKind::cut_to, Tester::cut_at(100));
  EXPECT_EQ(pst.refused(TestEventKind::ran, Tester::ran_to(SawEnd::Arr, 50)), FIRN_BAD_EDIT);
  pst.stop();

  Tester rb(hand, TestKind::RB);
  for (const int step : {0, 1, 7, 200}) {
    EXPECT_EQ(rb.refused(TestEventKind::loaded, Tester::step_at(static_cast<std::uint8_t>(step))),
              FIRN_BAD_EDIT)
        << step;
  }
  EXPECT_EQ(rb.refused(TestEventKind::loaded, Tester::step_at(3, 1)), FIRN_BAD_EDIT);
  EXPECT_EQ(rb.refused(TestEventKind::loaded, Tester::step_at(6, 4)), FIRN_BAD_EDIT);
}

TEST(GuidedRefused, TestsThatDoNotBegin) {
  Hand hand;
  const auto start = [&](const StabilityTestT& test) {
    const PitT fields = of_test(test);
    return hand.refused(make_event(hand.next(), TestEventKind::start, nullptr, nullptr, &fields));
  };
  for (const TestKind kind :
       {TestKind::none, TestKind::shear_frame, TestKind::other, static_cast<TestKind>(77)}) {
    EXPECT_EQ(start(Tester::test_of(kind)), FIRN_BAD_EDIT);
  }
  EXPECT_EQ(start(StabilityTestT()), FIRN_BAD_EDIT);
  StabilityTestT test = Tester::test_of(TestKind::CT);
  test.outcome = TestOutcome::no_fracture;
  EXPECT_EQ(start(test), FIRN_BAD_EDIT);
  test = Tester::test_of(TestKind::CT);
  test.taps_given = std::uint8_t{3};
  EXPECT_EQ(start(test), FIRN_BAD_EDIT);
  test = Tester::test_of(TestKind::PST);
  test.column_length_10um = -cm(1);
  EXPECT_EQ(start(test), FIRN_BAD_EDIT);
  test = Tester::test_of(TestKind::RB);
  test.slope_deg = std::uint8_t{91};
  EXPECT_EQ(start(test), FIRN_BAD_EDIT);
  test = Tester::test_of(TestKind::ECT);
  test.crossing_rule = static_cast<CrossingRule>(9);
  EXPECT_EQ(start(test), FIRN_BAD_EDIT);
}

TEST(GuidedRefused, TwoTestsOpenAtOnceOnOneDevice) {
  Hand hand(7);
  Tester first(hand, TestKind::CT);
  const PitT another = of_test(Tester::test_of(TestKind::ECT));
  const auto start = [&] {
    return make_event(hand.next(), TestEventKind::start, nullptr, nullptr, &another);
  };
  EXPECT_EQ(hand.refused(start()), FIRN_BAD_EDIT);
  EXPECT_EQ(hand.recorder.open_test(7).edit().sequence(), first.test.edit().sequence());
  // A partner on another device may have one open, and both get on with theirs.
  Hand partner(8);
  partner.see(hand.recorder.next_clock());
  Tester second(partner, TestKind::ECT);
  ASSERT_TRUE(hand.recorder.apply(partner.edits[0].data(), partner.edits[0].size()));
  EXPECT_EQ(hand.recorder.open_test(8).edit().device(), 8u);
  hand.see(hand.recorder.next_clock());
  first.taps(3).crack(seen_down(10)).stop();
  EXPECT_EQ(hand.recorder.open_test(7).thing(), Thing::pit);
  // Taking the fracture back would open it beside the next one.
  const Target fracture = first.last();
  Tester third(hand, TestKind::ECT);
  EXPECT_EQ(first.refused(TestEventKind::retract, &fracture), FIRN_BAD_EDIT);
  // A test that is removed is not open.
  hand.remove(third.test);
  EXPECT_EQ(hand.recorder.open_test(7).thing(), Thing::pit);
  first.tell(TestEventKind::retract, &fracture);
  EXPECT_EQ(first.now().state, GuidedState::loading);
}

TEST(GuidedRefused, WrongNames) {
  Hand hand;
  const Target plain = target_of(hand.add(of_test(Tester::test_of(TestKind::CT))), Thing::test);
  EXPECT_EQ(hand.refused(make_event(hand.next(), TestEventKind::tap, &plain)), FIRN_BAD_EDIT);
  const Target layer = hand.layer(0, 40);
  EXPECT_EQ(hand.refused(make_event(hand.next(), TestEventKind::tap, &layer)), FIRN_BAD_EDIT);
  const Target nothing = target_of({7, 99}, Thing::test);
  EXPECT_EQ(hand.refused(make_event(hand.next(), TestEventKind::tap, &nothing)), FIRN_NO_SUCH_TARGET);
  EXPECT_EQ(hand.refused(make_event(hand.next(), TestEventKind::tap, nullptr)), FIRN_BAD_EDIT);
  EXPECT_EQ(hand.refused(make_event(hand.next(), static_cast<TestEventKind>(0), &plain)), FIRN_BAD_EDIT);
  EXPECT_EQ(hand.refused(make_event(hand.next(), static_cast<TestEventKind>(17), &plain)), FIRN_BAD_EDIT);
  EXPECT_FALSE(hand.recorder.guided(plain));
  EXPECT_FALSE(hand.recorder.guided(nothing));

  Tester one(hand, TestKind::CT);
  one.taps(5).crack(seen_down(10));
  const Target of_one = one.last();
  one.stop();
  Tester two(hand, TestKind::CT);
  two.taps(5).crack(seen_down(20));
  const PitT deeper = of_fracture(seen_down(30));
  EXPECT_EQ(two.refused(TestEventKind::describe, &of_one, &deeper), FIRN_BAD_EDIT);
  EXPECT_EQ(two.refused(TestEventKind::describe, nullptr, &deeper), FIRN_BAD_EDIT);
  EXPECT_EQ(two.refused(TestEventKind::describe, &layer, &deeper), FIRN_BAD_EDIT);
  const Target own = two.last();
  EXPECT_EQ(two.refused(TestEventKind::describe, &own), FIRN_BAD_EDIT);
  EXPECT_EQ(two.refused(TestEventKind::tap, &own), FIRN_BAD_EDIT);
  // What the machine works out cannot be said.
  for (const auto say : {&FractureT::tap, &FractureT::tap_crossed, &FractureT::step, &FractureT::jump}) {
    FractureT seen;
    seen.*say = std::uint8_t{3};
    EXPECT_EQ(two.refused(TestEventKind::crack, std::move(seen)), FIRN_BAD_EDIT);
  }
  // A test that was made another kind is no longer the one that is being guided.
  hand.change(two.test, of_test(Tester::test_of(TestKind::RB)));
  EXPECT_EQ(two.refused(TestEventKind::tap), FIRN_BAD_EDIT);
}

TEST(GuidedRefused, MoreFracturesThanAColumnHas) {
  Hand hand;
  Tester t(hand, TestKind::ST);
  for (std::size_t i = 0; i < recording::kMostFractures; ++i) t.tell(TestEventKind::crack);
  EXPECT_EQ(t.refused(TestEventKind::crack), FIRN_BAD_EDIT);
  t.stop();
}

}  // namespace
}  // namespace firn::tests
