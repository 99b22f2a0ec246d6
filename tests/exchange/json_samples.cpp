// Writes documents of JSON into a folder, for an independent validator: json_samples FOLDER COUNT
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>

#include "bulletin/bulletin.h"
#include "json_help.h"
#include "pits.h"
#include "random_pit.h"

namespace {

using firn::exchange::Notices;
using firn::exchange::Root;

std::filesystem::path folder;
std::size_t written = 0;

void write(const char* kind, Root root, const std::uint8_t* bytes) {
  std::string text;
  Notices notices;
  firn::exchange::write_json(text, root, *flatbuffers::GetRoot<flatbuffers::Table>(bytes), 0, notices);
  std::ofstream(folder / (std::string(kind) + "." + std::to_string(written++) + ".json"), std::ios::binary)
      << text;
}

std::string content(const std::filesystem::path& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

void write_bulletins() {
  for (const auto& entry : std::filesystem::directory_iterator(FIRN_SOURCE_DIR "/tests/bulletins")) {
    if (entry.path().extension() != ".json") continue;
    flatbuffers::FlatBufferBuilder builder;
    firn::bulletin::Messages messages;
    if (!firn::bulletin::read_json(content(entry.path()), builder, messages)) continue;
    write("bulletin", Root::bulletins, builder.GetBufferPointer());
  }
}
void write_reports() {
  for (const auto& entry : std::filesystem::directory_iterator(FIRN_SOURCE_DIR "/tests/golden")) {
    if (entry.path().string().find(".report.firn") == std::string::npos) continue;
    const std::string bytes = content(entry.path());
    write("report", Root::report, reinterpret_cast<const std::uint8_t*>(bytes.data()));
  }
}

}  // namespace

int main(int argc, char** argv) {
  if (argc != 3) return 2;
  folder = argv[1];
  std::filesystem::remove_all(folder);
  std::filesystem::create_directories(folder);
  using namespace firn::tests;
  for (std::uint64_t seed = 1; seed <= std::strtoull(argv[2], nullptr, 10); ++seed) {
    const Wild wild = seed % 2 == 0 ? Wild::plausible : Wild::any_number;
    write("pit", Root::pit, firn::recording::to_bytes(*RandomPit(seed, wild).pit()).data());
  }
  write("pit", Root::pit, firn::recording::to_bytes(*larch_bowl_entry()).data());
  write("pit", Root::pit, firn::recording::to_bytes(*tarn_shoulder()).data());
  write_bulletins();
  write_reports();
  return 0;
}
