#include "notation/note_tables.h"

#include <memory>

namespace firn::notation {
namespace {

using firnbook::Absence;
using firnbook::Assessment;
using firnbook::BulletinSeen;
using firnbook::Choice;
using firnbook::Extension;
using firnbook::Observer;
using firnbook::Operation;
using firnbook::Photo;
using firnbook::Pit;
using firnbook::PitT;
using firnbook::Remark;
using firnbook::Sign;
using firnbook::Site;
using firnbook::Slide;
using firnbook::Snowpack;
using firnbook::Step;
using firnbook::Surface;
using firnbook::Thing;
using firnbook::Unread;
using firnbook::Weather;

constexpr auto kCm = LengthUnit::cm;
constexpr auto kMm = LengthUnit::mm;
constexpr auto kM = LengthUnit::m;

template <std::size_t N>
constexpr CodeTable table_of(const Code (&codes)[N]) {
  return {codes, N};
}
template <std::size_t N, std::size_t S>
constexpr CodeTable table_of(const Code (&codes)[N], const Synonym (&synonyms)[S]) {
  return {codes, N, synonyms, S};
}

CodeTable reached(const void*) {
  static constexpr Code kCodes[] = {{0, "not reached", ""}, {1, "reached", ""}};
  static constexpr Synonym kAlso[] = {{0, "no"}, {1, "yes"}};
  return table_of(kCodes, kAlso);
}

CodeTable directions(const void*) {
  return direction_codes();
}

CodeTable thin(const void*) {
  static constexpr Code kCodes[] = {{0, "not thin", ""}, {1, "thin", ""}};
  static constexpr Synonym kAlso[] = {{1, "-"}};
  return table_of(kCodes, kAlso);
}

CodeTable answers(const void*) {
  static constexpr Code kCodes[] = {{1, "yes", ""}, {2, "no", ""}, {3, "not looked for", ""}};
  static constexpr Synonym kAlso[] = {{2, "none seen"}, {2, "none"}};
  return table_of(kCodes, kAlso);
}

// The guidelines' letters where the book is named; without a book METAR's codes, and the guidelines' kinds in
// words or in letters that METAR does not use (observation guidelines, from memory).
CodeTable precipitation_codes(const void* weather) {
  static constexpr Code kOgrs[] = {{101, "NIL", ""}, {102, "R", ""}, {103, "S", ""},
                                   {104, "RS", ""},  {105, "G", ""}, {106, "ZR", ""}};
  static constexpr Code kSwag[] = {{101, "NO", ""}, {102, "RA", ""}, {103, "SN", ""},
                                   {104, "RS", ""}, {105, "GR", ""}, {106, "ZR", ""}};
  static constexpr Code kPlain[] = {{1, "-DZ", ""},       {2, "DZ", ""},
                                    {3, "+DZ", ""},       {4, "-RA", ""},
                                    {5, "RA", ""},        {6, "+RA", ""},
                                    {7, "-SN", ""},       {8, "SN", ""},
                                    {9, "+SN", ""},       {10, "-SG", ""},
                                    {11, "SG", ""},       {12, "+SG", ""},
                                    {13, "-IC", ""},      {14, "IC", ""},
                                    {15, "+IC", ""},      {16, "-PE", ""},
                                    {17, "PE", ""},       {18, "+PE", ""},
                                    {19, "-GR", ""},      {20, "GR", ""},
                                    {21, "+GR", ""},      {22, "-GS", ""},
                                    {23, "GS", ""},       {24, "+GS", ""},
                                    {25, "UP", ""},       {26, "Nil", ""},
                                    {27, "RASN", ""},     {28, "FZRA", ""},
                                    {101, "none", ""},    {102, "rain", ""},
                                    {103, "snow", ""},    {104, "mixed", ""},
                                    {105, "graupel", ""}, {106, "freezing rain", ""}};
  static constexpr Synonym kAlso[] = {{101, "NO"}, {102, "R"}, {103, "S"},
                                      {104, "RS"}, {105, "G"}, {106, "ZR"}};
  const auto& family = static_cast<const firnbook::WeatherT*>(weather)->precipitation_family;
  if (family && *family == firnbook::CodeFamily::ogrs) return table_of(kOgrs);
  if (family && *family == firnbook::CodeFamily::swag) return table_of(kSwag);
  return table_of(kPlain, kAlso);
}

// --- head ------------------------------------------------------------------------------------------------

using firnbook::OperationT;

constexpr Item kTitleItems[] = {
    text_item<&PitT::title>("", Pit::VT_TITLE, "the title of the pit").to_end_of_line()};
constexpr Item kIdItems[] = {
    text_item<&PitT::id>("", Pit::VT_ID, "the identifier of the pit").to_end_of_line()};
constexpr Item kPurposeItems[] = {code_item<&PitT::purpose>("", Pit::VT_PURPOSE, "what the pit was dug for")};
constexpr Item kTimeItems[] = {span_item<&PitT::time>("", Pit::VT_TIME, "the time of the pit")};
constexpr Item kReportedItems[] = {
    moment_item<&PitT::reported>("", Pit::VT_REPORTED, "when the pit was reported")};
constexpr Item kEditedItems[] = {moment_item<&PitT::edited>("", Pit::VT_EDITED, "when the pit was edited")};
constexpr Item kOperationItems[] = {
    text_item<&OperationT::name>("name", Operation::VT_NAME, "the name of the operation")
        .in_loose_words()
        .standing_alone(),
    text_item<&OperationT::id>("id", Operation::VT_ID, "the identifier of the operation").in_loose_words()};

// --- site ------------------------------------------------------------------------------------------------

using firnbook::ChoiceT;
using firnbook::SiteT;

constexpr Item kSiteItems[] = {
    length_item<&SiteT::elevation_10um>("elevation", Site::VT_ELEVATION_10UM, kM, "the elevation in m")
        .standing_alone(),
    code_item<&SiteT::aspect_point>("aspect", Site::VT_ASPECT_POINT, "the aspect as N, NE, ...")
        .standing_alone(),
    number_item<&SiteT::aspect_deg>("facing", Site::VT_ASPECT_DEG, 0, "deg", "the aspect in degrees"),
    number_item<&SiteT::slope_deg>("slope", Site::VT_SLOPE_DEG, 0, "deg", "the slope angle in deg")
        .standing_alone(),
    text_item<&SiteT::name>("name", Site::VT_NAME, "the name of the place").in_loose_words(),
    text_item<&SiteT::point_kind>("kind", Site::VT_POINT_KIND, "the kind of place").in_loose_words(),
    code_item<&SiteT::elevation_source>("elevation from", Site::VT_ELEVATION_SOURCE,
                                        "where the elevation came from"),
    number_item<&SiteT::latitude_e7deg>("lat", Site::VT_LATITUDE_E7DEG, 7, "", "the latitude in degrees"),
    number_item<&SiteT::longitude_e7deg>("lon", Site::VT_LONGITUDE_E7DEG, 7, "", "the longitude in degrees"),
    length_item<&SiteT::position_accuracy_10um>("accuracy", Site::VT_POSITION_ACCURACY_10UM, kM,
                                                "the accuracy of the position in m"),
    code_item<&SiteT::position_source>("position from", Site::VT_POSITION_SOURCE,
                                       "where the position came from"),
    text_item<&SiteT::country>("country", Site::VT_COUNTRY, "the country").in_loose_words(),
    text_item<&SiteT::region>("region", Site::VT_REGION, "the region").in_loose_words(),
    text_item<&SiteT::id>("id", Site::VT_ID, "the identifier of the site").in_loose_words(),
    text_item<&SiteT::point_id>("point id", Site::VT_POINT_ID, "the identifier of the point")
        .in_loose_words(),
    length_item<&SiteT::blurred_by_10um>("blurred by", Site::VT_BLURRED_BY_10UM, kM,
                                         "how far the position was moved, in m"),
    text_item<&SiteT::terrain>("terrain", Site::VT_TERRAIN, "the terrain in words").in_loose_words()};

constexpr Item kChosenItems[] = {
    text_item<&ChoiceT::words>("", Choice::VT_WORDS, "why this place was chosen").to_end_of_line()};
constexpr Item kInterestItems[] = {
    text_item<&ChoiceT::terrain_of_interest>("terrain", Choice::VT_TERRAIN_OF_INTEREST,
                                             "the terrain of interest")
        .in_loose_words()
        .standing_alone(),
    code_item<&ChoiceT::aspect>("aspect", Choice::VT_ASPECT, "how the aspect compares"),
    code_item<&ChoiceT::elevation>("elevation", Choice::VT_ELEVATION, "how the elevation compares"),
    code_item<&ChoiceT::wind_loading>("wind loading", Choice::VT_WIND_LOADING,
                                      "how the wind loading compares"),
    code_item<&ChoiceT::incline>("incline", Choice::VT_INCLINE, "how the incline compares"),
    length_item<&ChoiceT::interest_elevation_10um>("at", Choice::VT_INTEREST_ELEVATION_10UM, kM,
                                                   "its elevation in m")
        .standing_alone(),
    code_item<&ChoiceT::interest_aspect_point>("point", Choice::VT_INTEREST_ASPECT_POINT,
                                               "its aspect as N, NE, ...")
        .standing_alone(),
    number_item<&ChoiceT::interest_aspect_deg>("facing", Choice::VT_INTEREST_ASPECT_DEG, 0, "deg",
                                               "its aspect in degrees"),
    number_item<&ChoiceT::interest_slope_deg>("slope", Choice::VT_INTEREST_SLOPE_DEG, 0, "deg",
                                              "its slope angle in deg")
        .standing_alone()};

// --- weather and surface ---------------------------------------------------------------------------------

using firnbook::SurfaceT;
using firnbook::WeatherT;

constexpr Item kWeatherItems[] = {
    code_item<&WeatherT::sky_family>("book", Weather::VT_SKY_FAMILY, "the book of the sky code")
        .standing_alone()
        .led_by("sky"),
    code_item<&WeatherT::sky_thin>("cloud", Weather::VT_SKY_THIN, "whether the cloud is thin")
        .coded_by(thin)
        .standing_alone()
        .led_by("sky"),
    code_item<&WeatherT::sky>("code", Weather::VT_SKY, "the sky as CLR, FEW, SCT, BKN, OVC or X")
        .standing_alone()
        .led_by("sky")
        .first_of_lead(),
    length_item<&WeatherT::valley_fog_base_10um>("base", Weather::VT_VALLEY_FOG_BASE_10UM, kM,
                                                 "the base of the fog in m")
        .led_by("fog")
        .first_of_lead(),
    length_item<&WeatherT::valley_fog_top_10um>("top", Weather::VT_VALLEY_FOG_TOP_10UM, kM,
                                                "the top of the fog in m")
        .led_by("fog"),
    code_item<&WeatherT::precipitation_family>("book", Weather::VT_PRECIPITATION_FAMILY,
                                               "the book of the precipitation code")
        .standing_alone()
        .led_by("precip"),
    code_item<&WeatherT::precipitation>("code", Weather::VT_PRECIPITATION,
                                        "the precipitation as -SN, S1, Nil, ...")
        .coded_by(precipitation_codes)
        .standing_alone()
        .led_by("precip")
        .first_of_lead(),
    code_item<&WeatherT::precipitation_rate>("rate", Weather::VT_PRECIPITATION_RATE,
                                             "the rate of precipitation")
        .standing_alone()
        .led_by("precip"),
    number_item<&WeatherT::air_temperature_cdegc>("air", Weather::VT_AIR_TEMPERATURE_CDEGC, 2, "",
                                                  "the air temperature in degrees C")
        .with_silent_unit("C"),
    code_item<&WeatherT::wind>("class", Weather::VT_WIND, "the wind as C, L, M, S or X")
        .standing_alone()
        .led_by("wind")
        .first_of_lead(),
    code_item<&WeatherT::wind_from_point>("from", Weather::VT_WIND_FROM_POINT, "where the wind blows from")
        .better_with_key()
        .led_by("wind"),
    number_item<&WeatherT::wind_speed_cms>("speed", Weather::VT_WIND_SPEED_CMS, 2, "m/s",
                                           "the wind speed in m/s")
        .standing_alone()
        .led_by("wind"),
    number_item<&WeatherT::wind_from_deg>("degrees", Weather::VT_WIND_FROM_DEG, 0, "deg",
                                          "where the wind blows from in deg")
        .standing_alone()
        .led_by("wind"),
    code_item<&WeatherT::blowing_snow>("class", Weather::VT_BLOWING_SNOW,
                                       "blowing snow as None, Prev, L, M, I or U")
        .standing_alone()
        .led_by("blowing")
        .first_of_lead(),
    code_item<&WeatherT::blowing_snow_from_point>("from", Weather::VT_BLOWING_SNOW_FROM_POINT,
                                                  "where the snow blows from")
        .better_with_key()
        .led_by("blowing"),
    text_item<&WeatherT::words>("words", Weather::VT_WORDS, "the weather in words").standing_alone()};

constexpr Item kSurfaceItems[] = {
    length_item<&SurfaceT::penetration_foot_10um>("PF", Surface::VT_PENETRATION_FOOT_10UM, kCm,
                                                  "the foot penetration in cm"),
    length_item<&SurfaceT::penetration_ski_10um>("PS", Surface::VT_PENETRATION_SKI_10UM, kCm,
                                                 "the ski penetration in cm"),
    length_item<&SurfaceT::penetration_ram_10um>("PR", Surface::VT_PENETRATION_RAM_10UM, kCm,
                                                 "the ram penetration in cm"),
    code_item<&SurfaceT::roughness>("roughness", Surface::VT_ROUGHNESS,
                                    "the roughness as rsm, rwa, rcv, rcx or rrd")
        .standing_alone(),
    length_item<&SurfaceT::amplitude_10um>("amplitude", Surface::VT_AMPLITUDE_10UM, kCm,
                                           "the amplitude in cm"),
    length_item<&SurfaceT::amplitude_max_10um>("amplitude max", Surface::VT_AMPLITUDE_MAX_10UM, kCm,
                                               "the largest amplitude in cm"),
    length_item<&SurfaceT::wavelength_10um>("wavelength", Surface::VT_WAVELENGTH_10UM, kCm,
                                            "the wavelength in cm"),
    length_item<&SurfaceT::wavelength_max_10um>("wavelength max", Surface::VT_WAVELENGTH_MAX_10UM, kCm,
                                                "the largest wavelength in cm"),
    code_item<&SurfaceT::feature_aspect_point>("facing", Surface::VT_FEATURE_ASPECT_POINT,
                                               "where the features face"),
    number_item<&SurfaceT::feature_aspect_deg>("facing degrees", Surface::VT_FEATURE_ASPECT_DEG, 0, "deg",
                                               "where the features face, in degrees"),
    number_item<&SurfaceT::temperature_cdegc>("temp", Surface::VT_TEMPERATURE_CDEGC, 2, "",
                                              "the temperature of the surface in degrees C")
        .with_silent_unit("C"),
    text_item<&SurfaceT::words>("words", Surface::VT_WORDS, "the surface in words").standing_alone()};

// --- heights of snow -------------------------------------------------------------------------------------

using firnbook::SnowpackT;

constexpr Item kHsItems[] = {
    length_item<&SnowpackT::hs_10um>("", Snowpack::VT_HS_10UM, kCm, "the height of the snowpack in cm"),
    length_item<&SnowpackT::hs_water_10um>("water", Snowpack::VT_HS_WATER_10UM, kMm,
                                           "its water equivalent in mm"),
    code_item<&SnowpackT::direction>("measured", Snowpack::VT_DIRECTION, "how heights were measured")
        .coded_by(directions)};
constexpr Item kHn24Items[] = {
    length_item<&SnowpackT::hn24_10um>("", Snowpack::VT_HN24_10UM, kCm, "the new snow of 24 hours in cm"),
    length_item<&SnowpackT::hn24_water_10um>("water", Snowpack::VT_HN24_WATER_10UM, kMm,
                                             "its water equivalent in mm")};
constexpr Item kHinItems[] = {
    length_item<&SnowpackT::hin_10um>("", Snowpack::VT_HIN_10UM, kCm, "the new snow on the board in cm"),
    length_item<&SnowpackT::hin_water_10um>("water", Snowpack::VT_HIN_WATER_10UM, kMm,
                                            "its water equivalent in mm"),
    moment_item<&SnowpackT::hin_cleared>("cleared", Snowpack::VT_HIN_CLEARED, "when the board was cleared")};
constexpr Item kHstItems[] = {
    length_item<&SnowpackT::hst_10um>("", Snowpack::VT_HST_10UM, kCm, "the snow of the storm in cm"),
    length_item<&SnowpackT::hst_water_10um>("water", Snowpack::VT_HST_WATER_10UM, kMm,
                                            "its water equivalent in mm")};
constexpr Item kDepthItems[] = {length_item<&PitT::profile_depth_10um>("", Pit::VT_PROFILE_DEPTH_10UM, kCm,
                                                                       "how deep the pit went, in cm")};
constexpr Item kGroundItems[] = {
    code_item<&PitT::reached_ground>("", Pit::VT_REACHED_GROUND, "reached or not reached").coded_by(reached)};

// --- what ends the notes ---------------------------------------------------------------------------------

using firnbook::AssessmentT;
using firnbook::BulletinSeenT;

constexpr Item kBulletinItems[] = {
    code_item<&BulletinSeenT::state>("state", BulletinSeen::VT_STATE, "issued, none issued or not looked at")
        .standing_alone(),
    text_item<&BulletinSeenT::id>("id", BulletinSeen::VT_ID, "the identifier of the bulletin")
        .in_loose_words(),
    text_item<&BulletinSeenT::region>("region", BulletinSeen::VT_REGION, "the region of the bulletin")
        .in_loose_words(),
    text_item<&BulletinSeenT::words>("words", BulletinSeen::VT_WORDS, "the bulletin in words")
        .standing_alone()};
constexpr Item kAssessmentItems[] = {
    text_item<&AssessmentT::words>("words", Assessment::VT_WORDS, "the assessment in quotes")
        .standing_alone(),
    text_item<&AssessmentT::plan>("plan", Assessment::VT_PLAN, "the plan in quotes"),
    code_item<&AssessmentT::confidence>("confidence", Assessment::VT_CONFIDENCE, "low, fair or high")};
constexpr Item kBackfilledItems[] = {code_item<&PitT::backfilled>("", Pit::VT_BACKFILLED, "yes or no")};
constexpr Item kPracticeItems[] = {code_item<&PitT::practice>("", Pit::VT_PRACTICE, "yes or no")};
constexpr Item kSharingItems[] = {
    code_item<&PitT::sharing>("", Pit::VT_SHARING, "private only, partners, service or public")};
constexpr Item kApplicationItems[] = {
    text_item<&PitT::application>("name", Pit::VT_APPLICATION, "the name of the application")
        .in_loose_words()
        .standing_alone(),
    text_item<&PitT::application_version>("version", Pit::VT_APPLICATION_VERSION, "its version")
        .in_loose_words()};
constexpr Item kEditsItems[] = {number_item<&PitT::unread_edits>("unread", Pit::VT_UNREAD_EDITS, 0, "",
                                                                 "how many edits could not be read")};

// --- lists -----------------------------------------------------------------------------------------------

using firnbook::AbsenceT;
using firnbook::ExtensionT;
using firnbook::ObserverT;
using firnbook::PhotoT;
using firnbook::RemarkT;
using firnbook::SignT;
using firnbook::SlideT;
using firnbook::StepT;
using firnbook::UnreadT;

constexpr Item kPersonItems[] = {
    code_item<&ObserverT::training>("training", Observer::VT_TRAINING, "the avalanche training")
        .standing_alone(),
    text_item<&ObserverT::id>("id", Observer::VT_ID, "the identifier of the observer").in_loose_words(),
    text_item<&ObserverT::words>("words", Observer::VT_WORDS, "words about the observer").standing_alone()};
constexpr Item kSignItems[] = {
    code_item<&SignT::kind>("kind", Sign::VT_KIND, "a sign such as whumpf, cracking or slides")
        .standing_alone(),
    code_item<&SignT::answer>("answer", Sign::VT_ANSWER, "yes, no or not looked for")
        .coded_by(answers)
        .standing_alone(),
    length_item<&SignT::length_10um>("length", Sign::VT_LENGTH_10UM, kM, "how far, in m").standing_alone(),
    moment_item<&SignT::seen>("seen", Sign::VT_SEEN, "when it was seen"),
    text_item<&SignT::words>("words", Sign::VT_WORDS, "words about the sign").standing_alone()};
constexpr Item kStepItems[] = {
    code_item<&StepT::kind>("kind", Step::VT_KIND, "a step such as pack closed or pit filled in")
        .standing_alone(),
    code_item<&StepT::done>("done", Step::VT_DONE, "yes or no").standing_alone(),
    moment_item<&StepT::made>("made", Step::VT_MADE, "when it was done"),
    text_item<&StepT::words>("words", Step::VT_WORDS, "words about the step").standing_alone()};
constexpr Item kSlideItems[] = {
    code_item<&SlideT::kind>("kind", Slide::VT_KIND, "slab, loose, glide, cornice or unknown")
        .standing_alone(),
    number_item<&SlideT::size_tenths>("size", Slide::VT_SIZE_TENTHS, 1, "", "the size from 1 to 5"),
    code_item<&SlideT::trigger>("trigger", Slide::VT_TRIGGER, "the trigger"),
    code_item<&SlideT::aspect_point>("aspect", Slide::VT_ASPECT_POINT, "the aspect as N, NE, ...")
        .standing_alone(),
    number_item<&SlideT::aspect_deg>("facing", Slide::VT_ASPECT_DEG, 0, "deg", "the aspect in degrees"),
    length_item<&SlideT::elevation_10um>("elevation", Slide::VT_ELEVATION_10UM, kM, "the elevation in m")
        .standing_alone(),
    age_item<&SlideT::age_min>("age", Slide::VT_AGE_MIN, "the age as 30 min, 6 h or 2 d"),
    number_item<&SlideT::count>("count", Slide::VT_COUNT, 0, "", "how many slides"),
    text_item<&SlideT::words>("words", Slide::VT_WORDS, "the slide in words").standing_alone()};
constexpr Item kRemarkItems[] = {
    text_item<&RemarkT::text>("words", Remark::VT_TEXT, "the remark in quotes")
        .in_loose_words()
        .standing_alone(),
    place_item<&RemarkT::about>("about", Remark::VT_ABOUT, "what the remark is about"),
    code_item<&RemarkT::confidential>("confidential", Remark::VT_CONFIDENTIAL, "yes or no")};
constexpr Item kAbsenceItems[] = {
    place_item<&AbsenceT::about>("about", Absence::VT_ABOUT, "what is absent"),
    code_item<&AbsenceT::reason>("reason", Absence::VT_REASON, "why it is absent").standing_alone(),
    text_item<&AbsenceT::words>("words", Absence::VT_WORDS, "the reason in words").standing_alone()};
constexpr Item kPhotoItems[] = {
    text_item<&PhotoT::reference>("file", Photo::VT_REFERENCE, "the name of the photo")
        .in_loose_words()
        .standing_alone(),
    moment_item<&PhotoT::taken>("taken", Photo::VT_TAKEN, "when it was taken"),
    place_item<&PhotoT::about>("about", Photo::VT_ABOUT, "what it shows"),
    text_item<&PhotoT::words>("words", Photo::VT_WORDS, "words about the photo"),
    bytes_item<&PhotoT::sha256>(Form::hex, "sha256", Photo::VT_SHA256, "the checksum in hexadecimal digits")};
constexpr Item kExtensionItems[] = {
    text_item<&ExtensionT::key>("key", Extension::VT_KEY, "whose data these are").standing_alone(),
    place_item<&ExtensionT::about>("about", Extension::VT_ABOUT, "what the data are about"),
    bytes_item<&ExtensionT::bytes>(Form::base64, "base64", Extension::VT_BYTES, "the bytes as base64")};
constexpr Item kUnreadItems[] = {
    text_item<&UnreadT::text>("text", Unread::VT_TEXT, "the line in quotes").standing_alone(),
    number_item<&UnreadT::line>("line", Unread::VT_LINE, 0, "", "the number of the line"),
    text_item<&UnreadT::expected>("expected", Unread::VT_EXPECTED, "what was expected, in quotes")};

// --- where the values go ---------------------------------------------------------------------------------

void* pit_itself(PitT& pit) {
  return &pit;
}
const void* pit_present(const PitT& pit) {
  return &pit;
}
template <auto M>
void* part(PitT& pit) {
  auto& owner = pit.*M;
  if (owner == nullptr) owner = std::make_unique<std::remove_reference_t<decltype(*owner)>>();
  return owner.get();
}
template <auto M>
const void* part_present(const PitT& pit) {
  return (pit.*M).get();
}

template <std::size_t N>
constexpr ItemTable of_pit(const Item (&items)[N], bool first_is_main = true) {
  return {items, N, Thing::pit, first_is_main};
}
template <std::size_t N>
constexpr ItemTable of(const Item (&items)[N], Thing thing, bool first_is_main = false) {
  return {items, N, thing, first_is_main};
}
// With the marks of every field that stands neither here nor `elsewhere`.
constexpr ItemTable with_marks(ItemTable items, std::uint64_t elsewhere = 0) {
  items.elsewhere = elsewhere;
  return items;
}
template <std::size_t N>
constexpr std::uint64_t bits_of(const Item (&items)[N]) {
  std::uint64_t bits = 0;
  for (const Item& item : items) bits |= std::uint64_t{1} << item.field;
  return bits;
}
constexpr ItemTable kTitle = of_pit(kTitleItems), kId = of_pit(kIdItems), kPurpose = of_pit(kPurposeItems),
                    kTime = of_pit(kTimeItems), kReported = of_pit(kReportedItems),
                    kEdited = of_pit(kEditedItems), kDepth = of_pit(kDepthItems),
                    kGround = of_pit(kGroundItems), kBackfilled = of_pit(kBackfilledItems),
                    kPractice = of_pit(kPracticeItems), kSharing = of_pit(kSharingItems),
                    kApplication = of_pit(kApplicationItems, false), kEdits = of_pit(kEditsItems, false);
constexpr ItemTable kOperation = of(kOperationItems, Thing::operation);
constexpr ItemTable kSite =
    with_marks(of(kSiteItems, Thing::site), std::uint64_t{1} << field_id(Site::VT_PROBES_10UM));
constexpr ItemTable kWeather = with_marks(of(kWeatherItems, Thing::weather));
constexpr ItemTable kSurface = with_marks(of(kSurfaceItems, Thing::surface));
constexpr ItemTable kHs = with_marks(of(kHsItems, Thing::snowpack, true),
                                     bits_of(kHn24Items) | bits_of(kHinItems) | bits_of(kHstItems));
constexpr ItemTable kHn24 = of(kHn24Items, Thing::snowpack, true);
constexpr ItemTable kHin = of(kHinItems, Thing::snowpack, true);
constexpr ItemTable kHst = of(kHstItems, Thing::snowpack, true);
constexpr ItemTable kBulletin = of(kBulletinItems, Thing::bulletin);
constexpr ItemTable kAssessment = of(kAssessmentItems, Thing::assessment);

constexpr SingleLine of_pit_line(std::string_view keyword, const ItemTable& items) {
  return {keyword, &items, pit_itself, pit_present};
}
template <auto M>
constexpr SingleLine line_of(std::string_view keyword, const ItemTable& items) {
  return {keyword, &items, part<M>, part_present<M>};
}

constexpr SingleLine kHead[] = {of_pit_line("pit", kTitle),
                                of_pit_line("id", kId),
                                of_pit_line("purpose", kPurpose),
                                of_pit_line("time", kTime),
                                of_pit_line("reported", kReported),
                                of_pit_line("edited", kEdited),
                                line_of<&PitT::operation>("operation", kOperation)};
constexpr SingleLine kPlace[] = {line_of<&PitT::site>("site", kSite)};
constexpr SingleLine kBody[] = {line_of<&PitT::weather>("weather", kWeather),
                                line_of<&PitT::surface>("surface", kSurface),
                                line_of<&PitT::snowpack>("HS", kHs),
                                line_of<&PitT::snowpack>("HN24", kHn24),
                                line_of<&PitT::snowpack>("HIN", kHin),
                                line_of<&PitT::snowpack>("HST", kHst),
                                of_pit_line("depth", kDepth),
                                of_pit_line("ground", kGround)};
constexpr SingleLine kTail[] = {line_of<&PitT::bulletin>("bulletin", kBulletin),
                                line_of<&PitT::assessment>("assessment", kAssessment),
                                of_pit_line("backfilled", kBackfilled),
                                of_pit_line("sharing", kSharing),
                                of_pit_line("practice", kPractice),
                                of_pit_line("application", kApplication),
                                of_pit_line("edits", kEdits)};

// The names of the positions and the lines they stand for.
static_assert(kHead[kPitLine].keyword == "pit" && kHead[kIdLine].keyword == "id" &&
              kHead[kPurposeLine].keyword == "purpose" && kHead[kTimeLine].keyword == "time" &&
              kHead[kReportedLine].keyword == "reported" && kHead[kEditedLine].keyword == "edited" &&
              kHead[kOperationLine].keyword == "operation");
static_assert(kBody[kWeatherLine].keyword == "weather" && kBody[kSurfaceLine].keyword == "surface" &&
              kBody[kHsLine].keyword == "HS" && kBody[kHn24Line].keyword == "HN24" &&
              kBody[kHinLine].keyword == "HIN" && kBody[kHstLine].keyword == "HST" &&
              kBody[kDepthLine].keyword == "depth" && kBody[kGroundLine].keyword == "ground");
static_assert(kTail[kBulletinLine].keyword == "bulletin" && kTail[kAssessmentLine].keyword == "assessment" &&
              kTail[kBackfilledLine].keyword == "backfilled" && kTail[kSharingLine].keyword == "sharing" &&
              kTail[kPracticeLine].keyword == "practice" &&
              kTail[kApplicationLine].keyword == "application" && kTail[kEditsLine].keyword == "edits");

}  // namespace

namespace items {
constexpr ItemTable kChosen = of(kChosenItems, Thing::choice, true);
constexpr ItemTable kInterest = with_marks(of(kInterestItems, Thing::choice), bits_of(kChosenItems));
const ItemTable kPerson = of(kPersonItems, Thing::observer);
const ItemTable kSign = with_marks(of(kSignItems, Thing::sign));
const ItemTable kSlide = with_marks(of(kSlideItems, Thing::slide));
const ItemTable kStep = of(kStepItems, Thing::step);
const ItemTable kRemark = of(kRemarkItems, Thing::remark);
const ItemTable kAbsence = of(kAbsenceItems, Thing::pit);
const ItemTable kPhoto = of(kPhotoItems, Thing::photo);
const ItemTable kExtension = of(kExtensionItems, Thing::pit);
const ItemTable kUnread = of(kUnreadItems, Thing::unread);
}  // namespace items

CodeTable direction_codes() {
  static constexpr Code kCodes[] = {{0, "unknown", ""}, {1, "vertical", ""}, {2, "slope-normal", ""}};
  static constexpr Synonym kAlso[] = {{1, "vertically"}, {2, "slope normal"}};
  return table_of(kCodes, kAlso);
}

SingleLines head_lines() {
  return {kHead, sizeof kHead / sizeof kHead[0]};
}
SingleLines site_lines() {
  return {kPlace, sizeof kPlace / sizeof kPlace[0]};
}
SingleLines body_lines() {
  return {kBody, sizeof kBody / sizeof kBody[0]};
}
SingleLines tail_lines() {
  return {kTail, sizeof kTail / sizeof kTail[0]};
}
const SingleLine& chosen_line() {
  static constexpr SingleLine kLine = line_of<&PitT::choice>("chosen", items::kChosen);
  return kLine;
}
const SingleLine& interest_line() {
  static constexpr SingleLine kLine = line_of<&PitT::choice>("interest", items::kInterest);
  return kLine;
}

}  // namespace firn::notation
