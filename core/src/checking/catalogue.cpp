// Every code: how grave, what it says, how to mend it, and where it comes from. CATALOGUE.md beside this file
// is made from here.
#include <cstddef>
#include <cstdint>

#include "checking/check.h"
#include "support/text.h"

namespace firn::checking {
namespace {

using firnbook::Check;
using firnbook::CheckCode;
using firnbook::Severity;

// In order of code.
constexpr Rule kRules[] = {
    {CheckCode::layer_without_top, Severity::warning, "the layer has no top, so it cannot be placed",
     "give the depth or height of its upper boundary", "practice: a layer is two boundaries"},
    {CheckCode::layer_without_bottom, Severity::hint,
     "the layer has no bottom, so its thickness is not known",
     "give the depth or height of its lower boundary, or leave it when the pit ended here",
     "practice: a layer is two boundaries"},
    {CheckCode::layer_upside_down, Severity::error,
     "the layer has no thickness: its top is given as {a:cm} cm, its bottom as {b:cm} cm",
     "correct one of the two, or swap them; depths grow downwards, heights grow upwards",
     "derived list of checks, ours: thickness is more than 0"},
    {CheckCode::layers_overlap, Severity::error,
     "the layer begins at {a:cm} cm, above {b:cm} cm where layers[{c:n}] ends",
     "correct one of the two boundaries", "derived list of checks, ours: layers do not overlap"},
    {CheckCode::gap_between_layers, Severity::warning,
     "nothing is recorded between {a:cm} and {b:cm} cm below the surface",
     "add the layer in between, or correct one of the two boundaries; a test profile may leave gaps",
     "derived list of checks, ours: layers are contiguous, a gap is a warning for a test profile"},
    {CheckCode::layer_below_ground, Severity::error,
     "the layer reaches {a:cm} cm below the surface, but HS is {b:cm} cm",
     "correct the boundary, or HS where the pit was dug",
     "derived list of checks, ours: depths lie inside HS"},
    {CheckCode::layers_do_not_reach_ground, Severity::error,
     "the pit was dug to the ground, but the lowest layer ends at {a:cm} cm and HS is {b:cm} cm",
     "add what lies below, correct HS, or say that the ground was not reached",
     "derived list of checks, ours: layers fill HS when dug to the ground"},
    {CheckCode::depth_datum_unknown, Severity::warning,
     "{a:n} depths do not say where they are counted from, the first is {b:cm} cm",
     "say for each: from the surface or from the ground",
     "schema: a depth without a datum stays unknown until someone says"},
    {CheckCode::depth_without_hs, Severity::warning,
     "{a:n} heights above the ground cannot be turned into depths, because HS is not given",
     "give HS at the pit", "schema: heights and depths meet through HS"},
    {CheckCode::depth_below_snow, Severity::error,
     "{a:cm} cm below the surface lies outside the snow: HS is {b:cm} cm",
     "correct the depth, or HS where the pit was dug", "derived list of checks, ours: depths lie inside HS"},
    {CheckCode::negative_depth, Severity::error,
     "{a:cm} cm lies outside the snow: depths and heights begin at 0",
     "correct the value, or say whether it was counted from the surface or from the ground",
     "derived list of checks, ours: depths lie inside HS"},
    {CheckCode::directions_mixed, Severity::warning,
     "{a:n} depths are measured in another direction than the rest of the pit, the first is {b:cm} cm",
     "measure all depths of a pit either vertically or at right angles to the slope; values of the other "
     "kind are left out of every comparison",
     "ICSSG 2009 (from memory): H is vertical, D is slope-normal"},
    {CheckCode::layers_out_of_order, Severity::hint,
     "from {a:cm} cm on, the layers are not listed from the surface down",
     "nothing has to be done: what counts is depth, not the order of the list",
     "practice: layers are listed from the surface down (from memory)"},
    {CheckCode::negative_hs, Severity::error, "HS is {a:cm} cm", "give the height of the snow, 0 for none",
     "definition: a height of snow begins at 0"},
    {CheckCode::first_layer_not_at_surface, Severity::warning,
     "the uppermost layer begins {a:cm} cm below the surface",
     "add what lies above it; a test profile may leave gaps",
     "derived list of checks, ours: layers are contiguous, a gap is a warning for a test profile"},
    {CheckCode::reading_upside_down, Severity::error,
     "the reading has no thickness: its top is given as {a:cm} cm, its bottom as {b:cm} cm",
     "correct one of the two, or swap them; depths grow downwards, heights grow upwards",
     "derived list of checks, ours: thickness is more than 0"},
    {CheckCode::size_not_positive, Severity::error, "a grain size of {a:mm} mm",
     "give the size in mm, or leave it out when it was not measured",
     "derived list of checks, ours: E is more than 0"},
    {CheckCode::size_impossible, Severity::warning, "a grain size of {a:mm} mm is more than {b:mm} mm",
     "check the unit: grain sizes are in mm", "derived list of checks, ours: E above 50 mm is a warning"},
    {CheckCode::size_max_below_size, Severity::error,
     "the largest grains ({b:mm} mm) are smaller than the average ({a:mm} mm)",
     "swap the two, or correct one", "derived list of checks, ours: E is not more than Emax"},
    {CheckCode::unknown_code, Severity::warning,
     "the code number {a:n} is not known to this version; it is kept and not interpreted",
     "read the pit with a newer version, or choose a code that is in the list",
     "schema: a reader keeps numbers it does not know"},
    {CheckCode::hardness_twice, Severity::warning,
     "the layer has one hardness for the whole and another for its top or bottom; those of the parts are "
     "used",
     "remove the one that does not hold",
     "practice: a change within a layer is written as top and bottom (from memory)"},
    {CheckCode::words_without_code, Severity::hint,
     "the layer is described in words without a grain form; the words may stand for {a:n} forms",
     "look at the crystals and choose the form, or leave the words",
     "practice: words and code stand side by side"},
    {CheckCode::ice_softer_than_knife, Severity::warning,
     "an ice formation is recorded softer than knife (K)", "check the hardness and the form",
     "derived list of checks, ours: IF with hardness below K"},
    {CheckCode::size_contradicts_form, Severity::warning,
     "{a:form} with a size of {b:mm} mm lies on the other side of {c:mm} mm, which parts it from its "
     "neighbour",
     "check the form and the size",
     "derived list of checks, ours, with limits of ICSSG 2009 (from memory): RGsr below 0.25 mm, RGlr from "
     "0.25 mm; PPgp and PPip to 5 mm, PPhl above"},
    {CheckCode::surface_hoar_thick, Severity::warning,
     "a layer of surface hoar {a:cm} cm thick is more than {b:cm} cm",
     "check the boundaries, or split the layer",
     "derived list of checks, ours: thicker than several cm; the number is ours"},
    {CheckCode::new_snow_hard, Severity::warning,
     "{a:form} as hard as a pencil or harder: new snow that keeps its crystals is soft",
     "check the hardness and the form; broken crystals are DF or RG",
     "ours: new snow of pencil hardness and more"},
    {CheckCode::crust_soft, Severity::warning, "a melt-freeze crust as soft as a fist",
     "check the hardness and the form; a crust that was wet when you felt it needs its wetness written down",
     "ours: a sheet stops four fingers"},
    {CheckCode::surface_facets_thick, Severity::warning,
     "a layer of near-surface facets {a:cm} cm thick is more than {b:cm} cm",
     "check the boundaries and the form; facets of a thick layer are FCso or FCxr",
     "derived list of checks, ours: thicker than several cm; the number is ours"},
    {CheckCode::size_class_contradicts_size, Severity::warning,
     "a size of {a:mm} mm does not belong to the class given, which goes from {b:mm} to {c:mm} mm",
     "correct the size or the class",
     "classes of ICSSG 2009 (from memory); both limits of a class are let pass"},
    {CheckCode::second_form_repeats_first, Severity::hint,
     "the second grain form is the first once more ({a:form})",
     "remove the second form, or choose the other that was seen",
     "practice: main form first, a second one in brackets"},
    {CheckCode::second_form_without_first, Severity::warning,
     "a second grain form ({a:form}) without a first", "move it to the first place",
     "practice: main form first, a second one in brackets"},
    {CheckCode::slush_not_soaked, Severity::warning, "slush (MFsl) whose snow is not even very wet",
     "check the form and the wetness: in slush the grains float in water",
     "ICSSG 2009 (from memory): slush is soaked"},
    {CheckCode::snow_above_freezing, Severity::error, "a snow temperature of {a:degC} degC",
     "check the sign and the thermometer (ice bath); snow is not warmer than 0 degC",
     "derived list of checks, ours: snow is at most 0 degC, up to +0.5 is a warning"},
    {CheckCode::snow_slightly_above_freezing, Severity::warning,
     "a snow temperature of {a:degC} degC is above 0",
     "check the thermometer in an ice bath and shade it near the surface",
     "derived list of checks, ours: up to +0.5 degC may be the instrument"},
    {CheckCode::wet_but_cold, Severity::warning,
     "the layer is recorded as moist or wetter, but it is no warmer than {a:degC} degC",
     "check the wetness and the temperatures; liquid water is at 0 degC",
     "derived list of checks, ours: wetness from M up with less than -0.5 degC"},
    {CheckCode::temperature_too_low, Severity::warning,
     "a snow temperature of {a:degC} degC is below {b:degC} degC", "check the decimal point",
     "ours: the coldest growth range named for crystals (from memory)"},
    {CheckCode::two_temperatures_at_one_depth, Severity::warning,
     "two temperatures at {a:cm} cm: {b:degC} and {c:degC} degC",
     "keep the one that holds, or mark the other as unreliable", "ours: one depth has one temperature"},
    {CheckCode::gradient_unusual, Severity::warning,
     "{a:degC} and {b:degC} degC lie {c:cm} cm apart: more than 10 degC in 10 cm",
     "check sign, decimal point and depth of both readings",
     "ours: a gradient above 100 degC/m over 10 cm or more"},
    {CheckCode::surface_temperature_contradicts_reading, Severity::warning,
     "the surface is given as {a:degC} degC, the reading at 0 cm as {b:degC} degC",
     "keep the one that was measured in the shade, or mark the other as unreliable",
     "ours: more than 2 degC between two values of one place"},
    {CheckCode::density_impossible, Severity::error, "a density of {a:kgm3} kg/m3 lies outside 10 to 917",
     "check the unit and the decimal point; densities are in kg/m3",
     "derived list of checks, ours: 10 to 917 kg/m3 (917 is ice)"},
    {CheckCode::density_unusual, Severity::warning,
     "a density of {a:kgm3} kg/m3 is unusual here, on the far side of {b:kgm3}",
     "check the weighing, the volume and the layer it was taken from",
     "derived list of checks, ours: PP above 300, IF below 600; below 30 or above 600 in seasonal snow"},
    {CheckCode::water_differs_from_densities, Severity::warning,
     "the water equivalent of the snow is given as {a:mm} mm, its densities add up to {b:mm} mm",
     "check the densities and their depths, and the stated water equivalent",
     "derived list of checks, ours: stated and summed water equivalent differ by more than 10 %"},
    {CheckCode::reading_across_layers, Severity::hint,
     "the sample from {a:cm} to {b:cm} cm reaches into the layer below, which begins at {c:cm} cm",
     "say which layer it was taken from, or take one for each", "practice: one sample, one layer"},
    {CheckCode::readings_overlap, Severity::warning,
     "the sample begins at {a:cm} cm, above {b:cm} cm where the one before it ends",
     "correct one of the two depths; a second sample of the same snow has the same depths",
     "ours: two samples of one profile share no snow unless they share all of it"},
    {CheckCode::new_snow_density_unusual, Severity::warning,
     "{a:mm} mm of water in {b:cm} cm of new snow is {c:kgm3} kg/m3, outside 10 to 300",
     "check both numbers and their units", "derived list of checks, ours: 10 kg/m3 at least, PP 300 at most"},
    {CheckCode::new_snow_deeper_than_snow, Severity::error,
     "{a:cm} cm of new snow are more than HS, {b:cm} cm",
     "correct one of the two; on a scoured place new snow is what lies there",
     "definition: new snow is a part of the snow"},
    {CheckCode::water_exceeds_ice, Severity::error,
     "{a:mm} mm of water in {b:cm} cm of snow is more than solid ice would hold",
     "check HS and the water equivalent, and their units", "definition: ice has 917 kg/m3"},
    {CheckCode::new_snow_negative, Severity::error, "a negative amount: {a:cm} cm",
     "give the amount, 0 for none", "definition: an amount begins at 0"},
    {CheckCode::tap_out_of_range, Severity::error,
     "tap {a:n} does not exist: taps are counted through from 1 to 30",
     "give the tap counted through (first tap from the elbow is 11, first from the shoulder is 21), or the "
     "outcome when nothing broke",
     "derived list of checks, ours; ten taps each from wrist, elbow and shoulder (avalanche.org, read)"},
    {CheckCode::band_contradicts_tap, Severity::error,
     "tap {a:n} does not belong to the letter it was recorded with",
     "E is taps 1 to 10, M is 11 to 20, H is 21 to 30, V is while cutting; correct the one that is wrong",
     "derived list of checks, ours; bands in a compression test (read in a secondary source)"},
    {CheckCode::crossing_before_crack, Severity::error,
     "the crack crossed on tap {b:n}, before it began on tap {a:n}", "swap the two taps, or correct one",
     "derived list of checks, ours: crossing tap is not before the first crack"},
    {CheckCode::crossing_contradicts_taps, Severity::error,
     "P or N contradicts the taps: first crack on tap {a:n}, across on tap {b:n}",
     "P is a crossing on the same tap, under some rules on the next one, never later; correct the letter or "
     "the taps",
     "Swiss service: same tap or one later (read); SWAG since 2016: same tap (read)"},
    {CheckCode::no_fracture_with_result, Severity::error,
     "the test ended without a fracture, but {a:n} fractures are recorded",
     "remove the fractures or correct the outcome",
     "derived list of checks, ours: CTN, ECTX, DTN and RB7 carry no tap and no character"},
    {CheckCode::fractured_without_fracture, Severity::warning,
     "something broke in the test, but no fracture is recorded",
     "add the fracture with its depth and load, or correct the outcome",
     "schema: outcome 'fractured' points to the fractures"},
    {CheckCode::fracture_without_depth, Severity::warning,
     "the fracture has no depth, so it belongs to no layer",
     "measure where it broke, from the surface or from the ground",
     "guidelines (from memory): a result is written with its depth"},
    {CheckCode::fracture_depth_datum_unknown, Severity::hint,
     "{a:cm} cm may be counted from the surface or from the ground; until someone says, it stays unknown",
     "ask the observer: from the surface (down) or from the ground (up)?",
     "schema: '@75' without a datum stays unknown until someone says"},
    {CheckCode::fracture_below_snow, Severity::error,
     "the fracture is recorded {a:cm} cm below the surface, but HS is {b:cm} cm",
     "correct the depth, or HS where the pit was dug",
     "derived list of checks, ours: test depth within HS; an error here because the record contradicts "
     "itself"},
    {CheckCode::fracture_far_from_layer_named, Severity::warning,
     "no layer of the form named with the test ({b:form}) lies within {c:cm} cm of {a:cm} cm",
     "check the depth of the fracture, the boundaries and the forms",
     "ours: depths are read to a centimetre, twice; derived list of checks, ours"},
    {CheckCode::saw_cut_longer_than_column, Severity::error,
     "the cut ({a:cm} cm) is longer than the column ({b:cm} cm)",
     "correct the one that is wrong: cut first, column second",
     "derived list of checks, ours: 0 < cut <= length"},
    {CheckCode::saw_cut_not_positive, Severity::error, "a cut of {a:cm} cm",
     "give how far the saw had cut when the crack ran", "derived list of checks, ours: 0 < cut <= length"},
    {CheckCode::saw_column_length_unusual, Severity::warning,
     "the column was {a:cm} cm long; for this layer {b:cm} cm is usual",
     "nothing has to be done when it was measured so; the result is not rejected",
     "guidelines (from memory): 100 cm, or the depth of the layer where that is more; 'about' (10 cm) is "
     "ours"},
    {CheckCode::rutschblock_step_out_of_range, Severity::error,
     "step {a:n} does not exist: something broke on step 1 to 6, and step 7 is no fracture",
     "correct the step, or give the outcome 'no fracture'", "rutschblock steps (from memory)"},
    {CheckCode::rutschblock_slope_too_gentle, Severity::warning,
     "a rutschblock on {a:n} degrees; it is meant for {b:n} degrees or more",
     "read it with care, and say so when a second person watched for small displacements (then 20 degrees)",
     "Foehn 1989 (read): 30 degrees; Jamieson and Johnston 1993 (read): 20 degrees with a second observer"},
    {CheckCode::test_depth_beyond_useful, Severity::warning,
     "a column test result {a:cm} cm deep is below the {b:cm} cm that such tests reach",
     "look at the layer with a deep tap test or a saw test",
     "Campbell on the compression test and avalanche.org on the extended column (read in secondary and "
     "primary sources): 100 to 120 cm"},
    {CheckCode::quality_on_extended_column, Severity::warning,
     "shear quality on {a:kind}: it is kept, and no method reads it",
     "nothing has to be done; leave it out when you record the next one",
     "SWAG since 2016 (read in its list of changes)"},
    {CheckCode::character_on_extended_column, Severity::warning,
     "fracture character on {a:kind}: it is kept, and no method reads it",
     "nothing has to be done; leave it out when you record the next one",
     "SWAG since 2016 (read in its list of changes)"},
    {CheckCode::not_valid_without_reason, Severity::warning,
     "the test was not valid, but the reason is not given",
     "say why: the shovel sank in, the column broke while cutting, the column was disturbed, the loading "
     "went wrong, too gentle a slope",
     "schema: a test that was not valid, and why"},
    {CheckCode::test_without_result, Severity::warning, "the test has no result",
     "add the fractures, or the outcome: no fracture, not valid",
     "guidelines (from memory): nothing found is a result and is written down"},
    {CheckCode::crossing_unknown, Severity::warning,
     "whether the crack crossed the extended column is not recorded",
     "add P or N, or the tap on which it had crossed", "practice: crossing is what this test is made for"},
    {CheckCode::crossing_depends_on_rule, Severity::warning,
     "the crack began on tap {a:n} and had crossed on tap {b:n}: P under one rule, N under the other",
     "say which rule the letter follows; both taps are kept",
     "Swiss service: same tap or one later (read); SWAG since 2016: same tap (read)"},
    {CheckCode::saw_stopped_at_full_cut, Severity::warning,
     "the crack is recorded as stopped (SF or Arr), but the saw had cut the whole column ({a:cm} cm)",
     "check the cut and the ending", "derived list of checks, ours: SF or Arr with cut = length"},
    {CheckCode::extended_column_deep, Severity::hint,
     "an extended column result {a:cm} cm deep: sources disagree how deep this test reaches (120, 100 or "
     "{b:cm} cm)",
     "a saw test reaches such layers as well",
     "avalanche.org: 120 cm (read); course notes: 100 cm and field notes: 70 cm (read in secondary sources)"},
    {CheckCode::fracture_away_from_boundaries, Severity::warning,
     "the fracture at {a:cm} cm lies in the middle of a layer from {b:cm} to {c:cm} cm",
     "look for a thin layer or a boundary there, or correct the depth",
     "derived list of checks, ours: a test result lies near a boundary or in a thin layer; within 2 cm is "
     "ours"},
    {CheckCode::test_without_kind, Severity::warning, "what kind of test this was is not recorded",
     "choose the kind, or 'other' with words", "schema: a result means something only with its test"},
    {CheckCode::saw_length_missing, Severity::hint,
     "the cut or the length of the column is missing, so the share that was cut is not known",
     "give both: cut first, column second",
     "Gauthier and Jamieson 2008 (from memory): the cut is judged as a share of the column"},
    {CheckCode::fracture_without_load, Severity::warning, "under which load it broke is not recorded",
     "give the tap or the letter (V, E, M, H); for a rutschblock the step",
     "guidelines (from memory): a result is written with its score"},
    {CheckCode::column_size_unusual, Severity::warning,
     "the column measures {a:cm} cm where this test has {b:cm} cm",
     "check the number; a result from another size of column stands for itself",
     "CT and DT 30 x 30, ECT 90 x 30 cm (avalanche.org, read), RB 200 x 150 cm (Foehn 1989, read), ST and "
     "width of PST (from memory); a fifth off is ours"},
    {CheckCode::rutschblock_above_penetration, Severity::warning,
     "broken at {a:cm} cm, above {b:cm} cm where the skis came to rest",
     "check both depths: the block is not loaded above the skis",
     "avalanche.org, rutschblock (read): only layers deeper than ski penetration"},
    {CheckCode::rutschblock_beyond_useful, Severity::warning,
     "broken at {a:cm} cm, more than 1 m below the skis at {b:cm} cm",
     "keep the result; a saw test tells more about such depths",
     "avalanche.org, rutschblock (read): within about 1 m below ski penetration"},
    {CheckCode::deep_tap_shallow, Severity::hint,
     "a deep tap test on a layer at {a:cm} cm: it is made for layers deeper than about {b:cm} cm",
     "make a compression test as well, which keeps the slab", "avalanche.org, deep tap test (read)"},
    {CheckCode::deep_tap_slab_unusual, Severity::warning,
     "{a:cm} cm of snow were left above the layer where {b:cm} cm are usual",
     "check the number; the taps count for another slab",
     "avalanche.org, deep tap test (read): 15 cm; \"about\" is ours, 5 cm"},
    {CheckCode::slab_very_soft, Severity::hint,
     "all the snow above {b:cm} cm is as soft as a fist: {a:kind} tells little there",
     "shake or tilt the block and look for cracking on steep little slopes; keep the result",
     "avalanche.org (read): ECT, poor in very soft storm snow; Campbell (secondary): CT, under thin soft "
     "slabs near the surface"},
    {CheckCode::release_missing, Severity::hint,
     "how much of the block came away on step {a:n} is not recorded",
     "write WB, MB or EB: the class turns on it", "Swiss service, rutschblock classes (read): steps 3 and 5"},
    {CheckCode::jump_out_of_range, Severity::warning, "jump {a:n} on step {b:n}",
     "jumps belong to steps 4 to 6 and are counted from 1 to 3; correct step or jump",
     "guidelines (from memory)"},
    {CheckCode::result_of_another_test, Severity::warning, "{a:kind} has no such result",
     "correct the kind of test, or remove what belongs to another",
     "schema: which result belongs to which test"},
    {CheckCode::rutschblock_slope_unknown, Severity::hint, "the slope under the rutschblock is not recorded",
     "measure it: the test wants 30 degrees", "Foehn 1989 (read)"},
    {CheckCode::unbroken_contradicts_fracture, Severity::error,
     "the snow at {a:cm} cm is named as unbroken and as broken in one test", "remove one of the two",
     "definition: a layer broke or it did not"},
    {CheckCode::fracture_below_column, Severity::error,
     "broken at {a:cm} cm in a column that was cut to {b:cm} cm", "correct one of the two depths",
     "definition: what was not cut free was not tested"},
    {CheckCode::taps_given_contradict, Severity::error,
     "{a:n} taps were given in all, but something broke on tap {b:n}", "correct one of the two",
     "definition: a tap that was not given breaks nothing"},
    {CheckCode::stopped_early, Severity::hint, "tapping ended after {a:n} of 30 taps without a fracture",
     "tap on to 30 next time; what the others would have broken is not known",
     "guidelines: 30 taps (avalanche.org, read)"},
    {CheckCode::saw_end_missing, Severity::warning, "how the crack ended is not recorded",
     "write End, Arr or SF: without it the test cannot be read",
     "FieldBook (secondary): result words of the saw test"},
    {CheckCode::probing_uneven, Severity::warning,
     "the probe went in {a:cm} to {b:cm} cm around the pit, {c:cm} cm on average: the depth is uneven here",
     "probe a wider area and dig where the depth is even, or name what lies below; layers and tests differ "
     "from step to step in such a place",
     "ours: more than 20 % of the mean and more than 10 cm; no published limit is known, common practice "
     "wants even depth"},
    {CheckCode::probes_too_few, Severity::hint, "{a:n} probe strikes are recorded",
     "probe around the pit before digging, three times at least",
     "ours (the number); practice: probe first for even depth and hidden objects (from memory)"},
    {CheckCode::hs_differs_from_probes, Severity::warning,
     "HS is {a:cm} cm, but the probe went in {b:cm} to {c:cm} cm around the pit", "check HS and the strikes",
     "ours: more than 10 cm outside the strikes"},
    {CheckCode::slope_out_of_range, Severity::error, "a slope of {a:n} degrees",
     "give degrees from 0 (flat) to 90", "derived list of checks, ours: slope 0 to 90"},
    {CheckCode::aspect_out_of_range, Severity::error, "a direction of {a:n} degrees",
     "give degrees clockwise from true north, 0 to 360", "definition: a full circle"},
    {CheckCode::aspect_on_flat_ground, Severity::warning, "flat ground has no aspect",
     "remove the aspect (n/a), or give the slope",
     "derived list of checks, ours: no aspect where the slope is 0"},
    {CheckCode::time_without_offset, Severity::error, "the time has no offset from UTC",
     "add the offset of the clock that was read, such as -07:00",
     "derived list of checks, ours: a time has an offset; RFC 3339"},
    {CheckCode::coordinates_out_of_range, Severity::error,
     "{a:e7deg} degrees lies outside -{b:e7deg} to {b:e7deg}",
     "give decimal degrees (WGS 84), latitude first", "WGS 84 (from memory)"},
    {CheckCode::layer_named_after_the_pit, Severity::error,
     "the date in the layer's name is {a:n} days after the pit",
     "correct the date of the layer or of the pit",
     "derived list of checks, ours: a layer is not buried after the pit"},
    {CheckCode::time_missing, Severity::warning, "the pit has no time",
     "give date and time with the offset from UTC: a pit is of its time",
     "practice: age and place come first"},
    {CheckCode::elevation_out_of_range, Severity::error, "an elevation of {a:m} m",
     "check the unit: elevations are in metres above sea level", "ours: no land lies outside -500 to 9000 m"},
    {CheckCode::point_contradicts_degrees, Severity::warning,
     "{a:n} degrees is not in the sector of the point given, whose middle is {b:n} degrees",
     "correct one of the two; degrees count clockwise from true north",
     "CAAML bulletins: a point is a sector of 45 degrees (read)"},
    {CheckCode::offset_out_of_range, Severity::error, "an offset of {a:n} minutes from UTC",
     "give an offset below 24 hours", "RFC 3339 (from memory)"},
    {CheckCode::coordinate_missing, Severity::warning, "one of latitude and longitude is missing",
     "give both, or neither", "definition: a position has two coordinates"},
    {CheckCode::time_ends_before_begin, Severity::error, "the time ends before it begins",
     "swap begin and end, or correct one", "definition: a stretch of time"},
    {CheckCode::probe_negative, Severity::error, "a probe strike of {a:cm} cm",
     "give the depth of the snow under the probe, 0 for none", "definition: a depth of snow begins at 0"},
    {CheckCode::changed_before_dug, Severity::error,
     "the record was reported or changed before the pit was dug",
     "correct one of the two times, or the clock", "definition: first the pit, then the record"},
    {CheckCode::layer_formed_after_the_pit, Severity::error,
     "the layer is said to have formed {a:n} days after the pit",
     "correct the date of the layer or of the pit", "definition: a layer is not younger than the pit"},
    {CheckCode::wind_contradicts_itself, Severity::warning,
     "a wind speed of {b:ms} m/s does not belong to the wind class given", "check both; speeds are in m/s",
     "wind classes of the guidelines (from memory), 1 m/s wider where two meet"},
    {CheckCode::calm_with_direction, Severity::warning, "the wind is calm, but has a direction",
     "remove the direction, or give the class", "practice: calm air comes from nowhere"},
    {CheckCode::wind_speed_negative, Severity::error, "a wind speed of {a:ms} m/s",
     "give the speed in m/s, 0 for calm", "definition: a speed begins at 0"},
    {CheckCode::precipitation_from_clear_sky, Severity::warning,
     "precipitation is recorded under a clear sky", "check both; ice crystals (IC) alone fall without clouds",
     "ours: rain and snow fall from clouds"},
    {CheckCode::air_temperature_out_of_range, Severity::warning, "an air temperature of {a:degC} degC",
     "check sign and decimal point", "ours: -60 to 40 degC"},
    {CheckCode::ski_sinks_deeper_than_foot, Severity::warning, "skis sink in {a:cm} cm and a foot {b:cm} cm",
     "swap the two, or correct one: a ski carries more than a foot", "practice: PS is not more than PF"},
    {CheckCode::penetration_below_snow, Severity::error, "{a:cm} cm of penetration in {b:cm} cm of snow",
     "correct one of the two", "definition: nothing sinks below the ground"},
    {CheckCode::penetration_negative, Severity::error, "a penetration of {a:cm} cm",
     "give the depth, 0 for none", "definition: a depth begins at 0"},
    {CheckCode::signs_not_looked_for, Severity::hint,
     "not looked for: {a:sign}; that is not the same as not there",
     "look on the way on, and write down what you saw",
     "practice: signs of instability come before any test"},
    {CheckCode::line_not_understood, Severity::warning,
     "line {a:n} of the notes was not understood; it is kept as it stands",
     "write it as the notes describe, or keep it as a remark", "ours: no line is dropped"},
    {CheckCode::not_backfilled, Severity::hint, "the pit was not filled in",
     "fill it in, so that nobody falls in and the snow is not left open", "common practice (from memory)"},
    {CheckCode::signs_not_recorded, Severity::hint,
     "nothing is recorded about signs of instability; that is not the same as none",
     "write down for whumpfs, cracking and slides: yes, no or not looked for",
     "practice: signs of instability come before any test"},
    {CheckCode::sign_without_answer, Severity::warning,
     "a sign of instability without its kind or its answer",
     "say which sign it is: yes, no or not looked for", "schema: not looked for and no are two answers"},
    {CheckCode::slides_contradict_sign, Severity::error,
     "the answer for {a:sign} is no, but {b:n} of them stand in the record",
     "correct the answer, or remove slides that were not seen", "ours: the record contradicts itself"},
    {CheckCode::edits_not_read, Severity::warning,
     "the journal of this pit holds {a:n} changes that a newer version wrote; what they say is missing here",
     "open the journal with a newer version and make the pit again",
     "ours: what is missing is said, never left out in silence"},
    {CheckCode::length_without_sign, Severity::warning,
     "a length of {b:cm} cm stands beside {a:sign}, whose answer is not yes",
     "correct the answer or remove the length", "ours: what was measured was seen"},
    {CheckCode::sign_answered_twice, Severity::warning, "two answers for {a:sign} contradict each other",
     "keep one of the two; when in doubt the one that was seen", "ours: one question has one answer"},
    {CheckCode::slide_size_out_of_range, Severity::warning, "a size of {a:tenths} for a slide",
     "give a size from 1 to 5 by what it can destroy", "scales of avalanche size (from memory): 1 to 5"},
    {CheckCode::slide_age_negative, Severity::error,
     "a slide that will come down {a:n} minutes after the pit", "give how old it was when the pit was dug",
     "definition: an age begins at 0"},
    {CheckCode::aspect_said_same_but_apart, Severity::warning,
     "the aspects are {a:n} and {b:n} degrees, which is more than the word beside them says",
     "correct a number, or choose another word",
     "ours: \"same\" is 45 degrees apart at the most, \"similar\" 90"},
    {CheckCode::elevation_said_same_but_apart, Severity::warning,
     "the elevations are {a:m} and {b:m} m, which is more than the word beside them says",
     "correct a number, or choose another word",
     "ours: \"same\" is 200 m apart at the most, \"similar\" 400 m"},
    {CheckCode::incline_said_same_but_apart, Severity::warning,
     "the slopes are {a:n} and {b:n} degrees, which is more than the word beside them says",
     "correct a number, or choose another word",
     "ours: \"same\" is 10 degrees apart at the most, \"similar\" 20"},
    {CheckCode::interest_steeper, Severity::hint,
     "the terrain in question is {a:n} degrees steep, the pit {b:n}",
     "bear in mind that what broke hard here may break with less there",
     "Jamieson and Johnston 1993 (from memory): a rutschblock score falls by about one for ten degrees"},
    {CheckCode::interest_without_comparison, Severity::hint,
     "the terrain in question is named, but nothing says how this place compares with it",
     "write for aspect, elevation, wind loading and incline: same, similar, different, less or more",
     "practice: a pit speaks for terrain like its own (Campbell, secondary)"},
    {CheckCode::site_cannot_be_compared, Severity::warning,
     "the terrain in question has this value, the pit has none",
     "give it for the pit: nobody can tell whether the two are alike",
     "practice: a pit speaks for terrain like its own (Campbell, secondary)"},
    {CheckCode::less_loaded_than_interest, Severity::hint,
     "the pit has less wind-drifted snow than the terrain in question",
     "expect a thicker slab there, and layers at other depths",
     "practice: wind loading is one of the properties that must match (Campbell, secondary)"},
    {CheckCode::purpose_layers, Severity::hint, "{a:purpose} without layers",
     "write the layers, if only the slab, the weak layer and what it lies on",
     "common practice, after the contents that guidelines give such a pit (from memory)"},
    {CheckCode::purpose_hardness, Severity::hint, "{b:n} layers of {a:purpose} have no hardness",
     "feel them with fist, four fingers, finger, pencil and knife",
     "common practice, after the contents that guidelines give such a pit (from memory)"},
    {CheckCode::purpose_forms, Severity::hint, "{b:n} layers of {a:purpose} have no grain form",
     "look at the crystals, or write their words",
     "common practice, after the contents that guidelines give such a pit (from memory)"},
    {CheckCode::purpose_sizes, Severity::hint, "{b:n} layers of {a:purpose} have no grain size",
     "measure the grains on a crystal card",
     "common practice, after the contents that guidelines give such a pit (from memory)"},
    {CheckCode::purpose_wetness, Severity::hint, "{b:n} layers of {a:purpose} have no wetness",
     "squeeze a handful: D, M, W, V or S",
     "common practice, after the contents that guidelines give such a pit (from memory)"},
    {CheckCode::purpose_temperatures, Severity::hint, "{a:purpose} without temperatures",
     "measure them every 10 cm, from the surface down",
     "common practice, after the contents that guidelines give such a pit (from memory)"},
    {CheckCode::purpose_tests, Severity::hint, "{a:purpose} without a valid test",
     "make a compression test, or write why none was made",
     "common practice, after the contents that guidelines give such a pit (from memory)"},
    {CheckCode::purpose_hs, Severity::hint, "{a:purpose} without the height of the snow",
     "give HS at the pit",
     "common practice, after the contents that guidelines give such a pit (from memory)"},
    {CheckCode::purpose_elevation, Severity::hint, "{a:purpose} without an elevation",
     "give metres above sea level",
     "common practice, after the contents that guidelines give such a pit (from memory)"},
    {CheckCode::purpose_aspect, Severity::hint, "{a:purpose} without an aspect",
     "give the way the slope faces",
     "common practice, after the contents that guidelines give such a pit (from memory)"},
    {CheckCode::purpose_slope, Severity::hint, "{a:purpose} without the steepness of the slope",
     "give whole degrees, 0 for flat",
     "common practice, after the contents that guidelines give such a pit (from memory)"},
    {CheckCode::purpose_observers, Severity::hint, "{a:purpose} without an observer",
     "give initials, the lead first",
     "common practice, after the contents that guidelines give such a pit (from memory)"},
    {CheckCode::purpose_weather, Severity::hint, "{a:purpose} without the weather",
     "give sky, precipitation, wind and air temperature",
     "common practice, after the contents that guidelines give such a pit (from memory)"},
    {CheckCode::purpose_place, Severity::hint, "{a:purpose} without a place",
     "give latitude and longitude, or the region",
     "common practice, after the contents that guidelines give such a pit (from memory)"},
    {CheckCode::purpose_sharing, Severity::hint,
     "{a:purpose} whose observer has not agreed that a service may have it",
     "ask, and set who may see the record",
     "common practice, after the contents that guidelines give such a pit (from memory)"},
    {CheckCode::purpose_slides, Severity::hint, "{a:purpose} without the slide",
     "record the slide: kind, trigger, size, when",
     "common practice, after the contents that guidelines give such a pit (from memory)"},
    {CheckCode::practice_for_service, Severity::error,
     "an invented pit for practice is marked as a report to a service",
     "change the purpose: practice pits are never sent",
     "ours: what is invented must not pass for an observation"},
    {CheckCode::temperatures_far_apart, Severity::hint,
     "{a:n} gaps between temperatures are wider than 20 cm, the first is {b:cm} cm",
     "measure every 10 cm near the surface and near crusts, every 20 cm lower down",
     "guidelines (from memory); every 10 cm (secondary)"},
    {CheckCode::saw_ends_not_recorded, Severity::hint,
     "how the ends of the column were cut is not recorded for {a:n} saw tests",
     "write vertical or at right angles to the slope: the second gives up to half shorter cuts",
     "NHESS 25:321, 2025 (read)"},
};
constexpr std::size_t kRuleCount = sizeof kRules / sizeof kRules[0];

// Where each code stands, counted from 1; 0 for numbers that are no code.
constexpr std::size_t kCodes = static_cast<std::size_t>(CheckCode::MAX) + 1;
static_assert(kRuleCount <= UINT8_MAX, "a position needs more bits");
struct Positions {
  std::uint8_t of[kCodes];
};
constexpr Positions find_positions() {
  Positions positions = {};
  for (std::size_t i = 0; i < kRuleCount; ++i)
    positions.of[static_cast<std::size_t>(kRules[i].code)] = static_cast<std::uint8_t>(i + 1);
  return positions;
}
constexpr Positions kPositions = find_positions();

using Append = void (*)(std::string&, std::int32_t);

void append_number(std::string& out, std::int32_t value) {
  append_integer(out, value);
}
template <int Decimals>
void append_scaled(std::string& out, std::int32_t value) {
  append_fixed(out, value, Decimals);
}
// A name of the schema, or the number where this version knows none.
void append_name(std::string& out, const char* name, std::int32_t value) {
  if (name[0] == '\0') return append_integer(out, value);
  for (; *name != '\0'; ++name) out += *name == '_' ? ' ' : *name;
}
template <class E>
E enumerator(std::int32_t value) {
  return static_cast<E>(value >= 0 && value <= UINT8_MAX ? value : UINT8_MAX);
}
void append_form(std::string& out, std::int32_t value) {
  append_name(out, firnbook::EnumNameGrainForm(enumerator<firnbook::GrainForm>(value)), value);
}
void append_kind(std::string& out, std::int32_t value) {
  append_name(out, firnbook::EnumNameTestKind(enumerator<firnbook::TestKind>(value)), value);
}
void append_purpose(std::string& out, std::int32_t value) {
  out += "a pit of the kind \"";
  append_name(out, firnbook::EnumNamePurpose(enumerator<firnbook::Purpose>(value)), value);
  out += '"';
}
void append_sign(std::string& out, std::int32_t value) {
  append_name(out, firnbook::EnumNameSignKind(enumerator<firnbook::SignKind>(value)), value);
}

struct Unit {
  std::string_view name;
  Append append;
};
constexpr Unit kUnits[] = {
    {"n", append_number},         {"cm", append_scaled<3>},   {"mm", append_scaled<2>},
    {"m", append_scaled<5>},      {"degC", append_scaled<2>}, {"kgm3", append_scaled<1>},
    {"e7deg", append_scaled<7>},  {"ms", append_scaled<2>},   {"form", append_form},
    {"kind", append_kind},        {"sign", append_sign},      {"purpose", append_purpose},
    {"tenths", append_scaled<1>},
};

std::int32_t argument(const Check& check, char name) {
  return name == 'a' ? check.a() : name == 'b' ? check.b() : check.c();
}

// `field` is what stands between the braces: a letter, a colon and a unit.
void append_field(std::string& out, std::string_view field, const Check& check) {
  for (const Unit& unit : kUnits) {
    if (field.substr(2) == unit.name) return unit.append(out, argument(check, field[0]));
  }
}

void append_filled(std::string& out, std::string_view text, const Check& check) {
  while (!text.empty()) {
    const std::size_t open = text.find('{');
    out.append(text.substr(0, open));
    if (open == std::string_view::npos) return;
    const std::size_t close = text.find('}', open);
    append_field(out, text.substr(open + 1, close - open - 1), check);
    text.remove_prefix(close + 1);
  }
}

}  // namespace

const Rule* all_rules(std::size_t& count) {
  count = kRuleCount;
  return kRules;
}

const Rule* find_rule(CheckCode code) {
  const auto number = static_cast<std::size_t>(code);
  if (number >= kCodes || kPositions.of[number] == 0) return nullptr;
  return &kRules[kPositions.of[number] - 1];
}

void append_message(std::string& out, const Check& check) {
  if (const Rule* rule = find_rule(check.code())) return append_filled(out, rule->message, check);
  out += "check ";
  append_integer(out, static_cast<std::int64_t>(check.code()));
  out += " of a newer version";
}

void append_remedy(std::string& out, const Check& check) {
  if (const Rule* rule = find_rule(check.code())) return append_filled(out, rule->remedy, check);
  out += "read the report with a newer version";
}

}  // namespace firn::checking
