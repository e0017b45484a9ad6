/*
 * The options that commands take, as one table: the parser, the help and the completions of shells
 * come from it. Which command takes which stands in the table of commands.
 */
#ifndef CLI_OPTIONS_H
#define CLI_OPTIONS_H

#include "cli/commands.h"

struct command_option {
    const char *name;  /* without its dashes */
    const char *value; /* what it takes, as help shows it; NULL for an option that takes nothing */
    const char *help;
    enum cli_option option;
    const char *words;              /* all that it takes, with blanks between; NULL: anything */
    const struct words *vocabulary; /* or the words of a vocabulary */
};

/* Ends with an entry whose name is NULL. */
extern const struct command_option command_options[];

#endif
