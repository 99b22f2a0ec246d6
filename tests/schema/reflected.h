// A compiled schema, looked up by name.
#pragma once

#include <flatbuffers/reflection_generated.h>

#include <string>
#include <string_view>

namespace firn::test {

std::string read_file(const std::string& path);

class Schema {
 public:
  // `name` is the schema's file name without its ending.
  explicit Schema(const std::string& name);

  const reflection::Schema& root() const { return *reflection::GetSchema(bytes_.data()); }
  // Names without the namespace. Null when there is none.
  const reflection::Object* object(std::string_view name) const;
  const reflection::Enum* enumeration(std::string_view name) const;
  // Follows "Pit.layers.top" through tables, structs and vectors of them. Null when a step is missing.
  const reflection::Field* field(std::string_view path) const;

 private:
  std::string bytes_;
};

const reflection::EnumVal* value(const reflection::Enum& enumeration, std::string_view name);
std::string_view short_name(const flatbuffers::String* qualified);
std::string_view text(const flatbuffers::String* string);

// The code of a value: the first text in double quotes in its comment, else its name.
std::string code(const reflection::EnumVal& value);

}  // namespace firn::test
