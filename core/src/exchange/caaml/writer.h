// Walks a stored pit along the rows of row.h. What no row writes exactly goes into customData of ours: each
// object notes which of its fields the document holds, and the rest follows from the schema's own list.
#pragma once

#include <cstddef>
#include <cstdint>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "exchange/caaml/names.h"
#include "exchange/caaml/row.h"
#include "exchange/notices.h"
#include "support/form.h"
#include "support/place.h"
#include "support/result.h"

namespace firn::exchange::caaml {

using Stored = flatbuffers::Table;

// An object that is being written.
struct Frame {
  const Stored* stored = nullptr;
  const form::Table* table = nullptr;
  Thing thing = Thing::pit;
  std::int32_t index = -1, sub = -1;
  std::uint16_t outer_field = kWholeThing;  // of a table that places cannot name
  Thing about = Thing::pit;
  std::uint16_t about_field = kWholeThing;
  voffset_t words = 0;      // the observer's own words, which stand as comment where there is no remark
  bool has_choice = false;  // one of several elements that exclude each other was written
  std::uint64_t held = 0;   // bit n: the document says all of field n
  std::uint64_t made = 0;   // bit n: reading the document sets field n
  std::size_t own_start = 0, own_body = 0;
  Frame* outer = nullptr;
};

class Writer {
 public:
  Writer(std::string& out, const firnbook::Pit& pit, Notices& notices);
  void write();

  // --- for codecs
  Frame& frame() { return *frame_; }
  const form::Field& field(voffset_t id) const { return *frame_->table->find(id); }
  bool get(voffset_t id, std::int64_t& value) const;
  std::string_view text(voffset_t id) const;
  template <class T>
  const T* structure(voffset_t id) const {
    return frame_->stored->GetStruct<const T*>(id);
  }
  bool has(voffset_t id) const { return frame_->stored->CheckField(id); }
  void hold(voffset_t id) { frame_->held |= std::uint64_t{1} << field_id(id); }
  void make(voffset_t id) { frame_->made |= std::uint64_t{1} << field_id(id); }
  // The document holds the field in full, or says something that reading takes for it.
  void hold_or_make(voffset_t id, bool is_exact) {
    if (is_exact) hold(id);
    make(id);
  }
  // A depth below the surface; false when it cannot be told or is negative.
  // Along which line most depths of this pit are measured: said once.
  firnbook::Direction direction() const { return direction_; }
  bool below_surface(const firnbook::Depth* depth, std::int64_t& value) const;

  void open(std::string_view name, std::string_view attributes = {});
  void close(std::string_view name);
  void empty(std::string_view name);
  // Begins and ends an element of one line; the text goes between.
  std::string& begin(const Row& row) { return begin(row.name, row.has_uom, row.uom); }
  std::string& begin(std::string_view name, bool has_uom = false, std::string_view uom = {});
  void end(std::string_view name);
  void count() { ++content_; }
  std::string& out() { return out_; }
  void line();

  // In place of a value: why it is absent, or that nothing is recorded where the standard wants the element.
  void missing(const Row& row);
  void nothing_recorded(const Row& row);
  void rows(const Type& type);
  void remark();
  void foreign();
  void root_custom();
  // The attribute gml:id, with a blank before it.
  void append_id(std::string& attributes, std::string_view id, std::string_view stem, bool& is_held);

  // Enters an object of a list or a table: what is written until leave() is about it.
  void enter(Frame& frame, const Stored* stored, const form::Field& holder);
  void enter_element(Frame& frame, const Stored* stored, const form::Field& list, std::int32_t at,
                     std::size_t of);
  void leave();
  // An element of a list that the standard has no form for.
  void keep_whole(const form::Field& list, const Stored& element, std::size_t at);
  void note(NoticeKind kind, voffset_t id, std::string_view what);
  void note_about(const firnbook::Place& place, std::string_view what);
  firnbook::Place place(voffset_t id) const;
  bool can_write(const Stored& element, const form::Table& table, const Type& type) const;

 private:
  struct Key {
    std::uint64_t place;
    std::uint32_t field;
    std::uint32_t index;
    bool operator<(const Key& other) const {
      if (place != other.place) return place < other.place;
      return field != other.field ? field < other.field : index < other.index;
    }
  };
  using Keys = std::vector<Key>;
  static Key key_of(const firnbook::Place& place, std::uint32_t index);
  static const Key* first_of(const Keys& keys, const firnbook::Place& place);

  void row(const Row& row);
  void write_list(const Row& row);
  void write_leftovers(std::string& names);
  void keep_rest();
  firnbook::Place about() const { return {frame_->index, frame_->sub, frame_->about_field, frame_->about}; }
  void in_about(const Row& row, void (Writer::*act)());
  void append_order(std::string& to, std::string_view name, const std::vector<std::int64_t>& order);
  void append_own();

  std::string& out_;
  const firnbook::Pit& pit_;
  Notices& notices_;
  const std::size_t start_;
  Frame* frame_ = nullptr;
  Frame root_;
  std::size_t depth_ = 0;
  std::size_t content_ = 0;
  std::string own_;
  std::set<std::string, std::less<>> ids_;
  std::size_t made_ids_ = 0;
  bool has_hs_ = false;
  std::int64_t hs_10um_ = 0;
  firnbook::Direction direction_ = firnbook::Direction::unknown;
  Keys remarks_, absences_, extensions_;
  // What stands in the document, in its order; -1 for a comment that repeats what the record holds elsewhere.
  std::vector<std::int64_t> remark_order_, absence_order_, extension_order_;
  std::vector<bool> absence_written_;
};

// Text as XML text: only what XML does not allow is left out.
void append_text(std::string& out, std::string_view text);

}  // namespace firn::exchange::caaml
