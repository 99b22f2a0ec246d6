// Pits, reports and pictures for the tests of the drawing.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "drawing/profile.h"
#include "pit/view.h"
#include "pits.h"
#include "schemas/report_generated.h"

namespace firn::tests {

struct ConcernSpec {
  firnbook::ConcernKind kind;
  std::int32_t layer;  // stored position, -1 for none
  std::int32_t top_10um, bottom_10um;
  firnbook::ConcernRank rank;
};

inline std::vector<std::uint8_t> report_of(const std::vector<ConcernSpec>& specs) {
  flatbuffers::FlatBufferBuilder builder;
  std::vector<flatbuffers::Offset<firnbook::Concern>> concerns;
  for (const ConcernSpec& spec : specs) {
    firnbook::ConcernBuilder concern(builder);
    concern.add_kind(spec.kind);
    if (spec.layer >= 0) concern.add_layer(spec.layer);
    concern.add_top_10um(spec.top_10um);
    concern.add_bottom_10um(spec.bottom_10um);
    concern.add_rank(spec.rank);
    concerns.push_back(concern.Finish());
  }
  const auto list = builder.CreateVector(concerns);
  firnbook::ReportBuilder report(builder);
  report.add_concerns(list);
  builder.Finish(report.Finish(), "FIRR");
  return {builder.GetBufferPointer(), builder.GetBufferPointer() + builder.GetSize()};
}

// The concerns that the demo pit's report leads with.
inline std::vector<std::uint8_t> tarn_shoulder_report() {
  using firnbook::ConcernKind;
  using firnbook::ConcernRank;
  return report_of({{ConcernKind::layer, 3, cm(68), cm(69), ConcernRank::propagated},
                    {ConcernKind::boundary, 5, cm(107), cm(107), ConcernRank::broke},
                    {ConcernKind::boundary, 0, cm(16), cm(16), ConcernRank::little}});
}

inline std::string draw(const firnbook::PitT& pit, std::int32_t width = 720,
                        const std::vector<std::uint8_t>& report = {}) {
  const std::vector<std::uint8_t> bytes = bytes_of(pit);
  pit::View view;
  view.decode(*flatbuffers::GetRoot<firnbook::Pit>(bytes.data()));
  std::string out;
  drawing::append_profile(
      out, view, report.empty() ? nullptr : flatbuffers::GetRoot<firnbook::Report>(report.data()), {width});
  return out;
}

inline std::size_t count(const std::string& text, const std::string& what) {
  std::size_t found = 0;
  for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at + what.size())) {
    ++found;
  }
  return found;
}

inline bool has(const std::string& text, const std::string& what) {
  return text.find(what) != std::string::npos;
}

}  // namespace firn::tests
