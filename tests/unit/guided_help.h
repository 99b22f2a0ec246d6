// Somebody who has a test guided: one call for each thing that happens.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "notation/test_line.h"
#include "recording/guided.h"
#include "recording_help.h"

namespace firn::tests {

using firnbook::TestEventKind;
using firnbook::TestKind;
using recording::Guidance;
using recording::GuidedState;

inline firnbook::PitT of_test(firnbook::StabilityTestT test) {
  firnbook::PitT fields;
  fields.tests.push_back(std::make_unique<firnbook::StabilityTestT>(std::move(test)));
  return fields;
}
inline firnbook::PitT of_fracture(firnbook::FractureT seen) {
  firnbook::StabilityTestT test;
  test.fractures.push_back(std::make_unique<firnbook::FractureT>(std::move(seen)));
  return of_test(std::move(test));
}
inline firnbook::FractureT seen_down(std::int32_t centimetres) {
  firnbook::FractureT seen;
  seen.depth = std::make_unique<firnbook::Depth>(down(cm(centimetres)));
  return seen;
}
inline firnbook::FractureT seen_down(std::int32_t centimetres, firnbook::FractureCharacter character) {
  firnbook::FractureT seen = seen_down(centimetres);
  seen.character = character;
  return seen;
}

class Tester {
 public:
  explicit Tester(Hand& hand, TestKind kind) : Tester(hand, test_of(kind)) {}
  Tester(Hand& hand, const firnbook::StabilityTestT& column) : hand_(hand) {
    const firnbook::PitT fields = of_test(column);
    const EditKey key =
        hand.record(recording::make_event(hand.next(), TestEventKind::start, nullptr, nullptr, &fields));
    test = recording::target_of(key, firnbook::Thing::test);
  }
  static firnbook::StabilityTestT test_of(TestKind kind) {
    firnbook::StabilityTestT test;
    test.kind = kind;
    return test;
  }

  Bytes edit(TestEventKind event, const firnbook::Target* about = nullptr,
             const firnbook::PitT* fields = nullptr) {
    return recording::make_event(hand_.next(), event, &test, about, fields);
  }
  Tester& tell(TestEventKind event, const firnbook::Target* about = nullptr,
               const firnbook::PitT* fields = nullptr) {
    hand_.record(edit(event, about, fields));
    return *this;
  }
  Tester& tell(TestEventKind event, firnbook::FractureT seen) {
    const firnbook::PitT fields = of_fracture(std::move(seen));
    return tell(event, nullptr, &fields);
  }
  // What is told of the last fracture.
  Tester& tell_last(TestEventKind event) {
    const firnbook::Target about = last();
    return tell(event, &about);
  }
  Tester& describe(firnbook::FractureT seen) {
    const firnbook::Target about = last();
    const firnbook::PitT fields = of_fracture(std::move(seen));
    return tell(TestEventKind::describe, &about, &fields);
  }
  Tester& taps(int count) {
    for (int i = 0; i < count; ++i) tell(TestEventKind::tap);
    return *this;
  }
  Tester& set_tap(std::uint8_t tap) { return tell(TestEventKind::set_tap, tap_at(tap)); }
  static firnbook::FractureT tap_at(std::uint8_t tap) {
    firnbook::FractureT seen;
    seen.tap = tap;
    return seen;
  }
  static firnbook::FractureT step_at(std::uint8_t step, std::uint8_t jump = 0) {
    firnbook::FractureT seen;
    seen.step = step;
    if (jump != 0) seen.jump = jump;
    return seen;
  }
  static firnbook::FractureT cut_at(std::int32_t centimetres) {
    firnbook::FractureT seen;
    seen.cut_10um = cm(centimetres);
    return seen;
  }
  static firnbook::FractureT ran_to(firnbook::SawEnd end, std::int32_t depth_cm) {
    firnbook::FractureT seen = seen_down(depth_cm);
    seen.saw_end = end;
    return seen;
  }
  Tester& crack(firnbook::FractureT seen) { return tell(TestEventKind::crack, std::move(seen)); }
  Tester& stop() { return tell(TestEventKind::stop); }

  firn_status refused(TestEventKind event, const firnbook::Target* about = nullptr,
                      const firnbook::PitT* fields = nullptr) {
    const Guidance before = now();
    const firn_status status = hand_.refused(edit(event, about, fields));
    EXPECT_EQ(now().allowed, before.allowed);
    EXPECT_EQ(now().taps, before.taps);
    return status;
  }
  firn_status refused(TestEventKind event, firnbook::FractureT seen) {
    const firnbook::PitT fields = of_fracture(std::move(seen));
    return refused(event, nullptr, &fields);
  }

  Guidance now() {
    const Result<Guidance> guidance = hand_.recorder.guided(test);
    EXPECT_TRUE(guidance);
    return guidance ? *guidance : Guidance{};
  }
  firnbook::Target last() { return hand_.recorder.guided_fracture(test, now().last); }
  std::string line() {
    const Result<const firnbook::StabilityTestT*> written = hand_.recorder.guided_test(test);
    if (!written) return written.failure().what;
    std::string out;
    notation::append_test(out, **written, firnbook::Direction::unknown);
    return out;
  }

  firnbook::Target test;

 private:
  Hand& hand_;
};

inline bool allows(const Guidance& guidance, TestEventKind event) {
  return (guidance.allowed >> static_cast<unsigned>(event) & 1) != 0;
}

}  // namespace firn::tests
