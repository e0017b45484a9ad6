/* A sheet that takes work to make: kept until the file is another one than it was made from. */
#ifndef TUI_TOLD_H
#define TUI_TOLD_H

#include "tui/screen.h"

/* Zeroed to begin with. */
struct told {
    struct pager pager;
    struct text text;
    unsigned serial;
    bool made;
};

typedef enum fault told_fn(struct tui *tui, void *context, struct text *out,
                           struct fault_note *note);

/* The sheet, made anew where it has to be; why it cannot be made stands there instead. Without the
 * blank line that keeps it from what is before it in print. */
const char *told_text(struct told *told, struct tui *tui, told_fn *make, void *context);

void told_release(struct told *told);

#endif
