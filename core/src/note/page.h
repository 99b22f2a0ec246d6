// A page of plain text: headings, items with a hanging indent, lines of limited width.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace firn::note {

class Page {
 public:
  explicit Page(std::string& out) : out_(out) {}

  // A heading of its own, with a blank line before it unless it is the first thing on the page.
  void heading(std::string_view text);
  // One paragraph after `mark` (such as "1. " or "- "); further lines hang under its text.
  void item(std::size_t indent, std::string_view mark, std::string_view text);
  void paragraph(std::string_view text) { item(0, {}, text); }

 private:
  std::string& out_;
};

// Widest line, in characters.
inline constexpr std::size_t kPageWidth = 96;

}  // namespace firn::note
