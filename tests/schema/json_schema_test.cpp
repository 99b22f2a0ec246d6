// The JSON schemas say what the .fbs files say: made from them, word for word, and compared with what is
// committed.
#include <gtest/gtest.h>

#include <cstdlib>
#include <fstream>
#include <map>
#include <set>
#include <string>

#include "exchange/json/rows.h"
#include "reflected.h"
#include "support/text.h"

namespace firn::test {
namespace {

using exchange::FieldRow;
using exchange::Root;
using exchange::TableRow;
using exchange::Type;

// JSON as it is written here: members in the order given, one a line.
std::string in_quotes(std::string_view words) {
  std::string out = "\"";
  for (const char sign : words) {
    if (sign == '"' || sign == '\\') out += '\\';
    out += sign;
  }
  return out + "\"";
}

const char kMomentPattern[] =
    "^[0-9]{4}(-[0-9]{2}(-[0-9]{2}(T[0-9]{2}:[0-9]{2}(:[0-9]{2})?(Z|[+-][0-9]{2}:[0-9]{2})?)?)?)?$";

class JsonSchema {
 public:
  JsonSchema(const Schema& schema, Root root) : schema_(schema), root_(root) {}

  std::string print() {
    const std::string name(name_of(root_));
    add(root_table(root_));
    std::string out = "{\n  \"$schema\": \"https://json-schema.org/draft/2020-12/schema\",\n";
    out += "  \"$id\": \"urn:firnbook:json:1:" + name + "\",\n";
    out += "  \"title\": " + in_quotes("A document that holds one record: " + name) + ",\n";
    out += "  \"type\": \"object\",\n  \"required\": [" + in_quotes(name) + "],\n";
    out += "  \"properties\": {" + in_quotes(name) + ": {\"$ref\": \"#/$defs/" +
           std::string(exchange::name_of(root_table(root_))) + "\"}},\n  \"$defs\": {\n";
    std::string separator;
    for (const auto& [title, text] : definitions_) {
      out += separator + "    " + in_quotes(title) + ": " + text;
      separator = ",\n";
    }
    return out + "\n  }\n}\n";
  }

 private:
  std::string description(const flatbuffers::Vector<flatbuffers::Offset<flatbuffers::String>>* comments) {
    std::string words;
    for (flatbuffers::uoffset_t i = 0; comments != nullptr && i < comments->size(); ++i) {
      words += text(comments->Get(i));
    }
    const auto from = words.find_first_not_of(' ');
    return from == std::string::npos ? std::string()
                                     : "\"description\": " + in_quotes(words.substr(from)) + ", ";
  }

  void add(const TableRow& row) {
    const std::string name(exchange::name_of(row));
    if (!done_.insert(name).second) return;
    definitions_[name] = definition(row, name);
  }

  std::string definition(const TableRow& row, const std::string& name) {
    if (name == "Place") return place();
    std::string out = "{" + description(schema_.object(name)->documentation()) + "\"type\": \"object\",";
    std::string required;
    std::string members;
    const FieldRow* fields = fields_of(row);
    for (const FieldRow* field = fields; field != fields + row.count; ++field) {
      if (field->type == Type::gone) continue;
      const std::string title(exchange::name_of(*field));
      members += (members.empty() ? "\n" : ",\n");
      const auto* stored = schema_.field(name + "." + title);
      members += "      " + in_quotes(title) + ": {" + description(stored->documentation()) +
                 type(row, *field) + "}";
      const bool is_needed = row.size != 0 && field->refers == exchange::kNone;
      if (is_needed) required += (required.empty() ? "" : ", ") + in_quotes(title);
    }
    if (!required.empty()) out += " \"required\": [" + required + "],";
    out += " \"properties\": {" + members + "\n    }}";
    if (name != "Moment") return out;
    return "{\"description\": \"As ISO 8601 says it, as far as it is known; in parts where that would lose "
           "something; "
           "null where none was given.\", \"anyOf\": [\n      {\"type\": \"string\", \"pattern\": " +
           in_quotes(kMomentPattern) + "},\n      {\"type\": \"null\"},\n      " + out + "\n    ]}";
  }

  std::string place() {
    return "{" + description(schema_.object("Place")->documentation()) +
           "\"type\": \"object\", \"properties\": {\n      \"thing\": {" + spellings("Thing") +
           "},\n      \"index\": {\"type\": \"integer\"},\n      \"sub\": {\"type\": \"integer\"},\n"
           "      \"field\": {\"description\": \"name of a field of that thing, or its number\", "
           "\"type\": [\"string\", \"integer\"]}\n    }}";
  }

  std::string type(const TableRow& holder, const FieldRow& field) {
    if (field.type == Type::u64 && exchange::name_of(field) == "unreliable") return mask(holder);
    if (field.is_list && field.type == Type::u8 && field.refers == exchange::kNone) {
      return "\"type\": \"string\", \"contentEncoding\": \"base64\"";
    }
    const std::string one = element(field);
    return field.is_list ? "\"type\": \"array\", \"items\": {" + one + "}" : one;
  }

  std::string mask(const TableRow& holder) {
    std::string names;
    for (std::size_t i = 0; i < holder.count; ++i) {
      const FieldRow& field = fields_of(holder)[i];
      if (field.type != Type::gone)
        names += (names.empty() ? "" : ", ") + in_quotes(exchange::name_of(field));
    }
    return "\"type\": \"array\", \"items\": {\"anyOf\": [{\"enum\": [" + names +
           "]}, {\"type\": \"integer\", \"minimum\": 0, \"maximum\": 63}]}";
  }

  std::string element(const FieldRow& field) {
    switch (field.type) {
      case Type::boolean:
        return "\"type\": \"boolean\"";
      case Type::text:
        return "\"type\": \"string\"";
      case Type::f32:
        return "\"type\": \"number\"";
      case Type::table:
      case Type::structure:
        add(exchange::table_row(field.refers));
        return "\"$ref\": \"#/$defs/" + std::string(exchange::name_of(exchange::table_row(field.refers))) +
               "\"";
      default:
        if (field.refers != exchange::kNone) {
          return spellings(std::string(exchange::name_at(exchange::enum_row(field.refers).name)));
        }
        return number(field);
    }
  }
  static std::string number(const FieldRow& field) {
    const std::size_t bits = 8 * size_of(field.type);
    const bool is_signed = field.type == Type::i8 || field.type == Type::i16 || field.type == Type::i32 ||
                           field.type == Type::i64;
    std::string out = "\"type\": \"integer\", \"minimum\": ";
    if (bits == 64) return out + (is_signed ? "-9223372036854775808" : "0");
    const std::int64_t most = (std::int64_t{1} << (is_signed ? bits - 1 : bits)) - 1;
    append_integer(out, is_signed ? -most - 1 : 0);
    out += ", \"maximum\": ";
    append_integer(out, most);
    return out;
  }

  // A newer version may write a number whose spelling is not known here.
  std::string spellings(const std::string& name) {
    const reflection::Enum& enumeration = *schema_.enumeration(name);
    std::string values;
    for (const auto* value : *enumeration.values()) {
      const std::string spelling = spelled(name, *value);
      if (!spelling.empty()) values += (values.empty() ? "" : ", ") + in_quotes(spelling);
    }
    return "\"anyOf\": [{\"enum\": [" + values + "]}, {\"type\": \"integer\", \"minimum\": 0}]";
  }
  static std::string spelled(const std::string& name, const reflection::EnumVal& value) {
    for (std::uint8_t i = 0; i < exchange::kNone; ++i) {
      if (exchange::name_at(exchange::enum_row(i).name) != name) continue;
      return std::string(spelling_of(exchange::enum_row(i), static_cast<std::uint64_t>(value.value())));
    }
    ADD_FAILURE() << "no row for " << name;
    return {};
  }

  const Schema& schema_;
  Root root_;
  std::set<std::string> done_;
  std::map<std::string, std::string> definitions_;
};

TEST(JsonSchemas, AreMadeFromTheSchemas) {
  const std::pair<const char*, Root> all[] = {
      {"pit", Root::pit}, {"report", Root::report}, {"bulletin", Root::bulletins}};
  for (const auto& [name, root] : all) {
    const Schema schema(name);
    const std::string made = JsonSchema(schema, root).print();
    const std::string path = std::string(FIRN_SOURCE_DIR) + "/schemas/json/" + name + ".schema.json";
    if (std::getenv("FIRN_REGENERATE") != nullptr) std::ofstream(path, std::ios::binary) << made;
    EXPECT_EQ(read_file(path), made) << "make it anew: FIRN_REGENERATE=1 schema_json_test";
  }
}

}  // namespace
}  // namespace firn::test
