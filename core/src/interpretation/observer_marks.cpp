// Layers that the observer marked as ones of concern. Theirs, not computed: stated as a fact without a
// method.
#include "interpretation/evidence.h"

namespace firn::interpretation {

void observer_marks(const pit::View& pit, Findings& out) {
  for (const pit::Layer& layer : pit.layers()) {
    if (!layer.raw->concern()) continue;
    const firnbook::PartOfLayer part = *layer.raw->concern();
    const std::int32_t depth = part == firnbook::PartOfLayer::bottom ? layer.bottom : layer.top;
    const firnbook::Place subject = place_of(Thing::layer, static_cast<std::int32_t>(layer.stored),
                                             field_id(firnbook::Layer::VT_CONCERN));
    add(out, Method::none, FindingKey::marked_by_observer, Verdict::fact, subject, depth,
        {static_cast<std::int32_t>(part), 0, 0});
  }
}

}  // namespace firn::interpretation
