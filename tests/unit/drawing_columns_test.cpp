#include "drawing/columns.h"

#include <gtest/gtest.h>

#include "drawing/text_fit.h"

namespace firn::drawing {
namespace {

constexpr Tenths kFont = 160;
constexpr Tenths kRow = 220;

Column spread_column(const std::vector<Tenths>& anchors, Tenths top, Tenths bottom) {
  Column column(4000, kFont, kRow, Between::space);
  for (const Tenths anchor : anchors) {
    column.begin_item(0, anchor, anchor, false);
    column.piece(Ink::plain, "label");
    column.end_item();
  }
  column.spread(top, bottom, 20);
  return column;
}

TEST(Columns, LabelsWithRoomStandAtTheirAnchors) {
  const Column column = spread_column({1000, 2000, 3000}, 0, 5000);
  for (const Column::Item& item : column.items()) EXPECT_EQ(column.leader_y(item), item.anchor);
}

TEST(Columns, CrowdedLabelsKeepTheirOrderAndNeverOverlap) {
  const Column column = spread_column({900, 1000, 1001, 1002, 1003, 3000}, 0, 5000);
  const std::vector<Column::Item>& items = column.items();
  for (std::size_t i = 1; i < items.size(); ++i) {
    EXPECT_LE(items[i - 1].anchor, items[i].anchor);
    EXPECT_GE(items[i].top - items[i - 1].top, kRow + 20);
  }
  // The crowd is moved as little as may be: its middle stays where it was.
  EXPECT_NEAR(static_cast<double>(column.leader_y(items[2])), 981, 1);
  EXPECT_EQ(column.leader_y(items.back()), 3000);
}

TEST(Columns, LabelsStayBetweenTheirLimits) {
  const Column column = spread_column({0, 0, 0, 5000, 5000}, 100, 4900);
  EXPECT_EQ(column.items().front().top, 100);
  EXPECT_EQ(column.items().back().top + kRow, 4900);
}

TEST(Columns, OrderDecidesAndNotTheOrderOfMaking) {
  const Column column = spread_column({3000, 1000, 2000}, 0, 5000);
  EXPECT_EQ(column.items()[0].anchor, 1000);
  EXPECT_EQ(column.items()[2].anchor, 3000);
}

TEST(Columns, ProseBreaksBetweenWordsAndEndsInAnEllipsis) {
  Column column(1150, kFont, kRow, Between::space);
  column.begin_item(0, 0, 0, false);
  column.prose(Ink::plain, "sugary snow to the ground and more of it below", 2);
  column.end_item();
  EXPECT_EQ(column.items()[0].line_count, 2u);
  std::string out;
  column.append(out, column.items()[0], 0);
  EXPECT_NE(out.find(">sugary snow<"), std::string::npos) << out;
  EXPECT_NE(out.find("\xE2\x80\xA6<"), std::string::npos) << out;
}

TEST(Columns, APieceThatFitsIsNotBroken) {
  Column column(1500, kFont, kRow, Between::space);
  column.begin_item(0, 0, 0, false);
  column.piece(Ink::plain, "down 107");
  column.piece(Ink::strong, "PST 32/100");
  column.end_item();
  EXPECT_EQ(column.items()[0].line_count, 2u);
  std::string out;
  column.append(out, column.items()[0], 0);
  EXPECT_NE(out.find(">PST 32/100</tspan>"), std::string::npos) << out;
}

TEST(TextFit, ClipsBetweenCharacters) {
  const std::string snow = "\xE9\x9B\xAA\xE9\x9B\xAA\xE9\x9B\xAA\xE9\x9B\xAA";
  std::string out;
  const Tenths width = append_clipped(out, snow, 100, false, 320);
  EXPECT_EQ(out, "\xE9\x9B\xAA\xE9\x9B\xAA\xE2\x80\xA6");
  EXPECT_LE(width, 320);
}

TEST(TextFit, ReadsNoMoreThanFits) {
  const std::string marks(1u << 20, 'i');
  EXPECT_LT(fit_text(marks, 100, false, 1000).bytes, 50u);
  std::string stacked;
  for (int i = 0; i < 100000; ++i) stacked += "\xCC\x81";  // combining accents take no room of their own
  EXPECT_LT(fit_text(stacked, 100, false, 1000).bytes, 1000u);
}

TEST(TextFit, BoldIsWider) {
  EXPECT_GT(text_width("Tarn Shoulder", 160, true), text_width("Tarn Shoulder", 160, false));
}

TEST(TextFit, LeavesOutWhatTurnsTheDirection) {
  std::string out;
  append_plain(out,
               "a\xE2\x80\xAE"
               "b\xE2\x81\xA6"
               "c\nd\x01");
  EXPECT_EQ(out, "abc d");
}

}  // namespace
}  // namespace firn::drawing
