// Each language is one block of characters with an array of 16-bit places into it, in the order of the
// English rows: no pointer, and so no relocation, for any of the sentences. Keys stand once, for all
// languages, and are looked up by halving.
#include "note/words.h"

#include <algorithm>
#include <cstddef>

#include "checking/check.h"
#include "note/bulletin.h"
#include "support/text.h"
#include "vocabulary/codes.h"

namespace firn::note {
namespace {

using firnbook::BulletinMatch;
using firnbook::CautionKey;
using firnbook::CheckCode;
using firnbook::ConcernRank;
using firnbook::ConcernReach;
using firnbook::ConcernReading;
using firnbook::Confidence;
using firnbook::DangerLevel;
using firnbook::DayPeriod;
using firnbook::FindingKey;
using firnbook::GrainForm;
using firnbook::LayerNameKind;
using firnbook::Method;
using firnbook::NextStep;
using firnbook::NotLoadedReason;
using firnbook::ProblemAnswer;
using firnbook::ProblemKind;
using firnbook::ProblemType;
using firnbook::Purpose;
using firnbook::RegionFrom;
using firnbook::SignKind;
using firnbook::SlideKind;
using firnbook::SpeakLimit;
using firnbook::StepKind;
using firnbook::TestKind;
using firnbook::Trigger;
using firnbook::Verified;

// Second sentences about the same keys.
using FindingName = FindingKey;
using ShortStep = NextStep;
using CheckMessage = CheckCode;
using CheckRemedy = CheckCode;

using Key = std::uint16_t;
using Offset = std::uint16_t;
constexpr unsigned kNumberBits = 11;
static_assert(static_cast<unsigned>(Table::count) <= 1u << (16 - kNumberBits),
              "one table too many for a key");
constexpr Key key_of(Table table, unsigned number) {
  return static_cast<Key>((static_cast<unsigned>(table) << kNumberBits) | number);
}

#define CHECK(code, message, remedy) WORDS(CheckMessage, code, message) WORDS(CheckRemedy, code, remedy)

// Rows that English has; then those that it takes from the vocabulary and from the catalogue of checks.
#define WORDS(type, key, text) key_of(Table::type, static_cast<unsigned>(type::key)),
constexpr Key kKeys[] = {
#include "note/en.def"
};
constexpr Key kOtherKeys[] = {
#include "note/de_checks.def"
#include "note/de_codes.def"
};
#undef WORDS

#define WORDS(type, key, text) &&(static_cast<unsigned>(type::key) >> kNumberBits) == 0
static_assert(true
#include "note/de.def"
              ,
              "the number of a key needs more bits");
#undef WORDS

#define WORDS(type, key, text) char type##_##key[sizeof(text)];
struct English {
#include "note/en.def"
};
struct German {
#include "note/de.def"
};
struct French {
#include "note/fr.def"
};
#undef WORDS

#define WORDS(type, key, text) text,
constexpr English kEnglish = {
#include "note/en.def"
};
constexpr German kGerman = {
#include "note/de.def"
};
constexpr French kFrench = {
#include "note/fr.def"
};
#undef WORDS

// A language that lacks a row has no member of that name here.
#define WORDS(type, key, text) static_cast<Offset>(offsetof(English, type##_##key)),
constexpr Offset kEnglishAt[] = {
#include "note/en.def"
};
#undef WORDS
#define WORDS(type, key, text) static_cast<Offset>(offsetof(German, type##_##key)),
constexpr Offset kGermanAt[] = {
#include "note/en.def"
};
constexpr Offset kGermanOtherAt[] = {
#include "note/de_checks.def"
#include "note/de_codes.def"
};
#undef WORDS
#define WORDS(type, key, text) static_cast<Offset>(offsetof(French, type##_##key)),
constexpr Offset kFrenchAt[] = {
#include "note/en.def"
};
constexpr Offset kFrenchOtherAt[] = {
#include "note/de_checks.def"
#include "note/de_codes.def"
};
#undef WORDS
static_assert(sizeof(English) <= UINT16_MAX && sizeof(German) <= UINT16_MAX && sizeof(French) <= UINT16_MAX,
              "a place in the words needs more bits");

// And one that has a row too many is longer.
#define WORDS(type, key, text) +1
constexpr std::size_t kGermanRows = 0
#include "note/de.def"
    ;
constexpr std::size_t kFrenchRows = 0
#include "note/fr.def"
    ;
#undef WORDS
constexpr std::size_t kRows = sizeof kKeys / sizeof kKeys[0];
constexpr std::size_t kOtherRows = sizeof kOtherKeys / sizeof kOtherKeys[0];
static_assert(kGermanRows == kRows + kOtherRows, "German has a row that English or its codes lack");
static_assert(kFrenchRows == kRows + kOtherRows, "French has a row that English or the German codes lack");

// Phrases stand in one run, in the order of their numbers: they are looked up most.
constexpr std::size_t first_phrase() {
  std::size_t at = 0;
  while (kKeys[at] != key_of(Table::Phrase, 0)) ++at;
  return at;
}
constexpr std::size_t kFirstPhrase = first_phrase();
constexpr unsigned kPhrases = static_cast<unsigned>(Phrase::count);
static_assert(kKeys[kFirstPhrase + kPhrases - 1] == key_of(Table::Phrase, kPhrases - 1),
              "all phrases belong in en_phrases.def");

// All keys in order, each with its row: English rows first, then the others. Sorted by the compiler.
struct Row {
  Key key;
  std::uint16_t row;
};
struct Rows {
  Row sorted[kRows + kOtherRows];
};
constexpr Rows sort_rows() {
  Rows rows = {};
  for (std::size_t i = 0; i < kRows + kOtherRows; ++i) {
    const Row one = {i < kRows ? kKeys[i] : kOtherKeys[i - kRows], static_cast<std::uint16_t>(i)};
    std::size_t at = i;
    for (; at > 0 && rows.sorted[at - 1].key > one.key; --at) rows.sorted[at] = rows.sorted[at - 1];
    rows.sorted[at] = one;
  }
  return rows;
}
constexpr Rows kSorted = sort_rows();

constexpr bool no_key_twice() {
  for (std::size_t i = 1; i < kRows + kOtherRows; ++i) {
    if (kSorted.sorted[i - 1].key == kSorted.sorted[i].key) return false;
  }
  return true;
}
static_assert(no_key_twice(), "two rows have one key");

struct Words {
  const char* block;
  const Offset* at;
  const Offset* other_at;
};

Words words_of(Language language) {
  switch (language) {
    case Language::german:
      return {reinterpret_cast<const char*>(&kGerman), kGermanAt, kGermanOtherAt};
    case Language::french:
      return {reinterpret_cast<const char*>(&kFrench), kFrenchAt, kFrenchOtherAt};
    default:
      return {reinterpret_cast<const char*>(&kEnglish), kEnglishAt, nullptr};
  }
}

std::string_view find(Table table, unsigned number, Language language) {
  if (number >> kNumberBits != 0) return {};
  const Key key = key_of(table, number);
  const Row* const end = kSorted.sorted + kRows + kOtherRows;
  const Row* const found =
      std::lower_bound(kSorted.sorted, end, key, [](const Row& row, Key wanted) { return row.key < wanted; });
  if (found == end || found->key != key) return {};
  const Words words = words_of(language);
  if (found->row < kRows) return words.block + words.at[found->row];
  return words.other_at == nullptr ? std::string_view{} : words.block + words.other_at[found->row - kRows];
}

template <class E>
std::string_view find(Table table, E key, Language language) {
  return find(table, static_cast<unsigned>(key), language);
}

// A label's first part: "surface hoar" of "surface hoar: frost feathers, often buried".
template <class E>
std::string_view label_or(Table table, E value, Language language) {
  const std::string_view label = find(table, value, language);
  if (!label.empty()) return label;
  const std::string_view english = label_of(value);
  return english.substr(0, english.find(':'));
}

// Sixths of a step as a number of steps, to two decimals: 8 is 1.33.
void append_steps(std::string& out, std::int32_t sixths) {
  append_rounded(out, (std::int64_t{sixths} * 100000) / 6, 5, 2);
}

// Numbers of an enumeration that come from outside.
template <class E>
E enumerator(std::int32_t value) {
  return static_cast<E>(value >= 0 && value <= UINT8_MAX ? value : UINT8_MAX);
}

void append_or_number(std::string& out, std::string_view words, std::int32_t value) {
  if (words.empty()) return append_integer(out, value);
  out.append(words);
}

struct Decimals {
  char unit[7];
  std::int8_t decimals;
};
constexpr Decimals kDecimals[] = {
    {"cm", 3},   {"mm", 2},   {"m", 5},     {"size", 1}, {"tenths", 1},
    {"kgm3", 1}, {"degC", 2}, {"e7deg", 7}, {"ms", 2},
};

// What findings round, since nobody measured the digits behind: the value has `decimals`, `keep` are printed.
struct Rounded {
  char unit[9];
  std::int8_t decimals, keep;
};
constexpr Rounded kRounded[] = {
    {"degC", 2, 1}, {"tenths", 1, 0}, {"kgm3", 1, 0}, {"mm_water", 2, 0}, {"index", 3, 2},
};

std::int32_t bits_in(std::int32_t mask) {
  std::int32_t count = 0;
  for (std::int32_t bit = 0; bit < 8; ++bit) count += mask >> bit & 1;
  return count;
}

// False for a unit that is no number.
bool append_measure(std::string& out, std::int32_t value, std::string_view unit, bool exact) {
  if (unit.empty() || unit == "n") {
    append_integer(out, value);
    return true;
  }
  for (const Rounded& row : kRounded) {
    if (exact || unit != std::string_view{row.unit}) continue;
    append_rounded(out, value, row.decimals, row.keep);
    return true;
  }
  for (const Decimals& row : kDecimals) {
    if (unit != std::string_view{row.unit}) continue;
    append_fixed(out, value, row.decimals);
    return true;
  }
  if (unit == "steps") {
    append_steps(out, value);
  } else if (unit == "bits") {
    append_integer(out, bits_in(value));
  } else {
    return false;
  }
  return true;
}

void append_coded(std::string& out, std::int32_t value, std::string_view unit, Language language) {
  if (unit == "class" && value == 0) {
    out += '?';
  } else if (unit == "class") {
    append_integer(out, value);
  } else if (unit == "unknown") {
    if (value != 0) append_phrase(out, Phrase::criteria_unknown, language, {0, bits_in(value)});
  } else if (unit == "thickness") {
    append_phrase(out, value == 0 ? Phrase::thickness_unknown : Phrase::thickness, language, {0, value});
  } else if (unit == "test") {
    append_or_number(out, code_of(enumerator<TestKind>(value)), value);
  } else if (unit == "hardness") {
    append_or_number(out, code_of(enumerator<firnbook::HandHardness>(value)), value);
  } else if (unit == "step") {
    out.append(step_in(language, enumerator<StepKind>(value)));
  } else if (unit == "form") {
    const std::string_view code = code_of(enumerator<GrainForm>(value));
    out.append(code.empty() ? std::string_view{"?"} : code);
  } else if (unit == "kind") {
    append_or_number(out, label_in(language, enumerator<TestKind>(value)), value);
  } else if (unit == "purpose") {
    std::string number;
    append_integer(number, value);
    const std::string_view label = find(Table::Purpose, enumerator<Purpose>(value), language);
    Numbers words;
    words.x = label.empty() ? number : label;
    append_phrase(out, Phrase::of_purpose, language, words);
  } else if (unit == "sign") {
    append_or_number(out, label_in(language, enumerator<SignKind>(value)), value);
  }
}

void append_number(std::string& out, std::int32_t value, std::string_view unit, bool exact,
                   Language language) {
  const std::size_t before = out.size();
  if (!append_measure(out, value, unit, exact)) return append_coded(out, value, unit, language);
  if (language == Language::english) return;
  const std::size_t point = out.find('.', before);
  if (point != std::string::npos) out[point] = ',';
}

// `field` is what stands between the braces.
void append_field(std::string& out, std::string_view field, const Numbers& numbers, Language language) {
  const std::size_t colon = field.find(':');
  const std::string_view name = field.substr(0, colon);
  const std::string_view unit =
      colon == std::string_view::npos ? std::string_view{} : field.substr(colon + 1);
  if (name == "x") {
    out.append(numbers.x);
  } else if (name == "y") {
    out.append(numbers.y);
  } else {
    const std::int32_t value = name == "depth" ? numbers.depth
                               : name == "a"   ? numbers.a
                               : name == "b"   ? numbers.b
                                               : numbers.c;
    append_number(out, value, unit, numbers.exact, language);
  }
}

// False when the language has no such row: then the catalogue's English stands.
bool append_check(std::string& out, const firnbook::Check& check, Table table, Language language) {
  const std::string_view words =
      language == Language::english ? std::string_view{} : find(table, check.code(), language);
  if (words.empty()) return false;
  Numbers numbers = {0, check.a(), check.b(), check.c()};
  numbers.exact = true;
  append_template(out, words, numbers, language);
  return true;
}

}  // namespace

std::string_view code_of_language(Language language) {
  switch (language) {
    case Language::german:
      return "de";
    case Language::french:
      return "fr";
    default:
      return "en";
  }
}

std::string_view row_words(Table table, std::size_t number, Language language) {
  return number >> kNumberBits == 0 ? find(table, static_cast<unsigned>(number), language)
                                    : std::string_view{};
}

std::string_view phrase(Phrase key, Language language) {
  if (key >= Phrase::count) return {};
  const Words words = words_of(language);
  return words.block + words.at[kFirstPhrase + static_cast<std::size_t>(key)];
}
std::string_view finding_words(FindingKey key, Language language) {
  return find(Table::FindingKey, key, language);
}
std::string_view finding_name(FindingKey key, Language language) {
  return find(Table::FindingName, key, language);
}
std::string_view caution_words(CautionKey key, Language language) {
  return find(Table::CautionKey, key, language);
}
std::string_view suggestion_words(NextStep step, Language language) {
  return find(Table::NextStep, step, language);
}
std::string_view suggestion_name(NextStep step, Language language) {
  const std::string_view name = find(Table::ShortStep, step, language);
  return name.empty() ? suggestion_words(step, language) : name;
}
std::string_view not_loaded_words(NotLoadedReason reason, Language language) {
  return find(Table::NotLoadedReason, reason, language);
}
std::string_view method_words(Method method, Language language) {
  return find(Table::Method, method, language);
}
std::string_view verified_words(Verified verified, Language language) {
  return find(Table::Verified, verified, language);
}
std::string_view rank_words(ConcernRank rank, Language language) {
  return find(Table::ConcernRank, rank, language);
}

std::string_view reading_words(ConcernReading reading, Language language) {
  return find(Table::ConcernReading, reading, language);
}
std::string_view reach_words(ConcernReach reach, Language language) {
  return find(Table::ConcernReach, reach, language);
}

std::string_view label_in(Language language, GrainForm value) {
  return label_or(Table::GrainForm, value, language);
}
std::string_view label_in(Language language, SignKind value) {
  return label_or(Table::SignKind, value, language);
}
std::string_view label_in(Language language, SlideKind value) {
  return label_or(Table::SlideKind, value, language);
}
std::string_view label_in(Language language, Trigger value) {
  return label_or(Table::Trigger, value, language);
}
std::string_view label_in(Language language, Confidence value) {
  return label_or(Table::Confidence, value, language);
}
std::string_view label_in(Language language, TestKind value) {
  return label_or(Table::TestKind, value, language);
}
std::string_view label_in(Language language, LayerNameKind value) {
  const std::string_view label = find(Table::LayerNameKind, value, language);
  return label.empty() ? code_of(value) : label;
}
std::string_view sign_name(Language language, SignKind value) {
  if (language == Language::english) return code_of(value);
  return label_in(language, value);
}
std::string_view step_in(Language language, StepKind value) {
  const std::string_view label = find(Table::StepKind, value, language);
  if (!label.empty()) return label;
  const std::string_view code = code_of(value);
  return code.empty() ? phrase(Phrase::unknown_step, language) : code;
}

void append_check_message(std::string& out, const firnbook::Check& check, Language language) {
  if (append_check(out, check, Table::CheckMessage, language)) return;
  if (checking::find_rule(check.code()) != nullptr) return checking::append_message(out, check);
  append_phrase(out, Phrase::check_unknown, language, {0, static_cast<std::int32_t>(check.code())});
}

void append_check_remedy(std::string& out, const firnbook::Check& check, Language language) {
  if (append_check(out, check, Table::CheckRemedy, language)) return;
  if (checking::find_rule(check.code()) != nullptr) return checking::append_remedy(out, check);
  append_phrase(out, Phrase::remedy_unknown, language);
}

void append_template(std::string& out, std::string_view words, const Numbers& numbers, Language language) {
  while (!words.empty()) {
    const std::size_t open = words.find('{');
    out.append(words.substr(0, open));
    if (open == std::string_view::npos) return;
    const std::size_t close = words.find('}', open);
    if (close == std::string_view::npos) return;
    append_field(out, words.substr(open + 1, close - open - 1), numbers, language);
    words.remove_prefix(close + 1);
  }
}

void append_phrase(std::string& out, Phrase key, Language language, const Numbers& numbers) {
  append_template(out, phrase(key, language), numbers, language);
}

}  // namespace firn::note
