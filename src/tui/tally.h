/*
 * The bottom line: what the plan comes to, and while something is edited what that would change.
 */
#ifndef TUI_TALLY_H
#define TUI_TALLY_H

#include "tui/screen.h"

/* Paints nothing where no build is taken up. */
void tally_paint(struct tui *tui, int row);

#endif
