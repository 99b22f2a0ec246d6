// How a persistent weak layer lies: its thickness, its depth, and how hard the snow right above it is. Of the
// five unfavourable features of DAV Panorama 1/2014 (read) two have numbers: thinner than 3 cm, not deeper
// than 1 m. The other three (breaks easily with a smooth surface, large crystals, soft snow above) have none,
// so the hardness above is stated and not judged. Facts only.
#include "interpretation/evidence.h"

namespace firn::interpretation {

void weak_layer_build(const Interfaces& interfaces, const Parameters& parameters, Findings& out) {
  constexpr std::int32_t kThin = 1;
  constexpr std::int32_t kNotDeep = 2;
  for (const Interface& one : interfaces) {
    if (one.flags.form.verdict != Verdict::raises || one.above == nullptr) continue;
    // At the lower edge of a weak layer, the snow right above the boundary is the layer itself.
    if (one.weaker_above) continue;
    const std::int32_t thickness = thickness_of(one.weaker());
    const bool thin = thickness > 0 && thickness < parameters.weak_layer_thin_10um;
    const bool not_deep = one.depth >= 0 && one.depth <= parameters.weak_layer_depth_10um;
    add(out, Method::weak_layer_build, FindingKey::weak_layer_build, Verdict::fact, one.place(), one.depth,
        {thickness, one.upper.sixths, (thin ? kThin : 0) | (not_deep ? kNotDeep : 0)});
  }
}

}  // namespace firn::interpretation
