// The English sentences of the note, by key. Another language is another file like words.cpp.
//
// Templates hold {a}, {b}, {c} and {depth}, with a unit after a colon where there is one: {depth:cm},
// {a:mm}, {a:hardness}. What has no unit prints as a plain number.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "schemas/report_generated.h"

namespace firn::note {

struct Numbers {
  std::int32_t depth = 0, a = 0, b = 0, c = 0;
};

// Empty for a key this version does not know.
std::string_view finding_words(firnbook::FindingKey key);
std::string_view finding_name(firnbook::FindingKey key);
std::string_view caution_words(firnbook::CautionKey key);
std::string_view suggestion_words(firnbook::NextStep step);
std::string_view not_loaded_words(firnbook::NotLoadedReason reason);
std::string_view method_words(firnbook::Method method);
std::string_view verified_words(firnbook::Verified verified);
std::string_view rank_words(firnbook::ConcernRank rank);
std::string_view reading_words(firnbook::ConcernReading reading);
std::string_view reach_words(firnbook::ConcernReach reach);

void append_template(std::string& out, std::string_view words, const Numbers& numbers);

}  // namespace firn::note
