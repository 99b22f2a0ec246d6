// Bulletins in the JSON of CAAML v6 (CAAMLv6_BulletinEAWS.json), as the standard has them and as files have
// them. What is not understood is told and kept; nothing that is left unread narrows where a rating or a
// problem holds.
#include <array>

#include "bulletin/bulletin.h"
#include "bulletin/json.h"
#include "support/text.h"

namespace firn::bulletin {
namespace {

using firnbook::ScopePart;
using flatbuffers::FlatBufferBuilder;
using flatbuffers::Offset;

// A place in the file, as a chain from the inside out; printed only when something is said about it.
struct Path {
  const Path* parent = nullptr;
  std::string_view key;
  std::int32_t index = -1;
};

void append_path(std::string& out, const Path& path) {
  if (path.parent != nullptr) append_path(out, *path.parent);
  if (!path.key.empty()) {
    if (!out.empty()) out += '.';
    out.append(path.key.substr(0, 64));
  }
  if (path.index >= 0) {
    out += '[';
    append_integer(out, path.index);
    out += ']';
  }
}

struct Word {
  std::string_view word;
  std::uint8_t value;
};

template <class E>
constexpr Word word(std::string_view text, E value) {
  return {text, static_cast<std::uint8_t>(value)};
}

using firnbook::CompassPoint;
using firnbook::DangerLevel;
using firnbook::DayPeriod;
using firnbook::Frequency;
using firnbook::ProblemType;
using firnbook::SnowpackStability;
using firnbook::Tendency;

constexpr Word kLevels[] = {word("low", DangerLevel::low),
                            word("moderate", DangerLevel::moderate),
                            word("considerable", DangerLevel::considerable),
                            word("high", DangerLevel::high),
                            word("very_high", DangerLevel::very_high),
                            word("no_snow", DangerLevel::no_snow),
                            word("no_rating", DangerLevel::no_rating)};
constexpr Word kTypes[] = {word("new_snow", ProblemType::new_snow),
                           word("wind_slab", ProblemType::wind_slab),
                           word("persistent_weak_layers", ProblemType::persistent_weak_layers),
                           word("wet_snow", ProblemType::wet_snow),
                           word("gliding_snow", ProblemType::gliding_snow),
                           word("cornices", ProblemType::cornices),
                           word("no_distinct_avalanche_problem", ProblemType::no_distinct_avalanche_problem),
                           word("favourable_situation", ProblemType::favourable_situation)};
constexpr Word kStabilities[] = {word("good", SnowpackStability::good), word("fair", SnowpackStability::fair),
                                 word("poor", SnowpackStability::poor),
                                 word("very_poor", SnowpackStability::very_poor)};
constexpr Word kFrequencies[] = {word("none", Frequency::none), word("few", Frequency::few),
                                 word("some", Frequency::some), word("many", Frequency::many)};
constexpr Word kAspects[] = {
    word("N", CompassPoint::N),   word("NE", CompassPoint::NE), word("E", CompassPoint::E),
    word("SE", CompassPoint::SE), word("S", CompassPoint::S),   word("SW", CompassPoint::SW),
    word("W", CompassPoint::W),   word("NW", CompassPoint::NW), word("n/a", CompassPoint::none)};
constexpr Word kPeriods[] = {word("all_day", DayPeriod::all_day), word("earlier", DayPeriod::earlier),
                             word("later", DayPeriod::later)};
constexpr Word kTendencies[] = {word("decreasing", Tendency::decreasing), word("steady", Tendency::steady),
                                word("increasing", Tendency::increasing)};

// A table of the file, so that what reads one is written once.
template <class T>
struct Span {
  template <std::size_t N>
  constexpr Span(const T (&list)[N]) : first(list), count(N) {}
  constexpr const T* begin() const { return first; }
  constexpr const T* end() const { return first + count; }

  const T* first;
  std::size_t count;
};

// 0 for a word that is none of them.
std::uint8_t value_of(Span<Word> words, std::string_view text) {
  for (const Word& one : words) {
    if (one.word == text) return one.value;
  }
  return 0;
}

constexpr std::string_view kBulletinKeys[] = {"bulletinID",
                                              "lang",
                                              "publicationTime",
                                              "validTime",
                                              "nextUpdate",
                                              "unscheduled",
                                              "source",
                                              "regions",
                                              "dangerRatings",
                                              "avalancheProblems",
                                              "highlights",
                                              "weatherForecast",
                                              "weatherReview",
                                              "avalancheActivity",
                                              "snowpackStructure",
                                              "travelAdvisory",
                                              "tendency"};
constexpr std::string_view kProseKeys[] = {"weatherForecast", "weatherReview", "avalancheActivity",
                                           "snowpackStructure", "travelAdvisory"};
constexpr std::string_view kRatingKeys[] = {"mainValue", "elevation", "aspects", "validTimePeriod"};
constexpr std::string_view kProblemKeys[] = {"problemType",       "comment",   "avalancheSize",
                                             "snowpackStability", "frequency", "dangerRatingValue",
                                             "elevation",         "aspects",   "validTimePeriod"};
constexpr std::string_view kRegionKeys[] = {"regionID", "name"};
constexpr std::string_view kSpanKeys[] = {"startTime", "endTime"};
constexpr std::string_view kElevationKeys[] = {"lowerBound", "upperBound"};
constexpr std::string_view kTextKeys[] = {"highlights", "comment"};
constexpr std::string_view kTendencyKeys[] = {"tendencyType", "validTime", "highlights", "comment"};
constexpr std::string_view kRootKeys[] = {"bulletins"};

// Ours to keep without a word: the standard has a place for them nearly everywhere.
bool is_data_of_others(std::string_view key) {
  return key == "customData" || key == "metaData";
}

bool starts_with(std::string_view text, std::string_view beginning) {
  return text.substr(0, beginning.size()) == beginning;
}

constexpr std::uint8_t bit(ScopePart part) {
  return static_cast<std::uint8_t>(part);
}

constexpr std::uint8_t kAllParts = 7;

class Reader {
 public:
  Reader(FlatBufferBuilder& out, Messages& messages) : out_(out), messages_(messages) {}

  Done read(std::string_view text);

 private:
  // What one object of the file has.
  struct Object {
    const JsonNode* node;
    const Path& path;
  };

  void say(const Path& path, std::uint32_t at, std::string_view what, std::string_view remedy);
  void say_of_value(const Path& path, const JsonNode& node, std::string_view what, std::string_view remedy);
  void tell_of_text();
  Failure nothing(std::string_view what, std::string_view remedy, std::uint32_t at) const;

  // The members of an object that the standard has; others are told and kept.
  bool object(const Object& of, Span<std::string_view> keys);
  void check_members(const Object& of, Span<std::string_view> keys);
  const JsonNode* member(const Object& of, std::string_view key) const;
  std::string_view text(const Object& of, std::string_view key);
  // A word of a list; 0 with a message for another, and what was written in `written`.
  std::uint8_t choice(const Object& of, std::string_view key, Span<Word> words,
                      std::string_view* written = nullptr);
  firnbook::Moment moment(const Object& of, std::string_view key);
  bool span(const Object& of, std::string_view key, firnbook::TimeSpan& out);
  void keep(const Path& path, const JsonNode& node);
  void not_understood(ScopeParts& parts, std::string_view key, std::string_view value);

  // A table that was read, whichever it is; null when it was left out.
  using Any = Offset<void>;
  using ReadOne = Any (Reader::*)(const JsonNode&, const Path&);
  Offset<flatbuffers::Vector<Any>> any_list(const Object& of, std::string_view key, ReadOne one);
  template <class T>
  Offset<flatbuffers::Vector<Offset<T>>> list(const Object& of, std::string_view key, ReadOne one) {
    return any_list(of, key, one).o;
  }

  void scope(const Object& of, ScopeParts& parts);
  void elevation(const Object& of, ScopeParts& parts);
  void bound(const Object& of, std::string_view key, bool& has, firnbook::ElevationLimit& limit,
             ScopeParts& parts);
  void aspects(const Object& of, ScopeParts& parts);
  void period(const Object& of, ScopeParts& parts);
  void unknown_limits(const Object& of, ScopeParts& parts);
  std::uint8_t size(const Object& of, ScopeParts& parts);

  Any rating(const JsonNode& node, const Path& path);
  Any problem(const JsonNode& node, const Path& path);
  Any region(const JsonNode& node, const Path& path);
  Any tendency(const JsonNode& node, const Path& path);
  Offset<firnbook::Bulletin> bulletin(const JsonNode& node, const Path& path);
  Offset<flatbuffers::Vector<Offset<firnbook::Prose>>> prose(const Object& of);
  std::string_view source(const Object& of);
  void root(const JsonNode& node);
  void bulletins(const JsonNode& list, const Path& path);
  void take_bulletin(const JsonNode& node, const Path& path);

  FlatBufferBuilder& out_;
  Messages& messages_;
  Json json_;
  std::string bulletin_path_;
  std::vector<Offset<firnbook::Bulletin>> bulletins_;
  std::vector<Offset<firnbook::Extension>> extensions_, file_extensions_;
  std::vector<std::uint8_t> seen_;
  bool found_list_ = false;
};

void Reader::say(const Path& path, std::uint32_t at, std::string_view what, std::string_view remedy) {
  if (messages_.list.size() >= Messages::kMost) {
    ++messages_.left_out;
    return;
  }
  Message message;
  append_path(message.path, path);
  message.what.assign(what);
  message.remedy.assign(remedy);
  const Json::LineColumn place = json_.line_column(at);
  message.line = place.line;
  message.column = place.column;
  messages_.list.push_back(std::move(message));
}

// With the value itself, when it is short enough to be of use.
void Reader::say_of_value(const Path& path, const JsonNode& node, std::string_view what,
                          std::string_view remedy) {
  constexpr std::size_t kLongest = 40;
  const std::string_view written = node.type == JsonType::string ? json_.string(node) : json_.raw(node);
  std::string told;
  if (!written.empty() && written.size() <= kLongest && node.type != JsonType::object &&
      node.type != JsonType::list) {
    told += '"';
    told.append(written);
    told += "\" ";
  } else {
    told += "this ";
  }
  told.append(what);
  say(path, node.begin, told, remedy);
}

void Reader::tell_of_text() {
  for (const JsonMend& mend : json_.mends()) {
    say({}, mend.at, mend.what, "the rest was read; ask whoever made the file to write it otherwise");
  }
  if (json_.broken() == nullptr) return;
  say({}, json_.broken_at(), json_.broken(),
      "what comes before was read; get the whole file again, since ratings or problems may be missing");
}

Failure Reader::nothing(std::string_view what, std::string_view remedy, std::uint32_t at) const {
  Failure failure = failure_of(FIRN_NO_BULLETIN, what, remedy);
  const Json::LineColumn place = json_.line_column(at);
  failure.line = place.line;
  failure.column = place.column;
  return failure;
}

bool Reader::object(const Object& of, Span<std::string_view> keys) {
  if (of.node->type != JsonType::object) {
    say_of_value(of.path, *of.node, "stands where the standard has an object in { }",
                 "it was left out; look at the file");
    return false;
  }
  check_members(of, keys);
  return true;
}

void Reader::check_members(const Object& of, Span<std::string_view> keys) {
  const std::size_t count = keys.count;
  seen_.assign(count, 0);
  for (std::int32_t i = of.node->first; i != kNoNode; i = json_.node(i).next) {
    const JsonNode& one = json_.node(i);
    const std::string_view key = json_.key(one);
    std::size_t known = 0;
    while (known < count && keys.first[known] != key) ++known;
    const Path path = {&of.path, key, -1};
    if (known == count) {
      if (!is_data_of_others(key)) {
        say(path, one.begin, "is no key of the standard (CAAML v6)",
            "it is kept as it stands and not read; another version of the standard may have it");
      }
      keep(path, one);
    } else if (++seen_[known] == 2) {
      say(path, one.begin, "stands here twice",
          "lists are read together, of anything else the last one counts");
    } else if (seen_[known] > 2) {
      seen_[known] = 2;
    }
  }
}

// The last one; a null is as good as none.
const JsonNode* Reader::member(const Object& of, std::string_view key) const {
  const JsonNode* found = nullptr;
  for (std::int32_t i = of.node->first; i != kNoNode; i = json_.node(i).next) {
    if (json_.key(json_.node(i)) == key) found = &json_.node(i);
  }
  return found == nullptr || found->type == JsonType::null ? nullptr : found;
}

std::string_view Reader::text(const Object& of, std::string_view key) {
  const JsonNode* node = member(of, key);
  if (node == nullptr) return {};
  if (node->type == JsonType::string) return json_.string(*node);
  const Path path = {&of.path, key, -1};
  say_of_value(path, *node, "stands where the standard has a text in quotes", "it is kept and not read");
  keep(path, *node);
  return {};
}

std::uint8_t Reader::choice(const Object& of, std::string_view key, Span<Word> words,
                            std::string_view* written) {
  const JsonNode* node = member(of, key);
  if (node == nullptr) return 0;
  const std::string_view said = node->type == JsonType::string ? json_.string(*node) : json_.raw(*node);
  const std::uint8_t value = node->type == JsonType::string ? value_of(words, said) : std::uint8_t{0};
  if (written != nullptr) *written = said;
  if (value == 0) {
    const Path path = {&of.path, key, -1};
    say_of_value(path, *node, "is none of the values that the standard has here",
                 "it is kept as it stands and counts as not known");
  }
  return value;
}

firnbook::Moment Reader::moment(const Object& of, std::string_view key) {
  firnbook::Moment out = {};
  const JsonNode* node = member(of, key);
  if (node == nullptr) return out;
  const Path path = {&of.path, key, -1};
  if (node->type != JsonType::string || !read_time(json_.string(*node), out)) {
    say_of_value(path, *node, "is no time of ISO 8601",
                 "it is kept and counts as not known; write it as 2026-11-28T16:00:00Z");
    keep(path, *node);
    return {};
  }
  if (out.offset_known() == 0) {
    say_of_value(path, *node, "does not say how far it is from UTC",
                 "end it with Z or an offset such as +01:00");
  }
  return out;
}

bool Reader::span(const Object& of, std::string_view key, firnbook::TimeSpan& out) {
  const JsonNode* node = member(of, key);
  const Path path = {&of.path, key, -1};
  if (node == nullptr || !object({node, path}, kSpanKeys)) return false;
  const firnbook::Moment begin = moment({node, path}, "startTime");
  const firnbook::Moment end = moment({node, path}, "endTime");
  out = {begin, end};
  return begin.precision() != firnbook::TimePrecision::none ||
         end.precision() != firnbook::TimePrecision::none;
}

void Reader::keep(const Path& path, const JsonNode& node) {
  std::string key;
  append_path(key, path);
  if (!bulletin_path_.empty() && starts_with(key, bulletin_path_)) key.erase(0, bulletin_path_.size() + 1);
  const std::string_view raw = json_.raw(node);
  const auto name = out_.CreateString(key);
  const auto bytes = out_.CreateVector(reinterpret_cast<const std::uint8_t*>(raw.data()), raw.size());
  firnbook::ExtensionBuilder table(out_);
  table.add_key(name);
  table.add_bytes(bytes);
  extensions_.push_back(table.Finish());
}

void Reader::not_understood(ScopeParts& parts, std::string_view key, std::string_view value) {
  const auto name = out_.CreateString(key.data(), key.size());
  const auto said = out_.CreateString(value.data(), value.size());
  firnbook::NotUnderstoodBuilder table(out_);
  table.add_key(name);
  table.add_value(said);
  parts.not_understood.push_back(table.Finish());
}

// All lists of that name: where a key stands twice, leaving one out could lose a rating.
Offset<flatbuffers::Vector<Offset<void>>> Reader::any_list(const Object& of, std::string_view key,
                                                           ReadOne one) {
  std::vector<Any> out;
  std::int32_t index = 0;
  for (std::int32_t i = of.node->first; i != kNoNode; i = json_.node(i).next) {
    const JsonNode& found = json_.node(i);
    if (json_.key(found) != key || found.type == JsonType::null) continue;
    const Path path = {&of.path, key, -1};
    if (found.type == JsonType::list) {
      for (std::int32_t k = found.first; k != kNoNode; k = json_.node(k).next) {
        const Any made = (this->*one)(json_.node(k), {&of.path, key, index++});
        if (!made.IsNull()) out.push_back(made);
      }
      continue;
    }
    // One object where the standard has a list of them says the same.
    if (found.type == JsonType::object && key != "tendency") {
      say(path, found.begin, "is one object where the standard has a list", "it was read as a list of one");
    } else if (found.type != JsonType::object) {
      say_of_value(path, found, "stands where the standard has a list in [ ]", "it is kept and not read");
      keep(path, found);
      continue;
    }
    const Any made = (this->*one)(found, path);
    if (!made.IsNull()) out.push_back(made);
  }
  return write_list(out, out_);
}

void Reader::bound(const Object& of, std::string_view key, bool& has, firnbook::ElevationLimit& limit,
                   ScopeParts& parts) {
  constexpr int kHighest = 9000;
  const JsonNode* node = member(of, key);
  if (node == nullptr) return;
  const Path path = {&of.path, key, -1};
  const bool is_text = node->type == JsonType::string;
  const std::string_view said = is_text ? json_.string(*node) : json_.raw(*node);
  if (is_text && (said == "treeline" || said == "Treeline")) {
    limit = {0, true};
    has = true;
    return;
  }
  int metres = 0;
  bool digits = !said.empty() && said.size() <= 4 && (is_text || node->type == JsonType::number);
  for (const char one : said.substr(0, 4)) {
    digits = digits && one >= '0' && one <= '9';
    metres = metres * 10 + (digits ? one - '0' : 0);
  }
  if (!digits || metres > kHighest) {
    say_of_value(path, *node, "is neither \"treeline\" nor metres such as \"2200\"",
                 "whether a place lies inside this elevation cannot be told");
    not_understood(parts, path.key, said);
    parts.unclear |= bit(ScopePart::elevation);
    return;
  }
  if (!is_text) {
    say_of_value(path, *node, "is a number where the standard has a text", "it was read as metres");
  } else if (metres % 100 != 0) {
    say_of_value(path, *node, "is finer than the hundred metres of the standard", "it was read as it stands");
  }
  limit = {static_cast<std::int16_t>(metres), false};
  has = true;
}

void Reader::elevation(const Object& of, ScopeParts& parts) {
  const JsonNode* node = member(of, "elevation");
  if (node == nullptr) return;
  const Path path = {&of.path, "elevation", -1};
  if (node->cut || !object({node, path}, kElevationKeys)) {
    parts.unclear |= bit(ScopePart::elevation);
    if (node->type != JsonType::object) {
      not_understood(parts, "elevation",
                     node->type == JsonType::string ? json_.string(*node) : json_.raw(*node));
      return;
    }
  }
  bound({node, path}, "lowerBound", parts.has_lower, parts.lower, parts);
  bound({node, path}, "upperBound", parts.has_upper, parts.upper, parts);
  const bool metres =
      parts.has_lower && parts.has_upper && !parts.lower.treeline() && !parts.upper.treeline();
  if (metres && parts.lower.metres() > parts.upper.metres()) {
    say(path, node->begin, "has a lower bound above its upper bound",
        "whether a place lies inside this elevation cannot be told");
    parts.unclear |= bit(ScopePart::elevation);
  }
}

void Reader::aspects(const Object& of, ScopeParts& parts) {
  const JsonNode* node = member(of, "aspects");
  if (node == nullptr) return;
  const Path path = {&of.path, "aspects", -1};
  const bool is_list = node->type == JsonType::list;
  if (node->cut) parts.unclear |= bit(ScopePart::aspects);
  if (!is_list && node->type != JsonType::string) {
    say_of_value(path, *node, "stands where the standard has a list of aspects",
                 "whether a place lies inside these aspects cannot be told");
    not_understood(parts, "aspects", json_.raw(*node));
    parts.unclear |= bit(ScopePart::aspects);
    return;
  }
  std::uint32_t seen = 0;
  std::int32_t index = 0;
  const std::int32_t only = static_cast<std::int32_t>(node - json_.nodes().data());
  for (std::int32_t i = is_list ? node->first : only; i != kNoNode;
       i = is_list ? json_.node(i).next : kNoNode) {
    const JsonNode& one = json_.node(i);
    const Path place = {&of.path, "aspects", is_list ? index++ : -1};
    const bool is_text = one.type == JsonType::string;
    const std::uint8_t point = is_text ? value_of(kAspects, json_.string(one)) : std::uint8_t{0};
    if (point == 0) {
      say_of_value(place, one, "is no aspect of the standard (N, NE, E, SE, S, SW, W, NW, n/a)",
                   "whether a place lies inside these aspects cannot be told");
      not_understood(parts, "aspects", is_text ? json_.string(one) : json_.raw(one));
      parts.unclear |= bit(ScopePart::aspects);
    } else if ((seen >> point & 1u) == 0) {
      parts.aspects.push_back(point);
    }
    seen |= 1u << point;
  }
}

void Reader::period(const Object& of, ScopeParts& parts) {
  std::string_view written;
  parts.period = choice(of, "validTimePeriod", kPeriods, &written);
  if (parts.period != 0 || written.empty()) return;
  not_understood(parts, "validTimePeriod", written);
  parts.unclear |= bit(ScopePart::period);
}

// A key of another version or a slip such as "aspect" may be a limit that nobody read.
void Reader::unknown_limits(const Object& of, ScopeParts& parts) {
  for (std::int32_t i = of.node->first; i != kNoNode; i = json_.node(i).next) {
    const std::string_view key = json_.key(json_.node(i));
    if (starts_with(key, "aspect") && key != "aspects") parts.unclear |= bit(ScopePart::aspects);
    if (starts_with(key, "elevation") && key != "elevation") parts.unclear |= bit(ScopePart::elevation);
    if (starts_with(key, "validTime") && key != "validTimePeriod") parts.unclear |= bit(ScopePart::period);
  }
  if (of.node->cut) parts.unclear = kAllParts;
}

void Reader::scope(const Object& of, ScopeParts& parts) {
  elevation(of, parts);
  aspects(of, parts);
  period(of, parts);
  unknown_limits(of, parts);
}

// 1 to 5, with halves where a service has them; 0 for anything else.
std::uint8_t Reader::size(const Object& of, ScopeParts& parts) {
  const JsonNode* node = member(of, "avalancheSize");
  if (node == nullptr) return 0;
  const Path path = {&of.path, "avalancheSize", -1};
  const bool is_text = node->type == JsonType::string;
  const std::string_view said = is_text ? json_.string(*node) : json_.raw(*node);
  const bool whole = !said.empty() && said[0] >= '1' && said[0] <= '5';
  const bool fraction = said.size() == 3 && said[1] == '.' && said[2] >= '0' && said[2] <= '9';
  const int tenths = !whole ? 0 : (said[0] - '0') * 10 + (fraction ? said[2] - '0' : 0);
  const bool readable = (node->type == JsonType::number || is_text) && (said.size() == 1 || fraction);
  if (!readable || tenths < 10 || tenths > 50) {
    say_of_value(path, *node, "is no avalanche size from 1 to 5", "it is kept and counts as not known");
    not_understood(parts, "avalancheSize", said);
    return 0;
  }
  if (is_text)
    say_of_value(path, *node, "is a text where the standard has a number", "it was read as a number");
  return static_cast<std::uint8_t>(tenths);
}

Offset<void> Reader::rating(const JsonNode& node, const Path& path) {
  const Object of = {&node, path};
  if (!object(of, kRatingKeys)) return {};
  ScopeParts parts;
  scope(of, parts);
  std::string_view written;
  const std::uint8_t level = choice(of, "mainValue", kLevels, &written);
  if (written.empty())
    say(path, node.begin, "is a rating without a mainValue", "its level counts as not known");
  const auto where = write_scope(parts, out_);
  const auto as_written = write_text(level == 0 ? written : std::string_view{}, out_);
  firnbook::DangerRatingBuilder table(out_);
  if (level != 0) table.add_level(static_cast<DangerLevel>(level));
  if (!where.IsNull()) table.add_scope(where);
  if (!as_written.IsNull()) table.add_level_as_written(as_written);
  return table.Finish().Union();
}

Offset<void> Reader::problem(const JsonNode& node, const Path& path) {
  const Object of = {&node, path};
  if (!object(of, kProblemKeys)) return {};
  ScopeParts parts;
  scope(of, parts);
  std::string_view type_written, stability_written, frequency_written, level_written;
  const std::uint8_t type = choice(of, "problemType", kTypes, &type_written);
  const std::uint8_t stability = choice(of, "snowpackStability", kStabilities, &stability_written);
  const std::uint8_t frequency = choice(of, "frequency", kFrequencies, &frequency_written);
  const std::uint8_t level = choice(of, "dangerRatingValue", kLevels, &level_written);
  if (stability == 0 && !stability_written.empty())
    not_understood(parts, "snowpackStability", stability_written);
  if (frequency == 0 && !frequency_written.empty()) not_understood(parts, "frequency", frequency_written);
  if (level == 0 && !level_written.empty()) not_understood(parts, "dangerRatingValue", level_written);
  const std::uint8_t tenths = size(of, parts);
  if (type_written.empty())
    say(path, node.begin, "is a problem without a problemType", "it counts as not known");
  const auto comment = write_text(text(of, "comment"), out_);
  const auto where = write_scope(parts, out_);
  const auto as_written = write_text(type == 0 ? type_written : std::string_view{}, out_);
  firnbook::ProblemBuilder table(out_);
  if (type != 0) table.add_type(static_cast<ProblemType>(type));
  if (!where.IsNull()) table.add_scope(where);
  if (stability != 0) table.add_stability(static_cast<SnowpackStability>(stability));
  if (frequency != 0) table.add_frequency(static_cast<Frequency>(frequency));
  if (tenths != 0) table.add_size_tenths(tenths);
  if (level != 0) table.add_level(static_cast<DangerLevel>(level));
  if (!comment.IsNull()) table.add_comment(comment);
  if (!as_written.IsNull()) table.add_type_as_written(as_written);
  return table.Finish().Union();
}

Offset<void> Reader::region(const JsonNode& node, const Path& path) {
  std::string_view id, name;
  if (node.type == JsonType::string) {
    say_of_value(path, node, "is a text where the standard has a region in { }",
                 "it was read as the region's id");
    id = json_.string(node);
  } else {
    const Object of = {&node, path};
    if (!object(of, kRegionKeys)) return {};
    id = text(of, "regionID");
    name = text(of, "name");
    if (id.empty())
      say(path, node.begin, "is a region without a regionID", "it can be found by its name only");
  }
  const auto id_text = write_text(id, out_);
  const auto name_text = write_text(name, out_);
  firnbook::RegionBuilder table(out_);
  if (!id_text.IsNull()) table.add_id(id_text);
  if (!name_text.IsNull()) table.add_name(name_text);
  return table.Finish().Union();
}

Offset<void> Reader::tendency(const JsonNode& node, const Path& path) {
  const Object of = {&node, path};
  if (!object(of, kTendencyKeys)) return {};
  const std::uint8_t type = choice(of, "tendencyType", kTendencies);
  firnbook::TimeSpan valid = {};
  const bool has_valid = span(of, "validTime", valid);
  const auto highlights = write_text(text(of, "highlights"), out_);
  const auto comment = write_text(text(of, "comment"), out_);
  firnbook::TendencyEntryBuilder table(out_);
  if (type != 0) table.add_tendency(static_cast<Tendency>(type));
  if (has_valid) table.add_valid(&valid);
  if (!highlights.IsNull()) table.add_highlights(highlights);
  if (!comment.IsNull()) table.add_comment(comment);
  return table.Finish().Union();
}

Offset<flatbuffers::Vector<Offset<firnbook::Prose>>> Reader::prose(const Object& of) {
  std::vector<Offset<firnbook::Prose>> pieces;
  for (const std::string_view key : kProseKeys) {
    const JsonNode* node = member(of, key);
    if (node == nullptr) continue;
    const Path path = {&of.path, key, -1};
    const bool is_text = node->type == JsonType::string;
    if (is_text) {
      say(path, node->begin, "is a text where the standard has an object", "it was read as the comment");
    } else if (!object({node, path}, kTextKeys)) {
      keep(path, *node);
      continue;
    }
    const auto name = out_.CreateString(key.data(), key.size());
    const auto highlights = write_text(is_text ? std::string_view{} : text({node, path}, "highlights"), out_);
    const auto comment = write_text(is_text ? json_.string(*node) : text({node, path}, "comment"), out_);
    firnbook::ProseBuilder table(out_);
    table.add_key(name);
    if (!highlights.IsNull()) table.add_highlights(highlights);
    if (!comment.IsNull()) table.add_comment(comment);
    pieces.push_back(table.Finish());
  }
  return write_list(pieces, out_);
}

// The name of whoever issued it. All that stands there is kept beside it.
std::string_view Reader::source(const Object& of) {
  const JsonNode* node = member(of, "source");
  if (node == nullptr) return {};
  const Path path = {&of.path, "source", -1};
  if (node->type == JsonType::string) {
    say(path, node->begin, "is a text where the standard has an object",
        "it was read as the name of the source");
    return json_.string(*node);
  }
  keep(path, *node);
  if (node->type != JsonType::object) {
    say_of_value(path, *node, "stands where the standard has an object in { }", "it is kept and not read");
    return {};
  }
  for (const std::string_view key : {std::string_view("provider"), std::string_view("person")}) {
    const JsonNode* who = member({node, path}, key);
    if (who == nullptr || who->type != JsonType::object) continue;
    const Path place = {&path, key, -1};
    const std::string_view name = text({who, place}, "name");
    if (!name.empty()) return name;
  }
  return {};
}

Offset<firnbook::Bulletin> Reader::bulletin(const JsonNode& node, const Path& path) {
  const Object of = {&node, path};
  bulletin_path_.clear();
  append_path(bulletin_path_, path);
  extensions_.clear();
  if (!object(of, kBulletinKeys)) return {};
  const auto regions = list<firnbook::Region>(of, "regions", &Reader::region);
  const auto ratings = list<firnbook::DangerRating>(of, "dangerRatings", &Reader::rating);
  const auto problems = list<firnbook::Problem>(of, "avalancheProblems", &Reader::problem);
  const auto tendencies = list<firnbook::TendencyEntry>(of, "tendency", &Reader::tendency);
  const auto pieces = prose(of);
  const auto id = write_text(text(of, "bulletinID"), out_);
  const auto language = write_text(text(of, "lang"), out_);
  const auto from = write_text(source(of), out_);
  const auto highlights = write_text(text(of, "highlights"), out_);
  const firnbook::Moment published = moment(of, "publicationTime");
  const firnbook::Moment next_update = moment(of, "nextUpdate");
  firnbook::TimeSpan valid = {};
  const bool has_valid = span(of, "validTime", valid);
  const JsonNode* unscheduled = member(of, "unscheduled");
  if (unscheduled != nullptr && unscheduled->type != JsonType::boolean) {
    say_of_value({&path, "unscheduled", -1}, *unscheduled, "is neither true nor false", "it was left out");
    unscheduled = nullptr;
  }
  if (regions.IsNull()) {
    say(path, node.begin, "names no region", "whoever uses it must know which region it is for");
  }
  if (ratings.IsNull()) say(path, node.begin, "holds no danger rating", "look at the bulletin itself");
  if (!has_valid) say(path, node.begin, "does not say when it is valid", "look at the bulletin itself");
  const auto extensions = write_list(extensions_, out_);
  firnbook::BulletinBuilder table(out_);
  table.add_schema_minor(pit::kSchemaMinor);
  if (!id.IsNull()) table.add_id(id);
  if (!language.IsNull()) table.add_language(language);
  if (published.precision() != firnbook::TimePrecision::none) table.add_published(&published);
  if (has_valid) table.add_valid(&valid);
  if (next_update.precision() != firnbook::TimePrecision::none) table.add_next_update(&next_update);
  if (unscheduled != nullptr) table.add_unscheduled(unscheduled->is_true);
  if (!from.IsNull()) table.add_source(from);
  if (!regions.IsNull()) table.add_regions(regions);
  if (!ratings.IsNull()) table.add_ratings(ratings);
  if (!problems.IsNull()) table.add_problems(problems);
  if (!highlights.IsNull()) table.add_highlights(highlights);
  if (!pieces.IsNull()) table.add_prose(pieces);
  if (!tendencies.IsNull()) table.add_tendency(tendencies);
  if (!extensions.IsNull()) table.add_extensions(extensions);
  if (node.cut) table.add_incomplete(true);
  return table.Finish();
}

void Reader::take_bulletin(const JsonNode& node, const Path& path) {
  const Offset<firnbook::Bulletin> made = bulletin(node, path);
  if (!made.IsNull()) bulletins_.push_back(made);
}

void Reader::bulletins(const JsonNode& list, const Path& path) {
  found_list_ = true;
  std::int32_t index = 0;
  for (std::int32_t i = list.first; i != kNoNode; i = json_.node(i).next) {
    take_bulletin(json_.node(i), {path.parent, path.key, index++});
  }
}

void Reader::root(const JsonNode& node) {
  const Path top;
  if (node.type == JsonType::list) return bulletins(node, top);
  if (node.type != JsonType::object) return;
  const JsonNode* many = member({&node, top}, "bulletins");
  if (many == nullptr) {
    for (const std::string_view key :
         {std::string_view("dangerRatings"), std::string_view("avalancheProblems"),
          std::string_view("bulletinID"), std::string_view("regions")}) {
      if (member({&node, top}, key) != nullptr) return take_bulletin(node, top);
    }
    return;
  }
  const Path path = {nullptr, "bulletins", -1};
  if (many->type == JsonType::list) {
    bulletins(*many, path);
  } else if (many->type == JsonType::object) {
    say(path, many->begin, "is one object where the standard has a list", "it was read as a list of one");
    take_bulletin(*many, path);
  }
  bulletin_path_.clear();
  extensions_.clear();
  check_members({&node, top}, kRootKeys);
  file_extensions_.swap(extensions_);
}

Done Reader::read(std::string_view text) {
  constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";
  if (starts_with(text, kByteOrderMark)) text.remove_prefix(kByteOrderMark.size());
  if (starts_with(text, "\xFE\xFF") || starts_with(text, "\xFF\xFE") ||
      (text.size() > 1 && text[1] == '\0')) {
    return failure_of(FIRN_BAD_UTF8, "this is UTF-16 or UTF-32", "save the bulletin as UTF-8");
  }
  const bool whole = json_.read(text);
  const std::size_t first = text.find_first_not_of(" \t\r\n");
  if (first != std::string_view::npos && text[first] == '<') {
    return nothing("this is XML or a web page, not JSON",
                   "ask the service for its bulletin in the JSON of CAAML v6",
                   static_cast<std::uint32_t>(first));
  }
  out_.Clear();
  tell_of_text();
  if (!json_.empty()) root(json_.node(0));
  const bool empty_on_purpose = whole && found_list_ && json_.node(0).type == JsonType::object;
  if (bulletins_.empty() && !whole) {
    return nothing(json_.broken(), "get the whole file again", json_.broken_at());
  }
  if (bulletins_.empty() && !empty_on_purpose) {
    return nothing("there is no bulletin of CAAML v6 in this text",
                   "ask the service for its bulletin in the JSON of CAAML v6", 0);
  }
  if (bulletins_.empty()) say({}, 0, "holds no bulletin", "it is taken to say that none is issued");
  const auto all = out_.CreateVector(bulletins_.data(), bulletins_.size());
  const auto extensions = write_list(file_extensions_, out_);
  firnbook::BulletinsBuilder table(out_);
  table.add_schema_minor(pit::kSchemaMinor);
  table.add_bulletins(all);
  if (!extensions.IsNull()) table.add_extensions(extensions);
  if (!whole) table.add_incomplete(true);
  const auto root_table = table.Finish();
  firnbook::FinishBulletinsBuffer(out_, root_table);
  return done();
}

}  // namespace

Done read_json(std::string_view text, flatbuffers::FlatBufferBuilder& builder, Messages& messages) {
  messages.list.clear();
  messages.left_out = 0;
  return Reader(builder, messages).read(text);
}

}  // namespace firn::bulletin
