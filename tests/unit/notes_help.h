// Field notes read for a test, and pits printed as notes.
#pragma once

#include <gtest/gtest.h>

#include <fstream>
#include <iterator>
#include <memory>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "notation/notes.h"
#include "recording/draft.h"

namespace firn::tests {

using notation::NotesOptions;
using notation::NotesRead;
using recording::Bytes;

inline std::string file_text(const std::string& name) {
  std::ifstream file(std::string(FIRN_TEST_DATA "/") + name, std::ios::binary);
  EXPECT_TRUE(file) << name;
  return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

inline const char* const kDemoNotes[] = {"larch-bowl-entry.txt", "tarn-shoulder.txt"};

inline std::string shown(const Failure& failure) {
  return std::to_string(failure.line) + ":" + std::to_string(failure.column) + ": " + failure.what + " (" +
         failure.remedy + ")";
}

// Notes that must be understood.
inline NotesRead read_well(std::string_view text, const NotesOptions& options = {}) {
  std::vector<Failure> others;
  auto notes = notation::read_notes(text, options, others);
  EXPECT_TRUE(notes) << shown(notes.failure()) << "\nin\n" << std::string(text.substr(0, 2000));
  if (!notes) return {std::make_unique<firnbook::PitT>(), {}};
  return std::move(*notes);
}

// The first failure of notes that must be refused.
inline Failure refusal(std::string_view text, std::vector<Failure>* others = nullptr) {
  std::vector<Failure> rest;
  auto notes = notation::read_notes(text, {}, rest);
  EXPECT_FALSE(notes) << text;
  if (others != nullptr) *others = std::move(rest);
  return notes ? Failure{} : notes.failure();
}

inline Bytes bytes_of(std::string_view notes) {
  return recording::to_bytes(*read_well(notes).pit);
}

struct Printed {
  std::string text;
  std::vector<firnbook::Place> lost;
};
inline Printed print(const Bytes& pit) {
  Printed printed;
  notation::write_notes(printed.text, *firnbook::GetPit(pit.data()), printed.lost);
  return printed;
}

// What the notes print as, once read; reading that must give the same bytes.
inline std::string canonical(std::string_view notes) {
  const Bytes pit = bytes_of(notes);
  const Printed printed = print(pit);
  EXPECT_TRUE(printed.lost.empty()) << printed.text;
  EXPECT_EQ(bytes_of(printed.text), pit) << "printed as\n" << printed.text;
  return printed.text;
}

}  // namespace firn::tests
