// Every threshold: what it is, how far it may be changed, where it comes from and how that is known. "From
// memory" means that no text was at hand that shows the number.
#include "interpretation/interpret.h"
#include "support/text.h"

namespace firn::interpretation {
namespace {

using firnbook::Method;
using firnbook::ParameterKey;
using firnbook::Verified;

constexpr Parameters kDefaults;

#define FIRN_PARAMETER(name, method, verified, least, most, unit, source)                                \
  {                                                                                                      \
    ParameterKey::name, Method::method, Verified::verified, &Parameters::name, least, most, #name, unit, \
        source                                                                                           \
  }

constexpr Parameter kParameters[] = {
    FIRN_PARAMETER(tolerance_10um, none, practice, 500, 10000, "10 um",
                   "ours: half the height of a hand, since depths are read to a centimetre; fractures, "
                   "boundaries and layers this close are one place"),
    FIRN_PARAMETER(ect_last_tap_of_lower_class, extended_column_swiss, read, 0, 30, "taps",
                   "Swiss service (SLF), operational classes: crossed before the 22nd tap"),
    FIRN_PARAMETER(
        ect_taps_to_cross, extended_column_swiss, read, 0, 30, "taps",
        "Swiss service (SLF): the far end is reached on the tap of the first crack or at most one tap "
        "later; 0 is the narrower rule of the same tap"),
    FIRN_PARAMETER(
        ect_ignored_top_10um, extended_column_swiss, read, 0, 100000, "10 um",
        "one of two versions of the Swiss service's page leaves fractures in the top 10 cm out; 0 = "
        "off, which is more careful. Also for its rutschblock classes"),
    FIRN_PARAMETER(
        ect_three_last_tap, extended_column_schemes, memory, 0, 30, "taps",
        "Winkler and Schweizer 2009: ECTP up to 21 (read in an article that cites them; three classes "
        "from memory)"),
    FIRN_PARAMETER(ect_four_last_tap_one, extended_column_schemes, memory, 0, 30, "taps",
                   "Techel and others 2020, class 1: ECTP up to 13 (from memory)"),
    FIRN_PARAMETER(
        ect_four_last_tap_two, extended_column_schemes, memory, 0, 30, "taps",
        "Techel and others 2020, class 2: ECTP 14 to 22 (from memory; the Swiss operational classes "
        "put 22 with the taps above it)"),
    FIRN_PARAMETER(
        ect_four_last_tap_not_crossed, extended_column_schemes, memory, 0, 30, "taps",
        "Techel and others 2020, class 3: ECTN up to 10 (from memory; avalanche.org says below 10)"),
    FIRN_PARAMETER(ect_early_below_tap, extended_column_early, read, 1, 31, "taps",
                   "avalanche.org: ECTN below 10 taps is a caution sign"),
    FIRN_PARAMETER(ect_long_column_10um, extended_column_several, read, 100000, 1000000, "10 um",
                   "Bair and others 2014, abstract: columns of 2 m"),
    FIRN_PARAMETER(pst_percent, saw_test, memory, 1, 100, "percent",
                   "Gauthier and Jamieson 2008: cut shorter than half the column, strictly (from memory)"),
    FIRN_PARAMETER(pst_usual_length_10um, saw_test, memory, 10000, 1000000, "10 um",
                   "guidelines: 1 m up the slope, or as long as the layer is deep when that is more (from "
                   "memory; field data agree)"),
    FIRN_PARAMETER(rb_least_slope_deg, rutschblock_swiss, read, 0, 90, "degrees",
                   "Foehn 1989: 30 degrees and more"),
    FIRN_PARAMETER(rb_least_slope_observed_deg, rutschblock_swiss, read, 0, 90, "degrees",
                   "Jamieson and Johnston 1993, abstract: 20 degrees when a second person watches"),
    FIRN_PARAMETER(rb_reach_below_skis_10um, rutschblock_swiss, read, 0, 1000000, "10 um",
                   "avalanche.org: layers deeper than ski penetration and within about 1 m below it"),
    FIRN_PARAMETER(flag_size_10um, yellow_flags, memory, 0, 10000, "10 um",
                   "Jamieson and Schweizer 2005: grains larger than 1 mm (limit and operator from memory)"),
    FIRN_PARAMETER(flag_hardness_sixths, yellow_flags, memory, 0, 37, "sixths of a step",
                   "Jamieson and Schweizer 2005: softer than 1F (from memory)"),
    FIRN_PARAMETER(flag_size_difference_10um, yellow_flags, memory, 0, 10000, "10 um",
                   "Jamieson and Schweizer 2005: more than 0.5 mm apart (from memory)"),
    FIRN_PARAMETER(flag_hardness_difference_sixths, yellow_flags, memory, 0, 36, "sixths of a step",
                   "Jamieson and Schweizer 2005: more than one step apart (from memory)"),
    FIRN_PARAMETER(flag_depth_from_10um, yellow_flags, memory, 0, 1000000, "10 um",
                   "Jamieson and Schweizer 2005: 20 to 85 cm (from memory)"),
    FIRN_PARAMETER(flag_depth_to_10um, yellow_flags, memory, 0, 1000000, "10 um",
                   "Jamieson and Schweizer 2005: 20 to 85 cm (from memory)"),
    FIRN_PARAMETER(flag_warning_count, yellow_flags, memory, 1, 6, "flags",
                   "5 or 6 of 6 is the usual warning level (from memory)"),
    FIRN_PARAMETER(sum_size_difference_10um, threshold_sum, memory, 0, 10000, "10 um",
                   "Schweizer and Jamieson 2007: 0.75 mm and more apart (from memory)"),
    FIRN_PARAMETER(sum_size_10um, threshold_sum, memory, 0, 10000, "10 um",
                   "Schweizer and Jamieson 2007: grains of 1.25 mm and more (from memory)"),
    FIRN_PARAMETER(
        sum_hardness_difference_tenths, threshold_sum, memory, 0, 60, "tenths of a step",
        "Schweizer and Jamieson 2007: 1.7 steps and more apart (from memory); ours: compared after "
        "rounding to one decimal, so that 5/3 meets it"),
    FIRN_PARAMETER(sum_hardness_tenths, threshold_sum, memory, 0, 60, "tenths of a step",
                   "Schweizer and Jamieson 2007: hardness 1.3 and less (from memory); ours: compared after "
                   "rounding to one decimal, so that 4/3 meets it"),
    FIRN_PARAMETER(sum_depth_from_10um, threshold_sum, memory, 0, 1000000, "10 um",
                   "Schweizer and Jamieson 2007: 18 to 94 cm (from memory)"),
    FIRN_PARAMETER(sum_depth_to_10um, threshold_sum, memory, 0, 1000000, "10 um",
                   "Schweizer and Jamieson 2007: 18 to 94 cm (from memory)"),
    FIRN_PARAMETER(sum_warning_count, threshold_sum, memory, 1, 6, "criteria",
                   "Schweizer and Jamieson 2007: 5 and more potentially unstable (from memory)"),
    FIRN_PARAMETER(lemon_depth_10um, lemons, memory, 0, 1000000, "10 um",
                   "McCammon and Schweizer 2002: within 1 m of the surface (from memory)"),
    FIRN_PARAMETER(lemon_thickness_10um, lemons, memory, 0, 1000000, "10 um",
                   "McCammon and Schweizer 2002: weak layer of 10 cm or less (from memory; others say 3 cm)"),
    FIRN_PARAMETER(lemon_hardness_difference_sixths, lemons, memory, 0, 36, "sixths of a step",
                   "McCammon and Schweizer 2002: one step and more (from memory)"),
    FIRN_PARAMETER(lemon_size_difference_10um, lemons, memory, 0, 10000, "10 um",
                   "McCammon and Schweizer 2002: 1 mm and more (from memory)"),
    FIRN_PARAMETER(weak_layer_thin_10um, weak_layer_build, read, 0, 1000000, "10 um",
                   "DAV Panorama 1/2014: thinner than 3 cm (lemons say 10 cm)"),
    FIRN_PARAMETER(weak_layer_depth_10um, weak_layer_build, read, 0, 1000000, "10 um",
                   "DAV Panorama 1/2014: not deeper than 1 m"),
    FIRN_PARAMETER(
        gradient_cdegc_per_m, temperature_gradient, read, 1, 100000, "hundredths of a degree per metre",
        "avalanche.org, rule of thumb: above about 1 degree in 10 cm; in cold snow it can take more "
        "(secondary)"),
    FIRN_PARAMETER(
        load_unknown_percent, water_equivalent, practice, 0, 100, "percent",
        "ours: how much of a slab may be without a density, as crusts and surface hoar are, and take "
        "the mean of the rest"),
    FIRN_PARAMETER(index_slope_deg, skier_stability, memory, 1, 60, "degrees",
                   "Sk38: the index is told for a slope of 38 degrees (from memory)"),
    FIRN_PARAMETER(index_low_thousandths, skier_stability, memory, 0, 100000, "thousandths",
                   "Jamieson and Johnston 1998: below 1.0 triggering is likely (from memory)"),
    FIRN_PARAMETER(index_high_thousandths, skier_stability, memory, 0, 100000, "thousandths",
                   "Jamieson and Johnston 1998: 1.0 to 1.5 is transitional (from memory)"),
    FIRN_PARAMETER(slab_poisson_thousandths, critical_crack_length, memory, 0, 490, "thousandths",
                   "Poisson's ratio of the slab. 0 = off: values of 0.2 to 0.3 are remembered with low "
                   "confidence, so nobody gets one without asking"),
    FIRN_PARAMETER(
        rider_reach_10um, none, read, 0, 1000000, "10 um",
        "introduction of a paper citing Schweizer, Jamieson and Schneebeli 2003: layers deeper than 1 "
        "m are rarely triggered by a skier"),
    FIRN_PARAMETER(ect_useful_depth_10um, none, read, 0, 1000000, "10 um",
                   "avalanche.org: about 120 cm; others say 100 or 70 cm"),
    FIRN_PARAMETER(ct_useful_depth_10um, none, read_secondary, 0, 1000000, "10 um",
                   "OGRS 2007 through Campbell: 100 to 120 cm"),
    FIRN_PARAMETER(
        usual_column_depth_10um, none, read_secondary, 0, 1000000, "10 um",
        "cut depth of about 1 m (ECT) and 100 to 120 cm (CT); the smaller claims less to have been "
        "loaded"),
    FIRN_PARAMETER(deep_tap_from_10um, none, read, 0, 1000000, "10 um",
                   "avalanche.org: the deep tap test is for layers deeper than about 1 m"),
    FIRN_PARAMETER(shallow_snow_10um, none, read, 0, 1000000, "10 um",
                   "as rider_reach_10um: in less snow than that, every layer is within reach"),
};

#undef FIRN_PARAMETER

constexpr std::size_t kCount = sizeof kParameters / sizeof kParameters[0];
static_assert(kCount == static_cast<std::size_t>(ParameterKey::MAX),
              "one row a key, in the order of the keys");
static_assert(sizeof(Parameters) == kCount * sizeof(std::int32_t), "one field a key and nothing else");

}  // namespace

const Parameter* all_parameters(std::size_t& count) {
  count = kCount;
  return kParameters;
}

const Parameter* find_parameter(ParameterKey key) {
  const std::size_t position = static_cast<std::size_t>(key);
  return position == 0 || position > kCount ? nullptr : &kParameters[position - 1];
}

std::int32_t default_of(const Parameter& parameter) {
  return kDefaults.*parameter.field;
}

Done set_parameter(Parameters& parameters, ParameterKey key, std::int32_t value) {
  const Parameter* known = find_parameter(key);
  if (known == nullptr) {
    return failure_of(FIRN_BAD_ARGUMENT, "there is no such parameter in this version",
                      "firn_parameter_at lists the parameters");
  }
  if (value < known->least || value > known->most) {
    std::string what = known->name;
    what += " is outside ";
    append_integer(what, known->least);
    what += " to ";
    append_integer(what, known->most);
    what += ' ';
    what += known->unit;
    return failure_of(FIRN_BAD_ARGUMENT, what, "give a value within it, or leave it out for the default");
  }
  parameters.*known->field = value;
  return done();
}

}  // namespace firn::interpretation
