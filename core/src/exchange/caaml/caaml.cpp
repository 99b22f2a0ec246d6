#include "exchange/caaml/caaml.h"

#include <cstring>
#include <pugixml.hpp>

#include "exchange/caaml/own.h"
#include "exchange/caaml/reader.h"
#include "exchange/caaml/writer.h"
#include "support/text.h"

namespace firn::exchange {

using caaml::Reader;
using pugi::xml_document;
using pugi::xml_node;

namespace {

// Blanks are kept where they are all that an element holds. A document type is looked for, to be refused.
constexpr unsigned kParse = pugi::parse_cdata | pugi::parse_escapes | pugi::parse_eol |
                            pugi::parse_ws_pcdata_single | pugi::parse_doctype | pugi::parse_wconv_attribute;

Failure at(Failure failure, std::string_view text, std::size_t offset) {
  offset = std::min(offset, text.size());
  failure.line = 1;
  std::size_t start = 0;
  for (std::size_t i = 0; i < offset; ++i) {
    if (text[i] != '\n') continue;
    ++failure.line;
    start = i + 1;
  }
  failure.column = static_cast<std::uint32_t>(offset - start + 1);
  return failure;
}

// The first byte that is no UTF-8, or a control character that XML does not have; the size when there is
// none.
std::size_t first_bad_byte(std::string_view text) {
  constexpr std::size_t kBlock = 64;
  std::size_t i = 0;
  while (i < text.size()) {
    if (i + kBlock <= text.size()) {
      // Plain text in one go: a loop of fixed length that the compiler turns into a few wide steps.
      unsigned char suspects = 0;
      for (std::size_t k = 0; k < kBlock; ++k) {
        const auto c = static_cast<unsigned char>(text[i + k]);
        suspects |= static_cast<unsigned char>((c < 0x20) & (c != '\n') & (c != '\r') & (c != '\t')) |
                    static_cast<unsigned char>(c >> 7);
      }
      if (suspects == 0) {
        i += kBlock;
        continue;
      }
    }
    const auto byte = static_cast<unsigned char>(text[i]);
    if (byte < 0x20 && byte != '\n' && byte != '\r' && byte != '\t') return i;
    const std::size_t length = byte < 0x80 ? 1 : utf8_length(text.substr(i, 4));
    if (length == 0) return i;
    i += length;
  }
  return i;
}

bool starts_with(std::string_view text, std::string_view with) {
  return text.substr(0, with.size()) == with;
}

// The encoding that the declaration names, in small letters.
std::string declared_encoding(std::string_view text) {
  if (!starts_with(text, "<?xml")) return {};
  const std::string_view declaration = text.substr(0, text.find("?>"));
  const std::size_t name = declaration.find("encoding");
  if (name == std::string_view::npos) return {};
  const std::size_t open = declaration.find_first_of("\"'", name);
  if (open == std::string_view::npos) return {};
  std::string encoding(
      declaration.substr(open + 1, declaration.find(declaration[open], open + 1) - open - 1));
  for (char& c : encoding) c = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  return encoding;
}

std::string from_latin1(std::string_view text) {
  std::string out;
  out.reserve(text.size() + text.size() / 8);
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    if (byte < 0x80) {
      out += c;
    } else {
      out += static_cast<char>(0xC0 | byte >> 6);
      out += static_cast<char>(0x80 | (byte & 0x3F));
    }
  }
  return out;
}

Failure damaged(std::string_view what, std::string_view remedy) {
  return failure_of(FIRN_DAMAGED, what, remedy);
}

constexpr std::string_view kExpected =
    "a snow profile has the root SnowProfile in the namespace "
    "http://caaml.org/Schemas/SnowProfileIACS/v6.0.4, in "
    "an earlier one of 6.0, or in http://caaml.org/Schemas/V5.0/Profiles/SnowProfileIACS";

Result<std::unique_ptr<firnbook::PitT>> read_document(std::string_view text, const Limits& limits,
                                                      Notices& notices) {
  const std::size_t bad = first_bad_byte(text);
  if (bad != text.size()) {
    return at(failure_of(FIRN_BAD_UTF8, "the document holds bytes that are not UTF-8, or a control character",
                         "save it as UTF-8"),
              text, bad);
  }
  xml_document document;
  const pugi::xml_parse_result parsed =
      document.load_buffer(text.data(), text.size(), kParse, pugi::encoding_utf8);
  for (xml_node node = document.first_child(); node; node = node.next_sibling()) {
    if (node.type() != pugi::node_doctype) continue;
    return damaged(
        "the document carries a document type, which is refused: it can name files and grow without end",
        "take the DOCTYPE out; the standard needs none");
  }
  if (!parsed) {
    const bool is_memory = parsed.status == pugi::status_out_of_memory;
    if (is_memory) return failure_of(FIRN_OUT_OF_MEMORY, "there is no memory for the document", "free some");
    std::string what = "this is no XML: ";
    what += parsed.description();
    return at(damaged(what, "see line and column"), text, static_cast<std::size_t>(parsed.offset));
  }
  const xml_node root = document.document_element();
  Reader reader(text, limits, notices);
  const std::string_view address = reader.declare(root);
  const bool is_6 = starts_with(address, caaml::kNamespace6Stem);
  if ((!is_6 && address != caaml::kNamespace5) || reader.name_of(root).local != "SnowProfile") {
    std::string what = "this is no snow profile of the standard: its root is ";
    what += is_utf8(root.name()) ? root.name() : "";
    what += " in the namespace \"";
    what += address.substr(0, 200);
    what += '"';
    return at(failure_of(FIRN_WRONG_KIND, what, kExpected), text, reader.offset_of(root));
  }
  if (is_6 && address > caaml::kNamespace6) {
    reader.note(NoticeKind::changed, root,
                "a version newer than 6.0.4: what it added is listed as not understood");
  }
  auto pit = std::make_unique<firnbook::PitT>();
  if (!reader.read(root, is_6 ? caaml::kVersion6 : caaml::kVersion5, *pit)) {
    return failure_of(FIRN_TOO_LARGE, "elements stand deeper inside each other than the limits allow",
                      "no snow profile is that deep; the limit is the caller's to set");
  }
  if (reader.own()) caaml::apply_own(reader, reader.own());
  return pit;
}

}  // namespace

Result<std::unique_ptr<firnbook::PitT>> read_caaml(std::string_view text, const Limits& limits,
                                                   Notices& notices) {
  if (text.size() > limits.max_bytes) {
    return failure_of(FIRN_TOO_LARGE, "the document is larger than the limits allow",
                      "the limit is the caller's to set");
  }
  if (starts_with(text, "\xEF\xBB\xBF")) text.remove_prefix(3);
  if (starts_with(text, "\xFF\xFE") || starts_with(text, "\xFE\xFF") ||
      text.substr(0, 4).find('\0') != std::string_view::npos) {
    return failure_of(FIRN_BAD_UTF8, "the document is in UTF-16 or UTF-32", "save it as UTF-8");
  }
  const std::string encoding = declared_encoding(text);
  if (encoding.empty() || encoding == "utf-8" || encoding == "utf8" || encoding == "us-ascii") {
    return read_document(text, limits, notices);
  }
  if (encoding == "iso-8859-1" || encoding == "latin1" || encoding == "latin-1") {
    notices.add({NoticeKind::changed, 1, 1, {}, "converted from ISO 8859-1"});
    return read_document(from_latin1(text), limits, notices);
  }
  return failure_of(FIRN_BAD_UTF8, "the document is in an encoding that is not read here",
                    "save it as UTF-8");
}

Done write_caaml(std::string& out, const firnbook::Pit& pit, Notices& notices) {
  caaml::Writer(out, pit, notices).write();
  return done();
}

}  // namespace firn::exchange
