// The line of one layer: `107-140 4F- FC 2.0-3.0 (DH) "sugary" name 270102 buried`; and spans of depth.
#pragma once

#include "notation/note_items.h"

namespace firn::notation {

// What depths without a mark of their own mean, from here on: `heights from ground`, `measured slope-normal`.
struct Frame {
  firnbook::Datum datum = firnbook::Datum::surface;
  firnbook::Direction direction = firnbook::Direction::vertical;

  bool operator==(const Frame& other) const { return datum == other.datum && direction == other.direction; }
  bool operator!=(const Frame& other) const { return !(*this == other); }
};
inline Frame frame_of(const firnbook::Depth& depth) {
  return {depth.datum(), depth.direction()};
}

// A depth, or ~ for none. A mark of doubt sets `bit` of `mask`. One that is counted otherwise than `frame`
// says is printed raw.
bool read_depth(Line& line, const Frame& frame, std::unique_ptr<firnbook::Depth>& depth, std::uint64_t& mask,
                std::uint16_t bit);
void append_depth(std::string& out, const Frame& frame, const firnbook::Depth* depth, std::uint64_t mask,
                  std::uint16_t bit);

// `0-16`; the fields 0 and 1 of everything that has a span are its top and bottom.
template <class T>
bool read_span_of_depth(Line& line, const Frame& frame, T& thing);
template <class T>
void append_span_of_depth(std::string& out, const Frame& frame, const T& thing);

// The frame that a thing with a span needs: that of its top, or else of its bottom.
template <class T>
Frame frame_of_span(const Frame& frame, const T& thing) {
  return thing.top != nullptr      ? frame_of(*thing.top)
         : thing.bottom != nullptr ? frame_of(*thing.bottom)
                                   : frame;
}

bool read_layer(Line& line, const Frame& frame, firnbook::LayerT& layer);
// The caller has said the frame before.
void append_layer(std::string& out, const Frame& frame, const firnbook::LayerT& layer);

bool take_span_dash(Line& line);
bool end_of_span(Line& line);

template <class T>
bool read_span_of_depth(Line& line, const Frame& frame, T& thing) {
  return read_depth(line, frame, thing.top, thing.unreliable, 0) && take_span_dash(line) &&
         read_depth(line, frame, thing.bottom, thing.unreliable, 1) && end_of_span(line);
}

template <class T>
void append_span_of_depth(std::string& out, const Frame& frame, const T& thing) {
  append_depth(out, frame, thing.top.get(), thing.unreliable, 0);
  out += '-';
  append_depth(out, frame, thing.bottom.get(), thing.unreliable, 1);
}

}  // namespace firn::notation
