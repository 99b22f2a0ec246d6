// Reading and writing a pit in other formats, beside the bare parse of the same text. README.md says what
// each row does.
#include <benchmark/benchmark.h>

#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <iterator>
#include <pugixml.hpp>
#include <string>
#include <vector>

#include "exchange/caaml/caaml.h"
#include "table.h"

namespace {

std::string read_file(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  if (!file) {
    std::fprintf(stderr, "cannot read %s\n", path.c_str());
    std::exit(2);
  }
  return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

struct Inputs {
  std::string pit = read_file(FIRN_GOLDEN "/tarn-shoulder.firn");
  std::string caaml = read_file(FIRN_GOLDEN "/tarn-shoulder.caaml.xml");
};
const Inputs& inputs() {
  static const Inputs all;
  return all;
}

// With the options that pugixml takes by itself.
void parse(benchmark::State& state) {
  const std::string& text = inputs().caaml;
  for (auto _ : state) {
    pugi::xml_document document;
    if (!document.load_buffer(text.data(), text.size())) {
      state.SkipWithError("pugixml does not parse the document");
      break;
    }
    benchmark::DoNotOptimize(document.first_child().internal_object());
  }
}

void read_caaml(benchmark::State& state) {
  for (auto _ : state) {
    firn::exchange::Notices notices;
    auto pit = firn::exchange::read_caaml(inputs().caaml, {}, notices);
    if (!pit || !notices.empty()) {
      state.SkipWithError("the document is not read");
      break;
    }
    benchmark::DoNotOptimize((*pit).get());
  }
}

void write_caaml(benchmark::State& state) {
  const firnbook::Pit& pit = *firnbook::GetPit(inputs().pit.data());
  std::string text;
  for (auto _ : state) {
    firn::exchange::Notices notices;
    text.clear();
    if (!firn::exchange::write_caaml(text, pit, notices)) {
      state.SkipWithError("the pit is not written");
      break;
    }
    benchmark::DoNotOptimize(text.data());
  }
  if (text != inputs().caaml) state.SkipWithError("another document than the golden one");
}

}  // namespace

int main(int argc, char** argv) {
  std::vector<std::string> words = {argv[0], "--benchmark_enable_random_interleaving=true",
                                    "--benchmark_repetitions=25", "--benchmark_min_time=0.02"};
  words.insert(words.end(), argv + 1, argv + argc);
  std::vector<char*> arguments;
  for (std::string& word : words) arguments.push_back(word.data());
  int count = static_cast<int>(arguments.size());
  benchmark::Initialize(&count, arguments.data());
  if (benchmark::ReportUnrecognizedArguments(count, arguments.data())) return 2;

  benchmark::RegisterBenchmark("pugixml", parse);
  benchmark::RegisterBenchmark("read CAAML", read_caaml);
  benchmark::RegisterBenchmark("write CAAML", write_caaml);
  std::printf("Tarn Shoulder: pit %zu bytes, CAAML %zu bytes\n", inputs().pit.size(), inputs().caaml.size());
  firn::bench::Table table;
  benchmark::RunSpecifiedBenchmarks(&table);
  benchmark::Shutdown();
  return table.print("pugixml") ? 0 : 1;
}
