#include "firnbook/convert.h"

#include "capi/guard.h"
#include "capi/outputs.h"
#include "capi/structs.h"
#include "exchange/convert.h"
#include "support/text.h"

using namespace firn::capi;

namespace firn::capi {
namespace {

constexpr std::uint32_t kMostDepth = 1000, kMostIndent = 16;

Failure out_of_range(const char* what, const char* remedy) {
  return failure_of(FIRN_BAD_ARGUMENT, what, remedy);
}

Result<exchange::Conversion> conversion_of(const firn_convert_options& options) {
  if (options.from > FIRN_FORMAT_BULLETIN_JSON || options.to > FIRN_FORMAT_BULLETIN_JSON) {
    return out_of_range("there is no such format", "give a firn_format");
  }
  if (options.leave_out > 1 || options.keep_unread > 1 || options.rows_only > 1 || options.for_others > 1) {
    return out_of_range("leave_out, keep_unread, rows_only or for_others is neither 0 nor 1", "give 0 or 1");
  }
  if (options.indent > kMostIndent || options.max_depth > kMostDepth) {
    return out_of_range("indent is above 16, or max_depth above 1000", "give less");
  }
  exchange::Conversion conversion;
  conversion.from = static_cast<exchange::Format>(options.from);
  conversion.to = options.to == 0 ? exchange::Format::firn : static_cast<exchange::Format>(options.to);
  conversion.leave_out = options.leave_out == 1;
  conversion.keep_unread = options.keep_unread == 1;
  conversion.rows_only = options.rows_only == 1;
  conversion.for_others = options.for_others == 1;
  conversion.indent = options.indent;
  if (options.max_depth != 0) conversion.limits.max_depth = options.max_depth;
  if (options.max_bytes != 0) conversion.limits.max_bytes = options.max_bytes;
  return conversion;
}

void append_number(std::string& out, std::uint32_t number) {
  if (number != 0) append_unsigned(out, number);
  out += '\t';
}
// What a document says may hold anything; a notice is one line of five parts.
void append_part(std::string& out, std::string_view part) {
  for (const char sign : part) out += static_cast<unsigned char>(sign) < 0x20 || sign == 0x7F ? ' ' : sign;
}
void append_notice(std::string& out, const exchange::Notice& notice) {
  constexpr std::string_view kKinds[] = {"changed", "kept", "not understood", "left out"};
  out += kKinds[static_cast<std::size_t>(notice.kind)];
  out += '\t';
  append_number(out, notice.line);
  append_number(out, notice.column);
  append_part(out, notice.path);
  out += '\t';
  append_part(out, notice.what);
  out += '\n';
}
void append_notices(std::string& out, const exchange::Notices& notices) {
  for (const exchange::Notice& notice : notices.kept()) append_notice(out, notice);
  if (notices.not_kept() == 0) return;
  out += "not understood\t\t\t\t";
  append_unsigned(out, notices.not_kept());
  out += " more; mend the first ones and convert again\n";
}

Done convert(firn_context& context, std::string_view bytes, const exchange::Conversion& conversion,
             firn_buffer* out, firn_buffer* notices) {
  std::string& text = context.work.text;
  text.clear();
  exchange::Notices told;
  Done converted = exchange::convert(bytes, conversion, text, told);
  if (!converted) return converted;
  std::string& lines = context.work.more_text;
  lines.clear();
  append_notices(lines, told);
  Staged staged(context, out), staged_notices(context, notices);
  staged.fill(text);
  staged_notices.fill(lines);
  staged.publish();
  staged_notices.publish();
  return done();
}

std::string_view view_of(const std::uint8_t* bytes, std::size_t size) {
  return {reinterpret_cast<const char*>(bytes), size};
}

}  // namespace
}  // namespace firn::capi

firn_status firn_convert(firn_context* context, const uint8_t* bytes, size_t size,
                         const firn_convert_options* options, firn_buffer* out, firn_buffer* notices,
                         firn_error* error) {
  return guard({context, error, __func__, {out, notices}}, [&]() -> firn::Done {
    if (bytes == nullptr) return null_argument("bytes");
    if (out == nullptr) return null_argument("out");
    firn::Result<firn_convert_options> given =
        read_options(options, FIRN_FIRST_VERSION(firn_convert_options, max_bytes), "firn_convert_options");
    if (!given) return given.failure();
    firn::Result<firn::exchange::Conversion> conversion = conversion_of(*given);
    if (!conversion) return conversion.failure();
    return convert(*context, view_of(bytes, size), *conversion, out, notices);
  });
}

firn_status firn_format_detect(firn_context* context, const uint8_t* bytes, size_t size, uint32_t* format,
                               firn_error* error) {
  return guard({context, error, __func__}, [&]() -> firn::Done {
    if (bytes == nullptr) return null_argument("bytes");
    if (format == nullptr) return null_argument("format");
    *format = static_cast<std::uint32_t>(firn::exchange::detect(view_of(bytes, size)));
    return firn::done();
  });
}
