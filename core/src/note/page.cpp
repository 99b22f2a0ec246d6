#include "note/page.h"

#include "support/text.h"

namespace firn::note {
namespace {

bool is_blank(char byte) {
  return byte == ' ' || byte == '\t' || byte == '\n' || byte == '\r';
}

// French sets a blank before some marks; a line must not begin with one of them.
bool is_lone_mark(std::string_view rest) {
  if (rest.size() < 2 || rest[0] != ' ') return false;
  const bool mark = rest[1] == ':' || rest[1] == ';' || rest[1] == '!' || rest[1] == '?';
  return mark && (rest.size() == 2 || is_blank(rest[2]));
}

// Control characters, separators of lines and marks that turn the direction of writing.
bool is_control(std::string_view character) {
  const auto at = [character](std::size_t i) { return static_cast<unsigned char>(character[i]); };
  if (at(0) < 0x20 || at(0) == 0x7F) return true;
  if (character.size() == 2) return at(0) == 0xC2 && at(1) < 0xA0;
  if (character.size() != 3 || at(0) != 0xE2) return false;
  const bool separator_or_turn = at(1) == 0x80 && at(2) >= 0xA8 && at(2) <= 0xAE;
  const bool isolate = at(1) == 0x81 && at(2) >= 0xA6 && at(2) <= 0xA9;
  return separator_or_turn || isolate;
}

// Bytes at the beginning that are one printable character each: most words are nothing else.
std::size_t plain_run(std::string_view text) {
  std::size_t length = 0;
  while (length < text.size() && text[length] >= ' ' && text[length] <= '~') ++length;
  return length;
}

}  // namespace

// What is no UTF-8 prints as one U+FFFD a byte, and counts so.
std::size_t characters_in(std::string_view text) {
  std::size_t count = plain_run(text);
  text.remove_prefix(count);
  while (!text.empty()) {
    const std::size_t length = utf8_length(text);
    text.remove_prefix(length == 0 ? 1 : length);
    ++count;
  }
  return count;
}

std::string_view first_characters(std::string_view text, std::size_t most) {
  if (text.size() <= most) return text;
  std::size_t end = 0;
  for (std::size_t count = 0; end < text.size() && count < most; ++count) {
    const std::size_t length = utf8_length(text.substr(end));
    end += length == 0 ? 1 : length;
  }
  return text.substr(0, end);
}

// A control character would let a place name repaint a terminal or break a line; it prints as a space.
void append_printable(std::string& out, std::string_view word) {
  while (!word.empty()) {
    const std::size_t plain = plain_run(word);
    out.append(word.data(), plain);
    word.remove_prefix(plain);
    if (word.empty()) return;
    const std::size_t length = utf8_length(word);
    if (length == 0) {
      out += "\xEF\xBF\xBD";
      word.remove_prefix(1);
      continue;
    }
    if (is_control(word.substr(0, length))) {
      out += ' ';
    } else {
      out.append(word.substr(0, length));
    }
    word.remove_prefix(length);
  }
}

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
    while (end < text.size() && (!is_blank(text[end]) || is_lone_mark(text.substr(end)))) ++end;
    // A word that no line holds is cut.
    const std::string_view word = first_characters(text.substr(0, end), width_ > hang ? width_ - hang : 1);
    const std::size_t width = characters_in(word);
    if (!line_is_empty && column + 1 + width > width_) {
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
    text.remove_prefix(word.size());
  }
  out_ += '\n';
}

}  // namespace firn::note
