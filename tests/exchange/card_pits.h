// Pits with anything in any field, for tests of formats that must hold all of it. The fields are those of the
// schema, so one that a format forgets is found here.
#pragma once

#include <cstdint>
#include <limits>
#include <memory>
#include <string>
#include <type_traits>

#include "pit_filler.h"
#include "schemas/pit_generated.h"
#include "support/result.h"

namespace firn::tests {

// What people write down, any number in any field, or both in one pit.
enum class Numbers { usual, any, mixed };

class PitOfAnything : public PitFiller<PitOfAnything> {
 public:
  PitOfAnything(std::uint64_t seed, Numbers numbers) : PitFiller(seed), numbers_(numbers) {}

  std::unique_ptr<firnbook::PitT> pit() {
    auto pit = std::make_unique<firnbook::PitT>();
    density_ = roll(4) + 1;
    fill_fields(*pit);
    return pit;
  }

 private:
  friend class PitFiller<PitOfAnything>;

  bool skips() { return roll(5) >= density_; }
  bool any() { return numbers_ == Numbers::any || (numbers_ == Numbers::mixed && roll(4) == 0); }
  std::uint64_t bits() {
    const std::uint64_t high = roll(1u << 31);
    const std::uint64_t middle = roll(1u << 31);
    return high << 33 ^ middle << 11 ^ roll(1u << 11);
  }

  std::int64_t number(std::int64_t lowest, std::int64_t highest) {
    if (!any()) {
      const std::int64_t units[] = {1, 10, 100, 500, 1000, 100000};
      const std::int64_t value = static_cast<std::int64_t>(roll(200)) * units[roll(6)];
      return value % (highest / 2 + 1);
    }
    const std::int64_t edges[] = {lowest, highest, 0, -1, static_cast<std::int64_t>(bits())};
    return edges[roll(5)];
  }
  template <class T>
  T number() {
    return static_cast<T>(number(static_cast<std::int64_t>(std::numeric_limits<T>::min()),
                                 static_cast<std::int64_t>(std::numeric_limits<T>::max())));
  }
  template <class E>
  E code() {
    return static_cast<E>(any() ? roll(256) : roll(12));
  }

  std::string text() {
    static const std::string kTexts[] = {"KL",
                                         "sugary, to the ground",
                                         "wind slab thickens toward the ridge",
                                         "=1+1",
                                         "a \"quoted\" word; and, more",
                                         "two\nlines\r\nand\ttabs",
                                         "\xD7\xA9\xD7\x9C\xD7\x92",
                                         "not UTF-8: \xFF\xC3",
                                         std::string("a zero \0 inside", 15),
                                         u8"Triebschnee \u00FCber Reif \U0001F3D4",
                                         std::string(300, 'x'),
                                         " "};
    return kTexts[roll(12)];
  }

  firnbook::Moment moment() {
    if (any()) {
      return {number<std::int64_t>(), number<std::int16_t>(), code<firnbook::TimePrecision>(),
              static_cast<std::uint8_t>(roll(256))};
    }
    const bool is_day = roll(2) == 0;
    const std::int64_t unit = is_day ? 86400 : 60;
    const auto local_s = (static_cast<std::int64_t>(roll(1u << 30)) + 1500000000) / unit * unit;
    return {local_s, static_cast<std::int16_t>(is_day ? 0 : -420),
            is_day ? firnbook::TimePrecision::day : firnbook::TimePrecision::minute,
            static_cast<std::uint8_t>(is_day ? 0 : 1)};
  }
  firnbook::Depth depth() {
    if (any()) return {number<std::int32_t>(), code<firnbook::Datum>(), code<firnbook::Direction>()};
    return {number<std::int32_t>(), roll(4) == 0 ? firnbook::Datum::ground : firnbook::Datum::surface,
            firnbook::Direction::vertical};
  }

  firnbook::Place place() {
    const auto index = any() ? number<std::int32_t>() : static_cast<std::int32_t>(roll(4)) - 1;
    const auto sub = any() ? number<std::int32_t>() : -1;
    const auto field = any() ? number<std::uint16_t>() : kWholeThing;
    return {index, sub, field, code<firnbook::Thing>()};
  }
  float real() { return static_cast<float>(roll(100)) / 8; }
  std::uint64_t mask(std::uint16_t) {
    if (roll(5) != 0) return 0;
    return any() ? bits() : std::uint64_t{1} << roll(18);
  }

  Numbers numbers_;
  std::uint32_t density_ = 3;
};

}  // namespace firn::tests
