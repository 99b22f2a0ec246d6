// The kit as it is committed is what the library makes of its sources, and every format of it leads back to
// the same pit.
#include <gtest/gtest.h>

#include <algorithm>
#include <cstdint>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

#include "firnbook/firnbook.h"

namespace {

const std::string kFolder = FIRN_SOURCE_DIR "/tests/conformance/kit/";

const std::uint8_t* bytes_of(const std::string& text) {
  return reinterpret_cast<const std::uint8_t*>(text.data());
}

std::string read_file(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

// CRC-32 as in zlib: what other people's languages have at hand.
std::string crc32(const std::string& text) {
  std::uint32_t crc = 0xFFFFFFFFu;
  for (const char sign : text) {
    crc ^= static_cast<std::uint8_t>(sign);
    for (int bit = 0; bit < 8; ++bit) crc = crc >> 1 ^ (0xEDB88320u & (0u - (crc & 1)));
  }
  crc = ~crc;
  std::string out;
  for (int shift = 28; shift >= 0; shift -= 4) out += "0123456789abcdef"[crc >> shift & 15];
  return out;
}

class Context {
 public:
  Context() { EXPECT_EQ(firn_context_create(nullptr, &context_, nullptr), FIRN_OK); }
  ~Context() { firn_context_destroy(context_); }
  Context(const Context&) = delete;
  Context& operator=(const Context&) = delete;
  operator firn_context*() const { return context_; }

 private:
  firn_context* context_ = nullptr;
};

// Takes a buffer's text and gives it back.
std::string taken(firn_context* context, firn_buffer& buffer) {
  std::string text(reinterpret_cast<const char*>(buffer.data), buffer.size);
  firn_buffer_free(context, &buffer);
  return text;
}

struct Document {
  std::string text, notices;
};

Document convert(firn_context* context, const std::string& document, std::uint32_t from, std::uint32_t to,
                 std::uint32_t indent = 0) {
  firn_convert_options options = FIRN_INIT(firn_convert_options);
  options.from = from;
  options.to = to;
  options.indent = indent;
  options.leave_out = 1;
  options.keep_unread = 1;
  firn_buffer out = {nullptr, 0}, notices = {nullptr, 0};
  firn_error error = FIRN_INIT(firn_error);
  const firn_status status =
      firn_convert(context, bytes_of(document), document.size(), &options, &out, &notices, &error);
  EXPECT_EQ(status, FIRN_OK) << error.path << " line " << error.line << ": " << error.what;
  if (status != FIRN_OK) return {};
  Document made;
  made.text = taken(context, out);
  made.notices = taken(context, notices);
  return made;
}

struct Source {
  std::string name, path;
};
std::vector<Source> sources() {
  std::vector<Source> all;
  for (const char* folder : {"/tests/conformance/sources", "/tests/readings/pits", "/examples/first-pit"}) {
    for (const auto& entry : std::filesystem::directory_iterator(FIRN_SOURCE_DIR + std::string(folder))) {
      const std::string ending = entry.path().extension().string();
      if ((ending != ".txt" && ending != ".json") || entry.path().stem() == "CMakeLists") continue;
      all.push_back({entry.path().stem().string(), entry.path().string()});
    }
  }
  std::sort(all.begin(), all.end(), [](const Source& a, const Source& b) { return a.name < b.name; });
  for (std::size_t i = 1; i < all.size(); ++i)
    EXPECT_NE(all[i].name, all[i - 1].name) << "a name given twice";
  return all;
}

struct Format {
  std::uint32_t format;
  const char* ending;
  std::uint32_t indent;
};
constexpr Format kFormats[] = {{FIRN_FORMAT_FIRN, ".firn", 0},
                               {FIRN_FORMAT_JSON, ".json", 1},
                               {FIRN_FORMAT_CAAML, ".caaml.xml", 0},
                               {FIRN_FORMAT_NOTES, ".notes.txt", 0},
                               {FIRN_FORMAT_CARD, ".card", 0}};

// What the library says about a pit: the report as JSON, and fingerprints of what is made from it.
struct Reading {
  std::string report_json, fingerprints;
};
Reading reading_of(firn_context* context, const std::string& pit) {
  firn_buffer report = {nullptr, 0}, note = {nullptr, 0}, picture = {nullptr, 0};
  EXPECT_EQ(firn_interpret(context, bytes_of(pit), pit.size(), nullptr, &report, nullptr), FIRN_OK);
  const std::string report_text = taken(context, report);
  EXPECT_EQ(firn_note_write(context, bytes_of(pit), pit.size(), bytes_of(report_text), report_text.size(),
                            &note, nullptr),
            FIRN_OK);
  EXPECT_EQ(firn_draw_profile(context, bytes_of(pit), pit.size(), bytes_of(report_text), report_text.size(),
                              nullptr, &picture, nullptr),
            FIRN_OK);
  const std::string note_text = taken(context, note), picture_text = taken(context, picture);
  Reading reading;
  reading.report_json = convert(context, report_text, FIRN_FORMAT_FIRN, FIRN_FORMAT_JSON, 1).text;
  reading.fingerprints =
      "\t" + crc32(pit) + "\t" + crc32(report_text) + "\t" + crc32(note_text) + "\t" + crc32(picture_text);
  return reading;
}

bool is_to_be_made() {
  return std::getenv("FIRN_REGENERATE") != nullptr;
}

void expect_file(const std::string& path, const std::string& content) {
  if (is_to_be_made()) std::ofstream(path, std::ios::binary) << content;
  EXPECT_TRUE(read_file(path) == content)
      << path << " is not what the library makes; look at what changed, then "
      << "make it anew: FIRN_REGENERATE=1 conformance_test";
}

TEST(Conformance, TheKitIsWhatTheLibraryMakes) {
  Context context;
  const std::vector<Source> all = sources();
  EXPECT_GE(all.size(), 60u);
  std::string table = "# name, and CRC-32 of: the pit's bytes, the report's, the note, the picture\n";
  std::string losses = "# name, format, and what the format did not hold: see firn_convert\n";
  std::size_t files = 2;
  for (const Source& source : all) {
    SCOPED_TRACE(source.name);
    const std::string pit =
        convert(context, read_file(source.path), FIRN_FORMAT_DETECT, FIRN_FORMAT_FIRN).text;
    for (const Format& format : kFormats) {
      const Document made = convert(context, pit, FIRN_FORMAT_FIRN, format.format, format.indent);
      expect_file(kFolder + source.name + format.ending, made.text);
      std::string notices = made.notices;
      for (std::size_t at = 0; at < notices.size();) {
        const std::size_t end = notices.find('\n', at) + 1;
        const std::string notice = notices.substr(at, end - at);
        if (notice.find("left out") == 0) losses += source.name + "\t" + (format.ending + 1) + "\t" + notice;
        at = end;
      }
      // What was lost is named; where nothing was, the way back leads to the same bytes.
      const bool lost = notices.find("left out") != std::string::npos;
      if (!lost && !is_to_be_made()) {
        EXPECT_EQ(convert(context, made.text, format.format, FIRN_FORMAT_FIRN).text, pit) << format.ending;
      }
    }
    const Reading reading = reading_of(context, pit);
    expect_file(kFolder + source.name + ".report.json", reading.report_json);
    table += source.name + reading.fingerprints + "\n";
    files += std::size(kFormats) + 1;
  }
  expect_file(kFolder + "fingerprints.tsv", table);
  expect_file(kFolder + "losses.tsv", losses);
  const auto entries = std::filesystem::directory_iterator(kFolder);
  EXPECT_EQ(static_cast<std::size_t>(std::distance(begin(entries), end(entries))), files)
      << "a file of the kit has no source any more: remove it";
}

// Buffers and their JSON as they were when a version of the schemas was frozen, never made anew.
TEST(Conformance, WhatAFrozenVersionWroteIsReadAsItWas) {
  Context context;
  std::size_t buffers = 0;
  for (const auto& entry :
       std::filesystem::recursive_directory_iterator(FIRN_SOURCE_DIR "/tests/schema/released")) {
    if (entry.path().extension() != ".firn") continue;
    std::filesystem::path json = entry.path();
    json.replace_extension(".json");
    const std::string buffer = read_file(entry.path().string());
    EXPECT_EQ(convert(context, buffer, FIRN_FORMAT_FIRN, FIRN_FORMAT_JSON, 1).text, read_file(json.string()))
        << entry.path();
    ++buffers;
  }
  EXPECT_GE(buffers, 6u);
}

}  // namespace
