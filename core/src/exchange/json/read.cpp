#include <algorithm>
#include <array>
#include <cstring>
#include <limits>

#include "exchange/json/json.h"
#include "exchange/json/values.h"
#include "schemas/bulletin_generated.h"
#include "schemas/report_generated.h"
#include "support/base64.h"
#include "support/decimal.h"
#include "support/json_parser.h"
#include "support/text.h"

namespace firn::exchange {
namespace {

using flatbuffers::uoffset_t;
using rapidjson::SizeType;

// Far from what offsets can span, so that the builder never has to give up.
constexpr std::size_t kMostBuilt = std::size_t{1} << 30;

// One member of a table, or one element of a list, that was read and waits for its table or list to end.
struct Value {
  const FieldRow* field;
  std::uint64_t bits;  // the number; where the text, table or list stands; where the struct's bytes are
};

enum class In : std::uint8_t { document, table, structure, list, mask };

struct Frame {
  In in;
  const TableRow* row;     // of a table or struct
  const FieldRow* field;   // the member that was named last; of a list, what its elements are
  std::size_t values;      // where its values begin
  std::size_t bytes;       // where its struct's bytes are, or how many there were before its first
  std::uint64_t seen = 0;  // members by their number; of a mask, its bits
  std::uint32_t count = 0;
  const FieldRow* last = nullptr;  // that was known
};

bool is_mask(const FieldRow& field) {
  return field.type == Type::u64 && name_of(field) == "unreliable";
}
bool is_bytes(const FieldRow& field) {
  return field.is_list && field.type == Type::u8 && field.refers == kNone;
}

struct Range {
  std::int64_t least;
  std::uint64_t most;
};
Range range_of(Type type) {
  switch (type) {
    case Type::i8:
      return {-128, 127};
    case Type::u8:
      return {0, 255};
    case Type::i16:
      return {-32768, 32767};
    case Type::u16:
      return {0, 65535};
    case Type::i32:
      return {std::numeric_limits<std::int32_t>::min(), std::numeric_limits<std::int32_t>::max()};
    case Type::u32:
      return {0, std::numeric_limits<std::uint32_t>::max()};
    case Type::i64:
      return {std::numeric_limits<std::int64_t>::min(), std::numeric_limits<std::int64_t>::max()};
    default:
      return {0, std::numeric_limits<std::uint64_t>::max()};
  }
}

// Takes the parser's events and builds from the leaves up: a table is written when its last member was read.
class Reader {
 public:
  Reader(const JsonText& stream, std::string_view text, const Limits& limits, Notices& notices)
      : stream_(stream), text_(text), limits_(limits), notices_(notices) {
    builder_.ForceDefaults(true);
    frames_.push_back({In::document, nullptr, nullptr, 0, 0});
  }

  // --- events ---------------------------------------------------------------------------------------

  bool Null() {
    if (is_skipping()) return skipped();
    if (top().in == In::list || top().in == In::mask) return refuse("null stands in a list", "leave it out");
    // Absent; a moment that was never given is a struct of zeros.
    return true;
  }
  bool Bool(bool value) {
    if (is_skipping()) return skipped();
    const FieldRow* field = expected();
    if (field == nullptr || field->type != Type::boolean || !is_single(*field))
      return refuse_type("true or false");
    return put(*field, value ? 1 : 0);
  }
  bool Int(int value) {
    return integer(value < 0, static_cast<std::uint64_t>(static_cast<std::int64_t>(value)));
  }
  bool Uint(unsigned value) { return integer(false, value); }
  bool Int64(std::int64_t value) { return integer(value < 0, static_cast<std::uint64_t>(value)); }
  bool Uint64(std::uint64_t value) { return integer(false, value); }
  bool Double(double) {
    if (is_skipping()) return skipped();
    const FieldRow* field = expected();
    if (field == nullptr || field->type != Type::f32 || !is_single(*field))
      return refuse_type("a number with a fraction");
    return put_float(*field);
  }
  bool RawNumber(const char*, SizeType, bool) { return false; }
  bool String(const char* text, SizeType size, bool) {
    if (is_skipping()) return skipped();
    const std::string_view words(text, size);
    if (top().in == In::mask) return name_in_mask(words);
    const FieldRow* field = expected();
    if (field == nullptr) return refuse_type("a text");
    if (is_bytes(*field) && top().in != In::list) return base64(*field, words);
    if (!is_single(*field)) return refuse_type("a text");
    if (field->type == Type::text) return put(*field, builder_.CreateString(text, size).o);
    if (field->type == Type::structure) return moment(*field, words);
    if (is_field_of_place(*field)) {
      place_field_.assign(words);
      place_field_named_ = true;
      return put(*field, kWholeThing);
    }
    if (field->refers == kNone) return refuse_type("a text");
    std::uint64_t number = 0;
    if (parse_spelling(enum_row(field->refers), words, number)) return put(*field, number);
    return refuse("\"" + shortened(words) + "\" is none of the values of " +
                      std::string(name_at(enum_row(field->refers).name)),
                  "take one of those that the JSON schema lists");
  }

  bool StartObject() {
    if (is_too_deep()) return too_deep();
    if (is_skipping()) return ++skip_depth_, true;
    Frame& in = top();
    if (in.in == In::document && in.field == nullptr && !is_open_) return is_open_ = true;
    const FieldRow* field = expected();
    if (in.in == In::document) return start_root();
    if (field == nullptr || !is_single(*field)) return refuse_type("an object");
    if (field->type == Type::table) {
      frames_.push_back({In::table, &table_row(field->refers), nullptr, values_.size(), bytes_.size()});
      return true;
    }
    if (field->type != Type::structure) return refuse_type("an object");
    return start_structure(*field);
  }
  bool Key(const char* text, SizeType size, bool) {
    if (is_skipping()) return true;
    const std::string_view name(text, size);
    Frame& in = top();
    if (in.in == In::document) return root_named(name);
    in.field = find_field(*in.row, name, in.last);
    if (in.field != nullptr) in.last = in.field;
    if (in.field == nullptr) return skip(name);
    const std::uint64_t bit = std::uint64_t{1} << (in.field - fields_of(*in.row));
    if ((in.seen & bit) != 0) return refuse("the member stands here a second time", "leave one of them");
    in.seen |= bit;
    return true;
  }
  bool EndObject(SizeType) {
    if (is_skipping()) return --skip_depth_, skipped(1);
    switch (top().in) {
      case In::document:
        return is_root_read_ || refuse("there is neither a pit, nor a report, nor bulletins in this document",
                                       "its one member is \"pit\", \"report\" or \"bulletins\"");
      case In::structure:
        return end_structure();
      default:
        return end_table();
    }
  }
  bool StartArray() {
    if (is_too_deep()) return too_deep();
    if (is_skipping()) return ++skip_depth_, true;
    const FieldRow* field = top().in == In::list ? nullptr : expected();
    if (field != nullptr && is_mask(*field)) {
      frames_.push_back({In::mask, top().row, field, values_.size(), bytes_.size()});
      return true;
    }
    if (field == nullptr || !field->is_list || is_bytes(*field)) return refuse_type("a list");
    frames_.push_back({In::list, nullptr, field, values_.size(), bytes_.size()});
    return true;
  }
  bool EndArray(SizeType) {
    if (is_skipping()) return --skip_depth_, skipped(1);
    const Frame list = top();
    frames_.pop_back();
    if (list.in == In::mask) return put(*list.field, list.seen);
    const std::uint64_t offset = write_list(list);
    values_.resize(list.values);
    bytes_.resize(list.bytes);
    return put(*list.field, offset);
  }

  // --- afterwards -----------------------------------------------------------------------------------

  bool has_failed() const { return has_failed_; }
  Failure& failure() { return failure_; }

  Failure broken(rapidjson::ParseErrorCode code, std::size_t at) {
    refuse_at(at, words_of_json_error(code, at >= text_.size()), "mend the text there");
    return std::move(failure_);
  }

  JsonRead finish() {
    constexpr const char* (*kIdentifiers[])() = {firnbook::PitIdentifier, firnbook::ReportIdentifier,
                                                 firnbook::BulletinsIdentifier};
    builder_.Finish(flatbuffers::Offset<flatbuffers::Table>(static_cast<uoffset_t>(root_offset_)),
                    kIdentifiers[static_cast<std::size_t>(root_)]());
    JsonRead read;
    read.root = root_;
    read.bytes.assign(builder_.GetBufferPointer(), builder_.GetBufferPointer() + builder_.GetSize());
    read.unknown = std::move(unknown_);
    return read;
  }

 private:
  Frame& top() { return frames_.back(); }

  // What belongs here; null when nothing does.
  const FieldRow* expected() { return top().field; }
  // Whether one value belongs here, and no list of them.
  bool is_single(const FieldRow& field) {
    return (!field.is_list || top().in == In::list) && !is_mask(field);
  }
  bool is_field_of_place(const FieldRow& field) {
    return top().in == In::structure && name_of(*top().row) == "Place" && name_of(field) == "field";
  }

  bool put(const FieldRow& field, std::uint64_t bits) {
    Frame& in = top();
    if (in.in == In::structure) {
      const flatbuffers::voffset_t at = field.offset;
      std::memcpy(bytes_.data() + in.bytes + at, little_endian(bits).data(), size_of(field.type));
      return true;
    }
    values_.push_back({&field, bits});
    ++in.count;
    return true;
  }
  static std::array<std::uint8_t, 8> little_endian(std::uint64_t bits) {
    std::array<std::uint8_t, 8> bytes{};
    for (std::uint8_t& byte : bytes) {
      byte = static_cast<std::uint8_t>(bits);
      bits >>= 8;
    }
    return bytes;
  }

  // --- numbers and texts ----------------------------------------------------------------------------

  // `bits` in two's complement.
  bool integer(bool is_negative, std::uint64_t bits) {
    if (is_skipping()) return skipped();
    if (top().in == In::mask) return bit_in_mask(is_negative, bits);
    const FieldRow* field = expected();
    if (field == nullptr || !is_single(*field)) return refuse_type("a number");
    switch (field->type) {
      case Type::boolean:
      case Type::text:
      case Type::table:
      case Type::structure:
        return refuse_type("a number");
      case Type::f32:
        return put_float(*field);
      default:
        break;
    }
    const Range range = range_of(field->type);
    const bool fits = is_negative ? static_cast<std::int64_t>(bits) >= range.least : bits <= range.most;
    if (fits) return put(*field, bits);
    std::string remedy = "give a whole number from ";
    append_integer(remedy, range.least);
    remedy += " to ";
    append_unsigned(remedy, range.most);
    return refuse("the number is outside what the field can hold", remedy);
  }
  // From the number as it stands in the text, which the parser has just read: its double may have been
  // rounded.
  bool put_float(const FieldRow& field) {
    const std::size_t end = stream_.Tell();
    std::size_t begin = end;
    while (begin > 0 && is_of_number(text_[begin - 1])) --begin;
    float number = 0;
    if (!parse_float(text_.substr(begin, end - begin), number)) {
      return refuse("the number is outside what the field can hold", "give one that a 32-bit float can hold");
    }
    std::uint32_t bits;
    std::memcpy(&bits, &number, sizeof bits);
    return put(field, bits);
  }
  static bool is_of_number(char sign) {
    return (sign >= '0' && sign <= '9') || sign == '-' || sign == '+' || sign == '.' || sign == 'e' ||
           sign == 'E';
  }

  bool base64(const FieldRow& field, std::string_view words) {
    std::vector<std::uint8_t> bytes;
    if (!parse_base64(words, bytes)) {
      return refuse("the text is not base64", "write bytes as RFC 4648 says, with padding");
    }
    return put(field, builder_.CreateVector(bytes).o);
  }

  bool name_in_mask(std::string_view name) {
    const FieldRow* named = find_field(*top().row, name);
    if (named == nullptr) {
      return refuse("\"" + shortened(name) + "\" is no field of " + std::string(name_of(*top().row)),
                    "name the field that is not to be leaned on");
    }
    top().seen |= std::uint64_t{1} << (named - fields_of(*top().row));
    ++top().count;
    return true;
  }
  bool bit_in_mask(bool is_negative, std::uint64_t bit) {
    if (is_negative || bit > 63) return refuse("no field has this number", "name the field, or give 0 to 63");
    top().seen |= std::uint64_t{1} << bit;
    ++top().count;
    return true;
  }

  // --- tables, structs and lists --------------------------------------------------------------------

  bool root_named(std::string_view name) {
    for (const Root root : {Root::pit, Root::report, Root::bulletins}) {
      if (name != name_of(root)) continue;
      if (is_root_named_) return refuse("a second record stands in this document", "put each into its own");
      is_root_named_ = true;
      root_ = root;
      top().row = &root_table(root);
      return true;
    }
    return skip(name);
  }
  bool start_root() {
    if (top().row == nullptr || is_root_read_) return refuse_type("an object");
    is_root_read_ = true;
    frames_.push_back({In::table, top().row, nullptr, values_.size(), bytes_.size()});
    return true;
  }

  std::size_t add_structure(const TableRow& row) {
    const std::size_t at = bytes_.size();
    bytes_.resize(at + row.size);
    return at;
  }
  bool start_structure(const FieldRow& field) {
    const TableRow& row = table_row(field.refers);
    // A struct inside a struct is part of its bytes.
    const std::size_t at = top().in == In::structure ? top().bytes + field.offset : add_structure(row);
    frames_.push_back({In::structure, &row, nullptr, values_.size(), at});
    if (name_of(row) == "Place") {
      const firnbook::Place nowhere = whole_pit();
      std::memcpy(bytes_.data() + at, &nowhere, sizeof nowhere);
      place_field_named_ = false;
    }
    return true;
  }
  bool end_structure() {
    top().field = nullptr;
    const Frame ended = top();
    if (name_of(*ended.row) == "Place") {
      if (!end_place(ended)) return false;
    } else if (!has_all_numbers(ended)) {
      return false;
    }
    frames_.pop_back();
    if (top().in == In::structure) return true;
    return put(*top().field, ended.bytes);
  }
  // A depth without its number would be the surface.
  bool has_all_numbers(const Frame& ended) {
    const FieldRow* fields = fields_of(*ended.row);
    for (std::size_t i = 0; i < ended.row->count; ++i) {
      if (fields[i].refers != kNone || (ended.seen >> i & 1) != 0) continue;
      return refuse("\"" + std::string(name_of(fields[i])) + "\" is missing",
                    "give it, or leave out the whole of it");
    }
    return true;
  }
  bool end_place(const Frame& ended) {
    if (!place_field_named_) return true;
    firnbook::Place place;
    std::memcpy(&place, bytes_.data() + ended.bytes, sizeof place);
    std::uint16_t field = 0;
    if (!parse_field(place.thing(), place_field_, field)) {
      return refuse("\"" + shortened(place_field_) + "\" is no field of this thing",
                    "take a name of the schema's");
    }
    place = {place.index(), place.sub(), field, place.thing()};
    std::memcpy(bytes_.data() + ended.bytes, &place, sizeof place);
    return true;
  }
  bool moment(const FieldRow& field, std::string_view words) {
    const TableRow& row = table_row(field.refers);
    if (name_of(row) != "Moment") return refuse_type("a text");
    const std::optional<firnbook::Moment> moment = parse_moment(words);
    if (!moment) {
      return refuse("\"" + shortened(words) + "\" is no moment",
                    "write it like 2026-11-28T10:05-07:00, or less of it");
    }
    if (top().in == In::structure) {
      std::memcpy(bytes_.data() + top().bytes + field.offset, &*moment, sizeof *moment);
      return true;
    }
    const std::size_t at = add_structure(row);
    std::memcpy(bytes_.data() + at, &*moment, sizeof *moment);
    return put(field, at);
  }

  std::uint64_t write_list(const Frame& list) {
    const FieldRow& field = *list.field;
    if (field.type == Type::structure) return write_structures(list);
    const bool holds_offsets = field.type == Type::table || field.type == Type::text;
    const std::size_t size = holds_offsets ? sizeof(uoffset_t) : size_of(field.type);
    builder_.StartVector(list.count, size);
    for (std::size_t i = list.count; i-- > 0;) {
      const std::uint64_t bits = values_[list.values + i].bits;
      if (holds_offsets) {
        builder_.PushElement(flatbuffers::Offset<void>(static_cast<uoffset_t>(bits)));
      } else {
        push_scalar(size, bits);
      }
    }
    return builder_.EndVector(list.count);
  }
  void push_scalar(std::size_t size, std::uint64_t bits) {
    switch (size) {
      case 1:
        builder_.PushElement(static_cast<std::uint8_t>(bits));
        break;
      case 2:
        builder_.PushElement(static_cast<std::uint16_t>(bits));
        break;
      case 4:
        builder_.PushElement(static_cast<std::uint32_t>(bits));
        break;
      default:
        builder_.PushElement(bits);
        break;
    }
  }
  std::uint64_t write_structures(const Frame& list) {
    const TableRow& row = table_row(list.field->refers);
    builder_.ForceVectorAlignment(list.count, row.size, row.alignment);
    builder_.StartVector(list.count * row.size / row.alignment, row.alignment);
    builder_.PushBytes(bytes_.data() + list.bytes, std::size_t{list.count} * row.size);
    return builder_.EndVector(list.count);
  }

  bool end_table() {
    const Frame ended = top();
    const uoffset_t start = builder_.StartTable();
    // The largest first, so that little is lost to alignment.
    for (std::size_t size = 8; size != 0; size /= 2) {
      for (std::size_t i = ended.values; i < values_.size(); ++i) {
        if (size_in_table(*values_[i].field) == size) add(values_[i]);
      }
    }
    const uoffset_t offset = builder_.EndTable(start);
    values_.resize(ended.values);
    bytes_.resize(ended.bytes);
    frames_.pop_back();
    if (builder_.GetSize() > kMostBuilt) return refuse("the document is too large", "split it");
    if (top().in == In::document) {
      root_offset_ = offset;
      return true;
    }
    return put(*top().field, offset);
  }
  static std::size_t size_in_table(const FieldRow& field) {
    if (field.is_list || field.type == Type::text || field.type == Type::table) return 4;
    return field.type == Type::structure ? table_row(field.refers).alignment : size_of(field.type);
  }
  void add(const Value& value) {
    const FieldRow& field = *value.field;
    if (field.is_list || field.type == Type::text || field.type == Type::table) {
      builder_.AddOffset(field.offset, flatbuffers::Offset<void>(static_cast<uoffset_t>(value.bits)));
    } else if (field.type == Type::structure) {
      const TableRow& row = table_row(field.refers);
      builder_.StartStruct(row.alignment);
      builder_.PushBytes(bytes_.data() + value.bits, row.size);
      builder_.AddStructOffset(field.offset, builder_.EndStruct());
    } else if (value.bits != 0 || field.is_optional) {
      add_scalar(field, value.bits);
    }
  }
  void add_scalar(const FieldRow& field, std::uint64_t bits) {
    switch (size_of(field.type)) {
      case 1:
        builder_.AddElement(field.offset, static_cast<std::uint8_t>(bits));
        break;
      case 2:
        builder_.AddElement(field.offset, static_cast<std::uint16_t>(bits));
        break;
      case 4:
        builder_.AddElement(field.offset, static_cast<std::uint32_t>(bits));
        break;
      default:
        builder_.AddElement(field.offset, bits);
        break;
    }
  }

  // --- what is not known ----------------------------------------------------------------------------

  bool is_skipping() const { return is_skipping_; }
  bool skip(std::string_view name) {
    is_skipping_ = true;
    skip_depth_ = 0;
    skip_name_.assign(name);
    skip_from_ = stream_.Tell();
    return true;
  }
  // A value, or the end of an object or list (whose bracket the parser has seen but not taken), inside what
  // is passed over.
  bool skipped(std::size_t bracket = 0) {
    if (skip_depth_ != 0) return true;
    is_skipping_ = false;
    std::size_t from = skip_from_;
    while (from < text_.size() && (text_[from] == ':' || static_cast<unsigned char>(text_[from]) <= ' '))
      ++from;
    unknown_.push_back({pointer(), std::string(text_.substr(from, stream_.Tell() + bracket - from))});
    Notice notice;
    notice.kind = NoticeKind::not_understood;
    set_line(skip_from_, notice.line, notice.column);
    top().field = nullptr;
    notice.path = path();
    if (!notice.path.empty()) notice.path += '.';
    notice.path += skip_name_;
    notice.what = "no member of this name is known";
    notices_.add(std::move(notice));
    return true;
  }

  // --- places and failures --------------------------------------------------------------------------

  // The frames that hold the present place, with what each says of it.
  template <class Act>
  void each_step(Act&& act) const {
    for (const Frame& frame : frames_) {
      if (frame.in == In::document) {
        if (frame.row != nullptr) act(name_of(root_), -1);
      } else if (frame.in == In::list) {
        act(std::string_view(), static_cast<std::int64_t>(frame.count));
      } else if (frame.in != In::mask && frame.field != nullptr) {
        act(name_of(*frame.field), -1);
      }
    }
  }
  std::string path() const {
    std::string out;
    bool is_first = true;
    each_step([&](std::string_view name, std::int64_t index) {
      if (index >= 0) {
        out += '[';
        append_integer(out, index);
        out += ']';
      } else if (!is_first) {
        if (!out.empty()) out += '.';
        out += name;
      }
      is_first = false;
    });
    return out;
  }
  std::string pointer() const {
    std::string out;
    each_step([&](std::string_view name, std::int64_t index) {
      out += '/';
      index >= 0 ? append_integer(out, index) : static_cast<void>(out += name);
    });
    out += '/';
    for (const char sign : skip_name_) {
      if (sign == '~') {
        out += "~0";
      } else if (sign == '/') {
        out += "~1";
      } else {
        out += sign;
      }
    }
    return out;
  }
  void set_line(std::size_t at, std::uint32_t& line, std::uint32_t& column) const {
    const std::string_view before = text_.substr(0, std::min(at, text_.size()));
    line = static_cast<std::uint32_t>(std::count(before.begin(), before.end(), '\n')) + 1;
    const std::size_t last = before.rfind('\n');
    column = static_cast<std::uint32_t>(before.size() - (last == std::string_view::npos ? 0 : last + 1)) + 1;
  }

  static std::string shortened(std::string_view words) {
    constexpr std::size_t kMost = 40;
    if (words.size() <= kMost) return std::string(words);
    std::size_t size = kMost;
    while (size > 0 && (static_cast<unsigned char>(words[size]) & 0xC0) == 0x80) --size;
    return std::string(words.substr(0, size)) + "…";
  }
  bool refuse_type(const char* given) {
    const FieldRow* field = expected();
    std::string what = given;
    what += " stands where ";
    what += field == nullptr ? "an object belongs" : wanted(*field);
    return refuse(what, "give what belongs there, or leave the member out: absent means not observed");
  }
  std::string wanted(const FieldRow& field) {
    if (is_mask(field)) return "a list of names of fields belongs";
    if (is_bytes(field)) return "bytes as base64 belong";
    if (field.is_list && top().in != In::list) return "a list belongs";
    switch (field.type) {
      case Type::boolean:
        return "true or false belongs";
      case Type::text:
        return "a text belongs";
      case Type::f32:
        return "a number belongs";
      case Type::table:
      case Type::structure:
        return name_of(table_row(field.refers)) == "Moment" ? "a moment belongs" : "an object belongs";
      default:
        if (field.refers == kNone) return "a whole number belongs";
        return "a value of " + std::string(name_at(enum_row(field.refers).name)) + " belongs";
    }
  }
  // The document itself is the first level, and opens without a frame of its own.
  bool is_too_deep() const { return is_open_ && frames_.size() + skip_depth_ >= limits_.max_depth; }
  bool too_deep() {
    return refuse("the document is nested too deeply", "raise the limit of depth if it is trusted");
  }
  bool refuse(std::string what, std::string_view remedy) {
    refuse_at(stream_.Tell(), std::move(what), remedy);
    return false;
  }
  void refuse_at(std::size_t at, std::string what, std::string_view remedy) {
    has_failed_ = true;
    failure_ = failure_of(FIRN_NOT_UNDERSTOOD, what, remedy);
    failure_.path = path();
    set_line(at, failure_.line, failure_.column);
  }

  const JsonText& stream_;
  std::string_view text_;
  const Limits& limits_;
  Notices& notices_;
  flatbuffers::FlatBufferBuilder builder_;
  std::vector<Frame> frames_;
  std::vector<Value> values_;
  std::vector<std::uint8_t> bytes_;  // of structs that wait for their table
  Root root_ = Root::pit;
  std::uint64_t root_offset_ = 0;
  bool is_open_ = false, is_root_named_ = false, is_root_read_ = false;
  std::string place_field_;
  bool place_field_named_ = false;
  bool is_skipping_ = false;
  std::size_t skip_depth_ = 0, skip_from_ = 0;
  std::string skip_name_;
  std::vector<UnknownMember> unknown_;
  bool has_failed_ = false;
  Failure failure_;
};

constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";

}  // namespace

Result<JsonRead> read_json(std::string_view text, const Limits& limits, Notices& notices) {
  if (text.size() > limits.max_bytes) {
    return failure_of(FIRN_TOO_LARGE, "more bytes than the limit allows for a document",
                      "raise the limit if this document is trusted");
  }
  if (text.substr(0, kByteOrderMark.size()) == kByteOrderMark) text.remove_prefix(kByteOrderMark.size());
  JsonText stream{text.data(), text.data(), text.data() + text.size()};
  JsonMemory memory;
  rapidjson::GenericReader<rapidjson::UTF8<>, rapidjson::UTF8<>, JsonMemory> parser(&memory);
  Reader reader(stream, text, limits, notices);
  constexpr unsigned kFlags = rapidjson::kParseIterativeFlag | rapidjson::kParseValidateEncodingFlag;
  const rapidjson::ParseResult parsed = parser.Parse<kFlags>(stream, reader);
  if (reader.has_failed()) return std::move(reader.failure());
  if (parsed.IsError()) return reader.broken(parsed.Code(), parsed.Offset());
  return reader.finish();
}

bool looks_like_json(std::string_view text) {
  if (text.substr(0, kByteOrderMark.size()) == kByteOrderMark) text.remove_prefix(kByteOrderMark.size());
  const std::size_t first = text.find_first_not_of(" \t\r\n");
  return first != std::string_view::npos && text[first] == '{';
}

}  // namespace firn::exchange
