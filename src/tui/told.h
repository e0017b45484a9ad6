/*
 * A sheet that takes work to make: kept until the file is another one than it was made from. The
 * state of a screen that is nothing but such a sheet begins with it, so that the functions of the
 * table of screens (screen.h) are the same for all of them.
 */
#ifndef TUI_TOLD_H
#define TUI_TOLD_H

#include "tui/screen.h"

/* Writes the sheet; the context is the state of the screen. */
typedef enum fault told_fn(struct tui *tui, void *context, struct text *out,
                           struct fault_note *note);

/* Zeroed to begin with. */
struct told {
    told_fn *make; /* set when the screen is opened */
    struct pager pager;
    struct text text;
    unsigned serial;
    bool made;
};

/* The sheet, made anew where it has to be; why it cannot be made stands there instead. Without the
 * blank line that keeps it from what is before it in print. */
const char *told_text(struct told *told, struct tui *tui, void *context);

void told_release(struct told *told);

/* For the table: `opaque` begins with a told sheet. */
void told_paint(struct tui *tui, void *opaque, int top, int height);
enum reaction told_act(struct tui *tui, void *opaque, enum action action);
void told_close(void *opaque);
struct pager *told_pager(void *opaque);
void told_sheet(struct tui *tui, void *opaque, struct text *out);

#endif
