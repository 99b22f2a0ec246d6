// The sentences of the note, by key and language. The rows stand in en.def, de.def and fr.def and in the
// files these name: to add a sentence is to add a row to each, and a language that lacks one does not
// compile.
//
// Templates hold {a}, {b}, {c}, {depth}, {x} and {y}, with a unit after a colon where there is one:
// {depth:cm}, {a:mm}, {a:hardness}. What has no unit prints as a plain number; x and y are words.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

#include "schemas/report_generated.h"

namespace firn::note {

enum class Language : std::uint8_t { english, german, french };
inline constexpr Language kLanguages[] = {Language::english, Language::german, Language::french};

// "en", "de", "fr": ISO 639-1.
std::string_view code_of_language(Language language);

// The fixed words of the note: headings, joints, answers.
#define WORDS(type, key, text) key,
enum class Phrase : std::uint16_t {
#include "note/en_phrases.def"
  count
};
#undef WORDS

// The first words of WORDS( in the .def files.
enum class Table : std::uint8_t {
  Phrase,
  FindingKey,
  FindingName,
  CautionKey,
  NextStep,
  ShortStep,
  NotLoadedReason,
  Method,
  Verified,
  ConcernRank,
  ConcernReading,
  ConcernReach,
  GrainForm,
  SignKind,
  SlideKind,
  Trigger,
  Confidence,
  TestKind,
  LayerNameKind,
  StepKind,
  Purpose,
  CheckMessage,
  CheckRemedy,
  BulletinMatch,
  RegionFrom,
  DangerLevel,
  DayPeriod,
  ProblemType,
  ProblemAnswer,
  SpeakLimit,
  ProblemKind,
  BulletinPhrase,
  count
};

// Any row by its number; empty where there is none.
std::string_view row_words(Table table, std::size_t number, Language language);

struct Numbers {
  std::int32_t depth = 0, a = 0, b = 0, c = 0;
  std::string_view x = {}, y = {};
  // Checks print temperatures as they stand in the record; findings round them.
  bool exact = false;
};

// Empty for a key this version does not know.
std::string_view phrase(Phrase key, Language language);
std::string_view finding_words(firnbook::FindingKey key, Language language = Language::english);
// What a criterion is about, for the list of those that could not be judged.
std::string_view finding_name(firnbook::FindingKey key, Language language = Language::english);
std::string_view caution_words(firnbook::CautionKey key, Language language = Language::english);
std::string_view suggestion_words(firnbook::NextStep step, Language language = Language::english);
// In a few words, for texts that are read aloud.
std::string_view suggestion_name(firnbook::NextStep step, Language language = Language::english);
std::string_view not_loaded_words(firnbook::NotLoadedReason reason, Language language = Language::english);
std::string_view method_words(firnbook::Method method, Language language = Language::english);
std::string_view verified_words(firnbook::Verified verified, Language language = Language::english);
std::string_view rank_words(firnbook::ConcernRank rank, Language language = Language::english);
std::string_view reading_words(firnbook::ConcernReading reading, Language language = Language::english);
std::string_view reach_words(firnbook::ConcernReach reach, Language language = Language::english);

// Labels of codes as far as the note prints them: "surface hoar". English ones are those of the vocabulary,
// and so are those of a value that a language has no row for.
std::string_view label_in(Language language, firnbook::GrainForm value);
std::string_view label_in(Language language, firnbook::SignKind value);
std::string_view label_in(Language language, firnbook::SlideKind value);
std::string_view label_in(Language language, firnbook::Trigger value);
std::string_view label_in(Language language, firnbook::Confidence value);
std::string_view label_in(Language language, firnbook::TestKind value);
std::string_view label_in(Language language, firnbook::LayerNameKind value);
// In one word where there is one: "cracking".
std::string_view sign_name(Language language, firnbook::SignKind value);
// Where the English note prints the code itself, since the trade has none but plain words.
std::string_view step_in(Language language, firnbook::StepKind value);

// What a check says and how to mend it: the English of the catalogue, or the row of the language.
void append_check_message(std::string& out, const firnbook::Check& check, Language language);
void append_check_remedy(std::string& out, const firnbook::Check& check, Language language);

void append_template(std::string& out, std::string_view words, const Numbers& numbers,
                     Language language = Language::english);
void append_phrase(std::string& out, Phrase key, Language language, const Numbers& numbers = {});

}  // namespace firn::note
