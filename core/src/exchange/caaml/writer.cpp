#include "exchange/caaml/writer.h"

#include <algorithm>
#include <utility>

#include "exchange/caaml/foreign.h"
#include "exchange/caaml/own.h"
#include "exchange/caaml/reader.h"
#include "pit/verify.h"
#include "support/checksum.h"
#include "support/text.h"

namespace firn::exchange::caaml {

using firnbook::Place;

namespace {

// A table without a field, for what the standard wants and the pit has not.
const Stored* empty_table() {
  alignas(8) static constexpr std::uint8_t kBytes[8] = {4, 0, 4, 0, 4, 0, 0, 0};
  return reinterpret_cast<const Stored*>(kBytes + 4);
}

bool needs_escape(char c) {
  const auto byte = static_cast<unsigned char>(c);
  return byte < 0x20 || byte >= 0x80 || c == '&' || c == '<' || c == '>' || c == '"';
}

bool is_name(std::string_view text) {
  const auto is_letter = [](char c) { return (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') || c == '_'; };
  if (text.empty() || !is_letter(text[0])) return false;
  return std::all_of(text.begin(), text.end(),
                     [&](char c) { return is_letter(c) || (c >= '0' && c <= '9') || c == '.' || c == '-'; });
}

bool is_reason_word(std::string_view text) {
  return text.size() >= 2 && text != "notrecorded" && std::all_of(text.begin(), text.end(), [](char c) {
           return (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9');
         });
}

voffset_t words_of(const form::Table& table) {
  if (&table == &form::table_of<firnbook::LayerT>()) return firnbook::Layer::VT_WORDS;
  if (&table == &form::table_of<firnbook::WeatherT>()) return firnbook::Weather::VT_WORDS;
  if (&table == &form::table_of<firnbook::SurfaceT>()) return firnbook::Surface::VT_WORDS;
  if (&table == &form::table_of<firnbook::StabilityTestT>()) return firnbook::StabilityTest::VT_WORDS;
  if (&table == &form::table_of<firnbook::ObserverT>()) return firnbook::Observer::VT_WORDS;
  return 0;
}

// Positions beyond this have no key: no list is that long.
constexpr std::int32_t kMostPosition = 0xFFFFFFF;
bool has_key(const Place& place) {
  const auto fits = [](std::int32_t at) { return at >= -1 && at < kMostPosition; };
  return fits(place.index()) && fits(place.sub());
}

constexpr std::string_view kBlanks = "                                        ";

}  // namespace

void append_text(std::string& out, std::string_view text) {
  std::size_t done = 0;
  for (std::size_t i = 0; i < text.size();) {
    if (!needs_escape(text[i])) {
      ++i;
      continue;
    }
    out += text.substr(done, i - done);
    const auto byte = static_cast<unsigned char>(text[i]);
    std::size_t length = 1;
    if (byte >= 0x80) {
      length = std::max<std::size_t>(utf8_length(text.substr(i)), 1);
      const std::string_view character = text.substr(i, length);
      out += is_xml_text(character) ? character : std::string_view("\xEF\xBF\xBD");
    } else if (byte == '&') {
      out += "&amp;";
    } else if (byte == '<') {
      out += "&lt;";
    } else if (byte == '>') {
      out += "&gt;";
    } else if (byte == '"') {
      out += "&quot;";
    } else if (byte == '\r') {
      out += "&#13;";
    } else if (byte == '\n' || byte == '\t') {
      out += text[i];
    }
    i += length;
    done = i;
  }
  out += text.substr(done);
}

Writer::Writer(std::string& out, const firnbook::Pit& pit, Notices& notices)
    : out_(out), pit_(pit), notices_(notices), start_(out.size()) {}

// --- elements
// ------------------------------------------------------------------------------------------------

void Writer::line() {
  out_ += '\n';
  out_ += kBlanks.substr(0, std::min(2 * depth_, kBlanks.size()));
}

void Writer::open(std::string_view name, std::string_view attributes) {
  line();
  out_ += "<caaml:";
  out_ += name;
  out_ += attributes;
  out_ += '>';
  ++depth_;
}

void Writer::close(std::string_view name) {
  --depth_;
  line();
  end(name);
}

void Writer::empty(std::string_view name) {
  line();
  out_ += "<caaml:";
  out_ += name;
  out_ += "/>";
}

std::string& Writer::begin(std::string_view name, bool has_uom, std::string_view uom) {
  line();
  out_ += "<caaml:";
  out_ += name;
  if (has_uom) {
    out_ += " uom=\"";
    out_ += uom;
    out_ += '"';
  }
  out_ += '>';
  return out_;
}

void Writer::end(std::string_view name) {
  out_ += "</caaml:";
  out_ += name;
  out_ += '>';
}

// --- the pit
// -------------------------------------------------------------------------------------------------

bool Writer::get(voffset_t id, std::int64_t& value) const {
  if (!has(id)) return false;
  value = stored_number(field(id), *frame_->stored);
  return true;
}

std::string_view Writer::text(voffset_t id) const {
  const auto* stored = frame_->stored->GetPointer<const flatbuffers::String*>(id);
  return stored == nullptr ? std::string_view() : std::string_view(stored->c_str(), stored->size());
}

bool Writer::below_surface(const firnbook::Depth* depth, std::int64_t& value) const {
  if (depth == nullptr) return false;
  value = depth->value_10um();
  if (depth->datum() == firnbook::Datum::ground) {
    if (!has_hs_) return false;
    value = hs_10um_ - value;
  } else if (depth->datum() != firnbook::Datum::surface) {
    return false;
  }
  return value >= 0 && value <= INT32_MAX;
}

Place Writer::place(voffset_t id) const {
  return {frame_->index, frame_->sub, frame_->outer_field != kWholeThing ? frame_->outer_field : field_id(id),
          frame_->thing};
}

void Writer::note(NoticeKind kind, voffset_t id, std::string_view what) {
  if (notices_.kept().size() >= Notices::kMost) return notices_.add({});
  notices_.add({kind, 0, 0,
                path_of(id == 0 ? Place(frame_->index, frame_->sub, kWholeThing, frame_->thing) : place(id)),
                std::string(what)});
}

void Writer::note_about(const Place& place, std::string_view what) {
  if (notices_.kept().size() >= Notices::kMost) return notices_.add({});
  notices_.add({NoticeKind::kept, 0, 0, path_of(place), std::string(what)});
}

Writer::Key Writer::key_of(const Place& place, std::uint32_t index) {
  const auto position = [](std::int32_t at) {
    return std::uint64_t{static_cast<std::uint32_t>(at)} & std::uint64_t{kMostPosition};
  };
  return {std::uint64_t{static_cast<std::uint8_t>(place.thing())} << 56 | position(place.index()) << 28 |
              position(place.sub()),
          place.field(), index};
}

const Writer::Key* Writer::first_of(const Keys& keys, const Place& place) {
  if (keys.empty()) return nullptr;
  const Key wanted = key_of(place, 0);
  const auto found = std::lower_bound(keys.begin(), keys.end(), wanted);
  if (found == keys.end() || found->place != wanted.place || found->field != wanted.field) return nullptr;
  return &*found;
}

// --- objects
// -------------------------------------------------------------------------------------------------

void Writer::enter(Frame& frame, const Stored* stored, const form::Field& holder) {
  frame.stored = stored == nullptr ? empty_table() : stored;
  frame.table = holder.table;
  frame.words = words_of(*holder.table);
  frame.outer = frame_;
  frame.own_start = own_.size();
  own_ += '<';
  own_ += kOwnPrefix;
  own_ += frame_->table->name_of(field_id(holder.field));
  own_ += '>';
  frame.own_body = own_.size();
  frame_->held |= std::uint64_t{1} << field_id(holder.field);
  frame_ = &frame;
}

void Writer::enter_element(Frame& frame, const Stored* stored, const form::Field& list, std::int32_t at,
                           std::size_t of) {
  enter(frame, stored, list);
  own_.pop_back();
  own_ += " at=\"";
  append_integer(own_, at);
  own_ += "\" of=\"";
  append_unsigned(own_, of);
  own_ += "\">";
  frame.own_body = own_.size();
}

// The fields that the document does not hold; `names` are those it says nothing of.
void Writer::write_leftovers(std::string& names) {
  const char* name = frame_->table->names;
  std::size_t number = 0;
  std::string absent;
  for (const form::Field& each : *frame_->table) {
    const std::string_view text = name;
    name += text.size() + 1;
    const std::uint64_t bit = std::uint64_t{1} << number++;
    if ((frame_->held & bit) != 0) continue;
    const bool is_made = (frame_->made & bit) != 0;
    if (!is_stored(each, *frame_->stored)) {
      if (!is_made) continue;
      absent += absent.empty() ? "" : " ";
      absent += text;
      continue;
    }
    const std::size_t before = own_.size();
    append_own_field(own_, each, text, *frame_->stored);
    if (is_made || own_.size() == before) continue;
    names += names.empty() ? "" : ", ";
    names += text;
  }
  if (absent.empty()) return;
  own_ += "<firn:no>";
  own_ += absent;
  own_ += "</firn:no>";
}

void Writer::leave() {
  std::string names;
  write_leftovers(names);
  if (!names.empty()) {
    note(NoticeKind::kept, 0,
         "the standard has no place for " + names + ": kept in customData, where other programs do not look");
  }
  if (own_.size() == frame_->own_body) {
    own_.resize(frame_->own_start);
  } else {
    const std::size_t name_at = frame_->own_start + 1;
    const std::size_t name_end = own_.find_first_of(" >", name_at);
    const std::string name = own_.substr(name_at, name_end - name_at);
    own_ += "</";
    own_ += name;
    own_ += '>';
  }
  frame_ = frame_->outer;
}

void Writer::keep_whole(const form::Field& list, const Stored& element, std::size_t at) {
  const std::string_view name = frame_->table->name_of(field_id(list.field));
  own_ += "<firn:";
  own_ += name;
  own_ += " at=\"";
  append_unsigned(own_, at);
  own_ += "\" new=\"1\">";
  append_own_fields(own_, *list.table, element);
  own_ += "</firn:";
  own_ += name;
  own_ += '>';
}

// --- rows
// ----------------------------------------------------------------------------------------------------

void Writer::rows(const Type& type) {
  for (const Row& each : type) {
    if (!each.only_read) row(each);
  }
}

namespace {

bool list_is_empty(const Stored& stored, voffset_t field) {
  const form::StoredList* list = form::stored_list(stored, field);
  return list == nullptr || list->size() == 0;
}

bool holds_wanted_lists(const Stored& stored, const Type& type) {
  return std::none_of(type.begin(), type.end(), [&](const Row& row) {
    return row.shape == Shape::list && row.is_wanted && list_is_empty(stored, row.field);
  });
}

}  // namespace

bool Writer::can_write(const Stored& element, const form::Table& table, const Type& type) const {
  if (!holds_wanted_lists(element, type)) return false;
  if (&table == &form::table_of<firnbook::StrengthProfileT>()) {
    // The one code that no reason may stand for.
    const auto kind =
        element.GetOptional<std::uint8_t, firnbook::StrengthKind>(firnbook::StrengthProfile::VT_KIND);
    return kind.has_value() && !code_of(*kind).empty();
  }
  // Either layers or a dense profile, and one of them.
  for (const Row& row : type) {
    if (row.codec != &kTuples) continue;
    const voffset_t readings = (&row + 1)->field;
    if (!list_is_empty(element, readings)) return true;
    const auto* depths = element.GetPointer<const flatbuffers::Vector<float>*>(row.field);
    const auto* values = element.GetPointer<const flatbuffers::Vector<float>*>(row.other);
    if (depths == nullptr || values == nullptr || depths->size() != values->size() || depths->size() == 0)
      return false;
    std::string scratch;
    for (flatbuffers::uoffset_t i = 0; i < depths->size(); ++i) {
      scratch.clear();
      if (!append_float(scratch, depths->Get(i)) || !append_float(scratch, values->Get(i))) return false;
    }
    return true;
  }
  return true;
}

void Writer::write_list(const Row& row) {
  const form::Field& list = field(row.field);
  const form::StoredList* stored = form::stored_list(*frame_->stored, row.field);
  if (stored == nullptr || stored->size() == 0) return;
  const auto can = [&](flatbuffers::uoffset_t i) {
    return can_write(*stored->Get(i), *list.table, *row.type);
  };
  std::size_t written = 0;
  for (flatbuffers::uoffset_t i = 0; i < stored->size(); ++i) written += can(i) ? 1u : 0u;
  hold(row.field);
  std::int32_t position = 0;
  for (flatbuffers::uoffset_t i = 0; i < stored->size(); ++i) {
    const auto at = static_cast<std::int32_t>(i);
    if (!can(i)) {
      keep_whole(list, *stored->Get(i), i);
      note_about({at, -1, kWholeThing, row.thing},
                 "the standard has no form for this: kept in customData, where other programs do not look");
      continue;
    }
    Frame frame;
    frame.thing = frame.about = row.thing;
    frame.index = row.is_inner ? frame_->index : at;
    frame.sub = row.is_inner ? at : -1;
    if (form::table_of(row.thing) != list.table) {
      frame.outer_field = field_id(row.field);
      frame.about_field = frame.outer_field;
    }
    enter_element(frame, stored->Get(i), list, at, written);
    std::string attributes;
    if (row.id != 0) {
      bool is_held = false;
      append_id(attributes, text(row.id), row.id_stem, is_held);
      if (is_held) hold(row.id);
    }
    attributes += row.attributes;
    ++position;
    count();
    open(row.name, attributes);
    rows(*row.type);
    close(row.name);
    leave();
  }
}

void Writer::in_about(const Row& row, void (Writer::*act)()) {
  const Thing about = frame_->about;
  const std::uint16_t about_field = frame_->about_field;
  if (row.has_about) {
    frame_->about = row.about;
    frame_->about_field = row.about_field == 0 ? kWholeThing : field_id(row.about_field);
  }
  (this->*act)();
  frame_->about = about;
  frame_->about_field = about_field;
}

void Writer::row(const Row& each) {
  switch (each.shape) {
    case Shape::value:
      return each.codec->write(*this, each);
    case Shape::group: {
      if (!holds_wanted_lists(*frame_->stored, *each.type)) return;
      const std::size_t mark = out_.size();
      const std::size_t content = content_;
      const Thing about = frame_->about;
      const std::uint16_t about_field = frame_->about_field;
      if (each.has_about) {
        frame_->about = each.about;
        frame_->about_field = each.about_field == 0 ? kWholeThing : field_id(each.about_field);
      }
      open(each.name, each.attributes);
      const std::size_t body = out_.size();
      rows(*each.type);
      if (out_.size() == body) {
        out_.back() = '/';
        out_ += '>';
        --depth_;
      } else {
        close(each.name);
      }
      frame_->about = about;
      frame_->about_field = about_field;
      if (!each.is_wanted && content_ == content) out_.resize(mark);
      return;
    }
    case Shape::table: {
      const auto* stored = frame_->stored->GetPointer<const Stored*>(each.field);
      if (stored == nullptr && !each.is_wanted) return;
      const std::size_t mark = out_.size();
      const std::size_t content = content_;
      Frame frame;
      frame.thing = frame.about = each.thing;
      enter(frame, stored, field(each.field));
      std::string attributes;
      if (each.id != 0) {
        bool is_held = false;
        append_id(attributes, text(each.id), each.id_stem, is_held);
        if (is_held) hold(each.id);
      }
      open(each.name, attributes);
      rows(*each.type);
      close(each.name);
      if (!each.is_wanted && content_ == content) out_.resize(mark);
      return leave();
    }
    case Shape::list:
      return write_list(each);
    case Shape::remark:
      return in_about(each, &Writer::remark);
    case Shape::custom:
      return in_about(each, &Writer::foreign);
    case Shape::inside:
    case Shape::fixed:
      return;
  }
}

void Writer::nothing_recorded(const Row& row) {
  begin(row) += kNotRecorded;
  end(row.name);
}

void Writer::missing(const Row& row) {
  if (!row.takes_nil) return;
  if (const Key* key = first_of(absences_, place(row.field));
      key != nullptr && !absence_written_[key->index]) {
    const firnbook::Absence& absence = *pit_.absences()->Get(key->index);
    std::string reason;
    if (absence.reason().has_value()) reason = code_of(*absence.reason());
    const auto* words = absence.words();
    const std::string_view said =
        words == nullptr ? std::string_view() : std::string_view(words->c_str(), words->size());
    const bool is_other = reason == "other";
    if (!reason.empty() && (is_other ? is_reason_word(said) : said.empty())) {
      begin(row) += reason;
      if (is_other) {
        out_ += ':';
        out_ += said;
      }
      end(row.name);
      absence_written_[key->index] = true;
      absence_order_.push_back(key->index);
      return count();
    }
  }
  if (row.is_wanted) nothing_recorded(row);
}

void Writer::remark() {
  const Key* key = first_of(remarks_, about());
  if (key != nullptr) {
    const firnbook::Remark& remark = *pit_.remarks()->Get(key->index);
    line();
    out_ += "<caaml:comment";
    if (remark.confidential().has_value())
      out_ += *remark.confidential() ? " confidential=\"true\"" : " confidential=\"false\"";
    out_ += '>';
    append_text(out_, {remark.text()->c_str(), remark.text()->size()});
    remark_order_.push_back(key->index);
  } else {
    if (frame_->about_field != kWholeThing || frame_->about != frame_->thing || frame_->words == 0) return;
    const bool is_layer_of_fracture = frame_->thing == Thing::fracture;
    const Stored& holder = is_layer_of_fracture ? *frame_->outer->stored : *frame_->stored;
    const auto* words = holder.GetPointer<const flatbuffers::String*>(
        is_layer_of_fracture ? voffset_t{firnbook::Fracture::VT_WORDS} : frame_->words);
    if (words == nullptr || words->size() == 0 || !is_xml_text({words->c_str(), words->size()})) return;
    line();
    out_ += "<caaml:comment>";
    append_text(out_, {words->c_str(), words->size()});
    remark_order_.push_back(-1);
  }
  end("comment");
  count();
}

void Writer::foreign() {
  const Key* key = first_of(extensions_, about());
  if (key == nullptr) return;
  open("customData");
  const Key* const end_of_keys = extensions_.data() + extensions_.size();
  for (const Key* at = key; at != end_of_keys && at->place == key->place && at->field == key->field; ++at) {
    const auto* bytes = pit_.extensions()->Get(at->index)->bytes();
    line();
    out_.append(reinterpret_cast<const char*>(bytes->data()), bytes->size());
    extension_order_.push_back(at->index);
  }
  close("customData");
  count();
}

void Writer::append_id(std::string& attributes, std::string_view id, std::string_view stem, bool& is_held) {
  attributes += " gml:id=\"";
  is_held = is_name(id) && id.substr(0, kMadeId.size()) != kMadeId && ids_.find(id) == ids_.end();
  if (is_held) {
    ids_.emplace(id);
    attributes += id;
  } else {
    attributes += kMadeId;
    attributes += stem;
    if (++made_ids_ > 1) {
      attributes += '-';
      append_unsigned(attributes, made_ids_);
    }
  }
  attributes += '"';
}

// --- what the document as a whole keeps
// ------------------------------------------------------------------------

namespace {

bool is_trivial(const std::vector<std::int64_t>& order) {
  return std::is_sorted(order.begin(), order.end()) && (order.empty() || order.front() >= 0);
}

}  // namespace

void Writer::append_order(std::string& to, std::string_view name, const std::vector<std::int64_t>& order) {
  if (is_trivial(order)) return;
  to += ' ';
  to += name;
  to += "=\"";
  for (const std::int64_t at : order) {
    append_integer(to, at);
    to += ' ';
  }
  to.back() = '"';
}

// Remarks, absences and extensions that no element holds; and remarks that stand at the pit though nobody
// said what they are about.
void Writer::keep_rest() {
  const auto keep = [&](voffset_t id, const std::vector<std::int64_t>& order, auto&& amend) {
    const form::StoredList* stored = form::stored_list(*root_.stored, id);
    hold(id);
    if (stored == nullptr) return;
    std::vector<bool> is_written(stored->size());
    std::size_t written = 0;
    for (const std::int64_t at : order) {
      if (at >= 0) is_written[static_cast<std::size_t>(at)] = true;
      written += at >= 0 ? 1u : 0u;
    }
    for (flatbuffers::uoffset_t i = 0; i < stored->size(); ++i) {
      if (!is_written[i]) {
        keep_whole(field(id), *stored->Get(i), i);
      } else {
        amend(i, written);
      }
    }
  };
  const auto nothing = [](std::size_t, std::size_t) {};
  keep(firnbook::Pit::VT_REMARKS, remark_order_, [&](std::size_t at, std::size_t of) {
    const firnbook::Remark& remark = *pit_.remarks()->Get(static_cast<flatbuffers::uoffset_t>(at));
    if (remark.about() != nullptr) return;
    own_ += "<firn:remarks at=\"";
    append_unsigned(own_, at);
    own_ += "\" of=\"";
    append_unsigned(own_, of);
    own_ += "\"><firn:no>about</firn:no></firn:remarks>";
  });
  keep(firnbook::Pit::VT_ABSENCES, absence_order_, nothing);
  keep(firnbook::Pit::VT_EXTENSIONS, extension_order_, nothing);
}

void Writer::append_own() {
  std::string orders;
  append_order(orders, "remarks", remark_order_);
  append_order(orders, "absences", absence_order_);
  append_order(orders, "extensions", extension_order_);
  if (direction_ != firnbook::Direction::unknown) {
    orders += " direction=\"";
    append_unsigned(orders, static_cast<std::uint64_t>(direction_));
    orders += '"';
  }
  if (own_.empty() && orders.empty()) return;
  line();
  // Whoever changes the document later shows by this sum that he did.
  const std::uint32_t sum =
      crc32(reinterpret_cast<const std::uint8_t*>(out_.data()) + start_, out_.size() - start_);
  out_ += "<firn:pit sum=\"";
  append_unsigned(out_, sum);
  out_ += '"';
  out_ += orders;
  out_ += '>';
  out_ += own_;
  out_ += "</firn:pit>";
}

// The last element of the document.
void Writer::root_custom() {
  const std::size_t mark = out_.size();
  open("customData");
  const std::size_t body = out_.size();
  const Key* key = first_of(extensions_, whole_pit());
  const Key* const end_of_keys = extensions_.data() + extensions_.size();
  for (const Key* at = key;
       at != nullptr && at != end_of_keys && at->place == key->place && at->field == key->field; ++at) {
    const auto* bytes = pit_.extensions()->Get(at->index)->bytes();
    line();
    out_.append(reinterpret_cast<const char*>(bytes->data()), bytes->size());
    extension_order_.push_back(at->index);
  }
  keep_rest();
  std::string names;
  write_leftovers(names);
  if (!names.empty()) {
    note(NoticeKind::kept, 0,
         "the standard has no place for " + names + ": kept in customData, where other programs do not look");
  }
  append_own();
  if (out_.size() == body) {
    --depth_;
    return out_.resize(mark);
  }
  close("customData");
}

void Writer::write() {
  root_.stored = reinterpret_cast<const Stored*>(&pit_);
  root_.table = &form::table_of<firnbook::PitT>();
  frame_ = &root_;
  if (pit_.schema_minor() > pit::kSchemaMinor) {
    note(NoticeKind::left_out, 0, "a newer version wrote this pit: what is not known here is left out");
  }
  hold(firnbook::Pit::VT_SCHEMA_MINOR);
  if (pit_.snowpack() != nullptr && pit_.snowpack()->hs_10um().has_value()) {
    has_hs_ = true;
    hs_10um_ = *pit_.snowpack()->hs_10um();
  }
  // The first depth speaks for all; those that differ are kept one by one.
  if (pit_.layers() != nullptr && pit_.layers()->size() != 0 && pit_.layers()->Get(0)->top() != nullptr) {
    direction_ = pit_.layers()->Get(0)->top()->direction();
    if (direction_ > firnbook::Direction::slope_normal) direction_ = firnbook::Direction::unknown;
  }
  const auto index = [](const auto* list, Keys& keys, auto&& use) {
    if (list == nullptr) return;
    for (flatbuffers::uoffset_t i = 0; i < list->size(); ++i) {
      const auto* each = list->Get(i);
      const Place about = each->about() == nullptr ? whole_pit() : *each->about();
      if (!has_key(about)) continue;
      if (use(*each)) keys.push_back(key_of(about, i));
    }
    std::sort(keys.begin(), keys.end());
  };
  index(pit_.remarks(), remarks_, [](const firnbook::Remark& remark) {
    return remark.text() != nullptr && remark.text()->size() != 0 &&
           is_xml_text({remark.text()->c_str(), remark.text()->size()});
  });
  index(pit_.absences(), absences_,
        [](const firnbook::Absence& absence) { return absence.about() != nullptr; });
  index(pit_.extensions(), extensions_, [](const firnbook::Extension& extension) {
    return extension.about() != nullptr && extension.key() != nullptr && extension.bytes() != nullptr &&
           is_foreign_xml(
               {extension.key()->c_str(), extension.key()->size()},
               {reinterpret_cast<const char*>(extension.bytes()->data()), extension.bytes()->size()});
  });
  if (pit_.absences() != nullptr) absence_written_.resize(pit_.absences()->size());
  out_ += "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<caaml:SnowProfile xmlns:caaml=\"";
  out_ += kNamespace6;
  out_ += "\" xmlns:gml=\"";
  out_ += kNamespaceGml;
  out_ += "\" xmlns:firn=\"";
  out_ += kNamespaceOwn;
  out_ += '"';
  bool is_held = false;
  append_id(out_, text(firnbook::Pit::VT_ID), "profile", is_held);
  if (is_held) hold(firnbook::Pit::VT_ID);
  out_ += '>';
  depth_ = 1;
  rows(kVersion6);
  depth_ = 0;
  out_ += "\n</caaml:SnowProfile>\n";
}

}  // namespace firn::exchange::caaml
