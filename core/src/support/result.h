// A value or the reason why there is none. Failures travel as values inside the core, never as exceptions.
#pragma once

#include <cstdint>
#include <memory>
#include <string>
#include <string_view>
#include <utility>

#include "firnbook/status.h"
#include "schemas/pit_generated.h"

namespace firn {

inline constexpr std::uint16_t kWholeThing = 65535;

inline firnbook::Place whole_pit() {
  return {-1, -1, kWholeThing, firnbook::Thing::pit};
}

// What went wrong, where, and how to mend it. `line` and `column` count from 1 and are 0 when the
// failure is not in a text.
struct Failure {
  firn_status status = FIRN_INTERNAL;
  std::string what;
  std::string remedy;
  firnbook::Place place = whole_pit();
  // In a document that is no pit yet, or no longer one; stands before the place.
  std::string path;
  std::uint32_t line = 0;
  std::uint32_t column = 0;
};

// The texts are copied.
Failure failure_of(firn_status status, std::string_view what, std::string_view remedy);

// A value, or a failure, which stands elsewhere: most results are values, and every caller moves them.
template <class T>
class [[nodiscard]] Result {
 public:
  Result(T value) : value_(std::move(value)) {}
  Result(Failure failure) : failure_(std::make_unique<Failure>(std::move(failure))) {}

  explicit operator bool() const { return failure_ == nullptr; }
  T& operator*() { return value_; }
  const T& operator*() const { return value_; }
  T* operator->() { return &value_; }
  const T* operator->() const { return &value_; }
  // Only of a result that is one.
  const Failure& failure() const { return *failure_; }

 private:
  T value_{};
  std::unique_ptr<Failure> failure_;
};

struct Nothing {};
using Done = Result<Nothing>;
inline Done done() {
  return Nothing{};
}

}  // namespace firn
