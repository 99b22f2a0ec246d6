#include "capi/fields.h"

#include <cstring>
#include <string_view>

#include "support/fixed_text.h"
#include "support/text.h"

namespace firn::capi {

firnbook::Depth depth_of(const firn_depth& depth) {
  return {depth.value_10um, static_cast<firnbook::Datum>(depth.datum),
          static_cast<firnbook::Direction>(depth.direction)};
}

firnbook::Moment moment_of(const firn_moment& moment) {
  return {moment.local_s, moment.offset_min, static_cast<firnbook::TimePrecision>(moment.precision),
          moment.offset_known};
}

void Fields::refuse(firn_status status, std::string_view what, std::string_view remedy) {
  if (failed()) return;
  answer_ = failure_of(status, what, remedy);
}

void Fields::take(Done answer) {
  if (!failed()) answer_ = std::move(answer);
}

void Fields::yes_or_no(int field, std::optional<bool>& slot, std::uint8_t value) {
  if (!has(field)) return;
  if (value > 1) {
    refuse(FIRN_BAD_ARGUMENT, std::string("a yes-or-no field of ") + struct_name_ + " is above 1",
           "give 0 or 1");
    return;
  }
  slot = value == 1;
}

void Fields::depth(int field, std::unique_ptr<firnbook::Depth>& slot, const firn_depth& value) {
  if (has(field)) slot = std::make_unique<firnbook::Depth>(depth_of(value));
}

void Fields::moment(int field, std::unique_ptr<firnbook::Moment>& slot, const firn_moment& value) {
  if (has(field)) slot = std::make_unique<firnbook::Moment>(moment_of(value));
}

void Fields::span(int field, std::unique_ptr<firnbook::TimeSpan>& slot, const firn_time_span& value) {
  if (!has(field)) return;
  slot = std::make_unique<firnbook::TimeSpan>(moment_of(value.begin), moment_of(value.end));
}

void Fields::text(int field, std::string& slot, const char* value) {
  if (has(field) && value == nullptr) {
    refuse(FIRN_BAD_ARGUMENT, std::string("a text of ") + struct_name_ + " is present and NULL",
           "give the text, or leave its bit out");
    return;
  }
  text(slot, value);
}

void Fields::text(std::string& slot, const char* value) {
  if (value == nullptr || failed()) return;
  const std::string_view words(value);
  if (!room_.take(words.size())) {
    refuse(FIRN_TOO_LARGE, "more text than the limit allows for an edit",
           "shorten it, or raise max_edit_bytes in the context's options");
  } else if (!is_utf8(words) || has_control(words)) {
    refuse(FIRN_BAD_UTF8,
           std::string("a text of ") + struct_name_ + " is not UTF-8 or holds control characters",
           "give UTF-8 without control characters other than tab and newline");
  } else if (!words.empty()) {
    slot.assign(words);
    room_.something_was_said();
  }
}

bool Fields::list(int field, const void* elements, std::size_t count, std::size_t least_bytes) {
  const bool wanted = has(field);
  if (count == 0) {
    if (wanted) {
      refuse(FIRN_BAD_ARGUMENT, std::string("a list of ") + struct_name_ + " is present and empty",
             "give its elements, or leave its bit out");
    }
    return false;
  }
  if (elements == nullptr) {
    refuse(FIRN_NULL_ARGUMENT, std::string("a list of ") + struct_name_ + " has a count and is NULL",
           "give a pointer to the elements");
    return false;
  }
  if (!room_.take_elements(count, least_bytes)) {
    refuse(FIRN_TOO_LARGE, "more elements than the limit allows for an edit",
           "record them in several calls, or raise max_edit_bytes in the context's options");
    return false;
  }
  room_.something_was_said();
  return !failed();
}

Done Fields::finish() {
  if (failed()) return std::move(answer_);
  if ((present_ & ~known_) != 0) {
    return failure_of(FIRN_BAD_ARGUMENT,
                      std::string("present of ") + struct_name_ + " names a field it does not hold",
                      "set only bits of the struct's own fields; is the library older than the headers?");
  }
  if ((unreliable_ & ~known_) != 0) {
    return failure_of(FIRN_BAD_ARGUMENT,
                      std::string("unreliable of ") + struct_name_ + " names a field it does not hold",
                      "set only bits of the struct's own fields; is the library older than the headers?");
  }
  return done();
}

}  // namespace firn::capi
