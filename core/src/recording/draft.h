// The one mutable form of a pit: the schema's object form, filled by the recorder and by the readers of
// text, and turned into bytes in one way only.
#pragma once

#include <cstdint>
#include <memory>
#include <vector>

#include "schemas/pit_generated.h"
#include "support/result.h"

namespace firn::recording {

using Bytes = std::vector<std::uint8_t>;

// Bytes of a pit in canonical form: layers, temperatures and readings in order of depth (surface first;
// unknown depths last, in given order), tests and signs in given order, empty tables left out, the
// schema's minor version set. The same content gives the same bytes, whoever recorded it.
Bytes to_bytes(firnbook::PitT& pit);

// A pit written by a newer minor version may hold what this library would drop: it is refused.
Result<std::unique_ptr<firnbook::PitT>> from_bytes(const firnbook::Pit& pit);

}  // namespace firn::recording
