/*
 * The front end without a terminal, on a workshop of its own: keys go in by name, what a maker
 * would see comes out as text. Everything fails the test rather than return an error.
 */
#ifndef STAGE_H
#define STAGE_H

#include "tui/driver.h"
#include "workshop.h"

struct stage {
    struct workshop_place place;
    struct desk *desk;
    struct tui tui;
    struct arena arena;
    bool over; /* a key asked to leave the program */
};

/* cmocka's setup and teardown; the first gives an empty workshop, the second one with the three
 * worked examples of tests/cases, none of them taken up. The clock stands still. */
int stage_begin(void **state);
int stage_begin_with_cases(void **state);
int stage_end(void **state);

/*
 * Presses keys, separated by blanks, and pauses: names as the help screen writes them ("Enter",
 * "Down", "F5"), single characters, and text in single quotes ("a Enter 'my bench' Enter").
 */
void stage_press(struct stage *stage, const char *keys);

/* Presses nothing until all that goes on by itself has come to its end. */
void stage_rest(struct stage *stage);

/* What the screen shows at a size, row by row; good until the next one. */
const char *stage_show(struct stage *stage, int rows, int columns);

/* Fails unless the screen at 80x24 shows the words, or shows none of them. */
void assert_shown(struct stage *stage, const char *words);
void assert_not_shown(struct stage *stage, const char *words);

/* Takes up a build from the list of builds, by name, and opens its screen. */
void stage_take_up(struct stage *stage, const char *name);

/* The same of the wing headboard, and presses keys there. */
void stage_go(struct stage *stage, const char *keys);

/* The program is left and begun again on the same file. */
void stage_again(struct stage *stage);

#endif
