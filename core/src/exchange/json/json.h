// The schemas as JSON. One document holds one pit, one report or one set of bulletins:
//
//   {"pit": {"title": "…", "layers": [{"top": {"value_10um": 0, "datum": "surface"}, …}], …}}
//
// Names are the schema's; enumerations are the trade's codes where it has any, else the schema's names;
// what is absent was not observed. README.md says the rest. One walk over the schema's rows writes all of it,
// another reads it.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "exchange/json/rows.h"
#include "exchange/notices.h"
#include "schemas/pit_generated.h"
#include "support/result.h"

namespace firn::exchange {

// Appends the document. `table` must have been verified as what `root` says. Texts that are not UTF-8 are
// left out with a notice. `indent` is 0 for one line, else blanks for each level.
void write_json(std::string& out, Root root, const flatbuffers::Table& table, unsigned indent,
                Notices& notices);

// A member that no row knows, as it stands in the text.
struct UnknownMember {
  std::string pointer;  // RFC 6901, from the document's root
  std::string text;
};

struct JsonRead {
  Root root = Root::pit;
  std::vector<std::uint8_t> bytes;  // of the schema, by the order of the document
  std::vector<UnknownMember> unknown;
};

// Strict: the first thing that is wrong ends the reading, with its path, line and column. Members that are
// not known are passed over, noticed and answered.
Result<JsonRead> read_json(std::string_view text, const Limits& limits, Notices& notices);

// Whether a text is a document of ours, by its first member.
bool looks_like_json(std::string_view text);

}  // namespace firn::exchange
