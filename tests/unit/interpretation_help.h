// Interprets a pit that a test built, and looks things up in what came out.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "interpretation/interpret.h"
#include "pit/verify.h"
#include "pits.h"
#include "support/place.h"
#include "support/result.h"

namespace firn::tests {

using firnbook::CautionKey;
using firnbook::ConcernKind;
using firnbook::ConcernRank;
using firnbook::Finding;
using firnbook::FindingKey;
using firnbook::FractureCharacter;
using firnbook::GrainForm;
using firnbook::HandHardness;
using firnbook::Method;
using firnbook::NextStep;
using firnbook::NotLoadedReason;
using firnbook::PitT;
using firnbook::SawEnd;
using firnbook::TestKind;
using firnbook::Verdict;

// Bytes, view and analysis of one pit; findings of single methods come from the view.
class Read {
 public:
  explicit Read(const PitT& pit, const interpretation::Parameters& parameters = {}) : bytes_(bytes_of(pit)) {
    const auto verified = pit::verify(bytes_.data(), bytes_.size(), {}, aligned_);
    ok = static_cast<bool>(verified);
    if (!ok) return;
    view.decode(**verified);
    interpretation::interpret(view, parameters, analysis);
  }

  const Finding* find(FindingKey key, std::int32_t depth_10um = -2) const {
    for (const Finding& one : analysis.findings) {
      if (one.key() == key && (depth_10um == -2 || one.depth_10um() == depth_10um)) return &one;
    }
    return nullptr;
  }
  std::size_t count(FindingKey key) const {
    std::size_t found = 0;
    for (const Finding& one : analysis.findings) found += one.key() == key ? 1u : 0u;
    return found;
  }
  std::vector<const Finding*> evidence(std::size_t concern) const {
    std::vector<const Finding*> out;
    const interpretation::Concern& one = analysis.concerns.at(concern);
    for (std::uint32_t k = 0; k < one.evidence_count; ++k) {
      out.push_back(&analysis.findings.at(analysis.evidence.at(one.first_evidence + k)));
    }
    return out;
  }
  std::vector<FindingKey> evidence_keys(std::size_t concern) const {
    std::vector<FindingKey> out;
    for (const Finding* one : evidence(concern)) out.push_back(one->key());
    return out;
  }
  const firnbook::Caution* caution(CautionKey key) const {
    for (const firnbook::Caution& one : analysis.cautions) {
      if (one.key() == key) return &one;
    }
    return nullptr;
  }
  // "107 ECT ended_above"
  std::vector<std::string> not_loaded() const {
    std::vector<std::string> out;
    for (const firnbook::NotLoaded& one : analysis.not_loaded) {
      out.push_back(std::to_string(one.depth_10um() / 1000) + " " + firnbook::EnumNameTestKind(one.kind()) +
                    " " + firnbook::EnumNameNotLoadedReason(one.reason()));
    }
    return out;
  }
  // "107 saw_test", "look_for_signs"
  std::vector<std::string> suggestions() const {
    std::vector<std::string> out;
    for (const firnbook::Suggestion& one : analysis.suggestions) {
      const std::string depth = one.depth_10um() < 0 ? "" : std::to_string(one.depth_10um() / 1000) + " ";
      out.push_back(depth + firnbook::EnumNameNextStep(one.step()));
    }
    return out;
  }

  bool ok = false;
  pit::View view;
  interpretation::Analysis analysis;

 private:
  std::vector<std::uint8_t> bytes_;
  pit::AlignedBytes aligned_;
};

// Marks a field as observed but not to lean on.
template <class Table>
void doubt(Table& table, int vtable_offset) {
  table.unreliable |= std::uint64_t{1} << field_id(vtable_offset);
}

// A pit of two layers that touch at `depth`, with the upper one over the lower.
inline PitT two_layers(std::int32_t depth_10um, HandHardness upper, GrainForm upper_form,
                       std::int32_t upper_size, HandHardness lower, GrainForm lower_form,
                       std::int32_t lower_size) {
  PitT pit;
  pit.snowpack = std::make_unique<firnbook::SnowpackT>();
  pit.snowpack->hs_10um = cm(200);
  add_layer(pit, 0, depth_10um, upper, upper_form, upper_size);
  add_layer(pit, depth_10um, cm(200), lower, lower_form, lower_size);
  return pit;
}

}  // namespace firn::tests
