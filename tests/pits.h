// The two demo pits of examples/first-pit, and small helpers to build others, for tests of any module.
// Content follows the notes line by line; nothing here reads the notes, so that a test of the reader has
// something to compare with.
#pragma once

#include <cstdint>
#include <memory>
#include <vector>

#include "schemas/pit_generated.h"

namespace firn::tests {

// Lengths as people say them, in the schema's unit of 10 um.
constexpr std::int32_t cm(std::int32_t centimetres) {
  return centimetres * 1000;
}
constexpr std::int32_t metres(std::int32_t value) {
  return value * 100000;
}

firnbook::Depth down(std::int32_t value_10um);          // from the surface
firnbook::Depth up(std::int32_t value_10um);            // from the ground
firnbook::Depth nowhere_from(std::int32_t value_10um);  // the writer did not say
firnbook::Depth slope_normal(std::int32_t value_10um);  // from the surface, at right angles to the slope

firnbook::Moment local_time(std::int64_t year, int month, int day, int hour, int minute, int offset_min);
firnbook::Moment date(std::int64_t year, int month, int day);
firnbook::TimeSpan instant(const firnbook::Moment& moment);

// What is added stays owned by the pit; the reference is for setting more fields.
firnbook::LayerT& add_layer(firnbook::PitT& pit, std::int32_t top_10um, std::int32_t bottom_10um);
firnbook::LayerT& add_layer(firnbook::PitT& pit, std::int32_t top_10um, std::int32_t bottom_10um,
                            firnbook::HandHardness hardness, firnbook::GrainForm form,
                            std::int32_t size_10um = 0);
firnbook::StabilityTestT& add_test(firnbook::PitT& pit, firnbook::TestKind kind);
firnbook::FractureT& add_fracture(firnbook::StabilityTestT& test, std::int32_t depth_10um);
// A column test: tap and character of its only fracture.
firnbook::FractureT& add_compression_test(firnbook::PitT& pit, std::uint8_t tap,
                                          firnbook::FractureCharacter character, std::int32_t depth_10um);
firnbook::FractureT& add_extended_column(firnbook::PitT& pit, std::uint8_t tap, firnbook::Crossing crossing,
                                         std::int32_t depth_10um);
firnbook::FractureT& add_saw_test(firnbook::PitT& pit, std::int32_t cut_10um, std::int32_t column_10um,
                                  firnbook::SawEnd end, std::int32_t depth_10um);
// The layer that the line of the test names.
firnbook::LayerT& name_layer(firnbook::FractureT& fracture, firnbook::GrainForm form,
                             std::int32_t size_10um = 0);
void add_sign(firnbook::PitT& pit, firnbook::SignKind kind, firnbook::Answer answer);
void add_temperature(firnbook::PitT& pit, std::int32_t depth_10um, std::int32_t cdegc);
void add_density(firnbook::PitT& pit, std::int32_t top_10um, std::int32_t bottom_10um, std::int32_t dkgm3);

// The demo pits.
std::unique_ptr<firnbook::PitT> larch_bowl_entry();
std::unique_ptr<firnbook::PitT> tarn_shoulder();

// Bytes with the identifier, as any FlatBuffers writer would make them.
std::vector<std::uint8_t> bytes_of(const firnbook::PitT& pit);

}  // namespace firn::tests
