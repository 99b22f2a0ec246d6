#include "recording/journal.h"

#include <algorithm>
#include <cstring>
#include <utility>

#include "support/checksum.h"

namespace firn::recording {
namespace {

// FE and FF stand nowhere in UTF-8, and seldom in an edit.
constexpr std::uint8_t kMarker[4] = {0xFE, 'F', 'J', 0xFF};

// Places in a head.
constexpr std::size_t kVersionAt = 4;
constexpr std::size_t kKindAt = 5;
constexpr std::size_t kReservedAt = 6;
constexpr std::size_t kDeviceAt = 8;
constexpr std::size_t kSequenceAt = 16;
constexpr std::size_t kLengthAt = 24;
constexpr std::size_t kPitAt = 28;
constexpr std::size_t kPayloadChecksumAt = 32;
constexpr std::size_t kHeadChecksumAt = 36;

// A payload whose checksum fails was read in vain, and hostile heads can claim the same bytes over and over.
// Sixteen times what a journal holds is more than tearing and damage can ask for.
constexpr std::size_t kReadInVain = 16;

void put(Bytes& out, std::uint64_t value, std::size_t bytes) {
  for (std::size_t i = 0; i < bytes; ++i) out.push_back(static_cast<std::uint8_t>(value >> (8 * i)));
}

std::uint64_t get(const std::uint8_t* from, std::size_t bytes) {
  std::uint64_t value = 0;
  for (std::size_t i = 0; i < bytes; ++i) value |= std::uint64_t{from[i]} << (8 * i);
  return value;
}
std::uint32_t get32(const std::uint8_t* from) {
  return static_cast<std::uint32_t>(get(from, 4));
}

std::uint64_t padded(std::uint64_t size) {
  return (size + kFrameAlignment - 1) / kFrameAlignment * kFrameAlignment;
}

class Scanner {
 public:
  Scanner(const std::uint8_t* bytes, std::size_t size) : bytes_(bytes), size_(size), left_(size) {}

  JournalMap scan() {
    for (std::size_t at = find_marker(0); at < size_; at = find_marker(at)) {
      at = is_head(at) ? take_frame(at) : at + 1;
    }
    if (ends_in_head()) open_gap(GapReason::torn, {});
    close_gap(size_);
    return std::move(map_);
  }

 private:
  std::size_t find_marker(std::size_t at) const {
    while (size_ - at >= kFrameHead) {
      const void* found = std::memchr(bytes_ + at, kMarker[0], size_ - at - (kFrameHead - 1));
      if (found == nullptr) return size_;
      at = static_cast<std::size_t>(static_cast<const std::uint8_t*>(found) - bytes_);
      if (std::memcmp(bytes_ + at, kMarker, sizeof kMarker) == 0) return at;
      ++at;
    }
    return size_;
  }

  // Whether what is left over at the end is the beginning of a head.
  bool ends_in_head() const {
    const std::size_t left = size_ - gap_from_;
    if (left == 0 || left >= kFrameHead || reason_ != GapReason::no_frame) return false;
    return std::memcmp(bytes_ + gap_from_, kMarker, std::min(left, sizeof kMarker)) == 0;
  }

  bool is_head(std::size_t at) const {
    return crc32(bytes_ + at, kHeadChecksumAt) == get32(bytes_ + at + kHeadChecksumAt);
  }

  // Answers where to go on.
  std::size_t take_frame(std::size_t at) {
    const std::uint8_t* head = bytes_ + at;
    const std::uint64_t length = get32(head + kLengthAt);
    const std::uint64_t room = padded(length);
    close_gap(at);
    const EditKey key{get(head + kDeviceAt, 8), get(head + kSequenceAt, 8)};
    const bool fits = room <= size_ - at - kFrameHead;
    if (!fits || !holds_payload(head, static_cast<std::size_t>(room))) {
      // Not skipped by its length: where a torn frame was written over or gone on after, whole ones follow.
      open_gap(fits ? GapReason::damaged : GapReason::torn, key);
      return at + 1;
    }
    Frame frame;
    frame.offset = at;
    frame.size = kFrameHead + static_cast<std::size_t>(room);
    frame.key = key;
    frame.pit_tag = get32(head + kPitAt);
    frame.payload_size = static_cast<std::size_t>(length);
    frame.version = head[kVersionAt];
    frame.kind = head[kKindAt];
    const bool is_kind = frame.kind == static_cast<std::uint8_t>(FrameKind::pit) ||
                         frame.kind == static_cast<std::uint8_t>(FrameKind::edit);
    frame.is_known = frame.version == kFrameVersion && is_kind && get(head + kReservedAt, 2) == 0;
    map_.frames.push_back(frame);
    gap_from_ = map_.whole_size = at + frame.size;
    open_gap(GapReason::no_frame, {});
    return map_.whole_size;
  }

  bool holds_payload(const std::uint8_t* head, std::size_t room) {
    if (room / kReadInVain > left_) return false;
    if (crc32(head + kFrameHead, room) == get32(head + kPayloadChecksumAt)) return true;
    left_ -= room / kReadInVain;
    return false;
  }

  void open_gap(GapReason reason, EditKey key) {
    reason_ = reason;
    key_ = key;
  }
  void close_gap(std::size_t end) {
    if (end > gap_from_) map_.gaps.push_back({gap_from_, end - gap_from_, key_, reason_});
    gap_from_ = end;
  }

  const std::uint8_t* bytes_;
  std::size_t size_;
  std::size_t left_;  // in units of kReadInVain
  JournalMap map_;
  std::size_t gap_from_ = 0;
  GapReason reason_ = GapReason::no_frame;
  EditKey key_;
};

}  // namespace

JournalMap scan_journal(const std::uint8_t* bytes, std::size_t size) {
  return Scanner(bytes, size).scan();
}

std::uint32_t pit_tag(std::string_view pit_id) {
  return crc32(reinterpret_cast<const std::uint8_t*>(pit_id.data()), pit_id.size());
}

void append_frame(Bytes& out, FrameKind kind, EditKey key, std::uint32_t pit_tag, const std::uint8_t* payload,
                  std::size_t size) {
  const std::size_t head = out.size();
  const auto room = static_cast<std::size_t>(padded(size));
  out.insert(out.end(), kMarker, kMarker + sizeof kMarker);
  put(out, kFrameVersion, 1);
  put(out, static_cast<std::uint8_t>(kind), 1);
  put(out, 0, 2);
  put(out, key.device, 8);
  put(out, key.sequence, 8);
  put(out, size, 4);
  put(out, pit_tag, 4);
  const std::size_t checksums = out.size();
  put(out, 0, 8);
  out.insert(out.end(), payload, payload + size);
  out.resize(head + kFrameHead + room);
  // The checksum of the payload is part of the head, and so under the head's own.
  const std::uint32_t payload_checksum = crc32(out.data() + head + kFrameHead, room);
  for (std::size_t i = 0; i < 4; ++i) {
    out[checksums + i] = static_cast<std::uint8_t>(payload_checksum >> (8 * i));
  }
  const std::uint32_t head_checksum = crc32(out.data() + head, kHeadChecksumAt);
  for (std::size_t i = 0; i < 4; ++i) {
    out[checksums + 4 + i] = static_cast<std::uint8_t>(head_checksum >> (8 * i));
  }
}

}  // namespace firn::recording
