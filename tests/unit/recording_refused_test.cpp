// Edits that are refused, and bytes made to harm. Hand::refused() checks that nothing changed.
#include <gtest/gtest.h>

#include <functional>

#include "recording_help.h"

namespace firn::tests {
namespace {

using namespace firnbook;
using flatbuffers::FlatBufferBuilder;
using recording::target_of;

Bytes finish(FlatBufferBuilder& builder, flatbuffers::Offset<Edit> edit) {
  FinishEditBuffer(builder, edit);
  return Bytes(builder.GetBufferPointer(), builder.GetBufferPointer() + builder.GetSize());
}

// An edit whose change is built by `fill`.
Bytes edit_with(const EditHead& head, const std::function<void(ChangeBuilder&)>& fill,
                std::uint16_t schema_minor = 1) {
  FlatBufferBuilder builder;
  ChangeBuilder change(builder);
  fill(change);
  const auto offset = change.Finish();
  const EditId id(head.key.device, head.key.sequence);
  return finish(builder, CreateEdit(builder, schema_minor, &id, head.clock, nullptr, 0, 0, offset));
}

PitT title(const std::string& text) {
  PitT fields;
  fields.title = text;
  return fields;
}

TEST(Refused, BytesThatAreNoEdit) {
  Hand hand;
  const Bytes good = make_set(hand.next(), title("x"));
  EXPECT_EQ(hand.recorder.apply(nullptr, 0).failure().status, FIRN_NULL_ARGUMENT);
  EXPECT_EQ(hand.refused(Bytes(good.begin(), good.begin() + 7)), FIRN_TOO_SMALL);
  EXPECT_EQ(hand.refused(Bytes(good.begin(), good.begin() + 40)), FIRN_DAMAGED);
  Bytes other = good;
  other[4] = 'X';
  EXPECT_EQ(hand.refused(other), FIRN_WRONG_KIND);
  PitT pit;
  EXPECT_EQ(hand.refused(recording::to_bytes(pit)), FIRN_WRONG_KIND);
  Recorder small{pit::Limits{16}};
  EXPECT_EQ(small.apply(good.data(), good.size()).failure().status, FIRN_TOO_LARGE);
}

TEST(Refused, UnalignedBytesAreTakenAllTheSame) {
  Hand hand;
  const Bytes edit = make_set(hand.next(), title("x"));
  Bytes shifted(edit.size() + 1);
  std::copy(edit.begin(), edit.end(), shifted.begin() + 1);
  ASSERT_TRUE(hand.recorder.apply(shifted.data() + 1, edit.size()));
  EXPECT_EQ(read(hand.pit()).title()->str(), "x");
}

TEST(Refused, TheSameEditTwiceIsFineAndOtherBytesAreNot) {
  Hand hand;
  const EditHead head = hand.next();
  hand.record(make_set(head, title("x")));
  hand.record(make_set(head, title("x")));
  EXPECT_EQ(hand.recorder.edit_count(), 1u);
  EXPECT_EQ(hand.refused(make_set(head, title("y"))), FIRN_DUPLICATE_EDIT);
}

TEST(Refused, HeadsWithoutIdentityOrClock) {
  Hand hand;
  EXPECT_EQ(hand.refused(make_set({{0, 1}, 1, nullptr, {}}, title("x"))), FIRN_BAD_EDIT);
  EXPECT_EQ(hand.refused(make_set({{1, 0}, 1, nullptr, {}}, title("x"))), FIRN_BAD_EDIT);
  EXPECT_EQ(hand.refused(make_set({{1, 1}, 0, nullptr, {}}, title("x"))), FIRN_BAD_EDIT);
  EXPECT_EQ(hand.refused(make_set({{1, 1}, UINT64_MAX, nullptr, {}}, title("x"))), FIRN_BAD_EDIT);
  FlatBufferBuilder builder;
  EXPECT_EQ(hand.refused(finish(builder, CreateEdit(builder))), FIRN_BAD_EDIT);
  FlatBufferBuilder no_change;
  const EditId id(1, 1);
  EXPECT_EQ(hand.refused(finish(no_change, CreateEdit(no_change, 1, &id, 1))), FIRN_BAD_EDIT);
}

// The largest clock is taken, and the next edit still has one to carry.
TEST(Refused, AClockAtItsEndDoesNotShutTheRecorder) {
  Hand hand;
  hand.record(make_set({{1, 1}, recording::kLastClock, nullptr, {}}, title("x")));
  EXPECT_EQ(hand.recorder.next_clock(), recording::kLastClock);
  hand.record(make_set({{1, 2}, hand.recorder.next_clock(), nullptr, {}}, title("y")));
  EXPECT_EQ(read(hand.pit()).title()->str(), "y");
}

TEST(Refused, NewerSchemas) {
  Hand hand;
  EXPECT_EQ(
      hand.refused(edit_with(
          hand.next(), [](ChangeBuilder& change) { change.add_amount_10um(3); }, pit::kSchemaMinor + 1)),
      FIRN_NEWER_SCHEMA);
  PitT fields = title("x");
  fields.schema_minor = pit::kSchemaMinor + 1;
  EXPECT_EQ(hand.refused(make_set(hand.next(), fields)), FIRN_NEWER_SCHEMA);
}

TEST(Refused, TextThatCannotBePrinted) {
  Hand hand;
  EXPECT_EQ(hand.refused(make_set(hand.next(), title("bell \a"))), FIRN_BAD_UTF8);
  EXPECT_EQ(hand.refused(make_set(hand.next(), title("\xC3"))), FIRN_BAD_UTF8);
  EXPECT_EQ(hand.refused(make_set(hand.next(), title(std::string("a\0b", 3)))), FIRN_BAD_UTF8);
  PitT deep;
  add_fracture(add_test(deep, TestKind::CT), cm(3)).on = std::make_unique<LayerT>();
  deep.tests[0]->fractures[0]->on->words = "\x7F";
  EXPECT_EQ(hand.refused(make_add(hand.next(), deep)), FIRN_BAD_UTF8);
  EditHead head = hand.next();
  head.observer = "\xFF";
  EXPECT_EQ(hand.refused(make_set(head, title("x"))), FIRN_BAD_UTF8);
  hand.set(title("two\nlines, tab\t, \xD7\xA9\xD7\x9C\xD7\x92"));
}

TEST(Refused, ChangesThatSayNothingOrSomethingElse) {
  Hand hand;
  const PitT empty;
  PitT layer;
  add_layer(layer, 0, 5);
  const Target target = target_of(hand.add(layer), Thing::layer);
  PitT two = PitT();
  add_layer(two, 0, 5);
  add_layer(two, 5, 9);
  PitT mixed = title("x");
  add_layer(mixed, 0, 5);
  PitT sign;
  add_sign(sign, SignKind::whumpf, Answer::no);
  EXPECT_EQ(hand.refused(make_set(hand.next(), empty)), FIRN_BAD_EDIT);
  EXPECT_EQ(hand.refused(make_set(hand.next(), layer)), FIRN_BAD_EDIT);
  EXPECT_EQ(hand.refused(make_set(hand.next(), mixed)), FIRN_BAD_EDIT);
  EXPECT_EQ(hand.refused(make_add(hand.next(), empty)), FIRN_BAD_EDIT);
  EXPECT_EQ(hand.refused(make_add(hand.next(), mixed)), FIRN_BAD_EDIT);
  EXPECT_EQ(hand.refused(make_add(hand.next(), layer, &target)), FIRN_BAD_EDIT);
  EXPECT_EQ(hand.refused(make_add(hand.next(), layer, nullptr, &target)), FIRN_BAD_EDIT);
  EXPECT_EQ(hand.refused(make_change(hand.next(), target, empty)), FIRN_BAD_EDIT);
  EXPECT_EQ(hand.refused(make_change(hand.next(), target, two)), FIRN_BAD_EDIT);
  EXPECT_EQ(hand.refused(make_change(hand.next(), target, mixed)), FIRN_BAD_EDIT);
  EXPECT_EQ(hand.refused(make_change(hand.next(), target, sign)), FIRN_BAD_EDIT);
  EXPECT_EQ(hand.refused(make_clear(hand.next(), &target, {})), FIRN_BAD_EDIT);
  EXPECT_EQ(hand.refused(make_clear(hand.next(), nullptr, {{-1, -1, 2, Thing::layer}})), FIRN_BAD_EDIT);
  EXPECT_EQ(hand.refused(make_clear(hand.next(), &target, {{-1, -1, 0, Thing::sign}})), FIRN_BAD_EDIT);
  EXPECT_EQ(hand.refused(make_clear(hand.next(), &target, {{-1, -1, 99, Thing::layer}})), FIRN_BAD_EDIT);
  EXPECT_EQ(hand.refused(make_clear(hand.next(), &target, {{-1, -1, kWholeThing, Thing::layer}})),
            FIRN_BAD_EDIT);
  EXPECT_EQ(hand.refused(make_clear(hand.next(), nullptr, {{-1, -1, 16, Thing::pit}})), FIRN_BAD_EDIT);
  EXPECT_EQ(hand.refused(make_clear(hand.next(), nullptr, {{-1, -1, 0, Thing::pit}})), FIRN_BAD_EDIT);
  EXPECT_EQ(hand.refused(make_clear(hand.next(), nullptr, {{-1, -1, 0, static_cast<Thing>(200)}})),
            FIRN_BAD_EDIT);
}

TEST(Refused, FieldsThatTheKindOfChangeHasNoUseFor) {
  Hand hand;
  const EditId id(7, 1);
  const auto refused = [&](const std::function<void(ChangeBuilder&)>& fill) {
    return hand.refused(edit_with(hand.next(), fill));
  };
  EXPECT_EQ(refused([](ChangeBuilder&) {}), FIRN_BAD_EDIT);
  EXPECT_EQ(refused([](ChangeBuilder& change) { change.add_kind(static_cast<ChangeKind>(0)); }),
            FIRN_BAD_EDIT);
  EXPECT_EQ(refused([](ChangeBuilder& change) { change.add_kind(static_cast<ChangeKind>(13)); }),
            FIRN_BAD_EDIT);
  for (const ChangeKind kind : EnumValuesChangeKind()) {
    EXPECT_EQ(refused([&](ChangeBuilder& change) { change.add_kind(kind); }), FIRN_BAD_EDIT);
  }
  EXPECT_EQ(refused([&](ChangeBuilder& change) {
              change.add_kind(ChangeKind::shift_depths);
              change.add_amount_10um(5);
              change.add_edit(&id);
            }),
            FIRN_BAD_EDIT);
}

TEST(Refused, TargetsThatAreNotThere) {
  Hand hand;
  const Target layer = hand.layer(0, 40);
  const EditKey key = hand.last();
  PitT fields;
  fields.layers.push_back(std::make_unique<LayerT>());
  fields.layers[0]->words = "x";
  for (const Target& target : {target_of(key, Thing::layer, 1), target_of(key, Thing::layer, UINT32_MAX),
                               target_of(key, Thing::layer, 0, 1), target_of({7, 99}, Thing::layer),
                               target_of({8, 1}, Thing::layer), target_of({0, 0}, Thing::layer)}) {
    EXPECT_EQ(hand.refused(make_change(hand.next(), target, fields)), FIRN_NO_SUCH_TARGET);
    EXPECT_EQ(hand.refused(make_remove(hand.next(), target)), FIRN_NO_SUCH_TARGET);
    EXPECT_EQ(hand.refused(make_split(hand.next(), target, down(cm(3)))), FIRN_NO_SUCH_TARGET);
    EXPECT_EQ(hand.refused(make_merge(hand.next(), layer, target)), FIRN_NO_SUCH_TARGET);
  }
  for (const Thing thing : {Thing::site, Thing::pit, Thing::boundary, static_cast<Thing>(255)}) {
    EXPECT_EQ(hand.refused(make_remove(hand.next(), target_of(key, thing))), FIRN_NO_SUCH_TARGET);
    EXPECT_EQ(hand.refused(make_change(hand.next(), target_of(key, thing), fields)), FIRN_BAD_EDIT);
  }
  // An edit cannot name things that are added later in the order.
  EditHead early = hand.next();
  early.clock = 1;
  early.key.device = 1;
  EXPECT_EQ(hand.refused(make_remove(early, layer)), FIRN_NO_SUCH_TARGET);
}

TEST(Refused, PlacesByPositionInThingsOfOthers) {
  Hand hand;
  const Target layer = hand.layer(0, 40);
  PitT fields;
  fields.remarks.push_back(std::make_unique<RemarkT>());
  fields.remarks[0]->text = "x";
  const auto about = [&](Place place) { fields.remarks[0]->about = std::make_unique<Place>(place); };
  about({0, -1, 2, Thing::layer});
  EXPECT_EQ(hand.refused(make_add(hand.next(), fields)), FIRN_BAD_EDIT);
  about({INT32_MAX, INT32_MAX, 2, Thing::fracture});
  EXPECT_EQ(hand.refused(make_add(hand.next(), fields)), FIRN_BAD_EDIT);
  about({0, -1, 2, Thing::sign});
  EXPECT_EQ(hand.refused(make_add(hand.next(), fields, nullptr, &layer)), FIRN_BAD_EDIT);
  about({INT32_MIN, INT32_MIN, 2, Thing::layer});
  hand.add(fields);
  about({0, -1, 2, Thing::boundary});
  hand.add(fields, nullptr, &layer);
  const Bytes bytes = hand.pit();
  EXPECT_EQ(read(bytes).remarks()->Get(1)->about()->thing(), Thing::boundary);
}

TEST(Refused, OneTextSharedByManyThings) {
  FlatBufferBuilder builder;
  const auto text = builder.CreateString(std::string(1 << 20, 'x'));
  std::vector<flatbuffers::Offset<Remark>> remarks;
  for (int i = 0; i < 10000; ++i) remarks.push_back(CreateRemark(builder, text));
  const auto list = builder.CreateVector(remarks);
  PitBuilder fields(builder);
  fields.add_remarks(list);
  const auto fields_offset = fields.Finish();
  const auto change = CreateChange(builder, ChangeKind::add, nullptr, nullptr, fields_offset);
  const EditId id(1, 1);
  Hand hand;
  EXPECT_EQ(hand.refused(finish(builder, CreateEdit(builder, 1, &id, 1, nullptr, 0, 0, change))),
            FIRN_TOO_LARGE);
}

// A layer with a long text is copied by every split: what all edits write together has a limit too.
TEST(Refused, SplittingWithoutEnd) {
  Hand hand;
  PitT fields;
  add_layer(fields, 0, 1 << 20).words = std::string(8 << 20, 'x');
  const Target layer = target_of(hand.add(fields), Thing::layer);
  std::int32_t depth = 1 << 19;
  std::size_t splits = 0;
  for (; splits < 100; ++splits, depth -= 100) {
    const Bytes edit = make_split(hand.next(), layer, down(depth));
    const Done verdict = hand.recorder.apply(edit.data(), edit.size());
    if (verdict) continue;
    EXPECT_EQ(verdict.failure().status, FIRN_TOO_LARGE);
    break;
  }
  EXPECT_GT(splits, 20u);
  EXPECT_LT(splits, 40u);
}

TEST(Refused, APitThatTheLimitsWouldNotRead) {
  Recorder small{pit::Limits{1000}};
  const EditHead heads[] = {{{1, 1}, 1, nullptr, {}}, {{1, 2}, 2, nullptr, {}}};
  for (const EditHead& head : heads) {
    PitT fields;
    add_layer(fields, 0, 5).words = std::string(600, 'x');
    const Bytes edit = make_add(head, fields);
    ASSERT_TRUE(small.apply(edit.data(), edit.size()));
  }
  EXPECT_EQ(small.pit().failure().status, FIRN_TOO_LARGE);
  const Bytes undo = recording::make_undo({{1, 3}, 3, nullptr, {}}, {1, 1});
  ASSERT_TRUE(small.apply(undo.data(), undo.size()));
  EXPECT_TRUE(small.pit());
}

// Every kind of edit, cut off at every length and with every bit flipped: refused or taken, never worse, and
// the pit is always one that can be read.
class Hostile : public ::testing::TestWithParam<int> {
 protected:
  static Bytes edit(Hand& hand, const Target& layer, const Target& lower, const Target& test) {
    PitT fields;
    fields.layers.push_back(std::make_unique<LayerT>());
    fields.layers[0]->words = "sugary";
    switch (GetParam()) {
      case 0:
        fields = title("Tarn Shoulder");
        fields.site = std::make_unique<SiteT>();
        fields.site->probes_10um = {cm(3), cm(4)};
        return make_set(hand.next(), fields);
      case 1:
        fields.remarks.push_back(std::make_unique<RemarkT>());
        fields.remarks[0]->about = std::make_unique<Place>(0, -1, 3, Thing::layer);
        return make_add(hand.next(), fields);
      case 2:
        fields.layers.clear();
        fields.tests.push_back(std::make_unique<StabilityTestT>());
        add_fracture(*fields.tests[0], cm(16));
        return make_add(hand.next(), fields, &test);
      case 3:
        return make_change(hand.next(), layer, fields);
      case 4:
        return make_remove(hand.next(), layer);
      case 5:
        return make_clear(hand.next(), &layer, {{-1, -1, 0, Thing::layer}, {-1, -1, 1, Thing::layer}});
      case 6:
        return make_split(hand.next(), layer, down(cm(7)));
      case 7:
        return make_merge(hand.next(), layer, lower);
      case 8:
        return make_shift(hand.next(), cm(3));
      case 9:
        return make_rescale(hand.next(), cm(142), cm(140));
      case 10:
        return make_undo(hand.next(), {7, 1});
      case 12:
      case 13:
        return guided(hand, GetParam() == 12);
      default:
        return make_redo(hand.next(), {7, 1});
    }
  }
  // The start of a guided test, or a crack in one that was started.
  static Bytes guided(Hand& hand, bool starts) {
    PitT fields;
    StabilityTestT& column = add_test(fields, TestKind::ECT);
    column.column_length_10um = cm(30);
    const Bytes start = recording::make_event(hand.next(), TestEventKind::start, nullptr, nullptr, &fields);
    if (starts) return start;
    const Target begun = target_of(hand.record(start), Thing::test);
    PitT seen;
    add_fracture(add_test(seen, TestKind::ECT), cm(16)).words = "thin";
    seen.tests[0]->kind.reset();
    seen.tests[0]->outcome.reset();
    return recording::make_event(hand.next(), TestEventKind::isolating, &begun, nullptr, &seen);
  }
  static void expect_readable(const Hand& hand) {
    const Bytes bytes = hand.pit();
    pit::AlignedBytes aligned;
    EXPECT_TRUE(pit::verify(bytes.data(), bytes.size(), {}, aligned));
  }
};

TEST_P(Hostile, CutAndFlippedBytes) {
  Hand hand;
  const Target layer = hand.layer(0, 40);
  const Target lower = hand.layer(40, 60);
  PitT fields;
  add_test(fields, TestKind::CT);
  const Target test = target_of(hand.add(fields), Thing::test);
  const Bytes good = edit(hand, layer, lower, test);
  for (std::size_t size = 0; size < good.size(); ++size) {
    const Bytes cut(good.begin(), good.begin() + static_cast<std::ptrdiff_t>(size));
    const bool is_taken = static_cast<bool>(hand.recorder.apply(cut.data(), cut.size()));
    EXPECT_FALSE(is_taken && size < good.size() / 2);
  }
  expect_readable(hand);
  for (std::size_t byte = 0; byte < good.size(); ++byte) {
    for (int bit = 0; bit < 8; ++bit) {
      Hand victim;
      for (const Bytes& before : hand.edits) victim.record(before);
      Bytes flipped = good;
      flipped[byte] = static_cast<std::uint8_t>(flipped[byte] ^ 1u << bit);
      if (victim.recorder.apply(flipped.data(), flipped.size())) expect_readable(victim);
    }
  }
}

INSTANTIATE_TEST_SUITE_P(EveryKind, Hostile, ::testing::Range(0, 14));

}  // namespace
}  // namespace firn::tests
