#include "note/sentences.h"

#include "notation/test_line.h"
#include "note/words.h"
#include "support/text.h"
#include "vocabulary/codes.h"

namespace firn::note {
namespace {

using firnbook::Thing;

void append_two(std::string& out, std::int64_t number) {
  if (number < 10) out += '0';
  append_integer(out, number);
}

void append_offset(std::string& out, std::int32_t minutes) {
  out += " (UTC";
  out += minutes < 0 ? '-' : '+';
  const std::int32_t magnitude = minutes < 0 ? -minutes : minutes;
  append_two(out, magnitude / 60);
  out += ':';
  append_two(out, magnitude % 60);
  out += ')';
}

void append_part(std::string& out, bool& first) {
  if (!first) out += ", ";
  first = false;
}

template <class Vector>
auto element(const Vector* vector, std::int32_t index) {
  using Pointer = decltype(vector->Get(0));
  if (index < 0 || static_cast<std::uint32_t>(index) >= pit::size_of(vector)) return Pointer{};
  return vector->Get(static_cast<flatbuffers::uoffset_t>(index));
}

// What is of one pit, one finding and one language.
struct Teller {
  std::string& out;
  const firnbook::Pit& pit;
  const firnbook::Finding& finding;
  Language language;

  void say(Phrase key, const Numbers& numbers = {}) const { append_phrase(out, key, language, numbers); }
  void say_words(const flatbuffers::String* words) const {
    if (pit::size_of(words) == 0) return;
    out += ", ";
    append_quoted(out, pit::text(words));
  }

  // False when the finding is about no test that is there.
  bool test() const;
  void sign() const;
  void sign_details() const;
  void slide_details() const;
};

bool Teller::test() const {
  const firnbook::Place& place = finding.subject();
  const firnbook::StabilityTest* test = element(pit.tests(), place.index());
  if (test == nullptr) return false;
  const firnbook::Fracture* fracture =
      place.thing() == Thing::fracture ? element(test->fractures(), place.sub()) : nullptr;
  notation::append_score(out, *test, fracture);
  if (finding.depth_10um() >= 0) {
    say(Phrase::at_cm, {finding.depth_10um()});
  } else if (fracture != nullptr) {
    say(Phrase::untold_depth);
  }
  return true;
}

void Teller::sign() const {
  const firnbook::Sign* sign = element(pit.signs(), finding.subject().index());
  if (sign == nullptr || !sign->kind()) return;
  const std::string_view label = label_in(language, *sign->kind());
  out.append(label.empty() ? phrase(Phrase::unknown_sign, language) : label);
  say(Phrase::colon);
}

void Teller::sign_details() const {
  const firnbook::Sign* sign = element(pit.signs(), finding.subject().index());
  if (sign == nullptr) return;
  if (sign->length_10um()) say(Phrase::cracks_of, {0, *sign->length_10um()});
  say_words(sign->words());
}

void Teller::slide_details() const {
  const firnbook::Slide* slide = element(pit.slides(), finding.subject().index());
  if (slide == nullptr) return;
  if (slide->kind()) {
    out += ", ";
    out.append(label_in(language, *slide->kind()));
  }
  if (slide->size_tenths()) say(Phrase::size_of_slide, {0, *slide->size_tenths()});
  if (slide->trigger()) {
    say(Phrase::trigger);
    out.append(label_in(language, *slide->trigger()));
  }
  if (slide->aspect_point()) {
    out += ", ";
    out.append(code_of(*slide->aspect_point()));
  }
  if (slide->elevation_10um()) append_template(out, ", {a:m} m", {0, *slide->elevation_10um()}, language);
  say_words(slide->words());
}

// A small letter made large, also where it is a letter of two bytes from U+00E0 to U+00FE.
void append_capital(std::string& out, std::string_view words) {
  const auto first = static_cast<unsigned char>(words[0]);
  const bool letter = first >= 'a' && first <= 'z';
  const auto second = words.size() > 1 ? static_cast<unsigned char>(words[1]) : 0;
  const bool accented = first == 0xC3 && second >= 0xA0 && second <= 0xBE && second != 0xB7;
  out += letter ? static_cast<char>(first - 'a' + 'A') : words[0];
  if (accented) out += static_cast<char>(second - 0x20);
  out.append(words.substr(accented ? 2 : 1));
}

void append_form(std::string& out, const firnbook::Layer& layer, Language language) {
  const std::string_view code = code_of(*layer.grain_form());
  out.append(code.empty() ? phrase(Phrase::unknown_form, language) : code);
  if (layer.grain_form_second()) {
    out += '(';
    out.append(code_of(*layer.grain_form_second()));
    out += ')';
  }
  const std::string_view label = label_in(language, *layer.grain_form());
  if (label.empty()) return;
  out += ' ';
  out.append(label);
}

}  // namespace

void append_moment(std::string& out, const firnbook::Moment* moment, Language language) {
  if (moment == nullptr || moment->precision() == firnbook::TimePrecision::none) return;
  // A hostile year would print as twenty digits.
  constexpr std::int64_t kYear9999 = 253402300799;
  if (moment->local_s() < -kYear9999 || moment->local_s() > kYear9999) {
    return append_phrase(out, Phrase::date_out_of_range, language);
  }
  const CalendarTime time = calendar_time(moment->local_s());
  append_integer(out, time.year);
  if (moment->precision() == firnbook::TimePrecision::year) return;
  out += '-';
  append_two(out, time.month);
  if (moment->precision() == firnbook::TimePrecision::month) return;
  out += '-';
  append_two(out, time.day);
  if (moment->precision() == firnbook::TimePrecision::day) return;
  out += ' ';
  append_two(out, time.hour);
  out += ':';
  append_two(out, time.minute);
  if (moment->offset_known() != 0) append_offset(out, moment->offset_min());
}

void append_site(std::string& out, const firnbook::Site* site, Language language) {
  if (site == nullptr) return;
  bool first = true;
  if (site->elevation_10um()) {
    append_part(out, first);
    append_template(out, "{a:m} m", {0, *site->elevation_10um()}, language);
  }
  if (site->aspect_point()) {
    append_part(out, first);
    out.append(code_of(*site->aspect_point()));
  } else if (site->aspect_deg()) {
    append_part(out, first);
    append_phrase(out, Phrase::facing, language, {0, *site->aspect_deg()});
  }
  if (site->slope_deg()) {
    append_part(out, first);
    append_phrase(out, Phrase::steep, language, {0, *site->slope_deg()});
  }
}

void append_layer(std::string& out, const firnbook::Pit& pit, std::int32_t stored, Language language) {
  const firnbook::Layer* layer = element(pit.layers(), stored);
  if (layer == nullptr) return;
  bool first = true;
  if (layer->grain_form()) {
    append_part(out, first);
    append_form(out, *layer, language);
  }
  if (layer->grain_size_10um()) {
    append_part(out, first);
    const Numbers sizes = {0, *layer->grain_size_10um(), layer->grain_size_max_10um().value_or(0)};
    append_template(out, layer->grain_size_max_10um() ? phrase(Phrase::size_to, language) : "{a:mm} mm",
                    sizes, language);
  }
  if (layer->hardness()) {
    append_part(out, first);
    out.append(code_of(*layer->hardness()));
  }
  if (layer->name() != nullptr && layer->name()->date() != nullptr) {
    append_part(out, first);
    append_phrase(out, Phrase::named, language);
    append_moment(out, layer->name()->date(), language);
    if (layer->name()->kind()) {
      out += " (";
      out.append(label_in(language, *layer->name()->kind()));
      out += ')';
    }
  }
  if (pit::size_of(layer->words()) > 0) {
    append_part(out, first);
    append_quoted(out, pit::text(layer->words()));
  }
}

void append_span(std::string& out, const firnbook::Concern& concern, Language language) {
  if (!concern.top_10um() || *concern.top_10um() < 0) return;
  const bool thick = concern.bottom_10um() && *concern.bottom_10um() > *concern.top_10um();
  if (thick)
    return append_phrase(out, Phrase::from_to_cm, language, {0, *concern.top_10um(), *concern.bottom_10um()});
  append_phrase(out, Phrase::at_cm, language, {*concern.top_10um()});
}

void append_concern(std::string& out, const firnbook::Pit& pit, const firnbook::Concern& concern,
                    Language language) {
  const auto kind = concern.kind().value_or(firnbook::ConcernKind::depth_only);
  const bool boundary = kind == firnbook::ConcernKind::boundary;
  if (boundary || kind == firnbook::ConcernKind::layer) {
    append_phrase(out, boundary ? Phrase::boundary : Phrase::layer, language);
    append_span(out, concern, language);
    append_phrase(out, Phrase::colon, language);
    append_layer(out, pit, concern.layer().value_or(-1), language);
  } else if (concern.top_10um() && *concern.top_10um() >= 0) {
    append_phrase(out, Phrase::no_layer, language);
    append_span(out, concern, language);
  } else {
    append_phrase(out, Phrase::at_untold_depth, language);
  }
  if (boundary) {
    append_phrase(out, Phrase::boundary_on, language);
    append_layer(out, pit, concern.layer_below().value_or(-1), language);
  }
  out += '.';
  if (!concern.rank() || rank_words(*concern.rank(), language).empty()) return;
  out += ' ';
  append_sentence(out, rank_words(*concern.rank(), language));
}

void append_finding(std::string& out, const firnbook::Pit& pit, const firnbook::Finding& finding,
                    Language language) {
  const Teller teller = {out, pit, finding, language};
  const Thing thing = finding.subject().thing();
  const bool of_test = (thing == Thing::fracture || thing == Thing::test) && teller.test();
  if (of_test) teller.say(Phrase::colon);
  if (thing == Thing::sign) teller.sign();
  const std::string_view words = finding_words(finding.key(), language);
  const Numbers numbers = {finding.depth_10um(), finding.a(), finding.b(), finding.c()};
  append_template(out, words.empty() ? phrase(Phrase::unknown_finding, language) : words, numbers, language);
  if (thing == Thing::layer && finding.key() == firnbook::FindingKey::marked_by_observer) {
    teller.say(Phrase::colon);
    append_layer(out, pit, finding.subject().index(), language);
  }
  if (thing == Thing::sign) teller.sign_details();
  if (thing == Thing::slide) teller.slide_details();
}

void append_test(std::string& out, const firnbook::Pit& pit, const firnbook::Finding& finding,
                 Language language) {
  Teller{out, pit, finding, language}.test();
}

void append_quoted(std::string& out, std::string_view text, std::size_t most) {
  out += '"';
  std::size_t length = 0;
  while (length < text.size() && length < most) {
    const std::size_t character = utf8_length(text.substr(length));
    length += character == 0 ? 1 : character;
  }
  out.append(text.substr(0, length));
  out += length < text.size() ? "...\"" : "\"";
}

void append_sentence(std::string& out, std::string_view words) {
  if (words.empty()) return;
  append_capital(out, words);
  out += '.';
}

}  // namespace firn::note
