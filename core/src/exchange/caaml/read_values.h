// What the codecs do when a document is read; codecs.cpp pairs them with what is written.
#pragma once

#include "exchange/caaml/reader.h"

namespace firn::exchange::caaml::reading {

using pugi::xml_node;

void text(Reader& reader, const Row& row, const xml_node& node);
void country(Reader& reader, const Row& row, const xml_node& node);
void code(Reader& reader, const Row& row, const xml_node& node);
void number(Reader& reader, const Row& row, const xml_node& node);
void moment(Reader& reader, const Row& row, const xml_node& node);
void span(Reader& reader, const Row& row, const xml_node& node);
void depth(Reader& reader, const Row& row, const xml_node& node);
void thickness(Reader& reader, const Row& row, const xml_node& node);
void grain_size(Reader& reader, const Row& row, const xml_node& node);
void wind(Reader& reader, const Row& row, const xml_node& node);
void aspect(Reader& reader, const Row& row, const xml_node& node);
void position(Reader& reader, const Row& row, const xml_node& node);
void sky(Reader& reader, const Row& row, const xml_node& node);
void precipitation(Reader& reader, const Row& row, const xml_node& node);
void character(Reader& reader, const Row& row, const xml_node& node);
void concern(Reader& reader, const Row& row, const xml_node& node);
void uncertainty(Reader& reader, const Row& row, const xml_node& node);
void fraction(Reader& reader, const Row& row, const xml_node& node);
void fraction_uncertainty(Reader& reader, const Row& row, const xml_node& node);
void tuples(Reader& reader, const Row& row, const xml_node& node);
void range(Reader& reader, const Row& row, const xml_node& node);
void new_snow(Reader& reader, const Row& row, const xml_node& node);
void source(Reader& reader, const Row& row, const xml_node& node);
void tests(Reader& reader, const Row& row, const xml_node& node);
void root_custom(Reader& reader, const Row& row, const xml_node& node);

// Puts the value of a code that the text spells; refuses others.
bool take_code(Reader& reader, const Row& row, const xml_node& node, std::string_view text,
               const CodeTable& codes);

}  // namespace firn::exchange::caaml::reading
