#include "pit/verify.h"

#include <cstring>

namespace firn::pit {
namespace {

constexpr std::size_t kAlignment = 8;
// Root offset and identifier.
constexpr std::size_t kSmallest = 8;
// The schemas nest six tables deep; twice that leaves room for newer ones.
constexpr flatbuffers::uoffset_t kMaxDepth = 16;

const std::uint8_t* align(const std::uint8_t* bytes, std::size_t size, AlignedBytes& aligned) {
  if (reinterpret_cast<std::uintptr_t>(bytes) % kAlignment == 0) return bytes;
  aligned.words.resize((size + kAlignment - 1) / kAlignment);
  std::memcpy(aligned.words.data(), bytes, size);
  return reinterpret_cast<const std::uint8_t*>(aligned.words.data());
}

}  // namespace

Result<const std::uint8_t*> verify_bytes(const std::uint8_t* bytes, std::size_t size, const Limits& limits,
                                         const Schema& schema, AlignedBytes& aligned) {
  const std::string name = schema.name;
  if (bytes == nullptr) {
    return failure_of(FIRN_NULL_ARGUMENT, "no bytes of a " + name + " were given",
                      "give the bytes and their size");
  }
  if (size < kSmallest) {
    return failure_of(FIRN_TOO_SMALL, "too few bytes to be a " + name,
                      "give the whole file; it may have been cut off");
  }
  // The verifier asserts on sizes that offsets cannot span, so the limit never exceeds that.
  const std::size_t most =
      limits.max_bytes < FLATBUFFERS_MAX_BUFFER_SIZE ? limits.max_bytes : FLATBUFFERS_MAX_BUFFER_SIZE - 1;
  if (size > most) {
    return failure_of(FIRN_TOO_LARGE, "more bytes than the limit allows for a " + name,
                      "raise max_bytes in the context's limits if these bytes are trusted");
  }
  if (std::memcmp(bytes + 4, schema.identifier, 4) != 0) {
    return failure_of(FIRN_WRONG_KIND,
                      "these are not the bytes of a " + name + ": bytes 4 to 7 are not " + schema.identifier,
                      "check which file was read");
  }
  const std::uint8_t* data = align(bytes, size, aligned);
  const auto max_tables = static_cast<flatbuffers::uoffset_t>(size / 4);
  flatbuffers::Verifier verifier(data, size, kMaxDepth, max_tables);
  if (!schema.verify_root(verifier)) {
    return failure_of(FIRN_DAMAGED, "the bytes of the " + name + " contradict their own structure",
                      "they were cut off or changed on the way; ask for them again");
  }
  return data;
}

Result<const firnbook::Pit*> verify(const std::uint8_t* bytes, std::size_t size, const Limits& limits,
                                    AlignedBytes& aligned) {
  static constexpr Schema kPit = {"FIRN", "pit",
                                  [](flatbuffers::Verifier& v) { return firnbook::VerifyPitBuffer(v); }};
  Result<const std::uint8_t*> data = verify_bytes(bytes, size, limits, kPit, aligned);
  if (!data) return data.failure();
  return firnbook::GetPit(*data);
}

}  // namespace firn::pit
