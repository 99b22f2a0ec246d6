// The trade's codes: print, parse, label, for every enumeration of schemas/vocabulary.fbs that has codes.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string_view>

#include "schemas/vocabulary_generated.h"

namespace firn {

struct Code {
  std::uint8_t value;
  std::string_view code;   // "4F+", "FCxr", "-SN"
  std::string_view label;  // in plain words: "four fingers, a little harder"
};

// Another spelling that is read and never printed: SKC for CLR.
struct Synonym {
  std::uint8_t value;
  std::string_view code;
};

struct CodeTable {
  const Code* codes;
  std::size_t count;
  const Synonym* synonyms = nullptr;
  std::size_t synonym_count = 0;
  const Code* begin() const { return codes; }
  const Code* end() const { return codes + count; }
};

// One table for each enumeration of the vocabulary, in the order of its numbers. Where the trade has no code,
// the code is the value's own name in small letters, with blanks: "not looked for".
template <class E>
CodeTable code_table();
template <>
CodeTable code_table<firnbook::GrainForm>();
template <>
CodeTable code_table<firnbook::HandHardness>();
template <>
CodeTable code_table<firnbook::Wetness>();
template <>
CodeTable code_table<firnbook::GrainSizeClass>();
template <>
CodeTable code_table<firnbook::SurfaceRoughness>();
template <>
CodeTable code_table<firnbook::CodeFamily>();
template <>
CodeTable code_table<firnbook::SkyCondition>();
template <>
CodeTable code_table<firnbook::Precipitation>();
template <>
CodeTable code_table<firnbook::PrecipitationRate>();
template <>
CodeTable code_table<firnbook::WindClass>();
template <>
CodeTable code_table<firnbook::BlowingSnow>();
template <>
CodeTable code_table<firnbook::CompassPoint>();
template <>
CodeTable code_table<firnbook::FractureCharacter>();
template <>
CodeTable code_table<firnbook::ShearQuality>();
template <>
CodeTable code_table<firnbook::FractureSurface>();
template <>
CodeTable code_table<firnbook::ReleaseType>();
template <>
CodeTable code_table<firnbook::TestKind>();
template <>
CodeTable code_table<firnbook::TestOutcome>();
template <>
CodeTable code_table<firnbook::NotValidReason>();
template <>
CodeTable code_table<firnbook::LoadStage>();
template <>
CodeTable code_table<firnbook::ShearEase>();
template <>
CodeTable code_table<firnbook::Crossing>();
template <>
CodeTable code_table<firnbook::CrossingRule>();
template <>
CodeTable code_table<firnbook::SawEnd>();
template <>
CodeTable code_table<firnbook::ColumnEnds>();
template <>
CodeTable code_table<firnbook::PartOfLayer>();
template <>
CodeTable code_table<firnbook::LayerNameKind>();
template <>
CodeTable code_table<firnbook::Datum>();
template <>
CodeTable code_table<firnbook::Direction>();
template <>
CodeTable code_table<firnbook::Answer>();
template <>
CodeTable code_table<firnbook::Purpose>();
template <>
CodeTable code_table<firnbook::Comparison>();
template <>
CodeTable code_table<firnbook::SignKind>();
template <>
CodeTable code_table<firnbook::StepKind>();
template <>
CodeTable code_table<firnbook::Trigger>();
template <>
CodeTable code_table<firnbook::SlideKind>();
template <>
CodeTable code_table<firnbook::Confidence>();
template <>
CodeTable code_table<firnbook::Training>();
template <>
CodeTable code_table<firnbook::BulletinState>();
template <>
CodeTable code_table<firnbook::Sharing>();
template <>
CodeTable code_table<firnbook::PositionSource>();
template <>
CodeTable code_table<firnbook::AbsentReason>();
template <>
CodeTable code_table<firnbook::DensityMethod>();
template <>
CodeTable code_table<firnbook::LiquidWaterMethod>();
template <>
CodeTable code_table<firnbook::SurfaceAreaMethod>();
template <>
CodeTable code_table<firnbook::HardnessMethod>();
template <>
CodeTable code_table<firnbook::StrengthMethod>();
template <>
CodeTable code_table<firnbook::StrengthKind>();
template <>
CodeTable code_table<firnbook::Impurity>();
template <>
CodeTable code_table<firnbook::ImpurityMethod>();
template <>
CodeTable code_table<firnbook::FractionUnit>();

// Equal without regard to the case of ASCII letters.
bool same_code(std::string_view a, std::string_view b);

std::string_view find_code(const CodeTable& table, std::uint8_t value);
std::string_view find_label(const CodeTable& table, std::uint8_t value);
// Exact spelling first, then without regard to case where that is not ambiguous, then the synonyms.
std::optional<std::uint8_t> find_value(const CodeTable& table, std::string_view code);

// The code, or "" for a number this library does not know.
template <class E>
std::string_view code_of(E value) {
  return find_code(code_table<E>(), static_cast<std::uint8_t>(value));
}
template <class E>
std::string_view label_of(E value) {
  return find_label(code_table<E>(), static_cast<std::uint8_t>(value));
}
template <class E>
std::optional<E> parse_code(std::string_view code) {
  const std::optional<std::uint8_t> value = find_value(code_table<E>(), code);
  return value ? std::optional<E>(static_cast<E>(*value)) : std::nullopt;
}

// The guidelines write one kind of precipitation with different letters (OGRS "S", SWAG "SN"), and SWAG's
// "SN" is METAR's too: printed and parsed by the book that the record names.
// "" where that book has no code for the value.
std::string_view precipitation_code(firnbook::Precipitation value, firnbook::CodeFamily family);
std::optional<firnbook::Precipitation> parse_precipitation(std::string_view code,
                                                           firnbook::CodeFamily family);

// Taps are counted through: 1 to 10 from the wrist, 11 to 20 from the elbow, 21 to 30 from the shoulder
// (avalanche.org encyclopedia, extended column test, read). Nothing for 0 and for more than 30.
inline constexpr std::uint8_t kMostTaps = 30;
constexpr std::optional<firnbook::LoadStage> stage_of_tap(std::uint8_t tap) {
  if (tap == 0 || tap > kMostTaps) return std::nullopt;
  return tap <= 10   ? firnbook::LoadStage::wrist
         : tap <= 20 ? firnbook::LoadStage::elbow
                     : firnbook::LoadStage::shoulder;
}
// Which tap of its stage: 17 is the 7th from the elbow. 0 outside 1 to 30.
constexpr std::uint8_t tap_within_stage(std::uint8_t tap) {
  return tap == 0 || tap > kMostTaps ? std::uint8_t{0} : static_cast<std::uint8_t>((tap - 1) % 10 + 1);
}

// Main class of a grain form: FCxr is in FC.
constexpr firnbook::GrainForm main_class(firnbook::GrainForm form) {
  return static_cast<firnbook::GrainForm>(static_cast<std::uint8_t>(form) / 10 * 10);
}
// SH, FC, DH and their subclasses (Jamieson and Schweizer 2005 and others).
constexpr bool is_persistent(firnbook::GrainForm form) {
  const firnbook::GrainForm main = main_class(form);
  return main == firnbook::GrainForm::SH || main == firnbook::GrainForm::FC ||
         main == firnbook::GrainForm::DH;
}
// Class of a size in units of 10 um; nullopt for sizes that are not positive. Limits of the ICSSG from
// memory; it gives touching ranges, and that each is closed below and open above (0.5 mm is medium) is ours.
std::optional<firnbook::GrainSizeClass> size_class(std::int32_t size_10um);

}  // namespace firn
