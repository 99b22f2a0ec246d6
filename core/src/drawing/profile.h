// The profile as SVG.
#pragma once

#include <cstdint>
#include <string>

#include "pit/view.h"
#include "schemas/report_generated.h"

namespace firn::drawing {

struct DrawOptions {
  std::int32_t width_px = 720;  // 320 to 2000; the picture scales, this decides how text wraps
};

// `report` may be null: then there is no concern band. Same input, same bytes. All coordinates are integers
// or tenths; nothing is computed here that the report does not say.
void append_profile(std::string& out, const pit::View& pit, const firnbook::Report* report,
                    const DrawOptions& options);

}  // namespace firn::drawing
