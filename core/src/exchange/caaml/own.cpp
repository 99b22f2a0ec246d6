#include "exchange/caaml/own.h"

#include <algorithm>
#include <cstring>
#include <memory>
#include <string>
#include <utility>
#include <vector>

#include "exchange/caaml/reader.h"
#include "exchange/caaml/writer.h"
#include "support/checksum.h"
#include "support/text.h"

namespace firn::exchange::caaml {

using firnbook::Depth;
using firnbook::Moment;
using firnbook::Place;
using firnbook::TimeSpan;
using form::Element;
using form::Field;
using form::Kind;
using form::Table;
using pugi::xml_node;

// --- the stored form
// -----------------------------------------------------------------------------------------

namespace {

template <class T>
const flatbuffers::Vector<T>* vector_in(const Field& field, const Stored& stored) {
  return stored.GetPointer<const flatbuffers::Vector<T>*>(field.field);
}

}  // namespace

std::int64_t stored_number(const Field& field, const Stored& stored) {
  switch (field.element) {
    case Element::bits16:
      return field.is_signed ? std::int64_t{stored.GetField<std::int16_t>(field.field, 0)}
                             : std::int64_t{stored.GetField<std::uint16_t>(field.field, 0)};
    case Element::bits32:
      return field.is_signed ? std::int64_t{stored.GetField<std::int32_t>(field.field, 0)}
                             : std::int64_t{stored.GetField<std::uint32_t>(field.field, 0)};
    case Element::bits64:
      return stored.GetField<std::int64_t>(field.field, 0);
    case Element::yes_no:
      return stored.GetField<std::uint8_t>(field.field, 0) != 0 ? 1 : 0;
    default:
      return stored.GetField<std::uint8_t>(field.field, 0);
  }
}

bool is_stored(const Field& field, const Stored& stored) {
  if (!stored.CheckField(field.field)) return false;
  switch (field.kind) {
    case Kind::number:
      return stored_number(field, stored) != 0;
    case Kind::text:
    case Kind::numbers:
    case Kind::depths:
    case Kind::tables:
      // All of these begin with their length.
      return vector_in<std::uint8_t>(field, stored)->size() != 0;
    default:
      return true;
  }
}

// --- writing
// -------------------------------------------------------------------------------------------------

namespace {

constexpr char kHexDigits[] = "0123456789abcdef";

void append_hex(std::string& out, const std::uint8_t* bytes, std::size_t size) {
  for (std::size_t i = 0; i < size; ++i) {
    out += kHexDigits[bytes[i] >> 4];
    out += kHexDigits[bytes[i] & 15];
  }
}

void append_all(std::string& out, std::initializer_list<std::int64_t> numbers) {
  bool is_first = true;
  for (const std::int64_t number : numbers) {
    if (!is_first) out += ' ';
    is_first = false;
    append_integer(out, number);
  }
}

void append_depth(std::string& out, const Depth& depth) {
  append_all(out, {depth.value_10um(), static_cast<std::int64_t>(depth.datum()),
                   static_cast<std::int64_t>(depth.direction())});
}

void append_moment_numbers(std::string& out, const Moment& moment) {
  append_all(out, {moment.local_s(), moment.offset_min(), static_cast<std::int64_t>(moment.precision()),
                   moment.offset_known()});
}

void append_structure(std::string& out, const Field& field, const Stored& stored) {
  switch (field.element) {
    case Element::moment:
      return append_moment_numbers(out, *stored.GetStruct<const Moment*>(field.field));
    case Element::time_span: {
      const auto& span = *stored.GetStruct<const TimeSpan*>(field.field);
      append_moment_numbers(out, span.begin());
      out += ' ';
      return append_moment_numbers(out, span.end());
    }
    case Element::place: {
      const auto& place = *stored.GetStruct<const Place*>(field.field);
      return append_all(
          out, {place.index(), place.sub(), place.field(), static_cast<std::int64_t>(place.thing())});
    }
    default:
      return append_depth(out, *stored.GetStruct<const Depth*>(field.field));
  }
}

void append_numbers(std::string& out, const Field& field, const Stored& stored) {
  const auto* bytes = vector_in<std::uint8_t>(field, stored);
  if (field.element == Element::bits8 || field.element == Element::grain_form) {
    return append_hex(out, bytes->data(), bytes->size());
  }
  // Single-precision numbers by their bits.
  const auto* words = vector_in<std::int32_t>(field, stored);
  for (flatbuffers::uoffset_t i = 0; i < words->size(); ++i) {
    if (i != 0) out += ' ';
    append_integer(out, words->Get(i));
  }
}

void open_own(std::string& out, std::string_view name) {
  out += '<';
  out += kOwnPrefix;
  out += name;
}
void close_own(std::string& out, std::string_view name) {
  out += "</";
  out += kOwnPrefix;
  out += name;
  out += '>';
}

void append_own_text(std::string& out, std::string_view name, const flatbuffers::String& text) {
  const std::string_view view(text.c_str(), text.size());
  open_own(out, name);
  // What XML cannot hold, and blanks at which a parser may wonder.
  if (is_xml_text(view) && !trim(view).empty()) {
    out += '>';
    append_text(out, view);
  } else {
    out += " hex=\"1\">";
    append_hex(out, text.Data(), text.size());
  }
  close_own(out, name);
}

}  // namespace

void append_own_field(std::string& out, const Field& field, std::string_view name, const Stored& stored) {
  if (!is_stored(field, stored)) return;
  if (field.kind == Kind::text) {
    return append_own_text(out, name, *stored.GetPointer<const flatbuffers::String*>(field.field));
  }
  if (field.kind == Kind::tables) {
    const form::StoredList& list = *form::stored_list(stored, field.field);
    for (flatbuffers::uoffset_t i = 0; i < list.size(); ++i) {
      open_own(out, name);
      out += " at=\"";
      append_unsigned(out, i);
      out += "\" new=\"1\">";
      append_own_fields(out, *field.table, *list.Get(i));
      close_own(out, name);
    }
    return;
  }
  const std::size_t before = out.size();
  open_own(out, name);
  out += '>';
  const std::size_t body = out.size();
  switch (field.kind) {
    case Kind::optional:
      append_integer(out, stored_number(field, stored));
      break;
    case Kind::number:
      append_unsigned(out, static_cast<std::uint64_t>(stored_number(field, stored)));
      break;
    case Kind::structure:
      append_structure(out, field, stored);
      break;
    case Kind::numbers:
      append_numbers(out, field, stored);
      break;
    case Kind::depths: {
      const auto& list = *stored.GetPointer<const flatbuffers::Vector<const Depth*>*>(field.field);
      for (flatbuffers::uoffset_t i = 0; i < list.size(); ++i) {
        if (i != 0) out += ' ';
        append_depth(out, *list.Get(i));
      }
      break;
    }
    default:
      append_own_fields(out, *field.table, *stored.GetPointer<const Stored*>(field.field));
      if (out.size() == body) return out.resize(before);  // a table without anything in it
      break;
  }
  close_own(out, name);
}

void append_own_fields(std::string& out, const Table& table, const Stored& stored) {
  const char* name = table.names;
  for (const Field& field : table) {
    const std::string_view text = name;
    name += text.size() + 1;
    append_own_field(out, field, text, stored);
  }
}

// --- reading
// -------------------------------------------------------------------------------------------------

namespace {

// Whole numbers with blanks between them.
class Numbers {
 public:
  explicit Numbers(std::string_view text) : rest_(trim(text)) {}

  bool is_done() const { return rest_.empty(); }
  // Anything of 64 bits, signed or not.
  bool next(std::int64_t& value) {
    std::size_t end = 0;
    while (end < rest_.size() && !is_blank(rest_[end])) ++end;
    std::string_view digits = rest_.substr(0, end);
    rest_ = trim(rest_.substr(end));
    const bool is_negative = !digits.empty() && digits[0] == '-';
    if (is_negative) digits.remove_prefix(1);
    if (digits.empty() || digits.size() > 20) return false;
    std::uint64_t all = 0;
    for (const char c : digits) {
      if (c < '0' || c > '9') return false;
      const auto digit = static_cast<std::uint64_t>(c - '0');
      if (all > (UINT64_MAX - digit) / 10) return false;
      all = all * 10 + digit;
    }
    if (is_negative && all > std::uint64_t{1} << 63) return false;
    value = static_cast<std::int64_t>(is_negative ? ~all + 1 : all);
    return true;
  }
  template <class T>
  bool next_as(T& value) {
    std::int64_t wide = 0;
    if (!next(wide)) return false;
    value = static_cast<T>(wide);
    return static_cast<std::int64_t>(value) == wide;
  }

 private:
  std::string_view rest_;
};

bool take_depth(Numbers& numbers, Depth& depth) {
  std::int32_t value = 0;
  std::uint8_t datum = 0;
  std::uint8_t direction = 0;
  if (!numbers.next_as(value) || !numbers.next_as(datum) || !numbers.next_as(direction)) return false;
  depth = Depth(value, static_cast<firnbook::Datum>(datum), static_cast<firnbook::Direction>(direction));
  return true;
}

bool take_moment(Numbers& numbers, Moment& moment) {
  std::int64_t local_s = 0;
  std::int16_t offset = 0;
  std::uint8_t precision = 0;
  std::uint8_t known = 0;
  if (!numbers.next(local_s) || !numbers.next_as(offset) || !numbers.next_as(precision) ||
      !numbers.next_as(known)) {
    return false;
  }
  moment = Moment(local_s, offset, static_cast<firnbook::TimePrecision>(precision), known);
  return true;
}

template <class T>
void put(void* member, const T& value) {
  *static_cast<std::unique_ptr<T>*>(member) = std::make_unique<T>(value);
}

bool take_structure(const Field& field, void* member, std::string_view text) {
  Numbers numbers(text);
  switch (field.element) {
    case Element::moment: {
      Moment moment;
      if (!take_moment(numbers, moment)) return false;
      put(member, moment);
      return true;
    }
    case Element::time_span: {
      Moment begin;
      Moment end;
      if (!take_moment(numbers, begin) || !take_moment(numbers, end)) return false;
      put(member, TimeSpan(begin, end));
      return true;
    }
    case Element::place: {
      std::int32_t index = 0;
      std::int32_t sub = 0;
      std::uint16_t id = 0;
      std::uint8_t thing = 0;
      if (!numbers.next_as(index) || !numbers.next_as(sub) || !numbers.next_as(id) ||
          !numbers.next_as(thing)) {
        return false;
      }
      put(member, Place(index, sub, id, static_cast<Thing>(thing)));
      return true;
    }
    default: {
      Depth depth;
      if (!take_depth(numbers, depth)) return false;
      put(member, depth);
      return true;
    }
  }
}

int hex_digit(char c) {
  if (c >= '0' && c <= '9') return c - '0';
  return c >= 'a' && c <= 'f' ? c - 'a' + 10 : -1;
}

template <class Byte>
bool take_hex(std::string_view text, Byte& to) {
  text = trim(text);
  if (text.size() % 2 != 0) return false;
  to.clear();
  to.reserve(text.size() / 2);
  for (std::size_t i = 0; i < text.size(); i += 2) {
    const int high = hex_digit(text[i]);
    const int low = hex_digit(text[i + 1]);
    if (high < 0 || low < 0) return false;
    to.push_back(static_cast<typename Byte::value_type>(high * 16 + low));
  }
  return true;
}

bool take_numbers(const Field& field, void* member, std::string_view text) {
  if (field.element == Element::bits8)
    return take_hex(text, *static_cast<std::vector<std::uint8_t>*>(member));
  if (field.element == Element::grain_form) {
    return take_hex(text, *static_cast<std::vector<firnbook::GrainForm>*>(member));
  }
  Numbers numbers(text);
  std::vector<std::int32_t> words;
  while (!numbers.is_done()) {
    std::int32_t word = 0;
    if (!numbers.next_as(word)) return false;
    words.push_back(word);
  }
  if (field.element == Element::bits32) {
    *static_cast<std::vector<std::int32_t>*>(member) = std::move(words);
    return true;
  }
  std::vector<float> reals(words.size());
  static_assert(sizeof(float) == sizeof(std::int32_t));
  if (!words.empty()) std::memcpy(reals.data(), words.data(), words.size() * sizeof(float));
  *static_cast<std::vector<float>*>(member) = std::move(reals);
  return true;
}

bool take_depths(void* member, std::string_view text) {
  Numbers numbers(text);
  std::vector<Depth> depths;
  while (!numbers.is_done()) {
    Depth depth;
    if (!take_depth(numbers, depth)) return false;
    depths.push_back(depth);
  }
  *static_cast<std::vector<Depth>*>(member) = std::move(depths);
  return true;
}

bool take_number(const Field& field, void* object, std::string_view text) {
  Numbers numbers(text);
  std::int64_t value = 0;
  if (!numbers.next(value)) return false;
  if (field.kind == Kind::number) {
    // The masks; the schema's own version is written anew anyway.
    if (field.element == Element::bits64) {
      *static_cast<std::uint64_t*>(field.in(object)) = static_cast<std::uint64_t>(value);
    }
    return true;
  }
  const form::Range range = form::range_of(field);
  if (value < range.least || value > range.most) return false;
  form::set(field, object, value);
  return true;
}

class OwnReader {
 public:
  // `may_replace`: the document is as it was written, so that where we differ from it we know better.
  OwnReader(Reader& reader, bool may_replace) : reader_(reader), may_replace_(may_replace) {}

  void read(const xml_node& node) {
    fields(node, form::table_of<firnbook::PitT>(), &reader_.pit());
    follow_all();
  }

 private:
  void fields(const xml_node& node, const Table& table, void* object) {
    std::uint64_t lists_done = 0;
    for (xml_node child = node.first_child(); child;) {
      const xml_node here = child;
      child = child.next_sibling();
      if (here.type() != pugi::node_element) continue;
      const Name name = reader_.name_of(here);
      if (name.space == Space::own && name.local == "no") {
        remove(here, table, object);
        continue;
      }
      const Field* field = name.space == Space::own ? find(table, name.local) : nullptr;
      if (field == nullptr) {
        reader_.unknown(here);
        continue;
      }
      if (field->kind != Kind::tables) {
        one(here, *field, object);
        continue;
      }
      child = end_of_run(here, name.local);
      // Elements of one list stand together: laying several runs over each other would take long for many.
      const std::uint64_t bit = std::uint64_t{1} << (field - table.first);
      if ((lists_done & bit) != 0) {
        reader_.note(NoticeKind::not_understood, here,
                     "elements of one list stand apart; these were left out");
      } else {
        lists_done |= bit;
        list(here, child, *field, object);
      }
    }
  }

  static const Field* find(const Table& table, std::string_view wanted) {
    const char* name = table.names;
    for (const Field& field : table) {
      const std::string_view text = name;
      if (text == wanted) return &field;
      name += text.size() + 1;
    }
    return nullptr;
  }

  xml_node end_of_run(xml_node at, std::string_view local) const {
    const std::string name(local);
    while (at && (at.type() != pugi::node_element || reader_.name_of(at).local == name))
      at = at.next_sibling();
    return at;
  }

  void remove(const xml_node& node, const Table& table, void* object) {
    if (!may_replace_) return;
    std::string_view rest = trim(reader_.text(node));
    while (!rest.empty()) {
      const std::size_t end = std::min(rest.find(' '), rest.size());
      if (const Field* field = find(table, rest.substr(0, end))) form::wipe(*field, object);
      rest = trim(rest.substr(end));
    }
  }

  void one(const xml_node& node, const Field& field, void* object) {
    void* member = field.in(object);
    if (field.kind == Kind::table) {
      void* inner = field.table->get(member);
      return fields(node, *field.table, inner != nullptr ? inner : field.table->renew(member));
    }
    // Somebody changed the document: what it says itself is newer.
    if (!may_replace_ && form::holds(field, object)) return;
    const std::string_view text = reader_.text(node);
    if (!take(node, field, object, member, text)) {
      reader_.note(NoticeKind::not_understood, node, "our own data are damaged here; left out");
    }
  }

  bool take(const xml_node& node, const Field& field, void* object, void* member, std::string_view text) {
    switch (field.kind) {
      case Kind::optional:
      case Kind::number:
        return take_number(field, object, text);
      case Kind::text: {
        auto& to = *static_cast<std::string*>(member);
        if (node.attribute("hex")) return take_hex(text, to);
        to = reader_.clean(text, node);
        return true;
      }
      case Kind::structure:
        return take_structure(field, member, text);
      case Kind::numbers:
        return take_numbers(field, member, text);
      case Kind::depths:
        return take_depths(member, text);
      default:
        return false;
    }
  }

  static bool position(const xml_node& node, const char* name, std::size_t& at) {
    Numbers numbers(node.attribute(name).value());
    std::int64_t value = 0;
    if (!numbers.next(value) || value < 0 || value > INT32_MAX) return false;
    at = static_cast<std::size_t>(value);
    return true;
  }

  // New elements go to their places among those of the document, then each is filled.
  void list(const xml_node& first, const xml_node& behind, const Field& field, void* object) {
    void* member = field.in(object);
    const Table& table = *field.table;
    const std::size_t standing = table.size(member);
    std::vector<std::size_t> order;  // which element comes next
    std::size_t taken = 0;
    for (xml_node child = first; child && child != behind; child = child.next_sibling()) {
      std::size_t at = 0;
      if (child.type() != pugi::node_element || !child.attribute("new") || !position(child, "at", at))
        continue;
      while (order.size() < at && taken < standing) order.push_back(taken++);
      order.push_back(table.size(member));
      table.append(member);
      table.renew(table.at(member, order.back()));
    }
    const bool has_new = !order.empty();
    while (taken < standing) order.push_back(taken++);
    const bool is_of_pit = object == &reader_.pit();
    // These come last, with places that are right already.
    if (is_of_pit && table.about != nullptr) follow_all();
    if (has_new) {
      arrange(table, member, order);
      if (is_of_pit && table.about == nullptr) outer_moves_.push_back({field.field, 0, inverse(order)});
      if (outer_ != nullptr && table.about == nullptr)
        inner_moves_.push_back({outer_->field, outer_at_, inverse(order)});
    }
    std::size_t last = 0;
    std::size_t filled = 0;
    for (xml_node child = first; child && child != behind; child = child.next_sibling()) {
      std::size_t at = 0;
      if (child.type() != pugi::node_element || !position(child, "at", at)) continue;
      if (child.attribute("new")) {
        // The next that was made for one: they stand in the order of their elements.
        while (last < order.size() && order[last] != standing + filled) ++last;
        at = last;
        ++filled;
      } else {
        std::size_t of = 0;
        if (at >= order.size() || (!may_replace_ && (!position(child, "of", of) || of != standing))) {
          reader_.note(NoticeKind::not_understood, child,
                       "our own data belong to something that is not there any more; left out");
          continue;
        }
      }
      if (at >= order.size()) continue;
      if (is_of_pit) {
        outer_ = &field;
        outer_at_ = at;
      }
      fields(child, table, table.object_at(member, at));
      if (is_of_pit) outer_ = nullptr;
    }
  }

  // --- what is about an element follows it to its place

  struct Moves {
    flatbuffers::voffset_t list;
    std::size_t outer;
    std::vector<std::size_t> to;
    bool operator<(const Moves& other) const {
      return list != other.list ? list < other.list : outer < other.outer;
    }
  };

  static std::vector<std::size_t> inverse(const std::vector<std::size_t>& order) {
    std::vector<std::size_t> to(order.size());
    for (std::size_t i = 0; i < order.size(); ++i) to[order[i]] = i;
    return to;
  }

  static std::int32_t moved(const std::vector<Moves>& all, flatbuffers::voffset_t list, std::size_t outer,
                            std::int32_t at) {
    const Moves wanted{list, outer, {}};
    const auto found = std::lower_bound(all.begin(), all.end(), wanted);
    if (at < 0 || found == all.end() || wanted < *found) return at;
    const auto position = static_cast<std::size_t>(at);
    return position < found->to.size() ? static_cast<std::int32_t>(found->to[position]) : at;
  }

  void follow(Place* place) const {
    if (place == nullptr) return;
    const form::ThingField* field = form::field_of(place->thing());
    if (field == nullptr) return;
    const std::int32_t index = moved(outer_moves_, field->field, 0, place->index());
    std::int32_t sub = place->sub();
    if (field->inner != 0 && index >= 0)
      sub = moved(inner_moves_, field->field, static_cast<std::size_t>(index), sub);
    *place = Place(index, sub, place->field(), place->thing());
  }

  void follow_all() {
    if (outer_moves_.empty() && inner_moves_.empty()) return;
    std::sort(outer_moves_.begin(), outer_moves_.end());
    std::sort(inner_moves_.begin(), inner_moves_.end());
    for (auto& remark : reader_.pit().remarks) follow(remark->about.get());
    for (auto& absence : reader_.pit().absences) follow(absence->about.get());
    for (auto& extension : reader_.pit().extensions) follow(extension->about.get());
    outer_moves_.clear();
    inner_moves_.clear();
  }

  // Puts element order[i] at i.
  static void arrange(const Table& table, void* member, const std::vector<std::size_t>& order) {
    std::vector<std::size_t> slot_of(order.size());
    std::vector<std::size_t> element_in(order.size());
    for (std::size_t i = 0; i < order.size(); ++i) slot_of[i] = element_in[i] = i;
    for (std::size_t to = 0; to < order.size(); ++to) {
      const std::size_t at = slot_of[order[to]];
      if (at == to) continue;
      table.swap(table.at(member, to), table.at(member, at));
      const std::size_t displaced = element_in[to];
      element_in[at] = displaced;
      slot_of[displaced] = at;
    }
  }

  Reader& reader_;
  bool may_replace_;
  const Field* outer_ = nullptr;  // the list of the pit whose element is being filled
  std::size_t outer_at_ = 0;
  std::vector<Moves> outer_moves_, inner_moves_;
};

// Remarks and their like come in the order of the document; this is the order they had.
template <class T>
void reorder(std::vector<std::unique_ptr<T>>& list, const char* text) {
  Numbers numbers(text);
  std::vector<std::pair<std::int64_t, std::size_t>> order;
  while (!numbers.is_done()) {
    std::int64_t target = 0;
    if (!numbers.next(target)) return;
    order.emplace_back(target, order.size());
  }
  if (order.size() != list.size()) return;
  std::sort(order.begin(), order.end());
  std::vector<std::unique_ptr<T>> sorted;
  for (const auto& [target, from] : order) {
    // A comment that repeats what the record holds elsewhere.
    if (target >= 0) sorted.push_back(std::move(list[from]));
  }
  list = std::move(sorted);
}

}  // namespace

void apply_own(Reader& reader, const xml_node& node) {
  const std::size_t offset = reader.offset_of(node);
  const std::string_view before = reader.source().substr(0, offset == 0 ? 0 : offset - 1);
  const std::uint32_t sum = crc32(reinterpret_cast<const std::uint8_t*>(before.data()), before.size());
  Numbers numbers(node.attribute("sum").value());
  std::int64_t wanted = -1;
  const bool is_as_written = numbers.next(wanted) && wanted == std::int64_t{sum};
  if (is_as_written) {
    reorder(reader.pit().remarks, node.attribute("remarks").value());
    reorder(reader.pit().absences, node.attribute("absences").value());
    reorder(reader.pit().extensions, node.attribute("extensions").value());
  } else {
    reader.note(NoticeKind::changed, node,
                "the document was changed after it was written: where it and our own data differ, the "
                "document counts");
  }
  OwnReader(reader, is_as_written).read(node);
}

}  // namespace firn::exchange::caaml
