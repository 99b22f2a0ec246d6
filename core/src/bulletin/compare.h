// A pit held beside the region's bulletin. README.md has the rules.
//
// Nothing in here lowers a rating: ratings are told as they are. A problem that the pit does not show is
// still there, and a pit outside of a problem's place never shows it.
#pragma once

#include <cstdint>
#include <string_view>
#include <vector>

#include "bulletin/bulletin.h"
#include "interpretation/interpret.h"
#include "pit/view.h"
#include "schemas/report_generated.h"

namespace firn::bulletin {

// What whoever asks knows and a pit does not.
struct Question {
  std::string_view region;      // id or name; empty = not said
  std::int32_t treeline_m = 0;  // 0 = not said
  std::uint32_t bulletin_crc32 = 0;
};

// Where and when the pit was dug, as far as it can be leaned on.
struct PitPlace {
  bool elevation_known = false, aspect_known = false, flat = false, time_known = false;
  firnbook::Moment dug;
  std::int64_t elevation_10um = 0;
  std::uint8_t sector = 0;  // firnbook::CompassPoint, N to NW
};
PitPlace place_of_pit(const pit::View& pit);

firnbook::Within within_elevation(const firnbook::Scope* scope, const PitPlace& place,
                                  std::int32_t treeline_m);
firnbook::Within within_aspects(const firnbook::Scope* scope, const PitPlace& place);
firnbook::Within within_period(const firnbook::Scope* scope);
firnbook::Within both(firnbook::Within one, firnbook::Within other);

// How a bulletin's time of validity lies to the pit.
enum class Validity : std::uint8_t { holds, unknown, expired, not_yet };
struct ValidityToPit {
  Validity validity;
  std::int64_t seconds_apart;  // since the end, or until the begin
};
ValidityToPit validity_of(const firnbook::TimeSpan* valid, const PitPlace& place);

// The bulletin for the pit's region and time.
struct Choice {
  firnbook::BulletinMatch match = firnbook::BulletinMatch::none;
  firnbook::RegionFrom region_from = firnbook::RegionFrom::none;
  std::int32_t bulletin = -1;
  const firnbook::Bulletin* chosen = nullptr;
  const firnbook::Region* region = nullptr;
  std::int64_t seconds_apart = 0;
};
Choice choose(const pit::View& pit, const PitPlace& place, const firnbook::Bulletins& bulletins,
              std::string_view region);

// What a pit shows of each kind of problem, whatever any bulletin says; and where it shows nothing, what
// keeps it from speaking.
inline constexpr std::size_t kKinds = 9;  // firnbook::ProblemKind
struct Shown {
  std::vector<firnbook::BulletinEvidence> evidence[kKinds];
  firnbook::SpeakLimit limit[kKinds] = {};
  // Wind slab rests on nothing but rounded snow that is harder than a persistent layer under it, which any
  // slab on such a layer may be.
  bool slab_is_doubtful = false;
};
Shown what_the_pit_shows(const pit::View& pit, const interpretation::Analysis& analysis);

// The kind that a type of problem is asked about as; none for a type that is not known.
firnbook::ProblemKind kind_of(std::uint8_t problem_type);

struct Comparison {
  Choice choice;
  Question question;
  PitPlace place;
  bool incomplete = false, treeline_missed = false;
  std::int32_t not_understood = 0;
  std::vector<firnbook::RatingMatch> ratings;
  std::vector<firnbook::ProblemMatch> problems;
  std::vector<firnbook::Unlisted> unlisted;
  std::vector<firnbook::BulletinEvidence> evidence;
};

Comparison compare(const pit::View& pit, const interpretation::Analysis& analysis,
                   const firnbook::Bulletins& bulletins, const Question& question);

// What has to be said about the comparison, among the cautions of the pit: its state comes behind the signs
// of instability and the state of the record, the rest behind all that is particular to this pit.
void add_cautions(const pit::View& pit, const Comparison& comparison, interpretation::Analysis& analysis);

flatbuffers::Offset<firnbook::BulletinComparison> write_comparison(const Comparison& comparison,
                                                                   flatbuffers::FlatBufferBuilder& builder);

}  // namespace firn::bulletin
