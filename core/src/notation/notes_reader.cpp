#include <algorithm>
#include <array>
#include <utility>

#include "notation/layer_line.h"
#include "notation/note_tables.h"
#include "notation/notes.h"
#include "notation/profile_lines.h"
#include "notation/test_line.h"
#include "support/text.h"

namespace firn::notation {
namespace {

using firnbook::PitT;
using firnbook::Thing;

// Answers and kept lines beyond these help nobody, and what they hold must not grow without bound (ours).
constexpr std::size_t kMostFailures = 1000;
constexpr std::size_t kMostUnread = 10000;
constexpr std::size_t kFieldsOfTable = 64;

class NotesReader;
using ReadLine = bool (NotesReader::*)(Line& line);

// A word that begins a line, in small letters.
struct Keyword {
  std::string_view word;
  ReadLine read;
};

class NotesReader {
 public:
  explicit NotesReader(const NotesOptions& options) : options_(options), pit_(std::make_unique<PitT>()) {}

  Result<NotesRead> read(std::string_view text, std::vector<Failure>& others);

  bool observers(Line& line);
  bool contact(Line& line);
  bool chosen(Line& line);
  bool interest(Line& line) { return single(line, interest_line()); }
  bool probe(Line& line);
  bool depths_from(Line& line);
  bool heights_from(Line& line);
  bool measured(Line& line);
  bool temperatures(Line& line) { return read_temperatures(line, frame_, *pit_); }
  // Several on a line, blanks between what is said of one; the answer must be among it.
  template <auto List, const ItemTable* Items, std::uint8_t Answer>
  bool answered(Line& line) {
    std::decay_t<decltype(*pit_.*List)> list;
    do {
      list.push_back(std::make_unique<typename decltype(list)::value_type::element_type>());
      if (!answered_one(line, *Items, list.back().get(), Answer)) return false;
    } while (line.scan.accept(','));
    for (auto& one : list) (*pit_.*List).push_back(std::move(one));
    return true;
  }
  template <auto List, const ItemTable* Items>
  bool list_entry(Line& line) {
    auto entry = std::make_unique<typename std::decay_t<decltype((*pit_.*List)[0])>::element_type>();
    if (!read_items(line, *Items, entry.get())) return false;
    (*pit_.*List).push_back(std::move(entry));
    return true;
  }
  template <Profile P>
  bool profile(Line& line) {
    return read_profile(line, P, frame_, *pit_);
  }
  template <SingleLines (*Lines)(), std::size_t Index>
  bool single_of(Line& line) {
    return single(line, Lines().lines[Index]);
  }

 private:
  bool answered_one(Line& line, const ItemTable& items, void* table, std::uint8_t answer);
  void one_line(std::string_view text);
  bool content(Line& line);
  bool single(Line& line, const SingleLine& kind);
  bool layer(Line& line);
  bool test(Line& line);
  bool person(Line& line, std::vector<std::unique_ptr<firnbook::ObserverT>>& people);
  bool unknown_keyword(Line& line, std::string_view word);
  void keep_or_refuse(Line& line, std::size_t remarks_before);
  bool set_frame(Line& line, bool heights);

  const NotesOptions& options_;
  std::unique_ptr<PitT> pit_;
  // Single lines are read here first, so that a line that fails or contradicts changes nothing.
  PitT scratch_;
  Frame frame_;
  // Which line gave each field of the tables that a pit has once.
  std::array<std::array<std::uint32_t, kFieldsOfTable>, static_cast<std::size_t>(Thing::MAX) + 1> lines_{};
  std::vector<Failure> remarks_;
  std::vector<Failure> failures_;
  std::uint32_t number_ = 0;
};

// --- keywords --------------------------------------------------------------------------------------------

// Sorted by word, for the search.
constexpr Keyword kKeywords[] = {
    {"absent", &NotesReader::list_entry<&PitT::absences, &items::kAbsence>},
    {"application", &NotesReader::single_of<tail_lines, kApplicationLine>},
    {"assessment", &NotesReader::single_of<tail_lines, kAssessmentLine>},
    {"backfilled", &NotesReader::single_of<tail_lines, kBackfilledLine>},
    {"bulletin", &NotesReader::single_of<tail_lines, kBulletinLine>},
    {"chosen", &NotesReader::chosen},
    {"contact", &NotesReader::contact},
    {"density", &NotesReader::profile<Profile::density>},
    {"depth", &NotesReader::single_of<body_lines, kDepthLine>},
    {"depths", &NotesReader::depths_from},
    {"edited", &NotesReader::single_of<head_lines, kEditedLine>},
    {"edits", &NotesReader::single_of<tail_lines, kEditsLine>},
    {"extension", &NotesReader::list_entry<&PitT::extensions, &items::kExtension>},
    {"ground", &NotesReader::single_of<body_lines, kGroundLine>},
    {"heights", &NotesReader::heights_from},
    {"hin", &NotesReader::single_of<body_lines, kHinLine>},
    {"hn24", &NotesReader::single_of<body_lines, kHn24Line>},
    {"hs", &NotesReader::single_of<body_lines, kHsLine>},
    {"hst", &NotesReader::single_of<body_lines, kHstLine>},
    {"id", &NotesReader::single_of<head_lines, kIdLine>},
    {"impurity", &NotesReader::profile<Profile::impurity>},
    {"interest", &NotesReader::interest},
    {"lwc", &NotesReader::profile<Profile::liquid_water>},
    {"measured", &NotesReader::measured},
    {"observers", &NotesReader::observers},
    {"operation", &NotesReader::single_of<head_lines, kOperationLine>},
    {"photo", &NotesReader::list_entry<&PitT::photos, &items::kPhoto>},
    {"pit", &NotesReader::single_of<head_lines, kPitLine>},
    {"practice", &NotesReader::single_of<tail_lines, kPracticeLine>},
    {"probe", &NotesReader::probe},
    {"purpose", &NotesReader::single_of<head_lines, kPurposeLine>},
    {"remark", &NotesReader::list_entry<&PitT::remarks, &items::kRemark>},
    {"reported", &NotesReader::single_of<head_lines, kReportedLine>},
    {"resistance", &NotesReader::profile<Profile::hardness>},
    {"sharing", &NotesReader::single_of<tail_lines, kSharingLine>},
    {"sign", &NotesReader::answered<&PitT::signs, &items::kSign, items::kSignAnswer>},
    {"site", &NotesReader::single_of<site_lines, 0>},
    {"slide", &NotesReader::list_entry<&PitT::slides, &items::kSlide>},
    {"ssa", &NotesReader::profile<Profile::surface_area>},
    {"step", &NotesReader::answered<&PitT::steps, &items::kStep, items::kStepDone>},
    {"strength", &NotesReader::profile<Profile::strength>},
    {"surface", &NotesReader::single_of<body_lines, kSurfaceLine>},
    {"temp", &NotesReader::temperatures},
    {"time", &NotesReader::single_of<head_lines, kTimeLine>},
    {"unread", &NotesReader::list_entry<&PitT::unread, &items::kUnread>},
    {"weather", &NotesReader::single_of<body_lines, kWeatherLine>},
};
constexpr std::size_t kLongestKeyword = 11;

constexpr bool is_sorted_list() {
  for (std::size_t i = 1; i < sizeof kKeywords / sizeof kKeywords[0]; ++i) {
    if (!(kKeywords[i - 1].word < kKeywords[i].word)) return false;
  }
  return true;
}
static_assert(is_sorted_list(), "the search needs the keywords in order");

struct SmallWord {
  char letters[kLongestKeyword + 1];
  std::size_t size;
  std::string_view view() const { return {letters, size}; }
};

char small(char c) {
  return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

// Longer words are cut to one letter more than any keyword has, so that they match none.
SmallWord small_word(std::string_view word) {
  SmallWord out{};
  out.size = std::min(word.size(), sizeof out.letters);
  for (std::size_t i = 0; i < out.size; ++i) out.letters[i] = small(word[i]);
  return out;
}

const Keyword* find_keyword(std::string_view word) {
  const auto* found =
      std::lower_bound(std::begin(kKeywords), std::end(kKeywords), word,
                       [](const Keyword& keyword, std::string_view w) { return keyword.word < w; });
  return found != std::end(kKeywords) && found->word == word ? found : nullptr;
}

// Letters to change, insert or leave out (Levenshtein's distance); both words are short.
std::size_t distance(std::string_view a, std::string_view b) {
  std::array<std::size_t, kLongestKeyword + 2> row{};
  for (std::size_t j = 0; j <= b.size(); ++j) row[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    std::size_t diagonal = row[0];
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t change = diagonal + (a[i - 1] == b[j - 1] ? 0 : 1);
      diagonal = row[j];
      row[j] = std::min({change, row[j] + 1, row[j - 1] + 1});
    }
  }
  return row[b.size()];
}

std::string_view nearest_keyword(std::string_view word) {
  std::size_t nearest = kLongestKeyword;
  std::string_view found;
  for (const Keyword& keyword : kKeywords) {
    const std::size_t away = distance(word, keyword.word);
    if (away >= nearest) continue;
    nearest = away;
    found = keyword.word;
  }
  return found;
}

bool NotesReader::unknown_keyword(Line& line, std::string_view word) {
  std::string remedy = "did you mean \"";
  remedy += nearest_keyword(small_word(word).view());
  remedy += "\"? A line begins with a keyword, a layer's depths (0-16) or a test (CT12)";
  return line.expected("a keyword, a layer or a test", remedy);
}

// --- single lines ----------------------------------------------------------------------------------------

bool NotesReader::single(Line& line, const SingleLine& kind) {
  void* scratch = kind.table(scratch_);
  auto& given = lines_[static_cast<std::size_t>(kind.items->thing)];
  if (!read_items(line, *kind.items, scratch)) {
    // Empties the scratch table; nothing reaches the pit.
    Line unused(line.scan.line(), line.number, nullptr);
    PitT nowhere;
    std::array<std::uint32_t, kFieldsOfTable> no_lines{};
    merge_items(unused, *kind.items, scratch, kind.table(nowhere), no_lines.data());
    return false;
  }
  return merge_items(line, *kind.items, scratch, kind.table(*pit_), given.data());
}

bool NotesReader::chosen(Line& line) {
  // Words in quotes are only words.
  const bool loose = !line.scan.at_quote();
  if (!single(line, chosen_line())) return false;
  if (!loose || pit_->choice == nullptr) return true;
  firnbook::ChoiceT read;
  read_choice(pit_->choice->words, read);
  auto& given = lines_[static_cast<std::size_t>(Thing::choice)];
  if (merge_items(line, items::kInterest, &read, pit_->choice.get(), given.data())) return true;
  // The words contradict what another line says of the terrain of interest.
  if (given[0] == line.number) {
    pit_->choice->words.clear();
    given[0] = 0;
  }
  return false;
}

bool NotesReader::probe(Line& line) {
  std::vector<std::int32_t> strikes;
  Standing standing;
  if (!take_missing(line, standing)) {
    do {
      std::int32_t strike = 0;
      if (!read_length(line, "a depth of snow in cm", LengthUnit::cm, strike)) return false;
      strikes.push_back(strike);
      take_doubt(line, standing);
      line.scan.accept(',');
    } while (!line.scan.at_end());
  }
  if (!line.scan.at_end()) return line.expected("the end of the line");
  if (pit_->site == nullptr) pit_->site = std::make_unique<firnbook::SiteT>();
  auto& probes = pit_->site->probes_10um;
  probes.insert(probes.end(), strikes.begin(), strikes.end());
  if (standing.unreliable) {
    pit_->site->unreliable |= std::uint64_t{1} << field_id(firnbook::Site::VT_PROBES_10UM);
  }
  return true;
}

// --- frame -----------------------------------------------------------------------------------------------

bool NotesReader::set_frame(Line& line, bool heights) {
  std::uint8_t datum = 0;
  constexpr std::string_view kWhat = "\"from surface\", \"from ground\" or \"from unknown\"";
  if (!take_words(line, "from")) return line.expected(kWhat);
  if (!read_code(line, code_table<firnbook::Datum>(), kWhat, datum)) return false;
  if (!line.scan.at_end()) return line.expected("the end of the line");
  const auto value = static_cast<firnbook::Datum>(datum);
  // Depths grow downwards and heights upwards: the other word would turn the snowpack over.
  if ((value == firnbook::Datum::ground) != heights && value != firnbook::Datum::unknown) {
    return line.fail(line.scan.failure_at(0, "expected heights from ground, or depths from surface",
                                          "say from where the numbers count"));
  }
  frame_.datum = value;
  return true;
}

bool NotesReader::depths_from(Line& line) {
  return set_frame(line, false);
}

bool NotesReader::heights_from(Line& line) {
  return set_frame(line, true);
}

bool NotesReader::measured(Line& line) {
  std::uint8_t direction = 0;
  if (!read_code(line, direction_codes(), "vertical, slope-normal or unknown", direction)) {
    return false;
  }
  if (!line.scan.at_end()) return line.expected("the end of the line");
  frame_.direction = static_cast<firnbook::Direction>(direction);
  return true;
}

// --- lists -----------------------------------------------------------------------------------------------

bool NotesReader::person(Line& line, std::vector<std::unique_ptr<firnbook::ObserverT>>& people) {
  auto observer = std::make_unique<firnbook::ObserverT>();
  constexpr std::string_view kWhat = "a name or initials";
  if (line.scan.at_quote()) {
    if (!read_quoted(line, kWhat, observer->name)) return false;
  } else if (line.scan.next() == '~') {
    line.scan.accept('~');
  } else {
    const std::string_view rest = line.scan.rest();
    std::string_view name = rest.substr(0, rest.find_first_of(",(\""));
    while (!name.empty() && (name.back() == ' ' || name.back() == '\t')) name.remove_suffix(1);
    if (name.empty()) return line.expected(kWhat);
    observer->name.assign(name);
    std::replace(observer->name.begin(), observer->name.end(), '\t', ' ');
    line.scan.seek(line.scan.position() + name.size());
  }
  if (line.scan.accept('(')) {
    if (!read_items(line, items::kPerson, observer.get(), ')')) return false;
    line.scan.accept(')');
  }
  people.push_back(std::move(observer));
  return true;
}

bool NotesReader::observers(Line& line) {
  std::vector<std::unique_ptr<firnbook::ObserverT>> people;
  do {
    if (!person(line, people)) return false;
  } while (line.scan.accept(','));
  if (!line.scan.at_end()) return line.expected("a comma between two observers, or the end of the line");
  for (auto& observer : people) pit_->observers.push_back(std::move(observer));
  return true;
}

bool NotesReader::contact(Line& line) {
  std::vector<std::unique_ptr<firnbook::ObserverT>> people;
  if (!person(line, people)) return false;
  if (!line.scan.at_end()) return line.expected("the end of the line");
  if (pit_->operation == nullptr) pit_->operation = std::make_unique<firnbook::OperationT>();
  pit_->operation->contacts.push_back(std::move(people.front()));
  return true;
}

bool NotesReader::answered_one(Line& line, const ItemTable& items, void* table, std::uint8_t answer) {
  std::uint64_t seen = 0;
  do {
    if (!read_item(line, items, table, seen)) return false;
  } while (!line.scan.at_end() && line.scan.next() != ',');
  // "whumpf" alone could mean either.
  return (seen >> answer & 1) != 0 || line.expected(items.items[answer].what);
}

bool NotesReader::layer(Line& line) {
  auto one = std::make_unique<firnbook::LayerT>();
  if (!read_layer(line, frame_, *one)) return false;
  pit_->layers.push_back(std::move(one));
  return true;
}

// Notes say once how they were measured; a test line need not repeat it.
void measure_along(firnbook::Depth& depth, firnbook::Direction direction) {
  if (depth.direction() != firnbook::Direction::unknown) return;
  depth = firnbook::Depth(depth.value_10um(), depth.datum(), direction);
}

bool NotesReader::test(Line& line) {
  const std::size_t start = line.scan.position();
  const std::size_t remarks_before = remarks_.size();
  auto tests = parse_test(line.scan.rest(), remarks_);
  const std::uint32_t columns_before = line.scan.column_of(start) - 1;
  for (std::size_t i = remarks_before; i < remarks_.size(); ++i) {
    remarks_[i].line = line.number;
    remarks_[i].column += columns_before;
  }
  if (!tests) {
    Failure failure = tests.failure();
    failure.column += columns_before;
    return line.fail(std::move(failure));
  }
  for (firnbook::StabilityTestT& one : *tests) {
    for (auto& fracture : one.fractures) {
      if (fracture->depth != nullptr) measure_along(*fracture->depth, frame_.direction);
    }
    for (firnbook::Depth& depth : one.unbroken) measure_along(depth, frame_.direction);
    pit_->tests.push_back(std::make_unique<firnbook::StabilityTestT>(std::move(one)));
  }
  return true;
}

// --- lines -----------------------------------------------------------------------------------------------

bool NotesReader::content(Line& line) {
  const char first = line.scan.next();
  const std::string_view rest = line.scan.rest();
  const bool negative = first == '-' && rest.size() > 1 && rest[1] >= '0' && rest[1] <= '9';
  if ((first >= '0' && first <= '9') || first == '~' || negative) return layer(line);
  std::size_t length = 0;
  while (length < rest.size() && ((small(rest[length]) >= 'a' && small(rest[length]) <= 'z') ||
                                  (rest[length] >= '0' && rest[length] <= '9'))) {
    ++length;
  }
  const std::string_view word = rest.substr(0, length);
  const bool ends =
      length == rest.size() || rest[length] == ' ' || rest[length] == '\t' || rest[length] == ':';
  const Keyword* keyword = ends ? find_keyword(small_word(word).view()) : nullptr;
  if (keyword == nullptr) return looks_like_test(rest) ? test(line) : unknown_keyword(line, word);
  line.scan.seek(line.scan.position() + length);
  line.scan.accept(':');
  return (this->*keyword->read)(line);
}

void NotesReader::keep_or_refuse(Line& line, std::size_t remarks_before) {
  Failure failure = std::move(line.failure);
  failure.line = line.number;
  remarks_.resize(remarks_before);
  const bool keeps =
      options_.keep_unread && failure.status != FIRN_BAD_UTF8 && pit_->unread.size() < kMostUnread;
  if (!keeps) {
    failures_.push_back(std::move(failure));
    return;
  }
  auto unread = std::make_unique<firnbook::UnreadT>();
  unread->line = line.number;
  unread->text.assign(line.scan.line());
  unread->expected = failure.what;
  pit_->unread.push_back(std::move(unread));
  remarks_.push_back(std::move(failure));
}

void NotesReader::one_line(std::string_view text) {
  ++number_;
  if (!text.empty() && text.back() == '\r') text.remove_suffix(1);
  Line line(text, number_, &remarks_);
  const std::size_t remarks_before = remarks_.size();
  bool read = true;
  if (Done readable = check_readable(text); !readable) {
    read = line.fail(readable.failure());
  } else if (!line.scan.at_end() && line.scan.next() != '#') {
    read = content(line);
  }
  if (!read) keep_or_refuse(line, remarks_before);
}

Result<NotesRead> NotesReader::read(std::string_view text, std::vector<Failure>& others) {
  if (text.size() > options_.max_bytes) {
    Failure failure;
    failure.status = FIRN_TOO_LARGE;
    failure.what = "the notes are longer than the limit for notes";
    failure.remedy = "split the text into the notes of single pits, or raise the limit";
    return failure;
  }
  constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";
  if (text.substr(0, kByteOrderMark.size()) == kByteOrderMark) text.remove_prefix(kByteOrderMark.size());
  // Behind so many failures no line could be answered any more.
  while (!text.empty() && failures_.size() < kMostFailures) {
    const std::size_t end = text.find('\n');
    one_line(text.substr(0, end));
    text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
  }
  if (failures_.empty()) {
    NotesRead notes;
    notes.pit = std::move(pit_);
    notes.remarks = std::move(remarks_);
    return notes;
  }
  for (std::size_t i = 1; i < failures_.size(); ++i) others.push_back(std::move(failures_[i]));
  return std::move(failures_.front());
}

}  // namespace

Result<NotesRead> read_notes(std::string_view text, const NotesOptions& options,
                             std::vector<Failure>& others) {
  return NotesReader(options).read(text, others);
}

}  // namespace firn::notation
