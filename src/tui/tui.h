/* The terminal's front end. */
#ifndef TUI_TUI_H
#define TUI_TUI_H

#include "desk/desk.h"

/*
 * Runs until the maker leaves or the terminal goes away; gives the exit code: 0, 2 when standard
 * input or output is no terminal, 3 when the terminal cannot be used, 128 and the signal's number
 * after a signal. Every edit is in the store before the screen shows it.
 */
int tui_run(struct desk *desk);

#endif
