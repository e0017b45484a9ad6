/*
 * What the terminal's description can do. Apart from terminal.c, since the header that this needs
 * makes macros of ordinary words.
 */
#ifndef TUI_CAPABILITY_H
#define TUI_CAPABILITY_H

#include <stdbool.h>
#include <stddef.h>

/* By terminfo name ("cup"); after newterm. */
bool capability_is_there(const char *name);

/* What puts the terminal back: attributes, `extra`, cursor, keypad, screen. Returns its bytes. */
size_t capability_reset_string(char *buffer, size_t room, const char *extra);

#endif
