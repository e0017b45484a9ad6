/*
 * Finding words as they are typed: the bottom line but one takes them, and the selection of a list
 * goes to the first line from where it stood that has them, whatever their case; a sheet scrolls to
 * that line and marks it.
 */
#ifndef TUI_FIND_H
#define TUI_FIND_H

#include "tui/screen.h"

/* Begins, where the screen on top is a list or a sheet; else says that it is none. */
void find_open(struct tui *tui);

/* While it is open every key comes here: Enter stays at the line, Esc goes back to where it began,
 * Up and Down go to the line before and after that has the words. */
void find_key(struct tui *tui, int key);
void find_paste(struct tui *tui, const char *text);

void find_paint(struct tui *tui, int row);

#endif
