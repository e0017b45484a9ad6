/*
 * The commands. Each is a line of a table (commands.c) with its operands and help; the manual page
 * is checked against it. A command reads and changes the workshop through the desk alone, prints to
 * standard output, explains faults on standard error, and ends with the exit code of the fault.
 */
#ifndef CLI_CLI_H
#define CLI_CLI_H

#include "desk/desk.h"

/* Runs the terminal on an open desk; gives the program's exit code. */
typedef int cli_terminal_fn(struct desk *desk);

/* The whole program but the terminal: options, then a command, or `terminal` where there is none.
 */
int cli_main(int argc, char **argv, cli_terminal_fn *terminal);

#endif
