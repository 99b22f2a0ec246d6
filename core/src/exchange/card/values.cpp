#include "exchange/card/values.h"

#include <algorithm>
#include <limits>
#include <memory>

#include "exchange/card/letters.h"

namespace firn::exchange::card {
namespace {

using firnbook::Datum;
using firnbook::Depth;
using firnbook::Direction;
using firnbook::Moment;
using firnbook::Place;
using firnbook::TimePrecision;
using firnbook::TimeSpan;

// What no step fits, exactly as it is.
constexpr unsigned kExactOrder = 14;

// Beyond what differences of numbers of 32 bits can be: adding to it could overflow.
bool is_far(std::int64_t difference) {
  constexpr std::int64_t kFar = std::int64_t{1} << 33;
  return difference > kFar || difference < -kFar;
}

// A number that must fit its type; what a hostile card says beyond it is a failure.
template <class T>
T narrow(Bits& bits, std::int64_t value) {
  if (value < std::numeric_limits<T>::min() || value > std::numeric_limits<T>::max()) {
    bits.fail();
    return 0;
  }
  return static_cast<T>(value);
}

// Which of `count` comes first: as many ones, and a zero where more could come.
unsigned code_choice(Bits& bits, unsigned chosen, unsigned last) {
  unsigned choice = 0;
  while (choice < last && bits.flag(choice < chosen)) ++choice;
  return choice;
}

bool fits(std::int64_t value, const Unit& unit, bool is_signed) {
  return value % unit.size == 0 && (is_signed || value >= 0);
}

// quotient * unit, where that is within 64 bits.
std::int64_t multiply(Bits& bits, std::int64_t quotient, std::int64_t unit) {
  const std::int64_t most = std::numeric_limits<std::int64_t>::max() / unit;
  if (quotient > most || quotient < -most) {
    bits.fail();
    return 0;
  }
  return quotient * unit;
}

std::int64_t as_signed(Bits& bits, std::uint64_t value) {
  if (value > static_cast<std::uint64_t>(std::numeric_limits<std::int64_t>::max())) bits.fail();
  return bits.failed() ? 0 : static_cast<std::int64_t>(value);
}

// A whole multiple of `unit` that is not below 0.
std::int64_t code_steps(Bits& bits, std::int64_t value, std::int64_t unit, unsigned order) {
  const std::uint64_t quotient = bits.golomb(static_cast<std::uint64_t>(value / unit), order);
  return multiply(bits, as_signed(bits, quotient), unit);
}

}  // namespace

std::int64_t code_number(Bits& bits, std::int64_t value, const Units& units) {
  unsigned chosen = 0;
  while (chosen < units.count && !fits(value, units.units[chosen], units.is_signed)) ++chosen;
  chosen = code_choice(bits, chosen, units.count);
  if (chosen == units.count) return bits.signed_golomb(value, kExactOrder);
  const Unit& unit = units.units[chosen];
  if (!units.is_signed) return code_steps(bits, value, unit.size, unit.order);
  return multiply(bits, bits.signed_golomb(value / unit.size, unit.order), unit.size);
}

std::uint8_t code_rank(Bits& bits, std::uint8_t value, const Ranks& ranks) {
  const std::uint8_t* end = ranks.values + ranks.count;
  const auto known = static_cast<std::size_t>(std::find(ranks.values, end, value) - ranks.values);
  // Values that this table does not know come behind it by their own number.
  const std::uint64_t rank = known < ranks.count ? known : std::uint64_t{ranks.count} + value;
  const std::uint64_t coded = bits.golomb(rank, ranks.order);
  if (coded < ranks.count) return ranks.values[coded];
  return narrow<std::uint8_t>(bits, as_signed(bits, coded) - ranks.count);
}

std::uint64_t code_marks(Bits& bits, std::uint64_t marks) {
  constexpr unsigned kMost = 64;
  unsigned count = 0;
  for (std::uint64_t left = marks; left != 0; left &= left - 1) ++count;
  const std::uint64_t more = bits.golomb(count - 1u, 0);
  std::uint64_t coded = 0;
  unsigned at = 0;  // the first number that the next one can be
  for (std::uint64_t i = 0; i <= more && !bits.failed(); ++i) {
    unsigned next = at;
    while (next + 1 < kMost && (marks >> next & 1) == 0) ++next;
    const std::uint64_t gap = bits.golomb(next - at, i == 0 ? 3 : 1);
    if (gap >= kMost - at) {
      bits.fail();
      break;
    }
    at += static_cast<unsigned>(gap);
    coded |= std::uint64_t{1} << at;
    ++at;
  }
  return coded;
}

namespace {

// -1, for things that are not listed, is the most usual.
std::int32_t code_position(Bits& bits, std::int32_t position, unsigned order) {
  const std::int64_t coded = bits.signed_golomb(std::int64_t{position} + 1, order);
  if (is_far(coded)) bits.fail();
  return narrow<std::int32_t>(bits, bits.failed() ? 0 : coded - 1);
}

}  // namespace

Place code_place(Bits& bits, const Place& place) {
  constexpr std::uint16_t kWhole = 65535;
  constexpr std::uint64_t kMostThing = 255;
  const std::uint64_t thing = bits.golomb(static_cast<std::uint8_t>(place.thing()), 4);
  const std::int32_t index = code_position(bits, place.index(), 2);
  const std::int32_t sub = code_position(bits, place.sub(), 1);
  const std::uint64_t field = bits.golomb(place.field() == kWhole ? 0 : place.field() + 1u, 0);
  if (field > kWhole || thing > kMostThing) bits.fail();
  const auto field_id = static_cast<std::uint16_t>(field == 0 ? kWhole : field - 1);
  return {index, sub, field_id, static_cast<firnbook::Thing>(thing & kMostThing)};
}

void code_numbers(Bits& bits, std::vector<std::int32_t>& numbers) {
  static constexpr Units kFirst = {3, false, {{1000, 6}, {100, 9}, {1, 16}}};
  static constexpr Units kOthers = {3, true, {{1000, 3}, {100, 6}, {1, 12}}};
  const std::uint64_t last = bits.golomb(numbers.size() - 1, 2);
  std::int64_t before = 0;
  for (std::uint64_t i = 0; i <= last && !bits.failed(); ++i) {
    const std::int64_t value = bits.is_reading() ? 0 : numbers[i];
    const std::int64_t change = code_number(bits, value - before, i == 0 ? kFirst : kOthers);
    if (!bits.is_reading()) {
      before = value;
      continue;
    }
    if (is_far(change)) bits.fail();
    before = narrow<std::int32_t>(bits, bits.failed() ? 0 : before + change);
    numbers.push_back(static_cast<std::int32_t>(before));
  }
}

// --- depths ----------------------------------------------------------------------------------------------

namespace {

bool same(const Depth& a, const Depth& b) {
  return a.value_10um() == b.value_10um() && a.datum() == b.datum() && a.direction() == b.direction();
}

constexpr std::int64_t kDepthSteps[] = {1000, 500, 100};
constexpr unsigned kExact = 3;       // any number of 10 um
constexpr unsigned kOtherFrame = 4;  // measured otherwise than the one before
// A finer step of the same depth is a larger number.
constexpr unsigned kFinerOrder[] = {0, 1, 3};
constexpr std::size_t kMostBoundaries = 255;

}  // namespace

// Where depths are counted from, and which way is down.
Depths::Origin Depths::origin(const Depth* base) const {
  if (base == nullptr || base->datum() != datum_ || base->direction() != direction_) return {};
  return {base->value_10um(), datum_ == Datum::ground ? -1 : 1};
}

unsigned Depths::step_for(const Depth& depth, const Origin& origin) {
  const std::int64_t down = origin.down * (depth.value_10um() - origin.from);
  unsigned chosen = 0;
  while (chosen < kExact && (down < 0 || down % kDepthSteps[chosen] != 0)) ++chosen;
  return chosen;
}

void Depths::code_frame(Bits& bits, const Depth& depth) {
  const std::uint64_t datum = bits.golomb(static_cast<std::uint8_t>(depth.datum()), 1);
  const std::uint64_t direction = bits.golomb(static_cast<std::uint8_t>(depth.direction()), 1);
  if (datum > 255 || direction > 255) bits.fail();
  datum_ = static_cast<Datum>(datum & 255);
  direction_ = static_cast<Direction>(direction & 255);
}

Depth Depths::code(Bits& bits, const Depth& depth, const Depth* base, unsigned order) {
  const bool is_other = depth.datum() != datum_ || depth.direction() != direction_;
  unsigned step = code_choice(bits, is_other ? kOtherFrame : step_for(depth, origin(base)), kOtherFrame);
  if (step == kOtherFrame) {
    code_frame(bits, depth);
    step = code_choice(bits, step_for(depth, origin(base)), kExact);
  }
  const Origin start = origin(base);
  const std::int64_t down = start.down * (depth.value_10um() - start.from);
  const std::int64_t coded = step == kExact
                                 ? bits.signed_golomb(down, kExactOrder)
                                 : code_steps(bits, down, kDepthSteps[step], order + kFinerOrder[step]);
  if (is_far(coded)) bits.fail();
  const std::int64_t value = bits.failed() ? 0 : start.from + start.down * coded;
  return {narrow<std::int32_t>(bits, value), datum_, direction_};
}

Depth Depths::code_next(Bits& bits, const Depth& depth, const Depth* base, unsigned order) {
  const Depth expected = base != nullptr ? *base : Depth(0, datum_, direction_);
  return bits.flag(same(depth, expected)) ? expected : code(bits, depth, base, order);
}

std::size_t Depths::boundary_of(const Depth& depth) const {
  std::size_t i = 0;
  while (i < boundaries_.size() && !same(boundaries_[i], depth)) ++i;
  return i;
}

Depth Depths::code_at_boundary(Bits& bits, const Depth& depth, const Depth* base, unsigned order) {
  const std::size_t count = boundaries_.size();
  const std::size_t at = boundary_of(depth);
  if (count == 0 || !bits.flag(at < count)) return code(bits, depth, base, order);
  unsigned width = 0;
  while (std::size_t{1} << width < count) ++width;
  const std::uint64_t coded = bits.fixed(at, width);
  if (coded >= count) bits.fail();
  return bits.failed() ? depth : boundaries_[coded];
}

void Depths::take_boundaries(const std::vector<std::unique_ptr<firnbook::LayerT>>& layers) {
  for (const auto& layer : layers) {
    if (boundaries_.size() == kMostBoundaries) return;
    if (layer->top != nullptr) boundaries_.push_back(*layer->top);
  }
  if (boundaries_.size() == kMostBoundaries || layers.empty()) return;
  if (layers.back()->bottom != nullptr) boundaries_.push_back(*layers.back()->bottom);
}

// --- moments ---------------------------------------------------------------------------------------------

namespace {

constexpr std::uint8_t kPrecisionValues[] = {4, 3, 5, 1, 2, 0};  // minute, day, second, year, month, none
constexpr Ranks kPrecisions = {kPrecisionValues, 6, 1};
constexpr std::int64_t kDayS = 86400;

bool is_clock(TimePrecision precision) {
  return precision == TimePrecision::minute || precision == TimePrecision::second;
}

std::int64_t unit_of(TimePrecision precision) {
  if (precision == TimePrecision::second) return 1;
  return precision == TimePrecision::minute ? 60 : kDayS;
}

// Hours of four years, or days of one month, more or less: what most moments are within.
unsigned order_of(TimePrecision precision, bool is_first) {
  if (precision == TimePrecision::second) return is_first ? 27 : 14;
  if (precision == TimePrecision::minute) return is_first ? 21 : 8;
  return is_first ? 10 : 5;
}

std::int64_t floor_of(std::int64_t value, std::int64_t unit) {
  return value / unit - (value % unit < 0 ? 1 : 0);
}

bool is_empty(const Moment& moment) {
  return moment.local_s() == 0 && moment.offset_min() == 0 && moment.precision() == TimePrecision::none &&
         moment.offset_known() == 0;
}

}  // namespace

std::int64_t Moments::code_local_s(Bits& bits, std::int64_t local_s, TimePrecision precision) {
  constexpr unsigned kExactTimeOrder = 32;
  // The years that a calendar has, and as many again: beyond them differences could overflow.
  constexpr std::int64_t kFarS = std::int64_t{1} << 40;
  const std::int64_t unit = unit_of(precision);
  const bool is_beyond = local_s > kFarS || local_s < -kFarS;
  std::int64_t coded = 0;
  if (bits.flag(is_beyond || local_s % unit != 0)) {
    coded = bits.signed_golomb(local_s, kExactTimeOrder);
  } else {
    const std::int64_t from = floor_of(last_s_, unit);
    const std::int64_t units = bits.signed_golomb(local_s / unit - from, order_of(precision, is_first_));
    if (units > 2 * kFarS || units < -2 * kFarS) bits.fail();
    coded = bits.failed() ? 0 : (from + units) * unit;
  }
  if (coded <= kFarS && coded >= -kFarS) last_s_ = coded;
  is_first_ = false;
  return coded;
}

void Moments::code_offset(Bits& bits, std::int16_t& offset_min, std::uint8_t& known, bool on_clock) {
  constexpr std::int16_t kQuarterHour = 15;
  Offset& last = on_clock ? clock_ : calendar_;
  if (bits.flag(offset_min == last.minutes && known == last.known)) {
    offset_min = last.minutes;
    known = last.known;
    return;
  }
  const std::uint64_t coded_known = bits.golomb(known == 1 ? 0 : known == 0 ? 1 : known, 0);
  if (coded_known > 255) bits.fail();
  const bool in_quarters = bits.flag(offset_min % kQuarterHour == 0);
  const std::int64_t unit = in_quarters ? kQuarterHour : 1;
  const std::int64_t coded =
      multiply(bits, bits.signed_golomb(offset_min / unit, in_quarters ? 5 : 10), unit);
  offset_min = narrow<std::int16_t>(bits, coded);
  known = static_cast<std::uint8_t>(coded_known == 0 ? 1 : coded_known == 1 ? 0 : coded_known & 255);
  last = {offset_min, known};
}

Moment Moments::code(Bits& bits, const Moment& moment) {
  const auto precision =
      static_cast<TimePrecision>(code_rank(bits, static_cast<std::uint8_t>(moment.precision()), kPrecisions));
  std::int16_t offset_min = moment.offset_min();
  std::uint8_t known = moment.offset_known();
  code_offset(bits, offset_min, known, is_clock(precision));
  const std::int64_t local_s = code_local_s(bits, moment.local_s(), precision);
  return {local_s, offset_min, precision, known};
}

TimeSpan Moments::code_span(Bits& bits, const TimeSpan& span) {
  const Moment begin = code(bits, span.begin());
  const bool has_end = bits.flag(!is_empty(span.end()));
  return {begin, has_end ? code(bits, span.end()) : Moment(0, 0, TimePrecision::none, 0)};
}

// --- texts -----------------------------------------------------------------------------------------------

// Bounds: so many texts are looked through, and a card of few bytes cannot ask for many times a long text.
constexpr std::size_t kMostBefore = 64;
constexpr std::size_t kLongestRemembered = 100;

void Texts::remember(const std::string& text) {
  if (text.size() > kLongestRemembered) return;
  if (before_.size() == kMostBefore) before_.erase(before_.begin());
  before_.push_back(text);
}

void Texts::code(Bits& bits, std::string& text) {
  const auto found = std::find(before_.rbegin(), before_.rend(), text);
  // Before the first text there is nothing to ask.
  if (before_.empty() || !bits.flag(found != before_.rend())) {
    code_letters(bits, text);
    if (!bits.failed()) remember(text);
    return;
  }
  const std::uint64_t ago = bits.golomb(static_cast<std::uint64_t>(found - before_.rbegin()), 2);
  if (ago >= before_.size()) return bits.fail();
  text = before_[before_.size() - 1 - ago];
}

}  // namespace firn::exchange::card
