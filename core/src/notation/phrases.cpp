#include "notation/phrases.h"

#include "notation/raw_values.h"
#include "support/text.h"
#include "vocabulary/words.h"

namespace firn::notation {
namespace {

using firnbook::Datum;
using firnbook::Depth;
using firnbook::Direction;
using firnbook::GrainForm;
using firnbook::HandHardness;
using firnbook::LayerNameKind;
using firnbook::LayerT;
using firnbook::Moment;

std::optional<std::uint8_t> accept_raw(Scanner& scanner) {
  const std::string_view word = scanner.peek_word();
  if (word.size() < 2 || word.size() > 4 || word[0] != '?') return std::nullopt;
  int value = 0;
  for (char character : word.substr(1)) {
    if (character < '0' || character > '9') return std::nullopt;
    value = value * 10 + (character - '0');
  }
  if (value > 255) return std::nullopt;
  scanner.take_word();
  return static_cast<std::uint8_t>(value);
}

int digits(std::string_view text, std::size_t start, std::size_t count) {
  int value = 0;
  for (char character : text.substr(start, count)) value = value * 10 + (character - '0');
  return value;
}

bool all_digits(std::string_view text) {
  for (char character : text) {
    if (character < '0' || character > '9') return false;
  }
  return !text.empty();
}

bool is_day(std::string_view word) {
  if (word.size() == 6) return all_digits(word);
  return word.size() == 10 && word[4] == '-' && word[7] == '-' && all_digits(word.substr(0, 4)) &&
         all_digits(word.substr(5, 2)) && all_digits(word.substr(8, 2));
}

// YYMMDD, the guidelines' way of naming a layer, or YYYY-MM-DD; two digits of a year are those of this
// century.
bool to_day(std::string_view word, Moment& moment) {
  CalendarTime time;
  const bool is_short = word.size() == 6;
  time.year = is_short ? 2000 + digits(word, 0, 2) : digits(word, 0, 4);
  time.month = digits(word, is_short ? 2 : 5, 2);
  time.day = digits(word, is_short ? 4 : 8, 2);
  if (time.month < 1 || time.month > 12) return false;
  if (time.day < 1 || time.day > days_in_month(time.year, time.month)) return false;
  moment = Moment(seconds_of(time), 0, firnbook::TimePrecision::day, 0);
  return true;
}

}  // namespace

std::string_view field_name(const form::Table& table, std::size_t field) {
  std::string_view name = table.name_of(field);
  for (std::string_view unit : {"_10um", "_mn", "_deg"}) {
    if (name.size() > unit.size() && name.substr(name.size() - unit.size()) == unit) {
      name.remove_suffix(unit.size());
    }
  }
  return name;
}

std::optional<std::uint8_t> accept_value(Scanner& scanner, const CodeTable& table) {
  if (const std::optional<std::uint8_t> raw = accept_raw(scanner)) return raw;
  const std::size_t start = scanner.position();
  std::size_t end = start;
  std::optional<std::uint8_t> value;
  const auto consider = [&](std::uint8_t candidate, std::string_view code) {
    scanner.seek(start);
    if (!scanner.accept(code) || scanner.position() <= end) return;
    end = scanner.position();
    value = candidate;
  };
  for (const Code& row : table) consider(row.value, row.code);
  for (std::size_t i = 0; i < table.synonym_count; ++i) {
    consider(table.synonyms[i].value, table.synonyms[i].code);
  }
  scanner.seek(end);
  return value;
}

bool PhraseReader::fail(Failure failure) {
  failure_ = std::move(failure);
  return false;
}

bool PhraseReader::fail_expected(std::string_view what, std::string_view remedy) {
  return fail(scanner_.expected(what, remedy));
}

bool PhraseReader::fail_twice(std::string_view name, std::size_t at) {
  return fail(
      scanner_.failure_at(at, std::string(name) + " given twice", "keep one of them", FIRN_NOTES_CONTRADICT));
}

std::size_t PhraseReader::here() {
  scanner_.skip_blanks();
  return scanner_.position();
}

bool PhraseReader::read_value(std::string_view name, flatbuffers::Optional<std::uint8_t>& field,
                              std::size_t at) {
  const Result<std::int64_t> value = scanner_.whole(name, 0, 255);
  if (!value) return fail(value.failure());
  return set(field, static_cast<std::uint8_t>(*value), name, at);
}

bool PhraseReader::read_value(std::string_view name, flatbuffers::Optional<std::int32_t>& field,
                              std::size_t at) {
  Length length;
  return read_length(name, LengthUnit::cm, length) && set(field, length.value_10um, name, at);
}

std::optional<std::uint8_t> PhraseReader::read_code(std::string_view name, const CodeTable& table) {
  const std::optional<std::uint8_t> value = accept_value(scanner_, table);
  if (value) return value;
  std::string what(name);
  what += " (";
  for (const Code& row : table) {
    if (&row != table.begin()) what += ", ";
    what += row.code;
  }
  what += ')';
  fail_expected(what);
  return std::nullopt;
}

void PhraseReader::remark(std::size_t at, const Length& length) {
  if (remarks_ == nullptr) return;
  std::string text = "read as ";
  append_cm(text, length.value_10um);
  text += length.rounded ? " cm, rounded to a hundredth of a millimetre" : " cm, from inches or feet";
  remarks_->push_back(scanner_.failure_at(at, std::move(text), {}, FIRN_OK));
}

bool PhraseReader::read_length(std::string_view what, LengthUnit unit, Length& length) {
  const std::size_t at = here();
  Result<Length> read = scanner_.length(what, unit);
  if (!read) return fail(read.failure());
  length = *read;
  if (length.rounded || length.unit == LengthUnit::inch || length.unit == LengthUnit::foot) {
    remark(at, length);
  }
  return true;
}

bool PhraseReader::accept_datum(Datum& datum) {
  datum = Datum::unknown;
  if (scanner_.accept('@') || scanner_.accept("at")) return true;
  datum = Datum::surface;
  if (scanner_.accept("down")) return true;
  datum = Datum::ground;
  return scanner_.accept("up");
}

bool PhraseReader::read_depth_after(Datum datum, Depth& depth) {
  Length length;
  if (!read_length("a depth in cm", LengthUnit::cm, length)) return false;
  if (!scanner_.rest().empty() && scanner_.rest()[0] == '-') {
    return fail_expected("one depth", "write the depth where it broke, and the rest in words: \"65-70\"");
  }
  Direction direction = Direction::unknown;
  if (scanner_.accept("vertical")) direction = Direction::vertical;
  if (scanner_.accept("slope-normal")) direction = Direction::slope_normal;
  if (scanner_.accept("direction")) {
    const auto code = accept_code<Direction>(scanner_);
    if (!code) return fail_expected("a direction (vertical or slope-normal)");
    direction = *code;
  }
  if (scanner_.accept("datum")) {
    const auto code = accept_code<Datum>(scanner_);
    if (!code) return fail_expected("a datum (surface or ground)");
    datum = *code;
  }
  depth = Depth(length.value_10um, datum, direction);
  return true;
}

bool PhraseReader::set_depth(std::unique_ptr<Depth>& field, const Depth& depth, std::string_view name,
                             std::size_t at) {
  if (field != nullptr) return fail_twice(name, at);
  field = std::make_unique<Depth>(depth);
  return true;
}

bool PhraseReader::read_words(std::string& field, std::string_view name) {
  const std::size_t at = here();
  Result<std::string> words = scanner_.quoted("words in quotation marks");
  if (!words) return fail(words.failure());
  if (!field.empty()) return fail_twice(name, at);
  if (words->empty()) {
    return fail(scanner_.failure_at(at, "empty quotation marks", "leave them out, or write the words"));
  }
  field = std::move(*words);
  return true;
}

bool PhraseReader::read_unreliable(const form::Table& table, std::uint64_t& mask) {
  if (!scanner_.accept('(')) {
    return fail_expected("what is unreliable, in brackets", "write for example unreliable(depth, tap)");
  }
  do {
    if (const std::optional<std::uint8_t> bit = accept_raw(scanner_)) {
      if (*bit >= 64) return fail_expected("a field number below 64");
      mask |= std::uint64_t{1} << *bit;
      continue;
    }
    std::size_t field = 0;
    while (field < table.count && !scanner_.accept(field_name(table, field))) ++field;
    if (field == table.count) return fail_expected("the name of a value, such as depth");
    mask |= std::uint64_t{1} << field;
  } while (scanner_.accept(','));
  return scanner_.accept(')') || fail_expected(") behind what is unreliable");
}

bool PhraseReader::read_layer_part(LayerT& layer, bool& taken) {
  const std::size_t at = here();
  taken = true;
  // on 240112, as field books have it; no grain is that large.
  if (is_day(scanner_.peek_word())) return read_layer_item(layer, taken);
  if (scanner_.at_number()) {
    if (const auto hardness = parse_code<HandHardness>(scanner_.peek_word())) {
      scanner_.take_word();
      return set(layer.hardness, *hardness, "hand hardness", at);
    }
    return read_size(layer, at);
  }
  return read_layer_word(layer, taken);
}

bool PhraseReader::read_size(LayerT& layer, std::size_t at) {
  Length size;
  if (!read_length("a grain size in mm", LengthUnit::mm, size)) return false;
  if (!set(layer.grain_size_10um, size.value_10um, "grain size", at)) return false;
  if (scanner_.rest().empty() || scanner_.rest()[0] != '-') return true;
  scanner_.accept('-');
  if (!read_length("the largest grain size in mm", LengthUnit::mm, size)) return false;
  return set(layer.grain_size_max_10um, size.value_10um, "largest grain size", at);
}

bool PhraseReader::read_layer_depth(std::unique_ptr<Depth>& field, std::string_view name) {
  const std::size_t at = here();
  Datum datum;
  if (!accept_datum(datum)) return fail_expected("a depth: down 68, up 72 or @68");
  Depth depth;
  return read_depth_after(datum, depth) && set_depth(field, depth, name, at);
}

bool PhraseReader::read_candidates(LayerT& layer) {
  do {
    const auto form = accept_code<GrainForm>(scanner_);
    if (!form) return fail_expected("a grain form, such as FC");
    layer.candidates.push_back(*form);
  } while (scanner_.accept("or"));
  return true;
}

bool PhraseReader::read_formed(LayerT& layer) {
  const std::size_t at = here();
  if (layer.formed != nullptr) return fail_twice("the time it formed", at);
  Moment begin;
  Moment end;
  failure_ = {};
  const bool read = accept_moment(begin) && (!scanner_.accept("to") || accept_moment(end));
  if (!read) return !failure_.what.empty() ? false : fail_expected("a day (270102 or 2027-01-02)");
  layer.formed = std::make_unique<firnbook::TimeSpan>(begin, end);
  return true;
}

bool PhraseReader::read_layer_word(LayerT& layer, bool& taken) {
  const std::size_t at = here();
  if (scanner_.accept("hardness")) return read_value("hand hardness", layer.hardness, at);
  if (scanner_.accept("hardness-top")) return read_value("hardness at the top", layer.hardness_top, at);
  if (scanner_.accept("hardness-bottom")) {
    return read_value("hardness at the bottom", layer.hardness_bottom, at);
  }
  if (scanner_.accept("form")) return read_value("grain form", layer.grain_form, at);
  if (scanner_.accept("second")) return read_value("second grain form", layer.grain_form_second, at);
  if (scanner_.accept("wetness")) return read_value("wetness", layer.wetness, at);
  if (scanner_.accept("size")) return read_value("size class", layer.grain_size_class, at);
  if (scanner_.accept("size-max")) {
    if (!scanner_.at_number()) return read_value("largest size class", layer.grain_size_max_class, at);
    Length size;
    return read_length("the largest grain size in mm", LengthUnit::mm, size) &&
           set(layer.grain_size_max_10um, size.value_10um, "largest grain size", at);
  }
  if (scanner_.accept("maybe")) return read_candidates(layer);
  if (scanner_.accept("top")) return read_layer_depth(layer.top, "top of the layer");
  if (scanner_.accept("bottom")) return read_layer_depth(layer.bottom, "bottom of the layer");
  if (scanner_.accept("formed")) return read_formed(layer);
  if (scanner_.accept("concern")) return read_value("part of concern", layer.concern, at);
  if (scanner_.accept("layer unreliable")) {
    return read_unreliable(form::table_of<firnbook::LayerT>(), layer.unreliable);
  }
  const std::string_view word = scanner_.peek_word();
  if (const auto form = parse_code<GrainForm>(word)) {
    scanner_.take_word();
    return set(layer.grain_form, *form, "grain form", at);
  }
  if (const auto hardness = parse_code<HandHardness>(word)) {
    scanner_.take_word();
    return set(layer.hardness, *hardness, "hand hardness", at);
  }
  taken = false;
  return true;
}

bool PhraseReader::read_layer_item(LayerT& layer, bool& taken) {
  const std::size_t at = here();
  taken = true;
  if (const auto form = parse_code<GrainForm>(scanner_.peek_word())) {
    scanner_.take_word();
    return set(layer.grain_form_second, *form, "second grain form", at);
  }
  failure_ = {};
  Moment moment;
  const bool is_date = accept_moment(moment);
  if (!is_date && !failure_.what.empty()) return false;
  const auto kind = is_date ? std::nullopt : accept_code<LayerNameKind>(scanner_);
  taken = is_date || kind || scanner_.at_quote();
  if (!taken) return true;
  if (layer.name == nullptr) layer.name = std::make_unique<firnbook::LayerNameT>();
  if (kind) return set(layer.name->kind, *kind, "kind of date", at);
  if (!is_date) return read_words(layer.name->words, "the layer's name");
  if (layer.name->date != nullptr) return fail_twice("the layer's date", at);
  layer.name->date = std::make_unique<Moment>(moment);
  return true;
}

// A day, or any moment in its raw form.
bool PhraseReader::accept_moment(Moment& moment) {
  const std::string_view word = scanner_.peek_word();
  const Result<bool> raw = read_raw(scanner_, moment);
  if (!raw) return fail(raw.failure());
  if (*raw) return true;
  if (!is_day(word)) return false;
  if (!to_day(word, moment)) return fail_expected("a day that exists, as YYMMDD or YYYY-MM-DD");
  scanner_.take_word();
  return true;
}

}  // namespace firn::notation
