/*
 * The maker's settings of the terminal, from a file of lines:
 *
 *     # what follows a hash is for people
 *     key order F5 O
 *     set mouse on
 *
 * A line with a fault is told with its number and left out; the others hold.
 */
#ifndef TUI_SETTINGS_H
#define TUI_SETTINGS_H

#include "tui/keymap.h"

#include <stdbool.h>
#include <stddef.h>

#define SETTINGS_MOST 65536 /* bytes of a file; a longer one is left out whole */
#define SETTINGS_COMPLAINTS 8
#define SETTINGS_PATH 4096

struct complaint {
    int line; /* 0: the file as a whole */
    char why[120];
};

struct settings {
    struct keymap keys;
    bool mouse;
    char path[SETTINGS_PATH]; /* of the file; "" when there is no place for one */
    struct complaint complaints[SETTINGS_COMPLAINTS];
    int complaint_count; /* all that there were, also those that found no room */
};

/* What holds without a file. */
void settings_standard(struct settings *settings);

/* Takes the lines of a file on top of the standard. */
void settings_parse(struct settings *settings, const char *bytes, size_t length);

/* The same from the file at its place, $XDG_CONFIG_HOME/stuffover/terminal.conf, else below
 * ~/.config. No file is no fault. */
void settings_read(struct settings *settings);

#endif
