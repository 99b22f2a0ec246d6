// What a card holds, how large it is, and what is refused.
#include <cstdint>

#include "card_help.h"

namespace firn::tests {
namespace {

using exchange::card::kMostBytes;
using exchange::card::write_card;

TEST(Card, DemoPitsFitAndComeBackToTheByte) {
  const std::size_t most[] = {160, 320};
  for (std::size_t i = 0; i < 2; ++i) {
    const Bytes pit = bytes_of(file_text(kDemoNotes[i]));
    const Bytes card = card_of(pit);
    EXPECT_LE(card.size(), most[i]) << kDemoNotes[i];
    EXPECT_EQ(pit_on(card), pit) << kDemoNotes[i];
    RecordProperty(kDemoNotes[i], static_cast<int>(card.size()));
  }
}

TEST(Card, AQuickPitOfFiveLayersAndTwoTestsTakesAtMost160Bytes) {
  const Bytes pit = bytes_of(kQuickPit);
  const Bytes card = card_of(pit);
  EXPECT_LE(card.size(), 160u);
  EXPECT_EQ(pit_on(card), pit);
}

// What README.md says of the demo pits, and the usual one in this folder: no larger by accident.
TEST(Card, SizesAreThoseThatTheReadmeTells) {
  EXPECT_EQ(card_of(bytes_of(file_text("larch-bowl-entry.txt"))).size(), 138u);
  EXPECT_EQ(card_of(bytes_of(file_text("tarn-shoulder.txt"))).size(), 169u);
}

TEST(Card, ThatOfNothingIsReadAsNothing) {
  firnbook::PitT empty;
  const Bytes pit = recording::to_bytes(empty);
  const Bytes card = card_of(pit);
  EXPECT_LE(card.size(), 9u);
  EXPECT_EQ(pit_on(card), pit);
}

// The same content makes the same card, whoever recorded it and in whatever order.
TEST(Card, IsTheSameForTheSameContent) {
  auto pit = read_well(kQuickPit).pit;
  const Bytes in_order = recording::to_bytes(*pit);
  std::swap(pit->layers.front(), pit->layers.back());
  flatbuffers::FlatBufferBuilder builder;
  firnbook::FinishPitBuffer(builder, recording::pack(builder, *pit));
  const Bytes disordered(builder.GetBufferPointer(), builder.GetBufferPointer() + builder.GetSize());
  ASSERT_NE(disordered, in_order);
  EXPECT_EQ(card_of(disordered), card_of(in_order));
}

// --- what a card cannot hold -----------------------------------------------------------------------------

std::unique_ptr<firnbook::PitT> pit_with_too_much() {
  auto pit = read_well(kQuickPit).pit;
  pit->hardness.push_back(std::make_unique<firnbook::HardnessProfileT>());
  pit->hardness[0]->method = firnbook::HardnessMethod::snow_micro_pen;
  pit->hardness[0]->dense_depth_cm = {0.0f, 0.1f};
  pit->hardness[0]->dense_n = {1.0f, 2.0f};
  pit->photos.push_back(std::make_unique<firnbook::PhotoT>());
  pit->photos[0]->reference = "wall.jpg";
  pit->photos[0]->sha256.assign(32, 7);
  pit->extensions.push_back(std::make_unique<firnbook::ExtensionT>());
  pit->extensions[0]->key = "urn:example";
  pit->extensions[0]->bytes = {1, 2, 3};
  return pit;
}

TEST(Card, RefusesWhatItCannotHoldAndNamesTheFirst) {
  auto pit = pit_with_too_much();
  const auto refused_with = [&](std::string_view path, firnbook::Thing thing) {
    const Bytes bytes = recording::to_bytes(*pit);
    Notices notices;
    Result<Bytes> card = write_card(*firnbook::GetPit(bytes.data()), {}, notices);
    ASSERT_FALSE(card);
    EXPECT_EQ(card.failure().status, FIRN_NOT_HELD);
    EXPECT_NE(card.failure().what.find(path), std::string::npos) << card.failure().what;
    EXPECT_FALSE(card.failure().remedy.empty());
    EXPECT_EQ(card.failure().place.thing(), thing);
    EXPECT_TRUE(notices.empty());
  };
  refused_with("hardness[0].dense_depth_cm", firnbook::Thing::hardness_profile);
  pit->hardness.clear();
  refused_with("photos[0].sha256", firnbook::Thing::photo);
  pit->photos.clear();
  refused_with("extensions[0]", firnbook::Thing::pit);
}

TEST(Card, LeavesOutWhatItMayWithANoticeEachAndTellsTheReader) {
  auto pit = pit_with_too_much();
  const Bytes bytes = recording::to_bytes(*pit);
  Notices notices;
  Result<Bytes> card = write_card(*firnbook::GetPit(bytes.data()), {true}, notices);
  ASSERT_TRUE(card);
  ASSERT_EQ(notices.kept().size(), 3u);
  EXPECT_EQ(notices.kept()[0].path, "hardness[0].dense_depth_cm");
  EXPECT_EQ(notices.kept()[1].path, "photos[0].sha256");
  EXPECT_EQ(notices.kept()[2].path, "extensions[0]");
  EXPECT_NE(notices.kept()[2].what.find("urn:example"), std::string::npos);

  Notices told;
  auto back = read(*card, told);
  ASSERT_TRUE(back);
  ASSERT_EQ(told.kept().size(), 1u);
  EXPECT_EQ(told.kept()[0].kind, NoticeKind::left_out);
  EXPECT_EQ((*back)->photos[0]->reference, "wall.jpg");
  EXPECT_EQ((*back)->hardness[0]->method, firnbook::HardnessMethod::snow_micro_pen);
  EXPECT_TRUE((*back)->extensions.empty());
}

TEST(Card, APitThatIsTooLargeIsRefused) {
  auto pit = read_well(kQuickPit).pit;
  for (int i = 0; i < 20000; ++i) {
    pit->signs.push_back(std::make_unique<firnbook::SignT>());
    pit->signs.back()->words = "w" + std::to_string(i);
  }
  Bytes bytes = recording::to_bytes(*pit);
  Notices notices;
  Result<Bytes> card = write_card(*firnbook::GetPit(bytes.data()), {}, notices);
  ASSERT_FALSE(card);
  EXPECT_EQ(card.failure().status, FIRN_TOO_LARGE);

  firnbook::PitT wordy;
  wordy.title = std::string(4u << 20, '\xE9');
  wordy.extensions.push_back(std::make_unique<firnbook::ExtensionT>());
  bytes = recording::to_bytes(wordy);
  card = write_card(*firnbook::GetPit(bytes.data()), {true}, notices);
  ASSERT_FALSE(card);
  EXPECT_EQ(card.failure().status, FIRN_TOO_LARGE);
  // Nothing was left out of a card that was not written.
  EXPECT_TRUE(notices.empty());
}

TEST(Card, APitOfANewerSchemaIsRefused) {
  firnbook::PitT pit;
  pit.schema_minor = 60000;
  flatbuffers::FlatBufferBuilder builder;
  firnbook::FinishPitBuffer(builder, recording::pack(builder, pit));
  Notices notices;
  Result<Bytes> card = write_card(*firnbook::GetPit(builder.GetBufferPointer()), {}, notices);
  ASSERT_FALSE(card);
  EXPECT_EQ(card.failure().status, FIRN_NEWER_SCHEMA);
}

TEST(Card, WhatIsNoCardIsRefused) {
  EXPECT_EQ(refusal_of({}), FIRN_TOO_SMALL);
  EXPECT_EQ(refusal_of(Bytes(5, 0)), FIRN_TOO_SMALL);
  EXPECT_EQ(refusal_of(Bytes(200, 0)), FIRN_DAMAGED);
  EXPECT_EQ(refusal_of(Bytes(200, 255)), FIRN_DAMAGED);
  EXPECT_EQ(refusal_of(bytes_of(kQuickPit)), FIRN_DAMAGED);
  EXPECT_EQ(refusal_of(Bytes(kMostBytes + 1, 0)), FIRN_TOO_LARGE);
  Notices notices;
  const auto none = exchange::card::read_card(nullptr, 10, notices);
  ASSERT_FALSE(none);
  EXPECT_EQ(none.failure().status, FIRN_NULL_ARGUMENT);
  EXPECT_FALSE(exchange::card::is_card(nullptr, 10));
  const Bytes pit = bytes_of(kQuickPit);
  EXPECT_FALSE(exchange::card::is_card(pit.data(), pit.size()));
}

// Marked words go with their mark, as in the pit's own file.
TEST(Card, KeepsWhatIsConfidentialConfidential) {
  firnbook::PitT pit;
  pit.remarks.push_back(std::make_unique<firnbook::RemarkT>());
  pit.remarks[0]->text = "not for everybody";
  pit.remarks[0]->confidential = true;
  pit.sharing = firnbook::Sharing::partners;
  pit.practice = true;
  const Bytes bytes = recording::to_bytes(pit);
  EXPECT_EQ(pit_on(card_of(bytes)), bytes);
}

}  // namespace
}  // namespace firn::tests
