#include "drawing/concerns.h"

#include <algorithm>
#include <string_view>

#include "support/text.h"

namespace firn::drawing {
namespace {

// Ours: more bands than this could not be told apart on a page.
constexpr std::size_t kMostConcerns = 9;

constexpr std::string_view kBand = " fill=\"none\" stroke=\"#9c3d10\" stroke-width=\"1.8\"";
constexpr std::string_view kHatch =
    " fill=\"none\" stroke=\"#9c3d10\" stroke-width=\"1\" stroke-opacity=\"0.75\"";
constexpr std::string_view kLittleBand =
    " fill=\"none\" stroke=\"#555\" stroke-width=\"1.4\" stroke-dasharray=\"2 4\"";

ConcernMark mark_of(const pit::View& pit, const firnbook::Concern& concern) {
  ConcernMark mark{0, pit::number_or_unknown(concern.top_10um()),
                   pit::number_or_unknown(concern.bottom_10um()), -1};
  if (pit::number(concern.kind()) == static_cast<std::uint8_t>(firnbook::ConcernKind::layer)) {
    const std::int32_t stored = pit::number_or_unknown(concern.layer());
    for (std::size_t i = 0; stored >= 0 && i < pit.layers().size(); ++i) {
      if (pit.layers()[i].stored == static_cast<std::uint32_t>(stored)) {
        mark.layer = static_cast<std::int32_t>(i);
        break;
      }
    }
  }
  if (mark.layer >= 0) {
    const pit::Layer& layer = pit.layers()[static_cast<std::size_t>(mark.layer)];
    if (!drawable(mark.top)) mark.top = layer.top;
    if (!drawable(mark.bottom)) mark.bottom = layer.bottom;
  }
  if (!drawable(mark.top)) mark.top = mark.bottom;
  if (!drawable(mark.bottom)) mark.bottom = mark.top;
  if (!drawable(mark.top)) mark.top = mark.bottom = pit::kUnknown;
  return mark;
}

struct Band {
  Tenths top, bottom;
};

Band band_of(const Frame& frame, const ConcernMark& mark) {
  Band band{frame.y(std::min(mark.top, mark.bottom)), frame.y(std::max(mark.top, mark.bottom))};
  // A boundary has no height and a thin layer hardly any: the band stands out on both sides.
  const Tenths least = frame.page.font * 3 / 4;
  if (band.bottom - band.top < least) {
    const Tenths more = (least - (band.bottom - band.top)) / 2;
    band.top -= more;
    band.bottom += more;
  }
  const Tenths inwards =
      std::max<Tenths>(frame.top - band.top, 0) + std::min<Tenths>(frame.bottom - band.bottom, 0);
  band.top += inwards;
  band.bottom += inwards;
  return band;
}

// Slanted lines clipped to the band by hand: a pattern would need an id, and ids clash when two pictures
// stand on one web page.
void append_hatch(std::string& out, const Frame& frame, const Band& band) {
  const Tenths height = band.bottom - band.top;
  Path hatch(out);
  for (Tenths x = frame.left + 80; x < frame.right + height; x += 80) {
    const Tenths from = std::min(x, frame.right);
    const Tenths to = std::max(x - height, frame.left);
    hatch.move(from, band.top + (x - from));
    hatch.line(to, band.top + (x - to));
  }
  hatch.end(kHatch);
}

}  // namespace

ConcernMarks concern_marks_of(const pit::View& pit, const firnbook::Report* report) {
  ConcernMarks concerns;
  if (report == nullptr || report->concerns() == nullptr) return concerns;
  const std::uint32_t count = report->concerns()->size();
  std::int32_t number = 0;
  for (std::uint32_t i = 0; i < count; ++i) {
    const firnbook::Concern& concern = *report->concerns()->Get(i);
    const bool little =
        pit::number(concern.rank()) == static_cast<std::uint8_t>(firnbook::ConcernRank::little);
    if (!little) ++number;
    if (concerns.marks.size() >= kMostConcerns) {
      ++concerns.left_out;
      continue;
    }
    ConcernMark mark = mark_of(pit, concern);
    mark.number = little ? 0 : number;
    mark.by_structure =
        pit::number(concern.rank()) == static_cast<std::uint8_t>(firnbook::ConcernRank::structure);
    concerns.marks.push_back(mark);
  }
  return concerns;
}

void append_concern_tag(std::string& out, const ConcernMark& mark) {
  if (mark.number == 0) {
    out += "says little either way";
    return;
  }
  out += "concern ";
  append_integer(out, mark.number);
}

void append_concern_hatching(std::string& out, const Frame& frame, const ConcernMarks& concerns) {
  for (const ConcernMark& mark : concerns.marks) {
    if (mark.top != pit::kUnknown && mark.number != 0) append_hatch(out, frame, band_of(frame, mark));
  }
}

void append_concern_bands(std::string& out, const Frame& frame, const ConcernMarks& concerns) {
  for (const ConcernMark& mark : concerns.marks) {
    if (mark.top == pit::kUnknown) continue;
    const Band band = band_of(frame, mark);
    const Tenths width = frame.right - frame.left;
    if (mark.number == 0) {
      append_rect(out, frame.left, band.top, width, band.bottom - band.top, kLittleBand);
      continue;
    }
    append_rect(out, frame.left, band.top, width, band.bottom - band.top, kBand);
  }
}

void append_concern_numbers(std::string& out, const Frame& frame, const ConcernMarks& concerns) {
  const Tenths font = frame.page.font;
  for (const ConcernMark& mark : concerns.marks) {
    if (mark.top == pit::kUnknown || mark.number == 0) continue;
    const Band band = band_of(frame, mark);
    // Each number has a place of its own from the left, so that two bands close together keep both.
    const Tenths step = font * 7 / 5;
    const Tenths places = std::max<Tenths>((frame.right - frame.left) / step - 1, 1);
    const Tenths x = frame.left + 40 + (mark.number - 1) % places * step;
    const Tenths half = font * 13 / 20;
    const Tenths middle = std::clamp((band.top + band.bottom) / 2, frame.top + half, frame.bottom - half);
    append_rect(out, x, middle - font * 13 / 20, font * 13 / 10, font * 13 / 10,
                " rx=\"2\" fill=\"#fff\" stroke=\"#9c3d10\" stroke-width=\"1.6\"");
    open_text(out, x + font * 13 / 20, middle + font * 7 / 20,
              " text-anchor=\"middle\" font-weight=\"bold\" fill=\"#9c3d10\"");
    append_integer(out, mark.number);
    out += "</text>\n";
  }
}

}  // namespace firn::drawing
