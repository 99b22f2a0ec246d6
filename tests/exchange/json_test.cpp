// What goes out as JSON comes back the same.
#include <gtest/gtest.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>

#include "bulletin/bulletin.h"
#include "exchange/json/values.h"
#include "json_help.h"
#include "pits.h"
#include "random_pit.h"
#include "support/base64.h"
#include "support/decimal.h"

namespace firn::tests {
namespace {

using exchange::Notices;

std::string content(const std::string& path) {
  std::ifstream file(FIRN_SOURCE_DIR "/tests/" + path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

std::uint64_t pits_to_try() {
  const char* wanted = std::getenv("FIRN_PITS");
  return wanted == nullptr ? 500 : std::strtoull(wanted, nullptr, 10);
}

void expect_round_trip(const Bytes& pit, unsigned indent) {
  Notices notices;
  const std::string text = json_of(pit, notices, indent);
  EXPECT_TRUE(notices.empty()) << notices.kept()[0].path << " " << notices.kept()[0].what;
  auto read = exchange::read_json(text, {}, notices);
  ASSERT_TRUE(read) << read.failure().path << " " << read.failure().what << "\n" << text;
  EXPECT_TRUE(notices.empty());
  EXPECT_EQ(read->root, exchange::Root::pit);
  ASSERT_EQ(pit_of(*read), pit) << text;
}

TEST(Json, DemoPitsComeBackToTheByte) {
  for (const auto& pit : {larch_bowl_entry(), tarn_shoulder()}) {
    const Bytes bytes = recording::to_bytes(*pit);
    expect_round_trip(bytes, 0);
    expect_round_trip(bytes, 2);
  }
}

TEST(Json, PlausiblePitsComeBackToTheByte) {
  for (std::uint64_t seed = 1; seed <= pits_to_try() && !testing::Test::HasFailure(); ++seed) {
    expect_round_trip(recording::to_bytes(*RandomPit(seed, Wild::plausible).pit()), 2);
  }
}

TEST(Json, PitsWithAnyNumberComeBackToTheByte) {
  for (std::uint64_t seed = 1; seed <= pits_to_try() && !testing::Test::HasFailure(); ++seed) {
    expect_round_trip(recording::to_bytes(*RandomPit(seed, Wild::any_number).pit()), 0);
  }
}

// Their bytes come in another order than the library's, so it is the text that must come back.
void expect_same_text(exchange::Root root, const std::uint8_t* bytes) {
  Notices notices;
  std::string text, again;
  exchange::write_json(text, root, *flatbuffers::GetRoot<flatbuffers::Table>(bytes), 1, notices);
  auto read = exchange::read_json(text, {}, notices);
  ASSERT_TRUE(read) << read.failure().path << " " << read.failure().what;
  EXPECT_EQ(read->root, root);
  exchange::write_json(again, root, *flatbuffers::GetRoot<flatbuffers::Table>(read->bytes.data()), 1,
                       notices);
  EXPECT_EQ(again, text);
  EXPECT_TRUE(notices.empty());
  EXPECT_GT(text.size(), 100u);
}

TEST(Json, ReportsAndBulletinsComeBack) {
  for (const char* name : {"larch-bowl-entry", "tarn-shoulder"}) {
    const std::string report = content(std::string("golden/") + name + ".report.firn");
    expect_same_text(exchange::Root::report, reinterpret_cast<const std::uint8_t*>(report.data()));
  }
  std::size_t bulletins = 0;
  for (const auto& entry : std::filesystem::directory_iterator(FIRN_SOURCE_DIR "/tests/bulletins")) {
    if (entry.path().extension() != ".json") continue;
    flatbuffers::FlatBufferBuilder builder;
    bulletin::Messages messages;
    if (!bulletin::read_json(content("bulletins/" + entry.path().filename().string()), builder, messages))
      continue;
    expect_same_text(exchange::Root::bulletins, builder.GetBufferPointer());
    ++bulletins;
  }
  EXPECT_GT(bulletins, 2u);
}

TEST(Json, ReadsAsPeopleWouldWriteIt) {
  const std::string text = R"({"pit": {
    "title": "Larch Bowl entry",
    "time": {"begin": "2026-11-26T11:20-07:00"},
    "layers": [{
      "top": {"value_10um": 0, "datum": "surface", "direction": "vertical"},
      "bottom": {"value_10um": 17000, "datum": "surface", "direction": "vertical"},
      "hardness_top": "4F+", "grain_form": "DF", "wetness": "D", "unreliable": ["hardness_top"]
    }],
    "remarks": [{"text": "sun came round", "about": {"thing": "layer", "index": 0, "field": "wetness"}}]
  }})";
  Notices notices;
  auto read = exchange::read_json(text, {}, notices);
  ASSERT_TRUE(read) << read.failure().path << " " << read.failure().what;
  EXPECT_TRUE(notices.empty());
  const auto& pit = *firnbook::GetPit(read->bytes.data());
  ASSERT_EQ(pit.layers()->size(), 1u);
  const auto& layer = *pit.layers()->Get(0);
  EXPECT_EQ(layer.bottom()->value_10um(), 17000);
  EXPECT_EQ(layer.bottom()->datum(), firnbook::Datum::surface);
  EXPECT_EQ(layer.hardness_top(), firnbook::HandHardness::FourFingerPlus);
  EXPECT_EQ(layer.grain_form(), firnbook::GrainForm::DF);
  EXPECT_EQ(layer.unreliable(), std::uint64_t{1} << field_id(firnbook::Layer::VT_HARDNESS_TOP));
  EXPECT_EQ(pit.time()->begin().precision(), firnbook::TimePrecision::minute);
  EXPECT_EQ(pit.time()->begin().offset_min(), -420);
  EXPECT_EQ(pit.time()->end().precision(), firnbook::TimePrecision::none);
  EXPECT_EQ(pit.remarks()->Get(0)->about()->field(), field_id(firnbook::Layer::VT_WETNESS));
  EXPECT_EQ(pit.remarks()->Get(0)->about()->sub(), -1);
}

TEST(Json, AbsentIsWrittenAsNothingAndNullIsReadAsAbsent) {
  Notices notices;
  EXPECT_EQ(json_of(recording::to_bytes(*std::make_unique<firnbook::PitT>()), notices, 0),
            "{\"pit\":{\"schema_minor\":1}}\n");
  auto read = exchange::read_json(R"({"pit": {"title": null, "reached_ground": null}})", {}, notices);
  ASSERT_TRUE(read);
  const auto& pit = *firnbook::GetPit(read->bytes.data());
  EXPECT_EQ(pit.title(), nullptr);
  EXPECT_FALSE(pit.reached_ground().has_value());
}

TEST(Json, MembersNobodyKnowsAreKeptAndTold) {
  Notices notices;
  auto read = exchange::read_json(
      "{\"made_by\": {\"x\": [1, {\"y\": \"}\"}]},\n \"pit\": {\"title\": \"a\",\n"
      "  \"site\": {\"a/b~c\": [ ], \"name\": \"b\"}}}",
      {}, notices);
  ASSERT_TRUE(read) << read.failure().what;
  ASSERT_EQ(read->unknown.size(), 2u);
  EXPECT_EQ(read->unknown[0].pointer, "/made_by");
  EXPECT_EQ(read->unknown[0].text, "{\"x\": [1, {\"y\": \"}\"}]}");
  EXPECT_EQ(read->unknown[1].pointer, "/pit/site/a~1b~0c");
  EXPECT_EQ(read->unknown[1].text, "[ ]");
  ASSERT_EQ(notices.kept().size(), 2u);
  EXPECT_EQ(notices.kept()[1].path, "site.a/b~c");
  EXPECT_EQ(notices.kept()[1].line, 3u);
  const auto& pit = *firnbook::GetPit(read->bytes.data());
  EXPECT_EQ(pit.site()->name()->str(), "b");
}

TEST(Json, TextsThatAreNotUtf8AreLeftOutWithANotice) {
  firnbook::PitT pit;
  pit.title = "caf\xE9";
  pit.id = "x";
  Notices notices;
  EXPECT_EQ(json_of(recording::to_bytes(pit), notices, 0), "{\"pit\":{\"schema_minor\":1,\"id\":\"x\"}}\n");
  ASSERT_EQ(notices.kept().size(), 1u);
  EXPECT_EQ(notices.kept()[0].path, "title");
  EXPECT_EQ(notices.kept()[0].kind, exchange::NoticeKind::left_out);
}

TEST(Json, FloatsAreShortAndComeBack) {
  struct Row {
    float value;
    const char* text;
  };
  const Row rows[] = {{0.1f, "0.1"},
                      {1.0f, "1"},
                      {-2.5f, "-2.5"},
                      {123456.7f, "123456.7"},
                      {1e-10f, "1e-10"},
                      {3e30f, "3e30"},
                      {16777216.0f, "16777216"},
                      {1.17549435e-38f, "1.1754944e-38"},
                      {3.40282347e38f, "3.4028235e38"},
                      {1.4e-45f, "1e-45"},
                      {0.00001f, "0.00001"}};
  for (const Row& row : rows) {
    std::string text;
    append_float(text, row.value);
    EXPECT_EQ(text, row.text);
  }
  std::uint32_t bits = 1;
  for (int i = 0; i < 200000; ++i) {
    bits = bits * 1664525u + 1013904223u;
    float value, back = 0;
    std::memcpy(&value, &bits, sizeof value);
    if (!(value - value == 0)) continue;
    std::string text;
    append_float(text, value);
    ASSERT_TRUE(parse_float(text, back)) << text;
    ASSERT_EQ(std::memcmp(&value, &back, sizeof value), 0) << text;
  }
}

// RFC 4648, section 10 (from memory).
TEST(Json, Base64HasTheVectorsOfItsStandard) {
  const std::pair<const char*, const char*> rows[] = {{"", ""},
                                                      {"f", "Zg=="},
                                                      {"fo", "Zm8="},
                                                      {"foo", "Zm9v"},
                                                      {"foob", "Zm9vYg=="},
                                                      {"fooba", "Zm9vYmE="},
                                                      {"foobar", "Zm9vYmFy"}};
  for (const auto& [plain, coded] : rows) {
    const std::string_view words(plain);
    std::string text;
    append_base64(text, reinterpret_cast<const std::uint8_t*>(words.data()), words.size());
    EXPECT_EQ(text, coded);
    std::vector<std::uint8_t> bytes;
    ASSERT_TRUE(parse_base64(coded, bytes));
    EXPECT_EQ(std::string(bytes.begin(), bytes.end()), plain);
  }
  for (const char* wrong : {"Z", "Zg=", "Zg", "Z===", "Zh==", "Zm9=", "Zg==Zg==", "Z!==", "=Zg="}) {
    std::vector<std::uint8_t> bytes;
    EXPECT_FALSE(parse_base64(wrong, bytes)) << wrong;
  }
}

TEST(Json, MomentsAreWrittenAsFarAsTheyAreKnown) {
  for (const char* text : {"2026", "2026-11", "2026-11-28", "2026-11-28T10:05", "2026-11-28T10:05:07",
                           "2026-11-28T10:05-07:00", "2026-02-28T23:59:59+05:45", "0000-01-01T00:00+00:00"}) {
    const auto moment = exchange::parse_moment(text);
    ASSERT_TRUE(moment) << text;
    std::string back;
    EXPECT_TRUE(exchange::append_moment(back, *moment));
    EXPECT_EQ(back, text);
  }
  for (const char* wrong : {"", "26", "2026-13", "2026-00", "2026-02-29", "2026-11-28T", "2026-11-28T24:00",
                            "2026-11-28T10:60", "2026-11-28T10:05-07", "2026-11-28 10:05",
                            "2026-11-28T10:05Zx", "2026-11-28T10:05+24:00", "2026/11/28", "2026-1-2"}) {
    EXPECT_FALSE(exchange::parse_moment(wrong)) << wrong;
  }
}

}  // namespace
}  // namespace firn::tests
