// Text into a field of fixed size: for messages that must get out when there is no memory left.
#pragma once

#include <cstddef>
#include <string_view>

namespace firn {

// Copies as many whole characters as fit before the closing NUL. Control characters and bytes that are not
// UTF-8 become "?", so that text of others cannot command a terminal. `size` is at least 1.
void copy_text(char* to, std::size_t size, std::string_view text) noexcept;

// True for text that holds a control character other than tab and newline.
bool has_control(std::string_view text) noexcept;

}  // namespace firn
