// Cautions: those of this pit in the order in which they tell most, then the full list that holds for every
// pit.
//
// The order is ours: what was seen on the way; whether the record can be leaned on; how the snow varies here;
// what the tests left open; what nobody looked at or did; how the place compares; what is missing. A short
// text prints the first three.
#include <tuple>

#include "interpretation/evidence.h"
#include "procedure/procedure.h"

namespace firn::interpretation {
namespace {

using firnbook::Caution;
using firnbook::CautionKey;
using firnbook::CheckCode;
using firnbook::Place;

class Gatherer {
 public:
  Gatherer(const pit::View& pit, const Parameters& parameters, Analysis& analysis)
      : pit_(pit), parameters_(parameters), analysis_(analysis) {}

  void run() {
    signs_seen();
    record();
    snow();
    tests();
    signs_not_looked_for();
    steps();
    unreliable();
    site();
    bulletin();
    whole_pit_cautions();
    standing();
  }

 private:
  void put(CautionKey key, const Place& place = whole_pit(), std::int32_t a = 0, std::int32_t b = 0) {
    analysis_.cautions.emplace_back(place, a, b, key, std::uint8_t{1});
  }

  void signs_seen() {
    const Finding* first = nullptr;
    std::int32_t count = 0;
    for (const Finding& finding : analysis_.findings) {
      if (finding.method() == Method::yellow_flags) break;  // signs come before structure
      if (finding.method() != Method::field_signs || finding.verdict() != Verdict::raises) continue;
      if (first == nullptr) first = &finding;
      ++count;
    }
    if (first == nullptr) return;
    const bool slide = first->key() == FindingKey::slide_seen;
    const std::int32_t kind = slide ? static_cast<std::int32_t>(firnbook::SignKind::slides) : first->a();
    put(CautionKey::sign_of_instability_seen, first->subject(), kind, count);
  }

  void record() {
    if (pit_.raw().practice().value_or(false)) put(CautionKey::practice_pit);
    if (pit_.newer()) put(CautionKey::newer_schema);
    const firnbook::Check* first = nullptr;
    std::int32_t errors = 0;
    for (const firnbook::Check& check : analysis_.checks) {
      if (check.severity() != firnbook::Severity::error) continue;
      if (first == nullptr) first = &check;
      ++errors;
    }
    if (first != nullptr) put(CautionKey::record_has_errors, first->place(), errors);
  }

  void snow() {
    for (const firnbook::Check& check : analysis_.checks) {
      if (check.code() != CheckCode::probing_uneven) continue;
      const auto* probes = pit_.raw().site() == nullptr ? nullptr : pit_.raw().site()->probes_10um();
      if (pit::size_of(probes) == 0) break;
      const auto range = std::minmax_element(probes->begin(), probes->end());
      put(CautionKey::probing_uneven, check.place(), *range.first, *range.second);
      break;
    }
  }

  void tests() {
    const Workspace& work = analysis_.workspace;
    if (work.reached_once >= 0) {
      put(CautionKey::layer_reached_by_one_test_only, place_of(Thing::test, work.reached_by, kWholeThing),
          depth_of(work.reached_once), work.reached_once);
    }
    if (work.not_reached >= 0 && pit::size_of(pit_.raw().tests()) > 0) {
      put(CautionKey::layer_not_loaded, whole_pit(), depth_of(work.not_reached), work.not_reached);
    }
    const pit::Test* first = nullptr;
    std::int32_t not_valid = 0;
    for (const pit::Test& test : pit_.tests()) {
      if (is_valid(test)) continue;
      if (first == nullptr) first = &test;
      ++not_valid;
    }
    if (first != nullptr) put(CautionKey::test_not_valid, place_of_test(*first), not_valid);
  }

  std::int32_t depth_of(std::int32_t concern) const {
    return analysis_.concerns[static_cast<std::size_t>(concern)].top;
  }

  void signs_not_looked_for() {
    const std::int32_t open = unanswered_signs(pit_);
    if (open != 0) put(CautionKey::signs_not_looked_for, whole_pit(), open);
  }

  // Steps that guard people. A pit without a single tick was recorded without the list and says nothing here.
  void steps() {
    const procedure::Ticks ticks(pit_.raw());
    if (!ticks.any()) return;
    std::size_t count = 0;
    const procedure::Step* all = procedure::all_steps(count);
    for (std::size_t i = 0; i < count; ++i) {
      if (all[i].guards_people) step(all[i].kind, ticks.of(all[i].kind));
    }
  }

  void step(firnbook::StepKind kind, const procedure::Tick& tick) {
    const auto number = static_cast<std::int32_t>(kind);
    if (tick.state == procedure::Ticked::not_done) {
      put(CautionKey::step_not_done, place_of(Thing::step, tick.stored, kWholeThing), number);
    } else if (tick.state == procedure::Ticked::not_said) {
      // The record has a field of its own for a pit that was filled in, and a caution for one that was not.
      if (kind == firnbook::StepKind::pit_filled_in && pit_.raw().backfilled()) return;
      put(CautionKey::step_not_ticked, place_of(Thing::pit, -1, field_id(firnbook::Pit::VT_STEPS)), number);
    }
  }

  // Each value marked unreliable that a raising finding rests on, once, in order of place.
  void unreliable() {
    if (!pit_.any_unreliable()) return;
    const std::size_t from = analysis_.cautions.size();
    for (const Finding& finding : analysis_.findings) {
      if (finding.verdict() == Verdict::raises || finding.verdict() == Verdict::fact) rests_on(finding);
    }
    const auto key = [](const Caution& caution) {
      const Place& place = caution.place();
      return std::make_tuple(place.thing(), place.index(), place.sub(), place.field());
    };
    const auto begin = analysis_.cautions.begin() + static_cast<std::ptrdiff_t>(from);
    std::sort(begin, analysis_.cautions.end(),
              [&key](const Caution& one, const Caution& other) { return key(one) < key(other); });
    analysis_.cautions.erase(
        std::unique(begin, analysis_.cautions.end(),
                    [&key](const Caution& one, const Caution& other) { return key(one) == key(other); }),
        analysis_.cautions.end());
  }

  void rest(std::uint64_t mask, Thing thing, std::int32_t index, std::uint16_t field, std::int32_t sub = -1) {
    if (field < 64 && (mask >> field & 1u) != 0)
      put(CautionKey::rests_on_unreliable, place_of(thing, index, field, sub));
  }

  void rests_on(const Finding& finding) {
    switch (finding.method()) {
      case Method::field_signs:
        return rests_on_sign(finding.subject());
      case Method::compression_test:
      case Method::deep_tap_test:
      case Method::shear_quality:
      case Method::rutschblock_swiss:
      case Method::shear_tests:
      case Method::extended_column_swiss:
      case Method::saw_test:
      case Method::unclassed_tests:
        return rests_on_test(finding);
      case Method::yellow_flags:
        return rests_on_layers(finding);
      case Method::temperature_gradient:
        return rests_on_readings(finding);
      default:
        return;
    }
  }

  void rests_on_sign(const Place& subject) {
    if (subject.thing() == Thing::slide) {
      const auto* slide = pit_.raw().slides()->Get(static_cast<std::uint32_t>(subject.index()));
      if (slide->unreliable() != 0) put(CautionKey::rests_on_unreliable, subject);
      return;
    }
    const auto* sign = pit_.raw().signs()->Get(static_cast<std::uint32_t>(subject.index()));
    rest(sign->unreliable(), Thing::sign, subject.index(), field_id(firnbook::Sign::VT_KIND));
    rest(sign->unreliable(), Thing::sign, subject.index(), field_id(firnbook::Sign::VT_ANSWER));
  }

  void rests_on_test(const Finding& finding) {
    using firnbook::Fracture;
    const Place& subject = finding.subject();
    const pit::Fracture* fracture = fracture_of(pit_, finding);
    if (fracture == nullptr) return;
    for (const int field :
         {Fracture::VT_DEPTH, Fracture::VT_TAP, Fracture::VT_TAP_CROSSED, Fracture::VT_STAGE,
          Fracture::VT_CHARACTER, Fracture::VT_QUALITY, Fracture::VT_CROSSING, Fracture::VT_STEP,
          Fracture::VT_RELEASE, Fracture::VT_CUT_10UM, Fracture::VT_SAW_END, Fracture::VT_EASE}) {
      rest(fracture->unreliable, Thing::fracture, subject.index(), field_id(field), subject.sub());
    }
    if (finding.method() != Method::saw_test) return;
    rest(test_of(pit_, finding)->raw->unreliable(), Thing::test, subject.index(),
         field_id(firnbook::StabilityTest::VT_COLUMN_LENGTH_10UM));
  }

  void rest_on_layer(const pit::Layer& layer, int field) {
    rest(layer.unreliable, Thing::layer, static_cast<std::int32_t>(layer.stored), field_id(field));
  }

  // The side of a layer that touches the boundary, in whichever field it was written.
  void rest_on_hardness(const pit::Layer& layer, bool at_top) {
    using firnbook::Layer;
    const bool own =
        at_top ? layer.raw->hardness_top().has_value() : layer.raw->hardness_bottom().has_value();
    rest_on_layer(layer, !own     ? Layer::VT_HARDNESS
                         : at_top ? Layer::VT_HARDNESS_TOP
                                  : Layer::VT_HARDNESS_BOTTOM);
  }

  // Findings name layers by stored position and flags come in the order of the view: one walk finds both.
  void rests_on_layers(const Finding& finding) {
    using firnbook::Layer;
    if (finding.key() == FindingKey::flag_count) return;
    const pit::Layer* above = nullptr;
    const pit::Layer* below = nullptr;
    sides(finding, above, below);
    const bool weaker_above = finding.c() == 1;
    const pit::Layer* weaker = weaker_above ? above : below;
    switch (finding.key()) {
      case FindingKey::flag_grain_size:
        return rest_on_layer(*weaker, Layer::VT_GRAIN_SIZE_10UM);
      case FindingKey::flag_hardness:
        return rest_on_hardness(*weaker, !weaker_above);
      case FindingKey::flag_grain_form:
        return rest_on_layer(*weaker, Layer::VT_GRAIN_FORM);
      case FindingKey::flag_size_difference:
        rest_on_layer(*above, Layer::VT_GRAIN_SIZE_10UM);
        return rest_on_layer(*below, Layer::VT_GRAIN_SIZE_10UM);
      case FindingKey::flag_hardness_difference:
        rest_on_hardness(*above, false);
        return rest_on_hardness(*below, true);
      default:
        if (above != nullptr) rest_on_layer(*above, Layer::VT_BOTTOM);
        return rest_on_layer(*below, Layer::VT_TOP);
    }
  }

  // Seven findings a boundary, in the order of the boundaries, then seven a layer without neighbours.
  void sides(const Finding& finding, const pit::Layer*& above, const pit::Layer*& below) {
    if (first_flag_ == nullptr) {
      first_flag_ = &finding;
      while (first_flag_ != analysis_.findings.data() && (first_flag_ - 1)->method() == Method::yellow_flags)
        --first_flag_;
    }
    const std::size_t boundary = static_cast<std::size_t>(&finding - first_flag_) / 7;
    if (boundary < pit_.boundaries().size()) {
      above = &pit_.layers()[pit_.boundaries()[boundary].above];
      below = &pit_.layers()[pit_.boundaries()[boundary].below];
      return;
    }
    const Finding& count = first_flag_[boundary * 7 + 6];
    const std::uint32_t stored = static_cast<std::uint32_t>(count.subject().index());
    while (pit_.layers()[alone_].stored != stored) ++alone_;
    below = &pit_.layers()[alone_];
  }

  void rests_on_readings(const Finding& finding) {
    for (const std::int32_t stored : {finding.subject().index(), finding.c()}) {
      const auto* reading = pit_.raw().temperatures()->Get(static_cast<std::uint32_t>(stored));
      rest(reading->unreliable(), Thing::temperature, stored,
           field_id(firnbook::TemperatureReading::VT_DEPTH));
      rest(reading->unreliable(), Thing::temperature, stored,
           field_id(firnbook::TemperatureReading::VT_TEMPERATURE_CDEGC));
    }
  }

  void compare(const flatbuffers::Optional<firnbook::Comparison>& comparison, int field) {
    using firnbook::Comparison;
    if (!comparison || *comparison == Comparison::same || *comparison == Comparison::similar) return;
    put(CautionKey::site_differs, place_of(Thing::choice, -1, field_id(field)),
        static_cast<std::int32_t>(*comparison));
  }

  void site() {
    if (const firnbook::Choice* choice = pit_.raw().choice()) {
      compare(choice->aspect(), firnbook::Choice::VT_ASPECT);
      compare(choice->elevation(), firnbook::Choice::VT_ELEVATION);
      compare(choice->wind_loading(), firnbook::Choice::VT_WIND_LOADING);
      compare(choice->incline(), firnbook::Choice::VT_INCLINE);
    }
    if (pit_.hs() >= 0 && pit_.hs() < parameters_.shallow_snow_10um) {
      put(CautionKey::shallow_snow, place_of(Thing::snowpack, -1, field_id(firnbook::Snowpack::VT_HS_10UM)),
          pit_.hs());
    }
  }

  void bulletin() {
    using firnbook::BulletinState;
    const firnbook::BulletinSeen* seen = pit_.raw().bulletin();
    const Place place = place_of(Thing::bulletin, -1, kWholeThing);
    if (seen == nullptr || !seen->state()) return put(CautionKey::bulletin_not_looked_at, place, 0, 1);
    if (*seen->state() == BulletinState::none_issued) return put(CautionKey::no_bulletin, place);
    if (*seen->state() != BulletinState::issued) put(CautionKey::bulletin_not_looked_at, place);
  }

  void whole_pit_cautions() {
    if (pit::size_of(pit_.raw().tests()) == 0) put(CautionKey::no_tests);
    if (pit_.layers().empty()) put(CautionKey::no_layers);
    const firnbook::Site* place = pit_.raw().site();
    const bool known =
        place != nullptr && place->elevation_10um() && (place->aspect_point() || place->aspect_deg());
    if (!known) put(CautionKey::site_unknown, place_of(Thing::site, -1, kWholeThing));
    if (!pit_.raw().backfilled().value_or(true)) {
      put(CautionKey::not_backfilled, place_of(Thing::pit, -1, field_id(firnbook::Pit::VT_BACKFILLED)));
    }
  }

  void standing() {
    for (const CautionKey key : {CautionKey::one_pit_is_one_point, CautionKey::snow_varies,
                                 CautionKey::tests_miss, CautionKey::pit_is_of_its_time,
                                 CautionKey::defer_to_bulletin_and_people, CautionKey::absence_is_no_proof}) {
      analysis_.cautions.emplace_back(whole_pit(), 0, 0, key, std::uint8_t{0});
    }
  }

  const pit::View& pit_;
  const Parameters& parameters_;
  Analysis& analysis_;
  const Finding* first_flag_ = nullptr;
  std::size_t alone_ = 0;
};

}  // namespace

void gather_cautions(const pit::View& pit, const Parameters& parameters, Analysis& analysis) {
  analysis.cautions.clear();
  Gatherer(pit, parameters, analysis).run();
}

}  // namespace firn::interpretation
