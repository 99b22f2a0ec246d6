// Recording by plain structs and by bytes. That Larch Bowl recorded by structs has the bytes of its notes is
// tested with examples/first-pit/first_pit.c.
#include <cstring>
#include <sstream>

#include "support.h"

namespace {

using capi::Buffer;
using capi::bytes_of;
using capi::Context;

constexpr std::uint64_t kDevice = 42;

firn_depth down(int centimetres) {
  return {FIRN_CM(centimetres), FIRN_DATUM_SURFACE, FIRN_DIRECTION_VERTICAL, 0};
}

template <class... Fields>
std::uint64_t bits(Fields... fields) {
  return (std::uint64_t{0} | ... | FIRN_BIT(fields));
}

class Recording : public testing::Test {
 protected:
  Recording() {
    EXPECT_EQ(firn_recorder_create(context, &recorder, nullptr), FIRN_OK);
    firn_author author = FIRN_INIT(firn_author);
    author.device = kDevice;
    author.observer = "MT";
    EXPECT_EQ(firn_recorder_author(recorder, &author, nullptr), FIRN_OK);
  }
  ~Recording() override { firn_recorder_destroy(recorder); }

  std::string pit() {
    Buffer out(context);
    EXPECT_EQ(firn_recorder_pit(recorder, out.out(), &error), FIRN_OK) << error.what;
    return out.text();
  }
  std::string notes() {
    const std::string bytes = pit();
    Buffer out(context);
    EXPECT_EQ(firn_notes_write(context, bytes_of(bytes), bytes.size(), out.out(), nullptr, &error), FIRN_OK);
    return out.text();
  }

  firn_target add_layer(int top, int bottom, std::uint8_t hardness, std::uint8_t form = 0) {
    firn_layer layer = FIRN_INIT(firn_layer);
    layer.present = bits(FIRN_FIELD_LAYER_TOP, FIRN_FIELD_LAYER_BOTTOM, FIRN_FIELD_LAYER_HARDNESS);
    layer.top = down(top);
    layer.bottom = down(bottom);
    layer.hardness = hardness;
    layer.grain_form = form;
    if (form != 0) layer.present |= FIRN_BIT(FIRN_FIELD_LAYER_GRAIN_FORM);
    firn_target target = {};
    EXPECT_EQ(firn_record_layer(recorder, &layer, nullptr, &target, nullptr, &error), FIRN_OK) << error.what;
    return target;
  }

  Context context;
  firn_recorder* recorder = nullptr;
  firn_error error = FIRN_INIT(firn_error);
};

// ---- Tarn Shoulder, call by call -------------------------------------------------------------------------

class TarnShoulder : public Recording {
 protected:
  void record_place() {
    firn_pit_head head = FIRN_INIT(firn_pit_head);
    head.present = bits(FIRN_FIELD_PIT_TIME, FIRN_FIELD_PIT_BACKFILLED);
    head.title = "Tarn Shoulder, Larchwater Range";
    head.time.begin = {1800098400, -7 * 60, FIRN_TIME_PRECISION_MINUTE, 1, 0};
    head.backfilled = 1;
    EXPECT_EQ(firn_record_pit_head(recorder, &head, nullptr, &error), FIRN_OK) << error.what;
    for (const char* name : {"KL", "MT"}) {
      firn_observer observer = FIRN_INIT(firn_observer);
      observer.name = name;
      EXPECT_EQ(firn_record_observer(recorder, &observer, nullptr, nullptr, nullptr, &error), FIRN_OK);
    }
    const std::int32_t probes[] = {FIRN_CM(139), FIRN_CM(142), FIRN_CM(137), FIRN_CM(141)};
    firn_site site = FIRN_INIT(firn_site);
    site.present =
        bits(FIRN_FIELD_SITE_ELEVATION_10UM, FIRN_FIELD_SITE_ASPECT_POINT, FIRN_FIELD_SITE_SLOPE_DEG);
    site.elevation_10um = 2215 * 100000;
    site.aspect_point = FIRN_COMPASS_POINT_NE;
    site.slope_deg = 31;
    site.probes_10um = probes;
    site.probe_count = 4;
    EXPECT_EQ(firn_record_site(recorder, &site, nullptr, &error), FIRN_OK) << error.what;
    firn_choice choice = FIRN_INIT(firn_choice);
    choice.present =
        bits(FIRN_FIELD_CHOICE_ASPECT, FIRN_FIELD_CHOICE_ELEVATION, FIRN_FIELD_CHOICE_WIND_LOADING);
    choice.aspect = choice.elevation = choice.wind_loading = FIRN_COMPARISON_SAME;
    choice.terrain_of_interest = "Larch Bowl";
    choice.words = "same aspect, elevation and wind loading as Larch Bowl";
    EXPECT_EQ(firn_record_choice(recorder, &choice, nullptr, &error), FIRN_OK);
    firn_snowpack snowpack = FIRN_INIT(firn_snowpack);
    snowpack.present = bits(FIRN_FIELD_SNOWPACK_HS_10UM);
    snowpack.hs_10um = FIRN_CM(140);
    EXPECT_EQ(firn_record_snowpack(recorder, &snowpack, nullptr, &error), FIRN_OK);
  }

  void record_weather_and_surface() {
    firn_weather weather = FIRN_INIT(firn_weather);
    weather.present = bits(FIRN_FIELD_WEATHER_SKY, FIRN_FIELD_WEATHER_PRECIPITATION, FIRN_FIELD_WEATHER_WIND,
                           FIRN_FIELD_WEATHER_WIND_FROM_POINT, FIRN_FIELD_WEATHER_AIR_TEMPERATURE_CDEGC);
    weather.sky = FIRN_SKY_CONDITION_BKN;
    weather.precipitation = FIRN_PRECIPITATION_LIGHT_SN;
    weather.wind = FIRN_WIND_CLASS_M;
    weather.wind_from_point = FIRN_COMPASS_POINT_SW;
    weather.air_temperature_cdegc = -750;
    EXPECT_EQ(firn_record_weather(recorder, &weather, nullptr, &error), FIRN_OK);
    firn_surface surface = FIRN_INIT(firn_surface);
    surface.present = bits(FIRN_FIELD_SURFACE_PENETRATION_FOOT_10UM, FIRN_FIELD_SURFACE_PENETRATION_SKI_10UM);
    surface.penetration_foot_10um = FIRN_CM(35);
    surface.penetration_ski_10um = FIRN_CM(15);
    EXPECT_EQ(firn_record_surface(recorder, &surface, nullptr, &error), FIRN_OK);
  }

  void record_layer(int top, int bottom, std::uint8_t hardness, std::uint8_t form, int size = 0,
                    int size_max = 0, std::uint8_t second = 0, const firn_moment* buried = nullptr) {
    firn_layer layer = FIRN_INIT(firn_layer);
    layer.present = bits(FIRN_FIELD_LAYER_TOP, FIRN_FIELD_LAYER_BOTTOM, FIRN_FIELD_LAYER_HARDNESS,
                         FIRN_FIELD_LAYER_GRAIN_FORM);
    layer.top = down(top);
    layer.bottom = down(bottom);
    layer.hardness = hardness;
    layer.grain_form = form;
    layer.grain_form_second = second;
    layer.grain_size_10um = size;
    layer.grain_size_max_10um = size_max;
    if (size != 0) layer.present |= FIRN_BIT(FIRN_FIELD_LAYER_GRAIN_SIZE_10UM);
    if (size_max != 0) layer.present |= FIRN_BIT(FIRN_FIELD_LAYER_GRAIN_SIZE_MAX_10UM);
    if (second != 0) layer.present |= FIRN_BIT(FIRN_FIELD_LAYER_GRAIN_FORM_SECOND);
    if (buried != nullptr) {
      layer.name_date = *buried;
      layer.name_kind = FIRN_LAYER_NAME_KIND_BURIED;
    }
    EXPECT_EQ(firn_record_layer(recorder, &layer, nullptr, nullptr, nullptr, &error), FIRN_OK) << error.what;
  }

  // From the ground up, to show that the order of recording does not matter.
  void record_layers() {
    record_layer(107, 140, FIRN_HAND_HARDNESS_FOUR_FINGER_MINUS, FIRN_GRAIN_FORM_FC, 200, 300,
                 FIRN_GRAIN_FORM_DH);
    record_layer(104, 107, FIRN_HAND_HARDNESS_KNIFE, FIRN_GRAIN_FORM_MFCR);
    record_layer(69, 104, FIRN_HAND_HARDNESS_PENCIL, FIRN_GRAIN_FORM_RGLR, 80);
    record_layer(68, 69, FIRN_HAND_HARDNESS_FIST, FIRN_GRAIN_FORM_SH, 600, 0, 0, &kBuried);
    record_layer(31, 68, FIRN_HAND_HARDNESS_ONE_FINGER_MINUS, FIRN_GRAIN_FORM_RGWP, 30);
    record_layer(16, 31, FIRN_HAND_HARDNESS_FOUR_FINGER, FIRN_GRAIN_FORM_DF, 100, 0, FIRN_GRAIN_FORM_RG);
    record_layer(0, 16, FIRN_HAND_HARDNESS_FIST, FIRN_GRAIN_FORM_PPSD, 200);
  }

  void record_readings() {
    const int temperatures[][2] = {{0, -900}, {10, -860}, {30, -700}, {68, -480}, {100, -290}, {140, -40}};
    for (const auto& [depth, cdegc] : temperatures) {
      firn_temperature reading = FIRN_INIT(firn_temperature);
      reading.present =
          bits(FIRN_FIELD_TEMPERATURE_READING_DEPTH, FIRN_FIELD_TEMPERATURE_READING_TEMPERATURE_CDEGC);
      reading.depth = down(depth);
      reading.temperature_cdegc = cdegc;
      EXPECT_EQ(firn_record_temperature(recorder, &reading, nullptr, nullptr, nullptr, &error), FIRN_OK);
    }
    firn_density densities[] = {FIRN_INIT(firn_density), FIRN_INIT(firn_density)};
    const int values[][3] = {{31, 68, 2380}, {69, 104, 3100}};
    for (int i = 0; i < 2; ++i) {
      densities[i].present = bits(FIRN_FIELD_DENSITY_READING_TOP, FIRN_FIELD_DENSITY_READING_BOTTOM,
                                  FIRN_FIELD_DENSITY_READING_DENSITY_DKGM3);
      densities[i].top = down(values[i][0]);
      densities[i].bottom = down(values[i][1]);
      densities[i].density_dkgm3 = values[i][2];
    }
    firn_density_profile profile = FIRN_INIT(firn_density_profile);
    profile.readings = densities;
    profile.reading_count = 2;
    EXPECT_EQ(firn_record_density_profile(recorder, &profile, nullptr, nullptr, nullptr, &error), FIRN_OK);
  }

  void record_test(std::uint8_t kind, firn_fracture fracture, const firn_layer* on = nullptr,
                   int length_cm = 0) {
    fracture.present |= bits(FIRN_FIELD_FRACTURE_DEPTH);
    fracture.on = on;
    firn_test test = FIRN_INIT(firn_test);
    test.present = bits(FIRN_FIELD_STABILITY_TEST_KIND, FIRN_FIELD_STABILITY_TEST_OUTCOME);
    test.kind = kind;
    test.outcome = FIRN_TEST_OUTCOME_FRACTURED;
    test.fractures = &fracture;
    test.fracture_count = 1;
    if (length_cm != 0) {
      test.present |= FIRN_BIT(FIRN_FIELD_STABILITY_TEST_COLUMN_LENGTH_10UM);
      test.column_length_10um = FIRN_CM(length_cm);
    }
    EXPECT_EQ(firn_record_test(recorder, &test, nullptr, nullptr, nullptr, &error), FIRN_OK) << error.what;
  }

  static firn_fracture tapped(int tap, int depth, std::uint8_t character) {
    firn_fracture fracture = FIRN_INIT(firn_fracture);
    fracture.present = bits(FIRN_FIELD_FRACTURE_TAP, FIRN_FIELD_FRACTURE_CHARACTER);
    fracture.tap = static_cast<std::uint8_t>(tap);
    fracture.character = character;
    fracture.depth = down(depth);
    return fracture;
  }

  static firn_layer on(std::uint8_t form, int size = 0) {
    firn_layer layer = FIRN_INIT(firn_layer);
    layer.present = bits(FIRN_FIELD_LAYER_GRAIN_FORM);
    layer.grain_form = form;
    layer.grain_size_10um = size;
    if (size != 0) layer.present |= FIRN_BIT(FIRN_FIELD_LAYER_GRAIN_SIZE_10UM);
    return layer;
  }

  void record_tests() {
    record_test(FIRN_TEST_KIND_CT, tapped(6, 16, FIRN_FRACTURE_CHARACTER_BRK));
    firn_layer hoar = on(FIRN_GRAIN_FORM_SH, 600);
    hoar.name_date = kBuried;
    record_test(FIRN_TEST_KIND_CT, tapped(12, 68, FIRN_FRACTURE_CHARACTER_SP), &hoar);
    const firn_layer facets = on(FIRN_GRAIN_FORM_FC, 200);
    record_test(FIRN_TEST_KIND_CT, tapped(27, 107, FIRN_FRACTURE_CHARACTER_RP), &facets);
    const firn_layer plain_hoar = on(FIRN_GRAIN_FORM_SH);
    firn_fracture crossed = FIRN_INIT(firn_fracture);
    crossed.present = bits(FIRN_FIELD_FRACTURE_TAP, FIRN_FIELD_FRACTURE_CROSSING);
    crossed.tap = 13;
    crossed.crossing = FIRN_CROSSING_CROSSED;
    crossed.depth = down(68);
    record_test(FIRN_TEST_KIND_ECT, crossed, &plain_hoar);
    firn_fracture sawn = FIRN_INIT(firn_fracture);
    sawn.present = bits(FIRN_FIELD_FRACTURE_CUT_10UM, FIRN_FIELD_FRACTURE_SAW_END);
    sawn.cut_10um = FIRN_CM(32);
    sawn.saw_end = FIRN_SAW_END_END;
    sawn.depth = down(68);
    record_test(FIRN_TEST_KIND_PST, sawn, &plain_hoar, 100);
  }

  void record_signs_and_remark() {
    const std::uint8_t signs[][2] = {{FIRN_SIGN_KIND_WHUMPF, FIRN_ANSWER_NO},
                                     {FIRN_SIGN_KIND_CRACKING, FIRN_ANSWER_YES},
                                     {FIRN_SIGN_KIND_SLIDES, FIRN_ANSWER_NOT_LOOKED_FOR}};
    for (const auto& [kind, answer] : signs) {
      firn_sign sign = FIRN_INIT(firn_sign);
      sign.present = bits(FIRN_FIELD_SIGN_KIND, FIRN_FIELD_SIGN_ANSWER);
      sign.kind = kind;
      sign.answer = answer;
      EXPECT_EQ(firn_record_sign(recorder, &sign, nullptr, nullptr, nullptr, &error), FIRN_OK);
    }
    firn_remark remark = FIRN_INIT(firn_remark);
    remark.text = "wind slab thickens toward the ridge";
    EXPECT_EQ(firn_record_remark(recorder, &remark, nullptr, nullptr, nullptr, &error), FIRN_OK);
  }

  static constexpr firn_moment kBuried = {1798848000, 0, FIRN_TIME_PRECISION_DAY, 0, 0};
};

TEST_F(TarnShoulder, RecordedByStructsHasTheBytesOfItsNotes) {
  record_place();
  record_weather_and_surface();
  record_layers();
  record_readings();
  record_tests();
  record_signs_and_remark();
  const std::string noted = capi::pit_of(context, capi::demo_notes("tarn-shoulder"));
  const std::string recorded = pit();
  EXPECT_TRUE(recorded == noted) << notes();
  EXPECT_TRUE(capi::report_of(context, recorded) == capi::report_of(context, noted));
}

// ---- What edits do ---------------------------------------------------------------------------------------

TEST_F(Recording, NobodyRecordsBeforeThereIsAnAuthor) {
  firn_recorder* fresh = nullptr;
  ASSERT_EQ(firn_recorder_create(context, &fresh, nullptr), FIRN_OK);
  firn_observer observer = FIRN_INIT(firn_observer);
  observer.name = "KL";
  EXPECT_EQ(firn_record_observer(fresh, &observer, nullptr, nullptr, nullptr, &error), FIRN_WRONG_STATE);
  EXPECT_EQ(firn_recorder_next(fresh, nullptr, nullptr, nullptr), FIRN_WRONG_STATE);
  EXPECT_EQ(firn_record_undo(fresh, 1, 1, nullptr, nullptr), FIRN_WRONG_STATE);
  firn_author author = FIRN_INIT(firn_author);
  EXPECT_EQ(firn_recorder_author(fresh, &author, nullptr), FIRN_BAD_ARGUMENT) << "device 0";
  author.device = 1;
  author.observer = "\xFF";
  EXPECT_EQ(firn_recorder_author(fresh, &author, nullptr), FIRN_BAD_UTF8);
  author.observer = nullptr;
  author.made.precision = 99;
  EXPECT_EQ(firn_recorder_author(fresh, &author, nullptr), FIRN_BAD_ARGUMENT);
  author.struct_size = 3;
  EXPECT_EQ(firn_recorder_author(fresh, &author, nullptr), FIRN_BAD_STRUCT_SIZE);
  EXPECT_EQ(firn_recorder_author(fresh, nullptr, nullptr), FIRN_NULL_ARGUMENT);
  firn_recorder_destroy(fresh);
}

TEST_F(Recording, EditsTravelAsBytesAndFoldToTheSamePit) {
  Buffer edits[2] = {Buffer(context), Buffer(context)};
  firn_layer layer = FIRN_INIT(firn_layer);
  layer.present = bits(FIRN_FIELD_LAYER_TOP, FIRN_FIELD_LAYER_BOTTOM);
  layer.top = down(0);
  layer.bottom = down(20);
  firn_target target = {};
  ASSERT_EQ(firn_record_layer(recorder, &layer, nullptr, &target, edits[0].out(), &error), FIRN_OK);
  EXPECT_EQ(target.device, kDevice);
  EXPECT_EQ(target.sequence, 1u);
  EXPECT_EQ(target.thing, FIRN_THING_LAYER);
  layer = FIRN_INIT(firn_layer);
  layer.present = bits(FIRN_FIELD_LAYER_HARDNESS);
  layer.hardness = FIRN_HAND_HARDNESS_PENCIL;
  firn_target same = {};
  ASSERT_EQ(firn_record_layer(recorder, &layer, &target, &same, edits[1].out(), &error), FIRN_OK)
      << error.what;
  EXPECT_EQ(std::memcmp(&same, &target, sizeof same), 0);
  EXPECT_EQ(firn_recorder_edit_count(recorder), 2u);

  firn_recorder* other = nullptr;
  ASSERT_EQ(firn_recorder_create(context, &other, nullptr), FIRN_OK);
  for (const Buffer& edit : edits) {
    EXPECT_EQ(firn_recorder_apply(other, edit.data(), edit.size(), &error), FIRN_OK) << error.what;
    EXPECT_EQ(firn_recorder_apply(other, edit.data(), edit.size(), &error), FIRN_OK) << "the same edit twice";
  }
  Buffer out(context);
  ASSERT_EQ(firn_recorder_pit(other, out.out(), &error), FIRN_OK);
  EXPECT_TRUE(out.text() == pit());
  // Going on after another's journal was read: sequences are not given out twice.
  firn_author author = FIRN_INIT(firn_author);
  author.device = kDevice;
  ASSERT_EQ(firn_recorder_author(other, &author, nullptr), FIRN_OK);
  std::uint64_t clock = 0, sequence = 0;
  ASSERT_EQ(firn_recorder_next(other, &clock, &sequence, nullptr), FIRN_OK);
  EXPECT_EQ(sequence, 3u);
  EXPECT_EQ(clock, 3u);
  author.next_sequence = 2;
  EXPECT_EQ(firn_recorder_author(other, &author, nullptr), FIRN_BAD_ARGUMENT);
  firn_recorder_destroy(other);
}

TEST_F(Recording, UndoAndRedoGiveTheSameBytesBack) {
  add_layer(0, 20, FIRN_HAND_HARDNESS_FIST);
  const std::string before = pit();
  const firn_target second = add_layer(20, 40, FIRN_HAND_HARDNESS_PENCIL);
  const std::string after = pit();
  EXPECT_FALSE(before == after);
  ASSERT_EQ(firn_record_undo(recorder, second.device, second.sequence, nullptr, &error), FIRN_OK)
      << error.what;
  EXPECT_TRUE(pit() == before);
  ASSERT_EQ(firn_record_redo(recorder, second.device, second.sequence, nullptr, &error), FIRN_OK);
  EXPECT_TRUE(pit() == after);
  ASSERT_EQ(firn_record_remove(recorder, &second, nullptr, &error), FIRN_OK);
  EXPECT_TRUE(pit() == before);
}

TEST_F(Recording, SplitMergeClearShiftAndRescale) {
  const firn_target layer = add_layer(0, 40, FIRN_HAND_HARDNESS_FIST);
  const std::string whole = pit();
  firn_target upper = {}, lower = {};
  const firn_depth at = down(15);
  ASSERT_EQ(firn_record_split_layer(recorder, &layer, &at, &upper, &lower, nullptr, &error), FIRN_OK)
      << error.what;
  EXPECT_NE(notes().find("15-40"), std::string::npos) << notes();
  firn_layer harder = FIRN_INIT(firn_layer);
  harder.present = bits(FIRN_FIELD_LAYER_HARDNESS);
  harder.hardness = FIRN_HAND_HARDNESS_KNIFE;
  ASSERT_EQ(firn_record_layer(recorder, &harder, &lower, nullptr, nullptr, &error), FIRN_OK) << error.what;
  EXPECT_NE(notes().find("K"), std::string::npos);
  ASSERT_EQ(firn_record_merge_layers(recorder, &upper, &lower, nullptr, &error), FIRN_OK) << error.what;
  EXPECT_TRUE(pit() == whole);
  ASSERT_EQ(firn_record_clear(recorder, &layer, 0, FIRN_FIELD_LAYER_HARDNESS, nullptr, &error), FIRN_OK);
  EXPECT_FALSE(pit() == whole);
  ASSERT_EQ(firn_record_shift_depths(recorder, FIRN_CM(10), nullptr, &error), FIRN_OK);
  EXPECT_NE(notes().find("10-50"), std::string::npos) << notes();
  ASSERT_EQ(firn_record_rescale_depths(recorder, 2, 1, nullptr, &error), FIRN_OK);
  EXPECT_NE(notes().find("20-100"), std::string::npos) << notes();
}

TEST_F(Recording, ATestIsAttachedLaterAndGrows) {
  firn_fracture first = FIRN_INIT(firn_fracture);
  first.present = bits(FIRN_FIELD_FRACTURE_TAP);
  first.tap = 11;
  firn_test test = FIRN_INIT(firn_test);
  test.present = bits(FIRN_FIELD_STABILITY_TEST_KIND, FIRN_FIELD_STABILITY_TEST_OUTCOME);
  test.kind = FIRN_TEST_KIND_CT;
  test.outcome = FIRN_TEST_OUTCOME_FRACTURED;
  test.fractures = &first;
  test.fracture_count = 1;
  firn_target named = {}, grown = {};
  ASSERT_EQ(firn_record_test(recorder, &test, nullptr, &named, nullptr, &error), FIRN_OK);
  firn_fracture second = FIRN_INIT(firn_fracture);
  second.present = bits(FIRN_FIELD_FRACTURE_TAP);
  second.tap = 23;
  ASSERT_EQ(firn_record_fracture(recorder, &second, &named, nullptr, &grown, nullptr, &error), FIRN_OK)
      << error.what;
  EXPECT_EQ(grown.thing, FIRN_THING_FRACTURE);
  firn_fracture depth = FIRN_INIT(firn_fracture);
  depth.present = bits(FIRN_FIELD_FRACTURE_DEPTH);
  depth.depth = down(40);
  ASSERT_EQ(firn_record_fracture(recorder, &depth, nullptr, &grown, nullptr, nullptr, &error), FIRN_OK)
      << error.what;
  EXPECT_NE(notes().find("40"), std::string::npos) << notes();
  EXPECT_EQ(firn_record_fracture(recorder, &depth, nullptr, nullptr, nullptr, nullptr, nullptr),
            FIRN_BAD_ARGUMENT);
  EXPECT_EQ(firn_record_fracture(recorder, &depth, &named, &grown, nullptr, nullptr, nullptr),
            FIRN_BAD_ARGUMENT);
  firn_density density = FIRN_INIT(firn_density);
  density.present = bits(FIRN_FIELD_DENSITY_READING_DENSITY_DKGM3);
  EXPECT_EQ(firn_record_density(recorder, &density, nullptr, nullptr, nullptr, nullptr, nullptr),
            FIRN_BAD_ARGUMENT);
}

TEST_F(Recording, ARemarkAboutALayerFollowsIt) {
  const firn_target layer = add_layer(20, 40, FIRN_HAND_HARDNESS_FIST);
  firn_remark remark = FIRN_INIT(firn_remark);
  remark.text = "wet at its foot";
  remark.about = &layer;
  ASSERT_EQ(firn_record_remark(recorder, &remark, nullptr, nullptr, nullptr, &error), FIRN_OK) << error.what;
  add_layer(0, 20, FIRN_HAND_HARDNESS_PENCIL);
  EXPECT_NE(notes().find("layers[1]"), std::string::npos) << notes();
}

// ---- What is refused -------------------------------------------------------------------------------------

TEST_F(Recording, BitsOfFieldsThatTheStructDoesNotHold) {
  firn_layer layer = FIRN_INIT(firn_layer);
  layer.present = std::uint64_t{1} << 40;
  EXPECT_EQ(firn_record_layer(recorder, &layer, nullptr, nullptr, nullptr, &error), FIRN_BAD_ARGUMENT);
  EXPECT_NE(std::string(error.what).find("firn_layer"), std::string::npos) << error.what;
  layer.present = 0;
  layer.unreliable = std::uint64_t{1} << 63;
  EXPECT_EQ(firn_record_layer(recorder, &layer, nullptr, nullptr, nullptr, &error), FIRN_BAD_ARGUMENT);
  firn_pit_head head = FIRN_INIT(firn_pit_head);
  head.present = bits(FIRN_FIELD_PIT_LAYERS);
  EXPECT_EQ(firn_record_pit_head(recorder, &head, nullptr, &error), FIRN_BAD_ARGUMENT);
  EXPECT_EQ(firn_recorder_edit_count(recorder), 0u);
}

TEST_F(Recording, TextThatIsNotText) {
  firn_observer observer = FIRN_INIT(firn_observer);
  observer.name = "K\xC3";
  EXPECT_EQ(firn_record_observer(recorder, &observer, nullptr, nullptr, nullptr, &error), FIRN_BAD_UTF8);
  observer.name = "K\x1B[2J";
  EXPECT_EQ(firn_record_observer(recorder, &observer, nullptr, nullptr, nullptr, &error), FIRN_BAD_UTF8);
  observer.name = nullptr;
  observer.present = bits(FIRN_FIELD_OBSERVER_NAME);
  EXPECT_EQ(firn_record_observer(recorder, &observer, nullptr, nullptr, nullptr, &error), FIRN_BAD_ARGUMENT);
  const std::string long_text(17u << 20, 'x');
  observer.name = long_text.c_str();
  EXPECT_EQ(firn_record_observer(recorder, &observer, nullptr, nullptr, nullptr, &error), FIRN_TOO_LARGE);
  EXPECT_EQ(firn_recorder_edit_count(recorder), 0u);
}

TEST_F(Recording, ListsOfTheWrongShape) {
  firn_fracture fractures[2] = {FIRN_INIT(firn_fracture), FIRN_INIT(firn_fracture)};
  fractures[0].present = fractures[1].present = bits(FIRN_FIELD_FRACTURE_TAP);
  firn_test test = FIRN_INIT(firn_test);
  test.fractures = fractures;
  test.fracture_count = 2;
  const auto record = [&] { return firn_record_test(recorder, &test, nullptr, nullptr, nullptr, &error); };
  fractures[1].struct_size = 1;
  EXPECT_EQ(record(), FIRN_BAD_STRUCT_SIZE);
  fractures[1].struct_size = sizeof(firn_fracture);
  fractures[0].struct_size = sizeof(firn_fracture) + 1;
  EXPECT_EQ(record(), FIRN_BAD_STRUCT_SIZE);
  fractures[0].struct_size = 8;
  EXPECT_EQ(record(), FIRN_BAD_STRUCT_SIZE);
  fractures[0].struct_size = sizeof(firn_fracture);
  test.fracture_count = SIZE_MAX;
  EXPECT_EQ(record(), FIRN_TOO_LARGE);
  test.fractures = nullptr;
  test.fracture_count = 2;
  EXPECT_EQ(record(), FIRN_NULL_ARGUMENT);
  test.fractures = fractures;
  EXPECT_EQ(record(), FIRN_OK) << error.what;
  // Elements of a newer caller are further apart.
  struct Newer {
    firn_fracture known;
    std::uint64_t later;
  } newer[2] = {{fractures[0], ~0ull}, {fractures[1], ~0ull}};
  newer[0].known.struct_size = newer[1].known.struct_size = sizeof(Newer);
  newer[0].known.tap = 5;
  newer[1].known.tap = 9;
  test.fractures = &newer[0].known;
  EXPECT_EQ(record(), FIRN_OK) << error.what;
}

TEST_F(Recording, NumbersAndTargetsThatCannotBe) {
  firn_pit_head head = FIRN_INIT(firn_pit_head);
  head.present = bits(FIRN_FIELD_PIT_BACKFILLED);
  head.backfilled = 2;
  EXPECT_EQ(firn_record_pit_head(recorder, &head, nullptr, &error), FIRN_BAD_ARGUMENT);
  firn_target nowhere = {1, 2, 0, 0, FIRN_THING_LAYER, {}};
  EXPECT_EQ(firn_record_remove(recorder, &nowhere, nullptr, &error), FIRN_NO_SUCH_TARGET);
  EXPECT_EQ(firn_record_undo(recorder, 1, 2, nullptr, &error), FIRN_NO_SUCH_TARGET);
  firn_layer layer = FIRN_INIT(firn_layer);
  layer.present = bits(FIRN_FIELD_LAYER_HARDNESS);
  EXPECT_EQ(firn_record_layer(recorder, &layer, &nowhere, nullptr, nullptr, &error), FIRN_NO_SUCH_TARGET);
  nowhere.thing = FIRN_THING_TEST;
  EXPECT_EQ(firn_record_layer(recorder, &layer, &nowhere, nullptr, nullptr, &error), FIRN_BAD_ARGUMENT);
  EXPECT_EQ(firn_record_rescale_depths(recorder, 1, 0, nullptr, &error), FIRN_BAD_EDIT);
  firn_site nothing = FIRN_INIT(firn_site);
  EXPECT_EQ(firn_record_site(recorder, &nothing, nullptr, &error), FIRN_BAD_EDIT);
  EXPECT_EQ(firn_recorder_edit_count(recorder), 0u);
  std::uint64_t sequence = 0;
  ASSERT_EQ(firn_recorder_next(recorder, nullptr, &sequence, nullptr), FIRN_OK);
  EXPECT_EQ(sequence, 1u) << "a refused edit takes no number";
}

TEST_F(Recording, AnyBytesAsAnEdit) {
  Buffer edit(context);
  firn_observer observer = FIRN_INIT(firn_observer);
  observer.name = "KL";
  ASSERT_EQ(firn_record_observer(recorder, &observer, nullptr, nullptr, edit.out(), &error), FIRN_OK);
  const std::string bytes = edit.text();
  for (std::size_t size = 0; size < bytes.size(); ++size) {
    std::vector<std::uint8_t> cut(bytes_of(bytes), bytes_of(bytes) + size);
    EXPECT_NE(firn_recorder_apply(recorder, cut.data(), size, &error), FIRN_OK) << size;
  }
  for (std::size_t bit = 0; bit < bytes.size() * 8; ++bit) {
    std::string damaged = bytes;
    damaged[bit / 8] = static_cast<char>(damaged[bit / 8] ^ (1 << bit % 8));
    firn_recorder* fresh = nullptr;
    ASSERT_EQ(firn_recorder_create(context, &fresh, nullptr), FIRN_OK);
    Buffer out(context);
    if (firn_recorder_apply(fresh, bytes_of(damaged), damaged.size(), nullptr) == FIRN_OK) {
      firn_recorder_pit(fresh, out.out(), nullptr);
    }
    firn_recorder_destroy(fresh);
  }
}

// --- field notes as edits ---------------------------------------------------------------------------------

// Written down line by line as the day goes, the pit has the bytes of its notes read at once.
TEST_F(Recording, NotesLineByLineMakeTheSamePit) {
  for (const std::string& name : capi::demos()) {
    firn_recorder_destroy(recorder);
    ASSERT_EQ(firn_recorder_create(context, &recorder, nullptr), FIRN_OK);
    firn_author author = FIRN_INIT(firn_author);
    author.device = kDevice;
    ASSERT_EQ(firn_recorder_author(recorder, &author, nullptr), FIRN_OK);
    std::istringstream lines(capi::demo_notes(name));
    std::string line;
    while (std::getline(lines, line)) {
      if (line.empty() || line[0] == '#') continue;
      ASSERT_EQ(firn_record_notes(recorder, line.data(), line.size(), nullptr, &error), FIRN_OK)
          << line << ": " << error.what;
    }
    EXPECT_EQ(pit(), capi::read_file(std::string(FIRN_SOURCE_DIR) + "/tests/golden/" + name + ".firn"))
        << name;
  }
}

TEST_F(Recording, NotesThatAreNotUnderstoodRecordNothing) {
  const std::string before = pit();
  const std::string typo = "HS 46\n0-5 F DFF\n";
  EXPECT_EQ(firn_record_notes(recorder, typo.data(), typo.size(), nullptr, &error),
            FIRN_NOTES_NOT_UNDERSTOOD);
  EXPECT_EQ(error.line, 2u);
  EXPECT_NE(std::string(error.remedy), "");
  EXPECT_EQ(firn_record_notes(recorder, "# only a comment", 16, nullptr, &error), FIRN_BAD_EDIT);
  EXPECT_EQ(firn_record_notes(recorder, nullptr, 0, nullptr, &error), FIRN_NULL_ARGUMENT);
  EXPECT_EQ(firn_recorder_edit_count(recorder), 0u);
  EXPECT_EQ(pit(), before);
}

TEST_F(Recording, NotesSayWhatWasRounded) {
  Buffer remarks(context);
  const std::string inches = "HS 18.123 in";
  ASSERT_EQ(firn_record_notes(recorder, inches.data(), inches.size(), remarks.out(), &error), FIRN_OK)
      << error.what;
  EXPECT_EQ(firn_recorder_edit_count(recorder), 1u);
  EXPECT_NE(remarks.text().find("stored as 46.032 cm"), std::string::npos) << remarks.text();
  EXPECT_NE(notes().find("HS 46.032"), std::string::npos) << notes();
}

}  // namespace
