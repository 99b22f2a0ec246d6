#include <gtest/gtest.h>

#include <set>

#include "vocabulary_tables.h"

namespace firn {
namespace {

using namespace firnbook;

TEST(VocabularyCodes, EveryCodePrintsAndParsesBack) {
  for (const auto& named : testing::all_tables()) {
    std::set<std::string_view> codes;
    for (const Code& row : named.table) {
      EXPECT_FALSE(row.code.empty()) << named.name;
      EXPECT_FALSE(row.label.empty()) << named.name << " " << row.code;
      EXPECT_TRUE(codes.insert(row.code).second) << named.name << " " << row.code;
      EXPECT_EQ(find_value(named.table, row.code), row.value) << named.name << " " << row.code;
      EXPECT_EQ(find_label(named.table, row.value), row.label);
    }
  }
}

TEST(VocabularyCodes, RowsStandInTheOrderOfTheirNumbers) {
  for (const auto& named : testing::all_tables()) {
    for (std::size_t i = 1; i < named.table.count; ++i) {
      EXPECT_LT(named.table.codes[i - 1].value, named.table.codes[i].value) << named.name;
    }
  }
}

TEST(VocabularyCodes, UnknownNumbersAndCodesAreNoValue) {
  for (const auto& named : testing::all_tables()) {
    EXPECT_EQ(find_code(named.table, 250), "") << named.name;
    EXPECT_EQ(find_label(named.table, 250), "") << named.name;
    EXPECT_FALSE(find_value(named.table, "")) << named.name;
    EXPECT_FALSE(find_value(named.table, "no such code")) << named.name;
  }
  EXPECT_EQ(code_of(static_cast<GrainForm>(77)), "");
}

TEST(VocabularyCodes, CaseDoesNotMatterUnlessTwoCodesDifferByItAlone) {
  EXPECT_EQ(parse_code<GrainForm>("fcXR"), GrainForm::FCxr);
  EXPECT_EQ(parse_code<HandHardness>("1f-p"), HandHardness::OneFingerToPencil);
  EXPECT_EQ(parse_code<SawEnd>("END"), SawEnd::End);
  // METAR "Nil" and OGRS "NIL" stand in one table.
  EXPECT_EQ(parse_code<Precipitation>("Nil"), Precipitation::Nil);
  EXPECT_EQ(parse_code<Precipitation>("NIL"), Precipitation::guideline_none);
  EXPECT_FALSE(parse_code<Precipitation>("nil"));
}

TEST(VocabularyCodes, SynonymsAreReadAndNeverPrinted) {
  EXPECT_EQ(parse_code<SkyCondition>("SKC"), SkyCondition::CLR);
  EXPECT_EQ(parse_code<SkyCondition>("vv"), SkyCondition::X);
  EXPECT_EQ(parse_code<FractureCharacter>("B"), FractureCharacter::BRK);
  EXPECT_EQ(parse_code<BlowingSnow>("Nil"), BlowingSnow::none);
  EXPECT_EQ(parse_code<TestKind>("DTT"), TestKind::DT);
  EXPECT_EQ(parse_code<ColumnEnds>("slope-normal"), ColumnEnds::slope_normal);
  EXPECT_EQ(code_of(SkyCondition::CLR), "CLR");
  EXPECT_EQ(code_of(FractureCharacter::BRK), "BRK");
}

TEST(VocabularyCodes, NoSynonymIsACodeOfAnotherValue) {
  for (const auto& named : testing::all_tables()) {
    for (std::size_t i = 0; i < named.table.synonym_count; ++i) {
      const Synonym& synonym = named.table.synonyms[i];
      EXPECT_EQ(find_value(named.table, synonym.code), synonym.value) << named.name << " " << synonym.code;
    }
  }
}

TEST(VocabularyCodes, PrecipitationIsPrintedAndParsedByItsBook) {
  struct Row {
    Precipitation value;
    const char* ogrs;
    const char* swag;
  };
  const Row rows[] = {
      {Precipitation::guideline_none, "NIL", "NO"},  {Precipitation::guideline_rain, "R", "RA"},
      {Precipitation::guideline_snow, "S", "SN"},    {Precipitation::guideline_mixed, "RS", "RS"},
      {Precipitation::guideline_graupel, "G", "GR"}, {Precipitation::guideline_freezing_rain, "ZR", "ZR"},
  };
  for (const Row& row : rows) {
    EXPECT_EQ(precipitation_code(row.value, CodeFamily::ogrs), row.ogrs);
    EXPECT_EQ(precipitation_code(row.value, CodeFamily::swag), row.swag);
    EXPECT_EQ(precipitation_code(row.value, CodeFamily::metar), "");
    EXPECT_EQ(parse_precipitation(row.ogrs, CodeFamily::ogrs), row.value);
    EXPECT_EQ(parse_precipitation(row.swag, CodeFamily::swag), row.value);
  }
  // The same letters, two books.
  EXPECT_EQ(parse_precipitation("SN", CodeFamily::metar), Precipitation::SN);
  EXPECT_EQ(parse_precipitation("SN", CodeFamily::swag), Precipitation::guideline_snow);
  EXPECT_FALSE(parse_precipitation("SN", CodeFamily::ogrs));
  EXPECT_EQ(parse_precipitation("nil", CodeFamily::metar), Precipitation::Nil);
  EXPECT_EQ(parse_precipitation("nil", CodeFamily::ogrs), Precipitation::guideline_none);
  EXPECT_FALSE(parse_precipitation("-SN", CodeFamily::swag));
  EXPECT_EQ(precipitation_code(Precipitation::light_SN, CodeFamily::metar), "-SN");
  EXPECT_EQ(precipitation_code(Precipitation::light_SN, CodeFamily::ogrs), "");
  EXPECT_EQ(precipitation_code(static_cast<Precipitation>(99), CodeFamily::metar), "");
}

TEST(VocabularyCodes, EveryMetarCodeReadsBackInItsBook) {
  for (const Code& row : code_table<Precipitation>()) {
    const auto value = static_cast<Precipitation>(row.value);
    const CodeFamily family = row.value > 100 ? CodeFamily::ogrs : CodeFamily::metar;
    EXPECT_EQ(parse_precipitation(precipitation_code(value, family), family), value) << row.code;
  }
}

TEST(VocabularyCodes, SizesFallIntoClassesClosedBelow) {
  EXPECT_FALSE(size_class(0));
  EXPECT_FALSE(size_class(-1));
  EXPECT_FALSE(size_class(INT32_MIN));
  EXPECT_EQ(size_class(1), GrainSizeClass::very_fine);
  EXPECT_EQ(size_class(INT32_MAX), GrainSizeClass::extreme);
}

TEST(VocabularyCodes, StagesOfTaps) {
  EXPECT_FALSE(stage_of_tap(0));
  EXPECT_FALSE(stage_of_tap(31));
  EXPECT_FALSE(stage_of_tap(255));
  EXPECT_EQ(tap_within_stage(0), 0);
  EXPECT_EQ(tap_within_stage(31), 0);
  for (std::uint8_t tap = 1; tap <= 30; ++tap) {
    EXPECT_EQ(static_cast<int>(*stage_of_tap(tap)), 2 + (tap - 1) / 10);
    EXPECT_EQ(tap_within_stage(tap), (tap - 1) % 10 + 1);
  }
}

TEST(VocabularyCodes, MainClassesAndPersistentForms) {
  for (const Code& row : code_table<GrainForm>()) {
    const auto form = static_cast<GrainForm>(row.value);
    EXPECT_EQ(code_of(main_class(form)), row.code.substr(0, 2));
    const std::string_view main = row.code.substr(0, 2);
    EXPECT_EQ(is_persistent(form), main == "SH" || main == "FC" || main == "DH") << row.code;
  }
}

}  // namespace
}  // namespace firn
