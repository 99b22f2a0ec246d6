// The steps are whole, speak plainly, and are what CATALOGUE.md says. With FIRN_REGENERATE=1 in the
// environment the file is written anew.
#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <set>
#include <sstream>
#include <string>
#include <string_view>
#include <vector>

#include "procedure/procedure.h"
#include "vocabulary/codes.h"

namespace firn::tests {
namespace {

using firnbook::StepKind;
using firnbook::TestKind;
using procedure::Step;

std::vector<Step> steps(TestKind test = TestKind::none) {
  std::size_t count = 0;
  const Step* all = procedure::all_steps(count);
  std::vector<Step> out;
  for (std::size_t i = 0; i < count; ++i) {
    if (procedure::belongs_to(all[i], test)) out.push_back(all[i]);
  }
  return out;
}

std::vector<StepKind> kinds(TestKind test) {
  std::vector<StepKind> out;
  for (const Step& step : steps(test)) out.push_back(step.kind);
  return out;
}

bool has(TestKind test, StepKind kind) {
  const std::vector<StepKind> all = kinds(test);
  return std::find(all.begin(), all.end(), kind) != all.end();
}

TEST(ProcedureSteps, HoldEveryKindOnce) {
  std::multiset<StepKind> found, wanted;
  for (const Step& step : steps()) found.insert(step.kind);
  for (const StepKind kind : firnbook::EnumValuesStepKind()) wanted.insert(kind);
  EXPECT_EQ(found, wanted);
  for (const Step& step : steps()) {
    ASSERT_NE(procedure::find_step(step.kind), nullptr);
    EXPECT_EQ(procedure::find_step(step.kind)->sentence, step.sentence);
  }
  EXPECT_EQ(procedure::find_step(static_cast<StepKind>(0)), nullptr);
  EXPECT_EQ(procedure::find_step(static_cast<StepKind>(255)), nullptr);
}

TEST(ProcedureSteps, SayWhatAgainstWhatAndWhence) {
  for (const Step& step : steps()) {
    SCOPED_TRACE(firnbook::EnumNameStepKind(step.kind));
    EXPECT_EQ(std::string_view(step.sentence).back(), '.');
    EXPECT_GT(std::string_view(step.sentence).size(), 20u);
    EXPECT_GT(std::string_view(step.guards_against).size(), 20u);
    EXPECT_GT(std::string_view(step.source).size(), 10u);
    EXPECT_NE(step.verified, firnbook::Verified::none);
    for (const std::string_view text : {step.sentence, step.needs, step.guards_against, step.source}) {
      EXPECT_EQ(text.find('|'), std::string_view::npos);
    }
    // What rests on memory or practice says so where people read it.
    const std::string_view source = step.source;
    if (step.verified == firnbook::Verified::memory) {
      EXPECT_NE(source.find("memory"), std::string_view::npos);
    }
    if (step.verified == firnbook::Verified::practice) {
      EXPECT_NE(source.find("common practice"), std::string_view::npos);
    }
  }
}

TEST(ProcedureSteps, NoWordReassures) {
  for (const Step& step : steps()) {
    for (const std::string_view text : {step.sentence, step.needs, step.guards_against}) {
      for (const std::string_view word : {"safe", "good", "stable", "unlikely", "fine", "green", "harmless",
                                          "secure", "no danger", "no risk"}) {
        EXPECT_EQ(text.find(word), std::string_view::npos) << text;
      }
    }
  }
}

// A gentle spot of little consequence is never marked down.
TEST(ProcedureSteps, OnlyTheRutschblockHasASlopeMinimum) {
  for (const Step& step : steps()) {
    if (step.least_slope_deg == 0) continue;
    EXPECT_EQ(step.kind, StepKind::slope_steep_enough);
    EXPECT_EQ(step.least_slope_deg, 30);
    EXPECT_EQ(step.tests, 1u << static_cast<unsigned>(TestKind::RB));
    EXPECT_FALSE(step.guards_people);
  }
  EXPECT_TRUE(has(TestKind::RB, StepKind::slope_steep_enough));
  for (const TestKind kind : {TestKind::CT, TestKind::ECT, TestKind::PST, TestKind::DT, TestKind::ST}) {
    EXPECT_FALSE(has(kind, StepKind::slope_steep_enough)) << firnbook::EnumNameTestKind(kind);
  }
}

TEST(ProcedureSteps, GuardPeopleWhateverTestIsMade) {
  std::vector<StepKind> guards;
  for (const Step& step : steps()) {
    if (!step.guards_people) continue;
    guards.push_back(step.kind);
    EXPECT_EQ(step.tests, 0u);
  }
  const std::vector<StepKind> wanted = {StepKind::kit_within_reach,
                                        StepKind::pack_closed,
                                        StepKind::phone_away_from_transceiver,
                                        StepKind::spot_of_little_consequence,
                                        StepKind::nobody_and_nothing_above,
                                        StepKind::pit_filled_in};
  EXPECT_EQ(guards, wanted);
}

struct Isolated {
  TestKind test;
  StepKind kind;
  std::int32_t across, up, down, left;  // cm
};

TEST(ProcedureSteps, ColumnsHaveTheDimensionsOfTheReference) {
  for (const Isolated& one : {Isolated{TestKind::CT, StepKind::compression_column_isolated, 30, 30, 100, 0},
                              Isolated{TestKind::ECT, StepKind::extended_column_isolated, 90, 30, 100, 0},
                              Isolated{TestKind::DT, StepKind::deep_tap_column_isolated, 30, 30, 0, 15},
                              Isolated{TestKind::PST, StepKind::saw_column_isolated, 30, 100, 0, 0},
                              Isolated{TestKind::RB, StepKind::rutschblock_isolated, 200, 150, 0, 0},
                              Isolated{TestKind::ST, StepKind::shear_column_isolated, 30, 30, 0, 0}}) {
    SCOPED_TRACE(firnbook::EnumNameTestKind(one.test));
    std::size_t columns = 0;
    for (const Step& step : steps(one.test)) {
      if (step.column.across_10um == 0) continue;
      ++columns;
      EXPECT_EQ(step.kind, one.kind);
      EXPECT_EQ(step.column.across_10um, pit::cm(one.across));
      EXPECT_EQ(step.column.up_10um, pit::cm(one.up));
      EXPECT_EQ(step.column.down_10um, pit::cm(one.down));
      EXPECT_EQ(step.column.left_10um, pit::cm(one.left));
      EXPECT_FALSE(std::string_view(step.needs).empty());
    }
    EXPECT_EQ(columns, 1u);
  }
  // Tests without a column in the reference get what always holds.
  EXPECT_EQ(kinds(TestKind::hand_shear).size(), kinds(TestKind::other).size());
  EXPECT_LT(kinds(TestKind::other).size(), kinds(TestKind::CT).size());
  EXPECT_GT(kinds(TestKind::none).size(), kinds(TestKind::RB).size());
}

TEST(ProcedureSteps, StandInTheOrderOfTheWork) {
  const std::vector<StepKind> all = kinds(TestKind::ECT);
  EXPECT_EQ(all.front(), StepKind::kit_within_reach);
  EXPECT_EQ(all.back(), StepKind::pit_filled_in);
  const auto at = [&](StepKind kind) { return std::find(all.begin(), all.end(), kind) - all.begin(); };
  EXPECT_LT(at(StepKind::spot_of_little_consequence), at(StepKind::probed_for_even_depth));
  EXPECT_LT(at(StepKind::probed_for_even_depth), at(StepKind::dug_from_below));
  EXPECT_LT(at(StepKind::dug_from_below), at(StepKind::wall_vertical_and_shaded));
  EXPECT_LT(at(StepKind::wall_vertical_and_shaded), at(StepKind::extended_column_isolated));
}

std::string tests_of(const Step& step) {
  if (step.tests == 0) return "any";
  std::string out;
  for (const Code& code : code_table<TestKind>()) {
    if ((step.tests >> code.value & 1) == 0) continue;
    if (!out.empty()) out += ", ";
    out += code.code;
  }
  return out;
}

std::string generated_catalogue() {
  std::ostringstream out;
  out << "# The procedure around a test\n\n"
         "What an app can show and tick, in the order of the work. Made from procedure.cpp by the test of "
         "the "
         "steps\n"
         "(`FIRN_REGENERATE=1`); do not edit. A step in bold guards people: once a pit records any step, "
         "each of "
         "these\n"
         "that was not ticked stands among the report's cautions. The device's manual, local rules and "
         "trained "
         "people\n"
         "stand above all of them. Only the rutschblock has a slope minimum: a gentle spot of little "
         "consequence "
         "is\n"
         "never marked down.\n\n"
         "| id | step | tests | what to do | needs | guards against | source "
         "|\n|---|---|---|---|---|---|---|\n";
  for (const Step& step : steps()) {
    const char* strong = step.guards_people ? "**" : "";
    out << "| " << static_cast<int>(step.kind) << " | " << strong << code_of(step.kind) << strong << " | "
        << tests_of(step) << " | " << step.sentence << " | " << step.needs << " | " << step.guards_against
        << " | " << step.source << " |\n";
  }
  out << "\n## Probe strikes\n\n"
         "Uneven: the strikes differ by more than a fifth of their mean and by more than 10 cm (ours; no "
         "published\n"
         "limit is known, common practice wants even depth; check 601 uses the same limits). Odd: of three "
         "strikes or\n"
         "more, one is uneven with its nearest neighbour while the rest are even. A shallow odd strike means "
         "that "
         "rock,\n"
         "ground, bush, log or a hard layer likely stopped the probe; a deep one, that a hollow is likely.\n";
  return out.str();
}

TEST(ProcedureSteps, TheCatalogueIsWhatTheCodeSays) {
  const std::string path = std::string(FIRN_SOURCE_DIR) + "/core/src/procedure/CATALOGUE.md";
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
