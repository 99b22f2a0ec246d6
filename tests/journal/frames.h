// A reader of journals that shares no code with the library: written from the table in schemas/README.md.
#pragma once

#include <cstdint>
#include <map>
#include <string>
#include <utility>

namespace journal {

inline std::uint64_t number_at(const std::string& bytes, std::size_t at, int size) {
  std::uint64_t value = 0;
  for (int i = size; i-- > 0;)
    value = value << 8 | static_cast<unsigned char>(bytes[at + static_cast<std::size_t>(i)]);
  return value;
}

inline std::uint32_t crc32(const std::string& bytes, std::size_t from, std::size_t size) {
  std::uint32_t crc = ~0u;
  for (std::size_t i = from; i < from + size; ++i) {
    crc ^= static_cast<unsigned char>(bytes[i]);
    for (int bit = 0; bit < 8; ++bit) crc = crc >> 1 ^ (crc & 1 ? 0xEDB88320u : 0u);
  }
  return ~crc;
}

// Payload of each whole frame by device and sequence, as far as frames follow each other; what comes behind
// the last whole one is left alone.
inline std::map<std::pair<std::uint64_t, std::uint64_t>, std::string> read_frames(const std::string& bytes) {
  std::map<std::pair<std::uint64_t, std::uint64_t>, std::string> frames;
  std::size_t at = 0;
  while (at + 40 <= bytes.size() && bytes.compare(at, 4,
                                                  "\xFE"
                                                  "FJ\xFF") == 0) {
    const std::size_t size = number_at(bytes, at + 24, 4);
    const std::size_t room = (size + 7) / 8 * 8;
    if (crc32(bytes, at, 36) != number_at(bytes, at + 36, 4) || room > bytes.size() - at - 40) break;
    if (crc32(bytes, at + 40, room) != number_at(bytes, at + 32, 4)) break;
    frames[{number_at(bytes, at + 8, 8), number_at(bytes, at + 16, 8)}] = bytes.substr(at + 40, size);
    at += 40 + room;
  }
  return frames;
}

}  // namespace journal
