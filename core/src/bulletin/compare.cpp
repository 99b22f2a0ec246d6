#include "bulletin/compare.h"

#include <algorithm>
#include <tuple>

#include "support/place.h"

namespace firn::bulletin {
namespace {

using firnbook::BulletinMatch;
using firnbook::Caution;
using firnbook::CautionKey;
using firnbook::DangerLevel;
using firnbook::ProblemAnswer;
using firnbook::ProblemKind;
using firnbook::ProblemMatch;
using firnbook::RatingMatch;
using firnbook::ScopePart;
using firnbook::SpeakLimit;
using firnbook::Within;

constexpr std::int64_t kHour = 3600;

std::uint8_t known_level(const flatbuffers::Optional<DangerLevel>& level) {
  const std::uint8_t number = pit::number(level);
  const bool known = (number >= 1 && number <= 5) ||
                     number == static_cast<std::uint8_t>(DangerLevel::no_snow) ||
                     number == static_cast<std::uint8_t>(DangerLevel::no_rating);
  return known ? number : std::uint8_t{0};
}

// A level that is not known may be the highest, so it comes first.
int rank_of_level(std::uint8_t level) {
  return level == 0 ? 6 : level <= 5 ? level : 0;
}

bool is_limited(const firnbook::Scope* scope, ScopePart part) {
  if (scope == nullptr) return false;
  return part == ScopePart::elevation ? scope->lower() != nullptr || scope->upper() != nullptr
                                      : pit::size_of(scope->aspects()) != 0;
}

bool has_unread(const firnbook::Scope* scope) {
  return scope != nullptr &&
         (pit::size_of(scope->not_understood()) != 0 || scope->unclear().value_or(0) != 0);
}

bool needs_treeline(const firnbook::Scope* scope) {
  if (scope == nullptr) return false;
  return (scope->lower() != nullptr && scope->lower()->treeline()) ||
         (scope->upper() != nullptr && scope->upper()->treeline());
}

class Comparer {
 public:
  Comparer(const Shown& shown, Comparison& out) : shown_(shown), out_(out), bulletin_(*out.choice.chosen) {
    std::fill(first_, first_ + kKinds, -1);
  }

  void run() {
    ratings();
    problems();
    unlisted();
  }

 private:
  Within elevation(const firnbook::Scope* scope) {
    const Within within = within_elevation(scope, out_.place, out_.question.treeline_m);
    if (within == Within::unknown && needs_treeline(scope) && out_.question.treeline_m <= 0)
      out_.treeline_missed = true;
    return within;
  }

  void ratings() {
    for (std::uint32_t i = 0; i < pit::size_of(bulletin_.ratings()); ++i) {
      const firnbook::DangerRating& one = *bulletin_.ratings()->Get(i);
      const Within height = elevation(one.scope());
      const Within aspects = within_aspects(one.scope(), out_.place);
      const Within period = within_period(one.scope());
      const Within covers = both(both(height, aspects), period);
      const std::uint8_t level = known_level(one.level());
      if (level == 0 || has_unread(one.scope())) ++out_.not_understood;
      if (covers == Within::outside) continue;
      const std::uint8_t part = one.scope() == nullptr ? std::uint8_t{0} : pit::number(one.scope()->period());
      out_.ratings.emplace_back(static_cast<std::int32_t>(i), level, height, aspects, period, part, covers);
    }
    const auto key = [](const RatingMatch& match) {
      return std::make_tuple(-rank_of_level(match.level()), match.covers() != Within::inside, match.rating());
    };
    std::sort(out_.ratings.begin(), out_.ratings.end(),
              [&key](const RatingMatch& one, const RatingMatch& other) { return key(one) < key(other); });
  }

  // The evidence of a kind stands once, however many problems share it.
  std::int32_t evidence_of(ProblemKind kind) {
    const auto index = static_cast<std::size_t>(kind);
    if (first_[index] < 0) {
      first_[index] = static_cast<std::int32_t>(out_.evidence.size());
      out_.evidence.insert(out_.evidence.end(), shown_.evidence[index].begin(), shown_.evidence[index].end());
    }
    return first_[index];
  }
  std::int32_t evidence_count(ProblemKind kind) const {
    return static_cast<std::int32_t>(shown_.evidence[static_cast<std::size_t>(kind)].size());
  }

  // A type that is not known is no kind, though there may be evidence that fits none.
  ProblemAnswer answer(ProblemKind kind, Within place, SpeakLimit& limit) const {
    limit = SpeakLimit::none;
    if (place == Within::outside) return ProblemAnswer::outside;
    if (kind != ProblemKind::none && evidence_count(kind) > 0) {
      return place == Within::inside ? ProblemAnswer::shown : ProblemAnswer::shown_place_unknown;
    }
    limit = shown_.limit[static_cast<std::size_t>(kind)];
    return limit == SpeakLimit::none ? ProblemAnswer::not_shown : ProblemAnswer::cannot_speak;
  }

  void problems() {
    for (std::uint32_t i = 0; i < pit::size_of(bulletin_.problems()); ++i) {
      const firnbook::Problem& one = *bulletin_.problems()->Get(i);
      const std::uint8_t type = pit::number(one.type());
      const ProblemKind kind = kind_of(type);
      const Within height = elevation(one.scope());
      const Within aspects = within_aspects(one.scope(), out_.place);
      const Within place = both(height, aspects);
      if (kind == ProblemKind::none || has_unread(one.scope())) ++out_.not_understood;
      SpeakLimit limit = SpeakLimit::none;
      const ProblemAnswer said = answer(kind, place, limit);
      const bool is_shown = said == ProblemAnswer::shown || said == ProblemAnswer::shown_place_unknown;
      const std::uint8_t part = one.scope() == nullptr ? std::uint8_t{0} : pit::number(one.scope()->period());
      const std::int32_t first = is_shown ? evidence_of(kind) : 0;
      out_.problems.emplace_back(static_cast<std::int32_t>(i), first, is_shown ? evidence_count(kind) : 0,
                                 type, kind, known_level(one.level()), height, aspects,
                                 within_period(one.scope()), part, place, said, limit,
                                 one.size_tenths().value_or(0));
      const auto index = static_cast<std::size_t>(kind);
      listed_[index] = true;
      listed_for_pit_[index] = listed_for_pit_[index] || place != Within::outside;
    }
  }

  // Only against a bulletin that holds and was read to its end can anything be missing from it.
  void unlisted() {
    const BulletinMatch match = out_.choice.match;
    if (out_.incomplete || (match != BulletinMatch::matches && match != BulletinMatch::time_unknown)) return;
    for (std::size_t i = 1; i <= kKinds; ++i) {
      // What fits no kind comes last.
      const auto kind = static_cast<ProblemKind>(i % kKinds);
      const bool fits_none = kind == ProblemKind::none;
      const auto index = static_cast<std::size_t>(kind);
      if (evidence_count(kind) == 0 || (!fits_none && listed_for_pit_[index])) continue;
      // The slab on a persistent layer that the bulletin lists is told with that layer.
      const auto persistent = static_cast<std::size_t>(ProblemKind::persistent_weak_layers);
      if (kind == ProblemKind::wind_slab && shown_.slab_is_doubtful && listed_for_pit_[persistent]) continue;
      const std::int32_t first = evidence_of(kind);
      const bool elsewhere = !fits_none && listed_[index];
      out_.unlisted.emplace_back(first, evidence_count(kind), kind,
                                 static_cast<std::uint8_t>(elsewhere ? 1 : 0));
    }
  }

  const Shown& shown_;
  Comparison& out_;
  const firnbook::Bulletin& bulletin_;
  std::int32_t first_[kKinds];
  bool listed_[kKinds] = {}, listed_for_pit_[kKinds] = {};
};

bool is_comparable(BulletinMatch match) {
  return match == BulletinMatch::matches || match == BulletinMatch::time_unknown ||
         match == BulletinMatch::expired || match == BulletinMatch::not_yet_valid;
}

// What the record does not tell of the pit's place and time, where the bulletin asks for it.
std::int32_t missing_of_place(const Comparison& comparison) {
  const firnbook::Bulletin& bulletin = *comparison.choice.chosen;
  bool by_elevation = false, by_aspect = false;
  const auto take = [&](const firnbook::Scope* scope) {
    by_elevation = by_elevation || is_limited(scope, ScopePart::elevation);
    by_aspect = by_aspect || is_limited(scope, ScopePart::aspects);
  };
  for (std::uint32_t i = 0; i < pit::size_of(bulletin.ratings()); ++i)
    take(bulletin.ratings()->Get(i)->scope());
  for (std::uint32_t i = 0; i < pit::size_of(bulletin.problems()); ++i)
    take(bulletin.problems()->Get(i)->scope());
  std::int32_t missing = 0;
  const PitPlace& place = comparison.place;
  if (by_elevation && !place.elevation_known) missing |= static_cast<std::int32_t>(ScopePart::elevation);
  if (by_aspect && !place.aspect_known) missing |= static_cast<std::int32_t>(ScopePart::aspects);
  if (!place.time_known) missing |= static_cast<std::int32_t>(ScopePart::period);
  return missing;
}

class Cautioner {
 public:
  Cautioner(const pit::View& pit, const Comparison& comparison, interpretation::Analysis& analysis)
      : pit_(pit), comparison_(comparison), analysis_(analysis) {}

  void run() {
    drop_what_is_answered();
    state();
    put_in(first_of_others());
    if (comparison_.choice.chosen != nullptr) rest();
    put_in(first_of_standing());
  }

 private:
  void put(CautionKey key, std::int64_t a = 0) {
    constexpr std::int64_t kMost = 1000000;
    fresh_.emplace_back(place_of(firnbook::Thing::bulletin, -1, kWholeThing),
                        static_cast<std::int32_t>(std::min(a, kMost)), 0, key, std::uint8_t{1});
  }

  void put_in(std::size_t position) {
    analysis_.cautions.insert(analysis_.cautions.begin() + static_cast<std::ptrdiff_t>(position),
                              fresh_.begin(), fresh_.end());
    fresh_.clear();
  }

  // Once a bulletin that holds lies beside the pit, "no bulletin lies beside the pit" is false, and reading
  // it is no advice any more. What the observer wrote about it stays in the record.
  void drop_what_is_answered() {
    if (comparison_.choice.match != BulletinMatch::matches) return;
    auto& cautions = analysis_.cautions;
    cautions.erase(std::remove_if(cautions.begin(), cautions.end(),
                                  [](const Caution& one) {
                                    return one.key() == CautionKey::bulletin_not_looked_at ||
                                           one.key() == CautionKey::no_bulletin;
                                  }),
                   cautions.end());
    auto& steps = analysis_.suggestions;
    steps.erase(std::remove_if(steps.begin(), steps.end(),
                               [](const firnbook::Suggestion& one) {
                                 return one.step() == firnbook::NextStep::read_bulletin;
                               }),
                steps.end());
  }

  void state() {
    switch (comparison_.choice.match) {
      case BulletinMatch::none_issued:
        return put(CautionKey::bulletin_none_issued);
      case BulletinMatch::expired:
        return put(CautionKey::bulletin_expired, comparison_.choice.seconds_apart / kHour);
      case BulletinMatch::not_yet_valid:
        return put(CautionKey::bulletin_not_yet_valid, comparison_.choice.seconds_apart / kHour);
      case BulletinMatch::other_region:
        return put(CautionKey::bulletin_other_region);
      case BulletinMatch::region_unknown:
        return put(CautionKey::bulletin_region_unknown);
      case BulletinMatch::time_unknown:
        put(CautionKey::bulletin_time_unknown);
        break;
      default:
        break;
    }
    std::int32_t problems = 0, outside = 0;
    for (const ProblemMatch& one : comparison_.problems) {
      const bool names_nothing = one.kind() == ProblemKind::no_distinct_avalanche_problem ||
                                 one.kind() == ProblemKind::favourable_situation;
      problems += names_nothing ? 0 : 1;
      outside += !names_nothing && one.answer() == ProblemAnswer::outside ? 1 : 0;
    }
    if (problems > 0 && outside == problems) put(CautionKey::bulletin_outside_every_problem, problems);
  }

  void rest() {
    using firnbook::BulletinState;
    const firnbook::BulletinSeen* seen = pit_.raw().bulletin();
    if (comparison_.choice.match == BulletinMatch::matches && seen != nullptr &&
        pit::number(seen->state()) == static_cast<std::uint8_t>(BulletinState::none_issued)) {
      put(CautionKey::bulletin_contradicts_record);
    }
    if (comparison_.incomplete) put(CautionKey::bulletin_incomplete);
    // What was invented for practice is never sent to a service.
    if (!comparison_.unlisted.empty() && !pit_.raw().practice().value_or(false))
      put(CautionKey::bulletin_unlisted, static_cast<std::int64_t>(comparison_.unlisted.size()));
    if (comparison_.ratings.empty()) put(CautionKey::bulletin_no_rating_covers);
    if (comparison_.choice.region_from == firnbook::RegionFrom::only_one)
      put(CautionKey::bulletin_region_assumed);
    if (const std::int32_t missing = missing_of_place(comparison_))
      put(CautionKey::bulletin_place_unknown, missing);
    if (comparison_.treeline_missed) put(CautionKey::bulletin_treeline_unknown);
    std::int64_t not_shown = 0;
    for (const ProblemMatch& one : comparison_.problems)
      not_shown += one.answer() == ProblemAnswer::not_shown ? 1 : 0;
    if (not_shown > 0) put(CautionKey::bulletin_problem_not_shown, not_shown);
    if (comparison_.not_understood > 0) put(CautionKey::bulletin_not_understood, comparison_.not_understood);
    if (comparison_.choice.chosen->typed_by_hand().value_or(false)) put(CautionKey::bulletin_typed_by_hand);
  }

  std::size_t first_of_others() const {
    std::size_t i = 0;
    while (i < analysis_.cautions.size()) {
      const CautionKey key = analysis_.cautions[i].key();
      const bool before = key == CautionKey::sign_of_instability_seen || key == CautionKey::practice_pit ||
                          key == CautionKey::newer_schema || key == CautionKey::record_has_errors;
      if (!before) break;
      ++i;
    }
    return i;
  }
  std::size_t first_of_standing() const {
    std::size_t i = 0;
    while (i < analysis_.cautions.size() && analysis_.cautions[i].specific() != 0) ++i;
    return i;
  }

  const pit::View& pit_;
  const Comparison& comparison_;
  interpretation::Analysis& analysis_;
  std::vector<Caution> fresh_;
};

}  // namespace

Comparison compare(const pit::View& pit, const interpretation::Analysis& analysis,
                   const firnbook::Bulletins& bulletins, const Question& question) {
  Comparison out;
  out.question = question;
  out.place = place_of_pit(pit);
  out.choice = choose(pit, out.place, bulletins, question.region);
  out.incomplete = bulletins.incomplete().value_or(false) ||
                   (out.choice.chosen != nullptr && out.choice.chosen->incomplete().value_or(false));
  if (is_comparable(out.choice.match)) Comparer(what_the_pit_shows(pit, analysis), out).run();
  return out;
}

void add_cautions(const pit::View& pit, const Comparison& comparison, interpretation::Analysis& analysis) {
  Cautioner(pit, comparison, analysis).run();
}

flatbuffers::Offset<firnbook::BulletinComparison> write_comparison(const Comparison& comparison,
                                                                   flatbuffers::FlatBufferBuilder& builder) {
  const Choice& choice = comparison.choice;
  const firnbook::Bulletin* bulletin = choice.chosen;
  // Somebody else's words; a hostile megabyte is not copied into every report.
  constexpr std::size_t kLongest = 4096;
  const auto text = [&](const flatbuffers::String* string) {
    std::string_view words = pit::text(string);
    if (words.size() > kLongest) {
      words = words.substr(0, kLongest);
      while (!words.empty() && (static_cast<unsigned char>(words.back()) & 0xC0) == 0x80)
        words.remove_suffix(1);
      if (!words.empty()) words.remove_suffix(1);
    }
    return write_text(words, builder);
  };
  flatbuffers::Offset<flatbuffers::String> id, source, highlights, region_id, region_name;
  if (bulletin != nullptr) {
    id = text(bulletin->id());
    source = text(bulletin->source());
    highlights = text(bulletin->highlights());
    region_id = text(choice.region->id());
    region_name = text(choice.region->name());
  }
  const auto ratings = builder.CreateVectorOfStructs(comparison.ratings.data(), comparison.ratings.size());
  const auto problems = builder.CreateVectorOfStructs(comparison.problems.data(), comparison.problems.size());
  const auto unlisted = builder.CreateVectorOfStructs(comparison.unlisted.data(), comparison.unlisted.size());
  const auto evidence = builder.CreateVectorOfStructs(comparison.evidence.data(), comparison.evidence.size());
  firnbook::BulletinComparisonBuilder table(builder);
  table.add_state(choice.match == BulletinMatch::none_issued ? firnbook::BulletinState::none_issued
                                                             : firnbook::BulletinState::issued);
  table.add_match(choice.match);
  table.add_bulletin_crc32(comparison.question.bulletin_crc32);
  if (bulletin != nullptr) {
    table.add_bulletin(choice.bulletin);
    if (!id.IsNull()) table.add_bulletin_id(id);
    if (!source.IsNull()) table.add_source(source);
    if (!region_id.IsNull()) table.add_region_id(region_id);
    if (!region_name.IsNull()) table.add_region_name(region_name);
    if (bulletin->published() != nullptr) table.add_published(bulletin->published());
    if (bulletin->valid() != nullptr) table.add_valid(bulletin->valid());
    if (!highlights.IsNull()) table.add_highlights(highlights);
  }
  table.add_region_from(choice.region_from);
  if (comparison.question.treeline_m > 0) table.add_treeline_m(comparison.question.treeline_m);
  table.add_ratings(ratings);
  table.add_problems(problems);
  table.add_unlisted(unlisted);
  table.add_evidence(evidence);
  return table.Finish();
}

}  // namespace firn::bulletin
