// JSON as a flat tree over its own text. A text that breaks off gives what came before, with a mark on every
// object and list that was open.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "support/result.h"

namespace firn::bulletin {

inline constexpr std::int32_t kNoNode = -1;

enum class JsonType : std::uint8_t { null, boolean, number, string, object, list };

struct JsonNode {
  std::uint32_t begin, end;             // in the text, of the value as a whole
  std::uint32_t key_begin, key_size;    // in the strings, for a member of an object
  std::uint32_t text_begin, text_size;  // in the strings, for a string
  std::int32_t first, next;             // first child, next sibling
  JsonType type;
  bool is_true;
  bool cut;  // the text broke off inside
};

// Something that was mended so that reading could go on.
struct JsonMend {
  std::uint32_t at;
  const char* what;
};

class Json {
 public:
  // Most of anything that a text may hold; what lies beyond is left out with a message, or refused.
  static constexpr std::size_t kMostNodes = 500000;
  static constexpr std::size_t kMostDepth = 200;

  // Reads all that can be read. False when the text broke off or is no JSON: `broken` says what and
  // `broken_at` where. There may be no node at all.
  bool read(std::string_view text);

  const std::vector<JsonNode>& nodes() const { return nodes_; }
  const JsonNode& node(std::int32_t index) const { return nodes_[static_cast<std::size_t>(index)]; }
  bool empty() const { return nodes_.empty(); }
  // The value as it stands in the text, a number's digits for example.
  std::string_view raw(const JsonNode& node) const;
  std::string_view string(const JsonNode& node) const;
  std::string_view key(const JsonNode& node) const;

  const std::vector<JsonMend>& mends() const { return mends_; }
  const char* broken() const { return broken_; }
  std::uint32_t broken_at() const { return broken_at_; }

  struct LineColumn {
    std::uint32_t line, column;
  };
  LineColumn line_column(std::uint32_t at) const;

 private:
  friend class JsonBuilder;

  void mend();
  void mend_string(std::size_t& at);
  void mend_number(std::size_t& at);
  void note(std::size_t at, const char* what);

  std::string text_, strings_;
  std::vector<JsonNode> nodes_;
  std::vector<JsonMend> mends_;
  std::vector<std::uint32_t> line_ends_;
  const char* broken_ = nullptr;
  std::uint32_t broken_at_ = 0;
};

}  // namespace firn::bulletin
