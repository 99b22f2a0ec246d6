// METHODS.md is what the tables of methods and parameters say, and the tests it names exist. With
// FIRN_REGENERATE=1 in the environment the file is written anew.
#include <gtest/gtest.h>

#include <cstdlib>
#include <fstream>
#include <map>
#include <set>
#include <sstream>
#include <string>
#include <vector>

#include "interpretation/methods.h"
#include "interpretation_help.h"

namespace firn::tests {
namespace {

using firnbook::ParameterKey;
using firnbook::Verified;
using interpretation::MethodRow;
using interpretation::Parameter;
using interpretation::Parameters;

const std::string kPage = std::string(FIRN_SOURCE_DIR) + "/core/src/interpretation/METHODS.md";
// Where the tests of methods stand.
const char* const kTestFiles[] = {
    "tests/unit/interpretation_methods_test.cpp",   "tests/unit/interpretation_flags_test.cpp",
    "tests/unit/interpretation_schemes_test.cpp",   "tests/unit/interpretation_structure_test.cpp",
    "tests/unit/interpretation_mechanics_test.cpp", "tests/published/interpretation_test.cpp",
    "tests/published/methods_table_test.cpp"};

// Suites that test a method at its thresholds, and those that hold it against published values.
const std::map<Method, std::vector<std::string>>& suites() {
  static const std::map<Method, std::vector<std::string>> all = {
      {Method::field_signs, {"FieldSigns"}},
      {Method::compression_test, {"CompressionTest", "CompressionTestScores", "Published"}},
      {Method::extended_column_swiss, {"ExtendedColumn", "SwissExtendedColumn", "Published"}},
      {Method::saw_test, {"SawTest", "SawColumn", "SawTestExamples", "Published"}},
      {Method::yellow_flags, {"YellowFlags", "YellowFlagVectors", "Published"}},
      {Method::temperature_gradient, {"TemperatureGradient", "NearCrusts", "GradientRule", "Published"}},
      {Method::unclassed_tests, {"OtherTests"}},
      {Method::shear_quality, {"ShearQuality", "CompressionTest"}},
      {Method::extended_column_schemes, {"Schemes", "Published"}},
      {Method::extended_column_early, {"EarlyCrack", "Published"}},
      {Method::extended_column_several, {"SeveralColumns"}},
      {Method::deep_tap_test, {"DeepTap", "CompressionTest"}},
      {Method::rutschblock_swiss, {"Rutschblock", "SwissRutschblock", "Published"}},
      {Method::swiss_precedence, {"SwissPrecedence", "Published"}},
      {Method::shear_tests, {"ShearTests"}},
      {Method::threshold_sum, {"ThresholdSum", "Published"}},
      {Method::lemons, {"Lemons", "Published"}},
      {Method::weak_layer_build, {"WeakLayerBuild"}},
      {Method::density_estimate, {"DensityEstimate", "Published"}},
      {Method::water_equivalent, {"WaterEquivalent", "Published"}},
      {Method::slab_stress, {"SlabStress", "Published"}},
      {Method::strength_estimate, {"Strength", "Published"}},
      {Method::skier_stability, {"SkierStability", "Published"}},
      {Method::critical_crack_length, {"CriticalCrack", "Published"}},
  };
  return all;
}

const char* words_of(Verified verified) {
  switch (verified) {
    case Verified::read:
      return "read";
    case Verified::read_secondary:
      return "secondary";
    case Verified::memory:
      return "memory";
    default:
      return "practice";
  }
}

std::vector<MethodRow> methods() {
  std::size_t count = 0;
  const MethodRow* all = interpretation::all_methods(count);
  return {all, all + count};
}
std::vector<Parameter> parameters() {
  std::size_t count = 0;
  const Parameter* all = interpretation::all_parameters(count);
  return {all, all + count};
}

std::string parameters_of(Method method) {
  std::string out;
  for (const Parameter& one : parameters()) {
    if (one.method != method) continue;
    out += (out.empty() ? "`" : ", `") + std::string(one.name) + "`";
  }
  return out.empty() ? "–" : out;
}

std::string page() {
  std::ostringstream out;
  out << "# Methods\n\nMade from the tables in `methods.cpp` and `parameters.cpp` by a test; change those, "
         "then run\n"
         "`FIRN_REGENERATE=1 ctest --preset dev -R MethodTable`.\n\n"
         "Verified: read (in the source itself), secondary (in another page), memory (no text at hand that "
         "shows the\n"
         "number), practice (ours, derived or common). It is the weakest of what the method needs; the "
         "source says\n"
         "which part is which.\n\n"
         "| method | file | source | verified | parameters | tests |\n|---|---|---|---|---|---|\n";
  for (const MethodRow& row : methods()) {
    std::string tests;
    for (const std::string& suite : suites().at(row.method)) tests += (tests.empty() ? "" : ", ") + suite;
    out << "| " << firnbook::EnumNameMethod(row.method) << " | `" << row.file << "` | " << row.source << " | "
        << words_of(row.verified) << " | " << parameters_of(row.method) << " | " << tests << " |\n";
  }
  out << "\n## Parameters\n\n| parameter | unit | default | from | to | verified | source |\n"
         "|---|---|---|---|---|---|---|\n";
  for (const Parameter& one : parameters()) {
    out << "| `" << one.name << "` | " << one.unit << " | " << interpretation::default_of(one) << " | "
        << one.least << " | " << one.most << " | " << words_of(one.verified) << " | " << one.source << " |\n";
  }
  return out.str();
}

std::string content_of(const std::string& path) {
  std::ifstream file(path);
  std::ostringstream out;
  out << file.rdbuf();
  return out.str();
}

TEST(MethodTable, IsWhatThePageSays) {
  if (std::getenv("FIRN_REGENERATE") != nullptr) std::ofstream(kPage) << page();
  EXPECT_EQ(content_of(kPage), page()) << "run interpretation_test with FIRN_REGENERATE=1";
}

TEST(MethodTable, HoldsEveryMethodOnceWithAFileThatIsThere) {
  std::vector<Method> listed;
  for (const MethodRow& row : methods()) {
    listed.push_back(row.method);
    EXPECT_FALSE(content_of(std::string(FIRN_SOURCE_DIR) + "/core/src/interpretation/" + row.file).empty())
        << row.file;
    EXPECT_GT(std::string(row.source).size(), 9u);
    EXPECT_NE(row.verified, Verified::none);
  }
  std::vector<Method> wanted;
  for (const Method method : firnbook::EnumValuesMethod()) {
    if (method != Method::none) wanted.push_back(method);
  }
  EXPECT_EQ(listed, wanted);
}

TEST(MethodTable, NamesTestsThatExist) {
  std::string all;
  for (const char* file : kTestFiles) all += content_of(std::string(FIRN_SOURCE_DIR) + "/" + file);
  for (const auto& [method, names] : suites()) {
    for (const std::string& suite : names) {
      EXPECT_NE(all.find("TEST(" + suite + ", "), std::string::npos)
          << suite << " of " << firnbook::EnumNameMethod(method);
    }
  }
}

// --- parameters

TEST(ParameterTable, EachKeyNamesItsOwnFieldInOrder) {
  Parameters set;
  std::int32_t number = 0;
  for (const Parameter& one : parameters()) {
    EXPECT_EQ(static_cast<std::int32_t>(one.key), ++number);
    EXPECT_STREQ(firnbook::EnumNameParameterKey(one.key), one.name);
    EXPECT_EQ(interpretation::find_parameter(one.key)->name, one.name);
    set.*one.field = -number;
  }
  // Every field was reached by exactly one row.
  for (const Parameter& one : parameters()) EXPECT_EQ(set.*one.field, -static_cast<std::int32_t>(one.key));
  EXPECT_EQ(interpretation::find_parameter(ParameterKey::none), nullptr);
  EXPECT_EQ(interpretation::find_parameter(static_cast<ParameterKey>(number + 1)), nullptr);
}

TEST(ParameterTable, SetsWithinItsLimitsAndNamesWhatItRefuses) {
  for (const Parameter& one : parameters()) {
    Parameters set;
    EXPECT_TRUE(static_cast<bool>(interpretation::set_parameter(set, one.key, one.most)));
    EXPECT_EQ(set.*one.field, one.most);
    EXPECT_TRUE(static_cast<bool>(interpretation::set_parameter(set, one.key, one.least)));
    const Done low = interpretation::set_parameter(set, one.key, one.least - 1);
    ASSERT_FALSE(static_cast<bool>(low));
    EXPECT_NE(low.failure().what.find(one.name), std::string::npos);
    EXPECT_NE(low.failure().what.find(one.unit), std::string::npos);
    EXPECT_FALSE(static_cast<bool>(interpretation::set_parameter(set, one.key, one.most + 1)));
    EXPECT_EQ(set.*one.field, one.least) << "a refusal changes nothing";
  }
}

// What is remembered with low confidence is off; its default is no number of anybody's.
TEST(ParameterTable, PoissonsRatioIsOff) {
  EXPECT_EQ(Parameters{}.slab_poisson_thousandths, 0);
}

// Any value within its limits, alone and all at once at either end, leaves a report and no crash.
TEST(ParameterTable, EveryLimitIsHeldByEveryMethod) {
  for (const auto& pit : {tarn_shoulder(), larch_bowl_entry()}) {
    Parameters least;
    Parameters most;
    for (const Parameter& one : parameters()) {
      least.*one.field = one.least;
      most.*one.field = one.most;
      for (const std::int32_t value : {one.least, one.most}) {
        Parameters set;
        set.*one.field = value;
        EXPECT_FALSE(Read(*pit, set).analysis.findings.empty()) << one.name;
      }
    }
    EXPECT_FALSE(Read(*pit, least).analysis.findings.empty());
    EXPECT_FALSE(Read(*pit, most).analysis.findings.empty());
  }
}

TEST(ParameterTable, TheReportCarriesWhatWasChanged) {
  Parameters set;
  set.pst_percent = 40;
  set.slab_poisson_thousandths = 250;
  Read read(*tarn_shoulder(), set);
  flatbuffers::FlatBufferBuilder builder;
  interpretation::write_report(read.analysis, set, 1, builder);
  const firnbook::Report& report = *firnbook::GetReport(builder.GetBufferPointer());
  ASSERT_NE(report.parameters_changed(), nullptr);
  ASSERT_EQ(report.parameters_changed()->size(), 2u);
  EXPECT_EQ(report.parameters_changed()->Get(0)->key(), ParameterKey::pst_percent);
  EXPECT_EQ(report.parameters_changed()->Get(0)->value(), 40);
  EXPECT_EQ(report.parameters_changed()->Get(0)->default_value(), 50);
  EXPECT_EQ(report.parameters_changed()->Get(1)->key(), ParameterKey::slab_poisson_thousandths);
}

}  // namespace
}  // namespace firn::tests
