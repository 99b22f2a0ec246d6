// The one door to all formats.
#include "support.h"

namespace {

using capi::Buffer;
using capi::bytes_of;
using capi::Context;

struct Converted {
  firn_status status = FIRN_INTERNAL;
  std::string text, notices;
  firn_error error = FIRN_INIT(firn_error);
};

Converted convert(firn_context* context, const std::string& document, firn_convert_options options) {
  Converted converted;
  Buffer out(context), notices(context);
  converted.status = firn_convert(context, bytes_of(document), document.size(), &options, out.out(),
                                  notices.out(), &converted.error);
  if (converted.status != FIRN_OK) return converted;
  converted.text = out.text();
  converted.notices = notices.text();
  return converted;
}
Converted convert(firn_context* context, const std::string& document, std::uint32_t to) {
  firn_convert_options options = FIRN_INIT(firn_convert_options);
  options.to = to;
  return convert(context, document, options);
}

std::uint32_t detected(firn_context* context, const std::string& document) {
  std::uint32_t format = FIRN_FORMAT_DETECT;
  EXPECT_EQ(firn_format_detect(context, bytes_of(document), document.size(), &format, nullptr), FIRN_OK);
  return format;
}

TEST(Convert, EveryFormatLeadsToEveryOtherAndBack) {
  Context context;
  constexpr std::uint32_t kBothWays[] = {FIRN_FORMAT_FIRN,  FIRN_FORMAT_JSON, FIRN_FORMAT_CAAML,
                                         FIRN_FORMAT_NOTES, FIRN_FORMAT_CARD, FIRN_FORMAT_CARD_TEXT};
  for (const char* name : {"larch-bowl-entry", "tarn-shoulder"}) {
    const std::string pit = capi::pit_of(context, capi::demo_notes(name));
    for (const std::uint32_t by : kBothWays) {
      const Converted there = convert(context, pit, by);
      ASSERT_EQ(there.status, FIRN_OK) << by << ": " << there.error.what;
      EXPECT_EQ(detected(context, there.text), by);
      const Converted back = convert(context, there.text, FIRN_FORMAT_FIRN);
      ASSERT_EQ(back.status, FIRN_OK) << by << ": " << back.error.what;
      EXPECT_EQ(back.text, pit) << by;
      EXPECT_EQ(back.notices, "") << by;
      for (const std::uint32_t to : kBothWays) {
        EXPECT_EQ(convert(context, there.text, to).text, convert(context, pit, to).text)
            << by << " to " << to;
      }
    }
  }
}

TEST(Convert, PicturesAndTablesAreWrittenAndNotRead) {
  Context context;
  const std::string pit = capi::pit_of(context, capi::demo_notes("tarn-shoulder"));
  const Converted picture = convert(context, pit, FIRN_FORMAT_CARD_PICTURE);
  EXPECT_EQ(picture.text.substr(0, 4), "<svg");
  for (const std::uint32_t table :
       {FIRN_FORMAT_LAYERS_TABLE, FIRN_FORMAT_TESTS_TABLE, FIRN_FORMAT_PITS_TABLE}) {
    const Converted rows = convert(context, pit, table);
    ASSERT_EQ(rows.status, FIRN_OK);
    firn_convert_options options = FIRN_INIT(firn_convert_options);
    options.to = table;
    options.rows_only = 1;
    const std::string without = convert(context, pit, options).text;
    EXPECT_LT(without.size(), rows.text.size());
    EXPECT_EQ(rows.text.substr(rows.text.find("\r\n") + 2), without);
    options = FIRN_INIT(firn_convert_options);
    options.from = table;
    EXPECT_EQ(convert(context, rows.text, options).status, FIRN_BAD_ARGUMENT);
  }
}

TEST(Convert, ReportsAndBulletinsGoIntoJson) {
  Context context;
  const std::string pit = capi::pit_of(context, capi::demo_notes("tarn-shoulder"));
  const std::string report = capi::report_of(context, pit);
  const Converted json = convert(context, report, FIRN_FORMAT_JSON);
  ASSERT_EQ(json.status, FIRN_OK);
  EXPECT_EQ(json.text.substr(0, 11), "{\"report\":{");
  const Converted back = convert(context, json.text, FIRN_FORMAT_FIRN);
  ASSERT_EQ(back.status, FIRN_OK);
  EXPECT_EQ(convert(context, back.text, FIRN_FORMAT_JSON).text, json.text);
  EXPECT_EQ(convert(context, report, FIRN_FORMAT_CAAML).status, FIRN_BAD_ARGUMENT);

  const std::string bulletin = R"({"bulletins": [{"regions": [{"regionID": "LN"}], "nose": 1}]})";
  EXPECT_EQ(detected(context, bulletin), static_cast<std::uint32_t>(FIRN_FORMAT_BULLETIN_JSON));
  const Converted ours = convert(context, bulletin, FIRN_FORMAT_JSON);
  ASSERT_EQ(ours.status, FIRN_OK) << ours.error.what;
  EXPECT_EQ(ours.text.substr(0, 14), "{\"bulletins\":{");
  EXPECT_EQ(detected(context, ours.text), static_cast<std::uint32_t>(FIRN_FORMAT_JSON));
}

TEST(Convert, WhatIsLostIsToldLineByLine) {
  Context context;
  const Converted read = convert(context, "{\"pit\": {\n \"nose\\n\": 3}}", FIRN_FORMAT_NOTES);
  ASSERT_EQ(read.status, FIRN_OK);
  // Not known and kept with the pit, as data of others, which notes can hold and cards cannot.
  EXPECT_NE(read.notices.find("not understood\t2\t"), std::string::npos) << read.notices;
  EXPECT_EQ(read.notices.find("left out"), std::string::npos) << read.notices;
  EXPECT_EQ(read.text.substr(0, 10), "extension ");
  firn_convert_options card = FIRN_INIT(firn_convert_options);
  card.to = FIRN_FORMAT_CARD;
  card.leave_out = 1;
  const Converted left = convert(context, read.text, card);
  ASSERT_EQ(left.status, FIRN_OK);
  EXPECT_NE(left.notices.find("left out\t\t\textensions"), std::string::npos) << left.notices;
  for (const char sign : read.notices) EXPECT_TRUE(sign == '\n' || sign == '\t' || sign >= ' ');
  const Converted kept = convert(context, "{\"pit\": {\n \"nose\": 3}}", FIRN_FORMAT_FIRN);
  const Converted json = convert(context, kept.text, FIRN_FORMAT_JSON);
  EXPECT_NE(json.text.find("urn:firnbook:json:unknown#/pit/nose"), std::string::npos) << json.text;
}

TEST(Convert, WhatIsConfidentialStaysBehindWhenThePitIsPassedOn) {
  Context context;
  const std::string pit = capi::pit_of(context,
                                       "remark \"for everybody\"\nremark \"seen with a client\", "
                                       "confidential yes\nphoto a.jpg, about remarks[1]\n");
  firn_convert_options options = FIRN_INIT(firn_convert_options);
  options.to = FIRN_FORMAT_JSON;
  EXPECT_NE(convert(context, pit, options).text.find("client"), std::string::npos);
  options.for_others = 1;
  const Converted passed_on = convert(context, pit, options);
  ASSERT_EQ(passed_on.status, FIRN_OK);
  EXPECT_EQ(passed_on.text.find("client"), std::string::npos);
  EXPECT_NE(passed_on.text.find("for everybody"), std::string::npos);
  EXPECT_EQ(passed_on.notices, "left out\t\t\tremarks[1]\tis confidential, and the pit is passed on\n");
}

TEST(Convert, LineEndsBehindACardsTextAreNoneOfIt) {
  Context context;
  const std::string pit = capi::pit_of(context, capi::demo_notes("tarn-shoulder"));
  const std::string text = convert(context, pit, FIRN_FORMAT_CARD_TEXT).text + "\r\n";
  EXPECT_EQ(detected(context, text), static_cast<std::uint32_t>(FIRN_FORMAT_CARD_TEXT));
  EXPECT_EQ(convert(context, text, FIRN_FORMAT_FIRN).text, pit);
}

TEST(Convert, FailuresSayWhere) {
  Context context;
  const Converted json =
      convert(context, "{\"pit\": {\n \"layers\": [{\"wetness\": \"Q\"}]}}", FIRN_FORMAT_FIRN);
  EXPECT_EQ(json.status, FIRN_NOT_UNDERSTOOD);
  EXPECT_EQ(json.error.line, 2u);
  EXPECT_STREQ(json.error.path, "layers[0].wetness");
  const Converted notes = convert(context, "HS 90\nfoo\n", FIRN_FORMAT_FIRN);
  EXPECT_EQ(notes.status, FIRN_NOTES_NOT_UNDERSTOOD);
  EXPECT_EQ(notes.error.line, 2u);
  firn_convert_options options = FIRN_INIT(firn_convert_options);
  options.keep_unread = 1;
  const Converted kept = convert(context, "HS 90\nfoo\n", options);
  ASSERT_EQ(kept.status, FIRN_OK);
  EXPECT_EQ(kept.notices.substr(0, 7), "kept\t2\t");
}

TEST(Convert, OptionsHaveRanges) {
  Context context;
  const auto refused = [&](auto change) {
    firn_convert_options options = FIRN_INIT(firn_convert_options);
    change(options);
    return convert(context, "HS 90\n", options).status;
  };
  EXPECT_EQ(refused([](auto&) {}), FIRN_OK);
  EXPECT_EQ(refused([](auto& o) { o.from = FIRN_FORMAT_BULLETIN_JSON + 1; }), FIRN_BAD_ARGUMENT);
  EXPECT_EQ(refused([](auto& o) { o.to = FIRN_FORMAT_BULLETIN_JSON + 1; }), FIRN_BAD_ARGUMENT);
  EXPECT_EQ(refused([](auto& o) { o.to = FIRN_FORMAT_BULLETIN_JSON; }), FIRN_BAD_ARGUMENT);
  EXPECT_EQ(refused([](auto& o) { o.leave_out = 2; }), FIRN_BAD_ARGUMENT);
  EXPECT_EQ(refused([](auto& o) { o.keep_unread = 2; }), FIRN_BAD_ARGUMENT);
  EXPECT_EQ(refused([](auto& o) { o.rows_only = 2; }), FIRN_BAD_ARGUMENT);
  EXPECT_EQ(refused([](auto& o) { o.for_others = 2; }), FIRN_BAD_ARGUMENT);
  EXPECT_EQ(refused([](auto& o) { o.indent = 17; }), FIRN_BAD_ARGUMENT);
  EXPECT_EQ(refused([](auto& o) { o.max_depth = 1001; }), FIRN_BAD_ARGUMENT);
  EXPECT_EQ(refused([](auto& o) { o.max_bytes = 5; }), FIRN_TOO_LARGE);
}

}  // namespace
