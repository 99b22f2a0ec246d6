#include "exchange/json/json.h"
#include "exchange/json/values.h"
#include "support/base64.h"
#include "support/decimal.h"
#include "support/json_parser.h"
#include "support/text.h"

#include <rapidjson/prettywriter.h>

namespace firn::exchange {
namespace {

using flatbuffers::Table;

struct Out {
  typedef char Ch;
  void Put(char sign) { text->push_back(sign); }
  void Flush() {}
  std::string* text;
};
using Utf8 = rapidjson::UTF8<>;
using Compact = rapidjson::Writer<Out, Utf8, Utf8, JsonMemory>;
using Pretty = rapidjson::PrettyWriter<Out, Utf8, Utf8, JsonMemory>;

// What stands at a place of a verified buffer, which is aligned as its type wants.
template <class T>
const T& stored_as(const std::uint8_t* at) {
  return *static_cast<const T*>(static_cast<const void*>(at));
}

std::uint64_t stored(const std::uint8_t* at, Type type) {
  switch (size_of(type)) {
    case 2:
      return flatbuffers::ReadScalar<std::uint16_t>(at);
    case 4:
      return flatbuffers::ReadScalar<std::uint32_t>(at);
    case 8:
      return flatbuffers::ReadScalar<std::uint64_t>(at);
    default:
      return *at;
  }
}

// Walks a verified buffer; the writer is RapidJSON's, in one line or in many.
template <class Writer>
class Walk {
 public:
  Walk(Writer& writer, Notices& notices) : writer_(writer), notices_(notices) {}

  void table(const TableRow& row, const Table& table) {
    writer_.StartObject();
    const FieldRow* fields = fields_of(row);
    for (const FieldRow* field = fields; field != fields + row.count; ++field) {
      if (field->type == Type::gone) continue;
      const std::uint8_t* at = table.GetAddressOf(field->offset);
      if (at == nullptr) continue;
      const std::size_t path_size = step_into(name_of(*field));
      if (field->is_list) {
        list(*field, at + flatbuffers::ReadScalar<flatbuffers::uoffset_t>(at));
      } else if (is_mask(*field)) {
        mask(row, stored(at, field->type));
      } else {
        member(*field, at);
      }
      path_.resize(path_size);
    }
    writer_.EndObject();
  }

 private:
  static bool is_mask(const FieldRow& field) {
    return field.type == Type::u64 && name_of(field) == "unreliable";
  }

  std::size_t step_into(std::string_view name) {
    const std::size_t size = path_.size();
    if (size != 0) path_ += '.';
    path_ += name;
    return size;
  }

  void key(std::string_view name) { writer_.Key(name.data(), static_cast<rapidjson::SizeType>(name.size())); }
  void text(std::string_view words) {
    writer_.String(words.data(), static_cast<rapidjson::SizeType>(words.size()));
  }
  void left_out(const char* what) { notices_.add({NoticeKind::left_out, 0, 0, path_, what}); }

  // A field that is there, with its name; nothing at all where JSON cannot hold it.
  void member(const FieldRow& field, const std::uint8_t* at) {
    if (field.type == Type::text) {
      const std::string_view words = text_at(at);
      if (!is_utf8(words)) return left_out("is not UTF-8, which JSON has to be");
      key(name_of(field));
      return text(words);
    }
    key(name_of(field));
    if (field.type == Type::table) {
      table(table_row(field.refers),
            stored_as<Table>(at + flatbuffers::ReadScalar<flatbuffers::uoffset_t>(at)));
    } else {
      value(field, at);
    }
  }

  static std::string_view text_at(const std::uint8_t* at) {
    const auto& words =
        stored_as<flatbuffers::String>(at + flatbuffers::ReadScalar<flatbuffers::uoffset_t>(at));
    return {words.c_str(), words.size()};
  }

  void value(const FieldRow& field, const std::uint8_t* at) {
    if (field.type == Type::structure) return structure(table_row(field.refers), at);
    const std::uint64_t bits = stored(at, field.type);
    if (field.refers != kNone) {
      const std::string_view spelling = spelling_of(enum_row(field.refers), bits);
      // A number that a newer version has a name for.
      spelling.empty() ? writer_.Uint64(bits) : writer_.String(spelling.data(), size_of_text(spelling));
      return;
    }
    number(field.type, bits);
  }
  static rapidjson::SizeType size_of_text(std::string_view words) {
    return static_cast<rapidjson::SizeType>(words.size());
  }

  void number(Type type, std::uint64_t bits) {
    switch (type) {
      case Type::boolean:
        writer_.Bool(bits != 0);
        break;
      case Type::i8:
        writer_.Int(static_cast<std::int8_t>(bits));
        break;
      case Type::i16:
        writer_.Int(static_cast<std::int16_t>(bits));
        break;
      case Type::i32:
        writer_.Int(static_cast<std::int32_t>(bits));
        break;
      case Type::i64:
        writer_.Int64(static_cast<std::int64_t>(bits));
        break;
      default:
        writer_.Uint64(bits);
        break;
    }
  }

  // Bits are named after the fields that they are about.
  void mask(const TableRow& row, std::uint64_t bits) {
    key("unreliable");
    writer_.StartArray();
    for (unsigned bit = 0; bit < 64; ++bit) {
      if ((bits >> bit & 1) == 0) continue;
      const bool has_name = bit < row.count && fields_of(row)[bit].type != Type::gone;
      has_name ? text(name_of(fields_of(row)[bit])) : static_cast<void>(writer_.Uint(bit));
    }
    writer_.EndArray();
  }

  void structure(const TableRow& row, const std::uint8_t* at) {
    if (name_of(row) == "Moment") return moment(row, at);
    if (name_of(row) == "Place") return place(stored_as<firnbook::Place>(at));
    members(row, at);
  }
  void members(const TableRow& row, const std::uint8_t* at) {
    writer_.StartObject();
    const FieldRow* fields = fields_of(row);
    for (const FieldRow* field = fields; field != fields + row.count; ++field) {
      key(name_of(*field));
      value(*field, at + field->offset);
    }
    writer_.EndObject();
  }
  void moment(const TableRow& row, const std::uint8_t* at) {
    std::string words;
    const auto& moment = stored_as<firnbook::Moment>(at);
    if (append_moment(words, moment)) return text(words);
    const bool is_none = moment.precision() == firnbook::TimePrecision::none && moment.local_s() == 0 &&
                         moment.offset_min() == 0 && moment.offset_known() == 0;
    is_none ? static_cast<void>(writer_.Null()) : members(row, at);
  }
  void place(const firnbook::Place& place) {
    writer_.StartObject();
    key("thing");
    const std::string_view thing = thing_name(place.thing());
    thing.empty() ? static_cast<void>(writer_.Uint(static_cast<unsigned>(place.thing()))) : text(thing);
    if (place.index() != -1) {
      key("index");
      writer_.Int(place.index());
    }
    if (place.sub() != -1) {
      key("sub");
      writer_.Int(place.sub());
    }
    if (place.field() != kWholeThing) {
      key("field");
      const std::string_view name = field_name(place.thing(), place.field());
      name.empty() ? static_cast<void>(writer_.Uint(place.field())) : text(name);
    }
    writer_.EndObject();
  }

  void list(const FieldRow& field, const std::uint8_t* vector) {
    const auto size = flatbuffers::ReadScalar<flatbuffers::uoffset_t>(vector);
    const std::uint8_t* at = vector + sizeof size;
    if (field.type == Type::u8 && field.refers == kNone) return bytes(field, at, size);
    if (field.type == Type::f32) return floats(field, at, size);
    key(name_of(field));
    writer_.StartArray();
    const std::size_t path_size = path_.size();
    const std::size_t step = step_of(field);
    for (flatbuffers::uoffset_t i = 0; i < size; ++i, at += step) {
      path_ += '[';
      append_unsigned(path_, i);
      path_ += ']';
      element(field, at);
      path_.resize(path_size);
    }
    writer_.EndArray();
  }
  static std::size_t step_of(const FieldRow& field) {
    if (field.type == Type::structure) return table_row(field.refers).size;
    if (field.type == Type::table || field.type == Type::text) return sizeof(flatbuffers::uoffset_t);
    return size_of(field.type);
  }
  void element(const FieldRow& field, const std::uint8_t* at) {
    if (field.type == Type::text) {
      const std::string_view words = text_at(at);
      if (is_utf8(words)) return text(words);
      left_out("is not UTF-8, which JSON has to be");
      return text("");
    }
    if (field.type == Type::table) {
      return table(table_row(field.refers),
                   stored_as<Table>(at + flatbuffers::ReadScalar<flatbuffers::uoffset_t>(at)));
    }
    value(field, at);
  }

  void bytes(const FieldRow& field, const std::uint8_t* at, std::size_t size) {
    std::string words;
    append_base64(words, at, size);
    key(name_of(field));
    text(words);
  }
  void floats(const FieldRow& field, const std::uint8_t* at, std::size_t size) {
    for (std::size_t i = 0; i < size; ++i) {
      const float value = flatbuffers::ReadScalar<float>(at + i * sizeof value);
      if (!(value - value == 0)) return left_out("holds something that is no number, which JSON cannot");
    }
    key(name_of(field));
    writer_.StartArray();
    std::string words;
    for (std::size_t i = 0; i < size; ++i) {
      words.clear();
      append_float(words, flatbuffers::ReadScalar<float>(at + i * sizeof(float)));
      writer_.RawValue(words.data(), words.size(), rapidjson::kNumberType);
    }
    writer_.EndArray();
  }

  Writer& writer_;
  Notices& notices_;
  std::string path_;
};

template <class Writer>
void write_root(Writer& writer, std::string_view name, Root root, const Table& table, Notices& notices) {
  writer.StartObject();
  writer.Key(name.data(), static_cast<rapidjson::SizeType>(name.size()));
  Walk<Writer>(writer, notices).table(root_table(root), table);
  writer.EndObject();
}

}  // namespace

void write_json(std::string& out, Root root, const Table& table, unsigned indent, Notices& notices) {
  Out stream{&out};
  JsonMemory memory;
  if (indent == 0) {
    Compact writer(stream, &memory);
    write_root(writer, name_of(root), root, table, notices);
  } else {
    Pretty writer(stream, &memory);
    writer.SetIndent(' ', indent);
    writer.SetFormatOptions(rapidjson::kFormatSingleLineArray);
    write_root(writer, name_of(root), root, table, notices);
  }
  out += '\n';
}

}  // namespace firn::exchange
