// Gathers findings into concerns and puts them in order.
//
// Concerns are the union over all methods: whatever broke, looks weak by the flags or was marked by the
// observer makes one, and no result of another method takes it away. The order follows these rules in
// sequence; it is no score, and nothing is added up or averaged:
//   1. what is known of it (ConcernRank): a crack ran; broke suddenly; broke; structure; a break that says
//   little
//   2. ease: the lowest tap at which anything there broke; while isolating comes first
//   3. more yellow flags first
//   4. shallower first; unknown depths last
// Rules 2 to 4 are ours. That propagation tells more than the loading step is said of the extended column
// test by Techel et al. 2020 (abstract, read); that sudden fractures tell more than others by van Herwijnen
// and Jamieson 2007 (abstract, read).
#include <tuple>

#include "interpretation/evidence.h"

namespace firn::interpretation {

using firnbook::ConcernKind;
using firnbook::ConcernRank;

namespace {

// Computed from measurements and estimates, and no observation of its own.
bool is_computed(const Finding& finding) {
  return finding.method() == Method::skier_stability || finding.method() == Method::critical_crack_length;
}

}  // namespace

ConcernRank rank_of(const pit::View& pit, const Finding& finding) {
  switch (finding.key()) {
    case FindingKey::ect_crossed_before_22:
    case FindingKey::ect_crossed_from_22:
    case FindingKey::ect_crossed_tap_unknown:
    case FindingKey::pst_propagation_likely:
      return ConcernRank::propagated;
    case FindingKey::ct_sudden:
    case FindingKey::ct_quality_one:
      return ConcernRank::sudden;
    case FindingKey::rb_class_one:
    case FindingKey::rb_class_two:
    case FindingKey::rb_class_three:
    case FindingKey::rb_class_unknown:
    case FindingKey::test_fracture: {
      const pit::Fracture* fracture = fracture_of(pit, finding);
      const bool whole = fracture != nullptr && test_of(pit, finding)->kind == TestKind::RB &&
                         fracture->release == static_cast<std::uint8_t>(firnbook::ReleaseType::WB);
      return whole ? ConcernRank::sudden : ConcernRank::broke;
    }
    // Beside the fracture they are about.
    case FindingKey::ect_schemes:
      return finding.a() == 1 ? ConcernRank::propagated : ConcernRank::broke;
    case FindingKey::ect_rules_differ:
      return ConcernRank::propagated;
    case FindingKey::ct_break:
      return ConcernRank::little;
    case FindingKey::flag_count:
    case FindingKey::threshold_sum:
    case FindingKey::lemons:
    case FindingKey::weak_layer_build:
    case FindingKey::marked_by_observer:
      return ConcernRank::structure;
    default:
      return is_computed(finding) ? ConcernRank::structure : ConcernRank::broke;
  }
}

namespace {

std::size_t at(std::int32_t index) {
  return static_cast<std::size_t>(index);
}

// A saw that met no run says where somebody looked, not that something broke; what tells more of a fracture
// or of how a test was made stands beside the finding that founds, and so do facts of structure.
bool founds(const Finding& finding) {
  switch (finding.key()) {
    case FindingKey::pst_no_fracture:
    case FindingKey::pst_ends_slope_normal:
    case FindingKey::pst_length_off_rule:
    case FindingKey::ect_schemes:
    case FindingKey::ect_rules_differ:
    case FindingKey::ect_not_crossed_early:
    case FindingKey::shear_quality_other:
    case FindingKey::rb_outside_depth:
    case FindingKey::lemons:
    case FindingKey::weak_layer_build:
      return false;
    case FindingKey::threshold_sum:
      return finding.verdict() == Verdict::raises;
    default:
      // One more measurement moves an index, and must not take a concern away.
      return !is_computed(finding);
  }
}

// Findings of a boundary that are evidence where there is a concern, besides the flags. Load, stress and
// strength are facts that others rest on, and stay out; so does a weak layer that is not thin.
bool is_structure(const Finding& finding) {
  switch (finding.method()) {
    case Method::threshold_sum:
    case Method::lemons:
    case Method::critical_crack_length:
      return true;
    case Method::weak_layer_build:
      return (finding.c() & 1) != 0;
    case Method::skier_stability:
      return finding.key() != FindingKey::skier_index_not_persistent &&
             finding.key() != FindingKey::skier_index_slab_alone;
    default:
      return false;
  }
}

// Taps that can be compared: a deep tap test has no slab, a saw no taps. A rutschblock that breaks while it
// is cut, or a shovel shear that collapses, broke while isolating.
std::int32_t ease_of(const pit::View& pit, const Finding& finding) {
  const pit::Fracture* fracture = fracture_of(pit, finding);
  if (fracture == nullptr) return kNoEase;
  switch (test_of(pit, finding)->kind) {
    case TestKind::CT:
    case TestKind::ECT:
      return easiest_tap(*fracture);
    case TestKind::RB:
      return fracture->step == 1 ? 0 : kNoEase;
    case TestKind::ST:
    case TestKind::hand_shear:
      return fracture->ease == static_cast<std::uint8_t>(firnbook::ShearEase::C) ? 0 : kNoEase;
    default:
      return load_stage(*fracture) == static_cast<std::uint8_t>(firnbook::LoadStage::isolating) ? 0 : kNoEase;
  }
}

// Order of evidence within a concern: does it run, does it start, what else broke, who marked it, how it is
// built.
std::int32_t order_of_method(Method method) {
  switch (method) {
    case Method::extended_column_swiss:
    case Method::extended_column_schemes:
    case Method::extended_column_early:
    case Method::saw_test:
      return 0;
    case Method::compression_test:
    case Method::deep_tap_test:
    case Method::shear_quality:
      return 1;
    case Method::rutschblock_swiss:
    case Method::shear_tests:
    case Method::unclassed_tests:
      return 2;
    case Method::yellow_flags:
      return 4;
    case Method::threshold_sum:
    case Method::lemons:
    case Method::weak_layer_build:
    case Method::skier_stability:
    case Method::critical_crack_length:
      return 5;
    case Method::temperature_gradient:
      return 6;
    default:
      return 3;
  }
}

class Gatherer {
 public:
  Gatherer(const pit::View& pit, const Parameters& parameters, Analysis& analysis)
      : pit_(pit),
        parameters_(parameters),
        analysis_(analysis),
        places_(analysis.workspace.places),
        seeds_(analysis.workspace.seeds),
        gradients_(analysis.workspace.strong_gradients),
        reading_(analysis.workspace.reading),
        tolerance_(parameters.tolerance_10um < 0 ? 0 : parameters.tolerance_10um) {}

  void run() {
    seeds_.clear();
    gradients_.clear();
    map_boundaries();
    seed_findings();
    seed_structure();
    std::sort(seeds_.begin(), seeds_.end());
    const Seed* const end = seeds_.data() + seeds_.size();
    for (const Seed* from = seeds_.data(); from != end;) {
      const Seed* to = from + 1;
      while (to != end && together(*(to - 1), *to)) ++to;
      gather(from, to);
      from = to;
    }
    order();
  }

 private:
  const Finding& finding(std::uint32_t index) const { return analysis_.findings[index]; }

  void put(const Home& home, std::int32_t depth, std::uint32_t index) {
    const Finding& one = finding(index);
    seeds_.emplace_back(home, depth, index);
    seeds_.back().rank = rank_of(pit_, one);
    seeds_.back().ease = ease_of(pit_, one);
    seeds_.back().founds = founds(one);
  }

  void seed_findings() {
    std::size_t marked = 0;  // marks come in the order of the layers
    const std::uint32_t count = static_cast<std::uint32_t>(analysis_.findings.size());
    for (std::uint32_t i = 0; i < count; ++i) {
      const Finding& one = finding(i);
      if (one.method() == Method::yellow_flags) continue;  // seed_structure counts them
      if (one.subject().thing() == Thing::fracture) seed_fracture(i);
      if (one.key() == FindingKey::gradient_strong || one.key() == FindingKey::gradient_near_crust)
        gradients_.push_back(i);
      if (is_structure(one)) seed_boundary(i);
      if (one.key() != FindingKey::marked_by_observer) continue;
      const std::uint32_t stored = static_cast<std::uint32_t>(one.subject().index());
      while (marked < pit_.layers().size() && pit_.layers()[marked].stored != stored) ++marked;
      if (marked < pit_.layers().size()) seed_mark(i, static_cast<std::int32_t>(marked));
    }
  }

  // Those of layers without neighbours have no home but the layer, which the flags found already.
  void seed_boundary(std::uint32_t index) {
    const firnbook::Place& subject = finding(index).subject();
    if (subject.thing() != Thing::boundary) return;
    const std::int32_t boundary = analysis_.workspace.boundary_of_layer[at(subject.index())];
    if (boundary >= 0) put(places_.of_boundary(boundary), 0, index);
  }
  void map_boundaries() {
    std::vector<std::int32_t>& map = analysis_.workspace.boundary_of_layer;
    map.assign(pit_.layers().size(), -1);
    for (std::size_t b = 0; b < pit_.boundaries().size(); ++b) {
      map[pit_.layers()[pit_.boundaries()[b].above].stored] = static_cast<std::int32_t>(b);
    }
  }

  // A named layer is where the test says it broke. When the depth says otherwise one of the two is a slip,
  // and nobody can tell which: both places get the evidence.
  void seed_fracture(std::uint32_t index) {
    const pit::Fracture& fracture = *fracture_of(pit_, finding(index));
    const firnbook::Layer* on = fracture.raw->on();
    const std::uint8_t form = on == nullptr ? std::uint8_t{0} : main_form(pit::number(on->grain_form()));
    const std::int32_t named = on == nullptr ? -1 : places_.named(*on);
    const std::int32_t depth = finding(index).depth_10um();
    if (depth < 0) return seed_without_depth(index, fracture, named >= 0 ? named : places_.only_one_of(form));
    const Home by_depth = places_.of_depth(depth, form);
    if (named < 0) return put(by_depth, depth, index);
    const Home by_name = places_.of_layer(named);
    if (places_.distance(by_name, depth) <= tolerance_) return put(by_name, depth, index);
    put(by_depth, depth, index);
    if (!reaches(named, depth) && !(by_name == by_depth)) put(by_name, depth, index);
  }

  // "@75" with an unknown zero: equal numbers are taken as one place, others are kept apart.
  void seed_without_depth(std::uint32_t index, const pit::Fracture& fracture, std::int32_t layer) {
    if (layer >= 0) return put(places_.of_layer(layer), 0, index);
    const firnbook::Depth* depth = fracture.raw->depth();
    if (depth == nullptr) return put({HomeKind::unplaced, -1}, 0, index);
    const std::int32_t zero =
        static_cast<std::int32_t>(depth->datum()) * 256 + static_cast<std::int32_t>(depth->direction());
    put({HomeKind::unplaced, zero}, depth->value_10um(), index);
  }

  bool reaches(std::int32_t position, std::int64_t depth) const {
    const pit::Layer& layer = pit_.layers()[at(position)];
    return layer.has_span() && depth >= layer.top - tolerance_ && depth <= layer.bottom + tolerance_;
  }

  void seed_mark(std::uint32_t index, std::int32_t layer) {
    const bool bottom = finding(index).a() == static_cast<std::int32_t>(firnbook::PartOfLayer::bottom);
    const std::int32_t below = places_.boundary_below(layer);
    put(bottom && below >= 0 ? places_.of_boundary(below) : places_.of_layer(layer), 0, index);
  }

  void seed_structure() {
    for (std::int32_t b = 0; at(b) < pit_.boundaries().size(); ++b) {
      const std::int32_t count = places_.count_of_boundary(b);
      if (count >= 0 && looks_weak(at(count), places_.weaker(b))) {
        put(places_.of_boundary(b), 0, static_cast<std::uint32_t>(count));
      }
    }
    for (std::int32_t l = 0; at(l) < pit_.layers().size(); ++l) {
      const std::int32_t count = places_.count_of_layer(l);
      if (count >= 0 && looks_weak(at(count), l)) {
        put({HomeKind::layer, l}, 0, static_cast<std::uint32_t>(count));
      }
    }
  }

  // Structure alone makes a concern at the usual warning level, and (ours, to miss no weak layer that was
  // described in few words) where a layer with something on it has persistent grains and neither its softness
  // nor its grain size speaks against it. The six flags stand before their count.
  bool looks_weak(std::size_t count, std::int32_t weaker) const {
    const Finding* flags = &analysis_.findings[count] - 6;
    if (flags[6].verdict() == Verdict::raises) return true;
    const bool buried = pit_.layers()[at(weaker)].top == pit::kUnknown || pit_.layers()[at(weaker)].top > 0;
    return buried && flags[2].verdict() == Verdict::raises && flags[1].verdict() != Verdict::not_met &&
           flags[0].verdict() != Verdict::not_met;
  }

  bool together(const Seed& one, const Seed& other) const {
    if (one.where != other.where) return false;
    const HomeKind kind = one.home().kind;
    if (kind == HomeKind::unplaced) return one.depth() == other.depth();
    const bool by_depth = kind == HomeKind::inside_layer || kind == HomeKind::open;
    return !by_depth || std::int64_t{other.depth()} - one.depth() <= tolerance_;
  }

  void gather(const Seed* from, const Seed* to) {
    if (std::none_of(from, to, [](const Seed& seed) { return seed.founds; })) return;
    Concern& concern = analysis_.concerns.emplace_back();
    describe(*from, *(to - 1), concern);
    rank(concern, from, to);
    reading_.clear();
    const Home home = from->home();
    const Edges edges = home.kind == HomeKind::layer ? edges_of(home.index) : Edges{-1, -1, -1};
    for (const Seed* seed = from; seed != to; ++seed) {
      const Finding& one = finding(seed->finding());
      if (one.method() != Method::yellow_flags && !is_said_twice(one, edges.lead, from, to)) read(*seed);
    }
    add_flags(concern, home, edges);
    add_gradients(concern);
    std::sort(reading_.begin(), reading_.end());
    concern.first_evidence = static_cast<std::uint32_t>(analysis_.evidence.size());
    for (const Reading& one : reading_) analysis_.evidence.push_back(one.finding());
    concern.evidence_count = static_cast<std::uint32_t>(reading_.size());
  }

  // What several methods say of one fracture stays together.
  void read(const Seed& seed) {
    const Finding& one = finding(seed.finding());
    const firnbook::Place& subject = one.subject();
    const std::int32_t first =
        order_of_method(one.method()) << 16 | static_cast<std::int32_t>(seed.rank) << 8 | seed.ease;
    const bool tested = subject.thing() == Thing::fracture;
    reading_.emplace_back(first, tested ? subject.index() : 0, tested ? subject.sub() : 0, seed.finding());
  }
  // Of what is no test.
  void read(std::uint32_t index) {
    const Finding& one = finding(index);
    const std::int32_t first =
        order_of_method(one.method()) << 16 | static_cast<std::int32_t>(rank_of(pit_, one)) << 8 | kNoEase;
    reading_.emplace_back(first, 0, 0, index);
  }

  void describe(const Seed& first, const Seed& last, Concern& concern) const {
    const Home home = first.home();
    concern.kind = ConcernKind::depth_only;
    concern.layer = concern.layer_below = concern.weaker_layer = concern.weaker_pos = -1;
    concern.top = concern.bottom = kNoDepth;
    concern.rank = ConcernRank::little;
    concern.ease = kNoEase;
    concern.reading = firnbook::ConcernReading::not_tested;
    concern.reach = firnbook::ConcernReach::none;
    if (home.kind == HomeKind::boundary) {
      const pit::Boundary& boundary = pit_.boundaries()[at(home.index)];
      concern.kind = ConcernKind::boundary;
      concern.layer = static_cast<std::int32_t>(pit_.layers()[boundary.above].stored);
      concern.layer_below = static_cast<std::int32_t>(pit_.layers()[boundary.below].stored);
      concern.weaker_pos = places_.weaker(home.index);
      concern.top = concern.bottom = known_depth(boundary.depth);
    } else if (home.kind == HomeKind::layer || home.kind == HomeKind::inside_layer) {
      const pit::Layer& layer = pit_.layers()[at(home.index)];
      concern.kind = ConcernKind::layer;
      concern.layer = static_cast<std::int32_t>(layer.stored);
      concern.weaker_pos = home.index;
      concern.top = known_depth(layer.top);
      concern.bottom = known_depth(layer.bottom);
    }
    if (concern.weaker_pos >= 0) {
      concern.weaker_layer = static_cast<std::int32_t>(pit_.layers()[at(concern.weaker_pos)].stored);
    }
    if (home.kind == HomeKind::inside_layer || home.kind == HomeKind::open) {
      concern.top = first.depth();
      concern.bottom = last.depth();
    }
  }

  // Breaks that say little must not make a concern look easier than what broke properly there.
  void rank(Concern& concern, const Seed* from, const Seed* to) const {
    for (const Seed* seed = from; seed != to; ++seed) {
      if (seed->founds) concern.rank = std::min(concern.rank, seed->rank);
    }
    ReadTogether together;
    for (const Seed* seed = from; seed != to; ++seed) {
      const Finding& one = finding(seed->finding());
      if (seed->founds && (seed->rank != ConcernRank::little || concern.rank == ConcernRank::little))
        concern.ease = std::min(concern.ease, seed->ease);
      if (seed->founds || one.key() == FindingKey::pst_no_fracture) together.take(pit_, one, seed->rank);
    }
    concern.reading = together.reading();
    concern.reach = reach_of(concern.top, parameters_);
  }

  // The six flags and their count, or the count alone.
  void add_count(Concern& concern, std::int32_t count, bool with_flags) {
    if (count < 0) return;
    concern.flags_met = std::max(concern.flags_met, flags_of(count));
    for (std::int32_t i = with_flags ? count - 6 : count; i <= count; ++i)
      read(static_cast<std::uint32_t>(i));
  }

  // Of a thin layer both edges are one place: structure is told at the edge that leads, and of the other only
  // what raises there alone.
  bool is_said_twice(const Finding& one, std::int32_t lead, const Seed* from, const Seed* to) const {
    if (lead < 0 || !is_structure(one) || is_at(one, lead)) return false;
    if (one.verdict() != Verdict::raises) return true;
    return std::any_of(from, to, [&](const Seed& seed) {
      const Finding& other = finding(seed.finding());
      return other.method() == one.method() && other.verdict() == Verdict::raises && is_at(other, lead);
    });
  }
  bool is_at(const Finding& one, std::int32_t boundary) const {
    const std::uint32_t above = pit_.layers()[pit_.boundaries()[at(boundary)].above].stored;
    return one.subject().thing() == Thing::boundary &&
           one.subject().index() == static_cast<std::int32_t>(above);
  }

  // The flag counts of both edges of a thin layer, -1 where the edge belongs elsewhere, and the boundary that
  // leads: the one with more flags, else the upper.
  struct Edges {
    std::int32_t above, below, lead;
  };
  Edges edges_of(std::int32_t layer) const {
    const std::int32_t upper = places_.boundary_above(layer);
    const std::int32_t lower = places_.boundary_below(layer);
    const std::int32_t above = edge_count(layer, upper);
    const std::int32_t below = edge_count(layer, lower);
    const bool below_leads = below >= 0 && (above < 0 || flags_of(below) > flags_of(above));
    return {above, below, below_leads ? lower : above >= 0 ? upper : -1};
  }

  // All flags of the boundary with most of them; of the other edge of a thin layer the count alone, since
  // most of its flags are the layer's and would be read twice.
  void add_flags(Concern& concern, const Home& home, const Edges& edges) {
    if (home.kind == HomeKind::boundary)
      return add_count(concern, places_.count_of_boundary(home.index), true);
    if (home.kind != HomeKind::layer) return;
    const bool below_leads = edges.below >= 0 && edges.lead == places_.boundary_below(home.index);
    add_count(concern, edges.above, !below_leads);
    add_count(concern, edges.below, below_leads);
    add_count(concern, places_.count_of_layer(home.index), true);
  }

  std::int32_t edge_count(std::int32_t layer, std::int32_t boundary) const {
    if (boundary < 0 || !(places_.of_boundary(boundary) == Home{HomeKind::layer, layer})) return -1;
    return places_.count_of_boundary(boundary);
  }
  std::int32_t flags_of(std::int32_t count) const { return finding(static_cast<std::uint32_t>(count)).a(); }

  // Gradients come in order of depth and do not overlap.
  void add_gradients(const Concern& concern) {
    if (concern.top < 0) return;
    auto next =
        std::lower_bound(gradients_.begin(), gradients_.end(), concern.top,
                         [this](std::uint32_t index, std::int32_t top) { return finding(index).b() < top; });
    for (; next != gradients_.end() && finding(*next).depth_10um() <= concern.bottom; ++next) {
      read(*next);
    }
  }

  void order() {
    const auto key = [](const Concern& concern) {
      const std::int32_t depth = concern.top < 0 ? INT32_MAX : concern.top;
      return std::make_tuple(concern.rank, concern.ease, -concern.flags_met, depth, concern.first_evidence);
    };
    std::sort(analysis_.concerns.begin(), analysis_.concerns.end(),
              [&key](const Concern& one, const Concern& other) { return key(one) < key(other); });
  }

  const pit::View& pit_;
  const Parameters& parameters_;
  Analysis& analysis_;
  Places& places_;
  std::vector<Seed>& seeds_;
  std::vector<std::uint32_t>& gradients_;
  std::vector<Reading>& reading_;
  const std::int64_t tolerance_;
};

}  // namespace

void gather_concerns(const pit::View& pit, const Parameters& parameters, Analysis& analysis) {
  analysis.concerns.clear();
  analysis.evidence.clear();
  analysis.workspace.places.map(pit, parameters.tolerance_10um, analysis.findings);
  Gatherer(pit, parameters, analysis).run();
}

}  // namespace firn::interpretation
