// Two and more extended columns in one pit: do they agree? In one pit out of five the second column did not
// repeat whether the first was crossed (Techel, Walcher and Winkler 2016, abstract, read: 21 %). No table for
// pairs of results was found, so none is used: the finding counts what the columns did at one depth, and
// takes nothing away.
//
// The depth is that of the first crossing, else of the first crack. A column of 2 m that crosses where one of
// usual width did is a clear red flag; one that does not has no clear meaning (Bair and others 2014,
// abstract, read).
#include "interpretation/evidence.h"

namespace firn::interpretation {
namespace {

using firnbook::Crossing;

class Columns {
 public:
  Columns(const pit::View& pit, const Parameters& parameters)
      : pit_(pit), parameters_(parameters), tolerance_(parameters.tolerance_10um) {}

  void run(Findings& out) {
    find_depth();
    if (columns_ < 2) return;
    for (const pit::Test& test : pit_.tests()) {
      if (is_column(test)) count(test);
    }
    // Columns that all broke at depths nobody knows cannot be compared, nor can two that did nothing differ.
    const bool differ = crossed_ > 0 && crossed_ < columns_;
    const bool comparable = depth_ >= 0 || unbroken_ == columns_;
    if (comparable) {
      add(out, Method::extended_column_several,
          differ ? FindingKey::ect_columns_differ : FindingKey::ect_columns_agree, Verdict::fact, whole_pit(),
          depth_, {crossed_, columns_ - crossed_ - unbroken_, unbroken_});
    }
    if (usual_crossed_ && long_crossed_ > 0) {
      add(out, Method::extended_column_several, FindingKey::ect_long_column_crossed, Verdict::raises,
          whole_pit(), depth_, {long_crossed_, 0, 0});
    }
  }

 private:
  static bool is_column(const pit::Test& test) {
    return test.kind == TestKind::ECT && is_valid(test) && (test.fracture_count > 0 || has_no_fracture(test));
  }
  bool is_crossed(const pit::Test& test, const pit::Fracture& fracture) const {
    return read_crossing(test, fracture, parameters_.ect_taps_to_cross).crossing ==
           static_cast<std::uint8_t>(Crossing::crossed);
  }
  const pit::Fracture& fracture(const pit::Test& test, std::uint32_t k) const {
    return pit_.fractures()[test.first_fracture + k];
  }

  void find_depth() {
    std::int32_t cracked = kNoDepth;
    for (const pit::Test& test : pit_.tests()) {
      if (!is_column(test)) continue;
      ++columns_;
      for (std::uint32_t k = 0; k < test.fracture_count; ++k) {
        const std::int32_t depth = known_depth(fracture(test, k).depth);
        if (cracked < 0) cracked = depth;
        if (depth_ < 0 && is_crossed(test, fracture(test, k))) depth_ = depth;
      }
    }
    if (depth_ < 0) depth_ = cracked;
  }

  bool is_there(const pit::Fracture& fracture) const {
    const std::int64_t apart = std::int64_t{fracture.depth} - depth_;
    return fracture.depth >= 0 && depth_ >= 0 && (apart < 0 ? -apart : apart) <= tolerance_;
  }

  void count(const pit::Test& test) {
    bool crossed = false;
    for (std::uint32_t k = 0; k < test.fracture_count; ++k) {
      crossed = crossed || (is_there(fracture(test, k)) && is_crossed(test, fracture(test, k)));
    }
    if (test.fracture_count == 0) ++unbroken_;
    if (!crossed) return;
    ++crossed_;
    const std::int32_t width = test.raw->column_width_10um().value_or(0);
    if (width >= parameters_.ect_long_column_10um) {
      long_crossed_ = std::max(long_crossed_, width);
    } else {
      usual_crossed_ = true;
    }
  }

  const pit::View& pit_;
  const Parameters& parameters_;
  const std::int64_t tolerance_;
  std::int32_t depth_ = kNoDepth, columns_ = 0, crossed_ = 0, unbroken_ = 0, long_crossed_ = 0;
  bool usual_crossed_ = false;
};

}  // namespace

void extended_column_several(const pit::View& pit, const Parameters& parameters, Findings& out) {
  if (pit.tests().size() < 2) return;
  Columns(pit, parameters).run(out);
}

}  // namespace firn::interpretation
