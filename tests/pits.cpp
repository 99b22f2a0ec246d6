#include "pits.h"

#include <string>
#include <utility>

#include "support/text.h"

namespace firn::tests {

using namespace firnbook;  // NOLINT: this file says little else than the schema's names

Depth down(std::int32_t value_10um) {
  return {value_10um, Datum::surface, Direction::unknown};
}
Depth up(std::int32_t value_10um) {
  return {value_10um, Datum::ground, Direction::unknown};
}
Depth nowhere_from(std::int32_t value_10um) {
  return {value_10um, Datum::unknown, Direction::unknown};
}
Depth slope_normal(std::int32_t value_10um) {
  return {value_10um, Datum::surface, Direction::slope_normal};
}

Moment local_time(std::int64_t year, int month, int day, int hour, int minute, int offset_min) {
  const CalendarTime time{year, month, day, hour, minute, 0};
  return {seconds_of(time), static_cast<std::int16_t>(offset_min), TimePrecision::minute, 1};
}
Moment date(std::int64_t year, int month, int day) {
  return {seconds_of(CalendarTime{year, month, day, 0, 0, 0}), 0, TimePrecision::day, 0};
}
TimeSpan instant(const Moment& moment) {
  return {moment, Moment(0, 0, TimePrecision::none, 0)};
}

LayerT& add_layer(PitT& pit, std::int32_t top_10um, std::int32_t bottom_10um) {
  auto layer = std::make_unique<LayerT>();
  layer->top = std::make_unique<Depth>(down(top_10um));
  layer->bottom = std::make_unique<Depth>(down(bottom_10um));
  pit.layers.push_back(std::move(layer));
  return *pit.layers.back();
}
LayerT& add_layer(PitT& pit, std::int32_t top_10um, std::int32_t bottom_10um, HandHardness hardness,
                  GrainForm form, std::int32_t size_10um) {
  LayerT& layer = add_layer(pit, top_10um, bottom_10um);
  layer.hardness = hardness;
  layer.grain_form = form;
  if (size_10um != 0) layer.grain_size_10um = size_10um;
  return layer;
}

StabilityTestT& add_test(PitT& pit, TestKind kind) {
  auto test = std::make_unique<StabilityTestT>();
  test->kind = kind;
  pit.tests.push_back(std::move(test));
  return *pit.tests.back();
}
FractureT& add_fracture(StabilityTestT& test, std::int32_t depth_10um) {
  auto fracture = std::make_unique<FractureT>();
  fracture->depth = std::make_unique<Depth>(down(depth_10um));
  test.outcome = TestOutcome::fractured;
  test.fractures.push_back(std::move(fracture));
  return *test.fractures.back();
}
FractureT& add_compression_test(PitT& pit, std::uint8_t tap, FractureCharacter character,
                                std::int32_t depth_10um) {
  FractureT& fracture = add_fracture(add_test(pit, TestKind::CT), depth_10um);
  fracture.tap = tap;
  fracture.character = character;
  return fracture;
}
FractureT& add_extended_column(PitT& pit, std::uint8_t tap, Crossing crossing, std::int32_t depth_10um) {
  FractureT& fracture = add_fracture(add_test(pit, TestKind::ECT), depth_10um);
  fracture.tap = tap;
  fracture.crossing = crossing;
  return fracture;
}
FractureT& add_saw_test(PitT& pit, std::int32_t cut_10um, std::int32_t column_10um, SawEnd end,
                        std::int32_t depth_10um) {
  StabilityTestT& test = add_test(pit, TestKind::PST);
  test.column_length_10um = column_10um;
  FractureT& fracture = add_fracture(test, depth_10um);
  fracture.cut_10um = cut_10um;
  fracture.saw_end = end;
  return fracture;
}
LayerT& name_layer(FractureT& fracture, GrainForm form, std::int32_t size_10um) {
  fracture.on = std::make_unique<LayerT>();
  fracture.on->grain_form = form;
  if (size_10um != 0) fracture.on->grain_size_10um = size_10um;
  return *fracture.on;
}

void add_sign(PitT& pit, SignKind kind, Answer answer) {
  auto sign = std::make_unique<SignT>();
  sign->kind = kind;
  sign->answer = answer;
  pit.signs.push_back(std::move(sign));
}
void add_temperature(PitT& pit, std::int32_t depth_10um, std::int32_t cdegc) {
  auto reading = std::make_unique<TemperatureReadingT>();
  reading->depth = std::make_unique<Depth>(down(depth_10um));
  reading->temperature_cdegc = cdegc;
  pit.temperatures.push_back(std::move(reading));
}
void add_density(PitT& pit, std::int32_t top_10um, std::int32_t bottom_10um, std::int32_t dkgm3) {
  if (pit.densities.empty()) pit.densities.push_back(std::make_unique<DensityProfileT>());
  auto reading = std::make_unique<DensityReadingT>();
  reading->top = std::make_unique<Depth>(down(top_10um));
  reading->bottom = std::make_unique<Depth>(down(bottom_10um));
  reading->density_dkgm3 = dkgm3;
  pit.densities.back()->readings.push_back(std::move(reading));
}

namespace {

void add_observer(PitT& pit, const std::string& initials) {
  auto observer = std::make_unique<ObserverT>();
  observer->name = initials;
  pit.observers.push_back(std::move(observer));
}

void set_site(PitT& pit, std::int32_t elevation_m, std::uint8_t slope_deg,
              const std::vector<std::int32_t>& probes_cm) {
  pit.site = std::make_unique<SiteT>();
  pit.site->elevation_10um = metres(elevation_m);
  pit.site->aspect_point = CompassPoint::NE;
  pit.site->slope_deg = slope_deg;
  for (const std::int32_t strike : probes_cm) pit.site->probes_10um.push_back(cm(strike));
}

void set_hs(PitT& pit, std::int32_t centimetres) {
  pit.snowpack = std::make_unique<SnowpackT>();
  pit.snowpack->hs_10um = cm(centimetres);
}

void add_larch_bowl_layers(PitT& pit) {
  LayerT& new_snow = add_layer(pit, 0, cm(5));
  new_snow.hardness = HandHardness::Fist;
  new_snow.words = "new snow";
  new_snow.candidates = {GrainForm::PP, GrainForm::DF};
  add_layer(pit, cm(5), cm(17), HandHardness::FourFinger, GrainForm::RG).words = "wind slab";
  add_layer(pit, cm(17), cm(46), HandHardness::Fist, GrainForm::DH, 300).words = "sugary, to the ground";
}

void add_tarn_shoulder_layers(PitT& pit) {
  add_layer(pit, 0, cm(16), HandHardness::Fist, GrainForm::PPsd, 200);
  add_layer(pit, cm(16), cm(31), HandHardness::FourFinger, GrainForm::DF, 100).grain_form_second =
      GrainForm::RG;
  add_layer(pit, cm(31), cm(68), HandHardness::OneFingerMinus, GrainForm::RGwp, 30);
  LayerT& hoar = add_layer(pit, cm(68), cm(69), HandHardness::Fist, GrainForm::SH, 600);
  hoar.name = std::make_unique<LayerNameT>();
  hoar.name->date = std::make_unique<Moment>(date(2027, 1, 2));
  hoar.name->kind = LayerNameKind::buried;
  add_layer(pit, cm(69), cm(104), HandHardness::Pencil, GrainForm::RGlr, 80);
  add_layer(pit, cm(104), cm(107), HandHardness::Knife, GrainForm::MFcr);
  LayerT& facets = add_layer(pit, cm(107), cm(140), HandHardness::FourFingerMinus, GrainForm::FC, 200);
  facets.grain_size_max_10um = 300;
  facets.grain_form_second = GrainForm::DH;
}

void add_tarn_shoulder_tests(PitT& pit) {
  add_compression_test(pit, 6, FractureCharacter::BRK, cm(16));
  LayerT& hoar = name_layer(add_compression_test(pit, 12, FractureCharacter::SP, cm(68)), GrainForm::SH, 600);
  hoar.name = std::make_unique<LayerNameT>();
  hoar.name->date = std::make_unique<Moment>(date(2027, 1, 2));
  name_layer(add_compression_test(pit, 27, FractureCharacter::RP, cm(107)), GrainForm::FC, 200);
  name_layer(add_extended_column(pit, 13, Crossing::crossed, cm(68)), GrainForm::SH);
  name_layer(add_saw_test(pit, cm(32), cm(100), SawEnd::End, cm(68)), GrainForm::SH);
}

void add_tarn_shoulder_weather(PitT& pit) {
  pit.weather = std::make_unique<WeatherT>();
  pit.weather->sky = SkyCondition::BKN;
  pit.weather->precipitation = Precipitation::light_SN;
  pit.weather->wind = WindClass::M;
  pit.weather->wind_from_point = CompassPoint::SW;
  pit.weather->air_temperature_cdegc = -750;
  pit.surface = std::make_unique<SurfaceT>();
  pit.surface->penetration_foot_10um = cm(35);
  pit.surface->penetration_ski_10um = cm(15);
}

}  // namespace

std::unique_ptr<PitT> larch_bowl_entry() {
  auto pit = std::make_unique<PitT>();
  pit->title = "Larch Bowl entry, Larchwater Range";
  pit->time = std::make_unique<TimeSpan>(instant(local_time(2026, 11, 28, 10, 5, -420)));
  add_observer(*pit, "KL");
  set_site(*pit, 2080, 24, {38, 45, 61, 47});
  pit->choice = std::make_unique<ChoiceT>();
  pit->choice->words = "same aspect and elevation as Larch Bowl; gentler and short";
  set_hs(*pit, 46);
  add_compression_test(*pit, 11, FractureCharacter::SC, cm(17));
  add_compression_test(*pit, 13, FractureCharacter::SC, cm(17));
  add_sign(*pit, SignKind::whumpf, Answer::yes);
  add_sign(*pit, SignKind::cracking, Answer::not_looked_for);
  add_sign(*pit, SignKind::slides, Answer::no);
  add_larch_bowl_layers(*pit);
  pit->bulletin = std::make_unique<BulletinSeenT>();
  pit->bulletin->state = BulletinState::none_issued;
  pit->assessment = std::make_unique<AssessmentT>();
  pit->assessment->words = "thin slab on basal facets, staying on low-angle ground";
  pit->assessment->confidence = Confidence::fair;
  pit->backfilled = true;
  return pit;
}

std::unique_ptr<PitT> tarn_shoulder() {
  auto pit = std::make_unique<PitT>();
  pit->title = "Tarn Shoulder, Larchwater Range";
  pit->time = std::make_unique<TimeSpan>(instant(local_time(2027, 1, 16, 11, 20, -420)));
  add_observer(*pit, "KL");
  add_observer(*pit, "MT");
  set_site(*pit, 2215, 31, {139, 142, 137, 141});
  pit->choice = std::make_unique<ChoiceT>();
  pit->choice->words = "same aspect, elevation and wind loading as Larch Bowl";
  set_hs(*pit, 140);
  add_tarn_shoulder_weather(*pit);
  add_tarn_shoulder_layers(*pit);
  const std::pair<std::int32_t, std::int32_t> temperatures[] = {{0, -900},  {10, -860},  {30, -700},
                                                                {68, -480}, {100, -290}, {140, -40}};
  for (const auto& [depth_cm, cdegc] : temperatures) add_temperature(*pit, cm(depth_cm), cdegc);
  add_density(*pit, cm(31), cm(68), 2380);
  add_density(*pit, cm(69), cm(104), 3100);
  add_tarn_shoulder_tests(*pit);
  add_sign(*pit, SignKind::whumpf, Answer::no);
  add_sign(*pit, SignKind::cracking, Answer::yes);
  add_sign(*pit, SignKind::slides, Answer::not_looked_for);
  auto remark = std::make_unique<RemarkT>();
  remark->text = "wind slab thickens toward the ridge";
  pit->remarks.push_back(std::move(remark));
  pit->backfilled = true;
  return pit;
}

std::vector<std::uint8_t> bytes_of(const PitT& pit) {
  flatbuffers::FlatBufferBuilder builder;
  FinishPitBuffer(builder, Pit::Pack(builder, &pit));
  return {builder.GetBufferPointer(), builder.GetBufferPointer() + builder.GetSize()};
}

}  // namespace firn::tests
