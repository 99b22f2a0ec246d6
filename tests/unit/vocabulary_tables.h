// Every code table beside the name of its enumeration. A test proves that the list is whole.
#pragma once

#include <string_view>
#include <vector>

#include "vocabulary/codes.h"

namespace firn::testing {

struct NamedTable {
  std::string_view name;
  CodeTable table;
};

inline std::vector<NamedTable> all_tables() {
  return {
      {"GrainForm", code_table<firnbook::GrainForm>()},
      {"HandHardness", code_table<firnbook::HandHardness>()},
      {"Wetness", code_table<firnbook::Wetness>()},
      {"GrainSizeClass", code_table<firnbook::GrainSizeClass>()},
      {"SurfaceRoughness", code_table<firnbook::SurfaceRoughness>()},
      {"CodeFamily", code_table<firnbook::CodeFamily>()},
      {"SkyCondition", code_table<firnbook::SkyCondition>()},
      {"Precipitation", code_table<firnbook::Precipitation>()},
      {"PrecipitationRate", code_table<firnbook::PrecipitationRate>()},
      {"WindClass", code_table<firnbook::WindClass>()},
      {"BlowingSnow", code_table<firnbook::BlowingSnow>()},
      {"CompassPoint", code_table<firnbook::CompassPoint>()},
      {"FractureCharacter", code_table<firnbook::FractureCharacter>()},
      {"ShearQuality", code_table<firnbook::ShearQuality>()},
      {"FractureSurface", code_table<firnbook::FractureSurface>()},
      {"ReleaseType", code_table<firnbook::ReleaseType>()},
      {"TestKind", code_table<firnbook::TestKind>()},
      {"TestOutcome", code_table<firnbook::TestOutcome>()},
      {"NotValidReason", code_table<firnbook::NotValidReason>()},
      {"LoadStage", code_table<firnbook::LoadStage>()},
      {"ShearEase", code_table<firnbook::ShearEase>()},
      {"Crossing", code_table<firnbook::Crossing>()},
      {"CrossingRule", code_table<firnbook::CrossingRule>()},
      {"SawEnd", code_table<firnbook::SawEnd>()},
      {"ColumnEnds", code_table<firnbook::ColumnEnds>()},
      {"PartOfLayer", code_table<firnbook::PartOfLayer>()},
      {"LayerNameKind", code_table<firnbook::LayerNameKind>()},
      {"Datum", code_table<firnbook::Datum>()},
      {"Direction", code_table<firnbook::Direction>()},
      {"Answer", code_table<firnbook::Answer>()},
      {"Purpose", code_table<firnbook::Purpose>()},
      {"Comparison", code_table<firnbook::Comparison>()},
      {"SignKind", code_table<firnbook::SignKind>()},
      {"StepKind", code_table<firnbook::StepKind>()},
      {"Trigger", code_table<firnbook::Trigger>()},
      {"SlideKind", code_table<firnbook::SlideKind>()},
      {"Confidence", code_table<firnbook::Confidence>()},
      {"Training", code_table<firnbook::Training>()},
      {"BulletinState", code_table<firnbook::BulletinState>()},
      {"Sharing", code_table<firnbook::Sharing>()},
      {"PositionSource", code_table<firnbook::PositionSource>()},
      {"AbsentReason", code_table<firnbook::AbsentReason>()},
      {"DensityMethod", code_table<firnbook::DensityMethod>()},
      {"LiquidWaterMethod", code_table<firnbook::LiquidWaterMethod>()},
      {"SurfaceAreaMethod", code_table<firnbook::SurfaceAreaMethod>()},
      {"HardnessMethod", code_table<firnbook::HardnessMethod>()},
      {"StrengthMethod", code_table<firnbook::StrengthMethod>()},
      {"StrengthKind", code_table<firnbook::StrengthKind>()},
      {"Impurity", code_table<firnbook::Impurity>()},
      {"ImpurityMethod", code_table<firnbook::ImpurityMethod>()},
      {"FractionUnit", code_table<firnbook::FractionUnit>()},
  };
}

}  // namespace firn::testing
