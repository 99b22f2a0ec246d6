#include "drawing/svg.h"

#include "support/text.h"

namespace firn::drawing {
namespace {

void append_attribute(std::string& out, std::string_view name, Tenths value) {
  out += ' ';
  out += name;
  out += "=\"";
  append_tenths(out, value);
  out += '"';
}

}  // namespace

void append_tenths(std::string& out, Tenths value) {
  append_fixed(out, value, 1);
}

void append_line(std::string& out, Tenths x1, Tenths y1, Tenths x2, Tenths y2, std::string_view attributes) {
  Path path(out);
  path.move(x1, y1);
  path.line(x2, y2);
  path.end(attributes);
}

void append_rect(std::string& out, Tenths x, Tenths y, Tenths width, Tenths height,
                 std::string_view attributes) {
  out += "<rect";
  append_attribute(out, "x", x);
  append_attribute(out, "y", y);
  append_attribute(out, "width", width);
  append_attribute(out, "height", height);
  out += attributes;
  out += "/>\n";
}

void append_circle(std::string& out, Tenths x, Tenths y, Tenths radius, std::string_view attributes) {
  out += "<circle";
  append_attribute(out, "cx", x);
  append_attribute(out, "cy", y);
  append_attribute(out, "r", radius);
  out += attributes;
  out += "/>\n";
}

void open_text(std::string& out, Tenths x, Tenths y, std::string_view attributes) {
  out += "<text";
  append_attribute(out, "x", x);
  append_attribute(out, "y", y);
  out += attributes;
  out += '>';
}

void append_text(std::string& out, Tenths x, Tenths y, std::string_view attributes, std::string_view text) {
  open_text(out, x, y, attributes);
  append_xml(out, text);
  out += "</text>\n";
}

void Path::point(char command, Tenths x, Tenths y) {
  out_ += command;
  append_tenths(out_, x);
  out_ += ' ';
  append_tenths(out_, y);
}

void Path::end(std::string_view attributes) {
  out_ += '"';
  out_ += attributes;
  out_ += "/>\n";
}

}  // namespace firn::drawing
