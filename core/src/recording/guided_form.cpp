// What an event may hold, whatever the test it is told of.
#include "recording/guided_state.h"

namespace firn::recording {
namespace {

using firnbook::Change;
using firnbook::Fracture;
using firnbook::Pit;
using firnbook::StabilityTest;
using firnbook::TestEventKind;

Failure refuse(const char* what, const char* remedy) {
  return failure_of(FIRN_BAD_EDIT, what, remedy);
}

template <class E>
bool is_known(const flatbuffers::Optional<E>& value, const char* (*name)(E)) {
  return !value || *name(*value) != '\0';
}

constexpr std::uint64_t kSeen = field_bit(Fracture::VT_DEPTH) | field_bit(Fracture::VT_CHARACTER) |
                                field_bit(Fracture::VT_QUALITY) | field_bit(Fracture::VT_FRACTURE_SURFACE) |
                                field_bit(Fracture::VT_RELEASE) | field_bit(Fracture::VT_EASE) |
                                field_bit(Fracture::VT_ON) | field_bit(Fracture::VT_PART) |
                                field_bit(Fracture::VT_WORDS) | field_bit(Fracture::VT_UNRELIABLE);
constexpr std::uint64_t kCut = field_bit(Fracture::VT_CUT_10UM);
constexpr std::uint64_t kSawEnd = field_bit(Fracture::VT_SAW_END);
constexpr std::uint64_t kReason = field_bit(StabilityTest::VT_NOT_VALID_REASON);

struct EventForm {
  std::uint64_t needed, allowed;  // fields of the fracture; none of either: no fracture may be held
  bool may_be_about, must_be_about;
};
// In order of TestEventKind, without the start.
constexpr EventForm kEventForms[] = {
    {0, 0, false, false},                                                        // tap
    {field_bit(Fracture::VT_TAP), 0, false, false},                              // set_tap
    {0, kSeen, false, false},                                                    // crack
    {0, kSeen, false, false},                                                    // isolating
    {0, kSeen, true, false},                                                     // crossed
    {0, 0, true, true},                                                          // not_crossed
    {0, 0, false, false},                                                        // slid
    {0, 0, false, false},                                                        // levelled
    {kCut, 0, false, false},                                                     // cut_to
    {kSawEnd, kCut | kSeen, false, false},                                       // ran
    {field_bit(Fracture::VT_STEP), field_bit(Fracture::VT_JUMP), false, false},  // loaded
    {0, kSeen, true, true},                                                      // describe
    {0, 0, true, true},                                                          // retract
    {0, 0, false, false},                                                        // not_valid
    {0, 0, false, false},                                                        // stop
};
constexpr std::size_t kEventKinds = 1 + sizeof kEventForms / sizeof kEventForms[0];

template <class Table>
std::uint64_t present_in(const Table& table, int last) {
  const auto& fields = reinterpret_cast<const flatbuffers::Table&>(table);
  std::uint64_t present = 0;
  for (int at = 4; at <= last; at += 2) {
    if (fields.CheckField(static_cast<flatbuffers::voffset_t>(at))) present |= field_bit(at);
  }
  return present;
}
std::uint64_t present_in(const Fracture& fracture) {
  return present_in(fracture, Fracture::VT_UNRELIABLE);
}
std::uint64_t present_in(const StabilityTest& test) {
  return present_in(test, StabilityTest::VT_UNRELIABLE);
}

Failure wrong_fields() {
  return refuse("the event holds what it has no use for, or lacks what it needs",
                "see schemas/edit.fbs, TestEventKind");
}

// The only test that the fields hold; null when they hold anything else.
const StabilityTest* only_test(const Pit& fields) {
  if ((present_in(fields, Pit::VT_SCHEMA_MINOR + 2 * 63) & ~field_bit(Pit::VT_SCHEMA_MINOR)) !=
      field_bit(Pit::VT_TESTS)) {
    return nullptr;
  }
  return fields.tests()->size() == 1 ? fields.tests()->Get(0) : nullptr;
}

Done check_said_of_test(const StabilityTest& test, TestEventKind kind) {
  if (kind == TestEventKind::start) return check_start(test);
  if (kind == TestEventKind::not_valid) {
    const std::uint64_t present = present_in(test);
    const bool fits =
        (present & kReason) != 0 && (present & ~(kReason | field_bit(StabilityTest::VT_WORDS))) == 0;
    if (!fits) {
      return refuse("a test that was not valid needs its reason, and nothing else but words",
                    "give not_valid_reason");
    }
    if (*firnbook::EnumNameNotValidReason(*test.not_valid_reason()) == '\0') {
      return refuse("the reason why the test was not valid is not known", "give a NotValidReason");
    }
    return done();
  }
  if (present_in(test) != field_bit(StabilityTest::VT_FRACTURES) || test.fractures()->size() != 1) {
    return wrong_fields();
  }
  const EventForm& form = kEventForms[static_cast<std::size_t>(kind) - 2];
  const std::uint64_t present = present_in(*test.fractures()->Get(0));
  const bool says_something = kind != TestEventKind::describe || present != 0;
  const bool fits = (present & form.needed) == form.needed &&
                    (present & ~(form.needed | form.allowed)) == 0 && (form.needed | form.allowed) != 0;
  if (!fits || !says_something) return wrong_fields();
  return done();
}

}  // namespace

Done check_event_alone(const Change& change) {
  const auto number = static_cast<std::size_t>(*change.event());
  if (number < 1 || number > kEventKinds) {
    return refuse("the kind of event is not known", "see schemas/edit.fbs, TestEventKind");
  }
  const TestEventKind kind = *change.event();
  const StabilityTest* said = change.fields() != nullptr ? only_test(*change.fields()) : nullptr;
  if (change.fields() != nullptr && said == nullptr) return wrong_fields();
  if (kind == TestEventKind::start) {
    if (change.target() != nullptr || change.other() != nullptr || said == nullptr) return wrong_fields();
    return check_said_of_test(*said, kind);
  }
  if (change.target() == nullptr || change.target()->thing() != firnbook::Thing::test) {
    return refuse("the event names no test", "give the test as the target");
  }
  const EventForm& form = kEventForms[number - 2];
  const firnbook::Target* about = change.other();
  if (about == nullptr ? form.must_be_about
                       : !form.may_be_about || about->thing() != firnbook::Thing::fracture) {
    return refuse("the event is about a fracture and names none, or the other way round",
                  "give the fracture as `other` where the event needs it, and nowhere else");
  }
  const bool must_speak =
      form.needed != 0 || kind == TestEventKind::describe || kind == TestEventKind::not_valid;
  if (said != nullptr) return check_said_of_test(*said, kind);
  return must_speak ? Done(wrong_fields()) : done();
}

Done check_start(const StabilityTest& test) {
  constexpr std::uint64_t kResult =
      field_bit(StabilityTest::VT_OUTCOME) | field_bit(StabilityTest::VT_FRACTURES) | kReason |
      field_bit(StabilityTest::VT_TAPS_GIVEN) | field_bit(StabilityTest::VT_UNBROKEN);
  if ((present_in(test) & kResult) != 0) {
    return refuse("a test that begins has no result yet",
                  "give its kind and its column, and then what happens");
  }
  if (!test.kind() || !is_guided(*test.kind())) {
    return refuse("this kind of test cannot be guided", "enter its result afterwards, as a whole");
  }
  for (const auto& length : {test.column_width_10um(), test.column_length_10um(), test.column_depth_10um()}) {
    if (length && *length <= 0) {
      return refuse("a length of the column is not above 0", "give lengths as they were cut, or none");
    }
  }
  if (test.slab_left_10um() && *test.slab_left_10um() < 0) {
    return refuse("the snow left above the layer is below 0", "give its thickness, or leave it out");
  }
  if (test.slope_deg() && *test.slope_deg() > 90) {
    return refuse("a slope has 0 to 90 degrees", "give the slope where the test is, or leave it out");
  }
  if (!is_known(test.crossing_rule(), firnbook::EnumNameCrossingRule) ||
      !is_known(test.column_ends(), firnbook::EnumNameColumnEnds)) {
    return refuse("a code of the test is not known", "see schemas/vocabulary.fbs");
  }
  return done();
}

}  // namespace firn::recording
