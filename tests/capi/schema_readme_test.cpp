// The bytes that schemas/README.md prints are the bytes of the notes beside them.
#include <flatbuffers/base.h>

#include <fstream>
#include <iterator>

#include "support.h"

namespace {

using capi::Buffer;
using capi::Context;

// Text between "```name" and the next "```".
std::string fenced(const std::string& page, const std::string& name) {
  const std::size_t begin = page.find("```" + name + "\n");
  if (begin == std::string::npos) return {};
  const std::size_t from = begin + name.size() + 4;
  return page.substr(from, page.find("```", from) - from);
}

std::string bytes_of_dump(const std::string& dump) {
  std::string bytes;
  std::size_t at = 0;
  while (at < dump.size()) {
    const std::size_t end = dump.find('\n', at);
    const std::string line = dump.substr(at, end - at);
    EXPECT_EQ(std::stoul(line.substr(0, 4), nullptr, 16), bytes.size());
    for (std::size_t i = 6; i + 1 < line.size(); i += 3) {
      bytes += static_cast<char>(std::stoul(line.substr(i, 2), nullptr, 16));
    }
    at = end + 1;
  }
  return bytes;
}

TEST(SchemaReadme, PrintsTheBytesOfItsNotes) {
  if (FLATBUFFERS_VERSION_MAJOR != 2 || FLATBUFFERS_VERSION_MINOR != 0) {
    GTEST_SKIP() << "the printed bytes are those of FlatBuffers 2.0.8";
  }
  std::ifstream file(FIRN_SOURCE_DIR "/schemas/README.md");
  const std::string page{std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
  const std::string notes = fenced(page, "notes");
  ASSERT_FALSE(notes.empty());
  Context context;
  Buffer pit(context);
  ASSERT_EQ(firn_notes_read(context, notes.data(), notes.size(), nullptr, pit.out(), nullptr, nullptr),
            FIRN_OK);
  EXPECT_EQ(pit.text(), bytes_of_dump(fenced(page, "hex")));
}

// The journal that the page prints: a pit named Tarn whose title was set.
TEST(SchemaReadme, PrintsTheBytesOfItsJournal) {
  if (FLATBUFFERS_VERSION_MAJOR != 2 || FLATBUFFERS_VERSION_MINOR != 0) {
    GTEST_SKIP() << "the printed bytes are those of FlatBuffers 2.0.8";
  }
  std::ifstream file(FIRN_SOURCE_DIR "/schemas/README.md");
  const std::string page{std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
  Context context;
  firn_recorder* recorder = nullptr;
  ASSERT_EQ(firn_recorder_create(context, &recorder, nullptr), FIRN_OK);
  firn_author author = FIRN_INIT(firn_author);
  author.device = 7;
  EXPECT_EQ(firn_recorder_author(recorder, &author, nullptr), FIRN_OK);
  EXPECT_EQ(firn_recorder_begin(recorder, "Tarn-1", nullptr), FIRN_OK);
  firn_pit_head head = FIRN_INIT(firn_pit_head);
  head.title = "Tarn";
  EXPECT_EQ(firn_record_pit_head(recorder, &head, nullptr, nullptr), FIRN_OK);
  Buffer journal(context);
  EXPECT_EQ(firn_recorder_frames(recorder, 0, journal.out(), nullptr, nullptr), FIRN_OK);
  firn_recorder_destroy(recorder);
  std::string printed;
  static const char kDigits[] = "0123456789abcdef";
  for (std::size_t i = 0; i < journal.size(); ++i) {
    if (i % 16 == 0) {
      if (i != 0) printed += '\n';
      for (int shift = 12; shift >= 0; shift -= 4) printed += kDigits[i >> shift & 15];
      printed += ' ';
    }
    printed += ' ';
    printed += kDigits[journal.data()[i] >> 4];
    printed += kDigits[journal.data()[i] & 15];
  }
  EXPECT_EQ(fenced(page, "journal"), printed + "\n");
}

}  // namespace
