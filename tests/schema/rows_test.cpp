// The rows that JSON is read and written by are those of the schemas.
#include <gtest/gtest.h>

#include <cstdlib>
#include <fstream>
#include <map>
#include <set>
#include <string>
#include <vector>

#include "reflected.h"

namespace firn::test {
namespace {

const char kPath[] = FIRN_SOURCE_DIR "/core/src/exchange/json/rows.inc";

// What a root is made of, from several schemas, each object and enumeration once.
class Rows {
 public:
  void add_root(const Schema& schema, std::string_view name) {
    root_names_.emplace_back(name);
    add_object(schema, *schema.object(name));
  }

  std::string print(const Schema& vocabulary) {
    for (const auto& [name, object] : objects_) {
      table_numbers_.emplace(name, table_numbers_.size());
      (void)object;
    }
    for (const auto& [name, enumeration] : enums_) {
      enum_numbers_.emplace(name, enum_numbers_.size());
      (void)enumeration;
    }
    for (const auto& [name, object] : objects_) add_table(name, object);
    for (const auto& [name, enumeration] : enums_) add_enum(name, *enumeration, vocabulary);
    std::string roots;
    for (const auto& root : root_names_) roots += std::to_string(table_numbers_.at(root)) + ", ";
    return "// Made from schemas/*.fbs by tests/schema/rows_test.cpp. Do not edit.\n"
           "// clang-format off\n"
           "constexpr char kNames[] =\n" +
           names_ +
           "    ;\n"
           "constexpr FieldRow kFields[] = {\n" +
           fields_ +
           "};\n"
           "constexpr TableRow kTables[] = {\n" +
           tables_ +
           "};\n"
           "constexpr ValueRow kValues[] = {\n" +
           values_ +
           "};\n"
           "constexpr EnumRow kEnums[] = {\n" +
           enumerations_ +
           "};\n"
           "constexpr std::uint8_t kRoots[] = {" +
           roots +
           "};\n"
           "constexpr std::uint8_t kThing = " +
           std::to_string(enum_numbers_.at("Thing")) +
           ";\n"
           "// clang-format on\n";
  }

 private:
  struct Object {
    const Schema* schema;
    const reflection::Object* object;
  };

  void add_object(const Schema& schema, const reflection::Object& object) {
    const std::string name(short_name(object.name()));
    if (!objects_.emplace(name, Object{&schema, &object}).second) return;
    for (const auto* field : *object.fields()) {
      const auto& type = *field->type();
      if (field->deprecated() || type.index() < 0) continue;
      const auto index = static_cast<flatbuffers::uoffset_t>(type.index());
      const bool is_object = type.base_type() == reflection::Obj || type.element() == reflection::Obj;
      if (is_object) {
        add_object(schema, *schema.root().objects()->Get(index));
      } else {
        const auto* enumeration = schema.root().enums()->Get(index);
        enums_.emplace(short_name(enumeration->name()), enumeration);
      }
    }
  }

  std::size_t name(std::string_view text) {
    const auto found = name_at_.find(std::string(text));
    if (found != name_at_.end()) return found->second;
    const std::size_t at = names_size_;
    name_at_.emplace(text, at);
    names_ += "    \"" + std::string(text) + "\\0\"\n";
    names_size_ += text.size() + 1;
    return at;
  }

  static std::string type_name(reflection::BaseType type, bool is_struct) {
    switch (type) {
      case reflection::Bool:
        return "boolean";
      case reflection::Byte:
        return "i8";
      case reflection::UByte:
        return "u8";
      case reflection::Short:
        return "i16";
      case reflection::UShort:
        return "u16";
      case reflection::Int:
        return "i32";
      case reflection::UInt:
        return "u32";
      case reflection::Long:
        return "i64";
      case reflection::ULong:
        return "u64";
      case reflection::Float:
        return "f32";
      case reflection::String:
        return "text";
      case reflection::Obj:
        return is_struct ? "structure" : "table";
      default:
        ADD_FAILURE() << "a type without a row: " << reflection::EnumNameBaseType(type);
        return "gone";
    }
  }

  std::string field_row(const Object& holder, const reflection::Field& field) {
    const auto& type = *field.type();
    const bool is_list = type.base_type() == reflection::Vector;
    const auto element = is_list ? type.element() : type.base_type();
    std::string refers = "kNone";
    bool is_struct = false;
    if (type.index() >= 0) {
      const auto index = static_cast<flatbuffers::uoffset_t>(type.index());
      if (element == reflection::Obj) {
        const auto* object = holder.schema->root().objects()->Get(index);
        is_struct = object->is_struct();
        refers = std::to_string(table_numbers_.at(std::string(short_name(object->name()))));
      } else {
        refers = std::to_string(
            enum_numbers_.at(std::string(short_name(holder.schema->root().enums()->Get(index)->name()))));
      }
    }
    EXPECT_TRUE(field.optional() || field.default_integer() == 0) << text(field.name());
    return "    {" + std::to_string(name(text(field.name()))) + ", " + std::to_string(field.offset()) +
           ", Type::" + type_name(element, is_struct) + ", " + refers + ", " + (is_list ? "true" : "false") +
           ", " + (field.optional() ? "true" : "false") + "},  // " + std::string(text(field.name())) + "\n";
  }

  void add_table(const std::string& table, const Object& object) {
    std::map<int, const reflection::Field*> by_id;
    for (const auto* field : *object.object->fields()) by_id.emplace(field->id(), field);
    tables_ += "    {" + std::to_string(name(table)) + ", " + std::to_string(field_count_) + ", " +
               std::to_string(by_id.size()) + ", " +
               std::to_string(object.object->is_struct() ? object.object->bytesize() : 0) + ", " +
               std::to_string(object.object->is_struct() ? object.object->minalign() : 0) + "},  // " +
               table + "\n";
    fields_ += "    // " + table + "\n";
    for (const auto& [id, field] : by_id) {
      fields_ +=
          field->deprecated() ? "    {0, 0, Type::gone, kNone, false, false},\n" : field_row(object, *field);
      ++field_count_;
      (void)id;
    }
  }

  void add_enum(const std::string& title, const reflection::Enum& enumeration, const Schema& vocabulary) {
    const bool has_codes = vocabulary.enumeration(title) != nullptr;
    const std::size_t count = has_codes ? 0 : enumeration.values()->size();
    enumerations_ += "    {" + std::to_string(name(title)) + ", " + std::to_string(value_count_) + ", " +
                     std::to_string(count) + ", " +
                     (has_codes ? "code_table<firnbook::" + title + ">" : std::string("nullptr")) + "},\n";
    if (has_codes) return;
    for (const auto* value : *enumeration.values()) {
      values_ += "    {" + std::to_string(name(text(value->name()))) + ", " + std::to_string(value->value()) +
                 "},\n";
    }
    value_count_ += count;
  }

  std::vector<std::string> root_names_;
  std::map<std::string, Object> objects_;
  std::map<std::string, const reflection::Enum*> enums_;
  std::map<std::string, std::size_t> table_numbers_, enum_numbers_, name_at_;
  std::string names_, fields_, tables_, values_, enumerations_;
  std::size_t names_size_ = 0, field_count_ = 0, value_count_ = 0;
};

TEST(SchemaRows, AreThoseOfTheSchemas) {
  const Schema vocabulary("vocabulary"), pit("pit"), report("report"), bulletin("bulletin");
  Rows rows;
  rows.add_root(pit, "Pit");
  rows.add_root(report, "Report");
  rows.add_root(bulletin, "Bulletins");
  const std::string made = rows.print(vocabulary);
  if (std::getenv("FIRN_REGENERATE") != nullptr) std::ofstream(kPath, std::ios::binary) << made;
  EXPECT_EQ(read_file(kPath), made) << "make it anew: FIRN_REGENERATE=1 schema_rows_test";
}

}  // namespace
}  // namespace firn::test
