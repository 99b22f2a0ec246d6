#include "comparison/pairing.h"

#include <algorithm>

namespace firn::comparison {
namespace {

using firnbook::NotComparable;

// Two spans that overlap. In order from the top down neither position ever falls, so those that share a span
// stand side by side.
struct Touch {
  std::uint32_t reference, other;
  std::int64_t overlap;
};

bool forms_differ(const Span& a, const Span& b) {
  return a.form != 0 && b.form != 0 && a.form != b.form;
}

std::int64_t apart(const Span& a, const Span& b) {
  return std::max(a.top, b.top) - std::min(a.bottom, b.bottom);
}

// Which of two that do not pair is left behind: one without grains, then the one that ends first, then by the
// number of the form, so that it does not matter which pit is the reference.
bool is_passed_first(const Span& a, const Span& b) {
  if (a.form == 0 || b.form == 0) return a.form == 0;
  return a.bottom != b.bottom ? a.bottom < b.bottom : a.form < b.form;
}

class Pairer {
 public:
  Pairer(std::vector<Span>& reference, std::vector<Span>& other) : reference_(reference), other_(other) {
    find_touches();
  }

  void by_overlap(bool any_form) {
    number_gaps();
    weights_.assign(touches_.size(), 0);
    for (std::size_t k = 0; k < touches_.size(); ++k) {
      const Touch& touch = touches_[k];
      if (may_pair(touch) && (any_form || !forms_differ(reference_[touch.reference], other_[touch.other]))) {
        weights_[k] = touch.overlap;
      }
    }
    take_heaviest();
  }

  void by_distance(std::int64_t most) {
    number_gaps();
    std::size_t i = 0, j = 0;
    while (i < reference_.size() && j < other_.size()) {
      Span& a = reference_[i];
      Span& b = other_[j];
      if (a.partner >= 0 || (b.partner < 0 && gap_of_reference_[i] < gap_of_other_[j])) {
        ++i;
      } else if (b.partner >= 0 || gap_of_other_[j] < gap_of_reference_[i]) {
        ++j;
      } else if (a.form != 0 && a.form == b.form && apart(a, b) <= most) {
        pair(i++, j++);
      } else if (is_passed_first(a, b)) {
        ++i;
      } else {
        ++j;
      }
    }
  }

 private:
  void find_touches() {
    std::size_t i = 0, j = 0;
    while (i < reference_.size() && j < other_.size()) {
      const std::int64_t overlap = -apart(reference_[i], other_[j]);
      if (overlap > 0) {
        touches_.push_back({static_cast<std::uint32_t>(i), static_cast<std::uint32_t>(j), overlap});
      }
      const std::int64_t ahead = reference_[i].bottom - other_[j].bottom;
      if (ahead <= 0) ++i;
      if (ahead >= 0) ++j;
    }
  }

  // How many pairs lie above each span: those between the same two pairs have the same number.
  static void number(const std::vector<Span>& spans, std::vector<std::uint32_t>& gaps) {
    gaps.resize(spans.size());
    std::uint32_t above = 0;
    for (std::size_t i = 0; i < spans.size(); ++i) {
      gaps[i] = above;
      if (spans[i].partner >= 0) ++above;
    }
  }
  void number_gaps() {
    number(reference_, gap_of_reference_);
    number(other_, gap_of_other_);
  }

  bool may_pair(const Touch& touch) const {
    return reference_[touch.reference].partner < 0 && other_[touch.other].partner < 0 &&
           gap_of_reference_[touch.reference] == gap_of_other_[touch.other];
  }

  void pair(std::size_t i, std::size_t j) {
    reference_[i].partner = static_cast<std::int32_t>(j);
    other_[j].partner = static_cast<std::int32_t>(i);
  }

  // best_[k + 1]: the most that the first k + 1 touches can add up to when no span is used twice.
  void take_heaviest() {
    best_.assign(touches_.size() + 1, 0);
    before_.resize(touches_.size());
    std::size_t same_reference = 0, same_other = 0;  // where the run that shares a span began
    for (std::size_t k = 0; k < touches_.size(); ++k) {
      if (k == 0 || touches_[k].reference != touches_[k - 1].reference) same_reference = k;
      if (k == 0 || touches_[k].other != touches_[k - 1].other) same_other = k;
      before_[k] = std::min(same_reference, same_other);
      best_[k + 1] = std::max(best_[k], best_[before_[k]] + weights_[k]);
    }
    for (std::size_t k = touches_.size(); k > 0;) {
      if (best_[k] == best_[k - 1]) {
        --k;
        continue;
      }
      pair(touches_[k - 1].reference, touches_[k - 1].other);
      k = before_[k - 1];
    }
  }

  std::vector<Span>& reference_;
  std::vector<Span>& other_;
  std::vector<Touch> touches_;
  std::vector<std::uint32_t> gap_of_reference_, gap_of_other_;
  std::vector<std::int64_t> weights_, best_;
  std::vector<std::size_t> before_;
};

}  // namespace

void gather_spans(const pit::View& pit, std::vector<Span>& spans, std::vector<Rejected>& rejected) {
  const std::vector<pit::Layer>& layers = pit.layers();
  spans.reserve(layers.size());
  std::int64_t covered_to = INT64_MIN;
  for (std::uint32_t i = 0; i < layers.size(); ++i) {
    const pit::Layer& layer = layers[i];
    NotComparable reason = NotComparable::none;
    if (!layer.has_span()) {
      reason = NotComparable::depth_unknown;
    } else if (layer.bottom < layer.top) {
      reason = NotComparable::upside_down;
    } else if (layer.bottom < covered_to || (layer.bottom == covered_to && layer.top < layer.bottom)) {
      reason = NotComparable::covered;
    }
    if (reason != NotComparable::none) {
      rejected.push_back({i, reason});
      continue;
    }
    const auto form = static_cast<std::uint8_t>(layer.form / 10 * 10);
    spans.push_back({std::max<std::int64_t>(layer.top, covered_to), layer.bottom, i, form, -1});
    covered_to = layer.bottom;
  }
}

void pair_spans(std::vector<Span>& reference, std::vector<Span>& other, std::int64_t apart_10um) {
  Pairer pairer(reference, other);
  pairer.by_overlap(false);
  pairer.by_distance(apart_10um);
  pairer.by_overlap(true);
}

void pair_points(const std::vector<Point>& reference, const std::vector<Point>& other,
                 std::int64_t apart_10um, std::vector<PointPair>& pairs) {
  const auto between = [&](std::size_t i, std::size_t j) {
    const std::int64_t difference = std::int64_t{other[j].depth} - reference[i].depth;
    return difference < 0 ? -difference : difference;
  };
  std::size_t i = 0, j = 0;
  while (i < reference.size() || j < other.size()) {
    const bool both = i < reference.size() && j < other.size();
    bool take_reference = i < reference.size();
    bool take_other = j < other.size();
    if (both && between(i, j) <= apart_10um) {
      // Whoever has a nearer one further down waits for it.
      if (j + 1 < other.size() && between(i, j + 1) < between(i, j))
        take_reference = false;
      else if (i + 1 < reference.size() && between(i + 1, j) < between(i, j))
        take_other = false;
    } else if (both) {
      (reference[i].depth <= other[j].depth ? take_other : take_reference) = false;
    }
    pairs.push_back(
        {take_reference ? static_cast<std::int32_t>(i) : -1, take_other ? static_cast<std::int32_t>(j) : -1});
    i += take_reference ? 1u : 0u;
    j += take_other ? 1u : 0u;
  }
}

}  // namespace firn::comparison
