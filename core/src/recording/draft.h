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

// More than this in memory is no pit: 256 MB, ours, far above any record and far below what a buffer can
// span (2 GB). It bounds bytes that share one long text among many tables.
inline constexpr std::size_t kMostContent = std::size_t{1} << 28;

// Bytes of a pit in canonical form: layers, temperatures and readings in order of depth (surface first;
// unknown depths last, in given order), tests and signs in given order, empty tables left out, the
// schema's minor version set. The same content gives the same bytes, whoever recorded it.
//
// The pit is put in that form first. Elements of lists may be null: they are left out. Places (what a
// remark, photo, absence or extension is about) follow the things they name; where that thing was left out
// they are dropped, and with them the reason why its value is absent.
Bytes to_bytes(firnbook::PitT& pit);

// A pit written by a newer minor version may hold what this library would drop: it is refused.
Result<std::unique_ptr<firnbook::PitT>> from_bytes(const firnbook::Pit& pit);

// The pit's table as it stands, for a buffer that holds it inside something else.
flatbuffers::Offset<firnbook::Pit> pack(flatbuffers::FlatBufferBuilder& builder, const firnbook::PitT& pit);

}  // namespace firn::recording
