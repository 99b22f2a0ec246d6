// Short texts with signs in them, wrapped to a width: the labels beside the panel, the header, the footer.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "drawing/svg.h"

namespace firn::drawing {

enum class Ink : std::uint8_t { plain, strong, quiet, tag, sign };

// What stands between two pieces on one line.
enum class Between : std::uint8_t { space, dot };

// Text in lines; an item is a number of lines that stay together. The memory of all items is shared.
class Column {
 public:
  struct Item {
    std::int64_t order = 0;  // twice the depth; items are put in this order
    Tenths anchor = 0;       // where it would like to stand
    Tenths top = 0;          // where it stands, after spread()
    std::uint32_t first_line = 0, line_count = 0;
    std::uint32_t index = 0;  // order of making
    std::uint8_t kind = 0;    // of the caller
    bool marked = false;
  };

  Column(Tenths width, Tenths font, Tenths row, Between between)
      : width_(width), font_(font), row_(row), between_(between) {}

  void begin_item(std::uint8_t kind, std::int64_t order, Tenths anchor, bool marked);
  void end_item();

  // What is put between open() and close() is not broken; what is too wide for the column is clipped.
  void open();
  void put(Ink ink, std::string_view text);
  void put_sign(std::uint8_t form);
  void close();
  // A text that is not broken, unless it is wider than the column.
  void piece(Ink ink, std::string_view text);
  // Breaks between words, at most `max_lines`, then an ellipsis.
  void prose(Ink ink, std::string_view text, std::int32_t max_lines);
  void new_line();

  std::vector<Item>& items() { return items_; }
  const std::vector<Item>& items() const { return items_; }
  Tenths height_of(const Item& item) const { return item.line_count * row_; }
  Tenths total_height(Tenths gap) const;
  // Sorts the items and moves them apart, as little as may be, between `top` and `bottom`. Linear.
  void spread(Tenths top, Tenths bottom, Tenths gap);
  // Middle of an item's first line, where its leader ends.
  Tenths leader_y(const Item& item) const { return item.top + row_ / 2; }

  void append(std::string& out, const Item& item, Tenths left) const;
  // All items one below the other; answers the y below the last.
  Tenths append_stacked(std::string& out, Tenths left, Tenths top) const;

 private:
  struct Run {
    Ink ink;
    std::uint8_t form;
    bool glued;  // nothing between this run and the one before it
    std::uint32_t begin, length;
    Tenths x, width;
  };
  struct Line {
    std::uint32_t first, count;
  };

  void append_line_of_text(std::string& out, const Line& line, Tenths left, Tenths baseline) const;
  void append_tag(std::string& out, const Run& run, Tenths left, Tenths baseline) const;
  std::string_view text_of(const Run& run) const { return {text_.data() + run.begin, run.length}; }
  Tenths between_width() const { return between_ == Between::dot ? font_ * 6 / 5 : font_ * 2 / 5; }
  void start_run(Ink ink);
  void finish_run(Tenths width);

  Tenths width_, font_, row_;
  Between between_;
  std::string text_;
  std::vector<Run> runs_;
  std::vector<Line> lines_;
  std::vector<Item> items_;
  std::uint32_t line_first_ = 0;
  std::uint32_t group_first_ = 0;
  Tenths cursor_ = 0;
  Tenths group_width_ = 0;
};

}  // namespace firn::drawing
