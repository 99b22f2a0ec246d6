#include "guided_test.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* --- the codes that stand for what was seen ------------------------------------------------------------- */

typedef struct code {
  const char* text;
  uint8_t value;
} code;

static const code kKinds[] = {{"CT", FIRN_TEST_KIND_CT},
                              {"DT", FIRN_TEST_KIND_DT},
                              {"ECT", FIRN_TEST_KIND_ECT},
                              {"PST", FIRN_TEST_KIND_PST},
                              {"RB", FIRN_TEST_KIND_RB},
                              {"ST", FIRN_TEST_KIND_ST},
                              {NULL, 0}};
static const code kCharacters[] = {{"SP", FIRN_FRACTURE_CHARACTER_SP},   {"SC", FIRN_FRACTURE_CHARACTER_SC},
                                   {"RP", FIRN_FRACTURE_CHARACTER_RP},   {"PC", FIRN_FRACTURE_CHARACTER_PC},
                                   {"BRK", FIRN_FRACTURE_CHARACTER_BRK}, {"SDN", FIRN_FRACTURE_CHARACTER_SDN},
                                   {"RES", FIRN_FRACTURE_CHARACTER_RES}, {NULL, 0}};
static const code kReleases[] = {
    {"WB", FIRN_RELEASE_TYPE_WB}, {"MB", FIRN_RELEASE_TYPE_MB}, {"EB", FIRN_RELEASE_TYPE_EB}, {NULL, 0}};
static const code kEases[] = {{"C", FIRN_SHEAR_EASE_C}, {"V", FIRN_SHEAR_EASE_V}, {"E", FIRN_SHEAR_EASE_E},
                              {"M", FIRN_SHEAR_EASE_M}, {"H", FIRN_SHEAR_EASE_H}, {NULL, 0}};
static const code kSawEnds[] = {
    {"End", FIRN_SAW_END_END}, {"SF", FIRN_SAW_END_SF}, {"Arr", FIRN_SAW_END_ARR}, {NULL, 0}};
static const code kRules[] = {
    {"same", FIRN_CROSSING_RULE_SAME_TAP}, {"next", FIRN_CROSSING_RULE_ONE_MORE_TAP}, {NULL, 0}};
static const code kReasons[] = {{"sank", FIRN_NOT_VALID_REASON_SANK_IN},
                                {"cutting", FIRN_NOT_VALID_REASON_BROKE_WHILE_CUTTING},
                                {"disturbed", FIRN_NOT_VALID_REASON_COLUMN_DISTURBED},
                                {"loading", FIRN_NOT_VALID_REASON_LOADING},
                                {"gentle", FIRN_NOT_VALID_REASON_SLOPE_TOO_GENTLE},
                                {"other", FIRN_NOT_VALID_REASON_OTHER},
                                {NULL, 0}};

static bool same_word(const char* a, const char* b) {
  for (; *a != '\0' && *b != '\0'; ++a, ++b) {
    const char x = *a >= 'A' && *a <= 'Z' ? (char)(*a + 32) : *a;
    const char y = *b >= 'A' && *b <= 'Z' ? (char)(*b + 32) : *b;
    if (x != y) return false;
  }
  return *a == *b;
}

static bool find_code(const code* codes, const char* word, uint8_t* value) {
  for (; codes->text != NULL; ++codes) {
    if (!same_word(codes->text, word)) continue;
    *value = codes->value;
    return true;
  }
  return false;
}

static const char* text_of(const code* codes, uint8_t value) {
  for (; codes->text != NULL; ++codes) {
    if (codes->value == value) return codes->text;
  }
  return "test";
}

/* Centimetres as people say them: 46 or 46.5. */
static bool read_cm(const char* word, int32_t* length_10um) {
  char* end = NULL;
  const double cm = strtod(word, &end);
  if (end == word || *end != '\0' || !isfinite(cm) || cm < -20000 || cm > 20000) return false;
  *length_10um = (int32_t)lround(cm * 1000);
  return true;
}

static bool read_count(const char* word, long least, long most, long* value) {
  char* end = NULL;
  *value = strtol(word, &end, 10);
  return end != word && *end == '\0' && *value >= least && *value <= most;
}

/* --- showing -------------------------------------------------------------------------------------------- */

static void show_sentence(guided_test* guided, int place, const char* label, uint16_t sentence) {
  const char* text = "";
  if (guided->said[place] == sentence) return;
  guided->said[place] = sentence;
  if (firn_guided_text(sentence, &text, NULL, NULL) == FIRN_OK && *text != '\0') {
    printf("  %-6s %s\n", label, text);
  }
}

static void show_load(const firn_guidance* at) {
  static const char* const kArm[] = {"", "", "wrist", "elbow", "shoulder"};
  if (at->kind == FIRN_TEST_KIND_PST) {
    printf("cut %g cm", at->cut_10um / 1000.0);
  } else if (at->kind == FIRN_TEST_KIND_RB) {
    printf("step %d", at->step);
    if (at->jump != 0) printf(", jump %d", at->jump);
  } else if (at->stage >= FIRN_LOAD_STAGE_WRIST && at->stage <= FIRN_LOAD_STAGE_SHOULDER) {
    printf("%d, %s %d", at->taps, kArm[at->stage], at->tap_in_stage);
  } else {
    printf("no load yet");
  }
}

static void show(guided_test* guided, const firn_guidance* at) {
  firn_buffer line = {0};
  guided->is_over = at->state == FIRN_GUIDED_ENDED || at->state == FIRN_GUIDED_NOT_VALID;
  show_load(at);
  if (firn_guided_line(guided->recorder, &guided->test, &line, NULL) == FIRN_OK) {
    printf("  |  %.*s", (int)line.size, (const char*)line.data);
    firn_buffer_free(guided->context, &line);
  }
  printf("\n");
  show_sentence(guided, 0, "next:", at->next);
  show_sentence(guided, 1, "look:", at->watch);
  show_sentence(guided, 2, "say:", at->record);
  if (guided->is_over)
    printf("  It is over. What was seen can still be said (seen 68 SP) or taken back (none).\n");
}

static bool has_test(const guided_test* guided) {
  return guided->test.device != 0;
}

bool guided_is_open(const guided_test* guided) {
  return has_test(guided) && !guided->is_over;
}

void guided_look_again(guided_test* guided) {
  firn_guidance at = FIRN_INIT(firn_guidance);
  /* A beginning that was put back is open again; one that was taken back is nowhere. */
  if (!guided_is_open(guided)) (void)firn_guided_open(guided->recorder, &guided->test, NULL);
  if (!has_test(guided)) return;
  if (firn_guided_state(guided->recorder, &guided->test, &at, NULL) == FIRN_OK) {
    show(guided, &at);
  } else {
    memset(&guided->test, 0, sizeof guided->test);
  }
}

bool guided_resume(guided_test* guided, firn_error* error) {
  if (firn_guided_open(guided->recorder, &guided->test, error) != FIRN_OK) return false;
  if (!has_test(guided)) return true;
  printf("A test was open when this ended; it goes on where it stood.\n");
  guided_look_again(guided);
  return true;
}

/* --- commands ------------------------------------------------------------------------------------------- */

/* What was seen of a fracture: a depth in cm, a code; in any order. */
static bool read_seen(char** words, int count, firn_fracture* seen) {
  for (int i = 0; i < count; ++i) {
    int32_t depth = 0;
    if (read_cm(words[i], &depth)) {
      seen->depth = (firn_depth){depth, FIRN_DATUM_SURFACE, FIRN_DIRECTION_VERTICAL, 0};
      seen->present |= FIRN_BIT(FIRN_FIELD_FRACTURE_DEPTH);
    } else if (find_code(kCharacters, words[i], &seen->character)) {
      seen->present |= FIRN_BIT(FIRN_FIELD_FRACTURE_CHARACTER);
    } else if (find_code(kReleases, words[i], &seen->release)) {
      seen->present |= FIRN_BIT(FIRN_FIELD_FRACTURE_RELEASE);
    } else if (find_code(kEases, words[i], &seen->ease)) {
      seen->present |= FIRN_BIT(FIRN_FIELD_FRACTURE_EASE);
    } else {
      printf("  '%s' is neither a depth in cm nor a code (SP SC RP PC BRK, WB MB EB, C V E M H)\n", words[i]);
      return false;
    }
  }
  return true;
}

static guided_answer send(guided_test* guided, firn_test_event* event, firn_error* error) {
  firn_guidance at = FIRN_INIT(firn_guidance);
  if (firn_guided_event(guided->recorder, &guided->test, event, &at, NULL, error) != FIRN_OK) {
    return GUIDED_REFUSED;
  }
  show(guided, &at);
  return GUIDED_DONE;
}

static guided_answer begin(guided_test* guided, char** words, int count, firn_error* error) {
  firn_test test = FIRN_INIT(firn_test);
  firn_guidance at = FIRN_INIT(firn_guidance);
  firn_target begun = {0};
  if (count < 2 || !find_code(kKinds, words[1], &test.kind)) {
    printf("  begin CT, DT, ECT [same|next], PST [LENGTH], RB or ST\n");
    return GUIDED_SHOWN;
  }
  test.present = FIRN_BIT(FIRN_FIELD_STABILITY_TEST_KIND);
  for (int i = 2; i < count; ++i) {
    if (find_code(kRules, words[i], &test.crossing_rule)) {
      test.present |= FIRN_BIT(FIRN_FIELD_STABILITY_TEST_CROSSING_RULE);
    } else if (read_cm(words[i], &test.column_length_10um)) {
      test.present |= FIRN_BIT(FIRN_FIELD_STABILITY_TEST_COLUMN_LENGTH_10UM);
    } else {
      printf("  '%s' is neither a length in cm nor a crossing rule (same tap, or next tap)\n", words[i]);
      return GUIDED_SHOWN;
    }
  }
  if (firn_guided_start(guided->recorder, &test, &begun, &at, NULL, error) != FIRN_OK) return GUIDED_REFUSED;
  guided->test = begun;
  memset(guided->said, 0, sizeof guided->said);
  printf("%s: ", text_of(kKinds, test.kind));
  show(guided, &at);
  show_sentence(guided, 3, "deep:", at.reach);
  return GUIDED_DONE;
}

/* Several taps at once are as many taps: each of them is recorded. */
static guided_answer tap(guided_test* guided, char** words, int count, firn_error* error) {
  long taps = 1;
  if (count > 1 && !read_count(words[1], 1, 30, &taps)) {
    printf("  tap, or tap 5 for five taps\n");
    return GUIDED_SHOWN;
  }
  firn_guidance at = FIRN_INIT(firn_guidance);
  for (long i = 0; i < taps; ++i) {
    firn_test_event event = FIRN_INIT(firn_test_event);
    event.kind = FIRN_TEST_EVENT_TAP;
    if (firn_guided_event(guided->recorder, &guided->test, &event, &at, NULL, error) != FIRN_OK) {
      if (i > 0) guided_look_again(guided);
      return GUIDED_REFUSED;
    }
  }
  show(guided, &at);
  return GUIDED_DONE;
}

static guided_answer count_again(guided_test* guided, char** words, int count, firn_error* error) {
  long taps = 0;
  firn_fracture seen = FIRN_INIT(firn_fracture);
  firn_test_event event = FIRN_INIT(firn_test_event);
  if (count != 2 || !read_count(words[1], 0, 255, &taps)) {
    printf("  count 12: where the count stands\n");
    return GUIDED_SHOWN;
  }
  seen.tap = (uint8_t)taps;
  seen.present = FIRN_BIT(FIRN_FIELD_FRACTURE_TAP);
  event.kind = FIRN_TEST_EVENT_SET_TAP;
  event.seen = &seen;
  return send(guided, &event, error);
}

static guided_answer saw(guided_test* guided, char** words, int count, firn_error* error) {
  firn_fracture seen = FIRN_INIT(firn_fracture);
  firn_test_event event = FIRN_INIT(firn_test_event);
  if (count != 2 || !read_cm(words[1], &seen.cut_10um)) {
    printf("  cut 32: how far the saw is now, in cm\n");
    return GUIDED_SHOWN;
  }
  seen.present = FIRN_BIT(FIRN_FIELD_FRACTURE_CUT_10UM);
  event.kind = FIRN_TEST_EVENT_CUT_TO;
  event.seen = &seen;
  return send(guided, &event, error);
}

static guided_answer ran(guided_test* guided, char** words, int count, firn_error* error) {
  firn_fracture seen = FIRN_INIT(firn_fracture);
  firn_test_event event = FIRN_INIT(firn_test_event);
  if (count < 2 || !find_code(kSawEnds, words[1], &seen.saw_end)) {
    printf("  ran End (to the end), ran Arr (stopped by itself), ran SF (slab broke); then the depth\n");
    return GUIDED_SHOWN;
  }
  seen.present = FIRN_BIT(FIRN_FIELD_FRACTURE_SAW_END);
  if (!read_seen(words + 2, count - 2, &seen)) return GUIDED_SHOWN;
  event.kind = FIRN_TEST_EVENT_RAN;
  event.seen = &seen;
  return send(guided, &event, error);
}

static guided_answer load(guided_test* guided, char** words, int count, firn_error* error) {
  long step = 0, jump = 0;
  firn_fracture seen = FIRN_INIT(firn_fracture);
  firn_test_event event = FIRN_INIT(firn_test_event);
  if (count < 2 || count > 3 || !read_count(words[1], 0, 255, &step) ||
      (count == 3 && !read_count(words[2], 1, 255, &jump))) {
    printf("  load 3, or load 4 2 for the second jump of step 4\n");
    return GUIDED_SHOWN;
  }
  seen.step = (uint8_t)step;
  seen.jump = (uint8_t)jump;
  seen.present = FIRN_BIT(FIRN_FIELD_FRACTURE_STEP);
  if (jump != 0) seen.present |= FIRN_BIT(FIRN_FIELD_FRACTURE_JUMP);
  event.kind = FIRN_TEST_EVENT_LOADED;
  event.seen = &seen;
  return send(guided, &event, error);
}

static guided_answer not_valid(guided_test* guided, char** words, int count, firn_error* error) {
  char text[512] = "";
  firn_test_event event = FIRN_INIT(firn_test_event);
  if (count < 2 || !find_code(kReasons, words[1], &event.not_valid_reason)) {
    printf("  invalid sank, cutting, disturbed, loading, gentle or other, then words\n");
    return GUIDED_SHOWN;
  }
  for (int i = 2; i < count; ++i) {
    if (strlen(text) + strlen(words[i]) + 2 > sizeof text) break;
    if (text[0] != '\0') strcat(text, " ");
    strcat(text, words[i]);
  }
  event.kind = FIRN_TEST_EVENT_NOT_VALID;
  event.words = text[0] == '\0' ? NULL : text;
  return send(guided, &event, error);
}

/* Words that send one event, with what was seen behind them. */
static const struct {
  const char* word;
  uint8_t kind;
} kEvents[] = {
    {"crack", FIRN_TEST_EVENT_CRACK},     {"isolating", FIRN_TEST_EVENT_ISOLATING},
    {"crossed", FIRN_TEST_EVENT_CROSSED}, {"stayed", FIRN_TEST_EVENT_NOT_CROSSED},
    {"slid", FIRN_TEST_EVENT_SLID},       {"levelled", FIRN_TEST_EVENT_LEVELLED},
    {"seen", FIRN_TEST_EVENT_DESCRIBE},   {"none", FIRN_TEST_EVENT_RETRACT},
    {"stop", FIRN_TEST_EVENT_STOP},
};

static const struct {
  const char* word;
  guided_answer (*act)(guided_test*, char**, int, firn_error*);
} kCommands[] = {
    {"tap", tap}, {"count", count_again}, {"cut", saw}, {"ran", ran}, {"load", load}, {"invalid", not_valid},
};

guided_answer guided_command(guided_test* guided, char** words, int count, firn_error* error) {
  if (count == 0) return guided_is_open(guided) ? tap(guided, words, count, error) : GUIDED_NOT_MINE;
  if (same_word(words[0], "begin")) return begin(guided, words, count, error);
  /* After the end it may still be said what was seen; the library knows what else. */
  const bool is_open = has_test(guided);
  for (size_t i = 0; i < sizeof kCommands / sizeof kCommands[0]; ++i) {
    if (!same_word(words[0], kCommands[i].word)) continue;
    if (is_open) return kCommands[i].act(guided, words, count, error);
  }
  for (size_t i = 0; i < sizeof kEvents / sizeof kEvents[0]; ++i) {
    if (!same_word(words[0], kEvents[i].word) || !is_open) continue;
    firn_fracture seen = FIRN_INIT(firn_fracture);
    firn_test_event event = FIRN_INIT(firn_test_event);
    if (!read_seen(words + 1, count - 1, &seen)) return GUIDED_SHOWN;
    event.kind = kEvents[i].kind;
    event.seen = seen.present != 0 ? &seen : NULL;
    return send(guided, &event, error);
  }
  return GUIDED_NOT_MINE;
}

void guided_help(void) {
  printf(
      "A test, while a partner taps:\n"
      "  begin CT | DT | ECT [same|next] | PST [LENGTH] | RB | ST   begins one; LENGTH in cm\n"
      "  (Enter) or tap [N]      one tap, or N of them     count 12   the count was lost: it stands at 12\n"
      "  crack [68] [SP]         it broke, on this tap     isolating  it broke while the column was cut\n"
      "  crossed, stayed         did the crack cross       slid, levelled   the block; the new top\n"
      "  cut 32, ran End|Arr|SF  the saw                   load 3 [JUMP]    the rutschblock\n"
      "  seen 68 SP              what was seen of the last fracture, also later\n"
      "  none                    that was no fracture      invalid REASON   no valid test\n"
      "  stop                    no more load\n");
}
