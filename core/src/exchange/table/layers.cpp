// One row a layer, from the surface down as the pit's list has them.
#include "exchange/table/cells.h"

namespace firn::exchange::table {
namespace {

using firnbook::Layer;

struct Row {
  const firnbook::Pit& pit;
  const Layer& layer;
  std::size_t number;
  const firnbook::LayerName* name() const { return layer.name(); }
};

// Codes with a blank between them; the number of one that has none here.
void fill_candidates(Cells& cells, const Row& row) {
  std::string codes;
  const auto* candidates = row.layer.candidates();
  for (std::size_t i = 0; i < size_of(candidates); ++i) {
    const auto form =
        static_cast<firnbook::GrainForm>(candidates->Get(static_cast<flatbuffers::uoffset_t>(i)));
    if (i != 0) codes += ' ';
    codes += code_of(form);
    if (code_of(form).empty()) append_unsigned(codes, static_cast<std::uint8_t>(form));
  }
  cells.text(codes);
}

constexpr Column<Row> kColumns[] = {
    {kPitHeadings, [](Cells& c, const Row& r) { fill_pit(c, r.pit); }},
    {"layer", [](Cells& c, const Row& r) { c.count(r.number); }},
    {"top_cm,top_datum,top_direction", [](Cells& c, const Row& r) { c.depth(r.layer.top()); }},
    {"bottom_cm,bottom_datum,bottom_direction", [](Cells& c, const Row& r) { c.depth(r.layer.bottom()); }},
    {"hardness", [](Cells& c, const Row& r) { c.code(r.layer.hardness()); }},
    {"hardness_top", [](Cells& c, const Row& r) { c.code(r.layer.hardness_top()); }},
    {"hardness_bottom", [](Cells& c, const Row& r) { c.code(r.layer.hardness_bottom()); }},
    {"grain_form", [](Cells& c, const Row& r) { c.code(r.layer.grain_form()); }},
    {"grain_form_second", [](Cells& c, const Row& r) { c.code(r.layer.grain_form_second()); }},
    {"grain_size_mm", [](Cells& c, const Row& r) { c.number(r.layer.grain_size_10um(), 2); }},
    {"grain_size_max_mm", [](Cells& c, const Row& r) { c.number(r.layer.grain_size_max_10um(), 2); }},
    {"grain_size_class", [](Cells& c, const Row& r) { c.code(r.layer.grain_size_class()); }},
    {"grain_size_max_class", [](Cells& c, const Row& r) { c.code(r.layer.grain_size_max_class()); }},
    {"wetness", [](Cells& c, const Row& r) { c.code(r.layer.wetness()); }},
    {"words", [](Cells& c, const Row& r) { c.text(r.layer.words()); }},
    {"candidates", fill_candidates},
    {"name_date", [](Cells& c, const Row& r) { c.moment(r.name() == nullptr ? nullptr : r.name()->date()); }},
    {"name_kind", [](Cells& c, const Row& r) { r.name() == nullptr ? c.empty() : c.code(r.name()->kind()); }},
    {"name_words", [](Cells& c, const Row& r) { c.text(r.name() == nullptr ? nullptr : r.name()->words()); }},
    {"formed_begin",
     [](Cells& c, const Row& r) {
       c.moment(r.layer.formed() == nullptr ? nullptr : &r.layer.formed()->begin());
     }},
    {"formed_end",
     [](Cells& c, const Row& r) {
       c.moment(r.layer.formed() == nullptr ? nullptr : &r.layer.formed()->end());
     }},
    {"concern", [](Cells& c, const Row& r) { c.code(r.layer.concern()); }},
    {"unreliable", [](Cells& c, const Row& r) { c.marks(firnbook::Thing::layer, r.layer.unreliable()); }},
};

}  // namespace

void append_layer_headings(std::string& out) {
  append_headings(out, kColumns);
}

void append_layers(Cells& cells, const firnbook::Pit& pit) {
  std::size_t number = 0;
  if (pit.layers() == nullptr) return;
  for (const Layer* layer : *pit.layers()) fill_row(cells, kColumns, Row{pit, *layer, ++number});
}

}  // namespace firn::exchange::table
