#include "exchange/json/rows.h"

#include "support/form.h"

namespace firn::exchange {
namespace {

#include "exchange/json/rows.inc"

}  // namespace

const TableRow& root_table(Root root) {
  return kTables[kRoots[static_cast<std::size_t>(root)]];
}
std::string_view name_of(Root root) {
  constexpr std::string_view kNamesOfRoots[] = {"pit", "report", "bulletins"};
  return kNamesOfRoots[static_cast<std::size_t>(root)];
}
const TableRow& table_row(std::uint8_t index) {
  return kTables[index];
}
const EnumRow& enum_row(std::uint8_t index) {
  return kEnums[index];
}
const FieldRow* fields_of(const TableRow& table) {
  return kFields + table.first;
}
const ValueRow* values_of(const EnumRow& row) {
  return kValues + row.first;
}
std::string_view name_at(std::uint16_t name) {
  return kNames + name;
}

std::string_view spelling_of(const EnumRow& row, std::uint64_t number) {
  if (row.codes != nullptr)
    return number > 255 ? "" : find_code(row.codes(), static_cast<std::uint8_t>(number));
  for (std::size_t i = 0; i < row.count; ++i) {
    if (values_of(row)[i].number == number) return name_at(values_of(row)[i].name);
  }
  return {};
}

bool parse_spelling(const EnumRow& row, std::string_view spelling, std::uint64_t& number) {
  if (row.codes != nullptr) {
    const auto found = find_value(row.codes(), spelling);
    if (found) number = *found;
    return found.has_value();
  }
  for (std::size_t i = 0; i < row.count; ++i) {
    if (name_at(values_of(row)[i].name) != spelling) continue;
    number = values_of(row)[i].number;
    return true;
  }
  return false;
}

std::size_t size_of(Type type) {
  switch (type) {
    case Type::i16:
    case Type::u16:
      return 2;
    case Type::i32:
    case Type::u32:
    case Type::f32:
      return 4;
    case Type::i64:
    case Type::u64:
      return 8;
    default:
      return 1;
  }
}

namespace {

// Mostly the first letter tells.
bool is_spelled(const char* spelled, std::string_view name) {
  std::size_t at = 0;
  while (at < name.size() && spelled[at] == name[at] && spelled[at] != '\0') ++at;
  return at == name.size() && spelled[at] == '\0';
}

}  // namespace

const FieldRow* find_field(const TableRow& table, std::string_view name, const FieldRow* after) {
  const FieldRow* fields = fields_of(table);
  // Most documents have their members in the schema's order.
  std::size_t at = after == nullptr ? 0 : static_cast<std::size_t>(after - fields) + 1;
  for (std::size_t tried = 0; tried < table.count; ++tried, ++at) {
    if (at >= table.count) at = 0;
    const FieldRow& field = fields[at];
    if (field.type != Type::gone && is_spelled(kNames + field.name, name)) return &field;
  }
  return nullptr;
}

std::string_view thing_name(firnbook::Thing thing) {
  return spelling_of(enum_row(kThing), static_cast<std::uint64_t>(thing));
}
bool parse_thing(std::string_view name, firnbook::Thing& thing) {
  std::uint64_t number = 0;
  if (!parse_spelling(enum_row(kThing), name, number)) return false;
  thing = static_cast<firnbook::Thing>(number);
  return true;
}

std::string_view field_name(firnbook::Thing thing, std::uint16_t field) {
  const form::Table* table = form::table_of(thing);
  return table != nullptr && field < table->count ? table->name_of(field) : std::string_view();
}
bool parse_field(firnbook::Thing thing, std::string_view name, std::uint16_t& field) {
  const form::Table* table = form::table_of(thing);
  for (std::uint16_t i = 0; table != nullptr && i < table->count; ++i) {
    if (table->name_of(i) != name) continue;
    field = i;
    return true;
  }
  return false;
}

}  // namespace firn::exchange
