#include "drawing/columns.h"

#include <algorithm>
#include <tuple>

#include "drawing/grain_signs.h"
#include "drawing/text_fit.h"
#include "support/text.h"

namespace firn::drawing {
namespace {

std::string_view attributes_of(Ink ink) {
  if (ink == Ink::strong) return " font-weight=\"bold\"";
  if (ink == Ink::quiet) return " fill=\"#555\"";
  return {};
}

// A run of neighbours that stand shoulder to shoulder, with the sum of where they would like to be.
struct Block {
  std::int64_t wished_sum;
  std::int64_t count;
  std::int64_t place() const { return wished_sum / count; }
};

}  // namespace

void Column::begin_item(std::uint8_t kind, std::int64_t order, Tenths anchor, bool marked) {
  Item item;
  item.kind = kind;
  item.order = order;
  item.anchor = anchor;
  item.marked = marked;
  item.index = static_cast<std::uint32_t>(items_.size());
  item.first_line = static_cast<std::uint32_t>(lines_.size());
  items_.push_back(item);
  line_first_ = static_cast<std::uint32_t>(runs_.size());
  cursor_ = 0;
}

void Column::end_item() {
  new_line();
  Item& item = items_.back();
  item.line_count = static_cast<std::uint32_t>(lines_.size()) - item.first_line;
}

void Column::new_line() {
  const auto end = static_cast<std::uint32_t>(runs_.size());
  if (end > line_first_) lines_.push_back({line_first_, end - line_first_});
  line_first_ = end;
  cursor_ = 0;
}

void Column::open() {
  group_first_ = static_cast<std::uint32_t>(runs_.size());
  group_width_ = 0;
}

void Column::start_run(Ink ink) {
  const bool glued = runs_.size() > group_first_;
  runs_.push_back({ink, 0, glued, static_cast<std::uint32_t>(text_.size()), 0, group_width_, 0});
}

void Column::finish_run(Tenths width) {
  Run& run = runs_.back();
  run.length = static_cast<std::uint32_t>(text_.size()) - run.begin;
  run.width = width;
  group_width_ += width;
}

void Column::put(Ink ink, std::string_view text) {
  if (text.empty()) return;
  const bool bold = ink == Ink::strong || ink == Ink::tag;
  const Tenths padding = ink == Ink::tag ? font_ * 4 / 5 : 0;
  start_run(ink);
  const Tenths room = std::max<Tenths>(width_ - group_width_ - padding, font_ * 2);
  finish_run(append_clipped(text_, text, font_, bold, room) + padding);
}

void Column::put_sign(std::uint8_t form) {
  if (!has_grain_sign(form)) return;
  start_run(Ink::sign);
  runs_.back().form = form;
  finish_run(font_ * 27 / 20);
}

void Column::piece(Ink ink, std::string_view text) {
  const bool bold = ink == Ink::strong || ink == Ink::tag;
  if (ink != Ink::tag && !fit_text(text, font_, bold, width_).whole) {
    prose(ink, text, 3);
    return;
  }
  open();
  put(ink, text);
  close();
}

void Column::close() {
  const auto end = static_cast<std::uint32_t>(runs_.size());
  if (end == group_first_) return;
  Tenths gap = cursor_ == 0 ? 0 : between_width();
  if (cursor_ != 0 && cursor_ + gap + group_width_ > width_) {
    lines_.push_back({line_first_, group_first_ - line_first_});
    line_first_ = group_first_;
    cursor_ = 0;
    gap = 0;
  }
  for (std::uint32_t i = group_first_; i < end; ++i) runs_[i].x += cursor_ + gap;
  cursor_ += gap + group_width_;
}

void Column::prose(Ink ink, std::string_view text, std::int32_t max_lines) {
  const bool bold = ink == Ink::strong;
  for (std::int32_t line = 1; !text.empty(); ++line) {
    const Tenths used = cursor_ == 0 ? 0 : cursor_ + between_width();
    Fit fit = fit_text(text, font_, bold, width_ - used);
    if (!fit.whole && line < max_lines) {
      const std::size_t space = text.substr(0, fit.bytes + 1).rfind(' ');
      if (space != std::string_view::npos && space > 0) {
        fit.bytes = space;
      } else if (used > 0) {
        fit.bytes = 0;  // not even one word beside what is there
      }
    }
    if (line >= max_lines) fit.bytes = text.size();
    if (fit.bytes > 0) {
      open();
      start_run(ink);
      finish_run(append_clipped(text_, text.substr(0, fit.bytes), font_, bold, width_ - used));
      close();
    }
    text.remove_prefix(fit.bytes);
    while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
    if (!text.empty()) new_line();
  }
}

Tenths Column::total_height(Tenths gap) const {
  Tenths total = 0;
  for (const Item& item : items_) total += height_of(item) + gap;
  return total;
}

void Column::spread(Tenths top, Tenths bottom, Tenths gap) {
  std::sort(items_.begin(), items_.end(), [](const Item& a, const Item& b) {
    return std::make_tuple(a.order, a.kind, a.index) < std::make_tuple(b.order, b.kind, b.index);
  });
  // With the heights of those above it taken off, each item wants a place and the places must not fall:
  // neighbours that clash are pooled at the mean of their wishes, which moves all as little as may be.
  std::vector<Block> blocks;
  blocks.reserve(items_.size());
  Tenths above = 0;
  for (const Item& item : items_) {
    blocks.push_back({item.anchor - row_ / 2 - above, 1});
    above += height_of(item) + gap;
    while (blocks.size() > 1 && blocks[blocks.size() - 2].place() > blocks.back().place()) {
      const Block last = blocks.back();
      blocks.pop_back();
      blocks.back().wished_sum += last.wished_sum;
      blocks.back().count += last.count;
    }
  }
  const Tenths lowest = std::max(top, bottom - above + gap);
  above = 0;
  std::size_t next = 0;
  for (const Block& block : blocks) {
    const Tenths place = std::clamp(block.place(), top, lowest);
    for (std::int64_t i = 0; i < block.count; ++i) {
      items_[next].top = place + above;
      above += height_of(items_[next]) + gap;
      ++next;
    }
  }
}

void Column::append_tag(std::string& out, const Run& run, Tenths left, Tenths baseline) const {
  append_rect(out, left + run.x, baseline - font_ * 17 / 20, run.width, font_ * 23 / 20,
              " rx=\"2\" fill=\"#fff\" stroke=\"#9c3d10\" stroke-width=\"1.6\"");
  append_text(out, left + run.x + run.width / 2, baseline,
              " text-anchor=\"middle\" font-weight=\"bold\" fill=\"#9c3d10\"", text_of(run));
}

// Text between two signs is one element, so that the reader's own font decides its spacing.
void Column::append_line_of_text(std::string& out, const Line& line, Tenths left, Tenths baseline) const {
  bool text_open = false;
  const auto close_text = [&] {
    if (text_open) out += "</text>\n";
    text_open = false;
  };
  const std::uint32_t end = line.first + line.count;
  for (std::uint32_t i = line.first; i < end; ++i) {
    const Run& run = runs_[i];
    if (run.ink == Ink::sign || run.ink == Ink::tag) close_text();
    if (run.ink == Ink::sign) {
      const Tenths size = font_ * 5 / 4;
      append_grain_sign(out, run.form, left + run.x - font_ / 8, baseline - font_ * 7 / 20 - size / 2, size);
      continue;
    }
    if (run.ink == Ink::tag) {
      append_tag(out, run, left, baseline);
      continue;
    }
    // An opening bracket leans on the sign that follows it.
    if (i + 1 < end && runs_[i + 1].glued && runs_[i + 1].ink == Ink::sign) {
      close_text();
      append_text(out, left + run.x + run.width, baseline, " text-anchor=\"end\"", text_of(run));
      continue;
    }
    if (!text_open) {
      open_text(out, left + run.x, baseline, {});
      text_open = true;
    } else if (!run.glued) {
      out += between_ == Between::dot ? " \xC2\xB7 " : " ";
    }
    const std::string_view style = attributes_of(run.ink);
    if (!style.empty()) {
      out += "<tspan";
      out += style;
      out += '>';
    }
    append_xml(out, text_of(run));
    if (!style.empty()) out += "</tspan>";
  }
  close_text();
}

void Column::append(std::string& out, const Item& item, Tenths left) const {
  Tenths baseline = item.top + row_ / 2 + font_ * 7 / 20;
  for (std::uint32_t i = 0; i < item.line_count; ++i) {
    append_line_of_text(out, lines_[item.first_line + i], left, baseline);
    baseline += row_;
  }
}

Tenths Column::append_stacked(std::string& out, Tenths left, Tenths top) const {
  for (Item item : items_) {
    item.top = top;
    append(out, item, left);
    top += height_of(item);
  }
  return top;
}

}  // namespace firn::drawing
