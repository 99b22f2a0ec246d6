// Shear strength from density (Jamieson and Johnston 2001: that the paper gives such equations is in its
// abstract, read; the equations from memory). None for surface hoar.
#include "interpretation/mechanics.h"
#include "support/maths.h"

namespace firn::interpretation {
namespace {

constexpr double kIce = 917.0;

}  // namespace

double persistent_strength(double density) {
  return 18500.0 * power(density / kIce, 2.11);
}

double other_strength(double density) {
  return 14500.0 * power(density / kIce, 1.73);
}

}  // namespace firn::interpretation
