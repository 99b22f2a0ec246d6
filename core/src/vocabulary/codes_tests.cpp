// Codes of stability tests (OGRS, SWAG and CAAML 6.0.4; which of them were read and which are from memory
// stands in the tests of published values). The plain words are ours.
#include "vocabulary/code_rows.h"

namespace firn {
namespace {

using firnbook::ColumnEnds;
using firnbook::Crossing;
using firnbook::CrossingRule;
using firnbook::FractureCharacter;
using firnbook::FractureSurface;
using firnbook::LoadStage;
using firnbook::NotValidReason;
using firnbook::ReleaseType;
using firnbook::SawEnd;
using firnbook::ShearEase;
using firnbook::ShearQuality;
using firnbook::TestKind;
using firnbook::TestOutcome;

constexpr Code kCharacters[] = {
    {n(FractureCharacter::SP), "SP", "sudden planar: a thin crack, the block slides off (\"pop\")"},
    {n(FractureCharacter::SC), "SC", "sudden collapse: the layer drops under the block (\"drop\")"},
    {n(FractureCharacter::RP), "RP", "resistant planar: a plane that does not slide easily"},
    {n(FractureCharacter::PC), "PC", "progressive compression: squashes tap by tap"},
    {n(FractureCharacter::BRK), "BRK", "break: crumbles, no plane"},
    {n(FractureCharacter::SDN), "SDN", "sudden, planar or collapse not told apart"},
    {n(FractureCharacter::RES), "RES", "resistant, not told apart further"},
};
// The paper that named the five (van Herwijnen and Jamieson 2007, abstract read) writes B.
constexpr Synonym kCharacterSynonyms[] = {{n(FractureCharacter::BRK), "B"}};

constexpr Code kQualities[] = {
    {n(ShearQuality::Q1), "Q1", "clean and fast shear"},
    {n(ShearQuality::Q2), "Q2", "average shear"},
    {n(ShearQuality::Q3), "Q3", "uneven shear"},
};

constexpr Code kSurfaces[] = {
    {n(FractureSurface::Clean), "Clean", "clean fracture surface"},
    {n(FractureSurface::Rough), "Rough", "rough fracture surface"},
    {n(FractureSurface::Irregular), "Irregular", "irregular fracture surface"},
};

constexpr Code kReleases[] = {
    {n(ReleaseType::WB), "WB", "the whole block came away"},
    {n(ReleaseType::MB), "MB", "most of the block came away"},
    {n(ReleaseType::EB), "EB", "only an edge of the block came away"},
};

constexpr Code kKinds[] = {
    {n(TestKind::none), "none", "no kind given"},
    {n(TestKind::CT), "CT", "compression test"},
    {n(TestKind::ECT), "ECT", "extended column test"},
    {n(TestKind::PST), "PST", "propagation saw test"},
    {n(TestKind::RB), "RB", "rutschblock"},
    {n(TestKind::DT), "DT", "deep tap test"},
    {n(TestKind::ST), "ST", "shovel shear test"},
    {n(TestKind::hand_shear), "hand shear", "hand shear test"},
    {n(TestKind::shear_frame), "SF", "shear frame test"},
    {n(TestKind::other), "other", "another test, described in words"},
};
// DTT: avalanche.org encyclopedia (read). SS: seen for the shovel shear test (from memory).
constexpr Synonym kKindSynonyms[] = {{n(TestKind::DT), "DTT"}, {n(TestKind::ST), "SS"}};

constexpr Code kOutcomes[] = {
    {n(TestOutcome::fractured), "fractured", "something broke"},
    {n(TestOutcome::no_fracture), "no fracture", "loaded to the end, nothing broke"},
    {n(TestOutcome::not_valid), "not valid", "no valid test"},
};

constexpr Code kReasons[] = {
    {n(NotValidReason::sank_in), "sank in", "the shovel or the skis sank into soft snow"},
    {n(NotValidReason::broke_while_cutting), "broke while cutting",
     "the column broke elsewhere while it was being cut"},
    {n(NotValidReason::column_disturbed), "column disturbed",
     "the column wobbled, tilted or stood on rocks or bushes"},
    {n(NotValidReason::loading), "loading", "the loading went wrong"},
    {n(NotValidReason::slope_too_gentle), "slope too gentle", "the slope was too gentle for the test"},
    {n(NotValidReason::other), "other", "for another reason, in words"},
};

constexpr Code kStages[] = {
    {n(LoadStage::isolating), "V", "while the column was being cut"},
    {n(LoadStage::wrist), "E", "easy: taps 1 to 10, from the wrist"},
    {n(LoadStage::elbow), "M", "moderate: taps 11 to 20, from the elbow"},
    {n(LoadStage::shoulder), "H", "hard: taps 21 to 30, from the shoulder"},
};

constexpr Code kEases[] = {
    {n(ShearEase::C), "C", "collapsed while being cut"},
    {n(ShearEase::V), "V", "very easy"},
    {n(ShearEase::E), "E", "easy"},
    {n(ShearEase::M), "M", "moderate"},
    {n(ShearEase::H), "H", "hard"},
};

constexpr Code kCrossings[] = {
    {n(Crossing::crossed), "P", "the crack ran across the whole column"},
    {n(Crossing::not_crossed), "N", "the crack did not run across the whole column"},
};

constexpr Code kCrossingRules[] = {
    {n(CrossingRule::same_tap), "same tap", "across on the tap of the first crack"},
    {n(CrossingRule::one_more_tap), "one more tap", "across on the tap of the first crack or the next"},
};

constexpr Code kSawEnds[] = {
    {n(SawEnd::End), "End", "the crack ran to the end of the column"},
    {n(SawEnd::SF), "SF", "the crack stopped at a break through the slab"},
    {n(SawEnd::Arr), "Arr", "the crack stopped by itself"},
};

constexpr Code kColumnEnds[] = {
    {n(ColumnEnds::vertical), "vertical", "column ends cut vertically"},
    {n(ColumnEnds::slope_normal), "slope normal", "column ends cut at right angles to the slope"},
};
constexpr Synonym kColumnEndsSynonyms[] = {{n(ColumnEnds::slope_normal), "slope-normal"}};

}  // namespace

template <>
CodeTable code_table<FractureCharacter>() {
  return rows(kCharacters, kCharacterSynonyms);
}
template <>
CodeTable code_table<ShearQuality>() {
  return rows(kQualities);
}
template <>
CodeTable code_table<FractureSurface>() {
  return rows(kSurfaces);
}
template <>
CodeTable code_table<ReleaseType>() {
  return rows(kReleases);
}
template <>
CodeTable code_table<TestKind>() {
  return rows(kKinds, kKindSynonyms);
}
template <>
CodeTable code_table<TestOutcome>() {
  return rows(kOutcomes);
}
template <>
CodeTable code_table<NotValidReason>() {
  return rows(kReasons);
}
template <>
CodeTable code_table<LoadStage>() {
  return rows(kStages);
}
template <>
CodeTable code_table<ShearEase>() {
  return rows(kEases);
}
template <>
CodeTable code_table<Crossing>() {
  return rows(kCrossings);
}
template <>
CodeTable code_table<CrossingRule>() {
  return rows(kCrossingRules);
}
template <>
CodeTable code_table<SawEnd>() {
  return rows(kSawEnds);
}
template <>
CodeTable code_table<ColumnEnds>() {
  return rows(kColumnEnds, kColumnEndsSynonyms);
}

}  // namespace firn
