// A page of plain text: headings, items with a hanging indent, lines of limited width.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace firn::note {

// Widest line, in characters.
inline constexpr std::size_t kPageWidth = 96;

class Page {
 public:
  explicit Page(std::string& out, std::size_t width = kPageWidth) : out_(out), width_(width) {}

  // A heading of its own, with a blank line before it unless it is the first thing on the page.
  void heading(std::string_view text);
  // One paragraph after `mark` (such as "1. " or "- "); further lines hang under its text.
  void item(std::size_t indent, std::string_view mark, std::string_view text);
  void paragraph(std::string_view text) { item(0, {}, text); }

 private:
  std::string& out_;
  std::size_t width_;
};

// Characters, not bytes: words in other scripts must not be broken early.
std::size_t characters_in(std::string_view text);
std::string_view first_characters(std::string_view text, std::size_t most);
// The text on one line: control characters as one blank each, bytes that are no UTF-8 as U+FFFD.
void append_printable(std::string& out, std::string_view text);

}  // namespace firn::note
