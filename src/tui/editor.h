/* The maker's own editor, for notes that are longer than a line. */
#ifndef TUI_EDITOR_H
#define TUI_EDITOR_H

#include "base/fault.h"
#include "base/text.h"
#include "tui/terminal.h"

#define EDITOR_MOST 65536 /* bytes that are read back */

/*
 * Lends the terminal to $VISUAL, else $EDITOR, else vi, with `before` in a file of its own that
 * only the maker can read; what the file holds afterwards goes into `after`, without the line ends
 * at its end. Faults: IO (the file cannot be made or read), REFUSED (the editor could not be run,
 * ended with a fault, or left too much). The file is gone afterwards.
 */
enum fault editor_run(struct terminal *terminal, const char *before, struct text *after,
                      struct fault_note *note);

#endif
