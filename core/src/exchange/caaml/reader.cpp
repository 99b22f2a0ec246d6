#include "exchange/caaml/reader.h"

#include <algorithm>
#include <cstring>
#include <utility>

#include "exchange/caaml/foreign.h"
#include "support/text.h"

namespace firn::exchange::caaml {

using pugi::xml_attribute;
using pugi::xml_node;

bool is_blank(char c) {
  return c == ' ' || c == '\n' || c == '\t' || c == '\r';
}

std::string_view trim(std::string_view text) {
  while (!text.empty() && is_blank(text.front())) text.remove_prefix(1);
  while (!text.empty() && is_blank(text.back())) text.remove_suffix(1);
  return text;
}

bool is_xml_text(std::string_view text) {
  for (std::size_t i = 0; i < text.size();) {
    const auto c = static_cast<unsigned char>(text[i]);
    if (c < 0x80) {
      if (c < 0x20 && !is_blank(text[i])) return false;
      ++i;
      continue;
    }
    const std::size_t length = utf8_length(text.substr(i));
    if (length == 0) return false;
    const std::string_view character = text.substr(i, length);
    if (character == "\xEF\xBF\xBE" || character == "\xEF\xBF\xBF") return false;
    i += length;
  }
  return true;
}

namespace {

// Prefix and local part.
struct Parts {
  std::string_view prefix, local;
};
Parts parts_of(std::string_view name) {
  const std::size_t colon = name.find(':');
  if (colon == std::string_view::npos) return {{}, name};
  return {name.substr(0, colon), name.substr(colon + 1)};
}

// "xmlns" gives the empty prefix, "xmlns:p" gives p; false for any other attribute.
bool declared_prefix(std::string_view attribute, std::string_view& prefix) {
  if (attribute.substr(0, 5) != "xmlns") return false;
  if (attribute.size() == 5) {
    prefix = {};
    return true;
  }
  if (attribute[5] != ':') return false;
  prefix = attribute.substr(6);
  return true;
}

void append_quoted(std::string& out, std::string_view text) {
  constexpr std::size_t kMost = 200;
  std::size_t length = std::min(text.size(), kMost);
  while (length > 0 && length < text.size() && (static_cast<unsigned char>(text[length]) & 0xC0) == 0x80)
    --length;
  out += '"';
  out += text.substr(0, length);
  out += length < text.size() ? "...\"" : "\"";
}

bool is_word(std::string_view text) {
  return text.size() >= 2 && std::all_of(text.begin(), text.end(), [](char c) {
           return (c >= '0' && c <= '9') || (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') ||
                  static_cast<unsigned char>(c) >= 0x80;
         });
}

struct KnownUnit {
  Quantity quantity;
  std::string_view name;
  Unit unit;
};
// The units of the schema's own lists (UomLengthType and so on), and a few that people write instead.
constexpr KnownUnit kUnits[] = {
    {Quantity::length, "m", {1, 5}},
    {Quantity::length, "cm", {1, 3}},
    {Quantity::length, "mm", {1, 2}},
    {Quantity::length, "in", {254, 1}},
    {Quantity::length, "ft", {3048, 1}},
    {Quantity::area, "m2", {1, 6}},
    {Quantity::area, "cm2", {1, 2}},
    {Quantity::area, "mm2", {1, 0}},
    {Quantity::volume, "m3", {1, 9}},
    {Quantity::volume, "cm3", {1, 3}},
    {Quantity::pressure, "Nm-2", {1, 0}},
    {Quantity::pressure, "Pa", {1, 0}},
    {Quantity::pressure, "kPa", {1, 3}},
    {Quantity::temperature, "degC", {1, 2}},
    {Quantity::density, "kgm-3", {1, 1}},
    {Quantity::water, "kgm-2", {1, 2}},
    {Quantity::water, "mm", {1, 2}},
    {Quantity::water, "cm", {1, 3}},
    {Quantity::surface_area, "m2kg-1", {1, 2}},
    {Quantity::force, "N", {1, 3}},
    {Quantity::weight, "kg", {1, 3}},
    {Quantity::weight, "g", {1, 0}},
    {Quantity::speed, "ms-1", {1, 2}},
    {Quantity::percent, "% by Vol", {1, 2}},
    {Quantity::percent, "% per Vol", {1, 2}},
    {Quantity::percent, "%", {1, 2}},
};

}  // namespace

namespace {

// Most names differ in length or early on, where a call to compare memory costs more than it finds.
inline bool same_name(std::string_view a, std::string_view b) {
  if (a.size() != b.size()) return false;
  for (std::size_t i = 0; i < a.size(); ++i) {
    if (a[i] != b[i]) return false;
  }
  return true;
}

}  // namespace

Reader::Reader(std::string_view text, const Limits& limits, Notices& notices)
    : text_(text), limits_(limits), notices_(notices) {}

std::string_view Reader::declare(const xml_node& root) {
  const std::string_view own_prefix = parts_of(root.name()).prefix;
  std::string_view address;
  std::size_t declarations = 0;
  for (xml_attribute attribute = root.first_attribute(); attribute; attribute = attribute.next_attribute()) {
    std::string_view prefix;
    if (!declared_prefix(attribute.name(), prefix)) continue;
    ++declarations;
    if (prefix == own_prefix) address = attribute.value();
  }
  name_space_ = address;
  for (xml_attribute attribute = root.first_attribute(); attribute; attribute = attribute.next_attribute()) {
    std::string_view prefix;
    if (declared_prefix(attribute.name(), prefix)) declared_.push_back({prefix, space_of(attribute.value())});
  }
  // Declarations further in are rare, so that it pays to know there are none. The word may also stand in a
  // text.
  for (std::size_t at = text_.find("xmlns"); at != std::string_view::npos; at = text_.find("xmlns", at + 5)) {
    if (declarations == 0) {
      declares_inside_ = true;
      break;
    }
    --declarations;
  }
  return address;
}

Space Reader::space_of(std::string_view address) const {
  if (address == name_space_) return Space::caaml;
  if (address == kNamespaceGml) return Space::gml;
  return address == kNamespaceOwn ? Space::own : Space::other;
}

std::string_view Reader::address_of(const xml_node& node, std::string_view prefix) const {
  for (xml_node at = node; at.type() == pugi::node_element; at = at.parent()) {
    for (xml_attribute attribute = at.first_attribute(); attribute; attribute = attribute.next_attribute()) {
      std::string_view declared;
      if (declared_prefix(attribute.name(), declared) && declared == prefix) return attribute.value();
    }
  }
  return {};
}

Name Reader::name_of(const xml_node& node) const {
  const Parts parts = parts_of(node.name());
  if (declares_inside_) return {space_of(address_of(node, parts.prefix)), parts.local};
  for (const Declared& declared : declared_) {
    if (same_name(declared.prefix, parts.prefix)) return {declared.space, parts.local};
  }
  return {Space::other, parts.local};
}

// Our own customData stand at the end, and say what holds for every depth before.
void Reader::look_ahead(const xml_node& root) {
  const xml_node last = root.last_child().last_child();
  if (last.type() != pugi::node_element || name_of(last).space != Space::own) return;
  const std::string_view direction = last.attribute("direction").value();
  if (direction == "1") direction_ = firnbook::Direction::vertical;
  if (direction == "2") direction_ = firnbook::Direction::slope_normal;
}

bool Reader::read(const xml_node& root, const Type& type, firnbook::PitT& pit) {
  pit_ = &pit;
  Here here;
  here.object = &pit;
  here.table = &form::table_of<firnbook::PitT>();
  level_ = 1;
  look_ahead(root);
  read_id(root, pit.id);
  for (xml_attribute attribute = root.first_attribute(); attribute; attribute = attribute.next_attribute()) {
    const std::string_view name = attribute.name();
    const Parts parts = parts_of(name);
    if (parts.local == "id" || name.substr(0, 5) == "xmlns" || parts.prefix == "xml" ||
        (!parts.prefix.empty() && address_of(root, parts.prefix) == kNamespaceInstance)) {
      continue;
    }
    report_attribute(root, attribute);
  }
  read_object(root, type, here);
  return !is_too_deep_;
}

void Reader::read_object(const xml_node& node, const Type& type, const Here& here) {
  within(here, [&] { read_children(node, type); });
}

const Row* Reader::find(const Type& type, Name name, std::size_t& cursor) const {
  if (name.space != Space::caaml) return nullptr;
  for (std::size_t tried = 0; tried < type.count; ++tried) {
    const Row& row = type.rows[cursor];
    if (row.shape == Shape::inside) {
      std::size_t inner = 0;
      if (find(*row.type, name, inner) != nullptr) return &row;
    } else if (same_name(row.name, name.local)) {
      return &row;
    }
    cursor = cursor + 1 == type.count ? 0 : cursor + 1;
  }
  return nullptr;
}

void Reader::read_children(const xml_node& node, const Type& type) {
  if (++level_ > limits_.max_depth) is_too_deep_ = true;
  std::size_t cursor = 0;
  for (xml_node child = node.first_child(); child && !is_too_deep_; child = child.next_sibling()) {
    if (child.type() != pugi::node_element) {
      if (!trim(child.value()).empty() && child.type() != pugi::node_comment) {
        note(NoticeKind::not_understood, node, "text stands where only elements may");
      }
      continue;
    }
    read_child(child, type, cursor);
  }
  --level_;
}

void Reader::read_child(const xml_node& child, const Type& type) {
  std::size_t cursor = 0;
  read_child(child, type, cursor);
}

void Reader::read_child(const xml_node& child, const Type& type, std::size_t& cursor) {
  const Name name = name_of(child);
  const Row* row = find(type, name, cursor);
  if (row == nullptr) {
    unknown(child);
  } else if (row->shape == Shape::inside) {
    std::size_t inner = 0;
    enter_inside(*row, child, *find(*row->type, name, inner));
  } else {
    read_row(*row, child);
  }
}

void Reader::enter_inside(const Row& row, const xml_node& node, const Row& found) {
  const form::Field& holder = field(row.field);
  void* member = holder.in(here_.object);
  void* object = holder.table->get(member);
  Here here;
  here.object = object != nullptr ? object : holder.table->renew(member);
  here.table = holder.table;
  here.thing = here.about = row.thing;
  within(here, [&] { read_row(found, node); });
}

Here Reader::list_element(const form::Field& list, const Row& row) {
  void* member = list.in(here_.object);
  const std::size_t count = list.table->size(member);
  list.table->append(member);
  Here here;
  here.object = list.table->renew(list.table->at(member, count));
  here.table = list.table;
  here.thing = here.about = row.thing;
  here.index = row.is_inner ? here_.index : static_cast<std::int32_t>(count);
  here.sub = row.is_inner ? static_cast<std::int32_t>(count) : -1;
  if (form::table_of(row.thing) != list.table) {
    here.outer_field = field_id(list.field);
    here.about_field = here.outer_field;
  }
  return here;
}

void Reader::read_row(const Row& row, const xml_node& node) {
  if (node.first_attribute()) check_attributes(row, node);
  switch (row.shape) {
    case Shape::value:
      return row.codec->read(*this, row, node);
    case Shape::group: {
      const Here around = here_;
      if (row.has_about) {
        here_.about = row.about;
        here_.about_field = row.about_field == 0 ? kWholeThing : field_id(row.about_field);
      }
      if (!row.attributes.empty()) {
        const xml_attribute uom = node.attribute("uom");
        if (uom) here_.uom = uom.value();
      }
      read_children(node, *row.type);
      here_ = around;
      return;
    }
    case Shape::table: {
      const form::Field& holder = field(row.field);
      void* member = holder.in(here_.object);
      Here here;
      here.object = holder.table->get(member);
      if (here.object == nullptr) here.object = holder.table->renew(member);
      here.table = holder.table;
      here.thing = here.about = row.thing;
      if (row.id != 0) {
        read_id(node, *static_cast<std::string*>(holder.table->find(row.id)->in(here.object)));
      }
      return read_object(node, *row.type, here);
    }
    case Shape::list: {
      const Here here = list_element(field(row.field), row);
      if (row.id != 0) read_id(node, *static_cast<std::string*>(here.table->find(row.id)->in(here.object)));
      read_object(node, *row.type, here);
      return check_order(field(row.field), row, node);
    }
    case Shape::remark:
    case Shape::custom: {
      const Here around = here_;
      if (row.has_about) {
        here_.about = row.about;
        here_.about_field = row.about_field == 0 ? kWholeThing : field_id(row.about_field);
      }
      if (row.shape == Shape::remark) {
        read_remark(node);
      } else {
        read_custom(node);
      }
      here_ = around;
      return;
    }
    case Shape::inside:
    case Shape::fixed:
      return;
  }
}

// Lists are put in order later; here it is told, once a list.
void Reader::check_order(const form::Field& list, const Row& row, const xml_node& node) {
  const form::Table& table = *list.table;
  const form::Field* place_of = table.top != nullptr ? table.top : table.depth;
  void* member = list.in(here_.object);
  const std::size_t count = table.size(member);
  if (place_of == nullptr || count < 2 || (disordered_ == row.type && disordered_in_ == here_.object)) return;
  const firnbook::Depth* before = form::depth_in(place_of, table.object_at(member, count - 2));
  const firnbook::Depth* last = form::depth_in(place_of, table.object_at(member, count - 1));
  if (before == nullptr || last == nullptr) return;
  const bool is_in_order =
      is_bottom_up_ ? last->value_10um() <= before->value_10um() : last->value_10um() >= before->value_10um();
  if (is_in_order) return;
  disordered_ = row.type;
  disordered_in_ = here_.object;
  note(NoticeKind::changed, node, "does not follow in order of depth; the list was put in order");
}

void Reader::check_attributes(const Row& row, const xml_node& node) {
  for (xml_attribute attribute = node.first_attribute(); attribute; attribute = attribute.next_attribute()) {
    const std::string_view name = attribute.name();
    if (name == "uom" && (row.has_uom || row.quantity != Quantity::none || !row.attributes.empty() ||
                          row.codec == &kFraction || row.codec == &kFractionUncertainty)) {
      continue;
    }
    if (name.substr(0, 3) == "uom" && name.size() > 3 &&
        (row.shape == Shape::list || row.shape == Shape::group)) {
      continue;
    }
    if (name == "dir" && row.name == "SnowProfileMeasurements") {
      is_bottom_up_ = trim(attribute.value()) == "bottom up";
      if (is_bottom_up_) {
        note(NoticeKind::changed, node, "dir is \"bottom up\": depths are taken as heights above the ground");
      } else if (trim(attribute.value()) != "top down") {
        report_attribute(node, attribute);
      }
      continue;
    }
    if ((name == "confidential" && row.shape == Shape::remark) ||
        (name == "partOfLayer" && row.codec == &kConcern) ||
        (name == "dateTimeCleared" && row.codec == &kNewSnow)) {
      continue;
    }
    const Parts parts = parts_of(name);
    if (name.substr(0, 5) == "xmlns" || parts.prefix == "xml") continue;
    if (parts.local == "id" && row.id != 0) continue;
    report_attribute(node, attribute);
  }
}

// --- text
// ----------------------------------------------------------------------------------------------------

std::string_view Reader::text(const xml_node& node) {
  const xml_node first = node.first_child();
  if (!first) return {};
  const auto is_text = [](const xml_node& child) {
    return child.type() == pugi::node_pcdata || child.type() == pugi::node_cdata;
  };
  if (is_text(first) && !first.next_sibling()) return first.value();
  scratch_.clear();
  for (xml_node child = first; child; child = child.next_sibling()) {
    if (is_text(child)) {
      scratch_ += child.value();
    } else if (child.type() == pugi::node_element) {
      unknown(child);
    }
  }
  return scratch_;
}

std::string_view Reader::trimmed(const xml_node& node) {
  return trim(text(node));
}

std::string Reader::clean(std::string_view text, const xml_node& node) {
  if (is_xml_text(text)) return std::string(text);
  // References such as &#1; bring in what no text may hold.
  std::string out;
  while (!text.empty()) {
    const std::size_t length = utf8_length(text);
    const std::string_view character = text.substr(0, length == 0 ? 1 : length);
    if (length == 0) {
      out += "\xEF\xBF\xBD";
    } else if (is_xml_text(character)) {
      out += character;
    }
    text.remove_prefix(character.size());
  }
  note(NoticeKind::changed, node, "characters that no text may hold were taken out");
  return out;
}

std::string Reader::words(const xml_node& node) {
  return clean(text(node), node);
}

void Reader::read_id(const xml_node& node, std::string& to) {
  for (xml_attribute attribute = node.first_attribute(); attribute; attribute = attribute.next_attribute()) {
    const Parts parts = parts_of(attribute.name());
    if (parts.local != "id" || parts.prefix == "xmlns") continue;
    const std::string_view id = trim(attribute.value());
    if (id.substr(0, kMadeId.size()) == kMadeId) continue;
    to = clean(id, node);
    if (std::find(ids_.begin(), ids_.end(), to) != ids_.end()) {
      note(NoticeKind::kept, node, "the same gml:id stands twice in this document; kept as it is");
    } else if (ids_.size() < 1000) {
      ids_.push_back(to);
    }
  }
}

void Reader::read_remark(const xml_node& node) {
  std::string comment = words(node);
  const std::string_view confidential = trim(node.attribute("confidential").value());
  if (comment.empty() && confidential.empty()) return;
  add_remark(std::move(comment), about());
  if (confidential == "true" || confidential == "1") pit_->remarks.back()->confidential = true;
  if (confidential == "false" || confidential == "0") pit_->remarks.back()->confidential = false;
}

void Reader::add_remark(std::string text, const firnbook::Place& about) {
  auto remark = std::make_unique<firnbook::RemarkT>();
  remark->text = std::move(text);
  remark->about = std::make_unique<firnbook::Place>(about);
  pit_->remarks.push_back(std::move(remark));
}

firnbook::Place Reader::place(voffset_t id) const {
  return {here_.index, here_.sub, here_.outer_field != kWholeThing ? here_.outer_field : field_id(id),
          here_.thing};
}

// --- values
// --------------------------------------------------------------------------------------------------

bool Reader::take_nil(voffset_t id, std::string_view text) {
  if (text.empty() || text[0] < 'i' || text[0] > 'w') return false;
  std::string_view words;
  std::optional<firnbook::AbsentReason> reason;
  if (text.substr(0, 6) == "other:") {
    words = text.substr(6);
    if (!is_word(words)) return false;
    if (text == kNotRecorded) return true;
    reason = firnbook::AbsentReason::other;
  } else {
    for (const Code& code : code_table<firnbook::AbsentReason>()) {
      if (code.code == text && text != "other") reason = static_cast<firnbook::AbsentReason>(code.value);
    }
  }
  if (!reason) return false;
  auto absence = std::make_unique<firnbook::AbsenceT>();
  absence->about = std::make_unique<firnbook::Place>(place(id));
  absence->reason = *reason;
  absence->words = std::string(words);
  pit_->absences.push_back(std::move(absence));
  return true;
}

bool Reader::unit_of(const xml_node& node, const Row& row, std::string_view text, Unit& unit) {
  unit = row.unit;
  if (row.quantity == Quantity::none) return true;
  std::string_view uom = here_.uom;
  if (!row.uom_from.empty()) {
    uom = node.parent().parent().attribute(std::string(row.uom_from).c_str()).value();
  } else if (const xml_attribute attribute = node.attribute("uom")) {
    uom = attribute.value();
  }
  if (uom == row.uom || uom.data() == nullptr || uom.empty()) return true;
  uom = trim(uom);
  for (const KnownUnit& known : kUnits) {
    if (known.quantity != row.quantity || known.name != uom) continue;
    unit = known.unit;
    if (uom != row.uom)
      note(NoticeKind::changed, node, "given in another unit than the standard's, and converted");
    return true;
  }
  refuse(node, row.field, text, "its unit is not one that can be converted");
  return false;
}

bool Reader::take_number(const xml_node& node, const Row& row, std::string_view text, std::int64_t& value) {
  if (take_nil(row.field, text)) return false;
  Unit unit;
  if (!unit_of(node, row, text, unit)) return false;
  switch (parse_number(text, unit, value)) {
    case Reading::exact:
      break;
    case Reading::comma:
      note(NoticeKind::changed, node, "the comma was read as a decimal point");
      break;
    case Reading::comma_rounded:
      note(NoticeKind::changed, node, "the comma was read as a decimal point, and the number rounded");
      break;
    case Reading::rounded:
      note(NoticeKind::changed, node, "rounded to the precision that a record keeps");
      break;
    case Reading::not_clear:
      refuse(node, row.field, text, "its comma may be a decimal point or part thousands");
      return false;
    case Reading::not_a_number:
      refuse(node, row.field, text, "this is no number");
      return false;
    case Reading::too_large:
      refuse(node, row.field, text, "the number is far out of range");
      return false;
  }
  if (row.least == 0 && value < 0) {
    refuse(node, row.field, text, "it may not be negative");
    return false;
  }
  return true;
}

// --- telling
// -------------------------------------------------------------------------------------------------

std::size_t Reader::offset_of(const xml_node& node) const {
  const std::ptrdiff_t offset = node.offset_debug();
  return offset < 0 ? 0 : static_cast<std::size_t>(offset);
}

// Goes from the last place that was asked for: looking from the start, or for the start of a line that is as
// long as the document, would take long for many.
void Reader::locate(std::size_t offset, Notice& notice) {
  offset = std::min(offset, text_.size());
  if (offset < line_start_) {
    const auto begin = text_.begin();
    line_ -= static_cast<std::uint32_t>(std::count(begin + static_cast<std::ptrdiff_t>(offset),
                                                   begin + static_cast<std::ptrdiff_t>(line_start_), '\n'));
    const std::size_t before = offset == 0 ? std::string_view::npos : text_.rfind('\n', offset - 1);
    line_start_ = before == std::string_view::npos ? 0 : before + 1;
    located_ = offset;
  }
  while (located_ < offset) {
    const void* next = std::memchr(text_.data() + located_, '\n', offset - located_);
    if (next == nullptr) break;
    ++line_;
    line_start_ = static_cast<std::size_t>(static_cast<const char*>(next) - text_.data()) + 1;
    located_ = line_start_;
  }
  located_ = std::max(located_, offset);
  notice.line = line_;
  notice.column = static_cast<std::uint32_t>(std::max<std::size_t>(offset - line_start_, 1));
}

namespace {

// Which of its name among its brothers, where it has some; the search is bounded.
void append_step(std::string& path, const xml_node& node) {
  path += '/';
  path += node.name();
  std::size_t number = 1;
  std::size_t steps = 0;
  constexpr std::size_t kMostSteps = 1000;
  for (xml_node before = node.previous_sibling(); before && steps < kMostSteps;
       before = before.previous_sibling(), ++steps) {
    if (std::strcmp(before.name(), node.name()) == 0) ++number;
  }
  if (steps == kMostSteps) return;
  if (number == 1) {
    const xml_node behind = node.next_sibling();
    if (!behind || std::strcmp(behind.name(), node.name()) != 0) return;
  }
  path += '[';
  append_unsigned(path, number);
  path += ']';
}

std::string path_to(const xml_node& node) {
  xml_node way[64];
  std::size_t depth = 0;
  for (xml_node at = node; at.type() == pugi::node_element && depth < 64; at = at.parent()) way[depth++] = at;
  std::string path;
  while (depth > 0) append_step(path, way[--depth]);
  if (!is_utf8(path)) path.clear();
  return path;
}

}  // namespace

void Reader::note(NoticeKind kind, const xml_node& node, std::string_view what) {
  Notice notice;
  notice.kind = kind;
  if (notices_.kept().size() < Notices::kMost) {
    locate(offset_of(node), notice);
    notice.path = path_to(node);
    notice.what = what;
  }
  notices_.add(std::move(notice));
}

void Reader::refuse(const xml_node& node, voffset_t id, std::string_view text, std::string_view why) {
  std::string quoted;
  append_quoted(quoted, clean(text, node));
  std::string what = quoted + " was not read: ";
  what += why;
  what += "; kept as a remark";
  note(NoticeKind::kept, node, what);
  std::string remark(parts_of(node.name()).local);
  remark += ": ";
  remark += quoted;
  const std::string_view uom = node.attribute("uom").value();
  if (!uom.empty()) {
    remark += ' ';
    remark += clean(uom, node);
  }
  add_remark(clean(remark, node), place(id));
}

void Reader::unknown(const xml_node& node) {
  if (!within_depth(node)) return;
  note(NoticeKind::not_understood, node,
       "this element is not known here; it was left out with what it holds");
}

void Reader::report_attribute(const xml_node& node, const xml_attribute& attribute) {
  std::string what = "the attribute ";
  append_quoted(what, clean(attribute.name(), node));
  what += " is not known here, or has a value that is not";
  note(NoticeKind::not_understood, node, what);
}

bool Reader::within_depth(const xml_node& node) {
  std::uint32_t level = level_;
  xml_node at = node;
  while (true) {
    if (level > limits_.max_depth) {
      is_too_deep_ = true;
      return false;
    }
    if (const xml_node child = at.first_child()) {
      at = child;
      ++level;
      continue;
    }
    while (at != node && !at.next_sibling()) {
      at = at.parent();
      --level;
    }
    if (at == node) return true;
    at = at.next_sibling();
  }
}

void Reader::read_custom(const xml_node& node) {
  if (!within_depth(node)) return;
  bool is_foreign = false;
  for (xml_node child = node.first_child(); child; child = child.next_sibling()) {
    if (child.type() != pugi::node_element) continue;
    if (name_of(child).space == Space::own && std::string_view(parts_of(child.name()).local) == "pit" &&
        !own_) {
      own_ = child;
    } else {
      is_foreign = true;
    }
  }
  if (is_foreign) keep_foreign(*this, node);
}

}  // namespace firn::exchange::caaml
