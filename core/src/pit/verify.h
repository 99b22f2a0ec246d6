// The only door through which foreign bytes come in.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "schemas/pit_generated.h"
#include "support/result.h"

namespace firn::pit {

struct Limits {
  std::size_t max_bytes = std::size_t{16} << 20;
};

// Memory for a copy of bytes that came in unaligned. Kept by the caller so that it is reused.
struct AlignedBytes {
  std::vector<std::uint64_t> words;
};

// Size, alignment, identifier, then the structural verifier with limits that follow from the size: a
// table needs four bytes of its own, so a buffer with more tables than that shares some, and shared
// tables make verifying combinatorial. The pointer lives as long as `bytes` and `aligned`.
Result<const firnbook::Pit*> verify(const std::uint8_t* bytes, std::size_t size, const Limits& limits,
                                    AlignedBytes& aligned);

// The same for any other schema: `verify_root` is the generated VerifySizePrefixed-free verifier.
struct Schema {
  const char* identifier;
  const char* name;
  bool (*verify_root)(flatbuffers::Verifier&);
};
Result<const std::uint8_t*> verify_bytes(const std::uint8_t* bytes, std::size_t size, const Limits& limits,
                                         const Schema& schema, AlignedBytes& aligned);

// Minor version of the schema this library was built from.
inline constexpr std::uint16_t kSchemaMinor = 1;

}  // namespace firn::pit
