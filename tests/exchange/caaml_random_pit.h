// Pits with anything in any field: what people might write, or any number and any bytes; with texts and data
// of others that XML has trouble with.
#pragma once

#include <cstdint>
#include <cstring>
#include <memory>
#include <string>
#include <type_traits>

#include "support/place.h"
#include "support/text.h"
#include "unit/pit_filler.h"
#include "vocabulary/codes.h"

namespace firn::tests {

enum class Wild { plausible, anything };

class RandomPit : public PitFiller<RandomPit> {
 public:
  RandomPit(std::uint64_t seed, Wild wild) : PitFiller(seed), wild_(wild) {}

  std::unique_ptr<firnbook::PitT> pit() {
    auto pit = std::make_unique<firnbook::PitT>();
    density_ = roll(5) + 1;
    direction_ = roll(3) == 0 ? firnbook::Direction::vertical : firnbook::Direction::unknown;
    fill_fields(*pit);
    return pit;
  }

 private:
  friend class PitFiller<RandomPit>;

  bool skips() { return roll(6) >= density_; }
  bool is_wild(std::uint32_t one_in) { return wild_ == Wild::anything && roll(one_in) == 0; }

  std::int64_t number(std::int64_t lowest, std::int64_t highest) {
    if (highest <= 255) return roll(is_wild(2) ? 256 : 12);
    if (is_wild(3)) {
      const std::int64_t edges[] = {lowest, highest, 0, lowest < 0 ? -1 : 1, lowest + 1, highest - 1};
      return edges[roll(6)];
    }
    const std::int64_t value = static_cast<std::int64_t>(roll(300000)) - (lowest < 0 ? 5000 : 0);
    return value > highest ? value % highest : value;
  }
  template <class E>
  E code() {
    const CodeTable table = code_table<E>();
    if (is_wild(10)) return static_cast<E>(roll(256));
    return static_cast<E>(table.codes[roll(static_cast<std::uint32_t>(table.count))].value);
  }

  std::string text() {
    static const char* const kTexts[] = {"KL",
                                         "sugary, to the ground",
                                         "a <tag> & \"quotes\" ]]> 'too'",
                                         "two\nlines\tand\ttabs",
                                         "\xD7\xA9\xD7\x9C\xD7\x92",
                                         " blanks around ",
                                         "  ",
                                         "\n",
                                         "\x7F and \xC2\x85",
                                         "unknown",
                                         "other:notrecorded",
                                         "missing",
                                         "CH",
                                         "ppm",
                                         "mg/kg",
                                         "\xF0\x9F\x8F\x94",
                                         "abc-1",
                                         "_firn.person",
                                         "-->",
                                         "xmlns",
                                         "0001-01-01"};
    static const char* const kBytes[] = {"\x01\x02", "\xFF\xFE",     "a\rb\r\nc", "\xEF\xBF\xBE",
                                         "\xC3",     "\xED\xA0\x80", "\x1B[0m"};
    if (is_wild(4)) return roll(8) == 0 ? std::string("nul\0in", 6) : kBytes[roll(7)];
    return kTexts[roll(sizeof kTexts / sizeof kTexts[0])];
  }

  firnbook::Moment moment() {
    using firnbook::TimePrecision;
    if (is_wild(8)) {
      const std::int64_t wide[] = {INT64_MIN, INT64_MAX, -62135596800, 253402300800, -62135596801, 0};
      return {wide[roll(6)], static_cast<std::int16_t>(roll(65536)), static_cast<TimePrecision>(roll(256)),
              static_cast<std::uint8_t>(roll(3))};
    }
    CalendarTime time;
    time.year = wild_ == Wild::anything ? 1 + roll(9999) : 1990 + roll(60);
    const auto precision = static_cast<TimePrecision>(1 + roll(5));
    if (precision >= TimePrecision::month) time.month = static_cast<int>(1 + roll(12));
    if (precision >= TimePrecision::day) time.day = static_cast<int>(1 + roll(28));
    if (precision >= TimePrecision::minute) time.hour = static_cast<int>(roll(24));
    if (precision >= TimePrecision::minute) time.minute = static_cast<int>(roll(60));
    if (precision >= TimePrecision::second) time.second = static_cast<int>(roll(60));
    const bool known = roll(2) == 0;
    const auto offset = static_cast<std::int16_t>(known ? static_cast<int>(roll(2 * 1439 + 1)) - 1439 : 0);
    return {seconds_of(time), offset, precision, static_cast<std::uint8_t>(known ? 1 : 0)};
  }
  firnbook::Depth depth() {
    const auto datum = roll(5) != 0 ? firnbook::Datum::surface : code<firnbook::Datum>();
    const auto direction = roll(5) != 0 ? direction_ : code<firnbook::Direction>();
    return {static_cast<std::int32_t>(number(INT32_MIN, INT32_MAX)), datum, direction};
  }
  firnbook::Place place() {
    if (is_wild(6)) {
      const std::int32_t edges[] = {INT32_MIN, INT32_MAX, 0xFFFFFFF, 0xFFFFFFE, -2, 7};
      const std::int32_t index = edges[roll(6)];
      const std::int32_t sub = edges[roll(6)];
      const auto field = static_cast<std::uint16_t>(roll(65536));
      return {index, sub, field, static_cast<firnbook::Thing>(roll(256))};
    }
    const auto thing = static_cast<firnbook::Thing>(roll(3) == 0 ? 0 : roll(34));
    const bool is_listed = thing >= firnbook::Thing::layer && thing <= firnbook::Thing::fracture;
    const auto index =
        is_listed ? static_cast<std::int32_t>(roll(3)) : static_cast<std::int32_t>(roll(2)) - 1;
    const auto sub = roll(2) == 0 ? -1 : static_cast<std::int32_t>(roll(3));
    const std::uint16_t field = roll(2) == 0 ? kWholeThing : static_cast<std::uint16_t>(roll(20));
    return {index, sub, field, thing};
  }

  float real() {
    const std::uint32_t high = roll(65536) << 16;
    const std::uint32_t bits = high | roll(65536);
    float value = static_cast<float>(roll(100000)) / 1000.0F;
    if (is_wild(3)) std::memcpy(&value, &bits, sizeof value);
    return value;
  }
  std::uint64_t mask(std::uint16_t) {
    if (roll(4) != 0) return 0;
    const std::uint64_t bits = roll(65536);
    return bits << roll(49);
  }

  template <class T>
  static constexpr bool kHasSpan =
      std::is_same_v<T, firnbook::LayerT> || std::is_same_v<T, firnbook::DensityReadingT> ||
      std::is_same_v<T, firnbook::LiquidWaterReadingT> || std::is_same_v<T, firnbook::SurfaceAreaReadingT> ||
      std::is_same_v<T, firnbook::HardnessReadingT> || std::is_same_v<T, firnbook::StrengthReadingT> ||
      std::is_same_v<T, firnbook::ImpurityReadingT>;

  template <class T>
  void settle(T& object) {
    if constexpr (kHasSpan<T>) {
      // Mostly a bottom that lies below its top.
      if (object.top != nullptr && object.bottom != nullptr && roll(4) != 0) {
        const std::int64_t below = std::int64_t{object.top->value_10um()} + roll(30000);
        *object.bottom = {static_cast<std::int32_t>(below > INT32_MAX ? INT32_MAX : below),
                          object.top->datum(), object.top->direction()};
      }
    }
    if constexpr (std::is_same_v<T, firnbook::ExtensionT>) {
      static const char* const kForeign[] = {
          "<x:a xmlns:x=\"urn:other\" n=\"1 &lt; 2\"><x:b>t &amp; u</x:b> <x:c/></x:a>",
          "<a xmlns=\"urn:other\"><b>  </b>tail</a>",
          "<x:a xmlns:x=\"urn:other\"/>",
          "<x:a xmlns:x=\"urn:other\"><!-- a comment --></x:a>",
          "<x:a xmlns:x=\"urn:other\"><y:b/></x:a>",
          "<x:a xmlns:x=\"urn:other\">",
          "<!DOCTYPE a><a xmlns=\"urn:other\"/>",
          "<a xmlns=\"urn:other\" b=\"1\" b=\"2\"/>",
          "<x:a xmlns:x=\"urn:other\" xmlns:gml=\"http://www.opengis.net/gml\"><gml:Point/></x:a>"};
      if (roll(2) == 0) {
        const std::string xml = kForeign[roll(9)];
        object.key = "urn:other";
        object.bytes.assign(xml.begin(), xml.end());
        if (object.about == nullptr) object.about = std::make_unique<firnbook::Place>(place());
      }
    }
  }

  Wild wild_;
  std::uint32_t density_ = 3;
  firnbook::Direction direction_ = firnbook::Direction::unknown;
};

}  // namespace firn::tests
