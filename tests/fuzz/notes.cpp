// Field notes that anybody wrote, and the notes of any bytes that verify as a pit.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>
#include <vector>

#include "notation/notes.h"
#include "recording/draft.h"

namespace {

using firn::recording::Bytes;

// What a pit prints as is the only text that this library writes of it, and reads back to the same bytes.
void print_and_read(firnbook::PitT& pit) {
  const Bytes bytes = firn::recording::to_bytes(pit);
  std::string text;
  std::vector<firnbook::Place> lost;
  firn::notation::write_notes(text, *firnbook::GetPit(bytes.data()), lost);
  firn::notation::NotesOptions options;
  options.max_bytes = text.size();
  std::vector<firn::Failure> others;
  auto again = firn::notation::read_notes(text, options, others);
  if (!lost.empty() || !again || firn::recording::to_bytes(*(*again).pit) != bytes) std::abort();
}

void read(std::string_view text, bool keep_unread) {
  firn::notation::NotesOptions options;
  options.keep_unread = keep_unread;
  std::vector<firn::Failure> others;
  auto notes = firn::notation::read_notes(text, options, others);
  if (notes) {
    print_and_read(*(*notes).pit);
  } else if (notes.failure().line == 0 || notes.failure().column == 0 || notes.failure().what.empty()) {
    std::abort();
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  read(text, false);
  read(text, true);
  flatbuffers::Verifier verifier(data, size);
  if (!firnbook::VerifyPitBuffer(verifier)) return 0;
  auto pit = firn::recording::from_bytes(*firnbook::GetPit(data));
  if (pit) print_and_read(**pit);
  return 0;
}
