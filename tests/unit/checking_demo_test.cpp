// The two demo pits: exactly which checks each of them gives, and in which order.
#include <gtest/gtest.h>

#include "checking_help.h"

namespace firn::tests {
namespace {

using firnbook::CheckCode;
using firnbook::Severity;
using Lines = std::vector<std::string>;

std::size_t errors_in(const checking::Checks& checks) {
  std::size_t errors = 0;
  for (const firnbook::Check& check : checks) errors += check.severity() == Severity::error ? 1u : 0u;
  return errors;
}

TEST(DemoPits, LarchBowlEntry) {
  const checking::Checks checks = checks_of(*larch_bowl_entry());
  EXPECT_EQ(lines_of(checks),
            (Lines{"words_without_code at layers[0].grain_form", "probing_uneven at site.probes_cm",
                   "signs_not_looked_for at signs[1].answer"}));
  EXPECT_EQ(errors_in(checks), 0u);
}

TEST(DemoPits, LarchBowlEntryInWords) {
  const checking::Checks checks = checks_of(*larch_bowl_entry());
  ASSERT_EQ(checks.size(), 3u);
  EXPECT_EQ(message_of(checks[0]),
            "the layer is described in words without a grain form; the words may stand for 2 forms");
  EXPECT_EQ(message_of(checks[1]),
            "the probe went in 38 to 61 cm around the pit, 47.75 cm on average: the depth is uneven here");
  EXPECT_EQ(message_of(checks[2]), "not looked for: cracking; that is not the same as not there");
  EXPECT_EQ(remedy_of(checks[2]), "look on the way on, and write down what you saw");
}

TEST(DemoPits, TarnShoulder) {
  const checking::Checks checks = checks_of(*tarn_shoulder());
  EXPECT_EQ(lines_of(checks), (Lines{"slab_very_soft at tests[0].fractures[0].depth_cm",
                                     "signs_not_looked_for at signs[2].answer"}));
  EXPECT_EQ(errors_in(checks), 0u);
}

// The order is by block of codes and then by place, whatever order the rules ran in.
TEST(Order, BlocksFirstThenPlaces) {
  const auto pit = tarn_shoulder();
  pit->backfilled = false;
  pit->site->slope_deg = std::uint8_t{91};
  pit->tests[4]->fractures[0]->cut_10um = 0;
  pit->tests[1]->fractures[0]->tap = std::uint8_t{31};
  pit->layers[6]->grain_size_10um = -1;
  pit->layers[1]->grain_size_10um = 6000;
  *pit->layers[2]->bottom = down(cm(60));
  EXPECT_EQ(
      lines_of(checks_of(*pit)),
      (Lines{"gap_between_layers at layers[3].top_cm", "size_impossible at layers[1].grain_size_mm",
             "size_not_positive at layers[6].grain_size_mm",
             "reading_across_layers at densities[0].readings[0].bottom_cm",
             "slab_very_soft at tests[0].fractures[0].depth_cm",
             "tap_out_of_range at tests[1].fractures[0].tap",
             "saw_cut_not_positive at tests[4].fractures[0].cut_cm", "slope_out_of_range at site.slope_deg",
             "not_backfilled at backfilled", "signs_not_looked_for at signs[2].answer"}));
}

TEST(Order, TheSamePitGivesTheSameChecksEveryTime) {
  const auto pit = larch_bowl_entry();
  pit->layers.clear();
  for (std::int32_t i = 0; i < 50; ++i) add_layer(*pit, cm(i % 7), cm(i % 5));
  const checking::Checks first = checks_of(*pit);
  const checking::Checks second = checks_of(*pit);
  ASSERT_EQ(first.size(), second.size());
  EXPECT_EQ(lines_of(first), lines_of(second));
  for (std::size_t i = 0; i < first.size(); ++i) {
    EXPECT_EQ(first[i].a(), second[i].a());
    EXPECT_EQ(first[i].b(), second[i].b());
    EXPECT_EQ(first[i].c(), second[i].c());
  }
}

// Nothing at all is a pit too; only what everybody should say is asked for.
TEST(EmptyPit, AsksForWhatIsAlwaysWanted) {
  EXPECT_EQ(
      lines_of(checks_of(firnbook::PitT())),
      (Lines{"time_missing at time", "probes_too_few at site.probes_cm", "signs_not_recorded at signs"}));
}

}  // namespace
}  // namespace firn::tests
