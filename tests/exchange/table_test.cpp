// What tables do with texts and numbers. That others read them is shown by table_csv.py.
#include "exchange/table/table.h"

#include <cstdint>
#include <limits>

#include "exchange/table/cells.h"
#include "notes_help.h"

namespace firn::tests {
namespace {

using exchange::Notices;
using exchange::table::append_header;
using exchange::table::append_rows;
using exchange::table::Cells;
using exchange::table::harmless;
using exchange::table::Table;

std::string harmless_of(std::string_view text, bool wanted_change = false) {
  bool changed = false;
  std::string out = harmless(text, changed);
  EXPECT_EQ(changed, wanted_change) << text;
  return out;
}

TEST(Tables, AFormulaInSomebodysWordsBecomesText) {
  EXPECT_EQ(harmless_of("=1+1"), "'=1+1");
  EXPECT_EQ(harmless_of("-SN"), "'-SN");
  EXPECT_EQ(harmless_of("  @x"), "  '@x");
  EXPECT_EQ(harmless_of("a;=b"), "a;'=b");
  EXPECT_EQ(harmless_of("\t=b"), "'\t'=b");
  EXPECT_EQ(harmless_of("'quoted'"), "''quoted'");
  EXPECT_EQ(harmless_of("\xEF\xBC\x9D"), "'\xEF\xBC\x9D");
  EXPECT_EQ(harmless_of("a = b - c"), "a = b - c");
  EXPECT_EQ(harmless_of(""), "");
}

TEST(Tables, WhatIsNoTextIsReplacedAndTold) {
  EXPECT_EQ(harmless_of(std::string_view("a\0b", 3), true),
            "a\xEF\xBF\xBD"
            "b");
  EXPECT_EQ(harmless_of("\xFF\x1B[0m", true), "\xEF\xBF\xBD\xEF\xBF\xBD[0m");

  firnbook::PitT pit;
  pit.title = "\x07";
  const Bytes bytes = recording::to_bytes(pit);
  std::string out;
  Notices notices;
  append_rows(out, Table::pits, *firnbook::GetPit(bytes.data()), notices);
  ASSERT_EQ(notices.kept().size(), 2u);
  EXPECT_EQ(notices.kept()[0].kind, exchange::NoticeKind::left_out);
  EXPECT_EQ(notices.kept()[1].kind, exchange::NoticeKind::changed);
}

TEST(Tables, CellsAreQuotedWhereTheStandardWantsIt) {
  std::string out;
  Cells cells(out);
  cells.text("plain");
  cells.text("a,b");
  cells.text("say \"so\"");
  cells.text("two\r\nlines");
  cells.text(" blank");
  cells.empty();
  cells.end_row();
  EXPECT_EQ(out, "plain,\"a,b\",\"say \"\"so\"\"\",\"two\r\nlines\",\" blank\",\r\n");
}

TEST(Tables, NumbersAreExactAndStayNumbers) {
  std::string out;
  Cells cells(out);
  cells.number(flatbuffers::Optional<std::int32_t>(-750), 2);
  cells.number(flatbuffers::Optional<std::int32_t>(std::numeric_limits<std::int32_t>::min()), 7);
  cells.number(flatbuffers::Optional<std::int64_t>(std::numeric_limits<std::int64_t>::min()), 3);
  cells.number(flatbuffers::Optional<std::uint8_t>(std::uint8_t{0}));
  cells.number(flatbuffers::Optional<std::uint8_t>());
  cells.end_row();
  EXPECT_EQ(out, "-7.5,-214.7483648,-9223372036854775.808,0,\r\n");
}

TEST(Tables, MomentsAreShownAsFarAsTheyAreKnown) {
  using firnbook::Moment;
  using firnbook::TimePrecision;
  constexpr std::int64_t kThen = 1800000000;  // 2027-01-15T08:00:00
  const std::pair<Moment, const char*> kMoments[] = {
      {Moment(kThen, -420, TimePrecision::minute, 1), "2027-01-15T08:00-07:00"},
      {Moment(kThen, 345, TimePrecision::second, 1), "2027-01-15T08:00:00+05:45"},
      {Moment(kThen, 60, TimePrecision::minute, 0), "2027-01-15T08:00"},
      {Moment(kThen, 60, TimePrecision::day, 1), "2027-01-15"},
      {Moment(kThen, 0, TimePrecision::month, 0), "2027-01"},
      {Moment(kThen, 0, TimePrecision::year, 0), "2027"},
      {Moment(kThen, 0, TimePrecision::none, 0), ""},
      {Moment(kThen, 0, static_cast<TimePrecision>(9), 0), ""},
      {Moment(-62135596800, 0, TimePrecision::day, 0), "0001-01-01"}};
  for (const auto& [moment, wanted] : kMoments) {
    std::string out;
    Cells(out).moment(&moment);
    EXPECT_EQ(out, wanted);
  }
}

TEST(Tables, MarksAreNamedAsTheirColumns) {
  std::string out;
  Cells(out).marks(firnbook::Thing::layer, 1u << 5 | 1u << 7 | std::uint64_t{1} << 63);
  EXPECT_EQ(out, "grain_form grain_size_mm 63");
}

// Nobody has layers without a pit: an empty pit has a line of its own and no layers.
TEST(Tables, AnEmptyPit) {
  firnbook::PitT pit;
  const Bytes bytes = recording::to_bytes(pit);
  for (const Table table : {Table::layers, Table::tests, Table::pits}) {
    std::string out;
    append_header(out, table);
    const std::size_t header = out.size();
    Notices notices;
    append_rows(out, table, *firnbook::GetPit(bytes.data()), notices);
    EXPECT_EQ(out.size() > header, table == Table::pits);
    EXPECT_EQ(notices.kept().size(), 1u);
  }
}

}  // namespace
}  // namespace firn::tests
