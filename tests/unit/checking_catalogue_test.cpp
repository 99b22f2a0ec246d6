// The catalogue is whole, speaks plainly, and is what CATALOGUE.md says. With FIRN_REGENERATE=1 in the
// environment the file is written anew.
#include <gtest/gtest.h>

#include <cstdlib>
#include <fstream>
#include <sstream>

#include "checking_help.h"

namespace firn::tests {
namespace {

using checking::Rule;
using firnbook::CheckCode;
using firnbook::Severity;

std::vector<Rule> rules() {
  std::size_t count = 0;
  const Rule* all = checking::all_rules(count);
  return {all, all + count};
}

TEST(Catalogue, HoldsEveryCodeOnceAndInOrder) {
  std::vector<CheckCode> codes;
  for (const Rule& rule : rules()) codes.push_back(rule.code);
  std::vector<CheckCode> wanted;
  for (const CheckCode code : firnbook::EnumValuesCheckCode()) {
    if (code != CheckCode::none) wanted.push_back(code);
  }
  EXPECT_EQ(codes, wanted);
  for (const Rule& rule : rules()) {
    ASSERT_NE(checking::find_rule(rule.code), nullptr);
    EXPECT_EQ(checking::find_rule(rule.code)->message, rule.message);
  }
}

TEST(Catalogue, KnowsNoOtherCode) {
  EXPECT_EQ(checking::find_rule(CheckCode::none), nullptr);
  EXPECT_EQ(checking::find_rule(static_cast<CheckCode>(100)), nullptr);
  EXPECT_EQ(checking::find_rule(static_cast<CheckCode>(199)), nullptr);
  EXPECT_EQ(checking::find_rule(static_cast<CheckCode>(65535)), nullptr);
  const firnbook::Check check(whole_pit(), 1, 2, 3, static_cast<CheckCode>(999), Severity::hint);
  EXPECT_EQ(message_of(check), "check 999 of a newer version");
  EXPECT_EQ(remedy_of(check), "read the report with a newer version");
}

TEST(Catalogue, EveryRowSaysWhatHowAndWhence) {
  for (const Rule& rule : rules()) {
    SCOPED_TRACE(firnbook::EnumNameCheckCode(rule.code));
    EXPECT_NE(rule.severity, Severity::none);
    EXPECT_GT(rule.message.size(), 12u);
    EXPECT_GT(rule.remedy.size(), 12u);
    EXPECT_GT(rule.source.size(), 12u);
    for (const std::string_view text : {rule.message, rule.remedy}) {
      EXPECT_NE(text.back(), '.');
      EXPECT_EQ(text.find('|'), std::string_view::npos);
    }
  }
}

// A check can say that something was not recorded; it can never take caution away.
TEST(Catalogue, NoWordReassures) {
  const std::string_view forbidden[] = {"safe", "good",  "stable",   "unlikely",
                                        "fine", "green", "harmless", "OK"};
  for (const Rule& rule : rules()) {
    for (const std::string_view text : {rule.message, rule.remedy}) {
      for (const std::string_view word : forbidden) {
        EXPECT_EQ(text.find(word), std::string_view::npos) << text;
      }
    }
  }
}

TEST(Catalogue, FillsInEveryUnit) {
  const auto filled = [](CheckCode code, std::int32_t a, std::int32_t b, std::int32_t c) {
    return message_of(firnbook::Check(whole_pit(), a, b, c, code, Severity::warning));
  };
  EXPECT_EQ(filled(CheckCode::layers_overlap, 49500, 50000, 3),
            "the layer begins at 49.5 cm, above 50 cm where layers[3] ends");
  EXPECT_EQ(filled(CheckCode::size_max_below_size, 200, 150, 0),
            "the largest grains (1.5 mm) are smaller than the average (2 mm)");
  EXPECT_EQ(filled(CheckCode::snow_above_freezing, 51, 0, 0), "a snow temperature of 0.51 degC");
  EXPECT_EQ(filled(CheckCode::density_impossible, 9171, 0, 0),
            "a density of 917.1 kg/m3 lies outside 10 to 917");
  EXPECT_EQ(filled(CheckCode::elevation_out_of_range, 950000000, 0, 0), "an elevation of 9500 m");
  EXPECT_EQ(filled(CheckCode::coordinates_out_of_range, 900000001, 900000000, 0),
            "90.0000001 degrees lies outside -90 to 90");
  EXPECT_EQ(filled(CheckCode::wind_speed_negative, -150, 0, 0), "a wind speed of -1.5 m/s");
  EXPECT_EQ(filled(CheckCode::fracture_far_from_layer_named, 66000, 70, 2000),
            "no layer of the form named with the test (SH) lies within 2 cm of 66 cm");
  EXPECT_EQ(filled(CheckCode::quality_on_extended_column, 2, 0, 0),
            "shear quality on ECT: it is kept, and no method reads it");
  EXPECT_EQ(filled(CheckCode::signs_not_looked_for, 6, 0, 0),
            "not looked for: wind loading; that is not the same as not there");
}

// Reports come from other hands as well: any number may stand in a check.
TEST(Catalogue, FillsInHostileNumbers) {
  for (const Rule& rule : rules()) {
    for (const std::int32_t value : {INT32_MIN, -1, 0, 255, 256, INT32_MAX}) {
      const firnbook::Check check(whole_pit(), value, value, value, rule.code, rule.severity);
      EXPECT_EQ(message_of(check).find('{'), std::string::npos);
      EXPECT_EQ(remedy_of(check).find('{'), std::string::npos);
    }
  }
}

constexpr const char* kBlocks[] = {"",
                                   "Geometry",
                                   "Codes, sizes and forms",
                                   "Temperatures",
                                   "Densities",
                                   "Tests",
                                   "Site and time",
                                   "Weather",
                                   "Completeness",
                                   "The site against the terrain of interest",
                                   "Completeness for a stated purpose"};

std::string generated_catalogue() {
  std::ostringstream out;
  out << "# Checks\n\n"
         "One rule, one code. Made from catalogue.cpp by the test of the catalogue (`FIRN_REGENERATE=1`); do "
         "not\n"
         "edit. Error: the record contradicts itself or cannot be. Warning: probably a slip, or outside a "
         "method's\n"
         "limits. Hint: worth a look. No check says anything about the danger of a slope.\n\n"
         "`{a:cm}` stands for a number of the check, printed in that unit.\n";
  int block = 0;
  for (const Rule& rule : rules()) {
    const int code = static_cast<int>(rule.code);
    if (code / 100 != block) {
      block = code / 100;
      out << "\n## " << kBlocks[block] << "\n\n| code | name | | what it says | how to mend it | source |\n"
          << "|---|---|---|---|---|---|\n";
    }
    out << "| " << code << " | " << firnbook::EnumNameCheckCode(rule.code) << " | "
        << firnbook::EnumNameSeverity(rule.severity) << " | " << rule.message << " | " << rule.remedy << " | "
        << rule.source << " |\n";
  }
  return out.str();
}

TEST(Catalogue, TheFileIsWhatTheCodeSays) {
  const std::string path = std::string(FIRN_SOURCE_DIR) + "/core/src/checking/CATALOGUE.md";
  const char* regenerate = std::getenv("FIRN_REGENERATE");
  if (regenerate != nullptr && std::string_view(regenerate) == "1") {
    std::ofstream(path, std::ios::binary) << generated_catalogue();
  }
  std::ifstream file(path, std::ios::binary);
  ASSERT_TRUE(file) << path;
  std::ostringstream committed;
  committed << file.rdbuf();
  EXPECT_EQ(committed.str(), generated_catalogue()) << "run this test with FIRN_REGENERATE=1";
}

}  // namespace
}  // namespace firn::tests
