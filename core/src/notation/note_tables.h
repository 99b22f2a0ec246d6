// The lines of field notes that are lists of named values: which keyword, which fields, in which words.
#pragma once

#include "notation/note_items.h"

namespace firn::notation {

// A line that a pit has once: its values go into one table of the pit.
struct SingleLine {
  std::string_view keyword;
  const ItemTable* items;
  void* (*table)(firnbook::PitT& pit);                // made when it is not there
  const void* (*present)(const firnbook::PitT& pit);  // null when it is not there
};

// In the order in which they are printed: the head and the site before the observers and the probe strikes,
// the body before the layers, the tail behind the signs.
struct SingleLines {
  const SingleLine* lines;
  std::size_t count;
  const SingleLine* begin() const { return lines; }
  const SingleLine* end() const { return lines + count; }
};
enum HeadLine : std::size_t {
  kPitLine,
  kIdLine,
  kPurposeLine,
  kTimeLine,
  kReportedLine,
  kEditedLine,
  kOperationLine
};
enum BodyLine : std::size_t {
  kWeatherLine,
  kSurfaceLine,
  kHsLine,
  kHn24Line,
  kHinLine,
  kHstLine,
  kDepthLine,
  kGroundLine
};
enum TailLine : std::size_t {
  kBulletinLine,
  kAssessmentLine,
  kBackfilledLine,
  kSharingLine,
  kPracticeLine,
  kApplicationLine,
  kEditsLine
};
SingleLines head_lines();
SingleLines site_lines();
SingleLines body_lines();
SingleLines tail_lines();
const SingleLine& chosen_line();
const SingleLine& interest_line();

namespace items {
extern const ItemTable kChosen, kInterest, kPerson, kSign, kSlide, kStep, kRemark, kAbsence, kPhoto,
    kExtension, kUnread;
inline constexpr std::uint8_t kSignAnswer = 1;
inline constexpr std::uint8_t kStepDone = 1;

// Profiles: what holds for the whole, and a reading behind its span of depth.
extern const ItemTable kDensityProfile, kDensity, kLiquidWaterProfile, kLiquidWater, kSurfaceAreaProfile,
    kSurfaceArea, kHardnessProfile, kHardness, kStrengthProfile, kStrength, kImpurityProfile, kImpurity;
}  // namespace items

// What plain words such as "same aspect as Larch Bowl; gentler and short" say beyond doubt about how the
// site compares. Fields that the words leave open stay as they are.
void read_choice(std::string_view words, firnbook::ChoiceT& choice);

}  // namespace firn::notation
