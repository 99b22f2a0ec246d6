#include "comparison/words.h"

#include <cstddef>

namespace firn::comparison {
namespace {

struct Row {
  Word key;
  const char* text;
};

// In the order of the keys. A difference is told as a difference: no word here says who saw better.
constexpr Row kWords[] = {
    {Word::title, "TWO PITS OF ONE WALL"},
    {Word::reference, "Reference"},
    {Word::other, "Other"},
    {Word::unnamed, "(no name)"},
    {Word::preamble,
     "Each difference is told from the reference to the other pit. It says nothing about who saw better:"},
    {Word::preamble_more, "one wall differs from column to column."},
    {Word::layers, "LAYERS (reference | other)"},
    {Word::tests, "TESTS (reference | other)"},
    {Word::temperatures, "TEMPERATURES AT THE SAME DEPTH (reference | other)"},
    {Word::none_recorded, "none recorded in either pit"},
    {Word::none_paired, "none read at the same depth"},
    {Word::only_in_reference, "not in the other pit"},
    {Word::only_in_other, "not in the reference"},
    {Word::not_comparable, "not compared"},
    {Word::depth_unknown, "its depth cannot be told"},
    {Word::directions_differ, "one pit was measured vertically, the other at right angles to the slope"},
    {Word::upside_down, "it ends above its top"},
    {Word::covered, "another layer of the same pit covers it"},
    {Word::kind_unknown, "the kind of test is not recorded"},
    {Word::no_difference, "alike in all that both recorded"},
    {Word::nothing_to_compare, "both have it, and nothing more was recorded in both"},
    {Word::higher, "higher"},
    {Word::lower, "lower"},
    {Word::top, "top"},
    {Word::bottom, "bottom"},
    {Word::softer, "softer"},
    {Word::harder, "harder"},
    {Word::at_the_top, "at its top"},
    {Word::at_the_bottom, "at its bottom"},
    {Word::step, "step"},
    {Word::steps, "steps"},
    {Word::form_group, "another form of the same class"},
    {Word::form_different, "another grain form"},
    {Word::larger, "larger"},
    {Word::smaller, "smaller"},
    {Word::largest_grains, "largest grains"},
    {Word::grains, "grains"},
    {Word::drier, "drier"},
    {Word::wetter, "wetter"},
    {Word::wetness_class, "class"},
    {Word::wetness_classes, "classes"},
    {Word::broke_deeper, "deeper"},
    {Word::broke_shallower, "shallower"},
    {Word::tap, "tap"},
    {Word::taps, "taps"},
    {Word::taps_to_cross, "until it crossed"},
    {Word::more, "more"},
    {Word::fewer, "fewer"},
    {Word::load_step, "loading step"},
    {Word::load_steps, "loading steps"},
    {Word::cut_longer, "longer cut"},
    {Word::cut_shorter, "shorter cut"},
    {Word::took_more, "harder to pull"},
    {Word::took_less, "easier to pull"},
    {Word::stage_different, "another load"},
    {Word::character_group, "another character of the same group"},
    {Word::character_different, "another character"},
    {Word::quality_different, "another shear quality"},
    {Word::crossing_different, "one crossed the column, one did not"},
    {Word::release_different, "another release"},
    {Word::saw_end_different, "another ending"},
    {Word::outcome_different, "another outcome"},
    {Word::no_fracture, "no fracture"},
    {Word::not_valid, "not valid"},
    {Word::fractured, "fractured"},
    {Word::no_outcome, "outcome not recorded"},
    {Word::unreliable, "rests on values marked as unreliable"},
    {Word::warmer, "warmer"},
    {Word::colder, "colder"},
    {Word::tolerances, "Counted as one place when apart by no more than (ours):"},
    {Word::thin_layers, "layers of one grain class"},
    {Word::fractures, "fractures"},
    {Word::readings, "temperatures"},
};

constexpr bool is_whole() {
  std::size_t at = 0;
  for (const Row& row : kWords) {
    if (static_cast<std::size_t>(row.key) != at++) return false;
  }
  return at == static_cast<std::size_t>(Word::count_);
}
static_assert(is_whole(), "one row for each key, in their order");

}  // namespace

const char* word(Word key) {
  return kWords[static_cast<std::size_t>(key)].text;
}

}  // namespace firn::comparison
