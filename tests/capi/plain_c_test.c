/* The library as a C program sees it: plain C11, nothing but the shared library. With a locale as second
   argument the same results must come out; exits with 77 when that locale is not installed. */
#include <locale.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "firnbook/firnbook.h"

static int failures = 0;

#define CHECK(condition)                                                      \
  do {                                                                        \
    if (!(condition)) {                                                       \
      ++failures;                                                             \
      fprintf(stderr, "%s:%d: not so: %s\n", __FILE__, __LINE__, #condition); \
    }                                                                         \
  } while (0)

/* Every function with nothing: a status, never a crash. */
static void check_nothing_given(void) {
  firn_error error = FIRN_INIT(firn_error);
  CHECK(firn_context_create(NULL, NULL, &error) == FIRN_NULL_ARGUMENT);
  CHECK(error.status == FIRN_NULL_ARGUMENT && error.what[0] != '\0' && error.remedy[0] != '\0');
  firn_context_destroy(NULL);
  firn_buffer_free(NULL, NULL);
  firn_report_close(NULL);
  firn_recorder_destroy(NULL);
  CHECK(firn_recorder_edit_count(NULL) == 0);
  const firn_status answers[] = {
      firn_pit_verify(NULL, NULL, 0, NULL),
      firn_pit_is_newer(NULL, NULL, 0, NULL, NULL),
      firn_notes_read(NULL, NULL, 0, NULL, NULL, NULL, NULL),
      firn_notes_write(NULL, NULL, 0, NULL, NULL, NULL),
      firn_convert(NULL, NULL, 0, NULL, NULL, NULL, NULL),
      firn_format_detect(NULL, NULL, 0, NULL, NULL),
      firn_check(NULL, NULL, 0, NULL, NULL),
      firn_interpret(NULL, NULL, 0, NULL, NULL, NULL),
      firn_note_write(NULL, NULL, 0, NULL, 0, NULL, NULL),
      firn_note_write_as(NULL, NULL, 0, NULL, 0, NULL, NULL, NULL),
      firn_language_find(NULL, NULL, NULL),
      firn_language_code(0, NULL, NULL),
      firn_report_set_language(NULL, 0, NULL),
      firn_draw_profile(NULL, NULL, 0, NULL, 0, NULL, NULL, NULL),
      firn_report_open(NULL, NULL, 0, NULL, NULL),
      firn_report_summarise(NULL, NULL, NULL),
      firn_report_check(NULL, 0, NULL, NULL),
      firn_report_finding(NULL, 0, NULL, NULL),
      firn_report_concern(NULL, 0, NULL, NULL),
      firn_report_evidence(NULL, 0, 0, NULL, NULL),
      firn_report_loaded_by(NULL, 0, NULL, NULL),
      firn_report_not_loaded(NULL, 0, NULL, NULL),
      firn_report_suggestion(NULL, 0, NULL, NULL),
      firn_report_caution(NULL, 0, NULL, NULL),
      firn_report_method(NULL, 0, NULL, NULL),
      firn_report_parameter(NULL, 0, NULL, NULL, NULL),
      firn_parameter_count(NULL, NULL),
      firn_parameter_at(0, NULL, NULL),
      firn_report_check_text(NULL, 0, NULL, NULL, NULL),
      firn_report_finding_text(NULL, 0, NULL, 0, NULL, NULL),
      firn_report_not_loaded_text(NULL, 0, NULL, NULL),
      firn_report_suggestion_text(NULL, 0, NULL, NULL),
      firn_report_caution_text(NULL, 0, NULL, NULL),
      firn_recorder_create(NULL, NULL, NULL),
      firn_recorder_apply(NULL, NULL, 0, NULL),
      firn_recorder_pit(NULL, NULL, NULL),
      firn_recorder_author(NULL, NULL, NULL),
      firn_recorder_next(NULL, NULL, NULL, NULL),
      firn_record_pit_head(NULL, NULL, NULL, NULL),
      firn_record_site(NULL, NULL, NULL, NULL),
      firn_record_choice(NULL, NULL, NULL, NULL),
      firn_record_weather(NULL, NULL, NULL, NULL),
      firn_record_surface(NULL, NULL, NULL, NULL),
      firn_record_snowpack(NULL, NULL, NULL, NULL),
      firn_record_assessment(NULL, NULL, NULL, NULL),
      firn_record_bulletin(NULL, NULL, NULL, NULL),
      firn_record_observer(NULL, NULL, NULL, NULL, NULL, NULL),
      firn_record_layer(NULL, NULL, NULL, NULL, NULL, NULL),
      firn_record_temperature(NULL, NULL, NULL, NULL, NULL, NULL),
      firn_record_density_profile(NULL, NULL, NULL, NULL, NULL, NULL),
      firn_record_test(NULL, NULL, NULL, NULL, NULL, NULL),
      firn_record_sign(NULL, NULL, NULL, NULL, NULL, NULL),
      firn_record_slide(NULL, NULL, NULL, NULL, NULL, NULL),
      firn_record_step(NULL, NULL, NULL, NULL, NULL, NULL),
      firn_record_remark(NULL, NULL, NULL, NULL, NULL, NULL),
      firn_record_notes(NULL, NULL, 0, NULL, NULL),
      firn_record_fracture(NULL, NULL, NULL, NULL, NULL, NULL, NULL),
      firn_record_density(NULL, NULL, NULL, NULL, NULL, NULL, NULL),
      firn_record_remove(NULL, NULL, NULL, NULL),
      firn_record_clear(NULL, NULL, 0, 0, NULL, NULL),
      firn_record_split_layer(NULL, NULL, NULL, NULL, NULL, NULL, NULL),
      firn_record_merge_layers(NULL, NULL, NULL, NULL, NULL),
      firn_record_shift_depths(NULL, 0, NULL, NULL),
      firn_record_rescale_depths(NULL, 0, 0, NULL, NULL),
      firn_record_undo(NULL, 0, 0, NULL, NULL),
      firn_record_redo(NULL, 0, 0, NULL, NULL),
      firn_compare(NULL, NULL, 0, NULL, 0, NULL, NULL, NULL),
      firn_comparison_note(NULL, NULL, 0, NULL, 0, NULL, 0, NULL, NULL),
      firn_bulletin_read(NULL, NULL, 0, NULL, NULL, NULL),
      firn_bulletin_write(NULL, NULL, NULL, NULL),
      firn_report_bulletin(NULL, NULL, NULL),
      firn_report_bulletin_rating(NULL, 0, NULL, NULL),
      firn_report_bulletin_problem(NULL, 0, NULL, NULL),
      firn_report_bulletin_unlisted(NULL, 0, NULL, NULL),
      firn_report_bulletin_evidence(NULL, 0, NULL, NULL),
      firn_procedure_count(0, NULL, NULL),
      firn_procedure_step(0, 0, NULL, NULL),
      firn_probe_spread(NULL, 0, NULL, NULL),
      firn_probe_spread(NULL, 1, NULL, NULL),
  };
  for (size_t i = 0; i < sizeof answers / sizeof answers[0]; ++i) {
    if (answers[i] != FIRN_NULL_ARGUMENT) {
      ++failures;
      fprintf(stderr, "call %zu with nothing given answers %d\n", i, (int)answers[i]);
    }
  }
}

static void check_version(void) {
  CHECK(firn_version() == FIRN_VERSION_NUMBER(FIRN_VERSION_MAJOR, FIRN_VERSION_MINOR, FIRN_VERSION_PATCH));
  CHECK(strcmp(firn_version_string(), FIRN_VERSION_STRING) == 0);
  CHECK(FIRN_VERSION_AT_LEAST(0, 1, 0));
  CHECK(!FIRN_VERSION_AT_LEAST(99, 0, 0));
}

static char* read_file(const char* folder, const char* name, size_t* size) {
  char path[1024];
  snprintf(path, sizeof path, "%s/%s", folder, name);
  FILE* file = fopen(path, "rb");
  if (file == NULL) {
    fprintf(stderr, "cannot open %s\n", path);
    exit(2);
  }
  char* text = malloc(65536);
  if (text == NULL) exit(2);
  *size = fread(text, 1, 65536, file);
  fclose(file);
  return text;
}

static void check_demo(firn_context* context, const char* folder, const char* name) {
  size_t size = 0;
  char* notes = read_file(folder, name, &size);
  firn_error error = FIRN_INIT(firn_error);
  firn_buffer pit = {NULL, 0}, report = {NULL, 0}, note = {NULL, 0}, svg = {NULL, 0};
  CHECK(firn_notes_read(context, notes, size, NULL, &pit, NULL, &error) == FIRN_OK);
  if (error.status != FIRN_OK) fprintf(stderr, "%s:%u:%u: %s\n", name, error.line, error.column, error.what);
  CHECK(firn_interpret(context, pit.data, pit.size, NULL, &report, &error) == FIRN_OK);
  CHECK(firn_note_write(context, pit.data, pit.size, report.data, report.size, &note, &error) == FIRN_OK);
  CHECK(firn_draw_profile(context, pit.data, pit.size, report.data, report.size, NULL, &svg, &error) ==
        FIRN_OK);
  CHECK(note.data != NULL && strlen((const char*)note.data) == note.size && note.size > 500);
  CHECK(svg.data != NULL && strstr((const char*)svg.data, "<svg") != NULL);
  /* A decimal comma of the host's locale would show here. */
  CHECK(strstr((const char*)svg.data, "0,5") == NULL);
  firn_buffer again = {NULL, 0};
  CHECK(firn_notes_write(context, pit.data, pit.size, &again, NULL, &error) == FIRN_OK);
  CHECK(strstr((const char*)again.data, strcmp(name, "tarn-shoulder.txt") == 0 ? "-7.5" : "DH 3") != NULL);
  firn_buffer_free(context, &again);
  firn_buffer_free(context, &pit);
  firn_buffer_free(context, &report);
  firn_buffer_free(context, &note);
  firn_buffer_free(context, &svg);
  CHECK(pit.data == NULL && pit.size == 0);
  free(notes);
}

int main(int argc, char** argv) {
  if (argc < 2) {
    fprintf(stderr, "usage: %s FOLDER_OF_NOTES [LOCALE]\n", argv[0]);
    return 2;
  }
  if (argc > 2 && setlocale(LC_ALL, argv[2]) == NULL) {
    printf("skipped: the locale %s is not installed here\n", argv[2]);
    return 77;
  }
  check_nothing_given();
  check_version();
  firn_context* context = NULL;
  CHECK(firn_context_create(NULL, &context, NULL) == FIRN_OK);
  check_demo(context, argv[1], "larch-bowl-entry.txt");
  check_demo(context, argv[1], "tarn-shoulder.txt");
  firn_context_destroy(context);
  if (failures == 0) printf("all is as it should be\n");
  return failures == 0 ? 0 : 1;
}
