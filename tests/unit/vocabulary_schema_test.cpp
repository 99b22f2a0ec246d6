// The schema names a code for every value; the tables must say the same, with nothing missing either way.
#include <gtest/gtest.h>

#include <fstream>
#include <map>
#include <string>

#include "vocabulary_tables.h"

namespace firn {
namespace {

struct SchemaValue {
  int number;
  std::string code;
};
using SchemaEnum = std::map<std::string, SchemaValue>;  // by the value's name

// The first text in quotation marks, or "".
std::string first_quoted(const std::string& text) {
  const std::size_t open = text.find('"');
  if (open == std::string::npos) return {};
  return text.substr(open + 1, text.find('"', open + 1) - open - 1);
}

// not_looked_for is read and printed as "not looked for"; public_ avoids a reserved word.
std::string plain_words(std::string name) {
  while (!name.empty() && name.back() == '_') name.pop_back();
  for (char& character : name) {
    if (character == '_') character = ' ';
  }
  return name;
}

std::map<std::string, SchemaEnum> read_schema() {
  std::ifstream file(FIRN_SOURCE_DIR "/schemas/vocabulary.fbs");
  EXPECT_TRUE(file.good());
  std::map<std::string, SchemaEnum> enums;
  std::string line, current, documented;
  while (std::getline(file, line)) {
    const std::size_t start = line.find_first_not_of(' ');
    if (start == std::string::npos) continue;
    const std::string text = line.substr(start);
    if (text.rfind("enum ", 0) == 0) {
      current = text.substr(5, text.find(' ', 5) - 5);
      enums[current];
      documented.clear();
    } else if (text.rfind("///", 0) == 0) {
      if (documented.empty()) documented = first_quoted(text);
    } else if (text[0] == '}') {
      current.clear();
    } else if (!current.empty()) {
      const std::string name = text.substr(0, text.find(' '));
      const int number = std::stoi(text.substr(text.find('=') + 1));
      enums[current][name] = {number, documented.empty() ? plain_words(name) : documented};
      documented.clear();
    }
  }
  return enums;
}

TEST(VocabularySchema, EveryEnumerationHasATableAndEveryTableAnEnumeration) {
  const auto enums = read_schema();
  ASSERT_GE(enums.size(), 45u);
  std::map<std::string, int> seen;
  for (const auto& named : testing::all_tables()) ++seen[std::string(named.name)];
  for (const auto& [name, values] : enums) EXPECT_EQ(seen.count(name), 1u) << name;
  for (const auto& [name, count] : seen) {
    EXPECT_EQ(enums.count(name), 1u) << name;
    EXPECT_EQ(count, 1) << name;
  }
}

TEST(VocabularySchema, EveryValueHasItsQuotedCode) {
  const auto enums = read_schema();
  for (const auto& named : testing::all_tables()) {
    const SchemaEnum& values = enums.at(std::string(named.name));
    for (const auto& [name, value] : values) {
      EXPECT_EQ(find_code(named.table, static_cast<std::uint8_t>(value.number)), value.code)
          << named.name << "." << name;
    }
  }
}

TEST(VocabularySchema, EveryRowOfATableIsAValueOfTheSchema) {
  const auto enums = read_schema();
  for (const auto& named : testing::all_tables()) {
    const SchemaEnum& values = enums.at(std::string(named.name));
    EXPECT_EQ(named.table.count, values.size()) << named.name;
    for (const Code& row : named.table) {
      bool found = false;
      for (const auto& [name, value] : values) found = found || value.number == row.value;
      EXPECT_TRUE(found) << named.name << " " << row.code;
    }
  }
}

TEST(VocabularySchema, CountsOfTheStandard) {
  std::size_t main = 0, sub = 0;
  for (const Code& row : code_table<firnbook::GrainForm>()) ++(row.code.size() == 2 ? main : sub);
  EXPECT_EQ(main, 9u);
  EXPECT_EQ(sub, 37u);
  EXPECT_EQ(code_table<firnbook::HandHardness>().count, 21u);
  EXPECT_EQ(code_table<firnbook::Wetness>().count, 9u);
}

}  // namespace
}  // namespace firn
