// Single values on a card, and what was written before them that they are told from.
#pragma once

#include <string>
#include <vector>

#include "exchange/card/bits.h"
#include "exchange/card/layouts.h"

namespace firn::exchange::card {

std::int64_t code_number(Bits& bits, std::int64_t value, const Units& units);
std::uint8_t code_rank(Bits& bits, std::uint8_t value, const Ranks& ranks);
// A set of numbers from 0 to 63 that is not empty.
std::uint64_t code_marks(Bits& bits, std::uint64_t marks);
firnbook::Place code_place(Bits& bits, const firnbook::Place& place);
void code_numbers(Bits& bits, std::vector<std::int32_t>& numbers);

// Depths are told from a depth before them, and from how the last one was measured.
class Depths {
 public:
  using Depth = firnbook::Depth;

  // From `base` downwards where that is measured alike, else on its own.
  Depth code(Bits& bits, const Depth& depth, const Depth* base, unsigned order);
  // Where the one before ended (`base`, or the surface when there was none), or as above.
  Depth code_next(Bits& bits, const Depth& depth, const Depth* base, unsigned order);
  // One of the boundaries, or as above.
  Depth code_at_boundary(Bits& bits, const Depth& depth, const Depth* base, unsigned order);
  // Tops of layers, and the bottom of the last.
  void take_boundaries(const std::vector<std::unique_ptr<firnbook::LayerT>>& layers);

 private:
  struct Origin {
    std::int64_t from = 0;
    std::int64_t down = 1;
  };
  Origin origin(const Depth* base) const;
  static unsigned step_for(const Depth& depth, const Origin& origin);
  void code_frame(Bits& bits, const Depth& depth);
  std::size_t boundary_of(const Depth& depth) const;

  std::vector<Depth> boundaries_;
  firnbook::Datum datum_ = firnbook::Datum::surface;
  firnbook::Direction direction_ = firnbook::Direction::vertical;
};

// Moments are told from the one before them.
class Moments {
 public:
  firnbook::Moment code(Bits& bits, const firnbook::Moment& moment);
  firnbook::TimeSpan code_span(Bits& bits, const firnbook::TimeSpan& span);

 private:
  std::int64_t code_local_s(Bits& bits, std::int64_t local_s, firnbook::TimePrecision precision);
  void code_offset(Bits& bits, std::int16_t& offset_min, std::uint8_t& known, bool on_clock);

  struct Offset {
    std::int16_t minutes = 0;
    std::uint8_t known = 0;
  };
  Offset clock_, calendar_;
  std::int64_t last_s_ = 20454 * std::int64_t{86400};  // 2026-01-01: cards are younger or not much older
  bool is_first_ = true;
};

// A text that stood before is told by how long ago that was.
class Texts {
 public:
  void code(Bits& bits, std::string& text);

 private:
  void remember(const std::string& text);

  std::vector<std::string> before_;
};

}  // namespace firn::exchange::card
