/*
 * Copying out: the terminal is told in its own escape sequence (OSC 52) what its clipboard is to
 * hold, so it works over ssh and needs no other program.
 */
#ifndef TUI_COPYOUT_H
#define TUI_COPYOUT_H

#include "tui/screen.h"

/* Longer texts are not taken by terminals. */
#define COPY_MOST 74000

/* Puts the chosen line, or all lines, of the screen on top into tui->outgoing; a sheet whole. Says
 * what it did. */
void copy_out(struct tui *tui, bool all);

/* Appends the escape sequence that hands `text` to the terminal's clipboard. */
void copy_sequence(struct text *out, const char *text);

#endif
