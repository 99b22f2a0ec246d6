// The shorter texts: within their limits for any pit and report, nothing that reassures, cautions always.
#include <gtest/gtest.h>

#include <algorithm>
#include <random>
#include <string>
#include <string_view>
#include <vector>

#include "interpretation_help.h"
#include "note/note.h"
#include "note/raised.h"
#include "note_help.h"

namespace firn::tests {
namespace {

using firnbook::Answer;
using firnbook::Crossing;
using firnbook::SignKind;
using note::Language;
using note::Length;
using note::Phrase;
using Random = std::mt19937;

constexpr Length kShorter[] = {Length::one_line, Length::briefing, Length::short_note};
constexpr std::size_t kShortNoteWidth = 60;

// A pit with its report, as the C API would have them.
class Told {
 public:
  explicit Told(const PitT& pit) : read_(pit) {
    EXPECT_TRUE(read_.ok);
    flatbuffers::FlatBufferBuilder builder;
    interpretation::write_report(read_.analysis, {}, 0, builder);
    bytes_.assign(builder.GetBufferPointer(), builder.GetBufferPointer() + builder.GetSize());
  }
  const pit::View& view() const { return read_.view; }
  const firnbook::Report& report() const { return *firnbook::GetReport(bytes_.data()); }
  std::string text(Length length, Language language = Language::english) const {
    std::string out;
    note::append_text(out, view(), report(), language, length);
    return out;
  }

 private:
  Read read_;
  std::vector<std::uint8_t> bytes_;
};

std::string words_for(Phrase key, Language language) {
  return std::string(note::phrase(key, language));
}

// On one line, so that wrapping hides nothing.
std::string unwrapped(std::string_view text) {
  std::string out;
  for (const char byte : text) {
    const char one = byte == '\n' ? ' ' : byte;
    if (one != ' ' || out.empty() || out.back() != ' ') out += one;
  }
  return out;
}

bool holds(std::string_view text, std::string_view part) {
  return unwrapped(text).find(unwrapped(part)) != std::string::npos;
}

// Blanks at the ends belong to the joints.
std::string_view trimmed(std::string_view text) {
  while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
  while (!text.empty() && text.back() == ' ') text.remove_suffix(1);
  return text;
}

void expect_within_limits(const pit::View& view, const firnbook::Report& report, Language language) {
  for (const Length length : kShorter) {
    std::string text;
    note::append_text(text, view, report, language, length);
    const std::size_t widest = length == Length::one_line   ? note::kLineCharacters
                               : length == Length::briefing ? 72
                                                            : kShortNoteWidth;
    ASSERT_EQ(trouble_in(text, widest), "") << text;
    ASSERT_EQ(forbidden_in(text, language), "") << text;
    if (length == Length::one_line) {
      ASSERT_EQ(std::count(text.begin(), text.end(), '\n'), 1) << text;
      ASSERT_TRUE(holds(text, note::phrase(Phrase::line_caution, language))) << text;
    } else if (length == Length::briefing) {
      ASSERT_LE(note::words_in(text), note::kBriefingWords) << text;
      ASSERT_TRUE(holds(text, note::phrase(Phrase::briefing_caution, language))) << text;
      std::size_t at = 0;
      for (const Phrase heading :
           {Phrase::found, Phrase::not_tested, Phrase::change_minds, Phrase::leaders_decision}) {
        const std::size_t found = unwrapped(text).find(trimmed(note::phrase(heading, language)), at);
        ASSERT_NE(found, std::string::npos) << text;
        at = found;
      }
    } else {
      ASSERT_TRUE(
          holds(text, note::caution_words(firnbook::CautionKey::defer_to_bulletin_and_people, language)))
          << text;
      ASSERT_LE(std::count(text.begin(), text.end(), '\n'), 80) << text;
    }
  }
}

std::int32_t below(Random& random, std::uint32_t limit) {
  return static_cast<std::int32_t>(random() % limit);
}

std::string any_title(Random& random) {
  const std::string titles[] = {
      "",
      "Tarn Shoulder, Larchwater Range",
      "a\nb\x1b[31m\u2028 c",
      std::string(400, 'x'),
      "\xFF\xFE broken",
      "Gratr\u00FCcken \u00FCber dem See, an der langen Wechte, Larchwater Range, Nordseite, oben",
      "a b c d e f g h i j k l m n o p q r s t u v w x y z"};
  return titles[random() % 7];
}

// As people fill in pits: most values plausible, all of them optional.
PitT any_pit(Random& random) {
  constexpr GrainForm kForms[] = {GrainForm::PP,   GrainForm::DF, GrainForm::RG,
                                  GrainForm::FC,   GrainForm::DH, GrainForm::SH,
                                  GrainForm::MFcr, GrainForm::MF, GrainForm::DHla};
  constexpr HandHardness kHardness[] = {HandHardness::Fist, HandHardness::FourFinger, HandHardness::OneFinger,
                                        HandHardness::Pencil, HandHardness::Knife};
  PitT pit;
  pit.title = any_title(random);
  if (random() % 4 != 0) {
    pit.time = std::make_unique<firnbook::TimeSpan>(instant(local_time(
        2026 + below(random, 3), 1 + below(random, 12), 1 + below(random, 28), below(random, 24), 5, -420)));
  }
  std::int32_t depth = 0;
  for (auto i = random() % 7; i > 0; --i) {
    const std::int32_t thickness = 100 * (1 + below(random, 500));
    add_layer(pit, depth, depth + thickness, kHardness[random() % 5], kForms[random() % 9],
              below(random, 900));
    depth += thickness;
  }
  if (random() % 3 != 0) {
    pit.snowpack = std::make_unique<firnbook::SnowpackT>();
    pit.snowpack->hs_10um = depth;
  }
  for (auto i = random() % 4; i > 0; --i) {
    const std::int32_t at = below(random, 150000);
    switch (random() % 5) {
      case 0:
        add_compression_test(pit, static_cast<std::uint8_t>(random() % 31),
                             static_cast<FractureCharacter>(random() % 9), at);
        break;
      case 1:
        add_extended_column(pit, static_cast<std::uint8_t>(random() % 31),
                            static_cast<Crossing>(random() % 4), at);
        break;
      case 2:
        add_saw_test(pit, below(random, 100000), cm(100), static_cast<SawEnd>(random() % 4), at);
        break;
      case 3:
        add_test(pit, static_cast<TestKind>(random() % 10)).outcome = firnbook::TestOutcome::not_valid;
        break;
      default:
        add_test(pit, TestKind::CT).outcome = firnbook::TestOutcome::no_fracture;
    }
  }
  for (auto i = random() % 4; i > 0; --i) {
    add_sign(pit, static_cast<SignKind>(random() % 12), static_cast<Answer>(random() % 5));
  }
  if (random() % 3 == 0) {
    pit.assessment = std::make_unique<firnbook::AssessmentT>();
    if (random() % 2 == 0) pit.assessment->words = any_title(random);
    if (random() % 2 == 0) pit.assessment->plan = any_title(random);
  }
  if (random() % 4 == 0) pit.practice = true;
  return pit;
}

TEST(NoteLengths, AThousandPitsKeepWithinTheLimitsInEveryLanguage) {
  Random random(20261125);
  for (int round = 0; round < 1000; ++round) {
    const Told told(any_pit(random));
    for (const Language language : note::kLanguages) {
      expect_within_limits(told.view(), told.report(), language);
      if (HasFatalFailure()) return;
    }
  }
}

TEST(NoteLengths, HostileReportsKeepWithinTheLimits) {
  Random random(20270116);
  for (int round = 0; round < 1000; ++round) {
    PitT pit = small_pit();
    if (round % 2 == 0) pit.title = any_title(random);
    const std::vector<std::uint8_t> bytes = pack(pit);
    pit::View view;
    view.decode(*firnbook::GetPit(bytes.data()));
    const std::vector<std::uint8_t> report = random_report(random);
    for (const Language language : note::kLanguages) {
      expect_within_limits(view, *firnbook::GetReport(report.data()), language);
      if (HasFatalFailure()) return;
    }
  }
}

TEST(NoteLengths, ReportsOfNothingAreTold) {
  const std::vector<std::uint8_t> bytes = pack(PitT());
  pit::View view;
  view.decode(*firnbook::GetPit(bytes.data()));
  flatbuffers::FlatBufferBuilder builder;
  firnbook::FinishReportBuffer(builder, firnbook::ReportBuilder(builder).Finish());
  const firnbook::Report& report = *firnbook::GetReport(builder.GetBufferPointer());
  for (const Language language : note::kLanguages) {
    expect_within_limits(view, report, language);
    std::string line, briefing, small;
    note::append_text(line, view, report, language, Length::one_line);
    note::append_text(briefing, view, report, language, Length::briefing);
    note::append_text(small, view, report, language, Length::short_note);
    EXPECT_TRUE(holds(line, note::phrase(Phrase::title_unknown, language))) << line;
    EXPECT_TRUE(holds(line, note::phrase(Phrase::line_date_unknown, language))) << line;
    EXPECT_TRUE(holds(line, note::phrase(Phrase::line_nothing, language))) << line;
    EXPECT_TRUE(holds(briefing, note::phrase(Phrase::short_nothing, language))) << briefing;
    EXPECT_TRUE(holds(briefing, note::phrase(Phrase::leader_to_say, language))) << briefing;
    EXPECT_TRUE(holds(small, note::phrase(Phrase::short_nothing, language))) << small;
    EXPECT_TRUE(holds(small, note::phrase(Phrase::no_sign_raised, language))) << small;
  }
}

std::string first_sign(const note::Raised& what) {
  std::string out;
  what.append_sign(out, 0);
  return out;
}
std::string first_concern(const note::Raised& what) {
  std::string out;
  what.append_concern(out, 0, true);
  return out;
}

// What raised something is never told as nothing, and the first sign comes before any concern.
TEST(NoteLengths, WhatRaisesConcernIsTold) {
  Random random(4711);
  int raised = 0;
  for (int round = 0; round < 400; ++round) {
    const Told told(any_pit(random));
    const note::Raised what(told.view(), told.report(), Language::english);
    if (what.nothing()) continue;
    ++raised;
    for (const Length length : kShorter) {
      const std::string text = told.text(length);
      ASSERT_FALSE(length != Length::short_note && holds(text, "raised nothing")) << text;
      const bool sign =
          what.signs() == 0 || holds(text, first_sign(what)) || holds(text, "a sign of instability was seen");
      ASSERT_TRUE(sign) << text;
    }
    if (what.concerns() == 0) continue;
    ASSERT_TRUE(holds(told.text(Length::briefing), first_concern(what)))
        << told.text(Length::briefing) << first_concern(what);
  }
  EXPECT_GT(raised, 100);
}

TEST(NoteLengths, NoClassStandsInAShortTextForABreakThatRaisesNoneUnderIt) {
  PitT pit;
  add_layer(pit, 0, cm(40), HandHardness::FourFinger, GrainForm::RG, 50);
  add_layer(pit, cm(40), cm(90), HandHardness::FourFinger, GrainForm::RG, 50);
  add_extended_column(pit, 15, Crossing::not_crossed, cm(40));
  const Told told(pit);
  ASSERT_TRUE(holds(told.text(Length::everything), "Swiss service"));
  for (const Language language : note::kLanguages) {
    for (const Length length : kShorter) {
      const std::string text = told.text(length, language);
      EXPECT_FALSE(holds(text, note::finding_words(FindingKey::ect_not_crossed, language))) << text;
    }
    EXPECT_TRUE(holds(told.text(Length::short_note, language), "ECTN15"))
        << told.text(Length::short_note, language);
  }
}

TEST(NoteLengths, ATestLeadsTheEvidenceBeforeAFlag) {
  const Told told(*tarn_shoulder());
  const std::string text = told.text(Length::short_note);
  EXPECT_TRUE(holds(
      text, "A crack ran here. ECTP13 at 68 cm: the crack crossed the whole column before the 22nd tap"))
      << text;
  EXPECT_TRUE(holds(text, "Something broke here. CT27 (RP) at 107 cm NOT TESTED")) << text;
}

TEST(NoteLengths, StructureAloneIsToldByItsFlags) {
  const Told told(
      two_layers(cm(50), HandHardness::OneFinger, GrainForm::RG, 30, HandHardness::Fist, GrainForm::FC, 300));
  EXPECT_TRUE(holds(told.text(Length::short_note), "yellow flags at 50 cm: 6 of 6 met"))
      << told.text(Length::short_note);
}

TEST(NoteLengths, TheLeadersDecisionIsTypedOrSaidToBeMissing) {
  PitT pit = *larch_bowl_entry();
  pit.assessment->plan = "turn round at the bench";
  EXPECT_TRUE(holds(Told(pit).text(Length::briefing, Language::french), "\"turn round at the bench\""));
  pit.assessment->plan.clear();
  EXPECT_TRUE(holds(Told(pit).text(Length::briefing), "\"" + pit.assessment->words + "\""));
  pit.assessment->words.clear();
  EXPECT_TRUE(holds(Told(pit).text(Length::briefing), "nobody wrote one down; it is for the leader to say."));
  pit.assessment->plan = "one";
  for (int i = 2; i <= 60; ++i) pit.assessment->plan += " word";
  const std::string cut = Told(pit).text(Length::briefing);
  EXPECT_TRUE(holds(cut, "\"one word word word word word word word")) << cut;
  EXPECT_TRUE(holds(cut, "word...\"")) << cut;
  pit.assessment->plan.assign(100000, 'x');
  EXPECT_LT(Told(pit).text(Length::briefing).size(), 1500u);
}

TEST(NoteLengths, APracticePitAndAWrongRecordSaySoFirst) {
  PitT pit = *larch_bowl_entry();
  pit.practice = true;
  pit.site->slope_deg = std::uint8_t{200};
  for (const Language language : note::kLanguages) {
    const std::string line = Told(pit).text(Length::one_line, language);
    EXPECT_EQ(line.rfind(words_for(Phrase::line_practice, language), 0), 0u) << line;
    EXPECT_TRUE(holds(line, note::phrase(Phrase::line_errors, language))) << line;
    const std::string briefing = Told(pit).text(Length::briefing, language);
    EXPECT_EQ(briefing.rfind(words_for(Phrase::line_practice, language), 0), 0u) << briefing;
    EXPECT_TRUE(holds(briefing, note::phrase(Phrase::briefing_errors, language))) << briefing;
  }
}

// A report with nothing but a bulletin beside the pit.
std::string text_beside(firnbook::BulletinMatch match, const std::vector<std::uint8_t>& levels,
                        Language language, Length length) {
  const std::vector<std::uint8_t> bytes = pack(small_pit());
  pit::View view;
  view.decode(*firnbook::GetPit(bytes.data()));
  flatbuffers::FlatBufferBuilder builder;
  std::vector<firnbook::RatingMatch> ratings;
  for (const std::uint8_t level : levels) {
    ratings.emplace_back(0, level, firnbook::Within::inside, firnbook::Within::inside,
                         firnbook::Within::inside, std::uint8_t{0}, firnbook::Within::inside);
  }
  const auto list = builder.CreateVectorOfStructs(ratings);
  firnbook::BulletinComparisonBuilder comparison(builder);
  comparison.add_match(match);
  comparison.add_ratings(list);
  const auto bulletin = comparison.Finish();
  firnbook::ReportBuilder report(builder);
  report.add_bulletin(bulletin);
  firnbook::FinishReportBuffer(builder, report.Finish());
  std::string text;
  note::append_text(text, view, *firnbook::GetReport(builder.GetBufferPointer()), language, length);
  EXPECT_EQ(forbidden_in(text, language), "") << text;
  if (length == Length::one_line) {
    EXPECT_LE(note::characters_in(text), note::kLineCharacters + 1) << text;
  }
  return text;
}

std::string told_rating(Phrase key, std::int32_t level, Language language) {
  std::string out;
  note::append_phrase(out, key, language, {0, level});
  return std::string(trimmed(out));
}

TEST(NoteLengths, ARegionsRatingStandsAboveByItsNumber) {
  for (const Language language : note::kLanguages) {
    for (const Length length : kShorter) {
      const bool line = length == Length::one_line;
      // The highest of those that may cover the pit, wherever it stands; no snow and no rating are no level.
      const std::string text =
          text_beside(firnbook::BulletinMatch::matches, {2, 4, 12, 11, 3}, language, length);
      EXPECT_TRUE(holds(
          text, told_rating(line ? Phrase::line_caution_rated : Phrase::rating_named_above, 4, language)))
          << text;
      // The name of a low one would reassure.
      const std::string low = text_beside(firnbook::BulletinMatch::matches, {1}, language, length);
      EXPECT_FALSE(holds(low, note::row_words(note::Table::DangerLevel, 1, language))) << low;
      EXPECT_TRUE(holds(
          low, told_rating(line ? Phrase::line_caution_rated : Phrase::rating_named_above, 1, language)))
          << low;
    }
  }
}

TEST(NoteLengths, ARatingThatCannotBeNamedStandsAboveAllTheSame) {
  using firnbook::BulletinMatch;
  for (const Language language : note::kLanguages) {
    for (const Length length : {Length::briefing, Length::short_note}) {
      // One of them is not known here, and may be the highest.
      EXPECT_TRUE(holds(text_beside(BulletinMatch::matches, {0, 2}, language, length),
                        told_rating(Phrase::rating_above, 0, language)));
      EXPECT_TRUE(holds(text_beside(BulletinMatch::expired, {2}, language, length),
                        told_rating(Phrase::rating_above, 0, language)));
      EXPECT_TRUE(holds(text_beside(BulletinMatch::other_region, {}, language, length),
                        told_rating(Phrase::bulletin_unread, 0, language)));
    }
    for (const auto match : {BulletinMatch::expired, BulletinMatch::none_issued, BulletinMatch::none}) {
      EXPECT_TRUE(holds(text_beside(match, {}, language, Length::one_line),
                        told_rating(Phrase::line_caution, 0, language)));
    }
  }
}

TEST(NoteLengths, AnUnreadBulletinAndNoneAreTold) {
  const Told larch(*larch_bowl_entry()), tarn(*tarn_shoulder());
  for (const Language language : note::kLanguages) {
    EXPECT_TRUE(holds(larch.text(Length::briefing, language), note::phrase(Phrase::bulletin_none, language)));
    EXPECT_TRUE(
        holds(tarn.text(Length::briefing, language), note::phrase(Phrase::bulletin_unread, language)));
  }
}

TEST(NoteLengths, ALineKeepsTheNameOfThePlaceWhenItsRangeHasNoRoom) {
  EXPECT_EQ(Told(*larch_bowl_entry())
                .text(Length::one_line, Language::german)
                .rfind("Larch Bowl entry, 2026-11-28", 0),
            0u)
      << Told(*larch_bowl_entry()).text(Length::one_line, Language::german);
  PitT pit = *larch_bowl_entry();
  pit.title.assign(300, 'x');
  const std::string line = Told(pit).text(Length::one_line);
  EXPECT_EQ(note::characters_in(line), note::kLineCharacters + 1) << line;
  EXPECT_TRUE(holds(line, "xxx..., 2026-11-28")) << line;
}

TEST(NoteWordCount, CountsWhatAReaderReads) {
  EXPECT_EQ(note::words_in(""), 0u);
  EXPECT_EQ(note::words_in("one two\nthree"), 3u);
  EXPECT_EQ(note::words_in("un : deux ; \u00E9t\u00E9 ?"), 3u) << "a mark alone is no word";
  const auto first = [](std::string_view text, std::size_t most) {
    std::string out;
    note::append_first_words(out, text, most);
    return out;
  };
  EXPECT_EQ(first("one two three", 3), "one two three");
  EXPECT_EQ(first("one two three", 2), "one two...");
  EXPECT_EQ(first("one two : three", 2), "one two :...");
  EXPECT_EQ(first("", 2), "");
}

}  // namespace
}  // namespace firn::tests
