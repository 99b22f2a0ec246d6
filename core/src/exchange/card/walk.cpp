#include "exchange/card/walk.h"

#include <memory>
#include <utility>

#include "support/place.h"
#include "support/text.h"

namespace firn::exchange::card {
namespace {

using firnbook::Depth;
using form::Kind;

constexpr std::size_t kNoIndex = static_cast<std::size_t>(-1);
constexpr std::uint64_t bit(std::size_t number) {
  return std::uint64_t{1} << number;
}

template <class Struct>
std::unique_ptr<Struct>& struct_in(void* member) {
  return *static_cast<std::unique_ptr<Struct>*>(member);
}

// What is read comes into an empty object; what is written stands there.
template <class Struct, class Code>
void code_struct(Bits& bits, void* member, const Struct& empty, Code&& code) {
  auto& pointer = struct_in<Struct>(member);
  const Struct coded = code(pointer == nullptr ? empty : *pointer);
  if (bits.is_reading() && !bits.failed()) pointer = std::make_unique<Struct>(coded);
}

const Depth* depth_of(const form::Field* field, const void* object) {
  return object == nullptr ? nullptr : form::depth_in(field, object);
}

}  // namespace

// A field of an object, with the element before it in its list (null for none).
struct Walk::At {
  const Code& code;
  const form::Table& table;
  const form::Field& field;
  void* object;
  const void* before;
  void* member() const { return field.in(object); }
};

void Walk::pit() {
  table(kPitLayout, form::table_of<firnbook::PitT>(), &pit_, nullptr);
}

void Walk::table(const Layout& layout, const form::Table& table, void* object, const void* before) {
  std::uint64_t present = 0;
  for (std::size_t i = 0; i < layout.count && !bits_.is_reading(); ++i) {
    if (layout.codes[i].way != Way::none && form::holds(table.first[i], object)) present |= bit(i);
  }
  present = code_shape(layout, present);
  for (std::size_t i = 0; i < layout.count && !bits_.failed(); ++i) {
    if ((present & bit(i)) != 0) field({layout.codes[i], table, table.first[i], object, before});
  }
  if ((present & bit(layout.count)) != 0) skip_late(layout);
}

std::uint64_t Walk::code_shape(const Layout& layout, std::uint64_t present) {
  std::uint64_t rank = 0;
  while (rank < layout.shape_count && layout.shapes[rank] != present) ++rank;
  rank = bits_.golomb(rank, layout.shape_order);
  if (rank < layout.shape_count) return layout.shapes[rank];
  if (rank > layout.shape_count) bits_.fail();
  return code_one_by_one(layout, present);
}

// Bit `count` of the set stands for fields that came after version 1.
std::uint64_t Walk::code_one_by_one(const Layout& layout, std::uint64_t present) {
  std::uint64_t coded = 0;
  const auto code = [&](bool usual) {
    for (std::size_t i = 0; i < layout.count; ++i) {
      if (layout.codes[i].way == Way::none || ((layout.usual & bit(i)) != 0) != usual) continue;
      if (bits_.flag((present & bit(i)) != 0)) coded |= bit(i);
    }
  };
  code(true);
  if (!bits_.flag((present & ~layout.usual) != 0)) return coded;
  code(false);
  if (bits_.flag(false)) coded |= bit(layout.count);
  return coded;
}

void Walk::field(const At& at) {
  void* member = at.member();
  switch (at.code.way) {
    case Way::none:
      return;
    case Way::flag:
    case Way::code:
    case Way::number:
    case Way::change:
      return optional(at);
    case Way::marks: {
      auto& marks = *static_cast<std::uint64_t*>(member);
      marks = code_marks(bits_, marks);
      return;
    }
    case Way::next_top:
    case Way::next_depth:
    case Way::below_top:
    case Way::at_boundary:
      return depth(at);
    case Way::text:
      return texts_.code(bits_, *static_cast<std::string*>(member));
    case Way::moment:
      return code_struct(bits_, member, firnbook::Moment(),
                         [&](const auto& value) { return moments_.code(bits_, value); });
    case Way::time_span:
      return code_struct(bits_, member, firnbook::TimeSpan(),
                         [&](const auto& value) { return moments_.code_span(bits_, value); });
    case Way::place:
      return code_struct(bits_, member, firnbook::Place(),
                         [&](const auto& value) { return code_place(bits_, value); });
    case Way::table: {
      if (bits_.is_reading()) at.field.table->renew(member);
      place_.push_back({at.table.name_of(field_id(at.field.field)), kNoIndex});
      table(*at.code.layout, *at.field.table, at.field.table->get(member), nullptr);
      return place_.pop_back();
    }
    default:
      return list(at);
  }
}

void Walk::optional(const At& at) {
  std::int64_t value = 0;
  std::int64_t before = 0;
  form::get(at.field, at.object, value);
  if (at.code.way == Way::change && at.before != nullptr) form::get(at.field, at.before, before);
  switch (at.code.way) {
    case Way::flag:
      value = bits_.flag(value != 0) ? 1 : 0;
      break;
    case Way::code:
      value = code_rank(bits_, static_cast<std::uint8_t>(value), *at.code.ranks);
      break;
    default: {
      const std::int64_t coded = code_number(bits_, value - before, *at.code.units);
      // Differences are of numbers of 32 bits; anything beyond would be out of range anyway.
      constexpr std::int64_t kFar = std::int64_t{1} << 33;
      if (at.code.way == Way::change && (coded > kFar || coded < -kFar)) bits_.fail();
      value = bits_.failed() ? 0 : coded + before;
      break;
    }
  }
  if (!bits_.is_reading()) return;
  const form::Range range = form::range_of(at.field);
  if (value < range.least || value > range.most) return bits_.fail();
  form::set(at.field, at.object, value);
}

void Walk::depth(const At& at) {
  const Depth* before_end = depth_of(at.table.bottom, at.before);
  const Depth* top = depth_of(at.table.top, at.object);
  code_struct(bits_, at.member(), Depth(), [&](const Depth& value) {
    switch (at.code.way) {
      case Way::next_top:
        return depths_.code_next(bits_, value, before_end, at.code.order);
      case Way::next_depth:
        return depths_.code(bits_, value, depth_of(at.table.depth, at.before), at.code.order);
      case Way::below_top:
        return depths_.code(bits_, value, top != nullptr ? top : before_end, at.code.order);
      default:
        // The bottom of a reading is told from its top.
        return depths_.code_at_boundary(bits_, value, &at.field == at.table.bottom ? top : nullptr,
                                        at.code.order);
    }
  });
}

void Walk::list(const At& at) {
  void* member = at.member();
  switch (at.code.way) {
    case Way::numbers:
      return code_numbers(bits_, *static_cast<std::vector<std::int32_t>*>(member));
    case Way::codes: {
      auto& forms = *static_cast<std::vector<firnbook::GrainForm>*>(member);
      const std::uint64_t last = bits_.golomb(forms.size() - 1, 0);
      for (std::uint64_t i = 0; i <= last && !bits_.failed(); ++i) {
        const auto form = bits_.is_reading() ? firnbook::GrainForm() : forms[i];
        const std::uint8_t coded = code_rank(bits_, static_cast<std::uint8_t>(form), *at.code.ranks);
        if (bits_.is_reading()) forms.push_back(static_cast<firnbook::GrainForm>(coded));
      }
      return;
    }
    case Way::boundaries: {
      auto& depths = *static_cast<std::vector<Depth>*>(member);
      const std::uint64_t last = bits_.golomb(depths.size() - 1, 0);
      for (std::uint64_t i = 0; i <= last && !bits_.failed(); ++i) {
        const Depth depth = bits_.is_reading() ? Depth() : depths[i];
        const Depth coded = depths_.code_at_boundary(bits_, depth, nullptr, at.code.order);
        if (bits_.is_reading()) depths.push_back(coded);
      }
      return;
    }
    default:
      return elements(at);
  }
}

void Walk::elements(const At& at) {
  const form::Table& table = *at.field.table;
  void* list = at.member();
  const std::uint64_t last = bits_.golomb(table.size(list) - 1, at.code.order);
  const void* before = nullptr;
  place_.push_back({at.table.name_of(field_id(at.field.field)), 0});
  for (std::uint64_t i = 0; i <= last && !bits_.failed(); ++i) {
    if (bits_.is_reading()) {
      table.append(list);
      table.renew(table.at(list, i));
    }
    place_.back().index = i;
    void* object = table.object_at(list, i);
    this->table(*at.code.layout, table, object, before);
    before = object;
  }
  place_.pop_back();
  if (at.field.field == firnbook::Pit::VT_LAYERS && at.object == &pit_ && !bits_.failed()) {
    depths_.take_boundaries(pit_.layers);
  }
}

std::string Walk::path() const {
  std::string out;
  for (const Place& place : place_) {
    if (!out.empty()) out += '.';
    out += place.name;
    if (place.index == kNoIndex) continue;
    out += '[';
    append_unsigned(out, place.index);
    out += ']';
  }
  return out.empty() ? "pit" : out;
}

// Fields of a newer version: each says how long it is.
void Walk::skip_late(const Layout& layout) {
  const std::uint64_t last = bits_.golomb(0, 0);
  std::uint64_t id = layout.count;
  for (std::uint64_t i = 0; i <= last && !bits_.failed(); ++i, ++id) {
    id += bits_.golomb(0, 1) & 0xffff;
    bits_.skip(bits_.golomb(0, 6));
    std::string what = "field ";
    append_unsigned(what, id);
    what += " was written by a newer version and is not known here";
    if (!bits_.failed()) notices_.add({NoticeKind::not_understood, 0, 0, path(), what});
  }
}

}  // namespace firn::exchange::card
