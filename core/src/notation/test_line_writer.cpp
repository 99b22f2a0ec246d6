// Prints what test_reader reads. Shorthand where the shorthand can say it, the spelled-out form elsewhere.
#include "notation/phrases.h"
#include "notation/raw_values.h"
#include "notation/test_line.h"
#include "support/text.h"

namespace firn::notation {
namespace {

using firnbook::Datum;
using firnbook::Depth;
using firnbook::Direction;
using firnbook::Fracture;
using firnbook::Layer;
using firnbook::LoadStage;
using firnbook::Moment;
using firnbook::StabilityTest;
using firnbook::TestKind;
using firnbook::TestOutcome;

// 2000-01-01 and the first day that YYMMDD cannot name, 1000-01-01 and 10000-01-01.
constexpr std::int64_t kShortFrom = 946684800, kShortTo = 4102444800;
constexpr std::int64_t kDayFrom = -30610224000, kDayTo = 253402300800;
constexpr std::int64_t kSecondsPerDay = 86400;

template <class E>
void append_code(std::string& out, E value) {
  const std::string_view code = code_of(value);
  if (!code.empty()) {
    out += code;
    return;
  }
  out += '?';
  append_integer(out, static_cast<std::uint8_t>(value));
}

std::string_view view(const flatbuffers::String* text) {
  return text == nullptr ? std::string_view{} : std::string_view{text->c_str(), text->size()};
}

bool is_tap(std::uint8_t tap) {
  return tap >= 1 && tap <= kMostTaps;
}

// What the score has said already, so that the attributes do not say it again.
struct Said {
  bool tap = false, stage = false, crossing = false, step = false, cut = false, ease = false, force = false;
};

class Writer {
 public:
  explicit Writer(std::string& out) : out_(out) {}

  void write(const StabilityTest& test);
  void kind(const StabilityTest& test);
  // As people say it: any number of taps; and the group in brackets behind it.
  void spoken(const StabilityTest& test, const Fracture* fracture);

 private:
  void fracture(const StabilityTest& test, const Fracture& fracture, bool first);
  Said score(const StabilityTest& test, const Fracture& fracture, bool first, bool strict);
  void tap_score(const Fracture& fracture, bool strict, Said& said);
  void column_score(const Fracture& fracture, bool strict, Said& said);
  void saw_score(const StabilityTest& test, const Fracture& fracture, bool first, bool strict, Said& said);
  void group(const Fracture& fracture);
  void loads(const Fracture& fracture, const Said& said);
  void layer(const Layer& layer);
  void layer_name(const firnbook::LayerName& name);
  void layer_details(const Layer& layer);
  void column(const StabilityTest& test);
  void outcome(const StabilityTest& test, bool has_fractures);
  void test_values(const StabilityTest& test, bool has_fractures);

  // Each attribute starts with one blank.
  void word(std::string_view text) {
    out_ += ' ';
    out_ += text;
  }
  void words(std::string_view text) {
    out_ += ' ';
    append_quoted(out_, text);
  }
  template <class E>
  void coded(std::string_view name, const flatbuffers::Optional<E>& value) {
    if (!value) return;
    word(name);
    out_ += ' ';
    append_code(out_, *value);
  }
  void number(std::string_view name, const flatbuffers::Optional<std::uint8_t>& value) {
    if (!value) return;
    word(name);
    out_ += ' ';
    append_integer(out_, *value);
  }
  void length(std::string_view name, const flatbuffers::Optional<std::int32_t>& value) {
    if (!value) return;
    word(name);
    out_ += ' ';
    append_cm(out_, *value);
  }
  void depth(const Depth& depth);
  void moment(const Moment& moment);
  void unreliable(std::string_view name, const form::Table& table, std::uint64_t mask);
  // An item of a pair of brackets that is open or not yet open.
  void item_begin(bool& open) {
    out_ += open ? " " : " (";
    open = true;
  }

  std::string& out_;
  bool column_length_said_ = false;
};

void Writer::kind(const StabilityTest& test) {
  if (!test.kind()) {
    out_ += '?';
  } else if (*test.kind() == TestKind::none || code_of(*test.kind()).empty()) {
    out_ += '?';
    append_integer(out_, static_cast<std::uint8_t>(*test.kind()));
  } else {
    out_ += code_of(*test.kind());
  }
}

// The letter that stands for "nothing broke", where the kind has one.
std::string_view nothing_broke(const StabilityTest& test) {
  if (!test.kind()) return {};
  switch (*test.kind()) {
    case TestKind::CT:
    case TestKind::DT:
    case TestKind::ST:
      return "N";
    case TestKind::ECT:
      return "X";
    case TestKind::RB:
      return "7";
    default:
      return {};
  }
}

void Writer::write(const StabilityTest& test) {
  kind(test);
  const auto* fractures = test.fractures();
  const std::uint32_t count = fractures == nullptr ? 0 : fractures->size();
  const bool broken = count > 0;
  const bool words_first = test.words() != nullptr && test.kind() == TestKind::other;
  if (!broken && test.outcome() == TestOutcome::no_fracture) out_ += nothing_broke(test);
  if (words_first) words(view(test.words()));
  for (std::uint32_t i = 0; i < count; ++i) {
    if (i > 0) out_ += ';';
    fracture(test, *fractures->Get(i), i == 0);
  }
  test_values(test, broken);
  if (test.words() != nullptr && test.words()->size() > 0 && !words_first) {
    if (broken) word("test");
    words(view(test.words()));
  }
  unreliable("test unreliable", form::table_of<firnbook::StabilityTestT>(), test.unreliable());
}

void Writer::tap_score(const Fracture& fracture, bool strict, Said& said) {
  if (fracture.tap() && (!strict || is_tap(*fracture.tap()))) {
    append_integer(out_, *fracture.tap());
    said.tap = true;
  } else if (fracture.stage() && !fracture.tap()) {
    out_ += code_of(*fracture.stage());
    said.stage = !code_of(*fracture.stage()).empty();
  }
}

void Writer::column_score(const Fracture& fracture, bool strict, Said& said) {
  if (!fracture.crossing() || code_of(*fracture.crossing()).empty()) {
    if (strict || !fracture.tap()) return;
    out_ += " crack ";
    append_integer(out_, *fracture.tap());
    return;
  }
  out_ += code_of(*fracture.crossing());
  said.crossing = true;
  if (fracture.tap() && (!strict || is_tap(*fracture.tap()))) {
    append_integer(out_, *fracture.tap());
    said.tap = true;
  } else if (fracture.stage() == LoadStage::isolating && !fracture.tap()) {
    out_ += 'V';
    said.stage = true;
  }
}

void Writer::saw_score(const StabilityTest& test, const Fracture& fracture, bool first, bool strict,
                       Said& said) {
  if (!fracture.cut_10um()) return;
  out_ += ' ';
  append_cm(out_, *fracture.cut_10um());
  said.cut = true;
  if (!test.column_length_10um() || (strict && !first)) return;
  out_ += '/';
  append_cm(out_, *test.column_length_10um());
  column_length_said_ = true;
}

Said Writer::score(const StabilityTest& test, const Fracture& fracture, bool first, bool strict) {
  Said said;
  if (!test.kind()) return said;
  // Behind ; a blank; behind the kind the letters and digits of CT12 follow at once.
  const std::size_t start = out_.size();
  const std::string_view gap = first ? "" : " ";
  out_ += gap;
  const std::size_t empty = out_.size();
  switch (*test.kind()) {
    case TestKind::CT:
    case TestKind::DT:
      tap_score(fracture, strict, said);
      break;
    case TestKind::ECT:
      column_score(fracture, strict, said);
      break;
    case TestKind::RB:
      if (fracture.step() && (!strict || (*fracture.step() >= 1 && *fracture.step() <= 6))) {
        append_integer(out_, *fracture.step());
        said.step = true;
      }
      break;
    case TestKind::ST:
      if (fracture.ease()) {
        out_ += code_of(*fracture.ease());
        said.ease = !code_of(*fracture.ease()).empty();
      }
      break;
    default:
      break;
  }
  if (out_.size() == empty) out_.resize(start);
  if (*test.kind() == TestKind::PST) saw_score(test, fracture, first, strict, said);
  if (*test.kind() == TestKind::hand_shear && fracture.ease() && !code_of(*fracture.ease()).empty()) {
    constexpr std::string_view kEases[] = {"collapse", "very easy", "easy", "moderate", "hard"};
    word(kEases[static_cast<std::size_t>(*fracture.ease()) - 1]);
    said.ease = true;
  }
  if (*test.kind() == TestKind::shear_frame && fracture.force_mn()) {
    out_ += ' ';
    append_fixed(out_, *fracture.force_mn(), 3);
    out_ += " N";
    said.force = true;
  }
  return said;
}

void Writer::group(const Fracture& fracture) {
  bool open = false;
  const auto item = [&](std::string_view code) {
    if (code.empty()) return;
    out_ += open ? ", " : " (";
    out_ += code;
    open = true;
  };
  if (fracture.character()) item(code_of(*fracture.character()));
  if (fracture.quality()) item(code_of(*fracture.quality()));
  if (fracture.fracture_surface()) item(code_of(*fracture.fracture_surface()));
  if (fracture.release()) item(code_of(*fracture.release()));
  if (fracture.saw_end()) item(code_of(*fracture.saw_end()));
  if (open) out_ += ')';
}

// What no code and no score could say.
void Writer::loads(const Fracture& fracture, const Said& said) {
  const auto unknown = [&](std::string_view name, auto value) {
    if (value && code_of(*value).empty()) coded(name, value);
  };
  unknown("character", fracture.character());
  unknown("quality", fracture.quality());
  unknown("surface", fracture.fracture_surface());
  unknown("release", fracture.release());
  unknown("saw-end", fracture.saw_end());
  if (!said.tap) number("crack", fracture.tap());
  number("cross", fracture.tap_crossed());
  if (!said.stage) coded("stage", fracture.stage());
  if (!said.crossing) coded("crossing", fracture.crossing());
  if (!said.step) number("step", fracture.step());
  number("jump", fracture.jump());
  if (!said.cut) length("cut", fracture.cut_10um());
  if (!said.ease) coded("ease", fracture.ease());
  if (!said.force && fracture.force_mn()) {
    out_ += " force ";
    append_fixed(out_, *fracture.force_mn(), 3);
    out_ += " N";
  }
}

void Writer::depth(const Depth& depth) {
  const Datum datum = depth.datum();
  word(datum == Datum::surface ? "down " : datum == Datum::ground ? "up " : "@");
  append_cm(out_, depth.value_10um());
  if (depth.direction() == Direction::vertical) {
    word("vertical");
  } else if (depth.direction() == Direction::slope_normal) {
    word("slope-normal");
  } else if (depth.direction() != Direction::unknown) {
    word("direction ");
    append_code(out_, depth.direction());
  }
  if (code_of(datum).empty()) {
    word("datum ");
    append_code(out_, datum);
  }
}

void Writer::fracture(const StabilityTest& test, const Fracture& fracture, bool first) {
  const std::size_t start = out_.size();
  const Said said = score(test, fracture, first, true);
  group(fracture);
  loads(fracture, said);
  if (fracture.depth() != nullptr) depth(*fracture.depth());
  coded("part", fracture.part());
  unreliable("unreliable", form::table_of<firnbook::FractureT>(), fracture.unreliable());
  const bool has_words = fracture.words() != nullptr && fracture.words()->size() > 0;
  if (has_words) {
    // Words that open a fracture would be the test's own.
    if (out_.size() == start) word("fracture");
    words(view(fracture.words()));
  }
  if (fracture.on() != nullptr) layer(*fracture.on());
  if (out_.size() == start) word("fracture");
}

void Writer::layer(const Layer& layer) {
  const std::size_t start = out_.size();
  word("on");
  const std::size_t empty = out_.size();
  if (layer.words() != nullptr && layer.words()->size() > 0) words(view(layer.words()));
  const bool known_hardness = layer.hardness() && !code_of(*layer.hardness()).empty();
  if (known_hardness) word(code_of(*layer.hardness()));
  if (!known_hardness) coded("hardness", layer.hardness());
  const bool known_form = layer.grain_form() && !code_of(*layer.grain_form()).empty();
  if (known_form) word(code_of(*layer.grain_form()));
  if (!known_form) coded("form", layer.grain_form());
  const auto second = layer.grain_form_second();
  if (second && !code_of(*second).empty()) {
    word("(");
    out_ += code_of(*second);
    out_ += ')';
  } else {
    coded("second", second);
  }
  if (layer.grain_size_10um()) {
    out_ += ' ';
    append_mm(out_, *layer.grain_size_10um());
    // Grain sizes are written with their tenths: 6.0.
    if (*layer.grain_size_10um() % 100 == 0) out_ += ".0";
  }
  if (layer.grain_size_max_10um()) {
    out_ += layer.grain_size_10um() ? "-" : " size-max ";
    append_mm(out_, *layer.grain_size_max_10um());
    if (*layer.grain_size_max_10um() % 100 == 0) out_ += ".0";
  }
  if (layer.name() != nullptr) layer_name(*layer.name());
  layer_details(layer);
  if (out_.size() == empty) out_.resize(start);
}

void Writer::layer_name(const firnbook::LayerName& name) {
  bool open = false;
  if (name.date() != nullptr) {
    item_begin(open);
    moment(*name.date());
  }
  if (name.kind()) {
    item_begin(open);
    append_code(out_, *name.kind());
  }
  if (name.words() != nullptr && name.words()->size() > 0) {
    item_begin(open);
    append_quoted(out_, view(name.words()));
  }
  if (open) out_ += ')';
}

void Writer::layer_details(const Layer& layer) {
  coded("hardness-top", layer.hardness_top());
  coded("hardness-bottom", layer.hardness_bottom());
  coded("size", layer.grain_size_class());
  coded("size-max", layer.grain_size_max_class());
  coded("wetness", layer.wetness());
  if (layer.candidates() != nullptr) {
    for (std::uint32_t i = 0; i < layer.candidates()->size(); ++i) {
      word(i == 0 ? "maybe " : "or ");
      append_code(out_, static_cast<firnbook::GrainForm>(layer.candidates()->Get(i)));
    }
  }
  if (layer.top() != nullptr) {
    word("top");
    depth(*layer.top());
  }
  if (layer.bottom() != nullptr) {
    word("bottom");
    depth(*layer.bottom());
  }
  if (layer.formed() != nullptr) {
    word("formed ");
    moment(layer.formed()->begin());
    word("to ");
    moment(layer.formed()->end());
  }
  coded("concern", layer.concern());
  unreliable("layer unreliable", form::table_of<firnbook::LayerT>(), layer.unreliable());
}

void Writer::moment(const Moment& moment) {
  const bool is_day = moment.precision() == firnbook::TimePrecision::day && moment.offset_known() == 0 &&
                      moment.offset_min() == 0 && moment.local_s() % kSecondsPerDay == 0 &&
                      moment.local_s() >= kDayFrom && moment.local_s() < kDayTo;
  if (is_day) {
    const CalendarTime time = calendar_time(moment.local_s());
    const bool is_short = moment.local_s() >= kShortFrom && moment.local_s() < kShortTo;
    const auto two_digits = [&](std::int64_t value) {
      if (value < 10) out_ += '0';
      append_integer(out_, value);
    };
    if (is_short) two_digits(time.year - 2000);
    if (!is_short) append_integer(out_, time.year);
    if (!is_short) out_ += '-';
    two_digits(time.month);
    if (!is_short) out_ += '-';
    two_digits(time.day);
    return;
  }
  append_raw(out_, moment);
}

void Writer::unreliable(std::string_view name, const form::Table& table, std::uint64_t mask) {
  if (mask == 0) return;
  word(name);
  bool first = true;
  for (std::size_t bit = 0; bit < 64; ++bit) {
    if ((mask >> bit & 1u) == 0) continue;
    out_ += first ? "(" : ", ";
    first = false;
    if (bit < table.count) {
      out_ += field_name(table, bit);
    } else {
      out_ += '?';
      append_integer(out_, static_cast<std::int64_t>(bit));
    }
  }
  out_ += ')';
}

// 30x90 only where reading it gives the same sides back: see keyword_column.
void Writer::column(const StabilityTest& test) {
  const auto width = test.column_width_10um();
  const auto up = column_length_said_ ? flatbuffers::nullopt : test.column_length_10um();
  const bool is_pair =
      width && up && *width >= 0 && *up >= 0 && (test.kind() != TestKind::ECT || *width >= *up);
  if (is_pair) {
    word("column ");
    append_cm(out_, *width);
    out_ += 'x';
    append_cm(out_, *up);
  } else {
    length("column width", width);
    length("column length", up);
  }
  length("column depth", test.column_depth_10um());
}

void Writer::outcome(const StabilityTest& test, bool has_fractures) {
  const auto outcome = test.outcome();
  if (outcome == TestOutcome::not_valid) {
    word("not valid");
    if (!test.not_valid_reason()) return;
    out_ += ": ";
    append_code(out_, *test.not_valid_reason());
    return;
  }
  if (has_fractures) {
    if (!outcome) word("test outcome not given");
    if (outcome != TestOutcome::fractured) coded("test outcome", outcome);
  } else if (outcome == TestOutcome::no_fracture) {
    if (nothing_broke(test).empty()) word("no fracture");
  } else {
    coded("test outcome", outcome);
  }
  coded("reason", test.not_valid_reason());
}

void Writer::test_values(const StabilityTest& test, bool has_fractures) {
  outcome(test, has_fractures);
  column(test);
  length("slab left", test.slab_left_10um());
  coded("ends", test.column_ends());
  number("slope", test.slope_deg());
  coded("rule", test.crossing_rule());
  number("taps given", test.taps_given());
  if (test.unbroken() == nullptr) return;
  for (std::uint32_t i = 0; i < test.unbroken()->size(); ++i) {
    word("no fracture");
    depth(*test.unbroken()->Get(i));
  }
}

void Writer::spoken(const StabilityTest& test, const Fracture* fracture) {
  if (test.kind() && *test.kind() != TestKind::none && !code_of(*test.kind()).empty()) {
    out_ += code_of(*test.kind());
  } else {
    out_ += "test";
  }
  if (fracture != nullptr) {
    score(test, *fracture, true, false);
    group(*fracture);
  } else if (test.outcome() == TestOutcome::no_fracture) {
    if (nothing_broke(test).empty()) word("no fracture");
    out_ += nothing_broke(test);
  } else if (test.outcome() == TestOutcome::not_valid) {
    word("not valid");
  }
}

}  // namespace

void append_test(std::string& out, const StabilityTest& test) {
  Writer(out).write(test);
}

void append_test(std::string& out, firnbook::StabilityTestT test, firnbook::Direction implied) {
  const auto leave_out = [implied](firnbook::Depth& depth) {
    if (depth.direction() != implied) return;
    depth = firnbook::Depth(depth.value_10um(), depth.datum(), firnbook::Direction::unknown);
  };
  // A test under construction has gaps where fractures were taken back.
  form::tidy(form::table_of<firnbook::StabilityTestT>(), &test);
  for (auto& fracture : test.fractures) {
    if (fracture->depth != nullptr) leave_out(*fracture->depth);
  }
  for (firnbook::Depth& depth : test.unbroken) leave_out(depth);
  flatbuffers::FlatBufferBuilder builder;
  builder.Finish(form::pack(builder, form::table_of<firnbook::StabilityTestT>(), &test));
  append_test(out, *flatbuffers::GetRoot<StabilityTest>(builder.GetBufferPointer()));
}

void append_score(std::string& out, const StabilityTest& test, const Fracture* fracture) {
  Writer(out).spoken(test, fracture);
}

}  // namespace firn::notation
