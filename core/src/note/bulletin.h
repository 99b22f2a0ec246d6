// The region's bulletin in the note. Its words stand in en_bulletin.def.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string_view>

#include "note/page.h"
#include "pit/view.h"
#include "schemas/report_generated.h"

namespace firn::note {

// Pieces of sentences that belong to no value of a schema.
enum class BulletinPhrase : std::uint8_t {
  heading,
  rating,
  rating_perhaps,
  rating_unknown,
  no_rating,
  stands,
  problem_unknown,
  unlisted,
  unlisted_practice,
  listed_elsewhere,
  evidence_concern,
  evidence_layer,
  says,
  issued,
  valid,
  to,
  size,
  problem_rated
};

// Which enumeration a row of the words is about.
enum class BulletinWords : std::uint8_t {
  BulletinMatch,
  RegionFrom,
  CautionKey,
  DangerLevel,
  DayPeriod,
  ProblemType,
  ProblemAnswer,
  SpeakLimit,
  ProblemKind,
  BulletinPhrase
};

// Empty where there are none.
std::string_view bulletin_words(BulletinWords of, std::size_t value);

// The section, or nothing where no bulletin was held beside the pit.
void append_bulletin(Page& page, const pit::View& pit, const firnbook::Report& report);

// Empty for a key that is not about the bulletin.
std::string_view bulletin_caution_words(firnbook::CautionKey key);

}  // namespace firn::note
