// Pits with anything in any field, for tests of formats that must hold all of it. The fields are those of the
// schema, so one that a format forgets is found here.
#pragma once

#include <cstdint>
#include <limits>
#include <memory>
#include <string>
#include <type_traits>
#include <utility>
#include <vector>

#include "schemas/pit_generated.h"
#include "support/result.h"
#include "typed_fields.h"

namespace firn::tests {

// What people write down, any number in any field, or both in one pit.
enum class Numbers { usual, any, mixed };

class PitOfAnything {
 public:
  PitOfAnything(std::uint64_t seed, Numbers numbers) : state_(seed * 2654435761u + 99), numbers_(numbers) {}

  std::unique_ptr<firnbook::PitT> pit() {
    auto pit = std::make_unique<firnbook::PitT>();
    density_ = roll(4) + 1;
    fill_fields(*pit);
    return pit;
  }

  std::uint32_t roll(std::uint32_t sides) {
    state_ = state_ * 6364136223846793005u + 1442695040888963407u;
    return static_cast<std::uint32_t>(state_ >> 33) % sides;
  }

 private:
  bool any() { return numbers_ == Numbers::any || (numbers_ == Numbers::mixed && roll(4) == 0); }
  std::uint64_t bits() {
    const std::uint64_t high = roll(1u << 31);
    const std::uint64_t middle = roll(1u << 31);
    return high << 33 ^ middle << 11 ^ roll(1u << 11);
  }

  template <class T>
  T number() {
    using Limits = std::numeric_limits<T>;
    if (!any()) {
      const std::int64_t units[] = {1, 10, 100, 500, 1000, 100000};
      const std::int64_t value = static_cast<std::int64_t>(roll(200)) * units[roll(6)];
      return static_cast<T>(value % (static_cast<std::int64_t>(Limits::max()) / 2 + 1));
    }
    const T edges[] = {Limits::min(), Limits::max(), T(0), static_cast<T>(-1), static_cast<T>(bits())};
    return edges[roll(5)];
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

  template <class T>
  void fill(flatbuffers::Optional<T>& member) {
    if constexpr (std::is_same_v<T, bool>) {
      member = roll(2) == 0;
    } else if constexpr (std::is_enum_v<T>) {
      member = code<T>();
    } else {
      member = number<T>();
    }
  }
  void fill(std::string& member) { member = text(); }
  void fill(std::unique_ptr<firnbook::Depth>& member) { member = std::make_unique<firnbook::Depth>(depth()); }
  void fill(std::unique_ptr<firnbook::Moment>& member) {
    member = std::make_unique<firnbook::Moment>(moment());
  }
  void fill(std::unique_ptr<firnbook::TimeSpan>& member) {
    const firnbook::Moment begin = moment();
    member = std::make_unique<firnbook::TimeSpan>(begin, roll(2) == 0 ? firnbook::Moment() : moment());
  }
  void fill(std::unique_ptr<firnbook::Place>& member) {
    const auto index = any() ? number<std::int32_t>() : static_cast<std::int32_t>(roll(4)) - 1;
    const auto sub = any() ? number<std::int32_t>() : -1;
    const auto field = any() ? number<std::uint16_t>() : kWholeThing;
    member = std::make_unique<firnbook::Place>(index, sub, field, code<firnbook::Thing>());
  }
  void fill(std::vector<std::uint8_t>& member) {
    for (std::uint32_t i = roll(33); i > 0; --i) member.push_back(static_cast<std::uint8_t>(roll(256)));
  }
  void fill(std::vector<std::int32_t>& member) {
    for (std::uint32_t i = roll(5); i > 0; --i) member.push_back(number<std::int32_t>());
  }
  void fill(std::vector<float>& member) {
    for (std::uint32_t i = roll(3); i > 0; --i) member.push_back(static_cast<float>(roll(100)) / 8);
  }
  void fill(std::vector<firnbook::Depth>& member) {
    for (std::uint32_t i = roll(3); i > 0; --i) member.push_back(depth());
  }
  void fill(std::vector<firnbook::GrainForm>& member) {
    for (std::uint32_t i = roll(3); i > 0; --i) member.push_back(code<firnbook::GrainForm>());
  }
  template <class T>
  std::void_t<typename T::TableType> fill(std::unique_ptr<T>& member) {
    member = std::make_unique<T>();
    fill_fields(*member);
  }
  template <class T>
  std::void_t<typename T::TableType> fill(std::vector<std::unique_ptr<T>>& member) {
    for (std::uint32_t i = roll(4); i > 0; --i) {
      member.push_back(std::make_unique<T>());
      fill_fields(*member.back());
    }
  }
  template <class T>
  void fill_fields(T& object) {
    each_field(Of<typename T::TableType>{}, [&](auto, auto, auto member) {
      using Member = std::decay_t<decltype(object.*member)>;
      if constexpr (std::is_same_v<Member, std::uint64_t>) {
        if (roll(5) == 0) object.*member = any() ? bits() : std::uint64_t{1} << roll(18);
      } else if constexpr (!std::is_same_v<Member, std::uint16_t>) {
        if (roll(5) < density_) fill(object.*member);
      }
    });
  }

  std::uint64_t state_;
  Numbers numbers_;
  std::uint32_t density_ = 3;
};

}  // namespace firn::tests
