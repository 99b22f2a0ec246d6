// Reads one test line. Private to the notation: parse_test is the way in.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "notation/phrases.h"

namespace firn::notation {

class TestReader : private PhraseReader {
 public:
  TestReader(std::string_view line, std::vector<Failure>* remarks) : PhraseReader(line, remarks) {}

  Result<std::vector<firnbook::StabilityTestT>> read();
  // The kind of test at the start of the line, and nothing more.
  bool read_kind();
  bool starts_like_a_test();

 private:
  // test_score.cpp: the kind and the score.
  bool accept_spelled_kind();
  bool fail_unknown_kind(std::string_view letters);
  bool read_score(bool first);
  bool read_tap_score(bool first);
  bool read_column_score(bool first);
  bool read_saw_score();
  bool read_block_score(bool first);
  bool read_shear_score(bool first);
  bool read_force_score();
  bool read_taps(std::string_view digits, flatbuffers::Optional<std::uint8_t>& tap);
  bool nothing_broke(bool first, std::size_t at);
  bool agree(firnbook::LoadStage stage, std::uint8_t tap, std::size_t at);
  bool digits_are_a_length(std::size_t after);
  std::string_view taps_ahead();

  // test_line.cpp: everything behind the score.
  bool read_segment(bool first);
  bool read_attributes();
  bool read_attribute();
  bool read_keyword(std::size_t at, bool& taken);
  bool accept_flag(std::size_t at, bool& taken);
  bool read_group(std::size_t at);
  bool read_group_item();
  bool read_group_end(std::size_t at);
  bool read_word(std::size_t at);
  bool fail_unexpected();
  bool settle_outcome();

  // The fracture that is being read, made when its first value stands there; null after a failure.
  firnbook::FractureT* fracture(std::size_t at);
  bool read_depth(firnbook::Datum datum, std::size_t at);
  bool set_fracture_depth(const firnbook::Depth& depth, std::size_t at);

  template <auto Field>
  bool of_fracture(std::string_view name, std::size_t at);
  template <auto Field>
  bool of_test(std::string_view name, std::size_t at);
  bool keyword_fracture(std::string_view name, std::size_t at);
  bool keyword_on(std::string_view name, std::size_t at);
  bool keyword_force(std::string_view name, std::size_t at);
  bool keyword_unreliable(std::string_view name, std::size_t at);
  bool keyword_test(std::string_view name, std::size_t at);
  bool keyword_column(std::string_view name, std::size_t at);
  bool accept_times();
  bool keyword_slope(std::string_view name, std::size_t at);
  bool keyword_no_fracture(std::string_view name, std::size_t at);
  bool keyword_not_valid(std::string_view name, std::size_t at);

  struct Keyword {
    const char* words;
    const char* name;
    bool (TestReader::*read)(std::string_view name, std::size_t at);
  };
  static const Keyword kKeywords[];

  firnbook::StabilityTestT test_;
  firnbook::FractureT* fracture_ = nullptr;
  firnbook::LayerT* layer_ = nullptr;  // after `on`
  std::size_t no_fracture_at_ = 0;
  std::uint8_t repeat_ = 1;
  bool said_no_fracture_ = false;  // CTN, ECTX, RB7, or in words
  bool said_outcome_ = false;
};

}  // namespace firn::notation
