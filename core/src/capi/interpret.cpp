#include "interpretation/interpret.h"

#include "capi/inputs.h"
#include "capi/outputs.h"
#include "capi/structs.h"
#include "firnbook/interpret.h"
#include "support/checksum.h"

using namespace firn::capi;

namespace firn::capi {
namespace {

constexpr std::uint32_t kMostParameters = 1000;

Result<interpretation::Parameters> parameters_of(const firn_interpret_options* given) {
  Result<firn_interpret_options> chosen = read_options(
      given, FIRN_FIRST_VERSION(firn_interpret_options, tolerance_10um), "firn_interpret_options");
  if (!chosen) return chosen.failure();
  interpretation::Parameters parameters;
  if (chosen->tolerance_10um != 0) {
    Done set = interpretation::set_parameter(parameters, firnbook::ParameterKey::tolerance_10um,
                                             chosen->tolerance_10um);
    if (!set) return set.failure();
  }
  if (chosen->parameter_count == 0) return parameters;
  if (chosen->parameters == nullptr) {
    Done null = null_argument("parameters");
    return null.failure();
  }
  if (chosen->parameter_count > kMostParameters) {
    return failure_of(FIRN_BAD_ARGUMENT, "more than 1000 parameters", "give each parameter once");
  }
  for (std::uint32_t i = 0; i < chosen->parameter_count; ++i) {
    const firn_parameter& one = chosen->parameters[i];
    Done set =
        interpretation::set_parameter(parameters, static_cast<firnbook::ParameterKey>(one.key), one.value);
    if (!set) return set.failure();
  }
  return parameters;
}

firn_parameter_entry entry_of(const interpretation::Parameter& parameter) {
  firn_parameter_entry out = {};
  out.key = static_cast<std::uint16_t>(parameter.key);
  out.method = static_cast<std::uint8_t>(parameter.method);
  out.verified = static_cast<std::uint8_t>(parameter.verified);
  out.default_value = interpretation::default_of(parameter);
  out.least = parameter.least;
  out.most = parameter.most;
  out.name = parameter.name;
  out.unit = parameter.unit;
  out.source = parameter.source;
  return out;
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

firn_status firn_parameter_count(uint32_t* count, firn_error* error) {
  return run({nullptr, error, __func__}, [&]() -> firn::Done {
    if (count == nullptr) return null_argument("count");
    std::size_t all = 0;
    firn::interpretation::all_parameters(all);
    *count = static_cast<std::uint32_t>(all);
    return firn::done();
  });
}

firn_status firn_parameter_at(uint32_t position, firn_parameter_entry* out, firn_error* error) {
  return run({nullptr, error, __func__}, [&]() -> firn::Done {
    std::size_t count = 0;
    const firn::interpretation::Parameter* all = firn::interpretation::all_parameters(count);
    if (position >= count) {
      return failure_of(FIRN_BAD_ARGUMENT, "there is no parameter at this position",
                        "positions count from 0; firn_parameter_count says how many there are");
    }
    return write_struct(out, entry_of(all[position]), FIRN_FIRST_VERSION(firn_parameter_entry, source),
                        "firn_parameter_entry");
  });
}
