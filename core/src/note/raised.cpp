#include "note/raised.h"

#include <algorithm>

#include "note/page.h"
#include "note/sentences.h"
#include "vocabulary/codes.h"

namespace firn::note {
namespace {

using firnbook::Finding;
using firnbook::FindingKey;
using firnbook::Verdict;

// What a short text has room for; a hostile report may list millions.
constexpr std::size_t kMostSigns = 3;
constexpr std::size_t kMostConcerns = 3;
constexpr std::size_t kMostTests = 3;
constexpr std::size_t kLongestTitle = 160;

template <class Vector>
auto element(const Vector* vector, std::int32_t index) {
  using Pointer = decltype(vector->Get(0));
  if (index < 0 || static_cast<std::uint32_t>(index) >= pit::size_of(vector)) return Pointer{};
  return vector->Get(static_cast<flatbuffers::uoffset_t>(index));
}

void append_item(std::string& out, std::string_view item) {
  if (!out.empty()) out += ", ";
  out.append(item);
}

bool is_blank(char byte) {
  return byte == ' ' || byte == '\n' || byte == '\t' || byte == '\r';
}

// Letters of other scripts count; marks of ASCII do not.
bool is_word_byte(char byte) {
  const auto value = static_cast<unsigned char>(byte);
  return value >= 0x80 || (value >= '0' && value <= '9') || (value >= 'A' && value <= 'Z') ||
         (value >= 'a' && value <= 'z');
}

}  // namespace

Raised::Raised(const pit::View& pit, const firnbook::Report& report, Language language)
    : pit_(pit.raw()), report_(report), language_(language) {
  append_printable(title_, first_characters(pit::text(pit_.title()), kLongestTitle));
  if (title_.empty()) title_ = phrase(Phrase::title_unknown, language_);
  find_signs();
  find_concerns();
}

void Raised::find_signs() {
  std::size_t listed = 0;
  for (std::uint32_t i = 0; i < pit::size_of(report_.findings()); ++i) {
    const Finding& one = *report_.findings()->Get(i);
    if (one.verdict() == Verdict::raises && one.method() != firnbook::Method::field_signs) other_ = true;
    if (one.method() != firnbook::Method::field_signs) continue;
    const firnbook::Sign* sign = one.subject().thing() == firnbook::Thing::sign
                                     ? element(pit_.signs(), one.subject().index())
                                     : nullptr;
    std::string name;
    if (sign != nullptr && sign->kind()) name = sign_name(language_, *sign->kind());
    if (sign != nullptr && name.empty()) name = phrase(Phrase::unknown_sign, language_);
    if (one.verdict() == Verdict::raises && signs_.size() < kMostSigns) {
      if (!name.empty()) append_phrase(name, Phrase::colon, language_);
      append_template(name, finding_words(one.key(), language_), {}, language_);
      if (std::find(signs_.begin(), signs_.end(), name) == signs_.end()) signs_.push_back(std::move(name));
    } else if (one.key() == FindingKey::sign_not_looked_for && !name.empty() && ++listed <= kMostSigns) {
      append_item(not_looked_for_, name);
    }
  }
}

void Raised::find_concerns() {
  for (std::uint32_t i = 0; i < pit::size_of(report_.concerns()) && concerns_.size() < kMostConcerns; ++i) {
    const firnbook::Concern* one = report_.concerns()->Get(i);
    if (one->rank() && *one->rank() == firnbook::ConcernRank::little) continue;
    concerns_.push_back(one);
  }
}

bool Raised::has(firnbook::CautionKey key) const {
  for (std::uint32_t i = 0; i < pit::size_of(report_.cautions()); ++i) {
    if (report_.cautions()->Get(i)->key() == key) return true;
  }
  return false;
}

std::string Raised::concern(const firnbook::Concern& concern, bool named) const {
  std::string out;
  append_span(out, concern, language_);
  if (out.empty()) append_phrase(out, Phrase::untold_depth, language_);
  out.erase(0, out.find_first_not_of(' '));
  const bool boundary = concern.kind() && *concern.kind() == firnbook::ConcernKind::boundary;
  const std::int32_t which = (boundary ? concern.weaker_layer() : concern.layer()).value_or(-1);
  const firnbook::Layer* layer = element(pit_.layers(), which);
  if (layer != nullptr && layer->grain_form() && !code_of(*layer->grain_form()).empty()) {
    out.append(named ? ", " : " (");
    out.append(code_of(*layer->grain_form()));
    out.append(named ? " " : ")");
    if (named) out.append(label_in(language_, *layer->grain_form()));
  }
  const std::string_view rank = concern.rank() ? rank_words(*concern.rank(), language_) : std::string_view{};
  if (rank.empty()) return out;
  append_phrase(out, Phrase::colon, language_);
  out.append(rank);
  return out;
}

std::vector<std::string> Raised::not_loaded(std::size_t most) const {
  std::vector<std::string> out;
  const std::uint32_t count = pit::size_of(report_.not_loaded());
  for (std::uint32_t i = 0; i < count && out.size() < most;) {
    const std::int32_t depth = report_.not_loaded()->Get(i)->depth_10um();
    std::string tests;
    std::vector<firnbook::TestKind> listed;
    for (; i < count && report_.not_loaded()->Get(i)->depth_10um() == depth; ++i) {
      const firnbook::TestKind kind = report_.not_loaded()->Get(i)->kind();
      const bool again = std::find(listed.begin(), listed.end(), kind) != listed.end();
      if (again || listed.size() == kMostTests || code_of(kind).empty()) continue;
      listed.push_back(kind);
      append_item(tests, code_of(kind));
    }
    std::string text;
    Numbers numbers = {depth};
    numbers.x = tests.empty() ? phrase(Phrase::unknown_test, language_) : tests;
    append_phrase(text, Phrase::untested_by, language_, numbers);
    out.push_back(std::move(text));
  }
  return out;
}

std::string Raised::date(bool with_hour) const {
  std::string out;
  if (pit_.time() == nullptr) return out;
  const firnbook::Moment& full = pit_.time()->begin();
  const bool cut = !with_hour && full.precision() > firnbook::TimePrecision::day;
  const firnbook::Moment moment(full.local_s(), full.offset_min(),
                                cut ? firnbook::TimePrecision::day : full.precision(), full.offset_known());
  append_moment(out, &moment, language_);
  if (with_hour && out.find(" (") != std::string::npos) out.resize(out.find(" ("));
  return out;
}

std::size_t words_in(std::string_view text) {
  std::size_t count = 0;
  bool counted = false;
  for (const char byte : text) {
    if (is_blank(byte)) counted = false;
    if (!is_blank(byte) && !counted && is_word_byte(byte)) {
      counted = true;
      ++count;
    }
  }
  return count;
}

std::string first_words(std::string_view text, std::size_t most) {
  std::string out;
  std::size_t taken = 0;
  while (!text.empty()) {
    while (!text.empty() && is_blank(text.front())) text.remove_prefix(1);
    std::size_t end = 0;
    while (end < text.size() && !is_blank(text[end])) ++end;
    const std::string_view word = text.substr(0, end);
    taken += words_in(word);
    if (taken > most) return out + "...";
    if (!out.empty() && !word.empty()) out += ' ';
    out.append(word);
    text.remove_prefix(end);
  }
  return out;
}

}  // namespace firn::note
