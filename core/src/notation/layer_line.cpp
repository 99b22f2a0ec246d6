#include "notation/layer_line.h"

#include <utility>

#include "support/text.h"
#include "vocabulary/words.h"

namespace firn::notation {

using firnbook::Depth;
using firnbook::GrainForm;
using firnbook::HandHardness;
using firnbook::Layer;
using firnbook::LayerT;

bool read_depth(Line& line, const Frame& frame, std::unique_ptr<Depth>& depth, std::uint64_t& mask,
                std::uint16_t bit) {
  Standing standing;
  Depth raw;
  const Result<bool> is_raw = read_raw(line.scan, raw);
  if (!is_raw) return line.fail(is_raw.failure());
  const std::string_view rest = line.scan.rest();
  if (*is_raw) {
    depth = std::make_unique<Depth>(raw);
  } else if (!rest.empty() && rest[0] == '~') {
    line.scan.seek(line.scan.position() + 1);
  } else {
    std::int64_t value = 0;
    if (!read_number(line, "a depth in cm", 3, INT32_MIN, INT32_MAX, value)) return false;
    depth = std::make_unique<Depth>(static_cast<std::int32_t>(value), frame.datum, frame.direction);
  }
  take_doubt(line, standing);
  if (standing.unreliable) mask |= std::uint64_t{1} << bit;
  return true;
}

void append_depth(std::string& out, const Frame& frame, const Depth* depth, std::uint64_t mask,
                  std::uint16_t bit) {
  if (depth == nullptr) {
    out += '~';
  } else if (frame_of(*depth) == frame) {
    append_cm(out, depth->value_10um());
  } else {
    append_raw(out, *depth);
  }
  if ((mask >> bit & 1) != 0) out += '?';
}

bool take_span_dash(Line& line) {
  return take_dash(line) ||
         line.expected("a span of depths such as 16-31", "write both ends with a dash between");
}

bool end_of_span(Line& line) {
  take_words(line, "cm");
  const std::string_view rest = line.scan.rest();
  if (rest.empty() || rest[0] == ' ' || rest[0] == '\t' || rest[0] == ',') return true;
  return line.expected("a blank behind the span of depths");
}

namespace {

constexpr std::uint64_t bit(int vtable_offset) {
  return std::uint64_t{1} << field_id(vtable_offset);
}

struct MarkName {
  std::string_view word;
  int vtable_offset;
};
// Marks of doubt that have no value to stand behind.
constexpr MarkName kMarkNames[] = {{"words", Layer::VT_WORDS},
                                   {"maybe", Layer::VT_CANDIDATES},
                                   {"name", Layer::VT_NAME},
                                   {"formed", Layer::VT_FORMED},
                                   {"concern", Layer::VT_CONCERN}};

// Marks of fields that a later schema may add, and of the mask itself.
constexpr std::uint64_t kUnknownFields = ~(bit(Layer::VT_UNRELIABLE) - 1);

constexpr std::int64_t kFinest = INT32_MIN;
constexpr std::int64_t kCoarsest = INT32_MAX;

class LayerReader {
 public:
  LayerReader(Line& line, LayerT& layer) : line_(line), layer_(layer) {}

  bool read();

 private:
  // Columns in the order of writing; ~ and U stand for the one that comes next.
  enum Column { hardness, form, size, wetness, none };
  static constexpr int kFields[] = {Layer::VT_HARDNESS, Layer::VT_GRAIN_FORM, Layer::VT_GRAIN_SIZE_10UM,
                                    Layer::VT_WETNESS};

  bool next_value();
  bool keyword(bool& taken);
  bool hardness_value();
  bool size_value();
  bool class_value();
  bool second_form();
  bool candidates();
  bool name();
  bool marks();
  bool nothing_here();

  template <class E>
  bool coded(flatbuffers::Optional<E>& value, int vtable_offset, std::string_view what);
  bool number(flatbuffers::Optional<std::int32_t>& value, int vtable_offset);
  bool words();
  // Whether the range of sizes goes on behind the first of two values.
  bool take_range();
  bool first_time(int vtable_offset, std::string_view what);
  void mark(int vtable_offset, const Standing& standing) {
    if (standing.unreliable) layer_.unreliable |= bit(vtable_offset);
  }

  Line& line_;
  LayerT& layer_;
  int column_ = hardness;
  std::uint64_t seen_ = 0;
  bool chose_candidates_ = false;
};

bool LayerReader::first_time(int vtable_offset, std::string_view what) {
  if ((seen_ & bit(vtable_offset)) == 0) {
    seen_ |= bit(vtable_offset);
    return true;
  }
  std::string twice = "this layer has two of: ";
  twice += what;
  return line_.fail(line_.scan.failure_at(line_.scan.position(), std::move(twice), "leave one of the two out",
                                          FIRN_NOTES_CONTRADICT));
}

template <class E>
bool LayerReader::coded(flatbuffers::Optional<E>& value, int vtable_offset, std::string_view what) {
  if (!first_time(vtable_offset, what)) return false;
  Standing standing;
  std::uint8_t code = 0;
  if (!take_missing(line_, standing)) {
    if (!read_code(line_, code_table<E>(), what, code)) return false;
    value = static_cast<E>(code);
    take_doubt(line_, standing);
  }
  mark(vtable_offset, standing);
  return true;
}

bool LayerReader::number(flatbuffers::Optional<std::int32_t>& value, int vtable_offset) {
  constexpr std::string_view kWhat = "a grain size in mm";
  if (!first_time(vtable_offset, kWhat)) return false;
  Standing standing;
  line_.scan.skip_blanks();
  const std::string_view rest = line_.scan.rest();
  // Not take_missing: in ~-3.0 a dash follows.
  if (rest.substr(0, 1) == "~") {
    line_.scan.seek(line_.scan.position() + 1);
    take_doubt(line_, standing);
  } else if (!take_missing(line_, standing)) {
    std::int64_t grain = 0;
    if (!read_number(line_, kWhat, 2, kFinest, kCoarsest, grain)) return false;
    value = static_cast<std::int32_t>(grain);
    take_doubt(line_, standing);
  }
  mark(vtable_offset, standing);
  return true;
}

bool LayerReader::take_range() {
  return take_dash(line_) || take_words(line_, "to");
}

bool LayerReader::size_value() {
  column_ = wetness;
  if (!number(layer_.grain_size_10um, Layer::VT_GRAIN_SIZE_10UM)) return false;
  if (take_range() && !number(layer_.grain_size_max_10um, Layer::VT_GRAIN_SIZE_MAX_10UM)) return false;
  take_words(line_, "mm");
  return true;
}

// "fine-medium" would be one word to the vocabulary.
bool LayerReader::class_value() {
  column_ = wetness;
  constexpr std::string_view kWhat = "a class of grain size";
  const CodeTable table = code_table<firnbook::GrainSizeClass>();
  const auto one = [&](flatbuffers::Optional<firnbook::GrainSizeClass>& value, int vtable_offset) {
    line_.scan.skip_blanks();
    const std::string_view rest = line_.scan.rest();
    if (rest.substr(0, 1) == "~") {
      Standing standing;
      if (!first_time(vtable_offset, kWhat)) return false;
      line_.scan.seek(line_.scan.position() + 1);
      take_doubt(line_, standing);
      mark(vtable_offset, standing);
      return true;
    }
    for (const Code& code : table) {
      const std::size_t length = code.code.size();
      if (rest.size() <= length || rest[length] != '-' || !same_code(rest.substr(0, length), code.code))
        continue;
      value = static_cast<firnbook::GrainSizeClass>(code.value);
      line_.scan.seek(line_.scan.position() + length);
      return first_time(vtable_offset, kWhat);
    }
    return coded(value, vtable_offset, kWhat);
  };
  if (!one(layer_.grain_size_class, Layer::VT_GRAIN_SIZE_CLASS)) return false;
  return !take_range() || one(layer_.grain_size_max_class, Layer::VT_GRAIN_SIZE_MAX_CLASS);
}

// One hardness, or a change from top to bottom: 4F to 1F, 4F/1F.
bool LayerReader::hardness_value() {
  constexpr std::string_view kWhat = "a hand hardness";
  column_ = form;
  Standing standing;
  std::uint8_t code = 0;
  const std::size_t start = line_.scan.position();
  if (!read_code(line_, code_table<HandHardness>(), kWhat, code)) return false;
  take_doubt(line_, standing);
  const bool slash = line_.scan.rest().substr(0, 1) == "/";
  if (slash) line_.scan.seek(line_.scan.position() + 1);
  const bool changes = slash || take_words(line_, "to");
  if (!changes) {
    line_.scan.seek(start);
    return coded(layer_.hardness, Layer::VT_HARDNESS, kWhat);
  }
  if (!first_time(Layer::VT_HARDNESS_TOP, kWhat)) return false;
  layer_.hardness_top = static_cast<HandHardness>(code);
  mark(Layer::VT_HARDNESS_TOP, standing);
  return coded(layer_.hardness_bottom, Layer::VT_HARDNESS_BOTTOM, kWhat);
}

bool LayerReader::second_form() {
  line_.scan.accept('(');
  if (!coded(layer_.grain_form_second, Layer::VT_GRAIN_FORM_SECOND, "a second grain form")) return false;
  return line_.scan.accept(')') || line_.expected("a closing bracket behind the second grain form");
}

bool LayerReader::candidates() {
  if (!first_time(Layer::VT_CANDIDATES, "maybe")) return false;
  chose_candidates_ = true;
  if (take_words(line_, "none")) return true;
  const CodeTable table = code_table<GrainForm>();
  do {
    std::uint8_t code = 0;
    if (!read_code(line_, table, "a grain form that it may be, or none", code)) return false;
    layer_.candidates.push_back(static_cast<GrainForm>(code));
  } while (at_code(line_, table) || line_.scan.next() == '?');
  return true;
}

bool LayerReader::name() {
  if (!first_time(Layer::VT_NAME, "a name")) return false;
  auto named = std::make_unique<firnbook::LayerNameT>();
  bool any = false;
  if (at_moment(line_)) {
    firnbook::Moment date;
    if (!read_name_date(line_, date)) return false;
    named->date = std::make_unique<firnbook::Moment>(date);
    any = true;
  }
  const CodeTable kinds = code_table<firnbook::LayerNameKind>();
  const std::size_t start = line_.scan.position();
  if (at_code(line_, kinds) || (line_.scan.next() == '?' && line_.scan.rest().size() > 1)) {
    std::uint8_t kind = 0;
    if (!read_code(line_, kinds, "buried, formed or assumed", kind)) return false;
    // "formed 2027-01-02" behind a name says when it formed, not what the name's date is.
    if (static_cast<firnbook::LayerNameKind>(kind) == firnbook::LayerNameKind::formed && at_moment(line_)) {
      line_.scan.seek(start);
    } else {
      named->kind = static_cast<firnbook::LayerNameKind>(kind);
      any = true;
    }
  }
  if (line_.scan.at_quote()) {
    if (!read_quoted(line_, "the name of the layer", named->words)) return false;
    any = true;
  }
  if (!any) return line_.expected("a date as YYMMDD, or a name in quotes", "write name 270102 buried");
  layer_.name = std::move(named);
  return true;
}

bool LayerReader::marks() {
  bool any = false;
  for (;;) {
    line_.scan.skip_blanks();
    bool found = false;
    for (const MarkName& mark_name : kMarkNames) {
      if (!take_words(line_, mark_name.word)) continue;
      layer_.unreliable |= bit(mark_name.vtable_offset);
      any = found = true;
      line_.scan.accept(',');
      break;
    }
    if (!found && at_mark(line_)) {
      if (!read_mark(line_, kUnknownFields, layer_.unreliable)) return false;
      any = found = true;
    }
    if (found) continue;
    return any || line_.expected("what is unreliable: words, maybe, name, formed or concern");
  }
}

bool LayerReader::words() {
  return first_time(Layer::VT_WORDS, "words in quotes") && read_quoted(line_, "words", layer_.words);
}

bool LayerReader::keyword(bool& taken) {
  const std::string_view rest = line_.scan.rest();
  const char first = rest[0];
  taken = true;
  // One look at the first letter spares the comparisons: codes are the common case.
  switch (first) {
    case 'n':
    case 'N':
      if (take_words(line_, "name")) return name();
      break;
    case 'f':
    case 'F':
      if (take_words(line_, "formed")) {
        firnbook::TimeSpan span;
        if (!first_time(Layer::VT_FORMED, "formed") || !read_span(line_, "when the layer formed", span))
          return false;
        layer_.formed = std::make_unique<firnbook::TimeSpan>(span);
        return true;
      }
      if (take_words(line_, "form")) return coded(layer_.grain_form, Layer::VT_GRAIN_FORM, "a grain form");
      break;
    case 'c':
    case 'C':
      if (take_words(line_, "concern")) {
        if (at_code(line_, code_table<firnbook::PartOfLayer>()) || line_.scan.next() == '?') {
          return coded(layer_.concern, Layer::VT_CONCERN, "all, top or bottom");
        }
        layer_.concern = firnbook::PartOfLayer::all;
        return first_time(Layer::VT_CONCERN, "concern");
      }
      if (take_words(line_, "class")) return class_value();
      break;
    case 'm':
    case 'M':
      if (take_words(line_, "maybe")) return candidates();
      break;
    case 't':
    case 'T':
      if (take_words(line_, "top"))
        return coded(layer_.hardness_top, Layer::VT_HARDNESS_TOP, "a hand hardness");
      break;
    case 'b':
    case 'B':
      if (take_words(line_, "bottom")) {
        return coded(layer_.hardness_bottom, Layer::VT_HARDNESS_BOTTOM, "a hand hardness");
      }
      break;
    case 'h':
    case 'H':
      if (take_words(line_, "hardness")) return coded(layer_.hardness, Layer::VT_HARDNESS, "a hand hardness");
      break;
    case 's':
    case 'S':
      if (take_words(line_, "size")) return size_value();
      if (take_words(line_, "second")) {
        return coded(layer_.grain_form_second, Layer::VT_GRAIN_FORM_SECOND, "a second grain form");
      }
      break;
    case 'w':
    case 'W':
      if (take_words(line_, "wetness")) return coded(layer_.wetness, Layer::VT_WETNESS, "a wetness");
      break;
    case 'u':
    case 'U':
      if (take_words(line_, "unreliable")) return marks();
      break;
    default:
      break;
  }
  taken = false;
  return true;
}

bool LayerReader::nothing_here() {
  if (column_ == none)
    return line_.expected("something about the layer", "~ and U stand in the place of a value");
  const int vtable_offset = kFields[column_];
  Standing standing;
  take_missing(line_, standing);
  if (!first_time(vtable_offset, "a value and a mark for it")) return false;
  mark(vtable_offset, standing);
  ++column_;
  return true;
}

bool LayerReader::next_value() {
  const std::string_view rest = line_.scan.rest();
  const char first = rest[0];
  if (line_.scan.at_quote()) {
    if (!words()) return false;
    Standing standing;
    take_doubt(line_, standing);
    mark(Layer::VT_WORDS, standing);
    return true;
  }
  if (first == '(') return second_form();
  if (at_code(line_, code_table<HandHardness>())) return hardness_value();
  if (at_code(line_, code_table<GrainForm>())) {
    column_ = size;
    return coded(layer_.grain_form, Layer::VT_GRAIN_FORM, "a grain form");
  }
  if (first >= '0' && first <= '9') return size_value();
  Standing ignored;
  const std::size_t start = line_.scan.position();
  if (take_missing(line_, ignored)) {
    line_.scan.seek(start);
    return nothing_here();
  }
  bool taken = false;
  const bool read = keyword(taken);
  if (taken) return read;
  if (at_code(line_, code_table<firnbook::Wetness>())) {
    column_ = none;
    return coded(layer_.wetness, Layer::VT_WETNESS, "a wetness");
  }
  // "fine-medium" is not one code.
  for (const Code& code : code_table<firnbook::GrainSizeClass>()) {
    if (same_code(rest.substr(0, code.code.size()), code.code)) return class_value();
  }
  return line_.expected("a hardness, a grain form, a size, a wetness or words in quotes",
                        "a layer is written as in 31-68 1F- RGwp 0.3 M \"words\" name 270102 buried");
}

bool LayerReader::read() {
  while (!line_.scan.at_end()) {
    if (!next_value()) return false;
  }
  if (layer_.grain_form || layer_.words.empty() || chose_candidates_) return true;
  const Word* word = find_word_in(layer_.words, WordOf::grain_form);
  if (word == nullptr) return true;
  for (std::size_t i = 0; i < word->count; ++i) {
    layer_.candidates.push_back(static_cast<GrainForm>(word->candidates[i]));
  }
  return true;
}

}  // namespace

bool read_layer(Line& line, const Frame& frame, LayerT& layer) {
  return read_span_of_depth(line, frame, layer) && LayerReader(line, layer).read();
}

namespace {

class LayerWriter {
 public:
  LayerWriter(std::string& out, const LayerT& layer) : out_(out), layer_(layer) {}

  void write();

 private:
  void hardness();
  void sizes();
  void classes();
  void candidates();
  void name();
  void marks();

  bool marked(int vtable_offset) const { return (layer_.unreliable & bit(vtable_offset)) != 0; }
  void key(std::string_view word) {
    out_ += ' ';
    out_ += word;
  }
  template <class E>
  static bool known(const flatbuffers::Optional<E>& value) {
    return value && !code_of(*value).empty();
  }
  // `word`: what tells the value where its looks cannot.
  template <class E>
  void coded(const flatbuffers::Optional<E>& value, int vtable_offset, std::string_view word,
             bool always = false) {
    if (!value && !marked(vtable_offset)) return;
    if (always || !known(value)) key(word);
    out_ += ' ';
    value_of(value, vtable_offset);
  }
  template <class E>
  void value_of(const flatbuffers::Optional<E>& value, int vtable_offset) {
    if (value) append_code(out_, code_table<E>(), static_cast<std::uint8_t>(*value));
    if (!value) out_ += '~';
    if (marked(vtable_offset)) out_ += '?';
  }
  void size_of(const flatbuffers::Optional<std::int32_t>& value, int vtable_offset) {
    if (!value) {
      out_ += '~';
    } else {
      append_mm(out_, *value);
      // 6.0 is how a size is written.
      if (*value % 100 == 0) out_ += ".0";
    }
    if (marked(vtable_offset)) out_ += '?';
  }

  std::string& out_;
  const LayerT& layer_;
};

void LayerWriter::hardness() {
  coded(layer_.hardness, Layer::VT_HARDNESS, "hardness");
  const bool changes = known(layer_.hardness_top) && known(layer_.hardness_bottom);
  if (changes) {
    out_ += ' ';
    value_of(layer_.hardness_top, Layer::VT_HARDNESS_TOP);
    out_ += '/';
    value_of(layer_.hardness_bottom, Layer::VT_HARDNESS_BOTTOM);
    return;
  }
  coded(layer_.hardness_top, Layer::VT_HARDNESS_TOP, "top", true);
  coded(layer_.hardness_bottom, Layer::VT_HARDNESS_BOTTOM, "bottom", true);
}

void LayerWriter::sizes() {
  const bool has_max = layer_.grain_size_max_10um || marked(Layer::VT_GRAIN_SIZE_MAX_10UM);
  if (!layer_.grain_size_10um && !marked(Layer::VT_GRAIN_SIZE_10UM) && !has_max) return;
  if (!layer_.grain_size_10um || *layer_.grain_size_10um < 0) key("size");
  out_ += ' ';
  size_of(layer_.grain_size_10um, Layer::VT_GRAIN_SIZE_10UM);
  if (!has_max) return;
  out_ += '-';
  size_of(layer_.grain_size_max_10um, Layer::VT_GRAIN_SIZE_MAX_10UM);
}

void LayerWriter::classes() {
  const bool has_max = layer_.grain_size_max_class || marked(Layer::VT_GRAIN_SIZE_MAX_CLASS);
  if (!layer_.grain_size_class && !marked(Layer::VT_GRAIN_SIZE_CLASS) && !has_max) return;
  key("class ");
  value_of(layer_.grain_size_class, Layer::VT_GRAIN_SIZE_CLASS);
  if (!has_max) return;
  out_ += " to ";
  value_of(layer_.grain_size_max_class, Layer::VT_GRAIN_SIZE_MAX_CLASS);
}

void LayerWriter::candidates() {
  std::size_t count = 0;
  const std::uint8_t* found = nullptr;
  if (!layer_.grain_form && !layer_.words.empty()) {
    if (const Word* word = find_word_in(layer_.words, WordOf::grain_form)) {
      count = word->count;
      found = word->candidates;
    }
  }
  bool as_read = layer_.candidates.size() == count;
  for (std::size_t i = 0; as_read && i < count; ++i) {
    as_read = static_cast<std::uint8_t>(layer_.candidates[i]) == found[i];
  }
  if (as_read) return;
  key(layer_.candidates.empty() ? "maybe none" : "maybe");
  for (const GrainForm form : layer_.candidates) {
    out_ += ' ';
    append_code(out_, code_table<GrainForm>(), static_cast<std::uint8_t>(form));
  }
}

void LayerWriter::name() {
  const firnbook::LayerNameT* named = layer_.name.get();
  if (named == nullptr) return;
  const std::size_t before = out_.size();
  key("name");
  const std::size_t empty = out_.size();
  if (named->date != nullptr) {
    out_ += ' ';
    append_name_date(out_, *named->date);
  }
  if (named->kind) {
    out_ += ' ';
    append_code(out_, code_table<firnbook::LayerNameKind>(), static_cast<std::uint8_t>(*named->kind));
  }
  if (!named->words.empty()) {
    out_ += ' ';
    append_quoted(out_, named->words);
  }
  if (out_.size() == empty) out_.resize(before);
}

void LayerWriter::marks() {
  bool any = false;
  for (const MarkName& mark_name : kMarkNames) {
    if (!marked(mark_name.vtable_offset)) continue;
    // What can carry its own mark has been printed with it.
    if (mark_name.vtable_offset == Layer::VT_CONCERN && layer_.concern) continue;
    if (mark_name.vtable_offset == Layer::VT_WORDS && !layer_.words.empty()) continue;
    key(any ? "" : "unreliable ");
    out_ += mark_name.word;
    any = true;
  }
  const std::uint64_t unknown = layer_.unreliable & kUnknownFields;
  if (unknown == 0) return;
  out_ += ' ';
  append_marks(out_, unknown);
}

void LayerWriter::write() {
  hardness();
  coded(layer_.grain_form, Layer::VT_GRAIN_FORM, "form");
  sizes();
  if (known(layer_.grain_form_second)) {
    out_ += " (";
    value_of(layer_.grain_form_second, Layer::VT_GRAIN_FORM_SECOND);
    out_ += ')';
  } else {
    coded(layer_.grain_form_second, Layer::VT_GRAIN_FORM_SECOND, "second");
  }
  classes();
  coded(layer_.wetness, Layer::VT_WETNESS, "wetness");
  if (!layer_.words.empty()) {
    out_ += ' ';
    append_quoted(out_, layer_.words);
    if (marked(Layer::VT_WORDS)) out_ += '?';
  }
  candidates();
  name();
  if (layer_.formed != nullptr) {
    key("formed ");
    append_span(out_, *layer_.formed);
  }
  if (layer_.concern) coded(layer_.concern, Layer::VT_CONCERN, "concern", true);
  marks();
}

}  // namespace

void append_layer(std::string& out, const Frame& frame, const LayerT& layer) {
  append_span_of_depth(out, frame, layer);
  LayerWriter(out, layer).write();
}

}  // namespace firn::notation
