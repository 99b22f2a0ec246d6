// Compression test: the score's band and the group of the fracture's character.
//
// Sources: van Herwijnen and Jamieson 2007, abstract (read): sudden fractures are more often those of slab
// avalanches. Criteria of SP, SC, RP and PC read in secondary sources; the groups SDN, RES, BRK and the
// pairing of Q1 with the sudden ones from memory. Bands of ten taps (read).
#include "interpretation/evidence.h"

namespace firn::interpretation {
namespace {

using firnbook::FractureCharacter;

struct Said {
  FindingKey key;
  Verdict verdict;
};

Said read(std::uint8_t character) {
  switch (static_cast<FractureCharacter>(character)) {
    case FractureCharacter::SP:
    case FractureCharacter::SC:
    case FractureCharacter::SDN:
      return {FindingKey::ct_sudden, Verdict::raises};
    case FractureCharacter::RP:
    case FractureCharacter::PC:
    case FractureCharacter::RES:
      return {FindingKey::ct_resistant, Verdict::not_met};
    case FractureCharacter::BRK:
      // Non-planar, in storm snow or elsewhere: no news of a weak layer, and none of its absence.
      return {FindingKey::ct_break, Verdict::says_little};
  }
  return {FindingKey::ct_character_unknown, Verdict::unknown};
}

void read_character(const pit::Test& test, const pit::Fracture& fracture, Method method, Findings& out) {
  Said said = read(fracture.character);
  const bool unreliable = (fracture.unreliable >> field_id(firnbook::Fracture::VT_CHARACTER) & 1u) != 0;
  if (said.verdict == Verdict::not_met) said.verdict = judge(false, unreliable);
  add(out, method, said.key, said.verdict, place_of_fracture(test, fracture), fracture.depth,
      {fracture.tap, load_stage(fracture), fracture.character});
}

}  // namespace

void read_characters(const pit::View& pit, TestKind kind, Method method, Findings& out) {
  for (const pit::Test& test : pit.tests()) {
    if (test.kind != kind || !is_valid(test)) continue;
    if (has_no_fracture(test)) {
      add(out, method, FindingKey::ct_no_fracture, Verdict::raised_nothing, place_of_test(test), kNoDepth,
          {test.raw->taps_given().value_or(0), 0, 0});
    }
    for (std::uint32_t k = 0; k < test.fracture_count; ++k) {
      read_character(test, pit.fractures()[test.first_fracture + k], method, out);
    }
  }
}

void compression_test(const pit::View& pit, Findings& out) {
  read_characters(pit, TestKind::CT, Method::compression_test, out);
}

}  // namespace firn::interpretation
