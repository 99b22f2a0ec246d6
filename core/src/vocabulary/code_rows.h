// How the code tables are written down. Private to the vocabulary.
#pragma once

#include "vocabulary/codes.h"

namespace firn {

template <class E>
constexpr std::uint8_t n(E value) {
  return static_cast<std::uint8_t>(value);
}

template <std::size_t N>
constexpr CodeTable rows(const Code (&codes)[N]) {
  return {codes, N};
}

template <std::size_t N, std::size_t M>
constexpr CodeTable rows(const Code (&codes)[N], const Synonym (&synonyms)[M]) {
  return {codes, N, synonyms, M};
}

}  // namespace firn
