// What a pit amounts to: method by method, then the layers of concern they add up to.
#pragma once

#include <cstdint>
#include <string_view>
#include <vector>

#include "checking/check.h"
#include "pit/view.h"
#include "schemas/report_generated.h"

namespace firn::interpretation {

// Thresholds as named parameters, each with its source and how that is known (read: in the source itself;
// memory: not checked against a text). README.md has the same as a table.
struct Parameters {
  // Fractures, boundaries and layers this close together count as one place. Ours: half the height of a
  // hand, since depths are read to a centimetre.
  std::int32_t tolerance_10um = pit::cm(2);

  // Swiss service, operational classes (read): crossed before the 22nd tap, or from it on.
  std::int32_t ect_last_tap_of_lower_class = 21;
  // Swiss service (read): the far end is reached on the tap of the first crack or at most one tap later.
  std::int32_t ect_taps_to_cross = 1;
  // One of two versions of that page leaves fractures in the top 10 cm out. 0 = off, which is more careful.
  std::int32_t ect_ignored_top_10um = 0;

  // Gauthier and Jamieson 2008 (memory): cut shorter than half the column, strictly, and run to the end.
  std::int32_t pst_percent = 50;

  // Jamieson and Schweizer 2005, Avalanche News 72 (variables, limits and operators from memory).
  std::int32_t flag_size_10um = pit::mm(1);          // >
  std::int32_t flag_hardness_sixths = 18;            // softer than 1F, <
  std::int32_t flag_size_difference_10um = 50;       // > 0.5 mm
  std::int32_t flag_hardness_difference_sixths = 6;  // > 1 step
  std::int32_t flag_depth_from_10um = pit::cm(20);   // inclusive
  std::int32_t flag_depth_to_10um = pit::cm(85);     // inclusive
  std::int32_t flag_warning_count = 5;               // 5 or 6 of 6 is the usual warning level (memory)

  // Rule of thumb of avalanche.org (read), strictly above; in cold snow it can take more.
  std::int32_t gradient_cdegc_per_m = 1000;

  // How deep a test is useful: ECT about 120 cm (avalanche.org, read; others say 100 or 70 cm), CT 100 to
  // 120 cm (OGRS 2007 through Campbell, read in a secondary source). What was cut deeper counts no further
  // unless it broke there.
  std::int32_t ect_useful_depth_10um = pit::cm(120);
  std::int32_t ct_useful_depth_10um = pit::cm(120);
  // How deep a column is taken to have been cut where nobody wrote it down: ECT about 1 m, CT 100 to 120 cm
  // (both read in secondary sources). The smaller figure claims less to have been loaded.
  std::int32_t usual_column_depth_10um = pit::cm(100);
  // The deep tap test is for layers deeper than about 1 m (avalanche.org, read).
  std::int32_t deep_tap_from_10um = pit::cm(100);
  // Layers deeper than 1 m are rarely triggered by a skier (Schweizer, Jamieson and Schneebeli 2003 as cited
  // in the introduction of a later paper, read): in less snow than that, every layer is within reach.
  std::int32_t shallow_snow_10um = pit::cm(100);
};

struct Concern {
  firnbook::ConcernKind kind;
  std::int32_t layer, layer_below, weaker_layer;  // stored positions, -1 for none
  std::int32_t top, bottom;                       // -1 when it cannot be told
  firnbook::ConcernRank rank;
  std::uint32_t first_evidence, evidence_count;  // in Analysis::evidence
  std::int32_t ease;                             // lowest tap, 0 while isolating, kNoEase where no tap tells
  std::int32_t flags_met;                        // of the boundary with most flags
  std::int32_t weaker_pos;                       // weaker_layer as a position in View::layers, -1
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

// One finding at one home.
struct Seed {
  Home home;
  std::int64_t depth;  // below the surface; for unplaced ones what tells them apart
  std::uint32_t finding;
  bool founds;  // makes a concern by itself; others only join one
};

// The places at which evidence can meet, built once a pit from its layers and flag counts.
class Places {
 public:
  void map(const pit::View& pit, std::int32_t tolerance_10um, const std::vector<firnbook::Finding>& findings);

  // Where a fracture at this known depth belongs. `form` is the main class of the grains its writer named, or
  // 0.
  Home of_depth(std::int32_t depth, std::uint8_t form) const;
  Home of_boundary(std::int32_t boundary) const;
  Home of_layer(std::int32_t layer) const;

  // Position of the layer that `on` names by date, by words, or as the only one of its grains; -1.
  std::int32_t named(const firnbook::Layer& on) const;
  std::int32_t only_one_of(std::uint8_t form) const;
  // How far a depth lies outside of a home with a known depth; 0 inside it.
  std::int64_t distance(const Home& home, std::int64_t depth) const;

  std::int32_t boundary_above(std::int32_t layer) const;
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
  std::vector<std::int32_t> boundary_count_;  // flag count of each boundary
  std::vector<std::int32_t> layer_count_;     // flag count of each layer without neighbours, -1
  std::vector<Name> by_day_, by_words_;
  std::vector<std::int32_t> first_of_form_, count_of_form_;  // by main class, the tens digit
};

struct Reach {
  std::int32_t depth, test;
};

// Memory that is reused from pit to pit and holds nothing of its own between them.
struct Workspace {
  Places places;
  std::vector<Seed> seeds;
  std::vector<std::uint32_t> strong_gradients;
  std::vector<Reach> ct, ect;
  std::vector<flatbuffers::Offset<firnbook::Concern>> offsets;
  // Positions of the leading concerns that one test only or no test reached, and that test; -1 for none.
  std::int32_t reached_once = -1, reached_by = -1, not_reached = -1;
};

// Everything a report says, in flat lists whose memory is reused from pit to pit.
struct Analysis {
  checking::Checks checks;
  std::vector<firnbook::Finding> findings;
  std::vector<Concern> concerns;
  std::vector<std::uint32_t> evidence;
  std::vector<firnbook::NotLoaded> not_loaded;
  std::vector<firnbook::Suggestion> suggestions;
  std::vector<firnbook::Caution> cautions;
  std::vector<firnbook::MethodUsed> methods;
  Workspace workspace;

  void clear();
};

using Findings = std::vector<firnbook::Finding>;

// Methods. Each appends what it found; none reads another's findings.
void field_signs(const pit::View& pit, Findings& out);
void compression_test(const pit::View& pit, Findings& out);
void extended_column(const pit::View& pit, const Parameters& parameters, Findings& out);
void saw_test(const pit::View& pit, const Parameters& parameters, Findings& out);
void yellow_flags(const pit::View& pit, const Parameters& parameters, Findings& out);
void temperature_gradient(const pit::View& pit, const Parameters& parameters, Findings& out);
void other_tests(const pit::View& pit, Findings& out);
// Layers that the observer marked: no method, but a concern if only because somebody said so.
void observer_marks(const pit::View& pit, Findings& out);

// Gathers findings into concerns, ordered by the rules in concerns.cpp.
void gather_concerns(const pit::View& pit, const Parameters& parameters, Analysis& analysis);
// Needs the concerns; also suggests the next observation.
void name_what_was_not_loaded(const pit::View& pit, const Parameters& parameters, Analysis& analysis);
// Needs all of the above.
void gather_cautions(const pit::View& pit, const Parameters& parameters, Analysis& analysis);

// Checks and all of the above.
void interpret(const pit::View& pit, const Parameters& parameters, Analysis& analysis);

// The report's bytes, finished in `builder` (which is cleared first, unless a comparison with the bulletin was
// written into it before). Only the workspace of `analysis` changes.
void write_report(Analysis& analysis, const Parameters& parameters, std::uint32_t pit_crc32,
                  flatbuffers::FlatBufferBuilder& builder,
                  flatbuffers::Offset<firnbook::BulletinComparison> bulletin = {});

}  // namespace firn::interpretation
