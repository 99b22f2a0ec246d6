// Somebody who records at random, for tests of what must hold whatever people do.
#pragma once

#include <cstdint>
#include <memory>
#include <string>
#include <vector>

#include "recording_help.h"

namespace firn::tests {

// Somebody who does anything, also what makes no sense: refused edits are part of the game.
class Anybody {
 public:
  Anybody(std::uint64_t seed, std::uint64_t device) : hand_(device), dice_(seed) {}

  // Takes an edit that somebody else made, to go on from.
  void take(const Bytes& edit) {
    const Done verdict = hand_.recorder.apply(edit.data(), edit.size());
    EXPECT_TRUE(verdict) << verdict.failure().what;
    keys_.push_back(recording::key_of(*firnbook::GetEdit(edit.data())->id()));
    hand_.see(hand_.recorder.next_clock() - 1);
  }

  // True when the edit was taken.
  bool act() {
    const Bytes edit = next_edit();
    const Done verdict = hand_.recorder.apply(edit.data(), edit.size());
    if (!verdict) return false;
    hand_.edits.push_back(edit);
    keys_.push_back(hand_.last());
    return true;
  }
  Hand& hand() { return hand_; }
  EditKey last() const { return keys_.back(); }
  std::uint32_t roll(std::uint32_t sides) { return dice_.roll(sides); }

 private:
  firnbook::Depth depth() {
    const auto value = static_cast<std::int32_t>(dice_.roll(100)) * 1000;
    return dice_.roll(4) == 0 ? up(value) : down(value);
  }
  EditKey some_edit() {
    if (keys_.empty() || dice_.roll(20) == 0) return {hand_.last().device, dice_.roll(50) + 1u};
    return keys_[dice_.roll(static_cast<std::uint32_t>(keys_.size()))];
  }
  firnbook::Target some(firnbook::Thing thing) {
    return recording::target_of(some_edit(), thing, dice_.roll(2), dice_.roll(2));
  }
  firnbook::Target some_layer() {
    return recording::target_of(some_edit(), firnbook::Thing::layer, dice_.roll(2));
  }

  firnbook::PitT things() {
    firnbook::PitT fields;
    for (std::uint32_t i = dice_.roll(2); i < 2; ++i) {
      add_layer(fields, 0, 0, firnbook::HandHardness::Fist, firnbook::GrainForm::FC, 100);
      fields.layers.back()->top = std::make_unique<firnbook::Depth>(depth());
      if (dice_.roll(3) != 0) fields.layers.back()->bottom = std::make_unique<firnbook::Depth>(depth());
    }
    if (dice_.roll(2) == 0) {
      firnbook::StabilityTestT& test = add_test(fields, firnbook::TestKind::CT);
      for (std::uint32_t i = dice_.roll(3); i > 0; --i) add_fracture(test, cm(10)).tap = 12;
    }
    if (dice_.roll(3) == 0) add_temperature(fields, cm(static_cast<std::int32_t>(dice_.roll(90))), -300);
    if (dice_.roll(3) == 0) add_density(fields, cm(5), cm(9), 2100);
    if (dice_.roll(3) == 0) {
      fields.remarks.push_back(std::make_unique<firnbook::RemarkT>());
      fields.remarks[0]->text = "x";
      const auto last = static_cast<std::int32_t>(fields.layers.size()) - 1;
      fields.remarks[0]->about = std::make_unique<firnbook::Place>(last, -1, 65535, firnbook::Thing::layer);
    }
    return fields;
  }
  firnbook::PitT one_layer() {
    firnbook::PitT fields;
    fields.layers.push_back(std::make_unique<firnbook::LayerT>());
    firnbook::LayerT& layer = *fields.layers[0];
    if (dice_.roll(2) == 0) layer.hardness = firnbook::HandHardness::Pencil;
    if (dice_.roll(2) == 0) layer.concern = firnbook::PartOfLayer::top;
    if (dice_.roll(3) == 0) layer.bottom = std::make_unique<firnbook::Depth>(depth());
    layer.words = std::string(dice_.roll(5), 'y');
    return fields;
  }
  firnbook::PitT own() {
    firnbook::PitT fields;
    if (dice_.roll(2) == 0) fields.title = std::string(dice_.roll(9) + 1, 't');
    fields.snowpack = std::make_unique<firnbook::SnowpackT>();
    if (dice_.roll(2) == 0) fields.snowpack->hs_10um = cm(static_cast<std::int32_t>(dice_.roll(200)));
    return fields;
  }
  firnbook::PitT one_fracture() {
    firnbook::PitT fields;
    fields.tests.push_back(std::make_unique<firnbook::StabilityTestT>());
    add_fracture(*fields.tests[0], cm(7));
    return fields;
  }
  firnbook::PitT one_remark() {
    firnbook::PitT fields;
    fields.remarks.push_back(std::make_unique<firnbook::RemarkT>());
    fields.remarks[0]->text = "about";
    return fields;
  }

  Bytes next_edit() {
    const EditHead head = hand_.next();
    const auto amount = static_cast<std::int32_t>(dice_.roll(5000)) - 2500;
    const firnbook::Target layer = some_layer();
    const firnbook::Target other = some_layer();
    const firnbook::Target test = some(firnbook::Thing::test);
    switch (dice_.roll(14)) {
      case 0:
        return make_set(head, own());
      case 1:
      case 2:
      case 3:
        return make_add(head, things());
      case 4:
        return make_add(head, one_fracture(), &test);
      case 5:
        return make_add(head, one_remark(), nullptr, &layer);
      case 6:
        return make_change(head, layer, one_layer());
      case 7:
        return make_change(head, some(firnbook::Thing::fracture), one_fracture());
      case 8:
        return make_remove(head, some(static_cast<firnbook::Thing>(dice_.roll(33))));
      case 9:
        return make_clear(head, &layer,
                          {{-1, -1, static_cast<std::uint16_t>(dice_.roll(18)), firnbook::Thing::layer}});
      case 10:
        return make_split(head, layer, depth());
      case 11:
        return make_merge(head, layer, other);
      case 12:
        return dice_.roll(2) == 0 ? make_shift(head, amount) : make_rescale(head, 2500 + amount, 2500);
      default:
        return dice_.roll(2) == 0 ? make_undo(head, some_edit()) : make_redo(head, some_edit());
    }
  }

  Hand hand_;
  Dice dice_;
  std::vector<EditKey> keys_;
};

}  // namespace firn::tests
