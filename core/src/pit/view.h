// The one read-only view of a pit that every rule, method and picture reads. Decoded once after
// verification: depths resolved to one datum, layers in order of depth, tests and fractures flat.
#pragma once

#include <cstdint>
#include <string_view>
#include <vector>

#include "schemas/pit_generated.h"

namespace firn::pit {

// A number that is not known. Lengths are in units of 10 um throughout.
inline constexpr std::int32_t kUnknown = INT32_MIN;

constexpr std::int32_t cm(std::int32_t centimetres) {
  return centimetres * 1000;
}
constexpr std::int32_t mm(std::int32_t millimetres) {
  return millimetres * 100;
}

struct Layer {
  const firnbook::Layer* raw;
  std::uint32_t stored;      // position in Pit.layers
  std::int32_t top, bottom;  // below the surface, kUnknown where they cannot be told
  std::int32_t size, size_max;
  std::uint64_t unreliable;
  std::uint8_t hardness_top, hardness_bottom;  // hand-hardness index in sixths, 0 = not observed
  std::uint8_t form, form_second;              // firnbook::GrainForm, 0 = not observed
  std::uint8_t wetness;                        // firnbook::Wetness, 0 = not observed

  bool has_span() const { return top != kUnknown && bottom != kUnknown; }
  bool is_unreliable(std::uint16_t field) const { return (unreliable >> field & 1u) != 0; }
};

// Two layers that touch.
struct Boundary {
  std::int32_t depth;
  std::uint32_t above, below;  // positions in View::layers
};

struct Test {
  const firnbook::StabilityTest* raw;
  std::uint32_t stored;                          // position in Pit.tests
  std::uint32_t first_fracture, fracture_count;  // in View::fractures
  firnbook::TestKind kind;                       // TestKind::none when absent
  std::uint8_t outcome;                          // firnbook::TestOutcome, 0 = absent
  std::uint8_t crossing_rule;                    // firnbook::CrossingRule, 0 = absent
  std::int32_t column_length;                    // kUnknown
};

struct Fracture {
  const firnbook::Fracture* raw;
  std::uint32_t test;    // position in View::tests
  std::uint32_t stored;  // position in the test's own list
  std::int32_t depth;    // below the surface, kUnknown where it cannot be told
  std::int32_t cut;      // kUnknown
  std::uint64_t unreliable;
  std::uint8_t tap, tap_crossed;  // 0 = not observed
  std::uint8_t stage, character, quality, surface, crossing, step, jump, release, saw_end,
      ease;  // 0 = absent
};

struct Temperature {
  std::uint32_t stored;
  std::int32_t depth;  // kUnknown
  std::int32_t cdegc;  // hundredths of a degree, kUnknown
  bool unreliable;
};

struct Density {
  std::uint32_t profile, stored;
  std::int32_t top, bottom;  // kUnknown
  std::int32_t dkgm3;        // tenths of kg/m3, kUnknown
  bool unreliable;
};

class View {
 public:
  // Fills this view from a verified pit, reusing its memory. The pit's bytes must outlive the view.
  void decode(const firnbook::Pit& pit);

  const firnbook::Pit& raw() const { return *raw_; }
  // In order of depth; layers whose depth is not known come last, in stored order.
  const std::vector<Layer>& layers() const { return layers_; }
  const std::vector<Boundary>& boundaries() const { return boundaries_; }
  const std::vector<Test>& tests() const { return tests_; }
  const std::vector<Fracture>& fractures() const { return fractures_; }
  // In order of depth, unknown depths last.
  const std::vector<Temperature>& temperatures() const { return temperatures_; }
  const std::vector<Density>& densities() const { return densities_; }

  std::int32_t hs() const { return hs_; }                // kUnknown
  std::int32_t slope_deg() const { return slope_deg_; }  // kUnknown
  // Clockwise from north, from the degrees or the compass point; kUnknown, also on flat ground.
  std::int32_t aspect_deg() const { return aspect_deg_; }
  firnbook::Direction direction() const { return direction_; }
  // Depth below the surface, or kUnknown: no datum, another direction than the pit's, a height without HS.
  std::int32_t below_surface(const firnbook::Depth* depth) const;
  // Position in layers() of the layer that holds this depth (top inclusive, bottom exclusive; the last
  // layer also holds its bottom), or -1.
  std::int32_t layer_at(std::int32_t depth) const;
  // Whether the observer marked any value of the layers, tests, readings, signs or slides as unreliable.
  bool any_unreliable() const { return unreliable_ != 0; }
  // Written by a newer minor version than this library knows.
  bool newer() const { return newer_; }

 private:
  void decode_layers(const firnbook::Pit& pit);
  void decode_tests(const firnbook::Pit& pit);
  void decode_readings(const firnbook::Pit& pit);
  void look_for_marks(const firnbook::Pit& pit);

  const firnbook::Pit* raw_ = nullptr;
  std::vector<Layer> layers_;
  std::vector<Boundary> boundaries_;
  std::vector<Test> tests_;
  std::vector<Fracture> fractures_;
  std::vector<Temperature> temperatures_;
  std::vector<Density> densities_;
  std::int32_t hs_ = kUnknown;
  std::int32_t slope_deg_ = kUnknown;
  std::int32_t aspect_deg_ = kUnknown;
  firnbook::Direction direction_ = firnbook::Direction::vertical;
  std::uint64_t unreliable_ = 0;  // the marks of all of them together
  bool newer_ = false;
};

// The numeric value of an optional enumeration, 0 when absent.
template <class E>
std::uint8_t number(const flatbuffers::Optional<E>& value) {
  return value ? static_cast<std::uint8_t>(*value) : std::uint8_t{0};
}
template <class T>
std::int32_t number_or_unknown(const flatbuffers::Optional<T>& value) {
  return value ? static_cast<std::int32_t>(*value) : kUnknown;
}
inline std::string_view text(const flatbuffers::String* string) {
  return string == nullptr ? std::string_view{} : std::string_view{string->c_str(), string->size()};
}
template <class V>
std::uint32_t size_of(const V* vector) {
  return vector == nullptr ? 0u : static_cast<std::uint32_t>(vector->size());
}

}  // namespace firn::pit
