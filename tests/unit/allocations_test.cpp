// A pit costs no allocation once the memory that is kept from pit to pit has grown to its size: nothing per
// layer, per test, per finding. Counted by replacing operator new in this program.

#include <gtest/gtest.h>

#include <atomic>
#include <cstdlib>
#include <memory>
#include <new>

#include "interpretation/interpret.h"
#include "pit/verify.h"
#include "pit/view.h"
#include "support/checksum.h"

namespace {
std::atomic<std::size_t> allocations{0};

void* counted(std::size_t size) {
  ++allocations;
  if (void* memory = std::malloc(size == 0 ? 1 : size)) return memory;
  throw std::bad_alloc();
}
}  // namespace

// The nothrow forms count too: std::stable_sort and its like use them for their working space.
void* operator new(std::size_t size) {
  return counted(size);
}
void* operator new[](std::size_t size) {
  return counted(size);
}
void* operator new(std::size_t size, const std::nothrow_t&) noexcept {
  ++allocations;
  return std::malloc(size == 0 ? 1 : size);
}
void* operator new[](std::size_t size, const std::nothrow_t&) noexcept {
  ++allocations;
  return std::malloc(size == 0 ? 1 : size);
}
void operator delete(void* memory) noexcept {
  std::free(memory);
}
void operator delete[](void* memory) noexcept {
  std::free(memory);
}
void operator delete(void* memory, std::size_t) noexcept {
  std::free(memory);
}
void operator delete[](void* memory, std::size_t) noexcept {
  std::free(memory);
}
void operator delete(void* memory, const std::nothrow_t&) noexcept {
  std::free(memory);
}
void operator delete[](void* memory, const std::nothrow_t&) noexcept {
  std::free(memory);
}

namespace firn {
namespace {

std::unique_ptr<firnbook::Depth> depth(std::int32_t centimetres) {
  return std::make_unique<firnbook::Depth>(pit::cm(centimetres), firnbook::Datum::surface,
                                           firnbook::Direction::vertical);
}

// Layers of 2 cm, soft and hard in turn, so that every boundary has something to find.
std::unique_ptr<firnbook::LayerT> layer(std::int32_t number) {
  const bool weak = number % 2 == 1;
  auto out = std::make_unique<firnbook::LayerT>();
  out->top = depth(2 * number);
  out->bottom = depth(2 * number + 2);
  out->hardness = weak ? firnbook::HandHardness::Fist : firnbook::HandHardness::Pencil;
  out->grain_form = weak ? firnbook::GrainForm::SH : firnbook::GrainForm::RG;
  out->grain_size_10um = weak ? pit::mm(5) : 30;
  return out;
}

std::unique_ptr<firnbook::StabilityTestT> test(std::int32_t number) {
  constexpr firnbook::TestKind kKinds[] = {firnbook::TestKind::CT, firnbook::TestKind::ECT,
                                           firnbook::TestKind::PST, firnbook::TestKind::RB};
  auto out = std::make_unique<firnbook::StabilityTestT>();
  out->kind = kKinds[number % 4];
  out->outcome = firnbook::TestOutcome::fractured;
  out->column_length_10um = pit::cm(100);
  auto fracture = std::make_unique<firnbook::FractureT>();
  fracture->depth = depth(2 * number + 1);
  fracture->tap = 12;
  fracture->character = firnbook::FractureCharacter::SP;
  fracture->crossing = firnbook::Crossing::crossed;
  fracture->cut_10um = pit::cm(30);
  fracture->saw_end = firnbook::SawEnd::End;
  fracture->step = 3;
  fracture->release = firnbook::ReleaseType::WB;
  out->fractures.push_back(std::move(fracture));
  return out;
}

flatbuffers::DetachedBuffer pit_of(std::int32_t layers) {
  firnbook::PitT pit;
  pit.snowpack = std::make_unique<firnbook::SnowpackT>();
  pit.snowpack->hs_10um = pit::cm(2 * layers);
  for (std::int32_t i = 0; i < layers; ++i) {
    pit.layers.push_back(layer(i));
    auto reading = std::make_unique<firnbook::TemperatureReadingT>();
    reading->depth = depth(2 * i);
    reading->temperature_cdegc = -1500 + i % 1000;
    pit.temperatures.push_back(std::move(reading));
  }
  for (std::int32_t i = 0; i < layers / 4; ++i) pit.tests.push_back(test(i));
  flatbuffers::FlatBufferBuilder builder;
  firnbook::FinishPitBuffer(builder, firnbook::CreatePit(builder, &pit));
  return builder.Release();
}

// What a program keeps from pit to pit.
struct Kept {
  pit::AlignedBytes aligned;
  pit::View view;
  interpretation::Analysis analysis;
  flatbuffers::FlatBufferBuilder builder;
};

// Verifies, checks, interprets and writes the report. The number of findings proves that work was done.
std::size_t interpret(const flatbuffers::DetachedBuffer& bytes, Kept& kept) {
  const auto verified = pit::verify(bytes.data(), bytes.size(), pit::Limits{}, kept.aligned);
  if (!verified) return 0;
  kept.view.decode(**verified);
  const interpretation::Parameters parameters;
  interpretation::interpret(kept.view, parameters, kept.analysis);
  interpretation::write_report(kept.analysis, parameters, crc32(bytes.data(), bytes.size()), kept.builder);
  return kept.analysis.findings.size();
}

class Allocations : public testing::TestWithParam<std::int32_t> {};

TEST_P(Allocations, NoneOnceTheMemoryHasGrown) {
  const auto bytes = pit_of(GetParam());
  Kept kept;
  const std::size_t first = interpret(bytes, kept);
  ASSERT_GT(first, static_cast<std::size_t>(GetParam()) / 4)
      << "the pit gave little to find: nothing is proven";
  ASSERT_EQ(interpret(bytes, kept), first);
  const std::size_t before = allocations;
  const std::size_t again = interpret(bytes, kept);
  const std::size_t made = allocations - before;
  EXPECT_EQ(again, first);
  EXPECT_EQ(made, 0u);
}

TEST_P(Allocations, TheCounterCounts) {
  const std::size_t before = allocations;
  const auto bytes = pit_of(GetParam());
  EXPECT_GT(allocations - before, static_cast<std::size_t>(GetParam()));
}

INSTANTIATE_TEST_SUITE_P(Pits, Allocations, testing::Values(8, 80, 800));

}  // namespace
}  // namespace firn
