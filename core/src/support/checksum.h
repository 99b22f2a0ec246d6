// CRC-32 (the polynomial of ISO 3309 and PNG), for telling bytes apart; not a protection against forgery.
#pragma once

#include <cstddef>
#include <cstdint>

namespace firn {

std::uint32_t crc32(const std::uint8_t* bytes, std::size_t size);

}  // namespace firn
