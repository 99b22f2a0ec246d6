// Reads any bytes as CAAML. What is read is written again, and that must read back to the same pit: a
// document that we wrote says all of it.
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>

#include "exchange/caaml/caaml.h"
#include "recording/draft.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace firn;
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  exchange::Notices notices;
  auto read = exchange::read_caaml(text, {}, notices);
  if (!read) return 0;
  const recording::Bytes pit = recording::to_bytes(**read);
  std::string again;
  exchange::Notices lost;
  if (!exchange::write_caaml(again, *firnbook::GetPit(pit.data()), lost)) std::abort();
  exchange::Notices told;
  auto back = exchange::read_caaml(again, {}, told);
  if (!back || recording::to_bytes(**back) != pit) std::abort();
  return 0;
}
