// Every sentence in every language: all of them there, holding the same values, none of them reassuring.
#include <gtest/gtest.h>

#include <map>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "checking/check.h"
#include "note/words.h"
#include "note_help.h"
#include "vocabulary/codes.h"

namespace firn::tests {
namespace {

using note::Language;

struct Row {
  std::string_view type, key, words;
  std::string name() const { return std::string(type) + "." + std::string(key); }
};

#define CHECK(code, message, remedy) WORDS(CheckMessage, code, message) WORDS(CheckRemedy, code, remedy)
#define WORDS(type, key, text) {#type, #key, text},
const std::vector<Row> kEnglish = {
#include "note/en.def"
};
const std::vector<Row> kGerman = {
#include "note/de.def"
};
const std::vector<Row> kFrench = {
#include "note/fr.def"
};
#undef WORDS
#undef CHECK

const std::vector<Row>& rows(Language language) {
  return language == Language::german ? kGerman : language == Language::french ? kFrench : kEnglish;
}

std::map<std::string, std::string_view> by_name(Language language) {
  std::map<std::string, std::string_view> out;
  for (const Row& row : rows(language)) EXPECT_TRUE(out.emplace(row.name(), row.words).second) << row.name();
  return out;
}

// What stands between braces; "{...}" alone where one is left open.
std::multiset<std::string> placeholders(std::string_view words) {
  std::multiset<std::string> out;
  for (std::size_t open = words.find('{'); open != std::string_view::npos; open = words.find('{', open + 1)) {
    const std::size_t close = words.find('}', open);
    out.insert(close == std::string_view::npos ? "{...}" : std::string(words.substr(open, close - open + 1)));
  }
  return out;
}

std::set<std::string> once(std::string_view words) {
  const auto all = placeholders(words);
  return {all.begin(), all.end()};
}

// The English words of a row: its own, or those of the catalogue of checks.
std::string_view english_of(const Row& row, const std::map<std::string, std::string_view>& english) {
  const auto found = english.find(row.name());
  if (found != english.end()) return found->second;
  for (const auto code : firnbook::EnumValuesCheckCode()) {
    const checking::Rule* rule = checking::find_rule(code);
    if (rule == nullptr || row.key != firnbook::EnumNameCheckCode(code)) continue;
    if (row.type == "CheckMessage") return rule->message;
    if (row.type == "CheckRemedy") return rule->remedy;
  }
  return {};
}

TEST(NoteRows, TheForbiddenListsThemselvesWork) {
  EXPECT_EQ(forbidden_in("a safe slope", Language::english), "safe");
  EXPECT_EQ(forbidden_in("GO!", Language::english), "go");
  EXPECT_EQ(forbidden_in("low\n  risk", Language::english), "low risk");
  EXPECT_EQ(forbidden_in("unstable, ongoing, goes", Language::english), "");
  EXPECT_EQ(forbidden_in("ein sicherer Hang", Language::german), "sicherer");
  EXPECT_EQ(forbidden_in("GR\u00DCN", Language::german), "gr\u00FCn");
  EXPECT_EQ(forbidden_in("instabil, begr\u00FCnden, unsicher", Language::german), "");
  EXPECT_EQ(forbidden_in("S\u00DBRE", Language::french), "s\u00FBre");
  EXPECT_EQ(forbidden_in("sur la neige instable, combien", Language::french), "");
  EXPECT_EQ(forbidden_in("bonnes", Language::french), "bonnes");
}

TEST(NoteRows, NoneReassuresInAnyLanguage) {
  for (const Language language : note::kLanguages) {
    ASSERT_GT(rows(language).size(), 150u);
    for (const Row& row : rows(language)) {
      EXPECT_EQ(forbidden_in(row.words, language), "") << row.name() << ": " << row.words;
    }
  }
}

TEST(NoteRows, ChecksDoNotReassureEither) {
  std::size_t count = 0;
  const checking::Rule* rules = checking::all_rules(count);
  ASSERT_GT(count, 0u);
  for (std::size_t i = 0; i < count; ++i) {
    EXPECT_EQ(forbidden_in(rules[i].message, Language::english), "") << rules[i].message;
    EXPECT_EQ(forbidden_in(rules[i].remedy, Language::english), "") << rules[i].remedy;
  }
}

TEST(NoteRows, EveryLanguageHasTheRowsOfEnglish) {
  const auto english = by_name(Language::english), german = by_name(Language::german),
             french = by_name(Language::french);
  for (const auto& row : english) {
    EXPECT_EQ(german.count(row.first), 1u) << row.first;
    EXPECT_EQ(french.count(row.first), 1u) << row.first;
  }
  EXPECT_EQ(german.size(), french.size());
  for (const auto& row : german) EXPECT_EQ(french.count(row.first), 1u) << row.first;
}

TEST(NoteRows, EveryLanguageHasTheSameValuesInASentence) {
  const auto english = by_name(Language::english);
  for (const Language language : {Language::german, Language::french}) {
    for (const Row& row : rows(language)) {
      EXPECT_EQ(once(row.words), once(english_of(row, english))) << row.name() << ": " << row.words;
    }
  }
}

TEST(NoteRows, ValuesHaveNamesAndUnitsThatAreKnown) {
  const std::set<std::string> names = {"a", "b", "c", "depth", "x", "y"};
  const std::set<std::string> units = {"cm",    "mm",      "m",         "tenths",  "degC",     "kgm3",
                                       "e7deg", "ms",      "steps",     "n",       "hardness", "step",
                                       "form",  "kind",    "sign",      "purpose", "size",     "class",
                                       "bits",  "unknown", "thickness", "test",    "mm_water", "index"};
  for (const Language language : note::kLanguages) {
    for (const Row& row : rows(language)) {
      for (const std::string& one : placeholders(row.words)) {
        const std::string inside = one.substr(1, one.size() - 2);
        const std::size_t colon = inside.find(':');
        EXPECT_EQ(names.count(inside.substr(0, colon)), 1u) << row.name() << " " << one;
        if (colon == std::string::npos) continue;
        EXPECT_EQ(units.count(inside.substr(colon + 1)), 1u) << row.name() << " " << one;
      }
    }
  }
}

TEST(NoteRows, AreUtf8AndNeitherEmptyNorLongerThanAScreen) {
  for (const Language language : note::kLanguages) {
    for (const Row& row : rows(language)) {
      EXPECT_FALSE(row.words.empty()) << row.name();
      EXPECT_TRUE(is_utf8(row.words)) << row.name();
      EXPECT_EQ(trouble_in(std::string(row.words.substr(0, row.words.find('{'))) + "\n", 300), "")
          << row.name();
      EXPECT_LT(note::characters_in(row.words), 260u) << row.name();
    }
  }
}

TEST(NoteRows, EnglishIsPlainAscii) {
  for (const Row& row : kEnglish) {
    for (const char byte : row.words) EXPECT_LT(static_cast<unsigned char>(byte), 0x7F) << row.name();
  }
}

// Codes are codes everywhere: a sentence that names one names it in every language.
TEST(NoteRows, CodesStayCodes) {
  const auto english = by_name(Language::english);
  const std::vector<std::string> codes = {
      "SH",   "FC",  "DH",    "HS",   "Q1",  "SLF", "OGRS",
      "SWAG", "UTC", "kg/m3", "Q2",   "Sk",  "Pa",  "NHESS",
      "DAV",  "P",   "N",     "CT12", "PST", "ECT", "Birkeland and Chabot 2006"};
  for (const Language language : {Language::german, Language::french}) {
    for (const Row& row : rows(language)) {
      const std::string_view same = english_of(row, english);
      for (const std::string& code : codes) {
        if (!stands_alone(same, code)) continue;
        EXPECT_TRUE(stands_alone(row.words, code)) << row.name() << " lacks " << code << ": " << row.words;
      }
    }
  }
}

class EveryKey : public testing::TestWithParam<Language> {
 protected:
  void expect_words(std::string_view words, const char* key) const {
    EXPECT_FALSE(words.empty()) << key;
    EXPECT_EQ(forbidden_in(words, GetParam()), "") << key << ": " << words;
  }
};

INSTANTIATE_TEST_SUITE_P(Languages, EveryKey, testing::ValuesIn(note::kLanguages),
                         [](const auto& test) { return std::string(note::code_of_language(test.param)); });

// The enumerations of the schema are complete here: a new value without words fails.
TEST_P(EveryKey, HasWords) {
  const Language language = GetParam();
  for (const auto key : firnbook::EnumValuesFindingKey()) {
    if (key == firnbook::FindingKey::none) continue;
    expect_words(note::finding_words(key, language), firnbook::EnumNameFindingKey(key));
  }
  for (const auto key : firnbook::EnumValuesCautionKey()) {
    if (key == firnbook::CautionKey::none) continue;
    expect_words(note::caution_words(key, language), firnbook::EnumNameCautionKey(key));
  }
  for (const auto key : firnbook::EnumValuesNextStep()) {
    if (key == firnbook::NextStep::none) continue;
    expect_words(note::suggestion_words(key, language), firnbook::EnumNameNextStep(key));
    expect_words(note::suggestion_name(key, language), firnbook::EnumNameNextStep(key));
    EXPECT_LT(note::suggestion_name(key, language).size(), 60u) << firnbook::EnumNameNextStep(key);
  }
  for (const auto key : firnbook::EnumValuesNotLoadedReason()) {
    if (key == firnbook::NotLoadedReason::none) continue;
    expect_words(note::not_loaded_words(key, language), firnbook::EnumNameNotLoadedReason(key));
  }
  for (const auto key : firnbook::EnumValuesMethod()) {
    if (key == firnbook::Method::none) continue;
    expect_words(note::method_words(key, language), firnbook::EnumNameMethod(key));
  }
  for (const auto key : firnbook::EnumValuesVerified()) {
    if (key == firnbook::Verified::none) continue;
    expect_words(note::verified_words(key, language), firnbook::EnumNameVerified(key));
  }
  for (const auto key : firnbook::EnumValuesConcernRank()) {
    expect_words(note::rank_words(key, language), firnbook::EnumNameConcernRank(key));
  }
  for (const auto key : firnbook::EnumValuesConcernReading()) {
    if (key == firnbook::ConcernReading::none) continue;
    expect_words(note::reading_words(key, language), firnbook::EnumNameConcernReading(key));
  }
  for (const auto key : firnbook::EnumValuesConcernReach()) {
    if (key == firnbook::ConcernReach::none) continue;
    expect_words(note::reach_words(key, language), firnbook::EnumNameConcernReach(key));
  }
  for (const auto part : {firnbook::DayPeriod::earlier, firnbook::DayPeriod::later}) {
    expect_words(note::row_words(note::Table::DayPeriod, static_cast<std::size_t>(part), language),
                 firnbook::EnumNameDayPeriod(part));
  }
  expect_words(note::row_words(note::Table::RegionFrom,
                               static_cast<std::size_t>(firnbook::RegionFrom::only_one), language),
               "RegionFrom");
  for (std::uint16_t i = 0; i < static_cast<std::uint16_t>(note::Phrase::count); ++i) {
    expect_words(note::phrase(static_cast<note::Phrase>(i), language), "phrase");
  }
}

// What each outcome would mean: one raises, the other leaves things as they were or takes nothing away.
TEST_P(EveryKey, StepsSayWhatTheirOutcomesMean) {
  const Language language = GetParam();
  const std::vector<std::string_view> leaves =
      language == Language::german ? std::vector<std::string_view>{"wie es ist", "nichts weg", "unbekannt"}
      : language == Language::french
          ? std::vector<std::string_view>{"tel quel", "n'enl\u00E8ve rien", "inconnue"}
          : std::vector<std::string_view>{"as it is", "takes nothing", "unknown"};
  for (const auto key : firnbook::EnumValuesNextStep()) {
    if (key == firnbook::NextStep::none) continue;
    const std::string_view words = note::suggestion_words(key, language);
    bool found = false;
    for (const std::string_view end : leaves) found = found || words.find(end) != std::string_view::npos;
    EXPECT_TRUE(found) << firnbook::EnumNameNextStep(key) << ": " << words;
  }
}

// In the language itself, not in English by default.
TEST_P(EveryKey, CodesHaveLabelsInTheLanguage) {
  const Language language = GetParam();
  std::size_t same = 0, all = 0;
  const auto expect_label = [&](auto value, const char* name) {
    expect_words(note::label_in(language, value), name);
    ++all;
    if (language != Language::english &&
        note::label_in(language, value) == note::label_in(Language::english, value)) {
      ++same;
    }
  };
  for (const auto value : firnbook::EnumValuesGrainForm())
    expect_label(value, firnbook::EnumNameGrainForm(value));
  for (const auto value : firnbook::EnumValuesSignKind())
    expect_label(value, firnbook::EnumNameSignKind(value));
  for (const auto value : firnbook::EnumValuesSlideKind())
    expect_label(value, firnbook::EnumNameSlideKind(value));
  for (const auto value : firnbook::EnumValuesTrigger())
    expect_label(value, firnbook::EnumNameTrigger(value));
  for (const auto value : firnbook::EnumValuesConfidence()) {
    expect_label(value, firnbook::EnumNameConfidence(value));
  }
  for (const auto value : firnbook::EnumValuesTestKind())
    expect_label(value, firnbook::EnumNameTestKind(value));
  for (const auto value : firnbook::EnumValuesLayerNameKind()) {
    expect_label(value, firnbook::EnumNameLayerNameKind(value));
  }
  for (const auto value : firnbook::EnumValuesStepKind()) {
    expect_words(note::step_in(language, value), firnbook::EnumNameStepKind(value));
  }
  // Rutschblock is rutschblock in every language; deep tap test in French.
  EXPECT_LT(same, 4u) << "of " << all;
}

TEST_P(EveryKey, ChecksAreToldInTheLanguage) {
  const Language language = GetParam();
  std::size_t count = 0;
  const checking::Rule* rules = checking::all_rules(count);
  for (std::size_t i = 0; i < count; ++i) {
    const firnbook::Check check(firnbook::Place(), 4, 5, 6, rules[i].code, rules[i].severity);
    std::string message, remedy, english;
    note::append_check_message(message, check, language);
    note::append_check_remedy(remedy, check, language);
    checking::append_message(english, check);
    expect_words(message, firnbook::EnumNameCheckCode(rules[i].code));
    expect_words(remedy, firnbook::EnumNameCheckCode(rules[i].code));
    EXPECT_EQ(message == english, language == Language::english) << message;
    EXPECT_EQ(message.find('{'), std::string::npos) << message;
    EXPECT_EQ(remedy.find('{'), std::string::npos) << remedy;
  }
}

TEST_P(EveryKey, OfANewerVersionIsSaidToBeOne) {
  const firnbook::Check check(firnbook::Place(), 0, 0, 0, static_cast<firnbook::CheckCode>(9999),
                              firnbook::Severity::hint);
  std::string message, remedy;
  note::append_check_message(message, check, GetParam());
  note::append_check_remedy(remedy, check, GetParam());
  EXPECT_NE(message.find("9999"), std::string::npos) << message;
  EXPECT_FALSE(remedy.empty());
  for (const int number : {0, 2047, 2048, 9999, 65535}) {
    EXPECT_EQ(note::finding_words(static_cast<firnbook::FindingKey>(number), GetParam()), "") << number;
    EXPECT_EQ(note::caution_words(static_cast<firnbook::CautionKey>(number), GetParam()), "") << number;
    EXPECT_EQ(note::suggestion_words(static_cast<firnbook::NextStep>(number), GetParam()), "") << number;
    EXPECT_EQ(note::suggestion_name(static_cast<firnbook::NextStep>(number), GetParam()), "") << number;
  }
}

TEST(NoteTemplates, FillInUnits) {
  std::string out;
  note::append_template(out, "{a:mm} {b:cm} {c:hardness} {depth:degC} {a} {b:steps} {c:form}",
                        {-1234, 605, 68000, 14});
  EXPECT_EQ(out, "6.05 68 4F+ -12.3 605 11333.33 PPsd");
}

TEST(NoteTemplates, NumbersPrintWithTheMarkOfTheLanguage) {
  const auto print = [](Language language) {
    std::string out;
    note::append_template(out, "{a:cm} {b:degC} {a:mm} {a} {b:steps} {x}", {0, 68500, -430, 14, "5.5", ""},
                          language);
    return out;
  };
  EXPECT_EQ(print(Language::english), "68.5 -4.3 685 68500 -71.67 5.5");
  EXPECT_EQ(print(Language::german), "68,5 -4,3 685 68500 -71,67 5.5") << "what is no number stays as it is";
  EXPECT_EQ(print(Language::french), print(Language::german));
}

TEST(NoteTemplates, MethodsHaveUnitsOfTheirOwn) {
  const auto print = [](std::string_view words, const note::Numbers& numbers, Language language) {
    std::string out;
    note::append_template(out, words, numbers, language);
    return out;
  };
  EXPECT_EQ(print("{a:kgm3} {b:mm_water} {c:index}", {0, 2149, 30051, 1234}, Language::english),
            "215 301 1.23");
  EXPECT_EQ(print("{c:index}", {0, 0, 0, 1234}, Language::french), "1,23");
  EXPECT_EQ(print("{a:bits} of 6{b:unknown}", {0, 0x2B, 0x14}, Language::english), "4 of 6, 2 not known");
  EXPECT_EQ(print("{a:bits}{b:unknown}", {0, -1, 0}, Language::english), "8") << "eight bits are counted";
  EXPECT_EQ(print("{b:unknown}", {0, 0, 1}, Language::german), ", 1 nicht bekannt");
  EXPECT_EQ(print("{a:class} {b:class}", {0, 0, 3}, Language::french), "? 3");
  EXPECT_EQ(print("{a:thickness}", {}, Language::english), "of unknown thickness");
  EXPECT_EQ(print("{a:thickness}", {0, 1500}, Language::german), "1,5 cm dick");
  EXPECT_EQ(print("{a:test} {b:test}", {0, static_cast<int>(firnbook::TestKind::ECT), 250}, Language::german),
            "ECT 250");
}

TEST(NoteTemplates, ChecksPrintTemperaturesAsTheyStandInTheRecord) {
  const firnbook::Check check(firnbook::Place(), 5, 0, 0, firnbook::CheckCode::snow_slightly_above_freezing,
                              firnbook::Severity::warning);
  std::string english, german;
  note::append_check_message(english, check, Language::english);
  note::append_check_message(german, check, Language::german);
  EXPECT_NE(english.find("0.05"), std::string::npos) << english;
  EXPECT_NE(german.find("0,05"), std::string::npos) << german;
}

TEST(NoteTemplates, AnUnclosedOneEndsInsteadOfRunningOn) {
  std::string out;
  note::append_template(out, "a {depth", {});
  EXPECT_EQ(out, "a ");
}

TEST(NoteTemplates, CodesThatNobodyKnowsPrintAsNumbersOrWords) {
  std::string out;
  note::append_template(out, "{a:hardness} {b:form} {c:step} {a:kind} {b:sign}", {0, 251, 300, -1},
                        Language::german);
  EXPECT_EQ(out, "251 ? einer, den diese Version nicht kennt 251 300");
}

}  // namespace
}  // namespace firn::tests
