/* What a call answers. Since 0.1. */
#ifndef FIRNBOOK_STATUS_H
#define FIRNBOOK_STATUS_H

#ifdef __cplusplus
extern "C" {
#endif

/* Status of a call. Numbers are fixed; new ones are appended to their block. Anything but FIRN_OK means
   that the call changed nothing and that its outputs are empty. */
typedef enum firn_status {
  FIRN_OK = 0,

  /* 100: how the library was called */
  FIRN_NULL_ARGUMENT = 100,   /* a pointer that must be given was NULL */
  FIRN_BAD_STRUCT_SIZE = 101, /* struct_size is smaller than the first version of the struct */
  FIRN_BAD_ARGUMENT = 102,    /* a value is outside its documented range */
  FIRN_WRONG_STATE = 103,     /* the handle is not in a state for this call */

  /* 200: bytes of a schema */
  FIRN_TOO_SMALL = 200,    /* too few bytes to be a buffer */
  FIRN_TOO_LARGE = 201,    /* more bytes than the context's limits allow */
  FIRN_WRONG_KIND = 202,   /* bytes of another schema, or of none */
  FIRN_DAMAGED = 203,      /* the bytes contradict their own structure */
  FIRN_NEWER_SCHEMA = 204, /* written by a newer minor version: may be read, not edited */
  FIRN_OTHER_PIT = 205,    /* the report or the journal belongs to another pit */

  /* 300: text */
  FIRN_NOTES_NOT_UNDERSTOOD = 300, /* a line of field notes, see line and column */
  FIRN_NOTES_CONTRADICT = 301,     /* two lines of field notes contradict each other */
  FIRN_BAD_UTF8 = 302,             /* text that is not UTF-8, or holds control characters */
  FIRN_NO_BULLETIN = 303,          /* a text in which no bulletin could be read, see line and column */
  FIRN_NOT_UNDERSTOOD = 304, /* a document that is not what its format wants, see path, line and column */
  FIRN_NOT_HELD = 305,       /* the format cannot hold what the pit says, see path */

  /* 400: recording */
  FIRN_BAD_EDIT = 400,       /* an edit that says nothing, or something impossible */
  FIRN_NO_SUCH_TARGET = 401, /* an edit names something that is not there */
  FIRN_DUPLICATE_EDIT = 402, /* another edit with the same device and sequence is already there */
  FIRN_BAD_TICKET = 403,     /* a ticket that was not given out, or was acknowledged before */

  /* 900: the library itself */
  FIRN_OUT_OF_MEMORY = 900,
  FIRN_INTERNAL = 901 /* a defect of the library */
} firn_status;

#ifdef __cplusplus
}
#endif
#endif /* FIRNBOOK_STATUS_H */
