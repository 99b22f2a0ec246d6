// The rules of growth: what is numbered stays numbered, in every schema.
//
// numbers.txt is the committed record. When a field or value was added on purpose, run this program with
// FIRN_REGENERATE=1: it appends, and refuses when something that was there is gone or different.

#include <gtest/gtest.h>

#include <algorithm>
#include <cctype>
#include <cstdlib>
#include <fstream>
#include <map>
#include <set>
#include <sstream>
#include <vector>

#include "reflected.h"

namespace firn::test {
namespace {

constexpr const char* kSchemas[] = {"vocabulary", "pit", "bulletin", "edit", "report", "comparison"};
const std::string kNumbers = FIRN_SOURCE_DIR "/tests/schema/numbers.txt";

bool is_null_by_default(const reflection::Field& field) {
  return field.optional();
}

std::string type_name(const reflection::Type& type, const reflection::Schema& schema) {
  std::string name = reflection::EnumNameBaseType(type.base_type());
  if (type.base_type() == reflection::Vector)
    name += std::string(" ") + reflection::EnumNameBaseType(type.element());
  if (type.index() < 0) return name;
  const auto index = static_cast<flatbuffers::uoffset_t>(type.index());
  const bool is_object = type.base_type() == reflection::Obj || type.element() == reflection::Obj;
  const auto* qualified =
      is_object ? schema.objects()->Get(index)->name() : schema.enums()->Get(index)->name();
  return name + " " + std::string(short_name(qualified));
}

void list_object(const reflection::Object& object, const reflection::Schema& schema,
                 std::set<std::string>& out) {
  const std::string kind = object.is_struct() ? "struct " : "table ";
  for (const auto* field : *object.fields()) {
    std::ostringstream line;
    line << kind << short_name(object.name()) << '.' << text(field->name()) << " = ";
    line << (object.is_struct() ? field->offset() : field->id()) << ' ' << type_name(*field->type(), schema);
    if (is_null_by_default(*field)) line << " optional";
    if (field->default_integer() != 0) line << " default " << field->default_integer();
    if (field->deprecated()) line << " deprecated";
    out.insert(line.str());
  }
  if (object.is_struct()) {
    std::ostringstream line;
    line << kind << short_name(object.name()) << " size " << object.bytesize() << " align "
         << object.minalign();
    out.insert(line.str());
  }
}

// Of the schemas in a folder of the compiled ones: "" for today's, "history/1/" for a frozen version.
std::set<std::string> numbers_of(const std::string& folder) {
  std::set<std::string> out;
  for (const char* name : kSchemas) {
    const Schema schema(folder + name);
    for (const auto* object : *schema.root().objects()) list_object(*object, schema.root(), out);
    for (const auto* enumeration : *schema.root().enums()) {
      for (const auto* one : *enumeration->values()) {
        std::ostringstream line;
        line << "enum " << short_name(enumeration->name()) << '.' << text(one->name()) << " = "
             << one->value();
        line << ' ' << type_name(*enumeration->underlying_type(), schema.root());
        out.insert(line.str());
      }
    }
    if (schema.root().root_table() == nullptr) continue;
    out.insert("root " + std::string(name) + " " +
               std::string(short_name(schema.root().root_table()->name())) + " " +
               std::string(text(schema.root().file_ident())));
  }
  return out;
}

std::set<std::string> numbers_committed() {
  std::istringstream file(read_file(kNumbers));
  std::set<std::string> out;
  for (std::string line; std::getline(file, line);) {
    if (!line.empty() && line[0] != '#') out.insert(line);
  }
  return out;
}

std::string listed(const std::set<std::string>& from, const std::set<std::string>& minus) {
  std::string out;
  for (const auto& line : from) {
    if (minus.count(line) == 0) out += "\n  " + line;
  }
  return out;
}

void write_numbers(const std::set<std::string>& lines) {
  std::ofstream file(kNumbers, std::ios::binary);
  file << "# Every number of the schemas, once given never given again. Made by schema_growth_test with\n"
          "# FIRN_REGENERATE=1, which only adds. \"optional\" fields are null when absent.\n";
  for (const auto& line : lines) file << line << '\n';
}

TEST(SchemaGrowth, NothingIsRenumberedOrGone) {
  const auto today = numbers_of("");
  const auto committed = numbers_committed();
  EXPECT_EQ(listed(committed, today), "") << "these were given and are gone or different";
  if (std::getenv("FIRN_REGENERATE") != nullptr && !HasFailure()) write_numbers(today);
  EXPECT_EQ(listed(numbers_of(""), numbers_committed()), "")
      << "these are new: run schema_growth_test with FIRN_REGENERATE=1 to record them";
}

// What flatc's own comparison does not see: tables and values that are gone, structs that grew, another root.
TEST(SchemaGrowth, EveryFrozenVersionIsStillHeld) {
  std::istringstream releases(FIRN_RELEASES);
  std::size_t count = 0;
  const auto today = numbers_of("");
  for (std::string release; releases >> release; ++count) {
    const auto frozen = numbers_of("history/" + release + "/");
    EXPECT_GT(frozen.size(), 1000u);
    EXPECT_EQ(listed(frozen, today), "")
        << "these are in version " << release << " and are gone or different";
  }
  EXPECT_GE(count, 1u);
}

TEST(SchemaGrowth, EveryTableFieldHasAnExplicitContiguousId) {
  for (const char* name : kSchemas) {
    const Schema schema(name);
    for (const auto* object : *schema.root().objects()) {
      if (object->is_struct()) continue;
      std::set<unsigned> ids;
      for (const auto* field : *object->fields()) {
        const auto* attributes = field->attributes();
        EXPECT_TRUE(attributes != nullptr && attributes->LookupByKey("id") != nullptr)
            << name << ": " << text(object->name()) << '.' << text(field->name()) << " has no id of its own";
        ids.insert(field->id());
      }
      EXPECT_TRUE(ids.empty() || *ids.rbegin() + 1 == ids.size()) << text(object->name()) << " skips an id";
      EXPECT_EQ(ids.size(), object->fields()->size()) << text(object->name()) << " gives an id twice";
    }
  }
}

// `required` can never be taken back, and an unknown member of a vector of unions breaks repacking.
TEST(SchemaGrowth, NothingIsRequiredAndNoVectorHoldsUnions) {
  for (const char* name : kSchemas) {
    const Schema schema(name);
    for (const auto* object : *schema.root().objects()) {
      for (const auto* field : *object->fields()) {
        const auto* type = field->type();
        EXPECT_FALSE(field->required()) << text(object->name()) << '.' << text(field->name());
        const bool is_vector = type->base_type() == reflection::Vector;
        EXPECT_FALSE(is_vector &&
                     (type->element() == reflection::Union || type->element() == reflection::UType))
            << text(object->name()) << '.' << text(field->name());
      }
    }
  }
}

// A scalar that nobody observed must not look like a zero. The exceptions are no observations: they are
// written always (versions, clocks, identities) and zero has its own meaning there (no bit set).
TEST(SchemaGrowth, ObservedScalarsOfThePitAreOptional) {
  const std::set<std::string> always_written = {"unreliable", "schema_minor"};
  const Schema schema("pit");
  for (const auto* object : *schema.root().objects()) {
    if (object->is_struct()) continue;
    for (const auto* field : *object->fields()) {
      const auto base = field->type()->base_type();
      if (base >= reflection::String || always_written.count(std::string(text(field->name()))) != 0) continue;
      EXPECT_TRUE(is_null_by_default(*field)) << text(object->name()) << '.' << text(field->name());
    }
  }
}

TEST(SchemaGrowth, UnreliableMasksReachEveryField) {
  const Schema schema("pit");
  for (const auto* object : *schema.root().objects()) {
    if (object->fields()->LookupByKey("unreliable") != nullptr) {
      EXPECT_LE(object->fields()->size(), 64u)
          << text(object->name()) << " has more fields than a mask has bits";
    }
  }
}

std::string without_comments(const std::string& source) {
  std::istringstream lines(source);
  std::string out;
  for (std::string line; std::getline(lines, line);) out += line.substr(0, line.find("//")) + "\n";
  return out;
}

// The compiled form no longer tells whether a number was written or counted, so this reads the source.
TEST(SchemaGrowth, EveryEnumValueHasAnExplicitNumber) {
  std::size_t enums = 0;
  for (const char* name : kSchemas) {
    const std::string source =
        without_comments(read_file(FIRN_SOURCE_DIR "/schemas/" + std::string(name) + ".fbs"));
    for (auto at = source.find("enum "); at != std::string::npos; at = source.find("enum ", at + 1)) {
      const auto open = source.find('{', at);
      const auto close = source.find('}', at);
      ASSERT_NE(close, std::string::npos);
      std::istringstream values(source.substr(open + 1, close - open - 1));
      for (std::string one; std::getline(values, one, ',');) {
        const bool blank =
            std::all_of(one.begin(), one.end(), [](unsigned char c) { return std::isspace(c) != 0; });
        EXPECT_TRUE(blank || one.find('=') != std::string::npos) << name << ".fbs: " << one;
      }
      ++enums;
    }
  }
  EXPECT_GT(enums, 40u) << "the schemas hold some fifty enumerations: the reading of their source is broken";
}

}  // namespace
}  // namespace firn::test
