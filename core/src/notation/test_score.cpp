// The start of a test line: CTM17, ECTP13, PST 32/100, RB4, STE, hand shear easy, SF 210 N.
#include <algorithm>

#include "notation/test_reader.h"

namespace firn::notation {
namespace {

using firnbook::Crossing;
using firnbook::FractureT;
using firnbook::LoadStage;
using firnbook::ShearEase;
using firnbook::TestKind;
using firnbook::TestOutcome;

struct Head {
  std::string_view letters;
  TestKind kind;
  // What may follow the letters without a blank, each between blanks; digits apart.
  std::string_view results;
};
// Longer heads first: ECT is no E before CT.
constexpr Head kHeads[] = {
    {"ECT", TestKind::ECT, "P N X PV NV"}, {"PST", TestKind::PST, ""},
    {"DTT", TestKind::DT, "V E M H N"},    {"CT", TestKind::CT, "V E M H N"},
    {"DT", TestKind::DT, "V E M H N"},     {"RB", TestKind::RB, ""},
    {"ST", TestKind::ST, "C V E M H N"},   {"SS", TestKind::ST, "C V E M H N"},
    {"SF", TestKind::shear_frame, ""},
};

struct SpelledKind {
  std::string_view words;
  TestKind kind;
};
constexpr SpelledKind kSpelled[] = {
    {"hand shear", TestKind::hand_shear},
    {"shovel shear", TestKind::ST},
    {"shear frame", TestKind::shear_frame},
    {"other", TestKind::other},
    {"compression test", TestKind::CT},
    {"extended column test", TestKind::ECT},
    {"propagation saw test", TestKind::PST},
    {"rutschblock", TestKind::RB},
    {"deep tap", TestKind::DT},
};

bool is_digit(char character) {
  return character >= '0' && character <= '9';
}

char upper(char character) {
  return character >= 'a' && character <= 'z' ? static_cast<char>(character - ('a' - 'A')) : character;
}

bool starts_with(std::string_view text, std::string_view start) {
  return same_code(text.substr(0, start.size()), start);
}

bool is_one_of(std::string_view text, std::string_view list) {
  while (!list.empty()) {
    const std::size_t blank = std::min(list.find(' '), list.size());
    if (same_code(list.substr(0, blank), text)) return true;
    list.remove_prefix(std::min(blank + 1, list.size()));
  }
  return false;
}

const Head* head_of(std::string_view letters) {
  for (const Head& head : kHeads) {
    if (!starts_with(letters, head.letters)) continue;
    const std::string_view result = letters.substr(head.letters.size());
    if (result.empty() || is_one_of(result, head.results)) return &head;
  }
  return nullptr;
}

// Two neighbouring letters changed places: ETCN.
bool swapped(std::string_view letters, std::string_view meant) {
  if (letters.size() != meant.size()) return false;
  std::size_t first = 0;
  while (first < meant.size() && upper(letters[first]) == meant[first]) ++first;
  return first + 1 < meant.size() && upper(letters[first]) == meant[first + 1] &&
         upper(letters[first + 1]) == meant[first] &&
         same_code(letters.substr(first + 2), meant.substr(first + 2));
}

// What was meant by letters with two of them swapped: "ECTN" for ETCN; empty when it is not that.
std::string unswapped(std::string_view letters) {
  for (const Head& head : kHeads) {
    std::string_view results = head.results;
    if (swapped(letters, head.letters)) return std::string(head.letters);
    while (!results.empty()) {
      const std::size_t blank = std::min(results.find(' '), results.size());
      std::string meant(head.letters);
      meant += results.substr(0, blank);
      if (swapped(letters, meant)) return meant;
      results.remove_prefix(std::min(blank + 1, results.size()));
    }
  }
  return {};
}

// [letters][digits], with at least one of them and nothing else.
bool splits(std::string_view word, std::string_view letters, std::string_view& letter,
            std::string_view& digits) {
  std::size_t count = 0;
  while (count < word.size() && !is_digit(word[count])) ++count;
  letter = word.substr(0, count);
  digits = word.substr(count);
  if (word.empty() || (!letter.empty() && !is_one_of(letter, letters))) return false;
  return std::all_of(digits.begin(), digits.end(), is_digit);
}

std::string_view stage_range(LoadStage stage) {
  return stage == LoadStage::wrist ? "1 to 10" : stage == LoadStage::elbow ? "11 to 20" : "21 to 30";
}

}  // namespace

bool TestReader::starts_like_a_test() {
  if (scanner_.next() == '?') return true;
  const std::size_t start = here();
  if (accept_spelled_kind()) {
    scanner_.seek(start);
    return true;
  }
  const std::string_view letters = scanner_.peek_letters();
  for (const Head& head : kHeads) {
    // Not "strength" or "start": a result is two letters at most.
    if (starts_with(letters, head.letters) && letters.size() <= head.letters.size() + 2) return true;
  }
  const std::string_view after = scanner_.rest().substr(letters.size());
  return !unswapped(letters).empty() && (letters.size() > 2 || (!after.empty() && is_digit(after[0])));
}

bool TestReader::accept_spelled_kind() {
  for (const SpelledKind& spelled : kSpelled) {
    if (!scanner_.accept(spelled.words)) continue;
    test_.kind = spelled.kind;
    return true;
  }
  return false;
}

bool TestReader::read_kind() {
  if (scanner_.next() == '?') {
    if (scanner_.peek_word() == "?") {
      scanner_.take_word();
      return true;
    }
    return read_value("kind of test", test_.kind, here());
  }
  if (accept_spelled_kind()) return true;
  const std::string_view letters = scanner_.peek_letters();
  const Head* head = head_of(letters);
  if (head == nullptr) return fail_unknown_kind(letters);
  test_.kind = head->kind;
  scanner_.seek(here() + head->letters.size());
  return true;
}

bool TestReader::fail_unknown_kind(std::string_view letters) {
  std::string remedy = unswapped(letters);
  if (!remedy.empty()) {
    for (char next : scanner_.rest().substr(letters.size(), 2)) {
      if (is_digit(next)) remedy += next;
    }
    remedy = "did you mean " + remedy + "?";
  } else {
    remedy = "another kind of test is written in words: other \"small block\" down 40";
  }
  return fail_expected("a test result (CT, ECT, PST, RB, DT, ST, SF, hand shear or other)", remedy);
}

bool TestReader::read_score(bool first) {
  if (!test_.kind) return true;
  switch (*test_.kind) {
    case TestKind::CT:
    case TestKind::DT:
      return read_tap_score(first);
    case TestKind::ECT:
      return read_column_score(first);
    case TestKind::PST:
      return read_saw_score();
    case TestKind::RB:
      return read_block_score(first);
    case TestKind::ST:
    case TestKind::hand_shear:
      return read_shear_score(first);
    case TestKind::shear_frame:
      return read_force_score();
    default:
      return true;
  }
}

// "CT 12 cm" is a depth and no score.
bool TestReader::digits_are_a_length(std::size_t after) {
  const std::string_view rest = scanner_.line().substr(after);
  if (!rest.empty() && rest[0] == '"') return true;
  Scanner ahead(rest);
  for (std::string_view unit : {"cm", "mm", "m", "in", "inch", "inches", "ft", "feet"}) {
    if (ahead.accept(unit)) return true;
  }
  return false;
}

// The taps of "CTM 17", where a blank stands before them.
std::string_view TestReader::taps_ahead() {
  const std::string_view word = scanner_.peek_word();
  const bool is_number = !word.empty() && std::all_of(word.begin(), word.end(), is_digit);
  return is_number && !digits_are_a_length(here() + word.size()) ? word : std::string_view{};
}

bool TestReader::read_taps(std::string_view digits, flatbuffers::Optional<std::uint8_t>& tap) {
  const std::size_t at = here();
  int value = 0;
  for (char digit : digits) value = std::min(value * 10 + (digit - '0'), 999);
  if (value < 1 || value > kMostTaps) {
    return fail_expected("taps from 1 to 30", "a test ends after 30 taps: without a fracture that is N or X");
  }
  scanner_.seek(at + digits.size());
  return set(tap, static_cast<std::uint8_t>(value), "taps", at);
}

bool TestReader::nothing_broke(bool first, std::size_t at) {
  if (!first) {
    return fail(scanner_.failure_at(at, "no fracture, behind a fracture of the same column",
                                    "write it as a test of its own", FIRN_NOTES_CONTRADICT));
  }
  said_no_fracture_ = said_outcome_ = true;
  no_fracture_at_ = at;
  test_.outcome = TestOutcome::no_fracture;
  return true;
}

bool TestReader::agree(LoadStage stage, std::uint8_t tap, std::size_t at) {
  if (stage_of_tap(tap) == stage) return true;
  std::string what(code_of(stage));
  what += " stands for taps ";
  what += stage_range(stage);
  what += ", counted through from the first tap";
  return fail(scanner_.failure_at(
      at, what, "mend the letter or the number; the 7th tap from the elbow is M17", FIRN_NOTES_CONTRADICT));
}

bool TestReader::read_tap_score(bool first) {
  const bool touches = !scanner_.rest().empty() && is_digit(scanner_.rest()[0]);
  const std::size_t at = here();
  const std::string_view word = scanner_.peek_word();
  std::string_view letter;
  std::string_view digits;
  if (!splits(word, "V E M H N", letter, digits)) {
    return touches ? fail_expected("taps as a whole number from 1 to 30, then a blank") : true;
  }
  if (letter.empty() && digits_are_a_length(at + word.size())) return true;
  scanner_.seek(at + letter.size());
  if (same_code(letter, "N")) {
    return digits.empty() ? nothing_broke(first, at) : fail_expected("nothing behind N: it has no taps");
  }
  FractureT* broken = fracture(at);
  if (broken == nullptr) return false;
  const auto stage = parse_code<LoadStage>(letter);
  if (digits.empty()) digits = taps_ahead();
  if (digits.empty()) {
    broken->stage = stage;
    return true;
  }
  if (stage == LoadStage::isolating) return fail_expected("nothing behind V: it broke before the first tap");
  const std::size_t tap_at = here();
  return read_taps(digits, broken->tap) && (!stage || agree(*stage, *broken->tap, tap_at));
}

bool TestReader::read_column_score(bool first) {
  const bool touches = !scanner_.rest().empty() && is_digit(scanner_.rest()[0]);
  const std::size_t at = here();
  const std::string_view word = scanner_.peek_word();
  std::string_view letter;
  std::string_view digits;
  if (!splits(word, "P N X PV NV", letter, digits)) {
    return touches ? fail_expected("taps as a whole number from 1 to 30, then a blank") : true;
  }
  if (letter.empty()) {
    if (digits_are_a_length(at + word.size())) return true;
    return fail_expected("P, N or X",
                         "P when the crack ran across the whole column, N when it did not; crack 12 when "
                         "nobody saw which");
  }
  scanner_.seek(at + letter.size());
  if (same_code(letter, "X")) {
    return digits.empty() ? nothing_broke(first, at) : fail_expected("nothing behind X: it has no taps");
  }
  FractureT* broken = fracture(at);
  if (broken == nullptr) return false;
  broken->crossing = upper(letter[0]) == 'P' ? Crossing::crossed : Crossing::not_crossed;
  if (letter.size() == 2) {
    broken->stage = LoadStage::isolating;
    return digits.empty() || fail_expected("nothing behind V: it broke before the first tap");
  }
  if (digits.empty()) digits = taps_ahead();
  return digits.empty() || read_taps(digits, broken->tap);
}

// 32/100, 25/END, or the cut alone.
bool TestReader::read_saw_score() {
  if (!scanner_.at_number()) return true;
  const std::size_t at = here();
  Length cut;
  if (!read_length("the length of the cut in cm", LengthUnit::cm, cut)) return false;
  FractureT* broken = fracture(at);
  if (broken == nullptr) return false;
  broken->cut_10um = cut.value_10um;
  if (!scanner_.accept('/')) return true;
  if (!scanner_.at_number()) {
    const auto end = accept_code<firnbook::SawEnd>(scanner_);
    if (!end) return fail_expected("the length of the column in cm, or End, SF or Arr");
    broken->saw_end = *end;
    return true;
  }
  const std::size_t length_at = here();
  Length column;
  if (!read_length("the length of the column in cm", LengthUnit::cm, column)) return false;
  // 12/40 in: the unit stands behind both.
  if (column.unit_written && !cut.unit_written && column.unit != LengthUnit::cm) {
    return fail(scanner_.failure_at(at, "a cut without the unit of the column",
                                    "write the unit behind both: 12in/40in"));
  }
  return set(test_.column_length_10um, column.value_10um, "length of the column", length_at);
}

bool TestReader::read_block_score(bool first) {
  const bool touches = !scanner_.rest().empty() && is_digit(scanner_.rest()[0]);
  const std::size_t at = here();
  const std::string_view word = scanner_.peek_word();
  if (word.size() != 1 || word[0] < '1' || word[0] > '7') {
    if (!touches) return true;
    return fail_expected("a step from 1 to 7", "RB7 is a block that did not break");
  }
  if (digits_are_a_length(at + 1)) return true;
  scanner_.take_word();
  if (word[0] == '7') return nothing_broke(first, at);
  FractureT* broken = fracture(at);
  if (broken == nullptr) return false;
  broken->step = static_cast<std::uint8_t>(word[0] - '0');
  return true;
}

bool TestReader::read_shear_score(bool first) {
  struct Spelled {
    std::string_view words;
    ShearEase ease;
  };
  constexpr Spelled kEases[] = {{"collapse", ShearEase::C},
                                {"very easy", ShearEase::V},
                                {"easy", ShearEase::E},
                                {"moderate", ShearEase::M},
                                {"hard", ShearEase::H}};
  const std::size_t at = here();
  std::optional<ShearEase> ease;
  for (const Spelled& spelled : kEases) {
    if (!ease && scanner_.accept(spelled.words)) ease = spelled.ease;
  }
  const std::string_view word = scanner_.peek_word();
  if (!ease && same_code(word, "N")) {
    scanner_.take_word();
    return nothing_broke(first, at);
  }
  if (!ease) {
    ease = parse_code<ShearEase>(word);
    if (!ease) return true;
    scanner_.take_word();
  }
  FractureT* broken = fracture(at);
  if (broken == nullptr) return false;
  broken->ease = *ease;
  return true;
}

bool TestReader::read_force_score() {
  return !scanner_.at_number() || keyword_force("force", here());
}

}  // namespace firn::notation
