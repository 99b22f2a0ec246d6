// A reporter that keeps the fastest repetition of each benchmark and prints them side by side.
#pragma once

#include <benchmark/benchmark.h>

#include <string>
#include <vector>

namespace firn::bench {

class Table : public benchmark::BenchmarkReporter {
 public:
  bool ReportContext(const Context& context) override;
  void ReportRuns(const std::vector<Run>& runs) override;

  // Ratios are to the row called `peer`. False when a benchmark failed or the peer is missing.
  bool print(const std::string& peer) const;

 private:
  struct Row {
    std::string name;
    double fastest_ns;
    int repetitions;
  };
  Row& row(const std::string& name);

  std::vector<Row> rows_;
  bool failed_ = false;
};

}  // namespace firn::bench
