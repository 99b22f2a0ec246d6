// The journal from outside: what a host does with it, and what it may get wrong.
#include <algorithm>

#include "support.h"

namespace {

using capi::Buffer;
using capi::bytes_of;
using capi::Context;

// Somebody who records on a device of their own.
class Person {
 public:
  explicit Person(std::uint64_t device) : device_(device) {
    EXPECT_EQ(firn_recorder_create(context, &recorder, nullptr), FIRN_OK);
    firn_author author = FIRN_INIT(firn_author);
    author.device = device;
    EXPECT_EQ(firn_recorder_author(recorder, &author, nullptr), FIRN_OK);
  }
  ~Person() { firn_recorder_destroy(recorder); }
  Person(const Person&) = delete;
  Person& operator=(const Person&) = delete;

  // Records a layer, or its hardness when it is there already.
  firn_target layer(std::uint8_t hardness, const firn_target* there = nullptr) {
    firn_layer layer = FIRN_INIT(firn_layer);
    layer.present = FIRN_BIT(FIRN_FIELD_LAYER_HARDNESS);
    layer.hardness = hardness;
    firn_target target = {};
    EXPECT_EQ(firn_record_layer(recorder, &layer, there, &target, nullptr, &error), FIRN_OK) << error.what;
    return target;
  }
  void title(const char* text) {
    firn_pit_head head = FIRN_INIT(firn_pit_head);
    head.title = text;
    EXPECT_EQ(firn_record_pit_head(recorder, &head, nullptr, &error), FIRN_OK) << error.what;
  }
  std::string frames(std::uint64_t after = 0) {
    Buffer out(context);
    EXPECT_EQ(firn_recorder_frames(recorder, after, out.out(), nullptr, &error), FIRN_OK) << error.what;
    return out.text();
  }
  std::string journal() {
    Buffer out(context);
    EXPECT_EQ(firn_recorder_journal(recorder, out.out(), &error), FIRN_OK) << error.what;
    return out.text();
  }
  std::string pit() {
    Buffer out(context);
    EXPECT_EQ(firn_recorder_pit(recorder, out.out(), &error), FIRN_OK) << error.what;
    return out.text();
  }
  firn_loaded load(const std::string& journal) {
    firn_loaded loaded = FIRN_INIT(firn_loaded);
    EXPECT_EQ(firn_recorder_load(recorder, bytes_of(journal), journal.size(), &loaded, &error), FIRN_OK)
        << error.what;
    return loaded;
  }
  std::size_t conflict_count() {
    std::size_t count = 99;
    EXPECT_EQ(firn_recorder_conflict_count(recorder, &count, &error), FIRN_OK);
    return count;
  }

  Context context;
  firn_recorder* recorder = nullptr;
  firn_error error = FIRN_INIT(firn_error);

 private:
  std::uint64_t device_;
};

TEST(Journal, AnHourWithABatteryThatDies) {
  std::string file;
  std::string pit;
  {
    Person person(7);
    ASSERT_EQ(firn_recorder_begin(person.recorder, "pit 1", nullptr), FIRN_OK);
    std::uint64_t stored = 0;
    for (int i = 0; i < 5; ++i) {
      person.layer(FIRN_HAND_HARDNESS_FIST);
      Buffer frames(person.context);
      std::uint64_t last = 0;
      ASSERT_EQ(firn_recorder_frames(person.recorder, stored, frames.out(), &last, nullptr), FIRN_OK);
      file += frames.text();
      ASSERT_EQ(firn_recorder_acknowledge(person.recorder, last, nullptr), FIRN_OK);
      stored = last;
      EXPECT_EQ(firn_recorder_acknowledged(person.recorder), firn_recorder_ticket(person.recorder));
    }
    pit = person.pit();
    // This one is written half when the battery dies.
    person.layer(FIRN_HAND_HARDNESS_PENCIL);
    file += person.frames(stored).substr(0, 50);
  }
  Person again(7);
  const firn_loaded loaded = again.load(file);
  EXPECT_EQ(loaded.names_pit, 1u);
  EXPECT_EQ(loaded.added, 5u);
  EXPECT_EQ(loaded.frames, 6u);
  EXPECT_EQ(loaded.known, 0u);
  EXPECT_EQ(loaded.kept, 0u);
  EXPECT_EQ(loaded.last_ticket, 6u);
  EXPECT_EQ(loaded.gaps, 1u);
  EXPECT_EQ(loaded.lost_bytes, 50u);
  EXPECT_EQ(loaded.whole_size, file.size() - 50);
  EXPECT_TRUE(again.pit() == pit);
  firn_journal_gap gap = FIRN_INIT(firn_journal_gap);
  ASSERT_EQ(firn_recorder_gap(again.recorder, 0, &gap, nullptr), FIRN_OK);
  EXPECT_EQ(gap.reason, static_cast<std::uint32_t>(FIRN_GAP_TORN));
  EXPECT_EQ(gap.offset, file.size() - 50);
  EXPECT_EQ(gap.size, 50u);
  EXPECT_EQ(gap.device, 7u);
  EXPECT_EQ(gap.sequence, 6u);
  // It goes on, with numbers that nobody has used.
  ASSERT_EQ(firn_recorder_acknowledge(again.recorder, loaded.last_ticket, nullptr), FIRN_OK);
  file.resize(loaded.whole_size);
  std::uint64_t sequence = 0;
  ASSERT_EQ(firn_recorder_next(again.recorder, nullptr, &sequence, nullptr), FIRN_OK);
  EXPECT_EQ(sequence, 7u);
  again.layer(FIRN_HAND_HARDNESS_PENCIL);
  file += again.frames(loaded.last_ticket);
  Person third(7);
  EXPECT_EQ(third.load(file).added, 6u);
  EXPECT_TRUE(third.pit() == again.pit());
}

TEST(Journal, TwoPeopleOnePit) {
  Person one(1), two(2);
  ASSERT_EQ(firn_recorder_begin(one.recorder, "pit", nullptr), FIRN_OK);
  const firn_target layer = one.layer(FIRN_HAND_HARDNESS_FIST);
  two.load(one.journal());
  EXPECT_EQ(one.conflict_count(), 0u);
  two.layer(FIRN_HAND_HARDNESS_PENCIL, &layer);
  one.layer(FIRN_HAND_HARDNESS_KNIFE, &layer);
  two.title("Larch Bowl");
  // In either order.
  const std::string from_one = one.journal();
  const std::string from_two = two.journal();
  EXPECT_EQ(one.load(from_two).added, 2u);
  EXPECT_EQ(two.load(from_one).added, 1u);
  EXPECT_TRUE(one.pit() == two.pit());
  EXPECT_TRUE(one.journal() == two.journal());
  ASSERT_EQ(one.conflict_count(), 1u);
  ASSERT_EQ(two.conflict_count(), 1u);
  firn_conflict conflict = FIRN_INIT(firn_conflict);
  ASSERT_EQ(firn_recorder_conflict(one.recorder, 0, &conflict, nullptr), FIRN_OK);
  EXPECT_EQ(conflict.device, 1u);
  EXPECT_EQ(conflict.sequence, 2u);
  EXPECT_EQ(conflict.shown_device, 2u);
  EXPECT_EQ(conflict.shown_sequence, 1u);
  EXPECT_EQ(conflict.field, FIRN_FIELD_LAYER_HARDNESS);
  EXPECT_EQ(conflict.target.device, layer.device);
  EXPECT_EQ(conflict.target.sequence, layer.sequence);
  EXPECT_EQ(conflict.target.thing, FIRN_THING_LAYER);
  // Whoever sets it anew has seen both: edits made by structs say so by themselves.
  one.layer(FIRN_HAND_HARDNESS_KNIFE, &layer);
  EXPECT_EQ(one.conflict_count(), 0u);
  two.load(one.journal());
  EXPECT_EQ(two.conflict_count(), 0u);
}

TEST(Journal, AnUndoButtonThatWorksAfterARestart) {
  Person person(7);
  ASSERT_EQ(firn_recorder_begin(person.recorder, "pit", nullptr), FIRN_OK);
  person.title("one");
  person.title("two");
  std::uint64_t undo = 0, redo = 99;
  ASSERT_EQ(firn_recorder_undoable(person.recorder, 7, &undo, &redo, nullptr), FIRN_OK);
  EXPECT_EQ(undo, 2u);
  EXPECT_EQ(redo, 0u);
  ASSERT_EQ(firn_record_undo(person.recorder, 7, undo, nullptr, nullptr), FIRN_OK);
  Person again(7);
  again.load(person.journal());
  ASSERT_EQ(firn_recorder_undoable(again.recorder, 7, &undo, &redo, nullptr), FIRN_OK);
  EXPECT_EQ(undo, 1u);
  EXPECT_EQ(redo, 2u);
  EXPECT_EQ(firn_recorder_undoable(again.recorder, 0, &undo, &redo, nullptr), FIRN_BAD_ARGUMENT);
  EXPECT_EQ(firn_recorder_undoable(again.recorder, 7, nullptr, nullptr, nullptr), FIRN_OK);
}

TEST(Journal, HostsThatGetItWrongAreToldAndNothingChanges) {
  Person person(7);
  person.title("one");
  Buffer out(person.context);
  firn_error& error = person.error;
  firn_recorder* recorder = person.recorder;
  const auto refused = [&](firn_status status, firn_status wanted) {
    EXPECT_EQ(status, wanted);
    EXPECT_NE(error.what[0], '\0');
    EXPECT_NE(error.remedy[0], '\0');
    EXPECT_EQ(out.data(), nullptr);
    EXPECT_EQ(firn_recorder_acknowledged(recorder), 0u);
  };
  refused(firn_recorder_frames(recorder, 0, out.out(), nullptr, &error), FIRN_WRONG_STATE);
  refused(firn_recorder_journal(recorder, out.out(), &error), FIRN_WRONG_STATE);
  refused(firn_recorder_begin(recorder, nullptr, &error), FIRN_NULL_ARGUMENT);
  refused(firn_recorder_begin(recorder, "", &error), FIRN_BAD_ARGUMENT);
  refused(firn_recorder_begin(recorder, "a\nb\x02", &error), FIRN_BAD_UTF8);
  ASSERT_EQ(firn_recorder_begin(recorder, "pit", nullptr), FIRN_OK);
  refused(firn_recorder_begin(recorder, "other", &error), FIRN_OTHER_PIT);
  refused(firn_recorder_frames(recorder, 3, out.out(), nullptr, &error), FIRN_BAD_TICKET);
  refused(firn_recorder_frames(recorder, 0, nullptr, nullptr, &error), FIRN_NULL_ARGUMENT);
  refused(firn_recorder_acknowledge(recorder, 0, &error), FIRN_BAD_TICKET);
  refused(firn_recorder_acknowledge(recorder, 3, &error), FIRN_BAD_TICKET);
  refused(firn_recorder_load(recorder, nullptr, 5, nullptr, &error), FIRN_NULL_ARGUMENT);
  firn_loaded short_struct = {};
  short_struct.struct_size = 16;
  const std::string journal = person.journal();
  refused(firn_recorder_load(recorder, bytes_of(journal), journal.size(), &short_struct, &error),
          FIRN_BAD_STRUCT_SIZE);
  firn_journal_gap gap = FIRN_INIT(firn_journal_gap);
  refused(firn_recorder_gap(recorder, 0, &gap, &error), FIRN_BAD_ARGUMENT);
  firn_conflict conflict = FIRN_INIT(firn_conflict);
  refused(firn_recorder_conflict(recorder, 0, &conflict, &error), FIRN_BAD_ARGUMENT);
  refused(firn_recorder_conflict_count(recorder, nullptr, &error), FIRN_NULL_ARGUMENT);
  refused(firn_recorder_journal(recorder, nullptr, &error), FIRN_NULL_ARGUMENT);
  EXPECT_EQ(firn_recorder_ticket(nullptr), 0u);
  EXPECT_EQ(firn_recorder_acknowledged(nullptr), 0u);
  EXPECT_EQ(firn_recorder_frames(nullptr, 0, out.out(), nullptr, nullptr), FIRN_NULL_ARGUMENT);
  EXPECT_TRUE(person.journal() == journal);
}

TEST(Journal, RefusesWhatCannotBeMergedAndSaysWhy) {
  Person one(7), two(7), other(8);
  ASSERT_EQ(firn_recorder_begin(one.recorder, "pit", nullptr), FIRN_OK);
  ASSERT_EQ(firn_recorder_begin(two.recorder, "pit", nullptr), FIRN_OK);
  ASSERT_EQ(firn_recorder_begin(other.recorder, "pit 2", nullptr), FIRN_OK);
  one.title("one");
  two.title("two");
  other.title("one");
  const std::string before = one.journal();
  const auto refused = [&](const std::string& journal, firn_status wanted) {
    EXPECT_EQ(firn_recorder_load(one.recorder, bytes_of(journal), journal.size(), nullptr, &one.error),
              wanted);
    const std::string what = one.error.what;
    EXPECT_TRUE(one.journal() == before);
    return what;
  };
  EXPECT_NE(refused(two.journal(), FIRN_DUPLICATE_EDIT).find("number 1 of device 7"), std::string::npos);
  refused(other.journal(), FIRN_OTHER_PIT);
}

// A journal at any address, cut and flipped anywhere: a status or an answer.
TEST(Journal, AnyBytesAtAnyAddress) {
  Person person(7);
  ASSERT_EQ(firn_recorder_begin(person.recorder, "pit", nullptr), FIRN_OK);
  for (int i = 0; i < 3; ++i) person.layer(FIRN_HAND_HARDNESS_FIST);
  const std::string journal = person.journal();
  for (std::size_t shift = 0; shift < 8; ++shift) {
    const std::string moved = std::string(shift, 'x') + journal;
    Person reader(8);
    firn_loaded loaded = FIRN_INIT(firn_loaded);
    ASSERT_EQ(firn_recorder_load(reader.recorder, bytes_of(moved) + shift, journal.size(), &loaded, nullptr),
              FIRN_OK);
    EXPECT_EQ(loaded.added, 3u);
    EXPECT_TRUE(reader.pit() == person.pit());
    // As bytes that begin with something else it is read too.
    Person other(8);
    EXPECT_EQ(other.load(moved).added, 3u);
  }
  std::string damaged = journal;
  for (std::size_t at = 0; at < journal.size(); at += 3) {
    damaged[at] = static_cast<char>(damaged[at] ^ 0x55);
    Person reader(8);
    firn_loaded loaded = FIRN_INIT(firn_loaded);
    const firn_status status =
        firn_recorder_load(reader.recorder, bytes_of(damaged), damaged.size(), &loaded, nullptr);
    // Without the frame that names the pit nobody knows whose edits these are.
    ASSERT_TRUE(status == FIRN_OK ? loaded.added == 2 : status == FIRN_WRONG_STATE) << at;
    damaged[at] = journal[at];
  }
}

}  // namespace
