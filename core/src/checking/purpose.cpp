// What a pit dug for a stated purpose usually has and this one lacks. A pit without a purpose owes nothing.
//
// Common practice, after the contents that observation guidelines give a quick pit, a test profile and a full
// profile (from memory).
#include "checking/rules.h"

namespace firn::checking {
namespace {

using firnbook::Purpose;

constexpr std::uint32_t bit(CheckCode code) {
  return 1u << (static_cast<unsigned>(code) - static_cast<unsigned>(CheckCode::purpose_layers));
}
template <class... Codes>
constexpr std::uint32_t all_of(Codes... codes) {
  return (bit(codes) | ...);
}

constexpr std::uint32_t kPlace = all_of(CheckCode::purpose_hs, CheckCode::purpose_elevation,
                                        CheckCode::purpose_aspect, CheckCode::purpose_slope);
constexpr std::uint32_t kLayers =
    all_of(CheckCode::purpose_layers, CheckCode::purpose_hardness, CheckCode::purpose_forms);
constexpr std::uint32_t kTestProfile =
    kPlace | kLayers | all_of(CheckCode::purpose_tests, CheckCode::purpose_observers);

struct Wanted {
  Purpose purpose;
  std::uint32_t items;
};
constexpr Wanted kWanted[] = {
    {Purpose::quick_pit, kPlace | all_of(CheckCode::purpose_layers, CheckCode::purpose_tests)},
    {Purpose::test_profile, kTestProfile},
    {Purpose::full_profile,
     kPlace | kLayers |
         all_of(CheckCode::purpose_sizes, CheckCode::purpose_wetness, CheckCode::purpose_temperatures,
                CheckCode::purpose_observers, CheckCode::purpose_weather, CheckCode::purpose_place)},
    {Purpose::service_report,
     kTestProfile | all_of(CheckCode::purpose_weather, CheckCode::purpose_place, CheckCode::purpose_sharing)},
    {Purpose::fracture_line, kPlace | kLayers |
                                 all_of(CheckCode::purpose_sizes, CheckCode::purpose_observers,
                                        CheckCode::purpose_place, CheckCode::purpose_slides)},
};
// The guidelines space temperatures 10 cm apart, 20 cm low in a deep even pack (from memory).
constexpr std::int64_t kReadingsApart = pit::cm(20);

Place pit_place(int vtable_offset) {
  return place_of(Thing::pit, -1, field_id(vtable_offset));
}
Place site_place(int vtable_offset) {
  return place_of(Thing::site, -1, field_id(vtable_offset));
}

class Asker {
 public:
  Asker(const pit::View& pit, Purpose purpose, std::uint32_t items, Reporter& out)
      : pit_(pit), raw_(pit.raw()), purpose_(static_cast<std::int64_t>(purpose)), items_(items), out_(out) {}

  void ask() {
    layers();
    site();
    people();
  }

 private:
  void want(CheckCode code, bool there, const Place& place) {
    if (!there && (items_ & bit(code)) != 0) out_.add(code, place, purpose_);
  }

  void each_layer(CheckCode code, int field, bool (*lacks)(const pit::Layer&)) {
    if ((items_ & bit(code)) == 0) return;
    Gathered missing;
    for (const pit::Layer& layer : pit_.layers()) {
      if (lacks(layer)) missing.add(layer_place(layer, field), 0);
    }
    if (missing.count > 0) out_.add(code, missing.first, purpose_, missing.count);
  }

  void layers() {
    using firnbook::Layer;
    want(CheckCode::purpose_layers, !pit_.layers().empty(), pit_place(firnbook::Pit::VT_LAYERS));
    each_layer(CheckCode::purpose_hardness, Layer::VT_HARDNESS,
               [](const pit::Layer& layer) { return layer.hardness_top == 0 && layer.hardness_bottom == 0; });
    each_layer(CheckCode::purpose_forms, Layer::VT_GRAIN_FORM,
               [](const pit::Layer& layer) { return layer.form == 0; });
    // Crusts and ice have no grains to measure.
    each_layer(CheckCode::purpose_sizes, Layer::VT_GRAIN_SIZE_10UM, [](const pit::Layer& layer) {
      constexpr auto kCrust = static_cast<std::uint8_t>(firnbook::GrainForm::MFcr);
      constexpr auto kIce = static_cast<std::uint8_t>(firnbook::GrainForm::IF) / 10;
      return layer.size == pit::kUnknown && !layer.raw->grain_size_class() && layer.form != kCrust &&
             layer.form / 10 != kIce;
    });
    each_layer(CheckCode::purpose_wetness, Layer::VT_WETNESS,
               [](const pit::Layer& layer) { return layer.wetness == 0; });
    want(CheckCode::purpose_temperatures, !pit_.temperatures().empty(),
         pit_place(firnbook::Pit::VT_TEMPERATURES));
    want(CheckCode::purpose_tests, has_valid_test(), pit_place(firnbook::Pit::VT_TESTS));
  }

  bool has_valid_test() const {
    for (const pit::Test& test : pit_.tests()) {
      if (test.outcome != static_cast<std::uint8_t>(firnbook::TestOutcome::not_valid)) return true;
    }
    return false;
  }

  void site() {
    using firnbook::Site;
    const Site* site = raw_.site();
    want(CheckCode::purpose_hs, pit_.hs() != pit::kUnknown,
         place_of(Thing::snowpack, -1, field_id(firnbook::Snowpack::VT_HS_10UM)));
    want(CheckCode::purpose_elevation, site != nullptr && site->elevation_10um(),
         site_place(Site::VT_ELEVATION_10UM));
    want(CheckCode::purpose_aspect, pit_.aspect_deg() != pit::kUnknown || pit_.slope_deg() == 0,
         site_place(Site::VT_ASPECT_POINT));
    want(CheckCode::purpose_slope, pit_.slope_deg() != pit::kUnknown, site_place(Site::VT_SLOPE_DEG));
    want(CheckCode::purpose_place,
         site != nullptr &&
             ((site->latitude_e7deg() && site->longitude_e7deg()) || !pit::text(site->region()).empty()),
         site_place(Site::VT_LATITUDE_E7DEG));
  }

  void people() {
    want(CheckCode::purpose_observers, pit::size_of(raw_.observers()) != 0,
         pit_place(firnbook::Pit::VT_OBSERVERS));
    want(CheckCode::purpose_weather, raw_.weather() != nullptr, pit_place(firnbook::Pit::VT_WEATHER));
    const auto sharing = raw_.sharing();
    want(CheckCode::purpose_sharing, sharing && *sharing >= firnbook::Sharing::service,
         pit_place(firnbook::Pit::VT_SHARING));
    want(CheckCode::purpose_slides, pit::size_of(raw_.slides()) != 0, pit_place(firnbook::Pit::VT_SLIDES));
  }

  const pit::View& pit_;
  const firnbook::Pit& raw_;
  const std::int64_t purpose_;
  const std::uint32_t items_;
  Reporter& out_;
};

void check_spacing(const pit::View& pit, Reporter& out) {
  Gathered wide;
  std::int32_t above = 0;
  for (const pit::Temperature& reading : pit.temperatures()) {
    if (reading.depth == pit::kUnknown) break;
    const std::int64_t apart = std::int64_t{reading.depth} - above;
    if (apart > kReadingsApart) {
      wide.add(place_of(Thing::temperature, static_cast<std::int32_t>(reading.stored),
                        field_id(firnbook::TemperatureReading::VT_DEPTH)),
               apart);
    }
    above = reading.depth;
  }
  wide.report(out, CheckCode::temperatures_far_apart);
}

// Ends at right angles to the slope give up to half shorter cuts (NHESS 25:321, 2025, read).
void check_saw_ends(const pit::View& pit, Reporter& out) {
  Gathered unknown;
  for (const pit::Test& test : pit.tests()) {
    if (test.kind != firnbook::TestKind::PST || test.raw->column_ends()) continue;
    unknown.add(place_of(Thing::test, static_cast<std::int32_t>(test.stored),
                         field_id(firnbook::StabilityTest::VT_COLUMN_ENDS)),
                0);
  }
  unknown.report(out, CheckCode::saw_ends_not_recorded);
}

}  // namespace

void check_purpose(const pit::View& pit, Reporter& out) {
  const firnbook::Pit& raw = pit.raw();
  if (!raw.purpose()) return;
  const Purpose purpose = *raw.purpose();
  for (const Wanted& wanted : kWanted) {
    if (wanted.purpose == purpose) Asker(pit, purpose, wanted.items, out).ask();
  }
  if (purpose == Purpose::full_profile) check_spacing(pit, out);
  if (purpose == Purpose::test_profile || purpose == Purpose::service_report) check_saw_ends(pit, out);
  if (purpose == Purpose::service_report && raw.practice().value_or(false)) {
    out.add(CheckCode::practice_for_service, pit_place(firnbook::Pit::VT_PRACTICE));
  }
}

}  // namespace firn::checking
