// What the standard has no place for, in a form of ours: the fields by their names in the schema, with their
// stored numbers. README.md describes it.
#pragma once

#include <pugixml.hpp>
#include <string>
#include <string_view>

#include "support/form.h"

namespace firn::exchange::caaml {

class Reader;

inline constexpr std::string_view kOwnPrefix = "firn:";

// Whether the stored table holds something in the field.
bool is_stored(const form::Field& field, const flatbuffers::Table& stored);
// The number of an optional; the field must be there.
std::int64_t stored_number(const form::Field& field, const flatbuffers::Table& stored);

void append_own_field(std::string& out, const form::Field& field, std::string_view name,
                      const flatbuffers::Table& stored);
// Every field of a table.
void append_own_fields(std::string& out, const form::Table& table, const flatbuffers::Table& stored);

// Lays over the pit what stands in customData of ours.
void apply_own(Reader& reader, const pugi::xml_node& node);

}  // namespace firn::exchange::caaml
