// Two pits given as field notes, and what comes of comparing them.
#pragma once

#include <gtest/gtest.h>

#include <string>
#include <string_view>
#include <vector>

#include "comparison/comparison.h"
#include "notes_help.h"
#include "pit/verify.h"
#include "pits.h"

namespace firn::tests {

using comparison::Parameters;
using firnbook::FractureAspect;
using firnbook::FracturePair;
using firnbook::LayerAspect;
using firnbook::LayerPair;
using firnbook::Likeness;
using firnbook::NotComparable;
using firnbook::Pairing;
using firnbook::TestPair;

class Seen {
 public:
  explicit Seen(std::vector<std::uint8_t> bytes) : bytes_(std::move(bytes)) {
    const auto verified = pit::verify(bytes_.data(), bytes_.size(), {}, aligned_);
    ok = static_cast<bool>(verified);
    if (ok) view.decode(**verified);
  }
  explicit Seen(std::string_view notes) : Seen(bytes_of(notes)) {}
  explicit Seen(const firnbook::PitT& pit) : Seen(bytes_of(pit)) {}
  Seen(const Seen&) = delete;
  Seen& operator=(const Seen&) = delete;

  bool ok = false;
  pit::View view;

 private:
  std::vector<std::uint8_t> bytes_;
  pit::AlignedBytes aligned_;
};

class Compared {
 public:
  Compared(const Seen& reference, const Seen& other, const Parameters& parameters = {}) {
    comparison::compare(reference.view, other.view, parameters, {1, 2}, builder_);
    flatbuffers::Verifier verifier(builder_.GetBufferPointer(), builder_.GetSize());
    EXPECT_TRUE(firnbook::VerifyPitComparisonBuffer(verifier));
    root = firnbook::GetPitComparison(builder_.GetBufferPointer());
    comparison::append_note(note, *root, reference.view, other.view);
  }

  // "0=0 1=- -=1 2=2": stored positions; "!" for those that are not comparable.
  std::string layers() const {
    std::string out;
    for (const LayerPair* one : *root->layers()) {
      if (!out.empty()) out += ' ';
      out += one->reference() < 0 ? "-" : std::to_string(one->reference());
      out += one->pairing() == Pairing::not_comparable ? '!' : '=';
      out += one->other() < 0 ? "-" : std::to_string(one->other());
    }
    return out;
  }
  const LayerPair& layer(std::uint32_t i) const { return *root->layers()->Get(i); }
  const FracturePair& fracture(std::uint32_t i) const { return *root->fractures()->Get(i); }
  std::vector<std::uint8_t> bytes() const {
    return {builder_.GetBufferPointer(), builder_.GetBufferPointer() + builder_.GetSize()};
  }

  const firnbook::PitComparison* root = nullptr;
  std::string note;

 private:
  flatbuffers::FlatBufferBuilder builder_;
};

template <class Pair, class Aspect>
bool knows(const Pair& pair, Aspect aspect) {
  return (pair.known() >> static_cast<unsigned>(aspect) & 1) != 0;
}

}  // namespace firn::tests
