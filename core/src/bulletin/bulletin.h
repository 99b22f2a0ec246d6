// A public avalanche bulletin: read from the open JSON of CAAML v6, verified, and written.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "pit/verify.h"
#include "schemas/bulletin_generated.h"
#include "support/result.h"

namespace firn::bulletin {

// Something in a file that was not as the standard has it, or was not understood. Reading went on.
struct Message {
  std::string path;  // such as "bulletins[0].dangerRatings[1].mainValue"; empty for the file as a whole
  std::string what;
  std::string remedy;
  std::uint32_t line = 0, column = 0;
};

struct Messages {
  static constexpr std::size_t kMost = 200;
  std::vector<Message> list;
  std::size_t left_out = 0;  // beyond kMost
};

// Reads bulletins into `builder`, which is cleared first and holds finished bytes afterwards. All that can be
// used is used, and what cannot is told in `messages`. Fails when there is no bulletin at all in the text.
Done read_json(std::string_view text, flatbuffers::FlatBufferBuilder& builder, Messages& messages);

// Foreign bytes. A buffer of bulletins holds no list of strings, and the verifier counts every table as often
// as it is reached, so what follows is linear in the size.
Result<const firnbook::Bulletins*> verify(const std::uint8_t* bytes, std::size_t size,
                                          const pit::Limits& limits, pit::AlignedBytes& aligned);

// ISO 8601, as far as RFC 3339 and common practice go: a date, or date and time with or without offset. False
// for anything else.
bool read_time(std::string_view text, firnbook::Moment& out);

// Where and when something holds, on its way into a buffer.
struct ScopeParts {
  bool has_lower = false, has_upper = false;
  firnbook::ElevationLimit lower, upper;
  std::vector<std::uint8_t> aspects;  // firnbook::CompassPoint
  std::uint8_t period = 0;            // firnbook::DayPeriod, 0 = not said
  std::uint8_t unclear = 0;           // bits of firnbook::ScopePart
  std::vector<flatbuffers::Offset<firnbook::NotUnderstood>> not_understood;
};
// Null where there is nothing to say.
flatbuffers::Offset<firnbook::Scope> write_scope(const ScopeParts& parts,
                                                 flatbuffers::FlatBufferBuilder& builder);

template <class T>
flatbuffers::Offset<flatbuffers::Vector<flatbuffers::Offset<T>>> write_list(
    const std::vector<flatbuffers::Offset<T>>& list, flatbuffers::FlatBufferBuilder& builder) {
  return list.empty() ? flatbuffers::Offset<flatbuffers::Vector<flatbuffers::Offset<T>>>()
                      : builder.CreateVector(list.data(), list.size());
}
flatbuffers::Offset<flatbuffers::String> write_text(std::string_view text,
                                                    flatbuffers::FlatBufferBuilder& builder);

}  // namespace firn::bulletin
