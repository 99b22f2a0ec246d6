// Two pits of one wall held against each other: which layers, tests and readings belong together, and how
// they differ. Differences only; nothing here judges.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "pit/view.h"
#include "schemas/comparison_generated.h"

namespace firn::comparison {

// All three are ours: nobody has published how far two people's readings of one wall may lie apart.
struct Parameters {
  // Boundaries wander by some centimetres between two columns of one wall.
  std::int32_t layer_apart_10um = pit::cm(5);
  std::int32_t fracture_apart_10um = pit::cm(5);
  // Temperatures change within centimetres near the surface.
  std::int32_t temperature_apart_10um = pit::cm(1);
};

struct Checksums {
  std::uint32_t reference, other;
};

// More of anything than this is no pit; what a comparison holds grows with it.
inline constexpr std::uint32_t kMostListed = 1000000;
bool is_too_large(const pit::View& pit);

// The comparison's bytes, finished in `builder`, which is cleared first. O(n log n) in what the pits list.
void compare(const pit::View& reference, const pit::View& other, const Parameters& parameters,
             Checksums checksums, flatbuffers::FlatBufferBuilder& builder);

// Pairs of layers from the surface down, then those that are not comparable (those of the reference first).
std::vector<firnbook::LayerPair> pair_layers(const pit::View& reference, const pit::View& other,
                                             const Parameters& parameters);

// In words, from verified bytes that may hold anything; positions that are not there are left out.
void append_note(std::string& out, const firnbook::PitComparison& comparison, const pit::View& reference,
                 const pit::View& other);

}  // namespace firn::comparison
