// Tables for table_csv.py, which has no library. TABLE is layers, tests or pits; the table goes to OUT.
//   table_tool TABLE OUT notes FILES...     of pits in field notes
//   table_tool TABLE OUT texts FILE         of pits whose texts are those in FILE, each ended by a NUL
//   table_tool TABLE OUT random COUNT       of pits with anything in any field
#include <cstdlib>
#include <fstream>
#include <iterator>
#include <memory>
#include <string>
#include <vector>

#include "card_pits.h"
#include "exchange/table/table.h"
#include "notation/notes.h"
#include "recording/draft.h"

namespace {

using firnbook::PitT;
namespace table = firn::exchange::table;

std::string file(const std::string& path) {
  std::ifstream in(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
}

// A text in each place where a table has one.
std::unique_ptr<PitT> pit_of_text(const std::string& text) {
  auto pit = std::make_unique<PitT>();
  pit->title = text;
  pit->layers.push_back(std::make_unique<firnbook::LayerT>());
  pit->layers[0]->words = text;
  pit->tests.push_back(std::make_unique<firnbook::StabilityTestT>());
  pit->tests[0]->words = text;
  pit->assessment = std::make_unique<firnbook::AssessmentT>();
  pit->assessment->words = text;
  return pit;
}

std::vector<std::unique_ptr<PitT>> pits_of(const std::string& kind, const std::vector<std::string>& rest) {
  std::vector<std::unique_ptr<PitT>> pits;
  if (kind == "notes") {
    for (const std::string& path : rest) {
      std::vector<firn::Failure> others;
      auto notes = firn::notation::read_notes(file(path), {}, others);
      if (notes) pits.push_back(std::move(notes->pit));
    }
  } else if (kind == "texts") {
    const std::string texts = file(rest.at(0));
    for (std::size_t at = 0; at < texts.size(); at = texts.find('\0', at) + 1) {
      pits.push_back(pit_of_text(texts.substr(at, texts.find('\0', at) - at)));
    }
  } else {
    const int count = std::atoi(rest.at(0).c_str());
    for (int i = 0; i < count; ++i) {
      pits.push_back(
          firn::tests::PitOfAnything(static_cast<std::uint64_t>(i), firn::tests::Numbers::mixed).pit());
    }
  }
  return pits;
}

}  // namespace

int main(int argc, char** argv) {
  if (argc < 5) return 2;
  const std::string name = argv[1];
  const table::Table which = name == "layers"  ? table::Table::layers
                             : name == "tests" ? table::Table::tests
                                               : table::Table::pits;
  std::string out;
  table::append_header(out, which);
  firn::exchange::Notices notices;
  for (const auto& pit : pits_of(argv[3], {argv + 4, argv + argc})) {
    const auto bytes = firn::recording::to_bytes(*pit);
    table::append_rows(out, which, *firnbook::GetPit(bytes.data()), notices);
  }
  std::ofstream(argv[2], std::ios::binary) << out;
  return notices.empty() ? 1 : 0;
}
