// Which test decides the class of a whole profile in the Swiss service's scheme (read): the rutschblock where
// there is one, and of several tests of a kind the poorest. That scheme's own class and nothing else: no
// concern rests on it, none goes away by it, and it is told only where two tests or more have a class.
//
// One of two versions of that page leaves out fractures in the top 10 cm (a parameter, off).
#include "interpretation/evidence.h"

namespace firn::interpretation {
namespace {

constexpr std::int32_t kNone = 4;  // behind the last of three classes

struct Poorest {
  std::int32_t of_three = kNone;
  std::int32_t tests = 0;
  bool open = false;  // a class that could not be told might be poorer

  void take(std::int32_t one, bool unknown) {
    if (one == kNone && !unknown) return;
    ++tests;
    of_three = std::min(of_three, one);
    open = open || unknown;
  }
  bool decides() const { return tests > 0; }
  bool known() const { return of_three == 1 || (of_three < kNone && !open); }
};

void read_test(const pit::View& pit, const pit::Test& test, const Parameters& parameters, Poorest& poorest) {
  std::int32_t of_three = has_no_fracture(test) ? 3 : kNone;
  bool unknown = false;
  for (std::uint32_t k = 0; k < test.fracture_count; ++k) {
    const pit::Fracture& fracture = pit.fractures()[test.first_fracture + k];
    if (is_ignored(fracture, parameters)) continue;
    const std::int32_t one = test.kind == TestKind::RB ? rutschblock_class(fracture)
                                                       : extended_column_class(test, fracture, parameters);
    if (one == 0) {
      unknown = true;
    } else {
      of_three = std::min(of_three, one);
    }
  }
  poorest.take(of_three, unknown);
}

}  // namespace

void swiss_precedence(const pit::View& pit, const Parameters& parameters, Findings& out) {
  if (pit.tests().size() < 2) return;
  Poorest block;
  Poorest column;
  for (const pit::Test& test : pit.tests()) {
    if (!is_valid(test)) continue;
    if (test.kind == TestKind::RB) read_test(pit, test, parameters, block);
    if (test.kind == TestKind::ECT) read_test(pit, test, parameters, column);
  }
  if (block.tests + column.tests < 2) return;
  const Poorest& decides = block.decides() ? block : column;
  const TestKind kind = block.decides() ? TestKind::RB : TestKind::ECT;
  if (!decides.known()) return;
  add(out, Method::swiss_precedence, FindingKey::swiss_class_of_pit, Verdict::fact, whole_pit(), kNoDepth,
      {decides.of_three, static_cast<std::int32_t>(kind), decides.tests});
}

}  // namespace firn::interpretation
