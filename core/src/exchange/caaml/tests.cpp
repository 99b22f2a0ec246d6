// What does not fit a row: stability tests, with a result for each fracture, and who made the record.
#include <memory>
#include <string>

#include "exchange/caaml/read_values.h"
#include "exchange/caaml/writer.h"
#include "support/text.h"

namespace firn::exchange::caaml {
namespace {

using firnbook::Crossing;
using firnbook::Depth;
using firnbook::Fracture;
using firnbook::FractureT;
using firnbook::Layer;
using firnbook::LoadStage;
using firnbook::StabilityTest;
using firnbook::StabilityTestT;
using firnbook::TestKind;
using firnbook::TestOutcome;
using pugi::xml_node;

// --- scores
// --------------------------------------------------------------------------------------------------

// CTV to CTH, ECTPV: how it broke where no tap was counted.
struct StageCode {
  std::string_view code;
  LoadStage stage;
};
constexpr StageCode kStages[] = {{"CTV", LoadStage::isolating},
                                 {"CTE", LoadStage::wrist},
                                 {"CTM", LoadStage::elbow},
                                 {"CTH", LoadStage::shoulder}};

bool take_count(std::string_view text, std::uint8_t& count) {
  if (text.empty() || text.size() > 2) return false;
  int value = 0;
  for (const char c : text) {
    if (c < '0' || c > '9') return false;
    value = value * 10 + (c - '0');
  }
  count = static_cast<std::uint8_t>(value);
  return count <= kMostTaps;
}

bool take_score(TestKind kind, std::string_view text, FractureT& fracture) {
  std::uint8_t count = 0;
  if (kind == TestKind::RB) {
    if (text.size() != 3 || text.substr(0, 2) != "RB" || !take_count(text.substr(2), count)) return false;
    if (count < 1 || count > 6) return false;
    fracture.step = count;
    return true;
  }
  if (kind == TestKind::CT) {
    for (const StageCode& known : kStages) {
      if (known.code == text) fracture.stage = known.stage;
    }
    if (fracture.stage.has_value()) return true;
    if (!take_count(text, count)) return false;
    // The schema takes a zero, and a tap that was not given is one that was not needed.
    if (count == 0) {
      fracture.stage = LoadStage::isolating;
    } else {
      fracture.tap = count;
    }
    return true;
  }
  if (kind != TestKind::ECT || text.size() < 5 || text.substr(0, 3) != "ECT") return false;
  const char crossing = text[3];
  if (crossing != 'P' && crossing != 'N') return false;
  if (text.substr(4) == "V" && crossing == 'P') {
    fracture.stage = LoadStage::isolating;
  } else if (take_count(text.substr(4), count) && count > 0) {
    fracture.tap = count;
  } else {
    return false;
  }
  fracture.crossing = crossing == 'P' ? Crossing::crossed : Crossing::not_crossed;
  return true;
}

// The score as the standard writes it, and which fields it says; empty when it has none for this.
struct Score {
  std::string text;
  voffset_t said[2] = {};
};

Score score_of(TestKind kind, const Fracture& fracture) {
  Score score;
  const bool has_tap = fracture.tap().has_value() && *fracture.tap() >= 1 && *fracture.tap() <= kMostTaps;
  const auto append_tap = [&] {
    append_integer(score.text, *fracture.tap());
    score.said[0] = Fracture::VT_TAP;
  };
  switch (kind) {
    case TestKind::RB:
      if (!fracture.step().has_value() || *fracture.step() < 1 || *fracture.step() > 6) break;
      score.text = "RB";
      append_integer(score.text, *fracture.step());
      score.said[0] = Fracture::VT_STEP;
      break;
    case TestKind::CT:
      if (has_tap) {
        append_tap();
      } else if (!fracture.tap().has_value() && fracture.stage().has_value()) {
        for (const StageCode& known : kStages) {
          if (known.stage == *fracture.stage()) score.text = known.code;
        }
        score.said[0] = Fracture::VT_STAGE;
      }
      break;
    case TestKind::ECT: {
      if (!fracture.crossing().has_value()) break;
      const bool crossed = *fracture.crossing() == Crossing::crossed;
      if (!crossed && *fracture.crossing() != Crossing::not_crossed) break;
      score.said[1] = Fracture::VT_CROSSING;
      if (has_tap) {
        score.text = crossed ? "ECTP" : "ECTN";
        append_tap();
      } else if (crossed && !fracture.tap().has_value() && fracture.stage().has_value() &&
                 *fracture.stage() == LoadStage::isolating) {
        score.text = "ECTPV";
        score.said[0] = Fracture::VT_STAGE;
      }
      break;
    }
    default:
      break;
  }
  return score;
}

bool has_score(TestKind kind) {
  return kind == TestKind::RB || kind == TestKind::CT || kind == TestKind::ECT;
}

const TestType* type_of(TestKind kind) {
  for (const TestType& type : kTestTypes) {
    if (type.kind == kind) return &type;
  }
  return nullptr;
}

// --- reading
// -------------------------------------------------------------------------------------------------

// Lists whose elements are read here and not by rows.
constexpr Type kNoRows = {};

// The layer that failed, whose top is where it broke.
void read_failed_layer(Reader& reader, const xml_node& node, FractureT& fracture) {
  fracture.on = std::make_unique<firnbook::LayerT>();
  Here here = reader.here();
  here.object = fracture.on.get();
  here.table = &form::table_of<firnbook::LayerT>();
  here.outer_field = field_id(Fracture::VT_ON);
  reader.read_object(node, kFailedLayer, here);
  firnbook::LayerT& on = *fracture.on;
  if (on.top == nullptr) return;
  fracture.depth = std::make_unique<Depth>(*on.top);
  if (on.bottom == nullptr) on.top.reset();
}

void read_results(Reader& reader, const xml_node& node, const TestType& type, StabilityTestT& test,
                  FractureT& fracture) {
  for (xml_node child = node.first_child(); child; child = child.next_sibling()) {
    if (child.type() != pugi::node_element) continue;
    const std::string_view name = reader.name_of(child).local;
    if (name == "testScore" && has_score(type.kind)) {
      const std::string_view text = reader.trimmed(child);
      if (!take_score(type.kind, text, fracture)) {
        reader.refuse(child, Fracture::VT_TAP, text, "the standard has no such score for this test");
      }
    } else if (name == "columnLength" && type.kind == TestKind::PST) {
      constexpr Row kColumn = centimetres("columnLength", Fracture::VT_CUT_10UM);
      std::int64_t value = 0;
      const std::string_view text = reader.trimmed(child);
      if (!reader.take_number(child, kColumn, text, value)) continue;
      if (value > INT32_MAX) {
        reader.refuse(child, Fracture::VT_CUT_10UM, text, "the number is out of range");
      } else {
        test.column_length_10um = static_cast<std::int32_t>(value);
      }
    } else if (name == "customData") {
      reader.read_custom(child);
    } else {
      reader.read_child(child, *type.results);
    }
  }
}

void read_failure(Reader& reader, const xml_node& node, const TestType& type, StabilityTestT& test) {
  constexpr Row kFractures = list("failedOn", StabilityTest::VT_FRACTURES, Thing::fracture, kNoRows).inner();
  const Here here = reader.list_element(reader.field(StabilityTest::VT_FRACTURES), kFractures);
  auto& fracture = *static_cast<FractureT*>(here.object);
  reader.within(here, [&] {
    for (xml_node child = node.first_child(); child; child = child.next_sibling()) {
      if (child.type() != pugi::node_element) continue;
      const std::string_view name = reader.name_of(child).local;
      if (name == "Layer") {
        read_failed_layer(reader, child, fracture);
      } else if (name == "Results") {
        read_results(reader, child, type, test, fracture);
      } else {
        reader.unknown(child);
      }
    }
  });
}

void read_test(Reader& reader, const xml_node& node, const TestType& type) {
  auto& test = *static_cast<StabilityTestT*>(reader.here().object);
  test.kind = type.kind;
  for (xml_node child = node.first_child(); child; child = child.next_sibling()) {
    if (child.type() != pugi::node_element) continue;
    const std::string_view name = reader.name_of(child).local;
    if (name == "noFailure") {
      if (!test.outcome.has_value()) test.outcome = TestOutcome::no_fracture;
    } else if (name == "failedOn") {
      test.outcome = TestOutcome::fractured;
      read_failure(reader, child, type, test);
    } else {
      reader.read_child(child, kTestHead);
    }
  }
}

}  // namespace

namespace reading {

void tests(Reader& reader, const Row& row, const xml_node& node) {
  constexpr Row kList = list("stbTests", firnbook::Pit::VT_TESTS, Thing::test, kNoRows);
  for (xml_node child = node.first_child(); child; child = child.next_sibling()) {
    if (child.type() != pugi::node_element) continue;
    const Name name = reader.name_of(child);
    const TestType* found = nullptr;
    for (const TestType& type : kTestTypes) {
      if (name.space == Space::caaml && name.local == type.name) found = &type;
    }
    if (found == nullptr) {
      reader.unknown(child);
      continue;
    }
    reader.within(reader.list_element(reader.field(row.field), kList),
                  [&] { read_test(reader, child, *found); });
  }
}

void source(Reader& reader, const Row& row, const xml_node& node) {
  constexpr Row kObservers = list("Person", firnbook::Pit::VT_OBSERVERS, Thing::observer, kNoRows);
  for (xml_node child = node.first_child(); child; child = child.next_sibling()) {
    if (child.type() != pugi::node_element) continue;
    const std::string_view name = reader.name_of(child).local;
    if (name == "Person") {
      const Here here = reader.list_element(reader.field(row.other), kObservers);
      auto& observer = *static_cast<firnbook::ObserverT*>(here.object);
      reader.read_id(child, observer.id);
      const std::size_t before = reader.pit().remarks.size() + reader.pit().extensions.size();
      reader.read_object(child, kPerson, here);
      // Nobody: the standard wants a person, and there was none.
      const bool is_nobody = observer.id.empty() && observer.name.empty() &&
                             before == reader.pit().remarks.size() + reader.pit().extensions.size();
      if (is_nobody) reader.pit().observers.pop_back();
    } else if (name == "Operation") {
      auto& operation = reader.pit().operation;
      if (operation == nullptr) operation = std::make_unique<firnbook::OperationT>();
      Here here;
      here.object = operation.get();
      here.table = &form::table_of<firnbook::OperationT>();
      here.thing = here.about = Thing::operation;
      reader.read_id(child, operation->id);
      reader.read_object(child, kOperation, here);
    } else {
      reader.unknown(child);
    }
  }
}

void root_custom(Reader& reader, const Row&, const xml_node& node) {
  reader.read_custom(node);
}

}  // namespace reading

// --- writing
// -------------------------------------------------------------------------------------------------

namespace {

bool can_write(TestKind kind, const Fracture& fracture) {
  if (has_score(kind)) return !score_of(kind, fracture).text.empty();
  return kind != TestKind::PST || (fracture.saw_end().has_value() && !code_of(*fracture.saw_end()).empty());
}

// How many fractures of the test the document takes; a saw test has one.
std::size_t writable(TestKind kind, const StabilityTest& test) {
  std::size_t count = 0;
  if (test.fractures() == nullptr) return 0;
  for (const Fracture* fracture : *test.fractures()) count += can_write(kind, *fracture) ? 1u : 0u;
  return kind == TestKind::PST && count > 1 ? 1 : count;
}

bool can_write(const StabilityTest& test) {
  if (!test.kind().has_value() || type_of(*test.kind()) == nullptr) return false;
  if (writable(*test.kind(), test) != 0) return true;
  const bool has_fractures = test.fractures() != nullptr && test.fractures()->size() != 0;
  return !has_fractures && test.outcome().has_value() && *test.outcome() == TestOutcome::no_fracture;
}

bool equal(const Depth& a, const Depth& b) {
  return a.value_10um() == b.value_10um() && a.datum() == b.datum() && a.direction() == b.direction();
}

// The rows of the layer, with the depth of the fracture in place of the layer's top.
void write_failed_layer(Writer& writer, const Fracture& fracture) {
  Frame& outer = writer.frame();
  const Depth* at = fracture.depth();
  const Layer* on = fracture.on();
  const Depth* top = on == nullptr ? nullptr : on->top();
  const Depth* bottom = on == nullptr ? nullptr : on->bottom();
  std::int64_t from = 0;
  const Depth* shown = at != nullptr ? at : top;
  const bool has_depth = writer.below_surface(shown, from);
  std::int64_t to = 0;
  // A thickness says where the layer lies, so that it may stand only where the layer begins at the fracture.
  const bool has_thickness = has_depth && top != nullptr && bottom != nullptr && equal(*top, *shown) &&
                             writer.below_surface(bottom, to) && to >= from;
  writer.open("Layer");
  Frame frame;
  frame.thing = frame.about = Thing::fracture;
  frame.index = outer.index;
  frame.sub = outer.sub;
  frame.outer_field = field_id(Fracture::VT_ON);
  writer.enter(frame, reinterpret_cast<const Stored*>(on), writer.field(Fracture::VT_ON));
  for (const Row& row : kFailedLayer) {
    if (row.only_read) continue;
    if (row.codec == &kTop) {
      if (!has_depth) {
        writer.nothing_recorded(row);
        continue;
      }
      append_fixed(writer.begin(row), from, 3);
      writer.end(row.name);
    } else if (row.codec == &kThickness) {
      if (!has_thickness) continue;
      append_fixed(writer.begin(row), to - from, 3);
      writer.end(row.name);
    } else {
      writer.rows({&row, 1});
    }
  }
  const auto is_plain = [&](const Depth* depth, std::int64_t value) {
    return depth != nullptr &&
           equal(*depth, {static_cast<std::int32_t>(value), firnbook::Datum::surface, writer.direction()});
  };
  if (has_thickness) {
    writer.hold_or_make(Layer::VT_TOP, is_plain(top, from));
    writer.hold_or_make(Layer::VT_BOTTOM, is_plain(bottom, to));
  }
  writer.leave();
  writer.close("Layer");
  if (has_depth) writer.hold_or_make(Fracture::VT_DEPTH, is_plain(at, from));
}

void write_results(Writer& writer, const TestType& type, const Fracture& fracture, Frame& test) {
  writer.open("Results");
  writer.rows(*type.results);
  if (has_score(type.kind)) {
    const Score score = score_of(type.kind, fracture);
    writer.begin("testScore") += score.text;
    writer.end("testScore");
    for (const voffset_t said : score.said) {
      if (said != 0) writer.hold(said);
    }
  }
  if (type.kind == TestKind::PST) {
    const auto length =
        test.stored->GetOptional<std::int32_t, std::int32_t>(StabilityTest::VT_COLUMN_LENGTH_10UM);
    const bool can = length.has_value() && *length >= 0;
    writer.begin("columnLength", true, "cm");
    if (can) {
      append_fixed(writer.out(), *length, 3);
      test.held |= std::uint64_t{1} << field_id(StabilityTest::VT_COLUMN_LENGTH_10UM);
    } else {
      writer.out() += kNotRecorded;
    }
    writer.end("columnLength");
  }
  writer.close("Results");
}

void write_fractures(Writer& writer, const TestType& type, const StabilityTest& test) {
  Frame& outer = writer.frame();
  const form::Field& list = writer.field(StabilityTest::VT_FRACTURES);
  const std::size_t of = writable(type.kind, test);
  writer.hold(StabilityTest::VT_FRACTURES);
  std::size_t written = 0;
  for (flatbuffers::uoffset_t i = 0; i < test.fractures()->size(); ++i) {
    const Fracture& fracture = *test.fractures()->Get(i);
    const auto& stored = reinterpret_cast<const Stored&>(fracture);
    if (written == of || !can_write(type.kind, fracture)) {
      writer.keep_whole(list, stored, i);
      writer.note(
          NoticeKind::kept, StabilityTest::VT_FRACTURES,
          "the standard has no form for one of the fractures: kept in customData, where other programs do "
          "not look");
      continue;
    }
    ++written;
    writer.open("failedOn");
    Frame frame;
    frame.thing = frame.about = Thing::fracture;
    frame.index = outer.index;
    frame.sub = static_cast<std::int32_t>(i);
    writer.enter_element(frame, &stored, list, frame.sub, of);
    write_failed_layer(writer, fracture);
    write_results(writer, type, fracture, outer);
    writer.leave();
    writer.close("failedOn");
  }
}

void write_test(Writer& writer, const StabilityTest& test) {
  const TestType& type = *type_of(*test.kind());
  writer.hold(StabilityTest::VT_KIND);
  writer.count();
  writer.open(type.name);
  writer.rows(kTestHead);
  const bool is_fractured = writable(type.kind, test) != 0;
  if (is_fractured) {
    write_fractures(writer, type, test);
  } else {
    writer.empty("noFailure");
  }
  writer.close(type.name);
  const TestOutcome said = is_fractured ? TestOutcome::fractured : TestOutcome::no_fracture;
  writer.hold_or_make(StabilityTest::VT_OUTCOME, test.outcome().has_value() && *test.outcome() == said);
}

}  // namespace

namespace writing {

void tests(Writer& writer, const Row& row) {
  const auto* tests =
      writer.frame().stored->GetPointer<const flatbuffers::Vector<flatbuffers::Offset<StabilityTest>>*>(
          row.field);
  if (tests == nullptr) return;
  const form::Field& list = writer.field(row.field);
  writer.hold(row.field);
  std::size_t of = 0;
  for (const StabilityTest* test : *tests) of += can_write(*test) ? 1u : 0u;
  if (of != 0) writer.open(row.name);
  for (flatbuffers::uoffset_t i = 0; i < tests->size(); ++i) {
    const StabilityTest& test = *tests->Get(i);
    const auto& stored = reinterpret_cast<const Stored&>(test);
    Frame frame;
    frame.thing = frame.about = Thing::test;
    frame.index = static_cast<std::int32_t>(i);
    if (can_write(test)) {
      writer.enter_element(frame, &stored, list, frame.index, of);
      write_test(writer, test);
      writer.leave();
    } else {
      writer.keep_whole(list, stored, i);
      writer.note_about(
          {frame.index, -1, kWholeThing, Thing::test},
          "the standard has no form for this test: kept in customData, where other programs do not look");
    }
  }
  if (of != 0) writer.close(row.name);
}

namespace {

void write_person(Writer& writer, std::string_view name, voffset_t id, std::string_view stem,
                  const Type& type) {
  std::string attributes;
  bool is_held = false;
  writer.append_id(attributes, writer.text(id), stem, is_held);
  if (is_held) writer.hold(id);
  writer.open(name, attributes);
  writer.rows(type);
  writer.close(name);
}

// Somebody without a name would be read back as nobody.
bool can_be_told(const Stored& observer) {
  const auto* name = observer.GetPointer<const flatbuffers::String*>(firnbook::Observer::VT_NAME);
  return name != nullptr && name->size() != 0 && is_xml_text({name->c_str(), name->size()});
}

}  // namespace

// The operation with its people; or the first observer, where there is no operation.
void source(Writer& writer, const Row& row) {
  const Stored& pit = *writer.frame().stored;
  const auto* operation = pit.GetPointer<const Stored*>(row.field);
  const form::StoredList* observers = form::stored_list(pit, row.other);
  const form::Field& list = writer.field(row.other);
  const std::size_t count = observers == nullptr ? 0 : observers->size();
  writer.hold(row.other);
  writer.open(row.name);
  if (operation != nullptr) {
    Frame frame;
    frame.thing = frame.about = Thing::operation;
    writer.enter(frame, operation, writer.field(row.field));
    write_person(writer, "Operation", firnbook::Operation::VT_ID, "operation", kOperation);
    writer.leave();
  } else if (count != 0 && can_be_told(*observers->Get(0))) {
    Frame frame;
    frame.thing = frame.about = Thing::observer;
    frame.index = 0;
    writer.enter_element(frame, observers->Get(0), list, 0, 1);
    write_person(writer, "Person", firnbook::Observer::VT_ID, "person", kPerson);
    writer.leave();
  } else {
    std::string attributes;
    bool is_held = false;
    writer.append_id(attributes, {}, "person", is_held);
    writer.open("Person", attributes);
    writer.empty("name");
    writer.close("Person");
    writer.note(NoticeKind::changed, row.other,
                "the standard wants a person: one without a name stands there");
  }
  writer.close(row.name);
  const bool first_is_written = operation == nullptr && count != 0 && can_be_told(*observers->Get(0));
  for (std::size_t i = first_is_written ? 1 : 0; i < count; ++i) {
    writer.keep_whole(list, *observers->Get(static_cast<flatbuffers::uoffset_t>(i)), i);
    writer.note_about(
        {static_cast<std::int32_t>(i), -1, kWholeThing, Thing::observer},
        "the standard has one source only: kept in customData, where other programs do not look");
  }
}

}  // namespace writing
}  // namespace firn::exchange::caaml
