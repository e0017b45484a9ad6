/* What the program says of itself and of its commands (--help), from their tables. */
#ifndef CLI_HELP_H
#define CLI_HELP_H

#include "base/text.h"
#include "cli/commands.h"

/* All commands, each with its options, on lines of 80 columns. */
void help_all(struct text *out);

/* One command. */
void help_command(struct text *out, const struct command *command);

/* Whether --help stands among the words after a command's name, before any "--". */
bool help_is_asked(int argc, char **argv);

#endif
