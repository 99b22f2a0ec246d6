// Reading and writing a pit in other formats, beside the bare parse of the same text. README.md says what
// each row does.
#include <benchmark/benchmark.h>

#include <simdjson.h>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <iterator>
#include <pugixml.hpp>
#include <string>
#include <vector>

#include "exchange/caaml/caaml.h"
#include "exchange/card/card.h"
#include "exchange/json/json.h"
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
  std::string json = written_json();
  std::vector<std::uint8_t> card = written_card();

 private:
  const firnbook::Pit& record() const { return *firnbook::GetPit(pit.data()); }
  std::string written_json() const {
    std::string text;
    firn::exchange::Notices notices;
    firn::exchange::write_json(text, firn::exchange::Root::pit,
                               *flatbuffers::GetRoot<flatbuffers::Table>(pit.data()), 0, notices);
    return text;
  }
  std::vector<std::uint8_t> written_card() const {
    firn::exchange::Notices notices;
    return *firn::exchange::card::write_card(record(), {}, notices);
  }
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

// The document tree of simdjson, parser reused, text already padded.
void parse_json(benchmark::State& state) {
  const simdjson::padded_string text(inputs().json);
  simdjson::dom::parser parser;
  for (auto _ : state) {
    simdjson::dom::element document;
    if (parser.parse(text).get(document) != simdjson::SUCCESS) {
      state.SkipWithError("simdjson does not parse the document");
      break;
    }
    benchmark::DoNotOptimize(document);
  }
}

void read_json(benchmark::State& state) {
  for (auto _ : state) {
    firn::exchange::Notices notices;
    auto read = firn::exchange::read_json(inputs().json, {}, notices);
    if (!read || !notices.empty()) {
      state.SkipWithError("the document is not read");
      break;
    }
    benchmark::DoNotOptimize(read->bytes.data());
  }
}

void write_json(benchmark::State& state) {
  std::string text;
  for (auto _ : state) {
    firn::exchange::Notices notices;
    text.clear();
    firn::exchange::write_json(text, firn::exchange::Root::pit,
                               *flatbuffers::GetRoot<flatbuffers::Table>(inputs().pit.data()), 0, notices);
    benchmark::DoNotOptimize(text.data());
  }
  if (text != inputs().json) state.SkipWithError("another document than before");
}

void read_card(benchmark::State& state) {
  for (auto _ : state) {
    firn::exchange::Notices notices;
    auto pit = firn::exchange::card::read_card(inputs().card.data(), inputs().card.size(), notices);
    if (!pit) {
      state.SkipWithError("the card is not read");
      break;
    }
    benchmark::DoNotOptimize((*pit).get());
  }
}

void write_card(benchmark::State& state) {
  const firnbook::Pit& pit = *firnbook::GetPit(inputs().pit.data());
  for (auto _ : state) {
    firn::exchange::Notices notices;
    auto card = firn::exchange::card::write_card(pit, {}, notices);
    if (!card) {
      state.SkipWithError("the card is not written");
      break;
    }
    benchmark::DoNotOptimize(card->data());
  }
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
  benchmark::RegisterBenchmark("simdjson", parse_json);
  benchmark::RegisterBenchmark("read JSON", read_json);
  benchmark::RegisterBenchmark("write JSON", write_json);
  benchmark::RegisterBenchmark("read card", read_card);
  benchmark::RegisterBenchmark("write card", write_card);
  std::printf("Tarn Shoulder: pit %zu bytes, CAAML %zu, JSON %zu, card %zu\n", inputs().pit.size(),
              inputs().caaml.size(), inputs().json.size(), inputs().card.size());
  firn::bench::Table table;
  benchmark::RunSpecifiedBenchmarks(&table);
  benchmark::Shutdown();
  const bool xml_is_whole = table.print("pugixml");
  const bool json_is_whole = table.print("simdjson");
  return xml_is_whole && json_is_whole ? 0 : 1;
}
