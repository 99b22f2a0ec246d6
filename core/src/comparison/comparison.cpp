#include "comparison/comparison.h"

#include <algorithm>
#include <limits>
#include <tuple>

#include "comparison/pairing.h"
#include "pit/verify.h"
#include "support/place.h"

namespace firn::comparison {
namespace {

using firnbook::FractureAspect;
using firnbook::FracturePair;
using firnbook::LayerAspect;
using firnbook::LayerPair;
using firnbook::Likeness;
using firnbook::NotComparable;
using firnbook::Pairing;
using firnbook::PitComparison;
using firnbook::TemperaturePair;
using firnbook::TestPair;

// What was compared of one pair, and what of it its observer marked as unreliable.
struct Known {
  std::uint16_t mask = 0;
  std::uint16_t unreliable = 0;

  template <class Aspect>
  void add(Aspect aspect, bool in_doubt) {
    const auto bit = static_cast<std::uint16_t>(1u << static_cast<unsigned>(aspect));
    mask = static_cast<std::uint16_t>(mask | bit);
    if (in_doubt) unreliable = static_cast<std::uint16_t>(unreliable | bit);
  }
};

// Other minus reference; nothing when one is not known, or when the difference does not fit.
template <class Aspect>
std::int32_t difference(std::int32_t reference, std::int32_t other, Aspect aspect, bool in_doubt,
                        Known& known) {
  if (reference == pit::kUnknown || other == pit::kUnknown) return 0;
  const std::int64_t value = std::int64_t{other} - reference;
  if (value < std::numeric_limits<std::int32_t>::min() || value > std::numeric_limits<std::int32_t>::max())
    return 0;
  known.add(aspect, in_doubt);
  return static_cast<std::int32_t>(value);
}

// The same for codes, of which 0 stands for none.
template <class Aspect>
std::int16_t code_difference(std::uint8_t reference, std::uint8_t other, Aspect aspect, bool in_doubt,
                             Known& known) {
  if (reference == 0 || other == 0) return 0;
  known.add(aspect, in_doubt);
  return static_cast<std::int16_t>(other - reference);
}

using Group = std::uint8_t (*)(std::uint8_t);

std::uint8_t alone(std::uint8_t value) {
  return value;
}
std::uint8_t main_class_of(std::uint8_t form) {
  return static_cast<std::uint8_t>(form / 10);
}
// Sudden, resistant, or a break: the groups of the observation guidelines.
std::uint8_t character_group(std::uint8_t character) {
  using firnbook::FractureCharacter;
  switch (static_cast<FractureCharacter>(character)) {
    case FractureCharacter::SP:
    case FractureCharacter::SC:
    case FractureCharacter::SDN:
      return 1;
    case FractureCharacter::RP:
    case FractureCharacter::PC:
    case FractureCharacter::RES:
      return 2;
    default:
      return static_cast<std::uint8_t>(character + 2);
  }
}

template <class Aspect>
Likeness likeness(std::uint8_t reference, std::uint8_t other, Group group, Aspect aspect, bool in_doubt,
                  Known& known) {
  if (reference == 0 || other == 0) return Likeness::unknown;
  known.add(aspect, in_doubt);
  if (reference == other) return Likeness::same;
  return group(reference) == group(other) ? Likeness::same_group : Likeness::different;
}

// --- layers ----------------------------------------------------------------------------------------------

bool in_doubt(const pit::Layer& layer, int whole, int part) {
  return layer.is_unreliable(field_id(whole)) || layer.is_unreliable(field_id(part));
}

LayerPair lone_layer(std::int32_t reference, std::int32_t other, Pairing pairing, NotComparable reason) {
  return {reference, other, 0, 0, 0, 0, 0, 0, 0, 0, 0, Likeness::unknown, pairing, reason};
}

LayerPair compare_layers(const pit::Layer& a, const pit::Layer& b) {
  using firnbook::Layer;
  const auto doubted = [&](int whole, int part) {
    return in_doubt(a, whole, part) || in_doubt(b, whole, part);
  };
  const auto one = [&](int field) { return doubted(field, field); };
  Known known;
  const std::int32_t top = difference(a.top, b.top, LayerAspect::top, one(Layer::VT_TOP), known);
  const std::int32_t bottom =
      difference(a.bottom, b.bottom, LayerAspect::bottom, one(Layer::VT_BOTTOM), known);
  const std::int32_t size =
      difference(a.size, b.size, LayerAspect::size, one(Layer::VT_GRAIN_SIZE_10UM), known);
  const std::int32_t size_max =
      difference(a.size_max, b.size_max, LayerAspect::size_max, one(Layer::VT_GRAIN_SIZE_MAX_10UM), known);
  const std::int16_t hardness_top =
      code_difference(a.hardness_top, b.hardness_top, LayerAspect::hardness_top,
                      doubted(Layer::VT_HARDNESS, Layer::VT_HARDNESS_TOP), known);
  const std::int16_t hardness_bottom =
      code_difference(a.hardness_bottom, b.hardness_bottom, LayerAspect::hardness_bottom,
                      doubted(Layer::VT_HARDNESS, Layer::VT_HARDNESS_BOTTOM), known);
  const std::int16_t wetness =
      code_difference(a.wetness, b.wetness, LayerAspect::wetness, one(Layer::VT_WETNESS), known);
  const Likeness form =
      likeness(a.form, b.form, main_class_of, LayerAspect::form, one(Layer::VT_GRAIN_FORM), known);
  return {static_cast<std::int32_t>(a.stored),
          static_cast<std::int32_t>(b.stored),
          top,
          bottom,
          size,
          size_max,
          hardness_top,
          hardness_bottom,
          wetness,
          known.mask,
          known.unreliable,
          form,
          Pairing::both,
          NotComparable::none};
}

class LayerLister {
 public:
  LayerLister(const pit::View& reference, const pit::View& other) : reference_(reference), other_(other) {}

  std::vector<LayerPair> list(std::int32_t apart_10um) {
    if (reference_.direction() != other_.direction()) {
      reject_all(reference_, rejected_reference_);
      reject_all(other_, rejected_other_);
    } else {
      gather_spans(reference_, spans_, rejected_reference_);
      gather_spans(other_, other_spans_, rejected_other_);
      pair_spans(spans_, other_spans_, apart_10um);
      list_spans();
    }
    for (const Rejected& one : rejected_reference_) {
      out_.push_back(lone_layer(stored(reference_, one.layer), -1, Pairing::not_comparable, one.reason));
    }
    for (const Rejected& one : rejected_other_) {
      out_.push_back(lone_layer(-1, stored(other_, one.layer), Pairing::not_comparable, one.reason));
    }
    return std::move(out_);
  }

 private:
  static std::int32_t stored(const pit::View& pit, std::uint32_t layer) {
    return static_cast<std::int32_t>(pit.layers()[layer].stored);
  }

  static void reject_all(const pit::View& pit, std::vector<Rejected>& rejected) {
    for (std::uint32_t i = 0; i < pit.layers().size(); ++i) {
      const bool known = pit.layers()[i].has_span();
      rejected.push_back({i, known ? NotComparable::directions_differ : NotComparable::depth_unknown});
    }
  }

  void list_spans() {
    std::size_t i = 0, j = 0;
    while (i < spans_.size() || j < other_spans_.size()) {
      const bool a = i < spans_.size(), b = j < other_spans_.size();
      const bool a_alone = a && spans_[i].partner < 0;
      const bool b_alone = b && other_spans_[j].partner < 0;
      if (a && b && !a_alone && !b_alone) {
        out_.push_back(
            compare_layers(reference_.layers()[spans_[i++].layer], other_.layers()[other_spans_[j++].layer]));
      } else if (a_alone && (!b_alone || spans_[i].top <= other_spans_[j].top)) {
        out_.push_back(lone_layer(stored(reference_, spans_[i++].layer), -1, Pairing::only_in_reference,
                                  NotComparable::none));
      } else {
        out_.push_back(lone_layer(-1, stored(other_, other_spans_[j++].layer), Pairing::only_in_other,
                                  NotComparable::none));
      }
    }
  }

  const pit::View& reference_;
  const pit::View& other_;
  std::vector<Span> spans_, other_spans_;
  std::vector<Rejected> rejected_reference_, rejected_other_;
  std::vector<LayerPair> out_;
};

// --- tests -----------------------------------------------------------------------------------------------

class TestLister {
 public:
  TestLister(const pit::View& reference, const pit::View& other, std::int32_t apart_10um)
      : reference_(reference),
        other_(other),
        apart_(apart_10um),
        same_direction_(reference.direction() == other.direction()) {}

  void run() {
    const std::vector<std::uint32_t> a = by_kind(reference_), b = by_kind(other_);
    std::size_t i = 0, j = 0;
    while (i < a.size() || j < b.size()) {
      const int kind_a = i < a.size() ? kind_of(reference_, a[i]) : kBehindAll;
      const int kind_b = j < b.size() ? kind_of(other_, b[j]) : kBehindAll;
      const bool unknown = std::min(kind_a, kind_b) == 0;
      if (kind_a == kind_b && !unknown) {
        both(reference_.tests()[a[i++]], other_.tests()[b[j++]]);
      } else if (kind_a <= kind_b) {
        lone(reference_.tests()[a[i++]], true, unknown);
      } else {
        lone(other_.tests()[b[j++]], false, unknown);
      }
    }
  }

  std::vector<TestPair> tests;
  std::vector<FracturePair> fractures;

 private:
  static constexpr int kBehindAll = 256;

  static int kind_of(const pit::View& pit, std::uint32_t test) {
    return static_cast<int>(pit.tests()[test].kind);
  }

  // Positions in order of kind, each kind in the order in which its tests stand.
  static std::vector<std::uint32_t> by_kind(const pit::View& pit) {
    std::vector<std::uint32_t> order(pit.tests().size());
    for (std::uint32_t i = 0; i < order.size(); ++i) order[i] = i;
    std::sort(order.begin(), order.end(), [&](std::uint32_t a, std::uint32_t b) {
      return std::make_tuple(kind_of(pit, a), a) < std::make_tuple(kind_of(pit, b), b);
    });
    return order;
  }

  void lone(const pit::Test& test, bool in_reference, bool unknown) {
    const auto stored = static_cast<std::int32_t>(test.stored);
    const Pairing alone_in = in_reference ? Pairing::only_in_reference : Pairing::only_in_other;
    tests.emplace_back(in_reference ? stored : -1, in_reference ? -1 : stored, test.kind,
                       unknown ? Pairing::not_comparable : alone_in, Likeness::unknown,
                       unknown ? NotComparable::kind_unknown : NotComparable::none);
  }

  void both(const pit::Test& a, const pit::Test& b) {
    const Likeness outcome = a.outcome == 0 || b.outcome == 0 ? Likeness::unknown
                             : a.outcome == b.outcome         ? Likeness::same
                                                              : Likeness::different;
    tests.emplace_back(static_cast<std::int32_t>(a.stored), static_cast<std::int32_t>(b.stored), a.kind,
                       Pairing::both, outcome, NotComparable::none);
    points(reference_, a, reference_points_, without_depth_);
    const std::size_t lost_in_reference = without_depth_.size();
    points(other_, b, other_points_, without_depth_);
    // One fracture each: they are the tests' results, also where a depth cannot be told.
    const bool one_each = a.fracture_count == 1 && b.fracture_count == 1;
    if (one_each && !without_depth_.empty()) {
      compare_fractures(a.first_fracture, b.first_fracture);
    } else {
      pair_points(reference_points_, other_points_, apart_, pairs_);
      for (const PointPair& pair : pairs_) fracture(pair);
      for (std::size_t i = 0; i < without_depth_.size(); ++i) {
        lone_fracture(without_depth_[i], i < lost_in_reference, Pairing::not_comparable,
                      reason(i, lost_in_reference));
      }
    }
    pairs_.clear();
    without_depth_.clear();
  }

  NotComparable reason(std::size_t i, std::size_t lost_in_reference) const {
    const pit::View& pit = i < lost_in_reference ? reference_ : other_;
    const bool known = pit.fractures()[without_depth_[i]].depth != pit::kUnknown;
    return known ? NotComparable::directions_differ : NotComparable::depth_unknown;
  }

  void points(const pit::View& pit, const pit::Test& test, std::vector<Point>& out,
              std::vector<std::uint32_t>& without_depth) const {
    out.clear();
    for (std::uint32_t i = 0; i < test.fracture_count; ++i) {
      const std::uint32_t index = test.first_fracture + i;
      const std::int32_t depth = pit.fractures()[index].depth;
      if (depth == pit::kUnknown || !same_direction_) {
        without_depth.push_back(index);
      } else {
        out.push_back({depth, index});
      }
    }
    std::sort(out.begin(), out.end(), [](const Point& a, const Point& b) {
      return std::make_tuple(a.depth, a.index) < std::make_tuple(b.depth, b.index);
    });
  }

  void fracture(const PointPair& pair) {
    const std::uint32_t a =
        pair.reference < 0 ? 0 : reference_points_[static_cast<std::size_t>(pair.reference)].index;
    const std::uint32_t b = pair.other < 0 ? 0 : other_points_[static_cast<std::size_t>(pair.other)].index;
    if (pair.other < 0) {
      lone_fracture(a, true, Pairing::only_in_reference, NotComparable::none);
    } else if (pair.reference < 0) {
      lone_fracture(b, false, Pairing::only_in_other, NotComparable::none);
    } else {
      compare_fractures(a, b);
    }
  }

  std::int32_t this_test() const { return static_cast<std::int32_t>(tests.size()) - 1; }

  void lone_fracture(std::uint32_t index, bool in_reference, Pairing pairing, NotComparable reason) {
    const pit::View& pit = in_reference ? reference_ : other_;
    const auto stored = static_cast<std::int32_t>(pit.fractures()[index].stored);
    constexpr Likeness kNo = Likeness::unknown;
    fractures.emplace_back(this_test(), in_reference ? stored : -1, in_reference ? -1 : stored, 0, 0,
                           std::int16_t{0}, std::int16_t{0}, std::int16_t{0}, std::int16_t{0},
                           std::uint16_t{0}, std::uint16_t{0}, kNo, kNo, kNo, kNo, kNo, kNo, pairing, reason);
  }

  void compare_fractures(std::uint32_t in_reference, std::uint32_t in_other) {
    using firnbook::Fracture;
    const pit::Fracture& a = reference_.fractures()[in_reference];
    const pit::Fracture& b = other_.fractures()[in_other];
    const auto doubted = [&](int field) {
      return ((a.unreliable | b.unreliable) >> field_id(field) & 1) != 0;
    };
    Known known;
    const std::int32_t depth = difference(same_direction_ ? a.depth : pit::kUnknown, b.depth,
                                          FractureAspect::depth, doubted(Fracture::VT_DEPTH), known);
    const std::int32_t cut =
        difference(a.cut, b.cut, FractureAspect::cut, doubted(Fracture::VT_CUT_10UM), known);
    const auto number = [&](std::uint8_t x, std::uint8_t y, FractureAspect aspect, int field) {
      return code_difference(x, y, aspect, doubted(field), known);
    };
    const auto like = [&](std::uint8_t x, std::uint8_t y, FractureAspect aspect, int field,
                          Group group = alone) {
      return likeness(x, y, group, aspect, doubted(field), known);
    };
    const std::int16_t tap = number(a.tap, b.tap, FractureAspect::tap, Fracture::VT_TAP);
    const std::int16_t crossed =
        number(a.tap_crossed, b.tap_crossed, FractureAspect::tap_crossed, Fracture::VT_TAP_CROSSED);
    const std::int16_t step = number(a.step, b.step, FractureAspect::step, Fracture::VT_STEP);
    const std::int16_t ease = number(a.ease, b.ease, FractureAspect::ease, Fracture::VT_EASE);
    const Likeness stage = like(a.stage, b.stage, FractureAspect::stage, Fracture::VT_STAGE);
    const Likeness character =
        like(a.character, b.character, FractureAspect::character, Fracture::VT_CHARACTER, character_group);
    const Likeness quality = like(a.quality, b.quality, FractureAspect::quality, Fracture::VT_QUALITY);
    const Likeness crossing = like(a.crossing, b.crossing, FractureAspect::crossing, Fracture::VT_CROSSING);
    const Likeness release = like(a.release, b.release, FractureAspect::release, Fracture::VT_RELEASE);
    const Likeness saw_end = like(a.saw_end, b.saw_end, FractureAspect::saw_end, Fracture::VT_SAW_END);
    fractures.emplace_back(this_test(), static_cast<std::int32_t>(a.stored),
                           static_cast<std::int32_t>(b.stored), depth, cut, tap, crossed, step, ease,
                           known.mask, known.unreliable, stage, character, quality, crossing, release,
                           saw_end, Pairing::both, NotComparable::none);
  }

  const pit::View& reference_;
  const pit::View& other_;
  const std::int32_t apart_;
  const bool same_direction_;
  std::vector<Point> reference_points_, other_points_;
  std::vector<std::uint32_t> without_depth_;
  std::vector<PointPair> pairs_;
};

// --- temperatures ----------------------------------------------------------------------------------------

void gather_readings(const pit::View& pit, std::vector<Point>& out) {
  for (std::uint32_t i = 0; i < pit.temperatures().size(); ++i) {
    const pit::Temperature& one = pit.temperatures()[i];
    if (one.depth != pit::kUnknown && one.cdegc != pit::kUnknown) out.push_back({one.depth, i});
  }
}

std::vector<TemperaturePair> pair_temperatures(const pit::View& reference, const pit::View& other,
                                               std::int32_t apart_10um) {
  std::vector<TemperaturePair> out;
  if (reference.direction() != other.direction()) return out;
  std::vector<Point> a, b;
  gather_readings(reference, a);
  gather_readings(other, b);
  std::vector<PointPair> pairs;
  pair_points(a, b, apart_10um, pairs);
  for (const PointPair& pair : pairs) {
    if (pair.reference < 0 || pair.other < 0) continue;
    const pit::Temperature& x = reference.temperatures()[a[static_cast<std::size_t>(pair.reference)].index];
    const pit::Temperature& y = other.temperatures()[b[static_cast<std::size_t>(pair.other)].index];
    const std::int64_t warmer = std::int64_t{y.cdegc} - x.cdegc;
    if (warmer < std::numeric_limits<std::int32_t>::min() ||
        warmer > std::numeric_limits<std::int32_t>::max())
      continue;
    const bool doubted = x.unreliable || y.unreliable;
    out.emplace_back(static_cast<std::int32_t>(x.stored), static_cast<std::int32_t>(y.stored), x.depth,
                     static_cast<std::int32_t>(warmer), static_cast<std::uint8_t>(doubted ? 1 : 0));
  }
  return out;
}

}  // namespace

bool is_too_large(const pit::View& pit) {
  return pit.layers().size() > kMostListed || pit.tests().size() > kMostListed ||
         pit.fractures().size() > kMostListed || pit.temperatures().size() > kMostListed;
}

std::vector<LayerPair> pair_layers(const pit::View& reference, const pit::View& other,
                                   const Parameters& parameters) {
  return LayerLister(reference, other).list(parameters.layer_apart_10um);
}

void compare(const pit::View& reference, const pit::View& other, const Parameters& parameters,
             Checksums checksums, flatbuffers::FlatBufferBuilder& builder) {
  TestLister lister(reference, other, parameters.fracture_apart_10um);
  lister.run();
  builder.Clear();
  const auto layers = builder.CreateVectorOfStructs(pair_layers(reference, other, parameters));
  const auto tests = builder.CreateVectorOfStructs(lister.tests);
  const auto fractures = builder.CreateVectorOfStructs(lister.fractures);
  const auto temperatures =
      builder.CreateVectorOfStructs(pair_temperatures(reference, other, parameters.temperature_apart_10um));
  Known known;
  const bool same_direction = reference.direction() == other.direction();
  const std::int32_t hs =
      difference(reference.hs(), same_direction ? other.hs() : pit::kUnknown, LayerAspect::top, false, known);
  firnbook::PitComparisonBuilder table(builder);
  table.add_schema_minor(pit::kSchemaMinor);
  table.add_reference_crc32(checksums.reference);
  table.add_other_crc32(checksums.other);
  if (known.mask != 0) table.add_hs_10um(hs);
  table.add_layers(layers);
  table.add_tests(tests);
  table.add_fractures(fractures);
  table.add_temperatures(temperatures);
  table.add_layer_apart_10um(parameters.layer_apart_10um);
  table.add_fracture_apart_10um(parameters.fracture_apart_10um);
  table.add_temperature_apart_10um(parameters.temperature_apart_10um);
  firnbook::FinishPitComparisonBuffer(builder, table.Finish());
}

}  // namespace firn::comparison
