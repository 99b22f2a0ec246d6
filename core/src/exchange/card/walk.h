// A pit on its way to or from the bits of a card, table by table.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "exchange/card/values.h"
#include "exchange/notices.h"

namespace firn::exchange::card {

class Walk {
 public:
  Walk(Bits& bits, firnbook::PitT& pit, Notices& notices) : bits_(bits), pit_(pit), notices_(notices) {}

  void pit();

 private:
  struct At;

  void table(const Layout& layout, const form::Table& table, void* object, const void* before);
  std::uint64_t code_shape(const Layout& layout, std::uint64_t present);
  std::uint64_t code_one_by_one(const Layout& layout, std::uint64_t present);
  void field(const At& at);
  void optional(const At& at);
  void depth(const At& at);
  void list(const At& at);
  void elements(const At& at);
  void skip_late(const Layout& layout);
  std::string path() const;

  // How the walk got where it is, for what is told of fields that are not known here.
  struct Place {
    std::string_view name;
    std::size_t index;
  };

  Bits& bits_;
  firnbook::PitT& pit_;
  Notices& notices_;
  Depths depths_;
  Moments moments_;
  Texts texts_;
  std::vector<Place> place_;
};

}  // namespace firn::exchange::card
