#include "pit/verify.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>
#include <cstring>
#include <memory>
#include <string>
#include <vector>

#include "../pits.h"
#include "checking/check.h"
#include "pit/view.h"

namespace firn::pit {
namespace {

using Bytes = std::vector<std::uint8_t>;

firn_status status_of(const Bytes& bytes, const Limits& limits = {}) {
  AlignedBytes aligned;
  const auto verified = verify(bytes.data(), bytes.size(), limits, aligned);
  return verified ? FIRN_OK : verified.failure().status;
}

// Everything a reader does with bytes from elsewhere. Crashes and sanitizers are what can fail here.
bool read_through(const std::uint8_t* bytes, std::size_t size) {
  static AlignedBytes aligned;
  static View view;
  static checking::Checks checks;
  const auto verified = verify(bytes, size, {}, aligned);
  if (!verified) {
    EXPECT_FALSE(verified.failure().what.empty());
    EXPECT_FALSE(verified.failure().remedy.empty());
    return false;
  }
  view.decode(**verified);
  checking::check(view, checks);
  std::string text;
  for (const firnbook::Check& check : checks) {
    checking::append_message(text, check);
    checking::append_remedy(text, check);
  }
  return true;
}

TEST(Verify, AcceptsBothDemoPits) {
  EXPECT_EQ(status_of(tests::bytes_of(*tests::larch_bowl_entry())), FIRN_OK);
  EXPECT_EQ(status_of(tests::bytes_of(*tests::tarn_shoulder())), FIRN_OK);
  EXPECT_EQ(status_of(tests::bytes_of(firnbook::PitT())), FIRN_OK);
}

TEST(Verify, NothingGiven) {
  AlignedBytes aligned;
  for (const std::size_t size : {std::size_t{0}, std::size_t{100}}) {
    const auto verified = verify(nullptr, size, {}, aligned);
    ASSERT_FALSE(verified);
    EXPECT_EQ(verified.failure().status, FIRN_NULL_ARGUMENT);
  }
}

// Copies of exactly that length, so that a read past the end is a read past the allocation.
TEST(Verify, RefusesEveryTruncation) {
  const Bytes whole = tests::bytes_of(*tests::tarn_shoulder());
  for (std::size_t size = 0; size < whole.size(); ++size) {
    const std::unique_ptr<std::uint8_t[]> cut(new std::uint8_t[size]);
    std::memcpy(cut.get(), whole.data(), size);
    EXPECT_FALSE(read_through(cut.get(), size)) << size;
  }
  EXPECT_EQ(status_of(Bytes(whole.begin(), whole.begin() + 7)), FIRN_TOO_SMALL);
  EXPECT_EQ(status_of(Bytes(whole.begin(), whole.begin() + 8)), FIRN_DAMAGED);
}

TEST(Verify, EveryFlippedBitIsRefusedOrRead) {
  Bytes bytes = tests::bytes_of(*tests::tarn_shoulder());
  std::size_t refused = 0;
  for (std::size_t bit = 0; bit < bytes.size() * 8; ++bit) {
    const auto mask = static_cast<std::uint8_t>(1u << bit % 8);
    bytes[bit / 8] = static_cast<std::uint8_t>(bytes[bit / 8] ^ mask);
    if (!read_through(bytes.data(), bytes.size())) ++refused;
    bytes[bit / 8] = static_cast<std::uint8_t>(bytes[bit / 8] ^ mask);
  }
  // Offsets are refused, numbers are read: both happen in every pit.
  EXPECT_GT(refused, bytes.size() / 10);
  EXPECT_LT(refused, bytes.size() * 8);
  EXPECT_TRUE(read_through(bytes.data(), bytes.size()));
}

// Bytes overwritten with the values that offsets and counts break on.
TEST(Verify, EveryByteSetToTheExtremesIsRefusedOrRead) {
  Bytes bytes = tests::bytes_of(*tests::larch_bowl_entry());
  for (std::size_t i = 0; i + 4 <= bytes.size(); ++i) {
    for (const std::uint32_t value : {0u, 1u, 0x7FFFFFFFu, 0x80000000u, 0xFFFFFFFFu}) {
      const Bytes kept(bytes.begin() + static_cast<std::ptrdiff_t>(i),
                       bytes.begin() + static_cast<std::ptrdiff_t>(i) + 4);
      for (std::size_t k = 0; k < 4; ++k) bytes[i + k] = static_cast<std::uint8_t>(value >> 8 * k);
      read_through(bytes.data(), bytes.size());
      std::copy(kept.begin(), kept.end(), bytes.begin() + static_cast<std::ptrdiff_t>(i));
    }
  }
  EXPECT_TRUE(read_through(bytes.data(), bytes.size()));
}

TEST(Verify, ReadsBytesAtEveryAlignment) {
  const Bytes whole = tests::bytes_of(*tests::tarn_shoulder());
  std::vector<std::uint64_t> room(whole.size() / 8 + 3);
  auto* const base = reinterpret_cast<std::uint8_t*>(room.data());
  for (std::size_t offset = 0; offset < 8; ++offset) {
    std::memcpy(base + offset, whole.data(), whole.size());
    AlignedBytes aligned;
    const auto verified = verify(base + offset, whole.size(), {}, aligned);
    ASSERT_TRUE(verified) << offset;
    EXPECT_EQ(aligned.words.empty(), offset == 0);
    View view;
    view.decode(**verified);
    EXPECT_EQ(view.layers().size(), 7u);
    EXPECT_EQ(view.hs(), cm(140));
  }
}

TEST(Verify, RefusesMoreThanTheLimit) {
  const Bytes whole = tests::bytes_of(*tests::larch_bowl_entry());
  EXPECT_EQ(status_of(whole, Limits{whole.size()}), FIRN_OK);
  EXPECT_EQ(status_of(whole, Limits{whole.size() - 1}), FIRN_TOO_LARGE);
  // Sizes that the verifier itself would assert on are refused before it is made, whatever the limit.
  AlignedBytes aligned;
  const auto verified = verify(whole.data(), std::size_t{1} << 31, Limits{SIZE_MAX}, aligned);
  ASSERT_FALSE(verified);
  EXPECT_EQ(verified.failure().status, FIRN_TOO_LARGE);
}

TEST(Verify, RefusesOtherSchemas) {
  Bytes bytes = tests::bytes_of(*tests::larch_bowl_entry());
  for (const char* identifier : {"FIRR", "FIRE", "firn", "FIRN"}) {
    std::memcpy(bytes.data() + 4, identifier, 4);
    EXPECT_EQ(status_of(bytes), std::string(identifier) == "FIRN" ? FIRN_OK : FIRN_WRONG_KIND);
  }
  EXPECT_EQ(status_of(Bytes(64, 0)), FIRN_WRONG_KIND);
  EXPECT_EQ(status_of(Bytes(64, 0xFF)), FIRN_WRONG_KIND);
}

// One test in a list of n, n times the same, with one list of n fractures that are all the same one: a few
// kilobytes that hold n * n fractures.
Bytes shared_tables(std::size_t n) {
  flatbuffers::FlatBufferBuilder builder;
  const auto fracture = firnbook::CreateFracture(builder);
  const auto fractures =
      builder.CreateVector(std::vector<flatbuffers::Offset<firnbook::Fracture>>(n, fracture));
  firnbook::StabilityTestBuilder test_builder(builder);
  test_builder.add_fractures(fractures);
  const auto test = test_builder.Finish();
  const auto tests = builder.CreateVector(std::vector<flatbuffers::Offset<firnbook::StabilityTest>>(n, test));
  firnbook::PitBuilder pit_builder(builder);
  pit_builder.add_tests(tests);
  firnbook::FinishPitBuffer(builder, pit_builder.Finish());
  return {builder.GetBufferPointer(), builder.GetBufferPointer() + builder.GetSize()};
}

TEST(Verify, RefusesTablesThatAreSharedMassively) {
  const auto start = std::chrono::steady_clock::now();
  EXPECT_EQ(status_of(shared_tables(100)), FIRN_DAMAGED);
  const Bytes bomb = shared_tables(100000);  // 800 KB that say ten thousand million fractures
  EXPECT_LT(bomb.size(), 1000000u);
  EXPECT_EQ(status_of(bomb), FIRN_DAMAGED);
  const auto seconds = std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
  EXPECT_LT(seconds, 5.0);  // what it says would take minutes to walk
}

// The rule about shared tables must not turn away honest pits, however small their tables are.
TEST(Verify, AcceptsTenThousandEmptyLayers) {
  firnbook::PitT pit;
  for (int i = 0; i < 10000; ++i) pit.layers.push_back(std::make_unique<firnbook::LayerT>());
  EXPECT_EQ(status_of(tests::bytes_of(pit)), FIRN_OK);
}

TEST(Verify, AcceptsMegabytesOfWords) {
  firnbook::PitT pit;
  pit.title = std::string(std::size_t{4} << 20, 'x');
  const Bytes bytes = tests::bytes_of(pit);
  EXPECT_EQ(status_of(bytes), FIRN_OK);
  EXPECT_TRUE(read_through(bytes.data(), bytes.size()));
}

}  // namespace
}  // namespace firn::pit
