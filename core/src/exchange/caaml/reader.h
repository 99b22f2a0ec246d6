// Walks a document along the rows of row.h and fills the mutable form of a pit.
#pragma once

#include <cstddef>
#include <cstdint>
#include <memory>
#include <pugixml.hpp>
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

// Where the reader is: the object that the rows fill, and what remarks and foreign data are about.
struct Here {
  void* object = nullptr;
  const form::Table* table = nullptr;
  Thing thing = Thing::pit;
  std::int32_t index = -1, sub = -1;
  std::uint16_t outer_field = kWholeThing;  // of a table that places cannot name: the field that holds it
  Thing about = Thing::pit;
  std::uint16_t about_field = kWholeThing;
  std::string_view uom;  // of an element around
  const Here* outer = nullptr;
};

class Reader {
 public:
  Reader(std::string_view text, const Limits& limits, Notices& notices);

  // The whole document; false when it is deeper than the limits allow.
  bool read(const pugi::xml_node& root, const Type& type, firnbook::PitT& pit);
  // Before read(): what the root declares.
  std::string_view declare(const pugi::xml_node& root);

  // --- for codecs
  const Here& here() const { return here_; }
  firnbook::PitT& pit() { return *pit_; }
  const form::Field& field(voffset_t id) const { return *here_.table->find(id); }
  void set(voffset_t id, std::int64_t value) { form::set(field(id), here_.object, value); }
  template <class T>
  T& member(voffset_t id) {
    return *static_cast<T*>(field(id).in(here_.object));
  }
  firnbook::Place place(voffset_t id) const;
  bool is_bottom_up() const { return is_bottom_up_; }
  // Along which line depths are measured, which the standard does not say: of documents that we wrote.
  firnbook::Direction direction() const { return direction_; }

  Name name_of(const pugi::xml_node& node) const;
  // The text of an element, until the next call; elements inside it are told.
  std::string_view text(const pugi::xml_node& node);
  std::string_view trimmed(const pugi::xml_node& node);
  // Text for people: what XML and UTF-8 do not allow is taken out, and told.
  std::string words(const pugi::xml_node& node);
  std::string clean(std::string_view text, const pugi::xml_node& node);
  void read_children(const pugi::xml_node& node, const Type& type);
  void read_object(const pugi::xml_node& node, const Type& type, const Here& here);
  void read_child(const pugi::xml_node& child, const Type& type);
  // Does what `act` does at another place.
  template <class Act>
  void within(const Here& here, Act&& act) {
    const Here around = here_;
    here_ = here;
    here_.outer = &around;
    act();
    here_ = around;
  }
  Here list_element(const form::Field& list, const Row& row);
  void read_id(const pugi::xml_node& node, std::string& to);
  void read_custom(const pugi::xml_node& node);
  void add_remark(std::string text, const firnbook::Place& about);
  firnbook::Place about() const { return {here_.index, here_.sub, here_.about_field, here_.about}; }

  // A reason in place of a value: kept as an absence. False when it is none.
  bool take_nil(voffset_t id, std::string_view text);
  // The unit that the number is in; false, and the value refused, for one that is not known.
  bool unit_of(const pugi::xml_node& node, const Row& row, std::string_view text, Unit& unit);
  // The number in stored units; false when it was refused or is a reason.
  bool take_number(const pugi::xml_node& node, const Row& row, std::string_view text, std::int64_t& value);

  void note(NoticeKind kind, const pugi::xml_node& node, std::string_view what);
  // A value that cannot be read: its words are kept as a remark.
  void refuse(const pugi::xml_node& node, voffset_t id, std::string_view text, std::string_view why);
  void unknown(const pugi::xml_node& node);
  void report_attribute(const pugi::xml_node& node, const pugi::xml_attribute& attribute);

  // Where the values that 5.0 keeps in its layers go: a profile of each kind, -1 while there is none.
  std::int32_t& layer_profile(std::size_t kind) { return layer_profiles_[kind]; }

  // customData of ours, where there is some.
  const pugi::xml_node& own() const { return own_; }
  std::size_t offset_of(const pugi::xml_node& node) const;
  std::string_view source() const { return text_; }
  bool within_depth(const pugi::xml_node& node);
  std::string_view address_of(const pugi::xml_node& node, std::string_view prefix) const;

 private:
  struct Declared {
    std::string_view prefix;
    Space space;
  };

  void look_ahead(const pugi::xml_node& root);
  void read_row(const Row& row, const pugi::xml_node& node);
  void read_remark(const pugi::xml_node& node);
  void check_order(const form::Field& list, const Row& row, const pugi::xml_node& node);
  void check_attributes(const Row& row, const pugi::xml_node& node);
  Space space_of(std::string_view address) const;
  const Row* find(const Type& type, Name name, std::size_t& cursor) const;
  void enter_inside(const Row& row, const pugi::xml_node& node, const Row& found);
  void read_child(const pugi::xml_node& child, const Type& type, std::size_t& cursor);
  void locate(std::size_t offset, Notice& notice);

  std::string_view text_;
  const Limits& limits_;
  Notices& notices_;
  firnbook::PitT* pit_ = nullptr;
  std::string_view name_space_;
  std::vector<Declared> declared_;
  bool declares_inside_ = false;
  bool is_bottom_up_ = false;
  firnbook::Direction direction_ = firnbook::Direction::unknown;
  bool is_too_deep_ = false;
  std::uint32_t level_ = 0;
  Here here_;
  std::string scratch_;
  std::vector<std::string> ids_;
  // The list that was last told to be out of order.
  const Type* disordered_ = nullptr;
  const void* disordered_in_ = nullptr;
  std::int32_t layer_profiles_[4] = {-1, -1, -1, -1};
  pugi::xml_node own_;
  // The last place that was asked for: the next is seldom far.
  std::size_t located_ = 0, line_start_ = 0;
  std::uint32_t line_ = 1;
};

bool is_blank(char c);
std::string_view trim(std::string_view text);
// Appends a text as XML text: nothing is lost but what XML does not allow.
bool is_xml_text(std::string_view text);

}  // namespace firn::exchange::caaml
