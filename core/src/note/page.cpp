#include "note/page.h"

#include "support/text.h"

namespace firn::note {
namespace {

// Characters, not bytes: words in other scripts must not be broken early.
std::size_t characters_in(std::string_view text) {
  std::size_t count = 0;
  for (const char byte : text) count += (static_cast<unsigned char>(byte) & 0xC0) != 0x80 ? 1 : 0;
  return count;
}

bool is_blank(char byte) {
  return byte == ' ' || byte == '\t' || byte == '\n' || byte == '\r';
}

// Control characters would let a place name repaint a terminal; they print as a space.
void append_printable(std::string& out, std::string_view word) {
  while (!word.empty()) {
    const std::size_t length = utf8_length(word);
    if (length == 0) {
      out += "\xEF\xBF\xBD";
      word.remove_prefix(1);
      continue;
    }
    const auto first = static_cast<unsigned char>(word[0]);
    const bool control =
        first < 0x20 || first == 0x7F || (first == 0xC2 && static_cast<unsigned char>(word[1]) < 0xA0);
    if (control) {
      out += ' ';
    } else {
      out.append(word.substr(0, length));
    }
    word.remove_prefix(length);
  }
}

}  // namespace

void Page::heading(std::string_view text) {
  if (!out_.empty()) out_ += '\n';
  append_printable(out_, text);
  out_ += '\n';
}

void Page::item(std::size_t indent, std::string_view mark, std::string_view text) {
  out_.append(indent, ' ');
  out_.append(mark);
  const std::size_t hang = indent + characters_in(mark);
  std::size_t column = hang;
  bool line_is_empty = true;
  while (true) {
    while (!text.empty() && is_blank(text.front())) text.remove_prefix(1);
    if (text.empty()) break;
    std::size_t end = 0;
    while (end < text.size() && !is_blank(text[end])) ++end;
    const std::string_view word = text.substr(0, end);
    const std::size_t width = characters_in(word);
    if (!line_is_empty && column + 1 + width > kPageWidth) {
      out_ += '\n';
      out_.append(hang, ' ');
      column = hang;
    } else if (!line_is_empty) {
      out_ += ' ';
      ++column;
    }
    append_printable(out_, word);
    column += width;
    line_is_empty = false;
    text.remove_prefix(end);
  }
  out_ += '\n';
}

}  // namespace firn::note
