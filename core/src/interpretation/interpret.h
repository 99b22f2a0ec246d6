// What a pit amounts to: method by method, then the layers of concern they add up to.
#pragma once

#include <cstdint>
#include <vector>

#include "checking/check.h"
#include "pit/view.h"
#include "schemas/report_generated.h"

namespace firn::interpretation {

// Thresholds as named parameters; each file that uses one names its source beside the default.
struct Parameters {
  // Fractures, boundaries and layers this close together count as one place. Ours: half the height of a
  // hand, since depths are read to a centimetre.
  std::int32_t tolerance_10um = pit::cm(2);
  // Each method's own parameters are added to this struct by the file that owns the method.
  std::int32_t ect_last_tap_of_lower_class = 21;     // Swiss service (read)
  std::int32_t pst_percent = 50;                     // Gauthier and Jamieson 2008 (from memory)
  std::int32_t flag_size_10um = pit::mm(1);          // Jamieson and Schweizer 2005 (from memory), >
  std::int32_t flag_hardness_sixths = 18;            // softer than 1F, <
  std::int32_t flag_size_difference_10um = 50;       // > 0.5 mm
  std::int32_t flag_hardness_difference_sixths = 6;  // > 1 step
  std::int32_t flag_depth_from_10um = pit::cm(20);   // inclusive
  std::int32_t flag_depth_to_10um = pit::cm(85);     // inclusive
  std::int32_t gradient_cdegc_per_m = 1000;          // 10 degC/m (read), >
};

struct Concern {
  firnbook::ConcernKind kind;
  std::int32_t layer, layer_below, weaker_layer;  // stored positions, -1 for none
  std::int32_t top, bottom;
  firnbook::ConcernRank rank;
  std::uint32_t first_evidence, evidence_count;  // in Analysis::evidence
};

// Everything a report says, in flat lists whose memory is reused from pit to pit.
struct Analysis {
  checking::Checks checks;
  std::vector<firnbook::Finding> findings;
  std::vector<Concern> concerns;
  std::vector<std::uint32_t> evidence;
  std::vector<firnbook::NotLoaded> not_loaded;
  std::vector<firnbook::Suggestion> suggestions;
  std::vector<firnbook::Caution> cautions;
  std::vector<firnbook::MethodUsed> methods;

  void clear();
};

using Findings = std::vector<firnbook::Finding>;

// Methods. Each appends what it found; none reads another's findings.
void field_signs(const pit::View& pit, Findings& out);
void compression_test(const pit::View& pit, Findings& out);
void extended_column(const pit::View& pit, const Parameters& parameters, Findings& out);
void saw_test(const pit::View& pit, const Parameters& parameters, Findings& out);
void yellow_flags(const pit::View& pit, const Parameters& parameters, Findings& out);
void temperature_gradient(const pit::View& pit, const Parameters& parameters, Findings& out);
void other_tests(const pit::View& pit, Findings& out);

// Gathers findings into concerns, ordered by the rules in concerns.cpp.
void gather_concerns(const pit::View& pit, const Parameters& parameters, Analysis& analysis);
void name_what_was_not_loaded(const pit::View& pit, const Parameters& parameters, Analysis& analysis);
void gather_cautions(const pit::View& pit, Analysis& analysis);

// Checks and all of the above.
void interpret(const pit::View& pit, const Parameters& parameters, Analysis& analysis);

// The report's bytes, finished in `builder` (which is cleared first).
void write_report(const Analysis& analysis, const Parameters& parameters, std::uint32_t pit_crc32,
                  flatbuffers::FlatBufferBuilder& builder);

}  // namespace firn::interpretation
