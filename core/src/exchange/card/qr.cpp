#include <qrcodegen.h>

#include <cstdint>
#include <string>
#include <string_view>

#include "exchange/card/card.h"
#include "support/text.h"

namespace firn::exchange::card {
namespace {

// ISO/IEC 18004 asks for four modules around the code (from memory).
constexpr int kQuietModules = 4;
// Of a drawing that nobody scales; with a usual card some 250 pixels wide.
constexpr int kPixelsPerModule = 4;
// ISO/IEC 18004, version 40 at level L, alphanumeric (from memory; qrcodegen decides, this only spares it
// work).
constexpr std::size_t kMostCharacters = 4296;

struct Code {
  std::uint8_t modules[qrcodegen_BUFFER_LEN_MAX];
  int size() const { return qrcodegen_getSize(modules); }
  bool is_dark(int x, int y) const { return qrcodegen_getModule(modules, x, y); }
};

// One closed stretch for each run of dark modules in a row.
void append_path(std::string& svg, const Code& code) {
  const int size = code.size();
  for (int y = 0; y < size; ++y) {
    for (int x = 0; x < size; ++x) {
      if (!code.is_dark(x, y)) continue;
      int end = x;
      while (end < size && code.is_dark(end, y)) ++end;
      svg += 'M';
      append_integer(svg, x + kQuietModules);
      svg += ' ';
      append_integer(svg, y + kQuietModules);
      svg += 'h';
      append_integer(svg, end - x);
      svg += "v1h-";
      append_integer(svg, end - x);
      svg += 'z';
      x = end;
    }
  }
}

void append_svg(std::string& svg, const Code& code) {
  const int side = code.size() + 2 * kQuietModules;
  const auto append_side = [&](std::string_view before, int value) {
    svg += before;
    append_integer(svg, value);
  };
  append_side("<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" width=\"", side * kPixelsPerModule);
  append_side("\" height=\"", side * kPixelsPerModule);
  append_side("\" viewBox=\"0 0 ", side);
  append_side(" ", side);
  svg += "\" aria-labelledby=\"title\">\n<title id=\"title\">QR code of a snow pit</title>\n";
  // Scanners want dark on light whatever the page's colours are.
  append_side("<path fill=\"#fff\" d=\"M0 0h", side);
  append_side("v", side);
  append_side("h-", side);
  svg += "z\"/>\n<path fill=\"#000\" shape-rendering=\"crispEdges\" d=\"";
  append_path(svg, code);
  svg += "\"/>\n</svg>\n";
}

}  // namespace

Done qr_svg(std::string& svg, std::string_view text) {
  const std::string terminated(text.substr(0, kMostCharacters + 1));
  if (text.empty() || terminated.find('\0') != std::string::npos ||
      !qrcodegen_isAlphanumeric(terminated.c_str())) {
    return failure_of(FIRN_BAD_ARGUMENT,
                      "a QR code of a card holds digits, capital letters, blanks and $%*+-./: only",
                      "give the card's Base45 text");
  }
  std::uint8_t scratch[qrcodegen_BUFFER_LEN_MAX];
  Code code;
  // Level M gives back about 15 in 100 of what is hidden or misread (ISO/IEC 18004, from memory): snow on the
  // display, a fold in the paper. More would make the modules of a usual card smaller than a phone resolves
  // at arm's length; where there is room in the same size, the library takes a higher level.
  if (text.size() > kMostCharacters ||
      !qrcodegen_encodeText(terminated.c_str(), scratch, code.modules, qrcodegen_Ecc_MEDIUM,
                            qrcodegen_VERSION_MIN, qrcodegen_VERSION_MAX, qrcodegen_Mask_AUTO, true)) {
    return failure_of(FIRN_TOO_LARGE, "the card is too large for a QR code",
                      "shorten remarks and words, or pass on the pit's own file");
  }
  append_svg(svg, code);
  return done();
}

}  // namespace firn::exchange::card
