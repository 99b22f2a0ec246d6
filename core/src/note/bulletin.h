// The region's bulletin in the note. Its words stand in en_bulletin.def.
#pragma once

#include <cstdint>

#include "note/page.h"
#include "note/words.h"
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

// The section, or nothing where no bulletin was held beside the pit.
void append_bulletin(Page& page, const pit::View& pit, const firnbook::Report& report, Language language);

}  // namespace firn::note
