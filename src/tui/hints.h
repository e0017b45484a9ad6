/*
 * The rows above the tally: what the keys do on this screen, and below it where else one can go
 * from here. A message, words that are looked for, and what typing needs take the first row.
 */
#ifndef TUI_HINTS_H
#define TUI_HINTS_H

#include "tui/screen.h"

/* How many rows they take in a view of so many: 1 or 2. */
int hints_rows(const struct tui *tui, int rows);

void hints_paint(struct tui *tui, int row);

/* The actions of an open screen that its keys are told for, here and in the help. */
action_set hints_shown(struct tui *tui, const struct open_screen *open);

#endif
