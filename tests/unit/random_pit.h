// Pits with anything in any field, for tests of formats.
#pragma once

#include <cstdint>
#include <cstring>
#include <memory>
#include <string>

#include "pit_filler.h"
#include "support/place.h"
#include "support/text.h"
#include "vocabulary/codes.h"

namespace firn::tests {

using firnbook::Depth;
using firnbook::Moment;
using firnbook::Place;
using firnbook::TimePrecision;
using firnbook::TimeSpan;

// How far a pit may stray from what people would write.
enum class Wild { plausible, any_number };

class RandomPit : public PitFiller<RandomPit> {
 public:
  RandomPit(std::uint64_t seed, Wild wild) : PitFiller(seed), wild_(wild) {}

  std::unique_ptr<firnbook::PitT> pit() {
    auto pit = std::make_unique<firnbook::PitT>();
    density_ = roll(4) + 1;
    fill_fields(*pit);
    return pit;
  }

 private:
  friend class PitFiller<RandomPit>;

  bool skips() { return roll(5) >= density_; }

  std::int64_t number(std::int64_t lowest, std::int64_t highest) {
    if (wild_ == Wild::any_number && roll(3) == 0) {
      const std::int64_t edges[] = {lowest, highest, 0, -1, lowest + 1, highest - 1};
      const std::int64_t edge = edges[roll(6)];
      return edge < lowest ? lowest : edge;
    }
    const std::int64_t value = static_cast<std::int64_t>(roll(300000)) - (lowest < 0 ? 5000 : 0);
    return value > highest ? value % highest : value;
  }

  template <class E>
  E code() {
    const CodeTable table = code_table<E>();
    if (wild_ == Wild::any_number && roll(10) == 0) return static_cast<E>(roll(256));
    return static_cast<E>(table.codes[roll(static_cast<std::uint32_t>(table.count))].value);
  }

  std::string text() {
    static const char* const kTexts[] = {"KL",
                                         "sugary, to the ground",
                                         "wind crust",
                                         "same aspect and elevation as Larch Bowl; gentler and short",
                                         "U",
                                         "~",
                                         "a \"quoted\" word",
                                         "back\\slash",
                                         "two\nlines\tand\ttabs",
                                         "\xD7\xA9\xD7\x9C\xD7\x92",
                                         " blanks around ",
                                         "# no comment",
                                         "\x7F and \xC2\x85",
                                         u8"\u201Ccurly\u201D",
                                         "(in brackets), 17,5; yes?",
                                         "not looked for",
                                         "crust",
                                         "\xF0\x9F\x8F\x94",
                                         "formed 2027-01-02",
                                         "N",
                                         "issued",
                                         "profile"};
    return kTexts[roll(sizeof kTexts / sizeof kTexts[0])];
  }

  Moment moment() {
    if (wild_ == Wild::any_number && roll(8) == 0) {
      return Moment(number(INT64_MIN, INT64_MAX), static_cast<std::int16_t>(number(-32768, 32767)),
                    static_cast<TimePrecision>(roll(8)), static_cast<std::uint8_t>(roll(3)));
    }
    CalendarTime time;
    time.year = wild_ == Wild::any_number ? roll(10000) : 1990 + roll(60);
    const auto precision = static_cast<TimePrecision>(1 + roll(5));
    if (precision >= TimePrecision::month) time.month = static_cast<int>(1 + roll(12));
    if (precision >= TimePrecision::day) time.day = static_cast<int>(1 + roll(28));
    if (precision >= TimePrecision::minute) time.hour = static_cast<int>(roll(24));
    if (precision >= TimePrecision::minute) time.minute = static_cast<int>(roll(60));
    if (precision >= TimePrecision::second) time.second = static_cast<int>(roll(60));
    const bool known = roll(2) == 0;
    const auto offset = static_cast<std::int16_t>(known ? static_cast<int>(roll(2 * 1439 + 1)) - 1439 : 0);
    return Moment(seconds_of(time), offset, precision, known ? 1 : 0);
  }

  Depth depth() {
    const auto datum = roll(4) != 0 ? datum_ : code<firnbook::Datum>();
    return Depth(static_cast<std::int32_t>(number(INT32_MIN, INT32_MAX)), datum, direction_);
  }

  Place place() {
    const auto thing = static_cast<firnbook::Thing>(roll(33));
    // One roll after the other: the order of arguments differs between compilers.
    const auto index = static_cast<std::int32_t>(roll(3)) - 1;
    const auto sub = static_cast<std::int32_t>(roll(3)) - 1;
    const std::uint16_t field = roll(3) == 0 ? kWholeThing : static_cast<std::uint16_t>(roll(20));
    return Place(index, sub, field, thing);
  }

  float real() {
    const std::uint32_t high = roll(0x7FFFFFFF) << 1;
    const std::uint32_t bits = high | roll(2);
    float value = static_cast<float>(roll(4000)) / 8;
    if (wild_ == Wild::any_number) std::memcpy(&value, &bits, sizeof value);
    return value - value == 0 ? value : 0.0f;
  }

  // Bits of fields that exist, other than the mask itself, which is the last.
  std::uint64_t mask(std::uint16_t last) {
    std::uint64_t bits = 0;
    if (roll(4) != 0) return bits;
    for (std::uint16_t i = 0; i < last; ++i) {
      if (roll(6) == 0) bits |= std::uint64_t{1} << i;
    }
    return bits;
  }

  template <class T>
  void begin(T&) {
    datum_ = roll(3) == 0 ? code<firnbook::Datum>() : firnbook::Datum::surface;
    direction_ = roll(3) == 0 ? code<firnbook::Direction>() : firnbook::Direction::vertical;
  }

  Wild wild_;
  std::uint32_t density_ = 3;
  firnbook::Datum datum_ = firnbook::Datum::surface;
  firnbook::Direction direction_ = firnbook::Direction::vertical;
};

}  // namespace firn::tests
