#include "reflected.h"

#include <fstream>
#include <iterator>
#include <stdexcept>

namespace firn::test {

std::string read_file(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  if (!file) throw std::runtime_error("cannot read " + path);
  return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

std::string_view text(const flatbuffers::String* string) {
  return string == nullptr ? std::string_view{} : std::string_view{string->c_str(), string->size()};
}

std::string_view short_name(const flatbuffers::String* qualified) {
  const std::string_view all = text(qualified);
  const auto dot = all.rfind('.');
  return dot == std::string_view::npos ? all : all.substr(dot + 1);
}

Schema::Schema(const std::string& name)
    : bytes_(read_file(std::string(FIRN_BFBS_DIR) + "/" + name + ".bfbs")) {
  flatbuffers::Verifier verifier(reinterpret_cast<const std::uint8_t*>(bytes_.data()), bytes_.size());
  if (!reflection::VerifySchemaBuffer(verifier)) throw std::runtime_error(name + ".bfbs is damaged");
}

const reflection::Object* Schema::object(std::string_view name) const {
  for (const auto* candidate : *root().objects()) {
    if (short_name(candidate->name()) == name) return candidate;
  }
  return nullptr;
}

const reflection::Enum* Schema::enumeration(std::string_view name) const {
  for (const auto* candidate : *root().enums()) {
    if (short_name(candidate->name()) == name) return candidate;
  }
  return nullptr;
}

const reflection::Field* Schema::field(std::string_view path) const {
  auto dot = path.find('.');
  const reflection::Object* holder = object(path.substr(0, dot));
  const reflection::Field* found = nullptr;
  while (holder != nullptr && dot != std::string_view::npos) {
    path.remove_prefix(dot + 1);
    dot = path.find('.');
    found = holder->fields()->LookupByKey(std::string(path.substr(0, dot)).c_str());
    if (found == nullptr) return nullptr;
    const auto* type = found->type();
    const bool holds_objects = type->base_type() == reflection::Obj || type->element() == reflection::Obj;
    holder =
        holds_objects ? root().objects()->Get(static_cast<flatbuffers::uoffset_t>(type->index())) : nullptr;
  }
  return dot == std::string_view::npos ? found : nullptr;
}

const reflection::EnumVal* value(const reflection::Enum& enumeration, std::string_view name) {
  for (const auto* candidate : *enumeration.values()) {
    if (text(candidate->name()) == name) return candidate;
  }
  return nullptr;
}

std::string code(const reflection::EnumVal& value) {
  if (value.documentation() != nullptr) {
    for (const auto* line : *value.documentation()) {
      const std::string_view words = text(line);
      const auto from = words.find('"');
      const auto to = from == std::string_view::npos ? from : words.find('"', from + 1);
      if (to != std::string_view::npos) return std::string(words.substr(from + 1, to - from - 1));
    }
  }
  return std::string(text(value.name()));
}

}  // namespace firn::test
