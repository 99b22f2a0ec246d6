#include "support/json_parser.h"

namespace firn {

const char* words_of_json_error(rapidjson::ParseErrorCode code, bool at_end) {
  if (code == rapidjson::kParseErrorDocumentEmpty) return "there is no value here";
  if (at_end) return "the text ends here, before it is complete";
  switch (code) {
    case rapidjson::kParseErrorDocumentRootNotSingular:
      return "more text follows after the value has ended";
    case rapidjson::kParseErrorValueInvalid:
      return "this is no value of JSON";
    case rapidjson::kParseErrorObjectMissName:
      return "the name of a member should stand here, in quotes";
    case rapidjson::kParseErrorObjectMissColon:
      return "a colon is missing after the name of a member";
    case rapidjson::kParseErrorObjectMissCommaOrCurlyBracket:
      return "a comma or } is missing here";
    case rapidjson::kParseErrorArrayMissCommaOrSquareBracket:
      return "a comma or ] is missing here";
    case rapidjson::kParseErrorStringUnicodeEscapeInvalidHex:
    case rapidjson::kParseErrorStringUnicodeSurrogateInvalid:
    case rapidjson::kParseErrorStringEscapeInvalid:
      return "a backslash in a text is not followed by what JSON allows";
    case rapidjson::kParseErrorStringMissQuotationMark:
      return "a text has no closing quote";
    case rapidjson::kParseErrorNumberTooBig:
    case rapidjson::kParseErrorNumberMissFraction:
    case rapidjson::kParseErrorNumberMissExponent:
      return "this number is not written as JSON wants it";
    default:
      return "this is not JSON";
  }
}

}  // namespace firn
