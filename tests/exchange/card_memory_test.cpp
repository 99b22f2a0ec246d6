// A card of few bytes cannot ask for much memory: at most 1000 bytes for each of its own, whatever it says.
#include <gtest/gtest.h>
#include <malloc.h>

#include <cstdlib>
#include <functional>
#include <new>

#include "card_help.h"

namespace {

std::size_t in_use = 0;
std::size_t peak = 0;

void* take(std::size_t size) {
  void* memory = std::malloc(size);
  if (memory == nullptr) std::abort();
  in_use += malloc_usable_size(memory);
  if (in_use > peak) peak = in_use;
  return memory;
}
void give_back(void* memory) {
  if (memory != nullptr) in_use -= malloc_usable_size(memory);
  std::free(memory);
}

}  // namespace

void* operator new(std::size_t size) {
  return take(size);
}
void operator delete(void* memory) noexcept {
  give_back(memory);
}
void operator delete(void* memory, std::size_t) noexcept {
  give_back(memory);
}

namespace firn::tests {
namespace {

using namespace firnbook;

constexpr std::size_t kMostPerByte = 1000;
using Fill = std::function<void(PitT&, int)>;

Bytes card_with(const Fill& fill, int count) {
  PitT pit;
  fill(pit, count);
  const Bytes bytes = recording::to_bytes(pit);
  Notices notices;
  Result<Bytes> card = exchange::card::write_card(*GetPit(bytes.data()), {}, notices);
  return card ? *card : Bytes{};
}

// Nearly the largest card of this kind of pit, from how the first thousands grow.
Bytes fullest_card(const Fill& fill) {
  constexpr int kSome = 1000;
  const auto small = static_cast<int>(card_with(fill, kSome).size());
  const auto grown = static_cast<int>(card_with(fill, 2 * kSome).size());
  const int room = static_cast<int>(exchange::card::kMostBytes) * 19 / 20 - small;
  return card_with(fill, kSome + kSome * (room / (grown - small)));
}

void expect_bounded(const char* name, const Fill& fill) {
  const Bytes card = fullest_card(fill);
  ASSERT_GT(card.size(), exchange::card::kMostBytes / 2) << name;
  const std::size_t before = in_use;
  peak = before;
  Notices notices;
  const auto pit = exchange::card::read_card(card.data(), card.size(), notices);
  ASSERT_TRUE(pit) << name;
  EXPECT_LE((peak - before) / card.size(), kMostPerByte) << name;
  testing::Test::RecordProperty(name, static_cast<int>((peak - before) / card.size()));
}

const std::string kLongName(100, 'e');

TEST(CardMemory, IsBoundedByTheSizeOfTheCard) {
  expect_bounded("signs", [](PitT& pit, int count) {
    for (int i = 0; i < count; ++i) {
      pit.signs.push_back(std::make_unique<SignT>());
      pit.signs.back()->kind = SignKind::whumpf;
      pit.signs.back()->answer = Answer::no;
    }
  });
  expect_bounded("observers", [](PitT& pit, int count) {
    for (int i = 0; i < count; ++i) {
      pit.observers.push_back(std::make_unique<ObserverT>());
      pit.observers.back()->name = kLongName;
    }
  });
  expect_bounded("photos", [](PitT& pit, int count) {
    for (int i = 0; i < count; ++i) {
      pit.photos.push_back(std::make_unique<PhotoT>());
      pit.photos.back()->reference = kLongName;
    }
  });
  expect_bounded("slides", [](PitT& pit, int count) {
    for (int i = 0; i < count; ++i) {
      pit.slides.push_back(std::make_unique<SlideT>());
      pit.slides.back()->kind = SlideKind::slab;
      pit.slides.back()->size_tenths = std::uint8_t{5};
    }
  });
  expect_bounded("tests", [](PitT& pit, int count) {
    for (int i = 0; i < count; ++i) {
      pit.tests.push_back(std::make_unique<StabilityTestT>());
      pit.tests.back()->kind = TestKind::CT;
      pit.tests.back()->outcome = TestOutcome::fractured;
    }
  });
  expect_bounded("layers", [](PitT& pit, int count) {
    for (int i = 0; i < count; ++i) {
      pit.layers.push_back(std::make_unique<LayerT>());
      LayerT& layer = *pit.layers.back();
      layer.top = std::make_unique<Depth>(0, Datum::surface, Direction::vertical);
      layer.bottom = std::make_unique<Depth>(0, Datum::surface, Direction::vertical);
      layer.hardness = HandHardness::Fist;
      layer.grain_form = GrainForm::RG;
    }
  });
  expect_bounded("fractures", [](PitT& pit, int count) {
    pit.tests.push_back(std::make_unique<StabilityTestT>());
    for (int i = 0; i < count; ++i) {
      auto fracture = std::make_unique<FractureT>();
      fracture->depth = std::make_unique<Depth>(0, Datum::surface, Direction::vertical);
      fracture->tap = std::uint8_t{1};
      pit.tests[0]->fractures.push_back(std::move(fracture));
    }
  });
  expect_bounded("layers of fractures", [](PitT& pit, int count) {
    pit.tests.push_back(std::make_unique<StabilityTestT>());
    for (int i = 0; i < count; ++i) {
      auto fracture = std::make_unique<FractureT>();
      fracture->depth = std::make_unique<Depth>(0, Datum::surface, Direction::vertical);
      fracture->tap = std::uint8_t{1};
      fracture->character = FractureCharacter::SP;
      fracture->on = std::make_unique<LayerT>();
      fracture->on->grain_form = GrainForm::RG;
      pit.tests[0]->fractures.push_back(std::move(fracture));
    }
  });
  expect_bounded("profiles", [](PitT& pit, int count) {
    for (int i = 0; i < count; ++i) {
      pit.impurities.push_back(std::make_unique<ImpurityProfileT>());
      pit.impurities.back()->readings.push_back(std::make_unique<ImpurityReadingT>());
    }
  });
  expect_bounded("remarks", [](PitT& pit, int count) {
    for (int i = 0; i < count; ++i) {
      pit.remarks.push_back(std::make_unique<RemarkT>());
      pit.remarks.back()->text = kLongName;
    }
  });
  expect_bounded("words",
                 [](PitT& pit, int count) { pit.title = std::string(static_cast<std::size_t>(count), ' '); });
}

}  // namespace
}  // namespace firn::tests
