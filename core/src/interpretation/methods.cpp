// Every method: its source, how far that is verified, and which of them spoke. METHODS.md is made from this
// table.
#include "interpretation/methods.h"

namespace firn::interpretation {
namespace {

using firnbook::Method;
using firnbook::Verified;

// How far the source is known is the weakest of what a method needs; the words say which part of it was read.
constexpr MethodRow kMethods[] = {
    {Method::field_signs, Verified::read, "field_signs.cpp",
     "avalanche.ca and US Forest Service, lists of signs (read)"},
    {Method::compression_test, Verified::read_secondary, "compression_test.cpp",
     "van Herwijnen and Jamieson 2007, abstract (read); criteria of the characters (secondary); their groups "
     "(memory)"},
    {Method::extended_column_swiss, Verified::read, "extended_column.cpp",
     "Swiss service (SLF), operational classes and the rule of one more tap (read)"},
    {Method::saw_test, Verified::memory, "saw_test.cpp",
     "Gauthier and Jamieson 2008 (criterion from memory; miss rate in the abstract, read); column ends: "
     "NHESS 25:321, "
     "2025 (read); column length: guidelines (memory)"},
    {Method::yellow_flags, Verified::memory, "yellow_flags.cpp", "Jamieson and Schweizer 2005 (memory)"},
    {Method::temperature_gradient, Verified::read, "temperature_gradient.cpp",
     "avalanche.org, rule of thumb (read); objection, in cold snow it can take more (secondary); crusts: US "
     "Forest "
     "Service (read)"},
    {Method::unclassed_tests, Verified::practice, "other_tests.cpp", "common practice"},
    {Method::shear_quality, Verified::memory, "shear_quality.cpp", "Johnson and Birkeland 2002 (memory)"},
    {Method::extended_column_schemes, Verified::memory, "extended_column_schemes.cpp",
     "two-way reading: Simenhois and Birkeland, in The Avalanche Review (read); three classes: Winkler and "
     "Schweizer "
     "2009 (limit read in an article that cites them, classes from memory); four classes: Techel and others "
     "2020 "
     "(memory)"},
    {Method::extended_column_early, Verified::read, "extended_column_early.cpp",
     "avalanche.org (read: fewer than 10 taps)"},
    {Method::extended_column_several, Verified::read, "extended_column_several.cpp",
     "Techel, Walcher and Winkler 2016, abstract (read); columns of 2 m: Bair and others 2014, abstract "
     "(read)"},
    {Method::deep_tap_test, Verified::read, "deep_tap_test.cpp",
     "avalanche.org (read); groups of the characters as for the compression test"},
    {Method::rutschblock_swiss, Verified::read, "rutschblock.cpp",
     "Swiss service (SLF), operational classes (read); slope: Foehn 1989 and Jamieson and Johnston 1993 "
     "(read); depth: "
     "avalanche.org (read)"},
    {Method::swiss_precedence, Verified::read, "swiss_precedence.cpp",
     "Swiss service (SLF): the rutschblock decides, the poorest of several (read)"},
    {Method::shear_tests, Verified::practice, "shear_tests.cpp", "common practice (memory)"},
    {Method::threshold_sum, Verified::memory, "threshold_sum.cpp", "Schweizer and Jamieson 2007 (memory)"},
    {Method::lemons, Verified::memory, "lemons.cpp", "McCammon and Schweizer 2002 (memory)"},
    {Method::weak_layer_build, Verified::read, "weak_layer_build.cpp", "DAV Panorama 1/2014 (read)"},
    {Method::density_estimate, Verified::memory, "density_estimate.cpp",
     "Geldsetzer and Jamieson 2000 (memory)"},
    {Method::water_equivalent, Verified::practice, "water_equivalent.cpp", "definition"},
    {Method::slab_stress, Verified::memory, "skier_stability.cpp",
     "static shear: physics; skier: Foehn 1987 (line load from memory, formula derived anew)"},
    {Method::strength_estimate, Verified::memory, "strength_estimate.cpp",
     "Jamieson and Johnston 2001 (equations from memory)"},
    {Method::skier_stability, Verified::memory, "skier_stability.cpp",
     "Foehn 1987, Jamieson and Johnston 1998 (memory); objection: McClung and Schweizer 1999 (read)"},
    {Method::critical_crack_length, Verified::memory, "critical_crack_length.cpp",
     "Gaume and others 2017, Richter and others 2019, Scapozza (memory); off unless Poisson's ratio is "
     "given"},
};

constexpr std::size_t kCount = sizeof kMethods / sizeof kMethods[0];
static_assert(kCount == static_cast<std::size_t>(Method::MAX),
              "one row a method, in the order of their numbers");

// These are told even when they found nothing to read: a pit's silence under them is worth knowing.
constexpr std::uint32_t kAlwaysTold = 0xfe;

}  // namespace

const MethodRow* all_methods(std::size_t& count) {
  count = kCount;
  return kMethods;
}

void name_methods(const std::vector<firnbook::Finding>& findings, std::vector<firnbook::MethodUsed>& out) {
  std::uint32_t spoke = kAlwaysTold;
  for (const firnbook::Finding& one : findings) spoke |= 1u << static_cast<std::uint32_t>(one.method());
  for (const MethodRow& row : kMethods) {
    if ((spoke >> static_cast<std::uint32_t>(row.method) & 1u) != 0)
      out.emplace_back(row.method, row.verified);
  }
}

}  // namespace firn::interpretation
