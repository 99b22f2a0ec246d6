/* The commands of a guided test: a partner types what the tester calls out. */
#ifndef GUIDED_TEST_H
#define GUIDED_TEST_H

#include <stdbool.h>

#include "firnbook/firnbook.h"

typedef struct guided_test {
  firn_context* context;
  firn_recorder* recorder;
  firn_target test; /* device 0: there is none */
  bool is_over;     /* it has ended */
  uint16_t said[4]; /* sentences shown last, so that a tap does not repeat what is on the screen */
} guided_test;

typedef enum guided_answer {
  GUIDED_NOT_MINE, /* no command of a test */
  GUIDED_DONE,     /* recorded: store it */
  GUIDED_SHOWN,    /* answered, nothing recorded */
  GUIDED_REFUSED   /* see the error */
} guided_answer;

/* Finds the test that was open when the program ended, if there is one, and says where it stands. */
bool guided_resume(guided_test* guided, firn_error* error);

/* One line, split into its words. */
guided_answer guided_command(guided_test* guided, char** words, int count, firn_error* error);

bool guided_is_open(const guided_test* guided);

/* Says where the test stands after something else than its own commands changed it. */
void guided_look_again(guided_test* guided);

void guided_help(void);

#endif /* GUIDED_TEST_H */
