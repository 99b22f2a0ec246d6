// Pits with anything in any field, written as CAAML: every document validates, and reading it gives the same
// bytes. FIRN_PITS sets how many, 300 without it.
#include <fstream>

#include "caaml_help.h"
#include "caaml_random_pit.h"

namespace firn::tests {
namespace {

std::uint64_t how_many() {
  const char* given = std::getenv("FIRN_PITS");
  return given != nullptr ? std::strtoull(given, nullptr, 10) : 300;
}

std::string difference(const std::string& a, const std::string& b) {
  std::size_t i = 0;
  while (i < a.size() && i < b.size() && a[i] == b[i]) ++i;
  const std::size_t from = i < 150 ? 0 : i - 150;
  return "..." + a.substr(from, 400) + "\n--- and\n..." + b.substr(from, 400);
}

void expect_back(std::uint64_t seed, Wild wild) {
  const Bytes bytes = recording::to_bytes(*RandomPit(seed, wild).pit());
  Notices lost;
  const std::string text = written(bytes, &lost);
  for (const Notice& notice : lost.kept()) EXPECT_NE(notice.kind, NoticeKind::left_out) << shown(lost);
  Notices notices;
  const auto back = read_caaml_well(text, notices);
  const Bytes again = recording::to_bytes(*back);
  for (const Notice& notice : notices.kept()) {
    if (notice.kind == NoticeKind::not_understood) ADD_FAILURE() << "pit " << seed << ": " << shown(notices);
  }
  if (again != bytes) FAIL() << "pit " << seed << "\n" << difference(text, written(again));
}

TEST(CaamlRandom, PlausiblePitsComeBackToTheByte) {
  for (std::uint64_t seed = 1; seed <= how_many() && !HasFailure(); ++seed)
    expect_back(seed, Wild::plausible);
}

TEST(CaamlRandom, PitsWithAnythingComeBackToTheByte) {
  for (std::uint64_t seed = 1; seed <= how_many() && !HasFailure(); ++seed) expect_back(seed, Wild::anything);
}

// The generator would prove little if its documents left elements out.
TEST(CaamlRandom, DocumentsUseEveryElementOfTheStandard) {
  if (schema_folder().empty()) GTEST_SKIP() << kCannotValidate;
  std::string all;
  for (std::uint64_t seed = 1; seed <= 300; ++seed) {
    all += written(recording::to_bytes(*RandomPit(seed, Wild::plausible).pit()));
  }
  const std::string schema = read_whole(schema_folder() / "v6.0.4/CAAMLv6_SnowProfileIACS.xsd");
  const std::string mark = "<element name=\"";
  std::size_t elements = 0;
  for (std::size_t at = schema.find(mark); at != std::string::npos; at = schema.find(mark, at + 1)) {
    const std::size_t from = at + mark.size();
    const std::string name = "<caaml:" + schema.substr(from, schema.find('"', from) - from);
    ++elements;
    EXPECT_TRUE(all.find(name + ">") != std::string::npos || all.find(name + " ") != std::string::npos ||
                all.find(name + "/") != std::string::npos)
        << name;
  }
  EXPECT_GT(elements, 100u);
}

TEST(CaamlRandom, EveryDocumentValidates) {
  if (cannot_validate()) GTEST_SKIP() << kCannotValidate;
  const std::filesystem::path folder =
      std::filesystem::temp_directory_path() / ("firnbook-caaml-" + std::to_string(how_many()));
  std::filesystem::create_directories(folder);
  std::vector<std::string> files;
  for (std::uint64_t seed = 1; seed <= how_many(); ++seed) {
    const Wild wild = seed % 2 == 0 ? Wild::plausible : Wild::anything;
    files.push_back((folder / (std::to_string(seed) + ".xml")).string());
    std::ofstream(files.back(), std::ios::binary)
        << written(recording::to_bytes(*RandomPit(seed, wild).pit()));
  }
  EXPECT_EQ(validate(files), "");
  if (!HasFailure()) std::filesystem::remove_all(folder);
}

}  // namespace
}  // namespace firn::tests
