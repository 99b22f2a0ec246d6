#include "note/sentences.h"

#include "notation/test_line.h"
#include "note/words.h"
#include "support/text.h"
#include "vocabulary/codes.h"

namespace firn::note {
namespace {

using firnbook::Thing;

// Long enough for what people write at a pit. The record at the end of the note has every word; here a text
// shared by a million hostile tables must not become a million copies.
constexpr std::size_t kQuoted = 240;

void append_quoted(std::string& out, const flatbuffers::String* words) {
  std::string_view text = pit::text(words);
  out += '"';
  std::size_t length = 0;
  while (length < text.size() && length < kQuoted) {
    const std::size_t character = utf8_length(text.substr(length));
    length += character == 0 ? 1 : character;
  }
  out.append(text.substr(0, length));
  out += length < text.size() ? "...\"" : "\"";
}

// A label's first part: "surface hoar" of "surface hoar: frost feathers, often buried".
std::string_view short_label(std::string_view label) {
  return label.substr(0, label.find(':'));
}

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

void append_depth_cm(std::string& out, std::int32_t depth) {
  append_cm(out, depth);
  out += " cm";
}

void append_test_finding(std::string& out, const firnbook::Pit& pit, const firnbook::Finding& finding) {
  const firnbook::Place& place = finding.subject();
  const firnbook::StabilityTest* test = element(pit.tests(), place.index());
  if (test == nullptr) return;
  const firnbook::Fracture* fracture =
      place.thing() == Thing::fracture ? element(test->fractures(), place.sub()) : nullptr;
  notation::append_score(out, *test, fracture);
  if (finding.depth_10um() >= 0) {
    out += " at ";
    append_depth_cm(out, finding.depth_10um());
  } else if (fracture != nullptr) {
    out += " at a depth that cannot be told";
  }
  out += ": ";
}

void append_sign_finding(std::string& out, const firnbook::Pit& pit, const firnbook::Finding& finding) {
  const firnbook::Sign* sign = element(pit.signs(), finding.subject().index());
  if (sign == nullptr || !sign->kind()) return;
  const std::string_view label = short_label(label_of(*sign->kind()));
  out.append(label.empty() ? std::string_view{"a sign this version does not know"} : label);
  out += ": ";
}

void append_sign_details(std::string& out, const firnbook::Pit& pit, const firnbook::Finding& finding) {
  const firnbook::Sign* sign = element(pit.signs(), finding.subject().index());
  if (sign == nullptr) return;
  if (sign->length_10um()) {
    out += ", cracks of ";
    append_fixed(out, *sign->length_10um(), 5);
    out += " m";
  }
  if (pit::size_of(sign->words()) > 0) {
    out += ", ";
    append_quoted(out, sign->words());
  }
}

void append_slide_details(std::string& out, const firnbook::Pit& pit, const firnbook::Finding& finding) {
  const firnbook::Slide* slide = element(pit.slides(), finding.subject().index());
  if (slide == nullptr) return;
  if (slide->kind()) {
    out += ", ";
    out.append(short_label(label_of(*slide->kind())));
  }
  if (slide->size_tenths()) {
    out += ", size ";
    append_fixed(out, *slide->size_tenths(), 1);
  }
  if (slide->trigger()) {
    out += ", trigger: ";
    out.append(short_label(label_of(*slide->trigger())));
  }
  if (slide->aspect_point()) {
    out += ", ";
    out.append(code_of(*slide->aspect_point()));
  }
  if (slide->elevation_10um()) {
    out += ", ";
    append_fixed(out, *slide->elevation_10um(), 5);
    out += " m";
  }
  if (pit::size_of(slide->words()) > 0) {
    out += ", ";
    append_quoted(out, slide->words());
  }
}

}  // namespace

void append_moment(std::string& out, const firnbook::Moment* moment) {
  if (moment == nullptr || moment->precision() == firnbook::TimePrecision::none) return;
  // A hostile year would print as twenty digits.
  constexpr std::int64_t kYear9999 = 253402300799;
  if (moment->local_s() < -kYear9999 || moment->local_s() > kYear9999) {
    out += "a date out of range";
    return;
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

void append_site(std::string& out, const firnbook::Site* site) {
  if (site == nullptr) return;
  bool first = true;
  if (site->elevation_10um()) {
    append_part(out, first);
    append_fixed(out, *site->elevation_10um(), 5);
    out += " m";
  }
  if (site->aspect_point()) {
    append_part(out, first);
    out.append(code_of(*site->aspect_point()));
  } else if (site->aspect_deg()) {
    append_part(out, first);
    out += "facing ";
    append_integer(out, *site->aspect_deg());
    out += " deg";
  }
  if (site->slope_deg()) {
    append_part(out, first);
    append_integer(out, *site->slope_deg());
    out += " deg steep";
  }
}

void append_layer(std::string& out, const firnbook::Pit& pit, std::int32_t stored) {
  const firnbook::Layer* layer = element(pit.layers(), stored);
  if (layer == nullptr) return;
  bool first = true;
  if (layer->grain_form()) {
    append_part(out, first);
    const std::string_view code = code_of(*layer->grain_form());
    out.append(code.empty() ? std::string_view{"unknown grain form"} : code);
    if (layer->grain_form_second()) {
      out += '(';
      out.append(code_of(*layer->grain_form_second()));
      out += ')';
    }
    const std::string_view label = short_label(label_of(*layer->grain_form()));
    if (!label.empty()) {
      out += ' ';
      out.append(label);
    }
  }
  if (layer->grain_size_10um()) {
    append_part(out, first);
    append_mm(out, *layer->grain_size_10um());
    if (layer->grain_size_max_10um()) {
      out += " to ";
      append_mm(out, *layer->grain_size_max_10um());
    }
    out += " mm";
  }
  if (layer->hardness()) {
    append_part(out, first);
    out.append(code_of(*layer->hardness()));
  }
  if (layer->name() != nullptr && layer->name()->date() != nullptr) {
    append_part(out, first);
    out += "named ";
    append_moment(out, layer->name()->date());
    if (layer->name()->kind()) {
      out += " (";
      out.append(code_of(*layer->name()->kind()));
      out += ')';
    }
  }
  if (pit::size_of(layer->words()) > 0) {
    append_part(out, first);
    append_quoted(out, layer->words());
  }
}

void append_finding(std::string& out, const firnbook::Pit& pit, const firnbook::Finding& finding) {
  const Thing thing = finding.subject().thing();
  if (thing == Thing::fracture || thing == Thing::test) append_test_finding(out, pit, finding);
  if (thing == Thing::sign) append_sign_finding(out, pit, finding);
  const std::string_view words = finding_words(finding.key());
  const Numbers numbers = {finding.depth_10um(), finding.a(), finding.b(), finding.c()};
  append_template(out, words.empty() ? std::string_view{"a finding this version has no words for"} : words,
                  numbers);
  if (thing == Thing::layer && finding.key() == firnbook::FindingKey::marked_by_observer) {
    out += ": ";
    append_layer(out, pit, finding.subject().index());
  }
  if (thing == Thing::sign) append_sign_details(out, pit, finding);
  if (thing == Thing::slide) append_slide_details(out, pit, finding);
}

}  // namespace firn::note
