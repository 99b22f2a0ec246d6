// Whether an event can happen where the test stands.
#include "recording/guided_state.h"

namespace firn::recording {
namespace {

using firnbook::Crossing;
using firnbook::Depth;
using firnbook::Fracture;
using firnbook::FractureT;
using firnbook::SawEnd;
using firnbook::ShearEase;
using firnbook::StabilityTestT;
using firnbook::TestEventKind;
using firnbook::TestKind;

Failure refuse(const char* what, const char* remedy) {
  return failure_of(FIRN_BAD_EDIT, what, remedy);
}

// Which of the values that were said is wrong.
Failure refuse(const char* what, const char* remedy, int vtable_offset) {
  Failure failure = refuse(what, remedy);
  failure.place = {-1, -1, field_id(vtable_offset), firnbook::Thing::fracture};
  return failure;
}

template <class E>
bool is_known(const flatbuffers::Optional<E>& value, const char* (*name)(E)) {
  return !value || *name(*value) != '\0';
}

bool are_codes_known(const Fracture& seen) {
  return is_known(seen.character(), firnbook::EnumNameFractureCharacter) &&
         is_known(seen.quality(), firnbook::EnumNameShearQuality) &&
         is_known(seen.fracture_surface(), firnbook::EnumNameFractureSurface) &&
         is_known(seen.release(), firnbook::EnumNameReleaseType) &&
         is_known(seen.ease(), firnbook::EnumNameShearEase) &&
         is_known(seen.part(), firnbook::EnumNamePartOfLayer) &&
         is_known(seen.saw_end(), firnbook::EnumNameSawEnd);
}

Done check_depth(const Depth& depth, const flatbuffers::Optional<std::int32_t>& hs) {
  const bool is_known_datum = *firnbook::EnumNameDatum(depth.datum()) != '\0' &&
                              *firnbook::EnumNameDirection(depth.direction()) != '\0';
  if (depth.value_10um() < 0 || !is_known_datum) {
    return refuse("the depth is below 0, or does not say from where it was measured in a known way",
                  "give the distance from the surface or from the ground, 0 or more", Fracture::VT_DEPTH);
  }
  if (hs && depth.value_10um() > *hs) {
    return refuse("the fracture would lie outside the snow: its depth is more than HS",
                  "correct the depth, or HS where the pit was dug", Fracture::VT_DEPTH);
  }
  return done();
}

// What one kind of test alone has.
Done check_belongs(const Run& run, const Fracture& seen, bool is_isolating) {
  if (seen.release() && run.kind != TestKind::RB) {
    return refuse("how much of a block came away belongs to a rutschblock", "leave the release type out",
                  Fracture::VT_RELEASE);
  }
  if (!seen.ease()) return done();
  const bool is_shear = run.kind == TestKind::ST || run.kind == TestKind::hand_shear;
  if (!is_shear || is_isolating) {
    return refuse("the ease of a shear belongs to what was pulled in a shovel or hand shear",
                  "leave it out; a collapse while cutting is told by the event itself", Fracture::VT_EASE);
  }
  if (*seen.ease() == ShearEase::C) {
    return refuse("a collapse happens while the column is cut, before anything is pulled",
                  "say that it broke while isolating, or give V, E, M or H", Fracture::VT_EASE);
  }
  return done();
}

Done check_seen(const Run& run, const flatbuffers::Optional<std::int32_t>& hs, const TestEvent& event) {
  if (event.fracture == nullptr) return done();
  const Fracture& seen = *event.fracture;
  if (!are_codes_known(seen))
    return refuse("a code of the fracture is not known", "see schemas/vocabulary.fbs");
  if (seen.depth() != nullptr) {
    Done depth = check_depth(*seen.depth(), hs);
    if (!depth) return depth;
  }
  return check_belongs(run, seen, event.kind == TestEventKind::isolating);
}

struct Refusal {
  const char* what;
  const char* remedy;
};

// Why an event is not allowed in a state: what has to happen first.
Refusal why_not(const Run& run, GuidedState state, TestEventKind kind) {
  if (state == GuidedState::not_valid) return {"the column was no valid test", "begin another test"};
  if (state == GuidedState::ended) {
    return {"the test has ended",
            "begin another test; if what ended it was no fracture, retract it, or undo the stop"};
  }
  const Machine& machine = *machine_of(run.kind);
  std::uint32_t ever = 0;
  for (const std::uint32_t allowed : machine.allowed) ever |= allowed;
  if ((ever & bit(kind)) == 0) {
    return {"this kind of test knows no such event", "see which events its answer allows"};
  }
  if (state == GuidedState::slid) {
    return {"the block has slid off, so there is nothing even to tap on",
            run.kind == TestKind::CT ? "level what is left and say so, or stop" : "stop"};
  }
  if (state == GuidedState::due) {
    return run.kind == TestKind::RB ? Refusal{"how much of the block came away is not said yet",
                                              "say the release type of the fracture, or stop"}
                                    : Refusal{"one more tap decides whether the crack counts as crossing",
                                              "give one more tap, or say that it crossed or did not cross"};
  }
  if (state == GuidedState::full && kind == TestEventKind::cut_to) {
    return {"the saw has cut the whole column", "say how the crack ran, or stop"};
  }
  if (state == GuidedState::full && counts_taps(run.kind)) {
    return {"30 taps were given, which is all there are", "say what broke on the last tap, or stop"};
  }
  if (kind == TestEventKind::crack && counts_taps(run.kind)) {
    return {"nothing was tapped yet", "count the taps first, or say that it broke while isolating"};
  }
  if (kind == TestEventKind::crossed && state == GuidedState::untouched) {
    return {"nothing was tapped yet", "say that it broke while isolating, then that it crossed"};
  }
  if (kind == TestEventKind::crack)
    return {"no step was given yet", "say the step, or that it broke while isolating"};
  if (kind == TestEventKind::isolating)
    return {"the column carries load already", "say on which load it broke"};
  if (kind == TestEventKind::stop && run.kind == TestKind::PST) {
    return {"the saw has not reached the end of the column and no crack ran",
            "saw on, or say why the test was not valid; a column without its length has no end"};
  }
  if (kind == TestEventKind::stop && run.kind == TestKind::RB) {
    return {"the steps are not all done and nothing broke",
            "give the steps up to 6, or say why it was not valid"};
  }
  if (kind == TestEventKind::stop)
    return {"nothing was loaded", "load it, or say why the test was not valid"};
  return {"no fracture is recorded that this could be about", "say first that something broke"};
}

Done check_set_tap(const StabilityTestT& test, std::uint8_t tap) {
  if (tap < 1 || tap > kMostTaps) {
    return refuse("taps are counted through from 1 to 30", "give the tap that was given last",
                  Fracture::VT_TAP);
  }
  if (tap < highest_tap(test)) {
    return refuse("a fracture is recorded on a later tap",
                  "give that tap or a later one, or retract the fracture", Fracture::VT_TAP);
  }
  return done();
}

Done check_cut(const Run& run, const StabilityTestT& test, std::int32_t cut) {
  if (cut <= 0) {
    return refuse("the cut has no length", "give how far the saw has cut", Fracture::VT_CUT_10UM);
  }
  if (cut < run.cut_10um) {
    return refuse("the saw had cut further before", "give how far it has cut by now; undo a wrong length",
                  Fracture::VT_CUT_10UM);
  }
  if (test.column_length_10um && cut > *test.column_length_10um) {
    return refuse("the cut would be longer than the column", "correct the cut, or the length of the column",
                  Fracture::VT_CUT_10UM);
  }
  return done();
}

Done check_ran(const Run& run, const StabilityTestT& test, const Fracture& seen) {
  const std::int32_t cut = seen.cut_10um().value_or(run.cut_10um);
  Done fits = check_cut(run, test, cut);
  if (!fits) return fits;
  const FractureT* before = last_fracture(test);
  if (before != nullptr && cut <= before->cut_10um.value_or(0)) {
    return refuse("a crack has run at this cut already", "saw on first, or retract the first one",
                  Fracture::VT_CUT_10UM);
  }
  if (test.column_length_10um && cut == *test.column_length_10um && *seen.saw_end() != SawEnd::End) {
    return refuse("the saw has cut the whole column, so no crack is left that could stop in it",
                  "say that it ran to the end, or correct the cut", Fracture::VT_SAW_END);
  }
  return done();
}

// Which jumps a step has: one on 4; 5 is the second or third in the same spot (sources differ), 6 up to three
// without skis or from further down (from memory).
std::uint8_t most_jumps(std::uint8_t step) {
  constexpr std::uint8_t kMost[] = {0, 0, 0, 0, 1, 2, 3};
  return kMost[step];
}

Done check_loaded(const Run& run, const Fracture& seen) {
  const std::uint8_t step = *seen.step();
  if (step < 2 || step > kLastStep) {
    return refuse("a block is loaded on steps 2 to 6: 1 is cutting it, 7 is that nothing broke",
                  "give the step, or say that it broke while isolating, or stop", Fracture::VT_STEP);
  }
  const std::uint8_t jump = seen.jump().value_or(0);
  if (seen.jump() && (jump < 1 || jump > most_jumps(step))) {
    return refuse("this step has no such jump",
                  "step 4 has one jump, step 5 two, step 6 three; 2 and 3 have none", Fracture::VT_JUMP);
  }
  const bool later = step > run.step || (step == run.step && jump > run.jump);
  if (!later) {
    return refuse("this load or a heavier one was given before", "give the next step or jump",
                  Fracture::VT_STEP);
  }
  return done();
}

Done check_crossed(const Run& run, const StabilityTestT& test, std::uint32_t about) {
  if (about == kNoFracture) {
    if (run.taps > 0) return done();
    return refuse("nothing was tapped yet", "name the crack that crossed, which broke while isolating");
  }
  const FractureT& crack = *test.fractures[about];
  if (!crack.tap_crossed && crack.crossing != Crossing::crossed) return done();
  return refuse("this crack has crossed already", "name another crack");
}

Done check_crack(const Run& run) {
  if (counts_taps(run.kind) && run.taps == 0) {
    return refuse("nothing was tapped yet", "count the taps first, or say that it broke while isolating");
  }
  if (run.kind == TestKind::RB && run.step == 0) {
    return refuse("no step was given yet", "say the step, or that it broke while isolating");
  }
  return done();
}

Done check_load(const Run& run, const StabilityTestT& test, const TestEvent& event) {
  switch (event.kind) {
    case TestEventKind::set_tap:
      return check_set_tap(test, *event.fracture->tap());
    case TestEventKind::cut_to:
      return check_cut(run, test, *event.fracture->cut_10um());
    case TestEventKind::ran:
      return check_ran(run, test, *event.fracture);
    case TestEventKind::loaded:
      return check_loaded(run, *event.fracture);
    case TestEventKind::crossed:
      return check_crossed(run, test, event.about);
    case TestEventKind::not_crossed:
      if (is_open_crack(*test.fractures[event.about])) return done();
      return refuse("whether this crack crossed is said already", "name another crack, or retract it");
    case TestEventKind::crack:
      return check_crack(run);
    case TestEventKind::isolating:
      if (run.kind != TestKind::RB || run.step == 0) return done();
      return refuse("the block carries load already", "say on which step it broke");
    default:
      return done();
  }
}

}  // namespace

bool adds_fracture(const TestEvent& event) {
  switch (event.kind) {
    case TestEventKind::crack:
    case TestEventKind::isolating:
    case TestEventKind::ran:
      return true;
    case TestEventKind::crossed:
      return event.about == kNoFracture;
    default:
      return false;
  }
}

Done check_event(const Run& run, const StabilityTestT& test, const flatbuffers::Optional<std::int32_t>& hs,
                 const TestEvent& event) {
  if (test.kind != run.kind) {
    return refuse("the test was made another kind of test since it began",
                  "give it back its kind, or begin anew");
  }
  const std::size_t slots = test.fractures.size();
  if (slots > kMostFractures || (slots == kMostFractures && adds_fracture(event))) {
    return refuse("no column breaks that often", "begin another test");
  }
  const GuidedState state = state_of(run, test);
  const std::uint32_t allowed = allowed_events(run.kind, state, last_fracture(test) != nullptr);
  if ((allowed & bit(event.kind)) == 0) {
    const Refusal why = why_not(run, state, event.kind);
    return refuse(why.what, why.remedy);
  }
  Done seen = check_seen(run, hs, event);
  if (!seen) return seen;
  return check_load(run, test, event);
}

}  // namespace firn::recording
