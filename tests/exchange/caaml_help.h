// Pits written as CAAML and read back, and the validator that has the last word.
#pragma once

#include <gtest/gtest.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <memory>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "exchange/caaml/caaml.h"
#include "recording/draft.h"
#include "support/place.h"

namespace firn::tests {

using exchange::Limits;
using exchange::Notice;
using exchange::NoticeKind;
using exchange::Notices;
using recording::Bytes;

inline std::string shown(const Notices& notices) {
  static const char* const kKinds[] = {"changed", "kept", "not understood", "left out"};
  std::string text;
  for (const Notice& notice : notices.kept()) {
    text += std::to_string(notice.line) + ":" + std::to_string(notice.column) + " " +
            kKinds[static_cast<int>(notice.kind)] + " " + notice.path + ": " + notice.what + "\n";
  }
  return text;
}

inline std::string written(const Bytes& pit, Notices* notices = nullptr) {
  Notices own;
  std::string text;
  EXPECT_TRUE(
      exchange::write_caaml(text, *firnbook::GetPit(pit.data()), notices != nullptr ? *notices : own));
  return text;
}

inline std::unique_ptr<firnbook::PitT> read_caaml_well(std::string_view text, Notices& notices) {
  auto pit = exchange::read_caaml(text, {}, notices);
  EXPECT_TRUE(pit) << pit.failure().line << ":" << pit.failure().column << " " << pit.failure().what << "\n"
                   << text.substr(0, 3000);
  return pit ? std::move(*pit) : std::make_unique<firnbook::PitT>();
}

inline std::string read_whole(const std::filesystem::path& path) {
  std::ifstream file(path, std::ios::binary);
  EXPECT_TRUE(file) << path;
  return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

// The folder of the standard's schemas; empty where it is not there.
inline std::filesystem::path schema_folder() {
  const char* given = std::getenv("FIRNBOOK_STANDARDS");
  std::filesystem::path folder =
      given != nullptr ? given : std::filesystem::path(FIRN_SOURCE_DIR) / "../shared/standards";
  folder /= "caaml-profile";
  return std::filesystem::exists(folder / "catalog.xml") ? folder : std::filesystem::path();
}

// Runs xmllint once over all files. Nothing when they are valid, else what it says of those that are not.
inline std::string validate(const std::vector<std::string>& files, const std::string& version = "v6.0.4") {
  const std::filesystem::path folder = schema_folder();
  const std::filesystem::path place = std::filesystem::temp_directory_path() / "firnbook-caaml";
  std::filesystem::create_directories(place);
  const std::string stem =
      (place / ("list-" + std::to_string(std::hash<std::string>{}(files.front())))).string();
  {
    std::ofstream list(stem, std::ios::binary);
    for (const std::string& file : files) list << file << '\n';
  }
  const std::string schema =
      (folder / version / (version == "v5.0" ? "CAAMLv5_SnowProfileIACS.xsd" : "CAAMLv6_SnowProfileIACS.xsd"))
          .string();
  const std::string command = "XML_CATALOG_FILES='" + (folder / "catalog.xml").string() +
                              "' xargs -n 2000 xmllint --nonet --noout --huge --schema '" + schema + "' <'" +
                              stem + "' >'" + stem + ".out' 2>&1";
  const int verdict = std::system(command.c_str());
  std::string said;
  std::ifstream out(stem + ".out");
  std::size_t valid = 0;
  for (std::string line; std::getline(out, line);) {
    if (line.size() > 10 && line.compare(line.size() - 10, 10, " validates") == 0) {
      ++valid;
    } else if (said.size() < 5000) {
      said += line + "\n";
    }
  }
  std::filesystem::remove(stem);
  std::filesystem::remove(stem + ".out");
  if (verdict == 0 && valid == files.size()) return {};
  return said + std::to_string(valid) + " of " + std::to_string(files.size()) + " validate";
}

// True, with a line that says so, where documents cannot be validated.
inline bool cannot_validate() {
  if (schema_folder().empty()) return true;
  return std::system("xmllint --version >/dev/null 2>&1") != 0;
}
inline constexpr const char* kCannotValidate =
    "the standard's schemas (FIRNBOOK_STANDARDS, or ../shared/standards beside the sources) or xmllint "
    "(Debian: "
    "libxml2-utils) are not here: nothing was validated";

}  // namespace firn::tests
