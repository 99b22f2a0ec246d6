// The comparison as text for a teacher: what stands in both pits side by side, and the differences under it.
#include <string_view>

#include "comparison/comparison.h"
#include "comparison/words.h"
#include "support/fixed_text.h"
#include "support/text.h"
#include "vocabulary/codes.h"

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

constexpr std::size_t kWidth = 100;
constexpr std::size_t kNameBytes = 64;  // more of a name helps nobody to find the pit
constexpr std::uint32_t kMostNames = 6;

template <class Aspect>
bool has(std::uint16_t mask, Aspect aspect) {
  return (mask >> static_cast<unsigned>(aspect) & 1) != 0;
}

template <class V>
bool is_in(const V* vector, std::int32_t position) {
  return position >= 0 && static_cast<std::uint32_t>(position) < pit::size_of(vector);
}

void append_name(std::string& out, std::string_view text) {
  char name[kNameBytes];
  copy_text(name, sizeof name, text);
  out += name;
}

// Parts with semicolons between them, broken where a line would grow too long.
class Parts {
 public:
  Parts(std::string& out, std::string_view indent) : out_(out), indent_(indent) {}

  // The part is appended to what this answers.
  std::string& next() {
    finish_part();
    return part_;
  }
  void say(Word key) { next() += word(key); }
  bool any() const { return any_ || !part_.empty(); }
  void close() {
    finish_part();
    if (any_) out_ += '\n';
  }

 private:
  void finish_part() {
    if (part_.empty()) return;
    if (any_) out_ += ';';
    if (!any_ || column_ + part_.size() + 3 > kWidth) {
      if (any_) out_ += '\n';
      out_ += indent_;
      column_ = indent_.size();
    } else {
      out_ += ' ';
      ++column_;
    }
    out_ += part_;
    column_ += part_.size() + 1;
    part_.clear();
    any_ = true;
  }

  std::string& out_;
  std::string_view indent_;
  std::string part_;
  std::size_t column_ = 0;
  bool any_ = false;
};

std::int64_t size_of_difference(std::int64_t value) {
  return value < 0 ? -value : value;
}

// Sixths as people say them: 8 is "1 1/3".
void append_sixths(std::string& out, std::int64_t sixths) {
  static constexpr const char* kRest[] = {"", "1/6", "1/3", "1/2", "2/3", "5/6"};
  if (sixths >= 6) append_integer(out, sixths / 6);
  if (sixths >= 6 && sixths % 6 != 0) out += ' ';
  out += kRest[sixths % 6];
}

class Writer {
 public:
  Writer(std::string& out, const PitComparison& comparison, const pit::View& reference,
         const pit::View& other)
      : out_(out), comparison_(comparison), reference_(reference), other_(other) {
    index(reference, reference_layers_);
    index(other, other_layers_);
  }

  void write() {
    line(Word::title);
    name(Word::reference, reference_);
    name(Word::other, other_);
    line(Word::preamble);
    line(Word::preamble_more);
    snow_height();
    layers();
    tests();
    temperatures();
    tolerances();
  }

 private:
  static void index(const pit::View& pit, std::vector<std::uint32_t>& positions) {
    positions.resize(pit.layers().size());
    for (std::uint32_t i = 0; i < pit.layers().size(); ++i) positions[pit.layers()[i].stored] = i;
  }

  void line(Word key) {
    out_ += word(key);
    out_ += '\n';
  }
  void heading(Word key) {
    out_ += '\n';
    line(key);
  }

  void name(Word key, const pit::View& pit) {
    out_ += word(key);
    out_ += ": ";
    const std::string_view title = pit::text(pit.raw().title());
    append_name(out_, title.empty() ? std::string_view(word(Word::unnamed)) : title);
    const auto* observers = pit.raw().observers();
    for (std::uint32_t i = 0; i < pit::size_of(observers) && i < kMostNames; ++i) {
      out_ += i == 0 ? " (" : ", ";
      append_name(out_, pit::text(observers->Get(i)->name()));
    }
    if (pit::size_of(observers) > 0) out_ += ')';
    out_ += '\n';
  }

  void append_length(std::string& out, std::int64_t value_10um) {
    append_cm(out, value_10um);
    out += " cm";
  }

  // "3 cm higher"; nothing for no difference.
  void length(Parts& parts, const char* what, std::int64_t value_10um, Word less, Word more) {
    if (value_10um == 0) return;
    std::string& part = parts.next();
    if (*what != '\0') {
      part += what;
      part += ' ';
    }
    append_length(part, size_of_difference(value_10um));
    part += ' ';
    part += word(value_10um < 0 ? less : more);
  }

  void snow_height() {
    const auto hs = comparison_.hs_10um();
    if (!hs || reference_.hs() == pit::kUnknown || other_.hs() == pit::kUnknown) return;
    out_ += "\nHS ";
    append_length(out_, reference_.hs());
    out_ += " | ";
    append_length(out_, other_.hs());
    out_ += '\n';
    Parts parts(out_, "  ");
    length(parts, "", *hs, Word::smaller, Word::larger);
    parts.close();
  }

  // --- layers --------------------------------------------------------------------------------------------

  void append_layer(const pit::Layer& layer) {
    if (layer.has_span()) {
      append_cm(out_, layer.top);
      out_ += '-';
      append_length(out_, layer.bottom);
    } else {
      out_ += "layers[";
      append_integer(out_, layer.stored);
      out_ += ']';
    }
    code(layer.hardness_top, code_of(static_cast<firnbook::HandHardness>(layer.hardness_top)));
    if (layer.hardness_bottom != layer.hardness_top) {
      out_ += " to";
      code(layer.hardness_bottom, code_of(static_cast<firnbook::HandHardness>(layer.hardness_bottom)));
    }
    code(layer.form, code_of(static_cast<firnbook::GrainForm>(layer.form)));
    if (layer.size != pit::kUnknown) {
      out_ += ' ';
      append_mm(out_, layer.size);
    }
    if (layer.size_max != pit::kUnknown) {
      out_ += '-';
      append_mm(out_, layer.size_max);
    }
    if (layer.size != pit::kUnknown || layer.size_max != pit::kUnknown) out_ += " mm";
    code(layer.wetness, code_of(static_cast<firnbook::Wetness>(layer.wetness)));
  }

  // A number that this version does not know is told as such.
  void code(std::uint8_t value, std::string_view text) {
    if (value == 0) return;
    out_ += ' ';
    out_.append(text.empty() ? std::string_view("?") : text);
  }

  static Word reason_word(NotComparable reason) {
    switch (reason) {
      case NotComparable::directions_differ:
        return Word::directions_differ;
      case NotComparable::upside_down:
        return Word::upside_down;
      case NotComparable::covered:
        return Word::covered;
      case NotComparable::kind_unknown:
        return Word::kind_unknown;
      default:
        return Word::depth_unknown;
    }
  }

  // What is said of something that has no partner; false when it has one.
  static bool say_pairing(Parts& parts, Pairing pairing, NotComparable reason) {
    if (pairing == Pairing::only_in_reference) {
      parts.say(Word::only_in_reference);
    } else if (pairing == Pairing::only_in_other) {
      parts.say(Word::only_in_other);
    } else if (pairing == Pairing::not_comparable) {
      std::string& part = parts.next();
      part += word(Word::not_comparable);
      part += ": ";
      part += word(reason_word(reason));
    } else {
      return false;
    }
    return true;
  }

  void close_pair(Parts& parts, std::uint16_t known, std::uint16_t unreliable) {
    if (!parts.any()) parts.say(known != 0 ? Word::no_difference : Word::nothing_to_compare);
    if (unreliable != 0) parts.say(Word::unreliable);
    parts.close();
  }

  const pit::Layer* layer_of(const pit::View& pit, const std::vector<std::uint32_t>& positions,
                             std::int32_t stored) const {
    if (!is_in(pit.raw().layers(), stored)) return nullptr;
    return &pit.layers()[positions[static_cast<std::size_t>(stored)]];
  }

  void layers() {
    heading(Word::layers);
    if (pit::size_of(comparison_.layers()) == 0) line(Word::none_recorded);
    for (std::uint32_t i = 0; i < pit::size_of(comparison_.layers()); ++i)
      layer(*comparison_.layers()->Get(i));
  }

  void layer(const LayerPair& pair) {
    const pit::Layer* a = layer_of(reference_, reference_layers_, pair.reference());
    const pit::Layer* b = layer_of(other_, other_layers_, pair.other());
    const bool wants_both = pair.pairing() == Pairing::both;
    if ((a == nullptr && b == nullptr) || (wants_both && (a == nullptr || b == nullptr))) return;
    side_by_side(a, b);
    Parts parts(out_, "  ");
    if (say_pairing(parts, pair.pairing(), pair.reason())) return parts.close();
    const auto known = [&](LayerAspect aspect) { return has(pair.known(), aspect); };
    if (known(LayerAspect::top)) length(parts, word(Word::top), pair.top_10um(), Word::higher, Word::lower);
    if (known(LayerAspect::bottom)) {
      length(parts, word(Word::bottom), pair.bottom_10um(), Word::higher, Word::lower);
    }
    hardness(parts, pair);
    like(parts, pair.form(), Word::form_group, Word::form_different);
    if (known(LayerAspect::size)) size(parts, Word::grains, pair.size_10um());
    if (known(LayerAspect::size_max)) size(parts, Word::largest_grains, pair.size_max_10um());
    if (known(LayerAspect::wetness)) {
      sixths(parts, std::int64_t{pair.wetness_halves()} * 3, Word::wetness_class, Word::wetness_classes,
             Word::drier, Word::wetter);
    }
    close_pair(parts, pair.known(), pair.unreliable());
  }

  void side_by_side(const pit::Layer* a, const pit::Layer* b) {
    if (a != nullptr) append_layer(*a);
    if (a == nullptr) out_ += '-';
    out_ += " | ";
    if (b != nullptr) append_layer(*b);
    if (b == nullptr) out_ += '-';
    out_ += '\n';
  }

  // "1 1/3 steps harder"
  std::string* sixths(Parts& parts, std::int64_t value, Word one, Word many, Word less, Word more) {
    if (value == 0) return nullptr;
    const std::int64_t size = size_of_difference(value);
    std::string& part = parts.next();
    append_sixths(part, size);
    part += ' ';
    part += word(size <= 6 ? one : many);
    part += ' ';
    part += word(value < 0 ? less : more);
    return &part;
  }

  void hardness(Parts& parts, const LayerPair& pair) {
    const bool at_top = has(pair.known(), LayerAspect::hardness_top);
    const bool at_bottom = has(pair.known(), LayerAspect::hardness_bottom);
    const bool alike = at_top && at_bottom && pair.hardness_top_sixths() == pair.hardness_bottom_sixths();
    const auto say = [&](std::int64_t value, Word where) {
      std::string* part = sixths(parts, value, Word::step, Word::steps, Word::softer, Word::harder);
      if (part == nullptr || alike) return;
      *part += ' ';
      *part += word(where);
    };
    if (at_top) say(pair.hardness_top_sixths(), Word::at_the_top);
    if (at_bottom && !alike) say(pair.hardness_bottom_sixths(), Word::at_the_bottom);
  }

  void size(Parts& parts, Word what, std::int64_t value_10um) {
    if (value_10um == 0) return;
    std::string& part = parts.next();
    part += word(what);
    part += ' ';
    append_mm(part, size_of_difference(value_10um));
    part += " mm ";
    part += word(value_10um < 0 ? Word::smaller : Word::larger);
  }

  static void like(Parts& parts, Likeness likeness, Word group, Word different) {
    if (likeness == Likeness::same_group) parts.say(group);
    if (likeness == Likeness::different) parts.say(different);
  }

  // --- tests ---------------------------------------------------------------------------------------------

  void tests() {
    heading(Word::tests);
    const std::uint32_t count = pit::size_of(comparison_.tests());
    if (count == 0) line(Word::none_recorded);
    // Fractures stand in the order of their tests.
    std::uint32_t next = 0;
    for (std::uint32_t i = 0; i < count; ++i) {
      const bool told = test(*comparison_.tests()->Get(i));
      for (; next < pit::size_of(comparison_.fractures()); ++next) {
        const FracturePair& one = *comparison_.fractures()->Get(next);
        if (one.test() != static_cast<std::int32_t>(i)) break;
        if (told) fracture(*comparison_.tests()->Get(i), one);
      }
    }
  }

  static const pit::Test* test_of(const pit::View& pit, std::int32_t stored) {
    return is_in(pit.raw().tests(), stored) ? &pit.tests()[static_cast<std::size_t>(stored)] : nullptr;
  }

  static const char* outcome_of(const pit::Test* test) {
    if (test == nullptr) return "-";
    switch (static_cast<firnbook::TestOutcome>(test->outcome)) {
      case firnbook::TestOutcome::fractured:
        return word(Word::fractured);
      case firnbook::TestOutcome::no_fracture:
        return word(Word::no_fracture);
      case firnbook::TestOutcome::not_valid:
        return word(Word::not_valid);
      default:
        return word(Word::no_outcome);
    }
  }

  bool test(const TestPair& pair) {
    const pit::Test* a = test_of(reference_, pair.reference());
    const pit::Test* b = test_of(other_, pair.other());
    const bool wants_both = pair.pairing() == Pairing::both;
    if ((a == nullptr && b == nullptr) || (wants_both && (a == nullptr || b == nullptr))) return false;
    const std::string_view kind = code_of(pair.kind());
    out_.append(kind.empty() || pair.kind() == firnbook::TestKind::none ? std::string_view("?") : kind);
    out_ += ": ";
    out_ += outcome_of(a);
    out_ += " | ";
    out_ += outcome_of(b);
    out_ += '\n';
    Parts parts(out_, "  ");
    if (!say_pairing(parts, pair.pairing(), pair.reason())) {
      if (pair.outcome() == Likeness::different) parts.say(Word::outcome_different);
    }
    parts.close();
    return wants_both;
  }

  static const pit::Fracture* fracture_of(const pit::View& pit, const pit::Test& test, std::int32_t sub) {
    if (sub < 0 || static_cast<std::uint32_t>(sub) >= test.fracture_count) return nullptr;
    return &pit.fractures()[test.first_fracture + static_cast<std::uint32_t>(sub)];
  }

  void number(Word what, std::uint8_t value) {
    if (value == 0) return;
    out_ += ' ';
    out_ += word(what);
    out_ += ' ';
    append_integer(out_, value);
  }

  void append_fracture(const pit::Fracture* fracture) {
    if (fracture == nullptr) {
      out_ += " -";
      return;
    }
    const pit::Fracture& one = *fracture;
    number(Word::tap, one.tap);
    if (one.tap == 0) code(one.stage, code_of(static_cast<firnbook::LoadStage>(one.stage)));
    number(Word::load_step, one.step);
    if (one.cut != pit::kUnknown) {
      out_ += ' ';
      append_length(out_, one.cut);
    }
    code(one.crossing, code_of(static_cast<firnbook::Crossing>(one.crossing)));
    code(one.ease, code_of(static_cast<firnbook::ShearEase>(one.ease)));
    code(one.character, code_of(static_cast<firnbook::FractureCharacter>(one.character)));
    code(one.quality, code_of(static_cast<firnbook::ShearQuality>(one.quality)));
    code(one.release, code_of(static_cast<firnbook::ReleaseType>(one.release)));
    code(one.saw_end, code_of(static_cast<firnbook::SawEnd>(one.saw_end)));
    if (one.depth == pit::kUnknown) return;
    out_ += " down ";
    append_length(out_, one.depth);
  }

  void counted(Parts& parts, std::int64_t value, Word one, Word many, Word behind) {
    if (value == 0) return;
    const std::int64_t size = size_of_difference(value);
    std::string& part = parts.next();
    append_integer(part, size);
    part += ' ';
    part += word(size == 1 ? one : many);
    part += ' ';
    part += word(value < 0 ? Word::fewer : Word::more);
    if (behind == Word::count_) return;
    part += ' ';
    part += word(behind);
  }

  void fracture(const TestPair& test, const FracturePair& pair) {
    const pit::Fracture* a =
        fracture_of(reference_, *test_of(reference_, test.reference()), pair.reference());
    const pit::Fracture* b = fracture_of(other_, *test_of(other_, test.other()), pair.other());
    const bool wants_both = pair.pairing() == Pairing::both;
    if ((a == nullptr && b == nullptr) || (wants_both && (a == nullptr || b == nullptr))) return;
    out_ += ' ';
    append_fracture(a);
    out_ += " |";
    append_fracture(b);
    out_ += '\n';
    Parts parts(out_, "    ");
    if (say_pairing(parts, pair.pairing(), pair.reason())) return parts.close();
    differences(parts, pair);
    close_pair(parts, pair.known(), pair.unreliable());
  }

  void differences(Parts& parts, const FracturePair& pair) {
    const auto known = [&](FractureAspect aspect) { return has(pair.known(), aspect); };
    if (known(FractureAspect::tap)) counted(parts, pair.tap(), Word::tap, Word::taps, Word::count_);
    if (known(FractureAspect::tap_crossed)) {
      counted(parts, pair.tap_crossed(), Word::tap, Word::taps, Word::taps_to_cross);
    }
    if (known(FractureAspect::step)) {
      counted(parts, pair.step(), Word::load_step, Word::load_steps, Word::count_);
    }
    if (known(FractureAspect::cut)) length(parts, "", pair.cut_10um(), Word::cut_shorter, Word::cut_longer);
    if (known(FractureAspect::ease) && pair.ease() != 0) {
      parts.say(pair.ease() < 0 ? Word::took_less : Word::took_more);
    }
    if (known(FractureAspect::depth)) {
      length(parts, "", pair.depth_10um(), Word::broke_shallower, Word::broke_deeper);
    }
    like(parts, pair.stage(), Word::stage_different, Word::stage_different);
    like(parts, pair.character(), Word::character_group, Word::character_different);
    like(parts, pair.quality(), Word::quality_different, Word::quality_different);
    like(parts, pair.crossing(), Word::crossing_different, Word::crossing_different);
    like(parts, pair.release(), Word::release_different, Word::release_different);
    like(parts, pair.saw_end(), Word::saw_end_different, Word::saw_end_different);
  }

  // --- temperatures --------------------------------------------------------------------------------------

  static const firnbook::TemperatureReading* reading_of(const pit::View& pit, std::int32_t stored) {
    const auto* readings = pit.raw().temperatures();
    return is_in(readings, stored) ? readings->Get(static_cast<std::uint32_t>(stored)) : nullptr;
  }

  void temperatures() {
    heading(Word::temperatures);
    const std::uint32_t count = pit::size_of(comparison_.temperatures());
    if (count == 0) line(Word::none_paired);
    for (std::uint32_t i = 0; i < count; ++i) temperature(*comparison_.temperatures()->Get(i));
  }

  void temperature(const TemperaturePair& pair) {
    const firnbook::TemperatureReading* a = reading_of(reference_, pair.reference());
    const firnbook::TemperatureReading* b = reading_of(other_, pair.other());
    if (a == nullptr || b == nullptr || !a->temperature_cdegc() || !b->temperature_cdegc()) return;
    append_length(out_, pair.depth_10um());
    out_ += ": ";
    append_fixed(out_, *a->temperature_cdegc(), 2);
    out_ += " | ";
    append_fixed(out_, *b->temperature_cdegc(), 2);
    out_ += " degC\n";
    Parts parts(out_, "  ");
    if (pair.difference_cdegc() != 0) {
      std::string& part = parts.next();
      append_fixed(part, size_of_difference(pair.difference_cdegc()), 2);
      part += " degC ";
      part += word(pair.difference_cdegc() < 0 ? Word::colder : Word::warmer);
    }
    close_pair(parts, 1, pair.unreliable());
  }

  void tolerances() {
    if (!comparison_.layer_apart_10um() || !comparison_.fracture_apart_10um() ||
        !comparison_.temperature_apart_10um()) {
      return;
    }
    out_ += '\n';
    line(Word::tolerances);
    out_ += ' ';
    tolerance(Word::thin_layers, *comparison_.layer_apart_10um(), ",");
    tolerance(Word::fractures, *comparison_.fracture_apart_10um(), ",");
    tolerance(Word::readings, *comparison_.temperature_apart_10um(), ".");
    out_ += '\n';
  }
  void tolerance(Word what, std::int64_t value_10um, const char* behind) {
    out_ += ' ';
    out_ += word(what);
    out_ += ' ';
    append_length(out_, value_10um);
    out_ += behind;
  }

  std::string& out_;
  const PitComparison& comparison_;
  const pit::View& reference_;
  const pit::View& other_;
  std::vector<std::uint32_t> reference_layers_, other_layers_;  // position of each stored layer
};

}  // namespace

void append_note(std::string& out, const PitComparison& comparison, const pit::View& reference,
                 const pit::View& other) {
  Writer(out, comparison, reference, other).write();
}

}  // namespace firn::comparison
