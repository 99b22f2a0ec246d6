// Codes of the weather. METAR codes as in the CAAML 6.0.4 schema (read); the guidelines' own kinds, rates and
// wind limits from memory (OGRS, SWAG).
#include "vocabulary/code_rows.h"

namespace firn {
namespace {

using firnbook::BlowingSnow;
using firnbook::CodeFamily;
using firnbook::CompassPoint;
using firnbook::Precipitation;
using firnbook::PrecipitationRate;
using firnbook::SkyCondition;
using firnbook::WindClass;

constexpr Code kFamilies[] = {
    {n(CodeFamily::metar), "METAR", "aviation weather codes, as in CAAML"},
    {n(CodeFamily::ogrs), "OGRS", "the Canadian observation guidelines"},
    {n(CodeFamily::swag), "SWAG", "the American observation guidelines"},
};

constexpr Code kSky[] = {
    {n(SkyCondition::CLR), "CLR", "clear: no cloud"},
    {n(SkyCondition::FEW), "FEW", "few clouds"},
    {n(SkyCondition::SCT), "SCT", "scattered clouds"},
    {n(SkyCondition::BKN), "BKN", "broken: more than half covered"},
    {n(SkyCondition::OVC), "OVC", "overcast: all covered"},
    {n(SkyCondition::X), "X", "sky hidden by fog, snow or smoke"},
};
// METAR's own words for the same (read: Navy aviation course, table 1-18).
constexpr Synonym kSkySynonyms[] = {{n(SkyCondition::CLR), "SKC"}, {n(SkyCondition::X), "VV"}};

constexpr Code kPrecipitation[] = {
    {n(Precipitation::light_DZ), "-DZ", "light drizzle"},
    {n(Precipitation::DZ), "DZ", "drizzle"},
    {n(Precipitation::heavy_DZ), "+DZ", "heavy drizzle"},
    {n(Precipitation::light_RA), "-RA", "light rain"},
    {n(Precipitation::RA), "RA", "rain"},
    {n(Precipitation::heavy_RA), "+RA", "heavy rain"},
    {n(Precipitation::light_SN), "-SN", "light snow"},
    {n(Precipitation::SN), "SN", "snow"},
    {n(Precipitation::heavy_SN), "+SN", "heavy snow"},
    {n(Precipitation::light_SG), "-SG", "light snow grains"},
    {n(Precipitation::SG), "SG", "snow grains"},
    {n(Precipitation::heavy_SG), "+SG", "heavy snow grains"},
    {n(Precipitation::light_IC), "-IC", "light ice crystals"},
    {n(Precipitation::IC), "IC", "ice crystals"},
    {n(Precipitation::heavy_IC), "+IC", "heavy ice crystals"},
    {n(Precipitation::light_PE), "-PE", "light ice pellets"},
    {n(Precipitation::PE), "PE", "ice pellets"},
    {n(Precipitation::heavy_PE), "+PE", "heavy ice pellets"},
    {n(Precipitation::light_GR), "-GR", "light hail"},
    {n(Precipitation::GR), "GR", "hail"},
    {n(Precipitation::heavy_GR), "+GR", "heavy hail"},
    {n(Precipitation::light_GS), "-GS", "light small hail or graupel"},
    {n(Precipitation::GS), "GS", "small hail or graupel"},
    {n(Precipitation::heavy_GS), "+GS", "heavy small hail or graupel"},
    {n(Precipitation::UP), "UP", "precipitation of unknown kind"},
    {n(Precipitation::Nil), "Nil", "no precipitation"},
    {n(Precipitation::RASN), "RASN", "rain and snow mixed"},
    {n(Precipitation::FZRA), "FZRA", "freezing rain"},
    {n(Precipitation::guideline_none), "NIL", "no precipitation"},
    {n(Precipitation::guideline_rain), "R", "rain"},
    {n(Precipitation::guideline_snow), "S", "snow"},
    {n(Precipitation::guideline_mixed), "RS", "rain and snow mixed"},
    {n(Precipitation::guideline_graupel), "G", "graupel or hail"},
    {n(Precipitation::guideline_freezing_rain), "ZR", "freezing rain"},
};

// Where SWAG's letters are not those of OGRS (both from memory).
constexpr Synonym kSwagPrecipitation[] = {
    {n(Precipitation::guideline_none), "NO"},
    {n(Precipitation::guideline_rain), "RA"},
    {n(Precipitation::guideline_snow), "SN"},
    {n(Precipitation::guideline_graupel), "GR"},
};

constexpr Code kRates[] = {
    {n(PrecipitationRate::S_1), "S-1", "snow, a trace: below about half a centimetre an hour"},
    {n(PrecipitationRate::S1), "S1", "snow, about 1 cm an hour"},
    {n(PrecipitationRate::S2), "S2", "snow, about 2 cm an hour"},
    {n(PrecipitationRate::S3), "S3", "snow, about 3 cm an hour"},
    {n(PrecipitationRate::S4), "S4", "snow, about 4 cm an hour"},
    {n(PrecipitationRate::S5), "S5", "snow, about 5 cm an hour"},
    {n(PrecipitationRate::S6), "S6", "snow, about 6 cm an hour"},
    {n(PrecipitationRate::S7), "S7", "snow, about 7 cm an hour"},
    {n(PrecipitationRate::S8), "S8", "snow, about 8 cm an hour"},
    {n(PrecipitationRate::S9), "S9", "snow, about 9 cm an hour"},
    {n(PrecipitationRate::S10), "S10", "snow, about 10 cm an hour"},
    {n(PrecipitationRate::RV), "RV", "a trace of rain"},
    {n(PrecipitationRate::RL), "RL", "light rain, up to 2.5 mm an hour"},
    {n(PrecipitationRate::RM), "RM", "moderate rain, up to 7.5 mm an hour"},
    {n(PrecipitationRate::RH), "RH", "heavy rain, above 7.5 mm an hour"},
};

constexpr Code kWind[] = {
    {n(WindClass::C), "C", "calm"},
    {n(WindClass::L), "L", "light wind"},
    {n(WindClass::M), "M", "moderate wind: starts to move snow"},
    {n(WindClass::S), "S", "strong wind"},
    {n(WindClass::X), "X", "extreme wind"},
};

constexpr Code kBlowingSnow[] = {
    {n(BlowingSnow::none), "None", "no blowing snow"},
    {n(BlowingSnow::previous), "Prev", "blew earlier, not now"},
    {n(BlowingSnow::light), "L", "a little blowing snow"},
    {n(BlowingSnow::moderate), "M", "moderate blowing snow"},
    {n(BlowingSnow::intense), "I", "intense blowing snow"},
    {n(BlowingSnow::unknown), "U", "could not be seen"},
};
constexpr Synonym kBlowingSnowSynonyms[] = {{n(BlowingSnow::none), "Nil"}};

constexpr Code kCompass[] = {
    {n(CompassPoint::N), "N", "north"},
    {n(CompassPoint::NE), "NE", "north-east"},
    {n(CompassPoint::E), "E", "east"},
    {n(CompassPoint::SE), "SE", "south-east"},
    {n(CompassPoint::S), "S", "south"},
    {n(CompassPoint::SW), "SW", "south-west"},
    {n(CompassPoint::W), "W", "west"},
    {n(CompassPoint::NW), "NW", "north-west"},
    {n(CompassPoint::none), "n/a", "flat: no aspect"},
    {n(CompassPoint::variable), "V", "from varying directions"},
};

bool is_guideline(std::uint8_t value) {
  return value > 100;
}

}  // namespace

template <>
CodeTable code_table<CodeFamily>() {
  return rows(kFamilies);
}
template <>
CodeTable code_table<SkyCondition>() {
  return rows(kSky, kSkySynonyms);
}
template <>
CodeTable code_table<Precipitation>() {
  return rows(kPrecipitation);
}
template <>
CodeTable code_table<PrecipitationRate>() {
  return rows(kRates);
}
template <>
CodeTable code_table<WindClass>() {
  return rows(kWind);
}
template <>
CodeTable code_table<BlowingSnow>() {
  return rows(kBlowingSnow, kBlowingSnowSynonyms);
}
template <>
CodeTable code_table<CompassPoint>() {
  return rows(kCompass);
}

std::string_view precipitation_code(Precipitation value, CodeFamily family) {
  if (is_guideline(n(value)) == (family == CodeFamily::metar)) return {};
  if (family == CodeFamily::swag) {
    for (const Synonym& own : kSwagPrecipitation) {
      if (own.value == n(value)) return own.code;
    }
  }
  return code_of(value);
}

std::optional<Precipitation> parse_precipitation(std::string_view code, CodeFamily family) {
  for (const Code& row : kPrecipitation) {
    const auto value = static_cast<Precipitation>(row.value);
    const std::string_view own = precipitation_code(value, family);
    if (!own.empty() && same_code(own, code)) return value;
  }
  return std::nullopt;
}

}  // namespace firn
