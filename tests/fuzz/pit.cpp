// Bytes of a pit that anybody made, through everything that the library does with one.
#include <cstddef>
#include <cstdint>
#include <cstdlib>

#include "firnbook/firnbook.h"

namespace {

// What was read as a pit goes out in every format, and what goes out comes in again.
void convert_all(firn_context* context, const std::uint8_t* pit, std::size_t size) {
  for (std::uint32_t to = FIRN_FORMAT_FIRN; to < FIRN_FORMAT_BULLETIN_JSON; ++to) {
    firn_convert_options options = FIRN_INIT(firn_convert_options);
    options.from = FIRN_FORMAT_FIRN;
    options.to = to;
    options.leave_out = 1;
    firn_buffer out = {nullptr, 0}, back = {nullptr, 0};
    if (firn_convert(context, pit, size, &options, &out, nullptr, nullptr) == FIRN_OK &&
        to < FIRN_FORMAT_CARD_PICTURE) {
      options.from = to;
      options.to = FIRN_FORMAT_FIRN;
      if (firn_convert(context, out.data, out.size, &options, &back, nullptr, nullptr) != FIRN_OK)
        std::abort();
    }
    firn_buffer_free(context, &out);
    firn_buffer_free(context, &back);
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  firn_context* context = nullptr;
  if (firn_context_create(nullptr, &context, nullptr) != FIRN_OK) return 0;
  firn_buffer report = {nullptr, 0}, note = {nullptr, 0}, picture = {nullptr, 0};
  if (firn_interpret(context, data, size, nullptr, &report, nullptr) == FIRN_OK) {
    const bool is_told =
        firn_note_write(context, data, size, report.data, report.size, &note, nullptr) == FIRN_OK &&
        firn_draw_profile(context, data, size, report.data, report.size, nullptr, &picture, nullptr) ==
            FIRN_OK;
    if (!is_told) std::abort();
    convert_all(context, data, size);
  }
  firn_buffer_free(context, &picture);
  firn_buffer_free(context, &note);
  firn_buffer_free(context, &report);
  firn_context_destroy(context);
  return 0;
}
