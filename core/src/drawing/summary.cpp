#include <algorithm>
#include <string>
#include <string_view>

#include "drawing/text_fit.h"
#include "drawing/wording.h"
#include "drawing/words_around.h"
#include "support/text.h"

namespace firn::drawing {
namespace {

// About a line and a half of a screen reader's speech.
constexpr Tenths kTitleWidth = 800;

void append_title_words(std::string& text, const firnbook::Pit& pit) {
  std::string_view title = pit::text(pit.title());
  if (title.empty() && pit.site() != nullptr) title = pit::text(pit.site()->name());
  text += "Snow profile";
  if (!title.empty()) {
    text += ": ";
    append_clipped(text, title, 10, false, kTitleWidth);
  }
  if (pit.time() != nullptr && pit.time()->begin().precision() != firnbook::TimePrecision::none) {
    text += ", ";
    append_moment(text, pit.time()->begin());
  }
}

void append_count(std::string& text, std::uint32_t count, std::string_view one, std::string_view several) {
  append_integer(text, count);
  text += count == 1 ? one : several;
}

void append_signs(std::string& text, const firnbook::Pit& pit) {
  bool any = false;
  for (std::uint32_t i = 0; i < std::min<std::uint32_t>(pit::size_of(pit.signs()), 64); ++i) {
    const firnbook::Sign& sign = *pit.signs()->Get(i);
    if (pit::number(sign.answer()) != static_cast<std::uint8_t>(firnbook::Answer::yes)) continue;
    text += any ? ", " : "Signs of instability seen: ";
    append_code<firnbook::SignKind>(text, pit::number(sign.kind()));
    any = true;
  }
  if (any) text += ". ";
}

void append_concern(std::string& text, const pit::View& pit, const ConcernMark& mark) {
  if (mark.number == 0 || mark.top == pit::kUnknown) return;
  text += "Concern ";
  append_integer(text, mark.number);
  if (mark.top == mark.bottom) {
    text += ": the boundary ";
    append_cm(text, mark.top);
  } else {
    text += ": the layer from ";
    append_cm(text, mark.top);
    text += " to ";
    append_cm(text, mark.bottom);
  }
  text += " cm below the surface";
  if (mark.layer >= 0) {
    const std::uint8_t form = pit.layers()[static_cast<std::size_t>(mark.layer)].form;
    const std::string_view label = find_label(code_table<firnbook::GrainForm>(), form);
    if (!label.empty()) {
      text += ", ";
      text += label;
    }
  }
  text += ". ";
}

}  // namespace

void append_summary(std::string& out, const pit::View& pit, const ConcernMarks& concerns) {
  std::string text;
  append_title_words(text, pit.raw());
  out += "<title>";
  append_xml(out, text);
  out += "</title>\n<desc>";
  text.clear();
  if (pit.raw().practice() && *pit.raw().practice()) text += "Practice pit, invented. ";
  if (pit.hs() != pit::kUnknown) {
    text += "Snow height ";
    append_cm(text, pit.hs());
    text += " cm. ";
  }
  append_count(text, static_cast<std::uint32_t>(pit.layers().size()), " layer, ", " layers, ");
  append_count(text, static_cast<std::uint32_t>(pit.tests().size()), " stability test. ",
               " stability tests. ");
  append_signs(text, pit.raw());
  for (const ConcernMark& mark : concerns.marks) append_concern(text, pit, mark);
  text += "One pit is one point. The bulletin, local rules and trained people stand above it.";
  append_xml(out, text);
  out += "</desc>\n";
}

}  // namespace firn::drawing
