// What the rules of this module share. Nothing outside core/src/checking includes this.
#pragma once

#include <cstdint>

#include "checking/check.h"
#include "pit/place.h"
#include "pit/view.h"
#include "support/place.h"
#include "support/result.h"

namespace firn::checking {

using firnbook::CheckCode;
using firnbook::Place;
using firnbook::Thing;
using pit::place_of;

// Fractures, boundaries and layers this close together count as one place. Ours: depths are read to a
// centimetre, once in the layer and once in the test.
inline constexpr std::int32_t kSamePlace = pit::cm(2);

// Lists of plain values inside a table can be shared by many tables of hostile bytes, which would make
// reading them quadratic. No hand writes more than this.
inline constexpr std::uint32_t kMostListed = 64;

// Where rules put what they noticed. Severity comes from the catalogue, so that a code has one only.
class Reporter {
 public:
  explicit Reporter(Checks& out) : out_(out) {}
  void add(CheckCode code, const Place& place, std::int64_t a = 0, std::int64_t b = 0, std::int64_t c = 0);

 private:
  Checks& out_;
};

// Many places with one and the same trouble are one check: the first place, and how many there are.
struct Gathered {
  Place first = whole_pit();
  std::int64_t count = 0;
  std::int64_t value = 0;

  void add(const Place& place, std::int64_t its_value) {
    if (count++ == 0) {
      first = place;
      value = its_value;
    }
  }
  void report(Reporter& out, CheckCode code) const {
    if (count > 0) out.add(code, first, count, value);
  }
};

inline Place layer_place(const pit::Layer& layer, int vtable_offset) {
  return place_of(Thing::layer, static_cast<std::int32_t>(layer.stored), field_id(vtable_offset));
}

// One file each, in the order of the blocks of codes.
void check_geometry(const pit::View& pit, Reporter& out);
void check_vocabulary(const pit::View& pit, Reporter& out);
void check_layers(const pit::View& pit, Reporter& out);
void check_temperatures(const pit::View& pit, Reporter& out);
void check_densities(const pit::View& pit, Reporter& out);
void check_new_snow(const pit::View& pit, Reporter& out);
void check_tests(const pit::View& pit, Reporter& out);
void check_test_limits(const pit::View& pit, Reporter& out);
void check_site(const pit::View& pit, Reporter& out);
void check_time(const pit::View& pit, Reporter& out);
void check_weather(const pit::View& pit, Reporter& out);
void check_completeness(const pit::View& pit, Reporter& out);
void check_representative(const pit::View& pit, Reporter& out);
void check_purpose(const pit::View& pit, Reporter& out);

// The same direction given as a point and in degrees: range of the degrees, and whether both agree.
struct DirectionGiven {
  flatbuffers::Optional<firnbook::CompassPoint> point;
  flatbuffers::Optional<std::uint16_t> degrees;
  Place place;  // of the degrees
};
void check_direction(const DirectionGiven& given, Reporter& out);

}  // namespace firn::checking
