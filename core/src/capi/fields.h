// One struct of the caller against one table of the schema: takes what is present, remembers what the struct
// can hold, and refuses bits of anything else, so that nothing is lost in silence.
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "capi/guard.h"
#include "firnbook/types.h"
#include "schemas/pit_generated.h"

namespace firn::capi {

// Bytes that one call may still copy, and whether it said anything at all. Lists may repeat the same
// megabytes over and over, so what counts is what is copied.
class Room {
 public:
  explicit Room(std::size_t bytes) : left_(bytes) {}
  bool take(std::size_t bytes) {
    if (bytes > left_) return false;
    left_ -= bytes;
    return true;
  }
  // Room for `count` elements, each of which takes at least this much in an edit.
  bool take_elements(std::size_t count, std::size_t least) {
    return count <= left_ / least && take(count * least);
  }

  void something_was_said() { said_ = true; }
  bool said_anything() const { return said_; }

 private:
  std::size_t left_;
  bool said_ = false;
};

firnbook::Depth depth_of(const firn_depth& depth);
firnbook::Moment moment_of(const firn_moment& moment);

class Fields {
 public:
  Fields(const char* struct_name, std::uint64_t present, std::uint64_t unreliable, Room& room)
      : struct_name_(struct_name), present_(present), unreliable_(unreliable), room_(room) {}

  bool has(int field) {
    known_ |= bit(field);
    const bool present = (present_ & bit(field)) != 0;
    if (present) room_.something_was_said();
    return present;
  }

  // Numbers and enumerations.
  template <class Slot, class Value>
  void number(int field, Slot& slot, Value value) {
    if (has(field)) slot = static_cast<typename Slot::value_type>(value);
  }
  void yes_or_no(int field, std::optional<bool>& slot, std::uint8_t value);
  void depth(int field, std::unique_ptr<firnbook::Depth>& slot, const firn_depth& value);
  void moment(int field, std::unique_ptr<firnbook::Moment>& slot, const firn_moment& value);
  void span(int field, std::unique_ptr<firnbook::TimeSpan>& slot, const firn_time_span& value);
  void text(int field, std::string& slot, const char* value);
  // For what has no bit of its own in the mask.
  void text(std::string& slot, const char* value);

  // Lists: true when there are elements to copy.
  bool list(int field, const void* elements, std::size_t count, std::size_t least_bytes);
  template <class To, class From>
  void numbers(int field, std::vector<To>& slot, const From* elements, std::size_t count) {
    if (!list(field, elements, count, sizeof(To))) return;
    slot.reserve(count);
    for (std::size_t i = 0; i < count; ++i) slot.push_back(static_cast<To>(elements[i]));
  }

  void refuse(firn_status status, std::string_view what, std::string_view remedy);
  // An inner struct's answer.
  void take(Done answer);
  bool failed() const { return !answer_; }

  // After the last field: the masks may hold nothing else.
  Done finish();

 private:
  static std::uint64_t bit(int field) { return std::uint64_t{1} << field; }

  const char* struct_name_;
  std::uint64_t present_, unreliable_;
  std::uint64_t known_ = 0;
  Room& room_;
  Done answer_ = done();
};

}  // namespace firn::capi
