// Bytes of the schemas in fuzz targets.
#pragma once

#include <cstdint>
#include <vector>

#include "exchange/json/rows.h"
#include "schemas/bulletin_generated.h"
#include "schemas/report_generated.h"

namespace firn::fuzz {

inline bool is_whole(exchange::Root root, const std::vector<std::uint8_t>& bytes) {
  flatbuffers::Verifier verifier(bytes.data(), bytes.size(), 64, 1000000000);
  switch (root) {
    case exchange::Root::pit:
      return firnbook::VerifyPitBuffer(verifier);
    case exchange::Root::report:
      return firnbook::VerifyReportBuffer(verifier);
    default:
      return firnbook::VerifyBulletinsBuffer(verifier);
  }
}

}  // namespace firn::fuzz
