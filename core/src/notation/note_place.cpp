// Paths such as layers[3].hardness, read back into places.
#include "notation/note_line.h"

#include "support/place.h"

namespace firn::notation {
namespace {

// The number in the nth pair of brackets, or -1.
std::int32_t bracket(std::string_view path, int nth) {
  std::size_t at = 0;
  for (int i = 0; i <= nth; ++i) {
    at = path.find('[', at);
    if (at == std::string_view::npos) return -1;
    ++at;
  }
  std::int64_t value = 0;
  if (!digit_at(path, at)) return -1;
  for (; digit_at(path, at); ++at) {
    value = value * 10 + (path[at] - '0');
    if (value > INT32_MAX) return -1;
  }
  return static_cast<std::int32_t>(value);
}

constexpr int kThings = static_cast<int>(firnbook::Thing::MAX) + 1;

// Asks path_of for every path that could be meant, so that both directions rest on one table.
bool find_place(std::string_view path, firnbook::Place& place) {
  const std::int32_t index = bracket(path, 0);
  const std::int32_t sub = bracket(path, 1);
  for (int i = 0; i < kThings; ++i) {
    const auto thing = static_cast<firnbook::Thing>(i);
    const bool is_pit = thing == firnbook::Thing::pit;
    place = firnbook::Place(is_pit ? -1 : index, sub, kWholeThing, thing);
    const std::string whole = path_of(place);
    if (whole == path) return true;
    if (!is_pit && (!starts_with(path, whole) || path[whole.size()] != '.')) continue;
    for (std::uint16_t field = 0; field < 64; ++field) {
      place = firnbook::Place(is_pit ? -1 : index, sub, field, thing);
      const std::string candidate = path_of(place);
      if (candidate == path) return true;
      if (candidate == whole) break;
    }
  }
  return false;
}

}  // namespace

bool same_place(const firnbook::Place& a, const firnbook::Place& b) {
  return a.index() == b.index() && a.sub() == b.sub() && a.field() == b.field() && a.thing() == b.thing();
}

bool read_place(Line& line, firnbook::Place& place) {
  const Result<bool> raw = read_raw(line.scan, place);
  if (!raw) return line.fail(raw.failure());
  if (*raw) return true;
  const std::string_view rest = line.scan.rest();
  std::size_t length = 0;
  while (!ends_word(rest, length)) ++length;
  // Longer than any path: not worth comparing.
  constexpr std::size_t kLongestPath = 120;
  if (length == 0 || length > kLongestPath || !find_place(rest.substr(0, length), place)) {
    return line.expected("a place in the pit",
                         "write it as in layers[3].hardness or tests[0]; the first is 0");
  }
  line.scan.seek(line.scan.position() + length);
  return true;
}

// Another place than the one meant would be worse than none.
void append_place(std::string& out, const firnbook::Place& place) {
  const std::string path = path_of(place);
  firnbook::Place back;
  if (find_place(path, back) && same_place(back, place)) {
    out += path;
  } else {
    append_raw(out, place);
  }
}

}  // namespace firn::notation
