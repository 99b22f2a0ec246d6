#include "firnbook/draw.h"

#include "capi/inputs.h"
#include "capi/outputs.h"
#include "capi/structs.h"
#include "drawing/profile.h"

using namespace firn::capi;

namespace firn::capi {
namespace {

Result<drawing::DrawOptions> drawing_options(const firn_draw_options* given) {
  Result<firn_draw_options> chosen =
      read_options(given, FIRN_FIRST_VERSION(firn_draw_options, width_px), "firn_draw_options");
  if (!chosen) return chosen.failure();
  drawing::DrawOptions options;
  if (chosen->width_px == 0) return options;
  if (chosen->width_px < 320 || chosen->width_px > 2000) {
    return failure_of(FIRN_BAD_ARGUMENT, "width_px is outside 320 to 2000",
                      "give a width within it, or 0 for the default; the picture scales");
  }
  options.width_px = chosen->width_px;
  return options;
}

// Null when no report was given.
Result<const firnbook::Report*> report_for(firn_context& context, const std::uint8_t* pit,
                                           std::size_t pit_size, const std::uint8_t* report,
                                           std::size_t report_size) {
  if (report == nullptr) {
    if (report_size == 0) return static_cast<const firnbook::Report*>(nullptr);
    return failure_of(FIRN_BAD_ARGUMENT, "a size of a report was given, and no report",
                      "give NULL and 0 to draw without one");
  }
  Result<const firnbook::Report*> read = read_report(context, report, report_size);
  if (!read) return read;
  Done same = check_same_pit(**read, pit, pit_size);
  if (!same) return same.failure();
  return read;
}

}  // namespace
}  // namespace firn::capi

firn_status firn_draw_profile(firn_context* context, const uint8_t* pit, size_t pit_size,
                              const uint8_t* report, size_t report_size, const firn_draw_options* options,
                              firn_buffer* svg, firn_error* error) {
  return guard({context, error, __func__, {svg}}, [&]() -> firn::Done {
    if (svg == nullptr) return null_argument("svg");
    firn::Result<firn::drawing::DrawOptions> chosen = drawing_options(options);
    if (!chosen) return chosen.failure();
    firn::Done seen = view_pit(*context, pit, pit_size);
    if (!seen) return seen;
    firn::Result<const firnbook::Report*> read = report_for(*context, pit, pit_size, report, report_size);
    if (!read) return read.failure();
    std::string& picture = context->work.text;
    picture.clear();
    firn::drawing::append_profile(picture, context->work.view, *read, *chosen);
    give(*context, svg, picture);
    return firn::done();
  });
}
