// The sentences of guided tests, in our own words, with where the practice comes from. Another language is
// another such table.
#include "recording/guided.h"

namespace firn::recording {
namespace {

struct Row {
  Sentence sentence;
  Words words;
};

constexpr const char kCampbell[] =
    "Campbell on the compression test, after the Canadian guidelines of 2007 (read in a copy)";
constexpr const char kExtended[] = "avalanche.org, extended column test (read)";
constexpr const char kDeepTap[] = "avalanche.org, deep tap test (read)";
constexpr const char kFoehn[] = "Foehn 1989 (read)";
constexpr const char kMemory[] = "guidelines, from memory";
constexpr const char kPractice[] = "common practice";
constexpr const char kTapsDeep[] = "Campbell (read in a copy); for the deep tap test from memory";

constexpr Row kRows[] = {
    {Sentence::cut_column,
     {"Cut a column 30 cm across and 30 cm up the slope, with smooth walls, 100 to 120 cm deep.", kCampbell}},
    {Sentence::cut_extended_column,
     {"Cut a column 90 cm across the slope and 30 cm up it, about 100 cm deep. The shovel lies on one end.",
      "avalanche.org (read); depth: course notes (read in a copy)"}},
    {Sentence::cut_saw_column,
     {"Cut a column 30 cm across and 100 cm up the slope, longer when the layer lies deeper than that: as "
      "long as "
      "it is deep. Mark the layer on the wall and say how long the column is.",
      kMemory}},
    {Sentence::cut_block,
     {"Cut a block 2 m across and 1.5 m up the slope, on a slope of 30 degrees or more (20 when a second "
      "person "
      "watches for small displacements).",
      "Foehn 1989; Jamieson and Johnston 1993 (read)"}},
    {Sentence::cut_deep_column,
     {"Cut a column 30 cm across and 30 cm up the slope, and take the snow off down to 15 cm above the "
      "layer.",
      kDeepTap}},
    {Sentence::cut_shear_column, {"Cut a column about 30 cm across and 30 cm up the slope.", kMemory}},
    {Sentence::tap_wrist, {"Ten taps with the fingertips, moving the hand from the wrist.", kTapsDeep}},
    {Sentence::tap_elbow, {"Ten taps with the fingertips, moving the arm from the elbow.", kTapsDeep}},
    {Sentence::tap_shoulder,
     {"Ten taps with the palm or fist, moving the whole arm from the shoulder.", kTapsDeep}},
    {Sentence::level_slope_first,
     {"If the surface slopes, take off a wedge so that the top is level. Then ten taps with the fingertips, "
      "moving "
      "the arm from the elbow.",
      kCampbell}},
    {Sentence::taps_done, {"That was tap 30, the last. Say what broke on it, or stop.", kExtended}},
    {Sentence::level_top,
     {"Take off the damaged top, level what is left, and keep counting from where the count stands.",
      kCampbell}},
    {Sentence::no_tapping_on, {"The block is off: stop, and look at what it broke on.", kPractice}},
    {Sentence::one_more_tap,
     {"Does the crack reach the far end? If not, one more tap: some rules count a crossing on the next tap "
      "as well.",
      "Swiss service (read): the same tap or the next; SWAG since 2016 (read: its list of changes): the "
      "same"}},
    {Sentence::saw_on,
     {"Saw up the slope along the layer with the blunt edge, steadily, and stop the moment the crack runs by "
      "itself. Then mark how far the saw had come.",
      kMemory}},
    {Sentence::sawn_through,
     {"The saw has cut the whole column: say how the crack ran before that, or stop.", kMemory}},
    {Sentence::saw_after_arrest, {"The crack stopped by itself: stop here, or saw on.", kMemory}},
    {Sentence::step_two, {"Step 2: step onto the block gently, in its upper third.", kMemory}},
    {Sentence::step_three, {"Step 3: bend the knees once without lifting the heels.", kMemory}},
    {Sentence::step_four, {"Step 4: jump once.", kMemory}},
    {Sentence::step_five,
     {"Step 5: jump again in the same spot, once or twice; say which jump.",
      "sources differ (second jump, or second and third); from memory"}},
    {Sentence::step_six,
     {"Step 6: on a hard or deep slab take the skis off and jump in the same spot; on a soft one step down "
      "35 cm, "
      "push and jump. Up to three jumps; say which.",
      kMemory}},
    {Sentence::steps_done,
     {"Step 6 is given: jump up to three times in all, say what broke, or stop.", kMemory}},
    {Sentence::pull,
     {"Put the shovel behind the column and pull down the slope, evenly. Say how easily it broke.", kMemory}},
    {Sentence::pull_by_hand, {"Pull with the hands, evenly. Say how easily it broke.", kMemory}},
    {Sentence::ended_crossed,
     {"The crack crossed the column, so the test ends. Layers below it were not tested.", kPractice}},
    {Sentence::ended, {"The test has ended. Fill in what is still missing.", kPractice}},
    {Sentence::dig_another,
     {"This column tells nothing. Cut another one beside it, away from what disturbed this one.", kPractice}},
    {Sentence::watch_cutting,
     {"Watch while the column is cut: what breaks now counts, as a fracture while isolating.", kCampbell}},
    {Sentence::watch_column,
     {"Watch the walls of the column: on which tap does something break, how deep, and how?", kCampbell}},
    {Sentence::watch_crossing,
     {"Watch the whole front: on which tap does a crack begin, and on which has it reached the far end?",
      kExtended}},
    {Sentence::watch_crack,
     {"Watch the crack ahead of the saw: does it run to the end, stop at a break through the slab, or stop "
      "by "
      "itself?",
      kMemory}},
    {Sentence::watch_block,
     {"Watch for small displacements of the block. Which load was it, and how much came away?", kFoehn}},
    {Sentence::watch_shear,
     {"Watch where it shears off, and how easily. Heights of several breaks all count.", kMemory}},
    {Sentence::say_depth,
     {"Measure how deep it broke, from the surface or from the ground, and say which.", kPractice}},
    {Sentence::say_how_it_broke,
     {"Look at the fracture: sudden (SP, SC), resistant (RP, PC) or an uneven break (BRK)? Or its quality, "
      "Q1 to "
      "Q3.",
      "van Herwijnen and Jamieson 2007 (abstract read)"}},
    {Sentence::say_crossing, {"Say whether the crack crossed the whole column.", kExtended}},
    {Sentence::say_release,
     {"Say how much of the block came away: the whole, most of it, or an edge.", kMemory}},
    {Sentence::say_ease, {"Say how easily it broke: very easy, easy, moderate or hard.", kMemory}},
    {Sentence::say_column_length, {"Say how long the column is, up the slope.", kMemory}},
    {Sentence::say_rule,
     {"The crack crossed one tap later. Say which rule you record by: crossing on the same tap, or on the "
      "next one "
      "as well. Both taps are kept.",
      "Swiss service (read): the same tap or the next; SWAG since 2016 (read: its list of changes): the "
      "same"}},
    {Sentence::depth_compression,
     {"Reaches layers down to 100 or 120 cm; little use for thin soft slabs right below the surface.",
      kCampbell}},
    {Sentence::depth_extended,
     {"Sources differ on how deep it reaches: 70, 100 or 120 cm. It does poorly in very soft storm snow.",
      "avalanche.org (read); course notes and a field note (read in a copy)"}},
    {Sentence::depth_saw, {"For a layer that is known already, at any depth.", kMemory}},
    {Sentence::depth_block,
     {"Tests layers deeper than skis sink in, down to about 100 cm below that.",
      "avalanche.org, rutschblock (read)"}},
    {Sentence::depth_deep_tap,
     {"For layers deeper than about 100 cm: how they break matters, the number of taps does not compare with "
      "other "
      "tests.",
      kDeepTap}},
    {Sentence::depth_shear, {"Finds layers; says nothing about the slab above them.", kMemory}},
};

}  // namespace

Words words_of(std::uint16_t sentence) {
  for (const Row& row : kRows) {
    if (static_cast<std::uint16_t>(row.sentence) == sentence) return row.words;
  }
  return {"", ""};
}

}  // namespace firn::recording
