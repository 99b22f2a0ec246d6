// What probe strikes around a pit say about how even the snow lies. Limits are ours: no published one is
// known, common practice wants even depth.
#pragma once

#include <cstddef>
#include <cstdint>

#include "pit/view.h"

namespace firn::procedure {

// Strikes are uneven when they differ by more than a fifth of their mean and by more than a hand's width.
inline constexpr std::int64_t kUnevenShare = 5;
inline constexpr std::int32_t kUneven_10um = pit::cm(10);
// Two strikes cannot tell an odd one from the depth around it.
inline constexpr std::uint32_t kFewestStrikes = 3;

enum class OddStrike : std::uint8_t {
  none,
  shallower,  // ground, rock, bush, log or a hard layer that stopped the probe
  deeper      // a hollow, a tree well, or the others were stopped by something
};

struct ProbeSpread {
  std::int32_t lowest_10um = 0, highest_10um = 0, mean_10um = 0;  // the mean rounded down
  std::uint32_t count = 0;                                        // strikes that count: 0 and more
  std::uint32_t ignored = 0;                                      // strikes below 0, which are no depths
  bool uneven = false;
  // One strike uneven with its nearest neighbour while the rest are even among themselves.
  OddStrike odd = OddStrike::none;
  std::uint32_t odd_at = 0;  // its position among those given

  bool too_few() const { return count < kFewestStrikes; }
};

ProbeSpread spread_of(const std::int32_t* strikes_10um, std::size_t count);
// As a pit stores them; null for none.
ProbeSpread spread_of(const flatbuffers::Vector<std::int32_t>* strikes_10um);
// A sentence for whoever digs; it never says that a spot will do.
const char* words_of(const ProbeSpread& spread);

}  // namespace firn::procedure
