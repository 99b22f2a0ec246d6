// What a pit shows of each kind of avalanche problem. README.md has the rules with their sources.
//
// Evidence is what the interpretation found already (a concern, a sign) or what the record says (a wet
// layer); nothing is classed anew here. No evidence means "not shown" only where the record had to show it:
// else something keeps the pit from speaking, and that is said instead.
#include <algorithm>

#include "bulletin/compare.h"

namespace firn::bulletin {
namespace {

using firnbook::BulletinEvidence;
using firnbook::ConcernRank;
using firnbook::EvidenceKind;
using firnbook::Finding;
using firnbook::FindingKey;
using firnbook::GrainForm;
using firnbook::ProblemKind;
using firnbook::SignKind;
using firnbook::SpeakLimit;
using firnbook::TestKind;
using firnbook::Thing;
using interpretation::Analysis;
using interpretation::Concern;

// Main classes as bits: bit n is the class whose forms have the tens digit n.
using Classes = std::uint32_t;
constexpr Classes bit_of(GrainForm form) {
  return 1u << static_cast<std::uint8_t>(form) / 10;
}
constexpr Classes kFresh = bit_of(GrainForm::PP) | bit_of(GrainForm::DF);
constexpr Classes kRounded = bit_of(GrainForm::RG);
constexpr Classes kPersistent = bit_of(GrainForm::FC) | bit_of(GrainForm::DH) | bit_of(GrainForm::SH);

// What a layer may be: its form, or what its words may mean; 0 where nothing was recorded.
Classes classes_of(const firnbook::Layer& layer) {
  constexpr std::uint32_t kMostCandidates = 16;
  if (layer.grain_form()) {
    const auto form = static_cast<std::uint8_t>(*layer.grain_form());
    return form >= 10 && form <= 99 ? 1u << form / 10 : 0;
  }
  Classes all = 0;
  const std::uint32_t count = std::min(pit::size_of(layer.candidates()), kMostCandidates);
  for (std::uint32_t i = 0; i < count; ++i) {
    const auto form = static_cast<std::uint8_t>(layer.candidates()->Get(i));
    if (form >= 10 && form <= 99) all |= 1u << form / 10;
  }
  return all;
}
bool is_only(Classes classes, Classes wanted) {
  return classes != 0 && (classes & ~wanted) == 0;
}
bool may_be(Classes classes, Classes wanted) {
  return classes == 0 || (classes & wanted) != 0;
}

// Grains that wind packed or broke (ICSSG).
bool is_wind_made(const pit::Layer& layer) {
  return layer.form == static_cast<std::uint8_t>(GrainForm::RGwp) ||
         layer.form == static_cast<std::uint8_t>(GrainForm::DFbk);
}
bool is_wet(const pit::Layer& layer) {
  return layer.wetness >= static_cast<std::uint8_t>(firnbook::Wetness::W) ||
         layer.form == static_cast<std::uint8_t>(GrainForm::MFsl);
}

constexpr std::size_t at(ProblemKind kind) {
  return static_cast<std::size_t>(kind);
}

class Gatherer {
 public:
  Gatherer(const pit::View& pit, const Analysis& analysis) : pit_(pit), analysis_(analysis) {}

  Shown gather() {
    measure();
    for (std::size_t i = 0; i < analysis_.concerns.size(); ++i) concern(static_cast<std::int32_t>(i));
    signs();
    wet_layers();
    set_limits();
    shown_.slab_is_doubtful = !sure_of_slab_;
    return std::move(shown_);
  }

 private:
  // No list that somebody reads is longer.
  static constexpr std::size_t kMostEvidence = 16;

  void put(ProblemKind kind, EvidenceKind what, std::int32_t index) {
    std::vector<BulletinEvidence>& list = shown_.evidence[at(kind)];
    if (list.size() < kMostEvidence) list.emplace_back(index, what);
  }

  void measure();
  void measure_fresh_snow();
  void measure_reach();
  void concern(std::int32_t index);
  Classes classes_of_concern(const Concern& concern, std::int32_t weaker) const;
  Classes classes_named(const Concern& concern) const;
  enum class Slab : std::uint8_t { none, made_by_wind, harder, on_persistent };
  Slab slab_on(std::int32_t above, std::int32_t below);
  Slab slab_above(const Concern& concern, std::int32_t weaker);
  std::int32_t position_of(std::int32_t stored) const {
    const bool is_there = stored >= 0 && static_cast<std::size_t>(stored) < position_.size();
    return is_there ? position_[static_cast<std::size_t>(stored)] : -1;
  }
  void signs();
  void sign(SignKind kind, std::int32_t finding);
  void slide(const Finding& finding, std::int32_t index);
  bool faces_as_the_pit(const firnbook::Slide& slide) const;
  void wet_layers();
  void set_limits();
  SpeakLimit limit_of_persistent() const;
  SpeakLimit limit_of_fresh(bool is_there, std::int32_t down_to) const;
  SpeakLimit limit_of_wet() const;
  bool reaches_the_ground() const;

  const pit::View& pit_;
  const Analysis& analysis_;
  Shown shown_;
  std::vector<std::int32_t> position_;  // in View::layers, by stored position
  // Down to where there is nothing but fresh snow; nothing but snow that fell or was blown here lately.
  std::int32_t fresh_to_ = 0, recent_to_ = 0;
  // The snow near the surface ended at a layer whose grains nobody recorded.
  bool fresh_unknown_ = false, recent_unknown_ = false;
  bool has_slab_ = false, sure_of_slab_ = false, slab_hardness_unknown_ = false;
  std::int32_t slab_to_ = 0;
  std::int32_t reach_ = -1;  // deepest snow that a valid test loaded
  bool buried_persistent_ = false;
  std::int32_t buried_persistent_at_ = pit::kUnknown;
};

// A slab that wind may have made: packed or broken grains; or rounded ones, harder than what they lie on
// (ours). Snow that fell harder on softer is a storm slab, so decomposing grains alone do not count.
void Gatherer::measure_fresh_snow() {
  bool fresh = true;
  for (std::size_t i = 0; i < pit_.layers().size(); ++i) {
    const pit::Layer& layer = pit_.layers()[i];
    if (!layer.has_span() || (i == 0 && layer.top != 0)) break;
    if (i > 0 && pit_.layers()[i - 1].bottom != layer.top) break;
    const Classes classes = classes_of(*layer.raw);
    // Surface hoar on top is not buried yet.
    if (i == 0 && is_only(classes, bit_of(GrainForm::SH))) continue;
    if (classes == 0) {
      fresh_unknown_ = fresh_unknown_ || fresh;
      recent_unknown_ = true;
      break;
    }
    if (!is_only(classes, kFresh | kRounded)) break;
    fresh = fresh && is_only(classes, kFresh);
    if (fresh) fresh_to_ = layer.bottom;
    recent_to_ = layer.bottom;
    if (is_wind_made(layer) || may_be(classes, kRounded)) {
      has_slab_ = true;
      slab_to_ = layer.bottom;
    }
  }
}

// How deep the valid column tests went: to their deepest fracture, or as deep as the column was cut. A column
// of which nobody wrote that down is taken to be a metre, as everywhere in this library.
void Gatherer::measure_reach() {
  constexpr std::int32_t kUsualColumn = pit::cm(100);
  for (const pit::Test& test : pit_.tests()) {
    if (test.outcome == static_cast<std::uint8_t>(firnbook::TestOutcome::not_valid)) continue;
    if (test.kind == TestKind::PST || test.kind == TestKind::none) continue;
    for (std::uint32_t k = 0; k < test.fracture_count; ++k) {
      const std::int32_t depth = pit_.fractures()[test.first_fracture + k].depth;
      if (depth != pit::kUnknown) reach_ = std::max(reach_, depth);
    }
    const bool to_the_end = test.fracture_count == 0 &&
                            test.outcome == static_cast<std::uint8_t>(firnbook::TestOutcome::no_fracture);
    if (to_the_end) reach_ = std::max(reach_, test.raw->column_depth_10um().value_or(kUsualColumn));
  }
}

void Gatherer::measure() {
  position_.assign(pit::size_of(pit_.raw().layers()), -1);
  for (std::size_t i = 0; i < pit_.layers().size(); ++i) {
    const pit::Layer& layer = pit_.layers()[i];
    if (layer.stored < position_.size()) position_[layer.stored] = static_cast<std::int32_t>(i);
    const bool buried = layer.top == pit::kUnknown || layer.top > 0;
    if (!buried || !is_only(classes_of(*layer.raw), kPersistent)) continue;
    if (!buried_persistent_) buried_persistent_at_ = layer.top;
    buried_persistent_ = true;
  }
  measure_fresh_snow();
  measure_reach();
}

// The grains that the tests of a concern name, where no layer is known there.
Classes Gatherer::classes_named(const Concern& concern) const {
  for (std::uint32_t k = 0; k < concern.evidence_count; ++k) {
    const Finding& finding = analysis_.findings[analysis_.evidence[concern.first_evidence + k]];
    if (finding.subject().thing() != Thing::fracture) continue;
    const auto& test = pit_.tests()[static_cast<std::size_t>(finding.subject().index())];
    const auto& fracture =
        pit_.fractures()[test.first_fracture + static_cast<std::size_t>(finding.subject().sub())];
    if (fracture.raw->on() != nullptr && fracture.raw->on()->grain_form()) {
      return classes_of(*fracture.raw->on());
    }
  }
  return 0;
}

Classes Gatherer::classes_of_concern(const Concern& concern, std::int32_t weaker) const {
  const Classes layer = weaker < 0 ? 0 : classes_of(*pit_.layers()[static_cast<std::size_t>(weaker)].raw);
  return layer != 0 ? layer : classes_named(concern);
}

Gatherer::Slab Gatherer::slab_on(std::int32_t above, std::int32_t below) {
  if (above < 0 || below < 0) return Slab::none;
  const pit::Layer& slab = pit_.layers()[static_cast<std::size_t>(above)];
  const pit::Layer& weak = pit_.layers()[static_cast<std::size_t>(below)];
  if (slab.bottom != weak.top || slab.bottom == pit::kUnknown || slab.bottom > recent_to_) return Slab::none;
  if (is_wind_made(slab)) return Slab::made_by_wind;
  if (!is_only(classes_of(*slab.raw), kRounded)) return Slab::none;
  if (slab.hardness_bottom == 0 || weak.hardness_top == 0) {
    slab_hardness_unknown_ = true;
    return Slab::none;
  }
  if (slab.hardness_bottom <= weak.hardness_top) return Slab::none;
  return is_only(classes_of(*weak.raw), kPersistent) ? Slab::on_persistent : Slab::harder;
}

// What lies on the weaker layer, and what lies on the boundary: wind-broken snow may be the softer side
// itself.
Gatherer::Slab Gatherer::slab_above(const Concern& concern, std::int32_t weaker) {
  const Slab on_weaker = slab_on(weaker - 1, weaker);
  if (on_weaker != Slab::none || concern.kind != firnbook::ConcernKind::boundary) return on_weaker;
  return slab_on(position_of(concern.layer), position_of(concern.layer_below));
}

void Gatherer::concern(std::int32_t index) {
  const Concern& one = analysis_.concerns[static_cast<std::size_t>(index)];
  // Such a break says little either way: it shows nothing.
  if (one.rank == ConcernRank::little) return;
  const std::int32_t weaker = position_of(one.weaker_layer);
  bool fits = false;
  const auto fit = [&](ProblemKind kind) {
    put(kind, EvidenceKind::concern, index);
    fits = true;
  };
  if (is_only(classes_of_concern(one, weaker), kPersistent) && one.top != 0) {
    fit(ProblemKind::persistent_weak_layers);
  }
  if (one.top >= 0 && one.top <= fresh_to_ && fresh_to_ > 0) fit(ProblemKind::new_snow);
  const Slab slab = slab_above(one, weaker);
  if (slab != Slab::none) fit(ProblemKind::wind_slab);
  sure_of_slab_ = sure_of_slab_ || slab == Slab::made_by_wind || slab == Slab::harder;
  if (weaker >= 0 && is_wet(pit_.layers()[static_cast<std::size_t>(weaker)])) fit(ProblemKind::wet_snow);
  // Structure that broke nowhere is not yet something that fits no kind.
  if (!fits && one.rank != ConcernRank::structure) put(ProblemKind::none, EvidenceKind::concern, index);
}

// Which signs speak of which kind (ours, but for whumpfs on persistent layers: Swiss service, read).
void Gatherer::sign(SignKind kind, std::int32_t finding) {
  switch (kind) {
    case SignKind::whumpf:
      if (buried_persistent_) put(ProblemKind::persistent_weak_layers, EvidenceKind::finding, finding);
      return;
    case SignKind::cracking:
      if (fresh_to_ > 0) put(ProblemKind::new_snow, EvidenceKind::finding, finding);
      if (has_slab_) put(ProblemKind::wind_slab, EvidenceKind::finding, finding);
      return;
    case SignKind::wind_loading:
      sure_of_slab_ = true;
      return put(ProblemKind::wind_slab, EvidenceKind::finding, finding);
    case SignKind::heavy_precipitation:
      if (fresh_to_ > 0) put(ProblemKind::new_snow, EvidenceKind::finding, finding);
      return;
    case SignKind::pinwheels:
      return put(ProblemKind::wet_snow, EvidenceKind::finding, finding);
    default:
      return;
  }
}

// A slide that faced elsewhere says nothing about the aspects of this pit.
bool Gatherer::faces_as_the_pit(const firnbook::Slide& slide) const {
  if (!slide.aspect_point() && !slide.aspect_deg()) return true;
  const std::int32_t pit_deg = pit_.aspect_deg();
  const std::int32_t point = (std::int32_t{pit::number(slide.aspect_point())} - 1) * 45;
  const std::int32_t slide_deg = slide.aspect_deg() ? std::int32_t{*slide.aspect_deg()} : point;
  if (pit_deg < 0 || pit_deg > 360 || slide_deg < 0 || slide_deg > 360) return false;
  return (pit_deg * 2 + 45) / 90 % 8 == (slide_deg * 2 + 45) / 90 % 8;
}

void Gatherer::slide(const Finding& finding, std::int32_t index) {
  const firnbook::Slide& one =
      *pit_.raw().slides()->Get(static_cast<std::uint32_t>(finding.subject().index()));
  if (!faces_as_the_pit(one)) return;
  const std::uint8_t kind = pit::number(one.kind());
  const bool by_cornice = pit::number(one.trigger()) == static_cast<std::uint8_t>(firnbook::Trigger::cornice);
  if (kind == static_cast<std::uint8_t>(firnbook::SlideKind::glide))
    put(ProblemKind::gliding_snow, EvidenceKind::finding, index);
  if (kind == static_cast<std::uint8_t>(firnbook::SlideKind::cornice) || by_cornice)
    put(ProblemKind::cornices, EvidenceKind::finding, index);
}

void Gatherer::signs() {
  for (std::size_t i = 0; i < analysis_.findings.size(); ++i) {
    const Finding& one = analysis_.findings[i];
    const auto index = static_cast<std::int32_t>(i);
    if (one.key() == FindingKey::sign_seen) sign(static_cast<SignKind>(one.a()), index);
    if (one.key() == FindingKey::slide_seen) slide(one, index);
  }
}

void Gatherer::wet_layers() {
  for (const pit::Layer& layer : pit_.layers()) {
    if (!is_wet(layer)) continue;
    // The uppermost says it; a snowpack wet to the ground would list all of them.
    return put(ProblemKind::wet_snow, EvidenceKind::layer, static_cast<std::int32_t>(layer.stored));
  }
}

bool Gatherer::reaches_the_ground() const {
  if (pit_.raw().reached_ground()) return *pit_.raw().reached_ground();
  for (const pit::Layer& layer : pit_.layers()) {
    if (pit_.hs() != pit::kUnknown && layer.bottom != pit::kUnknown && layer.bottom >= pit_.hs()) return true;
  }
  return false;
}

SpeakLimit Gatherer::limit_of_persistent() const {
  if (pit_.layers().empty()) return SpeakLimit::no_layers;
  for (const pit::Layer& layer : pit_.layers()) {
    const Classes classes = classes_of(*layer.raw);
    if (may_be(classes, kPersistent) && !is_only(classes, kPersistent))
      return SpeakLimit::grains_not_recorded;
  }
  const bool reached = buried_persistent_at_ != pit::kUnknown && reach_ >= buried_persistent_at_;
  if (buried_persistent_ && !reached) return SpeakLimit::not_tested;
  return reaches_the_ground() ? SpeakLimit::none : SpeakLimit::not_to_the_ground;
}

SpeakLimit Gatherer::limit_of_fresh(bool is_there, std::int32_t down_to) const {
  if (pit_.layers().empty()) return SpeakLimit::no_layers;
  return is_there && reach_ < down_to ? SpeakLimit::not_tested : SpeakLimit::none;
}

// Dry snow was seen to be dry: every layer's wetness was felt, or the temperatures are below freezing
// throughout (ours: two readings at least).
SpeakLimit Gatherer::limit_of_wet() const {
  bool felt = !pit_.layers().empty();
  for (const pit::Layer& layer : pit_.layers()) {
    constexpr auto kWetnessField = static_cast<std::uint16_t>((firnbook::Layer::VT_WETNESS - 4) / 2);
    felt = felt && layer.wetness != 0 && !layer.is_unreliable(kWetnessField);
  }
  std::size_t cold = 0;
  bool warm = false;
  for (const pit::Temperature& reading : pit_.temperatures()) {
    if (reading.cdegc == pit::kUnknown || reading.unreliable) continue;
    cold += reading.cdegc < 0 ? 1u : 0u;
    warm = warm || reading.cdegc >= 0;
  }
  if (felt || (cold >= 2 && !warm)) return SpeakLimit::none;
  return SpeakLimit::wetness_not_recorded;
}

void Gatherer::set_limits() {
  const auto set = [this](ProblemKind kind, SpeakLimit limit) { shown_.limit[at(kind)] = limit; };
  set(ProblemKind::none, SpeakLimit::type_unknown);
  set(ProblemKind::new_snow,
      fresh_unknown_ ? SpeakLimit::grains_not_recorded : limit_of_fresh(fresh_to_ > 0, fresh_to_));
  SpeakLimit slab = limit_of_fresh(has_slab_, slab_to_);
  if (slab_hardness_unknown_) slab = SpeakLimit::hardness_not_recorded;
  if (recent_unknown_) slab = SpeakLimit::grains_not_recorded;
  set(ProblemKind::wind_slab, slab);
  set(ProblemKind::persistent_weak_layers, limit_of_persistent());
  set(ProblemKind::wet_snow, limit_of_wet());
  set(ProblemKind::gliding_snow, SpeakLimit::not_seen_in_a_pit);
  set(ProblemKind::cornices, SpeakLimit::not_seen_in_a_pit);
  set(ProblemKind::no_distinct_avalanche_problem, SpeakLimit::nothing_to_look_for);
  set(ProblemKind::favourable_situation, SpeakLimit::nothing_to_look_for);
}

}  // namespace

Shown what_the_pit_shows(const pit::View& pit, const Analysis& analysis) {
  return Gatherer(pit, analysis).gather();
}

// One way only: the nine types of the conceptual model of avalanche hazard do not come back from these.
ProblemKind kind_of(std::uint8_t problem_type) {
  using firnbook::ProblemType;
  if (problem_type >= 1 && problem_type <= 8) return static_cast<ProblemKind>(problem_type);
  switch (static_cast<ProblemType>(problem_type)) {
    case ProblemType::dry_loose:
    case ProblemType::storm_slab:
      return ProblemKind::new_snow;
    case ProblemType::model_wind_slab:
      return ProblemKind::wind_slab;
    case ProblemType::persistent_slab:
    case ProblemType::deep_persistent_slab:
      return ProblemKind::persistent_weak_layers;
    case ProblemType::wet_loose:
    case ProblemType::wet_slab:
      return ProblemKind::wet_snow;
    case ProblemType::glide:
      return ProblemKind::gliding_snow;
    case ProblemType::cornice:
      return ProblemKind::cornices;
    default:
      return ProblemKind::none;
  }
}

}  // namespace firn::bulletin
