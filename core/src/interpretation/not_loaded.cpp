// What the tests did not load, and the next observation that would tell most for least.
//
// A tapping test loads everything from the surface down to its deepest fracture, and all of its useful depth
// when it was tapped to the end. What lies below a fracture that ended an extended column was not tested; a
// saw tests the one layer it was drawn through. Nothing here says what an untested layer would have done.
#include "interpretation/evidence.h"

namespace firn::interpretation {
namespace {

using firnbook::NextStep;
using firnbook::NotLoadedReason;

// Lists of plain values can be shared by many tests in hostile bytes: reading on would be quadratic.
constexpr std::uint32_t kUnbrokenRead = 64;
constexpr std::int32_t kNowhere = -1;
// So that many concerns and many tests stay a list that is as long as both together.
constexpr std::size_t kMostNamed = 8;

// What is known of all tests of one kind in the pit.
struct KindOfTest {
  TestKind kind;
  std::int32_t why_test = -1;
  NotLoadedReason why = NotLoadedReason::not_done;
};

std::int32_t strength(NotLoadedReason reason) {
  switch (reason) {
    case NotLoadedReason::ended_above:
    case NotLoadedReason::other_layer:
      return 4;
    case NotLoadedReason::beyond_useful_depth:
      return 3;
    case NotLoadedReason::unknown:
      return 2;
    case NotLoadedReason::not_valid:
      return 1;
    default:
      return 0;
  }
}

bool crossed(const Finding& finding) {
  return finding.key() == FindingKey::ect_crossed_before_22 ||
         finding.key() == FindingKey::ect_crossed_from_22 ||
         finding.key() == FindingKey::ect_crossed_tap_unknown;
}

bool suggests_none(const Concern& concern) {
  return concern.rank == firnbook::ConcernRank::little || concern.top < 0;
}

class Namer {
 public:
  Namer(const pit::View& pit, const Parameters& parameters, Analysis& analysis)
      : pit_(pit),
        parameters_(parameters),
        analysis_(analysis),
        tolerance_(parameters.tolerance_10um < 0 ? 0 : parameters.tolerance_10um) {}

  void run() {
    measure_reach();
    suggest_for_pit();
    for (std::size_t i = 0; i < analysis_.concerns.size(); ++i) name(static_cast<std::int32_t>(i));
  }

 private:
  struct Loaded {
    bool ct = false, ect = false, pst = false, deep_tap = false;
    std::size_t tests = 0;           // different tests that reached it, as far as they are named
    std::int32_t named[kMostNamed];  // their stored positions
  };

  void measure_reach() {
    Workspace& work = analysis_.workspace;
    work.ct.clear();
    work.ect.clear();
    for (const pit::Test& test : pit_.tests()) measure(test);
    for (const Finding& finding : analysis_.findings) {
      if (finding.method() == Method::yellow_flags) break;  // tests come before structure
      if (crossed(finding) && finding.depth_10um() >= 0)
        remember(ect_, NotLoadedReason::ended_above, finding.subject().index());
    }
    const auto before = [](const Reach& one, const Reach& other) {
      return one.depth != other.depth ? one.depth < other.depth : one.test < other.test;
    };
    std::sort(work.ct.begin(), work.ct.end(), before);
    std::sort(work.ect.begin(), work.ect.end(), before);
  }

  // The reason that says most stands for all tests of its kind, the first test that gives it with it.
  static void remember(KindOfTest& kind, NotLoadedReason reason, std::int32_t test) {
    if (strength(reason) <= strength(kind.why)) return;
    kind.why = reason;
    kind.why_test = test;
  }

  void measure(const pit::Test& test) {
    const std::int32_t index = static_cast<std::int32_t>(test.stored);
    if (test.kind != TestKind::CT && test.kind != TestKind::ECT && test.kind != TestKind::PST) return;
    KindOfTest& kind = test.kind == TestKind::CT ? ct_ : test.kind == TestKind::ECT ? ect_ : pst_;
    if (!is_valid(test)) return remember(kind, NotLoadedReason::not_valid, index);
    if (test.kind == TestKind::PST) return measure_saw(test);
    const std::int32_t useful =
        test.kind == TestKind::CT ? parameters_.ct_useful_depth_10um : parameters_.ect_useful_depth_10um;
    std::int32_t depth = deepest_fracture(test);
    // After a crossing, taps on an extended column load nothing below it, so only an unbroken one counts.
    const bool all_taps = test.kind == TestKind::CT && test.raw->taps_given().value_or(0) >= kMaxTap;
    const bool to_the_end = has_no_fracture(test) || all_taps;
    if (to_the_end) {
      const std::int32_t column = test.raw->column_depth_10um().value_or(0);
      depth = std::max(depth, std::min(column > 0 ? column : parameters_.usual_column_depth_10um, useful));
    }
    remember(kind, to_the_end ? NotLoadedReason::beyond_useful_depth : NotLoadedReason::unknown, index);
    if (depth < 0) return;
    (test.kind == TestKind::CT ? analysis_.workspace.ct : analysis_.workspace.ect).push_back({depth, index});
  }

  std::int32_t deepest_fracture(const pit::Test& test) const {
    std::int32_t depth = kNowhere;
    for (std::uint32_t k = 0; k < test.fracture_count; ++k) {
      depth = std::max(depth, known_depth(pit_.fractures()[test.first_fracture + k].depth));
    }
    const auto* unbroken = test.raw->unbroken();
    for (std::uint32_t k = 0; k < std::min(pit::size_of(unbroken), kUnbrokenRead); ++k) {
      depth = std::max(depth, known_depth(pit_.below_surface(unbroken->Get(k))));
    }
    return depth;
  }

  void measure_saw(const pit::Test& test) {
    bool placed = false;
    for (std::uint32_t k = 0; k < test.fracture_count; ++k) {
      placed = placed || pit_.fractures()[test.first_fracture + k].depth >= 0;
    }
    remember(pst_, placed ? NotLoadedReason::other_layer : NotLoadedReason::unknown,
             static_cast<std::int32_t>(test.stored));
  }

  std::vector<Reach>::const_iterator first_reach(const std::vector<Reach>& reached,
                                                 std::int64_t limit) const {
    return std::lower_bound(reached.begin(), reached.end(), limit,
                            [](const Reach& reach, std::int64_t value) { return reach.depth < value; });
  }

  // Tests that reached a concern: tapping tests by their depth, all others by their fractures in its
  // evidence.
  Loaded loaded(const Concern& concern) const {
    const std::int64_t limit = concern.top < 0 ? INT64_MAX : concern.top - tolerance_;
    Loaded found;
    const auto count = [&found](std::int32_t test) {
      std::int32_t* const end = found.named + found.tests;
      if (found.tests < kMostNamed && std::find(found.named, end, test) == end)
        found.named[found.tests++] = test;
    };
    for (const std::vector<Reach>* reached : {&analysis_.workspace.ct, &analysis_.workspace.ect}) {
      auto reach = first_reach(*reached, limit);
      (reached == &analysis_.workspace.ct ? found.ct : found.ect) = reach != reached->end();
      for (; reach != reached->end() && found.tests < kMostNamed; ++reach) count(reach->test);
    }
    for (std::uint32_t k = 0; k < concern.evidence_count; ++k) {
      const Finding& one = analysis_.findings[analysis_.evidence[concern.first_evidence + k]];
      if (one.method() == Method::yellow_flags) break;  // evidence of tests stands before that of structure
      const pit::Test* test = test_of(pit_, one);
      if (test == nullptr) continue;
      found.ct = found.ct || test->kind == TestKind::CT;
      found.ect = found.ect || test->kind == TestKind::ECT;
      found.pst = found.pst || test->kind == TestKind::PST;
      found.deep_tap = found.deep_tap || test->kind == TestKind::DT;
      count(static_cast<std::int32_t>(test->stored));
    }
    std::sort(found.named, found.named + found.tests);
    return found;
  }

  void name_tests(std::int32_t index, const Loaded& found) {
    for (std::size_t i = 0; i < found.tests; ++i) {
      const TestKind kind = pit_.tests()[static_cast<std::size_t>(found.named[i])].kind;
      analysis_.loaded.emplace_back(index, found.named[i], kind);
    }
  }

  void name(std::int32_t index) {
    const Concern& concern = analysis_.concerns[static_cast<std::size_t>(index)];
    const Loaded found = loaded(concern);
    name_tests(index, found);
    // Without a depth nobody can tell what lay above it.
    if (concern.top < 0) return;
    if (!found.ct) state(index, concern, ct_);
    if (!found.ect) state(index, concern, ect_);
    if (!found.pst) state(index, concern, pst_);
    note_reach(index, concern, found);
    suggest(index, concern, found);
  }

  void state(std::int32_t index, const Concern& concern, const KindOfTest& kind) {
    analysis_.not_loaded.emplace_back(index, kind.why_test, concern.top, kind.kind, kind.why);
  }

  // The leading concern that was reached by one test only, and the leading one that no test reached.
  void note_reach(std::int32_t index, const Concern& concern, const Loaded& found) {
    if (concern.rank == firnbook::ConcernRank::little) return;
    Workspace& work = analysis_.workspace;
    if (found.tests == 1 && work.reached_once < 0) {
      work.reached_once = index;
      work.reached_by = found.named[0];
    }
    if (found.tests == 0 && work.not_reached < 0) work.not_reached = index;
  }

  void put(std::int32_t index, std::int32_t depth, NextStep step) {
    analysis_.suggestions.emplace_back(index, depth, step);
  }

  // Looking costs nothing, so it comes before any digging.
  void suggest_for_pit() {
    if (unanswered_signs(pit_) != 0) put(-1, kNoDepth, NextStep::look_for_signs);
    const bool probing =
        std::any_of(analysis_.checks.begin(), analysis_.checks.end(), [](const firnbook::Check& one) {
          return one.code() == firnbook::CheckCode::probing_uneven ||
                 one.code() == firnbook::CheckCode::probes_too_few;
        });
    if (probing) put(-1, kNoDepth, NextStep::probe_more);
    const firnbook::BulletinSeen* bulletin = pit_.raw().bulletin();
    const bool known = bulletin != nullptr && bulletin->state() &&
                       *bulletin->state() != firnbook::BulletinState::not_looked_at;
    if (!known) put(-1, kNoDepth, NextStep::read_bulletin);
  }

  // A concern that ran needs no more tests to be one. Deeper than an ordinary column is useful: a deep tap
  // test, and a saw for whether it runs. Else the test that answers what was not asked, else a second column
  // beside the first.
  void suggest(std::int32_t index, const Concern& concern, const Loaded& found) {
    if (suggests_none(concern)) return;
    const bool crystals =
        concern.weaker_pos >= 0 && pit_.layers()[static_cast<std::size_t>(concern.weaker_pos)].form == 0;
    if (crystals) put(index, concern.top, NextStep::look_at_crystals);
    if (concern.rank == firnbook::ConcernRank::propagated) return;
    if (concern.top > parameters_.deep_tap_from_10um) {
      if (!found.deep_tap) put(index, concern.top, NextStep::deep_tap_test);
      if (!found.pst) put(index, concern.top, NextStep::saw_test);
    } else if (!found.ect && !found.pst) {
      put(index, concern.top, NextStep::extended_column);
    } else if (found.tests < 2) {
      put(index, concern.top, NextStep::repeat_test);
    }
  }

  const pit::View& pit_;
  const Parameters& parameters_;
  Analysis& analysis_;
  const std::int64_t tolerance_;
  KindOfTest ct_{TestKind::CT};
  KindOfTest ect_{TestKind::ECT};
  KindOfTest pst_{TestKind::PST};
};

}  // namespace

std::int32_t unanswered_signs(const pit::View& pit) {
  using firnbook::SignKind;
  const auto bit = [](SignKind kind) { return std::int32_t{1} << static_cast<int>(kind); };
  std::int32_t open = bit(SignKind::whumpf) | bit(SignKind::cracking) | bit(SignKind::slides);
  const auto* signs = pit.raw().signs();
  for (std::uint32_t i = 0; i < pit::size_of(signs); ++i) {
    const firnbook::Sign* sign = signs->Get(i);
    if (!sign->kind() || !sign->answer() || *sign->kind() > SignKind::slides) continue;
    const bool answered = *sign->answer() == firnbook::Answer::yes || *sign->answer() == firnbook::Answer::no;
    if (answered) open &= ~bit(*sign->kind());
  }
  if (pit::size_of(pit.raw().slides()) > 0) open &= ~bit(SignKind::slides);
  return open;
}

void name_what_was_not_loaded(const pit::View& pit, const Parameters& parameters, Analysis& analysis) {
  analysis.loaded.clear();
  analysis.not_loaded.clear();
  analysis.suggestions.clear();
  analysis.workspace.reached_once = analysis.workspace.reached_by = analysis.workspace.not_reached = -1;
  Namer(pit, parameters, analysis).run();
}

}  // namespace firn::interpretation
