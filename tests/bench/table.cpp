#include "table.h"

#include <algorithm>
#include <cstdio>
#include <limits>

namespace firn::bench {

bool Table::ReportContext(const Context& context) {
  std::printf("%d processors at %.0f MHz; fastest repetition of each, CPU time\n\n",
              context.cpu_info.num_cpus, context.cpu_info.cycles_per_second / 1e6);
  return true;
}

Table::Row& Table::row(const std::string& name) {
  const auto found =
      std::find_if(rows_.begin(), rows_.end(), [&](const Row& row) { return row.name == name; });
  if (found != rows_.end()) return *found;
  rows_.push_back({name, std::numeric_limits<double>::infinity(), 0});
  return rows_.back();
}

void Table::ReportRuns(const std::vector<Run>& runs) {
  for (const Run& run : runs) {
    if (run.error_occurred) {
      std::printf("%s: %s\n", run.run_name.function_name.c_str(), run.error_message.c_str());
      failed_ = true;
    } else if (run.run_type == Run::RT_Iteration) {
      Row& one = row(run.run_name.function_name);
      const double ns = run.cpu_accumulated_time / static_cast<double>(run.iterations) * 1e9;
      one.fastest_ns = std::min(one.fastest_ns, ns);
      ++one.repetitions;
    }
  }
}

bool Table::print(const std::string& peer) const {
  const auto found =
      std::find_if(rows_.begin(), rows_.end(), [&](const Row& row) { return row.name == peer; });
  if (failed_ || found == rows_.end()) return false;
  std::printf("%-12s %12s %8s %12s\n", "", "ns", "times", ("x " + peer).c_str());
  for (const Row& one : rows_) {
    std::printf("%-12s %12.0f %8d %12.2f\n", one.name.c_str(), one.fastest_ns, one.repetitions,
                one.fastest_ns / found->fastest_ns);
  }
  return true;
}

}  // namespace firn::bench
