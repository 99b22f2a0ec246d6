// The demo pits from their notes through the C API, byte for byte as committed: pit, report, note, picture.
//
// FIRN_REGENERATE=1 writes the files anew; look at the difference before committing it. Bytes of schemas
// are compared as bytes for the FlatBuffers release they were made with, and in meaning for any other.

#include <firnbook/firnbook.h>
#include <flatbuffers/minireflect.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <iterator>
#include <memory>
#include <string>

#include "schemas/pit_generated.h"
#include "schemas/report_generated.h"

namespace {

constexpr bool kPinnedFlatBuffers =
    FLATBUFFERS_VERSION_MAJOR == 2 && FLATBUFFERS_VERSION_MINOR == 0 && FLATBUFFERS_VERSION_REVISION == 8;

const std::string kHowToMake = "run golden_test with FIRN_REGENERATE=1 (target golden_regenerate)";

bool regenerating() {
  return std::getenv("FIRN_REGENERATE") != nullptr;
}

struct File {
  bool found = false;
  std::string bytes;
};

File read(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  if (!file) return {};
  return {true, {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()}};
}

std::string line_with(const std::string& text, std::size_t at) {
  const auto newline = at == 0 ? std::string::npos : text.rfind('\n', at - 1);
  const auto begin = newline == std::string::npos ? 0 : newline + 1;
  return text.substr(begin, std::min(text.find('\n', at), begin + 200) - begin);
}

// A failing comparison of whole files is unreadable: say where they part.
void expect_same(const std::string& got, const std::string& golden, bool is_text, const std::string& name) {
  if (got == golden) return;
  const auto parted = std::mismatch(
      got.begin(), got.begin() + static_cast<std::ptrdiff_t>(std::min(got.size(), golden.size())),
      golden.begin());
  const auto at = static_cast<std::size_t>(parted.first - got.begin());
  ADD_FAILURE() << name << " differs from byte " << at << " on (" << got.size() << " bytes, golden "
                << golden.size() << ")"
                << (is_text ? "\n got:    " + line_with(got, at) + "\n golden: " + line_with(golden, at)
                            : "");
}

std::string meaning(const std::string& bytes, const flatbuffers::TypeTable* type) {
  return flatbuffers::FlatBufferToString(reinterpret_cast<const std::uint8_t*>(bytes.data()), type, true);
}

class Golden : public testing::TestWithParam<const char*> {
 protected:
  void SetUp() override { ASSERT_EQ(firn_context_create(nullptr, &context_, nullptr), FIRN_OK); }
  void TearDown() override { firn_context_destroy(context_); }

  // Takes the buffer over as a string.
  std::string take(firn_status status, firn_buffer& buffer) {
    EXPECT_EQ(status, FIRN_OK) << error_.what << " (line " << error_.line << "). " << error_.remedy;
    std::string out;
    if (buffer.data != nullptr) out.assign(reinterpret_cast<const char*>(buffer.data), buffer.size);
    firn_buffer_free(context_, &buffer);
    return out;
  }

  std::string pit_of(const std::string& notes) {
    firn_buffer out = {};
    const auto status =
        firn_notes_read(context_, notes.data(), notes.size(), nullptr, &out, nullptr, &error_);
    return take(status, out);
  }
  std::string report_of(const std::string& pit) {
    firn_buffer out = {};
    const auto status = firn_interpret(context_, bytes(pit), pit.size(), nullptr, &out, &error_);
    return take(status, out);
  }
  std::string note_of(const std::string& pit, const std::string& report) {
    firn_buffer out = {};
    const auto status =
        firn_note_write(context_, bytes(pit), pit.size(), bytes(report), report.size(), &out, &error_);
    return take(status, out);
  }
  std::string note_of(const std::string& pit, const std::string& report, const firn_note_options& options) {
    firn_buffer out = {};
    const auto status = firn_note_write_as(context_, bytes(pit), pit.size(), bytes(report), report.size(),
                                           &options, &out, &error_);
    return take(status, out);
  }
  std::string picture_of(const std::string& pit, const std::string& report) {
    firn_buffer out = {};
    const auto status = firn_draw_profile(context_, bytes(pit), pit.size(), bytes(report), report.size(),
                                          nullptr, &out, &error_);
    return take(status, out);
  }

  static const std::uint8_t* bytes(const std::string& text) {
    return reinterpret_cast<const std::uint8_t*>(text.data());
  }

  // The committed bytes, or nothing with a failure that says what to do.
  File golden(const std::string& ending, const std::string& got, const char* folder) {
    const std::string path = std::string(FIRN_GOLDEN_DIR) + folder + GetParam() + ending;
    if (regenerating()) {
      std::ofstream file(path, std::ios::binary);
      file.write(got.data(), static_cast<std::streamsize>(got.size()));
    }
    File file = read(path);
    EXPECT_TRUE(file.found) << "golden file missing: " << path << "; " << kHowToMake;
    return file;
  }

  void compare_text(const std::string& ending, const std::string& got, const char* folder = "/") {
    const File file = golden(ending, got, folder);
    if (file.found) expect_same(got, file.bytes, true, GetParam() + ending);
  }
  void compare_bytes(const std::string& ending, const std::string& got, const flatbuffers::TypeTable* type) {
    const File file = golden(ending, got, "/");
    if (!file.found) return;
    expect_same(meaning(got, type), meaning(file.bytes, type), true, GetParam() + ending + " in meaning");
    if (kPinnedFlatBuffers) expect_same(got, file.bytes, false, GetParam() + ending);
  }

 private:
  firn_context* context_ = nullptr;
  firn_error error_ = FIRN_INIT(firn_error);
};

TEST_P(Golden, PitReportNoteAndPictureAreAsCommitted) {
  const File notes = read(std::string(FIRN_TEST_DATA) + "/" + GetParam() + ".txt");
  ASSERT_TRUE(notes.found);
  const std::string pit = pit_of(notes.bytes);
  const std::string report = report_of(pit);
  ASSERT_FALSE(pit.empty() || report.empty());
  compare_bytes(".firn", pit, firnbook::PitTypeTable());
  compare_bytes(".report.firn", report, firnbook::ReportTypeTable());
  compare_text(".note.txt", note_of(pit, report));
  compare_text(".svg", picture_of(pit, report));
}

// The whole English note stands beside the pit.
TEST_P(Golden, NotesOfEveryLanguageAndLengthAreAsCommitted) {
  const File notes = read(std::string(FIRN_TEST_DATA) + "/" + GetParam() + ".txt");
  ASSERT_TRUE(notes.found);
  const std::string pit = pit_of(notes.bytes);
  const std::string report = report_of(pit);
  const char* const lengths[] = {"everything", "line", "briefing", "short"};
  for (const auto language : {FIRN_LANGUAGE_ENGLISH, FIRN_LANGUAGE_GERMAN, FIRN_LANGUAGE_FRENCH}) {
    const char* code = nullptr;
    ASSERT_EQ(firn_language_code(language, &code, nullptr), FIRN_OK);
    for (std::uint8_t length = FIRN_NOTE_EVERYTHING; length <= FIRN_NOTE_SHORT; ++length) {
      if (language == FIRN_LANGUAGE_ENGLISH && length == FIRN_NOTE_EVERYTHING) continue;
      firn_note_options options = FIRN_INIT(firn_note_options);
      options.language = language;
      options.length = length;
      compare_text(std::string(".") + code + "." + lengths[length] + ".txt", note_of(pit, report, options),
                   "/notes/");
    }
  }
}

// A second run in the same process must not see anything of the first: no state is kept between calls.
TEST_P(Golden, TheSameBytesComeOutEveryTime) {
  const File notes = read(std::string(FIRN_TEST_DATA) + "/" + GetParam() + ".txt");
  ASSERT_TRUE(notes.found);
  const std::string pit = pit_of(notes.bytes);
  const std::string report = report_of(pit);
  const std::string picture = picture_of(pit, report);
  EXPECT_EQ(pit_of(notes.bytes), pit);
  EXPECT_EQ(report_of(pit), report);
  EXPECT_EQ(picture_of(pit, report), picture);
}

INSTANTIATE_TEST_SUITE_P(Demo, Golden, testing::Values("larch-bowl-entry", "tarn-shoulder"),
                         [](const auto& test) {
                           std::string name = test.param;
                           std::replace(name.begin(), name.end(), '-', '_');
                           return name;
                         });

}  // namespace
