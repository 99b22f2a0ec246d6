/* A recorder for a terminal: what is typed is stored at once, and is there again after the battery died.

     pit_recorder JOURNAL [--pit ID] [--device N] [--observer INITIALS]

   JOURNAL is a file of its own for each pit and device; it is made when it is not there. --pit names the pit
   when the journal begins. Two people who record one pit give different device numbers (default 1) and the
   same pit. A line is either a command (type help) or a line of field notes, such as

     17-46  F  DH 3.0 "sugary, to the ground"

   Leaves with 0 when all was stored, 1 when the library refused the journal, 2 when a file is the trouble. */
#define _POSIX_C_SOURCE 200809L
#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <time.h>
#include <unistd.h>

#include "guided_test.h"
#include "journal_file.h"

enum { STORED = 0, REFUSED = 1, NO_FILE = 2 };
enum { MOST_LINE = 4096, MOST_WORDS = 32 };

/* A partner's journal larger than this is something else. */
#define MOST_JOURNAL (64L * 1024L * 1024L)

typedef struct desk {
  firn_context* context;
  firn_recorder* recorder;
  journal_file journal;
  guided_test guided;
  firn_error error;
  uint64_t device;
  const char* observer;
  bool is_behind; /* something is recorded and not yet on the disk */
} desk;

static void tell(const desk* at) {
  if (at->error.what[0] != '\0') printf("  %s\n", at->error.what);
  if (at->error.what[0] == '\0') printf("  %s\n", firn_status_text((firn_status)at->error.status));
  if (at->error.path[0] != '\0') printf("  at %s\n", at->error.path);
  if (at->error.remedy[0] != '\0') printf("  %s\n", at->error.remedy);
}

/* --- storing -------------------------------------------------------------------------------------------- */

/* What was recorded stays in memory when the disk refuses it, and is stored with the next line. */
static void store(desk* at) {
  const journal_file_status stored = journal_file_store(&at->journal, &at->error);
  at->is_behind = stored != JOURNAL_FILE_OK;
  if (stored == JOURNAL_FILE_SYSTEM) {
    printf("  NOT STORED: %s. It is still in memory; the next line tries again.\n",
           strerror(at->journal.system_error));
  } else if (stored != JOURNAL_FILE_OK) {
    printf("  NOT STORED:\n");
    tell(at);
  }
}

static void set_author(desk* at) {
  firn_author author = FIRN_INIT(firn_author);
  const time_t now = time(NULL);
  author.device = at->device;
  author.observer = at->observer;
  author.made.local_s = (int64_t)now;
  author.made.precision = FIRN_TIME_PRECISION_SECOND;
  author.made.offset_known = 1; /* as UTC */
  if (firn_recorder_author(at->recorder, &author, &at->error) != FIRN_OK) tell(at);
}

/* --- commands ------------------------------------------------------------------------------------------- */

static bool get_pit(desk* at, firn_buffer* pit) {
  if (firn_recorder_pit(at->recorder, pit, &at->error) == FIRN_OK) return true;
  tell(at);
  return false;
}

static void show(desk* at, char** words, int count) {
  firn_buffer pit = {0}, text = {0};
  (void)words;
  (void)count;
  if (!get_pit(at, &pit)) return;
  if (firn_notes_write(at->context, pit.data, pit.size, &text, NULL, &at->error) == FIRN_OK) {
    printf("%.*s", (int)text.size, (const char*)text.data);
  } else {
    tell(at);
  }
  firn_buffer_free(at->context, &text);
  firn_buffer_free(at->context, &pit);
}

static void note(desk* at, char** words, int count) {
  firn_buffer pit = {0}, report = {0}, text = {0};
  (void)words;
  (void)count;
  if (!get_pit(at, &pit)) return;
  if (firn_interpret(at->context, pit.data, pit.size, NULL, &report, &at->error) == FIRN_OK &&
      firn_note_write(at->context, pit.data, pit.size, report.data, report.size, &text, &at->error) ==
          FIRN_OK) {
    printf("%.*s", (int)text.size, (const char*)text.data);
  } else {
    tell(at);
  }
  firn_buffer_free(at->context, &text);
  firn_buffer_free(at->context, &report);
  firn_buffer_free(at->context, &pit);
}

/* The library knows what an undo button would name, also after a restart. */
static void turn(desk* at, bool back) {
  uint64_t undo = 0, redo = 0;
  if (firn_recorder_undoable(at->recorder, at->device, &undo, &redo, &at->error) != FIRN_OK) {
    tell(at);
    return;
  }
  if ((back ? undo : redo) == 0) {
    printf("  there is nothing to %s\n", back ? "take back" : "put back");
    return;
  }
  const firn_status status = back ? firn_record_undo(at->recorder, at->device, undo, NULL, &at->error)
                                  : firn_record_redo(at->recorder, at->device, redo, NULL, &at->error);
  if (status != FIRN_OK) {
    tell(at);
    return;
  }
  store(at);
  printf("  %s\n", back ? "taken back" : "put back");
  guided_look_again(&at->guided);
}

static void undo(desk* at, char** words, int count) {
  (void)words;
  (void)count;
  turn(at, true);
}

static void redo(desk* at, char** words, int count) {
  (void)words;
  (void)count;
  turn(at, false);
}

static void steps(desk* at, char** words, int count) {
  (void)words;
  (void)count;
  uint32_t all = 0;
  if (firn_procedure_count(FIRN_TEST_KIND_NONE, &all, &at->error) != FIRN_OK) {
    tell(at);
    return;
  }
  for (uint32_t i = 0; i < all; ++i) {
    firn_procedure_entry entry = FIRN_INIT(firn_procedure_entry);
    if (firn_procedure_step(FIRN_TEST_KIND_NONE, i, &entry, &at->error) != FIRN_OK) {
      tell(at);
      return;
    }
    printf("  %s\n", entry.sentence);
  }
  printf("  Tick them as field notes: step pack closed yes\n");
}

/* --- two people ----------------------------------------------------------------------------------------- */

static unsigned char* read_journal(const char* path, size_t* size) {
  FILE* file = fopen(path, "rb");
  if (file == NULL) {
    printf("  %s: %s\n", path, strerror(errno));
    return NULL;
  }
  struct stat about;
  unsigned char* bytes = NULL;
  if (fstat(fileno(file), &about) == 0 && about.st_size <= MOST_JOURNAL) {
    bytes = malloc((size_t)about.st_size + 1);
    *size = bytes == NULL ? 0 : fread(bytes, 1, (size_t)about.st_size, file);
  }
  if (bytes == NULL) printf("  %s cannot be read as a journal\n", path);
  fclose(file);
  return bytes;
}

static void conflicts(desk* at, char** words, int count) {
  size_t all = 0;
  (void)words;
  (void)count;
  if (firn_recorder_conflict_count(at->recorder, &all, &at->error) != FIRN_OK) {
    tell(at);
    return;
  }
  if (all == 0) printf("  nothing that two devices say differently\n");
  for (size_t i = 0; i < all; ++i) {
    firn_conflict one = FIRN_INIT(firn_conflict);
    if (firn_recorder_conflict(at->recorder, i, &one, &at->error) != FIRN_OK) {
      tell(at);
      return;
    }
    printf(
        "  device %llu (edit %llu) and device %llu (edit %llu) say different things; the pit shows the "
        "latter\n",
        (unsigned long long)one.device, (unsigned long long)one.sequence,
        (unsigned long long)one.shown_device, (unsigned long long)one.shown_sequence);
  }
}

static void merge(desk* at, char** words, int count) {
  size_t size = 0;
  if (count != 2) {
    printf("  merge FILE: a partner's journal of this pit\n");
    return;
  }
  unsigned char* bytes = read_journal(words[1], &size);
  if (bytes == NULL) return;
  firn_loaded loaded = FIRN_INIT(firn_loaded);
  if (firn_recorder_load(at->recorder, bytes, size, &loaded, &at->error) == FIRN_OK) {
    printf("  %llu edits are new, %llu were known; %llu bytes could not be read\n",
           (unsigned long long)loaded.added, (unsigned long long)loaded.known,
           (unsigned long long)loaded.lost_bytes);
    store(at);
    conflicts(at, words, count);
  } else {
    tell(at);
  }
  free(bytes);
}

/* --- files ---------------------------------------------------------------------------------------------- */

static bool write_file(const char* folder, const char* name, const firn_buffer* bytes) {
  char path[MOST_LINE];
  if (snprintf(path, sizeof path, "%s/%s", folder, name) >= (int)sizeof path) return false;
  FILE* file = fopen(path, "wb");
  bool written = file != NULL && fwrite(bytes->data, 1, bytes->size, file) == bytes->size;
  if (file != NULL && fclose(file) != 0) written = false;
  printf("  %s%s\n", written ? "" : "cannot write ", path);
  return written;
}

static void save(desk* at, char** words, int count) {
  firn_buffer pit = {0}, report = {0}, text = {0}, svg = {0};
  if (count != 2) {
    printf("  save FOLDER: writes pit.firn, report.firn, note.txt and profile.svg there\n");
    return;
  }
  if (!get_pit(at, &pit)) return;
  if (firn_interpret(at->context, pit.data, pit.size, NULL, &report, &at->error) == FIRN_OK &&
      firn_note_write(at->context, pit.data, pit.size, report.data, report.size, &text, &at->error) ==
          FIRN_OK &&
      firn_draw_profile(at->context, pit.data, pit.size, report.data, report.size, NULL, &svg, &at->error) ==
          FIRN_OK) {
    (void)(write_file(words[1], "pit.firn", &pit) && write_file(words[1], "report.firn", &report) &&
           write_file(words[1], "note.txt", &text) && write_file(words[1], "profile.svg", &svg));
  } else {
    tell(at);
  }
  firn_buffer_free(at->context, &svg);
  firn_buffer_free(at->context, &text);
  firn_buffer_free(at->context, &report);
  firn_buffer_free(at->context, &pit);
}

static void help(desk* at, char** words, int count) {
  (void)at;
  (void)words;
  (void)count;
  printf(
      "Any line of field notes is recorded: 17-46 F DH 3.0, HS 46, sign whumpf yes, CT11 (SC) down 17.\n"
      "  show        the pit as field notes            note        what it amounts to\n"
      "  undo, redo  the last line                     steps       the steps around a test\n"
      "  merge FILE  a partner's journal of this pit   conflicts   what two devices say differently\n"
      "  save FOLDER pit, report, note and picture     quit        everything is stored already\n");
  guided_help();
}

/* --- lines ---------------------------------------------------------------------------------------------- */

static const struct {
  const char* word;
  void (*act)(desk*, char**, int);
} kCommands[] = {
    {"show", show},   {"note", note}, {"undo", undo},           {"redo", redo}, {"steps", steps},
    {"merge", merge}, {"save", save}, {"conflicts", conflicts}, {"help", help},
};

static void record_line(desk* at, const char* line) {
  firn_buffer remarks = {0};
  if (firn_record_notes(at->recorder, line, strlen(line), &remarks, &at->error) != FIRN_OK) {
    tell(at);
    printf("  Nothing was recorded. help shows what can be typed.\n");
    return;
  }
  if (remarks.size > 0) printf("  %.*s", (int)remarks.size, (const char*)remarks.data);
  firn_buffer_free(at->context, &remarks);
}

/* False when there is nothing more to do. */
static bool one_line(desk* at, char* line) {
  char split[MOST_LINE];
  char* words[MOST_WORDS];
  int count = 0;
  char* rest = NULL;
  memcpy(split, line, strlen(line) + 1);
  for (char* word = strtok_r(split, " \t", &rest); word != NULL && count < MOST_WORDS;
       word = strtok_r(NULL, " \t", &rest)) {
    words[count++] = word;
  }
  if (count == 1 && strcmp(words[0], "quit") == 0) return false;
  if (count > 0) {
    for (size_t i = 0; i < sizeof kCommands / sizeof kCommands[0]; ++i) {
      if (strcmp(words[0], kCommands[i].word) != 0) continue;
      kCommands[i].act(at, words, count);
      return true;
    }
  }
  set_author(at);
  switch (guided_command(&at->guided, words, count, &at->error)) {
    case GUIDED_NOT_MINE:
      if (count > 0 && words[0][0] != '#') record_line(at, line);
      break;
    case GUIDED_REFUSED:
      tell(at);
      break;
    case GUIDED_DONE:
    case GUIDED_SHOWN:
      break;
  }
  store(at);
  return true;
}

/* Reads a line without its end; a line that is too long is told and left out whole. */
static bool read_line(char* line, size_t room) {
  while (fgets(line, (int)room, stdin) != NULL) {
    size_t length = strlen(line);
    if (length > 0 && line[length - 1] == '\n') {
      line[--length] = '\0';
      if (length > 0 && line[length - 1] == '\r') line[--length] = '\0';
      return true;
    }
    if (feof(stdin)) return true;
    for (int c = getchar(); c != '\n' && c != EOF;) c = getchar();
    printf("  that line is too long; nothing was recorded\n");
  }
  return false;
}

static void talk(desk* at) {
  char line[MOST_LINE];
  for (;;) {
    printf("%s", guided_is_open(&at->guided) ? "test> " : "pit> ");
    fflush(stdout);
    if (!read_line(line, sizeof line)) break;
    if (!isatty(STDIN_FILENO)) printf("%s\n", line);
    if (!one_line(at, line)) break;
  }
  printf("\n");
}

/* --- beginning and end ---------------------------------------------------------------------------------- */

static bool open_journal(desk* at, const char* path, const char* pit_id) {
  const journal_file_status opened =
      journal_file_open(&at->journal, path, pit_id, at->context, at->recorder, NULL, &at->error);
  if (opened == JOURNAL_FILE_SYSTEM) {
    fprintf(stderr, "pit_recorder: %s: %s\n", path, strerror(at->journal.system_error));
  } else if (opened != JOURNAL_FILE_OK) {
    fprintf(stderr, "pit_recorder: %s: %s\n  %s\n", path, at->error.what, at->error.remedy);
  }
  if (opened != JOURNAL_FILE_OK) return false;
  const firn_loaded* loaded = &at->journal.loaded;
  printf("%llu edits read from the journal.\n", (unsigned long long)loaded->added);
  if (loaded->lost_bytes > 0) {
    printf("%llu bytes in %llu places were damaged and could not be read.\n",
           (unsigned long long)loaded->lost_bytes, (unsigned long long)loaded->gaps);
  }
  return true;
}

static int usage(void) {
  fprintf(stderr, "use: pit_recorder JOURNAL [--pit ID] [--device N] [--observer INITIALS]\n");
  return NO_FILE;
}

int main(int count, char** words) {
  desk at = {0};
  const char* pit_id = NULL;
  at.error = FIRN_INIT(firn_error);
  at.device = 1;
  if (count < 2 || count % 2 != 0) return usage();
  for (int i = 2; i < count; i += 2) {
    if (strcmp(words[i], "--pit") == 0) {
      pit_id = words[i + 1];
    } else if (strcmp(words[i], "--observer") == 0) {
      at.observer = words[i + 1];
    } else if (strcmp(words[i], "--device") == 0) {
      at.device = strtoull(words[i + 1], NULL, 10);
    } else {
      return usage();
    }
  }
  if (at.device == 0) return usage();
  /* A new journal has to name its pit; an old one names its own. */
  if (pit_id == NULL && access(words[1], F_OK) != 0) pit_id = words[1];
  int code = REFUSED;
  if (firn_context_create(NULL, &at.context, &at.error) == FIRN_OK &&
      firn_recorder_create(at.context, &at.recorder, &at.error) == FIRN_OK) {
    at.guided.context = at.context;
    at.guided.recorder = at.recorder;
    code = NO_FILE;
    if (open_journal(&at, words[1], pit_id)) {
      set_author(&at);
      if (!guided_resume(&at.guided, &at.error)) tell(&at);
      talk(&at);
      code = at.is_behind ? NO_FILE : STORED;
      journal_file_close(&at.journal);
    }
  }
  firn_recorder_destroy(at.recorder);
  firn_context_destroy(at.context);
  return code;
}
