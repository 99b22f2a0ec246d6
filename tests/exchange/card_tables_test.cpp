// core/src/exchange/card/TABLES.md: what README.md refers to, printed from the tables that the library uses.
// FIRN_REGENERATE=1 prints it anew; once version 1 is released, only to append.
#include <cstdint>
#include <cstdlib>
#include <fstream>
#include <iterator>
#include <map>

#include "card_help.h"
#include "exchange/card/layouts.h"
#include "support/form.h"
#include "support/text.h"

namespace firn::tests {
namespace {

using exchange::card::Code;
using exchange::card::Layout;
using exchange::card::Ranks;
using exchange::card::Units;
using exchange::card::Way;

std::string number(std::int64_t value) {
  std::string out;
  append_integer(out, value);
  return out;
}

std::string listed(const Ranks& ranks) {
  std::string out = "order " + number(ranks.order) + ":";
  for (std::size_t i = 0; i < ranks.count; ++i) out += " " + number(ranks.values[i]);
  return out;
}

std::string listed(const Units& units) {
  std::string out = units.is_signed ? "signed;" : "";
  for (std::size_t i = 0; i < units.count; ++i) {
    out += (out.empty() ? "" : " ") + number(units.units[i].size) + " (order " +
           number(units.units[i].order) + ")";
  }
  return out;
}

std::string way_of(const Code& code, const std::string& child) {
  const std::string order = "order " + number(code.order);
  switch (code.way) {
    case Way::none:
      return "never | ";
    case Way::flag:
      return "flag | ";
    case Way::code:
      return "code | " + listed(*code.ranks);
    case Way::number:
      return "number | " + listed(*code.units);
    case Way::change:
      return "change | " + listed(*code.units);
    case Way::marks:
      return "marks | ";
    case Way::next_top:
      return "next top | " + order;
    case Way::next_depth:
      return "next depth | " + order;
    case Way::below_top:
      return "below top | " + order;
    case Way::at_boundary:
      return "at boundary | " + order;
    case Way::boundaries:
      return "boundaries | " + order;
    case Way::text:
      return "text | ";
    case Way::moment:
      return "moment | ";
    case Way::time_span:
      return "time span | ";
    case Way::place:
      return "place | ";
    case Way::table:
      return "table | " + child;
    case Way::tables:
      return "tables | " + order + ": " + child;
    case Way::numbers:
      return "numbers | ";
    case Way::codes:
      return "codes | " + listed(*code.ranks);
  }
  return {};
}

std::string names(std::uint64_t set, const form::Table& table) {
  std::string out;
  for (std::size_t i = 0; i < table.count; ++i) {
    if ((set >> i & 1) != 0) out += (out.empty() ? "" : ", ") + std::string(table.name_of(i));
  }
  return out;
}

class Tables {
 public:
  std::string print() {
    table("pit", exchange::card::kPitLayout, form::table_of<firnbook::PitT>());
    return "# Tables of the card, version 1\n\nPrinted by tests/exchange/card_tables_test.cpp from the "
           "tables that the "
           "library uses. README.md says\nhow to read them. Enumerations stand as the numbers of "
           "schemas/vocabulary.fbs.\n" +
           out_;
  }

 private:
  // A table is named by the field that holds it; layers stand in two places and are printed once.
  void table(const std::string& name, const Layout& layout, const form::Table& table) {
    if (!names_.emplace(&layout, name).second) return;
    std::string text = "\n## " + name + "\n\nShapes, order " + number(layout.shape_order) + ":\n\n";
    for (std::size_t i = 0; i < layout.shape_count; ++i) {
      text += number(static_cast<std::int64_t>(i)) + ". " + names(layout.shapes[i], table) + "\n";
    }
    text += number(layout.shape_count) + ". one by one; usual: " + names(layout.usual, table) + "\n";
    text += "\n| id | field | way | |\n|---|---|---|---|\n";
    out_ += text;
    std::string rows;
    for (std::size_t i = 0; i < layout.count; ++i) {
      const Code& code = layout.codes[i];
      const std::string field(table.name_of(i));
      std::string child;
      if (code.layout != nullptr) {
        const auto known = names_.find(code.layout);
        child = known != names_.end() ? known->second : name == "pit" ? field : name + "." + field;
      }
      rows +=
          "| " + number(static_cast<std::int64_t>(i)) + " | " + field + " | " + way_of(code, child) + " |\n";
    }
    out_ += rows;
    for (std::size_t i = 0; i < layout.count; ++i) {
      const Code& code = layout.codes[i];
      const std::string field(table.name_of(i));
      if (code.layout == nullptr) continue;
      this->table(name == "pit" ? field : name + "." + field, *code.layout, *table.first[i].table);
    }
  }

  std::string out_;
  std::map<const Layout*, std::string> names_;
};

TEST(CardTables, ArePrintedAsTheyAre) {
  const std::string path = FIRN_SOURCE_DIR "/core/src/exchange/card/TABLES.md";
  const std::string printed = Tables().print();
  if (std::getenv("FIRN_REGENERATE") != nullptr) std::ofstream(path, std::ios::binary) << printed;
  std::ifstream file(path, std::ios::binary);
  const std::string stored{std::istreambuf_iterator<char>(file), {}};
  EXPECT_EQ(stored, printed);
}

// --- the worked example of README.md ---------------------------------------------------------------------

std::string between(const std::string& text, const std::string& before, const std::string& after) {
  const std::size_t from = text.find(before);
  EXPECT_NE(from, std::string::npos) << before;
  if (from == std::string::npos) return {};
  const std::size_t start = from + before.size();
  return text.substr(start, text.find(after, start) - start);
}

// The bits in the first column: | `0001` | major version |
Bytes bits_of_rows(const std::string& rows) {
  std::string bits;
  for (std::size_t at = rows.find("\n| `"); at != std::string::npos; at = rows.find("\n| `", at + 1)) {
    const std::size_t start = at + 4;
    for (const char c : rows.substr(start, rows.find('`', start) - start)) {
      if (c == '0' || c == '1') bits += c;
    }
  }
  EXPECT_EQ(bits.size() % 8, 0u);
  Bytes bytes(bits.size() / 8, 0);
  for (std::size_t i = 0; i < bits.size(); ++i) {
    if (bits[i] == '1') bytes[i / 8] = static_cast<std::uint8_t>(bytes[i / 8] | 0x80u >> i % 8);
  }
  return bytes;
}

TEST(CardTables, TheWorkedExampleOfTheReadmeIsTheCardOfItsPit) {
  std::ifstream file(FIRN_SOURCE_DIR "/core/src/exchange/card/README.md", std::ios::binary);
  const std::string readme{std::istreambuf_iterator<char>(file), {}};
  const std::string example = readme.substr(std::min(readme.size(), readme.find("## A worked example")));
  const Bytes pit = bytes_of(between(example, "```\n", "```"));
  const Bytes card = card_of(pit);
  Bytes told = bits_of_rows(example);
  seal(told);
  EXPECT_EQ(told, card);
  const std::string text = between(example, "Base45: `", "`");
  EXPECT_EQ(text, exchange::card::to_base45(card));
  std::string checksum;
  for (std::size_t i = card.size() - 4; i < card.size(); ++i) {
    const char* const kDigits = "0123456789abcdef";
    checksum += kDigits[card[i] >> 4];
    checksum += kDigits[card[i] & 15];
  }
  EXPECT_EQ(between(example, "checksum: `", "`"), checksum);
}

}  // namespace
}  // namespace firn::tests
