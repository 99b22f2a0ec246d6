// Languages and lengths from outside.
#include <set>

#include "support.h"

namespace {

using capi::Buffer;
using capi::bytes_of;
using capi::Context;

constexpr std::uint8_t kLanguages[] = {FIRN_LANGUAGE_ENGLISH, FIRN_LANGUAGE_GERMAN, FIRN_LANGUAGE_FRENCH};

TEST(Language, CodesGoInAndOut) {
  const char* const codes[] = {"en", "de", "fr"};
  for (const std::uint8_t language : kLanguages) {
    const char* code = nullptr;
    EXPECT_EQ(firn_language_code(language, &code, nullptr), FIRN_OK);
    EXPECT_STREQ(code, codes[language]);
    std::uint8_t found = 99;
    EXPECT_EQ(firn_language_find(code, &found, nullptr), FIRN_OK);
    EXPECT_EQ(found, language);
  }
  std::uint8_t found = 99;
  for (const char* code : {"de-CH", "DE", "de_AT", "dE-x"}) {
    EXPECT_EQ(firn_language_find(code, &found, nullptr), FIRN_OK) << code;
    EXPECT_EQ(found, FIRN_LANGUAGE_GERMAN) << code;
  }
}

TEST(Language, UnknownOnesAreRefusedAndLeaveEnglish) {
  firn_error error = FIRN_INIT(firn_error);
  for (const char* code : {"", "d", "deu", "german", "it", "-", "e n", "\xC3\xA9"}) {
    std::uint8_t found = 99;
    EXPECT_EQ(firn_language_find(code, &found, &error), FIRN_BAD_ARGUMENT) << code;
    EXPECT_EQ(found, FIRN_LANGUAGE_ENGLISH);
    EXPECT_NE(error.remedy[0], '\0');
  }
  const char* code = "left over";
  EXPECT_EQ(firn_language_code(3, &code, &error), FIRN_BAD_ARGUMENT);
  EXPECT_EQ(code, nullptr);
  EXPECT_EQ(firn_language_code(255, &code, nullptr), FIRN_BAD_ARGUMENT);
}

class Notes : public testing::TestWithParam<const char*> {
 protected:
  std::string write(const firn_note_options* options) {
    Buffer out(context);
    EXPECT_EQ(firn_note_write_as(context, bytes_of(pit), pit.size(), bytes_of(report), report.size(), options,
                                 out.out(), nullptr),
              FIRN_OK);
    return out.text();
  }
  firn_status refused(const firn_note_options& options) {
    Buffer out(context);
    const firn_status status = firn_note_write_as(context, bytes_of(pit), pit.size(), bytes_of(report),
                                                  report.size(), &options, out.out(), nullptr);
    EXPECT_EQ(out.data(), nullptr);
    return status;
  }

  Context context;
  std::string pit = capi::pit_of(context, capi::demo_notes(GetParam()));
  std::string report = capi::report_of(context, pit);
};

INSTANTIATE_TEST_SUITE_P(Demos, Notes, testing::Values("larch-bowl-entry", "tarn-shoulder"));

TEST_P(Notes, TheDefaultIsTheWholeNoteInEnglish) {
  Buffer plain(context);
  ASSERT_EQ(firn_note_write(context, bytes_of(pit), pit.size(), bytes_of(report), report.size(), plain.out(),
                            nullptr),
            FIRN_OK);
  const firn_note_options options = FIRN_INIT(firn_note_options);
  EXPECT_EQ(write(&options), plain.text());
  EXPECT_EQ(write(nullptr), plain.text());
}

TEST_P(Notes, EveryLanguageAndLengthIsATextOfItsOwn) {
  std::set<std::string> texts;
  for (const std::uint8_t language : kLanguages) {
    for (std::uint8_t length = FIRN_NOTE_EVERYTHING; length <= FIRN_NOTE_SHORT; ++length) {
      firn_note_options options = FIRN_INIT(firn_note_options);
      options.language = language;
      options.length = length;
      const std::string text = write(&options);
      EXPECT_EQ(text.find('{'), std::string::npos) << text;
      EXPECT_EQ(text.back(), '\n');
      texts.insert(text);
    }
  }
  EXPECT_EQ(texts.size(), 12u);
}

TEST_P(Notes, OptionsOutOfRange) {
  firn_note_options options = FIRN_INIT(firn_note_options);
  options.language = 3;
  EXPECT_EQ(refused(options), FIRN_BAD_ARGUMENT);
  options = FIRN_INIT(firn_note_options);
  options.length = 4;
  EXPECT_EQ(refused(options), FIRN_BAD_ARGUMENT);
  options = FIRN_INIT(firn_note_options);
  options.reserved = 1;
  EXPECT_EQ(refused(options), FIRN_BAD_ARGUMENT);
  options = {7, 0, 0, 0};
  EXPECT_EQ(refused(options), FIRN_BAD_STRUCT_SIZE);
}

TEST_P(Notes, AReportIsToldInTheLanguageChosen) {
  firn_report* opened = nullptr;
  ASSERT_EQ(firn_report_open(context, bytes_of(report), report.size(), &opened, nullptr), FIRN_OK);
  const auto texts = [&] {
    Buffer message(context), remedy(context), finding(context), caution(context), suggestion(context),
        not_loaded(context);
    EXPECT_EQ(firn_report_check_text(opened, 0, message.out(), remedy.out(), nullptr), FIRN_OK);
    EXPECT_EQ(firn_report_finding_text(opened, 0, bytes_of(pit), pit.size(), finding.out(), nullptr),
              FIRN_OK);
    EXPECT_EQ(firn_report_caution_text(opened, 0, caution.out(), nullptr), FIRN_OK);
    EXPECT_EQ(firn_report_suggestion_text(opened, 0, suggestion.out(), nullptr), FIRN_OK);
    EXPECT_EQ(firn_report_not_loaded_text(opened, 0, not_loaded.out(), nullptr), FIRN_OK);
    return std::vector<std::string>{message.text(), remedy.text(),     finding.text(),
                                    caution.text(), suggestion.text(), not_loaded.text()};
  };
  const std::vector<std::string> english = texts();
  std::vector<std::string> before = english;
  for (const std::uint8_t language : {FIRN_LANGUAGE_GERMAN, FIRN_LANGUAGE_FRENCH}) {
    EXPECT_EQ(firn_report_set_language(opened, language, nullptr), FIRN_OK);
    const std::vector<std::string> now = texts();
    for (std::size_t i = 0; i < now.size(); ++i) {
      EXPECT_FALSE(now[i].empty());
      EXPECT_NE(now[i], english[i]);
      EXPECT_NE(now[i], before[i]);
    }
    before = now;
  }
  EXPECT_EQ(firn_report_set_language(opened, 3, nullptr), FIRN_BAD_ARGUMENT);
  EXPECT_EQ(texts(), before) << "a language that is refused changes nothing";
  EXPECT_EQ(firn_report_set_language(opened, FIRN_LANGUAGE_ENGLISH, nullptr), FIRN_OK);
  EXPECT_EQ(texts(), english);
  firn_report_close(opened);
}

}  // namespace
