// Bytes as text: RFC 4648, with padding. There is one text for the same bytes.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace firn {

void append_base64(std::string& out, const std::uint8_t* bytes, std::size_t size);
// Appends to `bytes`. False when the text is anything else.
bool parse_base64(std::string_view text, std::vector<std::uint8_t>& bytes);

}  // namespace firn
