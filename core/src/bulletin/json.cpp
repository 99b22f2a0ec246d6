#include "bulletin/json.h"

#include <algorithm>
#include <cstring>
#include <new>

#include "support/json_parser.h"
#include "support/text.h"

namespace firn::bulletin {
namespace {

bool is_blank(char byte) {
  return byte == ' ' || byte == '\t' || byte == '\n' || byte == '\r';
}
bool is_digit(char byte) {
  return byte >= '0' && byte <= '9';
}

// Where a value begins: behind what was read last, and behind what JSON puts between values.
std::uint32_t begin_after(std::string_view text, std::size_t at) {
  while (at < text.size() && (is_blank(text[at]) || text[at] == ',' || text[at] == ':')) ++at;
  return static_cast<std::uint32_t>(at);
}

std::int32_t hex_of(char byte) {
  if (is_digit(byte)) return byte - '0';
  if (byte >= 'a' && byte <= 'f') return byte - 'a' + 10;
  if (byte >= 'A' && byte <= 'F') return byte - 'A' + 10;
  return -1;
}

// The number of an escape such as \ud83d at this place, or -1.
std::int32_t escape_at(std::string_view text, std::size_t at) {
  if (at + 6 > text.size() || text[at] != '\\' || text[at + 1] != 'u') return -1;
  std::int32_t value = 0;
  for (std::size_t i = 2; i < 6; ++i) {
    const std::int32_t digit = hex_of(text[at + i]);
    if (digit < 0) return -1;
    value = value * 16 + digit;
  }
  return value;
}

bool is_high(std::int32_t code) {
  return code >= 0xD800 && code <= 0xDBFF;
}
bool is_low(std::int32_t code) {
  return code >= 0xDC00 && code <= 0xDFFF;
}

}  // namespace

// Receives what the parser finds and hangs it into the tree.
class JsonBuilder {
 public:
  JsonBuilder(Json& json, const JsonText& stream) : json_(json), stream_(stream) {}

  bool Null() { return leaf(JsonType::null); }
  bool Bool(bool value) {
    const bool going_on = leaf(JsonType::boolean);
    if (going_on) json_.nodes_.back().is_true = value;
    return going_on;
  }
  bool Int(int) { return leaf(JsonType::number); }
  bool Uint(unsigned) { return leaf(JsonType::number); }
  bool Int64(std::int64_t) { return leaf(JsonType::number); }
  bool Uint64(std::uint64_t) { return leaf(JsonType::number); }
  bool Double(double) { return leaf(JsonType::number); }
  bool RawNumber(const char*, rapidjson::SizeType, bool) { return leaf(JsonType::number); }
  bool String(const char* text, rapidjson::SizeType size, bool) {
    if (!leaf(JsonType::string)) return false;
    keep(text, size, json_.nodes_.back().text_begin, json_.nodes_.back().text_size);
    return true;
  }
  bool Key(const char* text, rapidjson::SizeType size, bool) {
    keep(text, size, key_begin_, key_size_);
    last_end_ = stream_.Tell();
    return true;
  }
  bool StartObject() { return open(JsonType::object); }
  bool StartArray() { return open(JsonType::list); }
  bool EndObject(rapidjson::SizeType) { return close(); }
  bool EndArray(rapidjson::SizeType) { return close(); }

  // What is still open was cut off where the text broke.
  void cut(std::size_t at) {
    for (const Open& one : open_) {
      JsonNode& node = json_.nodes_[one.node];
      node.cut = true;
      node.end = static_cast<std::uint32_t>(at);
    }
  }
  const char* refused() const { return refused_; }

 private:
  struct Open {
    std::uint32_t node;
    std::int32_t last_child;
  };

  bool refuse(const char* why) {
    refused_ = why;
    return false;
  }

  bool add(JsonType type, std::uint32_t begin) {
    if (json_.nodes_.size() >= Json::kMostNodes) return refuse("the text holds more values than are read");
    const auto index = static_cast<std::int32_t>(json_.nodes_.size());
    JsonNode node = {};
    node.begin = begin;
    node.end = begin;
    node.key_begin = key_begin_;
    node.key_size = key_size_;
    node.first = kNoNode;
    node.next = kNoNode;
    node.type = type;
    key_size_ = 0;
    json_.nodes_.push_back(node);
    if (open_.empty()) return true;
    Open& parent = open_.back();
    if (parent.last_child == kNoNode) {
      json_.nodes_[parent.node].first = index;
    } else {
      json_.nodes_[static_cast<std::size_t>(parent.last_child)].next = index;
    }
    parent.last_child = index;
    return true;
  }

  bool leaf(JsonType type) {
    if (!add(type, begin_after(json_.text_, last_end_))) return false;
    last_end_ = stream_.Tell();
    json_.nodes_.back().end = static_cast<std::uint32_t>(last_end_);
    return true;
  }

  // The parser tells of brackets before it takes them.
  bool open(JsonType type) {
    if (open_.size() >= Json::kMostDepth) return refuse("objects and lists are nested deeper than is read");
    if (!add(type, static_cast<std::uint32_t>(stream_.Tell()))) return false;
    open_.push_back({static_cast<std::uint32_t>(json_.nodes_.size() - 1), kNoNode});
    last_end_ = stream_.Tell() + 1;
    return true;
  }
  bool close() {
    last_end_ = stream_.Tell() + 1;
    json_.nodes_[open_.back().node].end = static_cast<std::uint32_t>(last_end_);
    open_.pop_back();
    return true;
  }

  // Bytes that are not UTF-8 become U+FFFD: nobody loses a bulletin over one letter of its prose.
  void keep(const char* bytes, std::size_t size, std::uint32_t& begin, std::uint32_t& kept) {
    std::string_view text(bytes, size);
    begin = static_cast<std::uint32_t>(json_.strings_.size());
    bool mended = false;
    while (!text.empty()) {
      const std::size_t length = utf8_length(text);
      if (length == 0) {
        json_.strings_ += "\xEF\xBF\xBD";
        mended = true;
      } else {
        json_.strings_.append(text.substr(0, length));
      }
      text.remove_prefix(length == 0 ? 1 : length);
    }
    kept = static_cast<std::uint32_t>(json_.strings_.size() - begin);
    if (mended) json_.note(begin_after(json_.text_, last_end_), "bytes that are not UTF-8 stand in a text");
  }

  Json& json_;
  const JsonText& stream_;
  std::vector<Open> open_;
  std::size_t last_end_ = 0;
  std::uint32_t key_begin_ = 0, key_size_ = 0;
  const char* refused_ = nullptr;
};

// Every mend of the same kind after the first few says nothing new.
void Json::note(std::size_t at, const char* what) {
  constexpr std::size_t kMost = 20;
  if (mends_.size() < kMost) mends_.push_back({static_cast<std::uint32_t>(at), what});
}

// Half of a surrogate pair, and line breaks and tabs as they are: the parser would stop at each, and neither
// is worth a bulletin. All mends keep the length, so that places in the text stay where they are.
void Json::mend_string(std::size_t& at) {
  ++at;
  while (at < text_.size() && text_[at] != '"') {
    if (static_cast<unsigned char>(text_[at]) < 0x20) {
      note(at, "a control character stands in a text as it is");
      text_[at] = ' ';
    }
    if (text_[at] != '\\') {
      ++at;
      continue;
    }
    const std::int32_t code = escape_at(text_, at);
    if (is_high(code) && is_low(escape_at(text_, at + 6))) {
      at += 12;
    } else if (is_high(code) || is_low(code)) {
      note(at, "half of a pair of surrogates stands in a text");
      text_.replace(at, 6, "\\uFFFD");
      at += 6;
    } else {
      at += 2;
    }
  }
  if (at < text_.size()) ++at;
}

// No number of a bulletin has more than a few digits. One that no machine can hold is none.
void Json::mend_number(std::size_t& at) {
  constexpr std::size_t kLongest = 40;
  const std::size_t begin = at;
  std::size_t exponent = 0, digits = 0;
  bool has_exponent = false;
  while (at < text_.size() && (is_digit(text_[at]) || text_[at] == '.' || text_[at] == '+' ||
                               text_[at] == '-' || text_[at] == 'e' || text_[at] == 'E')) {
    if (text_[at] == 'e' || text_[at] == 'E') {
      has_exponent = true;
    } else if (has_exponent && is_digit(text_[at])) {
      if (exponent != 0 || text_[at] != '0') ++exponent;
    }
    if (is_digit(text_[at])) ++digits;
    ++at;
  }
  const bool fits = at - begin <= kLongest && exponent <= 2;
  if (fits || digits < 4) return;
  note(begin, "a number that is far too large or too long was left out");
  text_.replace(begin, at - begin, "null" + std::string(at - begin - 4, ' '));
}

void Json::mend() {
  line_ends_.clear();
  for (std::size_t i = 0; i < text_.size(); ++i) {
    if (text_[i] == '\n') line_ends_.push_back(static_cast<std::uint32_t>(i));
  }
  std::size_t at = 0;
  while (at < text_.size()) {
    if (text_[at] == '"') {
      mend_string(at);
    } else if (is_digit(text_[at]) || text_[at] == '-') {
      mend_number(at);
    } else {
      ++at;
    }
  }
}

bool Json::read(std::string_view text) {
  text_.assign(text);
  strings_.clear();
  nodes_.clear();
  mends_.clear();
  broken_ = nullptr;
  broken_at_ = 0;
  mend();

  constexpr unsigned kFlags = rapidjson::kParseIterativeFlag | rapidjson::kParseNumbersAsStringsFlag;
  JsonText stream = {text_.data(), text_.data(), text_.data() + text_.size()};
  JsonBuilder builder(*this, stream);
  JsonMemory memory;
  rapidjson::GenericReader<rapidjson::UTF8<>, rapidjson::UTF8<>, JsonMemory> reader(&memory);
  const rapidjson::ParseResult result = reader.Parse<kFlags>(stream, builder);
  // A zero byte stops the parser without an error when it follows the value.
  const std::size_t left = begin_after(text_, stream.Tell());
  if (!result.IsError() && left >= text_.size()) return true;
  const std::size_t at = result.IsError() ? result.Offset() : left;
  broken_at_ = static_cast<std::uint32_t>(at < text_.size() ? at : text_.size());
  broken_ = builder.refused() != nullptr ? builder.refused()
            : result.IsError()
                ? words_of_json_error(result.Code(), begin_after(text_, stream.Tell()) >= text_.size())
                : words_of_json_error(rapidjson::kParseErrorDocumentRootNotSingular, false);
  builder.cut(broken_at_);
  return false;
}

std::string_view Json::raw(const JsonNode& node) const {
  return std::string_view(text_).substr(node.begin, node.end < node.begin ? 0 : node.end - node.begin);
}
std::string_view Json::string(const JsonNode& node) const {
  return std::string_view(strings_).substr(node.text_begin, node.text_size);
}
std::string_view Json::key(const JsonNode& node) const {
  return std::string_view(strings_).substr(node.key_begin, node.key_size);
}

Json::LineColumn Json::line_column(std::uint32_t at) const {
  const auto after = std::lower_bound(line_ends_.begin(), line_ends_.end(), at);
  const std::uint32_t begin = after == line_ends_.begin() ? 0 : *(after - 1) + 1;
  return {static_cast<std::uint32_t>(after - line_ends_.begin()) + 1, at - begin + 1};
}

}  // namespace firn::bulletin
