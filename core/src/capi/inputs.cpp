#include "capi/inputs.h"

#include "recording/draft.h"
#include "recording/overlay.h"
#include "support/checksum.h"

namespace firn::capi {

Result<const firnbook::Pit*> read_pit(firn_context& context, const std::uint8_t* bytes, std::size_t size) {
  return pit::verify(bytes, size, context.limits.pit, context.work.pit_bytes);
}

Result<const firnbook::Report*> read_report(firn_context& context, const std::uint8_t* bytes,
                                            std::size_t size) {
  static constexpr pit::Schema kReport = {
      "FIRR", "report", [](flatbuffers::Verifier& v) { return firnbook::VerifyReportBuffer(v); }};
  Result<const std::uint8_t*> data =
      pit::verify_bytes(bytes, size, context.limits.report, kReport, context.work.report_bytes);
  if (!data) return data.failure();
  return firnbook::GetReport(*data);
}

Done check_content(const firnbook::Pit& pit) {
  if (recording::content_of(pit) <= recording::kMostContent) return done();
  return failure_of(FIRN_TOO_LARGE,
                    "the pit holds more than 256 MB of text and values once they are unpacked",
                    "no record is that large; its bytes may be made to harm");
}

Done view_pit(firn_context& context, const std::uint8_t* bytes, std::size_t size) {
  Result<const firnbook::Pit*> pit = read_pit(context, bytes, size);
  if (!pit) return pit.failure();
  context.work.view.decode(**pit);
  return done();
}

Done check_same_pit(const firnbook::Report& report, const std::uint8_t* pit, std::size_t pit_size) {
  if (report.pit_crc32() == crc32(pit, pit_size)) return done();
  return failure_of(FIRN_OTHER_PIT, "the report was not made from this pit",
                    "interpret this pit again, or give the pit the report belongs to");
}

}  // namespace firn::capi
