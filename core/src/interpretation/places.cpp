// Where evidence can meet. Two people write the same weak layer as "down 68" and "down 69": a fracture
// belongs to the nearest boundary within tolerance, and a boundary whose weaker side is a thin layer belongs
// to that layer, so that both edges of a buried surface-hoar layer are one place.
//
// A thin layer is thinner than twice the tolerance: both its edges are then within reach of one reading. A
// crust is thin too but never the weaker side, so what breaks on it belongs to the snow beside it. A thin
// layer of persistent grains is the place even beside snow that is softer. Places depend on layers only: one
// more test can add to a place and cannot move another test away from it.
#include <tuple>

#include "interpretation/evidence.h"
#include "vocabulary/codes.h"

namespace firn::interpretation {
namespace {

constexpr std::int64_t kSecondsPerDay = 86400;
constexpr std::int64_t kNoDay = INT64_MIN;
// Longer words are not a name, and comparing megabytes shared by many layers would take minutes.
constexpr std::size_t kLongestName = 64;
constexpr std::size_t kMainForms = 10;

std::int64_t day_of(const firnbook::LayerName* name) {
  if (name == nullptr || name->date() == nullptr) return kNoDay;
  const firnbook::Moment& date = *name->date();
  if (date.precision() < firnbook::TimePrecision::day) return kNoDay;
  const std::int64_t seconds = date.local_s();
  return seconds / kSecondsPerDay - (seconds % kSecondsPerDay < 0 ? 1 : 0);
}

std::string_view words_of(const firnbook::LayerName* name) {
  const std::string_view words = name == nullptr ? std::string_view{} : pit::text(name->words());
  return words.size() <= kLongestName ? words : std::string_view{};
}

std::int64_t apart(std::int64_t depth, std::int64_t top, std::int64_t bottom) {
  return depth < top ? top - depth : depth > bottom ? depth - bottom : 0;
}

}  // namespace

void Places::map(const pit::View& pit, std::int32_t tolerance_10um, const Findings& findings) {
  pit_ = &pit;
  findings_ = &findings;
  tolerance_ = tolerance_10um < 0 ? 0 : tolerance_10um;
  below_.assign(pit.layers().size(), -1);
  layer_count_.assign(pit.layers().size(), -1);
  weaker_.clear();
  for (const pit::Boundary& boundary : pit.boundaries()) {
    below_[boundary.above] = static_cast<std::int32_t>(weaker_.size());
    weaker_.push_back(static_cast<std::int32_t>(boundary.below));
  }
  boundary_count_.assign(weaker_.size(), -1);
  std::size_t boundary = 0;
  std::size_t layer = 0;
  for (std::size_t i = 0; i < findings.size(); ++i) {
    const Finding& finding = findings[i];
    if (finding.key() != FindingKey::flag_count) continue;
    if (finding.subject().thing() == Thing::boundary && boundary < weaker_.size()) {
      if (finding.c() == 1) weaker_[boundary] = static_cast<std::int32_t>(pit.boundaries()[boundary].above);
      boundary_count_[boundary++] = static_cast<std::int32_t>(i);
    } else if (finding.subject().thing() == Thing::layer) {
      const std::uint32_t stored = static_cast<std::uint32_t>(finding.subject().index());
      while (layer < layer_count_.size() && pit.layers()[layer].stored != stored) ++layer;
      if (layer < layer_count_.size()) layer_count_[layer] = static_cast<std::int32_t>(i);
    }
  }
  homes_.clear();
  for (std::size_t b = 0; b < weaker_.size(); ++b) homes_.push_back(find_home(static_cast<std::int32_t>(b)));
  map_names();
}

void Places::map_names() {
  by_day_.clear();
  by_words_.clear();
  first_of_form_.assign(kMainForms, -1);
  count_of_form_.assign(kMainForms, 0);
  for (std::size_t i = 0; i < pit_->layers().size(); ++i) {
    const pit::Layer& layer = pit_->layers()[i];
    const std::int32_t position = static_cast<std::int32_t>(i);
    const std::uint8_t form = main_form(layer.form);
    if (count_of_form_[form]++ == 0) first_of_form_[form] = position;
    const std::int64_t day = day_of(layer.raw->name());
    const std::string_view words = words_of(layer.raw->name());
    if (day != kNoDay) by_day_.push_back({day, {}, position});
    if (!words.empty()) by_words_.push_back({0, words, position});
  }
  const auto before = [](const Name& one, const Name& other) {
    return std::tie(one.day, one.words, one.layer) < std::tie(other.day, other.words, other.layer);
  };
  std::sort(by_day_.begin(), by_day_.end(), before);
  std::sort(by_words_.begin(), by_words_.end(), before);
}

// Of layers with one name (a crust and the hoar on it), the first with the grains the test names, else the
// first.
std::int32_t Places::pick(const std::vector<Name>& names, std::size_t from, std::size_t to,
                          std::uint8_t form) const {
  constexpr std::size_t kNamesakesRead = 16;
  if (from == to) return -1;
  for (std::size_t i = from; i < std::min(to, from + kNamesakesRead); ++i) {
    const pit::Layer& layer = pit_->layers()[at(names[i].layer)];
    if (form != 0 && main_form(layer.form) == form) return names[i].layer;
  }
  return names[from].layer;
}

std::int32_t Places::named(const firnbook::Layer& on) const {
  const std::uint8_t form = main_form(pit::number(on.grain_form()));
  const std::int64_t day = day_of(on.name());
  if (day != kNoDay) {
    const auto range =
        std::equal_range(by_day_.begin(), by_day_.end(), Name{day, {}, 0},
                         [](const Name& one, const Name& other) { return one.day < other.day; });
    const std::int32_t found = pick(by_day_, static_cast<std::size_t>(range.first - by_day_.begin()),
                                    static_cast<std::size_t>(range.second - by_day_.begin()), form);
    if (found >= 0) return found;
  }
  const std::string_view words = words_of(on.name());
  if (words.empty()) return -1;
  const auto range =
      std::equal_range(by_words_.begin(), by_words_.end(), Name{0, words, 0},
                       [](const Name& one, const Name& other) { return one.words < other.words; });
  return pick(by_words_, static_cast<std::size_t>(range.first - by_words_.begin()),
              static_cast<std::size_t>(range.second - by_words_.begin()), form);
}

std::int32_t Places::only_one_of(std::uint8_t form) const {
  return form != 0 && form < kMainForms && count_of_form_[form] == 1 ? first_of_form_[form] : -1;
}

bool Places::is_thin(std::int32_t position) const {
  const pit::Layer& layer = pit_->layers()[at(position)];
  return layer.has_span() && std::int64_t{layer.bottom} - layer.top < 2 * tolerance_;
}

bool Places::alone(std::int32_t layer) const {
  return boundary_above(layer) < 0 && boundary_below(layer) < 0;
}

std::int32_t Places::flags_met(std::int32_t boundary) const {
  const std::int32_t count = count_of_boundary(boundary);
  return count < 0 ? 0 : (*findings_)[at(count)].a();
}

// Storm snow can be softer than the hoar it buries, and yet it is the hoar that breaks.
bool Places::is_thin_and_persistent(std::int32_t position) const {
  return is_persistent(static_cast<firnbook::GrainForm>(pit_->layers()[at(position)].form)) &&
         is_thin(position);
}

Home Places::find_home(std::int32_t boundary) const {
  const std::int32_t weak = weaker(boundary);
  if (is_thin(weak)) return {HomeKind::layer, weak};
  const pit::Boundary& touching = pit_->boundaries()[at(boundary)];
  const std::int32_t above = static_cast<std::int32_t>(touching.above);
  const std::int32_t stronger = above == weak ? static_cast<std::int32_t>(touching.below) : above;
  if (is_thin_and_persistent(stronger)) return {HomeKind::layer, stronger};
  return {HomeKind::boundary, boundary};
}

// The boundary of which the layer is the weaker side, the upper one first; else any that it has.
Home Places::of_layer(std::int32_t layer) const {
  const std::int32_t above = boundary_above(layer);
  const std::int32_t below = boundary_below(layer);
  if (is_thin_and_persistent(layer)) return {HomeKind::layer, layer};
  if (above >= 0 && weaker(above) == layer) return of_boundary(above);
  if (below >= 0 && weaker(below) == layer) return of_boundary(below);
  if (above >= 0) return of_boundary(above);
  if (below >= 0) return of_boundary(below);
  return {HomeKind::layer, layer};
}

// Which of two boundaries beside a fracture: the one whose weaker layer has the grains its writer named, then
// the nearer, then the one with more flags, then the upper.
bool Places::better(std::int32_t one, std::int32_t other, std::int32_t depth, std::uint8_t form) const {
  const auto key = [&](std::int32_t boundary) {
    const pit::Layer& weak = pit_->layers()[at(weaker(boundary))];
    const bool other_grains = form == 0 || main_form(weak.form) != form;
    const std::int64_t depth_of = pit_->boundaries()[at(boundary)].depth;
    return std::make_tuple(other_grains, apart(depth, depth_of, depth_of), -flags_met(boundary), boundary);
  };
  return key(one) < key(other);
}

Home Places::of_depth(std::int32_t depth, std::uint8_t form) const {
  const std::vector<pit::Boundary>& boundaries = pit_->boundaries();
  const auto after = std::lower_bound(
      boundaries.begin(), boundaries.end(), depth,
      [](const pit::Boundary& boundary, std::int32_t value) { return boundary.depth < value; });
  std::int32_t best = -1;
  const std::int32_t next = static_cast<std::int32_t>(after - boundaries.begin());
  for (const std::int32_t candidate : {next - 1, next}) {
    if (candidate < 0 || at(candidate) >= boundaries.size()) continue;
    const std::int64_t there = boundaries[at(candidate)].depth;
    if (apart(depth, there, there) > tolerance_) continue;
    if (best < 0 || better(candidate, best, depth, form)) best = candidate;
  }
  return best >= 0 ? of_boundary(best) : away_from_boundaries(depth);
}

Home Places::away_from_boundaries(std::int32_t depth) const {
  const std::vector<pit::Layer>& layers = pit_->layers();
  const auto after =
      std::upper_bound(layers.begin(), layers.end(), depth, [](std::int32_t value, const pit::Layer& layer) {
        return layer.top == pit::kUnknown || value < layer.top;
      });
  const std::int32_t next = static_cast<std::int32_t>(after - layers.begin());
  for (const std::int32_t candidate : {next - 1, next}) {
    if (candidate < 0 || at(candidate) >= layers.size()) continue;
    const pit::Layer& layer = layers[at(candidate)];
    if (!layer.has_span() || !alone(candidate)) continue;
    const std::int64_t to_edge =
        std::min(apart(depth, layer.top, layer.top), apart(depth, layer.bottom, layer.bottom));
    if (to_edge <= tolerance_) return {HomeKind::layer, candidate};
  }
  const std::int32_t inside = pit_->layer_at(depth);
  return inside >= 0 ? Home{HomeKind::inside_layer, inside} : Home{HomeKind::open, -1};
}

std::int64_t Places::distance(const Home& home, std::int64_t depth) const {
  if (home.kind == HomeKind::boundary) {
    const std::int64_t there = pit_->boundaries()[at(home.index)].depth;
    return apart(depth, there, there);
  }
  const pit::Layer& layer = pit_->layers()[at(home.index)];
  return layer.has_span() ? apart(depth, layer.top, layer.bottom) : INT64_MAX;
}

}  // namespace firn::interpretation
