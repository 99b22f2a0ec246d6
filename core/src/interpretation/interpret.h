// What a pit amounts to: method by method, then the layers of concern they add up to.
#pragma once

#include <cstdint>
#include <string_view>
#include <vector>

#include "checking/check.h"
#include "pit/place.h"
#include "pit/view.h"
#include "schemas/report_generated.h"
#include "support/result.h"

namespace firn::interpretation {

using pit::place_of;

// Thresholds as named parameters that the caller may change. parameters.cpp says of each what it is, its
// limits, its source and how that is known. All of them int32, so that two sets compare as bytes.
struct Parameters {
  std::int32_t tolerance_10um = pit::cm(2);

  std::int32_t ect_last_tap_of_lower_class = 21;
  std::int32_t ect_taps_to_cross = 1;
  std::int32_t ect_ignored_top_10um = 0;  // 0 = off, which is more careful
  std::int32_t ect_three_last_tap = 21;
  std::int32_t ect_four_last_tap_one = 13;
  std::int32_t ect_four_last_tap_two = 22;
  std::int32_t ect_four_last_tap_not_crossed = 10;
  std::int32_t ect_early_below_tap = 10;
  std::int32_t ect_long_column_10um = pit::cm(200);

  std::int32_t pst_percent = 50;
  std::int32_t pst_usual_length_10um = pit::cm(100);

  std::int32_t rb_least_slope_deg = 30;
  std::int32_t rb_least_slope_observed_deg = 20;
  std::int32_t rb_reach_below_skis_10um = pit::cm(100);

  std::int32_t flag_size_10um = pit::mm(1);
  std::int32_t flag_hardness_sixths = 18;
  std::int32_t flag_size_difference_10um = 50;
  std::int32_t flag_hardness_difference_sixths = 6;
  std::int32_t flag_depth_from_10um = pit::cm(20);
  std::int32_t flag_depth_to_10um = pit::cm(85);
  std::int32_t flag_warning_count = 5;

  std::int32_t sum_size_difference_10um = 75;
  std::int32_t sum_size_10um = 125;
  std::int32_t sum_hardness_difference_tenths = 17;
  std::int32_t sum_hardness_tenths = 13;
  std::int32_t sum_depth_from_10um = pit::cm(18);
  std::int32_t sum_depth_to_10um = pit::cm(94);
  std::int32_t sum_warning_count = 5;

  std::int32_t lemon_depth_10um = pit::cm(100);
  std::int32_t lemon_thickness_10um = pit::cm(10);
  std::int32_t lemon_hardness_difference_sixths = 6;
  std::int32_t lemon_size_difference_10um = pit::mm(1);

  std::int32_t weak_layer_thin_10um = pit::cm(3);
  std::int32_t weak_layer_depth_10um = pit::cm(100);

  std::int32_t gradient_cdegc_per_m = 1000;

  std::int32_t load_unknown_percent = 10;
  std::int32_t index_slope_deg = 38;
  std::int32_t index_low_thousandths = 1000;
  std::int32_t index_high_thousandths = 1500;
  std::int32_t slab_poisson_thousandths = 0;  // 0 = off: no critical crack length

  std::int32_t rider_reach_10um = pit::cm(100);
  std::int32_t ect_useful_depth_10um = pit::cm(120);
  std::int32_t ct_useful_depth_10um = pit::cm(120);
  std::int32_t usual_column_depth_10um = pit::cm(100);
  std::int32_t deep_tap_from_10um = pit::cm(100);
  std::int32_t shallow_snow_10um = pit::cm(100);
};

// What one parameter is.
struct Parameter {
  firnbook::ParameterKey key;
  firnbook::Method method;  // that it belongs to; none for the concerns and what was not loaded
  firnbook::Verified verified;
  std::int32_t Parameters::*field;
  std::int32_t least, most;
  const char* name;
  const char* unit;
  const char* source;
};

// In the order of their keys, which are also those of the fields.
const Parameter* all_parameters(std::size_t& count);
const Parameter* find_parameter(firnbook::ParameterKey key);
std::int32_t default_of(const Parameter& parameter);
// Refused with its name, limits and unit when it is out of range or no parameter of this version.
Done set_parameter(Parameters& parameters, firnbook::ParameterKey key, std::int32_t value);

struct Concern {
  firnbook::ConcernKind kind;
  std::int32_t layer, layer_below, weaker_layer;  // stored positions, -1 for none
  std::int32_t top, bottom;                       // -1 when it cannot be told
  firnbook::ConcernRank rank;
  std::uint32_t first_evidence, evidence_count;  // in Analysis::evidence
  std::int32_t ease;                             // lowest tap, 0 while isolating, kNoEase where no tap tells
  std::int32_t flags_met;                        // of the boundary with most flags
  std::int32_t weaker_pos;                       // weaker_layer as a position in View::layers, -1
  firnbook::ConcernReading reading;
  firnbook::ConcernReach reach;
};
inline constexpr std::int32_t kNoEase = 99;

// What a concern hangs on. Places follow from the layers alone, so more tests never move a place.
enum class HomeKind : std::uint8_t {
  layer,         // a thin layer that is the weaker side of a boundary, or a layer without neighbours
  boundary,      // where two layers touch
  inside_layer,  // a depth within a layer, away from its boundaries
  open,          // a depth where no layer is known
  unplaced       // no depth that can be told
};

struct Home {
  HomeKind kind;
  std::int32_t index;  // layer, inside_layer: in View::layers; boundary: in View::boundaries; else as needed

  bool operator==(const Home& other) const { return kind == other.kind && index == other.index; }
};

// One finding at one home. Both keys are made to be compared as they are: sorting looks at nothing else.
struct Seed {
  Seed(const Home& home, std::int32_t depth, std::uint32_t finding)
      : where(std::uint64_t{static_cast<std::uint8_t>(home.kind)} << 32 | in_order(home.index)),
        within(std::uint64_t{in_order(depth)} << 32 | finding) {}

  Home home() const {
    return {static_cast<HomeKind>(where >> 32), from_order(static_cast<std::uint32_t>(where))};
  }
  // Below the surface; for unplaced ones what tells them apart.
  std::int32_t depth() const { return from_order(static_cast<std::uint32_t>(within >> 32)); }
  std::uint32_t finding() const { return static_cast<std::uint32_t>(within); }
  bool operator<(const Seed& other) const {
    return where != other.where ? where < other.where : within < other.within;
  }

  std::uint64_t where, within;
  std::int32_t ease = 0;
  firnbook::ConcernRank rank = firnbook::ConcernRank::little;
  bool founds = false;  // makes a concern by itself; others only join one

 private:
  // Signed numbers as unsigned ones of the same order.
  static constexpr std::uint32_t kTurn = 0x80000000u;
  static std::uint32_t in_order(std::int32_t value) { return static_cast<std::uint32_t>(value) ^ kTurn; }
  static std::int32_t from_order(std::uint32_t value) { return static_cast<std::int32_t>(value ^ kTurn); }
};

// The places at which evidence can meet, built once a pit from its layers and flag counts.
class Places {
 public:
  void map(const pit::View& pit, std::int32_t tolerance_10um, const std::vector<firnbook::Finding>& findings);

  // Where a fracture at this known depth belongs. `form` is the main class of the grains its writer named, or
  // 0.
  Home of_depth(std::int32_t depth, std::uint8_t form) const;
  Home of_boundary(std::int32_t boundary) const { return homes_[at(boundary)]; }
  Home of_layer(std::int32_t layer) const;

  // Position of the layer that `on` names by date, by words, or as the only one of its grains; -1.
  std::int32_t named(const firnbook::Layer& on) const;
  std::int32_t only_one_of(std::uint8_t form) const;
  // How far a depth lies outside of a home with a known depth; 0 inside it.
  std::int64_t distance(const Home& home, std::int64_t depth) const;

  std::int32_t boundary_above(std::int32_t layer) const { return layer > 0 ? below_[at(layer - 1)] : -1; }
  std::int32_t boundary_below(std::int32_t layer) const { return below_[at(layer)]; }
  std::int32_t weaker(std::int32_t boundary) const { return weaker_[at(boundary)]; }
  // Position of the flag count of a boundary, or of a layer without neighbours, among the findings; -1.
  std::int32_t count_of_boundary(std::int32_t boundary) const { return boundary_count_[at(boundary)]; }
  std::int32_t count_of_layer(std::int32_t layer) const { return layer_count_[at(layer)]; }

 private:
  struct Name {
    std::int64_t day;
    std::string_view words;
    std::int32_t layer;
  };

  static std::size_t at(std::int32_t index) { return static_cast<std::size_t>(index); }
  Home find_home(std::int32_t boundary) const;
  bool is_thin(std::int32_t position) const;
  bool is_thin_and_persistent(std::int32_t position) const;
  bool alone(std::int32_t layer) const;
  std::int32_t flags_met(std::int32_t boundary) const;
  bool better(std::int32_t one, std::int32_t other, std::int32_t depth, std::uint8_t form) const;
  Home away_from_boundaries(std::int32_t depth) const;
  void map_names();
  std::int32_t pick(const std::vector<Name>& names, std::size_t from, std::size_t to,
                    std::uint8_t form) const;

  const pit::View* pit_ = nullptr;
  const std::vector<firnbook::Finding>* findings_ = nullptr;
  std::int64_t tolerance_ = 0;
  std::vector<std::int32_t> below_;           // boundary below each layer, -1
  std::vector<std::int32_t> weaker_;          // weaker layer of each boundary
  std::vector<Home> homes_;                   // of each boundary
  std::vector<std::int32_t> boundary_count_;  // flag count of each boundary
  std::vector<std::int32_t> layer_count_;     // flag count of each layer without neighbours, -1
  std::vector<Name> by_day_, by_words_;
  std::vector<std::int32_t> first_of_form_, count_of_form_;  // by main class, the tens digit
};

struct Reach {
  std::int32_t depth, test;
};

// Hardness of one side of a boundary.
struct Hardness {
  std::int32_t sixths = 0;  // 0 = not known
  bool unreliable = false;
};

// One criterion of one layer: what was seen, and what that says.
struct Flag {
  firnbook::Verdict verdict = firnbook::Verdict::unknown;
  std::int32_t value = 0;
};
struct LayerFlags {
  Flag size, hardness, form;
  std::int32_t met = 0;
};

// Where two layers touch, or a layer of persistent grains that was recorded without neighbours; read once a
// pit for every method of structure.
struct Interface {
  const pit::Layer* above;  // null for a layer without neighbours
  const pit::Layer* below;
  Hardness upper, lower;  // at the boundary
  LayerFlags flags;       // of the weaker layer, by the yellow flags
  std::int32_t depth;
  bool weaker_above, depth_unreliable;

  const pit::Layer& weaker() const { return weaker_above ? *above : *below; }
  const Hardness& weaker_hardness() const { return weaker_above ? upper : lower; }
  firnbook::Place place() const {
    return above != nullptr
               ? place_of(firnbook::Thing::boundary, static_cast<std::int32_t>(above->stored), kWholeThing)
               : place_of(firnbook::Thing::layer, static_cast<std::int32_t>(below->stored), kWholeThing);
  }
};

// Density of a layer in tenths of kg/m3, 0 where neither a reading nor an estimate gives one.
struct LayerDensity {
  std::int32_t dkgm3;
  bool measured;
};
// The snow from the surface down to here. Masses in tenths of kg/m3 times 10 um.
struct ColumnAbove {
  std::int64_t depth, known, measured, mass;
};
struct Densities {
  std::vector<LayerDensity> layers;  // as View::layers
  std::vector<ColumnAbove> column;   // at the bottom of each layer, as far as they follow without a gap
  std::vector<std::uint32_t> readings;
};

// Where a piece of evidence stands within its concern: method, rank and ease; then the fracture it is about.
// Made to be compared as it is.
struct Reading {
  Reading(std::int32_t order, std::int32_t test, std::int32_t fracture, std::uint32_t finding)
      : first(static_cast<std::uint64_t>(order) << 32 | static_cast<std::uint32_t>(test)),
        then(static_cast<std::uint64_t>(fracture) << 32 | finding) {}

  std::uint32_t finding() const { return static_cast<std::uint32_t>(then); }
  bool operator<(const Reading& other) const {
    return first != other.first ? first < other.first : then < other.then;
  }

  std::uint64_t first, then;
};

// Memory that is reused from pit to pit and holds nothing of its own between them.
struct Workspace {
  Places places;
  std::vector<Seed> seeds;
  std::vector<std::uint32_t> strong_gradients;
  std::vector<Reading> reading;
  std::vector<std::int32_t> boundary_of_layer;  // the boundary below each layer, by stored position
  std::vector<Reach> ct, ect;
  std::vector<Interface> interfaces;
  Densities densities;
  std::vector<flatbuffers::Offset<firnbook::Concern>> offsets;
  std::vector<firnbook::ParameterChanged> changes;
  // Positions of the leading concerns that one test only or no test reached, and that test; -1 for none.
  std::int32_t reached_once = -1, reached_by = -1, not_reached = -1;
};

// Everything a report says, in flat lists whose memory is reused from pit to pit.
struct Analysis {
  checking::Checks checks;
  std::vector<firnbook::Finding> findings;
  std::vector<Concern> concerns;
  std::vector<std::uint32_t> evidence;
  std::vector<firnbook::LoadedBy> loaded;
  std::vector<firnbook::NotLoaded> not_loaded;
  std::vector<firnbook::Suggestion> suggestions;
  std::vector<firnbook::Caution> cautions;
  std::vector<firnbook::MethodUsed> methods;
  Workspace workspace;

  void clear();
};

using Findings = std::vector<firnbook::Finding>;

using Interfaces = std::vector<Interface>;

// What several methods rest on. In order of depth, layers without neighbours last.
void look_at_structure(const pit::View& pit, const Parameters& parameters, Interfaces& out);
void look_at_densities(const pit::View& pit, Densities& out);

// Methods. Each appends what it found; none reads another's findings.
void field_signs(const pit::View& pit, Findings& out);
void compression_test(const pit::View& pit, Findings& out);
void deep_tap_test(const pit::View& pit, Findings& out);
void shear_quality(const pit::View& pit, Findings& out);
void extended_column(const pit::View& pit, const Parameters& parameters, Findings& out);
void extended_column_schemes(const pit::View& pit, const Parameters& parameters, Findings& out);
void extended_column_early(const pit::View& pit, const Parameters& parameters, Findings& out);
void extended_column_several(const pit::View& pit, const Parameters& parameters, Findings& out);
void saw_test(const pit::View& pit, const Parameters& parameters, Findings& out);
void rutschblock(const pit::View& pit, const Parameters& parameters, Findings& out);
void swiss_precedence(const pit::View& pit, const Parameters& parameters, Findings& out);
void shear_tests(const pit::View& pit, Findings& out);
void other_tests(const pit::View& pit, Findings& out);
void yellow_flags(const Interfaces& interfaces, const Parameters& parameters, Findings& out);
void threshold_sum(const Interfaces& interfaces, const Parameters& parameters, Findings& out);
void lemons(const Interfaces& interfaces, const Parameters& parameters, Findings& out);
void weak_layer_build(const Interfaces& interfaces, const Parameters& parameters, Findings& out);
void temperature_gradient(const pit::View& pit, const Parameters& parameters, Findings& out);
void density_estimate(const pit::View& pit, const Densities& densities, Findings& out);
void water_equivalent(const pit::View& pit, const Densities& densities, const Parameters& parameters,
                      Findings& out);
// Stress of the slab and of a skier, strength, stability, critical crack length, boundary by boundary.
void slab_mechanics(const pit::View& pit, const Interfaces& interfaces, const Densities& densities,
                    const Parameters& parameters, Findings& out);
// Layers that the observer marked: no method, but a concern if only because somebody said so.
void observer_marks(const pit::View& pit, Findings& out);

// The methods that spoke in this pit, each with how well its source is known.
void name_methods(const Findings& findings, std::vector<firnbook::MethodUsed>& out);

// Gathers findings into concerns, ordered by the rules in concerns.cpp.
void gather_concerns(const pit::View& pit, const Parameters& parameters, Analysis& analysis);
// Needs the concerns; also suggests the next observation.
void name_what_was_not_loaded(const pit::View& pit, const Parameters& parameters, Analysis& analysis);
// Needs all of the above.
void gather_cautions(const pit::View& pit, const Parameters& parameters, Analysis& analysis);

// Checks and all of the above.
void interpret(const pit::View& pit, const Parameters& parameters, Analysis& analysis);

// The report's bytes, finished in `builder` (which is cleared first, unless a comparison with the bulletin
// was written into it before). Only the workspace of `analysis` changes.
void write_report(Analysis& analysis, const Parameters& parameters, std::uint32_t pit_crc32,
                  flatbuffers::FlatBufferBuilder& builder,
                  flatbuffers::Offset<firnbook::BulletinComparison> bulletin = {});

}  // namespace firn::interpretation
