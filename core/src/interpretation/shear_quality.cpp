// Shear quality where it was recorded: clean, planar and fast is Q1 (Johnson and Birkeland 2002; criteria
// from memory). A method beside the fracture's character: the two scales were written side by side, and that
// Q1 goes with sudden fractures is a habit, not a definition. Beside a character that raises already, Q1 adds
// nothing.
//
// Not on an extended column (no part of that standard; a check says so) nor a saw test.
#include "interpretation/evidence.h"

namespace firn::interpretation {
namespace {

using firnbook::FractureCharacter;
using firnbook::ShearQuality;

bool has_quality(TestKind kind) {
  return kind == TestKind::CT || kind == TestKind::DT || kind == TestKind::RB || kind == TestKind::ST ||
         kind == TestKind::hand_shear;
}

bool is_sudden(std::uint8_t character) {
  return character == static_cast<std::uint8_t>(FractureCharacter::SP) ||
         character == static_cast<std::uint8_t>(FractureCharacter::SC) ||
         character == static_cast<std::uint8_t>(FractureCharacter::SDN);
}

void read_fracture(const pit::Test& test, const pit::Fracture& fracture, Findings& out) {
  const Numbers numbers = {fracture.tap, load_stage(fracture), fracture.quality};
  const firnbook::Place subject = place_of_fracture(test, fracture);
  if (fracture.quality == static_cast<std::uint8_t>(ShearQuality::Q1)) {
    if (is_sudden(fracture.character)) return;
    add(out, Method::shear_quality, FindingKey::ct_quality_one, Verdict::raises, subject, fracture.depth,
        numbers);
  } else if (fracture.quality == static_cast<std::uint8_t>(ShearQuality::Q2) ||
             fracture.quality == static_cast<std::uint8_t>(ShearQuality::Q3)) {
    const bool unreliable = (fracture.unreliable >> field_id(firnbook::Fracture::VT_QUALITY) & 1u) != 0;
    add(out, Method::shear_quality, FindingKey::shear_quality_other, judge(false, unreliable), subject,
        fracture.depth, numbers);
  }
}

}  // namespace

void shear_quality(const pit::View& pit, Findings& out) {
  for (const pit::Test& test : pit.tests()) {
    if (!has_quality(test.kind) || !is_valid(test)) continue;
    for (std::uint32_t k = 0; k < test.fracture_count; ++k) {
      read_fracture(test, pit.fractures()[test.first_fracture + k], out);
    }
  }
}

}  // namespace firn::interpretation
