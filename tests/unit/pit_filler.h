// Fills every field of a pit, by the list of the schema's fields in typed_fields.h, so that a field that a
// format forgets is found. What stands in the fields is for the class that derives from this to say:
//
//   roll(sides)              a number from 0 to sides - 1
//   skips()                  whether a field stays absent
//   number(lowest, highest)  a number for a field of that range
//   code<E>(), text(), moment(), depth(), place(), real()
//   mask(last)               a mask of unreliable values; `last` is the id of the mask itself
//   begin(object), settle(object)   before and after its fields, for any object
#pragma once

#include <cstdint>
#include <limits>
#include <memory>
#include <string>
#include <type_traits>
#include <vector>

#include "schemas/pit_generated.h"
#include "support/place.h"
#include "typed_fields.h"

namespace firn::tests {

template <class Self>
class PitFiller {
 public:
  std::uint32_t roll(std::uint32_t sides) {
    state_ = state_ * 6364136223846793005u + 1442695040888963407u;
    return static_cast<std::uint32_t>(state_ >> 33) % sides;
  }

 protected:
  explicit PitFiller(std::uint64_t seed) : state_(seed * 2654435761u + 12345) {}

  template <class T>
  void fill_fields(T& object) {
    self().begin(object);
    each_field(Of<typename T::TableType>{}, [&](auto field, auto, auto member) {
      using Member = std::decay_t<decltype(object.*member)>;
      if constexpr (std::is_same_v<Member, std::uint64_t>) {
        object.*member = self().mask(field_id(field));
      } else if constexpr (!std::is_same_v<Member, std::uint16_t>) {
        if (!self().skips()) fill(object.*member);
      }
    });
    self().settle(object);
  }
  // Hooks that a class need not have.
  template <class T>
  void begin(T&) {}
  template <class T>
  void settle(T&) {}

 private:
  Self& self() { return static_cast<Self&>(*this); }

  template <class T>
  void fill(flatbuffers::Optional<T>& member) {
    if constexpr (std::is_same_v<T, bool>) {
      member = roll(2) == 0;
    } else if constexpr (std::is_enum_v<T>) {
      member = self().template code<T>();
    } else {
      member = static_cast<T>(self().number(static_cast<std::int64_t>(std::numeric_limits<T>::min()),
                                            static_cast<std::int64_t>(std::numeric_limits<T>::max())));
    }
  }
  void fill(std::string& member) { member = self().text(); }
  void fill(std::unique_ptr<firnbook::Depth>& member) {
    member = std::make_unique<firnbook::Depth>(self().depth());
  }
  void fill(std::unique_ptr<firnbook::Moment>& member) {
    member = std::make_unique<firnbook::Moment>(self().moment());
  }
  void fill(std::unique_ptr<firnbook::Place>& member) {
    member = std::make_unique<firnbook::Place>(self().place());
  }
  void fill(std::unique_ptr<firnbook::TimeSpan>& member) {
    const firnbook::Moment begin = self().moment();
    member = std::make_unique<firnbook::TimeSpan>(begin, roll(2) == 0 ? firnbook::Moment() : self().moment());
  }
  template <class T, class Make>
  void fill_list(std::vector<T>& member, std::uint32_t sides, Make&& make) {
    for (std::uint32_t i = roll(sides); i > 0; --i) member.push_back(static_cast<T>(make()));
  }
  void fill(std::vector<std::int32_t>& member) {
    fill_list(member, 5, [&] { return self().number(INT32_MIN, INT32_MAX); });
  }
  void fill(std::vector<std::uint8_t>& member) {
    fill_list(member, 33, [&] { return roll(256); });
  }
  void fill(std::vector<float>& member) {
    fill_list(member, 6, [&] { return self().real(); });
  }
  void fill(std::vector<firnbook::Depth>& member) {
    fill_list(member, 3, [&] { return self().depth(); });
  }
  void fill(std::vector<firnbook::GrainForm>& member) {
    fill_list(member, 3, [&] { return self().template code<firnbook::GrainForm>(); });
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

  std::uint64_t state_;
};

}  // namespace firn::tests
