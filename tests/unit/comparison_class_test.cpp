// A class at one wall: the instructor's pit (KL) and the students' blind pits, each held against it. All
// invented.
#include <gtest/gtest.h>

#include <string>

#include "comparison_help.h"

namespace firn::tests {
namespace {

constexpr std::string_view kInstructor =
    "pit Larch Bowl, teaching wall\n"
    "observers KL\n"
    "HS 140\n"
    "0-16 F PP 2.0\n"
    "16-31 4F DF 1.0\n"
    "31-68 1F RG 0.5\n"
    "68-69 F SH 6.0-10.0\n"
    "69-104 4F FC 1.5 M\n"
    "104-107 K MFcr\n"
    "107-140 4F- FC 2.5 (DH)\n"
    "temp 0 -9, 10 -8.6, 30 -7\n"
    "CT12 (SP) down 68 on SH\n"
    "ECTP13 down 68\n"
    "CT22 (RP) down 31\n";

// Saw every layer, the boundaries somewhat off, hands a little softer.
constexpr std::string_view kShifted =
    "pit Larch Bowl, teaching wall\n"
    "observers AB\n"
    "HS 142\n"
    "0-15 F PP 2.0\n"
    "15-33 4F- DFdc 1.0\n"
    "33-70 4F RG 0.5\n"
    "70-71 F SH 8.0\n"
    "71-104 4F FCxr 1.5 D\n"
    "104-108 K MFcr\n"
    "108-142 4F DH 3.0\n"
    "temp 0 -9, 11 -8.2, 40 -6\n"
    "CT13 (SC) down 70 on SH\n"
    "ECTN14 down 70\n";

// Missed the thin layer.
constexpr std::string_view kMissed =
    "observers CD\n"
    "HS 140\n"
    "0-16 F PP 2.0\n"
    "16-31 4F DF 1.0\n"
    "31-69 1F RG 0.5\n"
    "69-104 4F FC 1.5 M\n"
    "104-107 K MFcr\n"
    "107-140 4F- FC 2.5\n"
    "CTN\n";

// Found a layer that the instructor did not write down.
constexpr std::string_view kExtra =
    "observers EF\n"
    "0-16 F PP 2.0\n"
    "16-31 4F DF 1.0\n"
    "31-50 1F RG 0.5\n"
    "50-51 K IF\n"
    "51-68 1F RG 0.5\n"
    "68-69 F SH 6.0-10.0\n"
    "69-104 4F FC 1.5 M\n"
    "104-107 K MFcr\n"
    "107-140 4F- FC 2.5\n";

TEST(ComparisonClass, ShiftedBoundariesStillMeet) {
  const Seen reference(kInstructor), other(kShifted);
  const Compared both(reference, other);
  EXPECT_EQ(both.layers(), "0=0 1=1 2=2 3=3 4=4 5=5 6=6");
  EXPECT_EQ(both.layer(1).top_10um(), cm(-1));
  EXPECT_EQ(both.layer(1).bottom_10um(), cm(2));
  EXPECT_EQ(both.layer(1).form(), Likeness::same_group);
  EXPECT_EQ(both.layer(2).hardness_top_sixths(), -6);
  EXPECT_EQ(both.layer(2).hardness_bottom_sixths(), -6);
  EXPECT_EQ(both.layer(3).top_10um(), cm(2));
  EXPECT_EQ(both.layer(3).size_10um(), 200);
  EXPECT_FALSE(knows(both.layer(3), LayerAspect::size_max));
  EXPECT_EQ(both.layer(4).wetness_halves(), -2);
  EXPECT_EQ(both.layer(6).form(), Likeness::different);
  EXPECT_EQ(both.root->hs_10um(), cm(2));
}

TEST(ComparisonClass, AMissedThinLayerIsListed) {
  const Compared both(Seen{kInstructor}, Seen{kMissed});
  EXPECT_EQ(both.layers(), "0=0 1=1 2=2 3=- 4=3 5=4 6=5");
  EXPECT_EQ(both.layer(3).pairing(), Pairing::only_in_reference);
}

TEST(ComparisonClass, AnExtraLayerIsListed) {
  const Compared both(Seen{kInstructor}, Seen{kExtra});
  EXPECT_EQ(both.layers(), "0=0 1=1 2=2 -=3 -=4 3=5 4=6 5=7 6=8");
  EXPECT_EQ(both.layer(3).pairing(), Pairing::only_in_other);
}

TEST(ComparisonClass, TheNoteInFull) {
  const Seen reference(kInstructor), other(kShifted);
  EXPECT_EQ(
      Compared(reference, other).note,
      "TWO PITS OF ONE WALL\n"
      "Reference: Larch Bowl, teaching wall (KL)\n"
      "Other: Larch Bowl, teaching wall (AB)\n"
      "Each difference is told from the reference to the other pit. It says nothing about who saw better:\n"
      "one wall differs from column to column.\n"
      "\n"
      "HS 140 cm | 142 cm\n"
      "  2 cm larger\n"
      "\n"
      "LAYERS (reference | other)\n"
      "0-16 cm F PP 2 mm | 0-15 cm F PP 2 mm\n"
      "  bottom 1 cm higher\n"
      "16-31 cm 4F DF 1 mm | 15-33 cm 4F- DFdc 1 mm\n"
      "  top 1 cm higher; bottom 2 cm lower; 1/3 step softer; another form of the same class\n"
      "31-68 cm 1F RG 0.5 mm | 33-70 cm 4F RG 0.5 mm\n"
      "  top 2 cm lower; bottom 2 cm lower; 1 step softer\n"
      "68-69 cm F SH 6-10 mm | 70-71 cm F SH 8 mm\n"
      "  top 2 cm lower; bottom 2 cm lower; grains 2 mm larger\n"
      "69-104 cm 4F FC 1.5 mm M | 71-104 cm 4F FCxr 1.5 mm D\n"
      "  top 2 cm lower; another form of the same class; 1 class drier\n"
      "104-107 cm K MFcr | 104-108 cm K MFcr\n"
      "  bottom 1 cm lower\n"
      "107-140 cm 4F- FC 2.5 mm | 108-142 cm 4F DH 3 mm\n"
      "  top 1 cm lower; bottom 2 cm lower; 1/3 step harder; another grain form; grains 0.5 mm larger\n"
      "\n"
      "TESTS (reference | other)\n"
      "CT: fractured | fractured\n"
      "  tap 12 SP down 68 cm | tap 13 SC down 70 cm\n"
      "    1 tap more; 2 cm deeper; another character of the same group\n"
      "CT: fractured | -\n"
      "  not in the other pit\n"
      "ECT: fractured | fractured\n"
      "  tap 13 P down 68 cm | tap 14 N down 70 cm\n"
      "    1 tap more; 2 cm deeper; one crossed the column, one did not\n"
      "\n"
      "TEMPERATURES AT THE SAME DEPTH (reference | other)\n"
      "0 cm: -9 | -9 degC\n"
      "  alike in all that both recorded\n"
      "10 cm: -8.6 | -8.2 degC\n"
      "  0.4 degC warmer\n"
      "\n"
      "Counted as one place when apart by no more than (ours):\n"
      "  layers of one grain class 5 cm, fractures 5 cm, temperatures 1 cm.\n");
}

TEST(ComparisonClass, TheNoteOfMissedAndUnbroken) {
  const std::string note = Compared(Seen{kInstructor}, Seen{kMissed}).note;
  EXPECT_NE(note.find("Other: (no name) (CD)\n"), std::string::npos) << note;
  EXPECT_NE(note.find("68-69 cm F SH 6-10 mm | -\n  not in the other pit\n"), std::string::npos) << note;
  EXPECT_NE(note.find("0-16 cm F PP 2 mm | 0-16 cm F PP 2 mm\n  alike in all that both recorded\n"),
            std::string::npos)
      << note;
  EXPECT_NE(note.find("CT: fractured | no fracture\n  another outcome\n  tap 12 SP down 68 cm | -\n"
                      "    not in the other pit\n"),
            std::string::npos)
      << note;
}

// It states differences: no score, no grade, and nobody is wrong.
TEST(ComparisonClass, NoWordJudges) {
  for (const std::string_view student : {kShifted, kMissed, kExtra}) {
    std::string note = Compared(Seen{kInstructor}, Seen{student}).note;
    for (char& c : note) c = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    for (const std::string_view word :
         {"wrong", "correct", "right ", "error", "mistake", "score", "grade", "good", "bad", "poor", "points",
          "percent", "%", "safe", "stable", "fail"}) {
      EXPECT_EQ(note.find(word), std::string::npos) << word;
    }
  }
}

TEST(ComparisonClass, APitIsLikeItself) {
  for (const std::string_view notes : {kInstructor, kShifted, kMissed, kExtra}) {
    const Seen pit(notes);
    const Compared both(pit, pit);
    for (const LayerPair* one : *both.root->layers()) {
      EXPECT_EQ(one->pairing(), Pairing::both);
      EXPECT_EQ(one->reference(), one->other());
      EXPECT_EQ(one->top_10um(), 0);
      EXPECT_EQ(one->form(), Likeness::same);
    }
    EXPECT_EQ(both.note.find("another"), std::string::npos);
  }
}

TEST(ComparisonClass, EachTestKeepsToItsKindAndOrder) {
  const Compared both(Seen{"RB4 (WB) down 52\nPST 32/100 (End) down 68\nSTM down 22\nDT18 (SP) down 107\n"},
                      Seen{"DT20 (PC) down 105\nRB6 (EB) down 55\nPST 45/100 (Arr) down 67\nSTE down 20\n"});
  ASSERT_EQ(both.root->tests()->size(), 4u);
  ASSERT_EQ(both.root->fractures()->size(), 4u);
  EXPECT_EQ(both.root->tests()->Get(0)->kind(), firnbook::TestKind::PST);
  EXPECT_EQ(both.fracture(0).cut_10um(), cm(13));
  EXPECT_EQ(both.fracture(0).saw_end(), Likeness::different);
  EXPECT_EQ(both.fracture(1).step(), 2);
  EXPECT_EQ(both.fracture(1).release(), Likeness::different);
  EXPECT_EQ(both.fracture(2).tap(), 2);
  EXPECT_EQ(both.fracture(2).character(), Likeness::different);
  EXPECT_EQ(both.fracture(3).ease(), -1);
  EXPECT_EQ(both.note.substr(both.note.find("TESTS"), both.note.find("\nTEMP") - both.note.find("TESTS")),
            "TESTS (reference | other)\n"
            "PST: fractured | fractured\n"
            "  32 cm End down 68 cm | 45 cm Arr down 67 cm\n"
            "    13 cm longer cut; 1 cm shallower; another ending\n"
            "RB: fractured | fractured\n"
            "  loading step 4 WB down 52 cm | loading step 6 EB down 55 cm\n"
            "    2 loading steps more; 3 cm deeper; another release\n"
            "DT: fractured | fractured\n"
            "  tap 18 SP down 107 cm | tap 20 PC down 105 cm\n"
            "    2 taps more; 2 cm shallower; another character\n"
            "ST: fractured | fractured\n"
            "  M down 22 cm | E down 20 cm\n"
            "    easier to pull; 2 cm shallower\n");
}

TEST(ComparisonClass, FracturesOfOneTestPairByDepth) {
  const Compared both(Seen{"CT11 (SC) down 17; 23 (RP) down 40"}, Seen{"CT12 (SC) down 18; 20 (SP) down 68"});
  ASSERT_EQ(both.root->fractures()->size(), 3u);
  EXPECT_EQ(both.fracture(0).pairing(), Pairing::both);
  EXPECT_EQ(both.fracture(1).pairing(), Pairing::only_in_reference);
  EXPECT_EQ(both.fracture(2).pairing(), Pairing::only_in_other);
}

// Depths count from where they count: what cannot be told is listed, never guessed.
TEST(ComparisonClass, DatumsAreNotMixed) {
  const Compared unknown(Seen{"depths from unknown\n0-16 F PP\n"}, Seen{"0-16 F PP\n"});
  EXPECT_EQ(unknown.layers(), "-=0 0!-");
  EXPECT_EQ(unknown.layer(1).reason(), NotComparable::depth_unknown);
  // Heights turn into depths by the pit's own HS only.
  const Compared heights(Seen{"HS 140\nheights from ground\n140-124 F PP\n"}, Seen{"HS 150\n0-16 F PP\n"});
  EXPECT_EQ(heights.layers(), "0=0");
  EXPECT_EQ(heights.layer(0).bottom_10um(), 0);
  EXPECT_EQ(Compared(Seen{"heights from ground\n140-124 F PP\n"}, Seen{"0-16 F PP\n"}).layers(), "-=0 0!-");
  const Compared directions(Seen{"HS 140\n0-16 F PP\nCT12 down 68\ntemp 0 -9\n"},
                            Seen{"measured slope-normal\nHS 120, measured slope-normal\n0-16 F PP\n"
                                 "CT12 down 68\ntemp 0 -9\n"});
  EXPECT_EQ(directions.layers(), "0!- -!0");
  EXPECT_EQ(directions.layer(0).reason(), NotComparable::directions_differ);
  EXPECT_FALSE(directions.root->hs_10um().has_value());
  EXPECT_EQ(directions.root->temperatures()->size(), 0u);
  // One fracture each is each test's result; their depths stay apart.
  ASSERT_EQ(directions.root->fractures()->size(), 1u);
  EXPECT_FALSE(knows(directions.fracture(0), FractureAspect::depth));
  EXPECT_TRUE(knows(directions.fracture(0), FractureAspect::tap));
  EXPECT_NE(directions.note.find("not compared: one pit was measured vertically"), std::string::npos);
}

TEST(ComparisonClass, FracturesWithoutDepth) {
  const Compared one(Seen{"CT12 (SP)"}, Seen{"CT14 (SP) down 68"});
  ASSERT_EQ(one.root->fractures()->size(), 1u);
  EXPECT_EQ(one.fracture(0).tap(), 2);
  const Compared several(Seen{"CT12 (SP); 14 (RP) down 40"}, Seen{"CT14 (SP) down 68"});
  ASSERT_EQ(several.root->fractures()->size(), 3u);
  EXPECT_EQ(several.fracture(2).pairing(), Pairing::not_comparable);
  EXPECT_EQ(several.fracture(2).reason(), NotComparable::depth_unknown);
}

TEST(ComparisonClass, DoubtIsPassedOn) {
  const Compared both(Seen{"0-16 F? PP 2.0\ntemp 10 -8.6?\nCT12 (SP) down 40"},
                      Seen{"0-16 4F PP 2.0\ntemp 10 -8\nCT13 (SP) down 40"});
  const LayerPair& layer = both.layer(0);
  EXPECT_EQ(layer.unreliable(), 1u << static_cast<unsigned>(LayerAspect::hardness_top) |
                                    1u << static_cast<unsigned>(LayerAspect::hardness_bottom));
  EXPECT_EQ(both.root->temperatures()->Get(0)->unreliable(), 1);
  EXPECT_NE(both.note.find("1 step harder; rests on values marked as unreliable"), std::string::npos)
      << both.note;
}

TEST(ComparisonClass, AHardnessThatChangesWithinTheLayer) {
  const Compared both(Seen{"0-16 F to 1F PP"}, Seen{"0-16 4F PP"});
  EXPECT_EQ(both.layer(0).hardness_top_sixths(), 6);
  EXPECT_EQ(both.layer(0).hardness_bottom_sixths(), -6);
  EXPECT_NE(
      both.note.find("0-16 cm F to 1F PP | 0-16 cm 4F PP\n  1 step harder at its top; 1 step softer at its "
                     "bottom\n"),
      std::string::npos)
      << both.note;
}

TEST(ComparisonClass, LongLinesAreBroken) {
  const std::string note =
      Compared(Seen{"10-20 F to 4F PP 1.0-2.0 D"}, Seen{"11-19 4F to P FC 3.0-5.0 M"}).note;
  EXPECT_NE(
      note.find(
          "10-20 cm F to 4F PP 1-2 mm D | 11-19 cm 4F to P FC 3-5 mm M\n"
          "  top 1 cm lower; bottom 1 cm higher; 1 step harder at its top; 2 steps harder at its bottom;\n"
          "  another grain form; grains 2 mm larger; largest grains 3 mm larger; 1 class wetter\n"),
      std::string::npos)
      << note;
}

TEST(ComparisonClass, EmptyPits) {
  const Compared both(Seen{firnbook::PitT()}, Seen{firnbook::PitT()});
  EXPECT_EQ(both.root->layers()->size(), 0u);
  EXPECT_NE(both.note.find("LAYERS (reference | other)\nnone recorded in either pit\n"), std::string::npos);
  EXPECT_NE(both.note.find("none read at the same depth\n"), std::string::npos);
}

}  // namespace
}  // namespace firn::tests
