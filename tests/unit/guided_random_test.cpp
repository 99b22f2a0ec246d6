// Whatever people tell a guided test, in whatever order: it never reaches what the check rules call an error.
#include <gtest/gtest.h>

#include "checking/check.h"
#include "guided_help.h"
#include "pit/view.h"

namespace firn::tests {
namespace {

using namespace firnbook;
using recording::make_event;

std::string errors_of(const Bytes& pit) {
  pit::View view;
  view.decode(read(pit));
  checking::Checks checks;
  checking::check(view, checks);
  std::string out;
  for (const Check& check : checks) {
    if (check.severity() != Severity::error) continue;
    if (check.place().thing() != Thing::test && check.place().thing() != Thing::fracture) continue;
    out += EnumNameCheckCode(check.code());
    out += ' ';
  }
  return out;
}

class AnyTester {
 public:
  AnyTester(std::uint64_t seed, std::uint64_t device) : dice_(seed), hand_(device), device_(device) {}

  void begin(bool may_know_hs = true) {
    if (roll(2) == 0 && may_know_hs) {
      PitT snow;
      snow.snowpack = std::make_unique<SnowpackT>();
      snow.snowpack->hs_10um = cm(static_cast<std::int32_t>(roll(150)));
      hand_.set(snow);
    }
    constexpr TestKind kKinds[] = {TestKind::CT, TestKind::ECT, TestKind::PST,       TestKind::RB,
                                   TestKind::DT, TestKind::ST,  TestKind::hand_shear};
    StabilityTestT column = Tester::test_of(kKinds[roll(7)]);
    if (roll(2) == 0) column.column_length_10um = cm(100);
    if (roll(3) == 0) column.crossing_rule = static_cast<CrossingRule>(1 + roll(2));
    tester_ = std::make_unique<Tester>(hand_, column);
  }

  // True when the event was taken. A refused one must leave everything as it was.
  bool act(bool look_closely) {
    const Bytes edit = any_edit();
    if (!look_closely) {
      const Done verdict = hand_.recorder.apply(edit.data(), edit.size());
      if (verdict) hand_.edits.push_back(edit);
      return static_cast<bool>(verdict);
    }
    const Bytes before = hand_.pit();
    const std::uint32_t allowed = tester_->now().allowed;
    const Done verdict = hand_.recorder.apply(edit.data(), edit.size());
    if (!verdict) {
      EXPECT_FALSE(verdict.failure().what.empty());
      EXPECT_FALSE(verdict.failure().remedy.empty());
      EXPECT_EQ(hand_.pit(), before);
      EXPECT_EQ(tester_->now().allowed, allowed);
      return false;
    }
    EXPECT_NE(allowed >> static_cast<unsigned>(*GetEdit(edit.data())->change()->event()) & 1, 0u)
        << "taken although the answer did not allow it";
    hand_.edits.push_back(edit);
    return true;
  }

  Hand& hand() { return hand_; }
  Tester& tester() { return *tester_; }
  std::uint64_t device() const { return device_; }

 private:
  std::uint32_t roll(std::uint32_t sides) { return dice_.roll(sides); }
  std::uint8_t small() { return static_cast<std::uint8_t>(roll(40)); }

  // Mostly what people say, sometimes what nobody could.
  FractureT anything_seen(TestEventKind event) {
    FractureT seen;
    if (roll(2) == 0) {
      const auto value = cm(static_cast<std::int32_t>(roll(160)) - 5);
      seen.depth = std::make_unique<Depth>(roll(4) == 0 ? up(value) : down(value));
    }
    if (roll(4) == 0) seen.character = static_cast<FractureCharacter>(roll(14));
    if (roll(6) == 0) seen.release = static_cast<ReleaseType>(roll(4));
    if (roll(6) == 0) seen.ease = static_cast<ShearEase>(roll(6));
    if (event == TestEventKind::set_tap || roll(30) == 0) seen = Tester::tap_at(small());
    if (event == TestEventKind::cut_to) seen = Tester::cut_at(static_cast<std::int32_t>(roll(120)) - 10);
    if (event == TestEventKind::loaded)
      seen = Tester::step_at(static_cast<std::uint8_t>(roll(8)), static_cast<std::uint8_t>(roll(4)));
    if (event == TestEventKind::ran) {
      seen.saw_end = static_cast<SawEnd>(roll(4));
      if (roll(2) == 0) seen.cut_10um = cm(static_cast<std::int32_t>(roll(120)));
    }
    return seen;
  }

  Bytes any_edit() {
    const Guidance now = tester_->now();
    // Mostly what may come next, sometimes anything.
    auto event = static_cast<TestEventKind>(2 + roll(15));
    for (int tries = 0; tries < 6 && !allows(now, event); ++tries) {
      event = static_cast<TestEventKind>(2 + roll(15));
    }
    if (roll(3) == 0 && allows(now, TestEventKind::tap)) event = TestEventKind::tap;
    const bool ends = event == TestEventKind::stop || event == TestEventKind::not_valid;
    if (ends && roll(5) != 0) event = TestEventKind::retract;
    PitT fields;
    bool has_fields = false;
    const bool speaks = event == TestEventKind::crack || event == TestEventKind::isolating ||
                        event == TestEventKind::describe || event == TestEventKind::set_tap ||
                        event == TestEventKind::cut_to || event == TestEventKind::ran ||
                        event == TestEventKind::loaded || roll(20) == 0;
    if (event == TestEventKind::not_valid) {
      StabilityTestT reason;
      reason.not_valid_reason = static_cast<NotValidReason>(roll(7));
      fields = of_test(reason);
      has_fields = true;
    } else if (speaks) {
      fields = of_fracture(anything_seen(event));
      has_fields = true;
    }
    const bool needs_one = event == TestEventKind::not_crossed || event == TestEventKind::describe ||
                           event == TestEventKind::retract;
    const bool is_about = needs_one || (event == TestEventKind::crossed && roll(2) == 0) || roll(30) == 0;
    Target about;
    if (is_about && now.last != recording::kNoFracture) {
      about = hand_.recorder.guided_fracture(tester_->test, roll(2) == 0 ? now.last : now.of);
    }
    return make_event(hand_.next(), event, &tester_->test, is_about ? &about : nullptr,
                      has_fields ? &fields : nullptr);
  }

  Dice dice_;
  Hand hand_;
  std::uint64_t device_;
  std::unique_ptr<Tester> tester_;
};

TEST(GuidedRandom, NothingThatTheChecksCallAnError) {
  std::size_t taken = 0, refused = 0, ended = 0;
  std::uint32_t kinds = 0, states = 0;
  for (std::uint64_t seed = 1; seed <= 2000; ++seed) {
    AnyTester any(seed, 7);
    any.begin();
    for (int i = 0; i < 50; ++i) {
      (any.act(seed % 8 == 0) ? taken : refused) += 1;
      const Guidance now = any.tester().now();
      states |= 1u << static_cast<unsigned>(now.state);
      if (seed % 16 == 0) {
        ASSERT_EQ(errors_of(any.hand().pit()), "") << any.tester().line() << " seed " << seed;
      }
    }
    const Guidance now = any.tester().now();
    kinds |= 1u << static_cast<unsigned>(now.kind);
    ended += now.state == GuidedState::ended || now.state == GuidedState::not_valid ? 1u : 0u;
    ASSERT_EQ(errors_of(any.hand().pit()), "") << any.tester().line() << " seed " << seed;
    ASSERT_TRUE(notation::parse_test(any.tester().line())) << any.tester().line();
    ASSERT_EQ(replay(any.hand().edits), any.hand().pit()) << seed;
    if (HasFailure()) return;
  }
  // The game was played in earnest.
  EXPECT_GT(taken, 20000u);
  EXPECT_GT(refused, 20000u);
  EXPECT_GT(ended, 500u);
  EXPECT_EQ(kinds, 0b11111110u);
  EXPECT_EQ(states, 0b111111110u);
}

// Undone and redone in any order, what is left is still a test that can be.
TEST(GuidedRandom, UndoingAnyEventLeavesATestThatCanBe) {
  Dice dice(5);
  for (std::uint64_t seed = 1; seed <= 400; ++seed) {
    AnyTester any(seed, 7);
    any.begin();
    std::vector<EditKey> keys;
    for (int i = 0; i < 40; ++i) {
      if (any.act(false)) keys.push_back(any.hand().last());
    }
    if (keys.empty()) continue;
    const Bytes before = any.hand().pit();
    const EditKey key = keys[dice.roll(static_cast<std::uint32_t>(keys.size()))];
    any.hand().undo(key);
    ASSERT_EQ(errors_of(any.hand().pit()), "") << seed;
    any.hand().redo(key);
    ASSERT_EQ(any.hand().pit(), before) << seed;
  }
}

// Two people, each with a test of their own, recorded apart: the same pit whoever's edits come first.
TEST(GuidedRandom, TwoPeopleAtOneWall) {
  for (std::uint64_t seed = 1; seed <= 200; ++seed) {
    AnyTester one(seed, 7), other(seed + 1000, 8);
    // Without HS, which the other could set too small for a depth already told.
    one.begin(false);
    other.begin(false);
    for (int i = 0; i < 40; ++i) {
      one.act(false);
      other.act(false);
    }
    std::vector<Bytes> first = one.hand().edits, second = other.hand().edits;
    std::vector<Bytes> a = first, b = second;
    a.insert(a.end(), second.begin(), second.end());
    b.insert(b.end(), first.begin(), first.end());
    const Bytes left = replay(a);
    ASSERT_EQ(left, replay(b)) << seed;
    ASSERT_EQ(errors_of(left), "") << seed;
  }
}

}  // namespace
}  // namespace firn::tests
