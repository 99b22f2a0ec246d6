// Documents of JSON and the pits in them.
#pragma once

#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "exchange/json/json.h"
#include "pit/verify.h"
#include "recording/draft.h"

namespace firn::tests {

using Bytes = std::vector<std::uint8_t>;

inline std::string json_of(const Bytes& pit, exchange::Notices& notices, unsigned indent = 2) {
  std::string text;
  exchange::write_json(text, exchange::Root::pit, *flatbuffers::GetRoot<flatbuffers::Table>(pit.data()),
                       indent, notices);
  return text;
}

// The pit in canonical form; empty when the bytes that were read are no pit.
inline Bytes pit_of(const exchange::JsonRead& read) {
  pit::AlignedBytes aligned;
  auto verified = pit::verify(read.bytes.data(), read.bytes.size(), {}, aligned);
  if (!verified) return {};
  auto pit = recording::from_bytes(**verified);
  return pit ? recording::to_bytes(**pit) : Bytes{};
}

}  // namespace firn::tests
