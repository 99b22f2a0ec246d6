// What a pit costs, beside reading the same pit from JSON. README.md says what each row does.

#include <benchmark/benchmark.h>
#include <firnbook/firnbook.h>
#include <simdjson.h>

#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

#include "recording_bench.h"
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

// One context for everything, as an app has it; buffers are given back at once.
struct Inputs {
  firn_context* context = nullptr;
  std::string notes = read_file(std::string(FIRN_TEST_DATA) + "/tarn-shoulder.txt");
  std::string json = read_file(std::string(FIRN_BENCH_DATA) + "/tarn-shoulder.json");
  firn_buffer pit = {};
  firn_buffer report = {};

  Inputs() {
    const bool ready =
        firn_context_create(nullptr, &context, nullptr) == FIRN_OK &&
        firn_notes_read(context, notes.data(), notes.size(), nullptr, &pit, nullptr, nullptr) == FIRN_OK &&
        firn_interpret(context, pit.data, pit.size, nullptr, &report, nullptr) == FIRN_OK;
    if (ready) return;
    std::fprintf(stderr, "the demo pit cannot be read or interpreted\n");
    std::exit(2);
  }
  ~Inputs() {
    firn_buffer_free(context, &report);
    firn_buffer_free(context, &pit);
    firn_context_destroy(context);
  }
  Inputs(const Inputs&) = delete;
  Inputs& operator=(const Inputs&) = delete;
};

const Inputs& inputs() {
  static const Inputs all;
  return all;
}

// Runs a call that fills a buffer, and stops the row when it fails: a fast failure is no measurement.
template <class Call>
void measure(benchmark::State& state, Call call) {
  for (auto _ : state) {
    firn_buffer out = {};
    if (call(&out) != FIRN_OK) {
      state.SkipWithError("the call failed");
      break;
    }
    benchmark::DoNotOptimize(out.data);
    firn_buffer_free(inputs().context, &out);
  }
}

void copy(benchmark::State& state) {
  const Inputs& in = inputs();
  std::vector<std::uint8_t> target(in.pit.size);
  for (auto _ : state) {
    std::memcpy(target.data(), in.pit.data, in.pit.size);
    benchmark::DoNotOptimize(target.data());
    benchmark::ClobberMemory();
  }
}

void parse_json(benchmark::State& state) {
  const simdjson::padded_string padded(inputs().json);
  simdjson::dom::parser parser;
  for (auto _ : state) {
    simdjson::dom::element document;
    if (parser.parse(padded).get(document) != simdjson::SUCCESS) {
      state.SkipWithError("simdjson does not parse the peer");
      break;
    }
    benchmark::DoNotOptimize(document);
  }
}

void verify(benchmark::State& state) {
  const Inputs& in = inputs();
  for (auto _ : state) {
    if (firn_pit_verify(in.context, in.pit.data, in.pit.size, nullptr) != FIRN_OK) {
      state.SkipWithError("the pit does not verify");
      break;
    }
  }
}

void interpret(benchmark::State& state) {
  const Inputs& in = inputs();
  measure(state, [&](firn_buffer* out) {
    return firn_interpret(in.context, in.pit.data, in.pit.size, nullptr, out, nullptr);
  });
}

void note(benchmark::State& state) {
  const Inputs& in = inputs();
  measure(state, [&](firn_buffer* out) {
    return firn_note_write(in.context, in.pit.data, in.pit.size, in.report.data, in.report.size, out,
                           nullptr);
  });
}

void draw(benchmark::State& state) {
  const Inputs& in = inputs();
  measure(state, [&](firn_buffer* out) {
    return firn_draw_profile(in.context, in.pit.data, in.pit.size, in.report.data, in.report.size, nullptr,
                             out, nullptr);
  });
}

void read_notes(benchmark::State& state) {
  const Inputs& in = inputs();
  measure(state, [&](firn_buffer* out) {
    return firn_notes_read(in.context, in.notes.data(), in.notes.size(), nullptr, out, nullptr, nullptr);
  });
}

}  // namespace

int main(int argc, char** argv) {
  // Defaults that the command line may override, since it comes later.
  std::vector<std::string> words = {argv[0], "--benchmark_enable_random_interleaving=true",
                                    "--benchmark_repetitions=25", "--benchmark_min_time=0.02"};
  words.insert(words.end(), argv + 1, argv + argc);
  std::vector<char*> arguments;
  for (std::string& word : words) arguments.push_back(word.data());
  int count = static_cast<int>(arguments.size());
  benchmark::Initialize(&count, arguments.data());
  if (benchmark::ReportUnrecognizedArguments(count, arguments.data())) return 2;

  benchmark::RegisterBenchmark("memcpy", copy);
  benchmark::RegisterBenchmark("simdjson", parse_json);
  benchmark::RegisterBenchmark("verify", verify);
  benchmark::RegisterBenchmark("interpret", interpret);
  benchmark::RegisterBenchmark("note", note);
  benchmark::RegisterBenchmark("draw", draw);
  benchmark::RegisterBenchmark("read notes", read_notes);

  std::printf("Tarn Shoulder: pit %zu bytes, report %zu bytes, JSON %zu bytes, notes %zu bytes\n",
              inputs().pit.size, inputs().report.size, inputs().json.size(), inputs().notes.size());
  if (!firn::bench::register_recording()) {
    std::fprintf(stderr, "the recorder refused what it must take\n");
    return 1;
  }
  firn::bench::Table table;
  benchmark::RunSpecifiedBenchmarks(&table);
  benchmark::Shutdown();
  return table.print("simdjson") ? 0 : 1;
}
