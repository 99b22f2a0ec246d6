// Both demo pits as CAAML: valid, and read back to the byte.
#include <fstream>

#include "caaml_help.h"

namespace firn::tests {
namespace {

class CaamlDemo : public testing::TestWithParam<const char*> {};

TEST_P(CaamlDemo, IsTheGoldenDocumentAndComesBackToTheByte) {
  const std::filesystem::path golden = std::filesystem::path(FIRN_SOURCE_DIR) / "tests/golden";
  const std::string pit_text = read_whole(golden / (std::string(GetParam()) + ".firn"));
  const Bytes pit(pit_text.begin(), pit_text.end());
  Notices lost;
  const std::string text = written(pit, &lost);
  for (const Notice& notice : lost.kept()) EXPECT_NE(notice.kind, NoticeKind::left_out) << shown(lost);
  const std::filesystem::path file = golden / (std::string(GetParam()) + ".caaml.xml");
  if (std::getenv("FIRN_REGENERATE") != nullptr) std::ofstream(file, std::ios::binary) << text;
  EXPECT_EQ(text, read_whole(file));

  Notices notices;
  const auto back = read_caaml_well(text, notices);
  EXPECT_TRUE(notices.empty()) << shown(notices);
  EXPECT_EQ(recording::to_bytes(*back), pit) << text;
  // Again from what was read: nothing wanders.
  EXPECT_EQ(written(recording::to_bytes(*back)), text);
}

TEST_P(CaamlDemo, Validates) {
  if (cannot_validate()) GTEST_SKIP() << kCannotValidate;
  EXPECT_EQ(validate({FIRN_SOURCE_DIR "/tests/golden/" + std::string(GetParam()) + ".caaml.xml"}), "");
}

INSTANTIATE_TEST_SUITE_P(Both, CaamlDemo, testing::Values("larch-bowl-entry", "tarn-shoulder"),
                         [](const auto& which) { return std::string(which.param).substr(0, 4); });

}  // namespace
}  // namespace firn::tests
