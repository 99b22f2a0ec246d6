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

}  // namespace
