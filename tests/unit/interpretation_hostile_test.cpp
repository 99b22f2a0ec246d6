// Any number, any size; more evidence never takes a concern away; the report's bytes.
#include <gtest/gtest.h>

#include <chrono>
#include <cstring>
#include <map>
#include <random>
#include <tuple>

#include "interpretation_help.h"

namespace firn::tests {
namespace {

using firnbook::Crossing;
using Random = std::mt19937;

std::int32_t below(Random& random, std::uint32_t limit) {
  return static_cast<std::int32_t>(random() % limit);
}

template <class E>
E any(Random& random, std::uint32_t limit = 256) {
  return static_cast<E>(below(random, limit));
}

std::int32_t wild(Random& random) {
  constexpr std::int32_t kNumbers[] = {INT32_MIN, INT32_MIN + 1, -1000,         -1,       0, 1, 1000,
                                       20000,     68000,         INT32_MAX - 1, INT32_MAX};
  return random() % 4 == 0 ? static_cast<std::int32_t>(random()) : kNumbers[random() % 11];
}

// --- hostile values

firnbook::Depth wild_depth(Random& random) {
  return {wild(random), any<firnbook::Datum>(random, 4), any<firnbook::Direction>(random, 4)};
}

void add_wild_layer(PitT& pit, Random& random) {
  auto layer = std::make_unique<firnbook::LayerT>();
  if (random() % 8 != 0) layer->top = std::make_unique<firnbook::Depth>(wild_depth(random));
  if (random() % 8 != 0) layer->bottom = std::make_unique<firnbook::Depth>(wild_depth(random));
  layer->hardness = any<HandHardness>(random);
  layer->grain_form = any<GrainForm>(random);
  layer->grain_size_10um = wild(random);
  layer->unreliable = random();
  if (random() % 2 == 0) layer->concern = any<firnbook::PartOfLayer>(random);
  if (random() % 2 == 0) {
    layer->name = std::make_unique<firnbook::LayerNameT>();
    layer->name->date = std::make_unique<firnbook::Moment>(random() % 2 == 0 ? INT64_MIN : INT64_MAX, 0,
                                                           any<firnbook::TimePrecision>(random), 0);
    layer->name->words = "wind slab";
  }
  pit.layers.push_back(std::move(layer));
}

void add_wild_test(PitT& pit, Random& random) {
  auto& test = add_test(pit, any<TestKind>(random, 11));
  test.outcome = any<firnbook::TestOutcome>(random, 5);
  test.column_length_10um = wild(random);
  test.column_depth_10um = wild(random);
  test.taps_given = any<std::uint8_t>(random);
  test.crossing_rule = any<firnbook::CrossingRule>(random, 4);
  test.unreliable = random();
  test.unbroken.push_back(wild_depth(random));
  for (auto k = random() % 3; k > 0; --k) {
    auto fracture = std::make_unique<firnbook::FractureT>();
    if (random() % 4 != 0) fracture->depth = std::make_unique<firnbook::Depth>(wild_depth(random));
    fracture->tap = any<std::uint8_t>(random);
    fracture->tap_crossed = any<std::uint8_t>(random);
    fracture->stage = any<firnbook::LoadStage>(random, 6);
    fracture->character = any<FractureCharacter>(random, 14);
    fracture->quality = any<firnbook::ShearQuality>(random, 5);
    fracture->crossing = any<Crossing>(random, 4);
    fracture->release = any<firnbook::ReleaseType>(random, 5);
    fracture->ease = any<firnbook::ShearEase>(random, 7);
    fracture->step = any<std::uint8_t>(random);
    fracture->cut_10um = wild(random);
    fracture->saw_end = any<SawEnd>(random, 5);
    fracture->unreliable = random();
    if (random() % 2 == 0) {
      fracture->on = std::make_unique<firnbook::LayerT>();
      fracture->on->grain_form = any<GrainForm>(random);
      fracture->on->name = std::make_unique<firnbook::LayerNameT>();
      fracture->on->name->words = "wind slab";
    }
    test.fractures.push_back(std::move(fracture));
  }
}

PitT wild_pit(Random& random) {
  PitT pit;
  pit.snowpack = std::make_unique<firnbook::SnowpackT>();
  pit.snowpack->hs_10um = wild(random);
  for (auto k = random() % 8; k > 0; --k) add_wild_layer(pit, random);
  for (auto k = random() % 8; k > 0; --k) add_wild_test(pit, random);
  for (auto k = random() % 5; k > 0; --k) {
    add_temperature(pit, wild(random), wild(random));
    pit.temperatures.back()->unreliable = random();
  }
  for (auto k = random() % 5; k > 0; --k) {
    add_sign(pit, any<firnbook::SignKind>(random), any<firnbook::Answer>(random, 5));
    pit.signs.back()->unreliable = random();
  }
  if (random() % 2 == 0) {
    pit.slides.push_back(std::make_unique<firnbook::SlideT>());
    pit.slides[0]->age_min = wild(random);
    pit.slides[0]->unreliable = random();
  }
  return pit;
}

// Everything a reader follows must lead somewhere.
void expect_sound(const Read& read) {
  const interpretation::Analysis& analysis = read.analysis;
  for (const interpretation::Concern& one : analysis.concerns) {
    ASSERT_LE(one.first_evidence + one.evidence_count, analysis.evidence.size());
    EXPECT_GT(one.evidence_count, 0u);
    EXPECT_GE(one.top, -1);
  }
  for (const std::uint32_t index : analysis.evidence) ASSERT_LT(index, analysis.findings.size());
  for (const firnbook::NotLoaded& one : analysis.not_loaded) {
    ASSERT_LT(static_cast<std::size_t>(one.concern()), analysis.concerns.size());
  }
  for (const Finding& one : analysis.findings) {
    EXPECT_NE(one.verdict(), Verdict::none);
    EXPECT_GE(one.depth_10um(), -1);
  }
}

TEST(Hostile, AnyNumbers) {
  Random random(20261125);
  for (int round = 0; round < 3000; ++round) {
    const Read read(wild_pit(random));
    ASSERT_TRUE(read.ok);
    expect_sound(read);
  }
}

TEST(Hostile, AnyParameters) {
  Random random(7);
  for (int round = 0; round < 500; ++round) {
    interpretation::Parameters parameters;
    for (std::int32_t* value :
         {&parameters.tolerance_10um, &parameters.ect_last_tap_of_lower_class, &parameters.ect_taps_to_cross,
          &parameters.ect_ignored_top_10um, &parameters.pst_percent, &parameters.flag_size_10um,
          &parameters.flag_warning_count, &parameters.flag_size_difference_10um,
          &parameters.gradient_cdegc_per_m, &parameters.ct_useful_depth_10um,
          &parameters.deep_tap_from_10um}) {
      *value = wild(random);
    }
    expect_sound(Read(wild_pit(random), parameters));
    expect_sound(Read(*tarn_shoulder(), parameters));
  }
}

// --- many layers

PitT many_layers(std::int32_t count) {
  PitT pit;
  for (std::int32_t i = 0; i < count; ++i) {
    const bool weak = i % 2 == 1;
    auto& layer = add_layer(pit, 100 * i, 100 * i + 100, weak ? HandHardness::Fist : HandHardness::Pencil,
                            weak ? GrainForm::SH : GrainForm::RG, weak ? 500 : 30);
    layer.concern = firnbook::PartOfLayer::all;
    layer.unreliable = UINT64_MAX;
    add_temperature(pit, 100 * i, i % 2 == 0 ? -2000 : -1);
    name_layer(
        add_compression_test(pit, static_cast<std::uint8_t>(1 + i % 30), FractureCharacter::SP, 100 * i),
        GrainForm::SH);
  }
  return pit;
}

double seconds_for(const PitT& pit, std::size_t& findings) {
  const std::vector<std::uint8_t> bytes = bytes_of(pit);
  pit::View view;
  view.decode(*firnbook::GetPit(bytes.data()));
  interpretation::Analysis analysis;
  double best = 1e9;
  for (int round = 0; round < 3; ++round) {
    const auto start = std::chrono::steady_clock::now();
    const interpretation::Parameters parameters;
    interpretation::interpret(view, parameters, analysis);
    const std::chrono::duration<double> took = std::chrono::steady_clock::now() - start;
    best = std::min(best, took.count());
  }
  findings = analysis.findings.size();
  return best;
}

PitT all_at_one_depth(std::int32_t count) {
  PitT pit;
  for (std::int32_t i = 0; i < count; ++i) {
    add_layer(pit, cm(50), cm(50), HandHardness::Fist, GrainForm::SH, 600);
    add_compression_test(pit, 12, FractureCharacter::SP, cm(50));
  }
  return pit;
}

// Ten times the layers take ten times as long, and a little for sorting; quadratic work would take a hundred.
// Compared with itself, since the machine may be slow, emulated or busy.
void expect_linear(PitT (*make)(std::int32_t)) {
  std::size_t few = 0;
  std::size_t many = 0;
  const double short_time = seconds_for(make(1000), few);
  const double long_time = seconds_for(make(10000), many);
  EXPECT_GT(few, 7000u);
  EXPECT_GT(many, 70000u);
  EXPECT_LT(long_time, 40 * short_time) << short_time << " s for a thousand";
}

TEST(Hostile, TenThousandLayersInLinearTime) {
  expect_linear(many_layers);
}
TEST(Hostile, TenThousandLayersAtOneDepthInLinearTime) {
  expect_linear(all_at_one_depth);
}

// --- more evidence never takes a concern away

// A fracture's identity across two pits, of which the second has things appended.
using Subject = std::tuple<int, std::int32_t, std::int32_t>;

Subject subject_of(const Finding& finding) {
  const firnbook::Place& place = finding.subject();
  return {static_cast<int>(place.thing()), place.index(), place.sub()};
}

// Of everything that broke or was marked: the best rank of a concern that has it as evidence.
std::map<Subject, ConcernRank> ranks(const Read& read) {
  std::map<Subject, ConcernRank> out;
  for (std::size_t i = 0; i < read.analysis.concerns.size(); ++i) {
    for (const Finding* one : read.evidence(i)) {
      if (one->key() == FindingKey::pst_no_fracture || one->key() == FindingKey::gradient_strong) continue;
      const auto found = out.emplace(subject_of(*one), read.analysis.concerns[i].rank).first;
      found->second = std::min(found->second, read.analysis.concerns[i].rank);
    }
  }
  return out;
}

void add_plain_test(PitT& pit, Random& random) {
  const std::int32_t depth = cm(1) * below(random, 150);
  const std::uint8_t tap = static_cast<std::uint8_t>(1 + random() % 30);
  switch (random() % 5) {
    case 0:
      add_extended_column(pit, tap, any<Crossing>(random, 3), depth);
      return;
    case 1:
      add_saw_test(pit, cm(1) * below(random, 101), cm(100), any<SawEnd>(random, 4), depth);
      return;
    case 2:
      add_fracture(add_test(pit, TestKind::RB), depth).release = any<firnbook::ReleaseType>(random, 4);
      return;
    default:
      add_compression_test(pit, tap, any<FractureCharacter>(random, 13), depth);
      if (random() % 3 == 0) name_layer(*pit.tests.back()->fractures[0], GrainForm::SH);
      if (random() % 6 == 0) pit.tests.back()->fractures[0]->depth.reset();
      return;
  }
}

PitT plain_pit(Random& random) {
  constexpr GrainForm kForms[] = {GrainForm::PP, GrainForm::RG, GrainForm::FC, GrainForm::SH,
                                  GrainForm::MFcr};
  PitT pit;
  std::int32_t depth = 0;
  for (auto k = random() % 9; k > 0; --k) {
    const std::int32_t next = depth + cm(1) * (1 + below(random, 30));
    add_layer(pit, depth, next, static_cast<HandHardness>(6 + 2 * below(random, 13)), kForms[random() % 5],
              below(random, 400));
    depth = random() % 6 == 0 ? next + cm(3) : next;
  }
  for (auto k = random() % 5; k > 0; --k) add_plain_test(pit, random);
  return pit;
}

TEST(Union, OneMoreTestNeverTakesAConcernAway) {
  Random random(42);
  std::size_t compared = 0;
  for (int round = 0; round < 3000; ++round) {
    PitT pit = plain_pit(random);
    const auto before = ranks(Read(pit));
    add_plain_test(pit, random);
    add_test(pit, TestKind::ECT).outcome = firnbook::TestOutcome::no_fracture;
    const auto after = ranks(Read(pit));
    for (const auto& [subject, rank] : before) {
      const auto still = after.find(subject);
      ASSERT_NE(still, after.end()) << "round " << round;
      EXPECT_LE(still->second, rank) << "round " << round;
      ++compared;
    }
  }
  EXPECT_GT(compared, 10000u);
}

TEST(Union, SignsReadingsAndMarksNeverTakeAConcernAway) {
  Random random(43);
  for (int round = 0; round < 500; ++round) {
    PitT pit = plain_pit(random);
    const auto before = ranks(Read(pit));
    add_sign(pit, firnbook::SignKind::whumpf, firnbook::Answer::no);
    add_temperature(pit, 0, -500);
    add_temperature(pit, cm(40), -400);
    if (!pit.layers.empty()) pit.layers[0]->concern = firnbook::PartOfLayer::all;
    const auto after = ranks(Read(pit));
    for (const auto& [subject, rank] : before) {
      const auto still = after.find(subject);
      ASSERT_NE(still, after.end());
      EXPECT_LE(still->second, rank);
    }
  }
}

// --- the report

TEST(Report, IsReadableAndTheSameEveryTime) {
  Read read(*tarn_shoulder());
  flatbuffers::FlatBufferBuilder builder;
  interpretation::write_report(read.analysis, {}, 0x1234abcd, builder);
  const std::vector<std::uint8_t> first(builder.GetBufferPointer(),
                                        builder.GetBufferPointer() + builder.GetSize());
  interpretation::write_report(read.analysis, {}, 0x1234abcd, builder);
  const std::vector<std::uint8_t> again(builder.GetBufferPointer(),
                                        builder.GetBufferPointer() + builder.GetSize());
  EXPECT_EQ(first, again);
  flatbuffers::Verifier verifier(first.data(), first.size());
  ASSERT_TRUE(firnbook::VerifyReportBuffer(verifier));
  const firnbook::Report& report = *firnbook::GetReport(first.data());
  EXPECT_EQ(report.pit_crc32(), 0x1234abcdu);
  EXPECT_EQ(report.findings()->size(), read.analysis.findings.size());
  EXPECT_EQ(report.checks()->size(), read.analysis.checks.size());
  EXPECT_EQ(report.cautions()->size(), read.analysis.cautions.size());
  EXPECT_EQ(report.not_loaded()->size(), read.analysis.not_loaded.size());
  EXPECT_EQ(report.suggestions()->size(), read.analysis.suggestions.size());
  ASSERT_GT(report.methods()->size(), 7u);
  for (std::uint32_t i = 1; i < report.methods()->size(); ++i) {
    EXPECT_LT(report.methods()->Get(i - 1)->method(), report.methods()->Get(i)->method());
  }
  EXPECT_EQ(report.parameters_changed(), nullptr);
  EXPECT_EQ(report.tolerance_10um(), cm(2));
  ASSERT_EQ(report.concerns()->size(), 3u);
  EXPECT_EQ(report.concerns()->Get(0)->rank(), ConcernRank::propagated);
  EXPECT_EQ(report.concerns()->Get(0)->top_10um(), cm(68));
  EXPECT_EQ(report.concerns()->Get(0)->evidence()->size(), read.analysis.concerns[0].evidence_count);
  EXPECT_FALSE(report.concerns()->Get(0)->layer_below().has_value());
}

TEST(Report, MemoryIsReusedFromPitToPit) {
  Read large(*tarn_shoulder());
  const std::vector<std::uint8_t> bytes = bytes_of(*larch_bowl_entry());
  pit::View view;
  view.decode(*firnbook::GetPit(bytes.data()));
  interpretation::interpret(view, {}, large.analysis);
  Read fresh(*larch_bowl_entry());
  flatbuffers::FlatBufferBuilder one;
  flatbuffers::FlatBufferBuilder other;
  interpretation::write_report(large.analysis, {}, 1, one);
  interpretation::write_report(fresh.analysis, {}, 1, other);
  ASSERT_EQ(one.GetSize(), other.GetSize());
  EXPECT_EQ(std::memcmp(one.GetBufferPointer(), other.GetBufferPointer(), one.GetSize()), 0)
      << "nothing of the pit before may be left";
}

}  // namespace
}  // namespace firn::tests
