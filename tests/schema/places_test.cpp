// Every element, attribute, enumeration value and pattern of the CAAML 6.0.4 snow-profile schema has its
// place in pit.fbs. The table caaml-6.0.4-places.tsv says which; its head explains the columns.

#include <gtest/gtest.h>

#include <cstdlib>
#include <filesystem>
#include <map>
#include <pugixml.hpp>
#include <set>
#include <sstream>
#include <vector>

#include "reflected.h"

namespace firn::test {
namespace {

struct Place {
  std::vector<std::string> where;
  std::string note;
};
using Table = std::map<std::string, Place>;

Table read_table() {
  std::istringstream file(read_file(FIRN_SOURCE_DIR "/tests/schema/caaml-6.0.4-places.tsv"));
  Table table;
  for (std::string line; std::getline(file, line);) {
    if (line.empty() || line[0] == '#') continue;
    std::istringstream columns(line);
    std::string key, places;
    Place place;
    std::getline(columns, key, '\t');
    std::getline(columns, places, '\t');
    std::getline(columns, place.note);
    std::istringstream words(places);
    for (std::string word; words >> word;) place.where.push_back(word);
    EXPECT_FALSE(place.where.empty()) << key << " has no place";
    EXPECT_TRUE(table.emplace(key, place).second) << key << " stands twice";
  }
  return table;
}

std::string standards() {
  const char* given = std::getenv("FIRNBOOK_STANDARDS");
  return given != nullptr ? given : FIRN_SOURCE_DIR "/../shared/standards";
}

// The schema as a list of keys, each with its node.
class Walk {
 public:
  using Keys = std::map<std::string, pugi::xml_node>;

  void file(const std::string& path, const std::string& prefix) {
    documents_.emplace_back();
    const auto read = documents_.back().load_file(path.c_str());
    ASSERT_TRUE(read) << path << ": " << read.description();
    inside(documents_.back().document_element(), "", prefix);
  }
  const Keys& keys() const { return keys_; }

  // Names of the types reached from the element SnowProfile, with their prefix.
  std::set<std::string> reached() const {
    std::set<std::string> seen;
    std::vector<std::string> open = {"SnowProfile"};
    while (!open.empty()) {
      const std::string name = open.back();
      open.pop_back();
      if (!seen.insert(name).second) continue;
      const auto found = named_.find(name);
      if (found != named_.end()) follow(found->second, open);
    }
    return seen;
  }

 private:
  static std::string name_of(const pugi::xml_node& node) {
    const char* name = node.attribute("name").value();
    return *name != '\0' ? name : node.attribute("ref").value();
  }

  void inside(const pugi::xml_node& node, const std::string& path, const std::string& prefix) {
    for (const pugi::xml_node child : node.children()) visit(child, path, prefix);
  }

  void visit(const pugi::xml_node& child, const std::string& path, const std::string& prefix) {
    const std::string kind = child.name();
    const std::string name = name_of(child);
    const bool top = path.empty();
    if (top && !name.empty()) named_.emplace(prefix + name, child);
    if (kind == "element") {
      const std::string key = (top ? prefix : path + "/") + name;
      add(key, child);
      inside(child, key, prefix);
    } else if (kind == "attribute") {
      add((top ? prefix : path) + "@" + name, child);
    } else if (kind == "enumeration" || kind == "pattern") {
      add(path + (kind == "pattern" ? "~" : "=") + child.attribute("value").value(), child);
    } else if (kind != "annotation") {
      inside(child, top ? prefix + name : path, prefix);
    }
  }

  void add(const std::string& key, const pugi::xml_node& node) {
    EXPECT_TRUE(keys_.emplace(key, node).second) << "the walk names two things " << key;
  }

  static void follow(const pugi::xml_node& node, std::vector<std::string>& open) {
    for (const char* attribute : {"type", "ref", "base", "memberTypes", "itemType"}) {
      std::istringstream names(node.attribute(attribute).value());
      for (std::string name; names >> name;) {
        if (name.rfind("caaml:", 0) == 0) name.erase(0, 6);
        open.push_back(name);
      }
    }
    for (const pugi::xml_node child : node.children()) follow(child, open);
  }

  std::vector<pugi::xml_document> documents_;
  Keys keys_;
  std::map<std::string, pugi::xml_node> named_;
};

class SchemaPlaces : public testing::Test {
 protected:
  void SetUp() override {
    const std::string folder = standards() + "/caaml-profile/v6.0.4/";
    if (!std::filesystem::exists(folder)) {
      GTEST_SKIP() << "The CAAML 6.0.4 schema is not at " << folder
                   << ". Set FIRNBOOK_STANDARDS to the folder that holds caaml-profile/.";
    }
    walk_.file(folder + "CAAMLv6_SnowProfileIACS.xsd", "");
    walk_.file(folder + "CAAMLv6_SnowProfileIACS_GML.xsd", "gml:");
  }

  Walk walk_;
  const Table table_ = read_table();
};

std::string type_of_key(const std::string& key) {
  return key.substr(0, key.find_first_of("/@=~"));
}

TEST_F(SchemaPlaces, EverythingInTheStandardIsInTheTable) {
  // Counted with another XML reader when the table was made: a walk that misses some proves nothing.
  EXPECT_EQ(walk_.keys().size(), 507u);
  for (const auto& [key, node] : walk_.keys()) {
    EXPECT_EQ(table_.count(key), 1u) << key << " has no place in pit.fbs";
  }
}

TEST_F(SchemaPlaces, NothingInTheTableIsMissingFromTheStandard) {
  for (const auto& [key, place] : table_) {
    EXPECT_EQ(walk_.keys().count(key), 1u) << key << " is not in the standard";
  }
}

// The words that stand for "nothing to keep" hold only where the standard shows it.
TEST_F(SchemaPlaces, NothingIsExcusedWithoutAReasonInTheStandard) {
  const auto reached = walk_.reached();
  for (const auto& [key, place] : table_) {
    const std::string& where = place.where.front();
    const auto found = walk_.keys().find(key);
    if (found == walk_.keys().end() || where.find('.') != std::string::npos || where == "Pit") continue;
    EXPECT_EQ(place.where.size(), 1u) << key;
    EXPECT_FALSE(place.note.empty()) << key << " gives no reason";
    const std::string type = type_of_key(key);
    if (where == "fixed") {
      EXPECT_TRUE(found->second.attribute("fixed")) << key;
    } else if (where == "unused") {
      EXPECT_EQ(reached.count(type), 0u) << key << " is used";
    } else if (where == "unit") {
      EXPECT_TRUE(type.rfind("Uom", 0) == 0 || key.find("@uom") != std::string::npos) << key;
    } else if (where == "syntax") {
      EXPECT_TRUE(type == "gml:CoordinatesType" || type == "gml:SRSNameRestriction") << key;
    } else {
      ADD_FAILURE() << key << ": nobody knows the word " << where;
    }
  }
}

TEST(SchemaPlacesTable, EveryPlaceExistsInPitFbs) {
  const Schema schema("pit");
  for (const auto& [key, place] : read_table()) {
    for (const std::string& where : place.where) {
      if (where.find('.') == std::string::npos) continue;
      if (where.rfind("Pit.", 0) == 0) {
        EXPECT_NE(schema.field(where), nullptr) << key << ": there is no field " << where;
        continue;
      }
      const std::string name = where.rfind("means:", 0) == 0 ? where.substr(6) : where;
      const auto dot = name.find('.');
      const auto* enumeration = schema.enumeration(name.substr(0, dot));
      ASSERT_NE(enumeration, nullptr) << key << ": there is no enumeration " << name;
      EXPECT_NE(value(*enumeration, name.substr(dot + 1)), nullptr) << key << ": there is no " << name;
    }
  }
}

std::string codes_joined(const Schema& schema, const Place& place) {
  std::string codes;
  for (const std::string& where : place.where) {
    const auto dot = where.find('.');
    const auto* enumeration = schema.enumeration(where.substr(0, dot));
    const auto* one = enumeration == nullptr ? nullptr : value(*enumeration, where.substr(dot + 1));
    if (one != nullptr) codes += code(*one);
  }
  return codes;
}

TEST(SchemaPlacesTable, EnumerationValuesCarryTheVeryCode) {
  const Schema schema("pit");
  std::size_t compared = 0;
  for (const auto& [key, place] : read_table()) {
    const auto mark = key.find_first_of("=~");
    const std::string codes = codes_joined(schema, place);
    if (mark == std::string::npos || codes.empty()) continue;
    const std::string text = key.substr(mark + 1);
    EXPECT_EQ(codes, key[mark] == '=' ? text : text.substr(0, codes.size())) << key;
    ++compared;
  }
  EXPECT_GT(compared, 170u);
}

// An enumeration value of an observation is kept by a code or by its meaning, never by a bare field.
TEST(SchemaPlacesTable, EveryEnumerationValueNamesAValue) {
  const Schema schema("pit");
  for (const auto& [key, place] : read_table()) {
    if (key.find('=') == std::string::npos || place.where.front().find('.') == std::string::npos) continue;
    const bool by_meaning = place.where.front().rfind("means:", 0) == 0;
    EXPECT_TRUE(by_meaning || !codes_joined(schema, place).empty()) << key;
  }
}

}  // namespace
}  // namespace firn::test
