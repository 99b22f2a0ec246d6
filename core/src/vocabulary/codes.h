// The trade's codes: print, parse, label, for every enumeration of schemas/vocabulary.fbs that has codes.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string_view>

#include "schemas/vocabulary_generated.h"

namespace firn {

struct Code {
  std::uint8_t value;
  std::string_view code;   // "4F+", "FCxr", "-SN"
  std::string_view label;  // in plain words: "four fingers, a little harder"
};

struct CodeTable {
  const Code* codes;
  std::size_t count;
  const Code* begin() const { return codes; }
  const Code* end() const { return codes + count; }
};

// One overload for each enumeration that has field codes.
template <class E>
CodeTable code_table();

std::string_view find_code(const CodeTable& table, std::uint8_t value);
std::string_view find_label(const CodeTable& table, std::uint8_t value);
// Exact spelling first, then without regard to case where that is not ambiguous.
std::optional<std::uint8_t> find_value(const CodeTable& table, std::string_view code);

// The code, or "" for a number this library does not know.
template <class E>
std::string_view code_of(E value) {
  return find_code(code_table<E>(), static_cast<std::uint8_t>(value));
}
template <class E>
std::string_view label_of(E value) {
  return find_label(code_table<E>(), static_cast<std::uint8_t>(value));
}
template <class E>
std::optional<E> parse_code(std::string_view code) {
  const std::optional<std::uint8_t> value = find_value(code_table<E>(), code);
  return value ? std::optional<E>(static_cast<E>(*value)) : std::nullopt;
}

// Main class of a grain form: FCxr is in FC.
constexpr firnbook::GrainForm main_class(firnbook::GrainForm form) {
  return static_cast<firnbook::GrainForm>(static_cast<std::uint8_t>(form) / 10 * 10);
}
// SH, FC, DH and their subclasses (Jamieson and Schweizer 2005 and others).
constexpr bool is_persistent(firnbook::GrainForm form) {
  const firnbook::GrainForm main = main_class(form);
  return main == firnbook::GrainForm::SH || main == firnbook::GrainForm::FC ||
         main == firnbook::GrainForm::DH;
}
// Class of a size in units of 10 um, closed below and open above; nullopt for sizes that are not positive.
std::optional<firnbook::GrainSizeClass> size_class(std::int32_t size_10um);

}  // namespace firn
