/* A pit from one format into another, through firn_convert.

     pit_convert IN OUT      the format of OUT follows from its ending, that of IN from what it looks like:
                             .firn .json .xml (CAAML) .txt (field notes) .card .b45 (a card as text)
                             .svg (a card as QR code) .layers.csv .tests.csv .pits.csv

   What was lost or changed on the way goes to the standard error, a line each. Leaves with 0 when all went
   well, 1 when the library refused something, 2 when a file or an argument is the trouble. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "firnbook/firnbook.h"

enum { DONE = 0, REFUSED = 1, NO_FILE = 2 };

static const struct {
  const char* ending;
  uint32_t format;
} kFormats[] = {
    {".firn", FIRN_FORMAT_FIRN},
    {".json", FIRN_FORMAT_JSON},
    {".xml", FIRN_FORMAT_CAAML},
    {".txt", FIRN_FORMAT_NOTES},
    {".card", FIRN_FORMAT_CARD},
    {".b45", FIRN_FORMAT_CARD_TEXT},
    {".svg", FIRN_FORMAT_CARD_PICTURE},
    {".layers.csv", FIRN_FORMAT_LAYERS_TABLE},
    {".tests.csv", FIRN_FORMAT_TESTS_TABLE},
    {".pits.csv", FIRN_FORMAT_PITS_TABLE},
};

static uint32_t format_of(const char* path) {
  for (size_t i = 0; i < sizeof kFormats / sizeof kFormats[0]; ++i) {
    const size_t length = strlen(path), ending = strlen(kFormats[i].ending);
    if (length > ending && strcmp(path + length - ending, kFormats[i].ending) == 0) return kFormats[i].format;
  }
  return FIRN_FORMAT_DETECT;
}

/* The whole file in memory of malloc, or NULL after a message. */
static uint8_t* read_file(const char* path, size_t* size) {
  FILE* file = fopen(path, "rb");
  long end = -1;
  uint8_t* bytes = NULL;
  if (file != NULL && fseek(file, 0, SEEK_END) == 0 && (end = ftell(file)) >= 0 &&
      fseek(file, 0, SEEK_SET) == 0)
    bytes = malloc((size_t)end + 1);
  if (bytes != NULL && fread(bytes, 1, (size_t)end, file) != (size_t)end) {
    free(bytes);
    bytes = NULL;
  }
  if (file != NULL) fclose(file);
  if (bytes == NULL) fprintf(stderr, "pit_convert: cannot read %s\n", path);
  *size = (size_t)end;
  return bytes;
}

static int write_file(const char* path, const firn_buffer* bytes) {
  FILE* file = fopen(path, "wb");
  int failed = file == NULL || fwrite(bytes->data, 1, bytes->size, file) != bytes->size;
  if (file != NULL && fclose(file) != 0) failed = 1;
  if (failed) fprintf(stderr, "pit_convert: cannot write %s\n", path);
  return failed ? NO_FILE : DONE;
}

static int convert(firn_context* context, const uint8_t* bytes, size_t size, const char* to) {
  firn_convert_options options = FIRN_INIT(firn_convert_options);
  options.to = format_of(to);
  options.indent = 2;
  firn_error error = FIRN_INIT(firn_error);
  firn_buffer out = {NULL, 0}, notices = {NULL, 0};
  const firn_status status = firn_convert(context, bytes, size, &options, &out, &notices, &error);
  if (status != FIRN_OK) {
    fprintf(stderr, "pit_convert: %s\n", firn_status_text(status));
    if (error.line != 0)
      fprintf(stderr, "  line %u, column %u\n", (unsigned)error.line, (unsigned)error.column);
    if (error.path[0] != '\0') fprintf(stderr, "  at %s\n", error.path);
    fprintf(stderr, "  %s\n  %s\n", error.what, error.remedy);
    return REFUSED;
  }
  fwrite(notices.data, 1, notices.size, stderr);
  const int result = write_file(to, &out);
  firn_buffer_free(context, &notices);
  firn_buffer_free(context, &out);
  return result;
}

int main(int argc, char** argv) {
  if (argc != 3 || format_of(argv[2]) == FIRN_FORMAT_DETECT) {
    fprintf(stderr, "usage: pit_convert IN OUT\n  OUT ends with one of");
    for (size_t i = 0; i < sizeof kFormats / sizeof kFormats[0]; ++i)
      fprintf(stderr, " %s", kFormats[i].ending);
    fprintf(stderr, "\n");
    return NO_FILE;
  }
  size_t size = 0;
  uint8_t* bytes = read_file(argv[1], &size);
  if (bytes == NULL) return NO_FILE;
  firn_context* context = NULL;
  int result = REFUSED;
  if (firn_context_create(NULL, &context, NULL) == FIRN_OK) {
    result = convert(context, bytes, size, argv[2]);
  } else {
    fprintf(stderr, "pit_convert: no memory\n");
  }
  firn_context_destroy(context);
  free(bytes);
  return result;
}
