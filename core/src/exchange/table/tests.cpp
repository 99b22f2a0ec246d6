// One row a fracture, and one for a test in which nothing broke.
#include "exchange/table/cells.h"

namespace firn::exchange::table {
namespace {

using firnbook::Fracture;
using firnbook::StabilityTest;

struct Row {
  const firnbook::Pit& pit;
  const StabilityTest& test;
  std::size_t number;
  const Fracture* fracture;  // null for none
  std::size_t fracture_number;
  const firnbook::Layer* on() const { return fracture == nullptr ? nullptr : fracture->on(); }
};

// A cell of the fracture; empty where there is none.
template <class Fill>
void of_fracture(Cells& cells, const Row& row, Fill&& fill) {
  if (row.fracture == nullptr) return cells.empty();
  fill(*row.fracture);
}
template <class Fill>
void of_layer(Cells& cells, const Row& row, Fill&& fill) {
  if (row.on() == nullptr) return cells.empty();
  fill(*row.on());
}

// Depths from the surface as numbers; those counted otherwise with where from.
void fill_unbroken(Cells& cells, const Row& row) {
  std::string depths;
  const auto* list = row.test.unbroken();
  for (std::size_t i = 0; i < size_of(list); ++i) {
    const firnbook::Depth& depth = *list->Get(static_cast<flatbuffers::uoffset_t>(i));
    if (i != 0) depths += ' ';
    append_fixed(depths, depth.value_10um(), 3);
    if (depth.datum() != firnbook::Datum::surface) {
      depths += '/';
      depths += code_of(depth.datum());
    }
  }
  cells.text(depths);
}

#define FIRN_OF_FRACTURE(what, value) \
  [](Cells& c, const Row& r) { of_fracture(c, r, [&](const Fracture& f) { c.what(f.value()); }); }
#define FIRN_FIXED_OF_FRACTURE(value, decimals) \
  [](Cells& c, const Row& r) { of_fracture(c, r, [&](const Fracture& f) { c.number(f.value(), decimals); }); }
#define FIRN_OF_LAYER(what, value) \
  [](Cells& c, const Row& r) { of_layer(c, r, [&](const firnbook::Layer& l) { c.what(l.value()); }); }

constexpr Column<Row> kColumns[] = {
    {kPitHeadings, [](Cells& c, const Row& r) { fill_pit(c, r.pit); }},
    {"test", [](Cells& c, const Row& r) { c.count(r.number); }},
    {"kind", [](Cells& c, const Row& r) { c.code(r.test.kind()); }},
    {"outcome", [](Cells& c, const Row& r) { c.code(r.test.outcome()); }},
    {"not_valid_reason", [](Cells& c, const Row& r) { c.code(r.test.not_valid_reason()); }},
    {"column_width_cm", [](Cells& c, const Row& r) { c.number(r.test.column_width_10um(), 3); }},
    {"column_length_cm", [](Cells& c, const Row& r) { c.number(r.test.column_length_10um(), 3); }},
    {"column_depth_cm", [](Cells& c, const Row& r) { c.number(r.test.column_depth_10um(), 3); }},
    {"slab_left_cm", [](Cells& c, const Row& r) { c.number(r.test.slab_left_10um(), 3); }},
    {"column_ends", [](Cells& c, const Row& r) { c.code(r.test.column_ends()); }},
    {"slope_deg", [](Cells& c, const Row& r) { c.number(r.test.slope_deg()); }},
    {"crossing_rule", [](Cells& c, const Row& r) { c.code(r.test.crossing_rule()); }},
    {"taps_given", [](Cells& c, const Row& r) { c.number(r.test.taps_given()); }},
    {"unbroken_cm", fill_unbroken},
    {"test_words", [](Cells& c, const Row& r) { c.text(r.test.words()); }},
    {"test_unreliable", [](Cells& c, const Row& r) { c.marks(firnbook::Thing::test, r.test.unreliable()); }},
    {"fracture",
     [](Cells& c, const Row& r) { r.fracture == nullptr ? c.empty() : c.count(r.fracture_number); }},
    {"depth_cm,depth_datum,depth_direction",
     [](Cells& c, const Row& r) { c.depth(r.fracture == nullptr ? nullptr : r.fracture->depth()); }},
    {"tap", FIRN_FIXED_OF_FRACTURE(tap, 0)},
    {"tap_crossed", FIRN_FIXED_OF_FRACTURE(tap_crossed, 0)},
    {"stage", FIRN_OF_FRACTURE(code, stage)},
    {"character", FIRN_OF_FRACTURE(code, character)},
    {"quality", FIRN_OF_FRACTURE(code, quality)},
    {"fracture_surface", FIRN_OF_FRACTURE(code, fracture_surface)},
    {"crossing", FIRN_OF_FRACTURE(code, crossing)},
    {"step", FIRN_FIXED_OF_FRACTURE(step, 0)},
    {"jump", FIRN_FIXED_OF_FRACTURE(jump, 0)},
    {"release", FIRN_OF_FRACTURE(code, release)},
    {"cut_cm", FIRN_FIXED_OF_FRACTURE(cut_10um, 3)},
    {"saw_end", FIRN_OF_FRACTURE(code, saw_end)},
    {"ease", FIRN_OF_FRACTURE(code, ease)},
    {"force_n", FIRN_FIXED_OF_FRACTURE(force_mn, 3)},
    {"on_hardness", FIRN_OF_LAYER(code, hardness)},
    {"on_grain_form", FIRN_OF_LAYER(code, grain_form)},
    {"on_grain_form_second", FIRN_OF_LAYER(code, grain_form_second)},
    {"on_grain_size_mm",
     [](Cells& c, const Row& r) {
       of_layer(c, r, [&](const firnbook::Layer& l) { c.number(l.grain_size_10um(), 2); });
     }},
    {"on_name_date",
     [](Cells& c, const Row& r) {
       of_layer(c, r, [&](const firnbook::Layer& l) {
         c.moment(l.name() == nullptr ? nullptr : l.name()->date());
       });
     }},
    {"on_words", FIRN_OF_LAYER(text, words)},
    {"part", FIRN_OF_FRACTURE(code, part)},
    {"words", FIRN_OF_FRACTURE(text, words)},
    {"unreliable",
     [](Cells& c, const Row& r) {
       of_fracture(c, r, [&](const Fracture& f) { c.marks(firnbook::Thing::fracture, f.unreliable()); });
     }},
};

}  // namespace

void append_test_headings(std::string& out) {
  append_headings(out, kColumns);
}

void append_tests(Cells& cells, const firnbook::Pit& pit) {
  std::size_t number = 0;
  if (pit.tests() == nullptr) return;
  for (const StabilityTest* test : *pit.tests()) {
    ++number;
    std::size_t fracture_number = 0;
    if (size_of(test->fractures()) == 0) fill_row(cells, kColumns, Row{pit, *test, number, nullptr, 0});
    if (test->fractures() == nullptr) continue;
    for (const Fracture* fracture : *test->fractures()) {
      fill_row(cells, kColumns, Row{pit, *test, number, fracture, ++fracture_number});
    }
  }
}

}  // namespace firn::exchange::table
