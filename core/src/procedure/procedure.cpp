#include "procedure/procedure.h"

namespace firn::procedure {
namespace {

using firnbook::StepKind;
using firnbook::TestKind;
using firnbook::Verified;
using pit::cm;

constexpr std::uint16_t of(TestKind test) {
  return static_cast<std::uint16_t>(1u << static_cast<unsigned>(test));
}
constexpr std::uint16_t kAlways = 0;
constexpr Column kNone = {0, 0, 0, 0};

// Sources are those of the observation standards and courses; "from memory" where no text was at hand.
constexpr Step kSteps[] = {
    {StepKind::kit_within_reach, true, Verified::memory, 0, kAlways,
     "Transceiver on the body and sending; shovel, probe and all that this pit needs within reach beside the "
     "pit, not above it.",
     "transceiver, shovel, probe; for the pit: snow saw or knotted cord, ruler, crystal card, loupe, "
     "thermometers, slope meter, book and pencil",
     "a rescue that starts late because kit lies out of reach or under the snow",
     "common practice; the list of kit from memory", kNone},
    {StepKind::pack_closed, true, Verified::practice, 0, kAlways,
     "Close the pack again and put it where it can be taken at once.", "",
     "kit lost in the snow, and time lost when everybody has to leave", "common practice", kNone},
    {StepKind::phone_away_from_transceiver, true, Verified::practice, 0, kAlways,
     "Keep phones and other electronics 20 cm from a transceiver that sends, and 50 cm away or off while one "
     "searches. The manual of the device comes first.",
     "", "a signal that is weakened, or a search that follows a disturbance",
     "common practice; the manual of the device prevails", kNone},
    {StepKind::representative_spot, false, Verified::read_secondary, 0, kAlways,
     "Choose a spot like the terrain in question: aspect, elevation, incline, snow depth and wind. No "
     "tracks, "
     "no debris, no scoured snow, some 5 m from trees.",
     "slope meter, compass, elevation", "a pit that tells of other snow than that of the terrain in question",
     "Campbell, The Compression Test (after OGRS 2007), and fsavalanche.org course page, read in secondary "
     "sources",
     kNone},
    {StepKind::spot_of_little_consequence, true, Verified::read_secondary, 0, kAlways,
     "Choose a small, short slope without a terrain trap below. Gentle ground will do: only the rutschblock "
     "asks for a minimum incline. Where a slide could still hurt, one digs and the others watch from beyond "
     "its reach.",
     "", "being carried by the slope that is being asked about",
     "Campbell, The Compression Test (after OGRS 2007), and fsavalanche.org course pages, read in secondary "
     "sources; that a gentle spot is never marked down: common practice",
     kNone},
    {StepKind::nobody_and_nothing_above, true, Verified::memory, 0, kAlways,
     "Nobody stands, rides or leaves kit on the snow above the wall, and no cornice or other party hangs "
     "over "
     "it.",
     "", "a slope set off onto the people in the pit, and layers disturbed before they are tested",
     "common practice, from memory; not under a cornice: fsavalanche.org course page, read in a secondary "
     "source",
     kNone},
    {StepKind::probed_for_even_depth, false, Verified::memory, 0, kAlways,
     "Probe around the spot, three times at least, and write the depths down. Dig where they are alike; one "
     "strike far from the rest means rock, bush, log or a hollow.",
     "probe", "layers and tests that change from step to step over rocks, shrubs or hollows",
     "practice from memory; the number of strikes is ours", kNone},
    {StepKind::slope_steep_enough, false, Verified::read, kRutschblockSlope_deg, of(TestKind::RB),
     "Measure the incline: a rutschblock needs 30 degrees or more. Where that would put somebody at risk, "
     "leave the rutschblock out and use another test.",
     "slope meter", "a block that cannot slide and so tells nothing", "Foehn 1989, read", kNone},
    {StepKind::dug_from_below, false, Verified::memory, 0, kAlways,
     "Dig from below, wide enough to work in; the wall and the snow above it stay untouched.", "shovel",
     "a test wall that was stepped on, and standing on the snow that may break",
     "common practice, from memory", kNone},
    {StepKind::wall_vertical_and_shaded, false, Verified::read_secondary, 0, kAlways,
     "Cut the wall smooth, vertical and in the shade, just before it is read: on a slope the uphill wall, on "
     "flat ground the wall on the sun's side, which lies in its own shade.",
     "shovel", "a wall that the sun has warmed, and depths read along a slant",
     "shaded and uphill wall: a snow pit protocol, read in a secondary source; vertical and fresh: from "
     "memory",
     kNone},
    {StepKind::compression_column_isolated,
     false,
     Verified::read_secondary,
     0,
     of(TestKind::CT),
     "Isolate a column 30 cm across and 30 cm up the slope, 100 to 120 cm deep: taller columns wobble. Write "
     "down what breaks while cutting (CTV).",
     "shovel; snow saw or cord; ruler",
     "a score from a column of another size, or one still held at its back",
     "Campbell, The Compression Test (after OGRS 2007), read in a secondary source",
     {cm(30), cm(30), cm(100), 0}},
    {StepKind::extended_column_isolated,
     false,
     Verified::read_secondary,
     0,
     of(TestKind::ECT),
     "Isolate a column 90 cm across and 30 cm up the slope, down to below the layer in question, about 1 m "
     "at most. Write down a crack that crosses while cutting (ECTPV).",
     "shovel; snow saw, or knotted cord around two probes or poles; ruler",
     "a crack that stops where the column was not cut through",
     "avalanche.org encyclopedia and fsavalanche.org page on the test, read in secondary sources; for the "
     "depth, others say 70 or 120 cm",
     {cm(90), cm(30), cm(100), 0}},
    {StepKind::deep_tap_column_isolated,
     false,
     Verified::read_secondary,
     0,
     of(TestKind::DT),
     "Isolate a column 30 cm across and 30 cm up the slope to below the deep layer, then cut the slab away "
     "down to 15 cm above that layer.",
     "shovel; snow saw or cord; ruler",
     "taps that the slab swallows before they reach the layer",
     "avalanche.org encyclopedia, read in a secondary source",
     {cm(30), cm(30), 0, cm(15)}},
    {StepKind::saw_column_isolated,
     false,
     Verified::read_secondary,
     0,
     of(TestKind::PST),
     "Isolate a column 30 cm across and 100 cm up the slope, or as long as the layer is deep where that is "
     "more, to below the layer. Mark the layer before sawing.",
     "shovel; snow saw with a blunt back; cord or second saw; ruler",
     "a cut that leaves the layer, or a column too short for its slab",
     "a published avalanche-course field book (SAS, version 2), read in a secondary source; marking from "
     "memory",
     {cm(30), cm(100), 0, 0}},
    {StepKind::rutschblock_isolated,
     false,
     Verified::read,
     0,
     of(TestKind::RB),
     "Isolate a block 2 m across and 1.5 m up the slope on all sides, to below the layers in question. Write "
     "down what breaks while cutting (RB1).",
     "shovel; cord or long saw; skis or board; a partner",
     "a block that is held at its sides or back",
     "Foehn 1989, read; the depth from memory",
     {cm(200), cm(150), 0, 0}},
    {StepKind::shear_column_isolated,
     false,
     Verified::memory,
     0,
     of(TestKind::ST),
     "Isolate a column 30 cm across and 30 cm up the slope; cut its back only down to the layer, so that the "
     "shovel pulls on one layer at a time.",
     "shovel; snow saw; ruler",
     "a pull that bends the column instead of shearing a layer",
     "from memory",
     {cm(30), cm(30), 0, 0}},
    {StepKind::pit_filled_in, true, Verified::memory, 0, kAlways, "Fill the pit in before leaving.", "shovel",
     "somebody falling or riding into the hole", "common practice, from memory", kNone},
};
constexpr std::size_t kStepCount = sizeof kSteps / sizeof kSteps[0];

}  // namespace

const Step* all_steps(std::size_t& count) {
  count = kStepCount;
  return kSteps;
}

const Step* find_step(StepKind kind) {
  for (const Step& step : kSteps) {
    if (step.kind == kind) return &step;
  }
  return nullptr;
}

bool belongs_to(const Step& step, TestKind test) {
  return step.tests == kAlways || test == TestKind::none || (step.tests & of(test)) != 0;
}

Ticks::Ticks(const firnbook::Pit& pit) {
  const auto* steps = pit.steps();
  any_ = pit::size_of(steps) > 0;
  for (std::uint32_t i = 0; i < pit::size_of(steps); ++i) {
    const firnbook::Step* step = steps->Get(i);
    const std::size_t kind = pit::number(step->kind());
    if (kind >= kKinds || !step->done()) continue;
    Tick& tick = ticks_[kind];
    if (tick.state == Ticked::not_done || (*step->done() && tick.state == Ticked::done)) continue;
    tick = {*step->done() ? Ticked::done : Ticked::not_done, static_cast<std::int32_t>(i)};
  }
}

Tick Ticks::of(StepKind kind) const {
  const auto number = static_cast<std::size_t>(kind);
  return number < kKinds ? ticks_[number] : Tick{};
}

}  // namespace firn::procedure
