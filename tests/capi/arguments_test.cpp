// How the library answers callers who hold it wrong.
#include <cstddef>
#include <cstring>
#include <type_traits>

#include "support.h"

namespace {

using capi::Buffer;
using capi::bytes_of;
using capi::Context;

// Padding would be bytes that nobody set, and room in which a later field would be taken for an old one.
#define EXPECT_NO_PADDING(type) static_assert(std::has_unique_object_representations_v<type>, #type)
EXPECT_NO_PADDING(firn_allocator);
EXPECT_NO_PADDING(firn_context_options);
EXPECT_NO_PADDING(firn_error);
EXPECT_NO_PADDING(firn_buffer);
EXPECT_NO_PADDING(firn_notes_options);
EXPECT_NO_PADDING(firn_draw_options);
EXPECT_NO_PADDING(firn_note_options);
EXPECT_NO_PADDING(firn_interpret_options);
EXPECT_NO_PADDING(firn_parameter);
EXPECT_NO_PADDING(firn_parameter_entry);
EXPECT_NO_PADDING(firn_depth);
EXPECT_NO_PADDING(firn_moment);
EXPECT_NO_PADDING(firn_time_span);
EXPECT_NO_PADDING(firn_place);
EXPECT_NO_PADDING(firn_target);
EXPECT_NO_PADDING(firn_report_summary);
EXPECT_NO_PADDING(firn_check_entry);
EXPECT_NO_PADDING(firn_finding);
EXPECT_NO_PADDING(firn_concern);
EXPECT_NO_PADDING(firn_loaded_by);
EXPECT_NO_PADDING(firn_not_loaded);
EXPECT_NO_PADDING(firn_suggestion);
EXPECT_NO_PADDING(firn_caution);
EXPECT_NO_PADDING(firn_method_used);
EXPECT_NO_PADDING(firn_author);
EXPECT_NO_PADDING(firn_pit_head);
EXPECT_NO_PADDING(firn_observer);
EXPECT_NO_PADDING(firn_site);
EXPECT_NO_PADDING(firn_choice);
EXPECT_NO_PADDING(firn_weather);
EXPECT_NO_PADDING(firn_surface);
EXPECT_NO_PADDING(firn_snowpack);
EXPECT_NO_PADDING(firn_layer);
EXPECT_NO_PADDING(firn_temperature);
EXPECT_NO_PADDING(firn_density);
EXPECT_NO_PADDING(firn_density_profile);
EXPECT_NO_PADDING(firn_fracture);
EXPECT_NO_PADDING(firn_test);
EXPECT_NO_PADDING(firn_sign);
EXPECT_NO_PADDING(firn_slide);
EXPECT_NO_PADDING(firn_step);
EXPECT_NO_PADDING(firn_compare_options);
EXPECT_NO_PADDING(firn_convert_options);
EXPECT_NO_PADDING(firn_procedure_entry);
EXPECT_NO_PADDING(firn_probe_result);
EXPECT_NO_PADDING(firn_assessment);
EXPECT_NO_PADDING(firn_bulletin_seen);
EXPECT_NO_PADDING(firn_bulletin_scope);
EXPECT_NO_PADDING(firn_bulletin_rating);
EXPECT_NO_PADDING(firn_bulletin_problem);
EXPECT_NO_PADDING(firn_bulletin_typed);
EXPECT_NO_PADDING(firn_bulletin_comparison);
EXPECT_NO_PADDING(firn_rating_match);
EXPECT_NO_PADDING(firn_problem_match);
EXPECT_NO_PADDING(firn_unlisted);
EXPECT_NO_PADDING(firn_bulletin_evidence);
EXPECT_NO_PADDING(firn_remark);
EXPECT_NO_PADDING(firn_loaded);
EXPECT_NO_PADDING(firn_journal_gap);
EXPECT_NO_PADDING(firn_conflict);
EXPECT_NO_PADDING(firn_test_event);
EXPECT_NO_PADDING(firn_guidance);

TEST(Arguments, EveryStatusHasATextOfItsOwn) {
  const firn_status all[] = {FIRN_OK,
                             FIRN_NULL_ARGUMENT,
                             FIRN_BAD_STRUCT_SIZE,
                             FIRN_BAD_ARGUMENT,
                             FIRN_WRONG_STATE,
                             FIRN_TOO_SMALL,
                             FIRN_TOO_LARGE,
                             FIRN_WRONG_KIND,
                             FIRN_DAMAGED,
                             FIRN_NEWER_SCHEMA,
                             FIRN_OTHER_PIT,
                             FIRN_NOTES_NOT_UNDERSTOOD,
                             FIRN_NOTES_CONTRADICT,
                             FIRN_BAD_UTF8,
                             FIRN_NO_BULLETIN,
                             FIRN_NOT_UNDERSTOOD,
                             FIRN_NOT_HELD,
                             FIRN_BAD_EDIT,
                             FIRN_NO_SUCH_TARGET,
                             FIRN_DUPLICATE_EDIT,
                             FIRN_BAD_TICKET,
                             FIRN_OUT_OF_MEMORY,
                             FIRN_INTERNAL};
  const std::string unknown = firn_status_text(static_cast<firn_status>(99));
  std::vector<std::string> seen = {unknown};
  for (const firn_status status : all) {
    const std::string text = firn_status_text(status);
    EXPECT_FALSE(text.empty());
    for (const std::string& other : seen) EXPECT_NE(text, other) << status;
    seen.push_back(text);
  }
  // Each number in status.h is among them.
  const std::string header =
      capi::read_file(std::string(FIRN_SOURCE_DIR) + "/core/include/firnbook/status.h");
  std::size_t values = 0;
  for (std::size_t at = header.find("  FIRN_"); at != std::string::npos;
       at = header.find("  FIRN_", at + 1)) {
    ++values;
  }
  EXPECT_EQ(values, std::size(all));
}

TEST(Arguments, ErrorStructOfTheWrongSizeIsNotTouched) {
  Context context;
  firn_error error;
  std::memset(&error, 0x5A, sizeof error);
  const firn_error before = error;
  error.struct_size = sizeof error - 1;
  EXPECT_EQ(firn_pit_verify(context, nullptr, 0, &error), FIRN_BAD_STRUCT_SIZE);
  EXPECT_EQ(std::memcmp(error.what, before.what, sizeof error.what), 0);
  EXPECT_EQ(firn_pit_verify(nullptr, nullptr, 0, &error), FIRN_BAD_STRUCT_SIZE);
  EXPECT_EQ(firn_context_create(nullptr, nullptr, &error), FIRN_BAD_STRUCT_SIZE);
}

TEST(Arguments, ErrorIsFilledAndClearedAgain) {
  Context context;
  firn_error error = FIRN_INIT(firn_error);
  EXPECT_EQ(firn_pit_verify(context, nullptr, 0, &error), FIRN_NULL_ARGUMENT);
  EXPECT_EQ(error.status, static_cast<unsigned>(FIRN_NULL_ARGUMENT));
  EXPECT_NE(error.what[0], '\0');
  EXPECT_NE(error.remedy[0], '\0');
  const std::string pit = capi::pit_of(context, capi::demo_notes("larch-bowl-entry"));
  EXPECT_EQ(firn_pit_verify(context, bytes_of(pit), pit.size(), &error), FIRN_OK);
  EXPECT_EQ(error.status, 0u);
  EXPECT_EQ(error.what[0], '\0');
  EXPECT_EQ(error.remedy[0], '\0');
}

TEST(Arguments, ErrorTextsAreCutBetweenCharacters) {
  Context context;
  std::string notes = "pit Larch Bowl entry\nweather \"";
  for (int i = 0; i < 300; ++i) notes += "\xE2\x9D\x84";
  notes += "\x07\n";
  firn_error error = FIRN_INIT(firn_error);
  Buffer pit(context);
  EXPECT_NE(firn_notes_read(context, notes.data(), notes.size(), nullptr, pit.out(), nullptr, &error),
            FIRN_OK);
  for (const char* text : {error.what, error.remedy, error.path}) {
    for (const char* c = text; *c != '\0'; ++c) EXPECT_GE(static_cast<unsigned char>(*c), 0x20);
  }
  // The last character is whole: text that ends in a lead byte or half a sequence would not be read.
  const std::string what = error.what;
  EXPECT_LT(what.size(), sizeof error.what);
}

TEST(Arguments, ContextOptions) {
  firn_context* context = nullptr;
  firn_context_options options = FIRN_INIT(firn_context_options);
  options.struct_size = sizeof options - 1;
  EXPECT_EQ(firn_context_create(&options, &context, nullptr), FIRN_BAD_STRUCT_SIZE);
  EXPECT_EQ(context, nullptr);
  options = FIRN_INIT(firn_context_options);
  options.allocator.alloc = capi::Heap::alloc;
  EXPECT_EQ(firn_context_create(&options, &context, nullptr), FIRN_BAD_ARGUMENT);
  options = FIRN_INIT(firn_context_options);
  options.log_level = 5;
  EXPECT_EQ(firn_context_create(&options, &context, nullptr), FIRN_BAD_ARGUMENT);
  // A caller built against newer headers has a larger struct; what is beyond this version is not looked at.
  struct Newer {
    firn_context_options known;
    std::uint64_t later;
  } newer = {FIRN_INIT(firn_context_options), ~0ull};
  newer.known.struct_size = sizeof newer;
  EXPECT_EQ(firn_context_create(&newer.known, &context, nullptr), FIRN_OK);
  firn_context_destroy(context);
}

TEST(Arguments, OptionsOutOfRange) {
  Context context;
  const std::string pit = capi::pit_of(context, capi::demo_notes("larch-bowl-entry"));
  Buffer out(context);
  firn_notes_options notes = FIRN_INIT(firn_notes_options);
  notes.keep_unread = 2;
  EXPECT_EQ(firn_notes_read(context, "HS 4\n", 5, &notes, out.out(), nullptr, nullptr), FIRN_BAD_ARGUMENT);
  notes = {sizeof notes - 1, 0};
  EXPECT_EQ(firn_notes_read(context, "HS 4\n", 5, &notes, out.out(), nullptr, nullptr), FIRN_BAD_STRUCT_SIZE);
  for (const int width : {-1, 1, 319, 2001, INT32_MAX, INT32_MIN}) {
    firn_draw_options draw = FIRN_INIT(firn_draw_options);
    draw.width_px = width;
    EXPECT_EQ(firn_draw_profile(context, bytes_of(pit), pit.size(), nullptr, 0, &draw, out.out(), nullptr),
              FIRN_BAD_ARGUMENT)
        << width;
    EXPECT_EQ(out.data(), nullptr);
  }
  for (const int width : {320, 2000}) {
    firn_draw_options draw = FIRN_INIT(firn_draw_options);
    draw.width_px = width;
    EXPECT_EQ(firn_draw_profile(context, bytes_of(pit), pit.size(), nullptr, 0, &draw, out.out(), nullptr),
              FIRN_OK);
  }
  EXPECT_EQ(firn_draw_profile(context, bytes_of(pit), pit.size(), nullptr, 9, nullptr, out.out(), nullptr),
            FIRN_BAD_ARGUMENT);
  for (const int tolerance : {-1, 1, 499, 10001, INT32_MIN}) {
    firn_interpret_options interpret = FIRN_INIT(firn_interpret_options);
    interpret.tolerance_10um = tolerance;
    EXPECT_EQ(firn_interpret(context, bytes_of(pit), pit.size(), &interpret, out.out(), nullptr),
              FIRN_BAD_ARGUMENT)
        << tolerance;
  }
  firn_draw_options draw = {0, 0};
  EXPECT_EQ(firn_draw_profile(context, bytes_of(pit), pit.size(), nullptr, 0, &draw, out.out(), nullptr),
            FIRN_BAD_STRUCT_SIZE);
  firn_interpret_options interpret = FIRN_INIT(firn_interpret_options);
  interpret.struct_size = 4;
  EXPECT_EQ(firn_interpret(context, bytes_of(pit), pit.size(), &interpret, out.out(), nullptr),
            FIRN_BAD_STRUCT_SIZE);
}

TEST(Arguments, OutputsThatMustBeGiven) {
  Context context;
  const std::string pit = capi::pit_of(context, capi::demo_notes("larch-bowl-entry"));
  const std::string report = capi::report_of(context, pit);
  const auto* p = bytes_of(pit);
  const auto* r = bytes_of(report);
  Buffer out(context);
  EXPECT_EQ(firn_notes_read(context, "HS 4\n", 5, nullptr, nullptr, out.out(), nullptr), FIRN_NULL_ARGUMENT);
  EXPECT_EQ(firn_notes_read(context, nullptr, 5, nullptr, out.out(), nullptr, nullptr), FIRN_NULL_ARGUMENT);
  EXPECT_EQ(firn_notes_write(context, p, pit.size(), nullptr, nullptr, nullptr), FIRN_NULL_ARGUMENT);
  EXPECT_EQ(firn_check(context, p, pit.size(), nullptr, nullptr), FIRN_NULL_ARGUMENT);
  EXPECT_EQ(firn_interpret(context, p, pit.size(), nullptr, nullptr, nullptr), FIRN_NULL_ARGUMENT);
  EXPECT_EQ(firn_note_write(context, p, pit.size(), r, report.size(), nullptr, nullptr), FIRN_NULL_ARGUMENT);
  EXPECT_EQ(firn_note_write(context, p, pit.size(), nullptr, 0, out.out(), nullptr), FIRN_NULL_ARGUMENT);
  EXPECT_EQ(firn_draw_profile(context, p, pit.size(), r, report.size(), nullptr, nullptr, nullptr),
            FIRN_NULL_ARGUMENT);
  EXPECT_EQ(firn_pit_is_newer(context, p, pit.size(), nullptr, nullptr), FIRN_NULL_ARGUMENT);
  EXPECT_EQ(firn_report_open(context, r, report.size(), nullptr, nullptr), FIRN_NULL_ARGUMENT);
  EXPECT_EQ(firn_recorder_create(context, nullptr, nullptr), FIRN_NULL_ARGUMENT);
}

// A struct of the first version and nothing more must be taken for ever: these sizes never change. They are
// those of a 64-bit machine.
TEST(Arguments, FirstVersionSizesAreFrozen) {
  if (sizeof(void*) != 8) GTEST_SKIP() << "sizes of a 64-bit machine";
  EXPECT_EQ(sizeof(firn_context_options), 80u);
  EXPECT_EQ(sizeof(firn_error), 688u);
  EXPECT_EQ(sizeof(firn_notes_options), 8u);
  EXPECT_EQ(sizeof(firn_draw_options), 8u);
  EXPECT_EQ(sizeof(firn_note_options), 8u);
  EXPECT_EQ(offsetof(firn_interpret_options, parameters), 8u) << "what came later stands behind it";
  EXPECT_EQ(offsetof(firn_report_summary, parameter_count), 44u) << "likewise";
  EXPECT_EQ(sizeof(firn_check_entry), 32u);
  EXPECT_EQ(sizeof(firn_finding), 36u);
  EXPECT_EQ(sizeof(firn_concern), 32u);
  EXPECT_EQ(sizeof(firn_loaded_by), 16u);
  EXPECT_EQ(sizeof(firn_not_loaded), 20u);
  EXPECT_EQ(sizeof(firn_suggestion), 16u);
  EXPECT_EQ(sizeof(firn_caution), 28u);
  EXPECT_EQ(sizeof(firn_method_used), 8u);
  EXPECT_EQ(sizeof(firn_author), 56u);
  EXPECT_EQ(sizeof(firn_loaded), 72u);
  EXPECT_EQ(sizeof(firn_journal_gap), 40u);
  EXPECT_EQ(sizeof(firn_conflict), 72u);
  EXPECT_EQ(sizeof(firn_depth), 8u);
  EXPECT_EQ(sizeof(firn_moment), 16u);
  EXPECT_EQ(sizeof(firn_place), 12u);
  EXPECT_EQ(sizeof(firn_target), 32u);
}

}  // namespace
