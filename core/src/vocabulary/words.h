// Everyday words of the trade and the codes they may stand for. Common practice, never a decision: a word
// with several candidates stays a word until somebody looks at the crystals.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string_view>

#include "schemas/vocabulary_generated.h"

namespace firn {

enum class WordOf : std::uint8_t { grain_form, hand_hardness, wetness, fracture_character, sign };

struct Word {
  std::string_view word;  // lower case: "sugary"
  WordOf about;
  const std::uint8_t* candidates;  // numbers of the enumeration that `about` names
  std::size_t count;
  std::string_view note;  // what the code cannot say: "wind crust has no code of its own"
};

// The word, without regard to case; null when it is not in the list.
const Word* find_word(std::string_view text);
// The first known word about `about` inside a remark such as "sugary, to the ground"; null for none.
const Word* find_word_in(std::string_view remark, WordOf about);
const Word* all_words(std::size_t& count);

}  // namespace firn
