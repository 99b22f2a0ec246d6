#include <string>
#include <string_view>

#include "drawing/wording.h"
#include "drawing/words_around.h"
#include "notation/test_line.h"
#include "support/text.h"

namespace firn::drawing {
namespace {

constexpr std::uint32_t kMostTests = 12;

class Notes {
 public:
  Notes(Column& column, const pit::View& pit) : column_(column), pit_(pit) {}

  void put_tests_without_depth();
  void put_layers_not_drawn(const Drawn& drawn);
  void put_readings_not_drawn(const Drawn& drawn);
  void put_ends(const Frame& frame);
  void put_concerns_not_drawn(const ConcernMarks& concerns);

 private:
  void put_test(const firnbook::StabilityTest& test, const firnbook::Fracture* fracture);
  void note(std::uint32_t count, std::string_view one, std::string_view several);
  void note(std::string_view text) {
    column_.begin_item(0, 0, 0, false);
    column_.prose(Ink::plain, text, 3);
    column_.end_item();
  }

  Column& column_;
  const pit::View& pit_;
  std::string scratch_;
  std::uint32_t tests_ = 0;
};

void Notes::note(std::uint32_t count, std::string_view one, std::string_view several) {
  if (count == 0) return;
  scratch_.clear();
  append_integer(scratch_, count);
  scratch_ += count == 1 ? one : several;
  note(scratch_);
}

void Notes::put_test(const firnbook::StabilityTest& test, const firnbook::Fracture* fracture) {
  if (tests_++ == 0) {
    column_.begin_item(0, 0, 0, false);
    column_.piece(Ink::plain, "Tests without a depth");
  }
  if (tests_ > kMostTests) return;
  scratch_.clear();
  notation::append_score(scratch_, test, fracture);
  const bool not_valid =
      pit::number(test.outcome()) == static_cast<std::uint8_t>(firnbook::TestOutcome::not_valid);
  // The score of a fracture does not say it, that of a whole test does.
  if (not_valid && fracture != nullptr) scratch_ += " not valid";
  column_.piece(Ink::strong, scratch_);
}

void Notes::put_tests_without_depth() {
  for (const pit::Test& test : pit_.tests()) {
    if (test.fracture_count == 0) put_test(*test.raw, nullptr);
    for (std::uint32_t i = 0; i < test.fracture_count; ++i) {
      const pit::Fracture& fracture = pit_.fractures()[test.first_fracture + i];
      if (!drawable(fracture.depth)) put_test(*test.raw, fracture.raw);
    }
  }
  if (tests_ == 0) return;
  if (tests_ > kMostTests) {
    scratch_.assign("\xE2\x80\xA6 ");
    append_integer(scratch_, tests_ - kMostTests);
    scratch_ += " more";
    column_.piece(Ink::quiet, scratch_);
  }
  column_.end_item();
}

void Notes::put_layers_not_drawn(const Drawn& drawn) {
  if (pit_.layers().empty()) note("No layers were recorded.");
  note(drawn.bars.without_depth, " layer has no usable depth and is not drawn.",
       " layers have no usable depth and are not drawn.");
  note(drawn.bars.left_out, " more layer is not drawn.", " more layers are not drawn.");
  note(drawn.bars.merged, " layer is drawn merged.",
       " layers are too thin to be drawn one by one: bars there show the softest, lines the hardest.");
  note(drawn.labels.layers_left_out, " more layer has no label.", " more layers have no label.");
}

void Notes::put_readings_not_drawn(const Drawn& drawn) {
  note(drawn.labels.tests_left_out, " more test result is not drawn.", " more test results are not drawn.");
  note(drawn.labels.densities_left_out, " density is not drawn.", " densities are not drawn.");
  note(drawn.temperatures.without_place, " temperature has no usable depth or value and is not drawn.",
       " temperatures have no usable depth or value and are not drawn.");
  note(drawn.temperatures.beyond_axis, " temperature lies beyond its axis and is drawn at the axis' end.",
       " temperatures lie beyond their axis and are drawn at the axis' end.");
}

void Notes::put_ends(const Frame& frame) {
  if (frame.ends == Ends::above_ground) {
    note("Depths only: the pit was not dug to the ground.");
  } else if (frame.ends == Ends::hs_not_known) {
    note("Depths only: HS was not recorded.");
  }
}

void Notes::put_concerns_not_drawn(const ConcernMarks& concerns) {
  for (const ConcernMark& mark : concerns.marks) {
    if (mark.top != pit::kUnknown) continue;
    scratch_.clear();
    append_concern_tag(scratch_, mark);
    scratch_ += ": its depth is not known, see the report.";
    note(scratch_);
  }
  note(concerns.left_out, " more concern is in the report.", " more concerns are in the report.");
}

// What the marks mean, as far as they occur.
void put_legend(Column& column, const ConcernMarks& concerns, const Drawn& drawn) {
  std::string text;
  if (drawn.bars.any) {
    text += "Bars: hand hardness in equal steps by index, hard to the left";
    if (drawn.bars.any_unknown_hardness) text += "; dashed with ?: not observed";
    text +=
        ". Beside each layer: grain form, size, hardness, its depths in cm, density. Dry snow and wetness "
        "not "
        "observed are left blank. ";
  }
  if (drawn.temperatures.any) text += "Line: snow temperature. ";
  if (drawn.labels.any_unreliable) text += "(?): observed, not to be leaned on. ";
  bool banded = false;
  bool little = false;
  for (const ConcernMark& mark : concerns.marks) {
    banded = banded || mark.number != 0;
    little = little || mark.number == 0;
  }
  if (banded) text += "Hatched: concerns of the report, in its order. ";
  if (little) text += "Dotted: a break that says little either way. ";
  if (text.empty()) return;
  text.pop_back();
  column.begin_item(0, 0, 0, false);
  column.prose(Ink::quiet, text, 12);
  column.end_item();
}

}  // namespace

Tenths append_footer(std::string& out, const pit::View& pit, const Frame& frame, const ConcernMarks& concerns,
                     const Drawn& drawn, Tenths top) {
  const Page& page = frame.page;
  Column column(page.inner(), page.font, page.row, Between::dot);
  Notes notes(column, pit);
  notes.put_tests_without_depth();
  notes.put_concerns_not_drawn(concerns);
  notes.put_layers_not_drawn(drawn);
  notes.put_readings_not_drawn(drawn);
  notes.put_ends(frame);
  put_legend(column, concerns, drawn);
  top = column.append_stacked(out, page.margin, top) + page.font / 2;

  append_line(out, page.margin, top, page.width - page.margin, top,
              " stroke=\"#1a1a1a\" stroke-width=\"1.5\"");
  Column caution(page.inner(), page.font, page.row, Between::space);
  caution.begin_item(0, 0, 0, false);
  caution.prose(Ink::strong, "One pit is one point.", 2);
  caution.end_item();
  caution.begin_item(0, 0, 0, false);
  caution.prose(Ink::strong, "The bulletin, local rules and trained people stand above it.", 4);
  caution.end_item();
  if (pit.raw().practice() && *pit.raw().practice()) {
    caution.begin_item(0, 0, 0, false);
    caution.prose(Ink::strong, "Practice pit: invented, not an observation.", 2);
    caution.end_item();
  }
  return caution.append_stacked(out, page.margin, top + page.font * 2 / 5);
}

}  // namespace firn::drawing
