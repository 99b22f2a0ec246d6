#include "interpretation/interpret.h"

#include "bulletin/compare.h"
#include "capi/inputs.h"
#include "capi/outputs.h"
#include "capi/structs.h"
#include "firnbook/interpret.h"
#include "support/checksum.h"
#include "support/text.h"

using namespace firn::capi;

namespace firn::capi {
namespace {

constexpr std::int32_t kLeastTolerance = 500;
constexpr std::int32_t kMostTolerance = 10000;
constexpr std::int32_t kHighestTreeline = 9000;

Result<interpretation::Parameters> parameters_of(const firn_interpret_options& chosen) {
  interpretation::Parameters parameters;
  if (chosen.tolerance_10um == 0) return parameters;
  if (chosen.tolerance_10um < kLeastTolerance || chosen.tolerance_10um > kMostTolerance) {
    return failure_of(FIRN_BAD_ARGUMENT, "tolerance_10um is outside 500 to 10000",
                      "give a tolerance within it, or 0 for the default");
  }
  parameters.tolerance_10um = chosen.tolerance_10um;
  return parameters;
}

Result<bulletin::Question> question_of(const firn_interpret_options& chosen) {
  bulletin::Question question;
  if (chosen.treeline_m < 0 || chosen.treeline_m > kHighestTreeline) {
    return failure_of(FIRN_BAD_ARGUMENT, "treeline_m is outside 1 to 9000",
                      "give metres above the sea, or 0 when nobody knows");
  }
  question.treeline_m = chosen.treeline_m;
  if (chosen.region != nullptr) question.region = chosen.region;
  if (!is_utf8(question.region)) {
    return failure_of(FIRN_BAD_UTF8, "the region is not UTF-8", "give its id or name as the bulletin has it");
  }
  return question;
}

// The bulletins as the caller gave them, beside the pit that was interpreted. Null where none were given.
Result<flatbuffers::Offset<firnbook::BulletinComparison>> hold_beside(firn_context& context,
                                                                      const firn_interpret_options& chosen) {
  if (chosen.bulletin == nullptr) return flatbuffers::Offset<firnbook::BulletinComparison>();
  Result<bulletin::Question> question = question_of(chosen);
  if (!question) return question.failure();
  Workspace& work = context.work;
  Result<const firnbook::Bulletins*> bulletins =
      bulletin::verify(chosen.bulletin, chosen.bulletin_size, context.limits.pit, work.report_bytes);
  if (!bulletins) return bulletins.failure();
  question->bulletin_crc32 = crc32(chosen.bulletin, chosen.bulletin_size);
  const bulletin::Comparison comparison = bulletin::compare(work.view, work.analysis, **bulletins, *question);
  bulletin::add_cautions(work.view, comparison, work.analysis);
  work.builder.Clear();
  return bulletin::write_comparison(comparison, work.builder);
}

// `crc` is that of the bytes as the caller gave them.
void give_report(firn_context& context, const interpretation::Parameters& parameters, std::uint32_t crc,
                 firn_buffer* report, flatbuffers::Offset<firnbook::BulletinComparison> bulletin = {}) {
  Workspace& work = context.work;
  interpretation::write_report(work.analysis, parameters, crc, work.builder, bulletin);
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
    firn::Result<firn_interpret_options> chosen = read_options(
        options, FIRN_FIRST_VERSION(firn_interpret_options, tolerance_10um), "firn_interpret_options");
    if (!chosen) return chosen.failure();
    firn::Result<firn::interpretation::Parameters> parameters = parameters_of(*chosen);
    if (!parameters) return parameters.failure();
    firn::Done seen = view_pit(*context, pit, size);
    if (!seen) return seen;
    Workspace& work = context->work;
    work.analysis.clear();
    firn::interpretation::interpret(work.view, *parameters, work.analysis);
    firn::Result<flatbuffers::Offset<firnbook::BulletinComparison>> beside = hold_beside(*context, *chosen);
    if (!beside) return beside.failure();
    give_report(*context, *parameters, firn::crc32(pit, size), report, *beside);
    return firn::done();
  });
}
