#include "support/place.h"

#include <string_view>

#include "support/form.h"
#include "support/text.h"

namespace firn {
namespace {

using firnbook::Thing;

bool ends_with(std::string_view text, std::string_view end) {
  return text.size() >= end.size() && text.substr(text.size() - end.size()) == end;
}

bool contains(std::string_view text, std::string_view part) {
  return text.find(part) != std::string_view::npos;
}

std::string_view length_unit(std::string_view name) {
  if (name.find("grain_size") == 0 || contains(name, "_water")) return "_mm";
  const bool in_metres = contains(name, "elevation") || contains(name, "fog") ||
                         contains(name, "position_accuracy") || contains(name, "blurred_by");
  return in_metres ? "_m" : "_cm";
}

// Stored units are exact but nobody thinks in them: paths speak as people measure.
void append_field_name(std::string& out, std::string_view name, bool is_depth) {
  struct StoredUnit {
    std::string_view stored, measured;
  };
  constexpr StoredUnit kUnits[] = {{"_cdegc", "_degc"}, {"_dkgm3", "_kgm3"}, {"_e7deg", "_deg"}};
  constexpr std::string_view kLength = "_10um";
  if (ends_with(name, kLength)) {
    const std::string_view stem = name.substr(0, name.size() - kLength.size());
    out.append(stem);
    out.append(length_unit(name));
    return;
  }
  for (const StoredUnit& unit : kUnits) {
    if (!ends_with(name, unit.stored)) continue;
    out.append(name.substr(0, name.size() - unit.stored.size()));
    out.append(unit.measured);
    return;
  }
  out.append(name);
  if (is_depth) out += "_cm";
}

void append_index(std::string& out, std::int32_t index) {
  if (index < 0) return;
  out += '[';
  append_integer(out, index);
  out += ']';
}

// A table of the pit, or an element of a list of it; answers the table of its fields.
const form::Table* append_list(std::string& out, const form::Table& in, int vtable_offset,
                               std::int32_t index) {
  const form::Field& field = in.first[field_id(vtable_offset)];
  out += in.name_of(field_id(vtable_offset));
  if (field.kind == form::Kind::tables) append_index(out, index);
  return field.table;
}

}  // namespace

std::string path_of(const firnbook::Place& place) {
  std::string out;
  if (place.thing() == Thing::probe) out = "site.probes_cm";
  if (place.thing() == Thing::boundary) out = "boundaries";
  if (!out.empty()) {
    append_index(out, place.index());
    return out;
  }
  const form::Table* table = &form::table_of<firnbook::PitT>();
  const form::ThingField* thing = form::field_of(place.thing());
  if (thing != nullptr) {
    table = append_list(out, *table, thing->field, place.index());
    if (thing->inner != 0) {
      out += '.';
      table = append_list(out, *table, thing->inner, place.sub());
    }
  } else if (place.thing() != Thing::pit) {
    return "pit";
  }
  if (place.field() < table->count) {
    if (!out.empty()) out += '.';
    const form::Field& field = table->first[place.field()];
    append_field_name(out, table->name_of(place.field()),
                      field.kind == form::Kind::structure && field.element == form::Element::depth);
  }
  return out.empty() ? "pit" : out;
}

}  // namespace firn
