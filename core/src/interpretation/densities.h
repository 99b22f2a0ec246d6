// Densities that other methods rest on, and the published formula that stands in where none was measured.
#pragma once

#include "interpretation/interpret.h"

namespace firn::interpretation {

// Density in tenths of kg/m3 from hand hardness and grain form, 0 where there is no relation for the form.
// The hardness is in twelfths of a step: the sum of both sides of a layer in sixths.
std::int32_t estimated_density(std::uint8_t form, std::int32_t hardness_twelfths);

// Snow from the surface down to a depth.
struct Slab {
  std::int64_t depth = 0;
  std::int32_t mean_dkgm3 = 0;  // 0 = cannot be told
  std::int32_t percent_not_measured = 0;
  std::int64_t mean_e4 = 0;  // the mean in ten-thousandths of kg/m3

  double mean_kgm3() const { return static_cast<double>(mean_e4) * 1e-4; }
  // kg/m2, without rounding in between.
  double load() const { return static_cast<double>(depth) * 1e-5 * mean_kgm3(); }
};

// What lies above `depth`: nothing known where more of it than `unknown_percent` has no density. `next` is
// where to look in the column, for depths that only grow.
Slab slab_above(const Densities& densities, std::int64_t depth, std::int32_t unknown_percent,
                std::size_t& next);

}  // namespace firn::interpretation
