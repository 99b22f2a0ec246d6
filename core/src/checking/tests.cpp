// Stability tests. Each rule names its source; where none is named it is the reference list of derived
// checks. No rule here says what a result means for the slope.
#include <algorithm>

#include "checking/rules.h"
#include "procedure/procedure.h"

namespace firn::checking {
namespace {

using firnbook::Crossing;
using firnbook::CrossingRule;
using firnbook::LoadStage;
using firnbook::SawEnd;
using firnbook::TestKind;
using firnbook::TestOutcome;

// Ten taps each from wrist, elbow and shoulder, counted through (read: avalanche.org, ECT).
constexpr std::int32_t kTapsPerStage = 10;
constexpr std::int32_t kMostTaps = 30;
constexpr std::int32_t kLastStep = 6;  // 7 is "no fracture"
// Rutschblock: 30 deg (read: Foehn 1989). 20 deg with a second person watching is in the message (read:
// Jamieson and Johnston 1993); whether somebody watched is not recorded, so the rule cannot use it.
constexpr std::int32_t kRutschblockSlope = procedure::kRutschblockSlope_deg;
// Column tests seldom reach layers below 100 to 120 cm (read in secondary sources: Campbell; avalanche.org).
constexpr std::int32_t kUsefulDepth = pit::cm(120);
// Sources disagree on the extended column: 120, 100 or 70 cm. The smallest of them gives a hint.
constexpr std::int32_t kUsefulDepthSmallest = pit::cm(70);
// Saw test: 100 cm, or the depth of the layer where that is more (from memory). "About" is ours.
constexpr std::int32_t kSawColumn = pit::cm(100);
constexpr std::int32_t kSawColumnAbout = pit::cm(10);
// Ours: hands do not tell more layers than this apart within a few centimetres; hostile bytes do.
constexpr int kMostNeighbours = 64;

template <class E>
bool is(std::uint8_t number, E value) {
  return number == static_cast<std::uint8_t>(value);
}

bool counts_taps(TestKind kind) {
  return kind == TestKind::CT || kind == TestKind::ECT || kind == TestKind::DT;
}

Place test_place(const pit::Test& test, int vtable_offset) {
  return place_of(Thing::test, static_cast<std::int32_t>(test.stored), field_id(vtable_offset));
}

Place fracture_place(const pit::Fracture& fracture, int vtable_offset) {
  return place_of(Thing::fracture, static_cast<std::int32_t>(fracture.test), field_id(vtable_offset),
                  static_cast<std::int32_t>(fracture.stored));
}

bool is_tap(std::int32_t tap) {
  return tap >= 1 && tap <= kMostTaps;
}

void check_tap_range(const flatbuffers::Optional<std::uint8_t>& tap, const Place& place, Reporter& out) {
  if (tap && !is_tap(*tap)) out.add(CheckCode::tap_out_of_range, place, *tap);
}

void check_band(const pit::Fracture& fracture, Reporter& out) {
  constexpr auto kIsolating = static_cast<std::uint8_t>(LoadStage::isolating);
  constexpr auto kShoulder = static_cast<std::uint8_t>(LoadStage::shoulder);
  if (!is_tap(fracture.tap) || fracture.stage < kIsolating || fracture.stage > kShoulder) return;
  const int band = kIsolating + 1 + (fracture.tap - 1) / kTapsPerStage;
  if (fracture.stage != band) {
    out.add(CheckCode::band_contradicts_tap, fracture_place(fracture, firnbook::Fracture::VT_STAGE),
            fracture.tap, fracture.stage);
  }
}

// More than one tap later is no P under any rule, the same tap is no N; one tap later depends on the rule
// (read: the Swiss service counts it, SWAG since 2016 does not).
void check_crossing(const pit::Test& test, const pit::Fracture& fracture, Reporter& out) {
  if (!is_tap(fracture.tap) || !is_tap(fracture.tap_crossed)) return;
  const Place crossed = fracture_place(fracture, firnbook::Fracture::VT_TAP_CROSSED);
  if (fracture.tap_crossed < fracture.tap) {
    out.add(CheckCode::crossing_before_crack, crossed, fracture.tap, fracture.tap_crossed);
    return;
  }
  const bool p = is(fracture.crossing, Crossing::crossed);
  const bool n = is(fracture.crossing, Crossing::not_crossed);
  const int later = fracture.tap_crossed - fracture.tap;
  const bool strict = is(test.crossing_rule, CrossingRule::same_tap);
  const bool lenient = is(test.crossing_rule, CrossingRule::one_more_tap);
  const Place place = fracture_place(fracture, firnbook::Fracture::VT_CROSSING);
  if ((p && (later > 1 || (later == 1 && strict))) || (n && (later == 0 || (later == 1 && lenient)))) {
    out.add(CheckCode::crossing_contradicts_taps, place, fracture.tap, fracture.tap_crossed);
  } else if ((p || n) && later == 1 && !strict && !lenient) {
    out.add(CheckCode::crossing_depends_on_rule, place, fracture.tap, fracture.tap_crossed);
  }
}

void check_load(const pit::Test& test, const pit::Fracture& fracture, Reporter& out) {
  const firnbook::Fracture& raw = *fracture.raw;
  if (counts_taps(test.kind) && !raw.tap() && !raw.tap_crossed() && !raw.stage()) {
    out.add(CheckCode::fracture_without_load, fracture_place(fracture, firnbook::Fracture::VT_TAP));
  }
  if (test.kind == TestKind::RB && !raw.step()) {
    out.add(CheckCode::fracture_without_load, fracture_place(fracture, firnbook::Fracture::VT_STEP));
  }
}

void check_taps(const pit::Test& test, const pit::Fracture& fracture, Reporter& out) {
  check_tap_range(fracture.raw->tap(), fracture_place(fracture, firnbook::Fracture::VT_TAP), out);
  check_tap_range(fracture.raw->tap_crossed(), fracture_place(fracture, firnbook::Fracture::VT_TAP_CROSSED),
                  out);
  check_band(fracture, out);
  check_crossing(test, fracture, out);
  if (test.kind == TestKind::ECT && fracture.crossing == 0 && fracture.tap_crossed == 0) {
    out.add(CheckCode::crossing_unknown, fracture_place(fracture, firnbook::Fracture::VT_CROSSING));
  }
}

// SWAG since 2016 (read: its list of changes) discourages both for the extended column and the saw test.
void check_extras(const pit::Test& test, const pit::Fracture& fracture, Reporter& out) {
  if (test.kind != TestKind::ECT && test.kind != TestKind::PST) return;
  const auto kind = static_cast<std::int64_t>(test.kind);
  if (fracture.quality != 0) {
    out.add(CheckCode::quality_on_extended_column, fracture_place(fracture, firnbook::Fracture::VT_QUALITY),
            kind);
  }
  if (fracture.character != 0) {
    out.add(CheckCode::character_on_extended_column,
            fracture_place(fracture, firnbook::Fracture::VT_CHARACTER), kind);
  }
}

void check_saw(const pit::Test& test, const pit::Fracture& fracture, Reporter& out) {
  if (test.kind != TestKind::PST) return;
  const Place place = fracture_place(fracture, firnbook::Fracture::VT_CUT_10UM);
  if (fracture.cut == pit::kUnknown) {
    out.add(CheckCode::saw_length_missing, place);
    return;
  }
  if (fracture.cut <= 0) out.add(CheckCode::saw_cut_not_positive, place, fracture.cut);
  if (test.column_length == pit::kUnknown) return;
  if (fracture.cut > test.column_length) {
    out.add(CheckCode::saw_cut_longer_than_column, place, fracture.cut, test.column_length);
  }
  const bool stopped = is(fracture.saw_end, SawEnd::SF) || is(fracture.saw_end, SawEnd::Arr);
  if (stopped && fracture.cut == test.column_length) {
    out.add(CheckCode::saw_stopped_at_full_cut, fracture_place(fracture, firnbook::Fracture::VT_SAW_END),
            fracture.cut);
  }
}

void check_step(const pit::Fracture& fracture, Reporter& out) {
  const flatbuffers::Optional<std::uint8_t> step = fracture.raw->step();
  if (step && (*step < 1 || *step > kLastStep)) {
    out.add(CheckCode::rutschblock_step_out_of_range, fracture_place(fracture, firnbook::Fracture::VT_STEP),
            *step);
  }
}

void check_useful_depth(const pit::Test& test, const pit::Fracture& fracture, Reporter& out) {
  if (test.kind != TestKind::CT && test.kind != TestKind::ECT) return;
  const Place place = fracture_place(fracture, firnbook::Fracture::VT_DEPTH);
  if (fracture.depth == pit::kUnknown) return;
  if (fracture.depth > kUsefulDepth) {
    out.add(CheckCode::test_depth_beyond_useful, place, fracture.depth, kUsefulDepth);
  } else if (test.kind == TestKind::ECT && fracture.depth > kUsefulDepthSmallest) {
    out.add(CheckCode::extended_column_deep, place, fracture.depth, kUsefulDepthSmallest);
  }
}

bool same_main_class(std::uint8_t a, std::uint8_t b) {
  return a != 0 && a / 10 == b / 10;
}

// Looks at the layers that reach into the depth give or take the tolerance, from the deepest up.
bool layer_named_is_there(const pit::View& pit, std::int32_t depth, std::uint8_t form) {
  const std::int64_t lowest = std::int64_t{depth} + kSamePlace;
  const std::int64_t highest = std::int64_t{depth} - kSamePlace;
  const std::vector<pit::Layer>& layers = pit.layers();
  auto below =
      std::upper_bound(layers.begin(), layers.end(), lowest, [](std::int64_t value, const pit::Layer& layer) {
        return layer.top == pit::kUnknown || value < layer.top;
      });
  for (int looked = 0; below != layers.begin(); ++looked) {
    --below;
    if (looked == kMostNeighbours) return true;  // cannot be told
    if (below->bottom != pit::kUnknown && below->bottom < highest) return false;
    if (same_main_class(below->form, form) || same_main_class(below->form_second, form)) return true;
    if (below->bottom == pit::kUnknown) return true;  // cannot be told
  }
  return false;
}

void check_layer_named(const pit::View& pit, const pit::Fracture& fracture, Reporter& out) {
  const firnbook::Layer* on = fracture.raw->on();
  if (on == nullptr || !on->grain_form() || fracture.depth == pit::kUnknown) return;
  if (pit.layers().empty() || pit.layers().front().top == pit::kUnknown) return;
  const std::uint8_t form = pit::number(on->grain_form());
  if (layer_named_is_there(pit, fracture.depth, form)) return;
  out.add(CheckCode::fracture_far_from_layer_named, fracture_place(fracture, firnbook::Fracture::VT_ON),
          fracture.depth, form, kSamePlace);
}

// A non-planar break follows no boundary, so its depth says nothing against the layers.
void check_boundary_near(const pit::View& pit, const pit::Fracture& fracture, Reporter& out) {
  if (is(fracture.character, firnbook::FractureCharacter::BRK)) return;
  const std::int32_t index = pit.layer_at(fracture.depth);
  if (index < 0) return;
  const pit::Layer& layer = pit.layers()[static_cast<std::size_t>(index)];
  const std::int64_t from_top = std::int64_t{fracture.depth} - layer.top;
  const std::int64_t to_bottom = std::int64_t{layer.bottom} - fracture.depth;
  if (from_top <= kSamePlace || to_bottom <= kSamePlace) return;
  out.add(CheckCode::fracture_away_from_boundaries, fracture_place(fracture, firnbook::Fracture::VT_DEPTH),
          fracture.depth, layer.top, layer.bottom);
}

void check_fracture(const pit::View& pit, const pit::Test& test, const pit::Fracture& fracture,
                    Reporter& out) {
  if (fracture.raw->depth() == nullptr) {
    out.add(CheckCode::fracture_without_depth, fracture_place(fracture, firnbook::Fracture::VT_DEPTH));
  }
  check_taps(test, fracture, out);
  check_load(test, fracture, out);
  check_extras(test, fracture, out);
  check_saw(test, fracture, out);
  check_step(fracture, out);
  check_useful_depth(test, fracture, out);
  check_layer_named(pit, fracture, out);
  check_boundary_near(pit, fracture, out);
}

void check_saw_column(const pit::View& pit, const pit::Test& test, Reporter& out) {
  if (test.kind != TestKind::PST) return;
  const Place place = test_place(test, firnbook::StabilityTest::VT_COLUMN_LENGTH_10UM);
  if (test.column_length == pit::kUnknown) {
    if (test.fracture_count > 0) out.add(CheckCode::saw_length_missing, place);
    return;
  }
  std::int64_t expected = kSawColumn;
  for (std::uint32_t i = 0; i < test.fracture_count; ++i) {
    const std::int32_t depth = pit.fractures()[test.first_fracture + i].depth;
    if (depth != pit::kUnknown && depth > expected) expected = depth;
  }
  const std::int64_t apart = test.column_length - expected;
  if (apart > kSawColumnAbout || apart < -kSawColumnAbout) {
    out.add(CheckCode::saw_column_length_unusual, place, test.column_length, expected);
  }
}

void check_outcome(const pit::Test& test, Reporter& out) {
  const Place place = test_place(test, firnbook::StabilityTest::VT_OUTCOME);
  if (is(test.outcome, TestOutcome::no_fracture) && test.fracture_count > 0) {
    out.add(CheckCode::no_fracture_with_result, place, test.fracture_count);
  }
  if (is(test.outcome, TestOutcome::fractured) && test.fracture_count == 0) {
    out.add(CheckCode::fractured_without_fracture, place);
  }
  if (is(test.outcome, TestOutcome::not_valid) && !test.raw->not_valid_reason()) {
    out.add(CheckCode::not_valid_without_reason,
            test_place(test, firnbook::StabilityTest::VT_NOT_VALID_REASON));
  }
  // A test described in words has its result in them.
  const bool in_words = test.kind == TestKind::other && !pit::text(test.raw->words()).empty();
  if (test.outcome == 0 && test.fracture_count == 0 && !in_words) {
    out.add(CheckCode::test_without_result, place, static_cast<std::int64_t>(test.kind));
  }
}

void check_rutschblock_slope(const pit::View& pit, const pit::Test& test, Reporter& out) {
  if (test.kind != TestKind::RB) return;
  const bool own = test.raw->slope_deg().has_value();
  const std::int32_t slope = own ? *test.raw->slope_deg() : pit.slope_deg();
  if (slope == pit::kUnknown || slope >= kRutschblockSlope) return;
  out.add(CheckCode::rutschblock_slope_too_gentle, test_place(test, firnbook::StabilityTest::VT_SLOPE_DEG),
          slope, kRutschblockSlope);
}

void check_test(const pit::View& pit, const pit::Test& test, Reporter& out) {
  if (test.kind == TestKind::none) {
    out.add(CheckCode::test_without_kind, test_place(test, firnbook::StabilityTest::VT_KIND));
  }
  check_outcome(test, out);
  check_saw_column(pit, test, out);
  check_rutschblock_slope(pit, test, out);
  check_tap_range(test.raw->taps_given(), test_place(test, firnbook::StabilityTest::VT_TAPS_GIVEN), out);
}

}  // namespace

void check_tests(const pit::View& pit, Reporter& out) {
  for (const pit::Test& test : pit.tests()) {
    check_test(pit, test, out);
    for (std::uint32_t i = 0; i < test.fracture_count; ++i) {
      check_fracture(pit, test, pit.fractures()[test.first_fracture + i], out);
    }
  }
}

}  // namespace firn::checking
