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
using firnbook::Thing;

// The minor version of pit.fbs that these lines were written for; a test compares it with the schema's.
constexpr std::uint16_t kKnownMinor = 1;

class NotesWriter {
 public:
  NotesWriter(std::string& out, const PitT& pit, std::vector<firnbook::Place>& lost)
      : out_(out), lost_(lost), pit_(pit) {}

  void write();

 private:
  Printing printing(std::int32_t index = -1) { return {out_, lost_, index}; }
  void singles(SingleLines lines);
  void single(const SingleLine& line);
  void person(const firnbook::ObserverT& person, std::int32_t index);
  void observers();
  void contacts();
  void choice();
  void probe();
  void layers();
  void tests();
  void signs();
  void steps();
  void absences();
  template <class T>
  void list(std::string_view keyword, const ItemTable& items, const std::vector<std::unique_ptr<T>>& entries);
  void lose_rest();

  std::string& out_;
  std::vector<firnbook::Place>& lost_;
  const PitT& pit_;
  Frame frame_;
};

void NotesWriter::single(const SingleLine& line) {
  const void* table = line.present(pit_);
  if (table == nullptr || !has_any(*line.items, table)) return;
  out_ += line.keyword;
  out_ += ' ';
  append_items(printing(), *line.items, table);
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

void NotesWriter::person(const firnbook::ObserverT& person, std::int32_t index) {
  if (person.name.empty()) {
    out_ += '~';
  } else if (is_plain_name(person.name)) {
    out_ += person.name;
  } else if (!append_quoted_text(out_, person.name)) {
    lost_.push_back(place_of(Thing::observer, index, field_id(firnbook::Observer::VT_NAME)));
  }
  if (!has_any(items::kPerson, &person)) return;
  out_ += " (";
  append_items(printing(index), items::kPerson, &person);
  out_ += ')';
}

void NotesWriter::observers() {
  std::int32_t index = 0;
  for (const auto& observer : pit_.observers) {
    out_ += index == 0 ? "observers " : ", ";
    person(*observer, index++);
  }
  if (index > 0) out_ += '\n';
}

void NotesWriter::contacts() {
  if (pit_.operation == nullptr) return;
  std::int32_t index = 0;
  for (const auto& contact : pit_.operation->contacts) {
    out_ += "contact ";
    person(*contact, index++);
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
  append_items({words, lost_}, items::kChosen, &choice);
  const bool quoted = !words.empty() && words.front() == '"';
  if (has_any(items::kChosen, &choice)) {
    out_ += "chosen ";
    if (!quoted && !choice.words.empty() && !says_the_same(read, choice)) {
      append_quoted_text(out_, choice.words);
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
    append_items(printing(), items::kInterest, &rest);
    out_ += '\n';
  }
  lose_marks(printing(), Thing::choice, choice.unreliable,
             fields_of(items::kChosen) | fields_of(items::kInterest));
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
  std::int32_t index = 0;
  for (const auto& stored : pit_.layers) {
    const Printing to = printing(index++);
    firnbook::LayerT layer(*stored);
    append_frame(out_, frame_, settle_span(to, Thing::layer, frame_, layer));
    append_layer(to, layer);
    out_ += '\n';
  }
}

// Directions that are those of the frame go without saying; an unknown one needs a frame that says so.
void NotesWriter::tests() {
  flatbuffers::FlatBufferBuilder builder;
  std::int32_t index = 0;
  for (const auto& stored : pit_.tests) {
    firnbook::StabilityTestT test(*stored);
    std::vector<firnbook::Depth*> depths;
    for (auto& fracture : test.fractures) {
      if (fracture->depth != nullptr) depths.push_back(fracture->depth.get());
    }
    for (firnbook::Depth& depth : test.unbroken) depths.push_back(&depth);
    for (const firnbook::Depth* depth : depths) {
      if (depth->direction() == Direction::unknown)
        append_frame(out_, frame_, {frame_.datum, Direction::unknown});
    }
    for (firnbook::Depth* depth : depths) {
      if (depth->direction() != frame_.direction) continue;
      *depth = firnbook::Depth(depth->value_10um(), depth->datum(), Direction::unknown);
    }
    builder.Clear();
    builder.Finish(firnbook::StabilityTest::Pack(builder, &test));
    const auto* packed = flatbuffers::GetRoot<firnbook::StabilityTest>(builder.GetBufferPointer());
    if (!append_test(out_, *packed)) {
      lost_.push_back(place_of(Thing::test, index, field_id(firnbook::StabilityTest::VT_WORDS)));
    }
    out_ += '\n';
    ++index;
  }
}

void NotesWriter::signs() {
  std::int32_t index = 0;
  for (const auto& sign : pit_.signs) {
    out_ += index == 0 ? "sign " : ", ";
    const Printing to = printing(index++);
    const bool any = append_items(to, items::kSign, sign.get(), " ");
    const bool answered = sign->answer || (sign->unreliable >> items::kSignAnswer & 1) != 0;
    if (!answered) out_ += any ? " answer ~" : "answer ~";
    lose_marks(to, Thing::sign, sign->unreliable, fields_of(items::kSign));
  }
  if (index > 0) out_ += '\n';
}

void NotesWriter::steps() {
  std::int32_t index = 0;
  for (const auto& step : pit_.steps) {
    out_ += index == 0 ? "step " : ", ";
    const bool any = append_items(printing(index++), items::kStep, step.get(), " ");
    if (!step->done) out_ += any ? " done ~" : "done ~";
  }
  if (index > 0) out_ += '\n';
}

template <class T>
void NotesWriter::list(std::string_view keyword, const ItemTable& items,
                       const std::vector<std::unique_ptr<T>>& entries) {
  std::int32_t index = 0;
  for (const auto& entry : entries) {
    const Printing to = printing(index++);
    out_ += keyword;
    out_ += ' ';
    // An entry that holds nothing is still an entry.
    if (!append_items(to, items, entry.get())) {
      out_ += items.items[0].key;
      out_ += " ~";
    }
    if (items.has_mask()) lose_marks(to, items.thing, *items.mask(entry.get()), fields_of(items));
    out_ += '\n';
  }
}

// An absence is no thing of its own in a place: what is lost of one is lost of the list.
void NotesWriter::absences() {
  const std::size_t before = lost_.size();
  list("absent", items::kAbsence, pit_.absences);
  for (std::size_t i = before; i < lost_.size(); ++i) {
    lost_[i] = place_of(Thing::pit, -1, field_id(Pit::VT_ABSENCES));
  }
}

void NotesWriter::lose_rest() {
  const Printing to = printing();
  if (pit_.site != nullptr) {
    const std::uint64_t probes = std::uint64_t{1} << field_id(firnbook::Site::VT_PROBES_10UM);
    lose_marks(to, Thing::site, pit_.site->unreliable, fields_of(*site_lines().lines[0].items) | probes);
  }
  std::uint64_t snowpack_fields = 0;
  for (const SingleLine& line : body_lines()) {
    if (line.items->thing == Thing::snowpack) snowpack_fields |= fields_of(*line.items);
    if (!line.items->has_mask() || line.items->thing == Thing::snowpack) continue;
    if (const void* table = line.present(pit_)) {
      lose_marks(to, line.items->thing, *line.items->mask(table), fields_of(*line.items));
    }
  }
  if (pit_.snowpack != nullptr) lose_marks(to, Thing::snowpack, pit_.snowpack->unreliable, snowpack_fields);
  // Bytes of others have no place on a line.
  for (std::size_t i = 0; i < pit_.extensions.size(); ++i) to.lose(Thing::pit, field_id(Pit::VT_EXTENSIONS));
  // Notes know of no journal.
  if (pit_.unread_edits) to.lose(Thing::pit, field_id(Pit::VT_UNREAD_EDITS));
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
  append_temperatures(printing(), frame_, pit_);
  append_profiles(printing(), frame_, pit_);
  tests();
  signs();
  list("slide", items::kSlide, pit_.slides);
  steps();
  singles(tail_lines());
  list("remark", items::kRemark, pit_.remarks);
  list("photo", items::kPhoto, pit_.photos);
  absences();
  list("unread", items::kUnread, pit_.unread);
  lose_rest();
}

}  // namespace

void write_notes(std::string& out, const Pit& pit, std::vector<firnbook::Place>& lost) {
  PitT object;
  form::unpack(pit, object);
  // Fields that this version does not know are not in the object form.
  if (pit.schema_minor() > kKnownMinor) lost.push_back(whole_pit());
  NotesWriter(out, object, lost).write();
}

}  // namespace firn::notation
