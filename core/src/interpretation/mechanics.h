// Published formulas of slab mechanics, as plain functions of numbers. Only + - * / and our own few
// functions: the same bits everywhere. Units: kg/m3, kg/m2, m, Pa, whole degrees; lengths vertical unless
// said otherwise.
#pragma once

#include <cstdint>

namespace firn::interpretation {

inline constexpr double kGravity = 9.81;

// A slope with what the formulas need of it; 0 to 60 degrees.
struct Slope {
  explicit Slope(std::int32_t degrees);
  double sine, cosine;
  // K of a skier's shear stress K / h in Pa, h in m (Foehn 1987: line load of 500 N/m, from memory; the
  // formula derived anew from the elastic half-space).
  double skier;
};

// Shear stress on a layer under `load` kg/m2: rho g h sin cos.
double static_shear(double load, const Slope& slope);
// Shear stress of a skier at a depth; 0 where there is none to take (`depth` not above 0).
double skier_stress(double depth, const Slope& slope);
// Ski penetration from the mean density of the top 30 cm (from memory), in m.
double estimated_penetration(double density);

// Shear strength in Pa from density (Jamieson and Johnston 2001, from memory): of persistent grains (FC, DH;
// not SH) and of others (PP, DF, RG).
double persistent_strength(double density);
double other_strength(double density);

struct CrackInputs {
  double slab_density, thickness;   // thickness at right angles to the slope
  double weak_density, grain_size;  // grain size in m
  double strength, poisson;
};
// Critical crack length in m (Gaume and others 2017 with the fit of Richter and others 2019, both from
// memory); 0 where the slab's own shear stress reaches the strength.
double critical_crack(const CrackInputs& in, const Slope& slope);
double slab_modulus(double density);
double weak_layer_factor(double density, double grain_size);

}  // namespace firn::interpretation
