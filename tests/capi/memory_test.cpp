// Memory that runs out at every single place: each call must answer with a status, leave nothing behind, and
// leave its context usable. Links the objects, and replaces the global operator new.
#include <cstdlib>
#include <functional>
#include <map>
#include <new>

#include "support.h"

namespace {

// Only counts and refuses between arm() and disarm(), which is where the library runs.
bool armed = false;
long requests = 0;
long refuse_at = 0;
bool refused = false;
long live = 0;

void arm(long nth) {
  requests = 0;
  refuse_at = nth;
  refused = false;
  armed = true;
}
void disarm() {
  armed = false;
}

void* take(std::size_t size) noexcept {
  if (armed && ++requests == refuse_at) {
    refused = true;
    return nullptr;
  }
  void* memory = std::malloc(size == 0 ? 1 : size);
  if (memory != nullptr) ++live;
  return memory;
}

void give(void* memory) noexcept {
  if (memory == nullptr) return;
  --live;
  std::free(memory);
}

}  // namespace

void* operator new(std::size_t size) {
  void* memory = take(size);
  if (memory == nullptr) throw std::bad_alloc();
  return memory;
}
void* operator new(std::size_t size, const std::nothrow_t&) noexcept {
  return take(size);
}
void* operator new[](std::size_t size) {
  return operator new(size);
}
void* operator new[](std::size_t size, const std::nothrow_t&) noexcept {
  return take(size);
}
void operator delete(void* memory) noexcept {
  give(memory);
}
void operator delete(void* memory, std::size_t) noexcept {
  give(memory);
}
void operator delete(void* memory, const std::nothrow_t&) noexcept {
  give(memory);
}
void operator delete[](void* memory) noexcept {
  give(memory);
}
void operator delete[](void* memory, std::size_t) noexcept {
  give(memory);
}
void operator delete[](void* memory, const std::nothrow_t&) noexcept {
  give(memory);
}

namespace {

using capi::Buffer;
using capi::bytes_of;
using capi::Context;

void keep_quiet(void*, firn_log_level, const char*, const char*) {}

// What the calls work on, made once.
struct Demo {
  std::string notes, pit, report, comparison;
};
const Demo& demo_of(const std::string& name) {
  static std::map<std::string, Demo> made;
  Demo& demo = made[name];
  if (demo.notes.empty()) {
    Context context;
    demo.notes = capi::demo_notes(name);
    demo.pit = capi::pit_of(context, demo.notes);
    demo.report = capi::report_of(context, demo.pit);
    const std::string other = capi::pit_of(context, capi::demo_notes("tarn-shoulder"));
    Buffer comparison(context);
    EXPECT_EQ(firn_compare(context, bytes_of(demo.pit), demo.pit.size(), bytes_of(other), other.size(),
                           nullptr, comparison.out(), nullptr),
              FIRN_OK);
    demo.comparison = comparison.text();
  }
  return demo;
}

const std::string& another_journal();

// A call under test: made in a fresh context, with what it needs prepared while there is memory.
struct Scene {
  Context context;
  const std::string &notes, &pit, &report, &comparison;
  firn_report* opened = nullptr;
  firn_recorder* recorder = nullptr;
  firn_buffer out = {nullptr, 0}, more = {nullptr, 0};
  firn_target target = {};
  firn_error error = FIRN_INIT(firn_error);

  explicit Scene(const Demo& demo)
      : notes(demo.notes), pit(demo.pit), report(demo.report), comparison(demo.comparison) {
    EXPECT_EQ(firn_report_open(context, bytes_of(report), report.size(), &opened, nullptr), FIRN_OK);
    EXPECT_EQ(firn_recorder_create(context, &recorder, nullptr), FIRN_OK);
    firn_author author = FIRN_INIT(firn_author);
    author.device = 7;
    EXPECT_EQ(firn_recorder_author(recorder, &author, nullptr), FIRN_OK);
    firn_layer layer = FIRN_INIT(firn_layer);
    layer.present = FIRN_BIT(FIRN_FIELD_LAYER_TOP) | FIRN_BIT(FIRN_FIELD_LAYER_BOTTOM);
    layer.top = {0, FIRN_DATUM_SURFACE, FIRN_DIRECTION_VERTICAL, 0};
    layer.bottom = {FIRN_CM(40), FIRN_DATUM_SURFACE, FIRN_DIRECTION_VERTICAL, 0};
    EXPECT_EQ(firn_record_layer(recorder, &layer, nullptr, &target, nullptr, nullptr), FIRN_OK);
    EXPECT_EQ(firn_recorder_begin(recorder, "pit", nullptr), FIRN_OK);
    another_journal();
  }
  ~Scene() {
    firn_buffer_free(context, &out);
    firn_buffer_free(context, &more);
    firn_report_close(opened);
    firn_recorder_destroy(recorder);
  }
  Scene(const Scene&) = delete;
  Scene& operator=(const Scene&) = delete;

  std::string outputs() const {
    std::string all(reinterpret_cast<const char*>(out.data), out.size);
    return all + '|' + std::string(reinterpret_cast<const char*>(more.data), more.size);
  }
};

using Act = std::function<firn_status(Scene&)>;

struct Case {
  const char* name;
  Act act;
};

const char kObserver[] = "an observer whose name does not fit into a string's own few bytes";

firn_status record_everything(Scene& s) {
  firn_layer on = FIRN_INIT(firn_layer);
  on.words = kObserver;
  firn_fracture fracture = FIRN_INIT(firn_fracture);
  fracture.present = FIRN_BIT(FIRN_FIELD_FRACTURE_DEPTH) | FIRN_BIT(FIRN_FIELD_FRACTURE_TAP);
  fracture.depth = {FIRN_CM(17), FIRN_DATUM_SURFACE, FIRN_DIRECTION_VERTICAL, 0};
  fracture.tap = 11;
  fracture.on = &on;
  firn_test test = FIRN_INIT(firn_test);
  test.present = FIRN_BIT(FIRN_FIELD_STABILITY_TEST_KIND);
  test.kind = FIRN_TEST_KIND_CT;
  test.fractures = &fracture;
  test.fracture_count = 1;
  return firn_record_test(s.recorder, &test, nullptr, &s.target, &s.out, &s.error);
}

firn_status record_site(Scene& s) {
  const std::int32_t probes[] = {FIRN_CM(38), FIRN_CM(45)};
  firn_site site = FIRN_INIT(firn_site);
  site.name = kObserver;
  site.probes_10um = probes;
  site.probe_count = 2;
  return firn_record_site(s.recorder, &site, &s.out, &s.error);
}

// Against the other demo pit, so that there is something to tell of every kind.
firn_status compare(Scene& s) {
  const std::string& other = demo_of("tarn-shoulder").pit;
  return firn_compare(s.context, bytes_of(s.pit), s.pit.size(), bytes_of(other), other.size(), nullptr,
                      &s.out, &s.error);
}

firn_status tell_comparison(Scene& s) {
  const std::string& other = demo_of("tarn-shoulder").pit;
  return firn_comparison_note(s.context, bytes_of(s.comparison), s.comparison.size(), bytes_of(s.pit),
                              s.pit.size(), bytes_of(other), other.size(), &s.out, &s.error);
}

firn_status record_step(Scene& s) {
  firn_step step = FIRN_INIT(firn_step);
  step.present = FIRN_BIT(FIRN_FIELD_STEP_KIND) | FIRN_BIT(FIRN_FIELD_STEP_DONE);
  step.kind = FIRN_STEP_KIND_PACK_CLOSED;
  step.words = kObserver;
  return firn_record_step(s.recorder, &step, nullptr, nullptr, &s.out, &s.error);
}

// A journal of somebody else about the same pit, made while there is memory.
const std::string& another_journal() {
  static const std::string made = [] {
    Context context;
    firn_recorder* recorder = nullptr;
    EXPECT_EQ(firn_recorder_create(context, &recorder, nullptr), FIRN_OK);
    firn_author author = FIRN_INIT(firn_author);
    author.device = 8;
    EXPECT_EQ(firn_recorder_author(recorder, &author, nullptr), FIRN_OK);
    EXPECT_EQ(firn_recorder_begin(recorder, "pit", nullptr), FIRN_OK);
    for (const char* title : {"one", "two", kObserver}) {
      firn_pit_head head = FIRN_INIT(firn_pit_head);
      head.title = title;
      EXPECT_EQ(firn_record_pit_head(recorder, &head, nullptr, nullptr), FIRN_OK);
    }
    Buffer journal(context);
    EXPECT_EQ(firn_recorder_journal(recorder, journal.out(), nullptr), FIRN_OK);
    firn_recorder_destroy(recorder);
    // With damage in it, so that gaps are told too.
    std::string bytes = journal.text();
    bytes[bytes.size() - 20] = '!';
    return bytes;
  }();
  return made;
}

// What was refused for want of memory must not be half there: the same ticket before and after.
firn_status load_another(Scene& s) {
  const std::string& journal = another_journal();
  const std::uint64_t before = firn_recorder_ticket(s.recorder);
  firn_loaded loaded = FIRN_INIT(firn_loaded);
  const firn_status status =
      firn_recorder_load(s.recorder, bytes_of(journal), journal.size(), &loaded, &s.error);
  EXPECT_EQ(firn_recorder_ticket(s.recorder), status == FIRN_OK ? before + 2 : before);
  return status;
}

firn_status count_conflicts(Scene& s) {
  std::size_t count = 0;
  return firn_recorder_conflict_count(s.recorder, &count, &s.error);
}

firn_status record_guided(Scene& s) {
  firn_test test = FIRN_INIT(firn_test);
  test.present = FIRN_BIT(FIRN_FIELD_STABILITY_TEST_KIND);
  test.kind = FIRN_TEST_KIND_CT;
  test.words = kObserver;
  // Whoever tries again goes on where memory ran out.
  firn_target open = {};
  firn_status status = firn_guided_open(s.recorder, &open, &s.error);
  if (status == FIRN_OK && open.device == 0) {
    status = firn_guided_start(s.recorder, &test, &open, nullptr, nullptr, &s.error);
  }
  if (status != FIRN_OK) return status;
  firn_guidance now = FIRN_INIT(firn_guidance);
  status = firn_guided_state(s.recorder, &open, &now, &s.error);
  if (status != FIRN_OK) return status;
  firn_test_event event = FIRN_INIT(firn_test_event);
  event.kind = FIRN_TEST_EVENT_ISOLATING;
  if (now.fracture_count == 0) {
    status = firn_guided_event(s.recorder, &open, &event, &now, nullptr, &s.error);
    if (status != FIRN_OK) return status;
  }
  return firn_guided_line(s.recorder, &open, &s.out, &s.error);
}

// With something of everything that the reader has to keep, and something to tell.
const char kBulletin[] =
    "{\"bulletins\":[{\"regions\":[{\"regionID\":\"XX-LW-01\",\"name\":\"Larchwater North\"}],"
    "\"validTime\":{\"startTime\":\"2026-11-27T17:00:00-07:00\",\"endTime\":\"2027-01-28T17:00:00-07:00\"},"
    "\"dangerRatings\":[{\"mainValue\":\"considerable\",\"elevation\":{\"lowerBound\":\"about 2000\"}}],"
    "\"avalancheProblems\":[{\"problemType\":\"wind_slab\",\"aspects\":[\"N\",\"NE\"]},"
    "{\"problemType\":\"persistent_weak_layers\",\"comment\":\"long enough for a string of its own\"}],"
    "\"highlights\":\"a text long enough for a string of its own\",\"customData\":{\"a\":[1,2]}}]}";

firn_status read_bulletin(Scene& s) {
  return firn_bulletin_read(s.context, kBulletin, sizeof kBulletin - 1, &s.out, &s.more, &s.error);
}

firn_status write_bulletin(Scene& s) {
  firn_bulletin_rating rating = FIRN_INIT(firn_bulletin_rating);
  rating.level = FIRN_DANGER_LEVEL_HIGH;
  rating.scope.aspects = FIRN_ASPECT_BIT(FIRN_COMPASS_POINT_N);
  firn_bulletin_problem problem = FIRN_INIT(firn_bulletin_problem);
  problem.type = FIRN_PROBLEM_TYPE_STORM_SLAB;
  problem.comment = kObserver;
  firn_bulletin_typed typed = FIRN_INIT(firn_bulletin_typed);
  typed.region_name = kObserver;
  typed.ratings = &rating;
  typed.rating_count = 1;
  typed.problems = &problem;
  typed.problem_count = 1;
  return firn_bulletin_write(s.context, &typed, &s.out, &s.error);
}

firn_status interpret_with_bulletin(Scene& s) {
  static const std::string bulletin = [] {
    Context context;
    Buffer made(context);
    EXPECT_EQ(firn_bulletin_read(context, kBulletin, sizeof kBulletin - 1, made.out(), nullptr, nullptr),
              FIRN_OK);
    return made.text();
  }();
  // Off its alignment, so that it has to be copied.
  static const std::string shifted = "x" + bulletin;
  firn_interpret_options options = FIRN_INIT(firn_interpret_options);
  options.bulletin = bytes_of(shifted) + 1;
  options.bulletin_size = bulletin.size();
  options.region = "Larchwater North";
  return firn_interpret(s.context, bytes_of(s.pit), s.pit.size(), &options, &s.out, &s.error);
}

firn_status convert(Scene& s, const std::string& document, std::uint32_t to) {
  firn_convert_options options = FIRN_INIT(firn_convert_options);
  options.to = to;
  return firn_convert(s.context, bytes_of(document), document.size(), &options, &s.out, &s.more, &s.error);
}
// In a context of its own, so that nothing of it counts.
std::string converted(const Scene& s, std::uint32_t to) {
  Context context;
  Buffer made(context);
  firn_convert_options options = FIRN_INIT(firn_convert_options);
  options.to = to;
  EXPECT_EQ(firn_convert(context, bytes_of(s.pit), s.pit.size(), &options, made.out(), nullptr, nullptr),
            FIRN_OK);
  return made.text();
}

const std::vector<Case>& cases() {
  static const std::vector<Case> all = {
      {"pit_verify",
       [](Scene& s) { return firn_pit_verify(s.context, bytes_of(s.pit), s.pit.size(), &s.error); }},
      {"notes_read",
       [](Scene& s) {
         return firn_notes_read(s.context, s.notes.data(), s.notes.size(), nullptr, &s.out, &s.more,
                                &s.error);
       }},
      {"notes_write",
       [](Scene& s) {
         return firn_notes_write(s.context, bytes_of(s.pit), s.pit.size(), &s.out, &s.more, &s.error);
       }},
      {"convert_to_json", [](Scene& s) { return convert(s, s.pit, FIRN_FORMAT_JSON); }},
      {"convert_to_caaml", [](Scene& s) { return convert(s, s.pit, FIRN_FORMAT_CAAML); }},
      {"convert_to_a_picture", [](Scene& s) { return convert(s, s.pit, FIRN_FORMAT_CARD_PICTURE); }},
      {"convert_to_a_table", [](Scene& s) { return convert(s, s.pit, FIRN_FORMAT_TESTS_TABLE); }},
      {"convert_from_notes", [](Scene& s) { return convert(s, s.notes, FIRN_FORMAT_FIRN); }},
      {"convert_from_json",
       [](Scene& s) {
         static const std::string json = converted(s, FIRN_FORMAT_JSON);
         return convert(s, json, FIRN_FORMAT_FIRN);
       }},
      {"convert_from_caaml",
       [](Scene& s) {
         static const std::string caaml = converted(s, FIRN_FORMAT_CAAML);
         return convert(s, caaml, FIRN_FORMAT_FIRN);
       }},
      {"convert_from_a_card",
       [](Scene& s) {
         static const std::string card = converted(s, FIRN_FORMAT_CARD_TEXT);
         return convert(s, card, FIRN_FORMAT_FIRN);
       }},
      {"check",
       [](Scene& s) { return firn_check(s.context, bytes_of(s.pit), s.pit.size(), &s.out, &s.error); }},
      {"interpret",
       [](Scene& s) {
         return firn_interpret(s.context, bytes_of(s.pit), s.pit.size(), nullptr, &s.out, &s.error);
       }},
      {"note_write",
       [](Scene& s) {
         return firn_note_write(s.context, bytes_of(s.pit), s.pit.size(), bytes_of(s.report), s.report.size(),
                                &s.out, &s.error);
       }},
      {"draw_profile",
       [](Scene& s) {
         return firn_draw_profile(s.context, bytes_of(s.pit), s.pit.size(), bytes_of(s.report),
                                  s.report.size(), nullptr, &s.out, &s.error);
       }},
      {"note_write_as",
       [](Scene& s) {
         firn_note_options options = FIRN_INIT(firn_note_options);
         options.language = FIRN_LANGUAGE_GERMAN;
         options.length = FIRN_NOTE_BRIEFING;
         return firn_note_write_as(s.context, bytes_of(s.pit), s.pit.size(), bytes_of(s.report),
                                   s.report.size(), &options, &s.out, &s.error);
       }},
      {"report_open",
       [](Scene& s) {
         firn_report* opened = nullptr;
         const firn_status status =
             firn_report_open(s.context, bytes_of(s.report), s.report.size(), &opened, &s.error);
         EXPECT_EQ(opened != nullptr, status == FIRN_OK);
         firn_report_close(opened);
         return status;
       }},
      {"report_check_text",
       [](Scene& s) { return firn_report_check_text(s.opened, 0, &s.out, &s.more, &s.error); }},
      {"report_finding_text",
       [](Scene& s) {
         return firn_report_finding_text(s.opened, 0, bytes_of(s.pit), s.pit.size(), &s.out, &s.error);
       }},
      {"report_caution_text",
       [](Scene& s) { return firn_report_caution_text(s.opened, 0, &s.out, &s.error); }},
      {"report_suggestion_text",
       [](Scene& s) { return firn_report_suggestion_text(s.opened, 0, &s.out, &s.error); }},
      {"report_not_loaded_text",
       [](Scene& s) { return firn_report_not_loaded_text(s.opened, 0, &s.out, &s.error); }},
      {"recorder_create",
       [](Scene& s) {
         firn_recorder* made = nullptr;
         const firn_status status = firn_recorder_create(s.context, &made, &s.error);
         EXPECT_EQ(made != nullptr, status == FIRN_OK);
         firn_recorder_destroy(made);
         return status;
       }},
      {"recorder_author",
       [](Scene& s) {
         firn_author author = FIRN_INIT(firn_author);
         author.device = 9;
         author.observer = kObserver;
         return firn_recorder_author(s.recorder, &author, &s.error);
       }},
      {"record_site", record_site},
      {"record_test", record_everything},
      {"guided", record_guided},
      {"record_remove", [](Scene& s) { return firn_record_remove(s.recorder, &s.target, &s.out, &s.error); }},
      {"record_split_layer",
       [](Scene& s) {
         const firn_depth at = {FIRN_CM(12), FIRN_DATUM_SURFACE, FIRN_DIRECTION_VERTICAL, 0};
         return firn_record_split_layer(s.recorder, &s.target, &at, nullptr, nullptr, &s.out, &s.error);
       }},
      {"record_clear",
       [](Scene& s) {
         return firn_record_clear(s.recorder, &s.target, 0, FIRN_FIELD_LAYER_HARDNESS, &s.out, &s.error);
       }},
      {"record_shift_depths",
       [](Scene& s) { return firn_record_shift_depths(s.recorder, FIRN_CM(1), &s.out, &s.error); }},
      {"record_rescale_depths",
       [](Scene& s) { return firn_record_rescale_depths(s.recorder, 11, 10, &s.out, &s.error); }},
      {"record_undo",
       [](Scene& s) {
         return firn_record_undo(s.recorder, s.target.device, s.target.sequence, &s.out, &s.error);
       }},
      {"record_step", record_step},
      {"compare", compare},
      {"comparison_note", tell_comparison},
      {"bulletin_read", read_bulletin},
      {"bulletin_write", write_bulletin},
      {"interpret_with_bulletin", interpret_with_bulletin},
      {"recorder_begin",
       [](Scene& s) {
         firn_recorder* made = nullptr;
         firn_status status = firn_recorder_create(s.context, &made, &s.error);
         if (status == FIRN_OK) status = firn_recorder_begin(made, kObserver, &s.error);
         firn_recorder_destroy(made);
         return status;
       }},
      {"recorder_frames",
       [](Scene& s) { return firn_recorder_frames(s.recorder, 0, &s.out, nullptr, &s.error); }},
      {"recorder_journal", [](Scene& s) { return firn_recorder_journal(s.recorder, &s.out, &s.error); }},
      {"recorder_load", load_another},
      {"recorder_undoable",
       [](Scene& s) { return firn_recorder_undoable(s.recorder, 7, nullptr, nullptr, &s.error); }},
      {"recorder_conflict_count", count_conflicts},
      {"recorder_pit", [](Scene& s) { return firn_recorder_pit(s.recorder, &s.out, &s.error); }},
  };
  return all;
}

// What each call gives when there is enough.
struct Wanted {
  firn_status status;
  std::string outputs;
};

Wanted try_with_enough(const Case& one, const std::string& demo) {
  Scene scene(demo_of(demo));
  const firn_status status = one.act(scene);
  return {status, scene.outputs()};
}

constexpr long kMostTries = 100000;

class Memory : public testing::TestWithParam<const char*> {};
INSTANTIATE_TEST_SUITE_P(Demos, Memory, testing::Values("larch-bowl-entry", "tarn-shoulder"));

TEST_P(Memory, OfTheRuntimeRunsOutAnywhere) {
  long tries = 0;
  for (const Case& one : cases()) {
    const Wanted wanted = try_with_enough(one, GetParam());
    EXPECT_EQ(wanted.status, FIRN_OK) << one.name;
    // A context that is used for the first time allocates most, so each try has its own.
    for (long nth = 1;; ++nth) {
      ASSERT_LT(nth, kMostTries) << one.name;
      ++tries;
      const long before = live;
      bool was_refused = false;
      {
        Scene scene(demo_of(GetParam()));
        arm(nth);
        const firn_status status = one.act(scene);
        disarm();
        was_refused = refused;
        if (!was_refused) {
          EXPECT_EQ(status, FIRN_OK) << one.name;
        } else if (status != FIRN_OK) {
          EXPECT_EQ(status, FIRN_OUT_OF_MEMORY) << one.name << " " << nth;
          EXPECT_EQ(scene.error.status, static_cast<unsigned>(FIRN_OUT_OF_MEMORY)) << one.name;
          EXPECT_EQ(scene.out.data, nullptr) << one.name;
          EXPECT_EQ(scene.more.data, nullptr) << one.name;
          // The context and its handles go on as if nothing had been: the same call gives the same.
          EXPECT_EQ(one.act(scene), FIRN_OK) << one.name << " after " << nth;
        }
        EXPECT_TRUE(scene.outputs() == wanted.outputs) << one.name << " " << nth;
      }
      EXPECT_EQ(live, before) << one.name << " leaks at " << nth;
      if (HasFailure()) return;
      if (!was_refused) break;
    }
  }
  EXPECT_GT(tries, 200) << "the library asks for memory far more often than this";
}

TEST_P(Memory, OfTheHostRunsOutAnywhere) {
  for (const Case& one : cases()) {
    const Wanted wanted = try_with_enough(one, GetParam());
    for (long nth = 1;; ++nth) {
      ASSERT_LT(nth, 100) << one.name;
      Scene scene(demo_of(GetParam()));
      scene.context.heap.requests = 0;
      scene.context.heap.refuse_at = nth;
      const firn_status status = one.act(scene);
      const bool was_refused = scene.context.heap.requests >= nth;
      scene.context.heap.refuse_at = 0;
      if (was_refused) {
        EXPECT_EQ(status, FIRN_OUT_OF_MEMORY) << one.name << " " << nth;
        EXPECT_EQ(scene.out.data, nullptr) << one.name;
        EXPECT_EQ(scene.more.data, nullptr) << one.name;
        EXPECT_EQ(one.act(scene), FIRN_OK) << one.name << " after " << nth;
      } else {
        EXPECT_EQ(status, FIRN_OK) << one.name;
      }
      EXPECT_TRUE(scene.outputs() == wanted.outputs) << one.name;
      if (HasFailure()) return;
      if (!was_refused) break;
    }
  }
}

TEST(Memory, MakingAContext) {
  for (long nth = 1;; ++nth) {
    ASSERT_LT(nth, 100);
    capi::Heap heap;
    const long before = live;
    firn_context_options options = FIRN_INIT(firn_context_options);
    options.allocator = heap.hooks();
    options.log = keep_quiet;
    firn_context* context = nullptr;
    arm(nth);
    const firn_status status = firn_context_create(&options, &context, nullptr);
    disarm();
    const bool was_refused = refused;
    EXPECT_EQ(status, was_refused ? FIRN_OUT_OF_MEMORY : FIRN_OK);
    EXPECT_EQ(context != nullptr, status == FIRN_OK);
    firn_context_destroy(context);
    EXPECT_EQ(heap.live, 0);
    EXPECT_EQ(live, before);
    if (!was_refused) break;
  }
  capi::Heap heap;
  heap.refuse_at = 1;
  firn_context_options options = FIRN_INIT(firn_context_options);
  options.allocator = heap.hooks();
  firn_context* context = nullptr;
  EXPECT_EQ(firn_context_create(&options, &context, nullptr), FIRN_OUT_OF_MEMORY);
  EXPECT_EQ(context, nullptr);
  EXPECT_EQ(heap.live, 0);
}

// The log never allocates on the way out, also when there is nothing left to tell with.
TEST(Memory, ALogWithoutMemory) {
  std::string kept;
  kept.reserve(4096);
  capi::Heap heap;
  firn_context_options options = FIRN_INIT(firn_context_options);
  options.allocator = heap.hooks();
  options.log_user = &kept;
  options.log = [](void* user, firn_log_level, const char* component, const char* message) {
    static_cast<std::string*>(user)->append(component).append(": ").append(message).append("\n");
  };
  firn_context* context = nullptr;
  ASSERT_EQ(firn_context_create(&options, &context, nullptr), FIRN_OK);
  firn_error error = FIRN_INIT(firn_error);
  arm(1);
  const firn_status status = firn_pit_verify(context, nullptr, 0, &error);
  disarm();
  EXPECT_EQ(status, FIRN_OUT_OF_MEMORY);
  EXPECT_EQ(kept, "firn_pit_verify: out of memory\n");
  firn_context_destroy(context);
}

}  // namespace
