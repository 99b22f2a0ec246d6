// Documents that are wrong, strange or meant to do harm: refused with a reason, or read with a report.
#include <chrono>
#include <functional>

#include "caaml_help.h"
#include "caaml_random_pit.h"

namespace firn::tests {
namespace {

const std::string kSix = "http://caaml.org/Schemas/SnowProfileIACS/v6.0.4";

std::string document(const std::string& measurements, const std::string& dir = "top down",
                     const std::string& name_space = kSix) {
  return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<caaml:SnowProfile xmlns:caaml=\"" + name_space +
         "\" xmlns:gml=\"http://www.opengis.net/gml\" "
         "gml:id=\"p1\">\n<caaml:timeRef><caaml:recordTime><caaml:TimeInstant>"
         "<caaml:timePosition>2027-01-16</caaml:timePosition></caaml:TimeInstant></caaml:recordTime></"
         "caaml:timeRef>\n"
         "<caaml:srcRef><caaml:Person "
         "gml:id=\"o1\"><caaml:name>KL</caaml:name></caaml:Person></caaml:srcRef>\n"
         "<caaml:locRef "
         "gml:id=\"l1\"><caaml:name>n</caaml:name><caaml:obsPointSubType>s</caaml:obsPointSubType></"
         "caaml:locRef>\n"
         "<caaml:snowProfileResultsOf><caaml:SnowProfileMeasurements dir=\"" +
         dir + "\">\n" + measurements +
         "</caaml:SnowProfileMeasurements></caaml:snowProfileResultsOf></caaml:SnowProfile>";
}
std::string layers(const std::string& inside) {
  return document("<caaml:stratProfile><caaml:stratMetaData/>\n" + inside + "</caaml:stratProfile>");
}
std::string layer(const std::string& inside) {
  return layers("<caaml:Layer>" + inside + "</caaml:Layer>");
}

Failure refusal(std::string_view text, const Limits& limits = {}) {
  Notices notices;
  auto pit = exchange::read_caaml(text, limits, notices);
  EXPECT_FALSE(pit) << text.substr(0, 500);
  return pit ? Failure{} : pit.failure();
}

std::string with_first_line(const std::string& line) {
  std::string text = document("");
  text.insert(text.find('\n') + 1, line + "\n");
  return text;
}

// --- refused as a whole

TEST(CaamlHostile, ADocumentTypeIsRefusedWhateverItSays) {
  std::string bomb = "<!DOCTYPE lolz [<!ENTITY a \"ha\">";
  for (char c = 'b'; c <= 'z'; ++c) {
    bomb += std::string("<!ENTITY ") + c + " \"";
    for (int i = 0; i < 10; ++i) bomb += std::string("&") + static_cast<char>(c - 1) + ";";
    bomb += "\">";
  }
  bomb += "]>";
  for (const std::string& type : {bomb, std::string("<!DOCTYPE caaml:SnowProfile>"),
                                  std::string("<!DOCTYPE x [<!ENTITY e SYSTEM \"file:///etc/hostname\">]>"),
                                  std::string("<!DOCTYPE x SYSTEM \"http://localhost/x.dtd\">"),
                                  std::string("<!DOCTYPE x [<!ATTLIST a b CDATA 'c'>]>")}) {
    const Failure failure = refusal(with_first_line(type));
    EXPECT_EQ(failure.status, FIRN_DAMAGED);
    EXPECT_NE(failure.what.find("document type"), std::string::npos) << failure.what;
  }
}

TEST(CaamlHostile, EntitiesThatNobodyDeclaredAreNotExpanded) {
  Notices notices;
  const auto pit = read_caaml_well(
      layer("<caaml:metaData><caaml:comment>&xxe; &lt;b&gt;</caaml:comment></caaml:metaData><caaml:depthTop "
            "uom=\"cm\">0</caaml:depthTop>"),
      notices);
  ASSERT_EQ(pit->remarks.size(), 1u);
  EXPECT_EQ(pit->remarks[0]->text, "&xxe; <b>");
}

TEST(CaamlHostile, TheFailureSaysWhatWasExpected) {
  for (const std::string& other :
       {std::string("http://caaml.org/Schemas/V4.2/SnowProfileIACS"), std::string(), std::string("urn:x")}) {
    const Failure failure = refusal(document("", "top down", other));
    EXPECT_EQ(failure.status, FIRN_WRONG_KIND);
    EXPECT_NE(failure.remedy.find(kSix), std::string::npos);
    EXPECT_EQ(failure.line, 2u);
  }
  std::string renamed = document("");
  for (std::size_t at; (at = renamed.find("SnowProfile ")) != std::string::npos;)
    renamed.replace(at, 11, "Observation");
  renamed.replace(renamed.rfind("SnowProfile>"), 11, "Observation");
  EXPECT_EQ(refusal(renamed).status, FIRN_WRONG_KIND);
}

TEST(CaamlHostile, WhatIsNoXmlIsRefusedWithItsPlace) {
  const std::string whole = document("<caaml:profileDepth uom=\"cm\">1</caaml:profileDepth>");
  EXPECT_EQ(refusal("").status, FIRN_DAMAGED);
  EXPECT_EQ(refusal("profile: nothing").status, FIRN_DAMAGED);
  EXPECT_EQ(refusal("<a").status, FIRN_DAMAGED);
  for (std::size_t cut = 60; cut < whole.size(); cut += 7)
    EXPECT_EQ(refusal(whole.substr(0, cut)).status, FIRN_DAMAGED);
  const Failure failure = refusal(document("<caaml:stratProfile>\n</caaml:tempProfile>"));
  EXPECT_EQ(failure.line, 8u);
}

TEST(CaamlHostile, LimitsAreTheCallers) {
  Limits limits;
  limits.max_bytes = 100;
  EXPECT_EQ(refusal(document(""), limits).status, FIRN_TOO_LARGE);
  limits = {};
  limits.max_depth = 3;
  EXPECT_EQ(
      refusal(document("<caaml:weatherCond><caaml:skyCond>CLR</caaml:skyCond></caaml:weatherCond>"), limits)
          .status,
      FIRN_TOO_LARGE);
}

TEST(CaamlHostile, DepthOfTenThousandIsRefusedEverywhere) {
  std::string deep;
  for (int i = 0; i < 10000; ++i) deep += "<x>";
  for (int i = 0; i < 10000; ++i) deep += "</x>";
  EXPECT_EQ(refusal(document(deep)).status, FIRN_TOO_LARGE);
  EXPECT_EQ(
      refusal(document("<caaml:customData><y xmlns=\"urn:y\">" + deep + "</y></caaml:customData>")).status,
      FIRN_TOO_LARGE);
  EXPECT_EQ(refusal(document("<caaml:profileDepth uom=\"cm\">" + deep + "</caaml:profileDepth>")).status,
            FIRN_TOO_LARGE);
  EXPECT_EQ(refusal(deep).status, FIRN_WRONG_KIND);
  EXPECT_EQ(refusal(document("<caaml:customData><f:pit xmlns:f=\"urn:firnbook:caaml:1\">" + deep +
                             "</f:pit></caaml:customData>"))
                .status,
            FIRN_TOO_LARGE);
}

// --- bytes

TEST(CaamlHostile, EncodingsAreReadOrRefused) {
  const std::string plain = layer(
      "<caaml:metaData><caaml:comment>Schnee \xC3\xBC</caaml:comment></caaml:metaData><caaml:depthTop "
      "uom=\"cm\">0</caaml:depthTop>");
  Notices notices;
  EXPECT_EQ(read_caaml_well("\xEF\xBB\xBF" + plain, notices)->remarks.at(0)->text, "Schnee \xC3\xBC");
  EXPECT_TRUE(notices.empty()) << shown(notices);

  std::string latin = plain;
  latin.replace(latin.find("UTF-8"), 5, "ISO-8859-1");
  latin.replace(latin.find("\xC3\xBC"), 2, "\xFC");
  EXPECT_EQ(read_caaml_well(latin, notices)->remarks.at(0)->text, "Schnee \xC3\xBC");
  EXPECT_EQ(notices.kept().size(), 1u);

  std::string bad = plain;
  bad.replace(bad.find("\xC3\xBC"), 2, "\xFC");
  const Failure failure = refusal(bad);
  EXPECT_EQ(failure.status, FIRN_BAD_UTF8);
  EXPECT_EQ(failure.line, 8u);
  EXPECT_GT(failure.column, 40u);
  std::string wide;
  for (const char c : plain) wide += {c, '\0'};
  EXPECT_EQ(refusal(wide).status, FIRN_BAD_UTF8);
  EXPECT_EQ(refusal("\xFF\xFE" + wide).status, FIRN_BAD_UTF8);
  std::string other = plain;
  other.replace(other.find("UTF-8"), 5, "EBCDIC");
  EXPECT_EQ(refusal(other).status, FIRN_BAD_UTF8);
  EXPECT_EQ(refusal(plain + std::string("\0<", 2)).status, FIRN_BAD_UTF8);
}

TEST(CaamlHostile, CarriageReturnsChangeNothing) {
  const std::string text = layer(
      "<caaml:depthTop uom=\"cm\">\n0\n</caaml:depthTop>\n<caaml:thickness uom=\"cm\"> 5 </caaml:thickness>");
  std::string returns;
  for (const char c : text) {
    if (c == '\n') returns += '\r';
    returns += c;
  }
  Notices notices;
  EXPECT_EQ(recording::to_bytes(*read_caaml_well(returns, notices)),
            recording::to_bytes(*read_caaml_well(text, notices)));
  EXPECT_TRUE(notices.empty()) << shown(notices);
}

TEST(CaamlHostile, ReferencesToCharactersThatNoTextHolds) {
  Notices notices;
  const auto pit =
      read_caaml_well(layer("<caaml:metaData><caaml:comment>a&#1;b&#xD800;c&#xFFFF;d&#0;</caaml:comment></"
                            "caaml:metaData><caaml:depthTop uom=\"cm\">0</caaml:depthTop>"),
                      notices);
  EXPECT_EQ(pit->remarks.at(0)->text.substr(0, 2), "ab");
  EXPECT_FALSE(notices.empty());
  Notices again;
  read_caaml_well(written(recording::to_bytes(*pit)), again);
}

// --- single values: told, kept as words, and nothing else is lost

struct Fault {
  const char* inside;  // of a layer
  const char* says;    // part of the notice
  const char* remark;  // what is kept, "" for none
};

TEST(CaamlHostile, OneFaultLosesNothingElse) {
  const Fault faults[] = {
      {"<caaml:depthTop uom=\"cm\">1e999</caaml:depthTop>", "far out of range", "depthTop: \"1e999\" cm"},
      {"<caaml:depthTop uom=\"cm\">NaN</caaml:depthTop>", "no number", "depthTop: \"NaN\" cm"},
      {"<caaml:depthTop uom=\"cm\">INF</caaml:depthTop>", "no number", "depthTop: \"INF\" cm"},
      {"<caaml:depthTop uom=\"cm\">99999999999</caaml:depthTop>", "out of range",
       "depthTop: \"99999999999\" cm"},
      {"<caaml:depthTop uom=\"cm\">1,250</caaml:depthTop>", "comma", "depthTop: \"1,250\" cm"},
      {"<caaml:depthTop uom=\"furlong\">1</caaml:depthTop>", "unit", "depthTop: \"1\" furlong"},
      {"<caaml:depthTop uom=\"cm\">ten</caaml:depthTop>", "no number", "depthTop: \"ten\" cm"},
      {"<caaml:depthTop uom=\"cm\">0</caaml:depthTop><caaml:thickness uom=\"cm\">-5</caaml:thickness>",
       "negative", "thickness: \"-5\" cm"},
      {"<caaml:thickness uom=\"cm\">5</caaml:thickness>", "top is not known", "thickness: \"5\" cm"},
      {"<caaml:grainFormPrimary>XX</caaml:grainFormPrimary>", "no such code", "grainFormPrimary: \"XX\""},
      {"<caaml:grainFormPrimary>fcxr</caaml:grainFormPrimary>", "read as FCxr", ""},
      {"<caaml:layerOfConcern>maybe</caaml:layerOfConcern>", "neither true nor false",
       "layerOfConcern: \"maybe\""},
      {"<caaml:layerOfConcern partOfLayer=\"left\">true</caaml:layerOfConcern>", "part of the layer", ""},
      {"<caaml:colour>white</caaml:colour>", "not known here", ""},
      {"<colour xmlns=\"urn:x\">white</colour>", "not known here", ""},
      {"text that stands alone", "text stands", ""},
      {"<caaml:wetness uom=\"\" shade=\"1\">D</caaml:wetness>", "attribute", ""},
      {"<caaml:validFormationTime><caaml:TimeInstant><caaml:timePosition>2027-02-30</caaml:timePosition></"
       "caaml:TimeInstant></caaml:validFormationTime>",
       "no date", "timePosition: \"2027-02-30\""},
      {"<caaml:grainSize "
       "uom=\"mm\"><caaml:Components><caaml:avg>-1</caaml:avg></caaml:Components></caaml:grainSize>",
       "negative", "avg: \"-1\""},
  };
  for (const Fault& fault : faults) {
    SCOPED_TRACE(fault.inside);
    Notices notices;
    const auto pit = read_caaml_well(
        layer(std::string(fault.inside) + "\n<caaml:hardness uom=\"\">P</caaml:hardness>"), notices);
    ASSERT_EQ(pit->layers.size(), 1u);
    EXPECT_TRUE(pit->layers[0]->hardness == firnbook::HandHardness::Pencil);
    ASSERT_FALSE(notices.empty());
    EXPECT_NE(notices.kept()[0].what.find(fault.says), std::string::npos) << shown(notices);
    EXPECT_EQ(notices.kept()[0].line, 8u) << shown(notices);
    EXPECT_EQ(notices.kept()[0].path.find(
                  "/caaml:SnowProfile/caaml:snowProfileResultsOf/caaml:SnowProfileMeasurements/"
                  "caaml:stratProfile/caaml:Layer"),
              0u)
        << shown(notices);
    if (*fault.remark == 0) {
      EXPECT_TRUE(pit->remarks.empty());
    } else {
      ASSERT_EQ(pit->remarks.size(), 1u);
      EXPECT_EQ(pit->remarks[0]->text, fault.remark);
      EXPECT_EQ(pit->remarks[0]->about->thing(), firnbook::Thing::layer);
    }
  }
}

TEST(CaamlHostile, KnownUnitsAndCommasAreConvertedAndTold) {
  struct Told {
    const char* depth;
    std::int32_t value;
  };
  const Told cases[] = {{"<caaml:depthTop uom=\"m\">1.2</caaml:depthTop>", 120000},
                        {"<caaml:depthTop uom=\"mm\">15</caaml:depthTop>", 1500},
                        {"<caaml:depthTop uom=\"in\">10</caaml:depthTop>", 25400},
                        {"<caaml:depthTop uom=\"ft\">2</caaml:depthTop>", 60960},
                        {"<caaml:depthTop uom=\"cm\">12,5</caaml:depthTop>", 12500},
                        {"<caaml:depthTop uom=\"cm\">0.00049</caaml:depthTop>", 0}};
  for (const Told& each : cases) {
    Notices notices;
    const auto pit = read_caaml_well(layer(each.depth), notices);
    EXPECT_EQ(pit->layers.at(0)->top->value_10um(), each.value) << each.depth;
    ASSERT_EQ(notices.kept().size(), 1u);
    EXPECT_EQ(notices.kept()[0].kind, NoticeKind::changed);
  }
}

TEST(CaamlHostile, NumbersOfTenThousandDigits) {
  Notices notices;
  const auto pit = read_caaml_well(
      layer("<caaml:depthTop uom=\"cm\">0." + std::string(10000, '1') +
            "</caaml:depthTop><caaml:thickness uom=\"cm\">" + std::string(10000, '9') + "</caaml:thickness>"),
      notices);
  EXPECT_EQ(pit->layers.at(0)->top->value_10um(), 111);
  ASSERT_EQ(pit->remarks.size(), 1u);
  EXPECT_LT(pit->remarks[0]->text.size(), 300u);
}

TEST(CaamlHostile, HeightsInPlaceOfDepths) {
  Notices notices;
  const auto pit = read_caaml_well(
      document("<caaml:stratProfile><caaml:stratMetaData/><caaml:Layer><caaml:depthTop "
               "uom=\"cm\">140</caaml:depthTop>"
               "<caaml:thickness uom=\"cm\">20</caaml:thickness></caaml:Layer></caaml:stratProfile>",
               "bottom up"),
      notices);
  ASSERT_EQ(notices.kept().size(), 1u);
  EXPECT_EQ(notices.kept()[0].kind, NoticeKind::changed);
  const firnbook::LayerT& only = *pit->layers.at(0);
  EXPECT_EQ(only.top->datum(), firnbook::Datum::ground);
  EXPECT_EQ(only.top->value_10um(), 140000);
  EXPECT_EQ(only.bottom->value_10um(), 120000);
}

TEST(CaamlHostile, LayersInAnyOrderComeOutFromTheSurfaceDown) {
  Notices notices;
  const auto pit =
      read_caaml_well(layers("<caaml:Layer><caaml:metaData><caaml:comment>lower</caaml:comment></"
                             "caaml:metaData><caaml:depthTop uom=\"cm\">20</caaml:depthTop></caaml:Layer>"
                             "<caaml:Layer><caaml:depthTop uom=\"cm\">0</caaml:depthTop></caaml:Layer>"),
                      notices);
  const Bytes bytes = recording::to_bytes(*pit);
  const auto& stored = *firnbook::GetPit(bytes.data());
  EXPECT_EQ(stored.layers()->Get(0)->top()->value_10um(), 0);
  EXPECT_EQ(stored.remarks()->Get(0)->about()->index(), 1);
  ASSERT_EQ(notices.kept().size(), 1u) << shown(notices);
  EXPECT_EQ(notices.kept()[0].kind, NoticeKind::changed);
}

TEST(CaamlHostile, IdsThatStandTwiceAreTold) {
  std::string text = document("");
  text.replace(text.find("\"o1\""), 4, "\"p1\"");
  Notices notices;
  const auto pit = read_caaml_well(text, notices);
  ASSERT_EQ(notices.kept().size(), 1u);
  EXPECT_EQ(pit->observers.at(0)->id, "p1");
  Notices again;
  const Bytes bytes = recording::to_bytes(*pit);
  EXPECT_EQ(recording::to_bytes(*read_caaml_well(written(bytes), again)), bytes);
}

TEST(CaamlHostile, ANewerVersionIsReadAndTold) {
  Notices notices;
  read_caaml_well(document("", "top down", "http://caaml.org/Schemas/SnowProfileIACS/v6.0.5"), notices);
  EXPECT_EQ(notices.kept().size(), 1u);
  Notices older;
  read_caaml_well(document("", "top down", "http://caaml.org/Schemas/SnowProfileIACS/v6.0.1"), older);
  EXPECT_TRUE(older.empty());
}

TEST(CaamlHostile, PrefixesAreTheWritersChoice) {
  std::string text = layer("<caaml:depthTop uom=\"cm\">5</caaml:depthTop>");
  const auto swap_all = [&](const std::string& from, const std::string& to) {
    for (std::size_t at = 0; (at = text.find(from, at)) != std::string::npos; at += to.size())
      text.replace(at, from.size(), to);
  };
  swap_all("xmlns:caaml", "xmlns");
  swap_all("caaml:", "");
  Notices notices;
  EXPECT_EQ(read_caaml_well(text, notices)->layers.at(0)->top->value_10um(), 5000);
  swap_all("<depthTop ", "<q:depthTop xmlns:q=\"" + kSix + "\" ");
  swap_all("</depthTop>", "</q:depthTop>");
  EXPECT_EQ(read_caaml_well(text, notices)->layers.at(0)->top->value_10um(), 5000);
  EXPECT_TRUE(notices.empty()) << shown(notices);
}

// --- customData

TEST(CaamlHostile, ForeignDataStandAloneAndComeBackInTheirPlace) {
  std::string text = layer(
      "<caaml:customData><z:a z:n=\"1\"> <b xmlns=\"urn:b\">x &amp; "
      "<![CDATA[<y>]]></b><z:c/>\n</z:a><z:d/></caaml:customData>"
      "<caaml:depthTop uom=\"cm\">5</caaml:depthTop>");
  text.insert(text.find(" xmlns:gml"), " xmlns:z=\"urn:z\"");
  Notices notices;
  const auto pit = read_caaml_well(text, notices);
  ASSERT_EQ(pit->extensions.size(), 2u) << shown(notices);
  const auto& bytes = pit->extensions[0]->bytes;
  EXPECT_EQ(std::string(bytes.begin(), bytes.end()),
            "<z:a z:n=\"1\" xmlns:z=\"urn:z\"> <b xmlns=\"urn:b\">x &amp; &lt;y&gt;</b><z:c/>\n</z:a>");
  EXPECT_EQ(pit->extensions[1]->key, "urn:z");
  EXPECT_EQ(pit->extensions[1]->about->thing(), firnbook::Thing::layer);
  const std::string again = written(recording::to_bytes(*pit));
  EXPECT_NE(again.find("<z:d xmlns:z=\"urn:z\"/>"), std::string::npos) << again;
  EXPECT_LT(again.find("<z:d"), again.find("depthTop"));
}

TEST(CaamlHostile, ForeignDataOfTheStandardsOwnNamespaceAreTold) {
  Notices notices;
  const auto pit =
      read_caaml_well(document("<caaml:customData><caaml:hS/><plain/></caaml:customData>"), notices);
  EXPECT_TRUE(pit->extensions.empty());
  ASSERT_EQ(notices.kept().size(), 2u);
  EXPECT_EQ(notices.kept()[0].kind, NoticeKind::not_understood);
}

// What others change in a document of ours counts, and what is ours beside it stays.
TEST(CaamlHostile, AChangedDocumentCountsMoreThanOurOwnData) {
  firnbook::PitT pit;
  pit.title = "kept";
  pit.layers.push_back(std::make_unique<firnbook::LayerT>());
  pit.layers[0]->top =
      std::make_unique<firnbook::Depth>(1000, firnbook::Datum::surface, firnbook::Direction::unknown);
  pit.layers[0]->bottom =
      std::make_unique<firnbook::Depth>(3000, firnbook::Datum::surface, firnbook::Direction::slope_normal);
  pit.layers[0]->words = "sugary";
  std::string text = written(recording::to_bytes(pit));
  text.replace(text.find(">2</caaml:thickness>"), 2, ">7");
  Notices notices;
  const auto back = read_caaml_well(text, notices);
  EXPECT_EQ(back->title, "kept");
  EXPECT_EQ(back->layers.at(0)->bottom->value_10um(), 8000);
  EXPECT_EQ(back->layers.at(0)->words, "sugary");
  ASSERT_EQ(notices.kept().size(), 1u) << shown(notices);

  // A layer more: what we know of the others is not hung on the wrong ones.
  const std::size_t at = text.find("        <caaml:Layer>");
  ASSERT_NE(at, std::string::npos);
  text.insert(at, "<caaml:Layer><caaml:depthTop uom=\"cm\">0</caaml:depthTop></caaml:Layer>\n");
  Notices more;
  const auto longer = read_caaml_well(text, more);
  ASSERT_EQ(longer->layers.size(), 2u);
  EXPECT_EQ(longer->layers[0]->words, "");
  EXPECT_EQ(more.kept().size(), 2u) << shown(more);
}

TEST(CaamlHostile, OurOwnDataMayHoldAnything) {
  const auto own = [](const std::string& inside) {
    return document("<caaml:customData><f:pit xmlns:f=\"urn:firnbook:caaml:1\" sum=\"x\" remarks=\"9 9\">" +
                    inside + "</f:pit></caaml:customData>");
  };
  const char* const kInsides[] = {
      "<f:layers at=\"4000000000\" new=\"1\"/>",
      "<f:layers at=\"7\"/>",
      "<f:layers/>",
      "<f:nothing/>",
      "<f:no>time time</f:no>",
      "<f:time>1 2 3</f:time>",
      "<f:time>99999999999999999999 0 0 0 0 0 0 0</f:time>",
      "<f:site><f:slope_deg>256</f:slope_deg></f:site>",
      "<f:layers at=\"0\" new=\"1\"/><f:tests at=\"0\" new=\"1\"/><f:layers at=\"0\" new=\"1\"/>",
      "<f:extensions at=\"0\" new=\"1\"><f:bytes>zz</f:bytes></f:extensions>",
      "<f:title hex=\"1\">0</f:title>",
      "<f:pit/>",
      "<f:remarks at=\"0\" new=\"1\"><f:about>1 2 3 4 5</f:about></f:remarks>"};
  for (const char* inside : kInsides) {
    Notices notices;
    const auto pit = read_caaml_well(own(inside), notices);
    EXPECT_FALSE(notices.empty()) << inside;
    recording::to_bytes(*pit);
  }
}

// --- size: time grows with the document, not faster

TEST(CaamlHostile, LargeDocumentsTakeTimeInProportion) {
  const auto seconds = [](const std::function<std::string(int)>& make, int count) {
    const std::string text = make(count);
    double best = 1e9;
    for (int run = 0; run < 3; ++run) {
      const auto begin = std::chrono::steady_clock::now();
      Notices notices;
      auto pit = exchange::read_caaml(text, {}, notices);
      if (pit) written(recording::to_bytes(**pit));
      const std::chrono::duration<double> took = std::chrono::steady_clock::now() - begin;
      best = std::min(best, took.count());
    }
    return best;
  };
  const auto repeated = [](const std::string& before, const std::string& part, const std::string& behind) {
    return [=](int count) {
      std::string all = before;
      for (int i = 0; i < count; ++i) all += part;
      return document(all + behind);
    };
  };
  const std::string open = "<caaml:stratProfile><caaml:stratMetaData/>";
  const std::string close = "</caaml:stratProfile>";
  const std::string own = "<caaml:customData><f:pit xmlns:f=\"urn:firnbook:caaml:1\">";
  const std::function<std::string(int)> kinds[] = {
      repeated(open, "<caaml:Layer><caaml:depthTop uom=\"cm\">x</caaml:depthTop></caaml:Layer>", close),
      repeated(open,
               "<caaml:Layer><caaml:customData><y xmlns=\"urn:y\">t</y></caaml:customData><caaml:depthTop "
               "uom=\"cm\">1</caaml:depthTop></caaml:Layer>",
               close),
      repeated("", "<caaml:unknown/>", ""),
      repeated(own, "<f:layers at=\"0\" new=\"1\"/>", "</f:pit></caaml:customData>"),
      repeated(own, "<f:layers at=\"0\" new=\"1\"/><f:tests at=\"0\" new=\"1\"/>",
               "</f:pit></caaml:customData>"),
      repeated("<caaml:customData>", "<y xmlns=\"urn:y\"/>", "</caaml:customData>"),
  };
  for (const auto& make : kinds) {
    const double small = seconds(make, 1500);
    const double large = seconds(make, 6000);
    // Four times the document; sixteen times the time would be quadratic.
    EXPECT_LT(large, 10 * small + 0.05) << make(1);
  }
}

// Seeds cut short and with bytes changed: whatever comes out is a pit or a reason.
TEST(CaamlHostile, DamagedDocumentsDoNoHarm) {
  std::uint64_t state = 5;
  const auto roll = [&](std::size_t sides) {
    state = state * 6364136223846793005u + 1442695040888963407u;
    return static_cast<std::size_t>(state >> 33) % sides;
  };
  std::size_t read = 0;
  for (std::uint64_t seed = 1; seed <= 60; ++seed) {
    const std::string whole = written(recording::to_bytes(*RandomPit(seed, Wild::plausible).pit()));
    for (int i = 0; i < 20; ++i) {
      std::string damaged = whole;
      for (std::size_t change = 0; change <= roll(4); ++change)
        damaged[roll(damaged.size())] = static_cast<char>(32 + roll(95));
      Notices notices;
      auto pit = exchange::read_caaml(damaged, {}, notices);
      if (!pit) continue;
      ++read;
      const Bytes bytes = recording::to_bytes(**pit);
      Notices again;
      EXPECT_EQ(recording::to_bytes(*read_caaml_well(written(bytes), again)), bytes) << damaged;
    }
  }
  EXPECT_GT(read, 100u);
}

// Bytes of a pit that verify may still hold anything.
TEST(CaamlHostile, DamagedPitsAreWrittenWithoutHarm) {
  std::uint64_t state = 11;
  const auto roll = [&](std::size_t sides) {
    state = state * 6364136223846793005u + 1442695040888963407u;
    return static_cast<std::size_t>(state >> 33) % sides;
  };
  std::size_t written_pits = 0;
  for (int i = 0; i < 3000; ++i) {
    Bytes damaged = recording::to_bytes(*RandomPit(roll(40) + 1, Wild::plausible).pit());
    for (std::size_t change = 0; change <= roll(4); ++change)
      damaged[roll(damaged.size())] = static_cast<std::uint8_t>(roll(256));
    flatbuffers::Verifier verifier(damaged.data(), damaged.size());
    if (!firnbook::VerifyPitBuffer(verifier)) continue;
    ++written_pits;
    const std::string text = written(damaged);
    firnbook::PitT object;
    firnbook::GetPit(damaged.data())->UnPackTo(&object);
    Notices notices;
    const auto back = read_caaml_well(text, notices);
    EXPECT_EQ(recording::to_bytes(*back), recording::to_bytes(object)) << text;
  }
  EXPECT_GT(written_pits, 300u);
}

}  // namespace
}  // namespace firn::tests
