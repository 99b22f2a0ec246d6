#include "note/raised.h"

#include "note/page.h"
#include "note/sentences.h"
#include "vocabulary/codes.h"

namespace firn::note {
namespace {

using firnbook::Finding;
using firnbook::Verdict;

constexpr std::size_t kMostTests = 3;
constexpr std::size_t kLongestTitle = 160;

template <class Vector>
auto element(const Vector* vector, std::int32_t index) {
  using Pointer = decltype(vector->Get(0));
  if (index < 0 || static_cast<std::uint32_t>(index) >= pit::size_of(vector)) return Pointer{};
  return vector->Get(static_cast<flatbuffers::uoffset_t>(index));
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

// The sign a finding is about; null for a slide and for what is not there.
const firnbook::Sign* sign_of(const firnbook::Pit& pit, const Finding& finding) {
  if (finding.subject().thing() != firnbook::Thing::sign) return nullptr;
  return element(pit.signs(), finding.subject().index());
}

void append_name(std::string& out, const firnbook::Sign& sign, Language language) {
  const std::string_view name = sign.kind() ? sign_name(language, *sign.kind()) : std::string_view{};
  out.append(name.empty() ? phrase(Phrase::unknown_sign, language) : name);
}

// The layer that a concern is about, or the weaker of the two at a boundary.
const firnbook::Layer* layer_of(const firnbook::Pit& pit, const firnbook::Concern& concern) {
  const bool boundary = concern.kind() && *concern.kind() == firnbook::ConcernKind::boundary;
  return element(pit.layers(), (boundary ? concern.weaker_layer() : concern.layer()).value_or(-1));
}

}  // namespace

Raised::Raised(const pit::View& pit, const firnbook::Report& report, Language language)
    : pit_(pit.raw()), report_(report), language_(language) {
  append_printable(title_, first_characters(pit::text(pit_.title()), kLongestTitle));
  if (title_.empty()) title_ = phrase(Phrase::title_unknown, language_);
  for (std::uint32_t i = 0; i < pit::size_of(report_.findings()); ++i) {
    const Finding& one = *report_.findings()->Get(i);
    if (one.method() == firnbook::Method::field_signs) {
      take_sign(one);
    } else if (one.verdict() == Verdict::raises) {
      other_ = true;
    }
  }
  find_concerns();
}

void Raised::take_sign(const Finding& finding) {
  const firnbook::Sign* sign = sign_of(pit_, finding);
  if (finding.verdict() == Verdict::raises) {
    if (sign_count_ == kMostRaised) return;
    for (std::size_t i = 0; i < sign_count_; ++i) {
      const firnbook::Sign* other = sign_of(pit_, *signs_[i]);
      const bool same =
          sign == nullptr ? other == nullptr : other != nullptr && sign->kind() == other->kind();
      if (same && finding.key() == signs_[i]->key()) return;
    }
    signs_[sign_count_++] = &finding;
  } else if (finding.key() == firnbook::FindingKey::sign_not_looked_for && sign != nullptr) {
    if (not_looked_for_count_++ >= kMostRaised) return;
    if (!not_looked_for_.empty()) not_looked_for_ += ", ";
    append_name(not_looked_for_, *sign, language_);
  }
}

void Raised::find_concerns() {
  for (std::uint32_t i = 0; i < pit::size_of(report_.concerns()) && concern_count_ < kMostRaised; ++i) {
    const firnbook::Concern* one = report_.concerns()->Get(i);
    if (one->rank() && *one->rank() == firnbook::ConcernRank::little) continue;
    concerns_[concern_count_++] = one;
  }
}

// In the words of a sign or a slide whatever the key: others may be of any length.
void Raised::append_sign(std::string& out, std::size_t nth) const {
  using firnbook::FindingKey;
  const firnbook::Sign* sign = sign_of(pit_, *signs_[nth]);
  const bool slide = signs_[nth]->key() == FindingKey::slide_seen;
  if (sign == nullptr && !slide) return append_phrase(out, Phrase::unknown_sign, language_);
  if (sign != nullptr) {
    append_name(out, *sign, language_);
    append_phrase(out, Phrase::colon, language_);
  }
  out.append(finding_words(slide ? FindingKey::slide_seen : FindingKey::sign_seen, language_));
}

void Raised::append_concern(std::string& out, std::size_t nth, bool named) const {
  const firnbook::Concern& concern = *concerns_[nth];
  const std::size_t start = out.size();
  append_span(out, concern, language_);
  if (out.size() == start) append_phrase(out, Phrase::untold_depth, language_);
  // The joint's blank.
  out.erase(start, out.find_first_not_of(' ', start) - start);
  const firnbook::Layer* layer = layer_of(pit_, concern);
  const std::string_view code =
      layer != nullptr && layer->grain_form() ? code_of(*layer->grain_form()) : std::string_view{};
  if (!code.empty()) {
    out.append(named ? ", " : " (");
    out.append(code);
    out += named ? ' ' : ')';
    if (named) out.append(label_in(language_, *layer->grain_form()));
  }
  if (!concern.rank() || rank_words(*concern.rank(), language_).empty()) return;
  append_phrase(out, Phrase::colon, language_);
  out.append(rank_words(*concern.rank(), language_));
}

bool Raised::append_not_loaded(std::string& out, std::size_t nth) const {
  const std::uint32_t count = pit::size_of(report_.not_loaded());
  std::uint32_t i = 0;
  const auto depth_at = [this](std::uint32_t at) { return report_.not_loaded()->Get(at)->depth_10um(); };
  for (; nth > 0 && i < count; --nth) {
    const std::int32_t depth = depth_at(i);
    while (i < count && depth_at(i) == depth) ++i;
  }
  if (i >= count) return false;
  Numbers numbers = {depth_at(i)};
  std::string tests;
  firnbook::TestKind listed[kMostTests] = {};
  std::size_t length = 0;
  for (; i < count && depth_at(i) == numbers.depth && length < kMostTests; ++i) {
    const firnbook::TestKind kind = report_.not_loaded()->Get(i)->kind();
    bool again = code_of(kind).empty();
    for (std::size_t k = 0; k < length; ++k) again = again || listed[k] == kind;
    if (again) continue;
    listed[length++] = kind;
    if (!tests.empty()) tests += ", ";
    tests.append(code_of(kind));
  }
  numbers.x = tests.empty() ? phrase(Phrase::unknown_test, language_) : tests;
  append_phrase(out, Phrase::untested_by, language_, numbers);
  return true;
}

bool Raised::append_step(std::string& out, std::uint32_t nth) const {
  if (nth >= pit::size_of(report_.suggestions())) return false;
  const firnbook::Suggestion& one = *report_.suggestions()->Get(nth);
  append_template(out, suggestion_name(one.step(), language_), {one.depth_10um()}, language_);
  return true;
}

bool Raised::has(firnbook::CautionKey key) const {
  for (std::uint32_t i = 0; i < pit::size_of(report_.cautions()); ++i) {
    if (report_.cautions()->Get(i)->key() == key) return true;
  }
  return false;
}

void Raised::append_date(std::string& out, bool with_hour) const {
  const std::size_t start = out.size();
  if (pit_.time() != nullptr) {
    const firnbook::Moment& full = pit_.time()->begin();
    const bool cut = !with_hour && full.precision() > firnbook::TimePrecision::day;
    // Without the offset from UTC, which the whole note has.
    const firnbook::Moment moment(full.local_s(), 0, cut ? firnbook::TimePrecision::day : full.precision(),
                                  0);
    append_moment(out, &moment, language_);
  }
  if (out.size() == start) append_phrase(out, Phrase::line_date_unknown, language_);
}

std::size_t words_in(std::string_view text) {
  std::size_t count = 0;
  bool counted = false;
  for (const char byte : text) {
    if (is_blank(byte)) {
      counted = false;
    } else if (!counted && is_word_byte(byte)) {
      counted = true;
      ++count;
    }
  }
  return count;
}

void append_first_words(std::string& out, std::string_view text, std::size_t most) {
  std::size_t end = 0;
  for (std::size_t at = 0; at < text.size();) {
    while (at < text.size() && is_blank(text[at])) ++at;
    while (at < text.size() && !is_blank(text[at])) ++at;
    if (words_in(text.substr(0, at)) > most) {
      out.append(text.substr(0, end));
      out += "...";
      return;
    }
    end = at;
  }
  out.append(text);
}

}  // namespace firn::note
