/*
 * A shell for the tests of the commands: each command is run in a child of its own, with what it
 * prints and its exit code brought back.
 */
#ifndef TEST_SHELL_H
#define TEST_SHELL_H

#include "workshop.h"

#include <stdio.h>

struct answer {
    int code;
    char *out;
    char *error;
};

struct shell {
    struct workshop_place place;
    struct answer answer; /* the last one */
};

/* For the set-up and tear-down of a test: *state is a shell on an empty workshop. */
int shell_begin(void **state);
int shell_end(void **state);
#define IN_A_SHELL(test) cmocka_unit_test_setup_teardown(test, shell_begin, shell_end)

/* Runs `stuffover --store PLACE ...`; the arguments end with NULL. Standard input is empty. The
 * answer is the shell's until the next one. */
const struct answer *shell_run(struct shell *shell, ...);

/* The same, the arguments in one line: words with blanks between, in single quotes where they hold
 * blanks ("spend 'My bench' 12.50 'castors, four'"). */
const struct answer *shell_say(struct shell *shell, const char *line);

/* Imports a worked example ("headboard"). */
void shell_take(struct shell *shell, const char *name);

void answer_forget(struct answer *answer);

/* Fails and prints the text where the words are not in it. */
void assert_says(const char *text, const char *words);

#endif
