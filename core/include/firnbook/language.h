/* Languages of the texts that the library writes: notes, and reports told in words. Codes of the trade
   (CT12, SP, FC, 4F) and what observers typed stay as they are in every language, and so do messages about
   failed calls, which are for programmers. Since 0.1. */
#ifndef FIRNBOOK_LANGUAGE_H
#define FIRNBOOK_LANGUAGE_H

#include <stdint.h>

#include "firnbook/context.h"
#include "firnbook/export.h"

#ifdef __cplusplus
extern "C" {
#endif

/* Struct fields and arguments that hold one of these are uint8_t. Since 0.1. */
typedef enum firn_language {
  FIRN_LANGUAGE_ENGLISH = 0,
  FIRN_LANGUAGE_GERMAN = 1,
  FIRN_LANGUAGE_FRENCH = 2
} firn_language;

/* The language of an ISO 639-1 code such as "de", in small or large letters; what follows a '-' or '_' is
   not looked at ("de-CH", "fr_CA"). Errors: FIRN_BAD_ARGUMENT for a language that the library does not
   write; *language is English then. Any thread. Since 0.1. */
FIRN_API firn_status firn_language_find(const char* code, uint8_t* language, firn_error* error);

/* Its ISO 639-1 code, which the library owns. Errors: FIRN_BAD_ARGUMENT for a number that is no
   firn_language. Any thread. Since 0.1. */
FIRN_API firn_status firn_language_code(uint8_t language, const char** code, firn_error* error);

#ifdef __cplusplus
}
#endif
#endif /* FIRNBOOK_LANGUAGE_H */
