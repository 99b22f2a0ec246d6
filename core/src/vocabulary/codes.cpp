#include "vocabulary/codes.h"

namespace firn {
namespace {

constexpr char lower(char character) {
  return character >= 'A' && character <= 'Z' ? static_cast<char>(character + ('a' - 'A')) : character;
}

const Code* row_of(const CodeTable& table, std::uint8_t value) {
  for (const Code& row : table) {
    if (row.value == value) return &row;
  }
  return nullptr;
}

}  // namespace

bool same_code(std::string_view a, std::string_view b) {
  if (a.size() != b.size()) return false;
  for (std::size_t i = 0; i < a.size(); ++i) {
    if (lower(a[i]) != lower(b[i])) return false;
  }
  return true;
}

std::string_view find_code(const CodeTable& table, std::uint8_t value) {
  const Code* row = row_of(table, value);
  return row == nullptr ? std::string_view{} : row->code;
}

std::string_view find_label(const CodeTable& table, std::uint8_t value) {
  const Code* row = row_of(table, value);
  return row == nullptr ? std::string_view{} : row->label;
}

std::optional<std::uint8_t> find_value(const CodeTable& table, std::string_view code) {
  const Code* in_other_case = nullptr;
  bool ambiguous = false;
  for (const Code& row : table) {
    if (row.code == code) return row.value;
    if (!same_code(row.code, code)) continue;
    ambiguous = in_other_case != nullptr;
    in_other_case = &row;
  }
  if (in_other_case != nullptr) {
    return ambiguous ? std::nullopt : std::optional<std::uint8_t>(in_other_case->value);
  }
  for (std::size_t i = 0; i < table.synonym_count; ++i) {
    if (same_code(table.synonyms[i].code, code)) return table.synonyms[i].value;
  }
  return std::nullopt;
}

}  // namespace firn
