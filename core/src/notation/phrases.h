// Phrases that a test line is made of: codes, lengths, depths, dates, the layer that something broke in.
// Private to the notation.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <type_traits>
#include <vector>

#include "notation/scanner.h"
#include "schemas/pit_generated.h"
#include "support/form.h"
#include "vocabulary/codes.h"

namespace firn::notation {

// "cut" for cut_10um: a table's field as the lists of unreliable values name it.
std::string_view field_name(const form::Table& table, std::size_t field);

// The value of the longest code of the table that stands at the cursor as whole words, or of `?77`, the way a
// number without a code is written.
std::optional<std::uint8_t> accept_value(Scanner& scanner, const CodeTable& table);

template <class E>
std::optional<E> accept_code(Scanner& scanner) {
  const std::optional<std::uint8_t> value = accept_value(scanner, code_table<E>());
  return value ? std::optional<E>(static_cast<E>(*value)) : std::nullopt;
}

class PhraseReader {
 protected:
  PhraseReader(std::string_view line, std::vector<Failure>* remarks) : scanner_(line), remarks_(remarks) {}

  // Every reading function answers false after it has put down a failure.
  bool fail(Failure failure);
  bool fail_expected(std::string_view what, std::string_view remedy = {});
  bool fail_twice(std::string_view name, std::size_t at);
  std::size_t here();

  template <class T>
  bool set(flatbuffers::Optional<T>& field, T value, std::string_view name, std::size_t at) {
    if (field) return fail_twice(name, at);
    field = value;
    return true;
  }

  bool read_value(std::string_view name, flatbuffers::Optional<std::uint8_t>& field, std::size_t at);
  // A length in centimetres.
  bool read_value(std::string_view name, flatbuffers::Optional<std::int32_t>& field, std::size_t at);
  template <class E, class = std::enable_if_t<std::is_enum_v<E>>>
  bool read_value(std::string_view name, flatbuffers::Optional<E>& field, std::size_t at) {
    const std::optional<std::uint8_t> value = read_code(name, code_table<E>());
    return value && set(field, static_cast<E>(*value), name, at);
  }

  bool read_length(std::string_view what, LengthUnit unit, Length& length);
  // What follows `down`, `up` or `@`.
  bool read_depth_after(firnbook::Datum datum, firnbook::Depth& depth);
  // `down 68`, `up 72`, `@68`, `at 68`; false without a failure when none of them stands here.
  bool accept_datum(firnbook::Datum& datum);
  bool set_depth(std::unique_ptr<firnbook::Depth>& field, const firnbook::Depth& depth, std::string_view name,
                 std::size_t at);
  bool read_words(std::string& field, std::string_view name);
  // `(depth, tap)` after the word unreliable.
  bool read_unreliable(const form::Table& table, std::uint64_t& mask);

  // One part of the layer after `on`; `taken` tells whether there was one.
  bool read_layer_part(firnbook::LayerT& layer, bool& taken);
  // One item of a pair of brackets behind `on`: a second form, or part of the layer's name.
  bool read_layer_item(firnbook::LayerT& layer, bool& taken);

  Scanner scanner_;
  std::vector<Failure>* remarks_;
  Failure failure_;

 private:
  std::optional<std::uint8_t> read_code(std::string_view name, const CodeTable& table);
  void remark(std::size_t at, const Length& length);
  bool read_size(firnbook::LayerT& layer, std::size_t at);
  bool read_layer_word(firnbook::LayerT& layer, bool& taken);
  bool read_layer_depth(std::unique_ptr<firnbook::Depth>& field, std::string_view name);
  bool read_candidates(firnbook::LayerT& layer);
  bool read_formed(firnbook::LayerT& layer);
  bool accept_moment(firnbook::Moment& moment);
};

}  // namespace firn::notation
