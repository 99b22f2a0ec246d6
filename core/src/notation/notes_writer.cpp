#include <memory>
#include <utility>

#include "notation/layer_line.h"
#include "notation/note_tables.h"
#include "notation/notes.h"
#include "notation/profile_lines.h"
#include "notation/test_line.h"
#include "support/form.h"
#include "support/text.h"

namespace firn::notation {
namespace {

using firnbook::Direction;
using firnbook::Pit;
using firnbook::PitT;

// The minor version of pit.fbs that these lines were written for; a test compares it with the schema's.
constexpr std::uint16_t kKnownMinor = 1;

class NotesWriter {
 public:
  NotesWriter(std::string& out, const PitT& pit) : out_(out), pit_(pit) {}

  void write();

 private:
  void singles(SingleLines lines);
  void single(const SingleLine& line);
  void person(const firnbook::ObserverT& person);
  void observers();
  void contacts();
  void choice();
  void probe();
  void layers();
  void tests();
  void signs();
  void steps();
  template <class T>
  void list(std::string_view keyword, const ItemTable& items, const std::vector<std::unique_ptr<T>>& entries);

  std::string& out_;
  const PitT& pit_;
  Frame frame_;
};

void NotesWriter::single(const SingleLine& line) {
  const void* table = line.present(pit_);
  if (table == nullptr || !has_any(*line.items, table)) return;
  out_ += line.keyword;
  out_ += ' ';
  append_items(out_, *line.items, table);
  out_ += '\n';
}

void NotesWriter::singles(SingleLines lines) {
  for (const SingleLine& line : lines) single(line);
}

// A name that reads back without quotes.
bool is_plain_name(std::string_view name) {
  if (name.empty() || name.front() == ' ' || name.back() == ' ' || name.front() == '~') return false;
  for (const char c : name) {
    const auto byte = static_cast<unsigned char>(c);
    if (byte < 0x20 || byte >= 0x7F || c == ',' || c == '(' || c == '"') return false;
  }
  return true;
}

void NotesWriter::person(const firnbook::ObserverT& person) {
  if (person.name.empty()) {
    out_ += '~';
  } else if (is_plain_name(person.name)) {
    out_ += person.name;
  } else {
    append_quoted(out_, person.name);
  }
  if (!has_any(items::kPerson, &person)) return;
  out_ += " (";
  append_items(out_, items::kPerson, &person);
  out_ += ')';
}

void NotesWriter::observers() {
  bool any = false;
  for (const auto& observer : pit_.observers) {
    out_ += any ? ", " : "observers ";
    person(*observer);
    any = true;
  }
  if (any) out_ += '\n';
}

void NotesWriter::contacts() {
  if (pit_.operation == nullptr) return;
  for (const auto& contact : pit_.operation->contacts) {
    out_ += "contact ";
    person(*contact);
    out_ += '\n';
  }
}

// A mark of doubt needs a field of its own to stand behind.
bool says_the_same(const firnbook::ChoiceT& a, const firnbook::ChoiceT& b) {
  return a.unreliable == (b.unreliable & fields_of(items::kInterest)) && a.aspect == b.aspect &&
         a.elevation == b.elevation && a.wind_loading == b.wind_loading && a.incline == b.incline &&
         a.terrain_of_interest == b.terrain_of_interest;
}

// Plain words where they say all that the fields say; otherwise words in quotes, and the fields.
void NotesWriter::choice() {
  if (pit_.choice == nullptr) return;
  const firnbook::ChoiceT& choice = *pit_.choice;
  firnbook::ChoiceT read;
  read_choice(choice.words, read);
  firnbook::ChoiceT rest(choice);
  std::string words;
  append_items(words, items::kChosen, &choice);
  const bool quoted = !words.empty() && words.front() == '"';
  if (has_any(items::kChosen, &choice)) {
    out_ += "chosen ";
    if (!quoted && !choice.words.empty() && !says_the_same(read, choice)) {
      append_quoted(out_, choice.words);
    } else {
      out_ += words;
      if (!quoted && !choice.words.empty()) {
        rest.terrain_of_interest.clear();
        rest.aspect = rest.elevation = rest.wind_loading = rest.incline = flatbuffers::nullopt;
      }
    }
    out_ += '\n';
  }
  if (has_any(items::kInterest, &rest)) {
    out_ += "interest ";
    append_items(out_, items::kInterest, &rest);
    out_ += '\n';
  }
}

void NotesWriter::probe() {
  if (pit_.site == nullptr) return;
  const bool marked = (pit_.site->unreliable >> field_id(firnbook::Site::VT_PROBES_10UM) & 1) != 0;
  if (pit_.site->probes_10um.empty() && !marked) return;
  out_ += "probe";
  if (pit_.site->probes_10um.empty()) out_ += " ~";
  for (const std::int32_t strike : pit_.site->probes_10um) {
    out_ += ' ';
    append_cm(out_, strike);
  }
  if (marked) out_ += '?';
  out_ += '\n';
}

void NotesWriter::layers() {
  for (const auto& layer : pit_.layers) {
    append_frame(out_, frame_, frame_of_span(frame_, *layer));
    append_layer(out_, frame_, *layer);
    out_ += '\n';
  }
}

// Directions that are those of the frame go without saying; an unknown one needs a frame that says so.
void NotesWriter::tests() {
  for (const auto& test : pit_.tests) {
    const auto say_unknown = [this](const firnbook::Depth& depth) {
      if (depth.direction() == Direction::unknown) {
        append_frame(out_, frame_, {frame_.datum, Direction::unknown});
      }
    };
    for (const auto& fracture : test->fractures) {
      if (fracture->depth != nullptr) say_unknown(*fracture->depth);
    }
    for (const firnbook::Depth& depth : test->unbroken) say_unknown(depth);
    append_test(out_, *test, frame_.direction);
    out_ += '\n';
  }
}

void NotesWriter::signs() {
  bool open = false;
  for (const auto& sign : pit_.signs) {
    out_ += open ? ", " : "sign ";
    open = true;
    const bool any = append_items(out_, items::kSign, sign.get(), " ");
    const bool answered = sign->answer || (sign->unreliable >> items::kSignAnswer & 1) != 0;
    if (!answered) out_ += any ? " answer ~" : "answer ~";
  }
  if (open) out_ += '\n';
}

void NotesWriter::steps() {
  bool open = false;
  for (const auto& step : pit_.steps) {
    out_ += open ? ", " : "step ";
    open = true;
    const bool any = append_items(out_, items::kStep, step.get(), " ");
    if (!step->done) out_ += any ? " done ~" : "done ~";
  }
  if (open) out_ += '\n';
}

template <class T>
void NotesWriter::list(std::string_view keyword, const ItemTable& items,
                       const std::vector<std::unique_ptr<T>>& entries) {
  for (const auto& entry : entries) {
    out_ += keyword;
    out_ += ' ';
    // An entry that holds nothing is still an entry.
    if (!append_items(out_, items, entry.get())) {
      out_ += items.items[0].key;
      out_ += " ~";
    }
    out_ += '\n';
  }
}

void NotesWriter::write() {
  singles(head_lines());
  contacts();
  observers();
  singles(site_lines());
  choice();
  probe();
  singles(body_lines());
  layers();
  append_temperatures(out_, frame_, pit_);
  append_profiles(out_, frame_, pit_);
  tests();
  signs();
  list("slide", items::kSlide, pit_.slides);
  steps();
  singles(tail_lines());
  list("remark", items::kRemark, pit_.remarks);
  list("photo", items::kPhoto, pit_.photos);
  list("absent", items::kAbsence, pit_.absences);
  list("unread", items::kUnread, pit_.unread);
  list("extension", items::kExtension, pit_.extensions);
}

}  // namespace

void write_notes(std::string& out, const Pit& pit, std::vector<firnbook::Place>& lost) {
  PitT object;
  form::unpack(pit, object);
  // Fields that this version does not know are not in the object form.
  if (pit.schema_minor() > kKnownMinor) lost.push_back(whole_pit());
  NotesWriter(out, object).write();
}

}  // namespace firn::notation
