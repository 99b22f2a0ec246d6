// Bytes that are cut, flipped, unaligned, too many or of another kind: a status, never a crash.
#include <cstring>

#include "support.h"

namespace {

using capi::Buffer;
using capi::bytes_of;
using capi::Context;

// Every function that takes the bytes of a pit, with these.
void feed_pit(firn_context* context, const std::uint8_t* pit, std::size_t size, const std::string& report) {
  Buffer out(context), more(context);
  int newer = 0;
  firn_pit_verify(context, pit, size, nullptr);
  firn_pit_is_newer(context, pit, size, &newer, nullptr);
  firn_notes_write(context, pit, size, out.out(), more.out(), nullptr);
  for (std::uint32_t to = FIRN_FORMAT_FIRN; to <= FIRN_FORMAT_BULLETIN_JSON; ++to) {
    firn_convert_options options = FIRN_INIT(firn_convert_options);
    options.from = FIRN_FORMAT_FIRN;
    options.to = to;
    options.leave_out = 1;
    firn_convert(context, pit, size, &options, out.out(), more.out(), nullptr);
  }
  firn_check(context, pit, size, out.out(), nullptr);
  firn_draw_profile(context, pit, size, nullptr, 0, nullptr, out.out(), nullptr);
  firn_note_write(context, pit, size, bytes_of(report), report.size(), out.out(), nullptr);
  if (firn_interpret(context, pit, size, nullptr, out.out(), nullptr) == FIRN_OK) {
    // The report of such a pit is good enough for everything that follows.
    const std::string own = out.text();
    EXPECT_EQ(firn_note_write(context, pit, size, bytes_of(own), own.size(), out.out(), nullptr), FIRN_OK);
    EXPECT_EQ(firn_draw_profile(context, pit, size, bytes_of(own), own.size(), nullptr, out.out(), nullptr),
              FIRN_OK);
    for (std::uint8_t length = FIRN_NOTE_ONE_LINE; length <= FIRN_NOTE_SHORT; ++length) {
      firn_note_options options = FIRN_INIT(firn_note_options);
      options.language = static_cast<std::uint8_t>(length % 3);
      options.length = length;
      EXPECT_EQ(
          firn_note_write_as(context, pit, size, bytes_of(own), own.size(), &options, out.out(), nullptr),
          FIRN_OK);
    }
  }
}

void feed_report(firn_context* context, const std::string& pit, const std::uint8_t* report,
                 std::size_t size) {
  Buffer out(context), more(context);
  firn_note_write(context, bytes_of(pit), pit.size(), report, size, out.out(), nullptr);
  for (std::uint8_t length = FIRN_NOTE_EVERYTHING; length <= FIRN_NOTE_SHORT; ++length) {
    firn_note_options options = FIRN_INIT(firn_note_options);
    options.language = FIRN_LANGUAGE_FRENCH;
    options.length = length;
    firn_note_write_as(context, bytes_of(pit), pit.size(), report, size, &options, out.out(), nullptr);
  }
  firn_draw_profile(context, bytes_of(pit), pit.size(), report, size, nullptr, out.out(), nullptr);
  firn_report* opened = nullptr;
  if (firn_report_open(context, report, size, &opened, nullptr) != FIRN_OK) {
    EXPECT_EQ(opened, nullptr);
    return;
  }
  firn_report_summary summary = FIRN_INIT(firn_report_summary);
  EXPECT_EQ(firn_report_summarise(opened, &summary, nullptr), FIRN_OK);
  for (std::uint32_t i = 0; i < summary.check_count; ++i) {
    EXPECT_EQ(firn_report_check_text(opened, i, out.out(), more.out(), nullptr), FIRN_OK);
  }
  for (std::uint32_t i = 0; i < summary.finding_count; ++i) {
    firn_report_finding_text(opened, i, bytes_of(pit), pit.size(), out.out(), nullptr);
  }
  for (std::uint32_t i = 0; i < summary.not_loaded_count; ++i) {
    EXPECT_EQ(firn_report_not_loaded_text(opened, i, out.out(), nullptr), FIRN_OK);
  }
  for (std::uint32_t i = 0; i < summary.suggestion_count; ++i) {
    EXPECT_EQ(firn_report_suggestion_text(opened, i, out.out(), nullptr), FIRN_OK);
  }
  for (std::uint32_t i = 0; i < summary.caution_count; ++i) {
    EXPECT_EQ(firn_report_caution_text(opened, i, out.out(), nullptr), FIRN_OK);
  }
  for (std::uint32_t i = 0; i < summary.concern_count; ++i) {
    firn_concern concern = FIRN_INIT(firn_concern);
    EXPECT_EQ(firn_report_concern(opened, i, &concern, nullptr), FIRN_OK);
  }
  firn_report_close(opened);
}

class Hostile : public testing::Test {
 protected:
  Hostile()
      : pit(capi::pit_of(context, capi::demo_notes("tarn-shoulder"))),
        report(capi::report_of(context, pit)) {}

  Context context;
  std::string pit, report;
};

TEST_F(Hostile, TruncatedAtEveryLength) {
  for (std::size_t size = 0; size < pit.size(); size += size < 64 ? 1 : 7) {
    // A copy of exactly this size, so that reading beyond it is noticed.
    std::vector<std::uint8_t> cut(bytes_of(pit), bytes_of(pit) + size);
    cut.shrink_to_fit();
    const firn_status status = firn_pit_verify(context, cut.data(), size, nullptr);
    EXPECT_TRUE(status == FIRN_TOO_SMALL || status == FIRN_DAMAGED ||
                (size == 0 && status == FIRN_NULL_ARGUMENT))
        << size << " " << status;
  }
  for (std::size_t size = 0; size < report.size(); size += size < 64 ? 1 : 7) {
    std::vector<std::uint8_t> cut(bytes_of(report), bytes_of(report) + size);
    firn_report* opened = nullptr;
    EXPECT_NE(firn_report_open(context, cut.data(), size, &opened, nullptr), FIRN_OK) << size;
    EXPECT_EQ(opened, nullptr);
  }
}

TEST_F(Hostile, FlippedBits) {
  for (std::size_t bit = 0; bit < pit.size() * 8; bit += 29) {
    std::string damaged = pit;
    damaged[bit / 8] = static_cast<char>(damaged[bit / 8] ^ (1 << bit % 8));
    feed_pit(context, bytes_of(damaged), damaged.size(), report);
  }
}

TEST_F(Hostile, FlippedBitsOfAReport) {
  for (std::size_t bit = 0; bit < report.size() * 8; bit += 23) {
    std::string damaged = report;
    damaged[bit / 8] = static_cast<char>(damaged[bit / 8] ^ (1 << bit % 8));
    feed_report(context, pit, bytes_of(damaged), damaged.size());
  }
}

TEST_F(Hostile, AnyAddressGivesTheSame) {
  Buffer straight(context), moved(context);
  ASSERT_EQ(firn_draw_profile(context, bytes_of(pit), pit.size(), bytes_of(report), report.size(), nullptr,
                              straight.out(), nullptr),
            FIRN_OK);
  for (std::size_t shift = 1; shift < 8; ++shift) {
    const std::string shifted_pit = std::string(shift, 'x') + pit;
    const std::string shifted_report = std::string(8 - shift, 'x') + report;
    ASSERT_EQ(
        firn_draw_profile(context, bytes_of(shifted_pit) + shift, pit.size(),
                          bytes_of(shifted_report) + 8 - shift, report.size(), nullptr, moved.out(), nullptr),
        FIRN_OK);
    EXPECT_TRUE(moved.text() == straight.text()) << shift;
  }
}

TEST_F(Hostile, OtherKindsOfBytes) {
  firn_error error = FIRN_INIT(firn_error);
  EXPECT_EQ(firn_pit_verify(context, bytes_of(report), report.size(), &error), FIRN_WRONG_KIND);
  firn_report* opened = nullptr;
  EXPECT_EQ(firn_report_open(context, bytes_of(pit), pit.size(), &opened, &error), FIRN_WRONG_KIND);
  firn_recorder* recorder = nullptr;
  ASSERT_EQ(firn_recorder_create(context, &recorder, nullptr), FIRN_OK);
  EXPECT_EQ(firn_recorder_apply(recorder, bytes_of(pit), pit.size(), &error), FIRN_WRONG_KIND);
  firn_recorder_destroy(recorder);
  const std::string noise(4096, '\xA5');
  EXPECT_EQ(firn_pit_verify(context, bytes_of(noise), noise.size(), &error), FIRN_WRONG_KIND);
  Buffer out(context);
  EXPECT_EQ(
      firn_note_write(context, bytes_of(report), report.size(), bytes_of(pit), pit.size(), out.out(), &error),
      FIRN_WRONG_KIND);
}

TEST_F(Hostile, MoreThanTheLimits) {
  firn_context_options options = FIRN_INIT(firn_context_options);
  options.max_pit_bytes = pit.size() - 1;
  options.max_report_bytes = report.size() - 1;
  options.max_notes_bytes = 10;
  options.max_edit_bytes = 64;
  Context small(options);
  EXPECT_EQ(firn_pit_verify(small, bytes_of(pit), pit.size(), nullptr), FIRN_TOO_LARGE);
  firn_report* opened = nullptr;
  EXPECT_EQ(firn_report_open(small, bytes_of(report), report.size(), &opened, nullptr), FIRN_TOO_LARGE);
  Buffer out(small);
  EXPECT_EQ(firn_notes_read(small, "HS 46 #567890", 13, nullptr, out.out(), nullptr, nullptr),
            FIRN_TOO_LARGE);
  firn_recorder* recorder = nullptr;
  ASSERT_EQ(firn_recorder_create(small, &recorder, nullptr), FIRN_OK);
  EXPECT_EQ(firn_recorder_apply(recorder, bytes_of(pit), pit.size(), nullptr), FIRN_TOO_LARGE);
  firn_recorder_destroy(recorder);
  // A size that no memory could hold is refused without a look at the bytes.
  EXPECT_EQ(firn_pit_verify(context, bytes_of(pit), SIZE_MAX, nullptr), FIRN_TOO_LARGE);
  EXPECT_EQ(firn_notes_read(context, pit.data(), SIZE_MAX, nullptr, out.out(), nullptr, nullptr),
            FIRN_TOO_LARGE);
}

TEST_F(Hostile, TheReportOfAnotherPit) {
  const std::string other = capi::pit_of(context, capi::demo_notes("larch-bowl-entry"));
  Buffer out(context);
  EXPECT_EQ(firn_note_write(context, bytes_of(other), other.size(), bytes_of(report), report.size(),
                            out.out(), nullptr),
            FIRN_OTHER_PIT);
  EXPECT_EQ(firn_draw_profile(context, bytes_of(other), other.size(), bytes_of(report), report.size(),
                              nullptr, out.out(), nullptr),
            FIRN_OTHER_PIT);
  EXPECT_EQ(out.data(), nullptr);
}

TEST_F(Hostile, AReportOfChecksMakesNoNote) {
  Buffer checks(context), out(context);
  ASSERT_EQ(firn_check(context, bytes_of(pit), pit.size(), checks.out(), nullptr), FIRN_OK);
  EXPECT_EQ(
      firn_note_write(context, bytes_of(pit), pit.size(), checks.data(), checks.size(), out.out(), nullptr),
      FIRN_BAD_ARGUMENT);
}

TEST_F(Hostile, NotesWithATypoAndWorse) {
  firn_error error = FIRN_INIT(firn_error);
  Buffer out(context), remarks(context);
  std::string notes = capi::demo_notes("larch-bowl-entry");
  notes.replace(notes.find("CT11"), 4, "CT1!");
  EXPECT_EQ(firn_notes_read(context, notes.data(), notes.size(), nullptr, out.out(), remarks.out(), &error),
            FIRN_NOTES_NOT_UNDERSTOOD);
  EXPECT_EQ(error.line, 9u);
  EXPECT_GT(error.column, 0u);
  EXPECT_NE(error.what[0], '\0');
  EXPECT_EQ(out.data(), nullptr);
  EXPECT_EQ(remarks.data(), nullptr);
  // The same notes with the line kept: nothing is dropped in silence.
  firn_notes_options options = FIRN_INIT(firn_notes_options);
  options.keep_unread = 1;
  ASSERT_EQ(firn_notes_read(context, notes.data(), notes.size(), &options, out.out(), remarks.out(), &error),
            FIRN_OK);
  EXPECT_NE(remarks.text().find("line 9"), std::string::npos) << remarks.text();
  const std::string bad_bytes = "pit \xFF\xFE\n";
  EXPECT_EQ(firn_notes_read(context, bad_bytes.data(), bad_bytes.size(), nullptr, out.out(), nullptr, &error),
            FIRN_BAD_UTF8);
  std::string noise;
  for (unsigned i = 0; i < 20000; ++i) noise += static_cast<char>(i * 2654435761u >> 24);
  EXPECT_NE(firn_notes_read(context, noise.data(), noise.size(), nullptr, out.out(), nullptr, &error),
            FIRN_OK);
}

}  // namespace
