// What is written in the field and understood. Variants "10.1" are recordings seen in public observations
// (reference, interpretation sources 10.1; read, secondary).
#include "notation_test_line_support.h"

namespace firn::notation {
namespace {

using namespace firnbook;

TEST(TestLineRead, CompressionTests) {
  const FractureT f = only("CT12 (SP) down 68 on SH 6.0 (270102)");
  EXPECT_EQ(f.tap, 12);
  EXPECT_FALSE(f.stage);
  EXPECT_EQ(f.character, FractureCharacter::SP);
  ASSERT_NE(f.depth, nullptr);
  EXPECT_EQ(f.depth->value_10um(), 68000);
  EXPECT_EQ(f.depth->datum(), Datum::surface);
  EXPECT_EQ(f.depth->direction(), Direction::unknown);
  ASSERT_NE(f.on, nullptr);
  EXPECT_EQ(f.on->grain_form, GrainForm::SH);
  EXPECT_EQ(f.on->grain_size_10um, 600);
  ASSERT_NE(f.on->name, nullptr);
  EXPECT_EQ(f.on->name->date->local_s(), 1798848000);  // 2027-01-02
  EXPECT_EQ(f.on->name->date->precision(), TimePrecision::day);
  EXPECT_FALSE(f.on->name->kind);
  EXPECT_EQ(one("CT12 down 68").outcome, TestOutcome::fractured);
  EXPECT_EQ(one("CT12 down 68").kind, TestKind::CT);
}

TEST(TestLineRead, LettersOfACompressionTest) {
  EXPECT_EQ(only("CTV").stage, LoadStage::isolating);
  EXPECT_EQ(only("CTE").stage, LoadStage::wrist);
  EXPECT_EQ(only("CTM down 30").stage, LoadStage::elbow);
  EXPECT_EQ(only("CTH").stage, LoadStage::shoulder);
  EXPECT_FALSE(only("CTM").tap);
  for (const char* line : {"CTM17", "CT17", "CTM 17", "CT 17", "ctm17", "CT M17", "CT 17, down 30"}) {
    EXPECT_EQ(only(line).tap, 17) << line;
    EXPECT_FALSE(only(line).stage) << line;
  }
  EXPECT_EQ(only("CTE1").tap, 1);
  EXPECT_EQ(only("CTE10").tap, 10);
  EXPECT_EQ(only("CTM11").tap, 11);
  EXPECT_EQ(only("CTM20").tap, 20);
  EXPECT_EQ(only("CTH21").tap, 21);
  EXPECT_EQ(only("CTH30").tap, 30);
}

TEST(TestLineRead, DeepTapTests) {
  const StabilityTestT test = one("DT18 (SP) down 135 on DH 3.0 slab left 15");
  EXPECT_EQ(test.kind, TestKind::DT);
  EXPECT_EQ(test.slab_left_10um, 15000);
  EXPECT_EQ(test.fractures[0]->tap, 18);
  EXPECT_EQ(only("DTM18").tap, 18);
  EXPECT_EQ(only("DTT18").tap, 18);
  EXPECT_EQ(only("DTV").stage, LoadStage::isolating);
  EXPECT_EQ(one("DTN").outcome, TestOutcome::no_fracture);
}

TEST(TestLineRead, NothingBroke) {
  for (const char* line : {"CTN", "ECTX", "RB7", "DTN", "STN", "CT no fracture", "PST no fracture"}) {
    const StabilityTestT test = one(line);
    EXPECT_EQ(test.outcome, TestOutcome::no_fracture) << line;
    EXPECT_TRUE(test.fractures.empty()) << line;
  }
  // The layer that was loaded and held.
  const StabilityTestT held = one("CTN down 40, down 60");
  ASSERT_EQ(held.unbroken.size(), 2u);
  EXPECT_EQ(held.unbroken[1].value_10um(), 60000);
  EXPECT_EQ(held.unbroken[1].datum(), Datum::surface);
}

TEST(TestLineRead, ExtendedColumns) {
  EXPECT_EQ(only("ECTPV").stage, LoadStage::isolating);
  EXPECT_EQ(only("ECTPV").crossing, Crossing::crossed);
  EXPECT_EQ(only("ECTP13 down 68 on SH").tap, 13);
  EXPECT_EQ(only("ECTP13").crossing, Crossing::crossed);
  EXPECT_EQ(only("ECTN16").crossing, Crossing::not_crossed);
  EXPECT_EQ(only("ectp 13").tap, 13);
  EXPECT_EQ(only("ECT P13").tap, 13);
  EXPECT_EQ(only("ECTNV").crossing, Crossing::not_crossed);
  EXPECT_FALSE(only("ECTN").tap);
  const StabilityTestT both = one("ECT crack 12 cross 13 rule one more tap");
  EXPECT_EQ(both.crossing_rule, CrossingRule::one_more_tap);
  EXPECT_EQ(both.fractures[0]->tap, 12);
  EXPECT_EQ(both.fractures[0]->tap_crossed, 13);
  EXPECT_FALSE(both.fractures[0]->crossing);
  EXPECT_EQ(one("ECTN12 cross 14 rule same tap").crossing_rule, CrossingRule::same_tap);
}

TEST(TestLineRead, SawTests) {
  const StabilityTestT test = one("PST 32/100 (End) down 68 on SH");
  EXPECT_EQ(test.column_length_10um, 100000);
  EXPECT_EQ(test.fractures[0]->cut_10um, 32000);
  EXPECT_EQ(test.fractures[0]->saw_end, SawEnd::End);
  EXPECT_EQ(one("PST32/100").column_length_10um, 100000);
  EXPECT_EQ(only("PST 30/100 (Arr)").saw_end, SawEnd::Arr);
  EXPECT_EQ(only("PST 30/100 SF").saw_end, SawEnd::SF);
  EXPECT_EQ(only("PST 12in/40in End").cut_10um, 30480);
  EXPECT_EQ(one("PST 30/100 End ends slope-normal").column_ends, ColumnEnds::slope_normal);
  EXPECT_EQ(one("PST 30/100 End ends vertical slope 31 deg").slope_deg, 31);
}

TEST(TestLineRead, Rutschblocks) {
  for (int step = 1; step <= 6; ++step) {
    EXPECT_EQ(only("RB" + std::to_string(step)).step, step);
  }
  const FractureT f = only("RB4 (WB) jump 2 down 52 on SH 4.0");
  EXPECT_EQ(f.release, ReleaseType::WB);
  EXPECT_EQ(f.jump, 2);
  EXPECT_EQ(only("RB 5 MB").release, ReleaseType::MB);
  EXPECT_EQ(only("RB2 EB").release, ReleaseType::EB);
}

TEST(TestLineRead, ShearTests) {
  EXPECT_EQ(only("STC").ease, ShearEase::C);
  EXPECT_EQ(only("STV").ease, ShearEase::V);
  EXPECT_EQ(only("STE").ease, ShearEase::E);
  EXPECT_EQ(only("STM down 22 on DF 1.0").ease, ShearEase::M);
  EXPECT_EQ(only("STH").ease, ShearEase::H);
  EXPECT_EQ(one("SSE down 22").kind, TestKind::ST);
  EXPECT_EQ(only("shovel shear easy down 22").ease, ShearEase::E);
  EXPECT_EQ(one("hand shear easy down 12").kind, TestKind::hand_shear);
  EXPECT_EQ(only("hand shear very easy down 12").ease, ShearEase::V);
  EXPECT_EQ(only("Hand Shear moderate").ease, ShearEase::M);
  EXPECT_EQ(only("hand shear hard").ease, ShearEase::H);
  EXPECT_EQ(only("SF 210 N down 35").force_mn, 210000);
  EXPECT_EQ(one("shear frame 210.5 N").fractures[0]->force_mn, 210500);
}

TEST(TestLineRead, OtherTestsKeepTheirWords) {
  const StabilityTestT test = one("other \"small block, third hit on the side\" down 40 (SP)");
  EXPECT_EQ(test.kind, TestKind::other);
  EXPECT_EQ(test.words, "small block, third hit on the side");
  EXPECT_EQ(test.fractures[0]->character, FractureCharacter::SP);
}

TEST(TestLineRead, Depths) {
  const auto depth = [](std::string_view line) { return *only(line).depth; };
  EXPECT_EQ(depth("CT12 up 72").datum(), Datum::ground);
  EXPECT_EQ(depth("CT12 @68").datum(), Datum::unknown);
  EXPECT_EQ(depth("CT12 @ 68").value_10um(), 68000);
  EXPECT_EQ(depth("CT12@68").value_10um(), 68000);
  EXPECT_EQ(depth("CT12 at 68 cm").datum(), Datum::unknown);
  EXPECT_EQ(depth("CT12 68 cm").datum(), Datum::unknown);
  EXPECT_EQ(depth("CT 68 cm").value_10um(), 68000);
  EXPECT_FALSE(only("CT 68 cm").tap);
  EXPECT_EQ(depth("CT12 22in").value_10um(), 55880);
  EXPECT_EQ(depth("CT12 down 22\" on SH").value_10um(), 55880);
  EXPECT_EQ(depth("CT12 down 0.68 m").value_10um(), 68000);
  EXPECT_EQ(depth("CT12 down 16.5 vertical").direction(), Direction::vertical);
  EXPECT_EQ(depth("CT12 down 16.5 slope-normal").direction(), Direction::slope_normal);
}

TEST(TestLineRead, InchesAndRoundingAreReported) {
  std::vector<Failure> remarks;
  ASSERT_TRUE(parse_test("CT12 down 22in", remarks));
  ASSERT_EQ(remarks.size(), 1u);
  EXPECT_EQ(remarks[0].what, "read as 55.88 cm, from inches or feet");
  EXPECT_EQ(remarks[0].column, 11u);
  EXPECT_EQ(remarks[0].status, FIRN_OK);
  remarks.clear();
  auto tests = parse_test("CT12 down 17.0005", remarks);
  ASSERT_TRUE(tests);
  EXPECT_EQ((*tests)[0].fractures[0]->depth->value_10um(), 17001);
  ASSERT_EQ(remarks.size(), 1u);
  EXPECT_NE(remarks[0].what.find("rounded"), std::string::npos);
  remarks.clear();
  ASSERT_TRUE(parse_test("CT12 (SP) down 17.5 on FC 1.5", remarks));
  EXPECT_TRUE(remarks.empty());
}

TEST(TestLineRead, CharactersAndQuality) {
  struct Row {
    const char* code;
    FractureCharacter character;
  };
  const Row rows[] = {{"SP", FractureCharacter::SP},   {"SC", FractureCharacter::SC},
                      {"RP", FractureCharacter::RP},   {"PC", FractureCharacter::PC},
                      {"BRK", FractureCharacter::BRK}, {"B", FractureCharacter::BRK},
                      {"SDN", FractureCharacter::SDN}, {"RES", FractureCharacter::RES}};
  for (const Row& row : rows) {
    EXPECT_EQ(only(std::string("CT12 (") + row.code + ")").character, row.character);
    EXPECT_EQ(only(std::string("CT12 ") + row.code).character, row.character);
  }
  EXPECT_EQ(only("CT12 Q1").quality, ShearQuality::Q1);
  EXPECT_EQ(only("CT12 (q2)").quality, ShearQuality::Q2);
  for (const char* line : {"CT12 (Q1, SP)", "CT12 (SP/Q1)", "CT12 SP Q1", "CT12 (SP) (Q1)"}) {
    EXPECT_EQ(only(line).quality, ShearQuality::Q1) << line;
    EXPECT_EQ(only(line).character, FractureCharacter::SP) << line;
  }
  EXPECT_EQ(only("CT12 Clean").fracture_surface, FractureSurface::Clean);
  EXPECT_EQ(only("ECTP12 (rough)").fracture_surface, FractureSurface::Rough);
  EXPECT_EQ(only("ECTP12 (Irregular)").fracture_surface, FractureSurface::Irregular);
}

TEST(TestLineRead, TheLayerItBrokeIn) {
  const auto layer = [](std::string_view line) { return std::move(*only(line).on); };
  EXPECT_EQ(layer("CT12 on FC(RG) 1.0-2.0").grain_form_second, GrainForm::RG);
  EXPECT_EQ(layer("CT12 on FC (RG) 1.0-2.0 mm").grain_size_10um, 100);
  EXPECT_EQ(layer("CT12 on FC(RG) 1-2").grain_size_max_10um, 200);
  EXPECT_EQ(layer("CT12 on SH 6.0 (270102 buried)").name->kind, LayerNameKind::buried);
  EXPECT_EQ(layer("CT12 on MFcr (261204 formed)").name->kind, LayerNameKind::formed);
  EXPECT_EQ(layer("CT12 on SH (assumed 270102)").name->kind, LayerNameKind::assumed);
  EXPECT_EQ(layer("CT12 on SH (2027-01-02)").name->date->local_s(), 1798848000);
  EXPECT_EQ(layer("CT12 on SH (\"new year layer\")").name->words, "new year layer");
  EXPECT_EQ(layer("CT12 on \"sugary stuff\"").words, "sugary stuff");
  EXPECT_EQ(layer("CT12 on 4F FC 2.0").hardness, HandHardness::FourFinger);
  EXPECT_EQ(layer("CT12 on FC size very coarse").grain_size_class, GrainSizeClass::very_coarse);
  EXPECT_EQ(layer("CT12 on FC maybe FC or DH").candidates.size(), 2u);
  EXPECT_EQ(only("CT12 part top on FC").part, PartOfLayer::top);
  EXPECT_EQ(only("CT12 on SH 6.0 down 68").depth->value_10um(), 68000);
  EXPECT_EQ(only("CT12 on SH 68 cm").depth->value_10um(), 68000);
  EXPECT_EQ(only("CT12 on SH 6.0 \"pops each time\"").words, "pops each time");
}

TEST(TestLineRead, SeveralFracturesInOneColumn) {
  const StabilityTestT test = one("CT11 (SC) down 17; 23 (RP) down 40; H \"near the ground\"");
  ASSERT_EQ(test.fractures.size(), 3u);
  EXPECT_EQ(test.fractures[1]->tap, 23);
  EXPECT_EQ(test.fractures[1]->character, FractureCharacter::RP);
  EXPECT_EQ(test.fractures[2]->stage, LoadStage::shoulder);
  EXPECT_EQ(test.fractures[2]->words, "near the ground");
  const StabilityTestT columns = one("ECTN11 down 20; P23 down 60");
  EXPECT_EQ(columns.fractures[1]->crossing, Crossing::crossed);
}

TEST(TestLineRead, TwoSuchTests) {
  const auto tests = parse_test("ECTN x2 down 115");
  ASSERT_TRUE(tests);
  ASSERT_EQ(tests->size(), 2u);
  EXPECT_EQ(packed((*tests)[0]), packed((*tests)[1]));
  EXPECT_EQ((*tests)[1].fractures[0]->depth->value_10um(), 115000);
  EXPECT_EQ(parse_test("CTN x3")->size(), 3u);
}

TEST(TestLineRead, TestsThatWereNotValid) {
  const StabilityTestT test = one("CT not valid: shovel sank in");
  EXPECT_EQ(test.outcome, TestOutcome::not_valid);
  EXPECT_EQ(test.not_valid_reason, NotValidReason::sank_in);
  EXPECT_EQ(one("CT not valid: skis sank in").not_valid_reason, NotValidReason::sank_in);
  EXPECT_EQ(one("ECT not valid: broke while cutting").not_valid_reason, NotValidReason::broke_while_cutting);
  EXPECT_EQ(one("RB not valid: slope too gentle").not_valid_reason, NotValidReason::slope_too_gentle);
  EXPECT_EQ(one("CT not valid, column disturbed").outcome, TestOutcome::not_valid);
  EXPECT_FALSE(one("CT not valid").not_valid_reason);
  const StabilityTestT words = one("CT not valid: \"dog ran through it\"");
  EXPECT_EQ(words.not_valid_reason, NotValidReason::other);
  EXPECT_EQ(words.words, "dog ran through it");
  // A fracture seen before the column was lost stays.
  const StabilityTestT lost = one("CT6 (BRK) down 16 not valid: sank in");
  EXPECT_EQ(lost.outcome, TestOutcome::not_valid);
  EXPECT_EQ(lost.fractures.size(), 1u);
}

TEST(TestLineRead, TheColumnAndWhatItHeld) {
  const StabilityTestT test =
      one("CT12 down 40 column 30x30x110 slope 28 taps given 30 no fracture at 60, 80");
  EXPECT_EQ(test.column_width_10um, 30000);
  EXPECT_EQ(test.column_length_10um, 30000);
  EXPECT_EQ(test.column_depth_10um, 110000);
  EXPECT_EQ(test.slope_deg, 28);
  EXPECT_EQ(test.taps_given, 30);
  ASSERT_EQ(test.unbroken.size(), 2u);
  EXPECT_EQ(test.unbroken[0].datum(), Datum::unknown);
  EXPECT_EQ(test.unbroken[1].value_10um(), 80000);
  EXPECT_EQ(one("CT12 no fracture down 40, down 17").fractures[0]->depth->value_10um(), 17000);
  // An extended column is wider than it is long, whichever side is written first.
  EXPECT_EQ(one("ECTX column 30x90").column_width_10um, 90000);
  EXPECT_EQ(one("ECTX column 90x30").column_width_10um, 90000);
  EXPECT_EQ(one("PST 30/100 column width 30").column_width_10um, 30000);
  EXPECT_EQ(one("CT12 column 30 \xC3\x97 30 cm").column_length_10um, 30000);
}

TEST(TestLineRead, UnreliableValuesAreMarked) {
  const FractureT f = only("CT12 down 68 unreliable(depth, tap)");
  EXPECT_EQ(f.unreliable, 0b11u);
  EXPECT_EQ(only("PST 30/100 unreliable(cut)").unreliable, 1u << 11);
  EXPECT_EQ(one("CT12 test unreliable(column_length)").unreliable, 1u << 5);
}

TEST(TestLineRead, Variants_10_1) {
  EXPECT_EQ(only("CTM17 down 30").tap, 17);
  EXPECT_EQ(only("ECTP24 at 75 cm").depth->datum(), Datum::unknown);
  EXPECT_EQ(only("PST 30/100 End at 75 cm").cut_10um, 30000);
  EXPECT_EQ(one("PST 35/125 End at 125").column_length_10um, 125000);
  EXPECT_EQ(one("PST 25/135 End at 135").column_length_10um, 135000);
  EXPECT_EQ(only("PST 22/100 End at 60 cm").saw_end, SawEnd::End);
  EXPECT_EQ(only("CT19").tap, 19);
  EXPECT_EQ(only("PST 35/100 at 120 cm").cut_10um, 35000);
  EXPECT_FALSE(only("PST 35/100 at 120 cm").saw_end);
  EXPECT_EQ(only("CT7 Q1 at 25").quality, ShearQuality::Q1);
  EXPECT_EQ(only("CT22 Q2 at 45").tap, 22);
  EXPECT_EQ(only("CT4 (Q1, SP)").character, FractureCharacter::SP);
  const StabilityTestT end = one("PST 25/END");
  EXPECT_FALSE(end.column_length_10um);
  EXPECT_EQ(end.fractures[0]->cut_10um, 25000);
  EXPECT_EQ(end.fractures[0]->saw_end, SawEnd::End);
  EXPECT_EQ(only("PST 100/END").saw_end, SawEnd::End);
  EXPECT_EQ(only("CT28 SP Q1").tap, 28);
  EXPECT_EQ(parse_test("ECTN x2")->size(), 2u);
  EXPECT_EQ(only("CT12 SP at 102").character, FractureCharacter::SP);
  EXPECT_EQ(only("ECTN16 at 102").tap, 16);
  const StabilityTestT whole = one("PST 100/100 at 102");
  EXPECT_EQ(whole.column_length_10um, 100000);
  EXPECT_FALSE(whole.fractures[0]->saw_end);
  EXPECT_EQ(one("PST 90/100 at 75").fractures[0]->cut_10um, 90000);
  EXPECT_EQ(only("ECTP26 at 35 cm").tap, 26);
  EXPECT_EQ(only("ECTP4 at 20 cm").tap, 4);
  EXPECT_EQ(only("ECTP18@65 cm").depth->value_10um(), 65000);
  // An extended column takes no shear quality: in words it is kept.
  EXPECT_EQ(only("ECTP21 \"Q2.5\" at 40 in").words, "Q2.5");
  EXPECT_EQ(only("ECTP21 \"Q2.5\" at 40 in").depth->value_10um(), 101600);
}

TEST(TestLineRead, LinesThatLookLikeTests) {
  for (const char* line :
       {"CT12", "ctn", "ECTP13", "ETCN16", "TC12", "PST 32/100", "RB4", "STE", "SSE", "DTT18", "SF 210 N",
        "hand shear easy", "other \"x\"", "? down 40", "CTQ", "shovel shear"}) {
    EXPECT_TRUE(looks_like_test(line)) << line;
  }
  for (const char* line : {"pit Larch Bowl", "time 2026-11-28", "site 2080 m", "probe 38 45", "HS 46",
                           "sign whumpf", "0-5 F", "strength 3", "stratigraphy", "surface PF 35", "temp 0 -9",
                           "TS -5", "", "#", "density 31-68 238", "weather sky BKN", "observers KL"}) {
    EXPECT_FALSE(looks_like_test(line)) << line;
  }
}

}  // namespace
}  // namespace firn::notation
