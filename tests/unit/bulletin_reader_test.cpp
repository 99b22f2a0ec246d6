// Bulletins as files have them: right, cut off, of another version, with wrong types, and made to harm.
#include "bulletin/json.h"
#include "bulletin_help.h"
#include "support/text.h"

namespace firn::tests {
namespace {

using firnbook::CompassPoint;
using firnbook::DangerLevel;
using firnbook::DayPeriod;
using firnbook::ProblemType;

std::string text_of(const flatbuffers::String* text) {
  return text == nullptr ? "" : text->str();
}

// A bulletin with nothing but this rating.
std::string with_rating(const std::string& rating) {
  return R"({"bulletins":[{"regions":[{"regionID":"XX-LW-01"}],"validTime":{"startTime":"2026-11-27T17:00:00Z",)"
         R"("endTime":"2026-11-28T17:00:00Z"},"dangerRatings":[)" +
         rating + "]}]}";
}

TEST(BulletinReader, TheInventedBulletinsReadWithoutAWord) {
  for (const std::string& name : bulletin_files()) {
    const ReadBulletin read(bulletin_file(name));
    ASSERT_TRUE(read.ok) << name << read.failure.what;
    if (name == "early_season") {
      EXPECT_EQ(read.count(), 0u);
      EXPECT_TRUE(read.tells("none is issued"));
    } else {
      EXPECT_EQ(read.told(), "") << name;
    }
  }
}

TEST(BulletinReader, KeepsEverythingThatAFileSays) {
  const ReadBulletin read(bulletin_file("storm"));
  ASSERT_TRUE(read.ok);
  ASSERT_EQ(read.count(), 2u);
  const firnbook::Bulletin& north = read.at(0);
  EXPECT_EQ(text_of(north.id()), "LW-2026-11-28-N");
  EXPECT_EQ(text_of(north.language()), "en");
  EXPECT_EQ(text_of(north.source()), "Larchwater Range Avalanche Service (invented)");
  EXPECT_EQ(text_of(north.highlights()), "New snow and wind.");
  ASSERT_NE(north.valid(), nullptr);
  EXPECT_EQ(north.valid()->end().local_s() - north.valid()->begin().local_s(), 86400);
  EXPECT_EQ(north.valid()->begin().offset_min(), -420);
  EXPECT_EQ(north.valid()->begin().offset_known(), 1);
  ASSERT_EQ(north.ratings()->size(), 2u);
  EXPECT_EQ(*north.ratings()->Get(0)->level(), DangerLevel::considerable);
  EXPECT_EQ(north.ratings()->Get(0)->scope()->lower()->metres(), 2000);
  EXPECT_EQ(north.ratings()->Get(0)->scope()->upper(), nullptr);
  ASSERT_EQ(north.problems()->size(), 2u);
  const firnbook::Problem& slab = *north.problems()->Get(1);
  EXPECT_EQ(*slab.type(), ProblemType::wind_slab);
  EXPECT_EQ(*slab.size_tenths(), 20);
  EXPECT_EQ(slab.scope()->aspects()->size(), 4u);
  EXPECT_EQ(static_cast<CompassPoint>(slab.scope()->aspects()->Get(3)), CompassPoint::SE);
  ASSERT_EQ(north.tendency()->size(), 1u);
  EXPECT_EQ(*north.tendency()->Get(0)->tendency(), firnbook::Tendency::steady);
  EXPECT_EQ(text_of(north.prose()->Get(0)->key()), "avalancheActivity");
  EXPECT_FALSE(north.incomplete());
  EXPECT_EQ(read.at(1).regions()->size(), 2u);
  ASSERT_EQ(read.root->extensions()->size(), 1u);
  EXPECT_EQ(text_of(read.root->extensions()->Get(0)->key()), "metaData");
}

TEST(BulletinReader, DataOfOthersAreKeptAsTheyStand) {
  const ReadBulletin read(bulletin_file("deep_layer"));
  ASSERT_TRUE(read.ok);
  const firnbook::Bulletin& one = read.at(0);
  std::string all;
  for (const auto* extension : *one.extensions()) {
    all +=
        extension->key()->str() + "=" +
        std::string(reinterpret_cast<const char*>(extension->bytes()->data()), extension->bytes()->size()) +
        "\n";
  }
  EXPECT_NE(all.find("regions[0].customData={"), std::string::npos) << all;
  EXPECT_NE(all.find("dangerRatings[0].customData={\n"), std::string::npos) << all;
  EXPECT_NE(all.find("\"trend\": \"up\"\n"), std::string::npos) << all;
  EXPECT_NE(("\n" + all).find("\ncustomData={"), std::string::npos) << all;
  EXPECT_NE(all.find("metaData={"), std::string::npos) << all;
  EXPECT_TRUE(one.problems()->Get(1)->scope()->lower()->treeline());
  EXPECT_EQ(text_of(one.prose()->Get(0)->comment()),
            "S\xC3\xBC"
            "df\xC3\xB6hn and 40 cm of new snow.");
  ASSERT_EQ(one.tendency()->size(), 2u);
}

TEST(BulletinReader, OneObjectAndABareListAreAsGood) {
  const std::string one =
      R"({"bulletinID":"a","regions":[{"regionID":"XX-LW-01"}],)"
      R"("validTime":{"startTime":"2026-11-27T17:00:00Z","endTime":"2026-11-28T17:00:00Z"},)"
      R"("dangerRatings":[{"mainValue":"high"}]})";
  for (const std::string& text :
       {one, "[" + one + "]", "{\"bulletins\":[" + one + "]}", "\xEF\xBB\xBF" + one}) {
    const ReadBulletin read(text);
    ASSERT_TRUE(read.ok) << text;
    EXPECT_EQ(read.told(), "") << text;
    ASSERT_EQ(read.count(), 1u);
    EXPECT_EQ(text_of(read.at(0).id()), "a");
    EXPECT_EQ(*read.at(0).ratings()->Get(0)->level(), DangerLevel::high);
  }
}

TEST(BulletinReader, WrongTypesAreToldWithTheirPlaceAndTheRestIsUsed) {
  const struct {
    std::string rating, told;
    bool unclear;
  } cases[] = {
      {R"({"mainValue":"extreme"})", "bulletins[0].dangerRatings[0].mainValue 1:", false},
      {R"({"mainValue":3})", "mainValue 1:", false},
      {R"({"mainValue":"high","elevation":"2000"})", "elevation 1:", true},
      {R"({"mainValue":"high","elevation":{"lowerBound":"about 2000"}})", "elevation.lowerBound 1:", true},
      {R"({"mainValue":"high","elevation":{"lowerBound":"20000"}})", "elevation.lowerBound 1:", true},
      {R"({"mainValue":"high","elevation":{"lowerBound":"-100"}})", "elevation.lowerBound 1:", true},
      {R"({"mainValue":"high","elevation":{"lowerBound":2000}})", "is a number where", false},
      {R"({"mainValue":"high","elevation":{"lowerBound":"1950"}})", "finer than", false},
      {R"({"mainValue":"high","elevation":{"lowerBound":"2500","upperBound":"2000"}})", "above its upper",
       true},
      {R"({"mainValue":"high","aspects":["N","NNE"]})", "aspects[1] 1:", true},
      {R"({"mainValue":"high","aspects":["N",7]})", "aspects[1] 1:", true},
      {R"({"mainValue":"high","aspects":{"N":true}})", "aspects 1:", true},
      {R"({"mainValue":"high","aspect":["N"]})", "aspect 1:", true},
      {R"({"mainValue":"high","validTimePeriod":"noon"})", "validTimePeriod 1:", true},
      {R"({"elevation":{"lowerBound":"2000"}})", "without a mainValue", false},
      {R"({"mainValue":"high","mainValue":"low"})", "stands here twice", false},
      {R"({"mainValue":"high","colour":"red"})", "colour 1:", false},
  };
  for (const auto& one : cases) {
    const ReadBulletin read(with_rating(one.rating + R"(,{"mainValue":"moderate"})"));
    ASSERT_TRUE(read.ok) << one.rating;
    EXPECT_TRUE(read.tells(one.told)) << one.rating << "\n" << read.told();
    ASSERT_EQ(read.at(0).ratings()->size(), 2u) << one.rating;
    const firnbook::DangerRating& rating = *read.at(0).ratings()->Get(0);
    const bool unclear = rating.scope() != nullptr && rating.scope()->unclear().value_or(0) != 0;
    EXPECT_EQ(unclear, one.unclear) << one.rating;
    EXPECT_EQ(*read.at(0).ratings()->Get(1)->level(), DangerLevel::moderate);
  }
  const ReadBulletin unknown(with_rating(R"({"mainValue":"extreme"})"));
  EXPECT_FALSE(unknown.at(0).ratings()->Get(0)->level());
  EXPECT_EQ(text_of(unknown.at(0).ratings()->Get(0)->level_as_written()), "extreme");
  EXPECT_TRUE(unknown.tells("\"extreme\" is none of the values"));
}

TEST(BulletinReader, APlaceIsALineAndAColumn) {
  const ReadBulletin read("{\"bulletins\":[\n  {\"dangerRatings\":[\n    {\"mainValue\": \"extreme\"}]}]}");
  ASSERT_TRUE(read.ok);
  EXPECT_TRUE(read.tells("bulletins[0].dangerRatings[0].mainValue 3:19 ")) << read.told();
}

TEST(BulletinReader, ValuesThatAreNotKnownAreKept) {
  const ReadBulletin read(
      R"({"avalancheProblems":[{"problemType":"ice_fall","avalancheSize":9,"frequency":"often"},)"
      R"({"problemType":"wet_snow","avalancheSize":"3"},{"problemType":"wet_snow","avalancheSize":2.5},)"
      R"({"problemType":"wet_snow","avalancheSize":1e999},{"problemType":"wet_snow","avalancheSize":5.5}]})");
  ASSERT_TRUE(read.ok) << read.failure.what;
  const auto& problems = *read.at(0).problems();
  ASSERT_EQ(problems.size(), 5u);
  EXPECT_FALSE(problems.Get(0)->type());
  EXPECT_EQ(text_of(problems.Get(0)->type_as_written()), "ice_fall");
  ASSERT_EQ(problems.Get(0)->scope()->not_understood()->size(), 2u);
  EXPECT_EQ(text_of(problems.Get(0)->scope()->not_understood()->Get(0)->value()), "often");
  EXPECT_EQ(text_of(problems.Get(0)->scope()->not_understood()->Get(1)->key()), "avalancheSize");
  EXPECT_EQ(problems.Get(1)->size_tenths().value_or(0), 30);
  EXPECT_EQ(problems.Get(2)->size_tenths().value_or(0), 25);
  EXPECT_FALSE(problems.Get(3)->size_tenths());
  EXPECT_FALSE(problems.Get(4)->size_tenths());
  EXPECT_TRUE(read.tells("far too large"));
}

TEST(BulletinReader, BadLettersDoNotCostABulletin) {
  const std::string pieces[] = {"\xFF\xFE", "\\ud800", "\\udc00x", "a\nb\tc", "\\ud83d\\ude00", "\xC0\x80"};
  for (const std::string& piece : pieces) {
    const ReadBulletin read(R"({"dangerRatings":[{"mainValue":"high"}],"highlights":")" + piece + "\"}");
    ASSERT_TRUE(read.ok) << piece;
    EXPECT_EQ(read.at(0).ratings()->size(), 1u);
    ASSERT_NE(read.at(0).highlights(), nullptr);
    EXPECT_TRUE(is_utf8(read.at(0).highlights()->str())) << piece;
    EXPECT_EQ(read.at(0).incomplete().value_or(false), false);
  }
  const ReadBulletin pair(R"({"dangerRatings":[{"mainValue":"high"}],"highlights":"\ud83d\ude00"})");
  EXPECT_EQ(text_of(pair.at(0).highlights()), "\xF0\x9F\x98\x80");
}

TEST(BulletinReader, WhatWasCutOffIsMarkedAndWhatCameBeforeIsUsed) {
  const std::string text = bulletin_file("storm");
  const std::size_t second = text.find("LW-2026-11-28-S");
  const ReadBulletin read(text.substr(0, text.find("\"moderate\"", second) + 4));
  ASSERT_TRUE(read.ok);
  ASSERT_EQ(read.count(), 2u);
  EXPECT_FALSE(read.at(0).incomplete());
  EXPECT_TRUE(read.at(1).incomplete().value_or(false));
  EXPECT_TRUE(read.root->incomplete().value_or(false));
  EXPECT_TRUE(read.tells("no closing quote") || read.tells("ends here")) << read.told();
  // A rating that broke off may have had limits that nobody read.
  const ReadBulletin rating(R"({"dangerRatings":[{"mainValue":"low", "asp)");
  ASSERT_TRUE(rating.ok);
  EXPECT_EQ(rating.at(0).ratings()->Get(0)->scope()->unclear().value_or(0), 7);
}

TEST(BulletinReader, RefusesWhatHoldsNoBulletin) {
  const struct {
    std::string text;
    firn_status status;
    const char* what;
  } cases[] = {
      {"", FIRN_NO_BULLETIN, "no value"},
      {"   ", FIRN_NO_BULLETIN, "no value"},
      {"<?xml version=\"1.0\"?><bulletins/>", FIRN_NO_BULLETIN, "XML"},
      {"{}", FIRN_NO_BULLETIN, "no bulletin"},
      {"[]", FIRN_NO_BULLETIN, "no bulletin"},
      {"null", FIRN_NO_BULLETIN, "no bulletin"},
      {"{\"bulletins\":[", FIRN_NO_BULLETIN, "ends here"},
      {"{\"bulletins\":3}", FIRN_NO_BULLETIN, "no bulletin"},
      {"{\"type\":\"FeatureCollection\"}", FIRN_NO_BULLETIN, "no bulletin"},
      {std::string("{\0\"\0", 4), FIRN_BAD_UTF8, "UTF-16"},
      {"\xFF\xFE{", FIRN_BAD_UTF8, "UTF-16"},
      {std::string(10000, '['), FIRN_NO_BULLETIN, "deeper"},
  };
  for (const auto& one : cases) {
    const ReadBulletin read(one.text);
    EXPECT_FALSE(read.ok) << one.text;
    EXPECT_EQ(read.failure.status, one.status) << one.text;
    EXPECT_NE(read.failure.what.find(one.what), std::string::npos) << one.text << ": " << read.failure.what;
    EXPECT_FALSE(read.failure.remedy.empty());
  }
  const ReadBulletin place("{\"bulletins\":[\n  ?");
  EXPECT_EQ(place.failure.line, 2u);
  EXPECT_EQ(place.failure.column, 3u);
}

TEST(BulletinReader, DepthAndNumberOfValuesHaveLimits) {
  const std::string deep(10000, '[');
  const ReadBulletin nested("{\"bulletins\":[{\"dangerRatings\":[{\"mainValue\":\"high\"}],\"customData\":" +
                            deep);
  ASSERT_TRUE(nested.ok);
  EXPECT_TRUE(nested.tells("nested deeper")) << nested.told();
  EXPECT_EQ(*nested.at(0).ratings()->Get(0)->level(), DangerLevel::high);
  EXPECT_TRUE(nested.at(0).incomplete().value_or(false));
  std::string many = "{\"dangerRatings\":[{\"mainValue\":\"high\"}],\"customData\":[";
  for (std::size_t i = 0; i < bulletin::Json::kMostNodes; ++i) many += "1,";
  const ReadBulletin wide(many + "1]}");
  ASSERT_TRUE(wide.ok);
  EXPECT_TRUE(wide.tells("more values"));
  EXPECT_TRUE(wide.at(0).incomplete().value_or(false));
}

TEST(BulletinReader, FiftyMegabytesAreReadOrRefusedInTime) {
  const std::string prose(50u << 20, 'x');
  const ReadBulletin read("{\"dangerRatings\":[{\"mainValue\":\"high\"}],\"highlights\":\"" + prose + "\"}");
  ASSERT_TRUE(read.ok);
  EXPECT_EQ(read.at(0).highlights()->size(), prose.size());
  const std::string blanks = "{" + std::string(50u << 20, ' ');
  EXPECT_FALSE(ReadBulletin(blanks).ok);
  std::string keys = "{\"dangerRatings\":[{";
  for (int i = 0; i < 200000; ++i) keys += "\"a\":\"b\",";
  const ReadBulletin unknown(keys + "\"mainValue\":\"high\"}]}");
  ASSERT_TRUE(unknown.ok);
  EXPECT_GT(unknown.messages.left_out, 0u);
  EXPECT_LE(unknown.messages.list.size(), bulletin::Messages::kMost);
}

TEST(BulletinReader, EveryTruncationIsToldAndNoneCrashes) {
  for (const std::string& name : bulletin_files()) {
    const std::string text = bulletin_file(name);
    const std::size_t last = text.rfind('}');
    std::size_t most = 0;
    for (std::size_t size = 0; size <= last; ++size) {
      // A copy of exactly this size, so that reading beyond it is noticed.
      const std::vector<char> cut(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(size));
      const ReadBulletin read(std::string_view(cut.data(), cut.size()));
      if (!read.ok) {
        EXPECT_FALSE(read.failure.what.empty());
        continue;
      }
      EXPECT_TRUE(read.root->incomplete().value_or(false)) << name << ' ' << size;
      EXPECT_GE(read.count(), most > 0 ? most : 0) << "what was read does not go away again";
      most = read.count();
    }
  }
}

TEST(BulletinReader, EveryByteFlippedIsReadOrRefused) {
  std::size_t read_all_the_same = 0, told = 0;
  for (const std::string& name : {std::string("wet"), std::string("deep_layer")}) {
    const std::string whole = bulletin_file(name);
    std::string text = whole;
    for (std::size_t at = 0; at < text.size(); ++at) {
      for (const int flip : {0x01, 0x20, 0x80, 0xFF}) {
        text[at] = static_cast<char>(static_cast<unsigned char>(whole[at]) ^ flip);
        const ReadBulletin read(text);
        read_all_the_same += read.ok ? 1u : 0u;
        told += !read.ok || !read.messages.list.empty() ? 1u : 0u;
      }
      text[at] = whole[at];
    }
  }
  EXPECT_GT(read_all_the_same, 1000u);
  EXPECT_GT(told, 1000u);
}

TEST(BulletinReader, TimesAsStandardsAndFilesHaveThem) {
  const struct {
    const char* text;
    bool ok;
    std::int64_t local_s;
    int offset_min;
    int offset_known;
  } cases[] = {
      {"2022-03-02T16:00:00.002869Z", true, 1646236800, 0, 1},
      {"2026-11-28T16:00:00+01:00", true, seconds_of({2026, 11, 28, 16, 0, 0}), 60, 1},
      {"2026-11-28T16:00-0730", true, seconds_of({2026, 11, 28, 16, 0, 0}), -450, 1},
      {"2026-11-28t16:00:00z", true, seconds_of({2026, 11, 28, 16, 0, 0}), 0, 1},
      {"2026-11-28T16:00:00", true, seconds_of({2026, 11, 28, 16, 0, 0}), 0, 0},
      {"2026-11-28T24:00:00Z", true, seconds_of({2026, 11, 29, 0, 0, 0}), 0, 1},
      {"2026-11-28", true, seconds_of({2026, 11, 28, 0, 0, 0}), 0, 0},
      {"2026-02-29T00:00:00Z", false, 0, 0, 0},
      {"2026-11-28T24:01:00Z", false, 0, 0, 0},
      {"2026-11-28T16:60:00Z", false, 0, 0, 0},
      {"2026-11-28T16:00:00+25:00", false, 0, 0, 0},
      {"2026-11-28T16:00:00Zx", false, 0, 0, 0},
      {"28.11.2026", false, 0, 0, 0},
      {"", false, 0, 0, 0},
  };
  for (const auto& one : cases) {
    firnbook::Moment moment = {};
    EXPECT_EQ(bulletin::read_time(one.text, moment), one.ok) << one.text;
    if (!one.ok) continue;
    EXPECT_EQ(moment.local_s(), one.local_s) << one.text;
    EXPECT_EQ(moment.offset_min(), one.offset_min) << one.text;
    EXPECT_EQ(moment.offset_known(), one.offset_known) << one.text;
  }
}

TEST(BulletinVerify, ForeignBytesAreCheckedInLinearTime) {
  const ReadBulletin read(bulletin_file("storm"));
  const std::string good = read.bytes();
  pit::AlignedBytes aligned;
  for (std::size_t size = 0; size < good.size(); ++size) {
    const std::vector<std::uint8_t> cut(good.begin(), good.begin() + static_cast<std::ptrdiff_t>(size));
    EXPECT_FALSE(bulletin::verify(cut.data(), size, {}, aligned) && size + 8 < good.size());
  }
  std::size_t refused = 0;
  std::vector<std::uint8_t> flipped(good.begin(), good.end());
  for (std::size_t at = 0; at < flipped.size(); ++at) {
    for (const int flip : {0x01, 0x80, 0xFF}) {
      flipped[at] = static_cast<std::uint8_t>(flipped[at] ^ flip);
      const auto verified = bulletin::verify(flipped.data(), flipped.size(), {}, aligned);
      refused += verified ? 0u : 1u;
      flipped[at] = static_cast<std::uint8_t>(flipped[at] ^ flip);
    }
  }
  EXPECT_GT(refused, 100u);
  EXPECT_EQ(bulletin::verify(nullptr, 9, {}, aligned).failure().status, FIRN_NULL_ARGUMENT);
}

// One list of values that are not known, which every problem shares: its tables count each time.
TEST(BulletinVerify, SharedListsAreRefusedInsteadOfReadForHours) {
  flatbuffers::FlatBufferBuilder builder;
  const auto value = builder.CreateString("shared");
  firnbook::NotUnderstoodBuilder one(builder);
  one.add_value(value);
  const std::vector<flatbuffers::Offset<firnbook::NotUnderstood>> values(100000, one.Finish());
  const auto list = builder.CreateVector(values);
  firnbook::ScopeBuilder scope(builder);
  scope.add_not_understood(list);
  const auto shared = scope.Finish();
  firnbook::ProblemBuilder problem(builder);
  problem.add_scope(shared);
  const std::vector<flatbuffers::Offset<firnbook::Problem>> problems(100000, problem.Finish());
  const auto all = builder.CreateVector(problems);
  firnbook::BulletinBuilder bulletin(builder);
  bulletin.add_problems(all);
  const auto made = bulletin.Finish();
  const auto bulletins = builder.CreateVector(&made, 1);
  firnbook::BulletinsBuilder root(builder);
  root.add_bulletins(bulletins);
  firnbook::FinishBulletinsBuffer(builder, root.Finish());
  pit::AlignedBytes aligned;
  const auto verified = bulletin::verify(builder.GetBufferPointer(), builder.GetSize(), {}, aligned);
  ASSERT_FALSE(verified);
  EXPECT_EQ(verified.failure().status, FIRN_DAMAGED);
}

}  // namespace
}  // namespace firn::tests
