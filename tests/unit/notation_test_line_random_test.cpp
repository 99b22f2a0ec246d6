// Whatever a stability test may hold is printed so that it reads back to the same bytes: thousands of tests
// with every field of StabilityTest, Fracture and the layer in it, sensible values and senseless ones.
#include <random>

#include "notation_test_line_support.h"
#include "vocabulary/codes.h"

namespace firn::notation {
namespace {

using namespace firnbook;

class Maker {
 public:
  explicit Maker(std::uint32_t seed) : engine_(seed) {}

  StabilityTestT test() {
    StabilityTestT test;
    maybe(test.kind, 0, 9);
    maybe(test.outcome, 1, 3);
    if (one_in(2)) {
      const int count = one_in(4) ? 3 : 1;
      for (int i = 0; i < count; ++i) test.fractures.push_back(std::make_unique<FractureT>(fracture()));
    }
    maybe(test.not_valid_reason, 1, 5);
    maybe_length(test.column_width_10um);
    maybe_length(test.column_length_10um);
    maybe_length(test.column_depth_10um);
    maybe_length(test.slab_left_10um);
    maybe(test.column_ends, 1, 2);
    maybe(test.slope_deg, 0, 90);
    maybe(test.crossing_rule, 1, 2);
    maybe(test.taps_given, 0, 30);
    while (one_in(4)) test.unbroken.push_back(depth());
    if (one_in(4)) test.words = words();
    test.unreliable = mask();
    return test;
  }

 private:
  bool one_in(std::uint32_t count) { return next() % count == 0; }
  int between(int lowest, int highest) {
    return lowest + static_cast<int>(next() % static_cast<std::uint32_t>(highest - lowest + 1));
  }
  // Mostly inside the range, now and then any byte at all.
  template <class T>
  void maybe(flatbuffers::Optional<T>& field, int lowest, int highest) {
    if (!one_in(3)) return;
    field = static_cast<T>(one_in(8) ? between(0, 255) : between(lowest, highest));
  }
  template <class E>
  void maybe_code(flatbuffers::Optional<E>& field) {
    if (!one_in(3)) return;
    const CodeTable table = code_table<E>();
    field = static_cast<E>(one_in(8) ? between(0, 255)
                                     : table.codes[next() % static_cast<std::uint32_t>(table.count)].value);
  }
  std::int32_t length() {
    if (one_in(16)) return one_in(2) ? INT32_MIN : INT32_MAX;
    if (one_in(8)) return static_cast<std::int32_t>(next());
    return one_in(2) ? between(0, 300) * 1000 : between(0, 300000);
  }
  void maybe_length(flatbuffers::Optional<std::int32_t>& field) {
    if (one_in(3)) field = length();
  }
  std::uint64_t mask() {
    if (!one_in(4)) return 0;
    if (one_in(4)) return std::uint64_t{next()} << 32 | next();
    return std::uint64_t{1} << next() % 64;
  }
  Depth depth() {
    return Depth(length(), static_cast<Datum>(one_in(12) ? between(0, 255) : between(0, 2)),
                 static_cast<Direction>(one_in(12) ? between(0, 255) : between(0, 2)));
  }
  std::string words() {
    constexpr const char* kPieces[] = {
        "pop", " ",  "\"",           "\\",       ";",   "(SP)",  "\xC3\xA9", "down", "40", ",",
        "?",   "22", "\xE2\x9D\x84", "\xD8\xAB", "@68", "on SH", "x2",       "'",    "\t", ":"};
    std::string text;
    const int count = between(1, 6);
    for (int i = 0; i < count; ++i) text += kPieces[next() % (sizeof kPieces / sizeof kPieces[0])];
    return text == "\t" ? "tab" : text;
  }
  Moment moment() {
    if (one_in(3)) {
      return Moment(static_cast<std::int64_t>(std::uint64_t{next()} << 32 | next()),
                    static_cast<std::int16_t>(next()), static_cast<TimePrecision>(between(0, 255)),
                    static_cast<std::uint8_t>(next()));
    }
    // Days of YYMMDD and days outside it, first and last included.
    constexpr std::int64_t kDays[] = {10957, 10956,   47481,   47482,   20821,
                                      0,     -354285, -354286, 2932896, 2932897};
    return Moment(kDays[next() % 10] * 86400, 0, TimePrecision::day, 0);
  }
  LayerT layer() {
    LayerT layer;
    layer.grain_form = GrainForm::SH;
    if (one_in(4)) layer.grain_form.reset();
    if (one_in(6)) layer.top = std::make_unique<Depth>(depth());
    if (one_in(6)) layer.bottom = std::make_unique<Depth>(depth());
    maybe_code(layer.hardness);
    maybe_code(layer.hardness_top);
    maybe_code(layer.hardness_bottom);
    maybe_code(layer.grain_form);
    maybe_code(layer.grain_form_second);
    maybe_length(layer.grain_size_10um);
    maybe_length(layer.grain_size_max_10um);
    maybe_code(layer.grain_size_class);
    maybe_code(layer.grain_size_max_class);
    maybe_code(layer.wetness);
    if (one_in(4)) layer.words = words();
    while (one_in(4)) layer.candidates.push_back(static_cast<GrainForm>(between(0, 99)));
    if (one_in(2)) {
      layer.name = std::make_unique<LayerNameT>();
      if (one_in(2)) layer.name->date = std::make_unique<Moment>(moment());
      maybe_code(layer.name->kind);
      if (one_in(3) || (layer.name->date == nullptr && !layer.name->kind)) layer.name->words = words();
    }
    if (one_in(6)) layer.formed = std::make_unique<TimeSpan>(moment(), one_in(2) ? moment() : Moment());
    maybe_code(layer.concern);
    // A layer that says nothing is left out of a pit's bytes, and of its lines.
    layer.unreliable = one_in(3) ? mask() : std::uint64_t{1};
    return layer;
  }
  FractureT fracture() {
    FractureT fracture;
    if (one_in(16)) return fracture;
    if (one_in(2)) fracture.depth = std::make_unique<Depth>(depth());
    maybe(fracture.tap, 0, 31);
    maybe(fracture.tap_crossed, 0, 31);
    maybe_code(fracture.stage);
    maybe_code(fracture.character);
    maybe_code(fracture.quality);
    maybe_code(fracture.fracture_surface);
    maybe_code(fracture.crossing);
    maybe(fracture.step, 0, 8);
    maybe(fracture.jump, 0, 3);
    maybe_code(fracture.release);
    maybe_length(fracture.cut_10um);
    maybe_code(fracture.saw_end);
    maybe_code(fracture.ease);
    if (one_in(4)) {
      fracture.force_mn =
          one_in(4) ? static_cast<std::int64_t>(std::uint64_t{next()} << 32 | next()) : between(0, 900000);
    }
    if (one_in(2)) fracture.on = std::make_unique<LayerT>(layer());
    if (fracture.on != nullptr && says_nothing(*fracture.on)) fracture.on->grain_form = GrainForm::FC;
    maybe_code(fracture.part);
    if (one_in(4)) fracture.words = words();
    fracture.unreliable = mask();
    return fracture;
  }
  static bool says_nothing(const LayerT& layer) {
    flatbuffers::FlatBufferBuilder some, none;
    const LayerT empty;
    some.Finish(Layer::Pack(some, &layer));
    none.Finish(Layer::Pack(none, &empty));
    return some.GetSize() == none.GetSize();
  }

  std::uint32_t next() { return static_cast<std::uint32_t>(engine_()); }

  std::mt19937 engine_;
};

TEST(TestLineRandom, WhatIsPrintedReadsBackToTheSameBytes) {
  for (std::uint32_t seed = 0; seed < 20000; ++seed) {
    const StabilityTestT test = Maker(seed).test();
    const std::string line = printed(test);
    ASSERT_TRUE(looks_like_test(line)) << seed << ": " << line;
    const auto tests = parse_test(line);
    ASSERT_TRUE(tests) << seed << ": " << line << "\n"
                       << tests.failure().what << " at " << tests.failure().column;
    ASSERT_EQ(tests->size(), 1u) << line;
    ASSERT_EQ(packed((*tests)[0]), packed(test)) << seed << ": " << line << "\n" << printed((*tests)[0]);
  }
}

// Random letters of the shorthand: read or refused, and what is read prints to a line that reads the same.
TEST(TestLineRandom, RandomLinesAreStable) {
  constexpr const char* kPieces[] = {"CT",          "ECT",
                                     "PST ",        "RB",
                                     "P",           "N",
                                     "V",           "M",
                                     "12",          "7",
                                     " ",           " ",
                                     "(SP)",        "Q1",
                                     "/",           "100",
                                     "End",         "down ",
                                     "@",           "68",
                                     "cm",          "on ",
                                     "SH",          "6.0",
                                     ";",           ",",
                                     "x2",          "\"w\"",
                                     "22in",        "(270102)",
                                     "FC(",         "RG",
                                     ")",           "no fracture ",
                                     "not valid: ", "sank in",
                                     "column 30x90"};
  std::mt19937 random(7);
  int understood = 0;
  for (int i = 0; i < 60000; ++i) {
    std::string line(kPieces[random() % 4]);
    for (auto n = random() % 7; n > 0; --n) line += kPieces[random() % (sizeof kPieces / sizeof kPieces[0])];
    const auto tests = parse_test(line);
    if (!tests) continue;
    ++understood;
    const std::string once = printed((*tests)[0]);
    const auto again = parse_test(once);
    ASSERT_TRUE(again) << line << " -> " << once << ": " << again.failure().what;
    ASSERT_EQ(packed((*again)[0]), packed((*tests)[0])) << line << " -> " << once;
  }
  EXPECT_GT(understood, 1000);
}

}  // namespace
}  // namespace firn::notation
