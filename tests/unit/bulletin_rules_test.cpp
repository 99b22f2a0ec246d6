// The rules of the comparison, each at its limits, and what must hold for every pit.
#include <memory>
#include <random>

#include "bulletin/compare.h"
#include "bulletin_help.h"
#include "interpretation_help.h"
#include "support/text.h"

namespace firn::tests {
namespace {

using bulletin::Comparison;
using bulletin::PitPlace;
using bulletin::Validity;
using firnbook::BulletinMatch;
using firnbook::CompassPoint;
using firnbook::Crossing;
using firnbook::EvidenceKind;
using firnbook::ProblemAnswer;
using firnbook::ProblemKind;
using firnbook::SignKind;
using firnbook::SpeakLimit;
using firnbook::Within;

// Bulletins as JSON, so that what is tested is what a file would give.
std::string bulletin_json(const std::string& ratings, const std::string& problems,
                          const std::string& regions = R"({"regionID":"XX-LW-01","name":"Larchwater North"})",
                          const std::string& start = "2026-11-27T17:00:00-07:00",
                          const std::string& end = "2026-11-28T17:00:00-07:00",
                          const std::string& more = "") {
  return R"({"regions":[)" + regions + R"(],"validTime":{"startTime":")" + start + R"(","endTime":")" + end +
         R"("},"dangerRatings":[)" + ratings + R"(],"avalancheProblems":[)" + problems + "]" + more + "}";
}
std::string problem(const std::string& type, const std::string& more = "") {
  return R"({"problemType":")" + type + "\"" + more + "}";
}

constexpr const char* kRating = R"({"mainValue":"considerable"})";

// 2080 m, northeast, in the middle of the day for which the bulletins hold.
std::unique_ptr<PitT> pit_on(CompassPoint point = CompassPoint::NE, std::int32_t elevation_m = 2080) {
  auto pit = std::make_unique<PitT>();
  pit->time = std::make_unique<firnbook::TimeSpan>(instant(local_time(2026, 11, 28, 10, 5, -420)));
  pit->site = std::make_unique<firnbook::SiteT>();
  pit->site->elevation_10um = metres(elevation_m);
  pit->site->aspect_point = point;
  pit->site->slope_deg = std::uint8_t{31};
  pit->snowpack = std::make_unique<firnbook::SnowpackT>();
  pit->snowpack->hs_10um = cm(120);
  return pit;
}

// Hard rounded snow down to the ground: no problem in it.
void rounded_snow(PitT& pit, std::int32_t from) {
  add_layer(pit, from, cm(120), HandHardness::Pencil, GrainForm::RG, 50);
}

class Beside {
 public:
  Beside(const PitT& pit, const std::string& json, bulletin::Question question = {}) : read(pit), file(json) {
    EXPECT_TRUE(read.ok);
    EXPECT_TRUE(file.ok) << file.failure.what;
    comparison = bulletin::compare(read.view, read.analysis, *file.root, question);
    bulletin::add_cautions(read.view, comparison, read.analysis);
  }

  ProblemAnswer answer(std::size_t problem = 0) const { return comparison.problems.at(problem).answer(); }
  SpeakLimit limit(std::size_t problem = 0) const { return comparison.problems.at(problem).limit(); }
  bool unlisted(ProblemKind kind) const {
    for (const auto& one : comparison.unlisted) {
      if (one.kind() == kind) return true;
    }
    return false;
  }
  const firnbook::Caution* caution(CautionKey key) const { return read.caution(key); }

  Read read;
  ReadBulletin file;
  Comparison comparison;
};

ProblemAnswer answer_of(const PitT& pit, const std::string& type) {
  return Beside(pit, bulletin_json(kRating, problem(type))).answer();
}
SpeakLimit limit_of(const PitT& pit, const std::string& type) {
  return Beside(pit, bulletin_json(kRating, problem(type))).limit();
}

// Where a pit at this elevation and aspect lies to one rating.
Within elevation_of(const PitT& pit, const std::string& elevation, std::int32_t treeline_m = 0) {
  const Beside day(pit, bulletin_json(kRating, problem("wet_snow", ",\"elevation\":" + elevation)),
                   {{}, treeline_m, 0});
  return day.comparison.problems.at(0).elevation();
}
Within aspects_of(const PitT& pit, const std::string& aspects) {
  const Beside day(pit, bulletin_json(kRating, problem("wet_snow", ",\"aspects\":" + aspects)));
  return day.comparison.problems.at(0).aspects();
}

TEST(BulletinPlace, ElevationExactlyAtABoundLiesInside) {
  const std::string above = R"({"lowerBound":"2000"})", below = R"({"upperBound":"2000"})";
  auto pit = pit_on();
  pit->site->elevation_10um = metres(2000);
  EXPECT_EQ(elevation_of(*pit, above), Within::inside);
  EXPECT_EQ(elevation_of(*pit, below), Within::inside);
  pit->site->elevation_10um = metres(2000) - 1;
  EXPECT_EQ(elevation_of(*pit, above), Within::outside);
  EXPECT_EQ(elevation_of(*pit, below), Within::inside);
  pit->site->elevation_10um = metres(2000) + 1;
  EXPECT_EQ(elevation_of(*pit, above), Within::inside);
  EXPECT_EQ(elevation_of(*pit, below), Within::outside);
  const std::string band = R"({"lowerBound":"1900","upperBound":"2600"})";
  for (const int inside : {1900, 2000, 2600}) {
    pit->site->elevation_10um = metres(inside);
    EXPECT_EQ(elevation_of(*pit, band), Within::inside);
  }
  for (const int outside : {1899, 2601}) {
    pit->site->elevation_10um = metres(outside);
    EXPECT_EQ(elevation_of(*pit, band), Within::outside);
  }
}

TEST(BulletinPlace, WhatIsNotKnownIsNeverOutside) {
  const std::string above = R"({"lowerBound":"2500"})";
  auto pit = pit_on();
  EXPECT_EQ(elevation_of(*pit, above), Within::outside);
  pit->site->unreliable = 1u << field_id(firnbook::Site::VT_ELEVATION_10UM);
  EXPECT_EQ(elevation_of(*pit, above), Within::unknown);
  pit->site->unreliable = 0;
  pit->site->elevation_10um = flatbuffers::nullopt;
  EXPECT_EQ(elevation_of(*pit, above), Within::unknown);
  EXPECT_EQ(elevation_of(*pit, "{}"), Within::inside) << "no limit, nothing to know";
  pit->site.reset();
  EXPECT_EQ(elevation_of(*pit, above), Within::unknown);
  EXPECT_EQ(aspects_of(*pit, R"(["N"])"), Within::unknown);
  EXPECT_EQ(elevation_of(*pit_on(), R"({"lowerBound":"high up"})"), Within::unknown);
}

TEST(BulletinPlace, TheTreelineIsKnownOnlyWhereSomebodySaysIt) {
  const std::string above = R"({"lowerBound":"treeline"})", below = R"({"upperBound":"treeline"})";
  const auto pit = pit_on();
  EXPECT_EQ(elevation_of(*pit, above), Within::unknown);
  EXPECT_EQ(elevation_of(*pit, above, 2080), Within::inside);
  EXPECT_EQ(elevation_of(*pit, below, 2080), Within::inside);
  EXPECT_EQ(elevation_of(*pit, above, 2081), Within::outside);
  EXPECT_EQ(elevation_of(*pit, below, 2079), Within::outside);
  // The other bound is told in metres and settles it.
  EXPECT_EQ(elevation_of(*pit, R"({"lowerBound":"treeline","upperBound":"2000"})"), Within::outside);
  EXPECT_EQ(elevation_of(*pit, R"({"lowerBound":"treeline","upperBound":"2200"})"), Within::unknown);
  const Beside day(*pit, bulletin_json(kRating, problem("wet_snow", ",\"elevation\":" + above)));
  EXPECT_NE(day.caution(CautionKey::bulletin_treeline_unknown), nullptr);
}

TEST(BulletinPlace, AspectsAtTheEdgesOfTheirSectors) {
  auto pit = pit_on();
  pit->site->aspect_point = flatbuffers::nullopt;
  const struct {
    std::uint16_t degrees;
    const char* sector;
  } cases[] = {{0, "N"},    {22, "N"},   {23, "NE"},  {67, "NE"},  {68, "E"},   {112, "E"},
               {113, "SE"}, {157, "SE"}, {158, "S"},  {202, "S"},  {203, "SW"}, {247, "SW"},
               {248, "W"},  {292, "W"},  {293, "NW"}, {337, "NW"}, {338, "N"},  {360, "N"}};
  const std::vector<std::string> all = {"N", "NE", "E", "SE", "S", "SW", "W", "NW"};
  for (const auto& one : cases) {
    pit->site->aspect_deg = one.degrees;
    for (const std::string& sector : all) {
      EXPECT_EQ(aspects_of(*pit, "[\"" + sector + "\"]"),
                sector == one.sector ? Within::inside : Within::outside)
          << one.degrees << ' ' << sector;
    }
  }
  pit->site->aspect_deg = std::uint16_t{361};
  EXPECT_EQ(aspects_of(*pit, R"(["N"])"), Within::unknown);
  // The point and its sector.
  for (std::size_t i = 0; i < all.size(); ++i) {
    const auto facing = pit_on(static_cast<CompassPoint>(i + 1));
    EXPECT_EQ(aspects_of(*facing, "[\"" + all[i] + "\"]"), Within::inside);
    EXPECT_EQ(aspects_of(*facing, "[\"" + all[(i + 1) % 8] + "\"]"), Within::outside);
  }
}

TEST(BulletinPlace, EveryAspectNoAspectAndFlatGround) {
  const auto pit = pit_on();
  EXPECT_EQ(aspects_of(*pit, "[]"), Within::inside);
  EXPECT_EQ(aspects_of(*pit, R"(["n/a"])"), Within::inside);
  EXPECT_EQ(aspects_of(*pit, R"(["S","SSW"])"), Within::unknown) << "the unknown one may be the pit's";
  EXPECT_EQ(aspects_of(*pit, R"(["NE","SSW"])"), Within::inside);
  const std::string all = R"(["N","NE","E","SE","S","SW","W","NW"])";
  auto nowhere = pit_on();
  nowhere->site->aspect_point = flatbuffers::nullopt;
  EXPECT_EQ(aspects_of(*nowhere, all), Within::inside);
  EXPECT_EQ(aspects_of(*nowhere, R"(["N"])"), Within::unknown);
  const auto flat = pit_on(CompassPoint::none);
  EXPECT_EQ(aspects_of(*flat, R"(["N"])"), Within::unknown);
  EXPECT_EQ(aspects_of(*flat, R"(["N","n/a"])"), Within::inside);
  auto level = pit_on();
  level->site->slope_deg = std::uint8_t{0};
  EXPECT_EQ(aspects_of(*level, R"(["S"])"), Within::unknown);
}

Validity validity(const PitT& pit, const std::string& start, const std::string& end) {
  const Read read(pit);
  firnbook::Moment begin = {}, until = {};
  EXPECT_EQ(bulletin::read_time(start, begin), !start.empty());
  EXPECT_EQ(bulletin::read_time(end, until), !end.empty());
  const firnbook::TimeSpan valid = {begin, until};
  return bulletin::validity_of(&valid, bulletin::place_of_pit(read.view)).validity;
}

TEST(BulletinTime, ValidUntilExactly) {
  const auto pit = pit_on();  // 10:05-07:00, 17:05Z
  EXPECT_EQ(validity(*pit, "2026-11-28T17:05:00Z", "2026-11-29T17:00:00Z"), Validity::holds);
  EXPECT_EQ(validity(*pit, "2026-11-28T17:05:01Z", "2026-11-29T17:00:00Z"), Validity::not_yet);
  EXPECT_EQ(validity(*pit, "2026-11-27T17:00:00Z", "2026-11-28T17:05:00Z"), Validity::holds);
  EXPECT_EQ(validity(*pit, "2026-11-27T17:00:00Z", "2026-11-28T17:04:59Z"), Validity::expired);
  EXPECT_EQ(validity(*pit, "2026-11-27T17:00:00-07:00", "2026-11-28T10:05:00-07:00"), Validity::holds);
  // One end that nobody named.
  EXPECT_EQ(validity(*pit, "2026-11-27T17:00:00Z", ""), Validity::unknown);
  EXPECT_EQ(validity(*pit, "", "2026-11-29T17:00:00Z"), Validity::unknown);
  EXPECT_EQ(validity(*pit, "", "2026-11-28T17:04:59Z"), Validity::expired);
  EXPECT_EQ(validity(*pit, "2026-11-28T17:05:01Z", ""), Validity::not_yet);
}

TEST(BulletinTime, ClocksThatAreNotKnown) {
  auto pit = pit_on();
  // The bulletin's clock is not known: it holds only where it would in every time zone.
  EXPECT_EQ(validity(*pit, "2026-11-27T17:00:00", "2026-11-28T17:00:00"), Validity::unknown);
  EXPECT_EQ(validity(*pit, "2026-11-26T00:00:00", "2026-11-30T00:00:00"), Validity::holds);
  EXPECT_EQ(validity(*pit, "2026-11-24T17:00:00", "2026-11-25T17:00:00"), Validity::expired);
  // Neither is: both clocks hang on one wall.
  pit->time = std::make_unique<firnbook::TimeSpan>(
      instant({seconds_of({2026, 11, 28, 10, 0, 0}), 0, firnbook::TimePrecision::minute, 0}));
  EXPECT_EQ(validity(*pit, "2026-11-27T17:00:00", "2026-11-28T10:00:00"), Validity::holds);
  EXPECT_EQ(validity(*pit, "2026-11-27T17:00:00", "2026-11-28T09:59:59"), Validity::expired);
  // A day without an hour lies wholly inside, or nobody knows.
  pit->time = std::make_unique<firnbook::TimeSpan>(instant(date(2026, 11, 28)));
  EXPECT_EQ(validity(*pit, "2026-11-28T00:00:00", "2026-11-28T23:59:59"), Validity::holds);
  EXPECT_EQ(validity(*pit, "2026-11-27T17:00:00", "2026-11-28T17:00:00"), Validity::unknown);
  pit->time.reset();
  EXPECT_EQ(validity(*pit, "2026-11-27T17:00:00Z", "2026-11-28T17:00:00Z"), Validity::unknown);
}

TEST(BulletinChoice, RegionThenTime) {
  const std::string north = R"({"regionID":"XX-LW-01","name":"Larchwater North"})";
  const std::string south = R"({"regionID":"XX-LW-02","name":"Larchwater South"})";
  const auto one = [](const std::string& region, int day, const char* id) {
    const std::string from = "2026-11-" + std::to_string(day) + "T17:00:00-07:00";
    const std::string to = "2026-11-" + std::to_string(day + 1) + "T17:00:00-07:00";
    return bulletin_json(kRating, "", region, from, to, R"(,"bulletinID":")" + std::string(id) + "\"");
  };
  const std::string file = "{\"bulletins\":[" + one(south, 27, "s27") + "," + one(north, 26, "n26") + "," +
                           one(north, 27, "n27") + "," + one(north, 28, "n28") + "]}";
  auto pit = pit_on();
  const auto choose = [&](std::string_view region) { return Beside(*pit, file, {region, 0, 0}); };
  EXPECT_EQ(choose("XX-LW-01").comparison.choice.bulletin, 2);
  EXPECT_EQ(choose("Larchwater South").comparison.choice.bulletin, 0);
  EXPECT_EQ(choose("XX-LW-03").comparison.choice.match, BulletinMatch::other_region);
  EXPECT_EQ(choose("xx-lw-01").comparison.choice.match, BulletinMatch::other_region);
  EXPECT_EQ(choose("").comparison.choice.match, BulletinMatch::region_unknown);
  // The name of the country around counts only when the bulletin knows it.
  pit->site->region = "Larchwater Range";
  EXPECT_EQ(choose("").comparison.choice.match, BulletinMatch::region_unknown);
  pit->site->region = "Larchwater South";
  EXPECT_EQ(choose("").comparison.choice.bulletin, 0);
  pit->bulletin = std::make_unique<firnbook::BulletinSeenT>();
  pit->bulletin->region = "XX-LW-01";
  EXPECT_EQ(choose("").comparison.choice.bulletin, 2);
  EXPECT_EQ(choose("XX-LW-02").comparison.choice.bulletin, 0) << "whoever asks knows best";
  pit->bulletin->region = "elsewhere";
  EXPECT_EQ(choose("").comparison.choice.match, BulletinMatch::other_region);
  pit->bulletin.reset();
  // The nearest in time where none holds.
  pit->time = std::make_unique<firnbook::TimeSpan>(instant(local_time(2026, 12, 1, 10, 0, -420)));
  const Beside late = choose("XX-LW-01");
  EXPECT_EQ(late.comparison.choice.match, BulletinMatch::expired);
  EXPECT_EQ(late.comparison.choice.bulletin, 3);
  ASSERT_NE(late.caution(CautionKey::bulletin_expired), nullptr);
  EXPECT_EQ(late.caution(CautionKey::bulletin_expired)->a(), 41);
  pit->time = std::make_unique<firnbook::TimeSpan>(instant(local_time(2026, 11, 20, 10, 0, -420)));
  const Beside early = choose("XX-LW-01");
  EXPECT_EQ(early.comparison.choice.match, BulletinMatch::not_yet_valid);
  EXPECT_EQ(early.comparison.choice.bulletin, 1);
  pit->time.reset();
  EXPECT_EQ(choose("XX-LW-01").comparison.choice.match, BulletinMatch::time_unknown);
}

TEST(BulletinChoice, StatesOfTheirOwn) {
  auto pit = pit_on();
  const Beside none(*pit, R"({"bulletins":[]})");
  EXPECT_EQ(none.comparison.choice.match, BulletinMatch::none_issued);
  EXPECT_NE(none.caution(CautionKey::bulletin_none_issued), nullptr);
  EXPECT_NE(none.caution(CautionKey::bulletin_not_looked_at), nullptr) << "an empty list answers nothing";
  const Beside only(*pit, bulletin_json(kRating, ""));
  EXPECT_EQ(only.comparison.choice.region_from, firnbook::RegionFrom::only_one);
  EXPECT_NE(only.caution(CautionKey::bulletin_region_assumed), nullptr);
  EXPECT_EQ(only.caution(CautionKey::bulletin_not_looked_at), nullptr);
  const Beside nowhere(*pit, bulletin_json(kRating, "", ""));
  EXPECT_EQ(nowhere.comparison.choice.match, BulletinMatch::region_unknown);
  const std::string text = bulletin_json(kRating, problem("wind_slab"));
  const Beside broken(*pit, text.substr(0, text.size() - 4));
  EXPECT_NE(broken.caution(CautionKey::bulletin_incomplete), nullptr);
}

TEST(BulletinRatings, AllThatCoverThePitTheHighestFirst) {
  const auto pit = pit_on();
  const Beside day(*pit, bulletin_json(R"({"mainValue":"low","validTimePeriod":"earlier"},)"
                                       R"({"mainValue":"moderate"},)"
                                       R"({"mainValue":"high","elevation":{"lowerBound":"treeline"}},)"
                                       R"({"mainValue":"very_high","aspects":["S"]},)"
                                       R"({"mainValue":"no_rating"},)"
                                       R"({"mainValue":"very_high","elevation":{"lowerBound":"2100"}},)"
                                       R"({"mainValue":"extreme"})",
                                       ""));
  std::vector<int> levels;
  for (const auto& one : day.comparison.ratings) levels.push_back(one.level());
  EXPECT_EQ(levels, (std::vector<int>{0, 4, 2, 1, 12}));
  EXPECT_EQ(day.comparison.ratings[1].covers(), Within::unknown);
  EXPECT_EQ(day.comparison.ratings[2].covers(), Within::inside);
  EXPECT_EQ(day.comparison.ratings[3].period(), Within::unknown) << "no standard says when earlier ends";
  EXPECT_NE(day.caution(CautionKey::bulletin_not_understood), nullptr);
  const Beside gap(*pit, bulletin_json(R"({"mainValue":"low","aspects":["S"]})", ""));
  EXPECT_TRUE(gap.comparison.ratings.empty());
  EXPECT_NE(gap.caution(CautionKey::bulletin_no_rating_covers), nullptr);
}

// Nothing a pit holds changes a rating: the same place gives the same ratings, whatever is in the snow.
TEST(BulletinRatings, NothingInThePitChangesOne) {
  const std::string json = bulletin_file("deep_layer");
  const auto bare = pit_on();
  auto full = pit_on();
  add_layer(*full, 0, cm(30), HandHardness::FourFinger, GrainForm::RG, 50);
  add_layer(*full, cm(30), cm(120), HandHardness::Fist, GrainForm::FC, 200);
  add_extended_column(*full, 11, Crossing::crossed, cm(30));
  const Beside one(*bare, json), other(*full, json);
  ASSERT_EQ(one.comparison.ratings.size(), other.comparison.ratings.size());
  for (std::size_t i = 0; i < one.comparison.ratings.size(); ++i) {
    EXPECT_EQ(one.comparison.ratings[i].rating(), other.comparison.ratings[i].rating());
    EXPECT_EQ(one.comparison.ratings[i].level(), other.comparison.ratings[i].level());
  }
}

// 0-30 slab, 30-31 the layer in question, rounded snow to the ground.
std::unique_ptr<PitT> weak_layer(GrainForm form, GrainForm slab = GrainForm::RG,
                                 HandHardness slab_hardness = HandHardness::OneFinger) {
  auto pit = pit_on();
  add_layer(*pit, 0, cm(30), slab_hardness, slab, 50);
  add_layer(*pit, cm(30), cm(31), HandHardness::Fist, form, 200);
  rounded_snow(*pit, cm(31));
  return pit;
}

TEST(BulletinPersistent, ShownByABuriedPersistentLayerOfConcern) {
  const std::string type = "persistent_weak_layers";
  for (const GrainForm form :
       {GrainForm::SH, GrainForm::FC, GrainForm::DH, GrainForm::FCxr, GrainForm::DHch}) {
    auto pit = weak_layer(form);
    add_compression_test(*pit, 12, FractureCharacter::SP, cm(30));
    const Beside day(*pit, bulletin_json(kRating, problem(type)));
    EXPECT_EQ(day.answer(), ProblemAnswer::shown) << firnbook::EnumNameGrainForm(form);
    ASSERT_GT(day.comparison.problems[0].evidence_count(), 0);
    EXPECT_EQ(day.comparison.evidence.at(0).kind(), EvidenceKind::concern);
    EXPECT_EQ(day.comparison.evidence.at(0).index(), 0);
  }
  // Structure alone is a concern as well.
  EXPECT_EQ(answer_of(*weak_layer(GrainForm::SH), type), ProblemAnswer::shown);
  for (const GrainForm form : {GrainForm::RG, GrainForm::DF, GrainForm::MF}) {
    auto pit = weak_layer(form);
    add_compression_test(*pit, 12, FractureCharacter::SP, cm(30));
    EXPECT_NE(answer_of(*pit, type), ProblemAnswer::shown) << firnbook::EnumNameGrainForm(form);
  }
  // A break that is not planar says little either way.
  auto crumbled = pit_on();
  add_layer(*crumbled, 0, cm(20), HandHardness::Fist, GrainForm::PP);
  rounded_snow(*crumbled, cm(20));
  add_compression_test(*crumbled, 5, FractureCharacter::BRK, cm(20));
  EXPECT_EQ(answer_of(*crumbled, type), ProblemAnswer::not_shown);
  EXPECT_EQ(answer_of(*crumbled, "new_snow"), ProblemAnswer::not_shown);
}

TEST(BulletinPersistent, SurfaceHoarOnTopIsNotBuriedYet) {
  auto pit = pit_on();
  add_layer(*pit, 0, cm(1), HandHardness::Fist, GrainForm::SH, 600);
  rounded_snow(*pit, cm(1));
  EXPECT_EQ(answer_of(*pit, "persistent_weak_layers"), ProblemAnswer::not_shown);
}

TEST(BulletinPersistent, WhumpfsSpeakOfItWhereSuchALayerLies) {
  // Facets too hard and too fine to be a concern, and a whumpf.
  const auto build = [](GrainForm form) {
    auto pit = pit_on();
    add_layer(*pit, 0, cm(90), HandHardness::Pencil, GrainForm::RG, 50);
    add_layer(*pit, cm(90), cm(120), HandHardness::Pencil, form, 50);
    add_sign(*pit, SignKind::whumpf, firnbook::Answer::yes);
    return pit;
  };
  const Beside shown(*build(GrainForm::FC), bulletin_json(kRating, problem("persistent_weak_layers")));
  EXPECT_EQ(shown.answer(), ProblemAnswer::shown);
  EXPECT_EQ(answer_of(*build(GrainForm::RG), "persistent_weak_layers"), ProblemAnswer::not_shown);
  auto no_answer = build(GrainForm::FC);
  no_answer->signs[0]->answer = firnbook::Answer::no;
  EXPECT_EQ(limit_of(*no_answer, "persistent_weak_layers"), SpeakLimit::not_tested);
}

TEST(BulletinPersistent, WhatKeepsAPitFromSpeaking) {
  const std::string type = "persistent_weak_layers";
  auto pit = pit_on();
  EXPECT_EQ(limit_of(*pit, type), SpeakLimit::no_layers);
  rounded_snow(*pit, 0);
  EXPECT_EQ(limit_of(*pit, type), SpeakLimit::none);
  EXPECT_EQ(answer_of(*pit, type), ProblemAnswer::not_shown);
  pit->reached_ground = false;
  EXPECT_EQ(limit_of(*pit, type), SpeakLimit::not_to_the_ground);
  pit->reached_ground = true;
  pit->snowpack->hs_10um = cm(200);
  EXPECT_EQ(limit_of(*pit, type), SpeakLimit::none);
  pit->reached_ground = flatbuffers::nullopt;
  EXPECT_EQ(limit_of(*pit, type), SpeakLimit::not_to_the_ground);
  pit->snowpack->hs_10um = cm(120);
  EXPECT_EQ(limit_of(*pit, type), SpeakLimit::none) << "the profile ends exactly at the ground";
  pit->layers[0]->grain_form = flatbuffers::nullopt;
  EXPECT_EQ(limit_of(*pit, type), SpeakLimit::grains_not_recorded);
  pit->layers[0]->candidates = {GrainForm::RG, GrainForm::FC};
  EXPECT_EQ(limit_of(*pit, type), SpeakLimit::grains_not_recorded) << "it may be facets";
  pit->layers[0]->candidates = {GrainForm::RG, GrainForm::DF};
  EXPECT_EQ(limit_of(*pit, type), SpeakLimit::none);
  // Hard facets that no test reached; a column of a metre reaches them when they begin at a metre.
  auto facets = pit_on();
  add_layer(*facets, 0, cm(100), HandHardness::Pencil, GrainForm::RG, 50);
  add_layer(*facets, cm(100), cm(120), HandHardness::Pencil, GrainForm::FC, 50);
  EXPECT_EQ(limit_of(*facets, type), SpeakLimit::not_tested);
  auto& test = add_test(*facets, TestKind::CT);
  test.outcome = firnbook::TestOutcome::no_fracture;
  EXPECT_EQ(limit_of(*facets, type), SpeakLimit::none);
  EXPECT_EQ(answer_of(*facets, type), ProblemAnswer::not_shown);
  test.column_depth_10um = cm(100) - 1;
  EXPECT_EQ(limit_of(*facets, type), SpeakLimit::not_tested);
  test.column_depth_10um = cm(100);
  test.outcome = firnbook::TestOutcome::not_valid;
  EXPECT_EQ(limit_of(*facets, type), SpeakLimit::not_tested);
}

TEST(BulletinNewSnow, ShownByWhatBreaksInItOrAtItsBase) {
  const auto build = [](std::int32_t broke_at) {
    auto pit = pit_on();
    add_layer(*pit, 0, cm(20), HandHardness::Fist, GrainForm::PP, 100);
    add_layer(*pit, cm(20), cm(40), HandHardness::FourFinger, GrainForm::DF, 100);
    rounded_snow(*pit, cm(40));
    add_compression_test(*pit, 8, FractureCharacter::SP, broke_at);
    return pit;
  };
  EXPECT_EQ(answer_of(*build(cm(20)), "new_snow"), ProblemAnswer::shown);
  EXPECT_EQ(answer_of(*build(cm(40)), "new_snow"), ProblemAnswer::shown) << "at its base";
  EXPECT_EQ(answer_of(*build(cm(80)), "new_snow"), ProblemAnswer::not_shown) << "far below it";
  // No new snow: nothing of it to be seen.
  auto old_snow = pit_on();
  rounded_snow(*old_snow, 0);
  EXPECT_EQ(answer_of(*old_snow, "new_snow"), ProblemAnswer::not_shown);
  // New snow that nobody tested, or only down to above its base.
  auto untested = pit_on();
  add_layer(*untested, 0, cm(40), HandHardness::FourFinger, GrainForm::DF, 50);
  rounded_snow(*untested, cm(40));
  EXPECT_EQ(limit_of(*untested, "new_snow"), SpeakLimit::not_tested);
  auto& test = add_test(*untested, TestKind::ECT);
  test.outcome = firnbook::TestOutcome::no_fracture;
  test.column_depth_10um = cm(40);
  EXPECT_EQ(answer_of(*untested, "new_snow"), ProblemAnswer::not_shown);
  test.column_depth_10um = cm(40) - 1;
  EXPECT_EQ(limit_of(*untested, "new_snow"), SpeakLimit::not_tested);
  auto unknown = pit_on();
  add_layer(*unknown, 0, cm(40)).hardness = HandHardness::Fist;
  rounded_snow(*unknown, cm(40));
  EXPECT_EQ(limit_of(*unknown, "new_snow"), SpeakLimit::grains_not_recorded);
  EXPECT_EQ(limit_of(*pit_on(), "new_snow"), SpeakLimit::no_layers);
  // Cracking speaks of it where it lies.
  add_sign(*untested, SignKind::cracking, firnbook::Answer::yes);
  EXPECT_EQ(answer_of(*untested, "new_snow"), ProblemAnswer::shown);
  add_sign(*old_snow, SignKind::heavy_precipitation, firnbook::Answer::yes);
  EXPECT_EQ(answer_of(*old_snow, "new_snow"), ProblemAnswer::not_shown) << "it may have rained";
}

TEST(BulletinWindSlab, ShownByAConcernUnderASlabThatWindMade) {
  const auto build = [](GrainForm slab, HandHardness hardness,
                        HandHardness below = HandHardness::FourFinger) {
    auto pit = pit_on();
    add_layer(*pit, 0, cm(30), hardness, slab, 30);
    add_layer(*pit, cm(30), cm(60), below, GrainForm::DF, 50);
    rounded_snow(*pit, cm(60));
    add_compression_test(*pit, 8, FractureCharacter::SP, cm(30));
    return pit;
  };
  EXPECT_EQ(answer_of(*build(GrainForm::RGwp, HandHardness::FourFinger), "wind_slab"), ProblemAnswer::shown);
  EXPECT_EQ(answer_of(*build(GrainForm::DFbk, HandHardness::Fist), "wind_slab"), ProblemAnswer::shown);
  EXPECT_EQ(answer_of(*build(GrainForm::RG, HandHardness::FourFingerPlus), "wind_slab"),
            ProblemAnswer::shown);
  EXPECT_NE(answer_of(*build(GrainForm::RG, HandHardness::FourFinger), "wind_slab"), ProblemAnswer::shown)
      << "as hard as what it lies on";
  EXPECT_NE(answer_of(*build(GrainForm::DF, HandHardness::OneFinger), "wind_slab"), ProblemAnswer::shown)
      << "snow that fell";
  auto unknown = build(GrainForm::RG, HandHardness::OneFinger);
  unknown->layers[1]->hardness = flatbuffers::nullopt;
  EXPECT_EQ(limit_of(*unknown, "wind_slab"), SpeakLimit::hardness_not_recorded);
  // Under a crust it is an old layer, whatever made it.
  auto old_slab = pit_on();
  add_layer(*old_slab, 0, cm(2), HandHardness::Knife, GrainForm::MFcr);
  add_layer(*old_slab, cm(2), cm(30), HandHardness::OneFinger, GrainForm::RGwp, 30);
  add_layer(*old_slab, cm(30), cm(120), HandHardness::FourFinger, GrainForm::DF, 50);
  add_compression_test(*old_slab, 8, FractureCharacter::SP, cm(30));
  EXPECT_EQ(answer_of(*old_slab, "wind_slab"), ProblemAnswer::not_shown);
  add_sign(*old_slab, SignKind::wind_loading, firnbook::Answer::yes);
  EXPECT_EQ(answer_of(*old_slab, "wind_slab"), ProblemAnswer::shown) << "somebody saw the wind load slopes";
  // Surface hoar on top of the slab changes nothing.
  auto hoar = pit_on();
  add_layer(*hoar, 0, cm(1), HandHardness::Fist, GrainForm::SH, 300);
  add_layer(*hoar, cm(1), cm(30), HandHardness::OneFinger, GrainForm::RGwp, 30);
  rounded_snow(*hoar, cm(30));
  EXPECT_EQ(limit_of(*hoar, "wind_slab"), SpeakLimit::not_tested);
}

TEST(BulletinWetSnow, WetIsWhereWaterIsSeen) {
  auto pit = pit_on();
  rounded_snow(*pit, 0);
  EXPECT_EQ(limit_of(*pit, "wet_snow"), SpeakLimit::wetness_not_recorded);
  for (const auto& [wetness, shown] :
       {std::pair(firnbook::Wetness::D, false), std::pair(firnbook::Wetness::M, false),
        std::pair(firnbook::Wetness::M_W, false), std::pair(firnbook::Wetness::W, true),
        std::pair(firnbook::Wetness::S, true)}) {
    pit->layers[0]->wetness = wetness;
    EXPECT_EQ(answer_of(*pit, "wet_snow"), shown ? ProblemAnswer::shown : ProblemAnswer::not_shown);
  }
  pit->layers[0]->wetness = firnbook::Wetness::D;
  pit->layers[0]->unreliable = 1u << field_id(firnbook::Layer::VT_WETNESS);
  EXPECT_EQ(limit_of(*pit, "wet_snow"), SpeakLimit::wetness_not_recorded);
  pit->layers[0]->wetness = flatbuffers::nullopt;
  pit->layers[0]->unreliable = 0;
  add_temperature(*pit, 0, -500);
  EXPECT_EQ(limit_of(*pit, "wet_snow"), SpeakLimit::wetness_not_recorded) << "one reading is not throughout";
  add_temperature(*pit, cm(100), -1);
  EXPECT_EQ(answer_of(*pit, "wet_snow"), ProblemAnswer::not_shown);
  add_temperature(*pit, cm(110), 0);
  EXPECT_EQ(limit_of(*pit, "wet_snow"), SpeakLimit::wetness_not_recorded);
  auto slush = pit_on();
  add_layer(*slush, 0, cm(120), HandHardness::Fist, GrainForm::MFsl);
  EXPECT_EQ(answer_of(*slush, "wet_snow"), ProblemAnswer::shown);
  auto balls = pit_on();
  add_sign(*balls, SignKind::pinwheels, firnbook::Answer::yes);
  EXPECT_EQ(answer_of(*balls, "wet_snow"), ProblemAnswer::shown);
}

TEST(BulletinSeenFromAfar, GlidingSnowAndCornices) {
  auto pit = pit_on();
  rounded_snow(*pit, 0);
  for (const char* type : {"gliding_snow", "cornices"}) {
    EXPECT_EQ(answer_of(*pit, type), ProblemAnswer::cannot_speak);
    EXPECT_EQ(limit_of(*pit, type), SpeakLimit::not_seen_in_a_pit);
  }
  const auto with_slide = [](firnbook::SlideKind kind, firnbook::Trigger trigger, CompassPoint faces) {
    auto out = pit_on();
    out->slides.push_back(std::make_unique<firnbook::SlideT>());
    out->slides[0]->kind = kind;
    out->slides[0]->trigger = trigger;
    if (faces != CompassPoint::none) out->slides[0]->aspect_point = faces;
    return out;
  };
  using firnbook::SlideKind;
  using firnbook::Trigger;
  EXPECT_EQ(answer_of(*with_slide(SlideKind::glide, Trigger::natural, CompassPoint::none), "gliding_snow"),
            ProblemAnswer::shown);
  EXPECT_EQ(answer_of(*with_slide(SlideKind::glide, Trigger::natural, CompassPoint::NE), "gliding_snow"),
            ProblemAnswer::shown);
  EXPECT_EQ(answer_of(*with_slide(SlideKind::glide, Trigger::natural, CompassPoint::S), "gliding_snow"),
            ProblemAnswer::cannot_speak)
      << "it slid elsewhere";
  EXPECT_EQ(answer_of(*with_slide(SlideKind::slab, Trigger::cornice, CompassPoint::NE), "cornices"),
            ProblemAnswer::shown);
  EXPECT_EQ(answer_of(*with_slide(SlideKind::cornice, Trigger::natural, CompassPoint::NE), "cornices"),
            ProblemAnswer::shown);
}

TEST(BulletinProblems, TypesThatNameNothingOrAreNotKnown) {
  auto pit = weak_layer(GrainForm::SH);
  for (const char* type : {"favourable_situation", "no_distinct_avalanche_problem"}) {
    const Beside day(*pit, bulletin_json(R"({"mainValue":"low"})", problem(type)));
    EXPECT_EQ(day.answer(), ProblemAnswer::cannot_speak);
    EXPECT_EQ(day.limit(), SpeakLimit::nothing_to_look_for);
    EXPECT_TRUE(day.unlisted(ProblemKind::persistent_weak_layers));
  }
  EXPECT_EQ(limit_of(*pit, "ice_fall"), SpeakLimit::type_unknown);
}

TEST(BulletinProblems, TheNineTypesOfTheConceptualModelMapOneWay) {
  using firnbook::ProblemType;
  const std::pair<ProblemType, ProblemKind> types[] = {
      {ProblemType::dry_loose, ProblemKind::new_snow},
      {ProblemType::wet_loose, ProblemKind::wet_snow},
      {ProblemType::storm_slab, ProblemKind::new_snow},
      {ProblemType::model_wind_slab, ProblemKind::wind_slab},
      {ProblemType::persistent_slab, ProblemKind::persistent_weak_layers},
      {ProblemType::deep_persistent_slab, ProblemKind::persistent_weak_layers},
      {ProblemType::wet_slab, ProblemKind::wet_snow},
      {ProblemType::glide, ProblemKind::gliding_snow},
      {ProblemType::cornice, ProblemKind::cornices}};
  for (const auto& [type, kind] : types) EXPECT_EQ(bulletin::kind_of(static_cast<std::uint8_t>(type)), kind);
  for (const int other : {0, 9, 20, 30, 255})
    EXPECT_EQ(bulletin::kind_of(static_cast<std::uint8_t>(other)), ProblemKind::none);
}

TEST(BulletinProblems, OutsideUnknownAndUnlisted) {
  auto pit = weak_layer(GrainForm::SH, GrainForm::MF);
  const std::string south = problem("persistent_weak_layers", R"(,"aspects":["S","SW"])");
  const Beside outside(*pit, bulletin_json(kRating, south));
  EXPECT_EQ(outside.answer(), ProblemAnswer::outside);
  EXPECT_EQ(outside.comparison.problems[0].evidence_count(), 0);
  ASSERT_EQ(outside.comparison.unlisted.size(), 1u);
  EXPECT_EQ(outside.comparison.unlisted[0].listed_elsewhere(), 1);
  EXPECT_NE(outside.caution(CautionKey::bulletin_outside_every_problem), nullptr);
  EXPECT_NE(outside.caution(CautionKey::bulletin_unlisted), nullptr);
  pit->site->aspect_point = flatbuffers::nullopt;
  const Beside unknown(*pit, bulletin_json(kRating, south));
  EXPECT_EQ(unknown.answer(), ProblemAnswer::shown_place_unknown);
  EXPECT_TRUE(unknown.comparison.unlisted.empty()) << "it may be listed for this place";
  ASSERT_NE(unknown.caution(CautionKey::bulletin_place_unknown), nullptr);
  EXPECT_EQ(unknown.caution(CautionKey::bulletin_place_unknown)->a(), 2);
  // A slab of rounded snow on it is no news of wind when the layer under it is listed; packed snow is.
  const std::string listed = bulletin_json(kRating, problem("persistent_weak_layers"));
  EXPECT_FALSE(Beside(*weak_layer(GrainForm::SH), listed).unlisted(ProblemKind::wind_slab));
  EXPECT_TRUE(Beside(*weak_layer(GrainForm::SH, GrainForm::RGwp), listed).unlisted(ProblemKind::wind_slab));
  EXPECT_EQ(answer_of(*weak_layer(GrainForm::SH), "wind_slab"), ProblemAnswer::shown);
  // What breaks and fits no kind is told as well.
  auto odd = pit_on();
  add_layer(*odd, 0, cm(30), HandHardness::Pencil, GrainForm::MF, 100);
  add_layer(*odd, cm(30), cm(120), HandHardness::Pencil, GrainForm::MF, 100);
  add_compression_test(*odd, 22, FractureCharacter::SP, cm(30));
  const Beside fits_none(*odd, bulletin_json(kRating, problem("wind_slab")));
  EXPECT_TRUE(fits_none.unlisted(ProblemKind::none));
}

TEST(BulletinProblems, NotShownAlwaysComesWithWhatOnePitCannotDo) {
  auto pit = pit_on();
  rounded_snow(*pit, 0);
  const Beside day(*pit,
                   bulletin_json(kRating, problem("persistent_weak_layers") + "," + problem("new_snow")));
  EXPECT_EQ(day.answer(0), ProblemAnswer::not_shown);
  EXPECT_EQ(day.answer(1), ProblemAnswer::not_shown);
  ASSERT_NE(day.caution(CautionKey::bulletin_problem_not_shown), nullptr);
  EXPECT_EQ(day.caution(CautionKey::bulletin_problem_not_shown)->a(), 2);
}

TEST(BulletinCautions, TheStateComesBehindWhatWeighsMoreAndTheRestBeforeWhatHoldsForEveryPit) {
  auto pit = pit_on();
  add_sign(*pit, SignKind::whumpf, firnbook::Answer::yes);
  pit->practice = true;
  const Beside day(*pit, bulletin_json(kRating, problem("persistent_weak_layers", R"(,"aspects":["S"])")));
  const auto& cautions = day.read.analysis.cautions;
  ASSERT_GT(cautions.size(), 4u);
  EXPECT_EQ(cautions[0].key(), CautionKey::sign_of_instability_seen);
  EXPECT_EQ(cautions[1].key(), CautionKey::practice_pit);
  EXPECT_EQ(cautions[2].key(), CautionKey::bulletin_outside_every_problem);
  bool standing = false;
  for (const auto& one : cautions) {
    standing = standing || one.specific() == 0;
    EXPECT_EQ(one.specific() == 0, standing) << "all that is particular to this pit comes first";
  }
}

// Pits of all kinds, some of them nonsense.
std::unique_ptr<PitT> random_pit(std::mt19937& random) {
  const auto below = [&](std::uint32_t limit) { return static_cast<std::int32_t>(random() % limit); };
  auto pit = pit_on(static_cast<CompassPoint>(1 + below(8)), 1000 + below(2000));
  const GrainForm forms[] = {GrainForm::PP, GrainForm::DF, GrainForm::DFbk, GrainForm::RG, GrainForm::RGwp,
                             GrainForm::FC, GrainForm::DH, GrainForm::SH,   GrainForm::MF, GrainForm::MFcr};
  const HandHardness hardness[] = {HandHardness::Fist, HandHardness::FourFinger, HandHardness::OneFinger,
                                   HandHardness::Pencil};
  std::int32_t top = 0;
  for (int i = below(7); i > 0; --i) {
    const std::int32_t bottom = top + cm(1 + below(30));
    auto& layer = add_layer(*pit, top, bottom, hardness[below(4)], forms[below(10)], 20 + below(400));
    if (below(4) == 0) layer.wetness = static_cast<firnbook::Wetness>(2 + below(8));
    top = bottom;
  }
  for (int i = below(4); i > 0; --i) {
    if (below(2) == 0) {
      add_compression_test(*pit, static_cast<std::uint8_t>(1 + below(30)),
                           static_cast<FractureCharacter>(1 + below(5)),
                           below(static_cast<std::uint32_t>(top + 1)));
    } else {
      add_extended_column(*pit, static_cast<std::uint8_t>(1 + below(30)), static_cast<Crossing>(1 + below(2)),
                          below(static_cast<std::uint32_t>(top + 1)));
    }
  }
  for (int i = below(3); i > 0; --i)
    add_sign(*pit, static_cast<SignKind>(1 + below(10)), static_cast<firnbook::Answer>(1 + below(3)));
  if (below(3) == 0) {
    pit->slides.push_back(std::make_unique<firnbook::SlideT>());
    pit->slides[0]->kind = static_cast<firnbook::SlideKind>(1 + below(5));
  }
  return pit;
}

constexpr const char* kTypes[] = {"new_snow", "wind_slab",    "persistent_weak_layers",
                                  "wet_snow", "gliding_snow", "cornices"};

TEST(BulletinProperty, APitOutsideAProblemsAspectsNeverShowsIt) {
  std::mt19937 random(4);
  std::size_t shown = 0, unlisted = 0;
  for (int round = 0; round < 3000; ++round) {
    const auto pit = random_pit(random);
    // A problem for some aspects; then the pit is turned out of them.
    std::string inside, aspects;
    const auto own = static_cast<std::size_t>(*pit->site->aspect_point) - 1;
    const std::string names[] = {"N", "NE", "E", "SE", "S", "SW", "W", "NW"};
    for (std::size_t i = 0; i < 8; ++i) {
      if (i == own || random() % 2 == 0) inside += (inside.empty() ? "\"" : ",\"") + names[i] + "\"";
      if (i != own && (aspects.empty() || random() % 2 == 0))
        aspects += (aspects.empty() ? "\"" : ",\"") + names[i] + "\"";
    }
    std::string all_inside, all_outside;
    for (const char* type : kTypes) {
      all_inside += (all_inside.empty() ? "" : ",") + problem(type, ",\"aspects\":[" + inside + "]");
      all_outside += (all_outside.empty() ? "" : ",") + problem(type, ",\"aspects\":[" + aspects + "]");
    }
    const Beside here(*pit, bulletin_json(kRating, all_inside));
    const Beside there(*pit, bulletin_json(kRating, all_outside));
    for (std::size_t i = 0; i < std::size(kTypes); ++i) {
      EXPECT_EQ(there.answer(i), ProblemAnswer::outside) << kTypes[i];
      EXPECT_EQ(there.comparison.problems[i].evidence_count(), 0);
      EXPECT_NE(here.answer(i), ProblemAnswer::outside);
      // What it shows does not go away: it is told as not listed for this place.
      const bool is_shown = here.answer(i) == ProblemAnswer::shown;
      EXPECT_EQ(is_shown, there.unlisted(static_cast<ProblemKind>(i + 1))) << kTypes[i];
      shown += is_shown ? 1u : 0u;
      unlisted += there.unlisted(static_cast<ProblemKind>(i + 1)) ? 1u : 0u;
    }
  }
  EXPECT_GT(shown, 1000u) << "the pits must hold something for this to mean anything";
  EXPECT_EQ(shown, unlisted);
}

// A bulletin adds to what is said about a pit; of what was said before, only "no bulletin lies beside it"
// goes.
TEST(BulletinProperty, NoConcernFindingOrOtherCautionGoesAway) {
  std::mt19937 random(44);
  for (int round = 0; round < 300; ++round) {
    const auto pit = random_pit(random);
    const Read alone(*pit);
    const Beside day(*pit, bulletin_file(bulletin_files()[random() % 6]), {"XX-LW-01", 2000, 0});
    EXPECT_EQ(day.read.analysis.concerns.size(), alone.analysis.concerns.size());
    EXPECT_EQ(day.read.analysis.findings.size(), alone.analysis.findings.size());
    for (const auto& caution : alone.analysis.cautions) {
      if (caution.key() == CautionKey::bulletin_not_looked_at) continue;
      EXPECT_NE(day.caution(caution.key()), nullptr) << static_cast<int>(caution.key());
    }
  }
}

// Only "shown" or "not shown" where the pit lies inside; evidence positions always hold.
TEST(BulletinProperty, EvidenceIsThere) {
  std::mt19937 random(444);
  std::string problems;
  for (const char* type : kTypes) problems += (problems.empty() ? "" : ",") + problem(type);
  for (int round = 0; round < 500; ++round) {
    const auto pit = random_pit(random);
    const Beside day(*pit, bulletin_json(kRating, problems));
    for (const auto& one : day.comparison.problems) {
      const bool is_shown = one.answer() == ProblemAnswer::shown;
      EXPECT_EQ(is_shown, one.evidence_count() > 0);
      EXPECT_EQ(one.limit() != SpeakLimit::none, one.answer() == ProblemAnswer::cannot_speak);
      EXPECT_LE(static_cast<std::size_t>(one.first_evidence() + one.evidence_count()),
                day.comparison.evidence.size());
    }
    for (const auto& one : day.comparison.evidence) {
      const std::size_t limit = one.kind() == EvidenceKind::concern   ? day.read.analysis.concerns.size()
                                : one.kind() == EvidenceKind::finding ? day.read.analysis.findings.size()
                                                                      : pit->layers.size();
      EXPECT_GE(one.index(), 0);
      EXPECT_LT(static_cast<std::size_t>(one.index()), limit);
    }
  }
}

}  // namespace
}  // namespace firn::tests
