#include "note/bulletin.h"

#include <string>

#include "note/sentences.h"
#include "note/words.h"
#include "support/text.h"

namespace firn::note {
namespace {

using firnbook::BulletinComparison;
using firnbook::BulletinMatch;
using firnbook::CautionKey;
using firnbook::DangerLevel;
using firnbook::DayPeriod;
using firnbook::ProblemAnswer;
using firnbook::ProblemKind;
using firnbook::ProblemType;
using firnbook::RegionFrom;
using firnbook::SpeakLimit;
using firnbook::Within;

using Of = Table;

// No report of ours lists more; a hostile one may.
constexpr std::uint32_t kMostPrinted = 200;
constexpr std::uint32_t kMostEvidence = 32;
constexpr std::size_t kLongestText = 240;

std::uint32_t printed(std::uint32_t count) {
  return count < kMostPrinted ? count : kMostPrinted;
}

// Somebody else's words, cut where they are long, without what their markup is made of.
void append_text(std::string& out, const flatbuffers::String* text) {
  std::string_view words = pit::text(text);
  const bool cut = words.size() > kLongestText;
  words = words.substr(0, kLongestText);
  while (cut && !words.empty() && !is_utf8(words)) words.remove_suffix(1);
  bool in_mark = false;
  for (const char byte : words) {
    if (byte == '<') in_mark = true;
    if (!in_mark) out += byte;
    if (byte == '>' && in_mark) {
      in_mark = false;
      out += ' ';
    }
  }
  if (cut) out += "...";
}

class Section {
 public:
  Section(Page& page, const pit::View& pit, const firnbook::Report& report, Language language)
      : page_(page), pit_(pit.raw()), report_(report), bulletin_(*report.bulletin()), language_(language) {}

  void write() {
    page_.heading(words_of(BulletinPhrase::heading));
    state();
    if (!bulletin_.bulletin()) return;
    which();
    ratings();
    problems();
    unlisted();
  }

 private:
  std::string_view words_of(Of of, std::size_t value) const { return row_words(of, value, language_); }
  std::string_view words_of(BulletinPhrase phrase) const {
    return words_of(Of::BulletinPhrase, static_cast<std::size_t>(phrase));
  }

  void state() {
    const std::string_view words = words_of(Of::BulletinMatch, pit::number(bulletin_.match()));
    if (words.empty()) return;
    line_ = words;
    line_ += '.';
    page_.item(0, bulletin_.match().value_or(BulletinMatch::none) == BulletinMatch::matches ? "- " : "! ",
               line_);
  }

  void which() {
    line_.clear();
    append_text(line_, bulletin_.region_name());
    const bool named = !line_.empty();
    if (pit::size_of(bulletin_.region_id()) != 0) {
      line_ += named ? " (" : "";
      append_text(line_, bulletin_.region_id());
      line_ += named ? ")" : "";
    }
    const std::string_view from = words_of(Of::RegionFrom, pit::number(bulletin_.region_from()));
    if (!from.empty()) {
      line_ += ", ";
      line_ += from;
    }
    if (bulletin_.published() != nullptr) {
      line_ += phrase(Phrase::semicolon, language_);
      line_ += words_of(BulletinPhrase::issued);
      append_moment(line_, bulletin_.published(), language_);
    }
    if (bulletin_.valid() != nullptr) {
      line_ += phrase(Phrase::semicolon, language_);
      line_ += words_of(BulletinPhrase::valid);
      append_moment(line_, &bulletin_.valid()->begin(), language_);
      line_ += words_of(BulletinPhrase::to);
      append_moment(line_, &bulletin_.valid()->end(), language_);
    }
    if (pit::size_of(bulletin_.source()) != 0) {
      line_ += phrase(Phrase::semicolon, language_);
      append_text(line_, bulletin_.source());
    }
    page_.item(0, "- ", line_);
    if (pit::size_of(bulletin_.highlights()) == 0) return;
    line_ = words_of(BulletinPhrase::says);
    line_ += '"';
    append_text(line_, bulletin_.highlights());
    line_ += '"';
    page_.item(0, "- ", line_);
  }

  void append_period(std::uint8_t period) {
    const std::string_view part = words_of(Of::DayPeriod, period);
    if (part.empty()) return;
    line_ += ", ";
    line_ += part;
  }

  void ratings() {
    const std::uint32_t count = printed(pit::size_of(bulletin_.ratings()));
    for (std::uint32_t i = 0; i < count; ++i) {
      const firnbook::RatingMatch& one = *bulletin_.ratings()->Get(i);
      const bool perhaps = one.elevation() != Within::inside || one.aspects() != Within::inside;
      line_ = words_of(perhaps ? BulletinPhrase::rating_perhaps : BulletinPhrase::rating);
      const std::string_view level = words_of(Of::DangerLevel, one.level());
      line_ += level.empty() ? words_of(BulletinPhrase::rating_unknown) : level;
      append_period(one.day_period());
      line_ += '.';
      if (i == 0) {
        line_ += ' ';
        line_ += words_of(BulletinPhrase::stands);
      }
      page_.item(0, "- ", line_);
    }
    if (count == 0) page_.item(0, "! ", words_of(BulletinPhrase::no_rating));
  }

  // Concerns carry the numbers that they have further up in the note.
  std::uint32_t number_of(std::uint32_t concern) const {
    std::uint32_t number = 0;
    for (std::uint32_t i = 0; i <= concern; ++i) {
      const auto rank = report_.concerns()->Get(i)->rank();
      if (!rank || *rank != firnbook::ConcernRank::little) ++number;
    }
    return number;
  }

  void append_concern(std::int32_t index) {
    constexpr std::uint32_t kMostCounted = 2000;
    const auto position = static_cast<std::uint32_t>(index);
    if (index < 0 || position >= pit::size_of(report_.concerns()) || position >= kMostCounted) return;
    line_ += words_of(BulletinPhrase::evidence_concern);
    line_ += ' ';
    append_unsigned(line_, number_of(position));
    const firnbook::Concern& one = *report_.concerns()->Get(position);
    if (!one.top_10um() || *one.top_10um() < 0) return;
    append_template(line_, " ({a:cm} cm)", {0, *one.top_10um()}, language_);
  }

  void append_evidence(std::int32_t first, std::int32_t count) {
    const std::uint32_t all = pit::size_of(bulletin_.evidence());
    bool any = false;
    for (std::int64_t i = first; i < std::int64_t{first} + count && i < std::int64_t{first} + kMostEvidence;
         ++i) {
      if (i < 0 || i >= all) break;
      const firnbook::BulletinEvidence& one = *bulletin_.evidence()->Get(static_cast<std::uint32_t>(i));
      const std::size_t before = line_.size();
      line_ += phrase(any ? Phrase::semicolon : Phrase::colon, language_);
      const std::size_t from = line_.size();
      if (one.kind() == firnbook::EvidenceKind::concern) {
        append_concern(one.index());
      } else if (one.kind() == firnbook::EvidenceKind::finding) {
        const auto position = static_cast<std::uint32_t>(one.index());
        if (one.index() >= 0 && position < pit::size_of(report_.findings()))
          append_finding(line_, pit_, *report_.findings()->Get(position), language_);
      } else if (one.kind() == firnbook::EvidenceKind::layer) {
        line_ += words_of(BulletinPhrase::evidence_layer);
        append_layer(line_, pit_, one.index(), language_);
      }
      if (line_.size() == from) {
        line_.resize(before);
      } else {
        any = true;
      }
    }
  }

  void append_size(std::uint8_t tenths) {
    line_ += ", ";
    line_ += words_of(BulletinPhrase::size);
    append_template(line_, "{a:size}", {0, tenths}, language_);
  }

  void problems() {
    for (std::uint32_t i = 0; i < printed(pit::size_of(bulletin_.problems())); ++i) {
      const firnbook::ProblemMatch& one = *bulletin_.problems()->Get(i);
      const std::string_view type = words_of(Of::ProblemType, one.type());
      line_ = type.empty() ? words_of(BulletinPhrase::problem_unknown) : type;
      const std::string_view level = words_of(Of::DangerLevel, one.level());
      if (!level.empty()) {
        line_ += ", ";
        line_ += words_of(BulletinPhrase::problem_rated);
        line_ += level;
      }
      if (one.size_tenths() != 0) append_size(one.size_tenths());
      append_period(one.day_period());
      line_ += phrase(Phrase::colon, language_);
      line_ += words_of(Of::ProblemAnswer, static_cast<std::size_t>(one.answer()));
      const std::string_view limit = words_of(Of::SpeakLimit, static_cast<std::size_t>(one.limit()));
      if (one.answer() == ProblemAnswer::cannot_speak && !limit.empty()) {
        line_ += phrase(Phrase::colon, language_);
        line_ += limit;
      }
      append_evidence(one.first_evidence(), one.evidence_count());
      line_ += '.';
      const bool shown =
          one.answer() == ProblemAnswer::shown || one.answer() == ProblemAnswer::shown_place_unknown;
      page_.item(0, shown ? "! " : "- ", line_);
    }
  }

  void unlisted() {
    for (std::uint32_t i = 0; i < printed(pit::size_of(bulletin_.unlisted())); ++i) {
      const firnbook::Unlisted& one = *bulletin_.unlisted()->Get(i);
      const bool practice = pit_.practice().value_or(false);
      line_ = words_of(practice ? BulletinPhrase::unlisted_practice : BulletinPhrase::unlisted);
      line_ += words_of(Of::ProblemKind, static_cast<std::size_t>(one.kind()));
      if (one.listed_elsewhere() == 1) line_ += words_of(BulletinPhrase::listed_elsewhere);
      append_evidence(one.first_evidence(), one.evidence_count());
      line_ += '.';
      page_.item(0, "! ", line_);
    }
  }

  Page& page_;
  const firnbook::Pit& pit_;
  const firnbook::Report& report_;
  const BulletinComparison& bulletin_;
  Language language_;
  std::string line_;
};

}  // namespace

void append_bulletin(Page& page, const pit::View& pit, const firnbook::Report& report, Language language) {
  if (report.bulletin() != nullptr) Section(page, pit, report, language).write();
}

}  // namespace firn::note
