// Water equivalent and mean density (definition: the sum of height times density; 1 kg/m2 is 1 mm), as far
// down as the layers follow each other, and how much of it was not measured. Heights are vertical: a pit
// measured at right angles to the slope gets none.
#include "interpretation/densities.h"
#include "interpretation/evidence.h"
#include "support/maths.h"

namespace firn::interpretation {

void water_equivalent(const pit::View& pit, const Densities& densities, const Parameters& parameters,
                      Findings& out) {
  if (densities.column.empty() || pit.direction() == firnbook::Direction::slope_normal) return;
  std::size_t next = 0;
  const Slab all =
      slab_above(densities, densities.column.back().depth, parameters.load_unknown_percent, next);
  if (all.mean_dkgm3 == 0) return;
  add(out, Method::water_equivalent, FindingKey::water_equivalent, Verdict::fact, whole_pit(),
      static_cast<std::int32_t>(all.depth),
      {rounded(all.load() * 100), all.mean_dkgm3, all.percent_not_measured});
}

}  // namespace firn::interpretation
