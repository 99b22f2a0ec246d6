#include "notation/test_line.h"

#include <utility>

#include "notation/test_reader.h"
#include "vocabulary/words.h"

namespace firn::notation {

using firnbook::Datum;
using firnbook::Depth;
using firnbook::FractureCharacter;
using firnbook::FractureSurface;
using firnbook::FractureT;
using firnbook::NotValidReason;
using firnbook::ReleaseType;
using firnbook::SawEnd;
using firnbook::ShearQuality;
using firnbook::StabilityTestT;
using firnbook::TestKind;
using firnbook::TestOutcome;

template <auto Field>
bool TestReader::of_fracture(std::string_view name, std::size_t at) {
  FractureT* broken = fracture(at);
  return broken != nullptr && read_value(name, broken->*Field, at);
}

template <auto Field>
bool TestReader::of_test(std::string_view name, std::size_t at) {
  return read_value(name, test_.*Field, at);
}

// The words of a keyword, what it is called in a failure, and how it is read. Where one starts like another,
// the longer stands first.
const TestReader::Keyword TestReader::kKeywords[] = {
    {"fracture", "fracture", &TestReader::keyword_fracture},
    {"crack", "tap of the first crack", &TestReader::of_fracture<&FractureT::tap>},
    {"cross", "tap of the crossing", &TestReader::of_fracture<&FractureT::tap_crossed>},
    {"stage", "stage", &TestReader::of_fracture<&FractureT::stage>},
    {"character", "character", &TestReader::of_fracture<&FractureT::character>},
    {"quality", "shear quality", &TestReader::of_fracture<&FractureT::quality>},
    {"surface", "fracture surface", &TestReader::of_fracture<&FractureT::fracture_surface>},
    {"crossing", "crossing", &TestReader::of_fracture<&FractureT::crossing>},
    {"step", "step", &TestReader::of_fracture<&FractureT::step>},
    {"jump", "jump", &TestReader::of_fracture<&FractureT::jump>},
    {"release", "release", &TestReader::of_fracture<&FractureT::release>},
    {"cut", "cut in cm", &TestReader::of_fracture<&FractureT::cut_10um>},
    {"saw-end", "saw end", &TestReader::of_fracture<&FractureT::saw_end>},
    {"ease", "ease", &TestReader::of_fracture<&FractureT::ease>},
    {"force", "force", &TestReader::keyword_force},
    {"part", "part of the layer", &TestReader::of_fracture<&FractureT::part>},
    {"on", "layer", &TestReader::keyword_on},
    {"unreliable", "unreliable", &TestReader::keyword_unreliable},
    {"test", "test", &TestReader::keyword_test},
    {"column", "column", &TestReader::keyword_column},
    {"slab left", "slab left in cm", &TestReader::of_test<&StabilityTestT::slab_left_10um>},
    {"ends", "column ends", &TestReader::of_test<&StabilityTestT::column_ends>},
    {"slope", "slope", &TestReader::keyword_slope},
    {"rule", "rule of crossing", &TestReader::of_test<&StabilityTestT::crossing_rule>},
    {"taps given", "taps given", &TestReader::of_test<&StabilityTestT::taps_given>},
    {"no fracture", "no fracture", &TestReader::keyword_no_fracture},
    {"not valid", "not valid", &TestReader::keyword_not_valid},
    {"reason", "reason", &TestReader::of_test<&StabilityTestT::not_valid_reason>},
};

Result<std::vector<StabilityTestT>> TestReader::read() {
  if (const Done readable = check_readable(scanner_.line()); !readable) return readable.failure();
  if (!read_kind() || !read_segment(true)) return failure_;
  while (scanner_.accept(';')) {
    if (!read_segment(false)) return failure_;
  }
  if (!settle_outcome()) return failure_;
  std::vector<StabilityTestT> tests;
  tests.reserve(repeat_);
  for (std::uint8_t i = 1; i < repeat_; ++i) tests.push_back(test_);
  tests.push_back(std::move(test_));
  return tests;
}

bool TestReader::read_segment(bool first) {
  fracture_ = nullptr;
  layer_ = nullptr;
  const std::size_t at = here();
  if (!read_score(first) || !read_attributes()) return false;
  if (first || fracture_ != nullptr) return true;
  return fail(scanner_.failure_at(at, "expected a further fracture behind ;",
                                  "its score without the kind of test, or its depth: ; 23 (RP) down 40"));
}

bool TestReader::read_attributes() {
  while (true) {
    while (scanner_.accept(',')) continue;
    const char next = scanner_.next();
    if (next == '\0' || next == ';') return true;
    if (!read_attribute()) return false;
  }
}

bool TestReader::read_attribute() {
  const std::size_t at = here();
  if (scanner_.accept('(')) return read_group(at);
  if (scanner_.next() == '"' || scanner_.at_quote()) {
    return read_words(fracture_ == nullptr ? test_.words : fracture_->words, "words");
  }
  Datum datum;
  if (accept_datum(datum)) return read_depth(datum, at);
  if (scanner_.at_number()) {
    // 68 cm; behind `on`, a number without a unit is a size.
    Scanner ahead = scanner_;
    const Result<Length> length = ahead.length("a depth", LengthUnit::mm);
    if (length && length->unit_written && length->unit != LengthUnit::mm)
      return read_depth(Datum::unknown, at);
    if (layer_ == nullptr) {
      if (!length) return fail(length.failure());
      return fail_expected("a depth with its sign or unit", "write down 68, up 72, @68 or 68 cm");
    }
  }
  bool taken = false;
  if (!read_keyword(at, taken) || taken) return taken;
  if (!accept_flag(at, taken) || taken) return taken;
  if (layer_ != nullptr && !read_layer_part(*layer_, taken)) return false;
  if (taken) return true;
  return read_word(at);
}

bool TestReader::read_keyword(std::size_t at, bool& taken) {
  for (const Keyword& keyword : kKeywords) {
    if (!scanner_.accept(keyword.words)) continue;
    taken = (this->*keyword.read)(keyword.name, at);
    return taken;
  }
  return true;
}

// A code that stands for itself, in brackets or not.
bool TestReader::accept_flag(std::size_t at, bool& taken) {
  std::string_view word = scanner_.peek_word();
  word = word.substr(0, word.find('/'));  // SP/Q1
  const auto character = parse_code<FractureCharacter>(word);
  const auto quality = parse_code<ShearQuality>(word);
  const auto surface = parse_code<FractureSurface>(word);
  const auto release = parse_code<ReleaseType>(word);
  const auto saw_end = parse_code<SawEnd>(word);
  if (!character && !quality && !surface && !release && !saw_end) return true;
  FractureT* broken = fracture(at);
  if (broken == nullptr) return false;
  scanner_.seek(here() + word.size());
  taken = character ? set(broken->character, *character, "character", at)
          : quality ? set(broken->quality, *quality, "shear quality", at)
          : surface ? set(broken->fracture_surface, *surface, "fracture surface", at)
          : release ? set(broken->release, *release, "release", at)
                    : set(broken->saw_end, *saw_end, "saw end", at);
  return taken;
}

bool TestReader::read_group_item() {
  bool taken = false;
  const std::size_t item = here();
  if (!accept_flag(item, taken)) return false;
  if (!taken && layer_ != nullptr && !read_layer_item(*layer_, taken)) return false;
  return taken || fail_unexpected();
}

bool TestReader::read_group(std::size_t at) {
  return read_group_item() && read_group_end(at);
}

bool TestReader::read_group_end(std::size_t at) {
  while (true) {
    while (scanner_.accept(',') || scanner_.accept('/')) continue;
    if (scanner_.accept(')')) return true;
    if (scanner_.at_end()) break;
    if (!read_group_item()) return false;
  }
  return fail(scanner_.failure_at(at, "a bracket that is never closed", "close it with )"));
}

// x2, or something that cannot stand here.
bool TestReader::read_word(std::size_t at) {
  const std::string_view word = scanner_.peek_word();
  if (word.size() == 2 && (word[0] == 'x' || word[0] == 'X') && word[1] >= '2' && word[1] <= '9') {
    if (repeat_ != 1) return fail_twice("the number of tests", at);
    scanner_.take_word();
    repeat_ = static_cast<std::uint8_t>(word[1] - '0');
    return true;
  }
  return fail_unexpected();
}

bool TestReader::fail_unexpected() {
  const std::string_view word = scanner_.peek_word();
  if (word.size() > 1 && (word[0] == 'Q' || word[0] == 'q') && word[1] >= '0' && word[1] <= '9') {
    // Rounding it would add or take away caution behind the observer's back.
    return fail_expected("shear quality Q1, Q2 or Q3", "choose one, or keep what you saw in words: \"" +
                                                           std::string(word.substr(0, 8)) + "\"");
  }
  TestReader ahead(scanner_.rest(), nullptr);
  if (same_code(word, "and") || same_code(word, "&") || (ahead.read_kind() && ahead.test_.kind)) {
    return fail_expected("the end of this test",
                         "write another test on a line of its own; a further fracture of the same column "
                         "follows a semicolon, without the kind: ; 23 (RP) down 40");
  }
  const Word* known = layer_ == nullptr ? find_word(word) : find_word_in(scanner_.rest(), WordOf::grain_form);
  std::string remedy = "keep anything else as words in quotation marks";
  if (known != nullptr &&
      (known->about == WordOf::grain_form || known->about == WordOf::fracture_character)) {
    remedy = known->about == WordOf::grain_form ? "that may be" : "that is often";
    for (std::size_t i = 0; i < known->count; ++i) {
      remedy += i == 0 ? " " : " or ";
      remedy += known->about == WordOf::grain_form
                    ? code_of(static_cast<firnbook::GrainForm>(known->candidates[i]))
                    : code_of(static_cast<FractureCharacter>(known->candidates[i]));
    }
    remedy += ": write the code you saw, or keep your word in quotation marks";
  }
  return fail_expected(layer_ != nullptr && known != nullptr
                           ? "a grain form, such as SH"
                           : "a character (SP, SC, RP, PC, BRK), a depth (down 40), a layer (on SH 6.0), "
                             "words in quotation marks, or the end",
                       remedy);
}

FractureT* TestReader::fracture(std::size_t at) {
  if (said_no_fracture_) {
    fail(scanner_.failure_at(at, "a fracture in a test where nothing broke",
                             "keep one of them; words in quotation marks may say more",
                             FIRN_NOTES_CONTRADICT));
    return nullptr;
  }
  if (fracture_ == nullptr) {
    test_.fractures.push_back(std::make_unique<FractureT>());
    fracture_ = test_.fractures.back().get();
  }
  return fracture_;
}

bool TestReader::read_depth(Datum datum, std::size_t at) {
  Depth depth;
  if (!read_depth_after(datum, depth)) return false;
  if (said_no_fracture_) {
    // CTN down 40: that layer was loaded and did not break.
    test_.unbroken.push_back(depth);
    return true;
  }
  FractureT* broken = fracture(at);
  return broken != nullptr && set_depth(broken->depth, depth, "depth", at);
}

bool TestReader::keyword_fracture(std::string_view, std::size_t at) {
  return fracture(at) != nullptr;
}

bool TestReader::keyword_on(std::string_view name, std::size_t at) {
  FractureT* broken = fracture(at);
  if (broken == nullptr) return false;
  if (broken->on != nullptr) return fail_twice(name, at);
  broken->on = std::make_unique<firnbook::LayerT>();
  layer_ = broken->on.get();
  scanner_.accept("a");
  if (scanner_.at_quote()) return read_words(layer_->words, "words of the layer");
  bool taken = false;
  const std::size_t bracket = here();
  if (scanner_.accept('(')) {
    // (270102) or (RG) say something about a layer, (SP) does not.
    if (!read_layer_item(*layer_, taken)) return false;
    return taken ? read_group_end(bracket) : fail_unexpected();
  }
  if (!read_layer_part(*layer_, taken)) return false;
  return taken || fail_unexpected();
}

bool TestReader::keyword_force(std::string_view name, std::size_t at) {
  FractureT* broken = fracture(at);
  if (broken == nullptr) return false;
  const Result<Number> force = scanner_.number("a force in newtons", 3, INT64_MIN, INT64_MAX);
  if (!force) return fail(force.failure());
  if (!scanner_.accept("N")) return fail_expected("N behind a force");
  if (force->rounded && remarks_ != nullptr) {
    remarks_->push_back(scanner_.failure_at(at, "force rounded to a thousandth of a newton", {}, FIRN_OK));
  }
  return set(broken->force_mn, force->value, name, at);
}

bool TestReader::keyword_unreliable(std::string_view, std::size_t at) {
  FractureT* broken = fracture(at);
  return broken != nullptr && read_unreliable(form::table_of<firnbook::FractureT>(), broken->unreliable);
}

bool TestReader::keyword_test(std::string_view, std::size_t) {
  if (scanner_.accept("unreliable")) {
    return read_unreliable(form::table_of<firnbook::StabilityTestT>(), test_.unreliable);
  }
  if (scanner_.at_quote()) return read_words(test_.words, "words about the test");
  if (!scanner_.accept("outcome")) return fail_expected("words in quotation marks, unreliable or outcome");
  said_outcome_ = true;
  if (scanner_.accept("not given")) return true;
  const std::size_t at = here();
  return read_value("outcome", test_.outcome, at);
}

// 30x90 is across the slope times up it. An extended column is by definition wider than it is long, so the
// longer side is the one across, however somebody wrote it.
bool TestReader::keyword_column(std::string_view, std::size_t at) {
  if (scanner_.accept("width")) return read_value("width in cm", test_.column_width_10um, at);
  if (scanner_.accept("length")) return read_value("length in cm", test_.column_length_10um, at);
  if (scanner_.accept("depth")) return read_value("depth in cm", test_.column_depth_10um, at);
  std::int32_t sides[3];
  int count = 0;
  do {
    const Result<Number> side = scanner_.number("a side of the column in cm", 3, 0, INT32_MAX);
    if (!side) return fail(side.failure());
    sides[count++] = static_cast<std::int32_t>(side->value);
  } while (count < 3 && (scanner_.accept('x') || scanner_.accept('X') || accept_times()));
  scanner_.accept("cm");
  if (count < 2) return fail_expected("x and the other side of the column", "write column 30x90");
  if (test_.kind == TestKind::ECT && sides[0] < sides[1]) std::swap(sides[0], sides[1]);
  if (!set(test_.column_width_10um, sides[0], "width of the column", at)) return false;
  if (!set(test_.column_length_10um, sides[1], "length of the column", at)) return false;
  return count < 3 || set(test_.column_depth_10um, sides[2], "depth of the column", at);
}

bool TestReader::accept_times() {
  constexpr std::string_view kTimes = "\xC3\x97";
  scanner_.skip_blanks();
  if (scanner_.rest().substr(0, kTimes.size()) != kTimes) return false;
  scanner_.seek(scanner_.position() + kTimes.size());
  return true;
}

bool TestReader::keyword_slope(std::string_view name, std::size_t at) {
  if (!read_value(name, test_.slope_deg, at)) return false;
  if (scanner_.accept("deg") || scanner_.accept("degrees") || scanner_.accept("\xC2\xB0")) return true;
  return true;
}

// `no fracture down 40` names a layer that held; without a depth nothing broke at all.
bool TestReader::keyword_no_fracture(std::string_view, std::size_t at) {
  Datum datum;
  if (!accept_datum(datum)) return nothing_broke(test_.fractures.empty(), at);
  Depth depth;
  if (!read_depth_after(datum, depth)) return false;
  test_.unbroken.push_back(depth);
  while (true) {
    const std::size_t comma = scanner_.position();
    if (!scanner_.accept(',')) return true;
    if (!scanner_.at_number()) {
      scanner_.seek(comma);
      return true;
    }
    if (!read_depth_after(datum, depth)) return false;
    test_.unbroken.push_back(depth);
  }
}

bool TestReader::keyword_not_valid(std::string_view, std::size_t at) {
  if (said_outcome_) return fail_twice("the outcome", at);
  said_outcome_ = true;
  test_.outcome = TestOutcome::not_valid;
  const bool has_reason = scanner_.accept(':');
  const std::size_t end = scanner_.position();
  if (!has_reason) scanner_.accept(',');
  const std::size_t reason_at = here();
  // As people say it, beside the words of the table.
  struct Spelled {
    std::string_view words;
    NotValidReason reason;
  };
  constexpr Spelled kReasons[] = {
      {"shovel sank in", NotValidReason::sank_in},
      {"skis sank in", NotValidReason::sank_in},
      {"shovel sinks in", NotValidReason::sank_in},
      {"broke while being cut", NotValidReason::broke_while_cutting},
      {"column wobbled", NotValidReason::column_disturbed},
      {"loading went wrong", NotValidReason::loading},
      {"too gentle", NotValidReason::slope_too_gentle},
  };
  for (const Spelled& spelled : kReasons) {
    if (scanner_.accept(spelled.words)) {
      return set(test_.not_valid_reason, spelled.reason, "the reason", reason_at);
    }
  }
  if (has_reason && scanner_.at_quote()) {
    return set(test_.not_valid_reason, NotValidReason::other, "the reason", reason_at);
  }
  if (has_reason) return read_value("reason", test_.not_valid_reason, reason_at);
  if (const auto reason = accept_code<NotValidReason>(scanner_)) {
    return set(test_.not_valid_reason, *reason, "the reason", reason_at);
  }
  scanner_.seek(end);
  return true;
}

bool TestReader::settle_outcome() {
  if (test_.fractures.empty() || said_outcome_) return true;
  test_.outcome = TestOutcome::fractured;
  return true;
}

Result<std::vector<StabilityTestT>> parse_test(std::string_view line) {
  return TestReader(line, nullptr).read();
}

Result<std::vector<StabilityTestT>> parse_test(std::string_view line, std::vector<Failure>& remarks) {
  return TestReader(line, &remarks).read();
}

bool looks_like_test(std::string_view line) {
  return TestReader(line, nullptr).starts_like_a_test();
}

}  // namespace firn::notation
