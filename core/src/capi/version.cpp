#include "firnbook/version.h"

#include "firnbook/context.h"

uint32_t firn_version(void) {
  return FIRN_VERSION_NUMBER(FIRN_VERSION_MAJOR, FIRN_VERSION_MINOR, FIRN_VERSION_PATCH);
}

const char* firn_version_string(void) {
  return FIRN_VERSION_STRING;
}

const char* firn_status_text(firn_status status) {
  switch (status) {
    case FIRN_OK:
      return "done";
    case FIRN_NULL_ARGUMENT:
      return "a pointer that must be given was NULL";
    case FIRN_BAD_STRUCT_SIZE:
      return "a struct_size is smaller than the first version of its struct";
    case FIRN_BAD_ARGUMENT:
      return "a value is outside its documented range";
    case FIRN_WRONG_STATE:
      return "the handle is not in a state for this call";
    case FIRN_TOO_SMALL:
      return "too few bytes to be a buffer";
    case FIRN_TOO_LARGE:
      return "more bytes than the limits of the context allow";
    case FIRN_WRONG_KIND:
      return "bytes of another kind, or of none";
    case FIRN_DAMAGED:
      return "the bytes contradict their own structure";
    case FIRN_NEWER_SCHEMA:
      return "written by a newer version: may be read, not edited";
    case FIRN_OTHER_PIT:
      return "the report or the journal belongs to another pit";
    case FIRN_NOTES_NOT_UNDERSTOOD:
      return "a line of field notes was not understood";
    case FIRN_NOTES_CONTRADICT:
      return "two lines of field notes contradict each other";
    case FIRN_BAD_UTF8:
      return "text that is not UTF-8, or holds control characters";
    case FIRN_NO_BULLETIN:
      return "a text in which no bulletin could be read";
    case FIRN_NOT_UNDERSTOOD:
      return "a document that is not what its format wants";
    case FIRN_NOT_HELD:
      return "the format cannot hold what the pit says";
    case FIRN_BAD_EDIT:
      return "an edit that says nothing, or something impossible";
    case FIRN_NO_SUCH_TARGET:
      return "an edit names something that is not there";
    case FIRN_DUPLICATE_EDIT:
      return "another edit with the same device and sequence is already there";
    case FIRN_BAD_TICKET:
      return "a ticket that was not given out, or was acknowledged before";
    case FIRN_OUT_OF_MEMORY:
      return "out of memory";
    case FIRN_INTERNAL:
      return "a defect of the library";
  }
  return "a status this version of the library does not know";
}
