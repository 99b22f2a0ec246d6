#include "firnbook/language.h"

#include "capi/guard.h"
#include "capi/languages.h"

using namespace firn::capi;

namespace firn::capi {
namespace {

char lower(char letter) {
  return letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter - 'A' + 'a') : letter;
}

// Reads no further than the first difference, so a code of one letter is not read past its end.
bool is_code(const char* given, std::string_view code) {
  if (lower(given[0]) != code[0] || lower(given[1]) != code[1]) return false;
  return given[2] == '\0' || given[2] == '-' || given[2] == '_';
}

}  // namespace

Result<note::Language> language_of(std::uint8_t number) {
  for (const note::Language language : note::kLanguages) {
    if (static_cast<std::uint8_t>(language) == number) return language;
  }
  return failure_of(FIRN_BAD_ARGUMENT, "language is no firn_language", "give one of them; 0 is English");
}

}  // namespace firn::capi

firn_status firn_language_find(const char* code, uint8_t* language, firn_error* error) {
  return run({nullptr, error, __func__}, [&]() -> firn::Done {
    if (language == nullptr) return null_argument("language");
    *language = FIRN_LANGUAGE_ENGLISH;
    if (code == nullptr) return null_argument("code");
    for (const firn::note::Language one : firn::note::kLanguages) {
      if (!is_code(code, firn::note::code_of_language(one))) continue;
      *language = static_cast<std::uint8_t>(one);
      return firn::done();
    }
    return failure_of(FIRN_BAD_ARGUMENT, "the library does not write this language",
                      "give en, de or fr, or write in English");
  });
}

firn_status firn_language_code(uint8_t language, const char** code, firn_error* error) {
  return run({nullptr, error, __func__}, [&]() -> firn::Done {
    if (code == nullptr) return null_argument("code");
    *code = nullptr;
    firn::Result<firn::note::Language> known = language_of(language);
    if (!known) return known.failure();
    // The codes are literals, so a NUL follows each.
    *code = firn::note::code_of_language(*known).data();
    return firn::done();
  });
}
