// An analysis as lines that a person can hold against the record and the comments of schemas/report.fbs.
#pragma once

#include <string>
#include <vector>

#include "interpretation_help.h"

namespace firn::tests {

using Lines = std::vector<std::string>;

inline std::string numbers(std::initializer_list<std::int32_t> values) {
  std::string out;
  for (const std::int32_t value : values) out += " " + std::to_string(value);
  return out;
}

// "tests[0].fractures[1]", and "boundary 3" for what lies below the layer that is stored fourth. What is not
// listed has no position, and only what lies in the list of a listed thing has a second one.
inline std::string said_of(const firnbook::Place& place) {
  const bool nested = place.thing() == firnbook::Thing::fracture;
  const bool listed = nested || place.thing() == firnbook::Thing::test ||
                      place.thing() == firnbook::Thing::layer || place.thing() == firnbook::Thing::boundary ||
                      place.thing() == firnbook::Thing::sign || place.thing() == firnbook::Thing::slide ||
                      place.thing() == firnbook::Thing::temperature || place.thing() == firnbook::Thing::step;
  const std::string odd = (listed == (place.index() >= 0)) && (nested == (place.sub() >= 0)) &&
                                  place.index() >= -1 && place.sub() >= -1
                              ? ""
                              : " (at an odd place" + numbers({place.index(), place.sub()}) + ")";
  if (place.thing() == firnbook::Thing::boundary) return "boundary" + numbers({place.index()}) + odd;
  return path_of(place) + odd;
}

// "ct_sudden raises tests[0].fractures[0] @68000: 12 3 2"
inline std::string said_of(const Finding& one) {
  return std::string(firnbook::EnumNameFindingKey(one.key())) + " " +
         firnbook::EnumNameVerdict(one.verdict()) + " " + said_of(one.subject()) + " @" +
         std::to_string(one.depth_10um()) + ":" + numbers({one.a(), one.b(), one.c()});
}

inline Lines findings_of(const Read& read, const std::vector<Method>& methods) {
  Lines out;
  for (const Finding& one : read.analysis.findings) {
    if (std::find(methods.begin(), methods.end(), one.method()) != methods.end()) out.push_back(said_of(one));
  }
  return out;
}

// "layer 3 -1 weaker 3 at 3, 68000 to 69000: propagated, tap 12, 6 flags, starts_and_runs, one_rider, 9
// pieces"
inline Lines concerns_of(const Read& read) {
  Lines out;
  for (const interpretation::Concern& one : read.analysis.concerns) {
    out.push_back(std::string(firnbook::EnumNameConcernKind(one.kind)) +
                  numbers({one.layer, one.layer_below}) + " weaker" + numbers({one.weaker_layer}) + " at" +
                  numbers({one.weaker_pos}) + "," + numbers({one.top}) + " to" + numbers({one.bottom}) +
                  ": " + firnbook::EnumNameConcernRank(one.rank) + ", tap" + numbers({one.ease}) + "," +
                  numbers({one.flags_met}) + " flags, " + firnbook::EnumNameConcernReading(one.reading) +
                  ", " + firnbook::EnumNameConcernReach(one.reach) + "," +
                  numbers({static_cast<std::int32_t>(one.evidence_count)}) + " pieces");
  }
  return out;
}

inline Lines cautions_of(const Read& read) {
  Lines out;
  for (const firnbook::Caution& one : read.analysis.cautions) {
    if (one.specific() == 0) continue;
    out.push_back(std::string(firnbook::EnumNameCautionKey(one.key())) + " " + said_of(one.place()) + ":" +
                  numbers({one.a(), one.b()}));
  }
  return out;
}

// "0 by 1 CT" for what loaded a concern, "0 not by CT 2, ended_above, 68000" for what did not.
inline Lines loads_of(const Read& read) {
  Lines out;
  for (const firnbook::LoadedBy& one : read.analysis.loaded) {
    out.push_back(std::to_string(one.concern()) + " by" + numbers({one.test()}) + " " +
                  firnbook::EnumNameTestKind(one.kind()));
  }
  for (const firnbook::NotLoaded& one : read.analysis.not_loaded) {
    out.push_back(std::to_string(one.concern()) + " not by " + firnbook::EnumNameTestKind(one.kind()) +
                  numbers({one.test()}) + ", " + firnbook::EnumNameNotLoadedReason(one.reason()) + "," +
                  numbers({one.depth_10um()}));
  }
  for (const firnbook::Suggestion& one : read.analysis.suggestions) {
    out.push_back("next for" + numbers({one.concern()}) + " at" + numbers({one.depth_10um()}) + ": " +
                  firnbook::EnumNameNextStep(one.step()));
  }
  return out;
}

}  // namespace firn::tests
