// What a kind of test is made of and how far it reaches: dimensions, depth, the snow above, results that
// belong to it. Outside of these limits a result may still be true; nobody has shown that it tells what it
// tells inside them.
#include <cstdlib>

#include "checking/rules.h"

namespace firn::checking {
namespace {

using firnbook::Fracture;
using firnbook::StabilityTest;
using firnbook::TestKind;
using firnbook::TestOutcome;

constexpr std::uint8_t kMostTaps = 30;
// Rutschblock: within about 1 m below ski penetration (avalanche.org, read).
constexpr std::int32_t kRutschblockReach = pit::cm(100);
// Rutschblock (from memory): steps 4 to 6 are jumps, three at the most in one step.
constexpr std::uint8_t kFirstJumpStep = 4;
constexpr std::uint8_t kMostJumps = 3;
// Deep tap test: for layers deeper than about 1 m, 15 cm of slab left (avalanche.org, read); "about" is ours.
constexpr std::int32_t kDeepTapFrom = pit::cm(100);
constexpr std::int32_t kSlabLeft = pit::cm(15);
constexpr std::int32_t kSlabLeftAbout = pit::cm(5);
// Ours: softer than four fingers all the way down is the "very soft" snow that the sources warn of.
constexpr auto kVerySoft = static_cast<std::uint8_t>(firnbook::HandHardness::FistPlus);
// Columns are cut with a saw and an eye; ours: a fifth.
constexpr std::int64_t kSizeTolerance = 5;

Place test_place(const pit::Test& test, int vtable_offset) {
  return place_of(Thing::test, static_cast<std::int32_t>(test.stored), field_id(vtable_offset));
}
Place fracture_place(const pit::Fracture& fracture, int vtable_offset) {
  return place_of(Thing::fracture, static_cast<std::int32_t>(fracture.test), field_id(vtable_offset),
                  static_cast<std::int32_t>(fracture.stored));
}

bool counts_taps(TestKind kind) {
  return kind == TestKind::CT || kind == TestKind::ECT || kind == TestKind::DT;
}

// Across and up the slope. Read: compression and deep tap test, extended column (avalanche.org), rutschblock
// (Foehn 1989); from memory: shovel shear, width of the saw test. 0 = not said, or ruled elsewhere.
struct Dimensions {
  TestKind kind;
  std::int32_t width, length;
};
constexpr Dimensions kDimensions[] = {
    {TestKind::CT, pit::cm(30), pit::cm(30)},   {TestKind::DT, pit::cm(30), pit::cm(30)},
    {TestKind::ECT, pit::cm(90), pit::cm(30)},  {TestKind::ST, pit::cm(30), pit::cm(30)},
    {TestKind::RB, pit::cm(200), pit::cm(150)}, {TestKind::PST, pit::cm(30), 0},
};

void check_size(std::int32_t measured, std::int32_t wanted, const Place& place, Reporter& out) {
  if (measured == pit::kUnknown || wanted == 0) return;
  const std::int64_t apart = std::abs(std::int64_t{measured} - wanted);
  if (apart * kSizeTolerance > wanted) out.add(CheckCode::column_size_unusual, place, measured, wanted);
}

void check_dimensions(const pit::Test& test, Reporter& out) {
  for (const Dimensions& row : kDimensions) {
    if (row.kind != test.kind) continue;
    check_size(pit::number_or_unknown(test.raw->column_width_10um()), row.width,
               test_place(test, StabilityTest::VT_COLUMN_WIDTH_10UM), out);
    check_size(test.column_length, row.length, test_place(test, StabilityTest::VT_COLUMN_LENGTH_10UM), out);
  }
}

// What was seen of a fracture, by field, and which of it belongs to a kind of test.
constexpr unsigned bit(int vtable_offset) {
  return 1u << field_id(vtable_offset);
}
constexpr unsigned kLook = bit(Fracture::VT_CHARACTER) | bit(Fracture::VT_QUALITY);
constexpr unsigned kTaps = bit(Fracture::VT_TAP) | bit(Fracture::VT_STAGE);

constexpr unsigned fields_of(TestKind kind) {
  switch (kind) {
    case TestKind::CT:
    case TestKind::DT:
      return kTaps | kLook;
    case TestKind::ECT:
      return kTaps | kLook | bit(Fracture::VT_TAP_CROSSED) | bit(Fracture::VT_CROSSING);
    case TestKind::PST:
      return kLook | bit(Fracture::VT_CUT_10UM) | bit(Fracture::VT_SAW_END);
    case TestKind::RB:
      return kLook | bit(Fracture::VT_STEP) | bit(Fracture::VT_JUMP) | bit(Fracture::VT_RELEASE);
    case TestKind::ST:
    case TestKind::hand_shear:
      return kLook | bit(Fracture::VT_EASE);
    default:
      return ~0u;  // described in words, or by a newer version
  }
}

constexpr unsigned if_seen(bool seen, int vtable_offset) {
  return static_cast<unsigned>(seen) << field_id(vtable_offset);
}

unsigned fields_seen(const pit::Fracture& fracture) {
  return if_seen(fracture.tap != 0, Fracture::VT_TAP) |
         if_seen(fracture.tap_crossed != 0, Fracture::VT_TAP_CROSSED) |
         if_seen(fracture.stage != 0, Fracture::VT_STAGE) |
         if_seen(fracture.character != 0, Fracture::VT_CHARACTER) |
         if_seen(fracture.quality != 0, Fracture::VT_QUALITY) |
         if_seen(fracture.crossing != 0, Fracture::VT_CROSSING) |
         if_seen(fracture.step != 0, Fracture::VT_STEP) | if_seen(fracture.jump != 0, Fracture::VT_JUMP) |
         if_seen(fracture.release != 0, Fracture::VT_RELEASE) |
         if_seen(fracture.cut != pit::kUnknown, Fracture::VT_CUT_10UM) |
         if_seen(fracture.saw_end != 0, Fracture::VT_SAW_END) |
         if_seen(fracture.ease != 0, Fracture::VT_EASE);
}

void check_foreign(const pit::Test& test, const pit::Fracture& fracture, Reporter& out) {
  const unsigned foreign = fields_seen(fracture) & ~fields_of(test.kind);
  if (foreign == 0) return;
  std::uint16_t first = 0;
  while ((foreign >> first & 1u) == 0) ++first;
  out.add(CheckCode::result_of_another_test,
          place_of(Thing::fracture, static_cast<std::int32_t>(fracture.test), first,
                   static_cast<std::int32_t>(fracture.stored)),
          static_cast<std::int64_t>(test.kind));
}

void check_rutschblock(const pit::View& pit, const pit::Fracture& fracture, Reporter& out) {
  const firnbook::Surface* surface = pit.raw().surface();
  const std::int32_t ski =
      surface == nullptr ? pit::kUnknown : pit::number_or_unknown(surface->penetration_ski_10um());
  const Place depth = fracture_place(fracture, Fracture::VT_DEPTH);
  if (ski != pit::kUnknown && fracture.depth != pit::kUnknown) {
    if (fracture.depth < ski) {
      out.add(CheckCode::rutschblock_above_penetration, depth, fracture.depth, ski);
    } else if (std::int64_t{fracture.depth} - ski > kRutschblockReach) {
      out.add(CheckCode::rutschblock_beyond_useful, depth, fracture.depth, ski);
    }
  }
  // The Swiss classes of steps 3 and 5 turn on how much came away (read).
  if (fracture.release == 0 && (fracture.step == 3 || fracture.step == 5)) {
    out.add(CheckCode::release_missing, fracture_place(fracture, Fracture::VT_RELEASE), fracture.step);
  }
  if (fracture.jump > kMostJumps ||
      (fracture.jump != 0 && fracture.step != 0 && fracture.step < kFirstJumpStep)) {
    out.add(CheckCode::jump_out_of_range, fracture_place(fracture, Fracture::VT_JUMP), fracture.jump,
            fracture.step);
  }
}

void check_rutschblock_slope(const pit::View& pit, const pit::Test& test, Reporter& out) {
  if (pit.slope_deg() != pit::kUnknown || test.raw->slope_deg()) return;
  out.add(CheckCode::rutschblock_slope_unknown, test_place(test, StabilityTest::VT_SLOPE_DEG));
}

void check_deep_tap(const pit::Test& test, Reporter& out) {
  const std::int32_t left = pit::number_or_unknown(test.raw->slab_left_10um());
  if (left == pit::kUnknown || std::abs(std::int64_t{left} - kSlabLeft) <= kSlabLeftAbout) return;
  out.add(CheckCode::deep_tap_slab_unusual, test_place(test, StabilityTest::VT_SLAB_LEFT_10UM), left,
          kSlabLeft);
}

// How deep the snow is softer than four fingers without a break, from the surface down.
std::int32_t soft_down_to(const pit::View& pit) {
  std::int32_t soft = 0;
  for (const pit::Layer& layer : pit.layers()) {
    const bool known = layer.hardness_top != 0 && layer.hardness_bottom != 0;
    if (layer.top != soft || layer.bottom == pit::kUnknown || !known) break;
    if (layer.hardness_top > kVerySoft || layer.hardness_bottom > kVerySoft) break;
    soft = layer.bottom;
  }
  return soft;
}

void check_depth_of_test(const pit::Test& test, const pit::Fracture& fracture, std::int32_t soft,
                         Reporter& out) {
  if (fracture.depth == pit::kUnknown) return;
  const Place place = fracture_place(fracture, Fracture::VT_DEPTH);
  if (test.kind == TestKind::DT && fracture.depth < kDeepTapFrom) {
    out.add(CheckCode::deep_tap_shallow, place, fracture.depth, kDeepTapFrom);
  }
  const bool column = test.kind == TestKind::CT || test.kind == TestKind::ECT;
  if (column && fracture.depth > 0 && fracture.depth <= soft) {
    out.add(CheckCode::slab_very_soft, place, static_cast<std::int64_t>(test.kind), fracture.depth);
  }
  const std::int32_t column_depth = pit::number_or_unknown(test.raw->column_depth_10um());
  if (column_depth != pit::kUnknown && fracture.depth > column_depth) {
    out.add(CheckCode::fracture_below_column, place, fracture.depth, column_depth);
  }
}

void check_unbroken(const pit::View& pit, const pit::Test& test, const pit::Fracture& fracture,
                    Reporter& out) {
  const auto* unbroken = test.raw->unbroken();
  for (std::uint32_t i = 0; i < pit::size_of(unbroken) && i < kMostListed; ++i) {
    const std::int32_t depth = pit.below_surface(unbroken->Get(i));
    if (depth == pit::kUnknown || depth != fracture.depth) continue;
    out.add(CheckCode::unbroken_contradicts_fracture, test_place(test, StabilityTest::VT_UNBROKEN), depth);
  }
}

void check_taps_given(const pit::Test& test, Reporter& out) {
  const std::uint8_t given = test.raw->taps_given().value_or(0);
  const bool unbroken = test.outcome == static_cast<std::uint8_t>(TestOutcome::no_fracture);
  if (!counts_taps(test.kind) || given == 0 || given >= kMostTaps || !unbroken) return;
  out.add(CheckCode::stopped_early, test_place(test, StabilityTest::VT_TAPS_GIVEN), given);
}

void check_fracture(const pit::View& pit, const pit::Test& test, const pit::Fracture& fracture,
                    std::int32_t soft, Reporter& out) {
  check_foreign(test, fracture, out);
  check_depth_of_test(test, fracture, soft, out);
  check_unbroken(pit, test, fracture, out);
  if (test.kind == TestKind::RB) check_rutschblock(pit, fracture, out);
  const std::uint8_t given = test.raw->taps_given().value_or(0);
  if (given != 0 && given < fracture.tap) {
    out.add(CheckCode::taps_given_contradict, test_place(test, StabilityTest::VT_TAPS_GIVEN), given,
            fracture.tap);
  }
  if (test.kind == TestKind::PST && fracture.cut != pit::kUnknown && fracture.saw_end == 0) {
    out.add(CheckCode::saw_end_missing, fracture_place(fracture, Fracture::VT_SAW_END));
  }
}

}  // namespace

void check_test_limits(const pit::View& pit, Reporter& out) {
  if (pit.tests().empty()) return;
  const std::int32_t soft = soft_down_to(pit);
  for (const pit::Test& test : pit.tests()) {
    check_dimensions(test, out);
    check_taps_given(test, out);
    if (test.kind == TestKind::RB) check_rutschblock_slope(pit, test, out);
    if (test.kind == TestKind::DT) check_deep_tap(test, out);
    for (std::uint32_t i = 0; i < test.fracture_count; ++i) {
      check_fracture(pit, test, pit.fractures()[test.first_fracture + i], soft, out);
    }
  }
}

}  // namespace firn::checking
