#include "exchange/caaml/foreign.h"

#include <algorithm>
#include <memory>
#include <utility>
#include <vector>

#include "exchange/caaml/names.h"
#include "exchange/caaml/reader.h"
#include "support/text.h"

namespace firn::exchange::caaml {
namespace {

using pugi::xml_attribute;
using pugi::xml_node;

// Everything that stands in an element, blanks between elements too.
constexpr unsigned kKeepAll =
    pugi::parse_cdata | pugi::parse_escapes | pugi::parse_eol | pugi::parse_ws_pcdata;
// An element deeper than this is not kept: writing it back must be safe for others.
constexpr std::size_t kMostDepth = 200;

std::string_view prefix_of(std::string_view name) {
  const std::size_t colon = name.find(':');
  return colon == std::string_view::npos ? std::string_view() : name.substr(0, colon);
}

// A qualified name of ASCII letters: other letters are allowed by XML, but not all that a parser lets pass.
bool is_qualified_name(std::string_view name) {
  const auto is_letter = [](char c) { return (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') || c == '_'; };
  bool is_first = true;
  std::size_t colons = 0;
  for (const char c : name) {
    if (c == ':' && !is_first && ++colons == 1) {
      is_first = true;
      continue;
    }
    const bool is_later = (c >= '0' && c <= '9') || c == '-' || c == '.';
    if (!is_letter(c) && (is_first || !is_later)) return false;
    is_first = false;
  }
  return !is_first;
}

// An address that every reader of namespaces takes.
bool is_address(std::string_view text) {
  return !text.empty() && std::all_of(text.begin(), text.end(), [](char c) {
    return c > ' ' && c < 0x7F && c != '"' && c != '<' && c != '>' && c != '\\' && c != '^' && c != '`' &&
           c != '{' && c != '}' && c != '|' && c != '%' && c != '[' && c != ']';
  });
}

std::string_view local_of(std::string_view name) {
  const std::size_t colon = name.find(':');
  return colon == std::string_view::npos ? name : name.substr(colon + 1);
}

// Names, values and declarations as XML and its namespaces want them; no local name twice.
bool attributes_are_sound(const xml_node& node) {
  constexpr std::size_t kMostAttributes = 64;
  std::size_t count = 0;
  for (xml_attribute attribute = node.first_attribute(); attribute; attribute = attribute.next_attribute()) {
    const std::string_view name = attribute.name();
    if (++count > kMostAttributes || !is_qualified_name(name) || !is_xml_text(attribute.value()))
      return false;
    const bool declares = name == "xmlns" || prefix_of(name) == "xmlns";
    if (declares && (!is_address(attribute.value()) || local_of(name) == "xml" || name == "xmlns:xmlns"))
      return false;
    for (xml_attribute other = attribute.next_attribute(); other; other = other.next_attribute()) {
      const std::string_view second = other.name();
      if (second == name) return false;
      if (local_of(second) == local_of(name) && prefix_of(name) != "xmlns" && prefix_of(second) != "xmlns")
        return false;
    }
  }
  return true;
}

void append_text(std::string& out, std::string_view text, bool is_attribute) {
  for (const char c : text) {
    switch (c) {
      case '&':
        out += "&amp;";
        break;
      case '<':
        out += "&lt;";
        break;
      case '>':
        out += "&gt;";
        break;
      case '"':
        out += is_attribute ? "&quot;" : "\"";
        break;
      case '\r':
        out += "&#13;";
        break;
      case '\n':
        out += is_attribute ? "&#10;" : "\n";
        break;
      case '\t':
        out += is_attribute ? "&#9;" : "\t";
        break;
      default:
        out += c;
    }
  }
}

// Writes one element with all that is in it, and declares at its start the prefixes that it uses and does not
// declare itself.
class Printer {
 public:
  // `outside` answers what a prefix stood for around the element.
  template <class Outside>
  bool print(const xml_node& root, std::string& out, Outside&& outside) {
    std::vector<std::string_view> wanted;
    if (!collect(root, wanted)) return false;
    xml_node at = root;
    std::size_t level = 0;
    while (true) {
      if (at.type() == pugi::node_element) {
        open(at, out);
        if (at == root) {
          for (const std::string_view prefix : wanted) {
            const std::string_view address = outside(prefix);
            if (address.empty()) {
              if (prefix.empty()) continue;  // in no namespace
              return false;
            }
            out += prefix.empty() ? " xmlns" : " xmlns:";
            out += prefix;
            out += "=\"";
            append_text(out, address, true);
            out += '"';
          }
        }
        if (at.first_child()) {
          out += '>';
          at = at.first_child();
          if (++level > kMostDepth) return false;
          continue;
        }
        out += "/>";
      } else if (at.type() == pugi::node_pcdata || at.type() == pugi::node_cdata) {
        if (!is_xml_text(at.value())) return false;
        append_text(out, at.value(), false);
      }
      while (at != root && !at.next_sibling()) {
        at = at.parent();
        --level;
        out += "</";
        out += at.name();
        out += '>';
      }
      if (at == root) return true;
      at = at.next_sibling();
    }
  }

 private:
  static void open(const xml_node& node, std::string& out) {
    out += '<';
    out += node.name();
    for (xml_attribute attribute = node.first_attribute(); attribute;
         attribute = attribute.next_attribute()) {
      out += ' ';
      out += attribute.name();
      out += "=\"";
      append_text(out, attribute.value(), true);
      out += '"';
    }
  }

  static bool declares(const xml_node& node, std::string_view prefix) {
    for (xml_attribute attribute = node.first_attribute(); attribute;
         attribute = attribute.next_attribute()) {
      const std::string_view name = attribute.name();
      if (name.substr(0, 5) != "xmlns") continue;
      if (prefix.empty() ? name.size() == 5 : name.size() > 6 && name.substr(6) == prefix) return true;
    }
    return false;
  }

  // The prefixes that come from outside the root. False for names that are none.
  static bool collect(const xml_node& root, std::vector<std::string_view>& wanted) {
    constexpr std::size_t kMostPrefixes = 64;
    xml_node at = root;
    std::size_t level = 0;
    const auto want = [&](std::string_view prefix, const xml_node& from) {
      if (prefix == "xml" || prefix == "xmlns") return true;
      for (xml_node around = from;; around = around.parent()) {
        if (declares(around, prefix)) return true;
        if (around == root) break;
      }
      if (std::find(wanted.begin(), wanted.end(), prefix) != wanted.end()) return true;
      if (wanted.size() == kMostPrefixes) return false;
      wanted.push_back(prefix);
      return true;
    };
    while (true) {
      if (at.type() == pugi::node_element) {
        if (!is_qualified_name(at.name()) || prefix_of(at.name()) == "xmlns" || !attributes_are_sound(at))
          return false;
        if (!want(prefix_of(at.name()), at)) return false;
        for (xml_attribute attribute = at.first_attribute(); attribute;
             attribute = attribute.next_attribute()) {
          const std::string_view prefix = prefix_of(attribute.name());
          if (!prefix.empty() && !want(prefix, at)) return false;
        }
      }
      if (at.first_child()) {
        at = at.first_child();
        if (++level > kMostDepth) return false;
        continue;
      }
      while (at != root && !at.next_sibling()) {
        at = at.parent();
        --level;
      }
      if (at == root) return true;
      at = at.next_sibling();
    }
  }
};

// Where an element's text ends at the latest: where the next one begins.
std::size_t end_before_next(const Reader& reader, const xml_node& node) {
  for (xml_node at = node; at.type() == pugi::node_element; at = at.parent()) {
    for (xml_node next = at.next_sibling(); next; next = next.next_sibling()) {
      if (next.type() == pugi::node_element) return reader.offset_of(next) - 1;
    }
  }
  return reader.source().size();
}

std::string address_in(const xml_node& node, std::string_view prefix) {
  for (xml_node at = node; at.type() == pugi::node_element; at = at.parent()) {
    for (xml_attribute attribute = at.first_attribute(); attribute; attribute = attribute.next_attribute()) {
      const std::string_view name = attribute.name();
      if (prefix.empty() ? name == "xmlns"
                         : name.size() > 6 && name.substr(0, 6) == "xmlns:" && name.substr(6) == prefix)
        return attribute.value();
    }
  }
  return {};
}

}  // namespace

void keep_foreign(Reader& reader, const xml_node& custom) {
  const xml_node first = custom.first_child();
  xml_node first_element = first;
  while (first_element && first_element.type() != pugi::node_element)
    first_element = first_element.next_sibling();
  if (!first_element) return;
  // Read once more, now with every blank: parsing ends with a fault where the element around ends, which is
  // no fault of theirs.
  const std::size_t begin = reader.offset_of(first_element) - 1;
  const std::size_t end = std::max(begin, end_before_next(reader, custom));
  pugi::xml_document whole;
  whole.load_buffer(reader.source().data() + begin, end - begin, kKeepAll, pugi::encoding_utf8);
  xml_node child = whole.first_child();
  for (xml_node known = first_element; known; known = known.next_sibling()) {
    if (known.type() != pugi::node_element) continue;
    while (child && child.type() != pugi::node_element) child = child.next_sibling();
    if (!child) break;
    const xml_node foreign = child;
    child = child.next_sibling();
    if (reader.name_of(known).space == Space::own) {
      if (!(known == reader.own())) reader.unknown(known);
      continue;
    }
    const std::string key = std::string(reader.address_of(known, prefix_of(known.name())));
    std::string text;
    const auto outside = [&](std::string_view prefix) { return reader.address_of(custom, prefix); };
    if (key.empty() || reader.name_of(known).space == Space::caaml ||
        !Printer().print(foreign, text, outside)) {
      reader.note(NoticeKind::not_understood, known,
                  "customData takes elements of other namespaces; this one was left out");
      continue;
    }
    auto extension = std::make_unique<firnbook::ExtensionT>();
    extension->key = reader.clean(key, known);
    extension->bytes.assign(text.begin(), text.end());
    extension->about = std::make_unique<firnbook::Place>(reader.about());
    reader.pit().extensions.push_back(std::move(extension));
    reader.note(NoticeKind::kept, known, "data of another program, kept as they stand");
  }
}

bool is_foreign_xml(std::string_view key, std::string_view text) {
  if (text.empty() || text[0] != '<' || key.empty() || !is_xml_text(text)) return false;
  pugi::xml_document document;
  if (!document.load_buffer(
          text.data(), text.size(),
          kKeepAll | pugi::parse_fragment | pugi::parse_doctype | pugi::parse_pi | pugi::parse_declaration,
          pugi::encoding_utf8)) {
    return false;
  }
  const xml_node root = document.first_child();
  if (root.type() != pugi::node_element || root.next_sibling()) return false;
  const std::string address = address_in(root, prefix_of(root.name()));
  // Elements that the standard's own schemas describe would be held against them.
  if (address != key || key == kNamespace6 || key == kNamespaceOwn) return false;
  if (text.find(kNamespaceGml) != std::string_view::npos ||
      text.find(kNamespaceInstance) != std::string_view::npos ||
      text.find(kNamespace6Stem) != std::string_view::npos || text.find("xml:") != std::string_view::npos) {
    return false;
  }
  std::string again;
  return Printer().print(root, again, [](std::string_view) { return std::string_view(); }) && again == text;
}

}  // namespace firn::exchange::caaml
