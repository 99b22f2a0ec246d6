#include "note/short.h"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <string_view>

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

// The highest rating that covers the pit or may, of a bulletin that holds for it; 0 where there is none.
std::int32_t rating_of(const Report& report) {
  const firnbook::BulletinComparison* bulletin = report.bulletin();
  if (bulletin == nullptr || bulletin->match() != firnbook::BulletinMatch::matches) return 0;
  constexpr std::uint32_t kMostRatings = 256;
  const std::uint32_t count = std::min(pit::size_of(bulletin->ratings()), kMostRatings);
  std::int32_t highest = 0;
  for (std::uint32_t i = 0; i < count; ++i) {
    const std::int32_t level = bulletin->ratings()->Get(i)->level();
    // A level that this version does not know may be above all that it does.
    if (level == 0) return 0;
    if (level <= static_cast<std::int32_t>(firnbook::DangerLevel::very_high))
      highest = std::max(highest, level);
  }
  return highest;
}

// That the region's rating stands above the pit: by its number, since the name of a low one would reassure.
// False where no bulletin was held beside the pit, or none is issued.
bool append_rating(std::string& out, const Report& report, Language language) {
  if (report.bulletin() == nullptr) return false;
  const std::int32_t rating = rating_of(report);
  const bool rated = pit::size_of(report.bulletin()->ratings()) > 0;
  if (!rated && report.bulletin()->match() == firnbook::BulletinMatch::none_issued) return false;
  const Phrase unnamed = rated ? Phrase::rating_above : Phrase::bulletin_unread;
  append_phrase(out, rating > 0 ? Phrase::rating_named_above : unnamed, language, {0, rating});
  return true;
}

// --- one line

// How much a line says, from the most to what always fits.
enum Detail : int { kSignAndConcern, kOneAndUntested, kOne, kNameOnly, kWithoutUntested, kDetails };
constexpr std::size_t kShortestTitle = 18;

class Line {
 public:
  Line(const pit::View& pit, const Report& report, Language language)
      : raised_(pit, report, language), language_(language), rating_(rating_of(report)) {}

  void write(std::string& out) {
    const std::size_t start = out.size();
    if (raised_.has(CautionKey::practice_pit)) say(out, Phrase::line_practice);
    const std::size_t before = characters_in(std::string_view(out).substr(start));
    const std::size_t name_length = characters_in(name());
    std::string rest;
    for (int detail = kSignAndConcern; detail < kDetails; ++detail) {
      rest.clear();
      after_title(rest, detail);
      const std::size_t title =
          detail == kSignAndConcern ? name_length : std::min(name_length, kShortestTitle);
      if (before + title + characters_in(rest) <= kLineCharacters) break;
    }
    const std::size_t used = before + characters_in(rest);
    append_title(out, used < kLineCharacters ? kLineCharacters - used : 0);
    append_printable(out, rest);
    out += '\n';
  }

 private:
  void say(std::string& out, Phrase key) const { append_phrase(out, key, language_); }

  // What people call the place: what stands before the first comma.
  std::string_view name() const { return raised_.title().substr(0, raised_.title().find(',')); }

  void append_title(std::string& out, std::size_t room) const {
    std::string_view title = raised_.title();
    if (characters_in(title) > room) title = name();
    const bool cut = characters_in(title) > room;
    out.append(cut ? first_characters(title, room < 3 ? 0 : room - 3) : title);
    if (cut && room >= 3) out += "...";
  }

  void after_title(std::string& out, int detail) const {
    out += ", ";
    raised_.append_date(out, false);
    say(out, Phrase::colon);
    if (raised_.has(CautionKey::record_has_errors)) say(out, Phrase::line_errors);
    statement(out, detail);
    out += ". ";
    if (detail != kWithoutUntested) {
      untested(out, detail);
      out += ". ";
    }
    append_phrase(out, rating_ > 0 ? Phrase::line_caution_rated : Phrase::line_caution, language_,
                  {0, rating_});
  }

  void statement(std::string& out, int detail) const {
    if (raised_.signs() > 0) {
      if (detail > kOne) return say(out, Phrase::line_sign);
      raised_.append_sign(out, 0);
      if (detail != kSignAndConcern || raised_.concerns() == 0) return;
      say(out, Phrase::semicolon);
    }
    if (raised_.concerns() > 0) {
      if (detail <= kOne) return raised_.append_concern(out, 0, false);
      const auto rank = raised_.concern(0).rank();
      if (rank && !rank_words(*rank, language_).empty()) {
        out.append(rank_words(*rank, language_));
        return;
      }
    }
    say(out, raised_.nothing() ? Phrase::line_nothing : Phrase::other_raised);
  }

  void untested(std::string& out, int detail) const {
    if (raised_.has(CautionKey::no_tests)) return say(out, Phrase::line_no_tests);
    const std::size_t start = out.size();
    say(out, Phrase::line_not_loaded);
    if (detail <= kOneAndUntested && raised_.append_not_loaded(out, 0)) return;
    out.resize(start);
    say(out, Phrase::line_untested);
  }

  Raised raised_;
  Language language_;
  std::int32_t rating_;
};

// --- a briefing

// Items one after another as long as they keep within so many words; the first ones always.
class Items {
 public:
  Items(std::string& out, Language language, std::size_t always, std::size_t most)
      : out_(out), language_(language), always_(always), most_(most), start_(out.size()) {}

  void begin() {
    mark_ = out_.size();
    if (count_ > 0) append_phrase(out_, Phrase::semicolon, language_);
  }
  void end() {
    if (count_ >= always_ && words_in(std::string_view(out_).substr(start_)) > most_) {
      out_.resize(mark_);
    } else {
      ++count_;
    }
  }
  void item(Phrase key) {
    begin();
    append_phrase(out_, key, language_);
    end();
  }
  bool empty() const { return count_ == 0; }

 private:
  std::string& out_;
  Language language_;
  std::size_t always_, most_, start_, mark_ = 0, count_ = 0;
};

// Words a part of the briefing may have beside its heading. What is left of kBriefingWords is the leader's.
constexpr std::size_t kTitleWords = 6;
constexpr std::size_t kFoundWords = 16;
constexpr std::size_t kNotTestedWords = 9;
constexpr std::size_t kChangeWords = 14;
// What every part gives up where the words do not suffice.
constexpr std::size_t kLess[] = {0, 3, 6, 9};
constexpr std::size_t kLeastOwnWords = 12;
constexpr std::size_t kMostOwnWords = 20;
constexpr std::size_t kOwnCharacters = 160;
constexpr std::size_t kBriefingWidth = 72;

class Briefing {
 public:
  Briefing(const pit::View& pit, const Report& report, Language language)
      : pit_(pit.raw()), report_(report), language_(language), raised_(pit, report, language) {}

  void write(std::string& out) {
    std::string about, found, not_tested, change, own, last;
    title(about);
    cautions(last);
    say(own, Phrase::leaders_decision);
    const std::size_t fixed = words_in(about) + words_in(own) + words_in(last);
    std::size_t used = 0;
    for (const std::size_t less : kLess) {
      what_was_found(found, kFoundWords - less);
      what_was_not_tested(not_tested, kNotTestedWords - less);
      what_would_change(change, kChangeWords - less);
      used = fixed + words_in(found) + words_in(not_tested) + words_in(change);
      if (used + kLeastOwnWords <= kBriefingWords) break;
    }
    own_words(own, used < kBriefingWords ? kBriefingWords - used : 0);
    Page page(out, kBriefingWidth);
    for (const std::string* part : {&about, &found, &not_tested, &change, &own, &last}) page.paragraph(*part);
  }

 private:
  void say(std::string& out, Phrase key) const { append_phrase(out, key, language_); }

  void title(std::string& out) const {
    if (raised_.has(CautionKey::practice_pit)) say(out, Phrase::line_practice);
    append_first_words(out, raised_.title(), kTitleWords);
    out += ", ";
    raised_.append_date(out, true);
  }

  // The first sign and the first concern before any second one, and both of them however many words they
  // take.
  void what_was_found(std::string& out, std::size_t most) const {
    out.clear();
    say(out, Phrase::found);
    const std::size_t always = raised_.signs() > 0 && raised_.concerns() > 0 ? 2 : 1;
    Items items(out, language_, always, most);
    for (std::size_t i = 0; i < kMostRaised; ++i) {
      if (i < raised_.signs()) {
        items.begin();
        raised_.append_sign(out, i);
        items.end();
      }
      if (i < raised_.concerns()) {
        items.begin();
        raised_.append_concern(out, i, true);
        items.end();
      }
    }
    if (items.empty()) items.item(raised_.nothing() ? Phrase::short_nothing : Phrase::other_raised);
    out += '.';
  }

  void what_was_not_tested(std::string& out, std::size_t most) const {
    out.clear();
    say(out, Phrase::not_tested);
    Items items(out, language_, 1, most);
    if (raised_.has(CautionKey::no_tests)) items.item(Phrase::line_no_tests);
    if (items.empty()) place(out, items, 0);
    if (!raised_.not_looked_for().empty()) {
      items.begin();
      say(out, Phrase::signs_not_looked_for);
      out += raised_.not_looked_for();
      items.end();
    }
    for (std::size_t i = 1; i < kMostRaised; ++i) place(out, items, i);
    if (items.empty()) items.item(Phrase::line_untested);
    out += '.';
  }

  void place(std::string& out, Items& items, std::size_t nth) const {
    const std::size_t start = out.size();
    items.begin();
    if (raised_.append_not_loaded(out, nth)) return items.end();
    out.resize(start);
  }

  void what_would_change(std::string& out, std::size_t most) const {
    out.clear();
    say(out, Phrase::change_minds);
    Items items(out, language_, 1, most);
    for (std::uint32_t i = 0; i < kMostRaised + 1; ++i) {
      const std::size_t start = out.size();
      items.begin();
      const std::size_t before = out.size();
      if (raised_.append_step(out, i) && out.size() > before) {
        items.end();
      } else {
        out.resize(start);
      }
    }
    if (items.empty()) items.item(Phrase::any_sign_or_test);
    out += '.';
  }

  // Typed by a person, or said to be missing; never made here.
  void own_words(std::string& out, std::size_t room) const {
    const firnbook::Assessment* own = pit_.assessment();
    std::string_view typed;
    if (own != nullptr) typed = pit::text(pit::size_of(own->plan()) > 0 ? own->plan() : own->words());
    if (typed.empty()) return say(out, Phrase::leader_to_say);
    const std::string_view start = first_characters(typed, kOwnCharacters);
    std::string printable;
    append_printable(printable, start);
    if (start.size() < typed.size()) printable += "...";
    out += '"';
    append_first_words(out, printable, std::min(std::max(room, kLeastOwnWords), kMostOwnWords));
    out += '"';
  }

  void cautions(std::string& out) const {
    if (raised_.has(CautionKey::record_has_errors)) say(out, Phrase::briefing_errors);
    const bool told = append_rating(out, report_, language_);
    if (!told && (raised_.has(CautionKey::no_bulletin) || raised_.has(CautionKey::bulletin_none_issued))) {
      say(out, Phrase::bulletin_none);
    } else if (!told && raised_.has(CautionKey::bulletin_not_looked_at)) {
      say(out, Phrase::bulletin_unread);
    }
    say(out, Phrase::briefing_caution);
  }

  const firnbook::Pit& pit_;
  const Report& report_;
  Language language_;
  Raised raised_;
};

// --- a short note

constexpr std::size_t kShortWidth = 60;
constexpr std::size_t kMostPlaces = 4;
constexpr std::uint32_t kMostSteps = 3;
constexpr std::size_t kMostCautions = 3;
// Hostile lists can be long, and shared by many concerns.
constexpr std::uint32_t kMostEvidence = 256;

// What makes the better evidence, best first.
enum Evidence : int { kTest, kFlagsMet, kOther, kBreak, kFlagCount, kFlag, kNone };

Evidence evidence_in(const Finding& one) {
  const bool raises = one.verdict() == Verdict::raises;
  if (one.key() == FindingKey::flag_count) return raises ? kFlagsMet : kFlagCount;
  if (one.method() == Method::yellow_flags) return raises ? kFlag : kNone;
  if (one.subject().thing() == firnbook::Thing::fracture) return raises ? kTest : kBreak;
  return raises ? kOther : kNone;
}

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
  void heading(Phrase key) { page_.heading(phrase(key, language_)); }
  void item(std::string_view mark, Phrase key) { page_.item(0, mark, phrase(key, language_)); }

  void where_and_when() {
    page_.paragraph(raised_.title());
    raised_.append_date(line_, true);
    const std::size_t end = line_.size();
    line_ += ", ";
    append_site(line_, pit_.site(), language_);
    if (line_.size() == end + 2) line_.resize(end);
    page_.paragraph(line_);
  }

  void signs() {
    heading(Phrase::short_signs);
    for (std::size_t i = 0; i < raised_.signs(); ++i) {
      line_.clear();
      raised_.append_sign(line_, i);
      page_.item(0, "! ", line_);
    }
    if (!raised_.not_looked_for().empty()) {
      line_ = phrase(Phrase::signs_not_looked_for, language_);
      line_ += raised_.not_looked_for();
      page_.item(0, "- ", line_);
    } else if (raised_.signs() == 0) {
      item("- ", Phrase::no_sign_raised);
    }
  }

  void concerns() {
    heading(Phrase::short_concerns);
    for (std::size_t i = 0; i < raised_.concerns(); ++i) {
      const char mark[] = {static_cast<char>('1' + i), '.', ' ', '\0'};
      line_.clear();
      append_concern(line_, pit_, raised_.concern(i), language_);
      page_.item(0, mark, line_);
      evidence(raised_.concern(i));
    }
    if (raised_.concerns() > 0) return;
    item("- ", raised_.other() ? Phrase::other_raised : Phrase::short_nothing);
  }

  // One line: what raises concern, a test's before the snow's. A break that raises none under its own method
  // stands with its score and depth alone, without the class.
  void evidence(const firnbook::Concern& concern) {
    const Finding* shown = nullptr;
    int shown_as = kNone;
    const std::uint32_t count = std::min(pit::size_of(concern.evidence()), kMostEvidence);
    for (std::uint32_t k = 0; k < count; ++k) {
      const std::uint32_t position = concern.evidence()->Get(k);
      if (position >= pit::size_of(report_.findings())) continue;
      const Finding& one = *report_.findings()->Get(position);
      if (evidence_in(one) >= shown_as) continue;
      shown = &one;
      shown_as = evidence_in(one);
    }
    if (shown == nullptr) return;
    line_.clear();
    if (shown->key() == FindingKey::flag_count)
      append_phrase(line_, Phrase::flags_at, language_, {shown->depth_10um()});
    if (shown_as == kBreak) {
      append_test(line_, pit_, *shown, language_);
    } else {
      append_finding(line_, pit_, *shown, language_);
    }
    if (!line_.empty()) page_.item(3, "", line_);
  }

  void not_tested() {
    heading(Phrase::short_not_loaded);
    std::size_t listed = 0;
    for (; listed < kMostPlaces; ++listed) {
      line_.clear();
      if (!raised_.append_not_loaded(line_, listed)) break;
      page_.item(0, "- ", line_);
    }
    if (listed > 0) return;
    item("- ", raised_.has(CautionKey::no_tests) ? Phrase::line_no_tests : Phrase::line_untested);
  }

  void next() {
    if (pit::size_of(report_.suggestions()) == 0) return;
    heading(Phrase::short_next);
    for (std::uint32_t i = 0; i < kMostSteps; ++i) {
      line_.clear();
      if (raised_.append_step(line_, i) && !line_.empty()) page_.item(0, "- ", line_);
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
    line_.clear();
    if (append_rating(line_, report_, language_)) page_.item(0, "! ", line_);
    if (!deferred) caution(CautionKey::defer_to_bulletin_and_people, 0, 0);
  }

  // False for one of a newer version, which has no words here.
  bool caution(CautionKey key, std::int32_t a, std::int32_t b) {
    line_.clear();
    append_template(line_, caution_words(key, language_), {0, a, b}, language_);
    if (line_.empty()) return false;
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
  Briefing(pit, report, language).write(out);
}

void append_short_note(std::string& out, const pit::View& pit, const Report& report, Language language) {
  ShortNote(out, pit, report, language).write();
}

}  // namespace firn::note
