/* A program of somebody else: plain C, knows only the installed headers and library. */
#include <firnbook/firnbook.h>
#include <stdio.h>
#include <string.h>

static const char kNotes[] =
    "pit Larch Bowl entry, Larchwater Range\n"
    "HS 46\n"
    "0-17 4F\n"
    "17-46 F DH 3.0\n"
    "CT11 (SC) down 17\n";

int main(void) {
  firn_context* context = NULL;
  firn_buffer pit = {NULL, 0};
  firn_buffer report = {NULL, 0};
  firn_error error = FIRN_INIT(firn_error);
  firn_status status = firn_context_create(NULL, &context, &error);
  if (status == FIRN_OK) status = firn_notes_read(context, kNotes, strlen(kNotes), NULL, &pit, NULL, &error);
  if (status == FIRN_OK) status = firn_interpret(context, pit.data, pit.size, NULL, &report, &error);
  if (status != FIRN_OK) {
    fprintf(stderr, "line %u: %s. %s\n", (unsigned)error.line, error.what, error.remedy);
  } else if (firn_version() !=
             FIRN_VERSION_NUMBER(FIRN_VERSION_MAJOR, FIRN_VERSION_MINOR, FIRN_VERSION_PATCH)) {
    fprintf(stderr, "headers %s, library %s\n", FIRN_VERSION_STRING, firn_version_string());
    status = FIRN_INTERNAL;
  } else {
    printf("firnbook %s: pit of %zu bytes, report of %zu bytes\n", firn_version_string(), pit.size,
           report.size);
  }
  firn_buffer_free(context, &report);
  firn_buffer_free(context, &pit);
  firn_context_destroy(context);
  return status == FIRN_OK ? 0 : 1;
}
