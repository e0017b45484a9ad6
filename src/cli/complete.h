/*
 * What shells complete a command line with, written from the tables of commands and options when
 * the program is built (complete_main.c), and installed beside it.
 */
#ifndef CLI_COMPLETE_H
#define CLI_COMPLETE_H

#include "base/text.h"

#include <stdbool.h>

/* Appends the completion of "bash", "zsh" or "fish"; false for any other shell. */
bool complete_for(struct text *out, const char *shell);

#endif
