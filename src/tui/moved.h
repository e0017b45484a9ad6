/*
 * What happens when another program moves, deletes or replaces the workshop file under this one:
 * nothing can be saved under its name any more, so a copy of what is here is offered, once.
 */
#ifndef TUI_MOVED_H
#define TUI_MOVED_H

#include "tui/screen.h"

/* Looks, and asks when the file is gone; true when it has just begun to ask. A look at one file. */
bool moved_look(struct tui *tui);

/* While it asks every key comes here first; true when the key was the answer, or none at all: Enter
 * keeps a copy beside where the file was, Esc does not. */
bool moved_key(struct tui *tui, int key);

#endif
