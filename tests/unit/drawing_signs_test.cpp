#include "drawing/grain_signs.h"

#include <gtest/gtest.h>

#include <set>
#include <string>

#include "schemas/vocabulary_generated.h"

namespace firn::drawing {
namespace {

using firnbook::GrainForm;

std::string sign_of(int form) {
  std::string out;
  append_grain_sign(out, static_cast<std::uint8_t>(form), 0, 0, 240);
  return out;
}
std::string sign_of(GrainForm form) {
  return sign_of(static_cast<int>(form));
}

TEST(GrainSigns, EveryMainClassHasASignOfItsOwn) {
  std::set<std::string> signs;
  for (int form = 10; form <= 90; form += 10) {
    EXPECT_TRUE(has_grain_sign(static_cast<std::uint8_t>(form)));
    signs.insert(sign_of(form));
  }
  EXPECT_EQ(signs.size(), 9u);
}

// ICSSG (Fierz and others 2009), from memory: plates, stellars and the melt-freeze crust.
TEST(GrainSigns, SubclassesThatAreKnownWellEnough) {
  for (const GrainForm form : {GrainForm::PPpl, GrainForm::PPsd, GrainForm::MFcr}) {
    const int main_class = static_cast<int>(form) / 10 * 10;
    EXPECT_NE(sign_of(form), sign_of(main_class));
  }
}

TEST(GrainSigns, OtherSubclassesGetTheSignOfTheirMainClass) {
  const std::set<GrainForm> own = {GrainForm::PPpl, GrainForm::PPsd, GrainForm::MFcr};
  for (const GrainForm form : firnbook::EnumValuesGrainForm()) {
    if (own.count(form) != 0) continue;
    EXPECT_EQ(sign_of(form), sign_of(static_cast<int>(form) / 10 * 10)) << static_cast<int>(form);
  }
}

TEST(GrainSigns, ShapesSayWhatTheyAre) {
  EXPECT_NE(sign_of(GrainForm::SH).find("M4 5L12 19L20 5"), std::string::npos);   // open at the top
  EXPECT_NE(sign_of(GrainForm::DH).find("M4 19L12 5L20 19"), std::string::npos);  // open below
  EXPECT_NE(sign_of(GrainForm::RG).find("fill=\"#1a1a1a\""), std::string::npos);  // a filled disc
  EXPECT_EQ(sign_of(GrainForm::MF).find("fill=\"#1a1a1a\""), std::string::npos);  // an open one
}

TEST(GrainSigns, NumbersThatAreNoFormDrawNothing) {
  for (const int form : {0, 1, 9, 100, 255}) {
    EXPECT_FALSE(has_grain_sign(static_cast<std::uint8_t>(form)));
    EXPECT_EQ(sign_of(form), "");
  }
}

}  // namespace
}  // namespace firn::drawing
