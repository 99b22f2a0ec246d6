// Bulletins through the C API: read, typed, held beside a pit, read back from the report, printed in the
// note.
#include <cstring>

#include "support.h"

namespace {

using capi::Buffer;
using capi::bytes_of;
using capi::Context;

std::string file(const std::string& name) {
  return capi::read_file(std::string(FIRN_SOURCE_DIR) + "/tests/bulletins/" + name + ".json");
}

std::string bulletin_of(firn_context* context, const std::string& json) {
  Buffer out(context), messages(context);
  firn_error error = FIRN_INIT(firn_error);
  EXPECT_EQ(firn_bulletin_read(context, json.data(), json.size(), out.out(), messages.out(), &error), FIRN_OK)
      << error.what;
  return out.text();
}

// A pit held beside a bulletin, and the report opened.
struct Beside {
  Context context;
  std::string pit, bulletin, report;
  firn_report* opened = nullptr;
  firn_bulletin_comparison comparison = FIRN_INIT(firn_bulletin_comparison);

  Beside(const std::string& notes, const std::string& json, const char* region = nullptr,
         std::int32_t treeline_m = 0)
      : pit(capi::pit_of(context, notes)), bulletin(bulletin_of(context, json)) {
    hold(region, treeline_m);
  }
  ~Beside() { firn_report_close(opened); }
  Beside(const Beside&) = delete;
  Beside& operator=(const Beside&) = delete;

  void hold(const char* region, std::int32_t treeline_m) {
    firn_interpret_options options = FIRN_INIT(firn_interpret_options);
    options.bulletin = bytes_of(bulletin);
    options.bulletin_size = bulletin.size();
    options.region = region;
    options.treeline_m = treeline_m;
    Buffer out(context);
    firn_error error = FIRN_INIT(firn_error);
    ASSERT_EQ(firn_interpret(context, bytes_of(pit), pit.size(), &options, out.out(), &error), FIRN_OK)
        << error.what;
    report = out.text();
    ASSERT_EQ(firn_report_open(context, bytes_of(report), report.size(), &opened, nullptr), FIRN_OK);
    ASSERT_EQ(firn_report_bulletin(opened, &comparison, nullptr), FIRN_OK);
  }

  firn_problem_match problem(std::uint32_t position) const {
    firn_problem_match out = FIRN_INIT(firn_problem_match);
    EXPECT_EQ(firn_report_bulletin_problem(opened, position, &out, nullptr), FIRN_OK);
    return out;
  }
  firn_rating_match rating(std::uint32_t position) const {
    firn_rating_match out = FIRN_INIT(firn_rating_match);
    EXPECT_EQ(firn_report_bulletin_rating(opened, position, &out, nullptr), FIRN_OK);
    return out;
  }
  bool has_caution(std::uint16_t key) const {
    firn_report_summary summary = FIRN_INIT(firn_report_summary);
    EXPECT_EQ(firn_report_summarise(opened, &summary, nullptr), FIRN_OK);
    for (std::uint32_t i = 0; i < summary.caution_count; ++i) {
      firn_caution caution = FIRN_INIT(firn_caution);
      EXPECT_EQ(firn_report_caution(opened, i, &caution, nullptr), FIRN_OK);
      if (caution.key == key) return true;
    }
    return false;
  }
  std::string note() {
    Buffer text(context);
    EXPECT_EQ(firn_note_write(context, bytes_of(pit), pit.size(), bytes_of(report), report.size(), text.out(),
                              nullptr),
              FIRN_OK);
    return text.text();
  }
};

TEST(Bulletin, ThePitShowsTheWindSlabAndWhatTheBulletinDoesNotList) {
  Beside day(capi::demo_notes("larch-bowl-entry"), file("storm"), "XX-LW-01");
  EXPECT_EQ(day.comparison.match, FIRN_BULLETIN_MATCH_MATCHES);
  EXPECT_EQ(day.comparison.region_from, FIRN_REGION_FROM_CALLER);
  EXPECT_STREQ(day.comparison.region_name, "Larchwater North");
  EXPECT_STREQ(day.comparison.highlights, "New snow and wind.");
  ASSERT_EQ(day.comparison.rating_count, 1u);
  EXPECT_EQ(day.rating(0).level, FIRN_DANGER_LEVEL_CONSIDERABLE);
  EXPECT_EQ(day.rating(0).covers, FIRN_WITHIN_INSIDE);
  ASSERT_EQ(day.comparison.problem_count, 2u);
  EXPECT_EQ(day.problem(1).type, FIRN_PROBLEM_TYPE_WIND_SLAB);
  EXPECT_EQ(day.problem(1).answer, FIRN_PROBLEM_ANSWER_SHOWN);
  ASSERT_GT(day.problem(1).evidence_count, 0u);
  firn_bulletin_evidence evidence = FIRN_INIT(firn_bulletin_evidence);
  ASSERT_EQ(firn_report_bulletin_evidence(day.opened, day.problem(1).first_evidence, &evidence, nullptr),
            FIRN_OK);
  EXPECT_EQ(evidence.kind, FIRN_EVIDENCE_KIND_CONCERN);
  EXPECT_EQ(evidence.index, 0);
  ASSERT_EQ(day.comparison.unlisted_count, 1u);
  firn_unlisted unlisted = FIRN_INIT(firn_unlisted);
  ASSERT_EQ(firn_report_bulletin_unlisted(day.opened, 0, &unlisted, nullptr), FIRN_OK);
  EXPECT_EQ(unlisted.kind, FIRN_PROBLEM_KIND_PERSISTENT_WEAK_LAYERS);
  EXPECT_EQ(unlisted.listed_elsewhere, 0);
  EXPECT_TRUE(day.has_caution(FIRN_CAUTION_KEY_BULLETIN_UNLISTED));
  // The record says that none was issued; one was given.
  EXPECT_TRUE(day.has_caution(FIRN_CAUTION_KEY_BULLETIN_CONTRADICTS_RECORD));
  EXPECT_FALSE(day.has_caution(FIRN_CAUTION_KEY_NO_BULLETIN));
  const std::string note = day.note();
  for (const char* part :
       {"THE REGION'S BULLETIN", "The region's rating for this elevation and aspect: considerable (3)",
        "! Wind slab, size 2: the pit shows it: concern 1 (17 cm)", "worth telling the warning service"}) {
    EXPECT_NE(note.find(part), std::string::npos) << part << "\n" << note;
  }
}

TEST(Bulletin, WithoutABulletinTheReportKeepsItsBytes) {
  Context context;
  for (const std::string& demo : capi::demos()) {
    const std::string pit = capi::pit_of(context, capi::demo_notes(demo));
    const std::string plain = capi::report_of(context, pit);
    // As a program that was built before bulletins asks.
    firn_interpret_options options = FIRN_INIT(firn_interpret_options);
    options.struct_size = 8;
    options.bulletin = bytes_of(pit);
    Buffer out(context);
    ASSERT_EQ(firn_interpret(context, bytes_of(pit), pit.size(), &options, out.out(), nullptr), FIRN_OK);
    EXPECT_EQ(out.text(), plain);
    firn_report* opened = nullptr;
    ASSERT_EQ(firn_report_open(context, bytes_of(plain), plain.size(), &opened, nullptr), FIRN_OK);
    firn_bulletin_comparison none = FIRN_INIT(firn_bulletin_comparison);
    ASSERT_EQ(firn_report_bulletin(opened, &none, nullptr), FIRN_OK);
    EXPECT_EQ(none.match, FIRN_BULLETIN_MATCH_NONE);
    EXPECT_EQ(none.bulletin, -1);
    EXPECT_EQ(none.region_id, nullptr);
    firn_rating_match rating = FIRN_INIT(firn_rating_match);
    EXPECT_EQ(firn_report_bulletin_rating(opened, 0, &rating, nullptr), FIRN_BAD_ARGUMENT);
    firn_report_close(opened);
  }
}

TEST(Bulletin, StatesComeFirst) {
  const std::string notes = capi::demo_notes("larch-bowl-entry");
  const struct {
    const char* file;
    const char* region;
    int match;
    const char* said;
  } cases[] = {
      {"storm", "XX-LW-09", FIRN_BULLETIN_MATCH_OTHER_REGION, "another region"},
      {"storm", nullptr, FIRN_BULLETIN_MATCH_REGION_UNKNOWN, "nobody said in which one"},
      {"early_season", nullptr, FIRN_BULLETIN_MATCH_NONE_ISSUED, "No bulletin is issued"},
      {"wet", nullptr, FIRN_BULLETIN_MATCH_MATCHES, "lies beside this pit"},
  };
  for (const auto& one : cases) {
    Beside day(notes, file(one.file), one.region);
    EXPECT_EQ(day.comparison.match, one.match) << one.file;
    const std::string note = day.note();
    const std::size_t heading = note.find("THE REGION'S BULLETIN");
    ASSERT_NE(heading, std::string::npos);
    const std::string first = note.substr(note.find('\n', heading) + 1, 200);
    EXPECT_NE(first.find(one.said), std::string::npos) << one.file << ": " << first;
    if (one.match == FIRN_BULLETIN_MATCH_MATCHES) continue;
    EXPECT_EQ(day.comparison.rating_count, 0u);
    EXPECT_EQ(day.comparison.problem_count, 0u);
  }
  // Tarn Shoulder was dug seven weeks later.
  Beside late(capi::demo_notes("tarn-shoulder"), file("persistent"), "XX-LW-01", 1900);
  EXPECT_EQ(late.comparison.match, FIRN_BULLETIN_MATCH_EXPIRED);
  EXPECT_TRUE(late.has_caution(FIRN_CAUTION_KEY_BULLETIN_EXPIRED));
  EXPECT_EQ(late.comparison.unlisted_count, 0u) << "nothing is missing from a bulletin that has run out";
}

TEST(Bulletin, TypedByHand) {
  Context context;
  firn_bulletin_rating ratings[2] = {FIRN_INIT(firn_bulletin_rating), FIRN_INIT(firn_bulletin_rating)};
  ratings[0].level = FIRN_DANGER_LEVEL_MODERATE;
  ratings[0].scope.upper_treeline = 1;
  ratings[1].level = FIRN_DANGER_LEVEL_HIGH;
  ratings[1].scope.lower_treeline = 1;
  firn_bulletin_problem problems[2] = {FIRN_INIT(firn_bulletin_problem), FIRN_INIT(firn_bulletin_problem)};
  problems[0].type = FIRN_PROBLEM_TYPE_DEEP_PERSISTENT_SLAB;
  problems[0].size_tenths = 25;
  problems[0].scope.aspects = FIRN_ASPECT_BIT(FIRN_COMPASS_POINT_N) | FIRN_ASPECT_BIT(FIRN_COMPASS_POINT_NE);
  problems[1].type = FIRN_PROBLEM_TYPE_CORNICE;
  problems[1].comment = "above the col";
  firn_bulletin_typed typed = FIRN_INIT(firn_bulletin_typed);
  typed.region_name = "Larchwater North";
  typed.source = "read out by the hut warden";
  typed.valid.begin = {1795849200, -420, FIRN_TIME_PRECISION_MINUTE, 1, 0};
  typed.valid.end = {1795935600, -420, FIRN_TIME_PRECISION_MINUTE, 1, 0};
  typed.ratings = ratings;
  typed.rating_count = 2;
  typed.problems = problems;
  typed.problem_count = 2;
  Buffer bulletin(context);
  firn_error error = FIRN_INIT(firn_error);
  ASSERT_EQ(firn_bulletin_write(context, &typed, bulletin.out(), &error), FIRN_OK) << error.what;
  EXPECT_EQ(bulletin.text().substr(4, 4), "FIRB");

  const std::string pit = capi::pit_of(context, capi::demo_notes("larch-bowl-entry"));
  firn_interpret_options options = FIRN_INIT(firn_interpret_options);
  options.bulletin = bulletin.data();
  options.bulletin_size = bulletin.size();
  options.treeline_m = 2000;
  Buffer report(context);
  ASSERT_EQ(firn_interpret(context, bytes_of(pit), pit.size(), &options, report.out(), &error), FIRN_OK);
  firn_report* opened = nullptr;
  ASSERT_EQ(firn_report_open(context, report.data(), report.size(), &opened, nullptr), FIRN_OK);
  firn_bulletin_comparison comparison = FIRN_INIT(firn_bulletin_comparison);
  ASSERT_EQ(firn_report_bulletin(opened, &comparison, nullptr), FIRN_OK);
  EXPECT_EQ(comparison.region_from, FIRN_REGION_FROM_ONLY_ONE);
  EXPECT_EQ(comparison.treeline_m, 2000);
  ASSERT_EQ(comparison.rating_count, 1u);
  firn_rating_match rating = FIRN_INIT(firn_rating_match);
  ASSERT_EQ(firn_report_bulletin_rating(opened, 0, &rating, nullptr), FIRN_OK);
  EXPECT_EQ(rating.level, FIRN_DANGER_LEVEL_HIGH);
  firn_problem_match problem = FIRN_INIT(firn_problem_match);
  ASSERT_EQ(firn_report_bulletin_problem(opened, 0, &problem, nullptr), FIRN_OK);
  EXPECT_EQ(problem.type, FIRN_PROBLEM_TYPE_DEEP_PERSISTENT_SLAB);
  EXPECT_EQ(problem.kind, FIRN_PROBLEM_KIND_PERSISTENT_WEAK_LAYERS);
  EXPECT_EQ(problem.size_tenths, 25);
  EXPECT_EQ(problem.answer, FIRN_PROBLEM_ANSWER_SHOWN);
  ASSERT_EQ(firn_report_bulletin_problem(opened, 1, &problem, nullptr), FIRN_OK);
  EXPECT_EQ(problem.answer, FIRN_PROBLEM_ANSWER_CANNOT_SPEAK);
  EXPECT_EQ(problem.limit, FIRN_SPEAK_LIMIT_NOT_SEEN_IN_A_PIT);
  firn_report_close(opened);

  typed.none_issued = 1;
  ASSERT_EQ(firn_bulletin_write(context, &typed, bulletin.out(), &error), FIRN_OK);
}

TEST(Bulletin, TypedValuesOutOfRangeAreRefused) {
  Context context;
  const auto refuse = [&](void (*spoil)(firn_bulletin_typed&, firn_bulletin_rating&, firn_bulletin_problem&),
                          firn_status wanted, int line) {
    firn_bulletin_rating rating = FIRN_INIT(firn_bulletin_rating);
    rating.level = FIRN_DANGER_LEVEL_LOW;
    firn_bulletin_problem problem = FIRN_INIT(firn_bulletin_problem);
    problem.type = FIRN_PROBLEM_TYPE_NEW_SNOW;
    firn_bulletin_typed typed = FIRN_INIT(firn_bulletin_typed);
    typed.region_id = "XX-LW-01";
    typed.ratings = &rating;
    typed.rating_count = 1;
    typed.problems = &problem;
    typed.problem_count = 1;
    spoil(typed, rating, problem);
    Buffer out(context);
    firn_error error = FIRN_INIT(firn_error);
    EXPECT_EQ(firn_bulletin_write(context, &typed, out.out(), &error), wanted) << "line " << line;
    EXPECT_EQ(out.data() == nullptr, wanted != FIRN_OK);
    EXPECT_EQ(std::strlen(error.remedy) == 0, wanted == FIRN_OK);
  };
  using T = firn_bulletin_typed;
  using R = firn_bulletin_rating;
  using P = firn_bulletin_problem;
  refuse([](T&, R&, P&) {}, FIRN_OK, __LINE__);
  refuse([](T& t, R&, P&) { t.region_id = nullptr; }, FIRN_BAD_ARGUMENT, __LINE__);
  refuse([](T& t, R&, P&) { t.region_id = ""; }, FIRN_BAD_ARGUMENT, __LINE__);
  refuse([](T& t, R&, P&) { t.source = "\xFF"; }, FIRN_BAD_UTF8, __LINE__);
  refuse([](T& t, R&, P&) { t.none_issued = 2; }, FIRN_BAD_ARGUMENT, __LINE__);
  refuse([](T& t, R&, P&) { t.ratings = nullptr; }, FIRN_NULL_ARGUMENT, __LINE__);
  refuse([](T& t, R&, P&) { t.rating_count = 1001; }, FIRN_BAD_ARGUMENT, __LINE__);
  refuse([](T& t, R&, P&) { t.struct_size = 8; }, FIRN_BAD_STRUCT_SIZE, __LINE__);
  refuse([](T& t, R&, P&) { t.valid.end.precision = 9; }, FIRN_BAD_ARGUMENT, __LINE__);
  refuse([](T&, R& r, P&) { r.struct_size = 4; }, FIRN_BAD_STRUCT_SIZE, __LINE__);
  refuse([](T&, R& r, P&) { r.level = 0; }, FIRN_BAD_ARGUMENT, __LINE__);
  refuse([](T&, R& r, P&) { r.level = 6; }, FIRN_BAD_ARGUMENT, __LINE__);
  refuse([](T&, R& r, P&) { r.level = FIRN_DANGER_LEVEL_NO_SNOW; }, FIRN_OK, __LINE__);
  refuse([](T&, R& r, P&) { r.scope.lower_m = 9001; }, FIRN_BAD_ARGUMENT, __LINE__);
  refuse([](T&, R& r, P&) { r.scope.lower_m = 9000; }, FIRN_OK, __LINE__);
  refuse([](T&, R& r, P&) { r.scope.upper_m = -1; }, FIRN_BAD_ARGUMENT, __LINE__);
  refuse([](T&, R& r, P&) { r.scope.upper_treeline = 2; }, FIRN_BAD_ARGUMENT, __LINE__);
  refuse(
      [](T&, R& r, P&) {
        r.scope.lower_m = 2000;
        r.scope.upper_m = 1900;
      },
      FIRN_BAD_ARGUMENT, __LINE__);
  refuse([](T&, R& r, P&) { r.scope.aspects = 1; }, FIRN_BAD_ARGUMENT, __LINE__);
  refuse([](T&, R& r, P&) { r.scope.aspects = 1u << 10; }, FIRN_BAD_ARGUMENT, __LINE__);
  refuse([](T&, R& r, P&) { r.scope.period = 4; }, FIRN_BAD_ARGUMENT, __LINE__);
  refuse([](T&, R&, P& p) { p.type = 0; }, FIRN_BAD_ARGUMENT, __LINE__);
  refuse([](T&, R&, P& p) { p.type = 9; }, FIRN_BAD_ARGUMENT, __LINE__);
  refuse([](T&, R&, P& p) { p.type = FIRN_PROBLEM_TYPE_CORNICE; }, FIRN_OK, __LINE__);
  refuse([](T&, R&, P& p) { p.size_tenths = 9; }, FIRN_BAD_ARGUMENT, __LINE__);
  refuse([](T&, R&, P& p) { p.size_tenths = 50; }, FIRN_OK, __LINE__);
  refuse([](T&, R&, P& p) { p.frequency = 5; }, FIRN_BAD_ARGUMENT, __LINE__);
  refuse([](T&, R&, P& p) { p.comment = "\xFF"; }, FIRN_BAD_UTF8, __LINE__);
}

TEST(Bulletin, MessagesAreLinesWithTheirPlace) {
  Context context;
  const std::string json =
      "{\"bulletins\":[{\"regions\":[{\"regionID\":\"a\"}],\n\"dangerRatings\":[{\"mainValue\":\"extreme\"}]}"
      "]}";
  Buffer out(context), messages(context);
  ASSERT_EQ(firn_bulletin_read(context, json.data(), json.size(), out.out(), messages.out(), nullptr),
            FIRN_OK);
  const std::string told = messages.text();
  EXPECT_EQ(told.substr(0, told.find(';')),
            "bulletins[0].dangerRatings[0].mainValue, line 2, column 31: \"extreme\" is none of the values "
            "that the "
            "standard has here");
  EXPECT_EQ(told.back(), '\n');
  ASSERT_EQ(firn_bulletin_read(context, json.data(), json.size(), out.out(), nullptr, nullptr), FIRN_OK);
  firn_error error = FIRN_INIT(firn_error);
  EXPECT_EQ(firn_bulletin_read(context, "{\n \"a\" 1", 8, out.out(), messages.out(), &error),
            FIRN_NO_BULLETIN);
  EXPECT_EQ(error.line, 2u);
  EXPECT_EQ(out.data(), nullptr);
  EXPECT_EQ(firn_bulletin_read(context, nullptr, 8, out.out(), messages.out(), &error), FIRN_NULL_ARGUMENT);
  EXPECT_EQ(firn_bulletin_read(context, "{}", 2, nullptr, messages.out(), &error), FIRN_NULL_ARGUMENT);
  const std::string large(17u << 20, ' ');
  EXPECT_EQ(firn_bulletin_read(context, large.data(), large.size(), out.out(), nullptr, &error),
            FIRN_TOO_LARGE);
}

TEST(Bulletin, BadBytesAndOptionsAreRefused) {
  Context context;
  const std::string pit = capi::pit_of(context, capi::demo_notes("larch-bowl-entry"));
  const std::string good = bulletin_of(context, file("deep_layer"));
  Buffer out(context);
  const auto ask = [&](const std::string& bulletin, const char* region, std::int32_t treeline_m) {
    const std::vector<std::uint8_t> exact(bytes_of(bulletin), bytes_of(bulletin) + bulletin.size());
    firn_interpret_options options = FIRN_INIT(firn_interpret_options);
    options.bulletin = exact.data();
    options.bulletin_size = exact.size();
    options.region = region;
    options.treeline_m = treeline_m;
    return firn_interpret(context, bytes_of(pit), pit.size(), &options, out.out(), nullptr);
  };
  EXPECT_EQ(ask(good, nullptr, 0), FIRN_OK);
  EXPECT_EQ(ask(good, nullptr, 9000), FIRN_OK);
  EXPECT_EQ(ask(good, nullptr, 9001), FIRN_BAD_ARGUMENT);
  EXPECT_EQ(ask(good, nullptr, -1), FIRN_BAD_ARGUMENT);
  EXPECT_EQ(ask(good, "\xFF", 0), FIRN_BAD_UTF8);
  EXPECT_EQ(ask(pit, nullptr, 0), FIRN_WRONG_KIND);
  EXPECT_EQ(ask(good.substr(0, 7), nullptr, 0), FIRN_TOO_SMALL);
  std::string bad = good;
  std::size_t refused = 0;
  for (std::size_t at = 8; at < good.size(); ++at) {
    for (const int flip : {0x01, 0x80, 0xFF}) {
      bad[at] = static_cast<char>(static_cast<unsigned char>(good[at]) ^ flip);
      if (ask(bad, nullptr, 2000) != FIRN_OK) {
        ++refused;
        continue;
      }
      const std::string report = out.text();
      Buffer note(context);
      EXPECT_EQ(firn_note_write(context, bytes_of(pit), pit.size(), bytes_of(report), report.size(),
                                note.out(), nullptr),
                FIRN_OK);
    }
    bad[at] = good[at];
  }
  EXPECT_GT(refused, 100u);
}

// A report whose comparison was changed on the way is printed or refused, never more.
TEST(Bulletin, HostileReports) {
  Beside day(capi::demo_notes("larch-bowl-entry"), file("storm"), "XX-LW-01");
  std::string bad = day.report;
  for (std::size_t at = 8; at < bad.size(); at += 1) {
    const char before = bad[at];
    for (const int flip : {0x7F, 0xFF}) {
      bad[at] = static_cast<char>(static_cast<unsigned char>(before) ^ flip);
      Buffer text(day.context);
      firn_note_write(day.context, bytes_of(day.pit), day.pit.size(), bytes_of(bad), bad.size(), text.out(),
                      nullptr);
      firn_report* opened = nullptr;
      if (firn_report_open(day.context, bytes_of(bad), bad.size(), &opened, nullptr) == FIRN_OK) {
        firn_bulletin_comparison comparison = FIRN_INIT(firn_bulletin_comparison);
        EXPECT_EQ(firn_report_bulletin(opened, &comparison, nullptr), FIRN_OK);
        for (std::uint32_t i = 0; i < comparison.problem_count; ++i) {
          firn_problem_match match = FIRN_INIT(firn_problem_match);
          EXPECT_EQ(firn_report_bulletin_problem(opened, i, &match, nullptr), FIRN_OK);
        }
      }
      firn_report_close(opened);
    }
    bad[at] = before;
  }
}

}  // namespace
