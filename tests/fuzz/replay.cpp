// Runs a fuzz target over its seeds, and over every seed cut short and with a byte changed, without a fuzzer:
// for the test suite, with any compiler.
#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <fstream>
#include <iterator>
#include <vector>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

namespace {

// From a block of exactly that size, so that a sanitizer sees the first byte beyond it.
void run(const std::vector<std::uint8_t>& bytes) {
  const std::vector<std::uint8_t> exact(bytes);
  LLVMFuzzerTestOneInput(exact.data(), exact.size());
}

void run_with_faults(std::vector<std::uint8_t> bytes) {
  run(bytes);
  // About a hundred places of each seed, whatever its size.
  const std::size_t step = bytes.size() / 100 + 1;
  for (std::size_t at = 0; at < bytes.size(); at += step) {
    run({bytes.begin(), bytes.begin() + static_cast<std::ptrdiff_t>(at)});
    const std::uint8_t was = bytes[at];
    for (const unsigned change : {0x01U, 0x80U, 0xffU}) {
      bytes[at] = static_cast<std::uint8_t>(was ^ change);
      run(bytes);
    }
    bytes[at] = was;
  }
}

}  // namespace

int main(int argc, char** argv) {
  for (int i = 1; i < argc; ++i) {
    std::ifstream file(argv[i], std::ios::binary);
    if (!file) {
      std::printf("cannot read %s\n", argv[i]);
      return 1;
    }
    run_with_faults({std::istreambuf_iterator<char>(file), {}});
  }
  std::printf("%d seeds\n", argc - 1);
  return argc < 2 ? 1 : 0;
}
