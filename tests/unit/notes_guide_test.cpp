// Every example in examples/first-pit/NOTES.md is read.
#include <gtest/gtest.h>

#include <sstream>
#include <string>
#include <vector>

#include "notes_help.h"

namespace firn::tests {
namespace {

// The fenced blocks, each line where it stands in the file so that failures name it.
std::string examples_of(const std::string& guide) {
  std::istringstream lines(guide);
  std::string examples;
  std::string line;
  bool inside = false;
  while (std::getline(lines, line)) {
    if (line.rfind("```", 0) == 0) {
      inside = !inside;
      line.clear();
    }
    if (inside) examples += line;
    examples += '\n';
  }
  EXPECT_FALSE(inside) << "a block is not closed";
  return examples;
}

TEST(NotesGuide, EveryExampleIsReadAndPrinted) {
  const std::string examples = examples_of(file_text("NOTES.md"));
  const NotesRead notes = read_well(examples);
  const firnbook::PitT& pit = *notes.pit;
  EXPECT_TRUE(notes.remarks.empty());
  EXPECT_EQ(pit.layers.size(), 9u);
  EXPECT_EQ(pit.tests.size(), 7u);
  EXPECT_EQ(pit.signs.size(), 10u);
  EXPECT_EQ(pit.steps.size(), 4u);
  EXPECT_EQ(pit.densities.size(), 2u);
  EXPECT_EQ(pit.layers[7]->top->datum(), firnbook::Datum::ground);
  EXPECT_TRUE(pit.unread.empty());
  EXPECT_EQ(pit.hardness[0]->dense_depth_cm.size(), 5u);
  EXPECT_EQ(pit.hardness[0]->dense_n.size(), 4u);
  ASSERT_EQ(pit.extensions.size(), 1u);
  EXPECT_EQ(pit.extensions[0]->bytes, (std::vector<std::uint8_t>{0, 1, 2, 255}));
  EXPECT_EQ(pit.unread_edits, 2u);
  EXPECT_EQ(pit.reported->local_s(), 1800000005);
  EXPECT_EQ(pit.layers[8]->bottom->datum(), firnbook::Datum::ground);
  EXPECT_EQ(pit.layers[8]->unreliable, std::uint64_t{1} << 40);
  const std::string printed = canonical(examples);
  EXPECT_EQ(canonical(printed), printed);
}

// What the text says between the blocks.
TEST(NotesGuide, EveryInlineFormIsRead) {
  for (const char* line :
       {"time 2027-01-16", "weather precip OGRS S S2", "weather precip SWAG SN S-1", "weather wind from S",
        "heights from ground", "depths from unknown", "measured slope-normal", "measured vertical",
        "bulletin none issued", "bulletin not looked at", "remark \"\\\" \\\\ \\n \\r \\t \\u{7F} \\xFF\"",
        "0-5 F FC maybe ?77"}) {
    read_well(line);
  }
  EXPECT_EQ(read_well("weather wind S").pit->weather->wind, firnbook::WindClass::S);
  EXPECT_EQ(read_well("weather wind from S").pit->weather->wind_from_point, firnbook::CompassPoint::S);
}

}  // namespace
}  // namespace firn::tests
