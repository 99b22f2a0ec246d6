// A tiny SVG writer. Coordinates are tenths of a unit, so that no floating point comes near the picture.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

namespace firn::drawing {

using Tenths = std::int64_t;

// Greys and one accent: every mark also differs in shape, hatching or words, so the accent may be lost.
inline constexpr std::string_view kInk = "#1a1a1a";
inline constexpr std::string_view kQuietInk = "#555";
inline constexpr std::string_view kAccent = "#9c3d10";

void append_tenths(std::string& out, Tenths value);

// `attributes` is our own text, never that of a pit, and starts with a space when it is not empty.
void append_line(std::string& out, Tenths x1, Tenths y1, Tenths x2, Tenths y2, std::string_view attributes);
void append_rect(std::string& out, Tenths x, Tenths y, Tenths width, Tenths height,
                 std::string_view attributes);
void append_circle(std::string& out, Tenths x, Tenths y, Tenths radius, std::string_view attributes);
// Opens a text element; the caller appends escaped text and "</text>\n".
void open_text(std::string& out, Tenths x, Tenths y, std::string_view attributes);
// Whole text element; `text` is escaped here.
void append_text(std::string& out, Tenths x, Tenths y, std::string_view attributes, std::string_view text);

// The d attribute of one path element.
class Path {
 public:
  explicit Path(std::string& out) : out_(out) { out_ += "<path d=\""; }
  void move(Tenths x, Tenths y) { point('M', x, y); }
  void line(Tenths x, Tenths y) { point('L', x, y); }
  void close() { out_ += 'Z'; }
  void end(std::string_view attributes);
  // Ends the data only; the caller appends attributes and "/>\n".
  void end_data() { out_ += '"'; }

 private:
  void point(char command, Tenths x, Tenths y);
  std::string& out_;
};

}  // namespace firn::drawing
