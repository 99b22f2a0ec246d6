/* From field notes to a record, an interpretation and a picture, through the C API alone.

     first_pit [NOTES [FOLDER]]     prints the field note; with FOLDER, writes pit.firn, report.firn,
                                    profile.svg and note.txt into it and names them
     first_pit --record [NOTES]     records the pit of larch-bowl-entry.txt by plain structs, as an app would
                                    while somebody digs, and compares its bytes with those of the notes

   Leaves with 0 when all went well, 1 when the library refused something, 2 when a file or an argument is
   the trouble. */
#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "firnbook/firnbook.h"

enum { DONE = 0, REFUSED = 1, NO_FILE = 2 };

/* Field notes are a page or two; a file that is larger than this is something else. */
#define MOST_NOTES (1024L * 1024L)

/* Prints what a call answered, with the place and the remedy it names. */
static int refused(const char* what, firn_status status, const firn_error* error) {
  fprintf(stderr, "first_pit: %s: %s\n", what, firn_status_text(status));
  if (error->line != 0)
    fprintf(stderr, "  line %u, column %u\n", (unsigned)error->line, (unsigned)error->column);
  if (error->path[0] != '\0') fprintf(stderr, "  at %s\n", error->path);
  if (error->what[0] != '\0') fprintf(stderr, "  %s\n", error->what);
  if (error->remedy[0] != '\0') fprintf(stderr, "  %s\n", error->remedy);
  return REFUSED;
}

/* The whole file in memory of malloc, or NULL after a message. */
static char* read_file(const char* path, size_t* size) {
  FILE* file = fopen(path, "rb");
  if (file == NULL) {
    fprintf(stderr, "first_pit: cannot open %s: %s\n", path, strerror(errno));
    return NULL;
  }
  char* text = malloc((size_t)MOST_NOTES + 1);
  if (text == NULL) {
    fprintf(stderr, "first_pit: no memory for %s\n", path);
    fclose(file);
    return NULL;
  }
  *size = fread(text, 1, (size_t)MOST_NOTES + 1, file);
  const int failed = ferror(file);
  fclose(file);
  if (failed || *size > (size_t)MOST_NOTES) {
    fprintf(stderr, "first_pit: %s: %s\n", path, failed ? "cannot be read" : "too large to be field notes");
    free(text);
    return NULL;
  }
  return text;
}

static int write_file(const char* folder, const char* name, const firn_buffer* bytes) {
  const size_t length = strlen(folder) + strlen(name) + 2;
  char* path = malloc(length);
  if (path == NULL) {
    fprintf(stderr, "first_pit: no memory for the name of %s\n", name);
    return NO_FILE;
  }
  snprintf(path, length, "%s/%s", folder, name);
  int result = DONE;
  FILE* file = fopen(path, "wb");
  if (file == NULL) {
    fprintf(stderr, "first_pit: cannot write %s: %s\n", path, strerror(errno));
    result = NO_FILE;
  } else {
    const int whole = fwrite(bytes->data, 1, bytes->size, file) == bytes->size;
    /* A full disk may show only when the file is closed. */
    if (fclose(file) != 0 || !whole) {
      fprintf(stderr, "first_pit: cannot write all of %s\n", path);
      result = NO_FILE;
    } else {
      printf("wrote %s\n", path);
    }
  }
  free(path);
  return result;
}

/* What the library made of the notes. */
typedef struct outcome {
  firn_buffer pit;
  firn_buffer remarks;
  firn_buffer report;
  firn_buffer note;
  firn_buffer svg;
} outcome;

static void free_outcome(firn_context* context, outcome* made) {
  firn_buffer_free(context, &made->pit);
  firn_buffer_free(context, &made->remarks);
  firn_buffer_free(context, &made->report);
  firn_buffer_free(context, &made->note);
  firn_buffer_free(context, &made->svg);
}

/* Notes to pit, pit to report, and both to a note and a picture. */
static int interpret_notes(firn_context* context, const char* notes, size_t size, outcome* made) {
  firn_error error = FIRN_INIT(firn_error);
  firn_status status = firn_notes_read(context, notes, size, NULL, &made->pit, &made->remarks, &error);
  if (status != FIRN_OK) return refused("the notes", status, &error);
  const firn_buffer* pit = &made->pit;
  status = firn_interpret(context, pit->data, pit->size, NULL, &made->report, &error);
  if (status != FIRN_OK) return refused("the interpretation", status, &error);
  const firn_buffer* report = &made->report;
  status = firn_note_write(context, pit->data, pit->size, report->data, report->size, &made->note, &error);
  if (status != FIRN_OK) return refused("the field note", status, &error);
  status =
      firn_draw_profile(context, pit->data, pit->size, report->data, report->size, NULL, &made->svg, &error);
  if (status != FIRN_OK) return refused("the picture", status, &error);
  return DONE;
}

static int write_outcome(const char* folder, const outcome* made) {
  const struct {
    const char* name;
    const firn_buffer* bytes;
  } files[] = {{"pit.firn", &made->pit},
               {"report.firn", &made->report},
               {"profile.svg", &made->svg},
               {"note.txt", &made->note}};
  for (size_t i = 0; i < sizeof files / sizeof files[0]; ++i) {
    const int result = write_file(folder, files[i].name, files[i].bytes);
    if (result != DONE) return result;
  }
  return DONE;
}

static int show(firn_context* context, const char* path, const char* folder) {
  size_t size = 0;
  char* notes = read_file(path, &size);
  if (notes == NULL) return NO_FILE;
  outcome made = {{NULL, 0}, {NULL, 0}, {NULL, 0}, {NULL, 0}, {NULL, 0}};
  int result = interpret_notes(context, notes, size, &made);
  if (result == DONE) {
    if (made.remarks.size != 0) fprintf(stderr, "%s", (const char*)made.remarks.data);
    printf("%s", (const char*)made.note.data);
    if (folder != NULL) {
      printf("\n");
      result = write_outcome(folder, &made);
    }
  }
  free_outcome(context, &made);
  free(notes);
  return result;
}

/* ---- Recording by plain structs -------------------------------------------------------------------- */

static firn_depth down(int centimetres) {
  const firn_depth depth = {FIRN_CM(centimetres), FIRN_DATUM_SURFACE, FIRN_DIRECTION_VERTICAL, 0};
  return depth;
}

/* 2026-11-28T10:05-07:00, in seconds of the local clock. */
static const firn_moment kDug = {1795860300, -7 * 60, FIRN_TIME_PRECISION_MINUTE, 1, 0};

static firn_status record_place(firn_recorder* recorder, firn_error* error) {
  firn_pit_head head = FIRN_INIT(firn_pit_head);
  head.present = FIRN_BIT(FIRN_FIELD_PIT_TIME) | FIRN_BIT(FIRN_FIELD_PIT_BACKFILLED);
  head.title = "Larch Bowl entry, Larchwater Range";
  head.time.begin = kDug;
  head.backfilled = 1;
  firn_status status = firn_record_pit_head(recorder, &head, NULL, error);
  if (status != FIRN_OK) return status;

  firn_observer observer = FIRN_INIT(firn_observer);
  observer.name = "KL";
  status = firn_record_observer(recorder, &observer, NULL, NULL, NULL, error);
  if (status != FIRN_OK) return status;

  const int32_t probes[] = {FIRN_CM(38), FIRN_CM(45), FIRN_CM(61), FIRN_CM(47)};
  firn_site site = FIRN_INIT(firn_site);
  site.present = FIRN_BIT(FIRN_FIELD_SITE_ELEVATION_10UM) | FIRN_BIT(FIRN_FIELD_SITE_ASPECT_POINT) |
                 FIRN_BIT(FIRN_FIELD_SITE_SLOPE_DEG);
  site.elevation_10um = 2080 * 100000;
  site.aspect_point = FIRN_COMPASS_POINT_NE;
  site.slope_deg = 24;
  site.probes_10um = probes;
  site.probe_count = sizeof probes / sizeof probes[0];
  status = firn_record_site(recorder, &site, NULL, error);
  if (status != FIRN_OK) return status;

  firn_choice choice = FIRN_INIT(firn_choice);
  choice.present = FIRN_BIT(FIRN_FIELD_CHOICE_ASPECT) | FIRN_BIT(FIRN_FIELD_CHOICE_ELEVATION) |
                   FIRN_BIT(FIRN_FIELD_CHOICE_INCLINE);
  choice.aspect = FIRN_COMPARISON_SAME;
  choice.elevation = FIRN_COMPARISON_SAME;
  choice.incline = FIRN_COMPARISON_LESS;
  choice.terrain_of_interest = "Larch Bowl";
  choice.words = "same aspect and elevation as Larch Bowl; gentler and short";
  status = firn_record_choice(recorder, &choice, NULL, error);
  if (status != FIRN_OK) return status;

  firn_snowpack snowpack = FIRN_INIT(firn_snowpack);
  snowpack.present = FIRN_BIT(FIRN_FIELD_SNOWPACK_HS_10UM);
  snowpack.hs_10um = FIRN_CM(46);
  return firn_record_snowpack(recorder, &snowpack, NULL, error);
}

/* A compression test with one fracture. */
static firn_status record_compression_test(firn_recorder* recorder, uint8_t tap, firn_error* error) {
  firn_fracture fracture = FIRN_INIT(firn_fracture);
  fracture.present = FIRN_BIT(FIRN_FIELD_FRACTURE_DEPTH) | FIRN_BIT(FIRN_FIELD_FRACTURE_TAP) |
                     FIRN_BIT(FIRN_FIELD_FRACTURE_CHARACTER);
  fracture.depth = down(17);
  fracture.tap = tap;
  fracture.character = FIRN_FRACTURE_CHARACTER_SC;
  firn_test test = FIRN_INIT(firn_test);
  test.present = FIRN_BIT(FIRN_FIELD_STABILITY_TEST_KIND) | FIRN_BIT(FIRN_FIELD_STABILITY_TEST_OUTCOME);
  test.kind = FIRN_TEST_KIND_CT;
  test.outcome = FIRN_TEST_OUTCOME_FRACTURED;
  test.fractures = &fracture;
  test.fracture_count = 1;
  return firn_record_test(recorder, &test, NULL, NULL, NULL, error);
}

static firn_status record_sign(firn_recorder* recorder, uint8_t kind, uint8_t answer, firn_error* error) {
  firn_sign sign = FIRN_INIT(firn_sign);
  sign.present = FIRN_BIT(FIRN_FIELD_SIGN_KIND) | FIRN_BIT(FIRN_FIELD_SIGN_ANSWER);
  sign.kind = kind;
  sign.answer = answer;
  return firn_record_sign(recorder, &sign, NULL, NULL, NULL, error);
}

static firn_status record_tests_and_signs(firn_recorder* recorder, firn_error* error) {
  firn_status status = record_compression_test(recorder, 11, error);
  if (status != FIRN_OK) return status;
  status = record_compression_test(recorder, 13, error);
  if (status != FIRN_OK) return status;
  status = record_sign(recorder, FIRN_SIGN_KIND_WHUMPF, FIRN_ANSWER_YES, error);
  if (status != FIRN_OK) return status;
  status = record_sign(recorder, FIRN_SIGN_KIND_CRACKING, FIRN_ANSWER_NOT_LOOKED_FOR, error);
  if (status != FIRN_OK) return status;
  return record_sign(recorder, FIRN_SIGN_KIND_SLIDES, FIRN_ANSWER_NO, error);
}

static firn_layer layer_between(int top_cm, int bottom_cm, uint8_t hardness, const char* words) {
  firn_layer layer = FIRN_INIT(firn_layer);
  layer.present = FIRN_BIT(FIRN_FIELD_LAYER_TOP) | FIRN_BIT(FIRN_FIELD_LAYER_BOTTOM) |
                  FIRN_BIT(FIRN_FIELD_LAYER_HARDNESS);
  layer.top = down(top_cm);
  layer.bottom = down(bottom_cm);
  layer.hardness = hardness;
  layer.words = words;
  return layer;
}

static firn_status record_layers(firn_recorder* recorder, firn_error* error) {
  /* Nobody looked at the crystals: what the words may mean is kept beside them, and no form is chosen. */
  const uint8_t candidates[] = {FIRN_GRAIN_FORM_PP, FIRN_GRAIN_FORM_DF};
  firn_layer new_snow = layer_between(0, 5, FIRN_HAND_HARDNESS_FIST, "new snow");
  new_snow.candidates = candidates;
  new_snow.candidate_count = sizeof candidates;
  firn_status status = firn_record_layer(recorder, &new_snow, NULL, NULL, NULL, error);
  if (status != FIRN_OK) return status;

  firn_layer slab = layer_between(5, 17, FIRN_HAND_HARDNESS_FOUR_FINGER, "wind slab");
  slab.present |= FIRN_BIT(FIRN_FIELD_LAYER_GRAIN_FORM);
  slab.grain_form = FIRN_GRAIN_FORM_RG;
  status = firn_record_layer(recorder, &slab, NULL, NULL, NULL, error);
  if (status != FIRN_OK) return status;

  /* A slip of the thumb, and its mending: the layer is recorded as it was touched first, and the name that
     the call answers is used to change it. */
  firn_layer depth_hoar = layer_between(17, 46, FIRN_HAND_HARDNESS_FOUR_FINGER, "sugary, to the ground");
  depth_hoar.present |= FIRN_BIT(FIRN_FIELD_LAYER_GRAIN_FORM) | FIRN_BIT(FIRN_FIELD_LAYER_GRAIN_SIZE_10UM);
  depth_hoar.grain_form = FIRN_GRAIN_FORM_DH;
  depth_hoar.grain_size_10um = FIRN_MM(3);
  firn_target touched;
  status = firn_record_layer(recorder, &depth_hoar, NULL, &touched, NULL, error);
  if (status != FIRN_OK) return status;
  firn_layer mended = FIRN_INIT(firn_layer);
  mended.present = FIRN_BIT(FIRN_FIELD_LAYER_HARDNESS);
  mended.hardness = FIRN_HAND_HARDNESS_FIST;
  return firn_record_layer(recorder, &mended, &touched, NULL, NULL, error);
}

static firn_status record_assessment(firn_recorder* recorder, firn_error* error) {
  firn_bulletin_seen bulletin = FIRN_INIT(firn_bulletin_seen);
  bulletin.present = FIRN_BIT(FIRN_FIELD_BULLETIN_SEEN_STATE);
  bulletin.state = FIRN_BULLETIN_STATE_NONE_ISSUED;
  firn_status status = firn_record_bulletin(recorder, &bulletin, NULL, error);
  if (status != FIRN_OK) return status;
  firn_assessment assessment = FIRN_INIT(firn_assessment);
  assessment.present = FIRN_BIT(FIRN_FIELD_ASSESSMENT_CONFIDENCE);
  assessment.words = "thin slab on basal facets, staying on low-angle ground";
  assessment.confidence = FIRN_CONFIDENCE_FAIR;
  return firn_record_assessment(recorder, &assessment, NULL, error);
}

static firn_status record_larch_bowl(firn_recorder* recorder, firn_error* error) {
  firn_author author = FIRN_INIT(firn_author);
  author.device = 1; /* a host draws a random number when it is installed */
  author.made = kDug;
  author.observer = "KL";
  firn_status status = firn_recorder_author(recorder, &author, error);
  if (status == FIRN_OK) status = record_place(recorder, error);
  if (status == FIRN_OK) status = record_tests_and_signs(recorder, error);
  if (status == FIRN_OK) status = record_layers(recorder, error);
  if (status == FIRN_OK) status = record_assessment(recorder, error);
  return status;
}

static int compare(const firn_buffer* recorded, const firn_buffer* noted, size_t edits) {
  const int same = recorded->size == noted->size && memcmp(recorded->data, noted->data, noted->size) == 0;
  printf("%zu edits fold to a pit of %zu bytes; the notes give %zu bytes: %s\n", edits, recorded->size,
         noted->size, same ? "the same" : "they differ");
  if (!same) fprintf(stderr, "first_pit: the structs and the notes do not say the same\n");
  return same ? DONE : REFUSED;
}

static int record(firn_context* context, const char* path) {
  size_t size = 0;
  char* notes = read_file(path, &size);
  if (notes == NULL) return NO_FILE;
  firn_error error = FIRN_INIT(firn_error);
  firn_buffer noted = {NULL, 0}, recorded = {NULL, 0};
  firn_recorder* recorder = NULL;
  int result = DONE;
  firn_status status = firn_notes_read(context, notes, size, NULL, &noted, NULL, &error);
  if (status != FIRN_OK) result = refused("the notes", status, &error);
  if (result == DONE) {
    status = firn_recorder_create(context, &recorder, &error);
    if (status == FIRN_OK) status = record_larch_bowl(recorder, &error);
    if (status == FIRN_OK) status = firn_recorder_pit(recorder, &recorded, &error);
    result = status == FIRN_OK ? compare(&recorded, &noted, firn_recorder_edit_count(recorder))
                               : refused("recording", status, &error);
  }
  firn_buffer_free(context, &recorded);
  firn_buffer_free(context, &noted);
  firn_recorder_destroy(recorder);
  free(notes);
  return result;
}

/* ---------------------------------------------------------------------------------------------------- */

static const char kDefaultNotes[] = "examples/first-pit/larch-bowl-entry.txt";

static int usage(void) {
  fprintf(stderr,
          "usage: first_pit [NOTES [FOLDER]]\n"
          "       first_pit --record [NOTES]\n"
          "NOTES is a file of field notes (default: %s).\n"
          "FOLDER must be there; pit.firn, report.firn, profile.svg and note.txt are written into it.\n",
          kDefaultNotes);
  return NO_FILE;
}

int main(int argc, char** argv) {
  const int recording = argc > 1 && strcmp(argv[1], "--record") == 0;
  if (argc > 3 || (argc > 1 && argv[1][0] == '-' && !recording)) return usage();
  firn_error error = FIRN_INIT(firn_error);
  firn_context* context = NULL;
  const firn_status status = firn_context_create(NULL, &context, &error);
  if (status != FIRN_OK) return refused("starting", status, &error);
  int result;
  if (recording) {
    result = record(context, argc > 2 ? argv[2] : kDefaultNotes);
  } else {
    result = show(context, argc > 1 ? argv[1] : kDefaultNotes, argc > 2 ? argv[2] : NULL);
  }
  firn_context_destroy(context);
  /* A reader that went away, or a full disk, shows only now. */
  if (fflush(stdout) != 0 && result == DONE) {
    fprintf(stderr, "first_pit: cannot write to the standard output\n");
    result = NO_FILE;
  }
  return result;
}
