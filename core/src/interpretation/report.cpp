// The report's bytes. Offsets are made one statement at a time: compilers differ in the order in which they
// evaluate arguments, and the same report must have the same bytes everywhere.
#include <cstring>

#include "interpretation/interpret.h"
#include "pit/verify.h"

namespace firn::interpretation {
namespace {

using flatbuffers::FlatBufferBuilder;
using flatbuffers::Offset;
using flatbuffers::Vector;

flatbuffers::Optional<std::int32_t> if_known(std::int32_t value) {
  return value < 0 ? flatbuffers::Optional<std::int32_t>() : flatbuffers::Optional<std::int32_t>(value);
}

Offset<firnbook::Concern> write_concern(const Analysis& analysis, const Concern& concern,
                                        FlatBufferBuilder& builder) {
  const std::uint32_t* evidence =
      concern.evidence_count == 0 ? nullptr : analysis.evidence.data() + concern.first_evidence;
  const Offset<Vector<std::uint32_t>> positions = builder.CreateVector(evidence, concern.evidence_count);
  firnbook::ConcernBuilder table(builder);
  table.add_kind(concern.kind);
  if (const auto layer = if_known(concern.layer)) table.add_layer(*layer);
  if (const auto below = if_known(concern.layer_below)) table.add_layer_below(*below);
  if (const auto weaker = if_known(concern.weaker_layer)) table.add_weaker_layer(*weaker);
  if (const auto top = if_known(concern.top)) table.add_top_10um(*top);
  if (const auto bottom = if_known(concern.bottom)) table.add_bottom_10um(*bottom);
  table.add_rank(concern.rank);
  table.add_evidence(positions);
  table.add_reading(concern.reading);
  table.add_reach(concern.reach);
  return table.Finish();
}

Offset<Vector<Offset<firnbook::Concern>>> write_concerns(Analysis& analysis, FlatBufferBuilder& builder) {
  std::vector<Offset<firnbook::Concern>>& offsets = analysis.workspace.offsets;
  offsets.clear();
  for (const Concern& concern : analysis.concerns)
    offsets.push_back(write_concern(analysis, concern, builder));
  return builder.CreateVector(offsets.data(), offsets.size());
}

// 0 when every threshold has its default.
Offset<Vector<const firnbook::ParameterChanged*>> write_changes(
    const Parameters& parameters, std::vector<firnbook::ParameterChanged>& changes,
    FlatBufferBuilder& builder) {
  constexpr Parameters kDefaults;
  if (std::memcmp(&parameters, &kDefaults, sizeof kDefaults) == 0) return 0;
  changes.clear();
  std::size_t count = 0;
  const Parameter* all = all_parameters(count);
  for (std::size_t i = 0; i < count; ++i) {
    const std::int32_t value = parameters.*all[i].field;
    if (value != default_of(all[i])) changes.emplace_back(value, default_of(all[i]), all[i].key);
  }
  return builder.CreateVectorOfStructs(changes.data(), changes.size());
}

template <class Struct>
Offset<Vector<const Struct*>> write_list(const std::vector<Struct>& list, FlatBufferBuilder& builder) {
  return builder.CreateVectorOfStructs(list.data(), list.size());
}

}  // namespace

void write_report(Analysis& analysis, const Parameters& parameters, std::uint32_t pit_crc32,
                  FlatBufferBuilder& builder, Offset<firnbook::BulletinComparison> bulletin) {
  if (bulletin.IsNull()) builder.Clear();
  const auto checks = write_list(analysis.checks, builder);
  const auto findings = write_list(analysis.findings, builder);
  const auto concerns = write_concerns(analysis, builder);
  const auto loaded = write_list(analysis.loaded, builder);
  const auto not_loaded = write_list(analysis.not_loaded, builder);
  const auto suggestions = write_list(analysis.suggestions, builder);
  const auto cautions = write_list(analysis.cautions, builder);
  const auto methods = write_list(analysis.methods, builder);
  const auto changes = write_changes(parameters, analysis.workspace.changes, builder);
  firnbook::ReportBuilder table(builder);
  table.add_schema_minor(pit::kSchemaMinor);
  table.add_pit_crc32(pit_crc32);
  table.add_checks(checks);
  table.add_findings(findings);
  table.add_concerns(concerns);
  table.add_loaded(loaded);
  table.add_not_loaded(not_loaded);
  table.add_suggestions(suggestions);
  if (!bulletin.IsNull()) table.add_bulletin(bulletin);
  table.add_cautions(cautions);
  table.add_methods(methods);
  table.add_tolerance_10um(parameters.tolerance_10um);
  if (!changes.IsNull()) table.add_parameters_changed(changes);
  const Offset<firnbook::Report> report = table.Finish();
  firnbook::FinishReportBuffer(builder, report);
}

}  // namespace firn::interpretation
