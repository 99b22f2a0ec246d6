// Every field of every table of schemas/pit.fbs, once. A field that is listed here is handled everywhere;
// tests/unit/recording_fields_test.cpp walks the schema itself to prove that none is missing.
#include <array>
#include <cstddef>
#include <iterator>
#include <memory>
#include <string>
#include <string_view>
#include <type_traits>
#include <utility>
#include <vector>

#include "support/form.h"
#include "support/place.h"

// The objects have no virtual bases, so every compiler gives the true offset, also where it wants to warn
// that the standard does not promise it.
#if defined(__GNUC__)
#pragma GCC diagnostic ignored "-Winvalid-offsetof"
#endif

namespace firn::form {
namespace {

template <class Object>
struct Pointers {
  using Pointer = std::unique_ptr<Object>;
  static void* get(const void* pointer) { return static_cast<const Pointer*>(pointer)->get(); }
  static void* renew(void* pointer) {
    *static_cast<Pointer*>(pointer) = std::make_unique<Object>();
    return get(pointer);
  }
  static void reset(void* pointer) { static_cast<Pointer*>(pointer)->reset(); }
  static void swap(void* pointer, void* other) {
    static_cast<Pointer*>(pointer)->swap(*static_cast<Pointer*>(other));
  }
};

template <class Object>
struct Lists {
  using List = std::vector<std::unique_ptr<Object>>;
  static std::size_t size(const void* list) { return static_cast<const List*>(list)->size(); }
  static void* at(const void* list, std::size_t index) {
    return const_cast<std::unique_ptr<Object>*>(&(*static_cast<const List*>(list))[index]);
  }
  static void append(void* list) { static_cast<List*>(list)->emplace_back(); }
  static void drop_last(void* list) { static_cast<List*>(list)->pop_back(); }
};

// --- a table ----------------------------------------------------------------------------------------

// As it is written down below; the name is no part of what the library carries.
struct Named {
  Field field;
  std::string_view name;
};
template <class Object>
inline constexpr Named kNamed[1] = {};

template <class Object, std::size_t... kIndex>
constexpr std::array<Field, sizeof...(kIndex)> fields_of(std::index_sequence<kIndex...>) {
  return {kNamed<Object>[kIndex].field...};
}
template <class Object>
inline constexpr auto kFields = fields_of<Object>(std::make_index_sequence<std::size(kNamed<Object>)>());

template <class Object>
constexpr std::size_t names_size() {
  std::size_t size = 0;
  for (const Named& field : kNamed<Object>) size += field.name.size() + 1;
  return size;
}
template <class Object>
constexpr auto join_names() {
  std::array<char, names_size<Object>()> names{};
  std::size_t at = 0;
  for (const Named& field : kNamed<Object>) {
    for (const char c : field.name) names[at++] = c;
    names[at++] = 0;
  }
  return names;
}
template <class Object>
inline constexpr auto kNames = join_names<Object>();

template <class T, class = void>
inline constexpr bool kHasTop = false;
template <class T>
inline constexpr bool kHasTop<T, std::void_t<decltype(T::VT_BOTTOM)>> = true;
template <class T, class = void>
inline constexpr bool kHasDepth = false;
template <class T>
inline constexpr bool kHasDepth<T, std::void_t<decltype(T::VT_DEPTH)>> = true;
template <class T, class = void>
inline constexpr bool kHasAbout = false;
template <class T>
inline constexpr bool kHasAbout<T, std::void_t<decltype(T::VT_ABOUT)>> = true;
template <class T, class = void>
inline constexpr bool kHasMask = false;
template <class T>
inline constexpr bool kHasMask<T, std::void_t<decltype(T::VT_UNRELIABLE)>> = true;

// Whether every id from 0 on has its field.
template <std::size_t kCount>
constexpr bool is_in_order(const std::array<Field, kCount>& fields) {
  for (std::size_t i = 0; i < kCount; ++i) {
    if (field_id(fields[i].field) != i) return false;
  }
  return true;
}

template <class Object>
constexpr Table make_table() {
  using T = typename Object::TableType;
  Table table;
  table.first = kFields<Object>.data();
  table.count = std::size(kFields<Object>);
  table.names = kNames<Object>.data();
  table.get = Pointers<Object>::get;
  table.renew = Pointers<Object>::renew;
  table.reset = Pointers<Object>::reset;
  table.swap = Pointers<Object>::swap;
  table.size = Lists<Object>::size;
  table.at = Lists<Object>::at;
  table.append = Lists<Object>::append;
  table.drop_last = Lists<Object>::drop_last;
  static_assert(is_in_order(kFields<Object>), "Table::find counts on it");
  if constexpr (kHasTop<T>) {
    table.top = &kFields<Object>[field_id(T::VT_TOP)];
    table.bottom = &kFields<Object>[field_id(T::VT_BOTTOM)];
  }
  if constexpr (kHasDepth<T>) table.depth = &kFields<Object>[field_id(T::VT_DEPTH)];
  if constexpr (kHasAbout<T>) table.about = &kFields<Object>[field_id(T::VT_ABOUT)];
  if constexpr (kHasMask<T>) table.unreliable = &kFields<Object>[field_id(T::VT_UNRELIABLE)];
  return table;
}

// Each table stands before those that hold it.
template <class Object>
inline constexpr Table kTable = make_table<Object>();

// --- what a member is ----------------------------------------------------------------------------------

struct Description {
  Kind kind;
  Element element;
  const Table* table = nullptr;
  bool is_signed = false;
};

template <class T>
constexpr Element number_element() {
  if constexpr (std::is_same_v<T, bool>) return Element::yes_no;
  return sizeof(T) == 1   ? Element::bits8
         : sizeof(T) == 2 ? Element::bits16
         : sizeof(T) == 4 ? Element::bits32
                          : Element::bits64;
}
template <class T>
constexpr Element list_element() {
  if constexpr (std::is_same_v<T, float>) return Element::real;
  if constexpr (std::is_same_v<T, firnbook::GrainForm>) return Element::grain_form;
  if constexpr (std::is_same_v<T, std::int32_t>) return Element::bits32;
  static_assert(std::is_same_v<T, float> || std::is_same_v<T, std::int32_t> || sizeof(T) == 1,
                "form.cpp knows no list of these");
  return Element::bits8;
}
template <class T>
constexpr Element struct_element() {
  if constexpr (std::is_same_v<T, firnbook::Moment>) return Element::moment;
  if constexpr (std::is_same_v<T, firnbook::TimeSpan>) return Element::time_span;
  if constexpr (std::is_same_v<T, firnbook::Place>) return Element::place;
  return Element::depth;
}
template <class T>
inline constexpr bool kIsStruct = std::is_same_v<T, firnbook::Depth> || std::is_same_v<T, firnbook::Moment> ||
                                  std::is_same_v<T, firnbook::TimeSpan> || std::is_same_v<T, firnbook::Place>;

template <class Member>
struct Describe {
  static_assert(std::is_unsigned_v<Member>);
  static constexpr Description value{Kind::number, number_element<Member>()};
};
template <class T>
struct Describe<flatbuffers::Optional<T>> {
  using Bits = std::conditional_t<
      sizeof(T) == 1, std::uint8_t,
      std::conditional_t<sizeof(T) == 2, std::uint16_t,
                         std::conditional_t<sizeof(T) == 4, std::uint32_t, std::uint64_t>>>;
  static_assert(sizeof(flatbuffers::Optional<T>) == sizeof(flatbuffers::Optional<Bits>));
  static constexpr Description value{Kind::optional, number_element<T>(), nullptr, std::is_signed_v<T>};
};
template <>
struct Describe<std::string> {
  static constexpr Description value{Kind::text, Element::none};
};
template <class T>
struct Describe<std::unique_ptr<T>> {
  static constexpr Description describe() {
    if constexpr (kIsStruct<T>) return {Kind::structure, struct_element<T>()};
    if constexpr (!kIsStruct<T>) return {Kind::table, Element::none, &kTable<T>};
  }
  static constexpr Description value = describe();
};
template <class T>
struct Describe<std::vector<T>> {
  static constexpr Description value{Kind::numbers, list_element<T>()};
};
template <>
struct Describe<std::vector<firnbook::Depth>> {
  static constexpr Description value{Kind::depths, Element::depth};
};
template <class T>
struct Describe<std::vector<std::unique_ptr<T>>> {
  static constexpr Description value{Kind::tables, Element::none, &kTable<T>};
};

template <class Member>
constexpr Named describe(int vtable_offset, std::size_t offset, std::string_view name) {
  constexpr Description kWhat = Describe<Member>::value;
  return {{static_cast<flatbuffers::voffset_t>(vtable_offset), static_cast<std::uint16_t>(offset), kWhat.kind,
           kWhat.element, kWhat.is_signed, kWhat.table},
          name};
}

#define FIRN_FIELD(table, vtable_offset, member)                                 \
  describe<decltype(firnbook::table##T::member)>(firnbook::table::vtable_offset, \
                                                 offsetof(firnbook::table##T, member), #member)

// --- the fields ----------------------------------------------------------------------------------------

template <>
inline constexpr Named kNamed<firnbook::RemarkT>[] = {
    FIRN_FIELD(Remark, VT_TEXT, text),
    FIRN_FIELD(Remark, VT_ABOUT, about),
    FIRN_FIELD(Remark, VT_CONFIDENTIAL, confidential),
};
template <>
inline constexpr Named kNamed<firnbook::AbsenceT>[] = {
    FIRN_FIELD(Absence, VT_ABOUT, about),
    FIRN_FIELD(Absence, VT_REASON, reason),
    FIRN_FIELD(Absence, VT_WORDS, words),
};
template <>
inline constexpr Named kNamed<firnbook::ExtensionT>[] = {
    FIRN_FIELD(Extension, VT_KEY, key),
    FIRN_FIELD(Extension, VT_BYTES, bytes),
    FIRN_FIELD(Extension, VT_ABOUT, about),
};
template <>
inline constexpr Named kNamed<firnbook::UnreadT>[] = {
    FIRN_FIELD(Unread, VT_LINE, line),
    FIRN_FIELD(Unread, VT_TEXT, text),
    FIRN_FIELD(Unread, VT_EXPECTED, expected),
};
template <>
inline constexpr Named kNamed<firnbook::ObserverT>[] = {
    FIRN_FIELD(Observer, VT_NAME, name),
    FIRN_FIELD(Observer, VT_TRAINING, training),
    FIRN_FIELD(Observer, VT_ID, id),
    FIRN_FIELD(Observer, VT_WORDS, words),
};
template <>
inline constexpr Named kNamed<firnbook::OperationT>[] = {
    FIRN_FIELD(Operation, VT_NAME, name),
    FIRN_FIELD(Operation, VT_ID, id),
    FIRN_FIELD(Operation, VT_CONTACTS, contacts),
};
template <>
inline constexpr Named kNamed<firnbook::SiteT>[] = {
    FIRN_FIELD(Site, VT_NAME, name),
    FIRN_FIELD(Site, VT_POINT_KIND, point_kind),
    FIRN_FIELD(Site, VT_ELEVATION_10UM, elevation_10um),
    FIRN_FIELD(Site, VT_ELEVATION_SOURCE, elevation_source),
    FIRN_FIELD(Site, VT_ASPECT_POINT, aspect_point),
    FIRN_FIELD(Site, VT_ASPECT_DEG, aspect_deg),
    FIRN_FIELD(Site, VT_SLOPE_DEG, slope_deg),
    FIRN_FIELD(Site, VT_LATITUDE_E7DEG, latitude_e7deg),
    FIRN_FIELD(Site, VT_LONGITUDE_E7DEG, longitude_e7deg),
    FIRN_FIELD(Site, VT_POSITION_ACCURACY_10UM, position_accuracy_10um),
    FIRN_FIELD(Site, VT_POSITION_SOURCE, position_source),
    FIRN_FIELD(Site, VT_COUNTRY, country),
    FIRN_FIELD(Site, VT_REGION, region),
    FIRN_FIELD(Site, VT_ID, id),
    FIRN_FIELD(Site, VT_POINT_ID, point_id),
    FIRN_FIELD(Site, VT_BLURRED_BY_10UM, blurred_by_10um),
    FIRN_FIELD(Site, VT_PROBES_10UM, probes_10um),
    FIRN_FIELD(Site, VT_TERRAIN, terrain),
    FIRN_FIELD(Site, VT_UNRELIABLE, unreliable),
};
template <>
inline constexpr Named kNamed<firnbook::ChoiceT>[] = {
    FIRN_FIELD(Choice, VT_WORDS, words),
    FIRN_FIELD(Choice, VT_TERRAIN_OF_INTEREST, terrain_of_interest),
    FIRN_FIELD(Choice, VT_ASPECT, aspect),
    FIRN_FIELD(Choice, VT_ELEVATION, elevation),
    FIRN_FIELD(Choice, VT_WIND_LOADING, wind_loading),
    FIRN_FIELD(Choice, VT_INCLINE, incline),
    FIRN_FIELD(Choice, VT_INTEREST_ASPECT_POINT, interest_aspect_point),
    FIRN_FIELD(Choice, VT_INTEREST_ASPECT_DEG, interest_aspect_deg),
    FIRN_FIELD(Choice, VT_INTEREST_ELEVATION_10UM, interest_elevation_10um),
    FIRN_FIELD(Choice, VT_INTEREST_SLOPE_DEG, interest_slope_deg),
    FIRN_FIELD(Choice, VT_UNRELIABLE, unreliable),
};
template <>
inline constexpr Named kNamed<firnbook::WeatherT>[] = {
    FIRN_FIELD(Weather, VT_SKY, sky),
    FIRN_FIELD(Weather, VT_SKY_THIN, sky_thin),
    FIRN_FIELD(Weather, VT_SKY_FAMILY, sky_family),
    FIRN_FIELD(Weather, VT_VALLEY_FOG_BASE_10UM, valley_fog_base_10um),
    FIRN_FIELD(Weather, VT_VALLEY_FOG_TOP_10UM, valley_fog_top_10um),
    FIRN_FIELD(Weather, VT_PRECIPITATION, precipitation),
    FIRN_FIELD(Weather, VT_PRECIPITATION_FAMILY, precipitation_family),
    FIRN_FIELD(Weather, VT_PRECIPITATION_RATE, precipitation_rate),
    FIRN_FIELD(Weather, VT_AIR_TEMPERATURE_CDEGC, air_temperature_cdegc),
    FIRN_FIELD(Weather, VT_WIND, wind),
    FIRN_FIELD(Weather, VT_WIND_SPEED_CMS, wind_speed_cms),
    FIRN_FIELD(Weather, VT_WIND_FROM_POINT, wind_from_point),
    FIRN_FIELD(Weather, VT_WIND_FROM_DEG, wind_from_deg),
    FIRN_FIELD(Weather, VT_BLOWING_SNOW, blowing_snow),
    FIRN_FIELD(Weather, VT_BLOWING_SNOW_FROM_POINT, blowing_snow_from_point),
    FIRN_FIELD(Weather, VT_WORDS, words),
    FIRN_FIELD(Weather, VT_UNRELIABLE, unreliable),
};
template <>
inline constexpr Named kNamed<firnbook::SurfaceT>[] = {
    FIRN_FIELD(Surface, VT_ROUGHNESS, roughness),
    FIRN_FIELD(Surface, VT_AMPLITUDE_10UM, amplitude_10um),
    FIRN_FIELD(Surface, VT_AMPLITUDE_MAX_10UM, amplitude_max_10um),
    FIRN_FIELD(Surface, VT_WAVELENGTH_10UM, wavelength_10um),
    FIRN_FIELD(Surface, VT_WAVELENGTH_MAX_10UM, wavelength_max_10um),
    FIRN_FIELD(Surface, VT_FEATURE_ASPECT_POINT, feature_aspect_point),
    FIRN_FIELD(Surface, VT_FEATURE_ASPECT_DEG, feature_aspect_deg),
    FIRN_FIELD(Surface, VT_PENETRATION_RAM_10UM, penetration_ram_10um),
    FIRN_FIELD(Surface, VT_PENETRATION_FOOT_10UM, penetration_foot_10um),
    FIRN_FIELD(Surface, VT_PENETRATION_SKI_10UM, penetration_ski_10um),
    FIRN_FIELD(Surface, VT_TEMPERATURE_CDEGC, temperature_cdegc),
    FIRN_FIELD(Surface, VT_WORDS, words),
    FIRN_FIELD(Surface, VT_UNRELIABLE, unreliable),
};
template <>
inline constexpr Named kNamed<firnbook::SnowpackT>[] = {
    FIRN_FIELD(Snowpack, VT_HS_10UM, hs_10um),
    FIRN_FIELD(Snowpack, VT_HS_WATER_10UM, hs_water_10um),
    FIRN_FIELD(Snowpack, VT_HN24_10UM, hn24_10um),
    FIRN_FIELD(Snowpack, VT_HN24_WATER_10UM, hn24_water_10um),
    FIRN_FIELD(Snowpack, VT_HIN_10UM, hin_10um),
    FIRN_FIELD(Snowpack, VT_HIN_WATER_10UM, hin_water_10um),
    FIRN_FIELD(Snowpack, VT_HIN_CLEARED, hin_cleared),
    FIRN_FIELD(Snowpack, VT_HST_10UM, hst_10um),
    FIRN_FIELD(Snowpack, VT_HST_WATER_10UM, hst_water_10um),
    FIRN_FIELD(Snowpack, VT_DIRECTION, direction),
    FIRN_FIELD(Snowpack, VT_UNRELIABLE, unreliable),
};
template <>
inline constexpr Named kNamed<firnbook::LayerNameT>[] = {
    FIRN_FIELD(LayerName, VT_DATE, date),
    FIRN_FIELD(LayerName, VT_KIND, kind),
    FIRN_FIELD(LayerName, VT_WORDS, words),
};
template <>
inline constexpr Named kNamed<firnbook::LayerT>[] = {
    FIRN_FIELD(Layer, VT_TOP, top),
    FIRN_FIELD(Layer, VT_BOTTOM, bottom),
    FIRN_FIELD(Layer, VT_HARDNESS, hardness),
    FIRN_FIELD(Layer, VT_HARDNESS_TOP, hardness_top),
    FIRN_FIELD(Layer, VT_HARDNESS_BOTTOM, hardness_bottom),
    FIRN_FIELD(Layer, VT_GRAIN_FORM, grain_form),
    FIRN_FIELD(Layer, VT_GRAIN_FORM_SECOND, grain_form_second),
    FIRN_FIELD(Layer, VT_GRAIN_SIZE_10UM, grain_size_10um),
    FIRN_FIELD(Layer, VT_GRAIN_SIZE_MAX_10UM, grain_size_max_10um),
    FIRN_FIELD(Layer, VT_GRAIN_SIZE_CLASS, grain_size_class),
    FIRN_FIELD(Layer, VT_GRAIN_SIZE_MAX_CLASS, grain_size_max_class),
    FIRN_FIELD(Layer, VT_WETNESS, wetness),
    FIRN_FIELD(Layer, VT_WORDS, words),
    FIRN_FIELD(Layer, VT_CANDIDATES, candidates),
    FIRN_FIELD(Layer, VT_NAME, name),
    FIRN_FIELD(Layer, VT_FORMED, formed),
    FIRN_FIELD(Layer, VT_CONCERN, concern),
    FIRN_FIELD(Layer, VT_UNRELIABLE, unreliable),
};
template <>
inline constexpr Named kNamed<firnbook::TemperatureReadingT>[] = {
    FIRN_FIELD(TemperatureReading, VT_DEPTH, depth),
    FIRN_FIELD(TemperatureReading, VT_TEMPERATURE_CDEGC, temperature_cdegc),
    FIRN_FIELD(TemperatureReading, VT_UNCERTAINTY_CDEGC, uncertainty_cdegc),
    FIRN_FIELD(TemperatureReading, VT_UNRELIABLE, unreliable),
};
template <>
inline constexpr Named kNamed<firnbook::DensityReadingT>[] = {
    FIRN_FIELD(DensityReading, VT_TOP, top),
    FIRN_FIELD(DensityReading, VT_BOTTOM, bottom),
    FIRN_FIELD(DensityReading, VT_DENSITY_DKGM3, density_dkgm3),
    FIRN_FIELD(DensityReading, VT_UNRELIABLE, unreliable),
};
template <>
inline constexpr Named kNamed<firnbook::DensityProfileT>[] = {
    FIRN_FIELD(DensityProfile, VT_NUMBER, number),
    FIRN_FIELD(DensityProfile, VT_METHOD, method),
    FIRN_FIELD(DensityProfile, VT_UNCERTAINTY_DKGM3, uncertainty_dkgm3),
    FIRN_FIELD(DensityProfile, VT_PROBE_VOLUME_MM3, probe_volume_mm3),
    FIRN_FIELD(DensityProfile, VT_PROBE_DIAMETER_10UM, probe_diameter_10um),
    FIRN_FIELD(DensityProfile, VT_PROBE_LENGTH_10UM, probe_length_10um),
    FIRN_FIELD(DensityProfile, VT_PROBED_THICKNESS_10UM, probed_thickness_10um),
    FIRN_FIELD(DensityProfile, VT_READINGS, readings),
};
template <>
inline constexpr Named kNamed<firnbook::LiquidWaterReadingT>[] = {
    FIRN_FIELD(LiquidWaterReading, VT_TOP, top),
    FIRN_FIELD(LiquidWaterReading, VT_BOTTOM, bottom),
    FIRN_FIELD(LiquidWaterReading, VT_LIQUID_WATER_E4, liquid_water_e4),
    FIRN_FIELD(LiquidWaterReading, VT_UNRELIABLE, unreliable),
};
template <>
inline constexpr Named kNamed<firnbook::LiquidWaterProfileT>[] = {
    FIRN_FIELD(LiquidWaterProfile, VT_NUMBER, number),
    FIRN_FIELD(LiquidWaterProfile, VT_METHOD, method),
    FIRN_FIELD(LiquidWaterProfile, VT_UNCERTAINTY_E4, uncertainty_e4),
    FIRN_FIELD(LiquidWaterProfile, VT_PROBED_THICKNESS_10UM, probed_thickness_10um),
    FIRN_FIELD(LiquidWaterProfile, VT_READINGS, readings),
};
template <>
inline constexpr Named kNamed<firnbook::SurfaceAreaReadingT>[] = {
    FIRN_FIELD(SurfaceAreaReading, VT_TOP, top),
    FIRN_FIELD(SurfaceAreaReading, VT_BOTTOM, bottom),
    FIRN_FIELD(SurfaceAreaReading, VT_SURFACE_AREA_E2M2KG, surface_area_e2m2kg),
    FIRN_FIELD(SurfaceAreaReading, VT_UNRELIABLE, unreliable),
};
template <>
inline constexpr Named kNamed<firnbook::SurfaceAreaProfileT>[] = {
    FIRN_FIELD(SurfaceAreaProfile, VT_NUMBER, number),
    FIRN_FIELD(SurfaceAreaProfile, VT_METHOD, method),
    FIRN_FIELD(SurfaceAreaProfile, VT_UNCERTAINTY_E2M2KG, uncertainty_e2m2kg),
    FIRN_FIELD(SurfaceAreaProfile, VT_PROBED_THICKNESS_10UM, probed_thickness_10um),
    FIRN_FIELD(SurfaceAreaProfile, VT_READINGS, readings),
    FIRN_FIELD(SurfaceAreaProfile, VT_DENSE_DEPTH_CM, dense_depth_cm),
    FIRN_FIELD(SurfaceAreaProfile, VT_DENSE_M2KG, dense_m2kg),
};
template <>
inline constexpr Named kNamed<firnbook::HardnessReadingT>[] = {
    FIRN_FIELD(HardnessReading, VT_TOP, top),
    FIRN_FIELD(HardnessReading, VT_BOTTOM, bottom),
    FIRN_FIELD(HardnessReading, VT_RESISTANCE_MN, resistance_mn),
    FIRN_FIELD(HardnessReading, VT_HAMMER_G, hammer_g),
    FIRN_FIELD(HardnessReading, VT_TUBE_G, tube_g),
    FIRN_FIELD(HardnessReading, VT_DROPS, drops),
    FIRN_FIELD(HardnessReading, VT_DROP_HEIGHT_10UM, drop_height_10um),
    FIRN_FIELD(HardnessReading, VT_UNRELIABLE, unreliable),
};
template <>
inline constexpr Named kNamed<firnbook::HardnessProfileT>[] = {
    FIRN_FIELD(HardnessProfile, VT_NUMBER, number),
    FIRN_FIELD(HardnessProfile, VT_METHOD, method),
    FIRN_FIELD(HardnessProfile, VT_UNCERTAINTY_MN, uncertainty_mn),
    FIRN_FIELD(HardnessProfile, VT_INDENTATION_AREA_MM2, indentation_area_mm2),
    FIRN_FIELD(HardnessProfile, VT_READINGS, readings),
    FIRN_FIELD(HardnessProfile, VT_DENSE_DEPTH_CM, dense_depth_cm),
    FIRN_FIELD(HardnessProfile, VT_DENSE_N, dense_n),
};
template <>
inline constexpr Named kNamed<firnbook::StrengthReadingT>[] = {
    FIRN_FIELD(StrengthReading, VT_TOP, top),
    FIRN_FIELD(StrengthReading, VT_BOTTOM, bottom),
    FIRN_FIELD(StrengthReading, VT_STRENGTH_PA, strength_pa),
    FIRN_FIELD(StrengthReading, VT_CHARACTER, character),
    FIRN_FIELD(StrengthReading, VT_QUALITY, quality),
    FIRN_FIELD(StrengthReading, VT_FRACTURE_SURFACE, fracture_surface),
    FIRN_FIELD(StrengthReading, VT_UNRELIABLE, unreliable),
};
template <>
inline constexpr Named kNamed<firnbook::StrengthProfileT>[] = {
    FIRN_FIELD(StrengthProfile, VT_NUMBER, number),
    FIRN_FIELD(StrengthProfile, VT_KIND, kind),
    FIRN_FIELD(StrengthProfile, VT_METHOD, method),
    FIRN_FIELD(StrengthProfile, VT_UNCERTAINTY_PA, uncertainty_pa),
    FIRN_FIELD(StrengthProfile, VT_PROBED_AREA_MM2, probed_area_mm2),
    FIRN_FIELD(StrengthProfile, VT_READINGS, readings),
};
template <>
inline constexpr Named kNamed<firnbook::ImpurityReadingT>[] = {
    FIRN_FIELD(ImpurityReading, VT_TOP, top),
    FIRN_FIELD(ImpurityReading, VT_BOTTOM, bottom),
    FIRN_FIELD(ImpurityReading, VT_MASS_FRACTION_E6, mass_fraction_e6),
    FIRN_FIELD(ImpurityReading, VT_MASS_FRACTION_UNIT, mass_fraction_unit),
    FIRN_FIELD(ImpurityReading, VT_VOLUME_FRACTION_E6, volume_fraction_e6),
    FIRN_FIELD(ImpurityReading, VT_VOLUME_FRACTION_UNIT, volume_fraction_unit),
    FIRN_FIELD(ImpurityReading, VT_UNRELIABLE, unreliable),
    FIRN_FIELD(ImpurityReading, VT_UNIT_WORDS, unit_words),
};
template <>
inline constexpr Named kNamed<firnbook::ImpurityProfileT>[] = {
    FIRN_FIELD(ImpurityProfile, VT_NUMBER, number),
    FIRN_FIELD(ImpurityProfile, VT_IMPURITY, impurity),
    FIRN_FIELD(ImpurityProfile, VT_METHOD, method),
    FIRN_FIELD(ImpurityProfile, VT_UNCERTAINTY_E6, uncertainty_e6),
    FIRN_FIELD(ImpurityProfile, VT_UNCERTAINTY_UNIT, uncertainty_unit),
    FIRN_FIELD(ImpurityProfile, VT_PROBED_THICKNESS_10UM, probed_thickness_10um),
    FIRN_FIELD(ImpurityProfile, VT_READINGS, readings),
    FIRN_FIELD(ImpurityProfile, VT_UNCERTAINTY_UNIT_WORDS, uncertainty_unit_words),
};
template <>
inline constexpr Named kNamed<firnbook::FractureT>[] = {
    FIRN_FIELD(Fracture, VT_DEPTH, depth),
    FIRN_FIELD(Fracture, VT_TAP, tap),
    FIRN_FIELD(Fracture, VT_TAP_CROSSED, tap_crossed),
    FIRN_FIELD(Fracture, VT_STAGE, stage),
    FIRN_FIELD(Fracture, VT_CHARACTER, character),
    FIRN_FIELD(Fracture, VT_QUALITY, quality),
    FIRN_FIELD(Fracture, VT_FRACTURE_SURFACE, fracture_surface),
    FIRN_FIELD(Fracture, VT_CROSSING, crossing),
    FIRN_FIELD(Fracture, VT_STEP, step),
    FIRN_FIELD(Fracture, VT_JUMP, jump),
    FIRN_FIELD(Fracture, VT_RELEASE, release),
    FIRN_FIELD(Fracture, VT_CUT_10UM, cut_10um),
    FIRN_FIELD(Fracture, VT_SAW_END, saw_end),
    FIRN_FIELD(Fracture, VT_EASE, ease),
    FIRN_FIELD(Fracture, VT_FORCE_MN, force_mn),
    FIRN_FIELD(Fracture, VT_ON, on),
    FIRN_FIELD(Fracture, VT_PART, part),
    FIRN_FIELD(Fracture, VT_WORDS, words),
    FIRN_FIELD(Fracture, VT_UNRELIABLE, unreliable),
};
template <>
inline constexpr Named kNamed<firnbook::StabilityTestT>[] = {
    FIRN_FIELD(StabilityTest, VT_KIND, kind),
    FIRN_FIELD(StabilityTest, VT_OUTCOME, outcome),
    FIRN_FIELD(StabilityTest, VT_FRACTURES, fractures),
    FIRN_FIELD(StabilityTest, VT_NOT_VALID_REASON, not_valid_reason),
    FIRN_FIELD(StabilityTest, VT_COLUMN_WIDTH_10UM, column_width_10um),
    FIRN_FIELD(StabilityTest, VT_COLUMN_LENGTH_10UM, column_length_10um),
    FIRN_FIELD(StabilityTest, VT_COLUMN_DEPTH_10UM, column_depth_10um),
    FIRN_FIELD(StabilityTest, VT_SLAB_LEFT_10UM, slab_left_10um),
    FIRN_FIELD(StabilityTest, VT_COLUMN_ENDS, column_ends),
    FIRN_FIELD(StabilityTest, VT_SLOPE_DEG, slope_deg),
    FIRN_FIELD(StabilityTest, VT_CROSSING_RULE, crossing_rule),
    FIRN_FIELD(StabilityTest, VT_TAPS_GIVEN, taps_given),
    FIRN_FIELD(StabilityTest, VT_UNBROKEN, unbroken),
    FIRN_FIELD(StabilityTest, VT_WORDS, words),
    FIRN_FIELD(StabilityTest, VT_UNRELIABLE, unreliable),
};
template <>
inline constexpr Named kNamed<firnbook::SignT>[] = {
    FIRN_FIELD(Sign, VT_KIND, kind),
    FIRN_FIELD(Sign, VT_ANSWER, answer),
    FIRN_FIELD(Sign, VT_LENGTH_10UM, length_10um),
    FIRN_FIELD(Sign, VT_SEEN, seen),
    FIRN_FIELD(Sign, VT_WORDS, words),
    FIRN_FIELD(Sign, VT_UNRELIABLE, unreliable),
};
template <>
inline constexpr Named kNamed<firnbook::SlideT>[] = {
    FIRN_FIELD(Slide, VT_KIND, kind),
    FIRN_FIELD(Slide, VT_TRIGGER, trigger),
    FIRN_FIELD(Slide, VT_SIZE_TENTHS, size_tenths),
    FIRN_FIELD(Slide, VT_ASPECT_POINT, aspect_point),
    FIRN_FIELD(Slide, VT_ASPECT_DEG, aspect_deg),
    FIRN_FIELD(Slide, VT_ELEVATION_10UM, elevation_10um),
    FIRN_FIELD(Slide, VT_AGE_MIN, age_min),
    FIRN_FIELD(Slide, VT_COUNT, count),
    FIRN_FIELD(Slide, VT_WORDS, words),
    FIRN_FIELD(Slide, VT_UNRELIABLE, unreliable),
};
template <>
inline constexpr Named kNamed<firnbook::AssessmentT>[] = {
    FIRN_FIELD(Assessment, VT_WORDS, words),
    FIRN_FIELD(Assessment, VT_PLAN, plan),
    FIRN_FIELD(Assessment, VT_CONFIDENCE, confidence),
};
template <>
inline constexpr Named kNamed<firnbook::BulletinSeenT>[] = {
    FIRN_FIELD(BulletinSeen, VT_STATE, state),
    FIRN_FIELD(BulletinSeen, VT_ID, id),
    FIRN_FIELD(BulletinSeen, VT_REGION, region),
    FIRN_FIELD(BulletinSeen, VT_WORDS, words),
};
template <>
inline constexpr Named kNamed<firnbook::PhotoT>[] = {
    FIRN_FIELD(Photo, VT_REFERENCE, reference), FIRN_FIELD(Photo, VT_TAKEN, taken),
    FIRN_FIELD(Photo, VT_ABOUT, about),         FIRN_FIELD(Photo, VT_WORDS, words),
    FIRN_FIELD(Photo, VT_SHA256, sha256),
};
template <>
inline constexpr Named kNamed<firnbook::StepT>[] = {
    FIRN_FIELD(Step, VT_KIND, kind),
    FIRN_FIELD(Step, VT_DONE, done),
    FIRN_FIELD(Step, VT_MADE, made),
    FIRN_FIELD(Step, VT_WORDS, words),
};
template <>
inline constexpr Named kNamed<firnbook::PitT>[] = {
    FIRN_FIELD(Pit, VT_SCHEMA_MINOR, schema_minor),
    FIRN_FIELD(Pit, VT_ID, id),
    FIRN_FIELD(Pit, VT_TITLE, title),
    FIRN_FIELD(Pit, VT_PURPOSE, purpose),
    FIRN_FIELD(Pit, VT_TIME, time),
    FIRN_FIELD(Pit, VT_REPORTED, reported),
    FIRN_FIELD(Pit, VT_EDITED, edited),
    FIRN_FIELD(Pit, VT_OBSERVERS, observers),
    FIRN_FIELD(Pit, VT_OPERATION, operation),
    FIRN_FIELD(Pit, VT_SITE, site),
    FIRN_FIELD(Pit, VT_CHOICE, choice),
    FIRN_FIELD(Pit, VT_WEATHER, weather),
    FIRN_FIELD(Pit, VT_SURFACE, surface),
    FIRN_FIELD(Pit, VT_SNOWPACK, snowpack),
    FIRN_FIELD(Pit, VT_PROFILE_DEPTH_10UM, profile_depth_10um),
    FIRN_FIELD(Pit, VT_REACHED_GROUND, reached_ground),
    FIRN_FIELD(Pit, VT_LAYERS, layers),
    FIRN_FIELD(Pit, VT_TEMPERATURES, temperatures),
    FIRN_FIELD(Pit, VT_DENSITIES, densities),
    FIRN_FIELD(Pit, VT_LIQUID_WATER, liquid_water),
    FIRN_FIELD(Pit, VT_SURFACE_AREA, surface_area),
    FIRN_FIELD(Pit, VT_HARDNESS, hardness),
    FIRN_FIELD(Pit, VT_STRENGTH, strength),
    FIRN_FIELD(Pit, VT_IMPURITIES, impurities),
    FIRN_FIELD(Pit, VT_TESTS, tests),
    FIRN_FIELD(Pit, VT_SIGNS, signs),
    FIRN_FIELD(Pit, VT_SLIDES, slides),
    FIRN_FIELD(Pit, VT_ASSESSMENT, assessment),
    FIRN_FIELD(Pit, VT_BULLETIN, bulletin),
    FIRN_FIELD(Pit, VT_BACKFILLED, backfilled),
    FIRN_FIELD(Pit, VT_PHOTOS, photos),
    FIRN_FIELD(Pit, VT_REMARKS, remarks),
    FIRN_FIELD(Pit, VT_ABSENCES, absences),
    FIRN_FIELD(Pit, VT_UNREAD, unread),
    FIRN_FIELD(Pit, VT_EXTENSIONS, extensions),
    FIRN_FIELD(Pit, VT_SHARING, sharing),
    FIRN_FIELD(Pit, VT_PRACTICE, practice),
    FIRN_FIELD(Pit, VT_APPLICATION, application),
    FIRN_FIELD(Pit, VT_APPLICATION_VERSION, application_version),
    FIRN_FIELD(Pit, VT_STEPS, steps),
    FIRN_FIELD(Pit, VT_UNREAD_EDITS, unread_edits),
};

}  // namespace

template <class Object>
const Table& table_of() {
  return kTable<Object>;
}
template const Table& table_of<firnbook::RemarkT>();
template const Table& table_of<firnbook::AbsenceT>();
template const Table& table_of<firnbook::ExtensionT>();
template const Table& table_of<firnbook::UnreadT>();
template const Table& table_of<firnbook::ObserverT>();
template const Table& table_of<firnbook::OperationT>();
template const Table& table_of<firnbook::SiteT>();
template const Table& table_of<firnbook::ChoiceT>();
template const Table& table_of<firnbook::WeatherT>();
template const Table& table_of<firnbook::SurfaceT>();
template const Table& table_of<firnbook::SnowpackT>();
template const Table& table_of<firnbook::LayerNameT>();
template const Table& table_of<firnbook::LayerT>();
template const Table& table_of<firnbook::TemperatureReadingT>();
template const Table& table_of<firnbook::DensityReadingT>();
template const Table& table_of<firnbook::DensityProfileT>();
template const Table& table_of<firnbook::LiquidWaterReadingT>();
template const Table& table_of<firnbook::LiquidWaterProfileT>();
template const Table& table_of<firnbook::SurfaceAreaReadingT>();
template const Table& table_of<firnbook::SurfaceAreaProfileT>();
template const Table& table_of<firnbook::HardnessReadingT>();
template const Table& table_of<firnbook::HardnessProfileT>();
template const Table& table_of<firnbook::StrengthReadingT>();
template const Table& table_of<firnbook::StrengthProfileT>();
template const Table& table_of<firnbook::ImpurityReadingT>();
template const Table& table_of<firnbook::ImpurityProfileT>();
template const Table& table_of<firnbook::FractureT>();
template const Table& table_of<firnbook::StabilityTestT>();
template const Table& table_of<firnbook::SignT>();
template const Table& table_of<firnbook::SlideT>();
template const Table& table_of<firnbook::AssessmentT>();
template const Table& table_of<firnbook::BulletinSeenT>();
template const Table& table_of<firnbook::PhotoT>();
template const Table& table_of<firnbook::StepT>();
template const Table& table_of<firnbook::PitT>();

}  // namespace firn::form
