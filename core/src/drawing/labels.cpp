#include "drawing/labels.h"

#include <algorithm>
#include <string_view>
#include <tuple>
#include <vector>

#include "drawing/grain_signs.h"
#include "drawing/layers.h"
#include "drawing/text_fit.h"
#include "drawing/wording.h"
#include "notation/test_line.h"
#include "support/place.h"
#include "support/text.h"

namespace firn::drawing {
namespace {

// Ours: bounds on what one page can carry. What is left out is counted and said.
constexpr std::uint32_t kMostLayers = 60;
constexpr std::uint32_t kMostTestDepths = 40;
constexpr std::uint32_t kMostTestsAtOneDepth = 12;
constexpr std::uint32_t kMostDensities = 30;

// At one depth the concern comes first, then the tests that broke there, then what lies below.
enum Kind : std::uint8_t { kConcern, kTests, kLayer, kDensity, kNote };

// An open quotation mark is enough: the words follow at once and may be clipped.
constexpr std::string_view kOpenQuote = "\xE2\x80\x9C";
constexpr std::string_view kCloseQuote = "\xE2\x80\x9D";

class Maker {
 public:
  Maker(Column& column, const Frame& frame, const pit::View& pit, const ConcernMarks& concerns)
      : column_(column),
        frame_(frame),
        pit_(pit),
        concerns_(concerns),
        tagged_(concerns.marks.size(), false) {
    scratch_.reserve(256);
  }

  LabelsMade make() {
    match_densities();
    make_layers();
    make_tests();
    make_densities();
    make_concerns();
    return made_;
  }

 private:
  void make_layers();
  void make_layer(std::uint32_t position);
  void put_form(const pit::Layer& layer);
  void put_size(const pit::Layer& layer);
  void put_hardness(const pit::Layer& layer);
  void put_wetness(const pit::Layer& layer);
  void put_density(std::uint32_t layer);
  void put_name_and_words(const pit::Layer& layer);
  void make_tests();
  void make_tests_at(const std::vector<std::uint32_t>& order, std::size_t first, std::size_t end);
  void match_densities();
  void make_densities();
  void make_concerns();
  template <class Here>
  bool put_tags(const Here& here);
  template <class Here>
  void put_little(const Here& here);
  bool is_marked(std::uint32_t position) const;
  void put_unreliable(const pit::Layer& layer, int vtable_offset);
  void put(Ink ink) { column_.put(ink, scratch_); }
  std::string& fresh() {
    scratch_.clear();
    return scratch_;
  }

  Column& column_;
  const Frame& frame_;
  const pit::View& pit_;
  const ConcernMarks& concerns_;
  std::vector<bool> tagged_;
  std::vector<std::int32_t> density_of_layer_;  // position in View::densities, -1 for none
  std::vector<std::uint32_t> other_densities_;
  std::string scratch_;
  LabelsMade made_;
};

// Layers that a bound on the number of labels must not push out.
bool Maker::is_marked(std::uint32_t position) const {
  const pit::Layer& layer = pit_.layers()[position];
  if (layer.raw->concern() || layer.raw->name() != nullptr) return true;
  return std::any_of(concerns_.marks.begin(), concerns_.marks.end(), [&](const ConcernMark& mark) {
    return mark.layer == static_cast<std::int32_t>(position);
  });
}

void Maker::make_layers() {
  const auto count = static_cast<std::uint32_t>(pit_.layers().size());
  std::uint32_t marked = 0;
  if (count > kMostLayers) {
    for (std::uint32_t i = 0; i < count && marked < kMostLayers; ++i) marked += is_marked(i) ? 1u : 0u;
  }
  std::uint32_t room_for_marked = marked;
  std::uint32_t room_for_others = count > kMostLayers ? kMostLayers - marked : kMostLayers;
  for (std::uint32_t i = 0; i < count; ++i) {
    if (!drawable(pit_.layers()[i])) continue;
    std::uint32_t& room = count > kMostLayers && is_marked(i) ? room_for_marked : room_for_others;
    if (room == 0) {
      ++made_.layers_left_out;
      continue;
    }
    --room;
    make_layer(i);
  }
  if (made_.layers_left_out == 0) return;
  column_.begin_item(kNote, INT64_MAX, frame_.depth, false);
  fresh() += "\xE2\x80\xA6 ";
  append_integer(scratch_, made_.layers_left_out);
  scratch_ += made_.layers_left_out == 1 ? " more layer" : " more layers";
  column_.piece(Ink::quiet, scratch_);
  column_.end_item();
}

void Maker::put_unreliable(const pit::Layer& layer, int vtable_offset) {
  if (!layer.is_unreliable(field_id(vtable_offset))) return;
  column_.put(Ink::plain, "\xC2\xA0(?)");
  made_.any_unreliable = true;
}

void Maker::put_form(const pit::Layer& layer) {
  column_.open();
  if (layer.form == 0 && layer.form_second == 0) {
    column_.put(Ink::quiet, "form ?");
  } else {
    column_.put_sign(layer.form);
    if (layer.form == 0) column_.put(Ink::quiet, "?");
  }
  if (layer.form != 0) {
    append_code<firnbook::GrainForm>(fresh(), layer.form);
    put(Ink::strong);
    put_unreliable(layer, firnbook::Layer::VT_GRAIN_FORM);
  }
  column_.close();
  if (layer.form_second == 0) return;
  column_.open();
  column_.put(Ink::plain, "(");
  column_.put_sign(layer.form_second);
  append_code<firnbook::GrainForm>(fresh(), layer.form_second);
  scratch_ += ')';
  put(Ink::plain);
  put_unreliable(layer, firnbook::Layer::VT_GRAIN_FORM_SECOND);
  column_.close();
}

void Maker::put_size(const pit::Layer& layer) {
  fresh();
  if (layer.size != pit::kUnknown) append_mm(scratch_, layer.size);
  if (layer.size_max != pit::kUnknown && layer.size_max != layer.size) {
    scratch_ += layer.size == pit::kUnknown ? "max " : "\xE2\x80\x93";
    append_mm(scratch_, layer.size_max);
  }
  if (!scratch_.empty()) {
    scratch_ += " mm";
  } else if (const std::uint8_t size_class = pit::number(layer.raw->grain_size_class()); size_class != 0) {
    append_code<firnbook::GrainSizeClass>(scratch_, size_class);
  } else {
    return;
  }
  column_.open();
  put(Ink::plain);
  put_unreliable(layer, firnbook::Layer::VT_GRAIN_SIZE_10UM);
  column_.close();
}

void Maker::put_hardness(const pit::Layer& layer) {
  fresh();
  const auto end = [&](std::uint8_t sixths) {
    if (sixths == 0) {
      scratch_ += '?';
    } else {
      append_code<firnbook::HandHardness>(scratch_, sixths);
    }
  };
  if (layer.hardness_top == 0 && layer.hardness_bottom == 0) {
    column_.piece(Ink::quiet, "hardness ?");
    return;
  }
  end(layer.hardness_top);
  if (layer.hardness_bottom != layer.hardness_top) {
    scratch_ += " to ";
    end(layer.hardness_bottom);
  }
  column_.open();
  put(Ink::plain);
  put_unreliable(layer, firnbook::Layer::VT_HARDNESS);
  column_.close();
}

// From moist up. Dry is left blank, which the legend says.
void Maker::put_wetness(const pit::Layer& layer) {
  if (layer.wetness <= static_cast<std::uint8_t>(firnbook::Wetness::D)) return;
  column_.open();
  fresh() += "wetness ";
  append_code<firnbook::Wetness>(scratch_, layer.wetness);
  put(Ink::plain);
  put_unreliable(layer, firnbook::Layer::VT_WETNESS);
  column_.close();
}

void Maker::put_density(std::uint32_t layer) {
  if (density_of_layer_.empty() || density_of_layer_[layer] < 0) return;
  const pit::Density& density = pit_.densities()[static_cast<std::size_t>(density_of_layer_[layer])];
  append_fixed(fresh(), density.dkgm3, 1);
  scratch_ += " kg/m\xC2\xB3";
  if (density.unreliable) {
    scratch_ += " (?)";
    made_.any_unreliable = true;
  }
  column_.piece(Ink::plain, scratch_);
}

void Maker::put_name_and_words(const pit::Layer& layer) {
  const std::string_view words = pit::text(layer.raw->words());
  const firnbook::LayerName* name = layer.raw->name();
  const bool marked = layer.raw->concern().has_value();
  if (words.empty() && name == nullptr && !marked) return;
  column_.new_line();
  if (name != nullptr) {
    fresh();
    append_layer_name(scratch_, *name);
    column_.piece(Ink::strong, scratch_);
    const std::string_view name_words = pit::text(name->words());
    if (!name_words.empty()) column_.prose(Ink::strong, name_words, 1);
  }
  if (marked) column_.piece(Ink::strong, "\xE2\x98\x85 marked by the observer");
  if (words.empty()) return;
  column_.new_line();
  fresh() += kOpenQuote;
  append_clipped(scratch_, words, frame_.page.font, false, frame_.label_width() * 7 / 4);
  scratch_ += kCloseQuote;
  column_.prose(Ink::plain, scratch_, 3);
}

// The numbered concerns that `here` picks. True when there is one.
template <class Here>
bool Maker::put_tags(const Here& here) {
  bool any = false;
  for (std::size_t i = 0; i < concerns_.marks.size(); ++i) {
    const ConcernMark& mark = concerns_.marks[i];
    if (tagged_[i] || mark.number == 0 || !here(mark)) continue;
    append_concern_tag(fresh(), mark);
    column_.piece(Ink::tag, scratch_);
    if (mark.by_structure) column_.piece(Ink::quiet, "by its structure");
    tagged_[i] = any = true;
  }
  return any;
}

// That a break says little stands after it.
template <class Here>
void Maker::put_little(const Here& here) {
  for (std::size_t i = 0; i < concerns_.marks.size(); ++i) {
    const ConcernMark& mark = concerns_.marks[i];
    if (tagged_[i] || mark.number != 0 || !here(mark)) continue;
    append_concern_tag(fresh(), mark);
    column_.piece(Ink::quiet, scratch_);
    tagged_[i] = true;
  }
}

void Maker::make_layer(std::uint32_t position) {
  const pit::Layer& layer = pit_.layers()[position];
  const std::int64_t sum = std::int64_t{layer.top} + layer.bottom;
  column_.begin_item(kLayer, sum, static_cast<Tenths>(sum / 2), false);
  const auto here = [position](const ConcernMark& mark) {
    return mark.layer == static_cast<std::int32_t>(position);
  };
  column_.items().back().marked = put_tags(here);
  put_form(layer);
  put_size(layer);
  put_hardness(layer);
  put_wetness(layer);
  append_span(fresh(), layer.top, layer.bottom);
  column_.open();
  put(Ink::quiet);
  const bool top = layer.is_unreliable(field_id(firnbook::Layer::VT_TOP));
  put_unreliable(layer, top ? firnbook::Layer::VT_TOP : firnbook::Layer::VT_BOTTOM);
  column_.close();
  put_density(position);
  put_little(here);
  put_name_and_words(layer);
  column_.end_item();
}

void Maker::make_tests() {
  const std::vector<pit::Fracture>& fractures = pit_.fractures();
  std::vector<std::uint32_t> order;
  order.reserve(fractures.size());
  for (std::uint32_t i = 0; i < fractures.size(); ++i) {
    if (drawable(fractures[i].depth)) order.push_back(i);
  }
  std::sort(order.begin(), order.end(), [&](std::uint32_t a, std::uint32_t b) {
    return std::make_tuple(fractures[a].depth, a) < std::make_tuple(fractures[b].depth, b);
  });
  std::uint32_t depths = 0;
  for (std::size_t first = 0; first < order.size();) {
    std::size_t end = first + 1;
    while (end < order.size() && fractures[order[end]].depth == fractures[order[first]].depth) ++end;
    if (depths < kMostTestDepths) {
      make_tests_at(order, first, end);
      ++depths;
    } else {
      made_.tests_left_out += static_cast<std::uint32_t>(end - first);
    }
    first = end;
  }
}

void Maker::make_tests_at(const std::vector<std::uint32_t>& order, std::size_t first, std::size_t end) {
  const std::int32_t depth = pit_.fractures()[order[first]].depth;
  column_.begin_item(kTests, std::int64_t{depth} * 2, depth, false);
  const auto here = [depth](const ConcernMark& mark) {
    return mark.layer < 0 && mark.top == depth && mark.bottom == depth;
  };
  column_.items().back().marked = put_tags(here);
  fresh() += "down ";
  append_cm(scratch_, depth);
  column_.piece(Ink::quiet, scratch_);
  const std::size_t shown = std::min<std::size_t>(end - first, kMostTestsAtOneDepth);
  for (std::size_t i = first; i < first + shown; ++i) {
    const pit::Fracture& fracture = pit_.fractures()[order[i]];
    const pit::Test& test = pit_.tests()[fracture.test];
    notation::append_score(fresh(), *test.raw, fracture.raw);
    if (test.outcome == static_cast<std::uint8_t>(firnbook::TestOutcome::not_valid)) scratch_ += " not valid";
    if (fracture.unreliable != 0 || test.raw->unreliable() != 0) {
      scratch_ += " (?)";
      made_.any_unreliable = true;
    }
    if (i + 1 < end) scratch_ += ',';
    column_.piece(Ink::strong, scratch_);
  }
  if (shown < end - first) {
    fresh() += "\xE2\x80\xA6 ";
    append_integer(scratch_, static_cast<std::int64_t>(end - first - shown));
    scratch_ += " more";
    column_.piece(Ink::quiet, scratch_);
  }
  put_little(here);
  column_.end_item();
}

// A density that was taken over just one layer stands in that layer's label, others get their own.
void Maker::match_densities() {
  const std::vector<pit::Density>& densities = pit_.densities();
  if (densities.empty()) return;
  density_of_layer_.assign(pit_.layers().size(), -1);
  for (std::uint32_t i = 0; i < densities.size(); ++i) {
    const pit::Density& density = densities[i];
    if (density.dkgm3 == pit::kUnknown || !drawable(density.top)) {
      ++made_.densities_left_out;
      continue;
    }
    const std::int32_t at = pit_.layer_at(density.top);
    const auto position = static_cast<std::size_t>(at);
    if (at >= 0 && pit_.layers()[position].top == density.top &&
        pit_.layers()[position].bottom == density.bottom && density_of_layer_[position] < 0) {
      density_of_layer_[position] = static_cast<std::int32_t>(i);
    } else if (other_densities_.size() < kMostDensities) {
      other_densities_.push_back(i);
    } else {
      ++made_.densities_left_out;
    }
  }
}

void Maker::make_densities() {
  for (const std::uint32_t i : other_densities_) {
    const pit::Density& density = pit_.densities()[i];
    const std::int32_t bottom = drawable(density.bottom) ? density.bottom : density.top;
    const std::int64_t sum = std::int64_t{density.top} + bottom;
    column_.begin_item(kDensity, sum, static_cast<Tenths>(sum / 2), false);
    append_fixed(fresh(), density.dkgm3, 1);
    scratch_ += " kg/m\xC2\xB3";
    if (density.unreliable) {
      scratch_ += " (?)";
      made_.any_unreliable = true;
    }
    column_.piece(Ink::plain, scratch_);
    fresh();
    if (bottom == density.top) {
      scratch_ += "down ";
      append_cm(scratch_, density.top);
    } else {
      append_span(scratch_, density.top, bottom);
    }
    column_.piece(Ink::quiet, scratch_);
    column_.end_item();
  }
}

// Concerns that found neither a layer's nor a test's label to stand in.
void Maker::make_concerns() {
  for (std::size_t i = 0; i < concerns_.marks.size(); ++i) {
    const ConcernMark& mark = concerns_.marks[i];
    if (tagged_[i] || mark.top == pit::kUnknown) continue;
    const std::int64_t sum = std::int64_t{mark.top} + mark.bottom;
    column_.begin_item(kConcern, sum, static_cast<Tenths>(sum / 2), mark.number != 0);
    const auto here = [&mark](const ConcernMark& other) { return &other == &mark; };
    put_tags(here);
    fresh();
    if (mark.top == mark.bottom) {
      scratch_ += "down ";
      append_cm(scratch_, mark.top);
    } else {
      append_span(scratch_, mark.top, mark.bottom);
    }
    column_.piece(Ink::quiet, scratch_);
    put_little(here);
    column_.end_item();
  }
}

// Where a test broke: a small arrow head at the panel's edge.
void append_test_mark(std::string& out, const Frame& frame, Tenths y) {
  const Tenths size = frame.page.font / 2;
  Path arrow(out);
  arrow.move(frame.right - size / 2, y);
  arrow.line(frame.right + size * 3 / 4, y - size * 2 / 3);
  arrow.line(frame.right + size * 3 / 4, y + size * 2 / 3);
  arrow.close();
  arrow.end(" fill=\"#1a1a1a\" stroke=\"#fff\" stroke-width=\"1\"");
}

std::string_view leader_style(const Column::Item& item) {
  if (item.marked) return " fill=\"none\" stroke=\"#9c3d10\" stroke-width=\"1.8\"";
  if (item.kind == kTests) return " fill=\"none\" stroke=\"#1a1a1a\" stroke-width=\"1.2\"";
  return " fill=\"none\" stroke=\"#999\" stroke-width=\"1\"";
}

}  // namespace

LabelsMade make_labels(Column& column, const Frame& frame, const pit::View& pit,
                       const ConcernMarks& concerns) {
  return Maker(column, frame, pit, concerns).make();
}

void place_labels(Column& column, const Frame& frame) {
  for (Column::Item& item : column.items()) {
    item.anchor = frame.y(static_cast<std::int32_t>(item.anchor));
  }
  const Tenths row = frame.page.row;
  column.spread(frame.top - row / 2, frame.bottom + row / 2, label_gap(frame.page));
}

void append_labels(std::string& out, const Column& column, const Frame& frame) {
  const Tenths lead = frame.page.gutter / 4;
  for (const Column::Item& item : column.items()) {
    const Tenths y = column.leader_y(item);
    if (item.kind != kNote) {
      Path leader(out);
      leader.move(frame.right, item.anchor);
      leader.line(frame.right + lead, item.anchor);
      leader.line(frame.label_left - lead, y);
      leader.line(frame.label_left - 40, y);
      leader.end(leader_style(item));
    }
  }
  for (const Column::Item& item : column.items()) {
    if (item.kind == kTests) append_test_mark(out, frame, item.anchor);
    column.append(out, item, frame.label_left);
  }
}

}  // namespace firn::drawing
