// Load, stress, strength, stability and critical crack length, boundary by boundary, from the formulas of
// mechanics.h. Told for weak layers alone: persistent grains, and (ours) other dry snow that is both coarser
// and softer than the yellow flags allow.
//
// Everything is for one slope, 38 degrees unless the caller says otherwise: that of Sk38 and of most slab
// avalanches, not the pit's own, which is dug where it is gentle.
#include <optional>

#include "interpretation/densities.h"
#include "interpretation/evidence.h"
#include "interpretation/mechanics.h"
#include "support/maths.h"

namespace firn::interpretation {
namespace {

constexpr double kMetre = 1e-5;  // units of 10 um
constexpr std::int32_t kTopOfSnow = pit::cm(30);
// Lists can be shared by many profiles in hostile bytes.
constexpr std::uint32_t kStrengthsRead = 64;

struct Strength {
  double pascal = 0;
  double density = 0;     // it was estimated from; 0 when it was measured
  bool measured = false;  // itself, or that density
};

class Mechanics {
 public:
  Mechanics(const pit::View& pit, const Densities& densities, const Parameters& parameters, Findings& out)
      : pit_(pit),
        densities_(densities),
        parameters_(parameters),
        out_(out),
        slope_(parameters.index_slope_deg),
        normal_(pit.direction() == firnbook::Direction::slope_normal) {
    find_penetration();
    constexpr std::int32_t kSteepest = 60;
    if (pit.slope_deg() < 1 || pit.slope_deg() > kSteepest) return;
    own_share_ = kGravity * sine_of_degrees(pit.slope_deg()) * cosine_of_degrees(pit.slope_deg());
  }

  void take(const Interface& one, bool persistent) {
    const Slab slab = slab_above(densities_, one.depth, parameters_.load_unknown_percent, next_);
    if (slab.mean_dkgm3 == 0) return;
    // Per area of slope where depths are at right angles to it, per area of map where they are vertical.
    const double load = slab.load() / (normal_ ? slope_.cosine : 1.0);
    const double depth = one.depth * kMetre / (normal_ ? slope_.cosine : 1.0);
    const double shear = static_shear(load, slope_);
    const double skier = skier_stress(depth, slope_);
    say(one, Method::water_equivalent, FindingKey::slab_load, Verdict::fact,
        {rounded(slab.load() * 10), slab.mean_dkgm3, slab.percent_not_measured});
    say(one, Method::slab_stress, FindingKey::slab_stress, Verdict::fact,
        {rounded(shear * 10), rounded(skier * 10), parameters_.index_slope_deg});
    const Strength strength = strength_of(one, persistent);
    if (!(strength.pascal > 0)) return;
    say(one, Method::strength_estimate, FindingKey::strength_estimated, Verdict::fact,
        {rounded(strength.pascal * 10), rounded(strength.density * 10),
         static_cast<std::int32_t>(one.weaker().stored)});
    index(one, persistent, strength, load, depth);
    if (persistent && parameters_.slab_poisson_thousandths > 0) crack(one, slab, strength.pascal, depth);
  }

 private:
  void say(const Interface& one, Method method, FindingKey key, Verdict verdict, const Numbers& numbers) {
    add(out_, method, key, verdict, one.place(), one.depth, numbers);
  }

  // Measured on the skis wins; else from the density of the top 30 cm; else nobody knows.
  void find_penetration() {
    const firnbook::Surface* surface = pit_.raw().surface();
    constexpr std::uint16_t kField = field_id(firnbook::Surface::VT_PENETRATION_SKI_10UM);
    if (surface != nullptr && (surface->unreliable() >> kField & 1u) == 0) {
      const std::int32_t measured = surface->penetration_ski_10um().value_or(-1);
      if (measured >= 0) {
        penetration_ = measured * kMetre;
        return;
      }
    }
    std::size_t next = 0;
    const Slab top = slab_above(densities_, kTopOfSnow, parameters_.load_unknown_percent, next);
    if (top.mean_dkgm3 > 0) penetration_ = estimated_penetration(top.mean_kgm3());
  }

  const LayerDensity& density_of(const pit::Layer& layer) const {
    return densities_.layers[static_cast<std::size_t>(&layer - pit_.layers().data())];
  }

  Strength strength_of(const Interface& one, bool persistent) const {
    const double measured = measured_strength(one.depth);
    if (measured > 0) return {measured, 0, true};
    const pit::Layer& weaker = one.weaker();
    const bool known = density_of(weaker).measured;
    const double density = density_of(weaker).dkgm3 * 0.1;
    if (!(density > 0)) return {};
    if (!persistent) return {other_strength(density), density, known};
    const std::uint8_t form = main_form(weaker.form);
    const bool has_relation = form == main_form(static_cast<std::uint8_t>(firnbook::GrainForm::FC)) ||
                              form == main_form(static_cast<std::uint8_t>(firnbook::GrainForm::DH));
    return has_relation ? Strength{persistent_strength(density), density, known} : Strength{};
  }

  // A reading of shear strength that reaches to this depth, within tolerance.
  double measured_strength(std::int32_t depth) const {
    const auto* profiles = pit_.raw().strength();
    std::uint32_t read = 0;
    for (std::uint32_t p = 0; p < pit::size_of(profiles) && read < kStrengthsRead; ++p, ++read) {
      const firnbook::StrengthProfile* profile = profiles->Get(p);
      if (pit::number(profile->kind()) != static_cast<std::uint8_t>(firnbook::StrengthKind::shear)) continue;
      const auto* readings = profile->readings();
      for (std::uint32_t k = 0; k < pit::size_of(readings) && read < kStrengthsRead; ++k, ++read) {
        const firnbook::StrengthReading* one = readings->Get(k);
        const std::int64_t top = pit_.below_surface(one->top());
        const std::int64_t bottom = one->bottom() == nullptr ? top : pit_.below_surface(one->bottom());
        const bool there = top >= 0 && bottom >= 0 && depth >= top - parameters_.tolerance_10um &&
                           depth <= bottom + parameters_.tolerance_10um;
        if (there && one->unreliable() == 0 && one->strength_pa().value_or(0) > 0) return *one->strength_pa();
      }
    }
    return 0;
  }

  static std::int32_t thousandths(double value) { return rounded(value * 1000); }

  // Ours: a strength that is an estimate from an estimate (density from hardness and form) raises nothing and
  // settles nothing; one that the slab alone exceeds where it stands is off, and says so.
  void index(const Interface& one, bool persistent, const Strength& strength, double load, double depth) {
    const double shear = static_shear(load, slope_);
    const Numbers numbers = {thousandths(strength.pascal / shear),
                             thousandths(strength.pascal / (shear + skier_stress(depth, slope_))), 0};
    const auto state = [&](FindingKey key, Verdict verdict, std::int32_t c) {
      say(one, Method::skier_stability, key, verdict, {numbers.a, numbers.b, c});
    };
    if (strength.pascal < load * own_share_)
      return state(FindingKey::skier_index_slab_alone, Verdict::says_little, 0);
    if (!persistent) return state(FindingKey::skier_index_not_persistent, Verdict::fact, 0);
    if (penetration_ < 0) return state(FindingKey::skier_index_no_penetration, Verdict::fact, 0);
    if (depth <= penetration_)
      return state(FindingKey::skier_index_in_track, Verdict::fact, rounded(penetration_ / kMetre));
    const std::int32_t sk =
        thousandths(strength.pascal / (shear + skier_stress(depth - penetration_, slope_)));
    const bool low = sk < parameters_.index_low_thousandths;
    const bool high = !low && sk > parameters_.index_high_thousandths;
    const FindingKey key = low    ? FindingKey::skier_index_low
                           : high ? FindingKey::skier_index_high
                                  : FindingKey::skier_index_between;
    state(key, !strength.measured ? Verdict::says_little : high ? Verdict::not_met : Verdict::raises, sk);
  }

  void crack(const Interface& one, const Slab& slab, double strength, double depth) {
    const std::int32_t size = size_of_grains(one.weaker());
    const double density = density_of(one.weaker()).dkgm3 * 0.1;
    if (size == 0 || !(density > 0)) return;
    const CrackInputs inputs = {slab.mean_kgm3(), depth * slope_.cosine,
                                density,          size * kMetre,
                                strength,         parameters_.slab_poisson_thousandths * 1e-3};
    say(one, Method::critical_crack_length, FindingKey::critical_crack_length, Verdict::fact,
        {rounded(critical_crack(inputs, slope_) / kMetre), rounded(strength * 10),
         parameters_.index_slope_deg});
  }

  const pit::View& pit_;
  const Densities& densities_;
  const Parameters& parameters_;
  Findings& out_;
  const Slope slope_;
  const bool normal_;
  double penetration_ = -1;  // m; below 0 when nobody knows
  double own_share_ = 0;     // shear stress per load on the pit's own slope; 0 when that is not known
  std::size_t next_ = 0;
};

bool is_other_dry_snow(std::uint8_t form) {
  using firnbook::GrainForm;
  const std::uint8_t main = main_form(form);
  return main == main_form(static_cast<std::uint8_t>(GrainForm::PP)) ||
         main == main_form(static_cast<std::uint8_t>(GrainForm::DF)) ||
         main == main_form(static_cast<std::uint8_t>(GrainForm::RG));
}

}  // namespace

void slab_mechanics(const pit::View& pit, const Interfaces& interfaces, const Densities& densities,
                    const Parameters& parameters, Findings& out) {
  if (densities.column.empty()) return;
  // The slope's numbers take as long as many boundaries: made when the first weak one wants them.
  std::optional<Mechanics> mechanics;
  for (const Interface& one : interfaces) {
    if (one.above == nullptr || one.depth <= 0) continue;
    const bool persistent = one.flags.form.verdict == Verdict::raises;
    const bool other = is_other_dry_snow(one.weaker().form) && one.flags.size.verdict == Verdict::raises &&
                       one.flags.hardness.verdict == Verdict::raises;
    if (!persistent && !other) continue;
    if (!mechanics) mechanics.emplace(pit, densities, parameters, out);
    mechanics->take(one, persistent);
  }
}

}  // namespace firn::interpretation
