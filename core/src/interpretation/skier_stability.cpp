// Stresses on a weak layer and the stability indices that rest on them.
//
//   natural S   strength / shear stress of the slab
//   Foehn S'    strength / (that and a skier's stress)
//   Sk          the same with the skier's stress from ski penetration down (Jamieson and Johnston 1998)
//
// Formulas from memory; that of the skier's stress derived anew. The normal-load correction is zero for
// persistent layers (from memory) and its coefficients for others were not found, so others get no Sk. The
// indices lack what slab temperature, hardness and size do (McClung and Schweizer 1999, read): a low one
// raises, a high one is a criterion not met.
#include "interpretation/mechanics.h"
#include "support/maths.h"

namespace firn::interpretation {
namespace {

constexpr double kLineLoad = 500.0;  // N/m

// cos a sin^2 a sin(a + psi) / cos psi, at the angle a where it is largest. With t = tan a and T = tan psi
// that is (t^3 + T t^2) / (1 + t^2)^2, and its largest value lies where t^3 + 2 T t^2 - 3 t - 2 T = 0:
// Newton's steps from above settle within a handful.
constexpr double largest_share(double tangent) {
  double t = 1.8;
  for (int step = 0; step < 8; ++step) {
    const double value = ((t + 2.0 * tangent) * t - 3.0) * t - 2.0 * tangent;
    const double rise = (3.0 * t + 4.0 * tangent) * t - 3.0;
    t -= value / rise;
  }
  const double square = t * t;
  return (t + tangent) * square / ((1.0 + square) * (1.0 + square));
}

constexpr std::int32_t kSteepest = 60;

std::int32_t within(std::int32_t degrees) {
  return degrees < 0 ? 0 : degrees > kSteepest ? kSteepest : degrees;
}

// K of every whole degree, worked out by the compiler.
struct Shares {
  double of[kSteepest + 1];
};
constexpr Shares all_shares() {
  Shares shares = {};
  for (std::int32_t degrees = 0; degrees <= kSteepest; ++degrees) {
    const double tangent = sine_of_degrees(degrees) / cosine_of_degrees(degrees);
    shares.of[degrees] = 2.0 * kLineLoad / kPi * largest_share(tangent);
  }
  return shares;
}
constexpr Shares kShares = all_shares();

}  // namespace

Slope::Slope(std::int32_t degrees)
    : sine(sine_of_degrees(within(degrees))),
      cosine(cosine_of_degrees(within(degrees))),
      skier(kShares.of[within(degrees)]) {}

double static_shear(double load, const Slope& slope) {
  return load * kGravity * slope.sine * slope.cosine;
}

double skier_stress(double depth, const Slope& slope) {
  return depth > 0 ? slope.skier / depth : 0;
}

double estimated_penetration(double density) {
  return density > 0 ? 34.6 / density : 0;
}

}  // namespace firn::interpretation
