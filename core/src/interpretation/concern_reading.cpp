// The results at one place read together, and who could reach it. Tests answer different questions, so
// nothing is counted as votes. All rules are ours, built on what each test asks: a compression test, a
// rutschblock or a shear whether something starts, a saw whether a crack runs, an extended column both.
//
//   a crack ran        an extended column was crossed, or the saw test's criterion is met
//   no crack ran       a column that cracked without crossing, or the saw test's criterion is not met
//   it started         anything broke but under a saw; a break that says little does not count
//   ordinary load      up to 20 taps, rutschblock step 1 to 5, shear up to moderate, and whatever was not
//   recorded;
//                      hard is a tap from the shoulder (21 and more), step 6, a hard shear
//   a deep tap test starts something without saying how easily: its slab is gone
#include "interpretation/evidence.h"

namespace firn::interpretation {
namespace {

using firnbook::ConcernReading;

constexpr std::int32_t kLastOrdinaryTap = 20;
constexpr std::uint8_t kLastOrdinaryStep = 5;

enum class Load : std::uint8_t { ordinary, hard, untold };

Load load_of(const pit::Test& test, const pit::Fracture& fracture) {
  const auto hard_if = [](bool hard) { return hard ? Load::hard : Load::ordinary; };
  switch (test.kind) {
    case TestKind::CT:
    case TestKind::ECT: {
      const std::int32_t tap = easiest_tap(fracture);
      return hard_if(tap != kNoEase && tap > kLastOrdinaryTap);
    }
    case TestKind::RB:
      return hard_if(fracture.step > kLastOrdinaryStep);
    case TestKind::ST:
    case TestKind::hand_shear:
      return hard_if(fracture.ease == static_cast<std::uint8_t>(firnbook::ShearEase::H));
    default:
      return Load::untold;
  }
}

}  // namespace

void ReadTogether::take(const pit::View& pit, const Finding& finding, firnbook::ConcernRank rank) {
  switch (finding.key()) {
    case FindingKey::pst_propagation_likely:
      ran_ = true;
      return;
    case FindingKey::pst_criterion_not_met:
    case FindingKey::pst_no_fracture:
      did_not_run_ = true;
      return;
    case FindingKey::pst_unknown:
      return;
    case FindingKey::ect_crossed_before_22:
    case FindingKey::ect_crossed_from_22:
    case FindingKey::ect_crossed_tap_unknown:
      ran_ = true;
      break;
    case FindingKey::ect_not_crossed:
      did_not_run_ = true;
      break;
    default:
      break;
  }
  const pit::Fracture* fracture = fracture_of(pit, finding);
  if (fracture == nullptr || rank >= firnbook::ConcernRank::structure) return;
  started_ = true;
  const Load load = load_of(*test_of(pit, finding), *fracture);
  ordinary_ = ordinary_ || load == Load::ordinary;
  hard_ = hard_ || load == Load::hard;
}

ConcernReading ReadTogether::reading() const {
  if (ran_ && did_not_run_) return ConcernReading::ran_and_did_not;
  if (ran_) {
    return ordinary_ ? ConcernReading::starts_and_runs
           : hard_   ? ConcernReading::runs_hard_to_start
                     : ConcernReading::runs_start_not_tested;
  }
  if (started_)
    return did_not_run_ ? ConcernReading::started_did_not_run : ConcernReading::starts_run_not_tested;
  return ConcernReading::not_tested;
}

// Deeper than 1 m a rider rarely triggers (introduction of a paper citing Schweizer, Jamieson and Schneebeli
// 2003, read), which takes nothing away: a large load can, and so can a rider where the slab is thinner
// (common practice).
firnbook::ConcernReach reach_of(std::int32_t depth, const Parameters& parameters) {
  if (depth < 0) return firnbook::ConcernReach::none;
  return depth <= parameters.rider_reach_10um ? firnbook::ConcernReach::one_rider
                                              : firnbook::ConcernReach::large_load_or_thin_slab;
}

}  // namespace firn::interpretation
