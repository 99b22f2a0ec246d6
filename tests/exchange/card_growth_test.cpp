// How cards grow: newer ones are refused, or read as far as they are known; and nothing that the schema can
// hold is forgotten by the tables of the card.
#include <algorithm>
#include <cstdint>
#include <set>

#include "card_help.h"
#include "exchange/card/bits.h"
#include "exchange/card/layouts.h"
#include "exchange/card/letters.h"
#include "support/form.h"
#include "support/place.h"
#include "vocabulary/codes.h"

namespace firn::tests {
namespace {

using exchange::card::Bits;
using exchange::card::Code;
using exchange::card::kPitLayout;
using exchange::card::Layout;
using exchange::card::Way;

TEST(CardGrowth, OlderReadersRefuseANewerMajorVersionPolitely) {
  Bytes body = card_of(bytes_of(kQuickPit));
  body.resize(body.size() - 4);
  for (unsigned major = 2; major < 16; ++major) {
    for (unsigned minor = 0; minor < 16; ++minor) {
      Bytes card = body;
      card[0] = static_cast<std::uint8_t>(major << 4 | minor);
      seal(card);
      Notices notices;
      auto pit = read(card, notices);
      ASSERT_FALSE(pit);
      EXPECT_EQ(pit.failure().status, FIRN_NEWER_SCHEMA);
      EXPECT_NE(pit.failure().what.find("written by a newer version"), std::string::npos);
      EXPECT_TRUE(exchange::card::is_card(card.data(), card.size()));
    }
  }
  body[0] &= 15;
  seal(body);
  EXPECT_EQ(refusal_of(body), FIRN_WRONG_KIND);
}

// Whatever a major version to come holds behind its first byte, it is not read as something else.
TEST(CardGrowth, OfANewerMajorVersionOnlyTheFirstByteAndTheChecksumAreLookedAt) {
  for (unsigned byte = 0; byte < 256; ++byte) {
    Bytes card = {0x2f, static_cast<std::uint8_t>(byte), 0xff, 0x00, static_cast<std::uint8_t>(~byte)};
    seal(card);
    EXPECT_EQ(refusal_of(card), FIRN_NEWER_SCHEMA);
  }
}

// A pit of nothing but a title and fields that are not known here, as a newer minor version would write it.
Bytes newer_card(std::uint8_t minor, std::uint64_t bits_in_field) {
  Bits bits = Bits::writing(200);
  bits.fixed(1, 4);
  bits.fixed(minor, 4);
  bits.flag(false);
  bits.golomb(kPitLayout.shape_count, kPitLayout.shape_order);
  const std::size_t title = field_id(firnbook::Pit::VT_TITLE);
  const auto ask = [&](bool usual) {
    for (std::size_t i = 0; i < kPitLayout.count; ++i) {
      if (kPitLayout.codes[i].way == Way::none || ((kPitLayout.usual >> i & 1) != 0) != usual) continue;
      bits.flag(i == title);
    }
  };
  ask(true);
  bits.flag(true);
  ask(false);
  bits.flag(true);  // fields that came later follow
  std::string words = "ridge";
  exchange::card::code_letters(bits, words);
  bits.golomb(1, 0);  // two of them
  bits.golomb(0, 1);
  bits.golomb(bits_in_field, 6);
  for (std::uint64_t i = 0; i < bits_in_field; ++i) bits.flag(i % 3 == 0);
  bits.golomb(2, 1);
  bits.golomb(1, 6);
  bits.flag(true);
  bits.end();
  Bytes card = bits.bytes();
  seal(card);
  return card;
}

TEST(CardGrowth, FieldsOfANewerMinorVersionAreSkippedAndTold) {
  for (const std::uint64_t size : {0u, 1u, 7u, 64u, 500u}) {
    const Bytes card = newer_card(1, size);
    Notices notices;
    auto pit = read(card, notices);
    ASSERT_TRUE(pit) << pit.failure().what;
    EXPECT_EQ((*pit)->title, "ridge");
    ASSERT_EQ(notices.kept().size(), 3u);
    for (const Notice& notice : notices.kept()) EXPECT_EQ(notice.kind, NoticeKind::not_understood);
    EXPECT_NE(notices.kept()[1].what.find("field 41 "), std::string::npos) << notices.kept()[1].what;
    EXPECT_NE(notices.kept()[2].what.find("field 44 "), std::string::npos) << notices.kept()[2].what;
  }
}

TEST(CardGrowth, ACardOfThisVersionHasNoFieldsOfALaterOne) {
  EXPECT_EQ(refusal_of(newer_card(0, 8)), FIRN_DAMAGED);
}

TEST(CardGrowth, AFieldLongerThanTheCardIsRefused) {
  Bits bits = Bits::writing(200);
  bits.fixed(0x11, 8);
  bits.flag(false);
  bits.golomb(kPitLayout.shape_count, kPitLayout.shape_order);
  for (std::size_t i = 0; i < kPitLayout.count; ++i) {
    if (kPitLayout.codes[i].way != Way::none && (kPitLayout.usual >> i & 1) != 0) bits.flag(false);
  }
  bits.flag(true);
  for (std::size_t i = 0; i < kPitLayout.count; ++i) {
    if (kPitLayout.codes[i].way != Way::none && (kPitLayout.usual >> i & 1) == 0) bits.flag(false);
  }
  bits.flag(true);
  bits.golomb(0, 0);
  bits.golomb(0, 1);
  bits.golomb(~std::uint64_t{0} >> 1, 6);
  bits.end();
  Bytes card = bits.bytes();
  seal(card);
  EXPECT_EQ(refusal_of(card), FIRN_DAMAGED);
}

// --- nothing is forgotten --------------------------------------------------------------------------------

bool is_of(Way way, const form::Field& field) {
  using form::Kind;
  switch (way) {
    case Way::none:
      return true;
    case Way::flag:
      return field.kind == Kind::optional && field.element == form::Element::yes_no;
    case Way::code:
      return field.kind == Kind::optional && field.element == form::Element::bits8;
    case Way::number:
    case Way::change:
      return field.kind == Kind::optional && field.element != form::Element::yes_no;
    case Way::marks:
      return field.kind == Kind::number && field.element == form::Element::bits64;
    case Way::next_top:
    case Way::next_depth:
    case Way::below_top:
    case Way::at_boundary:
      return field.kind == Kind::structure && field.element == form::Element::depth;
    case Way::boundaries:
      return field.kind == Kind::depths;
    case Way::text:
      return field.kind == Kind::text;
    case Way::moment:
      return field.kind == Kind::structure && field.element == form::Element::moment;
    case Way::time_span:
      return field.kind == Kind::structure && field.element == form::Element::time_span;
    case Way::place:
      return field.kind == Kind::structure && field.element == form::Element::place;
    case Way::table:
      return field.kind == Kind::table;
    case Way::tables:
      return field.kind == Kind::tables;
    case Way::numbers:
      return field.kind == Kind::numbers && field.element == form::Element::bits32;
    case Way::codes:
      return field.kind == Kind::numbers && field.element == form::Element::grain_form;
  }
  return false;
}

void expect_ranks(const exchange::card::Ranks& ranks) {
  const std::set<std::uint8_t> different(ranks.values, ranks.values + ranks.count);
  EXPECT_EQ(different.size(), ranks.count);
}

void expect_shapes(const Layout& layout) {
  std::uint64_t written = 0;
  for (std::size_t i = 0; i < layout.count; ++i) {
    if (layout.codes[i].way != Way::none) written |= std::uint64_t{1} << i;
  }
  EXPECT_EQ(layout.usual & ~written, 0u);
  for (std::size_t i = 0; i < layout.shape_count; ++i) {
    EXPECT_EQ(layout.shapes[i] & ~written, 0u);
    EXPECT_EQ(std::count(layout.shapes, layout.shapes + layout.shape_count, layout.shapes[i]), 1);
  }
}

// A field that is added to the schema is written by no card until somebody decides how (README.md, "Growth").
void expect_whole(const Layout& layout, const form::Table& table, std::set<std::string>& left_out) {
  ASSERT_EQ(layout.count, table.count) << table.name_of(table.count - 1u);
  expect_shapes(layout);
  for (std::size_t i = 0; i < layout.count; ++i) {
    const Code& code = layout.codes[i];
    const form::Field& field = table.first[i];
    const std::string name(table.name_of(i));
    EXPECT_EQ(code.field, field.field) << name;
    EXPECT_TRUE(is_of(code.way, field)) << name;
    if (code.way == Way::none) left_out.insert(name);
    EXPECT_EQ(code.units != nullptr, code.way == Way::number || code.way == Way::change) << name;
    EXPECT_EQ(code.ranks != nullptr, code.way == Way::code || code.way == Way::codes) << name;
    EXPECT_EQ(code.layout != nullptr, code.way == Way::table || code.way == Way::tables) << name;
    if (code.ranks != nullptr) expect_ranks(*code.ranks);
    if (code.layout != nullptr) expect_whole(*code.layout, *field.table, left_out);
  }
}

TEST(CardGrowth, EveryFieldOfTheSchemaIsOnACardOrInTheListOfThoseThatAreNot) {
  std::set<std::string> left_out;
  expect_whole(kPitLayout, form::table_of<firnbook::PitT>(), left_out);
  const std::set<std::string> wanted = {"schema_minor", "extensions", "dense_depth_cm",
                                        "dense_m2kg",   "dense_n",    "sha256"};
  EXPECT_EQ(left_out, wanted);
}

}  // namespace
}  // namespace firn::tests
