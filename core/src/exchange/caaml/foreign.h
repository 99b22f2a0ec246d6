// customData of other programs: kept as it stands, each element a text of its own.
#pragma once

#include <pugixml.hpp>
#include <string>
#include <string_view>

namespace firn::exchange::caaml {

class Reader;

// Keeps what is not ours in a customData element as extensions of the pit.
void keep_foreign(Reader& reader, const pugi::xml_node& custom);

// Whether an extension is one XML element that may stand in customData as it is, and comes back the same.
bool is_foreign_xml(std::string_view key, std::string_view text);

}  // namespace firn::exchange::caaml
