#include "drawing/grain_signs.h"

#include <string_view>

#include "schemas/vocabulary_generated.h"

namespace firn::drawing {
namespace {

using firnbook::GrainForm;

struct Sign {
  GrainForm form;
  std::string_view shapes;  // in a box of 24 by 24; stroked unless a shape says otherwise
};

#define FILLED " fill=\"#1a1a1a\""
constexpr Sign kSigns[] = {
    {GrainForm::PP, "<path d=\"M12 4V20M4 12H20\"/>"},
    {GrainForm::PPpl, "<path d=\"M7 3.3H17L22 12L17 20.7H7L2 12Z\"/>"},
    {GrainForm::PPsd, "<path d=\"M12 3V21M4.2 7.5L19.8 16.5M4.2 16.5L19.8 7.5\"/>"},
    {GrainForm::MM, "<circle cx=\"12\" cy=\"12\" r=\"8\"/><circle cx=\"12\" cy=\"12\" r=\"3\"/>"},
    {GrainForm::DF, "<path d=\"M6 20L18 4\"/>"},
    {GrainForm::RG, "<circle cx=\"12\" cy=\"12\" r=\"5.5\"" FILLED "/>"},
    {GrainForm::FC, "<path d=\"M5 5H19V19H5Z\"/>"},
    {GrainForm::DH, "<path d=\"M4 19L12 5L20 19\"/>"},
    {GrainForm::SH, "<path d=\"M4 5L12 19L20 5\"/>"},
    {GrainForm::MF, "<circle cx=\"12\" cy=\"12\" r=\"7\"/>"},
    {GrainForm::MFcr,
     "<circle cx=\"7.5\" cy=\"12\" r=\"4.5\"/><circle cx=\"16.5\" cy=\"12\" r=\"4.5\"/>"
     "<path d=\"M2 4H22M2 20H22\"/>"},
    {GrainForm::IF, "<rect x=\"3\" y=\"9.5\" width=\"18\" height=\"5\"" FILLED "/>"},
};
#undef FILLED

const Sign* find_sign(std::uint8_t form) {
  const Sign* main_sign = nullptr;
  for (const Sign& sign : kSigns) {
    const auto number = static_cast<std::uint8_t>(sign.form);
    if (number == form) return &sign;
    if (number == form / 10 * 10) main_sign = &sign;
  }
  return main_sign;
}

}  // namespace

bool has_grain_sign(std::uint8_t form) {
  return find_sign(form) != nullptr;
}

bool append_grain_sign(std::string& out, std::uint8_t form, Tenths x, Tenths y, Tenths size) {
  const Sign* sign = find_sign(form);
  if (sign == nullptr) return false;
  out += "<g transform=\"translate(";
  append_tenths(out, x);
  out += ' ';
  append_tenths(out, y);
  out += ") scale(";
  // The scale is the one number that needs hundredths.
  const Tenths hundredths = size * 10 / 24;
  out += static_cast<char>('0' + hundredths / 100 % 10);
  out += '.';
  out += static_cast<char>('0' + hundredths / 10 % 10);
  out += static_cast<char>('0' + hundredths % 10);
  out += ")\" fill=\"none\" stroke=\"#1a1a1a\" stroke-width=\"2.4\">";
  out += sign->shapes;
  out += "</g>\n";
  return true;
}

}  // namespace firn::drawing
