// Bulletins as a test writes them, read and verified.
#pragma once

#include <gtest/gtest.h>

#include <fstream>
#include <iterator>
#include <string>
#include <vector>

#include "bulletin/bulletin.h"

namespace firn::tests {

inline std::string bulletin_file(const std::string& name) {
  std::ifstream file(std::string(FIRN_BULLETINS) + "/" + name + ".json", std::ios::binary);
  EXPECT_TRUE(file) << name;
  return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}
inline const std::vector<std::string>& bulletin_files() {
  static const std::vector<std::string> names = {"storm",        "persistent", "wet",
                                                 "early_season", "no_problem", "deep_layer"};
  return names;
}

// A text that was read, and the bulletins in it.
class ReadBulletin {
 public:
  explicit ReadBulletin(std::string_view text) {
    const Done read = bulletin::read_json(text, builder, messages);
    if (!read) {
      failure = read.failure();
      return;
    }
    ok = true;
    const auto verified =
        bulletin::verify(builder.GetBufferPointer(), builder.GetSize(), {std::size_t{128} << 20}, aligned_);
    EXPECT_TRUE(verified) << "what the reader writes must verify";
    if (verified) root = *verified;
  }

  const firnbook::Bulletin& at(std::uint32_t index) const { return *root->bulletins()->Get(index); }
  std::uint32_t count() const { return root->bulletins()->size(); }
  // "bulletins[0].dangerRatings[1].mainValue 3:5 ..."
  std::string told() const {
    std::string out;
    for (const bulletin::Message& one : messages.list) {
      out += one.path + " " + std::to_string(one.line) + ":" + std::to_string(one.column) + " " + one.what +
             "; " + one.remedy + "\n";
    }
    return out;
  }
  bool tells(const std::string& part) const { return told().find(part) != std::string::npos; }
  std::string bytes() const {
    return {reinterpret_cast<const char*>(builder.GetBufferPointer()), builder.GetSize()};
  }

  bool ok = false;
  Failure failure;
  bulletin::Messages messages;
  flatbuffers::FlatBufferBuilder builder;
  const firnbook::Bulletins* root = nullptr;

 private:
  pit::AlignedBytes aligned_;
};

}  // namespace firn::tests
