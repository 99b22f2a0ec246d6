#include "bulletin/bulletin.h"

#include "support/text.h"

namespace firn::bulletin {
namespace {

// Digits of a time, read from the left.
class Digits {
 public:
  explicit Digits(std::string_view text) : rest_(text) {}

  bool number(std::size_t digits, int least, int most, int& out) {
    if (rest_.size() < digits) return false;
    out = 0;
    for (std::size_t i = 0; i < digits; ++i) {
      if (rest_[i] < '0' || rest_[i] > '9') return false;
      out = out * 10 + (rest_[i] - '0');
    }
    rest_.remove_prefix(digits);
    return out >= least && out <= most;
  }
  bool take(char wanted) {
    if (rest_.empty() || rest_.front() != wanted) return false;
    rest_.remove_prefix(1);
    return true;
  }
  void skip_digits() {
    while (!rest_.empty() && rest_.front() >= '0' && rest_.front() <= '9') rest_.remove_prefix(1);
  }
  bool empty() const { return rest_.empty(); }

 private:
  std::string_view rest_;
};

// "Z", "+01:00", "+0100", "+01" or nothing.
bool read_offset(Digits& digits, int& offset_min, bool& known) {
  known = true;
  offset_min = 0;
  if (digits.take('Z') || digits.take('z')) return digits.empty();
  const bool ahead = digits.take('+');
  if (!ahead && !digits.take('-')) {
    known = false;
    return digits.empty();
  }
  int hours = 0, minutes = 0;
  if (!digits.number(2, 0, 23, hours)) return false;
  if (!digits.empty()) {
    digits.take(':');
    if (!digits.number(2, 0, 59, minutes)) return false;
  }
  offset_min = (ahead ? 1 : -1) * (hours * 60 + minutes);
  return digits.empty();
}

}  // namespace

bool read_time(std::string_view text, firnbook::Moment& out) {
  Digits digits(text);
  int year = 0, month = 0, day = 0, hour = 0, minute = 0, second = 0, offset_min = 0;
  bool offset_known = false, has_seconds = false;
  if (!digits.number(4, 1, 9999, year) || !digits.take('-') || !digits.number(2, 1, 12, month) ||
      !digits.take('-') || !digits.number(2, 1, days_in_month(year, month), day)) {
    return false;
  }
  if (digits.empty()) {
    out = {seconds_of({year, month, day, 0, 0, 0}), 0, firnbook::TimePrecision::day, 0};
    return true;
  }
  if (!digits.take('T') && !digits.take('t') && !digits.take(' ')) return false;
  if (!digits.number(2, 0, 24, hour) || !digits.take(':') || !digits.number(2, 0, 59, minute)) return false;
  if (digits.take(':')) {
    has_seconds = true;
    // 60 is a leap second.
    if (!digits.number(2, 0, 60, second)) return false;
    if (digits.take('.') || digits.take(',')) digits.skip_digits();
  }
  if (!read_offset(digits, offset_min, offset_known)) return false;
  if (hour == 24 && (minute != 0 || second != 0)) return false;
  // 24:00 is the end of the day.
  const std::int64_t midnight = seconds_of({year, month, day, 0, 0, 0});
  const std::int64_t local_s = midnight + std::int64_t{hour} * 3600 + minute * 60 + second;
  out = {local_s, static_cast<std::int16_t>(offset_min),
         has_seconds ? firnbook::TimePrecision::second : firnbook::TimePrecision::minute,
         static_cast<std::uint8_t>(offset_known ? 1 : 0)};
  return true;
}

Result<const firnbook::Bulletins*> verify(const std::uint8_t* bytes, std::size_t size,
                                          const pit::Limits& limits, pit::AlignedBytes& aligned) {
  static constexpr pit::Schema kBulletin = {
      "FIRB", "bulletin", [](flatbuffers::Verifier& v) { return firnbook::VerifyBulletinsBuffer(v); }};
  Result<const std::uint8_t*> data = pit::verify_bytes(bytes, size, limits, kBulletin, aligned);
  if (!data) return data.failure();
  return firnbook::GetBulletins(*data);
}

flatbuffers::Offset<flatbuffers::String> write_text(std::string_view text,
                                                    flatbuffers::FlatBufferBuilder& builder) {
  return text.empty() ? flatbuffers::Offset<flatbuffers::String>()
                      : builder.CreateString(text.data(), text.size());
}

flatbuffers::Offset<firnbook::Scope> write_scope(const ScopeParts& parts,
                                                 flatbuffers::FlatBufferBuilder& builder) {
  if (!parts.has_lower && !parts.has_upper && parts.aspects.empty() && parts.period == 0 &&
      parts.unclear == 0 && parts.not_understood.empty()) {
    return {};
  }
  flatbuffers::Offset<flatbuffers::Vector<std::uint8_t>> aspects;
  if (!parts.aspects.empty()) aspects = builder.CreateVector(parts.aspects.data(), parts.aspects.size());
  const auto not_understood = write_list(parts.not_understood, builder);
  firnbook::ScopeBuilder table(builder);
  if (parts.has_lower) table.add_lower(&parts.lower);
  if (parts.has_upper) table.add_upper(&parts.upper);
  if (!aspects.IsNull()) {
    table.add_aspects(flatbuffers::Offset<flatbuffers::Vector<firnbook::CompassPoint>>(aspects.o));
  }
  if (parts.period != 0) table.add_period(static_cast<firnbook::DayPeriod>(parts.period));
  if (!not_understood.IsNull()) table.add_not_understood(not_understood);
  if (parts.unclear != 0) table.add_unclear(parts.unclear);
  return table.Finish();
}

}  // namespace firn::bulletin
