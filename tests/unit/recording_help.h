// Somebody who records: counts sequences and clocks, hands edits to a recorder and asks for the pit.
#pragma once

#include <gtest/gtest.h>

#include <cstdint>
#include <memory>
#include <string>
#include <utility>
#include <vector>

#include "pit/verify.h"
#include "pits.h"
#include "recording/draft.h"
#include "recording/edits.h"
#include "recording/recorder.h"

namespace firn::tests {

using recording::Bytes;
using recording::EditHead;
using recording::EditKey;
using recording::make_set;
using recording::Recorder;

inline Bytes pit_of(const Recorder& recorder, recording::FoldReport* report = nullptr) {
  Result<Bytes> pit = recorder.pit(report);
  EXPECT_TRUE(pit) << pit.failure().what;
  return pit ? *pit : Bytes{};
}

inline const firnbook::Pit& read(const Bytes& pit) {
  flatbuffers::Verifier verifier(pit.data(), pit.size());
  EXPECT_TRUE(firnbook::VerifyPitBuffer(verifier));
  return *firnbook::GetPit(pit.data());
}

class Hand {
 public:
  explicit Hand(std::uint64_t device = 7) : device_(device) {}

  EditHead next() {
    EditHead head;
    head.key = {device_, ++sequence_};
    head.clock = ++clock_;
    head.observer = "KL";
    return head;
  }
  EditKey last() const { return {device_, sequence_}; }
  void see(std::uint64_t clock) { clock_ = clock; }

  // Records an edit that must be taken, and answers with its key.
  EditKey record(const Bytes& edit) {
    const Done verdict = recorder.apply(edit.data(), edit.size());
    EXPECT_TRUE(verdict) << verdict.failure().what;
    edits.push_back(edit);
    return last();
  }
  firn_status refused(const Bytes& edit) {
    const Bytes before = pit_of(recorder);
    const std::size_t count = recorder.edit_count();
    const std::uint64_t clock = recorder.next_clock();
    const Done verdict = recorder.apply(edit.data(), edit.size());
    EXPECT_FALSE(verdict);
    EXPECT_FALSE(verdict.failure().what.empty());
    EXPECT_FALSE(verdict.failure().remedy.empty());
    EXPECT_EQ(pit_of(recorder), before);
    EXPECT_EQ(recorder.edit_count(), count);
    EXPECT_EQ(recorder.next_clock(), clock);
    return verdict.failure().status;
  }
  EditKey set(const firnbook::PitT& fields) { return record(make_set(next(), fields)); }
  EditKey add(const firnbook::PitT& fields, const firnbook::Target* into = nullptr,
              const firnbook::Target* about = nullptr) {
    return record(make_add(next(), fields, into, about));
  }
  EditKey change(const firnbook::Target& target, const firnbook::PitT& fields,
                 const firnbook::Target* about = nullptr) {
    return record(make_change(next(), target, fields, about));
  }
  EditKey remove(const firnbook::Target& target) { return record(make_remove(next(), target)); }
  EditKey clear(const firnbook::Target* target, const std::vector<firnbook::Place>& fields) {
    return record(make_clear(next(), target, fields));
  }
  EditKey undo(EditKey edit) { return record(make_undo(next(), edit)); }
  EditKey redo(EditKey edit) { return record(make_redo(next(), edit)); }
  // A layer with nothing but its depths.
  firnbook::Target layer(std::int32_t top_cm, std::int32_t bottom_cm) {
    firnbook::PitT fields;
    add_layer(fields, cm(top_cm), cm(bottom_cm));
    return recording::target_of(add(fields), firnbook::Thing::layer);
  }
  Bytes pit() const { return pit_of(recorder); }

  Recorder recorder{pit::Limits{}};
  std::vector<Bytes> edits;

 private:
  std::uint64_t device_;
  std::uint64_t sequence_ = 0;
  std::uint64_t clock_ = 0;
};

// The same edits in another recorder, in the order given.
inline Bytes replay(const std::vector<Bytes>& edits) {
  Recorder recorder{pit::Limits{}};
  for (const Bytes& edit : edits) {
    const Done verdict = recorder.apply(edit.data(), edit.size());
    EXPECT_TRUE(verdict) << verdict.failure().what;
  }
  return pit_of(recorder);
}

// The same numbers on every machine, unlike the distributions of <random>.
class Dice {
 public:
  explicit Dice(std::uint64_t seed) : state_(seed) {}
  std::uint32_t roll(std::uint32_t sides) {
    state_ = state_ * 6364136223846793005u + 1442695040888963407u;
    return static_cast<std::uint32_t>(state_ >> 33) % sides;
  }
  template <class T>
  void shuffle(std::vector<T>& list) {
    for (std::size_t i = list.size(); i > 1; --i) {
      std::swap(list[i - 1], list[roll(static_cast<std::uint32_t>(i))]);
    }
  }

 private:
  std::uint64_t state_;
};

}  // namespace firn::tests
