// Why a site was chosen, in plain words, as far as the words leave no doubt. The words are kept in any case.
#include "notation/note_tables.h"

namespace firn::notation {
namespace {

using firnbook::ChoiceT;
using firnbook::Comparison;

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
  while (!text.empty() && (text.back() == ' ' || text.back() == '.')) text.remove_suffix(1);
  return text;
}

// Takes `words` from the start of the text.
bool take(std::string_view& text, std::string_view words) {
  const std::size_t length = match_words(text, words);
  if (length == 0) return false;
  text = trimmed(text.substr(length));
  return true;
}

struct Property {
  std::string_view words;
  flatbuffers::Optional<Comparison> ChoiceT::*field;
};
constexpr Property kProperties[] = {{"aspect", &ChoiceT::aspect},
                                    {"elevation", &ChoiceT::elevation},
                                    {"wind loading", &ChoiceT::wind_loading},
                                    {"loading", &ChoiceT::wind_loading},
                                    {"incline", &ChoiceT::incline},
                                    {"steepness", &ChoiceT::incline},
                                    {"slope angle", &ChoiceT::incline}};

struct Likeness {
  std::string_view word;
  Comparison comparison;
};
constexpr Likeness kLikenesses[] = {
    {"same", Comparison::same}, {"similar", Comparison::similar}, {"different", Comparison::different}};

// Adjectives that can mean one thing only.
struct Adjective {
  std::string_view words;
  flatbuffers::Optional<Comparison> ChoiceT::*field;
  Comparison comparison;
};
constexpr Adjective kAdjectives[] = {{"gentler", &ChoiceT::incline, Comparison::less},
                                     {"steeper", &ChoiceT::incline, Comparison::more},
                                     {"less loaded", &ChoiceT::wind_loading, Comparison::less},
                                     {"more loaded", &ChoiceT::wind_loading, Comparison::more}};

class ChoiceReader {
 public:
  explicit ChoiceReader(ChoiceT& choice) : choice_(choice) {}

  void clause(std::string_view text) {
    text = trimmed(text);
    if (!likeness(text)) adjectives(text);
  }

 private:
  // Said in two ways: left open.
  void say(flatbuffers::Optional<Comparison> ChoiceT::*field, Comparison comparison) {
    const bool contradicts = choice_.*field && *(choice_.*field) != comparison;
    if (contradicts || open_ == field) {
      choice_.*field = flatbuffers::nullopt;
      open_ = field;
    } else {
      choice_.*field = comparison;
    }
  }

  // "same aspect, elevation and wind loading as Larch Bowl"
  bool likeness(std::string_view text) {
    take(text, "the");
    for (const Likeness& like : kLikenesses) {
      if (!take(text, like.word)) continue;
      properties(text, like.comparison);
      return true;
    }
    return false;
  }

  void properties(std::string_view text, Comparison comparison) {
    for (bool found = true; found;) {
      found = false;
      for (const Property& property : kProperties) {
        if (!take(text, property.words)) continue;
        say(property.field, comparison);
        found = true;
        break;
      }
      while (!text.empty() && text.front() == ',') text = trimmed(text.substr(1));
      if (take(text, "and")) found = true;
    }
    const bool names = take(text, "as") || take(text, "to") || take(text, "from");
    if (names && choice_.terrain_of_interest.empty()) choice_.terrain_of_interest.assign(text);
  }

  // "gentler and short"; but nothing from "not gentler".
  void adjectives(std::string_view text) {
    for (std::string_view rest = text; !rest.empty();) {
      if (match_words(rest, "not") != 0 || match_words(rest, "no") != 0) return;
      rest = after_word(rest);
    }
    while (!text.empty()) {
      for (const Adjective& adjective : kAdjectives) {
        if (match_words(text, adjective.words) != 0) say(adjective.field, adjective.comparison);
      }
      text = after_word(text);
    }
  }

  static std::string_view after_word(std::string_view text) {
    const std::size_t blank = text.find_first_of(" ,");
    return blank == std::string_view::npos ? std::string_view{} : trimmed(text.substr(blank + 1));
  }

  ChoiceT& choice_;
  flatbuffers::Optional<Comparison> ChoiceT::*open_ = nullptr;
};

}  // namespace

void read_choice(std::string_view words, ChoiceT& choice) {
  ChoiceReader reader(choice);
  while (!words.empty()) {
    const std::size_t end = words.find(';');
    reader.clause(words.substr(0, end));
    words.remove_prefix(end == std::string_view::npos ? words.size() : end + 1);
  }
}

}  // namespace firn::notation
