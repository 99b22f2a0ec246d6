#include "note/words.h"

#include <cstddef>

#include "support/text.h"
#include "vocabulary/codes.h"

namespace firn::note {
namespace {

using firnbook::CautionKey;
using firnbook::ConcernRank;
using firnbook::FindingKey;
using firnbook::Method;
using firnbook::NextStep;
using firnbook::NotLoadedReason;
using firnbook::Verified;

template <class Key>
struct Row {
  Key key;
  std::string_view words;
};

// A criterion that is not met is never allowed to sound like a danger that went away.
constexpr Row<FindingKey> kFindings[] = {
    {FindingKey::sign_seen, "seen"},
    {FindingKey::sign_not_seen, "looked for, not seen; that is no proof that it cannot happen"},
    {FindingKey::sign_not_looked_for, "not looked for"},
    {FindingKey::sign_answer_unknown, "written down without saying whether it was seen"},
    {FindingKey::slide_seen, "recent slide"},
    {FindingKey::ct_sudden, "broke suddenly"},
    {FindingKey::ct_resistant, "broke, with resistance"},
    {FindingKey::ct_break, "an uneven break; it says little either way"},
    {FindingKey::ct_character_unknown, "broke; how it broke was not recorded"},
    {FindingKey::ct_quality_one, "broke clean and fast (Q1), which usually goes with a sudden fracture"},
    {FindingKey::ct_no_fracture, "loaded to the end, nothing broke: raised nothing under this test"},
    {FindingKey::ect_crossed_before_22,
     "the crack crossed the whole column before the 22nd tap: the most critical of the Swiss service's three "
     "classes"},
    {FindingKey::ect_crossed_from_22,
     "the crack crossed the whole column, from the 22nd tap on: the middle one of the Swiss service's three "
     "classes"},
    {FindingKey::ect_not_crossed,
     "cracked without crossing the column: raised nothing under the Swiss service's classes"},
    {FindingKey::ect_no_fracture,
     "loaded to the end, nothing broke: raised nothing under the Swiss service's classes"},
    {FindingKey::ect_crossed_tap_unknown,
     "the crack crossed the whole column; on which tap was not recorded"},
    {FindingKey::ect_in_ignored_top,
     "in the top of the snow that one version of the Swiss service's classes leaves out; it still broke"},
    {FindingKey::ect_crossing_unknown, "cracked; whether it crossed the column was not recorded"},
    {FindingKey::pst_propagation_likely,
     "cut less than half the column and the crack ran to the end: propagation likely"},
    {FindingKey::pst_criterion_not_met,
     "the criterion (cut under half the column, crack on to the end) is not met; it takes nothing away from "
     "what other findings raise"},
    {FindingKey::pst_no_fracture,
     "sawn to the end without a crack that ran by itself: raised nothing under this test"},
    {FindingKey::pst_unknown, "cut or ending not recorded: cannot be read"},
    {FindingKey::flag_grain_size, "grains {a:mm} mm (flag: over {b:mm} mm)"},
    {FindingKey::flag_hardness, "hardness {a:hardness} (flag: softer than {b:hardness})"},
    {FindingKey::flag_grain_form, "grain form {a:form} (flag: SH, FC or DH)"},
    {FindingKey::flag_size_difference, "grain sizes {a:mm} mm apart (flag: over {b:mm} mm)"},
    {FindingKey::flag_hardness_difference, "hardness {a:steps} steps apart (flag: over {b:steps})"},
    {FindingKey::flag_depth, "depth {a:cm} cm (flag: 20 to 85 cm)"},
    {FindingKey::flag_count, "{a} of 6 met"},
    {FindingKey::gradient_strong,
     "{a:degC} degC per metre between {depth:cm} and {b:cm} cm: steep enough for facets to grow (rule of "
     "thumb, "
     "10 degC per metre; in cold snow it can take more)"},
    {FindingKey::gradient_weak, "{a:degC} degC per metre between {depth:cm} and {b:cm} cm"},
    {FindingKey::test_recorded, "recorded; this version reads no class from it"},
    {FindingKey::test_not_valid, "not a valid test"},
    {FindingKey::test_fracture, "broke; this version reads no class from it"},
    {FindingKey::marked_by_observer, "marked by the observer as a layer of concern"},
#define WORDS(type, value, text) WORDS_##type(value, text)
#define WORDS_FindingKey(value, text) {FindingKey::value, text},
#define WORDS_Method(value, text)
#define WORDS_ConcernReading(value, text)
#define WORDS_ConcernReach(value, text)
#include "note/en_methods.def"
#undef WORDS_FindingKey
#undef WORDS_Method
#undef WORDS_ConcernReading
#undef WORDS_ConcernReach
};

constexpr Row<firnbook::ConcernReading> kReadings[] = {
#define WORDS_FindingKey(value, text)
#define WORDS_Method(value, text)
#define WORDS_ConcernReading(value, text) {firnbook::ConcernReading::value, text},
#define WORDS_ConcernReach(value, text)
#include "note/en_methods.def"
#undef WORDS_ConcernReading
#undef WORDS_ConcernReach
};

constexpr Row<firnbook::ConcernReach> kReaches[] = {
#define WORDS_ConcernReading(value, text)
#define WORDS_ConcernReach(value, text) {firnbook::ConcernReach::value, text},
#include "note/en_methods.def"
#undef WORDS_Method
};

// What a criterion is about, for the list of those that could not be judged.
constexpr Row<FindingKey> kFindingNames[] = {
    {FindingKey::flag_grain_size, "grain size"},
    {FindingKey::flag_hardness, "hardness"},
    {FindingKey::flag_grain_form, "grain form"},
    {FindingKey::flag_size_difference, "difference in grain size"},
    {FindingKey::flag_hardness_difference, "difference in hardness"},
    {FindingKey::flag_depth, "depth"},
};

constexpr Row<CautionKey> kCautions[] = {
    {CautionKey::sign_of_instability_seen,
     "A sign of instability was seen. It weighs more than any test result in this pit."},
    {CautionKey::signs_not_looked_for,
     "Not every sign of instability was looked for. What nobody looked for may still be there."},
    {CautionKey::probing_uneven,
     "The probe found from {a:cm} to {b:cm} cm around the pit: the snow varies a lot within a few steps."},
    {CautionKey::no_bulletin, "No bulletin was issued: no regional reading stands beside this pit."},
    {CautionKey::bulletin_not_looked_at,
     "The bulletin was not held beside this pit. Read it; where the two differ, take the more careful one."},
    {CautionKey::layer_reached_by_one_test_only, "The snow at {a:cm} cm was reached by one test only."},
    {CautionKey::layer_not_loaded, "The snow at {a:cm} cm was loaded by no test."},
    {CautionKey::test_not_valid,
     "A column was no valid test: it tells nothing about the layers it should have loaded."},
    {CautionKey::shallow_snow, "The snow is only {a:cm} cm deep here: a rider's load reaches every layer."},
    {CautionKey::no_tests, "No test was made in this pit."},
    {CautionKey::no_layers, "No layers were recorded: nothing can be said about structure."},
    {CautionKey::record_has_errors,
     "The record contradicts itself ({a} errors below): mend it before you lean on anything here."},
    {CautionKey::rests_on_unreliable, "Some findings rest on values that the observer marked as unreliable."},
    {CautionKey::practice_pit, "This pit is invented for practice. It must never be sent to a service."},
    {CautionKey::site_differs,
     "The site differs from the terrain in question: what was found here may be worse there."},
    {CautionKey::not_backfilled, "The pit was not filled in: somebody may fall into it."},
    {CautionKey::newer_schema,
     "The record was written by a newer version: some of what it says may be missing here."},
    {CautionKey::site_unknown,
     "Place, elevation or aspect is not recorded: nobody can tell where this holds."},
    {CautionKey::step_not_done, "A step that guards people was not done: {a:step}."},
    {CautionKey::step_not_ticked,
     "Nobody ticked a step that guards people: {a:step}. It may not have been done."},
    {CautionKey::one_pit_is_one_point,
     "One pit is one point. It can show that snow is unstable; it cannot show that a slope is not."},
    {CautionKey::snow_varies, "Snow varies within a few metres: the next pit may show something else."},
    {CautionKey::tests_miss,
     "Tests miss weak layers: on slopes known to be unstable, about one test in ten did not show it "
     "(Birkeland and Chabot 2006)."},
    {CautionKey::pit_is_of_its_time,
     "The pit tells of the hour it was dug. New snow, wind, sun and warmth change it."},
    {CautionKey::defer_to_bulletin_and_people,
     "The bulletin, local rules and trained people stand above this note."},
    {CautionKey::absence_is_no_proof,
     "What was not found, not tested or not looked for is not thereby absent."},
};

constexpr Row<NextStep> kSuggestions[] = {
    {NextStep::look_for_signs,
     "Look for whumpfs, cracking and recent slides; any one of them outweighs a test."},
    {NextStep::deep_tap_test,
     "A deep tap test on the snow at {depth:cm} cm: a sudden fracture there would raise it, anything else "
     "would "
     "leave it unknown."},
    {NextStep::saw_test, "A saw test at {depth:cm} cm: it shows whether a crack would run there."},
    {NextStep::extended_column,
     "An extended column test: it shows whether a crack at {depth:cm} cm crosses a column."},
    {NextStep::repeat_test, "Another column beside the first: one result at {depth:cm} cm may be chance."},
    {NextStep::look_at_crystals, "A look at the crystals at {depth:cm} cm with a loupe and a card."},
    {NextStep::probe_more, "More probing around the pit for even depth."},
    {NextStep::read_bulletin, "Read the region's bulletin and hold it beside this pit."},
};

constexpr Row<NotLoadedReason> kNotLoaded[] = {
    {NotLoadedReason::ended_above, "a fracture higher up ended the test"},
    {NotLoadedReason::beyond_useful_depth, "deeper than this test is useful"},
    {NotLoadedReason::not_valid, "the column was no valid test"},
    {NotLoadedReason::not_done, "not done in this pit"},
    {NotLoadedReason::other_layer, "made in another layer"},
    {NotLoadedReason::unknown, "what it loaded was not recorded"},
};

constexpr Row<Method> kMethods[] = {
    {Method::field_signs, "field signs (observation guidelines)"},
    {Method::compression_test, "compression test: taps and fracture character (OGRS, SWAG)"},
    {Method::extended_column_swiss, "extended column test: operational classes of the Swiss service (SLF)"},
    {Method::saw_test, "propagation saw test (Gauthier and Jamieson 2008)"},
    {Method::yellow_flags, "yellow flags (Jamieson and Schweizer 2005)"},
    {Method::temperature_gradient, "temperature gradient, 10 degC per metre (avalanche.org)"},
    {Method::unclassed_tests, "other tests, as recorded"},
#undef WORDS_ConcernReach
#define WORDS_ConcernReach(value, text)
#define WORDS_Method(value, text) {Method::value, text},
#include "note/en_methods.def"
#undef WORDS_Method
#undef WORDS_FindingKey
#undef WORDS_ConcernReading
#undef WORDS_ConcernReach
#undef WORDS
};

constexpr Row<Verified> kVerified[] = {
    {Verified::read, "read in the source"},
    {Verified::read_secondary, "read in a secondary source"},
    {Verified::memory, "thresholds from memory"},
    {Verified::practice, "common practice"},
};

constexpr Row<ConcernRank> kRanks[] = {
    {ConcernRank::propagated, "a crack ran here"},   {ConcernRank::sudden, "broke suddenly here"},
    {ConcernRank::broke, "something broke here"},    {ConcernRank::structure, "weak-looking structure"},
    {ConcernRank::little, "says little either way"},
};

template <class Key, std::size_t N>
std::string_view find(const Row<Key> (&rows)[N], Key key) {
  for (const Row<Key>& row : rows) {
    if (row.key == key) return row.words;
  }
  return {};
}

// Sixths of a step as a number of steps, to two decimals: 8 is 1.33.
void append_steps(std::string& out, std::int32_t sixths) {
  append_rounded(out, (std::int64_t{sixths} * 100000) / 6, 5, 2);
}

// What only the sentences of the methods hold; false for any other unit.
bool append_method_number(std::string& out, std::int32_t value, std::string_view unit) {
  if (unit == "class") {
    if (value == 0)
      out += '?';
    else
      append_integer(out, value);
  } else if (unit == "bits") {
    std::int32_t count = 0;
    for (std::int32_t bit = 0; bit < 8; ++bit) count += value >> bit & 1;
    append_integer(out, count);
  } else if (unit == "unknown") {
    if (value == 0) return true;
    out += ", ";
    append_method_number(out, value, "bits");
    out += " not known";
  } else if (unit == "index") {
    append_rounded(out, value, 3, 2);
  } else if (unit == "tenths" || unit == "kgm3") {
    append_rounded(out, value, 1, 0);
  } else if (unit == "mm_water") {
    append_rounded(out, value, 2, 0);
  } else if (unit == "test") {
    out.append(code_of(static_cast<firnbook::TestKind>(value)));
  } else if (unit == "thickness") {
    if (value == 0) {
      out += "of unknown thickness";
    } else {
      append_cm(out, value);
      out += " cm thick";
    }
  } else {
    return false;
  }
  return true;
}

void append_number(std::string& out, std::int32_t value, std::string_view unit) {
  if (unit == "cm") {
    append_cm(out, value);
  } else if (unit == "mm") {
    append_mm(out, value);
  } else if (unit == "degC") {
    append_rounded(out, value, 2, 1);
  } else if (unit == "steps") {
    append_steps(out, value);
  } else if (append_method_number(out, value, unit)) {
    return;
  } else if (unit == "hardness") {
    const std::string_view code = code_of(static_cast<firnbook::HandHardness>(value));
    if (code.empty()) {
      append_integer(out, value);
    } else {
      out.append(code);
    }
  } else if (unit == "step") {
    const std::string_view code = code_of(static_cast<firnbook::StepKind>(value));
    out.append(code.empty() ? std::string_view{"one that this version does not know"} : code);
  } else if (unit == "form") {
    const std::string_view code = code_of(static_cast<firnbook::GrainForm>(value));
    out.append(code.empty() ? std::string_view{"?"} : code);
  } else {
    append_integer(out, value);
  }
}

}  // namespace

std::string_view finding_words(FindingKey key) {
  return find(kFindings, key);
}
std::string_view finding_name(FindingKey key) {
  return find(kFindingNames, key);
}
std::string_view caution_words(CautionKey key) {
  return find(kCautions, key);
}
std::string_view suggestion_words(NextStep step) {
  return find(kSuggestions, step);
}
std::string_view not_loaded_words(NotLoadedReason reason) {
  return find(kNotLoaded, reason);
}
std::string_view method_words(Method method) {
  return find(kMethods, method);
}
std::string_view verified_words(Verified verified) {
  return find(kVerified, verified);
}
std::string_view reading_words(firnbook::ConcernReading reading) {
  return find(kReadings, reading);
}
std::string_view reach_words(firnbook::ConcernReach reach) {
  return find(kReaches, reach);
}
std::string_view rank_words(ConcernRank rank) {
  return find(kRanks, rank);
}

void append_template(std::string& out, std::string_view words, const Numbers& numbers) {
  while (!words.empty()) {
    const std::size_t open = words.find('{');
    if (open == std::string_view::npos) {
      out.append(words);
      return;
    }
    out.append(words.substr(0, open));
    const std::size_t close = words.find('}', open);
    if (close == std::string_view::npos) return;
    std::string_view name = words.substr(open + 1, close - open - 1);
    std::string_view unit;
    const std::size_t colon = name.find(':');
    if (colon != std::string_view::npos) {
      unit = name.substr(colon + 1);
      name = name.substr(0, colon);
    }
    const std::int32_t value = name == "depth" ? numbers.depth
                               : name == "a"   ? numbers.a
                               : name == "b"   ? numbers.b
                                               : numbers.c;
    append_number(out, value, unit);
    words.remove_prefix(close + 1);
  }
}

}  // namespace firn::note
