#include "interpretation/interpret.h"

#include "capi/inputs.h"
#include "capi/outputs.h"
#include "capi/structs.h"
#include "firnbook/interpret.h"
#include "support/checksum.h"

using namespace firn::capi;

namespace firn::capi {
namespace {

constexpr std::int32_t kLeastTolerance = 500;
constexpr std::int32_t kMostTolerance = 10000;

Result<interpretation::Parameters> parameters_of(const firn_interpret_options* given) {
  Result<firn_interpret_options> chosen = read_options(
      given, FIRN_FIRST_VERSION(firn_interpret_options, tolerance_10um), "firn_interpret_options");
  if (!chosen) return chosen.failure();
  interpretation::Parameters parameters;
  if (chosen->tolerance_10um == 0) return parameters;
  if (chosen->tolerance_10um < kLeastTolerance || chosen->tolerance_10um > kMostTolerance) {
    return failure_of(FIRN_BAD_ARGUMENT, "tolerance_10um is outside 500 to 10000",
                      "give a tolerance within it, or 0 for the default");
  }
  parameters.tolerance_10um = chosen->tolerance_10um;
  return parameters;
}

// `crc` is that of the bytes as the caller gave them.
void give_report(firn_context& context, const interpretation::Parameters& parameters, std::uint32_t crc,
                 firn_buffer* report) {
  Workspace& work = context.work;
  interpretation::write_report(work.analysis, parameters, crc, work.builder);
  give(context, report, work.builder.GetBufferPointer(), work.builder.GetSize());
}

}  // namespace
}  // namespace firn::capi

firn_status firn_check(firn_context* context, const uint8_t* pit, size_t size, firn_buffer* report,
                       firn_error* error) {
  return guard({context, error, __func__, {report}}, [&]() -> firn::Done {
    if (report == nullptr) return null_argument("report");
    firn::Done seen = view_pit(*context, pit, size);
    if (!seen) return seen;
    Workspace& work = context->work;
    work.analysis.clear();
    firn::checking::check(work.view, work.analysis.checks);
    give_report(*context, {}, firn::crc32(pit, size), report);
    return firn::done();
  });
}

firn_status firn_interpret(firn_context* context, const uint8_t* pit, size_t size,
                           const firn_interpret_options* options, firn_buffer* report, firn_error* error) {
  return guard({context, error, __func__, {report}}, [&]() -> firn::Done {
    if (report == nullptr) return null_argument("report");
    firn::Result<firn::interpretation::Parameters> parameters = parameters_of(options);
    if (!parameters) return parameters.failure();
    firn::Done seen = view_pit(*context, pit, size);
    if (!seen) return seen;
    Workspace& work = context->work;
    work.analysis.clear();
    firn::interpretation::interpret(work.view, *parameters, work.analysis);
    give_report(*context, *parameters, firn::crc32(pit, size), report);
    return firn::done();
  });
}
