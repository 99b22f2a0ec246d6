// Critical crack length for the onset of propagation (Gaume and others 2017; formula from memory), with the
// weak layer's elasticity replaced by the fit of Richter and others 2019 (from memory) and the slab's modulus
// from its density (Scapozza, from memory). Poisson's ratio is remembered with low confidence only, so the
// method is off until the caller gives one.
#include "interpretation/mechanics.h"
#include "support/maths.h"

namespace firn::interpretation {
namespace {

constexpr double kIce = 917.0;
constexpr double kGrain = 0.00125;  // m

}  // namespace

double slab_modulus(double density) {
  return 5.07e9 * power(density / kIce, 5.13);
}

double weak_layer_factor(double density, double grain_size) {
  return 4.7e-9 * power((density / kIce) * (grain_size / kGrain), -2.1);
}

double critical_crack(const CrackInputs& in, const Slope& slope) {
  const double weight = in.slab_density * kGravity * in.thickness;
  const double shear = weight * slope.sine;
  const double normal = weight * slope.cosine;
  if (!(normal > 0) || shear >= in.strength) return 0;
  const double modulus = slab_modulus(in.slab_density) / (1.0 - in.poisson * in.poisson);
  const double reach =
      square_root(modulus * in.thickness * weak_layer_factor(in.weak_density, in.grain_size));
  return reach * (square_root(shear * shear + 2.0 * normal * (in.strength - shear)) - shear) / normal;
}

}  // namespace firn::interpretation
