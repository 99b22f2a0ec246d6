#include "note/short.h"

#include <algorithm>
#include <cstddef>
#include <string_view>
#include <vector>

#include "note/note.h"
#include "note/page.h"
#include "note/raised.h"
#include "note/sentences.h"

namespace firn::note {
namespace {

using firnbook::CautionKey;
using firnbook::Finding;
using firnbook::FindingKey;
using firnbook::Method;
using firnbook::Report;
using firnbook::Verdict;

std::string words_for(Phrase key, Language language) {
  return std::string(phrase(key, language));
}

// Items one after another as long as they keep within so many words; the first ones always.
std::string join(const std::vector<std::string>& items, std::size_t always, std::size_t most_words,
                 Language language) {
  std::string out;
  for (std::size_t i = 0; i < items.size(); ++i) {
    const std::string& item = items[i];
    if (i >= always && words_in(out) + words_in(item) > most_words) continue;
    if (!out.empty()) append_phrase(out, Phrase::semicolon, language);
    out += item;
  }
  return out;
}

// How much a line says, from the most to what always fits.
enum class Detail { sign_and_concern, one_and_untested, one, name_only, no_untested };
constexpr Detail kDetails[] = {Detail::sign_and_concern, Detail::one_and_untested, Detail::one,
                               Detail::name_only, Detail::no_untested};
constexpr std::size_t kShortestTitle = 18;
constexpr std::size_t kLongestDate = 11;

class Line {
 public:
  Line(const pit::View& pit, const Report& report, Language language)
      : raised_(pit, report, language), language_(language) {}

  void write(std::string& out) {
    std::string before;
    if (raised_.has(CautionKey::practice_pit)) before = phrase(Phrase::line_practice, language_);
    std::string rest;
    for (const Detail detail : kDetails) {
      rest = after_title(detail);
      const std::size_t title = characters_in(name());
      const std::size_t wanted = detail == Detail::sign_and_concern ? title : std::min(title, kShortestTitle);
      if (characters_in(before) + wanted + characters_in(rest) <= kLineCharacters) break;
    }
    const std::size_t used = characters_in(before) + characters_in(rest);
    append_printable(out, before);
    append_title(out, used < kLineCharacters ? kLineCharacters - used : 0);
    append_printable(out, rest);
    out += '\n';
  }

 private:
  // What people call the place: what stands before the first comma.
  std::string_view name() const { return raised_.title().substr(0, raised_.title().find(',')); }

  void append_title(std::string& out, std::size_t room) const {
    std::string_view title = raised_.title();
    if (characters_in(title) > room) title = name();
    const bool cut = characters_in(title) > room;
    if (cut) title = first_characters(title, room < 3 ? 0 : room - 3);
    append_printable(out, title);
    if (cut && room >= 3) out += "...";
  }

  std::string after_title(Detail detail) const {
    const std::string date = raised_.date(false);
    const bool known = !date.empty() && characters_in(date) <= kLongestDate;
    std::string out = ", ";
    out += known ? date : words_for(Phrase::line_date_unknown, language_);
    append_phrase(out, Phrase::colon, language_);
    if (raised_.has(CautionKey::record_has_errors)) append_phrase(out, Phrase::line_errors, language_);
    out += statement(detail);
    out += ". ";
    if (detail != Detail::no_untested) {
      out += untested(detail);
      out += ". ";
    }
    append_phrase(out, Phrase::line_caution, language_);
    return out;
  }

  std::string statement(Detail detail) const {
    if (!raised_.signs().empty()) {
      if (detail > Detail::one) return words_for(Phrase::line_sign, language_);
      std::string out = raised_.signs().front();
      if (detail == Detail::sign_and_concern && !raised_.concerns().empty()) {
        append_phrase(out, Phrase::semicolon, language_);
        out += raised_.concern(*raised_.concerns().front(), false);
      }
      return out;
    }
    if (!raised_.concerns().empty()) {
      const firnbook::Concern& first = *raised_.concerns().front();
      if (detail <= Detail::one) return raised_.concern(first, false);
      const std::string_view rank = first.rank() ? rank_words(*first.rank(), language_) : std::string_view{};
      if (!rank.empty()) return std::string(rank);
    }
    return words_for(raised_.nothing() ? Phrase::line_nothing : Phrase::other_raised, language_);
  }

  std::string untested(Detail detail) const {
    if (raised_.has(CautionKey::no_tests)) return words_for(Phrase::line_no_tests, language_);
    const std::vector<std::string> places = raised_.not_loaded(1);
    if (places.empty() || detail > Detail::one_and_untested) {
      return words_for(Phrase::line_untested, language_);
    }
    return words_for(Phrase::line_not_loaded, language_) + places.front();
  }

  Raised raised_;
  Language language_;
};

// Words a part of the briefing may have beside its heading. What is left of kBriefingWords is the leader's.
constexpr std::size_t kTitleWords = 6;
constexpr std::size_t kFoundWords = 16;
constexpr std::size_t kNotTestedWords = 9;
constexpr std::size_t kChangeWords = 14;
// What every part gives up where the words do not suffice.
constexpr std::size_t kLess[] = {0, 3, 6, 9};
constexpr std::size_t kLeastOwnWords = 10;
constexpr std::size_t kMostOwnWords = 20;
constexpr std::size_t kOwnCharacters = 160;
constexpr std::size_t kBriefingWidth = 72;

class Briefing {
 public:
  Briefing(std::string& out, const pit::View& pit, const Report& report, Language language)
      : page_(out, kBriefingWidth),
        pit_(pit.raw()),
        report_(report),
        language_(language),
        raised_(pit, report, language) {}

  void write() {
    std::string about;
    if (raised_.has(CautionKey::practice_pit)) append_phrase(about, Phrase::line_practice, language_);
    about += first_words(raised_.title(), kTitleWords) + ", " + date();
    const std::string last = cautions();
    const std::string own = heading(Phrase::leaders_decision);
    const std::size_t fixed = words_in(about) + words_in(last) + words_in(own);
    // A sign and a concern are always told, however many words they take.
    const std::size_t always = raised_.signs().empty() || raised_.concerns().empty() ? 1 : 2;
    std::string found, not_tested, change;
    std::size_t used = 0;
    for (const std::size_t less : kLess) {
      found = heading(Phrase::found) + join(what_was_found(), always, kFoundWords - less, language_) + '.';
      not_tested =
          heading(Phrase::not_tested) + join(what_was_not(), 1, kNotTestedWords - less, language_) + '.';
      change =
          heading(Phrase::change_minds) + join(what_would_change(), 1, kChangeWords - less, language_) + '.';
      used = fixed + words_in(found) + words_in(not_tested) + words_in(change);
      if (used + kLeastOwnWords <= kBriefingWords) break;
    }
    page_.paragraph(about);
    page_.paragraph(found);
    page_.paragraph(not_tested);
    page_.paragraph(change);
    page_.paragraph(own + own_words(used < kBriefingWords ? kBriefingWords - used : 0));
    page_.paragraph(last);
  }

 private:
  std::string heading(Phrase key) const { return words_for(key, language_); }
  std::string date() const {
    const std::string date = raised_.date(true);
    return date.empty() ? words_for(Phrase::line_date_unknown, language_) : date;
  }

  // The first sign and the first concern before any second one.
  std::vector<std::string> what_was_found() const {
    std::vector<std::string> out;
    const std::size_t most = raised_.signs().size() + raised_.concerns().size();
    for (std::size_t i = 0; i < most; ++i) {
      if (i < raised_.signs().size()) out.push_back(raised_.signs()[i]);
      if (i < raised_.concerns().size()) out.push_back(raised_.concern(*raised_.concerns()[i], true));
    }
    if (raised_.nothing()) out.push_back(words_for(Phrase::short_nothing, language_));
    if (out.empty()) out.push_back(words_for(Phrase::other_raised, language_));
    return out;
  }

  std::vector<std::string> what_was_not() const {
    std::vector<std::string> out;
    if (raised_.has(CautionKey::no_tests)) out.push_back(words_for(Phrase::line_no_tests, language_));
    std::vector<std::string> places = raised_.not_loaded(3);
    if (!places.empty() && out.empty()) out.push_back(places.front());
    if (!raised_.not_looked_for().empty()) {
      out.push_back(words_for(Phrase::signs_not_looked_for, language_) + raised_.not_looked_for());
    }
    for (std::size_t i = 1; i < places.size(); ++i) out.push_back(places[i]);
    if (out.empty()) out.push_back(words_for(Phrase::line_untested, language_));
    return out;
  }

  std::vector<std::string> what_would_change() const {
    std::vector<std::string> out;
    for (std::uint32_t i = 0; i < pit::size_of(report_.suggestions()) && i < 4; ++i) {
      const firnbook::Suggestion& one = *report_.suggestions()->Get(i);
      std::string name;
      append_template(name, suggestion_name(one.step(), language_), {one.depth_10um()}, language_);
      if (!name.empty()) out.push_back(std::move(name));
    }
    if (out.empty()) out.push_back(words_for(Phrase::any_sign_or_test, language_));
    return out;
  }

  // Typed by a person, or said to be missing; never made here.
  std::string own_words(std::size_t room) const {
    const firnbook::Assessment* own = pit_.assessment();
    std::string_view typed;
    if (own != nullptr) typed = pit::text(pit::size_of(own->plan()) > 0 ? own->plan() : own->words());
    if (typed.empty()) return words_for(Phrase::leader_to_say, language_);
    const std::size_t most = room < kLeastOwnWords ? kLeastOwnWords : room;
    std::string start;
    append_printable(start, first_characters(typed, kOwnCharacters));
    std::string words = first_words(start, most < kMostOwnWords ? most : kMostOwnWords);
    const bool cut = characters_in(start) < characters_in(typed) &&
                     (words.size() < 3 || words.substr(words.size() - 3) != "...");
    if (cut) words += "...";
    return '"' + words + '"';
  }

  std::string cautions() const {
    std::string out;
    if (raised_.has(CautionKey::record_has_errors)) append_phrase(out, Phrase::briefing_errors, language_);
    if (report_.bulletin() != nullptr) {
      append_phrase(out, Phrase::rating_above, language_);
    } else if (raised_.has(CautionKey::no_bulletin)) {
      append_phrase(out, Phrase::bulletin_none, language_);
    } else if (raised_.has(CautionKey::bulletin_not_looked_at)) {
      append_phrase(out, Phrase::bulletin_unread, language_);
    }
    append_phrase(out, Phrase::briefing_caution, language_);
    return out;
  }

  Page page_;
  const firnbook::Pit& pit_;
  const Report& report_;
  Language language_;
  Raised raised_;
};

constexpr std::size_t kShortWidth = 60;
constexpr std::size_t kMostPlaces = 4;
constexpr std::size_t kMostSteps = 3;
constexpr std::size_t kMostCautions = 3;
// Hostile lists can be long, and shared by many concerns.
constexpr std::uint32_t kMostEvidence = 256;

class ShortNote {
 public:
  ShortNote(std::string& out, const pit::View& pit, const Report& report, Language language)
      : page_(out, kShortWidth),
        pit_(pit.raw()),
        report_(report),
        language_(language),
        raised_(pit, report, language) {}

  void write() {
    where_and_when();
    signs();
    concerns();
    not_tested();
    next();
    cautions();
  }

 private:
  void where_and_when() {
    page_.paragraph(raised_.title());
    const std::string date = raised_.date(true);
    line_ = date.empty() ? words_for(Phrase::line_date_unknown, language_) : date;
    std::string site;
    append_site(site, pit_.site(), language_);
    if (!site.empty()) line_ += ", " + site;
    page_.paragraph(line_);
  }

  void heading(Phrase key) { page_.heading(phrase(key, language_)); }

  void signs() {
    heading(Phrase::short_signs);
    for (const std::string& sign : raised_.signs()) page_.item(0, "! ", sign);
    if (!raised_.not_looked_for().empty()) {
      page_.item(0, "- ", words_for(Phrase::signs_not_looked_for, language_) + raised_.not_looked_for());
    } else if (raised_.signs().empty()) {
      page_.item(0, "- ", phrase(Phrase::no_sign_raised, language_));
    }
  }

  void concerns() {
    heading(Phrase::short_concerns);
    for (std::size_t i = 0; i < raised_.concerns().size(); ++i) {
      const firnbook::Concern& one = *raised_.concerns()[i];
      std::string mark;
      append_template(mark, "{a}. ", {0, static_cast<std::int32_t>(i + 1)}, language_);
      line_.clear();
      append_concern(line_, pit_, one, language_);
      page_.item(0, mark, line_);
      evidence(one);
    }
    if (!raised_.concerns().empty()) return;
    page_.item(0, "- ", phrase(raised_.other() ? Phrase::other_raised : Phrase::short_nothing, language_));
  }

  // One line: what raises concern, a test's before the snow's. A break that raises none under its own method
  // stands with its score and depth alone, without the class.
  void evidence(const firnbook::Concern& concern) {
    const Finding* shown = nullptr;
    int shown_as = kKinds;
    const std::uint32_t count = pit::size_of(concern.evidence());
    for (std::uint32_t k = 0; k < count && k < kMostEvidence; ++k) {
      const std::uint32_t position = concern.evidence()->Get(k);
      if (position >= pit::size_of(report_.findings())) continue;
      const Finding& one = *report_.findings()->Get(position);
      const int kind = kind_of(one);
      if (kind >= shown_as) continue;
      shown = &one;
      shown_as = kind;
    }
    if (shown == nullptr) return;
    line_.clear();
    if (shown_as == kBreak) {
      append_test(line_, pit_, *shown, language_);
    } else {
      if (shown->key() == FindingKey::flag_count)
        append_phrase(line_, Phrase::flags_at, language_, {shown->depth_10um()});
      append_finding(line_, pit_, *shown, language_);
    }
    if (!line_.empty()) page_.item(3, "", line_);
  }

  // What makes the better evidence, best first.
  enum Kind { kTest, kOther, kBreak, kFlagCount, kFlag, kKinds };
  static Kind kind_of(const Finding& one) {
    const bool raises = one.verdict() == Verdict::raises;
    const bool of_test = one.subject().thing() == firnbook::Thing::fracture;
    if (one.key() == FindingKey::flag_count) return kFlagCount;
    if (one.method() == Method::yellow_flags) return raises ? kFlag : kKinds;
    if (of_test) return raises ? kTest : kBreak;
    return raises ? kOther : kKinds;
  }

  void not_tested() {
    heading(Phrase::short_not_loaded);
    const std::vector<std::string> places = raised_.not_loaded(kMostPlaces);
    for (const std::string& place : places) page_.item(0, "- ", place);
    if (places.empty()) {
      const bool none = raised_.has(CautionKey::no_tests);
      page_.item(0, "- ", phrase(none ? Phrase::line_no_tests : Phrase::line_untested, language_));
    }
  }

  void next() {
    const std::uint32_t count = pit::size_of(report_.suggestions());
    if (count == 0) return;
    heading(Phrase::short_next);
    for (std::uint32_t i = 0; i < count && i < kMostSteps; ++i) {
      const firnbook::Suggestion& one = *report_.suggestions()->Get(i);
      line_.clear();
      append_template(line_, suggestion_name(one.step(), language_), {one.depth_10um()}, language_);
      if (!line_.empty()) page_.item(0, "- ", line_);
    }
  }

  // The report's first three, then what stands above every note.
  void cautions() {
    heading(Phrase::short_cautions);
    std::size_t printed = 0;
    bool deferred = false;
    const std::uint32_t count = pit::size_of(report_.cautions());
    for (std::uint32_t i = 0; i < count && printed < kMostCautions; ++i) {
      const firnbook::Caution& one = *report_.cautions()->Get(i);
      if (!caution(one.key(), one.a(), one.b())) continue;
      deferred = deferred || one.key() == CautionKey::defer_to_bulletin_and_people;
      ++printed;
    }
    if (report_.bulletin() != nullptr) page_.item(0, "! ", phrase(Phrase::rating_above, language_));
    if (!deferred) caution(CautionKey::defer_to_bulletin_and_people, 0, 0);
  }

  // False for one of a newer version, which has no words here.
  bool caution(CautionKey key, std::int32_t a, std::int32_t b) {
    const std::string_view words = caution_words(key, language_);
    if (words.empty()) return false;
    line_.clear();
    append_template(line_, words, {0, a, b}, language_);
    page_.item(0, "! ", line_);
    return true;
  }

  Page page_;
  const firnbook::Pit& pit_;
  const Report& report_;
  Language language_;
  Raised raised_;
  std::string line_;
};

}  // namespace

void append_line(std::string& out, const pit::View& pit, const Report& report, Language language) {
  Line(pit, report, language).write(out);
}

void append_briefing(std::string& out, const pit::View& pit, const Report& report, Language language) {
  Briefing(out, pit, report, language).write();
}

void append_short_note(std::string& out, const pit::View& pit, const Report& report, Language language) {
  ShortNote(out, pit, report, language).write();
}

}  // namespace firn::note
